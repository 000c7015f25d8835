/* application.c: the windows of one running Tourier
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Holds what all windows share: the preferences, the folder of the recovery
 * copies, and the copies found at the start.
 */

#include "config.h"

#include "application.h"

#include <glib/gi18n-lib.h>
#include <locale.h>

#include "actions.h"
#include "start-page.h"

struct _TrApplication
{
  GtkApplication parent_instance;

  /* Owned References */
  TrPreferences *preferences;
  GFile *state_folder;
  GPtrArray *recoveries;         /* TrRecovery; NULL: not looked for yet */
};

G_DEFINE_FINAL_TYPE (TrApplication, tr_application, GTK_TYPE_APPLICATION)

TrPreferences *
tr_application_get_preferences (TrApplication *self)
{
  g_return_val_if_fail (TR_IS_APPLICATION (self), NULL);

  return self->preferences;
}

/* Windows ******************************************************************/

static TrWindow *
add_window (TrApplication *self,
            TrDocument    *document)
{
  TrWindow *window = TR_WINDOW (tr_window_new (GTK_APPLICATION (self), self->preferences, self->state_folder, document));

  if (self->recoveries == NULL)
    {
      self->recoveries = tr_recovery_list (self->state_folder);
      for (guint i = 0; i < self->recoveries->len; i++)
        tr_window_offer_recovery (window, g_ptr_array_index (self->recoveries, i));
    }

  return window;
}

TrWindow *
tr_application_show (TrApplication *self,
                     TrDocument    *document,
                     TrWindow      *from)
{
  g_return_val_if_fail (TR_IS_APPLICATION (self), NULL);
  g_return_val_if_fail (TR_IS_DOCUMENT (document), NULL);
  g_return_val_if_fail (from == NULL || TR_IS_WINDOW (from), NULL);

  if (from != NULL && tr_window_is_pristine (from))
    tr_window_set_document (from, document);
  else
    from = add_window (self, document);

  gtk_window_present (GTK_WINDOW (from));
  return from;
}

static TrWindow *
find_window (TrApplication *self,
             GFile         *file)
{
  for (GList *window = gtk_application_get_windows (GTK_APPLICATION (self)); window != NULL; window = window->next)
    {
      GFile *its_file = TR_IS_WINDOW (window->data) ? tr_document_get_file (tr_window_get_document (window->data)) : NULL;

      if (its_file != NULL && g_file_equal (its_file, file))
        return window->data;
    }

  return NULL;
}

gboolean
tr_application_is_open_elsewhere (TrApplication *self,
                                  GFile         *file,
                                  TrWindow      *here)
{
  g_return_val_if_fail (TR_IS_APPLICATION (self), FALSE);

  TrWindow *window = find_window (self, file);

  return window != NULL && window != here;
}

static TrWindow *
tell_error (TrApplication *self,
            const GError  *error,
            TrWindow      *from)
{
  g_autoptr (TrDocument) document = tr_document_new ();

  if (from == NULL)
    from = add_window (self, document);
  tr_window_show_error (from, error->message);
  gtk_window_present (GTK_WINDOW (from));

  return from;
}

TrWindow *
tr_application_open_file (TrApplication *self,
                          GFile         *file,
                          TrWindow      *from)
{
  g_return_val_if_fail (TR_IS_APPLICATION (self), NULL);
  g_return_val_if_fail (G_IS_FILE (file), NULL);

  g_autoptr (TrDocument) document = NULL;
  g_autoptr (GError) error = NULL;
  TrWindow *window = find_window (self, file);

  if (window != NULL)
    {
      gtk_window_present (GTK_WINDOW (window));
      return window;
    }

  document = tr_document_open (file, &error);
  if (document == NULL)
    return tell_error (self, error, from);

  tr_start_page_add_recent (file);
  return tr_application_show (self, document, from);
}

/* Recovery *****************************************************************/

static guint
find_recovery (TrApplication *self,
               const char    *path)
{
  for (guint i = 0; self->recoveries != NULL && i < self->recoveries->len; i++)
    {
      const TrRecovery *recovery = g_ptr_array_index (self->recoveries, i);
      g_autofree char *its_path = g_file_get_path (recovery->copy);

      if (g_strcmp0 (its_path, path) == 0)
        return i;
    }

  return G_MAXUINT;
}

void
tr_application_drop_recovery (TrApplication *self,
                              const char    *path)
{
  g_return_if_fail (TR_IS_APPLICATION (self));
  g_return_if_fail (path != NULL);

  guint index = find_recovery (self, path);

  if (index == G_MAXUINT)
    return;

  const TrRecovery *recovery = g_ptr_array_index (self->recoveries, index);

  g_file_delete (recovery->copy, NULL, NULL);
  g_ptr_array_remove_index (self->recoveries, index);
}

void
tr_application_recover (TrApplication *self,
                        const char    *path,
                        TrWindow      *from)
{
  g_return_if_fail (TR_IS_APPLICATION (self));
  g_return_if_fail (path != NULL);

  guint index = find_recovery (self, path);
  g_autoptr (TrDocument) document = NULL;
  g_autoptr (GError) error = NULL;

  if (index == G_MAXUINT)
    return;

  document = tr_recovery_open (g_ptr_array_index (self->recoveries, index), &error);
  if (document == NULL)
    {
      tell_error (self, error, from);
      return;
    }

  /* The document looks after its copy from here on. */
  g_ptr_array_remove_index (self->recoveries, index);
  tr_application_show (self, document, from);
  tr_document_write_recovery (document);
}

/* Starting *****************************************************************/

static void
show_colours (TrApplication *self)
{
  GtkSettings *settings = gtk_settings_get_default ();
  const char *colours = tr_preferences_get_colours (self->preferences);
  gboolean is_dark, wants_dark = g_str_equal (colours, "dark");

  if (g_str_equal (colours, "system"))
    {
      gtk_settings_reset_property (settings, "gtk-application-prefer-dark-theme");
      return;
    }

  /* Setting it reads the whole theme again, even to what it is. */
  g_object_get (settings, "gtk-application-prefer-dark-theme", &is_dark, NULL);
  if (is_dark != wants_dark)
    g_object_set (settings, "gtk-application-prefer-dark-theme", wants_dark, NULL);
}

static void
add_preference_action (TrApplication *self,
                       const char    *name)
{
  g_autoptr (GPropertyAction) action = g_property_action_new (name, self->preferences, name);

  g_action_map_add_action (G_ACTION_MAP (self), G_ACTION (action));
}

static void
tr_application_startup (GApplication *application)
{
  TrApplication *self = TR_APPLICATION (application);
  g_autoptr (GtkCssProvider) style = gtk_css_provider_new ();

  G_APPLICATION_CLASS (tr_application_parent_class)->startup (application);

  gtk_window_set_default_icon_name (TR_APP_ID);
  gtk_icon_theme_add_resource_path (gtk_icon_theme_get_for_display (gdk_display_get_default ()), "/io/github/tourier/icons");
  gtk_css_provider_load_from_resource (style, "/io/github/tourier/style.css");
  gtk_style_context_add_provider_for_display (gdk_display_get_default (), GTK_STYLE_PROVIDER (style),
                                              GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
  add_preference_action (self, "units");
  add_preference_action (self, "colours");
  tr_actions_set_accelerators (GTK_APPLICATION (self));
  g_signal_connect_object (self->preferences, "notify::colours", G_CALLBACK (show_colours), self, G_CONNECT_SWAPPED);
  /* The system's are there from the start. */
  if (!g_str_equal (tr_preferences_get_colours (self->preferences), "system"))
    show_colours (self);
}

static void
tr_application_activate (GApplication *application)
{
  g_autoptr (TrDocument) document = tr_document_new ();

  tr_application_show (TR_APPLICATION (application), document, NULL);
}

static void
tr_application_open (GApplication  *application,
                     GFile        **files,
                     int            n_files,
                     const char    *hint)
{
  for (int i = 0; i < n_files; i++)
    tr_application_open_file (TR_APPLICATION (application), files[i], NULL);
}

static void
tr_application_dispose (GObject *object)
{
  TrApplication *self = TR_APPLICATION (object);

  g_clear_object (&self->preferences);
  g_clear_object (&self->state_folder);
  g_clear_pointer (&self->recoveries, g_ptr_array_unref);

  G_OBJECT_CLASS (tr_application_parent_class)->dispose (object);
}

static void
tr_application_class_init (TrApplicationClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tr_application_dispose;
  G_APPLICATION_CLASS (klass)->startup = tr_application_startup;
  G_APPLICATION_CLASS (klass)->activate = tr_application_activate;
  G_APPLICATION_CLASS (klass)->open = tr_application_open;
}

static void
tr_application_init (TrApplication *self)
{
  self->preferences = tr_preferences_new ();
}

TrApplication *
tr_application_new (GApplicationFlags  flags,
                    GFile             *state_folder)
{
  TrApplication *self = g_object_new (TR_TYPE_APPLICATION,
                                      "application-id", TR_APP_ID,
                                      "flags", flags | G_APPLICATION_HANDLES_OPEN,
                                      NULL);
  g_autofree char *path = g_build_filename (g_get_user_state_dir (), "tourier", NULL);

  self->state_folder = state_folder != NULL ? g_object_ref (state_folder) : g_file_new_for_path (path);

  return self;
}

int
tr_application_run (int    argc,
                    char **argv)
{
  g_autoptr (TrApplication) self = tr_application_new (G_APPLICATION_DEFAULT_FLAGS, NULL);

  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, LOCALEDIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
  g_set_application_name ("Tourier");

  return g_application_run (G_APPLICATION (self), argc, argv);
}
