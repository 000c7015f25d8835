/* findings.c: what is wrong or worth knowing about a dough
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Looks at the figures from three sides and sorts what was found. No sentence
 * is made here, and nothing is a finding that a number does not show.
 */

#include "findings.h"

#include "look.h"

static const char *const finding_ids[TR_N_FINDINGS] = {
  "no-flour", "not-weighed", "lock-in-geometry", "turn-thicker", "no-piece", "amount", "too-thin", "too-long",
  "too-thick", "mixer", "salt", "band", "fat-layer", "stretch", "rest-short", "window-short", "freezing",
  "proof-hot", "printed-size", "printed-count", "butter-legal", "legal-minimum", "spoon-salt", "spoon-yeast",
  "loads", "cold-chain", "spare", "allergens"
};
static const char *const severity_ids[] = { "note", "warn", "stop" };

const char *
tr_finding_id (TrFindingId id)
{
  g_return_val_if_fail ((guint) id < TR_N_FINDINGS, NULL);

  return finding_ids[id];
}

const char *
tr_severity_id (TrSeverity severity)
{
  g_return_val_if_fail ((guint) severity < G_N_ELEMENTS (severity_ids), NULL);

  return severity_ids[severity];
}

void
tr_finding_free (TrFinding *finding)
{
  if (finding == NULL)
    return;

  g_free (finding->where);
  g_free (finding->name);
  g_free (finding);
}

/* The order in which members of a dough stand in the document; a number in
 * the pointer orders what stands in one list. */
static guint
document_order (const char *where)
{
  static const char *const members[] = {
    "/lines", "/pieces_written", "/batch", "/lock_in", "/turns", "/cut", "/method"
  };

  for (guint i = 0; i < G_N_ELEMENTS (members); i++)
    if (g_str_has_prefix (where, members[i]))
      {
        const char *number = strpbrk (where, "0123456789");
        guint64 index = number != NULL ? g_ascii_strtoull (number, NULL, 10) + 1 : 0;

        return (i + 1) * 100000 + (guint) MIN (index, 99999);
      }

  return 0;
}

static int
compare_findings (gconstpointer a,
                  gconstpointer b)
{
  const TrFinding *first = *(TrFinding *const *) a, *second = *(TrFinding *const *) b;
  guint order = document_order (first->where), other_order = document_order (second->where);

  if (first->severity != second->severity)
    return first->severity > second->severity ? -1 : 1;
  if (order != other_order)
    return order < other_order ? -1 : 1;

  return (int) first->id - (int) second->id;
}

GPtrArray *
tr_findings_compute (const TrDoughFigures *figures)
{
  GPtrArray *found = g_ptr_array_new_with_free_func ((GDestroyNotify) tr_finding_free);

  tr_look_at_formula (figures, found);
  tr_look_at_bench (figures, found);
  tr_look_at_method (figures, found);
  tr_look_at_rests (figures, found);
  g_ptr_array_sort (found, compare_findings);

  return found;
}
