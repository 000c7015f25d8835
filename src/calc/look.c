/* look.c: what every look at a dough's figures uses
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Finding a line, saying where something is, noting a finding. What is looked
 * for is in findings-formula.c, findings-bench.c and findings-method.c.
 */

#include "look.h"

#include "formula.h"
#include "measure.h"

TrFinding *
tr_look_add (GPtrArray   *found,
             TrFindingId  id,
             TrSeverity   severity,
             char        *where,
             double       value,
             double       limit,
             const char  *source)
{
  TrFinding *finding = g_new (TrFinding, 1);

  *finding = (TrFinding) {
    .id = id, .severity = severity, .where = where, .value = value, .limit = limit,
    .source = source, .with = { NAN, NAN, NAN, NAN },
  };
  g_ptr_array_add (found, finding);

  return finding;
}

const TrLineFigures *
tr_look_get_line (const TrDoughFigures *figures,
                  guint                 index)
{
  return tr_formula_get_line (&figures->formula, index);
}

int
tr_look_find_line (const TrDoughFigures *figures,
                   TrLineTest            test)
{
  for (guint i = 0; i < figures->formula.lines->len; i++)
    if (test (tr_look_get_line (figures, i)))
      return (int) i;

  return -1;
}

gboolean
tr_line_has_role (const TrLineFigures *line,
                  TrRole               role)
{
  return line->known && line->ingredient.role == role;
}

gboolean
tr_line_is_roll_in (const TrLineFigures *line)
{
  return line->line->stage == TR_STAGE_ROLL_IN;
}

gboolean
tr_line_is_leaven (const TrLineFigures *line)
{
  return tr_line_is_in_dough (line) && tr_line_has_role (line, TR_ROLE_LEAVEN);
}

gboolean
tr_line_is_starter (const TrLineFigures *line)
{
  return line->line->stage != TR_STAGE_FINISH && tr_line_has_role (line, TR_ROLE_STARTER);
}

char *
tr_look_line_pointer (int         index,
                      const char *member)
{
  return index < 0 ? g_strdup ("/lines") : g_strdup_printf ("/lines/%d/%s", index, member);
}

gboolean
tr_look_is_outside (double  value,
                    double  low,
                    double  high,
                    double *limit)
{
  *limit = value < low ? low : high;

  return value < low - TR_HAIR || value > high + TR_HAIR;
}
