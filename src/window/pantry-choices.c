/* pantry-choices.c: what is ticked of an ingredient of the baker's own
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Parts that are not known, and allergens by the names of EU 1169/2011,
 * Annex II. Invariant: own allergens are sorted and each stands once.
 */

#include "config.h"

#include "pantry-members.h"

#include <glib/gi18n-lib.h>
#include <string.h>

static TrOwnIngredient *
get_own (const TrTrial *trial,
         guint          index)
{
  return index < trial->pantry->own->len ? g_ptr_array_index (trial->pantry->own, index) : NULL;
}

/* ---- not known ---- */

static int
get_unknown (const TrTrial *trial,
             int            dough,
             guint          item)
{
  const TrOwnIngredient *own = get_own (trial, item / TR_PANTRY_SLOTS);

  return own != NULL ? own->unknown[item % TR_PANTRY_SLOTS] != FALSE : -1;
}

static void
set_unknown (TrTrial              *draft,
             int                   dough,
             guint                 item,
             guint                 value,
             const TrDoughFigures *figures)
{
  TrOwnIngredient *own = get_own (draft, item / TR_PANTRY_SLOTS);
  guint part = item % TR_PANTRY_SLOTS;

  own->unknown[part] = value != 0;
  if (value != 0)
    own->per_100g[part] = NAN;
}

static char *
dup_unknown_pointer (const TrTrial *trial,
                     int            dough,
                     guint          item)
{
  return g_strdup_printf ("/ingredients/%u/per_100g/%s/known", item / TR_PANTRY_SLOTS, tr_part_id (item % TR_PANTRY_SLOTS));
}

#define UNKNOWN(label) { "/ingredients/%u/per_100g/", label, N_("change what is known of an ingredient"), NULL, 2, NULL, get_unknown, set_unknown, \
                         .is_tick = TRUE, .dup_pointer = dup_unknown_pointer }

const TrChoice *
tr_pantry_get_unknowns (void)
{
  static const TrChoice unknowns[TR_N_PARTS] = {
    [TR_PART_WATER] = UNKNOWN (N_("Water not known")), [TR_PART_FAT] = UNKNOWN (N_("Fat not known")),
    [TR_PART_PROTEIN] = UNKNOWN (N_("Protein not known")), [TR_PART_CARBOHYDRATE] = UNKNOWN (N_("Carbohydrate not known")),
    [TR_PART_FIBRE] = UNKNOWN (N_("Fibre not known")), [TR_PART_SUGARS] = UNKNOWN (N_("Sugars not known")),
    [TR_PART_ASH] = UNKNOWN (N_("Ash not known")), [TR_PART_SODIUM_MG] = UNKNOWN (N_("Salt not known")),
  };

  return unknowns;
}

/* ---- allergens ---- */

enum { AS_THE_OTHER, AS_TICKED, N_BYS };

static char *
dup_by_name (guint value)
{
  return g_strdup (value == AS_THE_OTHER ? _("as what it is like") : _("as ticked here"));
}

static int
get_by (const TrTrial *trial,
        int            dough,
        guint          item)
{
  const TrOwnIngredient *own = get_own (trial, item);

  if (own == NULL)
    return -1;

  return own->allergens != NULL ? AS_TICKED : AS_THE_OTHER;
}

/* Ticking begins with what counted until then. */
static void
set_by (TrTrial              *draft,
        int                   dough,
        guint                 item,
        guint                 value,
        const TrDoughFigures *figures)
{
  TrOwnIngredient *own = get_own (draft, item);
  TrIngredient as;

  g_clear_pointer (&own->allergens, g_strfreev);
  if (value == AS_TICKED && tr_pantry_resolve (draft, item, &as))
    own->allergens = g_strdupv ((char **) as.allergens);
}

const TrChoice *
tr_pantry_get_allergens_by (void)
{
  static const TrChoice by = {
    "/ingredients/%u/allergens", N_("Allergens"), N_("change whose allergens count"),
    N_("By Annex II of Regulation (EU) 1169/2011. What the pack says counts, traces and the kitchen's own rules besides"),
    N_BYS, dup_by_name, get_by, set_by,
  };

  return &by;
}

/* After the annex: what nobody knows. */
static const char *
get_allergen (guint slot)
{
  const char *id = tr_words_annex_allergen (slot);

  return id != NULL ? id : "unknown";
}

static const char *
get_label (guint slot)
{
  const char *id = tr_words_annex_allergen (slot);

  return id != NULL ? tr_words_allergen (id) : N_("not sure: check the pack");
}

static int
get_ticked (const TrTrial *trial,
            int            dough,
            guint          item)
{
  const TrOwnIngredient *own = get_own (trial, item / TR_PANTRY_SLOTS);

  if (own == NULL || own->allergens == NULL)
    return -1;

  return g_strv_contains ((const char *const *) own->allergens, get_allergen (item % TR_PANTRY_SLOTS));
}

static int
compare_ids (gconstpointer a,
             gconstpointer b)
{
  return strcmp (*(char *const *) a, *(char *const *) b);
}

static void
set_ticked (TrTrial              *draft,
            int                   dough,
            guint                 item,
            guint                 value,
            const TrDoughFigures *figures)
{
  TrOwnIngredient *own = get_own (draft, item / TR_PANTRY_SLOTS);
  const char *id = get_allergen (item % TR_PANTRY_SLOTS);
  GPtrArray *ids = g_ptr_array_new ();

  for (guint i = 0; own->allergens[i] != NULL; i++)
    if (!g_str_equal (own->allergens[i], id))
      g_ptr_array_add (ids, g_strdup (own->allergens[i]));
  if (value != 0)
    g_ptr_array_add (ids, g_strdup (id));
  g_ptr_array_sort (ids, compare_ids);
  g_ptr_array_add (ids, NULL);
  g_strfreev (own->allergens);
  own->allergens = (char **) g_ptr_array_free (ids, FALSE);
}

static char *
dup_ticked_pointer (const TrTrial *trial,
                    int            dough,
                    guint          item)
{
  return g_strdup_printf ("/ingredients/%u/allergens/%s", item / TR_PANTRY_SLOTS, get_allergen (item % TR_PANTRY_SLOTS));
}

TrChoice *
tr_pantry_new_allergens (guint *n_choices)
{
  guint n = 0;

  while (tr_words_annex_allergen (n) != NULL)
    n++;
  *n_choices = n + 1;

  TrChoice *choices = g_new0 (TrChoice, *n_choices);

  for (guint i = 0; i < *n_choices; i++)
    choices[i] = (TrChoice) {
      "/ingredients/%u/allergens/", get_label (i), N_("change the allergens of an ingredient"), NULL, 2, NULL,
      get_ticked, set_ticked, .is_tick = TRUE, .dup_pointer = dup_ticked_pointer,
    };

  return choices;
}
