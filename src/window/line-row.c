/* line-row.c: one line of the formula, edited in place
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Invariant: the row stays the same object while its line is edited, moved,
 * undone and redone, so that focus and caret stay where they are.
 */

#include "config.h"

#include "line-row.h"

#include <glib/gi18n-lib.h>

#include "../calc/formula.h"
#include "entry-field.h"
#include "ingredient-entry.h"
#include "line-edits.h"
#include "line-members.h"
#include "line-menu.h"
#include "pantry-window.h"
#include "section.h"
#include "swap-popover.h"

struct _TrLineRow
{
  GtkListBoxRow parent_instance;

  /* Children */
  GtkWidget *box;
  GtkWidget *ingredient;
  GtkWidget *amount;
  GtkWidget *hydration;
  GtkWidget *percent;
  GtkWidget *grams;
  GtkWidget *menu;
  GtkWidget *problem;

  /* Owned */
  TrLine *shown;

  /* State */
  guint item;
  guint place;
};

enum { LINE_WANTED, LEFT, MOVED, REMOVED, N_SIGNALS };
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TrLineRow, tr_line_row, GTK_TYPE_LIST_BOX_ROW)

/* Helpers */

static TrPage *
get_page (TrLineRow *self)
{
  TrPage *page = (TrPage *) gtk_widget_get_ancestor (GTK_WIDGET (self), TR_TYPE_PAGE);

  return page != NULL && tr_page_get_dough (page) != NULL ? page : NULL;
}

static const TrTrial *
get_trial (TrPage *page)
{
  return tr_document_get_trial (tr_page_get_document (page));
}

static const TrLine *
get_line (TrLineRow *self,
          TrPage    *page)
{
  return tr_reach_line (get_trial (page), tr_page_get_dough_index (page), self->item, FALSE);
}

static void
ingredient_committed_cb (TrIngredientEntry *entry,
                         const char        *id,
                         const char        *text,
                         TrLineRow         *self)
{
  TrPage *page = get_page (self);

  if (page != NULL && !tr_page_is_refreshing (page))
    tr_line_set_ingredient (page, self->item, id, text);
}

/* Actions */

/* NULL: there is no line yet that could be moved. */
static TrPage *
get_page_of_line (TrLineRow *self)
{
  return tr_line_is_pending (self->item) ? NULL : get_page (self);
}

static void
tell_moved (TrLineRow *self,
            int        index)
{
  if (index >= 0)
    g_signal_emit (self, signals[MOVED], 0, (guint) index);
}

static void
move_up_cb (GtkWidget  *widget,
            const char *action_name,
            GVariant   *parameter)
{
  TrLineRow *self = TR_LINE_ROW (widget);
  TrPage *page = get_page_of_line (self);

  if (page != NULL)
    tell_moved (self, tr_line_move (page, self->item, -1));
}

static void
move_down_cb (GtkWidget  *widget,
              const char *action_name,
              GVariant   *parameter)
{
  TrLineRow *self = TR_LINE_ROW (widget);
  TrPage *page = get_page_of_line (self);

  if (page != NULL)
    tell_moved (self, tr_line_move (page, self->item, 1));
}

static void
set_stage_cb (GtkWidget  *widget,
              const char *action_name,
              GVariant   *parameter)
{
  TrLineRow *self = TR_LINE_ROW (widget);
  TrPage *page = get_page_of_line (self);

  if (page != NULL)
    tell_moved (self, tr_line_set_stage (page, self->item, g_variant_get_string (parameter, NULL)));
}

static void
remove_cb (GtkWidget  *widget,
           const char *action_name,
           GVariant   *parameter)
{
  g_autoptr (TrLineRow) self = g_object_ref (TR_LINE_ROW (widget));
  TrPage *page = get_page (self);

  if (page == NULL)
    return;

  if (!tr_line_is_pending (self->item))
    tr_line_remove (page, self->item);
  g_signal_emit (self, signals[REMOVED], 0);
}

static void
own_cb (GtkWidget  *widget,
        const char *action_name,
        GVariant   *parameter)
{
  TrLineRow *self = TR_LINE_ROW (widget);

  tr_pantry_window_open_line (get_page (self), self->item);
}

static void
swap_cb (GtkWidget  *widget,
         const char *action_name,
         GVariant   *parameter)
{
  TrLineRow *self = TR_LINE_ROW (widget);

  tr_swap_popover_open (widget, self->item, self->menu);
}

/* Keys and focus */

/* Return goes down the column that it was pressed in. */
static void
activated_cb (GtkWidget *control,
              TrLineRow *self)
{
  gboolean is_percent = control == tr_field_get_control (TR_FIELD (self->percent));

  g_signal_emit (self, signals[LINE_WANTED], 0, is_percent ? "percent" : "amount");
}

static void
focus_left_cb (GtkEventControllerFocus *controller,
               TrLineRow               *self)
{
  g_signal_emit (self, signals[LEFT], 0);
}

/* Showing */

static const TrProblem *
find_problem (const TrDoughFigures *figures,
              guint                 index)
{
  g_autofree char *prefix = g_strdup_printf ("/lines/%u/", index);
  g_autofree char *whole = g_strdup_printf ("/lines/%u", index);

  for (guint i = 0; figures != NULL && i < figures->formula.problems->len; i++)
    {
      const TrProblem *problem = g_ptr_array_index (figures->formula.problems, i);

      if (problem->where != NULL && (g_str_has_prefix (problem->where, prefix) || g_str_equal (problem->where, whole)))
        return problem;
    }

  return NULL;
}

/* The field's own error is of what is being typed; this is of what stands there. */
static void
mark_amount (TrLineRow  *self,
             const char *sentence)
{
  GtkWidget *control = tr_field_get_control (TR_FIELD (self->amount));

  if (tr_field_get_error (TR_FIELD (self->amount)) != NULL)
    return;
  if (sentence != NULL)
    gtk_widget_add_css_class (control, "error");
  else
    gtk_widget_remove_css_class (control, "error");
  gtk_accessible_update_state (GTK_ACCESSIBLE (control), GTK_ACCESSIBLE_STATE_INVALID,
                               sentence != NULL ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (control), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, sentence != NULL ? sentence : "", -1);
}

/* Of what is being typed. NULL: none. */
static const char *
get_live_error (TrLineRow *self)
{
  const char *error = tr_field_get_error (TR_FIELD (self->amount));

  return error != NULL ? error : tr_field_get_error (TR_FIELD (self->percent));
}

static void
show_problem (TrLineRow    *self,
              TrPage       *page,
              const TrLine *line)
{
  const TrProblem *problem = tr_line_is_pending (self->item) ? NULL : find_problem (tr_page_get_figures (page), self->item);
  g_autofree char *sentence = problem != NULL ? tr_words_problem (tr_page_get_reader (page), problem) : NULL;
  const char *live = get_live_error (self);
  gboolean is_unknown = line->ingredient == NULL && sentence != NULL;

  tr_words_label_set (self->problem, live != NULL ? live : sentence);
  tr_ingredient_entry_set_invalid (TR_INGREDIENT_ENTRY (self->ingredient), is_unknown ? sentence : NULL);
  mark_amount (self, is_unknown ? NULL : sentence);
}

/* As on the card: what is too little for the scale keeps its own weight and a
 * star, or it would be left out. */
static char *
dup_weight (const TrReader      *reader,
            const TrLineFigures *line,
            double               rounded_g,
            double               step_g)
{
  if (line == NULL || isnan (rounded_g))
    return g_strdup ("");
  if (!(line->grams > 0 && fabs (rounded_g) <= 0))
    return tr_words_mass_number (reader, rounded_g, step_g);

  g_autofree char *own = tr_words_mass (reader, line->grams);

  return g_strconcat (own, "*", NULL);
}

static void
show_weight (TrLineRow *self,
             TrPage    *page,
             double     grams,
             double     step_g)
{
  const TrDoughFigures *figures = tr_page_get_figures (page);
  gboolean has_figures = figures != NULL && self->item < figures->formula.lines->len;
  const TrLineFigures *line = has_figures ? tr_formula_get_line (&figures->formula, self->item) : NULL;

  tr_figure_label_take (self->grams, dup_weight (tr_page_get_reader (page), line, grams, step_g));
}

static void
show_percent_words (TrLineRow            *self,
                    const TrDoughFigures *figures)
{
  GtkWidget *control = tr_field_get_control (TR_FIELD (self->percent));
  const char *error = tr_field_get_error (TR_FIELD (self->percent));
  gboolean can_set = FALSE;
  const char *words = figures != NULL ? tr_line_say_percent (figures, self->item, &can_set) : "";

  gtk_widget_set_sensitive (self->percent, can_set);
  /* It would lie over the error. */
  gtk_widget_set_tooltip_text (control, error == NULL ? words : NULL);
  if (error == NULL)
    gtk_accessible_update_property (GTK_ACCESSIBLE (control), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
}

static void
error_changed_cb (TrLineRow *self)
{
  TrPage *page = get_page (self);
  const TrLine *line = page != NULL ? get_line (self, page) : NULL;

  if (line == NULL)
    return;

  show_percent_words (self, tr_page_get_figures (page));
  show_problem (self, page, line);
}

static void
show_names (TrLineRow *self,
            TrPage    *page,
            const TrLine *line)
{
  g_autofree char *name = tr_line_dup_name (get_trial (page), line);
  g_autofree char *ingredient = g_strdup_printf (_("Ingredient: %s"), name);

  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  tr_field_set_context (TR_FIELD (self->amount), name);
  tr_field_set_context (TR_FIELD (self->percent), name);
  tr_field_set_context (TR_FIELD (self->hydration), name);
  tr_ingredient_entry_set_name (TR_INGREDIENT_ENTRY (self->ingredient), ingredient);
  /* A long name may not fit. */
  gtk_widget_set_tooltip_text (self->ingredient, tr_line_is_pending (self->item) ? NULL : name);
}

/* Building */

static void
build_columns (TrLineRow *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  self->ingredient = tr_ingredient_entry_new ();
  gtk_widget_set_hexpand (self->ingredient, TRUE);
  self->amount = tr_entry_field_new (&tr_line_amount_member, TR_FIELD_BARE);
  tr_entry_field_set_width_chars (TR_ENTRY_FIELD (self->amount), 8, 20);
  self->percent = tr_entry_field_new (&tr_line_percent_member, TR_FIELD_BARE);
  tr_entry_field_set_width_chars (TR_ENTRY_FIELD (self->percent), 7, 7);
  gtk_widget_add_css_class (self->percent, "percent");
  self->grams = tr_figure_label_new (6);
  gtk_widget_set_tooltip_text (self->grams, _("What to weigh for this batch; a star: less than a step of the scale, weigh it on a finer one"));
  self->menu = tr_line_menu_new_button ();

  gtk_box_append (GTK_BOX (row), self->ingredient);
  gtk_box_append (GTK_BOX (row), self->amount);
  gtk_box_append (GTK_BOX (row), self->percent);
  gtk_box_append (GTK_BOX (row), self->grams);
  gtk_box_append (GTK_BOX (row), self->menu);
  gtk_box_append (GTK_BOX (self->box), row);
}

static void
add_row_controllers (TrLineRow *self)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();

  g_signal_connect_object (focus, "leave", G_CALLBACK (focus_left_cb), self, 0);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
}

static void
tr_line_row_init (TrLineRow *self)
{
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  build_columns (self);
  self->hydration = tr_entry_field_new (&tr_line_hydration_member, TR_FIELD_BESIDE);
  gtk_widget_set_halign (self->hydration, GTK_ALIGN_START);
  gtk_widget_set_margin_start (self->hydration, 12);
  self->problem = tr_words_label_new ("error");
  gtk_box_append (GTK_BOX (self->box), self->hydration);
  gtk_box_append (GTK_BOX (self->box), self->problem);

  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (self), self->box);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (self), FALSE);
  gtk_list_box_row_set_selectable (GTK_LIST_BOX_ROW (self), FALSE);
  gtk_widget_set_focusable (GTK_WIDGET (self), FALSE);

  g_signal_connect_object (self->ingredient, "committed", G_CALLBACK (ingredient_committed_cb), self, 0);
  g_signal_connect_object (self->amount, "notify::error", G_CALLBACK (error_changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->percent, "notify::error", G_CALLBACK (error_changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (tr_field_get_control (TR_FIELD (self->amount)), "activate", G_CALLBACK (activated_cb), self, G_CONNECT_AFTER);
  g_signal_connect_object (tr_field_get_control (TR_FIELD (self->percent)), "activate", G_CALLBACK (activated_cb), self, G_CONNECT_AFTER);
  add_row_controllers (self);
}

static void
tr_line_row_finalize (GObject *object)
{
  tr_line_free (TR_LINE_ROW (object)->shown);

  G_OBJECT_CLASS (tr_line_row_parent_class)->finalize (object);
}

static void
tr_line_row_class_init (TrLineRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = tr_line_row_finalize;

  signals[LINE_WANTED] = g_signal_new ("line-wanted", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  signals[LEFT] = g_signal_new ("left", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[MOVED] = g_signal_new ("moved", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_UINT);
  signals[REMOVED] = g_signal_new ("removed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);

  gtk_widget_class_install_action (widget_class, "line.move-up", NULL, move_up_cb);
  gtk_widget_class_install_action (widget_class, "line.move-down", NULL, move_down_cb);
  gtk_widget_class_install_action (widget_class, "line.set-stage", "s", set_stage_cb);
  gtk_widget_class_install_action (widget_class, "line.swap", NULL, swap_cb);
  gtk_widget_class_install_action (widget_class, "line.make-own", NULL, own_cb);
  gtk_widget_class_install_action (widget_class, "line.change-own", NULL, own_cb);
  gtk_widget_class_install_action (widget_class, "line.remove", NULL, remove_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Up, GDK_ALT_MASK, "line.move-up", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Down, GDK_ALT_MASK, "line.move-down", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Delete, GDK_ALT_MASK, "line.remove", NULL);
}

GtkWidget *
tr_line_row_new (const TrLineColumns *columns)
{
  TrLineRow *self = g_object_new (TR_TYPE_LINE_ROW, NULL);

  gtk_size_group_add_widget (columns->amount, self->amount);
  gtk_size_group_add_widget (columns->percent, self->percent);
  gtk_size_group_add_widget (columns->grams, self->grams);
  gtk_size_group_add_widget (columns->menu, self->menu);

  return GTK_WIDGET (self);
}

void
tr_line_row_set_item (TrLineRow *self,
                      guint      item)
{
  g_return_if_fail (TR_IS_LINE_ROW (self));

  self->item = item;
  tr_field_set_item (TR_FIELD (self->amount), item);
  tr_field_set_item (TR_FIELD (self->percent), item);
  tr_field_set_item (TR_FIELD (self->hydration), item);
}

guint
tr_line_row_get_item (TrLineRow *self)
{
  g_return_val_if_fail (TR_IS_LINE_ROW (self), 0);

  return self->item;
}

TrLine *
tr_line_row_get_shown (TrLineRow *self)
{
  g_return_val_if_fail (TR_IS_LINE_ROW (self), NULL);

  return self->shown;
}

void
tr_line_row_refresh (TrLineRow *self,
                     double     grams,
                     double     step_g)
{
  g_return_if_fail (TR_IS_LINE_ROW (self));

  TrPage *page = get_page (self);
  const TrLine *line = page != NULL ? get_line (self, page) : NULL;

  if (line == NULL)
    return;

  tr_ingredient_entry_set_pantry (TR_INGREDIENT_ENTRY (self->ingredient), get_trial (page)->pantry);
  tr_ingredient_entry_set_value (TR_INGREDIENT_ENTRY (self->ingredient), line->ingredient, line->text);
  show_names (self, page, line);
  tr_fields_refresh (self->box);
  show_weight (self, page, grams, step_g);
  show_percent_words (self, tr_page_get_figures (page));
  show_problem (self, page, line);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "line.swap", tr_swap_is_possible (page, self->item));
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "line.make-own", tr_builtin_find (line->ingredient) != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "line.change-own", tr_pantry_find (get_trial (page)->pantry, line->ingredient) != NULL);

  tr_line_free (self->shown);
  self->shown = tr_line_copy (line);
}

gboolean
tr_line_row_is_blank (TrLineRow *self)
{
  g_return_val_if_fail (TR_IS_LINE_ROW (self), TRUE);

  const char *ingredient = gtk_editable_get_text (GTK_EDITABLE (tr_ingredient_entry_get_entry (TR_INGREDIENT_ENTRY (self->ingredient))));
  const char *amount = gtk_editable_get_text (GTK_EDITABLE (tr_field_get_control (TR_FIELD (self->amount))));

  return *ingredient == '\0' && *amount == '\0';
}

gboolean
tr_line_row_focus (TrLineRow  *self,
                   const char *member)
{
  g_return_val_if_fail (TR_IS_LINE_ROW (self), FALSE);

  if (g_strcmp0 (member, "amount") == 0)
    return gtk_widget_grab_focus (self->amount);
  if (g_strcmp0 (member, "percent") == 0)
    return gtk_widget_grab_focus (gtk_widget_is_sensitive (self->percent) ? self->percent : self->amount);
  if (g_strcmp0 (member, "hydration_percent") == 0 && gtk_widget_get_visible (self->hydration))
    return gtk_widget_grab_focus (self->hydration);

  return gtk_widget_grab_focus (self->ingredient);
}

void
tr_line_row_set_place (TrLineRow *self,
                       guint      place)
{
  g_return_if_fail (TR_IS_LINE_ROW (self));

  self->place = place;
}

guint
tr_line_row_get_place (TrLineRow *self)
{
  g_return_val_if_fail (TR_IS_LINE_ROW (self), 0);

  return self->place;
}
