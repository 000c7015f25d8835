/* learn.c: what to change next, what was changed, and where a dough comes from
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "learn.h"

#include <glib/gi18n-lib.h>

#include "../calc/branch.h"
#include "../calc/causes.h"
#include "../picture/lineage.h"
#include "../words/difference.h"
#include "actions.h"
#include "cause-list.h"
#include "picture-view.h"
#include "section.h"

#define LINEAGE_LINES 8.0

struct _TrLearn
{
  TrPage parent_instance;

  /* Borrowed References */
  GtkWidget *hint, *causes;
  GtkWidget *changed, *from, *written, *so, *follows;   /* a section, two lists and what heads them */
  GtkWidget *lineage, *picture;

  /* Owned References */
  TrTrial *drawn;                /* whose doughs the picture shows; NULL: none */

  /* State */
  int drawn_index;
  TrReader drawn_reader;
};

G_DEFINE_FINAL_TYPE (TrLearn, tr_learn, TR_TYPE_PAGE)

/* Causes *******************************************************************/

static guint
count_tasters (const TrTasting *tasting,
               const char      *dough)
{
  guint n = 0;

  for (guint i = 0; tasting != NULL && i < tasting->scores->len; i++)
    {
      const TrScore *score = g_ptr_array_index (tasting->scores, i);

      if (g_strcmp0 (score->dough, dough) == 0 && !tr_score_is_empty (score))
        n++;
    }

  return n;
}

static void
show_hint (TrLearn       *self,
           const TrDough *dough)
{
  const TrTrial *trial = tr_document_get_trial (tr_page_get_document (TR_PAGE (self)));
  g_autoptr (GArray) complaints = tr_complaints_list (trial->tasting, dough->id);
  g_autofree char *name = tr_words_one_line (dough->name);

  if (complaints->len > 0)
    tr_words_label_take (self->hint, g_strdup_printf (_("What the tasters found in %s, and which of its own numbers points there. "
                                                        "A hint, not a verdict. A button makes one change in a new dough."), name));
  else if (count_tasters (trial->tasting, dough->id) > 0)
    tr_words_label_take (self->hint, g_strdup_printf (_("Nobody named a fault of %s or found its balance off."), name));
  else
    tr_words_label_take (self->hint, g_strdup_printf (_("Nobody has tasted %s yet. With faults and balance marks on the score sheets "
                                                        "the likely causes stand here, each with its number."), name));
}

/* Differences **************************************************************/

/* A line each; none: hidden, with its heading. */
static void
show_texts (GtkWidget *label,
            GtkWidget *heading,
            GPtrArray *texts)
{
  g_autofree char *lines = NULL;

  g_ptr_array_add (texts, NULL);
  lines = g_strjoinv ("\n", (char **) texts->pdata);
  tr_words_label_set (label, lines);
  gtk_widget_set_visible (heading, *lines != '\0');
}

static GPtrArray *
list_differences (const TrReader *reader,
                  const TrTrial  *trial,
                  guint           was,
                  guint           is)
{
  g_autoptr (GPtrArray) differences = tr_dough_differences (tr_trial_get_dough (trial, was), tr_trial_get_dough (trial, is));
  GPtrArray *texts = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < differences->len; i++)
    g_ptr_array_add (texts, tr_words_difference (reader, trial->pantry, differences->pdata[i]));

  return texts;
}

static void
show_differences (TrLearn *self,
                  guint    index)
{
  TrDocument *document = tr_page_get_document (TR_PAGE (self));
  const TrReader *reader = tr_page_get_reader (TR_PAGE (self));
  const TrTrial *trial = tr_document_get_trial (document);
  const TrFigures *figures = tr_document_get_figures (document);
  int parent = tr_trial_find_parent (trial, index);

  tr_section_set_shown (self->changed, parent >= 0);
  if (parent < 0)
    return;

  g_autoptr (GPtrArray) written = list_differences (reader, trial, (guint) parent, index);
  g_autoptr (GPtrArray) follows = tr_words_figure_differences (reader, tr_figures_get_dough (figures, (guint) parent),
                                                               tr_figures_get_dough (figures, index));
  g_autofree char *letter = tr_words_letter ((guint) parent);
  g_autofree char *name = tr_words_one_line (tr_trial_get_dough (trial, (guint) parent)->name);

  tr_words_label_take (self->from, g_strdup_printf (written->len > 0 ? _("It comes from %s, %s. Written otherwise:")
                                                                     : _("It comes from %s, %s; nothing is written otherwise yet."),
                                                    letter, name));
  show_texts (self->written, self->from, written);
  gtk_widget_set_visible (self->from, TRUE);
  show_texts (self->follows, self->so, follows);
}

/* Lineage ******************************************************************/

typedef struct { TrTrial *trial; int current; gboolean is_mirrored; } Shown;

static void
shown_free (gpointer data)
{
  Shown *shown = data;

  tr_trial_unref (shown->trial);
  g_free (shown);
}

static TrPicture *
make_picture (gpointer        data,
              guint           item,
              const TrReader *reader,
              const TrLook   *look,
              double          width,
              double          height)
{
  const Shown *shown = data;

  return tr_lineage_picture_new (shown->trial, shown->current, shown->is_mirrored, reader, look, width, height);
}

static gboolean
has_lineage (const TrTrial *trial)
{
  for (guint i = 0; i < trial->doughs->len; i++)
    if (tr_trial_find_parent (trial, i) >= 0)
      return TRUE;

  return FALSE;
}

/* Marks are typed as fast as they are read aloud, and change no dough. */
static gboolean
is_drawn (TrLearn       *self,
          const TrTrial *trial,
          int            index)
{
  if (self->drawn == NULL || self->drawn_index != index || self->drawn->doughs->len != trial->doughs->len
      || self->drawn->pantry != trial->pantry
      || !tr_reader_equal (&self->drawn_reader, tr_page_get_reader (TR_PAGE (self))))
    return FALSE;

  for (guint i = 0; i < trial->doughs->len; i++)
    if (tr_trial_get_dough (self->drawn, i) != tr_trial_get_dough (trial, i))
      return FALSE;

  return TRUE;
}

static void
show_lineage (TrLearn       *self,
              const TrTrial *trial,
              int            index)
{
  TrPictureView *view = TR_PICTURE_VIEW (self->picture);
  Shown *shown;

  if (is_drawn (self, trial, index))
    return;

  g_clear_pointer (&self->drawn, tr_trial_unref);
  self->drawn = tr_trial_ref (trial);
  self->drawn_index = index;
  self->drawn_reader = *tr_page_get_reader (TR_PAGE (self));
  tr_section_set_shown (self->lineage, has_lineage (trial));
  if (!has_lineage (trial))
    {
      tr_picture_view_set_data (view, NULL, NULL, 0, tr_page_get_reader (TR_PAGE (self)));
      return;
    }

  shown = g_new0 (Shown, 1);
  shown->trial = tr_trial_ref (trial);
  shown->current = index;
  shown->is_mirrored = gtk_widget_get_direction (self->picture) == GTK_TEXT_DIR_RTL;
  tr_picture_view_set_lines (view, tr_lineage_picture_get_lines (trial));
  tr_picture_view_set_data (view, shown, shown_free, 0, tr_page_get_reader (TR_PAGE (self)));
  tr_picture_view_set_selected (view, &(TrHit) { TR_PART_OF_POINT, index });
}

static void
show_dough (TrLearn *self,
            int      index)
{
  const TrTrial *trial = tr_document_get_trial (tr_page_get_document (TR_PAGE (self)));

  if (index >= 0 && (guint) index < trial->doughs->len)
    gtk_widget_activate_action (GTK_WIDGET (self), "win.show-dough", "s", tr_trial_get_dough (trial, (guint) index)->id);
}

static void
picture_pressed_cb (TrPictureView *view,
                    const TrHit   *hit,
                    int            n_press,
                    TrLearn       *self)
{
  if (tr_page_get_document (TR_PAGE (self)) != NULL && hit->part == TR_PART_OF_POINT)
    show_dough (self, hit->index);
}

/* The row above or below, in the order in which they are drawn. */
static gboolean
picture_key_cb (GtkEventControllerKey *keys,
                guint                  keyval,
                guint                  keycode,
                GdkModifierType        state,
                TrLearn               *self)
{
  int way = keyval == GDK_KEY_Up || keyval == GDK_KEY_KP_Up ? -1 : keyval == GDK_KEY_Down || keyval == GDK_KEY_KP_Down ? 1 : 0;
  int current = tr_page_get_dough_index (TR_PAGE (self));

  if (way == 0 || current < 0 || (state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SHIFT_MASK)) != 0)
    return FALSE;

  g_autoptr (GArray) lineage = tr_trial_get_lineage (tr_document_get_trial (tr_page_get_document (TR_PAGE (self))));

  for (int i = 0; i < (int) lineage->len; i++)
    if ((int) g_array_index (lineage, TrDescent, i).dough == current && i + way >= 0 && i + way < (int) lineage->len)
      {
        show_dough (self, (int) g_array_index (lineage, TrDescent, i + way).dough);
        return TRUE;
      }

  return FALSE;
}

/* Page *********************************************************************/

static void
tr_learn_refresh (TrPage *page)
{
  TrLearn *self = TR_LEARN (page);
  const TrTrial *trial = tr_document_get_trial (tr_page_get_document (page));
  int index = tr_page_get_dough_index (page);

  tr_cause_list_show (TR_CAUSE_LIST (self->causes), page);
  gtk_widget_set_visible (self->hint, index >= 0);
  if (index < 0)
    {
      tr_section_set_shown (self->changed, FALSE);
      show_lineage (self, trial, -1);
      return;
    }

  show_hint (self, tr_trial_get_dough (trial, (guint) index));
  show_differences (self, (guint) index);
  show_lineage (self, trial, index);
}

static void
tr_learn_dispose (GObject *object)
{
  TrLearn *self = TR_LEARN (object);

  if (self->picture != NULL)
    g_signal_handlers_disconnect_by_data (self->picture, self);
  self->picture = NULL;
  g_clear_pointer (&self->drawn, tr_trial_unref);

  G_OBJECT_CLASS (tr_learn_parent_class)->dispose (object);
}

static void
tr_learn_class_init (TrLearnClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tr_learn_dispose;
  TR_PAGE_CLASS (klass)->refresh = tr_learn_refresh;
}

static GtkWidget *
new_buttons (void)
{
  static const char *const names[] = { "win.branch-dough", "win.carry-doughs" };
  guint n_actions;
  const TrAction *actions = tr_actions_get (&n_actions);
  GtkWidget *box = tr_fields_row_new ();

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    for (guint k = 0; k < n_actions; k++)
      if (g_str_equal (actions[k].name, names[i]))
        {
          GtkWidget *button = gtk_button_new_with_label (tr_action_get_label (&actions[k]));

          tr_actions_set_up_button (button, names[i]);
          tr_form_add (box, button);
        }

  return box;
}

static void
add_lineage (TrLearn   *self,
             GtkWidget *section)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  self->lineage = section;
  self->picture = tr_picture_view_new_for (_("Lineage of the doughs"), make_picture, LINEAGE_LINES);
  g_signal_connect (self->picture, "pressed", G_CALLBACK (picture_pressed_cb), self);
  g_signal_connect_object (keys, "key-pressed", G_CALLBACK (picture_key_cb), self, 0);
  gtk_widget_add_controller (self->picture, keys);
  gtk_box_append (GTK_BOX (section), self->picture);
}

static GtkWidget *
add_words (GtkWidget  *section,
           const char *css_class)
{
  GtkWidget *label = tr_words_label_new (css_class);

  gtk_box_append (GTK_BOX (section), label);

  return label;
}

static void
tr_learn_init (TrLearn *self)
{
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 18), *section;

  section = tr_column_add_section (column, _("What to change next"));
  self->hint = add_words (section, "dim-label");
  self->causes = tr_cause_list_new ();
  gtk_box_append (GTK_BOX (section), self->causes);
  gtk_box_append (GTK_BOX (section), new_buttons ());

  add_lineage (self, tr_column_add_section (column, _("Lineage")));

  self->changed = tr_column_add_section (column, _("What was changed"));
  self->from = add_words (self->changed, "dim-label");
  self->written = add_words (self->changed, NULL);
  self->so = add_words (self->changed, "dim-label");
  tr_words_label_set (self->so, _("From that follows:"));
  self->follows = add_words (self->changed, NULL);
  tr_page_set_child (TR_PAGE (self), column);
}

GtkWidget *
tr_learn_new (void)
{
  return g_object_new (TR_TYPE_LEARN, NULL);
}
