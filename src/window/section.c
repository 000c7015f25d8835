/* section.c: headings, hairlines and labels that every page sets alike
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "section.h"

#include <math.h>

#include "wrap-layout.h"

GtkWidget *
tr_column_new (GtkWidget **scroller)
{
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 18);
  GtkWidget *window = gtk_scrolled_window_new ();

  gtk_widget_set_margin_start (column, 18);
  gtk_widget_set_margin_end (column, 18);
  gtk_widget_set_margin_top (column, 18);
  gtk_widget_set_margin_bottom (column, 18);

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (window), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (window), column);
  gtk_widget_set_vexpand (window, TRUE);
  *scroller = window;

  return column;
}

GtkWidget *
tr_column_add_section (GtkWidget  *column,
                       const char *heading)
{
  GtkWidget *section = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);

  if (gtk_widget_get_first_child (column) != NULL)
    gtk_box_append (GTK_BOX (column), gtk_separator_new (GTK_ORIENTATION_HORIZONTAL));
  if (heading != NULL)
    {
      GtkWidget *label = gtk_label_new (heading);

      gtk_label_set_xalign (GTK_LABEL (label), 0);
      gtk_widget_add_css_class (label, "heading");
      gtk_box_append (GTK_BOX (section), label);
    }
  gtk_box_append (GTK_BOX (column), section);

  return section;
}

void
tr_section_set_shown (GtkWidget *section,
                      gboolean   is_shown)
{
  GtkWidget *hairline = gtk_widget_get_prev_sibling (section);

  gtk_widget_set_visible (section, is_shown);
  if (hairline != NULL)
    gtk_widget_set_visible (hairline, is_shown);
}

/* A wheel that turns down over a table would be lost: GTK lets what is inside
 * scroll, and that only goes sideways. The page has it instead. */
static gboolean
sideways_scrolled_cb (GtkEventControllerScroll *controller,
                      double                    dx,
                      double                    dy,
                      gpointer                  data)
{
  GtkWidget *inner = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (controller));
  GtkWidget *outer = gtk_widget_get_ancestor (gtk_widget_get_parent (inner), GTK_TYPE_SCROLLED_WINDOW);
  gboolean is_sideways = (gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (controller)) & GDK_SHIFT_MASK) != 0;
  GtkAdjustment *adjustment;
  double step;

  if (outer == NULL || is_sideways || fabs (dx) > fabs (dy))
    return FALSE;

  adjustment = gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (outer));
  /* As GTK steps for a wheel. */
  step = gtk_event_controller_scroll_get_unit (controller) == GDK_SCROLL_UNIT_WHEEL
         ? pow (gtk_adjustment_get_page_size (adjustment), 2.0 / 3.0) : 1;
  gtk_adjustment_set_value (adjustment, gtk_adjustment_get_value (adjustment) + dy * step);

  return TRUE;
}

GtkWidget *
tr_sideways_new (GtkWidget *child)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();
  GtkEventController *scroll = gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_BOTH_AXES);

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_AUTOMATIC, GTK_POLICY_NEVER);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), child);
  gtk_widget_set_focusable (scroller, FALSE);
  gtk_event_controller_set_propagation_phase (scroll, GTK_PHASE_CAPTURE);
  g_signal_connect (scroll, "scroll", G_CALLBACK (sideways_scrolled_cb), NULL);
  gtk_widget_add_controller (scroller, scroll);

  return scroller;
}

static GtkWidget *
new_wrapping_box (gboolean is_equal)
{
  GtkLayoutManager *layout = tr_wrap_layout_new (is_equal, is_equal ? 36 : 12, is_equal ? 6 : 12);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);

  gtk_widget_set_layout_manager (box, layout);

  return box;
}

GtkWidget *
tr_form_new (const TrMember *members,
             guint           n_members)
{
  GtkWidget *form = new_wrapping_box (TRUE);

  for (guint i = 0; i < n_members; i++)
    tr_form_add (form, tr_entry_field_new (&members[i], TR_FIELD_BESIDE));

  return form;
}

GtkWidget *
tr_form_add (GtkWidget *form,
             GtkWidget *field)
{
  gtk_widget_insert_before (field, form, NULL);

  return field;
}

GtkWidget *
tr_fields_row_new (void)
{
  return new_wrapping_box (FALSE);
}

GtkWidget *
tr_words_label_new (const char *css_class)
{
  GtkWidget *label = gtk_label_new ("");

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_natural_wrap_mode (GTK_LABEL (label), GTK_NATURAL_WRAP_WORD);
  gtk_widget_set_visible (label, FALSE);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);

  return label;
}

void
tr_words_label_set (GtkWidget  *label,
                    const char *text)
{
  gtk_widget_set_visible (label, text != NULL && *text != '\0');
  if (g_strcmp0 (gtk_label_get_text (GTK_LABEL (label)), text) != 0)
    gtk_label_set_text (GTK_LABEL (label), text != NULL ? text : "");
}

void
tr_words_label_take (GtkWidget *label,
                     char      *text)
{
  g_autofree char *own = text;

  tr_words_label_set (label, own);
}

static PangoAttrList *
new_tabular_attributes (void)
{
  PangoAttrList *attributes = pango_attr_list_new ();

  pango_attr_list_insert (attributes, pango_attr_font_features_new ("tnum=1"));

  return attributes;
}

GtkWidget *
tr_figure_label_new (int width_chars)
{
  g_autoptr (PangoAttrList) attributes = new_tabular_attributes ();
  GtkWidget *label = gtk_label_new ("");

  /* Without a letter in it a sign, a full stop and a unit would go to the other side of the number. */
  gtk_widget_set_direction (label, GTK_TEXT_DIR_LTR);
  gtk_label_set_attributes (GTK_LABEL (label), attributes);
  gtk_label_set_xalign (GTK_LABEL (label), 1);
  gtk_label_set_width_chars (GTK_LABEL (label), width_chars);

  return label;
}

void
tr_figure_label_take (GtkWidget *label,
                      char      *text)
{
  g_autofree char *own = text;

  if (g_strcmp0 (gtk_label_get_text (GTK_LABEL (label)), own) != 0)
    gtk_label_set_text (GTK_LABEL (label), own != NULL ? own : "");
}

void
tr_entry_set_tabular (GtkEntry *entry)
{
  g_autoptr (PangoAttrList) attributes = new_tabular_attributes ();

  gtk_entry_set_attributes (entry, attributes);
}

GtkEventController *
tr_entry_listen (GtkWidget *entry,
                 GCallback  key_pressed_cb,
                 GCallback  focus_left_cb,
                 gpointer   object)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();

  g_signal_connect_object (focus, "leave", focus_left_cb, object, 0);
  gtk_widget_add_controller (entry, focus);

  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_object (keys, "key-pressed", key_pressed_cb, object, 0);
  gtk_widget_add_controller (entry, keys);

  return focus;
}
