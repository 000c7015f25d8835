#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""What somebody meets who cannot see the window or has no pointer: on every
page each control has a name, Tab comes to all of them and round again, each
picture says in words the numbers of the report, the focus is seen, and nothing
is said by colour alone.

    access.py PROGRAM TRIAL

Needs a display and a session bus. Speaks TAP; a failed step ends the run.
"""

import importlib.util
import json
import os
import pathlib
import re
import subprocess
import sys
import tempfile
import time

# What drives the program is the main job's; without gi it says so and leaves.
spec = importlib.util.spec_from_file_location('main_job', pathlib.Path(__file__).with_name('main-job.py'))
main_job = importlib.util.module_from_spec(spec)
spec.loader.exec_module(main_job)
xdo, wait, walk, Atspi, GLib = main_job.xdo, main_job.wait, main_job.walk, main_job.Atspi, main_job.GLib

CONTROLS = ('push button', 'toggle button', 'check box', 'radio button', 'text', 'entry', 'password text', 'spin button', 'slider',
            'combo box', 'switch', 'page tab', 'list item', 'menu item', 'link')
PAGES = {'formula': 'alt+2', 'turns': 'alt+3', 'sheet': 'alt+4', 'method': 'alt+5', 'total': 'alt+6', 'bench': 'alt+7',
         'log': 'alt+9'}


def has(node, state):
    return node.get_state_set().contains(state)


def is_seen(node):
    where = node.get_extents(Atspi.CoordType.WINDOW)
    return where.width > 1 and where.height > 1


def nameless(root):
    """Controls whose name is missing, or is that of their type."""
    for node in walk(root):
        name = (node.get_name() or '').strip()
        if node.get_role_name() in CONTROLS and (not name or re.fullmatch(r'(Gtk|Tr)[A-Z]\w+', name)) and is_seen(node):
            yield f'{node.get_role_name()} “{name}” in ' + ' < '.join(path_of(node))


def path_of(node):
    path = []
    parent = node.get_parent()
    while parent is not None and len(path) < 5:
        path.append(f'{parent.get_role_name()} “{parent.get_name() or ""}”')
        parent = parent.get_parent()
    return path


def visit(job, page):
    xdo('windowfocus', '--sync', job.window)
    xdo('key', PAGES[page])
    time.sleep(0.4)


def start(job):
    job.start()
    job.expect('the figures of the file')


def every_control_has_a_name(job):
    found = []
    for page in PAGES:
        visit(job, page)
        found += [f'{page}: {one}' for one in nameless(job.app)]
    xdo('key', 'F9')
    time.sleep(0.4)
    found += [f'findings: {one}' for one in nameless(job.app)]
    xdo('key', 'F9')
    for key, what in (('ctrl+comma', 'preferences'), ('ctrl+p', 'print'), ('ctrl+i', 'ingredients'), ('ctrl+r', 'recipe')):
        xdo('key', key)
        time.sleep(0.8)
        found += [f'{what}: {one}' for one in nameless(job.app)]
        xdo('key', 'Escape')
        time.sleep(0.4)
        xdo('windowfocus', '--sync', job.window)
    found = sorted(set(found))
    assert not found, f'{len(found)} without a name: ' + '; '.join(found[:12])


def pictures_say_the_figures(job):
    figures = job.report(job.expected)
    lamination, sheet = figures['lamination'], figures['sheet']
    wanted = {'turns': [f'{lamination["fat_layers"]:g} fat layers', f'{lamination["steps"][0]["rolled_mm"][0]:.0f}'],
              'sheet': [f'{sheet["length_mm"]:g}', f'{sheet["width_mm"]:.0f}'],
              'bench': ['600']}
    for page, numbers in wanted.items():
        visit(job, page)
        pictures = [node for node in walk(job.app) if node.get_role_name() == 'image' and is_seen(node)
                    and (node.get_description() or '').strip()]
        assert pictures, f'{page}: no picture is described'
        for picture in pictures:
            assert (picture.get_name() or '').strip(), f'{page}: a picture has no name'
        said = ' '.join(f'{picture.get_name()} {picture.get_description()}' for picture in pictures)
        said = said.replace('\u202f', '').replace('\u2009', '').replace('\u00a0', ' ')
        for number in numbers:
            assert number in said, f'{page}: “{number}” is not said in “{said}”'


def focused(job, candidates):
    for node in candidates:
        try:
            if has(node, Atspi.StateType.FOCUSED):
                return node
        except GLib.Error:
            pass
    return None


def grab(job):
    return subprocess.run(['import', '-window', job.window, '-depth', '8', 'rgb:-'], check=True, capture_output=True).stdout


def tab_goes_round(job):
    """Every field and handle gets the focus, the next round begins where the
    first did, and each step is seen. First of all, while no other page is there."""
    visit(job, 'turns')
    ours = [node for node in walk(job.app) if has(node, Atspi.StateType.FOCUSABLE) and is_seen(node)]
    texts = {node for node in ours if node.get_role_name() in ('text', 'slider')}
    met, first, unseen = [], None, []
    picture = grab(job)
    for _ in range(300):
        xdo('key', 'Tab')
        time.sleep(0.03)
        node = focused(job, ours)
        if node is None:
            continue
        if first is None:
            first = node
        elif node == first:
            break
        met.append(node)
        now = grab(job)
        if now == picture:
            unseen.append(node.get_name())
        picture = now
    else:
        raise AssertionError(f'Tab does not come round in 300 steps; it met {len(met)}')
    assert not unseen, f'the focus is not seen on {unseen}'
    missed = [node.get_name() for node in texts if node not in met and node != first and has(node, Atspi.StateType.SENSITIVE)
              and not node.get_name().startswith('Name of the')]
    assert not missed, f'Tab does not come to {missed}'


def findings_are_words(job):
    """Each finding is a sentence with a sign, whatever its colour."""
    xdo('key', 'F9')
    rows = wait(lambda: [node for node in walk(job.app) if node.get_role_name() == 'list item' and is_seen(node)
                         and (node.get_name() or '').endswith('.')], 'the findings')
    for row in rows:
        assert re.match(r'[A-Z][a-z ]+: .+ .+', row.get_name()), f'no word for how bad it is: “{row.get_name()}”'


def leave(job):
    xdo('windowfocus', '--sync', job.window)
    xdo('key', 'ctrl+q')
    assert job.process.wait(2 * main_job.TIMEOUT) == 0, 'it ended with an error'


STEPS = [start, tab_goes_round, every_control_has_a_name, pictures_say_the_figures, findings_are_words, leave]


def write_small(trial, folder):
    """One dough with one line a stage: Tab has the same kinds of control to go to, and fewer of them."""
    small = json.loads(pathlib.Path(trial).read_text(encoding='utf-8'))
    del small['doughs'][1:]
    for about_others in ('prediction', 'plan', 'tasting'):
        small.pop(about_others, None)
    lines = small['doughs'][0]['lines']
    stages = {line['stage']: line for line in reversed(lines)}
    salt = [line for line in lines if 'salt' in line['ingredient']]
    small['doughs'][0]['lines'] = [line for line in lines if line in stages.values() or line in salt]
    path = pathlib.Path(folder) / 'small.tourier'
    path.write_text(json.dumps(small), encoding='utf-8')
    return path


def main(program, trial):
    print(f'1..{len(STEPS)}')
    with tempfile.TemporaryDirectory(prefix='tourier-access-') as folder:
        job = main_job.Job(program, write_small(trial, folder), folder)
        try:
            return main_job.run_steps(job, STEPS)
        finally:
            job.close()


if __name__ == '__main__':
    if 'DISPLAY' not in os.environ or 'DBUS_SESSION_BUS_ADDRESS' not in os.environ:
        print('1..0 # SKIP no display or no session bus')
        sys.exit(0)
    sys.exit(main(*sys.argv[1:3]))
