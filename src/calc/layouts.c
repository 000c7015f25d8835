/* layouts.c: the sheet for each number of rows
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the baker chooses from: a number of rows is all that is written, so for
 * each there is the one layout that it leads to. The report's `alternatives` are
 * another list: every layout that fits, of the rows that are written.
 */

#include "cut.h"

#include "lamination.h"

static TrDough *
copy_with_rows (const TrDough *dough,
                int            rows)
{
  TrDough *copy = tr_dough_copy (dough);

  copy->cut->rows = rows;

  return copy;
}

/* FALSE: no sheet, or it does not fit. */
static gboolean
compute_with_rows (const TrDoughFigures *figures,
                   int                   rows,
                   TrSheet              *sheet)
{
  g_autoptr (TrDough) dough = copy_with_rows (figures->dough, rows);
  double fat_volume_fraction, density_g_ml;

  tr_mix_volume (dough, &figures->formula, &fat_volume_fraction, &density_g_ml);

  return tr_sheet_compute (dough, figures->bench, density_g_ml, figures->formula.total_g, NAN, sheet) && sheet->breaks == 0;
}

int
tr_sheet_find_best_rows (const TrDoughFigures *figures)
{
  TrSheet sheet;

  return figures->dough->cut != NULL && compute_with_rows (figures, 0, &sheet) ? sheet.rows : 0;
}

guint
tr_sheet_list_by_rows (const TrDoughFigures *figures,
                       TrAlternative         alternatives[TR_MAX_ALTERNATIVES])
{
  guint n = 0;

  if (figures->dough->cut == NULL)
    return 0;

  for (int rows = 1; rows <= TR_MAX_ALTERNATIVES; rows++)
    {
      TrSheet sheet;

      if (compute_with_rows (figures, rows, &sheet))
        alternatives[n++] = (TrAlternative) {
          .rows = sheet.rows,
          .per_row = sheet.per_row,
          .sheets = sheet.sheets,
          .length_mm = sheet.length_mm,
          .width_mm = sheet.width_mm,
          .pieces_cut = sheet.pieces_cut,
          .scrap_percent = sheet.scrap_percent,
          .hexagonal = sheet.hexagonal,
        };
    }

  return n;
}
