/* line-members.c: the values of a line of the formula
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "line-members.h"

#include <glib/gi18n-lib.h>

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
