/* test-contract.c: what every type of ours keeps to
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The list of types is made from the sources when this is built, so a new type
 * is held to the same. What a type needs to be made for real, and a property
 * that wants a certain value, stands in the tables below.
 */

#include "config.h"

#include <string.h>

#include "support.h"
#include "types.inc"
#include "window/actions.h"
#include "window/carry-window.h"
#include "window/dough-row.h"
#include "window/entry-field.h"
#include "window/line-row.h"
#include "window/page-sheet.h"
#include "window/pantry-window.h"
#include "window/preferences-window.h"
#include "window/print-dialog.h"
#include "window/print-preview.h"
#include "window/recipe-review.h"

/* Made for real **************************************************************/

static TrDocument *
new_demo (void)
{
  g_autofree char *path = ui_write_demo ();
  g_autoptr (GError) error = NULL;
  TrTrial *trial = tr_trial_read_file (path, &error);

  g_assert_no_error (error);

  return tr_document_new_for_trial (trial);
}

static TrPaperJob *
new_job (void)
{
  g_autoptr (TrDocument) document = new_demo ();
  const guint doughs[] = { 0, 1 };
  TrReader reader;

  tr_reader_init_plain (&reader, TR_UNITS_METRIC);

  return tr_paper_job_new_cards (tr_document_get_figures (document), doughs, G_N_ELEMENTS (doughs), &reader, TR_PAPER_A4, "Demo");
}

static gpointer
make_document (void)
{
  return new_demo ();
}

static gpointer
make_dough_row (void)
{
  return tr_dough_row_new ("d1");
}

static gpointer
make_page_sheet (void)
{
  g_autoptr (TrPaperJob) job = new_job ();

  return tr_page_sheet_new (job, 1);
}

static gpointer
make_print_preview (void)
{
  g_autoptr (TrPaperJob) job = new_job ();

  return tr_print_preview_new (NULL, job);
}

static gpointer
make_print_dialog (void)
{
  g_autoptr (TrDocument) document = new_demo ();
  TrReader reader;

  tr_reader_init_plain (&reader, TR_UNITS_METRIC);

  return tr_print_dialog_new (NULL, tr_document_get_figures (document), 1, &reader, TR_PAPER_LETTER, "Demo");
}

/* Gone before its answer is there. */
static gpointer
make_recipe_review (void)
{
  TrReader reader;

  tr_reader_init_plain (&reader, TR_UNITS_US);

  GtkWidget *review = tr_recipe_review_new (NULL, &reader);

  tr_recipe_review_read_text (TR_RECIPE_REVIEW (review), "500 g bread flour\n250 g butter\n");

  return review;
}

static gpointer
make_preferences_window (void)
{
  g_autoptr (TrPreferences) preferences = tr_preferences_new ();

  return tr_preferences_window_new (NULL, preferences);
}

static gpointer
make_carry_window (void)
{
  g_autoptr (TrDocument) document = new_demo ();

  return tr_carry_window_new (NULL, document, "d1");
}

static gpointer
make_pantry_window (void)
{
  g_autoptr (TrPreferences) preferences = tr_preferences_new ();
  g_autoptr (TrDocument) document = new_demo ();
  GtkWidget *window = tr_pantry_window_new (NULL, preferences);

  g_object_set (window, "document", document, NULL);

  return window;
}

static gpointer
reach_trial (const TrTrial *trial,
             int            dough,
             guint          item,
             gboolean       make)
{
  return (gpointer) trial;
}

static gpointer
make_entry_field (void)
{
  static const TrMember title = { "/title", reach_trial, G_STRUCT_OFFSET (TrTrial, title), TR_HOLD_TEXT, TR_QUANTITY_NUMBER, "Title", "change the title" };

  return tr_entry_field_new (&title, TR_FIELD_BESIDE);
}

/* Besides a bare g_object_new, which every type has to bear. */
static const struct { const char *type; gpointer (*make) (void); } makers[] = {
  { "TrDocument", make_document },
  { "TrDoughRow", make_dough_row },
  { "TrEntryField", make_entry_field },
  { "TrPageSheet", make_page_sheet },
  { "TrPantryWindow", make_pantry_window },
  { "TrCarryWindow", make_carry_window },
  { "TrPreferencesWindow", make_preferences_window },
  { "TrPrintDialog", make_print_dialog },
  { "TrPrintPreview", make_print_preview },
  { "TrRecipeReview", make_recipe_review },
};

/* Properties whose values only some can be. */
static const struct { const char *type, *property, *value; } texts[] = {
  { "TrPreferences", "units", "us" },
  { "TrPreferences", "colours", "dark" },
  { "TrPreferences", "plane-across", "salt_percent" },
  { "TrPreferences", "plane-up", "salt_percent" },
};

/* What is not as the spec says from the start, and why. */
static const struct { const char *type, *property, *why; } made_at_once[] = {
  { "TrWindow", "document", "a window that is given none makes one" },
  { "TrDocument", "title", "an untitled document has a name for the eye" },
};

/* One object ****************************************************************/

static GType
get_type (gconstpointer data)
{
  return type_getters[GPOINTER_TO_UINT (data)] ();
}

/* The caller's own reference, beside the one that GTK has on a window. */
static gpointer
own (gpointer object)
{
  return G_IS_INITIALLY_UNOWNED (object) ? g_object_ref_sink (object) : object;
}

static gpointer
make_bare (GType type)
{
  return own (g_object_new (type, NULL));
}

/* Everything below a widget goes with it. */
static void
watch_below (GtkWidget *widget,
             GPtrArray *watched)
{
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GWeakRef *ref = g_new0 (GWeakRef, 1);

      g_weak_ref_init (ref, child);
      g_ptr_array_add (watched, ref);
      watch_below (child, watched);
    }
}

static void
assert_gone (gpointer data,
             gpointer unused)
{
  GWeakRef *ref = data;
  g_autoptr (GObject) left = g_weak_ref_get (ref);

  if (left != NULL)
    g_error ("a %s is left", G_OBJECT_TYPE_NAME (left));
  g_weak_ref_clear (ref);
  g_free (ref);
}

/* A window belongs to GTK until it is destroyed. */
static void
drop (gpointer object)
{
  g_autoptr (GPtrArray) watched_below = g_ptr_array_new ();
  gpointer watched = object;

  g_object_add_weak_pointer (object, &watched);
  if (GTK_IS_WIDGET (object))
    watch_below (object, watched_below);
  if (GTK_IS_WINDOW (object))
    gtk_window_destroy (object);
  g_object_unref (object);
  ui_settle ();
  g_assert_null (watched);
  g_ptr_array_foreach (watched_below, assert_gone, NULL);
}

static void
dispose_twice (gpointer object)
{
  if (GTK_IS_WINDOW (object))
    gtk_window_destroy (object);
  g_object_run_dispose (object);
  g_object_run_dispose (object);
  /* GTK's range lets go of its trough when it is freed. */
  if (GTK_IS_WIDGET (object) && !GTK_IS_RANGE (object))
    g_assert_null (gtk_widget_get_first_child (object));
  ui_settle ();
  g_assert_finalize_object (object);
}

static void
test_is_freed (gconstpointer data)
{
  GType type = get_type (data);

  if (!G_TYPE_IS_ABSTRACT (type))
    drop (make_bare (type));
  for (guint i = 0; i < G_N_ELEMENTS (makers); i++)
    if (g_str_equal (makers[i].type, g_type_name (type)))
      drop (own (makers[i].make ()));
}

static void
test_is_disposed_twice (gconstpointer data)
{
  GType type = get_type (data);

  if (!G_TYPE_IS_ABSTRACT (type))
    dispose_twice (make_bare (type));
  for (guint i = 0; i < G_N_ELEMENTS (makers); i++)
    if (g_str_equal (makers[i].type, g_type_name (type)))
      dispose_twice (own (makers[i].make ()));
}

/* Properties ****************************************************************/

typedef void (*Visit) (GObject *object, GParamSpec *spec);

/* Our own properties, not those of GTK's classes above. */
static void
visit_properties (GType type,
                  Visit visit)
{
  g_autoptr (GTypeClass) klass = g_type_class_ref (type);
  guint n_specs;
  g_autofree GParamSpec **specs = g_object_class_list_properties (G_OBJECT_CLASS (klass), &n_specs);
  gpointer object = make_bare (type);

  for (guint i = 0; i < n_specs; i++)
    if (g_str_has_prefix (g_type_name (specs[i]->owner_type), "Tr"))
      visit (object, specs[i]);
  drop (object);
}

static gboolean
is_made_at_once (GObject    *object,
                 GParamSpec *spec)
{
  for (guint i = 0; i < G_N_ELEMENTS (made_at_once); i++)
    if (g_str_equal (made_at_once[i].type, G_OBJECT_TYPE_NAME (object)) && g_str_equal (made_at_once[i].property, spec->name))
      return TRUE;

  return FALSE;
}

static void
assert_default (GObject    *object,
                GParamSpec *spec)
{
  g_auto (GValue) value = G_VALUE_INIT;

  /* What another object implements (an interface's) has no default of its own. */
  if ((spec->flags & G_PARAM_READABLE) == 0 || is_made_at_once (object, spec) || G_IS_PARAM_SPEC_OVERRIDE (spec))
    return;

  g_value_init (&value, spec->value_type);
  g_object_get_property (object, spec->name, &value);
  if (!g_param_value_defaults (spec, &value))
    {
      g_autofree char *text = g_strdup_value_contents (&value);

      g_error ("%s:%s is %s, which is not its default", G_OBJECT_TYPE_NAME (object), spec->name, text);
    }
}

static const char *
get_text (GObject    *object,
          GParamSpec *spec)
{
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    if (g_str_equal (texts[i].type, G_OBJECT_TYPE_NAME (object)) && g_str_equal (texts[i].property, spec->name))
      return texts[i].value;

  return "something else";
}

/* FALSE: no other value is known for that kind. */
static gboolean
set_to_other (GObject    *object,
              GParamSpec *spec,
              GValue     *value)
{
  if (G_IS_PARAM_SPEC_BOOLEAN (spec))
    g_value_set_boolean (value, !g_value_get_boolean (value));
  else if (G_IS_PARAM_SPEC_INT (spec))
    g_value_set_int (value, g_value_get_int (value) + (g_value_get_int (value) < G_PARAM_SPEC_INT (spec)->maximum ? 1 : -1));
  else if (G_IS_PARAM_SPEC_UINT (spec))
    g_value_set_uint (value, g_value_get_uint (value) + (g_value_get_uint (value) < G_PARAM_SPEC_UINT (spec)->maximum ? 1 : -1));
  else if (G_IS_PARAM_SPEC_DOUBLE (spec))
    g_value_set_double (value, (g_value_get_double (value) + CLAMP (G_PARAM_SPEC_DOUBLE (spec)->maximum, 1, 1e6)) / 2);
  else if (G_IS_PARAM_SPEC_STRING (spec))
    g_value_set_string (value, get_text (object, spec));
  else if (spec->value_type == TR_TYPE_DOCUMENT)
    g_value_take_object (value, tr_document_new ());
  else
    return FALSE;

  return TRUE;
}

static void
count_cb (GObject    *object,
          GParamSpec *spec,
          guint      *count)
{
  (*count)++;
}

static void
assert_notifies_once (GObject    *object,
                      GParamSpec *spec)
{
  g_auto (GValue) value = G_VALUE_INIT;
  g_auto (GValue) before = G_VALUE_INIT;
  g_auto (GValue) after = G_VALUE_INIT;
  g_autofree char *signal = g_strconcat ("notify::", spec->name, NULL);
  const GParamFlags both = G_PARAM_READABLE | G_PARAM_WRITABLE;
  guint count = 0;

  if ((spec->flags & both) != both || (spec->flags & G_PARAM_CONSTRUCT_ONLY) != 0 || G_IS_PARAM_SPEC_OVERRIDE (spec))
    return;

  g_value_init (&value, spec->value_type);
  g_value_init (&after, spec->value_type);
  g_value_init (&before, spec->value_type);
  g_object_get_property (object, spec->name, &before);
  g_value_copy (&before, &value);
  g_signal_connect (object, signal, G_CALLBACK (count_cb), &count);
  g_object_set_property (object, spec->name, &value);
  g_assert_cmpuint (count, ==, 0);
  if (!set_to_other (object, spec, &value))
    g_error ("%s:%s: say here what else it can be", G_OBJECT_TYPE_NAME (object), spec->name);

  g_object_set_property (object, spec->name, &value);
  g_assert_cmpuint (count, ==, 1);
  g_object_get_property (object, spec->name, &after);
  g_assert_cmpint (g_param_values_cmp (spec, &value, &after), ==, 0);
  g_object_set_property (object, spec->name, &value);
  g_assert_cmpuint (count, ==, 1);
  g_object_set_property (object, spec->name, &before);
  g_assert_cmpuint (count, ==, 2);
  g_signal_handlers_disconnect_by_data (object, &count);
}

static void
test_has_its_defaults (gconstpointer data)
{
  if (!G_TYPE_IS_ABSTRACT (get_type (data)))
    visit_properties (get_type (data), assert_default);
}

static void
test_notifies_once (gconstpointer data)
{
  if (!G_TYPE_IS_ABSTRACT (get_type (data)))
    visit_properties (get_type (data), assert_notifies_once);
}

/* Access ********************************************************************/

/* A plain "widget" tells nobody anything. */
static void
test_has_a_role (gconstpointer data)
{
  GType type = get_type (data);
  gpointer widget;

  if (G_TYPE_IS_ABSTRACT (type) || !g_type_is_a (type, GTK_TYPE_WIDGET))
    return;

  widget = make_bare (type);
  if (gtk_accessible_get_accessible_role (GTK_ACCESSIBLE (widget)) == GTK_ACCESSIBLE_ROLE_WIDGET)
    g_error ("%s has no role", g_type_name (type));
  drop (widget);
}

/* The tables above name what there is. */

static void
assert_exists (const char *type,
               const char *property)
{
  GType found = g_type_from_name (type);
  g_autoptr (GTypeClass) klass = found != 0 ? g_type_class_ref (found) : NULL;

  if (klass == NULL || (property != NULL && g_object_class_find_property (G_OBJECT_CLASS (klass), property) == NULL))
    g_error ("there is no %s:%s", type, property != NULL ? property : "");
}

static void
test_tables_name_what_there_is (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (makers); i++)
    assert_exists (makers[i].type, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    assert_exists (texts[i].type, texts[i].property);
  for (guint i = 0; i < G_N_ELEMENTS (made_at_once); i++)
    assert_exists (made_at_once[i].type, made_at_once[i].property);
}

static void
add (const char    *claim,
     guint          index,
     GTestDataFunc  test)
{
  g_autofree char *path = g_strdup_printf ("/contract/%s/%s", g_type_name (type_getters[index] ()), claim);

  g_test_add_data_func (path, GUINT_TO_POINTER (index), test);
}

int
main (int    argc,
      char **argv)
{
  if (!ui_init (&argc, &argv))
    return 0;

  g_assert_cmpuint (G_N_ELEMENTS (type_getters), >, 25);
  for (guint i = 0; i < G_N_ELEMENTS (type_getters); i++)
    {
      add ("is-freed", i, test_is_freed);
      add ("is-disposed-twice", i, test_is_disposed_twice);
      add ("has-its-defaults", i, test_has_its_defaults);
      add ("notifies-once", i, test_notifies_once);
      add ("has-a-role", i, test_has_a_role);
    }
  g_test_add_func ("/contract/tables-name-what-there-is", test_tables_name_what_there_is);

  return ui_run ();
}
