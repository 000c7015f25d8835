/* cautions.c: where the work can hurt
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include <glib/gi18n-lib.h>

#include "../calc/look.h"
#include "cautions.h"

/* Above it what goes off may not stand for long: FDA Food Code 3-501.16. */
#define COLD_CHAIN_C 5

static gboolean
is_egg (const TrLineFigures *line)
{
  return tr_line_has_role (line, TR_ROLE_EGG);
}

const char *
tr_words_rollers_caution (void)
{
  return _("Keep hands, hair and sleeves away from moving rollers; switch off to clean.");
}

char *
tr_words_cautions (const TrReader       *reader,
                   const TrDoughFigures *figures)
{
  GString *text = g_string_new (NULL);
  g_autofree char *cold = tr_words_temperature (reader, COLD_CHAIN_C);

  g_string_append (text, _("Hot oven, hot trays and melted fat burn: use rimmed trays and dry gloves, let nothing drip on the oven floor. "));
  g_string_append (text, _("Raw flour and raw dough are not for eating, not for tasting. "));
  if (tr_look_find_line (figures, is_egg) >= 0)
    g_string_append (text, _("Raw egg: keep it cold, wash hands and brushes, bake through. "));
  g_string_append_printf (text, _("Keep egg, dairy, fillings and resting dough at %s or below. "), cold);
  g_string_append_printf (text, "%s ", tr_words_rollers_caution ());
  g_string_append (text, _("Local food-safety and workplace rules and licensed practice decide."));

  return g_string_free (text, FALSE);
}
