#!/usr/bin/python3
"""How the time of `check` and `build` grows: four sizes of each thing that can be many, each twice the one before. Printed is the
exponent of a line through the logarithms of the times (1: twice as many take twice as long), less what an empty file takes. More
than LIMIT, what n log n may come to over these sizes, is marked. SETWRIGHT is the program."""
import math
import os
import resource
import subprocess
import sys
import tempfile

PROGRAM = os.environ['SETWRIGHT']
TURNS = int(os.environ.get('TURNS', '5'))
LIMIT = 1.25
HEAD = '''gym hall { bar 20 kg; plates 25 x 8, 20 x 4, 15 x 2, 10 x 4, 5 x 4, 2.5 x 4, 1.25 x 2 kg }
lift squat { kind competition; loads bar; works quads }
lift bench { kind competition; loads bar; works chest }
lift row { loads bar; works back }
'''
DAY = ' {label} on {weekday} {{ squat {{ top 1 x 1 at rpe 7; back-off 4 x 4 drop 12% }}; bench 4 x 5 at 75%; row 3 x 8 at 50 kg }}\n'


def athletes(count, more=''):
    return ''.join(f'athlete lifter-{i} {{ gym hall; max squat {100 + i % 90} kg; max bench {60 + i % 50} kg{more} }}\n' for i in range(count))


def block(name, weeks=8, who='all', days='day A on mon { squat 3 x 5 at rpe 7; bench 3 x 5 at 75% }', starts='2027-01-04'):
    return f'block {name} {{ for {who}; starts {starts}; weeks {weeks}; {days} }}\n'


def many_athletes(n):
    return {'a.block': HEAD + athletes(n) + block('base')}


def many_weeks(n):
    return {'a.block': HEAD + athletes(40) + block('base', n)}


def many_sets(n):
    entries = '; '.join('squat 3 x 5 at rpe 7' if i % 2 else 'bench 3 x 5 at 75%' for i in range(n))
    return {'a.block': HEAD + athletes(10) + block('base', 8, 'all', f'day A on mon {{ {entries} }}')}


def many_blocks(n):
    return {'a.block': HEAD + athletes(2) + ''.join(block(f'base-{i}', 4, 'lifter-0', starts=f'{2027 + i // 12}-{i % 12 + 1:02}-01')
                                                     for i in range(n))}


def many_templates(n):
    return {'a.block': HEAD + athletes(2) + ''.join(f'template t{i} {{ day A on mon {{ squat 3 x 5 at rpe 7 }} }}\n' for i in range(n)) +
            ''.join(f'block b{i} from t{i} {{ for lifter-0; starts {2000 + i}-01-03; weeks 4 }}\n' for i in range(n))}


def many_files(n):
    files = {f'f{i}.block': f'lift lift-{i} {{ loads bar }}\n' for i in range(n)}
    return {**files, 'a.block': HEAD + athletes(2) + block('base') + ''.join(f'use "f{i}.block"\n' for i in range(n))}


def many_diary_entries(n):
    import datetime
    start, lines = datetime.date(2027, 1, 4), []
    for i in range(n):
        lines.append(f'  {start + datetime.timedelta(i)} {{ squat 80 kg x 5, 5 rpe 7; bench 50 kg x 5 rpe 8 }}\n')
    return {'a.block': HEAD + athletes(1) + block('base', 4) + 'diary lifter-0 {\n' + ''.join(lines) + '}\n'}


def diary_and_weeks(n):
    import datetime
    start, lines = datetime.date(2027, 1, 4), []
    for i in range(n):
        lines.append(f'  {start + datetime.timedelta(7 * i)} A {{ squat 80 kg x 5, 5, 5 rpe 7; bench as planned rpe 8 }}\n')
    blocks = ''.join(block(f'base-{i}', 8, starts=start + datetime.timedelta(56 * i)) for i in range(n // 8))
    return {'a.block': HEAD + athletes(1) + blocks + 'diary lifter-0 {\n' + ''.join(lines) + '}\n'}


def days_with_lets(n):
    days = '\n'.join(f'let $effort-{i} = 7; day D{i} on mon {{ squat 3 x 5 at rpe $effort-{i} }}' for i in range(n))
    return {'a.block': HEAD + athletes(2) + block('base', 4, days=days)}


def lifts_of_day(n):
    lifts = ''.join(f'lift lift-{i} {{ kind competition; loads bar; works muscle-{i} }}\n' for i in range(n))
    checks = 'checks {\n' + ''.join(f'weekly-sets lift-{i} 1 to 20; muscle-sets muscle-{i} 2 to 5\n' for i in range(n)) + '}\n'
    return {'a.block': HEAD + lifts + athletes(2) + checks + block('base', 4, days='day A on mon {' + '; '.join(f'lift-{i} 3 x 5 at 50 kg' for i in range(n)) + '}')}


def progressions(n):
    lines = ''.join(f'progression p{i} {{ when made add 2.5 kg }}\n' for i in range(n))
    return {'a.block': HEAD + lines + athletes(2) + block('base', 4, days='day A on mon {' + '; '.join(f'row 3 x 5 at 40 kg progression p{i}' for i in range(n)) + '}')}


def schemes(n):
    lines = ''.join(f'scheme s{i} {{ let $effort = 7; 3 x 5 at rpe $effort }}\n' for i in range(n))
    return {'a.block': HEAD + lines + athletes(2) + block('base', 4, days='day A on mon {' + '; '.join(f'squat s{i}' for i in range(n)) + '}')}


def allows(n):
    days = 'day A on mon {' + '; '.join('squat { 5 x 6 at rpe 9.5; allow hard-high-reps because "x" }' for _ in range(n)) + '}'
    return {'a.block': HEAD + athletes(2) + block('base', 4, days=days)}


def adjusts(n):
    lines = ''.join(f'\nadjust lifter-{i} {{ sets down 1 }}' for i in range(n))
    return {'a.block': HEAD + athletes(n) + block('base', 2, days='day A on mon { squat 3 x 5 at rpe 7 }' + lines)}


def members(n):
    return {'a.block': HEAD + athletes(n) + 'group club { ' + ', '.join(f'lifter-{i}' for i in range(n)) + ' }\n' + block('base', 2, 'club')}


def own_lets(n):
    return {'a.block': HEAD + athletes(n, '; let $start = 40 kg') + block('base', 2, days='let $start = 50 kg; day A on mon { row 3 x 5 at $start }')}


def gyms_and_bars(n):
    bars = ''.join(f'; bar bar-{i} 20 kg' for i in range(n))
    lifts = ''.join(f'lift lift-{i} {{ loads bar bar-{i} }}\ngym gym-{i} {{ bar 20 kg }}\n' for i in range(n))
    return {'a.block': HEAD + lifts + f'gym all {{ bar 20 kg{bars} }}\nathlete lifter {{ gym all }}\n'
                       + block('base', 2, days='day A on mon {' + '; '.join(f'lift-{i} 3 x 5 at 50 kg' for i in range(n)) + '}')}


def roster_rows(n):
    rows = ''.join(f'lifter,squat,{100 + i % 50},{1990 + i // 336}-{i // 28 % 12 + 1:02}-{i % 28 + 1:02}\n' for i in range(n))
    return {'a.csv': 'athlete,lift,max,date\n' + rows, 'a.block': HEAD + 'roster "a.csv"\n' + block('base', 4, days='day A on mon { squat 3 x 5 at rpe 7 }')}


def seasons_and_meets(n):
    lines = ''.join(f'block b{i} {{ weeks 2; deload week 2; day A on mon {{ squat 4 x 3 at 80% }} }}\nseason s{i} {{ for lifter-{i}; meet "cup" on 2027-04-17; run b{i}, b{i} }}\n'
                    for i in range(n))
    return {'a.block': HEAD + athletes(n) + lines}


def lifts_in_diary(n):
    lifts = ''.join(f'lift lift-{i} {{ loads bar }}\n' for i in range(n))
    day, done = ('; '.join(f'lift-{i} {words}' for i in range(n)) for words in ('3 x 5 at 50 kg', '50 kg x 5, 5, 5 rpe 7'))
    return {'a.block': HEAD + lifts + athletes(1) + block('base', 2, days=f'day A on mon {{ {day} }}') + f'diary lifter-0 {{ 2027-01-04 A {{ {done} }} }}\n'}


THINGS = [('athletes', many_athletes, 1000, 'build'), ('weeks', many_weeks, 32, 'build'), ('sets a day', many_sets, 64, 'build'),
          ('athletes', many_athletes, 200, 'check'), ('weeks', many_weeks, 32, 'check'), ('sets a day', many_sets, 64, 'check'),
          ('blocks', many_blocks, 200, 'check'), ('templates', many_templates, 200, 'check'), ('files', many_files, 500, 'check'),
          ('diary entries', many_diary_entries, 400, 'check'), ('weeks with a diary', diary_and_weeks, 128, 'check'),
          ('days and $names', days_with_lets, 100, 'check'), ('lifts with limits', lifts_of_day, 100, 'check'),
          ('progressions', progressions, 200, 'check'), ('schemes', schemes, 200, 'check'), ('allows', allows, 200, 'check'),
          ('adjusts', adjusts, 400, 'check'), ('members of a group', members, 1000, 'check'), ('athletes with lets', own_lets, 400, 'check'),
          ('gyms and bars', gyms_and_bars, 200, 'check'), ('rows of a lifter', roster_rows, 2000, 'check'),
          ('seasons', seasons_and_meets, 200, 'check'), ('lifts in a diary', lifts_in_diary, 200, 'check')]


def seconds(command, folder):
    best = math.inf
    for _ in range(TURNS):
        begun = resource.getrusage(resource.RUSAGE_CHILDREN)
        subprocess.run([PROGRAM, command, *(['--format', 'csv'] if command == 'build' else []), 'a.block'], cwd=folder,
                       stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, check=False)
        ended = resource.getrusage(resource.RUSAGE_CHILDREN)
        best = min(best, ended.ru_utime + ended.ru_stime - begun.ru_utime - begun.ru_stime)
    return best


def measured(files, command):
    with tempfile.TemporaryDirectory() as folder:
        for name, text in files.items():
            with open(os.path.join(folder, name), 'w', encoding='utf-8') as file:
                file.write(text)
        return seconds(command, folder)


def exponent(sizes, times):
    xs, ys = [math.log(size) for size in sizes], [math.log(max(each, 1e-4)) for each in times]
    mx, my = sum(xs) / len(xs), sum(ys) / len(ys)
    return sum((x - mx) * (y - my) for x, y in zip(xs, ys)) / sum((x - mx) ** 2 for x in xs)


def main():
    worst = 0
    empty = measured({'a.block': HEAD}, 'check')
    print(f'{"":8}{"many":20}{"sizes":>24}  {"milliseconds":28}{"exponent":>9}')
    for name, make, first, command in THINGS:
        sizes = [first * 2 ** i for i in range(4)]
        times = [measured(make(size), command) for size in sizes]
        power = exponent(sizes, [each - empty for each in times])
        worst = max(worst, power)
        print(f'{command:8}{name:20}{"  ".join(map(str, sizes)):>24}  {"  ".join(f"{1000 * each:.0f}" for each in times):28}{power:9.2f}'
              + ('  grows too fast' if power > LIMIT else ''))
        sys.stdout.flush()
    print('nothing grows faster than n log n' if worst <= LIMIT else f'more than {LIMIT}: look above')


main()
