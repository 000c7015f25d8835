/* recipe-source.c: where the text of a recipe comes from
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A text view lays out every character it holds, so a long text never gets
 * into it: it is caught on its way in, whether typed, pasted or dropped.
 */

#include "config.h"

#include "recipe-source.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "compat.h"
#include "section.h"

#define MAX_SHOWN_BYTES 20000
#define EXCERPT_CHARS 1500
#define QUIET_MS 300             /* after the last key */

struct _TrRecipeSource
{
  GtkWidget parent_instance;

  /* Children */
  GtkWidget *overlay;
  GtkWidget *view;
  GtkWidget *hint;
  GtkWidget *buttons;
  GtkWidget *note;

  /* Borrowed References */
  GtkTextBuffer *buffer;

  /* Owned */
  GCancellable *cancellable;     /* of the chooser that is open */
  char *caught;                  /* a text too long for the view, until it is given on */

  guint quiet;
  guint caught_idle;
  guint is_setting : 1;
};

enum { TYPING, CHANGED, PASTE, FILE_CHOSEN, N_SIGNALS };
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TrRecipeSource, tr_recipe_source, GTK_TYPE_WIDGET)

/* Showing */

static void
show_in_view (TrRecipeSource *self,
              const char     *text)
{
  g_clear_handle_id (&self->quiet, g_source_remove);
  g_clear_handle_id (&self->caught_idle, g_source_remove);
  self->is_setting = TRUE;
  gtk_text_buffer_set_text (self->buffer, text, -1);
  self->is_setting = FALSE;
  gtk_widget_set_visible (self->hint, *text == '\0');
}

static void
show_excerpt (TrRecipeSource *self,
              const char     *text)
{
  g_autofree char *start = g_utf8_substring (text, 0, MIN (EXCERPT_CHARS, g_utf8_strlen (text, 4 * EXCERPT_CHARS)));
  g_autofree char *shown = g_strconcat (start, "\n…", NULL);
  g_autofree char *size = g_format_size (strlen (text));

  show_in_view (self, shown);
  gtk_text_view_set_editable (GTK_TEXT_VIEW (self->view), FALSE);
  tr_words_label_take (self->note, g_strdup_printf (_("This is only the start: all %s were read."), size));
}

void
tr_recipe_source_show_text (TrRecipeSource *self,
                            const char     *text)
{
  g_return_if_fail (TR_IS_RECIPE_SOURCE (self));
  g_return_if_fail (text != NULL);

  g_autofree char *valid = g_utf8_make_valid (text, -1);

  gtk_text_view_set_editable (GTK_TEXT_VIEW (self->view), TRUE);
  tr_words_label_set (self->note, NULL);
  if (strlen (valid) > MAX_SHOWN_BYTES)
    show_excerpt (self, valid);
  else
    show_in_view (self, valid);
}

void
tr_recipe_source_show_file (TrRecipeSource *self,
                            GFile          *file,
                            GBytes         *bytes,
                            gboolean        is_plain)
{
  g_return_if_fail (TR_IS_RECIPE_SOURCE (self));
  g_return_if_fail (G_IS_FILE (file) && bytes != NULL);

  g_autofree char *base = g_file_get_basename (file);
  g_autofree char *name = g_filename_display_name (base);
  g_autofree char *size = g_format_size (g_bytes_get_size (bytes));
  gsize length;
  const char *text = g_bytes_get_data (bytes, &length);

  if (is_plain && length <= MAX_SHOWN_BYTES && memchr (text, '\0', length) == NULL)
    {
      g_autofree char *copy = g_strndup (text, length);

      tr_recipe_source_show_text (self, copy);
    }
  tr_words_label_take (self->note, g_strdup_printf (_("From “%s”, %s."), name, size));
}

gboolean
tr_recipe_source_is_empty (TrRecipeSource *self)
{
  g_return_val_if_fail (TR_IS_RECIPE_SOURCE (self), TRUE);

  return gtk_text_buffer_get_char_count (self->buffer) == 0;
}

gboolean
tr_recipe_source_is_typing (TrRecipeSource *self)
{
  g_return_val_if_fail (TR_IS_RECIPE_SOURCE (self), FALSE);

  return self->quiet != 0 || self->caught_idle != 0;
}

/* Taking */

static void
give (TrRecipeSource *self,
      const char     *text)
{
  g_autoptr (GBytes) bytes = g_bytes_new (text, strlen (text));

  g_signal_emit (self, signals[CHANGED], 0, *text != '\0' ? bytes : NULL);
}

static char *
dup_text (TrRecipeSource *self)
{
  GtkTextIter start, end;

  gtk_text_buffer_get_bounds (self->buffer, &start, &end);

  return gtk_text_buffer_get_text (self->buffer, &start, &end, TRUE);
}

static gboolean
quiet_cb (gpointer data)
{
  TrRecipeSource *self = data;
  g_autofree char *text = dup_text (self);

  self->quiet = 0;
  give (self, text);

  return G_SOURCE_REMOVE;
}

static void
text_changed_cb (TrRecipeSource *self)
{
  if (self->is_setting)
    return;

  gtk_widget_set_visible (self->hint, gtk_text_buffer_get_char_count (self->buffer) == 0);
  tr_words_label_set (self->note, NULL);
  g_clear_handle_id (&self->quiet, g_source_remove);
  self->quiet = g_timeout_add (QUIET_MS, quiet_cb, self);
  g_signal_emit (self, signals[TYPING], 0);
}

static gboolean
caught_cb (gpointer data)
{
  TrRecipeSource *self = data;
  g_autofree char *text = g_steal_pointer (&self->caught);

  self->caught_idle = 0;
  tr_recipe_source_show_text (self, text);
  give (self, text);

  return G_SOURCE_REMOVE;
}

/* The buffer must not change while it is being changed: what is too long is given on a moment later. */
static void
insert_text_cb (GtkTextBuffer  *buffer,
                GtkTextIter    *where,
                char           *text,
                int             length,
                TrRecipeSource *self)
{
  gsize size = length < 0 ? strlen (text) : (gsize) length;
  GtkTextIter start, end;

  if (self->is_setting || size + (gsize) gtk_text_buffer_get_char_count (buffer) <= MAX_SHOWN_BYTES)
    return;

  gtk_text_buffer_get_bounds (buffer, &start, &end);
  g_autofree char *before = gtk_text_buffer_get_text (buffer, &start, where, TRUE);
  g_autofree char *after = gtk_text_buffer_get_text (buffer, where, &end, TRUE);
  g_autofree char *inserted = g_strndup (text, size);

  g_free (self->caught);
  self->caught = g_strconcat (before, inserted, after, NULL);
  if (self->caught_idle == 0)
    self->caught_idle = g_idle_add (caught_cb, self);
  g_signal_emit (self, signals[TYPING], 0);
  g_signal_stop_emission_by_name (buffer, "insert-text");
}

/* Buttons */

static void
file_chosen_cb (GObject      *source,
                GAsyncResult *result,
                gpointer      user_data)
{
  g_autoptr (TrRecipeSource) self = user_data;
  g_autoptr (GFile) file = tr_compat_open_file_finish (result, NULL);

  if (file != NULL && self->cancellable != NULL)
    g_signal_emit (self, signals[FILE_CHOSEN], 0, file);
}

static void
open_clicked_cb (TrRecipeSource *self)
{
  g_set_object (&self->cancellable, NULL);
  self->cancellable = g_cancellable_new ();
  /* Whatever it is called: what is in it tells. */
  tr_compat_open_file_async (GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))), _("Read a recipe"), NULL,
                             self->cancellable, file_chosen_cb, g_object_ref (self));
}

static void
paste_clicked_cb (TrRecipeSource *self)
{
  g_signal_emit (self, signals[PASTE], 0);
}

static void
clear_clicked_cb (TrRecipeSource *self)
{
  tr_recipe_source_show_text (self, "");
  give (self, "");
  gtk_widget_grab_focus (self->view);
}

/* The widget */

static gboolean
tr_recipe_source_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (TR_RECIPE_SOURCE (widget)->view);
}

static void
tr_recipe_source_dispose (GObject *object)
{
  TrRecipeSource *self = TR_RECIPE_SOURCE (object);
  GtkWidget *child;

  g_clear_handle_id (&self->quiet, g_source_remove);
  g_clear_handle_id (&self->caught_idle, g_source_remove);
  g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  g_clear_pointer (&self->caught, g_free);
  if (self->buffer != NULL)
    g_signal_handlers_disconnect_by_data (self->buffer, self);
  self->buffer = NULL;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);

  G_OBJECT_CLASS (tr_recipe_source_parent_class)->dispose (object);
}

static void
tr_recipe_source_class_init (TrRecipeSourceClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tr_recipe_source_dispose;
  widget_class->grab_focus = tr_recipe_source_grab_focus;
  signals[TYPING] = g_signal_new ("typing", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[CHANGED] = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_BYTES);
  signals[PASTE] = g_signal_new ("paste", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[FILE_CHOSEN] = g_signal_new ("file", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_FILE);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
build_view (TrRecipeSource *self)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();

  self->view = gtk_text_view_new ();
  self->buffer = gtk_text_view_get_buffer (GTK_TEXT_VIEW (self->view));
  gtk_text_view_set_accepts_tab (GTK_TEXT_VIEW (self->view), FALSE);
  gtk_text_view_set_wrap_mode (GTK_TEXT_VIEW (self->view), GTK_WRAP_WORD_CHAR);
  gtk_text_view_set_left_margin (GTK_TEXT_VIEW (self->view), 6);
  gtk_text_view_set_right_margin (GTK_TEXT_VIEW (self->view), 6);
  gtk_text_view_set_top_margin (GTK_TEXT_VIEW (self->view), 6);
  gtk_text_view_set_bottom_margin (GTK_TEXT_VIEW (self->view), 6);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->view), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Text of the recipe"), -1);
  g_signal_connect (self->buffer, "insert-text", G_CALLBACK (insert_text_cb), self);
  g_signal_connect_swapped (self->buffer, "changed", G_CALLBACK (text_changed_cb), self);

  self->hint = gtk_label_new (_("Paste or drop a recipe here"));
  gtk_widget_add_css_class (self->hint, "dim-label");
  gtk_widget_set_can_target (self->hint, FALSE);
  gtk_label_set_wrap (GTK_LABEL (self->hint), TRUE);

  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), self->view);
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (scroller), 110);
  gtk_widget_add_css_class (scroller, "notes");
  self->overlay = gtk_overlay_new ();
  gtk_overlay_set_child (GTK_OVERLAY (self->overlay), scroller);
  gtk_overlay_add_overlay (GTK_OVERLAY (self->overlay), self->hint);
  gtk_widget_set_parent (self->overlay, GTK_WIDGET (self));
}

static void
add_button (TrRecipeSource *self,
            const char     *label,
            GCallback       callback)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  g_signal_connect_swapped (button, "clicked", callback, self);
  gtk_widget_insert_before (button, self->buttons, NULL);
}

static void
tr_recipe_source_init (TrRecipeSource *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 6);
  build_view (self);
  self->buttons = tr_fields_row_new ();
  add_button (self, _("Open a file…"), G_CALLBACK (open_clicked_cb));
  add_button (self, _("Paste"), G_CALLBACK (paste_clicked_cb));
  add_button (self, _("Clear"), G_CALLBACK (clear_clicked_cb));
  gtk_widget_set_parent (self->buttons, GTK_WIDGET (self));
  self->note = tr_words_label_new ("dim-label");
  gtk_widget_set_parent (self->note, GTK_WIDGET (self));
}

GtkWidget *
tr_recipe_source_new (void)
{
  return g_object_new (TR_TYPE_RECIPE_SOURCE, NULL);
}
