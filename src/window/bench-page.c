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

#include "section.h"

#define TR_TYPE_BENCH_PAGE (tr_bench_page_get_type ())
G_DECLARE_FINAL_TYPE (TrBenchPage, tr_bench_page, TR, BENCH_PAGE, TrPage)

struct _TrBenchPage
{
  TrPage parent_instance;

  GtkWidget *scroller;
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
};

static const TrMember air_members[] = {
  { "/bench/room_c", BENCH (room_c, NUMBER, TEMPERATURE_C), N_("Room"), N_("change the room temperature") },
  { "/bench/fridge_c", BENCH (fridge_c, NUMBER, TEMPERATURE_C), N_("Fridge"), N_("change the fridge temperature"),
    N_("Of the air, measured, not the dial") },
  { "/bench/freezer_c", BENCH (freezer_c, NUMBER, TEMPERATURE_C), N_("Freezer"), N_("change the freezer temperature") },
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

static void
tr_bench_page_refresh (TrPage *page)
{
  tr_fields_refresh (TR_BENCH_PAGE (page)->scroller);
}

static gboolean
tr_bench_page_go_to (TrPage     *page,
                     const char *pointer)
{
  return g_str_has_prefix (pointer, "/bench") && tr_fields_go_to (TR_BENCH_PAGE (page)->scroller, pointer);
}

static GtkWidget *
add_form (GtkWidget      *column,
          const char     *heading,
          const TrMember *members,
          guint           n_members)
{
  GtkWidget *form = tr_form_new (members, n_members);

  gtk_box_append (GTK_BOX (tr_column_add_section (column, heading)), form);

  return form;
}

#define ADD_FORM(column, heading, members) add_form ((column), (heading), (members), G_N_ELEMENTS (members))

static void
tr_bench_page_init (TrBenchPage *self)
{
  GtkWidget *column = tr_column_new (&self->scroller);
  GtkWidget *form;

  ADD_FORM (column, _("Worktop"), worktop_members);
  form = add_form (column, _("Rolling"), NULL, 0);
  tr_form_add (form, tr_choice_field_new (&with_choice, TR_FIELD_BESIDE));
  for (guint i = 0; i < G_N_ELEMENTS (rolling_members); i++)
    tr_form_add (form, tr_entry_field_new (&rolling_members[i], TR_FIELD_BESIDE));
  ADD_FORM (column, _("Temperatures"), air_members);
  ADD_FORM (column, _("Trays and oven"), oven_members);
  ADD_FORM (column, _("Work"), work_members);
  form = ADD_FORM (column, _("Scale and prices"), scale_members);
  tr_entry_field_set_width_chars (TR_ENTRY_FIELD (gtk_widget_get_last_child (form)), 7, 7);
  tr_page_set_child (TR_PAGE (self), self->scroller);
}

static void
tr_bench_page_class_init (TrBenchPageClass *klass)
{
  TrPageClass *page_class = TR_PAGE_CLASS (klass);

  page_class->refresh = tr_bench_page_refresh;
  page_class->go_to = tr_bench_page_go_to;
}

GtkWidget *
tr_bench_page_new (void)
{
  return g_object_new (TR_TYPE_BENCH_PAGE, NULL);
}
