/* window-layout.c: where the pages of a window stand, and how one is found
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Three layouts, chosen by the width: everything side by side; the doughs in a
 * drop-down; the formula as one of the pages besides.
 *
 * Nothing moves from one place to another: GTK 4.8 does not let a widget that
 * assistive technology knows change its root. There are two lists of doughs,
 * of which one is shown; and the formula has an empty page in the stack, whose
 * choice shows the formula in place of the stack.
 *
 * What is of the whole trial, comparison and tasting, takes the place of both.
 */

#include "config.h"

#include "window-private.h"

#include <glib/gi18n-lib.h>

#include "actions.h"
#include "findings.h"
#include "strip.h"

#define NARROW_BELOW_PX 1100.0
#define COMPACT_BELOW_PX 800.0
/* The formula's share of the width beside the doughs; the rest is for the
 * pages with the wider rows and the drawings. */
#define FORMULA_SHARE 0.47

/* In the order in which a finding's field is looked for. */
enum { PAGE_FORMULA, PAGE_TURNS, PAGE_SHEET, PAGE_METHOD, PAGE_LOG, PAGE_TOTAL, PAGE_BENCH, PAGE_COMPARE, PAGE_TASTING, PAGE_DOUGHS, PAGE_DOUGHS_MENU, PAGE_FINDINGS, PAGE_STRIP };
static const struct { const char *name, *title; GtkWidget *(*new) (void); } page_kinds[TR_N_PAGES] = {
  [PAGE_FORMULA] = { "formula", N_("Formula"), tr_formula_page_new },
  [PAGE_TURNS] = { "turns", N_("Turns"), tr_turns_page_new },
  [PAGE_SHEET] = { "sheet", N_("Sheet"), tr_sheet_page_new },
  [PAGE_METHOD] = { "method", N_("Method"), tr_method_page_new },
  [PAGE_LOG] = { "log", N_("Log"), tr_log_page_new },
  [PAGE_TOTAL] = { "total", N_("Total"), tr_total_page_new },
  [PAGE_BENCH] = { "bench", N_("Bench"), tr_bench_page_new },
  [PAGE_COMPARE] = { "compare", N_("Compare"), tr_compare_page_new },
  [PAGE_TASTING] = { "tasting", N_("Tasting"), tr_tasting_page_new },
  [PAGE_DOUGHS] = { "doughs", N_("Doughs"), tr_doughs_new },
  [PAGE_DOUGHS_MENU] = { "doughs-menu", N_("Doughs"), tr_doughs_new },
  [PAGE_FINDINGS] = { "findings", N_("Findings"), tr_findings_new },
  [PAGE_STRIP] = { "strip", N_("Figures"), tr_strip_new },
};

static void
show_trial_page (TrWindow *self,
                 int       page)
{
  self->trial_page = page;
  gtk_widget_set_visible (GTK_WIDGET (self->trial_slot), page >= 0);
  gtk_widget_set_visible (GTK_WIDGET (self->inner_paned), page < 0);
  gtk_widget_set_visible (self->compact_switcher, page < 0 && self->layout == TR_LAYOUT_COMPACT);
  for (int i = PAGE_COMPARE; i <= PAGE_TASTING; i++)
    gtk_widget_set_visible (GTK_WIDGET (self->slots[i]), i == page);
}

/* By hand, from the list: its own pages are wanted. */
static void
dough_chosen_cb (TrWindow   *self,
                 const char *id)
{
  tr_window_set_dough (self, id);
  show_trial_page (self, -1);
}

/* Makes the page when somebody first sees it or asks for it: what is hidden
 * costs nothing at the start. */
static TrPage *
need_page (TrWindow *self,
           guint     page)
{
  GtkWidget *widget;

  if (self->pages[page] != NULL)
    return self->pages[page];

  widget = page_kinds[page].new ();
  self->pages[page] = TR_PAGE (widget);
  gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, _(page_kinds[page].title), -1);
  gtk_widget_set_hexpand (widget, TRUE);
  gtk_widget_set_vexpand (widget, page != PAGE_STRIP && page != PAGE_FINDINGS);
  if (page == PAGE_DOUGHS || page == PAGE_DOUGHS_MENU)
    g_signal_connect_object (widget, "chosen", G_CALLBACK (dough_chosen_cb), self, G_CONNECT_SWAPPED);
  tr_page_set_reader (self->pages[page], &self->reader);
  if (self->document != NULL)
    {
      tr_page_set_document (self->pages[page], self->document);
      tr_page_set_dough (self->pages[page], self->dough_id);
    }
  gtk_box_append (self->slots[page], widget);

  return self->pages[page];
}

TrPage *
tr_window_get_page (TrWindow   *self,
                    const char *name)
{
  g_return_val_if_fail (TR_IS_WINDOW (self), NULL);

  for (guint i = 0; i < TR_N_PAGES; i++)
    if (g_str_equal (page_kinds[i].name, name))
      return need_page (self, i);

  return NULL;
}

TrDoughs *
tr_window_get_doughs (TrWindow *self)
{
  return TR_DOUGHS (need_page (self, self->layout == TR_LAYOUT_WIDE ? PAGE_DOUGHS : PAGE_DOUGHS_MENU));
}

TrLayout
tr_window_get_layout (TrWindow *self)
{
  g_return_val_if_fail (TR_IS_WINDOW (self), TR_LAYOUT_WIDE);

  return self->layout;
}

/* Layout *******************************************************************/

/* In the compact layout the formula and the stack take turns. */
static void
show_formula_or_stack (TrWindow *self)
{
  gboolean is_compact = self->layout == TR_LAYOUT_COMPACT;
  gboolean is_formula = g_strcmp0 (gtk_stack_get_visible_child_name (self->pages_stack), "formula") == 0;

  gtk_widget_set_visible (self->formula_scroller, !is_compact || is_formula);
  gtk_widget_set_visible (self->pages_box, !is_compact || !is_formula);
}

static void
set_layout (TrWindow *self,
            TrLayout  layout)
{
  gboolean is_compact = layout == TR_LAYOUT_COMPACT;

  self->layout = layout;
  gtk_widget_set_visible (GTK_WIDGET (self->doughs_button), layout != TR_LAYOUT_WIDE);
  gtk_widget_set_visible (GTK_WIDGET (self->sidebar), layout == TR_LAYOUT_WIDE);
  gtk_popover_popdown (self->doughs_popover);

  gtk_widget_set_visible (self->compact_switcher, is_compact && self->trial_page < 0);
  gtk_widget_set_visible (self->switcher, !is_compact);
  gtk_stack_page_set_visible (self->formula_stack_page, is_compact);
  if (is_compact)
    gtk_stack_set_visible_child_name (self->pages_stack, "formula");
  else if (g_strcmp0 (gtk_stack_get_visible_child_name (self->pages_stack), "formula") == 0)
    gtk_stack_set_visible_child_name (self->pages_stack, "turns");
  show_formula_or_stack (self);
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

void
tr_window_set_layout_for (TrWindow *self,
                          int       width)
{
  int inner = width - gtk_paned_get_position (self->outer_paned);

  set_layout (self, choose_layout (self, width));
  gtk_paned_set_position (self->inner_paned, (int) (FORMULA_SHARE * (self->layout == TR_LAYOUT_WIDE ? inner : width)));
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

void
tr_window_queue_layout (TrWindow *self,
                        int       width)
{
  /* Widgets must not move while they are given their sizes. */
  if (choose_layout (self, width) != self->layout && self->layout_idle == 0)
    self->layout_idle = g_idle_add_full (G_PRIORITY_HIGH_IDLE, layout_in_idle, self, NULL);
}

/* Finding ******************************************************************/

void
tr_window_show_page (TrWindow   *self,
                     const char *name)
{
  if (g_str_equal (name, "findings"))
    {
      g_object_set (self, "show-findings", TRUE, NULL);
      return;
    }
  for (int i = PAGE_COMPARE; i <= PAGE_TASTING; i++)
    if (g_str_equal (page_kinds[i].name, name))
      {
        gtk_popover_popdown (self->doughs_popover);
        show_trial_page (self, i);
        return;
      }
  if (!g_str_has_prefix (name, "doughs") && !g_str_equal (name, "strip"))
    show_trial_page (self, -1);

  if (g_str_has_prefix (name, "doughs") && self->layout != TR_LAYOUT_WIDE)
    gtk_menu_button_popup (self->doughs_button);
  else if (gtk_stack_get_child_by_name (self->pages_stack, name) != NULL
           && (self->layout == TR_LAYOUT_COMPACT || !g_str_equal (name, "formula")))
    gtk_stack_set_visible_child_name (self->pages_stack, name);
}

static gboolean
go_to_on (TrWindow   *self,
          guint       page,
          const char *pointer)
{
  if (!tr_page_go_to (need_page (self, page), pointer))
    return FALSE;

  /* A hidden page has found the field; shown, it can focus it too. */
  tr_window_show_page (self, page_kinds[page].name);

  return tr_page_go_to (self->pages[page], pointer);
}

static gboolean
go_to_exactly (TrWindow   *self,
               const char *pointer)
{
  for (guint i = 0; i < PAGE_DOUGHS; i++)
    if (go_to_on (self, i, pointer))
      return TRUE;

  return go_to_on (self, self->layout == TR_LAYOUT_WIDE ? PAGE_DOUGHS : PAGE_DOUGHS_MENU, pointer);
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

/* Building *****************************************************************/

static gboolean
is_slow (guint page)
{
  return page < PAGE_DOUGHS;
}

static gboolean
fill_slots_cb (gpointer user_data)
{
  TrWindow *self = user_data;

  self->fill_idle = 0;
  for (guint i = 0; i < TR_N_PAGES; i++)
    if (gtk_widget_get_mapped (GTK_WIDGET (self->slots[i])))
      need_page (self, i);

  return G_SOURCE_REMOVE;
}

static void
first_frame_painted_cb (GdkFrameClock *clock,
                        TrWindow      *self)
{
  g_signal_handlers_disconnect_by_func (clock, first_frame_painted_cb, self);
  self->is_painted = TRUE;
  if (self->fill_idle == 0)
    self->fill_idle = g_idle_add_full (G_PRIORITY_HIGH_IDLE, fill_slots_cb, self, NULL);
}

/* The first frame shows the doughs and what follows from them; the pages, with
 * their hundreds of widgets, come with the next, so that the window is there
 * at once. */
static void
slot_mapped_cb (GtkBox   *slot,
                TrWindow *self)
{
  GdkFrameClock *clock = gtk_widget_get_frame_clock (GTK_WIDGET (slot));

  for (guint i = 0; i < TR_N_PAGES; i++)
    {
      if (self->slots[i] != slot)
        continue;
      if (self->is_painted || !is_slow (i))
        need_page (self, i);
      else if (g_signal_handler_find (clock, G_SIGNAL_MATCH_FUNC | G_SIGNAL_MATCH_DATA, 0, 0, NULL,
                                      first_frame_painted_cb, self) == 0)
        g_signal_connect_object (clock, "after-paint", G_CALLBACK (first_frame_painted_cb), self, 0);
    }
}

/* Where a page will stand. */
static GtkWidget *
new_slot (TrWindow *self,
          guint     page)
{
  GtkWidget *slot = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  self->slots[page] = GTK_BOX (slot);
  g_signal_connect_object (slot, "map", G_CALLBACK (slot_mapped_cb), self, 0);

  return slot;
}

/* Under the doughs: what is of all of them together. */
static GtkWidget *
new_trial_buttons (void)
{
  static const char *const actions[] = { "win.go-compare", "win.go-tasting" };
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  for (guint i = 0; i < G_N_ELEMENTS (actions); i++)
    {
      GtkWidget *button = gtk_button_new_with_label (_(page_kinds[PAGE_COMPARE + (int) i].title));

      gtk_label_set_xalign (GTK_LABEL (gtk_button_get_child (GTK_BUTTON (button))), 0);
      gtk_widget_add_css_class (button, "flat");
      tr_actions_set_up_button (button, actions[i]);
      gtk_box_append (GTK_BOX (box), button);
    }
  gtk_widget_add_css_class (box, "tools");

  return box;
}

/* Where there is no list of doughs to choose from it leads back. */
static GtkWidget *
new_back_button (void)
{
  GtkWidget *button = gtk_button_new_with_label (_("Back to the dough"));

  gtk_widget_set_halign (button, GTK_ALIGN_START);
  gtk_widget_add_css_class (button, "flat");
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.go-turns");

  return button;
}

void
tr_window_build_pages (TrWindow *self)
{
  gtk_box_append (self->formula_slot, new_slot (self, PAGE_FORMULA));
  self->formula_stack_page = gtk_stack_add_titled (self->pages_stack, gtk_box_new (GTK_ORIENTATION_VERTICAL, 0),
                                                   "formula", _(page_kinds[PAGE_FORMULA].title));
  for (guint i = PAGE_TURNS; i <= PAGE_BENCH; i++)
    gtk_stack_add_titled (self->pages_stack, new_slot (self, i), page_kinds[i].name, _(page_kinds[i].title));
  self->trial_page = -1;
  gtk_box_append (self->trial_slot, new_back_button ());
  for (guint i = PAGE_COMPARE; i <= PAGE_TASTING; i++)
    {
      gtk_box_append (self->trial_slot, new_slot (self, i));
      gtk_widget_set_vexpand (GTK_WIDGET (self->slots[i]), TRUE);
    }
  gtk_stack_set_visible_child_name (self->pages_stack, "turns");
  g_signal_connect_object (self->pages_stack, "notify::visible-child", G_CALLBACK (show_formula_or_stack), self, G_CONNECT_SWAPPED);

  GtkWidget *menu = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self->sidebar), GTK_ORIENTATION_VERTICAL);
  gtk_box_append (self->sidebar, new_slot (self, PAGE_DOUGHS));
  gtk_widget_set_vexpand (GTK_WIDGET (self->slots[PAGE_DOUGHS]), TRUE);
  gtk_box_append (self->sidebar, new_trial_buttons ());
  gtk_box_append (GTK_BOX (menu), new_slot (self, PAGE_DOUGHS_MENU));
  gtk_box_append (GTK_BOX (menu), new_trial_buttons ());
  gtk_popover_set_child (self->doughs_popover, menu);
  gtk_widget_set_size_request (GTK_WIDGET (self->slots[PAGE_DOUGHS_MENU]), 280, -1);
  gtk_box_append (GTK_BOX (self->findings_slot), new_slot (self, PAGE_FINDINGS));
  gtk_box_append (self->foot, new_slot (self, PAGE_STRIP));
  set_layout (self, TR_LAYOUT_WIDE);
}
