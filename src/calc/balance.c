/* balance.c: a ratio moved by rewriting the amounts behind it
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One multiplier of the written numbers is sought. The ratio is linear in it
 * unless amounts depend on each other by percentages, so that the secant meets
 * it in one step nearly always; the formula itself is what is asked, and never
 * a second version of it.
 */

#include "balance.h"

#include "formula.h"
#include "look.h"
#include "measure.h"

#define MAX_STEPS 50
#define CLOSE_ENOUGH 1e-9
#define MOSTLY_WATER 50.0        /* per 100 g; milk powder is dairy and no liquid */
#define RELATIVE_TOLERANCE 0.005 /* of one line among several, so that they keep their proportions */
#define PERCENT_TOLERANCE 0.02
#define MAX_PERCENT 1000.0

G_DEFINE_QUARK (tr-balance-error-quark, tr_balance_error)

/* A line that moves, in the unit it will be written in. */
typedef struct {
  guint index;
  TrUnit unit, rest_unit;        /* rest_unit: of "1 lb 2 oz"; else TR_N_UNITS */
  double number;                 /* as written, in `unit` */
  double grams;
  double share;                  /* what a gram adds to the ratio's upper part */
} Mover;

typedef struct {
  Mover movers[TR_MAX_LINES];
  guint n;
} Movers;

/* What the multiplier is sought for. */
typedef struct {
  const TrDoughFigures *figures;
  gboolean is_line;
  TrRatio ratio;
  guint index;
} Aim;

static const struct { TrRange travel; double step, usual; } ratios[TR_N_RATIOS] = {
  [TR_RATIO_ALL_WATER] = { { 30, 90 }, 0.5, 50 },
  [TR_RATIO_DOUGH_FAT] = { { 0, 40 }, 0.5, 8 },
  [TR_RATIO_ROLL_IN_OF_DOUGH] = { { 0, 80 }, 0.5, 25 },
  [TR_RATIO_SALT] = { { 0, 4 }, 0.1, 2 },
  [TR_RATIO_SUGAR] = { { 0, 30 }, 0.5, 10 },
  [TR_RATIO_YEAST_FRESH] = { { 0, 15 }, 0.1, 4 },
  [TR_RATIO_PREFERMENTED] = { { 0, 100 }, 0.5, 20 },
};

static const TrLineFigures *
line_at (const TrDoughFigures *figures,
         guint                 index)
{
  return tr_formula_get_line (&figures->formula, index);
}

/* Looking */

static double
ratio_of_formula (const TrFormula *formula,
                  TrRatio          ratio)
{
  switch (ratio)
    {
    case TR_RATIO_ALL_WATER: return formula->all_water_percent;
    case TR_RATIO_DOUGH_FAT: return formula->dough_fat_percent;
    case TR_RATIO_ROLL_IN_OF_DOUGH: return formula->roll_in_percent_of_dough;
    case TR_RATIO_SALT: return formula->salt_percent;
    case TR_RATIO_SUGAR: return formula->sugar_percent;
    case TR_RATIO_YEAST_FRESH: return formula->yeast_fresh_percent;
    case TR_RATIO_PREFERMENTED: return formula->prefermented_flour_percent;
    case TR_N_RATIOS:
    default: g_return_val_if_reached (NAN);
    }
}

double
tr_ratio_get (const TrDoughFigures *figures,
              TrRatio               ratio)
{
  g_return_val_if_fail (figures != NULL, NAN);

  return ratio_of_formula (&figures->formula, ratio);
}

gboolean
tr_ratio_get_band (const TrDoughFigures *figures,
                   TrRatio               ratio,
                   TrBand               *band)
{
  g_return_val_if_fail (figures != NULL, FALSE);

  return tr_band_get (ratio, figures->dough->kind, band);
}

TrRange
tr_ratio_get_travel (TrRatio ratio)
{
  g_return_val_if_fail (ratio < TR_N_RATIOS, ((TrRange) { NAN, NAN }));

  return ratios[ratio].travel;
}

double
tr_ratio_get_step (TrRatio ratio)
{
  g_return_val_if_fail (ratio < TR_N_RATIOS, NAN);

  return ratios[ratio].step;
}

static double
whole_of (const TrDoughFigures *figures,
          TrRatio               ratio)
{
  return ratio == TR_RATIO_ROLL_IN_OF_DOUGH ? figures->formula.written_dough_g : figures->formula.written_flour_g;
}

static double
tolerance_of (TrRatio ratio)
{
  return ratio == TR_RATIO_SALT || ratio == TR_RATIO_YEAST_FRESH ? TR_RATIO_FINE_TOLERANCE : TR_RATIO_TOLERANCE;
}

/* Which lines move */

static gboolean
is_in_dough (const TrLineFigures *line)
{
  return line->line->stage == TR_STAGE_DOUGH || line->line->stage == TR_STAGE_PREFERMENT;
}

static gboolean
is_water (const TrLineFigures *line)
{
  return line->known && g_str_equal (line->ingredient.base_id, "water");
}

static gboolean
is_wet (const TrLineFigures *line)
{
  return line->known && (line->ingredient.role == TR_ROLE_LIQUID || line->ingredient.role == TR_ROLE_DAIRY)
         && line->ingredient.per_100g[TR_PART_WATER] >= MOSTLY_WATER;
}

static gboolean
is_flour (const TrLineFigures *line)
{
  return line->known && line->ingredient.is_flour && tr_line_is_in_mix (line);
}

static gboolean
is_of_ratio (const TrLineFigures *line,
             TrRatio              ratio)
{
  if (!line->known)
    return FALSE;

  switch (ratio)
    {
    case TR_RATIO_DOUGH_FAT: return is_in_dough (line) && line->ingredient.role == TR_ROLE_FAT;
    case TR_RATIO_ROLL_IN_OF_DOUGH: return line->line->stage == TR_STAGE_ROLL_IN && !line->ingredient.is_flour;
    case TR_RATIO_SALT: return tr_line_is_in_mix (line) && line->ingredient.role == TR_ROLE_SALT;
    case TR_RATIO_SUGAR: return is_in_dough (line) && line->ingredient.role == TR_ROLE_SWEETENER
                                && line->ingredient.per_100g[TR_PART_SUGARS] > 0;
    case TR_RATIO_YEAST_FRESH: return tr_line_is_in_mix (line) && line->ingredient.fresh_yeast_factor > 0;
    case TR_RATIO_ALL_WATER: case TR_RATIO_PREFERMENTED: case TR_N_RATIOS:
    default: return FALSE;
    }
}

static double
share_of_line (const TrLineFigures *line,
               TrRatio              ratio)
{
  switch (ratio)
    {
    case TR_RATIO_ALL_WATER: return line->ingredient.per_100g[TR_PART_WATER] / 100;
    case TR_RATIO_SUGAR: return line->ingredient.per_100g[TR_PART_SUGARS] / 100;
    case TR_RATIO_YEAST_FRESH: return line->ingredient.fresh_yeast_factor;
    case TR_RATIO_PREFERMENTED:
      return tr_ingredient_flour_share (&line->ingredient, line->line->hydration_percent);
    case TR_RATIO_DOUGH_FAT: case TR_RATIO_ROLL_IN_OF_DOUGH: case TR_RATIO_SALT: case TR_N_RATIOS:
    default: return 1;
    }
}

/* The unit an amount goes back in. A percentage keeps its base. */
static void
read_unit (const char *text,
           Mover      *mover)
{
  TrAmount amount;

  mover->unit = TR_UNIT_G;
  mover->rest_unit = TR_N_UNITS;
  if (!tr_amount_parse (text, &amount, NULL))
    return;
  for (guint i = 0; i < amount.n_parts; i++)
    if (!tr_unit_is_percent (amount.parts[i].unit) && isnan (tr_unit_grams (amount.parts[i].unit)))
      return;

  mover->unit = amount.parts[0].unit;
  if (amount.n_parts == 2 && tr_unit_grams (amount.parts[1].unit) < tr_unit_grams (mover->unit))
    mover->rest_unit = amount.parts[1].unit;
}

/* NaN or 0: there is no such base yet. */
static double
grams_of_unit (TrUnit           unit,
               const TrFormula *formula)
{
  if (unit == TR_UNIT_PERCENT)
    return formula->written_flour_g / 100;
  if (unit == TR_UNIT_PERCENT_OF_DOUGH)
    return formula->written_dough_g / 100;
  if (unit == TR_UNIT_PERCENT_OF_TOTAL)
    return formula->written_total_g / 100;

  return tr_unit_grams (unit);
}

/* What one more of the unit adds in the end: more of the total makes the total
 * more. */
static double
gain_of_unit (TrUnit           unit,
              const TrFormula *formula)
{
  double grams = grams_of_unit (unit, formula);

  return unit == TR_UNIT_PERCENT_OF_TOTAL ? grams * formula->written_total_g / formula->written_dough_g : grams;
}

static void
init_mover (Mover                *mover,
            const TrDoughFigures *figures,
            guint                 index,
            double                share)
{
  const TrLineFigures *line = line_at (figures, index);

  mover->index = index;
  mover->share = share;
  read_unit (line->line->amount, mover);
  mover->grams = isnan (line->written_grams) ? 0 : line->written_grams;
  if (!tr_is_positive (grams_of_unit (mover->unit, &figures->formula)))
    mover->unit = TR_UNIT_G;
  mover->number = mover->grams / grams_of_unit (mover->unit, &figures->formula);
}

static void
add_mover (Movers               *movers,
           const TrDoughFigures *figures,
           guint                 index,
           double                share)
{
  if (movers->n < TR_MAX_LINES && share > 0)
    init_mover (&movers->movers[movers->n++], figures, index, share);
}

static void
find_wet_lines (const TrDoughFigures *figures,
                TrStage               stage,
                gboolean              only_water,
                Movers               *movers)
{
  for (guint i = 0; i < figures->formula.lines->len; i++)
    {
      const TrLineFigures *line = line_at (figures, i);

      if (line->line->stage == stage && !isnan (line->written_grams) && (only_water ? is_water (line) : is_wet (line)))
        add_mover (movers, figures, i, share_of_line (line, TR_RATIO_ALL_WATER));
    }
}

static void
find_water (const TrDoughFigures *figures,
            Movers               *movers)
{
  static const struct { TrStage stage; gboolean only_water; } tries[] = {
    { TR_STAGE_DOUGH, TRUE }, { TR_STAGE_DOUGH, FALSE }, { TR_STAGE_PREFERMENT, TRUE }, { TR_STAGE_PREFERMENT, FALSE },
  };

  for (guint i = 0; i < G_N_ELEMENTS (tries) && movers->n == 0; i++)
    find_wet_lines (figures, tries[i].stage, tries[i].only_water, movers);
}

static gboolean
is_prefermented (const TrLineFigures *line,
                 gboolean             starters)
{
  if (!line->known || isnan (line->written_grams) || !tr_line_is_in_mix (line))
    return FALSE;

  return starters ? line->ingredient.role == TR_ROLE_STARTER : line->line->stage == TR_STAGE_PREFERMENT && is_flour (line);
}

static void
find_prefermented (const TrDoughFigures *figures,
                   Movers               *movers)
{
  for (int starters = 0; starters <= 1 && movers->n == 0; starters++)
    for (guint i = 0; i < figures->formula.lines->len; i++)
      if (is_prefermented (line_at (figures, i), starters != 0))
        add_mover (movers, figures, i, share_of_line (line_at (figures, i), TR_RATIO_PREFERMENTED));
}

static void
find_movers (const TrDoughFigures *figures,
             TrRatio               ratio,
             Movers               *movers)
{
  movers->n = 0;
  if (ratio == TR_RATIO_ALL_WATER)
    {
      find_water (figures, movers);
      return;
    }
  if (ratio == TR_RATIO_PREFERMENTED)
    {
      find_prefermented (figures, movers);
      return;
    }

  for (guint i = 0; i < figures->formula.lines->len; i++)
    if (is_of_ratio (line_at (figures, i), ratio) && !isnan (line_at (figures, i)->written_grams))
      add_mover (movers, figures, i, share_of_line (line_at (figures, i), ratio));
}

static double
sum_of_movers (const Movers *movers)
{
  double sum = 0;

  for (guint i = 0; i < movers->n; i++)
    sum += movers->movers[i].grams * movers->movers[i].share;

  return sum;
}

/* Exchange: what goes from the dough to the preferment and back */

typedef struct { guint mover, other; double share; } Trade;
typedef struct { Trade trades[2 * TR_MAX_LINES]; guint n; Movers movers; Movers others; } Exchange;

/* The heaviest line of the dough that passes; of this ingredient, or NULL: any. */
static int
find_heaviest (const TrDoughFigures *figures,
               TrLineTest            test,
               const char           *ingredient,
               guint                 but)
{
  double most = -1;
  int found = -1;

  for (guint i = 0; i < figures->formula.lines->len; i++)
    {
      const TrLineFigures *line = line_at (figures, i);

      if (i == but || line->line->stage != TR_STAGE_DOUGH || !test (line) || !(line->written_grams > most)
          || (ingredient != NULL && g_strcmp0 (line->line->ingredient, ingredient) != 0))
        continue;
      most = line->written_grams;
      found = (int) i;
    }

  return found;
}

static int
find_flour_for (const TrDoughFigures *figures,
                guint                 index)
{
  int same = find_heaviest (figures, is_flour, line_at (figures, index)->line->ingredient, index);

  return same >= 0 ? same : find_heaviest (figures, is_flour, NULL, index);
}

static gboolean
add_trade (Exchange             *exchange,
           const TrDoughFigures *figures,
           guint                 mover,
           int                   other,
           double                share)
{
  guint at = 0;

  if (other < 0)
    return FALSE;
  while (at < exchange->others.n && exchange->others.movers[at].index != (guint) other)
    at++;
  if (at == exchange->others.n)
    add_mover (&exchange->others, figures, (guint) other, 1);
  exchange->trades[exchange->n++] = (Trade) { mover, at, share };

  return TRUE;
}

/* The preferment's own water goes with its flour, so that it stays as soft. */
static void
add_preferment_water (Exchange             *exchange,
                      const TrDoughFigures *figures)
{
  Movers wet = { .n = 0 };

  find_wet_lines (figures, TR_STAGE_PREFERMENT, TRUE, &wet);
  if (wet.n == 0)
    find_wet_lines (figures, TR_STAGE_PREFERMENT, FALSE, &wet);

  for (guint i = 0; i < wet.n; i++)
    {
      const char *ingredient = line_at (figures, wet.movers[i].index)->line->ingredient;
      int other = find_heaviest (figures, is_wet, ingredient, G_MAXUINT);

      if (other < 0)
        continue;
      add_mover (&exchange->movers, figures, wet.movers[i].index, 1);
      add_trade (exchange, figures, exchange->movers.n - 1, other, 1);
    }
}

/* FALSE: something has nothing to be exchanged with. */
static gboolean
find_exchange (const TrDoughFigures *figures,
               Exchange             *exchange)
{
  gboolean are_starters;

  exchange->n = 0;
  exchange->others.n = 0;
  find_movers (figures, TR_RATIO_PREFERMENTED, &exchange->movers);
  if (exchange->movers.n == 0)
    return FALSE;

  guint n_flours = exchange->movers.n;
  are_starters = line_at (figures, exchange->movers.movers[0].index)->ingredient.role == TR_ROLE_STARTER;
  for (guint i = 0; i < n_flours; i++)
    {
      const Mover *mover = &exchange->movers.movers[i];

      if (!add_trade (exchange, figures, i, find_flour_for (figures, mover->index), mover->share)
          || (are_starters
              && !add_trade (exchange, figures, i, find_heaviest (figures, is_water, NULL, G_MAXUINT), 1 - mover->share)))
        return FALSE;
    }
  if (!are_starters)
    add_preferment_water (exchange, figures);

  return TRUE;
}

/* Grams that each line of the dough gives when the movers are `times` as much. */
static double
greatest_times (const Exchange *exchange)
{
  double most = G_MAXDOUBLE;

  for (guint other = 0; other < exchange->others.n; other++)
    {
      double taken = 0;

      for (guint i = 0; i < exchange->n; i++)
        if (exchange->trades[i].other == other)
          taken += exchange->movers.movers[exchange->trades[i].mover].grams * exchange->trades[i].share;
      if (taken > 0)
        most = MIN (most, 1 + exchange->others.movers[other].grams / taken);
    }

  return most;
}

/* Reach */

static gboolean
has_line (const TrDoughFigures *figures,
          TrRatio               ratio)
{
  for (guint i = 0; i < figures->formula.lines->len; i++)
    {
      const TrLineFigures *line = line_at (figures, i);

      if (ratio == TR_RATIO_ALL_WATER ? is_in_dough (line) && is_wet (line)
          : ratio == TR_RATIO_PREFERMENTED
            ? line->known && ((line->line->stage == TR_STAGE_PREFERMENT && is_flour (line))
                              || (tr_line_is_in_mix (line) && line->ingredient.role == TR_ROLE_STARTER))
            : is_of_ratio (line, ratio))
        return TRUE;
    }

  return FALSE;
}

static int
compare_indices (gconstpointer a,
                 gconstpointer b)
{
  guint one = *(const guint *) a, other = *(const guint *) b;

  return one < other ? -1 : one > other;
}

static void
list_movers (const Movers *movers,
             TrRatioMoves *moves)
{
  for (guint i = 0; i < movers->n; i++)
    moves->lines[moves->n_lines++] = movers->movers[i].index;
  qsort (moves->lines, moves->n_lines, sizeof moves->lines[0], compare_indices);
}

/* An empty preferment has no share to multiply: it is filled by its first flour. */
static double
greatest_prefermented (const TrDoughFigures *figures,
                       const Exchange       *exchange,
                       double                fixed)
{
  double sum = 0, whole = whole_of (figures, TR_RATIO_PREFERMENTED);

  for (guint i = 0; i < exchange->movers.n; i++)
    if (share_of_line (line_at (figures, exchange->movers.movers[i].index), TR_RATIO_PREFERMENTED) > 0)
      sum += exchange->movers.movers[i].grams * exchange->movers.movers[i].share;
  if (!(sum > 0))
    return fixed + 100 * exchange->others.movers[exchange->trades[0].other].grams / whole;

  return fixed + 100 * sum * greatest_times (exchange) / whole;
}

void
tr_ratio_get_moves (const TrDoughFigures *figures,
                    TrRatio               ratio,
                    TrRatioMoves         *moves)
{
  double now = tr_ratio_get (figures, ratio), whole = whole_of (figures, ratio), fixed;
  Exchange exchange;
  Movers movers;

  g_return_if_fail (ratio < TR_N_RATIOS);

  *moves = (TrRatioMoves) { .reach = { NAN, NAN }, .has_line = has_line (figures, ratio) };
  find_movers (figures, ratio, &movers);
  if (isnan (now) || !tr_is_positive (whole) || movers.n == 0)
    return;

  fixed = MAX (now - 100 * sum_of_movers (&movers) / whole, 0);
  moves->reach.min = MAX (fixed, MIN (ratios[ratio].travel.min, now));
  moves->reach.max = MAX (ratios[ratio].travel.max, now);
  if (ratio == TR_RATIO_PREFERMENTED)
    {
      if (!find_exchange (figures, &exchange))
        {
          moves->reach = (TrRange) { NAN, NAN };
          return;
        }
      moves->reach.max = MIN (moves->reach.max, greatest_prefermented (figures, &exchange, fixed));
      list_movers (&exchange.movers, moves);
      list_movers (&exchange.others, moves);
    }
  else
    {
      list_movers (&movers, moves);
    }
  moves->can_move = TRUE;
}

/* Writing amounts */

static double
round_nice (double number,
            double allowed)
{
  for (int decade = 6; decade >= -6; decade--)
    for (int half = 1; half >= 0; half--)
      {
        double step = pow (10, decade) * (half ? 5 : 1);
        double rounded = step * round (number / step);

        if (fabs (rounded - number) <= allowed)
          return rounded;
      }

  return number;
}

/* Shortest to a millionth; three decimals after a whole part would be read
 * two ways, so they take a fourth. */
static void
append_number (GString *out,
               double   number)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];
  int decimals = 0;

  while (decimals < 6 && fabs (number - round (number * pow (10, decimals)) / pow (10, decimals)) > 1e-7)
    decimals++;
  if (decimals == 3 && number >= 1)
    decimals = 4;
  char format[] = { '%', '.', (char) ('0' + decimals), 'f', '\0' };
  g_string_append (out, g_ascii_formatd (digits, sizeof digits, format, fabs (number)));
}

static char *
dup_amount (const Mover *mover,
            double       number)
{
  GString *out = g_string_new (NULL);

  if (mover->rest_unit != TR_N_UNITS)
    {
      double many = tr_unit_grams (mover->unit) / tr_unit_grams (mover->rest_unit);
      double whole = floor (number + 1e-9), rest = MAX ((number - whole) * many, 0);

      rest = round (rest * 1e6) / 1e6;
      if (whole > 0 && rest > 0)
        {
          g_string_append_printf (out, "%.0f %s ", whole, tr_unit_id (mover->unit));
          append_number (out, rest);
          g_string_append_printf (out, " %s", tr_unit_id (mover->rest_unit));
          return g_string_free (out, FALSE);
        }
    }
  append_number (out, number);
  g_string_append_printf (out, " %s", tr_unit_id (mover->unit));

  return g_string_free (out, FALSE);
}

static void
write_mover (TrDough     *dough,
             const Mover *mover,
             double       number)
{
  TrLine *line = tr_dough_get_line (dough, mover->index);

  g_free (line->amount);
  line->amount = dup_amount (mover, number);
}

/* Every bit of it, for the formula that is asked. */
static void
write_exactly (TrDough     *dough,
               const Mover *mover,
               double       number)
{
  TrLine *line = tr_dough_get_line (dough, mover->index);
  char digits[G_ASCII_DTOSTR_BUF_SIZE];

  g_ascii_formatd (digits, sizeof digits, "%.15f", number);
  g_free (line->amount);
  line->amount = g_strconcat (digits, " ", tr_unit_id (mover->unit), NULL);
}

/* Finding the multiplier */

/* Where nothing is there to be multiplied, `times` is grams of the first. */
static double
number_at (const Mover *mover,
           gboolean     is_empty,
           gboolean     is_first,
           double       times)
{
  if (is_empty)
    return is_first ? times : 0;

  return mover->number * times;
}

static double
measure (const Aim    *aim,
         TrDough      *scratch,
         const Movers *movers,
         gboolean      is_empty,
         double        times,
         TrFormula    *bases)
{
  TrFormula formula;
  double value;

  for (guint i = 0; i < movers->n; i++)
    write_exactly (scratch, &movers->movers[i], number_at (&movers->movers[i], is_empty, i == 0, times));
  tr_formula_compute (scratch, aim->figures->pantry, &formula);
  value = aim->is_line ? tr_formula_get_line (&formula, aim->index)->percent : ratio_of_formula (&formula, aim->ratio);
  tr_formula_clear (&formula);
  *bases = formula;

  return value;
}

/* FALSE: it cannot be had. `bases`: the sums of that formula, without lines. */
static gboolean
find_times (const Aim    *aim,
            const Movers *movers,
            gboolean      is_empty,
            double        first,
            double        value,
            double       *times,
            TrFormula    *bases)
{
  g_autoptr (TrDough) scratch = tr_dough_copy (aim->figures->dough);
  double before = is_empty ? 0 : 1, at = MAX (first, 0);
  double value_before = measure (aim, scratch, movers, is_empty, before, bases);
  double value_at = measure (aim, scratch, movers, is_empty, at, bases);

  for (guint i = 0; i < MAX_STEPS && !(fabs (value_at - value) < CLOSE_ENOUGH); i++)
    {
      double slope = (value_at - value_before) / (at - before);

      if (!isfinite (slope) || fabs (slope) < 1e-15)
        return FALSE;
      before = at;
      value_before = value_at;
      at = MAX (at + (value - value_at) / slope, 0);
      value_at = measure (aim, scratch, movers, is_empty, at, bases);
    }
  *times = at;

  return fabs (value_at - value) < CLOSE_ENOUGH;
}

static guint
find_heaviest_mover (const Movers *movers)
{
  guint heaviest = 0;

  for (guint i = 1; i < movers->n; i++)
    if (movers->movers[i].grams * movers->movers[i].share
        > movers->movers[heaviest].grams * movers->movers[heaviest].share)
      heaviest = i;

  return heaviest;
}

/* The others are rounded within their proportions; the heaviest makes up for
 * them. `allowed_g` is of the ratio's upper part. */
static void
write_rounded (TrDough         *dough,
               const Movers    *movers,
               gboolean         is_empty,
               double           times,
               double           allowed_g,
               const TrFormula *bases)
{
  guint last = is_empty ? 0 : find_heaviest_mover (movers);
  double missing_g = 0;

  for (guint i = 0; i < movers->n; i++)
    {
      const Mover *mover = &movers->movers[i];
      double unit_g = gain_of_unit (mover->unit, bases) * mover->share;
      double number = number_at (mover, is_empty, i == 0, times);

      if (i == last)
        continue;
      double rounded = round_nice (number, MIN (allowed_g / unit_g, RELATIVE_TOLERANCE * number));
      missing_g += (number - rounded) * unit_g;
      write_mover (dough, mover, rounded);
    }

  const Mover *mover = &movers->movers[last];
  double unit_g = gain_of_unit (mover->unit, bases) * mover->share;
  double number = MAX (number_at (mover, is_empty, last == 0, times) + missing_g / unit_g, 0);
  write_mover (dough, mover, round_nice (number, allowed_g / unit_g));
}

/* Setting a ratio */

static gboolean
refuse (GError        **error,
        TrBalanceError  code,
        const char     *format,
        ...) G_GNUC_PRINTF (3, 4);

static gboolean
refuse (GError        **error,
        TrBalanceError  code,
        const char     *format,
        ...)
{
  va_list args;

  va_start (args, format);
  if (error != NULL)
    *error = g_error_new_valist (TR_BALANCE_ERROR, (int) code, format, args);
  va_end (args);

  return FALSE;
}

static void
format_percent (char   buffer[G_ASCII_DTOSTR_BUF_SIZE],
                double percent)
{
  g_ascii_formatd (buffer, G_ASCII_DTOSTR_BUF_SIZE, "%.4g", percent);
}

static gboolean
refuse_reach (GError        **error,
              double          value,
              const TrRange  *reach)
{
  char given[G_ASCII_DTOSTR_BUF_SIZE], low[G_ASCII_DTOSTR_BUF_SIZE], high[G_ASCII_DTOSTR_BUF_SIZE];

  format_percent (given, value);
  format_percent (low, reach->min);
  format_percent (high, reach->max);

  return refuse (error, TR_BALANCE_ERROR_REACH, "%s %% is out of reach: expected %s to %s %%.", given, low, high);
}

static gboolean
refuse_still (GError             **error,
              const TrRatioMoves  *moves)
{
  if (!moves->has_line)
    return refuse (error, TR_BALANCE_ERROR_NO_LINE, "No line of the formula can move this ratio.");

  return refuse (error, TR_BALANCE_ERROR_NOT_KNOWN, "This ratio cannot be moved while its lines cannot be weighed.");
}

static gboolean
set_multiplied (TrDough               *dough,
                const TrDoughFigures  *figures,
                TrRatio                ratio,
                double                 value,
                GError               **error)
{
  const Aim aim = { .figures = figures, .ratio = ratio };
  double whole = whole_of (figures, ratio), now = tr_ratio_get (figures, ratio), sum, first, times;
  TrFormula bases;
  Movers movers;

  find_movers (figures, ratio, &movers);
  sum = sum_of_movers (&movers);
  gboolean is_empty = !(sum > 0);
  if (is_empty)
    movers.movers[0].unit = TR_UNIT_G;
  first = is_empty ? whole / 100 / movers.movers[0].share : 1 + (value - now) * whole / 100 / sum;
  if (!find_times (&aim, &movers, is_empty, first, value, &times, &bases))
    return refuse (error, TR_BALANCE_ERROR_REACH, "No amount of these lines makes this ratio.");
  write_rounded (dough, &movers, is_empty, times, tolerance_of (ratio) * whole / 100, &bases);

  return TRUE;
}

/* Whether the dough has what mover `i` would get; at the end of the reach a
 * rounded amount may be more. */
static gboolean
can_give (const Exchange *exchange,
          guint           i,
          double          grams)
{
  const Mover *mover = &exchange->movers.movers[i];

  for (guint t = 0; t < exchange->n; t++)
    if (exchange->trades[t].mover == i
        && (grams - mover->grams) * exchange->trades[t].share
           > exchange->others.movers[exchange->trades[t].other].grams + TR_HAIR)
      return FALSE;

  return TRUE;
}

/* What the preferment gets is round; the dough gives exactly that. */
static void
set_exchanged (TrDough              *dough,
               const TrDoughFigures *figures,
               double                value)
{
  double whole = whole_of (figures, TR_RATIO_PREFERMENTED);
  double wanted_g = (value - tr_ratio_get (figures, TR_RATIO_PREFERMENTED)) * whole / 100, sum;
  double allowed_g = TR_RATIO_TOLERANCE * whole / 100;
  Exchange exchange;
  Movers flours;

  find_movers (figures, TR_RATIO_PREFERMENTED, &flours);
  find_exchange (figures, &exchange);
  sum = sum_of_movers (&flours);

  double times = sum > 0 ? 1 + wanted_g / sum : 1;
  for (guint i = 0; i < exchange.movers.n; i++)
    {
      Mover *mover = &exchange.movers.movers[i];
      double unit_g = grams_of_unit (mover->unit, &figures->formula), number = mover->number * times;

      if (!(sum > 0) && i == 0)
        number = wanted_g / mover->share / unit_g;
      number = MAX (number, 0);
      double rounded = round_nice (number, allowed_g / unit_g / flours.n);
      number = can_give (&exchange, i, rounded * unit_g) ? rounded : number;
      write_mover (dough, mover, number);
      for (guint t = 0; t < exchange.n; t++)
        if (exchange.trades[t].mover == i)
          exchange.others.movers[exchange.trades[t].other].grams -= (number * unit_g - mover->grams) * exchange.trades[t].share;
    }
  for (guint i = 0; i < exchange.others.n; i++)
    {
      const Mover *other = &exchange.others.movers[i];

      write_mover (dough, other, MAX (other->grams, 0) / grams_of_unit (other->unit, &figures->formula));
    }
}

gboolean
tr_ratio_set (TrDough               *dough,
              const TrDoughFigures  *figures,
              TrRatio                ratio,
              double                 value,
              GError               **error)
{
  TrRatioMoves moves;

  g_return_val_if_fail (dough != NULL && figures != NULL && ratio < TR_N_RATIOS, FALSE);
  g_return_val_if_fail (dough->lines->len == figures->formula.lines->len, FALSE);

  tr_ratio_get_moves (figures, ratio, &moves);
  if (!moves.can_move)
    return refuse_still (error, &moves);
  if (!(value >= moves.reach.min - CLOSE_ENOUGH && value <= moves.reach.max + CLOSE_ENOUGH))
    return refuse_reach (error, value, &moves.reach);
  if (ratio != TR_RATIO_PREFERMENTED)
    return set_multiplied (dough, figures, ratio, value, error);
  set_exchanged (dough, figures, value);

  return TRUE;
}

/* Adding a line */

static guint
add_line (TrDough    *dough,
          TrStage     stage,
          const char *group,
          const char *ingredient,
          double      grams)
{
  const Mover mover = { .unit = TR_UNIT_G, .rest_unit = TR_N_UNITS };
  g_autofree char *amount = dup_amount (&mover, round_nice (MAX (grams, 0), 0.01 * fabs (grams)));
  TrLine *line = tr_line_new (stage, ingredient, amount);

  line->group = g_strdup (group);
  g_ptr_array_add (dough->lines, line);

  return dough->lines->len - 1;
}

/* As much water as flour: a sponge that can be poured (common practice). */
static int
add_preferment (TrDough               *dough,
                const TrDoughFigures  *figures,
                GError               **error)
{
  int flour = find_heaviest (figures, is_flour, NULL, G_MAXUINT);
  int water = find_heaviest (figures, is_water, NULL, G_MAXUINT);
  const char *const where = "No line of the dough has enough %s to give to a preferment.";
  double grams = ratios[TR_RATIO_PREFERMENTED].usual * figures->formula.written_flour_g / 100;
  Mover movers[2];

  grams = round_nice (grams, 0.01 * grams);
  if (flour < 0 || line_at (figures, (guint) flour)->written_grams < grams)
    return refuse (error, TR_BALANCE_ERROR_NO_LINE, where, "flour"), -1;
  if (water < 0 || line_at (figures, (guint) water)->written_grams < grams)
    return refuse (error, TR_BALANCE_ERROR_NO_LINE, where, "water"), -1;

  init_mover (&movers[0], figures, (guint) flour, 1);
  init_mover (&movers[1], figures, (guint) water, 1);
  int first = (int) add_line (dough, TR_STAGE_PREFERMENT, "sponge", line_at (figures, (guint) flour)->line->ingredient, grams);
  add_line (dough, TR_STAGE_PREFERMENT, "sponge", line_at (figures, (guint) water)->line->ingredient, grams);
  for (guint i = 0; i < G_N_ELEMENTS (movers); i++)
    write_mover (dough, &movers[i], (movers[i].grams - grams) / grams_of_unit (movers[i].unit, &figures->formula));

  return first;
}

int
tr_ratio_add_line (TrDough               *dough,
                   const TrDoughFigures  *figures,
                   TrRatio                ratio,
                   GError               **error)
{
  static const struct { const char *ingredient; TrStage stage; double per_gram; } usual[TR_N_RATIOS] = {
    [TR_RATIO_ALL_WATER] = { "water", TR_STAGE_DOUGH, 1 },
    [TR_RATIO_DOUGH_FAT] = { "butter-unsalted", TR_STAGE_DOUGH, 1 },
    [TR_RATIO_ROLL_IN_OF_DOUGH] = { "butter-unsalted", TR_STAGE_ROLL_IN, 1 },
    [TR_RATIO_SALT] = { "salt", TR_STAGE_DOUGH, 1 },
    [TR_RATIO_SUGAR] = { "sugar", TR_STAGE_DOUGH, 1 },
    [TR_RATIO_YEAST_FRESH] = { "yeast-fresh", TR_STAGE_DOUGH, 1 },
  };
  double whole, now;

  g_return_val_if_fail (dough != NULL && figures != NULL && ratio < TR_N_RATIOS, -1);

  whole = whole_of (figures, ratio);
  now = tr_ratio_get (figures, ratio);
  if (!tr_is_positive (whole))
    return refuse (error, TR_BALANCE_ERROR_NOT_KNOWN, "There is no flour yet to take a ratio of."), -1;
  if (dough->lines->len + 2 > TR_MAX_LINES)
    return refuse (error, TR_BALANCE_ERROR_REACH, "A dough has at most %d lines.", TR_MAX_LINES), -1;
  if (ratio == TR_RATIO_PREFERMENTED)
    return add_preferment (dough, figures, error);

  return (int) add_line (dough, usual[ratio].stage, NULL, usual[ratio].ingredient,
                         MAX (ratios[ratio].usual - (isnan (now) ? 0 : now), 0) * whole / 100);
}

/* A line's percent */

static gboolean
set_flour_percent (TrDough               *dough,
                   const TrDoughFigures  *figures,
                   guint                  index,
                   double                 percent,
                   GError               **error)
{
  double flour_g = figures->formula.written_flour_g, wanted_g = percent * flour_g / 100, most = -1;
  char given[G_ASCII_DTOSTR_BUF_SIZE], greatest[G_ASCII_DTOSTR_BUF_SIZE];
  Mover mover, other = { .index = index };

  for (guint i = 0; i < figures->formula.lines->len; i++)
    if (i != index && is_flour (line_at (figures, i)) && line_at (figures, i)->written_grams > most)
      {
        init_mover (&other, figures, i, 1);
        most = other.grams;
      }
  format_percent (given, percent);
  if (most < 0)
    return refuse (error, TR_BALANCE_ERROR_REACH,
                   "%s %% cannot be: this line is the only flour, and the flour is the 100 %%.", given);

  init_mover (&mover, figures, index, 1);
  format_percent (greatest, 100 * (mover.grams + other.grams) / flour_g);
  if (wanted_g > mover.grams + other.grams + CLOSE_ENOUGH)
    return refuse (error, TR_BALANCE_ERROR_REACH,
                   "%s %% is more than the other flour can give way to: expected at most %s %%.", given, greatest);

  double unit_g = grams_of_unit (mover.unit, &figures->formula);
  double number = round_nice (wanted_g / unit_g, MIN (PERCENT_TOLERANCE, RELATIVE_TOLERANCE * percent) * flour_g / 100 / unit_g);
  write_mover (dough, &mover, number);
  write_mover (dough, &other, MAX (other.grams + mover.grams - number * unit_g, 0) / grams_of_unit (other.unit, &figures->formula));

  return TRUE;
}

gboolean
tr_line_set_percent (TrDough               *dough,
                     const TrDoughFigures  *figures,
                     guint                  index,
                     double                 percent,
                     GError               **error)
{
  const Aim aim = { .figures = figures, .is_line = TRUE, .index = index };
  double flour_g, times;
  char given[G_ASCII_DTOSTR_BUF_SIZE];
  TrFormula bases;
  Movers movers = { .n = 0 };

  g_return_val_if_fail (dough != NULL && figures != NULL, FALSE);
  g_return_val_if_fail (index < dough->lines->len && dough->lines->len == figures->formula.lines->len, FALSE);

  flour_g = figures->formula.written_flour_g;
  format_percent (given, percent);
  if (!(percent >= 0 && percent <= MAX_PERCENT))
    return refuse (error, TR_BALANCE_ERROR_REACH, "%s %% is out of reach: expected 0 to %g %%.", given, MAX_PERCENT);
  if (!line_at (figures, index)->known || !tr_is_positive (flour_g))
    return refuse (error, TR_BALANCE_ERROR_NOT_KNOWN, "%s %% of what? There is no flour that can be weighed yet, or the ingredient is not known.", given);
  if (is_flour (line_at (figures, index)))
    return set_flour_percent (dough, figures, index, percent, error);

  add_mover (&movers, figures, index, 1);
  gboolean is_empty = !(movers.movers[0].grams > 0);
  if (is_empty)
    movers.movers[0].unit = TR_UNIT_G;
  double first = is_empty ? percent * flour_g / 100 : percent * flour_g / 100 / movers.movers[0].grams;
  if (!find_times (&aim, &movers, is_empty, first, percent, &times, &bases))
    return refuse (error, TR_BALANCE_ERROR_REACH, "No amount of this line makes %s %% of the flour.", given);
  write_rounded (dough, &movers, is_empty, times,
                 MIN (PERCENT_TOLERANCE, RELATIVE_TOLERANCE * percent) * bases.written_flour_g / 100, &bases);

  return TRUE;
}
