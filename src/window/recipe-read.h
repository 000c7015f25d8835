/* recipe-read.h: a recipe read beside the window's own work
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Text or file, read by another thread: five megabytes of text or a slow disk
 * do not hold the window up. The thread has its own reference to the bytes and
 * sees no widget.
 */

#pragma once

#include <gio/gio.h>

#include "../recipe/recipe.h"

G_BEGIN_DECLS

/* Of `bytes`, or of the file where they are NULL; the recipe at `index`. */
void      tr_recipe_read_async  (GBytes               *bytes,
                                 GFile                *file,
                                 guint                 index,
                                 GCancellable         *cancellable,
                                 GAsyncReadyCallback   callback,
                                 gpointer              user_data);
/* NULL with a sentence. `bytes`: what was read, also where nothing was
 * understood; NULL: not even that. (transfer full) */
TrRecipe *tr_recipe_read_finish (GAsyncResult         *result,
                                 GBytes              **bytes,
                                 GError              **error);

G_END_DECLS
