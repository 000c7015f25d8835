/* findings-bench.c: what block, turns and sheet show against the bench
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Sizes that cannot be, that the bench does not take, or that stretch too much,
 * each with what would help, worked out and not guessed.
 */

#include "look.h"

#include "cut.h"
#include "lamination.h"
#include "measure.h"

#define MOSTLY_TOO_LONG 1.03            /* beyond it a limit of the bench stops */
#define MOST_BLOCKS 12
#define THINNEST_FAT_MM 1.0
#define PRINTED_OFF 0.10

static const char from_bench[] = "bench";
static const char from_practice[] = "common practice";

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

static gboolean
is_roll_in_not_weighed (const TrLineFigures *line)
{
  return tr_line_is_roll_in (line) && isnan (line->written_grams);
}

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

  return fault == TR_FAULT_NO_FAT && tr_look_find_line (figures, is_roll_in_not_weighed) >= 0;
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

  TrFinding *finding = tr_look_add (found, TR_FINDING_LOCK_IN_GEOMETRY, TR_SEVERITY_STOP,
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
  if (!(rolled_mm > start_mm * (1 + TR_HAIR)))
    return;

  tr_look_add (found, TR_FINDING_TURN_THICKER, TR_SEVERITY_STOP, thickness_pointer (figures->dough, turn_number),
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
      tr_look_add (found, TR_FINDING_TOO_THIN, TR_SEVERITY_STOP, thickness_pointer (figures->dough, i + 1),
                   get_step (figures, i)->rolled_mm.mm[2], thinnest, from_bench)
        ->with[0] = i + 1;

  if (!figures->has_sheet || !(sheet->breaks & TR_BREAK_ROLL_THICKNESS_MIN))
    return;

  TrFinding *finding = tr_look_add (found, TR_FINDING_TOO_THIN, TR_SEVERITY_STOP, thickness_pointer (figures->dough, 0),
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

  if (!tr_is_written (bench->roll_width_max_mm) || !(block->mm[2] > bench->roll_thickness_max_mm * (1 + TR_HAIR)))
    return;

  tr_look_add (found, TR_FINDING_TOO_THICK, TR_SEVERITY_WARN,
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
  TrSeverity severity = size > excess->limit * (MOSTLY_TOO_LONG + TR_HAIR) ? TR_SEVERITY_STOP : TR_SEVERITY_WARN;
  TrFinding *finding = tr_look_add (found, TR_FINDING_TOO_LONG, severity, where, size, excess->limit, from_bench);

  finding->name = g_strdup (tr_break_id (excess->one));
  finding->with[3] = 100 * (size / excess->limit - 1);

  return finding;
}

/* Where what helps is written. */
static void
lead_to (TrFinding  *finding,
         const char *where)
{
  g_free (finding->where);
  finding->where = g_strdup (where);
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
      if (isnan (finding->with[1]) && isfinite (finding->with[2]))
        lead_to (finding, "/lock_in/blocks");
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
  TrBand band;
  double limit;

  if (!tr_look_get_fat_layer_band (figures, &band)
      || !tr_look_is_outside (figures->lamination.fat_layer_um.max, band.low, band.high, &limit))
    return;

  TrFinding *finding = tr_look_add (found, TR_FINDING_FAT_LAYER, TR_SEVERITY_NOTE, g_strdup ("/turns"),
                                    figures->lamination.fat_layer_um.max, limit, band.source);
  finding->with[0] = band.low;
  finding->with[1] = band.high;
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

  while (thick - thin > thick * TR_HAIR)
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

  if (!(fmax (length, width) > TR_GREATEST_STRETCH + TR_HAIR))
    return NULL;

  TrFinding *finding = tr_look_add (found, TR_FINDING_STRETCH, TR_SEVERITY_NOTE,
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

  tr_look_add (found, TR_FINDING_NO_PIECE, TR_SEVERITY_STOP, g_strdup ("/cut"),
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

  if (!figures->has_sheet || !(fabs (off) > PRINTED_OFF + TR_HAIR))
    return;
  if (dough->batch_by == TR_BATCH_PIECES && dough->pieces_written > 0
      && fabs (sheet->wanted - dough->pieces_written) > 0.5)
    return;

  TrFinding *finding = tr_look_add (found, TR_FINDING_PRINTED_SIZE, TR_SEVERITY_WARN,
                                    g_strdup ("/cut/printed_sheet_mm"),
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

  tr_look_add (found, TR_FINDING_PRINTED_COUNT, TR_SEVERITY_NOTE, g_strdup ("/pieces_written"),
               figures->sheet.pieces_cut, dough->pieces_written, NULL);
}

static void
look_for_spare (const TrDoughFigures *figures,
                GPtrArray            *found)
{
  const TrSheet *sheet = &figures->sheet;

  if (!figures->has_sheet || !(sheet->spare_pieces > 0.5))
    return;

  TrFinding *finding = tr_look_add (found, TR_FINDING_SPARE, TR_SEVERITY_NOTE, g_strdup ("/batch/value"),
                                    sheet->spare_pieces, sheet->wanted, NULL);
  finding->with[0] = sheet->pieces_cut;
  finding->with[1] = sheet->rows;
  finding->with[2] = sheet->per_row;
  finding->with[3] = sheet->sheets;
}

void
tr_look_at_bench (const TrDoughFigures *figures,
                  GPtrArray            *found)
{
  look_at_lock_in (figures, found);
  look_for_thicker_turns (figures, found);
  look_for_no_piece (figures, found);
  look_for_thin (figures, found);
  look_for_long (figures, found);
  look_for_thick (figures, found);
  look_at_fat_layer (figures, found);
  look_for_stretch (figures, found);
  look_at_printed_size (figures, found);
  look_at_printed_count (figures, found);
  look_for_spare (figures, found);
}
