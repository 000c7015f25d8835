/* wrap-layout.c: children in lines that break where the width ends
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Measuring and placing walk the same lines (`walk`), so that the height asked
 * for is the height used.
 */

#include "config.h"

#include "wrap-layout.h"

struct _TrWrapLayout
{
  GtkLayoutManager parent_instance;

  gboolean is_equal;
  int column_gap, row_gap;
};

G_DEFINE_FINAL_TYPE (TrWrapLayout, tr_wrap_layout, GTK_TYPE_LAYOUT_MANAGER)

typedef struct
{
  int minimum, natural;          /* of the widest child */
  int sum;                       /* of all natural widths and gaps */
  int count;
} TrWidths;

static void
measure_widths (TrWrapLayout *self,
                GtkWidget    *widget,
                TrWidths     *widths)
{
  *widths = (TrWidths) { 0 };

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      int minimum, natural;

      if (!gtk_widget_should_layout (child))
        continue;
      gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &minimum, &natural, NULL, NULL);
      widths->minimum = MAX (widths->minimum, minimum);
      widths->natural = MAX (widths->natural, natural);
      widths->sum += natural + (widths->count > 0 ? self->column_gap : 0);
      widths->count++;
    }
}

/* Never so wide that a label and its number lose sight of each other. As many
 * columns as there is room for, filled or not, so that forms with fields of one
 * width stand in line. */
static int
get_column_width (TrWrapLayout   *self,
                  const TrWidths *widths,
                  int             width)
{
  int n_columns = MAX (1, (width + self->column_gap) / MAX (widths->natural + self->column_gap, 1));
  int column = (width - self->column_gap * (n_columns - 1)) / n_columns;

  return CLAMP (column, widths->minimum, MAX (widths->natural * 4 / 3, widths->minimum));
}

static int
get_child_width (TrWrapLayout *self,
                 GtkWidget    *child,
                 int           column,
                 int           width)
{
  int minimum, natural;

  if (self->is_equal)
    return column;

  gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &minimum, &natural, NULL, NULL);

  return MAX (minimum, MIN (natural, width));
}

static void
place_line (GtkWidget **line,
            const int  *starts,
            const int  *child_widths,
            guint       n,
            int         y,
            int         height)
{
  for (guint i = 0; i < n; i++)
    gtk_widget_size_allocate (line[i], &(GtkAllocation) { starts[i], y, child_widths[i], height }, -1);
}

/* The lines at `width`; placed if wanted. Returns the height of all. */
static int
walk (TrWrapLayout *self,
      GtkWidget    *widget,
      int           width,
      gboolean      is_placing)
{
  TrWidths widths;

  measure_widths (self, widget, &widths);
  if (widths.count == 0)
    return 0;

  int column = get_column_width (self, &widths, width);
  g_autofree GtkWidget **line = g_new (GtkWidget *, widths.count);
  g_autofree int *starts = g_new (int, widths.count);
  g_autofree int *child_widths = g_new (int, widths.count);
  guint n = 0;
  gboolean is_mirrored = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;
  int x = 0, y = 0, height = 0;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      int child_height;

      if (!gtk_widget_should_layout (child))
        continue;

      int child_width = get_child_width (self, child, column, width);

      if (n > 0 && x + child_width > width)
        {
          if (is_placing)
            place_line (line, starts, child_widths, n, y, height);
          y += height + self->row_gap;
          n = 0;
          x = height = 0;
        }
      gtk_widget_measure (child, GTK_ORIENTATION_VERTICAL, child_width, NULL, &child_height, NULL, NULL);
      line[n] = child;
      starts[n] = is_mirrored ? width - x - child_width : x;
      child_widths[n++] = child_width;
      height = MAX (height, child_height);
      x += child_width + self->column_gap;
    }
  if (is_placing)
    place_line (line, starts, child_widths, n, y, height);

  return y + height;
}

static void
tr_wrap_layout_measure (GtkLayoutManager *layout,
                        GtkWidget        *widget,
                        GtkOrientation    orientation,
                        int               for_size,
                        int              *minimum,
                        int              *natural,
                        int              *minimum_baseline,
                        int              *natural_baseline)
{
  TrWrapLayout *self = TR_WRAP_LAYOUT (layout);
  TrWidths widths;

  measure_widths (self, widget, &widths);
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = widths.minimum;
      *natural = self->is_equal ? MIN (widths.count, 2) * (widths.natural + self->column_gap) - self->column_gap : widths.sum;
      *natural = MAX (*natural, *minimum);
      return;
    }

  *minimum = *natural = walk (self, widget, for_size >= 0 ? for_size : MAX (widths.sum, widths.minimum), FALSE);
}

static void
tr_wrap_layout_allocate (GtkLayoutManager *layout,
                         GtkWidget        *widget,
                         int               width,
                         int               height,
                         int               baseline)
{
  walk (TR_WRAP_LAYOUT (layout), widget, width, TRUE);
}

static GtkSizeRequestMode
tr_wrap_layout_get_request_mode (GtkLayoutManager *layout,
                                 GtkWidget        *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
tr_wrap_layout_class_init (TrWrapLayoutClass *klass)
{
  GtkLayoutManagerClass *layout_class = GTK_LAYOUT_MANAGER_CLASS (klass);

  layout_class->measure = tr_wrap_layout_measure;
  layout_class->allocate = tr_wrap_layout_allocate;
  layout_class->get_request_mode = tr_wrap_layout_get_request_mode;
}

static void
tr_wrap_layout_init (TrWrapLayout *self)
{
}

GtkLayoutManager *
tr_wrap_layout_new (gboolean is_equal,
                    int      column_gap,
                    int      row_gap)
{
  TrWrapLayout *self = g_object_new (TR_TYPE_WRAP_LAYOUT, NULL);

  self->is_equal = is_equal;
  self->column_gap = column_gap;
  self->row_gap = row_gap;

  return GTK_LAYOUT_MANAGER (self);
}
