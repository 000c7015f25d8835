/* sheet-page.c: the pieces, and the sheet they are cut from
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Which sizes a piece has depends on its shape; only those are shown, and an
 * edge of a piece on the drawing is dragged to do what its field does. The
 * alternatives are drawings to choose the number of rows from.
 */

#include "config.h"

#include "page.h"

#include <glib/gi18n-lib.h>

#include "alternatives.h"
#include "section.h"
#include "picture-view.h"
#include "sheet-view.h"
#include "sheet-words.h"

#define TR_TYPE_SHEET_PAGE (tr_sheet_page_get_type ())
G_DECLARE_FINAL_TYPE (TrSheetPage, tr_sheet_page, TR, SHEET_PAGE, TrPage)

struct _TrSheetPage
{
  TrPage parent_instance;

  /* Children */
  GtkWidget *scroller;
  GtkWidget *sheets, *piece;
  GtkWidget *rolled;
  GtkWidget *pieces;
  GtkWidget *trays;
  GtkWidget *wound;
  GtkWidget *printed;
  GtkWidget *none;
  GtkWidget *alternatives_area;
  GtkWidget *alternatives;
};

G_DEFINE_FINAL_TYPE (TrSheetPage, tr_sheet_page, TR_TYPE_PAGE)

/* Where the values stand */

static TrCut *
get_cut (const TrTrial *trial,
         int            dough)
{
  return tr_trial_get_dough (trial, (guint) dough)->cut;
}

static gpointer
reach_cut (const TrTrial *trial,
           int            dough,
           guint          item,
           gboolean       make)
{
  return get_cut (trial, dough);
}

#define DEFINE_REACH(name, condition)                   \
  static gpointer                                       \
  reach_##name (const TrTrial *trial,                   \
                int            dough,                   \
                guint          item,                    \
                gboolean       make)                    \
  {                                                     \
    TrCut *cut = get_cut (trial, dough);                \
                                                        \
    return cut != NULL && (condition) ? cut : NULL;     \
  }

DEFINE_REACH (triangle, cut->shape == TR_SHAPE_TRIANGLE || cut->shape == TR_SHAPE_RIGHT_TRIANGLE)
DEFINE_REACH (rectangle, cut->shape == TR_SHAPE_RECTANGLE)
DEFINE_REACH (square, cut->shape == TR_SHAPE_SQUARE)
DEFINE_REACH (round, cut->shape == TR_SHAPE_ROUND)
DEFINE_REACH (slices, cut->shape == TR_SHAPE_SLICES)
DEFINE_REACH (by_thickness, tr_is_written (cut->thickness_mm))
DEFINE_REACH (by_mass, tr_is_written (cut->piece_mass_g))
DEFINE_REACH (rolled_up, tr_cut_is_rolled_up (cut))
DEFINE_REACH (printed, tr_is_written (cut->printed_sheet_mm[0]))

#define MM(name, member) reach_##name, G_STRUCT_OFFSET (TrCut, member), TR_HOLD_NUMBER, TR_QUANTITY_LENGTH_MM
#define PERCENT(name, member) reach_##name, G_STRUCT_OFFSET (TrCut, member), TR_HOLD_NUMBER, TR_QUANTITY_PERCENT

static const TrMember size_members[] = {
  { "/cut/base_mm", MM (triangle, base_mm), N_("Base"), N_("change the base"), N_("The short side, along the row"), 5 },
  { "/cut/height_mm", MM (triangle, height_mm), N_("Height"), N_("change the height"), N_("From the base to the tip, across the row"), 5 },
  { "/cut/width_mm", MM (rectangle, width_mm), N_("Width"), N_("change the width of a piece"), N_("Along the row"), 5 },
  { "/cut/length_mm", MM (rectangle, length_mm), N_("Length"), N_("change the length of a piece"), N_("Across the row"), 5 },
  { "/cut/side_mm", MM (square, side_mm), N_("Side"), N_("change the side of a piece"), NULL, 5 },
  { "/cut/diameter_mm", MM (round, diameter_mm), N_("Diameter"), N_("change the diameter"), NULL, 5 },
  { "/cut/gap_mm", MM (round, gap_mm), N_("Gap between rounds"), N_("change the gap between rounds"), NULL, 1 },
  { "/cut/slice_mm", MM (slices, slice_mm), N_("Slice"), N_("change the slice"), N_("How thick a slice is cut from the log"), 5 },
  { "/cut/roll_length_mm", MM (slices, roll_length_mm), N_("Sheet rolled into the log"), N_("change the sheet of a log"),
    N_("Length of the sheet that is rolled up into one log"), 10 },
};

static const TrMember thickness_members[] = {
  { "/cut/thickness_mm", MM (by_thickness, thickness_mm), N_("Thickness"), N_("change the thickness of the sheet"),
    N_("After it has relaxed"), 0.5 },
  { "/cut/piece_mass_g", reach_by_mass, G_STRUCT_OFFSET (TrCut, piece_mass_g), TR_HOLD_NUMBER, TR_QUANTITY_MASS_G,
    N_("Piece"), N_("change the weight of a piece"), N_("Raw weight of a piece; the thickness follows"), 1 },
};

static const TrMember sheet_members[] = {
  { "/cut/trim_mm", MM (cut, trim_mm), N_("Trim"), N_("change the trim"), N_("Cut off along all four edges of the sheet"), 1 },
  { "/cut/shrink_percent", PERCENT (cut, shrink_percent), N_("Shrinks by"), N_("change the shrinking"),
    N_("How much the sheet draws back along the row when it relaxes; it is rolled that much longer"), 1 },
  { "/cut/rows", reach_cut, G_STRUCT_OFFSET (TrCut, rows), TR_HOLD_COUNT, TR_QUANTITY_WHOLE,
    N_("Rows"), N_("change the rows"), N_("Rows of pieces across the sheet. Empty: the best that fits."), 1,
    .may_be_empty = TRUE, .empty = N_("best") },
  { "/cut/stretch_percent", PERCENT (rolled_up, stretch_percent), N_("Stretched before rolling up"), N_("change the stretching"),
    N_("How much longer a piece is pulled before it is rolled up"), 5 },
  { "/cut/printed_sheet_mm/0", MM (printed, printed_sheet_mm[0]), N_("Length as printed"), N_("change the printed sheet"),
    N_("Size of the sheet in the formula this came from"), 10 },
  { "/cut/printed_sheet_mm/1", MM (printed, printed_sheet_mm[1]), N_("Width as printed"), N_("change the printed sheet"), NULL, 10 },
};

/* Choices */

enum { SHAPE_NONE = TR_N_SHAPES, N_SHAPE_CHOICES };

static char *
dup_shape_name (guint value)
{
  return g_strdup (value < TR_N_SHAPES ? tr_words_shape ((TrShape) value) : _("nothing is cut"));
}

static int
get_shape (const TrTrial *trial,
           int            dough,
           guint          item)
{
  const TrCut *cut = get_cut (trial, dough);

  return cut != NULL ? (int) cut->shape : SHAPE_NONE;
}

static void
fill (double *where,
      double  start)
{
  if (!tr_is_written (*where))
    *where = start;
}

/* Sizes to start from, where a shape has none yet: common practice. Those of
 * the other shapes are not written any more. */
static void
start_shape (TrCut *cut)
{
  gboolean is_triangle = cut->shape == TR_SHAPE_TRIANGLE || cut->shape == TR_SHAPE_RIGHT_TRIANGLE;
  double *const sizes[] = { &cut->base_mm, &cut->height_mm, &cut->width_mm, &cut->length_mm, &cut->side_mm,
                            &cut->diameter_mm, &cut->gap_mm, &cut->slice_mm, &cut->roll_length_mm };
  const gboolean is_used[] = { is_triangle, is_triangle, cut->shape == TR_SHAPE_RECTANGLE, cut->shape == TR_SHAPE_RECTANGLE,
                               cut->shape == TR_SHAPE_SQUARE, cut->shape == TR_SHAPE_ROUND, cut->shape == TR_SHAPE_ROUND,
                               cut->shape == TR_SHAPE_SLICES, cut->shape == TR_SHAPE_SLICES };
  const double starts[] = { 90, 260, 80, 150, 100, 90, 5, 30, 400 };

  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    if (is_used[i])
      fill (sizes[i], starts[i]);
    else
      *sizes[i] = NAN;
}

static void
set_shape (TrTrial              *draft,
           int                   dough,
           guint                 item,
           guint                 value,
           const TrDoughFigures *figures)
{
  TrDough *own = tr_trial_get_dough (draft, (guint) dough);

  if (value == SHAPE_NONE)
    {
      g_clear_pointer (&own->cut, tr_cut_free);
      return;
    }
  if (own->cut == NULL)
    own->cut = tr_cut_new ();
  own->cut->shape = (TrShape) value;
  start_shape (own->cut);
}

enum { GIVEN_BY_THICKNESS, GIVEN_BY_MASS, N_GIVEN };

static char *
dup_given_name (guint value)
{
  return g_strdup (value == GIVEN_BY_THICKNESS ? _("thickness") : _("weight of a piece"));
}

static int
get_given (const TrTrial *trial,
           int            dough,
           guint          item)
{
  const TrCut *cut = get_cut (trial, dough);

  if (cut == NULL)
    return -1;

  return tr_is_written (cut->piece_mass_g) ? GIVEN_BY_MASS : GIVEN_BY_THICKNESS;
}

static double
get_start (double value,
           double step,
           double fallback)
{
  return isfinite (value) && value >= step ? round (value / step) * step : fallback;
}

static void
set_given (TrTrial              *draft,
           int                   dough,
           guint                 item,
           guint                 value,
           const TrDoughFigures *figures)
{
  TrCut *cut = get_cut (draft, dough);
  gboolean has_figures = figures != NULL && figures->has_sheet;

  if (value == GIVEN_BY_MASS)
    {
      cut->piece_mass_g = get_start (has_figures ? figures->piece.raw_mass_g : NAN, 1, 60);
      cut->thickness_mm = NAN;
      return;
    }
  cut->thickness_mm = get_start (has_figures ? figures->sheet.thickness_mm : NAN, 0.5, 4);
  cut->piece_mass_g = NAN;
}

static char *
dup_tick_name (guint value)
{
  return g_strdup (value != 0 ? _("yes") : _("no"));
}

static int
get_rolled_up (const TrTrial *trial,
               int            dough,
               guint          item)
{
  const TrCut *cut = get_cut (trial, dough);

  return cut != NULL ? tr_cut_is_rolled_up (cut) : -1;
}

static void
set_rolled_up (TrTrial              *draft,
               int                   dough,
               guint                 item,
               guint                 value,
               const TrDoughFigures *figures)
{
  get_cut (draft, dough)->rolled_up = (int) value;
}

static int
get_printed (const TrTrial *trial,
             int            dough,
             guint          item)
{
  const TrCut *cut = get_cut (trial, dough);

  return cut != NULL ? tr_is_written (cut->printed_sheet_mm[0]) : -1;
}

static void
set_printed (TrTrial              *draft,
             int                   dough,
             guint                 item,
             guint                 value,
             const TrDoughFigures *figures)
{
  TrCut *cut = get_cut (draft, dough);
  gboolean has_sheet = figures != NULL && figures->has_sheet;

  cut->printed_sheet_mm[0] = value != 0 ? get_start (has_sheet ? figures->sheet.length_mm : NAN, 1, 600) : NAN;
  cut->printed_sheet_mm[1] = value != 0 ? get_start (has_sheet ? figures->sheet.width_mm : NAN, 1, 300) : NAN;
}

static const TrChoice shape_choice = {
  "/cut/shape", N_("Shape"), N_("change the shape"), NULL, N_SHAPE_CHOICES, dup_shape_name, get_shape, set_shape,
};

static const TrChoice given_choice = {
  "/cut/by", N_("Given by"), N_("change what the sheet is given by"), N_("One follows from the other"),
  N_GIVEN, dup_given_name, get_given, set_given,
};

static const TrChoice rolled_up_choice = {
  "/cut/rolled_up", N_("Rolled up"), N_("change whether pieces are rolled up"), N_("Pieces are rolled up after cutting"),
  2, dup_tick_name, get_rolled_up, set_rolled_up, TRUE,
};

static const TrChoice printed_choice = {
  "/cut/printed_sheet_mm", N_("The formula prints a sheet size"), N_("change the printed sheet"),
  N_("To see how thick a sheet of that size this dough really makes"), 2, dup_tick_name, get_printed, set_printed, TRUE,
};

/* The page */

static void
rows_chosen_cb (TrAlternatives *alternatives,
                int             rows,
                TrSheetPage    *self)
{
  TrPage *page = TR_PAGE (self);
  const TrDough *dough = tr_page_get_dough (page);

  if (tr_page_is_refreshing (page) || dough == NULL || dough->cut == NULL || dough->cut->rows == rows)
    return;

  TrTrial *draft = tr_document_draft (tr_page_get_document (page));

  tr_trial_own_dough (draft, (guint) tr_page_get_dough_index (page))->cut->rows = rows;
  tr_page_commit (page, draft, _("change the rows"), NULL, "/cut/rows");
}

/* The field that has this measure: the first one of the shape, or its second. */
static const TrMember *
find_measure (const TrTrial *trial,
              int            dough,
              TrMeasure      measure)
{
  const TrMember *found = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (size_members); i++)
    if (tr_member_is_there (&size_members[i], trial, dough, 0) && size_members[i].offset != G_STRUCT_OFFSET (TrCut, gap_mm))
      {
        found = &size_members[i];
        if (measure == TR_MEASURE_ALONG)
          return found;
      }

  return found;
}

static void tr_sheet_page_refresh (TrPage *page);

static void
edge_taken_cb (TrSheetView *view,
               TrSheetPage *self)
{
  tr_page_begin_drag (TR_PAGE (self));
}

static void
edge_let_go_cb (TrSheetView *view,
                gboolean     is_cancelled,
                TrSheetPage *self)
{
  if (!tr_page_is_dragging (TR_PAGE (self)))
    return;

  tr_page_end_drag (TR_PAGE (self), is_cancelled);
  if (tr_page_get_figures (TR_PAGE (self)) != NULL)
    tr_sheet_page_refresh (TR_PAGE (self));
}

static void
measure_moved_cb (TrSheetView *view,
                  int          measure,
                  double       mm,
                  TrSheetPage *self)
{
  TrPage *page = TR_PAGE (self);
  int dough = tr_page_get_dough_index (page);
  TrTrial *draft;
  const TrMember *member;

  if (tr_page_is_refreshing (page) || dough < 0 || get_cut (tr_document_get_trial (tr_page_get_document (page)), dough) == NULL)
    return;

  draft = tr_document_draft (tr_page_get_document (page));
  member = find_measure (draft, dough, (TrMeasure) measure);
  tr_member_set_number (member, draft, dough, 0, mm);
  tr_page_commit (page, draft, _(member->undo), member->pointer, member->pointer);
}

static void
refresh_words (TrSheetPage          *self,
               const TrDoughFigures *figures,
               const TrReader       *reader)
{
  gboolean has_sheet = figures->has_sheet;

  tr_words_label_take (self->rolled, has_sheet ? tr_sheet_words_dup_rolled (&figures->sheet, reader) : NULL);
  tr_words_label_take (self->pieces, has_sheet ? tr_sheet_words_dup_pieces (figures, reader) : NULL);
  tr_words_label_take (self->wound, has_sheet ? tr_sheet_words_dup_wound (&figures->sheet, reader) : NULL);
  tr_words_label_take (self->trays, has_sheet ? tr_sheet_words_dup_trays (&figures->sheet.trays, reader) : NULL);
  tr_words_label_take (self->printed, has_sheet ? tr_sheet_words_dup_printed (&figures->sheet, reader) : NULL);
  tr_words_label_set (self->none, has_sheet ? NULL :
                                  figures->dough->cut == NULL ? _("Nothing is cut. Choose a shape to plan the sheet.") :
                                  _("No sheet can be computed yet: the dough is not weighed, or not enough for one piece."));
}

static void
refresh_alternatives (TrSheetPage          *self,
                      const TrDoughFigures *figures,
                      const TrReader       *reader)
{
  tr_alternatives_refresh (TR_ALTERNATIVES (self->alternatives), figures, reader);
  gtk_widget_set_visible (self->alternatives_area, gtk_widget_get_visible (self->alternatives));
  gtk_widget_set_visible (gtk_widget_get_prev_sibling (self->alternatives_area), gtk_widget_get_visible (self->alternatives));
}

static void
tr_sheet_page_refresh (TrPage *page)
{
  TrSheetPage *self = TR_SHEET_PAGE (page);
  const TrDoughFigures *figures = tr_page_get_figures (page);
  const TrReader *reader = tr_page_get_reader (page);

  gtk_widget_set_visible (self->scroller, figures != NULL);
  if (figures == NULL)
    return;

  tr_fields_refresh (self->scroller);
  refresh_words (self, figures, reader);
  /* An edge that is held is not taken out of the hand because no piece fits for a while. */
  tr_sheet_view_set_figures (TR_SHEET_VIEW (self->sheets), figures->has_sheet || (tr_page_is_dragging (page) && figures->dough->cut != NULL) ?
                                                           figures : NULL, reader);
  tr_picture_view_set_figures (TR_PICTURE_VIEW (self->piece), figures->has_sheet ? figures : NULL, 0, reader);
  /* It has as many rows as there happen to be room for: not while the hand is on what is above it. */
  if (!tr_page_is_dragging (page))
    refresh_alternatives (self, figures, reader);
}

static gboolean
tr_sheet_page_go_to (TrPage     *page,
                     const char *pointer)
{
  TrSheetPage *self = TR_SHEET_PAGE (page);

  if (!g_str_has_prefix (pointer, "/cut"))
    return FALSE;

  return tr_fields_go_to (self->scroller, pointer) || tr_fields_go_to (self->scroller, "/cut/shape");
}

static void
build_fields (GtkWidget *column)
{
  GtkWidget *section = tr_column_add_section (column, NULL);
  GtkWidget *piece = tr_fields_row_new (), *sheet = tr_fields_row_new ();
  GtkWidget *tick;

  tr_form_add (piece, tr_choice_field_new (&shape_choice, TR_FIELD_ABOVE));
  for (guint i = 0; i < G_N_ELEMENTS (size_members); i++)
    tr_form_add (piece, tr_entry_field_new (&size_members[i], TR_FIELD_ABOVE));
  tr_form_add (piece, tr_choice_field_new (&given_choice, TR_FIELD_ABOVE));
  for (guint i = 0; i < G_N_ELEMENTS (thickness_members); i++)
    tr_form_add (piece, tr_entry_field_new (&thickness_members[i], TR_FIELD_ABOVE));

  for (guint i = 0; i < G_N_ELEMENTS (sheet_members); i++)
    {
      if (i == 3)
        {
          tick = tr_form_add (sheet, tr_choice_field_new (&rolled_up_choice, TR_FIELD_BARE));
          gtk_widget_set_valign (tick, GTK_ALIGN_END);
        }
      if (i == 4)
        {
          tick = tr_form_add (sheet, tr_choice_field_new (&printed_choice, TR_FIELD_BARE));
          gtk_widget_set_valign (tick, GTK_ALIGN_END);
        }
      tr_form_add (sheet, tr_entry_field_new (&sheet_members[i], TR_FIELD_ABOVE));
    }
  gtk_box_append (GTK_BOX (section), piece);
  gtk_box_append (GTK_BOX (section), sheet);
}

static TrPicture *
make_piece_picture (const TrDoughFigures *figures,
                    guint                 item,
                    const TrReader       *reader,
                    const TrLook         *look,
                    double                width,
                    double                height)
{
  return tr_piece_picture_new (figures, reader, look, width, height);
}

static void
build_sheet (TrSheetPage *self,
             GtkWidget   *column)
{
  GtkWidget *section = tr_column_add_section (column, NULL);

  self->rolled = tr_words_label_new (NULL);
  self->pieces = tr_words_label_new (NULL);
  self->wound = tr_words_label_new ("dim-label");
  self->trays = tr_words_label_new ("dim-label");
  self->printed = tr_words_label_new ("dim-label");
  self->none = tr_words_label_new ("dim-label");
  self->sheets = tr_sheet_view_new ();
  self->piece = tr_picture_view_new (_("The piece, cut through"), make_piece_picture, 13);
  g_signal_connect_object (self->sheets, "begin", G_CALLBACK (edge_taken_cb), self, 0);
  g_signal_connect_object (self->sheets, "end", G_CALLBACK (edge_let_go_cb), self, 0);
  g_signal_connect_object (self->sheets, "measure", G_CALLBACK (measure_moved_cb), self, 0);
  /* The drawing first: what is said becomes longer and shorter while an edge is dragged. */
  gtk_box_append (GTK_BOX (section), self->sheets);
  gtk_box_append (GTK_BOX (section), self->none);
  gtk_box_append (GTK_BOX (section), self->rolled);
  gtk_box_append (GTK_BOX (section), self->pieces);
  gtk_box_append (GTK_BOX (section), self->wound);
  gtk_box_append (GTK_BOX (section), self->piece);
  gtk_box_append (GTK_BOX (section), self->trays);
  gtk_box_append (GTK_BOX (section), self->printed);
}

static void
build_alternatives (TrSheetPage *self,
                    GtkWidget   *column)
{
  self->alternatives_area = tr_column_add_section (column, _("Other ways to lay it out"));
  self->alternatives = tr_alternatives_new ();
  g_signal_connect_object (self->alternatives, "chosen", G_CALLBACK (rows_chosen_cb), self, 0);
  gtk_box_append (GTK_BOX (self->alternatives_area), self->alternatives);
}

static void
tr_sheet_page_init (TrSheetPage *self)
{
  GtkWidget *column = tr_column_new (&self->scroller);

  build_fields (column);
  build_sheet (self, column);
  build_alternatives (self, column);
  tr_page_set_child (TR_PAGE (self), self->scroller);
}

static void
tr_sheet_page_dispose (GObject *object)
{
  edge_let_go_cb (NULL, TRUE, TR_SHEET_PAGE (object));

  G_OBJECT_CLASS (tr_sheet_page_parent_class)->dispose (object);
}

static void
tr_sheet_page_class_init (TrSheetPageClass *klass)
{
  TrPageClass *page_class = TR_PAGE_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tr_sheet_page_dispose;

  page_class->refresh = tr_sheet_page_refresh;
  page_class->go_to = tr_sheet_page_go_to;
}

GtkWidget *
tr_sheet_page_new (void)
{
  return g_object_new (TR_TYPE_SHEET_PAGE, NULL);
}
