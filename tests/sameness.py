#!/usr/bin/python3
"""Same input, same bytes: twice, in another language and time zone, from another folder, in another order."""
import itertools
import os
import re
import subprocess
import sys
sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), 'oracle'))
from program import Folder, TOP, finish, run, tested

EXAMPLES = os.path.join(TOP, 'examples')
FORMATS = ('text', 'csv', 'yaml')
BARE = {k: v for k, v in os.environ.items() if not k.startswith('LC_') and k not in ('LANG', 'LANGUAGE', 'TZ')}

# A club over several files, with everything that sorts: decimals, letters of other scripts, equal dates.
FILES = {
    'gym.block': 'units kg\ngym hall { bar 20 kg; plates 25 x 4, 20 x 2, 10 x 4, 5 x 4, 2.5 x 4, 1.25 x 2 kg }\n',
    'lifts.block': ('lift squat { title "Kniebeuge"; loads bar }\nlift Öl like squat at 82.5%\n'
                    'lift şınav { loads bodyweight }\n'),
    'people.block': '''units kg
athlete ines { title "Ines"; gym hall; bodyweight 61.8 kg on 2026-12-01; max squat 120.5 kg on 2026-11-28
  max squat 122.5 kg on 2027-01-11; max şınav bodyweight plus 12.5 kg on 2026-12-01 }
athlete İlkay { title "İlkay Ünsal"; gym hall; bodyweight 71.3 kg on 2026-12-01
  max squat from 97.5 kg x 5 rpe 8.5 on 2026-12-28 }
group all-of-them { İlkay, ines }
''',
    'block.block': '''block winter { title "Winter"; for all-of-them; starts 2027-01-04; weeks 3
  day A on mon { squat top 1 x 1 at rpe from 6.5 to 8 then back-off 3 x 5 drop 12.5%; Öl 3 x 3 at rpe 7 }
  day B on mon { şınav 3 x 5 at rpe 7; squat 2 x 5 at 67.5% plus 2.5% each week }
  adjust ines in weeks 2-3 { load down 2.5% for squat }
}
''',
}


def build(folder, form, arguments=('.',), env=None, options=()):
    out, err, status = run('build', '--format', form, *options, *arguments, cwd=folder, env=env)
    assert status == 0, err.decode()
    assert len(out) > 500
    return out


def twice(form):
    assert build(EXAMPLES, form) == build(EXAMPLES, form)


def languages(form):
    """de_DE has decimal commas; tr_TR, where it is there, has an i that does not lower as elsewhere."""
    assert (locale_works('de_DE.UTF-8')), 'de_DE.UTF-8 is missing: this would prove nothing'
    with Folder(FILES) as folder:
        for place in (EXAMPLES, folder.path):
            plain = build(place, form, env=dict(BARE, LC_ALL='C'))
            for name in ('de_DE.UTF-8', 'C.UTF-8', 'tr_TR.UTF-8', 'no_SUCH', 'POSIX'):
                assert build(place, form, env=dict(BARE, LC_ALL=name)) == plain, name
            mixed = dict(BARE, LANG='C.UTF-8', LC_NUMERIC='de_DE.UTF-8', LC_TIME='de_DE.UTF-8')
            assert build(place, form, env=mixed) == plain, 'LC_NUMERIC alone'


def locale_works(name):
    done = subprocess.run(['locale', 'decimal_point'], env=dict(BARE, LC_ALL=name), capture_output=True, text=True)
    return done.stdout.strip() == ','


def zones(form):
    with Folder(FILES) as folder:
        plain = build(folder.path, form, env=BARE)
        for zone in ('UTC', 'Pacific/Kiritimati', 'Pacific/Pago_Pago', 'Asia/Kathmandu', 'America/New_York',
                     ':nonsense', ''):
            assert build(folder.path, form, env=dict(BARE, TZ=zone)) == plain, zone


def folders(form):
    here = build(EXAMPLES, form)
    assert build('/', form, [EXAMPLES]) == here
    assert build(TOP, form, ['examples']) == here
    assert build(TOP, form, ['examples/']) == here
    assert build(os.path.join(TOP, 'tests'), form, ['../examples/../examples']) == here


def orders(form):
    """With one block, the order in which its parts are read cannot matter."""
    with Folder(FILES) as folder:
        wanted = build(folder.path, form)
        for some in itertools.permutations(FILES):
            assert build(folder.path, form, some) == wanted, some
        assert build(folder.path, form, list(FILES) + ['people.block', '.']) == wanted, 'a file named twice'


def used(form):
    """What is used counts as if it stood beside; in whichever order, and once."""
    with Folder(FILES) as folder:
        wanted = build(folder.path, form)
        for some in itertools.permutations([f for f in FILES if f != 'block.block']):
            uses = ''.join(f'use "{name}"\n' for name in some)
            folder.write('block.block', uses + FILES['block.block'])
            assert build(folder.path, form, ['block.block']) == wanted, some
        folder.write('block.block', FILES['block.block'] + uses)
        assert build(folder.path, form, ['block.block']) == wanted, 'use at the end'


def statements(form):
    """Declarations stand in any order: lines of a file turned about, but for the block."""
    lines = [line for name in ('gym.block', 'lifts.block') for line in FILES[name].splitlines() if line != 'units kg']
    with Folder() as folder:
        outs = set()
        for some in itertools.permutations(lines):
            folder.write('club.block',
                         '\n'.join(['units kg', *some]) + '\n' + FILES['people.block'].replace('units kg\n', '') +
                         FILES['block.block'])
            outs.add(build(folder.path, form, ['club.block']))
        folder.write('club.block', FILES['block.block'] + FILES['people.block'].replace('units kg\n', '') +
                     '\n'.join([*lines, 'units kg']) + '\n')
        outs.add(build(folder.path, form, ['club.block']))
    assert len(outs) == 1, f'{len(outs)} different outputs'


def texts(form):
    """CR LF, a byte-order mark, comments and blank lines, a missing last line end: the same."""
    with Folder(FILES) as folder, Folder() as other:
        wanted = build(folder.path, form)
        changes = [lambda t: t.replace('\n', '\r\n'), lambda t: '\ufeff' + t, lambda t: t.rstrip('\n'),
                   lambda t: re.sub(r'\n', '  # said here\n\n', t), lambda t: 'language 1\n' + t,
                   lambda t: t.replace('  ', '\t')]
        for i, change in enumerate(changes):
            for name, text in FILES.items():
                other.write(name, change(text))
            assert build(other.path, form) == wanted, f'change {i + 1}'


def composed(form):
    """Names are compared in NFC: a letter and its mark are one letter."""
    import unicodedata
    with Folder(FILES) as folder, Folder() as other:
        for name, text in FILES.items():
            other.write(name, unicodedata.normalize('NFD', text) if name == 'block.block' else text)
        assert unicodedata.normalize('NFC', build(other.path, form).decode()) == build(folder.path, form).decode()


def targets(form):
    """To a file, a folder or standard output: the same bytes."""
    ending = {'text': 'txt', 'csv': 'csv', 'yaml': 'yaml'}[form]
    with Folder(FILES) as folder:
        wanted = build(folder.path, form)
        assert build_to(folder, form, 'plan.out') == wanted
        parts = os.path.join(folder.path, 'sheets') + '/'
        os.mkdir(parts)
        out, err, status = run('build', '--format', form, '-o', parts, '.', cwd=folder.path)
        assert status == 0 and not out, err.decode()
        assert sorted(os.listdir(parts)) == sorted(f'{a}-winter.{ending}' for a in ('ines', 'İlkay'))
        for athlete in ('ines', 'İlkay'):
            with open(f'{parts}{athlete}-winter.{ending}', 'rb') as file:
                assert file.read() == build(folder.path, form, options=('--athlete', athlete)), athlete


def build_to(folder, form, name):
    out, err, status = run('build', '--format', form, '-o', name, '.', cwd=folder.path)
    assert status == 0 and not out, err.decode()
    with open(os.path.join(folder.path, name), 'rb') as file:
        return file.read()


def narrowed():
    """Narrowing leaves rows out and changes none."""
    whole = build(EXAMPLES, 'csv').decode().split('\n')
    for options in (('--athlete', 'ines'), ('--block', 'winter-strength'), ('--week', '2-3'),
                    ('--from', '2027-01-18'),
                    ('--to', '2027-01-20'), ('--athlete', 'oskar', '--week', '3')):
        some = build(EXAMPLES, 'csv', options=options).decode().split('\n')
        left = iter(whole)
        assert 5 < len(some) < len(whole), options
        assert all(line in left for line in some), f'{options}: a row that the whole does not have'


def findings():
    """What is said about faulty files is the same everywhere too."""
    faulty = dict(FILES, **{'block.block': FILES['block.block'].replace('Öl 3', 'Oel 3').replace('12.5%', '12,5%')})
    with Folder(faulty) as folder:
        said = [run('check', '.', cwd=folder.path, env=dict(BARE, **more))[1:] for more in
                ({}, {'LC_ALL': 'de_DE.UTF-8'}, {'TZ': 'Asia/Tokyo'}, {'LC_ALL': 'C'})]
    assert said[0][1] == 1 and b'block.block:' in said[0][0]
    assert all(s == said[0] for s in said)


for form in FORMATS:
    for test in (twice, languages, zones, folders, orders, used, statements, texts, composed, targets):
        tested(f'{form}: {test.__name__}', test, form)
tested('narrowed', narrowed)
tested('findings', findings)
finish()
