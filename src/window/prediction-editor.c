/* prediction-editor.c: which dough should win, and why
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Rows are places, not doughs: a dough that moves is shown in another row, and
 * the focus goes with it.
 */

#include "config.h"

#include "prediction-editor.h"

#include <glib/gi18n-lib.h>

#include "../calc/prediction.h"
#include "../words/comparison.h"
#include "actions.h"
#include "figure-choice.h"
#include "notes-field.h"
#include "section.h"

struct _TrPredictionEditor
{
  TrPage parent_instance;

  /* Borrowed References */
  GtkWidget *by, *list, *why, *state, *drifted, *again;
};

G_DEFINE_FINAL_TYPE (TrPredictionEditor, tr_prediction_editor, TR_TYPE_PAGE)

static gpointer
reach_prediction (const TrTrial *trial,
                  int            dough,
                  guint          item,
                  gboolean       make)
{
  static const TrPrediction none = { .why = (char *) "" };

  if (make)
    return tr_trial_need_prediction ((TrTrial *) trial);

  return trial->prediction != NULL ? trial->prediction : (gpointer) &none;
}

static const TrMember why_member = {
  "/prediction/why", reach_prediction, G_STRUCT_OFFSET (TrPrediction, why), .hold = TR_HOLD_TEXT,
  .label = N_("Why"), .undo = N_("change the reason"), .may_be_empty = TRUE,
};

static const TrTrial *
get_trial (TrPredictionEditor *self)
{
  return tr_document_get_trial (tr_page_get_document (TR_PAGE (self)));
}

static gboolean
is_open (TrPredictionEditor *self)
{
  return tr_page_get_document (TR_PAGE (self)) != NULL && tr_prediction_get_state (get_trial (self)) == TR_PREDICTION_OPEN;
}

/* Rows */

static GtkWidget *
get_row (TrPredictionEditor *self,
         guint               place)
{
  return (GtkWidget *) gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), (int) place);
}

void
tr_prediction_editor_move (TrPredictionEditor *self,
                           guint               from,
                           guint               to)
{
  g_return_if_fail (TR_IS_PREDICTION_EDITOR (self));

  if (!is_open (self) || from == to || MAX (from, to) >= get_trial (self)->doughs->len)
    return;

  g_autoptr (TrTrial) draft = tr_document_draft (tr_page_get_document (TR_PAGE (self)));

  tr_prediction_move (draft, from, to);
  if (tr_page_commit (TR_PAGE (self), g_steal_pointer (&draft), _("change the prediction"), NULL, "/prediction/order")
      && get_row (self, to) != NULL)
    gtk_widget_grab_focus (get_row (self, to));
}

/* The row that has the focus, which goes along. */
static void
moved_cb (GtkWidget  *widget,
          const char *action,
          GVariant   *parameter)
{
  TrPredictionEditor *self = TR_PREDICTION_EDITOR (widget);
  GtkWidget *row = gtk_widget_get_focus_child (self->list);
  int place = row != NULL ? gtk_list_box_row_get_index (GTK_LIST_BOX_ROW (row)) : -1;
  int to = place + (g_str_equal (action, "prediction.move-up") ? -1 : 1);

  if (place >= 0 && to >= 0)
    tr_prediction_editor_move (self, (guint) place, (guint) to);
}

static GdkContentProvider *
drag_prepared_cb (GtkDragSource *source,
                  double         x,
                  double         y,
                  GtkWidget     *row)
{
  GtkWidget *editor = gtk_widget_get_ancestor (row, TR_TYPE_PREDICTION_EDITOR);

  if (editor == NULL || !is_open (TR_PREDICTION_EDITOR (editor)))
    return NULL;

  g_autoptr (GdkPaintable) icon = gtk_widget_paintable_new (row);

  gtk_drag_source_set_icon (source, icon, (int) x, (int) y);

  return gdk_content_provider_new_typed (GTK_TYPE_LIST_BOX_ROW, row);
}

static gboolean
dropped_cb (GtkDropTarget      *target,
            const GValue       *value,
            double              x,
            double              y,
            TrPredictionEditor *self)
{
  GtkWidget *row = g_value_get_object (value);
  GtkListBoxRow *under = gtk_list_box_get_row_at_y (GTK_LIST_BOX (self->list), (int) y);

  if (row == NULL || gtk_widget_get_parent (row) != self->list || tr_page_get_document (TR_PAGE (self)) == NULL)
    return FALSE;

  tr_prediction_editor_move (self, (guint) gtk_list_box_row_get_index (GTK_LIST_BOX_ROW (row)),
                             under != NULL ? (guint) gtk_list_box_row_get_index (under) : get_trial (self)->doughs->len - 1);

  return TRUE;
}

static GtkWidget *
new_row (void)
{
  GtkWidget *row = gtk_list_box_row_new (), *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *place = tr_figure_label_new (3), *name = gtk_label_new (""), *value = tr_figure_label_new (0);
  GtkDragSource *source = gtk_drag_source_new ();

  gtk_widget_add_css_class (place, "dim-label");
  gtk_label_set_xalign (GTK_LABEL (name), 0);
  gtk_label_set_ellipsize (GTK_LABEL (name), PANGO_ELLIPSIZE_END);
  gtk_widget_set_hexpand (name, TRUE);
  gtk_widget_add_css_class (value, "dim-label");
  gtk_box_append (GTK_BOX (box), place);
  gtk_box_append (GTK_BOX (box), name);
  gtk_box_append (GTK_BOX (box), value);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);

  gtk_drag_source_set_actions (source, GDK_ACTION_MOVE);
  g_signal_connect (source, "prepare", G_CALLBACK (drag_prepared_cb), row);
  gtk_widget_add_controller (row, GTK_EVENT_CONTROLLER (source));

  return row;
}

/* `place` from 0; -1: none yet. */
static void
show_row (TrPredictionEditor *self,
          GtkWidget          *row,
          int                 place,
          guint               dough,
          const TrComparable *by)
{
  const TrReader *reader = tr_page_get_reader (TR_PAGE (self));
  const TrFigures *figures = tr_document_get_figures (tr_page_get_document (TR_PAGE (self)));
  GtkWidget *box = gtk_list_box_row_get_child (GTK_LIST_BOX_ROW (row)), *label = gtk_widget_get_first_child (box);
  GtkWidget *name = gtk_widget_get_next_sibling (label);
  g_autofree char *letter = tr_words_letter (dough);
  g_autofree char *plain = tr_words_one_line (tr_trial_get_dough (figures->trial, dough)->name);
  g_autofree char *both = g_strdup_printf ("%s %s", letter, plain);
  g_autofree char *text = NULL;

  tr_figure_label_take (label, place >= 0 ? g_strdup_printf ("%d.", place + 1) : g_strdup ("–"));
  if (g_strcmp0 (gtk_label_get_text (GTK_LABEL (name)), both) != 0)
    gtk_label_set_text (GTK_LABEL (name), both);
  tr_figure_label_take (gtk_widget_get_next_sibling (name),
                        by == NULL ? g_strdup ("")
                                   : tr_words_comparable_value (reader, by, figures->trial->bench,
                                                                tr_comparable_get (by, tr_figures_get_dough (figures, dough))));
  text = place >= 0 ? g_strdup_printf (_("Place %d: %s"), place + 1, both) : g_strdup_printf (_("No place yet: %s"), both);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
}

static void
show_rows (TrPredictionEditor *self,
           const TrTrial      *trial)
{
  guint n_placed;
  g_autoptr (GArray) doughs = tr_prediction_list (trial, &n_placed);
  const TrComparable *by = trial->prediction != NULL ? tr_comparable_find (trial->prediction->by) : NULL;
  GtkWidget *row;

  while ((row = get_row (self, doughs->len)) != NULL)
    gtk_list_box_remove (GTK_LIST_BOX (self->list), row);
  for (guint i = 0; i < doughs->len; i++)
    {
      if (get_row (self, i) == NULL)
        gtk_list_box_append (GTK_LIST_BOX (self->list), new_row ());
      show_row (self, get_row (self, i), i < n_placed ? (int) i : -1, g_array_index (doughs, guint, i), by);
    }
}

/* By what */

static void
order_by (TrPredictionEditor *self,
          const TrComparable *by)
{
  TrDocument *document = tr_page_get_document (TR_PAGE (self));
  g_autoptr (TrTrial) draft = tr_document_draft (document);

  tr_prediction_set_by (draft, tr_document_get_figures (document), by);
  tr_page_commit (TR_PAGE (self), g_steal_pointer (&draft), _("change the prediction"), NULL, "/prediction/by");
}

static void
by_chosen_cb (GtkWidget          *choice,
              TrPredictionEditor *self)
{
  if (!tr_page_is_refreshing (TR_PAGE (self)) && is_open (self))
    order_by (self, tr_figure_choice_get (TR_FIGURE_CHOICE (choice)));
}

static void
again_cb (GtkWidget          *button,
          TrPredictionEditor *self)
{
  if (is_open (self))
    order_by (self, tr_figure_choice_get (TR_FIGURE_CHOICE (self->by)));
}

/* State */

static char *
dup_date (const char *locked_at)
{
  g_autoptr (GTimeZone) here = g_time_zone_new_local ();
  /* The document leaves the seconds out, GLib wants them. */
  g_autofree char *with_seconds = g_strconcat (locked_at, ":00", NULL);
  g_autoptr (GDateTime) date = g_date_time_new_from_iso8601 (with_seconds, here);

  if (date == NULL)
    return tr_words_one_line (locked_at);

  /* Translators: a day and a time, as strftime has them. */
  return g_date_time_format (date, _("%e %B %Y, %H:%M"));
}

static void
show_state (TrPredictionEditor *self,
            const TrTrial      *trial)
{
  TrPredictionState state = tr_prediction_get_state (trial);

  if (state == TR_PREDICTION_LOCKED)
    {
      g_autofree char *date = dup_date (trial->prediction->locked_at);

      tr_words_label_take (self->state, g_strdup_printf (_("Locked since the first score: %s. It is only read from then on."), g_strstrip (date)));
    }
  else if (state == TR_PREDICTION_TOO_LATE)
    tr_words_label_set (self->state, _("Somebody has tasted already, so that nothing can be predicted any more."));
  else
    tr_words_label_set (self->state, _("Best first. Drag a dough, or move it with Alt and the arrow keys. The first score locks it."));
}

static void
show_by (TrPredictionEditor *self,
         const TrPrediction *prediction,
         const TrComparable *by)
{
  if (by == NULL && prediction != NULL && !tr_prediction_is_by_hand (prediction))
    tr_figure_choice_set_key (TR_FIGURE_CHOICE (self->by), prediction->by);
  else
    tr_figure_choice_set (TR_FIGURE_CHOICE (self->by), by);
}

static void
tr_prediction_editor_refresh (TrPage *page)
{
  TrPredictionEditor *self = TR_PREDICTION_EDITOR (page);
  const TrTrial *trial = get_trial (self);
  const TrComparable *by = trial->prediction != NULL ? tr_comparable_find (trial->prediction->by) : NULL;
  gboolean can_change = is_open (self), has_drifted = tr_prediction_has_drifted (tr_document_get_figures (tr_page_get_document (page)));
  g_autofree char *figure = by != NULL ? tr_words_comparable_in_full (by) : NULL;

  show_by (self, trial->prediction, by);
  show_rows (self, trial);
  show_state (self, trial);
  tr_words_label_take (self->drifted, has_drifted ? g_strdup_printf (_("By “%s” the doughs stand in another order now."), figure) : NULL);
  gtk_widget_set_visible (self->again, has_drifted && can_change);
  gtk_widget_set_sensitive (self->by, can_change);
  gtk_widget_set_sensitive (self->why, can_change);
  tr_fields_refresh (self->why);
}

static gboolean
tr_prediction_editor_go_to (TrPage     *page,
                            const char *pointer)
{
  TrPredictionEditor *self = TR_PREDICTION_EDITOR (page);

  if (!g_str_has_prefix (pointer, "/prediction"))
    return FALSE;
  if (tr_fields_go_to (GTK_WIDGET (self), pointer))
    return TRUE;
  if (g_str_has_prefix (pointer, "/prediction/by"))
    return gtk_widget_grab_focus (self->by);

  return get_row (self, 0) != NULL && gtk_widget_grab_focus (get_row (self, 0));
}

static void
tr_prediction_editor_class_init (TrPredictionEditorClass *klass)
{
  TR_PAGE_CLASS (klass)->refresh = tr_prediction_editor_refresh;
  TR_PAGE_CLASS (klass)->go_to = tr_prediction_editor_go_to;
  gtk_widget_class_install_action (GTK_WIDGET_CLASS (klass), "prediction.move-up", NULL, moved_cb);
  gtk_widget_class_install_action (GTK_WIDGET_CLASS (klass), "prediction.move-down", NULL, moved_cb);
}

static void
build_list (TrPredictionEditor *self)
{
  GtkDropTarget *target = gtk_drop_target_new (GTK_TYPE_LIST_BOX_ROW, GDK_ACTION_MOVE);

  self->list = gtk_list_box_new ();
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (self->list), GTK_SELECTION_NONE);
  gtk_widget_add_css_class (self->list, "plain");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Prediction, best first"), -1);
  gtk_widget_add_controller (self->list, tr_actions_new_keys (TR_KEYS_PREDICTION));
  g_signal_connect_object (target, "drop", G_CALLBACK (dropped_cb), self, 0);
  gtk_widget_add_controller (self->list, GTK_EVENT_CONTROLLER (target));
}

static void
tr_prediction_editor_init (TrPredictionEditor *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  self->by = tr_figure_choice_new (_("In the order of"), _("By hand"));
  self->state = tr_words_label_new ("dim-label");
  self->drifted = tr_words_label_new ("warn");
  self->again = gtk_button_new_with_label (_("Order by it again"));
  self->why = tr_notes_field_new (&why_member);
  gtk_widget_set_halign (self->again, GTK_ALIGN_START);
  g_signal_connect_object (self->by, "chosen", G_CALLBACK (by_chosen_cb), self, 0);
  g_signal_connect_object (self->again, "clicked", G_CALLBACK (again_cb), self, 0);
  build_list (self);

  gtk_box_append (GTK_BOX (box), self->state);
  gtk_box_append (GTK_BOX (box), self->by);
  gtk_box_append (GTK_BOX (box), self->drifted);
  gtk_box_append (GTK_BOX (box), self->again);
  gtk_box_append (GTK_BOX (box), self->list);
  gtk_box_append (GTK_BOX (box), self->why);
  tr_page_set_child (TR_PAGE (self), box);
}

GtkWidget *
tr_prediction_editor_new (void)
{
  return g_object_new (TR_TYPE_PREDICTION_EDITOR, NULL);
}
