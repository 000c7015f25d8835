/* sections.c: which line of a text is what
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A line is a heading (of a section, of a stage), a yield, an ingredient or
 * something to keep as a note. Each is looked at once, with what came before
 * it as the only memory.
 */

#include "sections.h"

#include <math.h>
#include <string.h>

#include "columns.h"
#include "count.h"
#include "item.h"
#include "line.h"
#include "phrase.h"

#define MAX_TITLE_BYTES 120
#define MAX_HEADING_WORDS 9

typedef enum { IN_PREAMBLE, IN_INGREDIENTS, IN_METHOD, IN_OTHER } Section;

typedef struct {
  TrRecipe *recipe;
  Section section;
  TrStage stage;
  char *group;
  char *unknown_heading;         /* whose lines are taken for the dough; NULL: none */
  char *held;                    /* an amount alone on its line */
  guint held_number, number;
  gboolean has_heading, has_items, after_item, is_full;
  TrColumns columns;             /* of the table that is read */
} Reader;

void
tr_recipe_note (TrRecipe   *recipe,
                guint       number,
                const char *text)
{
  TrRecipeNote *note = g_new0 (TrRecipeNote, 1);

  note->number = number;
  note->text = g_strdup (text);
  g_ptr_array_add (recipe->notes, note);
}

static guint
n_tokens (const TrTokens *tokens)
{
  return tokens->tokens->len;
}

static gboolean
take_yield (Reader         *reader,
            const TrTokens *tokens,
            guint           at,
            const char     *line)
{
  guint next, end = n_tokens (tokens);

  if (tr_yield_is_bare (tokens, at, end))
    {
      tr_sections_read_yield (reader->recipe, line);
      tr_recipe_note (reader->recipe, reader->number, line);
      return TRUE;
    }
  if (end - at > 16 || tr_words_match (TR_WORD_YIELD, tokens, at, end, &next) == NULL)
    return FALSE;
  if (next < end && !tr_tokens_is_sign (tokens, next, ':') && !tr_tokens_is_sign (tokens, next, '-') &&
      !tr_tokens_is_sign (tokens, next, '|') && tr_tokens_get (tokens, next)->type != TR_TOKEN_NUMBER &&
      !tr_words_has (TR_WORD_NUMBER, tokens, next, end) && !tr_words_has (TR_WORD_APPROX, tokens, next, end))
    return FALSE;
  tr_sections_read_yield (reader->recipe, line);
  tr_recipe_note (reader->recipe, reader->number, line);
  return TRUE;
}

/* Headings */

static gboolean
take_section (Reader         *reader,
              const TrTokens *tokens,
              guint           at,
              const char     *line)
{
  guint end = tr_line_skip_end (tokens, at), next;
  const TrWordEntry *entry = tr_words_match (TR_WORD_SECTION, tokens, at, end, &next);
  gboolean is_bracket;

  if (entry == NULL)
    return FALSE;
  is_bracket = tr_tokens_is_sign (tokens, next, '(');
  /* "Step 1" */
  if (next + 1 == end && tr_tokens_get (tokens, next)->type == TR_TOKEN_NUMBER && g_str_equal (entry->phrase, "step"))
    next = end;
  if (next != end && !is_bracket)
    return FALSE;
  reader->section = g_str_equal (entry->value, "ingredients") ? IN_INGREDIENTS
                    : g_str_equal (entry->value, "method") ? IN_METHOD : IN_OTHER;
  if (reader->section == IN_INGREDIENTS && !reader->has_items)
    reader->stage = TR_STAGE_DOUGH;
  reader->after_item = FALSE;
  tr_recipe_note (reader->recipe, reader->number, line);
  return TRUE;
}

static void
set_stage (Reader     *reader,
           TrStage     stage,
           const char *group)
{
  reader->stage = stage;
  g_free (reader->group);
  reader->group = g_strdup (group);
  g_clear_pointer (&reader->unknown_heading, g_free);
}

/* "Butter", alone on its line in a recipe that has headings. */
static gboolean
take_butter_heading (Reader         *reader,
                     const TrTokens *tokens,
                     guint           at,
                     const char     *line)
{
  guint end = tr_line_skip_end (tokens, at), from = tr_line_skip_for_the (tokens, at, end);

  if (!reader->has_items || !reader->has_heading || reader->section == IN_METHOD || from + 1 != end ||
      !tr_line_has_word (tokens, from, end, "butter"))
    return FALSE;
  set_stage (reader, TR_STAGE_ROLL_IN, NULL);
  reader->unknown_heading = g_strdup (line);
  reader->after_item = TRUE;
  tr_recipe_note (reader->recipe, reader->number, line);
  return TRUE;
}

static gboolean
take_stage_heading (Reader         *reader,
                    const TrTokens *tokens,
                    guint           at,
                    const char     *line)
{
  guint end = tr_line_skip_end (tokens, at), from = tr_line_skip_for_the (tokens, at, end);
  gboolean has_colon = FALSE;
  const TrWordEntry *stage;

  for (guint i = end; i < n_tokens (tokens); i++)
    has_colon |= tr_tokens_is_sign (tokens, i, ':');
  if (from >= end || end - from > MAX_HEADING_WORDS || tr_tokens_get (tokens, from)->type == TR_TOKEN_NUMBER ||
      tr_item_starts (tokens, from, end))
    return FALSE;
  if (!has_colon && !tr_line_is_whole_stage (tokens, from, end) && !(from > at && tr_line_has_word (tokens, at, end, "for")))
    return FALSE;
  stage = tr_line_find_stage (tokens, from, end);
  if (stage == NULL && (reader->section == IN_METHOD || (!has_colon && from == at)))
    return FALSE;
  if (stage != NULL && !has_colon && reader->section == IN_PREAMBLE && !reader->has_items && *reader->recipe->title == '\0' &&
      (g_str_equal (stage->value, "dough") || g_str_equal (stage->value, "finish")))
    return FALSE;
  set_stage (reader, stage != NULL ? (TrStage) tr_stage_from_id (stage->value) : TR_STAGE_DOUGH,
             stage != NULL && g_str_equal (stage->value, "preferment") ? stage->phrase : NULL);
  if (stage == NULL)
    reader->unknown_heading = g_strdup (line);
  reader->has_heading = TRUE;
  if (reader->section != IN_METHOD)
    reader->section = reader->section == IN_OTHER ? IN_INGREDIENTS : reader->section;
  reader->after_item = TRUE;
  tr_recipe_note (reader->recipe, reader->number, line);
  return TRUE;
}

/* Ingredients */

static void
flag_unknown_heading (Reader       *reader,
                      TrRecipeLine *line)
{
  TrRecipeFlag *flag;

  if (reader->unknown_heading == NULL || line->stage != reader->stage)
    return;
  flag = reader->stage == TR_STAGE_DOUGH
    ? tr_recipe_line_flag (line, TR_RECIPE_FLAG_STAGE, "What “%s” is was not understood; it is taken for the dough.", reader->unknown_heading)
    : tr_recipe_line_flag (line, TR_RECIPE_FLAG_STAGE, "It stands below “%s”; it is taken for the roll-in.", reader->unknown_heading);
  for (guint stage = 0; stage < TR_N_STAGES; stage++)
    if (stage != reader->stage)
      tr_recipe_flag_offer (flag, TR_RECIPE_CHOOSE_STAGE, tr_stage_id ((TrStage) stage));
}

static void
take_item (Reader         *reader,
           const TrTokens *tokens,
           guint           at,
           const char     *line)
{
  TrItemPlace place = { line, reader->number, reader->stage, reader->group };
  GPtrArray *lines = reader->recipe->lines;
  guint first = lines->len;

  tr_item_read (tokens, at, n_tokens (tokens), &place, lines);
  for (guint i = first; i < lines->len; i++)
    flag_unknown_heading (reader, lines->pdata[i]);
  reader->has_items = reader->after_item = TRUE;
  if (lines->len < TR_MAX_LINES)
    return;
  /* more than a dough can hold: what is over stays a note */
  if (lines->len > TR_MAX_LINES)
    {
      g_ptr_array_set_size (lines, (int) first);
      tr_recipe_note (reader->recipe, reader->number, line);
    }
  reader->is_full = TRUE;
  g_ptr_array_add (reader->recipe->remarks,
                   g_strdup_printf ("A dough has at most %d lines; what follows line %u is kept in the notes.", TR_MAX_LINES, reader->number));
}

/* "Roll-in: 250 g butter", "Poolish: 100 g flour, 100 g water" */
static gboolean
take_labelled (Reader         *reader,
               const TrTokens *tokens,
               guint           at,
               const char     *line)
{
  guint end = n_tokens (tokens), from = tr_line_skip_for_the (tokens, at, end), next;
  const TrWordEntry *stage = tr_words_match (TR_WORD_STAGE, tokens, from, end, &next);
  TrStage before = reader->stage;
  g_autofree char *group = g_strdup (reader->group);
  guint n = reader->recipe->lines->len;

  if (stage == NULL || !(tr_tokens_is_sign (tokens, next, ':') || tr_tokens_is_sign (tokens, next, '-') || tr_tokens_is_sign (tokens, next, '|')) ||
      next + 1 >= end || !tr_item_starts (tokens, next + 1, end))
    return FALSE;
  set_stage (reader, (TrStage) tr_stage_from_id (stage->value), g_str_equal (stage->value, "preferment") ? stage->phrase : NULL);
  take_item (reader, tokens, next + 1, line);
  if (reader->recipe->lines->len - n > 1 || reader->stage >= TR_STAGE_ROLL_IN)
    set_stage (reader, before, group);
  return TRUE;
}

/* "Ingredients: 500 g flour, 10 g salt." */
static gboolean
take_list (Reader         *reader,
           const TrTokens *tokens,
           guint           at,
           const char     *line)
{
  guint next;
  const TrWordEntry *entry = tr_words_match (TR_WORD_SECTION, tokens, at, n_tokens (tokens), &next);

  if (entry == NULL || !g_str_equal (entry->value, "ingredients") || !tr_tokens_is_sign (tokens, next, ':') ||
      !tr_item_starts (tokens, next + 1, n_tokens (tokens)))
    return FALSE;
  take_item (reader, tokens, next + 1, line);
  return TRUE;
}

/* "Ingredient | Weight (g) | %": the units of bare numbers below. */
static gboolean
take_columns (Reader         *reader,
              const TrTokens *tokens,
              const char     *line)
{
  g_autofree char *row = tr_columns_dup_spaced (line);
  g_autoptr (TrTokens) spaced = row != NULL ? tr_tokens_new (row) : NULL;
  const TrWordEntry *stage;

  if (spaced != NULL && tr_columns_read (&reader->columns, spaced, FALSE))
    reader->columns.is_spaced = TRUE;
  else if (!tr_columns_read (&reader->columns, tokens, *line == '|'))
    return FALSE;
  stage = reader->columns.heading;
  if (stage != NULL)
    set_stage (reader, (TrStage) tr_stage_from_id (stage->value), g_str_equal (stage->value, "preferment") ? stage->phrase : NULL);
  reader->after_item = TRUE;
  tr_recipe_note (reader->recipe, reader->number, line);
  return TRUE;
}

static void
take_cell (Reader           *reader,
           const TrWordEntry *stage,
           const char       *item,
           const char       *line)
{
  g_autoptr (TrTokens) tokens = tr_tokens_new (item);
  g_autofree char *group = g_strdup (reader->group);
  TrStage before = reader->stage;

  set_stage (reader, (TrStage) tr_stage_from_id (stage->value), g_str_equal (stage->value, "preferment") ? stage->phrase : NULL);
  take_item (reader, tokens, 0, line);
  set_stage (reader, before, group);
}

/* A row below "total formula", "poolish", "final dough": an ingredient once a
 * stage; the total says the same again. A preferment's own row is what its
 * column holds. */
static gboolean
take_row (Reader         *reader,
          const TrTokens *tokens,
          const char     *row,
          const char     *line)
{
  g_auto (GStrv) cells = NULL;
  gboolean has_any = FALSE;
  guint next;

  if (!reader->columns.has_stages || strpbrk (row, "\t|") == NULL || tr_line_is_label (tokens, 0))
    return FALSE;
  cells = tr_columns_split (row);
  if (cells[0] == NULL || strpbrk (cells[0], "0123456789") != NULL || *cells[0] == '\0')
    return FALSE;
  if (tr_words_match (TR_WORD_STAGE, tokens, 0, n_tokens (tokens), &next) != NULL && tr_tokens_is_sign (tokens, next, '|'))
    {
      tr_recipe_note (reader->recipe, reader->number, line);
      return TRUE;
    }
  for (guint i = 1; cells[i] != NULL && i < TR_MAX_COLUMNS && !reader->is_full; i++)
    {
      const TrColumn *column = &reader->columns.columns[i];
      g_autofree char *cell = tr_columns_dup_cell (column, cells[i]);
      g_autofree char *item = g_strdup_printf ("%s | %s", cells[0], cell);

      if (column->stage == NULL || column->is_total || strpbrk (cell, "123456789") == NULL)
        continue;
      take_cell (reader, column->stage, item, line);
      has_any = TRUE;
    }
  return has_any;
}

static gboolean
take_title (Reader         *reader,
            const TrTokens *tokens,
            guint           at,
            const char     *line)
{
  guint end = n_tokens (tokens);
  TrRecipe *recipe = reader->recipe;

  if (*recipe->title != '\0' || reader->has_items || reader->section != IN_PREAMBLE || strlen (line) > MAX_TITLE_BYTES || at >= end ||
      tr_line_is_prose (tokens, line, end))
    return FALSE;
  if ((tr_line_has_word (tokens, at, end, "title") || tr_line_has_word (tokens, at, end, "recipe")) && tr_tokens_is_sign (tokens, at + 1, ':') && at + 2 < end)
    at += 2;
  g_free (recipe->title);
  recipe->title = g_strdup (line + strspn (line, "#*=-_> "));
  if (at >= 2 && strchr (recipe->title, ':') != NULL && tr_tokens_is_sign (tokens, at - 1, ':'))
    {
      char *rest = g_strstrip (g_strdup (strchr (recipe->title, ':') + 1));

      g_free (recipe->title);
      recipe->title = rest;
    }
  g_strchomp (g_strdelimit (recipe->title, "*#=", ' '));
  tr_recipe_note (recipe, reader->number, line);
  return TRUE;
}

static gboolean
has_number (const TrTokens *tokens,
            guint           at)
{
  for (; at < n_tokens (tokens); at++)
    if (tr_tokens_get (tokens, at)->type == TR_TOKEN_NUMBER)
      return TRUE;
  return FALSE;
}

/* Below the method only what follows a heading of a stage or another
 * ingredient is one. */
static gboolean
may_be_item (const Reader   *reader,
             const TrTokens *tokens,
             guint           at,
             const char     *line)
{
  guint end = n_tokens (tokens);

  if (reader->is_full || at >= end)
    return FALSE;
  if (tr_line_is_prose (tokens, line, end) && !(end < 30 && tr_item_starts (tokens, at, end) && reader->section == IN_INGREDIENTS))
    return FALSE;
  switch (reader->section)
    {
    case IN_INGREDIENTS:
      return TRUE;
    case IN_PREAMBLE:
      return tr_item_starts (tokens, at, end) ||
             (reader->has_items && reader->after_item && end - at <= 12 &&
              (tr_tokens_get (tokens, at)->type == TR_TOKEN_NUMBER || tr_item_is_plain (tokens, at, end) || end - at <= 4 ||
                /* "juice of half a lemon" */
                (tr_line_has_word (tokens, at + 1, end, "of") && tr_phrase_has_ingredient (tokens, at, end)))) ||
             (end - at <= 14 && has_number (tokens, at) && tr_item_is_plain (tokens, at, end));
    case IN_METHOD:
    case IN_OTHER:
    default:
      return reader->after_item && end - at <= 16 && tr_item_starts (tokens, at, end);
    }
}

/* In a numbered list "1. Mix the flour" is a step, "1. 500 g flour" is not. */
static gboolean
is_step (const Reader   *reader,
         const TrTokens *tokens,
         guint           plain,
         guint           numbered)
{
  guint end = n_tokens (tokens);

  if (numbered == plain || tr_item_starts (tokens, numbered, end))
    return FALSE;
  return end - numbered > 6 || reader->section != IN_INGREDIENTS;
}

static gboolean
take_special (Reader         *reader,
              const TrTokens *tokens,
              guint           at,
              const char     *line)
{
  if (take_columns (reader, tokens, line) || take_yield (reader, tokens, at, line) ||
      take_section (reader, tokens, at, line) || take_butter_heading (reader, tokens, at, line) || take_stage_heading (reader, tokens, at, line))
    return TRUE;
  if (tr_line_is_label (tokens, at))
    {
      tr_recipe_note (reader->recipe, reader->number, line);
      return TRUE;
    }
  return FALSE;
}

static void
read_tokens (Reader         *reader,
             const TrTokens *tokens,
             const char     *line)
{
  guint plain = tr_line_skip_bullets (tokens, FALSE), at = tr_line_skip_bullets (tokens, TRUE);

  if (take_special (reader, tokens, at, line))
    return;
  if (!reader->is_full && take_list (reader, tokens, at, line))
    return;
  if (reader->section != IN_METHOD && !tr_line_is_prose (tokens, line, n_tokens (tokens)) && !reader->is_full &&
      take_labelled (reader, tokens, at, line))
    return;
  if (!is_step (reader, tokens, plain, at) && may_be_item (reader, tokens, at, line))
    {
      take_item (reader, tokens, at, line);
      return;
    }
  if (take_title (reader, tokens, at, line))
    return;
  /* an amount that is not understood does not begin the method */
  if (reader->has_items && (reader->section == IN_PREAMBLE || reader->section == IN_INGREDIENTS) && n_tokens (tokens) >= 6 &&
      !(plain == at && n_tokens (tokens) <= 10 && line[strlen (line) - 1] != '.' && tr_words_has (TR_WORD_NUMBER, tokens, at, n_tokens (tokens))))
    reader->section = IN_METHOD;
  reader->after_item = FALSE;
  tr_recipe_note (reader->recipe, reader->number, line);
}

/* An amount alone on its line belongs to the name on the next. */
static gboolean
hold_amount (Reader         *reader,
             const TrTokens *tokens,
             const char     *line)
{
  if (reader->held != NULL || reader->section == IN_METHOD || reader->section == IN_OTHER || n_tokens (tokens) > 12 ||
      !tr_item_is_bare_amount (tokens, tr_line_skip_bullets (tokens, FALSE), n_tokens (tokens)))
    return FALSE;
  reader->held = g_strdup (line);
  reader->held_number = reader->number;
  return TRUE;
}

static void
read_one (Reader     *reader,
          const char *line)
{
  g_autofree char *spaced = reader->columns.is_spaced ? tr_columns_dup_spaced (line) : NULL;
  const char *row = spaced != NULL ? spaced : line;
  g_autofree char *with_units = tr_columns_dup_line (&reader->columns, row);
  g_autofree char *joined = NULL;
  g_autoptr (TrTokens) tokens = tr_tokens_new (with_units != NULL ? with_units : row);

  if (n_tokens (tokens) == 0 || take_row (reader, tokens, row, line))
    return;
  if (hold_amount (reader, tokens, line))
    return;
  if (reader->held != NULL)
    {
      g_autofree char *held = g_steal_pointer (&reader->held);
      g_autoptr (TrTokens) both = NULL;

      joined = g_strdup_printf ("%s %s", held, line);
      both = tr_tokens_new (joined);
      if (n_tokens (tokens) <= 14 && tr_tokens_get (tokens, 0)->type != TR_TOKEN_NUMBER &&
          tr_item_starts (both, tr_line_skip_bullets (both, FALSE), n_tokens (both)))
        {
          read_tokens (reader, both, joined);
          return;
        }
      tr_recipe_note (reader->recipe, reader->held_number, held);
    }
  read_tokens (reader, tokens, line);
}

/* Long lines are prose: not even their words are looked at. */
static void
read_text_line (Reader     *reader,
                const char *line)
{
  if (*line == '\0')
    return;
  if (strlen (line) <= TR_LINE_MAX_ITEM_BYTES && !(reader->is_full))
    {
      read_one (reader, line);
      return;
    }
  if (reader->held != NULL)
    {
      tr_recipe_note (reader->recipe, reader->held_number, reader->held);
      g_clear_pointer (&reader->held, g_free);
    }
  tr_recipe_note (reader->recipe, reader->number, line);
}

/* Without blanks at its ends; an empty first cell of a row of tabs stays. */
static char *
dup_stripped (const char *start,
              gsize       length)
{
  char *line = g_strchomp (g_strndup (start, length));
  gsize n = strspn (line, " \t\v\f"), n_spaces = strspn (line, " ");
  gboolean is_row = line[n_spaces] == '\t' && strchr (line + n, '\t') != NULL;

  memmove (line, line + (is_row ? n_spaces : n), strlen (line) + 1 - (is_row ? n_spaces : n));
  return line;
}

void
tr_sections_read (TrRecipe   *recipe,
                  const char *text,
                  gboolean    is_list)
{
  Reader reader = { .recipe = recipe, .stage = TR_STAGE_DOUGH, .section = is_list ? IN_INGREDIENTS : IN_PREAMBLE };

  for (const char *start = text; *start != '\0';)
    {
      gsize length = strcspn (start, "\n\r");
      g_autofree char *line = dup_stripped (start, length);

      reader.number++;
      if (is_list && reader.section != IN_INGREDIENTS)
        reader.section = IN_INGREDIENTS;
      read_text_line (&reader, line);
      start += length;
      if (start[0] == '\r' && start[1] == '\n')
        start++;
      if (*start != '\0')
        start++;
    }
  if (reader.held != NULL)
    tr_recipe_note (recipe, reader.held_number, reader.held);
  g_free (reader.held);
  g_free (reader.group);
  g_free (reader.unknown_heading);
}
