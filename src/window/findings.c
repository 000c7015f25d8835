/* findings.c: what is wrong or worth knowing, each leading to its field
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Rows are kept and refilled from edit to edit, so that the keyboard focus
 * stays where it is while findings come and go.
 */

#include "config.h"

#include "findings.h"

#include <glib/gi18n-lib.h>

#include "../calc/repair.h"

#define MAX_HEIGHT_PX 168

/* One row: a sign, the sentence, and what mends it where one ratio does. */
typedef struct
{
  GtkWidget *row, *sign, *label, *mend;
  char *where;
  TrRepair repair;               /* while `mend` is visible */
  gboolean is_for_label;
} Row;

struct _TrFindings
{
  TrPage parent_instance;

  /* Borrowed References */
  GtkWidget *scrolled;
  GtkWidget *list;

  /* Owned References */
  GPtrArray *rows;               /* Row */
};

G_DEFINE_FINAL_TYPE (TrFindings, tr_findings, TR_TYPE_PAGE)

static void
row_free (gpointer data)
{
  Row *row = data;

  g_clear_pointer (&row->where, g_free);
  g_free (row);
}

const char *
tr_findings_get_icon_name (TrSeverity severity)
{
  switch (severity)
    {
    case TR_SEVERITY_STOP:
      return "dialog-error-symbolic";
    case TR_SEVERITY_WARN:
      return "dialog-warning-symbolic";
    case TR_SEVERITY_NOTE:
    default:
      return "dialog-information-symbolic";
    }
}

/* Mending */

static void
mend (TrFindings     *self,
      const char     *label,
      const TrRepair *repair,
      const char     *where)
{
  TrPage *page = TR_PAGE (self);
  const TrDoughFigures *figures = tr_page_get_figures (page);
  g_autoptr (GError) error = NULL;
  g_autofree char *did = NULL;
  TrTrial *draft;

  if (figures == NULL)
    return;

  draft = tr_document_draft (tr_page_get_document (page));
  TrDough *dough = tr_trial_own_dough (draft, (guint) tr_page_get_dough_index (page));

  if (!tr_repair_apply (dough, figures, repair, &error))
    {
      g_autofree char *why = tr_words_error (tr_page_get_reader (page), error);

      gtk_widget_activate_action (GTK_WIDGET (self), "win.notice", "s", why);
      tr_trial_unref (draft);
      return;
    }

  g_autoptr (TrAccount) account = tr_account_new (figures, dough);

  did = tr_words_repaired (tr_page_get_reader (page), figures, repair, account);
  if (tr_page_commit (page, draft, label, NULL, where))
    gtk_widget_activate_action (GTK_WIDGET (self), "win.told", "s", did);
}

/* What is done may take the row away. */
static void
mend_clicked_cb (TrFindings *self,
                 GtkWidget  *button)
{
  const Row *row = NULL;

  for (guint i = 0; i < self->rows->len && row == NULL; i++)
    if (((const Row *) g_ptr_array_index (self->rows, i))->mend == button)
      row = g_ptr_array_index (self->rows, i);
  g_return_if_fail (row != NULL);

  g_autofree char *label = g_strdup (gtk_button_get_label (GTK_BUTTON (button)));
  g_autofree char *where = g_strdup (row->where);
  const TrRepair repair = row->repair;

  mend (self, label, &repair, where);
}

static void
show_mend (TrFindings           *self,
           Row                  *row,
           const TrDoughFigures *figures,
           const TrFinding      *finding)
{
  gboolean can_be_mended = tr_finding_get_repair (figures, finding, &row->repair);
  g_autofree char *text = can_be_mended ? tr_words_repair (tr_page_get_reader (TR_PAGE (self)), &row->repair) : NULL;

  gtk_widget_set_visible (row->mend, can_be_mended);
  if (text != NULL && g_strcmp0 (gtk_button_get_label (GTK_BUTTON (row->mend)), text) != 0)
    gtk_button_set_label (GTK_BUTTON (row->mend), text);
}

/* Rows */

static Row *
add_row (TrFindings *self)
{
  Row *row = g_new0 (Row, 1);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  row->sign = gtk_image_new ();
  gtk_widget_set_valign (row->sign, GTK_ALIGN_START);
  row->label = gtk_label_new (NULL);
  gtk_label_set_wrap (GTK_LABEL (row->label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (row->label), 0);
  gtk_widget_set_hexpand (row->label, TRUE);
  gtk_widget_set_valign (row->label, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (box), row->sign);
  gtk_box_append (GTK_BOX (box), row->label);
  row->mend = gtk_button_new_with_label ("");
  gtk_widget_set_valign (row->mend, GTK_ALIGN_START);
  g_signal_connect_object (row->mend, "clicked", G_CALLBACK (mend_clicked_cb), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (box), row->mend);

  row->row = gtk_list_box_row_new ();
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row->row), box);
  gtk_list_box_append (GTK_LIST_BOX (self->list), row->row);
  g_ptr_array_add (self->rows, row);

  return row;
}

static void
fill_row (TrFindings           *self,
          Row                  *row,
          const TrDoughFigures *figures,
          const TrFinding      *finding)
{
  g_autofree char *sentence = tr_words_finding (tr_page_get_reader (TR_PAGE (self)), figures, finding);
  /* Translators: how bad it is, and the sentence: "Stop: The first roll-out needs 1 240 mm …" */
  g_autofree char *spoken = g_strdup_printf (_("%s: %s"), tr_words_severity (finding->severity), sentence);

  tr_set_text (&row->where, finding->where);
  show_mend (self, row, figures, finding);
  row->is_for_label = finding->id == TR_FINDING_ALLERGENS;
  if (g_str_equal (gtk_label_get_label (GTK_LABEL (row->label)), sentence))
    return;

  gtk_image_set_from_icon_name (GTK_IMAGE (row->sign), tr_findings_get_icon_name (finding->severity));
  gtk_widget_set_tooltip_text (row->sign, tr_words_severity (finding->severity));
  gtk_label_set_label (GTK_LABEL (row->label), sentence);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row->row), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  for (TrSeverity i = TR_SEVERITY_NOTE; i <= TR_SEVERITY_STOP; i++)
    gtk_widget_remove_css_class (row->sign, tr_severity_id (i));
  gtk_widget_add_css_class (row->sign, tr_severity_id (finding->severity));
}

/* What is always there comes last and is not counted among the findings. */
static GPtrArray *
dup_shown (const TrDoughFigures *figures)
{
  GPtrArray *shown = g_ptr_array_new ();
  TrFinding *allergens = NULL;

  for (guint i = 0; figures != NULL && figures->findings != NULL && i < figures->findings->len; i++)
    {
      TrFinding *finding = g_ptr_array_index (figures->findings, i);

      if (finding->id == TR_FINDING_ALLERGENS)
        allergens = finding;
      else
        g_ptr_array_add (shown, finding);
    }
  if (allergens != NULL)
    g_ptr_array_add (shown, allergens);

  return shown;
}

const TrFinding *
tr_findings_get_worst (const TrDoughFigures *figures)
{
  g_autoptr (GPtrArray) shown = dup_shown (figures);
  const TrFinding *first = shown->len > 0 ? g_ptr_array_index (shown, 0) : NULL;

  return first != NULL && first->id != TR_FINDING_ALLERGENS ? first : NULL;
}

static void
update_header (GtkListBoxRow *row,
               GtkListBoxRow *before,
               gpointer       data)
{
  TrFindings *self = data;
  guint index = (guint) gtk_list_box_row_get_index (row);
  const Row *own = index < self->rows->len ? g_ptr_array_index (self->rows, index) : NULL;
  GtkWidget *header = NULL;

  if (own != NULL && own->is_for_label)
    {
      header = gtk_label_new (before != NULL ? _("For the label") : _("No findings; for the label"));
      gtk_label_set_xalign (GTK_LABEL (header), 0);
      gtk_widget_add_css_class (header, "dim-label");
      gtk_widget_add_css_class (header, "caption");
    }
  gtk_list_box_row_set_header (row, header);
}

/* A scrolled window asks its child for a height without saying how wide it is,
 * so it does not know of wrapped lines. */
static void
fit_height (TrFindings *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  int width = root != NULL ? gtk_widget_get_width (GTK_WIDGET (root)) : 0;
  int height;

  if (width <= 0)
    return;

  gtk_widget_measure (self->list, GTK_ORIENTATION_VERTICAL, width, NULL, &height, NULL, NULL);
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (self->scrolled), MIN (height, MAX_HEIGHT_PX));
}

static void
tr_findings_refresh (TrPage *page)
{
  TrFindings *self = TR_FINDINGS (page);
  const TrDoughFigures *figures = tr_page_get_figures (page);
  g_autoptr (GPtrArray) shown = dup_shown (figures);

  for (guint i = 0; i < shown->len; i++)
    fill_row (self, i < self->rows->len ? g_ptr_array_index (self->rows, i) : add_row (self),
              figures, g_ptr_array_index (shown, i));

  while (self->rows->len > shown->len)
    {
      Row *last = g_ptr_array_index (self->rows, self->rows->len - 1);

      gtk_list_box_remove (GTK_LIST_BOX (self->list), last->row);
      g_ptr_array_remove_index (self->rows, self->rows->len - 1);
    }
  gtk_list_box_invalidate_headers (GTK_LIST_BOX (self->list));
  fit_height (self);
}

static void
row_activated_cb (GtkListBox    *list,
                  GtkListBoxRow *row,
                  TrFindings    *self)
{
  const Row *pressed = g_ptr_array_index (self->rows, (guint) gtk_list_box_row_get_index (row));

  gtk_widget_activate_action (GTK_WIDGET (self), "win.go-to", "s", pressed->where != NULL ? pressed->where : "");
}

static void
tr_findings_dispose (GObject *object)
{
  TrFindings *self = TR_FINDINGS (object);

  if (self->list != NULL)
    {
      g_signal_handlers_disconnect_by_data (self->list, self);
      gtk_list_box_set_header_func (GTK_LIST_BOX (self->list), NULL, NULL, NULL);
    }
  self->list = NULL;
  g_clear_pointer (&self->rows, g_ptr_array_unref);

  G_OBJECT_CLASS (tr_findings_parent_class)->dispose (object);
}

static void
tr_findings_class_init (TrFindingsClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tr_findings_dispose;
  TR_PAGE_CLASS (klass)->refresh = tr_findings_refresh;
}

static void
tr_findings_init (TrFindings *self)
{
  GtkWidget *none = gtk_label_new (_("Nothing to say: this dough fits the bench."));

  self->scrolled = gtk_scrolled_window_new ();
  self->rows = g_ptr_array_new_with_free_func (row_free);
  self->list = gtk_list_box_new ();
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (self->list), GTK_SELECTION_NONE);
  gtk_list_box_set_header_func (GTK_LIST_BOX (self->list), update_header, self, NULL);
  gtk_list_box_set_placeholder (GTK_LIST_BOX (self->list), none);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Findings"), -1);
  g_signal_connect (self->list, "row-activated", G_CALLBACK (row_activated_cb), self);

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (self->scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scrolled), self->list);
  tr_page_set_child (TR_PAGE (self), self->scrolled);
  gtk_widget_add_css_class (GTK_WIDGET (self), "findings");
}

GtkWidget *
tr_findings_new (void)
{
  return g_object_new (TR_TYPE_FINDINGS, NULL);
}
