#!/usr/bin/env python3
# second_opinion.py: the figures worked out a second time, by other means
#
# Copyright 2026 The Tourier authors
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Written from the description of the figures alone, in plain Python, sharing
# no code with the program; random trials (seed printed, or given) are put to
# both and every number of the reports is compared. A disagreement means that
# one of the two misreads the description. Not a check against the world: the
# files beside this one are.

import csv
import json
import math
import os
import random
import re
import subprocess
import sys
import tempfile

from second_rests import rests

NAN = float('nan')
ML = {'ml': 1, 'cl': 10, 'dl': 100, 'l': 1000, 'cup-metric': 250}
GALLON_ML = 231 * 2.54 ** 3
ML.update(cup=GALLON_ML / 16, floz=GALLON_ML / 128, tbsp=GALLON_ML / 256, tsp=GALLON_ML / 768)
G = {'mg': 0.001, 'g': 1, 'kg': 1000, 'lb': 453.59237, 'oz': 453.59237 / 16}
PARTS = ['water', 'fat', 'protein', 'carbohydrate', 'fibre', 'sugars', 'ash', 'sodium_mg']


def load_tables(data):
    usda = {}
    with open(os.path.join(data, 'composition.csv'), newline='', encoding='utf-8') as f:
        for row in csv.DictReader(f):
            usda[row['ndb_no']] = {
                'water': row['water_g'], 'fat': row['fat_g'], 'protein': row['protein_g'],
                'carbohydrate': row['carbohydrate_by_diff_g'], 'fibre': row['fibre_g'],
                'sugars': row['sugars_g'], 'ash': row['ash_g'], 'sodium_mg': row['sodium_mg']}
    table = {}
    with open(os.path.join(data, 'ingredients.csv'), newline='', encoding='utf-8') as f:
        for row in csv.DictReader(f):
            item = dict(row)
            item['base'] = row['id']
            item['comp'] = {k: float(v) for k, v in usda.get(row['usda_ndb'], {}).items()}
            if row['id'] == 'water':
                item['comp'] = dict.fromkeys(PARTS, 0.0) | {'water': 100.0, 'sodium_mg': 4.0}
            item['household'] = {k: float(v) for k, v in
                                 (p.split('=') for p in row['household_g'].split(';') if p)}
            item['density'] = NAN
            item['price'] = NAN
            item['allergen_ids'] = [a for a in re.split(r'[; ]+', row['allergens']) if a]
            table[row['id']] = item
    return table


def resolve(table, doc, ident):
    if ident in table:
        return table[ident]
    own = next(i for i in doc.get('ingredients', []) if i['id'] == ident)
    item = dict(table[own['like']])
    item['base'] = own['like']
    comp = dict(item['comp'])
    over = own.get('per_100g', {})
    comp.update(over)
    if ('water' in over or 'fat' in over) and 'carbohydrate' not in over:
        comp['carbohydrate'] = max(0.0, 100 - comp['water'] - comp['fat'] - comp['protein'] - comp['ash'])
    item['comp'] = comp
    if 'household_g' in own:
        item['household'] = own['household_g']
    item['density'] = own.get('density_g_ml', NAN)
    item['price'] = own.get('price_per_kg', NAN)
    if 'allergens' in own:
        item['allergen_ids'] = own['allergens']
    return item


def parse(text):
    """[(number, unit)] of the plain amounts that the generator writes."""
    parts = []
    for piece in text.split(' plus '):
        m = re.fullmatch(r'(\d+ \d+/\d+|\d+/\d+|[\d.]+(?:[-–][\d.]+)?) ?(%(?: of \w+)?|[a-z-]+)', piece)
        number = m.group(1)
        if re.search(r'[-–]', number):
            a, b = (float(x) for x in re.split(r'[-–]', number))
            value = (a + b) / 2
        else:
            value = 0.0
            for bit in number.split():
                if '/' in bit:
                    a, b = bit.split('/')
                    value += float(a) / float(b)
                else:
                    value += float(bit)
        parts.append((value, m.group(2)))
    return parts


def weigh(item, value, unit):
    if unit in G:
        return value * G[unit]
    household = item['household']
    if unit in household:
        return value * household[unit]
    if unit in ML:
        ml = value * ML[unit]
        if not math.isnan(item['density']):
            return ml * item['density']
        for other in ('cup', 'tbsp', 'floz', 'tsp'):
            if other in household:
                return ml * household[other] / ML[other]
        if item['base'] == 'water':
            return ml
    return None


def flour_share(item, line):
    if item['is_flour'] == '1':
        return 1.0
    if item['role'] == 'starter':
        return 1 / (1 + line.get('hydration_percent', 100) / 100)
    return 0.0


def composition(table, item, line):
    if item['role'] != 'starter':
        return item['comp']
    s = flour_share(item, line)
    bread = table['flour-bread']['comp']
    water = table['water']['comp']
    return {p: s * bread[p] + (1 - s) * water[p] for p in PARTS}


def weigh_formula(table, doc, dough):
    """Grams as written of every line, solving the percentages by iteration."""
    rows = []
    for line in dough['lines']:
        item = resolve(table, doc, line['ingredient'])
        fixed, of = 0.0, {}
        ok = True
        for value, unit in parse(line['amount']):
            if unit.startswith('%'):
                of[{'%': 'flour', '% of dough': 'dough', '% of total': 'total'}[unit]] = value / 100
            else:
                grams = weigh(item, value, unit)
                if grams is None:
                    ok = False
                else:
                    fixed += grams
        rows.append({'line': line, 'item': item, 'fixed': fixed, 'of': of, 'ok': ok,
                     'share': flour_share(item, line), 'stage': line['stage']})
    in_grams = any(r['fixed'] * r['share'] > 0 for r in rows if r['ok'] and r['stage'] != 'finish')
    base = {'flour': 1000.0, 'dough': 1000.0, 'total': 1000.0}

    def grams(r):
        return r['fixed'] + sum(p * base[k] for k, p in r['of'].items())

    for _ in range(4000):
        mix = [r for r in rows if r['ok'] and r['stage'] != 'finish']
        flour = sum(grams(r) * r['share'] for r in mix) if in_grams else 1000.0
        base_dough = sum(grams(r) for r in mix if r['stage'] in ('preferment', 'dough'))
        total = sum(grams(r) for r in mix)
        new = {'flour': flour, 'dough': base_dough, 'total': total}
        if all(abs(new[k] - base[k]) <= 1e-15 * abs(new[k]) for k in new):
            break
        base = new
    for r in rows:
        r['g'] = grams(r) if r['ok'] else None
    return rows, base


def formula(table, doc, dough):
    rows, base = weigh_formula(table, doc, dough)
    flour = base['flour']
    dough_rows = [r for r in rows if r['ok'] and r['stage'] in ('preferment', 'dough')]
    roll_rows = [r for r in rows if r['ok'] and r['stage'] == 'roll-in']
    mix = dough_rows + roll_rows
    roll = sum(r['g'] for r in roll_rows)
    for r in rows:
        r['comp'] = composition(table, r['item'], r['line'])

    def is_a(r, role):
        return r['item']['role'] == role

    added = sum(r['g'] * (1 - r['share']) if is_a(r, 'starter') else r['g']
                for r in dough_rows if r['item']['base'] == 'water' or is_a(r, 'starter'))
    all_water = sum(r['g'] * (1 - r['share']) if is_a(r, 'starter') else r['g'] * r['comp']['water'] / 100
                    for r in dough_rows if r['item']['is_flour'] != '1')
    pre = sum(r['g'] * r['share'] for r in mix if r['stage'] == 'preferment' or is_a(r, 'starter'))
    salt = sum(r['g'] if is_a(r, 'salt') else r['g'] * r['comp']['sodium_mg'] / 100 * 2.5 / 1000 for r in mix)
    out = {
        'flour_g': flour, 'dough_g': base['dough'], 'roll_in_g': roll, 'total_g': base['total'],
        'added_water_percent': 100 * added / flour, 'all_water_percent': 100 * all_water / flour,
        'prefermented_flour_percent': 100 * pre / flour,
        'dough_fat_percent': 100 * sum(r['g'] for r in dough_rows if is_a(r, 'fat')) / flour,
        'roll_in_percent_of_flour': 100 * roll / flour,
        'roll_in_percent_of_dough': 100 * roll / base['dough'],
        'roll_in_percent_of_total': 100 * roll / base['total'],
        'roll_in_fat_percent_of_flour': 100 * sum(r['g'] for r in roll_rows if is_a(r, 'fat')) / flour,
        'salt_percent': 100 * salt / flour,
        'sugar_percent': 100 * sum(r['g'] * r['comp']['sugars'] / 100
                                   for r in dough_rows if is_a(r, 'sweetener')) / flour,
        'yeast_fresh_percent': 100 * sum(r['g'] * float(r['item']['fresh_yeast_factor'])
                                         for r in mix if is_a(r, 'leaven')) / flour,
    }
    return rows, out


def piece_area(cut):
    s = cut['shape']
    if s in ('triangle', 'right-triangle'):
        return cut['base_mm'] * cut['height_mm'] / 2
    if s == 'rectangle':
        return cut['width_mm'] * cut['length_mm']
    if s == 'square':
        return cut['side_mm'] ** 2
    if s == 'round':
        return math.pi * cut['diameter_mm'] ** 2 / 4
    return cut['slice_mm'] * cut['roll_length_mm']


def inner(cut, n, rows):
    """All ways of laying n × rows pieces: (length, width)."""
    s = cut['shape']
    if s == 'triangle':
        return [((n + 1) / 2 * cut['base_mm'], rows * cut['height_mm'])]
    if s == 'right-triangle':
        return [(n / 2 * cut['base_mm'], rows * cut['height_mm'])]
    if s == 'rectangle':
        return [(n * cut['width_mm'], rows * cut['length_mm'])]
    if s == 'square':
        return [(n * cut['side_mm'], rows * cut['side_mm'])]
    if s == 'slices':
        return [(n * cut['slice_mm'], rows * cut['roll_length_mm'])]
    d, gap = cut['diameter_mm'], cut['gap_mm']
    p = d + gap
    ways = [(n * p - gap, rows * p - gap)]
    if rows > 1:
        ways.append(((n + 0.5) * p - gap, (rows - 1) * p * math.sqrt(3) / 2 + d))
    return ways


def breaks_of(bench, length, width, thick):
    rollers = bench['roll_width_max_mm'] is not None
    out = set()
    if length > bench['worktop_mm'][0] * (1 + 1e-12):
        out.add('worktop-length')
    if width > bench['worktop_mm'][1] * (1 + 1e-12):
        out.add('worktop-width')
    if rollers:
        if width > bench['roll_width_max_mm'] * (1 + 1e-12):
            out.add('roll-width')
        if thick < bench['roll_thickness_min_mm'] * (1 - 1e-12):
            out.add('roll-thickness-min')
        if thick > bench['roll_thickness_max_mm'] * (1 + 1e-12):
            out.add('roll-thickness-max')
    return out


def sheet_breaks(bench, length, width, thick):
    return min(breaks_of(bench, length, width, thick), breaks_of(bench, width, length, thick), key=len)


def candidates(dough, bench, rho, T, total):
    cut = dough['cut']
    m = cut['trim_mm']
    s = cut['shrink_percent'] / 100
    area = piece_area(cut)
    blocks = (dough.get('lock_in') or {}).get('blocks', 1)
    by = dough['batch']['by']
    rows_range = [cut['rows']] if cut.get('rows') else range(1, 13)
    net = total * (1 - dough['handling_loss_percent'] / 100) if total is not None else None
    out = []
    for rows in rows_range:
        for k in range(1, 13):
            if k % blocks:
                continue
            if by == 'pieces':
                each = math.ceil(dough['batch']['value'] / k)
                n = math.ceil(each / rows)
                if cut['shape'] == 'right-triangle' and n % 2:
                    n += 1
                inner_l, inner_w = min(inner(cut, n, rows), key=lambda w: w[0] * w[1])
                length, width = inner_l + 2 * m, inner_w + 2 * m
            else:
                best = None
                for index, (_, inner_w) in enumerate(inner(cut, 1, rows)):
                    width = inner_w + 2 * m
                    length = net * 1000 / (rho * T * k * width)
                    room = length - 2 * m
                    sh = cut['shape']
                    if sh == 'triangle':
                        n = math.floor(2 * room / cut['base_mm'] + 1e-9) - 1
                    elif sh == 'right-triangle':
                        n = 2 * math.floor(room / cut['base_mm'] + 1e-9)
                    elif sh == 'round':
                        p = cut['diameter_mm'] + cut['gap_mm']
                        n = math.floor((room + cut['gap_mm']) / p - (0.5 if index else 0) + 1e-9)
                    else:
                        n = math.floor(room / {'rectangle': cut.get('width_mm'), 'square': cut.get('side_mm'),
                                               'slices': cut.get('slice_mm')}[sh] + 1e-9)
                    # as many: the one that fits
                    order = n, -len(sheet_breaks(bench, length / (1 - s), width, T * (1 - s)))
                    if best is None or order > best[0]:
                        best = (order, length, width)
                (n, _), length, width = best
                if n < 1:
                    continue
            pieces = n * rows * k
            rolled = (length / (1 - s), width, T * (1 - s))
            out.append({'rows': rows, 'per_row': n, 'sheets': k, 'length_mm': length, 'width_mm': width,
                        'pieces_cut': pieces, 'rolled': rolled,
                        'scrap_percent': 100 * (1 - pieces * area / (k * length * width)),
                        'breaks': sheet_breaks(bench, *rolled)})
    return out


def choose(dough, bench, rho, T, total):
    every = candidates(dough, bench, rho, T, total)
    if not every:
        return None, []
    fits = [c for c in every if not c['breaks']]
    pool = fits
    if not pool:
        least = min(len(c['breaks']) for c in every)
        pool = [c for c in every if len(c['breaks']) == least]
    if dough['batch']['by'] == 'pieces':
        k = min(c['sheets'] for c in pool)
        pool = [c for c in pool if c['sheets'] == k]
        spare = min(c['pieces_cut'] for c in pool)
        pool = [c for c in pool if c['pieces_cut'] == spare]
    else:
        best = None
        for k in sorted({c['sheets'] for c in pool}):
            most = max(c['pieces_cut'] for c in pool if c['sheets'] == k)
            if best is None or most >= best[0] * (1 + 0.02 * (k - best[1])) - 1e-9:  # each further sheet
                best = (most, k)
        pool = [c for c in pool if c['sheets'] == best[1] and c['pieces_cut'] == best[0]]
    least = min(c['scrap_percent'] for c in pool)
    pool = [c for c in pool if c['scrap_percent'] <= least + 2 + 1e-9]
    return min(pool, key=lambda c: max(c['length_mm'], c['width_mm'])), fits


def sheet(dough, bench, rho, total, fat_layers):
    cut = dough.get('cut')
    if not cut:
        return None
    area = piece_area(cut)
    T = cut['thickness_mm'] if cut.get('thickness_mm') is not None else cut['piece_mass_g'] * 1000 / (area * rho)
    c, fits = choose(dough, bench, rho, T, total)
    if c is None:
        return None
    by_pieces = dough['batch']['by'] == 'pieces'
    up = cut.get('rolled_up', cut['shape'] == 'triangle') and cut['shape'] != 'round'
    out = {k: c[k] for k in ('rows', 'per_row', 'sheets', 'length_mm', 'width_mm', 'pieces_cut', 'scrap_percent')}
    out.update(thickness_mm=T, rolled_mm=list(c['rolled']), mass_g=c['length_mm'] * c['width_mm'] * T * rho / 1000,
               wanted=dough['batch']['value'] if by_pieces else None,
               spare_pieces=c['pieces_cut'] - dough['batch']['value'] if by_pieces else None,
               windings=None, diameter_mm=None, layers_across=None)
    a, b = {'triangle': lambda: (cut['base_mm'], cut['height_mm']),
            'right-triangle': lambda: (cut['base_mm'], cut['height_mm']),
            'rectangle': lambda: (cut['width_mm'], cut['length_mm']),
            'square': lambda: (cut['side_mm'], cut['side_mm']),
            'round': lambda: (cut['diameter_mm'], cut['diameter_mm']),
            'slices': lambda: (cut['slice_mm'], cut['roll_length_mm'])}[cut['shape']]()
    if up:
        e = cut['stretch_percent'] / 100
        L, t = b * (1 + e), T / (1 + e)
        n = math.sqrt(L / (math.pi * t))
        out['windings'], out['diameter_mm'] = n, 2 * n * t
        if fat_layers is not None:
            out['layers_across'] = 2 * n * fat_layers
        b = 2 * n * t
    if cut['shape'] == 'slices':
        # a slice lies on its cut face: the log's diameter both ways
        e = cut['stretch_percent'] / 100
        t = T / (1 + e)
        a = b = 2 * t * math.sqrt(cut['roll_length_mm'] * (1 + e) / (math.pi * t))
    g = bench['piece_gap_mm']
    A, B = bench['tray_mm']
    per = max(math.floor(A / (x + g)) * math.floor(B / (y + g)) for x, y in ((a, b), (b, a)))
    trays = math.ceil(c['pieces_cut'] / per) if per else None
    out['trays'] = {'footprint_mm': [a, b], 'per_tray': per, 'trays': trays,
                    'loads': math.ceil(trays / bench['trays_in_oven']) if per else None}
    out['n_fits'] = len(fits)
    out['area'] = area
    return out


def lamination(dough, bench, f, sh, phi, rho, rho_f, total, roll):
    lock = dough.get('lock_in')
    if not lock:
        return None
    style = lock['style']
    product = 1
    for t in dough['turns']:
        product *= t['fold']
    if style == 'inverse':
        D, F = product, product + 1
    else:
        F = (2 if style == 'letter' else 1) * product
        D = F + 1
    out = {'fat_layers': F, 'dough_layers': D, 'bands': F + D, 'fold_product': product,
           'fat_volume_fraction': phi}

    def fat_um(T, folds):
        if style == 'inverse':
            if folds == 1:
                return {'min': phi * T / 2 * 1000, 'max': phi * T / 2 * 1000}
            return {'min': phi * T / folds / 2 * 1000, 'max': phi * T / folds * 1000}
        n = (2 if style == 'letter' else 1) * folds
        return {'min': phi * T / n * 1000, 'max': phi * T / n * 1000}

    none = {'min': None, 'max': None}
    if sh:
        T = sh['thickness_mm']
        out['fat_layer_um'] = fat_um(T, product)
        d = (1 - phi) * T * 1000
        if style == 'inverse':
            out['dough_layer_um'] = {'min': d / D, 'max': d / D, 'outer': None}
        elif style == 'letter':
            t = d / (3 * product)
            out['dough_layer_um'] = {'min': t, 'max': t if product == 1 else 2 * t, 'outer': t}
        else:
            out['dough_layer_um'] = ({'min': d / F, 'max': d / F} if F > 1 else dict(none)) | {'outer': d / F / 2}
    else:
        out['fat_layer_um'] = dict(none)
        out['dough_layer_um'] = none | {'outer': None}

    keep = 1 - dough['handling_loss_percent'] / 100
    blocks, r = lock['blocks'], lock['rim_mm']
    Vf = roll * keep / rho_f * 1000 / blocks
    Vd = (total - roll) * keep / dough['dough_density_g_ml'] * 1000 / blocks
    V = Vf + Vd
    tf = lock.get('fat_thickness_mm') or {'letter': 4, 'inverse': 4}.get(style, 6)
    w = lock.get('fat_width_mm')
    if Vf <= 0:
        out['broken'] = True
        return out
    if style == 'inverse':
        P = Vf / (2 * tf)
        w = w or math.sqrt(P)
        l = P / (w + 2 * r) - r
        dough_mm = [l, w, Vd / (l * w)]
        fat_mm = [2 * (l + r), w + 2 * r, tf]
        plan = [l + r, w + 2 * r]
        rim = 0
    else:
        if style == 'envelope':
            w = math.sqrt(Vf / tf)
        else:
            w = w or math.sqrt(Vf / tf / (2 if style == 'letter' else 1))
        l = Vf / tf / w
        fat_mm = [l, w, tf]
        if style == 'half':
            plan = [l + r, w + 2 * r]
            d2 = [2 * (l + r), w + 2 * r]
        elif style == 'gate':
            plan = [l, w + 2 * r]
            d2 = [2 * l, w + 2 * r]
        elif style == 'envelope':
            plan = [w + 2 * r] * 2
            d2 = [math.sqrt(2) * (w + 2 * r)] * 2
        else:
            p = (l + r) / 2
            plan = [p, w + 2 * r]
            d2 = [3 * p, w + 2 * r]
        dough_mm = d2 + [Vd / (d2[0] * d2[1])]
        covered = l * w / (2 if style == 'letter' else 1)
        rim = 1 - covered / (plan[0] * plan[1])
    block = plan + [V / (plan[0] * plan[1])]
    out['lock_in'] = {'fat_mm': fat_mm, 'dough_mm': dough_mm, 'block_mm': block, 'rim_share': rim}
    if min(fat_mm + dough_mm + block) <= 0:
        out['broken'] = True
        return out
    steps = []
    start, folds = block, 1
    for t in dough['turns']:
        v = start[0] * start[1] * start[2]
        width = t.get('width_mm') or start[1]
        if t.get('length_mm') is not None:
            rolled = [t['length_mm'], width, v / (t['length_mm'] * width)]
        else:
            rolled = [v / (width * t['thickness_mm']), width, t['thickness_mm']]
        trim = t.get('trim_mm', 0)
        folded = [rolled[0] / t['fold'] - 2 * trim, rolled[1], rolled[2] * t['fold']]
        um = fat_um(rolled[2], folds)
        folds *= t['fold']
        if style == 'inverse' and folds == t['fold']:
            um = {'min': phi * rolled[2] / 2 * 1000, 'max': phi * rolled[2] * 1000}
        brk = breaks_of(bench, *rolled)
        if bench['roll_width_max_mm'] is None:
            brk = sheet_breaks(bench, *rolled)
        steps.append({'start_mm': start, 'rolled_mm': rolled, 'folded_mm': folded,
                      'stretch': max(rolled[0] / start[0], rolled[1] / start[1]),
                      'fat_layers': folds + 1 if style == 'inverse' else folds * (2 if style == 'letter' else 1),
                      'dough_layers': folds if style == 'inverse' else folds * (2 if style == 'letter' else 1) + 1,
                      'fat_layer_um': um, 'trimmed_g': 2 * trim * folded[1] * folded[2] * rho / 1000,
                      'fits': not brk, 'breaks': sorted(brk)})
        if folded[0] <= 0:              # all of it trimmed away
            out['broken'] = True
            return out
        start = [folded[1], folded[0], folded[2]]
    out['steps'] = steps
    if sh:
        c = sh['sheets'] // blocks
        best = None
        for a, b in ((start[0] / c, start[1]), (start[0], start[1] / c)):
            for p, q in ((a, b), (b, a)):
                sl, sw = sh['rolled_mm'][0] / p, sh['rolled_mm'][1] / q
                if best is None or max(sl, sw) < best[0] - 1e-12:
                    best = (max(sl, sw), sl, sw, p, q)
        out['to_sheet'] = {'blocks_cut': c, 'worst': best[0]}
    return out


def report(table, doc):
    out = []
    bench = doc['bench']
    for dough in doc['doughs']:
        rows, f = formula(table, doc, dough)
        lock = dough.get('lock_in') or {}
        rho_f = lock.get('fat_density_g_ml', 0.940)
        mf, md = f['roll_in_g'], f['dough_g']
        vf, vd = mf / rho_f, md / dough['dough_density_g_ml']
        phi, rho = vf / (vf + vd), (mf + md) / (vf + vd)
        keep = 1 - dough['handling_loss_percent'] / 100
        by, value = dough['batch']['by'], dough['batch']['value']
        written_total = f['total_g']
        product = 1
        for t in dough['turns']:
            product *= t['fold']
        layers = None
        if lock:
            layers = product + 1 if lock['style'] == 'inverse' else product * (2 if lock['style'] == 'letter' else 1)
        total = {'written': f['total_g'], 'flour_g': value / f['flour_g'] * f['total_g'],
                 'dough_g': value / f['dough_g'] * f['total_g'], 'total_g': value, 'pieces': None}[by]
        sh = sheet(dough, bench, rho, total, layers)
        if by == 'pieces':
            if sh:
                total = sh['sheets'] * sh['mass_g'] / keep
            else:
                total = written_total * value / dough['pieces_written'] if dough.get('pieces_written') else None
        scale = total / written_total if total is not None else None
        written_flour = f['flour_g']
        for k in ('flour_g', 'dough_g', 'roll_in_g', 'total_g'):
            f[k] = f[k] * scale if scale is not None else None
        f['scale'] = scale
        entry = {'formula': f, 'sheet': sh, 'piece': None}
        if scale is not None:
            entry['lamination'] = lamination(dough, bench, f, sh, phi, rho, rho_f, total, f['roll_in_g'])
            if sh:
                count = sh['pieces_cut']
                raw = sh['area'] * sh['thickness_mm'] * rho / 1000
            elif dough.get('cut'):
                count = raw = None
            else:
                count = value if by == 'pieces' else dough.get('pieces_written')
                raw = total * keep / count if count else None
            if count:
                entry['piece'] = piece(dough, rows, f, count, raw, scale, written_total)
        lines = []
        for r in rows:
            g = None
            if r['ok']:
                if r['stage'] != 'finish':
                    g = r['g'] * scale if scale is not None else None
                elif by == 'written':
                    g = r['g']
                elif dough.get('pieces_written') and entry['piece']:
                    g = r['g'] * entry['piece']['count'] / dough['pieces_written']
                elif not dough.get('pieces_written'):
                    g = r['g'] * scale if scale is not None else None
            lines.append({'grams': g, 'percent': 100 * r['g'] / written_flour if r['ok'] else None})
        f['lines'] = lines
        entry['water'] = water(doc, dough, rows, scale)
        lam = entry.get('lamination')
        if lam and not lam.get('broken') and f['roll_in_g']:
            entry['rests'] = rests(doc, dough, rows, lam, sh, f, phi, rho)
        entry['allergens'] = sorted({a for r in rows for a in r['item']['allergen_ids']})
        out.append(entry)
    return out


def water(doc, dough, rows, scale):
    """numbers.md 7: the temperature of the water, and the ice in it."""
    bench, m = doc['bench'], dough.get('method', {})
    warm = any(r['stage'] == 'preferment' or r['item']['role'] == 'starter' for r in rows if r['stage'] != 'finish')
    n = 4 if warm else 3
    room = bench.get('room_c', 21)
    need = n * m.get('dough_c', 22) - m.get('flour_c', 20) - room - m.get('friction_c', 12) * n / m.get('friction_n', 3)
    if warm:
        own = m.get('preferment_c')
        need -= room if own is None else own
    other_c = m.get('liquids_c')
    other_c = bench.get('fridge_c', 4) if other_c is None else other_c
    w = other = 0.0
    for r in rows:
        if not r['ok'] or r['stage'] != 'dough' or r['item']['role'] not in ('liquid', 'dairy', 'egg'):
            continue
        if r['item']['comp']['water'] <= 50:
            continue
        if r['item']['base'] == 'water':
            w += r['g']
        else:
            other += r['g']
    out = {'n': n, 'liquid_need_c': need, 'water_c': None, 'ice_g': None, 'available_water_g': None}
    if w > 0:
        if scale is not None:
            out['available_water_g'] = w * scale
        t = (need * (w + other) - other * other_c) / w
        if t <= 45:
            out['water_c'] = t
            tap = m.get('tap_c', 16)
            if scale is not None:
                out['ice_g'] = max(0.0, w * scale * (tap - t) / (tap + 80))
    return out


def piece(dough, rows, f, count, raw, scale, written_total):
    mix = [r for r in rows if r['ok'] and r['stage'] != 'finish']
    fin = [r for r in rows if r['ok'] and r['stage'] == 'finish']

    def content(r):
        c = r['comp']
        carb = c['carbohydrate'] - c['fibre']
        return {'fat_g': c['fat'], 'sugars_g': c['sugars'],
                'salt_g': 100 if r['item']['role'] == 'salt' else c['sodium_mg'] * 2.5 / 1000,
                'energy_kj': 17 * carb + 17 * c['protein'] + 37 * c['fat'] + 8 * c['fibre'],
                'energy_kcal': 4 * carb + 4 * c['protein'] + 9 * c['fat'] + 2 * c['fibre']}

    keys = ('fat_g', 'salt_g', 'sugars_g', 'energy_kj', 'energy_kcal')
    share = {k: sum(r['g'] * content(r)[k] for r in mix) / 100 / written_total for k in keys}
    if dough['batch']['by'] == 'written':
        times = 1
    elif dough.get('pieces_written'):
        times = count / dough['pieces_written']
    else:
        times = scale
    out = {k: raw * share[k] + sum(r['g'] * times * content(r)[k] for r in fin) / 100 / count for k in keys}
    out['per_100g_raw'] = {k: 100 * share[k] for k in keys}
    out['count'] = count
    out['raw_mass_g'] = raw
    out['added_fat_g'] = raw * sum(r['g'] for r in mix if r['item']['role'] == 'fat') / written_total
    bake = dough.get('bake_loss_percent')
    out['baked_mass_g'] = raw * (1 - bake / 100) if bake is not None else None
    prices = [(r['g'] * (scale if r in mix else times), r['item']['price']) for r in mix + fin if r['g'] > 0]
    out['cost'] = (None if any(math.isnan(p) for _, p in prices)
                   else sum(g * p for g, p in prices) / 1000 / count)
    return out


# Random trials

def amount(rng, item, low, high, percent_ok, flour=False):
    kind = rng.random()
    if percent_ok and kind < 0.35:
        return f'{rng.uniform(low, high) / 10:.3g} %'.replace('e+02', '00')
    units = [u for u in ('cup', 'tbsp', 'tsp', 'floz') if u in item['household']]
    if kind > 0.8 and units:
        unit = rng.choice(units + ['cup-metric', 'ml', 'dl'])
        return rng.choice(['1', '2', '1/2', '1 1/2', '0.75', '2-3']) + ' ' + unit
    if kind > 0.7:
        return f'{rng.randint(1, 9)} oz'
    if kind > 0.65:
        return f'{rng.randint(1, 2)} lb plus {rng.randint(1, 9)} oz'
    return f'{rng.uniform(low, high):.1f} g'


def random_rest(rng):
    rest = {'min': rng.choice([15, 45, 90, 600]), 'max': 1440, 'place': rng.choice(['fridge', 'fridge', 'freezer', 'room'])}
    if rng.random() < 0.5:
        rest['on'] = rng.choice(['board', 'rack'])
    if rng.random() < 0.4:
        rest['start_c'] = rng.choice([5, 12, 18.5])
    if rng.random() < 0.4:
        rest['target_c'] = rng.choice([3, 6, 10, 16])
    return rest


def random_dough(rng, table, index, own):
    shape = rng.choice(['triangle', 'right-triangle', 'rectangle', 'square', 'round', 'slices'])
    cut = {'shape': shape, 'trim_mm': rng.choice([0, 5, 8]), 'shrink_percent': rng.choice([0, 4, 7.5]),
           'rows': rng.choice([None, None, 1, 2, 3]), 'stretch_percent': rng.choice([0, 10, 25])}
    cut.update({'triangle': {'base_mm': rng.uniform(60, 120), 'height_mm': rng.uniform(120, 280)},
                'right-triangle': {'base_mm': rng.uniform(60, 120), 'height_mm': rng.uniform(100, 200)},
                'rectangle': {'width_mm': rng.uniform(50, 120), 'length_mm': rng.uniform(80, 160)},
                'square': {'side_mm': rng.uniform(70, 130)},
                'round': {'diameter_mm': rng.uniform(60, 120), 'gap_mm': rng.choice([0, 3, 6])},
                'slices': {'slice_mm': rng.uniform(20, 40), 'roll_length_mm': rng.uniform(200, 400)}}[shape])
    if rng.random() < 0.7:
        cut['thickness_mm'] = rng.uniform(2.5, 6)
    else:
        cut['piece_mass_g'] = rng.uniform(35, 110)
    if rng.random() < 0.3:
        cut['rolled_up'] = rng.random() < 0.5
    percent_ok = True
    lines = [{'stage': 'dough', 'ingredient': rng.choice(['flour-bread', 'flour-plain', 'flour-rye-light']),
              'amount': f'{rng.uniform(300, 900):.0f} g'}]
    if rng.random() < 0.5:
        lines.append({'stage': 'dough', 'ingredient': 'flour-wholemeal', 'amount': f'{rng.randint(5, 30)} %'})
    if rng.random() < 0.5:
        lines.append({'stage': 'preferment', 'group': 'sponge', 'ingredient': 'flour-bread',
                      'amount': f'{rng.uniform(50, 200):.1f} g'})
        lines.append({'stage': 'preferment', 'group': 'sponge', 'ingredient': 'water',
                      'amount': f'{rng.uniform(50, 200):.1f} g'})
    if rng.random() < 0.4:
        line = {'stage': rng.choice(['preferment', 'dough']), 'ingredient': 'starter-wheat',
                'amount': f'{rng.uniform(40, 200):.1f} g'}
        if rng.random() < 0.5:
            line['hydration_percent'] = rng.uniform(50, 150)
        lines.append(line)
    for ident, low, high in (('water', 100, 300), ('milk-whole', 50, 300), ('sugar', 20, 80), ('honey', 10, 40),
                             ('butter-salted', 10, 60), ('salt', 5, 15), ('yeast-instant', 3, 12),
                             ('yeast-fresh', 5, 30), ('malt-flour', 2, 10), ('egg-whole', 40, 100),
                             ('milk-powder-skim', 5, 30), ('cocoa', 5, 30)):
        if rng.random() < 0.55:
            lines.append({'stage': 'dough', 'ingredient': ident,
                          'amount': amount(rng, table[ident], low, high, percent_ok)})
    fat = rng.choice(['butter-unsalted', 'butter-salted', 'margarine-pastry'] + own)
    kind = rng.random()
    if kind < 0.6:
        text = f'{rng.uniform(150, 400):.1f} g'
    else:
        text = f'{rng.randint(20, 40)} ' + rng.choice(['% of dough', '% of total', '%'])
    if rng.random() < 0.9:
        lines.append({'stage': 'roll-in', 'ingredient': fat, 'amount': text})
    if rng.random() < 0.25:
        lines.append({'stage': 'roll-in', 'ingredient': 'flour-plain',
                      'amount': rng.choice(['25 g', '4 % of dough', '3 % of total', '5 %'])})
    if rng.random() < 0.6:
        lines.append({'stage': 'finish', 'ingredient': 'egg-whole', 'amount': rng.choice(['1 egg', '50 g', '2 egg'])})
    by = rng.choice(['pieces', 'pieces', 'pieces', 'written', 'flour_g', 'dough_g', 'total_g'])
    value = {'pieces': rng.randint(1, 60), 'written': 0}.get(by, rng.uniform(500, 3000))
    style = rng.choice(['half', 'gate', 'envelope', 'letter', 'inverse'])
    lock = {'style': style, 'rim_mm': rng.choice([0, 5, 10]), 'blocks': rng.choice([1, 1, 1, 2])}
    if rng.random() < 0.5:
        lock['fat_thickness_mm'] = rng.uniform(3, 12)
    if rng.random() < 0.3:
        lock['fat_width_mm'] = rng.uniform(100, 250)
    if rng.random() < 0.2:
        lock['fat_density_g_ml'] = rng.uniform(0.9, 0.97)
    if rng.random() < 0.2:
        lock['rest'] = random_rest(rng) | rng.choice([{}, {'thickness_mm': 22.5}])
    turns = []
    for _ in range(rng.randint(0, 5)):
        t = {'fold': rng.randint(2, 5)}
        kind = rng.random()
        if kind < 0.6:
            t['thickness_mm'] = rng.uniform(5, 12)
        elif kind < 0.8:
            t['length_mm'] = rng.uniform(300, 800)
        else:
            t['thickness_mm'] = rng.uniform(5, 12)
            t['width_mm'] = rng.uniform(150, 300)
        if rng.random() < 0.2:
            t['trim_mm'] = rng.choice([2, 4])
        if rng.random() < 0.25:
            t['rest'] = random_rest(rng)
        turns.append(t)
    dough = {'id': f'd{index}', 'name': f'Dough {index}', 'kind': rng.choice(['croissant', 'danish', 'puff', 'other']),
             'lines': lines, 'batch': {'by': by, 'value': value},
             'handling_loss_percent': rng.choice([0, 2, 3.5]), 'dough_density_g_ml': rng.choice([1.15, 1.2, 1.08]),
             'lock_in': lock if rng.random() < 0.9 else None, 'turns': turns,
             'cut': cut if rng.random() < 0.85 else None}
    if rng.random() < 0.7:
        dough['method'] = {'dough_c': rng.choice([18, 22, 25.5]), 'flour_c': rng.choice([5, 20]),
                           'preferment_c': rng.choice([None, 24]), 'liquids_c': rng.choice([None, 10]),
                           'tap_c': rng.choice([8, 16]), 'friction_c': rng.choice([2, 12, 21]),
                           'friction_n': rng.choice([3, 4])}
    if rng.random() < 0.7:
        dough['pieces_written'] = rng.randint(6, 30)
    if rng.random() < 0.6:
        dough['bake_loss_percent'] = rng.choice([10, 12, 14.5])
    return dough


def random_trial(rng, table):
    bench = {'worktop_mm': [rng.choice([700, 900, 1500]), rng.choice([500, 600])],
             'roll_width_max_mm': rng.choice([None, 450, 600]), 'roll_thickness_min_mm': 2.5,
             'roll_thickness_max_mm': 40, 'tray_mm': rng.choice([[600, 400], [400, 300]]),
             'piece_gap_mm': rng.choice([30, 50]), 'trays_in_oven': rng.choice([1, 2, 4])}
    if rng.random() < 0.5:
        bench |= {'room_c': rng.choice([9, 16, 19, 26]), 'fridge_c': rng.choice([2, 5]),
                  'h_w_m2k': {'fridge': rng.choice([8, 15]), 'bench': rng.choice([10, 25])}}
    own = [{'id': 'butter-farm', 'like': 'butter-unsalted', 'name': 'Farm butter',
            'per_100g': {'water': 14.0, 'fat': 84.0}, 'price_per_kg': 13.5},
           {'id': 'flour-own', 'like': 'flour-bread', 'price_per_kg': 1.25},
           {'id': 'oil-own', 'like': 'butter-oil', 'density_g_ml': 0.9, 'allergens': []}]
    doughs = [random_dough(rng, table, i + 1, ['butter-farm']) for i in range(rng.randint(1, 4))]
    if rng.random() < 0.2:
        doughs.append({'id': 'd9', 'name': 'Priced', 'lines': [
            {'stage': 'dough', 'ingredient': 'flour-own', 'amount': '500 g'},
            {'stage': 'roll-in', 'ingredient': 'butter-farm', 'amount': '250 g'}],
            'batch': {'by': 'written', 'value': 0}, 'pieces_written': 12, 'handling_loss_percent': 2,
            'dough_density_g_ml': 1.15, 'lock_in': None, 'turns': [], 'cut': None})
    return {'format': 'tourier-trial', 'version': 1, 'title': 'Invented at random', 'bench': bench,
            'ingredients': own, 'doughs': doughs}


def differ(path, mine, theirs, out):
    if isinstance(mine, dict):
        for k, v in mine.items():
            if k in ('n_fits', 'area', 'worst', 'broken') or (k == 'piece' and v is None):
                continue
            if theirs is None or k not in theirs:
                out.append(f'{path}/{k}: missing')
            else:
                differ(f'{path}/{k}', v, theirs[k], out)
    elif isinstance(mine, list):
        if path.endswith('/breaks') and isinstance(theirs, list):
            theirs = sorted(theirs)
        if not isinstance(theirs, list) or len(mine) != len(theirs):
            out.append(f'{path}: {mine} against {theirs}')
        else:
            for i, v in enumerate(mine):
                differ(f'{path}/{i}', v, theirs[i], out)
    elif isinstance(mine, (int, float)) and not isinstance(mine, bool):
        if not isinstance(theirs, (int, float)) or abs(mine - theirs) > 1e-9 * max(1.0, abs(mine)):
            out.append(f'{path}: {mine} against {theirs}')
    elif mine != theirs:
        out.append(f'{path}: {mine} against {theirs}')


def compare(table, doc, theirs):
    out = []
    for i, (mine, got) in enumerate(zip(report(table, doc), theirs['doughs'])):
        lam = mine.get('lamination')
        if lam and lam.get('broken'):
            mine['lamination'] = {k: lam[k] for k in ('fat_layers', 'dough_layers', 'bands', 'fold_product')}
        differ(f'/doughs/{i}', mine, got, out)
        if lam and 'to_sheet' in lam and got.get('lamination') and got['lamination'].get('to_sheet'):
            ts = got['lamination']['to_sheet']
            if ts['stretch_length'] is None:
                out.append(f'/doughs/{i}/lamination/to_sheet: {ts} sheet {mine["sheet"]}')
                continue
            worst = max(ts['stretch_length'], ts['stretch_width'])
            if abs(worst - lam['to_sheet']['worst']) > 1e-9 * worst:
                out.append(f"/doughs/{i}/lamination/to_sheet: worst {lam['to_sheet']['worst']} against {worst}")
        sh = mine['sheet']
        if sh and len(got['sheet']['alternatives']) != min(12, sh['n_fits']):
            out.append(f"/doughs/{i}/sheet/alternatives: {sh['n_fits']} fit, {len(got['sheet']['alternatives'])} listed")
    return out


def main():
    program, data = sys.argv[1], sys.argv[2]
    count = int(sys.argv[3]) if len(sys.argv) > 3 else 200
    seed = int(sys.argv[4]) if len(sys.argv) > 4 else random.SystemRandom().randrange(10 ** 9)
    print(f'# seed {seed}')
    table = load_tables(data)
    rng = random.Random(seed)
    bad = 0
    with tempfile.TemporaryDirectory() as folder:
        path = os.path.join(folder, 'trial.tourier')
        for index in range(count):
            doc = random_trial(rng, table)
            with open(path, 'w', encoding='utf-8') as f:
                json.dump(doc, f)
            run = subprocess.run([program, '--figures', path], capture_output=True, text=True)
            if run.returncode != 0:
                wrong = [run.stderr.strip()]
            else:
                wrong = compare(table, doc, json.loads(run.stdout))
            if wrong:
                bad += 1
                if bad <= 5:
                    print(f'# trial {index}: ' + '\n#   '.join(wrong[:12]))
                    keep = os.environ.get('KEEP')
                    if keep:
                        with open(os.path.join(keep, f'trial-{index}.tourier'), 'w', encoding='utf-8') as f:
                            json.dump(doc, f, indent=1)
    print('1..1')
    print(('not ok' if bad else 'ok') + f' 1 - {count} random trials give the same figures twice ({bad} differ)')
    sys.exit(bad > 0)


if __name__ == '__main__':
    main()
