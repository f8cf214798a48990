#!/usr/bin/python3
"""Work shared out: parts of a club and processes side by side give the bytes of the whole.

    --part K/N     all parts, one after the other, are the whole; more parts than athletes are fine; GNU parallel and a job
                   array, as the manual has them, build the same
    --threads N    the same bytes in the same order; errors, wrong names and full disks are said as without; where a process
                   is killed nothing is written, or what was written is said not to be whole"""
import os
import re
import shutil
import signal
import subprocess
import sys
import time
sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), 'oracle'))
from program import Folder, PROGRAM, TOP, finish, run, tested  # noqa: E402

FORMATS = ('text', 'csv', 'yaml')
EXAMPLES = os.path.join(TOP, 'examples')


def club(count):
    """Many lifters on one block, a few with something of their own, two blocks for some."""
    people = ''.join(f'athlete lifter-{i} {{ gym hall; max squat {100 + i % 90} kg; max bench {60 + i % 50}.5 kg'
                     f'{"; avoid curl use row" if i % 7 == 3 else ""} }}\n' for i in range(count))
    return '''gym hall { bar 20 kg; plates 25 x 8, 20 x 4, 15 x 2, 10 x 4, 5 x 4, 2.5 x 4, 1.25 x 2 kg }
lift squat { kind competition; loads bar }
lift bench { kind competition; loads bar }
lift row
lift curl
''' + people + '''group early { lifter-1, lifter-5 }
block base { for all; starts 2027-01-04; weeks 3; deload week 3; day A on mon { squat 3 x 5 at rpe 7; bench 3 x 5 at 75%; curl 2 x 12 } }
block more { for early; starts 2027-02-01; weeks 2; day A on mon { squat 3 x 3 at rpe 8 } }
'''


def whole(folder, form, *more):
    out, err, status = run('build', '--format', form, *more, '.', cwd=folder)
    assert status == 0, err.decode()
    return out


def parts_are_the_whole(folder, form, count, *more):
    together = b''.join(whole(folder, form, '--part', f'{part}/{count}', *more) for part in range(1, count + 1))
    assert together == whole(folder, form, *more), f'{count} parts of {form} are not the whole'


def parts(form):
    for count in (1, 2, 3, 7, 40):
        parts_are_the_whole(EXAMPLES, form, count)
    with Folder({'club.block': club(37)}) as folder:
        for count in (2, 5, 36, 37, 38):
            parts_are_the_whole(folder.path, form, count)
        parts_are_the_whole(folder.path, form, 3, '--athlete', 'early', '--athlete', 'lifter-9')
        parts_are_the_whole(folder.path, form, 4, '--threads', '2')


def threads(form):
    with Folder({'club.block': club(75)}) as folder:
        for place in (EXAMPLES, folder.path):
            alone = whole(place, form)
            for count in ('1', '2', '3', '8'):
                assert whole(place, form, '--threads', count) == alone, f'{count} threads write another {form}'
        assert whole(folder.path, form, '--threads', '2', '--block', 'more') == whole(folder.path, form, '--block', 'more')
        for name in ('alone', 'shared'):
            done = run('build', '--format', form, '--threads', '1' if name == 'alone' else '2', '-o', name, '.', cwd=folder.path)
            assert done[2] == 0 and not done[0], done
        with open(os.path.join(folder.path, 'alone'), 'rb') as one, open(os.path.join(folder.path, 'shared'), 'rb') as other:
            assert one.read() == other.read()


def errors_are_said():
    """The finding of an athlete in the last share, with all the warnings that `check` would give."""
    text = club(40).replace('lifter-39 { gym hall;', 'lifter-39 { gym hall; avoid bench;')
    with Folder({'club.block': text}) as folder:
        for more in ([], ['--part', '3/3']):
            alone, shared = (run('build', '--threads', count, *more, '.', cwd=folder.path) for count in ('1', '2'))
            assert alone == shared and alone[2] == 1 and b'lifter-39 avoids bench' in alone[1], shared
        first = run('build', '--part', '1/3', '.', cwd=folder.path)
        assert first[2] == 0, 'the first part has no error'


def wrong_words():
    for arguments in (['--athlete', 'nobody'], ['--format', 'pdf'], ['--block', 'nothing']):
        alone, shared = (run('build', '--threads', count, *arguments, '.', cwd=EXAMPLES) for count in ('1', '2'))
        assert alone == shared and alone[2] == 2, (arguments, shared)
    for argument in ('0/2', '3/2', '2', 'a/b', '1/', '1/2/3'):
        out, err, status = run('build', '--part', argument, '.', cwd=EXAMPLES)
        assert (out, status) == (b'', 2) and argument.encode() in err, err
    for argument in ('0', '65', 'two', ''):
        out, err, status = run('build', '--threads', argument, '.', cwd=EXAMPLES)
        assert (out, status) == (b'', 2) and b'--threads' in err, err
    out, err, status = run('build', '--part', '1/2', '--sheet', 'group', '.', cwd=EXAMPLES)
    assert (out, status) == (b'', 2) and b'no parts' in err, err


def targets_that_fail():
    """A full disk, a reader who has gone: as one process says it, and no process stays behind."""
    with Folder({'club.block': club(75)}) as folder:
        alone, shared = (run('build', '--format', 'csv', '--threads', count, '-o', '/dev/full', '.', cwd=folder.path) for count in ('1', '2'))
        assert alone == shared and alone[2] == 3, shared
        piped = subprocess.Popen([PROGRAM, 'build', '--threads', '3', '.'], cwd=folder.path, stdout=subprocess.PIPE,
                                 stderr=subprocess.PIPE, start_new_session=True)
        piped.stdout.read(10)
        piped.stdout.close()
        assert piped.wait(timeout=60) == 3 and piped.stderr.read() == b''
        try:
            os.killpg(piped.pid, signal.SIGKILL)
            raise AssertionError('a process stayed behind')
        except ProcessLookupError:
            pass


def a_process_that_is_killed():
    """What it still owed is missing from what is held back: no byte of that may come out."""
    with Folder({'club.block': club(4000)}) as folder:
        built = subprocess.Popen([PROGRAM, 'build', '--threads', '2', '.'], cwd=folder.path, stdout=subprocess.PIPE,
                                 stderr=subprocess.PIPE)
        children, until = [], time.monotonic() + 60
        while not children and built.poll() is None and time.monotonic() < until:
            with open(f'/proc/{built.pid}/task/{built.pid}/children', encoding='ascii') as file:
                children = file.read().split()
        os.kill(int(children[0]), signal.SIGKILL)
        out, err = built.communicate(timeout=60)
        assert (out, built.returncode) == (b'', 4), (len(out), built.returncode, err)
        assert b'nothing was written' in err, err


def a_process_killed_while_rows_come_out():
    """What has come out cannot be taken back, so it is said that it is not whole."""
    with Folder({'club.block': club(4000)}) as folder:
        built = subprocess.Popen([PROGRAM, 'build', '--format', 'csv', '--threads', '2', '.'], cwd=folder.path,
                                 stdout=subprocess.PIPE, stderr=subprocess.PIPE)
        assert built.stdout.read(7) == b'athlete'
        with open(f'/proc/{built.pid}/task/{built.pid}/children', encoding='ascii') as file:
            os.kill(int(file.read().split()[1]), signal.SIGKILL)
        _, err = built.communicate(timeout=60)
        assert built.returncode == 4 and b'what came out is not whole' in err and b'nothing was written' not in err, err


def manual_fence(mark):
    with open(os.path.join(TOP, 'grammar/LANGUAGE.md'), encoding='utf-8') as file:
        return next(text for text in re.findall(r'(?ms)^```sh\n(.*?)^```', file.read()) if mark in text)


def as_in_the_manual(mark, environment, command):
    """The lines of the manual, with this program as `setwright`."""
    with Folder({'club/club.block': club(30)}) as folder:
        os.mkdir(os.path.join(folder.path, 'bin'))
        os.symlink(PROGRAM, os.path.join(folder.path, 'bin', 'setwright'))
        text = folder.write('job.sh', manual_fence(mark))
        env = dict(os.environ, PATH=os.path.join(folder.path, 'bin') + ':' + os.environ['PATH'])
        for more in environment:
            done = subprocess.run(['sh', text], cwd=folder.path, env=dict(env, **more), capture_output=True, timeout=120)
            assert done.returncode == 0, done.stderr.decode()
        built = subprocess.run(['sh', '-c', command], cwd=folder.path, env=env, capture_output=True, timeout=60).stdout
        assert built == whole(os.path.join(folder.path, 'club'), 'csv')


for each in FORMATS:
    tested(f'parts of {each} are the whole', parts, each)
    tested(f'threads write the same {each}', threads, each)
tested('an error is said as without', errors_are_said)
tested('wrong words are said as without', wrong_words)
tested('a full disk and a reader who has gone', targets_that_fail)
tested('a process that is killed', a_process_that_is_killed)
tested('a process killed while rows come out', a_process_killed_while_rows_come_out)
if shutil.which('parallel'):
    tested('GNU parallel, as in the manual', as_in_the_manual, 'parallel', [{}], 'cat plan.csv')
tested('a job array, as in the manual', as_in_the_manual, 'SLURM_ARRAY_TASK_ID',
       [{'SLURM_ARRAY_TASK_ID': str(task), 'SLURM_ARRAY_TASK_COUNT': '4'} for task in (3, 1, 4, 2)], 'cat part-*.csv')
finish()
