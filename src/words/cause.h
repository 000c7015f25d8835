/* cause.h: what the tasters found, what points there, and what would mend it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "../calc/causes.h"
#include "words.h"

G_BEGIN_DECLS

/* "Fat pooled, three of four tasters" (transfer full) */
char *tr_words_complaint (const TrReader       *reader,
                          const TrComplaint    *complaint);
/* "Fat pooled, three of four tasters: proof at 31 °C; this butter should stay at
 * 28 °C or less."; without a complaint only what points: "Proof at 31 °C; …". */
char *tr_words_cause     (const TrReader       *reader,
                          const TrDoughFigures *figures,
                          const TrComplaint    *complaint,
                          const TrCause        *cause);
/* That no number points anywhere; the complaint may be NULL here too. */
char *tr_words_no_cause  (const TrReader       *reader,
                          const TrComplaint    *complaint);
/* What to be careful of with that complaint; NULL: nothing. */
const char *
      tr_words_caution   (guint                 complaint);
/* For a button: "Proof at 28 °C". NULL: there is none. */
char *tr_words_remedy    (const TrReader       *reader,
                          const TrRemedy       *remedy);

G_END_DECLS
