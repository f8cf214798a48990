#!/usr/bin/env python3
"""Runs what README.md and grammar/LANGUAGE.md show.

In both, a fence whose first word is `block` holds text of the language:

    ```block               a whole file, example.block for the outputs after it
    ```block NAME.block    the same under a name; it stays beside the later ones and may be used by them
    ```block NAME wrong    only laid beside: the outputs after it show what is wrong with it
    ```block NAME.csv      a spreadsheet for a `roster` line, only laid beside
    ```block body          lines of a block: put into a four-week block for ines of club.block
    ```block day           lines of a day of such a block

and must be accepted without a finding, unless a `text check` or `text rules` follows (the rules of the trade have tests of
their own and are left out here: a manual's three lines are no season). A fence whose first word is `text` shows
what setwright says about the block before it:

    ```text check          the findings but for warnings and advice of the trade's rules; `text rules` has all
    ```text build …        `setwright build … FILE`; so are why and other commands
    ```text csv A,B,…      these columns of the csv, without its warm-up rows; `csv --week 2 A,B` narrows it

A line of three dots stands for any number of lines. In README.md a ```sh fence before a ```text is run by a
shell in one folder, where the block files lie. SETWRIGHT_GOLDEN=1 rewrites the outputs that have no dots.
"""
import csv
import os
import re
import subprocess
import sys
import tempfile

SETWRIGHT = os.environ['SETWRIGHT']
TOP = os.environ['SETWRIGHT_SRC']
GOLDEN = bool(os.environ.get('SETWRIGHT_GOLDEN'))
DOTS = '…'


def read(path):
    with open(os.path.join(TOP, path), encoding='utf-8') as file:
        return file.read()


KINDS = re.findall(r'(?m)^        "([a-z-]+)", LEVEL_', read('src/base/kinds.c'))
HEAD = 'use "club.block"\nblock example { for ines; starts 2027-01-04; weeks 4\n'
WRAPS = {'body': (HEAD, '}\n'), 'day': (HEAD + 'day A on mon {\n', '} }\n')}
failed = False


def result(fine, name, *remarks):
    global failed
    failed = failed or not fine
    print(('ok ' if fine else 'not ok ') + name)
    if not fine:
        for remark in remarks:
            print('    ' + remark.rstrip('\n').replace('\n', '\n    '))


def run(folder, *command):
    done = subprocess.run(command, cwd=folder, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, check=False,
                          env={**os.environ, 'PATH': os.path.join(folder, '.bin') + ':' + os.environ['PATH']})
    return done.returncode, done.stdout.decode()


def says(folder, *words):
    return run(folder, SETWRIGHT, *words)


def matches(shown, said):
    """Whether the lines shown are those said, dots standing for any lines left out."""
    parts = [part.strip('\n') for part in re.split(r'(?m)^%s$' % DOTS, shown.rstrip('\n'))]
    if len(parts) == 1:
        return shown.rstrip('\n') == said.rstrip('\n')
    text, at = '\n' + said.rstrip('\n') + '\n', 0
    for number, part in enumerate(parts):
        if not part:
            continue
        found = text.find('\n' + part + '\n', at)
        if found < 0 or (number == 0 and found > 0):
            return False
        at = found + len(part) + 1
    return not parts[-1] or at == len(text) - 1


def heard(said):
    """What `check` said, without warnings and advice of trade rules: those whose name is not in base/kinds.c."""
    heads = r'(?m)^(?=\S.*?:\d+:\d+: (?:error|warning|advice): )'
    named = r'^\S.*?: (?:warning|advice): .*\[([a-z-]+)\]'
    return ''.join(one for one in re.split(heads, said) if re.sub(named + r'[\s\S]*', r'\1', one) in (one, *KINDS))


def columns(folder, words, file):
    *narrow, wanted = words.split()
    status, said = says(folder, 'build', '--format', 'csv', *narrow, file)
    if status:
        return status, said
    rows = [row for row in csv.DictReader(said.splitlines()) if row['role'] != 'warm-up']
    wanted = wanted.split(',')
    return 0, ''.join(','.join(cells) + '\n' for cells in [wanted] + [[row[name] for name in wanted] for row in rows])


class Page:
    """One document: walks its fences, keeps what it has become when outputs are rewritten."""

    def __init__(self, path, folder):
        self.path, self.folder, self.file, self.sh = path, folder, None, None
        with open(os.path.join(TOP, path), encoding='utf-8') as page:
            self.lines = page.read().split('\n')
        os.mkdir(os.path.join(folder, '.bin'))
        os.symlink(SETWRIGHT, os.path.join(folder, '.bin', 'setwright'))
        self.examples = self.outputs = 0

    def fences(self):
        """(line of the opening, its words, line of the closing) of each."""
        at = 0
        while at < len(self.lines):
            if self.lines[at].startswith('```'):
                end = self.lines.index('```', at + 1)
                yield at, self.lines[at][3:].strip(), end
                at = end
            at += 1

    def walk(self):
        fences = list(self.fences())
        changes = []
        for number, (start, words, end) in enumerate(fences):
            kind, _, rest = words.partition(' ')
            text = '\n'.join(self.lines[start + 1:end]) + '\n'
            then = fences[number + 1][1] if number + 1 < len(fences) else ''
            name = '%s:%d' % (self.path, start + 1)
            if kind == 'block':
                self.block(name, rest, text, expects=then in ('text check', 'text rules'))
            elif kind == 'sh':
                self.sh = text
            elif kind == 'text':
                status, said = self.output(rest)
                if GOLDEN and DOTS not in text.split('\n'):
                    changes.append((start, end, said.rstrip('\n').split('\n')))
                else:
                    result(matches(text, said), name + ' ' + rest, 'this was said (status %d):' % status, said)
                self.outputs += 1
            else:
                result(False, name, 'a fence is block, text or sh, and this is "%s"' % words)
            if kind != 'sh':
                self.sh = None
        for start, end, lines in reversed(changes):
            self.lines[start + 1:end] = lines
        if changes:
            with open(os.path.join(TOP, self.path), 'w', encoding='utf-8') as page:
                page.write('\n'.join(self.lines))

    def block(self, name, rest, text, expects):
        rest, _, wrong = rest.partition(' ')
        if wrong or rest.endswith('.csv'):
            with open(os.path.join(self.folder, rest), 'w', encoding='utf-8') as file:
                file.write(text)
            return
        self.file = rest if rest.endswith('.block') else 'example.block'
        before, after = WRAPS.get(rest, ('', ''))
        with open(os.path.join(self.folder, self.file), 'w', encoding='utf-8') as file:
            file.write(before + text + after)
        self.examples += 1
        if not expects:
            status, said = says(self.folder, 'check', self.file)
            result(status == 0 and not heard(said), name, said)

    def output(self, rest):
        if self.sh:
            return run(self.folder, 'sh', '-c', self.sh)
        command, _, words = rest.partition(' ')
        if command == 'csv':
            return columns(self.folder, words, self.file)
        if command == 'rules':
            return says(self.folder, 'check', self.file)
        status, said = says(self.folder, command, *words.split(), self.file)
        return status, heard(said) if command == 'check' else said


def named_in(page, what, names):
    text = read(page)
    missing = [name for name in names if not re.search(r'(?<![\w-])%s(?![\w-])' % re.escape(name), text)]
    result(bool(names) and not missing, '%s names every %s' % (page, what), 'not named: ' + ' '.join(missing))


def listed():
    """The tables of the program, against the pages that teach them."""
    manual = 'grammar/LANGUAGE.md'
    named_in(manual, 'word of the language', re.findall(r'^    [WX]\("([^"]+)"', read('src/syntax/words.c'), re.M))
    named_in(manual, 'repetition curve', re.findall(r'\{ \.name = "(\w+)"', read('src/calc/curve.c')))
    named_in(manual, 'kind of finding', KINDS)
    named_in(manual, 'rule of the trade', re.findall(r'^([a-z-]+) ', says(TOP, 'explain')[1], re.M))
    _, said = says(TOP, 'templates')
    named_in(manual, 'file of the library', re.findall(r'^(std/\S+)', said, re.M))
    _, said = says(TOP, '--help')
    commands = re.findall(r'^  ([a-z]+)  ', said, re.M)
    named_in(manual, 'command', ['setwright ' + command for command in commands])
    options = sorted({option for command in commands for option in re.findall(r'--[a-z]+(?:-[a-z]+)*', says(TOP, command, '--help')[1])})
    named_in(manual, 'option', options)
    named_in(manual, 'format', re.findall(r'\.name = "(\w+)"', read('src/emit/formats.c')))
    named_in(manual, 'column of the csv', says(TOP, 'build', '--format', 'csv', 'examples')[1].split('\n')[0].split(','))


def main():
    for path, fewest in (('README.md', 4), ('grammar/LANGUAGE.md', 60)):
        with tempfile.TemporaryDirectory() as folder:
            page = Page(path, folder)
            page.walk()
            result(page.examples + page.outputs >= fewest, path + ' has its examples',
                   'only %d blocks and %d outputs were found' % (page.examples, page.outputs))
    listed()
    sys.exit(1 if failed else 0)


main()
