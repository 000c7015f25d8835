#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Random tastings a second time, by SciPy and by brute force.

    ranks.py TOURIER [HOW-MANY] [SEED]

SciPy's rankdata, friedmanchisquare, spearmanr and kendalltau (exact); exact
Friedman probabilities and Page's L by going through every way in which every
taster could have shuffled the same ranks. Doughs, tasters and marks are invented.
"""

import itertools
import json
import math
import os
import random
import sys
import tempfile
import warnings

from scipy import stats

from tap import Tap, figures

warnings.simplefilter('ignore')


def dough(k, rng):
    return {'id': f'd{k}', 'name': f'Dough {k}', 'lines': [
        {'stage': 'dough', 'ingredient': 'flour-bread', 'amount': '500 g'},
        {'stage': 'dough', 'ingredient': 'water', 'amount': f'{rng.randint(50, 60) * 5} g'},
        {'stage': 'dough', 'ingredient': 'salt', 'amount': f'{rng.randint(7, 12)} g'},
        {'stage': 'roll-in', 'ingredient': 'butter-unsalted', 'amount': f'{rng.randint(20, 30) * 10} g'}]}


def trial(rng, n_tasters, n_samples, few_marks):
    ids = [f'd{k}' for k in range(n_samples)]
    top = 3 if few_marks else 9
    scores = [{'taster': f't{t}', 'dough': d, 'marks': {m: rng.randint(1, top) for m in ('look', 'layers', 'eating')}}
              for t in range(n_tasters) for d in ids]
    return {'format': 'tourier-trial', 'version': 1, 'doughs': [dough(k, rng) for k in range(n_samples)],
            'prediction': {'by': 'hand', 'order': rng.sample(ids, n_samples)},
            'tasting': {'tasters': [{'id': f't{t}', 'name': f'T{t}'} for t in range(n_tasters)],
                        'codes': {d: 201 + 7 * k for k, d in enumerate(ids)}, 'scores': scores}}


def run(tourier, document):
    with tempfile.NamedTemporaryFile('w', suffix='.tourier', delete=False) as file:
        json.dump(document, file)
    try:
        return figures(tourier, file.name)
    finally:
        os.unlink(file.name)


def score_table(document):
    tasting = document['tasting']
    return [[sum(next(s for s in tasting['scores'] if s['taster'] == t['id'] and s['dough'] == d['id'])['marks'].values()) / 3
             for d in document['doughs']] for t in tasting['tasters']]


def close(a, b):
    if a is None or b is None:
        return (a is None or math.isnan(a)) and (b is None or math.isnan(b))
    return abs(a - b) <= 1e-9 * max(1, abs(b))


def two_sided(a, b, measure):
    """Of every order of b: how many are as far out as the one there is."""
    observed = abs(measure(a, b))
    all_orders = list(itertools.permutations(b))
    return sum(abs(measure(a, o)) >= observed - 1e-9 for o in all_orders) / len(all_orders)


def covariance(a, b):
    return len(a) * sum(x * y for x, y in zip(a, b)) - sum(a) * sum(b)


def brute_friedman(ranks):
    ways = [list(itertools.permutations(row)) for row in ranks]
    def squares(rows):
        return sum(sum(column) ** 2 for column in zip(*rows))
    observed, n, far = squares(ranks), 0, 0
    for rows in itertools.product(*ways):
        n += 1
        far += squares(rows) >= observed - 1e-9
    return far / n


def brute_page(ranks, order):
    def l_of(rows):
        return sum((i + 1) * sum(row[s] for row in rows) for i, s in enumerate(order))
    observed, n, far = l_of(ranks), 0, 0
    for rows in itertools.product(*[list(itertools.permutations(row)) for row in ranks]):
        n += 1
        far += l_of(rows) >= observed - 1e-9
    return observed, far / n


def check(document, report):
    """A sentence for each thing that differs."""
    wrong, got = [], report['tasting']
    ids = [d['id'] for d in document['doughs']]
    scores = score_table(document)
    n_tasters, n = len(scores), len(ids)
    ranks = [list(stats.rankdata([-round(x, 9) for x in row])) for row in scores]
    sums = [sum(column) for column in zip(*ranks)]
    means = [sum(column) / n_tasters for column in zip(*scores)]

    def same(what, a, b):
        if not close(a, b):
            wrong.append(f'{what}: {a}, expected {b}')

    for k, i in enumerate(ids):
        same('rank sum', got['rank_sums'][i], sums[k])
        same('mean', got['mean_score'][i], means[k])
    order = sorted(range(n), key=lambda k: (sums[k], -round(means[k], 9), k))
    if got['order'] != [ids[k] for k in order]:
        wrong.append(f"order {got['order']}")
    if n >= 3 and n_tasters >= 2:
        f = stats.friedmanchisquare(*[[row[k] for row in ranks] for k in range(n)])
        same('F', got['friedman_f'], f.statistic)
        same('W', got['kendall_w'], f.statistic / (n_tasters * (n - 1)))
        if not got['friedman_exact'] and not math.isnan(f.statistic):
            same('chi-squared p', got['friedman_p'], f.pvalue)
    small = math.factorial(n) ** n_tasters <= 20000
    if small and n_tasters >= 2 and got['friedman_f'] is not None:
        same('exact p', got['friedman_p'], brute_friedman(ranks))
    if got['prediction'] is not None:
        predicted = [ids.index(i) for i in document['prediction']['order']]
        a, b = list(range(1, n + 1)), [order.index(k) + 1 for k in predicted]
        same('rho', got['prediction']['spearman_rho'], stats.spearmanr(a, b).statistic)
        tau = stats.kendalltau(a, b, method='exact')
        same('tau', got['prediction']['kendall_tau'], tau.statistic)
        same('tau p', got['prediction']['kendall_p'], tau.pvalue)
        if n <= 6:
            same('rho p', got['prediction']['spearman_p'], two_sided(a, b, covariance))
        if small:
            l, p = brute_page(ranks, predicted)
            same('L', got['prediction']['page_l'], l)
            same('L p', got['prediction']['page_p'], p)
    values = {'salt_percent': [d['formula']['salt_percent'] for d in report['doughs']],
              'roll_in_percent_of_flour': [d['formula']['roll_in_percent_of_flour'] for d in report['doughs']]}
    follows = {f['figure']: f for f in got['follows']}
    mean_ranks = list(stats.rankdata([round(m, 9) for m in means]))
    for key, numbers in values.items():
        figure_ranks = list(stats.rankdata([round(v, 9) for v in numbers]))
        rho = stats.spearmanr(figure_ranks, mean_ranks).statistic
        if math.isnan(rho):
            if key in follows:
                wrong.append(f'{key} follows, although nothing varies')
            continue
        same(key, follows[key]['spearman_rho'], rho)
        if n <= 6:
            same(key + ' p', follows[key]['p'], two_sided(figure_ranks, mean_ranks, covariance))
    return wrong


def main():
    tourier = sys.argv[1]
    how_many = int(sys.argv[2]) if len(sys.argv) > 2 else 60
    seed = int(sys.argv[3]) if len(sys.argv) > 3 else random.randrange(2 ** 31)
    rng = random.Random(seed)
    print(f'# seed {seed}')
    tap = Tap()
    sizes = [(3, 3), (4, 3), (5, 3), (2, 4), (3, 4), (2, 2), (4, 2), (1, 4), (6, 5), (8, 4), (13, 5), (4, 7), (3, 9)]
    wrong = []
    for k in range(how_many):
        n_tasters, n_samples = sizes[k % len(sizes)]
        document = trial(rng, n_tasters, n_samples, rng.random() < 0.6)
        wrong += [f'{n_tasters} tasters, {n_samples} samples: {w}' for w in check(document, run(tourier, document))]
    tap.check(f'{how_many} random tastings as SciPy and brute force have them', not wrong, '\n'.join(wrong[:10]))
    gaps(tap, tourier, rng)
    return tap.end()


KEYS = ['tasters', 'samples', 'left_out', 'rank_sums', 'mean_score', 'order', 'friedman_f', 'friedman_p', 'friedman_exact',
        'kendall_w', 'least_significant_difference', 'prediction', 'follows']
PREDICTION_KEYS = ['spearman_rho', 'spearman_p', 'kendall_tau', 'kendall_p', 'page_l', 'page_p', 'exact']


def gaps(tap, tourier, rng):
    document = trial(rng, 3, 4, False)
    got = run(tourier, document)['tasting']
    tap.check('the report has these keys and no other',
              list(got) == KEYS and list(got['prediction']) == PREDICTION_KEYS
              and all(list(f) == ['figure', 'spearman_rho', 'p'] for f in got['follows']))
    document = trial(rng, 3, 3, False)
    del document['tasting']['scores'][4]['marks']['look']
    got = run(tourier, document)['tasting']
    tap.check('a half-filled sheet is left out and named',
              got['left_out'] == ['t1'] and got['tasters'] == ['t0', 't2'])
    document = trial(rng, 1, 3, False)
    got = run(tourier, document)['tasting']
    tap.check('one taster has an order and no test',
              got['friedman_p'] is None and got['kendall_w'] is None and got['least_significant_difference'] is None and got['order'])
    document = trial(rng, 3, 3, False)
    for score in document['tasting']['scores']:
        score['marks'] = {'look': 5, 'layers': 5, 'eating': 5}
    got = run(tourier, document)['tasting']
    tap.check('of scores that are all equal nothing is said',
              got['friedman_f'] is None and got['friedman_p'] is None and got['prediction'] is None and got['follows'] == [])
    document = trial(rng, 3, 3, False)
    document['tasting']['scores'] = [s for s in document['tasting']['scores'] if s['dough'] != 'd1']
    got = run(tourier, document)['tasting']
    tap.check('with a dough not tasted nothing is ranked',
              got['rank_sums'] is None and got['order'] is None and got['tasters'] == [])
    document['tasting']['scores'] = []
    tap.check('without scores there is no tasting',
              run(tourier, document)['tasting'] is None)


if __name__ == '__main__':
    sys.exit(main())
