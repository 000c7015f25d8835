/* test-problem.c: every reason why a line cannot be weighed is a sentence
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "calc/balance-private.h"
#include "check.h"

static char *
say (TrProblemId  id,
     const char  *text,
     double       first,
     double       second)
{
  TrReader reader = plain (TR_UNITS_METRIC);
  g_autofree char *owned = g_strdup (text);
  TrProblem problem = { id, NULL, owned, { first, second } };

  return tr_words_problem (&reader, &problem);
}

static void
test_every_problem_is_a_sentence (void)
{
  for (int id = TR_PROBLEM_EMPTY; id <= TR_PROBLEM_NOT_SOLVABLE; id++)
    {
      g_autofree char *with = say ((TrProblemId) id, "2 ladles", 1.5, 1500);
      g_autofree char *without = say ((TrProblemId) id, NULL, NAN, NAN);

      g_test_message ("%d: %s | %s", id, with, without);
      check_sentence (with);
      check_sentence (without);
    }
}

static void
test_no_two_problems_sound_the_same (void)
{
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (int id = TR_PROBLEM_EMPTY; id <= TR_PROBLEM_NOT_SOLVABLE; id++)
    g_assert_true (g_hash_table_add (seen, say ((TrProblemId) id, "2 ladles", 1.5, 1500)));
}

static void
test_the_text_that_is_meant_is_quoted (void)
{
  static const TrProblemId quoting[] = {
    TR_PROBLEM_NO_NUMBER, TR_PROBLEM_UNKNOWN_UNIT, TR_PROBLEM_AMBIGUOUS, TR_PROBLEM_NOT_UNDERSTOOD,
    TR_PROBLEM_NO_INGREDIENT, TR_PROBLEM_NO_HOUSEHOLD_WEIGHT,
  };

  for (gsize i = 0; i < G_N_ELEMENTS (quoting); i++)
    {
      g_autofree char *text = say (quoting[i], "2 ladles", 1.5, 1500);

      g_assert_nonnull (strstr (text, "“2 ladles”"));
    }
}

static void
test_an_ambiguous_number_shows_both_readings (void)
{
  g_autofree char *text = say (TR_PROBLEM_AMBIGUOUS, "1,500", 1500, 1.5);

  g_assert_true (g_str_has_prefix (text, "“1,500” can be 1.5 or 1" THIN "500;"));
}

static void
test_what_is_quoted_is_one_short_clean_line (void)
{
  g_autofree char *lines = say (TR_PROBLEM_NOT_UNDERSTOOD, "a\nb\tc\x01", 0, 0);
  g_autofree char *invalid = say (TR_PROBLEM_NOT_UNDERSTOOD, "a\xff", 0, 0);
  g_autofree char *endless = g_strnfill (5000, 'x');
  g_autofree char *shortened = say (TR_PROBLEM_NOT_UNDERSTOOD, endless, 0, 0);

  check_sentence (lines);
  g_assert_null (strpbrk (lines, "\n\t\x01"));
  check_sentence (invalid);
  check_sentence (shortened);
  g_assert_cmpuint (strlen (shortened), <, 250);
}

/* A right-to-left override, not closed, would turn the rest of our sentence. */
static void
test_what_is_quoted_does_not_turn_our_words (void)
{
  g_autofree char *text = say (TR_PROBLEM_NOT_UNDERSTOOD, "\u202e2 \u2067ladles\u200f", 0, 0);
  g_autofree char *only_marks = tr_words_one_line ("\u202a\u202e\u2066\u2069");
  g_autofree char *escapes = tr_words_one_line ("a\xc2\x9b" "1m\u2028b");

  g_assert_nonnull (strstr (text, "“2 ladles\u200f”"));
  g_assert_cmpstr (only_marks, ==, "");
  g_assert_cmpstr (escapes, ==, "a\ufffd1m b");
}

/* A refusal of calc: English in its message, the reader's words and signs on screen. */
static void
test_every_refusal_is_a_sentence_for_its_reader (void)
{
  TrReader comma = with_comma (TR_UNITS_METRIC);
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (int id = TR_REFUSAL_OTHER + 1; id < TR_N_REFUSALS; id++)
    {
      g_autoptr (GError) error = NULL, copy = NULL;
      g_autofree char *sentence = NULL;

      g_assert_false (tr_balance_refuse (&error, (TrRefusalId) id, 12.5, 3.25, 7.75));
      copy = g_error_copy (error);
      sentence = tr_words_error (&comma, copy);
      check_sentence (sentence);
      check_sentence (error->message);
      g_assert_null (strstr (error->message, "{"));
      g_assert_null (strstr (sentence, "12.5"));
      if (strstr (error->message, "12.5 %") != NULL)
        g_assert_nonnull (strstr (sentence, "12,5" NB "%"));
      g_assert_true (g_hash_table_add (seen, g_strdup (sentence)));
    }
}

static void
test_other_errors_keep_their_message (void)
{
  TrReader reader = with_comma (TR_UNITS_METRIC);
  g_autoptr (GError) of_another = g_error_new_literal (G_NUMBER_PARSER_ERROR, 0, "Not 1.5.");
  g_autoptr (GError) unnamed = g_error_new_literal (TR_BALANCE_ERROR, TR_BALANCE_ERROR_REACH, "Not 2.5.");
  g_autofree char *first = tr_words_error (&reader, of_another), *second = tr_words_error (&reader, unnamed);

  g_assert_cmpstr (first, ==, "Not 1.5.");
  g_assert_cmpstr (second, ==, "Not 2.5.");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/words/problem/every-problem-is-a-sentence", test_every_problem_is_a_sentence);
  g_test_add_func ("/words/problem/no-two-sound-the-same", test_no_two_problems_sound_the_same);
  g_test_add_func ("/words/problem/the-text-that-is-meant-is-quoted", test_the_text_that_is_meant_is_quoted);
  g_test_add_func ("/words/problem/an-ambiguous-number-shows-both-readings", test_an_ambiguous_number_shows_both_readings);
  g_test_add_func ("/words/problem/what-is-quoted-is-one-short-clean-line", test_what_is_quoted_is_one_short_clean_line);
  g_test_add_func ("/words/refusal/every-one-is-a-sentence-for-its-reader", test_every_refusal_is_a_sentence_for_its_reader);
  g_test_add_func ("/words/refusal/other-errors-keep-their-message", test_other_errors_keep_their_message);
  g_test_add_func ("/words/problem/what-is-quoted-does-not-turn-our-words", test_what_is_quoted_does_not_turn_our_words);

  return g_test_run ();
}
