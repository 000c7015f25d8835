/* picture-view-private.h: what the files of the picture view share
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * picture-view.c makes and draws the picture, picture-pointer.c hovers, presses
 * and grabs, picture-zoom.c zooms, picture-menu.c copies and saves.
 */

#pragma once

#include "picture-view.h"

G_BEGIN_DECLS

struct _TrPictureView
{
  GtkWidget parent_instance;

  /* Owned */
  TrDoughFigures *figures;       /* one of these two, or neither */
  gpointer data;
  GDestroyNotify free_data;
  TrPicture *picture;
  char *name;
  GtkWidget *menu;               /* NULL: never opened */
  GMenuModel *more_menu;         /* the page's own; NULL: none */

  /* Borrowed References */
  GtkGesture *drag;
  GtkEventController *keys_of_root;     /* while hovered or dragging */
  GtkWidget *root;               /* that those keys are listened to on */

  /* What is shown */
  TrPictureMaker make;
  TrPictureMaking make_for;
  TrReader reader;
  guint item;
  double lines;
  double made_width, made_height;

  /* Part of it, when zoomed: where the widget's corner lies in the picture */
  double zoom;
  double scroll_x, scroll_y;
  double zoom_at_pinch;

  /* Pointer, in the widget */
  double pointer_x, pointer_y;
  double press_x, press_y;
  double scroll_x_at_press, scroll_y_at_press;
  TrHit hover, selected;
  int n_press;
  char *cursor;                  /* that the page named for what it was asked about */
  guint has_pointer : 1;
  guint zoomable : 1;
  guint has_selected : 1;
  guint is_pressed : 1;
  guint is_grabbed : 1;
  guint has_moved : 1;           /* far enough to be a drag */
};

enum { TR_PICTURE_GRAB, TR_PICTURE_DRAGGED, TR_PICTURE_DROPPED, TR_PICTURE_PRESSED, TR_PICTURE_HOVERED, TR_PICTURE_N_SIGNALS };
extern guint tr_picture_view_signals[TR_PICTURE_N_SIGNALS];

/* picture-view.c */
/* With that look; NULL: nothing to show. (transfer full) */
TrPicture *tr_picture_view_make            (TrPictureView *self, const TrLook *look, double width, double height);
double     tr_picture_view_get_text_size   (TrPictureView *self);
/* Back to where it shows only the picture. */
void       tr_picture_view_clamp_scroll    (TrPictureView *self);

/* picture-pointer.c */
void       tr_picture_view_add_controllers (TrPictureView *self);
/* The pointer and whatever it holds are gone. */
void       tr_picture_view_lose_pointer    (TrPictureView *self);

/* picture-zoom.c */
void       tr_picture_view_class_install_zoom   (GtkWidgetClass *widget_class);
void       tr_picture_view_add_zoom_controllers (TrPictureView *self);
void       tr_picture_view_update_zoom_actions  (TrPictureView *self);
/* Which part of the whole is seen, where it is not all of it. */
void       tr_picture_view_append_bars          (TrPictureView *self, GtkSnapshot *snapshot);
void       tr_picture_view_scroll_by            (TrPictureView *self, double dx, double dy);
/* TRUE: it was one. */
gboolean   tr_picture_view_use_zoom_key         (TrPictureView *self, guint key, GdkModifierType modifiers);
gboolean   tr_picture_view_use_pan_key          (TrPictureView *self, guint key);

/* picture-menu.c */
void       tr_picture_view_class_install_menu (GtkWidgetClass *widget_class);
void       tr_picture_view_popup_menu      (TrPictureView *self, double x, double y);
void       tr_picture_view_popup_menu_at_selected (TrPictureView *self);

G_END_DECLS
