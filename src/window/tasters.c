/* tasters.c: who tastes, how far they are, and in which order they are served
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Invariant: there is a row for every taster of the document, in its order.
 */

#include "config.h"

#include "tasters.h"

#include <glib/gi18n-lib.h>

#include "../calc/scores.h"
#include "../calc/serving.h"
#include "entry-field.h"
#include "section.h"

typedef struct { GtkWidget *box, *name, *progress, *order, *remove; } Row;

struct _TrTasters
{
  GtkWidget parent_instance;

  /* Children */
  GtkWidget *box;

  /* Borrowed References */
  GtkWidget *list, *add, *orders, *hint;

  /* Owned */
  GPtrArray *rows;               /* Row */
};

G_DEFINE_FINAL_TYPE (TrTasters, tr_tasters, GTK_TYPE_WIDGET)

static TrPage *
get_page (TrTasters *self)
{
  TrPage *page = (TrPage *) gtk_widget_get_ancestor (GTK_WIDGET (self), TR_TYPE_PAGE);

  return page != NULL && tr_page_get_document (page) != NULL ? page : NULL;
}

static const TrTasting *
get_tasting (TrTasters *self)
{
  TrPage *page = get_page (self);

  return page != NULL ? tr_document_get_trial (tr_page_get_document (page))->tasting : NULL;
}

/* Names */

static gpointer
reach_taster (const TrTrial *trial,
              int            dough,
              guint          item,
              gboolean       make)
{
  return trial->tasting != NULL && item < trial->tasting->tasters->len ? g_ptr_array_index (trial->tasting->tasters, item) : NULL;
}

static const TrMember name_member = {
  "/tasting/tasters/%u/name", reach_taster, G_STRUCT_OFFSET (TrTaster, name), TR_HOLD_TEXT, TR_QUANTITY_NUMBER,
  N_("Name"), N_("name a taster"), N_("A name or a letter; it stands on the score sheet"), .may_be_empty = TRUE,
};

/* What is said of each */

static char *
dup_progress (const TrTasting *tasting,
              const TrTaster  *taster)
{
  guint n_full = 0, n = tasting->codes->len;

  for (guint i = 0; i < tasting->scores->len; i++)
    {
      const TrScore *score = g_ptr_array_index (tasting->scores, i);

      if (g_strcmp0 (score->taster, taster->id) == 0 && tr_score_is_full (score)
          && (n == 0 || tr_tasting_get_code (tasting, score->dough) != 0))
        n_full++;
    }
  if (n_full == 0)
    return g_strdup (_("nothing scored yet"));
  if (n > 0 && n_full >= n)
    return g_strdup (_("✓ all scored"));

  return n > 0 ? g_strdup_printf (_("%u of %u scored"), n_full, n) : g_strdup_printf (_("%u scored"), n_full);
}

static char *
dup_order (const TrTasting *tasting,
           const TrTaster  *taster)
{
  const TrOrder *order = tr_tasting_find_order (tasting, taster->id);
  g_autoptr (GString) out = g_string_new (NULL);

  for (char **id = order != NULL ? order->doughs : NULL; id != NULL && *id != NULL; id++)
    {
      int code = tr_tasting_get_code (tasting, *id);

      if (code != 0)
        g_string_append_printf (out, "%s%03d", out->len > 0 ? " · " : "", code);
    }

  return out->len > 0 ? g_string_free (g_steal_pointer (&out), FALSE) : NULL;
}

/* Doing */

static const char **
list_samples (const TrTasting *tasting)
{
  const char **samples = g_new0 (const char *, tasting->codes->len + 1);

  for (guint i = 0; i < tasting->codes->len; i++)
    samples[i] = ((const TrCode *) g_ptr_array_index (tasting->codes, i))->dough;

  return samples;
}

static void
deal_orders (TrTasting *draft)
{
  g_autofree const char **samples = list_samples (draft);
  g_autoptr (GRand) rand = g_rand_new ();

  if (draft->codes->len > 0)
    tr_serving_deal_orders (draft, samples, rand);
}

static void
add_clicked_cb (TrTasters *self)
{
  TrPage *page = get_page (self);
  g_autofree char *name = NULL;
  TrTasting *tasting;
  TrTrial *draft;

  if (page == NULL)
    return;

  draft = tr_document_draft (tr_page_get_document (page));
  tasting = tr_trial_need_tasting (draft);
  name = g_strdup_printf ("%c", (char) ('A' + MIN (tasting->tasters->len, 25)));
  tr_tasting_add_taster (tasting, name);
  /* An order for one more, as long as nobody has begun with theirs. */
  if (!tr_tasting_has_marks (tasting))
    deal_orders (tasting);
  tr_page_commit (page, draft, _("add a taster"), NULL, "/tasting/tasters");
}

static void
orders_clicked_cb (TrTasters *self)
{
  TrPage *page = get_page (self);
  TrTrial *draft;

  if (page == NULL || get_tasting (self) == NULL)
    return;

  draft = tr_document_draft (tr_page_get_document (page));
  deal_orders (draft->tasting);
  tr_page_commit (page, draft, _("deal new serving orders"), NULL, "/tasting/orders");
}

static void
remove_clicked_cb (GtkWidget *button,
                   TrTasters *self)
{
  TrPage *page = get_page (self);
  const TrTasting *tasting = get_tasting (self);

  if (page == NULL || tasting == NULL)
    return;

  for (guint i = 0; i < self->rows->len && i < tasting->tasters->len; i++)
    if (((Row *) g_ptr_array_index (self->rows, i))->remove == button)
      {
        TrTrial *draft = tr_document_draft (tr_page_get_document (page));
        const TrTaster *taster = g_ptr_array_index (draft->tasting->tasters, i);

        tr_tasting_remove_taster (draft->tasting, taster->id);
        tr_page_commit (page, draft, _("remove a taster"), NULL, "/tasting/tasters");
        return;
      }
}

/* Rows */

static Row *
new_row (TrTasters *self,
         guint      item)
{
  Row *row = g_new0 (Row, 1);
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  row->box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  row->name = tr_entry_field_new (&name_member, TR_FIELD_TABLE);
  tr_entry_field_set_width_chars (TR_ENTRY_FIELD (row->name), 10, 16);
  tr_field_set_item (TR_FIELD (row->name), item);
  row->progress = tr_words_label_new (NULL);
  row->order = tr_words_label_new ("dim-label");
  gtk_widget_add_css_class (row->order, "figures");
  gtk_box_append (GTK_BOX (words), row->progress);
  gtk_box_append (GTK_BOX (words), row->order);
  gtk_widget_set_hexpand (words, TRUE);
  gtk_widget_set_valign (words, GTK_ALIGN_CENTER);
  row->remove = gtk_button_new_from_icon_name ("list-remove-symbolic");
  gtk_widget_add_css_class (row->remove, "flat");
  gtk_widget_set_valign (row->remove, GTK_ALIGN_CENTER);
  g_signal_connect_object (row->remove, "clicked", G_CALLBACK (remove_clicked_cb), self, 0);
  gtk_box_append (GTK_BOX (row->box), row->name);
  gtk_box_append (GTK_BOX (row->box), words);
  gtk_box_append (GTK_BOX (row->box), row->remove);
  gtk_box_append (GTK_BOX (self->list), row->box);

  return row;
}

static void
show_row (Row             *row,
          const TrTasting *tasting,
          guint            index)
{
  const TrTaster *taster = g_ptr_array_index (tasting->tasters, index);
  g_autofree char *name = tr_words_one_line (taster->name != NULL ? taster->name : "");
  g_autofree char *context = g_strdup_printf (_("Taster %u"), index + 1);
  g_autofree char *label = g_strdup_printf (_("Remove the taster %s"), name);

  tr_field_set_context (TR_FIELD (row->name), context);
  tr_words_label_take (row->progress, dup_progress (tasting, taster));
  tr_words_label_take (row->order, dup_order (tasting, taster));
  gtk_widget_set_tooltip_text (row->remove, label);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row->remove), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
}

void
tr_tasters_refresh (TrTasters *self)
{
  g_return_if_fail (TR_IS_TASTERS (self));

  const TrTasting *tasting = get_tasting (self);
  guint n = tasting != NULL ? tasting->tasters->len : 0;

  while (self->rows->len > n)
    {
      Row *row = g_ptr_array_index (self->rows, self->rows->len - 1);

      gtk_box_remove (GTK_BOX (self->list), row->box);
      g_ptr_array_set_size (self->rows, (int) self->rows->len - 1);
    }
  while (self->rows->len < n)
    g_ptr_array_add (self->rows, new_row (self, self->rows->len));
  for (guint i = 0; i < n; i++)
    show_row (g_ptr_array_index (self->rows, i), tasting, i);

  gtk_widget_set_visible (self->orders, n > 0 && tasting->codes->len > 1);
  gtk_widget_set_sensitive (self->add, n < TR_MAX_TASTERS);
  tr_words_label_set (self->hint, n == 0 ? _("One taster can rank; only several can agree.") : NULL);
  tr_fields_refresh (self->list);
}

static void
tr_tasters_dispose (GObject *object)
{
  g_clear_pointer (&TR_TASTERS (object)->box, gtk_widget_unparent);

  G_OBJECT_CLASS (tr_tasters_parent_class)->dispose (object);
}

static void
tr_tasters_finalize (GObject *object)
{
  g_clear_pointer (&TR_TASTERS (object)->rows, g_ptr_array_unref);

  G_OBJECT_CLASS (tr_tasters_parent_class)->finalize (object);
}

static void
tr_tasters_class_init (TrTastersClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tr_tasters_dispose;
  G_OBJECT_CLASS (klass)->finalize = tr_tasters_finalize;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
tr_tasters_init (TrTasters *self)
{
  GtkWidget *buttons = tr_fields_row_new ();

  self->rows = g_ptr_array_new_with_free_func (g_free);
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  self->list = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->hint = tr_words_label_new ("dim-label");
  self->add = gtk_button_new_with_label (_("Add a taster"));
  self->orders = gtk_button_new_with_label (_("New serving orders"));
  gtk_widget_set_tooltip_text (self->orders, _("Balanced: in every place each sample comes equally often, and after every other (a Williams design)"));
  g_signal_connect_object (self->add, "clicked", G_CALLBACK (add_clicked_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->orders, "clicked", G_CALLBACK (orders_clicked_cb), self, G_CONNECT_SWAPPED);
  tr_form_add (buttons, self->add);
  tr_form_add (buttons, self->orders);
  gtk_box_append (GTK_BOX (self->box), self->list);
  gtk_box_append (GTK_BOX (self->box), self->hint);
  gtk_box_append (GTK_BOX (self->box), buttons);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

GtkWidget *
tr_tasters_new (void)
{
  return g_object_new (TR_TYPE_TASTERS, NULL);
}
