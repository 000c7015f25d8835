/* pantry-form.c: what is written of one ingredient of the baker's own
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Fields by the tables of pantry-members.h. Invariant: every field's item is
 * the index of the ingredient shown.
 */

#include "config.h"

#include "pantry-form.h"

#include <glib/gi18n-lib.h>

#include "ingredient-entry.h"
#include "ingredient-find.h"
#include "pantry-edits.h"
#include "pantry-members.h"
#include "section.h"

#define NO_SLOT G_MAXUINT

typedef struct { TrField *field; guint slot; } Placed;   /* the field borrowed */

struct _TrPantryForm
{
  GtkWidget parent_instance;

  /* Children */
  GtkWidget *scroller;           /* NULL: disposed */
  GtkWidget *name_field, *price_field;
  TrIngredientEntry *like_entry;
  GtkWidget *like_error, *like_words, *words, *users;
  GtkWidget *ticks;

  /* Owned */
  GArray *placed;                /* Placed */
  GtkSizeGroup *widths;
  TrChoice *allergens;

  /* State */
  guint index;
};

G_DEFINE_FINAL_TYPE (TrPantryForm, tr_pantry_form, GTK_TYPE_WIDGET)

/* NULL: in none with a document. */
static TrPage *
get_page (TrPantryForm *self)
{
  TrPage *page = (TrPage *) gtk_widget_get_ancestor (GTK_WIDGET (self), TR_TYPE_PAGE);

  return page != NULL && tr_page_get_document (page) != NULL ? page : NULL;
}

static const TrTrial *
get_trial (TrPantryForm *self)
{
  TrPage *page = get_page (self);

  return page != NULL ? tr_document_get_trial (tr_page_get_document (page)) : NULL;
}

/* NULL: none is shown. */
static const TrOwnIngredient *
get_own (TrPantryForm *self)
{
  const TrTrial *trial = get_trial (self);

  return trial != NULL && self->index < trial->pantry->own->len ? g_ptr_array_index (trial->pantry->own, self->index) : NULL;
}

static void
place_fields (TrPantryForm *self,
              guint         index)
{
  for (guint i = 0; i < self->placed->len; i++)
    {
      Placed *placed = &g_array_index (self->placed, Placed, i);

      tr_field_set_item (placed->field, placed->slot == NO_SLOT ? index : tr_pantry_item (index, placed->slot));
    }
}

static void
refresh_words (TrPantryForm          *self,
               const TrOwnIngredient *own,
               guint                  index)
{
  const TrTrial *trial = get_trial (self);
  const TrReader *reader = tr_page_get_reader (get_page (self));
  g_autofree char *like = tr_ingredient_dup_name (NULL, own->like);
  g_autofree char *users = tr_pantry_dup_users (trial, own->id);
  TrIngredient as;

  tr_words_label_take (self->like_words, g_strdup_printf (_("What is left empty is as %s and stands there in grey; “?” is not known."), like));
  tr_words_label_take (self->users, users != NULL ? g_strdup_printf (_("Used in %s."), users) : g_strdup (_("No dough uses it yet.")));
  gtk_entry_set_placeholder_text (GTK_ENTRY (tr_field_get_control (TR_FIELD (self->name_field))), like);
  if (tr_pantry_resolve (trial, index, &as))
    tr_words_label_take (self->words, tr_pantry_dup_words (reader, &as));
  tr_field_set_unit (TR_FIELD (self->price_field), trial->bench->currency);
}

void
tr_pantry_form_show (TrPantryForm *self,
                     guint         index)
{
  g_return_if_fail (TR_IS_PANTRY_FORM (self));

  self->index = index;
  const TrOwnIngredient *own = get_own (self);

  if (own == NULL)
    return;

  place_fields (self, index);
  tr_ingredient_entry_set_value (self->like_entry, own->like, NULL);
  tr_ingredient_entry_set_invalid (self->like_entry, NULL);
  tr_words_label_set (self->like_error, NULL);
  tr_fields_refresh (self->scroller);
  gtk_widget_set_visible (self->ticks, own->allergens != NULL);
  refresh_words (self, own, index);
}

static void
like_committed_cb (TrIngredientEntry *entry,
                   const char        *id,
                   const char        *text,
                   TrPantryForm      *self)
{
  TrPage *page = get_page (self);
  const TrOwnIngredient *own = get_own (self);

  if (own == NULL || tr_page_is_refreshing (page))
    return;

  g_autofree char *error = id != NULL ? NULL : g_strdup_printf (_("No built-in ingredient is called “%s”."), text);

  tr_ingredient_entry_set_invalid (entry, error);
  tr_words_label_set (self->like_error, error);
  if (id == NULL || g_strcmp0 (id, own->like) == 0)
    return;

  TrTrial *draft = tr_document_draft (tr_page_get_document (page));
  TrOwnIngredient *changed = g_ptr_array_index (tr_trial_own_pantry (draft)->own, self->index);
  g_autoptr (GError) refusal = NULL;

  g_free (changed->like);
  changed->like = g_strdup (id);
  if (!tr_document_commit (tr_page_get_document (page), draft, _("change what an ingredient is like"), NULL, "/ingredients", &refusal))
    tr_words_label_set (self->like_error, refusal->message);
}

/* ---- building ---- */

static void
place (TrPantryForm *self,
       GtkWidget    *field,
       guint         slot)
{
  Placed placed = { TR_FIELD (field), slot };

  g_array_append_val (self->placed, placed);
}

static void
add_members (TrPantryForm  *self,
             GtkWidget     *form,
             TrPantryGroup  group)
{
  guint n_members;
  const TrMember *members = tr_pantry_get_members (group, &n_members);

  for (guint i = 0; i < n_members; i++)
    {
      GtkWidget *field = tr_entry_field_new (&members[i], TR_FIELD_BESIDE);

      if (members[i].hold == TR_HOLD_NUMBER)
        tr_entry_field_set_width_chars (TR_ENTRY_FIELD (field), 6, 6);
      gtk_size_group_add_widget (self->widths, field);
      tr_form_add (form, field);
      place (self, field, group == TR_PANTRY_GROUP_HOUSEHOLD ? i : NO_SLOT);
    }
}

static GtkWidget *
add_form (GtkWidget  *column,
          const char *heading)
{
  GtkWidget *form = tr_form_new (NULL, 0);

  gtk_box_append (GTK_BOX (tr_column_add_section (column, heading)), form);

  return form;
}

static void
add_group (TrPantryForm  *self,
           GtkWidget     *column,
           TrPantryGroup  group,
           const char    *heading)
{
  add_members (self, add_form (column, heading), group);
}

static GtkWidget *
new_like_row (TrPantryForm *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *label = gtk_label_new (_("Like"));
  GtkWidget *entry = tr_ingredient_entry_new ();

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_width_chars (GTK_LABEL (label), 18);
  gtk_widget_add_css_class (label, "dim-label");
  gtk_editable_set_width_chars (GTK_EDITABLE (tr_ingredient_entry_get_entry (TR_INGREDIENT_ENTRY (entry))), 16);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (tr_ingredient_entry_get_entry (TR_INGREDIENT_ENTRY (entry))), 32);
  gtk_widget_set_halign (row, GTK_ALIGN_START);
  tr_ingredient_entry_set_name (TR_INGREDIENT_ENTRY (entry), _("Like this built-in ingredient"));
  gtk_widget_set_tooltip_text (label, _("The built-in ingredient that stands in for whatever is left empty here"));
  gtk_box_append (GTK_BOX (row), label);
  gtk_box_append (GTK_BOX (row), entry);
  g_signal_connect_object (entry, "committed", G_CALLBACK (like_committed_cb), self, 0);
  self->like_entry = TR_INGREDIENT_ENTRY (entry);

  return row;
}

static void
add_name (TrPantryForm *self,
          GtkWidget    *column)
{
  GtkWidget *section = tr_column_add_section (column, NULL);
  guint n_members;
  const TrMember *members = tr_pantry_get_members (TR_PANTRY_GROUP_NAME, &n_members);

  self->name_field = tr_entry_field_new (members, TR_FIELD_BESIDE);
  tr_entry_field_set_width_chars (TR_ENTRY_FIELD (self->name_field), 16, 32);
  gtk_widget_set_halign (self->name_field, GTK_ALIGN_START);
  place (self, self->name_field, NO_SLOT);
  self->like_error = tr_words_label_new ("error");
  self->like_words = tr_words_label_new ("dim-label");
  self->words = tr_words_label_new (NULL);
  self->users = tr_words_label_new ("dim-label");
  gtk_box_append (GTK_BOX (section), self->name_field);
  gtk_box_append (GTK_BOX (section), new_like_row (self));
  gtk_box_append (GTK_BOX (section), self->like_error);
  gtk_box_append (GTK_BOX (section), self->users);
  gtk_box_append (GTK_BOX (section), self->like_words);
}

static void
add_unknowns (TrPantryForm *self,
              GtkWidget    *section)
{
  GtkWidget *expander = gtk_expander_new (_("What the label does not say"));
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *ticks = tr_fields_row_new ();
  GtkWidget *why = tr_words_label_new ("dim-label");

  tr_words_label_set (why, _("A figure that needs it then says that it is not known, instead of counting with the built-in's."));
  for (guint i = 0; i < TR_N_PARTS; i++)
    {
      GtkWidget *tick = tr_choice_field_new (&tr_pantry_get_unknowns ()[i], TR_FIELD_BARE);

      tr_form_add (ticks, tick);
      place (self, tick, i);
    }
  gtk_box_append (GTK_BOX (box), why);
  gtk_box_append (GTK_BOX (box), ticks);
  gtk_expander_set_child (GTK_EXPANDER (expander), box);
  gtk_accessible_update_property (GTK_ACCESSIBLE (expander), GTK_ACCESSIBLE_PROPERTY_LABEL, gtk_expander_get_label (GTK_EXPANDER (expander)), -1);
  /* Until then its fields stood in no page. */
  g_signal_connect_object (expander, "notify::expanded", G_CALLBACK (tr_fields_refresh), box, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (section), expander);
}

static void
add_parts (TrPantryForm *self,
           GtkWidget    *column)
{
  GtkWidget *section = tr_column_add_section (column, _("In 100 g"));
  GtkWidget *form = tr_form_new (NULL, 0);

  gtk_box_append (GTK_BOX (section), self->words);
  gtk_box_append (GTK_BOX (section), form);
  add_members (self, form, TR_PANTRY_GROUP_PARTS);
  add_members (self, form, TR_PANTRY_GROUP_SALT);
  add_unknowns (self, section);
}

static void
add_allergens (TrPantryForm *self,
               GtkWidget    *column)
{
  GtkWidget *section = tr_column_add_section (column, _("Allergens"));
  GtkWidget *by = tr_choice_field_new (tr_pantry_get_allergens_by (), TR_FIELD_BESIDE);
  guint n_choices;

  place (self, by, NO_SLOT);
  self->ticks = tr_fields_row_new ();
  self->allergens = tr_pantry_new_allergens (&n_choices);
  for (guint i = 0; i < n_choices; i++)
    {
      GtkWidget *tick = tr_choice_field_new (&self->allergens[i], TR_FIELD_BARE);

      tr_form_add (self->ticks, tick);
      place (self, tick, i);
    }
  gtk_box_append (GTK_BOX (section), by);
  gtk_box_append (GTK_BOX (section), self->ticks);
}

static void
build (TrPantryForm *self)
{
  GtkWidget *column = tr_column_new (&self->scroller);

  add_name (self, column);
  add_parts (self, column);
  add_group (self, column, TR_PANTRY_GROUP_HEAT, _("Temperatures"));
  add_group (self, column, TR_PANTRY_GROUP_PRICE, _("Price"));
  self->price_field = GTK_WIDGET (g_array_index (self->placed, Placed, self->placed->len - 1).field);
  add_group (self, column, TR_PANTRY_GROUP_HOUSEHOLD, _("Cups, spoons and pieces"));
  add_members (self, gtk_widget_get_parent (GTK_WIDGET (g_array_index (self->placed, Placed, self->placed->len - 1).field)),
               TR_PANTRY_GROUP_DENSITY);
  add_allergens (self, column);

  gtk_widget_set_parent (self->scroller, GTK_WIDGET (self));
}

static void
tr_pantry_form_init (TrPantryForm *self)
{
  self->placed = g_array_new (FALSE, FALSE, sizeof (Placed));
  self->widths = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
  build (self);
}

static gboolean
tr_pantry_form_grab_focus (GtkWidget *widget)
{
  TrPantryForm *self = TR_PANTRY_FORM (widget);

  return self->scroller != NULL && gtk_widget_grab_focus (self->name_field);
}

static void
tr_pantry_form_dispose (GObject *object)
{
  TrPantryForm *self = TR_PANTRY_FORM (object);

  g_clear_pointer (&self->scroller, gtk_widget_unparent);
  g_clear_pointer (&self->placed, g_array_unref);
  g_clear_object (&self->widths);

  G_OBJECT_CLASS (tr_pantry_form_parent_class)->dispose (object);
}

static void
tr_pantry_form_finalize (GObject *object)
{
  g_free (TR_PANTRY_FORM (object)->allergens);

  G_OBJECT_CLASS (tr_pantry_form_parent_class)->finalize (object);
}

static void
tr_pantry_form_class_init (TrPantryFormClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = tr_pantry_form_dispose;
  object_class->finalize = tr_pantry_form_finalize;
  widget_class->grab_focus = tr_pantry_form_grab_focus;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

GtkWidget *
tr_pantry_form_new (void)
{
  return g_object_new (TR_TYPE_PANTRY_FORM, NULL);
}
