/* branch.c: a new dough from the one a page shows
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "branch.h"

#include <glib/gi18n-lib.h>

#include "../calc/branch.h"
#include "../words/difference.h"

/* "“Quay crescents 2” comes from “Quay crescents”. Proof, temperature: 31 °C → 28 °C." */
static char *
dup_told (TrPage        *self,
          const TrTrial *trial,
          const TrDough *was,
          const TrDough *is)
{
  g_autoptr (GPtrArray) differences = tr_dough_differences (was, is);
  g_autofree char *name = tr_words_one_line (is->name), *from = tr_words_one_line (was->name);
  GString *out = g_string_new (NULL);

  g_string_append_printf (out, _("“%s” comes from “%s”."), name, from);
  for (guint i = 0; i < differences->len; i++)
    {
      g_autofree char *difference = tr_words_difference (tr_page_get_reader (self), trial->pantry, differences->pdata[i]);

      g_string_append_printf (out, " %s.", difference);
    }

  return g_string_free (out, FALSE);
}

static void
tell (TrPage     *self,
      const char *sentence)
{
  gtk_widget_activate_action (GTK_WIDGET (self), "win.notice", "s", sentence);
}

gboolean
tr_page_branch_dough (TrPage         *self,
                      const TrRemedy *remedy)
{
  g_return_val_if_fail (TR_IS_PAGE (self), FALSE);

  int index = tr_page_get_dough_index (self);

  if (index < 0)
    return FALSE;

  g_autoptr (TrDoughFigures) figures = tr_dough_figures_ref ((TrDoughFigures *) tr_page_get_figures (self));
  g_autoptr (TrTrial) draft = tr_document_draft (tr_page_get_document (self));
  g_autoptr (GError) error = NULL;
  g_autofree char *name = tr_trial_dup_next_name (draft, figures->dough->name);
  g_autofree char *label = g_strdup_printf (_("make a dough from %s"), figures->dough->name);
  g_autofree char *where = g_strdup_printf ("/doughs/%d", index + 1), *id = NULL;
  TrDough *branch = tr_trial_branch_dough (draft, (guint) index, name);

  if (branch == NULL)
    {
      g_autofree char *full = g_strdup_printf (_("A trial holds at most %d doughs; delete one, or carry some to a new trial."),
                                               TR_MAX_DOUGHS);

      tell (self, full);
      return FALSE;
    }
  if (remedy != NULL && !tr_remedy_apply (branch, figures, remedy, &error))
    {
      g_autofree char *why = tr_words_error (tr_page_get_reader (self), error);

      tell (self, why);
      return FALSE;
    }

  id = g_strdup (branch->id);
  g_autofree char *told = remedy != NULL ? dup_told (self, draft, figures->dough, branch) : NULL;

  if (!tr_page_commit (self, g_steal_pointer (&draft), label, NULL, where))
    return FALSE;
  gtk_widget_activate_action (GTK_WIDGET (self), "win.show-dough", "s", id);
  if (told != NULL)
    gtk_widget_activate_action (GTK_WIDGET (self), "win.told", "s", told);

  return TRUE;
}
