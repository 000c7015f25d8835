/* written-private.h: lists of what the baker wrote
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For written.c and written-*.c only: each list owns its members and copies them.
 */

#pragma once

#include "written.h"

GPtrArray *tr_list_copy (GPtrArray *list,
                         gpointer (*copier) (gconstpointer),
                         GDestroyNotify free_func);

#define COPY_LIST(list, name) \
  tr_list_copy ((list), (gpointer (*) (gconstpointer)) tr_##name##_copy, (GDestroyNotify) tr_##name##_free)
#define NEW_LIST(name) g_ptr_array_new_with_free_func ((GDestroyNotify) tr_##name##_free)
