/* recipe-read.c: a recipe read beside the window's own work
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "recipe-read.h"

#include <glib/gi18n-lib.h>

typedef struct {
  GBytes *bytes;                 /* NULL: not read yet */
  GFile *file;                   /* NULL: the bytes came from elsewhere */
  guint index;
} Reading;

static void
reading_free (Reading *reading)
{
  g_clear_pointer (&reading->bytes, g_bytes_unref);
  g_clear_object (&reading->file);
  g_free (reading);
}

static void
explain (GError **error,
         GFile   *file)
{
  g_autofree char *name = g_file_get_basename (file);
  g_autofree char *display = g_filename_display_name (name);

  if (error != NULL && *error != NULL)
    /* Translators: "“buns.txt” cannot be read: Permission denied" */
    g_prefix_error (error, _("“%s” cannot be read: "), display);
}

/* A pipe or a folder has no end, or no beginning. */
static gboolean
is_regular (GFile         *file,
            GCancellable  *cancellable,
            GError       **error)
{
  g_autoptr (GFileInfo) info = g_file_query_info (file, G_FILE_ATTRIBUTE_STANDARD_TYPE, G_FILE_QUERY_INFO_NONE, cancellable, error);

  if (info == NULL)
    {
      if (error != NULL && g_error_matches (*error, G_IO_ERROR, G_IO_ERROR_NOT_FOUND))
        {
          g_clear_error (error);
          g_set_error (error, G_IO_ERROR, G_IO_ERROR_NOT_FOUND, _("it is not there any more."));
        }
      return FALSE;
    }
  if (g_file_info_get_file_type (info) == G_FILE_TYPE_REGULAR)
    return TRUE;
  g_set_error (error, G_IO_ERROR, G_IO_ERROR_NOT_REGULAR_FILE, _("it is not a file."));

  return FALSE;
}

/* Never more than one byte over what is taken, however long the file is. */
static GBytes *
load (GFile         *file,
      GCancellable  *cancellable,
      GError       **error)
{
  g_autoptr (GFileInputStream) stream = NULL;
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  guint8 block[64 * 1024];

  if (!is_regular (file, cancellable, error))
    return NULL;
  stream = g_file_read (file, cancellable, error);
  while (stream != NULL && bytes->len <= TR_RECIPE_MAX_BYTES)
    {
      gssize n_read = g_input_stream_read (G_INPUT_STREAM (stream), block, sizeof block, cancellable, error);

      if (n_read < 0)
        return NULL;
      if (n_read == 0)
        break;
      g_byte_array_append (bytes, block, (guint) n_read);
    }

  return stream != NULL ? g_byte_array_free_to_bytes (g_steal_pointer (&bytes)) : NULL;
}

static void
read_in_thread (GTask        *task,
                gpointer      source,
                gpointer      data,
                GCancellable *cancellable)
{
  Reading *reading = data;
  g_autofree char *name = reading->file != NULL ? g_file_get_basename (reading->file) : NULL;
  GError *error = NULL;
  TrRecipe *recipe;
  gsize length;
  const char *bytes;

  if (reading->bytes == NULL)
    {
      reading->bytes = load (reading->file, cancellable, &error);
      explain (&error, reading->file);
    }
  if (reading->bytes == NULL)
    {
      g_task_return_error (task, error);
      return;
    }

  bytes = g_bytes_get_data (reading->bytes, &length);
  recipe = tr_recipe_read_nth (bytes, length, name, reading->index, &error);
  if (recipe != NULL)
    g_task_return_pointer (task, recipe, (GDestroyNotify) tr_recipe_free);
  else
    g_task_return_error (task, error);
}

void
tr_recipe_read_async (GBytes              *bytes,
                      GFile               *file,
                      guint                index,
                      GCancellable        *cancellable,
                      GAsyncReadyCallback  callback,
                      gpointer             user_data)
{
  g_return_if_fail (bytes != NULL || G_IS_FILE (file));

  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, user_data);
  Reading *reading = g_new0 (Reading, 1);

  reading->bytes = bytes != NULL ? g_bytes_ref (bytes) : NULL;
  g_set_object (&reading->file, file);
  reading->index = index;
  g_task_set_source_tag (task, tr_recipe_read_async);
  g_task_set_task_data (task, reading, (GDestroyNotify) reading_free);
  g_task_run_in_thread (task, read_in_thread);
}

TrRecipe *
tr_recipe_read_finish (GAsyncResult  *result,
                       GBytes       **bytes,
                       GError       **error)
{
  g_return_val_if_fail (g_task_is_valid (result, NULL), NULL);

  Reading *reading = g_task_get_task_data (G_TASK (result));

  if (bytes != NULL)
    *bytes = reading->bytes != NULL ? g_bytes_ref (reading->bytes) : NULL;

  return g_task_propagate_pointer (G_TASK (result), error);
}
