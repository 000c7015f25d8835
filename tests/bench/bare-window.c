/* bare-window.c: the least that a GTK program with a window can be
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the first frame of Tourier is held against.
 */

#include <gtk/gtk.h>

static void
activated_cb (GtkApplication *application)
{
  GtkWidget *window = gtk_application_window_new (application);

  gtk_window_set_title (GTK_WINDOW (window), "Bare");
  gtk_window_set_default_size (GTK_WINDOW (window), 1280, 800);
  gtk_window_present (GTK_WINDOW (window));
}

int
main (int   argc,
      char *argv[])
{
  g_autoptr (GtkApplication) application = gtk_application_new ("io.github.tourier.Bare", G_APPLICATION_DEFAULT_FLAGS);

  g_signal_connect (application, "activate", G_CALLBACK (activated_cb), NULL);

  return g_application_run (G_APPLICATION (application), argc, argv);
}
