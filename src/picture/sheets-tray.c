/* sheets-tray.c: a proofing tray with the pieces on it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * To the same scale as the sheet. How many pieces go on and what each stands
 * on are figures; here they are only set out in lines, with the gap between them.
 */

#include "config.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "sheets-plan.h"

#define FINEST_PIECE 2.0

/* The lines on the tray: n along its first side, pieces of `foot`. */
typedef struct { int n[2]; double foot[2], pitch[2]; gboolean is_turned; } Lines;

static int
count (double tray_mm,
       double foot_mm,
       double gap_mm)
{
  return (int) floor (tray_mm / (foot_mm + gap_mm) + 1e-9);
}

/* The better way round, as the figures have it. */
static void
find_lines (const TrSheetsPlan *plan,
            Lines              *lines)
{
  const TrBench *bench = plan->sheet.figures->bench;
  const double *foot = plan->sheet.sheet->trays.footprint_mm.mm;
  double gap = bench->piece_gap_mm;
  int as_is = count (bench->tray_mm[0], foot[0], gap) * count (bench->tray_mm[1], foot[1], gap);
  int turned = count (bench->tray_mm[0], foot[1], gap) * count (bench->tray_mm[1], foot[0], gap);

  lines->is_turned = turned > as_is;
  for (int i = 0; i < 2; i++)
    {
      lines->foot[i] = foot[lines->is_turned ? 1 - i : i];
      lines->pitch[i] = lines->foot[i] + gap;
      lines->n[i] = count (bench->tray_mm[i], lines->foot[i], gap);
    }
}

/* A box on the tray, in mm along its first and second side. */
static TrBox
box_on_tray (const TrSheetsPlan *plan,
             double              first,
             double              second,
             double              long_mm,
             double              wide_mm)
{
  double scale = plan->sheet.scale;

  if (plan->tray_is_turned)
    return (TrBox) { plan->tray.x + second * scale, plan->tray.y + first * scale, wide_mm * scale, long_mm * scale };
  return (TrBox) { plan->tray.x + first * scale, plan->tray.y + second * scale, long_mm * scale, wide_mm * scale };
}

/* A rolled triangle is thickest in its middle. */
static void
add_crescent (TrSheetsPlan *plan,
              const TrBox  *box,
              gboolean      is_upright)
{
  static const double shape[8][2] = { { 0, 0.36 }, { 0.3, 0.06 }, { 0.5, 0 }, { 0.7, 0.06 }, { 1, 0.36 }, { 1, 0.64 }, { 0.5, 1 }, { 0, 0.64 } };
  double xy[16];

  for (int i = 0; i < 8; i++)
    {
      xy[2 * i] = box->x + box->width * shape[i][is_upright ? 1 : 0];
      xy[2 * i + 1] = box->y + box->height * shape[i][is_upright ? 0 : 1];
    }
  tr_picture_add_polygon (plan->sheet.picture, xy, 8, &plan->sheet.look->dough, TR_PEN_INNER, &plan->sheet.look->line);
}

static void
add_triangle (TrSheetsPlan *plan,
              const TrBox  *box,
              gboolean      is_upright,
              gboolean      is_right)
{
  double right = box->x + box->width, bottom = box->y + box->height;
  double tip_x = is_right ? box->x : box->x + box->width / 2, tip_y = is_right ? bottom : box->y + box->height / 2;
  const double upright[] = { box->x, bottom, right, bottom, tip_x, box->y };
  const double lying[] = { box->x, box->y, box->x, bottom, right, tip_y };

  tr_picture_add_polygon (plan->sheet.picture, is_upright ? upright : lying, 3, &plan->sheet.look->dough, TR_PEN_INNER, &plan->sheet.look->line);
}

static void
add_piece (TrSheetsPlan *plan,
           const Lines  *lines,
           const TrBox  *box)
{
  const TrLook *look = plan->sheet.look;
  const TrCut *cut = plan->sheet.cut;
  gboolean is_rolled = tr_cut_is_rolled_up (cut);
  gboolean is_across = lines->is_turned != plan->tray_is_turned;     /* its first side runs downwards */

  if (cut->shape == TR_SHAPE_SLICES || cut->shape == TR_SHAPE_ROUND)
    tr_picture_add_circle (plan->sheet.picture, box->x + box->width / 2, box->y + box->height / 2, box->width / 2, &look->dough,
                           TR_PEN_INNER, &look->line);
  else if (cut->shape == TR_SHAPE_TRIANGLE && is_rolled)
    add_crescent (plan, box, is_across);
  else if ((cut->shape == TR_SHAPE_TRIANGLE || cut->shape == TR_SHAPE_RIGHT_TRIANGLE) && !is_rolled)
    add_triangle (plan, box, !is_across, cut->shape == TR_SHAPE_RIGHT_TRIANGLE);
  else
    tr_picture_add_rect (plan->sheet.picture, box, &look->dough, TR_PEN_INNER, &look->line);
}

static void
add_pieces (TrSheetsPlan *plan)
{
  const TrBench *bench = plan->sheet.figures->bench;
  double left = 0, gap = bench->piece_gap_mm, start[2];
  Lines lines;

  find_lines (plan, &lines);
  left = MIN (plan->sheet.sheet->trays.per_tray, plan->sheet.sheet->pieces_cut);
  for (int i = 0; i < 2; i++)
    start[i] = (bench->tray_mm[i] - lines.n[i] * lines.pitch[i] + gap) / 2;
  if (MIN (lines.foot[0], lines.foot[1]) * plan->sheet.scale < FINEST_PIECE)
    {
      TrBox box = box_on_tray (plan, start[0], start[1], lines.n[0] * lines.pitch[0] - gap, lines.n[1] * lines.pitch[1] - gap);

      tr_picture_add_rect (plan->sheet.picture, &box, &plan->sheet.look->dough, TR_PEN_INNER, &plan->sheet.look->line);
      return;
    }
  for (int k = 0; k < lines.n[1]; k++)
    for (int i = 0; i < lines.n[0] && left > 0; i++, left--)
      {
        TrBox box = box_on_tray (plan, start[0] + i * lines.pitch[0], start[1] + k * lines.pitch[1], lines.foot[0], lines.foot[1]);

        add_piece (plan, &lines, &box);
      }
}

static char *
dup_caption (const TrSheetsPlan *plan)
{
  const TrReader *reader = plan->sheet.reader;
  const TrBench *bench = plan->sheet.figures->bench;
  const TrTrays *trays = &plan->sheet.sheet->trays;
  g_autofree char *size = tr_words_area_size (reader, bench->tray_mm[0], bench->tray_mm[1]);
  g_autofree char *per_tray = tr_words_count (reader, trays->per_tray);
  g_autofree char *number = tr_words_count (reader, trays->trays);
  g_autofree char *foot = tr_words_area_size (reader, trays->footprint_mm.mm[0], trays->footprint_mm.mm[1]);
  g_autofree char *gap = tr_words_length (reader, bench->piece_gap_mm);

  if (!(trays->per_tray >= 1))
    return g_strdup_printf (_("Tray %s. A piece does not fit on it: it stands on %s."), size, foot);
  if (trays->trays > 1)
    return g_strdup_printf (_("%s trays %s, %s pieces on each; a piece stands on %s, %s apart"), number, size, per_tray, foot, gap);
  return g_strdup_printf (_("Tray %s, room for %s pieces; a piece stands on %s, %s apart"), size, per_tray, foot, gap);
}

void
tr_sheets_plan_add_tray (TrSheetsPlan *plan)
{
  const TrLook *look = plan->sheet.look;
  double em = plan->sheet.em, baseline = plan->tray.y + plan->tray.height + 1.25 * em;
  g_autofree char *caption = dup_caption (plan);
  g_auto (GStrv) lines = tr_text_wrap (look, caption, TR_CAPTION_SIZE * em, 400, plan->tray_text_width, 3);

  tr_picture_add_rect (plan->sheet.picture, &plan->tray, &look->worktop, TR_PEN_OUTLINE, &look->dim);
  tr_picture_set_hit (plan->sheet.picture, TR_PART_OF_TRAY, 0, caption);
  if (plan->sheet.sheet->trays.per_tray >= 1)
    add_pieces (plan);
  for (guint i = 0; lines[i] != NULL; i++)
    tr_picture_add_text (plan->sheet.picture, lines[i], TR_CAPTION_SIZE * em, 400, &look->dim, plan->tray.x, baseline + i * 1.2 * em, 0);
  tr_picture_describe (plan->sheet.picture, "%s.", caption);
}
