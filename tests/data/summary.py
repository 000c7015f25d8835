#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The last line of tests/run is true: summarise counts what it should.

    summary.py tests/summarise
"""

import json
import pathlib
import subprocess
import sys
import tempfile

from tap import Tap

UI = {'name': 'tourier:ui / window', 'result': 'OK', 'stdout': 'TAP version 13\n1..1\nok 1 /window\n'}


def test(result, stdout=''):
    return {'name': 'tourier:calc / x', 'result': result, 'stdout': stdout}


CASES = [
    ('passes are counted by case', [UI, test('OK', '1..2\nok 1 /a\nok 2 /b\n')], [], '3 passed, 0 failed', 0),
    ('a failed case fails', [UI, test('FAIL', '1..2\nok 1 /a\nnot ok 2 /b\n')], [], '2 passed, 1 failed', 1),
    ('a crash fails', [UI, test('ERROR', '1..2\nok 1 /a\nBail out!\n')], [], '2 passed, 1 failed', 1),
    ('a time-out fails', [UI, test('TIMEOUT')], [], '1 passed, 1 failed', 1),
    ('a plain exit status is one case', [UI, test('OK')], [], '2 passed, 0 failed', 0),
    ('a skipped case is not a pass', [UI, test('OK', '1..1\nok 1 /a # SKIP no tool\n')], [], '1 passed, 0 failed', 0),
    ('a skipped window fails', [test('OK'), {**UI, 'result': 'SKIP', 'stdout': '1..0 # SKIP no display\n'}], [],
     '1 passed, 1 failed', 1),
    ('nothing at all fails', [], [], '0 passed, 1 failed', 1),
    ('a stage that broke fails', [UI], ['--broken=it did not build'], '1 passed, 1 failed', 1),
]


def main(summarise):
    tap = Tap()
    with tempfile.TemporaryDirectory() as folder:
        log = pathlib.Path(folder) / 'testlog.json'

        def run(*arguments):
            done = subprocess.run([summarise, *arguments], capture_output=True, text=True)
            return (done.stdout.splitlines() or [''])[-1], done.returncode

        for name, tests, broken, last, status in CASES:
            log.write_text(''.join(json.dumps(t) + '\n' for t in tests), encoding='utf-8')
            said = run(*broken, '--', str(log))
            tap.check(name, said == (last, status), said)
        log.write_text(json.dumps(test('OK')) + '\n', encoding='utf-8')
        other = log.with_name('windowlog.json')
        other.write_text(json.dumps(UI) + '\n', encoding='utf-8')
        said = run('--', str(log), str(other))
        tap.check('the window may have a log of its own', said == ('2 passed, 0 failed', 0), said)
        said = run('--', str(pathlib.Path(folder) / 'nothing.json'))
        tap.check('a log that is not there fails', said == ('0 passed, 1 failed', 1), said)
        fails = {**UI, 'result': 'ERROR', 'stdout': '1..1\nnot ok 1 /window\n'}
        again = log.with_name('againlog.json')
        for name, first, second, last, names in [
                ('what passes when run again alone has passed', fails, UI, ('2 passed, 0 failed', 0), 'window'),
                ('what fails again fails once, and so nothing passed in the window', fails, fails, ('1 passed, 2 failed', 1), 'window'),
                ('what a sanitizer found is not run away', {**fails, 'stderr': 'LeakSanitizer: 8 bytes'}, UI,
                 ('2 passed, 1 failed', 1), ''),
                ('what passed is not run again', UI, UI, ('3 passed, 0 failed', 0), '')]:
            other.write_text(json.dumps(first) + '\n', encoding='utf-8')
            again.write_text(json.dumps(second) + '\n', encoding='utf-8')
            said = run('--', str(log), str(other), str(again))
            tap.check(name, said == last, said)
            said = run('--to-run-again', '--', str(other), str(log.with_name('none.json')))
            tap.check(f'{name}: it is asked for', said == (names, 0), said)
        said = run('--')
        tap.check('no log at all fails', said == ('0 passed, 1 failed', 1), said)
    return tap.end()


if __name__ == '__main__':
    sys.exit(main(*sys.argv[1:]))
