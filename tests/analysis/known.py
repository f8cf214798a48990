#!/usr/bin/python3
"""What the analysers said, less what is known to be no mistake: known.py FILE…, for `make analyse`.

known.txt has a line for each: the source, the check, how often, and why it is none. A finding that is not there fails, and
so does a line that nobody needs any more.
"""
import collections
import os
import re
import sys

HERE = os.path.dirname(os.path.abspath(__file__))
FINDING = re.compile(r'^(?:.*/)?(src/[^:]+|<[^:]+>):(\d+):\d+: (?:warning|error): .* \[([^\[\]]+)\]$')


def known():
    """{(source, check): [how often]}"""
    found = {}
    with open(os.path.join(HERE, 'known.txt'), encoding='utf-8') as file:
        for line in file:
            if line.strip() and not line.startswith('#'):
                source, check, count, _ = line.split(None, 3)
                found[source, check] = int(count)
    return found


def said(paths):
    found = collections.defaultdict(set)
    for path in paths:
        with open(path, encoding='utf-8') as file:
            for line in file:
                match = FINDING.match(line.strip())
                if match:
                    found[match.group(1), match.group(3)].add((int(match.group(2)), line.strip()))
    return found


def main(paths):
    expected, found, failed = known(), said(paths), 0
    for key in sorted({*expected, *found}):
        lines = sorted(found.get(key, ()))
        if len({line for line, _ in lines}) == expected.get(key, 0):
            continue
        failed += 1
        print(f'{key[0]} {key[1]}: {len(lines)} times, {expected.get(key, 0)} in tests/analysis/known.txt')
        print(''.join(f'    {text}\n' for _, text in lines), end='')
    print(f'{len(paths)} reports, {len(expected)} known findings, {failed} that differ')
    return failed > 0 or not paths


if __name__ == '__main__':
    sys.exit(main(sys.argv[1:]))
