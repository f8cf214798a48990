#!/usr/bin/env python3
"""The rules of the trade, each with its folder in tests/cases/rules: a rule without a folder fails, and a folder without a rule.

    fires    trips it                 quiet    the same file mended
    edge     exactly on the limit     over     just past it
    allowed  trips it, with an `allow` and its reason

Names may go on, as in edge-low. NAME.txt beside NAME.block is what `setwright check` says, word for word. Rules without a
limit have no edge; a rule that is an error at every level cannot be allowed: its `allowed` shows that. SETWRIGHT_GOLDEN=1 rewrites the .txt files; their diff is the
review.
"""
import os
import re
import sys

sys.path.insert(0, __file__.rsplit('/', 1)[0] + '/oracle')
from program import TOP, Folder, finish, run, tested  # noqa: E402

CASES = os.path.join(TOP, 'tests/cases/rules')
FINDS = {'fires': True, 'over': True, 'quiet': False, 'edge': False, 'allowed': False}
golden = os.environ.get('SETWRIGHT_GOLDEN')


def pages():
    """The page of each rule; other findings have no `checks` line."""
    out, _, _ = run('explain')
    found = {}
    for name in (line.split()[0] for line in out.decode().splitlines()):
        page = run('explain', name)[0].decode()
        if re.search(rf'(?m)^    checks {{ (off )?{name} ', page):
            found[name] = page
    return found


def wanted(page):
    kinds = ['fires', 'quiet']
    if ' Limit: ' in page.replace('\n', ' '):
        kinds += ['edge', 'over']
    return kinds + (['allowed'] if '\n    allow ' in page else [])


def kind_of(case):
    return case.split('-')[0]


def files_of(rule):
    folder = os.path.join(CASES, rule)
    return sorted(os.listdir(folder)) if os.path.isdir(folder) else []


def folder_is_whole(rule, page):
    files = files_of(rule)
    cases = [name[:-len('.block')] for name in files if name.endswith('.block')]
    assert cases, f'the rule {rule} has no folder of tests'
    missing = set(wanted(page)) - set(map(kind_of, cases))
    assert not missing, f'{rule} has no {", ".join(sorted(missing))}'
    strange = [case for case in cases if kind_of(case) not in FINDS]
    assert not strange, f'what should {", ".join(strange)} show?'
    alone = set(files) - {case + end for case in cases for end in ('.block', '.txt')}
    assert golden or not alone, f'{", ".join(sorted(alone))}: what for?'


def case_holds(rule, case, only_errors):
    folder = os.path.join(CASES, rule)
    out, err, status = run('check', case + '.block', cwd=folder)
    said = err.decode()
    path = os.path.join(folder, case + '.txt')
    if golden:
        with open(path, 'w', encoding='utf-8', newline='') as file:
            file.write(said)
    with open(path, encoding='utf-8', newline='') as file:
        expected = file.read()
    assert said == expected, f'it says\n{said}and not\n{expected}'
    assert not out, out
    assert status == (1 if re.search(r'(?m)^[^ ].*?:\d+:\d+: error: ', said) else 0), status
    count = len(re.findall(rf'(?m)^\S.* \[{rule}\]$', said))
    if kind_of(case) == 'allowed' and only_errors:
        assert count, 'an error was allowed'
    elif FINDS[kind_of(case)]:
        assert count, f'{rule} does not fire'
    else:
        assert not count, f'{rule} fires'
    if case == 'fires':
        assert count == 1, f'{rule} fires {count} times and not once'


def said_with(rule, line):
    """What is said of the file that trips the rule, with one line more at its end, and the status."""
    with open(os.path.join(CASES, rule, 'fires.block'), encoding='utf-8') as file:
        text = file.read()
    with Folder({'fires.block': text + line}) as folder:
        _, err, status = run('check', 'fires.block', cwd=folder.path)
    return [row for row in err.decode().splitlines() if row.endswith(f' [{rule}]')], status


def can_be_silenced(rule):
    said, _ = said_with(rule, f'checks {{ off {rule} because "asked for here" }}\n')
    assert not said, said


def has_the_level_that_is_asked_for(rule):
    for level in ('error', 'warning', 'advice'):
        said, status = said_with(rule, f'checks {{ {rule} level {level} }}\n')
        assert said and all(f': {level}: ' in row for row in said), f'{level}: {said}'
        assert status == 1 or level != 'error', status


rules = pages()
tested('there are rules', lambda: rules['moderate-share'] and rules['under-bar'])
for name in sorted(os.listdir(CASES)):
    tested(f'{name} is a rule', lambda: rules[name])
for name, text in rules.items():
    tested(f'{name} has its folder', folder_is_whole, name, text)
    tested(f'{name} can be silenced', can_be_silenced, name)
    tested(f'{name} has the level that is asked for', has_the_level_that_is_asked_for, name)
    for case_name in (file[:-len('.block')] for file in files_of(name) if file.endswith('.block')):
        tested(f'{name}/{case_name}', case_holds, name, case_name, '\nLevel: error.' in text)
finish()
