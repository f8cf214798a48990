"""Runs setwright and keeps count: what every whole-program test in Python needs."""
import csv
import io
import os
import subprocess
import sys
import tempfile

TOP = os.environ.get('SETWRIGHT_SRC') or os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
PROGRAM = os.environ.get('SETWRIGHT') or os.path.join(TOP, '.build/release/setwright')
HEADER = ('athlete,block,week,date,day,seq,lift,role,sets,reps_low,reps_high,rpe,percent,load,unit,per_side,'
          'rest_s,tempo,note,done_load,done_reps,done_rpe').split(',')
failed = 0


def run(*arguments, cwd=None, env=None, **changed):
    """Standard output and error as bytes, and the status; `changed` are variables of the environment."""
    env = dict(os.environ if env is None else env, **changed)
    done = subprocess.run([PROGRAM, *arguments], cwd=cwd, env=env, capture_output=True, timeout=120)
    return done.stdout, done.stderr, done.returncode


def table(text):
    """The rows of a CSV, each a dict; the header has to be the one of the design."""
    rows = list(csv.reader(io.StringIO(text, newline='')))
    assert rows[0] == HEADER, rows[0]
    assert all(len(row) == len(HEADER) for row in rows)
    return [dict(zip(HEADER, row)) for row in rows[1:]]


class Folder:
    """A folder of files that goes away again; `with Folder({'a.block': text}) as folder`."""

    def __init__(self, files=None):
        self.files = files or {}

    def __enter__(self):
        base = os.environ.get('TMPDIR')
        if base:
            os.makedirs(base, exist_ok=True)
        self.held = tempfile.TemporaryDirectory(dir=base)
        for name, text in self.files.items():
            self.write(name, text)
        return self

    def __exit__(self, *_):
        self.held.cleanup()

    @property
    def path(self):
        return self.held.name

    def write(self, name, text):
        path = os.path.join(self.held.name, name)
        os.makedirs(os.path.dirname(path), exist_ok=True)
        with open(path, 'w', encoding='utf-8', newline='') as file:
            file.write(text)
        return path


def build(text, *options, form='csv'):
    """One file's text to its output; says what the program said when it refuses."""
    with Folder({'club.block': text}) as folder:
        out, err, status = run('build', '--format', form, *options, 'club.block', cwd=folder.path)
    if status:
        raise AssertionError(f'status {status}: {err.decode()}')
    return out.decode()


def verdict(good, name, *remarks):
    """One line a test; remarks are shown when it fails."""
    global failed
    print(f'ok {name}' if good else f'not ok {name}')
    if not good:
        failed += 1
        for remark in remarks:
            print('\n'.join('    ' + line for line in str(remark).splitlines()))
    return good


def tested(name, function, *arguments):
    """A test is a function that raises; what it raises is the remark."""
    try:
        function(*arguments)
    except Exception as error:  # the test goes on, whatever went wrong in one of them
        return verdict(False, name, f'{type(error).__name__}: {error}')
    return verdict(True, name)


def finish():
    sys.stdout.flush()
    sys.exit(1 if failed else 0)
