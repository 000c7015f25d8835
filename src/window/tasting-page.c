/* tasting-page.c: samples under codes, tasters, scores, and what comes of them
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Whoever scores must not see which sample is which: samples go by their codes,
 * and the key and the result stay covered until they are asked for. They are
 * covered again when the page is left.
 */

#include "config.h"

#include "page.h"

#include <glib/gi18n-lib.h>

#include "../calc/scores.h"
#include "../calc/serving.h"
#include "../words/tasting.h"
#include "actions.h"
#include "learn.h"
#include "score-table.h"
#include "section.h"
#include "tasters.h"
#include "tasting-result.h"

#define TR_TYPE_TASTING_PAGE (tr_tasting_page_get_type ())
G_DECLARE_FINAL_TYPE (TrTastingPage, tr_tasting_page, TR, TASTING_PAGE, TrPage)

struct _TrTastingPage
{
  TrPage parent_instance;

  /* Borrowed References */
  GtkWidget *scroller;
  GtkWidget *allergens, *ages, *samples, *codes, *key;
  GtkWidget *tasters;
  GtkWidget *scoring, *taster, *next, *table;
  GtkWidget *reveal, *covered, *result, *learn;

  /* Owned */
  GPtrArray *ticks;              /* GtkCheckButton, a dough each */

  guint is_showing : 1;
};

G_DEFINE_FINAL_TYPE (TrTastingPage, tr_tasting_page, TR_TYPE_PAGE)

static const TrTrial *
get_trial (TrTastingPage *self)
{
  TrDocument *document = tr_page_get_document (TR_PAGE (self));

  return document != NULL ? tr_document_get_trial (document) : NULL;
}

static gboolean
is_sample (const TrTrial *trial,
           const TrDough *dough)
{
  return trial->tasting != NULL && tr_tasting_get_code (trial->tasting, dough->id) != 0;
}

/* Asking first **************************************************************/

/* When it was baked, as the log has it; NULL: not logged. */
static const char *
get_baked_at (const TrDough *dough)
{
  for (guint i = dough->log->steps->len; i-- > 0;)
    {
      const TrLoggedStep *step = g_ptr_array_index (dough->log->steps, i);

      if (step->id == TR_STEP_BAKE && step->at != NULL && *step->at != '\0')
        return step->at;
    }

  return NULL;
}

/* Samples of different age are no fair comparison. */
static char *
dup_ages (const TrTrial *trial)
{
  const char *first = NULL;
  const TrDough *of_first = NULL;

  for (guint i = 0; i < trial->doughs->len; i++)
    {
      const TrDough *dough = tr_trial_get_dough (trial, i);
      const char *at = is_sample (trial, dough) ? get_baked_at (dough) : NULL;

      if (at == NULL)
        continue;
      if (first != NULL && !g_str_equal (first, at))
        return g_strdup_printf (_("⚠ Not of one age: %s was baked %s, %s %s. The older one is judged for its age too, so that they "
                                  "cannot be compared fairly."), of_first->name, first, dough->name, at);
      first = at;
      of_first = dough;
    }

  return NULL;
}

/* Samples *******************************************************************/

static void
deal_again (TrTasting *tasting)
{
  g_autofree const char **samples = g_new0 (const char *, tasting->codes->len + 1);
  g_autoptr (GRand) rand = g_rand_new ();

  for (guint i = 0; i < tasting->codes->len; i++)
    samples[i] = ((const TrCode *) g_ptr_array_index (tasting->codes, i))->dough;
  tr_serving_deal_orders (tasting, samples, rand);
}

/* New codes for those doughs, and orders for them. */
static void
deal (TrTastingPage *self,
      GPtrArray     *doughs,
      const char    *label)
{
  TrPage *page = TR_PAGE (self);
  TrTrial *draft = tr_document_draft (tr_page_get_document (page));
  TrTasting *tasting = tr_trial_need_tasting (draft);
  g_autoptr (GRand) rand = g_rand_new ();

  g_ptr_array_add (doughs, NULL);
  tr_serving_deal_codes (tasting, (const char *const *) doughs->pdata, rand);
  deal_again (tasting);
  tr_page_commit (page, draft, label, NULL, "/tasting/codes");
}

static GPtrArray *
list_ticked (TrTastingPage *self,
             const TrTrial *trial)
{
  GPtrArray *doughs = g_ptr_array_new ();

  for (guint i = 0; i < trial->doughs->len && i < self->ticks->len; i++)
    if (gtk_check_button_get_active (g_ptr_array_index (self->ticks, i)))
      g_ptr_array_add (doughs, tr_trial_get_dough (trial, i)->id);

  return doughs;
}

static void
codes_clicked_cb (TrTastingPage *self)
{
  const TrTrial *trial = get_trial (self);
  g_autoptr (GPtrArray) doughs = NULL;

  if (trial == NULL)
    return;

  doughs = list_ticked (self, trial);
  if (doughs->len == 0)
    for (guint i = 0; i < trial->doughs->len; i++)
      g_ptr_array_add (doughs, tr_trial_get_dough (trial, i)->id);
  deal (self, doughs, _("give new codes"));
}

/* A sample less keeps the others' codes; one more gets a code of its own. */
static void
ticked_cb (GtkCheckButton *tick,
           TrTastingPage  *self)
{
  const TrTrial *trial = get_trial (self);
  TrPage *page = TR_PAGE (self);
  guint index;

  if (self->is_showing || trial == NULL || !g_ptr_array_find (self->ticks, tick, &index) || index >= trial->doughs->len)
    return;

  const char *id = tr_trial_get_dough (trial, index)->id;
  TrTrial *draft = tr_document_draft (tr_page_get_document (page));
  TrTasting *tasting = tr_trial_need_tasting (draft);

  if (gtk_check_button_get_active (tick))
    {
      g_autoptr (GRand) rand = g_rand_new ();

      tr_serving_add_code (tasting, id, rand);
    }
  else
    tr_tasting_remove_code (tasting, id);
  if (!tr_tasting_has_marks (tasting))
    deal_again (tasting);
  tr_page_commit (page, draft, gtk_check_button_get_active (tick) ? _("take a dough into the tasting") : _("take a dough out of the tasting"),
                  NULL, "/tasting/codes");
}

static char *
dup_sample_label (TrTastingPage *self,
                  const TrTrial *trial,
                  guint          index)
{
  const TrDough *dough = tr_trial_get_dough (trial, index);
  int code = trial->tasting != NULL ? tr_tasting_get_code (trial->tasting, dough->id) : 0;
  g_autofree char *name = tr_words_one_line (dough->name);

  if (code != 0 && gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (self->key)))
    return g_strdup_printf ("%s  ·  %03d", name, code);

  return g_steal_pointer (&name);
}

static void
show_samples (TrTastingPage *self,
              const TrTrial *trial)
{
  gboolean has_codes = trial->tasting != NULL && trial->tasting->codes->len > 0;

  while (self->ticks->len > trial->doughs->len)
    {
      gtk_widget_unparent (g_ptr_array_index (self->ticks, self->ticks->len - 1));
      g_ptr_array_set_size (self->ticks, (int) self->ticks->len - 1);
    }
  while (self->ticks->len < trial->doughs->len)
    {
      GtkWidget *tick = gtk_check_button_new ();

      g_signal_connect_object (tick, "toggled", G_CALLBACK (ticked_cb), self, 0);
      tr_form_add (self->samples, tick);
      g_ptr_array_add (self->ticks, tick);
    }
  for (guint i = 0; i < self->ticks->len; i++)
    {
      g_autofree char *label = dup_sample_label (self, trial, i);

      gtk_check_button_set_label (g_ptr_array_index (self->ticks, i), label);
      gtk_check_button_set_active (g_ptr_array_index (self->ticks, i), is_sample (trial, tr_trial_get_dough (trial, i)));
    }
  gtk_button_set_label (GTK_BUTTON (self->codes), has_codes ? _("Give new codes") : _("Give codes to all"));
  gtk_widget_set_visible (self->key, has_codes);
}

static void
key_toggled_cb (TrTastingPage *self)
{
  const TrTrial *trial = get_trial (self);

  self->is_showing = TRUE;
  if (trial != NULL)
    show_samples (self, trial);
  self->is_showing = FALSE;
}

/* Scoring *******************************************************************/

static void
taster_chosen_cb (TrTastingPage *self)
{
  const TrTrial *trial = get_trial (self);
  guint index = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->taster));

  if (self->is_showing || trial == NULL || trial->tasting == NULL || index >= trial->tasting->tasters->len)
    return;

  tr_score_table_set_taster (TR_SCORE_TABLE (self->table), ((const TrTaster *) g_ptr_array_index (trial->tasting->tasters, index))->id);
}

static void
next_clicked_cb (TrTastingPage *self)
{
  guint n = g_list_model_get_n_items (gtk_drop_down_get_model (GTK_DROP_DOWN (self->taster)));
  guint index = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->taster));

  if (n > 0)
    gtk_drop_down_set_selected (GTK_DROP_DOWN (self->taster), (index + 1) % n);
  tr_score_table_focus (TR_SCORE_TABLE (self->table));
}

/* The names as they are now; who was chosen stays so. */
static void
show_tasters (TrTastingPage *self,
              const TrTrial *trial)
{
  guint n = trial->tasting != NULL ? trial->tasting->tasters->len : 0;
  guint chosen = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->taster));
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);

  for (guint i = 0; i < n; i++)
    {
      const TrTaster *taster = g_ptr_array_index (trial->tasting->tasters, i);
      g_autofree char *name = tr_words_one_line (taster->name != NULL && *taster->name != '\0' ? taster->name : taster->id);

      gtk_string_list_append (names, name);
    }
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->taster), G_LIST_MODEL (names));
  tr_section_set_shown (self->scoring, n > 0);
  if (n == 0)
    return;

  chosen = chosen < n ? chosen : 0;
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->taster), chosen);
  tr_score_table_set_taster (TR_SCORE_TABLE (self->table), ((const TrTaster *) g_ptr_array_index (trial->tasting->tasters, chosen))->id);
}

/* Result ********************************************************************/

static void
show_result (TrTastingPage *self)
{
  gboolean is_shown = gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (self->reveal));

  gtk_widget_set_visible (self->result, is_shown);
  gtk_widget_set_visible (self->learn, is_shown);
  gtk_widget_set_visible (self->covered, !is_shown);
  gtk_button_set_label (GTK_BUTTON (self->reveal), is_shown ? _("Cover the result") : _("Show the result"));
  if (!is_shown)
    return;

  tr_tasting_result_refresh (TR_TASTING_RESULT (self->result));
  tr_page_follow (TR_PAGE (self->learn), TR_PAGE (self));
}

static void
tr_tasting_page_refresh (TrPage *page)
{
  TrTastingPage *self = TR_TASTING_PAGE (page);
  const TrTrial *trial = get_trial (self);

  gtk_widget_set_visible (self->scroller, trial != NULL);
  if (trial == NULL)
    return;

  self->is_showing = TRUE;
  tr_words_label_take (self->allergens, tr_words_tasting_allergens (tr_document_get_figures (tr_page_get_document (page))));
  tr_words_label_take (self->ages, dup_ages (trial));
  show_samples (self, trial);
  tr_tasters_refresh (TR_TASTERS (self->tasters));
  show_tasters (self, trial);
  tr_score_table_refresh (TR_SCORE_TABLE (self->table));
  self->is_showing = FALSE;
  show_result (self);
}

static gboolean
tr_tasting_page_go_to (TrPage     *page,
                       const char *pointer)
{
  TrTastingPage *self = TR_TASTING_PAGE (page);

  if (!g_str_has_prefix (pointer, "/tasting"))
    return FALSE;
  if (tr_fields_go_to (self->scroller, pointer))
    return TRUE;
  if (g_str_has_prefix (pointer, "/tasting/scores") && tr_score_table_focus (TR_SCORE_TABLE (self->table)))
    return TRUE;

  return gtk_widget_child_focus (self->tasters, GTK_DIR_TAB_FORWARD);
}

/* Covered again for whoever comes next. */
static void
tr_tasting_page_unmap (GtkWidget *widget)
{
  TrTastingPage *self = TR_TASTING_PAGE (widget);

  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->key), FALSE);
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->reveal), FALSE);

  GTK_WIDGET_CLASS (tr_tasting_page_parent_class)->unmap (widget);
}

/* Building ******************************************************************/

static void
add_button (GtkWidget  *row,
            const char *label,
            const char *action)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  tr_actions_set_up_button (button, action);
  gtk_box_append (GTK_BOX (row), button);
}

/* One paper: to a file, and beside that to a printer. */
static GtkWidget *
new_paper_buttons (const char *export_action,
                   const char *print_action)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);

  gtk_widget_add_css_class (row, "linked");
  add_button (row, tr_action_get_label (tr_actions_find (export_action)), export_action);
  add_button (row, _("Print…"), print_action);

  return row;
}

static void
build_samples (TrTastingPage *self,
               GtkWidget     *column)
{
  GtkWidget *section = tr_column_add_section (column, _("Samples")), *buttons = tr_fields_row_new ();
  GtkWidget *question = tr_words_label_new ("heading");

  tr_words_label_take (question, tr_words_tasting_question ());
  self->allergens = tr_words_label_new (NULL);
  self->ages = tr_words_label_new ("error");
  self->samples = tr_fields_row_new ();
  self->codes = gtk_button_new_with_label (_("Give codes to all"));
  self->key = gtk_toggle_button_new_with_label (_("Show which is which"));
  gtk_widget_set_tooltip_text (self->codes, _("Three random digits each, and new serving orders. Sheets that are printed are then out of date."));
  gtk_widget_set_visible (self->key, FALSE);
  g_signal_connect_object (self->codes, "clicked", G_CALLBACK (codes_clicked_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->key, "toggled", G_CALLBACK (key_toggled_cb), self, G_CONNECT_SWAPPED);
  tr_form_add (buttons, self->codes);
  tr_form_add (buttons, self->key);
  tr_form_add (buttons, new_paper_buttons ("win.export-score-sheets", "win.print-score-sheets"));
  tr_form_add (buttons, new_paper_buttons ("win.export-code-labels", "win.print-code-labels"));
  tr_form_add (buttons, new_paper_buttons ("win.export-tasting-key", "win.print-tasting-key"));
  gtk_box_append (GTK_BOX (section), question);
  gtk_box_append (GTK_BOX (section), self->allergens);
  gtk_box_append (GTK_BOX (section), self->samples);
  gtk_box_append (GTK_BOX (section), self->ages);
  gtk_box_append (GTK_BOX (section), buttons);
}

static void
build_scoring (TrTastingPage *self,
               GtkWidget     *column)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12), *hint = tr_words_label_new ("dim-label");

  self->scoring = tr_column_add_section (column, _("Scores"));
  self->taster = gtk_drop_down_new (NULL, NULL);
  self->next = gtk_button_new_with_label (_("Next taster"));
  self->table = tr_score_table_new ();
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->taster), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Taster"), -1);
  tr_words_label_set (hint, _("Look, layers and eating from 1 to 9, then salt, sweetness and bake from −2 (too little) over 0 (just right) to +2. "
                              "A mark goes on to the next field by itself."));
  g_signal_connect_object (self->taster, "notify::selected", G_CALLBACK (taster_chosen_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->next, "clicked", G_CALLBACK (next_clicked_cb), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (head), self->taster);
  gtk_box_append (GTK_BOX (head), self->next);
  gtk_box_append (GTK_BOX (self->scoring), head);
  gtk_box_append (GTK_BOX (self->scoring), self->table);
  gtk_box_append (GTK_BOX (self->scoring), hint);
}

static void
build_result (TrTastingPage *self,
              GtkWidget     *column)
{
  GtkWidget *section = tr_column_add_section (column, _("Result")), *buttons = tr_fields_row_new ();

  self->reveal = gtk_toggle_button_new_with_label (_("Show the result"));
  self->covered = tr_words_label_new ("dim-label");
  tr_words_label_set (self->covered, _("Covered, so that nobody who still tastes sees it."));
  self->result = tr_tasting_result_new ();
  self->learn = tr_learn_new ();
  gtk_widget_set_margin_top (self->learn, 18);
  tr_form_add (buttons, self->reveal);
  tr_form_add (buttons, new_paper_buttons ("win.export-tasting-result", "win.print-tasting-result"));
  gtk_widget_set_visible (self->result, FALSE);
  gtk_widget_set_visible (self->learn, FALSE);
  g_signal_connect_object (self->reveal, "toggled", G_CALLBACK (show_result), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (section), buttons);
  gtk_box_append (GTK_BOX (section), self->covered);
  gtk_box_append (GTK_BOX (section), self->result);
  gtk_box_append (GTK_BOX (section), self->learn);
}

static void
tr_tasting_page_init (TrTastingPage *self)
{
  GtkWidget *column = tr_column_new (&self->scroller), *section;

  self->ticks = g_ptr_array_new ();
  build_samples (self, column);
  section = tr_column_add_section (column, _("Tasters"));
  self->tasters = tr_tasters_new ();
  gtk_box_append (GTK_BOX (section), self->tasters);
  build_scoring (self, column);
  build_result (self, column);
  tr_page_set_child (TR_PAGE (self), self->scroller);
}

static void
tr_tasting_page_finalize (GObject *object)
{
  g_ptr_array_unref (TR_TASTING_PAGE (object)->ticks);

  G_OBJECT_CLASS (tr_tasting_page_parent_class)->finalize (object);
}

static void
tr_tasting_page_class_init (TrTastingPageClass *klass)
{
  TrPageClass *page_class = TR_PAGE_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = tr_tasting_page_finalize;
  GTK_WIDGET_CLASS (klass)->unmap = tr_tasting_page_unmap;
  page_class->refresh = tr_tasting_page_refresh;
  page_class->go_to = tr_tasting_page_go_to;
}

GtkWidget *
tr_tasting_page_new (void)
{
  return g_object_new (TR_TYPE_TASTING_PAGE, NULL);
}
