/* recipe.c: a recipe as text, understood line by line
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "recipe.h"

#include <math.h>
#include <string.h>

#include "item.h"
#include "judge.h"
#include "sections.h"
#include "source.h"

static void
flag_free (TrRecipeFlag *flag)
{
  for (guint i = 0; i < flag->choices->len; i++)
    {
      TrRecipeChoice *choice = flag->choices->pdata[i];

      g_free (choice->value);
      g_free (choice);
    }
  g_ptr_array_unref (flag->choices);
  g_free (flag->reason);
  g_free (flag);
}

void
tr_recipe_line_free (TrRecipeLine *line)
{
  g_ptr_array_foreach (line->flags, (GFunc) (void (*) (void)) flag_free, NULL);
  g_ptr_array_unref (line->flags);
  g_free (line->text);
  g_free (line->group);
  g_free (line->ingredient);
  g_free (line->name);
  g_free (line->amount);
  g_free (line->why);
  g_free (line);
}

static void
note_free (TrRecipeNote *note)
{
  g_free (note->text);
  g_free (note);
}

void
tr_recipe_free (TrRecipe *recipe)
{
  if (recipe == NULL)
    return;
  g_free (recipe->title);
  g_free (recipe->yield);
  g_ptr_array_unref (recipe->lines);
  g_ptr_array_unref (recipe->notes);
  g_ptr_array_unref (recipe->others);
  g_ptr_array_unref (recipe->remarks);
  g_free (recipe);
}

static TrRecipe *
recipe_new (TrRecipeSourceKind source)
{
  TrRecipe *recipe = g_new0 (TrRecipe, 1);

  recipe->source = source;
  recipe->title = g_strdup ("");
  recipe->lines = g_ptr_array_new_with_free_func ((GDestroyNotify) tr_recipe_line_free);
  recipe->notes = g_ptr_array_new_with_free_func ((GDestroyNotify) note_free);
  recipe->others = g_ptr_array_new_with_free_func (g_free);
  recipe->remarks = g_ptr_array_new_with_free_func (g_free);
  return recipe;
}

static void
append_all (GPtrArray *to,
            GPtrArray *from)
{
  for (guint i = 0; i < from->len; i++)
    g_ptr_array_add (to, g_strdup (from->pdata[i]));
}

static gboolean
is_bare_number (const char *text)
{
  return text[strspn (text, "0123456789. ")] == '\0';
}

/* ["8", "8 servings"]: the number alone says less than the other. */
static void
read_yields (TrRecipe        *recipe,
             const GPtrArray *yields)
{
  gboolean has_words = FALSE;

  for (guint i = 0; i < yields->len; i++)
    has_words |= !is_bare_number (yields->pdata[i]);
  for (guint i = 0; i < yields->len; i++)
    if (!has_words || !is_bare_number (yields->pdata[i]))
      tr_sections_read_yield (recipe, yields->pdata[i]);
}

static TrRecipe *
read_stated (const TrSource *source,
             guint           index)
{
  const TrStated *stated = source->stated->pdata[index];
  TrRecipe *recipe = recipe_new (stated->kind);
  GString *list = g_string_new (NULL);

  g_free (recipe->title);
  recipe->title = g_strdup (stated->title);
  for (guint i = 0; i < stated->ingredients->len; i++)
    g_string_append_printf (list, "%s\n", (const char *) stated->ingredients->pdata[i]);
  tr_sections_read (recipe, list->str, TRUE);
  g_string_free (list, TRUE);
  read_yields (recipe, stated->yields);
  for (guint i = 0; i < stated->steps->len; i++)
    tr_recipe_note (recipe, 0, stated->steps->pdata[i]);
  for (guint i = 0; i < source->stated->len; i++)
    if (i != index)
      g_ptr_array_add (recipe->others, g_strdup (((const TrStated *) source->stated->pdata[i])->title));
  return recipe;
}

static TrRecipe *
read_plain (const TrSource *source)
{
  TrRecipe *recipe = recipe_new (source->is_page ? TR_RECIPE_FROM_PAGE_TEXT : TR_RECIPE_FROM_TEXT);

  if (source->heading != NULL)
    tr_set_text (&recipe->title, source->heading);
  tr_sections_read (recipe, source->text, FALSE);
  if (source->is_page)
    g_ptr_array_add (recipe->remarks, g_strdup ("The page states no recipe for machines; its readable text was read."));
  return recipe;
}

static void
name_from_hint (TrRecipe   *recipe,
                const char *hint)
{
  g_autofree char *base = NULL;
  char *dot;

  if (*recipe->title != '\0' || hint == NULL || *hint == '\0' || g_str_equal (hint, "-"))
    return;
  base = g_path_get_basename (hint);
  dot = strrchr (base, '.');
  if (dot != NULL && dot > base)
    *dot = '\0';
  g_free (recipe->title);
  recipe->title = g_utf8_make_valid (base, -1);
}

TrRecipe *
tr_recipe_read_nth (const char  *bytes,
                    gsize        length,
                    const char  *name_hint,
                    guint        index,
                    GError     **error)
{
  g_autoptr (TrSource) source = NULL;
  g_autoptr (TrRecipe) recipe = NULL;

  g_return_val_if_fail (bytes != NULL || length == 0, NULL);

  source = tr_source_read (bytes, length, error);
  if (source == NULL)
    return NULL;
  if (index >= MAX (source->stated->len, 1))
    {
      g_set_error (error, TR_RECIPE_ERROR, TR_RECIPE_ERROR_NO_RECIPE, "There is no recipe number %u; the page has %u.",
                   index + 1, MAX (source->stated->len, 1));
      return NULL;
    }
  recipe = source->stated->len > 0 ? read_stated (source, index) : read_plain (source);
  append_all (recipe->remarks, source->remarks);
  if (recipe->lines->len == 0)
    {
      g_set_error (error, TR_RECIPE_ERROR, TR_RECIPE_ERROR_NO_RECIPE, source->is_page
                   ? "No recipe was found in this page: no line of it is an amount and an ingredient."
                   : "No recipe was found: no line is an amount and an ingredient, such as “500 g bread flour”.");
      return NULL;
    }
  name_from_hint (recipe, name_hint);
  tr_recipe_judge (recipe);
  return g_steal_pointer (&recipe);
}

TrRecipe *
tr_recipe_read (const char  *bytes,
                gsize        length,
                const char  *name_hint,
                GError     **error)
{
  return tr_recipe_read_nth (bytes, length, name_hint, 0, error);
}

const TrRecipeLine *
tr_recipe_get_line (const TrRecipe *recipe,
                    guint           index)
{
  return g_ptr_array_index (recipe->lines, index);
}

TrRole
tr_recipe_line_get_role (const TrRecipeLine *line)
{
  const TrIngredient *ingredient = line->ingredient != NULL ? tr_builtin_find (line->ingredient) : NULL;

  return ingredient != NULL ? ingredient->role : TR_ROLE_OTHER;
}

guint
tr_recipe_count_understood (const TrRecipe *recipe,
                            guint          *n_lines)
{
  guint n = 0;

  for (guint i = 0; i < recipe->lines->len; i++)
    n += tr_recipe_get_line (recipe, i)->why == NULL ? 1 : 0;
  if (n_lines != NULL)
    *n_lines = recipe->lines->len;
  return n;
}

/* Review */

static TrRecipeLine *
own_line (TrRecipe *recipe,
          guint     index)
{
  return g_ptr_array_index (recipe->lines, index);
}

/* What a change may have cured: a line is understood when its ingredient is
 * known and its amount, if there is one, can be read. */
static void
understand_again (TrRecipeLine *line)
{
  TrAmount amount;

  if (line->ingredient == NULL)
    tr_recipe_line_fail (line, "“%s” is not in the table of ingredients.", line->name);
  else if (*line->amount != '\0' && !tr_amount_parse (line->amount, &amount, NULL))
    tr_recipe_line_fail (line, "“%s” is not an amount that can be weighed.", line->amount);
  else
    g_clear_pointer (&line->why, g_free);
}

void
tr_recipe_set_ingredient (TrRecipe   *recipe,
                          guint       line,
                          const char *ingredient)
{
  g_return_if_fail (line < recipe->lines->len);
  g_return_if_fail (ingredient == NULL || tr_builtin_find (ingredient) != NULL);

  tr_set_text (&own_line (recipe, line)->ingredient, ingredient);
  understand_again (own_line (recipe, line));
}

void
tr_recipe_set_amount (TrRecipe   *recipe,
                      guint       line,
                      const char *amount)
{
  g_return_if_fail (line < recipe->lines->len && amount != NULL);
  g_return_if_fail (strlen (amount) <= TR_MAX_AMOUNT_BYTES);

  tr_set_text (&own_line (recipe, line)->amount, amount);
  understand_again (own_line (recipe, line));
}

void
tr_recipe_set_stage (TrRecipe *recipe,
                     guint     line,
                     TrStage   stage)
{
  g_return_if_fail (line < recipe->lines->len && stage < TR_N_STAGES);

  own_line (recipe, line)->stage = stage;
  if (stage != TR_STAGE_PREFERMENT)
    g_clear_pointer (&own_line (recipe, line)->group, g_free);
}

void
tr_recipe_set_in_dough (TrRecipe *recipe,
                        guint     line,
                        gboolean  is_in_dough)
{
  g_return_if_fail (line < recipe->lines->len);

  own_line (recipe, line)->is_in_dough = is_in_dough;
}

void
tr_recipe_choose (TrRecipe *recipe,
                  guint     line,
                  guint     flag,
                  guint     choice)
{
  TrRecipeFlag *taken_flag;
  const TrRecipeChoice *taken;

  g_return_if_fail (line < recipe->lines->len && flag < own_line (recipe, line)->flags->len);
  taken_flag = own_line (recipe, line)->flags->pdata[flag];
  g_return_if_fail (choice < taken_flag->choices->len);

  taken = taken_flag->choices->pdata[choice];
  taken_flag->is_settled = TRUE;
  switch (taken->kind)
    {
    case TR_RECIPE_CHOOSE_INGREDIENT: tr_recipe_set_ingredient (recipe, line, taken->value); break;
    case TR_RECIPE_CHOOSE_AMOUNT: tr_recipe_set_amount (recipe, line, taken->value); break;
    case TR_RECIPE_CHOOSE_STAGE: tr_recipe_set_stage (recipe, line, (TrStage) tr_stage_from_id (taken->value)); break;
    case TR_RECIPE_CHOOSE_LEAVE_OUT: tr_recipe_set_in_dough (recipe, line, FALSE); break;
    case TR_RECIPE_CHOOSE_TAKE_IN: tr_recipe_set_in_dough (recipe, line, TRUE); break;
    default: g_return_if_reached ();
    }
}

char *
tr_recipe_choice_dup_label (const TrRecipeChoice *choice)
{
  const TrIngredient *ingredient;

  switch (choice->kind)
    {
    case TR_RECIPE_CHOOSE_INGREDIENT:
      ingredient = tr_builtin_find (choice->value);
      return g_strdup (ingredient != NULL ? ingredient->name : choice->value);
    case TR_RECIPE_CHOOSE_LEAVE_OUT: return g_strdup ("leave it out");
    case TR_RECIPE_CHOOSE_TAKE_IN: return g_strdup ("count it");
    case TR_RECIPE_CHOOSE_AMOUNT:
    case TR_RECIPE_CHOOSE_STAGE:
    default: return g_strdup (choice->value);
    }
}

/* The dough */

static char *
dup_notes (const TrRecipe *recipe)
{
  GString *notes = g_string_new (NULL);

  for (guint i = 0; i < recipe->lines->len; i++)
    if (!tr_recipe_get_line (recipe, i)->is_in_dough)
      g_string_append_printf (notes, "%s\n", tr_recipe_get_line (recipe, i)->text);
  for (guint i = 0; i < recipe->notes->len; i++)
    g_string_append_printf (notes, "%s\n", ((const TrRecipeNote *) recipe->notes->pdata[i])->text);
  if (notes->len > 0)
    g_string_truncate (notes, notes->len - 1);
  return g_string_free (notes, FALSE);
}

static void
add_line (TrDough            *dough,
          const TrRecipeLine *from)
{
  TrLine *line = tr_line_new (from->stage, from->ingredient, from->amount);

  line->group = g_strdup (from->group);
  line->text = g_strdup (from->text);
  line->hydration_percent = from->hydration_percent;
  g_ptr_array_add (dough->lines, line);
}

TrDough *
tr_recipe_make_dough (const TrRecipe *recipe,
                      const char     *id)
{
  TrDough *dough = tr_dough_new (id);
  gboolean has_roll_in = FALSE;

  tr_set_text (&dough->name, *recipe->title != '\0' ? recipe->title : "Recipe");
  dough->kind = recipe->kind;
  g_free (dough->notes);
  dough->notes = dup_notes (recipe);
  for (guint i = 0; i < recipe->lines->len; i++)
    {
      const TrRecipeLine *line = tr_recipe_get_line (recipe, i);

      has_roll_in |= line->stage == TR_STAGE_ROLL_IN;
      if (line->is_in_dough)
        add_line (dough, line);
    }
  dough->pieces_written = recipe->pieces;
  dough->batch_by = TR_BATCH_WRITTEN;
  dough->batch_value = recipe->pieces;
  if (has_roll_in)
    dough->lock_in = tr_lock_in_new ();
  return dough;
}

TrTrial *
tr_recipe_make_trial (const TrRecipe *recipe)
{
  TrTrial *trial = tr_trial_new ();

  tr_set_text (&trial->title, recipe->title);
  g_ptr_array_add (trial->doughs, tr_recipe_make_dough (recipe, "d1"));
  return trial;
}

/* The account */

static void
describe_flags (GString            *out,
                const TrRecipeLine *line)
{
  for (guint i = 0; i < line->flags->len; i++)
    {
      const TrRecipeFlag *flag = line->flags->pdata[i];

      g_string_append_printf (out, "      ? %s", flag->reason);
      for (guint k = 0; k < flag->choices->len; k++)
        {
          g_autofree char *label = tr_recipe_choice_dup_label (flag->choices->pdata[k]);

          g_string_append_printf (out, "%s%s", k == 0 ? " Or: " : "; ", label);
        }
      g_string_append_c (out, '\n');
    }
}

static void
describe_line (GString            *out,
               const TrRecipeLine *line)
{
  const TrIngredient *ingredient = line->ingredient != NULL ? tr_builtin_find (line->ingredient) : NULL;

  g_string_append_printf (out, "%4u  %s\n      = %s", line->number, line->text, line->is_in_dough ? tr_stage_id (line->stage) : "notes");
  if (line->group != NULL)
    g_string_append_printf (out, " (%s)", line->group);
  g_string_append_printf (out, ": %s%s%s\n", line->amount, *line->amount != '\0' ? " " : "", ingredient != NULL ? ingredient->name : "?");
  if (line->why != NULL)
    g_string_append_printf (out, "      ! Not understood: %s\n", line->why);
  describe_flags (out, line);
}

char *
tr_recipe_describe (const TrRecipe *recipe)
{
  GString *out = g_string_new (NULL);
  guint n_lines, n = tr_recipe_count_understood (recipe, &n_lines);

  g_string_append_printf (out, "%s\n", *recipe->title != '\0' ? recipe->title : "(no title)");
  if (recipe->pieces > 0)
    g_string_append_printf (out, "Pieces: %d (“%s”)\n", recipe->pieces, recipe->yield);
  else if (recipe->yield != NULL)
    g_string_append_printf (out, "Yield, not understood as pieces: %s\n", recipe->yield);
  for (guint i = 0; i < recipe->lines->len; i++)
    describe_line (out, tr_recipe_get_line (recipe, i));
  for (guint i = 0; i < recipe->remarks->len; i++)
    g_string_append_printf (out, "Remark: %s\n", (const char *) recipe->remarks->pdata[i]);
  for (guint i = 0; i < recipe->others->len; i++)
    g_string_append_printf (out, "Another recipe of this page was not read: %s\n", (const char *) recipe->others->pdata[i]);
  g_string_append_printf (out, "Notes kept: %u. Understood: %u of %u lines, %.1f %%.\n", recipe->notes->len, n, n_lines,
                          n_lines > 0 ? 100.0 * n / n_lines : 0.0);
  return g_string_free (out, FALSE);
}
