/* faults.c: what can be wrong with a piece
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "faults.h"

static const char *const ids[TR_N_FAULTS] = {
  [TR_FAULT_DENSE] = "dense",
  [TR_FAULT_BREAD_LIKE_CRUMB] = "bread-like-crumb",
  [TR_FAULT_FAT_POOLED] = "fat-pooled",
  [TR_FAULT_GUMMY] = "gummy",
  [TR_FAULT_LAYERS_MERGED] = "layers-merged",
  [TR_FAULT_SIDE_BURST] = "side-burst",
  [TR_FAULT_SHRUNK] = "shrunk",
  [TR_FAULT_DARK_OUTSIDE] = "dark-outside-raw-inside",
  [TR_FAULT_GREASY_BASE] = "greasy-base",
  [TR_FAULT_YEASTY] = "yeasty",
  [TR_FAULT_FLAT] = "flat",
};

const char *
tr_fault_id (TrFault fault)
{
  g_return_val_if_fail ((guint) fault < TR_N_FAULTS, NULL);

  return ids[fault];
}

int
tr_fault_from_id (const char *id)
{
  for (guint i = 0; i < TR_N_FAULTS; i++)
    if (g_strcmp0 (ids[i], id) == 0)
      return (int) i;

  return -1;
}
