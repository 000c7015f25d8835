/* page.h: a part of the window that shows and edits the current dough
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A page never computes. `refresh` sets only what differs; while it runs
 * tr_page_is_refreshing is TRUE and handlers must return at once. A page that
 * is not mapped is refreshed when it is first shown.
 */

#pragma once

#include <gtk/gtk.h>

#include "../trial/document.h"
#include "../words/words.h"

G_BEGIN_DECLS

#define TR_TYPE_PAGE (tr_page_get_type ())
G_DECLARE_DERIVABLE_TYPE (TrPage, tr_page, TR, PAGE, GtkWidget)

struct _TrPageClass
{
  GtkWidgetClass parent_class;

  void     (*refresh) (TrPage *self);
  /* Brings the field that edits this JSON Pointer (inside the dough, or of the
   * document: "/bench/…") into view and focuses it. FALSE: not here. */
  gboolean (*go_to)   (TrPage *self, const char *pointer);
};

/* GtkBinLayout; one child. */
void                  tr_page_set_child        (TrPage *self, GtkWidget *child);
void                  tr_page_set_document     (TrPage *self, TrDocument *document);
TrDocument           *tr_page_get_document     (TrPage *self);
/* The dough shown, by id; NULL: none. */
void                  tr_page_set_dough        (TrPage *self, const char *id);
const TrDough        *tr_page_get_dough        (TrPage *self);
int                   tr_page_get_dough_index  (TrPage *self);      /* -1: none */
const TrDoughFigures *tr_page_get_figures      (TrPage *self);      /* NULL: none */
void                  tr_page_set_reader       (TrPage *self, const TrReader *reader);
const TrReader       *tr_page_get_reader       (TrPage *self);
/* Shows what the other shows: for a page inside another, from its refresh. */
void                  tr_page_follow           (TrPage *self, TrPage *other);
gboolean              tr_page_is_refreshing    (TrPage *self);
gboolean              tr_page_go_to            (TrPage *self, const char *pointer);
/* Commits a draft; on refusal shows the sentence in the window's notice. TRUE: committed. */
gboolean              tr_page_commit           (TrPage *self, TrTrial *draft, const char *label,
                                                const char *key, const char *where_in_dough);
/* `where` as the document sees it: "/bench/…", "/title" and the like stay, the
 * rest is inside the dough (-1: none). */
char                 *tr_where_in_document     (int dough, const char *where);
gboolean              tr_where_is_in_dough     (const char *where);
/* Commits in between are one step (tr_document_begin_drag). It ends with the
 * page's document at the latest; ending none does nothing. */
void                  tr_page_begin_drag       (TrPage *self);
void                  tr_page_end_drag         (TrPage *self, gboolean is_cancelled);
gboolean              tr_page_is_dragging      (TrPage *self);

/* The pages, each in a file of its own. */
GtkWidget            *tr_formula_page_new      (void);
GtkWidget            *tr_turns_page_new        (void);   /* lock-in, turns, layer picture */
GtkWidget            *tr_sheet_page_new        (void);   /* cut, sheet drawing, alternatives */
GtkWidget            *tr_method_page_new       (void);   /* temperatures and steps of the bench card */
GtkWidget            *tr_log_page_new          (void);   /* what really happened */
GtkWidget            *tr_tasting_page_new      (void);   /* samples, scores, result */
GtkWidget            *tr_total_page_new        (void);   /* total formula, what is in it */
GtkWidget            *tr_bench_page_new        (void);   /* the kitchen */
GtkWidget            *tr_compare_page_new      (void);   /* doughs side by side, what is predicted */
GtkWidget            *tr_pantry_page_new       (void);   /* the baker's own ingredients */

G_END_DECLS
