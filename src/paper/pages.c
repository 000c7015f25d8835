/* pages.c: the pages of a paper
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "card.h"

struct _TrPages
{
  GPtrArray *pages;              /* TrPicture */
  char *title;
};

void
tr_paper_get_size (TrPaperSize  size,
                   double      *width_pt,
                   double      *height_pt)
{
  /* ISO 216 A4 and ANSI A */
  *width_pt = size == TR_PAPER_LETTER ? 612 : 210 * TR_MM_PT;
  *height_pt = size == TR_PAPER_LETTER ? 792 : 297 * TR_MM_PT;
}

TrPages *
tr_pages_new_take (GPtrArray *pictures,
                   char      *title)
{
  TrPages *pages;

  g_return_val_if_fail (pictures != NULL && title != NULL, NULL);

  pages = g_new0 (TrPages, 1);
  pages->pages = pictures;
  pages->title = title;

  return pages;
}

guint
tr_pages_count (const TrPages *pages)
{
  g_return_val_if_fail (pages != NULL, 0);

  return pages->pages->len;
}

const char *
tr_pages_get_title (const TrPages *pages)
{
  g_return_val_if_fail (pages != NULL, NULL);

  return pages->title;
}

const TrPicture *
tr_pages_get (const TrPages *pages,
              guint          page)
{
  g_return_val_if_fail (pages != NULL, NULL);
  g_return_val_if_fail (page < pages->pages->len, NULL);

  return g_ptr_array_index (pages->pages, page);
}

void
tr_pages_draw (const TrPages *pages,
               guint          page,
               cairo_t       *cr)
{
  tr_picture_draw (tr_pages_get (pages, page), cr);
}

void
tr_pages_free (TrPages *pages)
{
  if (pages == NULL)
    return;

  g_ptr_array_unref (pages->pages);
  g_free (pages->title);
  g_free (pages);
}
