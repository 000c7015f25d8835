/* balance-row.c: one ratio: name, scale, number, and what moves
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every value of a drag is set from the figures of its beginning, so that
 * nothing drifts by rounding. An edit from elsewhere in the middle of one is a
 * new beginning.
 */

#include "config.h"

#include "balance-row.h"

#include <glib/gi18n-lib.h>

#include "../calc/formula.h"
#include "balance-scale.h"
#include "preferments.h"
#include "section.h"

#define MAX_NAMED 3
#define PAGE_STEPS 5
#define SNAP 0.1                 /* points; what the number beside it shows */

struct _TrBalanceRow
{
  GtkWidget parent_instance;

  /* Children */
  GtkWidget *box;
  GtkWidget *name;
  GtkWidget *entry;
  GtkWidget *scale;
  GtkWidget *add;
  GtkWidget *words;

  /* State */
  TrRatio ratio;
  TrDoughFigures *start;         /* owned; of the drag's beginning; NULL: no drag */
  gboolean is_cancelled;         /* until the button is let go */
  gboolean is_committing;
};

G_DEFINE_FINAL_TYPE (TrBalanceRow, tr_balance_row, GTK_TYPE_WIDGET)

static const struct { const char *add, *undo, *undo_add; } texts[TR_N_RATIOS] = {
  [TR_RATIO_ALL_WATER] = { N_("Add water"), N_("change hydration"), N_("add water") },
  [TR_RATIO_DOUGH_FAT] = { N_("Add butter to the dough"), N_("change the fat of the dough"), N_("add butter to the dough") },
  [TR_RATIO_ROLL_IN_OF_DOUGH] = { N_("Add butter to roll in"), N_("change the roll-in"), N_("add butter to roll in") },
  [TR_RATIO_SALT] = { N_("Add salt"), N_("change salt"), N_("add salt") },
  [TR_RATIO_SUGAR] = { N_("Add sugar"), N_("change sugar"), N_("add sugar") },
  [TR_RATIO_YEAST_FRESH] = { N_("Add yeast"), N_("change yeast"), N_("add yeast") },
  [TR_RATIO_PREFERMENTED] = { N_("Add a sponge"), N_("change the prefermented flour"), NULL },
};

static TrPage *
get_page (TrBalanceRow *self)
{
  TrPage *page = (TrPage *) gtk_widget_get_ancestor (GTK_WIDGET (self), TR_TYPE_PAGE);

  return page != NULL && tr_page_get_figures (page) != NULL ? page : NULL;
}

static void
show_error (TrBalanceRow *self,
            const char   *sentence)
{
  gtk_widget_add_css_class (self->words, "error");
  gtk_widget_remove_css_class (self->words, "dim-label");
  tr_words_label_set (self->words, sentence);
}

/* Editing */

static gboolean
commit_value (TrBalanceRow  *self,
              TrPage        *page,
              double         value,
              GError       **error)
{
  const TrDoughFigures *figures = self->start != NULL ? self->start : tr_page_get_figures (page);
  TrTrial *draft = tr_document_draft (tr_page_get_document (page));
  TrDough *dough = tr_trial_own_dough (draft, (guint) tr_page_get_dough_index (page));
  g_autofree char *where = g_strconcat (TR_BALANCE_WHERE, tr_ratio_key (self->ratio), NULL);
  gboolean is_done;

  if (dough->lines->len != figures->formula.lines->len || !tr_ratio_set (dough, figures, self->ratio, value, error))
    {
      tr_trial_unref (draft);
      return FALSE;
    }

  self->is_committing = TRUE;
  is_done = tr_page_commit (page, draft, _(texts[self->ratio].undo), tr_ratio_key (self->ratio), where);
  self->is_committing = FALSE;

  return is_done;
}

static double
snap (TrBalanceRow  *self,
      double         value,
      const TrRange *reach)
{
  return CLAMP (SNAP * round (value / SNAP), reach->min, reach->max);
}

static gboolean
scale_change_value_cb (GtkRange      *range,
                       GtkScrollType  scroll,
                       double         value,
                       TrBalanceRow  *self)
{
  TrPage *page = get_page (self);
  TrRatioMoves moves;

  if (page == NULL || tr_page_is_refreshing (page) || self->is_cancelled)
    return TRUE;

  tr_ratio_get_moves (self->start != NULL ? self->start : tr_page_get_figures (page), self->ratio, &moves);
  if (moves.can_move)
    commit_value (self, page, snap (self, value, &moves.reach), NULL);

  return TRUE;
}

static void
begin_drag (TrBalanceRow *self)
{
  TrPage *page = get_page (self);

  if (page == NULL || self->start != NULL)
    return;

  self->is_cancelled = FALSE;
  self->start = tr_dough_figures_ref ((TrDoughFigures *) tr_page_get_figures (page));
  tr_page_begin_drag (page);
}

static void
end_drag (TrBalanceRow *self,
          gboolean      is_cancelled)
{
  GtkWidget *page = gtk_widget_get_ancestor (GTK_WIDGET (self), TR_TYPE_PAGE);

  if (self->start == NULL)
    return;

  g_clear_pointer (&self->start, tr_dough_figures_unref);
  if (page != NULL)
    tr_page_end_drag (TR_PAGE (page), is_cancelled);
}

/* The range's own gesture takes the pointer; this only sees when. */
static gboolean
scale_event_cb (GtkEventControllerLegacy *controller,
                GdkEvent                 *event,
                TrBalanceRow             *self)
{
  switch ((int) gdk_event_get_event_type (event))
    {
    case GDK_BUTTON_PRESS:
      if (gdk_button_event_get_button (event) == GDK_BUTTON_PRIMARY)
        {
          gtk_widget_grab_focus (self->scale);
          begin_drag (self);
        }
      break;
    case GDK_TOUCH_BEGIN:
      begin_drag (self);
      break;
    case GDK_BUTTON_RELEASE:
    case GDK_TOUCH_END:
      end_drag (self, FALSE);
      self->is_cancelled = FALSE;
      break;
    case GDK_GRAB_BROKEN:
    case GDK_TOUCH_CANCEL:
      end_drag (self, TRUE);
      self->is_cancelled = FALSE;
      break;
    default:
      break;
    }

  return GDK_EVENT_PROPAGATE;
}

static gboolean
key_pressed_cb (GtkEventControllerKey *controller,
                guint                  keyval,
                guint                  keycode,
                GdkModifierType        state,
                TrBalanceRow          *self)
{
  if (keyval != GDK_KEY_Escape || self->start == NULL)
    return GDK_EVENT_PROPAGATE;

  self->is_cancelled = TRUE;
  end_drag (self, TRUE);

  return GDK_EVENT_STOP;
}

static gboolean
add_line (TrBalanceRow *self,
          TrPage       *page)
{
  g_autoptr (GError) error = NULL;
  TrTrial *draft = tr_document_draft (tr_page_get_document (page));
  TrDough *dough = tr_trial_own_dough (draft, (guint) tr_page_get_dough_index (page));

  if (tr_ratio_add_line (dough, tr_page_get_figures (page), self->ratio, &error) < 0)
    {
      g_autofree char *why = tr_words_error (tr_page_get_reader (page), error);

      tr_trial_unref (draft);
      show_error (self, why);
      return FALSE;
    }

  return tr_page_commit (page, draft, _(texts[self->ratio].undo_add), NULL, "/lines");
}

/* The same sponge as that of the formula's menu. */
static gboolean
add_sponge (TrPage *page)
{
  g_autofree char *added = tr_page_add_preferment (page, tr_preferment_id (TR_PREFERMENT_SPONGE));

  return added != NULL;
}

static void
add_clicked_cb (TrBalanceRow *self)
{
  TrPage *page = get_page (self);

  if (page == NULL)
    return;
  if (self->ratio == TR_RATIO_PREFERMENTED ? add_sponge (page) : add_line (self, page))
    gtk_widget_grab_focus (self->scale);
}

/* The number */

static void
show_number (TrBalanceRow *self,
             TrPage       *page)
{
  double value = tr_ratio_get (tr_page_get_figures (page), self->ratio);
  g_autofree char *text = isnan (value) ? g_strdup ("–") : tr_words_number (tr_page_get_reader (page), value, 1);

  if (g_strcmp0 (gtk_editable_get_text (GTK_EDITABLE (self->entry)), text) != 0)
    gtk_editable_set_text (GTK_EDITABLE (self->entry), text);
  gtk_widget_remove_css_class (self->entry, "error");
}

static void
read_number (TrBalanceRow *self)
{
  TrPage *page = get_page (self);
  const char *typed = gtk_editable_get_text (GTK_EDITABLE (self->entry));
  g_autoptr (GError) error = NULL;
  double value;

  if (page == NULL || tr_page_is_refreshing (page))
    return;

  g_autofree char *shown = tr_words_number (tr_page_get_reader (page), tr_ratio_get (tr_page_get_figures (page), self->ratio), 1);
  if (g_str_equal (typed, shown))
    return;
  if (!tr_words_read (tr_page_get_reader (page), TR_QUANTITY_PERCENT, typed, &value, &error)
      || !commit_value (self, page, value, &error))
    {
      g_autofree char *why = error != NULL ? tr_words_error (tr_page_get_reader (page), error) : NULL;

      gtk_widget_add_css_class (self->entry, "error");
      show_error (self, why);
      return;
    }
  show_number (self, page);
}

static gboolean
entry_key_pressed_cb (GtkEventControllerKey *controller,
                      guint                  keyval,
                      guint                  keycode,
                      GdkModifierType        state,
                      TrBalanceRow          *self)
{
  TrPage *page = get_page (self);

  if (keyval != GDK_KEY_Escape || page == NULL)
    return GDK_EVENT_PROPAGATE;

  show_number (self, page);
  tr_balance_row_refresh (self);

  return GDK_EVENT_STOP;
}

static void
entry_left_cb (GtkEventControllerFocus *controller,
               TrBalanceRow            *self)
{
  read_number (self);
}

/* Showing */

static char *
dup_names (const TrDoughFigures *figures,
           const TrRatioMoves   *moves)
{
  const char *names[MAX_NAMED];
  guint n = 0, n_more = 0;

  for (guint i = 0; i < moves->n_lines; i++)
    {
      const char *name = tr_words_ingredient (&tr_formula_get_line (&figures->formula, moves->lines[i])->ingredient);
      gboolean is_named = FALSE;

      for (guint j = 0; j < n; j++)
        is_named |= g_str_equal (names[j], name);
      if (is_named)
        continue;
      if (n < MAX_NAMED)
        names[n++] = name;
      else
        n_more++;
    }

  if (n_more > 0)
    return g_strdup_printf (ngettext ("%s, %s, %s and %u more", "%s, %s, %s and %u more", n_more), names[0], names[1], names[2], n_more);
  if (n == 3)
    return g_strdup_printf (_("%s, %s and %s"), names[0], names[1], names[2]);
  if (n == 2)
    return g_strdup_printf (_("%s and %s"), names[0], names[1]);

  return g_strdup (n == 1 ? names[0] : "");
}

static void
show_words (TrBalanceRow         *self,
            const TrDoughFigures *figures,
            const TrRatioMoves   *moves)
{
  gtk_widget_remove_css_class (self->words, "error");
  gtk_widget_add_css_class (self->words, "dim-label");
  if (!moves->has_line)
    tr_words_label_set (self->words, NULL);
  else if (!moves->can_move)
    tr_words_label_set (self->words, _("Cannot be moved: its lines are not weighed, or nothing can be exchanged."));
  else
    {
      g_autofree char *names = dup_names (figures, moves);

      if (self->ratio == TR_RATIO_PREFERMENTED)
        tr_words_label_take (self->words, g_strdup_printf (_("moves %s between preferment and dough; totals held"), names));
      else
        tr_words_label_take (self->words, g_strdup_printf (_("moves %s; flour held"), names));
    }
}

static void
show_band (TrBalanceRow         *self,
           TrPage               *page,
           const TrDoughFigures *figures)
{
  const TrReader *reader = tr_page_get_reader (page);
  TrBand band;

  if (!tr_ratio_get_band (figures, self->ratio, &band))
    {
      tr_balance_scale_set_band (TR_BALANCE_SCALE (self->scale), (TrRange) { NAN, NAN }, NULL);
      return;
    }

  g_autofree char *low = tr_words_number (reader, band.low, fabs (band.low - round (band.low)) > 0 ? 1 : 0);
  g_autofree char *high = tr_words_number (reader, band.high, fabs (band.high - round (band.high)) > 0 ? 1 : 0);
  g_autofree char *tooltip = g_strdup_printf (_("Usual: %s–%s %% (%s)\n%s"), low, high,
                                              tr_words_kind (figures->dough->kind), band.source);

  tr_balance_scale_set_band (TR_BALANCE_SCALE (self->scale), (TrRange) { band.low, band.high }, tooltip);
}

/* Other doughs as ticks; the scale spans them all. */
static void
show_others (TrBalanceRow *self,
             TrPage       *page,
             TrRange      *span)
{
  const TrFigures *all = tr_document_get_figures (tr_page_get_document (page));

  tr_balance_scale_clear_ticks (TR_BALANCE_SCALE (self->scale));
  for (guint i = 0; i < all->doughs->len; i++)
    {
      const TrDoughFigures *figures = tr_figures_get_dough (all, i);
      double value = tr_ratio_get (figures, self->ratio);

      if (isnan (value))
        continue;
      span->min = MIN (span->min, floor (value));
      span->max = MAX (span->max, ceil (value));
      if ((int) i == tr_page_get_dough_index (page))
        continue;

      g_autofree char *name = tr_words_one_line (figures->dough->name);
      g_autofree char *percent = tr_words_percent (tr_page_get_reader (page), value);
      g_autofree char *tooltip = g_strdup_printf ("%s: %s", name, percent);
      tr_balance_scale_add_tick (TR_BALANCE_SCALE (self->scale), value, tooltip);
    }
}

static void
show_scale (TrBalanceRow         *self,
            TrPage               *page,
            const TrDoughFigures *figures)
{
  double value = tr_ratio_get (figures, self->ratio), step = tr_ratio_get_step (self->ratio);
  GtkAdjustment *adjustment = gtk_range_get_adjustment (GTK_RANGE (self->scale));
  TrRange span = tr_ratio_get_travel (self->ratio);
  g_autofree char *text = tr_words_percent (tr_page_get_reader (page), value);

  show_others (self, page, &span);
  gtk_adjustment_configure (adjustment, isnan (value) ? span.min : value, span.min, span.max, step, PAGE_STEPS * step, 0);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->scale), GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT, text, -1);
}

void
tr_balance_row_refresh (TrBalanceRow *self)
{
  TrPage *page = get_page (self);
  const TrDoughFigures *figures;
  TrRatioMoves moves;

  g_return_if_fail (TR_IS_BALANCE_ROW (self));

  if (page == NULL)
    return;

  figures = tr_page_get_figures (page);
  if (self->start != NULL && !self->is_committing)
    {
      tr_dough_figures_unref (self->start);
      self->start = tr_dough_figures_ref ((TrDoughFigures *) figures);
    }

  tr_ratio_get_moves (figures, self->ratio, &moves);
  show_scale (self, page, figures);
  show_band (self, page, figures);
  show_words (self, figures, &moves);
  show_number (self, page);
  gtk_widget_set_sensitive (self->scale, moves.can_move);
  gtk_widget_set_sensitive (self->entry, moves.can_move);
  gtk_widget_set_visible (self->add, !moves.has_line);
}

/* Building */

static void
name_parts (TrBalanceRow *self)
{
  const char *name = tr_words_ratio (self->ratio);
  g_autofree char *number = g_strdup_printf (_("%s, in percent"), name);

  tr_words_label_set (self->name, name);
  gtk_button_set_label (GTK_BUTTON (self->add), _(texts[self->ratio].add));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->scale), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_LABEL, number, -1);
}

static void
listen (TrBalanceRow *self)
{
  GtkEventController *events = gtk_event_controller_legacy_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();

  gtk_event_controller_set_propagation_phase (events, GTK_PHASE_CAPTURE);
  g_signal_connect_object (events, "event", G_CALLBACK (scale_event_cb), self, 0);
  gtk_widget_add_controller (self->scale, events);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_object (keys, "key-pressed", G_CALLBACK (key_pressed_cb), self, 0);
  gtk_widget_add_controller (self->scale, keys);
  g_signal_connect_object (self->scale, "change-value", G_CALLBACK (scale_change_value_cb), self, 0);
  g_signal_connect_object (self->add, "clicked", G_CALLBACK (add_clicked_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->entry, "activate", G_CALLBACK (read_number), self, G_CONNECT_SWAPPED);
  tr_entry_listen (self->entry, G_CALLBACK (entry_key_pressed_cb), G_CALLBACK (entry_left_cb), self);
}

static void
tr_balance_row_init (TrBalanceRow *self)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6), *unit = gtk_label_new ("%");

  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  self->name = tr_words_label_new (NULL);
  gtk_widget_set_hexpand (self->name, TRUE);
  self->add = gtk_button_new ();
  self->entry = gtk_entry_new ();
  gtk_editable_set_width_chars (GTK_EDITABLE (self->entry), 6);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->entry), 6);
  gtk_entry_set_alignment (GTK_ENTRY (self->entry), 1);
  tr_entry_set_tabular (GTK_ENTRY (self->entry));
  gtk_widget_add_css_class (unit, "dim-label");
  self->scale = tr_balance_scale_new ();
  self->words = tr_words_label_new ("dim-label");
  gtk_widget_add_css_class (self->words, "caption");
  gtk_widget_set_margin_top (self->words, 3);   /* the ticks reach below the scale */

  gtk_box_append (GTK_BOX (head), self->name);
  gtk_box_append (GTK_BOX (head), self->add);
  gtk_box_append (GTK_BOX (head), self->entry);
  gtk_box_append (GTK_BOX (head), unit);
  gtk_box_append (GTK_BOX (self->box), head);
  gtk_box_append (GTK_BOX (self->box), self->scale);
  gtk_box_append (GTK_BOX (self->box), self->words);
  listen (self);
}

static void
tr_balance_row_unmap (GtkWidget *widget)
{
  end_drag (TR_BALANCE_ROW (widget), FALSE);

  GTK_WIDGET_CLASS (tr_balance_row_parent_class)->unmap (widget);
}

static void
tr_balance_row_dispose (GObject *object)
{
  TrBalanceRow *self = TR_BALANCE_ROW (object);

  end_drag (self, FALSE);
  g_clear_pointer (&self->box, gtk_widget_unparent);

  G_OBJECT_CLASS (tr_balance_row_parent_class)->dispose (object);
}

static void
tr_balance_row_class_init (TrBalanceRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tr_balance_row_dispose;
  widget_class->unmap = tr_balance_row_unmap;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "balance-row");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

GtkWidget *
tr_balance_row_new (TrRatio ratio)
{
  g_return_val_if_fail (ratio < TR_N_RATIOS, NULL);

  TrBalanceRow *self = g_object_new (TR_TYPE_BALANCE_ROW, NULL);

  self->ratio = ratio;
  name_parts (self);

  return GTK_WIDGET (self);
}

GtkWidget *
tr_balance_row_get_scale (TrBalanceRow *self)
{
  g_return_val_if_fail (TR_IS_BALANCE_ROW (self), NULL);

  return self->scale;
}

GtkWidget *
tr_balance_row_get_entry (TrBalanceRow *self)
{
  g_return_val_if_fail (TR_IS_BALANCE_ROW (self), NULL);

  return self->entry;
}

GtkWidget *
tr_balance_row_get_add_button (TrBalanceRow *self)
{
  g_return_val_if_fail (TR_IS_BALANCE_ROW (self), NULL);

  return self->add;
}
