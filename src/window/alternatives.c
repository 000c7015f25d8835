/* alternatives.c: the other ways to lay out the sheet, to choose from
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The first of them leaves the choice to the program, each of the others sets
 * the number of rows that it has. All are drawn to one scale, so that the eye
 * compares what is true.
 */

#include "config.h"

#include "alternatives.h"

#include <glib/gi18n-lib.h>

#include "../calc/cut.h"
#include "../picture/sheets.h"
#include "picture-view.h"
#include "section.h"

/* Of a drawing, in lines of text. */
#define LINES_WIDE 8.5
#define LINES_HIGH 6.0

struct _TrAlternatives
{
  GtkWidget parent_instance;

  /* Children */
  GtkWidget *flow;

  /* Owned */
  TrDoughFigures *figures;

  /* State: what is shown; the first is what the program would choose */
  TrReader reader;
  TrAlternative shown[TR_MAX_ALTERNATIVES + 1];
  guint n_shown;
};

enum { CHOSEN, N_SIGNALS };
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TrAlternatives, tr_alternatives, GTK_TYPE_WIDGET)

/* Drawing */

static guint
get_index (GtkWidget *drawing)
{
  return (guint) gtk_flow_box_child_get_index (GTK_FLOW_BOX_CHILD (gtk_widget_get_ancestor (drawing, GTK_TYPE_FLOW_BOX_CHILD)));
}

static void
draw_cb (GtkDrawingArea *drawing,
         cairo_t        *cr,
         int             width,
         int             height,
         gpointer        data)
{
  TrAlternatives *self = TR_ALTERNATIVES (data);
  guint index = get_index (GTK_WIDGET (drawing));
  g_autoptr (TrPicture) picture = NULL;
  double scale;
  TrLook look;

  if (self->figures == NULL || index >= self->n_shown)
    return;

  tr_widget_init_look (GTK_WIDGET (drawing), &look);
  scale = tr_alternatives_find_scale (self->figures, self->shown, self->n_shown, &self->reader, &look, width, height);
  picture = tr_alternative_picture_new (self->figures, &self->shown[index], &self->reader, &look, width, height, scale);
  tr_picture_draw (picture, cr);
}

/* Its size goes with the text. */
static void
size_drawing (GtkWidget *drawing)
{
  TrLook look;

  tr_widget_init_look (drawing, &look);
  gtk_drawing_area_set_content_width (GTK_DRAWING_AREA (drawing), (int) (LINES_WIDE * look.text_size));
  gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (drawing), (int) (LINES_HIGH * look.text_size));
}

/* One of them */

static GtkWidget *
new_label (const char *css_class)
{
  GtkWidget *label = gtk_label_new ("");

  gtk_label_set_justify (GTK_LABEL (label), GTK_JUSTIFY_CENTER);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 20);
  gtk_widget_add_css_class (label, css_class);
  gtk_widget_add_css_class (label, "figures");

  return label;
}

static GtkWidget *
new_child (TrAlternatives *self)
{
  GtkWidget *child = gtk_flow_box_child_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  GtkWidget *drawing = gtk_drawing_area_new ();

  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (drawing), draw_cb, self, NULL);
  gtk_box_append (GTK_BOX (box), drawing);
  gtk_box_append (GTK_BOX (box), new_label ("heading"));
  gtk_box_append (GTK_BOX (box), new_label ("dim-label"));
  gtk_flow_box_child_set_child (GTK_FLOW_BOX_CHILD (child), box);

  return child;
}

static char *
dup_title (TrAlternatives *self,
           guint           index,
           gboolean        is_chosen)
{
  const TrAlternative *shown = &self->shown[index];
  g_autofree char *layout = index == 0 ? g_strdup (_("Best that fits")) : g_strdup_printf ("%d × %d", shown->rows, shown->per_row);

  return is_chosen ? g_strdup_printf (_("%s\n✓ chosen"), layout) : g_steal_pointer (&layout);
}

static char *
dup_words (TrAlternatives *self,
           guint           index)
{
  const TrAlternative *shown = &self->shown[index];
  g_autofree char *size = tr_words_area_size (&self->reader, shown->length_mm, shown->width_mm);
  g_autofree char *scrap = tr_words_percent (&self->reader, shown->scrap_percent);
  g_autofree char *pieces = tr_words_count (&self->reader, shown->pieces_cut);
  g_autofree char *sheets = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d sheet", "%d sheets", (gulong) shown->sheets), shown->sheets);

  return g_strdup_printf (_("%s, %s pieces\n%s\nscrap %s"), sheets, pieces, size, scrap);
}

/* What a child says to those who cannot see it. */
static char *
dup_name (TrAlternatives *self,
          guint           index,
          gboolean        is_chosen)
{
  const TrAlternative *shown = &self->shown[index];
  g_autofree char *size = tr_words_area_size (&self->reader, shown->length_mm, shown->width_mm);
  g_autofree char *pieces = tr_words_count (&self->reader, shown->pieces_cut);
  g_autofree char *scrap = tr_words_percent (&self->reader, shown->scrap_percent);
  g_autofree char *numbers = g_strdup_printf (_("%d rows of %d; sheets: %d, %s; pieces: %s; scrap %s"),
                                              shown->rows, shown->per_row, shown->sheets, size, pieces, scrap);
  g_autofree char *name = index == 0 ? g_strdup_printf (_("The best that fits: %s"), numbers) : g_strdup (numbers);

  return is_chosen ? g_strdup_printf (_("%s; chosen"), name) : g_steal_pointer (&name);
}

static void
show_child (TrAlternatives *self,
            guint           index,
            gboolean        is_chosen)
{
  GtkWidget *child = GTK_WIDGET (gtk_flow_box_get_child_at_index (GTK_FLOW_BOX (self->flow), (int) index));
  GtkWidget *drawing = gtk_widget_get_first_child (gtk_flow_box_child_get_child (GTK_FLOW_BOX_CHILD (child)));
  GtkWidget *title = gtk_widget_get_next_sibling (drawing), *words = gtk_widget_get_next_sibling (title);
  g_autofree char *title_text = dup_title (self, index, is_chosen), *words_text = dup_words (self, index);
  g_autofree char *name = dup_name (self, index, is_chosen);

  gtk_label_set_label (GTK_LABEL (title), title_text);
  gtk_label_set_label (GTK_LABEL (words), words_text);
  gtk_accessible_update_property (GTK_ACCESSIBLE (child), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_accessible_update_state (GTK_ACCESSIBLE (child), GTK_ACCESSIBLE_STATE_SELECTED, is_chosen, -1);
  size_drawing (drawing);
  gtk_widget_queue_draw (drawing);
}

/* All of them */

static void
resize (TrAlternatives *self,
        guint           n)
{
  GtkFlowBox *flow = GTK_FLOW_BOX (self->flow);
  GtkFlowBoxChild *last;

  for (guint i = n; (last = gtk_flow_box_get_child_at_index (flow, (int) i)) != NULL;)
    gtk_flow_box_remove (flow, GTK_WIDGET (last));
  while (gtk_flow_box_get_child_at_index (flow, (int) n - 1) == NULL)
    gtk_flow_box_insert (flow, new_child (self), -1);
  self->n_shown = n;
}

/* What the program would choose comes first, whether or not it is chosen. */
static guint
list (TrAlternatives       *self,
      const TrDoughFigures *figures)
{
  const TrSheet *sheet = &figures->sheet;
  guint n = tr_sheet_list_by_rows (figures, self->shown + 1);
  int best = figures->dough->cut->rows == 0 ? sheet->rows : tr_sheet_find_best_rows (figures);

  for (guint i = 1; i <= n; i++)
    if (self->shown[i].rows == best)
      {
        self->shown[0] = self->shown[i];
        return n + 1;
      }

  return 0;
}

static guint
find_chosen (TrAlternatives *self,
             int             rows)
{
  for (guint i = 1; i < self->n_shown; i++)
    if (rows > 0 && self->shown[i].rows == rows)
      return i;

  return rows == 0 ? 0 : G_MAXUINT;
}

void
tr_alternatives_refresh (TrAlternatives       *self,
                         const TrDoughFigures *figures,
                         const TrReader       *reader)
{
  g_return_if_fail (TR_IS_ALTERNATIVES (self));

  guint n = figures->has_sheet && figures->dough->cut != NULL ? list (self, figures) : 0;
  TrDoughFigures *own = tr_dough_figures_ref ((TrDoughFigures *) figures);

  g_clear_pointer (&self->figures, tr_dough_figures_unref);
  self->figures = own;
  self->reader = *reader;
  gtk_widget_set_visible (GTK_WIDGET (self), n > 0);
  if (n == 0)
    return;

  resize (self, n);

  guint chosen = find_chosen (self, figures->dough->cut->rows);

  for (guint i = 0; i < n; i++)
    show_child (self, i, i == chosen);
  if (chosen < n)
    gtk_flow_box_select_child (GTK_FLOW_BOX (self->flow), gtk_flow_box_get_child_at_index (GTK_FLOW_BOX (self->flow), (int) chosen));
  else
    gtk_flow_box_unselect_all (GTK_FLOW_BOX (self->flow));
}

static void
activated_cb (GtkFlowBox      *flow,
              GtkFlowBoxChild *child,
              TrAlternatives  *self)
{
  int index = gtk_flow_box_child_get_index (child);

  g_signal_emit (self, signals[CHOSEN], 0, index == 0 ? 0 : self->shown[index].rows);
}

/* The widget */

static void
tr_alternatives_css_changed (GtkWidget         *widget,
                             GtkCssStyleChange *change)
{
  TrAlternatives *self = TR_ALTERNATIVES (widget);
  GtkFlowBoxChild *child;

  GTK_WIDGET_CLASS (tr_alternatives_parent_class)->css_changed (widget, change);
  if (self->flow == NULL)
    return;

  for (int i = 0; (child = gtk_flow_box_get_child_at_index (GTK_FLOW_BOX (self->flow), i)) != NULL; i++)
    size_drawing (gtk_widget_get_first_child (gtk_flow_box_child_get_child (child)));
}

static void
tr_alternatives_dispose (GObject *object)
{
  TrAlternatives *self = TR_ALTERNATIVES (object);

  g_clear_pointer (&self->flow, gtk_widget_unparent);
  g_clear_pointer (&self->figures, tr_dough_figures_unref);

  G_OBJECT_CLASS (tr_alternatives_parent_class)->dispose (object);
}

static void
tr_alternatives_class_init (TrAlternativesClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tr_alternatives_dispose;
  widget_class->css_changed = tr_alternatives_css_changed;
  signals[CHOSEN] = g_signal_new ("chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 1, G_TYPE_INT);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
tr_alternatives_init (TrAlternatives *self)
{
  self->flow = gtk_flow_box_new ();
  gtk_flow_box_set_selection_mode (GTK_FLOW_BOX (self->flow), GTK_SELECTION_SINGLE);
  gtk_flow_box_set_homogeneous (GTK_FLOW_BOX (self->flow), TRUE);
  gtk_flow_box_set_max_children_per_line (GTK_FLOW_BOX (self->flow), TR_MAX_ALTERNATIVES + 1);
  gtk_flow_box_set_column_spacing (GTK_FLOW_BOX (self->flow), 6);
  gtk_flow_box_set_row_spacing (GTK_FLOW_BOX (self->flow), 6);
  gtk_widget_add_css_class (self->flow, "alternatives");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->flow), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Other ways to lay it out"), -1);
  g_signal_connect_object (self->flow, "child-activated", G_CALLBACK (activated_cb), self, 0);
  gtk_widget_set_parent (self->flow, GTK_WIDGET (self));
}

GtkWidget *
tr_alternatives_new (void)
{
  return g_object_new (TR_TYPE_ALTERNATIVES, NULL);
}
