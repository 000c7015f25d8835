/* passes.h: from thick to thin, as it is read off at the rollers
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "../calc/passes.h"
#include "words.h"

G_BEGIN_DECLS

/* "Gaps 16 · 12.5 · 9 mm", with a pin "Guides …"; both ways "Gaps 22 · 15 mm; turned, 8 · 4 mm". NULL: no pass. */
char *tr_words_passes     (const TrReader *reader, const TrBench *bench, const TrPasses *passes);
/* Where their number comes from. */
char *tr_words_passes_why (const TrReader *reader, const TrBench *bench);
/* How the last block becomes the sheet: parted, turned, stretched; NULL: no sheet. */
char *tr_words_to_sheet     (const TrReader *reader, const TrDoughFigures *figures);
char *tr_words_sheet_passes (const TrReader *reader, const TrDoughFigures *figures);

G_END_DECLS
