#!/usr/bin/python3
"""Lifters who are alike in a lift are planned once (src/plan/alike.h): that may change no byte of anybody's rows.

A club by chance, in which many have the same maxes, gyms and curves and many nearly the same, is built as a whole, in parts and
by several processes; each lifter's rows must be those of a build for her alone, which has nobody to take them from."""
import os
import random
import subprocess
import sys
sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), 'oracle'))
from program import Folder, PROGRAM, finish, run, tested  # noqa: E402

GYMS = '''gym hall { bar 20 kg; bar thin 15 kg; plates 25 x 8, 20 x 2, 10 x 2, 5 x 2, 2.5 x 2, 1.25 x 2 kg; stack 5 to 100 step 5 kg }
gym shed { bar 15 kg; plates 20 x 6, 10 x 2, 5 x 2 kg; round down }
gym attic { bar 45 lb; bar thin 35 lb; plates 45 x 8, 25 x 2, 10 x 4, 5 x 2, 2.5 x 2 lb }
lift squat { kind competition; loads bar }
lift bench { kind competition; loads bar thin }
lift front-squat like squat at 82.5%
lift pull-up { loads bodyweight }
lift sled
lift pulldown { loads stack }
scheme ramp { 1 x 5 at 40% then 1 x 3 at 60% }
progression fives { when made add 2%; when missed 2 times drop 10% }
'''
BLOCK = '''block winter {
  for all
  starts 2027-01-04
  weeks 6
  deload week 6 { sets to 50%; load down 10% }
  warm-up ramp for squat, bench
  day A on mon {
    squat { top 1 x 1 at rpe from 6 to 8; back-off 3 x 5 drop 12% }
    front-squat 3 x 4 at 70% cap rpe 8
    pull-up 3 x 5 at rpe 7 then 2 x 5 at bodyweight
    sled 4 x 20 m at 55% of squat note "low handles"
  }
  day B on thu {
    bench 5 x 5 at 45% progression fives
    squat 3 x 5 at 85% of day A
    pulldown 3 x 10 at 40 kg then 1 x amrap at same
  }
}
block spring { for early; starts 2027-03-01; weeks 2; day A on mon { squat 3 x 3 at rpe 8 } }
'''
OWN = ('avoid sled use pulldown', 'model lombardi', 'curve squat 6 reps at 84%', 'effort squat 8 means 7', 'let $sets = 4',
       'max squat 141 kg on 2027-01-20', 'max front-squat 100 kg', 'bodyweight 71 kg on 2027-01-25', 'max bench from 80 kg x 3 rpe 8 on 2026-12-15')


def lifter(chance, name):
    lines = [f'gym {chance.choice(("hall", "hall", "shed", "attic"))}']
    lines += [f'max squat {chance.choice((100, 102.5, 140))} kg on 2026-12-01']
    lines += [f'max bench {chance.choice((60, 61, 95.5))} kg on 2026-12-01', f'bodyweight {chance.choice((58, 70))} kg on 2026-12-01']
    lines += [chance.choice(OWN)] if chance.random() < 0.3 else []
    lines += [chance.choice(('note "bring the belt"', f'title "Lifter {name}"'))] if chance.random() < 0.1 else []
    return f'athlete {name} {{ {"; ".join(lines)} }}\n'


def club(seed, count):
    chance = random.Random(seed)
    names = [f'l{i}' for i in range(count)]
    text = 'units kg\n' + GYMS + ''.join(lifter(chance, name) for name in names) + f'group early {{ {", ".join(names[3:9])} }}\n' + BLOCK
    return names, text + 'diary l5 { 2027-01-04 A { squat 90 kg x 1 rpe 8 } }\n'


def built(folder, *more, form='csv'):
    out, err, status = run('build', '--format', form, *more, '.', cwd=folder)
    assert status == 0, err.decode()
    return out


def nobody_changes(seed):
    names, text = club(seed, 120)
    with Folder({'club.block': text}) as folder:
        whole = built(folder.path)
        head, *rows = whole.splitlines(keepends=True)
        assert len({row.split(b',')[0] for row in rows}) == len(names)
        for name in names:
            hers = b''.join(row for row in rows if row.startswith(name.encode() + b','))
            assert head + hers == built(folder.path, '--athlete', name), f'{name} is another one among others'


def pages_too(seed):
    """Sheets: the pages of each lifter, of the whole time and of a few days."""
    names, text = club(seed, 100)
    with Folder({'club.block': text}) as folder:
        for narrow in ((), ('--from', '2027-01-12', '--to', '2027-01-20')):
            pages = built(folder.path, *narrow, form='text').split(b'\f')
            alone = [built(folder.path, '--athlete', name, *narrow, form='text') for name in names]
            assert b'\f'.join(pages) == b'\f'.join(alone), 'a sheet is another one among others'
        whole = built(folder.path, form='text')
        assert built(folder.path, '--threads', '2', form='text') == whole
        assert b''.join(built(folder.path, '--part', f'{part}/3', form='text') for part in (1, 2, 3)) == whole


def shared_out(seed):
    _, text = club(seed, 400)
    with Folder({'club.block': text}) as folder:
        whole = built(folder.path)
        for count in '2', '3':
            assert built(folder.path, '--threads', count) == whole, f'{count} processes write others'
        assert b''.join(built(folder.path, '--part', f'{part}/3') for part in (1, 2, 3)) == whole
        assert b'\r\n' not in whole and built(folder.path, '--crlf').replace(b'\r\n', b'\n') == whole
        weeks = [row for row in whole.splitlines()[1:] if row.split(b',')[2] in (b'2', b'3')]
        assert built(folder.path, '--week', '2-3').splitlines()[1:] == weeks


def errors(seed):
    """One lifter's impossible set, far behind many who are alike, keeps every byte back."""
    _, text = club(seed, 400)
    text += 'athlete last { gym hall; max squat 100 kg; max bench 50 kg }\n' \
            'block odd { for l1, l2, l3, last; starts 2027-06-07; weeks 1; day A on mon { bench 1 x 8 at 95% } }\n'
    with Folder({'club.block': text}) as folder:
        for more in ((), ('--threads', '2')):
            out, err, status = run('build', '--format', 'csv', *more, '.', cwd=folder.path)
            assert (out, status) == (b'', 1) and b'impossible-set' in err, (len(out), status, err)


def goes_out_early(_):
    """Once all is known to be fine rows come out while others are still to be written: a reader who stops reading stops it."""
    _, text = club(3, 3000)
    with Folder({'club.block': text}) as folder:
        piped = subprocess.Popen([PROGRAM, 'build', '--format', 'csv', '.'], cwd=folder.path, stdout=subprocess.PIPE, stderr=subprocess.PIPE)
        assert piped.stdout.read(7) == b'athlete'
        piped.stdout.close()
        assert piped.wait(timeout=120) == 3 and piped.stderr.read() == b''


for each in (1, 2):
    tested(f'club {each}: nobody changes among others', nobody_changes, each)
    tested(f'club {each}: sheets', pages_too, each)
    tested(f'club {each}: parts, processes, weeks and line ends', shared_out, each)
tested('an error keeps all back', errors, 1)
tested('a reader who goes away', goes_out_early, 1)
finish()
