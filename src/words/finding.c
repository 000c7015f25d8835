/* finding.c: what was found, as sentences: the number, the reason, what mends it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What value, limit, with and name hold is said in calc/findings.h. A number
 * that is not known leaves its clause out; no sentence ever says "nan". The
 * findings about rests and loads are in finding-time.c.
 */

#include "config.h"

#include <glib/gi18n-lib.h>

#include "finding.h"

/* What leaves no length for the dough block, or nothing of a folded block. */
static char *
sentence_no_length (const TrSaid *said,
                    gboolean      trim)
{
  double most = said->finding->with[0], turn = said->finding->with[1];
  g_autofree char *limit = tr_say_length_down (said->reader, most);

  if (trim && !isfinite (turn))
    return g_strdup (_("A trim takes the whole folded block; write less of it."));
  if (trim && !(most > 0))
    return g_strdup_printf (_("The trim of turn %d takes the whole folded block; write less of it."), (int) turn);
  if (trim)
    return g_strdup_printf (_("The trim of turn %d takes the whole folded block; write less than %s, since it is cut from both "
                              "ends."), (int) turn, limit);
  if (!(most > 0))
    return g_strdup (_("The fat block is so wide that no length is left for the dough block; write a smaller width."));
  return g_strdup_printf (_("The rim leaves no length for the dough block; write a rim of less than %s, or a smaller width of "
                            "the fat."), limit);
}

static char *
sentence_lock_in_geometry (const TrSaid *said)
{
  const char *which = said->finding->name != NULL ? said->finding->name : "";

  if (g_str_equal (which, "no-fat"))
    return g_strdup (_("There is no fat in the roll-in, so there is nothing to lock in; add a line to the roll-in, or take "
                       "the lock-in away."));
  if (g_str_equal (which, "no-dough"))
    return g_strdup (_("There is nothing but fat, so there is no dough to lock it in; add the lines of the dough."));
  if (g_str_equal (which, "fat-thickness"))
    return g_strdup (_("The fat block cannot be 0 thick; write a thickness above 0."));
  if (g_str_equal (which, "fat-width"))
    return g_strdup (_("The fat block cannot be 0 wide; write a width above 0, or leave it out."));
  if (g_str_equal (which, "dough-length") || g_str_equal (which, "trim"))
    return sentence_no_length (said, g_str_equal (which, "trim"));
  return g_strdup (_("The sizes of the lock-in cannot be; look at the fat block, the rim and the masses."));
}

static char *
sentence_turn_thicker (const TrSaid *said)
{
  g_autofree char *value = NULL, *limit = NULL;

  tr_say_lengths_apart (said->reader, said->finding->value, said->finding->limit, &value, &limit);
  if (said->turn == 0)
    return g_strdup_printf (_("The sheet is to be %s thick, but the block is only %s; rolling makes thinner, so write less "
                              "or leave out a turn."), value, limit);
  return g_strdup_printf (_("Turn %d is to be rolled to %s, but its block is only %s thick; rolling makes thinner, so "
                            "write less."), said->turn, value, limit);
}

static char *
sentence_no_piece (const TrSaid *said)
{
  g_autofree char *value = tr_words_mass (said->reader, said->finding->value);
  g_autofree char *limit = tr_words_mass (said->reader, said->finding->limit);

  return g_strdup_printf (_("There are %s of dough, and the smallest sheet with one piece needs %s; make more, or cut smaller "
                            "or thinner."), value, limit);
}

static char *
sentence_too_thin (const TrSaid *said)
{
  g_autofree char *value = NULL, *limit = NULL, *enough = NULL;

  tr_say_lengths_apart (said->reader, said->finding->value, said->finding->limit, &value, &limit);
  if (said->turn > 0)
    return g_strdup_printf (_("Turn %d is rolled to %s, and the rollers go down to %s; roll to that at least."),
                            said->turn, value, limit);
  if (!isfinite (said->finding->with[1]))
    return g_strdup_printf (_("The sheet is rolled to %s, and the rollers go down to %s; make it thicker."), value, limit);
  enough = tr_say_length_up (said->reader, said->finding->with[1]);
  return g_strdup_printf (_("The sheet is rolled to %s, and the rollers go down to %s; a sheet of %s can be rolled."),
                          value, limit, enough);
}

static char *
bench_limit (const TrSaid *said,
             const char *limit)
{
  const char *which = said->finding->name != NULL ? said->finding->name : "";

  if (g_str_equal (which, "worktop-width"))
    return g_strdup_printf (_("the worktop is %s wide"), limit);
  if (g_str_equal (which, "roll-width"))
    return g_strdup_printf (_("the rollers take %s"), limit);
  return g_strdup_printf (_("the worktop is %s long"), limit);
}

/* "Roll to 11 mm, or divide the block in two." */
static char *
mend_too_long (const TrSaid *said)
{
  const double *with = said->finding->with;
  g_autofree char *parts = tr_say_small_number (said->reader, with[2]);
  g_autofree char *thickness = isfinite (with[1]) ? tr_say_length_up (said->reader, with[1]) : NULL;

  if (said->turn == 0)
    return isfinite (with[2]) ? g_strdup_printf (_("Roll it as %s sheets."), parts)
                              : g_strdup (_("Cut other rows, or make fewer pieces."));
  if (thickness != NULL && isfinite (with[2]))
    return g_strdup_printf (_("Roll to %s, or divide the dough into %s blocks."), thickness, parts);
  if (thickness != NULL)
    return g_strdup_printf (_("Roll to %s."), thickness);
  if (isfinite (with[2]))
    return g_strdup_printf (_("Divide the dough into %s blocks."), parts);
  return g_strdup (_("Make less dough, or another lock-in."));
}

static char *
sentence_too_long (const TrSaid *said)
{
  g_autofree char *value = NULL, *limit = NULL, *bench = NULL, *mend = mend_too_long (said);
  gboolean wide = g_strcmp0 (said->finding->name, "worktop-length") != 0;

  tr_say_lengths_apart (said->reader, said->finding->value, said->finding->limit, &value, &limit);
  bench = bench_limit (said, limit);
  if (said->turn == 0)
    return wide ? g_strdup_printf (_("The sheet needs %s across; %s. %s"), value, bench, mend)
                : g_strdup_printf (_("The sheet needs %s; %s. %s"), value, bench, mend);
  return wide ? g_strdup_printf (_("The roll-out of turn %d needs %s across; %s. %s"), said->turn, value, bench, mend)
              : g_strdup_printf (_("The roll-out of turn %d needs %s; %s. %s"), said->turn, value, bench, mend);
}

static char *
sentence_too_thick (const TrSaid *said)
{
  g_autofree char *value = NULL, *limit = NULL;

  tr_say_lengths_apart (said->reader, said->finding->value, said->finding->limit, &value, &limit);
  if (said->turn == 1)
    return g_strdup_printf (_("The block is %s thick before turn 1, and the rollers open to %s; lock in a thinner fat block, "
                              "or beat it down with the pin first."), value, limit);
  if (said->turn == 0)
    return g_strdup_printf (_("The block is %s thick before the sheet is rolled, and the rollers open to %s; roll the turn "
                              "before it thinner, or beat the block down with the pin first."), value, limit);
  return g_strdup_printf (_("The block is %s thick before turn %d, and the rollers open to %s; roll the turn before it "
                            "thinner, or beat the block down with the pin first."), value, said->turn, limit);
}

static char *
sentence_mixer (const TrSaid *said)
{
  g_autofree char *value = tr_words_mass (said->reader, said->finding->value);
  g_autofree char *limit = tr_words_mass (said->reader, said->finding->limit);
  g_autofree char *mixes = tr_say_small_number (said->reader, said->finding->with[0]);

  if (!isfinite (said->finding->with[0]))
    return g_strdup_printf (_("The dough weighs %s and the mixer takes %s; make less of it."), value, limit);
  return g_strdup_printf (_("The dough weighs %s and the mixer takes %s; mix it in %s, or make less of it."),
                          value, limit, mixes);
}

static char *
micrometres (const TrSaid *said,
             double      um)
{
  TrRange range = { um, um };

  return tr_words_micrometres (said->reader, &range);
}

static char *
sentence_fat_layer (const TrSaid *said)
{
  const double *with = said->finding->with;
  TrRange usual_range = { with[0], with[1] };
  g_autofree char *value = micrometres (said, said->finding->value);
  g_autofree char *usual = tr_words_micrometres (said->reader, &usual_range);
  g_autofree char *layers = tr_words_count (said->reader, with[2]);
  GString *out = g_string_new (NULL);

  tr_say_append_sentence (out, g_strdup_printf (_("A fat layer of the sheet is %s thick; usual is %s."), value, usual));
  if (isfinite (with[2]) && tr_said_is_over (said))
    tr_say_append_sentence (out, g_strdup_printf (dngettext (GETTEXT_PACKAGE, "With %s layer it stays coarse; add a fold.",
                                                             "With %s layers they stay coarse; add a fold.",
                                                             tr_say_plural (with[2])), layers));
  else if (isfinite (with[2]))
    tr_say_append_sentence (out, g_strdup_printf (dngettext (GETTEXT_PACKAGE, "With %s layer it tears and soaks into the dough; "
                                                             "leave out a fold, or take more fat.",
                                                             "With %s layers they tear and soak into the dough; leave "
                                                             "out a fold, or take more fat.",
                                                             tr_say_plural (with[2])), layers));
  else
    tr_say_append_sentence (out, g_strdup (tr_said_is_over (said) ? _("Add a fold.") : _("Leave out a fold, or take more fat.")));
  return g_string_free (out, FALSE);
}

static char *
sentence_stretch (const TrSaid *said)
{
  const double *with = said->finding->with;
  gboolean wide = g_strcmp0 (said->finding->name, "width") == 0;
  g_autofree char *start = NULL, *rolled = NULL, *times = NULL, *limit = NULL, *what = NULL;
  GString *out = g_string_new (NULL);

  tr_say_lengths_apart (said->reader, with[1], with[2], &start, &rolled);
  for (int decimals = 1; decimals < 4; decimals++)
    {
      g_free (times);
      times = tr_say_trimmed (said->reader, said->finding->value, decimals);
      g_free (limit);
      limit = tr_say_trimmed (said->reader, said->finding->limit, decimals);
      if (!g_str_equal (times, limit))
        break;
    }
  what = said->turn > 0 ? g_strdup_printf (_("Turn %d"), said->turn) : g_strdup (_("The roll-out to the sheet"));
  if (isfinite (with[1]) && isfinite (with[2]))
    tr_say_append_sentence (out, g_strdup_printf (wide ? _("%s stretches the block %s times in width, from %s to %s; over %s "
                                                           "times in one go tears layers.")
                                                       : _("%s stretches the block %s times in length, from %s to %s; over %s "
                                                           "times in one go tears layers."), what, times, start, rolled, limit));
  else
    tr_say_append_sentence (out, g_strdup_printf (_("%s stretches the block %s times; over %s times in one go tears layers."),
                                                  what, times, limit));
  if (isfinite (with[3]))
    {
      g_autofree char *fat = tr_say_length_down (said->reader, with[3]);

      tr_say_append_sentence (out, g_strdup_printf (_("Make the fat block %s thick, or let the dough rest halfway."), fat));
    }
  else
    tr_say_append_sentence (out, g_strdup (_("Let it rest halfway, or roll less thin.")));
  return g_string_free (out, FALSE);
}

static char *
sentence_proof_hot (const TrSaid *said)
{
  g_autofree char *value = tr_words_temperature (said->reader, said->finding->value);
  g_autofree char *limit = tr_words_temperature (said->reader, said->finding->limit);

  return g_strdup_printf (_("The proof at %s is too warm for the layers: %s bears %s before it runs out. Proof at %s or "
                            "below, and for longer."),
                          value, said->name != NULL ? said->name : _("the fat"), limit, limit);
}

static char *
sentence_printed_size (const TrSaid *said)
{
  const double *with = said->finding->with;
  g_autofree char *size = tr_words_area_size (said->reader, with[0], with[1]);
  g_autofree char *value = NULL, *limit = NULL;
  g_autofree char *off = tr_said_percent_trimmed (said, fabs (with[2]), 0);

  tr_say_lengths_apart (said->reader, said->finding->value, said->finding->limit, &value, &limit);
  if (!isfinite (with[2]))
    return g_strdup_printf (_("At the printed %s the dough comes out %s thick, not %s; look up the size, the thickness and "
                              "the amounts once more."), size, value, limit);
  return g_strdup_printf (with[2] < 0 ? _("At the printed %s the dough comes out %s thick, not %s, %s "
                                          "less; look up the size, the thickness and the amounts once more.")
                                      : _("At the printed %s the dough comes out %s thick, not %s, %s "
                                          "more; look up the size, the thickness and the amounts once more."),
                          size, value, limit, off);
}

static char *
sentence_printed_count (const TrSaid *said)
{
  g_autofree char *value = tr_words_count (said->reader, said->finding->value);
  g_autofree char *limit = tr_words_count (said->reader, said->finding->limit);

  return g_strdup_printf (dngettext (GETTEXT_PACKAGE, "The dough gives %s piece of this cut, and %s are written; mend the number, "
                                     "or the size of the cut.",
                                     "The dough gives %s pieces of this cut, and %s are written; mend the number, or the size "
                                     "of the cut.", tr_say_plural (said->finding->value)), value, limit);
}

static char *
sentence_spare (const TrSaid *said)
{
  const double *with = said->finding->with;
  g_autofree char *value = tr_words_count (said->reader, said->finding->value);
  g_autofree char *limit = tr_words_count (said->reader, said->finding->limit);
  g_autofree char *cut = tr_words_count (said->reader, with[0]);
  g_autofree char *rows = tr_say_small_number (said->reader, with[1]);
  g_autofree char *per_row = tr_words_count (said->reader, with[2]);
  g_autofree char *sheets = tr_say_small_number (said->reader, with[3]);
  GString *out = g_string_new (NULL);

  tr_say_append_sentence (out, g_strdup_printf (dngettext (GETTEXT_PACKAGE, "%s piece more than the %s wanted is cut.",
                                                           "%s pieces more than the %s wanted are cut.",
                                                           tr_say_plural (said->finding->value)), value, limit));
  if (isfinite (with[0]) && isfinite (with[1]) && isfinite (with[2]) && isfinite (with[3]))
    {
      g_autofree char *in_rows = g_strdup_printf (dngettext (GETTEXT_PACKAGE, "%s row of %s", "%s rows of %s",
                                                             tr_say_plural (with[1])), rows, per_row);

      tr_say_append_sentence (out, g_strdup_printf (dngettext (GETTEXT_PACKAGE, "With %s and %s sheet there are %s; other rows "
                                                               "may come nearer.",
                                                               "With %s and %s sheets there are %s; other rows may come nearer.",
                                                               tr_say_plural (with[3])), in_rows, sheets, cut));
    }
  else
    tr_say_append_sentence (out, g_strdup (_("Other rows may come nearer.")));
  return g_string_free (out, FALSE);
}

/* What a sentence cannot do without; where that is not known `plainly` is said. */
enum { NEEDS_VALUE = 1 << 0, NEEDS_LIMIT = 1 << 1, NEEDS_WITH_0 = 1 << 2, NEEDS_WITH_1 = 1 << 3 };
#define NEEDS_BOTH (NEEDS_VALUE | NEEDS_LIMIT)
#define NEEDS_ALL (NEEDS_BOTH | NEEDS_WITH_0 | NEEDS_WITH_1)

static const struct {
  char *(*sentence) (const TrSaid *said);
  int needs;
  const char *plainly;
} sentences[TR_N_FINDINGS] = {
  [TR_FINDING_NO_FLOUR] = { tr_sentence_no_flour },
  [TR_FINDING_NOT_WEIGHED] = { tr_sentence_not_weighed },
  [TR_FINDING_LOCK_IN_GEOMETRY] = { sentence_lock_in_geometry },
  [TR_FINDING_TURN_THICKER] = { sentence_turn_thicker, NEEDS_BOTH,
    N_("A turn is thicker than its block; rolling makes thinner, so write less.") },
  [TR_FINDING_NO_PIECE] = { sentence_no_piece, NEEDS_BOTH,
    N_("The dough does not give one piece; make more of it, or cut smaller or thinner.") },
  [TR_FINDING_AMOUNT] = { tr_sentence_amount, NEEDS_VALUE,
    N_("An amount can be read in more than one way, and one was chosen; write it more closely.") },
  [TR_FINDING_TOO_THIN] = { sentence_too_thin, NEEDS_BOTH,
    N_("A roll-out is thinner than the rollers go; make it thicker.") },
  [TR_FINDING_TOO_LONG] = { sentence_too_long, NEEDS_BOTH,
    N_("A roll-out is larger than the bench; roll it thicker, or divide the dough.") },
  [TR_FINDING_TOO_THICK] = { sentence_too_thick, NEEDS_BOTH,
    N_("A block is thicker than the rollers open; beat it down with the pin first.") },
  [TR_FINDING_MIXER] = { sentence_mixer, NEEDS_BOTH,
    N_("The dough is more than the mixer takes; mix it in parts, or make less of it.") },
  [TR_FINDING_SALT] = { tr_sentence_salt, NEEDS_ALL,
    N_("The salt is not what is usual; weigh it again.") },
  [TR_FINDING_BAND] = { tr_sentence_band, NEEDS_ALL,
    N_("One of the ratios is not what is usual.") },
  [TR_FINDING_FAT_LAYER] = { sentence_fat_layer, NEEDS_ALL,
    N_("The fat layers are not as thick as is usual; change the folds, or the fat.") },
  [TR_FINDING_STRETCH] = { sentence_stretch, NEEDS_BOTH,
    N_("A roll-out stretches the block far in one go, which tears layers; let it rest halfway.") },
  [TR_FINDING_REST_SHORT] = { tr_sentence_rest_short, NEEDS_BOTH,
    N_("After a rest the core is not yet cold; let it rest longer.") },
  [TR_FINDING_WINDOW_SHORT] = { tr_sentence_window_short, NEEDS_BOTH,
    N_("The fat gets too soft before a turn is done; work in a cooler room.") },
  [TR_FINDING_FREEZING] = { tr_sentence_freezing, NEEDS_BOTH,
    N_("In the freezer the surface begins to freeze before the rest is over; move the block to the fridge earlier.") },
  [TR_FINDING_PROOF_HOT] = { sentence_proof_hot, NEEDS_BOTH,
    N_("The proof is too warm for the fat in the layers; proof cooler, and for longer.") },
  [TR_FINDING_PRINTED_SIZE] = { sentence_printed_size, NEEDS_ALL,
    N_("The printed size and the mass of the dough do not agree; look up both once more.") },
  [TR_FINDING_PRINTED_COUNT] = { sentence_printed_count, NEEDS_BOTH,
    N_("The cut gives another number of pieces than is written; mend the number, or the size of the cut.") },
  [TR_FINDING_BUTTER_LEGAL] = { tr_sentence_butter_legal },
  [TR_FINDING_LEGAL_MINIMUM] = { tr_sentence_legal_minimum, NEEDS_BOTH,
    N_("The roll-in may be too little for the name; look up your local rules before you sell it under it.") },
  [TR_FINDING_SPOON_SALT] = { tr_sentence_spoon, NEEDS_VALUE | NEEDS_WITH_0 | NEEDS_WITH_1,
    N_("Salt is measured by the spoon, and the same spoon of coarse crystals can be half of it; weigh it.") },
  [TR_FINDING_SPOON_YEAST] = { tr_sentence_spoon, NEEDS_VALUE | NEEDS_WITH_0 | NEEDS_WITH_1,
    N_("Yeast is measured by the spoon, and makes and kinds of yeast differ; weigh it.") },
  [TR_FINDING_LOADS] = { tr_sentence_loads, NEEDS_BOTH,
    N_("A later load proofs for too long; keep it cold until the oven is free.") },
  [TR_FINDING_COLD_CHAIN] = { tr_sentence_cold_chain, NEEDS_BOTH,
    N_("Egg or dairy is not cold for long; keep it cold until it is used. Your local rules decide.") },
  [TR_FINDING_SPARE] = { sentence_spare, NEEDS_BOTH,
    N_("More pieces are cut than are wanted; other rows may come nearer.") },
  [TR_FINDING_ALLERGENS] = { tr_sentence_allergens },
};

static int
what_is_known (const TrFinding *finding)
{
  return (isfinite (finding->value) ? NEEDS_VALUE : 0) | (isfinite (finding->limit) ? NEEDS_LIMIT : 0) |
         (isfinite (finding->with[0]) ? NEEDS_WITH_0 : 0) | (isfinite (finding->with[1]) ? NEEDS_WITH_1 : 0);
}

char *
tr_words_finding (const TrReader       *reader,
                  const TrDoughFigures *figures,
                  const TrFinding      *finding)
{
  g_autofree char *name = NULL;
  TrSaid said = { reader, figures, finding, NULL, 0 };

  g_return_val_if_fail (reader != NULL && figures != NULL && finding != NULL, NULL);
  g_return_val_if_fail (finding->id < TR_N_FINDINGS, NULL);

  if ((sentences[finding->id].needs & ~what_is_known (finding)) != 0)
    return g_strdup (_(sentences[finding->id].plainly));
  name = tr_say_ingredient (figures, finding->name);
  said.name = name;
  if (finding->with[0] >= 0 && finding->with[0] <= TR_MAX_TURNS)
    said.turn = (int) finding->with[0];
  return sentences[finding->id].sentence (&said);
}
