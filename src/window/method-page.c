/* method-page.c: temperatures and steps, as the bench card prints them
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A table with a row for every step there can be; a step is written in the
 * document with its first value and goes with its last. Turns and their rests
 * are on the Turns page.
 */

#include "config.h"

#include "page.h"

#include <glib/gi18n-lib.h>

#include "../calc/standard-method.h"
#include "../words/cautions.h"
#include "last-mix.h"
#include "section.h"

/* Minutes, at most, temperature, humidity. */
#define N_COLUMNS 4

#define TR_TYPE_METHOD_PAGE (tr_method_page_get_type ())
G_DECLARE_FINAL_TYPE (TrMethodPage, tr_method_page, TR, METHOD_PAGE, TrPage)

struct _TrMethodPage
{
  TrPage parent_instance;

  GtkWidget *scroller;
  GtkWidget *titles[N_COLUMNS];  /* of step_members */
  GtkWidget *cautions, *water;
  GtkWidget *last_mix;
};

G_DEFINE_FINAL_TYPE (TrMethodPage, tr_method_page, TR_TYPE_PAGE)

static gpointer
reach_method (const TrTrial *trial,
              int            dough,
              guint          item,
              gboolean       make)
{
  return tr_trial_get_dough (trial, (guint) dough)->method;
}

#define METHOD(member) reach_method, G_STRUCT_OFFSET (TrMethod, member), TR_HOLD_NUMBER, TR_QUANTITY_TEMPERATURE_C

static const TrMember temperature_members[] = {
  { "/method/dough_c", METHOD (dough_c), N_("Dough after mixing"), N_("change the dough temperature"), N_("Wanted; the water temperature follows") },
  { "/method/flour_c", METHOD (flour_c), N_("Flour"), N_("change the flour temperature") },
  { "/method/preferment_c", METHOD (preferment_c), N_("Preferment"), N_("change the preferment temperature"), N_("Empty: as the room"),
    .may_be_empty = TRUE, .empty = N_("room") },
  { "/method/liquids_c", METHOD (liquids_c), N_("Other liquids"), N_("change the temperature of the liquids"),
    N_("Milk, eggs and what else is poured beside the water. Empty: as the fridge."), .may_be_empty = TRUE, .empty = N_("fridge") },
  { "/method/tap_c", METHOD (tap_c), N_("Tap water"), N_("change the tap temperature"), N_("For ice to be weighed") },
  { "/method/friction_c", reach_method, G_STRUCT_OFFSET (TrMethod, friction_c), TR_HOLD_NUMBER, TR_QUANTITY_WARMING_C,
    N_("Friction"), N_("change the friction"), N_("How much mixing warms the dough, as a sum over the temperatures counted") },
  { "/method/friction_n", reach_method, G_STRUCT_OFFSET (TrMethod, friction_n), TR_HOLD_NUMBER, TR_QUANTITY_WHOLE,
    N_("Friction counted over"), N_("change the friction"), N_("How many temperatures that sum was measured with: flour, room, water are three") },
};

/* Steps: the item of a field is the TrStepId, not the place in the list. */

static int
find_step (const TrDough *dough,
           TrStepId       id)
{
  for (guint i = 0; i < dough->method->steps->len; i++)
    if (((const TrStep *) g_ptr_array_index (dough->method->steps, i))->id == id)
      return (int) i;

  return -1;
}

/* Where a new step goes: before the first that comes later in the work. */
static guint
find_place (const TrDough *dough,
            TrStepId       id)
{
  guint i = 0;

  while (i < dough->method->steps->len && ((const TrStep *) g_ptr_array_index (dough->method->steps, i))->id < id)
    i++;

  return i;
}

static TrStep *
get_step (const TrTrial *trial,
          int            dough,
          guint          item,
          gboolean       make)
{
  TrDough *own = tr_trial_get_dough (trial, (guint) dough);
  int index = find_step (own, (TrStepId) item);

  if (index >= 0)
    return g_ptr_array_index (own->method->steps, (guint) index);
  if (!make)
    return NULL;

  TrStep *step = tr_step_new ((TrStepId) item);

  g_ptr_array_insert (own->method->steps, (int) find_place (own, (TrStepId) item), step);

  return step;
}

/* What is not written reads as an empty step. */
static gpointer
reach_step (const TrTrial *trial,
            int            dough,
            guint          item,
            gboolean       make)
{
  static const TrStep none = { .minutes = NAN, .max_minutes = NAN, .at_c = NAN, .rh_percent = NAN, .place = -1 };
  TrStep *step = get_step (trial, dough, item, make);

  return step != NULL ? step : (gpointer) &none;
}

static char *
dup_step_pointer (const TrTrial *trial,
                  int            dough,
                  guint          item,
                  const char    *member)
{
  const TrDough *own = tr_trial_get_dough (trial, (guint) dough);
  int index = find_step (own, (TrStepId) item);

  return g_strdup_printf ("/method/steps/%u/%s", index >= 0 ? (guint) index : find_place (own, (TrStepId) item), member);
}

#define DEFINE_STEP_POINTER(name)                       \
  static char *                                         \
  dup_##name##_pointer (const TrTrial *trial,           \
                        int            dough,           \
                        guint          item)            \
  {                                                     \
    return dup_step_pointer (trial, dough, item, #name); \
  }

DEFINE_STEP_POINTER (minutes)
DEFINE_STEP_POINTER (max)
DEFINE_STEP_POINTER (at_c)
DEFINE_STEP_POINTER (rh_percent)
DEFINE_STEP_POINTER (place)

static char *
dup_step_undo (const TrTrial *trial,
               int            dough,
               guint          item)
{
  return g_strdup_printf (_("change the step %s"), tr_words_step ((TrStepId) item));
}

/* A step with nothing written is no step. */
static void
drop_empty_step (TrTrial  *draft,
                 int       dough,
                 guint     item,
                 gpointer  holder)
{
  const TrStep *step = holder;

  if (tr_is_written (step->minutes) || tr_is_written (step->max_minutes) || tr_is_written (step->at_c) ||
      tr_is_written (step->rh_percent) || step->place >= 0 || step->extra != NULL)
    return;

  g_ptr_array_remove (tr_trial_get_dough (draft, (guint) dough)->method->steps, holder);
}

#define STEP(member, quantity) reach_step, G_STRUCT_OFFSET (TrStep, member), TR_HOLD_NUMBER, TR_QUANTITY_##quantity

static const TrMember step_members[N_COLUMNS] = {
  { "/method/steps/%u/minutes", STEP (minutes, MINUTES), N_("Time"), NULL, N_("How long it takes, or at least"), 5,
    TRUE, "–", .dup_pointer = dup_minutes_pointer, .dup_undo = dup_step_undo,
    .settle = drop_empty_step },
  { "/method/steps/%u/max", STEP (max_minutes, MINUTES), N_("At most"), NULL, N_("The longest it may wait"), 15,
    TRUE, "–", .dup_pointer = dup_max_pointer, .dup_undo = dup_step_undo,
    .settle = drop_empty_step },
  { "/method/steps/%u/at_c", STEP (at_c, TEMPERATURE_C), N_("At"), NULL, N_("Temperature of proofer, oven or water bath"), 1,
    TRUE, "–", .dup_pointer = dup_at_c_pointer, .dup_undo = dup_step_undo,
    .settle = drop_empty_step },
  { "/method/steps/%u/rh_percent", STEP (rh_percent, PERCENT), N_("Humidity"), NULL, N_("Relative humidity of the air"), 5,
    TRUE, "–", .dup_pointer = dup_rh_percent_pointer, .dup_undo = dup_step_undo,
    .settle = drop_empty_step },
};

enum { PLACE_NOT_WRITTEN = TR_N_PLACES, N_PLACE_CHOICES };

static char *
dup_place_name (guint value)
{
  return g_strdup (value < TR_N_PLACES ? tr_words_place ((TrPlace) value) : "–");
}

static int
get_place (const TrTrial *trial,
           int            dough,
           guint          item)
{
  const TrStep *step = get_step (trial, dough, item, FALSE);

  return step != NULL && step->place >= 0 ? step->place : PLACE_NOT_WRITTEN;
}

static void
set_place (TrTrial              *draft,
           int                   dough,
           guint                 item,
           guint                 value,
           const TrDoughFigures *figures)
{
  TrStep *step = get_step (draft, dough, item, TRUE);

  step->place = value == PLACE_NOT_WRITTEN ? -1 : (int) value;
  drop_empty_step (draft, dough, item, step);
}

static const TrChoice place_choice = {
  "/method/steps/%u/place", N_("Place"), N_("change where a step happens"), NULL,
  N_PLACE_CHOICES, dup_place_name, get_place, set_place, .dup_pointer = dup_place_pointer,
};

/* Which columns a step has: minutes always, the others where they mean something. */
typedef struct { TrStepId id; gboolean has_max, has_temperature, has_humidity, has_place; } TrStepShape;

static const TrStepShape step_shapes[] = {
  { TR_STEP_PREFERMENT_MIX, FALSE, FALSE, FALSE, FALSE },
  { TR_STEP_RIPEN, TRUE, TRUE, FALSE, TRUE },
  { TR_STEP_MIX, FALSE, FALSE, FALSE, FALSE },
  { TR_STEP_BULK, TRUE, TRUE, FALSE, TRUE },
  { TR_STEP_CHILL, TRUE, FALSE, FALSE, TRUE },
  { TR_STEP_FAT_BLOCK, FALSE, TRUE, FALSE, FALSE },
  { TR_STEP_LOCK_IN, FALSE, FALSE, FALSE, FALSE },
  { TR_STEP_ROLL_OUT, FALSE, FALSE, FALSE, FALSE },
  { TR_STEP_CUT, FALSE, FALSE, FALSE, FALSE },
  { TR_STEP_SHAPE, FALSE, FALSE, FALSE, FALSE },
  { TR_STEP_PROOF, TRUE, TRUE, TRUE, TRUE },
  { TR_STEP_FINISH, FALSE, FALSE, FALSE, FALSE },
  { TR_STEP_BAKE, FALSE, TRUE, TRUE, FALSE },
  { TR_STEP_COOL, TRUE, FALSE, FALSE, FALSE },
};

/* The page */

static void
show_title (GtkWidget      *title,
            const TrMember *member,
            const TrReader *reader)
{
  tr_figure_label_take (title, g_strdup_printf ("%s\n%s", _(member->label), tr_member_get_unit (member, reader)));
}

static void
show_words (TrMethodPage *self)
{
  const TrDoughFigures *figures = tr_page_get_figures (TR_PAGE (self));
  const TrReader *reader = tr_page_get_reader (TR_PAGE (self));

  tr_words_label_take (self->water, figures != NULL ? tr_words_water (reader, figures) : NULL);
  tr_words_label_take (self->cautions, figures != NULL ? tr_words_cautions (reader, figures) : NULL);
}

static void
tr_method_page_refresh (TrPage *page)
{
  TrMethodPage *self = TR_METHOD_PAGE (page);

  for (guint i = 0; i < G_N_ELEMENTS (step_members); i++)
    show_title (self->titles[i], &step_members[i], tr_page_get_reader (page));
  gtk_widget_set_visible (self->scroller, tr_page_get_dough (page) != NULL);
  show_words (self);
  tr_last_mix_refresh (TR_LAST_MIX (self->last_mix));
  tr_fields_refresh (self->scroller);
}

static gboolean
tr_method_page_go_to (TrPage     *page,
                      const char *pointer)
{
  return (g_str_has_prefix (pointer, "/method") || g_str_has_prefix (pointer, "/log/mixes")) && tr_fields_go_to (TR_METHOD_PAGE (page)->scroller, pointer);
}

static GtkWidget *
attach_title (GtkWidget  *grid,
              const char *text,
              const char *tooltip,
              int         column)
{
  GtkWidget *title = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (title), tooltip != NULL ? 1 : 0);
  gtk_label_set_justify (GTK_LABEL (title), tooltip != NULL ? GTK_JUSTIFY_RIGHT : GTK_JUSTIFY_LEFT);
  gtk_widget_set_valign (title, GTK_ALIGN_END);
  gtk_widget_set_tooltip_text (title, tooltip);
  gtk_widget_add_css_class (title, "dim-label");
  gtk_widget_add_css_class (title, "caption");
  gtk_grid_attach (GTK_GRID (grid), title, column, 0, 1, 1);

  return title;
}

static void
attach_field (GtkWidget         *grid,
              GtkWidget         *field,
              const TrStepShape *shape,
              int                column,
              int                row)
{
  tr_field_set_item (TR_FIELD (field), shape->id);
  tr_field_set_context (TR_FIELD (field), tr_words_step (shape->id));
  gtk_widget_set_valign (field, GTK_ALIGN_START);
  gtk_grid_attach (GTK_GRID (grid), field, column, row, 1, 1);
}

static void
attach_step (GtkWidget         *grid,
             const TrStepShape *shape,
             int                row)
{
  const gboolean has[] = { TRUE, shape->has_max, shape->has_temperature, shape->has_humidity };
  GtkWidget *name = tr_words_label_new (NULL);

  tr_words_label_set (name, tr_words_step (shape->id));
  gtk_widget_set_hexpand (name, TRUE);
  gtk_label_set_width_chars (GTK_LABEL (name), 10);
  gtk_grid_attach (GTK_GRID (grid), name, 0, row, 1, 1);
  for (guint i = 0; i < G_N_ELEMENTS (step_members); i++)
    if (has[i])
      {
        GtkWidget *field = tr_entry_field_new (&step_members[i], TR_FIELD_TABLE);

        tr_entry_field_set_width_chars (TR_ENTRY_FIELD (field), 5, 5);
        attach_field (grid, field, shape, (int) i + 1, row);
      }
  if (shape->has_place)
    attach_field (grid, tr_choice_field_new (&place_choice, TR_FIELD_TABLE), shape, (int) G_N_ELEMENTS (step_members) + 1, row);
}

static GtkWidget *
new_steps (TrMethodPage *self)
{
  GtkWidget *grid = gtk_grid_new ();

  gtk_grid_set_column_spacing (GTK_GRID (grid), 6);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  for (guint i = 0; i < G_N_ELEMENTS (step_members); i++)
    self->titles[i] = attach_title (grid, "", _(step_members[i].tooltip), (int) i + 1);
  attach_title (grid, _(place_choice.label), NULL, (int) G_N_ELEMENTS (step_members) + 1);
  for (guint i = 0; i < G_N_ELEMENTS (step_shapes); i++)
    attach_step (grid, &step_shapes[i], (int) i + 1);

  return grid;
}

static void
fill_clicked_cb (TrMethodPage *self)
{
  TrPage *page = TR_PAGE (self);
  g_autofree char *said = NULL;
  TrTrial *draft;
  guint filled;

  if (tr_page_get_dough (page) == NULL)
    return;

  draft = tr_document_draft (tr_page_get_document (page));
  filled = tr_dough_fill_usual_steps (tr_trial_own_dough (draft, (guint) tr_page_get_dough_index (page)), draft->pantry);
  if (!tr_page_commit (page, draft, _("fill in the usual steps"), NULL, "/method/steps"))
    return;
  if (filled == 0)
    {
      gtk_widget_activate_action (GTK_WIDGET (self), "win.notice", "s", _("Every usual step has its values already."));
      return;
    }
  said = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u value filled in, common practice; what was written stays.",
                                       "%u values filled in, common practice; what was written stays.", filled), filled);
  gtk_widget_activate_action (GTK_WIDGET (self), "win.told", "s", said);
}

static void
tr_method_page_init (TrMethodPage *self)
{
  GtkWidget *column = tr_column_new (&self->scroller);
  GtkWidget *section = tr_column_add_section (column, _("Steps"));
  GtkWidget *hint = tr_words_label_new ("dim-label"), *fill = gtk_button_new_with_label (_("Fill in the usual steps"));

  tr_words_label_set (hint, _("Printed on the bench card. Turns and their rests are on the Turns page."));
  gtk_box_append (GTK_BOX (section), new_steps (self));
  gtk_box_append (GTK_BOX (section), hint);
  gtk_widget_set_halign (fill, GTK_ALIGN_START);
  gtk_widget_set_tooltip_text (fill, _("Times, temperatures and places that are common practice for this kind; what is written stays"));
  g_signal_connect_object (fill, "clicked", G_CALLBACK (fill_clicked_cb), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (section), fill);
  self->cautions = tr_words_label_new ("dim-label");
  gtk_box_append (GTK_BOX (section), self->cautions);
  section = tr_column_add_section (column, _("Temperatures for mixing"));
  self->water = tr_words_label_new ("heading");
  gtk_box_append (GTK_BOX (section), self->water);
  gtk_box_append (GTK_BOX (section), tr_form_new (temperature_members, G_N_ELEMENTS (temperature_members)));
  section = tr_column_add_section (column, _("Last mix"));
  self->last_mix = tr_last_mix_new ();
  gtk_box_append (GTK_BOX (section), self->last_mix);
  tr_page_set_child (TR_PAGE (self), self->scroller);
}

static void
tr_method_page_class_init (TrMethodPageClass *klass)
{
  TrPageClass *page_class = TR_PAGE_CLASS (klass);

  page_class->refresh = tr_method_page_refresh;
  page_class->go_to = tr_method_page_go_to;
}

GtkWidget *
tr_method_page_new (void)
{
  return g_object_new (TR_TYPE_METHOD_PAGE, NULL);
}
