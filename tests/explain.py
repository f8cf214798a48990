#!/usr/bin/env python3
"""`setwright explain`: the list is whole, and what a page shows is true.

A rule's page shows two whole files, the second without the finding, then how to change its limit and how to allow one finding;
all four are tried.
"""
import re
import sys

sys.path.insert(0, __file__.rsplit('/', 1)[0] + '/oracle')
from program import Folder, finish, run, tested  # noqa: E402


def listed():
    out, err, status = run('explain')
    assert status == 0 and not err, (status, err)
    return [line.split(None, 1) for line in out.decode().splitlines()]


def page_of(name):
    out, err, status = run('explain', name)
    assert status == 0 and not err, (status, err)
    return out.decode()


def examples(page):
    """The indented paragraphs."""
    return [re.sub(r'(?m)^    ', '', found.group()) for found in re.finditer(r'(?m)(?:^    .*\n)+', page)]


def findings(text):
    """Name and line of each finding of a file."""
    with Folder({'club.block': text}) as folder:
        _, err, status = run('check', '--findings', 'short', 'club.block', cwd=folder.path)
    assert status < 3, (status, err)
    return [(found.group(2), int(found.group(1)))
            for found in re.finditer(r'(?m)^club\.block:(\d+):\d+: .*\[([a-z-]+)\]$', err.decode())]


def names(text):
    return [name for name, _ in findings(text)]


def list_is_whole():
    rows = listed()
    assert len(rows) > 50, rows
    assert all(len(row) == 2 for row in rows), rows
    assert len({name for name, _ in rows}) == len(rows), 'a name stands twice'


def page_is_filled(name):
    page = page_of(name)
    assert page.startswith(name + '\n\n'), page
    assert len(examples(page)) >= 2, 'a page shows what trips it and the same mended'
    assert max(map(len, page.splitlines())) <= 100, 'a line is too wide'


def rule_is_true(name):
    page = page_of(name)
    fires, mended, checks, *allow = examples(page)
    assert fires != mended
    assert 'Source: ' in page, 'no source'
    before, after = names(fires), names(mended)
    assert name in before, f'the first example does not give it: {before}'
    assert name not in after, f'the second example still gives it: {after}'
    assert 'error' not in levels(mended), 'the mended example has an error'
    line = fires.count('\n') + 1
    assert not [found for found in findings(fires + checks) if found[1] == line], 'its `checks` line is not understood'
    if allow:
        allowed = re.sub(r'(?m)^(block \w+ \{\n)', r'\1  ' + allow[0], fires)
        assert (name in names(allowed)) == ('error' in levels(fires, name)), 'its `allow` line does not do what it says'


def levels(text, name=None):
    with Folder({'club.block': text}) as folder:
        _, err, _ = run('check', '--findings', 'short', 'club.block', cwd=folder.path)
    return [found.group(1) for found in re.finditer(r'(?m)^club\.block:\d+:\d+: (\w+): .*\[([a-z-]+)\]$', err.decode())
            if name in (None, found.group(2))]


def is_rule(name):
    return f'    checks {{ {name} ' in page_of(name) or f'    checks {{ off {name} ' in page_of(name)


tested('the list has a line for each name', list_is_whole)
for each, _ in listed():
    tested(f'explain {each}', page_is_filled, each)
    if is_rule(each):
        tested(f'{each}: its examples do what its page says', rule_is_true, each)
finish()
