/* disk.c: files read whole, and replaced whole or not at all
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * At every moment the name stands for the whole old file or the whole new one,
 * also after a power cut. Because the new file is another file, hard links to
 * the old one keep the old text, and foreign owners and access lists are not
 * carried over: that is the price, and it is paid every time, rather than
 * writing in place when it would have to be paid.
 */

#include "disk.h"

#include <errno.h>
#include <fcntl.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include <glib/gstdio.h>

#include "document.h"

#define MAX_BACKUP_BYTES (64 * 1024 * 1024)

static gboolean
fail (GError     **error,
      int          saved_errno,
      const char  *what,
      const char  *path)
{
  g_autofree char *name = g_filename_display_name (path);

  g_set_error (error, G_FILE_ERROR, (int) g_file_error_from_errno (saved_errno), "%s “%s”: %s.",
               what, name, g_strerror (saved_errno));

  return FALSE;
}

/* State */

static void
state_from_stat (const struct stat *stat,
                 TrDiskState       *state)
{
  *state = (TrDiskState) {
    TRUE, (guint64) stat->st_dev, (guint64) stat->st_ino, (guint64) stat->st_size,
    (gint64) stat->st_mtim.tv_sec, (gint64) stat->st_mtim.tv_nsec
  };
}

void
tr_disk_get_state (const char  *path,
                   TrDiskState *state)
{
  struct stat now;

  *state = (TrDiskState) { FALSE };
  if (stat (path, &now) == 0)
    state_from_stat (&now, state);
}

gboolean
tr_disk_state_equal (const TrDiskState *a,
                     const TrDiskState *b)
{
  return a->exists == b->exists
         && a->device == b->device
         && a->inode == b->inode
         && a->size == b->size
         && a->mtime_s == b->mtime_s
         && a->mtime_ns == b->mtime_ns;
}

/* Reading */

static char *
read_up_to (int     fd,
            gsize   max,
            gsize  *length)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  guint8 buffer[65536];

  while (bytes->len < max)
    {
      gssize n = read (fd, buffer, MIN (sizeof buffer, max - bytes->len));

      if (n < 0 && errno == EINTR)
        continue;
      if (n < 0)
        return NULL;
      if (n == 0)
        break;
      g_byte_array_append (bytes, buffer, (guint) n);
    }
  *length = bytes->len;
  g_byte_array_append (bytes, (const guint8 *) "", 1);

  return (char *) g_byte_array_free (g_steal_pointer (&bytes), FALSE);
}

char *
tr_disk_read (const char   *path,
              gsize         max_bytes,
              gsize        *length,
              TrDiskState  *state,
              GError      **error)
{
  struct stat now;
  char *bytes = NULL;
  int fd = g_open (path, O_RDONLY | O_CLOEXEC | O_NONBLOCK, 0);

  if (fd < 0)
    {
      fail (error, errno, "Cannot open", path);
      return NULL;
    }
  if (fstat (fd, &now) != 0)
    fail (error, errno, "Cannot read", path);
  else if (S_ISDIR (now.st_mode))
    fail (error, EISDIR, "Cannot read", path);
  else if ((bytes = read_up_to (fd, max_bytes + 1, length)) == NULL)
    fail (error, errno, "Cannot read", path);
  else if (state != NULL)
    state_from_stat (&now, state);
  close (fd);

  return bytes;
}

/* Writing */

static gboolean
write_all (int         fd,
           const char *bytes,
           gsize       length)
{
  while (length > 0)
    {
      gssize n = write (fd, bytes, length);

      if (n < 0 && errno == EINTR)
        continue;
      if (n < 0)
        return FALSE;
      bytes += n;
      length -= (gsize) n;
    }

  return TRUE;
}

char *
tr_disk_dup_target (const char *path)
{
  g_autofree char *target = g_strdup (path);

  for (guint n_links = 0; n_links < 40; n_links++)
    {
      g_autofree char *link = g_file_read_link (target, NULL);

      if (link == NULL)
        break;
      if (!g_path_is_absolute (link))
        {
          g_autofree char *folder = g_path_get_dirname (target);

          g_free (target);
          target = g_build_filename (folder, link, NULL);
        }
      else
        {
          g_free (target);
          target = g_steal_pointer (&link);
        }
    }

  return g_steal_pointer (&target);
}

static void
sync_folder (const char *path)
{
  g_autofree char *folder = g_path_get_dirname (path);
  int fd = g_open (folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC, 0);

  if (fd < 0)
    return;
  /* Some file systems cannot sync a folder; the file itself is safe by then. */
  (void) fsync (fd);
  close (fd);
}

static gboolean
refuse_target (const char  *target,
               const char  *why,
               GError     **error)
{
  g_autofree char *shown = g_filename_display_name (target);

  g_set_error (error, TR_TRIAL_ERROR, TR_TRIAL_ERROR_NO_TEMPORARY,
               "Cannot save safely as “%s”: %s. Nothing was changed.", shown, why);

  return FALSE;
}

/* A rename would go through where writing would not: over a read-only file, a
 * device, a chain of links that bites its tail. */
static gboolean
check_target (const char  *target,
              struct stat *was,
              gboolean    *exists,
              GError     **error)
{
  *exists = lstat (target, was) == 0;
  if (!*exists)
    return TRUE;
  if (!S_ISREG (was->st_mode))
    return refuse_target (target, "it is not a regular file", error);
  if (access (target, W_OK) != 0)
    return refuse_target (target, g_strerror (errno), error);

  return TRUE;
}

static int
make_temporary (const char  *target,
                guint        mode,
                char       **temporary,
                GError     **error)
{
  g_autofree char *folder = g_path_get_dirname (target);
  g_autofree char *path = g_build_filename (folder, ".tourier-XXXXXX", NULL);   /* never too long, whatever the name */
  int fd = g_mkstemp_full (path, O_RDWR | O_CLOEXEC, (int) mode);

  if (fd < 0)
    {
      g_autofree char *why = g_strconcat ("no file can be made beside it (", g_strerror (errno), ")", NULL);

      refuse_target (target, why, error);
    }
  *temporary = g_steal_pointer (&path);

  return fd;
}

gboolean
tr_disk_can_replace (const char  *path,
                     GError     **error)
{
  g_autofree char *target = tr_disk_dup_target (path);
  g_autofree char *temporary = NULL;
  struct stat was;
  gboolean exists;
  int fd = check_target (target, &was, &exists, error) ? make_temporary (target, 0600, &temporary, error) : -1;

  if (fd < 0)
    return FALSE;
  close (fd);
  g_unlink (temporary);

  return TRUE;
}

static gboolean
fill_temporary (int                fd,
                const char        *bytes,
                gsize              length,
                const struct stat *was,
                TrDiskState       *state)
{
  struct stat now;

  if (!write_all (fd, bytes, length)
      || (was != NULL && fchmod (fd, was->st_mode & 07777) != 0)
      || fsync (fd) != 0
      || fstat (fd, &now) != 0)
    return FALSE;
  state_from_stat (&now, state);

  return TRUE;
}

gboolean
tr_disk_replace (const char   *path,
                 const char   *bytes,
                 gsize         length,
                 guint         mode,
                 TrDiskState  *state,
                 GError      **error)
{
  g_autofree char *target = tr_disk_dup_target (path);
  g_autofree char *temporary = NULL;
  TrDiskState written = { FALSE };
  struct stat was;
  gboolean exists;
  int fd, saved_errno;

  if (!check_target (target, &was, &exists, error))
    return FALSE;
  fd = make_temporary (target, exists ? 0600 : mode, &temporary, error);
  if (fd < 0)
    return FALSE;

  saved_errno = fill_temporary (fd, bytes, length, exists ? &was : NULL, &written) ? 0 : errno;
  if (close (fd) != 0 && saved_errno == 0)
    saved_errno = errno;
  if (saved_errno == 0 && g_rename (temporary, target) != 0)
    saved_errno = errno;
  if (saved_errno != 0)
    {
      g_unlink (temporary);
      return fail (error, saved_errno, "Cannot save", target);
    }

  sync_folder (target);
  if (state != NULL)
    *state = written;

  return TRUE;
}

gboolean
tr_disk_back_up (const char  *path,
                 GError     **error)
{
  g_autofree char *target = tr_disk_dup_target (path);
  g_autofree char *backup = g_strconcat (target, "~", NULL);
  g_autofree char *bytes = NULL;
  struct stat was;
  gsize length;

  if (stat (target, &was) != 0)
    return TRUE;
  if (was.st_size > MAX_BACKUP_BYTES)
    return fail (error, EFBIG, "Cannot back up", target);
  bytes = tr_disk_read (target, MAX_BACKUP_BYTES, &length, NULL, error);

  /* A link of that name leads to somebody else's file: the link goes, not the file. */
  if (bytes != NULL && g_file_test (backup, G_FILE_TEST_IS_SYMLINK) && g_unlink (backup) != 0)
    return fail (error, errno, "Cannot back up", target);

  return bytes != NULL && tr_disk_replace (backup, bytes, length, was.st_mode & 07777, NULL, error);
}
