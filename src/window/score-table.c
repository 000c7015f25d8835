/* score-table.c: what one taster says of every sample, in the order of tasting
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Invariant: there is a row for every sample of the taster shown, in that
 * order; rows are made anew only when samples or their order differ.
 */

#include "config.h"

#include "score-table.h"

#include <glib/gi18n-lib.h>

#include "../calc/faults.h"
#include "../calc/scores.h"
#include "entry-field.h"
#include "score-cell.h"
#include "section.h"

/* Marks, then balance. */
#define N_MARKS 3
#define N_CELLS 6

static const struct { const char *id, *label, *undo; gsize offset; gboolean is_balance; } columns[N_CELLS] = {
  { "marks/look", N_("Look"), N_("score the look"), G_STRUCT_OFFSET (TrScore, look), FALSE },
  { "marks/layers", N_("Layers"), N_("score the layers"), G_STRUCT_OFFSET (TrScore, layers), FALSE },
  { "marks/eating", N_("Eating"), N_("score the eating"), G_STRUCT_OFFSET (TrScore, eating), FALSE },
  { "balance/salt", N_("Salt"), N_("judge the salt"), G_STRUCT_OFFSET (TrScore, salt), TRUE },
  { "balance/sweet", N_("Sweet"), N_("judge the sweetness"), G_STRUCT_OFFSET (TrScore, sweet), TRUE },
  { "balance/bake", N_("Bake"), N_("judge the bake"), G_STRUCT_OFFSET (TrScore, bake), TRUE },
};

typedef struct {
  char *dough;
  char *name;                    /* its code, else its name */
  TrScoreCell *cells[N_CELLS];
  GtkMenuButton *faults;
  GtkCheckButton *ticks[TR_N_FAULTS];
  TrField *notes;
} Row;

struct _TrScoreTable
{
  GtkWidget parent_instance;

  /* Children */
  GtkWidget *box;

  /* Borrowed References */
  GtkWidget *grid, *said;

  /* Owned */
  GPtrArray *rows;               /* Row */
  char *taster;

  guint is_showing : 1;
};

G_DEFINE_FINAL_TYPE (TrScoreTable, tr_score_table, GTK_TYPE_WIDGET)

static void
free_row (gpointer data)
{
  Row *row = data;

  g_free (row->dough);
  g_free (row->name);
  g_free (row);
}

static Row *
get_row (TrScoreTable *self,
         guint         index)
{
  return g_ptr_array_index (self->rows, index);
}

static TrPage *
get_page (TrScoreTable *self)
{
  TrPage *page = (TrPage *) gtk_widget_get_ancestor (GTK_WIDGET (self), TR_TYPE_PAGE);

  return page != NULL && tr_page_get_document (page) != NULL ? page : NULL;
}

static const TrTrial *
get_trial (TrScoreTable *self)
{
  TrPage *page = get_page (self);

  return page != NULL ? tr_document_get_trial (tr_page_get_document (page)) : NULL;
}

/* Writing *****************************************************************/

static void
lock_prediction (TrTrial *draft)
{
  if (draft->prediction == NULL || draft->prediction->locked_at != NULL || !tr_tasting_has_marks (draft->tasting))
    return;

  g_autoptr (GDateTime) now = g_date_time_new_now_local ();

  draft->prediction->locked_at = g_date_time_format (now, "%Y-%m-%dT%H:%M");
}

static TrTrial *
begin (TrScoreTable  *self,
       Row           *row,
       TrScore      **score)
{
  TrTrial *draft = tr_document_draft (tr_page_get_document (get_page (self)));

  *score = tr_tasting_need_score (tr_trial_need_tasting (draft), self->taster, row->dough);

  return draft;
}

static void
commit (TrScoreTable *self,
        Row          *row,
        TrTrial      *draft,
        const char   *what,
        const char   *label)
{
  g_autofree char *key = g_strdup_printf ("score/%s/%s/%s", self->taster, row->dough, what);

  tr_tasting_drop_empty_scores (draft->tasting);
  lock_prediction (draft);
  tr_page_commit (get_page (self), draft, label, key, "/tasting/scores");
}

static gboolean
find_cell (TrScoreTable *self,
           gpointer      cell,
           guint        *row,
           guint        *column)
{
  for (*row = 0; *row < self->rows->len; ++*row)
    for (*column = 0; *column < N_CELLS; ++*column)
      if (get_row (self, *row)->cells[*column] == cell)
        return TRUE;

  return FALSE;
}

static void
given_cb (TrScoreCell  *cell,
          int           value,
          TrScoreTable *self)
{
  guint row, column;
  TrScore *score;

  if (self->is_showing || get_page (self) == NULL || !find_cell (self, cell, &row, &column))
    return;

  TrTrial *draft = begin (self, get_row (self, row), &score);

  if (!columns[column].is_balance && value == TR_SCORE_NONE)
    value = 0;
  G_STRUCT_MEMBER (int, score, columns[column].offset) = value;
  commit (self, get_row (self, row), draft, columns[column].id, _(columns[column].undo));
  tr_words_label_set (self->said, NULL);
}

static void
refused_cb (TrScoreCell  *cell,
            const char   *text,
            TrScoreTable *self)
{
  guint row, column;

  if (!find_cell (self, cell, &row, &column))
    return;

  tr_words_label_take (self->said, columns[column].is_balance
                       ? g_strdup_printf (_("“%s” is no balance; −2, −1, 0, +1 or +2 is expected."), text)
                       : g_strdup_printf (_("“%s” is no mark; 1 to 9 is expected."), text));
}

static void
leave_cb (TrScoreCell      *cell,
          GtkDirectionType  direction,
          TrScoreTable     *self)
{
  guint row, column;

  if (!find_cell (self, cell, &row, &column))
    return;

  int at = (int) (row * N_CELLS + column);
  int n = (int) self->rows->len * N_CELLS;

  switch (direction)
    {
    case GTK_DIR_UP:
      at -= N_CELLS;
      break;
    case GTK_DIR_DOWN:
      at += N_CELLS;
      break;
    case GTK_DIR_LEFT:
    case GTK_DIR_TAB_BACKWARD:
      at--;
      break;
    case GTK_DIR_RIGHT:
    case GTK_DIR_TAB_FORWARD:
    default:
      at++;
    }
  if (at >= 0 && at < n)
    gtk_widget_grab_focus (GTK_WIDGET (get_row (self, (guint) (at / N_CELLS))->cells[at % N_CELLS]));
}

static void
show_faults (Row *row)
{
  guint n = 0;
  const char *only = NULL;

  for (guint i = 0; i < TR_N_FAULTS; i++)
    if (gtk_check_button_get_active (row->ticks[i]))
      {
        only = tr_words_fault ((TrFault) i);
        n++;
      }

  g_autofree char *label = n == 0 ? g_strdup (_("none"))
                           : n == 1 ? g_strdup (only)
                           : g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u fault", "%u faults", n), n);
  g_autofree char *name = g_strdup_printf (_("Faults of %s: %s"), row->name, label);

  gtk_menu_button_set_label (row->faults, label);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row->faults), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static Row *
find_row_of_tick (TrScoreTable *self,
                  gpointer      tick)
{
  for (guint i = 0; i < self->rows->len; i++)
    for (guint fault = 0; fault < TR_N_FAULTS; fault++)
      if (get_row (self, i)->ticks[fault] == tick)
        return get_row (self, i);

  return NULL;
}

/* What is written and not in the table stays. */
static char **
new_faults (Row           *row,
            const TrScore *score)
{
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();

  for (guint i = 0; i < TR_N_FAULTS; i++)
    if (gtk_check_button_get_active (row->ticks[i]))
      g_strv_builder_add (builder, tr_fault_id ((TrFault) i));
  for (char **id = score->faults; id != NULL && *id != NULL; id++)
    if (tr_fault_from_id (*id) < 0)
      g_strv_builder_add (builder, *id);

  return g_strv_builder_end (builder);
}

static void
ticked_cb (GtkCheckButton *tick,
           TrScoreTable   *self)
{
  Row *row = find_row_of_tick (self, tick);
  TrScore *score;

  if (self->is_showing || row == NULL || get_page (self) == NULL)
    return;

  TrTrial *draft = begin (self, row, &score);
  char **faults = new_faults (row, score);

  g_strfreev (score->faults);
  score->faults = faults;
  commit (self, row, draft, "faults", _("mark a fault"));
  show_faults (row);
}

/* Notes *******************************************************************/

/* A field's item: which taster and which dough. */
#define ITEM(taster, dough) ((taster) * TR_MAX_DOUGHS + (dough))

static gpointer
reach_score (const TrTrial *trial,
             int            dough,
             guint          item,
             gboolean       make)
{
  static const TrScore none = { .notes = NULL };
  const TrTaster *taster;
  guint of = item % TR_MAX_DOUGHS;

  if (trial->tasting == NULL || item / TR_MAX_DOUGHS >= trial->tasting->tasters->len || of >= trial->doughs->len)
    return NULL;

  taster = g_ptr_array_index (trial->tasting->tasters, item / TR_MAX_DOUGHS);
  if (make)
    return tr_tasting_need_score (trial->tasting, taster->id, tr_trial_get_dough (trial, of)->id);

  TrScore *score = tr_tasting_find_score (trial->tasting, taster->id, tr_trial_get_dough (trial, of)->id);

  return score != NULL ? score : (gpointer) &none;
}

static void
settle_score (TrTrial  *draft,
              int       dough,
              guint     item,
              gpointer  holder)
{
  tr_tasting_drop_empty_scores (draft->tasting);
}

static char *
dup_notes_pointer (const TrTrial *trial,
                   int            dough,
                   guint          item)
{
  const TrScore *score = reach_score (trial, dough, item, FALSE);
  guint index = 0;

  if (score == NULL || !g_ptr_array_find (trial->tasting->scores, score, &index))
    return g_strdup_printf ("/tasting/notes-of-nothing/%u", item);

  return g_strdup_printf ("/tasting/scores/%u/notes", index);
}

static const TrMember notes_member = {
  "/tasting/scores/%u/notes", reach_score, G_STRUCT_OFFSET (TrScore, notes), TR_HOLD_TEXT, TR_QUANTITY_NUMBER,
  N_("Notes"), N_("note what was tasted"), .may_be_empty = TRUE, .settle = settle_score, .dup_pointer = dup_notes_pointer,
};

/* Rows ********************************************************************/

static GtkWidget *
new_ticks (TrScoreTable *self,
           Row          *row)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  for (guint i = 0; i < TR_N_FAULTS; i++)
    {
      GtkWidget *tick = gtk_check_button_new_with_label (tr_words_fault ((TrFault) i));

      row->ticks[i] = GTK_CHECK_BUTTON (tick);
      g_signal_connect_object (tick, "toggled", G_CALLBACK (ticked_cb), self, 0);
      gtk_box_append (GTK_BOX (box), tick);
    }

  return box;
}

static void
add_cells (TrScoreTable *self,
           Row          *row,
           int           y)
{
  for (guint i = 0; i < N_CELLS; i++)
    {
      g_autofree char *name = g_strdup_printf (_("%s of %s"), _(columns[i].label), row->name);
      GtkWidget *cell = tr_score_cell_new (columns[i].is_balance, name);

      row->cells[i] = TR_SCORE_CELL (cell);
      g_signal_connect_object (cell, "given", G_CALLBACK (given_cb), self, 0);
      g_signal_connect_object (cell, "refused", G_CALLBACK (refused_cb), self, 0);
      g_signal_connect_object (cell, "leave", G_CALLBACK (leave_cb), self, 0);
      if (i == N_MARKS)
        gtk_widget_set_margin_start (cell, 12);
      gtk_grid_attach (GTK_GRID (self->grid), cell, (int) i + 1, y, 1, 1);
    }
}

static void
add_row (TrScoreTable *self,
         const char   *dough,
         const char   *name)
{
  Row *row = g_new0 (Row, 1);
  int y = (int) self->rows->len + 1;
  GtkWidget *label = gtk_label_new (name), *popover = gtk_popover_new ();

  row->dough = g_strdup (dough);
  row->name = g_strdup (name);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 18);
  gtk_widget_add_css_class (label, "sample");
  gtk_grid_attach (GTK_GRID (self->grid), label, 0, y, 1, 1);
  add_cells (self, row, y);

  row->faults = GTK_MENU_BUTTON (gtk_menu_button_new ());
  gtk_popover_set_child (GTK_POPOVER (popover), new_ticks (self, row));
  gtk_menu_button_set_popover (row->faults, popover);
  gtk_grid_attach (GTK_GRID (self->grid), GTK_WIDGET (row->faults), N_CELLS + 1, y, 1, 1);

  row->notes = TR_FIELD (tr_entry_field_new (&notes_member, TR_FIELD_TABLE));
  tr_field_set_context (row->notes, name);
  gtk_widget_set_hexpand (GTK_WIDGET (row->notes), TRUE);
  gtk_grid_attach (GTK_GRID (self->grid), GTK_WIDGET (row->notes), N_CELLS + 2, y, 1, 1);
  g_ptr_array_add (self->rows, row);
}

static void
add_head (TrScoreTable *self,
          const char   *text,
          int           x)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_widget_add_css_class (label, "dim-label");
  gtk_label_set_xalign (GTK_LABEL (label), x == 0 || x > N_CELLS ? 0 : 0.5f);
  if (x == N_MARKS + 1)
    gtk_widget_set_margin_start (label, 12);
  gtk_grid_attach (GTK_GRID (self->grid), label, x, 0, 1, 1);
}

static void
add_heads (TrScoreTable *self)
{
  add_head (self, _("Sample"), 0);
  for (guint i = 0; i < N_CELLS; i++)
    add_head (self, _(columns[i].label), (int) i + 1);
  add_head (self, _("Faults"), N_CELLS + 1);
  add_head (self, _("Notes"), N_CELLS + 2);
}

/* Which samples, in which order: those that have a code; before there are any,
 * every dough. (element-type utf8, borrowed) */
static GPtrArray *
list_samples (const TrTrial *trial,
              const char    *taster)
{
  GPtrArray *samples = g_ptr_array_new ();
  gboolean is_blind = trial->tasting->codes->len > 0;
  const TrOrder *order = tr_tasting_find_order (trial->tasting, taster);

  for (char **id = order != NULL ? order->doughs : NULL; id != NULL && *id != NULL; id++)
    if (!is_blind || tr_tasting_get_code (trial->tasting, *id) != 0)
      g_ptr_array_add (samples, *id);
  for (guint i = 0; i < trial->doughs->len; i++)
    {
      char *id = tr_trial_get_dough (trial, i)->id;

      if ((!is_blind || tr_tasting_get_code (trial->tasting, id) != 0)
          && !g_ptr_array_find_with_equal_func (samples, id, g_str_equal, NULL))
        g_ptr_array_add (samples, id);
    }

  return samples;
}

static char *
dup_sample_name (const TrTrial *trial,
                 const char    *dough)
{
  int code = tr_tasting_get_code (trial->tasting, dough);
  int index = tr_trial_find_dough (trial, dough);

  if (code != 0)
    return g_strdup_printf ("%03d", code);

  return tr_words_one_line (tr_trial_get_dough (trial, (guint) index)->name);
}

static gboolean
has_these_rows (TrScoreTable *self,
                GPtrArray    *samples,
                char        **names)
{
  if (self->rows->len != samples->len)
    return FALSE;
  for (guint i = 0; i < samples->len; i++)
    if (!g_str_equal (get_row (self, i)->dough, g_ptr_array_index (samples, i)) || !g_str_equal (get_row (self, i)->name, names[i]))
      return FALSE;

  return TRUE;
}

static void
make_rows (TrScoreTable  *self,
           const TrTrial *trial)
{
  g_autoptr (GPtrArray) samples = list_samples (trial, self->taster);
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  g_auto (GStrv) names = NULL;
  GtkWidget *child;

  for (guint i = 0; i < samples->len; i++)
    {
      g_autofree char *name = dup_sample_name (trial, g_ptr_array_index (samples, i));

      g_strv_builder_add (builder, name);
    }
  names = g_strv_builder_end (builder);
  if (has_these_rows (self, samples, names))
    return;

  while ((child = gtk_widget_get_first_child (self->grid)) != NULL)
    gtk_grid_remove (GTK_GRID (self->grid), child);
  g_ptr_array_set_size (self->rows, 0);
  add_heads (self);
  for (guint i = 0; i < samples->len; i++)
    add_row (self, g_ptr_array_index (samples, i), names[i]);
}

static void
show_row (TrScoreTable  *self,
          Row           *row,
          const TrTrial *trial,
          guint          taster)
{
  const TrScore *score = tr_tasting_find_score (trial->tasting, self->taster, row->dough);

  for (guint i = 0; i < N_CELLS; i++)
    {
      int value = score != NULL ? G_STRUCT_MEMBER (int, score, columns[i].offset) : TR_SCORE_NONE;

      if (!columns[i].is_balance && value == 0)
        value = TR_SCORE_NONE;
      tr_score_cell_set_value (row->cells[i], value);
    }
  for (guint i = 0; i < TR_N_FAULTS; i++)
    gtk_check_button_set_active (row->ticks[i], score != NULL && score->faults != NULL
                                 && g_strv_contains ((const char *const *) score->faults, tr_fault_id ((TrFault) i)));
  show_faults (row);
  tr_field_set_item (row->notes, ITEM (taster, (guint) tr_trial_find_dough (trial, row->dough)));
}

void
tr_score_table_refresh (TrScoreTable *self)
{
  g_return_if_fail (TR_IS_SCORE_TABLE (self));

  const TrTrial *trial = get_trial (self);
  TrTaster *taster = trial != NULL && trial->tasting != NULL && self->taster != NULL
                     ? tr_tasting_find_taster (trial->tasting, self->taster) : NULL;
  guint index = 0;

  gtk_widget_set_visible (self->box, taster != NULL);
  if (taster == NULL)
    return;

  g_ptr_array_find (trial->tasting->tasters, taster, &index);
  self->is_showing = TRUE;
  make_rows (self, trial);
  for (guint i = 0; i < self->rows->len; i++)
    show_row (self, get_row (self, i), trial, index);
  self->is_showing = FALSE;
  tr_fields_refresh (self->grid);
}

void
tr_score_table_set_taster (TrScoreTable *self,
                           const char   *taster)
{
  g_return_if_fail (TR_IS_SCORE_TABLE (self));

  if (tr_set_text (&self->taster, taster))
    {
      tr_words_label_set (self->said, NULL);
      tr_score_table_refresh (self);
    }
}

gboolean
tr_score_table_focus (TrScoreTable *self)
{
  g_return_val_if_fail (TR_IS_SCORE_TABLE (self), FALSE);

  if (self->rows->len == 0)
    return FALSE;
  for (guint row = 0; row < self->rows->len; row++)
    for (guint column = 0; column < N_CELLS; column++)
      if (tr_score_cell_get_value (get_row (self, row)->cells[column]) == TR_SCORE_NONE)
        return gtk_widget_grab_focus (GTK_WIDGET (get_row (self, row)->cells[column]));

  return gtk_widget_grab_focus (GTK_WIDGET (get_row (self, 0)->cells[0]));
}

/* Building ****************************************************************/

static void
tr_score_table_dispose (GObject *object)
{
  TrScoreTable *self = TR_SCORE_TABLE (object);

  if (self->rows != NULL)
    g_ptr_array_set_size (self->rows, 0);
  g_clear_pointer (&self->box, gtk_widget_unparent);

  G_OBJECT_CLASS (tr_score_table_parent_class)->dispose (object);
}

static void
tr_score_table_finalize (GObject *object)
{
  TrScoreTable *self = TR_SCORE_TABLE (object);

  g_clear_pointer (&self->rows, g_ptr_array_unref);
  g_clear_pointer (&self->taster, g_free);

  G_OBJECT_CLASS (tr_score_table_parent_class)->finalize (object);
}

static void
tr_score_table_class_init (TrScoreTableClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tr_score_table_dispose;
  G_OBJECT_CLASS (klass)->finalize = tr_score_table_finalize;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
tr_score_table_init (TrScoreTable *self)
{
  self->rows = g_ptr_array_new_with_free_func (free_row);
  self->grid = gtk_grid_new ();
  gtk_grid_set_row_spacing (GTK_GRID (self->grid), 6);
  gtk_grid_set_column_spacing (GTK_GRID (self->grid), 6);
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_box_append (GTK_BOX (self->box), tr_sideways_new (self->grid));
  self->said = tr_words_label_new ("error");
  gtk_box_append (GTK_BOX (self->box), self->said);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  gtk_widget_set_visible (self->box, FALSE);
}

GtkWidget *
tr_score_table_new (void)
{
  return g_object_new (TR_TYPE_SCORE_TABLE, NULL);
}
