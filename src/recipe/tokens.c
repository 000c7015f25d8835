/* tokens.c: one line of a recipe as numbers, words and signs
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Numbers are read by calc's own reader, so that they mean here what they mean
 * in a document.
 */

#include "tokens.h"

#include <math.h>
#include <string.h>

#include "../calc/number.h"
#include "words.h"

static const struct { gunichar c; const char *text; } fractions[] = {
  { 0x00BC, "1/4" }, { 0x00BD, "1/2" }, { 0x00BE, "3/4" }, { 0x2150, "1/7" }, { 0x2151, "1/9" }, { 0x2152, "1/10" },
  { 0x2153, "1/3" }, { 0x2154, "2/3" }, { 0x2155, "1/5" }, { 0x2156, "2/5" }, { 0x2157, "3/5" }, { 0x2158, "4/5" },
  { 0x2159, "1/6" }, { 0x215A, "5/6" }, { 0x215B, "1/8" }, { 0x215C, "3/8" }, { 0x215D, "5/8" }, { 0x215E, "7/8" },
};

static const struct { gunichar c; const char *text; } signs[] = {
  { 0x00D7, " x " }, { 0x2044, "/" }, { 0x2215, "/" }, { 0x2018, "'" }, { 0x2019, "'" }, { 0x2032, "'" },
  { 0x201C, "\"" }, { 0x201D, "\"" }, { 0x2033, "\"" }, { 0x00E6, "ae" }, { 0x00C6, "AE" }, { 0x0153, "oe" },
  { 0x0152, "OE" }, { 0x00DF, "ss" }, { 0x00F8, "o" }, { 0x00D8, "O" }, { 0x00BA, "°" }, { 0x2026, " . " },
  { 0x00B0, "°" }, { 0x2022, " " }, { 0x00AE, "" }, { 0x2122, "" }, { 0x00AD, "" }, { '\t', " | " }, { '|', " | " },
};

static gboolean
append_fraction (GString  *out,
                 gunichar  c)
{
  for (gsize i = 0; i < G_N_ELEMENTS (fractions); i++)
    if (fractions[i].c == c)
      {
        if (out->len > 0 && g_ascii_isdigit (out->str[out->len - 1]))
          g_string_append_c (out, ' ');
        g_string_append (out, fractions[i].text);
        return TRUE;
      }
  return FALSE;
}

static gboolean
append_sign (GString  *out,
             gunichar  c)
{
  for (gsize i = 0; i < G_N_ELEMENTS (signs); i++)
    if (signs[i].c == c)
      {
        g_string_append (out, signs[i].text);
        return TRUE;
      }
  return FALSE;
}

static void
append_plain (GString  *out,
              gunichar  c)
{
  gunichar parts[8];
  gsize n;

  if (append_fraction (out, c) || append_sign (out, c))
    return;
  if (g_unichar_isspace (c) || g_unichar_iscntrl (c))
    g_string_append_c (out, ' ');
  else if (c == 0x2212 || (c >= 0x2010 && c <= 0x2015))
    g_string_append_c (out, '-');
  else if (c < 0x80)
    g_string_append_c (out, (char) c);
  else if (!g_unichar_iszerowidth (c) && c != 0xFEFF)
    {
      n = MIN (g_unichar_fully_decompose (c, TRUE, parts, G_N_ELEMENTS (parts)), G_N_ELEMENTS (parts));
      for (gsize i = 0; i < n; i++)
        if (!g_unichar_ismark (parts[i]))
          g_string_append_unichar (out, parts[i]);
    }
}

/* "500gflour" becomes "500g flour". */
static void
part_glued (GString *out)
{
  char word[TR_TOKEN_WORD_BYTES];
  gsize n, n_unit;

  for (gsize at = 1; at < out->len; at++)
    {
      if (!g_ascii_isdigit (out->str[at - 1]) || !g_ascii_isalpha (out->str[at]))
        continue;
      for (n = 0; n < sizeof word - 1 && g_ascii_isalpha (out->str[at + n]); n++)
        word[n] = g_ascii_tolower (out->str[at + n]);
      word[n] = '\0';
      n_unit = tr_words_find_glued_unit (word);
      if (n_unit > 0)
        g_string_insert_c (out, (gssize) (at + n_unit), ' ');
      at += n;
    }
}

static char *
normalise (const char *line)
{
  GString *out = g_string_new (NULL);

  for (const char *p = line; *p != '\0'; p = g_utf8_next_char (p))
    if (p[0] == '.' && p[1] == '.')
      {
        /* dot leaders: not a point before a number */
        while (p[1] == '.')
          p++;
        g_string_append (out, " . ");
      }
    else
      append_plain (out, g_utf8_get_char (p));
  part_glued (out);
  return g_string_free (out, FALSE);
}

/* "1e300": no number of a baker's, but one to a machine. */
static gboolean
take_scientific (TrCursor *cursor)
{
  const char *p = cursor->at;

  while (p < cursor->end && (g_ascii_isdigit (*p) || *p == '.'))
    p++;
  if (p == cursor->at || p + 1 >= cursor->end || g_ascii_tolower (*p) != 'e')
    return FALSE;
  p++;
  if ((*p == '+' || *p == '-') && p + 1 < cursor->end)
    p++;
  if (!g_ascii_isdigit (*p))
    return FALSE;
  while (p < cursor->end && g_ascii_isdigit (*p))
    p++;
  cursor->at = p;
  return TRUE;
}

static void
read_number (TrCursor *cursor,
             TrToken  *token)
{
  TrProblem problem = { .value = { NAN, NAN } };
  const char *start = cursor->at;

  token->type = TR_TOKEN_NUMBER;
  if (take_scientific (cursor))
    token->value = NAN;
  else if (!tr_number_read (cursor, &token->value, &problem))
    {
      token->value = NAN;
      if (problem.id == TR_PROBLEM_AMBIGUOUS)
        memcpy (token->readings, problem.value, sizeof token->readings);
      if (cursor->at == start)
        cursor->at++;
    }
  g_free (problem.text);
  /* How flour is milled, not how many. */
  if (cursor->at - start == 2 && strncmp (start, "00", 2) == 0)
    token->type = TR_TOKEN_WORD;
  if (cursor->at - start < TR_TOKEN_WORD_BYTES)
    memcpy (token->word, start, (gsize) (cursor->at - start));
}

static void
read_word (TrCursor *cursor,
           TrToken  *token)
{
  gsize n = 0;
  gunichar c;

  token->type = TR_TOKEN_WORD;
  for (; g_unichar_isalnum (c = tr_cursor_peek (*cursor)) || c == '\''; tr_cursor_advance (cursor))
    {
      if (c == '\'')
        continue;
      /* "7g" is two tokens, "T55" is one, "x250" two */
      if (n < TR_TOKEN_WORD_BYTES - 1)
        token->word[n] = c < 0x80 ? g_ascii_tolower ((char) c) : '?';
      n++;
      if (n == 1 && (c == 'x' || c == 'X'))
        {
          TrCursor after = *cursor;

          tr_cursor_advance (&after);
          if (tr_cursor_is_digit (after))
            {
              *cursor = after;
              break;
            }
        }
    }
  if (n >= TR_TOKEN_WORD_BYTES)
    memset (token->word, 0, sizeof token->word);
}

static void
read_token (TrCursor   *cursor,
            const char *text,
            TrToken    *token)
{
  gunichar c = tr_cursor_peek (*cursor);

  *token = (TrToken) { .start = (gsize) (cursor->at - text), .value = NAN, .readings = { NAN, NAN } };
  if (tr_number_starts (*cursor) && c != ',' && !(c == '.' && cursor->at > text && g_ascii_isalpha (cursor->at[-1])))
    read_number (cursor, token);
  else if (g_unichar_isalnum (c))
    read_word (cursor, token);
  else
    {
      token->type = TR_TOKEN_SIGN;
      token->sign = c < 0x80 ? (char) c : c == 0xB0 ? 'd' : '?';
      tr_cursor_advance (cursor);
    }
  token->end = (gsize) (cursor->at - text);
}

TrTokens *
tr_tokens_new (const char *line)
{
  TrTokens *tokens = g_new0 (TrTokens, 1);
  TrCursor cursor;

  tokens->text = normalise (line);
  tokens->tokens = g_array_new (FALSE, FALSE, sizeof (TrToken));
  cursor = (TrCursor) { tokens->text, tokens->text + strlen (tokens->text) };
  for (tr_cursor_skip_spaces (&cursor); !tr_cursor_is_at_end (cursor); tr_cursor_skip_spaces (&cursor))
    {
      TrToken token;

      read_token (&cursor, tokens->text, &token);
      g_array_append_val (tokens->tokens, token);
    }
  return tokens;
}

void
tr_tokens_free (TrTokens *tokens)
{
  if (tokens == NULL)
    return;
  g_free (tokens->text);
  g_array_unref (tokens->tokens);
  g_free (tokens);
}

char *
tr_tokens_dup_text (const TrTokens *tokens,
                    guint           from,
                    guint           to)
{
  if (from >= to)
    return g_strdup ("");
  return g_strndup (tokens->text + tr_tokens_get (tokens, from)->start,
                    tr_tokens_get (tokens, to - 1)->end - tr_tokens_get (tokens, from)->start);
}
