#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Formulas that others worked out in print, typed as printed.

    formulas.py TOURIER FORMULAS.tourier

The source of each formula is in the notes of its dough. Beside every number
stands what was printed; where the printed page only gave the inputs, the number
was worked out by a separate script.
"""

import sys

from tap import Tap, figures


def at(value, path):
    for step in path.split('.'):
        value = value[int(step)] if step.isdigit() else value[step]
    return value


# dough, what, path in the report, printed number, half of its last digit
EXPECTED = [
    # printed: factor 15000 / 171.7 = 87.36 and the rounded weights
    ('percent-of-dough', 'flour', 'lines.0.grams', 8736, 0.5),
    ('percent-of-dough', 'water', 'lines.1.grams', 3319.7, 0.06),
    ('percent-of-dough', 'milk', 'lines.2.grams', 2009.3, 0.06),
    ('percent-of-dough', 'sugar', 'lines.3.grams', 262, 0.5),
    ('percent-of-dough', 'salt', 'lines.4.grams', 174.7, 0.06),
    ('percent-of-dough', 'instant yeast', 'lines.5.grams', 104.8, 0.06),
    ('percent-of-dough', 'malt', 'lines.6.grams', 43.7, 0.06),
    ('percent-of-dough', 'butter in the dough', 'lines.7.grams', 349.4, 0.06),
    ('percent-of-dough', 'roll-in butter', 'lines.8.grams', 3750, 0.5),
    ('percent-of-dough', 'dough', 'dough_g', 15000, 0.05),
    ('percent-of-dough', 'roll-in on dough', 'roll_in_percent_of_dough', 25, 1e-9),
    # worked out: the same butter on the other two bases
    ('percent-of-dough', 'roll-in on flour', 'roll_in_percent_of_flour', 42.93, 0.006),
    ('percent-of-dough', 'roll-in on total', 'roll_in_percent_of_total', 20, 1e-9),

    # worked out from the printed percents of the whole
    ('percent-of-total', 'sum of the printed percents', 'total_g', 100.01, 1e-9),
    ('percent-of-total', 'sugar on flour', 'lines.1.percent', 10.24, 0.006),
    ('percent-of-total', 'salt on flour', 'lines.2.percent', 1.66, 0.006),
    ('percent-of-total', 'yeast on flour', 'lines.3.percent', 3.92, 0.006),
    ('percent-of-total', 'water on flour', 'added_water_percent', 54.67, 0.006),
    ('percent-of-total', 'butter on flour', 'roll_in_percent_of_flour', 51.21, 0.006),
    # The page says "25 % on total dough weight" beside 23.10 %: neither base gives 25.
    ('percent-of-total', 'butter on dough', 'roll_in_percent_of_dough', 30.04, 0.006),
    ('percent-of-total', 'butter on total', 'roll_in_percent_of_total', 23.10, 0.006),

    ('grams', 'dough', 'dough_g', 938, 1e-9),
    ('grams', 'flour', 'flour_g', 500, 1e-9),
    ('grams', 'roll-in on flour', 'roll_in_percent_of_flour', 60, 1e-9),
    ('grams', 'roll-in on dough', 'roll_in_percent_of_dough', 31.98, 0.006),
    ('grams', 'fresh yeast on flour', 'yeast_fresh_percent', 3.6, 1e-9),

    ('poolish', 'whole flour', 'flour_g', 1368, 1e-9),
    ('poolish', 'whole water', 'added_water_percent', 68.42, 0.006),
    ('poolish', 'salt', 'lines.6.percent', 1.97, 0.006),
    ('poolish', 'prefermented flour', 'prefermented_flour_percent', 34.21, 0.006),
    # printed as 2340: the poolish is rounded to 936 there, its yeast left out
    ('poolish', 'total', 'total_g', 2340.3, 1e-9),

    ('ratio', 'fat on flour', 'roll_in_percent_of_flour', 70, 1e-9),
    ('ratio', 'liquid on flour', 'added_water_percent', 60, 1e-9),
    ('ratio', 'sugar on flour', 'lines.2.percent', 7.5, 1e-9),
]


def main(tourier, document):
    tap = Tap()
    formulas = {dough['id']: dough['formula'] for dough in figures(tourier, document)['doughs']}

    for dough, what, path, printed, tolerance in EXPECTED:
        tap.close_to(f'{dough}: {what}', at(formulas[dough], path), printed, tolerance)

    lines = formulas['percent-of-dough']['lines']
    tap.close_to('percent-of-dough: the percents add up to 171.7',
                 sum(line['percent'] for line in lines[:8]), 171.7, 1e-9)
    tap.close_to('percent-of-dough: the weights add up to the dough',
                 sum(line['grams'] for line in lines[:8]), 15000, 1e-6)
    tap.close_to('percent-of-dough: conversion factor 87.36',
                 formulas['percent-of-dough']['flour_g'] / 100, 87.36, 0.006)
    poolish = formulas['poolish']['lines']
    tap.close_to('poolish: yeast in both places, 9.3 g, is 0.68 %',
                 poolish[2]['percent'] + poolish[5]['percent'], 0.68, 0.006)
    for dough, formula in formulas.items():
        tap.check(f'{dough}: nothing is left unweighed', formula['problems'] == [], formula['problems'])
    return tap.end()


if __name__ == '__main__':
    sys.exit(main(*sys.argv[1:]))
