/* ingredient-names.c: the names of the built-in ingredients, for translators
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The names themselves come from data/ingredients.csv, where a translator's
 * tools do not look. A test keeps this list and that table the same.
 */

#include "config.h"

#include <glib/gi18n-lib.h>

#include "say.h"

const char *const tr_say_ingredient_names[] = {
  NC_("ingredient", "Bread flour"),
  NC_("ingredient", "Plain (all-purpose) flour"),
  NC_("ingredient", "Cake flour"),
  NC_("ingredient", "Wholemeal wheat flour"),
  NC_("ingredient", "Wholegrain spelt"),
  NC_("ingredient", "Light rye flour"),
  NC_("ingredient", "Medium rye flour"),
  NC_("ingredient", "Dark rye flour"),
  NC_("ingredient", "Vital wheat gluten"),
  NC_("ingredient", "Cornstarch"),
  NC_("ingredient", "Barley malt flour"),
  NC_("ingredient", "Water"),
  NC_("ingredient", "Whole milk"),
  NC_("ingredient", "Skimmed milk"),
  NC_("ingredient", "Cultured buttermilk"),
  NC_("ingredient", "Heavy cream"),
  NC_("ingredient", "Half and half cream"),
  NC_("ingredient", "Whole milk powder"),
  NC_("ingredient", "Skimmed milk powder"),
  NC_("ingredient", "Soy drink"),
  NC_("ingredient", "Soy drink, unsweetened"),
  NC_("ingredient", "Almond drink, unsweetened"),
  NC_("ingredient", "Butter, unsalted"),
  NC_("ingredient", "Butter, salted"),
  NC_("ingredient", "Butter oil, anhydrous"),
  NC_("ingredient", "Margarine 80 %, salted"),
  NC_("ingredient", "Margarine 80 %, unsalted"),
  NC_("ingredient", "Pastry margarine"),
  NC_("ingredient", "Vegetable shortening"),
  NC_("ingredient", "Lard"),
  NC_("ingredient", "Egg, whole"),
  NC_("ingredient", "Egg white"),
  NC_("ingredient", "Egg yolk"),
  NC_("ingredient", "Sugar, granulated"),
  NC_("ingredient", "Sugar, brown"),
  NC_("ingredient", "Sugar, icing"),
  NC_("ingredient", "Honey"),
  NC_("ingredient", "Maple syrup"),
  NC_("ingredient", "Malt syrup"),
  NC_("ingredient", "Corn syrup, light"),
  NC_("ingredient", "Salt"),
  NC_("ingredient", "Yeast, fresh"),
  NC_("ingredient", "Yeast, active dry"),
  NC_("ingredient", "Yeast, instant dry"),
  NC_("ingredient", "Cocoa powder"),
  NC_("ingredient", "Almonds"),
  NC_("ingredient", "Almond paste"),
  NC_("ingredient", "Raisins"),
  NC_("ingredient", "Vanilla extract"),
  NC_("ingredient", "Ripe wheat starter"),
  NULL
};
