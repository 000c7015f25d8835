/* content.c: what of a kind is in a dough, a piece of it and 100 g of it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "content.h"

#include "formula.h"

static double
percent_of (const TrFormula *formula,
            TrContentKind    kind)
{
  double per_flour = formula->total_g / formula->flour_g;

  switch (kind)
    {
    case TR_CONTENT_FLOUR: return formula->flour_g > 0 ? 100 : NAN;
    case TR_CONTENT_ADDED_WATER: return formula->added_water_percent;
    case TR_CONTENT_ALL_WATER: return formula->all_water_percent;
    case TR_CONTENT_SALT: return formula->salt_percent;
    case TR_CONTENT_ADDED_SUGAR: return formula->sugar_percent;
    case TR_CONTENT_SUGARS: return formula->mix_per_100g[TR_PART_SUGARS] * per_flour;
    case TR_CONTENT_DOUGH_FAT: return formula->dough_fat_percent;
    case TR_CONTENT_ROLL_IN: return formula->roll_in_percent_of_flour;
    case TR_CONTENT_FAT: return formula->mix_per_100g[TR_PART_FAT] * per_flour;
    case TR_CONTENT_YEAST: return formula->yeast_fresh_percent;
    case TR_N_CONTENTS: break;
    }
  g_return_val_if_reached (NAN);
}

void
tr_content_get (const TrDoughFigures *figures,
                TrContentKind         kind,
                TrContentRow         *row)
{
  const TrFormula *formula = &figures->formula;
  const TrPiece *piece = &figures->piece;

  g_return_if_fail (figures != NULL);
  g_return_if_fail (row != NULL);

  row->percent_of_flour = percent_of (formula, kind);
  row->per_100g = row->percent_of_flour * formula->flour_g / formula->total_g;
  if (!isfinite (row->percent_of_flour) || !isfinite (row->per_100g))
    row->percent_of_flour = row->per_100g = NAN;
  row->piece_g = row->per_100g * piece->raw_mass_g / 100;
  if (kind == TR_CONTENT_SALT)
    row->piece_g = piece->content.salt_g;
  else if (kind == TR_CONTENT_SUGARS)
    row->piece_g = piece->content.sugars_g;
  else if (kind == TR_CONTENT_FAT)
    row->piece_g = piece->content.fat_g;
}

double
tr_content_salt_line_percent (const TrFormula *formula)
{
  double grams = 0;

  g_return_val_if_fail (formula != NULL, NAN);

  for (guint i = 0; i < formula->lines->len; i++)
    {
      const TrLineFigures *line = tr_formula_get_line (formula, i);

      if (tr_line_is_in_mix (line) && line->known && line->ingredient.role == TR_ROLE_SALT && isfinite (line->grams))
        grams += line->grams;
    }

  return formula->flour_g > 0 ? 100 * grams / formula->flour_g : NAN;
}

/* Why */

static gboolean
has_mass (const TrLineFigures *line)
{
  return line->known && line->grams > 0;
}

static gboolean
lacks_part (const TrLineFigures *line,
            int                  part)
{
  double per_100g[TR_N_PARTS];

  tr_ingredient_compose (&line->ingredient, line->line->hydration_percent, per_100g);

  return isnan (per_100g[part]);
}

static gboolean
lacks_price (const TrLineFigures *line,
             int                  part G_GNUC_UNUSED)
{
  return isnan (tr_line_get_price_per_kg (line));
}

static gboolean
is_listed (const GPtrArray     *lines,
           const TrLineFigures *line)
{
  for (guint i = 0; i < lines->len; i++)
    {
      const TrLineFigures *known = g_ptr_array_index (lines, i);

      if (g_str_equal (known->ingredient.id, line->ingredient.id))
        return TRUE;
    }

  return FALSE;
}

static GPtrArray *
find_lines (const TrFormula *formula,
            gboolean       (*lacks) (const TrLineFigures *line, int part),
            int              part)
{
  GPtrArray *lines = g_ptr_array_new ();

  for (guint i = 0; i < formula->lines->len; i++)
    {
      TrLineFigures *line = tr_formula_get_line (formula, i);

      if (has_mass (line) && lacks (line, part) && !is_listed (lines, line))
        g_ptr_array_add (lines, line);
    }

  return lines;
}

GPtrArray *
tr_content_find_unknown (const TrFormula *formula,
                         TrPart           part)
{
  g_return_val_if_fail (formula != NULL, NULL);

  return find_lines (formula, lacks_part, (int) part);
}

GPtrArray *
tr_content_find_unpriced (const TrFormula *formula)
{
  g_return_val_if_fail (formula != NULL, NULL);

  return find_lines (formula, lacks_price, 0);
}
