/* paper.h: pages of pictures and tables
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A page is drawn in PostScript points on any cairo context, so that a
 * printer, PDF, PNG and SVG show the same.
 */

#pragma once

#include <cairo.h>
#include <gio/gio.h>

#include "../calc/figures.h"
#include "../picture/picture.h"
#include "../words/words.h"

G_BEGIN_DECLS

typedef enum { TR_PAPER_A4, TR_PAPER_LETTER } TrPaperSize;

void       tr_paper_get_size     (TrPaperSize size, double *width_pt, double *height_pt);

/* Bench cards: those of the doughs whose indices are given (NULL: all, in
 * order). Immutable once made. */
typedef struct _TrCards TrCards;
TrCards   *tr_cards_new          (const TrFigures *figures, const guint *doughs, guint n_doughs,
                                  const TrReader *reader, TrPaperSize size);
guint      tr_cards_count_pages  (const TrCards *cards);
/* What they are cards of: the dough's name, or the trial's title. */
const char *tr_cards_get_title   (const TrCards *cards);
void       tr_cards_draw_page    (const TrCards *cards, guint page, cairo_t *cr);
/* A page as a picture, of the size of the paper. */
const TrPicture *tr_cards_get_page (const TrCards *cards, guint page);
void       tr_cards_free         (TrCards *cards);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TrCards, tr_cards_free)

/* By the extension of `path`: .pdf (all pages), .png (150 dpi) or .svg
 * (further pages as X-2.png, …). Same input, same bytes. Written to temporary
 * files first: on an error nothing is left behind and nothing was replaced. */
gboolean   tr_cards_export       (const TrCards *cards, const char *path, GError **error);
/* Likewise one picture that was made for paper, in points. */
gboolean   tr_picture_export     (const TrPicture *picture, const char *title, const char *path, GError **error);

G_END_DECLS
