/* faults.h: what can be wrong with a piece
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The trade's list, as it stands on a score sheet. The id is what stands in the
 * document.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum {
  TR_FAULT_DENSE,
  TR_FAULT_BREAD_LIKE_CRUMB,
  TR_FAULT_FAT_POOLED,
  TR_FAULT_GUMMY,
  TR_FAULT_LAYERS_MERGED,
  TR_FAULT_SIDE_BURST,
  TR_FAULT_SHRUNK,
  TR_FAULT_DARK_OUTSIDE,         /* and raw inside */
  TR_FAULT_GREASY_BASE,
  TR_FAULT_YEASTY,
  TR_FAULT_FLAT,
  TR_N_FAULTS
} TrFault;

const char *tr_fault_id      (TrFault     fault);     /* "fat-pooled" */
int         tr_fault_from_id (const char *id);        /* -1: none */

G_END_DECLS
