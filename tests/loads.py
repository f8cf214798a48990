#!/usr/bin/python3
"""Loads against an independent implementation: clubs by chance, what is expected worked out from their structure."""
import os
import random
import sys
sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), 'oracle'))
from clubs import Maker
from expected import Impossible, rows
from program import Folder, TOP, finish, run, table, tested, verdict
from reader import read
from written import Writer

COUNT = int(os.environ.get('CLUBS', 250))
FIRST = int(os.environ.get('FIRST', 1))


def differences(got, wanted):
    if len(got) != len(wanted):
        keys = 'athlete block week date day seq lift role sets load'.split()
        short = lambda r: ','.join(r[k] for k in keys)
        for g, w in zip(got, wanted):
            if short(g) != short(w):
                return (f'{len(got)} rows, wanted {len(wanted)}; first that differs\n'
                        f' got    {short(g)}\n wanted {short(w)}')
        return f'{len(got)} rows, wanted {len(wanted)}'
    for g, w in zip(got, wanted):
        off = [k for k in w if w[k] != 'any' and g[k] != w[k]]
        if off:
            place = ' '.join(w[k] for k in 'athlete block week day seq lift role'.split())
            return f'{place}: ' + '; '.join(f'{k} {g[k]!r}, wanted {w[k]!r}' for k in off)
    return None


def one(seed):
    maker = Maker(seed)
    club = maker.club()
    text = Writer(club, random.Random(seed)).text()
    if os.environ.get('SHOW'):
        print(text)
    impossible = None
    try:
        wanted = rows(club)
    except Impossible as error:
        impossible = error
    with Folder({'club.block': text}) as folder:
        out, err, status = run('build', '--format', 'csv', 'club.block', cwd=folder.path)
    if impossible:
        if status == 1 and b'[impossible-set]' in err and not out:
            return 'refused'
        raise AssertionError(f'{impossible} is above rpe 10; status {status}\n{err.decode()[:2000]}')
    if status:
        raise AssertionError(f'status {status}\n{err.decode()[:3000]}')
    off = differences(table(out.decode()), wanted)
    if off:
        raise AssertionError(off)
    return len(wanted)


def read_and_compare(names, folder, *arguments):
    wanted = rows(read(names, folder))
    out, err, status = run('build', '--format', 'csv', *arguments, cwd=folder)
    assert status == 0, err.decode()[:3000]
    off = differences(table(out.decode()), wanted)
    assert not off and len(wanted) > 40, off


def examples():
    """All but the season: this second reading knows blocks with dates of their own."""
    folder = os.path.join(TOP, 'examples')
    names = sorted(name for name in os.listdir(folder) if name.endswith('.block') and not name.endswith('-season.block'))
    read_and_compare(names, folder, *names)


def shipped(template, gym, maxes):
    unit = gym[-2:]
    lines = [f'units {unit}', 'use "std/gyms.block"', 'use "std/schemes.block"', f'use "std/{template}.block"',
             f'athlete ana {{ gym {gym}; bodyweight 70 {unit} on 2026-12-01'] + [f'max {m} on 2026-12-20'
                                                                                 for m in maxes]
    lines += ['}', f'block plan from {template} {{ for ana; starts 2027-01-04', 'let $row = dumbbell-row', '}']
    with Folder({'club.block': '\n'.join(lines) + '\n'}) as folder:
        read_and_compare(['club.block'], folder.path, 'club.block')


def main():
    tested('the examples', examples)
    some = {'common-kg': (['squat 141.5 kg', 'bench from 90 kg x 5 rpe 8', 'deadlift 182.5 kg'],
                          ['squat 87.5 kg', 'bench 52.5 kg', 'deadlift 105 kg', 'romanian-deadlift 80 kg']),
            'common-lb': (['squat 365 lb', 'bench 255 lb', 'deadlift from 405 lb x 3 rpe 8.5'],),
            'home-kg': (['squat 100 kg', 'bench 75 kg', 'deadlift 120 kg'],)}
    for template in ('strength', 'hypertrophy', 'peak', 'general-two-day', 'novice-three-day', 'four-day-singles', 'volume-strength',
                     'undulating-week', 'wave-loading', 'in-season-two-day'):
        for gym, lifters in some.items():
            for i, maxes in enumerate(lifters):
                tested(f'template {template}, {gym}, lifter {i + 1}', shipped, template, gym, maxes)
    count, refused = 0, 0
    for seed in range(FIRST, FIRST + COUNT):
        try:
            result = one(seed)
        except Exception as error:
            import traceback
            verdict(False, f'club {seed}', traceback.format_exc() if not isinstance(error, AssertionError) else error)
            continue
        if result == 'refused':
            refused += 1
        else:
            count += result
    verdict(count > 50 * COUNT, f'{COUNT} clubs by chance, {count} rows, {refused} refused')
    finish()


main()
