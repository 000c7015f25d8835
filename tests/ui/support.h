/* support.h: driving the real window from a test
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Waits are for conditions, never for times. Needs a display; without one the
 * program says so and is skipped.
 */

#pragma once

#include <gtk/gtk.h>

#include "window/application.h"
#include "window/doughs.h"

G_BEGIN_DECLS

/* Like g_test_init, and GTK. FALSE: no display, return 0. */
gboolean        ui_init            (int *argc, char ***argv);
/* Runs the tests and removes what they left. */
int             ui_run             (void);

gboolean        ui_wait_until      (gboolean (*condition) (gpointer), gpointer data, guint milliseconds);
/* That many frames of this widget have been drawn. */
void            ui_frames          (GtkWidget *widget, int count);
/* Everything that is pending has been done. */
void            ui_settle          (void);

/* A registered application of its own with an empty state folder. */
TrApplication  *ui_application_new (void);
/* Destroys its windows without asking and asserts that they are freed. */
void            ui_application_free (TrApplication *application);
/* An application with one window that shows the demo, presented and drawn. */
TrWindow       *ui_demo_window_new (TrApplication *application);
/* The text of the demo's file; a window that has such a file open. */
char           *ui_write_demo      (void);                       /* path */
TrWindow       *ui_file_window_new (TrApplication *application, const char *path);

void            ui_act             (TrWindow *window, const char *action);
void            ui_act_on          (TrWindow *window, const char *action, const char *target);
/* The widget below `root`, mapped, with that accessible label and of that type. NULL: none. */
GtkWidget      *ui_find            (GtkWidget *root, GType type, const char *label);
/* Somebody who cannot see it is told that. */
gboolean        ui_has_label       (GtkWidget *widget, const char *label);
/* Some mapped label below `root` has these words in it; its no-break spaces are spaces. */
gboolean        ui_says            (GtkWidget *root, const char *words);
/* The first of that type below `root`, mapped or not. NULL: none. */
GtkWidget      *ui_find_type       (GtkWidget *root, GType type);
guint           ui_count_type      (GtkWidget *root, GType type);
/* Focuses an entry, replaces its text as typing would, leaves it there. */
void            ui_type            (GtkWidget *editable, const char *text);
/* The open question of that window, NULL: none; answer it by index. */
GtkWindow      *ui_get_question    (TrWindow *window);
void            ui_answer          (TrWindow *window, int button);
/* Names a file in the chooser that is open, as typing and Save would. */
void            ui_choose          (TrWindow *window, const char *folder, const char *name);
/* A drawn widget as it is seen. */
GdkTexture     *ui_render          (GtkWidget *widget);

/* Makes one, drops it, asserts that it is gone; makes one and disposes it twice. */
void            ui_assert_contract (GtkWidget *(*make) (void));

/* For g_test_add: an application with a window that shows the demo. */
typedef struct
{
  TrApplication *application;
  TrWindow *window;
} UiFixture;

void            ui_set_up          (UiFixture *fixture, gconstpointer data);
void            ui_tear_down       (UiFixture *fixture, gconstpointer data);

#define UI_ADD(path, test) g_test_add (path, UiFixture, NULL, ui_set_up, test, ui_tear_down)

const TrTrial  *ui_get_trial       (TrWindow *window);
char           *ui_dup_trial_text  (TrDocument *document);
const char     *ui_get_strip       (TrWindow *window);
TrDoughs       *ui_get_doughs      (TrWindow *window);
/* An edit like any other: the number of pieces asked for. */
void            ui_edit_pieces     (TrWindow *window, double pieces);
guint           ui_count_windows   (TrApplication *application);
char           *ui_read_file       (const char *path);
/* NULL: nothing can be dropped there. */
GtkDropTarget  *ui_get_drop_target (GtkWidget *widget);

G_END_DECLS
