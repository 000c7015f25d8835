/* phrase.c: one item of a recipe: how much, and the words of its name
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   item  = { measure } name { "," remark | "(" remark ")" | "for" purpose }
 *         | name measure
 */

#include "phrase.h"

#include <math.h>
#include <string.h>

#include "item.h"

gboolean
tr_phrase_is_word (const TrPhrase *item,
                   guint           at,
                   const char     *word)
{
  return at < item->end && strcmp (tr_tokens_get (item->tokens, at)->word, word) == 0;
}

gboolean
tr_phrase_is_joint (const TrTokens *tokens,
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

  return joint < end && tr_phrase_is_joint (tokens, joint, end) && strcmp (tr_tokens_get (tokens, joint)->word, "with") != 0 ? joint + 1 : at;
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
read_leading (TrPhrase *item,
              guint     at)
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

/* "(dough)", "(turns)": where it goes. "(block)" may be how it is sold, and
 * "old dough (pâte fermentée)" is the same thing twice. */
static const TrWordEntry *
find_place (const TrPhrase *item,
            guint           at)
{
  guint next;
  const TrWordEntry *stage = tr_words_match (TR_WORD_STAGE, item->tokens, at + 1, item->end, &next);

  static const char *const things[] = { "block", "slab", "pate fermentee", "old dough", "levain", "starter" };

  if (stage == NULL || !tr_tokens_is_sign (item->tokens, next, ')'))
    return item->place;
  for (gsize i = 0; i < G_N_ELEMENTS (things); i++)
    if (g_str_equal (stage->phrase, things[i]))
      return item->place;
  return stage;
}

/* A bracket: another measure, or words; `at` is the bracket. */
static guint
read_name_bracket (TrPhrase *item,
                   guint     at)
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
  if (tr_phrase_is_word (item, at + 1, "or") && item->either == 0)
    item->either = at + 2;
  item->place = find_place (item, at);
  for (at++; at < item->end && !tr_tokens_is_sign (item->tokens, at, ')'); at++)
    if (item->either == 0)
      tr_name_add (&item->name, tr_tokens_get (item->tokens, at)->word, FALSE);
  return at + 1;
}

/* What the unit itself says: an egg, a yolk. */
static void
add_unit_words (TrPhrase *item)
{
  gboolean is_white = item->measure.counts == TR_UNIT_WHITE, is_yolk = item->measure.counts == TR_UNIT_YOLK;

  if (item->measure.counts != TR_UNIT_EGG && !is_white && !is_yolk)
    return;
  tr_name_add (&item->name, "egg", TRUE);
  if (is_white || is_yolk)
    tr_name_add (&item->name, is_white ? "white" : "yolk", TRUE);
}

/* Whether a weight or volume follows: "2 %" before it is of the milk. */
static gboolean
has_weight (const TrTokens *tokens,
            guint           at,
            guint           end)
{
  TrMeasure measure;
  guint next;

  for (; at < end; at++)
    if (tr_tokens_get (tokens, at)->type == TR_TOKEN_NUMBER && tr_measure_read (tokens, at, end, &next, &measure) &&
        measure.kind <= TR_MEASURE_COUNT)
      return TRUE;
  return FALSE;
}

static void
end_head (TrPhrase *item,
          guint     at,
          gboolean *is_head)
{
  if (*is_head && item->name.n_head > 0)
    {
      item->name_to = at;
      *is_head = FALSE;
    }
}

/* "550 g bread flour 4 cups + 2 tbsp": the same again, as long as no name
 * follows that it could be the amount of. Returns `at` where it is not. */
static guint
read_measure_again (TrPhrase *item,
                    guint     at)
{
  TrMeasure again, more;
  guint next, after, part;
  gboolean ignored = FALSE;

  if (!tr_measure_read_group (item->tokens, at, item->end, &next, &again, &ignored) || again.kind > TR_MEASURE_COUNT)
    return at;
  while ((part = skip_joint (item->tokens, next, item->end)) > next && tr_measure_read (item->tokens, part, item->end, &after, &more) &&
         more.kind <= TR_MEASURE_COUNT)
    {
      again.kind = TR_MEASURE_MEASURE;
      next = after;
    }
  if (next < item->end && tr_tokens_get (item->tokens, next)->type != TR_TOKEN_SIGN)
    return at;
  item->disagrees |= again.kind <= TR_MEASURE_IMPERIAL_MASS && tr_measure_masses_disagree (&item->measure, &again);
  if (again.kind <= TR_MEASURE_METRIC_VOLUME && tr_measure_is_better (&again, &item->measure))
    item->measure = again;
  return next;
}

/* A number inside a name: the amount where none was read, else "T 55", "2 %". */
static guint
read_name_number (TrPhrase *item,
                  guint     at,
                  gboolean *is_head)
{
  TrMeasure measure;
  guint next;
  gboolean after_into = at > item->at && (tr_phrase_is_word (item, at - 1, "into") || tr_phrase_is_word (item, at - 1, "in") ||
                                          tr_phrase_is_word (item, at - 1, "type") || tr_phrase_is_word (item, at - 1, "tipo"));

  if (item->measure.kind == TR_MEASURE_NONE && !after_into &&
      tr_measure_read_group (item->tokens, at, item->end, &next, &measure, &item->disagrees) &&
      (measure.kind != TR_MEASURE_BARE || next == item->end) &&
      (measure.kind != TR_MEASURE_PERCENT || !has_weight (item->tokens, next, item->end)))
    {
      item->measure = measure;
      add_unit_words (item);
      if (*is_head)
        item->name_to = at;
      *is_head = FALSE;
      return next;
    }
  if (item->measure.kind != TR_MEASURE_NONE && (next = read_measure_again (item, at)) > at)
    {
      end_head (item, at, is_head);
      return next;
    }
  if (tr_tokens_is_sign (item->tokens, at + 1, '%'))
    {
      tr_name_add (&item->name, tr_phrase_is_word (item, at, "2") ? "2%" : tr_phrase_is_word (item, at, "1") ? "1%" : "", *is_head);
      return at + 2;
    }
  tr_name_add (&item->name, tr_tokens_get (item->tokens, at)->word, *is_head);
  return at + 1;
}

static gboolean
starts_extra (const TrPhrase *item,
              guint           at)
{
  TrMeasure measure;
  guint next = at + 1;
  gboolean has_joint = tr_phrase_is_joint (item->tokens, at, item->end);

  if (!has_joint && !tr_tokens_is_sign (item->tokens, at, ',') && !tr_tokens_is_sign (item->tokens, at, ';') &&
      !tr_tokens_is_sign (item->tokens, at, '('))
    return FALSE;
  if (!has_joint && tr_phrase_is_joint (item->tokens, next, item->end))
    {
      has_joint = TRUE;
      next++;
    }
  if (tr_phrase_is_word (item, next, "a") || tr_phrase_is_word (item, next, "some") || tr_phrase_is_word (item, next, "little"))
    next++;
  if (tr_phrase_is_word (item, next, "little"))
    next++;
  /* ", more for rolling" but not ", extra cold" */
  if (tr_words_has (TR_WORD_EXTRA, item->tokens, next, item->end))
    return has_joint || next + 1 >= item->end || tr_words_has (TR_WORD_STOP, item->tokens, next + 1, item->end) ||
           tr_tokens_is_sign (item->tokens, next + 1, ')');
  return has_joint && tr_measure_read (item->tokens, next, item->end, &next, &measure) &&
         (measure.kind == TR_MEASURE_VAGUE || tr_phrase_is_word (item, next, "for") ||
          tr_words_has (TR_WORD_PURPOSE, item->tokens, next, item->end));
}

static guint
read_name_token (TrPhrase *item,
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
    tr_name_add (&item->name, token->word, *is_head);
  return at + 1;
}

void
tr_phrase_read (TrPhrase       *item,
                const TrTokens *tokens,
                guint           at,
                guint           end)
{
  gboolean is_head = TRUE;

  *item = (TrPhrase) { .tokens = tokens, .at = at, .end = end, .extra = end };
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

/* "butter or margarine": what the other would be. */
const TrWordEntry *
tr_phrase_match_either (TrPhrase *item)
{
  TrPhrase other;
  guint64 used;
  int last;

  if (item->either == 0 || item->either >= item->end)
    return NULL;
  tr_phrase_read (&other, item->tokens, item->either, item->end);
  /* "plain or bread flour": the noun is said once */
  if (other.name.n_head > 0 && tr_name_match (&item->name, &used, &last) == NULL)
    for (guint i = other.name.n; i-- > 0;)
      if (other.name.words[i].is_head)
        {
          tr_name_add (&item->name, other.name.words[i].word, TRUE);
          break;
        }
  return tr_name_match (&other.name, &used, &last);
}

/* Where an item begins */

gboolean
tr_phrase_has_ingredient (const TrTokens *tokens,
                          guint           at,
                          guint           end)
{
  TrPhrase item;
  guint64 used;
  int last;

  tr_phrase_read (&item, tokens, at, end);
  return tr_name_match (&item.name, &used, &last) != NULL || tr_phrase_match_either (&item) != NULL;
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
           !tr_words_has (TR_WORD_OR, tokens, at, end) && (tr_phrase_is_joint (tokens, at, end) || tr_words_has (TR_WORD_STOP, tokens, at, end))))
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
      /* "plus 10 g for the yeast" is no yeast */
      if (next < end && strcmp (tr_tokens_get (tokens, next)->word, "for") == 0 && !is_egg (measure.counts))
        return FALSE;
      after = name_end (tokens, next, end);
      return is_egg (measure.counts) ||
             (after > next && tr_phrase_has_ingredient (tokens, next, after));
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
         measure.kind != TR_MEASURE_VAGUE && tr_phrase_has_ingredient (tokens, at, after);
}

gboolean
tr_item_is_plain (const TrTokens *tokens,
                  guint           at,
                  guint           end)
{
  TrPhrase item;
  guint64 used;
  int last;

  if (at >= end)
    return FALSE;
  tr_phrase_read (&item, tokens, at, end);
  if (tr_name_match (&item.name, &used, &last) == NULL)
    return FALSE;
  for (guint i = 0; i < item.name.n; i++)
    if (item.name.words[i].is_head && (used >> i & 1) == 0 && !tr_name_ignores (item.name.words[i].word))
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
