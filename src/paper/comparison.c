/* comparison.c: the figures of several doughs side by side, on pages
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   ┌──────────────────────────────┐
 *   │ title               A  B  C  │ head: letters and names
 *   ├──────────────────────────────┤
 *   │ On flour                     │ a group
 *   │ Salt            %  ─┃─ 1.9 … │ a row: a figure of every dough
 *   ├──────────────────────────────┤
 *   │ how to read it, prediction   │ foot
 *   └──────────────────────────────┘
 *
 * The rows of a page are all there are, at a size at which they fit; further
 * doughs go on further pages. All pages share the rows' scales.
 */

#include "config.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "../picture/cell-scale.h"
#include "../words/comparison.h"
#include "card.h"

#define MARGIN_PT 34.0
#define MOST_DOUGHS 6
#define LARGEST_EM 9.0
#define ROW_EM 1.5
#define GROUP_EM 2.1
#define SPREAD_EM 4.2
#define NAMES_SHARE 0.29
/* However few there are, a column is not wider than this. */
#define WIDEST_COLUMN_EM 14.0
#define MOST_NAME_LINES 3
#define NAME_EM 0.92
#define COLUMN_GAP_EM 0.8
#define FOOT_EM 7.4

typedef struct {
  const TrFigures *figures;
  const TrReader *reader;
  TrLook look;
  const guint *doughs;           /* all of them */
  guint n_doughs;
  guint first, n;                /* those of this page */
  guint n_rows, n_groups;        /* that are shown */
  double em, page_width, page_height, width;
  double names_width, column_width, spread_width;
  guint name_lines;              /* of the longest name */
} Sheet;

static gboolean
is_shown (const Sheet        *sheet,
          const TrComparable *comparable)
{
  TrSpread spread;

  tr_comparable_get_spread (comparable, sheet->figures, sheet->doughs, sheet->n_doughs, &spread);

  return spread.n_known > 0;
}

static void
count_rows (Sheet *sheet)
{
  guint n;
  const TrComparable *comparables = tr_comparables_get_all (&n);
  int group = -1;

  for (guint i = 0; i < n; i++)
    {
      if (!is_shown (sheet, &comparables[i]))
        continue;
      sheet->n_rows++;
      if ((int) comparables[i].group != group)
        sheet->n_groups++;
      group = (int) comparables[i].group;
    }
}

static guint
count_name_lines (const Sheet *sheet)
{
  guint most = 1;

  for (guint i = 0; i < sheet->n_doughs; i++)
    {
      g_autofree char *name = tr_words_one_line (tr_figures_get_dough (sheet->figures, sheet->doughs[i])->dough->name);
      g_auto (GStrv) lines = tr_text_wrap (&sheet->look, name, NAME_EM * sheet->em, 700,
                                           sheet->column_width - COLUMN_GAP_EM * sheet->em, MOST_NAME_LINES);

      most = MAX (most, g_strv_length (lines));
    }

  return most;
}

static guint
count_pages (const Sheet *sheet)
{
  return (sheet->n_doughs + MOST_DOUGHS - 1) / MOST_DOUGHS;
}

/* The size of the text at which everything stands on one page. */
static void
lay_out (Sheet *sheet)
{
  double lines = ROW_EM * sheet->n_rows + GROUP_EM * sheet->n_groups;
  double head = 2.9 * 1.3 + (2.2 + MOST_NAME_LINES * 1.15), em;
  guint n_pages = count_pages (sheet), n_columns = n_pages > 0 ? (sheet->n_doughs + n_pages - 1) / n_pages : 1;

  em = fmin (LARGEST_EM, (sheet->page_height - 2 * MARGIN_PT) / (lines + head + FOOT_EM));
  sheet->em = em;
  sheet->look.text_size = em;
  sheet->width = sheet->page_width - 2 * MARGIN_PT;
  sheet->names_width = NAMES_SHARE * sheet->width;
  sheet->spread_width = SPREAD_EM * em;
  sheet->column_width = fmin (WIDEST_COLUMN_EM * em, (sheet->width - sheet->names_width - sheet->spread_width) / n_columns);
  sheet->name_lines = count_name_lines (sheet);
}

static double
column_x (const Sheet *sheet,
          guint        column)
{
  return sheet->names_width + column * sheet->column_width;
}

static const TrDoughFigures *
get_dough (const Sheet *sheet,
           guint        column)
{
  return tr_figures_get_dough (sheet->figures, sheet->doughs[sheet->first + column]);
}

/* Returns where the rows begin. */
static double
add_head (const Sheet *sheet,
          TrPicture   *page)
{
  double em = sheet->em, y = 2.0 * em, gap = COLUMN_GAP_EM * em;
  g_autofree char *title = tr_words_one_line (sheet->figures->trial->title != NULL ? sheet->figures->trial->title : "");

  tr_card_add_fitting (page, _("Doughs compared"), 2.0 * em, 700, &sheet->look.text, 0, sheet->width, y);
  tr_card_add_fitting (page, title, 1.2 * em, 400, &sheet->look.dim, 0, sheet->width, y + 1.7 * em);
  y += 4.2 * em;
  for (guint i = 0; i < sheet->n; i++)
    {
      g_autofree char *letter = tr_words_letter (sheet->doughs[sheet->first + i]);
      g_autofree char *name = tr_words_one_line (get_dough (sheet, i)->dough->name);

      tr_picture_add_text (page, letter, 1.6 * em, 700, &sheet->look.accent, column_x (sheet, i) + gap, y, 0);
      tr_card_add_paragraph (page, name, NAME_EM * em, 700, &sheet->look.text, column_x (sheet, i) + gap,
                             sheet->column_width - gap, y + 1.25 * em, MOST_NAME_LINES);
    }
  tr_picture_add_text (page, _("spread"), 0.85 * em, 400, &sheet->look.dim,
                       column_x (sheet, sheet->n) + sheet->spread_width, y + 1.25 * em, 1);
  y += (1.0 + sheet->name_lines * 1.18) * em;
  tr_card_add_rule (page, y, sheet->width, TRUE);

  return y + 0.2 * em;
}

static gboolean
is_unusual (double        value,
            const TrBand *band)
{
  return band != NULL && isfinite (value) && (value < band->low || value > band->high);
}

static void
add_cell (const Sheet        *sheet,
          TrPicture          *page,
          const TrComparable *comparable,
          const TrCellScale  *scale,
          guint               column,
          double              baseline,
          gboolean            is_equal)
{
  const TrDoughFigures *dough = get_dough (sheet, column);
  double em = sheet->em, value = tr_comparable_get (comparable, dough), number_width = fmin (4.6 * em, 0.6 * sheet->column_width);
  double x = column_x (sheet, column) + COLUMN_GAP_EM * em, right = column_x (sheet, column + 1) - 0.2 * em;
  g_autofree char *number = tr_words_comparable_number (sheet->reader, comparable, value);
  gboolean has_band;
  TrBand band;

  has_band = tr_comparable_get_band (comparable, dough, &band);
  tr_picture_add_cell_scale (page, &(TrBox) { x, baseline - 0.86 * em, right - x - number_width, 1.1 * em }, scale, value,
                             has_band ? &band : NULL, NAN);
  tr_picture_add_text (page, number, em, is_unusual (value, has_band ? &band : NULL) ? 700 : 400,
                       is_equal || !isfinite (value) ? &sheet->look.dim : &sheet->look.text, right, baseline, 1);
}

static void
add_row (const Sheet        *sheet,
         TrPicture          *page,
         const TrComparable *comparable,
         double              baseline)
{
  double em = sheet->em;
  const char *unit = tr_words_comparable_unit (sheet->reader, comparable, sheet->figures->trial->bench);
  double unit_width = tr_text_width (&sheet->look, unit, 0.85 * em, 400);
  g_autofree char *spread_text = NULL;
  TrCellScale scale;
  TrSpread spread;

  tr_comparable_get_spread (comparable, sheet->figures, sheet->doughs, sheet->n_doughs, &spread);
  tr_cell_scale_init (&scale, comparable, sheet->figures, sheet->doughs, sheet->n_doughs);
  tr_card_add_fitting (page, tr_words_comparable (comparable), em, 400, &sheet->look.text, 0,
                       sheet->names_width - unit_width - 0.6 * em, baseline);
  tr_picture_add_text (page, unit, 0.85 * em, 400, &sheet->look.dim, sheet->names_width - 0.1 * em, baseline, 1);
  for (guint i = 0; i < sheet->n; i++)
    add_cell (sheet, page, comparable, &scale, i, baseline, spread.is_equal);

  if (!isfinite (spread.relative))
    return;
  spread_text = spread.is_equal ? g_strdup ("=") : tr_card_dup_percent (sheet->reader, round (100 * spread.relative));
  tr_picture_add_text (page, spread_text, 0.85 * em, 400, &sheet->look.dim, column_x (sheet, sheet->n) + sheet->spread_width, baseline, 1);
}

/* Returns where they end. */
static double
add_rows (const Sheet *sheet,
          TrPicture   *page,
          double       y)
{
  double em = sheet->em, right = column_x (sheet, sheet->n) + sheet->spread_width;
  guint n;
  const TrComparable *comparables = tr_comparables_get_all (&n);
  int group = -1;

  for (guint i = 0; i < n; i++)
    {
      if (!is_shown (sheet, &comparables[i]))
        continue;
      if ((int) comparables[i].group != group)
        {
          group = (int) comparables[i].group;
          y += GROUP_EM * em;
          tr_picture_add_text (page, tr_words_figure_group (comparables[i].group), 1.1 * em, 700, &sheet->look.text, 0, y - 0.45 * em, 0);
        }
      tr_picture_add_line (page, 0, y, right, y, TR_PEN_HAIR, &sheet->look.dim);
      y += ROW_EM * em;
      add_row (sheet, page, &comparables[i], y - 0.42 * em);
    }

  return y;
}

/* NULL: nothing is predicted. */
static char *
dup_prediction (const Sheet *sheet)
{
  const TrPrediction *prediction = sheet->figures->trial->prediction;
  const TrComparable *by = prediction != NULL ? tr_comparable_find (prediction->by) : NULL;
  g_autofree char *figure = by != NULL ? tr_words_comparable_in_full (by) : NULL;
  g_autoptr (GString) order = g_string_new (NULL);

  for (guint i = 0; prediction != NULL && prediction->order != NULL && prediction->order[i] != NULL; i++)
    {
      int index = tr_trial_find_dough (sheet->figures->trial, prediction->order[i]);
      g_autofree char *letter = index >= 0 ? tr_words_letter ((guint) index) : NULL;

      if (letter != NULL)
        g_string_append_printf (order, "%s%s", order->len > 0 ? ", " : "", letter);
    }
  if (order->len == 0)
    return NULL;

  return figure != NULL ? g_strdup_printf (_("Predicted, the best first: %s. By: %s."), order->str, figure)
                        : g_strdup_printf (_("Predicted, the best first: %s."), order->str);
}

static void
add_foot (const Sheet *sheet,
          TrPicture   *page,
          double       y,
          guint        index,
          guint        n_pages)
{
  double em = sheet->em, bottom = sheet->page_height - 2 * MARGIN_PT;
  g_autofree char *prediction = dup_prediction (sheet);
  g_autofree char *which = g_strdup_printf (_("Page %u of %u"), index + 1, n_pages);

  tr_card_add_rule (page, y + 0.5 * em, sheet->width, TRUE);
  y = tr_card_add_paragraph (page, _("A tick stands on the scale of its row, which all doughs share; shaded is what is usual for its kind of dough. "
                                     "Bold: outside of that. Grey: the same in all. Spread: from the least to the most, of their mean. "
                                     "Times are those written, rests at their shortest."),
                             0.9 * em, 400, &sheet->look.dim, 0, sheet->width, y + 1.9 * em, 3);
  if (prediction != NULL)
    tr_card_add_fitting (page, prediction, em, 700, &sheet->look.text, 0, sheet->width, y + 0.4 * em);
  tr_picture_add_text (page, which, 0.9 * em, 400, &sheet->look.dim, sheet->width, bottom, 1);
}

static TrPicture *
new_page (const Sheet *sheet,
          guint        index,
          guint        n_pages)
{
  TrPicture *page = tr_picture_new (&sheet->look, sheet->reader, sheet->page_width, sheet->page_height);
  g_autoptr (TrPicture) content = tr_picture_new (&sheet->look, sheet->reader, sheet->width, sheet->page_height - 2 * MARGIN_PT);
  double y = add_head (sheet, content);

  y = add_rows (sheet, content, y);
  add_foot (sheet, content, y, index, n_pages);
  tr_picture_place (page, content, MARGIN_PT, MARGIN_PT);

  return page;
}

TrPages *
tr_comparison_new (const TrFigures *figures,
                   const guint     *doughs,
                   guint            n_doughs,
                   const TrReader  *reader,
                   TrPaperSize      size)
{
  GPtrArray *pages;
  g_autofree guint *every = NULL;
  Sheet sheet = { .figures = figures, .reader = reader, .doughs = doughs, .n_doughs = n_doughs };
  guint n_pages, rest;

  g_return_val_if_fail (figures != NULL && reader != NULL, NULL);

  if (doughs == NULL)
    {
      sheet.n_doughs = figures->doughs->len;
      sheet.doughs = every = g_new (guint, sheet.n_doughs + 1);
      for (guint i = 0; i < sheet.n_doughs; i++)
        every[i] = i;
    }
  tr_look_init_paper (&sheet.look);
  tr_paper_get_size (size, &sheet.page_width, &sheet.page_height);
  count_rows (&sheet);
  lay_out (&sheet);

  /* As many on each page, so that the last is not nearly empty. */
  pages = g_ptr_array_new_with_free_func ((GDestroyNotify) tr_picture_unref);
  n_pages = count_pages (&sheet);
  for (guint i = 0; i < n_pages; i++)
    {
      rest = sheet.n_doughs - sheet.first;
      sheet.n = (rest + (n_pages - i) - 1) / (n_pages - i);
      g_ptr_array_add (pages, new_page (&sheet, i, n_pages));
      sheet.first += sheet.n;
    }

  return tr_pages_new_take (pages, g_strdup (figures->trial->title != NULL ? figures->trial->title : ""));
}
