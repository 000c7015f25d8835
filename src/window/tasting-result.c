/* tasting-result.c: what a tasting shows, worked out beside the window
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Invariant: `figures` is what `tasting` was worked out from, or is being; a
 * refresh that finds the same figures does nothing.
 */

#include "config.h"

#include "tasting-result.h"

#include <glib/gi18n-lib.h>

#include "../picture/tasting.h"
#include "../words/tasting.h"
#include "picture-view.h"
#include "section.h"

#define PROGRESS_MS 100
#define MOST_FOLLOWERS 5

typedef struct {
  TrFigures *figures;
  GCancellable *cancellable;
  int permille;                  /* atomic */
} Work;

struct _TrTastingResult
{
  GtkWidget parent_instance;

  /* Children */
  GtkWidget *box;

  /* Borrowed References */
  GtkWidget *working, *progress, *gap, *ranks, *ladder, *dots, *sentences;

  /* Owned */
  TrFigures *figures;
  TrTastingFigures *tasting;
  Work *work;                    /* that is going on; the task's */
  GCancellable *cancellable;
  guint progress_source;
};

G_DEFINE_FINAL_TYPE (TrTastingResult, tr_tasting_result, GTK_TYPE_WIDGET)

static TrPage *
get_page (TrTastingResult *self)
{
  TrPage *page = (TrPage *) gtk_widget_get_ancestor (GTK_WIDGET (self), TR_TYPE_PAGE);

  return page != NULL && tr_page_get_document (page) != NULL ? page : NULL;
}

/* Saying *******************************************************************/

static void
clear_box (GtkWidget *box)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (box)) != NULL)
    gtk_box_remove (GTK_BOX (box), child);
}

static void
add_words (GtkWidget  *box,
           const char *css_class,
           char       *text)
{
  GtkWidget *label;

  if (text == NULL)
    return;

  label = tr_words_label_new (css_class);
  tr_words_label_take (label, text);
  gtk_box_append (GTK_BOX (box), label);
}

/* "1  Quay crescents  ·  7.3 of 9 on average, ranks add up to 5" */
static char *
dup_rank (const TrReader         *reader,
          const TrTastingFigures *tasting,
          guint                   place)
{
  guint sample = tasting->order[place];
  g_autofree char *name = tr_words_one_line (tr_trial_get_dough (tasting->trial, tasting->samples[sample])->name);
  g_autofree char *mean = tr_words_number (reader, tasting->mean_score[sample], 1);
  g_autofree char *sum = tr_words_number (reader, tasting->rank_sums[sample], 1);

  return g_strdup_printf (_("%u  %s: %s of 9 on average, ranks add up to %s"), place + 1, name, mean, sum);
}

static void
show_tasting (TrTastingResult *self,
              const TrReader  *reader)
{
  const TrTastingFigures *tasting = self->tasting;
  g_autoptr (GArray) followers = NULL;

  clear_box (self->ranks);
  clear_box (self->sentences);
  if (tasting == NULL)
    {
      tr_words_label_set (self->gap, _("Nobody has scored anything yet."));
      return;
    }

  tr_words_label_take (self->gap, tr_words_tasting_gap (reader, tasting));
  for (guint i = 0; tasting->order != NULL && i < tasting->n_samples; i++)
    add_words (self->ranks, i == 0 ? "heading" : NULL, dup_rank (reader, tasting, i));
  add_words (self->sentences, NULL, tr_words_left_out (tasting));
  add_words (self->sentences, NULL, tr_words_friedman (reader, tasting));
  if (tasting->order == NULL)
    return;

  add_words (self->sentences, NULL, tr_words_predicted (reader, tasting));
  if (tasting->prediction.gap == TR_PREDICTION_NOTHING_MISSING)
    add_words (self->sentences, "dim-label", tr_words_perfect_p (reader, tasting->n_samples));
  followers = tr_tasting_sort_followers (tasting);
  for (guint i = 0; i < MIN (followers->len, MOST_FOLLOWERS); i++)
    add_words (self->sentences, NULL, tr_words_follower (reader, &g_array_index (followers, TrFollower, i)));
  add_words (self->sentences, "dim-label", tr_words_tried (reader, tasting));
}

/* Pictures *****************************************************************/

static TrPicture *
make_ladder (gpointer        data,
             guint           item,
             const TrReader *reader,
             const TrLook   *look,
             double          width,
             double          height)
{
  return tr_rank_ladder_picture_new (((TrTastingResult *) data)->tasting, reader, look, width, height);
}

static TrPicture *
make_dots (gpointer        data,
           guint           item,
           const TrReader *reader,
           const TrLook   *look,
           double          width,
           double          height)
{
  return tr_score_dots_picture_new (((TrTastingResult *) data)->tasting, reader, look, width, height);
}

/* They draw what is kept here, and are told when it is another. */
static void
show_pictures (TrTastingResult *self,
               const TrReader  *reader)
{
  gpointer data = self->tasting != NULL && self->tasting->order != NULL ? self : NULL;

  tr_picture_view_set_data (TR_PICTURE_VIEW (self->ladder), data, NULL, 0, reader);
  tr_picture_view_set_data (TR_PICTURE_VIEW (self->dots), data, NULL, 0, reader);
}

/* Working ******************************************************************/

static void
work_free (gpointer data)
{
  Work *work = data;

  tr_figures_unref (work->figures);
  g_object_unref (work->cancellable);
  g_free (work);
}

static gboolean
is_cancelled (gpointer data)
{
  return g_cancellable_is_cancelled (((Work *) data)->cancellable);
}

static void
progressed (gpointer data,
            double   share)
{
  g_atomic_int_set (&((Work *) data)->permille, (int) (share * 1000));
}

static void
work_in_thread (GTask        *task,
                gpointer      source,
                gpointer      data,
                GCancellable *cancellable)
{
  Work *work = data;
  const TrWatch watch = { is_cancelled, progressed, work };

  g_task_return_pointer (task, tr_tasting_compute (work->figures, &watch), (GDestroyNotify) tr_tasting_figures_free);
}

static void
stop_working (TrTastingResult *self)
{
  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  g_clear_handle_id (&self->progress_source, g_source_remove);
  self->work = NULL;
  if (self->working != NULL)
    gtk_widget_set_visible (self->working, FALSE);
}

static void
worked_cb (GObject      *object,
           GAsyncResult *result,
           gpointer      data)
{
  TrTastingResult *self = TR_TASTING_RESULT (object);
  Work *work = g_task_get_task_data (G_TASK (result));
  TrTastingFigures *tasting = g_task_propagate_pointer (G_TASK (result), NULL);

  TrPage *page = self->box != NULL ? get_page (self) : NULL;

  /* Something else is asked for by now, or nothing at all. */
  if (work != self->work || page == NULL)
    {
      g_clear_pointer (&tasting, tr_tasting_figures_free);
      return;
    }

  /* Nothing is drawn from it while it changes. */
  tr_picture_view_set_data (TR_PICTURE_VIEW (self->ladder), NULL, NULL, 0, tr_page_get_reader (page));
  tr_picture_view_set_data (TR_PICTURE_VIEW (self->dots), NULL, NULL, 0, tr_page_get_reader (page));
  g_clear_pointer (&self->tasting, tr_tasting_figures_free);
  self->tasting = tasting;
  stop_working (self);
  show_tasting (self, tr_page_get_reader (page));
  show_pictures (self, tr_page_get_reader (page));
}

static gboolean
progress_cb (gpointer data)
{
  TrTastingResult *self = data;

  gtk_widget_set_visible (self->working, TRUE);
  gtk_progress_bar_set_fraction (GTK_PROGRESS_BAR (self->progress), CLAMP (g_atomic_int_get (&self->work->permille) / 1000.0, 0, 1));

  return G_SOURCE_CONTINUE;
}

static void
start_working (TrTastingResult *self,
               const TrFigures *figures)
{
  g_autoptr (GTask) task = NULL;
  Work *work = g_new0 (Work, 1);

  stop_working (self);
  self->cancellable = g_cancellable_new ();
  work->figures = tr_figures_ref (figures);
  work->cancellable = g_object_ref (self->cancellable);
  self->work = work;
  task = g_task_new (self, NULL, worked_cb, NULL);
  g_task_set_task_data (task, work, work_free);
  /* What is quick is never seen to work. */
  self->progress_source = g_timeout_add (PROGRESS_MS, progress_cb, self);
  g_task_run_in_thread (task, work_in_thread);
}

static void
stop_clicked_cb (TrTastingResult *self)
{
  stop_working (self);
  g_clear_pointer (&self->figures, tr_figures_unref);
  tr_words_label_set (self->gap, _("Stopped. Show the result again to work it out."));
}

void
tr_tasting_result_refresh (TrTastingResult *self)
{
  g_return_if_fail (TR_IS_TASTING_RESULT (self));

  TrPage *page = get_page (self);

  if (page == NULL)
    return;

  const TrFigures *figures = tr_document_get_figures (tr_page_get_document (page));

  if (self->figures != figures)
    {
      TrFigures *old = self->figures;

      self->figures = tr_figures_ref (figures);
      g_clear_pointer (&old, tr_figures_unref);
      start_working (self, figures);
    }
  else if (self->work == NULL)
    {
      show_tasting (self, tr_page_get_reader (page));
      show_pictures (self, tr_page_get_reader (page));
    }
}

gboolean
tr_tasting_result_is_done (TrTastingResult *self)
{
  g_return_val_if_fail (TR_IS_TASTING_RESULT (self), TRUE);

  return self->work == NULL;
}

static void
tr_tasting_result_dispose (GObject *object)
{
  TrTastingResult *self = TR_TASTING_RESULT (object);

  self->working = NULL;
  stop_working (self);
  g_clear_pointer (&self->figures, tr_figures_unref);
  g_clear_pointer (&self->tasting, tr_tasting_figures_free);
  g_clear_pointer (&self->box, gtk_widget_unparent);

  G_OBJECT_CLASS (tr_tasting_result_parent_class)->dispose (object);
}

static void
tr_tasting_result_class_init (TrTastingResultClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tr_tasting_result_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
tr_tasting_result_init (TrTastingResult *self)
{
  GtkWidget *stop = gtk_button_new_with_label (_("Stop"));

  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  self->working = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  self->progress = gtk_progress_bar_new ();
  gtk_widget_set_hexpand (self->progress, TRUE);
  gtk_widget_set_valign (self->progress, GTK_ALIGN_CENTER);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->progress), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Working out the probabilities"), -1);
  g_signal_connect_object (stop, "clicked", G_CALLBACK (stop_clicked_cb), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (self->working), self->progress);
  gtk_box_append (GTK_BOX (self->working), stop);
  gtk_widget_set_visible (self->working, FALSE);
  self->gap = tr_words_label_new (NULL);
  self->ranks = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->sentences = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_box_append (GTK_BOX (self->box), self->working);
  gtk_box_append (GTK_BOX (self->box), self->gap);
  self->ladder = tr_picture_view_new_for (_("Predicted and tasted"), make_ladder, 16);
  self->dots = tr_picture_view_new_for (_("Every taster’s scores"), make_dots, 16);
  gtk_box_append (GTK_BOX (self->box), self->ranks);
  gtk_box_append (GTK_BOX (self->box), self->ladder);
  gtk_box_append (GTK_BOX (self->box), self->dots);
  gtk_box_append (GTK_BOX (self->box), self->sentences);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

GtkWidget *
tr_tasting_result_new (void)
{
  return g_object_new (TR_TYPE_TASTING_RESULT, NULL);
}
