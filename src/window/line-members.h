/* line-members.h: the values of a line of the formula
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The item is the line's index, or a pending one (lines.h).
 */

#pragma once

#include "lines.h"
#include "member.h"

G_BEGIN_DECLS

extern const TrMember tr_line_amount_member;
extern const TrMember tr_line_hydration_member;  /* only of a starter */
/* Of the flour; writes the amount, in its own unit. */
extern const TrMember tr_line_percent_member;

/* What setting it would do, or, where it cannot be set, why. */
const char *tr_line_say_percent (const TrDoughFigures *figures,
                                 guint                 item,
                                 gboolean             *can_set);

/* "/lines/3/amount", also where a pending line will stand. */
char *tr_line_dup_pointer (const TrTrial *trial,
                           int            dough,
                           guint          item,
                           const char    *member);
/* The name of its ingredient, or what was typed for it. */
char *tr_line_dup_name    (const TrTrial *trial,
                           const TrLine  *line);

G_END_DECLS
