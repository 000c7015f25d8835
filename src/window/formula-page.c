/* formula-page.c: name, batch, losses and the lines of the formula
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The lines are line-list's; the handles below them are balance's.
 */

#include "config.h"

#include "page.h"

#include <glib/gi18n-lib.h>

#include "balance.h"
#include "line-list.h"
#include "notes-field.h"
#include "section.h"

#define TR_TYPE_FORMULA_PAGE (tr_formula_page_get_type ())
G_DECLARE_FINAL_TYPE (TrFormulaPage, tr_formula_page, TR, FORMULA_PAGE, TrPage)

struct _TrFormulaPage
{
  TrPage parent_instance;

  /* Children */
  GtkWidget *scroller;
  GtkWidget *lines;
  GtkWidget *balance;
};

G_DEFINE_FINAL_TYPE (TrFormulaPage, tr_formula_page, TR_TYPE_PAGE)

/* Where the values stand */

static gpointer
reach_trial (const TrTrial *trial,
             int            dough,
             guint          item,
             gboolean       make)
{
  return (gpointer) trial;
}

static gpointer
reach_dough (const TrTrial *trial,
             int            dough,
             guint          item,
             gboolean       make)
{
  return tr_trial_get_dough (trial, (guint) dough);
}

static gpointer
reach_batch_pieces (const TrTrial *trial,
                    int            dough,
                    guint          item,
                    gboolean       make)
{
  TrDough *own = tr_trial_get_dough (trial, (guint) dough);

  return own->batch_by == TR_BATCH_PIECES ? own : NULL;
}

static gpointer
reach_batch_mass (const TrTrial *trial,
                  int            dough,
                  guint          item,
                  gboolean       make)
{
  TrDough *own = tr_trial_get_dough (trial, (guint) dough);

  return own->batch_by != TR_BATCH_PIECES && own->batch_by != TR_BATCH_WRITTEN ? own : NULL;
}

#define DOUGH(member) .reach = reach_dough, .offset = G_STRUCT_OFFSET (TrDough, member)
#define NUMBER .hold = TR_HOLD_NUMBER, .quantity

static const TrMember name_member = {
  "/name", DOUGH (name), .hold = TR_HOLD_TEXT, .label = N_("Name"), .undo = N_("rename the dough"),
};

static const TrMember title_member = {
  "/title", reach_trial, G_STRUCT_OFFSET (TrTrial, title), .hold = TR_HOLD_TEXT,
  .label = N_("Title of the trial"), .undo = N_("change the title"),
  .tooltip = N_("All doughs of this file together: the occasion, the season, the place"),
};

static const TrMember notes_member = {
  "/notes", DOUGH (notes), .hold = TR_HOLD_TEXT, .label = N_("Notes"), .undo = N_("change the notes"),
};

static const TrMember batch_members[] = {
  { "/batch/value", reach_batch_pieces, G_STRUCT_OFFSET (TrDough, batch_value), TR_HOLD_NUMBER, TR_QUANTITY_WHOLE,
    N_("Make"), N_("change how many to make"), N_("Pieces to cut; the sheet decides how much dough that takes"), 1 },
  { "/batch/value", reach_batch_mass, G_STRUCT_OFFSET (TrDough, batch_value), TR_HOLD_NUMBER, TR_QUANTITY_MASS_G,
    N_("Make"), N_("change how much to make"), N_("As mixed, losses included"), 50 },
};

static const TrMember loss_members[] = {
  { "/pieces_written", DOUGH (pieces_written), .hold = TR_HOLD_COUNT, .quantity = TR_QUANTITY_WHOLE,
    .label = N_("Pieces as written"), .undo = N_("change the pieces as written"), .may_be_empty = TRUE, .empty = "–",
    .tooltip = N_("How many pieces the amounts as written make; scales wash and filling, and the batch where nothing is cut") },
  { "/handling_loss_percent", DOUGH (handling_loss_percent), NUMBER = TR_QUANTITY_PERCENT,
    .label = N_("Handling loss"), .undo = N_("change the handling loss"), .step = 0.5,
    .tooltip = N_("What stays in the bowl and on the bench, evenly of dough and fat") },
  { "/bake_loss_percent", DOUGH (bake_loss_percent), NUMBER = TR_QUANTITY_PERCENT,
    .label = N_("Bake loss"), .undo = N_("change the bake loss"), .step = 0.5, .may_be_empty = TRUE, .empty = "–",
    .tooltip = N_("Water lost in the oven, of the raw weight; weigh a few pieces before and after") },
  { "/dough_density_g_ml", DOUGH (dough_density_g_ml), NUMBER = TR_QUANTITY_NUMBER,
    .label = N_("Dough density"), .undo = N_("change the dough density"), .unit = "g/ml", .step = 0.01,
    .tooltip = N_("Of the dough without the fat. It falls as gas forms: about 1.15 for a cold yeasted dough.") },
};

static char *
dup_kind_name (guint value)
{
  return g_strdup (tr_words_kind ((TrKind) value));
}

static int
get_kind (const TrTrial *trial,
          int            dough,
          guint          item)
{
  return (int) tr_trial_get_dough (trial, (guint) dough)->kind;
}

static void
set_kind (TrTrial              *draft,
          int                   dough,
          guint                 item,
          guint                 value,
          const TrDoughFigures *figures)
{
  tr_trial_get_dough (draft, (guint) dough)->kind = (TrKind) value;
}

static const TrChoice kind_choice = {
  "/kind", N_("Kind"), N_("change the kind"), N_("Decides which ratios are called usual"), TR_N_KINDS, dup_kind_name, get_kind, set_kind,
};

static char *
dup_batch_name (guint value)
{
  switch ((TrBatchBy) value)
    {
    case TR_BATCH_WRITTEN:
      return g_strdup (_("as written"));
    case TR_BATCH_PIECES:
      return g_strdup (_("pieces"));
    case TR_BATCH_FLOUR_G:
      return g_strdup (_("of flour"));
    case TR_BATCH_DOUGH_G:
      return g_strdup (_("of dough"));
    case TR_BATCH_TOTAL_G:
    case TR_N_BATCHES:
    default:
      return g_strdup (_("in all"));
    }
}

static int
get_batch_by (const TrTrial *trial,
              int            dough,
              guint          item)
{
  return (int) tr_trial_get_dough (trial, (guint) dough)->batch_by;
}

/* The batch stays as large as it was, said another way. */
static double
get_batch_start (const TrDoughFigures *figures,
                 TrBatchBy             by,
                 double                fallback)
{
  double value = NAN;

  if (figures == NULL)
    return fallback;
  if (by == TR_BATCH_PIECES)
    value = figures->piece.count;
  else if (by == TR_BATCH_FLOUR_G)
    value = figures->formula.flour_g;
  else if (by == TR_BATCH_DOUGH_G)
    value = figures->formula.dough_g;
  else if (by == TR_BATCH_TOTAL_G)
    value = figures->formula.total_g;

  return isfinite (value) && value >= 1 ? round (value) : fallback;
}

static void
set_batch_by (TrTrial              *draft,
              int                   dough,
              guint                 item,
              guint                 value,
              const TrDoughFigures *figures)
{
  TrDough *own = tr_trial_get_dough (draft, (guint) dough);

  own->batch_by = (TrBatchBy) value;
  own->batch_value = get_batch_start (figures, own->batch_by, own->batch_value);
}

static const TrChoice batch_choice = {
  "/batch/by", N_("By"), N_("change what the batch is counted by"), N_("What decides how large the batch is"),
  TR_N_BATCHES, dup_batch_name, get_batch_by, set_batch_by,
};

/* Showing */

static void
tr_formula_page_refresh (TrPage *page)
{
  TrFormulaPage *self = TR_FORMULA_PAGE (page);

  gtk_widget_set_visible (self->scroller, tr_page_get_dough (page) != NULL);
  tr_line_list_refresh (TR_LINE_LIST (self->lines));
  tr_fields_refresh (self->scroller);
  tr_balance_refresh (TR_BALANCE (self->balance));
}

static gboolean
tr_formula_page_go_to (TrPage     *page,
                       const char *pointer)
{
  TrFormulaPage *self = TR_FORMULA_PAGE (page);

  if (tr_line_list_go_to (TR_LINE_LIST (self->lines), pointer))
    return TRUE;
  if (tr_balance_go_to (TR_BALANCE (self->balance), pointer))
    return TRUE;
  /* The whole dough is what is moved on the plane. */
  if (*pointer == '\0' && tr_balance_focus_plane (TR_BALANCE (self->balance)))
    return TRUE;

  return *pointer != '\0' && tr_fields_go_to (self->scroller, pointer);
}

/* Building */

static void
build_batch (GtkWidget *column)
{
  GtkWidget *section = tr_column_add_section (column, NULL);
  GtkWidget *who = tr_fields_row_new (), *batch = tr_fields_row_new ();
  GtkWidget *name = tr_entry_field_new (&name_member, TR_FIELD_ABOVE);

  tr_entry_field_set_width_chars (TR_ENTRY_FIELD (name), 12, 22);
  tr_form_add (who, name);
  tr_form_add (who, tr_choice_field_new (&kind_choice, TR_FIELD_ABOVE));
  for (guint i = 0; i < G_N_ELEMENTS (batch_members); i++)
    tr_form_add (batch, tr_entry_field_new (&batch_members[i], TR_FIELD_ABOVE));
  tr_form_add (batch, tr_choice_field_new (&batch_choice, TR_FIELD_ABOVE));
  gtk_box_append (GTK_BOX (section), who);
  gtk_box_append (GTK_BOX (section), batch);
}

static void
build_rest (GtkWidget *column)
{
  GtkWidget *section = tr_column_add_section (column, _("Losses and density"));

  gtk_box_append (GTK_BOX (section), tr_form_new (loss_members, G_N_ELEMENTS (loss_members)));
  section = tr_column_add_section (column, NULL);
  gtk_box_append (GTK_BOX (section), tr_notes_field_new (&notes_member));
  gtk_box_append (GTK_BOX (section), tr_entry_field_new (&title_member, TR_FIELD_ABOVE));
}

static void
tr_formula_page_init (TrFormulaPage *self)
{
  GtkWidget *column = tr_column_new (&self->scroller);

  self->lines = tr_line_list_new ();
  build_batch (column);
  gtk_box_append (GTK_BOX (tr_column_add_section (column, NULL)), self->lines);
  self->balance = tr_balance_new ();
  gtk_box_append (GTK_BOX (tr_column_add_section (column, _("Balance"))), self->balance);
  build_rest (column);
  tr_page_set_child (TR_PAGE (self), self->scroller);
}

static void
tr_formula_page_class_init (TrFormulaPageClass *klass)
{
  TrPageClass *page_class = TR_PAGE_CLASS (klass);

  page_class->refresh = tr_formula_page_refresh;
  page_class->go_to = tr_formula_page_go_to;
}

GtkWidget *
tr_formula_page_new (void)
{
  return g_object_new (TR_TYPE_FORMULA_PAGE, NULL);
}
