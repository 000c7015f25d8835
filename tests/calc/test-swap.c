/* test-swap.c: one ingredient for another, and what one ratio mends
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The examples are worked by hand from USDA National Nutrient Database SR28,
 * g per 100 g (NDB number): salted butter 81.11 fat, 15.87 water, 643 mg
 * sodium (01001); unsalted 81.11, 17.94, 11 (01145); whole milk 3.25, 88.13,
 * 43 (01077); skimmed 0.08, 90.84, 42 (01085); whole milk powder 26.71, 2.47
 * (01090); fresh yeast 69.00 water (18374), dry 5.08 (18375). Salt by effect
 * is sodium × 2.5 (EU 1169/2011, Annex I). The random doughs are held to what
 * was promised: what is held is as before, within the rounding.
 */

#include "calc/account.h"
#include "calc/balance.h"
#include "calc/formula.h"
#include "calc/repair.h"
#include "calc/swap.h"
#include "case.h"
#include "doughs.h"

#define FAT TR_KEPT_BIT (TR_KEPT_FAT)
#define WATER TR_KEPT_BIT (TR_KEPT_WATER)
#define SALT TR_KEPT_BIT (TR_KEPT_SALT)
#define YEAST TR_KEPT_BIT (TR_KEPT_YEAST)
#define SOLIDS TR_KEPT_BIT (TR_KEPT_SOLIDS)

static Case
case_of_kind (const char *const *lines,
              TrKind             kind)
{
  TrTrial *trial = tr_trial_new ();
  TrDough *written = test_dough_new (lines);

  written->kind = kind;
  g_ptr_array_add (trial->doughs, written);

  return case_of_trial (trial);
}

static Case
case_new (const char *const *lines)
{
  return case_of_kind (lines, TR_KIND_CROISSANT);
}

typedef struct {
  const char *name;
  const char *lines[10];
  guint index;
  const char *ingredient;
  TrKeptSet holds;
  const char *amounts[8];        /* of all lines afterwards */
} Worked;

static const Worked worked[] = {
  /* Fat alike: 400 g stay. Salt (643 − 11) mg × 2.5 × 4 = 6.32 g more: 18.32, within 0.1 g (0.01 points of 1000 g
   * flour). Water (17.94 − 15.87) × 4 = 8.28 g less: 491.72, within 0.4 g. */
  { "salted-to-unsalted", { "d flour-bread 1000 g", "d water 500 g", "d salt 12 g", "r butter-salted 400 g" },
    3, "butter-unsalted", FAT | WATER | SALT, { "1000 g", "492 g", "18.3 g", "400 g" } },
  /* ... and nothing else moves that is not to be held. */
  { "only-fat", { "d flour-bread 1000 g", "d water 500 g", "d salt 12 g", "r butter-salted 400 g" },
    3, "butter-unsalted", FAT, { "1000 g", "500 g", "12 g", "400 g" } },
  { "unsalted-to-salted", { "d flour-bread 1000 g", "d water 500 g", "d salt 20 g", "r butter-unsalted 400 g" },
    3, "butter-salted", SALT, { "1000 g", "500 g", "13.7 g", "400 g" } },
  /* 99.48 g of fat in butter oil (01003): 400 × 81.11/99.48 = 326.1 g; its water 0.24: 71.76 − 0.78 = 70.98 g more. */
  { "butter-to-butter-oil", { "d flour-bread 1000 g", "d water 500 g", "d salt 12 g", "r butter-unsalted 400 g" },
    3, "butter-oil", FAT | WATER, { "1000 g", "571 g", "12 g", "326 g" } },
  /* 30 g fresh are 12 g dry (factor 2.5); water 20.70 − 0.61 = 20.09 g */
  { "fresh-to-dry", { "d flour-bread 1000 g", "d water 500 g", "d yeast-fresh 30 g" },
    2, "yeast-dry", YEAST | WATER, { "1000 g", "520 g", "12 g" } },
  /* Water 220.33 + 8.97 = 229.30 = 0.9084 m + 0.1794 b; fat 8.13 + 40.56 = 48.68 = 0.0008 m + 0.8111 b:
   * m = 240.6, b = 59.8 */
  { "whole-to-skimmed", { "d flour-bread 1000 g", "d milk-whole 250 g", "d butter-unsalted 50 g", "d water 300 g" },
    1, "milk-skim", FAT | WATER, { "1000 g", "241 g", "60 g", "300 g" } },
  /* Solids not fat: 250 × 8.62 % = 21.55 g, of the powder 70.82 %: 30.4 g. Water 220.33 − 0.75 = 219.57 g */
  { "milk-to-powder", { "d flour-bread 1000 g", "d milk-whole 250 g", "d water 500 g" },
    1, "milk-powder-whole", SOLIDS | WATER, { "1000 g", "30.5 g", "719.5 g" } },
  /* 250 × 88.13 % = 220.3 g of water, one water line and nothing else */
  { "milk-to-water", { "d flour-bread 1000 g", "d milk-whole 250 g" },
    1, "water", WATER, { "1000 g", "220 g" } },
  /* A percentage stays one; 40 % are 400 g */
  { "percent", { "d flour-bread 1000 g", "d water 50 %", "d salt 1.2 %", "r butter-salted 40 %" },
    3, "butter-unsalted", FAT | WATER | SALT, { "1000 g", "49.2 %", "1.83 %", "40 %" } },
  /* Two sticks are 226 g of either; another stick might be another weight */
  { "sticks", { "d flour-bread 1000 g", "r butter-unsalted 2 sticks" },
    1, "lard", 0, { "1000 g", "226 g" } },
  { "sticks-alike", { "d flour-bread 1000 g", "r butter-unsalted 2 sticks" },
    1, "butter-salted", 0, { "1000 g", "2 sticks" } },
  { "flour-by-weight", { "d flour-bread 1000 g", "d water 500 g" },
    0, "flour-plain", 0, { "1000 g", "500 g" } },
  /* What is brushed on is not of the mix: 20 g of milk, 19.4 of skimmed */
  { "finish", { "d flour-bread 1000 g", "d water 500 g", "f milk-whole 20 g" },
    2, "milk-skim", WATER, { "1000 g", "500 g", "19.5 g" } },
};

static void
test_worked (gconstpointer data)
{
  const Worked *test = data;
  Case self = case_new (test->lines);
  g_autoptr (GError) error = NULL;

  g_assert_true (tr_swap_apply (self.dough, case_before (&self), test->index, test->ingredient, test->holds, &error));
  g_assert_no_error (error);
  g_assert_cmpstr (tr_dough_get_line (self.dough, test->index)->ingredient, ==, test->ingredient);
  for (guint i = 0; i < self.dough->lines->len; i++)
    g_assert_cmpstr (case_amount (&self, i), ==, test->amounts[i]);
  case_clear (&self);
}

typedef struct {
  const char *name;
  const char *lines[10];
  guint index;
  const char *ingredient;
  TrKeptSet holds;
  TrSwapError code;
  TrKept kept;
  int line;
  double wanted_g, there_g;
} Refused;

static const Refused refused[] = {
  { "no-water", { "d flour-bread 1000 g", "d salt 12 g", "r butter-salted 400 g" },
    2, "butter-unsalted", FAT | WATER, TR_SWAP_ERROR_NO_LINE, TR_KEPT_WATER, -1, NAN, NAN },
  { "no-salt", { "d flour-bread 1000 g", "d water 500 g", "r butter-salted 400 g" },
    2, "butter-unsalted", FAT | SALT, TR_SWAP_ERROR_NO_LINE, TR_KEPT_SALT, -1, NAN, NAN },
  { "no-fat", { "d flour-bread 1000 g", "d milk-whole 500 g", "r butter-unsalted 400 g" },
    1, "water", FAT | WATER, TR_SWAP_ERROR_NO_LINE, TR_KEPT_FAT, -1, NAN, NAN },
  /* 6.32 g would have to go, see above */
  { "too-little-salt", { "d flour-bread 1000 g", "d water 500 g", "d salt 5 g", "r butter-unsalted 400 g" },
    3, "butter-salted", FAT | SALT, TR_SWAP_ERROR_TOO_LITTLE, TR_KEPT_SALT, 2, 6.32, 5 },
  { "another-kind", { "d flour-bread 1000 g", "d water 500 g" },
    1, "butter-salted", 0, TR_SWAP_ERROR_OTHER_KIND, TR_N_KEPT, 1, NAN, NAN },
  { "nothing-of-it", { "d flour-bread 1000 g", "d milk-powder-skim 50 g" },
    1, "water", 0, TR_SWAP_ERROR_OTHER_KIND, TR_N_KEPT, 1, NAN, NAN },
  { "not-there", { "d flour-bread 1000 g", "d water 500 g" },
    1, "ladle", 0, TR_SWAP_ERROR_OTHER_KIND, TR_N_KEPT, 1, NAN, NAN },
  { "not-weighed", { "d flour-bread 1000 g", "d butter-salted 2 ladles" },
    1, "butter-unsalted", FAT, TR_SWAP_ERROR_NOT_WEIGHED, TR_N_KEPT, 1, NAN, NAN },
};

static void
test_refused (gconstpointer data)
{
  const Refused *test = data;
  Case self = case_new (test->lines);
  g_autoptr (GError) error = NULL;

  g_assert_false (tr_swap_apply (self.dough, case_before (&self), test->index, test->ingredient, test->holds, &error));
  g_assert_error (error, TR_SWAP_ERROR, (int) test->code);
  const TrSwapRefusal *refusal = tr_swap_error_get_refusal (error);
  g_assert_cmpint ((int) refusal->kept, ==, (int) test->kept);
  g_assert_cmpint (refusal->line, ==, test->line);
  if (!isnan (test->wanted_g))
    {
      g_assert_cmpfloat_with_epsilon (refusal->wanted_g, test->wanted_g, 0.005);
      g_assert_cmpfloat_with_epsilon (refusal->there_g, test->there_g, 1e-9);
    }
  for (guint i = 0; i < self.dough->lines->len; i++)
    {
      g_assert_cmpstr (case_amount (&self, i), ==, tr_dough_get_line (case_before (&self)->dough, i)->amount);
      g_assert_cmpstr (tr_dough_get_line (self.dough, i)->ingredient, ==, tr_dough_get_line (case_before (&self)->dough, i)->ingredient);
    }
  case_clear (&self);
}

/* A baker's own butter whose sodium nobody knows. */
static void
test_not_known (void)
{
  const char *const lines[] = { "d flour-bread 1000 g", "d water 500 g", "d salt 12 g", "r butter-salted 400 g", NULL };
  g_autoptr (TrTrial) trial = tr_trial_new ();
  g_autoptr (GError) error = NULL;
  TrOwnIngredient *own = tr_own_ingredient_new ("butter-mine", "butter-unsalted");
  TrKeptSet usual;
  TrKept first;

  own->unknown[TR_PART_SODIUM_MG] = TRUE;
  g_ptr_array_add (tr_trial_own_pantry (trial)->own, own);
  g_ptr_array_add (trial->doughs, test_dough_new (lines));
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  const TrDoughFigures *dough_figures = tr_figures_get_dough (figures, 0);
  g_autoptr (TrTrial) draft = tr_trial_copy (trial);
  TrDough *dough = tr_trial_own_dough (draft, 0);

  g_assert_cmpuint (tr_swap_get_choices (dough_figures, 3, "butter-mine", &usual, &first), ==, FAT | WATER | SALT);
  g_assert_cmpuint (usual, ==, FAT | WATER);
  g_assert_false (tr_swap_apply (dough, dough_figures, 3, "butter-mine", FAT | SALT, &error));
  g_assert_error (error, TR_SWAP_ERROR, TR_SWAP_ERROR_NOT_KNOWN);
  g_assert_cmpint ((int) tr_swap_error_get_refusal (error)->kept, ==, TR_KEPT_SALT);
  g_assert_true (tr_swap_apply (dough, dough_figures, 3, "butter-mine", usual, NULL));
  g_assert_cmpstr (tr_dough_get_line (dough, 3)->ingredient, ==, "butter-mine");

  g_autoptr (TrAccount) account = tr_account_new (dough_figures, dough);
  g_assert_true (tr_account_is_held (account, TR_KEPT_WATER));
  g_assert_true (isnan (account->after_g[TR_KEPT_SALT]));
  g_assert_false (tr_account_is_held (account, TR_KEPT_SALT));
}

static gboolean
list_has (GPtrArray  *list,
          const char *id)
{
  for (guint i = 0; i < list->len; i++)
    if (g_strcmp0 (list->pdata[i], id) == 0)
      return TRUE;

  return FALSE;
}

static void
test_families (void)
{
  static const char *const lines[] = { "d butter-salted 10 g", "d milk-whole 10 g", "d yeast-fresh 10 g", "d water 10 g", NULL };
  Case self = case_new (lines);
  g_autoptr (GPtrArray) fats = tr_swap_list (case_before (&self), 0), milks = tr_swap_list (case_before (&self), 1);
  g_autoptr (GPtrArray) yeasts = tr_swap_list (case_before (&self), 2), waters = tr_swap_list (case_before (&self), 3);

  g_assert_true (list_has (fats, "butter-unsalted") && list_has (fats, "lard") && !list_has (fats, "butter-salted"));
  g_assert_true (!list_has (fats, "milk-whole") && !list_has (fats, "cream-heavy"));
  g_assert_true (list_has (milks, "water") && list_has (milks, "milk-powder-skim") && list_has (milks, "soy-drink"));
  g_assert_cmpuint (yeasts->len, ==, 2);
  g_assert_true (list_has (waters, "milk-whole") && !list_has (waters, "milk-powder-skim"));
  case_clear (&self);
}

/* Only what makes a difference is asked about, and what nothing can hold is not usual. */
static void
test_choices (void)
{
  static const char *const lines[] = { "d flour-bread 1000 g", "d water 500 g", "d yeast-fresh 30 g", "r butter-salted 400 g", NULL };
  Case self = case_new (lines);
  TrKeptSet usual;
  TrKept first;

  g_assert_cmpuint (tr_swap_get_choices (case_before (&self), 3, "butter-unsalted", &usual, &first), ==, FAT | WATER | SALT);
  g_assert_cmpuint (usual, ==, FAT | WATER);
  g_assert_cmpint ((int) first, ==, TR_KEPT_FAT);
  g_assert_cmpuint (tr_swap_get_choices (case_before (&self), 2, "yeast-dry", &usual, &first), ==, YEAST | WATER);
  g_assert_cmpint ((int) first, ==, TR_KEPT_YEAST);
  tr_swap_get_choices (case_before (&self), 0, "flour-plain", &usual, &first);
  g_assert_cmpuint (usual, ==, 0);
  g_assert_cmpint ((int) first, ==, TR_N_KEPT);
  case_clear (&self);
}

/* What is said is taken from what was done. */
static void
test_account (void)
{
  static const char *const lines[] = { "d flour-bread 1000 g", "d water 500 g", "d salt 12 g", "r butter-salted 400 g", NULL };
  Case self = case_new (lines);

  g_assert_true (tr_swap_apply (self.dough, case_before (&self), 3, "butter-unsalted", FAT | SALT, NULL));
  g_autoptr (TrAccount) account = tr_account_new (case_before (&self), self.dough);
  const TrChange *swapped = account->changes->pdata[0], *salt = account->changes->pdata[1];

  g_assert_cmpuint (account->changes->len, ==, 2);
  g_assert_cmpuint (swapped->index, ==, 3);
  g_assert_cmpstr (swapped->was, ==, "butter-salted");
  g_assert_cmpstr (swapped->is, ==, "butter-unsalted");
  g_assert_cmpstr (salt->from, ==, "12 g");
  g_assert_cmpstr (salt->to, ==, "18.3 g");
  g_assert_cmpfloat_with_epsilon (salt->to_g - salt->from_g, 6.3, 1e-9);
  g_assert_true (tr_account_is_held (account, TR_KEPT_FAT) && tr_account_is_held (account, TR_KEPT_SALT));
  g_assert_false (tr_account_is_held (account, TR_KEPT_WATER));
  g_assert_cmpfloat_with_epsilon (account->after_g[TR_KEPT_WATER] - account->before_g[TR_KEPT_WATER], 8.28, 0.02);
  case_clear (&self);
}

/* Random doughs */

static const char *
pick (const char *const *words,
      guint              n)
{
  return words[g_test_rand_int_range (0, (int) n)];
}

static char *
random_amount (double least_g,
               double most_g)
{
  double grams = g_test_rand_double_range (least_g, most_g);

  switch (g_test_rand_int_range (0, 5))
    {
    case 0: return g_strdup_printf ("%.0f g", grams);
    case 1: return g_strdup_printf ("%.1f g", grams);
    case 2: return g_strdup_printf ("%.2f oz", grams / 28.349523125);
    case 3: return g_strdup_printf ("%.2f %%", grams / 10);
    default: return g_strdup_printf ("%.4f kg", grams / 1000);
    }
}

static TrDough *
random_dough (void)
{
  static const char *const fats[] = { "butter-unsalted", "butter-salted", "margarine-stick-salted", "lard", "butter-oil" };
  static const char *const wets[] = { "milk-whole", "milk-skim", "buttermilk", "cream-light", "soy-drink" };
  static const char *const yeasts[] = { "yeast-fresh", "yeast-dry", "yeast-instant" };
  static const char *const nothing[] = { NULL };
  const struct { TrStage stage; const char *ingredient; double least_g, most_g; } lines[] = {
    { TR_STAGE_DOUGH, "flour-bread", 800, 1200 }, { TR_STAGE_DOUGH, "water", 150, 500 },
    { TR_STAGE_DOUGH, "salt", 8, 25 }, { TR_STAGE_DOUGH, pick (fats, G_N_ELEMENTS (fats)), 40, 120 },
    { TR_STAGE_DOUGH, pick (wets, G_N_ELEMENTS (wets)), 50, 300 }, { TR_STAGE_DOUGH, pick (yeasts, G_N_ELEMENTS (yeasts)), 5, 40 },
    { TR_STAGE_DOUGH, "sugar", 40, 120 }, { TR_STAGE_PREFERMENT, "starter-wheat", 50, 200 },
    { TR_STAGE_ROLL_IN, pick (fats, G_N_ELEMENTS (fats)), 200, 500 },
  };
  TrDough *dough = test_dough_new (nothing);

  for (guint i = 0; i < G_N_ELEMENTS (lines); i++)
    {
      g_autofree char *written = i == 0 ? g_strdup ("1000 g") : random_amount (lines[i].least_g, lines[i].most_g);
      TrLine *line = tr_line_new (lines[i].stage, lines[i].ingredient, written);

      g_ptr_array_add (dough->lines, line);
    }
  if (g_test_rand_bit ())
    tr_set_text (&tr_dough_get_line (dough, dough->lines->len - 1)->amount, "26 % of dough");

  return dough;
}

static void
test_random (void)
{
  guint n_done = 0, n_tried = 0;

  for (guint round = 0; round < 300; round++)
    {
      g_autoptr (TrTrial) trial = tr_trial_new ();
      g_autoptr (GError) error = NULL;
      TrKeptSet usual;
      TrKept first;

      g_ptr_array_add (trial->doughs, random_dough ());
      g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
      const TrDoughFigures *was = tr_figures_get_dough (figures, 0);
      guint index = (guint) g_test_rand_int_range (0, (int) was->formula.lines->len);
      g_autoptr (GPtrArray) list = tr_swap_list (was, index);

      if (list->len == 0)
        continue;
      n_tried++;
      const char *id = list->pdata[g_test_rand_int_range (0, (int) list->len)];
      tr_swap_get_choices (was, index, id, &usual, &first);
      g_autoptr (TrTrial) draft = tr_trial_copy (trial);
      TrDough *dough = tr_trial_own_dough (draft, 0);

      if (!tr_swap_apply (dough, was, index, id, usual, &error))
        {
          g_assert_cmpstr (tr_dough_get_line (dough, index)->ingredient, ==, tr_dough_get_line (was->dough, index)->ingredient);
          g_assert_true (error->code == TR_SWAP_ERROR_TOO_LITTLE || error->code == TR_SWAP_ERROR_AT_ONCE);
          continue;
        }
      n_done++;
      g_autoptr (TrFigures) later = tr_figures_compute (draft, NULL);
      const TrDoughFigures *is = tr_figures_get_dough (later, 0);
      g_autoptr (TrAccount) account = tr_account_new (was, dough);

      g_assert_cmpuint (is->formula.problems->len, ==, 0);
      g_assert_cmpfloat_with_epsilon (is->formula.written_flour_g, was->formula.written_flour_g, 1e-6);
      g_assert_cmpuint (account->changes->len, <=, 4);
      for (TrKept hold = 0; hold < TR_N_KEPT; hold++)
        if ((usual & TR_KEPT_BIT (hold)) != 0 && hold != TR_KEPT_SOLIDS)
          g_assert_true (tr_account_is_held (account, hold));
      /* ... and the report's own figures, which are summed elsewhere. */
      if ((usual & SALT) != 0)
        g_assert_cmpfloat_with_epsilon (is->formula.salt_percent, was->formula.salt_percent, 2 * TR_RATIO_FINE_TOLERANCE);
      if ((usual & YEAST) != 0)
        g_assert_cmpfloat_with_epsilon (is->formula.yeast_fresh_percent, was->formula.yeast_fresh_percent, 2 * TR_RATIO_FINE_TOLERANCE);
      if ((usual & FAT) != 0)
        g_assert_cmpfloat_with_epsilon (is->formula.mix_per_100g[TR_PART_FAT] * is->formula.written_total_g / was->formula.written_flour_g,
                                        was->formula.mix_per_100g[TR_PART_FAT] * was->formula.written_total_g / was->formula.written_flour_g,
                                        2 * TR_RATIO_TOLERANCE);
    }
  g_test_message ("%u of %u swaps done, the others refused", n_done, n_tried);
  g_assert_cmpuint (n_done, >, n_tried / 2);
}

/* There and back leaves what was there. */
static void
test_there_and_back (void)
{
  static const char *const lines[] = { "d flour-bread 1000 g", "d water 500 g", "d salt 12 g", "r butter-salted 400 g", NULL };
  Case self = case_new (lines);

  g_assert_true (tr_swap_apply (self.dough, case_before (&self), 3, "butter-unsalted", FAT | WATER | SALT, NULL));
  g_autoptr (TrTrial) back = tr_trial_copy (self.draft);
  TrDough *dough = tr_trial_own_dough (back, 0);

  g_assert_true (tr_swap_apply (dough, case_after (&self), 3, "butter-salted", FAT | WATER | SALT, NULL));
  g_assert_cmpstr (tr_dough_get_line (dough, 2)->amount, ==, "12 g");
  g_assert_cmpstr (tr_dough_get_line (dough, 1)->amount, ==, "500 g");
  g_assert_cmpstr (tr_dough_get_line (dough, 3)->amount, ==, "400 g");
  case_clear (&self);
}

/* Repairs */

static const TrFinding *
find (const TrDoughFigures *figures,
      TrFindingId           id,
      const char           *name)
{
  for (guint i = 0; i < figures->findings->len; i++)
    {
      const TrFinding *finding = figures->findings->pdata[i];

      if (finding->id == id && (name == NULL || g_strcmp0 (finding->name, name) == 0))
        return finding;
    }

  return NULL;
}

typedef struct {
  const char *name;
  TrKind kind;
  const char *lines[10];
  TrFindingId id;
  const char *finding;           /* its name; NULL: any */
  double target;                 /* NaN: nothing mends it */
  gboolean adds_line;
} Mended;

/* Bands of data/bands.csv: croissant salt 1.6–2.4, water 46–64, roll-in 22–38, fat 2–15, yeast 2–6, sugar 3–14; puff
 * roll-in 30–65, yeast 0. */
static const Mended mended[] = {
  { "salt-over", TR_KIND_CROISSANT, { "d flour-bread 1000 g", "d water 550 g", "d salt 30 g" }, TR_FINDING_SALT, NULL, 2.0, FALSE },
  { "salt-under", TR_KIND_CROISSANT, { "d flour-bread 1000 g", "d water 550 g", "d salt 5 g" }, TR_FINDING_SALT, NULL, 2.0, FALSE },
  { "no-salt", TR_KIND_CROISSANT, { "d flour-bread 1000 g", "d water 550 g" }, TR_FINDING_SALT, NULL, 2.0, TRUE },
  /* 500 g of salted butter bring 8.04 g, 0.8 points, and the salt line does the rest */
  { "salted-butter", TR_KIND_CROISSANT, { "d flour-bread 1000 g", "d water 550 g", "d salt 20 g", "r butter-salted 500 g" },
    TR_FINDING_SALT, NULL, 2.0, FALSE },
  { "dry", TR_KIND_CROISSANT, { "d flour-bread 1000 g", "d water 400 g" }, TR_FINDING_BAND, "all_water_percent", 47, FALSE },
  { "wet", TR_KIND_CROISSANT, { "d flour-bread 1000 g", "d water 700 g" }, TR_FINDING_BAND, "all_water_percent", 63, FALSE },
  { "no-water", TR_KIND_CROISSANT, { "d flour-bread 1000 g", "d salt 20 g" }, TR_FINDING_BAND, "all_water_percent", 50, TRUE },
  { "roll-in-under", TR_KIND_CROISSANT, { "d flour-bread 1000 g", "d water 500 g", "r butter-unsalted 150 g" },
    TR_FINDING_BAND, "roll_in_percent_of_dough", 23, FALSE },
  { "yeast-over", TR_KIND_CROISSANT, { "d flour-bread 1000 g", "d water 500 g", "d yeast-fresh 90 g" },
    TR_FINDING_BAND, "yeast_fresh_percent", 5.5, FALSE },
  { "yeast-in-puff", TR_KIND_PUFF, { "d flour-bread 1000 g", "d water 500 g", "d yeast-fresh 10 g" },
    TR_FINDING_BAND, "yeast_fresh_percent", 0, FALSE },
  /* 62 % of the flour asked, 50 % there: 500/1500 = 33.3 % of the dough × 62/50 = 41.3, to the next half */
  { "legal-minimum", TR_KIND_PUFF, { "d flour-bread 1000 g", "d water 500 g", "r butter-unsalted 500 g" },
    TR_FINDING_LEGAL_MINIMUM, NULL, 41.5, FALSE },
  { "a-butter-is-not-mended", TR_KIND_CROISSANT, { "d flour-bread 1000 g", "d water 550 g", "r butter-unsalted 400 g" },
    TR_FINDING_BUTTER_LEGAL, NULL, NAN, FALSE },
};

static void
test_mended (gconstpointer data)
{
  const Mended *test = data;
  Case self = case_of_kind (test->lines, test->kind);
  TrRepair repair;

  const TrFinding *finding = find (case_before (&self), test->id, test->finding);
  g_assert_nonnull (finding);
  g_assert_true (tr_finding_get_repair (case_before (&self), finding, &repair) == !isnan (test->target));
  if (!isnan (test->target))
    {
      g_assert_cmpfloat_with_epsilon (repair.target, test->target, 1e-9);
      g_assert_cmpint (repair.adds_line, ==, test->adds_line);
      g_assert_true (tr_repair_apply (self.dough, case_before (&self), &repair, NULL));
      g_assert_null (find (case_after (&self), test->id, test->finding));
      g_assert_cmpfloat_with_epsilon (tr_ratio_get (case_after (&self), repair.ratio), test->target, 2 * TR_RATIO_TOLERANCE);
    }
  case_clear (&self);
}

/* Whatever is offered mends what it stands beside. */
static void
test_random_repairs (void)
{
  guint n_mended = 0;

  for (guint round = 0; round < 200; round++)
    {
      g_autoptr (TrTrial) trial = tr_trial_new ();
      TrDough *written = random_dough ();

      written->kind = (TrKind) g_test_rand_int_range (0, TR_N_KINDS);
      g_ptr_array_add (trial->doughs, written);
      g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
      const TrDoughFigures *was = tr_figures_get_dough (figures, 0);

      for (guint i = 0; i < was->findings->len; i++)
        {
          const TrFinding *finding = was->findings->pdata[i];
          g_autoptr (TrTrial) draft = tr_trial_copy (trial);
          TrRepair repair;

          if (!tr_finding_get_repair (was, finding, &repair))
            continue;
          g_assert_true (tr_repair_apply (tr_trial_own_dough (draft, 0), was, &repair, NULL));
          g_autoptr (TrFigures) later = tr_figures_compute (draft, NULL);
          g_test_message ("%s %s of %s: %g to %g, is %g", tr_finding_id (finding->id), tr_ratio_key (repair.ratio),
                          tr_kind_id (written->kind), finding->value, repair.target,
                          tr_ratio_get (tr_figures_get_dough (later, 0), repair.ratio));
          g_assert_null (find (tr_figures_get_dough (later, 0), finding->id,
                               finding->id == TR_FINDING_BAND ? finding->name : NULL));
          n_mended++;
        }
    }
  g_test_message ("%u findings mended", n_mended);
  g_assert_cmpuint (n_mended, >, 50);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (worked); i++)
    {
      g_autofree char *path = g_strconcat ("/calc/swap/worked/", worked[i].name, NULL);

      g_test_add_data_func (path, &worked[i], test_worked);
    }
  for (guint i = 0; i < G_N_ELEMENTS (refused); i++)
    {
      g_autofree char *path = g_strconcat ("/calc/swap/refused/", refused[i].name, NULL);

      g_test_add_data_func (path, &refused[i], test_refused);
    }
  g_test_add_func ("/calc/swap/what-is-not-known-is-not-held", test_not_known);
  g_test_add_func ("/calc/swap/families", test_families);
  g_test_add_func ("/calc/swap/only-what-differs-is-asked", test_choices);
  g_test_add_func ("/calc/swap/the-account-is-what-was-done", test_account);
  g_test_add_func ("/calc/swap/there-and-back", test_there_and_back);
  g_test_add_func ("/calc/swap/random-doughs-hold", test_random);
  for (guint i = 0; i < G_N_ELEMENTS (mended); i++)
    {
      g_autofree char *path = g_strconcat ("/calc/repair/", mended[i].name, NULL);

      g_test_add_data_func (path, &mended[i], test_mended);
    }
  g_test_add_func ("/calc/repair/random-doughs-are-mended", test_random_repairs);

  return g_test_run ();
}
