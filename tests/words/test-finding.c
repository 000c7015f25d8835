/* test-finding.c: every finding is a sentence with its number and what mends it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "check.h"

#include "calc/findings.h"

/* Figures of which a sentence only takes the dough's kind, the pantry's names
 * and the problems. */
typedef struct {
  TrTrial *trial;
  TrDoughFigures figures;
} Fixture;

static void
fixture_init (Fixture *fixture)
{
  TrProblem *problem = g_new0 (TrProblem, 1);

  memset (fixture, 0, sizeof *fixture);
  fixture->trial = tr_trial_new ();
  fixture->figures.dough = tr_dough_new ("d1");
  fixture->figures.pantry = fixture->trial->pantry;
  fixture->figures.formula.problems = g_ptr_array_new_with_free_func ((GDestroyNotify) tr_problem_free);
  problem->id = TR_PROBLEM_UNKNOWN_UNIT;
  problem->text = g_strdup ("ladles");
  g_ptr_array_add (fixture->figures.formula.problems, problem);
}

static void
fixture_clear (Fixture *fixture)
{
  tr_dough_unref (fixture->figures.dough);
  g_ptr_array_unref (fixture->figures.formula.problems);
  tr_trial_unref (fixture->trial);
}

typedef struct {
  TrFindingId id;
  double value, limit;
  double with[4];
  const char *name;
  const char *metric;            /* the whole sentence */
  const char *us;                /* a part of it; NULL: as in metric */
} Case;

static const Case cases[] = {
  { TR_FINDING_NO_FLOUR, NAN, NAN, { 3, NAN, NAN, NAN }, NULL,
    "No line is a flour, so nothing can be given in percent of it; add the flour." },
  { TR_FINDING_NO_FLOUR, NAN, NAN, { 0, NAN, NAN, NAN }, NULL,
    "The formula has no lines yet; add a flour, which everything else is measured by." },
  { TR_FINDING_NOT_WEIGHED, NAN, NAN, { 0, 2, NAN, NAN }, "milk-whole",
    "Whole milk: “ladles” is not a unit that is known here; write g, kg, oz, lb, ml, cups, tbsp, tsp, eggs, sticks or %, "
    "for example. Until then the totals are incomplete." },
  { TR_FINDING_LOCK_IN_GEOMETRY, -3, 0, { 11.7, NAN, NAN, NAN }, "dough-length",
    "The rim leaves no length for the dough block; write a rim of less than 11.5" NB "mm, or a smaller width of the fat.",
    "less than 7/16" NB "in" },
  { TR_FINDING_LOCK_IN_GEOMETRY, -4, 0, { 60, 2, NAN, NAN }, "trim",
    "The trim of turn 2 takes the whole folded block; write less than 60" NB "mm, since it is cut from both ends." },
  { TR_FINDING_LOCK_IN_GEOMETRY, 0, 0, { NAN, NAN, NAN, NAN }, "no-fat",
    "There is no fat in the roll-in, so there is nothing to lock in; add a line to the roll-in, or take the lock-in away." },
  { TR_FINDING_LOCK_IN_GEOMETRY, -3, 0, { NAN, NAN, NAN, NAN }, "dough-length",
    "The fat block is so wide that no length is left for the dough block; write a smaller width." },
  { TR_FINDING_LOCK_IN_GEOMETRY, 0, 0, { NAN, NAN, NAN, NAN }, "fat-thickness",
    "The fat block cannot be 0 thick; write a thickness above 0." },
  { TR_FINDING_TURN_THICKER, 12, 9, { 2, NAN, NAN, NAN }, NULL,
    "Turn 2 is to be rolled to 12" NB "mm, but its block is only 9" NB "mm thick; rolling makes thinner, so write less." },
  { TR_FINDING_TURN_THICKER, 9.1, 9.08, { 2, NAN, NAN, NAN }, NULL,
    "Turn 2 is to be rolled to 9.1" NB "mm, but its block is only 9.08" NB "mm thick; rolling makes thinner, so write less.",
    "0.358" NB "in, but its block is only 0.357" NB "in" },
  { TR_FINDING_NO_PIECE, 40, 62, { NAN, NAN, NAN, NAN }, NULL,
    "There are 40" NB "g of dough, and the smallest sheet with one piece needs 62" NB "g; make more, or cut smaller or thinner.",
    "1.41" NB "oz" },
  { TR_FINDING_AMOUNT, 2.5, NAN, { TR_UNIT_CUP, NAN, NAN, NAN }, "mean",
    "A range is written, and its mean of 2.5" NB "cups is used; write one amount once you know it." },
  { TR_FINDING_AMOUNT, 25, NAN, { 25, 14.2, 12.5, NAN }, "bare-percent",
    "25" NB "% in the roll-in is read as percent of the flour. The whole roll-in is then 25.0" NB "% of the flour, 14.2" NB
    "% of the dough and 12.5" NB "% of everything. If another was meant, write “% of dough” or “% of total”." },
  { TR_FINDING_AMOUNT, 1000, NAN, { NAN, NAN, NAN, NAN }, "assumed-flour",
    "Every flour is written in percent, so 1" THIN "000" NB "g of flour are assumed; write one of them as a mass, or choose a "
    "batch, to say how much it is.", "2" NB "lb" NB "3.3" NB "oz" },
  { TR_FINDING_TOO_THIN, 2, 2.5, { 3, NAN, NAN, NAN }, NULL,
    "Turn 3 is rolled to 2" NB "mm, and the rollers go down to 2.5" NB "mm; roll to that at least." },
  { TR_FINDING_TOO_THIN, 2.4, 2.5, { 0, 2.604, NAN, NAN }, NULL,
    "The sheet is rolled to 2.4" NB "mm, and the rollers go down to 2.5" NB "mm; a sheet of 3" NB "mm can be rolled.",
    "a sheet of 1/8" NB "in" },
  { TR_FINDING_TOO_LONG, 1240, 900, { 1, 10.6, 2, 37.8 }, "worktop-length",
    "The roll-out of turn 1 needs 1" THIN "240" NB "mm; the worktop is 900" NB "mm long. Roll to 11" NB "mm, or divide the dough "
    "into two blocks.", "needs 48" NB "7/8" NB "in; the worktop is 35" NB "3/8" NB "in long" },
  { TR_FINDING_TOO_LONG, 460, 450, { 2, NAN, NAN, 2.2 }, "roll-width",
    "The roll-out of turn 2 needs 460" NB "mm across; the rollers take 450" NB "mm. Make less dough, or another lock-in." },
  { TR_FINDING_TOO_LONG, 950, 900, { 0, NAN, 2, 5.6 }, "worktop-length",
    "The sheet needs 950" NB "mm; the worktop is 900" NB "mm long. Roll it as two sheets." },
  { TR_FINDING_TOO_THICK, 45, 40, { 1, NAN, NAN, NAN }, NULL,
    "The block is 45" NB "mm thick before turn 1, and the rollers open to 40" NB "mm; lock in a thinner fat block, or beat it "
    "down with the pin first." },
  { TR_FINDING_MIXER, 5200, 4000, { 2, NAN, NAN, NAN }, NULL,
    "The dough weighs 5" THIN "200" NB "g and the mixer takes 4" THIN "000" NB "g; mix it in two, or make less of it.",
    "11" NB "lb" NB "7.4" NB "oz" },
  { TR_FINDING_SALT, 2.84, 2.4, { 1.6, 2.4, 0.62, NAN }, "butter-salted",
    "Salt is 2.8" NB "% of the flour, more than the usual 1.6–2.4" NB "% of a croissant dough. Butter, salted brings 0.6 points "
    "of it; take an unsalted fat, or so much less salt." },
  { TR_FINDING_SALT, 1.58, 1.6, { 1.6, 2.4, NAN, NAN }, NULL,
    "Salt is 1.58" NB "% of the flour, less than the usual 1.6–2.4" NB "% of a croissant dough. Take more salt, unless it is left "
    "out on purpose." },
  { TR_FINDING_SALT, 0, 1.6, { 1.6, 2.4, NAN, NAN }, NULL,
    "There is no salt; usual is 1.6–2.4" NB "% of the flour of a croissant dough. Add some, unless it is left out on purpose." },
  { TR_FINDING_BAND, 70, 64, { 46, 64, NAN, NAN }, "all_water_percent",
    "All the water, also that of milk and eggs, is 70" NB "% of the flour; usual for a croissant dough is 46–64" NB "%. Take less, "
    "unless that is what you want." },
  { TR_FINDING_BAND, 1, 0, { 0, 0, NAN, NAN }, "yeast_fresh_percent",
    "Yeast, counted as fresh, is 1" NB "% of the flour; usual for a croissant dough is 0" NB "%. Take less, unless that is what you "
    "want." },
  { TR_FINDING_FAT_LAYER, 12, 15, { 15, 200, 81, NAN }, NULL,
    "A fat layer of the sheet is 12" NB "µm thick; usual is 15–200" NB "µm. With 81 layers they tear and soak into the dough; leave "
    "out a fold, or take more fat." },
  { TR_FINDING_FAT_LAYER, 240, 200, { 15, 200, 9, NAN }, NULL,
    "A fat layer of the sheet is 240" NB "µm thick; usual is 15–200" NB "µm. With 9 layers they stay coarse; add a fold." },
  { TR_FINDING_FAT_LAYER, 1159, 200, { 15, 200, 1, NAN }, NULL,
    "A fat layer of the sheet is 1" THIN "159" NB "µm thick; usual is 15–200" NB "µm. With 1 layer it stays coarse; add a fold." },
  { TR_FINDING_STRETCH, 5.2, 4, { 1, 205, 1066, 4.6 }, "length",
    "Turn 1 stretches the block 5.2 times in length, from 205" NB "mm to 1" THIN "066" NB "mm; over 4 times in one go tears layers. "
    "Make the fat block 4.5" NB "mm thick, or let the dough rest halfway.", "5/32" NB "in thick" },
  { TR_FINDING_STRETCH, 4.02, 4, { 0, 200, 804, NAN }, "width",
    "The roll-out to the sheet stretches the block 4.02 times in width, from 200" NB "mm to 804" NB "mm; over 4 times in one go tears "
    "layers. Let it rest halfway, or roll less thin." },
  { TR_FINDING_REST_SHORT, 11, 8, { 1, 30, 52.3, NAN }, NULL,
    "After the rest after turn 1 of 30" NB "min the core is still at 11" NB "°C; 8" NB "°C is wanted. Let it rest at least 53" NB
    "min, or flatten the block.", "52" NB "°F" },
  { TR_FINDING_WINDOW_SHORT, 7.9, 10, { 2, NAN, NAN, NAN }, NULL,
    "Turn 2 takes 10" NB "min, but the fat can be rolled for at most 7" NB "min in this room; work in halves, in a cooler room or on a "
    "chilled worktop." },
  { TR_FINDING_FREEZING, 60, 41.6, { 0, NAN, NAN, NAN }, NULL,
    "In the freezer the surface begins to freeze after 41" NB "min, and the chill before lock-in is written as 1" NB "h; turn the "
    "block over and move it to the fridge by then." },
  { TR_FINDING_PROOF_HOT, 32, 27, { NAN, NAN, NAN, NAN }, "butter-unsalted",
    "The proof at 32" NB "°C is too warm for the layers: Butter, unsalted bears 27" NB "°C before it runs out. Proof at 27" NB "°C or "
    "below, and for longer.", "90" NB "°F" },
  { TR_FINDING_PRINTED_SIZE, 3.2, 4, { 600, 400, -20, NAN }, NULL,
    "At the printed 600 × 400" NB "mm the dough comes out 3" NB "mm thick, not 4" NB "mm, 20" NB "% less; look up the size, the "
    "thickness and the amounts once more." },
  { TR_FINDING_PRINTED_COUNT, 18, 16, { NAN, NAN, NAN, NAN }, NULL,
    "The dough gives 18 pieces of this cut, and 16 are written; mend the number, or the size of the cut." },
  { TR_FINDING_BUTTER_LEGAL, 78, 80, { 18.1, 16, 0, NAN }, "butter-unsalted",
    "Butter, unsalted has 78.0" NB "% fat and 18.1" NB "% water; what is sold as butter has at least 80" NB "% fat and at most 16" NB
    "% water. Compare it with the pack." },
  { TR_FINDING_LEGAL_MINIMUM, 40, 62, { NAN, NAN, NAN, NAN }, "puff",
    "The fat of the roll-in is 40" NB "% of the flour; where the name puff pastry is protected it may ask for 62" NB "%. Look up your "
    "local rules before you sell it under that name." },
  { TR_FINDING_LEGAL_MINIMUM, 40, 60, { 30, NAN, NAN, NAN }, "danish",
    "The fat of the roll-in is 40" NB "% of the flour; where the name Danish is protected it may ask for 60" NB "%. A plain yeasted "
    "laminated pastry asks for 30.0" NB "%. Look up your local rules before you sell it under that name." },
  { TR_FINDING_SPOON_SALT, 12, NAN, { TR_UNIT_TSP, 2, NAN, NAN }, "salt",
    "Salt by the spoon: 2" NB "tsp are taken as 12.0" NB "g, but the same spoon of coarse crystals can be half of that; weigh it.",
    "0.42" NB "oz" },
  { TR_FINDING_SPOON_YEAST, 6, NAN, { TR_UNIT_TBSP, 0.5, NAN, NAN }, "yeast-dry",
    "Yeast, active dry by the spoon: 0.5" NB "tbsp are taken as 6.0" NB "g, but makes and kinds of yeast differ; weigh it.",
    "0.21" NB "oz" },
  { TR_FINDING_LOADS, 205, 180, { 3, NAN, NAN, NAN }, NULL,
    "Baked in three loads, the last one proofs 3" NB "h" NB "25; its longest proof is 3" NB "h. Keep the later loads cold until the oven "
    "is free." },
  { TR_FINDING_COLD_CHAIN, 6.5, 4, { TR_STAGE_FINISH, 0, NAN, NAN }, "egg-whole",
    "Egg, whole is above 5" NB "°C for 6.5" NB "h; over 4" NB "h germs can grow in it. Keep it cold until it is used and throw away what "
    "is left over; your local rules decide.", "41" NB "°F" },
  { TR_FINDING_SPARE, 2, 24, { 26, 2, 13, 1 }, NULL,
    "2 pieces more than the 24 wanted are cut. With two rows of 13 and one sheet there are 26; other rows may come nearer." },
  { TR_FINDING_ALLERGENS, 3, NAN, { NAN, NAN, NAN, NAN }, "egg,gluten-wheat,milk",
    "Allergens in the lines: cereals containing gluten (wheat), eggs, milk. What else was on the bench still counts." },
  { TR_FINDING_ALLERGENS, 2, NAN, { NAN, NAN, NAN, NAN }, "milk,unknown",
    "Allergens in the lines: milk; check the pack. What else was on the bench still counts." },
  { TR_FINDING_ALLERGENS, 0, NAN, { NAN, NAN, NAN, NAN }, NULL,
    "No allergen of the law’s list is in the lines; what else was on the bench still counts." },
};

static void
test_findings_say_their_number_and_what_mends_them (void)
{
  TrReader metric = plain (TR_UNITS_METRIC), us = plain (TR_UNITS_US);
  gboolean seen[TR_N_FINDINGS] = { FALSE };
  Fixture fixture;

  fixture_init (&fixture);
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const Case *one = &cases[i];
      g_autofree char *name = g_strdup (one->name);
      TrFinding finding = { one->id, TR_SEVERITY_NOTE, NULL, one->value, one->limit, NULL,
                            { one->with[0], one->with[1], one->with[2], one->with[3] }, name };
      g_autofree char *in_metric = tr_words_finding (&metric, &fixture.figures, &finding);
      g_autofree char *in_us = tr_words_finding (&us, &fixture.figures, &finding);

      seen[one->id] = TRUE;
      check_sentence (in_metric);
      check_sentence (in_us);
      g_assert_cmpstr (in_metric, ==, one->metric);
      if (one->us != NULL && strstr (in_us, one->us) == NULL)
        g_error ("“%s” is missing in: %s", one->us, in_us);
    }
  for (int id = 0; id < TR_N_FINDINGS; id++)
    if (!seen[id])
      g_error ("no case for %s", tr_finding_id ((TrFindingId) id));
  fixture_clear (&fixture);
}

/* Each of the numbers and the name missing, in every combination. */
static void
test_what_is_not_known_is_left_out (void)
{
  TrReader readers[] = { plain (TR_UNITS_METRIC), with_comma (TR_UNITS_US) };
  Fixture fixture;

  fixture_init (&fixture);
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    for (guint missing = 0; missing < 1 << 7; missing++)
      {
        const Case *one = &cases[i];
        g_autofree char *name = missing & 64 ? NULL : g_strdup (one->name);
        g_autofree char *text = NULL;
        TrFinding finding = { one->id, TR_SEVERITY_NOTE, NULL, missing & 1 ? NAN : one->value, missing & 2 ? NAN : one->limit, NULL,
                              { missing & 4 ? NAN : one->with[0], missing & 8 ? NAN : one->with[1],
                                missing & 16 ? NAN : one->with[2], missing & 32 ? NAN : one->with[3] }, name };

        text = tr_words_finding (&readers[missing % 2], &fixture.figures, &finding);
        check_sentence (text);
      }
  fixture_clear (&fixture);
}

static void
test_any_numbers_and_names_make_a_sentence (void)
{
  static const char *const names[] = {
    NULL, "", "no-fat", "dough-length", "trim", "worktop-length", "worktop-width", "roll-width", "width", "mean", "bare-percent",
    "salt", "butter-unsalted", "puff", "danish", "all_water_percent", "salt_percent", "not-there", "milk", "unknown",
  };
  TrReader readers[] = { plain (TR_UNITS_METRIC), with_comma (TR_UNITS_US) };
  Fixture fixture;

  fixture_init (&fixture);
  for (int i = 0; i < 20000; i++)
    {
      g_autofree char *name = g_strdup (names[g_test_rand_int_range (0, G_N_ELEMENTS (names))]);
      g_autofree char *text = NULL;
      double numbers[6];
      TrFinding finding = { (TrFindingId) (i % TR_N_FINDINGS), TR_SEVERITY_WARN, NULL, 0, 0, NULL, { 0 }, name };

      for (int k = 0; k < 6; k++)
        numbers[k] = g_test_rand_int_range (0, 5) == 0 ? NAN : g_test_rand_int_range (0, 4) == 0 ? g_test_rand_int_range (0, 4)
                                                             : pow (10, g_test_rand_double_range (-4, 6));
      finding.value = numbers[0];
      finding.limit = numbers[1];
      memcpy (finding.with, numbers + 2, sizeof finding.with);
      fixture.figures.dough->kind = (TrKind) g_test_rand_int_range (0, TR_N_KINDS);
      text = tr_words_finding (&readers[i % 2], &fixture.figures, &finding);
      check_sentence (text);
    }
  fixture_clear (&fixture);
}

static void
test_every_ratio_has_a_sentence_of_its_own (void)
{
  TrReader reader = plain (TR_UNITS_METRIC);
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  Fixture fixture;

  fixture_init (&fixture);
  for (int ratio = 0; ratio < TR_N_RATIOS; ratio++)
    {
      g_autofree char *name = g_strdup (tr_ratio_key ((TrRatio) ratio));
      TrFinding finding = { TR_FINDING_BAND, TR_SEVERITY_NOTE, NULL, 70, 64, NULL, { 46, 64, NAN, NAN }, name };
      char *text = tr_words_finding (&reader, &fixture.figures, &finding);

      g_assert_null (strstr (text, "One of the ratios"));
      g_assert_true (g_hash_table_add (seen, text));
    }
  fixture_clear (&fixture);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/words/finding/say-their-number-and-what-mends-them", test_findings_say_their_number_and_what_mends_them);
  g_test_add_func ("/words/finding/what-is-not-known-is-left-out", test_what_is_not_known_is_left_out);
  g_test_add_func ("/words/finding/any-numbers-and-names-make-a-sentence", test_any_numbers_and_names_make_a_sentence);
  g_test_add_func ("/words/finding/every-ratio-has-a-sentence-of-its-own", test_every_ratio_has_a_sentence_of_its_own);

  return g_test_run ();
}
