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


def main(sources, output):
    types = sorted({match.groups() for path in sources.rglob('*.c')
                    for match in DEFINE.finditer(path.read_text(encoding='utf-8'))})
    assert types, f'no types in {sources}'
    text = '/* types.inc: made by list-types.py */\n'
    text += ''.join(f'GType {name}_get_type (void);\n' for _, name in types)
    text += 'static GType (*const type_getters[]) (void) = {\n'
    text += ''.join(f'  {name}_get_type,\n' for _, name in types) + '};\n'
    # Left alone when nothing changed: then nothing is built anew.
    if not output.exists() or output.read_text(encoding='utf-8') != text:
        output.write_text(text, encoding='utf-8')


if __name__ == '__main__':
    main(pathlib.Path(sys.argv[1]), pathlib.Path(sys.argv[2]))
