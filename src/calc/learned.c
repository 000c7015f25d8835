/* learned.c: what the log says about the dough's own numbers
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "learned.h"

#include "lamination.h"
#include "lock-in.h"
#include "measure.h"
#include "mix.h"

/* What a dough or a bake can be; outside, something was misread. */
#define LEAST_DENSITY_G_ML 0.3
#define GREATEST_DENSITY_G_ML 1.6
#define GREATEST_LOSS_PERCENT 60.0
#define GREATEST_SHRINK_PERCENT 40.0

/* A sum over the measurements, and their single values. */
static void
add (TrLearned *learned,
     double     value,
     double     first,
     double     second)
{
  learned->least = learned->n == 0 ? value : fmin (learned->least, value);
  learned->greatest = learned->n == 0 ? value : fmax (learned->greatest, value);
  learned->measured[0] = learned->n == 0 ? first : learned->measured[0] + first;
  learned->measured[1] = learned->n == 0 ? second : learned->measured[1] + second;
  learned->n++;
}

/* Density
 *
 * A cut of the sheet has dough and fat in it. Its volume is m_d / ρ_d + m_f / ρ_f,
 * and of that only ρ_d is asked for. */

static double
get_dough_density (const TrDoughFigures *figures,
                   double                mass_g,
                   double                volume_ml)
{
  const TrFormula *formula = &figures->formula;
  double all_g = formula->dough_g + formula->roll_in_g;
  double fat_g = mass_g * formula->roll_in_g / all_g, dough_g = mass_g - fat_g;

  return dough_g / (volume_ml - fat_g / tr_dough_get_fat_density (figures->dough));
}

static void
find_density (const TrDoughFigures *figures,
              TrLearned            *learned)
{
  const GPtrArray *cuts = figures->dough->log->cuts;

  for (guint i = 0; i < cuts->len; i++)
    {
      const TrLoggedCut *cut = g_ptr_array_index (cuts, i);
      double volume_ml = cut->length_mm * cut->width_mm * cut->thickness_mm / TR_MM3_PER_ML;
      double density = get_dough_density (figures, cut->mass_g, volume_ml);

      if (isnan (volume_ml) || isnan (cut->mass_g))
        continue;
      if (density >= LEAST_DENSITY_G_ML && density <= GREATEST_DENSITY_G_ML)
        add (learned, density, cut->mass_g, volume_ml);
      else
        learned->n_left_out++;
    }

  learned->now = figures->dough->dough_density_g_ml;
  if (learned->n > 0)
    learned->value = get_dough_density (figures, learned->measured[0], learned->measured[1]);
}

static void
find_bake_loss (const TrDoughFigures *figures,
                TrLearned            *learned)
{
  const GPtrArray *pieces = figures->dough->log->pieces;

  for (guint i = 0; i < pieces->len; i++)
    {
      const TrLoggedPieces *piece = g_ptr_array_index (pieces, i);
      double loss = 100 * (1 - piece->baked_g / piece->raw_g);

      if (isnan (piece->baked_g) || isnan (piece->raw_g))
        continue;
      if (loss >= 0 && loss <= GREATEST_LOSS_PERCENT)
        add (learned, loss, piece->raw_g, piece->baked_g);
      else
        learned->n_left_out++;
    }

  learned->now = figures->dough->bake_loss_percent;
  if (learned->n > 0)
    learned->value = 100 * (1 - learned->measured[1] / learned->measured[0]);
}

static void
find_shrink (const TrDoughFigures *figures,
             TrLearned            *learned)
{
  const GPtrArray *sizes = figures->dough->log->sizes;

  if (figures->dough->cut == NULL)
    return;
  for (guint i = 0; i < sizes->len; i++)
    {
      const TrLoggedSize *size = g_ptr_array_index (sizes, i);
      double shrink = 100 * (1 - size->relaxed_mm / size->length_mm);

      if (size->turn != 0 || isnan (size->relaxed_mm) || isnan (size->length_mm))
        continue;
      if (shrink >= 0 && shrink <= GREATEST_SHRINK_PERCENT)
        add (learned, shrink, size->length_mm, size->relaxed_mm);
      else
        learned->n_left_out++;
    }

  learned->now = figures->dough->cut->shrink_percent;
  if (learned->n > 0)
    learned->value = 100 * (1 - learned->measured[1] / learned->measured[0]);
}

static void
find_friction (const TrDoughFigures *figures,
               TrLearned            *learned)
{
  const TrMix *mix = tr_dough_get_last_mix (figures->dough);
  double n = 0, friction_c = mix != NULL ? tr_mix_get_friction (mix, &n) : NAN;

  if (!(friction_c >= 0))
    {
      learned->n_left_out = isnan (friction_c) ? 0u : 1u;
      return;
    }

  add (learned, friction_c, n, mix->dough_c);
  learned->value = friction_c;
  learned->now = figures->dough->method->friction_c * n / figures->dough->method->friction_n;
}

gboolean
tr_learned_find (const TrDoughFigures *figures,
                 TrLearnedId           id,
                 TrLearned            *learned)
{
  *learned = (TrLearned) { .id = id, .value = NAN, .least = NAN, .greatest = NAN, .now = NAN, .measured = { NAN, NAN } };
  switch (id)
    {
    case TR_LEARNED_DENSITY:
      find_density (figures, learned);
      break;
    case TR_LEARNED_BAKE_LOSS:
      find_bake_loss (figures, learned);
      break;
    case TR_LEARNED_SHRINK:
      find_shrink (figures, learned);
      break;
    case TR_LEARNED_FRICTION:
      find_friction (figures, learned);
      break;
    case TR_N_LEARNED:
    default:
      g_return_val_if_reached (FALSE);
    }

  return learned->n > 0 || learned->n_left_out > 0;
}

static double
get_step (TrLearnedId id)
{
  return id == TR_LEARNED_DENSITY ? 0.005 : id == TR_LEARNED_FRICTION ? 0.01 : 0.1;
}

static double
get_rounded (const TrLearned *learned)
{
  double step = get_step (learned->id);

  return round (learned->value / step) * step;
}

gboolean
tr_learned_is_set (const TrLearned *learned)
{
  return fabs (get_rounded (learned) - learned->now) < get_step (learned->id) / 2;
}

void
tr_learned_apply (const TrLearned *learned,
                  TrDough         *dough)
{
  /* Without the last bits that a decimal fraction leaves. */
  double value = round (get_rounded (learned) * 1e6) / 1e6;

  g_return_if_fail (!isnan (value));

  switch (learned->id)
    {
    case TR_LEARNED_DENSITY:
      dough->dough_density_g_ml = value;
      break;
    case TR_LEARNED_BAKE_LOSS:
      dough->bake_loss_percent = value;
      break;
    case TR_LEARNED_SHRINK:
      g_return_if_fail (dough->cut != NULL);
      dough->cut->shrink_percent = value;
      break;
    case TR_LEARNED_FRICTION:
      dough->method->friction_c = value;
      dough->method->friction_n = learned->measured[0];
      break;
    case TR_N_LEARNED:
    default:
      g_return_if_reached ();
    }
}

const char *
tr_learned_pointer (TrLearnedId id)
{
  static const char *const pointers[TR_N_LEARNED] = {
    [TR_LEARNED_DENSITY] = "/dough_density_g_ml",
    [TR_LEARNED_BAKE_LOSS] = "/bake_loss_percent",
    [TR_LEARNED_SHRINK] = "/cut/shrink_percent",
    [TR_LEARNED_FRICTION] = "/method/friction_c",
  };

  g_return_val_if_fail ((guint) id < TR_N_LEARNED, NULL);

  return pointers[id];
}
