/* content.h: what of a kind is in a dough, a piece of it and 100 g of it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Effective figures: what a thing does in the dough wherever it hides. Nothing
 * here is a new sum; the percents are those of the formula, told by the piece.
 */

#pragma once

#include "figures.h"

G_BEGIN_DECLS

typedef enum {
  TR_CONTENT_FLOUR,
  TR_CONTENT_ADDED_WATER,
  TR_CONTENT_ALL_WATER,          /* milk, egg, butter and starters included */
  TR_CONTENT_SALT,               /* the salt of salted fat and the rest included */
  TR_CONTENT_ADDED_SUGAR,        /* of sweeteners */
  TR_CONTENT_SUGARS,             /* of everything */
  TR_CONTENT_DOUGH_FAT,          /* fat worked into the dough, as weighed */
  TR_CONTENT_ROLL_IN,            /* as weighed */
  TR_CONTENT_FAT,                /* of everything, without the water of butter */
  TR_CONTENT_YEAST,              /* as if all were fresh */
  TR_N_CONTENTS
} TrContentKind;

/* NaN: not known. A piece has its share of the finish where the report says so
 * (salt, sugars, fat); 100 g and the percent are of the mix. */
typedef struct { double piece_g, per_100g, percent_of_flour; } TrContentRow;

void       tr_content_get             (const TrDoughFigures *figures,
                                       TrContentKind         kind,
                                       TrContentRow         *row);
/* Grams of the batch in lines that are salt, on the flour. */
double     tr_content_salt_line_percent (const TrFormula     *formula);

/* Why a figure is not known. The lines are those of the mix and the finish,
 * each ingredient once. (element-type TrLineFigures) (transfer container) */
GPtrArray *tr_content_find_unknown    (const TrFormula      *formula,
                                       TrPart                part);
GPtrArray *tr_content_find_unpriced   (const TrFormula      *formula);

G_END_DECLS
