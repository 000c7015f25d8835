/* line-members.c: the values of a line of the formula
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "line-members.h"

#include <glib/gi18n-lib.h>

#include "../calc/balance.h"
#include "../calc/formula.h"

char *
tr_line_dup_pointer (const TrTrial *trial,
                     int            dough,
                     guint          item,
                     const char    *member)
{
  const TrDough *own = tr_trial_get_dough (trial, (guint) dough);
  guint index = tr_line_is_pending (item) ? tr_line_pending_index (own, item) : item;

  return g_strdup_printf ("/lines/%u/%s", index, member);
}

static char *
dup_amount_pointer (const TrTrial *trial,
                    int            dough,
                    guint          item)
{
  return tr_line_dup_pointer (trial, dough, item, "amount");
}

char *
tr_line_dup_name (const TrTrial *trial,
                  const TrLine  *line)
{
  TrIngredient ingredient;

  if (line->ingredient != NULL && tr_ingredient_resolve (trial->pantry, line->ingredient, &ingredient))
    return g_strdup (tr_words_ingredient (&ingredient));
  if (line->text != NULL && *line->text != '\0')
    return g_strdup (line->text);

  return g_strdup (_("a line"));
}

static char *
dup_amount_undo (const TrTrial *trial,
                 int            dough,
                 guint          item)
{
  const TrLine *line = tr_reach_line (trial, dough, item, FALSE);

  if (tr_line_is_pending (item) || line == NULL)
    return g_strdup (_("add a line"));

  g_autofree char *name = tr_line_dup_name (trial, line);

  return g_strdup_printf (_("change amount of %s"), name);
}

static gpointer
reach_starter (const TrTrial *trial,
               int            dough,
               guint          item,
               gboolean       make)
{
  TrLine *line = tr_line_is_pending (item) ? NULL : tr_reach_line (trial, dough, item, make);
  TrIngredient ingredient;

  if (line == NULL || line->ingredient == NULL || !tr_ingredient_resolve (trial->pantry, line->ingredient, &ingredient))
    return NULL;

  return ingredient.role == TR_ROLE_STARTER ? line : NULL;
}

/* The percent of the flour */

static char *
dup_percent_pointer (const TrTrial *trial,
                     int            dough,
                     guint          item)
{
  return tr_line_dup_pointer (trial, dough, item, "percent");
}

static char *
dup_percent_undo (const TrTrial *trial,
                  int            dough,
                  guint          item)
{
  g_autofree char *name = tr_line_dup_name (trial, tr_reach_line (trial, dough, item, FALSE));

  return g_strdup_printf (_("change percent of %s"), name);
}

/* NULL: pending. */
static const TrLineFigures *
get_line_figures (const TrDoughFigures *figures,
                  guint                 item)
{
  return item < figures->formula.lines->len ? tr_formula_get_line (&figures->formula, item) : NULL;
}

static double
get_percent (const TrDoughFigures *figures,
             guint                 item)
{
  const TrLineFigures *line = get_line_figures (figures, item);

  return line != NULL ? line->percent : NAN;
}

static void
put_back_amounts (TrDough       *dough,
                  const TrDough *from)
{
  for (guint i = 0; i < MIN (dough->lines->len, from->lines->len); i++)
    tr_set_text (&tr_dough_get_line (dough, i)->amount, tr_dough_get_line (from, i)->amount);
}

static gboolean
set_percent (TrDough               *dough,
             const TrDoughFigures  *figures,
             guint                  item,
             double                 value,
             GError               **error)
{
  double start = get_percent (figures, item);

  if (!(isnan (start) ? isnan (value) : value == start))
    return tr_line_set_percent (dough, figures, item, value, error);
  put_back_amounts (dough, figures->dough);

  return TRUE;
}

static gboolean
is_flour (const TrLineFigures *line)
{
  return line->known && line->ingredient.is_flour && tr_line_is_in_mix (line);
}

static gboolean
has_other_flour (const TrDoughFigures *figures,
                 guint                 item)
{
  for (guint i = 0; i < figures->formula.lines->len; i++)
    if (i != item && is_flour (tr_formula_get_line (&figures->formula, i)))
      return TRUE;

  return FALSE;
}

const char *
tr_line_say_percent (const TrDoughFigures *figures,
                     guint                 item,
                     gboolean             *can_set)
{
  g_return_val_if_fail (figures != NULL && can_set != NULL, NULL);

  const TrLineFigures *line = get_line_figures (figures, item);

  *can_set = FALSE;
  if (line == NULL || !line->known)
    return _("No percent yet: first say which ingredient this is.");
  if (!(figures->formula.written_flour_g > 0))
    return _("No percent yet: there is no flour that can be weighed.");
  if (is_flour (line) && !has_other_flour (figures, item))
    return _("This is the only flour, and the flour is the 100 %. Change its amount.");

  *can_set = TRUE;
  if (is_flour (line))
    return _("Share of all flour, as written. Type one and the heaviest other flour gives way, so that the whole flour stays.");

  return _("Baker’s percent: weight over all flour, as written. Type one and the amount follows, in its own unit of weight or in grams.");
}

const TrMember tr_line_amount_member = {
  .pointer = "/lines/%u/amount", .reach = tr_reach_line, .offset = G_STRUCT_OFFSET (TrLine, amount),
  .hold = TR_HOLD_AMOUNT, .label = N_("Amount"),
  .tooltip = N_("As written: 250 g, 1 1/2 cups, 3 eggs, 2 %. A bare number is in your unit of weight."),
  .dup_pointer = dup_amount_pointer, .dup_undo = dup_amount_undo,
};

const TrMember tr_line_hydration_member = {
  .pointer = "/lines/%u/hydration_percent", .reach = reach_starter,
  .offset = G_STRUCT_OFFSET (TrLine, hydration_percent), .hold = TR_HOLD_NUMBER, .quantity = TR_QUANTITY_PERCENT,
  .label = N_("Hydration of the starter"), .undo = N_("change the hydration of the starter"),
  .tooltip = N_("Water over flour in the starter. 100 % is equal weights."),
  .may_be_empty = TRUE, .empty = "100", .step = 5,
};

const TrMember tr_line_percent_member = {
  .pointer = "/lines/%u/percent", .reach = tr_reach_line, .hold = TR_HOLD_NUMBER, .quantity = TR_QUANTITY_PERCENT,
  .label = N_("Percent of flour"),
  .dup_pointer = dup_percent_pointer, .dup_undo = dup_percent_undo,
  .get_figure = get_percent, .set_figure = set_percent,
};
