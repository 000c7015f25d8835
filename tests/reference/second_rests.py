# second_rests.py: the rests worked out a second time, by other means
#
# Copyright 2026 The Tourier authors
# SPDX-License-Identifier: GPL-3.0-or-later
#
# A part of second_opinion.py: written from the description of the figures alone,
# with a plain series and plain bisection. Coefficients: Choi & Okos 1986.

import math

NAN = float('nan')
TERMS = 4000       # at most: enough from a Fourier number of 4e-7 on
COEFFICIENTS = {   # k W/m K, density kg/m³, c_p kJ/kg K; each a + b T + c T²
    'protein': ((1.7881e-1, 1.1958e-3, -2.7178e-6), (1329.9, -0.5184, 0), (2.0082, 1.2089e-3, -1.3129e-6)),
    'fat': ((1.8071e-1, -2.7604e-4, -1.7749e-7), (925.59, -0.41757, 0), (1.9842, 1.4733e-3, -4.8008e-6)),
    'starch': ((2.0141e-1, 1.3874e-3, -4.3312e-6), (1599.1, -0.31046, 0), (1.5488, 1.9625e-3, -5.9399e-6)),
    'fibre': ((1.8331e-1, 1.2497e-3, -3.1683e-6), (1311.5, -0.36589, 0), (1.8459, 1.8306e-3, -4.6509e-6)),
    'ash': ((3.2962e-1, 1.4011e-3, -2.9069e-6), (2423.8, -0.28063, 0), (1.0926, 1.8896e-3, -3.6817e-6)),
    'water': ((5.7109e-1, 1.7625e-3, -6.7036e-6), (997.18, 3.1439e-3, -3.7574e-3), (4.1762, -9.0864e-5, 5.4731e-6)),
}


def at(abc, t):
    return abc[0] + abc[1] * t + abc[2] * t * t


def masses(rows):
    out = dict.fromkeys(COEFFICIENTS, 0.0)
    for r in rows:
        for part in out:
            share = r['comp']['carbohydrate'] - r['comp']['fibre'] if part == 'starch' else r['comp'][part]
            out[part] += r['g'] * share
    return out


def properties(parts, t):
    mass = sum(parts.values())
    volumes = {p: m / mass / at(COEFFICIENTS[p][1], t) for p, m in parts.items()}
    volume = sum(volumes.values())
    return (sum(v / volume * at(COEFFICIENTS[p][0], t) for p, v in volumes.items()), 1 / volume,
            1000 * sum(m / mass * at(COEFFICIENTS[p][2], t) for p, m in parts.items()))


class Wall:
    def __init__(self, start, air, h, depth_mm, k, rho, cp):
        depth = depth_mm / 1000
        biot = h * depth / k
        self.start, self.air, self.unit = start, air, depth * depth * rho * cp / k / 60
        self.biot, self.terms = biot, []

    def list_terms(self):
        """(root, factor), as many as are wanted: the shorter the time the more."""
        for n in range(TERMS):
            if n == len(self.terms):
                z = self.root(self.biot, n)
                self.terms.append((z, 4 * math.sin(z) / (2 * z + math.sin(2 * z))))
            yield self.terms[n]

    @staticmethod
    def root(biot, n):
        low, high = 1e-12, math.pi / 2 - 1e-15
        for _ in range(200):
            d = (low + high) / 2
            if (n * math.pi + d) * math.tan(d) > biot:
                high = d
            else:
                low = d
        return n * math.pi + (low + high) / 2

    def c(self, where, minutes):
        fo = minutes / self.unit
        shape = {'core': lambda z: 1.0, 'surface': math.cos, 'mean': lambda z: math.sin(z) / z}[where]
        share = 0.0
        for z, f in self.list_terms():
            if z * z * fo > 60:
                break
            share += f * math.exp(-z * z * fo) * shape(z)
        return self.air + (self.start - self.air) * share

    def minutes_to(self, where, c):
        wanted = (c - self.air) / (self.start - self.air)
        if wanted >= 1:
            return 0.0
        if wanted <= 0:
            return None
        high = self.unit
        while (self.c(where, high) - self.air) / (self.start - self.air) > wanted:
            high *= 2
        low = 0.0
        while high - low > 1e-12 * high:
            middle = (low + high) / 2
            if (self.c(where, middle) - self.air) / (self.start - self.air) > wanted:
                low = middle
            else:
                high = middle
        return (low + high) / 2


def rests(doc, dough, rows, lam, sheet, f, phi, rho):
    bench, out = doc['bench'], []
    in_dough = masses([r for r in rows if r['ok'] and r['stage'] in ('preferment', 'dough')])
    in_fat = masses([r for r in rows if r['ok'] and r['stage'] == 'roll-in'])
    fats = [r['item'] for r in rows if r['ok'] and r['stage'] == 'roll-in' and r['item']['role'] == 'fat']
    lows = [float(i['plastic_low_c'] or NAN) for i in fats]
    softs = [float(i['soft_c'] or NAN) for i in fats]
    low = max(lows) if lows and not any(map(math.isnan, lows)) else None
    soft = min(softs) if softs and not any(map(math.isnan, softs)) else None

    def plain(t):
        k, solid, cp = properties(in_dough, t)
        density = dough['dough_density_g_ml'] * 1000
        gas = max(0.0, 1 - density / solid)
        return k * (1 - gas) / (1 + gas / 2), density, cp

    def slab(t):
        (k_d, _, c_d), (k_f, _, c_f) = plain(t), properties(in_fat, t)
        m_d, m_f = f['dough_g'], f['roll_in_g']
        return 1 / (phi / k_f + (1 - phi) / k_d), rho * 1000, (m_d * c_d + m_f * c_f) / (m_d + m_f)

    written = [(0, (dough.get('lock_in') or {}).get('rest'))] + [(i + 1, t.get('rest')) for i, t in enumerate(dough['turns'])]
    for turn, rest in written:
        if rest is None:
            continue
        place, on = rest.get('place', 'fridge'), rest.get('on', 'board')
        air = {'fridge': bench.get('fridge_c', 4), 'freezer': bench.get('freezer_c', -18), 'room': bench.get('room_c', 21)}[place]
        h = bench.get('h_w_m2k', {}).get(place, 8)
        start = rest.get('start_c')
        if start is None:
            start = dough.get('method', {}).get('dough_c', 22) if turn == 0 else 14
        target = rest.get('target_c')
        if target is None:
            target = max(air + 4, 8)
        thick = rest.get('thickness_mm') or 30 if turn == 0 else lam['steps'][turn - 1]['folded_mm'][2]
        k, density, cp = (plain if turn == 0 else slab)(max(0.0, (start + air) / 2))
        wall = Wall(start, air, h, thick / (2 if on == 'rack' else 1), k, density, cp)
        freezing = wall.minutes_to('surface', -2) if air < -2 and air < start else None
        core = (0.0 if target >= start else None if air >= start or target <= air else wall.minutes_to('core', target))
        if core is not None and freezing is not None and core > freezing:
            core = None
        frozen = freezing is not None and rest['min'] > freezing
        row = {'turn': turn, 'place': place, 'air_c': air, 'on': on, 'h_w_m2k': h, 'thickness_mm': thick, 'k_w_mk': k,
               'rho_kg_m3': density, 'cp_j_kgk': cp, 'start_c': start, 'target_c': target, 'minutes_to_core': core,
               'written_minutes': rest['min'],
               'core_c_after_written': None if frozen else wall.c('core', rest['min']),
               'mean_c_after_written': None if frozen else wall.c('mean', rest['min']),
               'minutes_to_surface_freezing': freezing, 'minutes_to_workable': None, 'work_window_minutes': None}
        if turn > 0 and not frozen and low is not None and soft is not None:
            after_rest(bench, row, lam, sheet, slab, low, soft)
        out.append(row)
    return out


def after_rest(bench, row, lam, sheet, slab, low, soft):
    room, h, mean = bench.get('room_c', 21), bench.get('h_w_m2k', {}).get('bench', 25), row['mean_c_after_written']

    def lying(start, thick):
        return Wall(start, room, h, thick, *slab(max(0.0, (start + room) / 2)))

    if mean >= low:
        row['minutes_to_workable'] = 0.0
    elif room > low:
        row['minutes_to_workable'] = lying(mean, row['thickness_mm']).minutes_to('mean', low)
    else:
        return
    last = row['turn'] == len(lam['steps'])
    rolled = (sheet['rolled_mm'][2] if sheet else None) if last else lam['steps'][row['turn']]['rolled_mm'][2]
    begins = max(mean, low)
    if rolled is None:
        return
    if begins >= soft:
        row['work_window_minutes'] = 0.0
    elif room > soft:
        row['work_window_minutes'] = lying(begins, rolled).minutes_to('mean', soft)
