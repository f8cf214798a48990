#!/usr/bin/python3
"""Lifters of a plain roster whom only `all` means are made one by one when they are planned (src/model/rosters.c): that may change
neither a byte of what is built nor a word of what is said.

A quote in the first row says the same and makes a roster that is read at once, for everybody. Clubs by chance are built and
checked both ways."""
import os
import random
import sys
sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), 'oracle'))
from program import Folder, finish, run, tested  # noqa: E402

CLUB = '''units kg
roster "athletes.csv"
gym hall { bar 20 kg; plates 25 x 8, 20 x 2, 10 x 2, 5 x 2, 2.5 x 2, 1.25 x 2 kg; stack 5 to 100 step 5 kg }
gym attic { bar 45 lb; plates 45 x 8, 25 x 2, 10 x 4, 5 x 2, 2.5 x 2 lb }
lift squat { kind competition; loads bar; works quads }
lift bench { kind competition; loads bar; works chest }
lift pull-up { loads bodyweight }
lift pulldown { loads stack }
athlete ola { gym hall; max squat 120 kg; max bench 80 kg; bodyweight 80 kg; avoid pulldown use pull-up }
athlete pim { gym attic; max squat 300 lb; max bench 200 lb; bodyweight 90 kg; let $sets = 4 }
block early { for pim; starts 2026-11-30; weeks 2; day A on mon { squat 2 x 5 at 60% } }
block winter {
  for all
  starts 2027-01-04
  weeks 6
  deload week 6 { sets to 50%; load down 10% }
  adjust ola in week 1 { note "cold hall: warm up longer" }
  let $sets = 3
  day A on mon { squat { top 1 x 1 at rpe from 6 to 8; back-off $sets x 5 drop 12% }; pull-up 3 x 5 at rpe 7; pulldown 2 x 10 at 40 kg }
  day B on thu { bench 4 x 5 at 50%; squat 3 x 5 at 85% of day A }
}
block winter-two { for all; starts 2027-02-15; weeks 2; day A on mon { bench 3 x 5 at rpe 8 } }
'''
WAYS = (('check', '.'), ('check', '--findings', 'json', '.'), ('build', '--format', 'csv', '.'), ('build', '--format', 'text', '.'),
        ('build', '--format', 'yaml', '.'), ('build', '--format', 'csv', '--threads', '2', '.'), ('build', '--format', 'csv', '--part', '2/3', '.'),
        ('build', '--format', 'text', '--part', '3/3', '--threads', '2', '.'), ('build', '--format', 'csv', '--week', '2', '.'),
        ('build', '--format', 'csv', '--block', 'winter-two', '--part', '1/2', '.'), ('build', '--format', 'csv', '--athlete', 'l7', '.'),
        ('build', '--format', 'csv', '--athlete', 'l99999', '.'), ('build', '--sheet', 'coach', '--week', '1', '.'), ('calendar', '.'))


def rows(chance, count, strange):
    for i in range(count):
        name, gym = f'l{i}', chance.choice(('hall', 'hall', 'attic', ''))
        title = chance.choice(('', '', f'Lifter {i}', f'Élan {i}'))
        lines = [('squat', chance.choice((100, 102.5, 140, 98.75)), ''), ('bench', chance.choice((60, 61, 95)), '')]
        if chance.random() < 0.2:
            lines.append(('squat', chance.choice((80, 90)), f'{chance.randint(1, 8)},{chance.choice((7, 7.5, 8, 10))}'))
        if strange and chance.random() < 0.05:
            lines = lines[1:]  # no max for the squat
        if strange and chance.random() < 0.05:
            lines[0] = ('squat', 22, '')  # the bar is too heavy
        for lift, load, done in lines:
            yield f'{name},{title},{gym},{chance.choice((58, 70, 81.5))},{lift},{load},{chance.choice(("", "kg"))},{done or ","},2026-12-0{chance.randint(1, 5)}\n'


def both_ways(chance, count, strange, ways, more=''):
    head, body = 'athlete,title,gym,bodyweight,lift,max,unit,reps,rpe,date\n', ''.join(rows(chance, count, strange))
    with Folder({'club.block': CLUB + more, 'athletes.csv': head + body}) as plain, \
            Folder({'club.block': CLUB + more, 'athletes.csv': '"athlete"' + head[7:] + body}) as quoted:
        return [(way, run(*way, cwd=plain.path), run(*way, cwd=quoted.path)) for way in ways]


def nobody_notices(seed):
    chance = random.Random(seed)
    for way, waiting, at_once in both_ways(chance, 150, seed % 2 == 0, WAYS):
        assert waiting == at_once, f'{" ".join(way)}: {waiting[1:]} and not {at_once[1:]}'
        fine = waiting[2] == (2 if 'l99999' in way else 0)
        assert fine if seed % 2 else waiting[2] < 3, f'{" ".join(way)}: {waiting[2]} {waiting[1].decode()}'
        assert not fine or way[0] == 'check' or waiting[2] or len(waiting[0]) > 2000, way


def a_lifter_for_a_lift(_):
    """A name that stands where a lift is wanted is told to be an athlete's, whether she waits or not."""
    more = 'block odd { for all; starts 2027-06-07; weeks 1; day A on mon { l7 3 x 5 at rpe 7 } }\n'
    for way, waiting, at_once in both_ways(random.Random(6), 20, False, (('check', '.'),), more):
        assert waiting == at_once and b'l7 is the name of an athlete' in waiting[1], (way, waiting, at_once)


def findings_name_them(_):
    """The eight who are named first and how many there are, of lifters who are gone when it is said."""
    more = 'block odd { for all; starts 2027-06-07; weeks 1; day A on mon { bench 1 x 12 at 97% } }\n'
    for way, waiting, at_once in both_ways(random.Random(5), 300, True, (('check', '.'), ('build', '--format', 'csv', '.')), more):
        assert waiting == at_once and waiting[2] == 1 and b'impossible-set' in waiting[1], (way, waiting[1:], at_once[1:])
        assert b'l0, l1, l2, l3, l4' in waiting[1] or b'302' in waiting[1] or b'more' in waiting[1], waiting[1]


for each in range(1, 5):
    tested(f'club {each}: built and checked in both ways', nobody_notices, each)
tested('a lifter where a lift is wanted', a_lifter_for_a_lift, 1)
tested('findings name lifters who are gone', findings_name_them, 1)
finish()
