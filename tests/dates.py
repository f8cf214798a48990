#!/usr/bin/python3
"""Weeks and weekdays over 400 years against Python's datetime and dateutil."""
import datetime
import os
import random
import sys
sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), 'oracle'))
from dateutil import rrule
from dateutil.relativedelta import FR, MO, SA, SU, TH, TU, WE, relativedelta
from program import Folder, build, finish, run, table, tested

NAMES = 'mon tue wed thu fri sat sun'.split()
FIRST_ON = dict(zip(NAMES, (MO(1), TU(1), WE(1), TH(1), FR(1), SA(1), SU(1))))
MONTHS = 'January February March April May June July August September October November December'.split()
LONG = 'Mon Tue Wed Thu Fri Sat Sun'.split()


def blocks(starts, weeks, on):
    """One block and athlete a start, with a day for every weekday in `on`, all in one run of the program."""
    lines = ['lift squat']
    for i, start in enumerate(starts):
        days = '; '.join(f'day d{k} on {name} {{ squat 3 x 5 }}' for k, name in enumerate(on))
        lines.append(f'athlete a{i}; block b{i} {{ for a{i}; starts {start.isoformat()}; weeks {weeks}; {days} }}')
    return '\n'.join(lines) + '\n'


def dates(text):
    found = {}
    for row in table(build(text, form='csv')):
        found.setdefault((row['block'], int(row['week'])), {})[row['day']] = datetime.date.fromisoformat(row['date'])
    return found


def compare(starts, weeks, on):
    found = dates(blocks(starts, weeks, on))
    assert len(found) == len(starts) * weeks
    for i, start in enumerate(starts):
        for week in range(1, weeks + 1):
            begin = start + relativedelta(weeks=week - 1)
            got = found[f'b{i}', week]
            for k, name in enumerate(on):
                wanted = begin + relativedelta(weekday=FIRST_ON[name])  # the first on or after
                assert got[f'd{k}'] == wanted, f'starts {start}, week {week}, {name}: {got[f"d{k}"]}, wanted {wanted}'
                assert wanted.weekday() == NAMES.index(name) and 0 <= (wanted - begin).days < 7
            assert list(got.values()) == sorted(got.values()), f'starts {start}, week {week}: not in date order'


def mondays():
    """Every 97th Monday of the 400 years in which the calendar comes round (146097 days, whole weeks)."""
    first = datetime.date(1901, 1, 7)
    assert first.weekday() == 0
    last = first + datetime.timedelta(days=146097)
    starts = [d.date() for d in rrule.rrule(rrule.WEEKLY, interval=97, dtstart=datetime.datetime(1901, 1, 7),
                                            until=datetime.datetime.combine(last, datetime.time()))]
    assert len(starts) > 200
    for part in range(0, len(starts), 40):
        compare(starts[part:part + 40], 3, NAMES)


def any_day():
    r = random.Random(4)
    starts = [datetime.date(1900, 1, 1) + datetime.timedelta(days=r.randrange(146097)) for _ in range(280)]
    for part in range(0, len(starts), 40):
        compare(starts[part:part + 40], 2, r.sample(NAMES, 7))


def leap_years():
    """The last days of February and the first of March where the rule turns: by 4, by 100, by 400."""
    starts = []
    for year in (1904, 1999, 2000, 2001, 2023, 2024, 2027, 2028, 2096, 2099, 2100, 2101, 2104, 2200, 2300, 2400):
        starts += [datetime.date(year, 2, day) for day in (21, 22, 27, 28)] + [datetime.date(year, 3, 1)]
        if year % 4 == 0 and (year % 100 or year % 400 == 0):
            starts.append(datetime.date(year, 2, 29))
    for part in range(0, len(starts), 40):
        compare(starts[part:part + 40], 2, NAMES)


def year_ends():
    starts = [datetime.date(year, 12, 31) + datetime.timedelta(days=n)
              for year in (1999, 2019, 2024, 2026, 2027, 2028, 2099) for n in range(-7, 4)]
    for part in range(0, len(starts), 40):
        compare(starts[part:part + 40], 2, NAMES)


def whole_year():
    compare([datetime.date(2027, 1, 4), datetime.date(2027, 12, 29)], 52, ['sun', 'mon', 'thu'])


def no_such_day():
    """Days that the calendar does not have are refused at their place; those it has are taken."""
    for text, there in (('2100-02-29', False), ('2000-02-29', True), ('2028-02-29', True), ('2027-02-29', False),
                        ('2027-04-31', False), ('2027-13-01', False), ('2027-00-10', False), ('2027-06-00', False),
                        ('2027-12-31', True)):
        try:
            datetime.date.fromisoformat(text)
            assert there, text
        except ValueError:
            assert not there, text
        plan = f'block b {{ for a; starts {text}; weeks 1; day A on mon {{ squat 1 x 1 }} }}\n'
        with Folder({'club.block': 'lift squat\nathlete a\n' + plan}) as folder:
            _, err, status = run('build', '--format', 'csv', 'club.block', cwd=folder.path)
        assert status == (0 if there else 1), f'{text}: status {status} {err.decode()}'
        assert there or b'club.block:3:' in err, err.decode()


def rotation():
    """A B A, B A B: the labels go on across weeks, in date order, from whatever day the block starts on."""
    for start in (datetime.date(2027, 1, 4), datetime.date(2027, 1, 7), datetime.date(2028, 2, 27)):
        for on in (['mon', 'wed', 'fri'], ['fri', 'mon', 'wed'], ['tue'], ['sat', 'sun']):
            text = (f'lift squat\nathlete a\n'
                    f'block b {{ for a; starts {start}; weeks 4; rotate A, B on {", ".join(on)}\n'
                    'day A { squat 3 x 5 }; day B { squat 2 x 5 } }\n')
            got = [(r['date'], r['day']) for r in table(build(text, form='csv'))]
            end = start + relativedelta(days=27)
            when = [d.date().isoformat() for d in rrule.rrule(
                rrule.DAILY, byweekday=[NAMES.index(n) for n in on],
                        dtstart=datetime.datetime.combine(start, datetime.time()),
                until=datetime.datetime.combine(end, datetime.time()))]
            assert got == [(d, 'AB'[i % 2]) for i, d in enumerate(when)], f'{start} {on}: {got}'


def rotation_skips():
    """A day left out keeps its turn."""
    text = '''lift squat
athlete a
block b { for a; starts 2027-01-04; weeks 2; rotate A, B on mon, wed, fri
  day A { squat 3 x 5 }
  day B { squat 2 x 5 }
  adjust a in week 1 { skip day B } }
'''
    got = [(r['date'], r['day']) for r in table(build(text, form='csv'))]
    assert got == [('2027-01-04', 'A'), ('2027-01-08', 'A'), ('2027-01-11', 'B'), ('2027-01-13', 'A'),
                   ('2027-01-15', 'B')], got


def narrowing():
    """--from and --to are both inclusive."""
    text = blocks([datetime.date(2026, 12, 28)], 3, NAMES)
    days = [datetime.date(2026, 12, 28) + datetime.timedelta(days=n) for n in range(21)]
    for first, last in ((0, 20), (3, 3), (4, 10), (20, 20), (0, 0)):
        got = [r['date'] for r in table(build(text, '--from', str(days[first]), '--to', str(days[last]), form='csv'))]
        assert got == [str(d) for d in days[first:last + 1]], got


def pages():
    """The sheet names its days as people do."""
    starts = [datetime.date(2027, 12, 29), datetime.date(2028, 2, 28), datetime.date(2027, 6, 7)]
    out = build(blocks(starts, 1, NAMES), form='text')
    for start in starts:
        for n in range(7):
            day = start + datetime.timedelta(days=n)
            told = f'{LONG[day.weekday()]} {day.day} {MONTHS[day.month - 1]} {day.year}'
            assert told in out, told


for test in (mondays, any_day, leap_years, year_ends, whole_year, no_such_day, rotation, rotation_skips, narrowing,
             pages):
    tested(test.__name__.replace('_', ' '), test)
finish()
