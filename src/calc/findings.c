/* findings.c: what is wrong or worth knowing about a dough
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One function an id looks at the figures and, where there is something to
 * say, notes the numbers that the sentence needs. No sentence is made here, and
 * nothing is a finding that a number does not show.
 */

#include "findings.h"

#include "cut.h"
#include "formula.h"
#include "lamination.h"

#define HAIR 1e-9
#define MOSTLY_TOO_LONG 1.03            /* beyond it a limit of the bench stops */
#define MOST_BLOCKS 12
#define THINNEST_FAT_MM 1.0
#define SALTED_FAT_POINTS 0.3
#define PRINTED_OFF 0.10
#define COLD_CHAIN_HOURS 4.0
#define COLD_CHAIN_C 5.0

static const char from_bench[] = "bench";
static const char from_practice[] = "common practice";

typedef void (*Look) (const TrDoughFigures *figures,
                      GPtrArray            *found);

/* Takes `where`. */
static TrFinding *
add (GPtrArray   *found,
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

/* Lines */

typedef gboolean (*LineTest) (const TrLineFigures *line);

static const TrLineFigures *
get_line (const TrDoughFigures *figures,
          guint                 index)
{
  return &g_array_index (figures->formula.lines, TrLineFigures, index);
}

/* -1: no such line. */
static int
find_line (const TrDoughFigures *figures,
           LineTest              test)
{
  for (guint i = 0; i < figures->formula.lines->len; i++)
    if (test (get_line (figures, i)))
      return (int) i;

  return -1;
}

static gboolean
has_role (const TrLineFigures *line,
          TrRole               role)
{
  return line->known && line->ingredient.role == role;
}

static gboolean
is_in_dough (const TrLineFigures *line)
{
  return line->line->stage == TR_STAGE_DOUGH || line->line->stage == TR_STAGE_PREFERMENT;
}

static gboolean
is_flour_not_weighed (const TrLineFigures *line)
{
  return line->known && (line->ingredient.is_flour || line->ingredient.role == TR_ROLE_STARTER)
         && isnan (line->written_grams);
}

static gboolean
is_roll_in (const TrLineFigures *line)
{
  return line->line->stage == TR_STAGE_ROLL_IN;
}

static gboolean
is_roll_in_not_weighed (const TrLineFigures *line)
{
  return is_roll_in (line) && isnan (line->written_grams);
}

static gboolean
is_wet (const TrLineFigures *line)
{
  return is_in_dough (line) && (has_role (line, TR_ROLE_LIQUID) || has_role (line, TR_ROLE_DAIRY));
}

static gboolean
is_dough_fat (const TrLineFigures *line)
{
  return is_in_dough (line) && has_role (line, TR_ROLE_FAT);
}

static gboolean
is_salt (const TrLineFigures *line)
{
  return line->line->stage != TR_STAGE_FINISH && has_role (line, TR_ROLE_SALT);
}

static gboolean
is_sugar (const TrLineFigures *line)
{
  return is_in_dough (line) && has_role (line, TR_ROLE_SWEETENER);
}

static gboolean
is_leaven (const TrLineFigures *line)
{
  return is_in_dough (line) && has_role (line, TR_ROLE_LEAVEN);
}

static gboolean
is_starter (const TrLineFigures *line)
{
  return line->line->stage != TR_STAGE_FINISH && has_role (line, TR_ROLE_STARTER);
}

static gboolean
is_prefermented (const TrLineFigures *line)
{
  return line->line->stage == TR_STAGE_PREFERMENT || is_starter (line);
}

static char *
line_pointer (int         index,
              const char *member)
{
  return index < 0 ? g_strdup ("/lines") : g_strdup_printf ("/lines/%d/%s", index, member);
}

/* THICK of findings.h. */
static char *
thickness_pointer (const TrDough *dough,
                   guint          turn_number)
{
  if (turn_number == 0)
    return g_strdup (tr_is_written (dough->cut->piece_mass_g) ? "/cut/piece_mass_g" : "/cut/thickness_mm");

  const TrTurn *turn = tr_dough_get_turn (dough, turn_number - 1);
  const char *member = tr_is_written (turn->thickness_mm) ? "thickness_mm"
                       : tr_is_written (turn->length_mm)  ? "length_mm"
                                                          : "width_mm";

  return g_strdup_printf ("/turns/%u/%s", turn_number - 1, member);
}

/* The formula */

static void
look_for_flour (const TrDoughFigures *figures,
                GPtrArray            *found)
{
  if (figures->formula.written_flour_g > 0 || find_line (figures, is_flour_not_weighed) >= 0)
    return;

  add (found, TR_FINDING_NO_FLOUR, TR_SEVERITY_STOP, g_strdup ("/lines"), NAN, NAN, NULL)
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
      TrFinding *finding = add (found, TR_FINDING_NOT_WEIGHED, TR_SEVERITY_STOP,
                                g_strdup (problem->where != NULL ? problem->where : "/lines"), NAN, NAN, NULL);
      int line = line_of_pointer (problem->where);

      finding->with[0] = i;
      if (line < 0 || line >= (int) figures->formula.lines->len)
        continue;
      finding->with[1] = line;
      finding->name = g_strdup (get_line (figures, (guint) line)->line->ingredient);
    }
}

static void
look_for_readings_of_line (const TrDoughFigures *figures,
                           guint                 index,
                           GPtrArray            *found)
{
  static const char source[] = "one reading of several was chosen";
  const TrLineFigures *line = get_line (figures, index);
  const TrFormula *formula = &figures->formula;
  TrAmount amount;
  TrFinding *finding;

  if (!tr_amount_parse (line->line->amount, &amount, NULL))
    return;
  if (amount.is_mean)
    {
      finding = add (found, TR_FINDING_AMOUNT, TR_SEVERITY_NOTE, line_pointer ((int) index, "amount"),
                     amount.parts[0].number, NAN, source);
      finding->name = g_strdup ("mean");
      finding->with[0] = amount.parts[0].unit;
    }
  if (is_roll_in (line) && amount.parts[0].unit == TR_UNIT_PERCENT)
    {
      finding = add (found, TR_FINDING_AMOUNT, TR_SEVERITY_NOTE, line_pointer ((int) index, "amount"),
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
    add (found, TR_FINDING_AMOUNT, TR_SEVERITY_NOTE, g_strdup ("/lines"), 1000, NAN, NULL)
      ->name = g_strdup ("assumed-flour");
}

static void
look_at_mixer (const TrDoughFigures *figures,
               GPtrArray            *found)
{
  double dough_g = figures->formula.dough_g, most_g = figures->bench->mixer_max_g;
  gboolean as_written = figures->dough->batch_by == TR_BATCH_WRITTEN;

  if (!(dough_g > most_g * (1 + HAIR)))
    return;

  add (found, TR_FINDING_MIXER, TR_SEVERITY_WARN, g_strdup (as_written ? "/batch/by" : "/batch/value"),
       dough_g, most_g, from_bench)
    ->with[0] = ceil (dough_g / most_g - HAIR);
}

/* The fat line that brings most salt; -1: none brings any. */
static int
find_salted_fat (const TrDoughFigures *figures)
{
  double most = 0;
  int at = -1;

  for (guint i = 0; i < figures->formula.lines->len; i++)
    {
      const TrLineFigures *line = get_line (figures, i);
      double sodium = line->written_grams * line->ingredient.per_100g[TR_PART_SODIUM_MG];

      if (line->line->stage == TR_STAGE_FINISH || !has_role (line, TR_ROLE_FAT) || !(sodium > most))
        continue;
      most = sodium;
      at = (int) i;
    }

  return at;
}

/* TRUE: outside, and `limit` is the end that is passed. */
static gboolean
is_outside (double  value,
            double  low,
            double  high,
            double *limit)
{
  *limit = value < low ? low : high;

  return value < low - HAIR || value > high + HAIR;
}

static void
look_at_salt (const TrDoughFigures *figures,
              GPtrArray            *found)
{
  double salt = figures->formula.salt_percent, limit;
  int salt_line = find_line (figures, is_salt), fat_line = find_salted_fat (figures);
  TrBand band;

  if (!tr_band_get (TR_RATIO_SALT, figures->dough->kind, &band) || !is_outside (salt, band.low, band.high, &limit))
    return;

  TrFinding *finding = add (found, TR_FINDING_SALT, TR_SEVERITY_WARN,
                            line_pointer (salt_line >= 0 ? salt_line : fat_line, "amount"),
                            salt, limit, band.source);
  finding->with[0] = band.low;
  finding->with[1] = band.high;
  if (fat_line < 0 || salt < band.high || !(figures->formula.salted_fat_salt_percent >= SALTED_FAT_POINTS - HAIR))
    return;
  finding->with[2] = figures->formula.salted_fat_salt_percent;
  finding->name = g_strdup (get_line (figures, (guint) fat_line)->ingredient.id);
}

static void
look_at_bands (const TrDoughFigures *figures,
               GPtrArray            *found)
{
  const TrFormula *formula = &figures->formula;
  const struct { TrRatio ratio; double value; LineTest test; } ratios[] = {
    { TR_RATIO_ALL_WATER, formula->all_water_percent, is_wet },
    { TR_RATIO_DOUGH_FAT, formula->dough_fat_percent, is_dough_fat },
    { TR_RATIO_ROLL_IN_OF_DOUGH, formula->roll_in_percent_of_dough, is_roll_in },
    { TR_RATIO_SUGAR, formula->sugar_percent, is_sugar },
    { TR_RATIO_YEAST_FRESH, formula->yeast_fresh_percent, is_leaven },
    { TR_RATIO_PREFERMENTED, formula->prefermented_flour_percent, is_prefermented },
  };

  for (guint i = 0; i < G_N_ELEMENTS (ratios); i++)
    {
      TrBand band;
      double limit;

      if (!tr_band_get (ratios[i].ratio, figures->dough->kind, &band)
          || !is_outside (ratios[i].value, band.low, band.high, &limit))
        continue;

      TrFinding *finding = add (found, TR_FINDING_BAND, TR_SEVERITY_NOTE,
                                line_pointer (find_line (figures, ratios[i].test), "amount"),
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
      const TrLineFigures *line = get_line (figures, i);
      gboolean is_of_salt = has_role (line, TR_ROLE_SALT);

      if ((!is_of_salt && !has_role (line, TR_ROLE_LEAVEN)) || !is_by_volume (line, &part))
        continue;

      TrFinding *finding = add (found, is_of_salt ? TR_FINDING_SPOON_SALT : TR_FINDING_SPOON_YEAST,
                                TR_SEVERITY_NOTE, line_pointer ((int) i, "amount"),
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
  for (guint i = 0; i < index; i++)
    if (g_strcmp0 (get_line (figures, i)->line->ingredient, get_line (figures, index)->line->ingredient) == 0)
      return TRUE;

  return FALSE;
}

static gboolean
is_as_built_in (const TrIngredient *ingredient)
{
  const TrIngredient *base = tr_builtin_find (ingredient->base_id);

  return base != NULL
         && fabs (base->per_100g[TR_PART_FAT] - ingredient->per_100g[TR_PART_FAT]) < HAIR
         && fabs (base->per_100g[TR_PART_WATER] - ingredient->per_100g[TR_PART_WATER]) < HAIR;
}

static void
look_at_butter (const TrDoughFigures *figures,
                GPtrArray            *found)
{
  const double least_fat = 80, most_water = 16;

  for (guint i = 0; i < figures->formula.lines->len; i++)
    {
      const TrLineFigures *line = get_line (figures, i);
      double fat = line->ingredient.per_100g[TR_PART_FAT], water = line->ingredient.per_100g[TR_PART_WATER];

      if (!line->known || !tr_ingredient_is_like (&line->ingredient, "butter-") || is_seen_before (figures, i)
          || !(fat < least_fat - HAIR || water > most_water + HAIR))
        continue;

      TrFinding *finding = add (found, TR_FINDING_BUTTER_LEGAL, TR_SEVERITY_NOTE, line_pointer ((int) i, "ingredient"),
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
  int line = find_line (figures, is_roll_in);

  if ((kind != TR_KIND_PUFF && kind != TR_KIND_DANISH) || line < 0 || !(fat < least - HAIR))
    return;

  TrFinding *finding = add (found, TR_FINDING_LEGAL_MINIMUM, TR_SEVERITY_NOTE, line_pointer (line, "amount"), fat, least,
                            kind == TR_KIND_PUFF
                              ? "Österreichisches Lebensmittelbuch, B 18, 2.3.4.5"
                              : "Leitsätze für Feine Backwaren, 2.2.3.5 and 2.2.3.4");
  finding->with[0] = kind == TR_KIND_DANISH ? plain_laminated : NAN;
  finding->name = g_strdup (tr_kind_id (kind));
}

/* Lock-in and turns */

static const TrTurnFigures *
get_step (const TrDoughFigures *figures,
          guint                 index)
{
  return &g_array_index (figures->lamination.steps, TrTurnFigures, index);
}

static guint
count_steps (const TrDoughFigures *figures)
{
  return figures->has_lamination ? figures->lamination.steps->len : 0;
}

static gboolean
is_fault_said_elsewhere (const TrDoughFigures *figures,
                         TrLockInFault         fault)
{
  if (!(figures->formula.total_g > 0))
    return TRUE;

  return fault == TR_FAULT_NO_FAT && find_line (figures, is_roll_in_not_weighed) >= 0;
}

static void
look_at_lock_in (const TrDoughFigures *figures,
                 GPtrArray            *found)
{
  static const struct { const char *name, *where; } faults[] = {
    [TR_FAULT_NO_FAT] = { "no-fat", "/lines" },
    [TR_FAULT_NO_DOUGH] = { "no-dough", "/lines" },
    [TR_FAULT_FAT_THICKNESS] = { "fat-thickness", "/lock_in/fat_thickness_mm" },
    [TR_FAULT_FAT_WIDTH] = { "fat-width", "/lock_in/fat_width_mm" },
    [TR_FAULT_DOUGH_LENGTH] = { "dough-length", "/lock_in/rim_mm" },
    [TR_FAULT_TRIM] = { "trim", NULL },
  };
  double value, greatest;
  guint turn;

  if (!figures->has_lamination)
    return;

  TrLockInFault fault = tr_lock_in_find_fault (figures->dough, &figures->formula, &figures->lamination,
                                               &value, &greatest, &turn);
  if (fault == TR_FAULT_NONE || is_fault_said_elsewhere (figures, fault))
    return;

  const char *where = faults[fault].where;
  if (fault == TR_FAULT_DOUGH_LENGTH && tr_is_written (figures->dough->lock_in->fat_width_mm))
    where = "/lock_in/fat_width_mm";

  TrFinding *finding = add (found, TR_FINDING_LOCK_IN_GEOMETRY, TR_SEVERITY_STOP,
                            where != NULL ? g_strdup (where) : g_strdup_printf ("/turns/%u/trim_mm", turn),
                            value, 0, NULL);
  finding->with[0] = greatest;
  finding->with[1] = fault == TR_FAULT_TRIM ? (double) turn + 1 : (double) NAN;
  finding->name = g_strdup (faults[fault].name);
}

static void
add_turn_thicker (const TrDoughFigures *figures,
                  guint                 turn_number,
                  double                rolled_mm,
                  double                start_mm,
                  GPtrArray            *found)
{
  if (!(rolled_mm > start_mm * (1 + HAIR)))
    return;

  add (found, TR_FINDING_TURN_THICKER, TR_SEVERITY_STOP, thickness_pointer (figures->dough, turn_number),
       rolled_mm, start_mm, NULL)
    ->with[0] = turn_number;
}

static void
look_for_thicker_turns (const TrDoughFigures *figures,
                        GPtrArray            *found)
{
  for (guint i = 0; i < count_steps (figures); i++)
    add_turn_thicker (figures, i + 1, get_step (figures, i)->rolled_mm.mm[2],
                      get_step (figures, i)->start_mm.mm[2], found);

  if (figures->has_lamination && figures->has_sheet)
    add_turn_thicker (figures, 0, figures->sheet.rolled_mm.mm[2],
                      tr_lamination_last_block (&figures->lamination).mm[2], found);
}

static void
look_for_thin (const TrDoughFigures *figures,
               GPtrArray            *found)
{
  double thinnest = figures->bench->roll_thickness_min_mm;
  const TrSheet *sheet = &figures->sheet;

  for (guint i = 0; i < count_steps (figures); i++)
    if (get_step (figures, i)->breaks & TR_BREAK_ROLL_THICKNESS_MIN)
      add (found, TR_FINDING_TOO_THIN, TR_SEVERITY_STOP, thickness_pointer (figures->dough, i + 1),
           get_step (figures, i)->rolled_mm.mm[2], thinnest, from_bench)
        ->with[0] = i + 1;

  if (!figures->has_sheet || !(sheet->breaks & TR_BREAK_ROLL_THICKNESS_MIN))
    return;

  TrFinding *finding = add (found, TR_FINDING_TOO_THIN, TR_SEVERITY_STOP, thickness_pointer (figures->dough, 0),
                            sheet->rolled_mm.mm[2], thinnest, from_bench);
  finding->with[0] = 0;
  finding->with[1] = thinnest * sheet->thickness_mm / sheet->rolled_mm.mm[2];
}

static void
add_too_thick (const TrDoughFigures *figures,
               guint                 turn_number,
               const TrSize         *block,
               GPtrArray            *found)
{
  const TrBench *bench = figures->bench;
  guint before = turn_number > 0 ? turn_number - 1 : figures->dough->turns->len;

  if (!tr_is_written (bench->roll_width_max_mm) || !(block->mm[2] > bench->roll_thickness_max_mm * (1 + HAIR)))
    return;

  add (found, TR_FINDING_TOO_THICK, TR_SEVERITY_WARN,
       before > 0 ? thickness_pointer (figures->dough, before) : g_strdup ("/lock_in/fat_thickness_mm"),
       block->mm[2], bench->roll_thickness_max_mm, from_bench)
    ->with[0] = turn_number;
}

static void
look_for_thick (const TrDoughFigures *figures,
                GPtrArray            *found)
{
  if (!figures->has_lamination)
    return;

  for (guint i = 0; i < count_steps (figures); i++)
    add_too_thick (figures, i + 1, &get_step (figures, i)->start_mm, found);

  TrSize last = tr_lamination_last_block (&figures->lamination);
  if (figures->has_sheet)
    add_too_thick (figures, 0, &last, found);
}

/* What is too long, and what would help */

#define SIZE_BREAKS (TR_BREAK_WORKTOP_LENGTH | TR_BREAK_WORKTOP_WIDTH | TR_BREAK_ROLL_WIDTH)

/* One side of a roll-out, and the limit of the bench it passes. */
typedef struct { int side; double limit; TrBreaks one; } Excess;

/* At most two: along and across; across by the narrower of worktop and rollers. */
static guint
list_excesses (const TrBench *bench,
               TrBreaks       breaks,
               gboolean       rotated,
               Excess         excesses[2])
{
  gboolean by_rollers = (breaks & TR_BREAK_ROLL_WIDTH) && !(bench->worktop_mm[1] < bench->roll_width_max_mm);
  guint n = 0;

  if (breaks & TR_BREAK_WORKTOP_LENGTH)
    excesses[n++] = (Excess) { rotated ? 1 : 0, bench->worktop_mm[0], TR_BREAK_WORKTOP_LENGTH };
  if (by_rollers)
    excesses[n++] = (Excess) { rotated ? 0 : 1, bench->roll_width_max_mm, TR_BREAK_ROLL_WIDTH };
  else if (breaks & TR_BREAK_WORKTOP_WIDTH)
    excesses[n++] = (Excess) { rotated ? 0 : 1, bench->worktop_mm[1], TR_BREAK_WORKTOP_WIDTH };

  return n;
}

static double
find_blocks_that_fit (const TrDoughFigures *figures,
                      guint                 turn)
{
  TrDough dough = *figures->dough;
  TrLockIn lock_in = *dough.lock_in;

  dough.lock_in = &lock_in;
  for (lock_in.blocks = MAX (lock_in.blocks, 1) + 1; lock_in.blocks <= MOST_BLOCKS; lock_in.blocks++)
    {
      TrLamination divided;

      tr_lamination_compute (&dough, figures->bench, &figures->formula, NULL, &divided);
      TrBreaks breaks = g_array_index (divided.steps, TrTurnFigures, turn).breaks;
      tr_lamination_clear (&divided);
      if ((breaks & SIZE_BREAKS) == 0)
        return lock_in.blocks;
    }

  return NAN;
}

/* Rolled less thin the sheet gets shorter, not narrower. NaN: that does not help. */
static double
find_thickness_that_fits (const TrTurnFigures *step,
                          const Excess        *excess)
{
  double thickness = step->rolled_mm.mm[2] * step->rolled_mm.mm[0] / excess->limit;

  return excess->side == 0 && thickness <= step->start_mm.mm[2] ? thickness : NAN;
}

static TrFinding *
add_too_long (const TrSize *rolled,
              const Excess *excess,
              char         *where,
              GPtrArray    *found)
{
  double size = rolled->mm[excess->side];
  TrSeverity severity = size > excess->limit * (MOSTLY_TOO_LONG + HAIR) ? TR_SEVERITY_STOP : TR_SEVERITY_WARN;
  TrFinding *finding = add (found, TR_FINDING_TOO_LONG, severity, where, size, excess->limit, from_bench);

  finding->name = g_strdup (tr_break_id (excess->one));
  finding->with[3] = 100 * (size / excess->limit - 1);

  return finding;
}

static void
look_for_long_turn (const TrDoughFigures *figures,
                    guint                 index,
                    GPtrArray            *found)
{
  const TrTurnFigures *step = get_step (figures, index);
  gboolean rotated = FALSE;
  Excess excesses[2];

  if ((step->breaks & SIZE_BREAKS) == 0)
    return;
  if (!tr_is_written (figures->bench->roll_width_max_mm))
    tr_bench_check_sheet (figures->bench, &step->rolled_mm, &rotated);

  guint n = list_excesses (figures->bench, step->breaks, rotated, excesses);
  for (guint i = 0; i < n; i++)
    {
      TrFinding *finding = add_too_long (&step->rolled_mm, &excesses[i],
                                         thickness_pointer (figures->dough, index + 1), found);

      finding->with[0] = index + 1;
      finding->with[1] = find_thickness_that_fits (step, &excesses[i]);
      finding->with[2] = find_blocks_that_fit (figures, index);
    }
}

static double
mix_density (const TrDoughFigures *figures)
{
  const TrFormula written = {
    .dough_g = figures->formula.written_dough_g,
    .roll_in_g = figures->formula.written_roll_in_g,
  };
  double fraction, density;

  tr_mix_volume (figures->dough, &written, &fraction, &density);

  return density;
}

static void
look_for_long_sheet (const TrDoughFigures *figures,
                     GPtrArray            *found)
{
  gboolean rotated;
  Excess excesses[2];

  if (!figures->has_sheet || (figures->sheet.breaks & SIZE_BREAKS) == 0)
    return;

  int sheets = tr_cut_sheets_that_fit (figures->dough, figures->bench, mix_density (figures), figures->formula.total_g);
  tr_bench_check_sheet (figures->bench, &figures->sheet.rolled_mm, &rotated);
  guint n = list_excesses (figures->bench, figures->sheet.breaks, rotated, excesses);
  for (guint i = 0; i < n; i++)
    {
      TrFinding *finding = add_too_long (&figures->sheet.rolled_mm, &excesses[i],
                                         g_strdup (figures->dough->cut->rows > 0 ? "/cut/rows" : "/cut"), found);

      finding->with[0] = 0;
      finding->with[2] = sheets > 0 ? (double) sheets : (double) NAN;
    }
}

static void
look_for_long (const TrDoughFigures *figures,
               GPtrArray            *found)
{
  for (guint i = 0; i < count_steps (figures); i++)
    look_for_long_turn (figures, i, found);

  look_for_long_sheet (figures, found);
}

static void
look_at_fat_layer (const TrDoughFigures *figures,
                   GPtrArray            *found)
{
  const TrBand leavened = { 15, 200, NULL }, unleavened = { 1, 100, NULL };
  TrKind kind = figures->dough->kind;
  gboolean is_leavened = find_line (figures, is_leaven) >= 0 || find_line (figures, is_starter) >= 0;
  const TrBand *band = kind == TR_KIND_PUFF ? &unleavened : &leavened;
  double limit;

  if (!figures->has_lamination || (kind == TR_KIND_OTHER && !is_leavened)
      || !is_outside (figures->lamination.fat_layer_um.max, band->low, band->high, &limit))
    return;

  TrFinding *finding = add (found, TR_FINDING_FAT_LAYER, TR_SEVERITY_NOTE, g_strdup ("/turns"),
                            figures->lamination.fat_layer_um.max, limit, from_practice);
  finding->with[0] = band->low;
  finding->with[1] = band->high;
  finding->with[2] = figures->lamination.fat_layers;
}

/* Stretch */

static double
first_stretch_with_fat (const TrDoughFigures *figures,
                        double                fat_thickness_mm)
{
  TrDough dough = *figures->dough;
  TrLockIn lock_in = *dough.lock_in;
  TrLamination thinner;

  lock_in.fat_thickness_mm = fat_thickness_mm;
  dough.lock_in = &lock_in;
  tr_lamination_compute (&dough, figures->bench, &figures->formula, NULL, &thinner);
  double stretch = g_array_index (thinner.steps, TrTurnFigures, 0).stretch;
  tr_lamination_clear (&thinner);

  return stretch;
}

/* The thickest fat block with which the first roll-out stretches no more than
 * it may, by halving; NaN: thinner than a fat sheet can be handled. */
static double
find_fat_thickness_for_stretch (const TrDoughFigures *figures)
{
  double thin = THINNEST_FAT_MM, thick = tr_lock_in_get_fat_thickness_mm (figures->dough->lock_in);

  if (!(thin < thick) || !(first_stretch_with_fat (figures, thin) <= TR_GREATEST_STRETCH))
    return NAN;

  while (thick - thin > HAIR)
    {
      double middle = (thin + thick) / 2;

      if (first_stretch_with_fat (figures, middle) <= TR_GREATEST_STRETCH)
        thin = middle;
      else
        thick = middle;
    }

  return thin;
}

static TrFinding *
add_stretch (const TrDoughFigures *figures,
             guint                 turn_number,
             const TrSize         *start,
             const TrSize         *rolled,
             GPtrArray            *found)
{
  double length = rolled->mm[0] / start->mm[0], width = rolled->mm[1] / start->mm[1];
  int side = width > length ? 1 : 0;

  if (!(fmax (length, width) > TR_GREATEST_STRETCH + HAIR))
    return NULL;

  TrFinding *finding = add (found, TR_FINDING_STRETCH, TR_SEVERITY_NOTE,
                            turn_number == 1 ? g_strdup ("/lock_in/fat_thickness_mm")
                                             : thickness_pointer (figures->dough, turn_number),
                            fmax (length, width), TR_GREATEST_STRETCH, from_practice);
  finding->name = g_strdup (side == 0 ? "length" : "width");
  finding->with[0] = turn_number;
  finding->with[1] = start->mm[side];
  finding->with[2] = rolled->mm[side];

  return finding;
}

static void
look_for_stretch (const TrDoughFigures *figures,
                  GPtrArray            *found)
{
  for (guint i = 0; i < count_steps (figures); i++)
    {
      const TrTurnFigures *step = get_step (figures, i);
      TrFinding *finding = add_stretch (figures, i + 1, &step->start_mm, &step->rolled_mm, found);

      if (finding != NULL && i == 0)
        finding->with[3] = find_fat_thickness_for_stretch (figures);
    }

  if (figures->has_lamination && figures->lamination.has_to_sheet)
    add_stretch (figures, 0, &figures->lamination.to_sheet.start_mm, &figures->sheet.rolled_mm, found);
}

/* The sheet */

static void
look_for_no_piece (const TrDoughFigures *figures,
                   GPtrArray            *found)
{
  const TrDough *dough = figures->dough;
  double density = mix_density (figures);

  if (dough->cut == NULL || figures->has_sheet || isnan (density))
    return;

  add (found, TR_FINDING_NO_PIECE, TR_SEVERITY_STOP, g_strdup ("/cut"),
       figures->formula.total_g * (1 - dough->handling_loss_percent / 100),
       tr_cut_smallest_g (dough, density), NULL);
}

/* A printed sheet belongs to the printed count: another count says nothing
 * about it. */
static void
look_at_printed_size (const TrDoughFigures *figures,
                      GPtrArray            *found)
{
  const TrDough *dough = figures->dough;
  const TrSheet *sheet = &figures->sheet;
  double off = sheet->printed_thickness_mm / sheet->thickness_mm - 1;

  if (!figures->has_sheet || !(fabs (off) > PRINTED_OFF + HAIR))
    return;
  if (dough->batch_by == TR_BATCH_PIECES && dough->pieces_written > 0
      && fabs (sheet->wanted - dough->pieces_written) > 0.5)
    return;

  TrFinding *finding = add (found, TR_FINDING_PRINTED_SIZE, TR_SEVERITY_WARN, g_strdup ("/cut/printed_sheet_mm"),
                            sheet->printed_thickness_mm, sheet->thickness_mm, NULL);
  finding->with[0] = dough->cut->printed_sheet_mm[0];
  finding->with[1] = dough->cut->printed_sheet_mm[1];
  finding->with[2] = 100 * off;
}

static void
look_at_printed_count (const TrDoughFigures *figures,
                       GPtrArray            *found)
{
  const TrDough *dough = figures->dough;

  if (!figures->has_sheet || dough->batch_by != TR_BATCH_WRITTEN || dough->pieces_written <= 0
      || fabs (figures->sheet.pieces_cut - dough->pieces_written) < 0.5)
    return;

  add (found, TR_FINDING_PRINTED_COUNT, TR_SEVERITY_NOTE, g_strdup ("/pieces_written"),
       figures->sheet.pieces_cut, dough->pieces_written, NULL);
}

static void
look_for_spare (const TrDoughFigures *figures,
                GPtrArray            *found)
{
  const TrSheet *sheet = &figures->sheet;

  if (!figures->has_sheet || !(sheet->spare_pieces > 0.5))
    return;

  TrFinding *finding = add (found, TR_FINDING_SPARE, TR_SEVERITY_NOTE, g_strdup ("/batch/value"),
                            sheet->spare_pieces, sheet->wanted, NULL);
  finding->with[0] = sheet->pieces_cut;
  finding->with[1] = sheet->rows;
  finding->with[2] = sheet->per_row;
  finding->with[3] = sheet->sheets;
}

/* The method */

static void
look_at_proof (const TrDoughFigures *figures,
               GPtrArray            *found)
{
  const GPtrArray *steps = figures->dough->method->steps;
  double bears = NAN;
  const char *fat = NULL;

  for (guint i = 0; i < figures->formula.lines->len; i++)
    {
      const TrLineFigures *line = get_line (figures, i);

      if (!is_roll_in (line) || !has_role (line, TR_ROLE_FAT) || line->ingredient.proof_max_c >= bears
          || isnan (line->ingredient.proof_max_c))
        continue;
      bears = line->ingredient.proof_max_c;
      fat = line->ingredient.id;
    }

  for (guint i = 0; i < steps->len; i++)
    {
      const TrStep *step = steps->pdata[i];

      if (step->id == TR_STEP_PROOF && step->at_c > bears + HAIR)
        add (found, TR_FINDING_PROOF_HOT, TR_SEVERITY_WARN, g_strdup_printf ("/method/steps/%u/at_c", i),
             step->at_c, bears, "IREKS-Kompendium 11.5; ingredient table")
          ->name = g_strdup (fat);
    }
}

static double
place_c (const TrBench *bench,
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

/* The longest a step may take, if it is warmer than cold holding; else 0. */
static double
warm_minutes (const TrBench *bench,
              const TrStep  *step)
{
  gboolean is_cold_by_habit = step->id == TR_STEP_CHILL || step->id == TR_STEP_REST;
  TrPlace place = step->place >= 0 ? (TrPlace) step->place : is_cold_by_habit ? TR_PLACE_FRIDGE : TR_PLACE_ROOM;
  double at_c = tr_is_written (step->at_c) ? step->at_c : place_c (bench, place);
  double minutes = fmax (step->minutes, step->max_minutes);       /* fmax passes over NaN */

  return at_c > COLD_CHAIN_C + HAIR && minutes > 0 ? minutes : 0;
}

static double
sum_warm_steps (const TrDoughFigures *figures,
                TrStepId              first,
                TrStepId              last)
{
  const GPtrArray *steps = figures->dough->method->steps;
  double minutes = 0;

  for (guint i = 0; i < steps->len; i++)
    {
      const TrStep *step = steps->pdata[i];

      if (step->id >= first && step->id <= last)
        minutes += warm_minutes (figures->bench, step);
    }

  return minutes;
}

static double
warm_rest (const TrBench *bench,
           const TrRest  *rest)
{
  if (rest == NULL || place_c (bench, rest->place) <= COLD_CHAIN_C + HAIR)
    return 0;

  return fmax (rest->min_minutes, rest->max_minutes);
}

/* Mixing to proofing, with the turns on the bench and rests that are not cold. */
static double
sum_warm_dough (const TrDoughFigures *figures)
{
  const TrDough *dough = figures->dough;
  double minutes = sum_warm_steps (figures, TR_STEP_MIX, TR_STEP_PROOF);

  if (dough->lock_in != NULL)
    minutes += warm_rest (figures->bench, dough->lock_in->rest);
  for (guint i = 0; i < dough->turns->len; i++)
    {
      const TrTurn *turn = tr_dough_get_turn (dough, i);

      minutes += tr_is_written (turn->minutes) ? turn->minutes : figures->bench->turn_minutes;
      minutes += warm_rest (figures->bench, turn->rest);
    }

  return minutes;
}

/* From the finish to the oven, or to the end when it is not baked any more. */
static double
sum_warm_finish (const TrDoughFigures *figures,
                 gboolean             *is_baked)
{
  const GPtrArray *steps = figures->dough->method->steps;
  gboolean is_finished = FALSE;
  double minutes = 0;

  *is_baked = FALSE;
  for (guint i = 0; i < steps->len && !*is_baked; i++)
    {
      const TrStep *step = steps->pdata[i];

      is_finished = is_finished || step->id == TR_STEP_FINISH;
      *is_baked = is_finished && step->id == TR_STEP_BAKE;
      if (is_finished && !*is_baked)
        minutes += warm_minutes (figures->bench, step);
    }

  return minutes;
}

static int
find_egg_or_dairy (const TrDoughFigures *figures,
                   TrStage               stage)
{
  for (guint i = 0; i < figures->formula.lines->len; i++)
    {
      const TrLineFigures *line = get_line (figures, i);

      if (line->line->stage == stage && (has_role (line, TR_ROLE_EGG) || has_role (line, TR_ROLE_DAIRY)))
        return (int) i;
    }

  return -1;
}

static void
add_cold_chain (const TrDoughFigures *figures,
                TrStage               stage,
                double                minutes,
                gboolean              is_baked,
                GPtrArray            *found)
{
  int line = find_egg_or_dairy (figures, stage);
  double hours = minutes / 60;
  TrSeverity severity = is_baked && stage != TR_STAGE_PREFERMENT ? TR_SEVERITY_NOTE : TR_SEVERITY_WARN;

  if (line < 0 || !(hours > COLD_CHAIN_HOURS + HAIR))
    return;

  TrFinding *finding = add (found, TR_FINDING_COLD_CHAIN, severity, line_pointer (line, "ingredient"),
                            hours, COLD_CHAIN_HOURS, "FDA Food Code 3-501.16, 3-501.19; local rules decide");
  finding->with[0] = stage;
  finding->with[1] = is_baked ? 1 : 0;
  finding->name = g_strdup (get_line (figures, (guint) line)->ingredient.id);
}

static void
look_at_cold_chain (const TrDoughFigures *figures,
                    GPtrArray            *found)
{
  gboolean is_baked = tr_dough_find_step (figures->dough, TR_STEP_BAKE) != NULL;
  gboolean is_finish_baked;
  double finish_minutes = sum_warm_finish (figures, &is_finish_baked);

  add_cold_chain (figures, TR_STAGE_FINISH, finish_minutes, is_finish_baked, found);
  add_cold_chain (figures, TR_STAGE_PREFERMENT,
                  sum_warm_steps (figures, TR_STEP_PREFERMENT_MIX, TR_STEP_RIPEN), is_baked, found);
  add_cold_chain (figures, TR_STAGE_DOUGH, sum_warm_dough (figures), is_baked, found);
}

static void
look_at_allergens (const TrDoughFigures *figures,
                   GPtrArray            *found)
{
  guint n = figures->allergens != NULL ? g_strv_length (figures->allergens) : 0;
  TrFinding *finding = add (found, TR_FINDING_ALLERGENS, TR_SEVERITY_NOTE, g_strdup ("/lines"), n, NAN,
                            "Regulation (EU) 1169/2011, Annex II");

  if (n > 0)
    finding->name = g_strjoinv (",", figures->allergens);
}

/* The order in which members of a dough stand in the document; a number in
 * the pointer orders what stands in one list. */
static guint
document_order (const char *where)
{
  static const char *const members[] = {
    "/lines", "/pieces_written", "/batch", "/lock_in", "/turns", "/cut", "/method"
  };

  for (guint i = 0; i < G_N_ELEMENTS (members); i++)
    if (g_str_has_prefix (where, members[i]))
      {
        const char *number = strpbrk (where, "0123456789");
        guint64 index = number != NULL ? g_ascii_strtoull (number, NULL, 10) + 1 : 0;

        return (i + 1) * 100000 + (guint) MIN (index, 99999);
      }

  return 0;
}

static int
compare_findings (gconstpointer a,
                  gconstpointer b)
{
  const TrFinding *first = *(TrFinding *const *) a, *second = *(TrFinding *const *) b;
  guint order = document_order (first->where), other_order = document_order (second->where);

  if (first->severity != second->severity)
    return first->severity > second->severity ? -1 : 1;
  if (order != other_order)
    return order < other_order ? -1 : 1;

  return (int) first->id - (int) second->id;
}

GPtrArray *
tr_findings_compute (const TrDoughFigures *figures)
{
  static const Look looks[] = {
    look_for_flour, look_for_not_weighed, look_for_readings, look_at_lock_in, look_for_thicker_turns,
    look_for_no_piece, look_for_thin, look_for_long, look_for_thick, look_at_mixer, look_at_salt,
    look_at_bands, look_at_fat_layer, look_for_stretch, look_at_proof, look_at_printed_size,
    look_at_printed_count, look_at_butter, look_at_minimum, look_for_spoons, look_at_cold_chain,
    look_for_spare, look_at_allergens,
  };
  GPtrArray *found = g_ptr_array_new_with_free_func ((GDestroyNotify) tr_finding_free);

  for (guint i = 0; i < G_N_ELEMENTS (looks); i++)
    looks[i] (figures, found);
  g_ptr_array_sort (found, compare_findings);

  return found;
}
