/* shapes.h: how a picture is made
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For those who make pictures (this room and paper/); those who only show
 * them need picture.h. A picture is a list of shapes in the order they are
 * drawn; what is added last lies on top and is hit first. A picture that has
 * been handed to anybody else is never added to again.
 *
 * Lengths are in the picture's units: points on paper, logical pixels on
 * screen. Where the look has pixels, level and upright edges are put on them.
 */

#pragma once

#include "picture.h"

G_BEGIN_DECLS

typedef struct { double x, y, width, height; } TrBox;

/* Widths go with the size of the text. */
typedef enum { TR_PEN_NONE, TR_PEN_HAIR, TR_PEN_INNER, TR_PEN_OUTLINE, TR_PEN_HEAVY } TrPen;

TrPicture    *tr_picture_new             (const TrLook *look, const TrReader *reader, double width, double height);
const TrLook *tr_picture_get_look        (const TrPicture *picture);
void          tr_picture_set_height      (TrPicture *picture, double height);
/* What is seen of a block of this dough: fat when it was locked in inverse. */
const TrColour *tr_look_get_outside      (const TrLook *look, const TrDough *dough);

/* `fill` NULL: not filled. `stroke` NULL: the look's line. */
void          tr_picture_add_rect        (TrPicture *picture, const TrBox *box, const TrColour *fill, TrPen pen, const TrColour *stroke);
void          tr_picture_add_polygon     (TrPicture *picture, const double *xy, guint n_corners, const TrColour *fill, TrPen pen, const TrColour *stroke);
void          tr_picture_add_circle      (TrPicture *picture, double x, double y, double radius, const TrColour *fill, TrPen pen, const TrColour *stroke);
void          tr_picture_add_line        (TrPicture *picture, double x1, double y1, double x2, double y2, TrPen pen, const TrColour *stroke);
/* 45° lines, inside the box only. */
void          tr_picture_add_hatch       (TrPicture *picture, const TrBox *box, double spacing, const TrColour *stroke);
/* The last shape's stroke becomes dashes. */
void          tr_picture_dash            (TrPicture *picture);
/* A line with a filled head at (x2, y2); both ends with `both`. */
void          tr_picture_add_arrow       (TrPicture *picture, double x1, double y1, double x2, double y2, gboolean both, const TrColour *colour);
/* A triangle with an exclamation mark, `size` high, its foot on the baseline. Returns its width. */
double        tr_picture_add_warning     (TrPicture *picture, double x, double baseline, double size);

/* Text. Returns the width. Upward text reads from below; (x, baseline) is
 * where the aligned point of its baseline lies. */
double        tr_picture_add_text        (TrPicture *picture, const char *text, double size, int weight, const TrColour *colour, double x, double baseline, double align);
/* The same made smaller, to 0.6 of the size, and then cut, to fit into `room`. */
double        tr_picture_add_fitting_text (TrPicture *picture, const char *text, double size, int weight, const TrColour *colour, double x, double baseline, double align, double room);
double        tr_picture_add_upward_text (TrPicture *picture, const char *text, double size, int weight, const TrColour *colour, double x, double baseline, double align);

/* A draughtsman's dimension: extension lines from the object, 45° ticks, the
 * text over the line (or, where that is narrower than the text, on `paper`
 * beside it). The object's edge lies at `edge`, the dimension line at `line`. */
void          tr_picture_add_dimension_h (TrPicture *picture, double x1, double x2, double edge, double line, const char *text);
void          tr_picture_add_dimension_v (TrPicture *picture, double y1, double y2, double edge, double line, const char *text);

/* Moves texts that reach over an edge of the picture back into it. */
void          tr_picture_tuck_in         (TrPicture *picture);

/* Turns it over, left to right, for those who read from the right; text stays
 * readable. Not for pictures with bands. */
void          tr_picture_mirror          (TrPicture *picture);

/* Bands of a stack: `edges` are shares of the whole from the top, 0 to 1, one
 * more than there are bands; of them the part `from` to `to` fills the box.
 * Bands alternate. The array is shared, not copied. */
typedef struct {
  GArray *edges;                 /* double */
  gboolean first_is_fat;
} TrBands;
void          tr_picture_add_bands       (TrPicture *picture, const TrBox *box, const TrBands *bands, double from, double to, TrPicturePart part, double thickness_um);

/* What the shape added last is. `label` NULL: nothing to say. */
void          tr_picture_set_hit         (TrPicture *picture, TrPicturePart part, int index, const char *label);
/* Appends to the description. */
void          tr_picture_describe        (TrPicture *picture, const char *format, ...) G_GNUC_PRINTF (2, 3);

/* Puts the shapes of another picture on this one. */
void          tr_picture_place           (TrPicture *page, const TrPicture *part, double x, double y);

/* Where something lies: the corners of its outline, x then y, in the order in
 * which they were added; bands as the two corners of their box, circles as
 * their centre. Borrowed; NULL: not drawn. */
const double *tr_picture_get_outline     (const TrPicture *picture, const TrHit *hit, guint *n_corners);
/* The box of one band, or of whatever else the hit names. */
gboolean      tr_picture_get_box         (const TrPicture *picture, const TrHit *hit, TrBox *box);

/* What was written: the texts and the boxes they cover. */
guint         tr_picture_count_texts     (const TrPicture *picture);
const char   *tr_picture_get_text        (const TrPicture *picture, guint index, TrBox *box);
/* The box that holds every shape (texts as above). */
void          tr_picture_get_extents     (const TrPicture *picture, TrBox *box);

/* Text that is longer than its place (both transfer full). */
char        **tr_text_wrap               (const TrLook *look, const char *text, double size, int weight, double width, guint max_lines);
char         *tr_text_shorten            (const TrLook *look, const char *text, double size, int weight, double width);
/* Height of a capital and of what hangs under the baseline, as parts of the size. */
#define TR_TEXT_ASCENT 0.74
#define TR_TEXT_DESCENT 0.22

G_END_DECLS
