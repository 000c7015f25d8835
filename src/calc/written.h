/* written.h: what the baker wrote
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Plain structs that mirror the document. Nothing computed is kept here and
 * nothing here computes.
 *
 * Invariants: a trial, dough, bench or list that has been handed to anybody
 * else is never written to again. To change one, take a draft
 * (tr_trial_copy), own the part (tr_trial_own_dough, ...) and write to that.
 * A number that was not written is NaN (tr_is_written tells); a text that was
 * not written is NULL. `extra` holds the members of the JSON object that this
 * version does not know, as the text of one JSON object, or NULL.
 */

#pragma once

#include <glib.h>
#include <math.h>

G_BEGIN_DECLS

typedef enum { TR_KIND_CROISSANT, TR_KIND_DANISH, TR_KIND_PUFF, TR_KIND_OTHER, TR_N_KINDS } TrKind;
typedef enum { TR_STAGE_PREFERMENT, TR_STAGE_DOUGH, TR_STAGE_ROLL_IN, TR_STAGE_FINISH, TR_N_STAGES } TrStage;
typedef enum { TR_BATCH_WRITTEN, TR_BATCH_PIECES, TR_BATCH_FLOUR_G, TR_BATCH_DOUGH_G, TR_BATCH_TOTAL_G, TR_N_BATCHES } TrBatchBy;
typedef enum { TR_STYLE_HALF, TR_STYLE_GATE, TR_STYLE_ENVELOPE, TR_STYLE_LETTER, TR_STYLE_INVERSE, TR_N_STYLES } TrStyle;
typedef enum { TR_PLACE_FRIDGE, TR_PLACE_FREEZER, TR_PLACE_ROOM, TR_N_PLACES } TrPlace;
typedef enum { TR_ON_BOARD, TR_ON_RACK, TR_N_ONS } TrOn;
typedef enum { TR_SHAPE_TRIANGLE, TR_SHAPE_RIGHT_TRIANGLE, TR_SHAPE_RECTANGLE, TR_SHAPE_SQUARE, TR_SHAPE_ROUND, TR_SHAPE_SLICES, TR_N_SHAPES } TrShape;
typedef enum {
  TR_STEP_PREFERMENT_MIX, TR_STEP_RIPEN, TR_STEP_MIX, TR_STEP_BULK, TR_STEP_CHILL, TR_STEP_FAT_BLOCK,
  TR_STEP_LOCK_IN, TR_STEP_TURN, TR_STEP_REST, TR_STEP_ROLL_OUT, TR_STEP_CUT, TR_STEP_SHAPE,
  TR_STEP_PROOF, TR_STEP_FINISH, TR_STEP_BAKE, TR_STEP_COOL, TR_N_STEPS
} TrStepId;

/* The parts of a composition, all per 100 g of the ingredient; sodium in mg. */
typedef enum {
  TR_PART_WATER, TR_PART_FAT, TR_PART_PROTEIN, TR_PART_CARBOHYDRATE, TR_PART_FIBRE,
  TR_PART_SUGARS, TR_PART_ASH, TR_PART_SODIUM_MG, TR_N_PARTS
} TrPart;

/* How flat the dough lies in the chill before lock-in, where nothing is written. */
#define TR_CHILL_THICKNESS_MM 30.0

#define TR_MAX_TURNS 12
#define TR_MAX_DOUGHS 64
#define TR_MAX_LINES 200
#define TR_MAX_TASTERS 64
#define TR_MAX_AMOUNT_BYTES 200

/* The kitchen. Sizes are length (along the rolling direction) × width. */
typedef struct {
  gatomicrefcount ref_count;
  double worktop_mm[2];
  double roll_width_max_mm;      /* NaN: no rollers, a pin */
  double roll_thickness_min_mm, roll_thickness_max_mm;
  double pass_reduction_percent; /* the most that one pass takes of the thickness */
  double room_c, fridge_c, freezer_c;
  double h_w_m2k[TR_N_PLACES];   /* by TrPlace */
  double h_bench_w_m2k;
  double tray_mm[2];
  double piece_gap_mm;
  int trays_in_oven;
  double preheat_minutes;
  int hands, mixers;
  double mixer_max_g, turn_minutes;
  double scale_step_g, fine_scale_step_g;
  char *currency;
  char *extra, *extra_h;
} TrBench;

typedef struct { char *unit; double grams; } TrHousehold;

/* An ingredient of the baker's own. NaN: as the built-in it is like, except
 * where `unknown` says that the baker wrote null, meaning: not known. */
typedef struct {
  char *id, *like, *name;        /* name NULL: the built-in's */
  double per_100g[TR_N_PARTS];
  gboolean unknown[TR_N_PARTS];
  GArray *household;             /* TrHousehold; NULL: the built-in's */
  double density_g_ml;
  char **allergens;              /* NULL: the built-in's; empty: none */
  double price_per_kg;
  double plastic_low_c, plastic_high_c, soft_c, liquid_c, proof_max_c;
  char *extra, *extra_per_100g;
} TrOwnIngredient;

typedef struct {
  TrStage stage;
  char *group;                   /* of a preferment; NULL: none */
  char *ingredient;              /* id; NULL: not understood */
  char *amount;                  /* as written, never NULL, at most TR_MAX_AMOUNT_BYTES */
  char *text;                    /* the original line; NULL: none */
  double hydration_percent;      /* of a starter; NaN: 100 */
  char *extra;
} TrLine;

typedef struct {
  double min_minutes, max_minutes;
  TrPlace place;
  TrOn on;
  double start_c, target_c;      /* NaN: not written */
  double thickness_mm;           /* only lock_in.rest; NaN: TR_CHILL_THICKNESS_MM */
  char *extra;
} TrRest;

typedef struct {
  TrStyle style;
  double fat_thickness_mm;       /* NaN: 6, letter and inverse 4 */
  double fat_width_mm;           /* NaN: a closed block that is about square */
  double rim_mm;
  int blocks;
  TrRest *rest;                  /* NULL: none */
  double fat_density_g_ml;       /* NaN: 0.940 */
  char *extra;
} TrLockIn;

/* One of: thickness; length; width and thickness. All NaN never happens. */
typedef struct {
  int fold;                      /* 2 to 6 */
  double thickness_mm, length_mm, width_mm;
  double trim_mm;                /* 0: none */
  double minutes;                /* NaN: the bench's turn_minutes */
  TrRest *rest;                  /* NULL: none */
  char *extra;
} TrTurn;

/* Exactly one of thickness_mm and piece_mass_g is written. */
typedef struct {
  TrShape shape;
  double base_mm, height_mm;                 /* triangle, right-triangle */
  double width_mm, length_mm;                /* rectangle */
  double side_mm;                            /* square */
  double diameter_mm, gap_mm;                /* round */
  double slice_mm, roll_length_mm;           /* slices */
  double thickness_mm, piece_mass_g;
  double trim_mm, shrink_percent;
  int rows;                                  /* 0: choose */
  double stretch_percent;
  int rolled_up;                             /* -1: not written (true for a triangle) */
  double printed_sheet_mm[2];                /* NaN: none printed */
  char *extra;
} TrCut;

typedef struct {
  TrStepId id;
  double minutes, max_minutes, at_c, rh_percent;   /* NaN: not written */
  int place;                                       /* TrPlace, or -1: not written */
  char *extra;
} TrStep;

typedef struct {
  double dough_c, flour_c, preferment_c, liquids_c, tap_c, friction_c;
  double friction_n;
  GPtrArray *steps;              /* TrStep */
  char *extra;
} TrMethod;

/* What was measured at a mix; NaN: not written. The temperature of the liquid is
 * that of everything poured together. */
typedef struct {
  char *at;                      /* local date, or as the baker wrote it; NULL: not written */
  double dough_c, flour_c, room_c, liquid_c, preferment_c;
  char *extra;
} TrMix;

/* What really happened, as far as somebody wrote it down; NaN: not written. `at`
 * is a local date or time, or whatever the baker wrote; NULL: not written. */
typedef struct { TrStepId id; char *at; double minutes, at_c, rh_percent; char *extra; } TrLoggedStep;
/* After that turn, from 1; 0: the chill before lock-in; -1: not written. */
typedef struct { int turn; char *at; double minutes, core_c; char *extra; } TrLoggedRest;
/* Rolled in that turn, from 1; 0: the sheet; -1: not written. Of the sheet also how long it is once it has relaxed. */
typedef struct { int turn; char *at; double length_mm, width_mm, thickness_mm, relaxed_mm; char *extra; } TrLoggedSize;
/* A weighed cut of the sheet. */
typedef struct { char *at; double length_mm, width_mm, thickness_mm, mass_g; char *extra; } TrLoggedCut;
/* So many pieces weighed together; 0: not written, one. */
typedef struct { char *at; int count; double raw_g, baked_g, raw_height_mm, baked_height_mm; char *extra; } TrLoggedPieces;

/* The last of each list at its end. */
typedef struct {
  GPtrArray *mixes;              /* TrMix */
  GPtrArray *steps;              /* TrLoggedStep */
  GPtrArray *rests;              /* TrLoggedRest */
  GPtrArray *sizes;              /* TrLoggedSize */
  GPtrArray *cuts;               /* TrLoggedCut */
  GPtrArray *pieces;             /* TrLoggedPieces */
  char *notes;
  char *extra;
} TrLog;

typedef struct {
  gatomicrefcount ref_count;
  char *id, *name;
  TrKind kind;
  char *from;                    /* id of the dough it came from; NULL: none */
  char *notes;
  GPtrArray *lines;              /* TrLine */
  int pieces_written;            /* 0: not written */
  TrBatchBy batch_by;
  double batch_value;
  double handling_loss_percent;
  double bake_loss_percent;      /* NaN: not written */
  double dough_density_g_ml;
  TrLockIn *lock_in;             /* NULL: none */
  GPtrArray *turns;              /* TrTurn */
  TrCut *cut;                    /* NULL: none */
  TrMethod *method;              /* never NULL */
  TrLog *log;                    /* never NULL */
  char *extra, *extra_batch;
} TrDough;

/* The baker's own ingredients, shared between trials. */
typedef struct {
  gatomicrefcount ref_count;
  GPtrArray *own;                /* TrOwnIngredient */
} TrPantry;

typedef struct {
  char *by;                      /* a figure's key, or "hand" */
  char **order;                  /* dough ids */
  char *why;
  char *locked_at;               /* local date and time; NULL: not locked */
  char *extra;
} TrPrediction;

typedef struct {
  char *taste_at, *hands_from, *hands_until;
  char *pins;                    /* text of the JSON array; NULL: empty */
  char *extra;
} TrPlan;

typedef struct { char *id, *name; char *extra; } TrTaster;
typedef struct { char *dough; int code; } TrCode;
typedef struct { char *taster; char **doughs; } TrOrder;
typedef struct {
  char *taster, *dough;
  int look, layers, eating;      /* 1 to 9; 0: not given */
  int salt, sweet, bake;         /* -2 to 2; G_MININT: not given */
  char **faults;
  char *notes;
  char *extra, *extra_marks, *extra_balance;
} TrScore;

typedef struct {
  GPtrArray *tasters;            /* TrTaster */
  GPtrArray *codes;              /* TrCode */
  GPtrArray *orders;             /* TrOrder */
  GPtrArray *scores;             /* TrScore */
  char *extra;
} TrTasting;

typedef struct {
  gatomicrefcount ref_count;
  char *title;
  TrBench *bench;                /* never NULL */
  TrPantry *pantry;              /* never NULL */
  GPtrArray *doughs;             /* TrDough, shared */
  TrPrediction *prediction;      /* NULL: none; likewise below */
  TrPlan *plan;
  TrTasting *tasting;
  char *extra;
} TrTrial;

static inline gboolean
tr_is_written (double value)
{
  return !isnan (value);
}

/* The word that stands in the document for each value, and back (-1: none). */
const char *tr_kind_id       (TrKind kind);
const char *tr_stage_id      (TrStage stage);
const char *tr_batch_id      (TrBatchBy by);
const char *tr_style_id      (TrStyle style);
const char *tr_place_id      (TrPlace place);
const char *tr_on_id         (TrOn on);
const char *tr_shape_id      (TrShape shape);
const char *tr_step_id       (TrStepId step);
const char *tr_part_id       (TrPart part);
int         tr_kind_from_id  (const char *id);
int         tr_stage_from_id (const char *id);
int         tr_batch_from_id (const char *id);
int         tr_style_from_id (const char *id);
int         tr_place_from_id (const char *id);
int         tr_on_from_id    (const char *id);
int         tr_shape_from_id (const char *id);
int         tr_step_from_id  (const char *id);

/* New values hold the document's defaults; `new` owns, `ref` shares, `copy`
 * is deep except that a trial's copy shares bench, pantry and doughs. */
TrTrial         *tr_trial_new            (void);
TrTrial         *tr_trial_ref            (const TrTrial *trial);
void             tr_trial_unref          (TrTrial *trial);
TrTrial         *tr_trial_copy           (const TrTrial *trial);
TrDough         *tr_trial_own_dough      (TrTrial *draft, guint index);
TrBench         *tr_trial_own_bench      (TrTrial *draft);
TrPantry        *tr_trial_own_pantry     (TrTrial *draft);
TrDough         *tr_trial_get_dough      (const TrTrial *trial, guint index);
int              tr_trial_find_dough     (const TrTrial *trial, const char *id);   /* -1: none */
char            *tr_trial_dup_free_id    (const TrTrial *trial);                   /* a dough id not yet used */
void             tr_trial_remove_dough   (TrTrial *draft, guint index);            /* with every reference to it */

TrBench         *tr_bench_new            (void);
TrBench         *tr_bench_ref            (TrBench *bench);
void             tr_bench_unref          (TrBench *bench);
TrBench         *tr_bench_copy           (const TrBench *bench);

TrPantry        *tr_pantry_new           (void);
TrPantry        *tr_pantry_ref           (TrPantry *pantry);
void             tr_pantry_unref         (TrPantry *pantry);
TrPantry        *tr_pantry_copy          (const TrPantry *pantry);
const TrOwnIngredient *tr_pantry_find    (const TrPantry *pantry, const char *id);

TrOwnIngredient *tr_own_ingredient_new   (const char *id, const char *like);
TrOwnIngredient *tr_own_ingredient_copy  (const TrOwnIngredient *own);
void             tr_own_ingredient_add_household (TrOwnIngredient *own, TrHousehold weight);     /* takes weight.unit */
void             tr_own_ingredient_free  (TrOwnIngredient *own);

TrDough         *tr_dough_new            (const char *id);
TrDough         *tr_dough_ref            (TrDough *dough);
void             tr_dough_unref          (TrDough *dough);
TrDough         *tr_dough_copy           (const TrDough *dough);
TrLine          *tr_dough_get_line       (const TrDough *dough, guint index);
TrTurn          *tr_dough_get_turn       (const TrDough *dough, guint index);
const TrStep    *tr_dough_find_step      (const TrDough *dough, TrStepId id);      /* NULL: not written */

TrLine          *tr_line_new             (TrStage stage, const char *ingredient, const char *amount);
TrLine          *tr_line_copy            (const TrLine *line);
void             tr_line_free            (TrLine *line);
TrRest          *tr_rest_new             (void);
TrRest          *tr_rest_copy            (const TrRest *rest);
void             tr_rest_free            (TrRest *rest);
TrLockIn        *tr_lock_in_new          (void);
TrLockIn        *tr_lock_in_copy         (const TrLockIn *lock_in);
void             tr_lock_in_free         (TrLockIn *lock_in);
double           tr_lock_in_get_fat_thickness_mm (const TrLockIn *lock_in);        /* written, or by style */
TrTurn          *tr_turn_new             (int fold, double thickness_mm);
TrTurn          *tr_turn_copy            (const TrTurn *turn);
void             tr_turn_free            (TrTurn *turn);
TrCut           *tr_cut_new              (void);                                   /* the default triangle */
TrCut           *tr_cut_copy             (const TrCut *cut);
void             tr_cut_free             (TrCut *cut);
gboolean         tr_cut_is_rolled_up     (const TrCut *cut);
TrStep          *tr_step_new             (TrStepId id);
TrStep          *tr_step_copy            (const TrStep *step);
void             tr_step_free            (TrStep *step);
TrMethod        *tr_method_new           (void);
TrMethod        *tr_method_copy          (const TrMethod *method);
void             tr_method_free          (TrMethod *method);
TrMix           *tr_mix_new              (void);
TrMix           *tr_mix_copy             (const TrMix *mix);
void             tr_mix_free             (TrMix *mix);
TrLoggedStep    *tr_logged_step_new       (TrStepId id);
TrLoggedStep    *tr_logged_step_copy      (const TrLoggedStep *logged);
void             tr_logged_step_free      (TrLoggedStep *logged);
TrLoggedRest    *tr_logged_rest_new       (int turn);
TrLoggedRest    *tr_logged_rest_copy      (const TrLoggedRest *logged);
void             tr_logged_rest_free      (TrLoggedRest *logged);
TrLoggedSize    *tr_logged_size_new       (int turn);
TrLoggedSize    *tr_logged_size_copy      (const TrLoggedSize *logged);
void             tr_logged_size_free      (TrLoggedSize *logged);
TrLoggedCut     *tr_logged_cut_new        (void);
TrLoggedCut     *tr_logged_cut_copy       (const TrLoggedCut *logged);
void             tr_logged_cut_free       (TrLoggedCut *logged);
TrLoggedPieces  *tr_logged_pieces_new     (void);
TrLoggedPieces  *tr_logged_pieces_copy    (const TrLoggedPieces *logged);
void             tr_logged_pieces_free    (TrLoggedPieces *logged);
TrLog           *tr_log_new              (void);
TrLog           *tr_log_copy             (const TrLog *log);
void             tr_log_free             (TrLog *log);
TrPrediction    *tr_prediction_new       (void);
TrPrediction    *tr_prediction_copy      (const TrPrediction *prediction);
void             tr_prediction_free      (TrPrediction *prediction);
TrPlan          *tr_plan_new             (void);
TrPlan          *tr_plan_copy            (const TrPlan *plan);
void             tr_plan_free            (TrPlan *plan);
TrTasting       *tr_tasting_new          (void);
TrTasting       *tr_tasting_copy         (const TrTasting *tasting);
void             tr_tasting_free         (TrTasting *tasting);
TrTaster        *tr_taster_new           (const char *id, const char *name);
TrTaster        *tr_taster_copy          (const TrTaster *taster);
void             tr_taster_free          (TrTaster *taster);
TrCode          *tr_code_new             (const char *dough, int code);
TrCode          *tr_code_copy            (const TrCode *code);
void             tr_code_free            (TrCode *code);
TrOrder         *tr_order_new            (const char *taster, char **doughs);
TrOrder         *tr_order_copy           (const TrOrder *order);
void             tr_order_free           (TrOrder *order);
TrScore         *tr_score_new            (const char *taster, const char *dough);
TrScore         *tr_score_copy           (const TrScore *score);
void             tr_score_free           (TrScore *score);

/* Replaces an owned text by a copy of another (NULL allowed); TRUE if it differed. */
gboolean         tr_set_text             (char **where, const char *text);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (TrTrial, tr_trial_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TrBench, tr_bench_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TrPantry, tr_pantry_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TrOwnIngredient, tr_own_ingredient_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TrDough, tr_dough_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TrLine, tr_line_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TrRest, tr_rest_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TrLockIn, tr_lock_in_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TrTurn, tr_turn_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TrCut, tr_cut_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TrStep, tr_step_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TrMethod, tr_method_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TrMix, tr_mix_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TrLog, tr_log_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TrPrediction, tr_prediction_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TrPlan, tr_plan_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TrTasting, tr_tasting_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TrTaster, tr_taster_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TrScore, tr_score_free)

G_END_DECLS
