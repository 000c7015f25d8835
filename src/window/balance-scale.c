/* balance-scale.c: a GtkScale with what is usual and the other doughs drawn
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "balance-scale.h"

#define TICK_WIDTH 2
#define TICK_HEIGHT 7
#define HALF_BAND 10             /* above and below the middle of the trough; a little more than the handle */
#define NEAR_TICK 5.0
#define BAND_SHADE 0.16
#define EDGE_SHADE 0.55

typedef struct { double value; char *tooltip; } Tick;

struct _TrBalanceScale
{
  GtkScale parent_instance;

  TrRange band;
  char *band_tooltip;
  GArray *ticks;                 /* Tick */
};

G_DEFINE_FINAL_TYPE (TrBalanceScale, tr_balance_scale, GTK_TYPE_SCALE)

static void
tick_clear (gpointer data)
{
  g_free (((Tick *) data)->tooltip);
}

/* GTK's own part; gtk_range_get_slider_range does not say where it begins. */
static GtkWidget *
find_slider (GtkWidget *widget)
{
  if (g_strcmp0 (gtk_widget_get_css_name (widget), "slider") == 0)
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *slider = find_slider (child);

      if (slider != NULL)
        return slider;
    }

  return NULL;
}

double
tr_balance_scale_get_x (TrBalanceScale *self,
                        double          value)
{
  GtkRange *range = GTK_RANGE (self);
  GtkAdjustment *adjustment = gtk_range_get_adjustment (range);
  double lower = gtk_adjustment_get_lower (adjustment), upper = gtk_adjustment_get_upper (adjustment);
  double share = upper > lower ? CLAMP ((value - lower) / (upper - lower), 0, 1) : 0;
  GtkWidget *slider = find_slider (GTK_WIDGET (self));
  GdkRectangle rect;
  int width = 0;

  gtk_range_get_range_rect (range, &rect);
  if (slider != NULL)
    gtk_widget_measure (slider, GTK_ORIENTATION_HORIZONTAL, -1, &width, NULL, NULL, NULL);
  if (gtk_widget_get_direction (GTK_WIDGET (self)) == GTK_TEXT_DIR_RTL)
    share = 1 - share;

  /* The handle's middle goes from half of it to half of it before the end; what
   * it has of negative margins reaches beyond. */
  return rect.x + width / 2.0 + share * (rect.width - width);
}

static void
get_shade (TrBalanceScale *self,
           double          alpha,
           GdkRGBA        *color)
{
  gtk_style_context_get_color (gtk_widget_get_style_context (GTK_WIDGET (self)), color);
  color->alpha *= (float) alpha;
}

static void
fill (GtkSnapshot   *snapshot,
      const GdkRGBA *color,
      double         x,
      double         y,
      double         width,
      double         height)
{
  gtk_snapshot_append_color (snapshot, color, &GRAPHENE_RECT_INIT ((float) x, (float) y, (float) width, (float) height));
}

static double
get_middle (TrBalanceScale *self)
{
  GdkRectangle rect;

  gtk_range_get_range_rect (GTK_RANGE (self), &rect);

  return rect.y + rect.height / 2.0;
}

static void
snapshot_band (TrBalanceScale *self,
               GtkSnapshot    *snapshot)
{
  double from = tr_balance_scale_get_x (self, self->band.min), to = tr_balance_scale_get_x (self, self->band.max);
  double y = get_middle (self) - HALF_BAND, height = 2 * HALF_BAND;
  GdkRGBA shade, edge;

  if (from > to)
    {
      double other = from;

      from = to;
      to = other;
    }
  get_shade (self, BAND_SHADE, &shade);
  get_shade (self, EDGE_SHADE, &edge);
  fill (snapshot, &shade, from, y, to - from, height);
  fill (snapshot, &edge, from, y, 1, height);
  fill (snapshot, &edge, MAX (to - 1, from), y, 1, height);
}

static void
snapshot_ticks (TrBalanceScale *self,
                GtkSnapshot    *snapshot)
{
  double y = get_middle (self) + HALF_BAND;
  GdkRGBA color;

  get_shade (self, 1, &color);
  for (guint i = 0; i < self->ticks->len; i++)
    fill (snapshot, &color, round (tr_balance_scale_get_x (self, g_array_index (self->ticks, Tick, i).value)) - TICK_WIDTH / 2.0,
          y, TICK_WIDTH, TICK_HEIGHT);
}

static void
tr_balance_scale_snapshot (GtkWidget   *widget,
                           GtkSnapshot *snapshot)
{
  TrBalanceScale *self = TR_BALANCE_SCALE (widget);

  if (!isnan (self->band.min))
    snapshot_band (self, snapshot);
  GTK_WIDGET_CLASS (tr_balance_scale_parent_class)->snapshot (widget, snapshot);
  snapshot_ticks (self, snapshot);
}

/* Ticks that lie on one another are all named. */
static gboolean
tr_balance_scale_query_tooltip (GtkWidget  *widget,
                                int         x,
                                int         y,
                                gboolean    by_keyboard,
                                GtkTooltip *tooltip)
{
  TrBalanceScale *self = TR_BALANCE_SCALE (widget);
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; !by_keyboard && i < self->ticks->len; i++)
    {
      const Tick *tick = &g_array_index (self->ticks, Tick, i);

      if (fabs (tr_balance_scale_get_x (self, tick->value) - x) <= NEAR_TICK)
        g_string_append_printf (text, "%s%s", text->len > 0 ? "\n" : "", tick->tooltip);
    }
  gtk_tooltip_set_text (tooltip, text->len > 0 ? text->str : self->band_tooltip);

  return text->len > 0 || self->band_tooltip != NULL;
}

static void
tr_balance_scale_finalize (GObject *object)
{
  TrBalanceScale *self = TR_BALANCE_SCALE (object);

  g_array_unref (self->ticks);
  g_free (self->band_tooltip);

  G_OBJECT_CLASS (tr_balance_scale_parent_class)->finalize (object);
}

static void
tr_balance_scale_class_init (TrBalanceScaleClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = tr_balance_scale_finalize;
  widget_class->snapshot = tr_balance_scale_snapshot;
  widget_class->query_tooltip = tr_balance_scale_query_tooltip;
}

/* The wheel scrolls the page; what the pointer happens to lie over then must
 * not change. */
static void
ignore_wheel (GtkWidget *widget)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (widget);

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);

      if (GTK_IS_EVENT_CONTROLLER_SCROLL (controller))
        gtk_event_controller_set_propagation_phase (controller, GTK_PHASE_NONE);
    }
}

static void
tr_balance_scale_init (TrBalanceScale *self)
{
  self->band = (TrRange) { NAN, NAN };
  self->ticks = g_array_new (FALSE, FALSE, sizeof (Tick));
  g_array_set_clear_func (self->ticks, tick_clear);
  gtk_scale_set_draw_value (GTK_SCALE (self), FALSE);
  gtk_range_set_round_digits (GTK_RANGE (self), -1);
  ignore_wheel (GTK_WIDGET (self));
  gtk_widget_set_has_tooltip (GTK_WIDGET (self), TRUE);
  gtk_widget_add_css_class (GTK_WIDGET (self), "balance");
}

GtkWidget *
tr_balance_scale_new (void)
{
  return g_object_new (TR_TYPE_BALANCE_SCALE, NULL);
}

void
tr_balance_scale_set_band (TrBalanceScale *self,
                           TrRange         band,
                           const char     *tooltip)
{
  g_return_if_fail (TR_IS_BALANCE_SCALE (self));

  self->band = band;
  tr_set_text (&self->band_tooltip, tooltip);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
tr_balance_scale_clear_ticks (TrBalanceScale *self)
{
  g_return_if_fail (TR_IS_BALANCE_SCALE (self));

  g_array_set_size (self->ticks, 0);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
tr_balance_scale_add_tick (TrBalanceScale *self,
                           double          value,
                           const char     *tooltip)
{
  g_return_if_fail (TR_IS_BALANCE_SCALE (self));

  const Tick tick = { value, g_strdup (tooltip) };

  g_array_append_val (self->ticks, tick);
}
