/* samples.c: doughs to draw
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "samples.h"

typedef struct { TrStage stage; const char *ingredient, *amount, *group; } Line;

static TrDough *
start_dough (TrTrial    *draft,
             const char *name,
             TrKind      kind)
{
  g_autofree char *id = tr_trial_dup_free_id (draft);
  TrDough *dough = tr_dough_new (id);

  tr_set_text (&dough->name, name);
  dough->kind = kind;
  g_ptr_array_add (draft->doughs, dough);
  return dough;
}

static void
add_lines (TrDough    *dough,
           const Line *lines,
           guint       n)
{
  for (guint i = 0; i < n; i++)
    {
      TrLine *line = tr_line_new (lines[i].stage, lines[i].ingredient, lines[i].amount);

      tr_set_text (&line->group, lines[i].group);
      g_ptr_array_add (dough->lines, line);
    }
}

static TrRest *
new_rest (double  min,
          double  max,
          TrPlace place)
{
  TrRest *rest = tr_rest_new ();

  rest->min_minutes = min;
  rest->max_minutes = max;
  rest->place = place;
  return rest;
}

static void
add_turn (TrDough *dough,
          int      fold,
          double   thickness_mm,
          double   rest_min,
          double   rest_max)
{
  TrTurn *turn = tr_turn_new (fold, thickness_mm);

  if (rest_min > 0)
    turn->rest = new_rest (rest_min, rest_max, TR_PLACE_FRIDGE);
  g_ptr_array_add (dough->turns, turn);
}

static void
add_step (TrDough  *dough,
          TrStepId  id,
          double    minutes,
          double    max_minutes,
          double    at_c,
          double    rh_percent,
          int       place)
{
  TrStep *step = tr_step_new (id);

  step->minutes = minutes;
  step->max_minutes = max_minutes;
  step->at_c = at_c;
  step->rh_percent = rh_percent;
  step->place = place;
  g_ptr_array_add (dough->method->steps, step);
}

static void
lock_in (TrDough *dough,
         TrStyle  style,
         double   rim_mm)
{
  dough->lock_in = tr_lock_in_new ();
  dough->lock_in->style = style;
  dough->lock_in->rim_mm = rim_mm;
}

static void
make_pieces (TrDough *dough,
             double   count)
{
  dough->batch_by = TR_BATCH_PIECES;
  dough->batch_value = count;
}

static void
add_croissant (TrTrial *draft)
{
  static const Line lines[] = {
    { TR_STAGE_PREFERMENT, "flour-bread", "150 g", "poolish" },
    { TR_STAGE_PREFERMENT, "water", "150 g", "poolish" },
    { TR_STAGE_PREFERMENT, "yeast-instant", "0.4 g", "poolish" },
    { TR_STAGE_DOUGH, "flour-bread", "450 g", NULL },
    { TR_STAGE_DOUGH, "milk-whole", "170 g", NULL },
    { TR_STAGE_DOUGH, "sugar", "66 g", NULL },
    { TR_STAGE_DOUGH, "butter-unsalted", "36 g", NULL },
    { TR_STAGE_DOUGH, "salt", "11.4 g", NULL },
    { TR_STAGE_DOUGH, "yeast-instant", "7 g", NULL },
    { TR_STAGE_ROLL_IN, "butter-unsalted", "300 g", NULL },
    { TR_STAGE_FINISH, "egg-whole", "1 egg", NULL },
  };
  TrDough *dough = start_dough (draft, "Overnight poolish, straight crescents", TR_KIND_CROISSANT);

  add_lines (dough, lines, G_N_ELEMENTS (lines));
  dough->pieces_written = 16;
  make_pieces (dough, 24);
  dough->handling_loss_percent = 2;
  dough->bake_loss_percent = 13;
  lock_in (dough, TR_STYLE_HALF, 10);
  dough->lock_in->rest = new_rest (60, 720, TR_PLACE_FRIDGE);
  add_turn (dough, 3, 12, 60, 90);
  add_turn (dough, 4, 10, 60, 720);
  add_turn (dough, 3, 12, 90, NAN);
  dough->cut = tr_cut_new ();
  dough->cut->shape = TR_SHAPE_TRIANGLE;
  dough->cut->base_mm = 90;
  dough->cut->height_mm = 260;
  dough->cut->thickness_mm = 4;
  dough->cut->trim_mm = 8;
  dough->cut->shrink_percent = 4;
  dough->method->dough_c = 23;
  add_step (dough, TR_STEP_PREFERMENT_MIX, 5, NAN, NAN, NAN, -1);
  add_step (dough, TR_STEP_RIPEN, 720, 840, NAN, NAN, TR_PLACE_ROOM);
  add_step (dough, TR_STEP_MIX, 12, NAN, NAN, NAN, -1);
  add_step (dough, TR_STEP_BULK, 60, 90, NAN, NAN, TR_PLACE_ROOM);
  add_step (dough, TR_STEP_PROOF, 135, 160, 26, 78, -1);
  add_step (dough, TR_STEP_BAKE, 18, NAN, 190, NAN, -1);
  add_step (dough, TR_STEP_COOL, 45, 240, NAN, NAN, -1);
}

static void
add_danish (TrTrial *draft)
{
  static const Line lines[] = {
    { TR_STAGE_DOUGH, "flour-plain", "3 cups", NULL },
    { TR_STAGE_DOUGH, "milk-whole", "3/4 cup", NULL },
    { TR_STAGE_DOUGH, "egg-whole", "2 eggs", NULL },
    { TR_STAGE_DOUGH, "sugar", "1/4 cup", NULL },
    { TR_STAGE_DOUGH, "salt", "1 tsp", NULL },
    { TR_STAGE_DOUGH, "yeast-dry", "2 1/4 tsp", NULL },
    { TR_STAGE_ROLL_IN, "butter-unsalted", "8 oz", NULL },
    { TR_STAGE_FINISH, "egg-whole", "1 egg", NULL },
    { TR_STAGE_FINISH, "almond-paste", "200 g", NULL },
  };
  TrDough *dough = start_dough (draft, "Harbour squares", TR_KIND_DANISH);

  add_lines (dough, lines, G_N_ELEMENTS (lines));
  dough->pieces_written = 18;
  make_pieces (dough, 20);
  lock_in (dough, TR_STYLE_LETTER, 8);
  add_turn (dough, 3, 8, 30, 60);
  add_turn (dough, 3, 8, 45, NAN);
  dough->cut = tr_cut_new ();
  dough->cut->shape = TR_SHAPE_SQUARE;
  dough->cut->side_mm = 95;
  dough->cut->thickness_mm = 5;
  dough->cut->trim_mm = 5;
  dough->cut->rolled_up = 0;
  add_step (dough, TR_STEP_PROOF, 75, 100, 27, 75, -1);
  add_step (dough, TR_STEP_BAKE, 16, NAN, 200, NAN, -1);
}

static void
add_puff (TrTrial *draft)
{
  static const Line lines[] = {
    { TR_STAGE_DOUGH, "flour-plain", "700 g", NULL },
    { TR_STAGE_DOUGH, "water", "50 %", NULL },
    { TR_STAGE_DOUGH, "butter-oil", "60 g", NULL },
    { TR_STAGE_DOUGH, "salt", "2 %", NULL },
    { TR_STAGE_ROLL_IN, "butter-unsalted", "500 g", NULL },
    { TR_STAGE_ROLL_IN, "flour-plain", "100 g", NULL },
  };
  TrDough *dough = start_dough (draft, "Inside-out puff", TR_KIND_PUFF);

  add_lines (dough, lines, G_N_ELEMENTS (lines));
  dough->batch_by = TR_BATCH_TOTAL_G;
  dough->batch_value = 2400;
  lock_in (dough, TR_STYLE_INVERSE, 6);
  dough->lock_in->fat_thickness_mm = 9;
  for (int i = 0; i < 6; i++)
    add_turn (dough, 3, 10, i % 2 ? 60 : 20, NAN);
  dough->cut = tr_cut_new ();
  dough->cut->shape = TR_SHAPE_RECTANGLE;
  dough->cut->width_mm = 120;
  dough->cut->length_mm = 80;
  dough->cut->thickness_mm = 3.5;
  dough->cut->trim_mm = 10;
  dough->cut->rolled_up = 0;
  dough->cut->shrink_percent = 8;
  add_step (dough, TR_STEP_BAKE, 25, NAN, 200, NAN, -1);
}

static void
add_gate (TrTrial *draft)
{
  static const Line lines[] = {
    { TR_STAGE_PREFERMENT, "starter-wheat", "200 g", "ripe starter" },
    { TR_STAGE_DOUGH, "flour-bread", "900 g", NULL },
    { TR_STAGE_DOUGH, "water", "430 g", NULL },
    { TR_STAGE_DOUGH, "sugar", "80 g", NULL },
    { TR_STAGE_DOUGH, "salt", "19 g", NULL },
    { TR_STAGE_ROLL_IN, "margarine-pastry", "500 g", NULL },
  };
  TrDough *dough = start_dough (draft, "Buoys", TR_KIND_OTHER);

  add_lines (dough, lines, G_N_ELEMENTS (lines));
  make_pieces (dough, 60);
  lock_in (dough, TR_STYLE_GATE, 12);
  dough->lock_in->blocks = 2;
  add_turn (dough, 4, 9, 45, 60);
  add_turn (dough, 5, 11, 45, 60);
  dough->cut = tr_cut_new ();
  dough->cut->shape = TR_SHAPE_ROUND;
  dough->cut->diameter_mm = 85;
  dough->cut->gap_mm = 4;
  dough->cut->thickness_mm = 4;
  dough->cut->rolled_up = 0;
}

static void
add_envelope (TrTrial *draft)
{
  static const Line lines[] = {
    { TR_STAGE_DOUGH, "flour-bread", "600 g", NULL },
    { TR_STAGE_DOUGH, "milk-whole", "330 g", NULL },
    { TR_STAGE_DOUGH, "sugar-brown", "90 g", NULL },
    { TR_STAGE_DOUGH, "yeast-fresh", "24 g", NULL },
    { TR_STAGE_DOUGH, "salt", "12 g", NULL },
    { TR_STAGE_ROLL_IN, "butter-salted", "280 g", NULL },
    { TR_STAGE_FINISH, "raisins", "1 cup", NULL },
  };
  TrDough *dough = start_dough (draft, "Rope coils", TR_KIND_DANISH);

  add_lines (dough, lines, G_N_ELEMENTS (lines));
  dough->pieces_written = 18;
  make_pieces (dough, 18);
  lock_in (dough, TR_STYLE_ENVELOPE, 10);
  add_turn (dough, 3, 9, 40, 60);
  add_turn (dough, 3, 9, 40, 60);
  add_turn (dough, 2, 9, 40, 60);
  dough->cut = tr_cut_new ();
  dough->cut->shape = TR_SHAPE_SLICES;
  dough->cut->slice_mm = 30;
  dough->cut->roll_length_mm = 320;
  dough->cut->thickness_mm = 5;
  dough->cut->trim_mm = 10;
  dough->cut->rolled_up = 1;
  add_step (dough, TR_STEP_PROOF, 60, NAN, 25, 75, -1);
}

static void
add_right_triangle (TrTrial *draft)
{
  static const Line lines[] = {
    { TR_STAGE_DOUGH, "flour-bread", "1 kg", NULL },
    { TR_STAGE_DOUGH, "water", "52 %", NULL },
    { TR_STAGE_DOUGH, "salt", "2 %", NULL },
    { TR_STAGE_DOUGH, "yeast-fresh", "4 %", NULL },
    { TR_STAGE_ROLL_IN, "butter-unsalted", "30 % of dough", NULL },
  };
  TrDough *dough = start_dough (draft, "Sails", TR_KIND_CROISSANT);

  add_lines (dough, lines, G_N_ELEMENTS (lines));
  make_pieces (dough, 40);
  lock_in (dough, TR_STYLE_HALF, 0);
  dough->lock_in->blocks = 2;
  add_turn (dough, 4, 8, 30, NAN);
  add_turn (dough, 4, 8, 0, 0);
  dough->cut = tr_cut_new ();
  dough->cut->shape = TR_SHAPE_RIGHT_TRIANGLE;
  dough->cut->base_mm = 70;
  dough->cut->height_mm = 240;
  dough->cut->thickness_mm = NAN;
  dough->cut->piece_mass_g = 62;
  dough->cut->trim_mm = 6;
}

static void
add_plain (TrTrial *draft)
{
  static const Line lines[] = {
    { TR_STAGE_DOUGH, "flour-rye-light", "300 g", NULL },
    { TR_STAGE_DOUGH, "flour-bread", "700 g", NULL },
    { TR_STAGE_DOUGH, "water", "650 g", NULL },
    { TR_STAGE_DOUGH, "salt", "20 g", NULL },
  };
  TrDough *dough = start_dough (draft, "Plain", TR_KIND_OTHER);

  add_lines (dough, lines, G_N_ELEMENTS (lines));
}

static void
add_stress (TrTrial *draft)
{
  TrDough *dough = start_dough (draft, "The very long name that somebody gave to a dough which was made on four "
                                       "Sundays in a row and changed a little every time, with rye", TR_KIND_DANISH);

  for (int i = 0; i < 40; i++)
    {
      static const char *const ingredients[] = { "flour-bread", "flour-spelt-wholegrain", "milk-powder-skim", "sugar-icing",
                                                 "margarine-stick-unsalted", "soy-drink-unsweetened" };
      TrStage stage = i < 8 ? TR_STAGE_PREFERMENT : i < 32 ? TR_STAGE_DOUGH : i < 36 ? TR_STAGE_ROLL_IN : TR_STAGE_FINISH;
      g_autofree char *amount = g_strdup_printf ("%d.%d kg", 1 + i * 37 % 90, i % 10);
      TrLine *line = tr_line_new (stage, i % 7 == 5 ? NULL : ingredients[i % 6], i % 7 == 5 ? "2 ladles" : amount);

      if (i % 7 == 5)
        tr_set_text (&line->text, "2 ladles of last week's dough, or a little more if it looks dry to you");
      if (stage == TR_STAGE_PREFERMENT)
        tr_set_text (&line->group, i < 4 ? "a stiff sponge that stands for two nights in the cellar" : "levain");
      if (stage == TR_STAGE_ROLL_IN && line->ingredient != NULL)
        tr_set_text (&line->ingredient, "butter-unsalted");
      g_ptr_array_add (dough->lines, line);
    }
  dough->pieces_written = 12;
  dough->batch_by = TR_BATCH_TOTAL_G;
  dough->batch_value = 1234567;
  dough->bake_loss_percent = 12.5;
  lock_in (dough, TR_STYLE_LETTER, 15);
  dough->lock_in->blocks = 3;
  dough->lock_in->rest = new_rest (30, 60, TR_PLACE_FREEZER);
  for (int i = 0; i < 12; i++)
    add_turn (dough, 2 + i % 5, 9, 30, 1440);
  dough->cut = tr_cut_new ();
  dough->cut->shape = TR_SHAPE_TRIANGLE;
  dough->cut->base_mm = 40;
  dough->cut->height_mm = 100;
  dough->cut->thickness_mm = 3;
  add_step (dough, TR_STEP_PROOF, 1500, 3000, 26.5, 77.5, -1);
  add_step (dough, TR_STEP_BAKE, 18, 22, 190, NAN, -1);
}

void
sample_add (TrTrial *draft,
            Sample   sample)
{
  switch (sample)
    {
    case SAMPLE_CROISSANT: add_croissant (draft); break;
    case SAMPLE_DANISH: add_danish (draft); break;
    case SAMPLE_PUFF: add_puff (draft); break;
    case SAMPLE_GATE: add_gate (draft); break;
    case SAMPLE_ENVELOPE: add_envelope (draft); break;
    case SAMPLE_RIGHT_TRIANGLE: add_right_triangle (draft); break;
    case SAMPLE_PLAIN: add_plain (draft); break;
    case SAMPLE_STRESS: add_stress (draft); break;
    case N_SAMPLES:
    default: g_assert_not_reached ();
    }
}

TrTrial *
sample_trial_new (Sample sample)
{
  TrTrial *trial = tr_trial_new ();

  sample_add (trial, sample);
  return trial;
}

TrTrial *
sample_trial_all (void)
{
  TrTrial *trial = tr_trial_new ();

  for (int i = 0; i < N_SAMPLES; i++)
    sample_add (trial, (Sample) i);
  return trial;
}

/* ---- random ---- */

static double
pick (double low,
      double high)
{
  return g_test_rand_double_range (low, high);
}

static gboolean
toss (int in_ten)
{
  return g_test_rand_int_range (0, 10) < in_ten;
}

static void
add_random_lines (TrDough *dough)
{
  int n = g_test_rand_int_range (1, toss (2) ? 60 : 14);

  for (int i = 0; i < n; i++)
    {
      static const char *const ingredients[] = { "flour-bread", "water", "sugar", "salt", "yeast-fresh", "egg-whole", "milk-whole" };
      TrStage stage = (TrStage) g_test_rand_int_range (0, TR_N_STAGES);
      g_autofree char *amount = g_strdup_printf ("%d g", g_test_rand_int_range (1, 900));
      const char *ingredient = i == 0 ? "flour-bread" : ingredients[g_test_rand_int_range (0, G_N_ELEMENTS (ingredients))];
      TrLine *line = tr_line_new (i == 0 ? TR_STAGE_DOUGH : stage, stage == TR_STAGE_ROLL_IN && i > 0 ? "butter-unsalted" : ingredient, amount);

      if (toss (1))
        tr_set_text (&line->amount, "some");
      if (line->stage == TR_STAGE_PREFERMENT)
        tr_set_text (&line->group, toss (5) ? "sponge" : "poolish");
      g_ptr_array_add (dough->lines, line);
    }
}

static void
add_random_cut (TrDough *dough)
{
  TrCut *cut = dough->cut = tr_cut_new ();

  cut->shape = (TrShape) g_test_rand_int_range (0, TR_N_SHAPES);
  cut->base_mm = pick (30, 150);
  cut->height_mm = pick (60, 350);
  cut->width_mm = pick (30, 200);
  cut->length_mm = pick (30, 300);
  cut->side_mm = pick (40, 150);
  cut->diameter_mm = pick (40, 150);
  cut->gap_mm = pick (0, 10);
  cut->slice_mm = pick (15, 60);
  cut->roll_length_mm = pick (100, 400);
  cut->thickness_mm = pick (2, 8);
  cut->trim_mm = pick (0, 20);
  cut->shrink_percent = toss (5) ? 0 : pick (0, 12);
  cut->rolled_up = toss (5) ? -1 : toss (5);
}

void
sample_add_random (TrTrial *draft)
{
  TrDough *dough = start_dough (draft, toss (8) ? "Random dough" : "A random dough whose name will not stop when it should "
                                                                   "and goes on for another line", (TrKind) g_test_rand_int_range (0, TR_N_KINDS));

  add_random_lines (dough);
  dough->pieces_written = g_test_rand_int_range (0, 40);
  dough->batch_by = (TrBatchBy) g_test_rand_int_range (0, TR_N_BATCHES);
  dough->batch_value = dough->batch_by == TR_BATCH_PIECES ? g_test_rand_int_range (1, 80) : pick (200, 20000);
  if (toss (9))
    {
      lock_in (dough, (TrStyle) g_test_rand_int_range (0, TR_N_STYLES), pick (0, 15));
      dough->lock_in->blocks = toss (7) ? 1 : g_test_rand_int_range (2, 5);
      if (toss (4))
        dough->lock_in->rest = new_rest (pick (10, 90), toss (5) ? NAN : pick (90, 2000), (TrPlace) g_test_rand_int_range (0, TR_N_PLACES));
    }
  for (int i = g_test_rand_int_range (0, toss (2) ? TR_MAX_TURNS + 1 : 5); i > 0; i--)
    add_turn (dough, g_test_rand_int_range (2, 7), pick (4, 14), toss (8) ? pick (10, 90) : 0, toss (5) ? NAN : 600);
  if (toss (9))
    add_random_cut (dough);
  for (int i = TR_STEP_PREFERMENT_MIX; i < TR_N_STEPS; i++)
    if (toss (4))
      add_step (dough, (TrStepId) i, pick (1, 300), toss (5) ? NAN : 400, toss (5) ? NAN : pick (20, 230), toss (5) ? NAN : 75, toss (5) ? -1 : 0);
}
