# SPDX-License-Identifier: GPL-3.0-or-later
"""The command line as a stranger meets it: keys, exit statuses, both outputs,
nothing from the environment, nothing left behind by what went wrong.

    command-line.py TOURIER TRIAL.tourier
"""

import json
import os
import pathlib
import re
import subprocess
import sys
import tempfile

from tap import Tap

# The contract for whoever reads the report: these keys, no others. A dict is
# an object, a list holds what each of its elements is, None is anything plain.
RANGE = {'min': None, 'max': None}
CONTENT = {'fat_g': None, 'salt_g': None, 'sugars_g': None, 'energy_kj': None, 'energy_kcal': None}
REPORT = {
    'doughs': [{
        'id': None,
        'formula': {
            'flour_g': None, 'dough_g': None, 'roll_in_g': None, 'total_g': None,
            'added_water_percent': None, 'all_water_percent': None, 'prefermented_flour_percent': None,
            'dough_fat_percent': None, 'roll_in_percent_of_flour': None, 'roll_in_percent_of_dough': None,
            'roll_in_percent_of_total': None, 'roll_in_fat_percent_of_flour': None, 'salt_percent': None,
            'sugar_percent': None, 'yeast_fresh_percent': None, 'scale': None,
            'lines': [{'stage': None, 'group': None, 'ingredient': None, 'written': None, 'grams': None, 'percent': None}],
            'problems': [{'where': None, 'text': None}],
        },
        'piece': {'count': None, 'raw_mass_g': None, 'added_fat_g': None, **CONTENT, 'per_100g_raw': CONTENT,
                  'cost': None, 'baked_mass_g': None},
        'lamination': {
            'fat_layers': None, 'dough_layers': None, 'bands': None, 'fold_product': None, 'fat_volume_fraction': None,
            'fat_layer_um': RANGE, 'dough_layer_um': {**RANGE, 'outer': None},
            'lock_in': {'fat_mm': [None], 'dough_mm': [None], 'block_mm': [None], 'rim_share': None},
            'steps': [{'start_mm': [None], 'rolled_mm': [None], 'folded_mm': [None], 'stretch': None, 'fat_layers': None,
                       'dough_layers': None, 'fat_layer_um': RANGE, 'trimmed_g': None, 'fits': None, 'breaks': [None]}],
            'to_sheet': {'blocks_cut': None, 'start_mm': [None], 'stretch_length': None, 'stretch_width': None,
                         'order': None, 'fits': None},
        },
        'sheet': {
            'rows': None, 'per_row': None, 'sheets': None, 'length_mm': None, 'width_mm': None, 'thickness_mm': None,
            'rolled_mm': [None], 'mass_g': None, 'pieces_cut': None, 'wanted': None, 'spare_pieces': None,
            'scrap_percent': None,
            'alternatives': [{'rows': None, 'per_row': None, 'sheets': None, 'length_mm': None, 'width_mm': None,
                              'pieces_cut': None, 'scrap_percent': None}],
            'windings': None, 'diameter_mm': None, 'layers_across': None, 'printed_thickness_mm': None,
            'trays': {'footprint_mm': [None], 'per_tray': None, 'trays': None, 'loads': None},
        },
        'rests': [{'turn': None, 'place': None, 'air_c': None, 'on': None, 'h_w_m2k': None, 'thickness_mm': None,
                   'k_w_mk': None, 'rho_kg_m3': None, 'cp_j_kgk': None, 'start_c': None, 'target_c': None,
                   'minutes_to_core': None, 'written_minutes': None, 'core_c_after_written': None,
                   'mean_c_after_written': None, 'minutes_to_surface_freezing': None, 'minutes_to_workable': None,
                   'work_window_minutes': None}],
        'water': {'n': None, 'liquid_need_c': None, 'water_c': None, 'ice_g': None, 'available_water_g': None},
        'allergens': [None],
    }],
    'findings': [{'id': None, 'severity': None, 'dough': None, 'where': None, 'text': None, 'value': None,
                  'limit': None, 'source': None}],
    'plan': None, 'tasting': None,
}
MAY_BE_NULL = {'lamination', 'sheet', 'to_sheet', 'water'}

# Nothing of the environment but what a checked build is told about its checks.
BARE = {name: value for name, value in os.environ.items() if name.endswith('SAN_OPTIONS')}

FLOUR = {'stage': 'dough', 'ingredient': 'flour-bread', 'amount': '500 g'}
WATER = {'stage': 'dough', 'ingredient': 'water', 'amount': '260 g'}
BUTTER = {'stage': 'roll-in', 'ingredient': 'butter-unsalted', 'amount': '250 g'}


def differences(ours, contract, where=''):
    """Every place where the keys, or the kinds of things, are not the contract's."""
    if isinstance(contract, dict):
        if not isinstance(ours, dict):
            if not (ours is None and where.rsplit('/', 1)[-1] in MAY_BE_NULL):
                yield f'{where} is not an object'
            return
        if list(ours) != list(contract):
            yield f'{where} has {sorted(set(ours) ^ set(contract)) or "its keys in another order"}'
        for key in set(ours) & set(contract):
            yield from differences(ours[key], contract[key], f'{where}/{key}')
    elif isinstance(contract, list):
        if not isinstance(ours, list):
            yield f'{where} is not a list'
            return
        for number, element in enumerate(ours):
            if not contract:
                yield f'{where} is not empty'
            else:
                yield from differences(element, contract[0], f'{where}/{number}')
    elif isinstance(ours, (dict, list)):
        yield f'{where} is an object or a list'


def no_duplicates(pairs):
    assert len(dict(pairs)) == len(pairs), f'a member twice: {pairs}'
    return dict(pairs)


def strictly(text):
    def refuse(word):
        raise ValueError(f'{word} is not JSON')
    return json.loads(text, parse_constant=refuse, object_pairs_hook=no_duplicates)


def pointed_at(document, pointer):
    """What an RFC 6901 pointer leads to; its last member may not be written."""
    *way, last = [part.replace('~1', '/').replace('~0', '~') for part in pointer.split('/')[1:]]
    for part in way:
        if isinstance(document, list):
            document = document[int(part)]
        elif part in document:
            document = document[part]
        else:
            return True                  # a default that is not written
    return int(last) < len(document) if isinstance(document, list) else isinstance(document, dict)


class Bench:
    def __init__(self, tourier, demo):
        self.tourier = tourier
        self.demo = demo
        self.tap = Tap()
        self.folder = pathlib.Path(tempfile.mkdtemp())

    def run(self, *arguments, env=None, **how):
        how.setdefault('stdin', subprocess.DEVNULL)
        return subprocess.run([self.tourier, *map(str, arguments)], capture_output='stdout' not in how,
                              env={**BARE, **(env or {})}, cwd=self.folder, timeout=60, **how)

    def write(self, name, *doughs, **members):
        path = self.folder / name
        path.write_text(json.dumps({'format': 'tourier-trial', 'version': 1, 'doughs': list(doughs), **members}),
                        encoding='utf-8')
        return path

    def left(self):
        return sorted(p.name for p in self.folder.rglob('*'))

    def refused(self, name, says, *arguments, **how):
        """Exit status 1, one sentence on stderr, stdout empty, nothing written."""
        before = self.left()
        run = self.run(*arguments, **how)
        said = (run.stderr or b'').decode('utf-8', 'replace')
        fine = (run.returncode == 1 and not run.stdout and self.left() == before and
                re.fullmatch(r'tourier: [^\n]+[.!]?\n', said) and all(word in said for word in says.split('|')))
        self.tap.check('refused: ' + name, fine, f'{run.returncode} {said!r} {run.stdout!r} {self.left()}')


def dough(name, *lines, **members):
    return {'id': name, 'name': name, 'lines': list(lines), 'batch': {'by': 'written'}, **members}


def check_report(bench):
    tap = bench.tap
    run = bench.run('--figures', bench.demo)
    report = strictly(run.stdout)
    document = json.loads(pathlib.Path(bench.demo).read_text(encoding='utf-8'))
    tap.check('figures: status 0 and nothing on stderr', run.returncode == 0 and not run.stderr, run.stderr)
    wrong = list(differences(report, REPORT))
    tap.check('figures: the keys of the contract, no others, in its order', not wrong, wrong)
    tap.check('figures: two blanks a level, a newline at the end',
              run.stdout.decode().startswith('{\n  "doughs": [\n    {\n      "id": ') and run.stdout.endswith(b'}\n'))
    tap.check('figures: no number is rounded',
              sum(len(n) > 12 for n in re.findall(rb'\d+\.\d+', run.stdout)) > 100)
    tap.check('figures: one entry a dough, in order', [d['id'] for d in report['doughs']] == [d['id'] for d in document['doughs']])
    tap.check('findings lead to what is there', report['findings'] and
              all(pointed_at(document, f['where']) for f in report['findings']), [f['where'] for f in report['findings']])
    tap.check('findings name a dough of the trial', {f['dough'] for f in report['findings']} <= {d['id'] for d in document['doughs']})
    for d in report['doughs']:
        f = d['formula']
        tap.close_to(f'{d["id"]}: dough and roll-in are the total', f['dough_g'] + f['roll_in_g'], f['total_g'], 1e-9 * f['total_g'])

    bare = bench.write('bare.tourier', dough('d1', FLOUR, {'stage': 'dough', 'ingredient': None, 'amount': '2 ladles', 'text': 'x'}))
    report = strictly(bench.run('--figures', bare).stdout)
    wrong = list(differences(report, REPORT))
    tap.check('figures of a dough with nothing but flour: the same keys', not wrong, wrong)
    tap.check('no lock-in and no cut are null', report['doughs'][0]['lamination'] is None and report['doughs'][0]['sheet'] is None)
    tap.check('the line that is not understood is a problem in its place',
              [p['where'] for p in report['doughs'][0]['formula']['problems']][:1] == ['/doughs/0/lines/1/ingredient'] or
              report['doughs'][0]['formula']['problems'][0]['where'].startswith('/doughs/0/lines/1'),
              report['doughs'][0]['formula']['problems'])
    empty = strictly(bench.run('--figures', bench.write('empty.tourier')).stdout)
    tap.check('figures of a trial without doughs', empty == {'doughs': [], 'findings': [], 'plan': None, 'tasting': None}, empty)
    half = bench.write('half.tourier', dough('d1', FLOUR, WATER, BUTTER, lock_in={'style': 'half'}))
    report = strictly(bench.run('--figures', half).stdout)
    wrong = list(differences(report, REPORT))
    tap.check('a lock-in without a cut: the same keys, no way to a sheet',
              not wrong and report['doughs'][0]['lamination']['to_sheet'] is None and
              report['doughs'][0]['lamination']['fat_layer_um'] == {'min': None, 'max': None}, wrong)


def check_findings(bench):
    tap = bench.tap
    run = bench.run('--findings', bench.demo)
    lines = run.stdout.decode().splitlines()
    report = strictly(bench.run('--figures', bench.demo).stdout)
    tap.check('findings: status 0 without a stop', run.returncode == 0 and not run.stderr, run.stderr)
    tap.check('findings: severity, dough, sentence; the report\'s own',
              [tuple(line.split('\t')) for line in lines] ==
              [(f['severity'], f['dough'], f['text']) for f in report['findings']], lines)
    stop = bench.write('stop.tourier', dough('d1', {'stage': 'dough', 'ingredient': 'water', 'amount': '1 kg'}))
    run = bench.run('--findings', stop)
    tap.check('findings: status 3 with a stop, still printed', run.returncode == 3 and b'stop\td1\t' in run.stdout and not run.stderr,
              run)
    tap.check('figures: status 0 with a stop', bench.run('--figures', stop).returncode == 0)
    warm = bench.write('warm.tourier', dough('d1', FLOUR, WATER, BUTTER, {'stage': 'dough', 'ingredient': 'salt', 'amount': '30 g'},
                                             kind='croissant'))
    run = bench.run('--findings', warm)
    tap.check('findings: status 0 with a warning', run.returncode == 0 and b'warn\td1\tSalt is ' in run.stdout, run)


def check_units(bench):
    tap = bench.tap
    trial = bench.write('large.tourier', dough('d1', {**FLOUR, 'amount': '9 kg'}, WATER, BUTTER))
    metric = bench.run('--findings', trial).stdout.decode()
    us = bench.run('--units', 'us', '--findings', trial).stdout.decode()
    tap.check('metric unless asked', '\u00a0g' in metric and '\u00a0lb' not in metric, metric)
    tap.check('--units us says pounds', '\u00a0lb' in us and '\u00a0g ' not in us, us)
    tap.check('--units metric is the plain one', bench.run('--units=metric', '--findings', trial).stdout.decode() == metric)
    numbers = [{**d} for d in strictly(bench.run('--figures', trial).stdout)['doughs']]
    for d in (us_report := strictly(bench.run('--figures', '--units', 'us', trial).stdout))['doughs'] + numbers:
        d['formula'].pop('problems')
    tap.check('--units changes sentences only, no figure', us_report['doughs'] == numbers)


def check_environment(bench):
    tap = bench.tap
    hostile = {
        'LANG': 'de_DE.UTF-8', 'LC_ALL': 'de_DE.UTF-8', 'LANGUAGE': 'de:fr', 'LC_NUMERIC': 'de_DE.UTF-8',
        'G_MESSAGES_DEBUG': 'all', 'GSETTINGS_BACKEND': 'nonsense', 'DISPLAY': ':77', 'WAYLAND_DISPLAY': 'none',
        'HOME': '/nonexistent', 'XDG_DATA_DIRS': '/nonexistent', 'TZ': 'Pacific/Kiritimati', 'COLUMNS': '20',
        'POSIXLY_CORRECT': '1', 'G_FILENAME_ENCODING': 'ISO-8859-15', 'GDK_BACKEND': 'broadway',
    }
    for option in ('--figures', '--findings'):
        plain = bench.run(option, bench.demo)
        other = bench.run(option, bench.demo, env=hostile)
        tap.check(f'{option}: an environment changes no byte', plain.stdout == other.stdout and plain.stdout, other.stderr)
        tap.check(f'{option}: the same bytes again', bench.run(option, bench.demo).stdout == plain.stdout)
    for option, word in (('--help', 'Usage:'), ('--version', 'tourier ')):
        plain, other = bench.run(option), bench.run(option, env=hostile)
        tap.check(f'{option}: status 0, on stdout, whatever the environment',
                  plain.returncode == 0 and plain.stdout == other.stdout and plain.stdout.decode().startswith(word) and not plain.stderr)
    help_text = bench.run('--help').stdout.decode()
    tap.check('--help names every option', all(o in help_text for o in (
        '--figures', '--findings', '--sequences', '--fat-layers', '--fat-um', '--max-turns', '--max-fold', '--paper card',
        '--output', '--dough', '--page', '--units', '--help', '--version')))
    tap.check('-h is --help', bench.run('-h').stdout.decode() == help_text)
    tap.check('--version is three numbers', re.fullmatch(r'tourier \d+\.\d+\.\d+\n', bench.run('--version').stdout.decode()))


def check_stdin(bench):
    tap = bench.tap
    content = pathlib.Path(bench.demo).read_bytes()
    plain = bench.run('--figures', bench.demo).stdout
    tap.check('- reads the standard input', bench.run('--figures', '-', stdin=None, input=content).stdout == plain)
    odd = bench.folder / '--figures'
    odd.write_bytes(content)
    tap.check('-- ends the options', bench.run('--figures', '--', '--figures').stdout == plain)
    odd.unlink()
    bench.refused('an empty standard input', '', '--figures', '-')
    bench.refused('too much on the standard input', '', '--figures', '-', stdin=None, input=b' ' * (5 << 20))


SEQUENCE = ['lock_in', 'folds', 'orders', 'fat_layers', 'fat_layer_um', 'longest_mm', 'worst_stretch', 'blocks', 'rests',
            'hands_minutes', 'minutes', 'fits', 'breaks']


def check_sequences(bench):
    demo, tap = bench.demo, bench.tap
    run = bench.run('--sequences', '--dough', 'd1', '--fat-layers', '27', demo)
    found = strictly(run.stdout)
    tap.check('sequences: one member, a list', list(found) == ['sequences'] and len(found['sequences']) > 0, run)
    tap.check('sequences: the keys of the contract in their order', all(list(s) == SEQUENCE for s in found['sequences']), found)
    tap.check('sequences: what is wished for', {s['fat_layers'] for s in found['sequences']} == {27}, found)
    again = bench.run('--sequences', '--dough=d1', '--fat-layers=27-27', '--max-turns=4', '--max-fold=4', demo)
    tap.check('sequences: the same wish, the same bytes', again.stdout == run.stdout)
    dash = bench.run('--sequences', '--dough', 'd1', '--fat-um', '20\u201360', demo)
    hyphen = bench.run('--sequences', '--dough', 'd1', '--fat-um', '20-60', demo)
    tap.check('sequences: a dash is a hyphen', dash.stdout == hyphen.stdout and hyphen.returncode == 0, dash)
    none = bench.run('--sequences', '--dough', 'd1', '--fat-layers', '11', demo)
    tap.check('sequences: nothing is an empty list', strictly(none.stdout) == {'sequences': []}, none)
    few = strictly(bench.run('--sequences', '--dough', 'd1', '--fat-layers', '1-99', '--max-turns', '1', '--max-fold', '3', demo).stdout)
    tap.check('sequences: limits are kept', {len(s['folds']) for s in few['sequences']} == {1}
              and {s['folds'][0] for s in few['sequences']} == {2, 3}, few)

    bench.refused('sequences of no dough', '--dough', '--sequences', '--fat-layers', '9', demo)
    bench.refused('sequences of a dough that is not there', 'nobody|d1', '--sequences', '--dough', 'nobody', '--fat-layers', '9', demo)
    bench.refused('sequences without a wish', '--fat-layers|--fat-um', '--sequences', '--dough', 'd1', demo)
    bench.refused('two wishes', '--fat-layers|--fat-um', '--sequences', '--dough', 'd1', '--fat-layers', '9', '--fat-um', '9', demo)
    for text in ('nine', '9-', '-9', '0', '40-20', '9-x', 'nan', '1e999', '9 - 12'):
        bench.refused(f'the range {text}', '--fat-layers|' + text, '--sequences', '--dough', 'd1', f'--fat-layers={text}', demo)
    bench.refused('no turns', '--max-turns|0|1 to 6', '--sequences', '--dough', 'd1', '--fat-layers', '9', '--max-turns', '0', demo)
    bench.refused('seven turns', '7|1 to 6', '--sequences', '--dough', 'd1', '--fat-layers', '9', '--max-turns', '7', demo)
    bench.refused('a fold of one', '--max-fold|1|2 to 6', '--sequences', '--dough', 'd1', '--fat-layers', '9', '--max-fold', '1', demo)
    bench.refused('a wish with the figures', '--fat-layers|--sequences', '--figures', '--fat-layers', '9', demo)
    bench.refused('units with sequences', '--units', '--sequences', '--units', 'us', '--dough', 'd1', '--fat-layers', '9', demo)
    bench.refused('an output with sequences', '--output', '--sequences', '--dough', 'd1', '--fat-layers', '9', '--output', 'x.pdf', demo)


def check_refusals(bench):
    demo, folder = bench.demo, bench.folder
    out = folder / 'card.pdf'
    bench.refused('no FILE', 'FILE', '--figures')
    bench.refused('a file that is not there', 'not-there.tourier', '--figures', folder / 'not-there.tourier')
    bench.refused('a folder for a file', '', '--figures', folder)
    (folder / 'broken.tourier').write_text('{"format": "tourier-trial", }', encoding='utf-8')
    bench.refused('what is not a trial', 'broken.tourier', '--findings', folder / 'broken.tourier')
    bench.refused('more than one FILE', '2', '--figures', demo, demo)
    bench.refused('an option that is not known', '--figure', '--figure', demo)
    bench.refused('a short option that is not known', '-x', '-x')
    bench.refused('an option beside a known one', '--wide', '--figures', '--wide', demo)
    bench.refused('two things at once', '--figures|--findings', '--figures', '--findings', demo)
    bench.refused('the same thing twice', 'twice', '--figures', '--figures', demo)
    bench.refused('units twice', 'twice', '--units', 'us', '--units', 'us', '--figures', demo)
    bench.refused('units that are not known', 'metric|us|stone', '--units', 'stone', '--figures', demo)
    bench.refused('units without a value', '--units', '--figures', demo, '--units')
    bench.refused('an option for a value', '--units', '--units', '--figures', demo)
    bench.refused('an empty value', '--units', '--units=', '--figures', demo)
    bench.refused('units for the window', '--units', '--units', 'us', demo)
    bench.refused('the standard input for the window', '-', '-')
    bench.refused('a value for what has none', '--figures=x', '--figures=x', demo)
    bench.refused('a dough with the figures', '--dough|--paper', '--figures', '--dough', 'd1', demo)
    bench.refused('an output with the findings', '--output|--paper', '--findings', '--output', out, demo)
    bench.refused('a page for the window', '--page|--paper', '--page', 'a4')
    bench.refused('an option of the window with the figures', '--figures', '--figures', '--gapplication-service', demo)

    bench.refused('a paper that is not known', 'card|poster', '--paper', 'poster', '--output', out, demo)
    bench.refused('paper without an output', '--output', '--paper', 'card', demo)
    bench.refused('paper without a trial', 'FILE', '--paper', 'card', '--output', out)
    bench.refused('a page that is not known', 'a4|letter|a5', '--paper', 'card', '--page', 'a5', '--output', out, demo)
    bench.refused('an extension that is not known', '.pdf|.png|.svg', '--paper', 'card', '--output', folder / 'card.txt', demo)
    bench.refused('an output without an extension', '.pdf|.png|.svg', '--paper', 'card', '--output', folder / 'card', demo)
    bench.refused('an output in no folder', 'no folder', '--paper', 'card', '--output', folder / 'no' / 'card.pdf', demo)
    (folder / 'folder.pdf').mkdir()
    bench.refused('an output that is a folder', 'folder', '--paper', 'card', '--output', folder / 'folder.pdf', demo)
    doughs = [d['id'] for d in json.loads(pathlib.Path(demo).read_text(encoding='utf-8'))['doughs']]
    bench.refused('a dough that is not there', 'nobody|' + '|'.join(doughs), '--paper', 'card', '--dough', 'nobody', '--output', out, demo)
    bench.refused('paper of a broken trial', 'broken', '--paper', 'card', '--output', out, folder / 'broken.tourier')
    bench.refused('paper of a trial without doughs', 'no dough', '--paper', 'card', '--output', out, folder / 'empty.tourier')
    trial = bench.write('trial.svg', dough('d1', FLOUR))
    before = trial.read_bytes()
    bench.refused('the trial itself for an output', 'itself', '--paper', 'card', '--output', trial, trial)
    bench.tap.check('and the trial is as it was', trial.read_bytes() == before)


def check_outputs_that_fail(bench):
    tap = bench.tap
    for option in ('--figures', '--findings', '--help', '--version'):
        arguments = [option] + [bench.demo] * (option[2] == 'f')
        with open('/dev/full', 'wb') as full:
            run = bench.run(*arguments, stdout=full, stderr=subprocess.PIPE)
        tap.check(f'{option}: a full disk is said', run.returncode == 1 and run.stderr.count(b'\n') == 1, run)
        closed = subprocess.run(['sh', '-c', '"$0" "$@" >&-', bench.tourier, *arguments], env=BARE, capture_output=True)
        tap.check(f'{option}: a closed output is said', closed.returncode == 1 and closed.stderr.count(b'\n') == 1, closed)
    target = bench.folder / 'closed.pdf'
    all_closed = subprocess.run(['sh', '-c', '"$0" "$@" <&- >&- 2>&-', bench.tourier, '--paper', 'card', '--output', target, bench.demo], env=BARE)
    tap.check('paper needs no standard descriptors', all_closed.returncode == 0 and target.read_bytes().startswith(b'%PDF-'))
    target.unlink()


def check_paper(bench):
    tap = bench.tap
    starts = {'.pdf': b'%PDF-', '.png': b'\x89PNG', '.svg': b'<?xml'}
    for extension, start in starts.items():
        target = bench.folder / ('card' + extension)
        run = bench.run('--paper', 'card', '--dough', 'd1', '--output', target, bench.demo)
        tap.check(f'a card as {extension}: status 0, both outputs empty, the file is there',
                  run.returncode == 0 and not run.stdout and not run.stderr and target.read_bytes().startswith(start), run)
        first = target.read_bytes()
        bench.run('--paper', 'card', '--dough', 'd1', '--output', target, bench.demo)
        tap.check(f'a card as {extension}: the same bytes over the old file', target.read_bytes() == first)
    for first, second, differ in ((['--page', 'letter'], [], True), (['--page=a4'], [], False), (['--units', 'us'], [], True)):
        paths = []
        for number, more in enumerate((first, second)):
            paths.append(bench.folder / f'{number}.svg')
            bench.run('--paper', 'card', '--dough', 'd1', *more, '--output', paths[-1].name, bench.demo)
        tap.check(f'{" ".join(first)} {"changes" if differ else "does not change"} the card',
                  (paths[0].read_bytes() != paths[1].read_bytes()) == differ)


RECIPE = '''Slipway rolls
Makes two dozen
500 g (4 cups) bread flour
300 ml water
1 tsp lemon juice
For the butter block:
250 g butter
'''


def check_recipe(bench):
    tap, target = bench.tap, bench.folder / 'rolls.tourier'
    (bench.folder / 'rolls.html').write_text(RECIPE, encoding='utf-8')
    run = bench.run('--read-recipe', bench.folder / 'rolls.html', '--output', target)
    tap.check('a recipe becomes a trial, whatever its file is called', run.returncode == 0 and target.exists() and not run.stderr, run)
    read = strictly(target.read_text(encoding='utf-8'))['doughs'][0]
    lines = [(line['stage'], line['ingredient'], line['amount']) for line in read['lines']]
    tap.check('its lines', lines == [('dough', 'flour-bread', '500 g'), ('dough', 'water', '300 ml'), ('dough', None, '1 tsp'),
                                     ('roll-in', 'butter-unsalted', '250 g')], lines)
    tap.check('its pieces', read['pieces_written'] == 24, read)
    account = run.stdout.decode()
    tap.check('the account says how, what was guessed and why not',
              'unsalted is taken' in account and 'Not understood' in account and '3 of 4 lines' in account, account)
    tap.check('the trial has figures', bench.run('--figures', target).returncode == 0)
    piped = bench.run('--read-recipe', '-', '--output', target, stdin=None, input=RECIPE.encode())
    tap.check('- reads a recipe from the standard input', piped.returncode == 0 and piped.stdout == run.stdout, piped)
    tap.check('what was there is kept beside it', (bench.folder / 'rolls.tourier~').exists())
    nowhere = bench.folder / 'nowhere.tourier'
    for name, content, word in (('an empty recipe', b'', 'empty'), ('a picture', b'\x89PNG\r\n\x1a\n\0\0', 'not text'),
                                ('a page without a recipe', b'<html><body><p>Good morning</p></body></html>', 'No recipe'),
                                ('five megabytes', b'hello world\n' * 450000, '1 MiB')):
        (bench.folder / 'in.txt').write_bytes(content)
        bench.refused(name, word, '--read-recipe', bench.folder / 'in.txt', '--output', nowhere)
        tap.check(f'{name}: nothing is written', not nowhere.exists())
    bench.refused('a recipe without an output', '--output', '--read-recipe', bench.folder / 'rolls.html')
    bench.refused('a recipe into no trial', '.tourier', '--read-recipe', bench.folder / 'rolls.html', '--output', bench.folder / 'x.pdf')
    bench.refused('a recipe in units', '--units', '--read-recipe', bench.folder / 'rolls.html', '--output', nowhere, '--units', 'us')


def main(tourier, demo):
    bench = Bench(os.path.abspath(tourier), os.path.abspath(demo))
    check_report(bench)
    check_findings(bench)
    check_units(bench)
    check_environment(bench)
    check_stdin(bench)
    check_refusals(bench)
    check_sequences(bench)
    check_outputs_that_fail(bench)
    check_paper(bench)
    check_recipe(bench)
    subprocess.run(['rm', '-rf', bench.folder], check=True)
    return bench.tap.end()


if __name__ == '__main__':
    sys.exit(main(*sys.argv[1:]))
