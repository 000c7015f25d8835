/* findings-formula.c: what the lines and their ratios show
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Flour, lines that cannot be weighed, readings that were chosen, usual ranges,
 * what a butter and a named pastry must be, spoons, allergens.
 */

#include "look.h"

#include "butter.h"
#include "formula.h"
#include "measure.h"

static gboolean
is_flour_not_weighed (const TrLineFigures *line)
{
  return line->known && (line->ingredient.is_flour || line->ingredient.role == TR_ROLE_STARTER)
         && isnan (line->written_grams);
}

static gboolean
is_wet (const TrLineFigures *line)
{
  return tr_line_is_in_dough (line) && (tr_line_has_role (line, TR_ROLE_LIQUID) || tr_line_has_role (line, TR_ROLE_DAIRY));
}

static gboolean
is_dough_fat (const TrLineFigures *line)
{
  return tr_line_is_in_dough (line) && tr_line_has_role (line, TR_ROLE_FAT);
}

static gboolean
is_salt (const TrLineFigures *line)
{
  return line->line->stage != TR_STAGE_FINISH && tr_line_has_role (line, TR_ROLE_SALT);
}

static gboolean
is_sugar (const TrLineFigures *line)
{
  return tr_line_is_in_dough (line) && tr_line_has_role (line, TR_ROLE_SWEETENER);
}

static gboolean
is_prefermented (const TrLineFigures *line)
{
  return line->line->stage == TR_STAGE_PREFERMENT || tr_line_is_starter (line);
}

static void
look_for_flour (const TrDoughFigures *figures,
                GPtrArray            *found)
{
  if (figures->formula.written_flour_g > 0 || tr_look_find_line (figures, is_flour_not_weighed) >= 0)
    return;

  tr_look_add (found, TR_FINDING_NO_FLOUR, TR_SEVERITY_STOP, g_strdup ("/lines"), NAN, NAN, NULL)
    ->with[0] = figures->formula.lines->len;
}

/* -1: the pointer is not of a line. */
static int
line_of_pointer (const char *where)
{
  if (where == NULL || !g_str_has_prefix (where, "/lines/"))
    return -1;

  return (int) g_ascii_strtoull (where + strlen ("/lines/"), NULL, 10);
}

static void
look_for_not_weighed (const TrDoughFigures *figures,
                      GPtrArray            *found)
{
  const GPtrArray *problems = figures->formula.problems;

  for (guint i = 0; i < problems->len; i++)
    {
      const TrProblem *problem = problems->pdata[i];
      TrFinding *finding = tr_look_add (found, TR_FINDING_NOT_WEIGHED, TR_SEVERITY_STOP,
                                        g_strdup (problem->where != NULL ? problem->where : "/lines"), NAN, NAN, NULL);
      int line = line_of_pointer (problem->where);

      finding->with[0] = i;
      if (line < 0 || line >= (int) figures->formula.lines->len)
        continue;
      finding->with[1] = line;
      finding->name = g_strdup (tr_look_get_line (figures, (guint) line)->line->ingredient);
    }
}

static void
look_for_readings_of_line (const TrDoughFigures *figures,
                           guint                 index,
                           GPtrArray            *found)
{
  static const char source[] = "one reading of several was chosen";
  const TrLineFigures *line = tr_look_get_line (figures, index);
  const TrFormula *formula = &figures->formula;
  TrAmount amount;
  TrFinding *finding;

  if (!tr_amount_parse (line->line->amount, &amount, NULL))
    return;
  if (amount.is_mean)
    {
      finding = tr_look_add (found, TR_FINDING_AMOUNT, TR_SEVERITY_NOTE, tr_look_line_pointer ((int) index, "amount"),
                             amount.parts[0].number, NAN, source);
      finding->name = g_strdup ("mean");
      finding->with[0] = amount.parts[0].unit;
    }
  if (tr_line_is_roll_in (line) && amount.parts[0].unit == TR_UNIT_PERCENT)
    {
      finding = tr_look_add (found, TR_FINDING_AMOUNT, TR_SEVERITY_NOTE, tr_look_line_pointer ((int) index, "amount"),
                             amount.parts[0].number, NAN, source);
      finding->name = g_strdup ("bare-percent");
      finding->with[0] = formula->roll_in_percent_of_flour;
      finding->with[1] = formula->roll_in_percent_of_dough;
      finding->with[2] = formula->roll_in_percent_of_total;
    }
}

static void
look_for_readings (const TrDoughFigures *figures,
                   GPtrArray            *found)
{
  for (guint i = 0; i < figures->formula.lines->len; i++)
    look_for_readings_of_line (figures, i, found);

  if (figures->formula.flour_is_assumed)
    tr_look_add (found, TR_FINDING_AMOUNT, TR_SEVERITY_NOTE, g_strdup ("/lines"), 1000, NAN, NULL)
      ->name = g_strdup ("assumed-flour");
}

static void
look_at_mixer (const TrDoughFigures *figures,
               GPtrArray            *found)
{
  double dough_g = figures->formula.dough_g, most_g = figures->bench->mixer_max_g;
  gboolean as_written = figures->dough->batch_by == TR_BATCH_WRITTEN;

  if (!(dough_g > most_g * (1 + TR_HAIR)))
    return;

  tr_look_add (found, TR_FINDING_MIXER, TR_SEVERITY_WARN, g_strdup (as_written ? "/batch/by" : "/batch/value"),
               dough_g, most_g, "bench")
    ->with[0] = ceil (dough_g / most_g - TR_HAIR);
}

static void
look_at_salt (const TrDoughFigures *figures,
              GPtrArray            *found)
{
  double salt = figures->formula.salt_percent, limit;
  int salt_line = tr_look_find_line (figures, is_salt), fat_line = tr_look_find_salted_fat (figures);
  TrBand band;

  if (!tr_band_get (TR_RATIO_SALT, figures->dough->kind, &band)
      || !tr_look_is_outside (salt, band.low, band.high, &limit))
    return;

  TrFinding *finding = tr_look_add (found, TR_FINDING_SALT, TR_SEVERITY_WARN,
                                    tr_look_line_pointer (salt_line >= 0 ? salt_line : fat_line, "amount"),
                                    salt, limit, band.source);
  finding->with[0] = band.low;
  finding->with[1] = band.high;
  if (fat_line < 0 || salt < band.high || !(figures->formula.salted_fat_salt_percent >= TR_SALTED_FAT_POINTS - TR_HAIR))
    return;
  finding->with[2] = figures->formula.salted_fat_salt_percent;
  finding->name = g_strdup (tr_look_get_line (figures, (guint) fat_line)->ingredient.id);
}

static void
look_at_bands (const TrDoughFigures *figures,
               GPtrArray            *found)
{
  const TrFormula *formula = &figures->formula;
  const struct { TrRatio ratio; double value; TrLineTest test; } ratios[] = {
    { TR_RATIO_ALL_WATER, formula->all_water_percent, is_wet },
    { TR_RATIO_DOUGH_FAT, formula->dough_fat_percent, is_dough_fat },
    { TR_RATIO_ROLL_IN_OF_DOUGH, formula->roll_in_percent_of_dough, tr_line_is_roll_in },
    { TR_RATIO_SUGAR, formula->sugar_percent, is_sugar },
    { TR_RATIO_YEAST_FRESH, formula->yeast_fresh_percent, tr_line_is_leaven },
    { TR_RATIO_PREFERMENTED, formula->prefermented_flour_percent, is_prefermented },
  };

  for (guint i = 0; i < G_N_ELEMENTS (ratios); i++)
    {
      TrBand band;
      double limit;

      if (!tr_band_get (ratios[i].ratio, figures->dough->kind, &band)
          || !tr_look_is_outside (ratios[i].value, band.low, band.high, &limit))
        continue;

      TrFinding *finding = tr_look_add (found, TR_FINDING_BAND, TR_SEVERITY_NOTE,
                                        tr_look_line_pointer (tr_look_find_line (figures, ratios[i].test), "amount"),
                                        ratios[i].value, limit, band.source);
      finding->with[0] = band.low;
      finding->with[1] = band.high;
      finding->name = g_strdup (tr_ratio_key (ratios[i].ratio));
    }
}

static gboolean
is_by_volume (const TrLineFigures *line,
              TrAmountPart        *part)
{
  TrAmount amount;

  if (isnan (line->written_grams) || !tr_amount_parse (line->line->amount, &amount, NULL))
    return FALSE;

  for (guint i = 0; i < amount.n_parts; i++)
    if (!isnan (tr_unit_ml (amount.parts[i].unit)))
      {
        *part = amount.parts[i];
        return TRUE;
      }

  return FALSE;
}

static void
look_for_spoons (const TrDoughFigures *figures,
                 GPtrArray            *found)
{
  static const char source[] = "USDA household weights; crystal and make differ";
  TrAmountPart part;

  for (guint i = 0; i < figures->formula.lines->len; i++)
    {
      const TrLineFigures *line = tr_look_get_line (figures, i);
      gboolean is_of_salt = tr_line_has_role (line, TR_ROLE_SALT);

      if ((!is_of_salt && !tr_line_has_role (line, TR_ROLE_LEAVEN)) || !is_by_volume (line, &part))
        continue;

      TrFinding *finding = tr_look_add (found, is_of_salt ? TR_FINDING_SPOON_SALT : TR_FINDING_SPOON_YEAST,
                                        TR_SEVERITY_NOTE, tr_look_line_pointer ((int) i, "amount"),
                                        line->written_grams, NAN, source);
      finding->with[0] = part.unit;
      finding->with[1] = part.number;
      finding->name = g_strdup (line->ingredient.id);
    }
}

/* What a butter and a named pastry must be */

static gboolean
is_seen_before (const TrDoughFigures *figures,
                guint                 index)
{
  const char *ingredient = tr_look_get_line (figures, index)->line->ingredient;

  for (guint i = 0; i < index; i++)
    if (g_strcmp0 (tr_look_get_line (figures, i)->line->ingredient, ingredient) == 0)
      return TRUE;

  return FALSE;
}

static gboolean
is_as_built_in (const TrIngredient *ingredient)
{
  const TrIngredient *base = tr_builtin_find (ingredient->base_id);

  return base != NULL
         && fabs (base->per_100g[TR_PART_FAT] - ingredient->per_100g[TR_PART_FAT]) < TR_HAIR
         && fabs (base->per_100g[TR_PART_WATER] - ingredient->per_100g[TR_PART_WATER]) < TR_HAIR;
}

static void
look_at_butter (const TrDoughFigures *figures,
                GPtrArray            *found)
{
  const double least_fat = TR_BUTTER_LEAST_FAT, most_water = TR_BUTTER_MOST_WATER;

  for (guint i = 0; i < figures->formula.lines->len; i++)
    {
      const TrLineFigures *line = tr_look_get_line (figures, i);
      double fat = line->ingredient.per_100g[TR_PART_FAT], water = line->ingredient.per_100g[TR_PART_WATER];

      if (!line->known || !tr_ingredient_is_like (&line->ingredient, "butter-") || is_seen_before (figures, i)
          || !(fat < least_fat - TR_HAIR || water > most_water + TR_HAIR))
        continue;

      TrFinding *finding = tr_look_add (found, TR_FINDING_BUTTER_LEGAL, TR_SEVERITY_NOTE,
                                        tr_look_line_pointer ((int) i, "ingredient"),
                                        fat, least_fat, "Codex CXS 279-1971, 3.3");
      finding->with[0] = water;
      finding->with[1] = most_water;
      finding->with[2] = is_as_built_in (&line->ingredient) ? 1 : 0;
      finding->name = g_strdup (line->ingredient.id);
    }
}

/* The minima that a name brings with it. A croissant has none of its own in
 * the texts we know; `other` names nothing. */
static void
look_at_minimum (const TrDoughFigures *figures,
                 GPtrArray            *found)
{
  const double puff = 62, danish = 60, plain_laminated = 30;
  TrKind kind = figures->dough->kind;
  double fat = figures->formula.roll_in_fat_percent_of_flour;
  double least = kind == TR_KIND_PUFF ? puff : danish;
  int line = tr_look_find_line (figures, tr_line_is_roll_in);

  if ((kind != TR_KIND_PUFF && kind != TR_KIND_DANISH) || line < 0 || !(fat < least - TR_HAIR))
    return;

  TrFinding *finding = tr_look_add (found, TR_FINDING_LEGAL_MINIMUM, TR_SEVERITY_NOTE,
                                    tr_look_line_pointer (line, "amount"), fat, least,
                                    kind == TR_KIND_PUFF
                                      ? "Österreichisches Lebensmittelbuch, B 18, 2.3.4.5"
                                      : "Leitsätze für Feine Backwaren, 2.2.3.5 and 2.2.3.4");
  finding->with[0] = kind == TR_KIND_DANISH ? plain_laminated : NAN;
  finding->name = g_strdup (tr_kind_id (kind));
}

static void
look_at_allergens (const TrDoughFigures *figures,
                   GPtrArray            *found)
{
  guint n = figures->allergens != NULL ? g_strv_length (figures->allergens) : 0;
  TrFinding *finding = tr_look_add (found, TR_FINDING_ALLERGENS, TR_SEVERITY_NOTE, g_strdup ("/lines"), n, NAN,
                                    "Regulation (EU) 1169/2011, Annex II");

  if (n > 0)
    finding->name = g_strjoinv (",", figures->allergens);
}

void
tr_look_at_formula (const TrDoughFigures *figures,
                    GPtrArray            *found)
{
  look_for_flour (figures, found);
  look_for_not_weighed (figures, found);
  look_for_readings (figures, found);
  look_at_mixer (figures, found);
  look_at_salt (figures, found);
  look_at_bands (figures, found);
  look_for_spoons (figures, found);
  look_at_butter (figures, found);
  look_at_minimum (figures, found);
  look_at_allergens (figures, found);
}
