/* finding-formula.c: sentences about the lines, the ratios and the allergens
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include <glib/gi18n-lib.h>

#include "finding.h"

char *
tr_sentence_no_flour (const TrSaid *said)
{
  if (said->finding->with[0] < 0.5)
    return g_strdup (_("The formula has no lines yet; add a flour, which everything else is measured by."));
  return g_strdup (_("No line is a flour, so nothing can be given in percent of it; add the flour."));
}

char *
tr_sentence_not_weighed (const TrSaid *said)
{
  GPtrArray *problems = said->figures->formula.problems;
  double index = said->finding->with[0];
  GString *out = g_string_new (NULL);

  if (said->name != NULL)
    g_string_append_printf (out, "%s:", said->name);
  if (problems != NULL && index >= 0 && index < problems->len)
    tr_say_append_sentence (out, tr_words_problem (said->reader, g_ptr_array_index (problems, (guint) index)));
  else
    tr_say_append_sentence (out, g_strdup (_("The line cannot be weighed; write its amount as a mass.")));
  if (isfinite (said->finding->with[1]))
    tr_say_append_sentence (out, g_strdup (_("Until then the totals are incomplete.")));
  return g_string_free (out, FALSE);
}

/* "80 %", "2.5 %": as few decimals as it has. */
char *
tr_said_percent_trimmed (const TrSaid *said,
                         double        percent,
                         int           max_decimals)
{
  return tr_say_with_unit (tr_say_trimmed (said->reader, percent, max_decimals), "%");
}

static char *
sentence_bare_percent (const TrSaid *said)
{
  const double *with = said->finding->with;
  g_autofree char *value = tr_said_percent_trimmed (said, said->finding->value, 2);
  g_autofree char *flour = tr_words_percent (said->reader, with[0]);
  g_autofree char *dough = tr_words_percent (said->reader, with[1]);
  g_autofree char *total = tr_words_percent (said->reader, with[2]);
  GString *out = g_string_new (NULL);

  tr_say_append_sentence (out, g_strdup_printf (_("%s in the roll-in is read as percent of the flour."), value));
  if (isfinite (with[0]) && isfinite (with[1]) && isfinite (with[2]))
    tr_say_append_sentence (out, g_strdup_printf (_("The whole roll-in is then %s of the flour, %s of the dough and %s of "
                                                    "everything."), flour, dough, total));
  tr_say_append_sentence (out, g_strdup (_("If another was meant, write “% of dough” or “% of total”.")));
  return g_string_free (out, FALSE);
}

char *
tr_sentence_amount (const TrSaid *said)
{
  const char *which = said->finding->name != NULL ? said->finding->name : "";
  g_autofree char *value = NULL;

  if (g_str_equal (which, "bare-percent"))
    return sentence_bare_percent (said);
  if (g_str_equal (which, "assumed-flour"))
    {
      value = tr_words_mass (said->reader, said->finding->value);
      return g_strdup_printf (_("Every flour is written in percent, so %s of flour are assumed; write one of them as a mass, or "
                                "choose a batch, to say how much it is."), value);
    }
  value = tr_say_quantity (said->reader, said->finding->value, said->finding->with[0]);
  return g_strdup_printf (_("A range is written, and its mean of %s is used; write one amount once you know it."), value);
}

/* "1.6–2.4 %" */
static char *
band_text (const TrSaid *said)
{
  g_autofree char *low = tr_say_trimmed (said->reader, said->finding->with[0], 2);
  g_autofree char *high = tr_say_trimmed (said->reader, said->finding->with[1], 2);

  if (fabs (said->finding->with[0] - said->finding->with[1]) < 1e-9)
    return tr_say_with_unit (g_steal_pointer (&low), "%");
  return tr_say_with_unit (g_strconcat (low, "–", high, NULL), "%");
}

static const char *
kind_in_sentence (const TrSaid *said)
{
  switch ((int) said->figures->dough->kind)
    {
    case TR_KIND_CROISSANT: return _("a croissant dough");
    case TR_KIND_DANISH: return _("a Danish dough");
    case TR_KIND_PUFF: return _("puff pastry");
    default: return _("this kind of dough");
    }
}

gboolean
tr_said_is_over (const TrSaid *said)
{
  return said->finding->value > said->finding->limit;
}

char *
tr_sentence_salt (const TrSaid *said)
{
  g_autofree char *value = NULL, *limit = NULL, *band = band_text (said);
  double from_fat = said->finding->with[2];
  GString *out;

  if (said->finding->value <= 0)
    return g_strdup_printf (_("There is no salt; usual is %s of the flour of %s. Add some, unless it is left out on purpose."),
                            band, kind_in_sentence (said));
  out = g_string_new (NULL);
  tr_say_apart (said->reader, said->finding->value, said->finding->limit, 1, "%", &value, &limit);
  tr_say_append_sentence (out, g_strdup_printf (tr_said_is_over (said) ? _("Salt is %s of the flour, more than the usual %s of %s.")
                                                               : _("Salt is %s of the flour, less than the usual %s of %s."),
                                                value, band, kind_in_sentence (said)));
  if (said->name != NULL && isfinite (from_fat))
    {
      g_autofree char *points = tr_say_trimmed (said->reader, from_fat, 1);

      tr_say_append_sentence (out, g_strdup_printf (_("%s brings %s points of it; take an unsalted fat, or so much less salt."),
                                                    said->name, points));
    }
  else
    tr_say_append_sentence (out, g_strdup (tr_said_is_over (said) ? _("Take less salt.") : _("Take more salt, unless it is left out "
                                                                                      "on purpose.")));
  return g_string_free (out, FALSE);
}

static int
find_ratio (const char *key)
{
  for (int i = 0; key != NULL && i < TR_N_RATIOS; i++)
    if (g_strcmp0 (tr_ratio_key ((TrRatio) i), key) == 0)
      return i;
  return -1;
}

/* Each ratio in its own words, so that it says what it is a share of. */
static char *
ratio_is (const TrSaid *said,
          const char *value)
{
  switch (find_ratio (said->finding->name))
    {
    case TR_RATIO_ALL_WATER: return g_strdup_printf (_("All the water, also that of milk and eggs, is %s of the flour"), value);
    case TR_RATIO_DOUGH_FAT: return g_strdup_printf (_("The fat in the dough is %s of the flour"), value);
    case TR_RATIO_ROLL_IN_OF_DOUGH: return g_strdup_printf (_("The roll-in is %s of the dough"), value);
    case TR_RATIO_SALT: return g_strdup_printf (_("Salt is %s of the flour"), value);
    case TR_RATIO_SUGAR: return g_strdup_printf (_("Sugar is %s of the flour"), value);
    case TR_RATIO_YEAST_FRESH: return g_strdup_printf (_("Yeast, counted as fresh, is %s of the flour"), value);
    case TR_RATIO_PREFERMENTED: return g_strdup_printf (_("Prefermented flour is %s of all flour"), value);
    default: return g_strdup_printf (_("One of the ratios is %s"), value);
    }
}

char *
tr_sentence_band (const TrSaid *said)
{
  g_autofree char *value = NULL, *limit = NULL, *band = band_text (said), *is = NULL;

  tr_say_apart (said->reader, said->finding->value, said->finding->limit, 1, "%", &value, &limit);
  is = ratio_is (said, value);
  if (tr_said_is_over (said))
    return g_strdup_printf (_("%s; usual for %s is %s. Take less, unless that is what you want."),
                            is, kind_in_sentence (said), band);
  return g_strdup_printf (_("%s; usual for %s is %s. Take more, unless that is what you want."),
                          is, kind_in_sentence (said), band);
}

char *
tr_sentence_butter_legal (const TrSaid *said)
{
  const double *with = said->finding->with;
  g_autofree char *fat = tr_words_percent (said->reader, said->finding->value);
  g_autofree char *water = tr_words_percent (said->reader, with[0]);
  g_autofree char *fat_limit = tr_said_percent_trimmed (said, said->finding->limit, 1);
  g_autofree char *water_limit = tr_said_percent_trimmed (said, with[1], 1);
  const char *name = said->name != NULL ? said->name : _("The butter");
  gboolean has_fat = isfinite (said->finding->value) && isfinite (said->finding->limit);
  gboolean has_water = isfinite (with[0]) && isfinite (with[1]);
  GString *out = g_string_new (NULL);

  if (has_fat && has_water)
    tr_say_append_sentence (out, g_strdup_printf (_("%s has %s fat and %s water; what is sold as butter has at least "
                                                    "%s fat and at most %s water."),
                                                  name, fat, water, fat_limit, water_limit));
  else if (has_fat)
    tr_say_append_sentence (out, g_strdup_printf (_("%s has %s fat; what is sold as butter has at least %s."), name, fat, fat_limit));
  else if (has_water)
    tr_say_append_sentence (out, g_strdup_printf (_("%s has %s water; what is sold as butter has at most %s."), name, water, water_limit));
  else
    tr_say_append_sentence (out, g_strdup_printf (_("%s may not be what is sold as butter."), name));
  tr_say_append_sentence (out, g_strdup (with[2] > 0.5
                                         ? _("The numbers are the built-in table’s; write those of your pack.")
                                         : _("Compare it with the pack.")));
  return g_string_free (out, FALSE);
}

char *
tr_sentence_legal_minimum (const TrSaid *said)
{
  g_autofree char *value = NULL, *limit = NULL;
  g_autofree char *plain = tr_words_percent (said->reader, said->finding->with[0]);
  GString *out = g_string_new (NULL);

  tr_say_apart (said->reader, said->finding->value, said->finding->limit, 1, "%", &value, &limit);
  if (g_strcmp0 (said->finding->name, "puff") == 0)
    tr_say_append_sentence (out, g_strdup_printf (_("The fat of the roll-in is %s of the flour; where the name puff pastry is "
                                                    "protected it may ask for %s."), value, limit));
  else
    tr_say_append_sentence (out, g_strdup_printf (_("The fat of the roll-in is %s of the flour; where the name Danish is "
                                                    "protected it may ask for %s."), value, limit));
  if (isfinite (said->finding->with[0]))
    tr_say_append_sentence (out, g_strdup_printf (_("A plain yeasted laminated pastry asks for %s."), plain));
  tr_say_append_sentence (out, g_strdup (_("Look up your local rules before you sell it under that name.")));
  return g_string_free (out, FALSE);
}

char *
tr_sentence_spoon (const TrSaid *said)
{
  g_autofree char *spoons = tr_say_quantity (said->reader, said->finding->with[1], said->finding->with[0]);
  g_autofree char *grams = tr_words_mass (said->reader, said->finding->value);
  const char *name = said->name != NULL ? said->name : _("This line");
  gboolean salt = said->finding->id == TR_FINDING_SPOON_SALT;

  return g_strdup_printf (salt ? _("%s by the spoon: %s are taken as %s, but the same spoon of coarse crystals can be half "
                                   "of that; weigh it.")
                               : _("%s by the spoon: %s are taken as %s, but makes and kinds of yeast differ; weigh it."),
                          name, spoons, grams);
}

char *
tr_sentence_cold_chain (const TrSaid *said)
{
  g_autofree char *hours = tr_say_with_unit (tr_say_trimmed (said->reader, said->finding->value, 1), _("h"));
  g_autofree char *limit = tr_say_with_unit (tr_say_trimmed (said->reader, said->finding->limit, 1), _("h"));
  g_autofree char *cold = tr_words_temperature (said->reader, 5);
  const char *name = said->name != NULL ? said->name : _("Egg or dairy");
  GString *out = g_string_new (NULL);

  tr_say_append_sentence (out, g_strdup_printf (_("%s is above %s for %s; over %s germs can grow in it."),
                                                name, cold, hours, limit));
  tr_say_append_sentence (out, g_strdup (said->finding->with[1] > 0.5
                                         ? _("Baking comes after it, but keep it cold as long as the method allows; your local "
                                             "rules decide.")
                                         : _("Keep it cold until it is used and throw away what is left over; your local rules "
                                             "decide.")));
  return g_string_free (out, FALSE);
}

char *
tr_sentence_allergens (const TrSaid *said)
{
  g_auto (GStrv) ids = g_strsplit (said->finding->name != NULL ? said->finding->name : "", ",", -1);
  g_autofree char *text = tr_words_allergens (ids);

  if (*ids == NULL)
    return g_strdup (_("No allergen of the law’s list is in the lines; what else was on the bench still counts."));
  return g_strdup_printf (_("Allergens in the lines: %s. What else was on the bench still counts."), text);
}
