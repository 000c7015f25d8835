/* look.c: what every look at a dough's figures uses
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Finding a line, saying where something is, noting a finding. What is looked
 * for is in findings-formula.c, findings-bench.c and findings-method.c.
 */

#include "look.h"

#include "formula.h"
#include "measure.h"

TrFinding *
tr_look_add (GPtrArray   *found,
             TrFindingId  id,
             TrSeverity   severity,
             char        *where,
             double       value,
             double       limit,
             const char  *source)
{
  TrFinding *finding = g_new (TrFinding, 1);

  *finding = (TrFinding) {
    .id = id, .severity = severity, .where = where, .value = value, .limit = limit,
    .source = source, .with = { NAN, NAN, NAN, NAN },
  };
  g_ptr_array_add (found, finding);

  return finding;
}

const TrLineFigures *
tr_look_get_line (const TrDoughFigures *figures,
                  guint                 index)
{
  return tr_formula_get_line (&figures->formula, index);
}

int
tr_look_find_line (const TrDoughFigures *figures,
                   TrLineTest            test)
{
  for (guint i = 0; i < figures->formula.lines->len; i++)
    if (test (tr_look_get_line (figures, i)))
      return (int) i;

  return -1;
}

gboolean
tr_line_has_role (const TrLineFigures *line,
                  TrRole               role)
{
  return line->known && line->ingredient.role == role;
}

gboolean
tr_line_is_roll_in (const TrLineFigures *line)
{
  return line->line->stage == TR_STAGE_ROLL_IN;
}

gboolean
tr_line_is_leaven (const TrLineFigures *line)
{
  return tr_line_is_in_dough (line) && tr_line_has_role (line, TR_ROLE_LEAVEN);
}

gboolean
tr_line_is_starter (const TrLineFigures *line)
{
  return line->line->stage != TR_STAGE_FINISH && tr_line_has_role (line, TR_ROLE_STARTER);
}

char *
tr_look_line_pointer (int         index,
                      const char *member)
{
  return index < 0 ? g_strdup ("/lines") : g_strdup_printf ("/lines/%d/%s", index, member);
}

gboolean
tr_look_is_outside (double  value,
                    double  low,
                    double  high,
                    double *limit)
{
  *limit = value < low ? low : high;

  return value < low - TR_HAIR || value > high + TR_HAIR;
}

gboolean
tr_look_is_leavened (const TrDoughFigures *figures)
{
  return tr_look_find_line (figures, tr_line_is_leaven) >= 0 || tr_look_find_line (figures, tr_line_is_starter) >= 0;
}

double
tr_look_get_place_c (const TrBench *bench,
                     TrPlace        place)
{
  switch (place)
    {
    case TR_PLACE_FRIDGE:
      return bench->fridge_c;
    case TR_PLACE_FREEZER:
      return bench->freezer_c;
    case TR_PLACE_ROOM:
    case TR_N_PLACES:
    default:
      return bench->room_c;
    }
}

double
tr_look_get_step_c (const TrBench *bench,
                    const TrStep  *step)
{
  gboolean is_cold_by_habit = step->id == TR_STEP_CHILL || step->id == TR_STEP_REST;
  TrPlace place = step->place >= 0 ? (TrPlace) step->place : is_cold_by_habit ? TR_PLACE_FRIDGE : TR_PLACE_ROOM;

  return tr_is_written (step->at_c) ? step->at_c : tr_look_get_place_c (bench, place);
}

double
tr_look_find_proof_max (const TrDoughFigures  *figures,
                        const char           **fat)
{
  double bears = NAN;

  *fat = NULL;
  for (guint i = 0; i < figures->formula.lines->len; i++)
    {
      const TrLineFigures *line = tr_look_get_line (figures, i);

      if (!tr_line_is_roll_in (line) || !tr_line_has_role (line, TR_ROLE_FAT) || line->ingredient.proof_max_c >= bears
          || isnan (line->ingredient.proof_max_c))
        continue;
      bears = line->ingredient.proof_max_c;
      *fat = line->ingredient.id;
    }

  return bears;
}

gboolean
tr_look_get_fat_layer_band (const TrDoughFigures *figures,
                            TrBand               *band)
{
  static const TrBand leavened = { 15, 200, "common practice" }, unleavened = { 1, 100, "common practice" };
  TrKind kind = figures->dough->kind;

  *band = kind == TR_KIND_PUFF ? unleavened : leavened;

  return figures->has_lamination && figures->lamination.fat_volume_fraction > 0
         && (kind != TR_KIND_OTHER || tr_look_is_leavened (figures));
}

int
tr_look_find_salted_fat (const TrDoughFigures *figures)
{
  double most = 0;
  int at = -1;

  for (guint i = 0; i < figures->formula.lines->len; i++)
    {
      const TrLineFigures *line = tr_look_get_line (figures, i);
      double sodium = line->written_grams * line->ingredient.per_100g[TR_PART_SODIUM_MG];

      if (line->line->stage == TR_STAGE_FINISH || !tr_line_has_role (line, TR_ROLE_FAT) || !(sodium > most))
        continue;
      most = sodium;
      at = (int) i;
    }

  return at;
}
