/* piece.c: what one piece weighs, contains and costs
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A piece is its share of the mix, by mass, and its share of the finish lines,
 * by count.
 */

#include "formula.h"
#include "water.h"

#include <string.h>

/* Contents of a piece */

static TrContent
content_per_100g (const TrFormula *formula)
{
  TrContent content = {
    .fat_g = formula->mix_per_100g[TR_PART_FAT],
    .salt_g = formula->mix_salt_per_100g,
    .sugars_g = formula->mix_per_100g[TR_PART_SUGARS],
  };

  tr_energy_per_100g (formula->mix_per_100g, &content.energy_kj, &content.energy_kcal);

  return content;
}

static void
content_add (TrContent       *content,
             const TrContent *per_100g,
             double           grams)
{
  content->fat_g += tr_part_of (grams, per_100g->fat_g);
  content->salt_g += tr_part_of (grams, per_100g->salt_g);
  content->sugars_g += tr_part_of (grams, per_100g->sugars_g);
  content->energy_kj += tr_part_of (grams, per_100g->energy_kj);
  content->energy_kcal += tr_part_of (grams, per_100g->energy_kcal);
}

static TrContent
line_content_per_100g (const TrLineFigures *line)
{
  double per_100g[TR_N_PARTS];
  TrContent content;

  tr_ingredient_compose (&line->ingredient, line->line->hydration_percent, per_100g);
  content.fat_g = per_100g[TR_PART_FAT];
  content.salt_g = tr_salt_per_100g (&line->ingredient, per_100g);
  content.sugars_g = per_100g[TR_PART_SUGARS];
  tr_energy_per_100g (per_100g, &content.energy_kj, &content.energy_kcal);

  return content;
}

static void
add_finish (const TrFormula *formula,
            double           count,
            TrContent       *content)
{
  for (guint i = 0; i < formula->lines->len; i++)
    {
      const TrLineFigures *line = tr_formula_get_line (formula, i);

      if (tr_line_is_in_mix (line) || isnan (line->written_grams))
        continue;

      TrContent per_100g = line_content_per_100g (line);
      content_add (content, &per_100g, line->grams / count);
    }
}

double
tr_line_get_price_per_kg (const TrLineFigures *line)
{
  double price = line->ingredient.price_per_kg;

  return isnan (price) && tr_line_is_water (line) ? 0 : price;
}

/* Of the whole batch. */
static double
total_cost (const TrFormula *formula)
{
  double cost = 0;

  for (guint i = 0; i < formula->lines->len; i++)
    {
      const TrLineFigures *line = tr_formula_get_line (formula, i);

      if (!isnan (line->written_grams))
        cost += tr_part_of (line->grams, tr_line_get_price_per_kg (line) / 10);
    }

  return cost;
}

double
tr_dough_count_pieces (const TrDough *dough,
                       const TrSheet *sheet)
{
  if (dough->cut != NULL)
    return sheet != NULL ? sheet->pieces_cut : NAN;
  if (dough->batch_by == TR_BATCH_PIECES)
    return dough->batch_value;

  return dough->pieces_written > 0 ? (double) dough->pieces_written : (double) NAN;
}

static double
raw_mass (const TrDough   *dough,
          const TrFormula *formula,
          const TrSheet   *sheet,
          double           count)
{
  if (sheet != NULL)
    return sheet->mass_g * sheet->piece_area_mm2 / (sheet->length_mm * sheet->width_mm);

  return formula->total_g * (1 - dough->handling_loss_percent / 100) / count;
}

static void
piece_init (TrPiece *piece)
{
  TrContent none = { NAN, NAN, NAN, NAN, NAN };

  *piece = (TrPiece) { NAN, NAN, NAN, NAN, none, none, NAN };
}

void
tr_piece_compute (const TrDough   *dough,
                  const TrFormula *formula,
                  const TrSheet   *sheet,
                  TrPiece         *piece)
{
  piece_init (piece);
  if (formula->written_total_g > 0)
    piece->per_100g_raw = content_per_100g (formula);

  piece->count = tr_dough_count_pieces (dough, sheet);
  if (!(piece->count > 0))
    return;

  piece->raw_mass_g = raw_mass (dough, formula, sheet, piece->count);
  piece->baked_mass_g = piece->raw_mass_g * (1 - dough->bake_loss_percent / 100);
  if (!(formula->written_total_g > 0))
    return;

  piece->added_fat_g = piece->raw_mass_g * formula->mix_fat_role_g / formula->total_g;
  piece->content = (TrContent) { 0 };
  content_add (&piece->content, &piece->per_100g_raw, piece->raw_mass_g);
  add_finish (formula, piece->count, &piece->content);
  piece->cost = total_cost (formula) / piece->count;
}

/* Allergens */

static int
compare_ids (gconstpointer a,
             gconstpointer b)
{
  return strcmp (*(const char *const *) a, *(const char *const *) b);
}

/* An ingredient nobody recognised may hold anything: "unknown". */
char **
tr_formula_dup_allergens (const TrFormula *formula)
{
  static const char *const unknown[] = { "unknown", NULL };
  g_autoptr (GPtrArray) ids = g_ptr_array_new ();
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();

  for (guint i = 0; i < formula->lines->len; i++)
    {
      const TrLineFigures *line = tr_formula_get_line (formula, i);

      for (const char *const *id = line->known ? line->ingredient.allergens : unknown; *id != NULL; id++)
        g_ptr_array_add (ids, (gpointer) *id);
    }
  g_ptr_array_sort (ids, compare_ids);

  for (guint i = 0; i < ids->len; i++)
    if (i == 0 || !g_str_equal (g_ptr_array_index (ids, i), g_ptr_array_index (ids, i - 1)))
      g_strv_builder_add (builder, g_ptr_array_index (ids, i));

  return g_strv_builder_end (builder);
}
