/* recipe.h: a recipe as text, understood line by line
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Takes plain text, a web page or JSON-LD (the schema.org type Recipe) and
 * says of every line what it was taken for. A reading that had to be chosen is
 * flagged with its reason and what else it could be; what is not understood
 * keeps its text and says why. Nothing is dropped: each line of the source is
 * in `lines` or in `notes`.
 */

#pragma once

#include "../calc/ingredient.h"

G_BEGIN_DECLS

/* Longer input is refused: a page with its pictures inside, and the text that
 * is left when the markup is gone. */
#define TR_RECIPE_MAX_BYTES (32 * 1024 * 1024)
#define TR_RECIPE_MAX_TEXT_BYTES (1024 * 1024)

typedef enum {
  TR_RECIPE_ERROR_EMPTY,
  TR_RECIPE_ERROR_TOO_LARGE,
  TR_RECIPE_ERROR_NOT_TEXT,
  TR_RECIPE_ERROR_NO_RECIPE,
} TrRecipeError;
#define TR_RECIPE_ERROR (tr_recipe_error_quark ())
GQuark tr_recipe_error_quark (void);

typedef enum {
  TR_RECIPE_FROM_TEXT,           /* plain text */
  TR_RECIPE_FROM_JSON_LD,        /* schema.org Recipe, in a page or alone */
  TR_RECIPE_FROM_MICRODATA,      /* itemprop in a page */
  TR_RECIPE_FROM_PAGE_TEXT,      /* the readable text of a page without either */
} TrRecipeSourceKind;

/* Why a flag is there. */
typedef enum {
  TR_RECIPE_FLAG_INGREDIENT,     /* one of several ingredients was taken */
  TR_RECIPE_FLAG_LEFT_OVER,      /* a word of the name was not understood */
  TR_RECIPE_FLAG_EITHER,         /* "butter or margarine": the first was taken */
  TR_RECIPE_FLAG_MEAN,           /* a range: its mean counts */
  TR_RECIPE_FLAG_MEASURE,        /* heaped, scant, a spoon or pint of another size, an egg of another size */
  TR_RECIPE_FLAG_VAGUE,          /* a knob, a splash: not weighed */
  TR_RECIPE_FLAG_NO_AMOUNT,
  TR_RECIPE_FLAG_BARE_NUMBER,
  TR_RECIPE_FLAG_AMBIGUOUS,      /* 1,500 */
  TR_RECIPE_FLAG_NO_WEIGHT,      /* no weight is known of that measure */
  TR_RECIPE_FLAG_DISAGREE,       /* two masses of one line differ */
  TR_RECIPE_FLAG_EXTRA,          /* "plus more for dusting": not counted */
  TR_RECIPE_FLAG_OPTIONAL,
  TR_RECIPE_FLAG_STAGE,          /* dough or roll-in: the text does not say */
  TR_RECIPE_FLAG_HYDRATION,      /* a starter whose hydration is not written */
} TrRecipeFlagId;

typedef enum {
  TR_RECIPE_CHOOSE_INGREDIENT,   /* value: an id */
  TR_RECIPE_CHOOSE_AMOUNT,       /* value: an amount */
  TR_RECIPE_CHOOSE_STAGE,        /* value: a stage's id */
  TR_RECIPE_CHOOSE_LEAVE_OUT,    /* value: "" */
  TR_RECIPE_CHOOSE_TAKE_IN,      /* value: "" */
} TrRecipeChoiceKind;

typedef struct { TrRecipeChoiceKind kind; char *value; } TrRecipeChoice;

typedef struct {
  TrRecipeFlagId id;
  char *reason;                  /* a sentence */
  GPtrArray *choices;            /* TrRecipeChoice: what else it could be; may be empty */
  gboolean is_settled;           /* the reader chose */
} TrRecipeFlag;

/* Invariants: `amount` is never NULL and fits TrLine; `ingredient` is NULL or a
 * built-in's id; `why` is NULL exactly when the line is understood. */
typedef struct {
  char *text;                    /* the original line; lines that came from one line share it */
  guint number;                  /* of that line in the source, from 1 */
  TrStage stage;
  char *group;                   /* of a preferment; NULL: none */
  char *ingredient;              /* NULL: not understood */
  char *name;                    /* as written, without amount; may be "" */
  char *amount;                  /* in the document's syntax; "": none */
  double hydration_percent;      /* of a starter; NaN: not written */
  gboolean is_in_dough;          /* FALSE: flour for the bench and the like; kept in the notes */
  GPtrArray *flags;              /* TrRecipeFlag */
  char *why;                     /* why it is not understood */
} TrRecipeLine;

typedef struct { char *text; guint number; } TrRecipeNote;

typedef struct {
  TrRecipeSourceKind source;
  char *title;                   /* "": none */
  char *yield;                   /* as written; NULL: none */
  int pieces;                    /* 0: not said */
  TrKind kind;
  GPtrArray *lines;              /* TrRecipeLine */
  GPtrArray *notes;              /* TrRecipeNote: the method and every other line */
  GPtrArray *others;             /* char *: titles of the other recipes of the page */
  GPtrArray *remarks;            /* char *: sentences about the reading itself */
} TrRecipe;

/* Any bytes. `name_hint` (a file's name, or NULL) is the title where none is
 * written. The first recipe is taken; `others` names the rest. NULL with a
 * sentence: empty, too long, not text, nothing of a recipe in it. */
TrRecipe           *tr_recipe_read          (const char   *bytes,
                                             gsize         length,
                                             const char   *name_hint,
                                             GError      **error);
/* The recipe at `index` of those in a page, from 0. */
TrRecipe           *tr_recipe_read_nth      (const char   *bytes,
                                             gsize         length,
                                             const char   *name_hint,
                                             guint         index,
                                             GError      **error);
void                tr_recipe_free          (TrRecipe *recipe);

const TrRecipeLine *tr_recipe_get_line      (const TrRecipe *recipe, guint index);
TrRole              tr_recipe_line_get_role (const TrRecipeLine *line);   /* TR_ROLE_OTHER: not understood */
/* Lines whose ingredient and amount were understood; `n_lines` all of them. */
guint               tr_recipe_count_understood (const TrRecipe *recipe, guint *n_lines);

/* What the review changes. `choose` takes one of a flag's choices and settles
 * the flag; `ingredient` NULL: not known. */
void                tr_recipe_choose        (TrRecipe *recipe, guint line, guint flag, guint choice);
void                tr_recipe_set_ingredient (TrRecipe *recipe, guint line, const char *ingredient);
void                tr_recipe_set_amount    (TrRecipe *recipe, guint line, const char *amount);
void                tr_recipe_set_stage     (TrRecipe *recipe, guint line, TrStage stage);
void                tr_recipe_set_in_dough  (TrRecipe *recipe, guint line, gboolean is_in_dough);
/* "a stage", "an ingredient" as the choice is called in English. */
char               *tr_recipe_choice_dup_label (const TrRecipeChoice *choice);

/* A dough of the lines, with batch and pieces as written; roll-in lines give it
 * a lock-in. Everything else the recipe says is in its notes. */
TrDough            *tr_recipe_make_dough    (const TrRecipe *recipe, const char *id);
/* A trial of that one dough. */
TrTrial            *tr_recipe_make_trial    (const TrRecipe *recipe);
/* The account, one line of the recipe after the other, for a terminal. */
char               *tr_recipe_describe      (const TrRecipe *recipe);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (TrRecipe, tr_recipe_free)

G_END_DECLS
