/* tasting.h: what the papers of a tasting share
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every page of score sheets and labels begins with the allergens of all
 * samples and what is to be asked first. Nothing on a score sheet or a label
 * tells which dough a code is.
 */

#pragma once

#include "../calc/serving.h"
#include "../words/tasting.h"
#include "card.h"

G_BEGIN_DECLS

#define TR_TASTING_MARGIN_PT 34.0

typedef struct {
  const TrFigures *figures;
  const TrReader *reader;
  TrLook look;
  double em, page_width, page_height, width, bottom;     /* bottom: of what is printed, inside the margins */
  GArray *samples;               /* guint, doughs */
  GPtrArray *pages;              /* TrPicture */
  TrPicture *content;            /* of the page that is being made, inside its margins */
} TrTastingPaper;

void       tr_tasting_paper_init       (TrTastingPaper  *paper,
                                        const TrFigures *figures,
                                        const TrReader  *reader,
                                        TrPaperSize      size);
/* Takes the pages. */
TrPages   *tr_tasting_paper_finish     (TrTastingPaper  *paper);
/* The next page, headed by that; returns where the rest may begin. `line` may be NULL. */
double     tr_tasting_paper_begin_page (TrTastingPaper  *paper,
                                        const char      *head,
                                        const char      *line);
/* Returns where the rest may begin. */
double     tr_tasting_paper_add_allergens (TrTastingPaper *paper,
                                           double          y);
/* With one line at its foot (NULL: none). */
void       tr_tasting_paper_end_page   (TrTastingPaper  *paper,
                                        const char      *foot);
/* "418"; without codes its letter. (transfer full) */
char      *tr_tasting_paper_dup_code   (const TrTastingPaper *paper,
                                        guint                 dough);
/* The samples in the order in which they say nothing: by code. (element-type guint) */
GArray    *tr_tasting_paper_sort_by_code (const TrTastingPaper *paper);

G_END_DECLS
