/* card.h: what the parts of a bench card share
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A part of the card is a list of blocks. A block is a picture that goes on a
 * page whole; card.c stacks blocks into columns. The size of everything
 * follows from the size of the text in the look, so that a full card is tried
 * again a little smaller; tick boxes keep their 4 mm.
 */

#pragma once

#include "../picture/shapes.h"
#include "paper.h"

G_BEGIN_DECLS

#define TR_MM_PT (72 / 25.4)
#define TR_TICK_PT (4 * TR_MM_PT)

typedef struct {
  const TrFigures *figures;
  const TrDoughFigures *dough;
  guint index;                   /* of the dough in the trial */
  const TrReader *reader;
  gboolean has_gaps;             /* gaps, and what the rests do, are printed */
  gboolean has_effective;        /* what the dough holds wherever it hides is printed */
  TrLook look;                   /* text_size is that of explanations, em */
} TrCard;

typedef struct {
  TrPicture *picture;
  gboolean keeps_with_next;      /* a heading */
} TrCardBlock;

/* (element-type TrCardBlock) */
GArray    *tr_card_blocks_new    (void);
TrPicture *tr_card_add_block     (GArray *blocks, const TrCard *card, double width, double height);

/* card-weigh.c, card-turns.c, card-bake.c, card-foot.c: the parts. */
GArray    *tr_card_weigh_blocks  (const TrCard *card, double width);
GArray    *tr_card_turn_blocks   (const TrCard *card, double width);
/* In one block; nothing where nothing ripens before. */
void       tr_card_add_total     (GArray *blocks, const TrCard *card, double width);
TrPicture *tr_card_layers        (const TrCard *card, double width);     /* NULL: no lock-in */
GArray    *tr_card_bake_blocks   (const TrCard *card, double width);
/* One line, for under the drawing of the sheet: the log learns from it how dense the dough is. */
TrPicture *tr_card_weighed_cut   (const TrCard *card, double width);
TrPicture *tr_card_head          (const TrCard *card, double width, guint page, guint n_pages);
TrPicture *tr_card_foot          (const TrCard *card, double width);
/* One line: what page this is of. */
TrPicture *tr_card_page_line     (const TrCard *card, double width, guint page, guint n_pages);

/* card-parts.c */
void       tr_card_add_tick      (TrPicture *picture, double x, double middle);
/* A word and a line to write on, to `right`. */
void       tr_card_add_blank     (TrPicture *picture, const char *label, double x, double right, double baseline);
/* Wrapped text; returns the baseline of the line after it. */
double     tr_card_add_paragraph (TrPicture *picture, const char *text, double size, int weight, const TrColour *colour,
                                  double x, double width, double baseline, guint max_lines);
/* The same with a warning sign before it, bold and in its colour. */
double     tr_card_add_caution   (TrPicture *picture, const char *text, double size, double x, double width, double baseline, guint max_lines);
/* One line that is made smaller, to 0.7, and then cut, to fit. Returns its width. */
double     tr_card_add_fitting   (TrPicture *picture, const char *text, double size, int weight, const TrColour *colour,
                                  double x, double width, double baseline);
void       tr_card_add_rule      (TrPicture *picture, double y, double width, gboolean heavy);
void       tr_card_add_heading   (TrPicture *picture, const char *text, double baseline);
/* "45 min to 12 h", "45 min or more" */
char      *tr_card_dup_span      (const TrReader *reader, double minutes, double max_minutes);
/* "78 %", "12.5 %" */
char      *tr_card_dup_percent   (const TrReader *reader, double percent);
char      *tr_card_dup_code      (guint index);       /* "A" … "Z", "AA" … */

G_END_DECLS
