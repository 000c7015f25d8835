/* window-actions.c: the table of actions, and what each does
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One static table: name, accelerator, label, place in the menu, callback. The
 * menu, the accelerators, the tooltips and the list of keys follow from it.
 */

#include "config.h"

#include "window-private.h"

#include <glib/gi18n-lib.h>

#include "actions.h"
#include "carry-window.h"
#include "field.h"
#include "picture-view.h"
#include "pantry-window.h"
#include "preferences-window.h"

/* What is one function of the window, without or with the text that comes along. */
#define DEFINE_CALLBACK(name, function)  \
  static void                            \
  name##_cb (GtkWidget  *widget,         \
             const char *action,         \
             GVariant   *parameter)      \
  {                                      \
    function (TR_WINDOW (widget));       \
  }

#define DEFINE_TEXT_CALLBACK(name, function)                                \
  static void                                                               \
  name##_cb (GtkWidget  *widget,                                            \
             const char *action,                                            \
             GVariant   *parameter)                                         \
  {                                                                         \
    function (TR_WINDOW (widget), g_variant_get_string (parameter, NULL));  \
  }

DEFINE_CALLBACK (new_trial, tr_window_new_trial)
DEFINE_CALLBACK (open, tr_window_open)
DEFINE_CALLBACK (open_demo, tr_window_open_demo)
DEFINE_CALLBACK (save, tr_window_save)
DEFINE_CALLBACK (save_as, tr_window_save_as)
DEFINE_CALLBACK (reload, tr_window_reload)
DEFINE_CALLBACK (print_card, tr_window_print)
DEFINE_TEXT_CALLBACK (open_uri, tr_window_open_uri)
DEFINE_TEXT_CALLBACK (go_to, tr_window_go_to)
DEFINE_TEXT_CALLBACK (show_dough, tr_window_set_dough)
DEFINE_TEXT_CALLBACK (recover, tr_window_recover)
DEFINE_TEXT_CALLBACK (drop_recovery, tr_window_drop_recovery)

static void
recipe_cb (GtkWidget  *widget,
           const char *name,
           GVariant   *parameter)
{
  if (g_str_equal (name, "win.paste-recipe"))
    tr_window_paste_recipe (TR_WINDOW (widget));
  else
    tr_window_read_recipe (TR_WINDOW (widget));
}

/* What is typed and not yet anywhere else is taken back first. TRUE: it was. */
static gboolean
change_typing (TrWindow   *self,
               const char *text_action)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (self));
  g_autofree char *before = NULL;

  if (!GTK_IS_TEXT (focus))
    return FALSE;
  if (g_str_equal (text_action, "text.undo") && tr_fields_take_back (GTK_WINDOW (self), FALSE))
    return TRUE;

  before = g_strdup (gtk_editable_get_text (GTK_EDITABLE (focus)));
  gtk_widget_activate_action (focus, text_action, NULL);

  return !g_str_equal (before, gtk_editable_get_text (GTK_EDITABLE (focus)));
}

/* Whose copy stood there before the undo and is gone now; -1: none did. */
static int
find_original (const TrTrial *before,
               const TrTrial *after,
               guint          index)
{
  const TrDough *gone = index < before->doughs->len ? tr_trial_get_dough (before, index) : NULL;

  if (gone == NULL || gone->from == NULL || tr_trial_find_dough (after, gone->id) >= 0)
    return -1;

  return tr_trial_find_dough (after, gone->from);
}

/* Undo and redo show what they changed. */
static void
show_last_change (TrWindow      *self,
                  const TrTrial *before)
{
  const TrTrial *trial = tr_document_get_trial (self->document);
  const char *pointer = self->last_pointer != NULL ? self->last_pointer : "";
  char *rest = NULL;
  guint64 index;

  if (!g_str_has_prefix (pointer, "/doughs/"))
    {
      if (*pointer != '\0')
        tr_window_go_to (self, pointer);
      return;
    }

  index = MIN (g_ascii_strtoull (pointer + strlen ("/doughs/"), &rest, 10), G_MAXUINT);
  int original = find_original (before, trial, (guint) index);

  if (original >= 0)
    index = (guint) original;
  if (index >= trial->doughs->len)
    return;

  g_autofree char *where = g_strdup (rest);

  tr_window_set_dough (self, tr_trial_get_dough (trial, (guint) index)->id);
  if (!g_str_equal (where, "/name"))
    tr_window_go_to (self, where);
}

static void
undo_cb (GtkWidget  *widget,
         const char *name,
         GVariant   *parameter)
{
  TrWindow *self = TR_WINDOW (widget);
  gboolean is_redo = g_str_equal (name, "win.redo");

  if (change_typing (self, is_redo ? "text.redo" : "text.undo"))
    return;
  if ((is_redo ? tr_document_get_redo_label (self->document) : tr_document_get_undo_label (self->document)) == NULL)
    return;

  /* Left, a field commits what stands in it and shows what is undone. */
  gtk_window_set_focus (GTK_WINDOW (self), NULL);
  g_autoptr (TrTrial) before = tr_trial_ref (tr_document_get_trial (self->document));

  if (is_redo)
    tr_document_redo (self->document);
  else
    tr_document_undo (self->document);
  show_last_change (self, before);
}

static void
export_cb (GtkWidget  *widget,
           const char *name,
           GVariant   *parameter)
{
  tr_window_export (TR_WINDOW (widget), g_str_equal (name, "win.export-all-cards"));
}

/* "win.export-comparison" and its like. */
static void
export_paper_cb (GtkWidget  *widget,
                 const char *name,
                 GVariant   *parameter)
{
  tr_window_export_paper (TR_WINDOW (widget), name + strlen ("win.export-"));
}

static void
print_paper_cb (GtkWidget  *widget,
                const char *name,
                GVariant   *parameter)
{
  tr_window_print_paper (TR_WINDOW (widget), name + strlen ("win.print-"));
}

static void
copy_picture_cb (GtkWidget  *widget,
                 const char *name,
                 GVariant   *parameter)
{
  TrPictureView *picture = tr_picture_view_find (GTK_ROOT (widget));

  if (picture != NULL)
    tr_picture_view_copy (picture);
  else
    tr_window_show_error (TR_WINDOW (widget), _("Point at the picture that is to be copied."));
}

static void
add_dough_cb (GtkWidget  *widget,
              const char *name,
              GVariant   *parameter)
{
  tr_doughs_add (tr_window_get_doughs (TR_WINDOW (widget)), tr_window_new_plain_dough ());
}

static void
branch_dough_cb (GtkWidget  *widget,
                 const char *name,
                 GVariant   *parameter)
{
  tr_window_settle_focus (TR_WINDOW (widget));
  tr_doughs_branch (tr_window_get_doughs (TR_WINDOW (widget)));
}

static void
rename_dough_cb (GtkWidget  *widget,
                 const char *name,
                 GVariant   *parameter)
{
  tr_window_show_page (TR_WINDOW (widget), "doughs");
  tr_doughs_start_rename (tr_window_get_doughs (TR_WINDOW (widget)));
}

static void
delete_dough_cb (GtkWidget  *widget,
                 const char *name,
                 GVariant   *parameter)
{
  tr_doughs_delete (tr_window_get_doughs (TR_WINDOW (widget)));
}

static void
move_dough_cb (GtkWidget  *widget,
               const char *name,
               GVariant   *parameter)
{
  TrDoughs *doughs = tr_window_get_doughs (TR_WINDOW (widget));
  int to = tr_page_get_dough_index (TR_PAGE (doughs)) + (g_str_equal (name, "win.move-dough-up") ? -1 : 1);

  if (to >= 0)
    tr_doughs_move (doughs, (guint) to);
}

static void
step_dough_cb (GtkWidget  *widget,
               const char *name,
               GVariant   *parameter)
{
  TrWindow *self = TR_WINDOW (widget);
  const TrTrial *trial = tr_document_get_trial (self->document);
  int to = self->dough_index + (g_str_equal (name, "win.next-dough") ? 1 : -1);

  if (to >= 0 && to < (int) trial->doughs->len)
    tr_window_set_dough (self, tr_trial_get_dough (trial, (guint) to)->id);
}

/* "win.go-doughs" brings the page "doughs" into view and the focus into it. */
static void
go_page_cb (GtkWidget  *widget,
            const char *name,
            GVariant   *parameter)
{
  TrWindow *self = TR_WINDOW (widget);
  const char *page = name + strlen ("win.go-");

  tr_window_show_page (self, page);
  if (g_str_equal (page, "doughs"))
    tr_page_go_to (TR_PAGE (tr_window_get_doughs (self)), "");
  else
    {
      /* Always to its first field, also from another of its fields. */
      gtk_window_set_focus (GTK_WINDOW (self), NULL);
      gtk_widget_child_focus (GTK_WIDGET (tr_window_get_page (self, page)), GTK_DIR_TAB_FORWARD);
    }
}

/* The window of that name that this one has opened: asked for again it is not opened twice. */
static gboolean
present_again (GtkWidget  *self,
               const char *name)
{
  GListModel *toplevels = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (toplevels); i++)
    {
      g_autoptr (GtkWindow) toplevel = g_list_model_get_item (toplevels, i);

      if (gtk_window_get_transient_for (toplevel) == GTK_WINDOW (self)
          && g_str_equal (gtk_widget_get_name (GTK_WIDGET (toplevel)), name))
        {
          gtk_window_present (toplevel);
          return TRUE;
        }
    }

  return FALSE;
}

static void
present_new (GtkWidget  *window,
             const char *name)
{
  gtk_widget_set_name (window, name);
  gtk_window_present (GTK_WINDOW (window));
}

static void
preferences_cb (GtkWidget  *widget,
                const char *name,
                GVariant   *parameter)
{
  if (!present_again (widget, "preferences"))
    present_new (tr_preferences_window_new (GTK_WINDOW (widget), TR_WINDOW (widget)->preferences), "preferences");
}

static void
carry_doughs_cb (GtkWidget  *widget,
                 const char *name,
                 GVariant   *parameter)
{
  TrWindow *self = TR_WINDOW (widget);

  if (present_again (widget, "carry"))
    return;

  tr_window_settle_focus (self);
  present_new (tr_carry_window_new (GTK_WINDOW (widget), self->document, self->dough_id), "carry");
}

static void
ingredients_cb (GtkWidget  *widget,
                const char *name,
                GVariant   *parameter)
{
  if (present_again (widget, "ingredients"))
    return;

  GtkWidget *window = tr_pantry_window_new (GTK_WINDOW (widget), TR_WINDOW (widget)->preferences);

  g_object_bind_property (widget, "document", window, "document", G_BINDING_SYNC_CREATE);
  present_new (window, "ingredients");
}

static void
shortcuts_cb (GtkWidget  *widget,
              const char *name,
              GVariant   *parameter)
{
  if (!present_again (widget, "keys"))
    present_new (tr_actions_new_shortcuts_window (GTK_WINDOW (widget)), "keys");
}

static void
about_cb (GtkWidget  *widget,
          const char *name,
          GVariant   *parameter)
{
  gtk_show_about_dialog (GTK_WINDOW (widget),
                         "program-name", "Tourier",
                         "version", TR_VERSION,
                         "logo-icon-name", "tourier",
                         "comments", _("A laminated-dough workbench. Ovens, hot fat, raw egg and rollers can hurt: "
                                       "your local rules and licensed practice decide."),
                         "copyright", "© 2026 The Tourier authors",
                         "license-type", GTK_LICENSE_GPL_3_0,
                         NULL);
}

static void
close_cb (GtkWidget  *widget,
          const char *name,
          GVariant   *parameter)
{
  gtk_window_close (GTK_WINDOW (widget));
}

/* Every window asks for itself. */
static void
quit_cb (GtkWidget  *widget,
         const char *name,
         GVariant   *parameter)
{
  GtkApplication *application = gtk_window_get_application (GTK_WINDOW (widget));
  GList *windows = g_list_copy (gtk_application_get_windows (application));

  for (GList *window = windows; window != NULL; window = window->next)
    if (TR_IS_WINDOW (window->data))
      gtk_window_close (window->data);
  g_list_free (windows);
}

static const TrAction actions[] = {
  { "win.new", "<Control>n", N_("New trial"), TR_MENU_FILE, TR_KEYS_EVERYWHERE, new_trial_cb },
  { "win.open", "<Control>o", N_("Open…"), TR_MENU_FILE, TR_KEYS_EVERYWHERE, open_cb },
  { "win.open-demo", NULL, N_("Open the demo"), TR_MENU_FILE, TR_KEYS_EVERYWHERE, open_demo_cb },
  { "win.read-recipe", "<Control>r", N_("Read a recipe…"), TR_MENU_FILE, TR_KEYS_EVERYWHERE, recipe_cb },
  { "win.paste-recipe", "<Control><Shift>v", N_("Paste a recipe"), TR_MENU_FILE, TR_KEYS_EVERYWHERE, recipe_cb },
  { "win.save", "<Control>s", N_("Save"), TR_MENU_SAVE, TR_KEYS_EVERYWHERE, save_cb },
  { "win.save-as", "<Control><Shift>s", N_("Save as…"), TR_MENU_SAVE, TR_KEYS_EVERYWHERE, save_as_cb },
  { "win.undo", "<Control>z", N_("Undo"), TR_MENU_EDIT, TR_KEYS_EVERYWHERE, undo_cb },
  { "win.redo", "<Control><Shift>z", N_("Redo"), TR_MENU_EDIT, TR_KEYS_EVERYWHERE, undo_cb },
  { "win.copy-picture", "<Control><Shift>c", N_("Copy picture"), TR_MENU_EDIT, TR_KEYS_EVERYWHERE, copy_picture_cb },
  { "win.ingredients", "<Control>i", N_("Ingredients…"), TR_MENU_EDIT, TR_KEYS_EVERYWHERE, ingredients_cb },
  { "win.export-card", "<Control>e", N_("Export bench card…"), TR_MENU_PAPER, TR_KEYS_EVERYWHERE, export_cb },
  { "win.export-all-cards", "<Control><Shift>e", N_("Export all bench cards…"), TR_MENU_PAPER, TR_KEYS_EVERYWHERE, export_cb },
  { "win.export-comparison", NULL, N_("Export the comparison…"), TR_MENU_PAPER, TR_KEYS_EVERYWHERE, export_paper_cb },
  { "win.export-score-sheets", NULL, N_("Export score sheets…"), TR_MENU_PAPER, TR_KEYS_EVERYWHERE, export_paper_cb },
  { "win.export-code-labels", NULL, N_("Export code labels…"), TR_MENU_PAPER, TR_KEYS_EVERYWHERE, export_paper_cb },
  { "win.export-tasting-key", NULL, N_("Export the key of the tasting…"), TR_MENU_PAPER, TR_KEYS_EVERYWHERE, export_paper_cb },
  { "win.export-tasting-result", NULL, N_("Export the result of the tasting…"), TR_MENU_PAPER, TR_KEYS_EVERYWHERE, export_paper_cb },
  { "win.print-card", "<Control>p", N_("Print bench cards…"), TR_MENU_PRINT, TR_KEYS_EVERYWHERE, print_card_cb },
  { "win.print-comparison", NULL, N_("Print the comparison…"), TR_MENU_PRINT, TR_KEYS_EVERYWHERE, print_paper_cb },
  { "win.print-score-sheets", NULL, N_("Print score sheets…"), TR_MENU_PRINT, TR_KEYS_EVERYWHERE, print_paper_cb },
  { "win.print-code-labels", NULL, N_("Print code labels…"), TR_MENU_PRINT, TR_KEYS_EVERYWHERE, print_paper_cb },
  { "win.print-tasting-key", NULL, N_("Print the key of the tasting…"), TR_MENU_PRINT, TR_KEYS_EVERYWHERE, print_paper_cb },
  { "win.print-tasting-result", NULL, N_("Print the result of the tasting…"), TR_MENU_PRINT, TR_KEYS_EVERYWHERE, print_paper_cb },
  { "win.add-dough", "<Control><Shift>n", N_("Add a plain dough"), TR_MENU_DOUGHS, TR_KEYS_EVERYWHERE, add_dough_cb },
  { "win.branch-dough", "<Control>d", N_("New dough from this one"), TR_MENU_DOUGHS, TR_KEYS_EVERYWHERE, branch_dough_cb },
  { "win.carry-doughs", NULL, N_("Carry doughs to a new trial…"), TR_MENU_DOUGHS, TR_KEYS_EVERYWHERE, carry_doughs_cb },
  { "win.rename-dough", "F2", N_("Rename dough"), TR_MENU_DOUGHS, TR_KEYS_EVERYWHERE, rename_dough_cb },
  { "win.delete-dough", "Delete", N_("Delete dough"), TR_MENU_DOUGHS, TR_KEYS_DOUGHS, delete_dough_cb },
  { "win.move-dough-up", "<Alt>Up", N_("Move dough up"), TR_MENU_DOUGHS, TR_KEYS_DOUGHS, move_dough_cb },
  { "win.move-dough-down", "<Alt>Down", N_("Move dough down"), TR_MENU_DOUGHS, TR_KEYS_DOUGHS, move_dough_cb },
  { "win.previous-dough", "<Control>Page_Up", N_("Previous dough"), TR_MENU_DOUGHS, TR_KEYS_EVERYWHERE, step_dough_cb },
  { "win.next-dough", "<Control>Page_Down", N_("Next dough"), TR_MENU_DOUGHS, TR_KEYS_EVERYWHERE, step_dough_cb },
  { "win.go-doughs", "<Alt>1", N_("Doughs"), TR_MENU_VIEW, TR_KEYS_EVERYWHERE, go_page_cb },
  { "win.go-formula", "<Alt>2", N_("Formula"), TR_MENU_VIEW, TR_KEYS_EVERYWHERE, go_page_cb },
  { "win.go-turns", "<Alt>3", N_("Turns"), TR_MENU_VIEW, TR_KEYS_EVERYWHERE, go_page_cb },
  { "win.go-sheet", "<Alt>4", N_("Sheet"), TR_MENU_VIEW, TR_KEYS_EVERYWHERE, go_page_cb },
  { "win.go-method", "<Alt>5", N_("Method"), TR_MENU_VIEW, TR_KEYS_EVERYWHERE, go_page_cb },
  { "win.go-total", "<Alt>6", N_("Total"), TR_MENU_VIEW, TR_KEYS_EVERYWHERE, go_page_cb },
  { "win.go-bench", "<Alt>7", N_("Bench"), TR_MENU_VIEW, TR_KEYS_EVERYWHERE, go_page_cb },
  { "win.go-log", "<Alt>9", N_("Log"), TR_MENU_VIEW, TR_KEYS_EVERYWHERE, go_page_cb },
  { "win.go-compare", "F5", N_("Compare"), TR_MENU_VIEW, TR_KEYS_EVERYWHERE, go_page_cb },
  { "win.go-tasting", "F7", N_("Tasting"), TR_MENU_VIEW, TR_KEYS_EVERYWHERE, go_page_cb },
  { "win.show-findings", "F9", N_("Findings"), TR_MENU_VIEW, TR_KEYS_EVERYWHERE, NULL },
  { "win.go-findings", "<Alt>8", N_("Go to the findings"), TR_MENU_NONE, TR_KEYS_EVERYWHERE, go_page_cb },
  { "app.units::metric", NULL, N_("Metric: g, mm, °C"), TR_MENU_UNITS, TR_KEYS_EVERYWHERE, NULL },
  { "app.units::us", NULL, N_("US: oz, in, °F"), TR_MENU_UNITS, TR_KEYS_EVERYWHERE, NULL },
  { "app.colours::system", NULL, N_("As the system"), TR_MENU_COLOURS, TR_KEYS_EVERYWHERE, NULL },
  { "app.colours::light", NULL, N_("Light"), TR_MENU_COLOURS, TR_KEYS_EVERYWHERE, NULL },
  { "app.colours::dark", NULL, N_("Dark"), TR_MENU_COLOURS, TR_KEYS_EVERYWHERE, NULL },
  { "win.preferences", "<Control>comma", N_("Preferences"), TR_MENU_HELP, TR_KEYS_EVERYWHERE, preferences_cb },
  { "win.shortcuts", "<Control>question", N_("Keys"), TR_MENU_HELP, TR_KEYS_EVERYWHERE, shortcuts_cb },
  { "win.about", NULL, N_("About Tourier"), TR_MENU_HELP, TR_KEYS_EVERYWHERE, about_cb },
  { "win.close", "<Control>w", N_("Close"), TR_MENU_CLOSE, TR_KEYS_EVERYWHERE, close_cb },
  { "win.quit", "<Control>q", N_("Quit"), TR_MENU_CLOSE, TR_KEYS_EVERYWHERE, quit_cb },
  { "preview.previous-page", "Page_Up", N_("Previous page"), TR_MENU_NONE, TR_KEYS_PREVIEW, NULL },
  { "preview.next-page", "Page_Down", N_("Next page"), TR_MENU_NONE, TR_KEYS_PREVIEW, NULL },
  { "preview.first-page", "Home", N_("First page"), TR_MENU_NONE, TR_KEYS_PREVIEW, NULL },
  { "preview.last-page", "End", N_("Last page"), TR_MENU_NONE, TR_KEYS_PREVIEW, NULL },
  { "preview.zoom-in", "<Control>plus", N_("Larger"), TR_MENU_NONE, TR_KEYS_PREVIEW, NULL },
  { "preview.zoom-out", "<Control>minus", N_("Smaller"), TR_MENU_NONE, TR_KEYS_PREVIEW, NULL },
  { "preview.zoom-to-width", "<Control>0", N_("As wide as the window"), TR_MENU_NONE, TR_KEYS_PREVIEW, NULL },
  { "preview.print", "<Control>p", N_("Print…"), TR_MENU_NONE, TR_KEYS_PREVIEW, NULL },
  { "preview.export", "<Control>e", N_("Export…"), TR_MENU_NONE, TR_KEYS_PREVIEW, NULL },
  { "preview.close", "Escape", N_("Close the preview"), TR_MENU_NONE, TR_KEYS_PREVIEW, NULL },
  { "prediction.move-up", "<Alt>Up", N_("Better by one place"), TR_MENU_NONE, TR_KEYS_PREDICTION, NULL },
  { "prediction.move-down", "<Alt>Down", N_("Worse by one place"), TR_MENU_NONE, TR_KEYS_PREDICTION, NULL },
  { "turn.fold-2", "2", N_("Half fold"), TR_MENU_NONE, TR_KEYS_TURNS, NULL },
  { "turn.fold-3", "3", N_("Letter fold"), TR_MENU_NONE, TR_KEYS_TURNS, NULL },
  { "turn.fold-4", "4", N_("Book fold"), TR_MENU_NONE, TR_KEYS_TURNS, NULL },
  { "turn.fold-5", "5", N_("Fold in 5"), TR_MENU_NONE, TR_KEYS_TURNS, NULL },
  { "turn.fold-6", "6", N_("Fold in 6"), TR_MENU_NONE, TR_KEYS_TURNS, NULL },
  { "turn.thicker", "plus", N_("Roll it thicker"), TR_MENU_NONE, TR_KEYS_TURNS, NULL },
  { "turn.thinner", "minus", N_("Roll it thinner"), TR_MENU_NONE, TR_KEYS_TURNS, NULL },
  { "turn.find", "f", N_("Find a sequence"), TR_MENU_NONE, TR_KEYS_TURNS, NULL },
  { "turn.add", "a", N_("Add a turn after it"), TR_MENU_NONE, TR_KEYS_TURNS, NULL },
  { "turn.remove", "Delete", N_("Remove the turn"), TR_MENU_NONE, TR_KEYS_TURNS, NULL },
  { "turn.move-left", "<Control>Left", N_("Move the turn to the left"), TR_MENU_NONE, TR_KEYS_TURNS, NULL },
  { "turn.move-right", "<Control>Right", N_("Move the turn to the right"), TR_MENU_NONE, TR_KEYS_TURNS, NULL },
  { "picture.copy", "<Control>c", N_("Copy picture"), TR_MENU_NONE, TR_KEYS_PICTURES, NULL },
  { "picture.save", NULL, N_("Save picture as…"), TR_MENU_NONE, TR_KEYS_PICTURES, NULL },
  { "picture.zoom-in", "plus", N_("Zoom in"), TR_MENU_NONE, TR_KEYS_PICTURES, NULL },
  { "picture.zoom-out", "minus", N_("Zoom out"), TR_MENU_NONE, TR_KEYS_PICTURES, NULL },
  { "picture.fit", "0", N_("Whole picture"), TR_MENU_NONE, TR_KEYS_PICTURES, NULL },
  { "picture.menu", "<Shift>F10", N_("Menu of the picture"), TR_MENU_NONE, TR_KEYS_PICTURES, NULL },
};

const TrAction *
tr_actions_get (guint *n_actions)
{
  *n_actions = G_N_ELEMENTS (actions);

  return actions;
}

/* Not for menus: what notices, findings and pages ask of the window. */

static void
notice_cb (GtkWidget  *widget,
           const char *name,
           GVariant   *parameter)
{
  tr_notices_show (TR_WINDOW (widget)->notices, "edit", g_variant_get_string (parameter, NULL), NULL, 0);
}

/* What was done, until something else is: it can be taken back there. */
static void
told_cb (GtkWidget  *widget,
         const char *name,
         GVariant   *parameter)
{
  const TrNoticeButton undo = { _("Undo"), "win.undo" };

  tr_notices_show (TR_WINDOW (widget)->notices, "edit", g_variant_get_string (parameter, NULL), &undo, 1);
}

void
tr_window_class_install_actions (GtkWidgetClass *widget_class)
{
  for (guint i = 0; i < G_N_ELEMENTS (actions); i++)
    if (actions[i].callback != NULL)
      gtk_widget_class_install_action (widget_class, actions[i].name, NULL, actions[i].callback);

  gtk_widget_class_install_property_action (widget_class, "win.show-findings", "show-findings");
  gtk_widget_class_install_action (widget_class, "win.open-uri", "s", open_uri_cb);
  gtk_widget_class_install_action (widget_class, "win.go-to", "s", go_to_cb);
  gtk_widget_class_install_action (widget_class, "win.show-dough", "s", show_dough_cb);
  gtk_widget_class_install_action (widget_class, "win.notice", "s", notice_cb);
  gtk_widget_class_install_action (widget_class, "win.told", "s", told_cb);
  gtk_widget_class_install_action (widget_class, "win.reload", NULL, reload_cb);
  gtk_widget_class_install_action (widget_class, "win.recover", "s", recover_cb);
  gtk_widget_class_install_action (widget_class, "win.drop-recovery", "s", drop_recovery_cb);
}

static void
enable (TrWindow   *self,
        gboolean    enabled,
        const char *name)
{
  gtk_widget_action_set_enabled (GTK_WIDGET (self), name, enabled);
}

void
tr_window_update_actions (TrWindow *self)
{
  static const char *const on_a_dough[] = {
    "win.export-card", "win.export-all-cards", "win.export-comparison", "win.export-score-sheets", "win.export-code-labels",
    "win.export-tasting-key", "win.export-tasting-result", "win.print-card", "win.print-comparison", "win.print-score-sheets",
    "win.print-code-labels", "win.print-tasting-key", "win.print-tasting-result", "win.branch-dough", "win.carry-doughs",
    "win.rename-dough", "win.delete-dough", "win.go-doughs", "win.go-formula", "win.go-turns", "win.go-sheet", "win.go-method",
    "win.go-total", "win.go-log", "win.go-bench", "win.go-compare", "win.go-tasting", "win.go-findings", "win.save-as",
  };
  const TrTrial *trial = tr_document_get_trial (self->document);
  int index = self->dough_index;
  int last = (int) trial->doughs->len - 1;

  for (guint i = 0; i < G_N_ELEMENTS (on_a_dough); i++)
    enable (self, index >= 0, on_a_dough[i]);
  enable (self, index > 0, "win.move-dough-up");
  enable (self, index >= 0 && index < last, "win.move-dough-down");
  enable (self, index > 0, "win.previous-dough");
  enable (self, index >= 0 && index < last, "win.next-dough");
  enable (self, self->has_typed || tr_document_get_undo_label (self->document) != NULL, "win.undo");
  enable (self, self->has_typed || tr_document_get_redo_label (self->document) != NULL, "win.redo");
  enable (self, tr_document_is_modified (self->document) || (tr_document_get_file (self->document) == NULL && index >= 0), "win.save");
}
