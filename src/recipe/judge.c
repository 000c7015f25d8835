/* judge.c: what only the whole recipe can tell of a line
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A block of butter is rolled in because the text says so: by a heading, by
 * the line itself, or by the method. Where only the method says it, the line
 * is flagged; where nothing does, it stays in the dough and rolling it in is
 * offered.
 */

#include "judge.h"

#include <math.h>
#include <string.h>

#include "count.h"
#include "item.h"

#define MAX_NOTE_TOKENS_BYTES 4000
#define MUCH_FAT 0.2             /* of the flour: more than a lean dough takes */

static gboolean
has_words (const char *text,
           TrWordKind  kind,
           const TrWordEntry **entry)
{
  g_autoptr (TrTokens) tokens = NULL;
  const TrWordEntry *found;

  if (strlen (text) > MAX_NOTE_TOKENS_BYTES)
    return FALSE;
  tokens = tr_tokens_new (text);
  found = tr_words_find (kind, tokens, 0, tokens->tokens->len, NULL);
  if (entry != NULL)
    *entry = found;
  return found != NULL;
}

static gboolean
notes_have (const TrRecipe *recipe,
            TrWordKind      kind)
{
  for (guint i = 0; i < MIN (recipe->notes->len, 400); i++)
    if (has_words (((const TrRecipeNote *) recipe->notes->pdata[i])->text, kind, NULL))
      return TRUE;
  return FALSE;
}

static void
judge_kind (TrRecipe *recipe)
{
  const TrWordEntry *entry = NULL;

  recipe->kind = TR_KIND_OTHER;
  if (has_words (recipe->title, TR_WORD_DOUGH_KIND, &entry))
    recipe->kind = (TrKind) tr_kind_from_id (entry->value);
}

static void
offer_stage (TrRecipeLine *line,
             const char   *reason,
             TrStage       other)
{
  tr_recipe_flag_offer (tr_recipe_line_flag (line, TR_RECIPE_FLAG_STAGE, "%s", reason), TR_RECIPE_CHOOSE_STAGE, tr_stage_id (other));
}

/* Percents are as good as grams for telling what is much. */
static double
size_of (const TrRecipeLine *line)
{
  TrAmount amount;
  double grams = tr_recipe_line_weigh (line);

  if (isnan (grams) && tr_amount_parse (line->amount, &amount, NULL) && tr_unit_is_percent (amount.parts[0].unit))
    return amount.parts[0].number;
  return isnan (grams) ? 0 : grams;
}

static void
judge_roll_in (TrRecipe *recipe)
{
  TrRecipeLine *biggest = NULL;
  guint n_fats = 0;
  double flour = 0;

  for (guint i = 0; i < recipe->lines->len; i++)
    {
      TrRecipeLine *line = recipe->lines->pdata[i];
      TrRole role = tr_recipe_line_get_role (line);

      if (line->stage == TR_STAGE_ROLL_IN && role == TR_ROLE_FAT)
        return;
      if (role == TR_ROLE_FLOUR)
        flour += size_of (line);
      if (line->stage != TR_STAGE_DOUGH || role != TR_ROLE_FAT || !line->is_in_dough)
        continue;
      n_fats++;
      if (biggest == NULL || size_of (line) > size_of (biggest))
        biggest = line;
    }
  if (biggest == NULL || size_of (biggest) < MUCH_FAT * flour)
    return;
  if (notes_have (recipe, TR_WORD_LAMINATE) && !(n_fats == 1 && notes_have (recipe, TR_WORD_REST_OF)))
    {
      biggest->stage = TR_STAGE_ROLL_IN;
      offer_stage (biggest, "The method laminates with it; it is taken as the roll-in.", TR_STAGE_DOUGH);
    }
  else if (n_fats > 1 || recipe->kind != TR_KIND_OTHER || has_words (recipe->title, TR_WORD_LAMINATED, NULL))
    offer_stage (biggest, "It is much and may be the roll-in; the text does not say.", TR_STAGE_ROLL_IN);
}

static gboolean
is_percent (const TrRecipeLine *line)
{
  TrAmount amount;

  return tr_amount_parse (line->amount, &amount, NULL) && tr_unit_is_percent (amount.parts[0].unit);
}

/* "Milk 3 %" among weights: a percent of the flour, or what the milk holds? */
static void
flag_lone_percents (TrRecipe *recipe)
{
  guint n_percent = 0, n_weighed = 0;

  for (guint i = 0; i < recipe->lines->len; i++)
    {
      const TrRecipeLine *line = recipe->lines->pdata[i];

      n_percent += is_percent (line) ? 1 : 0;
      n_weighed += isfinite (tr_recipe_line_weigh (line)) ? 1 : 0;
    }
  for (guint i = 0; i < recipe->lines->len && n_percent < n_weighed; i++)
    if (is_percent (recipe->lines->pdata[i]))
      tr_recipe_flag_offer (tr_recipe_line_flag (recipe->lines->pdata[i], TR_RECIPE_FLAG_MEASURE,
                                                 "The other lines are weights; this one is taken as a percent of the flour."),
                            TR_RECIPE_CHOOSE_LEAVE_OUT, "");
}

/* A preferment in percents that has its own 100 % of flour beside the dough's. */
static void
judge_percents (TrRecipe *recipe)
{
  double flour = 0;
  TrAmount amount;

  for (guint i = 0; i < recipe->lines->len; i++)
    {
      const TrRecipeLine *line = recipe->lines->pdata[i];

      if (tr_recipe_line_get_role (line) == TR_ROLE_FLOUR && line->is_in_dough && tr_amount_parse (line->amount, &amount, NULL) &&
          amount.parts[0].unit == TR_UNIT_PERCENT)
        flour += amount.parts[0].number;
    }
  for (guint i = 0; i < recipe->lines->len && flour > 101; i++)
    {
      TrRecipeLine *line = recipe->lines->pdata[i];

      if (line->stage == TR_STAGE_PREFERMENT && is_percent (line))
        tr_recipe_line_flag (line, TR_RECIPE_FLAG_MEASURE, "It looks like a percent of the preferment's own flour; it is taken as one of all the flour.");
    }
  if (flour > 101)
    g_ptr_array_add (recipe->remarks, g_strdup_printf ("The flours add up to %g %%: some percents are of a preferment's own flour and have to be written as weights or of the whole flour.", flour));
}

/* A cup is 237 ml in the United States and 250 ml where metric cups are sold,
 * where a tablespoon may be 20 ml: offered where the text sounds like it. */
static void
offer_region (TrRecipe *recipe,
              TrUnit    unit,
              double    factor,
              const char *named,
              const char *reason)
{
  for (guint i = 0; i < recipe->lines->len; i++)
    {
      TrRecipeLine *line = recipe->lines->pdata[i];
      TrAmount amount;
      char number[48];
      g_autofree char *other = NULL;

      if (line->ingredient == NULL || !tr_amount_parse (line->amount, &amount, NULL) || amount.n_parts != 1 || amount.parts[0].unit != unit)
        continue;
      tr_count_print (amount.parts[0].number * factor, number, sizeof number);
      other = g_strdup_printf ("%s %s", number, named);
      tr_recipe_flag_offer (tr_recipe_line_flag (line, TR_RECIPE_FLAG_MEASURE, "%s", reason), TR_RECIPE_CHOOSE_AMOUNT, other);
    }
}

static gboolean
sounds_like (const TrRecipe *recipe,
             TrWordKind      region)
{
  if (has_words (recipe->title, region, NULL) || notes_have (recipe, region))
    return TRUE;
  for (guint i = 0; i < recipe->lines->len; i++)
    if (has_words (tr_recipe_get_line (recipe, i)->text, region, NULL))
      return TRUE;
  return FALSE;
}

static void
judge_region (TrRecipe *recipe)
{
  if (sounds_like (recipe, TR_WORD_REGION))
    {
      offer_region (recipe, TR_UNIT_CUP, 1, tr_unit_id (TR_UNIT_CUP_METRIC), "A US cup of 237 ml is taken; a metric cup has 250 ml.");
      offer_region (recipe, TR_UNIT_FLOZ, 28.4130625, "ml", "A US fluid ounce of 29.6 ml is taken; a British one has 28.4 ml.");
    }
  if (sounds_like (recipe, TR_WORD_TABLESPOON_REGION))
    offer_region (recipe, TR_UNIT_TBSP, 20, "ml", "A tablespoon of 15 ml is taken; an Australian one has 20 ml.");
}

/* What the amounts cannot be worked out from. */
static void
judge_anchor (TrRecipe *recipe)
{
  guint n_percents = 0, n_others = 0, n_flours = 0;

  for (guint i = 0; i < recipe->lines->len; i++)
    {
      const TrRecipeLine *line = recipe->lines->pdata[i];

      if (!line->is_in_dough)
        continue;
      n_flours += tr_recipe_line_get_role (line) == TR_ROLE_FLOUR || tr_recipe_line_get_role (line) == TR_ROLE_STARTER ? 1 : 0;
      n_percents += is_percent (line) ? 1 : 0;
      n_others += isfinite (tr_recipe_line_weigh (line)) ? 1 : 0;
    }
  if (n_flours == 0)
    g_ptr_array_add (recipe->remarks, g_strdup (n_percents > 0 ? "No flour is understood, and the percents are of the flour: nothing says how much they are."
                                                : "No flour is understood; nothing can be said in per cent of it."));
  else if (n_percents > 0 && n_others == 0)
    g_ptr_array_add (recipe->remarks, g_strdup ("All amounts are percents of the flour and no weight is written: give the batch a weight."));
}

void
tr_recipe_judge (TrRecipe *recipe)
{
  judge_kind (recipe);
  judge_roll_in (recipe);
  flag_lone_percents (recipe);
  judge_percents (recipe);
  judge_region (recipe);
  judge_anchor (recipe);
}
