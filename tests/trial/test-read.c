/* test-read.c: documents are taken whole or refused whole, and come back as they were
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <string.h>

#include "sample.h"
#include "trial/members.h"
#include "trial/strict.h"

/* Every refusal: a piece of the sample, what stands there instead, what is said. */
typedef struct {
  const char *name, *piece, *instead, *message;
  gboolean is_other_code;        /* than TR_TRIAL_ERROR_VALUE */
  int code;
} Refusal;

#define OWN "\"id\": \"flour-mill\", \"like\": \"flour-bread\""
#define LINE "\"ingredient\": \"butter-cliff\", \"amount\": \"300 g\""
#define ROUND "\"diameter_mm\": 80,\n        \"gap_mm\": 0,"
#define NUMBER "expected a number from 0 to 1000000000, found "
#define OR_NULL "expected a number from 0 to 1000000000 or null, found "
#define MINUTES(m) "\"minutes\": " m
/* 201 bytes, 67 characters */
#define TOO_LONG_67 "中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中中"

static const Refusal refusals[] = {
  { "format-of-somebody-else", "\"tourier-trial\"", "\"cake\"",
    "At /format expected \"tourier-trial\", found \"cake\".", TRUE, TR_TRIAL_ERROR_FORMAT },
  { "format-not-text", "\"tourier-trial\"", "1", "At /format expected \"tourier-trial\", found 1.", TRUE, TR_TRIAL_ERROR_FORMAT },
  { "no-format", "\"format\": \"tourier-trial\",", "", "At /format expected \"tourier-trial\", found nothing.", TRUE,
    TR_TRIAL_ERROR_FORMAT },
  { "no-version", "\"version\": 1,", "", "At /version expected 1, found nothing." },
  { "version-above-ours", "\"version\": 1", "\"version\": 2",
    "At /version expected version 1 (the file is from a newer Tourier), found 2.", TRUE, TR_TRIAL_ERROR_VERSION },
  { "version-between", "\"version\": 1", "\"version\": 1.5",
    "At /version expected version 1 (the file is from a newer Tourier), found 1.5.", TRUE, TR_TRIAL_ERROR_VERSION },
  { "version-below-ours", "\"version\": 1", "\"version\": 0",
    "At /version expected version 1, found 0.", TRUE, TR_TRIAL_ERROR_VERSION },
  { "version-a-text", "\"version\": 1", "\"version\": \"1\"", "At /version expected 1, found \"1\"." },

  { "title-a-number", "\"Lighthouse buns\"", "3", "At /title expected a text, found 3." },
  { "title-null", "\"Lighthouse buns\"", "null", "At /title expected a text, found null." },
  { "bench-null", "\"bench\": {\n", "\"bench\": null, \"old\": {\n", "At /bench expected an object, found null." },
  { "one-side", "[1200, 700.5]", "[1200]", "At /bench/worktop_mm expected two numbers from 0 to 1000000000, found [1200]." },
  { "three-sides", "[1200, 700.5]", "[1, 2, 3]",
    "At /bench/worktop_mm expected two numbers from 0 to 1000000000, found [1,2,3]." },
  { "negative-side", "[1200, 700.5]", "[1200, -1]",
    "At /bench/worktop_mm expected two numbers from 0 to 1000000000, found [1200,-1]." },
  { "side-a-text", "[1200, 700.5]", "[\"1\", 2]",
    "At /bench/worktop_mm expected two numbers from 0 to 1000000000, found [\"1\",2]." },
  { "length-as-text", "\"piece_gap_mm\": 50", "\"piece_gap_mm\": \"50\"", "At /bench/piece_gap_mm " NUMBER "\"50\"." },
  { "length-true", "\"piece_gap_mm\": 50", "\"piece_gap_mm\": true", "At /bench/piece_gap_mm " NUMBER "true." },
  { "length-null", "\"piece_gap_mm\": 50", "\"piece_gap_mm\": null", "At /bench/piece_gap_mm " NUMBER "null." },
  { "length-huge", "\"piece_gap_mm\": 50", "\"piece_gap_mm\": 1e300", "At /bench/piece_gap_mm " NUMBER "1e+300." },
  { "length-beyond-64-bits", "\"piece_gap_mm\": 50", "\"piece_gap_mm\": 18446744073709551666",
    "At /bench/piece_gap_mm " NUMBER "1.8446744073709552e+19." },
  { "colder-than-cold", "\"fridge_c\": 4", "\"fridge_c\": -274",
    "At /bench/fridge_c expected a number from -273.15 to 1000, found -274." },
  { "heat-transfer-negative", "\"fridge\": 15", "\"fridge\": -15", "At /bench/h_w_m2k/fridge " NUMBER "-15." },
  { "heat-transfer-not-an-object", "{ \"fridge\": 15, \"freezer\": 25, \"room\": 8, \"bench\": 25, \"cellar\": 3 }", "8",
    "At /bench/h_w_m2k expected an object, found 8." },
  { "no-trays", "\"trays_in_oven\": 2", "\"trays_in_oven\": 0",
    "At /bench/trays_in_oven expected a whole number from 1 to 1000, found 0." },
  { "half-a-hand", "\"hands\": 1", "\"hands\": 0.5", "At /bench/hands expected a whole number from 1 to 1000, found 0.5." },
  { "mass-negative", "\"mixer_max_g\": 4000", "\"mixer_max_g\": -1", "At /bench/mixer_max_g " NUMBER "-1." },
  { "currency-a-number", "\"EUR\"", "978", "At /bench/currency expected a text, found 978." },

  { "ingredients-an-object", "\"ingredients\": [", "\"ingredients\": {}, \"another-list\": [",
    "At /ingredients expected a list of objects, found {}." },
  { "ingredient-a-text", "{ " OWN ", \"household_g\": {}, \"allergens\": [] }", "\"flour\"",
    "At /ingredients/1 expected an object, found \"flour\"." },
  { "ingredient-without-id", OWN, "\"like\": \"flour-bread\"",
    "At /ingredients/1/id expected a text that is not empty, found nothing." },
  { "ingredient-id-empty", OWN, "\"id\": \"\", \"like\": \"flour-bread\"",
    "At /ingredients/1/id expected a text that is not empty, found \"\"." },
  { "ingredient-id-twice", OWN, "\"id\": \"butter-cliff\", \"like\": \"flour-bread\"",
    "At /ingredients/1/id expected an id that nothing else here has, found \"butter-cliff\"." },
  { "ingredient-like-nothing", OWN, "\"id\": \"flour-mill\"", "At /ingredients/1/like expected a text, found nothing." },
  { "ingredient-like-own", OWN, "\"id\": \"flour-mill\", \"like\": \"butter-cliff\"",
    "At /ingredients/1/like expected the id of a built-in ingredient, found \"butter-cliff\"." },
  { "over-100-g-of-fat", "\"fat\": 84", "\"fat\": 101",
    "At /ingredients/0/per_100g/fat expected null or a number from 0 to 100, found 101." },
  { "household-negative", "\"stick\": 113.4", "\"stick\": -1", "At /ingredients/0/household_g/stick " NUMBER "-1." },
  { "household-a-list", "\"household_g\": {}", "\"household_g\": []",
    "At /ingredients/1/household_g expected an object of numbers from 0 to 1000000000 or null, found []." },
  { "allergen-a-number", "[\"milk\"]", "[7]", "At /ingredients/0/allergens expected a list of texts or null, found [7]." },
  { "price-negative", "\"price_per_kg\": 13.5", "\"price_per_kg\": -0.01", "At /ingredients/0/price_per_kg " OR_NULL "-0.01." },
  { "density-nothing", "\"density_g_ml\": 0.95", "\"density_g_ml\": 0",
    "At /ingredients/0/density_g_ml expected a number from 0.01 to 30 or null, found 0." },

  { "no-doughs", "\"doughs\": [", "\"dough\": [", "At /doughs expected a list of at most 64 objects, found nothing." },
  { "dough-without-id", "\"id\": \"d2\",", "", "At /doughs/1/id expected a text that is not empty, found nothing." },
  { "dough-without-name", "\"name\": \"Night sponge\",", "", "At /doughs/0/name expected a text, found nothing." },
  { "dough-without-lines", "\"lines\": [],", "", "At /doughs/1/lines expected a list of at most 200 objects, found nothing." },
  { "dough-id-twice", "\"id\": \"d2\"", "\"id\": \"d1\"",
    "At /doughs/1/id expected an id that nothing else here has, found \"d1\"." },
  { "dough-from-nowhere", "\"from\": \"d1\"", "\"from\": \"d9\"",
    "At /doughs/1/from expected the id of a dough of this trial, found \"d9\"." },
  { "unknown-kind", "\"kind\": \"other\"", "\"kind\": \"bread\"",
    "At /doughs/1/kind expected one of croissant, danish, puff, other, found \"bread\"." },
  { "kind-null", "\"kind\": \"other\"", "\"kind\": null",
    "At /doughs/1/kind expected one of croissant, danish, puff, other, found null." },
  { "line-without-stage", "\"stage\": \"roll-in\", " LINE, LINE,
    "At /doughs/0/lines/3/stage expected one of preferment, dough, roll-in, finish, found nothing." },
  { "line-without-ingredient", LINE, "\"amount\": \"300 g\"",
    "At /doughs/0/lines/3/ingredient expected a text or null, found nothing." },
  { "line-without-amount", LINE, "\"ingredient\": \"butter-cliff\"",
    "At /doughs/0/lines/3/amount expected a text of at most 200 bytes, found nothing." },
  { "unknown-stage", "\"stage\": \"roll-in\"", "\"stage\": \"oven\"",
    "At /doughs/0/lines/3/stage expected one of preferment, dough, roll-in, finish, found \"oven\"." },
  { "ingredient-from-nowhere", LINE, "\"ingredient\": \"sawdust\", \"amount\": \"300 g\"",
    "At /doughs/0/lines/3/ingredient expected the id of an ingredient, built-in or of this trial, found \"sawdust\"." },
  { "amount-a-number", LINE, "\"ingredient\": \"butter-cliff\", \"amount\": 300",
    "At /doughs/0/lines/3/amount expected a text of at most 200 bytes, found 300." },
  { "amount-of-201-bytes", LINE, "\"ingredient\": \"butter-cliff\", \"amount\": \"" TOO_LONG_67 "\"",
    "At /doughs/0/lines/3/amount expected a text of at most 200 bytes, found \"中中中中中中中中中中中中中中中中中中中…." },
  { "hydration-negative", "\"hydration_percent\": 120", "\"hydration_percent\": -1",
    "At /doughs/0/lines/2/hydration_percent expected a number from 0 to 1000 or null, found -1." },
  { "pieces-none", "\"pieces_written\": 16", "\"pieces_written\": 0",
    "At /doughs/0/pieces_written expected a whole number from 1 to 1000000 or null, found 0." },
  { "unknown-batch", "\"by\": \"pieces\"", "\"by\": \"trays\"",
    "At /doughs/0/batch/by expected one of written, pieces, flour_g, dough_g, total_g, found \"trays\"." },
  { "batch-negative", "\"value\": 24", "\"value\": -24", "At /doughs/0/batch/value " NUMBER "-24." },
  { "everything-lost", "\"handling_loss_percent\": 2", "\"handling_loss_percent\": 100",
    "At /doughs/0/handling_loss_percent expected a number from 0 to 99, found 100." },
  { "baked-away", "\"bake_loss_percent\": 12", "\"bake_loss_percent\": 99.5",
    "At /doughs/0/bake_loss_percent expected a number from 0 to 99 or null, found 99.5." },

  { "unknown-style", "\"style\": \"letter\"", "\"style\": \"swirl\"",
    "At /doughs/0/lock_in/style expected one of half, gate, envelope, letter, inverse, found \"swirl\"." },
  { "rim-negative", "\"rim_mm\": 10", "\"rim_mm\": -10", "At /doughs/0/lock_in/rim_mm " NUMBER "-10." },
  { "no-block", "\"blocks\": 2", "\"blocks\": 0",
    "At /doughs/0/lock_in/blocks expected a whole number from 1 to 1000, found 0." },
  { "lock-in-a-text", "\"lock_in\": {", "\"lock_in\": \"half\", \"other\": {",
    "At /doughs/0/lock_in expected an object or null, found \"half\"." },
  { "fold-of-one", "\"fold\": 3", "\"fold\": 1", "At /doughs/0/turns/0/fold expected a whole number from 2 to 6, found 1." },
  { "fold-of-seven", "\"fold\": 3", "\"fold\": 7", "At /doughs/0/turns/0/fold expected a whole number from 2 to 6, found 7." },
  { "fold-of-two-and-a-half", "\"fold\": 3", "\"fold\": 2.5",
    "At /doughs/0/turns/0/fold expected a whole number from 2 to 6, found 2.5." },
  { "turn-thickness-negative", "\"thickness_mm\": 8", "\"thickness_mm\": -8", "At /doughs/0/turns/0/thickness_mm " OR_NULL "-8." },
  { "turn-length-and-thickness", "\"length_mm\": 620", "\"length_mm\": 620, \"thickness_mm\": 8",
    "At /doughs/0/turns/1/length_mm expected no length_mm beside thickness_mm or width_mm, found 620." },
  { "turn-a-number", "{ \"fold\": 4, \"length_mm\": 620 }", "4", "At /doughs/0/turns/1 expected an object, found 4." },
  { "minutes-negative", MINUTES ("12,"), MINUTES ("-12,"), "At /doughs/0/turns/0/minutes " OR_NULL "-12." },
  { "rest-negative", "\"min\": 45, \"max\": 720, \"place\": \"freezer\"", "\"min\": -45, \"place\": \"freezer\"",
    "At /doughs/0/turns/0/rest/min " NUMBER "-45." },
  { "unknown-place", "\"freezer\", \"on\"", "\"cellar\", \"on\"",
    "At /doughs/0/turns/0/rest/place expected one of fridge, freezer, room, found \"cellar\"." },
  { "unknown-on", "\"on\": \"rack\"", "\"on\": \"shelf\"",
    "At /doughs/0/turns/0/rest/on expected one of board, rack, found \"shelf\"." },

  { "unknown-shape", "\"shape\": \"triangle\"", "\"shape\": \"star\"",
    "At /doughs/0/cut/shape expected one of triangle, right-triangle, rectangle, square, round, slices, found \"star\"." },
  { "thickness-and-mass", "\"piece_mass_g\": 45.25", "\"piece_mass_g\": 45.25, \"thickness_mm\": 4",
    "At /doughs/1/cut/piece_mass_g expected either thickness_mm or piece_mass_g, not both, found 45.25." },
  { "round-without-diameter", ROUND, "\"gap_mm\": 0,",
    "At /doughs/1/cut/diameter_mm expected a size of this shape, a number of 0 or more, found nothing." },
  { "round-without-gap", ROUND, "\"diameter_mm\": 80, \"gap_mm\": null,",
    "At /doughs/1/cut/gap_mm expected a size of this shape, a number of 0 or more, found null." },
  { "rectangle-without-sizes", "\"shape\": \"round\"", "\"shape\": \"rectangle\"",
    "At /doughs/1/cut/width_mm expected a size of this shape, a number of 0 or more, found nothing." },
  { "square-without-side", "\"shape\": \"round\"", "\"shape\": \"square\"",
    "At /doughs/1/cut/side_mm expected a size of this shape, a number of 0 or more, found nothing." },
  { "slices-without-sizes", "\"shape\": \"round\"", "\"shape\": \"slices\", \"slice_mm\": 30",
    "At /doughs/1/cut/roll_length_mm expected a size of this shape, a number of 0 or more, found nothing." },
  { "shrunk-to-nothing", "\"shrink_percent\": 4", "\"shrink_percent\": 100",
    "At /doughs/0/cut/shrink_percent expected a number from 0 to 99, found 100." },
  { "rows-none", "\"rows\": 2", "\"rows\": 0", "At /doughs/0/cut/rows expected a whole number from 1 to 1000 or null, found 0." },
  { "rolled-up-a-number", "\"rolled_up\": false", "\"rolled_up\": 0", "At /doughs/0/cut/rolled_up expected true, false or null, found 0." },

  { "unknown-step", "\"id\": \"mix\"", "\"id\": \"sing\"",
    "At /doughs/0/method/steps/0/id expected one of preferment-mix, ripen, mix, bulk, chill, fat-block, lock-in, turn, rest, "
    "roll-out, cut, shape, proof, finish, bake, cool, found \"sing\"." },
  { "step-twice", "\"id\": \"mix\"", "\"id\": \"proof\"",
    "At /doughs/0/method/steps/1/id expected a step that is not there yet, found \"proof\"." },
  { "step-without-id", "\"id\": \"mix\", ", "",
    "At /doughs/0/method/steps/0/id expected one of preferment-mix, ripen, mix, bulk, chill, fat-block, lock-in, turn, rest, "
    "roll-out, cut, shape, proof, finish, bake, cool, found nothing." },
  { "too-humid", "\"rh_percent\": 78", "\"rh_percent\": 140",
    "At /doughs/0/method/steps/1/rh_percent expected a number from 0 to 100 or null, found 140." },
  { "friction-of-nothing", "\"friction_n\": 3.5", "\"friction_n\": 0",
    "At /doughs/1/method/friction_n expected a number from 1 to 10, found 0." },
  { "log-entry-a-text", "{ \"at\": \"06:10\", \"minutes\": 11.5 }", "\"06:10\"",
    "At /doughs/0/log/mixes/0 expected an object, found \"06:10\"." },
  { "log-list-an-object", "\"rests\": [],\n        \"sizes\"", "\"rests\": {},\n        \"sizes\"",
    "At /doughs/0/log/rests expected a list of objects, found {}." },
  { "log-notes-null", "\"Cold night\"", "null", "At /doughs/0/log/notes expected a text, found null." },

  { "prediction-of-nobody", "[\"d2\", \"d1\"]", "[\"d2\", \"d7\"]",
    "At /prediction/order/1 expected the id of a dough of this trial, found \"d7\"." },
  { "prediction-of-one-twice", "[\"d2\", \"d1\"]", "[\"d2\", \"d2\"]",
    "At /prediction/order/1 expected each dough once, found \"d2\"." },
  { "prediction-a-text", "[\"d2\", \"d1\"]", "\"d2\"", "At /prediction/order expected a list of texts, found \"d2\"." },
  { "plan-a-list", "\"plan\": {", "\"plan\": [], \"other\": {", "At /plan expected an object or null, found []." },
  { "pins-an-object", "\"pins\": [", "\"pins\": {}, \"old\": [", "At /plan/pins expected a list, found {}." },
  { "taster-without-id", "\"id\": \"t1\", ", "", "At /tasting/tasters/0/id expected a text that is not empty, found nothing." },
  { "taster-twice", "{ \"id\": \"a/b~c\"", "{ \"id\": \"t1\"",
    "At /tasting/tasters/1/id expected an id that nothing else here has, found \"t1\"." },
  { "code-of-nobody", "\"d1\": 907", "\"d/7\": 907",
    "At /tasting/codes/d~17 expected the id of a dough of this trial, found \"d/7\"." },
  { "code-of-two-digits", "\"d1\": 907", "\"d1\": 97", "At /tasting/codes/d1 expected a whole number from 100 to 999, found 97." },
  { "code-a-text", "\"d1\": 907", "\"d1\": \"907\"",
    "At /tasting/codes/d1 expected a whole number from 100 to 999, found \"907\"." },
  { "code-twice", "\"d1\": 907", "\"d1\": 418", "At /tasting/codes/d1 expected a code that no other dough has, found \"418\"." },
  { "order-for-nobody", "\"a/b~c\": []", "\"t/~9\": []",
    "At /tasting/orders/t~1~09 expected the id of a taster of this trial, found \"t/~9\"." },
  { "order-of-nobody", "\"a/b~c\": []", "\"a/b~c\": [\"d9\"]",
    "At /tasting/orders/a~1b~0c/0 expected the id of a dough of this trial, found \"d9\"." },
  { "order-a-number", "\"a/b~c\": []", "\"a/b~c\": 1", "At /tasting/orders/a~1b~0c expected a list of texts, found 1." },
  { "score-of-nobody", "\"taster\": \"t1\", \"dough\": \"d2\"", "\"taster\": \"t2\", \"dough\": \"d2\"",
    "At /tasting/scores/1/taster expected the id of a taster of this trial, found \"t2\"." },
  { "score-for-nobody", "\"taster\": \"t1\", \"dough\": \"d2\"", "\"taster\": \"t1\", \"dough\": \"d3\"",
    "At /tasting/scores/1/dough expected the id of a dough of this trial, found \"d3\"." },
  { "score-twice", "\"taster\": \"t1\", \"dough\": \"d2\"", "\"taster\": \"t1\", \"dough\": \"d1\"",
    "At /tasting/scores/1/dough expected one score a taster and dough, found \"d1\"." },
  { "mark-of-ten", "\"look\": 7", "\"look\": 10",
    "At /tasting/scores/0/marks/look expected a whole number from 1 to 9 or null, found 10." },
  { "mark-of-nothing", "\"look\": 7", "\"look\": 0",
    "At /tasting/scores/0/marks/look expected a whole number from 1 to 9 or null, found 0." },
  { "balance-of-three", "\"bake\": -2", "\"bake\": -3",
    "At /tasting/scores/0/balance/bake expected a whole number from -2 to 2 or null, found -3." },
  { "faults-a-text", "[\"fat-pooled\"]", "\"fat-pooled\"",
    "At /tasting/scores/0/faults expected a list of texts, found \"fat-pooled\"." },
};

static char *
dup_replaced (const char *piece,
              const char *instead)
{
  const char *at = strstr (sample_text, piece);

  g_assert_nonnull (at);

  return g_strdup_printf ("%.*s%s%s", (int) (at - sample_text), sample_text, instead, at + strlen (piece));
}

static void
assert_refused (const char *text,
                int         code,
                const char *message)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (TrTrial) trial = tr_trial_read (text, strlen (text), &error);

  g_assert_null (trial);
  g_assert_error (error, TR_TRIAL_ERROR, code);
  g_assert_cmpstr (error->message, ==, message);
}

static void
test_refused (gconstpointer data)
{
  const Refusal *refusal = data;
  g_autofree char *text = dup_replaced (refusal->piece, refusal->instead);

  assert_refused (text, refusal->is_other_code ? refusal->code : TR_TRIAL_ERROR_VALUE, refusal->message);
}

static void
test_top_level (void)
{
  assert_refused ("[1, {}]", TR_TRIAL_ERROR_FORMAT, "At the top expected an object, found [1,{}].");
  assert_refused ("\"tourier-trial\"", TR_TRIAL_ERROR_FORMAT, "At the top expected an object, found \"tourier-trial\".");
  assert_refused ("{}", TR_TRIAL_ERROR_FORMAT, "At /format expected \"tourier-trial\", found nothing.");
}

/* Counts */

static char *
dup_counted (const char *before,
             const char *each,
             guint       n,
             const char *after)
{
  GString *text = g_string_new ("{\"format\":\"tourier-trial\",\"version\":1,");

  g_string_append (text, before);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *index = g_strdup_printf ("%u", i);
      g_autoptr (GString) one = g_string_new (each);

      g_string_replace (one, "%", index, 0);
      g_string_append_printf (text, "%s%s", i > 0 ? "," : "", one->str);
    }
  g_string_append (text, after);

  return g_string_free (text, FALSE);
}

static void
test_counts (void)
{
  static const struct { const char *before, *each, *after; guint most; const char *message; } counts[] = {
    { "\"doughs\":[", "{\"id\":\"d%\",\"name\":\"\",\"lines\":[]}", "]}", 64,
      "At /doughs expected a list of at most 64 objects, found 65." },
    { "\"doughs\":[{\"id\":\"d\",\"name\":\"\",\"lines\":[", "{\"stage\":\"dough\",\"ingredient\":null,\"amount\":\"%\"}", "]}]}", 200,
      "At /doughs/0/lines expected a list of at most 200 objects, found 201." },
    { "\"doughs\":[{\"id\":\"d\",\"name\":\"\",\"lines\":[],\"turns\":[", "{\"minutes\":%}", "]}]}", 12,
      "At /doughs/0/turns expected a list of at most 12 objects, found 13." },
    { "\"doughs\":[],\"tasting\":{\"tasters\":[", "{\"id\":\"t%\"}", "]}}", 64,
      "At /tasting/tasters expected a list of at most 64 objects, found 65." },
  };

  for (guint i = 0; i < G_N_ELEMENTS (counts); i++)
    {
      g_autofree char *enough = dup_counted (counts[i].before, counts[i].each, counts[i].most, counts[i].after);
      g_autofree char *more = dup_counted (counts[i].before, counts[i].each, counts[i].most + 1, counts[i].after);
      g_autoptr (GError) error = NULL;
      g_autoptr (TrTrial) trial = tr_trial_read (enough, strlen (enough), &error);

      g_assert_no_error (error);
      g_assert_nonnull (trial);
      assert_refused (more, TR_TRIAL_ERROR_VALUE, counts[i].message);
    }
}

static void
test_amount_of_200_bytes (void)
{
  g_autofree char *letters = g_strnfill (200, 'g');
  g_autofree char *line = g_strdup_printf ("\"ingredient\": \"butter-cliff\", \"amount\": \"%s\"", letters);
  g_autofree char *text = dup_replaced (LINE, line);
  g_autoptr (GError) error = NULL;
  g_autoptr (TrTrial) trial = tr_trial_read (text, strlen (text), &error);

  g_assert_no_error (error);
  g_assert_cmpuint (strlen (tr_dough_get_line (tr_trial_get_dough (trial, 0), 3)->amount), ==, 200);
}

/* What is taken although it looks odd, and what it means */

static TrTrial *
read_replaced (const char *piece,
               const char *instead)
{
  g_autofree char *text = dup_replaced (piece, instead);
  g_autoptr (GError) error = NULL;
  TrTrial *trial = tr_trial_read (text, strlen (text), &error);

  g_assert_no_error (error);

  return trial;
}

static void
test_least_document (void)
{
  static const char least[] = "{\"format\":\"tourier-trial\",\"version\":1.0,\"doughs\":[{\"id\":\"a\",\"name\":\"\",\"lines\":[]}]}";
  g_autoptr (GError) error = NULL;
  g_autoptr (TrTrial) trial = tr_trial_read (least, strlen (least), &error);
  g_autoptr (TrTrial) expected = tr_trial_new ();
  gsize bytes;

  g_assert_no_error (error);
  g_ptr_array_add (expected->doughs, tr_dough_new ("a"));
  g_assert_true (tr_trial_is_same (trial, expected, &bytes));
}

static void
test_empty_parts_have_defaults (void)
{
  g_autoptr (TrTrial) trial = read_replaced ("\"turns\": [],",
                                             "\"turns\": [{}, {\"width_mm\": 200}, {\"thickness_mm\": null}], \"lock_in\": {},");
  const TrDough *dough = tr_trial_get_dough (trial, 1);

  for (guint i = 0; i < 3; i++)
    g_assert_cmpfloat (tr_dough_get_turn (dough, i)->thickness_mm, ==, 8);
  g_assert_cmpint (tr_dough_get_turn (dough, 0)->fold, ==, 3);
  g_assert_cmpfloat (tr_dough_get_turn (dough, 1)->width_mm, ==, 200);
  g_assert_null (tr_dough_get_turn (dough, 0)->rest);
  g_assert_cmpint (dough->lock_in->style, ==, TR_STYLE_HALF);
  g_assert_cmpfloat (dough->lock_in->rim_mm, ==, 10);
  g_assert_false (tr_is_written (dough->lock_in->fat_thickness_mm));
}

static void
test_cut_defaults (void)
{
  static const struct { const char *cut; double base, height, thickness; } cuts[] = {
    { "\"cut\": {}, \"old_cut\": {", 90, 260, 4 },
    { "\"cut\": {\"shape\": \"right-triangle\", \"base_mm\": 70}, \"old_cut\": {", 70, 260, 4 },
    { "\"cut\": {\"piece_mass_g\": 60, \"height_mm\": null}, \"old_cut\": {", 90, 260, NAN },
    { "\"cut\": {\"shape\": \"square\", \"side_mm\": 100, \"thickness_mm\": null}, \"old_cut\": {", NAN, NAN, 4 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cuts); i++)
    {
      g_autoptr (TrTrial) trial = read_replaced ("\"cut\": {", cuts[i].cut);
      const TrCut *cut = tr_trial_get_dough (trial, 0)->cut;

      g_assert_true (cut->base_mm == cuts[i].base || (isnan (cut->base_mm) && isnan (cuts[i].base)));
      g_assert_true (cut->height_mm == cuts[i].height || (isnan (cut->height_mm) && isnan (cuts[i].height)));
      g_assert_true (cut->thickness_mm == cuts[i].thickness || (isnan (cut->thickness_mm) && isnan (cuts[i].thickness)));
    }
}

static void
test_null_is_not_absent (void)
{
  g_autoptr (TrTrial) pin = sample_trial ();
  g_autoptr (TrTrial) rollers = read_replaced ("\"roll_width_max_mm\": null,", "");
  const TrOwnIngredient *own = tr_pantry_find (pin->pantry, "butter-cliff");

  g_assert_false (tr_is_written (pin->bench->roll_width_max_mm));
  g_assert_cmpfloat (rollers->bench->roll_width_max_mm, ==, 450);
  g_assert_true (own->unknown[TR_PART_CARBOHYDRATE]);
  g_assert_false (own->unknown[TR_PART_WATER]);
  g_assert_nonnull (tr_pantry_find (pin->pantry, "flour-mill")->household);
  g_assert_nonnull (tr_pantry_find (pin->pantry, "flour-mill")->allergens);
}

static void
test_half_typed_is_kept (void)
{
  static const char *const amounts[] = { "", "1,500 g", "a good handful", "½½", "-3 g", "\\u0001" };

  for (guint i = 0; i < G_N_ELEMENTS (amounts); i++)
    {
      g_autofree char *line = g_strdup_printf ("\"ingredient\": null, \"amount\": \"%s\", \"text\": \"?\"", amounts[i]);
      g_autoptr (TrTrial) trial = read_replaced (LINE, line);

      g_assert_null (tr_dough_get_line (tr_trial_get_dough (trial, 0), 3)->ingredient);
      g_assert_cmpstr (tr_dough_get_line (tr_trial_get_dough (trial, 0), 3)->text, ==, "?");
    }
}

static void
test_unknown_members_are_kept (void)
{
  g_autoptr (TrTrial) trial = sample_trial ();
  const TrDough *dough = tr_trial_get_dough (trial, 0);

  g_assert_cmpstr (trial->extra, ==, "{\"another\":[1,2.5,\"x\"]}");
  g_assert_cmpstr (dough->extra, ==, "{\"oven\":{\"make\":[\"stone\",{\"x\":1e+30}]},\"zz\":false}");
  g_assert_cmpstr (dough->extra_batch, ==, "{\"per\":\"day\"}");
  g_assert_cmpstr (((TrLoggedStep *) g_ptr_array_index (dough->log->steps, 0))->extra, ==, "{\"lamp\":true}");
  g_assert_cmpuint (dough->log->pieces->len, ==, 1);
  g_assert_cmpuint (dough->log->rests->len, ==, 0);
}

/* Round trips */

static char *
dup_again (const char *text)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (TrTrial) trial = tr_trial_read (text, strlen (text), &error);

  g_assert_no_error (error);

  return tr_trial_write (trial, NULL);
}

static void
test_sample_comes_back (void)
{
  g_autofree char *again = dup_again (sample_text);

  g_assert_cmpstr (again, ==, sample_text);
}

/* Order, spaces and spelling of a foreign file are not kept; what it says is. */
static void
test_foreign_file_settles (void)
{
  g_autofree char *foreign = dup_replaced ("\"title\": \"Lighthouse buns\"",
                                           "\"zzz\": -0.0,\t\"title\":\"Light\\u0068ouse\\/buns\", \"big\": 123456789012345678901");
  g_autofree char *once = dup_again (foreign);
  g_autofree char *twice = dup_again (once);

  g_assert_cmpstr (once, ==, twice);
  g_assert_nonnull (strstr (once, "\"title\": \"Lighthouse/buns\",\n"));
  g_assert_nonnull (strstr (once, "\n  \"zzz\": 0,\n  \"big\": 1.2345678901234568e+20,\n  \"another\": [1,2.5,\"x\"]\n}\n"));
}

static void
test_random_trials_come_back (void)
{
  for (guint i = 0; i < 400; i++)
    {
      g_autoptr (TrTrial) trial = random_trial ();
      g_autoptr (TrTrial) copy = tr_trial_copy (trial);
      g_autoptr (GError) error = NULL;
      g_autofree char *text = tr_trial_write (trial, NULL);
      gsize bytes;

      g_assert_true (tr_trial_validate (trial, &error));
      g_assert_no_error (error);
      g_autofree char *again = dup_again (text);
      g_assert_cmpstr (again, ==, text);

      /* and every struct has a copy that says the same */
      for (guint k = 0; k < copy->doughs->len; k++)
        tr_trial_own_dough (copy, k);
      tr_trial_own_bench (copy);
      tr_trial_own_pantry (copy);
      g_assert_true (tr_trial_is_same (copy, trial, &bytes));
      g_autofree char *copied = tr_trial_write (copy, NULL);
      g_assert_cmpstr (copied, ==, text);
    }
}

/* Any byte changed in a good document: read or refused in one sentence, and if
 * read, then something that can be written and read again. */
static void
test_damaged_documents (void)
{
  for (guint i = 0; i < 3000; i++)
    {
      g_autofree char *text = g_strdup (sample_text);
      g_autoptr (GError) error = NULL;

      for (int n = g_test_rand_int_range (1, 4); n > 0; n--)
        text[g_test_rand_int_range (0, (int) strlen (sample_text))] = (char) g_test_rand_int_range (0, 256);
      g_autoptr (TrTrial) trial = tr_trial_read (text, strlen (sample_text), &error);
      if (trial == NULL)
        {
          g_assert_error (error, TR_TRIAL_ERROR, error->code);
          g_assert_true (g_utf8_validate (error->message, -1, NULL));
          g_assert_true (g_str_has_suffix (error->message, "."));
          g_assert_null (strchr (error->message, '\n'));
        }
      else
        {
          g_autofree char *written = tr_trial_write (trial, NULL);
          g_autofree char *again = dup_again (written);

          g_assert_cmpstr (again, ==, written);
        }
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (refusals); i++)
    {
      g_autofree char *path = g_strconcat ("/trial/read/refused/", refusals[i].name, NULL);

      g_test_add_data_func (path, &refusals[i], test_refused);
    }
  g_test_add_func ("/trial/read/refused/top-level", test_top_level);
  g_test_add_func ("/trial/read/refused/counts", test_counts);
  g_test_add_func ("/trial/read/taken/amount-of-200-bytes", test_amount_of_200_bytes);
  g_test_add_func ("/trial/read/taken/least-document", test_least_document);
  g_test_add_func ("/trial/read/taken/empty-parts-have-defaults", test_empty_parts_have_defaults);
  g_test_add_func ("/trial/read/taken/cut-defaults", test_cut_defaults);
  g_test_add_func ("/trial/read/taken/null-is-not-absent", test_null_is_not_absent);
  g_test_add_func ("/trial/read/taken/half-typed-is-kept", test_half_typed_is_kept);
  g_test_add_func ("/trial/read/taken/unknown-members-are-kept", test_unknown_members_are_kept);
  g_test_add_func ("/trial/round-trip/sample", test_sample_comes_back);
  g_test_add_func ("/trial/round-trip/foreign-file-settles", test_foreign_file_settles);
  g_test_add_func ("/trial/round-trip/random-trials", test_random_trials_come_back);
  g_test_add_func ("/trial/round-trip/damaged-documents", test_damaged_documents);

  return g_test_run ();
}
