#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Writes a C table of every GObject type that the sources define, so that the
contract test cannot forget one.

    list-types.py SOURCE-FOLDER OUTPUT
"""

import pathlib
import re
import sys

DEFINE = re.compile(r'^G_DEFINE_(?:FINAL_|ABSTRACT_)?TYPE\w*\s*\(\s*(\w+)\s*,\s*(\w+)\s*,', re.MULTILINE)


USED = re.compile(r'\b(tr_\w+)_get_type\b')


def main(sources, output):
    texts = [path.read_text(encoding='utf-8') for path in sorted(sources.rglob('*.[ch]'))]
    types = sorted({match.groups() for text in texts for match in DEFINE.finditer(text)})
    assert types, f'no types in {sources}'
    # A type that is made in a way this does not know is said, not left out.
    left_out = {name for text in texts for name in USED.findall(text)} - {name for _, name in types}
    assert not left_out, f'types that are not found: {", ".join(sorted(left_out))}'
    text = '/* types.inc: made by list-types.py */\n'
    text += ''.join(f'GType {name}_get_type (void);\n' for _, name in types)
    text += 'static GType (*const type_getters[]) (void) = {\n'
    text += ''.join(f'  {name}_get_type,\n' for _, name in types) + '};\n'
    # Left alone when nothing changed: then nothing is built anew.
    if not output.exists() or output.read_text(encoding='utf-8') != text:
        output.write_text(text, encoding='utf-8')


if __name__ == '__main__':
    main(pathlib.Path(sys.argv[1]), pathlib.Path(sys.argv[2]))
