/* sample.c: a document that says everything, and random ones
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "sample.h"

#include <string.h>

#include "calc/ingredient.h"

const char sample_text[] =
"{\n"
"  \"format\": \"tourier-trial\",\n"
"  \"version\": 1,\n"
"  \"title\": \"Lighthouse buns\",\n"
"  \"bench\": {\n"
"    \"worktop_mm\": [1200, 700.5],\n"
"    \"roll_width_max_mm\": null,\n"
"    \"roll_thickness_min_mm\": 2.5,\n"
"    \"roll_thickness_max_mm\": 40,\n"
"    \"pass_reduction_percent\": 35,\n"
"    \"room_c\": 19.5,\n"
"    \"fridge_c\": 4,\n"
"    \"freezer_c\": -18,\n"
"    \"h_w_m2k\": { \"fridge\": 15, \"freezer\": 25, \"room\": 8, \"bench\": 25, \"cellar\": 3 },\n"
"    \"tray_mm\": [600, 400],\n"
"    \"piece_gap_mm\": 50,\n"
"    \"trays_in_oven\": 2,\n"
"    \"preheat_minutes\": 30,\n"
"    \"hands\": 1,\n"
"    \"mixers\": 0,\n"
"    \"mixer_max_g\": 4000,\n"
"    \"turn_minutes\": 10,\n"
"    \"scale_step_g\": 1,\n"
"    \"fine_scale_step_g\": 0.1,\n"
"    \"currency\": \"EUR\",\n"
"    \"window\": \"north\"\n"
"  },\n"
"  \"ingredients\": [\n"
"    { \"id\": \"butter-cliff\", \"like\": \"butter-unsalted\", \"name\": \"Cliff butter\","
" \"per_100g\": { \"water\": 14, \"fat\": 84, \"protein\": 0.5, \"carbohydrate\": null, \"fibre\": 0, \"sugars\": 0.6,"
" \"ash\": null, \"sodium_mg\": 11, \"iodine_mg\": 0.1 }, \"household_g\": { \"cup\": 227, \"stick\": 113.4 },"
" \"density_g_ml\": 0.95, \"allergens\": [\"milk\"], \"price_per_kg\": 13.5, \"plastic_low_c\": 12,"
" \"plastic_high_c\": 18, \"soft_c\": 20, \"liquid_c\": 36, \"proof_max_c\": 27, \"farm\": {\"hens\":3} },\n"
"    { \"id\": \"flour-mill\", \"like\": \"flour-bread\", \"household_g\": {}, \"allergens\": [] }\n"
"  ],\n"
"  \"doughs\": [\n"
"    {\n"
"      \"id\": \"d1\",\n"
"      \"name\": \"Night sponge\",\n"
"      \"kind\": \"croissant\",\n"
"      \"notes\": \"Two lines:\\n\\\"quoted\\\"\",\n"
"      \"lines\": [\n"
"        { \"stage\": \"preferment\", \"group\": \"sponge\", \"ingredient\": \"flour-mill\", \"amount\": \"150 g\" },\n"
"        { \"stage\": \"dough\", \"ingredient\": null, \"amount\": \"2 ladles\", \"text\": \"2 ladles of dough\", \"who\": [1,null] },\n"
"        { \"stage\": \"dough\", \"ingredient\": \"starter-wheat\", \"amount\": \"100 g\", \"hydration_percent\": 120 },\n"
"        { \"stage\": \"roll-in\", \"ingredient\": \"butter-cliff\", \"amount\": \"300 g\" },\n"
"        { \"stage\": \"finish\", \"ingredient\": \"egg-whole\", \"amount\": \"1 egg\" }\n"
"      ],\n"
"      \"pieces_written\": 16,\n"
"      \"batch\": { \"by\": \"pieces\", \"value\": 24, \"per\": \"day\" },\n"
"      \"handling_loss_percent\": 2,\n"
"      \"bake_loss_percent\": 12,\n"
"      \"dough_density_g_ml\": 1.15,\n"
"      \"lock_in\": {\n"
"        \"style\": \"letter\",\n"
"        \"fat_thickness_mm\": 5,\n"
"        \"fat_width_mm\": 180,\n"
"        \"rim_mm\": 10,\n"
"        \"blocks\": 2,\n"
"        \"rest\": { \"min\": 45, \"max\": 720, \"place\": \"fridge\", \"on\": \"board\", \"thickness_mm\": 28 },\n"
"        \"fat_density_g_ml\": 0.93,\n"
"        \"pin\": \"long\"\n"
"      },\n"
"      \"turns\": [\n"
"        { \"fold\": 3, \"thickness_mm\": 8, \"trim_mm\": 5, \"minutes\": 12,"
" \"rest\": { \"min\": 45, \"max\": 720, \"place\": \"freezer\", \"on\": \"rack\", \"start_c\": 13, \"target_c\": 6, \"lid\": true }, \"song\": \"slow\" },\n"
"        { \"fold\": 4, \"length_mm\": 620 },\n"
"        { \"fold\": 2, \"thickness_mm\": 7, \"width_mm\": 300 }\n"
"      ],\n"
"      \"cut\": {\n"
"        \"shape\": \"triangle\",\n"
"        \"base_mm\": 90,\n"
"        \"height_mm\": 260,\n"
"        \"thickness_mm\": 4,\n"
"        \"trim_mm\": 8,\n"
"        \"shrink_percent\": 4,\n"
"        \"rows\": 2,\n"
"        \"stretch_percent\": 10,\n"
"        \"rolled_up\": false,\n"
"        \"printed_sheet_mm\": [600, 280],\n"
"        \"knife\": \"wheel\"\n"
"      },\n"
"      \"method\": {\n"
"        \"dough_c\": 22,\n"
"        \"flour_c\": 20,\n"
"        \"preferment_c\": 9,\n"
"        \"liquids_c\": 5,\n"
"        \"tap_c\": 16,\n"
"        \"friction_c\": 12,\n"
"        \"friction_n\": 3,\n"
"        \"steps\": [\n"
"          { \"id\": \"mix\", \"minutes\": 12 },\n"
"          { \"id\": \"proof\", \"minutes\": 150, \"max\": 180, \"place\": \"room\", \"at_c\": 26, \"rh_percent\": 78, \"bowl\": 2 }\n"
"        ],\n"
"        \"radio\": \"off\"\n"
"      },\n"
"      \"log\": {\n"
"        \"mixes\": [\n"
"          { \"at\": \"06:10\", \"minutes\": 11.5 },\n"
"          { \"at\": \"06:30\", \"who\": {\"name\":\"B, \\\"the\\\" baker\"} }\n"
"        ],\n"
"        \"steps\": [\n"
"          { \"id\": \"proof\", \"at\": \"04:30\", \"minutes\": 165, \"at_c\": 26.5, \"rh_percent\": 80, \"lamp\": true }\n"
"        ],\n"
"        \"rests\": [],\n"
"        \"sizes\": [\n"
"          { \"turn\": 0, \"length_mm\": 610, \"width_mm\": 280, \"thickness_mm\": 4.2, \"relaxed_mm\": 590 }\n"
"        ],\n"
"        \"cuts\": [\n"
"          { \"length_mm\": 100, \"width_mm\": 100, \"thickness_mm\": 4, \"mass_g\": 44.5 }\n"
"        ],\n"
"        \"pieces\": [\n"
"          {}\n"
"        ],\n"
"        \"notes\": \"Cold night\",\n"
"        \"moon\": 0.25\n"
"      },\n"
"      \"oven\": {\"make\":[\"stone\",{\"x\":1e+30}]},\n"
"      \"zz\": false\n"
"    },\n"
"    {\n"
"      \"id\": \"d2\",\n"
"      \"name\": \"\",\n"
"      \"kind\": \"other\",\n"
"      \"from\": \"d1\",\n"
"      \"notes\": \"\",\n"
"      \"lines\": [],\n"
"      \"batch\": { \"by\": \"written\", \"value\": 0 },\n"
"      \"handling_loss_percent\": 0,\n"
"      \"dough_density_g_ml\": 1.1,\n"
"      \"turns\": [],\n"
"      \"cut\": {\n"
"        \"shape\": \"round\",\n"
"        \"diameter_mm\": 80,\n"
"        \"gap_mm\": 0,\n"
"        \"piece_mass_g\": 45.25,\n"
"        \"trim_mm\": 0,\n"
"        \"shrink_percent\": 0,\n"
"        \"stretch_percent\": 0\n"
"      },\n"
"      \"method\": {\n"
"        \"dough_c\": 22,\n"
"        \"flour_c\": 20,\n"
"        \"tap_c\": 16,\n"
"        \"friction_c\": 12,\n"
"        \"friction_n\": 3.5,\n"
"        \"steps\": []\n"
"      },\n"
"      \"log\": { \"mixes\": [], \"steps\": [], \"rests\": [], \"sizes\": [], \"cuts\": [], \"pieces\": [], \"notes\": \"\" }\n"
"    }\n"
"  ],\n"
"  \"prediction\": {\n"
"    \"by\": \"hand\",\n"
"    \"order\": [\"d2\", \"d1\"],\n"
"    \"why\": \"a hunch\",\n"
"    \"locked_at\": \"2027-04-10T21:00\",\n"
"    \"bet\": 5\n"
"  },\n"
"  \"plan\": {\n"
"    \"taste_at\": \"2027-04-11T10:30\",\n"
"    \"hands_from\": \"07:00\",\n"
"    \"hands_until\": \"21:30\",\n"
"    \"pins\": [\n"
"      {\"task\":\"bake\",\"start\":\"08:00\"},\n"
"      7\n"
"    ],\n"
"    \"who\": \"us\"\n"
"  },\n"
"  \"tasting\": {\n"
"    \"tasters\": [\n"
"      { \"id\": \"t1\", \"name\": \"A\", \"hat\": 1 },\n"
"      { \"id\": \"a/b~c\", \"name\": \"\" }\n"
"    ],\n"
"    \"codes\": { \"d2\": 418, \"d1\": 907 },\n"
"    \"orders\": {\n"
"      \"t1\": [\"d1\", \"d2\"],\n"
"      \"a/b~c\": []\n"
"    },\n"
"    \"scores\": [\n"
"      { \"taster\": \"t1\", \"dough\": \"d1\", \"marks\": { \"look\": 7, \"layers\": 6, \"eating\": 8, \"smell\": 9 },"
" \"balance\": { \"salt\": 1, \"sweet\": 0, \"bake\": -2, \"spice\": 0 }, \"faults\": [\"fat-pooled\"], \"notes\": \"\", \"seat\": 3 },\n"
"      { \"taster\": \"t1\", \"dough\": \"d2\", \"marks\": { \"look\": 1 }, \"faults\": [], \"notes\": \"late\" }\n"
"    ],\n"
"    \"room\": \"hall\"\n"
"  },\n"
"  \"another\": [1,2.5,\"x\"]\n"
"}\n";

TrTrial *
sample_trial (void)
{
  g_autoptr (GError) error = NULL;
  TrTrial *trial = tr_trial_read (sample_text, strlen (sample_text), &error);

  g_assert_no_error (error);

  return trial;
}

/* Chances */

static gboolean
chance (int one_in)
{
  return g_test_rand_int_range (0, one_in) == 0;
}

static int
pick (int n)
{
  return g_test_rand_int_range (0, n);
}

/* Whole, with a few decimals, or with all that a double has. */
static double
number (double low,
        double high)
{
  double any = g_test_rand_double_range (low, high);

  switch (pick (3))
    {
    case 0: return CLAMP (round (any), low, high);
    case 1: return CLAMP (round (any * 100) / 100, low, high);
    default: return any;
    }
}

static double
maybe (double low,
       double high)
{
  return chance (2) ? NAN : number (low, high);
}

static char *
text (void)
{
  static const char *const parts[] = { "rye", " ", "é", "\"", "\\", "\n", "\t", "中", "😀", "/", "~", "\x01", "{", "]", ",", ":", "½" };
  GString *out = g_string_new (NULL);

  for (int n = pick (6); n > 0; n--)
    g_string_append (out, parts[pick (G_N_ELEMENTS (parts))]);

  return g_string_free (out, FALSE);
}

static void
set_any (char **where)
{
  g_autofree char *any = text ();

  tr_set_text (where, any);
}

static void
set_extra (char **where)
{
  static const char *const extras[] = { "{\"x\":1}", "{\"b\":{\"c\":[1,\"},\"]},\"a\":null}", "{\"\\\"q\\\\\":\"\\\\\"}", "{\"\":[[],{}]}" };

  if (chance (4))
    tr_set_text (where, extras[pick (G_N_ELEMENTS (extras))]);
}

/* Parts */

static TrRest *
random_rest (void)
{
  TrRest *rest = tr_rest_new ();

  rest->min_minutes = number (0, 600);
  rest->place = (TrPlace) pick (TR_N_PLACES);
  rest->on = (TrOn) pick (TR_N_ONS);
  rest->start_c = maybe (-20, 30);
  rest->target_c = maybe (-20, 30);
  rest->thickness_mm = maybe (0, 50);
  set_extra (&rest->extra);

  return rest;
}

static TrLine *
random_line (const TrTrial *trial)
{
  TrLine *line = tr_line_new ((TrStage) pick (TR_N_STAGES), NULL, NULL);

  if (trial->pantry->own->len > 0 && chance (4))
    line->ingredient = g_strdup (((TrOwnIngredient *) g_ptr_array_index (trial->pantry->own, 0))->id);
  else if (!chance (5))
    line->ingredient = g_strdup (tr_builtin_get ((guint) pick ((int) tr_builtin_count ()))->id);
  if (chance (2))
    tr_set_text (&line->amount, chance (2) ? "250 g" : "1 1/2 cups");
  else
    set_any (&line->amount);
  if (chance (3))
    set_any (&line->group);
  if (chance (3))
    set_any (&line->text);
  line->hydration_percent = maybe (0, 200);
  set_extra (&line->extra);

  return line;
}

static TrTurn *
random_turn (void)
{
  TrTurn *turn = tr_turn_new (2 + pick (5), number (0, 40));

  if (chance (3))
    {
      turn->thickness_mm = NAN;
      turn->length_mm = number (0, 2000);
    }
  else if (chance (2))
    turn->width_mm = number (0, 600);
  turn->trim_mm = chance (2) ? 0 : number (0, 20);
  turn->minutes = maybe (0, 60);
  turn->rest = chance (2) ? random_rest () : NULL;
  set_extra (&turn->extra);

  return turn;
}

static TrLockIn *
random_lock_in (void)
{
  TrLockIn *lock_in = tr_lock_in_new ();

  lock_in->style = (TrStyle) pick (TR_N_STYLES);
  lock_in->fat_thickness_mm = maybe (0, 20);
  lock_in->fat_width_mm = maybe (0, 400);
  lock_in->blocks = 1 + pick (4);
  lock_in->rest = chance (2) ? random_rest () : NULL;
  lock_in->fat_density_g_ml = maybe (0.5, 1.5);
  set_extra (&lock_in->extra);

  return lock_in;
}

static TrCut *
random_cut (void)
{
  TrCut *cut = tr_cut_new ();

  cut->shape = (TrShape) pick (TR_N_SHAPES);
  if (cut->shape > TR_SHAPE_RIGHT_TRIANGLE && chance (2))
    cut->base_mm = cut->height_mm = NAN;
  cut->width_mm = cut->shape == TR_SHAPE_RECTANGLE ? number (0, 200) : maybe (0, 200);
  cut->length_mm = cut->shape == TR_SHAPE_RECTANGLE ? number (0, 200) : maybe (0, 200);
  cut->side_mm = cut->shape == TR_SHAPE_SQUARE ? number (0, 200) : maybe (0, 200);
  cut->diameter_mm = cut->shape == TR_SHAPE_ROUND ? number (0, 200) : maybe (0, 200);
  cut->gap_mm = cut->shape == TR_SHAPE_ROUND ? number (0, 50) : maybe (0, 50);
  cut->slice_mm = cut->shape == TR_SHAPE_SLICES ? number (0, 50) : maybe (0, 50);
  cut->roll_length_mm = cut->shape == TR_SHAPE_SLICES ? number (0, 900) : maybe (0, 900);
  if (chance (3))
    {
      cut->thickness_mm = NAN;
      cut->piece_mass_g = number (0, 200);
    }
  cut->rows = chance (2) ? 0 : 1 + pick (12);
  cut->rolled_up = pick (3) - 1;
  if (chance (3))
    {
      cut->printed_sheet_mm[0] = number (0, 900);
      cut->printed_sheet_mm[1] = number (0, 900);
    }
  set_extra (&cut->extra);

  return cut;
}

static TrMix *
random_mix (void)
{
  TrMix *mix = tr_mix_new ();

  if (chance (2))
    tr_set_text (&mix->at, "2027-05-03");
  mix->dough_c = maybe (-20, 60);
  mix->flour_c = maybe (-20, 60);
  mix->room_c = maybe (-20, 60);
  mix->liquid_c = maybe (-20, 60);
  mix->preferment_c = maybe (-20, 60);
  set_extra (&mix->extra);

  return mix;
}

static void
randomise_log (TrLog *log)
{
  for (int n = pick (3); n > 0; n--)
    {
      TrLoggedStep *step = tr_logged_step_new ((TrStepId) pick (TR_N_STEPS));
      TrLoggedRest *rest = tr_logged_rest_new (pick (TR_MAX_TURNS + 2) - 1);
      TrLoggedSize *size = tr_logged_size_new (pick (TR_MAX_TURNS + 2) - 1);
      TrLoggedCut *cut = tr_logged_cut_new ();
      TrLoggedPieces *pieces = tr_logged_pieces_new ();

      step->minutes = maybe (0, 300);
      step->at_c = maybe (-20, 250);
      step->rh_percent = maybe (0, 100);
      rest->minutes = maybe (0, 1000);
      rest->core_c = maybe (-20, 30);
      size->length_mm = maybe (0, 1000);
      size->relaxed_mm = maybe (0, 1000);
      cut->thickness_mm = maybe (0, 10);
      cut->mass_g = maybe (0, 100);
      pieces->count = pick (9);
      pieces->baked_g = maybe (0, 100);
      if (chance (3))
        tr_set_text (&pieces->at, "06:10");
      set_extra (&pieces->extra);
      g_ptr_array_add (log->steps, step);
      g_ptr_array_add (log->rests, rest);
      g_ptr_array_add (log->sizes, size);
      g_ptr_array_add (log->cuts, cut);
      g_ptr_array_add (log->pieces, pieces);
    }
}

static void
randomise_method (TrMethod *method)
{
  for (int step = 0; step < TR_N_STEPS; step++)
    if (chance (3))
      {
        TrStep *one = tr_step_new ((TrStepId) step);

        one->minutes = maybe (0, 600);
        one->max_minutes = maybe (0, 600);
        one->at_c = maybe (0, 250);
        one->rh_percent = maybe (0, 100);
        one->place = pick (TR_N_PLACES + 1) - 1;
        set_extra (&one->extra);
        g_ptr_array_add (method->steps, one);
      }
  method->preferment_c = maybe (0, 30);
  method->friction_n = number (1, 10);
  set_extra (&method->extra);
}

static TrDough *
random_dough (const TrTrial *trial)
{
  g_autofree char *id = tr_trial_dup_free_id (trial);
  TrDough *dough = tr_dough_new (id);

  set_any (&dough->name);
  set_any (&dough->notes);
  dough->kind = (TrKind) pick (TR_N_KINDS);
  if (trial->doughs->len > 0 && chance (2))
    tr_set_text (&dough->from, tr_trial_get_dough (trial, 0)->id);
  for (int n = pick (8); n > 0; n--)
    g_ptr_array_add (dough->lines, random_line (trial));
  dough->pieces_written = pick (30);
  dough->batch_by = (TrBatchBy) pick (TR_N_BATCHES);
  dough->batch_value = number (0, 2000);
  dough->handling_loss_percent = number (0, 99);
  dough->bake_loss_percent = maybe (0, 99);
  dough->lock_in = chance (2) ? random_lock_in () : NULL;
  for (int n = pick (5); n > 0; n--)
    g_ptr_array_add (dough->turns, random_turn ());
  dough->cut = chance (2) ? random_cut () : NULL;
  randomise_method (dough->method);
  for (int n = pick (3); n > 0; n--)
    g_ptr_array_add (dough->log->mixes, random_mix ());
  randomise_log (dough->log);
  set_extra (&dough->log->extra);
  set_extra (&dough->extra);
  set_extra (&dough->extra_batch);

  return dough;
}

static TrOwnIngredient *
random_own (guint n)
{
  g_autofree char *id = g_strdup_printf ("own/%u", n);
  TrOwnIngredient *own = tr_own_ingredient_new (id, tr_builtin_get ((guint) pick ((int) tr_builtin_count ()))->id);

  if (chance (2))
    set_any (&own->name);
  for (guint i = 0; i < TR_N_PARTS; i++)
    if (chance (3))
      own->unknown[i] = TRUE;
    else
      own->per_100g[i] = maybe (0, 100);
  if (chance (3))
    tr_own_ingredient_add_household (own, (TrHousehold) { g_strdup ("cup"), number (0, 300) });
  if (chance (3))
    own->allergens = g_strsplit (chance (2) ? "milk,egg" : "", ",", 0);
  own->density_g_ml = maybe (0.1, 2);
  own->price_per_kg = maybe (0, 100);
  own->soft_c = maybe (0, 40);
  set_extra (&own->extra);
  set_extra (&own->extra_per_100g);

  return own;
}

static TrScore *
random_score (const char *taster,
              const char *dough)
{
  TrScore *score = tr_score_new (taster, dough);

  score->look = pick (10);
  score->layers = pick (10);
  score->eating = pick (10);
  if (chance (2))
    score->salt = pick (5) - 2;
  if (chance (2))
    {
      g_strfreev (score->faults);
      score->faults = g_strsplit ("pale,fat-pooled", ",", 0);
    }
  set_any (&score->notes);
  set_extra (&score->extra_marks);
  set_extra (&score->extra_balance);

  return score;
}

static TrTasting *
random_tasting (const TrTrial *trial)
{
  TrTasting *tasting = tr_tasting_new ();

  g_ptr_array_add (tasting->tasters, tr_taster_new ("t/1", "A"));
  for (guint i = 0; i < trial->doughs->len; i++)
    {
      const char *id = tr_trial_get_dough (trial, i)->id;

      if (chance (2))
        g_ptr_array_add (tasting->codes, tr_code_new (id, 100 + (int) i * 17));
      if (chance (2))
        g_ptr_array_add (tasting->scores, random_score ("t/1", id));
    }
  if (trial->doughs->len > 0)
    {
      char *order[] = { tr_trial_get_dough (trial, 0)->id, NULL };

      g_ptr_array_add (tasting->orders, tr_order_new ("t/1", order));
    }
  set_extra (&tasting->extra);

  return tasting;
}

TrTrial *
random_trial (void)
{
  TrTrial *trial = tr_trial_new ();

  set_any (&trial->title);
  trial->bench->room_c = number (-10, 40);
  trial->bench->roll_width_max_mm = maybe (0, 900);
  trial->bench->worktop_mm[0] = number (0, 3000);
  set_extra (&trial->bench->extra_h);
  for (int n = pick (3); n > 0; n--)
    g_ptr_array_add (trial->pantry->own, random_own ((guint) n));
  for (int n = pick (4); n > 0; n--)
    g_ptr_array_add (trial->doughs, random_dough (trial));
  if (chance (2))
    {
      trial->prediction = tr_prediction_new ();
      set_any (&trial->prediction->why);
    }
  if (chance (2))
    {
      trial->plan = tr_plan_new ();
      if (chance (2))
        tr_set_text (&trial->plan->pins, "[{\"a\":1},[],\"x\"]");
    }
  trial->tasting = chance (2) ? random_tasting (trial) : NULL;
  set_extra (&trial->extra);

  return trial;
}

/* Edits */

static void
edit_dough (TrTrial *draft,
            guint    index)
{
  TrDough *dough = tr_trial_own_dough (draft, index);

  switch (pick (6))
    {
    case 0:
      set_any (&dough->name);
      break;
    case 1:
      if (dough->lines->len < TR_MAX_LINES)
        g_ptr_array_add (dough->lines, random_line (draft));
      break;
    case 2:
      if (dough->lines->len > 0)
        g_ptr_array_remove_index (dough->lines, (guint) pick ((int) dough->lines->len));
      break;
    case 3:
      if (dough->turns->len < TR_MAX_TURNS)
        g_ptr_array_insert (dough->turns, pick ((int) dough->turns->len + 1), random_turn ());
      break;
    case 4:
      g_clear_pointer (&dough->cut, tr_cut_free);
      dough->cut = chance (3) ? NULL : random_cut ();
      break;
    default:
      dough->batch_value = number (0, 100);
      break;
    }
}

void
random_edit (TrTrial *draft)
{
  switch (pick (6))
    {
    case 0:
      set_any (&draft->title);
      break;
    case 1:
      tr_trial_own_bench (draft)->room_c = pick (30);
      break;
    case 2:
      if (draft->doughs->len < TR_MAX_DOUGHS)
        g_ptr_array_add (draft->doughs, random_dough (draft));
      break;
    case 3:
      if (draft->doughs->len > 0)
        tr_trial_remove_dough (draft, (guint) pick ((int) draft->doughs->len));
      break;
    default:
      if (draft->doughs->len > 0)
        edit_dough (draft, (guint) pick ((int) draft->doughs->len));
      break;
    }
}
