/* measure.c: how much a line of a recipe says
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   measure  = [ about ] quantity [ "x" measure ] [ "-" ] [ size ] [ unit ] { part }
 *   quantity = number [ ( "-" | "to" | "or" ) number ] | number words
 *
 * Units are those of calc's reader; the table of words adds what only recipes
 * use. Looks a fixed number of tokens ahead.
 */

#include "count.h"
#include "measure.h"

#include <math.h>
#include <string.h>

#include "../calc/unit.h"
#include "../trial/document.h"

#define MAX_DEPTH 3

static gboolean read_parts (const TrTokens *tokens, guint at, guint end, guint *next, TrMeasure *measure, guint depth);
static gboolean read_measure (const TrTokens *tokens, guint at, guint end, guint *next, TrMeasure *measure, guint depth);
static gboolean read_bracket (const TrTokens *tokens, guint at, guint end, guint *next, TrMeasure *measure, guint depth);

static TrMeasureKind
kind_of_unit (TrUnit unit)
{
  if (unit == TR_UNIT_OZ || unit == TR_UNIT_LB)
    return TR_MEASURE_IMPERIAL_MASS;
  if (!isnan (tr_unit_grams (unit)))
    return TR_MEASURE_MASS;
  if (unit == TR_UNIT_ML || unit == TR_UNIT_CL || unit == TR_UNIT_DL || unit == TR_UNIT_L)
    return TR_MEASURE_METRIC_VOLUME;
  if (!isnan (tr_unit_ml (unit)))
    return TR_MEASURE_MEASURE;
  return tr_unit_is_percent (unit) ? TR_MEASURE_PERCENT : TR_MEASURE_COUNT;
}

static guint
token_at (const TrTokens *tokens,
          guint           at,
          gsize           offset)
{
  while (at < tokens->tokens->len && tr_tokens_get (tokens, at)->start < offset)
    at++;
  return at;
}

/* A single letter means what cooks mean by it: T and t differ. */
static int
letter_unit (const TrTokens *tokens,
             guint           at)
{
  const TrToken *token = tr_tokens_get (tokens, at);

  if (token->end - token->start != 1)
    return -1;
  switch (tokens->text[token->start])
    {
    case 'T': return TR_UNIT_TBSP;
    case 't': return TR_UNIT_TSP;
    case 'C': case 'c': return TR_UNIT_CUP;
    default: return -1;
    }
}

static gboolean
read_unit (const TrTokens *tokens,
           guint           at,
           guint           end,
           guint          *next,
           TrUnit         *unit)
{
  TrCursor cursor;
  int letter;

  if (at >= end)
    return FALSE;
  cursor = (TrCursor) { tokens->text + tr_tokens_get (tokens, at)->start, tokens->text + tr_tokens_get (tokens, end - 1)->end };
  letter = letter_unit (tokens, at);
  if (letter >= 0)
    {
      *unit = (TrUnit) letter;
      *next = at + 1;
      if (tr_tokens_is_sign (tokens, *next, '.') && *next < end)
        ++*next;
      return TRUE;
    }
  if (tr_tokens_get (tokens, at)->type == TR_TOKEN_NUMBER || !tr_unit_read (&cursor, unit, NULL))
    return FALSE;
  *next = MIN (token_at (tokens, at, (gsize) (cursor.at - tokens->text)), end);
  return *next > at;
}

static void
set_amount (TrMeasure     *measure,
            const TrCount *quantity,
            const char    *unit)
{
  g_snprintf (measure->amount, sizeof measure->amount, "%s%s%s", quantity->text, *unit != '\0' ? " " : "", unit);
}

/* A unit of the table: so many of one that calc knows. */
static void
set_odd_unit (TrMeasure         *measure,
              const TrCount     *quantity,
              const TrWordEntry *entry)
{
  char *unit;
  double each = g_ascii_strtod (entry->value, &unit);
  char number[48];
  int id;

  while (*unit == ' ')
    unit++;
  id = tr_unit_from_id (unit);
  measure->word = *entry->why != '\0' ? entry : NULL;
  measure->unit = id >= 0 ? (TrUnit) id : TR_UNIT_ML;
  measure->kind = kind_of_unit (measure->unit);
  if (measure->kind == TR_MEASURE_METRIC_VOLUME && fabs (each - 1) > 0.5)
    measure->kind = TR_MEASURE_MEASURE;
  measure->number = quantity->value * each;
  tr_count_print (measure->number, number, sizeof number);
  g_snprintf (measure->amount, sizeof measure->amount, "%s %s", number, unit);
}

/* A time, a length, a temperature: no amount. */
static gboolean
is_not_amount (const TrTokens *tokens,
               guint           at,
               guint           end,
               double          value)
{
  const char *word;

  if (at >= end)
    return FALSE;
  if (tr_tokens_is_sign (tokens, at, 'd') || tr_tokens_is_sign (tokens, at, '"'))
    return TRUE;
  if (tr_tokens_is_sign (tokens, at, '-') && tr_words_has (TR_WORD_NOT_AMOUNT, tokens, at + 1, end))
    return TRUE;
  word = tr_tokens_get (tokens, at)->word;
  if (strcmp (word, "c") == 0 || strcmp (word, "in") == 0)
    return *word == 'c' ? value > 12 : FALSE;
  return tr_words_has (TR_WORD_NOT_AMOUNT, tokens, at, end);
}

static guint
skip_sizes (const TrTokens     *tokens,
            guint               at,
            guint               end,
            const TrWordEntry **size)
{
  const TrWordEntry *entry;
  guint next;

  for (;;)
    {
      if (tr_tokens_is_sign (tokens, at, '-') && tr_words_has (TR_WORD_SIZE, tokens, at + 1, end))
        at++;
      entry = tr_words_match (TR_WORD_SIZE, tokens, at, end, &next);
      if (entry == NULL)
        return at;
      if (*entry->value != '\0' || *size == NULL)
        *size = entry;
      at = next;
    }
}

/* "about", "a scant", "heaped" in front of the number. */
static guint
skip_before (const TrTokens     *tokens,
             guint               at,
             guint               end,
             const TrWordEntry **size)
{
  guint start = at, next;

  if (at + 1 < end && (strcmp (tr_tokens_get (tokens, at)->word, "a") == 0) &&
      tr_words_has (TR_WORD_SIZE, tokens, at + 1, end))
    return at;
  for (;;)
    {
      if (tr_words_match (TR_WORD_APPROX, tokens, at, end, &next) != NULL)
        at = next;
      else if (tr_tokens_is_sign (tokens, at, '~'))
        at++;
      else if (tr_words_match (TR_WORD_SIZE, tokens, at, end, &next) != NULL)
        at = skip_sizes (tokens, at, end, size);
      else if (at > start && (tr_tokens_is_sign (tokens, at, '.') || tr_tokens_is_sign (tokens, at, ':')))
        at++;
      else
        return at;
    }
}

/* Without a number: "pinch of salt", "knob of butter". */
static gboolean
read_unnumbered (const TrTokens *tokens,
                 guint           at,
                 guint           end,
                 guint          *next,
                 TrMeasure      *measure)
{
  const TrWordEntry *vague = tr_words_match (TR_WORD_VAGUE, tokens, at, end, next);

  if (vague != NULL)
    {
      measure->kind = TR_MEASURE_VAGUE;
      measure->word = vague;
      g_strlcpy (measure->amount, vague->phrase, sizeof measure->amount);
      return TRUE;
    }
  if (tr_word_is (tr_tokens_get (tokens, at)->word, "pinch", 5))
    {
      *next = at + 1;
      measure->kind = TR_MEASURE_COUNT;
      measure->unit = TR_UNIT_PINCH;
      measure->number = 1;
      g_strlcpy (measure->amount, "1 pinch", sizeof measure->amount);
      return TRUE;
    }
  return FALSE;
}

/* "2 x 250 g", "2 (7 g) packets", "1 1/4-ounce packet" */
static gboolean
read_times (const TrTokens *tokens,
            guint           at,
            guint           end,
            guint          *next,
            const TrCount  *quantity,
            TrMeasure      *measure,
            guint           depth)
{
  gboolean has_x = at < end && strcmp (tr_tokens_get (tokens, at)->word, "x") == 0;
  gboolean has_bracket = tr_tokens_is_sign (tokens, at, '(');
  guint after;

  if (depth >= MAX_DEPTH || quantity->is_bad || quantity->is_range)
    return FALSE;
  if (has_x)
    {
      if (!read_measure (tokens, at + 1, end, &after, measure, depth + 1) || measure->kind == TR_MEASURE_BARE)
        return FALSE;
    }
  else if (has_bracket)
    {
      if (!read_bracket (tokens, at, end, &after, measure, depth + 1) ||
          !(tr_words_has (TR_WORD_CONTAINER, tokens, after, end) ||
            tr_word_is (after < end ? tr_tokens_get (tokens, after)->word : "", "stick", 5)))
        return FALSE;
    }
  /* "two 250 g blocks" */
  else if (at >= end || tr_tokens_get (tokens, at)->type != TR_TOKEN_NUMBER || quantity->value > 20 ||
           !read_measure (tokens, at, end, &after, measure, MAX_DEPTH) || measure->kind > TR_MEASURE_METRIC_VOLUME ||
           !tr_words_has (TR_WORD_CONTAINER, tokens, tr_tokens_is_sign (tokens, after, '-') ? after + 1 : after, end))
    return FALSE;
  if (measure->is_bad || isnan (measure->number))
    return FALSE;
  if (fabs (quantity->value - 1) > 1e-9)
    tr_measure_scale (measure, quantity->value);
  if (tr_tokens_is_sign (tokens, after, '-'))
    after++;
  if (tr_words_has (TR_WORD_CONTAINER, tokens, after, end))
    after++;
  *next = after;
  return TRUE;
}

/* "500 | g | flour" */
static gboolean
is_unit_cell (const TrTokens *tokens,
              guint           at,
              guint           end)
{
  TrUnit unit;
  guint next;

  return tr_tokens_is_sign (tokens, at, '|') && read_unit (tokens, at + 1, end, &next, &unit) && !tr_unit_is_percent (unit) &&
         (next == end || tr_tokens_is_sign (tokens, next, '|'));
}

static void
fill_number (TrMeasure     *measure,
             const TrCount *quantity)
{
  measure->number = quantity->value;
  measure->is_range = quantity->is_range;
  measure->is_bad = quantity->is_bad;
  measure->readings[0] = quantity->readings[0];
  measure->readings[1] = quantity->readings[1];
}

static gboolean
read_unit_of (const TrTokens *tokens,
              guint           at,
              guint           end,
              guint          *next,
              const TrCount  *quantity,
              TrMeasure      *measure)
{
  const TrWordEntry *entry = tr_words_match (TR_WORD_UNIT, tokens, at, end, next);

  if (entry != NULL)
    set_odd_unit (measure, quantity, entry);
  else if (read_unit (tokens, at, end, next, &measure->unit))
    {
      static const char *const of_contents[] = { "hydration", "fat", "butterfat", "milkfat", "cocoa" };

      measure->kind = kind_of_unit (measure->unit);
      if (measure->unit == TR_UNIT_EGG || measure->unit == TR_UNIT_WHITE || measure->unit == TR_UNIT_YOLK)
        measure->counts = measure->unit;
      set_amount (measure, quantity, tr_unit_id (measure->unit));
      for (gsize i = 0; measure->kind == TR_MEASURE_PERCENT && *next < end && i < G_N_ELEMENTS (of_contents); i++)
        if (strcmp (tr_tokens_get (tokens, *next)->word, of_contents[i]) == 0)
          return FALSE;
    }
  else if ((entry = tr_words_match (TR_WORD_VAGUE, tokens, at, end, next)) != NULL)
    {
      measure->kind = TR_MEASURE_VAGUE;
      measure->word = entry;
      set_amount (measure, quantity, entry->phrase);
    }
  else if (!quantity->is_article && (entry = tr_words_match (TR_WORD_CONTAINER, tokens, at, end, next)) != NULL)
    {
      measure->kind = TR_MEASURE_CONTAINER;
      measure->word = entry;
      set_amount (measure, quantity, entry->phrase);
    }
  else
    return FALSE;
  return TRUE;
}

/* "2 1/4-ounce packets" are two of a quarter of an ounce. */
static void
split_mixed (const TrTokens *tokens,
             guint           after,
             guint           end,
             TrCount        *quantity,
             double         *times)
{
  const char *fraction = strchr (quantity->text, ' ');
  TrUnit unit;
  guint next;

  if (fraction == NULL || strchr (fraction, '/') == NULL || quantity->is_bad || quantity->is_range ||
      !tr_tokens_is_sign (tokens, after, '-') || !read_unit (tokens, after + 1, end, &next, &unit) ||
      !tr_words_has (TR_WORD_CONTAINER, tokens, next, end))
    return;
  *times = floor (quantity->value);
  quantity->value -= *times;
  memmove (quantity->text, fraction + 1, strlen (fraction));
}

static gboolean
read_measure (const TrTokens *tokens,
              guint           at,
              guint           end,
              guint          *next,
              TrMeasure      *measure,
              guint           depth)
{
  const TrWordEntry *size = NULL;
  TrCount quantity;
  double times = 1;
  guint after;

  *measure = (TrMeasure) { .number = NAN, .readings = { NAN, NAN }, .unit = TR_N_UNITS, .counts = TR_N_UNITS };
  at = skip_before (tokens, at, end, &size);
  if (at >= end)
    return FALSE;
  if (!tr_count_read (tokens, at, end, &after, &quantity))
    return read_unnumbered (tokens, at, end, next, measure);
  if (is_not_amount (tokens, after, end, quantity.value))
    return FALSE;
  split_mixed (tokens, after, end, &quantity, &times);
  if (!quantity.is_article && read_times (tokens, after, end, next, &quantity, measure, depth))
    return TRUE;

  *measure = (TrMeasure) { .unit = TR_N_UNITS, .counts = TR_N_UNITS };
  fill_number (measure, &quantity);
  if (tr_tokens_is_sign (tokens, after, '-') || tr_tokens_is_sign (tokens, after, '.') || is_unit_cell (tokens, after, end))
    after++;
  guint named = skip_sizes (tokens, after, end, &size);
  measure->size = size;
  if (read_unit_of (tokens, named, end, next, &quantity, measure))
    {
      if (times > 1)
        tr_measure_scale (measure, times);
      return TRUE;
    }
  if ((quantity.is_article && named == after) || measure->kind == TR_MEASURE_PERCENT)
    return FALSE;
  measure->kind = TR_MEASURE_BARE;
  set_amount (measure, &quantity, "");
  *next = named;
  return TRUE;
}

/* 1 lb 2 oz, 1 cup 2 tbsp: the smaller unit of the same sort right after. */
static gboolean
is_further_part (const TrMeasure *first,
                 const TrMeasure *then)
{
  double a, b;

  if (first->kind != then->kind || first->unit >= TR_N_UNITS || then->unit >= TR_N_UNITS || then->is_bad || first->is_bad)
    return FALSE;
  a = tr_unit_grams (first->unit);
  b = tr_unit_grams (then->unit);
  if (isnan (a) || isnan (b))
    {
      a = tr_unit_ml (first->unit);
      b = tr_unit_ml (then->unit);
    }
  return !isnan (a) && !isnan (b) && b < a && strlen (first->amount) + strlen (then->amount) + 2 < sizeof first->amount;
}

static gboolean
read_parts (const TrTokens *tokens,
            guint           at,
            guint           end,
            guint          *next,
            TrMeasure      *measure,
            guint           depth)
{
  TrMeasure then;
  guint after;

  if (!read_measure (tokens, at, end, next, measure, depth))
    return FALSE;
  if (measure->kind <= TR_MEASURE_MEASURE && *next < end && tr_tokens_get (tokens, *next)->type == TR_TOKEN_NUMBER &&
      read_measure (tokens, *next, end, &after, &then, MAX_DEPTH) && is_further_part (measure, &then))
    {
      strcat (measure->amount, " ");
      strcat (measure->amount, then.amount);
      measure->number = NAN;
      *next = after;
    }
  return TRUE;
}

gboolean
tr_measure_read (const TrTokens *tokens,
                 guint           at,
                 guint           end,
                 guint          *next,
                 TrMeasure      *measure)
{
  return read_parts (tokens, at, end, next, measure, 0);
}

static guint
skip_between (const TrTokens *tokens,
              guint           at,
              guint           end)
{
  while (at < end && (tr_tokens_is_sign (tokens, at, '/') || tr_tokens_is_sign (tokens, at, ',') ||
                      tr_tokens_is_sign (tokens, at, ';') || tr_tokens_is_sign (tokens, at, '=') ||
                      tr_tokens_is_sign (tokens, at, '|') || tr_tokens_is_sign (tokens, at, '-') ||
                      strcmp (tr_tokens_get (tokens, at)->word, "or") == 0))
    at++;
  return at;
}

static gboolean
read_bracket (const TrTokens *tokens,
              guint           at,
              guint           end,
              guint          *next,
              TrMeasure      *measure,
              guint           depth)
{
  TrMeasure other;
  guint after;
  char close = tr_tokens_is_sign (tokens, at, '(') ? ')' : ']';

  if (at >= end || (close == ']' && !tr_tokens_is_sign (tokens, at, '[')) ||
      !read_parts (tokens, at + 1, end, &after, measure, depth) || measure->kind == TR_MEASURE_BARE)
    return FALSE;
  for (;;)
    {
      after = skip_between (tokens, after, end);
      while (after < end && (strcmp (tr_tokens_get (tokens, after)->word, "each") == 0 ||
                             strcmp (tr_tokens_get (tokens, after)->word, "total") == 0))
        after++;
      if (tr_tokens_is_sign (tokens, after, close) && after < end)
        {
          *next = after + 1;
          return TRUE;
        }
      if (!read_parts (tokens, after, end, &after, &other, depth) || other.kind == TR_MEASURE_BARE)
        return FALSE;
      if (tr_measure_is_better (&other, measure))
        *measure = other;
    }
}

gboolean
tr_measure_read_bracket (const TrTokens *tokens,
                         guint           at,
                         guint           end,
                         guint          *next,
                         TrMeasure      *measure)
{
  return read_bracket (tokens, at, end, next, measure, 1);
}

/* What stands beside the first: "(340 g/12 oz)", "/10 1/2 oz", "| 100 %". */
static gboolean
read_beside (const TrTokens *tokens,
             guint           at,
             guint           end,
             guint          *next,
             TrMeasure      *other)
{
  guint after;

  if (tr_measure_read_bracket (tokens, at, end, next, other))
    return TRUE;
  if (!tr_tokens_is_sign (tokens, at, '/') && !tr_tokens_is_sign (tokens, at, '|') && !tr_tokens_is_sign (tokens, at, '=') &&
      !tr_tokens_is_sign (tokens, at, '-') && !(at < end && strcmp (tr_tokens_get (tokens, at)->word, "or") == 0))
    return at < end && tr_tokens_get (tokens, at)->type == TR_TOKEN_NUMBER && tr_measure_read (tokens, at, end, next, other) &&
           other->kind == TR_MEASURE_PERCENT;
  after = skip_between (tokens, at, end);
  return tr_measure_read (tokens, after, end, next, other) && other->kind != TR_MEASURE_BARE &&
         other->kind != TR_MEASURE_VAGUE;
}

gboolean
tr_measure_read_group (const TrTokens *tokens,
                       guint           at,
                       guint           end,
                       guint          *next,
                       TrMeasure      *measure,
                       gboolean       *disagrees)
{
  TrMeasure other;
  guint after;

  if (!tr_measure_read (tokens, at, end, next, measure))
    return FALSE;
  while (read_beside (tokens, *next, end, &after, &other))
    {
      *disagrees |= other.is_bad || tr_measure_masses_disagree (measure, &other);
      if (tr_measure_is_better (&other, measure))
        {
          other.size = NULL;
          other.counts = measure->counts;
          *measure = other;
        }
      *next = after;
    }
  return TRUE;
}
