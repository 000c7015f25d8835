/* lock-in-editor.c: how the fat goes in
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "lock-in-editor.h"

#include <glib/gi18n-lib.h>

#include "../calc/rests.h"
#include "picture-view.h"
#include "rest-view.h"
#include "section.h"
#include "turn-editor.h"

struct _TrLockInEditor
{
  GtkBox parent_instance;

  /* Children */
  GtkWidget *how;
  GtkWidget *picture, *section;
  GtkWidget *rest;
};

G_DEFINE_FINAL_TYPE (TrLockInEditor, tr_lock_in_editor, GTK_TYPE_BOX)

static gpointer
reach_lock_in (const TrTrial *trial,
               int            dough,
               guint          item,
               gboolean       make)
{
  return tr_trial_get_dough (trial, (guint) dough)->lock_in;
}

/* The fat of an envelope is a square: its width means nothing. */
static gpointer
reach_fat_width (const TrTrial *trial,
                 int            dough,
                 guint          item,
                 gboolean       make)
{
  TrLockIn *lock_in = reach_lock_in (trial, dough, item, make);

  return lock_in != NULL && lock_in->style != TR_STYLE_ENVELOPE ? lock_in : NULL;
}

static gpointer
reach_chill (const TrTrial *trial,
             int            dough,
             guint          item,
             gboolean       make)
{
  TrLockIn *lock_in = reach_lock_in (trial, dough, item, make);

  return lock_in != NULL ? lock_in->rest : NULL;
}

static const TrMember lock_in_members[] = {
  { "/lock_in/fat_thickness_mm", reach_lock_in, G_STRUCT_OFFSET (TrLockIn, fat_thickness_mm), TR_HOLD_NUMBER, TR_QUANTITY_LENGTH_MM,
    N_("Fat thickness"), N_("change the fat thickness"), N_("Of the fat sheet before lock-in. Empty: 6 mm, for letter and inverse 4 mm."), 0.5,
    .may_be_empty = TRUE, .empty = N_("style") },
  { "/lock_in/fat_width_mm", reach_fat_width, G_STRUCT_OFFSET (TrLockIn, fat_width_mm), TR_HOLD_NUMBER, TR_QUANTITY_LENGTH_MM,
    N_("Fat width"), N_("change the fat width"), N_("Across the rolling direction. Empty: so that the closed block is about square."), 5,
    .may_be_empty = TRUE, .empty = N_("square") },
  { "/lock_in/rim_mm", reach_lock_in, G_STRUCT_OFFSET (TrLockIn, rim_mm), TR_HOLD_NUMBER, TR_QUANTITY_LENGTH_MM,
    N_("Rim"), N_("change the rim"), N_("Dough left free around the fat to seal the edges"), 1 },
  { "/lock_in/blocks", reach_lock_in, G_STRUCT_OFFSET (TrLockIn, blocks), TR_HOLD_COUNT, TR_QUANTITY_WHOLE,
    N_("Blocks"), N_("change the number of blocks"), N_("Into how many blocks dough and fat are divided before lock-in") },
};

static double
get_chill_start_c (const TrTrial *trial,
                   int            dough,
                   guint          item)
{
  return tr_rest_get_usual_start_c (tr_trial_get_dough (trial, (guint) dough), 0);
}

static double
get_chill_target_c (const TrTrial *trial,
                    int            dough,
                    guint          item)
{
  const TrRest *rest = reach_chill (trial, dough, item, FALSE);

  return rest != NULL ? tr_rest_get_usual_target_c (rest, trial->bench) : NAN;
}

static const TrMember chill_members[] = {
  { "/lock_in/rest/min", reach_chill, G_STRUCT_OFFSET (TrRest, min_minutes), TR_HOLD_NUMBER, TR_QUANTITY_MINUTES,
    N_("At least"), N_("change the chill before lock-in"), N_("Shortest chill of the dough before lock-in"), 5, .settle = tr_settle_rest_min },
  { "/lock_in/rest/max", reach_chill, G_STRUCT_OFFSET (TrRest, max_minutes), TR_HOLD_NUMBER, TR_QUANTITY_MINUTES,
    N_("At most"), N_("change the chill before lock-in"), N_("Longest it may wait"), 30 },
  { "/lock_in/rest/thickness_mm", reach_chill, G_STRUCT_OFFSET (TrRest, thickness_mm), TR_HOLD_NUMBER, TR_QUANTITY_LENGTH_MM,
    N_("Pressed to"), N_("change the chill before lock-in"), N_("How flat the dough lies while it chills; thinner chills faster"), 5,
    .may_be_empty = TRUE, .otherwise = TR_CHILL_THICKNESS_MM },
  { "/lock_in/rest/start_c", reach_chill, G_STRUCT_OFFSET (TrRest, start_c), TR_HOLD_NUMBER, TR_QUANTITY_TEMPERATURE_C,
    N_("Goes in at"), N_("change the chill before lock-in"), N_("How warm the dough is when it goes in. Empty: as it comes from the mixer."),
    .may_be_empty = TRUE, .get_otherwise = get_chill_start_c },
  { "/lock_in/rest/target_c", reach_chill, G_STRUCT_OFFSET (TrRest, target_c), TR_HOLD_NUMBER, TR_QUANTITY_TEMPERATURE_C,
    N_("Core wanted at"), N_("change the chill before lock-in"), N_("Written, a chill that misses it by more than 2 °C is found. Empty: 4 °C over the air, not under 8 °C."),
    .may_be_empty = TRUE, .get_otherwise = get_chill_target_c },
};

enum { STYLE_NONE = TR_N_STYLES, N_STYLE_CHOICES };

static char *
dup_style_name (guint value)
{
  return g_strdup (value < TR_N_STYLES ? tr_words_style ((TrStyle) value) : _("no lock-in"));
}

static int
get_style (const TrTrial *trial,
           int            dough,
           guint          item)
{
  const TrLockIn *lock_in = tr_trial_get_dough (trial, (guint) dough)->lock_in;

  return lock_in != NULL ? (int) lock_in->style : STYLE_NONE;
}

static void
set_style (TrTrial              *draft,
           int                   dough,
           guint                 item,
           guint                 value,
           const TrDoughFigures *figures)
{
  TrDough *own = tr_trial_get_dough (draft, (guint) dough);

  if (value == STYLE_NONE)
    {
      g_clear_pointer (&own->lock_in, tr_lock_in_free);
      return;
    }
  if (own->lock_in == NULL)
    own->lock_in = tr_lock_in_new ();
  own->lock_in->style = (TrStyle) value;
}

static int
get_chill_place (const TrTrial *trial,
                 int            dough,
                 guint          item)
{
  const TrLockIn *lock_in = tr_trial_get_dough (trial, (guint) dough)->lock_in;

  return lock_in != NULL ? tr_get_rest_choice (lock_in->rest) : -1;
}

static void
set_chill_place (TrTrial              *draft,
                 int                   dough,
                 guint                 item,
                 guint                 value,
                 const TrDoughFigures *figures)
{
  tr_set_rest_choice (&tr_trial_get_dough (draft, (guint) dough)->lock_in->rest, value);
}

static int
get_chill_on (const TrTrial *trial,
              int            dough,
              guint          item)
{
  const TrRest *rest = reach_chill (trial, dough, item, FALSE);

  return rest != NULL ? (int) rest->on : -1;
}

static void
set_chill_on (TrTrial              *draft,
              int                   dough,
              guint                 item,
              guint                 value,
              const TrDoughFigures *figures)
{
  tr_trial_get_dough (draft, (guint) dough)->lock_in->rest->on = (TrOn) value;
}

static const TrChoice style_choice = {
  "/lock_in/style", N_("Lock-in"), N_("change the lock-in"), N_("How the fat is enclosed"),
  N_STYLE_CHOICES, dup_style_name, get_style, set_style,
};

static const TrChoice chill_choice = {
  "/lock_in/rest/place", N_("Chill before, in"), N_("change the chill before lock-in"), NULL,
  TR_N_REST_CHOICES, tr_dup_place_name, get_chill_place, set_chill_place,
};

static const TrChoice chill_on_choice = {
  "/lock_in/rest/on", N_("Lying on"), N_("change the chill before lock-in"),
  N_("On a board one face cools, on a rack both"), TR_N_ONS, tr_dup_on_name, get_chill_on, set_chill_on,
};

static TrPicture *
make_section_picture (const TrDoughFigures *figures,
                      guint                 item,
                      const TrReader       *reader,
                      const TrLook         *look,
                      double                width,
                      double                height)
{
  return tr_lock_in_section_picture_new (figures, reader, look, width, height);
}

static void
tr_lock_in_editor_init (TrLockInEditor *self)
{
  GtkWidget *fat = tr_fields_row_new (), *chill = tr_fields_row_new ();

  tr_form_add (fat, tr_choice_field_new (&style_choice, TR_FIELD_ABOVE));
  for (guint i = 0; i < G_N_ELEMENTS (lock_in_members); i++)
    tr_form_add (fat, tr_entry_field_new (&lock_in_members[i], TR_FIELD_ABOVE));
  tr_form_add (chill, tr_choice_field_new (&chill_choice, TR_FIELD_ABOVE));
  tr_form_add (chill, tr_choice_field_new (&chill_on_choice, TR_FIELD_ABOVE));
  for (guint i = 0; i < G_N_ELEMENTS (chill_members); i++)
    tr_form_add (chill, tr_entry_field_new (&chill_members[i], TR_FIELD_ABOVE));

  self->how = tr_words_label_new ("dim-label");
  self->picture = tr_picture_view_new (_("Lock-in"), tr_make_lock_in_picture, 14);
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 12);
  gtk_box_append (GTK_BOX (self), fat);
  gtk_box_append (GTK_BOX (self), self->how);
  self->section = tr_picture_view_new (_("Lock-in, cut through"), make_section_picture, 15);
  gtk_box_append (GTK_BOX (self), self->picture);
  gtk_box_append (GTK_BOX (self), self->section);
  gtk_box_append (GTK_BOX (self), chill);
  self->rest = tr_rest_view_new ();
  gtk_box_append (GTK_BOX (self), self->rest);
}

static void
tr_lock_in_editor_class_init (TrLockInEditorClass *klass)
{
}

GtkWidget *
tr_lock_in_editor_new (void)
{
  return g_object_new (TR_TYPE_LOCK_IN_EDITOR, NULL);
}

void
tr_lock_in_editor_refresh (TrLockInEditor *self)
{
  g_return_if_fail (TR_IS_LOCK_IN_EDITOR (self));

  TrPage *page = (TrPage *) gtk_widget_get_ancestor (GTK_WIDGET (self), TR_TYPE_PAGE);
  const TrDoughFigures *figures = page != NULL ? tr_page_get_figures (page) : NULL;

  if (figures == NULL)
    return;

  const TrLockIn *lock_in = figures->dough->lock_in;

  tr_fields_refresh (GTK_WIDGET (self));
  tr_rest_view_show (TR_REST_VIEW (self->rest), figures, 0, tr_page_get_reader (page));
  tr_words_label_set (self->how, lock_in != NULL ? tr_words_style_how (lock_in->style) :
                                 _("Nothing is laminated. Choose how the fat is enclosed to plan the turns."));
  tr_picture_view_set_figures (TR_PICTURE_VIEW (self->picture), figures->has_lamination ? figures : NULL, 0, tr_page_get_reader (page));
  tr_picture_view_set_figures (TR_PICTURE_VIEW (self->section), figures->has_lamination ? figures : NULL, 0, tr_page_get_reader (page));
}
