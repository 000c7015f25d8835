/* picture-view.h: shows a picture of a dough's figures
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * An image with a name and a description that says the same in words. What is
 * under the pointer is said by its tooltip. The picture is made anew when the
 * figures, the reader, the size or the look (dark, contrast, text size) change.
 */

#pragma once

#include <gtk/gtk.h>

#include "../picture/picture.h"

G_BEGIN_DECLS

typedef TrPicture *(*TrPictureMaker) (const TrDoughFigures *figures,
                                      guint                 item,
                                      const TrReader       *reader,
                                      const TrLook         *look,
                                      double                width,
                                      double                height);

#define TR_TYPE_PICTURE_VIEW (tr_picture_view_get_type ())
G_DECLARE_FINAL_TYPE (TrPictureView, tr_picture_view, TR, PICTURE_VIEW, GtkWidget)

/* `lines`: how high, in lines of text, so that it grows with the text. */
GtkWidget *tr_picture_view_new         (const char           *name,
                                        TrPictureMaker        make,
                                        double                lines);
/* NULL figures: nothing to show, the view is hidden. */
void       tr_picture_view_set_figures (TrPictureView        *self,
                                        const TrDoughFigures *figures,
                                        guint                 item,
                                        const TrReader       *reader);
void       tr_picture_view_set_name    (TrPictureView        *self,
                                        const char           *name);
/* The picture as it stands; NULL: none yet. Borrowed. */
TrPicture *tr_picture_view_get_picture (TrPictureView        *self);

/* Makers for the pictures there are. */
TrPicture *tr_make_layers_picture  (const TrDoughFigures *figures, guint item, const TrReader *reader, const TrLook *look, double width, double height);
TrPicture *tr_make_lock_in_picture (const TrDoughFigures *figures, guint item, const TrReader *reader, const TrLook *look, double width, double height);
TrPicture *tr_make_turn_picture    (const TrDoughFigures *figures, guint item, const TrReader *reader, const TrLook *look, double width, double height);
TrPicture *tr_make_sheet_picture   (const TrDoughFigures *figures, guint item, const TrReader *reader, const TrLook *look, double width, double height);

G_END_DECLS
