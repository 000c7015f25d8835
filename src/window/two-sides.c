/* two-sides.c: two widgets beside each other where there is room, else one above the other
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "two-sides.h"

#define GAP 12
/* Of the width, for the second, when they stand beside each other; but never
 * more than this times the text scale. */
#define SECOND_SHARE 0.3
#define SECOND_MOST 420
/* Of the height, for the first, when they stand above each other. */
#define FIRST_SHARE 0.66
/* A text of that size is scaled by 1. */
#define PLAIN_TEXT_PX 14.0

struct _TrTwoSides
{
  GtkWidget parent_instance;

  /* Children */
  GtkWidget *first, *second;

  /* Borrowed References */
  GtkWidget *decisive;           /* inside the first */

  int least;
};

G_DEFINE_FINAL_TYPE (TrTwoSides, tr_two_sides, GTK_TYPE_WIDGET)

static void
get_sizes (GtkWidget      *widget,
           GtkOrientation  orientation,
           int            *minimum,
           int            *natural)
{
  gtk_widget_measure (widget, orientation, -1, minimum, natural, NULL, NULL);
}

static double
get_text_scale (TrTwoSides *self)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), "0");
  const PangoFontDescription *font = pango_context_get_font_description (pango_layout_get_context (layout));
  double size = pango_font_description_get_size (font) / (double) PANGO_SCALE;

  if (!pango_font_description_get_size_is_absolute (font))
    size *= 96.0 / 72;

  return size / PLAIN_TEXT_PX;
}

/* Of the second beside the first; 0: there is no room. */
static int
get_second_width (TrTwoSides *self,
                  int         width)
{
  double scale = get_text_scale (self);
  int wanted, second;

  get_sizes (self->decisive, GTK_ORIENTATION_HORIZONTAL, NULL, &wanted);
  get_sizes (self->second, GTK_ORIENTATION_HORIZONTAL, NULL, &second);
  second = MAX (second, (int) MIN (SECOND_SHARE * width, SECOND_MOST * scale));

  return width - GAP - second >= MAX (wanted, self->least * scale) ? second : 0;
}

static void
tr_two_sides_measure (GtkWidget      *widget,
                      GtkOrientation  orientation,
                      int             for_size,
                      int            *minimum,
                      int            *natural,
                      int            *minimum_baseline,
                      int            *natural_baseline)
{
  TrTwoSides *self = TR_TWO_SIDES (widget);
  int least[2], usual[2];

  get_sizes (self->first, orientation, &least[0], &usual[0]);
  get_sizes (self->second, orientation, &least[1], &usual[1]);
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = MAX (least[0], least[1]);
      *natural = MAX (*minimum, usual[0] + GAP + usual[1]);
      return;
    }

  /* Both scroll: what they would like to have does not count. */
  *minimum = least[0] + GAP + least[1];
  *natural = MAX (*minimum, MAX (usual[0], usual[1]));
}

static void
tr_two_sides_size_allocate (GtkWidget *widget,
                            int        width,
                            int        height,
                            int        baseline)
{
  TrTwoSides *self = TR_TWO_SIDES (widget);
  gboolean is_mirrored = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;
  GtkAllocation first = { 0, 0, width, height }, second = first;
  int least;

  second.width = get_second_width (self, width);
  if (second.width > 0)
    {
      first.width = width - second.width - GAP;
      first.x = is_mirrored ? second.width + GAP : 0;
      second.x = is_mirrored ? 0 : first.width + GAP;
    }
  else
    {
      second.width = width;
      get_sizes (self->second, GTK_ORIENTATION_VERTICAL, &least, NULL);
      first.height = MIN ((int) (FIRST_SHARE * height), height - GAP - least);
      get_sizes (self->first, GTK_ORIENTATION_VERTICAL, &least, NULL);
      first.height = MAX (first.height, least);
      second.y = first.height + GAP;
      second.height = MAX (0, height - second.y);
    }
  gtk_widget_size_allocate (self->first, &first, -1);
  gtk_widget_size_allocate (self->second, &second, -1);
}

static void
tr_two_sides_dispose (GObject *object)
{
  TrTwoSides *self = TR_TWO_SIDES (object);

  self->decisive = NULL;
  g_clear_pointer (&self->first, gtk_widget_unparent);
  g_clear_pointer (&self->second, gtk_widget_unparent);

  G_OBJECT_CLASS (tr_two_sides_parent_class)->dispose (object);
}

static void
tr_two_sides_class_init (TrTwoSidesClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tr_two_sides_dispose;
  widget_class->measure = tr_two_sides_measure;
  widget_class->size_allocate = tr_two_sides_size_allocate;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
tr_two_sides_init (TrTwoSides *self)
{
}

GtkWidget *
tr_two_sides_new (GtkWidget *first,
                  GtkWidget *decisive,
                  GtkWidget *second,
                  int        least)
{
  TrTwoSides *self = g_object_new (TR_TYPE_TWO_SIDES, NULL);

  self->first = first;
  self->decisive = decisive;
  self->second = second;
  self->least = least;
  gtk_widget_set_parent (first, GTK_WIDGET (self));
  gtk_widget_set_parent (second, GTK_WIDGET (self));

  return GTK_WIDGET (self);
}
