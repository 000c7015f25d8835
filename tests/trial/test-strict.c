/* test-strict.c: what is not strict JSON is refused, and said where
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The grammar is RFC 8259 (The JavaScript Object Notation Data Interchange
 * Format, T. Bray, 2017), sections 2 to 8; lone surrogates and names twice,
 * which it leaves to the reader, are refused as RFC 7493 (I-JSON, 2.1, 2.3) asks.
 */

#include <math.h>
#include <string.h>

#include "trial/document.h"
#include "trial/strict.h"

typedef struct {
  const char *name, *text, *message;
} Refusal;

static const Refusal refusals[] = {
  { "nothing", "", "At 1:1 expected a value, found the end of the file." },
  { "only-space", " \n ", "At 2:2 expected a value, found the end of the file." },
  { "line-comment", "{\n  // mine\n}", "At 2:3 expected a member name in double quotes, found “// mine”." },
  { "block-comment", "[1, /* two */ 2]", "At 1:5 expected a value, found “/* two */ 2”." },
  { "hash-comment", "# mine\n1", "At 1:1 expected a value, found “# mine”." },
  { "single-quotes", "{'title': 1}", "At 1:2 expected a member name in double quotes, found “'title': 1”." },
  { "single-quoted-value", "['a']", "At 1:2 expected a value, found “'a'”." },
  { "bare-name", "{title: 1}", "At 1:2 expected a member name in double quotes, found “title: 1”." },
  { "octal", "[017]", "At 1:2 expected a number without leading zeros, found “017”." },
  { "minus-octal", "[-017]", "At 1:2 expected a number without leading zeros, found “-017”." },
  { "hexadecimal", "[0x1F]", "At 1:3 expected a comma or “]” after an element, found “x1F”." },
  { "plus", "[+1]", "At 1:2 expected a value, found “+1”." },
  { "point-first", "[.5]", "At 1:2 expected a value, found “.5”." },
  { "point-last", "[5.]", "At 1:4 expected a digit after the point, found “]”." },
  { "minus-alone", "[-]", "At 1:3 expected a digit, found “]”." },
  { "exponent-alone", "[1e]", "At 1:4 expected a digit of the exponent, found “]”." },
  { "exponent-sign-alone", "[1e+]", "At 1:5 expected a digit of the exponent, found “]”." },
  { "nan", "[NaN]", "At 1:2 expected a value, found “NaN”." },
  { "infinity", "[Infinity]", "At 1:2 expected a value, found “Infinity”." },
  { "minus-infinity", "[-Infinity]", "At 1:3 expected a digit, found “Infinity”." },
  { "beyond-double", "[1, 1e999]", "At 1:5 expected a number that a double can hold, found “1e999”." },
  { "beyond-double-below", "[-1e999]", "At 1:2 expected a number that a double can hold, found “-1e999”." },
  { "just-beyond-double", "[1.7976931348623159e308]",
    "At 1:2 expected a number that a double can hold, found “1.7976931348623159e308”." },
  { "capital-true", "[True]", "At 1:2 expected a value, found “True”." },
  { "true-and-more", "[trueish]", "At 1:2 expected a value, found “trueish”." },
  { "half-of-null", "[nul]", "At 1:2 expected a value, found “nul”." },
  { "trailing-comma", "[1,]", "At 1:4 expected a value, found “]”." },
  { "trailing-comma-member", "{\"a\":1,}", "At 1:8 expected a member name in double quotes, found “}”." },
  { "no-comma", "[1 2]", "At 1:4 expected a comma or “]” after an element, found “2”." },
  { "no-comma-member", "{\"a\":1 \"b\":2}", "At 1:8 expected a comma or “}” after a member, found “\"b\":2”." },
  { "no-colon", "{\"a\" 1}", "At 1:6 expected a colon after the member name, found “1”." },
  { "no-value", "{\"a\":}", "At 1:6 expected a value, found “}”." },
  { "not-closed", "{\"a\":[1", "At 1:8 expected a comma or “]” after an element, found the end of the file." },
  { "closed-otherwise", "[1}", "At 1:3 expected a comma or “]” after an element, found “}”." },
  { "two-values", "{}\n{}", "At 2:1 expected nothing after the end of the value, found “{”." },
  { "word-after-the-end", "1 x", "At 1:3 expected nothing after the end of the value, found “x”." },
  { "name-twice", "{\"a\": 1,\n \"a\": 2}", "At 2:2 expected each member name once in an object, found “\"a\": 2” again." },
  { "name-twice-escaped", "{\"a\":1,\"\\u0061\":2}",
    "At 1:8 expected each member name once in an object, found “\"\\u0061\":2” again." },
  { "name-twice-deep", "[{\"b\":{\"a\":1,\"a\":2}}]",
    "At 1:14 expected each member name once in an object, found “\"a\":2” again." },
  { "string-not-closed", "[\"abc", "At 1:6 expected the closing quote of a string, found the end of the file." },
  { "newline-in-string", "[\"ab\nc\"]",
    "At 1:5 expected a closing quote or an escape such as \\n in a string, found the character U+000A." },
  { "tab-in-string", "[\"\t\"]",
    "At 1:3 expected a closing quote or an escape such as \\n in a string, found the character U+0009." },
  { "unknown-escape", "[\"\\x41\"]",
    "At 1:3 expected one of the escapes \\\" \\\\ \\/ \\b \\f \\n \\r \\t \\u, found “\\x41\"”." },
  { "escape-at-the-end", "[\"\\", "At 1:3 expected one of the escapes \\\" \\\\ \\/ \\b \\f \\n \\r \\t \\u, found “\\”." },
  { "short-unicode", "[\"\\u12\"]", "At 1:3 expected four hexadecimal digits after \\u, found “\\u12\"”." },
  { "nul-escape", "[\"a\\u0000b\"]", "At 1:4 expected a string without NUL, found “\\u0000b\"”." },
  { "high-surrogate-alone", "[\"\\ud83d\"]", "At 1:3 expected a pair of surrogates, found “\\ud83d\"”." },
  { "high-surrogate-and-letter", "[\"\\ud83dx\"]", "At 1:3 expected a pair of surrogates, found “\\ud83dx\"”." },
  { "low-surrogate-alone", "[\"\\ude00\"]", "At 1:3 expected a pair of surrogates, found “\\ude00\"”." },
  { "surrogates-the-wrong-way", "[\"\\ude00\\ud83d\"]", "At 1:3 expected a pair of surrogates, found “\\ude00\\ud83d\"”." },
  { "two-high-surrogates", "[\"\\ud83d\\ud83d\"]", "At 1:3 expected a pair of surrogates, found “\\ud83d\\ud83d\"”." },
  { "byte-order-mark", "\xef\xbb\xbf{}", "At 1:1 expected UTF-8 without a byte order mark, found one." },
  { "latin-1", "{\n \"caf\xe9\": 1}", "At 2:6 expected UTF-8 text, found the byte 0xE9." },
  { "overlong", "[\"\xc0\xaf\"]", "At 1:3 expected UTF-8 text, found the byte 0xC0." },
  { "surrogate-bytes", "[\"\xed\xa0\x80\"]", "At 1:3 expected UTF-8 text, found the byte 0xED." },
  { "beyond-unicode", "[\"\xf5\x80\x80\x80\"]", "At 1:3 expected UTF-8 text, found the byte 0xF5." },
  { "no-break-space", "[\xc2\xa0" "1]", "At 1:2 expected a value, found the character U+00A0." },
  { "form-feed", "[\f1]", "At 1:2 expected a value, found the character U+000C." },
  { "columns-count-characters", "[\"é\", \"中\", x]", "At 1:12 expected a value, found “x”." },
  { "long-things-are-cut", "[abcdefghijklmnopqrstuvwxyz]", "At 1:2 expected a value, found “abcdefghijklmnopqrstuvwx…”." },
};

static void
assert_refused (const char *text,
                gsize       length,
                int         code,
                const char *message)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) node = tr_strict_parse (text, length, &error);

  g_assert_null (node);
  g_assert_error (error, TR_TRIAL_ERROR, code);
  g_assert_cmpstr (error->message, ==, message);
}

static void
test_refused (gconstpointer data)
{
  const Refusal *refusal = data;

  assert_refused (refusal->text, strlen (refusal->text), TR_TRIAL_ERROR_FORMAT, refusal->message);
}

static void
test_raw_nul (void)
{
  assert_refused ("[\"a\0b\"]", 7, TR_TRIAL_ERROR_FORMAT, "At 1:4 expected text without NUL, found the byte 0x00.");
  assert_refused ("{}\0", 3, TR_TRIAL_ERROR_FORMAT, "At 1:3 expected text without NUL, found the byte 0x00.");
}

/* Taken, and what the tree says in our spelling. */
static const struct { const char *name, *text, *compact; } accepted[] = {
  { "scalars", " [true, false, null, \"\"] ", "[true,false,null,\"\"]" },
  { "alone", "\t\r\n\"alone\"\n", "\"alone\"" },
  { "empty", "{\"\": {}, \"a\": []}", "{\"\":{},\"a\":[]}" },
  { "order-kept", "{\"b\":1,\"a\":2,\"10\":3,\"9\":4}", "{\"b\":1,\"a\":2,\"10\":3,\"9\":4}" },
  { "numbers", "[0, -0, -0.0, 1.50, 1E3, 1e-7, 123456789012345678, 5e-324, 1e-999]",
    "[0,0,0,1.5,1000,1e-07,123456789012345678,5e-324,0]" },
  { "greatest-double", "[1.7976931348623157e308]", "[1.7976931348623157e+308]" },
  { "beyond-64-bits", "[9223372036854775807, 9223372036854775808, -9223372036854775809, 123456789012345678901234567890]",
    "[9223372036854775807,9.223372036854776e+18,-9.223372036854776e+18,1.2345678901234568e+29]" },
  { "escapes", "[\"\\u00e9\\ud83d\\ude00\\/\\b\\f\\n\\r\\t\\\"\\\\\\u001f\"]", "[\"é😀/\\b\\f\\n\\r\\t\\\"\\\\\\u001f\"]" },
  { "noncharacters", "[\"\\uffff\\u007f\"]", "[\"\xef\xbf\xbf\x7f\"]" },
  { "same-name-elsewhere", "[{\"a\":1},{\"a\":{\"a\":2}}]", "[{\"a\":1},{\"a\":{\"a\":2}}]" },
};

static void
test_accepted (gconstpointer data)
{
  guint i = GPOINTER_TO_UINT (data);
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) node = tr_strict_parse (accepted[i].text, strlen (accepted[i].text), &error);
  g_autoptr (GString) compact = g_string_new (NULL);

  g_assert_no_error (error);
  tr_strict_append_node (compact, node);
  g_assert_cmpstr (compact->str, ==, accepted[i].compact);
}

static char *
dup_nested (guint depth)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < depth; i++)
    g_string_append (text, i % 2 == 0 ? "[" : "{\"a\":");
  g_string_append_c (text, '1');
  for (guint i = depth; i-- > 0;)
    g_string_append_c (text, i % 2 == 0 ? ']' : '}');

  return g_string_free (text, FALSE);
}

static void
test_depth (void)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *allowed = dup_nested (64);
  g_autofree char *deeper = dup_nested (65);
  g_autoptr (JsonNode) node = tr_strict_parse (allowed, strlen (allowed), &error);

  g_assert_no_error (error);
  g_assert_nonnull (node);
  assert_refused (deeper, strlen (deeper), TR_TRIAL_ERROR_FORMAT,
                  "At 1:193 expected at most 64 levels of nesting, found “[1”.");
}

static void
test_many_brackets (void)
{
  g_autofree char *brackets = g_strnfill (75000, '[');

  assert_refused (brackets, 75000, TR_TRIAL_ERROR_FORMAT,
                  "At 1:65 expected at most 64 levels of nesting, found “[[[[[[[[[[[[[[[[[[[[[[[[…”.");
}

static void
test_size (void)
{
  const gsize most = 4 * 1024 * 1024;
  g_autofree char *text = g_strnfill (most + 1, ' ');
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) node = NULL;

  text[0] = '7';
  node = tr_strict_parse (text, most, &error);
  g_assert_no_error (error);
  g_assert_nonnull (node);
  assert_refused (text, most + 1, TR_TRIAL_ERROR_TOO_LARGE, "Expected at most 4194304 bytes (4 MiB), found 4194305.");
}

/* A text cut anywhere is refused, never read as something else, never read past. */
static void
test_truncated (void)
{
  static const char text[] = "{\"a\":[1.5e+3,-2,\"\\ud83d\\ude00 é\\n\",true,false,null,{\"b\":{}}]}";

  for (gsize length = 0; length < strlen (text); length++)
    {
      g_autofree char *cut = g_memdup2 (text, MAX (length, 1));   /* no NUL after it */
      g_autoptr (GError) error = NULL;
      g_autoptr (JsonNode) node = tr_strict_parse (cut, length, &error);

      g_assert_null (node);
      g_assert_error (error, TR_TRIAL_ERROR, TR_TRIAL_ERROR_FORMAT);
    }
}

/* The spelling of numbers */

static const struct { double value; const char *text; } spellings[] = {
  { 0, "0" }, { -0.0, "0" }, { 1, "1" }, { -18, "-18" }, { 0.1, "0.1" }, { 2.5, "2.5" }, { 13.5, "13.5" },
  { 0.1 + 0.2, "0.30000000000000004" }, { 1.0 / 3, "0.3333333333333333" }, { 2.0 / 3, "0.6666666666666666" },
  { 1e15, "1000000000000000" }, { 9007199254740992, "9007199254740992" }, { 1e22, "1e+22" }, { 1e-7, "1e-07" },
  { 5e-324, "5e-324" }, { 1.7976931348623157e308, "1.7976931348623157e+308" },
  { NAN, "null" }, { INFINITY, "null" }, { -INFINITY, "null" },
};

static void
test_spelling (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (spellings); i++)
    {
      g_autoptr (GString) text = g_string_new (NULL);

      tr_json_append_number (text, spellings[i].value);
      g_assert_cmpstr (text->str, ==, spellings[i].text);
    }
}

static double
random_double (void)
{
  union { guint64 bits; double value; } any;

  do
    any.bits = ((guint64) g_test_rand_int () << 32) ^ (guint32) g_test_rand_int ();
  while (!isfinite (any.value));

  return any.value;
}

/* Any double reads back as itself, in at most 17 digits, through our own scan. */
static void
test_numbers_come_back (void)
{
  for (guint i = 0; i < 20000; i++)
    {
      double value = i % 2 == 0 ? random_double () : g_test_rand_double_range (-1e6, 1e6);
      g_autoptr (GString) text = g_string_new (NULL);
      g_autoptr (GError) error = NULL;

      tr_json_append_number (text, value);
      g_autoptr (JsonNode) node = tr_strict_parse (text->str, text->len, &error);
      g_assert_no_error (error);
      g_assert_cmpfloat (json_node_get_double (node), ==, value);
      g_assert_cmpuint (text->len, <=, 24);
    }
}

static void
test_strings_come_back (void)
{
  for (guint i = 0; i < 2000; i++)
    {
      g_autoptr (GString) any = g_string_new (NULL);
      g_autoptr (GString) text = g_string_new (NULL);
      g_autoptr (GError) error = NULL;

      for (int n = g_test_rand_int_range (0, 40); n > 0; n--)
        {
          gunichar c = (gunichar) g_test_rand_int_range (1, n % 3 == 0 ? 0x110000 : 0x80);

          if (g_unichar_validate (c))
            g_string_append_unichar (any, c);
        }
      tr_json_append_string (text, any->str);
      g_autoptr (JsonNode) node = tr_strict_parse (text->str, text->len, &error);
      g_assert_no_error (error);
      g_assert_cmpstr (json_node_get_string (node), ==, any->str);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (refusals); i++)
    {
      g_autofree char *path = g_strconcat ("/trial/strict/refused/", refusals[i].name, NULL);

      g_test_add_data_func (path, &refusals[i], test_refused);
    }
  for (guint i = 0; i < G_N_ELEMENTS (accepted); i++)
    {
      g_autofree char *path = g_strconcat ("/trial/strict/accepted/", accepted[i].name, NULL);

      g_test_add_data_func (path, GUINT_TO_POINTER (i), test_accepted);
    }
  g_test_add_func ("/trial/strict/refused/raw-nul", test_raw_nul);
  g_test_add_func ("/trial/strict/nesting-ends-at-64", test_depth);
  g_test_add_func ("/trial/strict/many-brackets-do-not-overflow", test_many_brackets);
  g_test_add_func ("/trial/strict/size-ends-at-4-mib", test_size);
  g_test_add_func ("/trial/strict/cut-anywhere-is-refused", test_truncated);
  g_test_add_func ("/trial/json-text/spelling", test_spelling);
  g_test_add_func ("/trial/json-text/numbers-come-back", test_numbers_come_back);
  g_test_add_func ("/trial/json-text/strings-come-back", test_strings_come_back);

  return g_test_run ();
}
