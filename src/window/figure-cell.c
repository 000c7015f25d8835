/* figure-cell.c: one figure of one dough, with where it lies among the others
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "figure-cell.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "../words/comparison.h"
#include "picture-view.h"
#include "section.h"

/* In parts of the size of the text. */
#define LEAST_SCALE 2.2
#define SCALE 4.5
#define GAP 0.5
#define SCALE_HEIGHT 1.15

struct _TrFigureCell
{
  GtkWidget parent_instance;

  /* Children */
  GtkWidget *number, *share;

  /* Owned */
  char *dough;
  char *words;                   /* what is heard, and what the tooltip says; NULL: nothing */

  /* State */
  TrFigureContent content;       /* what is shown, without borrowed names */
  TrReader reader;
  guint has_content : 1;
};

G_DEFINE_FINAL_TYPE (TrFigureCell, tr_figure_cell, GTK_TYPE_WIDGET)

static double
get_em (TrFigureCell *self)
{
  TrLook look;

  tr_widget_init_look (GTK_WIDGET (self), &look);

  return look.text_size;
}

/* Between the number and its share: right of the number the share has room enough. */
static int
get_share_gap (TrFigureCell *self)
{
  gboolean is_mirrored = gtk_widget_get_direction (GTK_WIDGET (self)) == GTK_TEXT_DIR_RTL;

  return is_mirrored && gtk_widget_should_layout (self->share) ? (int) (GAP * get_em (self)) : 0;
}

static int
get_words_width (TrFigureCell *self,
                 gboolean      is_natural)
{
  int number[2], share[2] = { 0, 0 };

  gtk_widget_measure (self->number, GTK_ORIENTATION_HORIZONTAL, -1, &number[0], &number[1], NULL, NULL);
  if (gtk_widget_should_layout (self->share))
    gtk_widget_measure (self->share, GTK_ORIENTATION_HORIZONTAL, -1, &share[0], &share[1], NULL, NULL);

  return number[is_natural] + get_share_gap (self) + share[is_natural];
}

static void
tr_figure_cell_measure (GtkWidget      *widget,
                        GtkOrientation  orientation,
                        int             for_size,
                        int            *minimum,
                        int            *natural,
                        int            *minimum_baseline,
                        int            *natural_baseline)
{
  TrFigureCell *self = TR_FIGURE_CELL (widget);
  double em = get_em (self);

  if (orientation == GTK_ORIENTATION_VERTICAL)
    {
      gtk_widget_measure (self->number, orientation, -1, minimum, natural, NULL, NULL);
      return;
    }

  *minimum = get_words_width (self, FALSE) + (int) ((LEAST_SCALE + GAP) * em);
  *natural = get_words_width (self, TRUE) + (int) ((SCALE + GAP) * em);
}

static void
place (GtkWidget *child,
       int       *right,
       int        height,
       gboolean   is_mirrored,
       int        width)
{
  int natural;

  if (!gtk_widget_should_layout (child))
    return;

  gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, NULL, &natural, NULL, NULL);
  *right -= natural;
  gtk_widget_size_allocate (child, &(GtkAllocation) { is_mirrored ? width - *right - natural : *right, 0, natural, height }, -1);
}

static void
tr_figure_cell_size_allocate (GtkWidget *widget,
                              int        width,
                              int        height,
                              int        baseline)
{
  TrFigureCell *self = TR_FIGURE_CELL (widget);
  gboolean is_mirrored = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;
  int right = width;

  place (self->share, &right, height, is_mirrored, width);
  right -= get_share_gap (self);
  place (self->number, &right, height, is_mirrored, width);
}

/* Numbers grow to the right in any script: the scale is not turned over. */
static void
draw_scale (TrFigureCell *self,
            cairo_t      *cr,
            double        x,
            double        width,
            double        height)
{
  TrReader reader;
  TrLook look;

  tr_reader_init_plain (&reader, TR_UNITS_METRIC);
  tr_widget_init_look (GTK_WIDGET (self), &look);

  g_autoptr (TrPicture) picture = tr_picture_new (&look, &reader, x + width, height);
  double scale_height = MIN (height, SCALE_HEIGHT * look.text_size);

  tr_picture_add_cell_scale (picture, &(TrBox) { x, (height - scale_height) / 2, width, scale_height }, &self->content.scale,
                             self->content.value, self->content.has_band ? &self->content.band : NULL, self->content.reference);
  tr_picture_draw (picture, cr);
}

static void
tr_figure_cell_snapshot (GtkWidget   *widget,
                         GtkSnapshot *snapshot)
{
  TrFigureCell *self = TR_FIGURE_CELL (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  double words = get_words_width (self, TRUE), gap = GAP * get_em (self), room = width - words - gap;
  gboolean is_mirrored = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;

  if (self->has_content && room > 0)
    {
      cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, width, height));

      draw_scale (self, cr, is_mirrored ? words + gap : 0, room, height);
      cairo_destroy (cr);
    }
  gtk_widget_snapshot_child (widget, self->number, snapshot);
  gtk_widget_snapshot_child (widget, self->share, snapshot);
}

/* GTK asks the display where the pointer is whenever a tooltip is set: with so
 * many cells it is asked for only when it is wanted. */
static gboolean
tr_figure_cell_query_tooltip (GtkWidget  *widget,
                              int         x,
                              int         y,
                              gboolean    is_by_keyboard,
                              GtkTooltip *tooltip)
{
  gtk_tooltip_set_text (tooltip, TR_FIGURE_CELL (widget)->words);

  return TR_FIGURE_CELL (widget)->words != NULL;
}

static void
tr_figure_cell_dispose (GObject *object)
{
  TrFigureCell *self = TR_FIGURE_CELL (object);

  g_clear_pointer (&self->number, gtk_widget_unparent);
  g_clear_pointer (&self->share, gtk_widget_unparent);

  G_OBJECT_CLASS (tr_figure_cell_parent_class)->dispose (object);
}

static void
tr_figure_cell_finalize (GObject *object)
{
  g_free (TR_FIGURE_CELL (object)->dough);
  g_free (TR_FIGURE_CELL (object)->words);

  G_OBJECT_CLASS (tr_figure_cell_parent_class)->finalize (object);
}

static void
tr_figure_cell_class_init (TrFigureCellClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tr_figure_cell_dispose;
  G_OBJECT_CLASS (klass)->finalize = tr_figure_cell_finalize;
  widget_class->measure = tr_figure_cell_measure;
  widget_class->size_allocate = tr_figure_cell_size_allocate;
  widget_class->snapshot = tr_figure_cell_snapshot;
  widget_class->query_tooltip = tr_figure_cell_query_tooltip;
  gtk_widget_class_set_css_name (widget_class, "figure-cell");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_LABEL);
}

static void
tr_figure_cell_init (TrFigureCell *self)
{
  self->number = tr_figure_label_new (5);
  self->share = tr_figure_label_new (6);
  gtk_widget_add_css_class (self->share, "dim-label");
  gtk_widget_set_visible (self->share, FALSE);
  gtk_widget_set_margin_start (self->share, 6);
  gtk_widget_set_has_tooltip (GTK_WIDGET (self), TRUE);
  gtk_widget_set_parent (self->number, GTK_WIDGET (self));
  gtk_widget_set_parent (self->share, GTK_WIDGET (self));
}

GtkWidget *
tr_figure_cell_new (void)
{
  return g_object_new (TR_TYPE_FIGURE_CELL, NULL);
}

static gboolean
is_unusual (const TrFigureContent *content)
{
  return content->has_band && (content->value < content->band.low || content->value > content->band.high);
}

static void
set_class (GtkWidget  *widget,
           const char *css_class,
           gboolean    is_set)
{
  if (is_set)
    gtk_widget_add_css_class (widget, css_class);
  else
    gtk_widget_remove_css_class (widget, css_class);
}

/* "Salt, on flour. A Quay crescents: 2.6 %; usual 1.6 % to 2.4 %." */
static void
say (TrFigureCell          *self,
     const TrFigureContent *content,
     const TrReader        *reader)
{
  g_autofree char *figure = tr_words_comparable_in_full (content->comparable);
  g_autofree char *value = tr_words_comparable_value (reader, content->comparable, content->bench, content->value);
  g_autofree char *low = tr_words_comparable_value (reader, content->comparable, content->bench, content->band.low);
  g_autofree char *high = tr_words_comparable_value (reader, content->comparable, content->bench, content->band.high);
  g_autofree char *shown = tr_figure_cell_dup_text (self);
  GString *text = g_string_new (figure);

  g_string_append_printf (text, _(". %s: %s"), content->dough, isfinite (content->value) ? value : _("not known"));
  if (isfinite (content->reference))
    g_string_append_printf (text, " (%s)", shown);
  if (content->has_band)
    g_string_append_printf (text, is_unusual (content) ? _("; outside of what is usual, %s to %s") : _("; usual %s to %s"), low, high);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, text->str, -1);
  g_free (self->words);
  self->words = g_string_free (text, FALSE);
}

static gboolean
is_same_number (double a,
                double b)
{
  return isnan (a) ? isnan (b) : !(a < b) && !(a > b) && !isnan (b);
}

/* An edit changes few cells; to say one anew costs far more than to look. */
static gboolean
is_shown (TrFigureCell          *self,
          const TrFigureContent *content,
          const TrReader        *reader)
{
  const TrFigureContent *shown = &self->content;

  return self->has_content && shown->comparable == content->comparable && shown->is_equal == content->is_equal
         && shown->has_band == content->has_band && is_same_number (shown->value, content->value)
         && is_same_number (shown->reference, content->reference)
         && is_same_number (shown->scale.from, content->scale.from) && is_same_number (shown->scale.to, content->scale.to)
         && (!content->has_band || (is_same_number (shown->band.low, content->band.low) && is_same_number (shown->band.high, content->band.high)))
         && g_strcmp0 (self->dough, content->dough) == 0 && tr_reader_equal (&self->reader, reader)
         && content->comparable->measure != TR_MEASURE_MONEY;      /* said with the bench's currency */
}

static void
show_nothing (TrFigureCell *self)
{
  gtk_widget_set_visible (self->number, FALSE);
  gtk_widget_set_visible (self->share, FALSE);
  g_clear_pointer (&self->words, g_free);
  gtk_accessible_reset_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
show_numbers (TrFigureCell          *self,
              const TrFigureContent *content,
              const TrReader        *reader)
{
  gboolean is_difference = isfinite (content->reference);

  gtk_widget_set_visible (self->number, TRUE);
  gtk_widget_set_visible (self->share, is_difference);
  if (is_difference)
    {
      tr_figure_label_take (self->number, tr_words_comparable_difference (reader, content->comparable, content->value, content->reference));
      tr_figure_label_take (self->share, tr_words_relative_difference (reader, content->value, content->reference));
    }
  else
    tr_figure_label_take (self->number, tr_words_comparable_number (reader, content->comparable, content->value));
  set_class (self->number, "unusual", is_unusual (content));
  set_class (self->number, "dim-label", content->is_equal || !isfinite (content->value));
}

void
tr_figure_cell_show (TrFigureCell          *self,
                     const TrFigureContent *content,
                     const TrReader        *reader)
{
  g_return_if_fail (TR_IS_FIGURE_CELL (self));
  g_return_if_fail (reader != NULL);

  if (content == NULL)
    {
      self->has_content = FALSE;
      show_nothing (self);
      return;
    }
  if (is_shown (self, content, reader))
    return;

  self->has_content = TRUE;
  self->content = *content;
  self->content.dough = NULL;
  self->content.bench = NULL;
  self->reader = *reader;
  tr_set_text (&self->dough, content->dough);
  show_numbers (self, content, reader);
  say (self, content, reader);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

const char *
tr_figure_cell_get_words (TrFigureCell *self)
{
  g_return_val_if_fail (TR_IS_FIGURE_CELL (self), NULL);

  return self->words;
}

char *
tr_figure_cell_dup_text (TrFigureCell *self)
{
  g_return_val_if_fail (TR_IS_FIGURE_CELL (self), NULL);

  if (!gtk_widget_get_visible (self->number))
    return g_strdup ("");
  if (!gtk_widget_get_visible (self->share))
    return g_strdup (gtk_label_get_text (GTK_LABEL (self->number)));

  return g_strconcat (gtk_label_get_text (GTK_LABEL (self->number)), " ", gtk_label_get_text (GTK_LABEL (self->share)), NULL);
}
