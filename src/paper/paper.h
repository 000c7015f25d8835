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
#include "../calc/tasting.h"
#include "../picture/picture.h"
#include "../words/words.h"

G_BEGIN_DECLS

typedef enum { TR_PAPER_A4, TR_PAPER_LETTER } TrPaperSize;

void       tr_paper_get_size     (TrPaperSize size, double *width_pt, double *height_pt);

/* The pages of one paper: pictures of the paper's size, and what it is a paper
 * of. Immutable once made. */
typedef struct _TrPages TrPages;
/* For those who make papers: takes both. (element-type TrPicture), owned by the array */
TrPages   *tr_pages_new_take     (GPtrArray *pictures, char *title);
guint      tr_pages_count        (const TrPages *pages);
const char *tr_pages_get_title   (const TrPages *pages);
void       tr_pages_draw         (const TrPages *pages, guint page, cairo_t *cr);
const TrPicture *tr_pages_get    (const TrPages *pages, guint page);
void       tr_pages_free         (TrPages *pages);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TrPages, tr_pages_free)

/* Bench cards: those of the doughs whose indices are given (NULL: all, in
 * order). The title is the dough's name, or the trial's. */
TrPages   *tr_cards_new          (const TrFigures *figures, const guint *doughs, guint n_doughs,
                                  const TrReader *reader, TrPaperSize size);

/* What can be compared of those doughs (NULL: all), side by side. */
TrPages   *tr_comparison_new     (const TrFigures *figures, const guint *doughs, guint n_doughs,
                                  const TrReader *reader, TrPaperSize size);

/* Papers of a blind tasting: a score sheet a taster (no tasters: one without a
 * name), labels with the codes, the key that no taster sees, the result. */
TrPages   *tr_score_sheets_new   (const TrFigures *figures, const TrReader *reader, TrPaperSize size);
TrPages   *tr_code_labels_new    (const TrFigures *figures, const TrReader *reader, TrPaperSize size);
TrPages   *tr_tasting_key_new    (const TrFigures *figures, const TrReader *reader, TrPaperSize size);
TrPages   *tr_result_paper_new   (const TrFigures *figures, const TrTastingFigures *tasting, const TrReader *reader,
                                  TrPaperSize size);

/* By the extension of `path`: .pdf (all pages), .png (150 dpi) or .svg
 * (further pages as X-2.png, …). Same input, same bytes. Written to temporary
 * files first: on an error nothing is left behind and nothing was replaced. */
gboolean   tr_pages_export       (const TrPages *pages, const char *path, GError **error);
/* Likewise one picture that was made for paper, in points. */
gboolean   tr_picture_export     (const TrPicture *picture, const char *title, const char *path, GError **error);

G_END_DECLS
