/* test-validate.c: an edit that no file could hold is refused
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "sample.h"

#define NUMBER "expected a number from 0 to 1000000000, found "

typedef struct { const char *name; void (*spoil) (TrTrial *trial, TrDough *dough); const char *message; int code; } Spoilt;

static void spoil_nan (TrTrial *t, TrDough *d) { d->batch_value = NAN; }
static void spoil_infinite (TrTrial *t, TrDough *d) { d->lock_in->rim_mm = INFINITY; }
static void spoil_size (TrTrial *t, TrDough *d) { d->cut->base_mm = NAN; }
static void spoil_both (TrTrial *t, TrDough *d) { d->cut->piece_mass_g = 50; }
static void spoil_neither (TrTrial *t, TrDough *d) { d->cut->thickness_mm = NAN; }
static void spoil_turn (TrTrial *t, TrDough *d) { tr_dough_get_turn (d, 0)->thickness_mm = NAN; }
static void spoil_word (TrTrial *t, TrDough *d) { d->kind = TR_N_KINDS; }
static void spoil_text (TrTrial *t, TrDough *d) { g_clear_pointer (&d->name, g_free); }
static void spoil_utf8 (TrTrial *t, TrDough *d) { tr_set_text (&d->notes, "caf\xe9"); }
static void spoil_log (TrTrial *t, TrDough *d) { TrLoggedCut *cut = tr_logged_cut_new (); cut->mass_g = -1; g_ptr_array_insert (d->log->cuts, 0, cut); }
static void spoil_pins (TrTrial *t, TrDough *d) { t->plan = t->plan != NULL ? t->plan : tr_plan_new (); tr_set_text (&t->plan->pins, "[ {} ]"); }
static void spoil_extra (TrTrial *t, TrDough *d) { tr_set_text (&d->extra, "[]"); }
static void spoil_pair (TrTrial *t, TrDough *d) { d->cut->printed_sheet_mm[0] = NAN; }
static void spoil_mark (TrTrial *t, TrDough *d) { ((TrScore *) g_ptr_array_index (t->tasting->scores, 0))->look = 10; }
static void spoil_code (TrTrial *t, TrDough *d) { g_ptr_array_add (t->tasting->codes, tr_code_new ("d1", 555)); }
static void spoil_id (TrTrial *t, TrDough *d) { tr_set_text (&d->id, "d2"); }
static void spoil_bench (TrTrial *t, TrDough *d) { tr_trial_own_bench (t)->worktop_mm[1] = -1; }
static void
spoil_lines (TrTrial *t, TrDough *d)
{
  while (d->lines->len <= TR_MAX_LINES)
    g_ptr_array_add (d->lines, tr_line_new (TR_STAGE_DOUGH, NULL, ""));
}
static void
spoil_length (TrTrial *t, TrDough *d)
{
  g_free (d->notes);
  d->notes = g_strnfill (5000000, 'x');
}

static const Spoilt spoilt[] = {
  { "nan", spoil_nan, "At /doughs/0/batch/value " NUMBER "nothing.", TR_TRIAL_ERROR_VALUE },
  { "infinite", spoil_infinite, "At /doughs/0/lock_in/rim_mm " NUMBER "infinity.", TR_TRIAL_ERROR_VALUE },
  { "no-size", spoil_size, "At /doughs/0/cut/base_mm expected a size of this shape, a number of 0 or more, found nothing.", TR_TRIAL_ERROR_VALUE },
  { "both", spoil_both, "At /doughs/0/cut/piece_mass_g expected either thickness_mm or piece_mass_g, not both, found 50.", TR_TRIAL_ERROR_VALUE },
  { "neither", spoil_neither, "At /doughs/0/cut/piece_mass_g expected either thickness_mm or piece_mass_g, not both, found nothing.", TR_TRIAL_ERROR_VALUE },
  { "turn-without-size", spoil_turn, "At /doughs/0/turns/0/thickness_mm expected a thickness_mm or a length_mm, found nothing.", TR_TRIAL_ERROR_VALUE },
  { "word", spoil_word, "At /doughs/0/kind expected one of croissant, danish, puff, other, found 4.", TR_TRIAL_ERROR_VALUE },
  { "no-text", spoil_text, "At /doughs/0/name expected a text, found nothing.", TR_TRIAL_ERROR_VALUE },
  { "not-utf-8", spoil_utf8, "At /doughs/0/notes expected UTF-8 text, found bytes that are not UTF-8.", TR_TRIAL_ERROR_VALUE },
  { "log-below-nothing", spoil_log, "At /doughs/0/log/cuts/0/mass_g expected a number from 0 to 1000000000 or null, found -1.", TR_TRIAL_ERROR_VALUE },
  { "pins-with-spaces", spoil_pins, "At /plan/pins expected compact text, found \"[ {} ]\".", TR_TRIAL_ERROR_VALUE },
  { "extra-a-list", spoil_extra, "At /doughs/0 expected the text of an object, found \"[]\".", TR_TRIAL_ERROR_VALUE },
  { "half-a-pair", spoil_pair, "At /doughs/0/cut/printed_sheet_mm expected two numbers from 0 to 1000000000 or null, found nothing.", TR_TRIAL_ERROR_VALUE },
  { "mark", spoil_mark, "At /tasting/scores/0/marks/look expected a whole number from 1 to 9 or null, found 10.", TR_TRIAL_ERROR_VALUE },
  { "code-of-a-dough-twice", spoil_code, "At /tasting/codes/d1 expected each name once, found \"d1\".", TR_TRIAL_ERROR_VALUE },
  { "id-twice", spoil_id, "At /doughs/1/id expected an id that nothing else here has, found \"d2\".", TR_TRIAL_ERROR_VALUE },
  { "bench", spoil_bench, "At /bench/worktop_mm expected two numbers from 0 to 1000000000, found -1.", TR_TRIAL_ERROR_VALUE },
  { "too-many-lines", spoil_lines, "At /doughs/0/lines expected a list of at most 200 objects, found 201.", TR_TRIAL_ERROR_VALUE },
  { "too-long", spoil_length, "Expected at most 4177920 bytes, found 5005853.", TR_TRIAL_ERROR_TOO_LARGE },
};

static void
test_spoilt (gconstpointer data)
{
  const Spoilt *one = data;
  g_autoptr (TrTrial) trial = sample_trial ();
  g_autoptr (GError) error = NULL;

  one->spoil (trial, tr_trial_own_dough (trial, 0));
  g_assert_false (tr_trial_validate (trial, &error));
  g_assert_true (g_error_matches (error, TR_TRIAL_ERROR, one->code));
  g_assert_cmpstr (error->message, ==, one->message);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (spoilt); i++)
    {
      g_autofree char *path = g_strconcat ("/trial/validate/refused/", spoilt[i].name, NULL);

      g_test_add_data_func (path, &spoilt[i], test_spoilt);
    }

  return g_test_run ();
}
