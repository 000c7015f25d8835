/* line-columns.h: the columns that the formula's rows and their titles share
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Keep a width each. */
typedef struct { GtkSizeGroup *amount, *percent, *grams, *menu; } TrLineColumns;

void       tr_line_columns_init       (TrLineColumns        *columns);
void       tr_line_columns_clear      (TrLineColumns        *columns);
/* The titles over the columns; the one of the weights is set by its unit. */
GtkWidget *tr_line_columns_new_titles (const TrLineColumns  *columns,
                                       GtkWidget           **grams_title);

G_END_DECLS
