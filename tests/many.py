#!/usr/bin/python3
"""Rules that go through many sets once, against what they mean, gone through pair by pair: clubs made by chance, their loads and
efforts read from the csv. Ties, the order of sets and weeks without the lift are what such rules get wrong. And how often a block of
one name was trained, counted over hundreds of blocks."""
import csv
import datetime
import io
import json
import os
import random
import subprocess
import sys

TOP = os.environ.get('SETWRIGHT_SRC', os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
PROGRAM = os.environ.get('SETWRIGHT', os.path.join(TOP, '.build', 'release', 'setwright'))
CLUBS = int(os.environ.get('CLUBS', '40'))
HEAD = '''gym hall { bar 20 kg; plates 25 x 8, 20 x 4, 15 x 2, 10 x 4, 5 x 4, 2.5 x 4, 1.25 x 2 kg }
athlete ines { gym hall; max squat 200 kg on 2026-12-30; max bench 160 kg on 2026-12-30; max row 150 kg on 2026-12-30 }
checks { off moderate-share because "x" }
'''
LIFTS = {'squat': ('competition', ['quads', 'trunk']), 'bench': ('competition', ['chest', 'triceps']), 'row': ('variation', ['back', 'trunk']),
         'lunge': ('accessory', ['quads', 'back']), 'dip': ('accessory', ['triceps', 'chest']), 'plank': ('accessory', ['trunk'])}
failed = []


def verdict(fine, name, remark=''):
    print(('ok ' if fine else 'not ok ') + name + ('' if fine else f'\n  {remark}'))
    if not fine:
        failed.append(name)


def run(text, *words):
    with open('club.block', 'w', encoding='utf-8') as file:
        file.write(text)
    done = subprocess.run([PROGRAM, words[0], 'club.block', *words[1:]], capture_output=True, text=True, timeout=100, check=False)
    return done.returncode, done.stdout, done.stderr


def entry(chance):
    """A line of a day: its lift, role and reps, and whether it states an effort."""
    lift, role, reps = chance.choice([*LIFTS, 'squat', 'bench']), chance.choice(['', '', 'top ', 'back-off ']), chance.choice([2, 3, 5])
    effort = lift in ('squat', 'bench', 'row') and chance.random() < .5
    values = [chance.choice([6, 6.5, 7, 8, 8.5]) if effort else chance.choice([60, 62.5, 70, 70, 80]) for _ in range(4)]
    load = ' | '.join(map(str, values))
    weeks = chance.choice(['', '', '', ' in weeks 1, 3-4', ' in weeks 2, 5'])
    return {'lift': lift, 'role': role.strip() or 'work', 'reps': reps, 'effort': effort,
            'text': f'{lift} {role}1 x {reps} at {"rpe " + load if effort else load + " kg"}{weeks}'}


def club(chance):
    """The text, and for each of the two days its entries with their lines."""
    lines = HEAD.splitlines() + [f'lift {name} {{ kind {kind}; loads bar; works {", ".join(works)} }}' for name, (kind, works) in LIFTS.items()]
    lines.append('block winter { for ines; starts 2027-01-04; weeks 5')
    if chance.random() < .5:
        lines.append(f'deload week {chance.choice([2, 3])}')
    days = {}
    for label, weekday in ('A', 'mon'), ('B', 'thu'):
        lines.append(f'day {label} on {weekday} {{')
        days[label] = [{**entry(chance), 'line': len(lines) + i + 1} for i in range(chance.randint(1, 25))]
        lines += [each['text'] for each in days[label]] + ['}']
    return '\n'.join(lines + ['}']) + '\n', days


def sets_of(text, days, deload):
    """The training weeks: lists of sets in their order, each with its entry."""
    rows = list(csv.DictReader(io.StringIO(run(text, 'build', '--format', 'csv')[1])))
    weeks = {}
    for week in sorted({int(row['week']) for row in rows} - deload):
        weeks[week] = []
        for label in 'A', 'B':
            found = [row for row in rows if int(row['week']) == week and row['day'] == label]
            trained = [each for each in days[label] if trained_in(each, week)]
            assert [row['lift'] for row in found] == [each['lift'] for each in trained], (found, trained)
            weeks[week] += [{**each, 'day': label, 'load': float(row['load']), 'rpe': float(row['rpe']) if each['effort'] else None}
                            for row, each in zip(found, trained)]
    return weeks


def trained_in(each, week):
    return week in {' in weeks 1, 3-4': (1, 3, 4), ' in weeks 2, 5': (2, 5)}.get(each['text'][each['text'].find(' in weeks'):], range(1, 6))


def number(value):
    return f'{value:g}'


def jumps(weeks, alike, size, least, share, says):
    """Of each week's largest of those that are alike, of equal ones the first: against the largest of the last week with the lift."""
    for week, now in weeks.items():
        for i, one in enumerate(now):
            like = [other for other in now if alike(one, other) and size(other) is not None]
            if not like or one is not max(like, key=size):
                continue
            before = [earlier for earlier in weeks if earlier < week and any(other['lift'] == one['lift'] for other in weeks[earlier])]
            like = [other for other in weeks[before[-1]] if alike(one, other) and size(other) is not None] if before else []
            if not like:
                continue
            base = size(max(like, key=size))
            if (size(one) - base) * (100 / base if share else 1) > least:
                yield one['line'], week, says.format(one['lift'], number(base), before[-1], number(size(one)), week)


def load_jumps(weeks):
    keys = ('lift', 'role', 'reps')
    return jumps(weeks, lambda a, b: all(a[key] == b[key] for key in keys), lambda each: each['load'], 10, True,
                 '{} goes from {} kg in week {} to {} kg in week {} at the same reps, up ')


def effort_creeps(weeks):
    return jumps(weeks, lambda a, b: a['lift'] == b['lift'], lambda each: each['rpe'], 1.5, False, '{} goes from rpe {} in week {} to rpe {} in week {}, up ')


def tops_first(weeks):
    for week, now in weeks.items():
        for i, one in enumerate(now):
            before = [other for other in now[:i] if other['day'] == one['day'] and other['lift'] == one['lift'] and other['role'] != 'top']
            if one['role'] == 'top' and before:
                yield one['line'], week, f'the top set of {one["lift"]} comes after its {before[0]["role"]} sets'


def orders_in_day(weeks):
    for week, now in weeks.items():
        for i, one in enumerate(now):
            works = LIFTS[one['lift']][1]
            later = [other for other in now[i + 1:] if other['day'] == one['day'] and LIFTS[other['lift']][0] != 'accessory'
                     and set(works) & set(LIFTS[other['lift']][1])]
            if LIFTS[one['lift']][0] == 'accessory' and later:
                muscle = next(each for each in works if each in LIFTS[later[0]['lift']][1])
                yield one['line'], week, f'{one["lift"]} comes before {later[0]["lift"]} and tires its {muscle}'


RULES = {'load-jump': load_jumps, 'effort-creep': effort_creeps, 'top-first': tops_first, 'order-in-day': orders_in_day}


def weeks_said(finding):
    tail = finding['message'].partition('; the same in week')[2].lstrip('s ').replace(' and ', ', ')
    return {finding['place']['week'], *(int(week) for week in tail.split(', ') if week)}


def rules(seed):
    chance = random.Random(seed)
    text, days = club(chance)
    deload = {int(line.split()[-1]) for line in text.splitlines() if line.startswith('deload')}
    findings = [json.loads(line) for line in run(text, 'check', '--findings', 'json')[1].splitlines()]
    errors = [each['message'] for each in findings if each['level'] == 'error']
    assert not errors, errors
    weeks, met = sets_of(text, days, deload), 0
    for rule, means in RULES.items():
        wanted = {}
        for line, week, says in means(weeks):
            wanted.setdefault(line, (says, set()))[1].add(week)
        got = {each['start']['line']: (each['message'].partition('; the same')[0], weeks_said(each)) for each in findings if each['rule'] == rule}
        fine = got.keys() == wanted.keys() and all(got[line][0].startswith(wanted[line][0]) and got[line][1] == wanted[line][1] for line in got)
        if not fine:
            verdict(False, f'{rule} in club {seed}', f'{text}\ngot {got}\nwanted {wanted}')
        met += len(got)
    return met


def runs():
    """Blocks of three names in turn, an athlete's own beside those of all: the n-th run of a name is its n-th block of hers."""
    lines = [HEAD, 'lift squat { loads bar }', 'lift bench', 'lift row', 'athlete tomas { gym hall; max squat 150 kg }']
    for name in 'base', 'build', 'peak':
        lines.append(f'block {name} {{ weeks 1; day A on mon {{ squat 3 x 5 at 60 kg }} }}')
    order = [('base', 'build', 'peak', 'base')[i % 4] for i in range(200)]
    for who, names in ('ines', order), ('tomas', order[1:]):
        lines.append(f'season for-{who} {{ for {who}; starts 2027-01-04; run {", ".join(names)} }}')
    status, _, err = run('\n'.join(lines) + '\n', 'build', '--format', 'csv', '--output', 'sheets/')
    verdict(status == 0 and len(os.listdir('sheets')) == 2 * len(order) - 1, 'a file for each run of each block', f'{status} {err}')
    for who, names in ('ines', order), ('tomas', order[1:]):
        wrong = []
        for i, name in enumerate(names):
            nth = names[:i + 1].count(name)
            with open(f'sheets/{who}-{name}{f"-{nth}" if nth > 1 else ""}.csv', encoding='utf-8', newline='') as file:
                wrong += [] if {weeks_after(row['date']) for row in csv.DictReader(file)} == {i} else [(name, nth)]
        verdict(not wrong, f'each of {who} has the week of its run', wrong)


def muscles():
    """A muscle that is named twice counts once, and as worked; hard sets of those like a lift are its own too."""
    text = ('lift squat { kind competition; loads bar; works quads, quads; helps quads, trunk }\nlift half like squat at 90%\nlift slow like half at 90%\n'
            'athlete ines { max squat 150 kg on 2026-12-30 }\nchecks { muscle-sets quads 10 to 11; muscle-sets trunk 6 to 7; weekly-sets squat 10 to 11 }\n'
            'block b { for ines; goal strength; starts 2027-01-04; weeks 1; day A on mon { squat 4 x 5 at rpe 7; slow 3 x 5 at rpe 7; half 2 x 5 at rpe 7 } }\n')
    findings = [json.loads(line) for line in run(text, 'check', '--findings', 'json')[1].splitlines()]
    said = sorted(each['message'] for each in findings if each['rule'] in ('muscle-sets', 'weekly-sets'))
    wanted = ['4.5 hard sets for trunk in week 1; the limits are 6 to 7', '9 hard sets for quads in week 1; the limits are 10 to 11',
              '9 hard sets for squat in week 1; the limits are 10 to 11']
    verdict(said == wanted, 'muscles and lifts like another are counted once', said)


def touched():
    """A change that finds something in one run of a block changes something, whichever run it is."""
    for order in ('ines', 'tomas'), ('tomas', 'ines'):
        text = ('lift squat { loads bar }\nathlete ines { max squat 150 kg on 2026-12-30 }\nathlete tomas { max squat 150 kg on 2026-12-30 }\n'
                'block base { weeks 1; day A on mon { squat 3 x 5 at rpe 7 }\nadjust ines { sets down 1; note "easy" }\nadjust tomas { rpe down 1 on day A }\n}\n')
        text += ''.join(f'season for-{who} {{ for {who}; starts 2027-01-04; run base, base }}\n' for who in order)
        findings = [json.loads(line) for line in run(text, 'check', '--findings', 'json')[1].splitlines()]
        said = [each['message'] for each in findings if each['rule'] == 'untouched']
        verdict(not said, f'changes of one of two seasons, {order[0]} first', said)


def lets():
    """Many names that a template and the block built from it both set: all count as used."""
    text = 'lift squat { loads bar }\nathlete ines { max squat 150 kg on 2026-12-30 }\n'
    for head, value in ('template t', 5), ('block b from t', 4):
        text += f'{head} {{\n' + ''.join(f'let $n{i} = {value}\n' for i in range(40))
        text += 'for ines; starts 2027-01-04; weeks 1\n' if head[0] == 'b' else ''.join(f'day D{i} {{ squat 1 x $n{i} at 60 kg }}\n' for i in range(40))
        text += '}\n'
    findings = [json.loads(line) for line in run(text, 'check', '--findings', 'json')[1].splitlines()]
    said = [each['message'] for each in findings if each['rule'] in ('unused-let', 'unknown-let', 'repeated')]
    rows = csv.DictReader(io.StringIO(run(text, 'build', '--format', 'csv')[1]))
    verdict(not said and [row['reps_low'] for row in rows] == ['4'] * 40, 'very many names of template and block', said)


def twice():
    """A day for weeks that two others have points at the first of them."""
    text = ('lift squat { loads bar }\nathlete ines { max squat 150 kg on 2026-12-30 }\nblock b { for ines; starts 2027-01-04; weeks 2\n'
            'weeks 1 { day A on mon { squat 3 x 5 at rpe 7 } }\nweeks 2 { day A on mon { squat 3 x 5 at rpe 7 } }\nday A on tue { squat 3 x 5 at rpe 7 }\n}\n')
    findings = [json.loads(line) for line in run(text, 'check', '--findings', 'json')[1].splitlines()]
    said = [(each['rule'], each['start']['line'], [other['start']['line'] for other in each['related']]) for each in findings if each['level'] == 'error']
    verdict(said == [('duplicate-name', 6, [4])], 'a day that is written twice', said)


def weeks_after(date):
    return (datetime.date.fromisoformat(date) - datetime.date(2027, 1, 4)).days // 7


os.chdir(os.environ.get('TMPDIR', '/tmp'))
met = sum(rules(seed) for seed in range(CLUBS))
verdict(met > 10 * CLUBS, f'{CLUBS} clubs by chance: the rules say what they mean', f'only {met} findings')
runs()
muscles()
touched()
lets()
twice()
sys.exit(bool(failed))
