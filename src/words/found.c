/* found.c: how a list of folds that was found is said
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include <glib/gi18n-lib.h>

#include "../calc/lamination.h"
#include "../calc/measure.h"
#include "found.h"
#include "say.h"

#define MOST_ORDERS 4

char *
tr_words_folds (const guint8 *folds,
                guint         n)
{
  GString *out = g_string_new (NULL);

  for (guint i = 0; i < n; i++)
    g_string_append_printf (out, "%s%u", i > 0 ? TR_NO_BREAK_SPACE "·" TR_NO_BREAK_SPACE : "", folds[i]);

  return g_string_free (out, FALSE);
}

char *
tr_words_sequence (const TrSequence *sequence)
{
  g_autofree char *folds = tr_words_folds (sequence->folds, sequence->n_folds);

  /* Translators: how the fat is locked in, and the folds: "Letter lock-in, 3 · 4". */
  return g_strdup_printf (_("%s lock-in, %s"), tr_words_style (sequence->style), folds);
}

char *
tr_words_sequence_layers (const TrReader   *reader,
                          const TrSequence *sequence)
{
  g_autofree char *count = tr_words_count (reader, sequence->fat_layers);
  TrRange um = { sequence->fat_layer_um, sequence->fat_layer_um };
  g_autofree char *thick = tr_words_micrometres (reader, &um);

  if (isnan (sequence->fat_layer_um))
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s fat layer", "%s fat layers", tr_say_plural (sequence->fat_layers)), count);

  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s fat layer, %s", "%s fat layers, %s", tr_say_plural (sequence->fat_layers)),
                          count, thick);
}

char *
tr_words_sequence_bench (const TrReader   *reader,
                         const TrSequence *sequence)
{
  g_autofree char *longest = tr_words_length (reader, round (sequence->longest_mm));
  g_autofree char *stretch = tr_say_trimmed (reader, sequence->worst_stretch, 1);
  g_autofree char *most = tr_say_trimmed (reader, TR_GREATEST_STRETCH, 1);

  if (sequence->worst_stretch > TR_GREATEST_STRETCH + TR_HAIR)
    return g_strdup_printf (_("longest %s, stretched %s times in one go: more than %s, and the layers may tear"), longest, stretch, most);

  return g_strdup_printf (_("longest %s, stretched %s times"), longest, stretch);
}

char *
tr_words_sequence_time (const TrReader   *reader,
                        const TrSequence *sequence)
{
  g_autofree char *hands = tr_words_minutes (reader, sequence->hands_minutes);
  g_autofree char *all = tr_words_minutes (reader, sequence->minutes);

  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s by hand, %s with %u rest", "%s by hand, %s with %u rests", sequence->rests),
                          hands, all, sequence->rests);
}

char *
tr_words_sequence_breaks (const TrSequence *sequence)
{
  g_autoptr (GString) out = g_string_new (NULL);

  for (guint i = 0; i < TR_N_BREAKS; i++)
    if ((sequence->breaks & (1u << i)) != 0)
      g_string_append_printf (out, "%s%s", out->len > 0 ? "; " : "", tr_words_break ((TrBreaks) (1u << i)));

  return out->len > 0 ? g_string_free (g_steal_pointer (&out), FALSE) : NULL;
}

/* What comes one after another and is the same is said once. */
static void
append_named_folds (GString          *out,
                    const TrSequence *sequence)
{
  for (guint i = 0, same; i < sequence->n_folds; i += same)
    {
      g_autofree char *fold = tr_words_fold (sequence->folds[i]);

      for (same = 1; i + same < sequence->n_folds && sequence->folds[i + same] == sequence->folds[i];)
        same++;
      g_string_append (out, i > 0 ? ", " : "");
      if (same > 1)
        g_string_append_printf (out, "%u × ", same);
      g_string_append (out, fold);
    }
}

char *
tr_words_sequence_folds (const TrSequence *sequence)
{
  g_autoptr (GString) out = g_string_new (NULL), orders = g_string_new (NULL);

  append_named_folds (out, sequence);
  for (guint i = 0; i < MIN (sequence->orders->len, MOST_ORDERS); i++)
    {
      g_autofree char *folds = tr_words_folds ((const guint8 *) sequence->orders->data + i * TR_SEARCH_MAX_TURNS, sequence->n_folds);

      g_string_append_printf (orders, "%s%s", i > 0 ? ", " : "", folds);
    }
  if (sequence->orders->len > MOST_ORDERS)
    g_string_append (orders, ", …");
  if (orders->len > 0)
    /* Translators: other orders of the same folds: "letter fold (3), book fold (4); also as 4 · 3". */
    g_string_append_printf (out, _("; also as %s"), orders->str);

  return g_string_free (g_steal_pointer (&out), FALSE);
}

char *
tr_words_sequences_found (const TrReader  *reader,
                          const GPtrArray *sequences,
                          int              own_blocks)
{
  const TrSequence *first;
  guint n_fit = 0;

  if (sequences->len == 0)
    return g_strdup (_("No list of folds gives that. Wish for a wider range, or allow more turns or more folds."));

  first = g_ptr_array_index (sequences, 0);
  for (guint i = 0; i < sequences->len; i++)
    n_fit += ((const TrSequence *) g_ptr_array_index (sequences, i))->breaks == 0;
  if (n_fit == 0)
    return g_strdup (_("Nothing that gives this fits the bench, however the dough is divided. What breaks least stands first."));
  if (first->blocks != own_blocks)
    {
      g_autofree char *blocks = tr_say_small_number (reader, first->blocks);

      return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "Nothing fits as it is divided now; in %s block something does.",
                                           "Nothing fits as it is divided now; in %s blocks something does.", (unsigned long) first->blocks),
                              blocks);
    }
  if (sequences->len >= TR_SEARCH_KEPT)
    return g_strdup_printf (_("The best %u; %u of them fit the bench."), sequences->len, n_fit);

  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u list of folds gives that; %u fit the bench.",
                                       "%u lists of folds give that; %u fit the bench.", sequences->len), sequences->len, n_fit);
}
