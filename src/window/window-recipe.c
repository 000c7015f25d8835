/* window-recipe.c: recipes, from outside into a trial
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Opens the review and does what the reader decides there. Nothing enters the
 * document before.
 */

#include "config.h"

#include "window-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "application.h"
#include "recipe-review.h"

#define SNIFFED_BYTES 512

gboolean
tr_window_is_trial_file (GFile *file)
{
  g_autofree char *name = g_file_get_basename (file);
  g_autoptr (GFileInputStream) stream = NULL;
  char start[SNIFFED_BYTES + 1] = "";
  gsize n_read = 0;

  if (name != NULL && g_str_has_suffix (name, ".tourier"))
    return TRUE;
  /* Opened, a pipe would wait for its other end. */
  if (g_file_query_file_type (file, G_FILE_QUERY_INFO_NONE, NULL) != G_FILE_TYPE_REGULAR)
    return FALSE;

  stream = g_file_read (file, NULL, NULL);
  if (stream == NULL || !g_input_stream_read_all (G_INPUT_STREAM (stream), start, SNIFFED_BYTES, &n_read, NULL, NULL))
    return FALSE;

  return g_strstr_len (start, (gssize) n_read, "\"tourier-trial\"") != NULL;
}

/* What was decided **********************************************************/

static void
add_cb (TrRecipeReview *review,
        TrWindow       *self)
{
  const TrRecipe *recipe = tr_recipe_review_get_recipe (review);
  g_autoptr (TrTrial) draft = tr_document_draft (self->document);
  g_autofree char *id = tr_trial_dup_free_id (draft);
  g_autofree char *where = g_strdup_printf ("/doughs/%u", draft->doughs->len);
  TrDough *dough = tr_recipe_make_dough (recipe, id);
  g_autofree char *label = g_strdup_printf (_("add the dough %s"), dough->name);
  g_autoptr (GError) error = NULL;

  g_ptr_array_add (draft->doughs, dough);
  if (!tr_document_commit (self->document, g_steal_pointer (&draft), label, NULL, where, &error))
    {
      tr_recipe_review_show_error (review, error->message);
      return;
    }

  tr_window_set_dough (self, id);
  gtk_window_destroy (GTK_WINDOW (review));
  gtk_window_present (GTK_WINDOW (self));
}

/* A step of its own in a new document: it is not saved anywhere, and closing asks. */
static void
make_trial_cb (TrRecipeReview *review,
               TrWindow       *self)
{
  g_autoptr (TrDocument) document = tr_document_new ();
  g_autoptr (TrTrial) draft = tr_recipe_make_trial (tr_recipe_review_get_recipe (review));
  g_autofree char *label = g_strdup_printf (_("add the dough %s"), tr_trial_get_dough (draft, 0)->name);
  g_autoptr (GError) error = NULL;

  if (!tr_document_commit (document, g_steal_pointer (&draft), label, NULL, "", &error))
    {
      tr_recipe_review_show_error (review, error->message);
      return;
    }

  gtk_window_destroy (GTK_WINDOW (review));
  tr_application_show (TR_APPLICATION (gtk_window_get_application (GTK_WINDOW (self))), document, self);
}

/* The review ****************************************************************/

/* One that is open; with `is_empty` only one that nothing has come into. NULL: none. */
static TrRecipeReview *
find_review (TrWindow *self,
             gboolean  is_empty)
{
  GListModel *toplevels = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (toplevels); i++)
    {
      g_autoptr (GtkWindow) toplevel = g_list_model_get_item (toplevels, i);

      if (TR_IS_RECIPE_REVIEW (toplevel) && gtk_window_get_transient_for (toplevel) == GTK_WINDOW (self)
          && (!is_empty || tr_recipe_review_is_empty (TR_RECIPE_REVIEW (toplevel))))
        return TR_RECIPE_REVIEW (toplevel);
    }

  return NULL;
}

/* What is being looked through is not replaced: another recipe gets a review of its own. */
static TrRecipeReview *
get_review (TrWindow *self,
            gboolean  is_empty)
{
  TrRecipeReview *review = find_review (self, is_empty);

  if (review == NULL)
    {
      review = TR_RECIPE_REVIEW (tr_recipe_review_new (GTK_WINDOW (self), &self->reader));
      g_signal_connect_object (review, "add", G_CALLBACK (add_cb), self, 0);
      g_signal_connect_object (review, "make-trial", G_CALLBACK (make_trial_cb), self, 0);
    }
  gtk_window_present (GTK_WINDOW (review));

  return review;
}

void
tr_window_read_recipe (TrWindow *self)
{
  get_review (self, FALSE);
}

void
tr_window_paste_recipe (TrWindow *self)
{
  tr_recipe_review_paste (get_review (self, TRUE));
}

void
tr_window_read_recipe_file (TrWindow *self,
                            GFile    *file)
{
  tr_recipe_review_read_file (get_review (self, TRUE), file);
}

void
tr_window_read_recipe_text (TrWindow   *self,
                            const char *text)
{
  tr_recipe_review_read_text (get_review (self, TRUE), text);
}
