/* members.c: the objects of a trial document, their members and their ranges
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Members stand in the order in which they are written. Masses, lengths,
 * minutes and prices are 0 or more: a field that is being typed may well hold
 * 0, and then the findings say so. The upper ends only keep the arithmetic
 * finite.
 */

#include "members.h"

#define AMOUNT 0, 1e9            /* mass, length, minutes, price */
#define TEMPERATURE -273.15, 1000
#define LOSS 0, 99               /* percent of what then has to be divided by the rest */
#define PERCENT 0, 100
#define REDUCTION 5, 80          /* percent of a thickness in one pass */
#define ANY_RATIO 0, 1000        /* percent; over 100 is possible */
#define DENSITY 0.01, 30         /* g/ml; osmium is 22.6 */
#define COUNT 1, 1000

#define WORDS(name, N) { (const char *(*) (guint)) tr_##name##_id, tr_##name##_from_id, N }
static const TrWords kind_words = WORDS (kind, TR_N_KINDS);
static const TrWords stage_words = WORDS (stage, TR_N_STAGES);
static const TrWords batch_words = WORDS (batch, TR_N_BATCHES);
static const TrWords style_words = WORDS (style, TR_N_STYLES);
static const TrWords place_words = WORDS (place, TR_N_PLACES);
static const TrWords on_words = WORDS (on, TR_N_ONS);
static const TrWords shape_words = WORDS (shape, TR_N_SHAPES);
static const TrWords step_words = WORDS (step, TR_N_STEPS);

#define MEMBER(name_, type_, Struct, field, ...) \
  { .name = name_, .type = TR_MEMBER_##type_, .offset = G_STRUCT_OFFSET (Struct, field), __VA_ARGS__ }
#define RANGE(...) RANGE_ (__VA_ARGS__)
#define RANGE_(lowest, highest) .min = lowest, .max = highest
#define REQUIRED .flags = TR_MEMBER_REQUIRED
#define NULLABLE .flags = TR_MEMBER_NULLABLE

#define OBJECT(list, Struct, extra_, ...)                \
  { .members = list, .n_members = G_N_ELEMENTS (list),   \
    .extra = G_STRUCT_OFFSET (Struct, extra_), __VA_ARGS__ }

/* Bench */

static const TrMember h_members[] = {
  MEMBER ("fridge", NUMBER, TrBench, h_w_m2k[TR_PLACE_FRIDGE], RANGE (AMOUNT)),
  MEMBER ("freezer", NUMBER, TrBench, h_w_m2k[TR_PLACE_FREEZER], RANGE (AMOUNT)),
  MEMBER ("room", NUMBER, TrBench, h_w_m2k[TR_PLACE_ROOM], RANGE (AMOUNT)),
  MEMBER ("bench", NUMBER, TrBench, h_bench_w_m2k, RANGE (AMOUNT)),
};
static const TrObject h_object = OBJECT (h_members, TrBench, extra_h, .is_inline = TRUE);

static const TrMember bench_members[] = {
  MEMBER ("worktop_mm", PAIR, TrBench, worktop_mm, RANGE (AMOUNT)),
  MEMBER ("roll_width_max_mm", NUMBER, TrBench, roll_width_max_mm, RANGE (AMOUNT),
          .flags = TR_MEMBER_NULLABLE | TR_MEMBER_SAYS_NULL),
  MEMBER ("roll_thickness_min_mm", NUMBER, TrBench, roll_thickness_min_mm, RANGE (AMOUNT)),
  MEMBER ("roll_thickness_max_mm", NUMBER, TrBench, roll_thickness_max_mm, RANGE (AMOUNT)),
  MEMBER ("pass_reduction_percent", NUMBER, TrBench, pass_reduction_percent, RANGE (REDUCTION)),
  MEMBER ("room_c", NUMBER, TrBench, room_c, RANGE (TEMPERATURE)),
  MEMBER ("fridge_c", NUMBER, TrBench, fridge_c, RANGE (TEMPERATURE)),
  MEMBER ("freezer_c", NUMBER, TrBench, freezer_c, RANGE (TEMPERATURE)),
  MEMBER ("h_w_m2k", INSIDE, TrBench, ref_count, .object = &h_object),
  MEMBER ("tray_mm", PAIR, TrBench, tray_mm, RANGE (AMOUNT)),
  MEMBER ("piece_gap_mm", NUMBER, TrBench, piece_gap_mm, RANGE (AMOUNT)),
  MEMBER ("trays_in_oven", WHOLE, TrBench, trays_in_oven, RANGE (COUNT)),
  MEMBER ("preheat_minutes", NUMBER, TrBench, preheat_minutes, RANGE (AMOUNT)),
  MEMBER ("hands", WHOLE, TrBench, hands, RANGE (COUNT)),
  MEMBER ("mixers", WHOLE, TrBench, mixers, .min = 0, .max = 1000),   /* 0: mixed by hand */
  MEMBER ("mixer_max_g", NUMBER, TrBench, mixer_max_g, RANGE (AMOUNT)),
  MEMBER ("turn_minutes", NUMBER, TrBench, turn_minutes, RANGE (AMOUNT)),
  MEMBER ("scale_step_g", NUMBER, TrBench, scale_step_g, RANGE (AMOUNT)),
  MEMBER ("fine_scale_step_g", NUMBER, TrBench, fine_scale_step_g, RANGE (AMOUNT)),
  MEMBER ("currency", TEXT, TrBench, currency),
};
const TrObject tr_bench_object =
  OBJECT (bench_members, TrBench, extra, .create = (gpointer (*) (void)) tr_bench_new,
          .free = (GDestroyNotify) tr_bench_unref);

/* Ingredients of the baker's own */

#define PART(name, part, top) MEMBER (name, PART, TrOwnIngredient, per_100g[part], .min = 0, .max = top)
static const TrMember per_100g_members[] = {
  PART ("water", TR_PART_WATER, 100),
  PART ("fat", TR_PART_FAT, 100),
  PART ("protein", TR_PART_PROTEIN, 100),
  PART ("carbohydrate", TR_PART_CARBOHYDRATE, 100),
  PART ("fibre", TR_PART_FIBRE, 100),
  PART ("sugars", TR_PART_SUGARS, 100),
  PART ("ash", TR_PART_ASH, 100),
  PART ("sodium_mg", TR_PART_SODIUM_MG, 100000),
};
static const TrObject per_100g_object =
  OBJECT (per_100g_members, TrOwnIngredient, extra_per_100g, .is_inline = TRUE);

static const TrMember own_members[] = {
  MEMBER ("id", TEXT, TrOwnIngredient, id, .flags = TR_MEMBER_REQUIRED | TR_MEMBER_FILLED),
  MEMBER ("like", TEXT, TrOwnIngredient, like, REQUIRED),
  MEMBER ("name", TEXT, TrOwnIngredient, name, NULLABLE),
  MEMBER ("per_100g", INSIDE, TrOwnIngredient, id, .object = &per_100g_object),
  MEMBER ("household_g", HOUSEHOLD, TrOwnIngredient, household, RANGE (AMOUNT), NULLABLE),
  MEMBER ("density_g_ml", NUMBER, TrOwnIngredient, density_g_ml, RANGE (DENSITY), NULLABLE),
  MEMBER ("allergens", TEXTS, TrOwnIngredient, allergens, NULLABLE),
  MEMBER ("price_per_kg", NUMBER, TrOwnIngredient, price_per_kg, RANGE (AMOUNT), NULLABLE),
  MEMBER ("plastic_low_c", NUMBER, TrOwnIngredient, plastic_low_c, RANGE (TEMPERATURE), NULLABLE),
  MEMBER ("plastic_high_c", NUMBER, TrOwnIngredient, plastic_high_c, RANGE (TEMPERATURE), NULLABLE),
  MEMBER ("soft_c", NUMBER, TrOwnIngredient, soft_c, RANGE (TEMPERATURE), NULLABLE),
  MEMBER ("liquid_c", NUMBER, TrOwnIngredient, liquid_c, RANGE (TEMPERATURE), NULLABLE),
  MEMBER ("proof_max_c", NUMBER, TrOwnIngredient, proof_max_c, RANGE (TEMPERATURE), NULLABLE),
};

static gpointer
create_own (void)
{
  return tr_own_ingredient_new (NULL, NULL);
}

const TrObject tr_own_ingredient_object =
  OBJECT (own_members, TrOwnIngredient, extra, .is_inline = TRUE, .create = create_own,
          .free = (GDestroyNotify) tr_own_ingredient_free);

/* Lines */

static const TrMember line_members[] = {
  MEMBER ("stage", WORD, TrLine, stage, .words = &stage_words, .none = -1, REQUIRED),
  MEMBER ("group", TEXT, TrLine, group, NULLABLE),
  MEMBER ("ingredient", TEXT, TrLine, ingredient,
          .flags = TR_MEMBER_REQUIRED | TR_MEMBER_NULLABLE | TR_MEMBER_SAYS_NULL),
  MEMBER ("amount", TEXT, TrLine, amount, .max = TR_MAX_AMOUNT_BYTES, REQUIRED),
  MEMBER ("text", TEXT, TrLine, text, NULLABLE),
  MEMBER ("hydration_percent", NUMBER, TrLine, hydration_percent, RANGE (ANY_RATIO), NULLABLE),
};

static gpointer
create_line (void)
{
  return tr_line_new (TR_STAGE_DOUGH, NULL, NULL);
}

static const TrObject line_object =
  OBJECT (line_members, TrLine, extra, .is_inline = TRUE, .create = create_line,
          .free = (GDestroyNotify) tr_line_free);

/* Lock-in and turns */

static const TrMember rest_members[] = {
  MEMBER ("min", NUMBER, TrRest, min_minutes, RANGE (AMOUNT)),
  MEMBER ("max", NUMBER, TrRest, max_minutes, RANGE (AMOUNT)),
  MEMBER ("place", WORD, TrRest, place, .words = &place_words, .none = -1),
  MEMBER ("on", WORD, TrRest, on, .words = &on_words, .none = -1),
  MEMBER ("start_c", NUMBER, TrRest, start_c, RANGE (TEMPERATURE), NULLABLE),
  MEMBER ("target_c", NUMBER, TrRest, target_c, RANGE (TEMPERATURE), NULLABLE),
  MEMBER ("thickness_mm", NUMBER, TrRest, thickness_mm, RANGE (AMOUNT), NULLABLE),
};
static const TrObject rest_object =
  OBJECT (rest_members, TrRest, extra, .is_inline = TRUE, .create = (gpointer (*) (void)) tr_rest_new,
          .free = (GDestroyNotify) tr_rest_free);

static const TrMember lock_in_members[] = {
  MEMBER ("style", WORD, TrLockIn, style, .words = &style_words, .none = -1),
  MEMBER ("fat_thickness_mm", NUMBER, TrLockIn, fat_thickness_mm, RANGE (AMOUNT), NULLABLE),
  MEMBER ("fat_width_mm", NUMBER, TrLockIn, fat_width_mm, RANGE (AMOUNT), NULLABLE),
  MEMBER ("rim_mm", NUMBER, TrLockIn, rim_mm, RANGE (AMOUNT)),
  MEMBER ("blocks", WHOLE, TrLockIn, blocks, RANGE (COUNT)),
  MEMBER ("rest", OBJECT, TrLockIn, rest, .object = &rest_object, NULLABLE),
  MEMBER ("fat_density_g_ml", NUMBER, TrLockIn, fat_density_g_ml, RANGE (DENSITY), NULLABLE),
};
static const TrObject lock_in_object =
  OBJECT (lock_in_members, TrLockIn, extra, .create = (gpointer (*) (void)) tr_lock_in_new,
          .free = (GDestroyNotify) tr_lock_in_free);

static const TrMember turn_members[] = {
  MEMBER ("fold", WHOLE, TrTurn, fold, .min = 2, .max = 6),
  MEMBER ("thickness_mm", NUMBER, TrTurn, thickness_mm, RANGE (AMOUNT), NULLABLE),
  MEMBER ("length_mm", NUMBER, TrTurn, length_mm, RANGE (AMOUNT), NULLABLE),
  MEMBER ("width_mm", NUMBER, TrTurn, width_mm, RANGE (AMOUNT), NULLABLE),
  MEMBER ("trim_mm", NUMBER, TrTurn, trim_mm, RANGE (AMOUNT), .flags = TR_MEMBER_OMITS_ZERO),
  MEMBER ("minutes", NUMBER, TrTurn, minutes, RANGE (AMOUNT), NULLABLE),
  MEMBER ("rest", OBJECT, TrTurn, rest, .object = &rest_object, NULLABLE),
};

static gpointer
create_turn (void)
{
  return tr_turn_new (3, NAN);
}

static void
complete_turn (gpointer object)
{
  TrTurn *turn = object;

  if (!tr_is_written (turn->thickness_mm) && !tr_is_written (turn->length_mm))
    turn->thickness_mm = 8;
}

static const char *
check_turn (gconstpointer  object,
            const char   **name)
{
  const TrTurn *turn = object;
  gboolean has_thickness = tr_is_written (turn->thickness_mm), has_width = tr_is_written (turn->width_mm);

  *name = "length_mm";
  if (tr_is_written (turn->length_mm))
    return has_thickness || has_width ? "no length_mm beside thickness_mm or width_mm" : NULL;
  *name = "thickness_mm";
  if (!has_thickness)
    return "a thickness_mm or a length_mm";

  return NULL;
}

static const TrObject turn_object =
  OBJECT (turn_members, TrTurn, extra, .is_inline = TRUE, .create = create_turn,
          .free = (GDestroyNotify) tr_turn_free, .complete = complete_turn, .check = check_turn);

/* Cut */

static const TrMember cut_members[] = {
  MEMBER ("shape", WORD, TrCut, shape, .words = &shape_words, .none = -1),
  MEMBER ("base_mm", NUMBER, TrCut, base_mm, RANGE (AMOUNT), NULLABLE),
  MEMBER ("height_mm", NUMBER, TrCut, height_mm, RANGE (AMOUNT), NULLABLE),
  MEMBER ("width_mm", NUMBER, TrCut, width_mm, RANGE (AMOUNT), NULLABLE),
  MEMBER ("length_mm", NUMBER, TrCut, length_mm, RANGE (AMOUNT), NULLABLE),
  MEMBER ("side_mm", NUMBER, TrCut, side_mm, RANGE (AMOUNT), NULLABLE),
  MEMBER ("diameter_mm", NUMBER, TrCut, diameter_mm, RANGE (AMOUNT), NULLABLE),
  MEMBER ("gap_mm", NUMBER, TrCut, gap_mm, RANGE (AMOUNT), NULLABLE),
  MEMBER ("slice_mm", NUMBER, TrCut, slice_mm, RANGE (AMOUNT), NULLABLE),
  MEMBER ("roll_length_mm", NUMBER, TrCut, roll_length_mm, RANGE (AMOUNT), NULLABLE),
  MEMBER ("thickness_mm", NUMBER, TrCut, thickness_mm, RANGE (AMOUNT), NULLABLE),
  MEMBER ("piece_mass_g", NUMBER, TrCut, piece_mass_g, RANGE (AMOUNT), NULLABLE),
  MEMBER ("trim_mm", NUMBER, TrCut, trim_mm, RANGE (AMOUNT)),
  MEMBER ("shrink_percent", NUMBER, TrCut, shrink_percent, RANGE (LOSS)),
  MEMBER ("rows", WHOLE, TrCut, rows, RANGE (COUNT), NULLABLE),
  MEMBER ("stretch_percent", NUMBER, TrCut, stretch_percent, RANGE (ANY_RATIO)),
  MEMBER ("rolled_up", FLAG, TrCut, rolled_up, .min = 0, .max = 1, .none = -1, NULLABLE),
  MEMBER ("printed_sheet_mm", PAIR, TrCut, printed_sheet_mm, RANGE (AMOUNT), NULLABLE),
};

static gpointer
create_cut (void)
{
  TrCut *cut = tr_cut_new ();

  cut->base_mm = cut->height_mm = cut->thickness_mm = NAN;

  return cut;
}

static void
fill_number (double *where,
             double  value)
{
  if (!tr_is_written (*where))
    *where = value;
}

static void
complete_cut (gpointer object)
{
  TrCut *cut = object;
  g_autoptr (TrCut) usual = tr_cut_new ();

  if (!tr_is_written (cut->piece_mass_g))
    fill_number (&cut->thickness_mm, usual->thickness_mm);
  if (cut->shape == TR_SHAPE_TRIANGLE || cut->shape == TR_SHAPE_RIGHT_TRIANGLE)
    {
      fill_number (&cut->base_mm, usual->base_mm);
      fill_number (&cut->height_mm, usual->height_mm);
    }
}

static const char *
check_cut (gconstpointer  object,
           const char   **name)
{
  static const char *const sizes[TR_N_SHAPES][2] = {
    [TR_SHAPE_TRIANGLE] = { "base_mm", "height_mm" },
    [TR_SHAPE_RIGHT_TRIANGLE] = { "base_mm", "height_mm" },
    [TR_SHAPE_RECTANGLE] = { "width_mm", "length_mm" },
    [TR_SHAPE_SQUARE] = { "side_mm", NULL },
    [TR_SHAPE_ROUND] = { "diameter_mm", "gap_mm" },
    [TR_SHAPE_SLICES] = { "slice_mm", "roll_length_mm" },
  };
  const TrCut *cut = object;

  for (guint i = 0; i < G_N_ELEMENTS (cut_members); i++)
    for (guint k = 0; k < 2; k++)
      if (g_strcmp0 (cut_members[i].name, sizes[cut->shape][k]) == 0
          && !tr_is_written (*TR_AT_CONST (cut, &cut_members[i], double)))
        {
          *name = cut_members[i].name;
          return "a size of this shape, a number of 0 or more";
        }

  *name = "piece_mass_g";
  if (tr_is_written (cut->thickness_mm) == tr_is_written (cut->piece_mass_g))
    return "either thickness_mm or piece_mass_g, not both";

  return NULL;
}

static const TrObject cut_object =
  OBJECT (cut_members, TrCut, extra, .create = create_cut,
          .free = (GDestroyNotify) tr_cut_free, .complete = complete_cut, .check = check_cut);

/* Method and log */

static const TrMember step_members[] = {
  MEMBER ("id", WORD, TrStep, id, .words = &step_words, .none = -1, REQUIRED),
  MEMBER ("minutes", NUMBER, TrStep, minutes, RANGE (AMOUNT), NULLABLE),
  MEMBER ("max", NUMBER, TrStep, max_minutes, RANGE (AMOUNT), NULLABLE),
  MEMBER ("place", WORD, TrStep, place, .words = &place_words, .none = -1, NULLABLE),
  MEMBER ("at_c", NUMBER, TrStep, at_c, RANGE (TEMPERATURE), NULLABLE),
  MEMBER ("rh_percent", NUMBER, TrStep, rh_percent, RANGE (PERCENT), NULLABLE),
};

static gpointer
create_step (void)
{
  return tr_step_new (TR_STEP_MIX);
}

static const TrObject step_object =
  OBJECT (step_members, TrStep, extra, .is_inline = TRUE, .create = create_step,
          .free = (GDestroyNotify) tr_step_free);

static const TrMember method_members[] = {
  MEMBER ("dough_c", NUMBER, TrMethod, dough_c, RANGE (TEMPERATURE)),
  MEMBER ("flour_c", NUMBER, TrMethod, flour_c, RANGE (TEMPERATURE)),
  MEMBER ("preferment_c", NUMBER, TrMethod, preferment_c, RANGE (TEMPERATURE), NULLABLE),
  MEMBER ("liquids_c", NUMBER, TrMethod, liquids_c, RANGE (TEMPERATURE), NULLABLE),
  MEMBER ("tap_c", NUMBER, TrMethod, tap_c, RANGE (TEMPERATURE)),
  MEMBER ("friction_c", NUMBER, TrMethod, friction_c, RANGE (TEMPERATURE)),
  MEMBER ("friction_n", NUMBER, TrMethod, friction_n, .min = 1, .max = 10),
  MEMBER ("steps", LIST, TrMethod, steps, .object = &step_object),
};
static const TrObject method_object =
  OBJECT (method_members, TrMethod, extra, .create = (gpointer (*) (void)) tr_method_new,
          .free = (GDestroyNotify) tr_method_free);

static const TrMember mix_members[] = {
  MEMBER ("at", TEXT, TrMix, at, NULLABLE),
  MEMBER ("dough_c", NUMBER, TrMix, dough_c, RANGE (TEMPERATURE), NULLABLE),
  MEMBER ("flour_c", NUMBER, TrMix, flour_c, RANGE (TEMPERATURE), NULLABLE),
  MEMBER ("room_c", NUMBER, TrMix, room_c, RANGE (TEMPERATURE), NULLABLE),
  MEMBER ("liquid_c", NUMBER, TrMix, liquid_c, RANGE (TEMPERATURE), NULLABLE),
  MEMBER ("preferment_c", NUMBER, TrMix, preferment_c, RANGE (TEMPERATURE), NULLABLE),
};
static const TrObject mix_object =
  OBJECT (mix_members, TrMix, extra, .is_inline = TRUE, .create = (gpointer (*) (void)) tr_mix_new,
          .free = (GDestroyNotify) tr_mix_free);

static const TrMember logged_step_members[] = {
  MEMBER ("id", WORD, TrLoggedStep, id, .words = &step_words, .none = -1, REQUIRED),
  MEMBER ("at", TEXT, TrLoggedStep, at, NULLABLE),
  MEMBER ("minutes", NUMBER, TrLoggedStep, minutes, RANGE (AMOUNT), NULLABLE),
  MEMBER ("at_c", NUMBER, TrLoggedStep, at_c, RANGE (TEMPERATURE), NULLABLE),
  MEMBER ("rh_percent", NUMBER, TrLoggedStep, rh_percent, RANGE (PERCENT), NULLABLE),
};

/* Which turn; the chill before lock-in, or the sheet, is 0. */
#define TURN(Struct) MEMBER ("turn", WHOLE, Struct, turn, .min = 0, .max = TR_MAX_TURNS, .none = -1, NULLABLE)

static const TrMember logged_rest_members[] = {
  TURN (TrLoggedRest),
  MEMBER ("at", TEXT, TrLoggedRest, at, NULLABLE),
  MEMBER ("minutes", NUMBER, TrLoggedRest, minutes, RANGE (AMOUNT), NULLABLE),
  MEMBER ("core_c", NUMBER, TrLoggedRest, core_c, RANGE (TEMPERATURE), NULLABLE),
};

static const TrMember logged_size_members[] = {
  TURN (TrLoggedSize),
  MEMBER ("at", TEXT, TrLoggedSize, at, NULLABLE),
  MEMBER ("length_mm", NUMBER, TrLoggedSize, length_mm, RANGE (AMOUNT), NULLABLE),
  MEMBER ("width_mm", NUMBER, TrLoggedSize, width_mm, RANGE (AMOUNT), NULLABLE),
  MEMBER ("thickness_mm", NUMBER, TrLoggedSize, thickness_mm, RANGE (AMOUNT), NULLABLE),
  MEMBER ("relaxed_mm", NUMBER, TrLoggedSize, relaxed_mm, RANGE (AMOUNT), NULLABLE),
};

static const TrMember logged_cut_members[] = {
  MEMBER ("at", TEXT, TrLoggedCut, at, NULLABLE),
  MEMBER ("length_mm", NUMBER, TrLoggedCut, length_mm, RANGE (AMOUNT), NULLABLE),
  MEMBER ("width_mm", NUMBER, TrLoggedCut, width_mm, RANGE (AMOUNT), NULLABLE),
  MEMBER ("thickness_mm", NUMBER, TrLoggedCut, thickness_mm, RANGE (AMOUNT), NULLABLE),
  MEMBER ("mass_g", NUMBER, TrLoggedCut, mass_g, RANGE (AMOUNT), NULLABLE),
};

static const TrMember logged_pieces_members[] = {
  MEMBER ("at", TEXT, TrLoggedPieces, at, NULLABLE),
  MEMBER ("count", WHOLE, TrLoggedPieces, count, RANGE (COUNT), .none = 0, NULLABLE),
  MEMBER ("raw_g", NUMBER, TrLoggedPieces, raw_g, RANGE (AMOUNT), NULLABLE),
  MEMBER ("baked_g", NUMBER, TrLoggedPieces, baked_g, RANGE (AMOUNT), NULLABLE),
  MEMBER ("raw_height_mm", NUMBER, TrLoggedPieces, raw_height_mm, RANGE (AMOUNT), NULLABLE),
  MEMBER ("baked_height_mm", NUMBER, TrLoggedPieces, baked_height_mm, RANGE (AMOUNT), NULLABLE),
};

static gpointer
create_logged_step (void)
{
  return tr_logged_step_new (TR_STEP_MIX);
}

static gpointer
create_logged_rest (void)
{
  return tr_logged_rest_new (-1);
}

static gpointer
create_logged_size (void)
{
  return tr_logged_size_new (-1);
}

#define LOGGED(name, Struct, create_)                                                    \
  static const TrObject name##_object =                                                  \
    OBJECT (name##_members, Struct, extra, .is_inline = TRUE, .create = create_,         \
            .free = (GDestroyNotify) tr_##name##_free)
LOGGED (logged_step, TrLoggedStep, create_logged_step);
LOGGED (logged_rest, TrLoggedRest, create_logged_rest);
LOGGED (logged_size, TrLoggedSize, create_logged_size);
LOGGED (logged_cut, TrLoggedCut, (gpointer (*) (void)) tr_logged_cut_new);
LOGGED (logged_pieces, TrLoggedPieces, (gpointer (*) (void)) tr_logged_pieces_new);

static const TrMember log_members[] = {
  MEMBER ("mixes", LIST, TrLog, mixes, .object = &mix_object),
  MEMBER ("steps", LIST, TrLog, steps, .object = &logged_step_object),
  MEMBER ("rests", LIST, TrLog, rests, .object = &logged_rest_object),
  MEMBER ("sizes", LIST, TrLog, sizes, .object = &logged_size_object),
  MEMBER ("cuts", LIST, TrLog, cuts, .object = &logged_cut_object),
  MEMBER ("pieces", LIST, TrLog, pieces, .object = &logged_pieces_object),
  MEMBER ("notes", TEXT, TrLog, notes),
};
static const TrObject log_object =
  OBJECT (log_members, TrLog, extra, .is_short_when_empty = TRUE, .create = (gpointer (*) (void)) tr_log_new,
          .free = (GDestroyNotify) tr_log_free);

/* Doughs */

static const TrMember batch_members[] = {
  MEMBER ("by", WORD, TrDough, batch_by, .words = &batch_words, .none = -1),
  MEMBER ("value", NUMBER, TrDough, batch_value, RANGE (AMOUNT)),
};
static const TrObject batch_object = OBJECT (batch_members, TrDough, extra_batch, .is_inline = TRUE);

static const TrMember dough_members[] = {
  MEMBER ("id", TEXT, TrDough, id, .flags = TR_MEMBER_REQUIRED | TR_MEMBER_FILLED),
  MEMBER ("name", TEXT, TrDough, name, REQUIRED),
  MEMBER ("kind", WORD, TrDough, kind, .words = &kind_words, .none = -1),
  MEMBER ("from", TEXT, TrDough, from, NULLABLE),
  MEMBER ("notes", TEXT, TrDough, notes),
  MEMBER ("lines", LIST, TrDough, lines, .object = &line_object, .max = TR_MAX_LINES, REQUIRED),
  MEMBER ("pieces_written", WHOLE, TrDough, pieces_written, .min = 1, .max = 1000000, NULLABLE),
  MEMBER ("batch", INSIDE, TrDough, id, .object = &batch_object),
  MEMBER ("handling_loss_percent", NUMBER, TrDough, handling_loss_percent, RANGE (LOSS)),
  MEMBER ("bake_loss_percent", NUMBER, TrDough, bake_loss_percent, RANGE (LOSS), NULLABLE),
  MEMBER ("dough_density_g_ml", NUMBER, TrDough, dough_density_g_ml, RANGE (DENSITY)),
  MEMBER ("lock_in", OBJECT, TrDough, lock_in, .object = &lock_in_object, NULLABLE),
  MEMBER ("turns", LIST, TrDough, turns, .object = &turn_object, .max = TR_MAX_TURNS),
  MEMBER ("cut", OBJECT, TrDough, cut, .object = &cut_object, NULLABLE),
  MEMBER ("method", OBJECT, TrDough, method, .object = &method_object),
  MEMBER ("log", OBJECT, TrDough, log, .object = &log_object),
};

static gpointer
create_dough (void)
{
  return tr_dough_new (NULL);
}

const TrObject tr_dough_object =
  OBJECT (dough_members, TrDough, extra, .create = create_dough, .free = (GDestroyNotify) tr_dough_unref);

/* Prediction, plan, tasting */

static const TrMember prediction_members[] = {
  MEMBER ("by", TEXT, TrPrediction, by),
  MEMBER ("order", TEXTS, TrPrediction, order),
  MEMBER ("why", TEXT, TrPrediction, why),
  MEMBER ("locked_at", TEXT, TrPrediction, locked_at, NULLABLE),
};
const TrObject tr_prediction_object =
  OBJECT (prediction_members, TrPrediction, extra,
          .create = (gpointer (*) (void)) tr_prediction_new, .free = (GDestroyNotify) tr_prediction_free);

static const TrMember plan_members[] = {
  MEMBER ("taste_at", TEXT, TrPlan, taste_at, NULLABLE),
  MEMBER ("hands_from", TEXT, TrPlan, hands_from),
  MEMBER ("hands_until", TEXT, TrPlan, hands_until),
  MEMBER ("pins", OPAQUE, TrPlan, pins),
};
const TrObject tr_plan_object =
  OBJECT (plan_members, TrPlan, extra, .is_short_when_empty = TRUE, .create = (gpointer (*) (void)) tr_plan_new,
          .free = (GDestroyNotify) tr_plan_free);

static const TrMember taster_members[] = {
  MEMBER ("id", TEXT, TrTaster, id, .flags = TR_MEMBER_REQUIRED | TR_MEMBER_FILLED),
  MEMBER ("name", TEXT, TrTaster, name),
};

static gpointer
create_taster (void)
{
  return tr_taster_new (NULL, "");
}

static const TrObject taster_object =
  OBJECT (taster_members, TrTaster, extra, .is_inline = TRUE, .create = create_taster,
          .free = (GDestroyNotify) tr_taster_free);

#define MARK(name) MEMBER (#name, WHOLE, TrScore, name, .min = 1, .max = 9, .none = 0, NULLABLE)
static const TrMember marks_members[] = { MARK (look), MARK (layers), MARK (eating) };
static const TrObject marks_object = OBJECT (marks_members, TrScore, extra_marks, .is_inline = TRUE);

#define BALANCE(name) MEMBER (#name, WHOLE, TrScore, name, .min = -2, .max = 2, .none = G_MININT, NULLABLE)
static const TrMember balance_members[] = { BALANCE (salt), BALANCE (sweet), BALANCE (bake) };
static const TrObject balance_object = OBJECT (balance_members, TrScore, extra_balance, .is_inline = TRUE);

static const TrMember score_members[] = {
  MEMBER ("taster", TEXT, TrScore, taster, REQUIRED),
  MEMBER ("dough", TEXT, TrScore, dough, REQUIRED),
  MEMBER ("marks", INSIDE, TrScore, taster, .object = &marks_object),
  MEMBER ("balance", INSIDE, TrScore, taster, .object = &balance_object),
  MEMBER ("faults", TEXTS, TrScore, faults),
  MEMBER ("notes", TEXT, TrScore, notes),
};

static gpointer
create_score (void)
{
  return tr_score_new (NULL, NULL);
}

static const TrObject score_object =
  OBJECT (score_members, TrScore, extra, .is_inline = TRUE, .create = create_score,
          .free = (GDestroyNotify) tr_score_free);

static const TrMember tasting_members[] = {
  MEMBER ("tasters", LIST, TrTasting, tasters, .object = &taster_object, .max = TR_MAX_TASTERS),
  MEMBER ("codes", CODES, TrTasting, codes, .min = 100, .max = 999),
  MEMBER ("orders", ORDERS, TrTasting, orders),
  MEMBER ("scores", LIST, TrTasting, scores, .object = &score_object),
};
const TrObject tr_tasting_object =
  OBJECT (tasting_members, TrTasting, extra, .create = (gpointer (*) (void)) tr_tasting_new,
          .free = (GDestroyNotify) tr_tasting_free);

/* The trial */

static const TrMember trial_members[] = {
  { .name = "format", .type = TR_MEMBER_FORMAT, REQUIRED },
  { .name = "version", .type = TR_MEMBER_VERSION, REQUIRED },
  MEMBER ("title", TEXT, TrTrial, title),
  MEMBER ("bench", OBJECT, TrTrial, bench, .object = &tr_bench_object),
  MEMBER ("ingredients", PANTRY, TrTrial, pantry, .object = &tr_own_ingredient_object),
  MEMBER ("doughs", LIST, TrTrial, doughs, .object = &tr_dough_object, .max = TR_MAX_DOUGHS, REQUIRED),
  MEMBER ("prediction", OBJECT, TrTrial, prediction, .object = &tr_prediction_object, NULLABLE),
  MEMBER ("plan", OBJECT, TrTrial, plan, .object = &tr_plan_object, NULLABLE),
  MEMBER ("tasting", OBJECT, TrTrial, tasting, .object = &tr_tasting_object, NULLABLE),
};
const TrObject tr_trial_object =
  OBJECT (trial_members, TrTrial, extra, .create = (gpointer (*) (void)) tr_trial_new,
          .free = (GDestroyNotify) tr_trial_unref);
