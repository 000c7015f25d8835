/* window.c: one trial on screen
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Lays out the pages and tells them the document, the dough and the reader.
 * Computes nothing and edits nothing itself.
 *
 * Invariants: the dough shown is one of the document's, or none when it has
 * none; every page is told the same one.
 */

#include "config.h"

#include "window-private.h"

#include <glib/gi18n-lib.h>

#include "actions.h"
#include "field.h"
#include "held-viewports.h"
#include "start-page.h"

enum { PROP_0, PROP_PREFERENCES, PROP_RECOVERY_FOLDER, PROP_DOCUMENT, PROP_SHOWS_FINDINGS, N_PROPS };

static GParamSpec *properties[N_PROPS];

G_DEFINE_FINAL_TYPE (TrWindow, tr_window, GTK_TYPE_APPLICATION_WINDOW)

TrDocument *
tr_window_get_document (TrWindow *self)
{
  g_return_val_if_fail (TR_IS_WINDOW (self), NULL);

  return self->document;
}

const char *
tr_window_get_dough_id (TrWindow *self)
{
  g_return_val_if_fail (TR_IS_WINDOW (self), NULL);

  return self->dough_id;
}

gboolean
tr_window_is_pristine (TrWindow *self)
{
  g_return_val_if_fail (TR_IS_WINDOW (self), FALSE);

  return tr_document_get_file (self->document) == NULL
         && !tr_document_is_modified (self->document)
         && tr_document_get_trial (self->document)->doughs->len == 0;
}

const char *
tr_window_get_notice (TrWindow   *self,
                      const char *subject)
{
  g_return_val_if_fail (TR_IS_WINDOW (self), NULL);

  return tr_notices_get (self->notices, subject);
}

/* The dough ****************************************************************/

static void
tell_dough (TrWindow *self)
{
  const TrTrial *trial = tr_document_get_trial (self->document);
  const TrDough *dough = NULL;

  self->dough_index = self->dough_id != NULL ? tr_trial_find_dough (trial, self->dough_id) : -1;
  if (self->dough_index >= 0)
    dough = tr_trial_get_dough (trial, (guint) self->dough_index);

  for (guint i = 0; i < TR_N_PAGES; i++)
    if (self->pages[i] != NULL)
      tr_page_set_dough (self->pages[i], self->dough_id);
  gtk_label_set_label (self->doughs_label, dough != NULL ? dough->name : _("Doughs"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->doughs_button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  dough != NULL ? dough->name : _("Doughs"), -1);
  tr_window_update_actions (self);
}

void
tr_window_set_dough (TrWindow   *self,
                     const char *id)
{
  g_return_if_fail (TR_IS_WINDOW (self));

  if (tr_set_text (&self->dough_id, id))
    tell_dough (self);
}

/* The dough shown may be gone: then the one that took its place is shown. */
static void
keep_a_dough (TrWindow *self)
{
  const TrTrial *trial = tr_document_get_trial (self->document);

  if (trial->doughs->len == 0)
    tr_set_text (&self->dough_id, NULL);
  else if (self->dough_id == NULL || tr_trial_find_dough (trial, self->dough_id) < 0)
    tr_set_text (&self->dough_id,
                 tr_trial_get_dough (trial, (guint) CLAMP (self->dough_index, 0, (int) trial->doughs->len - 1))->id);

  tell_dough (self);
}

/* The document *************************************************************/

static void
show_title (TrWindow *self)
{
  g_autofree char *name = tr_document_dup_display_name (self->document);
  g_autofree char *title = g_strdup_printf ("%s%s", tr_document_is_modified (self->document) ? "• " : "", name);
  GFile *file = tr_document_get_file (self->document);
  g_autofree char *path = file != NULL ? g_file_get_parse_name (file) : NULL;

  gtk_window_set_title (GTK_WINDOW (self), title);
  gtk_widget_set_tooltip_text (gtk_window_get_titlebar (GTK_WINDOW (self)), path);
  tr_window_update_actions (self);
}

static void
show_body (TrWindow *self)
{
  gboolean has_doughs = tr_document_get_trial (self->document)->doughs->len > 0;

  gtk_stack_set_visible_child_name (self->body, has_doughs ? "work" : "start");
  gtk_widget_set_sensitive (GTK_WIDGET (self->doughs_button), has_doughs);
}

static void
document_changed_cb (TrWindow   *self,
                     const char *pointer,
                     TrDocument *document)
{
  tr_set_text (&self->last_pointer, pointer);
  tr_notices_clear (self->notices, "edit");
  keep_a_dough (self);
  show_body (self);
  show_title (self);
}

static void
history_changed_cb (TrWindow *self)
{
  const char *undo = tr_document_get_undo_label (self->document);
  const char *redo = tr_document_get_redo_label (self->document);

  tr_actions_set_tooltip (GTK_WIDGET (self->undo_button), "win.undo", undo);
  tr_actions_set_tooltip (GTK_WIDGET (self->redo_button), "win.redo", redo);
  tr_window_update_actions (self);
}

void
tr_window_set_document (TrWindow   *self,
                        TrDocument *document)
{
  g_return_if_fail (TR_IS_WINDOW (self));
  g_return_if_fail (TR_IS_DOCUMENT (document));

  if (!g_set_object (&self->document, document))
    return;

  if (self->recovery_folder != NULL)
    tr_document_set_recovery_folder (document, self->recovery_folder);
  tr_set_text (&self->dough_id, NULL);
  self->dough_index = 0;
  g_signal_group_set_target (self->document_signals, document);
  keep_a_dough (self);
  for (guint i = 0; i < TR_N_PAGES; i++)
    if (self->pages[i] != NULL)
      tr_page_set_document (self->pages[i], document);
  show_body (self);
  show_title (self);
  history_changed_cb (self);
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_DOCUMENT]);
}

static void
connect_document (TrWindow *self)
{
  GSignalGroup *group = g_signal_group_new (TR_TYPE_DOCUMENT);

  g_signal_group_connect_swapped (group, "changed", G_CALLBACK (document_changed_cb), self);
  g_signal_group_connect_swapped (group, "file-changed", G_CALLBACK (tr_window_tell_changed_on_disk), self);
  g_signal_group_connect_swapped (group, "notify::modified", G_CALLBACK (show_title), self);
  g_signal_group_connect_swapped (group, "notify::file", G_CALLBACK (show_title), self);
  g_signal_group_connect_swapped (group, "notify::title", G_CALLBACK (show_title), self);
  g_signal_group_connect_swapped (group, "notify::undo-label", G_CALLBACK (history_changed_cb), self);
  g_signal_group_connect_swapped (group, "notify::redo-label", G_CALLBACK (history_changed_cb), self);
  self->document_signals = group;
}

/* The reader ***************************************************************/

static void
reader_changed_cb (TrWindow *self)
{
  tr_preferences_init_reader (self->preferences, &self->reader);
  for (guint i = 0; i < TR_N_PAGES; i++)
    if (self->pages[i] != NULL)
      tr_page_set_reader (self->pages[i], &self->reader);
}

/* The focus ****************************************************************/

static void
typed_cb (TrWindow *self)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (self));

  /* A field that is being left writes what it shows. */
  if (!GTK_IS_EDITABLE (focus))
    return;

  /* Fields that write to the trial as one types have no undo of their own, but for what cannot be read. */
  self->has_typed = gtk_editable_get_enable_undo (GTK_EDITABLE (focus))
                    || tr_fields_take_back (GTK_WINDOW (self), TRUE);
  tr_window_update_actions (self);
}

/* What was typed and is not in the trial can be undone, too. */
static void
focus_changed_cb (TrWindow *self)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (self));

  if (self->text_signals == NULL || self->document == NULL)
    return;

  g_signal_group_set_target (self->text_signals, GTK_IS_TEXT (focus) ? focus : NULL);
  self->has_typed = FALSE;
  tr_window_update_actions (self);
}

static void
connect_focus (TrWindow *self)
{
  self->text_signals = g_signal_group_new (GTK_TYPE_TEXT);
  g_signal_group_connect_swapped (self->text_signals, "changed", G_CALLBACK (typed_cb), self);
  g_signal_connect (self, "notify::focus-widget", G_CALLBACK (focus_changed_cb), NULL);
}

void
tr_window_settle_focus (TrWindow *self)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (self));
  int position = -1;

  if (focus == NULL)
    return;

  g_object_ref (focus);
  if (GTK_IS_EDITABLE (focus))
    position = gtk_editable_get_position (GTK_EDITABLE (focus));
  gtk_window_set_focus (GTK_WINDOW (self), NULL);
  /* What was committed may have taken the widget away. */
  if (gtk_widget_get_root (focus) == GTK_ROOT (self) && gtk_widget_get_mapped (focus))
    {
      if (GTK_IS_TEXT (focus))
        gtk_text_grab_focus_without_selecting (GTK_TEXT (focus));
      else
        gtk_widget_grab_focus (focus);
      if (position >= 0)
        gtk_editable_set_position (GTK_EDITABLE (focus), position);
    }
  g_object_unref (focus);
}

static void
tr_window_size_allocate (GtkWidget *widget,
                         int        width,
                         int        height,
                         int        baseline)
{
  TrWindow *self = TR_WINDOW (widget);

  GTK_WIDGET_CLASS (tr_window_parent_class)->size_allocate (widget, width, height, baseline);

  tr_window_queue_layout (self, width);
}

/* Building *****************************************************************/

static void
build_buttons (TrWindow *self)
{
  tr_actions_set_up_button (GTK_WIDGET (self->undo_button), "win.undo");
  tr_actions_set_up_button (GTK_WIDGET (self->redo_button), "win.redo");
  tr_actions_set_up_button (GTK_WIDGET (self->save_button), "win.save");
  tr_actions_set_up_button (GTK_WIDGET (self->card_button), "win.print-card");
}

/* Built when it opens: what undo would undo and the recent files are then those of that moment. */
static void
menu_opened_cb (GtkMenuButton *button,
                gpointer       user_data)
{
  TrWindow *self = user_data;
  g_autoptr (GMenuModel) recent = tr_start_page_new_recent_menu ();
  g_autoptr (GMenuModel) menu = tr_actions_new_menu (tr_document_get_undo_label (self->document),
                                                     tr_document_get_redo_label (self->document),
                                                     recent);

  gtk_menu_button_set_menu_model (button, menu);
}

static void
window_activated_cb (TrWindow *self)
{
  if (!gtk_window_is_active (GTK_WINDOW (self)) || self->document == NULL || tr_document_get_file (self->document) == NULL)
    return;

  if (tr_document_is_changed_on_disk (self->document))
    tr_window_tell_changed_on_disk (self);
  else                           /* what was moved away may have come back */
    tr_notices_clear (self->notices, "disk");
}

static gboolean
tr_window_close_request (GtkWindow *window)
{
  TrWindow *self = TR_WINDOW (window);
  int width, height;

  tr_window_settle_focus (self);
  if (tr_window_ask_before_closing (self))
    return TRUE;

  gtk_window_get_default_size (window, &width, &height);
  tr_preferences_set_size (self->preferences, width, height, gtk_window_is_maximized (window));
  tr_document_discard_recovery (self->document);

  return GTK_WINDOW_CLASS (tr_window_parent_class)->close_request (window);
}

static void
tr_window_constructed (GObject *object)
{
  TrWindow *self = TR_WINDOW (object);
  TrDocument *document = g_steal_pointer (&self->document);
  static const char *const of_the_reader[] = { "notify::units", "notify::scale-step", "notify::fine-scale-step" };
  int width, height;
  gboolean maximized;

  G_OBJECT_CLASS (tr_window_parent_class)->constructed (object);

  if (self->preferences == NULL)
    self->preferences = tr_preferences_new ();
  for (guint i = 0; i < G_N_ELEMENTS (of_the_reader); i++)
    g_signal_connect_object (self->preferences, of_the_reader[i], G_CALLBACK (reader_changed_cb), self, G_CONNECT_SWAPPED);
  reader_changed_cb (self);
  tr_preferences_get_size (self->preferences, &width, &height, &maximized);
  /* At once, or the least size of another layout would stretch the window. */
  tr_window_set_layout_for (self, width);
  gtk_window_set_default_size (GTK_WINDOW (self), width, height);
  if (maximized)
    gtk_window_maximize (GTK_WINDOW (self));

  if (document == NULL)
    document = tr_document_new ();
  tr_window_set_document (self, document);
  g_object_unref (document);
  /* The keyboard begins at the dough that is shown. */
  if (self->layout == TR_LAYOUT_WIDE)
    tr_page_go_to (TR_PAGE (tr_window_get_doughs (self)), "");
}

static void
tr_window_dispose (GObject *object)
{
  TrWindow *self = TR_WINDOW (object);

  g_clear_handle_id (&self->layout_idle, g_source_remove);
  g_clear_handle_id (&self->fill_idle, g_source_remove);
  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  if (self->document_signals != NULL)
    g_signal_group_set_target (self->document_signals, NULL);
  g_clear_object (&self->document_signals);
  if (self->text_signals != NULL)
    g_signal_group_set_target (self->text_signals, NULL);
  g_clear_object (&self->text_signals);
  gtk_widget_dispose_template (GTK_WIDGET (self), TR_TYPE_WINDOW);
  g_clear_object (&self->document);
  g_clear_object (&self->preferences);
  g_clear_object (&self->recovery_folder);

  G_OBJECT_CLASS (tr_window_parent_class)->dispose (object);
}

static void
tr_window_finalize (GObject *object)
{
  TrWindow *self = TR_WINDOW (object);

  g_clear_pointer (&self->dough_id, g_free);
  g_clear_pointer (&self->last_pointer, g_free);

  G_OBJECT_CLASS (tr_window_parent_class)->finalize (object);
}

static void
tr_window_get_property (GObject    *object,
                        guint       prop_id,
                        GValue     *value,
                        GParamSpec *pspec)
{
  TrWindow *self = TR_WINDOW (object);

  switch (prop_id)
    {
    case PROP_DOCUMENT:
      g_value_set_object (value, self->document);
      break;
    case PROP_SHOWS_FINDINGS:
      g_value_set_boolean (value, self->shows_findings);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
show_findings (TrWindow *self,
               gboolean  shows)
{
  if (self->shows_findings == (guint) shows)
    return;

  self->shows_findings = (guint) shows;
  gtk_widget_set_visible (self->findings_slot, shows);
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_SHOWS_FINDINGS]);
}

static void
tr_window_set_property (GObject      *object,
                        guint         prop_id,
                        const GValue *value,
                        GParamSpec   *pspec)
{
  TrWindow *self = TR_WINDOW (object);

  switch (prop_id)
    {
    case PROP_PREFERENCES:
      self->preferences = g_value_dup_object (value);
      break;
    case PROP_RECOVERY_FOLDER:
      self->recovery_folder = g_value_dup_object (value);
      break;
    case PROP_DOCUMENT:
      self->document = g_value_dup_object (value);
      break;
    case PROP_SHOWS_FINDINGS:
      show_findings (self, g_value_get_boolean (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
install_properties (GObjectClass *object_class)
{
  const GParamFlags once = G_PARAM_CONSTRUCT_ONLY | G_PARAM_STATIC_STRINGS;

  properties[PROP_PREFERENCES] = g_param_spec_object ("preferences", NULL, NULL, TR_TYPE_PREFERENCES, G_PARAM_WRITABLE | once);
  properties[PROP_RECOVERY_FOLDER] = g_param_spec_object ("recovery-folder", NULL, NULL, G_TYPE_FILE, G_PARAM_WRITABLE | once);
  properties[PROP_DOCUMENT] = g_param_spec_object ("document", NULL, NULL, TR_TYPE_DOCUMENT, G_PARAM_READWRITE | once);
  properties[PROP_SHOWS_FINDINGS] = g_param_spec_boolean ("show-findings", NULL, NULL, FALSE,
                                                          G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  g_type_ensure (TR_TYPE_NOTICES);
  g_type_ensure (TR_TYPE_START_PAGE);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/github/tourier/window.ui");
  gtk_widget_class_bind_template_child (widget_class, TrWindow, doughs_button);
  gtk_widget_class_bind_template_child (widget_class, TrWindow, doughs_label);
  gtk_widget_class_bind_template_child (widget_class, TrWindow, doughs_popover);
  gtk_widget_class_bind_template_child (widget_class, TrWindow, undo_button);
  gtk_widget_class_bind_template_child (widget_class, TrWindow, redo_button);
  gtk_widget_class_bind_template_child (widget_class, TrWindow, card_button);
  gtk_widget_class_bind_template_child (widget_class, TrWindow, save_button);
  gtk_widget_class_bind_template_child (widget_class, TrWindow, menu_button);
  gtk_widget_class_bind_template_child (widget_class, TrWindow, notices);
  gtk_widget_class_bind_template_child (widget_class, TrWindow, body);
  gtk_widget_class_bind_template_child (widget_class, TrWindow, start_page);
  gtk_widget_class_bind_template_child (widget_class, TrWindow, outer_paned);
  gtk_widget_class_bind_template_child (widget_class, TrWindow, inner_paned);
  gtk_widget_class_bind_template_child (widget_class, TrWindow, sidebar);
  gtk_widget_class_bind_template_child (widget_class, TrWindow, formula_scroller);
  gtk_widget_class_bind_template_child (widget_class, TrWindow, formula_slot);
  gtk_widget_class_bind_template_child (widget_class, TrWindow, switcher);
  gtk_widget_class_bind_template_child (widget_class, TrWindow, compact_switcher);
  gtk_widget_class_bind_template_child (widget_class, TrWindow, pages_box);
  gtk_widget_class_bind_template_child (widget_class, TrWindow, pages_stack);
  gtk_widget_class_bind_template_child (widget_class, TrWindow, findings_slot);
  gtk_widget_class_bind_template_child (widget_class, TrWindow, foot);
  gtk_widget_class_bind_template_child (widget_class, TrWindow, trial_slot);
}

static void
tr_window_class_init (TrWindowClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->constructed = tr_window_constructed;
  object_class->dispose = tr_window_dispose;
  object_class->finalize = tr_window_finalize;
  object_class->get_property = tr_window_get_property;
  object_class->set_property = tr_window_set_property;
  widget_class->size_allocate = tr_window_size_allocate;
  GTK_WINDOW_CLASS (klass)->close_request = tr_window_close_request;

  install_properties (object_class);
  bind_template (widget_class);
  tr_window_class_install_actions (widget_class);
}

static void
tr_window_init (TrWindow *self)
{
  tr_hold_viewports (GTK_WINDOW (self));
  gtk_widget_init_template (GTK_WIDGET (self));
  tr_reader_init_plain (&self->reader, TR_UNITS_METRIC);
  connect_document (self);
  connect_focus (self);
  tr_window_build_pages (self);
  build_buttons (self);
  gtk_menu_button_set_create_popup_func (self->menu_button, menu_opened_cb, self, NULL);
  tr_window_accept_drops (self);
  g_signal_connect (self, "notify::is-active", G_CALLBACK (window_activated_cb), NULL);
}

GtkWidget *
tr_window_new (GtkApplication *application,
               TrPreferences  *preferences,
               GFile          *recovery_folder,
               TrDocument     *document)
{
  g_return_val_if_fail (GTK_IS_APPLICATION (application), NULL);

  return g_object_new (TR_TYPE_WINDOW,
                       "application", application,
                       "preferences", preferences,
                       "recovery-folder", recovery_folder,
                       "document", document,
                       NULL);
}
