/* pantry-edits.h: the baker's own ingredients come, go and give way
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * On drafts; commits nothing.
 */

#pragma once

#include "../calc/written.h"

G_BEGIN_DECLS

/* Its index; -1: none of that id. */
int         tr_pantry_find_index   (const TrPantry *pantry,
                                    const char     *id);
/* The new one's id, which stands last. (transfer full) */
char       *tr_pantry_add_like     (TrTrial        *draft,
                                    const char     *like);
/* That line's ingredient, or one like it that the line then names. NULL: the
 * line has none that is known. (transfer full) */
char       *tr_pantry_own_of_line  (TrTrial        *draft,
                                    guint           dough,
                                    guint           line);
char       *tr_pantry_duplicate    (TrTrial        *draft,
                                    guint           index);
void        tr_pantry_remove       (TrTrial        *draft,
                                    guint           index);
/* Every line that names `id` names `other`. */
void        tr_pantry_replace      (TrTrial        *draft,
                                    const char     *id,
                                    const char     *other);
/* The names of the doughs that have it, "A", "A and B", "A, B and C"; NULL: none. */
char       *tr_pantry_dup_users    (const TrTrial  *trial,
                                    const char     *id);

G_END_DECLS
