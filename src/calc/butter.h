/* butter.h: what a milk fat may be called, by what is in it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Codex CXS 279-1971, 3.3, and Regulation (EU) 1308/2013, Annex VII, Part VII
 * with Appendix II, Part A. Says what the texts say; whoever sells something
 * asks the law of the place.
 */

#pragma once

#include "ingredient.h"

G_BEGIN_DECLS

#define TR_BUTTER_LEAST_FAT 80.0
#define TR_BUTTER_MOST_WATER 16.0
#define TR_BUTTER_MOST_DRY 2.0   /* of milk, not fat */

typedef enum {
  TR_BUTTER_NOT_KNOWN,           /* fat or water is not known */
  TR_BUTTER_BUTTER,
  TR_BUTTER_WET,                 /* fat enough, too much water */
  TR_BUTTER_DRY,                 /* fat enough, too much else that is not salt */
  TR_BUTTER_CONCENTRATED,        /* 90 % fat or more: no spreadable fat */
  TR_BUTTER_THREE_QUARTER,       /* 60 to 62 % */
  TR_BUTTER_HALF,                /* 39 to 41 % */
  TR_BUTTER_SPREAD,              /* 10 to 80 % and neither */
  TR_BUTTER_NONE,                /* under 10 % */
} TrButter;

TrButter tr_butter_judge (const TrIngredient *ingredient);

G_END_DECLS
