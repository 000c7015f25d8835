/* log-page.c: what really happened, beside what is written
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Tables with the plan on the left and a field for the real value on the right;
 * what is typed makes the entry, and the last value taken out of it takes the
 * entry away. A step, a rest and a roll-out show their last entry. Cuts and pieces
 * have a row for each weighing and an empty one to go on. What can be learned
 * stands under the numbers it comes from, with a button that uses it.
 */

#include "config.h"

#include "page.h"

#include <glib/gi18n-lib.h>

#include "../calc/rests.h"
#include "../words/planned.h"
#include "learned-offer.h"
#include "log-table.h"
#include "notes-field.h"
#include "section.h"

#define MOST_WEIGHINGS 12

#define TR_TYPE_LOG_PAGE (tr_log_page_get_type ())
G_DECLARE_FINAL_TYPE (TrLogPage, tr_log_page, TR, LOG_PAGE, TrPage)

struct _TrLogPage
{
  TrPage parent_instance;

  /* Borrowed References */
  GtkWidget *scroller;
  GtkWidget *again;
  GtkWidget *shrink, *density, *bake_loss;

  /* Owned */
  TrLogTable steps, rests, sizes, cuts, pieces;
};

G_DEFINE_FINAL_TYPE (TrLogPage, tr_log_page, TR_TYPE_PAGE)

/* Where the values stand ****************************************************/

static TrLog *
get_log (const TrTrial *trial,
         int            dough)
{
  return tr_trial_get_dough (trial, (guint) dough)->log;
}

/* The last entry whose number is `item`. -1: none. */
static int
find_last (const GPtrArray *list,
           gsize            offset,
           guint            item)
{
  for (guint i = list->len; i-- > 0;)
    if (G_STRUCT_MEMBER (int, g_ptr_array_index (list, i), offset) == (int) item)
      return (int) i;

  return -1;
}

static void
date_now (char **at)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();

  g_free (*at);
  *at = g_date_time_format (now, "%Y-%m-%d");
}

/* `add` makes an entry of today, `again` one more of each that has something in its last. */
#define DEFINE_REACH(kind, Type, list, number, n_items, make_new, is_empty)                  \
  static Type *                                                                              \
  add_##kind (GPtrArray *entries,                                                            \
              guint      item)                                                               \
  {                                                                                          \
    Type *entry = make_new;                                                                  \
                                                                                             \
    date_now (&entry->at);                                                                   \
    g_ptr_array_add (entries, entry);                                                        \
                                                                                             \
    return entry;                                                                            \
  }                                                                                          \
                                                                                             \
  static gboolean                                                                            \
  is_##kind##_empty (const Type *entry)                                                      \
  {                                                                                          \
    return (is_empty) && entry->extra == NULL;                                               \
  }                                                                                          \
                                                                                             \
  static guint                                                                               \
  again_##kind (GPtrArray *entries,                                                          \
                gboolean   only_ask)                                                         \
  {                                                                                          \
    guint n = 0;                                                                             \
                                                                                             \
    for (guint item = 0; item < (n_items); item++)                                           \
      {                                                                                      \
        int index = find_last (entries, G_STRUCT_OFFSET (Type, number), item);               \
                                                                                             \
        if (index < 0 || is_##kind##_empty (g_ptr_array_index (entries, index)))             \
          continue;                                                                          \
        if (!only_ask)                                                                       \
          add_##kind (entries, item);                                                        \
        n++;                                                                                 \
      }                                                                                      \
                                                                                             \
    return n;                                                                                \
  }                                                                                          \
                                                                                             \
  static gpointer                                                                            \
  reach_##kind (const TrTrial *trial,                                                        \
                int            dough,                                                        \
                guint          item,                                                         \
                gboolean       make)                                                         \
  {                                                                                          \
    static Type *none = NULL;                                                                \
    GPtrArray *entries = get_log (trial, dough)->list;                                       \
    int index = find_last (entries, G_STRUCT_OFFSET (Type, number), item);                   \
                                                                                             \
    if (index >= 0)                                                                          \
      return g_ptr_array_index (entries, index);                                             \
    if (!make)                                                                               \
      return none != NULL ? none : (none = make_new);                                        \
                                                                                             \
    return add_##kind (entries, item);                                                       \
  }                                                                                          \
                                                                                             \
  /* An entry with no number left is no entry. */                                            \
  static void                                                                                \
  settle_##kind (TrTrial  *draft,                                                            \
                 int       dough,                                                            \
                 guint     item,                                                             \
                 gpointer  holder)                                                           \
  {                                                                                          \
    if (is_##kind##_empty (holder))                                                          \
      g_ptr_array_remove (get_log (draft, dough)->list, holder);                             \
  }

#define IS_NOT(member) (!tr_is_written (entry->member))
DEFINE_REACH (step, TrLoggedStep, steps, id, TR_N_STEPS, tr_logged_step_new ((TrStepId) item),
              IS_NOT (minutes) && IS_NOT (at_c) && IS_NOT (rh_percent))
DEFINE_REACH (rest, TrLoggedRest, rests, turn, TR_MAX_TURNS + 1, tr_logged_rest_new ((int) item),
              IS_NOT (minutes) && IS_NOT (core_c))
DEFINE_REACH (size, TrLoggedSize, sizes, turn, TR_MAX_TURNS + 1, tr_logged_size_new ((int) item),
              IS_NOT (length_mm) && IS_NOT (width_mm) && IS_NOT (thickness_mm) && IS_NOT (relaxed_mm))

#define DEFINE_REACH_BY_PLACE(kind, Type, list)                                              \
  static gpointer                                                                            \
  reach_##kind (const TrTrial *trial,                                                        \
                int            dough,                                                        \
                guint          item,                                                         \
                gboolean       make)                                                         \
  {                                                                                          \
    static Type *none = NULL;                                                                \
    GPtrArray *entries = get_log (trial, dough)->list;                                       \
                                                                                             \
    if (item < entries->len)                                                                 \
      return g_ptr_array_index (entries, item);                                              \
    if (!make)                                                                               \
      return none != NULL ? none : (none = tr_logged_##kind##_new ());                       \
                                                                                             \
    Type *entry = tr_logged_##kind##_new ();                                                 \
                                                                                             \
    date_now (&entry->at);                                                                   \
    g_ptr_array_add (entries, entry);                                                        \
                                                                                             \
    return entry;                                                                            \
  }

DEFINE_REACH_BY_PLACE (cut, TrLoggedCut, cuts)
DEFINE_REACH_BY_PLACE (pieces, TrLoggedPieces, pieces)

/* Of weighings only those at the end: what is emptied between others stays a row to be
 * written in, or the next number typed there would fall into the one below. */
#define DEFINE_SETTLE_THE_END(kind, Type, list, is_empty)                                    \
  static void                                                                                \
  settle_##kind (TrTrial  *draft,                                                            \
                 int       dough,                                                            \
                 guint     item,                                                             \
                 gpointer  holder)                                                           \
  {                                                                                          \
    GPtrArray *entries = get_log (draft, dough)->list;                                       \
                                                                                             \
    while (entries->len > 0)                                                                 \
      {                                                                                      \
        const Type *entry = g_ptr_array_index (entries, entries->len - 1);                   \
                                                                                             \
        if (!(is_empty) || entry->extra != NULL)                                             \
          return;                                                                            \
        g_ptr_array_set_size (entries, (int) entries->len - 1);                              \
      }                                                                                      \
  }

DEFINE_SETTLE_THE_END (cut, TrLoggedCut, cuts, IS_NOT (length_mm) && IS_NOT (width_mm) && IS_NOT (thickness_mm) && IS_NOT (mass_g))
DEFINE_SETTLE_THE_END (pieces, TrLoggedPieces, pieces,
                       entry->count == 0 && IS_NOT (raw_g) && IS_NOT (baked_g) && IS_NOT (raw_height_mm) && IS_NOT (baked_height_mm))

static char *
dup_entry_pointer (const GPtrArray *list,
                   int              index,
                   const char      *name,
                   const char      *member)
{
  return g_strdup_printf ("/log/%s/%u/%s", name, index >= 0 ? (guint) index : list->len, member);
}

#define DEFINE_POINTER(kind, Type, list, number, member)                                     \
  static char *                                                                              \
  dup_##kind##_##member##_pointer (const TrTrial *trial,                                     \
                                   int            dough,                                     \
                                   guint          item)                                      \
  {                                                                                          \
    const GPtrArray *entries = get_log (trial, dough)->list;                                 \
                                                                                             \
    return dup_entry_pointer (entries, find_last (entries, G_STRUCT_OFFSET (Type, number), item), #list, #member); \
  }

DEFINE_POINTER (step, TrLoggedStep, steps, id, minutes)
DEFINE_POINTER (step, TrLoggedStep, steps, id, at_c)
DEFINE_POINTER (step, TrLoggedStep, steps, id, rh_percent)
DEFINE_POINTER (rest, TrLoggedRest, rests, turn, minutes)
DEFINE_POINTER (rest, TrLoggedRest, rests, turn, core_c)
DEFINE_POINTER (size, TrLoggedSize, sizes, turn, length_mm)
DEFINE_POINTER (size, TrLoggedSize, sizes, turn, width_mm)
DEFINE_POINTER (size, TrLoggedSize, sizes, turn, thickness_mm)
DEFINE_POINTER (size, TrLoggedSize, sizes, turn, relaxed_mm)

#define LOGGED(kind, Type, list, member, quantity, label_, undo_, tooltip_)                  \
  { "/log/" #list "/%u/" #member, reach_##kind, G_STRUCT_OFFSET (Type, member), TR_HOLD_NUMBER, TR_QUANTITY_##quantity, \
    label_, undo_, tooltip_, .may_be_empty = TRUE, .empty = "–", .settle = settle_##kind,     \
    .dup_pointer = dup_##kind##_##member##_pointer }
#define WEIGHED(kind, Type, list, member, quantity, label_, tooltip_)                        \
  { "/log/" #list "/%u/" #member, reach_##kind, G_STRUCT_OFFSET (Type, member), TR_HOLD_NUMBER, TR_QUANTITY_##quantity, \
    label_, N_("write what was weighed"), tooltip_, .may_be_empty = TRUE, .empty = "–", .settle = settle_##kind }

static const TrMember step_members[] = {
  LOGGED (step, TrLoggedStep, steps, minutes, MINUTES, N_("Time"), N_("write how long a step took"), N_("How long it really took")),
  LOGGED (step, TrLoggedStep, steps, at_c, TEMPERATURE_C, N_("At"), N_("write how warm a step was"), N_("As a thermometer showed it, not the dial")),
  LOGGED (step, TrLoggedStep, steps, rh_percent, PERCENT, N_("Humidity"), N_("write how humid a step was"), N_("As it was measured")),
};

static const TrMember rest_members[] = {
  LOGGED (rest, TrLoggedRest, rests, minutes, MINUTES, N_("Time"), N_("write how long a rest was"), N_("How long it really was")),
  LOGGED (rest, TrLoggedRest, rests, core_c, TEMPERATURE_C, N_("Core"), N_("write how cold a rest made it"), N_("In the middle of the slab, with a probe")),
};

static const TrMember size_members[] = {
  LOGGED (size, TrLoggedSize, sizes, length_mm, LENGTH_MM, N_("Length"), N_("write what was rolled"), N_("As it was rolled")),
  LOGGED (size, TrLoggedSize, sizes, width_mm, LENGTH_MM, N_("Width"), N_("write what was rolled"), N_("As it was rolled")),
  LOGGED (size, TrLoggedSize, sizes, thickness_mm, LENGTH_MM, N_("Thickness"), N_("write what was rolled"), N_("As it was rolled")),
  LOGGED (size, TrLoggedSize, sizes, relaxed_mm, LENGTH_MM, N_("Relaxed"), N_("write how the sheet shrank"), N_("The sheet's length once it has shrunk")),
};

static const TrMember cut_members[] = {
  WEIGHED (cut, TrLoggedCut, cuts, length_mm, LENGTH_MM, N_("Length"), N_("Of a cut with square corners")),
  WEIGHED (cut, TrLoggedCut, cuts, width_mm, LENGTH_MM, N_("Width"), NULL),
  WEIGHED (cut, TrLoggedCut, cuts, thickness_mm, LENGTH_MM, N_("Thickness"), N_("Measured, not the gap of the rollers")),
  WEIGHED (cut, TrLoggedCut, cuts, mass_g, MASS_G, N_("Mass"), NULL),
};

static const TrMember pieces_members[] = {
  { "/log/pieces/%u/count", reach_pieces, G_STRUCT_OFFSET (TrLoggedPieces, count), TR_HOLD_COUNT, TR_QUANTITY_WHOLE,
    N_("Pieces"), N_("write what was weighed"), N_("How many were weighed together"), .may_be_empty = TRUE, .empty = "1",
    .settle = settle_pieces },
  WEIGHED (pieces, TrLoggedPieces, pieces, raw_g, MASS_G, N_("Raw"), N_("All of them together")),
  WEIGHED (pieces, TrLoggedPieces, pieces, baked_g, MASS_G, N_("Baked"), N_("The same pieces, cooled")),
  WEIGHED (pieces, TrLoggedPieces, pieces, raw_height_mm, LENGTH_MM, N_("Raw height"), N_("Of one, before the proof")),
  WEIGHED (pieces, TrLoggedPieces, pieces, baked_height_mm, LENGTH_MM, N_("Baked height"), N_("Of one")),
};

/* What is shown *************************************************************/

static gboolean
is_step_shown (const TrDough *dough,
               TrStepId       id)
{
  return tr_dough_find_step (dough, id) != NULL || id == TR_STEP_PROOF || id == TR_STEP_BAKE
         || find_last (dough->log->steps, G_STRUCT_OFFSET (TrLoggedStep, id), id) >= 0;
}

static void
show_steps (TrLogPage      *self,
            const TrDough  *dough,
            const TrReader *reader)
{
  for (guint i = 0; i < self->steps.rows->len; i++)
    {
      TrLogRow *row = tr_log_table_get_row (&self->steps, i);
      TrStepId id = (TrStepId) row->item;

      if (is_step_shown (dough, id))
        tr_log_table_show_row (&self->steps, row, g_strdup (tr_words_step (id)), tr_words_planned_step (reader, tr_dough_find_step (dough, id)));
      else
        tr_log_table_show_row (&self->steps, row, NULL, NULL);
    }
}

static char *
dup_rest_name (guint turn)
{
  return turn == 0 ? g_strdup (_("Chill before lock-in")) : g_strdup_printf (_("After turn %u"), turn);
}

static void
show_rests (TrLogPage      *self,
            const TrDough  *dough,
            const TrReader *reader)
{
  gboolean has_any = FALSE;

  for (guint i = 0; i < self->rests.rows->len; i++)
    {
      TrLogRow *row = tr_log_table_get_row (&self->rests, i);
      const TrRest *rest = tr_dough_get_rest (dough, (int) row->item);
      gboolean is_shown = rest != NULL || find_last (dough->log->rests, G_STRUCT_OFFSET (TrLoggedRest, turn), row->item) >= 0;

      has_any |= is_shown;
      tr_log_table_show_row (&self->rests, row, is_shown ? dup_rest_name (row->item) : NULL, tr_words_planned_rest (reader, rest));
    }
  gtk_widget_set_visible (self->rests.section, has_any);
}

static char *
dup_planned_size (const TrDoughFigures *figures,
                  guint                 turn,
                  const TrReader       *reader)
{
  if (turn == 0)
    return figures->has_sheet ? tr_words_size (reader, &figures->sheet.rolled_mm) : NULL;
  if (!figures->has_lamination || turn > figures->lamination.steps->len)
    return NULL;

  return tr_words_size (reader, &g_array_index (figures->lamination.steps, TrTurnFigures, turn - 1).rolled_mm);
}

static void
show_sizes (TrLogPage            *self,
            const TrDoughFigures *figures,
            const TrReader       *reader)
{
  const TrDough *dough = figures->dough;

  for (guint i = 0; i < self->sizes.rows->len; i++)
    {
      TrLogRow *row = tr_log_table_get_row (&self->sizes, i);
      gboolean is_shown = row->item == 0 ? dough->cut != NULL : row->item <= dough->turns->len;

      is_shown |= find_last (dough->log->sizes, G_STRUCT_OFFSET (TrLoggedSize, turn), row->item) >= 0;
      tr_log_table_show_row (&self->sizes, row,
                !is_shown ? NULL : row->item == 0 ? g_strdup (_("Sheet")) : g_strdup_printf (_("Turn %u"), row->item),
                dup_planned_size (figures, row->item, reader));
    }
}

/* As many rows as there are weighings, and one more. */
static void
show_weighings (TrLogTable *table,
                guint       n_written)
{
  guint n = MIN (n_written + 1, MOST_WEIGHINGS);

  while (table->rows->len < MAX (n, n_written))
    tr_log_table_add_row (table, table->rows->len, NULL);
  for (guint i = 0; i < table->rows->len; i++)
    tr_log_table_show_row (table, tr_log_table_get_row (table, i), i < MAX (n, n_written) ? g_strdup_printf (_("Weighing %u"), i + 1) : NULL, NULL);
}

static guint
begin_again (TrLog    *log,
             gboolean  only_ask)
{
  return again_step (log->steps, only_ask) + again_rest (log->rests, only_ask) + again_size (log->sizes, only_ask);
}

static void
again_clicked_cb (TrLogPage *self)
{
  TrPage *page = TR_PAGE (self);
  TrTrial *draft;

  if (tr_page_get_dough (page) == NULL)
    return;

  draft = tr_document_draft (tr_page_get_document (page));
  begin_again (tr_trial_own_dough (draft, (guint) tr_page_get_dough_index (page))->log, FALSE);
  tr_page_commit (page, draft, _("log another bake"), NULL, "/log/steps");
}

static void
tr_log_page_refresh (TrPage *page)
{
  TrLogPage *self = TR_LOG_PAGE (page);
  const TrDoughFigures *figures = tr_page_get_figures (page);
  const TrReader *reader = tr_page_get_reader (page);
  TrLogTable *const tables[] = { &self->steps, &self->rests, &self->sizes, &self->cuts, &self->pieces };

  gtk_widget_set_visible (self->scroller, figures != NULL);
  if (figures == NULL)
    return;

  for (guint i = 0; i < G_N_ELEMENTS (tables); i++)
    tr_log_table_show_titles (tables[i], reader);
  show_steps (self, figures->dough, reader);
  show_rests (self, figures->dough, reader);
  show_sizes (self, figures, reader);
  show_weighings (&self->cuts, figures->dough->log->cuts->len);
  show_weighings (&self->pieces, figures->dough->log->pieces->len);
  gtk_widget_set_visible (self->again, begin_again (figures->dough->log, TRUE) > 0);
  tr_learned_offer_refresh (TR_LEARNED_OFFER (self->shrink));
  tr_learned_offer_refresh (TR_LEARNED_OFFER (self->density));
  tr_learned_offer_refresh (TR_LEARNED_OFFER (self->bake_loss));
  tr_fields_refresh (self->scroller);
}

static gboolean
tr_log_page_go_to (TrPage     *page,
                   const char *pointer)
{
  return g_str_has_prefix (pointer, "/log") && !g_str_has_prefix (pointer, "/log/mixes")
         && tr_fields_go_to (TR_LOG_PAGE (page)->scroller, pointer);
}

/* Building ******************************************************************/

static void
add_step_rows (TrLogTable *table)
{
  static const struct { TrStepId id; gboolean has[G_N_ELEMENTS (step_members)]; } steps[] = {
    { TR_STEP_PREFERMENT_MIX, { TRUE, TRUE, FALSE } }, { TR_STEP_RIPEN, { TRUE, TRUE, FALSE } },
    { TR_STEP_MIX, { TRUE, TRUE, FALSE } }, { TR_STEP_BULK, { TRUE, TRUE, FALSE } }, { TR_STEP_CHILL, { TRUE, TRUE, FALSE } },
    { TR_STEP_FAT_BLOCK, { TRUE, TRUE, FALSE } }, { TR_STEP_LOCK_IN, { TRUE, FALSE, FALSE } },
    { TR_STEP_ROLL_OUT, { TRUE, FALSE, FALSE } }, { TR_STEP_CUT, { TRUE, FALSE, FALSE } }, { TR_STEP_SHAPE, { TRUE, FALSE, FALSE } },
    { TR_STEP_PROOF, { TRUE, TRUE, TRUE } }, { TR_STEP_FINISH, { TRUE, FALSE, FALSE } },
    { TR_STEP_BAKE, { TRUE, TRUE, TRUE } }, { TR_STEP_COOL, { TRUE, FALSE, FALSE } },
  };

  for (guint i = 0; i < G_N_ELEMENTS (steps); i++)
    tr_log_table_add_row (table, steps[i].id, steps[i].has);
}

static void
add_turn_rows (TrLogPage *self)
{
  static const gboolean of_a_turn[] = { TRUE, TRUE, TRUE, FALSE };

  for (guint i = 0; i <= TR_MAX_TURNS; i++)
    tr_log_table_add_row (&self->rests, i, NULL);
  for (guint i = 1; i <= TR_MAX_TURNS; i++)
    tr_log_table_add_row (&self->sizes, i, of_a_turn);
  tr_log_table_add_row (&self->sizes, 0, NULL);
}

static gpointer
reach_log (const TrTrial *trial,
           int            dough,
           guint          item,
           gboolean       make)
{
  return get_log (trial, dough);
}

static const TrMember notes_member = {
  "/log/notes", reach_log, G_STRUCT_OFFSET (TrLog, notes), TR_HOLD_TEXT, TR_QUANTITY_NUMBER,
  N_("What else happened"), N_("change the notes of the log"), .may_be_empty = TRUE,
};

static GtkWidget *
append (GtkWidget *section,
        GtkWidget *child)
{
  gtk_box_append (GTK_BOX (section), child);

  return child;
}

static void
tr_log_page_init (TrLogPage *self)
{
  GtkWidget *column = tr_column_new (&self->scroller), *section;

  section = tr_column_add_section (column, _("Steps as they went"));
  tr_log_table_init (&self->steps, section, step_members, G_N_ELEMENTS (step_members), TRUE);
  section = tr_column_add_section (column, _("Rests as they were"));
  tr_log_table_init (&self->rests, section, rest_members, G_N_ELEMENTS (rest_members), TRUE);
  section = tr_column_add_section (column, _("Rolled to"));
  tr_log_table_init (&self->sizes, section, size_members, G_N_ELEMENTS (size_members), TRUE);
  self->shrink = append (section, tr_learned_offer_new (TR_LEARNED_SHRINK));
  section = tr_column_add_section (column, _("Weighed cuts of the sheet"));
  tr_log_table_init (&self->cuts, section, cut_members, G_N_ELEMENTS (cut_members), FALSE);
  self->density = append (section, tr_learned_offer_new (TR_LEARNED_DENSITY));
  section = tr_column_add_section (column, _("Pieces, raw and baked"));
  tr_log_table_init (&self->pieces, section, pieces_members, G_N_ELEMENTS (pieces_members), FALSE);
  self->bake_loss = append (section, tr_learned_offer_new (TR_LEARNED_BAKE_LOSS));
  section = tr_column_add_section (column, NULL);
  gtk_box_append (GTK_BOX (section), tr_notes_field_new (&notes_member));
  self->again = gtk_button_new_with_label (_("Log another bake"));
  gtk_widget_set_halign (self->again, GTK_ALIGN_START);
  gtk_widget_set_tooltip_text (self->again, _("Steps, rests and sizes are empty again; what was written of earlier bakes stays in the file"));
  g_signal_connect_object (self->again, "clicked", G_CALLBACK (again_clicked_cb), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (section), self->again);
  add_step_rows (&self->steps);
  add_turn_rows (self);
  tr_page_set_child (TR_PAGE (self), self->scroller);
}

static void
tr_log_page_finalize (GObject *object)
{
  TrLogPage *self = TR_LOG_PAGE (object);
  TrLogTable *const tables[] = { &self->steps, &self->rests, &self->sizes, &self->cuts, &self->pieces };

  for (guint i = 0; i < G_N_ELEMENTS (tables); i++)
    tr_log_table_clear (tables[i]);

  G_OBJECT_CLASS (tr_log_page_parent_class)->finalize (object);
}

static void
tr_log_page_class_init (TrLogPageClass *klass)
{
  TrPageClass *page_class = TR_PAGE_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = tr_log_page_finalize;
  page_class->refresh = tr_log_page_refresh;
  page_class->go_to = tr_log_page_go_to;
}

GtkWidget *
tr_log_page_new (void)
{
  return g_object_new (TR_TYPE_LOG_PAGE, NULL);
}
