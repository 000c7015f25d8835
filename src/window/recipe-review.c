/* recipe-review.c: a recipe looked through before it enters a trial
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Reading is done by another thread; each reading has a number, and an answer
 * that is not the newest's is dropped.
 *
 * Invariant: the facts and the lines shown are of `recipe` and go before it does.
 */

#include "config.h"

#include "recipe-review.h"

#include <glib/gi18n-lib.h>

#include "actions.h"
#include "held-viewports.h"
#include "recipe-facts.h"
#include "recipe-lines.h"
#include "recipe-read.h"
#include "recipe-source.h"
#include "section.h"

#define MAX_SHOWN_NOTES 20000    /* bytes; all of them go with the dough */

struct _TrRecipeReview
{
  GtkWindow parent_instance;

  /* Borrowed References */
  TrRecipeSource *source;
  GtkWidget *status;
  GtkWidget *body;               /* everything about a recipe that was understood */
  TrRecipeFacts *facts;
  TrRecipeLines *lines;
  GtkWidget *expander;
  GtkWidget *notes;
  GtkWidget *add;
  GtkWidget *make;

  /* Owned References */
  TrRecipe *recipe;              /* NULL: none was understood */
  GBytes *bytes;                 /* what it was read from */
  GFile *file;                   /* its file; NULL: text */
  GCancellable *cancellable;     /* of the reading that is on its way; NULL: none is */

  /* State */
  guint reading;                 /* the newest one's number */
  guint index;                   /* of the recipe in its page */
  guint is_edited : 1;           /* what is being read is the text of before, edited */
};

enum { ADD, MAKE_TRIAL, N_SIGNALS };
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TrRecipeReview, tr_recipe_review, GTK_TYPE_WINDOW)

/* What is shown ************************************************************/

static void
show_status (TrRecipeReview *self,
             const char     *sentence,
             gboolean        is_error)
{
  if (is_error)
    gtk_widget_add_css_class (self->status, "error");
  else
    gtk_widget_remove_css_class (self->status, "error");
  tr_words_label_set (self->status, sentence);
}

static void
show_ways (TrRecipeReview *self)
{
  /* Never what was read before the last key. */
  gboolean is_ready = self->recipe != NULL && self->cancellable == NULL && !tr_recipe_source_is_typing (self->source);

  gtk_widget_set_sensitive (self->add, is_ready);
  gtk_widget_set_sensitive (self->make, is_ready);
}

/* Notes ********************************************************************/

static char *
dup_notes (const TrRecipe *recipe)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < recipe->notes->len && text->len < MAX_SHOWN_NOTES; i++)
    {
      g_autofree char *line = tr_words_one_line (((const TrRecipeNote *) g_ptr_array_index (recipe->notes, i))->text);

      g_string_append_printf (text, "%s%s", i > 0 ? "\n" : "", line);
    }
  if (text->len <= MAX_SHOWN_NOTES)
    return g_strdup (text->str);

  g_string_truncate (text, (gsize) (g_utf8_find_prev_char (text->str, text->str + MAX_SHOWN_NOTES) - text->str));

  return g_strconcat (text->str, "…", NULL);
}

static void
show_notes (TrRecipeReview *self)
{
  g_autofree char *notes = dup_notes (self->recipe);
  g_autofree char *label = g_strdup_printf (ngettext ("Method and notes: %u line", "Method and notes: %u lines", self->recipe->notes->len),
                                            self->recipe->notes->len);

  gtk_expander_set_label (GTK_EXPANDER (self->expander), label);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->expander), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  gtk_widget_set_visible (self->expander, self->recipe->notes->len > 0);
  gtk_label_set_text (GTK_LABEL (self->notes), notes);
}

static void
set_recipe (TrRecipeReview *self,
            TrRecipe       *recipe)
{
  gboolean keeps = tr_recipe_lines_set_recipe (self->lines, recipe, self->is_edited);

  tr_recipe_facts_set_recipe (self->facts, recipe, self->index, keeps);
  g_clear_pointer (&self->recipe, tr_recipe_free);
  self->recipe = recipe;
  gtk_widget_set_visible (self->body, recipe != NULL);
  if (recipe != NULL)
    show_notes (self);
}

/* Reading ******************************************************************/

typedef struct {
  GWeakRef review;
  guint number;
} Reply;

static void
reply_free (Reply *reply)
{
  g_weak_ref_clear (&reply->review);
  g_free (reply);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Reply, reply_free)

static Reply *
reply_new (TrRecipeReview *self)
{
  Reply *reply = g_new0 (Reply, 1);

  g_weak_ref_init (&reply->review, self);
  reply->number = self->reading;

  return reply;
}

static void
read_cb (GObject      *source,
         GAsyncResult *result,
         gpointer      user_data)
{
  g_autoptr (Reply) reply = user_data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (TrRecipe) recipe = tr_recipe_read_finish (result, &bytes, &error);
  g_autoptr (TrRecipeReview) self = g_weak_ref_get (&reply->review);

  /* The window is gone, or something else is being read by now. */
  if (self == NULL || self->cancellable == NULL || reply->number != self->reading)
    return;

  g_clear_object (&self->cancellable);
  if (self->file != NULL && self->bytes == NULL && bytes != NULL)
    tr_recipe_source_show_file (self->source, self->file, bytes, recipe != NULL && recipe->source == TR_RECIPE_FROM_TEXT);
  g_clear_pointer (&self->bytes, g_bytes_unref);
  self->bytes = g_steal_pointer (&bytes);
  set_recipe (self, g_steal_pointer (&recipe));
  show_status (self, error != NULL ? error->message : NULL, error != NULL);
  show_ways (self);
}

static void
stop_reading (TrRecipeReview *self)
{
  g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
}

static void
start_reading (TrRecipeReview *self,
               guint           index)
{
  stop_reading (self);
  self->cancellable = g_cancellable_new ();
  self->reading++;
  self->index = index;
  tr_recipe_read_async (self->bytes, self->file, index, self->cancellable, read_cb, reply_new (self));
  show_status (self, _("Reading…"), FALSE);
  show_ways (self);
}

static void
take_bytes (TrRecipeReview *self,
            GBytes         *bytes,
            GFile          *file)
{
  g_clear_pointer (&self->bytes, g_bytes_unref);
  self->bytes = bytes;
  g_set_object (&self->file, file);
  self->is_edited = FALSE;
  start_reading (self, 0);
}

/* What the source holds has changed; NULL: nothing is in it. */
static void
text_changed_cb (TrRecipeReview *self,
                 GBytes         *bytes)
{
  if (bytes != NULL)
    {
      take_bytes (self, g_bytes_ref (bytes), NULL);
      self->is_edited = TRUE;
      return;
    }

  stop_reading (self);
  g_clear_pointer (&self->bytes, g_bytes_unref);
  g_clear_object (&self->file);
  set_recipe (self, NULL);
  show_status (self, NULL, FALSE);
  show_ways (self);
}

static void
index_chosen_cb (TrRecipeReview *self,
                 guint           index)
{
  self->is_edited = FALSE;
  if (self->bytes != NULL)
    start_reading (self, index);
}

void
tr_recipe_review_read_text (TrRecipeReview *self,
                            const char     *text)
{
  g_return_if_fail (TR_IS_RECIPE_REVIEW (self));
  g_return_if_fail (text != NULL);

  tr_recipe_source_show_text (self->source, text);
  take_bytes (self, g_bytes_new (text, strlen (text)), NULL);
}

void
tr_recipe_review_read_file (TrRecipeReview *self,
                            GFile          *file)
{
  g_return_if_fail (TR_IS_RECIPE_REVIEW (self));
  g_return_if_fail (G_IS_FILE (file));

  tr_recipe_source_show_text (self->source, "");
  take_bytes (self, NULL, file);
}

static void
take_pasted (TrRecipeReview *self,
             const char     *text)
{
  if (text != NULL)
    tr_recipe_review_read_text (self, text);
  else
    show_status (self, _("There is no text on the clipboard. Copy the recipe first, or open its file."), TRUE);
}

static void
pasted_cb (GObject      *source,
           GAsyncResult *result,
           gpointer      user_data)
{
  g_autoptr (Reply) reply = user_data;
  g_autofree char *text = gdk_clipboard_read_text_finish (GDK_CLIPBOARD (source), result, NULL);
  g_autoptr (TrRecipeReview) self = g_weak_ref_get (&reply->review);

  if (self != NULL && !gtk_widget_in_destruction (GTK_WIDGET (self)))
    take_pasted (self, text);
}

static gboolean
has_text (GdkClipboard *clipboard)
{
  g_autoptr (GdkContentFormats) formats =
    gdk_content_formats_union_deserialize_gtypes (gdk_content_formats_ref (gdk_clipboard_get_formats (clipboard)));

  return gdk_content_formats_contain_gtype (formats, G_TYPE_STRING);
}

void
tr_recipe_review_paste (TrRecipeReview *self)
{
  g_return_if_fail (TR_IS_RECIPE_REVIEW (self));

  GdkClipboard *clipboard = gtk_widget_get_clipboard (GTK_WIDGET (self));

  /* GTK 4.8 loses its task when there is nothing to read. */
  if (has_text (clipboard))
    gdk_clipboard_read_text_async (clipboard, NULL, pasted_cb, reply_new (self));
  else
    take_pasted (self, NULL);
}

gboolean
tr_recipe_review_is_empty (TrRecipeReview *self)
{
  g_return_val_if_fail (TR_IS_RECIPE_REVIEW (self), TRUE);

  return self->bytes == NULL && self->file == NULL && self->cancellable == NULL && tr_recipe_source_is_empty (self->source);
}

gboolean
tr_recipe_review_is_reading (TrRecipeReview *self)
{
  g_return_val_if_fail (TR_IS_RECIPE_REVIEW (self), FALSE);

  return self->cancellable != NULL;
}

const TrRecipe *
tr_recipe_review_get_recipe (TrRecipeReview *self)
{
  g_return_val_if_fail (TR_IS_RECIPE_REVIEW (self), NULL);

  return self->recipe;
}

const char *
tr_recipe_review_get_status (TrRecipeReview *self)
{
  g_return_val_if_fail (TR_IS_RECIPE_REVIEW (self), NULL);

  return gtk_widget_get_visible (self->status) ? gtk_label_get_text (GTK_LABEL (self->status)) : NULL;
}

void
tr_recipe_review_show_error (TrRecipeReview *self,
                             const char     *sentence)
{
  g_return_if_fail (TR_IS_RECIPE_REVIEW (self));
  g_return_if_fail (sentence != NULL);

  show_status (self, sentence, TRUE);
}

/* Ways on ******************************************************************/

/* What is being typed in a field is committed when it is left. */
static void
settle_focus (TrRecipeReview *self)
{
  gtk_window_set_focus (GTK_WINDOW (self), NULL);
}

static void
add_clicked_cb (TrRecipeReview *self)
{
  settle_focus (self);
  g_signal_emit (self, signals[ADD], 0);
}

static void
make_clicked_cb (TrRecipeReview *self)
{
  settle_focus (self);
  g_signal_emit (self, signals[MAKE_TRIAL], 0);
}

static gboolean
dropped_cb (GtkDropTarget  *target,
            const GValue   *value,
            double          x,
            double          y,
            TrRecipeReview *self)
{
  if (G_VALUE_HOLDS_STRING (value))
    {
      tr_recipe_review_read_text (self, g_value_get_string (value));
      return TRUE;
    }

  g_autoptr (GSList) files = gdk_file_list_get_files (g_value_get_boxed (value));

  if (files != NULL)
    tr_recipe_review_read_file (self, files->data);

  return files != NULL;
}

/* Building *****************************************************************/

static void
tr_recipe_review_dispose (GObject *object)
{
  TrRecipeReview *self = TR_RECIPE_REVIEW (object);

  stop_reading (self);
  if (self->recipe != NULL)
    {
      tr_recipe_lines_set_recipe (self->lines, NULL, FALSE);
      tr_recipe_facts_set_recipe (self->facts, NULL, 0, FALSE);
    }
  g_clear_pointer (&self->recipe, tr_recipe_free);
  g_clear_pointer (&self->bytes, g_bytes_unref);
  g_clear_object (&self->file);

  G_OBJECT_CLASS (tr_recipe_review_parent_class)->dispose (object);
}

static void
tr_recipe_review_class_init (TrRecipeReviewClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tr_recipe_review_dispose;
  signals[ADD] = g_signal_new ("add", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[MAKE_TRIAL] = g_signal_new ("make-trial", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static GtkWidget *
new_way (TrRecipeReview *self,
         GtkWidget      *box,
         const char     *label,
         GCallback       callback)
{
  GtkWidget *button = gtk_button_new_with_mnemonic (label);

  tr_name_by_mnemonic (button, label);
  g_signal_connect_swapped (button, "clicked", callback, self);
  gtk_widget_insert_before (button, box, NULL);

  return button;
}

static GtkWidget *
new_ways (TrRecipeReview *self)
{
  GtkWidget *ways = tr_fields_row_new ();

  self->add = new_way (self, ways, _("_Add to this trial"), G_CALLBACK (add_clicked_cb));
  gtk_widget_add_css_class (self->add, "suggested-action");
  self->make = new_way (self, ways, _("Make a _new trial"), G_CALLBACK (make_clicked_cb));
  new_way (self, ways, _("_Cancel"), G_CALLBACK (gtk_window_close));
  gtk_widget_add_css_class (ways, "ways");

  return ways;
}

static void
build_body (TrRecipeReview *self,
            GtkWidget      *column)
{
  self->body = gtk_box_new (GTK_ORIENTATION_VERTICAL, 18);
  gtk_widget_set_visible (self->body, FALSE);
  gtk_box_append (GTK_BOX (column), self->body);

  self->facts = TR_RECIPE_FACTS (tr_recipe_facts_new ());
  g_signal_connect_swapped (self->facts, "index-chosen", G_CALLBACK (index_chosen_cb), self);
  gtk_box_append (GTK_BOX (tr_column_add_section (self->body, _("Recipe"))), GTK_WIDGET (self->facts));

  self->lines = TR_RECIPE_LINES (tr_recipe_lines_new ());
  gtk_box_append (GTK_BOX (tr_column_add_section (self->body, _("Line by line"))), GTK_WIDGET (self->lines));

  self->expander = gtk_expander_new (NULL);
  self->notes = gtk_label_new ("");
  gtk_label_set_xalign (GTK_LABEL (self->notes), 0);
  gtk_label_set_wrap (GTK_LABEL (self->notes), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (self->notes), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_selectable (GTK_LABEL (self->notes), TRUE);
  gtk_expander_set_child (GTK_EXPANDER (self->expander), self->notes);
  gtk_box_append (GTK_BOX (self->body), self->expander);
}

static void
accept_drops (TrRecipeReview *self)
{
  GType types[] = { GDK_TYPE_FILE_LIST, G_TYPE_STRING };
  GtkDropTarget *target = gtk_drop_target_new (G_TYPE_INVALID, GDK_ACTION_COPY);

  gtk_drop_target_set_gtypes (target, types, G_N_ELEMENTS (types));
  /* Before the text: it would take a file for its name. */
  gtk_event_controller_set_propagation_phase (GTK_EVENT_CONTROLLER (target), GTK_PHASE_CAPTURE);
  g_signal_connect (target, "drop", G_CALLBACK (dropped_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (target));
}

static void
tr_recipe_review_init (TrRecipeReview *self)
{
  GtkWidget *scroller, *column = tr_column_new (&scroller);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  tr_hold_viewports (GTK_WINDOW (self));
  self->source = TR_RECIPE_SOURCE (tr_recipe_source_new ());
  g_signal_connect_swapped (self->source, "typing", G_CALLBACK (show_ways), self);
  g_signal_connect_swapped (self->source, "changed", G_CALLBACK (text_changed_cb), self);
  g_signal_connect_swapped (self->source, "paste", G_CALLBACK (tr_recipe_review_paste), self);
  g_signal_connect_swapped (self->source, "file", G_CALLBACK (tr_recipe_review_read_file), self);
  gtk_box_append (GTK_BOX (column), GTK_WIDGET (self->source));
  self->status = tr_words_label_new (NULL);
  gtk_box_append (GTK_BOX (column), self->status);
  build_body (self, column);

  gtk_box_append (GTK_BOX (box), scroller);
  gtk_box_append (GTK_BOX (box), gtk_separator_new (GTK_ORIENTATION_HORIZONTAL));
  gtk_box_append (GTK_BOX (box), new_ways (self));
  gtk_window_set_child (GTK_WINDOW (self), box);
  gtk_window_set_titlebar (GTK_WINDOW (self), gtk_header_bar_new ());
  gtk_window_set_title (GTK_WINDOW (self), _("Read a recipe"));
  gtk_window_set_default_size (GTK_WINDOW (self), 940, 700);
  gtk_widget_add_controller (GTK_WIDGET (self), tr_actions_new_close_key ());
  accept_drops (self);
  show_ways (self);
}

GtkWidget *
tr_recipe_review_new (GtkWindow      *parent,
                      const TrReader *reader)
{
  g_return_val_if_fail (parent == NULL || GTK_IS_WINDOW (parent), NULL);
  g_return_val_if_fail (reader != NULL, NULL);

  TrRecipeReview *self = g_object_new (TR_TYPE_RECIPE_REVIEW, "transient-for", parent, "destroy-with-parent", TRUE, NULL);

  tr_recipe_facts_set_reader (self->facts, reader);
  tr_recipe_lines_set_reader (self->lines, reader);

  return GTK_WIDGET (self);
}
