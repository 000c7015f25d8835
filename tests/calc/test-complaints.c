/* test-complaints.c: tasters are counted, and what other doughs of the trial tell is a number too
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Invented doughs and marks.
 */

#include "calc/causes.h"

#include "calc/scores.h"
#include "doughs.h"

static const char *const lines[] = {
  "d flour-bread 500 g", "d water 260 g", "d sugar 50 g", "d salt 10 g", "d yeast-fresh 20 g",
  "d butter-unsalted 30 g", "r butter-unsalted 250 g", NULL
};

static void
write_amount (TrDough    *dough,
              guint       index,
              const char *amount)
{
  tr_set_text (&tr_dough_get_line (dough, index)->amount, amount);
}

static void
add_score (TrTasting  *tasting,
           const char *dough,
           const char *fault,
           int         salt)
{
  TrTaster *taster = tr_tasting_add_taster (tasting, "A");
  TrScore *score = tr_tasting_need_score (tasting, taster->id, dough);

  score->look = score->layers = score->eating = 5;
  score->salt = salt;
  g_strfreev (score->faults);
  score->faults = g_strsplit (fault != NULL ? fault : "", " ", -1);
}

static void
test_complaints_count_tasters_most_first (void)
{
  g_autoptr (TrTasting) tasting = tr_tasting_new ();

  add_score (tasting, "d1", "fat-pooled gummy", 0);
  add_score (tasting, "d1", "fat-pooled fat-pooled", 0);
  add_score (tasting, "d1", "fat-pooled no-such-fault", 0);
  add_score (tasting, "d1", NULL, 0);
  add_score (tasting, "d2", "gummy", 2);

  g_autoptr (GArray) list = tr_complaints_list (tasting, "d1");

  g_assert_cmpuint (list->len, ==, 2);
  g_assert_cmpuint (g_array_index (list, TrComplaint, 0).id, ==, TR_FAULT_FAT_POOLED);
  g_assert_cmpuint (g_array_index (list, TrComplaint, 0).n, ==, 3);
  g_assert_cmpuint (g_array_index (list, TrComplaint, 0).of, ==, 4);
  g_assert_cmpuint (g_array_index (list, TrComplaint, 1).id, ==, TR_FAULT_GUMMY);
  g_assert_cmpuint (g_array_index (list, TrComplaint, 1).n, ==, 1);
}

static void
test_balance_goes_where_more_is_pulled (gconstpointer data)
{
  static const struct { int marks[4]; guint id, n; double mean; } balances[] = {
    { { 1, 2, 1, 0 }, TR_COMPLAINT_SALT_MUCH, 3, 1 },
    { { -1, -1, 1, G_MININT }, TR_COMPLAINT_SALT_LITTLE, 2, -1.0 / 3 },
    { { -1, 1, 0, 0 }, TR_N_COMPLAINTS, 0, 0 },
    { { 0, 0, 0, 0 }, TR_N_COMPLAINTS, 0, 0 },
    { { -1, -1, 2, 1 }, TR_COMPLAINT_SALT_MUCH, 2, 0.25 },
  };
  guint row = GPOINTER_TO_UINT (data);
  g_autoptr (TrTasting) tasting = tr_tasting_new ();

  for (guint i = 0; i < 4; i++)
    add_score (tasting, "d1", NULL, balances[row].marks[i]);

  g_autoptr (GArray) list = tr_complaints_list (tasting, "d1");

  if (balances[row].id == TR_N_COMPLAINTS)
    {
      g_assert_cmpuint (list->len, ==, 0);
      return;
    }
  g_assert_cmpuint (list->len, ==, 1);
  g_assert_cmpuint (g_array_index (list, TrComplaint, 0).id, ==, balances[row].id);
  g_assert_cmpuint (g_array_index (list, TrComplaint, 0).n, ==, balances[row].n);
  g_assert_cmpfloat_with_epsilon (g_array_index (list, TrComplaint, 0).mean, balances[row].mean, 1e-12);
}

/* Three doughs with so much salt; the tasters' marks of each, and which tells. */
static const struct { const char *row, *grams[3]; int marks[3][2]; guint complaint; int beside; double limit; } besides[] = {
  { "less-salt-found-right", { "11 g", "9 g", "10 g" }, { { 1, 1 }, { 0, 0 }, { 1, 0 } }, TR_COMPLAINT_SALT_MUCH, 1, 1.8 },
  { "the-nearest-tells", { "12 g", "9 g", "10 g" }, { { 1, 1 }, { 0, 0 }, { 1, -1 } }, TR_COMPLAINT_SALT_MUCH, 2, 2 },
  { "more-salt-found-right", { "9 g", "11 g", "9 g" }, { { -1, -1 }, { 0, 0 }, { 0, 0 } }, TR_COMPLAINT_SALT_LITTLE, 1, 2.2 },
  { "none-found-right", { "11 g", "9 g", "10 g" }, { { 1, 1 }, { -1, 0 }, { 1, 0 } }, TR_COMPLAINT_SALT_MUCH, -1, NAN },
  { "more-salt-tells-nothing", { "11 g", "12 g", "11 g" }, { { 1, 1 }, { 0, 0 }, { 0, 0 } }, TR_COMPLAINT_SALT_MUCH, -1, NAN },
  { "not-marked-is-not-right", { "11 g", "9 g", "9 g" },
    { { 1, 1 }, { G_MININT, G_MININT }, { G_MININT, G_MININT } }, TR_COMPLAINT_SALT_MUCH, -1, NAN },
};

static void
test_a_dough_found_just_right_is_a_number_too (gconstpointer data)
{
  guint row = GPOINTER_TO_UINT (data);
  g_autoptr (TrTrial) trial = tr_trial_new ();

  trial->tasting = tr_tasting_new ();
  for (guint i = 0; i < 2; i++)
    tr_tasting_add_taster (trial->tasting, "A");
  for (guint i = 0; i < 3; i++)
    {
      TrDough *dough = test_dough_new (lines);
      g_autofree char *id = g_strdup_printf ("d%u", i + 1);

      tr_set_text (&dough->id, id);
      write_amount (dough, 3, besides[row].grams[i]);
      g_ptr_array_add (trial->doughs, dough);
      for (guint k = 0; k < 2; k++)
        tr_tasting_need_score (trial->tasting, k == 0 ? "t1" : "t2", id)->salt = besides[row].marks[i][k];
    }

  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  g_autoptr (GPtrArray) causes = tr_causes_find_beside (figures, 0, besides[row].complaint);
  const TrCause *first = causes->len > 0 ? causes->pdata[0] : NULL;

  if (besides[row].beside < 0)
    {
      g_assert_true (first == NULL || first->beside < 0);
      return;
    }
  g_assert_nonnull (first);
  g_assert_cmpint (first->beside, ==, besides[row].beside);
  /* Flour, butter and yeast bring a trace of sodium besides. */
  g_assert_cmpfloat_with_epsilon (first->limit, besides[row].limit, 0.05);
  g_assert_cmpint (first->remedy.kind, ==, TR_REMEDY_RATIO);
  g_assert_cmpfloat_with_epsilon (first->remedy.target, besides[row].limit, 0.1);
}

static void
test_no_tasting_no_complaint (void)
{
  g_autoptr (GArray) none = tr_complaints_list (NULL, "d1");
  g_autoptr (TrTasting) tasting = tr_tasting_new ();
  g_autoptr (GArray) empty = tr_complaints_list (tasting, "d1");

  g_assert_cmpuint (none->len, ==, 0);
  g_assert_cmpuint (empty->len, ==, 0);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/complaints/counted", test_complaints_count_tasters_most_first);
  for (guint i = 0; i < 5; i++)
    {
      g_autofree char *name = g_strdup_printf ("/complaints/balance/%u", i);

      g_test_add_data_func (name, GUINT_TO_POINTER (i), test_balance_goes_where_more_is_pulled);
    }
  for (guint i = 0; i < G_N_ELEMENTS (besides); i++)
    {
      g_autofree char *name = g_strdup_printf ("/complaints/beside/%s", besides[i].row);

      g_test_add_data_func (name, GUINT_TO_POINTER (i), test_a_dough_found_just_right_is_a_number_too);
    }
  g_test_add_func ("/complaints/no-tasting", test_no_tasting_no_complaint);

  return g_test_run ();
}
