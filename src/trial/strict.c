/* strict.c: one scan of the bytes before a tree is built
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * json-glib is lenient where a document must not be: it takes comments, octal
 * numbers and names twice, cuts strings at \u0000, overflows on deep nesting
 * and wraps whole numbers beyond 64 bits. So the bytes are scanned here by the
 * letter of RFC 8259 first, and json-glib only sees what passed. The scan
 * builds nothing; it recurses at most TR_STRICT_MAX_DEPTH times. Positions are
 * counted only when something is refused.
 */

#include "strict.h"

#include <errno.h>
#include <string.h>

#include "document.h"

#define MAX_FOUND_CHARS 24

/* A decimal of this many characters without exponent is well inside a double. */
#define SAFE_NUMBER_BYTES 300

typedef struct {
  const char *start, *at, *end;
  guint depth;
  GArray *wide;                  /* offsets just after whole numbers beyond 64 bits */
  GString *name;                 /* the string scanned last, unescaped */
  GError **error;
} Scan;

static gboolean scan_value (Scan *scan);

/* Refusals */

static void
count_position (const Scan *scan,
                const char *where,
                guint      *line,
                guint      *column)
{
  const char *line_start = scan->start;

  *line = 1;
  for (const char *at = scan->start; at < where; at++)
    if (*at == '\n')
      {
        (*line)++;
        line_start = at + 1;
      }
  *column = 1 + (guint) g_utf8_strlen (line_start, where - line_start);
}

static gboolean
is_shown (gunichar c)
{
  return c == ' ' || (g_unichar_isprint (c) && !g_unichar_isspace (c));
}

/* What stands at `where`, shortened: what the reader will look for. */
static char *
dup_found (const Scan *scan,
           const char *where)
{
  g_autoptr (GString) found = g_string_new (NULL);
  guint n_chars = 0;

  if (where >= scan->end)
    return g_strdup ("the end of the file");

  gunichar first = g_utf8_get_char (where);
  if (!is_shown (first))
    return g_strdup_printf ("the character U+%04X", first);

  for (const char *at = where; at < scan->end; at = g_utf8_next_char (at))
    {
      gunichar c = g_utf8_get_char (at);

      if (!is_shown (c) || (n_chars > 0 && c < 0x80 && strchr (",]}", (int) c) != NULL))
        break;
      if (n_chars++ == MAX_FOUND_CHARS)
        {
          g_string_append (found, "…");
          break;
        }
      g_string_append_unichar (found, c);
    }

  return g_strdup_printf ("“%s”", found->str);
}

static gboolean
refuse_found (Scan       *scan,
              const char *where,
              const char *expected,
              const char *found)
{
  guint line, column;

  count_position (scan, where, &line, &column);
  g_set_error (scan->error, TR_TRIAL_ERROR, TR_TRIAL_ERROR_FORMAT,
               "At %u:%u expected %s, found %s.", line, column, expected, found);

  return FALSE;
}

static gboolean
refuse (Scan       *scan,
        const char *where,
        const char *expected)
{
  g_autofree char *found = dup_found (scan, where);

  return refuse_found (scan, where, expected, found);
}

/* Tokens. No NUL is left to meet here: check_encoding has been over the bytes. */

static void
skip_space (Scan *scan)
{
  while (scan->at < scan->end && strchr (" \t\n\r", *scan->at) != NULL)
    scan->at++;
}

static gboolean
is_at (const Scan *scan,
       char        c)
{
  return scan->at < scan->end && *scan->at == c;
}

static gboolean
is_at_digit (const Scan *scan)
{
  return scan->at < scan->end && g_ascii_isdigit (*scan->at);
}

static gboolean
accept_char (Scan *scan,
             char  c)
{
  if (!is_at (scan, c))
    return FALSE;
  scan->at++;

  return TRUE;
}

static gboolean
scan_word (Scan       *scan,
           const char *word)
{
  gsize length = strlen (word);
  const char *after = scan->at + length;

  if ((gsize) (scan->end - scan->at) < length
      || strncmp (scan->at, word, length) != 0
      || (after < scan->end && g_ascii_isalnum (*after)))
    return refuse (scan, scan->at, "a value");
  scan->at = after;

  return TRUE;
}

static gboolean
scan_digits (Scan       *scan,
             const char *expected)
{
  if (!is_at_digit (scan))
    return refuse (scan, scan->at, expected);
  while (is_at_digit (scan))
    scan->at++;

  return TRUE;
}

static gboolean
is_beyond_int64 (const char *digits)
{
  errno = 0;
  (void) g_ascii_strtoll (digits, NULL, 10);

  return errno == ERANGE;
}

static gboolean
check_magnitude (Scan       *scan,
                 const char *start,
                 gboolean    is_whole)
{
  g_autofree char *digits = g_strndup (start, (gsize) (scan->at - start));

  if (!isfinite (g_ascii_strtod (digits, NULL)))
    return refuse (scan, start, "a number that a double can hold");
  if (is_whole && is_beyond_int64 (digits))
    {
      gsize offset = (gsize) (scan->at - scan->start);

      g_array_append_val (scan->wide, offset);
    }

  return TRUE;
}

static gboolean
scan_number (Scan *scan)
{
  const char *start = scan->at;
  gboolean is_whole = TRUE, has_exponent = FALSE;

  accept_char (scan, '-');
  if (accept_char (scan, '0'))
    {
      if (is_at_digit (scan))
        return refuse (scan, start, "a number without leading zeros");
    }
  else if (!scan_digits (scan, "a digit"))
    return FALSE;

  if (accept_char (scan, '.'))
    {
      is_whole = FALSE;
      if (!scan_digits (scan, "a digit after the point"))
        return FALSE;
    }
  if (accept_char (scan, 'e') || accept_char (scan, 'E'))
    {
      is_whole = FALSE;
      has_exponent = TRUE;
      if (!accept_char (scan, '+'))
        accept_char (scan, '-');
      if (!scan_digits (scan, "a digit of the exponent"))
        return FALSE;
    }

  gsize length = (gsize) (scan->at - start);
  if (has_exponent || length > SAFE_NUMBER_BYTES || (is_whole && length > 18))
    return check_magnitude (scan, start, is_whole);

  return TRUE;
}

static gboolean
scan_hex4 (Scan     *scan,
           gunichar *c)
{
  const char *start = scan->at - 2;   /* the backslash */

  *c = 0;
  for (guint i = 0; i < 4; i++, scan->at++)
    {
      if (scan->at >= scan->end || !g_ascii_isxdigit (*scan->at))
        return refuse (scan, start, "four hexadecimal digits after \\u");
      *c = *c * 16 + (gunichar) g_ascii_xdigit_value (*scan->at);
    }

  return TRUE;
}

static gboolean
scan_unicode_escape (Scan *scan)
{
  const char *start = scan->at - 2;
  gunichar c, low;

  if (!scan_hex4 (scan, &c))
    return FALSE;
  if (c == 0)
    return refuse (scan, start, "a string without NUL");
  if (c >= 0xd800 && c <= 0xdfff)
    {
      if (c >= 0xdc00 || !accept_char (scan, '\\') || !accept_char (scan, 'u'))
        return refuse (scan, start, "a pair of surrogates");
      if (!scan_hex4 (scan, &low))
        return FALSE;
      if (low < 0xdc00 || low > 0xdfff)
        return refuse (scan, start, "a pair of surrogates");
      c = 0x10000 + ((c - 0xd800) << 10) + (low - 0xdc00);
    }
  g_string_append_unichar (scan->name, c);

  return TRUE;
}

static gboolean
scan_escape (Scan *scan)
{
  static const char escapes[] = "\"\\/bfnrt";
  static const char meanings[] = "\"\\/\b\f\n\r\t";
  const char *start = scan->at - 1;

  if (accept_char (scan, 'u'))
    return scan_unicode_escape (scan);

  const char *known = scan->at < scan->end ? strchr (escapes, *scan->at) : NULL;
  if (known == NULL)
    return refuse (scan, start, "one of the escapes \\\" \\\\ \\/ \\b \\f \\n \\r \\t \\u");
  g_string_append_c (scan->name, meanings[known - escapes]);
  scan->at++;

  return TRUE;
}

static gboolean
scan_string (Scan *scan)
{
  g_string_truncate (scan->name, 0);
  scan->at++;
  while (!accept_char (scan, '"'))
    {
      const char *run = scan->at;

      while (scan->at < scan->end && (guchar) *scan->at >= 0x20 && *scan->at != '"' && *scan->at != '\\')
        scan->at++;
      g_string_append_len (scan->name, run, scan->at - run);

      if (scan->at >= scan->end)
        return refuse (scan, scan->at, "the closing quote of a string");
      if ((guchar) *scan->at < 0x20)
        return refuse (scan, scan->at, "a closing quote or an escape such as \\n in a string");
      if (accept_char (scan, '\\') && !scan_escape (scan))
        return FALSE;
    }

  return TRUE;
}

/* Values */

static gboolean
scan_name (Scan       *scan,
           GHashTable *names)
{
  const char *start = scan->at;

  if (!is_at (scan, '"'))
    return refuse (scan, start, "a member name in double quotes");
  if (!scan_string (scan))
    return FALSE;
  if (!g_hash_table_add (names, g_strdup (scan->name->str)))
    {
      g_autofree char *found = dup_found (scan, start);
      g_autofree char *again = g_strconcat (found, " again", NULL);

      return refuse_found (scan, start, "each member name once in an object", again);
    }

  skip_space (scan);
  if (!accept_char (scan, ':'))
    return refuse (scan, scan->at, "a colon after the member name");

  return TRUE;
}

static gboolean
scan_object (Scan *scan)
{
  g_autoptr (GHashTable) names = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  scan->at++;
  skip_space (scan);
  if (accept_char (scan, '}'))
    return TRUE;

  do
    {
      skip_space (scan);
      if (!scan_name (scan, names) || !scan_value (scan))
        return FALSE;
    }
  while (accept_char (scan, ','));

  return accept_char (scan, '}') || refuse (scan, scan->at, "a comma or “}” after a member");
}

static gboolean
scan_array (Scan *scan)
{
  scan->at++;
  skip_space (scan);
  if (accept_char (scan, ']'))
    return TRUE;

  do
    if (!scan_value (scan))
      return FALSE;
  while (accept_char (scan, ','));

  return accept_char (scan, ']') || refuse (scan, scan->at, "a comma or “]” after an element");
}

static gboolean
scan_nested (Scan *scan)
{
  if (scan->depth == TR_STRICT_MAX_DEPTH)
    return refuse (scan, scan->at, "at most " G_STRINGIFY (TR_STRICT_MAX_DEPTH) " levels of nesting");

  scan->depth++;
  gboolean is_good = *scan->at == '{' ? scan_object (scan) : scan_array (scan);
  scan->depth--;

  return is_good;
}

static gboolean
scan_bare_value (Scan *scan)
{
  switch (scan->at < scan->end ? *scan->at : '\0')
    {
    case '{': case '[':
      return scan_nested (scan);
    case '"':
      return scan_string (scan);
    case 't':
      return scan_word (scan, "true");
    case 'f':
      return scan_word (scan, "false");
    case 'n':
      return scan_word (scan, "null");
    case '-':
      return scan_number (scan);
    default:
      return is_at_digit (scan) ? scan_number (scan) : refuse (scan, scan->at, "a value");
    }
}

/* A value and the space on both sides of it. */
static gboolean
scan_value (Scan *scan)
{
  skip_space (scan);
  if (!scan_bare_value (scan))
    return FALSE;
  skip_space (scan);

  return TRUE;
}

static gboolean
check_encoding (Scan *scan)
{
  const char *bad;

  if (scan->end - scan->start >= 3 && memcmp (scan->start, "\xef\xbb\xbf", 3) == 0)
    return refuse_found (scan, scan->start, "UTF-8 without a byte order mark", "one");
  if (!g_utf8_validate_len (scan->start, (gsize) (scan->end - scan->start), &bad))
    {
      g_autofree char *found = g_strdup_printf ("the byte 0x%02X", (guint) (guchar) *bad);

      return refuse_found (scan, bad, *bad == '\0' ? "text without NUL" : "UTF-8 text", found);
    }

  return TRUE;
}

static gboolean
scan_all (Scan *scan)
{
  if (!check_encoding (scan) || !scan_value (scan))
    return FALSE;

  return scan->at == scan->end || refuse (scan, scan->at, "nothing after the end of the value");
}

/* The tree */

/* json-glib reads whole numbers into 64 bits and wraps; with a point it reads
 * the nearest double instead. */
static char *
dup_with_points (const char *bytes,
                 gsize       length,
                 GArray     *wide,
                 gsize      *new_length)
{
  GString *text = g_string_sized_new (length + 2 * wide->len);
  gsize done = 0;

  for (guint i = 0; i < wide->len; i++)
    {
      gsize offset = g_array_index (wide, gsize, i);

      g_string_append_len (text, bytes + done, (gssize) (offset - done));
      g_string_append (text, ".0");
      done = offset;
    }
  g_string_append_len (text, bytes + done, (gssize) (length - done));
  *new_length = text->len;

  return g_string_free (text, FALSE);
}

static JsonNode *
build_tree (const char  *bytes,
            gsize        length,
            GArray      *wide,
            GError     **error)
{
  g_autoptr (JsonParser) parser = json_parser_new_immutable ();
  g_autofree char *text = dup_with_points (bytes, length, wide, &length);
  g_autoptr (GError) unexpected = NULL;

  if (!json_parser_load_from_data (parser, text, (gssize) length, &unexpected))
    {
      g_set_error (error, TR_TRIAL_ERROR, TR_TRIAL_ERROR_FORMAT,
                   "Expected JSON, found what the parser cannot read: %s.", unexpected->message);
      return NULL;
    }

  return json_node_ref (json_parser_get_root (parser));
}

JsonNode *
tr_strict_parse (const char  *bytes,
                 gsize        length,
                 GError     **error)
{
  g_autoptr (GArray) wide = g_array_new (FALSE, FALSE, sizeof (gsize));
  g_autoptr (GString) name = g_string_new (NULL);

  g_return_val_if_fail (bytes != NULL || length == 0, NULL);

  const char *start = bytes != NULL ? bytes : "";
  Scan scan = { start, start, start + length, 0, wide, name, error };
  if (length > TR_STRICT_MAX_BYTES)
    {
      g_set_error (error, TR_TRIAL_ERROR, TR_TRIAL_ERROR_TOO_LARGE,
                   "Expected at most %d bytes (4 MiB), found %" G_GSIZE_FORMAT ".", TR_STRICT_MAX_BYTES, length);
      return NULL;
    }
  if (!scan_all (&scan))
    return NULL;

  return build_tree (start, length, wide, error);
}
