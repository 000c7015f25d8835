#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The main job, done in the real program as somebody with a screen reader, a
keyboard and a pointer would: open a trial, type an amount, drag the hydration,
add a turn, change the cut, undo to what is saved, do it all again, save, open
it anew, make the bench card. What the window says is held after each step to
what the command line reports of a trial changed in the same way.

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
FRAME = 5
HYDRATION = 'Hydration, all water'


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


def centre(node):
    """AT-SPI's places leave out the frame that GTK draws without a compositor."""
    where = node.get_extents(Atspi.CoordType.WINDOW)
    return where.x + where.width // 2 + FRAME, where.y + where.height // 2 + FRAME


def is_focused(node):
    return node.get_state_set().contains(Atspi.StateType.FOCUSED)


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
        self.program, self.environment = program, environment
        # As it should be by now: changed here as it is changed there.
        self.expected = json.loads(self.trial.read_text(encoding='utf-8'))
        self.launch()

    def launch(self):
        self.foot = None                 # found once: walking the tree is what takes the time
        self.process = subprocess.Popen([self.program, str(self.trial)], env=self.environment)

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
        if self.foot is None:
            self.foot = self.find(lambda node: node.get_role_name() == 'label' and ' raw ·' in (node.get_name() or ''),
                                  'the strip')
        return self.foot.get_name()

    def report(self, trial):
        """What the command line says of the first dough of that trial."""
        said = subprocess.run([self.program, '--figures', '-'], input=json.dumps(trial), env=self.environment,
                              capture_output=True, text=True, encoding='utf-8', check=True).stdout
        return json.loads(said)['doughs'][0]

    def says(self, figures):
        """The strip and the list of doughs say these figures."""
        piece, sheet, lamination = figures['piece'], figures['sheet'], figures['lamination']
        words = [f'{piece["count"]:g} × {piece["raw_mass_g"]:.0f} g raw', f'butter {piece["added_fat_g"]:.1f} g',
                 f'salt {piece["salt_g"]:.1f} g', f'{sheet["length_mm"]:g} × {sheet["width_mm"]:.0f} × {sheet["thickness_mm"]:g} mm']
        strip = self.strip().replace('\u202f', '').replace('\u2009', '').replace('\u00a0', ' ')
        if not all(word in strip for word in words):
            return False
        return any(node.get_role_name() == 'list item' and f'{lamination["fat_layers"]:g} fat layers' in (node.get_name() or '')
                   for node in walk(self.app))

    def expect(self, what):
        figures = self.report(self.expected)
        try:
            wait(lambda: self.says(figures), what)
        except AssertionError as late:
            raise AssertionError(f'{late}: the strip says “{self.strip()}”, the report {figures["piece"]}') from late

    def value_of(self, name):
        return Atspi.Value.get_current_value(self.named('slider', name))

    def title(self):
        return self.find(lambda node: node.get_role_name() == 'frame', 'the window').get_name()

    def saved_batch(self):
        return json.loads(self.trial.read_text(encoding='utf-8'))['doughs'][0]['batch']

    def close(self):
        if self.process.poll() is None:
            self.process.kill()
        self.process.wait()


def type_batch(job, pieces):
    """Alt+2 goes to the formula, Tab on to the field "Make"."""
    field = job.find(lambda node: node.get_role_name() in ('text', 'entry') and (node.get_name() or '').startswith('Make'), 'the field “Make”')
    xdo('key', 'alt+2')
    for _ in range(12):
        if is_focused(field):
            break
        xdo('key', 'Tab')
        time.sleep(0.1)
    else:
        raise AssertionError('Tab does not come to the field “Make”')
    xdo('key', 'ctrl+a')
    xdo('type', '--delay', 10, pieces)


def start(job):
    job.start()
    job.expect('the figures of the file')
    job.before = job.strip()


def type_amount(job):
    type_batch(job, 31)
    xdo('key', 'Return')
    job.expected['doughs'][0]['batch'] = {'by': 'pieces', 'value': 31}
    job.expect('the figures follow the typing')


def drag_hydration(job):
    """With the pointer; the value is then whatever it was let go at."""
    job.hydration = job.value_of(HYDRATION)
    assert abs(job.hydration - job.report(job.expected)['formula']['all_water_percent']) < 0.05, job.hydration
    scale = job.named('slider', HYDRATION)
    # Focus brings it into view.
    for _ in range(120):
        if is_focused(scale):
            break
        xdo('key', 'Tab')
        time.sleep(0.03)
    else:
        raise AssertionError('Tab does not come to the hydration')
    time.sleep(0.3)
    where = scale.get_extents(Atspi.CoordType.WINDOW)
    least, most = Atspi.Value.get_minimum_value(scale), Atspi.Value.get_maximum_value(scale)
    x = round(where.x + FRAME + 12 + (job.hydration - least) / (most - least) * (where.width - 24))
    y = where.y + FRAME + where.height // 2
    xdo('mousemove', '--window', job.window, x, y, 'mousedown', 1)
    for step in range(1, 9):
        xdo('mousemove', '--window', job.window, x + 6 * step, y)
        time.sleep(0.03)
    time.sleep(0.1)
    xdo('mouseup', 1)
    wait(lambda: job.value_of(HYDRATION) > job.hydration + 1, 'the hydration follows the pointer')
    wait(lambda: job.strip() != job.before, 'the strip follows the pointer')
    job.dragged = job.value_of(HYDRATION)


def add_turn(job):
    layers = job.report(job.expected)['lamination']['fat_layers']
    xdo('key', 'alt+3')
    job.named('push button', 'Add a turn').do_action(0)
    wait(lambda: any(node.get_role_name() == 'list item' and 'fat layers' in (node.get_name() or '')
                     and f', {layers:g} fat' not in node.get_name() for node in list(walk(job.app))
                     if (node.get_name() or '').startswith(job.expected['doughs'][0]['name'])), 'more fat layers')


def change_cut(job):
    xdo('key', 'alt+4')
    base = job.find(lambda node: node.get_role_name() == 'text' and node.get_name() == 'Base', 'the field “Base”')
    before = job.strip()
    xdo('mousemove', '--window', job.window, *centre(base), 'mousedown', 1, 'sleep', 0.1, 'mouseup', 1)
    time.sleep(0.2)
    xdo('key', 'ctrl+a')
    xdo('type', '--delay', 10, '84')
    xdo('key', 'Return')
    wait(lambda: job.strip() != before, 'the sheet follows the cut')
    job.changed = job.strip()


def undo_to_saved(job):
    for _ in range(24):
        if not job.title().startswith('•'):
            break
        xdo('key', 'ctrl+z')
        time.sleep(0.15)
    assert not job.title().startswith('•'), job.title()
    assert job.strip() == job.before, f'“{job.strip()}” is not “{job.before}”'


def save(job):
    """Everything again, and what is in the file is what was on screen."""
    for _ in range(24):
        if job.strip() == job.changed:
            break
        xdo('key', 'ctrl+shift+z')
        time.sleep(0.15)
    xdo('key', 'ctrl+s')
    wait(lambda: job.saved_batch() == {'by': 'pieces', 'value': 31}, 'the file has what was typed')
    saved = json.loads(job.trial.read_text(encoding='utf-8'))
    turns = len(job.expected['doughs'][0]['turns'])
    assert len(saved['doughs'][0]['turns']) == turns + 1, 'one turn more'
    assert saved['doughs'][0]['cut']['base_mm'] == 84, saved['doughs'][0]['cut']
    job.expected = saved
    hydration = job.report(saved)['formula']['all_water_percent']
    assert abs(hydration - job.dragged) < 0.2, f'{hydration} in the file, {job.dragged} on the scale'
    job.expect('the window says what the file does')


def reopen(job):
    xdo('key', 'ctrl+q')
    assert job.process.wait(2 * TIMEOUT) == 0, 'it ended with an error'
    job.launch()
    job.start()
    job.expect('the figures of what was saved')
    assert job.strip() == job.changed


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


STEPS = [start, type_amount, drag_hydration, add_turn, change_cut, undo_to_saved, save, reopen, export, leave]


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
