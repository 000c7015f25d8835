/* test-lineage.c: each dough is drawn once, under the one it comes from, with what was changed
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <string.h>

#include "calc/branch.h"
#include "picture/lineage.h"
#include "samples.h"

static TrPicture *
make (const TrTrial *trial,
      int            current,
      gboolean       is_mirrored,
      double         width)
{
  TrReader reader;
  TrLook look;

  tr_reader_init_plain (&reader, TR_UNITS_METRIC);
  tr_look_init_screen (&look, FALSE, FALSE, 13);
  look.device_scale = 0;
  return tr_lineage_picture_new (trial, current, is_mirrored, &reader, &look, width, tr_lineage_picture_get_lines (trial) * 13);
}

/* A croissant, two that come from it, one of the second, and a puff dough. */
static TrTrial *
family (void)
{
  TrTrial *trial = sample_trial_new (SAMPLE_CROISSANT);
  TrDough *branch;

  sample_add (trial, SAMPLE_PUFF);
  branch = tr_trial_branch_dough (trial, 0, "Warmer");
  branch->method->dough_c += 1;
  branch = tr_trial_branch_dough (trial, 0, "Cooler");
  branch->method->dough_c -= 1;
  branch->handling_loss_percent += 1;
  branch->dough_density_g_ml += 0.1;
  branch->bake_loss_percent = 11;
  branch->cut->trim_mm += 5;
  branch->cut->shrink_percent += 1;
  branch->lock_in->rim_mm += 3;
  branch = tr_trial_branch_dough (trial, (guint) tr_trial_find_dough (trial, branch->id), "Cooler still");

  return trial;
}

static gboolean
says (const TrPicture *picture,
      const char      *words)
{
  g_autoptr (GString) plain = g_string_new (tr_picture_get_description (picture));

  g_string_replace (plain, "\u00a0", " ", 0);
  return strstr (plain->str, words) != NULL;
}

static gboolean
has_text (const TrPicture *picture,
          const char      *words)
{
  for (guint i = 0; i < tr_picture_count_texts (picture); i++)
    if (strstr (tr_picture_get_text (picture, i, NULL), words) != NULL)
      return TRUE;

  return FALSE;
}

static void
check_texts_lie_inside_and_apart (const TrPicture *picture)
{
  double width, height;

  tr_picture_get_size (picture, &width, &height);
  for (guint i = 0; i < tr_picture_count_texts (picture); i++)
    {
      TrBox box;
      const char *text = tr_picture_get_text (picture, i, &box);

      if (box.x < -0.5 || box.y < -0.5 || box.x + box.width > width + 0.5 || box.y + box.height > height + 0.5)
        g_error ("“%s” leaves the picture", text);
      for (guint k = 0; k < i; k++)
        {
          TrBox other;
          const char *under = tr_picture_get_text (picture, k, &other);

          if (box.x < other.x + other.width - 0.5 && other.x < box.x + box.width - 0.5
              && box.y < other.y + other.height - 0.5 && other.y < box.y + box.height - 0.5)
            g_error ("“%s” lies on “%s”", text, under);
        }
    }
}

static void
test_each_dough_can_be_hit_and_says_where_it_comes_from (void)
{
  g_autoptr (TrTrial) trial = family ();
  g_autoptr (TrPicture) picture = make (trial, 0, FALSE, 500);

  check_texts_lie_inside_and_apart (picture);
  for (guint i = 0; i < trial->doughs->len; i++)
    {
      const TrDough *dough = tr_trial_get_dough (trial, i);
      TrBox box;

      g_assert_true (tr_picture_get_box (picture, &(TrHit) { TR_PART_OF_POINT, (int) i }, &box));

      TrHit hit = tr_picture_hit (picture, box.x + box.width / 2, box.y + box.height / 2);
      g_autofree char *text = tr_picture_dup_hit_text (picture, &hit);

      g_assert_cmpint (hit.part, ==, TR_PART_OF_POINT);
      g_assert_cmpint (hit.index, ==, (int) i);
      g_assert_true (g_str_has_prefix (text, dough->name));
      g_assert_cmpint (strstr (text, "\nfrom ") != NULL, ==, dough->from != NULL);
    }
}

static void
test_words_say_what_was_changed (void)
{
  g_autoptr (TrTrial) trial = family ();
  g_autoptr (TrPicture) picture = make (trial, 0, FALSE, 500);
  g_autoptr (TrPicture) wide = make (trial, 0, FALSE, 3000);
  const TrDough *first = tr_trial_get_dough (trial, 0);
  g_autofree char *warmer = g_strdup_printf ("Warmer, from %s: Dough temperature: %g °C → %g °C.", first->name,
                                             first->method->dough_c, first->method->dough_c + 1);

  g_assert_true (says (picture, "5 doughs."));
  g_assert_true (says (picture, warmer));
  g_assert_true (says (picture, "Cooler still, from Cooler: nothing changed yet."));
  /* Seven changes are too long for a narrow line; in words none is left out. */
  g_assert_true (has_text (picture, " more"));
  g_assert_false (has_text (wide, " more"));
  g_assert_true (says (picture, "Rim"));
  for (guint i = 0; i < trial->doughs->len; i++)
    g_assert_true (has_text (picture, tr_trial_get_dough (trial, i)->name));
}

static double
find_left (const TrPicture *picture,
           const char      *text)
{
  for (guint i = 0; i < tr_picture_count_texts (picture); i++)
    {
      TrBox box;

      if (g_str_equal (tr_picture_get_text (picture, i, &box), text))
        return box.x;
    }
  g_error ("no text “%s”", text);
}

static void
test_what_comes_from_another_stands_further_in (void)
{
  g_autoptr (TrTrial) trial = family ();
  g_autoptr (TrPicture) picture = make (trial, 0, FALSE, 500);
  g_autoptr (TrPicture) mirrored = make (trial, 0, TRUE, 500);

  g_assert_cmpfloat (find_left (picture, tr_trial_get_dough (trial, 0)->name), <, find_left (picture, "Cooler"));
  g_assert_cmpfloat (find_left (picture, "Cooler"), <, find_left (picture, "Cooler still"));
  check_texts_lie_inside_and_apart (mirrored);
  g_assert_cmpfloat (find_left (mirrored, "A"), >, find_left (picture, "A"));
}

static void
test_the_longest_chain_keeps_room_for_words (void)
{
  g_autoptr (TrTrial) trial = sample_trial_new (SAMPLE_CROISSANT);

  while (trial->doughs->len < TR_MAX_DOUGHS)
    tr_trial_branch_dough (trial, trial->doughs->len - 1, "The next one of a long, long chain of doughs")->method->dough_c += 0.5;

  g_autoptr (TrPicture) picture = make (trial, 63, FALSE, 360);

  check_texts_lie_inside_and_apart (picture);
  g_assert_true (has_text (picture, "The next one"));
  g_assert_true (has_text (picture, "BL"));
}

static void
test_a_ring_is_drawn_too (void)
{
  g_autoptr (TrTrial) trial = family ();

  tr_set_text (&tr_trial_get_dough (trial, 0)->from, tr_trial_get_dough (trial, 1)->id);

  g_autoptr (TrPicture) picture = make (trial, -1, FALSE, 500);

  check_texts_lie_inside_and_apart (picture);
  g_assert_true (says (picture, "5 doughs."));
}

static void
test_no_dough_makes_a_picture_of_none (void)
{
  g_autoptr (TrTrial) trial = tr_trial_new ();
  g_autoptr (TrPicture) picture = make (trial, -1, FALSE, 500);

  g_assert_cmpuint (tr_picture_count_texts (picture), ==, 0);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/lineage/hits", test_each_dough_can_be_hit_and_says_where_it_comes_from);
  g_test_add_func ("/lineage/words", test_words_say_what_was_changed);
  g_test_add_func ("/lineage/further-in", test_what_comes_from_another_stands_further_in);
  g_test_add_func ("/lineage/longest-chain", test_the_longest_chain_keeps_room_for_words);
  g_test_add_func ("/lineage/ring", test_a_ring_is_drawn_too);
  g_test_add_func ("/lineage/none", test_no_dough_makes_a_picture_of_none);

  return g_test_run ();
}
