/* support.c: driving the real window from a test
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * No main loop of its own: a test turns the context until what it waits for
 * is so.
 */

#include "support.h"

#include <glib/gstdio.h>
#include <locale.h>
#include <stdio.h>

#include "window/strip.h"

/* Everything a test program writes is below this folder. */
static char *files_root;

/* Applications that tests are done with. */
static GPtrArray *ended;

/* Not G_TEST_OPTION_ISOLATE_DIRS: its folders go with each test, but the list
 * of recent files is one a process and is written some time later. */
static void
isolate (void)
{
  const char *given = g_getenv ("TOURIER_TEST_FILES");
  static const char *const variables[] = { "TMPDIR", "HOME", "XDG_DATA_HOME", "XDG_CONFIG_HOME", "XDG_STATE_HOME", "XDG_CACHE_HOME" };

  /* A test's own subprocess writes where its parent does, who cleans up. */
  if (given != NULL)
    return;

  files_root = g_mkdtemp (g_strdup (P_tmpdir "/tourier-ui-XXXXXX"));
  g_assert_nonnull (files_root);
  g_setenv ("TOURIER_TEST_FILES", files_root, TRUE);
  for (guint i = 0; i < G_N_ELEMENTS (variables); i++)
    g_setenv (variables[i], files_root, TRUE);
  /* Each test has an application of its own; on a bus there could be one. */
  g_setenv ("DBUS_SESSION_BUS_ADDRESS", "unix:path=/nonexistent", TRUE);
}

static void
remove_all (GFile *file)
{
  g_autoptr (GFileEnumerator) children = g_file_enumerate_children (file, G_FILE_ATTRIBUTE_STANDARD_NAME,
                                                                    G_FILE_QUERY_INFO_NOFOLLOW_SYMLINKS, NULL, NULL);
  GFile *child;

  while (children != NULL && g_file_enumerator_iterate (children, NULL, &child, NULL, NULL) && child != NULL)
    remove_all (child);
  g_file_delete (file, NULL, NULL);
}

int
ui_run (void)
{
  int status = g_test_run ();

  if (files_root != NULL)
    {
      g_autoptr (GFile) file = g_file_new_for_path (files_root);

      remove_all (file);
      g_clear_pointer (&files_root, g_free);
    }

  return status;
}

gboolean
ui_init (int    *argc,
         char ***argv)
{
  isolate ();
  g_test_init (argc, argv, NULL);
  gtk_disable_setlocale ();
  setlocale (LC_ALL, "C.UTF-8");
  if (!gtk_init_check ())
    {
      g_print ("1..0 # SKIP no display\n");
      return FALSE;
    }
  /* GTK 4.8.3 loses a GDateTime at each look at the list of recent files, and a
   * colour now and then when a style is computed amid a transition. */
  g_object_set (gtk_settings_get_default (), "gtk-recent-files-enabled", FALSE, "gtk-enable-animations", FALSE, NULL);

  return TRUE;
}

static gboolean
time_over_cb (gpointer data)
{
  *(gboolean *) data = TRUE;
  return G_SOURCE_REMOVE;
}

gboolean
ui_wait_until (gboolean (*condition) (gpointer),
               gpointer   data,
               guint      milliseconds)
{
  gboolean is_late = FALSE;
  guint source = g_timeout_add (milliseconds, time_over_cb, &is_late);

  while (!condition (data) && !is_late)
    g_main_context_iteration (NULL, TRUE);
  if (!is_late)
    g_source_remove (source);

  return condition (data);
}

static gboolean
tick_cb (GtkWidget     *widget,
         GdkFrameClock *clock,
         gpointer       data)
{
  return --*(int *) data > 0;
}

static gboolean
is_zero (gpointer data)
{
  return *(int *) data <= 0;
}

void
ui_frames (GtkWidget *widget,
           int        count)
{
  gtk_widget_add_tick_callback (widget, tick_cb, &count, NULL);
  gtk_widget_queue_draw (widget);
  g_assert_true (ui_wait_until (is_zero, &count, 10000));
}

void
ui_settle (void)
{
  while (g_main_context_iteration (NULL, FALSE))
    ;
}

TrApplication *
ui_application_new (void)
{
  g_autofree char *path = g_dir_make_tmp ("tourier-state-XXXXXX", NULL);
  g_autoptr (GFile) folder = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  TrApplication *application = tr_application_new (G_APPLICATION_NON_UNIQUE, folder);

  g_application_register (G_APPLICATION (application), NULL, &error);
  g_assert_no_error (error);

  return application;
}

void
ui_application_free (TrApplication *application)
{
  GList *windows;

  while ((windows = gtk_application_get_windows (GTK_APPLICATION (application))) != NULL)
    {
      gpointer window = windows->data;

      g_object_add_weak_pointer (window, &window);
      gtk_window_destroy (window);
      ui_settle ();
      g_assert_null (window);
    }
  /* Only g_application_run can end one, and it has not run: it is kept. */
  if (ended == NULL)
    ended = g_ptr_array_new ();
  g_ptr_array_add (ended, application);
}

static void
present (TrWindow *window)
{
  gtk_window_present (GTK_WINDOW (window));
  ui_frames (GTK_WIDGET (window), 2);
}

TrWindow *
ui_demo_window_new (TrApplication *application)
{
  g_autofree char *path = ui_write_demo ();
  g_autoptr (GError) error = NULL;
  g_autoptr (TrDocument) document = NULL;
  TrTrial *trial = tr_trial_read_file (path, &error);

  g_assert_no_error (error);
  document = tr_document_new_for_trial (trial);

  TrWindow *window = tr_application_show (application, document, NULL);

  present (window);
  return window;
}

char *
ui_write_demo (void)
{
  g_autoptr (GBytes) bytes = g_resources_lookup_data ("/io/github/tourier/demo.tourier", G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);
  g_autofree char *folder = g_dir_make_tmp ("tourier-file-XXXXXX", NULL);
  char *path = g_build_filename (folder, "demo.tourier", NULL);
  g_autoptr (GError) error = NULL;

  g_assert_nonnull (bytes);
  g_file_set_contents (path, g_bytes_get_data (bytes, NULL), (gssize) g_bytes_get_size (bytes), &error);
  g_assert_no_error (error);

  return path;
}

TrWindow *
ui_file_window_new (TrApplication *application,
                    const char    *path)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  TrWindow *window = tr_application_open_file (application, file, NULL);

  present (window);
  return window;
}

void
ui_act (TrWindow   *window,
        const char *action)
{
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (window), action, NULL));
}

void
ui_act_on (TrWindow   *window,
           const char *action,
           const char *target)
{
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (window), action, "s", target));
}

gboolean
ui_has_label (GtkWidget  *widget,
              const char *label)
{
  g_autofree char *difference = gtk_test_accessible_check_property (GTK_ACCESSIBLE (widget),
                                                                    GTK_ACCESSIBLE_PROPERTY_LABEL, label);

  return difference == NULL;
}

GtkWidget *
ui_find (GtkWidget  *root,
         GType       type,
         const char *label)
{
  if (G_TYPE_CHECK_INSTANCE_TYPE (root, type) && gtk_widget_get_mapped (root) && ui_has_label (root, label))
    return root;

  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = ui_find (child, type, label);

      if (found != NULL)
        return found;
    }

  return NULL;
}

gboolean
ui_says (GtkWidget  *root,
         const char *words)
{
  if (GTK_IS_LABEL (root) && gtk_widget_get_mapped (root))
    {
      g_autoptr (GString) text = g_string_new (gtk_label_get_text (GTK_LABEL (root)));

      g_string_replace (text, "\u00a0", " ", 0);
      g_string_replace (text, "\u202f", " ", 0);
      if (strstr (text->str, words) != NULL)
        return TRUE;
    }

  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL; child = gtk_widget_get_next_sibling (child))
    if (ui_says (child, words))
      return TRUE;

  return FALSE;
}

GtkWidget *
ui_find_type (GtkWidget *root,
              GType      type)
{
  if (G_TYPE_CHECK_INSTANCE_TYPE (root, type))
    return root;

  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = ui_find_type (child, type);

      if (found != NULL)
        return found;
    }

  return NULL;
}

guint
ui_count_type (GtkWidget *root,
               GType      type)
{
  guint count = G_TYPE_CHECK_INSTANCE_TYPE (root, type) ? 1 : 0;

  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL; child = gtk_widget_get_next_sibling (child))
    count += ui_count_type (child, type);

  return count;
}

void
ui_type (GtkWidget  *editable,
         const char *text)
{
  GtkEditable *delegate = gtk_editable_get_delegate (GTK_EDITABLE (editable));
  GtkWidget *target = delegate != NULL ? GTK_WIDGET (delegate) : editable;

  g_assert_true (gtk_widget_grab_focus (target));
  gtk_editable_select_region (GTK_EDITABLE (target), 0, -1);
  gtk_editable_delete_selection (GTK_EDITABLE (target));
  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    {
      int position = gtk_editable_get_position (GTK_EDITABLE (target));

      gtk_editable_insert_text (GTK_EDITABLE (target), p, (int) (g_utf8_next_char (p) - p), &position);
      gtk_editable_set_position (GTK_EDITABLE (target), position);
    }
}

GtkWindow *
ui_get_question (TrWindow *window)
{
  GListModel *toplevels = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (toplevels); i++)
    {
      g_autoptr (GtkWindow) toplevel = g_list_model_get_item (toplevels, i);

      if (GTK_IS_DIALOG (toplevel) && gtk_window_get_transient_for (toplevel) == GTK_WINDOW (window))
        return toplevel;
    }

  return NULL;
}

void
ui_answer (TrWindow *window,
           int       button)
{
  GtkWindow *question = ui_get_question (window);

  g_assert_nonnull (question);
  gtk_dialog_response (GTK_DIALOG (question), button);
  ui_settle ();
}

static gboolean
asks_nothing (gpointer data)
{
  return ui_get_question (data) == NULL;
}

typedef struct { GtkFileChooser *chooser; GFile *folder; } Chosen;

static gboolean
is_in_folder (gpointer data)
{
  Chosen *chosen = data;
  g_autoptr (GFile) folder = gtk_file_chooser_get_current_folder (chosen->chooser);

  return folder != NULL && g_file_equal (folder, chosen->folder);
}

static gboolean
is_in_any_folder (gpointer data)
{
  g_autoptr (GFile) folder = gtk_file_chooser_get_current_folder (data);

  return folder != NULL;
}

/* The chooser looks at a folder before it goes there; one that it opens with
 * would come after ours. */
void
ui_choose (TrWindow   *window,
           const char *folder,
           const char *name)
{
  g_autoptr (GFile) parent = g_file_new_for_path (folder);
  g_autoptr (GError) error = NULL;
  GtkWindow *chooser = ui_get_question (window);

  g_assert_true (GTK_IS_FILE_CHOOSER (chooser));
  g_assert_true (ui_wait_until (is_in_any_folder, chooser, 10000));
  gtk_file_chooser_set_current_folder (GTK_FILE_CHOOSER (chooser), parent, &error);
  g_assert_no_error (error);
  g_assert_true (ui_wait_until (is_in_folder, &(Chosen) { GTK_FILE_CHOOSER (chooser), parent }, 10000));
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (chooser), name);
  ui_settle ();
  gtk_dialog_response (GTK_DIALOG (chooser), GTK_RESPONSE_ACCEPT);
  g_assert_true (ui_wait_until (asks_nothing, window, 10000));
  ui_settle ();
}

GdkTexture *
ui_render (GtkWidget *widget)
{
  g_autoptr (GdkPaintable) paintable = gtk_widget_paintable_new (widget);
  int width = gdk_paintable_get_intrinsic_width (paintable);
  int height = gdk_paintable_get_intrinsic_height (paintable);
  GtkSnapshot *snapshot = gtk_snapshot_new ();
  g_autoptr (GskRenderNode) node = NULL;

  gdk_paintable_snapshot (paintable, snapshot, width, height);
  node = gtk_snapshot_free_to_node (snapshot);
  g_assert_nonnull (node);

  return gsk_renderer_render_texture (gtk_native_get_renderer (gtk_widget_get_native (widget)), node, NULL);
}

void
ui_assert_contract (GtkWidget *(*make) (void))
{
  GtkWidget *widget = g_object_ref_sink (make ());

  g_assert_finalize_object (widget);

  widget = g_object_ref_sink (make ());
  g_object_run_dispose (G_OBJECT (widget));
  g_object_run_dispose (G_OBJECT (widget));
  g_assert_finalize_object (widget);
}

void
ui_set_up (UiFixture     *fixture,
           gconstpointer  data)
{
  fixture->application = ui_application_new ();
  fixture->window = ui_demo_window_new (fixture->application);
}

void
ui_tear_down (UiFixture     *fixture,
              gconstpointer  data)
{
  ui_application_free (fixture->application);
}

const TrTrial *
ui_get_trial (TrWindow *window)
{
  return tr_document_get_trial (tr_window_get_document (window));
}

const char *
ui_get_strip (TrWindow *window)
{
  return tr_strip_get_text (TR_STRIP (tr_window_get_page (window, "strip")));
}

TrDoughs *
ui_get_doughs (TrWindow *window)
{
  return TR_DOUGHS (tr_window_get_page (window, "doughs"));
}

void
ui_edit_pieces (TrWindow *window,
                double    pieces)
{
  TrPage *page = tr_window_get_page (window, "strip");
  TrTrial *draft = tr_document_draft (tr_window_get_document (window));
  TrDough *dough = tr_trial_own_dough (draft, (guint) tr_page_get_dough_index (page));

  dough->batch_by = TR_BATCH_PIECES;
  dough->batch_value = pieces;
  g_assert_true (tr_page_commit (page, draft, "change the batch", NULL, "/batch"));
}

guint
ui_count_windows (TrApplication *application)
{
  return g_list_length (gtk_application_get_windows (GTK_APPLICATION (application)));
}

char *
ui_read_file (const char *path)
{
  g_autoptr (GError) error = NULL;
  char *text = NULL;

  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);

  return text;
}

GtkDropTarget *
ui_get_drop_target (GtkWidget *widget)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (widget);

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);

      if (GTK_IS_DROP_TARGET (controller))
        return GTK_DROP_TARGET (controller);
    }

  return NULL;
}

char *
ui_dup_trial_text (TrDocument *document)
{
  return tr_trial_write (tr_document_get_trial (document), NULL);
}
