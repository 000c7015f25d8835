/* window-files.c: opening, saving, recovering and closing a window's trial
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What can go wrong with a file is told in the notice strip. A question is
 * asked only before work would be lost: on closing unsaved, and before what
 * another program wrote is overwritten.
 */

#include "config.h"

#include "window-private.h"

#include <glib/gi18n-lib.h>

#include "application.h"
#include "compat.h"
#include "start-page.h"

static TrApplication *
get_application (TrWindow *self)
{
  return TR_APPLICATION (gtk_window_get_application (GTK_WINDOW (self)));
}

static GtkFileFilter *
new_filter (void)
{
  GtkFileFilter *filter = gtk_file_filter_new ();

  gtk_file_filter_set_name (filter, _("Tourier trials"));
  gtk_file_filter_add_suffix (filter, "tourier");

  return filter;
}

GCancellable *
tr_window_start_asking (TrWindow *self)
{
  g_set_object (&self->cancellable, NULL);
  self->cancellable = g_cancellable_new ();

  return self->cancellable;
}

void
tr_window_show_error (TrWindow   *self,
                      const char *sentence)
{
  g_return_if_fail (TR_IS_WINDOW (self));
  g_return_if_fail (sentence != NULL);

  tr_notices_show (self->notices, "file", sentence, NULL, 0);
}

/* New and open **************************************************************/

void
tr_window_new_trial (TrWindow *self)
{
  g_autoptr (TrDocument) document = tr_document_new ();

  tr_application_show (get_application (self), document, self);
}

/* A text that is compiled in: it is ours, so it can be read. */
static TrTrial *
read_resource (const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = g_resources_lookup_data (path, G_RESOURCE_LOOKUP_FLAGS_NONE, &error);
  TrTrial *trial = NULL;

  g_assert_no_error (error);
  trial = tr_trial_read (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), &error);
  g_assert_no_error (error);

  return trial;
}

TrDough *
tr_window_new_plain_dough (void)
{
  g_autoptr (TrTrial) trial = read_resource ("/io/github/tourier/plain.tourier");
  TrDough *dough = tr_dough_copy (tr_trial_get_dough (trial, 0));

  tr_set_text (&dough->name, _("Plain dough"));

  return dough;
}

void
tr_window_open_demo (TrWindow *self)
{
  g_autoptr (TrDocument) document = tr_document_new_for_trial (read_resource ("/io/github/tourier/demo.tourier"));

  tr_application_show (get_application (self), document, self);
}

static void
open_chosen_cb (GObject      *source,
                GAsyncResult *result,
                gpointer      user_data)
{
  TrWindow *self = TR_WINDOW (source);
  g_autoptr (GFile) file = tr_compat_open_file_finish (result, NULL);

  if (file != NULL)
    tr_application_open_file (get_application (self), file, self);
}

void
tr_window_open (TrWindow *self)
{
  g_autoptr (GtkFileFilter) filter = new_filter ();

  tr_compat_open_file_async (GTK_WINDOW (self), _("Open a trial"), filter, tr_window_start_asking (self), open_chosen_cb, NULL);
}

void
tr_window_open_uri (TrWindow   *self,
                    const char *uri)
{
  g_autoptr (GFile) file = g_file_new_for_uri (uri);

  tr_application_open_file (get_application (self), file, self);
}

static gboolean
dropped_cb (GtkDropTarget *target,
            const GValue  *value,
            double         x,
            double         y,
            TrWindow      *self)
{
  if (G_VALUE_HOLDS_STRING (value))
    {
      tr_window_read_recipe_text (self, g_value_get_string (value));
      return TRUE;
    }

  g_autoptr (GSList) files = gdk_file_list_get_files (g_value_get_boxed (value));

  for (GSList *file = files; file != NULL; file = file->next)
    if (tr_window_is_trial_file (file->data))
      tr_application_open_file (get_application (self), file->data, self);
    else
      tr_window_read_recipe_file (self, file->data);

  return files != NULL;
}

void
tr_window_accept_drops (TrWindow *self)
{
  GType types[] = { GDK_TYPE_FILE_LIST, G_TYPE_STRING };
  GtkDropTarget *target = gtk_drop_target_new (G_TYPE_INVALID, GDK_ACTION_COPY);

  gtk_drop_target_set_gtypes (target, types, G_N_ELEMENTS (types));
  g_signal_connect (target, "drop", G_CALLBACK (dropped_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (target));
}

/* Save *********************************************************************/

static void
give_up_closing (TrWindow *self)
{
  self->closes_when_saved = FALSE;
}

static void
saved (TrWindow *self)
{
  tr_notices_clear (self->notices, "file");
  tr_notices_clear (self->notices, "disk");
  tr_start_page_add_recent (tr_document_get_file (self->document));
  if (self->closes_when_saved)
    gtk_window_close (GTK_WINDOW (self));
}

static void
tell_save_failed (TrWindow     *self,
                  const GError *error)
{
  const TrNoticeButton elsewhere = { _("Save as…"), "win.save-as" };

  give_up_closing (self);
  tr_notices_show (self->notices, "file", error->message, &elsewhere, 1);
}

static void
save_to (TrWindow *self,
         GFile    *file)
{
  g_autoptr (GError) error = NULL;

  if (tr_application_is_open_elsewhere (get_application (self), file, self))
    {
      g_autofree char *name = g_file_get_basename (file);
      g_autofree char *sentence = g_strdup_printf (_("“%s” is open in another window. Choose another name, or close that window first."), name);

      give_up_closing (self);
      tr_window_show_error (self, sentence);
    }
  else if (tr_document_save_as (self->document, file, &error))
    saved (self);
  else
    tell_save_failed (self, error);
}

GFile *
tr_window_dup_suffixed (GFile      *file,
                        const char *suffix)
{
  g_autofree char *name = g_file_get_basename (file);
  g_autofree char *longer = g_strconcat (name, suffix, NULL);
  g_autoptr (GFile) folder = g_file_get_parent (file);
  g_autoptr (GFile) suffixed = folder != NULL ? g_file_get_child (folder, longer) : NULL;

  if (suffixed == NULL || strchr (name, '.') != NULL
      || g_file_query_exists (file, NULL) || g_file_query_exists (suffixed, NULL))
    return g_object_ref (file);

  return g_steal_pointer (&suffixed);
}

static void
save_chosen_cb (GObject      *source,
                GAsyncResult *result,
                gpointer      user_data)
{
  TrWindow *self = TR_WINDOW (source);
  g_autoptr (GFile) chosen = tr_compat_save_file_finish (result, NULL);
  g_autoptr (GFile) file = chosen != NULL ? tr_window_dup_suffixed (chosen, ".tourier") : NULL;

  if (file != NULL)
    save_to (self, file);
  else
    give_up_closing (self);
}

static char *
dup_suggested_name (TrWindow *self)
{
  GFile *file = tr_document_get_file (self->document);
  g_autofree char *name = NULL;

  if (file != NULL)
    return g_file_get_basename (file);

  name = tr_document_dup_display_name (self->document);
  return g_strconcat (g_strdelimit (name, "/\\:", '-'), ".tourier", NULL);
}

void
tr_window_save_as (TrWindow *self)
{
  g_autoptr (GtkFileFilter) filter = new_filter ();
  g_autofree char *name = NULL;
  GFile *file = tr_document_get_file (self->document);
  g_autoptr (GFile) folder = file != NULL ? g_file_get_parent (file) : NULL;

  tr_window_settle_focus (self);
  name = dup_suggested_name (self);
  tr_compat_save_file_async (GTK_WINDOW (self), _("Save the trial"), filter, folder, name,
                             tr_window_start_asking (self), save_chosen_cb, NULL);
}

enum { OVERWRITE_CANCEL, OVERWRITE_ELSEWHERE, OVERWRITE_IT };

static void
overwrite_answered_cb (GObject      *source,
                       GAsyncResult *result,
                       gpointer      user_data)
{
  TrWindow *self = TR_WINDOW (source);
  g_autoptr (GError) error = NULL;

  switch (tr_compat_ask_finish (result))
    {
    case OVERWRITE_ELSEWHERE:
      tr_window_save_as (self);
      break;
    case OVERWRITE_IT:
      if (tr_document_save (self->document, TRUE, &error))
        saved (self);
      else
        tell_save_failed (self, error);
      break;
    default:
      give_up_closing (self);
    }
}

static gboolean
is_gone (TrWindow *self)
{
  return !g_file_query_exists (tr_document_get_file (self->document), NULL);
}

static void
ask_to_overwrite (TrWindow *self)
{
  gboolean gone = is_gone (self);
  const char *const buttons[] = { _("_Cancel"), _("Save _as…"), gone ? _("_Save there") : _("_Overwrite"), NULL };
  g_autofree char *name = g_file_get_basename (tr_document_get_file (self->document));
  g_autofree char *message = g_strdup_printf (gone ? _("Save “%s” again?") : _("Overwrite “%s”?"), name);

  tr_compat_ask_async (GTK_WINDOW (self), message,
                       gone ? _("The file was removed, moved or renamed since it was read.")
                            : _("Another program has changed the file since it was read. What it wrote would be lost."),
                       buttons, OVERWRITE_CANCEL, OVERWRITE_CANCEL, tr_window_start_asking (self), overwrite_answered_cb, NULL);
}

void
tr_window_save (TrWindow *self)
{
  g_autoptr (GError) error = NULL;

  tr_window_settle_focus (self);
  if (tr_document_get_file (self->document) == NULL)
    tr_window_save_as (self);
  else if (tr_document_save (self->document, FALSE, &error))
    saved (self);
  else if (g_error_matches (error, TR_TRIAL_ERROR, TR_TRIAL_ERROR_CHANGED_ON_DISK))
    ask_to_overwrite (self);
  else
    tell_save_failed (self, error);
}

/* Changed on disk **********************************************************/

void
tr_window_tell_changed_on_disk (TrWindow *self)
{
  const TrNoticeButton changed[] = { { _("Reload"), "win.reload" }, { _("Keep mine"), NULL } };
  const TrNoticeButton elsewhere = { _("Save as…"), "win.save-as" };
  g_autofree char *name = NULL;
  g_autofree char *sentence = NULL;

  if (tr_document_get_file (self->document) == NULL)
    return;

  gboolean gone = is_gone (self);

  name = g_file_get_basename (tr_document_get_file (self->document));
  sentence = g_strdup_printf (gone ? _("“%s” is no longer where it was opened; what you see is only in this window.")
                                   : _("“%s” was changed by another program."), name);
  if (g_strcmp0 (tr_notices_get (self->notices, "disk"), sentence) == 0)
    return;

  if (gone)
    tr_notices_show (self->notices, "disk", sentence, &elsewhere, 1);
  else
    tr_notices_show (self->notices, "disk", sentence, changed, G_N_ELEMENTS (changed));
}

void
tr_window_reload (TrWindow *self)
{
  g_autoptr (GError) error = NULL;

  if (!tr_document_reload (self->document, &error))
    tr_window_show_error (self, error->message);
}

/* Recovery *****************************************************************/

static char *
dup_recovery_name (const TrRecovery *recovery)
{
  if (recovery->title != NULL && *recovery->title != '\0')
    return g_strdup (recovery->title);
  if (recovery->original != NULL)
    return g_file_get_basename (recovery->original);

  return g_strdup (_("Untitled trial"));
}

void
tr_window_offer_recovery (TrWindow         *self,
                          const TrRecovery *recovery)
{
  g_return_if_fail (TR_IS_WINDOW (self));
  g_return_if_fail (recovery != NULL);

  g_autofree char *path = g_file_get_path (recovery->copy);
  g_autoptr (GVariant) target = g_variant_ref_sink (g_variant_new_string (path));
  g_autofree char *recover = g_action_print_detailed_name ("win.recover", target);
  g_autofree char *drop = g_action_print_detailed_name ("win.drop-recovery", target);
  const TrNoticeButton buttons[] = { { _("Recover"), recover }, { _("Delete it"), drop } };
  g_autoptr (GDateTime) when = g_date_time_new_from_unix_local (recovery->saved_at);
  g_autofree char *date = when != NULL ? g_date_time_format (when, "%x %H:%M") : g_strdup ("–");
  g_autofree char *name = dup_recovery_name (recovery);
  g_autofree char *sentence = g_strdup_printf (_("“%s” was not saved when the program last ended. There is a copy of %s."), name, date);

  tr_notices_show (self->notices, path, sentence, buttons, G_N_ELEMENTS (buttons));
}

void
tr_window_recover (TrWindow   *self,
                   const char *path)
{
  tr_application_recover (get_application (self), path, self);
}

void
tr_window_drop_recovery (TrWindow   *self,
                         const char *path)
{
  tr_application_drop_recovery (get_application (self), path);
}

/* Close ********************************************************************/

enum { CLOSE_CANCEL, CLOSE_DISCARD, CLOSE_SAVE };

static void
close_answered_cb (GObject      *source,
                   GAsyncResult *result,
                   gpointer      user_data)
{
  TrWindow *self = TR_WINDOW (source);
  int answer = tr_compat_ask_finish (result);

  self->is_asking = FALSE;
  if (answer == CLOSE_DISCARD)
    {
      tr_document_discard_recovery (self->document);
      gtk_window_destroy (GTK_WINDOW (self));
    }
  else if (answer == CLOSE_SAVE)
    {
      self->closes_when_saved = TRUE;
      tr_window_save (self);
    }
}

gboolean
tr_window_ask_before_closing (TrWindow *self)
{
  const char *const buttons[] = { _("_Cancel"), _("_Discard"), _("_Save"), NULL };
  g_autofree char *name = NULL;
  g_autofree char *message = NULL;

  if (!tr_document_is_modified (self->document))
    return FALSE;
  if (self->is_asking)
    return TRUE;

  name = tr_document_dup_display_name (self->document);
  message = g_strdup_printf (_("Save the changes to “%s”?"), name);
  self->is_asking = TRUE;
  give_up_closing (self);
  tr_compat_ask_async (GTK_WINDOW (self), message, _("What is not saved is lost when the window closes."),
                       buttons, CLOSE_CANCEL, CLOSE_SAVE, tr_window_start_asking (self), close_answered_cb, NULL);

  return TRUE;
}
