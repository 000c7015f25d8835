/* stage-header.h: the heading over the lines of one stage or preferment
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signals
 *   add (): a line is wanted at the end of this group.
 *   renamed (const char *name): the preferment got another name.
 */

#pragma once

#include <gtk/gtk.h>

#include "../calc/written.h"

G_BEGIN_DECLS

#define TR_TYPE_STAGE_HEADER (tr_stage_header_get_type ())
G_DECLARE_FINAL_TYPE (TrStageHeader, tr_stage_header, TR, STAGE_HEADER, GtkWidget)

GtkWidget  *tr_stage_header_new       (void);
/* `can_rename`: a preferment with lines, whose name is a field. group NULL: none. */
void        tr_stage_header_set       (TrStageHeader *self,
                                       TrStage        stage,
                                       const char    *group,
                                       gboolean       can_rename);
TrStage     tr_stage_header_get_stage (TrStageHeader *self);
const char *tr_stage_header_get_group (TrStageHeader *self);

G_END_DECLS
