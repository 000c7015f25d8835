/* recovery.c: copies of unsaved work, for after a crash
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Name: PID-START-SERIAL.tourier. START is when the process began, in the
 * system's ticks since it booted (field 22 of /proc/PID/stat, see proc(5));
 * where that cannot be read it is 0 and the id alone decides.
 */

#include "recovery.h"

#include <errno.h>
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include <glib/gstdio.h>

#include "members.h"
#include "strict.h"

#define SUFFIX ".tourier"

/* Processes */

/* 0: not known. `ended`, which may be NULL: it has run, and only waits for its
 * parent to ask how it went. */
static guint64
get_start (pid_t     pid,
           gboolean *ended)
{
  g_autofree char *path = g_strdup_printf ("/proc/%ld/stat", (long) pid);
  g_autofree char *stat_text = NULL;
  g_auto (GStrv) fields = NULL;
  const char *after_name;

  /* The second field is the program's name in brackets and may hold anything. */
  if (!g_file_get_contents (path, &stat_text, NULL, NULL)
      || (after_name = strrchr (stat_text, ')')) == NULL)
    return 0;
  fields = g_strsplit (after_name, " ", 0);
  if (ended != NULL)
    *ended = g_strv_length (fields) > 1 && g_str_equal (fields[1], "Z");

  return g_strv_length (fields) > 20 ? g_ascii_strtoull (fields[20], NULL, 10) : 0;
}

static gboolean
is_running (pid_t   pid,
            guint64 start)
{
  gboolean ended = FALSE;
  guint64 now;

  if (kill (pid, 0) != 0 && errno == ESRCH)
    return FALSE;
  now = get_start (pid, &ended);

  return !ended && (start == 0 || now == 0 || start == now);
}

char *
tr_recovery_dup_name (guint serial)
{
  return g_strdup_printf ("%ld-%" G_GUINT64_FORMAT "-%u" SUFFIX, (long) getpid (), get_start (getpid (), NULL), serial);
}

static gboolean
parse_name (const char *name,
            pid_t      *pid,
            guint64    *start)
{
  char *end;
  gint64 id = g_ascii_strtoll (name, &end, 10);

  if (!g_ascii_isdigit (*name) || *end != '-' || id <= 0 || id > G_MAXINT || !g_str_has_suffix (name, SUFFIX))
    return FALSE;
  *pid = (pid_t) id;
  name = end + 1;
  *start = g_ascii_strtoull (name, &end, 10);

  return g_ascii_isdigit (*name) && *end == '-' && g_ascii_isdigit (end[1]);
}

/* The member that a copy has and the document has not */

static void
append_origin (GString           *extra,
               const char        *original,
               const TrDiskState *state)
{
  g_autofree char *escaped = original != NULL ? g_uri_escape_bytes ((const guint8 *) original, strlen (original), "/") : NULL;

  g_string_append_printf (extra, "\"" TR_RECOVERY_MEMBER "\":{\"path\":");
  tr_json_append_string (extra, escaped);
  g_string_append_printf (extra, ",\"state\":\"%d %" G_GUINT64_FORMAT " %" G_GUINT64_FORMAT " %" G_GUINT64_FORMAT
                          " %" G_GINT64_FORMAT " %" G_GINT64_FORMAT "\"}}",
                          state->exists, state->device, state->inode, state->size, state->mtime_s, state->mtime_ns);
}

/* The members of `extra` without the origin, which comes back in `origin`. */
static char *
dup_without_origin (const char  *extra,
                    JsonNode   **origin)
{
  g_autoptr (GString) rest = g_string_new ("{");
  g_autoptr (JsonNode) root = extra != NULL ? tr_strict_parse (extra, strlen (extra), NULL) : NULL;
  JsonObjectIter iter;
  const char *name;
  JsonNode *node;

  *origin = NULL;
  if (root == NULL)
    return NULL;
  json_object_iter_init_ordered (&iter, json_node_get_object (root));
  while (json_object_iter_next_ordered (&iter, &name, &node))
    if (strcmp (name, TR_RECOVERY_MEMBER) == 0)
      {
        *origin = json_node_ref (node);
      }
    else
      {
        if (rest->len > 1)
          g_string_append_c (rest, ',');
        tr_json_append_string (rest, name);
        g_string_append_c (rest, ':');
        tr_strict_append_node (rest, node);
      }
  if (rest->len == 1)
    return NULL;
  g_string_append_c (rest, '}');

  return g_string_free (g_steal_pointer (&rest), FALSE);
}

static const char *
get_text (JsonNode   *origin,
          const char *name)
{
  JsonNode *node = JSON_NODE_HOLDS_OBJECT (origin) ? json_object_get_member (json_node_get_object (origin), name) : NULL;

  return node != NULL && JSON_NODE_HOLDS_VALUE (node) ? json_node_get_string (node) : NULL;
}

static char *
dup_original (JsonNode *origin)
{
  const char *escaped = get_text (origin, "path");
  g_autoptr (GBytes) bytes = escaped != NULL ? g_uri_unescape_bytes (escaped, -1, NULL, NULL) : NULL;

  return bytes != NULL ? g_strndup (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes)) : NULL;
}

static TrDiskState
get_state (JsonNode *origin)
{
  const char *text = get_text (origin, "state");
  g_auto (GStrv) fields = g_strsplit (text != NULL ? text : "", " ", 0);

  if (g_strv_length (fields) != 6)
    return (TrDiskState) { FALSE };

  return (TrDiskState) {
    fields[0][0] == '1',
    g_ascii_strtoull (fields[1], NULL, 10), g_ascii_strtoull (fields[2], NULL, 10), g_ascii_strtoull (fields[3], NULL, 10),
    g_ascii_strtoll (fields[4], NULL, 10), g_ascii_strtoll (fields[5], NULL, 10)
  };
}

/* Copies */

gboolean
tr_recovery_write (const char     *path,
                   const TrTrial  *trial,
                   const char     *original,
                   TrDiskState     state,
                   GError        **error)
{
  g_autoptr (TrTrial) copy = tr_trial_copy (trial);
  g_autoptr (JsonNode) older = NULL;
  g_autofree char *extra = dup_without_origin (trial->extra, &older);
  g_autofree char *folder = g_path_get_dirname (path);
  g_autofree char *text = NULL;
  g_autoptr (GString) with_origin = g_string_new (extra != NULL ? extra : "{");
  gsize length;

  if (extra != NULL)
    with_origin->str[with_origin->len - 1] = ',';
  append_origin (with_origin, original, &state);
  tr_set_text (&copy->extra, with_origin->str);
  text = tr_trial_write (copy, &length);

  if (g_mkdir_with_parents (folder, 0700) != 0)
    g_debug ("cannot make the folder for recovery copies: %s", g_strerror (errno));

  return tr_disk_replace (path, text, length, 0600, NULL, error);
}

TrTrial *
tr_recovery_read (const char   *path,
                  char        **original,
                  TrDiskState  *state,
                  GError      **error)
{
  g_autoptr (TrTrial) trial = tr_trial_read_file (path, error);
  g_autoptr (JsonNode) origin = NULL;
  g_autofree char *extra = NULL;

  if (trial == NULL)
    return NULL;

  extra = dup_without_origin (trial->extra, &origin);
  tr_set_text (&trial->extra, extra);
  *original = origin != NULL ? dup_original (origin) : NULL;
  *state = origin != NULL ? get_state (origin) : (TrDiskState) { FALSE };

  return g_steal_pointer (&trial);
}

void
tr_recovery_free (TrRecovery *recovery)
{
  if (recovery == NULL)
    return;

  g_clear_object (&recovery->copy);
  g_clear_object (&recovery->original);
  g_free (recovery->title);
  g_free (recovery);
}

static TrRecovery *
recovery_new (const char *path)
{
  g_autofree char *original = NULL;
  g_autoptr (TrTrial) trial = NULL;
  TrDiskState state;
  struct stat info;

  if (stat (path, &info) != 0 || !S_ISREG (info.st_mode))
    return NULL;
  trial = tr_recovery_read (path, &original, &state, NULL);
  if (trial == NULL)
    return NULL;

  TrRecovery *recovery = g_new0 (TrRecovery, 1);
  recovery->copy = g_file_new_for_path (path);
  recovery->original = original != NULL ? g_file_new_for_path (original) : NULL;
  recovery->title = g_strdup (trial->title);
  recovery->saved_at = (gint64) info.st_mtim.tv_sec;

  return recovery;
}

static int
compare_newest_first (gconstpointer a,
                      gconstpointer b)
{
  const TrRecovery *left = *(TrRecovery *const *) a, *right = *(TrRecovery *const *) b;

  return left->saved_at < right->saved_at ? 1 : left->saved_at > right->saved_at ? -1 : 0;
}

GPtrArray *
tr_recovery_list (GFile *folder)
{
  g_autofree char *path = g_file_get_path (folder);
  g_autoptr (GDir) dir = path != NULL ? g_dir_open (path, 0, NULL) : NULL;
  GPtrArray *list = g_ptr_array_new_with_free_func ((GDestroyNotify) tr_recovery_free);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *full = g_build_filename (path, name, NULL);
      pid_t pid;
      guint64 start;
      TrRecovery *recovery;

      if (parse_name (name, &pid, &start) && !is_running (pid, start) && (recovery = recovery_new (full)) != NULL)
        g_ptr_array_add (list, recovery);
    }
  g_ptr_array_sort (list, compare_newest_first);

  return list;
}
