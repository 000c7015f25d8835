/* serving.c: who tastes what when, under which code
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "serving.h"

#include "scores.h"

#define FIRST_CODE 100
#define LAST_CODE 999

guint
tr_williams_count (guint n)
{
  return n % 2 == 0 ? n : 2 * n;
}

/* The first row goes 0, 1, n − 1, 2, n − 2, …; each next one adds 1; for an odd
 * number the same once more backwards. */
void
tr_williams_get (guint  n,
                 guint  row,
                 guint *order)
{
  g_return_if_fail (order != NULL && row < tr_williams_count (n));

  for (guint i = 0; i < n; i++)
    {
      guint first = i % 2 == 1 ? (i + 1) / 2 : (n - i / 2) % n;

      order[row < n ? i : n - 1 - i] = (first + row) % n;
    }
}

GArray *
tr_serving_list_samples (const TrTrial *trial)
{
  GArray *samples = g_array_new (FALSE, FALSE, sizeof (guint));
  gboolean is_blind = trial->tasting != NULL && trial->tasting->codes->len > 0;

  for (guint i = 0; i < trial->doughs->len; i++)
    if (!is_blind || tr_tasting_get_code (trial->tasting, tr_trial_get_dough (trial, i)->id) != 0)
      g_array_append_val (samples, i);

  return samples;
}

gboolean
tr_code_is_plain (int code)
{
  int a = code / 100, b = code / 10 % 10, c = code % 10;

  if (code < FIRST_CODE || code > LAST_CODE)
    return FALSE;
  if (a == b || b == c || a == c || c == 0)
    return FALSE;

  return !(b - a == c - b && (b - a == 1 || b - a == -1));
}

static void
shuffle (guint *values,
         guint  n,
         GRand *rand)
{
  for (guint i = n; i > 1; i--)
    {
      guint j = (guint) g_rand_int_range (rand, 0, (gint32) i), kept = values[i - 1];

      values[i - 1] = values[j];
      values[j] = kept;
    }
}

static guint *
new_shuffled (guint  n,
              GRand *rand)
{
  guint *values = g_new (guint, n + 1);

  for (guint i = 0; i < n; i++)
    values[i] = i;
  shuffle (values, n, rand);

  return values;
}

void
tr_serving_deal_codes (TrTasting         *draft,
                       const char *const *doughs,
                       GRand             *rand)
{
  g_autofree guint *codes = NULL;
  guint at = 0;

  g_return_if_fail (draft != NULL && doughs != NULL && rand != NULL);

  codes = new_shuffled (LAST_CODE + 1, rand);
  g_ptr_array_set_size (draft->codes, 0);
  for (guint i = 0; doughs[i] != NULL; i++)
    {
      while (at <= LAST_CODE && !tr_code_is_plain ((int) codes[at]))
        at++;
      g_return_if_fail (at <= LAST_CODE);
      g_ptr_array_add (draft->codes, tr_code_new (doughs[i], (int) codes[at++]));
    }
}

static gboolean
is_taken (const TrTasting *tasting,
          int              code)
{
  for (guint i = 0; i < tasting->codes->len; i++)
    if (((const TrCode *) tasting->codes->pdata[i])->code == code)
      return TRUE;

  return FALSE;
}

void
tr_serving_add_code (TrTasting  *draft,
                     const char *dough,
                     GRand      *rand)
{
  g_autofree guint *codes = NULL;
  guint at = 0;

  g_return_if_fail (draft != NULL && dough != NULL && rand != NULL);

  if (tr_tasting_get_code (draft, dough) != 0)
    return;

  codes = new_shuffled (LAST_CODE + 1, rand);
  while (at <= LAST_CODE && (!tr_code_is_plain ((int) codes[at]) || is_taken (draft, (int) codes[at])))
    at++;
  g_return_if_fail (at <= LAST_CODE);
  g_ptr_array_add (draft->codes, tr_code_new (dough, (int) codes[at]));
}

void
tr_serving_deal_orders (TrTasting         *draft,
                        const char *const *doughs,
                        GRand             *rand)
{
  g_autofree guint *samples = NULL, *rows = NULL, *places = NULL;
  guint n;

  g_return_if_fail (draft != NULL && doughs != NULL && rand != NULL);

  n = g_strv_length ((char **) doughs);
  samples = new_shuffled (n, rand);
  rows = new_shuffled (n, rand);
  places = g_new (guint, n + 1);
  g_ptr_array_set_size (draft->orders, 0);
  for (guint t = 0; n > 0 && t < draft->tasters->len; t++)
    {
      const TrTaster *taster = draft->tasters->pdata[t];
      g_autoptr (GStrvBuilder) order = g_strv_builder_new ();
      guint square = t / n % (tr_williams_count (n) / n);

      /* A square whole before the next, each in a new sequence of its rows. */
      if (t > 0 && t % n == 0)
        shuffle (rows, n, rand);
      tr_williams_get (n, square * n + rows[t % n], places);
      for (guint i = 0; i < n; i++)
        g_strv_builder_add (order, doughs[samples[places[i]]]);

      g_auto (GStrv) ids = g_strv_builder_end (order);

      g_ptr_array_add (draft->orders, tr_order_new (taster->id, ids));
    }
}
