#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Makes a catalog of a language that nobody speaks: every string about 40 %
longer, with umlauts, as German would be. Directives, mnemonics and escapes
stay as they are.

    lengthen.py SOURCE-ROOT FOLDER

Writes FOLDER/de/LC_MESSAGES/tourier.mo.
"""

import pathlib
import re
import subprocess
import sys
import tempfile

# What must come through: directives, escapes, markup.
KEPT = re.compile(r'%(?:\d+\$)?[-+ #0\']*(?:\*|\d+)?(?:\.(?:\*|\d+))?(?:hh|h|ll|l|z)?[a-zA-Z%]|\\.|<[^>]*>|&\w+;')
UMLAUTS = str.maketrans('aou', 'äöü')
TAIL = 'ungsbedürfnisse'


def lengthen_word(match):
    word = match.group()
    if len(word) < 3:
        return word
    return word[:-1].translate(UMLAUTS) + word[-1] + TAIL[:round(0.4 * len(word) + 0.5)]


def lengthen(text):
    parts, start = [], 0
    for kept in KEPT.finditer(text):
        parts += [re.sub(r'[A-Za-zéèü]+', lengthen_word, text[start:kept.start()]), kept.group()]
        start = kept.end()
    return ''.join(parts) + re.sub(r'[A-Za-zéèü]+', lengthen_word, text[start:])


def translate(catalog):
    """The lines of a catalog whose translations are the originals."""
    is_header, is_translation = True, False
    for line in catalog.splitlines():
        if line.startswith('msgid'):
            is_translation = False
        elif line.startswith('msgstr'):
            is_translation = not is_header
            is_header = False
        quoted = re.match(r'^(msgstr(?:\[\d+\])? )?"(.*)"$', line)
        if is_translation and quoted:
            line = f'{quoted[1] or ""}"{lengthen(quoted[2])}"'
        yield line


def run(*command, **options):
    return subprocess.run(command, check=True, capture_output=True, text=True, encoding='utf-8', **options).stdout


def main(root, folder):
    root = pathlib.Path(root)
    sources = [line for line in (root / 'po/POTFILES.in').read_text(encoding='utf-8').split('\n') if line and line[0] != '#']
    out = pathlib.Path(folder) / 'de/LC_MESSAGES'
    out.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory() as scratch:
        template, catalog = pathlib.Path(scratch) / 'tourier.pot', pathlib.Path(scratch) / 'de.po'
        in_code = [name for name in sources if name.endswith('.c')]
        run('xgettext', '--from-code=UTF-8', '--add-comments', '--keyword=_', '--keyword=N_', '--keyword=C_:1c,2',
            '--keyword=NC_:1c,2', '--keyword=g_dngettext:2,3', '--keyword=ngettext:1,2', '-o', template, *in_code, cwd=root)
        run('xgettext', '--join-existing', '--from-code=UTF-8', '-o', template,
            *(name for name in sources if name.endswith('.ui')), cwd=root)
        text = run('msgen', '--lang=de', template)
        catalog.write_text('\n'.join(translate(text)) + '\n', encoding='utf-8')
        run('msgfmt', '--check-format', '-o', out / 'tourier.mo', catalog)


if __name__ == '__main__':
    main(*sys.argv[1:3])
