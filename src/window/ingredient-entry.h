/* ingredient-entry.h: an ingredient, typed or chosen
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A text with a list below: the start of any words of a name finds it,
 * accents and case do not matter. Up and Down choose, Return and Tab accept,
 * Escape first closes the list and then puts back what stood there. What is
 * not recognised stays as text.
 *
 * Signals
 *   committed (const char *id, const char *text): accepted, or left. id NULL:
 *     not recognised, text is what was typed.
 */

#pragma once

#include <gtk/gtk.h>

#include "../calc/ingredient.h"

G_BEGIN_DECLS

#define TR_TYPE_INGREDIENT_ENTRY (tr_ingredient_entry_get_type ())
G_DECLARE_FINAL_TYPE (TrIngredientEntry, tr_ingredient_entry, TR, INGREDIENT_ENTRY, GtkWidget)

GtkWidget  *tr_ingredient_entry_new        (void);
/* The baker's own ingredients; shared, NULL: none. */
void        tr_ingredient_entry_set_pantry (TrIngredientEntry *self,
                                            TrPantry          *pantry);
/* What stands in the document; does nothing while it is the same. id NULL:
 * `text` is what was not recognised. */
void        tr_ingredient_entry_set_value  (TrIngredientEntry *self,
                                            const char        *id,
                                            const char        *text);
void        tr_ingredient_entry_set_invalid (TrIngredientEntry *self,
                                             const char        *error);   /* NULL: none */
void        tr_ingredient_entry_set_name   (TrIngredientEntry *self,
                                            const char        *name);     /* for those who cannot see it */
/* The entry that takes the typing. */
GtkWidget  *tr_ingredient_entry_get_entry  (TrIngredientEntry *self);

G_END_DECLS
