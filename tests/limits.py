#!/usr/bin/python3
"""The limits of the manual's table: the last that works, the first that is refused; and files that are none."""
import os
import re
import subprocess
import sys
import threading
import time

TOP = os.environ.get('SETWRIGHT_SRC', os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
PROGRAM = os.environ.get('SETWRIGHT', os.path.join(TOP, '.build', 'release', 'setwright'))
SLOW = os.environ.get('SETWRIGHT_VARIANT') in ('san', 'cov')  # the largest inputs are left out
RING = 50000
failed = []


def verdict(fine, name, remark=''):
    print(('ok ' if fine else 'not ok ') + name + ('' if fine else f'\n  {remark}'))
    if not fine:
        failed.append(name)


def put(path, text):
    os.makedirs(os.path.dirname(path) or '.', exist_ok=True)
    with open(path, 'wb') as file:
        file.write(text if isinstance(text, bytes) else text.encode())
    return path


def link(target, path):
    if not os.path.lexists(path):
        os.symlink(target, path)


def run(*words, seconds=200, **more):
    """Status, 124 when it took too long, and what it said."""
    try:
        done = subprocess.run([PROGRAM, *words], stdin=subprocess.DEVNULL, capture_output=True, timeout=seconds, **more)
    except subprocess.TimeoutExpired:
        return 124, ''
    return done.returncode, done.stderr.decode()


def said(name, status, words, *command, **more):
    got, err = run(*command, **more)
    verdict(got == status and words in err and len(err) < 20000, name,
            f'status {got}, wanted {status} with {words!r}: {err[:400]}')


def check(name, text, status, words=''):
    said(name, status, words, 'check', put('x.block', text))


def edges(name, text, most, words, status=4, last=0):
    """text(n) is fine at `most` and refused at one more, in these words."""
    check(f'{name}: {most} are fine', text(most), last)
    check(f'{name}: {most + 1} are not', text(most + 1), status, words)


QUIET = 'checks { off unused-name because "x" }\n'
CLUB = 'lift squat { loads bar }\nathlete ines { max squat 100 kg on 2026-12-28 }\n'


def block(length=1, day='squat 3 x 5 at 40 kg'):
    return f'{CLUB}block b {{ for ines; starts 2027-01-04; weeks {length}\nday A on mon {{ {day} }} }}\n'


def named(n):
    name = 'a' * n
    return f'lift {name}\nathlete ines\nblock b {{ for ines; starts 2027-01-04; weeks 1\nday A on mon {{ {name} 3 x 5 at 40 kg }} }}\n'


def lets(n):
    chain = ''.join(f'let $v{i} = $v{i + 1}\n' for i in range(1, n))
    return block(day=f'{chain}let $v{n} = 5\nsquat 3 x $v1 at 40 kg')


def gym(pairs):
    discs = ', '.join(f'{2 ** i / 1000:.3f} x 2' for i in range(pairs))
    return f'gym g {{ bar 20 kg; plates {discs} kg }}\n' + block().replace('athlete ines {', 'athlete ines { gym g;')


def week_of(sets, each='superset 100 rounds { walk 100 x 1000 }', of=10000):
    """Supersets of 100 rounds of up to 100 sets, on five days."""
    lines = [each] * (sets // of) + ['walk 1 x 1'] * (sets % of)
    days = ''.join(f'day D{i} on {day} {{\n' + '\n'.join(lines[i::5]) + '\n}\n' for i, day in enumerate(('mon', 'tue', 'wed', 'thu', 'fri')))
    return f'{QUIET}lift walk\nathlete ines\nblock b {{ for ines; starts 2027-01-04; weeks 1\n{days}}}\n'


def totals_of(reps):
    return f'{QUIET}lift walk\nathlete ines\nblock b {{ for ines; starts 2027-01-04; weeks 1; day A on mon {{ walk total {reps - 60000}; walk total 60000 }} }}\n'


def numbers():
    edges('weeks', block, 256, '256', status=1)
    edges('sets', lambda n: block(day=f'squat {n} x 5 at 40 kg'), 100, '100', status=1)
    edges('repetitions', lambda n: block(day=f'walk 1 x {n} at 40 kg').replace('lift', 'lift walk\nlift', 1), 1000, '1000', status=1)
    edges('repetitions of a cluster', lambda n: block(day=f'walk 1 x {n - 999}{"+1" * 999} at 40 kg').replace('lift', 'lift walk\nlift', 1), 1000, '1000', status=1)
    edges('sets of a week', week_of, 100000, 'more than 100000 sets', status=1)
    warmed = 'superset 100 rounds { walk { warm-up 100 x 1; 1 x 1 } }'  # warm-ups are done once, before all rounds
    edges('sets of a week, warm-ups among them', lambda n: week_of(n, warmed, 200), 100000, 'more than 100000 sets', status=1)
    edges('repetitions of totals of a week', totals_of, 100000, 'more than 100000 sets', status=1)
    said('build says what is too much in a week', 1, 'more than 100000 sets', 'build', '--format', 'csv', put('x.block', week_of(10000000)))
    edges('letters of a name', named, 100, '100', status=1)
    edges('$names for $names', lets, 32, 'stands for itself in the end', status=1)
    edges('findings shown', lambda n: block(day='sqat 3 x 5 at 40 kg\n' * n), 50, 'of which the first 50 are shown', status=1, last=1)
    check('loads of a gym: 2^20 are fine', gym(20), 0)
    check('loads of a gym: 2^21 are not', gym(21), 4, 'more than 1048576 different loads')


def templates(n):
    body = 'weeks 1; day A on mon { squat 3 x 5 at 40 kg }'
    chain = ''.join(f'template t{i} from t{i - 1} {{ }}\n' for i in range(2, n + 1))
    return f'{CLUB}template t1 {{ {body} }}\n{chain}block b from t{n} {{ for ines; starts 2027-01-04 }}\n'


def groups(n, times=1):
    chain = ''.join(f'group g{i} {{ {", ".join([f"g{i - 1}"] * times)} }}\n' for i in range(n, 1, -1))
    return f'{CLUB}{chain}group g1 {{ ines }}\nblock b {{ for g{n}; starts 2027-01-04; weeks 1; day A on mon {{ squat 3 x 5 at 40 kg }} }}\n'


def likes(order):
    def text(n):
        lines = ['lift l1 { loads bar }\n'] + [f'lift l{i} like l{i - 1}\n' for i in range(2, n + 1)]
        return QUIET + ''.join(lines[::order])
    return text


def deep():
    edges('braces', lambda n: '{' * n + '}' * n + '\n', 32, 'more than 32 deep', last=1)
    edges('templates', templates, 64, 'more than 64 templates build on one another')
    edges('lifts like lifts', likes(1), 64, 'more than 64 lifts are like one another')
    edges('lifts like lifts, the last first', likes(-1), 64, 'more than 64 lifts are like one another')
    edges('groups in groups', groups, 64, 'more than 64 deep in one another')
    check('groups that each hold another twice hold nobody twice', groups(64, 2), 0, '')
    ring = range(RING)
    check('a circle of very many lifts', ''.join(f'lift l{i} like l{(i + 1) % RING}\n' for i in ring), 4, 'more than 64 lifts')
    check('a circle of very many groups', ''.join(f'group g{i} {{ g{(i + 1) % RING} }}\n' for i in ring), 4, 'more than 64 deep')
    check('a circle of very many templates', ''.join(f'template t{i} from t{(i + 1) % RING} {{ }}\n' for i in ring)
          + 'athlete ines\nblock b from t0 { for ines; starts 2027-01-04 }\n', 4, 'more than 64 templates')
    for n in (64, 65):
        for i in range(1, n + 1):
            put(f'use{n}/f{i}.block', f'use "f{i + 1}.block"\n')
        put(f'use{n}/f{n + 1}.block', 'lift squat\n' + QUIET)
    said('files that use files: 64 deep is fine', 0, '', 'check', 'use64/f1.block')
    said('files that use files: 65 is not', 4, 'more than 64 deep', 'check', 'use65/f1.block')


def large():
    most = 64 << 20
    whole = (b'lift squat\n' + QUIET.encode()).ljust(1023, b'#') + b'\n'
    whole += (b'#' * 1023 + b'\n') * (most // 1024 - 1)
    assert len(whole) == most
    put('large.block', whole)
    said('a file of 64 MB is fine', 0, '', 'check', 'large.block')
    put('large.block', whole + b'#')
    said('one byte more is not', 3, 'large.block: larger than 64 MB', 'check', 'large.block')
    if not SLOW:
        for i in range(4):
            put(f'total/f{i}.block', whole if i == 0 else whole[1024:] + b'#' * (1024 - 64 * (i == 3)))
        put('total/z.block', b'#' * 64)
        said('256 MB in all are fine', 0, '', 'check', 'total')
        put('total/z.block', b'#' * 65)
        said('one byte more in all is not', 4, '256 MB', 'check', 'total')
        for name in os.listdir('total'):
            os.unlink(f'total/{name}')
    for i in range(10000):
        put(f'files/f{i}.block', b'')
    said('10 000 files are fine', 0, '', 'check', 'files')
    put('files/z.block', b'')
    said('one file more is not', 4, '10000 files', 'check', 'files')
    with open('huge.block', 'wb') as file:
        file.truncate(1 << 30)
    said('a file of 1 GB is refused at once', 3, 'larger than 64 MB', 'check', 'huge.block', seconds=20)
    os.unlink('large.block')
    os.unlink('huge.block')


def sums():
    """More repetitions done in a week than 32 bits count."""
    if SLOW:
        return
    sets = 2500000
    put('sums.block', block(day='squat 3 x 5 at 40 kg') + 'diary ines { 2027-01-04 A { squat 40 kg x ' + ', '.join(['1000'] * sets) + ' } }\n')
    done = subprocess.run([PROGRAM, 'review', 'sums.block'], stdin=subprocess.DEVNULL, capture_output=True, timeout=200)
    verdict(f' {sets * 1000} of 15 reps'.encode() in done.stdout, 'sums of a review are wide', done.stdout[-600:])
    os.unlink('sums.block')


def put_days(count, each):
    return CLUB + 'block b { for ines; starts 2027-01-04; weeks 1\n' + ''.join(each.format(i) for i in range(count)) + '}\n'


# Files of a few MB that would take hours if every list were gone through to its end.
LISTS = {
    'days of one block': put_days(50000, 'day D{0} {{ squat 1 x 1 at 40 kg }}\n'),
    'notes of one block': put_days(100000, 'note "x"\n'),
    'lines of checks': 'checks {\n' + 'weekly-sets squat 1 to 20\n' * 50000 + '}\n' + block(100, 'squat 1 x 1 at rpe 7\n' * 1000),
    'muscles': ''.join('lift l%d { works %s }\n' % (j, ', '.join(f'm{j}-{i}' for i in range(90))) for j in range(2000)) +
               'athlete ines\nblock b { for ines; starts 2027-01-04; weeks 1; day A on mon {\n' + ''.join(f'l{i} 3 x 3 at rpe 7\n' for i in range(2000)) + '} }\n',
    'progressions of one day': ''.join(f'progression p{i} {{ when made add 2.5 kg }}\n' for i in range(20000)) +
                               block(8, ''.join(f'squat 1 x 1 at 40 kg progression p{i}\n' for i in range(20000))),
    'lifts in one session of a diary': ''.join(f'lift l{i} {{ loads bar }}\n' for i in range(20000)) +
                                       block(2, ''.join(f'l{i} 1 x 1 at 40 kg\n' for i in range(20000))) +
                                       'diary ines { 2027-01-04 A {\n' + ''.join(f'l{i} 40 kg x 1\n' for i in range(20000)) + '} }\n',
    'adjusts, each for one': 'lift squat { loads bar }\n' + ''.join(f'athlete a{i} {{ max squat 100 kg on 2026-12-28 }}\n' for i in range(20000)) +
                             'block b { for all; starts 2027-01-04; weeks 1; day A on mon { squat 3 x 5 at 40 kg }\n'
                             + ''.join(f'adjust a{i} {{ sets down 1 }}\n' for i in range(20000)) + '}\n',
    '$names of one block': put_days(100000, 'let $v{0} = 1\n'),
}

# And those that still go through each for each.
ENDLESS = {
    'changes of as many sets': f'lift bench\n{CLUB}block b {{ for ines; starts 2027-01-04; weeks 8\nday B on thu {{ bench 1 x 1 at 40 kg }}\nday A on mon {{\n'
                               + 'squat 1 x 1 at 40 kg\n' * 20000 + '}\nadjust ines {\n' + 'load down 1% for bench\n' * 20000 + '} }\n',
    'text that is given back': CLUB + 'block b { for ines; weeks 1; day A on mon { squat 3 x 5 note ' + '\\"a\u201d ' * 300000 + '} }\n',
}


def honest():
    """What is merely much is fine: people, findings, groups."""
    many = 20000 if SLOW else 100000
    put('people.csv', 'athlete,group,lift,max,date\n' + ''.join(f'a{i // 3},novices,{"squat bench row".split()[i % 3]},100,2026-12-28\n' for i in range(3 * many)))
    put('much.block', 'lift squat { loads bar }\nlift bench { loads bar }\nlift row { loads bar }\nroster "people.csv"\n'
        'block b { for novices; starts 2027-01-04; weeks 1; day A on mon { squat 3 x 5 at 70%; bench 3 x 5 at 70%; row 3 x 5 at 70% } }\n')
    said(f'{many} athletes of one group', 0, '', 'build', '-f', 'csv', '-o', '/dev/null', 'much.block')
    for name, text in LISTS.items():
        begun = os.times().children_user
        check(f'very many {name} are fine', text, 0)
        verdict(SLOW or os.times().children_user - begun < 20, f'very many {name} take seconds', os.times().children_user - begun)
    for name, line in ('of one name', 'sqat 3 x 5 at 70%\n'), ('of as many names', 'sqat{} 3 x 5 at 70%\n'):
        check(f'{many} findings {name}', CLUB + 'block b { for ines; starts 2027-01-04; weeks 1\nday A on mon {\n'
              + ''.join(line.format(i) for i in range(many)) + '} }\n', 1, f'{many} findings, of which the first 50 are shown')


def hostile():
    """Small files that stand for very much: they end, with 4 and a sentence."""
    lifts = ''.join(f'lift lift-{i}\n' for i in range(9000))
    wrong = ''.join(f'lyft-{i}x 3 x 5 at 40 kg\n' for i in range(9000))
    check('many unknown names among many', f'{lifts}athlete a\nblock b {{ for all; starts 2027-01-04\nweeks 1; day A on mon {{\n{wrong}}} }}\n',
          1, 'no lift is called lyft-0x')
    put('line.block', CLUB + 'block b { for ines; starts 2027-01-04; weeks 1; day A on mon {' + '; '.join(['sqat 3 x 5 at 40'] * 15000) + ' } }\n')
    got = subprocess.run([PROGRAM, 'check', '--findings', 'json', 'line.block'], capture_output=True, timeout=100)
    verdict(got.returncode == 1 and got.stdout.count(b'\n') >= 15000, 'very many findings on one long line', got.returncode)
    if SLOW:
        return
    for name, text in ENDLESS.items():
        check(f'very many {name}', text, 4, 'ask for more work')
    day = '\n'.join(['squat 3 x 5 at 40 kg'] * 20)
    days = '\n'.join(f'day D{i} on mon {{ {day} }}' for i in range(300))
    check('more memory than is taken', f'{CLUB}template t {{ weeks 1\n{days} }}\n'
          + ''.join(f'block b{i} from t {{ for ines; starts 2027-01-04 }}\n' for i in range(3000)), 4, 'ask for more memory')


def strange():
    """What is no file, and what lies elsewhere."""
    put('outside/secret.block', 'lift secret\n')
    put('outside/people.csv', 'athlete\nines\n')
    put('outside/b.block', 'lift b\n')
    put('club/a.block', 'use "link.block"\n')
    put('club/r.block', 'roster "link.csv"\n')
    put('club/f.block', 'use "further/b.block"\n')
    put('club/i.block', 'use "inner.block"\n')
    put('club/inner-target.block', 'lift squat\n')
    link('../outside/secret.block', 'club/link.block')
    link('../outside/people.csv', 'club/link.csv')
    link('../outside', 'club/further')
    link('inner-target.block', 'club/inner.block')
    link('outside/secret.block', 'named.block')
    outside = 'it is a link that leads outside the folder you work in'
    said('use of a link that leads outside', 3, f'link.block: {outside}', 'check', 'a.block', cwd='club')
    said('roster behind such a link', 3, f'link.csv: {outside}', 'check', 'r.block', cwd='club')
    said('use through a folder that leads outside', 3, f'b.block: {outside}', 'check', 'f.block', cwd='club')
    said('a folder with such a link in it', 3, f'link.block: {outside}', 'check', '.', cwd='club')
    said('a link that stays within is followed', 0, '', 'check', 'club/i.block')
    said('a link that is named itself may lead anywhere', 0, 'secret is declared here', 'check',
         os.path.abspath('named.block'), cwd='club')
    said('use of a path that climbs out', 1, 'lies outside', 'check', put('climb.block', 'use "../../../../etc/hostname.block"\n'))
    said('use from the root', 1, 'lies outside', 'check', put('root.block', 'use "/etc/hostname"\n'))
    link('round.block', 'round.block')
    said('a circle of links', 3, 'links lead in a circle', 'check', 'round.block')
    os.path.exists('pipe') or os.mkfifo('pipe')
    said('a pipe without a writer', 3, 'pipe: nobody writes to it', 'check', 'pipe', seconds=30)
    said('use of a pipe', 3, 'it is a pipe', 'check', put('p.block', 'use "pipe"\n'), seconds=30)
    said('a pipe for the output that nobody reads', 3, 'pipe: nobody reads from this pipe', 'build', '-o', 'pipe', put('o.block', block()), seconds=30)
    os.path.exists('hard.block') or os.link('o.block', 'hard.block')
    link('o.block', 'soft.block')
    for path in 'o.block', './o.block', 'hard.block', 'soft.block', os.path.abspath('o.block'):
        said(f'an output that is a source, as {os.path.basename(path)}', 2, 'one of the files that were read', 'build', '-o', path, 'o.block')
    said('an endless device', 3, 'it is a device', 'check', '/dev/zero', seconds=30)


def piped():
    with subprocess.Popen(['cat', '/dev/zero'], stdout=subprocess.PIPE) as endless:
        done = subprocess.run([PROGRAM, 'check', '/dev/stdin'], stdin=endless.stdout, capture_output=True, timeout=100)
        endless.kill()
    verdict(done.returncode == 3 and b'larger than 64 MB' in done.stderr, 'an endless pipe', done.stderr)
    with subprocess.Popen(['sh', '-c', 'echo lift squat; exec sleep 60'], stdout=subprocess.PIPE) as silent:
        begun = time.time()
        done = subprocess.run([PROGRAM, 'check', '/dev/stdin'], stdin=silent.stdout, capture_output=True, timeout=50)
        silent.kill()
    verdict(done.returncode == 3 and b'keeps silent' in done.stderr and time.time() - begun > 9, 'a writer that falls silent', done.stderr)
    done = subprocess.run([PROGRAM, 'check', '/dev/stdin'], input=CLUB.encode(), capture_output=True, timeout=50)
    verdict(done.returncode == 0 and b'error' not in done.stderr, 'a pipe that ends is read', done.stderr)


def growing():
    """A file that somebody else writes to all the while is refused or read whole; never half."""
    line = b'lift squat\n'
    path, stop = put('grows.block', line * 200), threading.Event()

    def write():
        while not stop.is_set():
            with open(path, 'r+b') as file:
                file.write(line * 200)

    writer = threading.Thread(target=write)
    writer.start()
    seen = {run('check', path) for _ in range(40)}
    stop.set()
    writer.join()
    verdict(all(status == 1 or (status == 3 and 'it is being written to' in err) for status, err in seen), 'a file that is being written', seen)


def manual():
    """Every number that is tried above stands in the manual's table."""
    with open(os.path.join(TOP, 'grammar', 'LANGUAGE.md'), encoding='utf-8') as file:
        table = file.read().split('### Limits')[1].split('\n## ')[0]
    for wanted in ('64 MB', '256 MB', '10 000', '256', '100', '1000', '100 000', '32', '64', '50', '1 048 576', '2 GB', '10 s'):
        verdict(re.search(r'(?<!\d)' + re.escape(wanted) + r'(?!\d)', table) is not None, f'the manual says {wanted}')


os.chdir(os.environ.get('TMPDIR', '/tmp'))
for part in (numbers, deep, large, sums, honest, hostile, strange, piped, growing, manual):
    part()
sys.exit(bool(failed))
