#!/usr/bin/python3
"""The sheets of examples/, against the CSV of the same plans: the group sheet's loads and discs, what the coach's page says
has changed, and that every option narrows them."""
import os
import re
import sys
from collections import defaultdict
from datetime import date, timedelta
from decimal import Decimal
sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), 'oracle'))
from program import TOP, run, table, verdict
import program

TITLES = dict(re.findall(r'athlete ([a-z]+) \{\s*title "([^"]+)"',
                         ''.join(open(os.path.join(TOP, 'examples', name), encoding='utf-8').read()
                                 for name in sorted(os.listdir(os.path.join(TOP, 'examples'))) if name.endswith('.block'))))
MONTHS = ('January February March April May June July August September October November December').split()


BODY = ('plank', 'side-plank', 'push-up', 'pull-up')  # of the examples' lifts: the body alone may be the load


def sheet(name, *options):
    out, err, status = run('build', '--sheet', name, *options, 'examples/', cwd=TOP)
    assert status == 0, err.decode()
    return out.decode()


def spelt(day):
    return f'{day:%a} {day.day} {MONTHS[day.month - 1]} {day.year}'


def rows_of(*options):
    out, err, status = run('build', '--format', 'csv', *options, 'examples/', cwd=TOP)
    assert status == 0, err.decode()
    return [row for row in table(out.decode()) if row['role'] != 'warm-up']


def lines_of(pages):
    """The lines of each athlete by the date on the page."""
    lines = defaultdict(list)
    for page in pages.split('\f'):
        when = page.split('\n')[1].split('   ')[0]
        name = None
        for line in page.split('\n'):
            first, bar, rest = line.partition(' | ')
            if not bar:
                continue
            name = first.strip() or name
            lines[when, name].append(rest)
    return lines


def reps_of(row):
    low, high = row['reps_low'], row['reps_high']
    return low if low == high else f"{low.split(' ')[0]}-{high}"


def group_sheet_has_every_set():
    lines, missing, seen = lines_of(sheet('group')), [], 0
    for row in rows_of():
        day = spelt(date.fromisoformat(row['date'])) if row['date'] else None
        text = '\n'.join(lines[day, TITLES[row['athlete']]])
        load = f"{row['load']} {row['unit']}" if row['load'] else '____'
        load = 'bodyweight' if row['load'] == '0' or (not row['load'] and row['lift'] in BODY) else load
        for part in (f"{row['sets']} x {reps_of(row)}", load, row['per_side']):
            seen += 1
            if part not in text:
                missing.append(f"{row['athlete']} {row['date']} {row['lift']}: {part}")
    verdict(seen > 500 and not missing, 'the group sheet has every set, load and disc of the csv', *missing[:20])


def pages_fit():
    for name, most in (('athlete', 80), ('group', 100), ('coach', 100), ('meet', 80)):
        wide = [line for page in sheet(name).split('\f') for line in page.split('\n') if len(line) > most or line.endswith(' ')]
        verdict(not wide, f'the {name} sheet is at most {most} columns wide and ends no line in a space', *wide[:5])


# The coach's page, worked out from the CSV

def weeks():
    """For each athlete and Monday: lift to [sets, heaviest load or None, unit], in order of first training."""
    result = defaultdict(dict)
    for row in rows_of():
        day = date.fromisoformat(row['date'])
        lifts = result[row['athlete'], day - timedelta(day.weekday())]
        work = lifts.setdefault(row['lift'], [0, None, row['unit']])
        work[0] += int(row['sets'])
        if row['load'] and (work[1] is None or Decimal(row['load']) > work[1]):
            work[1] = Decimal(row['load'])
    return result


def change(now, before, place):
    """The largest change of a lift: (now, by); the first of equal ones."""
    most = None
    for lift in [*now, *(lift for lift in before if lift not in now)]:
        one, other = now.get(lift, [0, None])[place], before.get(lift, [0, None])[place]
        if one is None or other is None:
            continue
        if most is None or abs(one - other) > abs(most[1]):
            most = (one, one - other)
    return most if most and most[1] else None


def expected_change(now, before):
    if not now or not before:
        return 'no training last week' if now else 'no training this week'
    sets, load = change(now, before, 0), change(now, before, 1)
    parts = [f'{value} {"up" if by > 0 else "down"} {abs(by).normalize() if isinstance(by, Decimal) else abs(by)}'
             for value, by in filter(None, (sets, load))]
    return '; '.join(parts) or 'same sets, same loads'


def said_change(words):
    """Only the numbers: "Back squat 8 sets, down 2; Deadlift to 112.5 kg, up 2.5 kg" to "8 down 2; 112.5 up 2.5"."""
    words = re.sub(r'[^;]*?(-?[\d.]+) sets?, (up|down) (\d+)', r'\1 \2 \3', words)
    return re.sub(r'(^|; )[^;]*? to (-?[\d.]+) (?:kg|lb), (up|down) ([\d.]+) (?:kg|lb)', r'\1\2 \3 \4', words)


def plain(text):
    return re.sub(r'\d+(\.\d+)?(E\+\d+)?', lambda m: format(Decimal(m.group()).normalize(), 'f'), text)


def coach_page_says_what_changed():
    have, wrong, seen = weeks(), [], 0
    for page in sheet('coach').split('\f'):
        day = re.search(r' to (\w{3} \d+ \w+ \d+)$', page.split('\n')[0]).group(1).split()
        sunday = date(int(day[3]), MONTHS.index(day[2]) + 1, int(day[1]))
        monday = sunday - timedelta(6)
        page = re.sub(r'\n {26}', ' ', page)  # wrapped lines
        told = dict(re.findall(r'^    (\S.{20}\S*) +(\S.*)$', page.split('CHANGED MOST')[1].split('\n', 1)[1], re.M))
        told = {name.strip(): words for name, words in told.items()}
        for athlete, title in TITLES.items():
            now, before = have.get((athlete, monday), {}), have.get((athlete, monday - timedelta(7)), {})
            if not now and not before:
                continue
            seen += 1
            expected, said = plain(expected_change(now, before)), plain(said_change(told.get(title, 'nothing at all')))
            if said != expected:
                wrong.append(f'{title}, week of {monday}: {told.get(title)} - expected {expected}')
    verdict(seen > 20 and not wrong, "the coach's page says what changed most, as worked out from the csv", *wrong[:10])


def coach_page_names_deloads():
    page = sheet('coach', '--from', '2027-02-08', '--to', '2027-02-14')
    verdict('    Deload this week      Ines Marchetti, Oskar Lindqvist, Priya Raman\n' in page and
            '    Deload next week      Hanna Sorel\n' in page and '\f' not in page, "the coach's page names this week's and next week's deloads", page)


def options_narrow():
    page = sheet('group', '--week', '2', '--block', 'winter-strength')
    verdict(page.count('week 2 of 6') == 3 and 'week 1 of' not in page, 'a week and a block narrow the group sheet', page)
    page = sheet('group', '--from', '2027-01-06', '--to', '2027-01-06')
    verdict(page.count('Wed 6 January 2027') == 1 and 'Mon 4' not in page, 'dates narrow the group sheet', page)
    page = sheet('group', '--athlete', 'oskar', '--week', '1')
    verdict('Oskar' in page and 'Ines' not in page and '1 athlete' in page, 'an athlete narrows the group sheet', page)
    page = sheet('coach', '--athlete', 'oskar')
    verdict('Oskar' in page and 'Ines' not in page, "an athlete narrows the coach's page", page)
    page = sheet('coach', '--from', '2027-01-12', '--to', '2027-01-19')
    verdict(page.count("The coach's week") == 2 and 'Mon A' not in page.split('\f')[0], "dates narrow the coach's page", page)


def flights_give_clocks():
    page = sheet('meet', '--athlete', 'ines', '--flight', '9:00', '--flight', '00:20')
    squat, bench = page.split('2.  Bench press')[0], page.split('2.  Bench press')[1].split('3.  Deadlift')[0]
    verdict('Flight starts 09:00' in squat and '40 min before   08:20 ' in squat and ' 7 min before   08:53 ' in squat and
            '40 min before   23:40 ' in bench and '___:___' in page.split('3.  Deadlift')[1], 'flights give the clock of each warm-up', page)


def wrong_use():
    for options in (('--sheet', 'meet', '--flight', '24:00'), ('--sheet', 'meet', '--flight', '9.30'), ('--sheet', 'groups'), ('--sheet', 'group', '--format', 'csv'), ('--sheet', 'coach', '--format', 'yaml')):
        out, err, status = run('build', *options, 'examples/', cwd=TOP)
        verdict(status == 2 and not out and err, ' '.join(options) + ' is wrong usage', err.decode())


group_sheet_has_every_set()
pages_fit()
coach_page_says_what_changed()
coach_page_names_deloads()
options_narrow()
flights_give_clocks()
wrong_use()
sys.exit(program.failed > 0)
