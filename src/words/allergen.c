/* allergen.c: allergens by the names of EU 1169/2011, Annex II
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The fourteen substances in the order of the annex; a cereal or a nut is
 * named inside its group. `unknown` means that the product decides. An id the
 * annex does not have is the baker's own word and stands as written.
 */

#include "config.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "say.h"

typedef struct {
  const char *id;
  const char *group;             /* NULL: stands alone */
  const char *name;
} Allergen;

#define GLUTEN NC_("allergen", "cereals containing gluten")
#define NUTS NC_("allergen", "nuts")

/* EU 1169/2011, Annex II, 1 to 14. */
static const Allergen annex[] = {
  { "gluten-wheat", GLUTEN, NC_("allergen", "wheat") },
  { "gluten-spelt", GLUTEN, NC_("allergen", "spelt (wheat)") },
  { "gluten-khorasan", GLUTEN, NC_("allergen", "khorasan wheat") },
  { "gluten-rye", GLUTEN, NC_("allergen", "rye") },
  { "gluten-barley", GLUTEN, NC_("allergen", "barley") },
  { "gluten-oats", GLUTEN, NC_("allergen", "oats") },
  { "crustaceans", NULL, NC_("allergen", "crustaceans") },
  { "egg", NULL, NC_("allergen", "eggs") },
  { "fish", NULL, NC_("allergen", "fish") },
  { "peanut", NULL, NC_("allergen", "peanuts") },
  { "soy", NULL, NC_("allergen", "soybeans") },
  { "milk", NULL, NC_("allergen", "milk") },
  { "nuts-almond", NUTS, NC_("allergen", "almonds") },
  { "nuts-hazelnut", NUTS, NC_("allergen", "hazelnuts") },
  { "nuts-walnut", NUTS, NC_("allergen", "walnuts") },
  { "nuts-cashew", NUTS, NC_("allergen", "cashews") },
  { "nuts-pecan", NUTS, NC_("allergen", "pecan nuts") },
  { "nuts-brazil", NUTS, NC_("allergen", "Brazil nuts") },
  { "nuts-pistachio", NUTS, NC_("allergen", "pistachio nuts") },
  { "nuts-macadamia", NUTS, NC_("allergen", "macadamia nuts") },
  { "celery", NULL, NC_("allergen", "celery") },
  { "mustard", NULL, NC_("allergen", "mustard") },
  { "sesame", NULL, NC_("allergen", "sesame seeds") },
  { "sulphites", NULL, NC_("allergen", "sulphur dioxide and sulphites") },
  { "lupin", NULL, NC_("allergen", "lupin") },
  { "molluscs", NULL, NC_("allergen", "molluscs") },
};

static const char *
translated (const char *name)
{
  return g_dpgettext2 (GETTEXT_PACKAGE, "allergen", name);
}

const char *
tr_words_annex_allergen (guint index)
{
  return index < G_N_ELEMENTS (annex) ? annex[index].id : NULL;
}

static const Allergen *
find (const char *id)
{
  for (gsize i = 0; i < G_N_ELEMENTS (annex); i++)
    if (g_str_equal (annex[i].id, id))
      return &annex[i];
  return NULL;
}

const char *
tr_words_allergen (const char *id)
{
  const Allergen *allergen;

  g_return_val_if_fail (id != NULL, NULL);

  if (g_str_equal (id, "unknown"))
    return translated (NC_("allergen", "check the pack"));
  allergen = find (id);
  return allergen == NULL ? id : translated (allergen->name);
}

/* Members of one group are joined inside its brackets:
 * "cereals containing gluten (wheat, rye)". */
static void
append_annex (GString *out,
              char   **ids)
{
  const char *group = NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (annex); i++)
    {
      gboolean joins = group != NULL && g_strcmp0 (annex[i].group, group) == 0;

      if (!g_strv_contains ((const char *const *) ids, annex[i].id))
        continue;
      if (group != NULL && !joins)
        g_string_append_c (out, ')');
      if (out->len > 0)
        g_string_append (out, ", ");
      if (!joins && annex[i].group != NULL)
        g_string_append_printf (out, "%s (", translated (annex[i].group));
      g_string_append (out, translated (annex[i].name));
      group = annex[i].group;
    }
  if (group != NULL)
    g_string_append_c (out, ')');
}

char *
tr_words_allergens (char **ids)
{
  GString *out = g_string_new (NULL);
  gboolean check = FALSE;

  if (ids != NULL)
    append_annex (out, ids);
  for (char **id = ids; id != NULL && *id != NULL; id++)
    {
      if (g_str_equal (*id, "unknown"))
        check = TRUE;
      else if (find (*id) == NULL)
        g_string_append_printf (out, "%s%s", out->len > 0 ? ", " : "", *id);
    }
  if (check)
    g_string_append_printf (out, "%s%s", out->len > 0 ? "; " : "", tr_words_allergen ("unknown"));
  else if (out->len == 0)
    g_string_append (out, translated (NC_("allergen", "none known")));

  return g_string_free (out, FALSE);
}
