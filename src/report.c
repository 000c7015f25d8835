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

#include "calc/formula.h"
#include "trial/document.h"

typedef struct {
  GString *out;
  int depth;
  gboolean has_members;          /* of what is open now */
} Json;

static void
json_start (Json       *json,
            const char *key)
{
  if (json->depth > 0)
    {
      g_string_append (json->out, json->has_members ? ",\n" : "\n");
      g_string_append_printf (json->out, "%*s", 2 * json->depth, "");
    }
  json->has_members = TRUE;
  if (key != NULL)
    {
      tr_json_append_string (json->out, key);
      g_string_append (json->out, ": ");
    }
}

static void
json_open (Json       *json,
           const char *key,
           char        bracket)
{
  json_start (json, key);
  g_string_append_c (json->out, bracket);
  json->depth++;
  json->has_members = FALSE;
}

static void
json_close (Json *json,
            char  bracket)
{
  json->depth--;
  if (json->has_members)
    g_string_append_printf (json->out, "\n%*s", 2 * json->depth, "");
  g_string_append_c (json->out, bracket);
  json->has_members = TRUE;
}

static void
json_number (Json       *json,
             const char *key,
             double      value)
{
  json_start (json, key);
  tr_json_append_number (json->out, value);
}

static void
json_text (Json       *json,
           const char *key,
           const char *text)
{
  json_start (json, key);
  tr_json_append_string (json->out, text);
}

static void
json_word (Json       *json,
           const char *key,
           const char *word)
{
  json_start (json, key);
  g_string_append (json->out, word);
}

static void
json_boolean (Json       *json,
              const char *key,
              gboolean    value)
{
  json_word (json, key, value ? "true" : "false");
}

/* "[640, 205, 13]" on one line. */
static void
json_numbers (Json         *json,
              const char   *key,
              const double *numbers,
              guint         n)
{
  json_start (json, key);
  for (guint i = 0; i < n; i++)
    {
      g_string_append (json->out, i == 0 ? "[" : ", ");
      tr_json_append_number (json->out, numbers[i]);
    }
  g_string_append_c (json->out, ']');
}

static void
json_size (Json         *json,
           const char   *key,
           const TrSize *size)
{
  json_numbers (json, key, size->mm, 3);
}

static void
json_range (Json          *json,
            const char    *key,
            const TrRange *range)
{
  json_open (json, key, '{');
  json_number (json, "min", range->min);
  json_number (json, "max", range->max);
  json_close (json, '}');
}

static void
report_lines (Json            *json,
              const TrFormula *formula)
{
  json_open (json, "lines", '[');
  for (guint i = 0; i < formula->lines->len; i++)
    {
      const TrLineFigures *line = tr_formula_get_line (formula, i);

      json_open (json, NULL, '{');
      json_text (json, "stage", tr_stage_id (line->line->stage));
      json_text (json, "group", line->line->group);
      json_text (json, "ingredient", line->line->ingredient);
      json_text (json, "written", line->line->amount);
      json_number (json, "grams", line->grams);
      json_number (json, "percent", line->percent);
      json_close (json, '}');
    }
  json_close (json, ']');
}

static void
report_problems (Json            *json,
                 const TrFormula *formula,
                 guint            index,
                 const TrReader  *reader)
{
  json_open (json, "problems", '[');
  for (guint i = 0; i < formula->problems->len; i++)
    {
      const TrProblem *problem = g_ptr_array_index (formula->problems, i);
      g_autofree char *where = tr_figures_dup_pointer (index, problem->where);
      g_autofree char *text = tr_words_problem (reader, problem);

      json_open (json, NULL, '{');
      json_text (json, "where", where);
      json_text (json, "text", text);
      json_close (json, '}');
    }
  json_close (json, ']');
}

static void
report_formula (Json            *json,
                const TrFormula *formula,
                guint            index,
                const TrReader  *reader)
{
  json_open (json, "formula", '{');
  json_number (json, "flour_g", formula->flour_g);
  json_number (json, "dough_g", formula->dough_g);
  json_number (json, "roll_in_g", formula->roll_in_g);
  json_number (json, "total_g", formula->total_g);
  json_number (json, "added_water_percent", formula->added_water_percent);
  json_number (json, "all_water_percent", formula->all_water_percent);
  json_number (json, "prefermented_flour_percent", formula->prefermented_flour_percent);
  json_number (json, "dough_fat_percent", formula->dough_fat_percent);
  json_number (json, "roll_in_percent_of_flour", formula->roll_in_percent_of_flour);
  json_number (json, "roll_in_percent_of_dough", formula->roll_in_percent_of_dough);
  json_number (json, "roll_in_percent_of_total", formula->roll_in_percent_of_total);
  json_number (json, "roll_in_fat_percent_of_flour", formula->roll_in_fat_percent_of_flour);
  json_number (json, "salt_percent", formula->salt_percent);
  json_number (json, "sugar_percent", formula->sugar_percent);
  json_number (json, "yeast_fresh_percent", formula->yeast_fresh_percent);
  json_number (json, "scale", formula->scale);
  report_lines (json, formula);
  report_problems (json, formula, index, reader);
  json_close (json, '}');
}

static void
report_content (Json            *json,
                const TrContent *content)
{
  json_number (json, "fat_g", content->fat_g);
  json_number (json, "salt_g", content->salt_g);
  json_number (json, "sugars_g", content->sugars_g);
  json_number (json, "energy_kj", content->energy_kj);
  json_number (json, "energy_kcal", content->energy_kcal);
}

static void
report_piece (Json          *json,
              const TrPiece *piece)
{
  json_open (json, "piece", '{');
  json_number (json, "count", piece->count);
  json_number (json, "raw_mass_g", piece->raw_mass_g);
  json_number (json, "added_fat_g", piece->added_fat_g);
  report_content (json, &piece->content);
  json_open (json, "per_100g_raw", '{');
  report_content (json, &piece->per_100g_raw);
  json_close (json, '}');
  json_number (json, "cost", piece->cost);
  json_number (json, "baked_mass_g", piece->baked_mass_g);
  json_close (json, '}');
}

static void
report_breaks (Json     *json,
               TrBreaks  breaks)
{
  json_open (json, "breaks", '[');
  for (int i = 0; i < TR_N_BREAKS; i++)
    if ((breaks & (1 << i)) != 0)
      json_text (json, NULL, tr_break_id ((TrBreaks) (1 << i)));
  json_close (json, ']');
}

static void
report_step (Json                *json,
             const TrTurnFigures *step)
{
  json_open (json, NULL, '{');
  json_size (json, "start_mm", &step->start_mm);
  json_size (json, "rolled_mm", &step->rolled_mm);
  json_size (json, "folded_mm", &step->folded_mm);
  json_number (json, "stretch", step->stretch);
  json_number (json, "fat_layers", step->fat_layers);
  json_number (json, "dough_layers", step->dough_layers);
  json_range (json, "fat_layer_um", &step->fat_layer_um);
  json_number (json, "trimmed_g", step->trimmed_g);
  json_boolean (json, "fits", step->breaks == 0);
  report_breaks (json, step->breaks);
  json_close (json, '}');
}

static void
report_to_sheet (Json               *json,
                 const TrLamination *lamination)
{
  const TrToSheet *to_sheet = &lamination->to_sheet;

  if (!lamination->has_to_sheet)
    {
      json_word (json, "to_sheet", "null");
      return;
    }
  json_open (json, "to_sheet", '{');
  json_number (json, "blocks_cut", to_sheet->blocks_cut);
  json_size (json, "start_mm", &to_sheet->start_mm);
  json_number (json, "stretch_length", to_sheet->stretch_length);
  json_number (json, "stretch_width", to_sheet->stretch_width);
  json_text (json, "order", to_sheet->order);
  json_boolean (json, "fits", to_sheet->fits);
  json_close (json, '}');
}

static void
report_lock_in (Json                  *json,
                const TrLockInFigures *lock_in)
{
  json_open (json, "lock_in", '{');
  json_size (json, "fat_mm", &lock_in->fat_mm);
  json_size (json, "dough_mm", &lock_in->dough_mm);
  json_size (json, "block_mm", &lock_in->block_mm);
  json_number (json, "rim_share", lock_in->rim_share);
  json_close (json, '}');
}

static void
report_lamination (Json                 *json,
                   const TrDoughFigures *figures)
{
  const TrLamination *lamination = &figures->lamination;

  if (!figures->has_lamination)
    {
      json_word (json, "lamination", "null");
      return;
    }
  json_open (json, "lamination", '{');
  json_number (json, "fat_layers", lamination->fat_layers);
  json_number (json, "dough_layers", lamination->dough_layers);
  json_number (json, "bands", lamination->bands);
  json_number (json, "fold_product", lamination->fold_product);
  json_number (json, "fat_volume_fraction", lamination->fat_volume_fraction);
  json_range (json, "fat_layer_um", &lamination->fat_layer_um);
  json_open (json, "dough_layer_um", '{');
  json_number (json, "min", lamination->dough_layer_um.min);
  json_number (json, "max", lamination->dough_layer_um.max);
  json_number (json, "outer", lamination->dough_layer_um_outer);
  json_close (json, '}');
  report_lock_in (json, &lamination->lock_in);
  json_open (json, "steps", '[');
  for (guint i = 0; i < lamination->steps->len; i++)
    report_step (json, &g_array_index (lamination->steps, TrTurnFigures, i));
  json_close (json, ']');
  report_to_sheet (json, lamination);
  json_close (json, '}');
}

static void
report_alternatives (Json          *json,
                     const TrSheet *sheet)
{
  json_open (json, "alternatives", '[');
  for (guint i = 0; i < sheet->n_alternatives; i++)
    {
      const TrAlternative *alternative = &sheet->alternatives[i];

      json_open (json, NULL, '{');
      json_number (json, "rows", alternative->rows);
      json_number (json, "per_row", alternative->per_row);
      json_number (json, "sheets", alternative->sheets);
      json_number (json, "length_mm", alternative->length_mm);
      json_number (json, "width_mm", alternative->width_mm);
      json_number (json, "pieces_cut", alternative->pieces_cut);
      json_number (json, "scrap_percent", alternative->scrap_percent);
      json_close (json, '}');
    }
  json_close (json, ']');
}

static void
report_trays (Json          *json,
              const TrTrays *trays)
{
  json_open (json, "trays", '{');
  json_numbers (json, "footprint_mm", trays->footprint_mm.mm, 2);
  json_number (json, "per_tray", trays->per_tray);
  json_number (json, "trays", trays->trays);
  json_number (json, "loads", trays->loads);
  json_close (json, '}');
}

static void
report_sheet (Json                 *json,
              const TrDoughFigures *figures)
{
  const TrSheet *sheet = &figures->sheet;

  if (!figures->has_sheet)
    {
      json_word (json, "sheet", "null");
      return;
    }
  json_open (json, "sheet", '{');
  json_number (json, "rows", sheet->rows);
  json_number (json, "per_row", sheet->per_row);
  json_number (json, "sheets", sheet->sheets);
  json_number (json, "length_mm", sheet->length_mm);
  json_number (json, "width_mm", sheet->width_mm);
  json_number (json, "thickness_mm", sheet->thickness_mm);
  json_size (json, "rolled_mm", &sheet->rolled_mm);
  json_number (json, "mass_g", sheet->mass_g);
  json_number (json, "pieces_cut", sheet->pieces_cut);
  json_number (json, "wanted", sheet->wanted);
  json_number (json, "spare_pieces", sheet->spare_pieces);
  json_number (json, "scrap_percent", sheet->scrap_percent);
  report_alternatives (json, sheet);
  json_number (json, "windings", sheet->windings);
  json_number (json, "diameter_mm", sheet->diameter_mm);
  json_number (json, "layers_across", sheet->layers_across);
  json_number (json, "printed_thickness_mm", sheet->printed_thickness_mm);
  report_trays (json, &sheet->trays);
  json_close (json, '}');
}

static void
report_water (Json                 *json,
              const TrDoughFigures *figures)
{
  const TrWater *water = &figures->water;

  if (!figures->has_water)
    {
      json_word (json, "water", "null");
      return;
    }

  json_open (json, "water", '{');
  json_number (json, "n", water->n);
  json_number (json, "liquid_need_c", water->liquid_need_c);
  json_number (json, "water_c", water->water_c);
  json_number (json, "ice_g", water->ice_g);
  json_number (json, "available_water_g", water->available_water_g);
  json_close (json, '}');
}

static void
report_dough (Json                 *json,
              const TrDoughFigures *figures,
              guint                 index,
              const TrReader       *reader)
{
  json_open (json, NULL, '{');
  json_text (json, "id", figures->dough->id);
  report_formula (json, &figures->formula, index, reader);
  report_piece (json, &figures->piece);
  report_lamination (json, figures);
  report_sheet (json, figures);
  json_open (json, "rests", '[');
  json_close (json, ']');
  report_water (json, figures);
  json_open (json, "allergens", '[');
  for (char **id = figures->allergens; id != NULL && *id != NULL; id++)
    json_text (json, NULL, *id);
  json_close (json, ']');
  json_close (json, '}');
}

static void
report_dough_findings (Json                 *json,
                       const TrDoughFigures *figures,
                       guint                 index,
                       const TrReader       *reader)
{
  for (guint i = 0; i < figures->findings->len; i++)
    {
      const TrFinding *finding = g_ptr_array_index (figures->findings, i);
      g_autofree char *where = tr_figures_dup_pointer (index, finding->where);
      g_autofree char *text = tr_words_finding (reader, figures, finding);

      json_open (json, NULL, '{');
      json_text (json, "id", tr_finding_id (finding->id));
      json_text (json, "severity", tr_severity_id (finding->severity));
      json_text (json, "dough", figures->dough->id);
      json_text (json, "where", where);
      json_text (json, "text", text);
      json_number (json, "value", finding->value);
      json_number (json, "limit", finding->limit);
      json_text (json, "source", finding->source);
      json_close (json, '}');
    }
}

char *
tr_report_figures (const TrFigures *figures,
                   const TrReader  *reader)
{
  Json json = { NULL, 0, FALSE };

  g_return_val_if_fail (figures != NULL && reader != NULL, NULL);

  json.out = g_string_new (NULL);
  json_open (&json, NULL, '{');
  json_open (&json, "doughs", '[');
  for (guint i = 0; i < figures->doughs->len; i++)
    report_dough (&json, tr_figures_get_dough (figures, i), i, reader);
  json_close (&json, ']');
  json_open (&json, "findings", '[');
  for (guint i = 0; i < figures->doughs->len; i++)
    report_dough_findings (&json, tr_figures_get_dough (figures, i), i, reader);
  json_close (&json, ']');
  json_word (&json, "plan", "null");
  json_word (&json, "tasting", "null");
  json_close (&json, '}');
  g_string_append_c (json.out, '\n');

  return g_string_free (json.out, FALSE);
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
