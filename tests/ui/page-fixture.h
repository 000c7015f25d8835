/* page-fixture.h: one page in a window of its own, on a trial made for it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The trial has a dough for each shape and each way to give a turn, so that
 * every field can be reached. Its numbers are invented.
 */

#pragma once

#include "support.h"
#include "window/page.h"

G_BEGIN_DECLS

typedef GtkWidget *(*PageMaker) (void);

typedef struct
{
  TrDocument *document;
  GtkWindow *window;
  TrPage *page;
} PageFixture;

/* A window that shows that dough, drawn. */
void        page_set_up        (PageFixture *fixture,
                                PageMaker    make,
                                const char  *dough);
void        page_tear_down     (PageFixture *fixture);
const TrTrial *
            page_get_trial     (PageFixture *fixture);
/* A change that the page did not make itself. */
void        page_commit        (PageFixture *fixture,
                                TrTrial     *draft);

/* What the document holds there, as JSON text: "25", "\"250 g\"", "null". The
 * pointer is inside the page's dough, or "/bench/…", "/title". NULL: nothing. */
char       *page_dup_value     (PageFixture *fixture,
                                const char  *pointer);
/* Goes to the field, types as a hand would and stays there. */
GtkWidget  *page_type          (PageFixture *fixture,
                                const char  *pointer,
                                const char  *text);
/* The focus goes away from whatever has it. */
void        page_leave         (PageFixture *fixture);
/* As if that key were pressed on the focused field. TRUE: it was used. */
gboolean    page_press         (PageFixture *fixture,
                                guint        keyval);
GtkWidget  *page_get_focus     (PageFixture *fixture);
/* The field or row around the focus. */
GtkWidget  *page_get_around    (PageFixture *fixture,
                                GType        type);

#define page_assert_value(fixture, pointer, expected) \
  G_STMT_START { \
    g_autofree char *page_value_ = page_dup_value ((fixture), (pointer)); \
    g_assert_cmpstr (page_value_, ==, (expected)); \
  } G_STMT_END

G_END_DECLS
