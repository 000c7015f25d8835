/* document-file.c: the open document and its file
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Invariants: `disk` is what the file was like when it was last read or
 * written; a recovery copy exists only while something is unsaved. Everything
 * happens in the thread of the caller, also saving: a trial is small.
 */

#include "document-private.h"

#include <glib/gstdio.h>

#include "members.h"
#include "recovery.h"

#define NEW_FILE_MODE 0666       /* less the umask, as any program's new file */

/* The file on disk */

/* What was saved in a file that is gone is unsaved, until it comes back. */
static void
note_presence (TrDocument        *self,
               const TrDiskState *now)
{
  gboolean is_gone = self->disk.exists && !now->exists;

  if (self->is_gone == is_gone)
    return;

  self->is_gone = is_gone;
  _tr_document_update_properties (self);
  if (is_gone)
    _tr_document_schedule_recovery (self);
}

static void
file_monitor_changed_cb (TrDocument        *self,
                         GFile             *file,
                         GFile             *other_file,
                         GFileMonitorEvent  event)
{
  g_autofree char *path = g_file_get_path (self->file);
  TrDiskState now;

  tr_disk_get_state (path, &now);
  note_presence (self, &now);
  if (tr_disk_state_equal (&now, &self->disk) || tr_disk_state_equal (&now, &self->announced))
    return;

  self->announced = now;
  _tr_document_emit_file_changed (self);
}

void
_tr_document_stop_watching (TrDocument *self)
{
  if (self->monitor == NULL)
    return;

  g_signal_handlers_disconnect_by_data (self->monitor, self);
  g_file_monitor_cancel (self->monitor);
  g_clear_object (&self->monitor);
}

/* What a link leads to is watched: changes there do not touch the link. Where
 * watching is not possible the check on saving still is. */
static void
watch_file (TrDocument *self)
{
  g_autofree char *path = g_file_get_path (self->file);
  g_autofree char *target = tr_disk_dup_target (path);
  g_autoptr (GFile) file = g_file_new_for_path (target);

  _tr_document_stop_watching (self);
  self->monitor = g_file_monitor_file (file, G_FILE_MONITOR_WATCH_MOVES, NULL, NULL);
  if (self->monitor != NULL)
    g_signal_connect_swapped (self->monitor, "changed", G_CALLBACK (file_monitor_changed_cb), self);
}

static void
set_disk (TrDocument        *self,
          const TrDiskState *state)
{
  self->disk = *state;
  self->announced = *state;
  self->is_gone = FALSE;
}

static void
set_file (TrDocument        *self,
          GFile             *file,
          const TrDiskState *state)
{
  gboolean is_other = self->file == NULL || !g_file_equal (self->file, file);

  set_disk (self, state);
  if (is_other)
    {
      g_set_object (&self->file, file);
      watch_file (self);
      _tr_document_notify_file (self);
    }
}

static char *
dup_path (GFile   *file,
          GError **error)
{
  char *path = g_file_get_path (file);

  if (path == NULL)
    {
      g_autofree char *name = g_file_get_parse_name (file);

      g_set_error (error, G_FILE_ERROR, G_FILE_ERROR_INVAL,
                   "Only files of this computer can be opened and saved, not “%s”.", name);
    }

  return path;
}

/* Opening */

TrDocument *
tr_document_open (GFile   *file,
                  GError **error)
{
  g_autofree char *path = NULL;
  TrDiskState state;
  TrTrial *trial;

  g_return_val_if_fail (G_IS_FILE (file), NULL);

  path = dup_path (file, error);
  trial = path != NULL ? tr_trial_read_path (path, &state, error) : NULL;
  if (trial == NULL)
    return NULL;

  TrDocument *self = tr_document_new_for_trial (trial);
  set_file (self, file, &state);
  _tr_document_update_properties (self);

  return self;
}

TrDocument *
tr_recovery_open (const TrRecovery  *recovery,
                  GError           **error)
{
  g_autofree char *path = g_file_get_path (recovery->copy);
  g_autofree char *original = NULL;
  TrDiskState state;
  TrTrial *trial = tr_recovery_read (path, &original, &state, error);

  if (trial == NULL)
    return NULL;

  TrDocument *self = tr_document_new_for_trial (trial);
  tr_history_mark_unsaved (self->history);
  self->adopted_path = g_steal_pointer (&path);
  if (original != NULL)
    {
      g_autoptr (GFile) file = g_file_new_for_path (original);

      set_file (self, file, &state);
    }
  _tr_document_update_properties (self);

  return self;
}

/* Saving */

gboolean
tr_document_is_changed_on_disk (TrDocument *self)
{
  g_autofree char *path = NULL;
  TrDiskState now;

  g_return_val_if_fail (TR_IS_DOCUMENT (self), FALSE);

  if (self->file == NULL)
    return FALSE;
  path = g_file_get_path (self->file);
  tr_disk_get_state (path, &now);
  note_presence (self, &now);

  return !tr_disk_state_equal (&now, &self->disk);
}

static gboolean
refuse_changed (TrDocument  *self,
                GError     **error)
{
  g_autofree char *path = g_file_get_path (self->file);
  g_autofree char *name = g_filename_display_basename (path);
  TrDiskState now;

  tr_disk_get_state (path, &now);
  g_set_error (error, TR_TRIAL_ERROR, TR_TRIAL_ERROR_CHANGED_ON_DISK,
               now.exists ? "“%s” was changed by another program since it was opened."
                          : "“%s” is no longer where it was opened.", name);

  return FALSE;
}

/* What cannot be opened again is not written over what can. */
static char *
dup_text_to_save (TrDocument  *self,
                  gsize       *length,
                  GError     **error)
{
  g_autofree char *text = tr_trial_write (tr_history_get_trial (self->history), length);
  g_autoptr (TrTrial) again = tr_trial_read (text, *length, error);

  return again != NULL ? g_steal_pointer (&text) : NULL;
}

/* A file that cannot be backed up can still be saved: the new text is whole
 * before the old one goes. */
static void
back_up (const char *path)
{
  g_autoptr (GError) error = NULL;

  if (!tr_disk_back_up (path, &error))
    g_message ("No backup: %s", error->message);
}

/* Backed up or not is said of `self->file`: a save elsewhere that fails does
 * not change it. */
static gboolean
save_to (TrDocument  *self,
         GFile       *file,
         gboolean     is_backed_up,
         GError     **error)
{
  g_autofree char *path = dup_path (file, error);
  g_autofree char *text = NULL;
  TrDiskState state;
  gsize length;

  tr_document_seal (self);
  if (path == NULL || (text = dup_text_to_save (self, &length, error)) == NULL)
    return FALSE;
  if (!tr_disk_can_replace (path, error))
    return FALSE;
  if (!is_backed_up)
    back_up (path);
  if (!tr_disk_replace (path, text, length, NEW_FILE_MODE, &state, error))
    return FALSE;

  self->is_backed_up = TRUE;
  tr_history_mark_saved (self->history);
  set_file (self, file, &state);
  tr_document_discard_recovery (self);
  _tr_document_update_properties (self);

  return TRUE;
}

gboolean
tr_document_save (TrDocument  *self,
                  gboolean     overwrite,
                  GError     **error)
{
  gboolean is_changed;

  g_return_val_if_fail (TR_IS_DOCUMENT (self), FALSE);
  g_return_val_if_fail (self->file != NULL, FALSE);

  is_changed = tr_document_is_changed_on_disk (self);
  if (is_changed && !overwrite)
    return refuse_changed (self, error);

  /* What goes when it was changed is somebody else's. */
  return save_to (self, self->file, self->is_backed_up && !is_changed, error);
}

gboolean
tr_document_save_as (TrDocument  *self,
                     GFile       *file,
                     GError     **error)
{
  g_autoptr (GFile) keep = NULL;
  gboolean is_same;

  g_return_val_if_fail (TR_IS_DOCUMENT (self), FALSE);
  g_return_val_if_fail (G_IS_FILE (file), FALSE);

  keep = g_object_ref (file);
  is_same = self->file != NULL && g_file_equal (self->file, file);

  return save_to (self, file, self->is_backed_up && is_same, error);
}

/* Reading again is a step like any other: what was there before can be had back. */
gboolean
tr_document_reload (TrDocument  *self,
                    GError     **error)
{
  g_autofree char *path = NULL;
  g_autoptr (TrTrial) trial = NULL;
  TrDiskState state;
  gsize bytes;

  g_return_val_if_fail (TR_IS_DOCUMENT (self), FALSE);
  g_return_val_if_fail (self->file != NULL, FALSE);

  path = g_file_get_path (self->file);
  trial = tr_trial_read_path (path, &state, error);
  if (trial == NULL)
    return FALSE;

  set_disk (self, &state);
  self->is_backed_up = FALSE;
  tr_history_settle (self->history);
  gboolean is_same = tr_trial_is_same (trial, tr_history_get_trial (self->history), &bytes);
  if (!is_same)
    tr_history_push (self->history, g_steal_pointer (&trial), "Reload", NULL, "", bytes, self->clock ());
  tr_history_mark_saved (self->history);
  tr_document_discard_recovery (self);
  if (is_same)
    _tr_document_update_properties (self);
  else
    _tr_document_announce (self, "");

  return TRUE;
}

/* Recovery copies */

static gboolean
recovery_timeout_cb (gpointer data)
{
  TrDocument *self = data;

  self->recovery_source = 0;
  tr_document_write_recovery (self);

  return G_SOURCE_REMOVE;
}

void
_tr_document_schedule_recovery (TrDocument *self)
{
  if (self->recovery_folder != NULL && self->recovery_source == 0)
    self->recovery_source = g_timeout_add_seconds (self->recovery_seconds, recovery_timeout_cb, self);
}

static void
remove_copy (char **path)
{
  if (*path != NULL)
    g_unlink (*path);
  g_clear_pointer (path, g_free);
}

void
tr_document_set_recovery_folder (TrDocument *self,
                                 GFile      *folder)
{
  g_return_if_fail (TR_IS_DOCUMENT (self));
  g_return_if_fail (folder == NULL || G_IS_FILE (folder));

  g_clear_pointer (&self->recovery_folder, g_free);
  self->recovery_folder = folder != NULL ? g_file_get_path (folder) : NULL;
  if (tr_document_is_modified (self))
    _tr_document_schedule_recovery (self);
}

static char *
dup_new_recovery_path (TrDocument *self)
{
  static int last_serial;        /* the name of a copy is the process's, not the document's */
  g_autofree char *name = tr_recovery_dup_name ((guint) g_atomic_int_add (&last_serial, 1));

  return g_build_filename (self->recovery_folder, name, NULL);
}

void
tr_document_write_recovery (TrDocument *self)
{
  g_autofree char *original = NULL;
  g_autoptr (GError) error = NULL;

  g_return_if_fail (TR_IS_DOCUMENT (self));

  g_clear_handle_id (&self->recovery_source, g_source_remove);
  if (self->recovery_folder == NULL)
    return;
  if (!tr_document_is_modified (self))
    {
      tr_document_discard_recovery (self);
      return;
    }

  if (self->recovery_path == NULL)
    self->recovery_path = dup_new_recovery_path (self);
  original = self->file != NULL ? g_file_get_path (self->file) : NULL;
  if (tr_recovery_write (self->recovery_path, tr_history_get_trial (self->history), original, self->disk, &error))
    remove_copy (&self->adopted_path);
  else
    g_message ("No recovery copy: %s", error->message);
}

void
tr_document_discard_recovery (TrDocument *self)
{
  g_return_if_fail (TR_IS_DOCUMENT (self));

  g_clear_handle_id (&self->recovery_source, g_source_remove);
  remove_copy (&self->recovery_path);
  remove_copy (&self->adopted_path);
}
