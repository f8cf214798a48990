#!/usr/bin/python3
"""The outputs, read back by programs that are not ours: Python's csv, sqlite3, YAML 1.1 and YAML 1.2 readers."""
import csv
import io
import os
import subprocess
import sys
import unicodedata
from decimal import Decimal
sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), 'oracle'))
import yaml
from ruamel.yaml import YAML
from facts import plain_text, same_cell, yaml_rows
from program import Folder, HEADER, TOP, build, finish, run, table, tested

ODD = ['no', '1e3', '=1+1', 'Ünsal "Ü", Jr', '@x', '-1', '2027-01-04', '~', 'null', 'yes: 1', '# not a comment', '+1',
       'a\\b', '{a}', '[1]', '*', '&a', '!t', '%', '|', '>', "it's", ' lead', 'trail ', '0x1F', '12:30:45', '.inf',
       '1_000']
ODD_NAMES = ['no', 'e3', 'null', 'y', 'on', 'true', 'Ünsal', 'week', 'max']
NUMBERS = ('week', 'seq', 'sets', 'reps_low', 'reps_high', 'rpe', 'percent', 'load', 'rest_s')


def quoted(text):
    return '"' + text.replace('\\', '\\\\').replace('"', '\\"').replace('\n', '\\n') + '"'


def odd_club():
    """Every odd text once as a title, a note and a cue; odd names wherever a name stands."""
    lines = ['units kg', 'gym g { bar 20 kg; plates 25 x 4, 20 x 2, 10 x 4, 5 x 4, 2.5 x 4 kg }']
    lifts = [f'lift-{i}' for i in range(len(ODD))]
    for lift, text in zip(lifts, ODD):
        lines.append(f'lift {lift} {{ title {quoted(text)}; cue {quoted(text)}; loads bar }}')
    lines.append('lift pull { loads bodyweight; title "Two\\nlines" }')
    for name, text in zip(ODD_NAMES, ODD):
        lines.append(f'athlete {name} {{ title {quoted(text)}; gym g; bodyweight 70 kg on 2026-12-01; '
                     f'max lift-0 100 kg; max pull bodyweight plus 20 kg on 2026-12-01 }}')
    lines += [f'block null {{ title {quoted("2027-01-04")}', f'for {", ".join(ODD_NAMES)}',
              'starts 2027-01-04; weeks 2',
              f'day no on mon {{ title {quoted("-1")}; note {quoted("=2+2")}']
    lines += [f'{lift} 3 x 5 at 40 kg note {quoted(text)}' for lift, text in zip(lifts, ODD)]
    lines += ['}', 'day 7 on wed {',
              'lift-0 top 1 x 1 at rpe 8 rest 2-3 min tempo "31X0" note "one, \\"two\\""',
              'lift-0 { 3 x 5 at 70, 70, 75% ; 1 x 3 drop 10%; 2 x 20 m at rpe 7; 2 x amrap at 40 kg at least 6 }',
              'pull 2 x 5-8 at bodyweight minus 7.5 kg note "line\\nbreak"; lift-1 2-4 x 8 at rpe 6-7 }',
              'day last { lift-0 1 x 5 at 60% } }']
    return '\n'.join(lines) + '\n'


def csv_of(text, *options):
    return build(text, *options, form='csv')


# CSV

def harmless(text):
    rows = table(csv_of(text))
    for row in rows:
        for key, cell in row.items():
            number = cell.lstrip('-').replace('.', '', 1).isdigit()
            assert number or cell[:1] not in ('=', '+', '-', '@', '\t', '\r'), f'{key}: {cell!r} runs as a formula'
    notes = {plain_text(row['note']) for row in rows}
    assert notes >= set(ODD), set(ODD) - notes


def sqlite_agrees(text):
    out = csv_of(text)
    with Folder({'plan.csv': out}) as folder:
        script = '.mode csv\n.import plan.csv plan\n.mode json\nselect * from plan;\n'
        done = subprocess.run(['sqlite3', ':memory:'], input=script, cwd=folder.path, capture_output=True, text=True)
        assert done.returncode == 0 and not done.stderr, done.stderr
    import json
    got = json.loads(done.stdout) if done.stdout.strip() else []
    assert got == table(out), 'sqlite3 reads other cells than Python does'


def line_ends(text):
    with Folder({'club.block': text}) as folder:
        lf, _, first = run('build', '--format', 'csv', 'club.block', cwd=folder.path)
        crlf, _, second = run('build', '--format', 'csv', '--crlf', 'club.block', cwd=folder.path)
    assert first == second == 0
    assert b'\r' not in lf and lf.endswith(b'\n') and crlf.endswith(b'\r\n')
    read = lambda data: list(csv.reader(io.StringIO(data.decode(), newline='')))
    one, other = read(lf), read(crlf)
    assert len(one) == len(other)
    assert [[c.replace('\r\n', '\n') for c in row] for row in other] == one
    assert crlf.count(b'\r\n') >= len(one)


def quoting(text):
    """RFC 4180: a cell with a comma, a quote or a line end is quoted, quotes are doubled; the writer agrees."""
    out = csv_of(text)
    again = io.StringIO()
    csv.writer(again, lineterminator='\n').writerows(csv.reader(io.StringIO(out, newline='')))
    assert list(csv.reader(io.StringIO(again.getvalue(), newline=''))) == list(csv.reader(io.StringIO(out,
                                                                                                      newline='')))
    assert out.split('\n')[0] == ','.join(HEADER)


# YAML

def yaml_11(text):
    return yaml.safe_load(text)


def yaml_12(text):
    reader = YAML(typ='safe', pure=True)
    reader.version = (1, 2)
    return reader.load(text)


def yaml_agrees(text, reader):
    rows = table(csv_of(text))
    items = list(yaml_rows(reader(build(text, form='yaml'))))
    assert len(rows) == len(items), f'{len(items)} sets in YAML, {len(rows)} in CSV'
    for row, item in zip(rows, items):
        assert set(item) <= set(HEADER), set(item) - set(HEADER)
        for key in HEADER:
            assert same_cell(key, row[key],
                             item.get(key)), f'{key}: CSV {row[key]!r}, YAML {item.get(key)!r}, in {row}'
        for key in ('athlete', 'block', 'day', 'lift', 'role'):
            assert isinstance(item[key], str), f'{key}: {item[key]!r} is no text'
        for key in NUMBERS:  # a number in the CSV is a number in the YAML
            if row[key].lstrip('-').replace('.', '', 1).isdigit():
                assert not isinstance(item[key], str), f'{key}: {item[key]!r} is text'


def titles(text, reader):
    tree = reader(build(text, form='yaml'))
    assert [a['title'] for a in tree['athletes']] == ODD[:len(ODD_NAMES)]
    assert [a['name'] for a in tree['athletes']] == ODD_NAMES
    block = tree['athletes'][0]['blocks'][0]
    assert (block['name'], block['title']) == ('null', '2027-01-04')
    day = block['weeks'][0]['days'][0]
    assert (day['day'], day['title']) == ('no', '-1')
    assert [w['title'] for w in day['work']] == ODD


def only_numbers_are_plain(text):
    """At the level of tokens: a plain scalar is a key or a number of the design, everything else has double quotes."""
    import re
    number = re.compile(r'-?(0|[1-9][0-9]*)(\.[0-9]*[1-9])?$')
    keys = re.compile(r'[a-z_0-9]+$')
    was_key = False
    for token in yaml.scan(build(text, form='yaml')):
        if isinstance(token, yaml.KeyToken):
            was_key = True
        elif isinstance(token, yaml.ScalarToken):
            if was_key:
                assert token.plain and keys.match(token.value), token.value
            elif token.plain:
                assert number.match(token.value), f'{token.value!r} stands bare'
            else:
                assert token.style == '"', token.value
            was_key = False


def totals_agree(text):
    """Sets and reps by lift of a week, added up again from the rows of the week."""
    tree = yaml_12(build(text, form='yaml'))
    for athlete in tree['athletes']:
        for block in athlete['blocks']:
            for week in block['weeks']:
                sets, reps = {}, {}
                for day in week['days']:
                    for work in day['work']:
                        if work['role'] == 'warm-up':
                            continue
                        name = work['lift']
                        sets[name] = sets.get(name, 0) + work.get('sets', 0)
                        low, high = work.get('reps_low', 0), work.get('reps_high', work.get('reps_low', 0))
                        if not isinstance(low, str):
                            reps[name] = reps.get(name, 0) + work.get('sets', 0) * (Decimal(low) + Decimal(high)) / 2
                told = {t['name']: t for t in week['totals']['lifts']}
                assert {n: t['sets'] for n, t in told.items()} == sets, (told, sets)
                for name, total in reps.items():
                    off = abs(Decimal(str(told[name]['reps'])) - total)
                    assert off <= Decimal(1), f'{name}: {told[name]["reps"]} reps, {total} in the rows'


# Text

def width(line):
    """Columns of a terminal: nothing for combining marks, two for wide letters."""
    return sum(0 if unicodedata.combining(c) else 2 if unicodedata.east_asian_width(c) in 'WF' else 1 for c in line)


def pages(text, athletes, weeks):
    out = build(text, form='text')
    leaves = out.split('\f')
    assert len(leaves) == athletes * weeks, f'{len(leaves)} pages, wanted {athletes * weeks}'
    assert not out.startswith('\f') and not out.endswith('\f')
    for leaf in leaves:
        assert leaf.strip(), 'an empty page'
    for line in out.replace('\f', '\n').split('\n'):
        assert width(line) <= 80, f'{width(line)} columns: {line}'
        assert line == line.rstrip(), f'spaces at the end: {line!r}'
        assert not any(ord(c) < 32 for c in line), f'a control character: {line!r}'


def long_club():
    long = 'The very long title of somebody who never could be brief about anything at all, not even in a title, '
    wide = '長い題名' * 15
    return f'''units kg
gym g {{ bar 20 kg; plates 25 x 4, 20 x 2, 10 x 4, 5 x 4, 2.5 x 4, 1.25 x 2, 0.5 x 2, 0.25 x 2 kg }}
lift squat {{ title "{long}"; cue "{long * 3}"; loads bar; kind competition }}
lift {"x" * 60} {{ cue "{"y" * 200}" }}
athlete a {{ title "{long}"; gym g; max squat 200 kg }}
athlete b {{ title "{wide}"; gym g; max squat 151.5 kg }}
block {"z" * 60} {{ title "{long * 2}"; for a, b; starts 2027-01-04; weeks 3; note "{long}"
  day {"d" * 30} on mon {{ title "{wide}"; note "{long * 2}"
    squat {{ note "{long}"; top 1 x 1 at rpe 8 rest 2-3 min tempo "31X0" note "{long}"
      9 x 12-15 at 55, 56, 57, 58, 59, 60, 61, 62, 63% each side every 90 s note "{wide}" }}
    {"x" * 60} 12 x 2+2+2+2+2+2 at rpe 7 pause 20 s note "{long}"
  }}
  adjust a {{ note "{long * 2}" }}
}}
'''


def bars_add_up(text):
    """Bar, collars and twice the discs of a side are the load; the gym has the discs."""
    have = {'25': 4, '20': 2, '10': 4, '5': 4, '2.5': 4}
    for row in table(csv_of(text)):
        if row['load'] and not row['lift'].startswith('pull'):
            side = row['per_side'].split('+') if row['per_side'] else []
            assert 20 + 2 * sum(map(Decimal, side)) == Decimal(row['load']), row
            assert all(side.count(d) * 2 <= have[d] for d in side), row


def examples_agree(reader):
    for form in ('csv', 'yaml'):
        out, err, status = run('build', '--format', form, os.path.join(TOP, 'examples'))
        assert status == 0, err.decode()
        if form == 'csv':
            rows = table(out.decode())
    items = list(yaml_rows(reader(out.decode())))
    assert len(items) == len(rows) > 100
    for row, item in zip(rows, items):
        for key in HEADER:
            assert same_cell(key, row[key], item.get(key)), f'{key}: {row[key]!r}, {item.get(key)!r}'


odd = odd_club()
tested('csv: no text cell is a formula, and each says what was written', harmless, odd)
tested('csv: sqlite3 reads the same cells', sqlite_agrees, odd)
tested('csv: line ends', line_ends, odd)
tested('csv: quoting is RFC 4180', quoting, odd)
tested('csv: bar and discs add up to the load', bars_add_up, odd)
for name, reader in (('yaml 1.1', yaml_11), ('yaml 1.2', yaml_12)):
    tested(f'{name}: every cell as in the CSV', yaml_agrees, odd, reader)
    tested(f'{name}: titles and names are texts', titles, odd, reader)
    tested(f'{name}: the examples as in the CSV', examples_agree, reader)
tested('yaml: only numbers stand bare', only_numbers_are_plain, odd)
tested("yaml: the week's totals are those of its rows", totals_agree, odd)
tested('text: pages of odd names', pages, odd, len(ODD_NAMES), 2)
tested('text: pages of long titles', pages, long_club(), 2, 3)
tested('yaml: long texts stay whole', yaml_agrees, long_club(), yaml_12)
finish()
