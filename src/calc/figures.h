/* figures.h: what follows from a trial
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The names are the report's keys. A figure that cannot be computed is NaN
 * (in the report: null). Nothing is rounded. Figures are immutable and
 * reference-counted; a dough's figures are shared between generations when
 * its dough, bench and pantry are the same pointers.
 */

#pragma once

#include "amount.h"
#include "heat.h"
#include "ingredient.h"
#include "written.h"

G_BEGIN_DECLS

/* The greatest count that is still exact; above it counts are NaN. */
#define TR_EXACT_MAX 9007199254740992.0
#define TR_MAX_ALTERNATIVES 12

typedef struct { double min, max; } TrRange;
/* [along the rolling direction, across, thickness] */
typedef struct { double mm[3]; } TrSize;

typedef struct {
  const TrLine *line;            /* borrowed from the dough */
  TrIngredient ingredient;       /* only when `known` */
  gboolean known;
  double grams;                  /* of the batch; NaN: not weighed, and left out of every sum */
  double written_grams;          /* as written, before scaling, percentages solved */
  double percent;                /* written on written flour; finish lines too */
} TrLineFigures;

typedef struct {
  double flour_g, dough_g, roll_in_g, total_g;
  double added_water_percent, all_water_percent, prefermented_flour_percent;
  double dough_fat_percent;
  double roll_in_percent_of_flour, roll_in_percent_of_dough, roll_in_percent_of_total;
  double roll_in_fat_percent_of_flour;
  double salt_percent, sugar_percent, yeast_fresh_percent;
  double scale;
  GArray *lines;                 /* TrLineFigures, one a line of the dough */
  GPtrArray *problems;           /* TrProblem */
  /* Not in the report: */
  double written_flour_g, written_dough_g, written_roll_in_g, written_total_g;
  gboolean flour_is_assumed;     /* all in %, F = 1000 g */
  double written_fat_role_g;     /* grams of the fat-role lines in the mix, as written ... */
  double mix_fat_role_g;         /* ... and of the batch */
  double mix_salt_per_100g;      /* effective salt; not from sodium where the line is salt */
  double mix_per_100g[TR_N_PARTS];   /* composition of the mix; NaN: not known */
  double dough_per_100g[TR_N_PARTS]; /* of the dough without the roll-in */
  double roll_in_per_100g[TR_N_PARTS];
  gboolean all_fat_is_butter;    /* there are fat-role lines in the mix and every one is like butter */
  double salted_fat_salt_percent;/* points of salt_percent that the fat brings */
} TrFormula;

typedef struct { double fat_g, salt_g, sugars_g, energy_kj, energy_kcal; } TrContent;

/* All NaN but per_100g_raw where a cut gives no sheet. */
typedef struct {
  double count;                  /* cut; without a cut, wanted or written */
  double raw_mass_g, baked_mass_g;   /* without what is added at the finish */
  double added_fat_g;            /* mass of the fat-role lines' share, not of their fat */
  TrContent content;             /* of a piece, finish included: fat_g, salt_g, … beside raw_mass_g in the report */
  TrContent per_100g_raw;        /* of the mix, finish not included */
  double cost;                   /* of everything bought; tap water is not */
} TrPiece;

typedef enum {
  TR_BREAK_WORKTOP_LENGTH = 1 << 0,
  TR_BREAK_WORKTOP_WIDTH = 1 << 1,
  TR_BREAK_ROLL_WIDTH = 1 << 2,
  TR_BREAK_ROLL_THICKNESS_MIN = 1 << 3,
  TR_BREAK_ROLL_THICKNESS_MAX = 1 << 4,
} TrBreaks;
#define TR_N_BREAKS 5
const char *tr_break_id (TrBreaks one);          /* "worktop-length" */

typedef struct {
  TrSize start_mm, rolled_mm, folded_mm;
  double stretch;
  double fat_layers, dough_layers;
  TrRange fat_layer_um;
  double trimmed_g;
  TrBreaks breaks;               /* fits = none */
} TrTurnFigures;

typedef struct {
  TrSize fat_mm, dough_mm, block_mm;
  double rim_share;
} TrLockInFigures;

typedef struct {
  double blocks_cut;             /* sheets made of one block; NaN: no sheet */
  TrSize start_mm;
  double stretch_length, stretch_width;
  const char *order;             /* "length-first" or "width-first" */
  gboolean fits;
} TrToSheet;

typedef struct {
  double fat_layers, dough_layers, bands, fold_product;
  double fat_volume_fraction;
  TrRange fat_layer_um;
  TrRange dough_layer_um;        /* inner layers; both NaN: none */
  double dough_layer_um_outer;   /* NaN: inverse */
  TrLockInFigures lock_in;
  GArray *steps;                 /* TrTurnFigures */
  gboolean has_to_sheet;
  TrToSheet to_sheet;
  /* Not in the report: */
  double block_mass_g;           /* net, of one block */
  double fat_block_g;            /* fat of one block */
  double mix_density_g_ml, fat_density_g_ml;
} TrLamination;

typedef struct {
  int rows, per_row, sheets;
  double length_mm, width_mm;
  double pieces_cut, scrap_percent;
  gboolean rotated;              /* rolled with the row across the worktop's length */
  gboolean hexagonal;            /* round pieces; not in the report */
} TrAlternative;

typedef struct { TrSize footprint_mm; double per_tray, trays, loads; } TrTrays;

typedef struct {
  int rows, per_row, sheets;
  double length_mm, width_mm, thickness_mm;   /* relaxed; length along a row */
  TrSize rolled_mm;
  double mass_g;                 /* one sheet */
  double pieces_cut, wanted, spare_pieces;
  double scrap_percent;
  TrAlternative alternatives[TR_MAX_ALTERNATIVES];
  guint n_alternatives;
  double windings, diameter_mm, layers_across;
  double printed_thickness_mm;
  TrTrays trays;
  /* Not in the report: */
  TrBreaks breaks;               /* of the rolled sheet */
  double piece_area_mm2;
  gboolean hexagonal;            /* round pieces */
} TrSheet;

typedef struct {
  double n;                      /* temperatures that meet: 3, or 4 with a preferment or starter */
  double liquid_need_c;          /* that everything poured should have */
  double water_c;                /* that the water should have; NaN: no water, or over 45 °C */
  double ice_g;                  /* that takes the place of as much of the water from the tap; 0: none */
  double available_water_g;      /* of the batch */
} TrWater;

/* Why a time of a rest is not there. */
typedef enum {
  TR_HEAT_KNOWN,
  TR_HEAT_NOT_KNOWN,             /* a size, or what it is made of */
  TR_HEAT_ONLY_WARMS,            /* the air is not colder than the slab */
  TR_HEAT_NEVER_THERE,           /* the air is not colder than the target */
  TR_HEAT_FREEZES,               /* the surface freezes before, and the model ends */
  TR_HEAT_NO_FAT,                /* temperatures of the fat are not known, or there is none */
  TR_HEAT_ROOM_TOO_COLD,         /* for the fat ever to bend */
  TR_HEAT_NO_LIMIT,              /* the room never softens the fat */
  TR_HEAT_NOT_ASKED,             /* the chill before lock-in: nothing is rolled after it */
} TrHeatWhy;

typedef struct {
  int turn;                      /* 0: the chill before lock-in; else after that turn, from 1 */
  TrPlace place;
  TrOn on;
  double air_c, h_w_m2k, thickness_mm, k_w_mk, rho_kg_m3, cp_j_kgk;
  double start_c, target_c;
  double minutes_to_core, written_minutes;
  double core_c_after_written, mean_c_after_written;
  double minutes_to_surface_freezing;
  double minutes_to_workable, work_window_minutes;
  /* Not in the report: */
  TrHeatWhy core_why, workable_why, window_why;
  TrWall wall;                   /* the slab while it rests */
  double plastic_low_c, soft_c;  /* of the roll-in fat: the highest low, the lowest soft; NaN: not known */
  const char *fat;               /* the id of the one that softens first; borrowed, NULL: none */
  double rolled_mm;              /* how thick it is rolled next */
  double next_minutes;           /* how long that takes; NaN: the sheet, and nothing is written */
} TrRestFigures;

/* Findings: what is wrong or worth knowing. words/ makes the sentence. */
typedef enum { TR_SEVERITY_NOTE, TR_SEVERITY_WARN, TR_SEVERITY_STOP } TrSeverity;

typedef enum {
  TR_FINDING_NO_FLOUR, TR_FINDING_NOT_WEIGHED, TR_FINDING_LOCK_IN_GEOMETRY, TR_FINDING_TURN_THICKER,
  TR_FINDING_NO_PIECE, TR_FINDING_AMOUNT, TR_FINDING_TOO_THIN, TR_FINDING_TOO_LONG, TR_FINDING_TOO_THICK,
  TR_FINDING_MIXER, TR_FINDING_SALT, TR_FINDING_BAND, TR_FINDING_FAT_LAYER, TR_FINDING_STRETCH,
  TR_FINDING_REST_SHORT, TR_FINDING_WINDOW_SHORT, TR_FINDING_FREEZING, TR_FINDING_PROOF_HOT,
  TR_FINDING_PRINTED_SIZE, TR_FINDING_PRINTED_COUNT, TR_FINDING_BUTTER_LEGAL, TR_FINDING_LEGAL_MINIMUM,
  TR_FINDING_SPOON_SALT, TR_FINDING_SPOON_YEAST, TR_FINDING_LOADS, TR_FINDING_COLD_CHAIN,
  TR_FINDING_SPARE, TR_FINDING_ALLERGENS, TR_N_FINDINGS
} TrFindingId;

typedef struct {
  TrFindingId id;
  TrSeverity severity;
  char *where;                   /* JSON Pointer inside the dough; "" the dough itself */
  double value, limit;           /* NaN: none */
  const char *source;            /* static; NULL: none */
  /* What the sentence needs besides; the meaning by id is in findings.h. */
  double with[4];
  char *name;                    /* an ingredient, a ratio's key, a break's id, …; NULL: none */
} TrFinding;

const char *tr_finding_id       (TrFindingId id);       /* "too-long" */
const char *tr_severity_id      (TrSeverity severity);  /* "stop" */
void        tr_finding_free     (TrFinding *finding);

typedef struct {
  gatomicrefcount ref_count;
  TrDough *dough;                /* what they were computed from */
  TrBench *bench;
  TrPantry *pantry;
  TrFormula formula;
  TrPiece piece;
  gboolean has_lamination;       /* a lock-in is written */
  gboolean has_water;            /* something is written in the dough */
  gboolean has_sheet;            /* a cut is written, and it gives at least one piece */
  TrLamination lamination;
  TrSheet sheet;
  TrWater water;
  GArray *rests;                 /* TrRestFigures, in the order of the work */
  char **allergens;              /* sorted ids, finish lines included */
  GPtrArray *findings;           /* TrFinding, worst first */
} TrDoughFigures;

typedef struct {
  gatomicrefcount ref_count;
  TrTrial *trial;
  GPtrArray *doughs;             /* TrDoughFigures, in document order */
} TrFigures;

/* The one door: all figures and findings of all doughs. `previous` may be
 * NULL; doughs that did not change are taken from it. */
TrFigures            *tr_figures_compute    (const TrTrial   *trial,
                                             const TrFigures *previous);
TrFigures            *tr_figures_ref        (const TrFigures *figures);
void                  tr_figures_unref      (TrFigures *figures);
const TrDoughFigures *tr_figures_get_dough  (const TrFigures *figures,
                                             guint            index);
/* The pointer of something inside dough `index` in the whole document. */
char                 *tr_figures_dup_pointer (guint       index,
                                              const char *where);
TrDoughFigures       *tr_dough_figures_ref   (TrDoughFigures *figures);
void                  tr_dough_figures_unref (TrDoughFigures *figures);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (TrFigures, tr_figures_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TrDoughFigures, tr_dough_figures_unref)

G_END_DECLS
