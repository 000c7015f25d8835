#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The main job, done in the real program as somebody with a screen reader and
a keyboard would: open a trial, type an amount, see the figures change, undo,
type it again, save, export the bench card.

    main-job.py PROGRAM TRIAL

Needs a display and a session bus. Speaks TAP; a failed step ends the run.
"""

import json
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile
import time
import warnings

try:
    import gi
    gi.require_version('Atspi', '2.0')
    from gi.repository import Atspi, GLib
except (ImportError, ValueError) as missing:
    print(f'1..0 # SKIP {missing}')
    sys.exit(0)

warnings.filterwarnings('ignore', category=DeprecationWarning)
TIMEOUT = 15


def xdo(*words):
    return subprocess.run(['xdotool', *map(str, words)], check=True, capture_output=True, text=True).stdout.split()


def wait(condition, what):
    end = time.monotonic() + TIMEOUT
    while time.monotonic() < end:
        try:
            result = condition()
            if result:
                return result
        except (GLib.Error, subprocess.CalledProcessError):
            pass                     # it went away between two calls, or is not there yet
        time.sleep(0.03)
    raise AssertionError(f'timed out: {what}')


def walk(node):
    if node is None:
        return
    yield node
    for i in range(node.get_child_count()):
        yield from walk(node.get_child_at_index(i))


def application_of(pid):
    desktop = Atspi.get_desktop(0)
    children = (desktop.get_child_at_index(i) for i in range(desktop.get_child_count()))
    return next((child for child in children if child and child.get_process_id() == pid), None)


class Job:
    def __init__(self, program, trial, folder):
        self.folder = pathlib.Path(folder)
        self.trial = self.folder / 'trial.tourier'
        self.card = self.folder / 'card.pdf'
        shutil.copy(trial, self.trial)
        environment = dict(os.environ, GSK_RENDERER='cairo', GDK_DEBUG='gl-disable', HOME=str(self.folder),
                           XDG_STATE_HOME=str(self.folder), XDG_DATA_HOME=str(self.folder),
                           XDG_CONFIG_HOME=str(self.folder), GSETTINGS_BACKEND='memory')
        environment.pop('GTK_A11Y', None)
        # Under a sanitizer: leaks of ours are looked for by the tests of the widgets;
        # what GTK and fontconfig keep is of no interest here.
        environment['ASAN_OPTIONS'] = os.environ.get('ASAN_OPTIONS', '') + ':detect_leaks=0'
        self.process = subprocess.Popen([program, str(self.trial)], env=environment)

    def start(self):
        self.app = wait(lambda: application_of(self.process.pid), 'the program on the accessibility bus')
        self.window = xdo('search', '--sync', '--onlyvisible', '--pid', self.process.pid)[-1]
        xdo('windowfocus', '--sync', self.window)

    def find(self, condition, what):
        return wait(lambda: next((node for node in walk(self.app) if condition(node)), None), what)

    def named(self, role, name):
        return self.find(lambda node: node.get_role_name() == role and node.get_name() == name, f'{role} “{name}”')

    def strip(self):
        """The line of figures at the foot: the label that says "raw"."""
        return self.find(lambda node: node.get_role_name() == 'label' and ' raw ·' in (node.get_name() or ''),
                         'the strip').get_name()

    def is_focused(self, name):
        return any(node.get_role_name() in ('text', 'entry') and (node.get_name() or '').startswith(name)
                   and node.get_state_set().contains(Atspi.StateType.FOCUSED) for node in walk(self.app))

    def saved_batch(self):
        return json.loads(self.trial.read_text(encoding='utf-8'))['doughs'][0]['batch']

    def close(self):
        if self.process.poll() is None:
            self.process.kill()
        self.process.wait()


def type_batch(job, pieces):
    """Alt+2 goes to the formula, Tab on to the field "Make"."""
    xdo('key', 'alt+2')
    for _ in range(12):
        if job.is_focused('Make'):
            break
        xdo('key', 'Tab')
        time.sleep(0.1)
    else:
        raise AssertionError('Tab does not come to the field “Make”')
    xdo('key', 'ctrl+a')
    xdo('type', '--delay', 10, pieces)


def start(job):
    job.start()


def see_figures(job):
    job.before = job.strip()
    assert job.before, 'the strip is empty'


def type_amount(job):
    type_batch(job, 31)
    wait(lambda: job.strip() != job.before, 'the strip follows the typing')


def undo(job):
    xdo('key', 'Return')
    job.find(lambda node: node.get_role_name() == 'push button' and (node.get_name() or '').startswith('Undo: '), 'what undo would undo')
    for _ in range(4):               # what was typed goes first, then the step
        if job.strip() == job.before:
            break
        xdo('key', 'ctrl+z')
        time.sleep(0.2)
    wait(lambda: job.strip() == job.before, 'the figures as they were')


def save(job):
    type_batch(job, 32)
    wait(lambda: job.strip() != job.before, 'the strip follows the typing')
    xdo('key', 'ctrl+s')
    wait(lambda: job.saved_batch() == {'by': 'pieces', 'value': 32}, 'the file has what was typed')


def export(job):
    xdo('key', 'ctrl+e')
    wait(lambda: xdo('search', '--onlyvisible', '--name', 'Export'), 'the dialog')
    dialog = xdo('search', '--onlyvisible', '--name', 'Export')[-1]
    xdo('windowfocus', '--sync', dialog)
    time.sleep(0.3)
    xdo('key', 'ctrl+a')
    xdo('type', '--delay', 5, job.card)
    xdo('key', 'Return')
    wait(lambda: job.card.exists() and job.card.read_bytes().startswith(b'%PDF-'), 'the card')


def leave(job):
    xdo('windowfocus', '--sync', job.window)
    xdo('key', 'ctrl+q')
    assert job.process.wait(2 * TIMEOUT) == 0, 'it ended with an error'
    assert job.trial.name in (job.folder / 'recently-used.xbel').read_text(encoding='utf-8'), 'the trial is not among the recent files'


STEPS = [start, see_figures, type_amount, undo, save, export, leave]


def run_steps(job, steps):
    for number, step in enumerate(steps, 1):
        try:
            step(job)
        except (AssertionError, subprocess.SubprocessError, OSError, GLib.Error) as fault:
            print(f'not ok {number} {step.__name__}\n# {fault}')
            return 1
        print(f'ok {number} {step.__name__}', flush=True)
    return 0


def main(program, trial):
    print(f'1..{len(STEPS)}')
    with tempfile.TemporaryDirectory(prefix='tourier-job-') as folder:
        job = Job(program, trial, folder)
        try:
            return run_steps(job, STEPS)
        finally:
            job.close()


if __name__ == '__main__':
    if 'DISPLAY' not in os.environ or 'DBUS_SESSION_BUS_ADDRESS' not in os.environ:
        print('1..0 # SKIP no display or no session bus')
        sys.exit(0)
    sys.exit(main(*sys.argv[1:3]))
