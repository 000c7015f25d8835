/* sheet-words.h: the sheet in words, beside its drawing
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each is a sentence of its own (transfer full); NULL: nothing to say.
 */

#pragma once

#include "../words/words.h"

G_BEGIN_DECLS

char *tr_sheet_words_dup_rolled  (const TrSheet *sheet, const TrReader *reader);
char *tr_sheet_words_dup_pieces  (const TrDoughFigures *figures, const TrReader *reader);
char *tr_sheet_words_dup_trays   (const TrTrays *trays, const TrReader *reader);
char *tr_sheet_words_dup_wound   (const TrSheet *sheet, const TrReader *reader);
char *tr_sheet_words_dup_printed (const TrSheet *sheet, const TrReader *reader);

G_END_DECLS
