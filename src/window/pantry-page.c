/* pantry-page.c: the baker's own ingredients, a list and a form
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * They belong to the trial, so every edit is a step of its undo and all its
 * doughs follow. One that a dough uses is not taken away from under it: the
 * page says which do, and offers the built-in in its place.
 *
 * Invariant: `chosen` is the id of an ingredient there is, or NULL where there
 * is none.
 */

#include "config.h"

#include "page.h"

#include <glib/gi18n-lib.h>

#include "actions.h"
#include "ingredient-entry.h"
#include "ingredient-find.h"
#include "pantry-edits.h"
#include "pantry-form.h"
#include "section.h"

#define TR_TYPE_PANTRY_PAGE (tr_pantry_page_get_type ())
G_DECLARE_FINAL_TYPE (TrPantryPage, tr_pantry_page, TR, PANTRY_PAGE, TrPage)

struct _TrPantryPage
{
  TrPage parent_instance;

  /* Borrowed */
  GtkListBox *list;
  TrIngredientEntry *add_entry;
  GtkWidget *duplicate_button, *remove_button;
  TrPantryForm *form;
  GtkWidget *empty, *said;
  GtkWidget *question, *question_label, *replace_button;

  /* Owned */
  char *chosen;                  /* id; NULL: none */
};

G_DEFINE_FINAL_TYPE (TrPantryPage, tr_pantry_page, TR_TYPE_PAGE)

static const TrTrial *
get_trial (TrPantryPage *self)
{
  TrDocument *document = tr_page_get_document (TR_PAGE (self));

  return document != NULL ? tr_document_get_trial (document) : NULL;
}

/* NULL: none is chosen. */
static const TrOwnIngredient *
get_chosen (TrPantryPage *self,
            guint        *index)
{
  const TrTrial *trial = get_trial (self);
  int found = trial != NULL && self->chosen != NULL ? tr_pantry_find_index (trial->pantry, self->chosen) : -1;

  if (found < 0)
    return NULL;

  *index = (guint) found;

  return g_ptr_array_index (trial->pantry->own, *index);
}

static TrTrial *
new_draft (TrPantryPage *self)
{
  return tr_document_draft (tr_page_get_document (TR_PAGE (self)));
}

/* A step of its own. Takes the draft. */
static gboolean
commit (TrPantryPage *self,
        TrTrial      *draft,
        const char   *label)
{
  g_autoptr (GError) error = NULL;
  gboolean is_done = tr_document_commit (tr_page_get_document (TR_PAGE (self)), draft, label, NULL, "/ingredients", &error);

  tr_words_label_set (self->said, is_done ? NULL : error->message);

  return is_done;
}

/* ---- the list ---- */

static GtkWidget *
new_row (void)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *name = tr_words_label_new (NULL);
  GtkWidget *like = tr_words_label_new ("dim-label");

  gtk_label_set_wrap_mode (GTK_LABEL (name), PANGO_WRAP_WORD_CHAR);
  gtk_widget_add_css_class (like, "caption");
  gtk_box_append (GTK_BOX (box), name);
  gtk_box_append (GTK_BOX (box), like);

  return box;
}

static char *
dup_like (const TrTrial         *trial,
          const TrOwnIngredient *own)
{
  g_autofree char *name = tr_ingredient_dup_name (NULL, own->like);

  return g_strdup_printf (_("like %s"), name);
}

static void
show_row (TrPantryPage          *self,
          GtkListBoxRow         *row,
          const TrOwnIngredient *own)
{
  const TrTrial *trial = get_trial (self);
  GtkWidget *box = gtk_list_box_row_get_child (row);
  g_autofree char *name = tr_ingredient_dup_name (trial->pantry, own->id);
  g_autofree char *like = dup_like (trial, own);
  g_autofree char *label = g_strdup_printf ("%s, %s", name, like);

  tr_words_label_set (gtk_widget_get_first_child (box), name);
  tr_words_label_set (gtk_widget_get_last_child (box), like);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
}

static void
refresh_list (TrPantryPage *self)
{
  const GPtrArray *own = get_trial (self)->pantry->own;
  GtkListBoxRow *extra;

  for (guint i = 0; i < own->len; i++)
    {
      if (gtk_list_box_get_row_at_index (self->list, (int) i) == NULL)
        gtk_list_box_append (self->list, new_row ());
      show_row (self, gtk_list_box_get_row_at_index (self->list, (int) i), g_ptr_array_index (own, i));
    }
  while ((extra = gtk_list_box_get_row_at_index (self->list, (int) own->len)) != NULL)
    gtk_list_box_remove (self->list, GTK_WIDGET (extra));
}

/* What was chosen may be gone, by undo or a new document. */
static void
keep_chosen (TrPantryPage *self)
{
  const GPtrArray *own = get_trial (self)->pantry->own;
  GtkListBoxRow *row = gtk_list_box_get_selected_row (self->list);
  guint index = row != NULL ? (guint) gtk_list_box_row_get_index (row) : 0;

  if (get_chosen (self, &index) == NULL && own->len > 0)
    {
      const TrOwnIngredient *near = g_ptr_array_index (own, MIN (index, own->len - 1));

      tr_set_text (&self->chosen, near->id);
    }
  else if (own->len == 0)
    g_clear_pointer (&self->chosen, g_free);
}

/* ---- the form ---- */

static void
refresh_form (TrPantryPage *self)
{
  guint index;
  const TrOwnIngredient *own = get_chosen (self, &index);

  gtk_widget_set_visible (GTK_WIDGET (self->form), own != NULL);
  gtk_widget_set_visible (self->empty, own == NULL);
  gtk_widget_set_sensitive (self->duplicate_button, own != NULL);
  gtk_widget_set_sensitive (self->remove_button, own != NULL);
  if (own == NULL)
    return;

  tr_pantry_form_show (self->form, index);
  gtk_list_box_select_row (self->list, gtk_list_box_get_row_at_index (self->list, (int) index));
}

static void
tr_pantry_page_refresh (TrPage *page)
{
  TrPantryPage *self = TR_PANTRY_PAGE (page);

  if (get_trial (self) == NULL)
    return;

  gtk_widget_set_visible (self->question, FALSE);
  keep_chosen (self);
  refresh_list (self);
  refresh_form (self);
}

static void
choose (TrPantryPage *self,
        const char   *id)
{
  if (!tr_set_text (&self->chosen, id))
    return;

  gtk_widget_set_visible (self->question, FALSE);
  tr_words_label_set (self->said, NULL);
  refresh_form (self);
}

static void
row_selected_cb (GtkListBox    *list,
                 GtkListBoxRow *row,
                 TrPantryPage  *self)
{
  const TrTrial *trial = get_trial (self);

  if (row == NULL || trial == NULL || tr_page_is_refreshing (TR_PAGE (self)))
    return;

  guint index = (guint) gtk_list_box_row_get_index (row);

  if (index < trial->pantry->own->len)
    choose (self, ((const TrOwnIngredient *) g_ptr_array_index (trial->pantry->own, index))->id);
}

/* Brings "/ingredients/2/…" into view; the ingredient alone: its name. */
static gboolean
tr_pantry_page_go_to (TrPage     *page,
                      const char *pointer)
{
  TrPantryPage *self = TR_PANTRY_PAGE (page);
  const TrTrial *trial = get_trial (self);

  if (trial == NULL || !g_str_has_prefix (pointer, "/ingredients/"))
    return FALSE;

  guint64 index = g_ascii_strtoull (pointer + strlen ("/ingredients/"), NULL, 10);

  if (index >= trial->pantry->own->len)
    return FALSE;

  choose (self, ((const TrOwnIngredient *) g_ptr_array_index (trial->pantry->own, index))->id);

  return tr_fields_go_to (GTK_WIDGET (self->form), pointer);
}

/* ---- what the buttons do ---- */

/* Chosen once it is there: the refresh of the commit comes first. */
static void
commit_new (TrPantryPage *self,
            TrTrial      *draft,
            const char   *id,
            const char   *label)
{
  if (!commit (self, draft, label))
    return;

  choose (self, id);
  gtk_widget_grab_focus (GTK_WIDGET (self->form));
}

static void
add_committed_cb (TrIngredientEntry *entry,
                  const char        *id,
                  const char        *text,
                  TrPantryPage      *self)
{
  if (get_trial (self) == NULL || tr_page_is_refreshing (TR_PAGE (self)))
    return;

  if (id == NULL)
    {
      g_autofree char *error = text == NULL || *text == '\0' ? NULL : g_strdup_printf (_("No built-in ingredient is called “%s”."), text);

      tr_ingredient_entry_set_invalid (entry, error);
      tr_words_label_set (self->said, error);
      return;
    }

  TrTrial *draft = new_draft (self);
  g_autofree char *added = tr_pantry_add_like (draft, id);

  tr_ingredient_entry_set_invalid (entry, NULL);
  commit_new (self, draft, added, _("add an ingredient of my own"));
  tr_ingredient_entry_set_value (entry, id, NULL);
  tr_ingredient_entry_set_value (entry, NULL, "");
}

static void
duplicate_cb (TrPantryPage *self)
{
  guint index;

  if (get_chosen (self, &index) == NULL)
    return;

  TrTrial *draft = new_draft (self);
  g_autofree char *added = tr_pantry_duplicate (draft, index);

  commit_new (self, draft, added, _("duplicate an ingredient"));
}

static void
ask_to_replace (TrPantryPage          *self,
                const TrOwnIngredient *own,
                const char            *users)
{
  g_autofree char *name = tr_ingredient_dup_name (get_trial (self)->pantry, own->id);
  g_autofree char *like = tr_ingredient_dup_name (NULL, own->like);
  g_autofree char *label = g_strdup_printf (_("Put %s in its place"), like);

  tr_words_label_take (self->question_label, g_strdup_printf (_("%s stays: it is used in %s."), name, users));
  gtk_button_set_label (GTK_BUTTON (self->replace_button), label);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->replace_button), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  gtk_label_set_wrap (GTK_LABEL (gtk_button_get_child (GTK_BUTTON (self->replace_button))), TRUE);
  gtk_widget_set_visible (self->question, TRUE);
  gtk_widget_grab_focus (self->replace_button);
}

static void
remove_cb (TrPantryPage *self)
{
  guint index;
  const TrOwnIngredient *own = get_chosen (self, &index);

  if (own == NULL)
    return;

  g_autofree char *users = tr_pantry_dup_users (get_trial (self), own->id);

  if (users != NULL)
    {
      ask_to_replace (self, own, users);
      return;
    }

  TrTrial *draft = new_draft (self);

  tr_pantry_remove (draft, index);
  commit (self, draft, _("remove an ingredient"));
}

static void
replace_cb (TrPantryPage *self)
{
  guint index;
  const TrOwnIngredient *own = get_chosen (self, &index);

  if (own == NULL)
    return;

  TrTrial *draft = new_draft (self);
  g_autofree char *like = tr_ingredient_dup_name (NULL, own->like);
  g_autofree char *label = g_strdup_printf (_("put %s in the place of an ingredient"), like);

  tr_pantry_replace (draft, own->id, own->like);
  tr_pantry_remove (draft, index);
  commit (self, draft, label);
}

static void
keep_cb (TrPantryPage *self)
{
  gtk_widget_set_visible (self->question, FALSE);
  gtk_widget_grab_focus (self->remove_button);
}

/* ---- building ---- */

static GtkWidget *
new_button (TrPantryPage *self,
            GtkWidget    *box,
            const char   *label,
            GCallback     clicked_cb)
{
  GtkWidget *button = gtk_button_new_with_mnemonic (label);

  tr_name_by_mnemonic (button, label);
  g_signal_connect_object (button, "clicked", clicked_cb, self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (box), button);

  return button;
}

static GtkWidget *
new_question (TrPantryPage *self)
{
  GtkWidget *buttons = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  self->question = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->question_label = tr_words_label_new (NULL);
  gtk_box_append (GTK_BOX (self->question), self->question_label);
  self->replace_button = new_button (self, buttons, "", G_CALLBACK (replace_cb));
  new_button (self, buttons, _("_Keep it"), G_CALLBACK (keep_cb));
  gtk_box_append (GTK_BOX (self->question), buttons);
  gtk_widget_set_visible (self->question, FALSE);

  return self->question;
}

static GtkWidget *
new_add_row (TrPantryPage *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  GtkWidget *label = gtk_label_new (_("Add one like"));
  GtkWidget *entry = tr_ingredient_entry_new ();

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, "dim-label");
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), entry);
  tr_ingredient_entry_set_name (TR_INGREDIENT_ENTRY (entry), _("Add one like this built-in ingredient"));
  gtk_entry_set_placeholder_text (GTK_ENTRY (tr_ingredient_entry_get_entry (TR_INGREDIENT_ENTRY (entry))), _("butter, flour, milk…"));
  g_signal_connect_object (entry, "committed", G_CALLBACK (add_committed_cb), self, 0);
  self->add_entry = TR_INGREDIENT_ENTRY (entry);

  return box;
}

/* Left to itself the list would take Tab from row to row, and each would be chosen. */
static gboolean
list_key_pressed_cb (GtkEventControllerKey *controller,
                     guint                  keyval,
                     guint                  keycode,
                     GdkModifierType        state,
                     TrPantryPage          *self)
{
  if (keyval == GDK_KEY_ISO_Left_Tab || (keyval == GDK_KEY_Tab && (state & GDK_SHIFT_MASK) != 0))
    return gtk_widget_grab_focus (tr_ingredient_entry_get_entry (self->add_entry));
  if (keyval == GDK_KEY_Tab || keyval == GDK_KEY_KP_Tab)
    return gtk_widget_grab_focus (gtk_widget_get_visible (self->question) ? self->replace_button : self->duplicate_button);

  return FALSE;
}

static void
listen_to_list (TrPantryPage *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_object (keys, "key-pressed", G_CALLBACK (list_key_pressed_cb), self, 0);
  gtk_widget_add_controller (GTK_WIDGET (self->list), keys);
}

static GtkWidget *
new_side (TrPantryPage *self)
{
  GtkWidget *side = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkWidget *scroller = gtk_scrolled_window_new ();
  GtkWidget *buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  self->list = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_list_box_set_selection_mode (self->list, GTK_SELECTION_BROWSE);
  gtk_widget_add_css_class (GTK_WIDGET (self->list), "plain");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL, _("My own ingredients"), -1);
  g_signal_connect_object (self->list, "row-selected", G_CALLBACK (row_selected_cb), self, 0);
  listen_to_list (self);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), GTK_WIDGET (self->list));
  gtk_widget_set_vexpand (scroller, TRUE);
  self->said = tr_words_label_new ("error");
  gtk_box_append (GTK_BOX (side), new_add_row (self));
  gtk_box_append (GTK_BOX (side), self->said);
  gtk_box_append (GTK_BOX (side), scroller);
  gtk_box_append (GTK_BOX (side), new_question (self));
  self->duplicate_button = new_button (self, buttons, _("_Duplicate"), G_CALLBACK (duplicate_cb));
  self->remove_button = new_button (self, buttons, _("_Remove"), G_CALLBACK (remove_cb));
  gtk_box_set_homogeneous (GTK_BOX (buttons), TRUE);
  gtk_box_append (GTK_BOX (side), buttons);
  gtk_widget_add_css_class (side, "question");
  gtk_widget_set_size_request (side, 240, -1);
  gtk_widget_set_hexpand (side, FALSE);

  return side;
}

static GtkWidget *
new_empty (TrPantryPage *self)
{
  self->empty = tr_words_label_new ("dim-label");
  tr_words_label_set (self->empty, _("Your own butter, flour or drink, when its label says something else than the built-in table: "
                                     "name the built-in ingredient it is like, then write what differs."));
  gtk_label_set_max_width_chars (GTK_LABEL (self->empty), 40);
  gtk_widget_set_hexpand (self->empty, TRUE);
  gtk_widget_set_halign (self->empty, GTK_ALIGN_CENTER);

  return self->empty;
}

static void
tr_pantry_page_init (TrPantryPage *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);

  self->form = TR_PANTRY_FORM (tr_pantry_form_new ());
  gtk_box_append (GTK_BOX (box), new_side (self));
  gtk_box_append (GTK_BOX (box), gtk_separator_new (GTK_ORIENTATION_VERTICAL));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->form));
  gtk_box_append (GTK_BOX (box), new_empty (self));
  gtk_widget_set_hexpand (GTK_WIDGET (self->form), TRUE);
  tr_page_set_child (TR_PAGE (self), box);
}

static void
tr_pantry_page_finalize (GObject *object)
{
  TrPantryPage *self = TR_PANTRY_PAGE (object);

  g_free (self->chosen);

  G_OBJECT_CLASS (tr_pantry_page_parent_class)->finalize (object);
}

static void
tr_pantry_page_class_init (TrPantryPageClass *klass)
{
  TrPageClass *page_class = TR_PAGE_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = tr_pantry_page_finalize;
  page_class->refresh = tr_pantry_page_refresh;
  page_class->go_to = tr_pantry_page_go_to;
}

GtkWidget *
tr_pantry_page_new (void)
{
  return g_object_new (TR_TYPE_PANTRY_PAGE, NULL);
}
