#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Lists of folds found a second time, by trying every one.

    sequences.py TOURIER [HOW-MANY] [SEED]

Every order of folds on every stack is rolled out here step by step, with no
thought to speed, and sorted as the description says; the program's list must be
the same. Doughs are invented.
"""

import itertools
import json
import math
import os
import random
import subprocess
import sys
import tempfile

from tap import Tap, figures

STYLES = ['half', 'gate', 'envelope', 'letter', 'inverse']
KEPT = 200


def block(style, fat_mm3, dough_mm3, thickness, width, rim):
    """Length, width, thickness of the closed block."""
    if style == 'inverse':
        plan = fat_mm3 / (2 * thickness)
        w = width or math.sqrt(plan)
        length, w = plan / (w + 2 * rim), w + 2 * rim
    elif style == 'envelope':
        length = w = math.sqrt(fat_mm3 / thickness) + 2 * rim
    else:
        area = fat_mm3 / thickness
        fat_w = width or math.sqrt(area / 2 if style == 'letter' else area)
        fat_l = area / fat_w
        w = fat_w + 2 * rim
        length = {'half': fat_l + rim, 'gate': fat_l, 'letter': (fat_l + rim) / 2}[style]
    return length, w, (fat_mm3 + dough_mm3) / (length * w)


def breaks(bench, length, width, thick):
    def lying(a, b):
        out = {'worktop-length'} if a > bench['worktop_mm'][0] * (1 + 1e-9) else set()
        if b > bench['worktop_mm'][1] * (1 + 1e-9):
            out.add('worktop-width')
        if bench['roll_width_max_mm'] and b > bench['roll_width_max_mm'] * (1 + 1e-9):
            out.add('roll-width')
        return out
    if not bench['roll_width_max_mm']:
        straight, turned = lying(length, width), lying(width, length)
        return turned if len(turned) < len(straight) else straight
    out = lying(length, width)
    if thick < bench['roll_thickness_min_mm'] * (1 - 1e-9):
        out.add('roll-thickness-min')
    if thick > bench['roll_thickness_max_mm'] * (1 + 1e-9):
        out.add('roll-thickness-max')
    return out


def roll(bench, start, folds, thick):
    size, volume = start, start[0] * start[1] * start[2]
    worst, longest, broken = 1.0, 0.0, set()
    for fold in folds:
        length = volume / (size[1] * thick)
        worst = max(worst, length / size[0])
        longest = max(longest, length)
        broken |= breaks(bench, length, size[1], thick)
        size = (size[1], length / fold, thick * fold)
    return worst, longest, broken


def near(x):
    return float(f'{x:.9g}')     # what differs by less is the same


def rows(document, report, wish, most, greatest, blocks):
    dough, bench = document['doughs'][0], document['bench']
    lock = dough['lock_in']
    lamination, formula = report['lamination'], report['formula']
    rests = [t['rest']['min'] for t in dough['turns'] if 'rest' in t]
    thick = lamination['steps'][-1]['rolled_mm'][2] if dough['turns'] else 8
    own = lock['style'] if lock['style'] in STYLES[:3] else 'half'
    keep = (1 - dough['handling_loss_percent'] / 100) / blocks
    out = []
    for style in (own, 'letter', 'inverse'):
        mine = style == lock['style']
        t_f = lock.get('fat_thickness_mm') if mine else None
        start = block(style, 1000 * formula['roll_in_g'] * keep / 0.940,
                      1000 * formula['dough_g'] * keep / dough['dough_density_g_ml'],
                      t_f or (4 if style in ('letter', 'inverse') else 6), lock.get('fat_width_mm') if mine else None, lock['rim_mm'])
        for n in range(1, most + 1):
            for folds in itertools.combinations_with_replacement(range(2, greatest + 1), n):
                product = math.prod(folds)
                fat_layers = {'letter': 2 * product, 'inverse': product + 1}.get(style, product)
                um = None
                if report['sheet']:
                    um = (lamination['fat_volume_fraction'] * report['sheet']['thickness_mm'] * 1000
                          / (2 * product if style == 'letter' else product))
                value = fat_layers if wish[0] == 'layers' else um
                if value is None or not wish[1] <= value <= wish[2]:
                    continue
                tried = []
                for order in set(itertools.permutations(folds)):
                    worst, longest, broken = roll(bench, start, order, thick)
                    tried.append(((len(broken) > 0, near(worst), near(longest), order), worst, longest, broken, order))
                tried.sort(key=lambda t: t[0])
                _, worst, longest, broken, order = tried[0]
                minutes = n * (bench['turn_minutes'] + (min(rests) if rests else 45))
                key = (len(broken) > 0, worst > 4 + 1e-9, n, sum(f == 2 or f > 4 for f in folds), minutes, near(longest),
                       STYLES.index(style), order)
                out.append((key, {'lock_in': style, 'folds': list(order), 'orders': [list(t[4]) for t in tried[1:]],
                                  'fat_layers': fat_layers, 'fat_layer_um': um, 'longest_mm': longest, 'worst_stretch': worst,
                                  'blocks': blocks, 'rests': n, 'hands_minutes': n * bench['turn_minutes'], 'minutes': minutes,
                                  'fits': not broken, 'breaks': broken}))
    return [row for _, row in sorted(out, key=lambda r: r[0])]


def search(document, report, wish, most, greatest):
    own = document['doughs'][0]['lock_in']['blocks']
    found = rows(document, report, wish, most, greatest, own)
    if found and not any(r['fits'] for r in found):
        for blocks in range(1, 13):
            other = rows(document, report, wish, most, greatest, blocks)
            if any(r['fits'] for r in other):
                return other
    return found


def same(ours, theirs):
    if set(ours) != set(theirs):
        return False
    for key, value in ours.items():
        other = theirs[key]
        if isinstance(value, float):
            if not isinstance(other, (int, float)) or abs(value - other) > 1e-9 * max(1.0, abs(value)):
                return False
        elif isinstance(value, set):
            if value != set(other):
                return False
        elif value != other:
            return False
    return True


def make(rng):
    rest = lambda: {'min': rng.choice([30, 45, 60]), 'max': 1440, 'place': 'fridge'}
    turns = []
    for _ in range(rng.randint(0, 3)):
        turn = {'fold': rng.randint(2, 4), 'thickness_mm': rng.uniform(5, 12)}
        if rng.random() < 0.7:
            turn['rest'] = rest()
        turns.append(turn)
    lock = {'style': rng.choice(STYLES), 'rim_mm': rng.choice([0, 10]), 'blocks': rng.choice([1, 1, 2])}
    if rng.random() < 0.5:
        lock['fat_thickness_mm'] = rng.uniform(4, 10)
    if rng.random() < 0.3:
        lock['fat_width_mm'] = rng.uniform(120, 250)
    dough = {'id': 'd1', 'name': 'One', 'kind': 'croissant', 'dough_density_g_ml': rng.uniform(1.05, 1.2),
             'handling_loss_percent': rng.choice([0, 3]), 'batch': {'by': 'total_g', 'value': rng.uniform(600, 6000)},
             'lines': [{'stage': 'dough', 'ingredient': 'flour-bread', 'amount': '500 g'},
                       {'stage': 'dough', 'ingredient': 'water', 'amount': '280 g'},
                       {'stage': 'roll-in', 'ingredient': 'butter-unsalted', 'amount': f'{rng.uniform(150, 400):.1f} g'}],
             'lock_in': lock, 'turns': turns,
             'cut': {'shape': 'square', 'side_mm': 90, 'thickness_mm': rng.uniform(2.5, 5), 'trim_mm': 5, 'shrink_percent': 4}}
    bench = {'worktop_mm': rng.choice([[700, 500], [900, 600], [1500, 600]]), 'roll_width_max_mm': rng.choice([None, 450, 600]),
             'roll_thickness_min_mm': 2.5, 'roll_thickness_max_mm': 40, 'turn_minutes': rng.choice([8, 10])}
    return {'format': 'tourier-trial', 'version': 1, 'bench': bench, 'doughs': [dough]}


def main(tourier, how_many=40, seed=None):
    seed = int(seed) if seed is not None else random.SystemRandom().randrange(2 ** 31)
    print(f'# seed {seed}')
    rng, tap = random.Random(seed), Tap()
    wrong, compared, divided = [], 0, 0
    with tempfile.TemporaryDirectory() as folder:
        path = os.path.join(folder, 'one.tourier')
        for index in range(int(how_many)):
            document = make(rng)
            with open(path, 'w', encoding='utf-8') as out:
                json.dump(document, out)
            report = figures(tourier, path)['doughs'][0]
            most, greatest = rng.choice([(4, 4), (3, 6), (2, 3), (5, 4)])
            low = rng.choice([1, 8, 20, 40])
            wish = ('layers', low, low * rng.choice([1, 2, 10])) if rng.random() < 0.6 else ('um', low / 2, low * 4)
            option = '--fat-layers' if wish[0] == 'layers' else '--fat-um'
            run = subprocess.run([tourier, '--sequences', '--dough', 'd1', option, f'{wish[1]}-{wish[2]}', '--max-turns', str(most),
                                  '--max-fold', str(greatest), path], check=True, capture_output=True)
            theirs = json.loads(run.stdout)['sequences']
            ours = search(document, report, wish, most, greatest)[:KEPT]
            compared += len(ours)
            divided += any(r['blocks'] != document['doughs'][0]['lock_in']['blocks'] for r in ours)
            if len(ours) != len(theirs) or not all(same(a, b) for a, b in zip(ours, theirs)):
                first = next((f'{a}\n{b}' for a, b in zip(ours, theirs) if not same(a, b)), f'{len(ours)} rows, not {len(theirs)}')
                wrong.append(f'trial {index}, {option} {wish[1:]}, {most} turns to {greatest}: {first}')
    print(f'# {compared} rows compared; in {divided} trials more or fewer blocks were needed')
    tap.check('enough rows were compared', compared > 5 * int(how_many), compared)
    tap.check('every list is the one that trying all gives', not wrong, '\n'.join(wrong[:3]))
    return tap.end()


if __name__ == '__main__':
    sys.exit(main(*sys.argv[1:]))
