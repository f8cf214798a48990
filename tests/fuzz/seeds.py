#!/usr/bin/python3
"""What each fuzzed target starts from: files of the tree, copied into a folder when it is needed.

    seeds.py TARGET FOLDER     fills FOLDER
    seeds.py                   lists the targets

A new target is tests/fuzz/NAME_target.c and a row here.
"""
import glob
import hashlib
import os
import random
import re
import sys

TOP = os.environ.get('SETWRIGHT_SRC') or os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
sys.path.insert(0, os.path.join(TOP, 'tests', 'oracle'))
from clubs import Maker
from sentences import Grammar, Sentences
from written import Writer

MADE = 60
BLOCKS = ['examples/*.block', 'stdlib-templates/*.block', 'tests/cases/*/*.block', 'tests/cases/rules/*/*.block',
          'tests/corpus/*.block']
SHEETS = ['tests/corpus/*.csv', 'tests/cases/findings/*.csv']


def read(path):
    with open(path, 'rb') as file:
        return file.read()


def alone(paths):
    """Each file as it is."""
    return [read(path) for path in paths]


def derived(paths):
    """The files, and statements that the grammar allows, whatever they say."""
    r = random.Random(1)
    words = {'NAME': ['squat', 'ines', 'A', 'mon', 'strength'], 'NUMBER': ['1', '5', '72.5', '100'], 'VAR': ['$top'],
             'DATE': ['2027-01-04'], 'STRING': ['"text"', '"31X0"'], 'DID': ['squat'], 'RULE': ['top-first'],
             'MEMBER': ['ines'], 'person': ['ines', 'all']}
    sentences = Sentences(Grammar(), r, words)
    return alone(paths) + ['\n'.join(sentences.sentence('statement', 13) for _ in range(20)).encode()
                           for _ in range(MADE)]


def used(path, seen):
    """The files of the same folder that this one uses, and theirs."""
    for name in re.findall(rb'^\s*(?:use|roster)\s+"([\w-]+\.(?:block|csv))"', read(path), re.M):
        other = os.path.join(os.path.dirname(path), name.decode())
        if other not in seen and os.path.exists(other):
            seen.append(other)
            used(other, seen)
    return seen


def joined(paths):
    return b'\n'.join(b'# file %s\n%s' % (os.path.basename(path).encode(), read(path)) for path in paths)


def clubs(paths):
    """Each file with those it uses, in the form that compile_target.c takes apart; the examples in one; clubs by chance."""
    examples = [path for path in paths if os.path.basename(os.path.dirname(path)) == 'examples']
    made = [Writer(Maker(seed).club(), random.Random(seed)).text().encode() for seed in range(MADE)]
    return [joined(used(path, [path])) for path in paths if path not in examples] + [joined(examples)] + made


TARGETS = {  # its files, and how they become inputs
    'parser': (BLOCKS, derived),
    'compile': (BLOCKS, clubs),
    'roster': (SHEETS, alone),
    'filled': (['tests/cases/collect/*.csv'], alone),
}


def fill(target, folder):
    """Returns how many inputs there are."""
    patterns, made = TARGETS[target]
    paths = sorted(path for pattern in patterns for path in glob.glob(os.path.join(TOP, pattern)))
    inputs = {hashlib.sha1(some).hexdigest(): some for some in made(paths)}
    os.makedirs(folder, exist_ok=True)
    for name, some in inputs.items():
        with open(os.path.join(folder, name), 'wb') as file:
            file.write(some)
    return len(inputs)


if __name__ == '__main__':
    if len(sys.argv) == 1:
        print('\n'.join(TARGETS))
    else:
        fill(*sys.argv[1:])
