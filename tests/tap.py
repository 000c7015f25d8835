# SPDX-License-Identifier: GPL-3.0-or-later
"""Says what passed and what failed, in the Test Anything Protocol."""

import json
import subprocess


class Tap:
    def __init__(self):
        self.count = self.failed = 0

    def check(self, name, passed, detail=''):
        self.count += 1
        self.failed += not passed
        print(f'{"ok" if passed else "not ok"} {self.count} {name}')
        if not passed and detail:
            print('# ' + str(detail).replace('\n', '\n# '))

    def close_to(self, name, ours, theirs, tolerance):
        known = isinstance(ours, (int, float)) and not isinstance(ours, bool)
        self.check(name, known and abs(ours - theirs) <= tolerance, f'{ours}, not {theirs} ± {tolerance}')

    def end(self):
        print(f'1..{self.count}')
        return 1 if self.failed or not self.count else 0


def figures(tourier, document):
    """The report of a document: what the program itself prints."""
    run = subprocess.run([tourier, '--figures', document], check=True, capture_output=True)
    return json.loads(run.stdout)
