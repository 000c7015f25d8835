/* preferences-window.c: what the reader decides, in a window
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A table of choices, each a property of the preferences and the values it can
 * have. For a value that is none of them (set by other means) none is selected.
 */

#include "config.h"

#include "preferences-window.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "actions.h"

#define MOST_VALUES 8

typedef struct {
  const char *property;
  const char *label;
  const char *hint;              /* NULL: none */
  const char *values[MOST_VALUES];   /* of a text */
  const char *words[MOST_VALUES];    /* how they are said */
  double steps[MOST_VALUES];     /* of a number, from the second on; the first is 0 */
} Choice;

static const Choice choices[] = {
  { "units", N_("_Units"), NULL,
    { "metric", "us" }, { N_("Metric: g, mm, °C"), N_("US: oz, in, °F") }, { 0 } },
  { "colours", N_("_Colours"), NULL,
    { "system", "light", "dark" }, { N_("As the system"), N_("Light"), N_("Dark") }, { 0 } },
  { "scale-step", N_("_Scale step"), N_("Weights on the card and beside the formula are rounded to it"),
    { NULL }, { N_("As the trial’s bench says") }, { 0, 0.1, 0.5, 1, 2, 5 } },
  { "fine-scale-step", N_("_Fine scale step"), N_("For salt, yeast and whatever else weighs little"),
    { NULL }, { N_("As the trial’s bench says") }, { 0, 0.01, 0.02, 0.05, 0.1, 0.5, 1 } },
};

struct _TrPreferencesWindow
{
  GtkWindow parent_instance;

  /* Borrowed References */
  GtkDropDown *drop_downs[G_N_ELEMENTS (choices)];

  /* Owned References */
  TrPreferences *preferences;    /* NULL: none yet */

  /* State */
  guint is_showing : 1;
};

G_DEFINE_FINAL_TYPE (TrPreferencesWindow, tr_preferences_window, GTK_TYPE_WINDOW)

static gboolean
is_number (const Choice *choice)
{
  return choice->values[0] == NULL;
}

static guint
count_values (const Choice *choice)
{
  guint n = 1;

  while (n < MOST_VALUES && (is_number (choice) ? choice->steps[n] > 0 : choice->values[n] != NULL))
    n++;

  return n;
}

static char *
dup_words (const Choice   *choice,
           const TrReader *reader,
           guint           value)
{
  if (!is_number (choice) || value == 0)
    return g_strdup (_(choice->words[value]));

  int decimals = choice->steps[value] >= 1 ? 0 : choice->steps[value] >= 0.1 ? 1 : 2;
  g_autofree char *number = tr_words_number (reader, choice->steps[value], decimals);

  /* A scale's step is in grams for everybody: that is what stands on the scale. */
  return g_strdup_printf (_("%s g"), number);
}

/* GTK_INVALID_LIST_POSITION: none of those in the list. */
static guint
find_value (TrPreferencesWindow *self,
            const Choice        *choice)
{
  g_auto (GValue) value = G_VALUE_INIT;

  g_object_get_property (G_OBJECT (self->preferences), choice->property, &value);
  for (guint i = 0; i < count_values (choice); i++)
    if (is_number (choice) ? fabs (g_value_get_double (&value) - choice->steps[i]) < 1e-9
                           : g_strcmp0 (g_value_get_string (&value), choice->values[i]) == 0)
      return i;

  return GTK_INVALID_LIST_POSITION;
}

static void
show (TrPreferencesWindow *self)
{
  self->is_showing = TRUE;
  for (guint i = 0; i < G_N_ELEMENTS (choices); i++)
    gtk_drop_down_set_selected (self->drop_downs[i], find_value (self, &choices[i]));
  self->is_showing = FALSE;
}

static void
selected_cb (GtkDropDown         *drop_down,
             GParamSpec          *pspec,
             TrPreferencesWindow *self)
{
  guint selected = gtk_drop_down_get_selected (drop_down);
  guint i = 0;

  if (self->is_showing || self->preferences == NULL || selected == GTK_INVALID_LIST_POSITION)
    return;

  while (self->drop_downs[i] != drop_down)
    i++;
  if (is_number (&choices[i]))
    g_object_set (self->preferences, choices[i].property, choices[i].steps[selected], NULL);
  else
    g_object_set (self->preferences, choices[i].property, choices[i].values[selected], NULL);
}

/* Building *****************************************************************/

static void
tr_preferences_window_dispose (GObject *object)
{
  g_clear_object (&TR_PREFERENCES_WINDOW (object)->preferences);

  G_OBJECT_CLASS (tr_preferences_window_parent_class)->dispose (object);
}

static void
tr_preferences_window_class_init (TrPreferencesWindowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tr_preferences_window_dispose;
}

static GtkWidget *
new_drop_down (const Choice *choice)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new_with_free_func (g_free);
  TrReader reader;

  tr_reader_init_locale (&reader, TR_UNITS_METRIC);
  for (guint i = 0; i < count_values (choice); i++)
    g_ptr_array_add (words, dup_words (choice, &reader, i));
  g_ptr_array_add (words, NULL);

  return gtk_drop_down_new_from_strings ((const char *const *) words->pdata);
}

static void
attach_choice (TrPreferencesWindow *self,
               GtkGrid             *grid,
               guint                index)
{
  const Choice *choice = &choices[index];
  GtkWidget *label = gtk_label_new_with_mnemonic (_(choice->label));
  GtkWidget *drop_down = new_drop_down (choice);

  self->drop_downs[index] = GTK_DROP_DOWN (drop_down);
  tr_name_by_mnemonic (drop_down, _(choice->label));
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_mnemonic_widget (GTK_LABEL (label), drop_down);
  gtk_widget_set_hexpand (drop_down, TRUE);
  gtk_grid_attach (grid, label, 0, (int) (2 * index), 1, 1);
  gtk_grid_attach (grid, drop_down, 1, (int) (2 * index), 1, 1);
  g_signal_connect (drop_down, "notify::selected", G_CALLBACK (selected_cb), self);
  if (choice->hint != NULL)
    {
      GtkWidget *hint = gtk_label_new (_(choice->hint));

      gtk_label_set_xalign (GTK_LABEL (hint), 0);
      gtk_label_set_wrap (GTK_LABEL (hint), TRUE);
      gtk_label_set_max_width_chars (GTK_LABEL (hint), 32);
      gtk_widget_add_css_class (hint, "dim-label");
      gtk_grid_attach (grid, hint, 1, (int) (2 * index) + 1, 1, 1);
      gtk_accessible_update_property (GTK_ACCESSIBLE (drop_down), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, _(choice->hint), -1);
    }
}

static void
tr_preferences_window_init (TrPreferencesWindow *self)
{
  GtkWidget *grid = gtk_grid_new ();

  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 18);
  gtk_widget_add_css_class (grid, "question");
  for (guint i = 0; i < G_N_ELEMENTS (choices); i++)
    attach_choice (self, GTK_GRID (grid), i);
  gtk_window_set_child (GTK_WINDOW (self), grid);
  gtk_window_set_titlebar (GTK_WINDOW (self), gtk_header_bar_new ());
  gtk_window_set_title (GTK_WINDOW (self), _("Preferences"));
  gtk_window_set_resizable (GTK_WINDOW (self), FALSE);
  gtk_widget_add_controller (GTK_WIDGET (self), tr_actions_new_close_key ());
}

GtkWidget *
tr_preferences_window_new (GtkWindow     *parent,
                           TrPreferences *preferences)
{
  g_return_val_if_fail (parent == NULL || GTK_IS_WINDOW (parent), NULL);
  g_return_val_if_fail (TR_IS_PREFERENCES (preferences), NULL);

  TrPreferencesWindow *self = g_object_new (TR_TYPE_PREFERENCES_WINDOW,
                                            "transient-for", parent,
                                            "destroy-with-parent", TRUE,
                                            NULL);

  self->preferences = g_object_ref (preferences);
  show (self);
  g_signal_connect_object (preferences, "notify", G_CALLBACK (show), self, G_CONNECT_SWAPPED);

  return GTK_WIDGET (self);
}
