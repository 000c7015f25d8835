/* content.c: the total formula and what is in a dough, as text
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "content.h"

#include <glib/gi18n-lib.h>

#include "../calc/content.h"
#include "../calc/formula.h"
#include "say.h"

/* Less than this much salt on the flour is not worth a word. */
#define LEAST_SALT_PERCENT 0.05

/* Tables */

static TrTextTable *
table_new (guint n_columns)
{
  TrTextTable *table = g_new0 (TrTextTable, 1);

  table->n_columns = n_columns;
  table->rows = g_ptr_array_new_with_free_func ((GDestroyNotify) g_strfreev);

  return table;
}

/* Every cell "" until it is set. */
static char **
table_add_row (TrTextTable *table,
               char        *name)
{
  char **row = g_new0 (char *, table->n_columns + 1);

  row[0] = name;
  for (guint i = 1; i < table->n_columns; i++)
    row[i] = g_strdup ("");
  g_ptr_array_add (table->rows, row);

  return row;
}

static void
take_cell (char  **row,
           guint   column,
           char   *text)
{
  g_free (row[column]);
  row[column] = text;
}

/* Total formula */

/* An ounce scale shows about the same fineness in rounder steps. */
static double
ounce_step (double step_g)
{
  return (step_g < 0.3 ? 0.005 : step_g < 3 ? 0.05 : 0.2) * TR_GRAMS_PER_OUNCE;
}

TrBench *
tr_words_new_scale (const TrReader *reader,
                    const TrBench  *bench)
{
  TrBench *own = tr_reader_new_bench (reader, bench);

  if (reader->units == TR_UNITS_US)
    {
      own->scale_step_g = ounce_step (own->scale_step_g);
      own->fine_scale_step_g = ounce_step (own->fine_scale_step_g);
    }

  return own;
}

char *
tr_words_preferment (const char *group)
{
  g_autofree char *written = tr_words_one_line (group != NULL ? group : "");
  const char *name = *written != '\0' ? written : tr_words_stage (TR_STAGE_PREFERMENT);

  return tr_say_capital (name);
}

static gboolean
has_preferment (const TrTotal *total)
{
  return total->n_columns > 0 && total->columns[0].stage == TR_STAGE_PREFERMENT;
}

static char *
dup_column_name (const TrTotal *total,
                 guint          column)
{
  const TrTotalColumn *own = &total->columns[column];

  if (own->stage == TR_STAGE_PREFERMENT)
    return tr_words_preferment (own->group);
  if (own->stage == TR_STAGE_DOUGH && has_preferment (total))
    return g_strdup (_("Final dough"));

  return g_strdup (tr_words_stage (own->stage));
}

/* Nothing: an empty cell. Whole steps of the coarse scale do without the fine ones' decimals. */
static char *
dup_grams (const TrReader *reader,
           const TrBench  *scale,
           double          grams)
{
  double steps = grams / scale->scale_step_g;
  gboolean is_coarse = scale->scale_step_g > 0 && fabs (steps - round (steps)) < 1e-6;

  if (!(fabs (grams) > 1e-9))
    return g_strdup ("");

  return tr_words_mass_number (reader, grams, is_coarse ? scale->scale_step_g : scale->fine_scale_step_g);
}

static char *
dup_flour_percent (const TrReader *reader,
                   double          percent)
{
  return tr_words_number (reader, percent, percent > 0 && percent < 0.095 ? 3 : percent > 0 && percent < 0.995 ? 2 : 1);
}

static void
add_total_head (TrTextTable    *table,
                const TrReader *reader,
                const TrTotal  *total)
{
  char **row = table_add_row (table, g_strdup_printf (_("Weights in %s"), tr_words_mass_unit (reader)));

  for (guint i = 0; i < total->n_columns; i++)
    take_cell (row, i + 1, dup_column_name (total, i));
  take_cell (row, total->n_columns + 1, g_strdup (_("Total")));
  take_cell (row, total->n_columns + 2, g_strdup (_("% of flour")));
}

static void
add_total_row (TrTextTable      *table,
               const TrReader   *reader,
               const TrBench    *scale,
               const TrTotal    *total,
               const TrTotalRow *from)
{
  char **row = table_add_row (table, tr_words_one_line (tr_words_ingredient (&from->ingredient)));

  for (guint i = 0; i < total->n_columns; i++)
    take_cell (row, i + 1, dup_grams (reader, scale, from->grams[i]));
  take_cell (row, total->n_columns + 1, dup_grams (reader, scale, from->total_g));
  take_cell (row, total->n_columns + 2, dup_flour_percent (reader, from->percent));
}

/* What ripened before comes back in the final dough. Returns its grams. */
static double
add_ripened_rows (TrTextTable    *table,
                  const TrReader *reader,
                  const TrBench  *scale,
                  const TrTotal  *total)
{
  double sum = 0;
  guint dough = 0;

  while (dough < total->n_columns && total->columns[dough].stage != TR_STAGE_DOUGH)
    dough++;
  if (dough == total->n_columns)
    return 0;
  for (guint i = 0; i < dough; i++)
    {
      g_autofree char *name = dup_column_name (total, i);
      char **row = table_add_row (table, g_strdup_printf (_("%s, all of it"), name));

      take_cell (row, dough + 1, dup_grams (reader, scale, total->columns[i].grams));
      sum += total->columns[i].grams;
      table->n_foot++;
    }

  return sum;
}

static void
add_sum_row (TrTextTable    *table,
             const TrReader *reader,
             const TrBench  *scale,
             const TrTotal  *total,
             double          ripened_g)
{
  char **row = table_add_row (table, g_strdup (_("Weight")));

  for (guint i = 0; i < total->n_columns; i++)
    take_cell (row, i + 1, dup_grams (reader, scale, total->columns[i].grams
                                                      + (total->columns[i].stage == TR_STAGE_DOUGH ? ripened_g : 0)));
  take_cell (row, total->n_columns + 1, dup_grams (reader, scale, total->total_g));
  take_cell (row, total->n_columns + 2, dup_flour_percent (reader, total->percent));
  table->n_foot++;
  table->has_sum = TRUE;
}

TrTextTable *
tr_words_total_table (const TrReader       *reader,
                      const TrDoughFigures *figures)
{
  TrBench *scale = tr_words_new_scale (reader, figures->bench);
  TrTextTable *table;
  TrTotal total;
  double ripened_g;

  tr_total_compute_for_scale (figures, scale, &total);
  table = table_new (total.n_columns + 3);
  add_total_head (table, reader, &total);
  for (guint i = 0; i < total.rows->len; i++)
    add_total_row (table, reader, scale, &total, &g_array_index (total.rows, TrTotalRow, i));
  ripened_g = add_ripened_rows (table, reader, scale, &total);
  add_sum_row (table, reader, scale, &total, ripened_g);
  tr_total_clear (&total);
  tr_bench_unref (scale);

  return table;
}

/* What is in it */

static const char *const content_names[TR_N_CONTENTS] = {
  [TR_CONTENT_FLOUR] = N_("Flour"),
  [TR_CONTENT_ADDED_WATER] = N_("Water added"),
  [TR_CONTENT_ALL_WATER] = N_("All water"),
  [TR_CONTENT_SALT] = N_("Salt, effective"),
  [TR_CONTENT_ADDED_SUGAR] = N_("Sugar added"),
  [TR_CONTENT_SUGARS] = N_("Sugars of everything"),
  [TR_CONTENT_DOUGH_FAT] = N_("Fat in the dough"),
  [TR_CONTENT_ROLL_IN] = N_("Roll-in"),
  [TR_CONTENT_FAT] = N_("Fat of everything"),
  [TR_CONTENT_YEAST] = N_("Yeast as fresh"),
};

/* As food labels round fat, sugars and salt (European Commission, Guidance on
 * tolerances, 2012, table 4; from memory), the others alike. */
static int
content_decimals (TrContentKind kind,
                  double        grams)
{
  if (kind == TR_CONTENT_SALT || kind == TR_CONTENT_YEAST)
    return grams < 0.995 ? 2 : 1;

  return grams < 9.95 ? 1 : 0;
}

/* A piece is compared with the next one: finer. */
static char *
dup_piece_content (const TrReader *reader,
                   TrContentKind   kind,
                   double          grams)
{
  if (tr_say_is_us (reader))
    return tr_words_mass_number (reader, grams, 0.1);

  return tr_words_number (reader, grams, content_decimals (kind, grams) == 0 ? 1 : content_decimals (kind, grams));
}

static void
add_content_row (TrTextTable          *table,
                 const TrReader       *reader,
                 const TrDoughFigures *figures,
                 TrContentKind         kind)
{
  char **row = table_add_row (table, g_strdup (_(content_names[kind])));
  TrContentRow content;

  tr_content_get (figures, kind, &content);
  take_cell (row, 1, dup_piece_content (reader, kind, content.piece_g));
  /* Nutrition is told in grams of 100 g everywhere. */
  take_cell (row, 2, tr_words_number (reader, content.per_100g, content_decimals (kind, content.per_100g)));
  take_cell (row, 3, dup_flour_percent (reader, content.percent_of_flour));
}

static void
add_pair (TrTextTable    *table,
          const TrReader *reader,
          char           *name,
          double          piece,
          double          per_100g,
          int             decimals)
{
  char **row = table_add_row (table, name);

  take_cell (row, 1, tr_words_number (reader, piece, decimals));
  take_cell (row, 2, tr_words_number (reader, per_100g, decimals));
  table->n_foot++;
}

static double
get_cost_per_100g (const TrDoughFigures *figures)
{
  const TrFormula *formula = &figures->formula;
  double cost = 0;

  for (guint i = 0; i < formula->lines->len; i++)
    {
      const TrLineFigures *line = tr_formula_get_line (formula, i);
      double price = line->ingredient.price_per_kg;

      if (tr_line_is_in_mix (line) && line->known && line->grams > 0
          && !(isnan (price) && g_str_equal (line->ingredient.base_id, "water")))
        cost += line->grams * price / 1000;
    }

  return 100 * cost / formula->total_g;
}

TrTextTable *
tr_words_content_table (const TrReader       *reader,
                        const TrDoughFigures *figures)
{
  const TrPiece *piece = &figures->piece;
  TrTextTable *table = table_new (4);
  char **head = table_add_row (table, g_strdup (""));

  take_cell (head, 1, g_strdup_printf (_("%s a piece"), tr_words_mass_unit (reader)));
  take_cell (head, 2, g_strdup (_("g in 100 g")));
  take_cell (head, 3, g_strdup (_("% of flour")));
  for (guint kind = 0; kind < TR_N_CONTENTS; kind++)
    add_content_row (table, reader, figures, (TrContentKind) kind);
  add_pair (table, reader, g_strdup (_("Energy, kJ")), piece->content.energy_kj, piece->per_100g_raw.energy_kj, 0);
  add_pair (table, reader, g_strdup (_("Energy, kcal")), piece->content.energy_kcal, piece->per_100g_raw.energy_kcal, 0);
  add_pair (table, reader, g_strdup_printf (_("Cost, %s"), figures->bench->currency), piece->cost, get_cost_per_100g (figures), 2);

  return table;
}

/* Notes */

static void
take_note (GPtrArray *notes,
           char      *note)
{
  if (note != NULL)
    g_ptr_array_add (notes, note);
}

/* The heaviest fat that brings salt. */
static const TrLineFigures *
find_salted_fat (const TrFormula *formula)
{
  const TrLineFigures *found = NULL;

  for (guint i = 0; i < formula->lines->len; i++)
    {
      const TrLineFigures *line = tr_formula_get_line (formula, i);

      if (tr_line_is_in_mix (line) && line->known && line->ingredient.role == TR_ROLE_FAT
          && tr_salt_per_100g (&line->ingredient, line->ingredient.per_100g) > 0.2
          && (found == NULL || line->grams > found->grams))
        found = line;
    }

  return found;
}

static char *
dup_salt_percent (const TrReader *reader,
                  double          percent)
{
  g_autofree char *number = tr_words_number (reader, percent, 2);

  return g_strdup_printf ("%s %%", number);
}

static char *
dup_salt_note (const TrReader  *reader,
               const TrFormula *formula)
{
  const TrLineFigures *fat = find_salted_fat (formula);
  double line = tr_content_salt_line_percent (formula), from_fat = fat != NULL ? formula->salted_fat_salt_percent : 0;
  double others = formula->salt_percent - line - from_fat;
  g_autofree char *line_text = dup_salt_percent (reader, line), *fat_text = dup_salt_percent (reader, from_fat);
  g_autofree char *all_text = dup_salt_percent (reader, formula->salt_percent), *others_text = dup_salt_percent (reader, others);
  GString *out;

  if (!isfinite (formula->salt_percent) || !isfinite (line))
    return NULL;

  out = g_string_new (NULL);
  g_string_append_printf (out, _("Salt %s: %s from the salt line"), all_text, line_text);
  if (from_fat >= LEAST_SALT_PERCENT)
    {
      g_autofree char *name = tr_words_one_line (tr_words_ingredient (&fat->ingredient));

      g_string_append_printf (out, _(", %s from %s"), fat_text, name);
    }
  if (others >= LEAST_SALT_PERCENT)
    g_string_append_printf (out, _(", %s from what else has sodium"), others_text);
  g_string_append_c (out, '.');

  return g_string_free (out, FALSE);
}

static char *
dup_roll_in_note (const TrReader  *reader,
                  const TrFormula *formula)
{
  g_autofree char *flour = tr_words_percent (reader, formula->roll_in_percent_of_flour);
  g_autofree char *dough = tr_words_percent (reader, formula->roll_in_percent_of_dough);
  g_autofree char *total = tr_words_percent (reader, formula->roll_in_percent_of_total);

  if (!(formula->roll_in_g > 0))
    return NULL;

  return g_strdup_printf (_("Roll-in: %s of the flour, %s of the dough, %s of the whole."), flour, dough, total);
}

static char *
dup_names (const GPtrArray *lines)
{
  GString *out = g_string_new (NULL);

  for (guint i = 0; i < lines->len; i++)
    {
      const TrLineFigures *line = g_ptr_array_index (lines, i);
      g_autofree char *name = tr_words_one_line (tr_words_ingredient (&line->ingredient));

      g_string_append_printf (out, "%s%s", i > 0 ? ", " : "", name);
    }

  return g_string_free (out, FALSE);
}

/* What a figure above hangs on. */
static const struct { TrPart part; const char *name; } hung_on[] = {
  { TR_PART_WATER, N_("Water") }, { TR_PART_FAT, N_("Fat") }, { TR_PART_PROTEIN, N_("Protein") },
  { TR_PART_CARBOHYDRATE, N_("Carbohydrate") }, { TR_PART_SUGARS, N_("Sugars") }, { TR_PART_SODIUM_MG, N_("Sodium") },
};

static void
take_unknown_notes (GPtrArray       *notes,
                    const TrFormula *formula)
{
  for (guint i = 0; i < G_N_ELEMENTS (hung_on); i++)
    {
      g_autoptr (GPtrArray) lines = tr_content_find_unknown (formula, hung_on[i].part);
      g_autofree char *names = dup_names (lines);

      if (lines->len > 0)
        take_note (notes, g_strdup_printf (_("%s is not known of %s; what hangs on it is not told."), _(hung_on[i].name), names));
    }
}

static char *
dup_cost_note (const TrReader       *reader,
               const TrDoughFigures *figures)
{
  g_autoptr (GPtrArray) unpriced = tr_content_find_unpriced (&figures->formula);
  g_autofree char *names = dup_names (unpriced);
  g_autofree char *batch = tr_words_number (reader, figures->piece.cost * figures->piece.count, 2);
  g_autofree char *count = tr_words_count (reader, figures->piece.count);

  if (unpriced->len > 0)
    return g_strdup_printf (_("Cost is not known: no price for %s."), names);
  if (!isfinite (figures->piece.cost))
    return NULL;

  return g_strdup_printf (_("The batch of %s costs %s %s."), count, batch, figures->bench->currency);
}

static char *
dup_unweighed_note (const TrFormula *formula)
{
  guint n = 0;

  for (guint i = 0; i < formula->lines->len; i++)
    n += isfinite (tr_formula_get_line (formula, i)->grams) ? 0 : 1;
  if (n == 0)
    return NULL;

  return g_strdup_printf (dngettext (GETTEXT_PACKAGE, "%u line is not weighed and is left out.",
                                     "%u lines are not weighed and are left out.", n), n);
}

static char *
dup_finish_note (const TrFormula *formula)
{
  for (guint i = 0; i < formula->lines->len; i++)
    if (tr_formula_get_line (formula, i)->line->stage == TR_STAGE_FINISH)
      return g_strdup (_("Salt, sugars, fat, energy and cost of a piece count the finish; 100 g is raw dough without it."));

  return NULL;
}

static char *
dup_allergens_note (const TrDoughFigures *figures)
{
  g_autofree char *allergens = tr_words_allergens (figures->allergens);

  return g_strdup_printf (_("Allergens (EU 1169/2011, Annex II): %s. Check the packs; local rules decide what is declared."), allergens);
}

GPtrArray *
tr_words_content_notes (const TrReader       *reader,
                        const TrDoughFigures *figures)
{
  GPtrArray *notes = g_ptr_array_new_with_free_func (g_free);
  const TrFormula *formula = &figures->formula;

  take_note (notes, dup_unweighed_note (formula));
  take_note (notes, dup_salt_note (reader, formula));
  take_note (notes, dup_roll_in_note (reader, formula));
  take_unknown_notes (notes, formula);
  take_note (notes, dup_cost_note (reader, figures));
  take_note (notes, dup_finish_note (formula));
  take_note (notes, g_strdup (_("Energy by the factors of EU 1169/2011, Annex XIV, from table values: an estimate, not a label.")));
  take_note (notes, dup_allergens_note (figures));

  return notes;
}

char *
tr_words_effective (const TrReader       *reader,
                    const TrDoughFigures *figures)
{
  const TrFormula *formula = &figures->formula;
  const TrPiece *piece = &figures->piece;
  GString *out = g_string_new (NULL);
  g_autofree char *salt = tr_words_percent (reader, formula->salt_percent);
  g_autofree char *water = tr_words_percent (reader, formula->all_water_percent);
  g_autofree char *yeast = tr_words_percent (reader, formula->yeast_fresh_percent);
  g_autofree char *energy = tr_words_energy (reader, piece->content.energy_kj, piece->content.energy_kcal);
  g_autofree char *cost = tr_words_number (reader, piece->cost, 2);

  if (isfinite (formula->salt_percent))
    tr_say_append_part (out, g_strdup_printf (_("salt %s effective"), salt));
  if (isfinite (formula->all_water_percent))
    tr_say_append_part (out, g_strdup_printf (_("all water %s"), water));
  if (formula->yeast_fresh_percent > 0)
    tr_say_append_part (out, g_strdup_printf (_("yeast %s as fresh"), yeast));
  if (isfinite (piece->content.energy_kj))
    tr_say_append_part (out, g_strdup_printf (_("%s a piece"), energy));
  if (isfinite (piece->cost))
    tr_say_append_part (out, g_strdup_printf (_("%s %s a piece"), cost, figures->bench->currency));

  return g_string_free (out, FALSE);
}
