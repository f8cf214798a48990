#!/usr/bin/env python3
"""Files as coaches write them (tests/corpus): `check` has no error and no warning to say, and every sheet comes out.

Advice is fine where tests/corpus/advice.txt says why a good coach lives with it: `FILE: rule: reason`. A line that no longer
holds fails too. SETWRIGHT_GOLDEN=1 rewrites the list and keeps the reasons; a new line gets a `?` and fails until somebody has
judged it.

The files with a number in front came first: no error and no warning there either, and no advice but of the rules that
tests/corpus/findings.txt lists for them (file, level, rule, count, reason). Less advice is always welcome there.
"""
import json
import os
import sys

sys.path.insert(0, __file__.rsplit('/', 1)[0] + '/oracle')
from program import TOP, finish, run, table, tested  # noqa: E402

FOLDER = os.path.join(TOP, 'tests/corpus')
ADVICE = os.path.join(FOLDER, 'advice.txt')
FINDINGS = os.path.join(FOLDER, 'findings.txt')
HEAD = '# FILE: rule: why a good coach lives with it; see tests/corpus.py\n'
names = sorted(name for name in os.listdir(FOLDER) if name.endswith('.block'))
clean_names = [name for name in names if not name[0].isdigit()]
numbered_names = [name for name in names if name[0].isdigit()]


def read(path):
    with open(path, encoding='utf-8') as file:
        return file.read()


def lines_of(path):
    return [line for line in read(path).splitlines() if line.strip() and not line.startswith('#')]


def findings(name):
    """What `check` says, as dicts; its status has to fit."""
    out, err, status = run('check', '--findings', 'json', name, cwd=FOLDER)
    said = [json.loads(line) for line in out.decode().splitlines()]
    assert status == int(any(one['level'] == 'error' for one in said)), f'status {status}: {err.decode()}'
    return said


def plain(one):
    return f"{one['level']} {one['rule']}: {one['message']}"


def advice_of(name):
    return {one['rule'] for one in findings(name) if one['level'] == 'advice'}


def reasons():
    """(file, rule): reason."""
    known = {}
    for line in lines_of(ADVICE) if os.path.exists(ADVICE) else []:
        name, rule, reason = (part.strip() for part in line.split(':', 2))
        assert (name, rule) not in known, f'twice: {line}'
        known[name, rule] = reason
    return known


def rewrite():
    known = reasons()
    with open(ADVICE, 'w', encoding='utf-8') as file:
        file.write(HEAD)
        for name in clean_names:
            for rule in sorted(advice_of(name)):
                file.write(f'{name}: {rule}: {known.get((name, rule), "?")}\n')


def only_advice(name):
    said = findings(name)
    worse = [plain(one) for one in said if one['level'] != 'advice']
    assert not worse, '\n'.join(worse)
    return said


def clean(name):
    said = only_advice(name)
    expected = {rule for file, rule in listed if file == name}
    new = [plain(one) for one in said if one['rule'] not in expected]
    assert not new, 'not in advice.txt:\n' + '\n'.join(new)
    gone = expected - {one['rule'] for one in said}
    assert not gone, f'no longer said, take it out of advice.txt: {sorted(gone)}'
    for rule in expected:
        assert len(listed[name, rule]) > 10, f'{rule} has no reason in advice.txt'


def nothing_new(name):
    own = name[:-len('.block')]
    expected = {rule for file, level, rule, _ in (line.split(maxsplit=3) for line in lines_of(FINDINGS))
                if file == own and level == 'advice'}
    new = [plain(one) for one in only_advice(name) if one['rule'] not in expected]
    assert not new, 'not in findings.txt:\n' + '\n'.join(new)


def builds(name):
    """A sheet of at least four weeks, in every format, with a page for each athlete and week."""
    out, err, status = run('build', '--format', 'csv', name, cwd=FOLDER)
    assert status == 0 and not err, err.decode()
    rows = table(out.decode())
    assert len({row['week'] for row in rows}) >= 4, 'hardly a block'
    pages = len({(row['athlete'], row['block'], row['week']) for row in rows})
    text, err, status = run('build', name, cwd=FOLDER)
    assert status == 0 and not err and text.count(b'\f') >= pages - 1, f'{pages} weeks, {text.count(bytes([12]))} form feeds'
    out, err, status = run('build', '--format', 'yaml', name, cwd=FOLDER)
    assert status == 0 and not err and out, err.decode()


def length(name):
    lines = read(os.path.join(FOLDER, name)).count('\n')
    assert 20 <= lines <= 80, f'{lines} lines'


def varied():
    """Twenty and more, of all goals and units, with every part of the language that coaches lean on."""
    texts = [read(os.path.join(FOLDER, name)) for name in clean_names]
    assert len(texts) >= 20, len(texts)
    for words, least in (('goal hypertrophy', 2), ('goal strength', 5), ('goal peak', 2), ('goal general', 4), ('units lb', 5),
                         ('season ', 4), ('meet ', 4), ('roster ', 2), ('use "std/', 10), ('group ', 4),
                         ('adjust ', 8), ('deload ', 12), ('taper ', 2), ('progression ', 1), ('scheme ', 1), ('rotate ', 1),
                         ('superset', 5), ('gym ', 12), ('avoid ', 3), ('wave ', 1), ('optional', 2), ('checks ', 1)):
        assert sum(words in text for text in texts) >= least, words


if os.environ.get('SETWRIGHT_GOLDEN'):
    rewrite()
listed = reasons()
tested('the files are of all kinds', varied)
for file_name in clean_names:
    tested(f'{file_name} is clean', clean, file_name)
    tested(f'{file_name} builds', builds, file_name)
    tested(f'{file_name} is as long as coaches write', length, file_name)
for file_name in numbered_names:
    tested(f'{file_name} has nothing new', nothing_new, file_name)
    tested(f'{file_name} builds', builds, file_name)
tested('advice.txt speaks of files that are there', lambda: [clean_names.index(name) for name, _ in listed])
finish()
