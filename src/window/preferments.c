/* preferments.c: a preferment added to the formula from the menu
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "preferments.h"

#include <glib/gi18n-lib.h>

#include "../words/content.h"
#include "lines.h"

/* `group`: what it is called in the formula until the baker says otherwise. */
static const struct { const char *add, *undo, *group, *usual; } preferments[TR_N_PREFERMENTS] = {
  [TR_PREFERMENT_POOLISH] = { N_("Add a poolish"), N_("add a poolish"), N_("poolish"),
                              N_("as much liquid as flour and a pinch of the yeast, overnight in the room") },
  [TR_PREFERMENT_SPONGE] = { N_("Add a sponge"), N_("add a sponge"), N_("sponge"), N_("a firm dough with some of the yeast, for a few hours") },
  [TR_PREFERMENT_STARTER] = { N_("Add a ripe starter"), N_("add a ripe starter"), N_("starter"),
                              N_("write its own hydration at the line; the yeast is left as it is") },
  [TR_PREFERMENT_OLD_DOUGH] = { N_("Add old dough"), N_("add old dough"), N_("old dough"),
                                N_("a fifth of flour, liquid, salt and yeast, kept from the day before") },
};

const char *
tr_preferment_say_add (TrPrefermentKind kind)
{
  g_return_val_if_fail (kind < TR_N_PREFERMENTS, NULL);

  return _(preferments[kind].add);
}

static void
tell (TrPage           *page,
      TrPrefermentKind  kind,
      const char       *group)
{
  /* Translators: a preferment, and what is usual for it. */
  g_autofree char *name = tr_words_preferment (group);
  g_autofree char *told = g_strdup_printf (_("Taken out of the dough; the totals stay. %s: %s."), name, _(preferments[kind].usual));

  gtk_widget_activate_action (GTK_WIDGET (page), "win.told", "s", told);
}

char *
tr_page_add_preferment (TrPage     *page,
                        const char *id)
{
  const TrDoughFigures *figures = tr_page_get_figures (page);
  int kind = tr_preferment_from_id (id), first;
  g_autoptr (GError) error = NULL;
  g_autofree char *group = NULL;
  TrTrial *draft;
  TrDough *dough;

  if (figures == NULL || kind < 0)
    return NULL;

  draft = tr_document_draft (tr_page_get_document (page));
  dough = tr_trial_own_dough (draft, (guint) tr_page_get_dough_index (page));
  group = tr_lines_dup_free_group (dough, _(preferments[kind].group));
  first = tr_preferment_add (dough, figures, (TrPrefermentKind) kind, group, &error);
  if (first < 0)
    {
      g_autofree char *why = tr_words_error (tr_page_get_reader (page), error);

      tr_trial_unref (draft);
      gtk_widget_activate_action (GTK_WIDGET (page), "win.notice", "s", why);
      return NULL;
    }
  if (!tr_page_commit (page, draft, _(preferments[kind].undo), NULL, "/lines"))
    return NULL;

  tell (page, (TrPrefermentKind) kind, group);

  return g_strdup_printf ("/lines/%d/amount", first);
}
