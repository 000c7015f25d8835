/* seen.c: what a program can see of a window
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "seen.h"

/* A hair of rounding. */
#define SLACK_PX 1.5
/* Narrower windows may cut words short and scroll to the side. */
#define FULL_WIDTH 1024

/* A line that says where in the window something is. */
static char *
dup_place (GtkWidget *widget)
{
  GString *place = g_string_new (NULL);

  if (GTK_IS_LABEL (widget))
    g_string_append_printf (place, "“%s” in ", gtk_label_get_text (GTK_LABEL (widget)));
  for (GtkWidget *w = widget; w != NULL && !GTK_IS_ROOT (w); w = gtk_widget_get_parent (w))
    g_string_append_printf (place, "%s%s", w == widget ? "" : " < ", G_OBJECT_TYPE_NAME (w));

  return g_string_free (place, FALSE);
}

static void
complain (GtkWidget  *widget,
          const char *what)
{
  g_autofree char *place = dup_place (widget);

  g_test_message ("%s: %s", what, place);
  g_test_fail ();
}

/* The part of the window that shows this: what scrolls goes on outside it. */
static GtkWidget *
get_frame (GtkWidget *widget)
{
  for (GtkWidget *w = gtk_widget_get_parent (widget); w != NULL; w = gtk_widget_get_parent (w))
    if (GTK_IS_VIEWPORT (w) || GTK_IS_NATIVE (w) || GTK_IS_SCROLLABLE (w))
      return w;

  return NULL;
}

static void
check_lies_inside (GtkWidget *widget)
{
  GtkWidget *frame = get_frame (widget);
  graphene_rect_t bounds;

  if (frame == NULL || !GTK_IS_NATIVE (frame) || GTK_IS_POPOVER (frame) || !gtk_widget_compute_bounds (widget, frame, &bounds))
    return;
  /* Empty things, as a label without text, may stand anywhere. */
  if (bounds.size.width < 1 || bounds.size.height < 1)
    return;
  if (bounds.origin.x < -SLACK_PX || bounds.origin.y < -SLACK_PX
      || bounds.origin.x + bounds.size.width > gtk_widget_get_width (frame) + SLACK_PX
      || bounds.origin.y + bounds.size.height > gtk_widget_get_height (frame) + SLACK_PX)
    complain (widget, "outside its window");
}

/* Names are the reader's own and may be of any length. */
static gboolean
is_a_name (GtkWidget *label)
{
  return gtk_widget_has_css_class (label, "dough-name") || gtk_widget_has_css_class (label, "title")
         || gtk_widget_get_ancestor (label, GTK_TYPE_MENU_BUTTON) != NULL
         || gtk_widget_get_ancestor (label, GTK_TYPE_DROP_DOWN) != NULL;
}

static void
check_is_whole (GtkWidget *widget,
                int        window_width)
{
  PangoLayout *layout = gtk_label_get_layout (GTK_LABEL (widget));
  int width, height;

  if (window_width < FULL_WIDTH || is_a_name (widget))
    return;

  pango_layout_get_pixel_size (layout, &width, &height);
  if (pango_layout_is_ellipsized (layout))
    complain (widget, "cut short");
  else if (width > gtk_widget_get_width (widget) + SLACK_PX || height > gtk_widget_get_height (widget) + SLACK_PX)
    complain (widget, "larger than its place");
}

/* What asks for that width by itself. */
static GtkWidget *
find_widest (GtkWidget *widget,
             int        width)
{
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      int least = 0;

      if (gtk_widget_get_visible (child))
        gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
      if (least > width)
        return find_widest (child, width);
    }

  return widget;
}

/* Up and down is for reading on; to the side, half of each line is hidden. */
static void
check_needs_no_scrolling (GtkWidget *widget,
                          int        window_width)
{
  GtkAdjustment *across = gtk_scrolled_window_get_hadjustment (GTK_SCROLLED_WINDOW (widget));
  GtkPolicyType policy;

  gtk_scrolled_window_get_policy (GTK_SCROLLED_WINDOW (widget), &policy, NULL);
  if (window_width >= FULL_WIDTH && policy == GTK_POLICY_AUTOMATIC
      && gtk_adjustment_get_upper (across) > gtk_adjustment_get_page_size (across) + SLACK_PX)
    {
      g_autofree char *what = g_strdup_printf ("%g px wide in %g px", gtk_adjustment_get_upper (across), gtk_adjustment_get_page_size (across));

      complain (find_widest (gtk_scrolled_window_get_child (GTK_SCROLLED_WINDOW (widget)),
                             (int) gtk_adjustment_get_page_size (across)), what);
    }
}

static void
check_widget (GtkWidget *widget,
              int        window_width)
{
  if (!gtk_widget_get_mapped (widget))
    return;

  check_lies_inside (widget);
  if (GTK_IS_LABEL (widget))
    check_is_whole (widget, window_width);
  if (GTK_IS_SCROLLED_WINDOW (widget))
    check_needs_no_scrolling (widget, window_width);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    check_widget (child, window_width);
}

static void
check_fits (GtkWidget *window,
            int        window_width)
{
  int least;

  gtk_widget_measure (window, GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
  if (least > MIN (window_width, FULL_WIDTH))
    {
      g_autofree char *what = g_strdup_printf ("at least %d px wide", least);

      complain (find_widest (window, MIN (window_width, FULL_WIDTH)), what);
    }
}

void
seen_check_widgets (GtkWidget *window,
                    int        window_width)
{
  check_widget (window, window_width);
  check_fits (window, window_width);
}

void
seen_check_texture (GdkTexture *texture)
{
  int width = gdk_texture_get_width (texture), height = gdk_texture_get_height (texture);
  gsize stride = (gsize) width * 4;
  g_autofree guint32 *pixels = g_malloc (stride * (gsize) height);
  g_autoptr (GHashTable) colours = g_hash_table_new (NULL, NULL);

  gdk_texture_download (texture, (guchar *) pixels, stride);
  for (gsize i = 0; i < (gsize) width * (gsize) height; i++)
    g_hash_table_add (colours, GUINT_TO_POINTER (pixels[i]));
  g_assert_cmpuint (g_hash_table_size (colours), >, 16);
}
