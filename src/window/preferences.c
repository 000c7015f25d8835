/* preferences.c: what the reader, not the document, decides
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The properties are the preferences; GSettings only mirrors them. GLib
 * aborts on a schema that is not installed, so it is looked up first and left
 * alone when it is missing or older than a key.
 */

#include "config.h"

#include "preferences.h"

/* As in the schema: keys of figures. */
#define PLANE_ACROSS "all_water_percent"
#define PLANE_UP "roll_in_percent_of_dough"

struct _TrPreferences
{
  GObject parent_instance;

  /* Owned References */
  GSettings *settings;           /* NULL: no schema, nothing is kept */
  char *units;
  char *colours;

  /* State */
  double scale_step, fine_scale_step;
  char *plane_across, *plane_up;
  int width, height;
  gboolean maximized;
};

enum { PROP_0, PROP_UNITS, PROP_COLOURS, PROP_SCALE_STEP, PROP_FINE_SCALE_STEP, PROP_PLANE_ACROSS, PROP_PLANE_UP, PROP_WIDTH, PROP_HEIGHT, PROP_MAXIMIZED, N_PROPS };

static GParamSpec *properties[N_PROPS];

G_DEFINE_FINAL_TYPE (TrPreferences, tr_preferences, G_TYPE_OBJECT)

static void
tr_preferences_get_property (GObject    *object,
                             guint       prop_id,
                             GValue     *value,
                             GParamSpec *pspec)
{
  TrPreferences *self = TR_PREFERENCES (object);

  switch (prop_id)
    {
    case PROP_UNITS:
      g_value_set_string (value, self->units);
      break;
    case PROP_COLOURS:
      g_value_set_string (value, self->colours);
      break;
    case PROP_SCALE_STEP:
      g_value_set_double (value, self->scale_step);
      break;
    case PROP_FINE_SCALE_STEP:
      g_value_set_double (value, self->fine_scale_step);
      break;
    case PROP_PLANE_ACROSS:
      g_value_set_string (value, self->plane_across);
      break;
    case PROP_PLANE_UP:
      g_value_set_string (value, self->plane_up);
      break;
    case PROP_WIDTH:
      g_value_set_int (value, self->width);
      break;
    case PROP_HEIGHT:
      g_value_set_int (value, self->height);
      break;
    case PROP_MAXIMIZED:
      g_value_set_boolean (value, self->maximized);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
set_text (TrPreferences *self,
          char         **where,
          const GValue  *value,
          GParamSpec    *pspec)
{
  if (tr_set_text (where, g_value_get_string (value)))
    g_object_notify_by_pspec (G_OBJECT (self), pspec);
}

static void
set_step (TrPreferences *self,
          double        *where,
          double         value,
          GParamSpec    *pspec)
{
  if (*where == value)
    return;

  *where = value;
  g_object_notify_by_pspec (G_OBJECT (self), pspec);
}

static void
set_int (TrPreferences *self,
         int           *where,
         int            value,
         GParamSpec    *pspec)
{
  if (*where == value)
    return;

  *where = value;
  g_object_notify_by_pspec (G_OBJECT (self), pspec);
}

static void
tr_preferences_set_property (GObject      *object,
                             guint         prop_id,
                             const GValue *value,
                             GParamSpec   *pspec)
{
  TrPreferences *self = TR_PREFERENCES (object);

  switch (prop_id)
    {
    case PROP_UNITS:
      set_text (self, &self->units, value, pspec);
      break;
    case PROP_COLOURS:
      set_text (self, &self->colours, value, pspec);
      break;
    case PROP_SCALE_STEP:
      set_step (self, &self->scale_step, g_value_get_double (value), pspec);
      break;
    case PROP_FINE_SCALE_STEP:
      set_step (self, &self->fine_scale_step, g_value_get_double (value), pspec);
      break;
    case PROP_PLANE_ACROSS:
      set_text (self, &self->plane_across, value, pspec);
      break;
    case PROP_PLANE_UP:
      set_text (self, &self->plane_up, value, pspec);
      break;
    case PROP_WIDTH:
      set_int (self, &self->width, g_value_get_int (value), pspec);
      break;
    case PROP_HEIGHT:
      set_int (self, &self->height, g_value_get_int (value), pspec);
      break;
    case PROP_MAXIMIZED:
      set_int (self, &self->maximized, g_value_get_boolean (value), pspec);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
bind_settings (TrPreferences *self)
{
  GSettingsSchemaSource *source = g_settings_schema_source_get_default ();
  g_autoptr (GSettingsSchema) schema = source != NULL ? g_settings_schema_source_lookup (source, TR_APP_ID, TRUE) : NULL;

  if (schema == NULL)
    return;

  self->settings = g_settings_new_full (schema, NULL, NULL);
  for (guint i = 1; i < N_PROPS; i++)
    {
      const char *name = g_param_spec_get_name (properties[i]);

      if (g_settings_schema_has_key (schema, name))
        g_settings_bind (self->settings, name, self, name, G_SETTINGS_BIND_DEFAULT);
    }
}

static void
tr_preferences_constructed (GObject *object)
{
  G_OBJECT_CLASS (tr_preferences_parent_class)->constructed (object);

  bind_settings (TR_PREFERENCES (object));
}

static void
tr_preferences_dispose (GObject *object)
{
  g_clear_object (&TR_PREFERENCES (object)->settings);

  G_OBJECT_CLASS (tr_preferences_parent_class)->dispose (object);
}

static void
tr_preferences_finalize (GObject *object)
{
  TrPreferences *self = TR_PREFERENCES (object);

  g_clear_pointer (&self->units, g_free);
  g_clear_pointer (&self->colours, g_free);
  g_clear_pointer (&self->plane_across, g_free);
  g_clear_pointer (&self->plane_up, g_free);

  G_OBJECT_CLASS (tr_preferences_parent_class)->finalize (object);
}

static void
tr_preferences_class_init (TrPreferencesClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS;

  object_class->get_property = tr_preferences_get_property;
  object_class->set_property = tr_preferences_set_property;
  object_class->constructed = tr_preferences_constructed;
  object_class->dispose = tr_preferences_dispose;
  object_class->finalize = tr_preferences_finalize;

  properties[PROP_UNITS] = g_param_spec_string ("units", NULL, NULL, "metric", flags);
  properties[PROP_COLOURS] = g_param_spec_string ("colours", NULL, NULL, "system", flags);
  properties[PROP_SCALE_STEP] = g_param_spec_double ("scale-step", NULL, NULL, 0, TR_SCALE_STEP_MOST_G, 0, flags);
  properties[PROP_FINE_SCALE_STEP] = g_param_spec_double ("fine-scale-step", NULL, NULL, 0, TR_SCALE_STEP_MOST_G, 0, flags);
  properties[PROP_PLANE_ACROSS] = g_param_spec_string ("plane-across", NULL, NULL, PLANE_ACROSS, flags);
  properties[PROP_PLANE_UP] = g_param_spec_string ("plane-up", NULL, NULL, PLANE_UP, flags);
  properties[PROP_WIDTH] = g_param_spec_int ("window-width", NULL, NULL, 0, G_MAXINT, 1280, flags);
  properties[PROP_HEIGHT] = g_param_spec_int ("window-height", NULL, NULL, 0, G_MAXINT, 820, flags);
  properties[PROP_MAXIMIZED] = g_param_spec_boolean ("window-maximized", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
tr_preferences_init (TrPreferences *self)
{
  self->units = g_strdup ("metric");
  self->colours = g_strdup ("system");
  self->plane_across = g_strdup (PLANE_ACROSS);
  self->plane_up = g_strdup (PLANE_UP);
  self->width = 1280;
  self->height = 820;
}

TrPreferences *
tr_preferences_new (void)
{
  return g_object_new (TR_TYPE_PREFERENCES, NULL);
}

void
tr_preferences_init_reader (TrPreferences *self,
                            TrReader      *reader)
{
  g_return_if_fail (TR_IS_PREFERENCES (self));
  g_return_if_fail (reader != NULL);

  tr_reader_init_locale (reader, g_strcmp0 (self->units, "us") == 0 ? TR_UNITS_US : TR_UNITS_METRIC);
  reader->scale_step_g = self->scale_step;
  reader->fine_scale_step_g = self->fine_scale_step;
}

const char *
tr_preferences_get_colours (TrPreferences *self)
{
  g_return_val_if_fail (TR_IS_PREFERENCES (self), NULL);

  return self->colours;
}

void
tr_preferences_get_size (TrPreferences *self,
                         int           *width,
                         int           *height,
                         gboolean      *maximized)
{
  g_return_if_fail (TR_IS_PREFERENCES (self));

  *width = self->width;
  *height = self->height;
  *maximized = self->maximized;
}

void
tr_preferences_set_size (TrPreferences *self,
                         int            width,
                         int            height,
                         gboolean       maximized)
{
  g_return_if_fail (TR_IS_PREFERENCES (self));

  /* What a maximized window was before is what it goes back to. */
  if (!maximized)
    g_object_set (self, "window-width", width, "window-height", height, NULL);
  g_object_set (self, "window-maximized", maximized, NULL);
}
