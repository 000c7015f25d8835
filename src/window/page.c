/* page.c: a part of the window that shows and edits the current dough
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Keeps what every page needs (document, dough, reader) and decides when a
 * page is refreshed: at once while it is mapped, else when it is next shown.
 * It does not know what a page shows.
 *
 * Invariants: `refresh` never runs inside itself; a change that arrives while
 * it runs is not lost, it runs once more.
 */

#include "config.h"

#include "page.h"

typedef struct
{
  /* Owned References */
  TrDocument *document;
  char *dough_id;
  GtkWidget *child;

  /* State */
  TrReader reader;
  gulong changed_handler;
  guint is_stale : 1;
  guint is_refreshing : 1;
  guint is_dragging : 1;
} TrPagePrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (TrPage, tr_page, GTK_TYPE_WIDGET)

static TrPagePrivate *
get_private (TrPage *self)
{
  return tr_page_get_instance_private (self);
}

static void
refresh_now (TrPage *self)
{
  TrPagePrivate *priv = get_private (self);

  if (priv->is_refreshing || priv->document == NULL)
    return;

  /* What a refresh removes may lose the focus and commit, which makes the page
   * stale again: once more is then enough, since nothing is left to remove. */
  for (int round = 0; priv->is_stale && round < 2; round++)
    {
      priv->is_stale = FALSE;
      priv->is_refreshing = TRUE;
      if (TR_PAGE_GET_CLASS (self)->refresh != NULL)
        TR_PAGE_GET_CLASS (self)->refresh (self);
      priv->is_refreshing = FALSE;
    }
}

/* At once when mapped, else when shown. */
static void
queue_refresh (TrPage *self)
{
  get_private (self)->is_stale = TRUE;
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    refresh_now (self);
}

static void
document_changed_cb (TrDocument *document,
                     const char *pointer,
                     TrPage     *self)
{
  queue_refresh (self);
}

static void
tr_page_map (GtkWidget *widget)
{
  refresh_now (TR_PAGE (widget));
  GTK_WIDGET_CLASS (tr_page_parent_class)->map (widget);
}

static void
release_document (TrPage *self)
{
  TrPagePrivate *priv = get_private (self);

  tr_page_end_drag (self, FALSE);
  if (priv->document != NULL)
    g_clear_signal_handler (&priv->changed_handler, priv->document);
  g_clear_object (&priv->document);
}

static void
tr_page_dispose (GObject *object)
{
  TrPagePrivate *priv = get_private (TR_PAGE (object));

  release_document (TR_PAGE (object));
  g_clear_pointer (&priv->child, gtk_widget_unparent);

  G_OBJECT_CLASS (tr_page_parent_class)->dispose (object);
}

static void
tr_page_finalize (GObject *object)
{
  g_clear_pointer (&get_private (TR_PAGE (object))->dough_id, g_free);

  G_OBJECT_CLASS (tr_page_parent_class)->finalize (object);
}

static void
tr_page_class_init (TrPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = tr_page_dispose;
  object_class->finalize = tr_page_finalize;
  widget_class->map = tr_page_map;

  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
tr_page_init (TrPage *self)
{
  TrPagePrivate *priv = get_private (self);

  priv->is_stale = TRUE;
  tr_reader_init_plain (&priv->reader, TR_UNITS_METRIC);
}

void
tr_page_set_child (TrPage    *self,
                   GtkWidget *child)
{
  g_return_if_fail (TR_IS_PAGE (self));
  g_return_if_fail (child == NULL || GTK_IS_WIDGET (child));

  TrPagePrivate *priv = get_private (self);

  if (priv->child == child)
    return;

  g_clear_pointer (&priv->child, gtk_widget_unparent);
  priv->child = child;
  if (child != NULL)
    gtk_widget_set_parent (child, GTK_WIDGET (self));
}

void
tr_page_set_document (TrPage     *self,
                      TrDocument *document)
{
  g_return_if_fail (TR_IS_PAGE (self));
  g_return_if_fail (document == NULL || TR_IS_DOCUMENT (document));

  TrPagePrivate *priv = get_private (self);

  if (priv->document == document)
    return;

  release_document (self);
  if (document != NULL)
    {
      priv->document = g_object_ref (document);
      priv->changed_handler = g_signal_connect (document, "changed", G_CALLBACK (document_changed_cb), self);
    }
  queue_refresh (self);
}

TrDocument *
tr_page_get_document (TrPage *self)
{
  g_return_val_if_fail (TR_IS_PAGE (self), NULL);

  return get_private (self)->document;
}

void
tr_page_set_dough (TrPage     *self,
                   const char *id)
{
  g_return_if_fail (TR_IS_PAGE (self));

  if (tr_set_text (&get_private (self)->dough_id, id))
    queue_refresh (self);
}

int
tr_page_get_dough_index (TrPage *self)
{
  g_return_val_if_fail (TR_IS_PAGE (self), -1);

  TrPagePrivate *priv = get_private (self);

  if (priv->document == NULL || priv->dough_id == NULL)
    return -1;

  return tr_trial_find_dough (tr_document_get_trial (priv->document), priv->dough_id);
}

const TrDough *
tr_page_get_dough (TrPage *self)
{
  int index = tr_page_get_dough_index (self);

  if (index < 0)
    return NULL;

  return tr_trial_get_dough (tr_document_get_trial (get_private (self)->document), (guint) index);
}

const TrDoughFigures *
tr_page_get_figures (TrPage *self)
{
  int index = tr_page_get_dough_index (self);

  if (index < 0)
    return NULL;

  return tr_figures_get_dough (tr_document_get_figures (get_private (self)->document), (guint) index);
}

void
tr_page_set_reader (TrPage         *self,
                    const TrReader *reader)
{
  g_return_if_fail (TR_IS_PAGE (self));
  g_return_if_fail (reader != NULL);

  TrPagePrivate *priv = get_private (self);

  if (tr_reader_equal (&priv->reader, reader))
    return;

  priv->reader = *reader;
  queue_refresh (self);
}

const TrReader *
tr_page_get_reader (TrPage *self)
{
  g_return_val_if_fail (TR_IS_PAGE (self), NULL);

  return &get_private (self)->reader;
}

void
tr_page_follow (TrPage *self,
                TrPage *other)
{
  g_return_if_fail (TR_IS_PAGE (self) && TR_IS_PAGE (other) && self != other);

  tr_page_set_reader (self, tr_page_get_reader (other));
  tr_page_set_document (self, tr_page_get_document (other));
  tr_page_set_dough (self, get_private (other)->dough_id);
}

gboolean
tr_page_is_refreshing (TrPage *self)
{
  g_return_val_if_fail (TR_IS_PAGE (self), FALSE);

  return get_private (self)->is_refreshing;
}

gboolean
tr_page_go_to (TrPage     *self,
               const char *pointer)
{
  g_return_val_if_fail (TR_IS_PAGE (self), FALSE);
  g_return_val_if_fail (pointer != NULL, FALSE);

  /* A page never shown has no fields yet. */
  refresh_now (self);
  if (TR_PAGE_GET_CLASS (self)->go_to == NULL)
    return FALSE;

  return TR_PAGE_GET_CLASS (self)->go_to (self, pointer);
}

/* A dough has no member of these names, so a pointer tells by itself whether
 * it starts at the document. */
gboolean
tr_where_is_in_dough (const char *where)
{
  static const char *const members[] = { "/bench", "/ingredients", "/title", "/doughs", "/prediction", "/plan", "/tasting" };

  for (guint i = 0; i < G_N_ELEMENTS (members); i++)
    {
      size_t length = strlen (members[i]);

      if (strncmp (where, members[i], length) == 0 && (where[length] == '/' || where[length] == '\0'))
        return FALSE;
    }

  return TRUE;
}

char *
tr_where_in_document (int         dough,
                      const char *where)
{
  if (dough < 0 || !tr_where_is_in_dough (where))
    return g_strdup (where);

  return tr_figures_dup_pointer ((guint) dough, where);
}

gboolean
tr_page_commit (TrPage     *self,
                TrTrial    *draft,
                const char *label,
                const char *key,
                const char *where_in_dough)
{
  g_return_val_if_fail (TR_IS_PAGE (self), FALSE);
  g_return_val_if_fail (draft != NULL, FALSE);
  g_return_val_if_fail (get_private (self)->document != NULL, FALSE);

  g_autofree char *pointer = tr_where_in_document (tr_page_get_dough_index (self), where_in_dough != NULL ? where_in_dough : "");
  g_autoptr (GError) error = NULL;

  if (tr_document_commit (get_private (self)->document, draft, label, key, pointer, &error))
    return TRUE;

  gtk_widget_activate_action (GTK_WIDGET (self), "win.notice", "s", error->message);
  return FALSE;
}

void
tr_page_begin_drag (TrPage *self)
{
  g_return_if_fail (TR_IS_PAGE (self));
  g_return_if_fail (get_private (self)->document != NULL);

  get_private (self)->is_dragging = TRUE;
  tr_document_begin_drag (get_private (self)->document);
}

void
tr_page_end_drag (TrPage   *self,
                  gboolean  is_cancelled)
{
  g_return_if_fail (TR_IS_PAGE (self));

  TrPagePrivate *priv = get_private (self);

  if (!priv->is_dragging)
    return;

  priv->is_dragging = FALSE;
  tr_document_end_drag (priv->document, is_cancelled);
}

gboolean
tr_page_is_dragging (TrPage *self)
{
  g_return_val_if_fail (TR_IS_PAGE (self), FALSE);

  return get_private (self)->is_dragging;
}
