#!/usr/bin/python3
"""Seasons date by date against Python's datetime and dateutil: the plan of `build` and the lines of `calendar`."""
import datetime
import os
import random
import re
import sys
sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), 'oracle'))
from dateutil.relativedelta import MO, relativedelta
from program import Folder, build, finish, run, table, tested

NAMES = 'mon tue wed thu fri sat sun'.split()
CLUB = 'lift squat { kind competition; loads bar }\nathlete ines { max squat 100 kg on 2020-01-01 }\n' \
       'athlete piotr { max squat 150 kg on 2020-01-01 }\n'


def monday(day):
    """The Monday of its week: the last one on or before it."""
    return day + relativedelta(weekday=MO(-1))


class Season:
    """A season as a coach writes it, and when everything in it falls; `run` holds (block, weeks), block None for a break."""

    def __init__(self, run, meets=(), starts=None, people=('ines',), name='spring'):
        self.run, self.meets, self.people, self.name = run, sorted(meets), people, name
        weeks = sum(length for _, length in run)
        self.start = starts or monday(self.meets[-1]) - relativedelta(weeks=weeks - 1)
        self.starts = starts

    def text(self):
        lines = [f'meet "Open {n}" on {day}' for n, day in enumerate(self.meets)]
        random.Random(len(lines)).shuffle(lines)
        if self.starts:
            lines.append(f'starts {self.starts}')
        runs = ', '.join(block or f'break {length} week{"s" * (length > 1)}' for block, length in self.run)
        return f'season {self.name} {{ for {", ".join(self.people)}\n' + '\n'.join(lines) + f'\nrun {runs}\n}}\n'

    def weeks(self):
        """(Monday, block or None, week in it, weeks in it) of every week."""
        at = self.start
        for block, length in self.run:
            for week in range(1, length + 1):
                yield at, block, week, length
                at += relativedelta(weeks=1)

    def trained(self, days):
        """(block, week, date, label) of all days left; days: label to weekday."""
        for begin, block, week, _ in self.weeks():
            for label, name in days.get(block, {}).items():
                date = begin + relativedelta(days=NAMES.index(name))
                over = any(begin <= meet <= date for meet in self.meets)
                if not over:
                    yield block, week, date, label

    def weeks_out(self, begin):
        """Whole weeks from this one to that of the next meet; None: no more meets."""
        ahead = [meet for meet in self.meets if meet >= begin]
        return (monday(ahead[0]) - begin).days // 7 if ahead else None


def club(seasons, lengths, days):
    blocks = ''.join(f'block {name} {{ weeks {weeks}; ' + '; '.join(f'day {label} on {on} {{ squat 3 x 5 at 70% }}'
                                                                   for label, on in days[name].items()) + ' }\n'
                     for name, weeks in lengths.items() if any(name == block for s in seasons for block, _ in s.run))
    return CLUB + blocks + ''.join(season.text() for season in seasons)


def calendar(text, *options):
    with Folder({'club.block': text}) as folder:
        out, err, status = run('calendar', *options, 'club.block', cwd=folder.path)
    assert status == 0, err.decode()
    out = out.decode()
    for line in out.split('\n'):
        assert len(line) <= 100 and not line.endswith(' '), line
    return out


def part_of(out, athlete):
    parts = dict(re.findall(r'(?m)^=+\n(\w+):?.*\n((?:(?!=).*\n)*)', out))
    return parts[athlete].split('\n')


def calendar_agrees(season, out):
    """Every week of the season has its line: Monday, block, week of weeks, weeks out; every meet has its own."""
    for athlete in season.people:
        lines = [line for line in part_of(out, athlete) if re.match(r'\d{4}-', line)]
        wanted = []
        for begin, block, week, length in season.weeks():
            away = season.weeks_out(begin)
            away = '' if away is None else 'meet' if away == 0 else str(away)
            wanted.append((str(begin), 0, [block, str(week), 'of', str(length), 'general'] + [away] * bool(away) if block
                           else ['Break'] + [away] * bool(away)))
        for n, meet in enumerate(season.meets):
            wanted.append((str(meet), 1, ['MEET', 'on', meet.strftime('%A') + ':', 'Open', str(n)]))
        wanted.sort(key=lambda one: one[:2])
        got = [line.split() for line in lines]
        assert len(got) == len(wanted), f'{len(got)} lines, wanted {len(wanted)}:\n' + '\n'.join(lines)
        for line, (date, _, words) in zip(got, wanted):
            assert line[0] == date and line[1:1 + len(words)] == words, f'{line}, wanted {date} {words}'


def compare(seasons, lengths, days):
    text = club(seasons, lengths, days)
    rows = {}
    for row in table(build(text, form='csv')):
        rows.setdefault(row['athlete'], []).append((row['block'], int(row['week']), datetime.date.fromisoformat(row['date']), row['day']))
    for season in seasons:
        wanted = sorted(season.trained(days), key=lambda one: (one[2], one[3]))
        for athlete in season.people:
            got = rows.get(athlete, [])
            assert sorted(got, key=lambda one: (one[2], one[3])) == wanted, f'{season.text()}\n{got}\nwanted {wanted}'
            assert got == sorted(got, key=lambda one: one[2]), 'not in the order of dates'
    out = calendar(text)
    for season in seasons:
        calendar_agrees(season, out)


LENGTHS = {'base': 4, 'build': 3, 'peak': 4}
DAYS = {'base': {'A': 'mon', 'B': 'thu', 'C': 'sat'}, 'build': {'A': 'tue', 'B': 'fri'}, 'peak': {'A': 'mon', 'B': 'wed', 'C': 'sun'}}


def items(text):
    return [(None, int(one)) if one.isdigit() else (one, LENGTHS[one]) for one in text.split()]


def two_meets():
    """Counted by hand besides: from Monday 12 April back 15 weeks are 12 + 31 + 28 + 31 days and 3 of December."""
    season = Season(items('base 1 build base peak'), [datetime.date(2027, 4, 17), datetime.date(2027, 2, 27)], people=('ines', 'piotr'))
    assert season.start == datetime.date(2026, 12, 28) and 15 * 7 == 12 + 31 + 28 + 31 + 3
    compare([season], LENGTHS, DAYS)
    rows = table(build(club([season], LENGTHS, DAYS), '--athlete', 'ines', form='csv'))
    dates = [(row['date'], row['block'], row['week']) for row in rows]
    assert dates[0] == ('2026-12-28', 'base', '1')
    assert ('2027-02-25', 'base', '1') in dates and '2027-02-27' not in [date for date, _, _ in dates]  # the Saturday of the first meet
    assert dates[-1] == ('2027-04-14', 'peak', '4')  # Sunday the 18th is after the last


def by_chance():
    """Seasons over four centuries: meets on every weekday, blocks again and again, breaks in any place."""
    r = random.Random(11)
    for _ in range(60):
        names = [r.choice(list(LENGTHS)) if r.random() < .75 else str(r.randint(1, 3)) for _ in range(r.randint(1, 6))]
        if not any(name in LENGTHS for name in names):
            names.append('base')
        if names[-1].isdigit() or names[0].isdigit():
            names = ['build', *names, 'peak']
        days = {name: dict(zip('ABC', sorted(r.sample(NAMES, r.randint(1, 3)), key=NAMES.index))) for name in LENGTHS}
        last = datetime.date(2021, 1, 1) + relativedelta(days=r.randrange(146097))
        weeks = sum(length for _, length in items(' '.join(names)))
        meets = {last} | {monday(last) - relativedelta(days=r.randrange(7 * weeks - 6)) for _ in range(r.randint(0, 2))}
        compare([Season(items(' '.join(names)), meets)], LENGTHS, days)


def from_a_monday():
    for starts in (datetime.date(2027, 1, 4), datetime.date(2028, 2, 28), datetime.date(2100, 2, 22)):
        compare([Season(items('base 2 peak base'), starts=starts)], LENGTHS, DAYS)


def any_other_day_is_refused():
    for n in range(7):
        day = datetime.date(2027, 1, 4) + relativedelta(days=n)
        season = Season(items('base'), starts=day)
        with Folder({'club.block': club([season], LENGTHS, DAYS)}) as folder:
            _, err, status = run('check', 'club.block', cwd=folder.path)
        said = err.decode()
        assert status == (1 if n else 0), said
        assert not n or (f'this is a {day.strftime("%A")}' in said and '2027-01-04 or 2027-01-11' in said), said


def two_seasons_share_a_block():
    """Each athlete has the dates of her own season."""
    compare([Season(items('base 1 peak'), [datetime.date(2027, 4, 17)]),
             Season(items('build peak'), [datetime.date(2027, 5, 16)], people=('piotr',), name='late')], LENGTHS, DAYS)


def one_after_the_other():
    """Two seasons of one athlete: both stand in her calendar, and the weeks between are told."""
    spring = Season(items('base peak'), [datetime.date(2027, 4, 17)])
    autumn = Season(items('build peak'), [datetime.date(2027, 10, 2)], name='autumn')
    out = calendar(club([spring, autumn], LENGTHS, DAYS))
    lines = part_of(out, 'ines')
    end, again = monday(spring.meets[-1]) + relativedelta(weeks=1), autumn.start
    between = [line for line in lines if 'nothing planned' in line]
    assert between == [f'{end}  nothing planned for {(again - end).days // 7} weeks'], between
    # With one block chosen, blocks that are not are no gap.
    out = calendar(club([spring, autumn], LENGTHS, DAYS), '--block', 'peak')
    assert out.count('nothing planned') == 0 and out.count('peak') == 8, out


def alone():
    """Blocks without a season have a line a week, no weeks out, and the days that lie between."""
    text = CLUB + 'block one { for ines; starts 2027-01-06; weeks 2; day A on wed { squat 1 x 1 at 70% } }\n' \
                  'block two { for ines; starts 2027-01-25; weeks 1; day A on mon { squat 1 x 1 at 70% } }\n'
    lines = [' '.join(line.split()) for line in part_of(calendar(text), 'ines') if re.match(r'\d{4}-', line)]
    assert lines == ['2027-01-06 one 1 of 2 general 1 70', '2027-01-13 one 2 of 2 general 1 70',
                     '2027-01-20 nothing planned for 5 days', '2027-01-25 two 1 of 1 general 1 70'], lines


def narrowed():
    text = club([Season(items('base 1 build peak'), [datetime.date(2027, 4, 17)], people=('ines', 'piotr'))], LENGTHS, DAYS)
    lines = [line for line in part_of(calendar(text, '--from', '2027-02-22', '--to', '2027-03-05'), 'ines') if re.match(r'\d{4}-', line)]
    assert [line[:10] for line in lines] == ['2027-02-22', '2027-03-01'], lines
    assert 'piotr' not in calendar(text, '--athlete', 'ines')
    out = calendar(text, '--block', 'peak')
    assert 'Break' not in out and 'MEET' in out, out


def a_year():
    """52 weeks in 100 columns and one line each."""
    season = Season(items('base build base build base build 2 base build base build base build peak peak'), [datetime.date(2027, 12, 11)])
    assert sum(length for _, length in season.run) == 52
    compare([season], LENGTHS, DAYS)


for test in (two_meets, by_chance, from_a_monday, any_other_day_is_refused, two_seasons_share_a_block, one_after_the_other, alone,
             narrowed, a_year):
    tested(test.__name__.replace('_', ' '), test)
finish()
