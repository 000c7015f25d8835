#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Bench cards through the printer's own dialog, as a reader would with the
keyboard and the mouse: Print…, all doughs, the preview, "Print to File", and
what comes out is what was asked for. The settings are remembered.

    print-to-file.py PROGRAM TRIAL

Needs a display and a session bus. Speaks TAP; a failed step ends the run.
"""

import importlib.util
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile
import time

# What drives the program is the main job's; without gi it says so and leaves.
spec = importlib.util.spec_from_file_location('main_job', pathlib.Path(__file__).with_name('main-job.py'))
main_job = importlib.util.module_from_spec(spec)
spec.loader.exec_module(main_job)
xdo, wait = main_job.xdo, main_job.wait


def window_of(name):
    """The X window whose title begins with that, focused."""
    def focus():
        window = xdo('search', '--onlyvisible', '--name', f'^{name}')[-1]
        xdo('windowfocus', '--sync', window)
        return window

    window = wait(focus, f'the window “{name}”')
    time.sleep(0.3)
    return window


def click(window, node):
    xdo('mousemove', '--window', window, *main_job.centre(node), 'mousedown', 1, 'sleep', 0.1, 'mouseup', 1)


def is_sensitive(node):
    return node.get_state_set().contains(main_job.Atspi.StateType.SENSITIVE)


def pdf_info(path):
    lines = subprocess.run(['pdfinfo', path], check=True, capture_output=True, text=True).stdout.splitlines()
    return {key.strip(): value.strip() for key, _, value in (line.partition(':') for line in lines)}


def start(job):
    job.start()
    job.strip()


def choose(job):
    xdo('key', 'ctrl+p')
    window_of('Print bench cards')
    xdo('key', 'alt+a')
    job.named('label', '4 pages')


def preview(job):
    xdo('key', 'alt+v')
    window_of('Preview of')
    job.named('label', 'Page 1 of 4')
    pages = [node for node in main_job.walk(job.app) if (node.get_name() or '').startswith('Page ')
             and node.get_role_name() == 'image']
    assert len(pages) == 4, f'{len(pages)} pages in the preview'
    for _ in range(2):               # the first key may come before the focus
        xdo('key', 'Next')
        time.sleep(0.3)
    job.find(lambda node: node.get_role_name() == 'label' and node.get_name() in ('Page 2 of 4', 'Page 3 of 4'), 'another page')


def print_to_file(job):
    xdo('key', 'ctrl+p')
    dialog = window_of('Print')
    row = job.find(lambda node: node.get_name() == 'Print to File', 'the printer “Print to File”')
    click(dialog, row)
    button = job.find(lambda node: node.get_role_name() == 'push button' and (node.get_name() or '').endswith('Print')
                      and is_sensitive(node), 'the button “Print”')
    click(dialog, button)
    job.printed = job.folder / 'output.pdf'
    wait(lambda: job.printed.exists() and job.printed.read_bytes().rstrip().endswith(b'%%EOF'), 'what was printed')
    info = pdf_info(job.printed)
    assert info['Pages'] == '4', info
    assert info['Page size'].startswith('595.276 x 841.89'), info


def remember(job):
    settings = job.folder / 'tourier' / 'print-settings.ini'
    wait(settings.exists, 'the printer settings')
    assert 'Print to File' in settings.read_text(encoding='utf-8')
    assert 'PPDName=A4' in (job.folder / 'tourier' / 'page-setup.ini').read_text(encoding='utf-8') \
        or 'iso_a4' in (job.folder / 'tourier' / 'page-setup.ini').read_text(encoding='utf-8')


def leave(job):
    xdo('windowfocus', '--sync', job.window)
    xdo('key', 'ctrl+q')
    assert job.process.wait(2 * main_job.TIMEOUT) == 0, 'it ended with an error'


STEPS = [start, choose, preview, print_to_file, remember, leave]


def main(program, trial):
    print(f'1..{len(STEPS)}')
    with tempfile.TemporaryDirectory(prefix='tourier-print-') as folder:
        program, trial = map(os.path.abspath, (program, trial))
        # What is printed to a file lands where the program was started.
        os.chdir(folder)
        job = main_job.Job(program, trial, folder)
        try:
            return main_job.run_steps(job, STEPS)
        finally:
            job.close()
            os.chdir('/')


if __name__ == '__main__':
    if 'DISPLAY' not in os.environ or 'DBUS_SESSION_BUS_ADDRESS' not in os.environ:
        print('1..0 # SKIP no display or no session bus')
        sys.exit(0)
    if shutil.which('pdfinfo') is None:
        print('1..0 # SKIP pdfinfo is not installed')
        sys.exit(0)
    sys.exit(main(*sys.argv[1:3]))
