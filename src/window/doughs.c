/* doughs.c: the list of doughs
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Rows are found again by the dough's id, so a row keeps its focus and its
 * half-typed name while the list changes around it.
 */

#include "config.h"

#include "doughs.h"

#include <glib/gi18n-lib.h>

#include "actions.h"
#include "branch.h"
#include "dough-row.h"

struct _TrDoughs
{
  TrPage parent_instance;

  /* Borrowed References */
  GtkWidget *list;
};

enum { SIGNAL_CHOSEN, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TrDoughs, tr_doughs, TR_TYPE_PAGE)

static TrDoughRow *
get_row (TrDoughs *self,
         guint     index)
{
  return (TrDoughRow *) gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), (int) index);
}

static TrDoughRow *
find_row (TrDoughs   *self,
          const char *id)
{
  TrDoughRow *row;

  for (guint i = 0; (row = get_row (self, i)) != NULL; i++)
    if (g_str_equal (tr_dough_row_get_id (row), id))
      return row;

  return NULL;
}

static void
choose (TrDoughs   *self,
        const char *id)
{
  g_signal_emit (self, signals[SIGNAL_CHOSEN], 0, id);
}

static guint
count_doughs (TrDoughs *self)
{
  TrDocument *document = tr_page_get_document (TR_PAGE (self));

  return document != NULL ? tr_document_get_trial (document)->doughs->len : 0;
}

void
tr_doughs_add (TrDoughs *self,
               TrDough  *dough)
{
  g_return_if_fail (TR_IS_DOUGHS (self));
  g_return_if_fail (dough != NULL);

  g_autoptr (TrTrial) draft = tr_document_draft (tr_page_get_document (TR_PAGE (self)));
  g_autofree char *where = g_strdup_printf ("/doughs/%u", draft->doughs->len);
  g_autofree char *id = NULL;

  if (tr_trial_find_dough (draft, dough->id) >= 0)
    {
      g_autofree char *free_id = tr_trial_dup_free_id (draft);

      tr_set_text (&dough->id, free_id);
    }
  id = g_strdup (dough->id);
  g_ptr_array_add (draft->doughs, dough);
  if (tr_page_commit (TR_PAGE (self), g_steal_pointer (&draft), _("add a dough"), NULL, where))
    choose (self, id);
}

void
tr_doughs_branch (TrDoughs *self)
{
  g_return_if_fail (TR_IS_DOUGHS (self));

  tr_page_branch_dough (TR_PAGE (self), NULL);
}

void
tr_doughs_delete (TrDoughs *self)
{
  g_return_if_fail (TR_IS_DOUGHS (self));

  const TrDough *dough = tr_page_get_dough (TR_PAGE (self));
  int index = tr_page_get_dough_index (TR_PAGE (self));

  if (dough == NULL)
    return;

  g_autoptr (TrTrial) draft = tr_document_draft (tr_page_get_document (TR_PAGE (self)));
  g_autofree char *label = g_strdup_printf (_("delete %s"), dough->name);
  g_autofree char *where = g_strdup_printf ("/doughs/%d", index);

  tr_trial_remove_dough (draft, (guint) index);
  tr_page_commit (TR_PAGE (self), g_steal_pointer (&draft), label, NULL, where);
}

void
tr_doughs_move (TrDoughs *self,
                guint     to)
{
  g_return_if_fail (TR_IS_DOUGHS (self));

  const TrDough *dough = tr_page_get_dough (TR_PAGE (self));
  int index = tr_page_get_dough_index (TR_PAGE (self));

  if (dough == NULL || to >= count_doughs (self) || to == (guint) index)
    return;

  g_autoptr (TrTrial) draft = tr_document_draft (tr_page_get_document (TR_PAGE (self)));
  g_autofree char *label = g_strdup_printf (_("move %s"), dough->name);
  g_autofree char *where = g_strdup_printf ("/doughs/%u", to);
  TrDough *moved = g_ptr_array_steal_index (draft->doughs, (guint) index);

  g_ptr_array_insert (draft->doughs, (int) to, moved);
  tr_page_commit (TR_PAGE (self), g_steal_pointer (&draft), label, NULL, where);
}

static void
rename_dough (TrDoughs   *self,
              const char *name)
{
  const TrDough *dough = tr_page_get_dough (TR_PAGE (self));

  if (dough == NULL)
    return;

  g_autoptr (TrTrial) draft = tr_document_draft (tr_page_get_document (TR_PAGE (self)));
  g_autofree char *label = g_strdup_printf (_("rename %s"), dough->name);

  tr_set_text (&tr_trial_own_dough (draft, (guint) tr_page_get_dough_index (TR_PAGE (self)))->name, name);
  tr_page_commit (TR_PAGE (self), g_steal_pointer (&draft), label, NULL, "/name");
}

void
tr_doughs_start_rename (TrDoughs *self)
{
  g_return_if_fail (TR_IS_DOUGHS (self));

  int index = tr_page_get_dough_index (TR_PAGE (self));

  if (index >= 0 && get_row (self, (guint) index) != NULL)
    tr_dough_row_start_rename (get_row (self, (guint) index));
}

static void
renamed_cb (TrDoughRow *row,
            const char *name,
            TrDoughs   *self)
{
  /* The row may have lost the focus because another was chosen. */
  g_autofree char *chosen = g_strdup (tr_page_get_dough (TR_PAGE (self)) != NULL ? tr_page_get_dough (TR_PAGE (self))->id : NULL);

  if (g_strcmp0 (chosen, tr_dough_row_get_id (row)) == 0)
    {
      rename_dough (self, name);
      return;
    }
  tr_page_set_dough (TR_PAGE (self), tr_dough_row_get_id (row));
  rename_dough (self, name);
  tr_page_set_dough (TR_PAGE (self), chosen);
}

static GdkContentProvider *
drag_prepared_cb (GtkDragSource *source,
                  double         x,
                  double         y,
                  TrDoughRow    *row)
{
  if (tr_dough_row_is_renaming (row))
    return NULL;

  g_autoptr (GdkPaintable) icon = gtk_widget_paintable_new (GTK_WIDGET (row));

  gtk_drag_source_set_icon (source, icon, (int) x, (int) y);
  return gdk_content_provider_new_typed (TR_TYPE_DOUGH_ROW, row);
}

static GtkWidget *
new_row (TrDoughs   *self,
         const char *id)
{
  GtkWidget *row = tr_dough_row_new (id);
  GtkDragSource *source = gtk_drag_source_new ();

  gtk_drag_source_set_actions (source, GDK_ACTION_MOVE);
  g_signal_connect (source, "prepare", G_CALLBACK (drag_prepared_cb), row);
  gtk_widget_add_controller (row, GTK_EVENT_CONTROLLER (source));
  g_signal_connect (row, "renamed", G_CALLBACK (renamed_cb), self);

  return row;
}

/* Where in the order a row dropped at that height shall stand. */
static guint
get_drop_index (TrDoughs *self,
                double    y,
                guint     from)
{
  GtkListBoxRow *under = gtk_list_box_get_row_at_y (GTK_LIST_BOX (self->list), (int) y);
  graphene_rect_t bounds;
  guint gap = count_doughs (self);

  if (under != NULL && gtk_widget_compute_bounds (GTK_WIDGET (under), self->list, &bounds))
    gap = (guint) gtk_list_box_row_get_index (under)
          + (y > bounds.origin.y + bounds.size.height / 2 ? 1 : 0);

  return gap > from ? gap - 1 : gap;
}

static gboolean
dropped_cb (GtkDropTarget *target,
            const GValue  *value,
            double         x,
            double         y,
            TrDoughs      *self)
{
  TrDoughRow *row = g_value_get_object (value);

  if (row == NULL || gtk_widget_get_parent (GTK_WIDGET (row)) != self->list)
    return FALSE;

  guint from = (guint) gtk_list_box_row_get_index (GTK_LIST_BOX_ROW (row));
  guint to = get_drop_index (self, y, from);

  choose (self, tr_dough_row_get_id (row));
  tr_doughs_move (self, to);

  return TRUE;
}

static void
row_selected_cb (GtkListBox    *list,
                 GtkListBoxRow *row,
                 TrDoughs      *self)
{
  if (row != NULL && !tr_page_is_refreshing (TR_PAGE (self)))
    choose (self, tr_dough_row_get_id (TR_DOUGH_ROW (row)));
}

static void
remove_gone_rows (TrDoughs      *self,
                  const TrTrial *trial)
{
  TrDoughRow *row;

  for (guint i = 0; (row = get_row (self, i)) != NULL;)
    if (tr_trial_find_dough (trial, tr_dough_row_get_id (row)) < 0)
      gtk_list_box_remove (GTK_LIST_BOX (self->list), GTK_WIDGET (row));
    else
      i++;
}

/* The row of that dough, at that place. */
static TrDoughRow *
place_row (TrDoughs   *self,
           const char *id,
           guint       index)
{
  TrDoughRow *row = find_row (self, id);
  gboolean had_focus;

  if (row == NULL)
    {
      row = TR_DOUGH_ROW (new_row (self, id));
      gtk_list_box_insert (GTK_LIST_BOX (self->list), GTK_WIDGET (row), (int) index);
      return row;
    }
  if (get_row (self, index) == row)
    return row;

  had_focus = gtk_widget_has_focus (GTK_WIDGET (row));
  g_object_ref (row);
  gtk_list_box_remove (GTK_LIST_BOX (self->list), GTK_WIDGET (row));
  gtk_list_box_insert (GTK_LIST_BOX (self->list), GTK_WIDGET (row), (int) index);
  g_object_unref (row);
  if (had_focus)
    gtk_widget_grab_focus (GTK_WIDGET (row));

  return row;
}

static void
tr_doughs_refresh (TrPage *page)
{
  TrDoughs *self = TR_DOUGHS (page);
  TrDocument *document = tr_page_get_document (page);
  const TrTrial *trial = tr_document_get_trial (document);
  int chosen = tr_page_get_dough_index (page);

  remove_gone_rows (self, trial);
  for (guint i = 0; i < trial->doughs->len; i++)
    tr_dough_row_show (place_row (self, tr_trial_get_dough (trial, i)->id, i),
                       tr_figures_get_dough (tr_document_get_figures (document), i),
                       tr_page_get_reader (page));

  gtk_list_box_select_row (GTK_LIST_BOX (self->list),
                           chosen >= 0 ? GTK_LIST_BOX_ROW (get_row (self, (guint) chosen)) : NULL);
}

static gboolean
tr_doughs_go_to (TrPage     *page,
                 const char *pointer)
{
  TrDoughs *self = TR_DOUGHS (page);
  int index = tr_page_get_dough_index (page);

  if (index < 0 || get_row (self, (guint) index) == NULL)
    return FALSE;
  if (g_str_equal (pointer, "/name"))
    tr_doughs_start_rename (self);
  else if (*pointer == '\0')
    gtk_widget_grab_focus (GTK_WIDGET (get_row (self, (guint) index)));
  else
    return FALSE;

  return TRUE;
}

static void
tr_doughs_dispose (GObject *object)
{
  TrDoughs *self = TR_DOUGHS (object);

  if (self->list != NULL)
    g_signal_handlers_disconnect_by_data (self->list, self);
  self->list = NULL;

  G_OBJECT_CLASS (tr_doughs_parent_class)->dispose (object);
}

static void
tr_doughs_class_init (TrDoughsClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tr_doughs_dispose;
  TR_PAGE_CLASS (klass)->refresh = tr_doughs_refresh;
  TR_PAGE_CLASS (klass)->go_to = tr_doughs_go_to;

  signals[SIGNAL_CHOSEN] = g_signal_new ("chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                         G_TYPE_NONE, 1, G_TYPE_STRING);
}

static GtkWidget *
new_tools (void)
{
  static const struct { const char *icon, *action; } tools[] = {
    { "list-add-symbolic", "win.add-dough" },
    { "edit-copy-symbolic", "win.branch-dough" },
    { "go-up-symbolic", "win.move-dough-up" },
    { "go-down-symbolic", "win.move-dough-down" },
    { "user-trash-symbolic", "win.delete-dough" },
  };
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);

  for (guint i = 0; i < G_N_ELEMENTS (tools); i++)
    {
      GtkWidget *button = gtk_button_new_from_icon_name (tools[i].icon);

      gtk_widget_add_css_class (button, "flat");
      tr_actions_set_up_button (button, tools[i].action);
      gtk_box_append (GTK_BOX (box), button);
    }
  gtk_widget_add_css_class (box, "tools");

  return box;
}

static void
tr_doughs_init (TrDoughs *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  GtkDropTarget *target = gtk_drop_target_new (TR_TYPE_DOUGH_ROW, GDK_ACTION_MOVE);

  self->list = gtk_list_box_new ();
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (self->list), GTK_SELECTION_BROWSE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Doughs"), -1);
  gtk_widget_add_css_class (self->list, "navigation-sidebar");
  g_signal_connect (self->list, "row-selected", G_CALLBACK (row_selected_cb), self);
  g_signal_connect (target, "drop", G_CALLBACK (dropped_cb), self);
  gtk_widget_add_controller (self->list, GTK_EVENT_CONTROLLER (target));
  gtk_widget_add_controller (self->list, tr_actions_new_keys (TR_KEYS_DOUGHS));

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), self->list);
  gtk_widget_set_vexpand (scrolled, TRUE);
  gtk_box_append (GTK_BOX (box), scrolled);
  gtk_box_append (GTK_BOX (box), new_tools ());
  tr_page_set_child (TR_PAGE (self), box);
  gtk_widget_add_css_class (GTK_WIDGET (self), "doughs");
  gtk_widget_set_size_request (GTK_WIDGET (self), 200, -1);
}

GtkWidget *
tr_doughs_new (void)
{
  return g_object_new (TR_TYPE_DOUGHS, NULL);
}
