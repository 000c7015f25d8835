/* heat.c: how food conducts, and how a slab of it cools
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "heat.h"

#include <math.h>

/* Choi & Okos 1986: constant, factor of T and of T², T in °C. */
enum { PROTEIN, FAT, CARBOHYDRATE, FIBRE, ASH, WATER, N_COMPONENTS };
typedef double Polynomial[3];

static const Polynomial conductivity[N_COMPONENTS] = {          /* W/m K */
  [PROTEIN] = { 1.7881e-1, 1.1958e-3, -2.7178e-6 },
  [FAT] = { 1.8071e-1, -2.7604e-4, -1.7749e-7 },
  [CARBOHYDRATE] = { 2.0141e-1, 1.3874e-3, -4.3312e-6 },
  [FIBRE] = { 1.8331e-1, 1.2497e-3, -3.1683e-6 },
  [ASH] = { 3.2962e-1, 1.4011e-3, -2.9069e-6 },
  [WATER] = { 5.7109e-1, 1.7625e-3, -6.7036e-6 },
};
static const Polynomial density[N_COMPONENTS] = {               /* kg/m³ */
  [PROTEIN] = { 1329.9, -0.5184, 0 },
  [FAT] = { 925.59, -0.41757, 0 },
  [CARBOHYDRATE] = { 1599.1, -0.31046, 0 },
  [FIBRE] = { 1311.5, -0.36589, 0 },
  [ASH] = { 2423.8, -0.28063, 0 },
  [WATER] = { 997.18, 3.1439e-3, -3.7574e-3 },
};
static const Polynomial heat_capacity[N_COMPONENTS] = {         /* kJ/kg K */
  [PROTEIN] = { 2.0082, 1.2089e-3, -1.3129e-6 },
  [FAT] = { 1.9842, 1.4733e-3, -4.8008e-6 },
  [CARBOHYDRATE] = { 1.5488, 1.9625e-3, -5.9399e-6 },
  [FIBRE] = { 1.8459, 1.8306e-3, -4.6509e-6 },
  [ASH] = { 1.0926, 1.8896e-3, -3.6817e-6 },
  [WATER] = { 4.1762, -9.0864e-5, 5.4731e-6 },
};

/* Under this Fourier number the far side does not yet feel the air (to 1e-11):
 * the semi-infinite solid is exact enough, and the series would need more terms. */
#define SHORT_FOURIER 0.01
/* No time that anybody waits. */
#define GREATEST_FOURIER 1e9
/* exp (-45) of anything is less than the last digit of 1. */
#define NOTHING_LEFT 45.0
#define SECONDS_PER_MINUTE 60.0

static double
evaluate (const Polynomial polynomial,
          double           celsius)
{
  return polynomial[0] + celsius * (polynomial[1] + celsius * polynomial[2]);
}

void
tr_thermal_compute (const double  per_100g[TR_N_PARTS],
                    double        celsius,
                    TrThermal    *thermal)
{
  const double mass[N_COMPONENTS] = {
    [PROTEIN] = per_100g[TR_PART_PROTEIN],
    [FAT] = per_100g[TR_PART_FAT],
    [CARBOHYDRATE] = per_100g[TR_PART_CARBOHYDRATE] - fmin (per_100g[TR_PART_FIBRE], per_100g[TR_PART_CARBOHYDRATE]),
    [FIBRE] = per_100g[TR_PART_FIBRE],
    [ASH] = per_100g[TR_PART_ASH],
    [WATER] = per_100g[TR_PART_WATER],
  };
  double all = 0, volume = 0, k = 0, cp = 0;

  for (guint i = 0; i < N_COMPONENTS; i++)
    {
      double ml = mass[i] / evaluate (density[i], celsius);

      all += mass[i];
      volume += ml;
      k += ml * evaluate (conductivity[i], celsius);
      cp += mass[i] * evaluate (heat_capacity[i], celsius);
    }

  *thermal = (TrThermal) { .k_w_mk = k / volume, .rho_kg_m3 = all / volume, .cp_j_kgk = 1000 * cp / all };
}

double
tr_thermal_porous_k (double k_w_mk,
                     double gas)
{
  return k_w_mk * (1 - gas) / (1 + gas / 2);
}

/* Roots of z tan z = Bi, one in each (n π, n π + π/2). As z - n π - atan (Bi / z)
 * it rises ever less steeply, so that Newton's steps come from the left from the second on. */
static double
find_root (double biot,
           guint  n)
{
  double base = n * G_PI;
  double root = n == 0 ? sqrt (biot / (1 + 4 * biot / (G_PI * G_PI))) : base + atan2 (biot, base);

  for (guint i = 0; i < 60; i++)
    {
      double step = (root - base - atan2 (biot, root)) / (1 + biot / (root * root + biot * biot));

      root -= step;
      if (fabs (step) <= 1e-15 * root)
        break;
    }

  return root;
}

void
tr_wall_init (TrWall          *wall,
              double           start_c,
              double           air_c,
              double           h_w_m2k,
              double           depth_mm,
              const TrThermal *thermal)
{
  double depth_m = depth_mm / 1000;

  *wall = (TrWall) {
    .start_c = start_c,
    .air_c = air_c,
    .biot = h_w_m2k * depth_m / thermal->k_w_mk,
    .scale_s = depth_m * depth_m * thermal->rho_kg_m3 * thermal->cp_j_kgk / thermal->k_w_mk,
  };
  if (!(wall->biot > 0 && wall->scale_s > 0 && isfinite (wall->biot) && isfinite (wall->scale_s)))
    {
      wall->biot = wall->scale_s = NAN;
      return;
    }

  for (guint i = 0; i < TR_WALL_TERMS; i++)
    {
      double root = find_root (wall->biot, i);

      wall->root[i] = root;
      wall->factor[i] = 4 * sin (root) / (2 * root + sin (2 * root));
    }
}

/* exp (x²) erfc (x), x not below 0. */
static double
scaled_erfc (double x)
{
  if (x < 20)
    return exp (x * x) * erfc (x);

  double y = 1 / (x * x);

  return (1 - y / 2 * (1 - 1.5 * y * (1 - 2.5 * y))) / (x * sqrt (G_PI));
}

/* (T - air) / (start - air). `depth` from 0, the face, to 1, the core. */
static double
get_share_at (const TrWall *wall,
              double        depth,
              double        fourier)
{
  double share = 0;

  if (fourier <= 0)
    return 1;
  if (fourier < SHORT_FOURIER)
    {
      double way = depth / (2 * sqrt (fourier));

      return erf (way) + exp (-way * way) * scaled_erfc (way + wall->biot * sqrt (fourier));
    }

  for (guint i = 0; i < TR_WALL_TERMS && wall->root[i] * wall->root[i] * fourier < NOTHING_LEFT; i++)
    share += wall->factor[i] * exp (-wall->root[i] * wall->root[i] * fourier) * cos (wall->root[i] * (1 - depth));

  return share;
}

/* What has left through the face of a semi-infinite solid. */
static double
get_short_loss (const TrWall *wall,
                double        fourier)
{
  double reach = wall->biot * sqrt (fourier);

  /* The closed form loses its digits there. */
  if (reach < 1e-3)
    return reach * reach / wall->biot * (1 - 4 * reach / (3 * sqrt (G_PI)) + reach * reach / 2);

  return (scaled_erfc (reach) - 1 + 2 * reach / sqrt (G_PI)) / wall->biot;
}

static double
get_mean_share (const TrWall *wall,
                double        fourier)
{
  double share = 0;

  if (fourier <= 0)
    return 1;
  if (fourier < SHORT_FOURIER)
    return 1 - get_short_loss (wall, fourier);

  for (guint i = 0; i < TR_WALL_TERMS && wall->root[i] * wall->root[i] * fourier < NOTHING_LEFT; i++)
    share += wall->factor[i] * exp (-wall->root[i] * wall->root[i] * fourier) * sin (wall->root[i]) / wall->root[i];

  return share;
}

static double
get_share (const TrWall *wall,
           TrWallPlace   place,
           double        fourier)
{
  switch (place)
    {
    case TR_WALL_SURFACE:
      return get_share_at (wall, 0, fourier);
    case TR_WALL_MEAN:
      return get_mean_share (wall, fourier);
    case TR_WALL_CORE:
    default:
      return get_share_at (wall, 1, fourier);
    }
}

static double
celsius_of_share (const TrWall *wall,
                  double        share)
{
  return wall->air_c + (wall->start_c - wall->air_c) * share;
}

double
tr_wall_get_c (const TrWall *wall,
               TrWallPlace   place,
               double        minutes)
{
  if (isnan (wall->scale_s))
    return NAN;

  return celsius_of_share (wall, get_share (wall, place, minutes * SECONDS_PER_MINUTE / wall->scale_s));
}

double
tr_wall_get_c_at (const TrWall *wall,
                  double        depth,
                  double        minutes)
{
  if (isnan (wall->scale_s))
    return NAN;

  return celsius_of_share (wall, get_share_at (wall, depth, minutes * SECONDS_PER_MINUTE / wall->scale_s));
}

/* How far the logarithm of the share is from the wanted one: nearly a straight
 * line in time once the first term is all there is. */
static double
miss (const TrWall *wall,
      TrWallPlace   place,
      double        fourier,
      double        wanted)
{
  return log (fmax (get_share (wall, place, fourier), G_MINDOUBLE)) - log (wanted);
}

/* Regula falsi with the weight of a stuck end halved (Illinois), which cannot
 * leave its bracket. */
static double
find_fourier (const TrWall *wall,
              TrWallPlace   place,
              double        wanted)
{
  double low = 0, high = 0.1 + 0.1 / wall->biot;
  double at_low, at_high;

  while (miss (wall, place, high, wanted) > 0 && high < GREATEST_FOURIER)
    {
      low = high;
      high *= 4;
    }
  at_low = miss (wall, place, low, wanted);
  at_high = miss (wall, place, high, wanted);
  if (!(at_high <= 0 && at_low >= 0))
    return NAN;

  for (guint i = 0; i < 300 && high - low > 1e-13 * high; i++)
    {
      double middle = (low * at_high - high * at_low) / (at_high - at_low);

      if (!(middle > low && middle < high) || i % 8 == 7)
        middle = (low + high) / 2;

      double at = miss (wall, place, middle, wanted);

      if (at > 0)
        {
          low = middle;
          at_low = at;
          at_high /= 2;
        }
      else
        {
          high = middle;
          at_high = at;
          at_low /= 2;
        }
    }

  return (low + high) / 2;
}

double
tr_wall_get_minutes_to (const TrWall *wall,
                        TrWallPlace   place,
                        double        celsius)
{
  double wanted = (celsius - wall->air_c) / (wall->start_c - wall->air_c);

  if (isnan (wall->scale_s) || isnan (wanted))
    return NAN;
  if (wanted >= 1)
    return 0;
  if (!(wanted > 0))
    return NAN;

  return find_fourier (wall, place, wanted) * wall->scale_s / SECONDS_PER_MINUTE;
}
