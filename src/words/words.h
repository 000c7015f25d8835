/* words.h: how a quantity, a name, a finding is said to this reader
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Functions named dup return new text. Sizes are said length × width ×
 * thickness, thousands take a thin space that does not break (U+202F), a number
 * and its unit a no-break space.
 */

#pragma once

#include "../calc/account.h"
#include "../calc/faults.h"
#include "../calc/figures.h"
#include "../calc/repair.h"

G_BEGIN_DECLS

typedef enum { TR_UNITS_METRIC, TR_UNITS_US } TrUnitSystem;

/* Exact by definition: NIST Handbook 44, appendix C. */
#define TR_GRAMS_PER_OUNCE 28.349523125

/* How this reader wants numbers. Small value, on the stack. */
typedef struct {
  TrUnitSystem units;
  char decimal[8];               /* "." or "," (UTF-8) */
  double scale_step_g, fine_scale_step_g;   /* of this reader's scales; 0: those of the trial's bench */
} TrReader;

/* English, ".", for the command line and paper made there: never looks at the
 * environment. */
void        tr_reader_init_plain   (TrReader *reader, TrUnitSystem units);
/* The process's locale (after setlocale). */
void        tr_reader_init_locale  (TrReader *reader, TrUnitSystem units);
gboolean    tr_reader_equal        (const TrReader *a, const TrReader *b);
/* That bench with the scales this reader weighs on. (transfer full) */
TrBench    *tr_reader_new_bench    (const TrReader *reader, const TrBench *bench);

/* Numbers, rounded for the eye. NaN gives "–" without a unit. */
char       *tr_words_number        (const TrReader *reader, double value, int decimals);
char       *tr_words_mass          (const TrReader *reader, double grams);            /* "1 470 g", "16.4 g"; US "1.25 oz", "12.3 oz", from 2 lb "3 lb 3.9 oz" */
char       *tr_words_mass_number   (const TrReader *reader, double grams, double step_g); /* no unit, decimals by step */
const char *tr_words_mass_unit     (const TrReader *reader);                          /* "g" or "oz" */
char       *tr_words_length        (const TrReader *reader, double mm);               /* "205 mm", "3.5 mm"; US eighths, under 2 in sixteenths, under 1/2 in thirty-seconds: "8 1/8 in" */
char       *tr_words_length_number (const TrReader *reader, double mm);
const char *tr_words_length_unit   (const TrReader *reader);
char       *tr_words_size          (const TrReader *reader, const TrSize *size);      /* "640 × 205 × 13 mm" */
char       *tr_words_size_bare     (const TrReader *reader, const TrSize *size);      /* without the unit */
char       *tr_words_area_size     (const TrReader *reader, double length_mm, double width_mm); /* "601 × 276 mm" */
char       *tr_words_percent       (const TrReader *reader, double percent);          /* "56.2 %" */
char       *tr_words_micrometres   (const TrReader *reader, const TrRange *range);    /* "84 µm", "42–84 µm" */
char       *tr_words_temperature   (const TrReader *reader, double celsius);          /* "26 °C" or "79 °F" */
char       *tr_words_warming       (const TrReader *reader, double celsius);          /* a difference: "12.0 °C" or "21.6 °F" */
const char *tr_words_temperature_unit (const TrReader *reader);
char       *tr_words_minutes       (const TrReader *reader, double minutes);          /* "45 min", "2 h 15" */
char       *tr_words_count         (const TrReader *reader, double count);            /* "1 024" */
char       *tr_words_energy        (const TrReader *reader, double kj, double kcal);

/* Names, translated. */
const char *tr_words_kind          (TrKind kind);          /* "Croissant dough" */
const char *tr_words_stage         (TrStage stage);        /* "Roll-in" */
const char *tr_words_style         (TrStyle style);
const char *tr_words_style_how     (TrStyle style);        /* one sentence: how it is closed */
char       *tr_words_fold          (int fold);             /* "letter fold (3)" */
const char *tr_words_shape         (TrShape shape);
const char *tr_words_place         (TrPlace place);
const char *tr_words_step          (TrStepId step);
const char *tr_words_fault         (TrFault fault);        /* "Fat pooled" */
const char *tr_words_break         (TrBreaks one);
const char *tr_words_ratio         (TrRatio ratio);        /* "Hydration, all water" */
const char *tr_words_allergen      (const char *id);       /* "wheat", "eggs"; unknown: "check the pack"; another's word as written */
const char *tr_words_annex_allergen (guint index);         /* the ids of Annex II in its order; NULL after the last */
char       *tr_words_allergens     (char **ids);           /* "cereals containing gluten (wheat), eggs, milk"; none: "none known" */
const char *tr_words_severity      (TrSeverity severity);
const char *tr_words_ingredient    (const TrIngredient *ingredient);   /* translated built-in name, or the baker's own */
const char *tr_words_fat           (const TrFormula *formula);         /* "butter" or "fat" */
char       *tr_words_letter        (guint index);          /* of a dough: "A" to "Z", then "AA" */
/* "24 × 51 g raw · butter 11 g · salt 0.6 g · two sheets 601 × 276 × 4 mm · 2 findings";
 * the allergens, always found, are not counted. */
char       *tr_words_strip         (const TrReader *reader, const TrDoughFigures *figures);
/* "Water at 8 °C, 12 g of it ice"; no water: "Whole milk at 18 °C"; nothing poured: NULL. */
char       *tr_words_water         (const TrReader *reader, const TrDoughFigures *figures);

/* What the baker wrote, fit to stand among our words: one line, controls shown as U+FFFD, and without the
 * marks that set or override the direction of what follows them (UAX #9, section 2). (transfer full) */
char       *tr_words_one_line      (const char *text);

/* Sentences. */
char       *tr_words_problem       (const TrReader *reader, const TrProblem *problem);
/* Of any error: what calc refuses in the reader's words, else its message. */
char       *tr_words_error         (const TrReader *reader, const GError *error);
char       *tr_words_finding       (const TrReader *reader, const TrDoughFigures *figures, const TrFinding *finding);
/* "400 g Butter, salted became 400 g Butter, unsalted. Salt went from 12 g to 18.3 g. The same as before: fat, water,
 * effective salt."; not done yet: "becomes", "goes". `figures` are those from before it. */
char       *tr_words_account       (const TrReader *reader, const TrDoughFigures *figures, const TrAccount *account,
                                    gboolean is_done);
/* Of an error of the domain TR_SWAP_ERROR. */
char       *tr_words_swap_refusal  (const TrReader *reader, const TrDoughFigures *figures, const GError *error);
const char *tr_words_kept          (TrKept hold);          /* "Effective salt"; TR_N_KEPT: "Weight" */
char       *tr_words_repair        (const TrReader *reader, const TrRepair *repair);   /* for a button: "Bring salt to 2 %" */
/* "Salt went from 30 g to 20 g. Effective salt is now 2 % of the flour." */
char       *tr_words_repaired      (const TrReader *reader, const TrDoughFigures *figures, const TrRepair *repair,
                                    const TrAccount *account);

/* How the reader's typing is understood: the reader's unit may be left out
 * ("205", "205 mm", "8 1/8 in", "20.5 cm", "2 h 15", with either decimal sign
 * and thin spaces). FALSE with G_NUMBER_PARSER_ERROR and a sentence that names
 * the text and what was expected; `value` is then untouched. Empty is not a
 * number; callers decide whether a field may be empty. */
typedef enum { TR_QUANTITY_NUMBER, TR_QUANTITY_WHOLE, TR_QUANTITY_MASS_G, TR_QUANTITY_LENGTH_MM,
               TR_QUANTITY_TEMPERATURE_C, TR_QUANTITY_PERCENT, TR_QUANTITY_MINUTES,
               TR_QUANTITY_WARMING_C /* a difference, or a sum of such: 12 °C are 21.6 °F */ } TrQuantity;
gboolean    tr_words_read          (const TrReader *reader, TrQuantity quantity, const char *text, double *value, GError **error);
/* For an entry: the number without its unit (show tr_words_length_unit and
 * the like beside it), no thousands sign; NaN gives "". Reads back to within
 * half of the last place written: 0.001 mm, g, %, min; 0.01 °C or °F;
 * 0.0001 oz; 0.001 in unless it is a ruler's fraction ("8 1/8"), which is exact.
 * What still stands there as it was written has not been edited: do not commit it. */
char       *tr_words_write         (const TrReader *reader, TrQuantity quantity, double value);
/* Completes a bare number in an amount by the reader's mass unit: "250" → "250 g"; the document always
 * gets "." or exact fractions. (transfer full) */
char       *tr_words_complete_amount (const TrReader *reader, const char *text);

G_END_DECLS
