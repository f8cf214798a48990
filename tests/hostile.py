#!/usr/bin/python3
"""Text that means harm: nothing from files, names of files or the command line steers a terminal, a printer or a spreadsheet,
and what cannot be seen is pointed out. Read back by Python's unicodedata, csv and two YAML readers."""
import csv
import io
import os
import subprocess
import sys
import unicodedata

import yaml
from ruamel.yaml import YAML

TOP = os.environ.get('SETWRIGHT_SRC', os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
PROGRAM = os.environ.get('SETWRIGHT', os.path.join(TOP, '.build', 'release', 'setwright'))
failed = []

CONTROLS = ['\x1b[31m', '\x1b]0;title\x07', '\x9b2J', '\x08\x08', '\x7f', '\x00'[:0] + '\x01', '\u2028', '\u2029']
BIDI = ['\u061c', '\u200e', '\u200f', *map(chr, range(0x202a, 0x202f)), *map(chr, range(0x2066, 0x206a))]
WIDTHLESS = ['\u200b', '\u200c', '\u200d', '\u2060', '\ufeff']


def verdict(fine, name, remark=''):
    print(('ok ' if fine else 'not ok ') + name + ('' if fine else f'\n  {remark}'))
    if not fine:
        failed.append(name)


def put(path, text):
    with open(path, 'w', encoding='utf-8', newline='') as file:
        file.write(text)
    return path


def run(*words):
    done = subprocess.run([PROGRAM, *words], stdin=subprocess.DEVNULL, capture_output=True, timeout=60)
    return done.returncode, done.stdout.decode(), done.stderr.decode()


def raw(text, kinds=('Cc', 'Zl', 'Zp', 'Cf')):
    """The characters in it that a terminal obeys or that turn the writing; line ends, form feeds and joiners are ours."""
    return sorted({f'U+{ord(c):04X}' for c in text if c not in '\n\f\u200c\u200d' and unicodedata.category(c) in kinds})


def club(title):
    """The odd text as a title out of a spreadsheet, where no scanner has looked at it."""
    put('people.csv', f'athlete,title,lift,max,date\nines,"{title}",squat,100,2026-12-28\nines,,bench,60,2026-12-28\nines,,deadlift,120,2026-12-28\n')
    return put('c.block', 'lift squat { kind competition; loads bar }\nlift bench { kind competition; loads bar }\n'
               'lift deadlift { kind competition; loads bar }\nroster "people.csv"\n'
               'block b { weeks 2; goal peak; day A on mon { squat 3 x 3 at 80% } }\n'
               'season s { for ines; meet "Lakeside Open" on 2027-02-20; run b }\n')


OUTPUTS = [('build',), ('build', '-f', 'csv'), ('build', '-f', 'yaml'), ('build', '-s', 'group'), ('build', '-s', 'coach'),
           ('build', '-s', 'meet'), ('calendar',), ('diary',), ('why', '-a', 'ines', '-w', '1', '-l', 'squat'), ('check',),
           ('check', '--findings', 'short'), ('check', '--findings', 'json'), ('check', '--findings', 'sarif'),
           ('check', '--findings', 'github')]


def outputs():
    path = club('In\u00eas ' + ' x '.join(CONTROLS + BIDI + WIDTHLESS))
    for words in OUTPUTS:
        status, out, err = run(words[0], path, *words[1:])
        # yaml is for programs, which get a text as it was written; what a terminal obeys is escaped there too
        steers = raw(out, ('Cc', 'Zl', 'Zp')) if 'yaml' in words else raw(out)
        verdict(status in (0, 1) and (out or err) and not steers and not raw(err), f'{" ".join(words)} shows no character that steers',
                f'{status} {raw(out)} {raw(err)} {err[:200]}')


def names_of_files():
    for odd in '\x1b[31mred', 'a\u202eb', 'line\nbreak', 'tab\tstop', '\x9b2J':
        for words in ('check', f'{odd}.block'), ('build', '-o', f'{odd}/{odd}', put('fine.block', 'lift squat\n')), ('build', '-f', odd, 'fine.block'), \
                     ('build', '-a', odd, 'fine.block'), ('check', f'--{odd}', 'fine.block'), (odd,), ('explain', odd), ('templates', odd), \
                     ('new', f'{odd}/{odd}'), ('check', '--accept', odd, 'fine.block'), ('collect', odd, 'fine.block'):
            status, out, err = run(*words)
            verdict(status in (2, 3) and not raw(out) and not raw(err) and err.count('\n') == 1, f'{words[0]!r} with {odd!r} somewhere', f'{status} {err!r}')
    path = put('\x1b[31m.block', 'lift squat\nlift squat\n')
    for form in 'text', 'short', 'json', 'sarif', 'github':
        status, out, err = run('check', '--findings', form, path)
        verdict(status == 1 and not raw(out) and not raw(err), f'the file of a finding, as {form}', f'{status} {raw(out + err)}')


def pointed_out():
    for mark in BIDI + WIDTHLESS:
        code = f'U+{ord(mark):04X}'
        for where, text in ('title', f'lift squat {{ title "Back{mark} squat" }}\n'), \
                           ('note', f'athlete ines {{ note "one{mark} two" }}\n'), ('remark', f'lift squat # one{mark} two\n'):
            status, _, err = run('check', put('x.block', text))
            verdict(status == 0 and f'warning: ' in err and code in err and '[text]' in err and not raw(err), f'{code} in a {where} is a warning', err[:300])
        status, _, err = run('check', put('x.block', f'lift squ{mark}at {{ loads bar }}\n'))
        verdict(status == 1 and code in err and not raw(err), f'{code} in a name is an error', err[:300])
        status, _, err = run('check', club(f'In{mark}es'))
        verdict(status == 0 and 'people.csv:2:' in err and code in err, f'{code} in a spreadsheet is a warning', err[:300])
        put('people.csv', f'athlete,lift,max\nin{mark}es,squat,100\n')
        status, _, err = run('check', 'c.block')
        verdict(status == 1 and not raw(err), f'{code} in a name of a spreadsheet is an error', err[:300])
    for kept in '\u0645\u06cc\u200c\u062e\u0648\u0627\u0647\u0645', '\U0001f3cb\ufe0f\u200d\u2640\ufe0f':
        status, _, err = run('check', put('x.block', f'lift squat {{ title "{kept}" }}\n'))
        verdict(status == 0 and '[text]' not in err, f'{kept!r} needs its joiner', err[:300])


ODD = ['norway: no', 'no', 'NO', 'y', 'on', 'off', 'true', '1e3', '0x10', '0o17', '007', '0777', '~', 'null', 'Null', '2027-01-04', '12:30', '12:30:45',
       '.inf', '-.INF', '.nan', '1_000', '+1', '-1', '=1+1', '@x', '<<', '!t', '&a', '*a', '- a', '? a', 'a: b', 'a #b', '%a', '|', '>', '"', "'",
       '{a}', '[a]', ' a', 'a ', '=cmd|\'/c calc\'!A1', '+cmd', '-cmd', '@sum(1)', '\t=1', '1.0', '1e-3', '0b1', '190:20:30', '---', '...']


def strings_stay_strings():
    lines = ['gym g { bar 20 kg }', 'athlete ines { gym g }']
    quote = lambda text: '"' + text.replace('\\', '\\\\').replace('"', '\\"') + '"'
    lines += [f'lift l{i} {{ loads bar; title {quote(text)} }}' for i, text in enumerate(ODD)]
    entries = '\n'.join(f'l{i} 3 x 5 at 40 kg note {quote(text)}' for i, text in enumerate(ODD))
    lines.append(f'block b {{ title {quote("null")}; for ines; starts 2027-01-04; weeks 1\nday 7 on mon {{\n{entries}\n}} }}')
    path = put('odd.block', '\n'.join(lines) + '\n')
    status, out, err = run('build', '-f', 'yaml', path)
    verdict(status == 0, 'odd texts are built', err[:300])
    for name, document in ('YAML 1.1 (yaml)', yaml.safe_load(out)), ('YAML 1.2 (ruamel.yaml)', YAML(typ='safe', pure=True).load(out)):
        work = document['athletes'][0]['blocks'][0]['weeks'][0]['days'][0]['work']
        shown = [text.replace('\t', ' ') for text in ODD]
        got = [[row[key].replace('\t', ' ') if isinstance(row[key], str) else row[key] for row in work] for key in ('title', 'note')]
        verdict(got == [shown, shown], f'texts stay texts for {name}', [pair for pair in zip(got[0], got[1], shown) if pair[0] != pair[2] or pair[1] != pair[2]])
        verdict(document['athletes'][0]['blocks'][0]['title'] == 'null' and document['athletes'][0]['blocks'][0]['weeks'][0]['days'][0]['day'] == '7',
                f'a title null and a day 7 too, for {name}')
    status, out, err = run('build', '-f', 'csv', path)
    harmful = [cell for row in csv.reader(io.StringIO(out)) for cell in row
               if cell[:1] in ('=', '+', '-', '@', '\t', '\r') and not cell.lstrip('-').replace('.', '', 1).isdigit()]
    verdict(status == 0 and not harmful, 'no cell of the csv runs as a formula', harmful)


os.chdir(os.environ.get('TMPDIR', '/tmp'))
for part in (outputs, names_of_files, pointed_out, strings_stay_strings):
    part()
sys.exit(bool(failed))
