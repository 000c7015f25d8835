/* bench-page.c: the kitchen, whose limits the findings name
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One bench for all doughs of a trial.
 */

#include "config.h"

#include "page.h"

#include <glib/gi18n-lib.h>

#include "../words/cautions.h"
#include "picture-view.h"
#include "section.h"

#define TR_TYPE_BENCH_PAGE (tr_bench_page_get_type ())
G_DECLARE_FINAL_TYPE (TrBenchPage, tr_bench_page, TR, BENCH_PAGE, TrPage)

struct _TrBenchPage
{
  TrPage parent_instance;

  GtkWidget *scroller;
  GtkWidget *caution;
  TrPictureView *picture;
  GtkSizeGroup *widths;          /* owned: of all fields, or sections would not stand in line */
};

G_DEFINE_FINAL_TYPE (TrBenchPage, tr_bench_page, TR_TYPE_PAGE)

static gpointer
reach_bench (const TrTrial *trial,
             int            dough,
             guint          item,
             gboolean       make)
{
  return trial->bench;
}

static gpointer
reach_rollers (const TrTrial *trial,
               int            dough,
               guint          item,
               gboolean       make)
{
  return tr_is_written (trial->bench->roll_width_max_mm) ? trial->bench : NULL;
}

#define BENCH(member, hold, quantity) reach_bench, G_STRUCT_OFFSET (TrBench, member), TR_HOLD_##hold, TR_QUANTITY_##quantity

static const TrMember worktop_members[] = {
  { "/bench/worktop_mm/0", BENCH (worktop_mm[0], NUMBER, LENGTH_MM), N_("Worktop length"), N_("change the worktop"),
    N_("Free length along the rolling direction"), 10 },
  { "/bench/worktop_mm/1", BENCH (worktop_mm[1], NUMBER, LENGTH_MM), N_("Worktop depth"), N_("change the worktop"),
    N_("Free depth across the rolling direction"), 10 },
};

static const TrMember rolling_members[] = {
  { "/bench/roll_width_max_mm", reach_rollers, G_STRUCT_OFFSET (TrBench, roll_width_max_mm), TR_HOLD_NUMBER, TR_QUANTITY_LENGTH_MM,
    N_("Roller width"), N_("change the roller width"), N_("The widest dough that goes through"), 10 },
  { "/bench/roll_thickness_min_mm", BENCH (roll_thickness_min_mm, NUMBER, LENGTH_MM), N_("Thinnest"),
    N_("change the thinnest setting"), N_("The thinnest the rollers, or a steady hand, will go"), 0.5 },
  { "/bench/roll_thickness_max_mm", BENCH (roll_thickness_max_mm, NUMBER, LENGTH_MM), N_("Thickest"),
    N_("change the thickest setting"), N_("The thickest block that goes in"), 1 },
  { "/bench/pass_reduction_percent", BENCH (pass_reduction_percent, NUMBER, PERCENT), N_("A pass takes at most"),
    N_("change what a pass takes"), N_("Of the thickness, whether through rollers or under a pin. 30 % is common practice.") },
};

static const TrMember air_members[] = {
  { "/bench/room_c", BENCH (room_c, NUMBER, TEMPERATURE_C), N_("Room"), N_("change the room temperature") },
  { "/bench/fridge_c", BENCH (fridge_c, NUMBER, TEMPERATURE_C), N_("Fridge"), N_("change the fridge temperature"),
    N_("Of the air, measured, not the dial") },
  { "/bench/freezer_c", BENCH (freezer_c, NUMBER, TEMPERATURE_C), N_("Freezer"), N_("change the freezer temperature") },
};

/* Common practice, not a standard. */
#define STILL_AIR_W_M2K 8
#define FAN_W_M2K 15
#define BLAST_W_M2K 25
#define HEAT_UNIT "W/m²K"
#define HEAT_TIP N_("How fast heat passes between air and dough. Still air 8, with a fan 15, a blast chiller 25: common values, to be put right by a probe")

static const TrMember heat_members[] = {
  { "/bench/h_w_m2k/fridge", BENCH (h_w_m2k[TR_PLACE_FRIDGE], NUMBER, NUMBER), N_("In the fridge"), N_("change how the fridge cools"),
    HEAT_TIP, 1, .unit = HEAT_UNIT },
  { "/bench/h_w_m2k/freezer", BENCH (h_w_m2k[TR_PLACE_FREEZER], NUMBER, NUMBER), N_("In the freezer"), N_("change how the freezer cools"),
    HEAT_TIP, 1, .unit = HEAT_UNIT },
  { "/bench/h_w_m2k/room", BENCH (h_w_m2k[TR_PLACE_ROOM], NUMBER, NUMBER), N_("In the room"), N_("change how the room warms"),
    HEAT_TIP, 1, .unit = HEAT_UNIT },
  { "/bench/h_w_m2k/bench", BENCH (h_bench_w_m2k, NUMBER, NUMBER), N_("On the worktop"), N_("change how the worktop warms"),
    N_("Air, worktop and rolling together, while the dough is worked; 25 is common"), 1, .unit = HEAT_UNIT },
};

static const TrMember oven_members[] = {
  { "/bench/tray_mm/0", BENCH (tray_mm[0], NUMBER, LENGTH_MM), N_("Tray length"), N_("change the tray"), NULL, 10 },
  { "/bench/tray_mm/1", BENCH (tray_mm[1], NUMBER, LENGTH_MM), N_("Tray width"), N_("change the tray"), NULL, 10 },
  { "/bench/piece_gap_mm", BENCH (piece_gap_mm, NUMBER, LENGTH_MM), N_("Gap between pieces"), N_("change the gap between pieces"),
    N_("Room to proof, between raw pieces on the tray"), 5 },
  { "/bench/trays_in_oven", BENCH (trays_in_oven, COUNT, WHOLE), N_("Trays in the oven"), N_("change the trays in the oven"),
    N_("Baked at once") },
  { "/bench/preheat_minutes", BENCH (preheat_minutes, NUMBER, MINUTES), N_("Preheating"), N_("change the preheating"), NULL, 5 },
};

static const TrMember work_members[] = {
  { "/bench/hands", BENCH (hands, COUNT, WHOLE), N_("Pairs of hands"), N_("change the pairs of hands"), N_("People working at once") },
  { "/bench/mixers", BENCH (mixers, COUNT, WHOLE), N_("Mixers"), N_("change the mixers") },
  { "/bench/mixer_max_g", BENCH (mixer_max_g, NUMBER, MASS_G), N_("Mixer takes"), N_("change what the mixer takes"),
    N_("Most dough it mixes well at once"), 100 },
  { "/bench/turn_minutes", BENCH (turn_minutes, NUMBER, MINUTES), N_("A turn takes"), N_("change what a turn takes"),
    N_("Hands-on time from block to folded block, where a turn says nothing else") },
};

static const TrMember scale_members[] = {
  { "/bench/scale_step_g", BENCH (scale_step_g, NUMBER, MASS_G), N_("Scale step"), N_("change the scale step"),
    N_("Weights on the bench card are rounded to this") , 1 },
  { "/bench/fine_scale_step_g", BENCH (fine_scale_step_g, NUMBER, MASS_G), N_("Fine scale step"), N_("change the fine scale step"),
    N_("For salt, yeast and malt under 20 g"), 0.1 },
  { "/bench/currency", BENCH (currency, TEXT, NUMBER), N_("Currency"), N_("change the currency"), N_("Three letters, for prices") },
};

enum { WITH_ROLLERS, WITH_PIN, N_WITH };

static char *
dup_with_name (guint value)
{
  return g_strdup (value == WITH_ROLLERS ? _("a sheeter") : _("a rolling pin"));
}

static int
get_with (const TrTrial *trial,
          int            dough,
          guint          item)
{
  return tr_is_written (trial->bench->roll_width_max_mm) ? WITH_ROLLERS : WITH_PIN;
}

static void
set_with (TrTrial              *draft,
          int                   dough,
          guint                 item,
          guint                 value,
          const TrDoughFigures *figures)
{
  g_autoptr (TrBench) start = tr_bench_new ();

  draft->bench->roll_width_max_mm = value == WITH_ROLLERS ? start->roll_width_max_mm : NAN;
}

static const TrChoice with_choice = {
  "/bench/roll_width_max_mm/by", N_("Rolled with"), N_("change what it is rolled with"), NULL, N_WITH, dup_with_name, get_with, set_with,
};

/* How the air moves stands for a number; another number is no mistake. */
enum { STILL, FAN, BLAST, AS_TYPED, N_AIRS };

static const double airs_w_m2k[AS_TYPED] = { STILL_AIR_W_M2K, FAN_W_M2K, BLAST_W_M2K };

static char *
dup_air_name (guint value)
{
  static const char *const names[N_AIRS] = { N_("still"), N_("fan"), N_("blast"), N_("as typed") };

  return g_strdup (_(names[value]));
}

static int
get_air (double w_m2k)
{
  for (int i = 0; i < AS_TYPED; i++)
    if (fabs (airs_w_m2k[i] - w_m2k) < 1e-9)
      return i;

  return AS_TYPED;
}

static int
get_fridge_air (const TrTrial *trial,
                int            dough,
                guint          item)
{
  return get_air (trial->bench->h_w_m2k[TR_PLACE_FRIDGE]);
}

static int
get_freezer_air (const TrTrial *trial,
                 int            dough,
                 guint          item)
{
  return get_air (trial->bench->h_w_m2k[TR_PLACE_FREEZER]);
}

static void
set_fridge_air (TrTrial              *draft,
                int                   dough,
                guint                 item,
                guint                 value,
                const TrDoughFigures *figures)
{
  if (value < AS_TYPED)
    draft->bench->h_w_m2k[TR_PLACE_FRIDGE] = airs_w_m2k[value];
}

static void
set_freezer_air (TrTrial              *draft,
                 int                   dough,
                 guint                 item,
                 guint                 value,
                 const TrDoughFigures *figures)
{
  if (value < AS_TYPED)
    draft->bench->h_w_m2k[TR_PLACE_FREEZER] = airs_w_m2k[value];
}

static const TrChoice fridge_air_choice = {
  "/bench/h_w_m2k/fridge/by", N_("Fridge air"), N_("change how the fridge cools"), HEAT_TIP, N_AIRS, dup_air_name, get_fridge_air, set_fridge_air,
};

static const TrChoice freezer_air_choice = {
  "/bench/h_w_m2k/freezer/by", N_("Freezer air"), N_("change how the freezer cools"), HEAT_TIP, N_AIRS, dup_air_name, get_freezer_air,
  set_freezer_air,
};

/* ---- the picture ---- */

/* What the picture shows, held for a new size. */
typedef struct {
  TrBench *bench;
  TrDoughFigures *figures;       /* NULL: no dough */
} Shown;

static void
shown_free (gpointer data)
{
  Shown *shown = data;

  tr_bench_unref (shown->bench);
  g_clear_pointer (&shown->figures, tr_dough_figures_unref);
  g_free (shown);
}

static TrPicture *
make_bench (gpointer        data,
            guint           item,
            const TrReader *reader,
            const TrLook   *look,
            double          width,
            double          height)
{
  Shown *shown = data;

  return tr_bench_picture_new (shown->bench, shown->figures, reader, look, width, height);
}

static void
refresh_picture (TrBenchPage *self)
{
  TrPage *page = TR_PAGE (self);
  TrDocument *document = tr_page_get_document (page);
  const TrDoughFigures *figures = tr_page_get_figures (page);
  Shown *shown = NULL;

  if (document != NULL)
    {
      shown = g_new0 (Shown, 1);
      shown->bench = tr_bench_ref (tr_document_get_trial (document)->bench);
      shown->figures = figures != NULL ? tr_dough_figures_ref ((TrDoughFigures *) figures) : NULL;
    }
  tr_picture_view_set_data (self->picture, shown, shown_free, 0, tr_page_get_reader (page));
}

/* What is drawn leads to where it is typed. */
static void
picture_pressed_cb (TrPictureView *picture,
                    const TrHit   *hit,
                    int            n_press,
                    TrBenchPage   *self)
{
  if (hit->part == TR_PART_OF_WORKTOP)
    tr_page_go_to (TR_PAGE (self), "/bench/worktop_mm/0");
  else if (hit->part == TR_PART_OF_TRAY)
    tr_page_go_to (TR_PAGE (self), "/bench/tray_mm/0");
  else if (hit->part == TR_PART_OF_ROLL)
    tr_page_go_to (TR_PAGE (self), "/bench/roll_thickness_min_mm");
}

/* ---- the page ---- */

static void
tr_bench_page_refresh (TrPage *page)
{
  tr_fields_refresh (TR_BENCH_PAGE (page)->scroller);
  refresh_picture (TR_BENCH_PAGE (page));
  gtk_widget_set_visible (TR_BENCH_PAGE (page)->caution,
                          tr_is_written (tr_document_get_trial (tr_page_get_document (page))->bench->roll_width_max_mm));
}

static gboolean
tr_bench_page_go_to (TrPage     *page,
                     const char *pointer)
{
  return g_str_has_prefix (pointer, "/bench") && tr_fields_go_to (TR_BENCH_PAGE (page)->scroller, pointer);
}

static void
add_field (TrBenchPage *self,
           GtkWidget   *form,
           GtkWidget   *field)
{
  gtk_size_group_add_widget (self->widths, field);
  tr_form_add (form, field);
}

static GtkWidget *
add_form (GtkWidget  *column,
          const char *heading)
{
  GtkWidget *form = tr_form_new (NULL, 0);

  gtk_box_append (GTK_BOX (tr_column_add_section (column, heading)), form);

  return form;
}

static void
add_fields (TrBenchPage    *self,
            GtkWidget      *form,
            const TrMember *members,
            guint           n_members)
{
  for (guint i = 0; i < n_members; i++)
    add_field (self, form, tr_entry_field_new (&members[i], TR_FIELD_BESIDE));
}

#define ADD_FIELDS(self, form, members) add_fields ((self), (form), (members), G_N_ELEMENTS (members))

static void
add_picture (TrBenchPage *self,
             GtkWidget   *column)
{
  GtkWidget *picture = tr_picture_view_new_for (_("Worktop, tray and rollers"), make_bench, 19);

  self->picture = TR_PICTURE_VIEW (picture);
  tr_picture_view_set_zoomable (self->picture, TRUE);
  g_signal_connect_object (picture, "pressed", G_CALLBACK (picture_pressed_cb), self, 0);
  gtk_box_append (GTK_BOX (tr_column_add_section (column, NULL)), picture);
}

static void
add_heat (TrBenchPage *self,
          GtkWidget   *column)
{
  GtkWidget *form = add_form (column, _("Cooling and warming"));

  add_field (self, form, tr_choice_field_new (&fridge_air_choice, TR_FIELD_BESIDE));
  add_field (self, form, tr_entry_field_new (&heat_members[0], TR_FIELD_BESIDE));
  add_field (self, form, tr_choice_field_new (&freezer_air_choice, TR_FIELD_BESIDE));
  add_fields (self, form, heat_members + 1, G_N_ELEMENTS (heat_members) - 1);
}

static void
tr_bench_page_init (TrBenchPage *self)
{
  GtkWidget *column = tr_column_new (&self->scroller);
  GtkWidget *form;

  self->widths = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
  add_picture (self, column);
  ADD_FIELDS (self, add_form (column, _("Worktop")), worktop_members);
  form = add_form (column, _("Rolling"));
  add_field (self, form, tr_choice_field_new (&with_choice, TR_FIELD_BESIDE));
  ADD_FIELDS (self, form, rolling_members);
  self->caution = tr_words_label_new ("dim-label");
  tr_words_label_set (self->caution, tr_words_rollers_caution ());
  gtk_box_append (GTK_BOX (gtk_widget_get_parent (form)), self->caution);
  ADD_FIELDS (self, add_form (column, _("Trays and oven")), oven_members);
  ADD_FIELDS (self, add_form (column, _("Temperatures")), air_members);
  add_heat (self, column);
  ADD_FIELDS (self, add_form (column, _("Work")), work_members);
  form = add_form (column, _("Scale and prices"));
  ADD_FIELDS (self, form, scale_members);
  tr_entry_field_set_width_chars (TR_ENTRY_FIELD (gtk_widget_get_last_child (form)), 7, 7);
  tr_page_set_child (TR_PAGE (self), self->scroller);
}

static void
tr_bench_page_dispose (GObject *object)
{
  TrBenchPage *self = TR_BENCH_PAGE (object);

  g_clear_object (&self->widths);

  G_OBJECT_CLASS (tr_bench_page_parent_class)->dispose (object);
}

/* Whoever comes here wants to type: the picture is one step back. */
static gboolean
tr_bench_page_focus (GtkWidget        *widget,
                     GtkDirectionType  direction)
{
  if (direction == GTK_DIR_TAB_FORWARD && gtk_widget_get_focus_child (widget) == NULL &&
      tr_page_go_to (TR_PAGE (widget), "/bench/worktop_mm/0"))
    return TRUE;

  return GTK_WIDGET_CLASS (tr_bench_page_parent_class)->focus (widget, direction);
}

static void
tr_bench_page_class_init (TrBenchPageClass *klass)
{
  TrPageClass *page_class = TR_PAGE_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tr_bench_page_dispose;
  GTK_WIDGET_CLASS (klass)->focus = tr_bench_page_focus;
  page_class->refresh = tr_bench_page_refresh;
  page_class->go_to = tr_bench_page_go_to;
}

GtkWidget *
tr_bench_page_new (void)
{
  return g_object_new (TR_TYPE_BENCH_PAGE, NULL);
}
