/* pantry-form.h: what is written of one ingredient of the baker's own
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Stands in a page. Its focus is the name's.
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define TR_TYPE_PANTRY_FORM (tr_pantry_form_get_type ())
G_DECLARE_FINAL_TYPE (TrPantryForm, tr_pantry_form, TR, PANTRY_FORM, GtkWidget)

GtkWidget *tr_pantry_form_new  (void);
/* The ingredient at that index, as it stands in the page's document now. */
void       tr_pantry_form_show (TrPantryForm *self,
                                guint         index);

G_END_DECLS
