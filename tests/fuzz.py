#!/usr/bin/python3
"""Each fuzzed target over its seeds, and over the inputs kept from defects that were found, once each."""
import glob
import os
import re
import subprocess
import sys
sys.dont_write_bytecode = True
HERE = os.path.dirname(os.path.abspath(__file__))
sys.path[:0] = [os.path.join(HERE, 'oracle'), os.path.join(HERE, 'fuzz')]
import seeds
from program import Folder, PROGRAM, TOP, finish, tested

PROGRAMS = os.path.join(os.path.dirname(PROGRAM), 'fuzz')
KEPT = os.path.join(TOP, 'tests', 'fuzz', 'kept')


def once(target):
    with Folder() as folder:
        count = seeds.fill(target, folder.path)
        paths = [folder.path]
        kept = os.path.join(KEPT, target)
        if os.path.isdir(kept):
            paths.append(kept)
            count += len(os.listdir(kept))
        done = subprocess.run([os.path.join(PROGRAMS, target + '_target'), *paths], capture_output=True, timeout=300)
        said = done.stdout.decode().splitlines()
        assert done.returncode == 0, f'status {done.returncode} at {said[-1]}\n{done.stderr.decode()[-3000:]}'
        assert said[-1] == f'{count} inputs' and count > 5, f'{count} files, {said[-1]}'


def every_target_has_a_row():
    sources = glob.glob(os.path.join(TOP, 'tests', 'fuzz', '*_target.c'))
    assert sorted(seeds.TARGETS) == sorted(os.path.basename(path)[:-len('_target.c')] for path in sources)
    assert set(os.listdir(KEPT)) <= set(seeds.TARGETS) | {'README.md'}


def dictionary():
    """In the form of both fuzzers, https://llvm.org/docs/LibFuzzer.html#dictionaries, with every keyword."""
    said = subprocess.run([os.path.join(PROGRAMS, 'dictionary')], capture_output=True, check=True).stdout.decode()
    for line in said.splitlines():
        assert re.fullmatch(r'"([ -!#-\[\]-~]|\\\\|\\"|\\x[0-9a-f]{2})+"', line), line
    with open(os.path.join(TOP, 'src', 'syntax', 'words.c'), encoding='utf-8') as file:
        words = re.findall(r'^    [WX]\("([^"]+)"', file.read(), re.M)
    assert len(words) > 80 and set(words) <= {line.strip('" ') for line in said.splitlines()}


tested('every target says what it starts from', every_target_has_a_row)
tested('the dictionary', dictionary)
for target in seeds.TARGETS:
    tested(f'{target}: seeds and kept inputs', once, target)
finish()
