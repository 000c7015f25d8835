#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Rests a second time, by finite differences.

    heat.py TOURIER [HOW-MANY] [SEED]

Random doughs are put to the program, and every slab it reports is cut into thin
cells and solved with scipy (Virtanen et al. 2020, Nature Methods 17, 261-272):
first with the program's own averaged properties, which must agree to 0.05 °C and
0.5 % of the time, in the rest and on the bench after it; then as the layers of fat
and dough that it is, each with its own properties, which tells how good the average
is. Doughs are invented.
"""

import json
import os
import random
import subprocess
import sys
import tempfile

import numpy
from scipy.linalg import eigh_tridiagonal
from scipy.optimize import brentq

from tap import Tap

# Choi & Okos 1986, as in the ASHRAE Handbook, Refrigeration; water above 0 °C.
CONDUCTIVITY = {'protein': (1.7881e-1, 1.1958e-3, -2.7178e-6), 'fat': (1.8071e-1, -2.7604e-4, -1.7749e-7),
                'carbohydrate': (2.0141e-1, 1.3874e-3, -4.3312e-6), 'fibre': (1.8331e-1, 1.2497e-3, -3.1683e-6),
                'ash': (3.2962e-1, 1.4011e-3, -2.9069e-6), 'water': (5.7109e-1, 1.7625e-3, -6.7036e-6)}
DENSITY = {'protein': (1329.9, -0.5184, 0), 'fat': (925.59, -0.41757, 0), 'carbohydrate': (1599.1, -0.31046, 0),
           'fibre': (1311.5, -0.36589, 0), 'ash': (2423.8, -0.28063, 0), 'water': (997.18, 3.1439e-3, -3.7574e-3)}
CAPACITY = {'protein': (2.0082, 1.2089e-3, -1.3129e-6), 'fat': (1.9842, 1.4733e-3, -4.8008e-6),
            'carbohydrate': (1.5488, 1.9625e-3, -5.9399e-6), 'fibre': (1.8459, 1.8306e-3, -4.6509e-6),
            'ash': (1.0926, 1.8896e-3, -3.6817e-6), 'water': (4.1762, -9.0864e-5, 5.4731e-6)}

# USDA SR28 per 100 g: 20083, 01145; tap water is all water. Fibre is taken out of the carbohydrate.
FLOUR = {'water': 13.36, 'fat': 1.66, 'protein': 11.98, 'carbohydrate': 72.53 - 2.4, 'fibre': 2.4, 'ash': 0.47}
BUTTER = {'water': 17.94, 'fat': 81.11, 'protein': 0.85, 'carbohydrate': 0.06, 'fibre': 0.0, 'ash': 0.09}
WATER = dict.fromkeys(FLOUR, 0.0) | {'water': 100.0}

BUTTER_KG_M3 = 940               # what the program takes where none is written; by the rows above 939.5 at 4 °C
CELLS = 300
# How far the averaged slab may be off after so many turns, of the time to the core. Of 3000 blocks of
# butter and dough after one fold, in air of -20 to 5 °C and 5 to 50 W/m² K, the worst was 4.9 %: two
# leaves of an inverse block, on a rack. From two turns on nothing to speak of is left.
LAYERED_LIMITS = {1: 0.07, 2: 0.02, 3: 0.01}
FREEZING_C = -2.0
BUTTER_BENDS_C, BUTTER_SOFT_C = 10.0, 17.0   # what the program's table has; common practice
ROOM_C, ROOM_H = 21.0, 25.0      # a bench's, where none is written


def value(polynomial, t):
    return polynomial[0] + polynomial[1] * t + polynomial[2] * t * t


def properties(parts, t):
    """k W/m K, density kg/m³, c_p J/kg K of {part: share of mass}."""
    mass = sum(parts.values())
    volume = {p: m / mass / value(DENSITY[p], t) for p, m in parts.items()}
    everything = sum(volume.values())
    return (sum(v / everything * value(CONDUCTIVITY[p], t) for p, v in volume.items()), 1 / everything,
            1000 * sum(m / mass * value(CAPACITY[p], t) for p, m in parts.items()))


class Wall:
    """Cells from the tray or the middle (the first) to the face in the air."""

    def __init__(self, sizes, k, capacity, h, start, air):
        sizes, k, capacity = (numpy.asarray(x, float) for x in (sizes, k, capacity))
        between = 1 / (sizes[:-1] / 2 / k[:-1] + sizes[1:] / 2 / k[1:])
        outward = 1 / (sizes[-1] / 2 / k[-1] + 1 / h)
        loss = numpy.zeros(len(sizes))
        loss[:-1] += between
        loss[1:] += between
        loss[-1] += outward
        heat = sizes * capacity
        root = numpy.sqrt(heat)
        self.rates, vectors = eigh_tridiagonal(loss / heat, -between / (root[:-1] * root[1:]), lapack_driver='stev')
        weights = vectors.T @ (root * (start - air))
        self.core = vectors[0] / root[0] * weights
        self.mean = (vectors.T @ root) / heat.sum() * weights
        # From the middle of the last cell to its face, in which the same heat flows.
        self.face = vectors[-1] / root[-1] * weights * outward / h
        self.air, self.start = air, start

    def celsius(self, place, minutes):
        return self.air + float(place @ numpy.exp(-self.rates * 60 * minutes))

    def minutes_to(self, place, target):
        high = 1.0
        while (self.celsius(place, high) - target) * (self.start - self.air) > 0:
            high *= 2
        return brentq(lambda m: self.celsius(place, m) - target, 0, high, xtol=1e-9)


def even(depth_mm, k, capacity, h, start, air):
    return Wall([depth_mm / 1000 / CELLS] * CELLS, [k] * CELLS, [capacity] * CELLS, h, start, air)


def averaged(rest):
    return even(rest['thickness_mm'] / (2 if rest['on'] == 'rack' else 1), rest['k_w_mk'], rest['rho_kg_m3'] * rest['cp_j_kgk'],
                rest['h_w_m2k'], rest['start_c'], rest['air_c'])


def leaves(t, dough, density):
    """(k, J/m³ K) of the butter and of the dough with its gas."""
    k_f, _, c_f = properties(BUTTER, t)
    k_d, rho_solid, c_d = properties(dough, t)
    gas = max(0.0, 1 - density / rho_solid)
    return (k_f, BUTTER_KG_M3 * c_f), (k_d * (1 - gas) / (1 + gas / 2), density * c_d)


def on_the_bench(rest, start, depth_mm, fat_share, dough, density):
    (k_f, heat_f), (k_d, heat_d) = leaves((start + ROOM_C) / 2, dough, density)
    return even(depth_mm, 1 / (fat_share / k_f + (1 - fat_share) / k_d), fat_share * heat_f + (1 - fat_share) * heat_d,
                ROOM_H, start, ROOM_C)


def stack(style, fat_share, folds):
    """Bands (share of the thickness, is fat) of a block; inverse has the fat outside."""
    inside, is_fat = (1 - fat_share, False) if style == 'inverse' else (fat_share, True)
    bands = [((1 - inside) / 2, not is_fat), (inside, is_fat), ((1 - inside) / 2, not is_fat)]
    for fold in folds:
        made = []
        for copy in range(fold):
            for share, fat in (bands if copy % 2 == 0 else bands[::-1]):
                if made and made[-1][1] == fat:
                    made[-1] = (made[-1][0] + share / fold, fat)
                else:
                    made.append((share / fold, fat))
        bands = made
    return bands


def layered(rest, style, fat_share, folds, dough, density):
    (k_f, heat_f), (k_d, heat_d) = leaves(max(0.0, (rest['start_c'] + rest['air_c']) / 2), dough, density)
    bands = stack(style, fat_share, folds)
    if rest['on'] == 'rack':
        half, kept = 0.5, []
        for share, fat in bands:
            kept.append((min(share, half), fat))
            half -= min(share, half)
        bands = [b for b in kept if b[0] > 0][::-1]
    sizes, k, capacity = [], [], []
    for share, fat in bands:
        n = max(4, round(share * CELLS))
        sizes += [share * rest['thickness_mm'] / 1000 / n] * n
        k += [k_f if fat else k_d] * n
        capacity += [heat_f if fat else heat_d] * n
    return Wall(sizes, k, capacity, rest['h_w_m2k'], rest['start_c'], rest['air_c'])


def make(rng):
    water = rng.uniform(240, 330)
    folds = [rng.choice([2, 3, 4]) for _ in range(rng.randint(1, 3))]
    rest = lambda: {'min': rng.randint(10, 240), 'max': 1440, 'place': rng.choice(['fridge', 'fridge', 'freezer']),
                    'on': rng.choice(['board', 'rack']), 'start_c': rng.uniform(12, 22), 'target_c': rng.uniform(6, 11)}
    dough = {'id': 'd1', 'name': 'One', 'kind': 'croissant', 'dough_density_g_ml': rng.uniform(1.0, 1.2),
             'lines': [{'stage': 'dough', 'ingredient': 'flour-bread', 'amount': '500 g'},
                       {'stage': 'dough', 'ingredient': 'water', 'amount': f'{water:.1f} g'},
                       {'stage': 'roll-in', 'ingredient': 'butter-unsalted', 'amount': f'{rng.uniform(150, 450):.1f} g'}],
             'batch': {'by': 'written', 'value': 1}, 'handling_loss_percent': 0,
             'lock_in': {'style': rng.choice(['half', 'inverse']), 'rest': rest() | {'thickness_mm': rng.uniform(15, 50)}},
             'turns': [{'fold': f, 'thickness_mm': rng.uniform(6, 10), 'rest': rest()} for f in folds], 'cut': None}
    parts = {p: 500 * FLOUR[p] + float(f'{water:.1f}') * WATER[p] for p in FLOUR}
    return {'format': 'tourier-trial', 'version': 1, 'doughs': [dough],
            'bench': {'h_w_m2k': {'fridge': rng.uniform(5, 15), 'freezer': rng.uniform(5, 15)},
                      'fridge_c': rng.uniform(2, 5)}}, parts


class Worst:
    """The greatest differences, and how many were seen."""

    def __init__(self):
        self.of, self.count = {}, {}

    def see(self, what, off):
        self.of[what] = max(self.of.get(what, 0.0), abs(off))
        self.count[what] = self.count.get(what, 0) + 1


def compare_rest(rest, worst):
    wall = averaged(rest)
    for key, place in (('core', wall.core), ('mean', wall.mean)):
        theirs = rest[f'{key}_c_after_written']
        if theirs is not None:
            worst.see(f'{key} °C', theirs - wall.celsius(place, rest['written_minutes']))
    if rest['minutes_to_core']:
        worst.see('minutes to core', rest['minutes_to_core'] / wall.minutes_to(wall.core, rest['target_c']) - 1)
    if rest['minutes_to_surface_freezing']:
        worst.see('minutes to freezing', rest['minutes_to_surface_freezing'] / wall.minutes_to(wall.face, FREEZING_C) - 1)


def compare_bench(rest, turns, fat_share, parts, density, worst):
    mean = rest['mean_c_after_written']
    if rest['minutes_to_workable']:
        block = on_the_bench(rest, mean, rest['thickness_mm'], fat_share, parts, density)
        worst.see('minutes to workable', rest['minutes_to_workable'] / block.minutes_to(block.mean, BUTTER_BENDS_C) - 1)
    if rest['work_window_minutes']:
        rolled = on_the_bench(rest, max(mean, BUTTER_BENDS_C), turns[rest['turn']]['thickness_mm'], fat_share, parts, density)
        worst.see('minutes of window', rest['work_window_minutes'] / rolled.minutes_to(rolled.mean, BUTTER_SOFT_C) - 1)


def compare(tourier, path, document, parts, worst, apart):
    with open(path, 'w', encoding='utf-8') as out:
        json.dump(document, out)
    said = subprocess.run([tourier, '--figures', path], check=True, capture_output=True).stdout
    report, dough = json.loads(said)['doughs'][0], document['doughs'][0]
    share, density = report['lamination']['fat_volume_fraction'], 1000 * dough['dough_density_g_ml']
    folds = [t['fold'] for t in dough['turns']]
    for rest in report['rests']:
        compare_rest(rest, worst)
        compare_bench(rest, dough['turns'], share, parts, density, worst)
        if rest['turn'] > 0 and rest['minutes_to_core']:
            fine = layered(rest, dough['lock_in']['style'], share, folds[:rest['turn']], parts, density)
            apart[rest['turn']].append(rest['minutes_to_core'] / fine.minutes_to(fine.core, rest['target_c']) - 1)


def main(tourier, how_many=60, seed=None):
    seed = int(seed) if seed is not None else random.SystemRandom().randrange(2 ** 31)
    print(f'# seed {seed}')
    rng, tap, worst = random.Random(seed), Tap(), Worst()
    apart = {turn: [] for turn in LAYERED_LIMITS}
    with tempfile.TemporaryDirectory() as folder:
        for _ in range(int(how_many)):
            compare(tourier, os.path.join(folder, 'one.tourier'), *make(rng), worst, apart)
    for what in ('core °C', 'mean °C', 'minutes to core', 'minutes to freezing', 'minutes to workable', 'minutes of window'):
        off, count, limit = worst.of.get(what), worst.count.get(what, 0), 0.05 if '°C' in what else 0.005
        print(f'# {what}: {count} compared, worst {off}')
        tap.check(f'{what} as by finite differences, to {limit}', count > 0 and off <= limit, (count, off))
    for turn, off in apart.items():
        print(f'# layers of their own after turn {turn}: the averaged slab takes {100 * min(off, default=0):+.1f} to '
              f'{100 * max(off, default=0):+.1f} % of the time more')
        tap.check(f'averaging the layers after turn {turn} costs less than {100 * LAYERED_LIMITS[turn]:.0f} %',
                  len(off) > 0 and max(map(abs, off)) < LAYERED_LIMITS[turn], off)
    return tap.end()


if __name__ == '__main__':
    sys.exit(main(*sys.argv[1:]))
