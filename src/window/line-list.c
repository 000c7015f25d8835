/* line-list.c: the formula's lines, by stage
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Rows are matched with the lines of the new trial (tr_lines_match) and keep
 * standing; the list box only sorts them anew, which moves no focus.
 *
 * Invariants: `rows` has one row a line of the dough, in the dough's order;
 * there is at most one row more, `pending`, for a line not written yet. A
 * stage without any row shows its placeholder.
 */

#include "config.h"

#include "line-list.h"

#include <glib/gi18n-lib.h>

#include "../calc/formula.h"
#include "empty-stage-row.h"
#include "line-row.h"
#include "preferments.h"
#include "section.h"
#include "stage-header.h"

struct _TrLineList
{
  GtkWidget parent_instance;

  /* Children */
  GtkWidget *box;
  GtkWidget *list;
  GtkWidget *empty[TR_N_STAGES]; /* TrEmptyStageRow */
  GtkWidget *grams_title;
  GtkWidget *summary;

  /* Owned */
  TrLineColumns columns;
  GPtrArray *rows;               /* TrLineRow, borrowed from the list */
  TrLineRow *pending;            /* borrowed from the list; NULL: none */
  guint pending_source;
};

G_DEFINE_FINAL_TYPE (TrLineList, tr_line_list, GTK_TYPE_WIDGET)

/* The order of the list: a number a row. Placeholders come where their stage
 * would. */
#define PLACES_PER_STAGE 1000u

static TrPage *
get_page (TrLineList *self)
{
  TrPage *page = (TrPage *) gtk_widget_get_ancestor (GTK_WIDGET (self), TR_TYPE_PAGE);

  return page != NULL && tr_page_get_document (page) != NULL ? page : NULL;
}

static guint
get_place (GtkListBoxRow *row)
{
  return TR_IS_LINE_ROW (row) ? tr_line_row_get_place (TR_LINE_ROW (row)) : tr_empty_stage_row_get_stage (TR_EMPTY_STAGE_ROW (row)) * PLACES_PER_STAGE;
}

static int
compare_rows (GtkListBoxRow *a,
              GtkListBoxRow *b,
              gpointer       data)
{
  guint place_a = get_place (a), place_b = get_place (b);

  return place_a < place_b ? -1 : place_a > place_b ? 1 : 0;
}

static const TrLine *
get_row_line (TrLineList    *self,
              GtkListBoxRow *row)
{
  TrPage *page = get_page (self);
  const TrDough *dough = page != NULL ? tr_page_get_dough (page) : NULL;

  if (dough == NULL || !TR_IS_LINE_ROW (row))
    return NULL;

  guint item = tr_line_row_get_item (TR_LINE_ROW (row));
  int after = tr_line_is_pending (item) ? tr_line_pending_after (item) : (int) item;

  return after >= 0 && after < (int) dough->lines->len ? tr_dough_get_line (dough, (guint) after) : NULL;
}

static TrStage
get_row_stage (TrLineList    *self,
               GtkListBoxRow *row)
{
  const TrLine *line = get_row_line (self, row);

  if (line != NULL)
    return line->stage;
  if (TR_IS_LINE_ROW (row))
    return tr_line_pending_stage (tr_line_row_get_item (TR_LINE_ROW (row)));

  return tr_empty_stage_row_get_stage (TR_EMPTY_STAGE_ROW (row));
}

/* Only preferments have one. */
static const char *
get_row_group (TrLineList    *self,
               GtkListBoxRow *row)
{
  const TrLine *line = get_row_line (self, row);

  return line != NULL && line->stage == TR_STAGE_PREFERMENT ? line->group : NULL;
}

/* Under one header. */
static gboolean
are_together (TrLineList    *self,
              GtkListBoxRow *a,
              GtkListBoxRow *b)
{
  return get_row_stage (self, a) == get_row_stage (self, b) &&
         g_strcmp0 (get_row_group (self, a), get_row_group (self, b)) == 0;
}

/* Adding */

static int
find_last_of (const TrDough *dough,
              TrStage        stage,
              const char    *group)
{
  for (guint i = dough->lines->len; i-- > 0;)
    {
      const TrLine *line = tr_dough_get_line (dough, i);

      if (line->stage == stage && (stage != TR_STAGE_PREFERMENT || group == NULL || g_strcmp0 (line->group, group) == 0))
        return (int) i;
    }

  return -1;
}

static void connect_row (TrLineList *self, GtkWidget *row);

static void
drop_pending (TrLineList *self)
{
  GtkWidget *row = (GtkWidget *) g_steal_pointer (&self->pending);

  g_clear_handle_id (&self->pending_source, g_source_remove);
  if (row != NULL)
    gtk_list_box_remove (GTK_LIST_BOX (self->list), row);
}

static void
add_pending (TrLineList *self,
             TrStage     stage,
             int         after)
{
  drop_pending (self);
  self->pending = TR_LINE_ROW (tr_line_row_new (&self->columns));
  tr_line_row_set_item (self->pending, tr_line_pending_item (stage, after));
  connect_row (self, GTK_WIDGET (self->pending));
  gtk_list_box_append (GTK_LIST_BOX (self->list), GTK_WIDGET (self->pending));
  tr_line_list_refresh (self);
  tr_line_row_focus (self->pending, "ingredient");
}

void
tr_line_list_add (TrLineList *self,
                  TrStage     stage,
                  const char *group)
{
  g_return_if_fail (TR_IS_LINE_LIST (self));

  TrPage *page = get_page (self);
  const TrDough *dough = page != NULL ? tr_page_get_dough (page) : NULL;

  if (dough != NULL && dough->lines->len < TR_MAX_LINES)
    add_pending (self, stage, find_last_of (dough, stage, group));
}

/* A blank row goes when it is left, but not from inside the focus change. */
static gboolean
drop_pending_cb (gpointer data)
{
  TrLineList *self = data;

  self->pending_source = 0;
  if (self->pending == NULL || !tr_line_row_is_blank (self->pending))
    return G_SOURCE_REMOVE;

  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;

  if (focus == NULL || !gtk_widget_is_ancestor (focus, GTK_WIDGET (self->pending)))
    {
      drop_pending (self);
      tr_line_list_refresh (self);
    }

  return G_SOURCE_REMOVE;
}

static void
row_left_cb (TrLineRow  *row,
             TrLineList *self)
{
  if (row == self->pending && self->pending_source == 0)
    self->pending_source = g_idle_add (drop_pending_cb, self);
}

static GtkListBoxRow *
find_next_together (TrLineList *self,
                    TrLineRow  *row)
{
  GtkListBoxRow *next = gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), gtk_list_box_row_get_index (GTK_LIST_BOX_ROW (row)) + 1);

  return next != NULL && TR_IS_LINE_ROW (next) && are_together (self, next, GTK_LIST_BOX_ROW (row)) ? next : NULL;
}

static void
line_wanted_cb (TrLineRow  *row,
                const char *member,
                TrLineList *self)
{
  GtkListBoxRow *next = find_next_together (self, row);
  guint item = tr_line_row_get_item (row);

  if (next != NULL)
    tr_line_row_focus (TR_LINE_ROW (next), member);
  else if (!tr_line_is_pending (item))
    add_pending (self, get_row_stage (self, GTK_LIST_BOX_ROW (row)), (int) item);
}

static void
row_removed_cb (TrLineRow  *row,
                TrLineList *self)
{
  if (row == self->pending)
    {
      drop_pending (self);
      tr_line_list_refresh (self);
    }
}

static void
connect_row (TrLineList *self,
             GtkWidget  *row)
{
  g_signal_connect_object (row, "line-wanted", G_CALLBACK (line_wanted_cb), self, 0);
  g_signal_connect_object (row, "left", G_CALLBACK (row_left_cb), self, 0);
  g_signal_connect_object (row, "removed", G_CALLBACK (row_removed_cb), self, 0);
}

/* Headers */

static void
header_add_cb (TrStageHeader *header,
               TrLineList    *self)
{
  tr_line_list_add (self, tr_stage_header_get_stage (header), tr_stage_header_get_group (header));
}

static void
add_preferment_cb (GtkWidget  *widget,
                   const char *action_name,
                   GVariant   *parameter)
{
  TrPage *page = get_page (TR_LINE_LIST (widget));
  g_autofree char *added = page != NULL ? tr_page_add_preferment (page, g_variant_get_string (parameter, NULL)) : NULL;

  if (added != NULL)
    tr_line_list_go_to (TR_LINE_LIST (widget), added);
}

static void
header_renamed_cb (TrStageHeader *header,
                   const char    *name,
                   TrLineList    *self)
{
  TrPage *page = get_page (self);

  if (page == NULL || tr_page_get_dough (page) == NULL || tr_page_is_refreshing (page))
    return;

  TrTrial *draft = tr_document_draft (tr_page_get_document (page));
  TrDough *dough = tr_trial_own_dough (draft, (guint) tr_page_get_dough_index (page));
  g_autofree char *undo = g_strdup_printf (_("call the preferment %s"), name);

  tr_lines_rename_group (dough, tr_stage_header_get_group (header), name);
  tr_page_commit (page, draft, undo, NULL, "/lines");
}

static GtkWidget *
new_header (TrLineList *self)
{
  GtkWidget *header = tr_stage_header_new ();

  gtk_widget_set_margin_top (header, 12);
  g_signal_connect_object (header, "add", G_CALLBACK (header_add_cb), self, 0);
  g_signal_connect_object (header, "renamed", G_CALLBACK (header_renamed_cb), self, 0);

  return header;
}

static void
update_header (GtkListBoxRow *row,
               GtkListBoxRow *before,
               gpointer       data)
{
  TrLineList *self = data;

  if (before != NULL && are_together (self, before, row))
    {
      gtk_list_box_row_set_header (row, NULL);
      return;
    }

  TrStage stage = get_row_stage (self, row);
  GtkWidget *header = gtk_list_box_row_get_header (row);

  if (header == NULL)
    {
      header = new_header (self);
      gtk_list_box_row_set_header (row, header);
    }
  tr_stage_header_set (TR_STAGE_HEADER (header), stage, get_row_group (self, row),
                       stage == TR_STAGE_PREFERMENT && get_row_line (self, row) != NULL);
}

/* Showing */

/* Where the line stands that was just made of the pending row: the old rows
 * tell, for they are of the dough that it was added to. -1: nothing pending. */
static int
get_pending_index (TrLineList *self)
{
  if (self->pending == NULL)
    return -1;

  int after = tr_line_pending_after (tr_line_row_get_item (self->pending));

  return after >= 0 && after < (int) self->rows->len ? after + 1 : (int) self->rows->len;
}

static void
match_rows (TrLineList    *self,
            const TrDough *dough)
{
  g_autofree TrLine **old = g_new0 (TrLine *, self->rows->len + 1);

  for (guint i = 0; i < self->rows->len; i++)
    old[i] = tr_line_row_get_shown (g_ptr_array_index (self->rows, i));

  g_autoptr (GArray) match = tr_lines_match (old, self->rows->len, dough);
  g_autofree gboolean *is_kept = g_new0 (gboolean, self->rows->len + 1);
  GPtrArray *rows = g_ptr_array_new ();
  int pending_index = get_pending_index (self);

  for (guint i = 0; i < dough->lines->len; i++)
    {
      int from = g_array_index (match, int, i);
      GtkWidget *row;

      if (from >= 0)
        {
          row = g_ptr_array_index (self->rows, (guint) from);
          is_kept[from] = TRUE;
        }
      else if ((int) i == pending_index && !tr_line_row_is_blank (self->pending))
        /* The line that was typed into it. */
        row = (GtkWidget *) g_steal_pointer (&self->pending);
      else
        {
          row = tr_line_row_new (&self->columns);
          connect_row (self, row);
          gtk_list_box_append (GTK_LIST_BOX (self->list), row);
        }
      tr_line_row_set_item (TR_LINE_ROW (row), i);
      g_ptr_array_add (rows, row);
    }
  for (guint i = 0; i < self->rows->len; i++)
    if (!is_kept[i])
      gtk_list_box_remove (GTK_LIST_BOX (self->list), g_ptr_array_index (self->rows, i));

  g_ptr_array_unref (self->rows);
  self->rows = rows;
}

static guint
place_pending (TrLineList *self,
               TrStage     stage,
               int         line,
               guint       place)
{
  if (self->pending == NULL || tr_line_pending_stage (tr_line_row_get_item (self->pending)) != stage ||
      tr_line_pending_after (tr_line_row_get_item (self->pending)) != line)
    return place;

  tr_line_row_set_place (self->pending, place);

  return place + 1;
}

static void
place_rows (TrLineList    *self,
            const TrDough *dough)
{
  g_autoptr (GArray) order = tr_lines_dup_order (dough);
  gboolean has_rows[TR_N_STAGES] = { FALSE };
  guint next[TR_N_STAGES];

  for (guint stage = 0; stage < TR_N_STAGES; stage++)
    next[stage] = place_pending (self, stage, -1, stage * PLACES_PER_STAGE + 1);
  for (guint i = 0; i < order->len; i++)
    {
      guint index = g_array_index (order, guint, i);
      TrStage stage = tr_dough_get_line (dough, index)->stage;

      tr_line_row_set_place (g_ptr_array_index (self->rows, index), next[stage]++);
      next[stage] = place_pending (self, stage, (int) index, next[stage]);
      has_rows[stage] = TRUE;
    }
  if (self->pending != NULL)
    has_rows[tr_line_pending_stage (tr_line_row_get_item (self->pending))] = TRUE;
  for (guint stage = 0; stage < TR_N_STAGES; stage++)
    gtk_widget_set_visible (self->empty[stage], !has_rows[stage]);
}

static void
refresh_rows (TrLineList           *self,
              const TrDoughFigures *figures,
              const TrBench        *bench)
{
  g_autofree double *rounded = g_new (double, figures->formula.lines->len + 1);

  /* What the bench card says too: the total keeps. */
  tr_formula_round_for_scale (&figures->formula, bench, rounded);
  for (guint i = 0; i < self->rows->len; i++)
    {
      const TrLineFigures *line = &g_array_index (figures->formula.lines, TrLineFigures, i);
      double step_g = tr_line_is_fine (line) ? bench->fine_scale_step_g : bench->scale_step_g;

      tr_line_row_refresh (g_ptr_array_index (self->rows, i), rounded[i], step_g);
    }
  if (self->pending != NULL)
    tr_line_row_refresh (self->pending, NAN, 1);
}

static void
refresh_summary (TrLineList      *self,
                 const TrFormula *formula,
                 const TrReader  *reader)
{
  g_autofree char *flour = tr_words_mass (reader, formula->flour_g);
  g_autofree char *dough = tr_words_mass (reader, formula->dough_g);
  g_autofree char *roll_in = tr_words_mass (reader, formula->roll_in_g);
  g_autofree char *total = tr_words_mass (reader, formula->total_g);
  g_autofree char *share = tr_words_percent (reader, formula->roll_in_percent_of_dough);

  if (formula->roll_in_g > 0)
    tr_words_label_take (self->summary, g_strdup_printf (_("Batch: flour %s, dough %s, roll-in %s (%s of dough), in all %s"),
                                                         flour, dough, roll_in, share, total));
  else
    tr_words_label_take (self->summary, g_strdup_printf (_("Batch: flour %s, in all %s"), flour, total));
}

void
tr_line_list_refresh (TrLineList *self)
{
  g_return_if_fail (TR_IS_LINE_LIST (self));

  TrPage *page = get_page (self);
  const TrDough *dough = page != NULL ? tr_page_get_dough (page) : NULL;
  const TrDoughFigures *figures = page != NULL ? tr_page_get_figures (page) : NULL;

  gtk_widget_set_visible (self->box, dough != NULL);
  if (dough == NULL || figures == NULL)
    return;

  g_autoptr (TrBench) bench = tr_reader_new_bench (tr_page_get_reader (page), figures->bench);

  match_rows (self, dough);
  place_rows (self, dough);
  gtk_list_box_invalidate_sort (GTK_LIST_BOX (self->list));
  gtk_list_box_invalidate_headers (GTK_LIST_BOX (self->list));
  gtk_label_set_text (GTK_LABEL (self->grams_title), tr_words_mass_unit (tr_page_get_reader (page)));
  refresh_rows (self, figures, bench);
  refresh_summary (self, &figures->formula, tr_page_get_reader (page));
}

/* The first one shown; hidden rows of the empty stages stand between. */
static TrLineRow *
find_first_line (TrLineList *self)
{
  GtkListBoxRow *row;

  for (int i = 0; (row = gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), i)) != NULL; i++)
    if (TR_IS_LINE_ROW (row))
      return TR_LINE_ROW (row);

  return NULL;
}

gboolean
tr_line_list_go_to (TrLineList *self,
                    const char *pointer)
{
  g_return_val_if_fail (TR_IS_LINE_LIST (self), FALSE);
  g_return_val_if_fail (pointer != NULL, FALSE);

  TrPage *page = get_page (self);

  if (page == NULL || tr_page_get_dough (page) == NULL)
    return FALSE;
  if (g_str_equal (pointer, "/lines"))
    {
      TrLineRow *first = find_first_line (self);

      if (first != NULL)
        return tr_line_row_focus (first, NULL);
      tr_line_list_add (self, TR_STAGE_DOUGH, NULL);
      return self->pending != NULL;
    }
  if (!g_str_has_prefix (pointer, "/lines/"))
    return FALSE;

  char *end;
  guint64 index = g_ascii_strtoull (pointer + strlen ("/lines/"), &end, 10);

  if (end == pointer + strlen ("/lines/") || index >= self->rows->len)
    return FALSE;

  return tr_line_row_focus (g_ptr_array_index (self->rows, index), *end == '/' ? end + 1 : NULL);
}

/* Building */

static void
tr_line_list_init (TrLineList *self)
{
  self->rows = g_ptr_array_new ();
  tr_line_columns_init (&self->columns);

  self->list = gtk_list_box_new ();
  gtk_widget_add_css_class (self->list, "plain");
  gtk_widget_add_css_class (self->list, "lines");
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (self->list), GTK_SELECTION_NONE);
  gtk_list_box_set_sort_func (GTK_LIST_BOX (self->list), compare_rows, NULL, NULL);
  gtk_list_box_set_header_func (GTK_LIST_BOX (self->list), update_header, self, NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Formula"), -1);
  for (guint stage = 0; stage < TR_N_STAGES; stage++)
    {
      self->empty[stage] = tr_empty_stage_row_new ((TrStage) stage);
      gtk_list_box_append (GTK_LIST_BOX (self->list), self->empty[stage]);
    }

  self->summary = tr_words_label_new (NULL);
  gtk_widget_set_margin_top (self->summary, 12);
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_box_append (GTK_BOX (self->box), tr_line_columns_new_titles (&self->columns, &self->grams_title));
  gtk_box_append (GTK_BOX (self->box), self->list);
  gtk_box_append (GTK_BOX (self->box), self->summary);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

static void
tr_line_list_dispose (GObject *object)
{
  TrLineList *self = TR_LINE_LIST (object);

  g_clear_handle_id (&self->pending_source, g_source_remove);
  self->pending = NULL;
  g_clear_pointer (&self->rows, g_ptr_array_unref);
  if (self->box != NULL)
    gtk_list_box_set_header_func (GTK_LIST_BOX (self->list), NULL, NULL, NULL);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  tr_line_columns_clear (&self->columns);

  G_OBJECT_CLASS (tr_line_list_parent_class)->dispose (object);
}

static void
tr_line_list_class_init (TrLineListClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tr_line_list_dispose;
  gtk_widget_class_install_action (widget_class, "lines.add-preferment", "s", add_preferment_cb);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

GtkWidget *
tr_line_list_new (void)
{
  return g_object_new (TR_TYPE_LINE_LIST, NULL);
}
