/* picture-view.h: shows a picture, lets its parts be grabbed, zoomed and copied
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * An image with a name and a description that says the same in words. What is
 * under the pointer is said by its tooltip. The picture is made anew when what
 * it shows, the reader, the size, the zoom or the look (dark, contrast, text
 * size) change; it may be made anew, hidden or destroyed while a part of it is
 * dragged. It knows nothing of doughs: what a part means is its page's business.
 *
 * Signals. Coordinates are the picture's units, zoom and scrolling taken away.
 *
 *   gboolean grab    (view, const TrHit *hit, double x, double y, gboolean is_press)
 *     May what lies there be dragged? Asked while the pointer hovers and when it
 *     is pressed. While answering, tr_picture_view_set_cursor may name a cursor
 *     of the page's own ("ew-resize"); without it the hand is shown.
 *   void     dragged (view, double x, double y)
 *     Where the pointer is now. Never before it has gone a few pixels, so that a
 *     click moves nothing.
 *   void     dropped (view, gboolean is_cancelled)
 *     Once for each grab that was answered TRUE to a press, dragged or not:
 *     released; or cancelled by Escape, by a click that moved nothing, or because
 *     the view went away.
 *   void     pressed (view, const TrHit *hit, int n_press)
 *     A click that was no drag, also beside every part; or Return or space while
 *     a part is selected. After "dropped".
 *   void     hovered (view, const TrHit *hit)
 *     The part under the pointer is another one now; not during a drag.
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

/* A picture that is not of one dough's figures alone. */
typedef TrPicture *(*TrPictureMaking) (gpointer              data,
                                       guint                 item,
                                       const TrReader       *reader,
                                       const TrLook         *look,
                                       double                width,
                                       double                height);

#define TR_TYPE_PICTURE_VIEW (tr_picture_view_get_type ())
G_DECLARE_FINAL_TYPE (TrPictureView, tr_picture_view, TR, PICTURE_VIEW, GtkWidget)

/* `lines`: how high, in lines of text, so that it grows with the text. */
GtkWidget  *tr_picture_view_new             (const char           *name,
                                             TrPictureMaker        make,
                                             double                lines);
/* NULL figures: nothing to show, the view is hidden. */
void        tr_picture_view_set_figures     (TrPictureView        *self,
                                             const TrDoughFigures *figures,
                                             guint                 item,
                                             const TrReader       *reader);
GtkWidget  *tr_picture_view_new_for         (const char           *name,
                                             TrPictureMaking       make,
                                             double                lines);
/* Takes `data`; always makes the picture anew. NULL data: hidden. */
void        tr_picture_view_set_data        (TrPictureView        *self,
                                             gpointer              data,
                                             GDestroyNotify        free_data,
                                             guint                 item,
                                             const TrReader       *reader);
/* What the data says has changed. */
void        tr_picture_view_make_again      (TrPictureView        *self);
/* Another height, in lines of text. */
void        tr_picture_view_set_lines       (TrPictureView        *self,
                                             double                lines);
void        tr_picture_view_set_name        (TrPictureView        *self,
                                             const char           *name);
/* The picture as it stands; NULL: none yet. Borrowed. */
TrPicture  *tr_picture_view_get_picture     (TrPictureView        *self);

/* Pointer. */
gboolean    tr_picture_view_get_hover       (TrPictureView        *self,
                                             TrHit                *hit);     /* FALSE: nothing there */
/* While "grab" is answered, else without effect. */
void        tr_picture_view_set_cursor      (TrPictureView        *self,
                                             const char           *cursor);
gboolean    tr_picture_view_is_dragging     (TrPictureView        *self);
void        tr_picture_view_cancel_drag     (TrPictureView        *self);

/* Keyboard. Focusable, so that the menu is within reach; a page adds a
 * key controller of its own for more. */
/* The part that keys act on: outlined while the view has the focus, and said
 * first in the description. NULL: none. */
void        tr_picture_view_set_selected    (TrPictureView        *self,
                                             const TrHit          *hit);
gboolean    tr_picture_view_get_selected    (TrPictureView        *self,
                                             TrHit                *hit);
/* Where a part lies in the widget now, for popovers. FALSE: it is not drawn. */
gboolean    tr_picture_view_get_part_bounds (TrPictureView        *self,
                                             const TrHit          *hit,
                                             graphene_rect_t      *bounds);

/* Zoom by Ctrl and the wheel, by pinching, by + − 0, by the menu. The drawing
 * grows, its text does not; what is free is dragged to see the rest. */
void        tr_picture_view_set_zoomable    (TrPictureView        *self,
                                             gboolean              zoomable);
double      tr_picture_view_get_zoom        (TrPictureView        *self);    /* 1: the whole picture */
/* Around a point of the widget. */
void        tr_picture_view_zoom            (TrPictureView        *self,
                                             double                zoom,
                                             double                x,
                                             double                y);

/* What the page's own part of the menu is; it stands first. */
void        tr_picture_view_set_menu        (TrPictureView        *self,
                                             GMenuModel           *menu);
/* As it goes to a document: the whole picture, in the light look on white. */
void        tr_picture_view_copy            (TrPictureView        *self);
void        tr_picture_view_save            (TrPictureView        *self);
/* The one that has the focus, else the one the pointer was on last. NULL: none. */
TrPictureView *
            tr_picture_view_find            (GtkRoot              *root);

/* Colours, contrast and text size as they are for this widget, for whoever draws without a view. */
void        tr_widget_init_look             (GtkWidget            *widget,
                                             TrLook               *look);

/* Makers for the pictures there are. */
TrPicture *tr_make_lock_in_picture (const TrDoughFigures *figures, guint item, const TrReader *reader, const TrLook *look, double width, double height);
TrPicture *tr_make_turn_picture    (const TrDoughFigures *figures, guint item, const TrReader *reader, const TrLook *look, double width, double height);

G_END_DECLS
