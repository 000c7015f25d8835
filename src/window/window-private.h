/* window-private.h: what the files of the window share
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * window.c wires, window-layout.c places the pages, window-actions.c holds the
 * table of actions, window-files.c opens, saves, recovers and closes,
 * window-paper.c and window-pages.c print, window-recipe.c brings recipes in.
 */

#pragma once

#include "doughs.h"
#include "notices.h"
#include "paper-job.h"
#include "window.h"

G_BEGIN_DECLS

#define TR_N_PAGES 13

struct _TrWindow
{
  GtkApplicationWindow parent_instance;

  /* Template Widgets */
  GtkMenuButton *doughs_button;
  GtkLabel *doughs_label;
  GtkPopover *doughs_popover;
  GtkButton *undo_button;
  GtkButton *redo_button;
  GtkButton *card_button;
  GtkButton *save_button;
  GtkMenuButton *menu_button;
  TrNotices *notices;
  GtkStack *body;
  GtkWidget *start_page;
  GtkPaned *outer_paned;
  GtkPaned *inner_paned;
  GtkBox *sidebar;
  GtkWidget *formula_scroller;
  GtkBox *formula_slot;
  GtkWidget *switcher;
  GtkWidget *compact_switcher;
  GtkWidget *pages_box;
  GtkStack *pages_stack;
  GtkWidget *findings_slot;
  GtkBox *foot;
  GtkBox *trial_slot;

  /* Borrowed References */
  TrPage *pages[TR_N_PAGES];     /* NULL: nobody has seen it yet */
  GtkBox *slots[TR_N_PAGES];     /* where they stand */
  GtkStackPage *formula_stack_page;

  /* Owned References */
  TrPreferences *preferences;
  GFile *recovery_folder;
  TrDocument *document;
  GSignalGroup *document_signals;
  GSignalGroup *text_signals;    /* of the text that has the focus */
  GCancellable *cancellable;     /* of the question that is open */
  char *dough_id;
  char *last_pointer;            /* what the last change changed */

  /* State */
  TrReader reader;
  TrLayout layout;
  int trial_page;                /* of the whole trial, that is shown in place of a dough's; -1: none */
  guint layout_idle;
  guint fill_idle;               /* of the pages, after the first frame */
  int dough_index;               /* where the dough was when last seen */
  guint is_painted : 1;          /* a frame was shown */
  guint shows_findings : 1;
  guint has_typed : 1;           /* in the text that has the focus */
  guint is_asking : 1;           /* about unsaved changes */
  guint closes_when_saved : 1;
};

/* window-layout.c */
void        tr_window_build_pages        (TrWindow *self);
void        tr_window_set_layout_for     (TrWindow *self, int width);
/* Soon, when that width wants another layout. */
void        tr_window_queue_layout       (TrWindow *self, int width);
void        tr_window_show_page          (TrWindow *self, const char *name);
TrDoughs   *tr_window_get_doughs         (TrWindow *self);

/* window.c */
/* What stands in the focused field is committed; the focus stays. */
void        tr_window_settle_focus       (TrWindow *self);

/* window-actions.c */
void        tr_window_class_install_actions (GtkWidgetClass *widget_class);
void        tr_window_update_actions     (TrWindow *self);

/* window-files.c */
void        tr_window_new_trial          (TrWindow *self);
void        tr_window_open               (TrWindow *self);
void        tr_window_open_uri           (TrWindow *self, const char *uri);
void        tr_window_open_demo          (TrWindow *self);
void        tr_window_save               (TrWindow *self);
void        tr_window_save_as            (TrWindow *self);
void        tr_window_reload             (TrWindow *self);
void        tr_window_recover            (TrWindow *self, const char *path);
void        tr_window_drop_recovery      (TrWindow *self, const char *path);
void        tr_window_tell_changed_on_disk (TrWindow *self);
/* A window asks one thing at a time; the question goes with the window. */
GCancellable *tr_window_start_asking     (TrWindow *self);
/* A name typed without a suffix gets one, or the next "Open" would not list it.
 * Only where that name is free, since nobody was asked about replacing it. */
GFile      *tr_window_dup_suffixed       (GFile *file, const char *suffix);
void        tr_window_accept_drops       (TrWindow *self);
/* TRUE: the window stays; a question was asked. */
gboolean    tr_window_ask_before_closing (TrWindow *self);
/* A dough to change. (transfer full) */
TrDough    *tr_window_new_plain_dough    (void);

/* window-recipe.c */
void        tr_window_read_recipe        (TrWindow *self);
void        tr_window_paste_recipe       (TrWindow *self);
/* A file that is no trial, or a text: to be looked through as a recipe. */
void        tr_window_read_recipe_file   (TrWindow *self, GFile *file);
void        tr_window_read_recipe_text   (TrWindow *self, const char *text);
/* By its name, or by how it begins. */
gboolean    tr_window_is_trial_file      (GFile *file);

/* window-paper.c */
/* Where to put what is drawn, a card or a picture; finish: tr_compat_save_file_finish. */
void        tr_window_ask_for_drawing_file (GtkWindow *window, const char *title, GFile *folder, const char *name,
                                            GAsyncReadyCallback callback, gpointer user_data);
/* NULL: it is nowhere that can be drawn to. (transfer full) */
char       *tr_window_dup_drawing_path   (GFile *file, GError **error);
void        tr_window_export             (TrWindow *self, gboolean all);
void        tr_window_print              (TrWindow *self);
/* Of the paper that was printed last. */
TrPaperSize tr_window_get_paper_size     (void);
void        tr_window_tell_exported      (TrWindow *self, TrPaperJob *job, const char *path);
/* Asks GTK's dialog, which has our preview. */
void        tr_window_print_job          (TrWindow *self, TrPaperJob *job);
/* Says in the notice strip what goes wrong with it, and remembers its settings when nothing does. */
void        tr_window_watch_print        (TrWindow *self, GtkPrintOperation *operation);

/* window-pages.c: "comparison" and the like; asks where to. */
void        tr_window_export_paper       (TrWindow *self, const char *name);
void        tr_window_print_paper        (TrWindow *self, const char *name);
/* Of the question where to put it; not of bench cards. */
const char *tr_window_get_paper_title    (TrPaperKind kind);

G_END_DECLS
