/* figure-choice.h: one of the figures that can be compared, or something else
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A drop-down with a label above it, to be searched by typing. What is not a
 * figure ("By hand", "Mean score") stands first. A figure that is set and not
 * among those offered stands last, for as long as it is the one.
 *
 * Signal "chosen": by the reader's hand; not when it is set.
 */

#pragma once

#include <gtk/gtk.h>

#include "../calc/comparison.h"

G_BEGIN_DECLS

#define TR_TYPE_FIGURE_CHOICE (tr_figure_choice_get_type ())
G_DECLARE_FINAL_TYPE (TrFigureChoice, tr_figure_choice, TR, FIGURE_CHOICE, GtkWidget)

/* `other`: what is chosen when it is no figure. */
GtkWidget          *tr_figure_choice_new     (const char         *label,
                                              const char         *other);
/* NULL: the other. */
const TrComparable *tr_figure_choice_get     (TrFigureChoice     *self);
void                tr_figure_choice_set     (TrFigureChoice     *self,
                                              const TrComparable *comparable);
/* What the document names and this program does not know. */
void                tr_figure_choice_set_key (TrFigureChoice     *self,
                                              const char         *key);
/* As the reader would, by hand: one that is offered. */
void                tr_figure_choice_choose  (TrFigureChoice     *self,
                                              const TrComparable *comparable);

G_END_DECLS
