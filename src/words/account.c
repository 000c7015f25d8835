/* account.c: what was rewritten, and what was held, in a few sentences
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Amounts are said as they stand in the lines now, so that they are found
 * again there; what is not held is said in this reader's unit.
 */

#include "config.h"

#include <glib/gi18n-lib.h>

#include "../calc/swap.h"
#include "say.h"

const char *
tr_words_kept (TrKept hold)
{
  switch (hold)
    {
    case TR_KEPT_FAT: return _("Fat");
    case TR_KEPT_WATER: return _("Water");
    case TR_KEPT_SALT: return _("Effective salt");
    case TR_KEPT_YEAST: return _("Yeast by strength");
    case TR_KEPT_SUGARS: return _("Sugars");
    case TR_KEPT_SOLIDS: return _("Milk solids without the fat");
    case TR_N_KEPT:
    default: return _("Weight");
    }
}

static char *
dup_name (const TrDoughFigures *figures,
          const char           *id)
{
  char *name = tr_say_ingredient (figures, id);

  return name != NULL ? name : tr_say_quote (id != NULL ? id : "");
}

static char *
sentence_of_change (const TrDoughFigures *figures,
                    const TrChange       *change,
                    gboolean              is_done)
{
  g_autofree char *name = dup_name (figures, change->is);
  g_autofree char *to = tr_words_one_line (change->to), *from = NULL, *was = NULL;

  if (change->from == NULL)
    /* Translators: amount and ingredient: "20 g Salt" */
    return g_strdup_printf (_("%s %s is new."), to, name);

  from = tr_words_one_line (change->from);
  if (g_strcmp0 (change->was, change->is) == 0)
    /* Translators: ingredient, amount before, amount now */
    return g_strdup_printf (is_done ? _("%s went from %s to %s.") : _("%s goes from %s to %s."), name, from, to);

  was = dup_name (figures, change->was);
  /* Translators: amount and ingredient before, amount and ingredient now */
  return g_strdup_printf (is_done ? _("%s %s became %s %s.") : _("%s %s becomes %s %s."), from, was, to, name);
}

static void
append_changes (GString              *out,
                const TrDoughFigures *figures,
                const TrAccount      *account,
                gboolean              is_done)
{
  for (guint i = 0; i < account->changes->len; i++)
    tr_say_append_sentence (out, sentence_of_change (figures, account->changes->pdata[i], is_done));
}

static gboolean
has_yeast (const TrDoughFigures *figures,
           const TrAccount      *account)
{
  for (guint i = 0; i < account->changes->len; i++)
    {
      const TrChange *change = account->changes->pdata[i];
      TrIngredient ingredient;

      if (change->is != NULL && tr_ingredient_resolve (figures->pantry, change->is, &ingredient)
          && ingredient.fresh_yeast_factor > 0)
        return TRUE;
    }

  return FALSE;
}

static const char *
kept_in_list (TrKept hold)
{
  switch ((int) hold)
    {
    case TR_KEPT_FAT: return _("fat");
    case TR_KEPT_WATER: return _("water");
    case TR_KEPT_SALT: return _("effective salt");
    case TR_KEPT_SUGARS: return _("sugars");
    case TR_KEPT_SOLIDS: return _("milk solids without the fat");
    default: return _("yeast by strength");
    }
}

static char *
sentence_of_moved (const TrReader  *reader,
                   const TrAccount *account,
                   TrKept           hold)
{
  double more_g = account->after_g[hold] - account->before_g[hold];
  g_autofree char *by = tr_words_mass (reader, fabs (more_g));

  if (isnan (more_g))
    return g_strdup_printf (_("%s is not known any more."), tr_words_kept (hold));

  return g_strdup_printf (more_g > 0 ? _("%s is %s more than before.") : _("%s is %s less than before."), tr_words_kept (hold), by);
}

char *
tr_words_account (const TrReader       *reader,
                  const TrDoughFigures *figures,
                  const TrAccount      *account,
                  gboolean              is_done)
{
  static const TrKept told[] = { TR_KEPT_FAT, TR_KEPT_WATER, TR_KEPT_SALT, TR_KEPT_YEAST };
  GString *out = g_string_new (NULL);
  g_autoptr (GString) held = g_string_new (NULL);

  append_changes (out, figures, account, is_done);
  for (guint i = 0; i < G_N_ELEMENTS (told); i++)
    if ((told[i] != TR_KEPT_YEAST || has_yeast (figures, account)) && tr_account_is_held (account, told[i]))
      g_string_append_printf (held, "%s%s", held->len > 0 ? ", " : "", kept_in_list (told[i]));
  if (held->len > 0)
    /* Translators: what a swap leaves alone: "fat, water, effective salt" */
    tr_say_append_sentence (out, g_strdup_printf (_("The same as before: %s."), held->str));
  for (guint i = 0; i < G_N_ELEMENTS (told); i++)
    if (!tr_account_is_held (account, told[i]))
      tr_say_append_sentence (out, sentence_of_moved (reader, account, told[i]));

  return g_string_free (out, FALSE);
}

char *
tr_words_swap_refusal (const TrReader       *reader,
                       const TrDoughFigures *figures,
                       const GError         *error)
{
  const TrSwapRefusal *refusal = tr_swap_error_get_refusal (error);
  g_autofree char *name = NULL, *wanted = NULL, *there = NULL;

  g_return_val_if_fail (refusal != NULL, NULL);

  name = refusal->line >= 0 ? dup_name (figures, tr_dough_get_line (figures->dough, (guint) refusal->line)->ingredient)
                            : g_strdup (_("what would take its place"));
  wanted = tr_words_mass (reader, refusal->wanted_g);
  there = tr_words_mass (reader, refusal->there_g);
  switch ((TrSwapError) error->code)
    {
    case TR_SWAP_ERROR_NOT_WEIGHED:
      return g_strdup_printf (_("%s cannot be weighed yet, so nothing can be kept as it is; write its amount first."), name);
    case TR_SWAP_ERROR_OTHER_KIND:
      return g_strdup_printf (_("%s is of another kind; only what does the same work can take its place."), name);
    case TR_SWAP_ERROR_NOT_KNOWN:
      return g_strdup_printf (_("To keep it (%s) as it is, it must be known how much of it there is in %s."),
                              kept_in_list (refusal->kept), name);
    case TR_SWAP_ERROR_NO_LINE:
      return g_strdup_printf (_("No line of the dough can make up for what changes (%s)."), kept_in_list (refusal->kept));
    case TR_SWAP_ERROR_TOO_LITTLE:
      return g_strdup_printf (_("There is too little %s to keep the rest as it is (%s): %s would have to go, and there are only %s."),
                              name, kept_in_list (refusal->kept), wanted, there);
    case TR_SWAP_ERROR_AT_ONCE:
    default:
      return g_strdup (_("No amounts of these lines keep all of that as it is at once."));
    }
}

/* Repairs */

static char *
dup_target (const TrReader *reader,
            const TrRepair *repair)
{
  return tr_say_with_unit (tr_say_trimmed (reader, repair->target, 2), "%");
}

char *
tr_words_repair (const TrReader *reader,
                 const TrRepair *repair)
{
  static const struct { const char *bring, *add; } texts[TR_N_RATIOS] = {
    [TR_RATIO_ALL_WATER] = { N_("Bring all-water hydration to %s"), N_("Add water, %s") },
    [TR_RATIO_DOUGH_FAT] = { N_("Bring the fat in the dough to %s"), N_("Add butter, %s") },
    [TR_RATIO_ROLL_IN_OF_DOUGH] = { N_("Bring the roll-in to %s of the dough"), N_("Add butter to roll in, %s of the dough") },
    [TR_RATIO_SALT] = { N_("Bring salt to %s"), N_("Add salt, %s") },
    [TR_RATIO_SUGAR] = { N_("Bring sugar to %s"), N_("Add sugar, %s") },
    [TR_RATIO_YEAST_FRESH] = { N_("Bring yeast to %s"), N_("Add yeast, %s") },
    [TR_RATIO_PREFERMENTED] = { N_("Bring prefermented flour to %s"), N_("Add a sponge, %s") },
  };
  g_autofree char *target = dup_target (reader, repair);
  const char *format = _(repair->adds_line ? texts[repair->ratio].add : texts[repair->ratio].bring);
  g_auto (GStrv) parts = g_strsplit (format, "%s", 2);

  return g_strjoinv (target, parts);
}

static const char *
sentence_of_ratio (TrRatio ratio)
{
  switch (ratio)
    {
    case TR_RATIO_ALL_WATER: return N_("All the water, also that of milk and eggs, is now %s of the flour.");
    case TR_RATIO_DOUGH_FAT: return N_("The fat in the dough is now %s of the flour.");
    case TR_RATIO_ROLL_IN_OF_DOUGH: return N_("The roll-in is now %s of the dough.");
    case TR_RATIO_SALT: return N_("Effective salt is now %s of the flour.");
    case TR_RATIO_SUGAR: return N_("Sugar is now %s of the flour.");
    case TR_RATIO_YEAST_FRESH: return N_("Yeast, counted as fresh, is now %s of the flour.");
    case TR_RATIO_PREFERMENTED: return N_("Prefermented flour is now %s of all flour.");
    case TR_N_RATIOS:
    default: g_return_val_if_reached ("%s");
    }
}

char *
tr_words_repaired (const TrReader       *reader,
                   const TrDoughFigures *figures,
                   const TrRepair       *repair,
                   const TrAccount      *account)
{
  g_autofree char *target = dup_target (reader, repair);
  g_auto (GStrv) parts = g_strsplit (_(sentence_of_ratio (repair->ratio)), "%s", 2);
  GString *out = g_string_new (NULL);

  append_changes (out, figures, account, TRUE);
  tr_say_append_sentence (out, g_strjoinv (target, parts));

  return g_string_free (out, FALSE);
}
