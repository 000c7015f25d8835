/* test-look.c: colours that can be told apart, text that fits
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>

#include "picture/shapes.h"

/* ---- contrast, WCAG 2.1: 1.4.3 (text 4.5 : 1), 1.4.11 (shapes 3 : 1) ---- */

static double
linear (double part)
{
  return part <= 0.03928 ? part / 12.92 : pow ((part + 0.055) / 1.055, 2.4);
}

/* Relative luminance, WCAG 2.1, "Relative luminance". */
static double
luminance (const TrColour *colour)
{
  return 0.2126 * linear (colour->r) + 0.7152 * linear (colour->g) + 0.0722 * linear (colour->b);
}

static double
contrast (const TrColour *one,
          const TrColour *other)
{
  double a = luminance (one), b = luminance (other);

  return (MAX (a, b) + 0.05) / (MIN (a, b) + 0.05);
}

static void
test_contrast_formula (void)
{
  /* WCAG 2.1, "Contrast ratio": from 1 to 21. #767676 on white is the
   * commonly quoted lightest grey for text, 4.54 (from memory). */
  TrColour white = { 1, 1, 1 }, black = { 0, 0, 0 }, grey = { 0x76 / 255.0, 0x76 / 255.0, 0x76 / 255.0 };

  g_assert_cmpfloat_with_epsilon (contrast (&white, &black), 21, 1e-9);
  g_assert_cmpfloat_with_epsilon (contrast (&white, &white), 1, 1e-9);
  g_assert_cmpfloat_with_epsilon (contrast (&white, &grey), 4.54, 0.01);
}

static void
check_look (const TrLook *look)
{
  const TrColour *grounds[] = { &look->paper, &look->worktop };
  const TrColour *inks[] = { &look->text, &look->dim, &look->warning, &look->accent };

  for (guint g = 0; g < G_N_ELEMENTS (grounds); g++)
    {
      for (guint i = 0; i < G_N_ELEMENTS (inks); i++)
        g_assert_cmpfloat (contrast (inks[i], grounds[g]), >=, 4.5);
      g_assert_cmpfloat (contrast (&look->dough, grounds[g]), >=, 3);
    }
  /* what is written and drawn on dough and fat */
  g_assert_cmpfloat (contrast (&look->line, &look->dough), >=, 4.5);
  g_assert_cmpfloat (contrast (&look->line, &look->fat), >=, 4.5);
  g_assert_cmpfloat (contrast (&look->inner_line, &look->dough), >=, 3);
  /* fat stays much lighter than dough, also in grey */
  g_assert_cmpfloat (contrast (&look->fat, &look->dough), >=, 3);
  g_assert_cmpfloat (luminance (&look->fat), >, luminance (&look->dough));
  g_assert_cmpfloat (contrast (&look->warning, &look->paper), >=, 3);
}

static void
test_contrast_of_the_looks (void)
{
  TrLook look;

  tr_look_init_paper (&look);
  check_look (&look);
  for (int dark = 0; dark < 2; dark++)
    for (int high = 0; high < 2; high++)
      {
        tr_look_init_screen (&look, dark, high, 13);
        g_assert_cmpint (look.is_dark, ==, dark);
        check_look (&look);
      }
}

/* ---- text ---- */

static void
test_figures_are_tabular (void)
{
  TrLook look;

  tr_look_init_paper (&look);
  for (int weight = 400; weight <= 700; weight += 300)
    for (char digit = '1'; digit <= '9'; digit++)
      g_assert_cmpfloat_with_epsilon (tr_text_width (&look, (char[]) { digit, digit, digit, 0 }, 10, weight),
                                      tr_text_width (&look, "000", 10, weight), 1e-6);
}

/* A thin space is seen, and thinner than one between words, in whatever font is there. */
static void
test_thousands_stand_apart (void)
{
  TrLook look;

  tr_look_init_paper (&look);
  for (int weight = 400; weight <= 700; weight += 300)
    {
      double joined = tr_text_width (&look, "12345", 10, weight), apart = tr_text_width (&look, "12\u202f345", 10, weight);

      g_assert_cmpfloat (apart, >, joined + 0.5);
      g_assert_cmpfloat (apart, <, tr_text_width (&look, "12 345", 10, weight));
    }
}

static void
test_text_wraps_and_shortens (void)
{
  const char *text = "Roll to 439 × 796 × 4 mm and let it relax to 421 × 796 × 4 mm, not less than 12\u202f345";
  TrLook look;

  tr_look_init_paper (&look);
  for (double width = 40; width < 400; width += 7)
    {
      g_auto (GStrv) lines = tr_text_wrap (&look, text, 10, 400, width, 4);
      g_autofree char *shortened = tr_text_shorten (&look, text, 10, 400, width);

      g_assert_cmpuint (g_strv_length (lines), <=, 4);
      g_assert_cmpfloat (tr_text_width (&look, shortened, 10, 400), <=, width + 0.1);
      /* narrower than a size, it must part somewhere */
      for (guint i = 0; lines[i] != NULL && width > 120; i++)
        {
          g_assert_false (g_str_has_suffix (lines[i], "×"));
          g_assert_false (g_str_has_prefix (lines[i], "×"));
          g_assert_false (g_str_has_suffix (lines[i], "\u202f"));
          g_assert_cmpfloat (tr_text_width (&look, lines[i], 10, 400), <=, width + 0.1);
        }
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/picture/look/contrast-formula-is-wcag", test_contrast_formula);
  g_test_add_func ("/picture/look/contrast-is-enough", test_contrast_of_the_looks);
  g_test_add_func ("/picture/text/figures-are-tabular", test_figures_are_tabular);
  g_test_add_func ("/picture/text/thousands-stand-apart", test_thousands_stand_apart);
  g_test_add_func ("/picture/text/lines-keep-numbers-whole", test_text_wraps_and_shortens);

  return g_test_run ();
}
