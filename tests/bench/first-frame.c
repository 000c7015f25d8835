/* first-frame.c: ends a GTK program when its first frame is painted
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Preloaded into the program as it is. Prints the resident memory of that
 * moment in kB, all of it and what is not backed by a file; whoever started
 * the program takes the time.
 */

#include <dlfcn.h>
#include <gtk/gtk.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

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
  printf ("\n");
  fflush (stdout);
}

static void
painted_cb (GdkFrameClock *clock)
{
  print_memory ();
  _exit (0);
}

/* In place of GTK's own, which it calls. */
G_MODULE_EXPORT void
gtk_window_present (GtkWindow *window)
{
  void (*present) (GtkWindow *) = dlsym (RTLD_NEXT, "gtk_window_present");

  present (window);
  g_signal_connect (gtk_widget_get_frame_clock (GTK_WIDGET (window)), "after-paint", G_CALLBACK (painted_cb), NULL);
}
