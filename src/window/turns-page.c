/* turns-page.c: how the fat goes in, the turns, and the layers they make
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The sequence stands above as a strip; below it the fields of what is
 * selected there, and only those, so that every value has one place. The layer
 * picture stays in sight at the bottom while the rest scrolls.
 *
 * Where the page is too low for all three the layers scroll along below the
 * fields. GTK 4.8 does not let a widget that assistive technology knows move,
 * so there are two layer pictures then, of which one is shown.
 */

#include "config.h"

#include "page.h"

#include <glib/gi18n-lib.h>

#include "actions.h"
#include "../words/passes.h"
#include "layers-view.h"
#include "lock-in-editor.h"
#include "picture-view.h"
#include "section.h"
#include "sequence-finder.h"
#include "turn-editor.h"
#include "turn-edits.h"
#include "turns-strip.h"

/* Lines of text: two rows of the strip, the head of the fields and the layers. */
#define LOW_BELOW_LINES 42.0

#define TR_TYPE_TURNS_PAGE (tr_turns_page_get_type ())
G_DECLARE_FINAL_TYPE (TrTurnsPage, tr_turns_page, TR, TURNS_PAGE, TrPage)

struct _TrTurnsPage
{
  TrPage parent_instance;

  /* Children */
  GtkWidget *content;
  GtkWidget *scroller;
  GtkWidget *strip;
  GtkWidget *hint;
  GtkWidget *add, *find;
  GtkWidget *lock_in;
  GtkWidget *turn;
  GtkWidget *sheet;
  GtkWidget *to_sheet, *to_sheet_picture;
  GtkWidget *sheet_passes;
  GtkWidget *finder;
  GtkWidget *column;
  GtkWidget *layers[2];          /* at the bottom; below the fields, NULL until the page is first that low */

  /* State */
  gboolean is_low;
  guint low_source;
};

G_DEFINE_FINAL_TYPE (TrTurnsPage, tr_turns_page, TR_TYPE_PAGE)

/* What is selected, and its fields */

static TrHit
get_selected (TrTurnsPage *self)
{
  return tr_turns_strip_get_selected (TR_TURNS_STRIP (self->strip));
}

static GtkWidget *
get_editor (TrTurnsPage *self)
{
  switch ((int) get_selected (self).part)
    {
    case TR_PART_OF_TURN:
      return self->turn;
    case TR_PART_OF_SHEET:
      return self->sheet;
    default:
      return self->lock_in;
    }
}

/* A field that is typed in belongs to the element that was selected: what
 * stands there is written before the fields turn to another. */
static void
leave_fields (TrTurnsPage *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;
  GtkWidget *const editors[] = { self->lock_in, self->turn, self->sheet };

  for (guint i = 0; focus != NULL && i < G_N_ELEMENTS (editors); i++)
    if (gtk_widget_is_ancestor (focus, editors[i]))
      {
        gtk_widget_grab_focus (self->strip);
        return;
      }
}

static gboolean
is_finding (TrTurnsPage *self)
{
  return gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (self->find));
}

static TrLayersView *
get_layers (TrTurnsPage *self)
{
  return TR_LAYERS_VIEW (self->layers[self->is_low]);
}

static void
show_layers (TrTurnsPage *self)
{
  const TrDoughFigures *figures = tr_page_get_figures (TR_PAGE (self));

  for (int i = 0; i < 2; i++)
    if (self->layers[i] != NULL)
      {
        gboolean is_shown = i == self->is_low && figures != NULL && figures->has_lamination && !is_finding (self);

        gtk_widget_set_visible (gtk_widget_get_parent (self->layers[i]), is_shown);
        tr_layers_view_set_figures (TR_LAYERS_VIEW (self->layers[i]), is_shown ? figures : NULL, tr_page_get_reader (TR_PAGE (self)));
      }
}

static void
show_editor (TrTurnsPage *self)
{
  TrPage *page = TR_PAGE (self);
  GtkWidget *editor = get_editor (self);

  if (editor == self->turn)
    {
      tr_turn_editor_set_item (TR_TURN_EDITOR (self->turn), (guint) get_selected (self).index);
      tr_turn_editor_refresh (TR_TURN_EDITOR (self->turn));
    }
  else if (editor == self->lock_in)
    tr_lock_in_editor_refresh (TR_LOCK_IN_EDITOR (self->lock_in));
  else
    {
      tr_words_label_take (self->to_sheet, tr_words_to_sheet (tr_page_get_reader (page), tr_page_get_figures (page)));
      tr_words_label_take (self->sheet_passes, tr_words_sheet_passes (tr_page_get_reader (page), tr_page_get_figures (page)));
      tr_picture_view_set_figures (TR_PICTURE_VIEW (self->to_sheet_picture), tr_page_get_figures (page), 0, tr_page_get_reader (page));
    }

  tr_layers_view_set_turn (get_layers (self), editor == self->turn ? (guint) get_selected (self).index + 1 : 0);
  gtk_widget_set_visible (self->lock_in, editor == self->lock_in && !is_finding (self));
  gtk_widget_set_visible (self->turn, editor == self->turn && !is_finding (self));
  gtk_widget_set_visible (self->sheet, editor == self->sheet && !is_finding (self));
}

static char *
dup_hint (const TrDough *dough)
{
  g_autofree char *thicker = tr_actions_dup_key ("turn.thicker"), *thinner = tr_actions_dup_key ("turn.thinner");
  g_autofree char *add = tr_actions_dup_key ("turn.add"), *remove = tr_actions_dup_key ("turn.remove");
  g_autofree char *left = tr_actions_dup_key ("turn.move-left"), *right = tr_actions_dup_key ("turn.move-right");

  if (dough->turns->len == 0)
    return g_strdup (_("No turns yet. Each turn is one roll-out and one fold."));
  if (dough->turns->len >= TR_MAX_TURNS)
    return g_strdup_printf (_("%d turns, the most there can be. Keys: 2–6 fold, %s and %s thickness, %s removes, %s and %s move it."),
                            TR_MAX_TURNS, thicker, thinner, remove, left, right);

  return g_strdup_printf (_("Drag a turn or its far edge. Keys: 2–6 fold, %s and %s thickness, %s adds, %s removes, %s and %s move it."),
                          thicker, thinner, add, remove, left, right);
}

static void
show_hint (TrTurnsPage *self)
{
  const TrDough *dough = tr_page_get_dough (TR_PAGE (self));

  tr_words_label_take (self->hint, dough == NULL || is_finding (self) ? NULL : dup_hint (dough));
}

/* Folds are looked for in place of the fields; each of them has its layers beside it. */
static void
find_toggled_cb (TrTurnsPage *self)
{
  gtk_widget_set_visible (self->finder, is_finding (self));
  show_hint (self);
  show_layers (self);
  if (tr_page_get_figures (TR_PAGE (self)) != NULL)
    show_editor (self);
}

static void
set_finding (TrTurnsPage *self,
             gboolean     finds)
{
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->find), finds);
}

static void
set_actions_enabled (TrTurnsPage *self)
{
  static const char *const of_a_turn[] = { "turn.remove", "turn.thicker", "turn.thinner", "turn.fold-2", "turn.fold-3", "turn.fold-4",
                                           "turn.fold-5", "turn.fold-6" };
  guint n_turns = tr_page_get_dough (TR_PAGE (self))->turns->len;
  TrHit selected = get_selected (self);
  gboolean is_turn = selected.part == TR_PART_OF_TURN;
  gboolean is_mirrored = gtk_widget_get_direction (GTK_WIDGET (self)) == GTK_TEXT_DIR_RTL;
  gboolean can_go_back = is_turn && selected.index > 0, can_go_on = is_turn && (guint) selected.index + 1 < n_turns;

  for (guint i = 0; i < G_N_ELEMENTS (of_a_turn); i++)
    gtk_widget_action_set_enabled (GTK_WIDGET (self), of_a_turn[i], is_turn);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "turn.earlier", can_go_back);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "turn.later", can_go_on);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "turn.move-left", is_mirrored ? can_go_on : can_go_back);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "turn.move-right", is_mirrored ? can_go_back : can_go_on);
}

static void
selected_cb (TrTurnsStrip *strip,
             TrTurnsPage  *self)
{
  if (tr_page_is_refreshing (TR_PAGE (self)) || tr_page_get_figures (TR_PAGE (self)) == NULL)
    return;

  set_finding (self, FALSE);
  show_editor (self);
  set_actions_enabled (self);
}

static void
activated_cb (TrTurnsStrip *strip,
              TrTurnsPage  *self)
{
  gtk_widget_child_focus (get_editor (self), GTK_DIR_TAB_FORWARD);
}

static void
select_turn (TrTurnsPage *self,
             guint        turn)
{
  tr_turns_strip_select (TR_TURNS_STRIP (self->strip), (TrHit) { TR_PART_OF_TURN, (int) turn });
}

/* Actions on the selected turn */

/* After the selected one: at the start after the lock-in, at the end otherwise. */
static void
add_activated_cb (GtkWidget  *widget,
                  const char *action,
                  GVariant   *parameter)
{
  TrTurnsPage *self = TR_TURNS_PAGE (widget);
  TrHit selected = get_selected (self);
  const TrDough *dough = tr_page_get_dough (TR_PAGE (self));
  guint at;

  if (dough == NULL)
    return;
  at = selected.part == TR_PART_OF_TURN ? (guint) selected.index + 1 : selected.part == TR_PART_OF_LOCK_IN ? 0 : dough->turns->len;
  leave_fields (self);
  if (tr_turn_add (TR_PAGE (self), at))
    select_turn (self, at);
}

static void
add_clicked_cb (GtkButton   *button,
                TrTurnsPage *self)
{
  const TrDough *dough = tr_page_get_dough (TR_PAGE (self));
  guint at = dough != NULL ? dough->turns->len : 0;

  if (!tr_turn_add (TR_PAGE (self), at))
    return;
  select_turn (self, at);
  gtk_widget_grab_focus (self->strip);
}

static void
remove_activated_cb (GtkWidget  *widget,
                     const char *action,
                     GVariant   *parameter)
{
  TrTurnsPage *self = TR_TURNS_PAGE (widget);
  TrHit selected = get_selected (self);

  leave_fields (self);
  if (selected.part == TR_PART_OF_TURN)
    tr_turn_remove (TR_PAGE (self), (guint) selected.index);
}

/* Earlier and later are in time, left and right as they are drawn. */
static void
move_activated_cb (GtkWidget  *widget,
                   const char *action,
                   GVariant   *parameter)
{
  TrTurnsPage *self = TR_TURNS_PAGE (widget);
  TrHit selected = get_selected (self);
  gboolean is_mirrored = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;
  gboolean is_earlier = g_str_equal (action, "turn.earlier") || g_str_equal (action, is_mirrored ? "turn.move-right" : "turn.move-left");
  int to = selected.index + (is_earlier ? -1 : 1);

  leave_fields (self);
  if (selected.part == TR_PART_OF_TURN && to >= 0 && tr_turn_move (TR_PAGE (self), (guint) selected.index, (guint) to))
    select_turn (self, (guint) to);
}

static void
fold_activated_cb (GtkWidget  *widget,
                   const char *action,
                   GVariant   *parameter)
{
  TrTurnsPage *self = TR_TURNS_PAGE (widget);
  TrHit selected = get_selected (self);

  if (selected.part == TR_PART_OF_TURN)
    tr_turn_set_fold (TR_PAGE (self), (guint) selected.index, g_ascii_digit_value (action[strlen (action) - 1]));
}

static void
thicken_activated_cb (GtkWidget  *widget,
                      const char *action,
                      GVariant   *parameter)
{
  TrTurnsPage *self = TR_TURNS_PAGE (widget);
  TrHit selected = get_selected (self);

  if (selected.part == TR_PART_OF_TURN)
    tr_turn_thicken (TR_PAGE (self), (guint) selected.index, g_str_equal (action, "turn.thicker") ? 1 : -1);
}

static void
find_activated_cb (GtkWidget  *widget,
                   const char *action,
                   GVariant   *parameter)
{
  TrTurnsPage *self = TR_TURNS_PAGE (widget);

  set_finding (self, TRUE);
  gtk_widget_child_focus (self->finder, GTK_DIR_TAB_FORWARD);
}

/* The page */

static void
tr_turns_page_refresh (TrPage *page)
{
  TrTurnsPage *self = TR_TURNS_PAGE (page);
  const TrDoughFigures *figures = tr_page_get_figures (page);

  gtk_widget_set_visible (self->content, figures != NULL);
  if (figures == NULL)
    return;

  tr_turns_strip_refresh (TR_TURNS_STRIP (self->strip));
  show_editor (self);
  tr_sequence_finder_refresh (TR_SEQUENCE_FINDER (self->finder));
  set_actions_enabled (self);
  show_hint (self);
  gtk_widget_set_sensitive (self->add, figures->dough->turns->len < TR_MAX_TURNS);
  show_layers (self);
}

/* Selects what the pointer is in. */
static void
select_for (TrTurnsPage *self,
            const char  *pointer)
{
  TrHit element = { TR_PART_OF_LOCK_IN, 0 };
  TrHit selected = get_selected (self);

  if (g_str_has_prefix (pointer, "/turns/"))
    element = (TrHit) { TR_PART_OF_TURN, (int) g_ascii_strtoull (pointer + strlen ("/turns/"), NULL, 10) };
  else if (g_str_equal (pointer, "/turns"))
    element = selected.part == TR_PART_OF_TURN ? selected : (TrHit) { TR_PART_OF_TURN, 0 };
  if (element.part == selected.part && element.index == selected.index)
    return;

  leave_fields (self);
  tr_turns_strip_select (TR_TURNS_STRIP (self->strip), element);
}

/* "/turns" or "/turns/2": what is done on the strip. */
static gboolean
is_whole_turn (const char *pointer)
{
  if (g_str_equal (pointer, "/turns"))
    return TRUE;

  return g_str_has_prefix (pointer, "/turns/") && strchr (pointer + strlen ("/turns/"), '/') == NULL;
}

static gboolean
tr_turns_page_go_to (TrPage     *page,
                     const char *pointer)
{
  TrTurnsPage *self = TR_TURNS_PAGE (page);

  if ((!g_str_has_prefix (pointer, "/turns") && !g_str_has_prefix (pointer, "/lock_in")) || tr_page_get_dough (page) == NULL)
    return FALSE;
  set_finding (self, FALSE);
  select_for (self, pointer);
  if (is_whole_turn (pointer) && tr_page_get_dough (page)->turns->len > 0)
    return gtk_widget_grab_focus (self->strip);
  if (tr_fields_go_to (get_editor (self), pointer))
    return TRUE;
  /* "/turns" of a dough without any. */
  if (g_str_equal (pointer, "/turns"))
    return gtk_widget_grab_focus (self->add);
  /* What a finding names may not be written: the length of a turn that is
   * given by its thickness, a lock-in that is missing. */
  g_autofree char *parent = g_path_get_dirname (pointer);

  return parent[1] != '\0' ? tr_fields_go_to (get_editor (self), parent) : tr_fields_go_to (get_editor (self), "/lock_in/style");
}

static void
build_strip (TrTurnsPage *self,
             GtkWidget   *section)
{
  GtkWidget *foot = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  self->strip = tr_turns_strip_new ();
  g_signal_connect (self->strip, "selected", G_CALLBACK (selected_cb), self);
  g_signal_connect (self->strip, "activated", G_CALLBACK (activated_cb), self);
  self->find = gtk_toggle_button_new_with_label (_("Find a sequence"));
  gtk_widget_set_valign (self->find, GTK_ALIGN_CENTER);
  gtk_widget_set_tooltip_text (self->find, _("Folds that give the wanted layers on this bench"));
  g_signal_connect_object (self->find, "toggled", G_CALLBACK (find_toggled_cb), self, G_CONNECT_SWAPPED);
  self->hint = tr_words_label_new ("dim-label");
  gtk_widget_add_css_class (self->hint, "caption");
  gtk_widget_set_hexpand (self->hint, TRUE);
  self->add = gtk_button_new_with_label (_("Add a turn"));
  gtk_widget_set_valign (self->add, GTK_ALIGN_CENTER);
  g_signal_connect_object (self->add, "clicked", G_CALLBACK (add_clicked_cb), self, 0);

  gtk_box_append (GTK_BOX (foot), self->hint);
  gtk_widget_set_halign (self->find, GTK_ALIGN_END);
  gtk_box_append (GTK_BOX (foot), self->find);
  gtk_box_append (GTK_BOX (foot), self->add);
  gtk_box_append (GTK_BOX (section), self->strip);
  gtk_box_append (GTK_BOX (section), foot);
}

static TrPicture *
make_to_sheet_picture (const TrDoughFigures *figures,
                       guint                 item,
                       const TrReader       *reader,
                       const TrLook         *look,
                       double                width,
                       double                height)
{
  return tr_to_sheet_picture_new (figures, reader, look, width, height);
}

/* What the last block is rolled out to is decided on another page. */
static GtkWidget *
build_sheet (TrTurnsPage *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkWidget *go = gtk_button_new_with_label (_("Change the cut"));

  self->to_sheet = tr_words_label_new (NULL);
  gtk_widget_set_halign (go, GTK_ALIGN_START);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (go), "win.go-sheet");
  gtk_box_append (GTK_BOX (box), self->to_sheet);
  self->sheet_passes = tr_words_label_new (NULL);
  gtk_box_append (GTK_BOX (box), self->sheet_passes);
  self->to_sheet_picture = tr_picture_view_new (_("From the last block to the sheet"), make_to_sheet_picture, 15);
  gtk_box_append (GTK_BOX (box), self->to_sheet_picture);
  gtk_box_append (GTK_BOX (box), go);

  return box;
}

static void
build_editors (TrTurnsPage *self,
               GtkWidget   *section)
{
  self->lock_in = tr_lock_in_editor_new ();
  self->turn = tr_turn_editor_new ();
  self->sheet = build_sheet (self);
  gtk_box_append (GTK_BOX (section), self->lock_in);
  gtk_box_append (GTK_BOX (section), self->turn);
  gtk_box_append (GTK_BOX (section), self->sheet);
  self->finder = tr_sequence_finder_new ();
  gtk_widget_set_visible (self->finder, FALSE);
  gtk_box_append (GTK_BOX (section), self->finder);
}

/* The scrolled column has margins of its own. */
static void
append_layers (TrTurnsPage *self,
               gboolean     is_low)
{
  GtkWidget *area = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0), *layers = tr_layers_view_new ();

  gtk_widget_set_margin_start (layers, is_low ? 0 : 18);
  gtk_widget_set_margin_end (layers, is_low ? 0 : 18);
  gtk_widget_set_margin_top (layers, is_low ? 18 : 12);
  gtk_widget_set_margin_bottom (layers, is_low ? 0 : 12);
  gtk_box_append (GTK_BOX (area), gtk_separator_new (GTK_ORIENTATION_HORIZONTAL));
  gtk_box_append (GTK_BOX (area), layers);
  gtk_box_append (GTK_BOX (is_low ? self->column : self->content), area);
  self->layers[is_low] = layers;
}

/* Where the layers stand */

static gboolean
is_low_page (TrTurnsPage *self)
{
  TrLook look;

  tr_widget_init_look (GTK_WIDGET (self), &look);

  return gtk_widget_get_height (self->content) < LOW_BELOW_LINES * look.text_size;
}

static gboolean
place_layers_in_idle (gpointer data)
{
  TrTurnsPage *self = data;
  gboolean is_low = is_low_page (self);

  self->low_source = 0;
  if (is_low == self->is_low)
    return G_SOURCE_REMOVE;

  self->is_low = is_low;
  if (self->layers[is_low] == NULL)
    append_layers (self, is_low);
  if (tr_page_get_figures (TR_PAGE (self)) != NULL)
    {
      show_layers (self);
      show_editor (self);
    }

  return G_SOURCE_REMOVE;
}

/* Widgets must not move while they are given their sizes. */
static void
height_changed_cb (TrTurnsPage *self)
{
  if (self->low_source == 0 && is_low_page (self) != self->is_low)
    self->low_source = g_idle_add_full (G_PRIORITY_HIGH_IDLE, place_layers_in_idle, self, NULL);
}

static void
tr_turns_page_dispose (GObject *object)
{
  g_clear_handle_id (&TR_TURNS_PAGE (object)->low_source, g_source_remove);

  G_OBJECT_CLASS (tr_turns_page_parent_class)->dispose (object);
}

static void
tr_turns_page_init (TrTurnsPage *self)
{
  GtkWidget *section;

  self->column = tr_column_new (&self->scroller);
  section = tr_column_add_section (self->column, NULL);
  gtk_box_set_spacing (GTK_BOX (section), 6);
  build_strip (self, section);
  build_editors (self, section);

  self->content = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_box_append (GTK_BOX (self->content), self->scroller);
  append_layers (self, FALSE);
  g_signal_connect_object (gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (self->scroller)), "notify::page-size",
                           G_CALLBACK (height_changed_cb), self, G_CONNECT_SWAPPED);
  tr_page_set_child (TR_PAGE (self), self->content);
}

static void
tr_turns_page_class_init (TrTurnsPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  TrPageClass *page_class = TR_PAGE_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tr_turns_page_dispose;
  page_class->refresh = tr_turns_page_refresh;
  page_class->go_to = tr_turns_page_go_to;

  gtk_widget_class_install_action (widget_class, "turn.find", NULL, find_activated_cb);
  gtk_widget_class_install_action (widget_class, "turn.add", NULL, add_activated_cb);
  gtk_widget_class_install_action (widget_class, "turn.remove", NULL, remove_activated_cb);
  gtk_widget_class_install_action (widget_class, "turn.earlier", NULL, move_activated_cb);
  gtk_widget_class_install_action (widget_class, "turn.later", NULL, move_activated_cb);
  gtk_widget_class_install_action (widget_class, "turn.move-left", NULL, move_activated_cb);
  gtk_widget_class_install_action (widget_class, "turn.move-right", NULL, move_activated_cb);
  gtk_widget_class_install_action (widget_class, "turn.thicker", NULL, thicken_activated_cb);
  gtk_widget_class_install_action (widget_class, "turn.thinner", NULL, thicken_activated_cb);
  gtk_widget_class_install_action (widget_class, "turn.fold-2", NULL, fold_activated_cb);
  gtk_widget_class_install_action (widget_class, "turn.fold-3", NULL, fold_activated_cb);
  gtk_widget_class_install_action (widget_class, "turn.fold-4", NULL, fold_activated_cb);
  gtk_widget_class_install_action (widget_class, "turn.fold-5", NULL, fold_activated_cb);
  gtk_widget_class_install_action (widget_class, "turn.fold-6", NULL, fold_activated_cb);
}

GtkWidget *
tr_turns_page_new (void)
{
  return g_object_new (TR_TYPE_TURNS_PAGE, NULL);
}
