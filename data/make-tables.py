#!/usr/bin/env python3
# make-tables.py: turns the ingredient and band tables into C
#
# Copyright 2026 The Tourier authors
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Called by meson: make-tables.py INGREDIENTS COMPOSITION BANDS OUTPUT, and for
# the words that recipes are written in: make-tables.py --words INGREDIENTS
# WORDS OUTPUT. A cell that does not hold what its column promises stops the
# build with file:line; an empty cell of a composition means unknown (NaN),
# never 0.

import csv
import re
import sys

INGREDIENT_COLUMNS = [
    'id', 'name', 'role', 'is_flour', 'usda_ndb', 'allergens', 'household_g', 'plastic_low_c',
    'plastic_high_c', 'soft_c', 'liquid_c', 'proof_max_c', 'fresh_yeast_factor', 'source']
COMPOSITION_COLUMNS = [
    'ndb_no', 'description', 'water_g', 'energy_kcal', 'protein_g', 'fat_g', 'sat_fat_g', 'ash_g',
    'carbohydrate_by_diff_g', 'fibre_g', 'sugars_g', 'sodium_mg']
BAND_COLUMNS = [
    'figure', 'croissant_low', 'croissant_high', 'danish_low', 'danish_high', 'puff_low',
    'puff_high', 'source']

ROLES = ['flour', 'liquid', 'dairy', 'fat', 'egg', 'sweetener', 'salt', 'leaven', 'starter', 'other']

# In the order of TrUnit; the ones a household weight can be given for are
# those that are neither a mass nor a percentage.
UNITS = [
    'mg', 'g', 'kg', 'oz', 'lb', 'ml', 'cl', 'dl', 'l', 'tsp', 'tbsp', 'floz', 'cup', 'cup-metric',
    'egg', 'white', 'yolk', 'piece', 'stick', 'packet', 'cake', 'pinch', 'cube',
    'percent', 'percent-of-dough', 'percent-of-total']
HOUSEHOLD_UNITS = UNITS[5:23]

# In the order of TrPart.
PARTS = [
    'water_g', 'fat_g', 'protein_g', 'carbohydrate_by_diff_g', 'fibre_g', 'sugars_g', 'ash_g',
    'sodium_mg']

# In the order of TrRatio.
RATIOS = [
    'all_water_percent', 'dough_fat_percent', 'roll_in_percent_of_dough', 'salt_percent',
    'sugar_percent', 'yeast_fresh_percent', 'prefermented_flour_percent']
KINDS = ['croissant', 'danish', 'puff']

# Regulation (EU) No 1169/2011, Annex II, the cereal or nut named.
ALLERGEN = re.compile(
    r'gluten-(wheat|rye|barley|oats)|crustaceans|egg|fish|peanuts|soy|milk|'
    r'nuts-(almond|hazelnut|walnut|cashew|pecan|brazil|pistachio|macadamia)|'
    r'celery|mustard|sesame|sulphites|lupin|molluscs|unknown')

WORD_COLUMNS = ['kind', 'phrase', 'value', 'choices', 'why']
# In the order of TrWordKind.
WORD_KINDS = [
    'ingredient', 'ignore', 'number', 'unit', 'vague', 'container', 'size', 'approx', 'not-amount', 'joint',
    'extra', 'or', 'stop', 'purpose', 'stage', 'section', 'yield', 'not-piece', 'serving', 'total', 'heading',
    'column', 'dough-kind', 'laminated', 'laminate', 'rest-of', 'piece', 'region', 'tablespoon-region']

TEMPERATURES = ['plastic_low_c', 'plastic_high_c', 'soft_c', 'liquid_c', 'proof_max_c']


class BadCell(Exception):
    pass


class Row:
    """One row of a table that knows where it stands."""

    def __init__(self, path, line, cells):
        self.path, self.line, self.cells = path, line, cells

    def __getitem__(self, column):
        return self.cells[column]

    def bad(self, column, expected):
        return BadCell(f'{self.path}:{self.line}: {column}: "{self.cells[column]}": {expected}')

    def number(self, column, low, high, may_be_empty=True):
        text = self.cells[column]
        if text == '' and may_be_empty:
            return None
        if not re.fullmatch(r'-?\d+(\.\d+)?', text):
            raise self.bad(column, 'expected a number')
        if not low <= float(text) <= high:
            raise self.bad(column, f'expected {low} to {high}')
        return float(text)


def read_table(path, columns):
    rows = []
    with open(path, encoding='utf-8', newline='') as file:
        reader = csv.reader(file, strict=True)
        try:
            header = next(reader, [])
            if header != columns:
                raise BadCell(f'{path}:1: expected the columns {",".join(columns)}')
            for cells in reader:
                if len(cells) != len(columns):
                    raise BadCell(f'{path}:{reader.line_num}: {len(cells)} cells, expected {len(columns)}')
                rows.append(Row(path, reader.line_num, dict(zip(columns, cells))))
        except csv.Error as error:
            raise BadCell(f'{path}:{reader.line_num}: {error}')
        except UnicodeDecodeError as error:
            raise BadCell(f'{path}:{reader.line_num + 1}: {error}')
    if not rows:
        raise BadCell(f'{path}:1: no rows')
    return rows


def check_unique(rows, column):
    seen = {}
    for row in rows:
        if row[column] in seen:
            raise row.bad(column, f'already in line {seen[row[column]]}')
        seen[row[column]] = row.line


def read_compositions(path):
    rows = read_table(path, COMPOSITION_COLUMNS)
    check_unique(rows, 'ndb_no')
    compositions = {}
    for row in rows:
        if not re.fullmatch(r'\d{5}', row['ndb_no']):
            raise row.bad('ndb_no', 'expected five digits')
        parts = {part: row.number(part, 0, 100000 if part == 'sodium_mg' else 100) for part in PARTS}
        main = [parts[part] or 0 for part in ('water_g', 'fat_g', 'protein_g', 'carbohydrate_by_diff_g', 'ash_g')]
        # USDA's own rounding leaves up to 0.05; alcohol is in none of the columns.
        if sum(main) > 100.2:
            raise row.bad('water_g', f'the parts add up to {sum(main):.2f} g of 100 g')
        compositions[row['ndb_no']] = parts
    return compositions


def read_household(row):
    weights = {}
    for weight in filter(None, row['household_g'].split(';')):
        match = re.fullmatch(r'([a-z-]+)=(\d+(?:\.\d+)?)', weight)
        if not match or match[1] not in HOUSEHOLD_UNITS or match[1] in weights or float(match[2]) <= 0:
            raise row.bad('household_g', f'expected unit=grams with a unit of {" ".join(HOUSEHOLD_UNITS)}, each once')
        weights[match[1]] = float(match[2])
    return weights


def read_allergens(row):
    allergens = sorted(filter(None, row['allergens'].split(';')))
    for allergen in allergens:
        if not ALLERGEN.fullmatch(allergen):
            raise row.bad('allergens', f'"{allergen}" is not one of Annex II')
    return allergens


def read_temperatures(row):
    temperatures = {column: row.number(column, -40, 100) for column in TEMPERATURES}
    low, high = temperatures['plastic_low_c'], temperatures['plastic_high_c']
    if low is not None and high is not None and low >= high:
        raise row.bad('plastic_low_c', 'expected less than plastic_high_c')
    return temperatures


def find_composition(row, compositions):
    ndb = row['usda_ndb']
    if row['role'] == 'starter':
        if ndb:
            raise row.bad('usda_ndb', 'a starter is computed, expected nothing')
        return None
    if ndb not in compositions:
        raise row.bad('usda_ndb', 'not in the composition table')
    parts = dict(compositions[ndb])
    if row['id'] == 'water':
        # What is dissolved in tap water is counted as water, except the sodium.
        parts.update(water_g=100.0, ash_g=0.0)
    return parts


def describe_source(row):
    if not row['source']:
        raise row.bad('source', 'expected where the values come from')
    if row['usda_ndb']:
        return re.sub(r'^USDA SR28\b', f'USDA SR28 NDB {row["usda_ndb"]}', row['source'])
    return row['source']


def read_ingredients(path, compositions):
    rows = read_table(path, INGREDIENT_COLUMNS)
    check_unique(rows, 'id')
    ingredients = []
    for row in rows:
        if not re.fullmatch(r'[a-z]+(-[a-z]+)*', row['id']):
            raise row.bad('id', 'expected lower case words joined by hyphens')
        if not row['name']:
            raise row.bad('name', 'expected a name')
        if row['role'] not in ROLES:
            raise row.bad('role', f'expected one of {" ".join(ROLES)}')
        if row['is_flour'] not in ('0', '1') or (row['is_flour'] == '1') != (row['role'] == 'flour'):
            raise row.bad('is_flour', 'expected 1 for the role flour, else 0')
        factor = row.number('fresh_yeast_factor', 0.1, 10)
        if (factor is not None) != (row['role'] == 'leaven'):
            raise row.bad('fresh_yeast_factor', 'expected a number for a leaven and for nothing else')
        ingredients.append({
            'row': row, 'id': row['id'], 'parts': find_composition(row, compositions),
            'allergens': read_allergens(row), 'household': read_household(row),
            'temperatures': read_temperatures(row), 'factor': factor, 'source': describe_source(row)})
    compose_starters(ingredients, path)
    return ingredients


def compose_starters(ingredients, path):
    """A starter in the table stands at 100 % hydration: half flour, half water."""
    by_id = {ingredient['id']: ingredient for ingredient in ingredients}
    for needed in ('flour-bread', 'water'):
        if needed not in by_id:
            raise BadCell(f'{path}:1: {needed} is missing; starters are made of it')
    for ingredient in ingredients:
        if ingredient['parts'] is None:
            flour, water = by_id['flour-bread']['parts'], by_id['water']['parts']
            ingredient['parts'] = {
                part: None if flour[part] is None or water[part] is None else (flour[part] + water[part]) / 2
                for part in PARTS}


def read_bands(path):
    rows = read_table(path, BAND_COLUMNS)
    check_unique(rows, 'figure')
    bands = {}
    for row in rows:
        if row['figure'] not in RATIOS:
            raise row.bad('figure', f'expected one of {" ".join(RATIOS)}')
        if not row['source']:
            raise row.bad('source', 'expected where the values come from')
        ranges = []
        for kind in KINDS:
            low = row.number(f'{kind}_low', 0, 1000, False)
            high = row.number(f'{kind}_high', 0, 1000, False)
            if low > high:
                raise row.bad(f'{kind}_low', f'expected at most {kind}_high')
            ranges.append((low, high))
        bands[row['figure']] = (ranges, row['source'])
    for ratio in RATIOS:
        if ratio not in bands:
            raise BadCell(f'{path}:1: no row for {ratio}')
    return bands


def c_number(value):
    return 'NAN' if value is None else repr(value)


def c_string(text):
    return '"' + text.replace('\\', '\\\\').replace('"', '\\"') + '"'


def c_ingredient(ingredient):
    row = ingredient['row']
    fields = [
        f'.id = {c_string(row["id"])}, .base_id = {c_string(row["id"])}, .name = {c_string(row["name"])}',
        f'.role = TR_ROLE_{row["role"].upper()}, .is_flour = {"TRUE" if row["is_flour"] == "1" else "FALSE"}',
        '.per_100g = { ' + ', '.join(c_number(ingredient['parts'][part]) for part in PARTS) + ' }',
        '.household_g = { ' + ', '.join(c_number(ingredient['household'].get(unit)) for unit in UNITS) + ' }',
        '.density_g_ml = NAN, .price_per_kg = NAN',
        '.allergens = (const char *const[]) { '
        + ', '.join([c_string(allergen) for allergen in ingredient['allergens']] + ['NULL']) + ' }',
        ', '.join(f'.{column} = {c_number(ingredient["temperatures"][column])}' for column in TEMPERATURES),
        f'.fresh_yeast_factor = {c_number(ingredient["factor"])}',
        f'.source = {c_string(ingredient["source"])}',
    ]
    return '  {\n' + ''.join(f'    {field},\n' for field in fields) + '  },\n'


def c_bands(bands):
    lines = []
    for ratio in RATIOS:
        ranges, source = bands[ratio]
        cells = ', '.join(f'{{ {low!r}, {high!r}, {c_string(source)} }}' for low, high in ranges)
        lines.append(f'  {{ {cells}, {{ NAN, NAN, NULL }} }},\n')
    return ''.join(lines)


def write_tables(path, ingredients, bands):
    with open(path, 'w', encoding='utf-8') as file:
        file.write(
            '/* tables.c: written by make-tables.py from the tables in data/\n *\n'
            ' * Copyright 2026 The Tourier authors\n'
            ' * SPDX-License-Identifier: GPL-3.0-or-later\n */\n\n'
            '#include "tables.h"\n\n'
            f'G_STATIC_ASSERT (TR_N_UNITS == {len(UNITS)});\n'
            f'G_STATIC_ASSERT (TR_N_PARTS == {len(PARTS)});\n'
            f'G_STATIC_ASSERT (TR_N_RATIOS == {len(RATIOS)});\n'
            f'G_STATIC_ASSERT (TR_N_KINDS == {len(KINDS) + 1});\n\n'
            f'const guint tr_n_builtin_ingredients = {len(ingredients)};\n\n'
            'const TrIngredient tr_builtin_ingredients[] = {\n')
        file.writelines(map(c_ingredient, ingredients))
        file.write('};\n\nconst TrBand tr_bands[TR_N_RATIOS][TR_N_KINDS] = {\n')
        file.write(c_bands(bands))
        file.write('};\n')


def read_words(path, ids):
    rows = read_table(path, WORD_COLUMNS)
    seen = set()
    for row in rows:
        if row['kind'] not in WORD_KINDS:
            raise row.bad('kind', f'expected one of {" ".join(WORD_KINDS)}')
        if not re.fullmatch(r'[a-z0-9%-]+( [a-z0-9%-]+)*', row['phrase']):
            raise row.bad('phrase', 'expected lower case words without accents')
        if (row['kind'], row['phrase']) in seen:
            raise row.bad('phrase', 'given twice')
        seen.add((row['kind'], row['phrase']))
        named = [row['value'], *row['choices'].split(';')] if row['kind'] == 'ingredient' else []
        for name in filter(None, named):
            if name not in ids:
                raise row.bad('value', f'there is no ingredient {name}')
    return sorted(rows, key=lambda row: WORD_KINDS.index(row['kind']))


def write_words(path, rows):
    kinds = [row['kind'] for row in rows]
    starts = [sum(kind in WORD_KINDS[:i] for kind in kinds) for i in range(len(WORD_KINDS) + 1)]
    with open(path, 'w', encoding='utf-8') as file:
        file.write(
            '/* words-table.c: written by make-tables.py from the words in data/\n *\n'
            ' * Copyright 2026 The Tourier authors\n'
            ' * SPDX-License-Identifier: GPL-3.0-or-later\n */\n\n'
            '#include "words.h"\n\n'
            f'G_STATIC_ASSERT (TR_N_WORD_KINDS == {len(WORD_KINDS)});\n\n'
            'const guint tr_word_starts[TR_N_WORD_KINDS + 1] = { ' + ', '.join(map(str, starts)) + ' };\n\n'
            'const TrWordEntry tr_word_entries[] = {\n')
        for row in rows:
            cells = ', '.join(c_string(row[column]) for column in WORD_COLUMNS[1:])
            file.write(f'  {{ {len(row["phrase"].split())}, {cells} }},\n')
        file.write('};\n')


def main_words(ingredients_path, words_path, output_path):
    try:
        ids = {row['id'] for row in read_table(ingredients_path, INGREDIENT_COLUMNS)}
        write_words(output_path, read_words(words_path, ids))
    except (BadCell, OSError) as error:
        sys.exit(str(error))


def main(ingredients_path, composition_path, bands_path, output_path):
    try:
        ingredients = read_ingredients(ingredients_path, read_compositions(composition_path))
        write_tables(output_path, ingredients, read_bands(bands_path))
    except (BadCell, OSError) as error:
        sys.exit(str(error))


if sys.argv[1] == '--words':
    main_words(*sys.argv[2:])
else:
    main(*sys.argv[1:])
