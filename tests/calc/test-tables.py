#!/usr/bin/env python3
# test-tables.py: a bad cell stops the build and says where
#
# Copyright 2026 The Tourier authors
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Called as test-tables.py GENERATOR DATA. Each case spoils one place of a copy
# of the tables; the generator must fail and name file and line, and write
# nothing.

import pathlib
import shutil
import subprocess
import sys
import tempfile

generator, data = sys.argv[1:]
TABLES = ['ingredients.csv', 'composition.csv', 'bands.csv']

# (what, table, old, new, expected in the message after the table's name)
CASES = [
    ('a number that is none', 'composition.csv', '01145,"Butter, without salt",17.94', '01145,"Butter, without salt",17x', ':3: water_g: "17x"'),
    ('a number with a decimal comma', 'composition.csv', '19296,Honey,17.10,', '19296,Honey,"17,10",', ':18: water_g: "17,10"'),
    ('a part out of range', 'composition.csv', '04002,Lard,0.00,902,0.00,100.00', '04002,Lard,0.00,902,0.00,100.01', ':40: fat_g: "100.01"'),
    ('parts over 100 g', 'composition.csv', '19296,Honey,17.10,', '19296,Honey,18.10,', ':18: water_g: "18.10": the parts add up to 101.00 g'),
    ('a number twice', 'composition.csv', '01145,"Butter, without', '01001,"Butter, without', ':3: ndb_no: "01001": already in line 2'),
    ('a cell too many', 'composition.csv', '19296,Honey,', '19296,Honey,,', ':18: 13 cells, expected 12'),
    ('an open quote', 'composition.csv', '01145,"Butter, without salt",', '01145,"Butter, without salt,', ':'),
    ('a role that is none', 'ingredients.csv', 'flour-cake,Cake flour,flour,1', 'flour-cake,Cake flour,powder,1', ':4: role: "powder"'),
    ('a flour that is no flour', 'ingredients.csv', 'flour-cake,Cake flour,flour,1', 'flour-cake,Cake flour,flour,0', ':4: is_flour: "0"'),
    ('an id twice', 'ingredients.csv', 'flour-cake,', 'flour-plain,', ':4: id: "flour-plain": already in line 3'),
    ('an id with a space', 'ingredients.csv', 'flour-cake,', 'flour cake,', ':4: id: "flour cake"'),
    ('an unknown unit', 'ingredients.csv', 'cup=200;tsp=4.2;cube=2.3', 'cup=200;spoon=4.2', ':35: household_g: "cup=200;spoon=4.2"'),
    ('a unit twice', 'ingredients.csv', 'cup=200;tsp=4.2;cube=2.3', 'cup=200;cup=210', ':35: household_g: "cup=200;cup=210"'),
    ('a weight of nothing', 'ingredients.csv', 'cup=200;tsp=4.2;cube=2.3', 'cup=0', ':35: household_g: "cup=0"'),
    ('an allergen that is none', 'ingredients.csv', '16120,soy,', '16120,soya,', ':21: allergens: "soya"'),
    ('a food that is not there', 'ingredients.csv', ',19296,', ',19297,', ':38: usda_ndb: "19297": not in the composition table'),
    ('a temperature upside down', 'ingredients.csv', ',15,35,30,40,36,', ',35,15,30,40,36,', ':29: plastic_low_c: "35"'),
    ('a leaven without a factor', 'ingredients.csv', 'cake=17,,,,,,1,', 'cake=17,,,,,,,', ':43: fresh_yeast_factor: ""'),
    ('no source', 'ingredients.csv', 'cup=120;tbsp=8;tsp=2.5,,,,,,,USDA SR28', 'cup=120;tbsp=8;tsp=2.5,,,,,,,', ':37: source: ""'),
    ('no water', 'ingredients.csv', '\nwater,', '\nwaters,', ':1: water is missing'),
    ('another header', 'ingredients.csv', 'id,name,', 'id,title,', ':1: expected the columns'),
    ('a band upside down', 'bands.csv', 'salt_percent,1.6,2.4', 'salt_percent,2.6,2.4', ':5: croissant_low: "2.6"'),
    ('an empty band', 'bands.csv', 'salt_percent,1.6,2.4', 'salt_percent,,2.4', ':5: croissant_low: ""'),
    ('a figure that is none', 'bands.csv', 'salt_percent,', 'salt,', ':5: figure: "salt"'),
]


def run(folder):
    output = folder / 'tables.c'
    arguments = [sys.executable, generator, *(folder / table for table in TABLES), output]
    result = subprocess.run(arguments, capture_output=True, text=True)
    return result, output


def spoil(case, folder):
    what, table, old, new, expected = case
    for name in TABLES:
        shutil.copy(pathlib.Path(data) / name, folder)
    text = (folder / table).read_text(encoding='utf-8')
    if text.count(old) != 1:
        return f'"{old}" is not in {table} once'
    (folder / table).write_text(text.replace(old, new), encoding='utf-8')
    result, output = run(folder)
    if result.returncode == 0 or output.exists():
        return 'went through'
    if table + expected not in result.stderr or 'Traceback' in result.stderr:
        return f'said: {result.stderr.strip()}'
    return None


def check_good(folder):
    for name in TABLES:
        shutil.copy(pathlib.Path(data) / name, folder)
    result, output = run(folder)
    if result.returncode != 0:
        return result.stderr.strip()
    return None if '"butter-unsalted"' in output.read_text(encoding='utf-8') else 'no butter in the output'


def report(number, name, fault):
    print('ok' if fault is None else 'not ok', number, name)
    if fault is not None:
        print('#', fault.replace('\n', ' '))
    return fault is None


print(f'1..{len(CASES) + 1}')
with tempfile.TemporaryDirectory() as folder:
    good = report(1, 'the tables as they are go through', check_good(pathlib.Path(folder)))
for number, case in enumerate(CASES, 2):
    with tempfile.TemporaryDirectory() as folder:
        good = report(number, f'{case[0]} stops the build', spoil(case, pathlib.Path(folder))) and good
sys.exit(0 if good else 1)
