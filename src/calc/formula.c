/* formula.c: weights and baker's percentages
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Lines in grams are weighed first. What is written in percent then follows
 * from three linear equations in the flour F, the dough D and the mix T:
 *
 *   F = f0 + fF·F + fD·D + fT·T     flour in grams; flour that is written in %
 *   D = d0 + dF·F                   of F everywhere, of D or T in the roll-in
 *   T = D + r0 + rF·F + rD·D + rT·T
 *
 * A line that cannot be weighed has a problem, is NaN and is left out of every
 * sum. A part of a composition that is not known makes a sum NaN, but only
 * where there is some of it.
 */

#include "formula.h"

#define ASSUMED_FLOUR_G 1000.0
#define EPSILON 1e-9

typedef enum { BASE_NONE, BASE_FLOUR, BASE_DOUGH, BASE_TOTAL, N_BASES } Base;

/* What a line in percent contributes; BASE_NONE: weighed, or left out. */
typedef struct {
  Base base;
  double factor;                 /* mass over its base */
  double flour_share;
} Term;

/* The equations: what is in grams, and the factors by base. */
typedef struct {
  double flour[N_BASES], dough[N_BASES], roll_in[N_BASES];
} Equations;

typedef struct {
  TrFormula *formula;
  Term *terms;                   /* one a line */
  double solution[N_BASES];      /* grams of each base */
} Weighing;

/* Problems */

static void
add_problem (TrFormula  *formula,
             guint       index,
             const char *member,
             TrProblem   problem)
{
  TrProblem *added = g_memdup2 (&problem, sizeof problem);

  added->where = g_strdup_printf ("/lines/%u/%s", index, member);
  g_ptr_array_add (formula->problems, added);
}

static void
add_amount_problem (TrFormula   *formula,
                    guint        index,
                    TrProblemId  id)
{
  add_problem (formula, index, "amount", (TrProblem) { .id = id, .value = { NAN, NAN } });
}

/* Reading the lines */

static Base
base_of_unit (TrUnit unit)
{
  if (unit == TR_UNIT_PERCENT_OF_DOUGH)
    return BASE_DOUGH;

  return unit == TR_UNIT_PERCENT_OF_TOTAL ? BASE_TOTAL : BASE_FLOUR;
}

static void
read_percent (TrFormula           *formula,
              guint                index,
              const TrAmountPart  *part,
              const TrLineFigures *line,
              Term                *term)
{
  Base base = base_of_unit (part->unit);

  if (base != BASE_FLOUR && line->line->stage != TR_STAGE_ROLL_IN)
    {
      add_amount_problem (formula, index, TR_PROBLEM_PERCENT_NOT_HERE);
      return;
    }

  term->base = base;
  term->factor = part->number / 100;
  term->flour_share = tr_ingredient_flour_share (&line->ingredient, line->line->hydration_percent);
}

static void
read_amount (TrFormula     *formula,
             guint          index,
             TrLineFigures *line,
             Term          *term)
{
  TrAmount amount;
  TrProblem problem;
  double grams;

  if (!tr_amount_parse (line->line->amount, &amount, &problem))
    add_problem (formula, index, "amount", problem);
  else if (tr_unit_is_percent (amount.parts[0].unit))
    read_percent (formula, index, &amount.parts[0], line, term);
  else if (!tr_ingredient_weigh (&line->ingredient, &amount, &grams, &problem))
    add_problem (formula, index, "amount", problem);
  else
    line->written_grams = grams;
}

static void
read_line (Weighing       *weighing,
           guint           index,
           const TrLine   *written,
           const TrPantry *pantry)
{
  TrLineFigures line = { .line = written, .grams = NAN, .written_grams = NAN, .percent = NAN };

  line.known = written->ingredient != NULL &&
               tr_ingredient_resolve (pantry, written->ingredient, &line.ingredient);
  if (line.known)
    {
      read_amount (weighing->formula, index, &line, &weighing->terms[index]);
    }
  else
    {
      const char *text = written->text != NULL ? written->text : written->ingredient;

      add_problem (weighing->formula, index, "ingredient",
                   (TrProblem) { .id = TR_PROBLEM_NO_INGREDIENT, .text = g_strdup (text), .value = { NAN, NAN } });
    }

  g_array_append_val (weighing->formula->lines, line);
}

/* Solving the percentages */

static void
collect (const Weighing *weighing,
         Equations      *equations)
{
  *equations = (Equations) { 0 };
  for (guint i = 0; i < weighing->formula->lines->len; i++)
    {
      const TrLineFigures *line = tr_formula_get_line (weighing->formula, i);
      const Term *term = &weighing->terms[i];
      double value = term->base == BASE_NONE ? line->written_grams : term->factor;

      if (!tr_line_is_in_mix (line) || isnan (value))
        continue;

      double *mass = tr_line_is_in_dough (line) ? equations->dough : equations->roll_in;
      mass[term->base] += value;
      equations->flour[term->base] +=
        value * tr_ingredient_flour_share (&line->ingredient, line->line->hydration_percent);
    }
}

/* Gives up on the lines of one base (`only_flour`: on those that bring flour)
 * and says how many there were. */
static guint
drop_terms (Weighing    *weighing,
            Base         base,
            gboolean     only_flour,
            TrProblemId  id)
{
  guint n_dropped = 0;

  for (guint i = 0; i < weighing->formula->lines->len; i++)
    {
      Term *term = &weighing->terms[i];

      if (term->base != base || (only_flour && !(term->flour_share > 0)))
        continue;
      term->base = BASE_NONE;
      add_amount_problem (weighing->formula, i, id);
      n_dropped++;
    }

  return n_dropped;
}

/* The flour equation has no solution. Flour of the roll-in is given up first,
 * unless the flour parts alone are already too many. */
static void
drop_flour_terms (Weighing *weighing,
                  gboolean  too_many_parts)
{
  guint n_dropped = 0;

  if (!too_many_parts)
    {
      n_dropped += drop_terms (weighing, BASE_TOTAL, TRUE, TR_PROBLEM_NOT_SOLVABLE);
      n_dropped += drop_terms (weighing, BASE_DOUGH, TRUE, TR_PROBLEM_NOT_SOLVABLE);
    }
  if (n_dropped > 0)
    return;

  drop_terms (weighing, BASE_FLOUR, TRUE, TR_PROBLEM_FLOUR_OVER_100);
  drop_terms (weighing, BASE_FLOUR, FALSE, TR_PROBLEM_NOTHING_TO_ANCHOR);
}

/* FALSE: some lines were given up, try again. */
static gboolean
try_to_solve (Weighing *weighing)
{
  Equations e;

  collect (weighing, &e);

  double rest = 1 - e.roll_in[BASE_TOTAL];
  if (rest < EPSILON)
    {
      drop_terms (weighing, BASE_TOTAL, FALSE, TR_PROBLEM_NOT_SOLVABLE);
      return FALSE;
    }

  /* T = a + b·F, then F·denominator = numerator. */
  double a = (e.roll_in[BASE_NONE] + (1 + e.roll_in[BASE_DOUGH]) * e.dough[BASE_NONE]) / rest;
  double b = (e.roll_in[BASE_FLOUR] + (1 + e.roll_in[BASE_DOUGH]) * e.dough[BASE_FLOUR]) / rest;
  double numerator = e.flour[BASE_NONE] + e.flour[BASE_DOUGH] * e.dough[BASE_NONE] + e.flour[BASE_TOTAL] * a;
  double denominator = 1 - e.flour[BASE_FLOUR] - e.flour[BASE_DOUGH] * e.dough[BASE_FLOUR] - e.flour[BASE_TOTAL] * b;
  double flour_g = numerator / denominator;

  if (!(numerator > 0))
    {
      weighing->formula->flour_is_assumed = fabs (denominator) < EPSILON;
      flour_g = weighing->formula->flour_is_assumed ? ASSUMED_FLOUR_G : 0;
    }
  else if (denominator < EPSILON)
    {
      drop_flour_terms (weighing, e.flour[BASE_FLOUR] > 1 - EPSILON);
      return FALSE;
    }

  weighing->solution[BASE_FLOUR] = flour_g;
  weighing->solution[BASE_DOUGH] = e.dough[BASE_NONE] + e.dough[BASE_FLOUR] * flour_g;
  weighing->solution[BASE_TOTAL] = a + b * flour_g;

  return TRUE;
}

static void
weigh_percentages (Weighing *weighing)
{
  TrFormula *formula = weighing->formula;

  /* Each failed attempt gives up at least one line. */
  while (!try_to_solve (weighing))
    ;

  for (guint base = BASE_FLOUR; base < N_BASES; base++)
    if (!(weighing->solution[base] > 0))
      drop_terms (weighing, base, FALSE, TR_PROBLEM_NOTHING_TO_ANCHOR);

  for (guint i = 0; i < formula->lines->len; i++)
    {
      const Term *term = &weighing->terms[i];

      if (term->base != BASE_NONE)
        tr_formula_get_line (formula, i)->written_grams = term->factor * weighing->solution[term->base];
    }
}

/* Sums */

typedef struct {
  double flour, starter_flour, preferment_flour;
  double added_water, all_water;
  double dough_fat, roll_in_fat;                /* mass of the lines whose role is fat */
  double salt, fat_salt, sugar, yeast_fresh;
  double dough, roll_in;
  double dough_parts[TR_N_PARTS], roll_in_parts[TR_N_PARTS];
  guint n_fats, n_butters;
} Sums;

static void
add_flour (Sums                *sums,
           const TrLineFigures *line)
{
  double grams = line->written_grams;
  double flour = grams * tr_ingredient_flour_share (&line->ingredient, line->line->hydration_percent);

  sums->flour += flour;
  if (line->line->stage == TR_STAGE_PREFERMENT)
    sums->preferment_flour += flour;
  else if (line->ingredient.role == TR_ROLE_STARTER)
    sums->starter_flour += flour;
}

static void
add_dough_line (Sums                *sums,
                const TrLineFigures *line,
                const double         per_100g[TR_N_PARTS])
{
  const TrIngredient *ingredient = &line->ingredient;
  double grams = line->written_grams;
  double starter_water = grams * (1 - tr_ingredient_flour_share (ingredient, line->line->hydration_percent));

  sums->dough += grams;
  if (ingredient->role == TR_ROLE_STARTER)
    {
      sums->added_water += starter_water;
      sums->all_water += starter_water;
    }
  else if (!ingredient->is_flour)
    {
      sums->all_water += tr_part_of (grams, per_100g[TR_PART_WATER]);
    }
  if (g_str_equal (ingredient->base_id, "water"))
    sums->added_water += grams;
  if (ingredient->role == TR_ROLE_FAT)
    sums->dough_fat += grams;
  if (ingredient->role == TR_ROLE_SWEETENER)
    sums->sugar += tr_part_of (grams, per_100g[TR_PART_SUGARS]);
  for (guint i = 0; i < TR_N_PARTS; i++)
    sums->dough_parts[i] += tr_part_of (grams, per_100g[i]);
}

static void
add_roll_in_line (Sums                *sums,
                  const TrLineFigures *line,
                  const double         per_100g[TR_N_PARTS])
{
  sums->roll_in += line->written_grams;
  if (line->ingredient.role == TR_ROLE_FAT)
    sums->roll_in_fat += line->written_grams;
  for (guint i = 0; i < TR_N_PARTS; i++)
    sums->roll_in_parts[i] += tr_part_of (line->written_grams, per_100g[i]);
}

static void
add_line (Sums                *sums,
          const TrLineFigures *line)
{
  const TrIngredient *ingredient = &line->ingredient;
  double grams = line->written_grams;
  double per_100g[TR_N_PARTS];

  tr_ingredient_compose (ingredient, line->line->hydration_percent, per_100g);
  add_flour (sums, line);
  if (tr_line_is_in_dough (line))
    add_dough_line (sums, line, per_100g);
  else
    add_roll_in_line (sums, line, per_100g);

  double salt = tr_part_of (grams, tr_salt_per_100g (ingredient, per_100g));
  sums->salt += salt;
  if (ingredient->role == TR_ROLE_FAT)
    {
      sums->fat_salt += salt;
      sums->n_fats++;
      if (tr_ingredient_is_like (ingredient, "butter-"))
        sums->n_butters++;
    }
  if (ingredient->role == TR_ROLE_LEAVEN)
    sums->yeast_fresh += tr_part_of (grams, 100 * ingredient->fresh_yeast_factor);
}

static double
percent_of (double part,
            double whole)
{
  double percent = 100 * part / whole;

  return whole > 0 && isfinite (percent) ? percent : NAN;
}

static void
fill_percents (TrFormula  *formula,
               const Sums *sums)
{
  double flour = sums->flour;
  double total = sums->dough + sums->roll_in;

  formula->added_water_percent = percent_of (sums->added_water, flour);
  formula->all_water_percent = percent_of (sums->all_water, flour);
  formula->prefermented_flour_percent = percent_of (sums->preferment_flour + sums->starter_flour, flour);
  formula->dough_fat_percent = percent_of (sums->dough_fat, flour);
  formula->roll_in_percent_of_flour = percent_of (sums->roll_in, flour);
  formula->roll_in_percent_of_dough = percent_of (sums->roll_in, sums->dough);
  formula->roll_in_percent_of_total = percent_of (sums->roll_in, total);
  formula->roll_in_fat_percent_of_flour = percent_of (sums->roll_in_fat, flour);
  formula->salt_percent = percent_of (sums->salt, flour);
  formula->salted_fat_salt_percent = percent_of (sums->fat_salt, flour);
  formula->sugar_percent = percent_of (sums->sugar, flour);
  formula->yeast_fresh_percent = percent_of (sums->yeast_fresh, flour);
  formula->mix_salt_per_100g = percent_of (sums->salt, total);
  for (guint i = 0; i < TR_N_PARTS; i++)
    {
      formula->mix_per_100g[i] = percent_of (sums->dough_parts[i] + sums->roll_in_parts[i], total);
      formula->dough_per_100g[i] = percent_of (sums->dough_parts[i], sums->dough);
      formula->roll_in_per_100g[i] = percent_of (sums->roll_in_parts[i], sums->roll_in);
    }
}

static void
sum_up (TrFormula *formula)
{
  Sums sums = { 0 };

  for (guint i = 0; i < formula->lines->len; i++)
    {
      const TrLineFigures *line = tr_formula_get_line (formula, i);

      if (tr_line_is_in_mix (line) && !isnan (line->written_grams))
        add_line (&sums, line);
    }

  formula->written_flour_g = sums.flour;
  formula->written_dough_g = sums.dough;
  formula->written_roll_in_g = sums.roll_in;
  formula->written_total_g = sums.dough + sums.roll_in;
  formula->written_fat_role_g = sums.dough_fat + sums.roll_in_fat;
  formula->all_fat_is_butter = sums.n_fats > 0 && sums.n_butters == sums.n_fats;
  fill_percents (formula, &sums);
  for (guint i = 0; i < formula->lines->len; i++)
    tr_formula_get_line (formula, i)->percent = percent_of (tr_formula_get_line (formula, i)->written_grams, sums.flour);
}

void
tr_formula_compute (const TrDough  *dough,
                    const TrPantry *pantry,
                    TrFormula      *formula)
{
  guint n_lines = dough->lines->len;
  g_autofree Term *terms = g_new0 (Term, n_lines);
  Weighing weighing = { .formula = formula, .terms = terms };

  *formula = (TrFormula) { 0 };
  formula->lines = g_array_sized_new (FALSE, FALSE, sizeof (TrLineFigures), n_lines);
  formula->problems = g_ptr_array_new_with_free_func ((GDestroyNotify) tr_problem_free);

  for (guint i = 0; i < n_lines; i++)
    read_line (&weighing, i, tr_dough_get_line (dough, i), pantry);
  weigh_percentages (&weighing);
  sum_up (formula);
  tr_formula_apply_scale (formula, 1);
}

void
tr_formula_apply_scale (TrFormula *formula,
                        double     scale)
{
  formula->scale = scale;
  formula->flour_g = formula->written_flour_g * scale;
  formula->dough_g = formula->written_dough_g * scale;
  formula->roll_in_g = formula->written_roll_in_g * scale;
  formula->total_g = formula->written_total_g * scale;
  formula->mix_fat_role_g = formula->written_fat_role_g * scale;
  for (guint i = 0; i < formula->lines->len; i++)
    tr_formula_get_line (formula, i)->grams = tr_formula_get_line (formula, i)->written_grams * scale;
}

/* A wash or a filling goes with the pieces, not with the dough. */
void
tr_formula_scale_finish (TrFormula     *formula,
                         const TrDough *dough,
                         double         count)
{
  double scale = formula->scale;

  if (dough->batch_by == TR_BATCH_WRITTEN)
    scale = 1;
  else if (dough->pieces_written > 0)
    scale = count / dough->pieces_written;

  for (guint i = 0; i < formula->lines->len; i++)
    {
      TrLineFigures *line = tr_formula_get_line (formula, i);

      if (!tr_line_is_in_mix (line))
        line->grams = line->written_grams * scale;
    }
}

void
tr_formula_clear (TrFormula *formula)
{
  g_clear_pointer (&formula->lines, g_array_unref);
  g_clear_pointer (&formula->problems, g_ptr_array_unref);
}
