/* place.h: a folder for one case, and a document in it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "trial/document.h"

G_BEGIN_DECLS

typedef struct {
  char *folder;
  char *path;                    /* of a saved sample */
  GFile *file;
} Place;

/* A fixture. */
void        place_set_up                 (Place *place, gconstpointer data);
void        place_tear_down              (Place *place, gconstpointer data);

char       *place_dup_path               (Place *place, const char *name);
void        place_put                    (const char *path, const char *text);
char       *place_get                    (const char *path);
GPtrArray  *place_list_names             (const char *folder);
void        place_assert_holds           (const char *path, const char *piece);
void        place_assert_n_files         (const char *folder, guint n);

TrDocument *document_open                (GFile *file);
void        document_set_title           (TrDocument *document, const char *title);
void        document_save                (TrDocument *document);
void        document_assert_save_refused (TrDocument *document, int code);

/* Runs one case of this program in a shell, for what only another process can
 * do; `before` goes before it on the command line. Returns the wait status. The
 * case asks place_is_child whether it is meant. */
int         place_run_case               (const char *before,
                                          const char *path,
                                          const char *folder,
                                          const char *file);
gboolean    place_is_child               (void);

G_END_DECLS
