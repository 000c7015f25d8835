/* document.c: the open document: trial, figures, history
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every edit takes the same road: validated, compared with what is there, put
 * into the history, computed once, announced once. The file is in
 * document-file.c.
 */

#include "document-private.h"

#include "members.h"

G_DEFINE_FINAL_TYPE (TrDocument, tr_document, G_TYPE_OBJECT)

enum { PROP_0, PROP_MODIFIED, PROP_FILE, PROP_UNDO_LABEL, PROP_REDO_LABEL, PROP_TITLE, N_PROPS };
enum { CHANGED, FILE_CHANGED, N_SIGNALS };

static GParamSpec *properties[N_PROPS];
static guint signals[N_SIGNALS];

/* Announcing */

static void
update_text (TrDocument  *self,
             char       **where,
             const char  *text,
             guint        prop)
{
  if (tr_set_text (where, text))
    g_object_notify_by_pspec (G_OBJECT (self), properties[prop]);
}

void
_tr_document_update_properties (TrDocument *self)
{
  g_autofree char *title = tr_document_dup_display_name (self);

  g_object_freeze_notify (G_OBJECT (self));
  if (self->was_modified != tr_document_is_modified (self))
    {
      self->was_modified = !self->was_modified;
      g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_MODIFIED]);
    }
  update_text (self, &self->undo_label, tr_history_get_undo_label (self->history), PROP_UNDO_LABEL);
  update_text (self, &self->redo_label, tr_history_get_redo_label (self->history), PROP_REDO_LABEL);
  update_text (self, &self->title, title, PROP_TITLE);
  g_object_thaw_notify (G_OBJECT (self));
}

static void
compute_figures (TrDocument *self)
{
  g_autoptr (TrFigures) previous = g_steal_pointer (&self->figures);

  self->figures = tr_figures_compute (tr_history_get_trial (self->history), previous);
}

void
_tr_document_announce (TrDocument *self,
                       const char *pointer)
{
  g_autoptr (TrDocument) keep = g_object_ref (self);
  g_autofree char *where = g_strdup (pointer);

  compute_figures (self);
  _tr_document_schedule_recovery (self);
  g_signal_emit (self, signals[CHANGED], 0, where);
  _tr_document_update_properties (self);
}

void
_tr_document_notify_file (TrDocument *self)
{
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_FILE]);
}

void
_tr_document_emit_file_changed (TrDocument *self)
{
  g_signal_emit (self, signals[FILE_CHANGED], 0);
}

/* Making */

TrDocument *
tr_document_new_for_trial (TrTrial *trial)
{
  TrDocument *self;

  g_return_val_if_fail (trial != NULL, NULL);

  self = g_object_new (TR_TYPE_DOCUMENT, NULL);
  g_clear_pointer (&self->history, tr_history_free);
  self->history = tr_history_new (trial);
  compute_figures (self);
  _tr_document_update_properties (self);

  return self;
}

TrDocument *
tr_document_new (void)
{
  return tr_document_new_for_trial (tr_trial_new ());
}

/* Looking */

const TrTrial *
tr_document_get_trial (TrDocument *self)
{
  g_return_val_if_fail (TR_IS_DOCUMENT (self), NULL);

  return tr_history_get_trial (self->history);
}

const TrFigures *
tr_document_get_figures (TrDocument *self)
{
  g_return_val_if_fail (TR_IS_DOCUMENT (self), NULL);

  return self->figures;
}

GFile *
tr_document_get_file (TrDocument *self)
{
  g_return_val_if_fail (TR_IS_DOCUMENT (self), NULL);

  return self->file;
}

char *
tr_document_dup_display_name (TrDocument *self)
{
  g_return_val_if_fail (TR_IS_DOCUMENT (self), NULL);

  const char *title = tr_history_get_trial (self->history)->title;
  if (*title != '\0')
    return g_strdup (title);
  if (self->file != NULL)
    {
      g_autofree char *name = g_file_get_basename (self->file);

      return g_filename_display_name (name);
    }

  return g_strdup ("Untitled trial");
}

const char *
tr_document_get_undo_label (TrDocument *self)
{
  g_return_val_if_fail (TR_IS_DOCUMENT (self), NULL);

  return tr_history_get_undo_label (self->history);
}

const char *
tr_document_get_redo_label (TrDocument *self)
{
  g_return_val_if_fail (TR_IS_DOCUMENT (self), NULL);

  return tr_history_get_redo_label (self->history);
}

gboolean
tr_document_is_modified (TrDocument *self)
{
  g_return_val_if_fail (TR_IS_DOCUMENT (self), FALSE);

  return self->is_gone || !tr_history_is_saved (self->history);
}

/* Editing */

TrTrial *
tr_document_draft (TrDocument *self)
{
  g_return_val_if_fail (TR_IS_DOCUMENT (self), NULL);

  return tr_trial_copy (tr_history_get_trial (self->history));
}

/* A drag that ends where it began leaves no step. */
static gboolean
leads_back (TrDocument    *self,
            const TrTrial *draft,
            const char    *key)
{
  const TrTrial *before = tr_history_peek_undo (self->history);
  gsize bytes;

  return before != NULL
         && tr_history_would_join (self->history, key, self->clock ())
         && tr_trial_is_same (draft, before, &bytes);
}

gboolean
tr_document_commit (TrDocument  *self,
                    TrTrial     *draft,
                    const char  *label,
                    const char  *key,
                    const char  *pointer,
                    GError     **error)
{
  g_autoptr (TrTrial) trial = draft;
  gsize bytes;

  g_return_val_if_fail (TR_IS_DOCUMENT (self), FALSE);
  g_return_val_if_fail (draft != NULL, FALSE);
  g_return_val_if_fail (label != NULL, FALSE);

  if (!tr_trial_validate (trial, error))
    return FALSE;
  if (tr_trial_is_same (trial, tr_history_get_trial (self->history), &bytes))
    return TRUE;

  if (leads_back (self, trial, key))
    tr_history_drop_newest (self->history);
  else
    tr_history_push (self->history, g_steal_pointer (&trial), label, key, pointer, bytes, self->clock ());
  _tr_document_announce (self, pointer != NULL ? pointer : "");

  return TRUE;
}

void
tr_document_seal (TrDocument *self)
{
  g_return_if_fail (TR_IS_DOCUMENT (self));

  tr_history_seal (self->history);
}

void
tr_document_begin_drag (TrDocument *self)
{
  g_return_if_fail (TR_IS_DOCUMENT (self));

  tr_history_begin_drag (self->history);
}

void
tr_document_end_drag (TrDocument *self,
                      gboolean    is_cancelled)
{
  g_return_if_fail (TR_IS_DOCUMENT (self));

  g_autofree char *pointer = tr_history_end_drag (self->history, is_cancelled);
  if (pointer != NULL)
    _tr_document_announce (self, pointer);
}

void
tr_document_undo (TrDocument *self)
{
  g_return_if_fail (TR_IS_DOCUMENT (self));

  g_autofree char *pointer = g_strdup (tr_history_undo (self->history));
  if (pointer != NULL)
    _tr_document_announce (self, pointer);
}

void
tr_document_redo (TrDocument *self)
{
  g_return_if_fail (TR_IS_DOCUMENT (self));

  g_autofree char *pointer = g_strdup (tr_history_redo (self->history));
  if (pointer != NULL)
    _tr_document_announce (self, pointer);
}

/* Class */

void
_tr_document_set_clock (TrDocument *self,
                        TrClock     clock)
{
  g_return_if_fail (TR_IS_DOCUMENT (self));

  self->clock = clock;
}

static void
tr_document_get_property (GObject    *object,
                          guint       prop_id,
                          GValue     *value,
                          GParamSpec *pspec)
{
  TrDocument *self = TR_DOCUMENT (object);

  switch (prop_id)
    {
    case PROP_MODIFIED:
      g_value_set_boolean (value, tr_document_is_modified (self));
      break;
    case PROP_FILE:
      g_value_set_object (value, self->file);
      break;
    case PROP_UNDO_LABEL:
      g_value_set_string (value, tr_document_get_undo_label (self));
      break;
    case PROP_REDO_LABEL:
      g_value_set_string (value, tr_document_get_redo_label (self));
      break;
    case PROP_TITLE:
      g_value_take_string (value, tr_document_dup_display_name (self));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
tr_document_dispose (GObject *object)
{
  TrDocument *self = TR_DOCUMENT (object);

  g_clear_handle_id (&self->recovery_source, g_source_remove);
  _tr_document_stop_watching (self);

  G_OBJECT_CLASS (tr_document_parent_class)->dispose (object);
}

static void
tr_document_finalize (GObject *object)
{
  TrDocument *self = TR_DOCUMENT (object);

  tr_history_free (self->history);
  g_clear_pointer (&self->figures, tr_figures_unref);
  g_clear_object (&self->file);
  g_free (self->recovery_folder);
  g_free (self->recovery_path);
  g_free (self->adopted_path);
  g_free (self->undo_label);
  g_free (self->redo_label);
  g_free (self->title);

  G_OBJECT_CLASS (tr_document_parent_class)->finalize (object);
}

static void
tr_document_class_init (TrDocumentClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  const GParamFlags flags = G_PARAM_READABLE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS;

  object_class->dispose = tr_document_dispose;
  object_class->finalize = tr_document_finalize;
  object_class->get_property = tr_document_get_property;

  properties[PROP_MODIFIED] = g_param_spec_boolean ("modified", NULL, NULL, FALSE, flags);
  properties[PROP_FILE] = g_param_spec_object ("file", NULL, NULL, G_TYPE_FILE, flags);
  properties[PROP_UNDO_LABEL] = g_param_spec_string ("undo-label", NULL, NULL, NULL, flags);
  properties[PROP_REDO_LABEL] = g_param_spec_string ("redo-label", NULL, NULL, NULL, flags);
  properties[PROP_TITLE] = g_param_spec_string ("title", NULL, NULL, NULL, flags);
  g_object_class_install_properties (object_class, N_PROPS, properties);

  signals[CHANGED] = g_signal_new ("changed", TR_TYPE_DOCUMENT, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 1, G_TYPE_STRING | G_SIGNAL_TYPE_STATIC_SCOPE);
  signals[FILE_CHANGED] = g_signal_new ("file-changed", TR_TYPE_DOCUMENT, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                        G_TYPE_NONE, 0);
}

static void
tr_document_init (TrDocument *self)
{
  self->clock = g_get_monotonic_time;
  self->recovery_seconds = TR_RECOVERY_SECONDS;
  self->history = tr_history_new (tr_trial_new ());
}
