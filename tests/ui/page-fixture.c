/* page-fixture.c: one page in a window of its own, on a trial made for it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "page-fixture.h"

#include <json-glib/json-glib.h>
#include <string.h>

/* Invented. */
static const char trial_text[] =
  "{ \"format\": \"tourier-trial\", \"version\": 1, \"title\": \"A made-up trial\","
  "  \"ingredients\": [ { \"id\": \"butter-mine\", \"like\": \"butter-unsalted\", \"name\": \"Crème butter of mine\" } ],"
  "  \"doughs\": ["
  "  { \"id\": \"d1\", \"name\": \"Triangles\", \"kind\": \"croissant\", \"pieces_written\": 16,"
  "    \"lines\": ["
  "      { \"stage\": \"preferment\", \"group\": \"sponge\", \"ingredient\": \"flour-bread\", \"amount\": \"150 g\" },"
  "      { \"stage\": \"preferment\", \"group\": \"sponge\", \"ingredient\": \"water\", \"amount\": \"150 g\" },"
  "      { \"stage\": \"dough\", \"ingredient\": \"flour-bread\", \"amount\": \"450 g\" },"
  "      { \"stage\": \"dough\", \"ingredient\": \"salt\", \"amount\": \"12 g\" },"
  "      { \"stage\": \"dough\", \"ingredient\": \"starter-wheat\", \"amount\": \"60 g\" },"
  "      { \"stage\": \"roll-in\", \"ingredient\": \"butter-mine\", \"amount\": \"300 g\" },"
  "      { \"stage\": \"finish\", \"ingredient\": \"egg-whole\", \"amount\": \"1 egg\" } ],"
  "    \"batch\": { \"by\": \"pieces\", \"value\": 24 },"
  "    \"lock_in\": { \"style\": \"half\", \"rest\": { \"min\": 45, \"max\": 600, \"place\": \"fridge\" } },"
  "    \"turns\": [ { \"fold\": 3, \"thickness_mm\": 8, \"rest\": { \"min\": 45, \"max\": 720, \"place\": \"fridge\" } },"
  "                 { \"fold\": 4, \"length_mm\": 600 }, { \"fold\": 3, \"width_mm\": 200, \"thickness_mm\": 7 } ],"
  "    \"cut\": { \"shape\": \"triangle\", \"base_mm\": 90, \"height_mm\": 260, \"thickness_mm\": 4, \"trim_mm\": 8,"
  "             \"printed_sheet_mm\": [600, 300] },"
  "    \"method\": { \"steps\": [ { \"id\": \"mix\", \"minutes\": 12 }, { \"id\": \"proof\", \"minutes\": 150, \"at_c\": 26 },"
  "                            { \"id\": \"bake\", \"minutes\": 18 } ] } },"
  "  { \"id\": \"d2\", \"name\": \"Rectangles\", \"lines\": [ { \"stage\": \"dough\", \"ingredient\": \"flour-bread\", \"amount\": \"500 g\" },"
  "      { \"stage\": \"dough\", \"ingredient\": \"water\", \"amount\": \"55 %\" } ],"
  "    \"batch\": { \"by\": \"flour_g\", \"value\": 1000 },"
  "    \"cut\": { \"shape\": \"rectangle\", \"width_mm\": 80, \"length_mm\": 150, \"piece_mass_g\": 60 } },"
  "  { \"id\": \"d3\", \"name\": \"Squares\", \"lines\": [], \"cut\": { \"shape\": \"square\", \"side_mm\": 100, \"thickness_mm\": 4 } },"
  "  { \"id\": \"d4\", \"name\": \"Rounds\", \"lines\": [], \"cut\": { \"shape\": \"round\", \"diameter_mm\": 90, \"gap_mm\": 5, \"thickness_mm\": 4 } },"
  "  { \"id\": \"d5\", \"name\": \"Slices\", \"lines\": [],"
  "    \"cut\": { \"shape\": \"slices\", \"slice_mm\": 30, \"roll_length_mm\": 400, \"thickness_mm\": 4 } } ] }";

void
page_set_up (PageFixture *fixture,
             PageMaker    make,
             const char  *dough)
{
  g_autoptr (GError) error = NULL;
  TrTrial *trial = tr_trial_read (trial_text, strlen (trial_text), &error);

  g_assert_no_error (error);
  fixture->document = tr_document_new_for_trial (trial);
  fixture->window = GTK_WINDOW (gtk_window_new ());
  fixture->page = TR_PAGE (make ());
  tr_page_set_document (fixture->page, fixture->document);
  tr_page_set_dough (fixture->page, dough);
  gtk_window_set_child (fixture->window, GTK_WIDGET (fixture->page));
  gtk_window_set_default_size (fixture->window, 700, 800);
  gtk_window_present (fixture->window);
  ui_frames (GTK_WIDGET (fixture->window), 2);
}

void
page_tear_down (PageFixture *fixture)
{
  gpointer page = fixture->page;

  g_object_add_weak_pointer (page, &page);
  gtk_window_destroy (fixture->window);
  ui_settle ();
  g_assert_null (page);
  g_assert_finalize_object (fixture->document);
}

const TrTrial *
page_get_trial (PageFixture *fixture)
{
  return tr_document_get_trial (fixture->document);
}

void
page_commit (PageFixture *fixture,
             TrTrial     *draft)
{
  g_autoptr (GError) error = NULL;

  tr_document_commit (fixture->document, draft, "test", NULL, "", &error);
  g_assert_no_error (error);
  ui_settle ();
}

static JsonNode *
step_into (JsonNode   *node,
           const char *token)
{
  if (node == NULL)
    return NULL;
  if (JSON_NODE_HOLDS_OBJECT (node))
    return json_object_get_member (json_node_get_object (node), token);
  if (JSON_NODE_HOLDS_ARRAY (node))
    {
      guint64 index = g_ascii_strtoull (token, NULL, 10);

      return index < json_array_get_length (json_node_get_array (node)) ?
             json_array_get_element (json_node_get_array (node), (guint) index) : NULL;
    }

  return NULL;
}

char *
page_dup_value (PageFixture *fixture,
                const char  *pointer)
{
  g_autofree char *text = ui_dup_trial_text (fixture->document);
  g_autoptr (JsonParser) parser = json_parser_new ();
  gboolean is_in_dough = !g_str_has_prefix (pointer, "/bench/") && !g_str_has_prefix (pointer, "/ingredients/") &&
                         !g_str_equal (pointer, "/title");
  g_autofree char *whole = is_in_dough ? tr_figures_dup_pointer ((guint) tr_page_get_dough_index (fixture->page), pointer) :
                                         g_strdup (pointer);
  g_auto (GStrv) tokens = g_strsplit (whole + 1, "/", -1);

  g_assert_true (json_parser_load_from_data (parser, text, -1, NULL));

  JsonNode *node = json_parser_get_root (parser);

  for (guint i = 0; tokens[i] != NULL; i++)
    node = step_into (node, tokens[i]);

  if (node == NULL)
    return NULL;
  if (json_node_get_value_type (node) != G_TYPE_DOUBLE && json_node_get_value_type (node) != G_TYPE_INT64)
    return json_to_string (node, FALSE);

  /* json-glib writes 0.1 with seventeen digits. */
  g_autoptr (GString) number = g_string_new (NULL);

  tr_json_append_number (number, json_node_get_double (node));

  return g_string_free (g_steal_pointer (&number), FALSE);
}

GtkWidget *
page_get_focus (PageFixture *fixture)
{
  return gtk_window_get_focus (fixture->window);
}

GtkWidget *
page_get_around (PageFixture *fixture,
                 GType        type)
{
  GtkWidget *focus = page_get_focus (fixture);

  return focus != NULL ? gtk_widget_get_ancestor (focus, type) : NULL;
}

GtkWidget *
page_type (PageFixture *fixture,
           const char  *pointer,
           const char  *text)
{
  if (!tr_page_go_to (fixture->page, pointer))
    g_error ("no field for %s", pointer);

  GtkWidget *focus = page_get_focus (fixture);

  g_assert_true (GTK_IS_EDITABLE (focus));
  ui_type (focus, text);

  return focus;
}

void
page_leave (PageFixture *fixture)
{
  gtk_window_set_focus (fixture->window, NULL);
  ui_settle ();
}

gboolean
page_press (PageFixture *fixture,
            guint        keyval)
{
  /* The keys are listened to on the entry, which holds the focused text. */
  for (GtkWidget *widget = page_get_focus (fixture); widget != NULL; widget = gtk_widget_get_parent (widget))
    {
      g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (widget);

      for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
        {
          g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);
          gboolean is_used = FALSE;

          if (!GTK_IS_EVENT_CONTROLLER_KEY (controller) || gtk_event_controller_get_propagation_phase (controller) != GTK_PHASE_CAPTURE)
            continue;
          g_signal_emit_by_name (controller, "key-pressed", keyval, 0u, (GdkModifierType) 0, &is_used);
          if (is_used)
            return TRUE;
        }
    }

  return FALSE;
}
