#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The demo shows what it is meant to show, and nothing in it stops the work.

    demo.py TOURIER DEMO.tourier
"""

import json
import pathlib
import subprocess
import sys

from tap import Tap, figures

FEW = 2


def distinct(values):
    values = [str(v) for v in values]
    return len(set(values)) == len(values)


def main(tourier, path):
    tap = Tap()
    trial = json.loads(pathlib.Path(path).read_text(encoding='utf-8'))
    doughs = trial['doughs']
    report = figures(tourier, path)

    tap.check('at least three doughs', len(doughs) >= 3)
    tap.check('every lock-in is another', distinct(d['lock_in']['style'] for d in doughs))
    tap.check('every sequence of folds is another', distinct([t['fold'] for t in d['turns']] for d in doughs))
    tap.check('three shapes', len({d['cut']['shape'] for d in doughs}) >= 3)
    groups = {tuple(sorted({x['group'] for x in d['lines'] if x['stage'] == 'preferment'})) for d in doughs}
    tap.check('two preferments and none', len(groups) >= 3 and () in groups, groups)
    tap.check('one without leaven', any(not any('yeast' in x['ingredient'] for x in d['lines']) for d in doughs))
    tap.check('one in cups and ounces', any(
        any('cup' in x['amount'] for x in d['lines']) and any(' oz' in x['amount'] for x in d['lines'])
        and not any(' g' in x['amount'] for x in d['lines']) for d in doughs))
    tap.check('every dough says that it is invented', all('nvented' in d['notes'] for d in doughs))
    tap.check('every dough has a method', all(len(d['method']['steps']) >= 6 for d in doughs))
    tap.check('a prediction of every dough', sorted(trial['prediction']['order']) == sorted(d['id'] for d in doughs))

    for dough in report['doughs']:
        tap.check(f'{dough["id"]}: everything is weighed', dough['formula']['problems'] == [])
        tap.check(f'{dough["id"]}: it has layers, a sheet and a price',
                  dough['lamination'] is not None and dough['sheet'] is not None and dough['piece']['cost'] is not None)
        tap.check(f'{dough["id"]}: it fits the bench', all(s['fits'] for s in dough['lamination']['steps'])
                  and dough['lamination']['to_sheet']['fits'])

    run = subprocess.run([tourier, '--findings', path], capture_output=True, text=True)
    severities = [line.split('\t')[0] for line in run.stdout.splitlines()]
    tap.check('nothing stops', run.returncode == 0 and 'stop' not in severities, run.stdout)
    tap.check('few warnings', severities.count('warn') <= FEW, run.stdout)
    tap.check('something is said', len(severities) > 0)
    return tap.end()


if __name__ == '__main__':
    sys.exit(main(*sys.argv[1:]))
