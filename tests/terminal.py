#!/usr/bin/python3
"""What is different at a terminal: colours in findings, and a last word from `check`. Each of the two outputs is asked by itself."""
import os
import pty
import re
import subprocess
import sys
sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), 'oracle'))
from program import PROGRAM, Folder, finish, tested  # noqa: E402

CLUB = '''gym hall { bar 20 kg; plates 25 x 8, 10 x 4, 5 x 2, 2.5 x 2, 1.25 x 2 kg }
lift squat { kind competition; loads bar }
athlete ines { gym hall; max squat 100 kg on 2027-01-01 }
'''
FINE = CLUB + 'block base { goal general; for ines; starts 2027-01-04; weeks 1; day A on mon { squat 5 x 5 at rpe 6 }; day B on thu { squat 4 x 4 at rpe 5 } }\n'
WARNED = FINE.replace('weeks 1;', 'weeks 1; deload week 2 { sets to 50% };')
FAULTY = FINE.replace('squat 5 x', 'sqaut 5 x')
COLOUR = re.compile(r'\x1b\[[0-9;]*m')


def read_all(end):
    text = b''
    while True:
        try:
            piece = os.read(end, 1 << 16)
        except OSError:  # the other side is closed
            return text.decode()
        if not piece:
            return text.decode()
        text += piece


def at_terminal(text, *arguments, out=True, err=True, **env):
    """Standard output and error, each a terminal or a pipe, and the status."""
    with Folder({'club.block': text}) as folder:
        ends = [pty.openpty() if terminal else os.pipe() for terminal in (out, err)]
        held = {name: value for name, value in os.environ.items() if name != 'NO_COLOR'}
        done = subprocess.run([PROGRAM, *arguments, 'club.block'], cwd=folder.path, stdin=subprocess.DEVNULL, timeout=120,
                              env=dict(held, **env), stdout=ends[0][1], stderr=ends[1][1])
        for _, theirs in ends:
            os.close(theirs)
        said = [read_all(ours).replace('\r\n', '\n') for ours, _ in ends]
        for ours, _ in ends:
            os.close(ours)
        return (*said, done.returncode)


def equal(got, wanted):
    assert got == wanted, f'{got!r} and not {wanted!r}'


def last_word():
    equal(at_terminal(FINE, 'check'), ('Nothing to mend.\n', '', 0))
    equal(at_terminal(WARNED, 'check')[0::2], ('0 errors, 1 warning.\n', 0))
    equal(at_terminal(WARNED, 'check', '--strict')[0::2], ('0 errors, 1 warning.\n', 1))
    equal(at_terminal(FAULTY, 'check')[0::2], ('1 error, 0 warnings.\n', 1))
    equal(at_terminal(FAULTY + FAULTY.splitlines()[3].replace('base', 'more') + '\n', 'check')[0::2], ('2 errors, 0 warnings.\n', 1))


def advice_counts_where_it_fails():
    advised = FINE.replace('; day B on thu { squat 4 x 4 at rpe 5 }', '')
    equal(at_terminal(advised, 'check')[0::2], ('Nothing to mend.\n', 0))
    out, err, status = at_terminal(advised, 'check', '--fail-on', 'advice', err=False)
    equal((out, status), ('0 errors, 0 warnings, %d of advice.\n' % err.count(': advice: '), 1))


def quiet_into_a_pipe():
    equal(at_terminal(FINE, 'check', out=False), ('', '', 0))
    equal(at_terminal(WARNED, 'check', out=False)[0], '')


def findings_for_programs_are_alone():
    """They stand on standard output; the count is said beside it, and no last word among them."""
    out, err, status = at_terminal(WARNED, 'check', '--strict', '--findings', 'json')
    assert out.count('\n') == 1 and out.startswith('{'), out
    assert status == 1 and err.endswith('1 warning; they are on standard output\n'), err


def colours():
    for text, level in ((WARNED, 'warning'), (FAULTY, 'error')):
        _, coloured, _ = at_terminal(text, 'check')
        _, plain, _ = at_terminal(text, 'check', err=False)
        assert COLOUR.search(coloured) and f'{level}: ' in COLOUR.sub('', coloured), coloured
        equal(COLOUR.sub('', coloured), plain)
        assert '\x1b' not in plain, plain
        equal(at_terminal(text, 'check', NO_COLOR='1')[1], plain)
        equal(at_terminal(text, 'check', NO_COLOR='')[1], coloured)  # no-color.org: when present and not an empty string
        assert COLOUR.search(at_terminal(text, 'check', '--findings', 'short')[1])


for test in (last_word, advice_counts_where_it_fails, quiet_into_a_pipe, findings_for_programs_are_alone, colours):
    tested(test.__name__.replace('_', ' '), test)
finish()
