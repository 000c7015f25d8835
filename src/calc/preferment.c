/* preferment.c: a preferment taken out of the dough
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "preferment.h"

#include "balance-private.h"
#include "measure.h"
#include "water.h"

#define STARTER "starter-wheat"
/* One smaller than this share of the flour ripens nothing. */
#define LEAST_SHARE 0.04

/* Common practice; of old dough only the share counts. */
static const struct { const char *id; double share, hydration, yeast_fresh; } kinds[TR_N_PREFERMENTS] = {
  [TR_PREFERMENT_POOLISH] = { "poolish", 0.25, 1.0, 0.0025 },
  [TR_PREFERMENT_SPONGE] = { "sponge", 0.30, 0.6, 0.01 },
  [TR_PREFERMENT_STARTER] = { "starter", 0.15, 1.0, 0 },
  [TR_PREFERMENT_OLD_DOUGH] = { "old-dough", 0.20, 0, 0 },
};

/* What one line of the dough gives. */
typedef struct { guint index; double grams; } TrGift;
typedef struct { TrGift gifts[TR_MAX_LINES]; guint n; } TrGifts;

const char *
tr_preferment_id (TrPrefermentKind kind)
{
  g_return_val_if_fail (kind < TR_N_PREFERMENTS, NULL);

  return kinds[kind].id;
}

int
tr_preferment_from_id (const char *id)
{
  for (guint i = 0; i < TR_N_PREFERMENTS; i++)
    if (g_strcmp0 (kinds[i].id, id) == 0)
      return (int) i;

  return -1;
}

static gboolean
is_yeast (const TrLineFigures *line)
{
  return tr_balance_is_of_ratio (line, TR_RATIO_YEAST_FRESH);
}

static double
grams_of (const TrDoughFigures *figures,
          int                   index)
{
  double grams = index >= 0 ? tr_look_get_line (figures, (guint) index)->written_grams : NAN;

  return isfinite (grams) ? grams : 0;
}

/* A round number that the line has. */
static void
add_gift (TrGifts              *gifts,
          const TrDoughFigures *figures,
          int                   index,
          double                grams)
{
  double round = tr_balance_round_nice (grams, 0.01 * grams), has = grams_of (figures, index);

  gifts->gifts[gifts->n++] = (TrGift) { (guint) index, round > has ? MIN (grams, has) : round };
}

static gboolean
refuse (GError      **error,
        TrRefusalId   id)
{
  return tr_balance_refuse (error, id, NAN, NAN, NAN);
}

/* A starter is of flour and water; the others are mixed of what there is. */
static int
find_liquid (const TrDoughFigures *figures,
             TrPrefermentKind      kind)
{
  int water = tr_balance_find_heaviest (figures, tr_line_is_water, NULL, G_MAXUINT);

  return kind == TR_PREFERMENT_STARTER || grams_of (figures, water) > 0 ? water : tr_balance_find_heaviest (figures, tr_balance_is_wet, NULL, G_MAXUINT);
}

static gboolean
find_mixed_gifts (const TrDoughFigures *figures,
                  TrPrefermentKind      kind,
                  TrGifts              *gifts,
                  GError              **error)
{
  int flour = tr_balance_find_heaviest (figures, tr_balance_is_flour, NULL, G_MAXUINT);
  int liquid = find_liquid (figures, kind), yeast = tr_balance_find_heaviest (figures, is_yeast, NULL, G_MAXUINT);
  double whole = figures->formula.written_flour_g;
  double flour_g = MIN (kinds[kind].share * whole, grams_of (figures, liquid) / kinds[kind].hydration);

  if (!(grams_of (figures, flour) >= flour_g))
    return refuse (error, TR_REFUSAL_NO_FLOUR_TO_GIVE);
  if (flour_g < LEAST_SHARE * whole)
    return refuse (error, TR_REFUSAL_NO_WATER_TO_GIVE);
  add_gift (gifts, figures, flour, flour_g);
  /* The hydration is kept to the gram: of a starter it says how much is flour. */
  if (kinds[kind].hydration * gifts->gifts[0].grams > grams_of (figures, liquid))
    gifts->gifts[0].grams = grams_of (figures, liquid) / kinds[kind].hydration;
  gifts->gifts[gifts->n++] = (TrGift) { (guint) liquid, kinds[kind].hydration * gifts->gifts[0].grams };
  if (kinds[kind].yeast_fresh > 0)
    {
      double yeast_g = yeast >= 0 ? kinds[kind].yeast_fresh * flour_g / tr_look_get_line (figures, (guint) yeast)->ingredient.fresh_yeast_factor : NAN;

      if (!(grams_of (figures, yeast) >= yeast_g))
        return refuse (error, TR_REFUSAL_NO_YEAST_TO_GIVE);
      add_gift (gifts, figures, yeast, yeast_g);
    }

  return TRUE;
}

static gboolean
is_of_old_dough (const TrLineFigures *line,
                 gboolean             has_water)
{
  if (!line->known || line->line->stage != TR_STAGE_DOUGH || !(line->written_grams > 0))
    return FALSE;
  if (tr_balance_is_wet (line))
    return !has_water || tr_line_is_water (line);

  return tr_balance_is_flour (line) || line->ingredient.role == TR_ROLE_SALT || is_yeast (line);
}

static gboolean
find_old_gifts (const TrDoughFigures *figures,
                TrGifts              *gifts,
                GError              **error)
{
  gboolean has_water = grams_of (figures, tr_balance_find_heaviest (figures, tr_line_is_water, NULL, G_MAXUINT)) > 0;

  if (tr_balance_find_heaviest (figures, tr_balance_is_flour, NULL, G_MAXUINT) < 0)
    return refuse (error, TR_REFUSAL_NO_FLOUR_TO_GIVE);
  if (find_liquid (figures, TR_PREFERMENT_OLD_DOUGH) < 0)
    return refuse (error, TR_REFUSAL_NO_WATER_TO_GIVE);
  for (guint i = 0; i < figures->formula.lines->len; i++)
    if (is_of_old_dough (tr_look_get_line (figures, i), has_water))
      add_gift (gifts, figures, (int) i, kinds[TR_PREFERMENT_OLD_DOUGH].share * grams_of (figures, (int) i));

  return TRUE;
}

static void
give (TrDough              *dough,
      const TrDoughFigures *figures,
      const TrGifts        *gifts)
{
  for (guint i = 0; i < gifts->n; i++)
    {
      TrMover mover;
      double left = grams_of (figures, (int) gifts->gifts[i].index) - gifts->gifts[i].grams;

      tr_balance_init_mover (&mover, figures, gifts->gifts[i].index, 1);
      tr_balance_write_mover (dough, &mover, MAX (left, 0) / tr_balance_grams_of_unit (mover.unit, &figures->formula));
    }
}

/* A line that gave all it had goes. Returns how many went. */
static int
remove_empty (TrDough              *dough,
              const TrDoughFigures *figures,
              const TrGifts        *gifts)
{
  int n = 0;

  for (guint index = figures->formula.lines->len; index-- > 0;)
    for (guint i = 0; i < gifts->n; i++)
      if (gifts->gifts[i].index == index && grams_of (figures, (int) index) - gifts->gifts[i].grams < TR_HAIR)
        {
          g_ptr_array_remove_index (dough->lines, index);
          n++;
          break;
        }

  return n;
}

int
tr_preferment_add (TrDough               *dough,
                   const TrDoughFigures  *figures,
                   TrPrefermentKind       kind,
                   const char            *group,
                   GError               **error)
{
  TrGifts gifts = { .n = 0 };
  int first;

  g_return_val_if_fail (dough != NULL && figures != NULL && kind < TR_N_PREFERMENTS, -1);
  g_return_val_if_fail (dough->lines->len == figures->formula.lines->len, -1);

  first = (int) dough->lines->len;
  if (!tr_is_positive (figures->formula.written_flour_g))
    return refuse (error, TR_REFUSAL_NO_FLOUR_TO_GIVE), -1;
  if (kind == TR_PREFERMENT_OLD_DOUGH ? !find_old_gifts (figures, &gifts, error) : !find_mixed_gifts (figures, kind, &gifts, error))
    return -1;
  if (dough->lines->len + gifts.n > TR_MAX_LINES)
    return tr_balance_refuse (error, TR_REFUSAL_TOO_MANY_LINES, TR_MAX_LINES, NAN, NAN), -1;

  if (kind == TR_PREFERMENT_STARTER)
    tr_balance_add_line (dough, TR_STAGE_PREFERMENT, group, STARTER, gifts.gifts[0].grams + gifts.gifts[1].grams);
  else
    for (guint i = 0; i < gifts.n; i++)
      tr_balance_add_line (dough, TR_STAGE_PREFERMENT, group, tr_look_get_line (figures, gifts.gifts[i].index)->line->ingredient,
                           gifts.gifts[i].grams);
  give (dough, figures, &gifts);

  return first - remove_empty (dough, figures, &gifts);
}
