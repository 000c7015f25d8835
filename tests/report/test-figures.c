/* test-figures.c: the report says every figure, unrounded, and nothing else
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each figure is looked up in the parsed report under its key and compared, to
 * the last bit, with the struct it came from; json-glib reads the report as an
 * outsider would.
 */

#include <json-glib/json-glib.h>
#include <string.h>

#include "report.h"
#include "trial/document.h"

static const char *demo;         /* a trial with everything in it */

typedef struct { const char *key; gsize offset; } Field;

#define FIELD(type, name) { #name, G_STRUCT_OFFSET (type, name) }

static const Field formula_fields[] = {
  FIELD (TrFormula, flour_g), FIELD (TrFormula, dough_g), FIELD (TrFormula, roll_in_g), FIELD (TrFormula, total_g),
  FIELD (TrFormula, added_water_percent), FIELD (TrFormula, all_water_percent), FIELD (TrFormula, prefermented_flour_percent),
  FIELD (TrFormula, dough_fat_percent), FIELD (TrFormula, roll_in_percent_of_flour), FIELD (TrFormula, roll_in_percent_of_dough),
  FIELD (TrFormula, roll_in_percent_of_total), FIELD (TrFormula, roll_in_fat_percent_of_flour), FIELD (TrFormula, salt_percent),
  FIELD (TrFormula, sugar_percent), FIELD (TrFormula, yeast_fresh_percent), FIELD (TrFormula, scale),
};

static const Field piece_fields[] = {
  FIELD (TrPiece, count), FIELD (TrPiece, raw_mass_g), FIELD (TrPiece, added_fat_g), FIELD (TrPiece, cost), FIELD (TrPiece, baked_mass_g),
  FIELD (TrPiece, content.fat_g), FIELD (TrPiece, content.salt_g), FIELD (TrPiece, content.sugars_g),
  FIELD (TrPiece, content.energy_kj), FIELD (TrPiece, content.energy_kcal),
  FIELD (TrPiece, per_100g_raw.fat_g), FIELD (TrPiece, per_100g_raw.salt_g), FIELD (TrPiece, per_100g_raw.sugars_g),
  FIELD (TrPiece, per_100g_raw.energy_kj), FIELD (TrPiece, per_100g_raw.energy_kcal),
};

static const Field lamination_fields[] = {
  FIELD (TrLamination, fat_layers), FIELD (TrLamination, dough_layers), FIELD (TrLamination, bands), FIELD (TrLamination, fold_product),
  FIELD (TrLamination, fat_volume_fraction), FIELD (TrLamination, fat_layer_um.min), FIELD (TrLamination, fat_layer_um.max),
  FIELD (TrLamination, dough_layer_um.min), FIELD (TrLamination, dough_layer_um.max),
  { "dough_layer_um.outer", G_STRUCT_OFFSET (TrLamination, dough_layer_um_outer) },
  FIELD (TrLamination, lock_in.rim_share),
};

static const Field water_fields[] = {
  FIELD (TrWater, n), FIELD (TrWater, liquid_need_c), FIELD (TrWater, water_c), FIELD (TrWater, ice_g), FIELD (TrWater, available_water_g),
};

static const Field rest_fields[] = {
  FIELD (TrRestFigures, air_c), FIELD (TrRestFigures, h_w_m2k), FIELD (TrRestFigures, thickness_mm), FIELD (TrRestFigures, k_w_mk),
  FIELD (TrRestFigures, rho_kg_m3), FIELD (TrRestFigures, cp_j_kgk), FIELD (TrRestFigures, start_c), FIELD (TrRestFigures, target_c),
  FIELD (TrRestFigures, minutes_to_core), FIELD (TrRestFigures, written_minutes), FIELD (TrRestFigures, core_c_after_written),
  FIELD (TrRestFigures, mean_c_after_written), FIELD (TrRestFigures, minutes_to_surface_freezing),
  FIELD (TrRestFigures, minutes_to_workable), FIELD (TrRestFigures, work_window_minutes),
};

static const Field step_fields[] = {
  FIELD (TrTurnFigures, stretch), FIELD (TrTurnFigures, fat_layers), FIELD (TrTurnFigures, dough_layers),
  FIELD (TrTurnFigures, fat_layer_um.min), FIELD (TrTurnFigures, fat_layer_um.max), FIELD (TrTurnFigures, trimmed_g),
};

static const Field to_sheet_fields[] = {
  FIELD (TrToSheet, blocks_cut), FIELD (TrToSheet, stretch_length), FIELD (TrToSheet, stretch_width),
};

static const Field sheet_fields[] = {
  FIELD (TrSheet, length_mm), FIELD (TrSheet, width_mm), FIELD (TrSheet, thickness_mm), FIELD (TrSheet, mass_g),
  FIELD (TrSheet, pieces_cut), FIELD (TrSheet, wanted), FIELD (TrSheet, spare_pieces), FIELD (TrSheet, scrap_percent),
  FIELD (TrSheet, windings), FIELD (TrSheet, diameter_mm), FIELD (TrSheet, layers_across), FIELD (TrSheet, printed_thickness_mm),
  FIELD (TrSheet, trays.per_tray), FIELD (TrSheet, trays.trays), FIELD (TrSheet, trays.loads),
};

static const Field alternative_fields[] = {
  FIELD (TrAlternative, length_mm), FIELD (TrAlternative, width_mm), FIELD (TrAlternative, pieces_cut), FIELD (TrAlternative, scrap_percent),
};

/* "content.fat_g" stands in the piece itself. */
static JsonNode *
look_up (JsonObject *object,
         const char *path)
{
  g_auto (GStrv) keys = g_strsplit (g_str_has_prefix (path, "content.") ? path + strlen ("content.") : path, ".", -1);
  char **key = keys;

  for (; key[1] != NULL; key++)
    {
      g_assert_true (json_object_has_member (object, *key));
      object = json_object_get_object_member (object, *key);
    }
  if (!json_object_has_member (object, *key))
    g_error ("no key %s", path);
  return json_object_get_member (object, *key);
}

static void
check_number (JsonNode   *node,
              double      expected,
              const char *what)
{
  double value;

  if (!isfinite (expected))
    {
      if (!JSON_NODE_HOLDS_NULL (node))
        g_error ("%s: not null, although it is not known", what);
      return;
    }
  if (!JSON_NODE_HOLDS_VALUE (node))
    g_error ("%s: not a number", what);
  value = json_node_get_double (node);
  if (memcmp (&value, &expected, sizeof value) != 0 && fabs (value - expected) > 0)
    g_error ("%s: %.17g in the report, %.17g in the figures", what, value, expected);
}

static void
check_fields (JsonObject   *object,
              const Field  *fields,
              gsize         n,
              gconstpointer figures)
{
  for (gsize i = 0; i < n; i++)
    check_number (look_up (object, fields[i].key), *(const double *) ((const char *) figures + fields[i].offset), fields[i].key);
}

#define CHECK_FIELDS(object, fields, figures) check_fields (object, fields, G_N_ELEMENTS (fields), figures)

static void
check_triple (JsonObject   *object,
              const char   *path,
              const double *mm,
              guint         n)
{
  JsonArray *array = json_node_get_array (look_up (object, path));

  g_assert_cmpuint (json_array_get_length (array), ==, n);
  for (guint i = 0; i < n; i++)
    check_number (json_array_get_element (array, i), mm[i], path);
}

static void
check_words (JsonArray *array,
             TrBreaks   breaks)
{
  guint n = 0;

  for (int i = 0; i < TR_N_BREAKS; i++)
    if (breaks & (1 << i))
      {
        g_assert_cmpstr (json_array_get_string_element (array, n), ==, tr_break_id ((TrBreaks) (1 << i)));
        n++;
      }
  g_assert_cmpuint (json_array_get_length (array), ==, n);
}

static void
check_lamination (JsonObject           *dough,
                  const TrDoughFigures *figures)
{
  const TrLamination *lamination = &figures->lamination;
  JsonObject *object;
  JsonArray *steps;

  if (!figures->has_lamination)
    {
      g_assert_true (json_object_get_null_member (dough, "lamination"));
      return;
    }
  object = json_object_get_object_member (dough, "lamination");
  CHECK_FIELDS (object, lamination_fields, lamination);
  check_triple (object, "lock_in.fat_mm", lamination->lock_in.fat_mm.mm, 3);
  check_triple (object, "lock_in.dough_mm", lamination->lock_in.dough_mm.mm, 3);
  check_triple (object, "lock_in.block_mm", lamination->lock_in.block_mm.mm, 3);
  steps = json_object_get_array_member (object, "steps");
  g_assert_cmpuint (json_array_get_length (steps), ==, lamination->steps->len);
  for (guint i = 0; i < lamination->steps->len; i++)
    {
      const TrTurnFigures *turn = &g_array_index (lamination->steps, TrTurnFigures, i);
      JsonObject *step = json_array_get_object_element (steps, i);

      CHECK_FIELDS (step, step_fields, turn);
      check_triple (step, "start_mm", turn->start_mm.mm, 3);
      check_triple (step, "rolled_mm", turn->rolled_mm.mm, 3);
      check_triple (step, "folded_mm", turn->folded_mm.mm, 3);
      g_assert_cmpint (json_object_get_boolean_member (step, "fits"), ==, turn->breaks == 0);
      check_words (json_object_get_array_member (step, "breaks"), turn->breaks);
    }
  if (!lamination->has_to_sheet)
    {
      g_assert_true (json_object_get_null_member (object, "to_sheet"));
      return;
    }
  object = json_object_get_object_member (object, "to_sheet");
  CHECK_FIELDS (object, to_sheet_fields, &lamination->to_sheet);
  check_triple (object, "start_mm", lamination->to_sheet.start_mm.mm, 3);
  g_assert_cmpstr (json_object_get_string_member (object, "order"), ==, lamination->to_sheet.order);
  g_assert_cmpint (json_object_get_boolean_member (object, "fits"), ==, lamination->to_sheet.fits);
}

static void
check_sheet (JsonObject           *dough,
             const TrDoughFigures *figures)
{
  const TrSheet *sheet = &figures->sheet;
  JsonObject *object;
  JsonArray *alternatives;

  if (!figures->has_sheet)
    {
      g_assert_true (json_object_get_null_member (dough, "sheet"));
      return;
    }
  object = json_object_get_object_member (dough, "sheet");
  CHECK_FIELDS (object, sheet_fields, sheet);
  g_assert_cmpint (json_object_get_int_member (object, "rows"), ==, sheet->rows);
  g_assert_cmpint (json_object_get_int_member (object, "per_row"), ==, sheet->per_row);
  g_assert_cmpint (json_object_get_int_member (object, "sheets"), ==, sheet->sheets);
  check_triple (object, "rolled_mm", sheet->rolled_mm.mm, 3);
  check_triple (object, "trays.footprint_mm", sheet->trays.footprint_mm.mm, 2);
  alternatives = json_object_get_array_member (object, "alternatives");
  g_assert_cmpuint (json_array_get_length (alternatives), ==, sheet->n_alternatives);
  for (guint i = 0; i < sheet->n_alternatives; i++)
    {
      JsonObject *alternative = json_array_get_object_element (alternatives, i);

      CHECK_FIELDS (alternative, alternative_fields, &sheet->alternatives[i]);
      g_assert_cmpint (json_object_get_int_member (alternative, "rows"), ==, sheet->alternatives[i].rows);
      g_assert_cmpint (json_object_get_int_member (alternative, "per_row"), ==, sheet->alternatives[i].per_row);
      g_assert_cmpint (json_object_get_int_member (alternative, "sheets"), ==, sheet->alternatives[i].sheets);
    }
}

static void
check_lines (JsonObject           *formula,
             const TrDoughFigures *figures)
{
  JsonArray *lines = json_object_get_array_member (formula, "lines");

  g_assert_cmpuint (json_array_get_length (lines), ==, figures->formula.lines->len);
  for (guint i = 0; i < figures->formula.lines->len; i++)
    {
      const TrLineFigures *line = &g_array_index (figures->formula.lines, TrLineFigures, i);
      JsonObject *object = json_array_get_object_element (lines, i);

      g_assert_cmpstr (json_object_get_string_member (object, "stage"), ==, tr_stage_id (line->line->stage));
      g_assert_cmpstr (json_object_get_string_member_with_default (object, "group", NULL), ==, line->line->group);
      g_assert_cmpstr (json_object_get_string_member_with_default (object, "ingredient", NULL), ==, line->line->ingredient);
      g_assert_cmpstr (json_object_get_string_member (object, "written"), ==, line->line->amount);
      check_number (json_object_get_member (object, "grams"), line->grams, "grams");
      check_number (json_object_get_member (object, "percent"), line->percent, "percent");
    }
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (formula, "problems")), ==, figures->formula.problems->len);
}

static void
check_findings (JsonArray       *findings,
                const TrFigures *figures,
                const TrReader  *reader)
{
  guint n = 0;

  for (guint i = 0; i < figures->doughs->len; i++)
    {
      const TrDoughFigures *dough = tr_figures_get_dough (figures, i);

      for (guint j = 0; j < dough->findings->len; j++, n++)
        {
          const TrFinding *finding = g_ptr_array_index (dough->findings, j);
          JsonObject *object = json_array_get_object_element (findings, n);
          g_autofree char *text = tr_words_finding (reader, dough, finding);
          g_autofree char *where = g_strdup_printf ("/doughs/%u%s", i, finding->where);

          g_assert_cmpstr (json_object_get_string_member (object, "id"), ==, tr_finding_id (finding->id));
          g_assert_cmpstr (json_object_get_string_member (object, "severity"), ==, tr_severity_id (finding->severity));
          g_assert_cmpstr (json_object_get_string_member (object, "dough"), ==, dough->dough->id);
          g_assert_cmpstr (json_object_get_string_member (object, "where"), ==, where);
          g_assert_cmpstr (json_object_get_string_member (object, "text"), ==, text);
          g_assert_cmpstr (json_object_get_string_member_with_default (object, "source", NULL), ==, finding->source);
          check_number (json_object_get_member (object, "value"), finding->value, "value");
          check_number (json_object_get_member (object, "limit"), finding->limit, "limit");
        }
    }
  g_assert_cmpuint (json_array_get_length (findings), ==, n);
}

/* The whole report of a trial against its figures; TRUE if it holds a stop. */
static void
check_rests (JsonArray    *array,
             const GArray *rests)
{
  g_assert_cmpuint (json_array_get_length (array), ==, rests->len);
  for (guint i = 0; i < rests->len; i++)
    {
      const TrRestFigures *rest = &g_array_index (rests, TrRestFigures, i);
      JsonObject *object = json_array_get_object_element (array, i);

      g_assert_cmpint (json_object_get_int_member (object, "turn"), ==, rest->turn);
      g_assert_cmpstr (json_object_get_string_member (object, "place"), ==, tr_place_id (rest->place));
      g_assert_cmpstr (json_object_get_string_member (object, "on"), ==, tr_on_id (rest->on));
      CHECK_FIELDS (object, rest_fields, rest);
    }
}

static gboolean
check_report (const TrTrial *trial,
              TrUnitSystem   units)
{
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL, *again = NULL, *list = NULL;
  JsonObject *root;
  JsonArray *doughs;
  TrReader reader;
  gboolean has_stop = FALSE;

  tr_reader_init_plain (&reader, units);
  text = tr_report_figures (figures, &reader);
  again = tr_report_figures (figures, &reader);
  g_assert_cmpstr (text, ==, again);
  g_assert_true (g_str_has_suffix (text, "}\n"));
  json_parser_load_from_data (parser, text, -1, &error);
  g_assert_no_error (error);

  root = json_node_get_object (json_parser_get_root (parser));
  g_assert_true (json_object_get_null_member (root, "plan"));
  g_assert_true (json_object_get_null_member (root, "tasting"));
  doughs = json_object_get_array_member (root, "doughs");
  g_assert_cmpuint (json_array_get_length (doughs), ==, figures->doughs->len);
  for (guint i = 0; i < figures->doughs->len; i++)
    {
      const TrDoughFigures *dough = tr_figures_get_dough (figures, i);
      JsonObject *object = json_array_get_object_element (doughs, i);
      JsonObject *formula = json_object_get_object_member (object, "formula");

      g_assert_cmpstr (json_object_get_string_member (object, "id"), ==, dough->dough->id);
      CHECK_FIELDS (formula, formula_fields, &dough->formula);
      check_lines (formula, dough);
      CHECK_FIELDS (json_object_get_object_member (object, "piece"), piece_fields, &dough->piece);
      check_lamination (object, dough);
      check_sheet (object, dough);
      check_rests (json_object_get_array_member (object, "rests"), dough->rests);
      g_assert_true (json_object_get_null_member (object, "water") == !dough->has_water);
      if (dough->has_water)
        CHECK_FIELDS (json_object_get_object_member (object, "water"), water_fields, &dough->water);
      g_assert_cmpuint (json_array_get_length (json_object_get_array_member (object, "allergens")), ==, g_strv_length (dough->allergens));
    }
  check_findings (json_object_get_array_member (root, "findings"), figures, &reader);
  list = tr_report_findings (figures, &reader, &has_stop);
  g_assert_true (g_utf8_validate (list, -1, NULL));
  return has_stop;
}

static void
test_every_figure_of_a_full_trial_is_reported (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (TrTrial) trial = tr_trial_read_file (demo, &error);

  g_assert_no_error (error);
  g_assert_false (check_report (trial, TR_UNITS_METRIC));
  g_assert_false (check_report (trial, TR_UNITS_US));
}

static TrTrial *
trial_from (const char *doughs)
{
  g_autofree char *text = g_strdup_printf ("{\"format\": \"tourier-trial\", \"version\": 1, \"doughs\": [%s]}", doughs);
  g_autoptr (GError) error = NULL;
  TrTrial *trial = tr_trial_read (text, strlen (text), &error);

  g_assert_no_error (error);
  return trial;
}

static void
test_what_cannot_be_computed_is_null (void)
{
  static const struct { const char *doughs; gboolean has_stop; } cases[] = {
    { "", FALSE },
    { "{\"id\": \"d1\", \"name\": \"\", \"lines\": []}", TRUE },
    { "{\"id\": \"a/b~\", \"name\": \"\", \"lines\": [{\"stage\": \"dough\", \"ingredient\": null, \"amount\": \"2 ladles\", "
      "\"text\": \"2 ladles of \\\"that\\\"\\t\"}], \"cut\": null, \"lock_in\": null}", TRUE },
    { "{\"id\": \"d1\", \"name\": \"\", \"lines\": [{\"stage\": \"dough\", \"ingredient\": \"flour-bread\", \"amount\": \"500 g\"}, "
      "{\"stage\": \"roll-in\", \"ingredient\": \"butter-unsalted\", \"amount\": \"250 g\"}], "
      "\"batch\": {\"by\": \"written\"}, \"lock_in\": {\"style\": \"inverse\"}, \"turns\": [{\"fold\": 4, \"thickness_mm\": 8}]}", FALSE },
    /* A turn that fits nowhere: fits is false and breaks says why. */
    { "{\"id\": \"d1\", \"name\": \"\", \"lines\": [{\"stage\": \"dough\", \"ingredient\": \"flour-bread\", \"amount\": \"5 kg\"}, "
      "{\"stage\": \"roll-in\", \"ingredient\": \"butter-unsalted\", \"amount\": \"2 kg\"}], "
      "\"batch\": {\"by\": \"written\"}, \"lock_in\": {\"style\": \"half\"}, \"turns\": [{\"fold\": 3, \"thickness_mm\": 1}]}", TRUE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TrTrial) trial = trial_from (cases[i].doughs);

      g_assert_cmpint (check_report (trial, TR_UNITS_METRIC), ==, cases[i].has_stop);
    }
}

static void
test_a_line_of_the_list_stays_one_line (void)
{
  g_autoptr (TrTrial) trial = trial_from ("{\"id\": \"a\\tb\\nc\", \"name\": \"\", \"lines\": [{\"stage\": \"dough\", \"ingredient\": "
                                          "\"flour-bread\", \"amount\": \"a\\tb\\n\"}]}");
  g_autoptr (TrFigures) figures = tr_figures_compute (trial, NULL);
  g_autofree char *list = NULL;
  g_auto (GStrv) lines = NULL;
  TrReader reader;
  gboolean has_stop = FALSE;
  guint n;

  tr_reader_init_plain (&reader, TR_UNITS_METRIC);
  list = tr_report_findings (figures, &reader, &has_stop);
  lines = g_strsplit (list, "\n", -1);
  n = g_strv_length (lines);
  g_assert_cmpuint (n, ==, tr_figures_get_dough (figures, 0)->findings->len + 1);
  g_assert_cmpstr (lines[n - 1], ==, "");
  for (guint i = 0; i + 1 < n; i++)
    {
      g_auto (GStrv) fields = g_strsplit (lines[i], "\t", -1);

      g_assert_cmpuint (g_strv_length (fields), ==, 3);
      g_assert_cmpstr (fields[1], ==, "a b c");
    }
  g_assert_true (has_stop);
}

static void
test_files_and_the_windows_options_go_to_the_window (void)
{
  static const char *const lines[] = {
    "tourier", "tourier a.tourier", "tourier a.tourier b.tourier", "tourier --gapplication-service",
    "tourier --gapplication-service a.tourier", "tourier --help-gapplication", "tourier --display=:1 a.tourier",
    "tourier -- --figures",
  };

  for (gsize i = 0; i < G_N_ELEMENTS (lines); i++)
    {
      g_auto (GStrv) arguments = g_strsplit (lines[i], " ", -1);

      g_test_message ("%s", lines[i]);
      g_assert_cmpint (tr_command_line ((int) g_strv_length (arguments), arguments), ==, -1);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_assert_cmpint (argc, ==, 2);
  demo = argv[1];

  g_test_add_func ("/report/figures/every-figure-of-a-full-trial", test_every_figure_of_a_full_trial_is_reported);
  g_test_add_func ("/report/figures/what-cannot-be-computed-is-null", test_what_cannot_be_computed_is_null);
  g_test_add_func ("/report/findings/a-line-stays-one-line", test_a_line_of_the_list_stays_one_line);

  g_test_add_func ("/report/command-line/files-and-the-windows-options-go-to-the-window",
                   test_files_and_the_windows_options_go_to_the_window);

  return g_test_run ();
}
