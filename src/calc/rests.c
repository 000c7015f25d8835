/* rests.c: how long a slab really needs, and how long it can then be rolled
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "rests.h"

#include "look.h"
#include "measure.h"

/* What the slab is made of, at a temperature *******************************/

static void
compute_dough (const TrDoughFigures *figures,
               double                celsius,
               TrThermal            *thermal)
{
  double density = figures->dough->dough_density_g_ml * 1000;

  tr_thermal_compute (figures->formula.dough_per_100g, celsius, thermal);
  thermal->k_w_mk = tr_thermal_porous_k (thermal->k_w_mk, fmax (0, 1 - density / thermal->rho_kg_m3));
  thermal->rho_kg_m3 = density;
}

/* Layers of fat and dough across which the heat goes: their resistances add up. */
static void
compute_block (const TrDoughFigures *figures,
               double                celsius,
               TrThermal            *block)
{
  const TrFormula *formula = &figures->formula;
  double fat_share = figures->lamination.fat_volume_fraction;
  TrThermal dough, fat;

  compute_dough (figures, celsius, &dough);
  tr_thermal_compute (formula->roll_in_per_100g, celsius, &fat);
  block->k_w_mk = 1 / (fat_share / fat.k_w_mk + (1 - fat_share) / dough.k_w_mk);
  block->rho_kg_m3 = figures->lamination.mix_density_g_ml * 1000;
  block->cp_j_kgk = (formula->roll_in_g * fat.cp_j_kgk + formula->dough_g * dough.cp_j_kgk) / (formula->roll_in_g + formula->dough_g);
}

static void
compute_slab (const TrDoughFigures *figures,
              int                   turn,
              double                start_c,
              double                air_c,
              TrThermal            *thermal)
{
  double celsius = fmax (0, (start_c + air_c) / 2);

  if (turn == 0)
    compute_dough (figures, celsius, thermal);
  else if (figures->has_lamination)
    compute_block (figures, celsius, thermal);
  else
    *thermal = (TrThermal) { NAN, NAN, NAN };
}

/* The rest ******************************************************************/

const TrRest *
tr_dough_get_rest (const TrDough *dough,
                   int            turn)
{
  if (turn == 0)
    return dough->lock_in != NULL ? dough->lock_in->rest : NULL;

  return turn <= (int) dough->turns->len ? tr_dough_get_turn (dough, (guint) turn - 1)->rest : NULL;
}

double
tr_rest_get_usual_start_c (const TrDough *dough,
                           int            turn)
{
  return turn == 0 ? dough->method->dough_c : TR_REST_START_C;
}

double
tr_rest_get_usual_target_c (const TrRest  *rest,
                            const TrBench *bench)
{
  return fmax (tr_look_get_place_c (bench, rest->place) + TR_REST_TARGET_OVER_AIR_C, TR_REST_LEAST_TARGET_C);
}

static double
get_thickness_mm (const TrDoughFigures *figures,
                  const TrRest         *rest,
                  int                   turn)
{
  if (turn == 0)
    return tr_is_written (rest->thickness_mm) ? rest->thickness_mm : TR_CHILL_THICKNESS_MM;
  if (!figures->has_lamination || turn > (int) figures->lamination.steps->len)
    return NAN;

  return g_array_index (figures->lamination.steps, TrTurnFigures, turn - 1).folded_mm.mm[2];
}

static void
compute_cooling (TrRestFigures *rest)
{
  const TrWall *wall = &rest->wall;
  gboolean cools = rest->air_c < rest->start_c;
  double freezing = cools && rest->air_c < TR_FREEZING_C ? tr_wall_get_minutes_to (wall, TR_WALL_SURFACE, TR_FREEZING_C) : NAN;

  rest->minutes_to_surface_freezing = freezing;
  if (isnan (wall->scale_s))
    rest->core_why = TR_HEAT_NOT_KNOWN;
  else if (rest->target_c >= rest->start_c)
    rest->minutes_to_core = 0;
  else if (!cools)
    rest->core_why = TR_HEAT_ONLY_WARMS;
  else if (rest->target_c <= rest->air_c)
    rest->core_why = TR_HEAT_NEVER_THERE;
  else
    rest->minutes_to_core = tr_wall_get_minutes_to (wall, TR_WALL_CORE, rest->target_c);

  /* The model ends where the surface freezes: nothing is said of what comes after. */
  if (rest->minutes_to_core > freezing)
    {
      rest->minutes_to_core = NAN;
      rest->core_why = TR_HEAT_FREEZES;
    }
  if (!(rest->written_minutes > freezing))
    {
      rest->core_c_after_written = tr_wall_get_c (wall, TR_WALL_CORE, rest->written_minutes);
      rest->mean_c_after_written = tr_wall_get_c (wall, TR_WALL_MEAN, rest->written_minutes);
    }
}

/* On the bench afterwards *****************************************************/

static void
find_fat (const TrDoughFigures *figures,
          TrRestFigures        *rest)
{
  double low = -INFINITY, soft = INFINITY;
  gboolean has_fat = FALSE;

  for (guint i = 0; i < figures->formula.lines->len; i++)
    {
      const TrLineFigures *line = tr_look_get_line (figures, i);

      if (!tr_line_is_roll_in (line) || !tr_line_has_role (line, TR_ROLE_FAT))
        continue;
      has_fat = TRUE;
      /* One that is not known makes the whole so. */
      low = isnan (low) || isnan (line->ingredient.plastic_low_c) ? NAN : fmax (low, line->ingredient.plastic_low_c);
      if (isnan (soft) || isnan (line->ingredient.soft_c))
        soft = NAN;
      else if (line->ingredient.soft_c < soft)
        {
          soft = line->ingredient.soft_c;
          rest->fat = line->ingredient.id;
        }
    }

  rest->plastic_low_c = has_fat ? low : NAN;
  rest->soft_c = has_fat ? soft : NAN;
}

/* Lying on the worktop: one face in the air of the room. */
static void
init_on_bench (const TrDoughFigures *figures,
               TrWall               *wall,
               int                   turn,
               double                start_c,
               double                thickness_mm)
{
  TrThermal thermal;

  compute_slab (figures, turn, start_c, figures->bench->room_c, &thermal);
  tr_wall_init (wall, start_c, figures->bench->room_c, figures->bench->h_bench_w_m2k, thickness_mm, &thermal);
}

static void
compute_workable (const TrDoughFigures *figures,
                  TrRestFigures        *rest)
{
  double mean_c = rest->mean_c_after_written;
  TrWall block;

  if (isnan (mean_c))
    rest->workable_why = rest->written_minutes > rest->minutes_to_surface_freezing ? TR_HEAT_FREEZES : TR_HEAT_NOT_KNOWN;
  else if (mean_c >= rest->plastic_low_c)
    rest->minutes_to_workable = 0;
  else if (figures->bench->room_c <= rest->plastic_low_c)
    rest->workable_why = TR_HEAT_ROOM_TOO_COLD;
  else
    {
      init_on_bench (figures, &block, rest->turn, mean_c, rest->thickness_mm);
      rest->minutes_to_workable = tr_wall_get_minutes_to (&block, TR_WALL_MEAN, rest->plastic_low_c);
    }
}

static void
compute_window (const TrDoughFigures *figures,
                TrRestFigures        *rest)
{
  double from_c = fmax (rest->mean_c_after_written, rest->plastic_low_c);
  TrWall sheet;

  if (isnan (rest->minutes_to_workable))
    rest->window_why = rest->workable_why;
  else if (isnan (rest->rolled_mm))
    rest->window_why = TR_HEAT_NOT_KNOWN;
  else if (from_c >= rest->soft_c)
    rest->work_window_minutes = 0;
  else if (figures->bench->room_c <= rest->soft_c)
    rest->window_why = TR_HEAT_NO_LIMIT;
  else
    {
      init_on_bench (figures, &sheet, rest->turn, from_c, rest->rolled_mm);
      rest->work_window_minutes = tr_wall_get_minutes_to (&sheet, TR_WALL_MEAN, rest->soft_c);
    }
}

/* What follows the rest: the next turn, after the last the sheet. */
static void
find_next (const TrDoughFigures *figures,
           TrRestFigures        *rest)
{
  const TrDough *dough = figures->dough;
  const TrStep *roll_out = tr_dough_find_step (dough, TR_STEP_ROLL_OUT);

  if (rest->turn < (int) dough->turns->len)
    {
      double written = tr_dough_get_turn (dough, (guint) rest->turn)->minutes;

      rest->next_minutes = tr_is_written (written) ? written : figures->bench->turn_minutes;
      rest->rolled_mm = g_array_index (figures->lamination.steps, TrTurnFigures, rest->turn).rolled_mm.mm[2];
    }
  else
    {
      rest->next_minutes = roll_out != NULL ? roll_out->minutes : NAN;
      rest->rolled_mm = figures->has_sheet ? figures->sheet.rolled_mm.mm[2] : NAN;
    }
}

static void
compute_on_bench (const TrDoughFigures *figures,
                  TrRestFigures        *rest)
{
  if (rest->turn == 0)
    {
      rest->workable_why = rest->window_why = TR_HEAT_NOT_ASKED;
      return;
    }
  if (!figures->has_lamination)
    {
      rest->workable_why = rest->window_why = TR_HEAT_NOT_KNOWN;
      return;
    }

  find_next (figures, rest);
  find_fat (figures, rest);
  if (isnan (rest->plastic_low_c) || isnan (rest->soft_c))
    {
      rest->workable_why = rest->window_why = TR_HEAT_NO_FAT;
      return;
    }
  compute_workable (figures, rest);
  compute_window (figures, rest);
}

/* All of them *****************************************************************/

static void
add_rest (const TrDoughFigures *figures,
          GArray               *rests,
          const TrRest         *written,
          int                   turn)
{
  const TrBench *bench = figures->bench;
  double air_c = tr_look_get_place_c (bench, written->place);
  TrThermal thermal;
  TrRestFigures rest = {
    .turn = turn,
    .place = written->place,
    .on = written->on,
    .air_c = air_c,
    .h_w_m2k = bench->h_w_m2k[written->place],
    .thickness_mm = get_thickness_mm (figures, written, turn),
    .start_c = tr_is_written (written->start_c) ? written->start_c : tr_rest_get_usual_start_c (figures->dough, turn),
    .target_c = tr_is_written (written->target_c) ? written->target_c : tr_rest_get_usual_target_c (written, bench),
    .written_minutes = written->min_minutes,
    .minutes_to_core = NAN, .core_c_after_written = NAN, .mean_c_after_written = NAN, .minutes_to_surface_freezing = NAN,
    .minutes_to_workable = NAN, .work_window_minutes = NAN,
    .plastic_low_c = NAN, .soft_c = NAN, .rolled_mm = NAN, .next_minutes = NAN,
  };

  compute_slab (figures, turn, rest.start_c, air_c, &thermal);
  rest.k_w_mk = thermal.k_w_mk;
  rest.rho_kg_m3 = thermal.rho_kg_m3;
  rest.cp_j_kgk = thermal.cp_j_kgk;
  tr_wall_init (&rest.wall, rest.start_c, air_c, rest.h_w_m2k,
                rest.on == TR_ON_RACK ? rest.thickness_mm / 2 : rest.thickness_mm, &thermal);
  compute_cooling (&rest);
  compute_on_bench (figures, &rest);
  g_array_append_val (rests, rest);
}

GArray *
tr_rests_compute (const TrDoughFigures *figures)
{
  GArray *rests = g_array_new (FALSE, FALSE, sizeof (TrRestFigures));

  for (int turn = 0; turn <= (int) figures->dough->turns->len; turn++)
    {
      const TrRest *rest = tr_dough_get_rest (figures->dough, turn);

      if (rest != NULL)
        add_rest (figures, rests, rest, turn);
    }

  return rests;
}

const TrRestFigures *
tr_rests_find (const TrDoughFigures *figures,
               int                   turn)
{
  for (guint i = 0; i < figures->rests->len; i++)
    {
      const TrRestFigures *rest = &g_array_index (figures->rests, TrRestFigures, i);

      if (rest->turn == turn)
        return rest;
    }

  return NULL;
}
