/* look.h: what every look at a dough's figures uses: the findings, and the card
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "figures.h"

G_BEGIN_DECLS

/* So many points of salt from a salted fat are worth a word; common practice. */
#define TR_SALTED_FAT_POINTS 0.3

/* Each looks at one side of the figures and adds what it finds. */
void                 tr_look_at_formula    (const TrDoughFigures *figures,
                                            GPtrArray            *found);
void                 tr_look_at_bench      (const TrDoughFigures *figures,
                                            GPtrArray            *found);
void                 tr_look_at_method     (const TrDoughFigures *figures,
                                            GPtrArray            *found);
void                 tr_look_at_rests      (const TrDoughFigures *figures,
                                            GPtrArray            *found);

/* Takes `where`; `source` is static. with[] is NaN, name NULL. */
TrFinding           *tr_look_add           (GPtrArray   *found,
                                            TrFindingId  id,
                                            TrSeverity   severity,
                                            char        *where,
                                            double       value,
                                            double       limit,
                                            const char  *source);

typedef gboolean (*TrLineTest) (const TrLineFigures *line);

const TrLineFigures *tr_look_get_line      (const TrDoughFigures *figures,
                                            guint                 index);
/* -1: no such line. */
int                  tr_look_find_line     (const TrDoughFigures *figures,
                                            TrLineTest            test);
/* "/lines/3/amount"; "/lines" when the index is negative. */
char                *tr_look_line_pointer  (int         index,
                                            const char *member);
/* TRUE: outside, and `limit` is the end that is passed. */
gboolean             tr_look_is_outside    (double  value,
                                            double  low,
                                            double  high,
                                            double *limit);
gboolean             tr_line_has_role      (const TrLineFigures *line,
                                            TrRole               role);
gboolean             tr_line_is_roll_in    (const TrLineFigures *line);
gboolean             tr_line_is_leaven     (const TrLineFigures *line);
gboolean             tr_line_is_starter    (const TrLineFigures *line);
gboolean             tr_look_is_leavened   (const TrDoughFigures *figures);

double               tr_look_get_place_c   (const TrBench *bench,
                                            TrPlace        place);
/* Of the air around it: written, or that of the place it is done in. */
double               tr_look_get_step_c    (const TrBench *bench,
                                            const TrStep  *step);
/* What the roll-in fat that bears least bears in the proof; NaN: not known.
 * `fat` is its id, borrowed. */
double               tr_look_find_proof_max (const TrDoughFigures  *figures,
                                             const char           **fat);
/* What is usual at the sheet's thickness. FALSE: nothing to hold against it. */
gboolean             tr_look_get_fat_layer_band (const TrDoughFigures *figures,
                                                 TrBand               *band);
/* The fat line that brings most salt; -1: none brings any. */
int                  tr_look_find_salted_fat (const TrDoughFigures *figures);

G_END_DECLS
