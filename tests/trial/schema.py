#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The reader and the JSON Schema agree, on documents with random faults.

    schema.py READ-DOCUMENTS trial.schema.json DOCUMENT...

What the schema refuses the reader refuses; what the schema takes the reader
takes, unless it says one of the few things that a schema cannot see. What was
read is written back, and that is valid too. The validator is python3-jsonschema
(Debian). Exit status 77, skipped, where that is not installed.
"""

import copy
import json
import os
import pathlib
import random
import subprocess
import sys
import tempfile

try:
    import jsonschema
except ImportError:
    print('1..0 # SKIP python3-jsonschema is not installed')
    sys.exit(77)

from tap import Tap

ROUNDS = 800

# What the schema cannot see, by what the reader says it expected.
BEYOND_SCHEMA = (
    'expected an id that nothing else here has',
    'expected the id of a dough of this trial',
    'expected the id of a taster of this trial',
    'expected the id of a built-in ingredient',
    'expected the id of an ingredient, built-in or of this trial',
    'expected a step that is not there yet',
    'expected a code that no other dough has',
    'expected one score a taster and dough',
    'expected a text of at most 200 bytes',
)

WORDS = ('', 'x', 'd1', 'd2', 't1', 'half', 'triangle', 'round', 'rectangle', 'square', 'slices', 'right-triangle',
         'fridge', 'room', 'rack', 'pieces', 'total_g', 'mix', 'bake', 'puff', 'dough', 'water', 'ü' * 99, 'y' * 201)
NUMBERS = (0, -0.0, 1, 2, 6, 7, 9, 10, 99, 99.5, 100, 999, 1000, 1001, 2.5, -1, -2, -3, 0.01, 0.009, 1e9, 1.1e9, 1e300,
           -273.15, -273.16, 3.0, 2**31, 2**53, 2**63, 2**64, 10**30)


def any_value():
    return random.choice([
        lambda: None, lambda: True, lambda: False, lambda: random.choice(WORDS), lambda: random.choice(NUMBERS),
        lambda: random.choice(NUMBERS), lambda: [], lambda: {}, lambda: [random.choice(NUMBERS), random.choice(NUMBERS)],
        lambda: [random.choice(WORDS)], lambda: {random.choice(WORDS): random.choice(NUMBERS)},
        lambda: [{}], lambda: [[1]],
    ])()


def places(value):
    """All (container, key) in a document."""
    items = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for key, inner in list(items):
        yield value, key
        yield from places(inner)


def spoil(document):
    container, key = random.choice(list(places(document)))
    what = random.randrange(6)
    if what == 0:
        del container[key]
    elif what == 1 and isinstance(container, list):
        container.insert(key, copy.deepcopy(container[key]))
    elif what == 2 and isinstance(container, dict):
        container[random.choice(('weather', 'zz', ''))] = any_value()
    elif what == 3 and isinstance(container, dict):
        # a member that the schema knows somewhere, where it may or may not belong
        container[random.choice(sorted(known_names))] = any_value()
    elif what == 4 and isinstance(container[key], (int, float)) and not isinstance(container[key], bool):
        container[key] = random.choice((-container[key], container[key] * 10, container[key] + 0.5, str(container[key])))
    else:
        container[key] = any_value()


known_names = set()


def collect_names(schema):
    if isinstance(schema, dict):
        known_names.update(schema.get('properties', ()))
        for inner in schema.values():
            collect_names(inner)


def main(reader, schema_path, *documents):
    seed = int(os.environ.get('TRIAL_SCHEMA_SEED', random.randrange(2**32)))
    random.seed(seed)
    print(f'# random seed: TRIAL_SCHEMA_SEED={seed}')
    tap = Tap()
    schema = json.loads(pathlib.Path(schema_path).read_text(encoding='utf-8'))
    kind = jsonschema.validators.validator_for(schema)
    kind.check_schema(schema)
    validator = kind(schema)
    collect_names(schema)
    good = [json.loads(pathlib.Path(path).read_text(encoding='utf-8')) for path in documents]
    for path, document in zip(documents, good):
        error = next(validator.iter_errors(document), None)
        tap.check(f'{pathlib.Path(path).name} is valid', error is None, error and error.message[:300])

    with tempfile.TemporaryDirectory() as folder:
        spoilt, paths = [], []
        for n in range(ROUNDS):
            document = copy.deepcopy(random.choice(good))
            for _ in range(random.choice((1, 1, 2))):
                spoil(document)
            spoilt.append(document)
            paths.append(pathlib.Path(folder) / f'{n}.tourier')
            paths[-1].write_text(json.dumps(document, ensure_ascii=bool(n % 2)), encoding='utf-8')
        run = subprocess.run([reader], input='\n'.join(map(str, paths)) + '\n', capture_output=True, text=True, check=True)
        answers = run.stdout.splitlines()
        tap.check('there is an answer for every document', len(answers) == ROUNDS)

        counts = {'read': 0, 'refused by both': 0, 'beyond the schema': 0}
        too_lenient, too_strict, written_wrong = [], [], []
        for document, path, answer in zip(spoilt, paths, answers):
            error = next(validator.iter_errors(document), None)
            if error is not None and answer == 'read':
                too_lenient.append(f'{list(error.path)}: {error.message[:200]}')
            elif error is not None:
                counts['refused by both'] += 1
            elif answer == 'read':
                counts['read'] += 1
                written = json.loads(pathlib.Path(f'{path}.written').read_text(encoding='utf-8'))
                again = next(validator.iter_errors(written), None)
                if again is not None:
                    written_wrong.append(f'{list(again.path)}: {again.message[:200]}')
            elif any(sentence in answer for sentence in BEYOND_SCHEMA):
                counts['beyond the schema'] += 1
            else:
                too_strict.append(answer)
        print('#', ', '.join(f'{name}: {count}' for name, count in counts.items()))
        tap.check('what the schema refuses is refused', not too_lenient, '\n'.join(too_lenient))
        tap.check('what the schema takes is read', not too_strict, '\n'.join(too_strict))
        tap.check('what was read is written valid', not written_wrong, '\n'.join(written_wrong))
        tap.check('both things happened often', min(counts['read'], counts['refused by both']) > ROUNDS / 20, counts)
    return tap.end()


if __name__ == '__main__':
    sys.exit(main(*sys.argv[1:]))
