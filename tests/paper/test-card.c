/* test-card.c: what stands on a bench card, where, and in which bytes
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <string.h>

#include "calc/formula.h"
#include "paper/paper.h"
#include "picture/shapes.h"
#include "samples.h"

/* What printers keep clear; common practice. */
#define MARGIN_PT (10 * 72 / 25.4)

typedef struct {
  TrFigures *figures;
  TrReader reader;
  TrPages *cards;
  GString *text;                 /* of all pages, one text a line */
} Fixture;

static void
read_pages (Fixture *fixture)
{
  for (guint p = 0; p < tr_pages_count (fixture->cards); p++)
    {
      const TrPicture *page = tr_pages_get (fixture->cards, p);

      for (guint i = 0; i < tr_picture_count_texts (page); i++)
        g_string_append_printf (fixture->text, "\n%s\n", tr_picture_get_text (page, i, NULL));
    }
}

/* The card of one dough of a trial (-1: all). */
static void
open_card (Fixture      *fixture,
           TrTrial      *trial,
           int           dough,
           TrUnitSystem  units,
           TrPaperSize   size)
{
  guint index = (guint) dough;

  fixture->figures = tr_figures_compute (trial, NULL);
  tr_reader_init_plain (&fixture->reader, units);
  fixture->cards = tr_cards_new (fixture->figures, dough < 0 ? NULL : &index, 1, &fixture->reader, size);
  fixture->text = g_string_new (NULL);
  read_pages (fixture);
}

static void
open_sample (Fixture *fixture,
             Sample   sample)
{
  g_autoptr (TrTrial) trial = sample_trial_new (sample);

  open_card (fixture, trial, -1, TR_UNITS_METRIC, TR_PAPER_A4);
}

static void
close_card (Fixture *fixture)
{
  tr_pages_free (fixture->cards);
  tr_figures_unref (fixture->figures);
  g_string_free (fixture->text, TRUE);
}

static const TrDoughFigures *
dough_of (const Fixture *fixture)
{
  return tr_figures_get_dough (fixture->figures, 0);
}

static char *
with_plain_spaces (const char *text)
{
  g_auto (GStrv) parts = g_strsplit (text, "\u00a0", -1);

  return g_strjoinv (" ", parts);
}

/* Lines may have been wrapped, and units stand behind no-break spaces. */
static gboolean
says (const Fixture *fixture,
      const char    *wanted)
{
  g_autofree char *all = with_plain_spaces (fixture->text->str), *plain = with_plain_spaces (wanted);
  g_auto (GStrv) lines = g_strsplit (all, "\n\n", -1);
  g_autofree char *joined = g_strjoinv (" ", lines);

  return strstr (joined, plain) != NULL;
}

static void
assert_says (const Fixture *fixture,
             char          *wanted)
{
  g_autofree char *owned = wanted;

  if (!says (fixture, owned))
    {
      g_test_message ("the card does not say “%s”:%s", owned, fixture->text->str);
      g_test_fail ();
    }
}

/* A whole text of its own. */
static void
assert_has (const Fixture *fixture,
            char          *text)
{
  g_autofree char *owned = text;
  g_autofree char *line = g_strdup_printf ("\n%s\n", owned);

  if (strstr (fixture->text->str, line) == NULL)
    {
      g_test_message ("the card does not have “%s”:%s", owned, fixture->text->str);
      g_test_fail ();
    }
}

/* ---- content ---- */

static void
test_weights_and_their_sum (void)
{
  Fixture fixture;
  const TrFormula *formula;
  g_autofree double *rounded = NULL;
  double sum = 0;

  open_sample (&fixture, SAMPLE_CROISSANT);
  formula = &dough_of (&fixture)->formula;
  rounded = g_new (double, formula->lines->len);
  tr_formula_round_for_scale (formula, dough_of (&fixture)->bench, rounded);
  for (guint i = 0; i < formula->lines->len; i++)
    {
      const TrLineFigures *line = &g_array_index (formula->lines, TrLineFigures, i);
      double step = tr_line_is_fine (line) ? 0.1 : 1;

      assert_has (&fixture, tr_words_mass_number (&fixture.reader, rounded[i], step));
      assert_has (&fixture, g_strdup (tr_words_ingredient (&line->ingredient)));
      if (line->line->stage != TR_STAGE_FINISH)
        sum += rounded[i];
    }
  assert_has (&fixture, tr_words_mass_number (&fixture.reader, sum, fabs (sum - round (sum)) < 1e-6 ? 1 : 0.1));
  g_assert_cmpfloat_with_epsilon (sum, formula->total_g, 1.01);
  close_card (&fixture);
}

/* The reader's own scale goes before that of the trial's bench. */
static void
test_weights_on_the_readers_own_scale (void)
{
  Fixture fixture;
  const TrFormula *formula;
  TrReader reader;

  open_sample (&fixture, SAMPLE_CROISSANT);
  formula = &dough_of (&fixture)->formula;
  reader = fixture.reader;
  reader.scale_step_g = 25;
  tr_pages_free (fixture.cards);
  fixture.cards = tr_cards_new (fixture.figures, NULL, 0, &reader, TR_PAPER_A4);
  g_string_truncate (fixture.text, 0);
  read_pages (&fixture);

  g_autoptr (TrBench) bench = tr_reader_new_bench (&reader, dough_of (&fixture)->bench);
  g_autofree double *rounded = g_new (double, formula->lines->len);
  guint n_others = 0;

  tr_formula_round_for_scale (formula, bench, rounded);
  for (guint i = 0; i < formula->lines->len; i++)
    if (!tr_line_is_fine (&g_array_index (formula->lines, TrLineFigures, i)) && rounded[i] > 0)
      {
        g_assert_cmpfloat_with_epsilon (rounded[i] / 25, round (rounded[i] / 25), 1e-9);
        assert_has (&fixture, tr_words_mass_number (&reader, rounded[i], 1));
        n_others += fabs (rounded[i] - g_array_index (formula->lines, TrLineFigures, i).grams) > 1;
      }
  g_assert_cmpuint (n_others, >, 0);       /* a scale of 1 g would have said otherwise */
  close_card (&fixture);
}

/* The preferment is a group of its own and one line of the final dough. */
static void
test_preferment_comes_back_as_one_line (void)
{
  Fixture fixture;
  const TrFormula *formula;
  g_autofree double *rounded = NULL;
  double sum = 0;

  open_sample (&fixture, SAMPLE_CROISSANT);
  formula = &dough_of (&fixture)->formula;
  rounded = g_new (double, formula->lines->len);
  tr_formula_round_for_scale (formula, dough_of (&fixture)->bench, rounded);
  for (guint i = 0; i < formula->lines->len; i++)
    if (g_array_index (formula->lines, TrLineFigures, i).line->stage == TR_STAGE_PREFERMENT)
      sum += rounded[i];
  assert_has (&fixture, g_strdup ("Poolish"));
  assert_has (&fixture, g_strdup ("Final dough"));
  assert_has (&fixture, g_strdup ("Poolish, all of it"));
  assert_has (&fixture, tr_words_mass_number (&fixture.reader, sum, fabs (sum - round (sum)) < 1e-6 ? 1 : 0.1));
  close_card (&fixture);
}

/* On a coarse scale what is too little for a step keeps its weight, and the
 * sum is still that of the other weights printed. */
static void
test_too_little_for_the_scale_is_not_nothing (void)
{
  g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_CROISSANT);
  Fixture fixture;
  const TrFormula *formula;
  g_autofree double *rounded = NULL;
  double sum = 0;
  guint little = 0;

  trial->bench->scale_step_g = 100;
  open_card (&fixture, trial, -1, TR_UNITS_METRIC, TR_PAPER_A4);
  formula = &dough_of (&fixture)->formula;
  rounded = g_new (double, formula->lines->len);
  tr_formula_round_for_scale (formula, dough_of (&fixture)->bench, rounded);
  for (guint i = 0; i < formula->lines->len; i++)
    {
      const TrLineFigures *line = &g_array_index (formula->lines, TrLineFigures, i);

      sum += line->line->stage != TR_STAGE_FINISH ? rounded[i] : 0;
      if (line->grams > 0 && fabs (rounded[i]) <= 0)
        {
          g_autofree char *grams = tr_words_mass (&fixture.reader, line->grams);

          assert_has (&fixture, g_strconcat (grams, "*", NULL));
          little++;
        }
    }
  g_assert_cmpuint (little, >, 0);
  g_assert_null (strstr (fixture.text->str, "\n0\n"));
  assert_has (&fixture, tr_words_mass_number (&fixture.reader, sum, fabs (remainder (sum, 100)) < 1e-6 ? 100 : 0.1));
  assert_says (&fixture, g_strdup ("* Less than a step of the scale: weigh it on a finer one. The sums leave it out."));
  close_card (&fixture);
  open_sample (&fixture, SAMPLE_CROISSANT);
  g_assert_false (says (&fixture, "Less than a step"));
  close_card (&fixture);
}

static void
test_sizes_of_lock_in_and_turns (void)
{
  for (Sample sample = 0; sample < N_SAMPLES; sample++)
    {
      Fixture fixture;
      const TrDoughFigures *dough;

      open_sample (&fixture, sample);
      dough = dough_of (&fixture);
      if (dough->has_lamination)
        {
          assert_has (&fixture, tr_words_size (&fixture.reader, &dough->lamination.lock_in.fat_mm));
          assert_has (&fixture, tr_words_size (&fixture.reader, &dough->lamination.lock_in.dough_mm));
          assert_has (&fixture, tr_words_size (&fixture.reader, &dough->lamination.lock_in.block_mm));
          assert_has (&fixture, tr_words_count (&fixture.reader, dough->lamination.fat_layers));
        }
      for (guint i = 0; dough->has_lamination && i < dough->lamination.steps->len; i++)
        {
          const TrTurnFigures *turn = &g_array_index (dough->lamination.steps, TrTurnFigures, i);

          assert_says (&fixture, tr_words_size_bare (&fixture.reader, &turn->rolled_mm));
          assert_says (&fixture, tr_words_size_bare (&fixture.reader, &turn->folded_mm));
        }
      if (dough->has_sheet)
        {
          TrSize relaxed = { { dough->sheet.length_mm, dough->sheet.width_mm, dough->sheet.thickness_mm } };

          assert_says (&fixture, tr_words_size (&fixture.reader, &dough->sheet.rolled_mm));
          assert_says (&fixture, tr_words_size (&fixture.reader, &relaxed));
        }
      close_card (&fixture);
    }
}

static void
test_everything_the_bench_needs (void)
{
  static const char *const wanted[] = {
    "24 pieces of", "± 5 %", "Croissant dough", "Brush off flour", "letter fold (3)", "book fold (4)",
    "next roll along the", "Gaps 16 · 12 mm", "core 8 °C: 4 h 44 or more", "roll within 19 min", "Rest 1 h to 12 h, fridge", "Chill the dough", "real", "time", "°C", "real size",
    "let it relax to", "the far edge starts half a base in", "a tray", "oven load", "26 °C", "78 % humidity",
    "wobbles like jelly", "half again as large", "18 min at 190 °C", "if 13 % is lost", "Allergens: ",
    "gluten (wheat)", "eggs", "milk", "Hot oven", "melted fat", "rimmed trays", "Raw egg", "Raw flour and raw dough",
    "5 °C or below", "rollers", "Local food-safety", "licensed practice decide",
  };
  Fixture fixture;

  open_sample (&fixture, SAMPLE_CROISSANT);
  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
    assert_says (&fixture, g_strdup (wanted[i]));
  close_card (&fixture);
}

static void
test_letter_says_which_third_first (void)
{
  Fixture fixture;

  open_sample (&fixture, SAMPLE_DANISH);
  assert_says (&fixture, g_strdup ("bare third over the fat first"));
  close_card (&fixture);
}

static void
test_allergens_of_the_other_doughs (void)
{
  g_autoptr (TrTrial) trial = tr_trial_new ();
  Fixture fixture;

  sample_add (trial, SAMPLE_PUFF);
  sample_add (trial, SAMPLE_DANISH);
  open_card (&fixture, trial, 0, TR_UNITS_METRIC, TR_PAPER_A4);
  assert_says (&fixture, g_strdup ("Other doughs on this bench bring also: eggs"));
  assert_says (&fixture, g_strdup ("almonds"));
  close_card (&fixture);
  open_card (&fixture, trial, 1, TR_UNITS_METRIC, TR_PAPER_A4);
  assert_says (&fixture, g_strdup ("bring no further allergens"));
  close_card (&fixture);
}

static void
test_unweighed_lines_keep_their_words (void)
{
  Fixture fixture;

  open_sample (&fixture, SAMPLE_STRESS);
  assert_says (&fixture, g_strdup ("2 ladles of last week's dough, or a little more"));
  assert_says (&fixture, g_strdup ("not weighed"));
  assert_says (&fixture, g_strdup ("The sum leaves out what is not weighed."));
  close_card (&fixture);
}

static void
test_blocks_and_sheets_are_said (void)
{
  Fixture fixture;

  open_sample (&fixture, SAMPLE_GATE);
  assert_says (&fixture, g_strdup ("Make 2 blocks like this."));
  assert_says (&fixture, g_strdup ("For each of 2 blocks"));
  assert_says (&fixture, g_strdup ("2 × this sheet"));
  assert_says (&fixture, g_strdup ("Rim 12 mm"));
  close_card (&fixture);
}

static void
test_no_yeast_no_proof (void)
{
  Fixture fixture;

  open_sample (&fixture, SAMPLE_PUFF);
  assert_says (&fixture, g_strdup ("None: no yeast."));
  g_assert_false (says (&fixture, "jelly"));
  close_card (&fixture);
}

/* Ounces add up as well as grams: the sum of the printed numbers is printed. */
static void
test_ounces_add_up (void)
{
  g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_DANISH);
  Fixture fixture;
  double sum = 0;
  gboolean found = FALSE;

  open_card (&fixture, trial, -1, TR_UNITS_US, TR_PAPER_LETTER);
  for (guint i = 0, seen = 0; i < tr_picture_count_texts (tr_pages_get (fixture.cards, 0)); i++)
    {
      const char *text = tr_picture_get_text (tr_pages_get (fixture.cards, 0), i, NULL);
      const TrFormula *formula = &dough_of (&fixture)->formula;

      /* the texts after the names of the mix's lines are their weights */
      if (seen < 7 && g_str_equal (text, tr_words_ingredient (&g_array_index (formula->lines, TrLineFigures, seen).ingredient)))
        {
          sum += g_ascii_strtod (tr_picture_get_text (tr_pages_get (fixture.cards, 0), i + 1, NULL), NULL);
          seen++;
        }
      else if (seen == 7 && fabs (g_ascii_strtod (text, NULL) - sum) < 1e-6)
        {
          found = TRUE;
        }
    }
  g_assert_cmpfloat_with_epsilon (sum * 28.349523125, dough_of (&fixture)->formula.total_g, 1.5);
  g_assert_true (found);
  assert_says (&fixture, g_strdup ("°F"));
  close_card (&fixture);
}

/* ---- pages ---- */

static void
test_usual_doughs_take_one_page (void)
{
  for (Sample sample = 0; sample < N_SAMPLES; sample++)
    for (TrPaperSize size = TR_PAPER_A4; size <= TR_PAPER_LETTER; size++)
      {
        g_autoptr (TrTrial) trial = sample_trial_new (sample);
        Fixture fixture;

        open_card (&fixture, trial, -1, TR_UNITS_METRIC, size);
        if (sample == SAMPLE_STRESS)
          g_assert_cmpuint (tr_pages_count (fixture.cards), >, 1);
        else if (sample == SAMPLE_PUFF)
          g_assert_cmpuint (tr_pages_count (fixture.cards), <=, size == TR_PAPER_A4 ? 1 : 2);
        else
          g_assert_cmpuint (tr_pages_count (fixture.cards), ==, 1);
        close_card (&fixture);
      }
}

static void
test_pages_say_which_they_are (void)
{
  Fixture fixture;
  guint n;

  open_sample (&fixture, SAMPLE_STRESS);
  n = tr_pages_count (fixture.cards);
  for (guint i = 1; i <= n; i++)
    assert_has (&fixture, i < n ? g_strdup_printf ("Page %u of %u, goes on", i, n) : g_strdup_printf ("Page %u of %u", i, n));
  close_card (&fixture);
}

static void
test_all_doughs_in_order (void)
{
  g_autoptr (TrTrial) trial = tr_trial_new ();
  Fixture fixture;

  sample_add (trial, SAMPLE_PLAIN);
  sample_add (trial, SAMPLE_CROISSANT);
  sample_add (trial, SAMPLE_DANISH);
  open_card (&fixture, trial, -1, TR_UNITS_METRIC, TR_PAPER_A4);
  g_assert_cmpuint (tr_pages_count (fixture.cards), ==, 3);
  for (guint i = 0; i < 3; i++)
    {
      const TrPicture *page = tr_pages_get (fixture.cards, i);
      gboolean found = FALSE;

      for (guint t = 0; t < tr_picture_count_texts (page); t++)
        found |= g_str_equal (tr_picture_get_text (page, t, NULL), tr_trial_get_dough (trial, i)->name);
      g_assert_true (found);
    }
  close_card (&fixture);
}

static void
check_page (const TrPicture *page,
            const char      *name)
{
  guint n = tr_picture_count_texts (page);
  g_autofree TrBox *boxes = g_new (TrBox, MAX (1, n));
  double width, height;
  TrBox all;

  tr_picture_get_size (page, &width, &height);
  tr_picture_get_extents (page, &all);
  if (all.x < MARGIN_PT || all.y < MARGIN_PT || all.x + all.width > width - MARGIN_PT || all.y + all.height > height - MARGIN_PT)
    {
      g_test_message ("%s: shapes reach from %g, %g to %g, %g", name, all.x, all.y, all.x + all.width, all.y + all.height);
      g_test_fail ();
    }
  for (guint i = 0; i < n; i++)
    tr_picture_get_text (page, i, &boxes[i]);
  for (guint i = 0; i < n; i++)
    for (guint k = i + 1; k < n; k++)
      {
        double across = MIN (boxes[i].x + boxes[i].width, boxes[k].x + boxes[k].width) - MAX (boxes[i].x, boxes[k].x);
        double down = MIN (boxes[i].y + boxes[i].height, boxes[k].y + boxes[k].height) - MAX (boxes[i].y, boxes[k].y);

        if (across > 0.8 && down > 2.2)
          {
            g_test_message ("%s: “%s” lies on “%s”", name, tr_picture_get_text (page, i, NULL), tr_picture_get_text (page, k, NULL));
            g_test_fail ();
          }
      }
}

static void
check_cards (TrTrial      *trial,
             TrUnitSystem  units,
             TrPaperSize   size)
{
  Fixture fixture;

  open_card (&fixture, trial, -1, units, size);
  for (guint p = 0; p < tr_pages_count (fixture.cards); p++)
    {
      g_autofree char *name = g_strdup_printf ("page %u, %s, %s", p, size == TR_PAPER_A4 ? "A4" : "Letter",
                                               units == TR_UNITS_US ? "US" : "metric");

      check_page (tr_pages_get (fixture.cards, p), name);
    }
  close_card (&fixture);
}

static void
test_no_text_on_another_nor_in_the_margins (void)
{
  g_autoptr (TrTrial) trial = sample_trial_all ();

  for (int i = 0; i < 30; i++)
    sample_add_random (trial);
  for (TrUnitSystem units = TR_UNITS_METRIC; units <= TR_UNITS_US; units++)
    for (TrPaperSize size = TR_PAPER_A4; size <= TR_PAPER_LETTER; size++)
      check_cards (trial, units, size);
}

static void
test_paper_sizes (void)
{
  double width, height;

  /* ISO 216: 210 mm × 297 mm; ANSI/ASME Y14.1 A: 8.5 in × 11 in */
  tr_paper_get_size (TR_PAPER_A4, &width, &height);
  g_assert_cmpfloat_with_epsilon (width * 25.4 / 72, 210, 1e-9);
  g_assert_cmpfloat_with_epsilon (height * 25.4 / 72, 297, 1e-9);
  tr_paper_get_size (TR_PAPER_LETTER, &width, &height);
  g_assert_cmpfloat_with_epsilon (width / 72, 8.5, 1e-9);
  g_assert_cmpfloat_with_epsilon (height / 72, 11, 1e-9);
}

/* A dough with a preferment and room on the page has it, without one has not. */
static void
test_total_formula_where_something_ripens (void)
{
  for (int has_poolish = 0; has_poolish < 2; has_poolish++)
    {
      g_autoptr (TrTrial) trial = tr_trial_new ();
      TrDough *dough = tr_dough_new ("d1");
      Fixture fixture;

      g_ptr_array_add (dough->lines, tr_line_new (TR_STAGE_DOUGH, "flour-bread", "400 g"));
      g_ptr_array_add (dough->lines, tr_line_new (TR_STAGE_DOUGH, "water", "200 g"));
      g_ptr_array_add (dough->lines, tr_line_new (TR_STAGE_ROLL_IN, "butter-unsalted", "250 g"));
      if (has_poolish)
        {
          TrLine *line = tr_line_new (TR_STAGE_PREFERMENT, "flour-bread", "100 g");

          tr_set_text (&line->group, "poolish");
          g_ptr_array_add (dough->lines, line);
        }
      g_ptr_array_add (trial->doughs, dough);
      open_card (&fixture, trial, 0, TR_UNITS_METRIC, TR_PAPER_A4);
      g_assert_cmpuint (tr_pages_count (fixture.cards), ==, 1);
      g_assert_cmpint (says (&fixture, "Total formula"), ==, has_poolish);
      assert_says (&fixture, g_strdup ("all water"));
      close_card (&fixture);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/paper/card/weights-are-there-with-their-sum", test_weights_and_their_sum);
  g_test_add_func ("/paper/card/weights-on-the-readers-own-scale", test_weights_on_the_readers_own_scale);
  g_test_add_func ("/paper/card/preferment-comes-back-as-one-line", test_preferment_comes_back_as_one_line);
  g_test_add_func ("/paper/card/too-little-for-the-scale-is-not-nothing", test_too_little_for_the_scale_is_not_nothing);
  g_test_add_func ("/paper/card/sizes-of-lock-in-turns-and-sheet", test_sizes_of_lock_in_and_turns);
  g_test_add_func ("/paper/card/everything-the-bench-needs", test_everything_the_bench_needs);
  g_test_add_func ("/paper/card/letter-says-which-third-first", test_letter_says_which_third_first);
  g_test_add_func ("/paper/card/allergens-of-the-other-doughs", test_allergens_of_the_other_doughs);
  g_test_add_func ("/paper/card/unweighed-lines-keep-their-words", test_unweighed_lines_keep_their_words);
  g_test_add_func ("/paper/card/blocks-and-sheets-are-said", test_blocks_and_sheets_are_said);
  g_test_add_func ("/paper/card/no-yeast-no-proof", test_no_yeast_no_proof);
  g_test_add_func ("/paper/card/total-formula-where-something-ripens", test_total_formula_where_something_ripens);
  g_test_add_func ("/paper/card/ounces-add-up", test_ounces_add_up);
  g_test_add_func ("/paper/pages/usual-doughs-take-one", test_usual_doughs_take_one_page);
  g_test_add_func ("/paper/pages/say-which-they-are", test_pages_say_which_they_are);
  g_test_add_func ("/paper/pages/all-doughs-in-order", test_all_doughs_in_order);
  g_test_add_func ("/paper/pages/no-text-on-another-nor-in-the-margins", test_no_text_on_another_nor_in_the_margins);
  g_test_add_func ("/paper/sizes-are-those-of-the-standards", test_paper_sizes);

  return g_test_run ();
}
