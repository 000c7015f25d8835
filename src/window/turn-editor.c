/* turn-editor.c: the fields and the picture of one turn
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A turn is given by its thickness, by its length, or by width and thickness;
 * which of them is a choice, and only the fields of that choice are shown.
 */

#include "config.h"

#include "turn-editor.h"

#include <glib/gi18n-lib.h>

#include "../calc/rests.h"
#include "../words/passes.h"
#include "picture-view.h"
#include "rest-view.h"
#include "section.h"

struct _TrTurnEditor
{
  GtkBox parent_instance;

  /* Children */
  GtkWidget *title;
  GtkWidget *layers;
  GtkWidget *breaks;
  GtkWidget *passes;
  GtkWidget *picture;
  GtkWidget *rest;

  guint item;
};

G_DEFINE_FINAL_TYPE (TrTurnEditor, tr_turn_editor, GTK_TYPE_BOX)

/* Where the values stand */

static TrTurn *
get_turn (const TrTrial *trial,
          int            dough,
          guint          item)
{
  const TrDough *own = tr_trial_get_dough (trial, (guint) dough);

  return item < own->turns->len ? tr_dough_get_turn (own, item) : NULL;
}

static gpointer
reach_turn (const TrTrial *trial,
            int            dough,
            guint          item,
            gboolean       make)
{
  return get_turn (trial, dough, item);
}

#define DEFINE_REACH(name)                                                \
  static gpointer                                                         \
  reach_by_##name (const TrTrial *trial,                                  \
                   int            dough,                                  \
                   guint          item,                                   \
                   gboolean       make)                                   \
  {                                                                       \
    TrTurn *turn = get_turn (trial, dough, item);                         \
                                                                          \
    return turn != NULL && tr_is_written (turn->name##_mm) ? turn : NULL; \
  }

DEFINE_REACH (thickness)
DEFINE_REACH (length)
DEFINE_REACH (width)

static gpointer
reach_rest (const TrTrial *trial,
            int            dough,
            guint          item,
            gboolean       make)
{
  TrTurn *turn = get_turn (trial, dough, item);

  return turn != NULL ? turn->rest : NULL;
}

void
tr_settle_rest_min (TrTrial  *draft,
                    int       dough,
                    guint     item,
                    gpointer  holder)
{
  TrRest *rest = holder;

  rest->max_minutes = MAX (rest->max_minutes, rest->min_minutes);
}

static double
get_start_c (const TrTrial *trial,
             int            dough,
             guint          item)
{
  return tr_rest_get_usual_start_c (tr_trial_get_dough (trial, (guint) dough), (int) item + 1);
}

static double
get_target_c (const TrTrial *trial,
              int            dough,
              guint          item)
{
  const TrRest *rest = reach_rest (trial, dough, item, FALSE);

  return rest != NULL ? tr_rest_get_usual_target_c (rest, trial->bench) : NAN;
}

static const TrMember roll_members[] = {
  { "/turns/%u/length_mm", reach_by_length, G_STRUCT_OFFSET (TrTurn, length_mm), TR_HOLD_NUMBER, TR_QUANTITY_LENGTH_MM,
    N_("Length"), N_("change the length of turn %u"), N_("Length to roll to; the width is kept"), 10 },
  { "/turns/%u/width_mm", reach_by_width, G_STRUCT_OFFSET (TrTurn, width_mm), TR_HOLD_NUMBER, TR_QUANTITY_LENGTH_MM,
    N_("Width"), N_("change the width of turn %u"), N_("Width to roll to, across the rolling direction"), 10 },
  { "/turns/%u/thickness_mm", reach_by_thickness, G_STRUCT_OFFSET (TrTurn, thickness_mm), TR_HOLD_NUMBER, TR_QUANTITY_LENGTH_MM,
    N_("Thickness"), N_("change the thickness of turn %u"), N_("Thickness to roll to before folding"), 0.5 },
};

static const TrMember trim_member =
  { "/turns/%u/trim_mm", reach_turn, G_STRUCT_OFFSET (TrTurn, trim_mm), TR_HOLD_NUMBER, TR_QUANTITY_LENGTH_MM,
    N_("Trim"), N_("change the trim of turn %u"), N_("Cut from both ends of the folded block, so that the layers show"), 1 };

static const TrMember minutes_member =
  { "/turns/%u/minutes", reach_turn, G_STRUCT_OFFSET (TrTurn, minutes), TR_HOLD_NUMBER, TR_QUANTITY_MINUTES,
    N_("Hands-on time"), N_("change the minutes of turn %u"), N_("Time at the bench; empty: as on the Bench page"), 1,
    .may_be_empty = TRUE, .empty = N_("bench") };

static const TrMember rest_members[] = {
  { "/turns/%u/rest/min", reach_rest, G_STRUCT_OFFSET (TrRest, min_minutes), TR_HOLD_NUMBER, TR_QUANTITY_MINUTES,
    N_("At least"), N_("change the rest after turn %u"), N_("Shortest rest after this fold"), 5, .settle = tr_settle_rest_min },
  { "/turns/%u/rest/max", reach_rest, G_STRUCT_OFFSET (TrRest, max_minutes), TR_HOLD_NUMBER, TR_QUANTITY_MINUTES,
    N_("At most"), N_("change the rest after turn %u"), N_("Longest it may wait"), 30 },
  { "/turns/%u/rest/start_c", reach_rest, G_STRUCT_OFFSET (TrRest, start_c), TR_HOLD_NUMBER, TR_QUANTITY_TEMPERATURE_C,
    N_("Goes in at"), N_("change the rest after turn %u"), N_("How warm the block is all through when the rest begins, measured with a probe"),
    .may_be_empty = TRUE, .get_otherwise = get_start_c },
  { "/turns/%u/rest/target_c", reach_rest, G_STRUCT_OFFSET (TrRest, target_c), TR_HOLD_NUMBER, TR_QUANTITY_TEMPERATURE_C,
    N_("Core wanted at"), N_("change the rest after turn %u"), N_("Written, a rest that misses it by more than 2 °C is found. Empty: 4 °C over the air, not under 8 °C."),
    .may_be_empty = TRUE, .get_otherwise = get_target_c },
};

/* Choices */

static char *
dup_fold_name (guint value)
{
  return tr_words_fold ((int) value + 2);
}

static int
get_fold (const TrTrial *trial,
          int            dough,
          guint          item)
{
  const TrTurn *turn = get_turn (trial, dough, item);

  return turn != NULL ? turn->fold - 2 : -1;
}

static void
set_fold (TrTrial              *draft,
          int                   dough,
          guint                 item,
          guint                 value,
          const TrDoughFigures *figures)
{
  get_turn (draft, dough, item)->fold = (int) value + 2;
}

enum { GIVEN_BY_THICKNESS, GIVEN_BY_LENGTH, GIVEN_BY_WIDTH, N_GIVEN };

static char *
dup_given_name (guint value)
{
  switch (value)
    {
    case GIVEN_BY_THICKNESS:
      return g_strdup (_("thickness"));
    case GIVEN_BY_LENGTH:
      return g_strdup (_("length"));
    default:
      return g_strdup (_("width and thickness"));
    }
}

static int
get_given (const TrTrial *trial,
           int            dough,
           guint          item)
{
  const TrTurn *turn = get_turn (trial, dough, item);

  if (turn == NULL)
    return -1;
  if (tr_is_written (turn->length_mm))
    return GIVEN_BY_LENGTH;

  return tr_is_written (turn->width_mm) ? GIVEN_BY_WIDTH : GIVEN_BY_THICKNESS;
}

/* What the block is rolled to now, or a start. */
static double
get_rolled (const TrDoughFigures *figures,
            guint                 item,
            guint                 side,
            double                fallback)
{
  if (figures == NULL || !figures->has_lamination || item >= figures->lamination.steps->len)
    return fallback;

  double mm = g_array_index (figures->lamination.steps, TrTurnFigures, item).rolled_mm.mm[side];

  /* As near as it can be measured: what was rolled to stays as it was. */
  if (!isfinite (mm) || mm < 0.5)
    return fallback;

  return side == 2 ? round (mm * 10) / 10 : round (mm);
}

static void
set_given (TrTrial              *draft,
           int                   dough,
           guint                 item,
           guint                 value,
           const TrDoughFigures *figures)
{
  TrTurn *turn = get_turn (draft, dough, item);
  double thickness = tr_is_written (turn->thickness_mm) ? turn->thickness_mm : get_rolled (figures, item, 2, 8);

  turn->length_mm = value == GIVEN_BY_LENGTH ? get_rolled (figures, item, 0, 600) : NAN;
  turn->width_mm = value == GIVEN_BY_WIDTH ? get_rolled (figures, item, 1, 200) : NAN;
  turn->thickness_mm = value == GIVEN_BY_LENGTH ? NAN : thickness;
}

char *
tr_dup_place_name (guint value)
{
  return g_strdup (value < TR_N_PLACES ? tr_words_place ((TrPlace) value) : _("no rest"));
}

int
tr_get_rest_choice (const TrRest *rest)
{
  return rest != NULL ? (int) rest->place : TR_N_PLACES;
}

void
tr_set_rest_choice (TrRest **rest,
                    guint    value)
{
  if (value >= TR_N_PLACES)
    {
      g_clear_pointer (rest, tr_rest_free);
      return;
    }
  if (*rest == NULL)
    *rest = tr_rest_new ();
  (*rest)->place = (TrPlace) value;
}

static int
get_rest_place (const TrTrial *trial,
                int            dough,
                guint          item)
{
  const TrTurn *turn = get_turn (trial, dough, item);

  return turn != NULL ? tr_get_rest_choice (turn->rest) : -1;
}

static void
set_rest_place (TrTrial              *draft,
                int                   dough,
                guint                 item,
                guint                 value,
                const TrDoughFigures *figures)
{
  tr_set_rest_choice (&get_turn (draft, dough, item)->rest, value);
}

char *
tr_dup_on_name (guint value)
{
  return g_strdup (value == TR_ON_BOARD ? _("a board") : _("a rack"));
}

static int
get_rest_on (const TrTrial *trial,
             int            dough,
             guint          item)
{
  const TrRest *rest = reach_rest (trial, dough, item, FALSE);

  return rest != NULL ? (int) rest->on : -1;
}

static void
set_rest_on (TrTrial              *draft,
             int                   dough,
             guint                 item,
             guint                 value,
             const TrDoughFigures *figures)
{
  get_turn (draft, dough, item)->rest->on = (TrOn) value;
}

static const TrChoice fold_choice = {
  "/turns/%u/fold", N_("Fold"), N_("change the fold of turn %u"), N_("How many times the dough lies on itself"),
  5, dup_fold_name, get_fold, set_fold,
};

static const TrChoice given_choice = {
  "/turns/%u/by", N_("Roll to a"), N_("change what turn %u is rolled to"),
  N_("What you measure at the bench. The rest follows, since the volume stays."), N_GIVEN, dup_given_name, get_given, set_given,
};

static const TrChoice place_choice = {
  "/turns/%u/rest/place", N_("Rest in"), N_("change the rest after turn %u"), NULL,
  TR_N_REST_CHOICES, tr_dup_place_name, get_rest_place, set_rest_place,
};

static const TrChoice on_choice = {
  "/turns/%u/rest/on", N_("Lying on"), N_("change the rest after turn %u"),
  N_("On a board one face cools, on a rack both"), TR_N_ONS, tr_dup_on_name, get_rest_on, set_rest_on,
};

const TrMember *
tr_turn_get_roll_member (const TrTurn *turn)
{
  return tr_is_written (turn->length_mm) ? &roll_members[0] : &roll_members[2];
}

/* Building */

static GtkWidget *
new_action_button (const char *icon,
                   const char *label,
                   const char *action)
{
  GtkWidget *button = gtk_button_new_from_icon_name (icon);

  gtk_widget_add_css_class (button, "flat");
  gtk_widget_set_tooltip_text (button, label);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);

  return button;
}

static GtkWidget *
build_head (TrTurnEditor *self)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  self->title = gtk_label_new ("");
  gtk_label_set_xalign (GTK_LABEL (self->title), 0);
  gtk_widget_add_css_class (self->title, "heading");
  gtk_widget_set_hexpand (self->title, TRUE);
  gtk_box_append (GTK_BOX (head), self->title);
  gtk_box_append (GTK_BOX (head), new_action_button ("go-previous-symbolic", _("Earlier"), "turn.earlier"));
  gtk_box_append (GTK_BOX (head), new_action_button ("go-next-symbolic", _("Later"), "turn.later"));
  gtk_box_append (GTK_BOX (head), new_action_button ("list-remove-symbolic", _("Remove this turn"), "turn.remove"));

  return head;
}

static GtkWidget *
build_fields (void)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkWidget *roll = tr_fields_row_new (), *rest = tr_fields_row_new ();

  tr_form_add (roll, tr_choice_field_new (&given_choice, TR_FIELD_ABOVE));
  for (guint i = 0; i < G_N_ELEMENTS (roll_members); i++)
    tr_form_add (roll, tr_entry_field_new (&roll_members[i], TR_FIELD_ABOVE));
  tr_form_add (roll, tr_choice_field_new (&fold_choice, TR_FIELD_ABOVE));
  tr_form_add (roll, tr_entry_field_new (&trim_member, TR_FIELD_ABOVE));

  tr_form_add (rest, tr_entry_field_new (&minutes_member, TR_FIELD_ABOVE));
  tr_form_add (rest, tr_choice_field_new (&place_choice, TR_FIELD_ABOVE));
  tr_form_add (rest, tr_choice_field_new (&on_choice, TR_FIELD_ABOVE));
  for (guint i = 0; i < G_N_ELEMENTS (rest_members); i++)
    tr_form_add (rest, tr_entry_field_new (&rest_members[i], TR_FIELD_ABOVE));

  gtk_box_append (GTK_BOX (box), roll);
  gtk_box_append (GTK_BOX (box), rest);

  return box;
}

static void
tr_turn_editor_init (TrTurnEditor *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 6);
  gtk_box_append (GTK_BOX (self), build_head (self));
  gtk_box_append (GTK_BOX (self), build_fields ());

  self->layers = tr_words_label_new ("dim-label");
  self->breaks = tr_words_label_new ("error");
  self->passes = tr_words_label_new (NULL);
  self->picture = tr_picture_view_new ("", tr_make_turn_picture, 13);
  self->rest = tr_rest_view_new ();
  gtk_box_append (GTK_BOX (self), self->passes);
  gtk_box_append (GTK_BOX (self), self->layers);
  gtk_box_append (GTK_BOX (self), self->breaks);
  gtk_box_append (GTK_BOX (self), self->picture);
  gtk_box_append (GTK_BOX (self), self->rest);
}

static void
tr_turn_editor_class_init (TrTurnEditorClass *klass)
{
}

GtkWidget *
tr_turn_editor_new (void)
{
  return g_object_new (TR_TYPE_TURN_EDITOR, NULL);
}

/* Showing */

static void
set_context (GtkWidget  *widget,
             const char *context,
             guint       item)
{
  if (TR_IS_FIELD (widget))
    {
      tr_field_set_item (TR_FIELD (widget), item);
      tr_field_set_context (TR_FIELD (widget), context);
      return;
    }
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    set_context (child, context, item);
}

void
tr_turn_editor_set_item (TrTurnEditor *self,
                         guint         item)
{
  g_return_if_fail (TR_IS_TURN_EDITOR (self));

  g_autofree char *title = g_strdup_printf (_("Turn %u"), item + 1);

  self->item = item;
  gtk_label_set_text (GTK_LABEL (self->title), title);
  set_context (GTK_WIDGET (self), title, item);
  tr_picture_view_set_name (TR_PICTURE_VIEW (self->picture), title);
}

guint
tr_turn_editor_get_item (TrTurnEditor *self)
{
  g_return_val_if_fail (TR_IS_TURN_EDITOR (self), 0);

  return self->item;
}

static char *
dup_breaks (TrBreaks breaks)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < TR_N_BREAKS; i++)
    if ((breaks & (1u << i)) != 0)
      g_string_append_printf (text, "%s%s", text->len > 0 ? "; " : "", tr_words_break ((TrBreaks) (1u << i)));

  return g_string_free (g_steal_pointer (&text), FALSE);
}

static void
show_turn_figures (TrTurnEditor         *self,
                   const TrDoughFigures *figures,
                   const TrReader       *reader)
{
  const TrTurnFigures *turn = &g_array_index (figures->lamination.steps, TrTurnFigures, self->item);
  g_autofree char *count = tr_words_count (reader, turn->fat_layers);
  g_autofree char *thick = tr_words_micrometres (reader, &turn->fat_layer_um);
  g_autofree char *stretch = tr_words_number (reader, turn->stretch, 1);
  g_autofree char *said = g_strdup_printf (_("%s fat layers, %s each · stretched %s times"), count, thick, stretch);
  g_auto (TrPasses) passes = { 0 };

  if (turn->trimmed_g > 0)
    {
      g_autofree char *trimmed = tr_words_mass (reader, turn->trimmed_g);

      tr_words_label_take (self->layers, g_strdup_printf (_("%s · %s trimmed off"), said, trimmed));
    }
  else
    tr_words_label_set (self->layers, said);
  tr_words_label_take (self->breaks, dup_breaks (turn->breaks));
  tr_passes_init_turn (&passes, figures, self->item);
  tr_words_label_take (self->passes, tr_words_passes (reader, figures->bench, &passes));
  g_autofree char *why = tr_words_passes_why (reader, figures->bench);

  gtk_widget_set_tooltip_text (self->passes, why);
}

void
tr_turn_editor_refresh (TrTurnEditor *self)
{
  g_return_if_fail (TR_IS_TURN_EDITOR (self));

  TrPage *page = (TrPage *) gtk_widget_get_ancestor (GTK_WIDGET (self), TR_TYPE_PAGE);
  const TrDoughFigures *figures = page != NULL ? tr_page_get_figures (page) : NULL;

  if (figures == NULL || self->item >= figures->dough->turns->len)
    return;

  gboolean has_figures = figures->has_lamination && self->item < figures->lamination.steps->len;

  tr_fields_refresh (GTK_WIDGET (self));
  tr_rest_view_show (TR_REST_VIEW (self->rest), figures, (int) self->item + 1, tr_page_get_reader (page));
  tr_picture_view_set_figures (TR_PICTURE_VIEW (self->picture), has_figures ? figures : NULL, self->item, tr_page_get_reader (page));
  if (has_figures)
    {
      show_turn_figures (self, figures, tr_page_get_reader (page));
      return;
    }
  tr_words_label_set (self->passes, NULL);
  tr_words_label_set (self->layers, NULL);
  tr_words_label_set (self->breaks, NULL);
}
