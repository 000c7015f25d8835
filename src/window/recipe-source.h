/* recipe-source.h: where the text of a recipe comes from
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A box to type, paste or drop into, and a way to a file. Of a long text only
 * the start is shown; all of it is given on.
 *
 * Signals
 *   typing (): something is there that is not given on yet.
 *   changed (GBytes *bytes): some time after the typing stops, at once for what
 *     is pasted; NULL: nothing is left.
 *   paste (): the reader wants what is on the clipboard.
 *   file (GFile *file): the reader has chosen one.
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define TR_TYPE_RECIPE_SOURCE (tr_recipe_source_get_type ())
G_DECLARE_FINAL_TYPE (TrRecipeSource, tr_recipe_source, TR, RECIPE_SOURCE, GtkWidget)

GtkWidget *tr_recipe_source_new       (void);
/* Shows it; emits nothing. */
void       tr_recipe_source_show_text (TrRecipeSource *self,
                                       const char     *text);
/* `is_plain`: its bytes are what a person would read. */
void       tr_recipe_source_show_file (TrRecipeSource *self,
                                       GFile          *file,
                                       GBytes         *bytes,
                                       gboolean        is_plain);
gboolean   tr_recipe_source_is_empty  (TrRecipeSource *self);
/* "changed" is still to come. */
gboolean   tr_recipe_source_is_typing (TrRecipeSource *self);

G_END_DECLS
