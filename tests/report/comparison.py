# SPDX-License-Identifier: GPL-3.0-or-later
"""Doughs side by side from the command line: the CSV, read by Python's own csv
module and held against the report; times and stretches worked out once more;
the pages, counted and read by poppler.

    comparison.py TOURIER TRIAL.tourier
"""

import copy
import csv
import io
import json
import pathlib
import subprocess
import sys
import tempfile

from tap import Tap, figures

HANDS = {'preferment-mix', 'mix', 'fat-block', 'lock-in', 'roll-out', 'cut', 'shape', 'finish'}
MEANWHILE = {'fat-block', 'turn', 'rest'}


def run(tourier, *arguments):
    return subprocess.run([tourier, *map(str, arguments)], capture_output=True, timeout=60)


def read(tourier, document):
    text = run(tourier, '--figures', '--csv', document).stdout.decode('utf-8')
    return text, list(csv.reader(io.StringIO(text, newline=''), strict=True))


def in_report(dough, key):
    """Where the report has it: in one of its sections, or an object of one."""
    for section in ('formula', 'piece', 'lamination', 'sheet'):
        value = dough[section]
        for part in key.split('.'):
            if not isinstance(value, dict) or part not in value:
                break
            value = value[part]
        else:
            return True, value
    return False, None


def times(dough, report, bench):
    steps = dough.get('method', {}).get('steps', [])
    turns = dough.get('turns', [])
    turning = sum(t.get('minutes', bench['turn_minutes']) for t in turns)
    resting = sum(t['rest']['min'] for t in turns if t.get('rest'))
    lock_in = dough.get('lock_in') or {}
    resting += lock_in['rest']['min'] if lock_in.get('rest') else 0
    loads = report['sheet']['trays']['loads'] if report['sheet'] else 1
    hands = turning + sum(s['minutes'] for s in steps if s['id'] in HANDS)
    whole = turning + resting + sum(s['minutes'] * (loads if s['id'] == 'bake' else 1) for s in steps if s['id'] not in MEANWHILE)
    return hands, whole


def worst_stretch(report):
    lamination = report['lamination']
    if lamination is None:
        return None
    all_of_them = [s['stretch'] for s in lamination['steps']]
    if lamination['to_sheet']:
        all_of_them += [lamination['to_sheet']['stretch_length'], lamination['to_sheet']['stretch_width']]
    return max(all_of_them)


def check_csv(tap, tourier, demo):
    text, rows = read(tourier, demo)
    document = json.loads(pathlib.Path(demo).read_text(encoding='utf-8'))
    report = figures(tourier, demo)
    tap.check('csv: lines end with CR LF, the last too', text.endswith('\r\n') and '\n' not in text.replace('\r\n', ''))
    tap.check('csv: a column a dough behind key and unit', rows[0] == ['key', 'unit'] + [d['name'] for d in document['doughs']], rows[0])
    tap.check('csv: as many fields in every row', {len(r) for r in rows} == {len(rows[0])})
    keys = [r[0] for r in rows[1:]]
    tap.check('csv: no key twice', len(set(keys)) == len(keys) > 40)
    own = {'worst_stretch', 'hands_minutes', 'minutes'}
    for row in rows[1:]:
        if row[0] in own:
            continue
        found = [in_report(dough, row[0]) for dough in report['doughs']]
        # What has no section at all is not there, rather than null.
        same = all((cell == '' and value is None) or (there and value is not None and float(cell) == value)
                   for cell, (there, value) in zip(row[2:], found))
        tap.check(f'csv: {row[0]} is the report\'s, to the last digit', same and any(there for there, _ in found), (row, found))
    by_key = {r[0]: r[2:] for r in rows[1:]}
    for number, (dough, of_report) in enumerate(zip(document['doughs'], report['doughs'])):
        hands, whole = times(dough, of_report, document['bench'])
        tap.close_to(f'csv: hands-on minutes of {dough["id"]}', float(by_key['hands_minutes'][number]), hands, 1e-9)
        tap.close_to(f'csv: minutes of {dough["id"]}', float(by_key['minutes'][number]), whole, 1e-9)
        tap.close_to(f'csv: the worst stretch of {dough["id"]}', float(by_key['worst_stretch'][number]), worst_stretch(of_report), 1e-9)
    tap.check('csv: the same bytes again', read(tourier, demo)[0] == text)


def many(document, n, name=lambda i: f'Dough {i + 1}'):
    result = copy.deepcopy(document)
    result['doughs'] = []
    result.pop('prediction', None)
    for i in range(n):
        dough = copy.deepcopy(document['doughs'][i % len(document['doughs'])])
        dough.update(id=f'd{i + 1}', name=name(i))
        dough['from'] = None
        result['doughs'].append(dough)
    return result


def check_names(tap, tourier, folder, document):
    names = ['Salt, sweet', '5" squares', 'Zeile\neins', 'Twice', 'Twice']
    path = folder / 'names.tourier'
    path.write_text(json.dumps(many(document, len(names), lambda i: names[i])), encoding='utf-8')
    head = read(tourier, path)[1][0][2:]
    tap.check('csv: commas and quotes come back as they were written', head[:2] == names[:2], head)
    tap.check('csv: a name is one line', not any('\n' in name for name in head), head)
    tap.check('csv: equal names are told apart', head[3:] == ['Twice (d4)', 'Twice (d5)'], head)


def pages_of(path):
    said = subprocess.run(['pdfinfo', path], check=True, capture_output=True, text=True).stdout
    return int(next(line.split()[1] for line in said.splitlines() if line.startswith('Pages:')))


def text_of(path):
    return subprocess.run(['pdftotext', '-layout', path, '-'], check=True, capture_output=True, text=True).stdout


def check_paper(tap, tourier, folder, demo, document):
    for extension, start in {'.pdf': b'%PDF-', '.png': b'\x89PNG', '.svg': b'<?xml'}.items():
        target = folder / f'compare{extension}'
        done = run(tourier, '--paper', 'compare', '--output', target, demo)
        first = target.read_bytes()
        run(tourier, '--paper', 'compare', '--output', target, demo)
        tap.check(f'paper: as {extension}, quietly, and the same bytes again',
                  done.returncode == 0 and not done.stdout and not done.stderr and first.startswith(start) and first == target.read_bytes(), done)
    text = text_of(folder / 'compare.pdf')
    tap.check('paper: every dough is named', all(d['name'] in text for d in document['doughs']), text)
    for n, pages in ((1, 1), (6, 1), (7, 2), (12, 2), (13, 3), (64, 11)):
        path, target = folder / 'many.tourier', folder / 'many.pdf'
        path.write_text(json.dumps(many(document, n)), encoding='utf-8')
        run(tourier, '--paper', 'compare', '--output', target, path)
        tap.check(f'paper: {n} doughs on {pages} pages', pages_of(target) == pages, pages_of(target))
        text = text_of(target)
        tap.check(f'paper: all {n} are named', all(f'Dough {i + 1}' in text for i in range(n)))
    letter = folder / 'letter.pdf'
    run(tourier, '--paper', 'compare', '--page', 'letter', '--output', letter, demo)
    tap.check('paper: letter is letter', '612 x 792' in subprocess.run(['pdfinfo', letter], capture_output=True, text=True).stdout)


def check_refusals(tap, tourier, folder, demo):
    out = folder / 'refused.pdf'
    for name, says, arguments in (
            ('csv with the findings', '--csv', ['--findings', '--csv', demo]),
            ('csv alone', '--csv', ['--csv']),
            ('csv twice', 'twice', ['--figures', '--csv', '--csv', demo]),
            ('units with csv', '--units', ['--figures', '--csv', '--units', 'us', demo]),
            ('one dough to be compared', '--dough', ['--paper', 'compare', '--dough', 'd1', '--output', out, demo])):
        done = run(tourier, *arguments)
        tap.check('refused: ' + name, done.returncode == 1 and not done.stdout and says in done.stderr.decode()
                  and done.stderr.count(b'\n') == 1 and not out.exists(), done)


def main(tourier, demo):
    tap = Tap()
    document = json.loads(pathlib.Path(demo).read_text(encoding='utf-8'))
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        check_csv(tap, tourier, demo)
        check_names(tap, tourier, folder, document)
        check_paper(tap, tourier, folder, demo, document)
        check_refusals(tap, tourier, folder, demo)
    return tap.end()


if __name__ == '__main__':
    sys.exit(main(*sys.argv[1:3]))
