/* fuzz-trial.c: the document reader, fed with anything
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is refused is refused in one sentence. What is read is valid, is the
 * same again once written, and its figures can be computed.
 *
 * tests/fuzz/run builds and runs this with libFuzzer. By hand, without meson
 * (tables.c comes from data/make-tables.py):
 *
 *   clang -g -O1 -fsanitize=fuzzer,address,undefined -Isrc -Isrc/calc -o fuzz-trial \
 *     tests/fuzz/fuzz-trial.c src/trial/[a-z]*.c src/calc/[a-z]*.c tables.c \
 *     $(pkg-config --cflags --libs gio-unix-2.0 json-glib-1.0) -lm
 *   ./fuzz-trial -max_len=65536 tests/fuzz/corpus/trial
 */

#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include "trial/document.h"
#include "trial/members.h"

int LLVMFuzzerTestOneInput (const uint8_t *data, size_t size);

static void
check_refusal (const GError *error)
{
  g_assert_true (error->domain == TR_TRIAL_ERROR);
  g_assert_true (g_utf8_validate (error->message, -1, NULL));
  g_assert_true (g_str_has_suffix (error->message, "."));
  g_assert_null (strchr (error->message, '\n'));
}

static void
check_trial (const TrTrial *trial)
{
  g_autoptr (GError) error = NULL;
  gsize length, length_again, bytes;
  g_autofree char *text = tr_trial_write (trial, &length);
  g_autoptr (TrTrial) again = tr_trial_read (text, length, &error);

  /* a file near the limit may be over it in our layout */
  if (g_error_matches (error, TR_TRIAL_ERROR, TR_TRIAL_ERROR_TOO_LARGE))
    return;
  g_assert_no_error (error);
  g_autofree char *text_again = tr_trial_write (again, &length_again);
  g_assert_cmpmem (text, length, text_again, length_again);
  g_assert_true (tr_trial_is_same (trial, again, &bytes));
  g_assert_true (tr_trial_validate (trial, &error));
  g_assert_no_error (error);

  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  g_assert_cmpuint (figures->doughs->len, ==, trial->doughs->len);
}

int
LLVMFuzzerTestOneInput (const uint8_t *data,
                        size_t         size)
{
  g_autofree char *bytes = g_memdup2 (data, size);   /* exactly as long: reading past the end is seen */
  g_autoptr (GError) error = NULL;
  g_autoptr (TrTrial) trial = tr_trial_read (bytes, size, &error);

  if (trial != NULL)
    check_trial (trial);
  else
    check_refusal (error);

  return 0;
}
