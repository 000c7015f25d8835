/* figure-choice.c: one of the figures that can be compared, or something else
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "figure-choice.h"

#include "../words/comparison.h"

/* A name longer than that does not widen the page. */
#define MAX_CHARS 30

struct _TrFigureChoice
{
  GtkWidget parent_instance;

  /* Children */
  GtkWidget *box;

  /* Borrowed References */
  GtkWidget *label, *drop_down;
  const TrComparable *last;      /* below those offered; NULL: none, or not known */

  guint is_setting : 1;
};

enum { SIGNAL_CHOSEN, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TrFigureChoice, tr_figure_choice, GTK_TYPE_WIDGET)

static void
selected_cb (TrFigureChoice *self)
{
  if (!self->is_setting)
    g_signal_emit (self, signals[SIGNAL_CHOSEN], 0);
}

static gboolean
tr_figure_choice_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (TR_FIGURE_CHOICE (widget)->drop_down);
}

static void
tr_figure_choice_dispose (GObject *object)
{
  g_clear_pointer (&TR_FIGURE_CHOICE (object)->box, gtk_widget_unparent);

  G_OBJECT_CLASS (tr_figure_choice_parent_class)->dispose (object);
}

static void
tr_figure_choice_class_init (TrFigureChoiceClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tr_figure_choice_dispose;
  widget_class->grab_focus = tr_figure_choice_grab_focus;
  signals[SIGNAL_CHOSEN] = g_signal_new ("chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
setup_cb (GtkListItemFactory *factory,
          GtkListItem        *item)
{
  GtkWidget *label = gtk_label_new ("");

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_label_set_max_width_chars (GTK_LABEL (label), MAX_CHARS);
  gtk_list_item_set_child (item, label);
}

static void
bind_cb (GtkListItemFactory *factory,
         GtkListItem        *item)
{
  GtkStringObject *string = gtk_list_item_get_item (item);

  gtk_label_set_text (GTK_LABEL (gtk_list_item_get_child (item)), gtk_string_object_get_string (string));
}

static void
tr_figure_choice_init (TrFigureChoice *self)
{
  g_autoptr (GtkListItemFactory) factory = gtk_signal_list_item_factory_new ();
  GtkStringList *names = gtk_string_list_new (NULL);
  guint n;
  const TrComparable *comparables = tr_comparables_get_all (&n);

  gtk_string_list_append (names, "");
  for (guint i = 0; i < n; i++)
    gtk_string_list_take (names, tr_words_comparable_in_full (&comparables[i]));

  self->label = gtk_label_new ("");
  gtk_widget_set_halign (self->label, GTK_ALIGN_START);
  gtk_widget_add_css_class (self->label, "dim-label");
  self->drop_down = gtk_drop_down_new (G_LIST_MODEL (names), gtk_property_expression_new (GTK_TYPE_STRING_OBJECT, NULL, "string"));
  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), NULL);
  gtk_drop_down_set_factory (GTK_DROP_DOWN (self->drop_down), factory);
  gtk_drop_down_set_enable_search (GTK_DROP_DOWN (self->drop_down), TRUE);
  g_signal_connect_object (self->drop_down, "notify::selected", G_CALLBACK (selected_cb), self, G_CONNECT_SWAPPED);

  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_box_append (GTK_BOX (self->box), self->label);
  gtk_box_append (GTK_BOX (self->box), self->drop_down);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

GtkWidget *
tr_figure_choice_new (const char *label,
                      const char *other)
{
  TrFigureChoice *self = g_object_new (TR_TYPE_FIGURE_CHOICE, NULL);
  GtkStringList *names = GTK_STRING_LIST (gtk_drop_down_get_model (GTK_DROP_DOWN (self->drop_down)));

  self->is_setting = TRUE;
  gtk_string_list_splice (names, 0, 1, (const char *[]) { other, NULL });
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->drop_down), 0);
  self->is_setting = FALSE;
  gtk_label_set_text (GTK_LABEL (self->label), label);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->drop_down), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (self->drop_down), GTK_ACCESSIBLE_RELATION_LABELLED_BY, self->label, NULL, -1);

  return GTK_WIDGET (self);
}

const TrComparable *
tr_figure_choice_get (TrFigureChoice *self)
{
  g_return_val_if_fail (TR_IS_FIGURE_CHOICE (self), NULL);

  guint n, selected = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->drop_down));
  const TrComparable *comparables = tr_comparables_get_all (&n);

  if (selected == n + 1)
    return self->last;

  return selected > 0 && selected <= n ? &comparables[selected - 1] : NULL;
}

/* 0: the other; beyond the last of them: not among those offered. */
static guint
find_place (const TrComparable *comparable)
{
  guint n;
  const TrComparable *comparables = tr_comparables_get_all (&n);

  for (guint i = 0; comparable != NULL && i < n; i++)
    if (&comparables[i] == comparable)
      return i + 1;

  return comparable != NULL ? n + 1 : 0;
}

void
tr_figure_choice_choose (TrFigureChoice     *self,
                         const TrComparable *comparable)
{
  g_return_if_fail (TR_IS_FIGURE_CHOICE (self));

  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->drop_down), find_place (comparable));
}

/* Selected where there is one; NULL: there is none any more. */
static void
show_last (TrFigureChoice     *self,
           const TrComparable *last,
           const char         *name)
{
  GtkStringList *names = GTK_STRING_LIST (gtk_drop_down_get_model (GTK_DROP_DOWN (self->drop_down)));
  guint n, n_names = g_list_model_get_n_items (G_LIST_MODEL (names));

  tr_comparables_get_all (&n);
  self->last = last;
  /* NULL beyond the end of the list. */
  if (g_strcmp0 (gtk_string_list_get_string (names, n + 1), name) != 0)
    gtk_string_list_splice (names, n + 1, n_names - n - 1, name != NULL ? (const char *[]) { name, NULL } : NULL);
  if (name != NULL)
    gtk_drop_down_set_selected (GTK_DROP_DOWN (self->drop_down), n + 1);
}

void
tr_figure_choice_set (TrFigureChoice     *self,
                      const TrComparable *comparable)
{
  g_return_if_fail (TR_IS_FIGURE_CHOICE (self));

  guint n, place = find_place (comparable);
  g_autofree char *name = NULL;

  tr_comparables_get_all (&n);
  self->is_setting = TRUE;
  if (place > n)
    {
      name = tr_words_comparable_in_full (comparable);
      show_last (self, comparable, name);
    }
  else
    {
      /* First, or what is selected would be taken away. */
      gtk_drop_down_set_selected (GTK_DROP_DOWN (self->drop_down), place);
      show_last (self, NULL, NULL);
    }
  self->is_setting = FALSE;
}

void
tr_figure_choice_set_key (TrFigureChoice *self,
                          const char     *key)
{
  g_return_if_fail (TR_IS_FIGURE_CHOICE (self) && key != NULL);

  g_autofree char *name = tr_words_one_line (key);

  self->is_setting = TRUE;
  show_last (self, NULL, name);
  self->is_setting = FALSE;
}
