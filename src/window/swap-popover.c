/* swap-popover.c: another ingredient for a line, chosen with what is held
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The preview is the swap itself, done on a copy of the dough; what is applied
 * is the same call on a draft.
 */

#include "config.h"

#include "swap-popover.h"

#include <glib/gi18n-lib.h>

#include "../calc/formula.h"
#include "../calc/swap.h"
#include "ingredient-find.h"

#define LEAST_LIST_HEIGHT_PX 84
#define LIST_HEIGHT_PX 190
#define PREVIEW_CHARS 40

struct _TrSwapPopover
{
  GtkPopover parent_instance;

  /* Children */
  GtkWidget *heading;
  GtkWidget *list;
  GtkWidget *hold_heading;
  GtkWidget *holds[TR_N_KEPT];
  GtkWidget *preview;
  GtkWidget *apply;

  /* Owned References */
  GPtrArray *ids;                /* of the list's rows */

  /* State */
  guint line;
  guint is_filling : 1;
};

G_DEFINE_FINAL_TYPE (TrSwapPopover, tr_swap_popover, GTK_TYPE_POPOVER)

static TrPage *
get_page (TrSwapPopover *self)
{
  TrPage *page = (TrPage *) gtk_widget_get_ancestor (GTK_WIDGET (self), TR_TYPE_PAGE);
  const TrDoughFigures *figures = page != NULL ? tr_page_get_figures (page) : NULL;

  return figures != NULL && self->line < figures->formula.lines->len ? page : NULL;
}

gboolean
tr_swap_is_possible (TrPage *page,
                     guint   line)
{
  const TrDoughFigures *figures = page != NULL ? tr_page_get_figures (page) : NULL;

  if (figures == NULL || line >= figures->formula.lines->len)
    return FALSE;

  const TrLineFigures *found = tr_formula_get_line (&figures->formula, line);

  return found->known && found->ingredient.role != TR_ROLE_OTHER && !isnan (found->written_grams);
}

/* NULL: nothing is chosen. */
static const char *
get_chosen (TrSwapPopover *self)
{
  GtkListBoxRow *row = gtk_list_box_get_selected_row (GTK_LIST_BOX (self->list));

  return row != NULL ? g_ptr_array_index (self->ids, (guint) gtk_list_box_row_get_index (row)) : NULL;
}

static TrKeptSet
get_holds (TrSwapPopover *self)
{
  TrKeptSet holds = 0;

  for (TrKept hold = 0; hold < TR_N_KEPT; hold++)
    if (gtk_widget_get_visible (self->holds[hold]) && gtk_check_button_get_active (GTK_CHECK_BUTTON (self->holds[hold])))
      holds |= TR_KEPT_BIT (hold);

  return holds;
}

/* The preview */

/* What it would do, or why not. */
static char *
dup_preview (TrSwapPopover *self,
             TrPage        *page,
             gboolean      *can_be_done)
{
  const TrDoughFigures *figures = tr_page_get_figures (page);
  g_autoptr (TrDough) scratch = tr_dough_copy (figures->dough);
  const char *chosen = get_chosen (self);
  g_autoptr (GError) error = NULL;

  *can_be_done = chosen != NULL && tr_swap_apply (scratch, figures, self->line, chosen, get_holds (self), &error);
  if (chosen == NULL)
    return g_strdup (_("Nothing of its kind is known that could take its place."));
  if (!*can_be_done)
    return tr_words_swap_refusal (tr_page_get_reader (page), figures, error);

  g_autoptr (TrAccount) account = tr_account_new (figures, scratch);

  return tr_words_account (tr_page_get_reader (page), figures, account, FALSE);
}

static void
show_preview (TrSwapPopover *self)
{
  TrPage *page = get_page (self);
  gboolean can_be_done = FALSE;

  if (self->is_filling || page == NULL)
    return;

  g_autofree char *text = dup_preview (self, page, &can_be_done);

  gtk_label_set_label (GTK_LABEL (self->preview), text);
  if (can_be_done)
    gtk_widget_remove_css_class (self->preview, "error");
  else
    gtk_widget_add_css_class (self->preview, "error");
  gtk_widget_set_sensitive (self->apply, can_be_done);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->apply), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
}

/* Only what the swap would change is asked. */
static void
show_holds (TrSwapPopover *self)
{
  TrPage *page = get_page (self);
  const char *chosen = get_chosen (self);
  TrKeptSet usual = 0, choices = 0;
  TrKept first;

  if (page == NULL)
    return;

  if (chosen != NULL)
    choices = tr_swap_get_choices (tr_page_get_figures (page), self->line, chosen, &usual, &first);
  self->is_filling = TRUE;
  for (TrKept hold = 0; hold < TR_N_KEPT; hold++)
    {
      gtk_widget_set_visible (self->holds[hold], (choices & TR_KEPT_BIT (hold)) != 0);
      gtk_check_button_set_active (GTK_CHECK_BUTTON (self->holds[hold]), (usual & TR_KEPT_BIT (hold)) != 0);
    }
  gtk_widget_set_visible (self->hold_heading, choices != 0);
  self->is_filling = FALSE;
  show_preview (self);
}

/* Doing it */

static void
apply_clicked_cb (TrSwapPopover *self)
{
  TrPage *page = get_page (self);
  const char *chosen = get_chosen (self);

  if (page == NULL || chosen == NULL)
    return;

  const TrDoughFigures *figures = tr_page_get_figures (page);
  TrTrial *draft = tr_document_draft (tr_page_get_document (page));
  TrDough *dough = tr_trial_own_dough (draft, (guint) tr_page_get_dough_index (page));

  if (!tr_swap_apply (dough, figures, self->line, chosen, get_holds (self), NULL))
    {
      tr_trial_unref (draft);
      return;
    }

  g_autoptr (TrAccount) account = tr_account_new (figures, dough);
  g_autofree char *did = tr_words_account (tr_page_get_reader (page), figures, account, TRUE);
  g_autofree char *was = tr_ingredient_dup_name (figures->pantry, tr_formula_get_line (&figures->formula, self->line)->ingredient.id);
  g_autofree char *is = tr_ingredient_dup_name (figures->pantry, chosen);
  g_autofree char *undo = g_strdup_printf (_("swap %s for %s"), was, is);
  g_autofree char *where = g_strdup_printf ("/lines/%u/ingredient", self->line);

  /* Closing takes this away; the page stays. */
  gtk_popover_popdown (GTK_POPOVER (self));
  if (tr_page_commit (page, draft, undo, NULL, where))
    gtk_widget_activate_action (GTK_WIDGET (page), "win.told", "s", did);
}

static void
row_activated_cb (TrSwapPopover *self)
{
  if (gtk_widget_is_sensitive (self->apply))
    gtk_widget_grab_focus (self->apply);
}

/* Filling */

static void
add_choice (TrSwapPopover  *self,
            const TrPantry *pantry,
            const char     *id)
{
  g_autofree char *name = tr_ingredient_dup_name (pantry, id);
  GtkWidget *label = gtk_label_new (name), *row = gtk_list_box_row_new ();

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), label);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_list_box_append (GTK_LIST_BOX (self->list), row);
  g_ptr_array_add (self->ids, g_strdup (id));
}

static void
fill (TrSwapPopover *self)
{
  TrPage *page = get_page (self);

  if (page == NULL)
    return;

  const TrDoughFigures *figures = tr_page_get_figures (page);
  g_autoptr (GPtrArray) list = tr_swap_list (figures, self->line);
  const TrLine *line = tr_dough_get_line (figures->dough, self->line);
  g_autofree char *name = tr_ingredient_dup_name (figures->pantry, line->ingredient);
  g_autofree char *amount = tr_words_one_line (line->amount);
  g_autofree char *heading = g_strdup_printf (_("Swap %s %s for"), amount, name);

  gtk_label_set_label (GTK_LABEL (self->heading), heading);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, heading, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL, heading, -1);
  for (guint i = 0; i < list->len; i++)
    add_choice (self, figures->pantry, g_ptr_array_index (list, i));
  gtk_list_box_select_row (GTK_LIST_BOX (self->list), gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), 0));
  show_holds (self);
}

void
tr_swap_popover_choose (TrSwapPopover *self,
                        const char    *ingredient)
{
  guint index;

  g_return_if_fail (TR_IS_SWAP_POPOVER (self));

  if (g_ptr_array_find_with_equal_func (self->ids, ingredient, g_str_equal, &index))
    gtk_list_box_select_row (GTK_LIST_BOX (self->list), gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), (int) index));
}

GtkWidget *
tr_swap_popover_get_kept (TrSwapPopover *self,
                          TrKept         hold)
{
  g_return_val_if_fail (TR_IS_SWAP_POPOVER (self) && hold < TR_N_KEPT, NULL);

  return self->holds[hold];
}

const char *
tr_swap_popover_get_preview (TrSwapPopover *self)
{
  g_return_val_if_fail (TR_IS_SWAP_POPOVER (self), NULL);

  return gtk_label_get_label (GTK_LABEL (self->preview));
}

/* Building */

static GtkWidget *
new_label (const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_width_chars (GTK_LABEL (label), PREVIEW_CHARS);
  gtk_label_set_max_width_chars (GTK_LABEL (label), PREVIEW_CHARS);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);

  return label;
}

static GtkWidget *
new_scrolled_list (TrSwapPopover *self)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  self->list = gtk_list_box_new ();
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (self->list), GTK_SELECTION_BROWSE);
  gtk_list_box_set_activate_on_single_click (GTK_LIST_BOX (self->list), FALSE);
  g_signal_connect_object (self->list, "row-selected", G_CALLBACK (show_holds), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->list, "row-activated", G_CALLBACK (row_activated_cb), self, G_CONNECT_SWAPPED);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (scrolled), LEAST_LIST_HEIGHT_PX);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scrolled), LIST_HEIGHT_PX);
  gtk_scrolled_window_set_has_frame (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), self->list);

  return scrolled;
}

static GtkWidget *
new_holds (TrSwapPopover *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  for (TrKept hold = 0; hold < TR_N_KEPT; hold++)
    {
      self->holds[hold] = gtk_check_button_new_with_label (tr_words_kept (hold));
      g_signal_connect_object (self->holds[hold], "toggled", G_CALLBACK (show_preview), self, G_CONNECT_SWAPPED);
      gtk_box_append (GTK_BOX (box), self->holds[hold]);
    }

  return box;
}

static void
tr_swap_popover_init (TrSwapPopover *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  self->ids = g_ptr_array_new_with_free_func (g_free);
  self->heading = new_label ("heading");
  self->hold_heading = new_label ("dim-label");
  gtk_label_set_label (GTK_LABEL (self->hold_heading), _("Keep as it is in the whole formula"));
  self->preview = new_label (NULL);
  self->apply = gtk_button_new_with_label (_("Swap"));
  gtk_widget_add_css_class (self->apply, "suggested-action");
  gtk_widget_set_halign (self->apply, GTK_ALIGN_END);
  g_signal_connect_object (self->apply, "clicked", G_CALLBACK (apply_clicked_cb), self, G_CONNECT_SWAPPED);

  gtk_box_append (GTK_BOX (box), self->heading);
  gtk_box_append (GTK_BOX (box), new_scrolled_list (self));
  gtk_box_append (GTK_BOX (box), self->hold_heading);
  gtk_box_append (GTK_BOX (box), new_holds (self));
  gtk_box_append (GTK_BOX (box), self->preview);
  gtk_box_append (GTK_BOX (box), self->apply);
  gtk_popover_set_child (GTK_POPOVER (self), box);
  gtk_popover_set_position (GTK_POPOVER (self), GTK_POS_BOTTOM);
  gtk_widget_add_css_class (GTK_WIDGET (self), "swap");
}

static void
tr_swap_popover_finalize (GObject *object)
{
  g_ptr_array_unref (TR_SWAP_POPOVER (object)->ids);

  G_OBJECT_CLASS (tr_swap_popover_parent_class)->finalize (object);
}

static void
tr_swap_popover_class_init (TrSwapPopoverClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = tr_swap_popover_finalize;
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_DIALOG);
}

/* Opening */

static gboolean
leave_row (gpointer data)
{
  GtkWidget *popover = data;

  if (gtk_widget_get_parent (popover) != NULL)
    gtk_widget_unparent (popover);

  return G_SOURCE_REMOVE;
}

/* Not within the signal: GTK still has something to do with it. */
static void
closed_cb (GtkWidget *popover)
{
  g_idle_add_full (G_PRIORITY_DEFAULT_IDLE, leave_row, g_object_ref (popover), g_object_unref);
}

/* Not within the action: the menu that was pressed takes its grab along when it closes. */
static gboolean
pop_up (gpointer data)
{
  TrSwapPopover *self = data;
  GtkListBoxRow *chosen = gtk_list_box_get_selected_row (GTK_LIST_BOX (self->list));

  if (gtk_widget_get_parent (GTK_WIDGET (self)) == NULL)
    return G_SOURCE_REMOVE;

  gtk_popover_popup (GTK_POPOVER (self));
  if (chosen != NULL)
    gtk_widget_grab_focus (GTK_WIDGET (chosen));

  return G_SOURCE_REMOVE;
}

void
tr_swap_popover_open (GtkWidget *row,
                      guint      line,
                      GtkWidget *pointed_to)
{
  g_return_if_fail (GTK_IS_WIDGET (row) && GTK_IS_WIDGET (pointed_to));

  TrSwapPopover *self = g_object_new (TR_TYPE_SWAP_POPOVER, NULL);
  graphene_rect_t bounds;

  self->line = line;
  gtk_widget_set_parent (GTK_WIDGET (self), row);
  g_signal_connect (self, "closed", G_CALLBACK (closed_cb), NULL);
  g_signal_connect_object (row, "destroy", G_CALLBACK (leave_row), self, G_CONNECT_SWAPPED);
  if (gtk_widget_compute_bounds (pointed_to, row, &bounds))
    gtk_popover_set_pointing_to (GTK_POPOVER (self), &(GdkRectangle) {
                                   (int) bounds.origin.x, (int) bounds.origin.y,
                                   (int) bounds.size.width, (int) bounds.size.height });
  fill (self);
  g_idle_add_full (G_PRIORITY_DEFAULT_IDLE, pop_up, g_object_ref (self), g_object_unref);
}
