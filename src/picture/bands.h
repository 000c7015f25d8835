/* bands.h: a stack of bands in a box
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "shapes.h"

G_BEGIN_DECLS

/* Bands and where they lie; see tr_picture_add_bands. */
typedef struct {
  TrBands bands;
  TrBox box;
  double from, to;
  double thickness_um;           /* of the whole stack; NaN: not known */
} TrBandsPlace;

void  tr_bands_draw     (const TrBandsPlace *place, const TrLook *look, cairo_t *cr);
/* The band at the height `y`, from the top. */
int   tr_bands_find     (const TrBandsPlace *place, double y);
/* The box of one band; FALSE: it is not in view. */
gboolean tr_bands_get_box (const TrBandsPlace *place, int index, TrBox *box);
char *tr_bands_dup_text (const TrBandsPlace *place, const TrReader *reader, int index);

G_END_DECLS
