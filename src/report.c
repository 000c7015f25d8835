/* report.c: the figures and findings as JSON and as text
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The keys are a contract with whoever reads them: a key is always there, what
 * cannot be computed is null and never 0, nothing is rounded. The same figures
 * give the same bytes. Only the sentences depend on the reader.
 */

#include "config.h"

#include "report.h"

#include "report-json.h"
#include "calc/formula.h"
#include "calc/search.h"
#include "trial/document.h"
#include "words/comparison.h"

static void
report_lines (TrJson          *json,
              const TrFormula *formula)
{
  tr_json_open (json, "lines", '[');
  for (guint i = 0; i < formula->lines->len; i++)
    {
      const TrLineFigures *line = tr_formula_get_line (formula, i);

      tr_json_open (json, NULL, '{');
      tr_json_text (json, "stage", tr_stage_id (line->line->stage));
      tr_json_text (json, "group", line->line->group);
      tr_json_text (json, "ingredient", line->line->ingredient);
      tr_json_text (json, "written", line->line->amount);
      tr_json_number (json, "grams", line->grams);
      tr_json_number (json, "percent", line->percent);
      tr_json_close (json, '}');
    }
  tr_json_close (json, ']');
}

static void
report_problems (TrJson          *json,
                 const TrFormula *formula,
                 guint            index,
                 const TrReader  *reader)
{
  tr_json_open (json, "problems", '[');
  for (guint i = 0; i < formula->problems->len; i++)
    {
      const TrProblem *problem = g_ptr_array_index (formula->problems, i);
      g_autofree char *where = tr_figures_dup_pointer (index, problem->where);
      g_autofree char *text = tr_words_problem (reader, problem);

      tr_json_open (json, NULL, '{');
      tr_json_text (json, "where", where);
      tr_json_text (json, "text", text);
      tr_json_close (json, '}');
    }
  tr_json_close (json, ']');
}

static void
report_formula (TrJson          *json,
                const TrFormula *formula,
                guint            index,
                const TrReader  *reader)
{
  tr_json_open (json, "formula", '{');
  tr_json_number (json, "flour_g", formula->flour_g);
  tr_json_number (json, "dough_g", formula->dough_g);
  tr_json_number (json, "roll_in_g", formula->roll_in_g);
  tr_json_number (json, "total_g", formula->total_g);
  tr_json_number (json, "added_water_percent", formula->added_water_percent);
  tr_json_number (json, "all_water_percent", formula->all_water_percent);
  tr_json_number (json, "prefermented_flour_percent", formula->prefermented_flour_percent);
  tr_json_number (json, "dough_fat_percent", formula->dough_fat_percent);
  tr_json_number (json, "roll_in_percent_of_flour", formula->roll_in_percent_of_flour);
  tr_json_number (json, "roll_in_percent_of_dough", formula->roll_in_percent_of_dough);
  tr_json_number (json, "roll_in_percent_of_total", formula->roll_in_percent_of_total);
  tr_json_number (json, "roll_in_fat_percent_of_flour", formula->roll_in_fat_percent_of_flour);
  tr_json_number (json, "salt_percent", formula->salt_percent);
  tr_json_number (json, "sugar_percent", formula->sugar_percent);
  tr_json_number (json, "yeast_fresh_percent", formula->yeast_fresh_percent);
  tr_json_number (json, "scale", formula->scale);
  report_lines (json, formula);
  report_problems (json, formula, index, reader);
  tr_json_close (json, '}');
}

static void
report_content (TrJson          *json,
                const TrContent *content)
{
  tr_json_number (json, "fat_g", content->fat_g);
  tr_json_number (json, "salt_g", content->salt_g);
  tr_json_number (json, "sugars_g", content->sugars_g);
  tr_json_number (json, "energy_kj", content->energy_kj);
  tr_json_number (json, "energy_kcal", content->energy_kcal);
}

static void
report_piece (TrJson        *json,
              const TrPiece *piece)
{
  tr_json_open (json, "piece", '{');
  tr_json_number (json, "count", piece->count);
  tr_json_number (json, "raw_mass_g", piece->raw_mass_g);
  tr_json_number (json, "added_fat_g", piece->added_fat_g);
  report_content (json, &piece->content);
  tr_json_open (json, "per_100g_raw", '{');
  report_content (json, &piece->per_100g_raw);
  tr_json_close (json, '}');
  tr_json_number (json, "cost", piece->cost);
  tr_json_number (json, "baked_mass_g", piece->baked_mass_g);
  tr_json_close (json, '}');
}

static void
report_breaks (TrJson  *json,
               TrBreaks breaks)
{
  tr_json_open (json, "breaks", '[');
  for (int i = 0; i < TR_N_BREAKS; i++)
    if ((breaks & (1 << i)) != 0)
      tr_json_text (json, NULL, tr_break_id ((TrBreaks) (1 << i)));
  tr_json_close (json, ']');
}

static void
report_step (TrJson              *json,
             const TrTurnFigures *step)
{
  tr_json_open (json, NULL, '{');
  tr_json_size (json, "start_mm", &step->start_mm);
  tr_json_size (json, "rolled_mm", &step->rolled_mm);
  tr_json_size (json, "folded_mm", &step->folded_mm);
  tr_json_number (json, "stretch", step->stretch);
  tr_json_number (json, "fat_layers", step->fat_layers);
  tr_json_number (json, "dough_layers", step->dough_layers);
  tr_json_range (json, "fat_layer_um", &step->fat_layer_um);
  tr_json_number (json, "trimmed_g", step->trimmed_g);
  tr_json_boolean (json, "fits", step->breaks == 0);
  report_breaks (json, step->breaks);
  tr_json_close (json, '}');
}

static void
report_to_sheet (TrJson             *json,
                 const TrLamination *lamination)
{
  const TrToSheet *to_sheet = &lamination->to_sheet;

  if (!lamination->has_to_sheet)
    {
      tr_json_word (json, "to_sheet", "null");
      return;
    }
  tr_json_open (json, "to_sheet", '{');
  tr_json_number (json, "blocks_cut", to_sheet->blocks_cut);
  tr_json_size (json, "start_mm", &to_sheet->start_mm);
  tr_json_number (json, "stretch_length", to_sheet->stretch_length);
  tr_json_number (json, "stretch_width", to_sheet->stretch_width);
  tr_json_text (json, "order", to_sheet->order);
  tr_json_boolean (json, "fits", to_sheet->fits);
  tr_json_close (json, '}');
}

static void
report_lock_in (TrJson                *json,
                const TrLockInFigures *lock_in)
{
  tr_json_open (json, "lock_in", '{');
  tr_json_size (json, "fat_mm", &lock_in->fat_mm);
  tr_json_size (json, "dough_mm", &lock_in->dough_mm);
  tr_json_size (json, "block_mm", &lock_in->block_mm);
  tr_json_number (json, "rim_share", lock_in->rim_share);
  tr_json_close (json, '}');
}

static void
report_lamination (TrJson               *json,
                   const TrDoughFigures *figures)
{
  const TrLamination *lamination = &figures->lamination;

  if (!figures->has_lamination)
    {
      tr_json_word (json, "lamination", "null");
      return;
    }
  tr_json_open (json, "lamination", '{');
  tr_json_number (json, "fat_layers", lamination->fat_layers);
  tr_json_number (json, "dough_layers", lamination->dough_layers);
  tr_json_number (json, "bands", lamination->bands);
  tr_json_number (json, "fold_product", lamination->fold_product);
  tr_json_number (json, "fat_volume_fraction", lamination->fat_volume_fraction);
  tr_json_range (json, "fat_layer_um", &lamination->fat_layer_um);
  tr_json_open (json, "dough_layer_um", '{');
  tr_json_number (json, "min", lamination->dough_layer_um.min);
  tr_json_number (json, "max", lamination->dough_layer_um.max);
  tr_json_number (json, "outer", lamination->dough_layer_um_outer);
  tr_json_close (json, '}');
  report_lock_in (json, &lamination->lock_in);
  tr_json_open (json, "steps", '[');
  for (guint i = 0; i < lamination->steps->len; i++)
    report_step (json, &g_array_index (lamination->steps, TrTurnFigures, i));
  tr_json_close (json, ']');
  report_to_sheet (json, lamination);
  tr_json_close (json, '}');
}

static void
report_alternatives (TrJson        *json,
                     const TrSheet *sheet)
{
  tr_json_open (json, "alternatives", '[');
  for (guint i = 0; i < sheet->n_alternatives; i++)
    {
      const TrAlternative *alternative = &sheet->alternatives[i];

      tr_json_open (json, NULL, '{');
      tr_json_number (json, "rows", alternative->rows);
      tr_json_number (json, "per_row", alternative->per_row);
      tr_json_number (json, "sheets", alternative->sheets);
      tr_json_number (json, "length_mm", alternative->length_mm);
      tr_json_number (json, "width_mm", alternative->width_mm);
      tr_json_number (json, "pieces_cut", alternative->pieces_cut);
      tr_json_number (json, "scrap_percent", alternative->scrap_percent);
      tr_json_close (json, '}');
    }
  tr_json_close (json, ']');
}

static void
report_trays (TrJson        *json,
              const TrTrays *trays)
{
  tr_json_open (json, "trays", '{');
  tr_json_numbers (json, "footprint_mm", trays->footprint_mm.mm, 2);
  tr_json_number (json, "per_tray", trays->per_tray);
  tr_json_number (json, "trays", trays->trays);
  tr_json_number (json, "loads", trays->loads);
  tr_json_close (json, '}');
}

static void
report_sheet (TrJson               *json,
              const TrDoughFigures *figures)
{
  const TrSheet *sheet = &figures->sheet;

  if (!figures->has_sheet)
    {
      tr_json_word (json, "sheet", "null");
      return;
    }
  tr_json_open (json, "sheet", '{');
  tr_json_number (json, "rows", sheet->rows);
  tr_json_number (json, "per_row", sheet->per_row);
  tr_json_number (json, "sheets", sheet->sheets);
  tr_json_number (json, "length_mm", sheet->length_mm);
  tr_json_number (json, "width_mm", sheet->width_mm);
  tr_json_number (json, "thickness_mm", sheet->thickness_mm);
  tr_json_size (json, "rolled_mm", &sheet->rolled_mm);
  tr_json_number (json, "mass_g", sheet->mass_g);
  tr_json_number (json, "pieces_cut", sheet->pieces_cut);
  tr_json_number (json, "wanted", sheet->wanted);
  tr_json_number (json, "spare_pieces", sheet->spare_pieces);
  tr_json_number (json, "scrap_percent", sheet->scrap_percent);
  report_alternatives (json, sheet);
  tr_json_number (json, "windings", sheet->windings);
  tr_json_number (json, "diameter_mm", sheet->diameter_mm);
  tr_json_number (json, "layers_across", sheet->layers_across);
  tr_json_number (json, "printed_thickness_mm", sheet->printed_thickness_mm);
  report_trays (json, &sheet->trays);
  tr_json_close (json, '}');
}

static void
report_rests (TrJson       *json,
              const GArray *rests)
{
  tr_json_open (json, "rests", '[');
  for (guint i = 0; i < rests->len; i++)
    {
      const TrRestFigures *rest = &g_array_index (rests, TrRestFigures, i);

      tr_json_open (json, NULL, '{');
      tr_json_number (json, "turn", rest->turn);
      tr_json_text (json, "place", tr_place_id (rest->place));
      tr_json_number (json, "air_c", rest->air_c);
      tr_json_text (json, "on", tr_on_id (rest->on));
      tr_json_number (json, "h_w_m2k", rest->h_w_m2k);
      tr_json_number (json, "thickness_mm", rest->thickness_mm);
      tr_json_number (json, "k_w_mk", rest->k_w_mk);
      tr_json_number (json, "rho_kg_m3", rest->rho_kg_m3);
      tr_json_number (json, "cp_j_kgk", rest->cp_j_kgk);
      tr_json_number (json, "start_c", rest->start_c);
      tr_json_number (json, "target_c", rest->target_c);
      tr_json_number (json, "minutes_to_core", rest->minutes_to_core);
      tr_json_number (json, "written_minutes", rest->written_minutes);
      tr_json_number (json, "core_c_after_written", rest->core_c_after_written);
      tr_json_number (json, "mean_c_after_written", rest->mean_c_after_written);
      tr_json_number (json, "minutes_to_surface_freezing", rest->minutes_to_surface_freezing);
      tr_json_number (json, "minutes_to_workable", rest->minutes_to_workable);
      tr_json_number (json, "work_window_minutes", rest->work_window_minutes);
      tr_json_close (json, '}');
    }
  tr_json_close (json, ']');
}

static void
report_water (TrJson               *json,
              const TrDoughFigures *figures)
{
  const TrWater *water = &figures->water;

  if (!figures->has_water)
    {
      tr_json_word (json, "water", "null");
      return;
    }

  tr_json_open (json, "water", '{');
  tr_json_number (json, "n", water->n);
  tr_json_number (json, "liquid_need_c", water->liquid_need_c);
  tr_json_number (json, "water_c", water->water_c);
  tr_json_number (json, "ice_g", water->ice_g);
  tr_json_number (json, "available_water_g", water->available_water_g);
  tr_json_close (json, '}');
}

static void
report_dough (TrJson               *json,
              const TrDoughFigures *figures,
              guint                 index,
              const TrReader       *reader)
{
  tr_json_open (json, NULL, '{');
  tr_json_text (json, "id", figures->dough->id);
  report_formula (json, &figures->formula, index, reader);
  report_piece (json, &figures->piece);
  report_lamination (json, figures);
  report_sheet (json, figures);
  report_rests (json, figures->rests);
  report_water (json, figures);
  tr_json_open (json, "allergens", '[');
  for (char **id = figures->allergens; id != NULL && *id != NULL; id++)
    tr_json_text (json, NULL, *id);
  tr_json_close (json, ']');
  tr_json_close (json, '}');
}

static void
report_dough_findings (TrJson               *json,
                       const TrDoughFigures *figures,
                       guint                 index,
                       const TrReader       *reader)
{
  for (guint i = 0; i < figures->findings->len; i++)
    {
      const TrFinding *finding = g_ptr_array_index (figures->findings, i);
      g_autofree char *where = tr_figures_dup_pointer (index, finding->where);
      g_autofree char *text = tr_words_finding (reader, figures, finding);

      tr_json_open (json, NULL, '{');
      tr_json_text (json, "id", tr_finding_id (finding->id));
      tr_json_text (json, "severity", tr_severity_id (finding->severity));
      tr_json_text (json, "dough", figures->dough->id);
      tr_json_text (json, "where", where);
      tr_json_text (json, "text", text);
      tr_json_number (json, "value", finding->value);
      tr_json_number (json, "limit", finding->limit);
      tr_json_text (json, "source", finding->source);
      tr_json_close (json, '}');
    }
}

char *
tr_report_figures (const TrFigures *figures,
                   const TrReader  *reader)
{
  TrJson json = { NULL, 0, FALSE };

  g_return_val_if_fail (figures != NULL && reader != NULL, NULL);

  json.out = g_string_new (NULL);
  tr_json_open (&json, NULL, '{');
  tr_json_open (&json, "doughs", '[');
  for (guint i = 0; i < figures->doughs->len; i++)
    report_dough (&json, tr_figures_get_dough (figures, i), i, reader);
  tr_json_close (&json, ']');
  tr_json_open (&json, "findings", '[');
  for (guint i = 0; i < figures->doughs->len; i++)
    report_dough_findings (&json, tr_figures_get_dough (figures, i), i, reader);
  tr_json_close (&json, ']');
  tr_json_word (&json, "plan", "null");
  tr_json_tasting (&json, figures);
  tr_json_close (&json, '}');
  g_string_append_c (json.out, '\n');

  return g_string_free (json.out, FALSE);
}

char *
tr_report_comparison (const TrFigures *figures)
{
  g_autoptr (TrTextTable) table = NULL;

  g_return_val_if_fail (figures != NULL, NULL);

  table = tr_words_comparison_table (figures, NULL, 0);

  return tr_text_table_dup_csv (table);
}

/* A name of the baker's may hold a tab or a line end; a line of the list may not. */
static void
append_field (GString    *out,
              const char *text,
              char        end)
{
  g_autofree char *line = tr_words_one_line (text);

  g_string_append (out, line);
  g_string_append_c (out, end);
}

static void
report_folds (TrJson       *json,
              const char   *key,
              const guint8 *folds,
              guint         n)
{
  double numbers[TR_SEARCH_MAX_TURNS];

  for (guint i = 0; i < n; i++)
    numbers[i] = folds[i];
  tr_json_numbers (json, key, numbers, n);
}

static void
report_sequence (TrJson           *json,
                 const TrSequence *sequence)
{
  tr_json_open (json, NULL, '{');
  tr_json_text (json, "lock_in", tr_style_id (sequence->style));
  report_folds (json, "folds", sequence->folds, sequence->n_folds);
  tr_json_open (json, "orders", '[');
  for (guint i = 0; i < sequence->orders->len; i++)
    report_folds (json, NULL, (const guint8 *) sequence->orders->data + i * TR_SEARCH_MAX_TURNS, sequence->n_folds);
  tr_json_close (json, ']');
  tr_json_number (json, "fat_layers", sequence->fat_layers);
  tr_json_number (json, "fat_layer_um", sequence->fat_layer_um);
  tr_json_number (json, "longest_mm", sequence->longest_mm);
  tr_json_number (json, "worst_stretch", sequence->worst_stretch);
  tr_json_number (json, "blocks", sequence->blocks);
  tr_json_number (json, "rests", sequence->rests);
  tr_json_number (json, "hands_minutes", sequence->hands_minutes);
  tr_json_number (json, "minutes", sequence->minutes);
  tr_json_boolean (json, "fits", sequence->breaks == 0);
  report_breaks (json, sequence->breaks);
  tr_json_close (json, '}');
}

char *
tr_report_sequences (const GPtrArray *sequences)
{
  TrJson json = { .out = g_string_new (NULL) };

  tr_json_open (&json, NULL, '{');
  tr_json_open (&json, "sequences", '[');
  for (guint i = 0; i < sequences->len; i++)
    report_sequence (&json, g_ptr_array_index (sequences, i));
  tr_json_close (&json, ']');
  tr_json_close (&json, '}');
  g_string_append_c (json.out, '\n');

  return g_string_free (json.out, FALSE);
}

char *
tr_report_findings (const TrFigures *figures,
                    const TrReader  *reader,
                    gboolean        *has_stop)
{
  GString *out;

  g_return_val_if_fail (figures != NULL && reader != NULL && has_stop != NULL, NULL);

  out = g_string_new (NULL);
  *has_stop = FALSE;
  for (guint i = 0; i < figures->doughs->len; i++)
    {
      const TrDoughFigures *dough = tr_figures_get_dough (figures, i);

      for (guint j = 0; j < dough->findings->len; j++)
        {
          const TrFinding *finding = g_ptr_array_index (dough->findings, j);
          g_autofree char *sentence = tr_words_finding (reader, dough, finding);

          append_field (out, tr_severity_id (finding->severity), '\t');
          append_field (out, dough->dough->id, '\t');
          append_field (out, sentence, '\n');
          *has_stop |= finding->severity == TR_SEVERITY_STOP;
        }
    }
  return g_string_free (out, FALSE);
}
