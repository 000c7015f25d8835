/* member.h: one value of the trial, where it stands and how it is said
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A page is mostly a table of these. A member knows the struct that holds it
 * (`reach`), its place in that struct and its JSON Pointer, so that one field
 * widget can show, read, write and find any number or text of the document.
 *
 * A figure (`get_figure`) is not written but follows; `set_figure` writes what
 * makes it so. Its `hold` is NUMBER, its `offset` means nothing.
 *
 * Invariant: `reach` gives NULL exactly where the member means nothing (the
 * base of a square, the roll width of a pin); its field is then not shown.
 */

#pragma once

#include "page.h"

G_BEGIN_DECLS

typedef enum {
  TR_HOLD_NUMBER,                /* double; NaN: not written */
  TR_HOLD_COUNT,                 /* int; 0: not written, where it may be empty */
  TR_HOLD_TEXT,                  /* char * */
  TR_HOLD_AMOUNT,                /* char *, any text; understood by tr_amount_parse */
} TrHold;

/* The struct that holds the member of list item `item`; NULL: not there. With
 * `make`, `trial` is a draft that owns its dough and bench, and what is missing
 * on the way is made. */
typedef gpointer (*TrReach) (const TrTrial *trial,
                             int            dough,
                             guint          item,
                             gboolean       make);

typedef struct {
  const char *pointer;           /* inside the dough, or "/bench/…", "/ingredients/…", "/title"; "%u" is the item */
  TrReach reach;
  gsize offset;
  TrHold hold;
  TrQuantity quantity;           /* NUMBER and COUNT */
  const char *label, *undo;      /* "Rim", "change the rim"; "%u" in undo: the item counted from 1 */
  const char *tooltip;           /* NULL: the label says it all */
  double step;                   /* of the arrow keys, in the member's unit; 0: 1 */
  gboolean may_be_empty;
  const char *empty;             /* shown in place of what is not written */
  double otherwise;              /* the number that counts where none is written, shown in its place; 0: `empty` */
  const char *unit;              /* of a plain number; NULL: the quantity's own */
  /* Keeps the draft's invariants after a write; may free the holder. */
  void (*settle) (TrTrial *draft, int dough, guint item, gpointer holder);
  char *(*dup_pointer) (const TrTrial *trial, int dough, guint item);  /* where "%u" is not the item */
  char *(*dup_undo) (const TrTrial *trial, int dough, guint item);     /* where it needs more words */
  double (*get_figure) (const TrDoughFigures *figures, guint item);    /* a percentage; NaN: not known */
  /* `figures`: from before the typing, so that nothing drifts by rounding; their
   * own value puts back what was written. FALSE with a sentence: nothing was written. */
  gboolean (*set_figure) (TrDough *dough, const TrDoughFigures *figures, guint item, double value, GError **error);
  /* The number that counts where none is written, of this item; NaN: `empty` is shown. NULL: `otherwise`. */
  double (*get_otherwise) (const TrTrial *trial, int dough, guint item);
  double divisor;                /* what stands in the document over it is what is shown; 0: 1. NUMBER only */
  /* What the document would take and the baker cannot mean. FALSE with a sentence: not committed. */
  gboolean (*check) (const TrTrial *draft, const TrReader *reader, int dough, guint item, GError **error);
} TrMember;

gboolean    tr_member_is_there    (const TrMember *member,
                                   const TrTrial  *trial,
                                   int             dough,
                                   guint           item);
/* NaN: not written, or not there. */
double      tr_member_get_number  (const TrMember *member,
                                   const TrTrial  *trial,
                                   int             dough,
                                   guint           item);
const char *tr_member_get_text    (const TrMember *member,
                                   const TrTrial  *trial,
                                   int             dough,
                                   guint           item);
/* In a fresh draft; each takes possession of the dough or bench first. */
void        tr_member_set_number  (const TrMember *member,
                                   TrTrial        *draft,
                                   int             dough,
                                   guint           item,
                                   double          value);
void        tr_member_set_text    (const TrMember *member,
                                   TrTrial        *draft,
                                   int             dough,
                                   guint           item,
                                   const char     *text);

/* A draft where the figure is `value`; NULL with a sentence. What is said like
 * the figure of `start` is no change: the amount stays as it was written. */
TrTrial    *tr_member_draft_figure (const TrMember       *member,
                                    TrPage               *page,
                                    const TrDoughFigures *start,
                                    guint                 item,
                                    double                value,
                                    GError              **error);
/* As it stands in its field; nothing for NaN. */
char       *tr_member_dup_number  (const TrMember *member,
                                   const TrReader *reader,
                                   double          value);

char       *tr_member_dup_pointer (const TrMember *member,
                                   const TrTrial  *trial,
                                   int             dough,
                                   guint           item);
char       *tr_member_dup_undo    (const TrMember *member,
                                   const TrTrial  *trial,
                                   int             dough,
                                   guint           item);
/* "mm", "%", …; NULL: none. */
const char *tr_member_get_unit    (const TrMember *member,
                                   const TrReader *reader);
/* `value` after that many steps of the arrow keys: multiples of a step that is
 * round in the reader's unit, never below 0 but for temperatures. */
double      tr_member_step        (const TrMember *member,
                                   const TrReader *reader,
                                   double          value,
                                   int             steps);

/* Every "%u" in `text` replaced by `number`. */
char       *tr_text_with_number   (const char *text,
                                   guint       number);
/* Makes the part that `where` stands in the draft's own, to be written to. */
void        tr_where_own          (TrTrial    *draft,
                                   int         dough,
                                   const char *where);

G_END_DECLS
