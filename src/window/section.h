/* section.h: headings, hairlines and labels that every page sets alike
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Space goes in steps of 6. Groups are told apart by space and a hairline.
 */

#pragma once

#include <gtk/gtk.h>

#include "choice-field.h"
#include "entry-field.h"

G_BEGIN_DECLS

/* The column of a page: scrolls when it must, sections one under another. */
GtkWidget *tr_column_new           (GtkWidget  **scroller);
/* Adds a section with its heading (NULL: none) and returns the box for its
 * content; a hairline stands above all but the first. */
GtkWidget *tr_column_add_section   (GtkWidget   *column,
                                    const char  *heading);
/* With the hairline above it. */
void       tr_section_set_shown    (GtkWidget   *section,
                                    gboolean     is_shown);
/* Around what may be wider than its page: scrolls sideways, while a wheel that turns
 * up or down moves the page. */
GtkWidget *tr_sideways_new         (GtkWidget   *child);
/* Fields in as many equal columns as fit. */
GtkWidget *tr_form_new             (const TrMember *members,
                                    guint           n_members);
GtkWidget *tr_form_add             (GtkWidget   *form,
                                    GtkWidget   *field);   /* returns field */
/* Fields one beside the other, labels above, wrapping. */
GtkWidget *tr_fields_row_new            (void);

/* A line or two of words; hidden while it has none. */
GtkWidget *tr_words_label_new      (const char  *css_class);
void       tr_words_label_set      (GtkWidget   *label,
                                    const char  *text);    /* NULL: none */
void       tr_words_label_take     (GtkWidget   *label,
                                    char        *text);
/* A number to be read ("−1.3", "5 %", "1."): from left to right whatever the
 * language, to the right, figures of one width. */
GtkWidget *tr_figure_label_new     (int          width_chars);
void       tr_figure_label_take    (GtkWidget   *label,
                                    char        *text);
void       tr_entry_set_tabular    (GtkEntry    *entry);
/* The keys pressed in an entry, before it sees them, and the focus that leaves
 * it, as long as `object` lives: callbacks as of GtkEventControllerKey and
 * GtkEventControllerFocus. Returns the latter, borrowed. */
GtkEventController *
           tr_entry_listen         (GtkWidget   *entry,
                                    GCallback    key_pressed_cb,
                                    GCallback    focus_left_cb,
                                    gpointer     object);

G_END_DECLS
