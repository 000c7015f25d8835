/* compat.c: what GTK has had since 4.10, for the older one too
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The older dialogs are turned into a GTask each. The chooser is ours until
 * it has answered (GTK keeps no reference to it), and then it is destroyed
 * and released. A cancelled task closes its dialog.
 */

/* This unit alone uses both what is newer than the floor and what is older. */
#undef GDK_VERSION_MIN_REQUIRED
#undef GDK_VERSION_MAX_ALLOWED
#define GDK_DISABLE_DEPRECATION_WARNINGS

#include "config.h"

#include "compat.h"

#if GTK_CHECK_VERSION (4, 10, 0)

/* Takes all three. */
static void
return_file (GTask  *owned,
             GFile  *file,
             GError *error)
{
  g_autoptr (GTask) task = owned;

  if (file != NULL)
    g_task_return_pointer (task, file, g_object_unref);
  else if (error == NULL || g_error_matches (error, GTK_DIALOG_ERROR, GTK_DIALOG_ERROR_DISMISSED))
    {
      g_clear_error (&error);
      g_task_return_pointer (task, NULL, NULL);
    }
  else
    g_task_return_error (task, error);
}

static GtkFileDialog *
new_file_dialog (const char    *title,
                 GtkFileFilter *filter)
{
  GtkFileDialog *dialog = gtk_file_dialog_new ();

  gtk_file_dialog_set_title (dialog, title);
  if (filter != NULL)
    {
      g_autoptr (GListStore) filters = g_list_store_new (GTK_TYPE_FILE_FILTER);

      g_list_store_append (filters, filter);
      gtk_file_dialog_set_filters (dialog, G_LIST_MODEL (filters));
    }

  return dialog;
}

static void
file_opened_cb (GObject      *source,
                GAsyncResult *result,
                gpointer      user_data)
{
  GError *error = NULL;
  GFile *file = gtk_file_dialog_open_finish (GTK_FILE_DIALOG (source), result, &error);

  return_file (user_data, file, error);
}

static void
file_saved_cb (GObject      *source,
               GAsyncResult *result,
               gpointer      user_data)
{
  GError *error = NULL;
  GFile *file = gtk_file_dialog_save_finish (GTK_FILE_DIALOG (source), result, &error);

  return_file (user_data, file, error);
}

static void
open_file (GtkWindow     *parent,
           const char    *title,
           GtkFileFilter *filter,
           GTask         *task)
{
  g_autoptr (GtkFileDialog) dialog = new_file_dialog (title, filter);

  gtk_file_dialog_open (dialog, parent, g_task_get_cancellable (task), file_opened_cb, g_object_ref (task));
}

static void
save_file (GtkWindow     *parent,
           const char    *title,
           GtkFileFilter *filter,
           GFile         *folder,
           const char    *name,
           GTask         *task)
{
  g_autoptr (GtkFileDialog) dialog = new_file_dialog (title, filter);

  if (folder != NULL)
    gtk_file_dialog_set_initial_folder (dialog, folder);
  gtk_file_dialog_set_initial_name (dialog, name);
  gtk_file_dialog_save (dialog, parent, g_task_get_cancellable (task), file_saved_cb, g_object_ref (task));
}

static void
answered_cb (GObject      *source,
             GAsyncResult *result,
             gpointer      user_data)
{
  g_autoptr (GTask) task = user_data;
  g_autoptr (GError) error = NULL;
  int button = gtk_alert_dialog_choose_finish (GTK_ALERT_DIALOG (source), result, &error);

  if (error != NULL)
    button = GPOINTER_TO_INT (g_task_get_task_data (task));
  g_task_return_int (task, button);
}

static void
ask (GtkWindow         *parent,
     const char        *message,
     const char        *detail,
     const char *const *buttons,
     int                cancel_button,
     int                default_button,
     GTask             *task)
{
  g_autoptr (GtkAlertDialog) dialog = gtk_alert_dialog_new ("%s", message);

  gtk_alert_dialog_set_detail (dialog, detail);
  gtk_alert_dialog_set_buttons (dialog, buttons);
  gtk_alert_dialog_set_cancel_button (dialog, cancel_button);
  gtk_alert_dialog_set_default_button (dialog, default_button);
  gtk_alert_dialog_choose (dialog, parent, g_task_get_cancellable (task), answered_cb, g_object_ref (task));
}

#else /* before 4.10 */

/* The dialog of a task and how it hears of a cancelled operation. */
typedef struct
{
  GObject *dialog;
  gulong cancelled_handler;
  int cancel_button;
} Pending;

static void
pending_free (gpointer data)
{
  Pending *pending = data;

  g_clear_object (&pending->dialog);
  g_free (pending);
}

static void
close_dialog (GObject *dialog)
{
  if (GTK_IS_NATIVE_DIALOG (dialog))
    gtk_native_dialog_destroy (GTK_NATIVE_DIALOG (dialog));
  else
    gtk_window_destroy (GTK_WINDOW (dialog));
}

/* The task is done: TRUE the first time, then the caller returns a value. */
static gboolean
settle (GTask *task)
{
  Pending *pending = g_task_get_task_data (task);

  if (pending->dialog == NULL)
    return FALSE;

  g_autoptr (GObject) dialog = g_steal_pointer (&pending->dialog);

  if (pending->cancelled_handler != 0)
    g_signal_handler_disconnect (g_task_get_cancellable (task), pending->cancelled_handler);
  pending->cancelled_handler = 0;
  g_signal_handlers_disconnect_by_data (dialog, task);
  close_dialog (dialog);

  return TRUE;
}

static gboolean
cancel_in_idle (gpointer user_data)
{
  GTask *task = user_data;

  if (settle (task))
    {
      g_task_return_new_error (task, G_IO_ERROR, G_IO_ERROR_CANCELLED, "The question was withdrawn");
      g_object_unref (task);
    }

  return G_SOURCE_REMOVE;
}

/* A handler must not disconnect itself from a cancellable, so it only asks. */
static void
cancelled_cb (GCancellable *cancellable,
              GTask        *task)
{
  g_idle_add_full (G_PRIORITY_DEFAULT, cancel_in_idle, g_object_ref (task), g_object_unref);
}

/* Takes the dialog and a reference on the task, which the answer gives back. */
static void
start (GTask   *task,
       GObject *dialog,
       int      cancel_button)
{
  Pending *pending = g_new0 (Pending, 1);
  GCancellable *cancellable = g_task_get_cancellable (task);

  pending->dialog = dialog;
  pending->cancel_button = cancel_button;
  g_task_set_task_data (task, pending, pending_free);
  g_object_ref (task);
  if (cancellable != NULL && !g_cancellable_is_cancelled (cancellable))
    pending->cancelled_handler = g_signal_connect (cancellable, "cancelled", G_CALLBACK (cancelled_cb), task);
}

static void
file_chosen_cb (GtkNativeDialog *dialog,
                int              response,
                GTask           *task)
{
  g_autoptr (GFile) file = response == GTK_RESPONSE_ACCEPT ? gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog)) : NULL;

  if (!settle (task))
    return;

  g_task_return_pointer (task, g_steal_pointer (&file), g_object_unref);
  g_object_unref (task);
}

static GtkFileChooserNative *
show_chooser (GtkWindow            *parent,
              const char           *title,
              GtkFileFilter        *filter,
              GtkFileChooserAction  action,
              GTask                *task)
{
  GtkFileChooserNative *chooser = gtk_file_chooser_native_new (title, parent, action, NULL, NULL);

  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (chooser), TRUE);
  if (filter != NULL)
    gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (chooser), filter);
  start (task, G_OBJECT (chooser), 0);
  g_signal_connect (chooser, "response", G_CALLBACK (file_chosen_cb), task);

  return chooser;
}

static void
open_file (GtkWindow     *parent,
           const char    *title,
           GtkFileFilter *filter,
           GTask         *task)
{
  GtkFileChooserNative *chooser = show_chooser (parent, title, filter, GTK_FILE_CHOOSER_ACTION_OPEN, task);

  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

static void
save_file (GtkWindow     *parent,
           const char    *title,
           GtkFileFilter *filter,
           GFile         *folder,
           const char    *name,
           GTask         *task)
{
  GtkFileChooserNative *chooser = show_chooser (parent, title, filter, GTK_FILE_CHOOSER_ACTION_SAVE, task);

  if (folder != NULL)
    gtk_file_chooser_set_current_folder (GTK_FILE_CHOOSER (chooser), folder, NULL);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (chooser), name);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

static void
answered_cb (GtkDialog *dialog,
             int        response,
             GTask     *task)
{
  Pending *pending = g_task_get_task_data (task);
  int button = response < 0 ? pending->cancel_button : response;

  if (!settle (task))
    return;

  g_task_return_int (task, button);
  g_object_unref (task);
}

static void
ask (GtkWindow         *parent,
     const char        *message,
     const char        *detail,
     const char *const *buttons,
     int                cancel_button,
     int                default_button,
     GTask             *task)
{
  GtkWidget *dialog = gtk_message_dialog_new (parent, GTK_DIALOG_MODAL | GTK_DIALOG_DESTROY_WITH_PARENT | GTK_DIALOG_USE_HEADER_BAR,
                                              GTK_MESSAGE_QUESTION, GTK_BUTTONS_NONE, "%s", message);

  if (detail != NULL)
    gtk_message_dialog_format_secondary_text (GTK_MESSAGE_DIALOG (dialog), "%s", detail);
  for (int i = 0; buttons[i] != NULL; i++)
    gtk_dialog_add_button (GTK_DIALOG (dialog), buttons[i], i);
  gtk_dialog_set_default_response (GTK_DIALOG (dialog), default_button);
  gtk_accessible_update_property (GTK_ACCESSIBLE (dialog), GTK_ACCESSIBLE_PROPERTY_LABEL, message, -1);
  start (task, g_object_ref (G_OBJECT (dialog)), cancel_button);
  g_signal_connect (dialog, "response", G_CALLBACK (answered_cb), task);
  gtk_window_present (GTK_WINDOW (dialog));
}

#endif

void
tr_compat_open_file_async (GtkWindow           *parent,
                           const char          *title,
                           GtkFileFilter       *filter,
                           GCancellable        *cancellable,
                           GAsyncReadyCallback  callback,
                           gpointer             user_data)
{
  g_return_if_fail (GTK_IS_WINDOW (parent));

  g_autoptr (GTask) task = g_task_new (parent, cancellable, callback, user_data);

  g_task_set_source_tag (task, tr_compat_open_file_async);
  open_file (parent, title, filter, task);
}

GFile *
tr_compat_open_file_finish (GAsyncResult  *result,
                            GError       **error)
{
  g_return_val_if_fail (G_IS_TASK (result), NULL);

  return g_task_propagate_pointer (G_TASK (result), error);
}

void
tr_compat_save_file_async (GtkWindow           *parent,
                           const char          *title,
                           GtkFileFilter       *filter,
                           GFile               *folder,
                           const char          *name,
                           GCancellable        *cancellable,
                           GAsyncReadyCallback  callback,
                           gpointer             user_data)
{
  g_return_if_fail (GTK_IS_WINDOW (parent));
  g_return_if_fail (name != NULL);

  g_autoptr (GTask) task = g_task_new (parent, cancellable, callback, user_data);

  g_task_set_source_tag (task, tr_compat_save_file_async);
  save_file (parent, title, filter, folder, name, task);
}

GFile *
tr_compat_save_file_finish (GAsyncResult  *result,
                            GError       **error)
{
  g_return_val_if_fail (G_IS_TASK (result), NULL);

  return g_task_propagate_pointer (G_TASK (result), error);
}

void
tr_compat_ask_async (GtkWindow           *parent,
                     const char          *message,
                     const char          *detail,
                     const char *const   *buttons,
                     int                  cancel_button,
                     int                  default_button,
                     GCancellable        *cancellable,
                     GAsyncReadyCallback  callback,
                     gpointer             user_data)
{
  g_return_if_fail (GTK_IS_WINDOW (parent));
  g_return_if_fail (buttons != NULL);

  g_autoptr (GTask) task = g_task_new (parent, cancellable, callback, user_data);

  g_task_set_source_tag (task, tr_compat_ask_async);
#if GTK_CHECK_VERSION (4, 10, 0)
  g_task_set_task_data (task, GINT_TO_POINTER (cancel_button), NULL);
#endif
  ask (parent, message, detail, buttons, cancel_button, default_button, task);
}

int
tr_compat_ask_finish (GAsyncResult *result)
{
  g_return_val_if_fail (G_IS_TASK (result), -1);

  return (int) g_task_propagate_int (G_TASK (result), NULL);
}
