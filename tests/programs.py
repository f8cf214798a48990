#!/usr/bin/python3
"""Programs by chance: clubs of tests/oracle with statements out of the grammar, and what has to hold for each of them.

Each statement is tried where it may stand. Whatever it says, the program must not break; if it is taken, it stays, and in
the end: the same input gives the same bytes, CSV and YAML hold the same facts, every load can be loaded in a gym of the
club, no set group has fewer than one set, and one athlete more changes nobody else's sheets. PROGRAMS=200 makes more,
FIRST=7 begins with another, SHOW=1 prints them.
"""
import os
import random
import re
import sys
from fractions import Fraction
sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), 'oracle'))
import yaml
from club import WEEKDAYS
from clubs import Maker
from facts import same_cell, yaml_rows
from program import Folder, HEADER, TOP, finish, run, table, tested, verdict
from sentences import Grammar, Sentences
from weights import Gym, KG, LB, UNIT
from written import Writer

COUNT = int(os.environ.get('PROGRAMS', 3 if os.environ.get('SETWRIGHT_VARIANT') == 'san' else 8))  # slow there
FIRST = int(os.environ.get('FIRST', 1))
TRIES = 24
FORMATS = {'csv': 'csv', 'yaml': 'yaml', 'text': 'txt'}
LOADER = getattr(yaml, 'CSafeLoader', yaml.SafeLoader)
GRAMMAR = Grammar()
# What may stand in a body, by the word that begins it; entries get clauses at their end. Gyms and lifts stay as they
# are, so that what can be loaded is known.
INSIDE = {'': ['file_part'], 'athlete': ['athlete_part', 'everywhere'], 'block': ['block_part', 'everywhere'],
          'week': ['block_part'], 'weeks': ['block_part'], 'day': ['plan_part', 'everywhere'], 'superset': ['plan_part']}
RULES = 'top-first load-jump weekly-sets impossible-set under-bar unreachable-load frequency'.split()


def pool(club):
    """Spellings that mean something in this club."""
    lifts, blocks = list(club.lifts), [block.name for block in club.blocks]
    numbers = '0 1 2 3 4 5 6 7 8 10 12 0.5 2.5 7.5 60 70 72.5 80 100 256 1000'.split()
    dates = [str(block.starts) for block in club.blocks] + ['2027-06-01', '2028-02-29']
    return {
        'NAME': [*lifts, 'new-name', 'ramp', 'spare'], 'NUMBER': numbers, 'DATE': dates, 'DID': lifts, 'RULE': RULES,
        'MEMBER': list(club.athletes), 'VAR': ['$one', '$two', '$value-0'],
        'STRING': ['"short"', '"31X0"', '"Ünsal, \\"Ü\\""', '"=1+1"', '"std/lifts.block"', '"a, b; c\\nd"'],
        'person': [*club.athletes, 'all', 'pair'], 'lift': lifts, 'label': ['A', 'B', 'C', '7'], 'lifts': lifts,
        'names': lifts, 'weekday_names': [*WEEKDAYS, 'mon, thu'], 'number_or_var': numbers * 3 + ['$one', '$two'],
        'week_item': ['1', '2', '3', '1-2', '2-3', '2-9'],
        'NAME goal': 'hypertrophy strength peak general'.split(), 'NAME model': 'epley brzycki lander wathan'.split(),
        'NAME allow': RULES, 'NAME off': RULES, 'NAME gym': ['hall', 'shed', 'third'], 'NAME kind': ['competition', 'accessory'],
        'NAME from': blocks, 'NAME progression': list(club.progressions), 'NAME warm-up': ['ramp'], 'NAME units': ['kg', 'lb'],
        'NAME on': WEEKDAYS, 'NAME run': blocks, 'NAME block': ['block-8', 'block-9'],
    }


def places(lines):
    """(index, rule): the rules whose sentences may stand before a line; 'clause': at its end."""
    found, inside = [], ['']
    for i, line in enumerate(lines):
        found += [(i, rule) for rule in INSIDE.get(inside[-1], [])]
        text = line.strip()
        if inside[-1] == 'day' and ' x ' in text and '{' not in text and not text.startswith('superset'):
            found += [(i, 'clause')] * 2
        for change in re.findall(r'^(?:adjust|taper|deload) .*\{', text):
            found += [(i, 'change')]
        if text == '}':
            inside.pop()
        elif text.endswith('{'):
            inside.append(text.split()[0])
    return found


def put(lines, place, sentence):
    i, rule = place
    if rule == 'clause':
        return [*lines[:i], f'{lines[i]} {sentence}', *lines[i + 1:]]
    if rule == 'change':
        return [*lines[:i], lines[i].replace('{', f'{{ {sentence};', 1), *lines[i + 1:]]
    return [*lines[:i], sentence, *lines[i:]]


def errors(err):
    said = err.decode()
    return '\n'.join(line for line in said.splitlines() if ': error: ' in line) or said[:2000]


def plainly(err, out, status):
    """Refused with a place and a reason, or taken; nothing else may come of a file."""
    said = err.decode()
    assert status in (0, 1, 3, 4), f'status {status}\n{said}'
    if status:
        assert re.search(r'^(club\.block:\d+:\d+|std/[\w-]+\.block:\d+:\d+): error: ', said, re.M) and not out, said


def started(seed):
    """A club that can be built; one with a set that nobody could do is left for the next."""
    while True:
        club = Maker(seed).club()
        lines = Writer(club, random.Random(seed)).text().splitlines()
        with Folder({'club.block': '\n'.join(lines) + '\n'}) as folder:
            out, err, status = run('build', '--format', 'csv', 'club.block', cwd=folder.path)
        if not status:
            return club, lines
        assert b'[impossible-set]' in err and not out, errors(err)
        seed += 10000


def grown(seed):
    """The club, its text with all statements that were taken, and how many these are."""
    club, lines = started(seed)
    r = random.Random(f'sentences {seed}')
    sentences = Sentences(GRAMMAR, r, pool(club))
    taken = 0
    with Folder() as folder:
        for _ in range(TRIES):
            place = r.choice(places(lines))
            more = put(lines, place, sentences.sentence(place[1]))
            folder.write('club.block', '\n'.join(more) + '\n')
            out, err, status = run('build', '--format', 'csv', 'club.block', cwd=folder.path)
            try:
                plainly(err, out, status)
            except AssertionError as error:
                raise AssertionError(f'{error}\n' + '\n'.join(more)) from error
            if not status and out:
                lines, taken = more, taken + 1
    return club, '\n'.join(lines) + '\n', taken


# What has to hold

def sheets(text):
    """{format: {file: bytes}} of everybody's sheets."""
    made = {}
    with Folder({'club.block': text}) as folder:
        for form in FORMATS:
            target = os.path.join(folder.path, form)
            os.mkdir(target)
            _, err, status = run('build', '--format', form, '-o', target + '/', 'club.block', cwd=folder.path)
            if status:
                raise Refused(errors(err))
            made[form] = {}
            for name in os.listdir(target):
                with open(os.path.join(target, name), 'rb') as file:
                    made[form][name] = file.read()
    return made


def facts(rows, tree):
    items = list(yaml_rows(tree))
    assert len(rows) == len(items), f'{len(items)} sets in YAML, {len(rows)} in CSV'
    for row, item in zip(rows, items):
        for key in HEADER:
            assert same_cell(key, row[key], item.get(key)), f'{key}: CSV {row[key]!r}, YAML {item.get(key)!r}, {row}'


def loading(club, lift):
    """bar, dumbbells, stack, bodyweight or free, and which bar or stack."""
    while not lift.loads and lift.like:
        lift = club.lifts[lift.like]
    return lift.loads or 'free', lift.equipment


def loadable(club, gyms, row):
    kind, equipment = loading(club, club.lifts[row['lift']])
    load = Fraction(row['load']) * UNIT[row['unit']]
    for gym in gyms:
        if gym.unit != row['unit']:
            continue
        ladder = gym.ladder(kind, equipment)
        if ladder.below(load) != load:
            continue
        if kind != 'bar' or not ladder.discs:
            return True
        side = [Fraction(disc) * UNIT[row['unit']] for disc in row['per_side'].split('+') if disc]
        if side == ladder.discs[load]:  # the fewest, then the heaviest first: by all ways of loading the bar
            return True
    return False


def rows_are_sound(club, rows):
    # Who has no gym trains with a bar and no list of discs.
    bare = [Gym('kg', 'kg', {None: 20 * KG}), Gym('lb', 'lb', {None: 45 * LB})]
    gyms = [*club.gyms.values(), *bare]
    for row in rows:
        assert not row['sets'] or int(row['sets']) >= 1, row
        if row['load'] and row['lift'] in club.lifts:
            assert loadable(club, gyms, row), f'no gym can load this: {row}'


class Refused(Exception):
    """The program says no; for a club by chance that may be right."""


def with_one_more(text, like):
    """zora, the double of an athlete, in front of everybody in every block."""
    body = re.search(rf'^athlete {like}( \{{\n.*?^\}})', text, re.M | re.S).group(1)
    text = re.sub(r'^(  for )(?!all$)', r'\1zora, ', text, flags=re.M)
    units, rest = text.split('\n', 1)
    return f'{units}\nathlete zora{body}\n{rest}'


def alone(club, text, once):
    """False where zora can be nobody's double: a block asks for what only its own people can do."""
    for like in club.athletes:
        try:
            more = sheets(with_one_more(text, like))
        except Refused as refused:
            assert all(' zora ' in line for line in str(refused).splitlines()), refused
            continue
        for form in FORMATS:
            others = {name: sheet for name, sheet in more[form].items() if not name.startswith('zora-')}
            off = [name for name in {**others, **once[form]} if others.get(name) != once[form].get(name)]
            assert not off, f'zora changes {", ".join(sorted(off))}'
            assert len(more[form]) > len(others), 'zora has no sheet'
        return True
    return False


def holds(seed):
    club, text, taken = grown(seed)
    if os.environ.get('SHOW'):
        print(text)
    try:
        once = sheets(text)
        assert sheets(text) == once, 'another time, other bytes'
        for name, sheet in once['csv'].items():
            rows = table(sheet.decode())
            rows_are_sound(club, rows)
            facts(rows, yaml.load(once['yaml'][name[:-3] + 'yaml'], LOADER))
        compared = alone(club, text, once)
    except Exception as error:
        raise AssertionError(f'{type(error).__name__}: {error}\n{text}') from error
    return taken, compared


def main():
    held = []
    for seed in range(FIRST, FIRST + COUNT):
        tested(f'program {seed}', lambda: held.append(holds(seed)))
    taken, compared = sum(taken for taken, _ in held), sum(compared for _, compared in held)
    verdict(taken * 5 > TRIES * len(held) > 0, f'of {TRIES * len(held)} statements by chance {taken} were taken')
    verdict(compared * 10 > len(held) * 8, f'zora joined {compared} of {len(held)} clubs')
    finish()


main()
