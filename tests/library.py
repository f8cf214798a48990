#!/usr/bin/python3
"""The library that is shipped: every template, scheme, warm-up, gym and lift of it, in kilograms and in pounds."""
import os
import re
import sys
from datetime import date, timedelta
sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), 'oracle'))
from decimal import Decimal
from fractions import Fraction as F
from program import Folder, TOP, finish, run, table, tested
from weights import KG, LB, UNIT, bar_ladder, rounded

FOLDER = os.path.join(TOP, 'stdlib-templates')
TEXT = {name: open(os.path.join(FOLDER, name), encoding='utf-8').read() for name in sorted(os.listdir(FOLDER))}
WHOLE = '\n'.join(TEXT.values())


def declared(word):
    return re.findall(rf'^{word} ([\w-]+)', WHOLE, re.M)


# Usual maxes of a club lifter; kg.
MAXES = dict(squat=170, bench=115, deadlift=205)
# The gym that a template is made for, where it is not the usual one; these need no max at all.
GYMS = {'dumbbells-and-machines': 'machines'}
WITHOUT_BAR = {'dumbbells-and-machines', 'bodyweight-and-carries', 'added-load-pull-up'}
USE = ''.join(f'use "std/{name}"\n' for name in TEXT)


def lifter(unit, maxes=MAXES, gym=None):
    lines = [f'athlete lifter {{ gym {gym or "common-" + unit}',
             f'bodyweight {82.5 if unit == "kg" else 182} {unit} on 2026-12-20']
    for lift, kg in maxes.items():
        load = kg if unit == 'kg' else rounded(F(kg * KG) / LB, 5)
        lines.append(f'max {lift} {load} {unit} on 2026-12-20')
    return f'units {unit}\n' + USE + '\n'.join(lines) + ' }\n'


def plan(rest, head=''):
    return f'block plan{rest} {{ for lifter; starts 2027-01-04\n{head}\n'


def build(text, *options):
    """Rows and whatever was said; any finding at all, advice included, is an error here."""
    with Folder({'club.block': text}) as folder:
        out, err, status = run('build', '--format', 'csv', *options, 'club.block', cwd=folder.path)
        assert status == 0 and not err, f'status {status}\n{err.decode()[:3000]}'
        for form in ('text', 'yaml'):
            other, err, status = run('build', '--format', form, 'club.block', cwd=folder.path)
            assert status == 0 and other, err.decode()
    return table(out.decode())


def build_any(text):
    """Rows, whatever the rules say of them."""
    with Folder({'club.block': text}) as folder:
        out, err, status = run('build', '--format', 'csv', 'club.block', cwd=folder.path)
    assert status == 0, err.decode()[:3000]
    return table(out.decode())


def alone(name):
    """As shipped, as printed by `templates`, and used from a file that has nothing else."""
    out, err, status = run('check', os.path.join(FOLDER, name))
    others = [line for line in err.decode().splitlines() if line.endswith(']') and not line.endswith('[unused-name]')]
    assert status == 0 and not others, err.decode()  # a file named on the command line is told what it does not use
    printed, err, status = run('templates', f'std/{name}')
    if status:
        printed, err, status = run('templates', name)
    assert status == 0 and TEXT[name].encode() in printed, err.decode()
    with Folder({'club.block': f'use "std/{name}"\n'}) as folder:
        out, err, status = run('check', '--strict', 'club.block', cwd=folder.path)
        assert status == 0 and not err, err.decode()


def weeks_of(template):
    body = WHOLE[WHOLE.index(f'template {template} '):]
    return int(re.search(r'^  weeks (\d+)', body, re.M).group(1))


def body_of(name):
    body = WHOLE[WHOLE.index(f'\ntemplate {name} ') + 1:]
    return body[:body.index('\n}')]


def goal_of(name):
    head = re.match(r'template [\w-]+(?: from ([\w-]+))?', body_of(name))
    stated = re.search(r'^  goal (\w+)', body_of(name), re.M)
    return stated.group(1) if stated else goal_of(head.group(1))


def trainee(name, unit):
    """A club lifter in the gym that the template is for."""
    hangs = f'max pull-up bodyweight plus {25 if unit == "kg" else 55} {unit} on 2026-12-20 }}\n'
    return lifter(unit, gym=f'{GYMS[name]}-{unit}' if name in GYMS else None).removesuffix(' }\n') + '\n' + hangs


def template(name, unit):
    rows = build(trainee(name, unit) + plan(' from ' + name) + '}\n')
    assert {int(r['week']) for r in rows} == set(range(1, weeks_of(name) + 1))
    assert {r['unit'] for r in rows} <= {unit, ''}
    known = [r for r in rows if r['lift'] in MAXES and r['role'] != 'warm-up']
    assert bool(known) != (name in WITHOUT_BAR), known
    assert all(r['load'] and r['percent'] and r['rpe'] for r in known)
    for r in known:  # nothing absurd: from the lightest back-off to the heaviest single
        assert 45 <= Decimal(r['percent']) <= 98, r


def template_clean(name, unit):
    """No rule of the trade has a word to say, not even advice."""
    with Folder({'club.block': trainee(name, unit) + plan(' from ' + name) + '}\n'}) as folder:
        out, err, status = run('check', '--fail-on', 'advice', 'club.block', cwd=folder.path)
    assert status == 0 and not err, err.decode()[:3000]


# Saturday and Sunday are the days of meets (common practice); the openers are the shares that are usual.
def template_meet(name, unit, meet):
    """A peak, last in a season: the meet lies in its last week, the taper before it, and no rule has a word to say."""
    lifts = ''.join(f'attempts {lift} 91%, 96%, 101%; ' for lift in MAXES)
    text = trainee(name, unit) + f'block plan from {name} {{ for lifter }}\n' + (
        f'season spring {{ for lifter; meet "Lakeside Open" on {meet}; run plan; {lifts} }}\n')
    with Folder({'club.block': text}) as folder:
        out, err, status = run('build', '--format', 'csv', '--fail-on', 'advice', 'club.block', cwd=folder.path)
    assert status == 0 and not err, err.decode()[:3000]
    rows = table(out.decode())
    days = sorted({date.fromisoformat(r['date']) for r in rows})
    last = date.fromisoformat(meet)
    assert days[-1] <= last - timedelta(days=3), days
    assert 0 < (last - days[0]).days - 7 * (weeks_of(name) - 1) < 7, days
    for lift in MAXES:
        heavy = [date.fromisoformat(r['date']) for r in rows if r['lift'] == lift and r['reps_low'] == '1' and Decimal(r['rpe'].replace('<1', '0')) >= 8]
        assert heavy and 6 <= (last - max(heavy)).days <= 14, (lift, heavy)


def comment_of(name):
    """The comment that opens the template's file, one line."""
    text = TEXT[f'{name}.block']
    return ' '.join(line.strip('# ') for line in text[:text.index('\nuse ')].splitlines())


def told(name, unit):
    """The comment says for whom and what it asks, and the days a week are as it says."""
    comment = comment_of(name)
    assert ' For ' in comment, comment
    asked = re.search(r'Asks for (two|three|four) (?:\w+(?:-\w+)? )?days a week', comment)
    assert asked, comment
    rows = build(trainee(name, unit) + plan(' from ' + name) + '}\n', '--week', '1')
    assert len({r['date'] for r in rows}) == ['two', 'three', 'four'].index(asked.group(1)) + 2


def kinds_of_training():
    """What a club asks for through the year; every template is compiled and checked below."""
    assert set(declared('template')) >= {
        'novice-three-day', 'four-day-singles', 'hypertrophy', 'volume-strength', 'peak', 'peak-five-weeks', 'undulating-week',
        'wave-loading', 'in-season-two-day', 'returning', 'dumbbells-and-machines', 'bodyweight-and-carries', 'added-load-pull-up',
        'general-two-day', 'strength'}
    for name in declared('template'):
        assert f'\ntemplate {name} ' in TEXT[f'{name}.block'], 'a template lies in a file of its name'
    assert '  max to 90%' in body_of('returning')


def settings(name):
    """Every $name of a template can be set in the block that is from it; what is set shows."""
    lets = re.findall(r'^  let (\$[\w-]+) = (.+)$', body_of(name), re.M)
    assert lets
    head = trainee(name, 'kg')
    as_shipped = build(head + plan(' from ' + name) + '}\n')
    for let, value in lets:
        assert build(head + plan(' from ' + name, f'let {let} = {value}') + '}\n') == as_shipped, let
        assert re.search(rf'^#   (\$[\w-]+, )*\{let}(, \$[\w-]+)*  +\w', TEXT[f'{name}.block'], re.M), f'{let} is not explained'
        other = {'row': 'seated-row', 'pulldown': 'pull-up', 'dumbbell-row': 'row', 'seated-row': 'row',
                 'romanian-deadlift': 'pause-deadlift', 'wave 5 | 4 | 3': '2'}.get(value, '2' if value.isdigit() else '71%' if '%' in value else '5.5')
        assert build_any(head + plan(' from ' + name, f'let {let} = {other}') + '}\n') != as_shipped, f'{let} changes nothing'


def scheme(name, unit):
    lines = WHOLE[WHOLE.index(f'scheme {name} '):]
    lines = lines[:lines.index('\n}')]
    warm = 'warm-up ' in lines
    entry = 'squat 3 x 5 at rpe 7' if warm else f'squat {name}'
    head = f'warm-up {name} for squat; ' if warm else ''
    text = lifter(unit) + plan('', head + 'weeks 4') + (
        f'day A on mon {{ {entry} }}; day B on thu {{ squat 3 x 5 at rpe 6 }} }}\n')
    with Folder({'club.block': text}) as folder:
        out, err, status = run('build', '--format', 'csv', 'club.block', cwd=folder.path)
    assert status == 0, err.decode()
    rows = [r for r in table(out.decode()) if r['day'] == 'A']
    assert rows and all(r['load'] for r in rows), rows
    roles = {r['role'] for r in rows}
    if warm:
        steps = len(re.findall(r'^  warm-up', lines, re.M))
        first = [r for r in rows if r['week'] == '1']
        assert [r['role'] for r in first] == ['warm-up'] * steps + ['work'], first
        loads = [Decimal(r['load']) for r in first]
        assert loads == sorted(loads) and len(set(loads)) == len(loads), loads
    else:
        assert roles == ({'top', 'back-off'} if 'top ' in lines else {'work'}), roles
        top = [Decimal(r['rpe'].replace('<1', '0')) for r in rows]
        assert all(3 <= rpe <= 9 for rpe in top), top  # common practice: neither idle nor to failure


def progression(name, unit):
    text = lifter(unit) + plan('', 'weeks 3') + (
        f'day A on mon {{ bench 3 x 6-8 at 60% progression {name} }} }}\n')
    with Folder({'club.block': text}) as folder:
        out, err, status = run('build', '--format', 'csv', 'club.block', cwd=folder.path)
    assert status == 0, err.decode()
    rows = [r for r in table(out.decode())]
    loads = [Decimal(r['load']) for r in rows]
    assert loads == sorted(loads)
    if re.search(rf'^progression {name} .*when reps full', WHOLE, re.M):
        assert [r['reps_low'] for r in rows] == ['6', '7', '8']
    else:
        assert len(set(loads)) == 3, loads


def discs_of(name):
    body = WHOLE[WHOLE.index(f'gym {name} '):]
    body = body[:body.index('\n}')]
    unit = 'lb' if name.endswith('lb') else 'kg'
    got = re.search(r'plates (.+?) (kg|lb)', body)
    bar = re.search(r'bar (\d+) (kg|lb)', body)
    collar = re.search(r'collar ([\d.]+) (kg|lb)', body)
    return body, unit, got and [(int(F(w) * UNIT[unit]), int(n)) for w,
                                n in re.findall(r'([\d.]+) x (\d+)', got.group(1))], \
        int(bar.group(1)) * UNIT[unit] if bar else None, int(F(collar.group(1)) * UNIT[unit]) if collar else 0


def gym(name):
    """Loads in each gym are ones that its bar, collars and discs make; the equipment it has is used."""
    body, unit, discs, bar, collar = discs_of(name)
    lifts = ['bench'] if discs else []
    lifts += ['dumbbell-press'] if 'dumbbells' in body else []
    lifts += ['seated-row'] if re.search(r'stack \d', body) else []
    lifts += ['club-pulldown'] if 'stack pulldown' in body else []
    lifts += ['trap-bar-deadlift'] if 'bar trap' in body else []
    kilos = {'bench': 90, 'dumbbell-press': 22, 'seated-row': 70, 'club-pulldown': 70, 'trap-bar-deadlift': 160}
    text = lifter(unit, {lift: kilos[lift] for lift in lifts}, name)
    text += 'lift club-pulldown { loads stack pulldown; works back }\n'
    entries = '; '.join(f'{lift} 3 x 5 at 62.5% | 66% | 70% | 73% | 77.5% | 81%' for lift in lifts)
    text += plan('', 'weeks 6') + f'day A on mon {{ {entries} }} }}\n'
    with Folder({'club.block': text}) as folder:
        out, err, status = run('build', '--format', 'csv', 'club.block', cwd=folder.path)
    assert status == 0, err.decode()
    rows = table(out.decode())
    assert {r['lift'] for r in rows} == set(lifts) and {r['unit'] for r in rows} == {unit}
    if discs:
        ladder = bar_ladder(bar + 2 * collar, discs, 'nearest')
        for r in (r for r in rows if r['lift'] == 'bench'):
            load = int(F(r['load']) * UNIT[unit])
            assert load in ladder.discs, r
            assert [int(F(d) * UNIT[unit]) for d in r['per_side'].split('+') if d] == ladder.discs[load], r


def lifts():
    """Each lift once, with its title and cue on the sheet, and none that lends itself in a circle."""
    names = declared('lift')
    assert len(names) == len(set(names)) > 40
    entries = '\n'.join(f'{name} 2 x 8 at rpe 6' for name in names)
    text = lifter('kg') + plan('', 'weeks 1') + f'day A on mon {{\n{entries}\n}} }}\n'
    with Folder({'club.block': text}) as folder:
        out, err, status = run('build', '--format', 'csv', 'club.block', cwd=folder.path)
        page, _, _ = run('build', 'club.block', cwd=folder.path)
    assert status == 0, err.decode()
    rows = table(out.decode())
    assert [r['lift'] for r in rows] == names
    shown = ' '.join(page.decode().split())
    for title in re.findall(r'^lift .*\n  title "(.+)"', WHOLE, re.M):
        assert title in shown, title
    for name, like, percent in re.findall(r'^lift ([\w-]+) like ([\w-]+) at ([\d.]+)%', WHOLE, re.M):
        row = next(r for r in rows if r['lift'] == name)
        # 8 at rpe 6: 12 could be done, 71.4 % by Epley; small loads move far when they are rounded
        assert row['load'] and abs(Decimal(row['percent']) - Decimal('71.4')) < 2, row


def works():
    """Every lift names a muscle, its own or by the lift it is like, so that no set is lost from the week's sum."""
    for name in declared('lift'):
        body = WHOLE[WHOLE.index(f'lift {name} '):]
        head, body = body.split('\n', 1)[0], body[:body.index('\n}')]
        assert 'works ' in body or ' like ' in head, name


def listed():
    out, err, status = run('templates')
    assert status == 0 and not err
    for name in TEXT:
        assert f'std/{name}' in out.decode(), name
    assert max(map(len, out.decode().splitlines())) <= 100, max(out.decode().splitlines(), key=len)
    for name in declared('template'):
        part = out.decode().split(f'  template {name},')[1].split('\n\n')[0]
        for let, value in re.findall(r'^  let (\$[\w-]+) = (.+)$', body_of(name), re.M):
            means = re.search(rf'^#   (?:\$[\w-]+, )*\{let}(?:, \$[\w-]+)*  +(.+)$', TEXT[f'{name}.block'], re.M).group(1)
            assert re.search(rf'^    {re.escape(let)} +{re.escape(value)}\s+{re.escape(means)}$', part, re.M), (let, part)
        assert f'{weeks_of(name)} weeks' in part.split('\n')[0], part
    for name in TEXT:  # a listed file with no template says what it is
        assert re.search(rf'^std/{name} +[A-Z]|^std/{name}\n  For ', out.decode(), re.M), name


for name in TEXT:
    tested(f'std/{name} alone', alone, name)
tested('templates lists them', listed)
tested('the library has a block for each part of the year', kinds_of_training)
for unit in ('kg', 'lb'):
    for name in declared('template'):
        tested(f'template {name} in {unit}', template, name, unit)
        tested(f'template {name} in {unit}, no advice', template_clean, name, unit)
        tested(f'template {name}: its days, in {unit}', told, name, unit)
        for meet in ('2027-02-13', '2027-02-14') if goal_of(name) == 'peak' else ():
            tested(f'template {name} in {unit}, meet on {meet}', template_meet, name, unit, meet)
    for name in declared('scheme'):
        tested(f'scheme {name} in {unit}', scheme, name, unit)
    for name in declared('progression'):
        tested(f'progression {name} in {unit}', progression, name, unit)
for name in declared('template'):
    tested(f'template {name}: its settings', settings, name)
for name in declared('gym'):
    tested(f'gym {name}', gym, name)
tested('lifts', lifts)
tested('every lift works something', works)
finish()
