/* causes.h: what the tasters found wrong, and what in the dough points there
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A complaint is a fault or a balance mark, with how many tasters gave it. A
 * cause is a number of this dough beyond what is usual, named by a rule as one
 * that leads to that complaint. No number, no cause: a complaint for which
 * none is found says so, and nothing is guessed. Of the balance another dough
 * of the same trial is a number too, if the tasters found it just right.
 *
 * The rules are one table in causes.c, likeliest first, with a source each, or
 * "common practice". A cause is a hint for the next dough and no verdict.
 */

#pragma once

#include "faults.h"
#include "remedy.h"
#include "scores.h"

G_BEGIN_DECLS

/* The faults keep their numbers; behind them the balance marks. */
typedef enum {
  TR_COMPLAINT_SALT_LITTLE = TR_N_FAULTS, TR_COMPLAINT_SALT_MUCH,
  TR_COMPLAINT_SWEET_LITTLE, TR_COMPLAINT_SWEET_MUCH,
  TR_COMPLAINT_BAKE_LITTLE, TR_COMPLAINT_BAKE_MUCH,
  TR_N_COMPLAINTS
} TrComplaintId;

typedef struct {
  guint id;                      /* a fault, or TrComplaintId */
  guint n, of;                   /* tasters who said so, of those who wrote anything of this dough */
  double mean;                   /* of a balance mark, of all who gave it; NaN: a fault */
} TrComplaint;

typedef struct {
  guint complaint;               /* as TrComplaint.id */
  TrSide side;
  double limit;                  /* the end that is passed */
  TrReading reading;
  const char *source;            /* of the rule; static */
  TrRemedy remedy;
  int beside;                    /* index of a dough found just right, whose number the limit is and whose name is reading.name; -1: the usual */
} TrCause;

/* (element-type TrComplaint): what most said first. `tasting` may be NULL. */
GArray     *tr_complaints_list     (const TrTasting      *tasting,
                                    const char           *dough);
/* (element-type TrCause): likeliest first; empty: no number points anywhere. */
GPtrArray  *tr_causes_find         (const TrDoughFigures *figures,
                                    guint                 complaint);
/* The same, and before it what the other doughs of the trial tell: of salt,
 * sweetness and bake a dough is the measure that the tasters found just right,
 * the one whose number is nearest. */
GPtrArray  *tr_causes_find_beside  (const TrFigures      *figures,
                                    guint                 dough,
                                    guint                 complaint);
void        tr_cause_free          (TrCause              *cause);

/* The rules, for those who show or check them. */
typedef struct {
  guint complaint;
  TrReadingId reading;
  TrSide side;
  const char *source;
} TrRule;

const TrRule *tr_rules_get         (guint                *n);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (TrCause, tr_cause_free)

G_END_DECLS
