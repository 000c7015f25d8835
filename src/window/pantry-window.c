/* pantry-window.c: the baker's own ingredients, in a window beside the trial's
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Undo, redo and save have the names they have in the trial's window, so that
 * their keys work here, too.
 */

#include "config.h"

#include "pantry-window.h"

#include <glib/gi18n-lib.h>

#include "actions.h"
#include "field.h"
#include "held-viewports.h"
#include "pantry-edits.h"

struct _TrPantryWindow
{
  GtkWindow parent_instance;

  /* Borrowed */
  TrPage *page;
  GtkWidget *undo_button, *redo_button;

  /* Owned */
  TrPreferences *preferences;    /* NULL: none yet */
  GSignalGroup *document_signals;
  GSignalGroup *text_signals;    /* of the text that has the focus */
};

enum { PROP_0, PROP_DOCUMENT, N_PROPS };
static GParamSpec *properties[N_PROPS];

G_DEFINE_FINAL_TYPE (TrPantryWindow, tr_pantry_window, GTK_TYPE_WINDOW)

static void
reader_changed_cb (TrPantryWindow *self)
{
  TrReader reader;

  tr_preferences_init_reader (self->preferences, &reader);
  tr_page_set_reader (self->page, &reader);
}

static void
undo_cb (GtkWidget  *widget,
         const char *name,
         GVariant   *parameter)
{
  TrPantryWindow *self = TR_PANTRY_WINDOW (widget);
  TrDocument *document = tr_page_get_document (self->page);

  /* What was typed and never got into the trial goes first. */
  if (document == NULL || tr_fields_take_back (GTK_WINDOW (self), FALSE))
    return;

  if (g_str_equal (name, "win.undo"))
    tr_document_undo (document);
  else
    tr_document_redo (document);
}

/* As in the trial's window; what cannot be read is not in the history. */
static void
update_actions (TrPantryWindow *self)
{
  TrDocument *document = tr_page_get_document (self->page);
  gboolean is_there = document != NULL;
  gboolean can_undo = is_there && (tr_document_get_undo_label (document) != NULL || tr_fields_take_back (GTK_WINDOW (self), TRUE));

  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.undo", can_undo);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.redo", is_there && tr_document_get_redo_label (document) != NULL);
  tr_actions_set_tooltip (self->undo_button, "win.undo", is_there ? tr_document_get_undo_label (document) : NULL);
  tr_actions_set_tooltip (self->redo_button, "win.redo", is_there ? tr_document_get_redo_label (document) : NULL);
}

static void
save_cb (GtkWidget  *widget,
         const char *name,
         GVariant   *parameter)
{
  GtkWindow *parent = gtk_window_get_transient_for (GTK_WINDOW (widget));

  gtk_window_set_focus (GTK_WINDOW (widget), NULL);
  if (parent != NULL)
    gtk_widget_activate_action (GTK_WIDGET (parent), name, NULL);
}

static void
close_cb (GtkWidget  *widget,
          const char *name,
          GVariant   *parameter)
{
  gtk_window_close (GTK_WINDOW (widget));
}

/* What stands in the focused field counts. */
static gboolean
tr_pantry_window_close_request (GtkWindow *window)
{
  gtk_window_set_focus (window, NULL);

  return GTK_WINDOW_CLASS (tr_pantry_window_parent_class)->close_request (window);
}

static void
tr_pantry_window_get_property (GObject    *object,
                               guint       prop_id,
                               GValue     *value,
                               GParamSpec *pspec)
{
  if (prop_id == PROP_DOCUMENT)
    g_value_set_object (value, tr_page_get_document (TR_PANTRY_WINDOW (object)->page));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
}

static void
tr_pantry_window_set_property (GObject      *object,
                               guint         prop_id,
                               const GValue *value,
                               GParamSpec   *pspec)
{
  TrPantryWindow *self = TR_PANTRY_WINDOW (object);

  if (prop_id != PROP_DOCUMENT)
    {
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
      return;
    }

  if (tr_page_get_document (self->page) == g_value_get_object (value))
    return;

  tr_page_set_document (self->page, g_value_get_object (value));
  g_signal_group_set_target (self->document_signals, g_value_get_object (value));
  update_actions (self);
  g_object_notify_by_pspec (object, pspec);
}

static void
tr_pantry_window_dispose (GObject *object)
{
  TrPantryWindow *self = TR_PANTRY_WINDOW (object);

  g_clear_object (&self->preferences);
  g_clear_object (&self->document_signals);
  g_clear_object (&self->text_signals);

  G_OBJECT_CLASS (tr_pantry_window_parent_class)->dispose (object);
}

static void
tr_pantry_window_class_init (TrPantryWindowClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = tr_pantry_window_dispose;
  object_class->get_property = tr_pantry_window_get_property;
  object_class->set_property = tr_pantry_window_set_property;
  GTK_WINDOW_CLASS (klass)->close_request = tr_pantry_window_close_request;

  properties[PROP_DOCUMENT] =
    g_param_spec_object ("document", NULL, NULL, TR_TYPE_DOCUMENT,
                         G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, properties);

  gtk_widget_class_install_action (widget_class, "win.undo", NULL, undo_cb);
  gtk_widget_class_install_action (widget_class, "win.redo", NULL, undo_cb);
  gtk_widget_class_install_action (widget_class, "win.save", NULL, save_cb);
  gtk_widget_class_install_action (widget_class, "win.close", NULL, close_cb);
}

static void
focus_changed_cb (TrPantryWindow *self)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (self));

  if (self->text_signals == NULL)
    return;

  g_signal_group_set_target (self->text_signals, GTK_IS_TEXT (focus) ? focus : NULL);
  update_actions (self);
}

static GtkWidget *
new_header_button (GtkWidget  *header,
                   const char *icon,
                   const char *action)
{
  GtkWidget *button = gtk_button_new_from_icon_name (icon);

  tr_actions_set_up_button (button, action);
  gtk_header_bar_pack_start (GTK_HEADER_BAR (header), button);

  return button;
}

static void
tr_pantry_window_init (TrPantryWindow *self)
{
  GtkWidget *header = gtk_header_bar_new ();

  tr_hold_viewports (GTK_WINDOW (self));
  self->page = TR_PAGE (tr_pantry_page_new ());
  self->undo_button = new_header_button (header, "edit-undo-symbolic", "win.undo");
  self->redo_button = new_header_button (header, "edit-redo-symbolic", "win.redo");
  self->document_signals = g_signal_group_new (TR_TYPE_DOCUMENT);
  g_signal_group_connect_object (self->document_signals, "changed", G_CALLBACK (update_actions), self, G_CONNECT_SWAPPED);
  self->text_signals = g_signal_group_new (GTK_TYPE_TEXT);
  g_signal_group_connect_object (self->text_signals, "changed", G_CALLBACK (update_actions), self, G_CONNECT_SWAPPED);
  g_signal_connect (self, "notify::focus-widget", G_CALLBACK (focus_changed_cb), NULL);
  gtk_window_set_titlebar (GTK_WINDOW (self), header);
  gtk_window_set_child (GTK_WINDOW (self), GTK_WIDGET (self->page));
  gtk_window_set_title (GTK_WINDOW (self), _("Ingredients"));
  gtk_window_set_default_size (GTK_WINDOW (self), 820, 640);
  gtk_widget_add_controller (GTK_WIDGET (self), tr_actions_new_close_key ());
}

GtkWidget *
tr_pantry_window_new (GtkWindow     *parent,
                      TrPreferences *preferences)
{
  g_return_val_if_fail (parent == NULL || GTK_IS_WINDOW (parent), NULL);
  g_return_val_if_fail (TR_IS_PREFERENCES (preferences), NULL);

  TrPantryWindow *self = g_object_new (TR_TYPE_PANTRY_WINDOW,
                                       "application", parent != NULL ? gtk_window_get_application (parent) : NULL,
                                       "transient-for", parent,
                                       "destroy-with-parent", TRUE,
                                       NULL);

  self->preferences = g_object_ref (preferences);
  reader_changed_cb (self);
  g_signal_connect_object (preferences, "notify::units", G_CALLBACK (reader_changed_cb), self, G_CONNECT_SWAPPED);

  return GTK_WIDGET (self);
}

TrPage *
tr_pantry_window_get_page (TrPantryWindow *self)
{
  g_return_val_if_fail (TR_IS_PANTRY_WINDOW (self), NULL);

  return self->page;
}

/* What "win.ingredients" has opened or brought to the front. NULL: not there. */
static TrPantryWindow *
find_window (GtkWidget *root)
{
  GListModel *toplevels = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (toplevels); i++)
    {
      g_autoptr (GtkWindow) toplevel = g_list_model_get_item (toplevels, i);

      if (TR_IS_PANTRY_WINDOW (toplevel) && (GtkWidget *) gtk_window_get_transient_for (toplevel) == root)
        return TR_PANTRY_WINDOW (toplevel);
    }

  return NULL;
}

void
tr_pantry_window_open_line (TrPage *page,
                            guint   line)
{
  g_return_if_fail (TR_IS_PAGE (page));
  g_return_if_fail (tr_page_get_dough (page) != NULL && line < tr_page_get_dough (page)->lines->len);

  TrTrial *draft = tr_document_draft (tr_page_get_document (page));
  g_autofree char *id = tr_pantry_own_of_line (draft, (guint) tr_page_get_dough_index (page), line);

  /* A draft that is as the trial makes no step. */
  if (!tr_page_commit (page, draft, _("make an ingredient of my own"), NULL, "/ingredients") || id == NULL)
    return;

  gtk_widget_activate_action (GTK_WIDGET (page), "win.ingredients", NULL);

  TrPantryWindow *self = find_window (GTK_WIDGET (gtk_widget_get_root (GTK_WIDGET (page))));
  const TrPantry *pantry = tr_document_get_trial (tr_page_get_document (page))->pantry;
  g_autofree char *pointer = g_strdup_printf ("/ingredients/%d/name", tr_pantry_find_index (pantry, id));

  if (self != NULL)
    tr_page_go_to (self->page, pointer);
}
