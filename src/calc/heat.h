/* heat.h: how food conducts, and how a slab of it cools
 *
 * Copyright 2026 The Tourier authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Properties from the composition by Choi & Okos 1986 (Food Engineering and
 * Process Applications 1, 93-101; reprinted in the ASHRAE Handbook,
 * Refrigeration, Thermal Properties of Foods), for water that is not frozen.
 *
 * A wall is a plane slab, as warm all through at the start, in air of one
 * temperature. It loses heat through one face (a tray on a shelf) or through
 * both. Incropera, Fundamentals of Heat and Mass Transfer, ch. 5: the series
 * of eq. 5.42, and for short times the semi-infinite solid of eq. 5.63. No
 * latent heat, no frost, no edges.
 */

#pragma once

#include "written.h"

G_BEGIN_DECLS

typedef struct { double k_w_mk, rho_kg_m3, cp_j_kgk; } TrThermal;

/* Of 100 g of something at a temperature, -40 to 150 °C; the parts are brought
 * to 100 g, fibre is taken out of the carbohydrate. k: parts side by side. A
 * part that is not known makes all three NaN. */
void   tr_thermal_compute      (const double  per_100g[TR_N_PARTS],
                                double        celsius,
                                TrThermal    *thermal);
/* The conductivity of something with round pores of gas in it, `gas` their share of
 * the volume: Maxwell 1873 (ASHRAE as above, for an insulating dispersed phase). */
double tr_thermal_porous_k     (double        k_w_mk,
                                double        gas);

/* Enough terms for every time at which the series is used. */
#define TR_WALL_TERMS 24

typedef struct {
  double start_c, air_c;
  double biot;                   /* h L / k */
  double scale_s;                /* L² / α: the seconds of Fourier number 1 */
  double root[TR_WALL_TERMS], factor[TR_WALL_TERMS];
} TrWall;

/* `depth_mm`: from the face in the air to the middle, or to the tray. Anything not
 * above 0 makes a wall that knows nothing: its answers are NaN. */
void   tr_wall_init            (TrWall          *wall,
                                double           start_c,
                                double           air_c,
                                double           h_w_m2k,
                                double           depth_mm,
                                const TrThermal *thermal);

typedef enum { TR_WALL_CORE, TR_WALL_SURFACE, TR_WALL_MEAN } TrWallPlace;

double tr_wall_get_c           (const TrWall    *wall,
                                TrWallPlace      place,
                                double           minutes);
/* `depth`: 0 at the face in the air, 1 at the core. */
double tr_wall_get_c_at        (const TrWall    *wall,
                                double           depth,
                                double           minutes);
/* 0 when it is there at the start; NaN: it never is. */
double tr_wall_get_minutes_to  (const TrWall    *wall,
                                TrWallPlace      place,
                                double           celsius);

G_END_DECLS
