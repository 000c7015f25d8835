/* preferences.h: what the reader, not the document, decides
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Units, colours, scales and the size of the window. Kept in GSettings where the
 * schema is installed; without it they live as long as the program runs.
 *
 * Properties (read and write, notify): units ("metric", "us"), colours
 * ("system", "light", "dark"), scale-step, fine-scale-step (grams; 0: as the
 * trial's bench says), plane-across, plane-up (keys of the ratios on the plane
 * of doughs), window-width, window-height (pixels), window-maximized. They are
 * named as the keys of the schema.
 */

#pragma once

#include <gio/gio.h>

#include "../words/words.h"

G_BEGIN_DECLS

#define TR_SCALE_STEP_MOST_G 100.0

#define TR_TYPE_PREFERENCES (tr_preferences_get_type ())
G_DECLARE_FINAL_TYPE (TrPreferences, tr_preferences, TR, PREFERENCES, GObject)

TrPreferences *tr_preferences_new         (void);
/* Numbers as the process's locale has them, units as the reader chose. */
void           tr_preferences_init_reader (TrPreferences *self,
                                           TrReader      *reader);
const char    *tr_preferences_get_colours (TrPreferences *self);
void           tr_preferences_get_size    (TrPreferences *self,
                                           int           *width,
                                           int           *height,
                                           gboolean      *maximized);
void           tr_preferences_set_size    (TrPreferences *self,
                                           int            width,
                                           int            height,
                                           gboolean       maximized);

G_END_DECLS
