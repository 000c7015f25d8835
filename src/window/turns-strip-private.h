/* turns-strip-private.h: what the two files of the strip share
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * turns-strip.c shows, selects and takes the keys; turns-strip-pointer.c says
 * what is grabbed, dragged and pressed.
 */

#pragma once

#include "turns-strip.h"

#include "../picture/sequence.h"
#include "turn-edits.h"

G_BEGIN_DECLS

typedef enum { TR_DRAG_NOTHING, TR_DRAG_EDGE, TR_DRAG_TURN } TrTurnsDrag;

struct _TrTurnsStrip
{
  GtkWidget parent_instance;

  /* Children */
  GtkWidget *view;

  /* What is selected and what is dragged */
  TrHit selected;
  TrTurnsDrag drag;
  TrTurnRoll roll;
  TrSequencePlan held;
  double start_x;
  int dough;                     /* whose edge or turn it is */
  guint turn;
  int drop_at;
  int frames_to_scroll;          /* until what is selected is scrolled to; 0: it is */
};

TrPage               *tr_turns_strip_get_page    (TrTurnsStrip         *self);
const TrDoughFigures *tr_turns_strip_get_figures (TrTurnsStrip         *self);   /* NULL: none */
gboolean              tr_turns_strip_is_mirrored (TrTurnsStrip         *self);
/* Makes the picture anew from what is selected and dragged. */
void                  tr_turns_strip_show        (TrTurnsStrip         *self);
/* FALSE: there is nothing to lay out yet. */
gboolean              tr_turns_strip_find_plan   (TrTurnsStrip         *self,
                                                  double                width,
                                                  TrSequencePlan       *plan);
/* In their order: 0 the lock-in, then the turns, then the sheet. */
TrHit                 tr_turns_strip_element_at  (int                   place,
                                                  const TrDoughFigures *figures);
void                  tr_turns_strip_activate    (TrTurnsStrip         *self);
void                  tr_turns_strip_add_pointer (TrTurnsStrip         *self);

G_END_DECLS
