/* view-fixture.h: a view of a picture with one part, in a window of its own
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A part that can be grabbed, an entry and a long page around them. What the
 * view emits is written down.
 */

#pragma once

#include "hand.h"
#include "picture/shapes.h"
#include "window/picture-view.h"

G_BEGIN_DECLS

/* By hand, and drawn: a motion is seen by the frame. */
#define drive(widget, ...) \
  G_STMT_START { \
    hand_do (__VA_ARGS__, NULL); \
    ui_frames ((widget), 2); \
  } G_STMT_END

#define press(widget, button) \
  G_STMT_START { \
    hand_press_button ((widget), (button)); \
    ui_frames ((widget), 2); \
  } G_STMT_END

#define PART_X 100
#define PART_Y 60
#define PART_SIZE 80
#define IN_PART (PART_X + PART_SIZE / 2), (PART_Y + PART_SIZE / 2)

typedef struct
{
  GtkWindow *window;
  GtkWidget *scroller;
  TrPictureView *view;
  GtkWidget *entry;
  GString *log;                  /* what was emitted */
  TrHit hit;
  double x, y;
  guint n_made;
  gboolean makes_again, hides, removes, refuses, is_destroyed;
} ViewFixture;

void view_move_to    (GtkWidget     *widget,
                      double         x,
                      double         y);
void view_set_up     (ViewFixture   *fixture,
                      gconstpointer  data);
void view_tear_down  (ViewFixture   *fixture,
                      gconstpointer  data);
/* Exactly this has been emitted since it was last asked. */
void view_assert_log (ViewFixture   *fixture,
                      const char    *expected);

G_END_DECLS
