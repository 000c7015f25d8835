/* item.c: one line of a recipe as ingredients
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A word after the last one that was used for the ingredient makes it another
 * thing ("butter biscuits"), and the line is not understood; one before it is
 * flagged.
 */

#include "item.h"

#include <math.h>
#include <stdarg.h>
#include <string.h>

#include "phrase.h"

#define MAX_ITEMS 30

TrRecipeFlag *
tr_recipe_line_flag (TrRecipeLine   *line,
                     TrRecipeFlagId  id,
                     const char     *format,
                     ...)
{
  TrRecipeFlag *flag = g_new0 (TrRecipeFlag, 1);
  va_list arguments;

  va_start (arguments, format);
  flag->id = id;
  flag->reason = g_strdup_vprintf (format, arguments);
  flag->choices = g_ptr_array_new ();
  va_end (arguments);
  g_ptr_array_add (line->flags, flag);
  return flag;
}

void
tr_recipe_flag_offer (TrRecipeFlag      *flag,
                      TrRecipeChoiceKind kind,
                      const char        *value)
{
  TrRecipeChoice *choice = g_new0 (TrRecipeChoice, 1);

  choice->kind = kind;
  choice->value = g_strdup (value);
  g_ptr_array_add (flag->choices, choice);
}

static void
offer_all (TrRecipeFlag      *flag,
           TrRecipeChoiceKind kind,
           const char        *list)
{
  g_auto (GStrv) values = g_strsplit (list, ";", -1);

  for (guint i = 0; values[i] != NULL; i++)
    if (*values[i] != '\0')
      tr_recipe_flag_offer (flag, kind, values[i]);
}

void
tr_recipe_line_fail (TrRecipeLine *line,
                     const char   *format,
                     ...)
{
  va_list arguments;

  va_start (arguments, format);
  g_free (line->why);
  line->why = g_strdup_vprintf (format, arguments);
  va_end (arguments);
}

static TrRecipeLine *
line_new (const TrItemPlace *place)
{
  TrRecipeLine *line = g_new0 (TrRecipeLine, 1);

  line->text = g_strdup (place->text);
  line->number = place->number;
  line->stage = place->stage;
  line->group = place->stage == TR_STAGE_PREFERMENT ? g_strdup (place->group) : NULL;
  line->name = g_strdup ("");
  line->amount = g_strdup ("");
  line->hydration_percent = NAN;
  line->is_in_dough = TRUE;
  line->flags = g_ptr_array_new ();
  return line;
}

static void
flag_left_over (TrRecipeLine      *line,
                const TrPhrase    *item,
                const TrWordEntry *entry,
                guint64            used,
                int                last)
{
  for (int i = 0; i < (int) item->name.n; i++)
    {
      const TrNameWord *word = &item->name.words[i];

      if (!word->is_head || (used >> i & 1) != 0 || tr_name_ignores (word->word))
        continue;
      if (i > last)
        {
          g_clear_pointer (&line->ingredient, g_free);
          tr_recipe_line_fail (line, "“%s” is not in the table of ingredients.", line->name);
          return;
        }
      tr_recipe_line_flag (line, TR_RECIPE_FLAG_LEFT_OVER, "The word “%s” is not understood; the rest is %s.", word->word, entry->phrase);
    }
}

static void
name_line (TrRecipeLine *line,
           TrPhrase     *item)
{
  guint64 used = 0;
  int last = -1;
  const TrWordEntry *either = tr_phrase_match_either (item);
  const TrWordEntry *entry = tr_name_match (&item->name, &used, &last);
  gboolean is_first = entry != NULL;

  g_free (line->name);
  line->name = tr_tokens_dup_text (item->tokens, item->name_from, item->name_to);
  if (entry == NULL && either != NULL)
    {
      entry = either;
      last = TR_NAME_MAX_WORDS;
    }
  if (entry == NULL || *entry->value == '\0')
    {
      if (*line->name == '\0')
        tr_recipe_line_fail (line, "There is an amount and no ingredient.");
      else
        tr_recipe_line_fail (line, "“%s” is not in the table of ingredients.", line->name);
      return;
    }
  line->ingredient = g_strdup (entry->value);
  if (*entry->why != '\0')
    offer_all (tr_recipe_line_flag (line, TR_RECIPE_FLAG_INGREDIENT, "%s", entry->why), TR_RECIPE_CHOOSE_INGREDIENT, entry->choices);
  if (is_first)
    flag_left_over (line, item, entry, used, last);
  if (!is_first)
    tr_recipe_line_flag (line, TR_RECIPE_FLAG_EITHER, "Of what it offers only one is understood; that is taken.");
  if (is_first && item->either > 0 && either == NULL)
    tr_recipe_line_flag (line, TR_RECIPE_FLAG_EITHER, "Something else would do as well; the first is taken.");
  if (is_first && either != NULL && *either->value != '\0' && strcmp (either->value, entry->value) != 0)
    tr_recipe_flag_offer (tr_recipe_line_flag (line, TR_RECIPE_FLAG_EITHER, "Either would do; the first is taken."),
                          TR_RECIPE_CHOOSE_INGREDIENT, either->value);
}

static void
flag_size (TrRecipeLine    *line,
           const TrMeasure *measure)
{
  g_autofree char *scaled = NULL;
  TrRecipeFlag *flag;
  double factor;

  if (measure->size == NULL || *measure->size->why == '\0' || isnan (measure->number) || measure->kind < TR_MEASURE_MEASURE ||
      measure->is_bad)
    return;
  factor = g_ascii_strtod (measure->size->value, NULL);
  if (g_str_has_suffix (measure->size->value, " g"))
    {
      if (measure->unit != TR_UNIT_EGG)
        return;
      scaled = g_strdup_printf ("%g g", measure->number * factor);
    }
  else if (measure->kind == TR_MEASURE_MEASURE)
    scaled = tr_measure_dup_scaled (measure, factor);
  else
    return;
  flag = tr_recipe_line_flag (line, TR_RECIPE_FLAG_MEASURE, "%s", measure->size->why);
  tr_recipe_flag_offer (flag, TR_RECIPE_CHOOSE_AMOUNT, scaled);
}

static void
flag_bad_number (TrRecipeLine    *line,
                 const TrMeasure *measure)
{
  TrRecipeFlag *flag;

  if (!tr_is_written (measure->readings[0]))
    {
      tr_recipe_line_fail (line, "“%s” is not an amount that can be weighed.", line->amount);
      return;
    }
  flag = tr_recipe_line_flag (line, TR_RECIPE_FLAG_AMBIGUOUS, "“%s” can be read in two ways.", line->amount);
  for (guint i = 0; i < 2; i++)
    {
      g_autofree char *value = measure->unit < TR_N_UNITS
        ? g_strdup_printf ("%g %s", measure->readings[i], tr_unit_id (measure->unit))
        : g_strdup_printf ("%g g", measure->readings[i]);

      tr_recipe_flag_offer (flag, TR_RECIPE_CHOOSE_AMOUNT, value);
    }
  tr_recipe_line_fail (line, "“%s” can be read in two ways; choose one.", line->amount);
}

static void
flag_bare_number (TrRecipeLine    *line,
                  const TrMeasure *measure)
{
  g_autofree char *grams = g_strdup_printf ("%s g", line->amount);

  tr_recipe_flag_offer (tr_recipe_line_flag (line, TR_RECIPE_FLAG_BARE_NUMBER, "“%s” has no unit.", line->amount),
                        TR_RECIPE_CHOOSE_AMOUNT, grams);
  if (line->why == NULL)
    tr_recipe_line_fail (line, "“%s” has no unit; choose what it is.", line->amount);
}

static void
flag_missing (TrRecipeLine *line)
{
  TrRecipeFlag *flag = tr_recipe_line_flag (line, TR_RECIPE_FLAG_NO_AMOUNT, "No amount is written.");

  if (g_strcmp0 (line->ingredient, "egg-whole") == 0)
    tr_recipe_flag_offer (flag, TR_RECIPE_CHOOSE_AMOUNT, "1 egg");
  else if (g_strcmp0 (line->ingredient, "salt") == 0)
    tr_recipe_flag_offer (flag, TR_RECIPE_CHOOSE_AMOUNT, "1 pinch");
  tr_recipe_flag_offer (flag, TR_RECIPE_CHOOSE_LEAVE_OUT, "");
}

/* Counts of an egg by the number alone: "2 eggs" has no other unit, but "Eggs 2" has none. */
static void
count_eggs (TrRecipeLine *line,
            TrMeasure    *measure)
{
  static const struct { const char *id; TrUnit unit; } counted[] = {
    { "egg-whole", TR_UNIT_EGG }, { "egg-white", TR_UNIT_WHITE }, { "egg-yolk", TR_UNIT_YOLK },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (counted); i++)
    if (measure->kind == TR_MEASURE_BARE && !measure->is_bad && measure->number < 60 && g_strcmp0 (line->ingredient, counted[i].id) == 0)
      {
        measure->kind = TR_MEASURE_COUNT;
        measure->unit = counted[i].unit;
        g_strlcat (measure->amount, " ", sizeof measure->amount);
        g_strlcat (measure->amount, tr_unit_id (counted[i].unit), sizeof measure->amount);
      }
    else if (measure->kind == TR_MEASURE_COUNT && measure->unit == TR_UNIT_EGG && tr_is_written (measure->number) &&
             i > 0 && g_strcmp0 (line->ingredient, counted[i].id) == 0)
      {
        measure->unit = counted[i].unit;
        tr_measure_scale (measure, 1);
      }
}

static void
measure_line (TrRecipeLine *line,
              TrPhrase     *item)
{
  TrMeasure *measure = &item->measure;
  TrAmount amount;

  count_eggs (line, measure);
  g_free (line->amount);
  line->amount = g_strdup (measure->amount);
  if (item->disagrees)
    tr_recipe_line_flag (line, TR_RECIPE_FLAG_DISAGREE, "The weights that stand here differ; %s is taken.", line->amount);
  if (measure->is_range && !measure->is_bad)
    tr_recipe_line_flag (line, TR_RECIPE_FLAG_MEAN, "A range is written; its mean counts.");
  flag_size (line, measure);
  if (measure->word != NULL && measure->kind < TR_MEASURE_VAGUE)
    offer_all (tr_recipe_line_flag (line, TR_RECIPE_FLAG_MEASURE, "%s", measure->word->why), TR_RECIPE_CHOOSE_AMOUNT,
               fabs (measure->number - 473.176473) < 1e-3 ? measure->word->choices : "");
  if (measure->kind == TR_MEASURE_NONE)
    flag_missing (line);
  else if (measure->is_bad)
    flag_bad_number (line, measure);
  else if (measure->kind <= TR_MEASURE_PERCENT && !tr_amount_parse (line->amount, &amount, NULL))
    tr_recipe_line_fail (line, "“%s” is not an amount that can be weighed.", line->amount);
  else if (measure->kind == TR_MEASURE_BARE)
    flag_bare_number (line, measure);
  else if (measure->kind == TR_MEASURE_VAGUE || measure->kind == TR_MEASURE_CONTAINER)
    offer_all (tr_recipe_line_flag (line, TR_RECIPE_FLAG_VAGUE, "“%s” has no weight of its own.", line->amount),
               TR_RECIPE_CHOOSE_AMOUNT, measure->kind == TR_MEASURE_VAGUE ? measure->word->choices : "");
}

double
tr_recipe_line_weigh (const TrRecipeLine *line)
{
  const TrIngredient *ingredient = tr_builtin_find (line->ingredient);
  TrAmount amount;
  double grams;

  if (ingredient == NULL || !tr_amount_parse (line->amount, &amount, NULL) || tr_unit_is_percent (amount.parts[0].unit) ||
      !tr_ingredient_weigh (ingredient, &amount, &grams, NULL))
    return NAN;
  return grams;
}

void
tr_recipe_line_check (TrRecipeLine *line)
{
  const TrIngredient *ingredient = tr_builtin_find (line->ingredient);
  TrAmount amount;

  if (ingredient == NULL || line->why != NULL || !tr_amount_parse (line->amount, &amount, NULL) ||
      tr_unit_is_percent (amount.parts[0].unit) || !isnan (tr_recipe_line_weigh (line)))
    return;
  tr_recipe_line_flag (line, TR_RECIPE_FLAG_NO_WEIGHT, "No weight is known of %s of %s.", line->amount, ingredient->name);
}

/* "ripe starter (100 % hydration)" */
static void
read_hydration (TrRecipeLine   *line,
                const TrPhrase *item)
{
  for (guint i = item->at; i + 2 < item->end; i++)
    if (tr_tokens_get (item->tokens, i)->type == TR_TOKEN_NUMBER && tr_tokens_is_sign (item->tokens, i + 1, '%') &&
        tr_phrase_is_word (item, i + 2, "hydration") && tr_tokens_get (item->tokens, i)->value >= 30 &&
        tr_tokens_get (item->tokens, i)->value <= 300)
      line->hydration_percent = tr_tokens_get (item->tokens, i)->value;
  if (isnan (line->hydration_percent))
    tr_recipe_line_flag (line, TR_RECIPE_FLAG_HYDRATION, "Its hydration is not written; 100 %% is taken.");
}

static gboolean
says_word (const TrPhrase *item,
           const char     *word)
{
  for (guint i = item->at; i < item->end; i++)
    if (tr_phrase_is_word (item, i, word))
      return TRUE;
  return FALSE;
}

static void
place_line (TrRecipeLine   *line,
            const TrPhrase *item)
{
  guint where = item->at;
  const TrWordEntry *purpose = tr_words_find (TR_WORD_PURPOSE, item->tokens, item->at, item->extra, &where);
  gboolean is_sold_so = FALSE;
  int stage;

  /* an empty value: "vegan butter block" is how it is sold */
  if (purpose != NULL && *purpose->value == '\0')
    {
      is_sold_so = TRUE;
      purpose = tr_words_find (TR_WORD_PURPOSE, item->tokens, where + purpose->n_words, item->extra, NULL);
    }
  if (purpose == NULL)
    purpose = item->place;
  if (purpose == NULL && is_sold_so && line->stage == TR_STAGE_DOUGH)
    tr_recipe_flag_offer (tr_recipe_line_flag (line, TR_RECIPE_FLAG_STAGE, "A block may be how it is sold or what is rolled in; it is taken for the dough."),
                          TR_RECIPE_CHOOSE_STAGE, tr_stage_id (TR_STAGE_ROLL_IN));
  stage = purpose != NULL ? tr_stage_from_id (purpose->value) : -1;

  if (stage >= 0)
    {
      line->stage = (TrStage) stage;
      if (stage != TR_STAGE_PREFERMENT)
        g_clear_pointer (&line->group, g_free);
      else if (line->group == NULL && purpose == item->place)
        line->group = g_strdup (purpose->phrase);
    }
  else if (purpose != NULL)
    {
      line->is_in_dough = FALSE;
      tr_recipe_flag_offer (tr_recipe_line_flag (line, TR_RECIPE_FLAG_EXTRA, "It is for the bench or the tin and not counted in the dough."),
                            TR_RECIPE_CHOOSE_TAKE_IN, "");
    }
  if (item->extra < item->end)
    tr_recipe_line_flag (line, TR_RECIPE_FLAG_EXTRA, "What comes on top (“%s”) is not counted.",
                         tr_tokens_get (item->tokens, item->extra)->start < strlen (item->tokens->text)
                           ? item->tokens->text + tr_tokens_get (item->tokens, item->extra)->start : "");
  if (says_word (item, "divided"))
    {
      TrRecipeFlag *flag = tr_recipe_line_flag (line, TR_RECIPE_FLAG_STAGE, "It is divided; where each part goes is only in the method.");

      for (guint other = 0; other < TR_N_STAGES; other++)
        if (other != line->stage)
          tr_recipe_flag_offer (flag, TR_RECIPE_CHOOSE_STAGE, tr_stage_id ((TrStage) other));
    }
  if (says_word (item, "optional"))
    tr_recipe_flag_offer (tr_recipe_line_flag (line, TR_RECIPE_FLAG_OPTIONAL, "It is optional; it is taken in."),
                          TR_RECIPE_CHOOSE_LEAVE_OUT, "");
}

static void
read_line (const TrTokens    *tokens,
           guint              at,
           guint              end,
           const TrItemPlace *place,
           GPtrArray         *lines)
{
  TrRecipeLine *line = line_new (place);
  TrPhrase item;

  tr_phrase_read (&item, tokens, at, end);
  name_line (line, &item);
  place_line (line, &item);
  if (line->is_in_dough || item.measure.kind != TR_MEASURE_NONE)
    measure_line (line, &item);
  if (g_strcmp0 (line->ingredient, "starter-wheat") == 0)
    read_hydration (line, &item);
  /* not weighed, so that nothing has to be known of it */
  if (!line->is_in_dough)
    g_clear_pointer (&line->why, g_free);
  tr_recipe_line_check (line);
  g_ptr_array_add (lines, line);
}

static gboolean
parts_items (const TrTokens *tokens,
             guint           start,
             guint           at,
             guint           end)
{
  return (tr_phrase_is_joint (tokens, at, end) || tr_tokens_is_sign (tokens, at, ',') || tr_tokens_is_sign (tokens, at, ';')) &&
         tr_item_starts (tokens, at + 1, end) && tr_phrase_has_ingredient (tokens, start, at);
}

/* What thins an egg: "1 yolk + 1 tbsp milk". */
static gboolean
is_spoon_of_liquid (const TrRecipeLine *line)
{
  double grams = line->ingredient != NULL ? tr_recipe_line_weigh (line) : NAN;

  return grams <= 30 && (g_str_has_prefix (line->ingredient, "water") || g_str_has_prefix (line->ingredient, "milk-whole") ||
                         g_str_has_prefix (line->ingredient, "milk-skim") || g_str_has_prefix (line->ingredient, "cream-"));
}

void
tr_item_read (const TrTokens    *tokens,
              guint              at,
              guint              end,
              const TrItemPlace *place,
              GPtrArray         *lines)
{
  guint start = at, n = 1, first = lines->len;
  gboolean is_wash = FALSE;

  for (; at < end; at++)
    if (n < MAX_ITEMS && at > start && parts_items (tokens, start, at, end))
      {
        is_wash |= strcmp (tr_tokens_get (tokens, at)->word, "with") == 0;
        read_line (tokens, start, at, place, lines);
        start = at + 1;
        n++;
      }
  read_line (tokens, start, end, place, lines);
  /* What is said at an end is said of all: "egg wash: ", "…, for brushing". */
  const TrRecipeLine *last = lines->pdata[lines->len - 1];
  is_wash |= n == 2 && is_spoon_of_liquid (last);
  for (guint i = first; i < lines->len; i++)
    {
      TrRecipeLine *line = lines->pdata[i];

      if (((TrRecipeLine *) lines->pdata[first])->stage == TR_STAGE_FINISH)
        line->stage = TR_STAGE_FINISH;

      if (last->stage == TR_STAGE_FINISH && line->stage != last->stage)
        line->stage = last->stage;
      if (is_wash && line->stage == TR_STAGE_DOUGH && tr_recipe_line_get_role (line) == TR_ROLE_EGG)
        tr_recipe_flag_offer (tr_recipe_line_flag (line, TR_RECIPE_FLAG_STAGE, "It may be for brushing; the text does not say."),
                              TR_RECIPE_CHOOSE_STAGE, tr_stage_id (TR_STAGE_FINISH));
    }
}
