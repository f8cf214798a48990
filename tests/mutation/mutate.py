#!/usr/bin/python3
"""Whether the tests of the rules notice a rule that is slightly wrong: `make mutate`.

Each comparison of the rules is turned (< to <=, == to != and so on), and each limit of their table shifted, one at a time in a
copy of the tree. The rules' unit tests and tests/rules.py must fail each time. What may survive stands in equivalent.txt beside
this file, with the reason: a change that no plan can show. Exit 1 when another one survives.

usage: mutate.py [PART/PARTS]     a part of the work, to share it out
"""
import os
import re
import shutil
import subprocess
import sys
import tempfile

HERE = os.path.dirname(os.path.abspath(__file__))
TOP = os.path.dirname(os.path.dirname(HERE))
RULES = ['ask.h', 'effort.c', 'volume.c', 'calendar.c', 'meet.c', 'people.c']
TURNED = {'<=': '<', '<': '<=', '>=': '>', '>': '>=', '==': '!=', '!=': '=='}
COMPARISON = re.compile(r'(?<![-<>=!])(<=|>=|==|!=|<(?!<)|>(?!>))(?!=)')
LIMIT = re.compile(r'\b(LEAST|MOST|BAND)\((\d+(?:\.\d+)?)(?:, (\d+(?:\.\d+)?))?\)')


def spots():
    """(file, line number, start, end, new text) of each change."""
    for name in RULES:
        for number, line in enumerate(open(f'{TOP}/src/check/{name}'), 1):
            code = re.sub(r'"(?:[^"\\]|\\.)*"', lambda m: ' ' * len(m.group()), line.split('/*')[0])
            if '#include' in code or re.match(r'\s*for \(', code):
                continue
            for m in COMPARISON.finditer(code):
                yield f'src/check/{name}', number, m.start(), m.end(), TURNED[m.group()]
    for number, line in enumerate(open(f'{TOP}/src/check/rules.c'), 1):
        if line.startswith('#define'):
            continue
        for m in LIMIT.finditer(line):
            for group in (2, 3):
                if m.group(group):
                    yield 'src/check/rules.c', number, m.start(group), m.end(group), str(int(float(m.group(group))) + 1)


def changed(path, number, start, end, text):
    lines = open(path).read().split('\n')
    line = lines[number - 1]
    lines[number - 1] = line[:start] + text + line[end:]
    return '\n'.join(lines)


def noticed(copy):
    """Whether building or a test fails, or a changed loop runs for ever."""
    env = dict(os.environ, SETWRIGHT=f'{copy}/.build/release/setwright', SETWRIGHT_SRC=copy, TMPDIR=copy)
    steps = [['make', '-s', 'VARIANT=release', 'CFLAGS=-O0', 'all'] + [f'.build/release/unit/{t}' for t in units()]]
    steps += [[f'.build/release/unit/{test}'] for test in units()] + [['/usr/bin/python3', 'tests/rules.py']]
    for step in steps:
        try:
            done = subprocess.run(step, cwd=copy, env=env, timeout=120, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        except subprocess.TimeoutExpired:
            return True
        if done.returncode:
            return True
    return False


def units():
    return sorted(f[:-2] for f in os.listdir(f'{TOP}/tests/unit') if re.match(r'rules(_\w+)?_test\.c', f))


def equivalent():
    known = {}
    for line in open(f'{HERE}/equivalent.txt'):
        if line.strip() and not line.startswith('#'):
            text, reason = line.rstrip('\n').split('  # ')
            known[text.strip()] = reason
    return known


def main():
    part, parts = (int(n) for n in (sys.argv[1] if len(sys.argv) > 1 else '1/1').split('/'))
    todo = [spot for i, spot in enumerate(spots()) if i % parts == part - 1]
    known, survivors = equivalent(), 0
    with tempfile.TemporaryDirectory(prefix='setwright-mutate.') as folder:
        copy = f'{folder}/tree'
        shutil.copytree(TOP, copy, ignore=shutil.ignore_patterns('.build', '.git'))
        if noticed(copy):
            sys.exit('the tests fail as they are; mend them first')
        for path, number, start, end, text in todo:
            whole = open(f'{copy}/{path}').read()
            line = whole.split('\n')[number - 1]
            mutant = f'{path}: {(line[:start] + "[" + text + "]" + line[end:]).strip()}'
            spoiled = changed(f'{copy}/{path}', number, start, end, text)
            open(f'{copy}/{path}', 'w').write(spoiled)
            if not noticed(copy):
                excused = mutant in known
                survivors += not excused
                print(('excused   ' if excused else 'SURVIVED  ') + mutant, flush=True)
            open(f'{copy}/{path}', 'w').write(whole)
    print(f'{len(todo)} changes, {survivors} survived')
    return survivors > 0


if __name__ == '__main__':
    sys.exit(main())
