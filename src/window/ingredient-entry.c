/* ingredient-entry.c: an ingredient, typed or chosen
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The list never takes the focus: the text keeps it, so that typing, choosing
 * and going on are one movement.
 *
 * Invariant: `shown_id` and `shown_text` are what the document holds; as long
 * as set_value brings the same, what is being typed is left alone.
 */

#include "config.h"

#include "ingredient-entry.h"

#include <glib/gi18n-lib.h>

#include "ingredient-find.h"
#include "section.h"

struct _TrIngredientEntry
{
  GtkWidget parent_instance;

  /* Children */
  GtkWidget *entry;
  GtkWidget *popover;
  GtkWidget *list;

  /* Owned */
  TrPantry *pantry;
  char **offers;                 /* ids, as in the list */
  char *shown_id;
  char *shown_text;

  guint is_setting : 1;
  guint is_edited : 1;
  guint has_shown : 1;
};

enum { COMMITTED, N_SIGNALS };
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TrIngredientEntry, tr_ingredient_entry, GTK_TYPE_WIDGET)

/* The list */

static void
close_list (TrIngredientEntry *self)
{
  gtk_popover_popdown (GTK_POPOVER (self->popover));
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_STATE_EXPANDED, FALSE, -1);
}

static gboolean
is_open (TrIngredientEntry *self)
{
  return gtk_widget_get_visible (self->popover);
}

static GtkWidget *
new_offer (TrIngredientEntry *self,
           const char        *id)
{
  g_autofree char *name = tr_ingredient_dup_name (self->pantry, id);
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *label = gtk_label_new (name);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_box_append (GTK_BOX (box), label);
  if (tr_ingredient_is_own (self->pantry, id))
    {
      GtkWidget *own = gtk_label_new (_("yours"));

      gtk_widget_add_css_class (own, "dim-label");
      gtk_box_append (GTK_BOX (box), own);
    }
  gtk_widget_set_margin_start (box, 6);
  gtk_widget_set_margin_end (box, 6);
  gtk_widget_set_margin_top (box, 3);
  gtk_widget_set_margin_bottom (box, 3);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  gtk_widget_set_focusable (row, FALSE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);

  return row;
}

static void
fill_list (TrIngredientEntry *self)
{
  GtkWidget *row;

  while ((row = gtk_widget_get_first_child (self->list)) != NULL)
    gtk_list_box_remove (GTK_LIST_BOX (self->list), row);
  for (guint i = 0; self->offers[i] != NULL; i++)
    gtk_list_box_append (GTK_LIST_BOX (self->list), new_offer (self, self->offers[i]));
  gtk_list_box_select_row (GTK_LIST_BOX (self->list), gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), 0));
}

static void
offer (TrIngredientEntry *self)
{
  g_strfreev (self->offers);
  self->offers = tr_ingredient_find (self->pantry, gtk_editable_get_text (GTK_EDITABLE (self->entry)));

  if (self->offers[0] == NULL || !gtk_widget_get_mapped (GTK_WIDGET (self)))
    {
      close_list (self);
      return;
    }

  fill_list (self);
  gtk_widget_set_size_request (self->list, gtk_widget_get_width (GTK_WIDGET (self)), -1);
  gtk_popover_popup (GTK_POPOVER (self->popover));
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_STATE_EXPANDED, TRUE, -1);
}

static gboolean
choose_next (TrIngredientEntry *self,
             int                by)
{
  if (!is_open (self))
    {
      offer (self);
      return is_open (self);
    }

  GtkListBoxRow *selected = gtk_list_box_get_selected_row (GTK_LIST_BOX (self->list));
  int index = selected != NULL ? gtk_list_box_row_get_index (selected) + by : 0;
  GtkListBoxRow *row = gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), index);

  if (row != NULL && index >= 0)
    gtk_list_box_select_row (GTK_LIST_BOX (self->list), row);

  return TRUE;
}

/* Taking */

static void
set_entry_text (TrIngredientEntry *self,
                const char        *text)
{
  if (g_str_equal (gtk_editable_get_text (GTK_EDITABLE (self->entry)), text))
    return;

  self->is_setting = TRUE;
  gtk_editable_set_text (GTK_EDITABLE (self->entry), text);
  /* Seen from its start, unless somebody is at its end. */
  gtk_editable_set_position (GTK_EDITABLE (self->entry), gtk_widget_has_focus (GTK_WIDGET (gtk_editable_get_delegate (GTK_EDITABLE (self->entry)))) ? -1 : 0);
  self->is_setting = FALSE;
}

static void
commit (TrIngredientEntry *self,
        const char        *id,
        const char        *text)
{
  g_autofree char *own_id = g_strdup (id);
  g_autofree char *own_text = g_strdup (text);

  close_list (self);
  self->is_edited = FALSE;
  if (own_id != NULL)
    {
      g_autofree char *name = tr_ingredient_dup_name (self->pantry, own_id);

      set_entry_text (self, name);
    }
  g_signal_emit (self, signals[COMMITTED], 0, own_id, own_text);
}

static gboolean
accept (TrIngredientEntry *self)
{
  GtkListBoxRow *row = gtk_list_box_get_selected_row (GTK_LIST_BOX (self->list));

  if (!is_open (self) || row == NULL)
    return FALSE;

  commit (self, self->offers[gtk_list_box_row_get_index (row)], NULL);

  return TRUE;
}

static void
settle (TrIngredientEntry *self)
{
  close_list (self);
  if (!self->is_edited)
    return;

  g_autofree char *typed = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->entry))));
  const char *id = tr_ingredient_find_exactly (self->pantry, typed);

  commit (self, id, id != NULL ? NULL : typed);
}

static gboolean
restore (TrIngredientEntry *self)
{
  if (is_open (self))
    {
      close_list (self);
      return TRUE;
    }
  if (!self->is_edited)
    return FALSE;

  g_autofree char *name = self->shown_id != NULL ? tr_ingredient_dup_name (self->pantry, self->shown_id) : g_strdup (self->shown_text);

  set_entry_text (self, name != NULL ? name : "");
  self->is_edited = FALSE;

  return TRUE;
}

/* Signals of the parts */

static void
changed_cb (GtkEditable       *editable,
            TrIngredientEntry *self)
{
  if (self->is_setting)
    return;

  self->is_edited = TRUE;
  offer (self);
}

static void
focus_left_cb (GtkEventControllerFocus *controller,
               TrIngredientEntry       *self)
{
  settle (self);
}

static void
row_activated_cb (GtkListBox        *list,
                  GtkListBoxRow     *row,
                  TrIngredientEntry *self)
{
  gtk_list_box_select_row (list, row);
  accept (self);
}

static gboolean
key_pressed_cb (GtkEventControllerKey *controller,
                guint                  keyval,
                guint                  keycode,
                GdkModifierType        state,
                TrIngredientEntry     *self)
{
  if ((state & (GDK_CONTROL_MASK | GDK_ALT_MASK)) != 0)
    return FALSE;

  switch (keyval)
    {
    case GDK_KEY_Down:
    case GDK_KEY_KP_Down:
      return choose_next (self, 1);
    case GDK_KEY_Up:
    case GDK_KEY_KP_Up:
      return is_open (self) && choose_next (self, -1);
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
      return accept (self);
    case GDK_KEY_Tab:
      accept (self);             /* and go on */
      return FALSE;
    case GDK_KEY_Escape:
      return restore (self);
    default:
      return FALSE;
    }
}

/* The widget */

static void
tr_ingredient_entry_measure (GtkWidget      *widget,
                             GtkOrientation  orientation,
                             int             for_size,
                             int            *minimum,
                             int            *natural,
                             int            *minimum_baseline,
                             int            *natural_baseline)
{
  gtk_widget_measure (TR_INGREDIENT_ENTRY (widget)->entry, orientation, for_size,
                      minimum, natural, minimum_baseline, natural_baseline);
}

static void
tr_ingredient_entry_size_allocate (GtkWidget *widget,
                                   int        width,
                                   int        height,
                                   int        baseline)
{
  TrIngredientEntry *self = TR_INGREDIENT_ENTRY (widget);

  gtk_widget_size_allocate (self->entry, &(GtkAllocation) { 0, 0, width, height }, baseline);
  gtk_popover_present (GTK_POPOVER (self->popover));
}

static gboolean
tr_ingredient_entry_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (TR_INGREDIENT_ENTRY (widget)->entry);
}

static void
tr_ingredient_entry_dispose (GObject *object)
{
  TrIngredientEntry *self = TR_INGREDIENT_ENTRY (object);

  if (self->entry != NULL)
    {
      g_signal_handlers_disconnect_by_data (self->entry, self);
      g_signal_handlers_disconnect_by_data (self->list, self);
    }
  g_clear_pointer (&self->popover, gtk_widget_unparent);
  g_clear_pointer (&self->entry, gtk_widget_unparent);
  g_clear_pointer (&self->pantry, tr_pantry_unref);

  G_OBJECT_CLASS (tr_ingredient_entry_parent_class)->dispose (object);
}

static void
tr_ingredient_entry_finalize (GObject *object)
{
  TrIngredientEntry *self = TR_INGREDIENT_ENTRY (object);

  g_strfreev (self->offers);
  g_free (self->shown_id);
  g_free (self->shown_text);

  G_OBJECT_CLASS (tr_ingredient_entry_parent_class)->finalize (object);
}

static void
tr_ingredient_entry_class_init (TrIngredientEntryClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = tr_ingredient_entry_dispose;
  object_class->finalize = tr_ingredient_entry_finalize;
  widget_class->measure = tr_ingredient_entry_measure;
  widget_class->size_allocate = tr_ingredient_entry_size_allocate;
  widget_class->grab_focus = tr_ingredient_entry_grab_focus;

  signals[COMMITTED] =
    g_signal_new ("committed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                  G_TYPE_NONE, 2, G_TYPE_STRING, G_TYPE_STRING);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
build_popover (TrIngredientEntry *self)
{
  self->list = gtk_list_box_new ();
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (self->list), GTK_SELECTION_BROWSE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Ingredients"), -1);
  g_signal_connect (self->list, "row-activated", G_CALLBACK (row_activated_cb), self);

  self->popover = gtk_popover_new ();
  gtk_popover_set_child (GTK_POPOVER (self->popover), self->list);
  gtk_popover_set_autohide (GTK_POPOVER (self->popover), FALSE);
  gtk_popover_set_has_arrow (GTK_POPOVER (self->popover), FALSE);
  gtk_popover_set_position (GTK_POPOVER (self->popover), GTK_POS_BOTTOM);
  gtk_widget_set_halign (self->popover, GTK_ALIGN_START);
  gtk_widget_set_can_focus (self->popover, FALSE);
  gtk_widget_add_css_class (self->popover, "menu");
  gtk_widget_set_parent (self->popover, GTK_WIDGET (self));
}

static void
tr_ingredient_entry_init (TrIngredientEntry *self)
{
  self->entry = gtk_entry_new ();
  gtk_editable_set_enable_undo (GTK_EDITABLE (self->entry), FALSE);
  gtk_editable_set_width_chars (GTK_EDITABLE (self->entry), 10);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->entry), 28);
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->entry), _("Ingredient"));
  gtk_widget_set_parent (self->entry, GTK_WIDGET (self));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_HAS_POPUP, TRUE, -1);
  g_signal_connect (self->entry, "changed", G_CALLBACK (changed_cb), self);
  g_signal_connect_swapped (self->entry, "activate", G_CALLBACK (settle), self);
  tr_entry_listen (self->entry, G_CALLBACK (key_pressed_cb), G_CALLBACK (focus_left_cb), self);
  build_popover (self);
  tr_ingredient_entry_set_name (self, _("Ingredient"));
}

GtkWidget *
tr_ingredient_entry_new (void)
{
  return g_object_new (TR_TYPE_INGREDIENT_ENTRY, NULL);
}

void
tr_ingredient_entry_set_pantry (TrIngredientEntry *self,
                                TrPantry          *pantry)
{
  g_return_if_fail (TR_IS_INGREDIENT_ENTRY (self));

  if (self->pantry == pantry)
    return;

  TrPantry *own = pantry != NULL ? tr_pantry_ref (pantry) : NULL;

  g_clear_pointer (&self->pantry, tr_pantry_unref);
  self->pantry = own;
  self->has_shown = FALSE;       /* a name of the baker's own may have changed */
}

void
tr_ingredient_entry_set_value (TrIngredientEntry *self,
                               const char        *id,
                               const char        *text)
{
  g_return_if_fail (TR_IS_INGREDIENT_ENTRY (self));

  gboolean is_same = g_strcmp0 (id, self->shown_id) == 0 && (id != NULL || g_strcmp0 (text, self->shown_text) == 0);

  if (self->has_shown && is_same)
    return;

  tr_set_text (&self->shown_id, id);
  tr_set_text (&self->shown_text, text);
  /* The pantry changed, not this line: what is being typed goes on. */
  if (is_same && self->is_edited)
    return;

  g_autofree char *name = id != NULL ? tr_ingredient_dup_name (self->pantry, id) : g_strdup (text != NULL ? text : "");

  self->has_shown = TRUE;
  self->is_edited = FALSE;
  set_entry_text (self, name);
}

void
tr_ingredient_entry_set_invalid (TrIngredientEntry *self,
                                 const char        *error)
{
  g_return_if_fail (TR_IS_INGREDIENT_ENTRY (self));

  if (error != NULL)
    gtk_widget_add_css_class (self->entry, "error");
  else
    gtk_widget_remove_css_class (self->entry, "error");
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_STATE_INVALID,
                               error != NULL ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, error != NULL ? error : "", -1);
}

void
tr_ingredient_entry_set_name (TrIngredientEntry *self,
                              const char        *name)
{
  g_return_if_fail (TR_IS_INGREDIENT_ENTRY (self));

  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (gtk_editable_get_delegate (GTK_EDITABLE (self->entry))),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

GtkWidget *
tr_ingredient_entry_get_entry (TrIngredientEntry *self)
{
  g_return_val_if_fail (TR_IS_INGREDIENT_ENTRY (self), NULL);

  return self->entry;
}
