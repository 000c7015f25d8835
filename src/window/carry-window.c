/* carry-window.c: which doughs go on into a new trial
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is chosen is kept by id, so that it outlasts an edit of the trial
 * behind this window.
 */

#include "config.h"

#include "carry-window.h"

#include <glib/gi18n-lib.h>

#include "../calc/branch.h"
#include "../words/words.h"
#include "actions.h"
#include "application.h"

struct _TrCarryWindow
{
  GtkWindow parent_instance;

  /* Borrowed References */
  GtkWidget *title, *list, *go;

  /* Owned References */
  TrDocument *document;
  GHashTable *chosen;            /* ids */
};

G_DEFINE_FINAL_TYPE (TrCarryWindow, tr_carry_window, GTK_TYPE_WINDOW)

/* What goes on *************************************************************/

/* A dough whose forebears stay behind keeps the name of the last in its notes. */
static void
note_origin (TrTrial       *carried,
             guint          index,
             const TrTrial *trial)
{
  TrDough *dough = tr_trial_get_dough (carried, index);
  int original = tr_trial_find_dough (trial, dough->id);
  int parent = original >= 0 ? tr_trial_find_parent (trial, (guint) original) : -1;

  if (dough->from != NULL || parent < 0)
    return;

  const char *name = tr_trial_get_dough (trial, (guint) parent)->name;
  g_autofree char *origin = *trial->title != '\0' ? g_strdup_printf (_("From “%s” of “%s”."), name, trial->title)
                                                  : g_strdup_printf (_("From “%s”."), name);
  g_autofree char *notes = dough->notes != NULL && *dough->notes != '\0' ? g_strdup_printf ("%s\n%s", dough->notes, origin)
                                                                         : g_strdup (origin);

  tr_set_text (&dough->notes, notes);
}

TrDocument *
tr_document_new_carried (TrDocument        *document,
                         const char *const *doughs,
                         const char        *title)
{
  g_return_val_if_fail (TR_IS_DOCUMENT (document), NULL);
  g_return_val_if_fail (doughs != NULL, NULL);

  const TrTrial *trial = tr_document_get_trial (document);
  TrTrial *carried = tr_trial_carry (trial, doughs, title);
  TrDocument *next = tr_document_new ();
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < carried->doughs->len; i++)
    note_origin (carried, i, trial);
  tr_document_commit (next, carried, _("carry doughs to a new trial"), NULL, "", &error);
  /* It is made of parts that were valid where they come from. */
  g_assert_no_error (error);

  return next;
}

/* Choosing *****************************************************************/

static char **
dup_chosen (TrCarryWindow *self)
{
  const TrTrial *trial = tr_document_get_trial (self->document);
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();

  for (guint i = 0; i < trial->doughs->len; i++)
    if (g_hash_table_contains (self->chosen, tr_trial_get_dough (trial, i)->id))
      g_strv_builder_add (builder, tr_trial_get_dough (trial, i)->id);

  return g_strv_builder_end (builder);
}

static void
update_go (TrCarryWindow *self)
{
  g_auto (GStrv) chosen = dup_chosen (self);

  gtk_widget_set_sensitive (self->go, chosen[0] != NULL);
}

static void
toggled_cb (TrCarryWindow  *self,
            GtkCheckButton *check)
{
  const char *id = g_object_get_data (G_OBJECT (check), "dough");

  if (gtk_check_button_get_active (check))
    g_hash_table_add (self->chosen, g_strdup (id));
  else
    g_hash_table_remove (self->chosen, id);
  update_go (self);
}

static void
add_check (TrCarryWindow *self,
           const TrDough *dough,
           guint          index)
{
  g_autofree char *letter = tr_words_letter (index), *name = tr_words_one_line (dough->name);
  /* Translators: a dough's letter and its name: "A, Overnight sponge" */
  g_autofree char *text = g_strdup_printf (_("%s, %s"), letter, name);
  GtkWidget *check = gtk_check_button_new (), *label = gtk_label_new (text);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 40);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_check_button_set_child (GTK_CHECK_BUTTON (check), label);
  gtk_accessible_update_property (GTK_ACCESSIBLE (check), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), g_hash_table_contains (self->chosen, dough->id));
  g_object_set_data_full (G_OBJECT (check), "dough", g_strdup (dough->id), g_free);
  g_signal_connect_object (check, "toggled", G_CALLBACK (toggled_cb), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (self->list), check);
}

static void
show (TrCarryWindow *self)
{
  const TrTrial *trial = tr_document_get_trial (self->document);
  GtkWidget *check;

  while ((check = gtk_widget_get_first_child (self->list)) != NULL)
    gtk_box_remove (GTK_BOX (self->list), check);
  for (guint i = 0; i < trial->doughs->len; i++)
    add_check (self, tr_trial_get_dough (trial, i), i);
  update_go (self);
}

static void
go_clicked_cb (TrCarryWindow *self)
{
  g_auto (GStrv) chosen = dup_chosen (self);
  GtkWindow *parent = gtk_window_get_transient_for (GTK_WINDOW (self));
  GtkApplication *application = parent != NULL ? gtk_window_get_application (parent) : NULL;
  g_autoptr (TrDocument) next = NULL;

  if (chosen[0] == NULL)
    return;

  next = tr_document_new_carried (self->document, (const char *const *) chosen,
                                  gtk_editable_get_text (GTK_EDITABLE (self->title)));
  if (TR_IS_APPLICATION (application))
    tr_application_show (TR_APPLICATION (application), next, NULL);
  gtk_window_destroy (GTK_WINDOW (self));
}

/* Building *****************************************************************/

static void
tr_carry_window_dispose (GObject *object)
{
  g_clear_object (&TR_CARRY_WINDOW (object)->document);

  G_OBJECT_CLASS (tr_carry_window_parent_class)->dispose (object);
}

static void
tr_carry_window_finalize (GObject *object)
{
  g_hash_table_unref (TR_CARRY_WINDOW (object)->chosen);

  G_OBJECT_CLASS (tr_carry_window_parent_class)->finalize (object);
}

static void
tr_carry_window_class_init (TrCarryWindowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tr_carry_window_dispose;
  G_OBJECT_CLASS (klass)->finalize = tr_carry_window_finalize;
}

static GtkWidget *
new_hint (void)
{
  GtkWidget *hint = gtk_label_new (_("They keep the bench and your ingredients. What was logged, predicted and tasted stays here."));

  gtk_label_set_xalign (GTK_LABEL (hint), 0);
  gtk_label_set_wrap (GTK_LABEL (hint), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (hint), 40);
  gtk_widget_add_css_class (hint, "dim-label");

  return hint;
}

static void
add_title (TrCarryWindow *self,
           GtkWidget     *box)
{
  const char *words = _("_Title of the new trial");
  GtkWidget *label = gtk_label_new_with_mnemonic (words);

  self->title = gtk_entry_new ();
  tr_name_by_mnemonic (self->title, words);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_mnemonic_widget (GTK_LABEL (label), self->title);
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), self->title);
}

static void
add_list (TrCarryWindow *self,
          GtkWidget     *box)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  self->list = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scrolled), 360);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), self->list);
  gtk_box_append (GTK_BOX (box), scrolled);
}

static void
tr_carry_window_init (TrCarryWindow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);

  self->chosen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  add_title (self, box);
  add_list (self, box);
  gtk_box_append (GTK_BOX (box), new_hint ());
  self->go = gtk_button_new_with_mnemonic (_("_Make the new trial"));
  gtk_widget_add_css_class (self->go, "suggested-action");
  gtk_widget_set_halign (self->go, GTK_ALIGN_END);
  g_signal_connect_swapped (self->go, "clicked", G_CALLBACK (go_clicked_cb), self);
  gtk_box_append (GTK_BOX (box), self->go);
  gtk_widget_add_css_class (box, "question");
  gtk_window_set_child (GTK_WINDOW (self), box);
  gtk_window_set_titlebar (GTK_WINDOW (self), gtk_header_bar_new ());
  gtk_window_set_title (GTK_WINDOW (self), _("Carry doughs to a new trial"));
  gtk_window_set_resizable (GTK_WINDOW (self), FALSE);
  gtk_window_set_default_widget (GTK_WINDOW (self), self->go);
  gtk_entry_set_activates_default (GTK_ENTRY (self->title), TRUE);
  gtk_widget_add_controller (GTK_WIDGET (self), tr_actions_new_close_key ());
}

GtkWidget *
tr_carry_window_new (GtkWindow  *parent,
                     TrDocument *document,
                     const char *dough)
{
  g_return_val_if_fail (parent == NULL || GTK_IS_WINDOW (parent), NULL);
  g_return_val_if_fail (TR_IS_DOCUMENT (document), NULL);

  TrCarryWindow *self = g_object_new (TR_TYPE_CARRY_WINDOW,
                                      "transient-for", parent,
                                      "destroy-with-parent", TRUE,
                                      NULL);

  self->document = g_object_ref (document);
  if (dough != NULL)
    g_hash_table_add (self->chosen, g_strdup (dough));
  g_autofree char *title = tr_trial_dup_next_name (tr_document_get_trial (document), tr_document_get_trial (document)->title);

  if (*tr_document_get_trial (document)->title != '\0')
    gtk_editable_set_text (GTK_EDITABLE (self->title), title);
  show (self);
  g_signal_connect_object (document, "changed", G_CALLBACK (show), self, G_CONNECT_SWAPPED);

  return GTK_WIDGET (self);
}
