/* picture.h: drawings from figures, and the shapes that were drawn
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A picture is computed once for a size: a list of shapes in the units of
 * that size, which is both drawn and hit-tested. It keeps no pointer to
 * figures or trial.
 */

#pragma once

#include <cairo.h>

#include "../calc/figures.h"
#include "../words/words.h"

G_BEGIN_DECLS

typedef struct { double r, g, b; } TrColour;

/* Colours with a fixed meaning: only their values differ between
 * paper, light and dark. */
typedef struct {
  TrColour paper, text, dim, dough, fat, line, inner_line, worktop, accent, warning;
  char font[64];                 /* family */
  double text_size;              /* of a label, in the picture's units */
  gboolean is_dark;
  gboolean is_still;             /* for paper or a document: nothing in it is grabbed or chosen */
  double device_scale;           /* pixels a unit, for pixel alignment; 0: not pixels (PDF, SVG) */
} TrLook;

void       tr_look_init_paper   (TrLook *look);
void       tr_look_init_screen  (TrLook *look, gboolean dark, gboolean high_contrast, double text_size);
void       tr_cairo_set_colour  (cairo_t *cr, const TrColour *colour);

typedef struct _TrPicture TrPicture;

/* What a hit can be. `index` says which: a turn, a piece, a band from the top. */
typedef enum { TR_PART_OF_NOTHING, TR_PART_OF_BAND, TR_PART_OF_MAGNIFIED_BAND, TR_PART_OF_PIECE, TR_PART_OF_SHEET, TR_PART_OF_TURN,
               TR_PART_OF_LOCK_IN, TR_PART_OF_WORKTOP, TR_PART_OF_POINT, TR_PART_OF_ALTERNATIVE,
               TR_PART_OF_ROLL, TR_PART_OF_FOLD, TR_PART_OF_EDGE, TR_PART_OF_ADD, TR_PART_OF_TRAY } TrPicturePart;
typedef struct { TrPicturePart part; int index; } TrHit;

/* The stack at the end (or after n_turns), whole height and a magnified
 * window, with a scale bar, counts and µm. */
TrPicture *tr_layers_picture_new  (const TrDoughFigures *figures, const TrReader *reader, const TrLook *look, double width, double height);
/* Likewise with the magnified window elsewhere, one band outlined in both, or
 * of the folded block after some turns. */
typedef struct {
  double middle;                 /* of the window, as a share of the stack from the top; NaN: 0.5 */
  int band;                      /* from the top; -1: none */
  guint n_turns;                 /* after so many of them; 0: at the end */
} TrLayersAt;
TrPicture *tr_layers_picture_new_at (const TrDoughFigures *figures, const TrReader *reader, const TrLook *look, double width, double height, const TrLayersAt *at);
/* The bands of the whole stack, from the top; 0 where they are too many to draw. */
guint      tr_picture_count_bands (const TrPicture *picture);
/* Where one lies, as shares of the stack. FALSE: there is no such band. */
gboolean   tr_picture_get_band    (const TrPicture *picture, int index, double *from, double *to);
/* Fat on dough in plan with dimensions; for a letter which third first. */
TrPicture *tr_lock_in_picture_new (const TrDoughFigures *figures, const TrReader *reader, const TrLook *look, double width, double height);
/* The closed block cut through, to scale, and under it where the fat bends and how warm the dough is. */
TrPicture *tr_lock_in_section_picture_new (const TrDoughFigures *figures, const TrReader *reader, const TrLook *look, double width, double height);
/* One turn (0-based): start, rolled, folded on the worktop with dimensions and the direction of the next roll. */
TrPicture *tr_turn_picture_new    (const TrDoughFigures *figures, guint turn, const TrReader *reader, const TrLook *look, double width, double height);
/* From the last block to one sheet: parted, turned, rolled one way and then the other. */
TrPicture *tr_to_sheet_picture_new (const TrDoughFigures *figures, const TrReader *reader, const TrLook *look, double width, double height);
/* The cuts on the sheet, dimensioned, scrap hatched, worktop behind, marks along both edges. */
TrPicture *tr_sheet_picture_new   (const TrDoughFigures *figures, const TrReader *reader, const TrLook *look, double width, double height);

/* The raw piece cut through: windings of what is rolled up, the face of what lies flat, and its layers enlarged. */
TrPicture *tr_piece_picture_new   (const TrDoughFigures *figures, const TrReader *reader, const TrLook *look, double width, double height);
/* How warm a resting slab is over its thickness and in time; `index` in figures->rests. `is_mirrored`: time runs as
 * those read who read from the right. */
TrPicture *tr_temperature_picture_new (const TrDoughFigures *figures, guint index, gboolean is_mirrored, const TrReader *reader, const TrLook *look, double width, double height);

/* The kitchen's worktop and tray in plan, what rolls from the front. `figures` NULL: no dough. */
TrPicture *tr_bench_picture_new   (const TrBench *bench, const TrDoughFigures *figures, const TrReader *reader, const TrLook *look, double width, double height);

TrPicture *tr_picture_ref         (TrPicture *picture);
void       tr_picture_unref       (TrPicture *picture);
void       tr_picture_draw        (const TrPicture *picture, cairo_t *cr);
void       tr_picture_get_size    (const TrPicture *picture, double *width, double *height);
TrHit      tr_picture_hit         (const TrPicture *picture, double x, double y);
/* One or two sentences with the numbers of the picture, for those who cannot see it. */
const char *tr_picture_get_description (const TrPicture *picture);
/* Says what is under a hit: "Fat layer 7 of 36, 28 µm". (transfer full) */
char      *tr_picture_dup_hit_text (const TrPicture *picture, const TrHit *hit);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (TrPicture, tr_picture_unref)

/* Shared by paper and screen: pango text at a baseline. Alignment 0 left, 0.5
 * middle, 1 right. Returns the width. `weight` 400 normal, 700 bold. */
double     tr_text_draw           (cairo_t *cr, const TrLook *look, const char *text, double size, int weight,
                                   const TrColour *colour, double x, double baseline, double align);
double     tr_text_width          (const TrLook *look, const char *text, double size, int weight);

G_END_DECLS
