#!/usr/bin/python3
"""What each fuzzed target starts from: files of the tree, copied into a folder when it is needed.

    seeds.py TARGET FOLDER     fills FOLDER
    seeds.py                   lists the targets

A new target is tests/fuzz/NAME_target.c and a row here.
"""
import glob
import hashlib
import os
import re
import sys

TOP = os.environ.get('SETWRIGHT_SRC') or os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
BLOCKS = ['examples/*.block', 'stdlib-templates/*.block', 'tests/cases/*/*.block', 'tests/cases/rules/*/*.block',
          'tests/corpus/*.block']
SHEETS = ['tests/corpus/*.csv', 'tests/cases/findings/*.csv']


def read(path):
    with open(path, 'rb') as file:
        return file.read()


def alone(paths):
    """Each file as it is."""
    return [read(path) for path in paths]


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
    """Each file with those it uses, in the form that compile_target.c takes apart; and the examples in one."""
    examples = [path for path in paths if os.path.basename(os.path.dirname(path)) == 'examples']
    return [joined(used(path, [path])) for path in paths if path not in examples] + [joined(examples)]


TARGETS = {  # its files, and how they become inputs
    'parser': (BLOCKS, alone),
    'compile': (BLOCKS, clubs),
    'roster': (SHEETS, alone),
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
