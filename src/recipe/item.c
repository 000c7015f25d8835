/* item.c: one line of a recipe as ingredients
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   item  = { measure } name { "," remark | "(" remark ")" | "for" purpose }
 *         | name measure
 *
 * The name is matched against the phrases of the table without regard to the
 * order of its words ("yeast, instant"): the phrase that uses most of them
 * wins. A word after the last one that was used makes it another thing ("butter
 * biscuits") and the line is not understood; one before is flagged.
 */

#include "item.h"

#include <math.h>
#include <stdarg.h>
#include <string.h>

#include "measure.h"

#define MAX_WORDS 40
#define MAX_ITEMS 8

typedef struct { const char *word; gboolean is_head; } NameWord;
typedef struct { NameWord words[MAX_WORDS]; guint n, n_head; guint32 letters; } Name;

typedef struct {
  const TrTokens *tokens;
  guint at, end;                 /* the item */
  guint name_from, name_to;      /* the head of its name */
  TrMeasure measure;
  gboolean disagrees;
  Name name;
  guint either;                  /* the token after "or"; 0: none */
  gboolean is_stopped;           /* after "for", "at": no words of the name up to the next comma */
  guint extra;                   /* where "plus more" begins; `end`: nowhere */
} Item;

/* Names */

static guint32
letter_bit (char c)
{
  return g_ascii_islower (c) ? 1u << (c - 'a') : 1u << 26;
}

static void
add_word (Name       *name,
          const char *word,
          gboolean    is_head)
{
  if (*word == '\0' || name->n == MAX_WORDS)
    return;
  name->words[name->n++] = (NameWord) { word, is_head };
  name->n_head += is_head ? 1 : 0;
  name->letters |= letter_bit (*word);
}

/* Index of the phrase's word in the name, -1: not there. */
static int
find_word (const Name *name,
           const char *word,
           gsize       length)
{
  int beside = -1;

  for (guint i = name->n; i-- > 0;)
    if (tr_word_is (name->words[i].word, word, length))
      {
        if (name->words[i].is_head)
          return (int) i;
        beside = (int) i;
      }
  return beside;
}

/* All words there, the last in the head; `last` the furthest head word used. */
static gboolean
matches (const Name        *name,
         const TrWordEntry *entry,
         guint64           *used,
         int               *last)
{
  const char *word = entry->phrase;

  *used = 0;
  *last = -1;
  if ((name->letters & letter_bit (*word)) == 0 || entry->n_words > name->n)
    return FALSE;
  for (;;)
    {
      gsize length = strcspn (word, " ");
      int at = find_word (name, word, length);

      if (at < 0)
        return FALSE;
      *used |= G_GUINT64_CONSTANT (1) << at;
      if (name->words[at].is_head)
        *last = MAX (*last, at);
      if (word[length] == '\0')
        return name->n_head == 0 || name->words[at].is_head;
      word += length + 1;
    }
}

static const TrWordEntry *
match_name (const Name *name,
            guint64    *used,
            int        *last)
{
  const TrWordEntry *best = NULL;

  for (guint i = tr_word_starts[TR_WORD_INGREDIENT]; i < tr_word_starts[TR_WORD_INGREDIENT + 1]; i++)
    {
      const TrWordEntry *entry = &tr_word_entries[i];
      guint64 its_used;
      int its_last;

      if ((best != NULL && entry->n_words < best->n_words) || !matches (name, entry, &its_used, &its_last))
        continue;
      if (best != NULL && entry->n_words == best->n_words && its_last <= *last)
        continue;
      best = entry;
      *used = its_used;
      *last = its_last;
    }
  return best;
}

static gboolean
is_ignored (const char *word)
{
  if (g_ascii_isdigit (*word) || word[1] == '\0')
    return TRUE;
  for (guint i = tr_word_starts[TR_WORD_IGNORE]; i < tr_word_starts[TR_WORD_IGNORE + 1]; i++)
    if (*tr_word_entries[i].phrase == *word && tr_word_is (word, tr_word_entries[i].phrase, strlen (tr_word_entries[i].phrase)))
      return TRUE;
  return FALSE;
}

/* Reading an item */

static gboolean
is_word (const Item *item,
         guint       at,
         const char *word)
{
  return at < item->end && strcmp (tr_tokens_get (item->tokens, at)->word, word) == 0;
}

static gboolean
is_joint (const TrTokens *tokens,
          guint           at,
          guint           end)
{
  return tr_tokens_is_sign (tokens, at, '+') || tr_tokens_is_sign (tokens, at, '&') ||
         tr_words_has (TR_WORD_JOINT, tokens, at, end);
}

static gboolean
is_inner_hyphen (const TrTokens *tokens,
                 guint           at,
                 guint           end)
{
  return tr_tokens_is_sign (tokens, at, '-') && at > 0 && at + 1 < end &&
         tr_tokens_get (tokens, at - 1)->end == tr_tokens_get (tokens, at)->start &&
         tr_tokens_get (tokens, at)->end == tr_tokens_get (tokens, at + 1)->start;
}

/* Where the next part of an amount begins: after "plus", with or without a comma. */
static guint
skip_joint (const TrTokens *tokens,
            guint           at,
            guint           end)
{
  guint joint = tr_tokens_is_sign (tokens, at, ',') ? at + 1 : at;

  return joint < end && is_joint (tokens, joint, end) && strcmp (tr_tokens_get (tokens, joint)->word, "with") != 0 ? joint + 1 : at;
}

/* A further part. What stands in brackets after the last of several spoons is
 * the weight of all of them, unless the first has a bracket of its own. */
static void
join_part (TrMeasure       *measure,
           const TrMeasure *alone,
           const TrMeasure *more)
{
  TrUnit counts = measure->counts;

  if (alone->kind != more->kind && measure->kind > TR_MEASURE_METRIC_VOLUME)
    *measure = *more;
  else
    {
      strcat (measure->amount, " plus ");
      strcat (measure->amount, more->amount);
      measure->kind = MAX (measure->kind, more->kind);
      measure->number = NAN;
    }
  measure->counts = counts;
}

/* "1 cup plus 1 tbsp": one amount, as long as no egg is counted. */
static guint
read_leading (Item *item,
              guint at)
{
  TrMeasure more, alone;
  guint next, after, part;

  if (!tr_measure_read_group (item->tokens, at, item->end, &next, &item->measure, &item->disagrees))
    return at;
  while ((part = skip_joint (item->tokens, next, item->end)) > next && tr_measure_read (item->tokens, part, item->end, &after, &alone) &&
         item->measure.kind <= TR_MEASURE_COUNT && !item->measure.is_bad &&
         tr_measure_read_group (item->tokens, part, item->end, &after, &more, &item->disagrees) &&
         more.kind <= TR_MEASURE_COUNT && !more.is_bad &&
         strlen (item->measure.amount) + strlen (more.amount) + 7 < sizeof item->measure.amount)
    {
      join_part (&item->measure, &alone, &more);
      next = after;
    }
  return next;
}

/* A bracket: another measure, or words; `at` is the bracket. */
static guint
read_name_bracket (Item *item,
                   guint at)
{
  TrMeasure other;
  guint next;

  if (tr_measure_read_bracket (item->tokens, at, item->end, &next, &other))
    {
      item->disagrees |= item->measure.kind != TR_MEASURE_NONE && tr_measure_masses_disagree (&item->measure, &other);
      if (item->measure.kind == TR_MEASURE_NONE || tr_measure_is_better (&other, &item->measure))
        item->measure = other;
      return next;
    }
  /* "Egg wash (1 egg" */
  if (item->measure.kind == TR_MEASURE_NONE && tr_measure_read (item->tokens, at + 1, item->end, &next, &other) &&
      other.kind == TR_MEASURE_COUNT)
    item->measure = other;
  if (is_word (item, at + 1, "or") && item->either == 0)
    item->either = at + 2;
  for (at++; at < item->end && !tr_tokens_is_sign (item->tokens, at, ')'); at++)
    if (item->either == 0)
      add_word (&item->name, tr_tokens_get (item->tokens, at)->word, FALSE);
  return at + 1;
}

/* A number inside a name: the amount where none was read, else "T 55", "2 %". */
static guint
read_name_number (Item     *item,
                  guint     at,
                  gboolean *is_head)
{
  TrMeasure measure;
  guint next;
  gboolean after_into = at > item->at && (is_word (item, at - 1, "into") || is_word (item, at - 1, "in") ||
                                          is_word (item, at - 1, "type") || is_word (item, at - 1, "tipo"));

  if (item->measure.kind == TR_MEASURE_NONE && !after_into &&
      tr_measure_read_group (item->tokens, at, item->end, &next, &measure, &item->disagrees) &&
      (measure.kind != TR_MEASURE_BARE || next == item->end))
    {
      item->measure = measure;
      if (*is_head)
        item->name_to = at;
      *is_head = FALSE;
      return next;
    }
  if (tr_tokens_is_sign (item->tokens, at + 1, '%'))
    {
      add_word (&item->name, is_word (item, at, "2") ? "2%" : is_word (item, at, "1") ? "1%" : "", *is_head);
      return at + 2;
    }
  add_word (&item->name, tr_tokens_get (item->tokens, at)->word, *is_head);
  return at + 1;
}

static gboolean
starts_extra (const Item *item,
              guint       at)
{
  TrMeasure measure;
  guint next = at + 1;
  gboolean has_joint = is_joint (item->tokens, at, item->end);

  if (!has_joint && !tr_tokens_is_sign (item->tokens, at, ',') && !tr_tokens_is_sign (item->tokens, at, ';') &&
      !tr_tokens_is_sign (item->tokens, at, '('))
    return FALSE;
  if (!has_joint && is_joint (item->tokens, next, item->end))
    {
      has_joint = TRUE;
      next++;
    }
  if (is_word (item, next, "a") || is_word (item, next, "some") || is_word (item, next, "little"))
    next++;
  if (is_word (item, next, "little"))
    next++;
  /* ", more for rolling" but not ", extra cold" */
  if (tr_words_has (TR_WORD_EXTRA, item->tokens, next, item->end))
    return has_joint || next + 1 >= item->end || tr_words_has (TR_WORD_STOP, item->tokens, next + 1, item->end) ||
           tr_tokens_is_sign (item->tokens, next + 1, ')');
  return has_joint && tr_measure_read (item->tokens, next, item->end, &next, &measure) &&
         tr_words_has (TR_WORD_PURPOSE, item->tokens, next, item->end);
}

static void
end_head (Item     *item,
          guint     at,
          gboolean *is_head)
{
  if (*is_head && item->name.n_head > 0)
    {
      item->name_to = at;
      *is_head = FALSE;
    }
}

static guint
read_name_token (Item     *item,
                 guint     at,
                 gboolean *is_head)
{
  const TrToken *token = tr_tokens_get (item->tokens, at);

  if (token->sign == '(' || token->sign == '[')
    return read_name_bracket (item, at);
  if (token->type == TR_TOKEN_NUMBER)
    return read_name_number (item, at, is_head);
  if (tr_words_has (TR_WORD_OR, item->tokens, at, item->end))
    {
      if (item->either == 0)
        item->either = at + 1;
      end_head (item, at, is_head);
      return item->measure.kind == TR_MEASURE_NONE ? at + 1 : item->end;
    }
  if (token->type == TR_TOKEN_SIGN)
    {
      if (token->sign == ',')
        item->is_stopped = FALSE;
      if (!is_inner_hyphen (item->tokens, at, item->end) && strchr (",;:|-=", token->sign) != NULL && token->sign != '\0')
        end_head (item, at, is_head);
      return at + 1;
    }
  if (tr_words_has (TR_WORD_STOP, item->tokens, at, item->end) && item->name.n_head > 0 &&
      !is_inner_hyphen (item->tokens, at - 1, item->end))
    {
      end_head (item, at, is_head);
      item->is_stopped = TRUE;
      return at + 1;
    }
  if (!item->is_stopped)
    add_word (&item->name, token->word, *is_head);
  return at + 1;
}

/* What the unit itself says: an egg, a yolk. */
static void
add_unit_words (Item *item)
{
  gboolean is_white = item->measure.counts == TR_UNIT_WHITE, is_yolk = item->measure.counts == TR_UNIT_YOLK;

  if (item->measure.counts != TR_UNIT_EGG && !is_white && !is_yolk)
    return;
  add_word (&item->name, "egg", TRUE);
  if (is_white || is_yolk)
    add_word (&item->name, is_white ? "white" : "yolk", TRUE);
}

static void
read_item (Item           *item,
           const TrTokens *tokens,
           guint           at,
           guint           end)
{
  gboolean is_head = TRUE;

  *item = (Item) { .tokens = tokens, .at = at, .end = end, .extra = end };
  item->measure.number = NAN;
  while (at < end && tr_tokens_get (tokens, at)->type == TR_TOKEN_SIGN && !tr_tokens_is_sign (tokens, at, '(') &&
         !tr_tokens_is_sign (tokens, at, '~'))
    at++;
  at = read_leading (item, at);
  add_unit_words (item);
  item->name_from = at;
  item->name_to = end;
  while (at < end)
    {
      if (starts_extra (item, at))
        {
          item->extra = at;
          end_head (item, at, &is_head);
          break;
        }
      at = read_name_token (item, at, &is_head);
    }
  item->name_to = MIN (MAX (item->name_to, item->name_from), item->end);
}

/* Lines */

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
tr_recipe_flag_offer (TrRecipeFlag       *flag,
                      TrRecipeChoiceKind  kind,
                      const char         *value)
{
  TrRecipeChoice *choice = g_new0 (TrRecipeChoice, 1);

  choice->kind = kind;
  choice->value = g_strdup (value);
  g_ptr_array_add (flag->choices, choice);
}

static void
offer_all (TrRecipeFlag       *flag,
           TrRecipeChoiceKind  kind,
           const char         *list)
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
                const Item        *item,
                const TrWordEntry *entry,
                guint64            used,
                int                last)
{
  for (int i = 0; i < (int) item->name.n; i++)
    {
      const NameWord *word = &item->name.words[i];

      if (!word->is_head || (used >> i & 1) != 0 || is_ignored (word->word))
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

/* "butter or margarine": what the other would be. */
static const TrWordEntry *
match_either (Item *item)
{
  Item other;
  guint64 used;
  int last;

  if (item->either == 0 || item->either >= item->end)
    return NULL;
  read_item (&other, item->tokens, item->either, item->end);
  /* "plain or bread flour": the noun is said once */
  if (other.name.n_head > 0 && match_name (&item->name, &used, &last) == NULL)
    for (guint i = other.name.n; i-- > 0;)
      if (other.name.words[i].is_head)
        {
          add_word (&item->name, other.name.words[i].word, TRUE);
          break;
        }
  return match_name (&other.name, &used, &last);
}

static void
name_line (TrRecipeLine *line,
           Item         *item)
{
  guint64 used = 0;
  int last = -1;
  const TrWordEntry *either = match_either (item);
  const TrWordEntry *entry = match_name (&item->name, &used, &last);
  gboolean is_first = entry != NULL;

  g_free (line->name);
  line->name = tr_tokens_dup_text (item->tokens, item->name_from, item->name_to);
  if (entry == NULL && either != NULL)
    {
      entry = either;
      last = MAX_WORDS;
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
              Item         *item)
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
read_hydration (TrRecipeLine *line,
                const Item   *item)
{
  for (guint i = item->at; i + 2 < item->end; i++)
    if (tr_tokens_get (item->tokens, i)->type == TR_TOKEN_NUMBER && tr_tokens_is_sign (item->tokens, i + 1, '%') &&
        is_word (item, i + 2, "hydration") && tr_tokens_get (item->tokens, i)->value >= 30 &&
        tr_tokens_get (item->tokens, i)->value <= 300)
      line->hydration_percent = tr_tokens_get (item->tokens, i)->value;
  if (isnan (line->hydration_percent))
    tr_recipe_line_flag (line, TR_RECIPE_FLAG_HYDRATION, "Its hydration is not written; 100 %% is taken.");
}

static void
place_line (TrRecipeLine *line,
            const Item   *item)
{
  const TrWordEntry *purpose = tr_words_find (TR_WORD_PURPOSE, item->tokens, item->at, item->extra, NULL);
  int stage = purpose != NULL ? tr_stage_from_id (purpose->value) : -1;

  if (stage >= 0)
    {
      line->stage = (TrStage) stage;
      if (stage != TR_STAGE_PREFERMENT)
        g_clear_pointer (&line->group, g_free);
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
  for (guint i = item->at; i < item->end; i++)
    if (is_word (item, i, "optional"))
      {
        tr_recipe_flag_offer (tr_recipe_line_flag (line, TR_RECIPE_FLAG_OPTIONAL, "It is optional; it is taken in."),
                              TR_RECIPE_CHOOSE_LEAVE_OUT, "");
        break;
      }
}

static void
read_line (const TrTokens    *tokens,
           guint              at,
           guint              end,
           const TrItemPlace *place,
           GPtrArray         *lines)
{
  TrRecipeLine *line = line_new (place);
  Item item;

  read_item (&item, tokens, at, end);
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
has_ingredient (const TrTokens *tokens,
                guint           at,
                guint           end)
{
  Item item;
  guint64 used;
  int last;

  read_item (&item, tokens, at, end);
  return match_name (&item.name, &used, &last) != NULL || match_either (&item) != NULL;
}

static gboolean
is_egg (TrUnit unit)
{
  return unit == TR_UNIT_EGG || unit == TR_UNIT_WHITE || unit == TR_UNIT_YOLK;
}

/* The end of a name that begins at `at`: a sign, a joint, a stop word, a number. */
static guint
name_end (const TrTokens *tokens,
          guint           at,
          guint           end)
{
  guint start = at;

  for (; at < end && at < start + 8; at++)
    {
      const TrToken *token = tr_tokens_get (tokens, at);

      if (token->type == TR_TOKEN_NUMBER || (token->type == TR_TOKEN_SIGN && !is_inner_hyphen (tokens, at, end)) ||
          (at > start && !is_inner_hyphen (tokens, at - 1, end) &&
           !tr_words_has (TR_WORD_OR, tokens, at, end) && (is_joint (tokens, at, end) || tr_words_has (TR_WORD_STOP, tokens, at, end))))
        break;
    }
  return at;
}

gboolean
tr_item_starts (const TrTokens *tokens,
                guint           at,
                guint           end)
{
  TrMeasure measure;
  gboolean ignored = FALSE;
  guint next, after;

  if (at >= end)
    return FALSE;
  if (tr_measure_read_group (tokens, at, end, &next, &measure, &ignored))
    {
      while (!is_egg (measure.counts) && skip_joint (tokens, next, end) > next &&
             tr_measure_read_group (tokens, skip_joint (tokens, next, end), end, &after, &measure, &ignored))
        next = after;
      if (measure.kind == TR_MEASURE_BARE && tr_tokens_get (tokens, at)->type != TR_TOKEN_NUMBER)
        return FALSE;
      after = name_end (tokens, next, end);
      return is_egg (measure.counts) ||
             (after > next && has_ingredient (tokens, next, after));
    }
  after = name_end (tokens, at, end);
  if (after == at)
    return FALSE;
  next = after;
  while (next < end && (tr_tokens_is_sign (tokens, next, ':') || tr_tokens_is_sign (tokens, next, '|') ||
                        tr_tokens_is_sign (tokens, next, '-') || tr_tokens_is_sign (tokens, next, '.') ||
                        tr_tokens_is_sign (tokens, next, ',') || tr_tokens_is_sign (tokens, next, '(')))
    next++;
  return tr_measure_read (tokens, next, end, &next, &measure) && measure.kind != TR_MEASURE_BARE &&
         measure.kind != TR_MEASURE_VAGUE && has_ingredient (tokens, at, after);
}

gboolean
tr_item_is_plain (const TrTokens *tokens,
                  guint           at,
                  guint           end)
{
  Item item;
  guint64 used;
  int last;

  if (at >= end)
    return FALSE;
  read_item (&item, tokens, at, end);
  if (match_name (&item.name, &used, &last) == NULL)
    return FALSE;
  for (guint i = 0; i < item.name.n; i++)
    if (item.name.words[i].is_head && (used >> i & 1) == 0 && !is_ignored (item.name.words[i].word))
      return FALSE;
  return TRUE;
}

gboolean
tr_item_is_bare_amount (const TrTokens *tokens,
                        guint           at,
                        guint           end)
{
  TrMeasure measure;
  gboolean ignored = FALSE;
  guint next;

  return at < end && tr_measure_read_group (tokens, at, end, &next, &measure, &ignored) && next == end &&
         measure.kind != TR_MEASURE_VAGUE &&
         !is_egg (measure.counts);
}

static gboolean
parts_items (const TrTokens *tokens,
             guint           start,
             guint           at,
             guint           end)
{
  return (is_joint (tokens, at, end) || tr_tokens_is_sign (tokens, at, ',') || tr_tokens_is_sign (tokens, at, ';')) &&
         tr_item_starts (tokens, at + 1, end) && has_ingredient (tokens, start, at);
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
