/* turns-page.c: how the fat goes in, the turns, and the layers they make
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The layer picture stays in sight below while the turns above it scroll.
 */

#include "config.h"

#include "page.h"

#include <glib/gi18n-lib.h>

#include "layers-view.h"
#include "picture-view.h"
#include "section.h"
#include "turn-row.h"

#define TR_TYPE_TURNS_PAGE (tr_turns_page_get_type ())
G_DECLARE_FINAL_TYPE (TrTurnsPage, tr_turns_page, TR, TURNS_PAGE, TrPage)

struct _TrTurnsPage
{
  TrPage parent_instance;

  /* Children */
  GtkWidget *content;
  GtkWidget *scroller;
  GtkWidget *how;
  GtkWidget *lock_in_picture;
  GtkWidget *list;
  GtkWidget *no_turns;
  GtkWidget *add;
  GtkWidget *to_sheet;
  GtkWidget *layers_area;
  GtkWidget *layers;

  /* Borrowed from the list, in order */
  GPtrArray *rows;
};

G_DEFINE_FINAL_TYPE (TrTurnsPage, tr_turns_page, TR_TYPE_PAGE)

/* Lock-in */

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

static void
settle_chill_min (TrTrial  *draft,
                  int       dough,
                  guint     item,
                  gpointer  holder)
{
  TrRest *rest = holder;

  rest->max_minutes = MAX (rest->max_minutes, rest->min_minutes);
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

static const TrMember chill_members[] = {
  { "/lock_in/rest/min", reach_chill, G_STRUCT_OFFSET (TrRest, min_minutes), TR_HOLD_NUMBER, TR_QUANTITY_MINUTES,
    N_("At least"), N_("change the chill before lock-in"), N_("Shortest chill of the dough before lock-in"), 5, .settle = settle_chill_min },
  { "/lock_in/rest/max", reach_chill, G_STRUCT_OFFSET (TrRest, max_minutes), TR_HOLD_NUMBER, TR_QUANTITY_MINUTES,
    N_("At most"), N_("change the chill before lock-in"), N_("Longest it may wait"), 30 },
  { "/lock_in/rest/thickness_mm", reach_chill, G_STRUCT_OFFSET (TrRest, thickness_mm), TR_HOLD_NUMBER, TR_QUANTITY_LENGTH_MM,
    N_("Pressed to"), N_("change the chill before lock-in"), N_("How flat the dough lies while it chills; thinner chills faster"), 5,
    .may_be_empty = TRUE, .otherwise = TR_CHILL_THICKNESS_MM },
};

enum { STYLE_NONE = TR_N_STYLES, N_STYLE_CHOICES };

static char *
dup_style_name (guint value)
{
  return g_strdup (value < TR_N_STYLES ? tr_words_style ((TrStyle) value) : _("no roll-in"));
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

enum { CHILL_NONE = TR_N_PLACES, N_CHILL_CHOICES };

static int
get_chill_place (const TrTrial *trial,
                 int            dough,
                 guint          item)
{
  const TrLockIn *lock_in = tr_trial_get_dough (trial, (guint) dough)->lock_in;

  if (lock_in == NULL)
    return -1;

  return lock_in->rest != NULL ? (int) lock_in->rest->place : CHILL_NONE;
}

static void
set_chill_place (TrTrial              *draft,
                 int                   dough,
                 guint                 item,
                 guint                 value,
                 const TrDoughFigures *figures)
{
  TrLockIn *lock_in = tr_trial_get_dough (draft, (guint) dough)->lock_in;

  if (value == CHILL_NONE)
    {
      g_clear_pointer (&lock_in->rest, tr_rest_free);
      return;
    }
  if (lock_in->rest == NULL)
    lock_in->rest = tr_rest_new ();
  lock_in->rest->place = (TrPlace) value;
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
  N_CHILL_CHOICES, tr_dup_place_name, get_chill_place, set_chill_place,
};

static const TrChoice chill_on_choice = {
  "/lock_in/rest/on", N_("Lying on"), N_("change the chill before lock-in"),
  N_("On a board one face cools, on a rack both"), TR_N_ONS, tr_dup_on_name, get_chill_on, set_chill_on,
};

static void
refresh_lock_in (TrTurnsPage          *self,
                 const TrDoughFigures *figures,
                 const TrReader       *reader)
{
  const TrLockIn *lock_in = figures->dough->lock_in;

  tr_words_label_set (self->how, lock_in != NULL ? tr_words_style_how (lock_in->style) :
                                 _("Nothing is laminated. Choose how the fat is enclosed to plan the turns."));
  tr_picture_view_set_figures (TR_PICTURE_VIEW (self->lock_in_picture), figures->has_lamination ? figures : NULL, 0, reader);
}

/* Turns */

static void
match_rows (TrTurnsPage   *self,
            const TrDough *dough)
{
  while (self->rows->len > dough->turns->len)
    gtk_list_box_remove (GTK_LIST_BOX (self->list), g_ptr_array_steal_index (self->rows, self->rows->len - 1));
  while (self->rows->len < dough->turns->len)
    {
      GtkWidget *row = tr_turn_row_new ();

      gtk_list_box_append (GTK_LIST_BOX (self->list), row);
      g_ptr_array_add (self->rows, row);
    }
  for (guint i = 0; i < self->rows->len; i++)
    {
      tr_turn_row_set_item (g_ptr_array_index (self->rows, i), i);
      tr_turn_row_refresh (g_ptr_array_index (self->rows, i));
    }
}

static char *
dup_to_sheet (const TrDoughFigures *figures,
              const TrReader       *reader)
{
  const TrToSheet *to_sheet = &figures->lamination.to_sheet;

  if (!figures->has_lamination || !figures->lamination.has_to_sheet || !figures->has_sheet)
    return NULL;

  g_autofree char *start = tr_words_size_bare (reader, &to_sheet->start_mm);
  g_autofree char *sheet = tr_words_size (reader, &figures->sheet.rolled_mm);
  g_autofree char *longer = tr_words_number (reader, to_sheet->stretch_length, 1);
  g_autofree char *wider = tr_words_number (reader, to_sheet->stretch_width, 1);

  if (g_strcmp0 (to_sheet->order, "length-first") == 0)
    return g_strdup_printf (_("To the sheet: %s → %s; first %s times longer, then %s times wider"), start, sheet, longer, wider);

  return g_strdup_printf (_("To the sheet: %s → %s; first %s times wider, then %s times longer"), start, sheet, wider, longer);
}

static void
add_turn_cb (GtkButton   *button,
             TrTurnsPage *self)
{
  TrPage *page = TR_PAGE (self);
  const TrDough *shown = tr_page_get_dough (page);

  if (shown == NULL || shown->turns->len >= TR_MAX_TURNS)
    return;

  TrTrial *draft = tr_document_draft (tr_page_get_document (page));
  TrDough *dough = tr_trial_own_dough (draft, (guint) tr_page_get_dough_index (page));
  guint index = dough->turns->len;
  const TrTurn *last = index > 0 ? tr_dough_get_turn (dough, index - 1) : NULL;
  TrTurn *turn = tr_turn_new (3, last != NULL && tr_is_written (last->thickness_mm) ? last->thickness_mm : 8);
  g_autofree char *where = g_strdup_printf ("/turns/%u", index);

  turn->rest = last != NULL ? tr_rest_copy (last->rest) : tr_rest_new ();
  g_ptr_array_add (dough->turns, turn);
  if (tr_page_commit (page, draft, _("add a turn"), NULL, where))
    tr_page_go_to (page, where);
}

/* The page */

static void
tr_turns_page_refresh (TrPage *page)
{
  TrTurnsPage *self = TR_TURNS_PAGE (page);
  const TrDoughFigures *figures = tr_page_get_figures (page);
  const TrReader *reader = tr_page_get_reader (page);

  gtk_widget_set_visible (self->content, figures != NULL);
  if (figures == NULL)
    return;

  match_rows (self, figures->dough);
  tr_fields_refresh (self->scroller);
  refresh_lock_in (self, figures, reader);
  gtk_widget_set_visible (self->no_turns, figures->dough->turns->len == 0);
  gtk_widget_set_visible (self->list, figures->dough->turns->len > 0);
  gtk_widget_set_sensitive (self->add, figures->dough->turns->len < TR_MAX_TURNS);
  tr_words_label_take (self->to_sheet, dup_to_sheet (figures, reader));
  gtk_widget_set_visible (self->layers_area, figures->has_lamination);
  tr_layers_view_set_figures (TR_LAYERS_VIEW (self->layers), figures->has_lamination ? figures : NULL, reader);
}

static gboolean
tr_turns_page_go_to (TrPage     *page,
                     const char *pointer)
{
  TrTurnsPage *self = TR_TURNS_PAGE (page);

  if (!g_str_has_prefix (pointer, "/turns") && !g_str_has_prefix (pointer, "/lock_in"))
    return FALSE;
  if (tr_fields_go_to (self->scroller, pointer))
    return TRUE;
  /* "/turns" of a dough without any. */
  if (g_str_equal (pointer, "/turns"))
    return gtk_widget_grab_focus (self->add);
  /* What a finding names may not be written: the length of a turn that is
   * given by its thickness, a lock-in that is missing. */
  g_autofree char *parent = g_path_get_dirname (pointer);

  return parent[1] != '\0' ? tr_fields_go_to (self->scroller, parent) : tr_fields_go_to (self->scroller, "/lock_in/style");
}

static void
build_lock_in (TrTurnsPage *self,
               GtkWidget   *column)
{
  GtkWidget *section = tr_column_add_section (column, NULL);
  GtkWidget *strip = tr_fields_row_new (), *chill = tr_fields_row_new ();

  tr_form_add (strip, tr_choice_field_new (&style_choice, TR_FIELD_ABOVE));
  for (guint i = 0; i < G_N_ELEMENTS (lock_in_members); i++)
    tr_form_add (strip, tr_entry_field_new (&lock_in_members[i], TR_FIELD_ABOVE));
  tr_form_add (chill, tr_choice_field_new (&chill_choice, TR_FIELD_ABOVE));
  for (guint i = 0; i < G_N_ELEMENTS (chill_members); i++)
    tr_form_add (chill, tr_entry_field_new (&chill_members[i], TR_FIELD_ABOVE));
  tr_form_add (chill, tr_choice_field_new (&chill_on_choice, TR_FIELD_ABOVE));

  self->how = tr_words_label_new ("dim-label");
  self->lock_in_picture = tr_picture_view_new (_("Lock-in"), tr_make_lock_in_picture, 14);
  gtk_box_append (GTK_BOX (section), strip);
  gtk_box_append (GTK_BOX (section), self->how);
  gtk_box_append (GTK_BOX (section), chill);
  gtk_box_append (GTK_BOX (section), self->lock_in_picture);
}

static void
build_turns (TrTurnsPage *self,
             GtkWidget   *column)
{
  GtkWidget *section = tr_column_add_section (column, NULL);

  self->list = gtk_list_box_new ();
  gtk_widget_add_css_class (self->list, "plain");
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (self->list), GTK_SELECTION_NONE);
  gtk_list_box_set_show_separators (GTK_LIST_BOX (self->list), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Turns"), -1);
  self->no_turns = tr_words_label_new ("dim-label");
  tr_words_label_set (self->no_turns, _("No turns yet. Each turn is one roll-out and one fold."));
  self->add = gtk_button_new_with_label (_("Add a turn"));
  gtk_widget_set_halign (self->add, GTK_ALIGN_START);
  g_signal_connect_object (self->add, "clicked", G_CALLBACK (add_turn_cb), self, 0);
  self->to_sheet = tr_words_label_new (NULL);

  gtk_box_append (GTK_BOX (section), self->list);
  gtk_box_append (GTK_BOX (section), self->no_turns);
  gtk_box_append (GTK_BOX (section), self->add);
  gtk_box_append (GTK_BOX (section), self->to_sheet);
}

static void
tr_turns_page_init (TrTurnsPage *self)
{
  GtkWidget *column = tr_column_new (&self->scroller);

  self->rows = g_ptr_array_new ();
  build_lock_in (self, column);
  build_turns (self, column);

  self->layers = tr_layers_view_new ();
  gtk_widget_set_margin_start (self->layers, 18);
  gtk_widget_set_margin_end (self->layers, 18);
  gtk_widget_set_margin_top (self->layers, 12);
  gtk_widget_set_margin_bottom (self->layers, 12);
  self->layers_area = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_box_append (GTK_BOX (self->layers_area), gtk_separator_new (GTK_ORIENTATION_HORIZONTAL));
  gtk_box_append (GTK_BOX (self->layers_area), self->layers);

  self->content = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_box_append (GTK_BOX (self->content), self->scroller);
  gtk_box_append (GTK_BOX (self->content), self->layers_area);
  tr_page_set_child (TR_PAGE (self), self->content);
}

static void
tr_turns_page_dispose (GObject *object)
{
  TrTurnsPage *self = TR_TURNS_PAGE (object);

  g_clear_pointer (&self->rows, g_ptr_array_unref);

  G_OBJECT_CLASS (tr_turns_page_parent_class)->dispose (object);
}

static void
tr_turns_page_class_init (TrTurnsPageClass *klass)
{
  TrPageClass *page_class = TR_PAGE_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tr_turns_page_dispose;
  page_class->refresh = tr_turns_page_refresh;
  page_class->go_to = tr_turns_page_go_to;
}

GtkWidget *
tr_turns_page_new (void)
{
  return g_object_new (TR_TYPE_TURNS_PAGE, NULL);
}
