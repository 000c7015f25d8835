/* first-frame.c: ends a GTK program when its first frame is painted
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Preloaded into the program as it is. Prints the resident memory of that
 * moment in kB, all of it and what is not backed by a file; whoever started
 * the program takes the time. With TR_BENCH_START, the monotonic time in
 * microseconds, it waits until nothing more is painted and prints as third
 * number how many of them passed until the last frame.
 */

#include <dlfcn.h>
#include <gtk/gtk.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

/* Nothing is painted for so long: everything is there. */
#define QUIET_MS 250

static gint64 last_painted_us;
static guint quiet_timeout;

static void
print_memory (void)
{
  g_autofree char *status = NULL;

  g_file_get_contents ("/proc/self/status", &status, NULL, NULL);
  for (const char *line = status; line != NULL; line = strchr (line, '\n') != NULL ? strchr (line, '\n') + 1 : NULL)
    {
      long kb;

      if (sscanf (line, "VmRSS: %ld", &kb) == 1 || sscanf (line, "RssAnon: %ld", &kb) == 1)
        printf ("%ld ", kb);
    }
}

static void
end (void)
{
  printf ("\n");
  fflush (stdout);
  _exit (0);
}

static gboolean
quiet_cb (gpointer start)
{
  print_memory ();
  printf ("%" G_GINT64_FORMAT, last_painted_us - g_ascii_strtoll (start, NULL, 10));
  end ();

  return G_SOURCE_REMOVE;
}

static void
painted_cb (GdkFrameClock *clock)
{
  const char *start = g_getenv ("TR_BENCH_START");

  if (start == NULL)
    {
      print_memory ();
      end ();
    }

  last_painted_us = g_get_monotonic_time ();
  g_clear_handle_id (&quiet_timeout, g_source_remove);
  quiet_timeout = g_timeout_add (QUIET_MS, quiet_cb, (gpointer) start);
}

/* In place of GTK's own, which it calls. */
G_MODULE_EXPORT void
gtk_window_present (GtkWindow *window)
{
  void (*present) (GtkWindow *) = dlsym (RTLD_NEXT, "gtk_window_present");

  present (window);
  g_signal_connect (gtk_widget_get_frame_clock (GTK_WIDGET (window)), "after-paint", G_CALLBACK (painted_cb), NULL);
}
