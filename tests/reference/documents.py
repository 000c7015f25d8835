#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Documents against a general-purpose validator, and the validator against
the program: what one refuses the other refuses too.

    documents.py TOURIER trial.schema.json DOCUMENT...

The validator is python3-jsonschema (Debian); the schema is ours.
"""

import copy
import json
import pathlib
import subprocess
import sys
import tempfile

import jsonschema

from tap import Tap

BOTH, SCHEMA_CANNOT_SEE = 'both refuse', 'only the program can see'


def is_read(tourier, document):
    """Whether the program reads it; and it must say why not in one line."""
    run = subprocess.run([tourier, '--figures', document], capture_output=True)
    if run.returncode == 0:
        return True, ''
    said = run.stderr.decode()
    one_sentence = run.returncode == 1 and not run.stdout and said.count('\n') == 1 and len(said) > 10
    return False, '' if one_sentence else f'exit {run.returncode}, said: {said}'


def change(path, value):
    def change_it(document):
        at = document
        for step in path[:-1]:
            at = at[step]
        at[path[-1]] = value
    return change_it


def remove(*path):
    def remove_it(document):
        at = document
        for step in path[:-1]:
            at = at[step]
        del at[path[-1]]
    return remove_it


D = ('doughs', 0)
# What makes a good document a bad one. The first dough has a preferment, a
# lock-in, turns with rests and a triangle.
FAULTS = [
    ('format of somebody else', change(('format',), 'cake'), BOTH),
    ('version above ours', change(('version',), 2), BOTH),
    ('version a text', change(('version',), '1'), BOTH),
    ('no format', remove('format'), BOTH),
    ('no version', remove('version'), BOTH),
    ('no doughs', remove('doughs'), BOTH),
    ('doughs not a list', change(('doughs',), {}), BOTH),
    ('65 doughs', lambda d: d.update(doughs=[{**d['doughs'][0], 'id': f'x{i}', 'from': None} for i in range(65)],
                                     prediction=None), BOTH),
    ('title a number', change(('title',), 3), BOTH),
    ('dough without id', remove(*D, 'id'), BOTH),
    ('dough without name', remove(*D, 'name'), BOTH),
    ('dough without lines', remove(*D, 'lines'), BOTH),
    ('unknown kind', change((*D, 'kind'), 'bread'), BOTH),
    ('line without stage', remove(*D, 'lines', 0, 'stage'), BOTH),
    ('line without ingredient', remove(*D, 'lines', 0, 'ingredient'), BOTH),
    ('line without amount', remove(*D, 'lines', 0, 'amount'), BOTH),
    ('unknown stage', change((*D, 'lines', 0, 'stage'), 'oven'), BOTH),
    ('amount a number', change((*D, 'lines', 0, 'amount'), 250), BOTH),
    ('201 lines', lambda d: d['doughs'][0].update(lines=[d['doughs'][0]['lines'][3]] * 201), BOTH),
    ('13 turns', lambda d: d['doughs'][0].update(turns=[d['doughs'][0]['turns'][0]] * 13), BOTH),
    ('fold of 1', change((*D, 'turns', 0, 'fold'), 1), BOTH),
    ('fold of 7', change((*D, 'turns', 0, 'fold'), 7), BOTH),
    ('fold of 2.5', change((*D, 'turns', 0, 'fold'), 2.5), BOTH),
    ('turn with length and thickness', change((*D, 'turns', 0, 'length_mm'), 500), BOTH),
    ('negative thickness', change((*D, 'turns', 0, 'thickness_mm'), -1), BOTH),
    ('unknown place', change((*D, 'turns', 0, 'rest', 'place'), 'cellar'), BOTH),
    ('negative rest', change((*D, 'turns', 0, 'rest', 'min'), -5), BOTH),
    ('unknown lock-in', change((*D, 'lock_in', 'style'), 'swirl'), BOTH),
    ('negative rim', change((*D, 'lock_in', 'rim_mm'), -1), BOTH),
    ('no block', change((*D, 'lock_in', 'blocks'), 0), BOTH),
    ('unknown shape', change((*D, 'cut', 'shape'), 'star'), BOTH),
    ('negative base', change((*D, 'cut', 'base_mm'), -90), BOTH),
    ('thickness and mass', change((*D, 'cut', 'piece_mass_g'), 50), BOTH),
    ('unknown batch', change((*D, 'batch', 'by'), 'trays'), BOTH),
    ('negative batch', change((*D, 'batch', 'value'), -1), BOTH),
    ('loss of 100 %', change((*D, 'handling_loss_percent'), 100), BOTH),
    ('loss a text', change((*D, 'handling_loss_percent'), '2'), BOTH),
    ('density of nothing', change((*D, 'dough_density_g_ml'), 0), BOTH),
    ('worktop with three sides', change(('bench', 'worktop_mm'), [900, 600, 2]), BOTH),
    ('negative price', change(('ingredients', 0, 'price_per_kg'), -1), BOTH),
    ('own ingredient like nothing', remove('ingredients', 0, 'like'), BOTH),
    ('unknown step', change((*D, 'method', 'steps', 0, 'id'), 'sing'), BOTH),
    ('humidity of 140 %', lambda d: next(s for s in d['doughs'][0]['method']['steps']
                                         if s['id'] == 'proof').update(rh_percent=140), BOTH),
    ('two doughs of one id', change(('doughs', 1, 'id'), 'd1'), SCHEMA_CANNOT_SEE),
    ('a dough from nowhere', change((*D, 'from'), 'nobody'), SCHEMA_CANNOT_SEE),
    ('an ingredient from nowhere', change((*D, 'lines', 0, 'ingredient'), 'sawdust'), SCHEMA_CANNOT_SEE),
    ('like an ingredient from nowhere', change(('ingredients', 0, 'like'), 'sawdust'), SCHEMA_CANNOT_SEE),
    ('a prediction of nobody', change(('prediction', 'order'), ['nobody']), SCHEMA_CANNOT_SEE),
]

# What looks odd and is a document all the same.
ODDITIES = [
    ('an amount that cannot be read', change((*D, 'lines', 0, 'amount'), 'a good handful')),
    ('a line with no ingredient', change((*D, 'lines', 0, 'ingredient'), None)),
    ('members from elsewhere', change((*D, 'weather'), {'wind': [1, 2]})),
    ('a turn with only a width', lambda d: (d['doughs'][0]['turns'][0].update(width_mm=200),
                                            d['doughs'][0]['turns'][0].pop('thickness_mm'))),
    ('a turn without any size', remove(*D, 'turns', 0, 'thickness_mm')),
    ('no cut', change((*D, 'cut'), None)),
    ('no lock-in', change((*D, 'lock_in'), None)),
    ('no bench', remove('bench')),
    ('no plan', change(('plan',), None)),
]


def first_error(validator, document):
    return next((f'{"/".join(map(str, e.path))}: {e.message[:200]}' for e in validator.iter_errors(document)), None)


def main(tourier, schema_path, *documents):
    tap = Tap()
    schema = json.loads(pathlib.Path(schema_path).read_text(encoding='utf-8'))
    kind = jsonschema.validators.validator_for(schema)
    kind.check_schema(schema)
    validator = kind(schema)

    tap.check('there are documents', len(documents) > 0)
    for path in documents:
        document = json.loads(pathlib.Path(path).read_text(encoding='utf-8'))
        error = first_error(validator, document)
        name = '/'.join(pathlib.Path(path).parts[-3:])
        tap.check(f'{name} is valid', error is None, error)
        read, complaint = is_read(tourier, path)
        tap.check(f'{name} is read', read, complaint)

    good = json.loads(pathlib.Path(documents[0]).read_text(encoding='utf-8'))
    with tempfile.TemporaryDirectory() as folder:
        scratch = pathlib.Path(folder) / 'changed.tourier'

        def verdicts(mutate):
            document = copy.deepcopy(good)
            mutate(document)
            scratch.write_text(json.dumps(document, ensure_ascii=False), encoding='utf-8')
            return first_error(validator, document), *is_read(tourier, scratch)

        for name, mutate, who in FAULTS:
            error, read, complaint = verdicts(mutate)
            tap.check(f'refused by the schema: {name}' if who == BOTH else f'not for the schema to see: {name}',
                      (error is not None) == (who == BOTH), error)
            tap.check(f'refused in one sentence: {name}', not read and not complaint, complaint or 'it was read')
        for name, mutate in ODDITIES:
            error, read, complaint = verdicts(mutate)
            tap.check(f'kept: {name}', error is None and read, error or complaint or 'it was not read')
    return tap.end()


if __name__ == '__main__':
    sys.exit(main(*sys.argv[1:]))
