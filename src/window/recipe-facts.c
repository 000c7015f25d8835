/* recipe-facts.c: what a recipe says of itself, to be changed
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "recipe-facts.h"

#include <glib/gi18n-lib.h>

#include "actions.h"
#include "section.h"

#define MAX_TITLE_CHARS 200
#define MAX_PIECES 10000

struct _TrRecipeFacts
{
  GtkWidget parent_instance;

  /* Children */
  GtkWidget *box;
  GtkWidget *which_fact;         /* hidden where the page has one recipe */
  GtkWidget *which;
  GtkWidget *title;
  GtkWidget *pieces;
  GtkWidget *kind;
  GtkWidget *yield;
  GtkWidget *remarks;

  /* Borrowed References */
  TrRecipe *recipe;              /* NULL: none */

  /* As the recipe was read */
  char *start_title;
  int start_pieces;
  TrKind start_kind;

  TrReader reader;
  guint index;
  guint is_showing : 1;
};

enum { INDEX_CHOSEN, N_SIGNALS };
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TrRecipeFacts, tr_recipe_facts, GTK_TYPE_WIDGET)

/* Showing */

static void
append_title (GtkStringList *titles,
              const char    *title)
{
  g_autofree char *line = tr_words_one_line (title);

  gtk_string_list_append (titles, *line != '\0' ? line : _("Untitled recipe"));
}

/* `others` are in the page's order, without this one. */
static void
show_which (TrRecipeFacts *self)
{
  g_autoptr (GtkStringList) titles = gtk_string_list_new (NULL);
  const GPtrArray *others = self->recipe->others;

  for (guint i = 0; i <= others->len; i++)
    append_title (titles, i == self->index ? self->recipe->title : g_ptr_array_index (others, i < self->index ? i : i - 1));
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->which), G_LIST_MODEL (titles));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->which), self->index);
  gtk_widget_set_visible (self->which_fact, others->len > 0);
}

static char *
dup_remarks (const TrRecipe *recipe)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < recipe->remarks->len; i++)
    g_string_append_printf (text, "%s%s", i > 0 ? "\n" : "", (const char *) g_ptr_array_index (recipe->remarks, i));

  return g_strdup (text->str);
}

static void
show (TrRecipeFacts *self)
{
  g_autofree char *title = tr_words_one_line (self->recipe->title);
  g_autofree char *pieces = self->recipe->pieces > 0 ? g_strdup_printf ("%d", self->recipe->pieces) : g_strdup ("");
  g_autofree char *yield = self->recipe->yield != NULL ? tr_words_one_line (self->recipe->yield) : NULL;

  self->is_showing = TRUE;
  show_which (self);
  gtk_editable_set_text (GTK_EDITABLE (self->title), title);
  gtk_editable_set_text (GTK_EDITABLE (self->pieces), pieces);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->kind), self->recipe->kind);
  tr_words_label_take (self->yield, yield != NULL ? g_strdup_printf (_("The recipe says “%s”."), yield) : NULL);
  tr_words_label_take (self->remarks, dup_remarks (self->recipe));
  self->is_showing = FALSE;
}

/* Taking */

static gboolean
is_idle (TrRecipeFacts *self)
{
  return !self->is_showing && self->recipe != NULL;
}

static void
which_selected_cb (TrRecipeFacts *self)
{
  guint selected = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->which));

  if (is_idle (self) && selected != GTK_INVALID_LIST_POSITION && selected != self->index)
    g_signal_emit (self, signals[INDEX_CHOSEN], 0, selected);
}

static void
title_changed_cb (TrRecipeFacts *self)
{
  if (is_idle (self))
    tr_set_text (&self->recipe->title, gtk_editable_get_text (GTK_EDITABLE (self->title)));
}

static void
pieces_changed_cb (TrRecipeFacts *self)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->pieces));
  double pieces = 0;

  if (!is_idle (self))
    return;

  gboolean is_read = *text == '\0' || (tr_words_read (&self->reader, TR_QUANTITY_WHOLE, text, &pieces, NULL) && pieces >= 1 && pieces <= MAX_PIECES);

  if (is_read)
    {
      self->recipe->pieces = (int) pieces;
      gtk_widget_remove_css_class (self->pieces, "error");
    }
  else
    gtk_widget_add_css_class (self->pieces, "error");
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->pieces), GTK_ACCESSIBLE_STATE_INVALID,
                               is_read ? GTK_ACCESSIBLE_INVALID_FALSE : GTK_ACCESSIBLE_INVALID_TRUE, -1);
}

static void
kind_selected_cb (TrRecipeFacts *self)
{
  guint selected = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->kind));

  if (is_idle (self) && selected < TR_N_KINDS)
    self->recipe->kind = (TrKind) selected;
}

/* What the reader has changed of this recipe is changed of that one. */
static void
carry (TrRecipeFacts *self,
       TrRecipe      *to)
{
  if (g_strcmp0 (self->recipe->title, self->start_title) != 0)
    tr_set_text (&to->title, self->recipe->title);
  if (self->recipe->pieces != self->start_pieces)
    to->pieces = self->recipe->pieces;
  if (self->recipe->kind != self->start_kind)
    to->kind = self->recipe->kind;
}

/* The widget */

static void
tr_recipe_facts_dispose (GObject *object)
{
  GtkWidget *child;

  TR_RECIPE_FACTS (object)->recipe = NULL;
  g_clear_pointer (&TR_RECIPE_FACTS (object)->start_title, g_free);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);

  G_OBJECT_CLASS (tr_recipe_facts_parent_class)->dispose (object);
}

static void
tr_recipe_facts_class_init (TrRecipeFactsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tr_recipe_facts_dispose;
  signals[INDEX_CHOSEN] = g_signal_new ("index-chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_UINT);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

/* Label and control stay together when the line breaks. */
static GtkWidget *
add_fact (GtkWidget  *row,
          const char *label,
          GtkWidget  *control)
{
  GtkWidget *fact = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *words = gtk_label_new_with_mnemonic (label);

  gtk_label_set_xalign (GTK_LABEL (words), 0);
  gtk_label_set_mnemonic_widget (GTK_LABEL (words), control);
  tr_name_by_mnemonic (control, label);
  gtk_box_append (GTK_BOX (fact), words);
  gtk_box_append (GTK_BOX (fact), control);
  gtk_widget_insert_before (fact, row, NULL);

  return fact;
}

static GtkWidget *
new_kinds (void)
{
  GtkStringList *kinds = gtk_string_list_new (NULL);

  for (TrKind kind = 0; kind < TR_N_KINDS; kind++)
    gtk_string_list_append (kinds, tr_words_kind (kind));

  return gtk_drop_down_new (G_LIST_MODEL (kinds), NULL);
}

static void
build_facts (TrRecipeFacts *self)
{
  GtkWidget *row = tr_fields_row_new ();

  self->which = gtk_drop_down_new (NULL, NULL);
  self->which_fact = add_fact (self->box, _("_Which recipe"), self->which);
  self->title = gtk_entry_new ();
  gtk_entry_set_max_length (GTK_ENTRY (self->title), MAX_TITLE_CHARS);
  gtk_widget_set_hexpand (self->title, TRUE);
  add_fact (self->box, _("Na_me"), self->title);
  self->pieces = gtk_entry_new ();
  gtk_editable_set_width_chars (GTK_EDITABLE (self->pieces), 6);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->pieces), 8);
  gtk_entry_set_input_purpose (GTK_ENTRY (self->pieces), GTK_INPUT_PURPOSE_DIGITS);
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->pieces), _("Not said"));
  add_fact (row, _("_Pieces"), self->pieces);
  self->kind = new_kinds ();
  add_fact (row, _("_Kind"), self->kind);
  self->yield = tr_words_label_new ("dim-label");
  gtk_widget_insert_before (self->yield, row, NULL);
  gtk_box_append (GTK_BOX (self->box), row);
}

static void
tr_recipe_facts_init (TrRecipeFacts *self)
{
  tr_reader_init_plain (&self->reader, TR_UNITS_METRIC);
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  build_facts (self);
  self->remarks = tr_words_label_new ("dim-label");
  gtk_box_append (GTK_BOX (self->box), self->remarks);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));

  g_signal_connect_swapped (self->which, "notify::selected", G_CALLBACK (which_selected_cb), self);
  g_signal_connect_swapped (self->title, "changed", G_CALLBACK (title_changed_cb), self);
  g_signal_connect_swapped (self->pieces, "changed", G_CALLBACK (pieces_changed_cb), self);
  g_signal_connect_swapped (self->kind, "notify::selected", G_CALLBACK (kind_selected_cb), self);
}

GtkWidget *
tr_recipe_facts_new (void)
{
  return g_object_new (TR_TYPE_RECIPE_FACTS, NULL);
}

void
tr_recipe_facts_set_reader (TrRecipeFacts  *self,
                            const TrReader *reader)
{
  g_return_if_fail (TR_IS_RECIPE_FACTS (self));
  g_return_if_fail (reader != NULL);

  self->reader = *reader;
}

void
tr_recipe_facts_set_recipe (TrRecipeFacts *self,
                            TrRecipe      *recipe,
                            guint          index,
                            gboolean       keeps)
{
  g_return_if_fail (TR_IS_RECIPE_FACTS (self));

  g_autofree char *title = recipe != NULL ? g_strdup (recipe->title) : NULL;
  int pieces = recipe != NULL ? recipe->pieces : 0;
  TrKind kind = recipe != NULL ? recipe->kind : (TrKind) 0;

  if (self->recipe != NULL && recipe != NULL && keeps)
    carry (self, recipe);
  tr_set_text (&self->start_title, title);
  self->start_pieces = pieces;
  self->start_kind = kind;
  self->recipe = recipe;
  self->index = recipe != NULL ? MIN (index, recipe->others->len) : 0;
  if (recipe != NULL)
    show (self);
}
