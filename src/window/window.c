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
#include "findings.h"
#include "start-page.h"
#include "strip.h"

#define NARROW_BELOW_PX 1100.0
#define COMPACT_BELOW_PX 800.0

/* In the order in which a finding's field is looked for. */
enum { PAGE_FORMULA, PAGE_TURNS, PAGE_SHEET, PAGE_BENCH, PAGE_DOUGHS, PAGE_FINDINGS, PAGE_STRIP };
static const struct { const char *name, *title; GtkWidget *(*new) (void); } page_kinds[TR_N_PAGES] = {
  [PAGE_FORMULA] = { "formula", N_("Formula"), tr_formula_page_new },
  [PAGE_TURNS] = { "turns", N_("Turns"), tr_turns_page_new },
  [PAGE_SHEET] = { "sheet", N_("Sheet"), tr_sheet_page_new },
  [PAGE_BENCH] = { "bench", N_("Bench"), tr_bench_page_new },
  [PAGE_DOUGHS] = { "doughs", N_("Doughs"), tr_doughs_new },
  [PAGE_FINDINGS] = { "findings", N_("Findings"), tr_findings_new },
  [PAGE_STRIP] = { "strip", N_("Figures"), tr_strip_new },
};

enum { PROP_0, PROP_PREFERENCES, PROP_RECOVERY_FOLDER, PROP_DOCUMENT, PROP_SHOWS_FINDINGS, N_PROPS };

static GParamSpec *properties[N_PROPS];

G_DEFINE_FINAL_TYPE (TrWindow, tr_window, GTK_TYPE_APPLICATION_WINDOW)

const char *
tr_window_get_page_name (guint index)
{
  return page_kinds[index].name;
}

TrPage *
tr_window_get_page (TrWindow   *self,
                    const char *name)
{
  g_return_val_if_fail (TR_IS_WINDOW (self), NULL);

  for (guint i = 0; i < TR_N_PAGES; i++)
    if (g_str_equal (page_kinds[i].name, name))
      return self->pages[i];

  return NULL;
}

TrDoughs *
tr_window_get_doughs (TrWindow *self)
{
  return TR_DOUGHS (self->pages[PAGE_DOUGHS]);
}

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

TrLayout
tr_window_get_layout (TrWindow *self)
{
  g_return_val_if_fail (TR_IS_WINDOW (self), TR_LAYOUT_WIDE);

  return self->layout;
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
    tr_page_set_dough (self->pages[i], self->dough_id);
  gtk_menu_button_set_label (self->doughs_button, dough != NULL ? dough->name : _("Doughs"));
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
units_changed_cb (TrWindow *self)
{
  tr_preferences_init_reader (self->preferences, &self->reader);
  for (guint i = 0; i < TR_N_PAGES; i++)
    tr_page_set_reader (self->pages[i], &self->reader);
}

/* The focus ****************************************************************/

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

void
tr_window_show_page (TrWindow   *self,
                     const char *name)
{
  if (g_str_equal (name, "findings"))
    g_object_set (self, "show-findings", TRUE, NULL);
  else if (g_str_equal (name, "doughs") && self->layout != TR_LAYOUT_WIDE)
    gtk_menu_button_popup (self->doughs_button);
  else if (gtk_stack_get_child_by_name (self->pages_stack, name) != NULL
           && (self->layout == TR_LAYOUT_COMPACT || !g_str_equal (name, "formula")))
    gtk_stack_set_visible_child_name (self->pages_stack, name);
}

static gboolean
go_to_exactly (TrWindow   *self,
               const char *pointer)
{
  for (guint i = 0; i <= PAGE_DOUGHS; i++)
    if (tr_page_go_to (self->pages[i], pointer))
      {
        /* A hidden page has found the field; shown, it can focus it too. */
        tr_window_show_page (self, page_kinds[i].name);
        tr_page_go_to (self->pages[i], pointer);
        return TRUE;
      }

  return FALSE;
}

void
tr_window_go_to (TrWindow   *self,
                 const char *pointer)
{
  g_return_if_fail (TR_IS_WINDOW (self));
  g_return_if_fail (pointer != NULL);

  g_autofree char *part = g_strdup (pointer);

  /* Where no page has that very field, the nearest thing around it will do. */
  while (!go_to_exactly (self, part) && *part != '\0')
    {
      char *last = strrchr (part, '/');

      *(last != NULL ? last : part) = '\0';
    }
}

/* Layout *******************************************************************/

static void
move_to (GtkWidget *widget,
         GtkWidget *slot)
{
  GtkWidget *old_slot = gtk_widget_get_parent (widget);

  if (old_slot == slot)
    return;

  g_object_ref (widget);
  if (old_slot != NULL)
    gtk_box_remove (GTK_BOX (old_slot), widget);
  gtk_box_append (GTK_BOX (slot), widget);
  g_object_unref (widget);
}

static void
set_layout (TrWindow *self,
            TrLayout  layout)
{
  gboolean was_formula = g_strcmp0 (gtk_stack_get_visible_child_name (self->pages_stack), "formula") == 0;

  self->layout = layout;
  gtk_widget_set_visible (GTK_WIDGET (self->doughs_button), layout != TR_LAYOUT_WIDE);
  gtk_popover_popdown (self->doughs_popover);
  move_to (GTK_WIDGET (self->pages[PAGE_DOUGHS]),
           layout == TR_LAYOUT_WIDE ? GTK_WIDGET (self->sidebar) : self->doughs_popover_slot);
  gtk_widget_set_visible (GTK_WIDGET (self->sidebar), layout == TR_LAYOUT_WIDE);

  move_to (GTK_WIDGET (self->pages[PAGE_FORMULA]),
           layout == TR_LAYOUT_COMPACT ? self->formula_stack_slot : GTK_WIDGET (self->formula_slot));
  gtk_widget_set_visible (GTK_WIDGET (self->formula_slot), layout != TR_LAYOUT_COMPACT);
  gtk_stack_page_set_visible (self->formula_stack_page, layout == TR_LAYOUT_COMPACT);
  if (layout == TR_LAYOUT_COMPACT)
    gtk_stack_set_visible_child_name (self->pages_stack, "formula");
  else if (was_formula)
    gtk_stack_set_visible_child_name (self->pages_stack, "turns");
}

static double
get_text_scale (GtkWidget *widget)
{
  int dpi = -1;

  g_object_get (gtk_widget_get_settings (widget), "gtk-xft-dpi", &dpi, NULL);

  return dpi > 0 ? dpi / (96.0 * 1024.0) : 1.0;
}

static TrLayout
choose_layout (TrWindow *self,
               int       width)
{
  double scale = get_text_scale (GTK_WIDGET (self));

  if (width < COMPACT_BELOW_PX * scale)
    return TR_LAYOUT_COMPACT;
  if (width < NARROW_BELOW_PX * scale)
    return TR_LAYOUT_NARROW;

  return TR_LAYOUT_WIDE;
}

static gboolean
layout_in_idle (gpointer user_data)
{
  TrWindow *self = user_data;
  TrLayout layout = choose_layout (self, gtk_widget_get_width (GTK_WIDGET (self)));

  self->layout_idle = 0;
  if (layout != self->layout)
    set_layout (self, layout);

  return G_SOURCE_REMOVE;
}

static void
tr_window_size_allocate (GtkWidget *widget,
                         int        width,
                         int        height,
                         int        baseline)
{
  TrWindow *self = TR_WINDOW (widget);

  GTK_WIDGET_CLASS (tr_window_parent_class)->size_allocate (widget, width, height, baseline);

  /* Widgets must not move while they are given their sizes. */
  if (choose_layout (self, width) != self->layout && self->layout_idle == 0)
    self->layout_idle = g_idle_add_full (G_PRIORITY_HIGH_IDLE, layout_in_idle, self, NULL);
}

/* Building *****************************************************************/

static void
dough_chosen_cb (TrWindow   *self,
                 const char *id)
{
  tr_window_set_dough (self, id);
}

static GtkWidget *
new_slot (void)
{
  GtkWidget *slot = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_widget_set_hexpand (slot, TRUE);
  gtk_widget_set_vexpand (slot, TRUE);

  return slot;
}

static void
build_pages (TrWindow *self)
{
  for (guint i = 0; i < TR_N_PAGES; i++)
    {
      self->pages[i] = TR_PAGE (page_kinds[i].new ());
      gtk_accessible_update_property (GTK_ACCESSIBLE (self->pages[i]), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                      _(page_kinds[i].title), -1);
      if (i <= PAGE_BENCH || i == PAGE_DOUGHS)
        {
          gtk_widget_set_hexpand (GTK_WIDGET (self->pages[i]), TRUE);
          gtk_widget_set_vexpand (GTK_WIDGET (self->pages[i]), TRUE);
        }
    }

  self->formula_stack_slot = new_slot ();
  self->formula_stack_page = gtk_stack_add_titled (self->pages_stack, self->formula_stack_slot, "formula",
                                                   _(page_kinds[PAGE_FORMULA].title));
  for (guint i = PAGE_TURNS; i <= PAGE_BENCH; i++)
    gtk_stack_add_titled (self->pages_stack, GTK_WIDGET (self->pages[i]), page_kinds[i].name, _(page_kinds[i].title));
  gtk_stack_set_visible_child_name (self->pages_stack, "turns");

  self->doughs_popover_slot = new_slot ();
  gtk_widget_set_size_request (self->doughs_popover_slot, 260, -1);
  gtk_popover_set_child (self->doughs_popover, self->doughs_popover_slot);
  gtk_revealer_set_child (self->findings_revealer, GTK_WIDGET (self->pages[PAGE_FINDINGS]));
  gtk_box_append (self->foot, GTK_WIDGET (self->pages[PAGE_STRIP]));
  g_signal_connect_object (self->pages[PAGE_DOUGHS], "chosen", G_CALLBACK (dough_chosen_cb), self, G_CONNECT_SWAPPED);
}

static void
build_buttons (TrWindow *self)
{
  tr_actions_set_up_button (GTK_WIDGET (self->undo_button), "win.undo");
  tr_actions_set_up_button (GTK_WIDGET (self->redo_button), "win.redo");
  tr_actions_set_up_button (GTK_WIDGET (self->save_button), "win.save");
  tr_actions_set_up_button (GTK_WIDGET (self->card_button), "win.export-card");
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
  if (gtk_window_is_active (GTK_WINDOW (self)) && self->document != NULL
      && tr_document_get_file (self->document) != NULL && tr_document_is_changed_on_disk (self->document))
    tr_window_tell_changed_on_disk (self);
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
  int width, height;
  gboolean maximized;

  G_OBJECT_CLASS (tr_window_parent_class)->constructed (object);

  if (self->preferences == NULL)
    self->preferences = tr_preferences_new ();
  g_signal_connect_object (self->preferences, "notify::units", G_CALLBACK (units_changed_cb), self, G_CONNECT_SWAPPED);
  units_changed_cb (self);
  tr_preferences_get_size (self->preferences, &width, &height, &maximized);
  gtk_window_set_default_size (GTK_WINDOW (self), width, height);
  if (maximized)
    gtk_window_maximize (GTK_WINDOW (self));

  if (document == NULL)
    document = tr_document_new ();
  tr_window_set_document (self, document);
  g_object_unref (document);
}

static void
tr_window_dispose (GObject *object)
{
  TrWindow *self = TR_WINDOW (object);

  g_clear_handle_id (&self->layout_idle, g_source_remove);
  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  if (self->document_signals != NULL)
    g_signal_group_set_target (self->document_signals, NULL);
  g_clear_object (&self->document_signals);
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
  gtk_revealer_set_reveal_child (self->findings_revealer, shows);
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
  gtk_widget_class_bind_template_child (widget_class, TrWindow, formula_slot);
  gtk_widget_class_bind_template_child (widget_class, TrWindow, switcher);
  gtk_widget_class_bind_template_child (widget_class, TrWindow, pages_stack);
  gtk_widget_class_bind_template_child (widget_class, TrWindow, findings_revealer);
  gtk_widget_class_bind_template_child (widget_class, TrWindow, foot);
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
  gtk_widget_init_template (GTK_WIDGET (self));
  tr_reader_init_plain (&self->reader, TR_UNITS_METRIC);
  connect_document (self);
  build_pages (self);
  build_buttons (self);
  set_layout (self, TR_LAYOUT_WIDE);
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
