/* card-total.c: the total formula, small, for whoever checks or scales it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Only where something ripens before, or it says nothing new; the weights are
 * read in their own column.
 */

#include "config.h"

#include <glib/gi18n-lib.h>

#include "../words/content.h"
#include "card.h"

#define SIZE_EM 0.95
/* So that the names keep room; text that is wider is set smaller. */
#define WIDEST_SHARE 0.72

typedef struct {
  const TrCard *card;
  const TrTextTable *table;
  double width, size;
  double *right;                 /* edges of the columns; [0] is that of the names */
} Total;

static int
get_weight (const Total *total,
            guint        row)
{
  return row + 1 == total->table->rows->len ? 700 : 400;
}

static double
column_width (const Total *total,
              guint        column)
{
  double wide = 0;

  for (guint row = 0; row < total->table->rows->len; row++)
    wide = MAX (wide, tr_text_width (&total->card->look, tr_text_table_get (total->table, row, column),
                                     total->size, get_weight (total, row)));

  return wide + 0.8 * total->card->look.text_size;
}

static void
find_right_edges (Total *total)
{
  guint n = total->table->n_columns;
  double sum = 0, shrink;

  for (guint i = 1; i < n; i++)
    sum += column_width (total, i);
  shrink = MIN (1, WIDEST_SHARE * total->width / sum);
  total->right = g_new (double, n);
  total->right[n - 1] = total->width;
  for (guint i = n - 1; i > 0; i--)
    total->right[i - 1] = total->right[i] - shrink * column_width (total, i);
}

static void
add_row (const Total *total,
         TrPicture   *picture,
         guint        row,
         double       baseline)
{
  const TrLook *look = &total->card->look;
  int weight = get_weight (total, row);
  const TrColour *colour = row == 0 ? &look->dim : &look->text;

  if (row > 0)
    tr_card_add_fitting (picture, tr_text_table_get (total->table, row, 0), total->size, weight, colour, 0, total->right[0], baseline);
  for (guint i = 1; i < total->table->n_columns; i++)
    {
      const char *text = tr_text_table_get (total->table, row, i);
      double wide = tr_text_width (look, text, total->size, weight);
      double room = total->right[i] - total->right[i - 1] - 0.2 * look->text_size;

      tr_picture_add_text (picture, text, wide > room ? total->size * room / wide : total->size, weight, colour,
                           total->right[i], baseline, 1);
    }
}

void
tr_card_add_total (GArray       *blocks,
                   const TrCard *card,
                   double        width)
{
  double em = card->look.text_size, line = 1.32 * em, y = 2.4 * em;
  g_autoptr (TrTextTable) table = NULL;
  TrPicture *picture;

  if (!(card->dough->formula.prefermented_flour_percent > 0))
    return;

  table = tr_words_total_table (card->reader, card->dough);
  picture = tr_card_add_block (blocks, card, width, y + table->rows->len * line);
  Total total = { .card = card, .table = table, .width = width, .size = SIZE_EM * em };
  find_right_edges (&total);
  tr_card_add_fitting (picture, _("Total formula"), em, 700, &card->look.dim, 0, total.right[0], y);
  for (guint row = 0; row < table->rows->len; row++, y += line)
    {
      add_row (&total, picture, row, y);
      if (row == 0 || row + 1 == table->rows->len - table->n_foot)
        tr_picture_add_line (picture, 0, y + 0.32 * em, width, y + 0.32 * em, TR_PEN_INNER, &card->look.dim);
    }
  g_free (total.right);
}
