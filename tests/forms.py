#!/usr/bin/env python3
"""Findings in every form: that all carry the same ones, that each form is well made, and what --accept and --fail-on do.

Each form is read back by someone else: JSON by Python, SARIF by the published schema (tests/schemas/) through jsonschema,
workflow commands by the unescaping below, which is that of GitHub's toolkit turned round (% CR LF, in properties : and , too).
"""
import json
import os
import re
import stat
import subprocess
import sys
import urllib.parse

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), 'oracle'))
from program import TOP, Folder, finish, run, tested  # noqa: E402

import jsonschema  # noqa: E402

# An accessory under its bar in a block that has no week 9: no other rule has a word to say of that.
CLUB = '''lift squat { loads bar }
athlete ines { max squat 120 kg on 2026-11-28 }
athlete tomas { max squat 100 kg on 2026-11-28 }
'''
# é and 𝄞 stand before the finding: two and four bytes, one and two UTF-16 units, one column each.
WINTER = '''block winter {
  for ines, tomas
  starts 2027-01-04
  weeks 2
  day A on mon { note "é𝄞"; squat 1 x 3 at 5% }
  day B on thu { squat 1 x 3 at 5%
    squat 2 x 3 at 4% }
  deload week 9
}
'''
ERRORS = 'lift squat { }\nlift squat { }\nathlete ines { max bench 60 kg }\n'
# By number, should another rule learn to speak of these files.
OURS = ('under-bar', 'weeks')


def check(folder, *options, **changed):
    out, err, status = run('check', *options, '.', cwd=folder.path, **changed)
    return out.decode(), err.decode(), status


def winter(**more):
    return Folder({'club.block': CLUB, 'winter.block': WINTER, **more})


def equal(found, expected, what=''):
    assert found == expected, f'{what} {found!r} is not {expected!r}'


# ---- reading each form back: a list of (level, rule, file, line, column, end line, end column, message) ----

def from_short(text):
    pattern = re.compile(r'(.*?):(\d+):(\d+): (error|warning|advice): (.*) \[([\w-]+)\]$')
    rows = [pattern.match(line).groups() for line in text.splitlines()]
    return [(level, rule, file, int(line), int(column), None, None, message) for file, line, column, level, message, rule in rows]


def from_json(text):
    rows = [json.loads(line) for line in text.splitlines()]
    return [(r['level'], r['rule'], r['file'], r['start']['line'], r['start']['column'], r['end']['line'], r['end']['column'], r['message'])
            for r in rows]


def from_sarif(text, suppressed=False):
    rows = []
    for r in json.loads(text)['runs'][0]['results']:
        if bool(r['suppressions']) != suppressed:
            continue
        place = r['locations'][0]['physicalLocation']
        region = place['region']
        level = {'note': 'advice'}.get(r['level'], r['level'])
        rows.append((level, r['ruleId'], urllib.parse.unquote(place['artifactLocation']['uri']), region['startLine'], region['startColumn'],
                     region['endLine'], region['endColumn'], r['message']['text'].split('\n')[0]))
    return rows


def unescaped(text, escapes):
    for code, char in escapes:
        text = text.replace(code, char)
    return text


IN_MESSAGES = (('%0D', '\r'), ('%0A', '\n'), ('%25', '%'))
IN_PROPERTIES = (('%3A', ':'), ('%2C', ',')) + IN_MESSAGES


def commands(text):
    """The runner's reading: ::COMMAND KEY=VALUE,…::MESSAGE."""
    for line in text.splitlines():
        command, properties, message = re.match(r'::(error|warning|notice) ([^:]*)::(.*)$', line).groups()
        pairs = dict(pair.split('=', 1) for pair in properties.split(','))
        yield command, {key: unescaped(value, IN_PROPERTIES) for key, value in pairs.items()}, unescaped(message, IN_MESSAGES)


def from_github(text):
    rows = []
    for command, p, message in commands(text):
        rows.append(({'notice': 'advice'}.get(command, command), p['title'], p['file'], int(p['line']), int(p['col']), int(p['endLine']),
                     int(p['endColumn']), message.split('\n')[0]))
    return rows


READERS = {'json': from_json, 'sarif': from_sarif, 'github': from_github}


def schema():
    with open(os.path.join(TOP, 'tests/schemas/sarif-2.1.0-rtm.5.json'), encoding='utf-8') as file:
        return json.load(file)


def sarif_valid(text):
    jsonschema.Draft4Validator(schema()).validate(json.loads(text))


# ---- the forms ----

def same_in_all(files):
    with Folder(files) as folder:
        out, err, status = check(folder, '--findings', 'short')
        equal(out, '', 'standard output of short:')
        expected = from_short('\n'.join(line for line in err.splitlines() if not line.startswith('setwright: ')))
        assert len(expected) >= 3, expected
        _, full, _ = check(folder)
        firsts = [line for line in full.splitlines() if re.search(r': (error|warning|advice): .*\]$', line)]
        equal(firsts, err.splitlines(), 'first lines of text:')
        rows = {}
        for form, reader in READERS.items():
            out, err, ended = check(folder, '--findings', form)
            equal(ended, status, f'status of {form}:')
            rows[form] = reader(out)
            equal([row[:5] + (None, None) + row[7:] for row in rows[form]], [row[:5] + (None, None) + row[7:] for row in expected], form)
            assert err if status else err == '', f'{form} says on standard error: {err!r}'
        equal(rows['json'], rows['sarif'], 'sarif and json:')
        equal(rows['json'], rows['github'], 'github and json:')


def text_is_the_default():
    with winter() as folder:
        equal(check(folder), check(folder, '--findings', 'text'))
        equal(check(folder)[0], '')


def json_keys_and_places():
    with winter() as folder:
        out, _, _ = check(folder, '--findings', 'json')
        rows = [json.loads(line) for line in out.splitlines()]
        for row in rows:
            equal(list(row), ['version', 'rule', 'level', 'message', 'help', 'file', 'start', 'end', 'related', 'place', 'athlete', 'athletes',
                              'athlete_count'])
            equal(list(row['place']), ['block', 'week', 'day', 'lift', 'group'])
            # The places against the file itself: bytes and columns from the same words.
            with open(os.path.join(folder.path, row['file']), 'rb') as file:
                text = file.read()
            for end in (row['start'], row['end']):
                before = text[:end['byte']].decode()
                equal((before.count('\n') + 1, len(before) - (before.rfind('\n') + 1) + 1), (end['line'], end['column']))
        bars = [row for row in rows if row['rule'] == 'under-bar']
        first = bars[0]
        line = WINTER.splitlines()[4]
        equal((first['start']['line'], first['start']['column']), (5, line.index('at 5%') + 1))
        start = first['start']['byte']
        equal(WINTER.encode()[start:first['end']['byte']], b'at 5%')
        equal((first['place']['block'], first['place']['day'], first['place']['lift']), ('winter', 'A', 'squat'))
        # The group as written, whatever part of it the finding points at.
        equal([row['place']['group'] for row in bars], ['1 x 3 at 5%', '1 x 3 at 5%', '2 x 3 at 4%'])
        equal({row['place']['group'] for row in rows if row['rule'] == 'weeks'}, {None})
        equal((first['athlete'], first['athletes'], first['athlete_count']), ('ines', ['ines', 'tomas'], 2))
        equal([row['athlete'] for row in rows if row['rule'] == 'weeks'], [None])


def related_places():
    with Folder({'club.block': ERRORS}) as folder:
        out, err, status = check(folder, '--findings', 'json')
        equal(status, 1)
        row = [json.loads(line) for line in out.splitlines() if 'duplicate-name' in line][0]
        # The second declaration is the finding, the first the place beside it; or the other way round.
        lines = {row['start']['line'], row['related'][0]['start']['line']}
        equal(lines, {1, 2})
        equal(sorted(row['related'][0]), ['end', 'file', 'message', 'start'])
        sarif = json.loads(check(folder, '--findings', 'sarif')[0])
        result = [r for r in sarif['runs'][0]['results'] if r['ruleId'] == 'duplicate-name'][0]
        related = result['relatedLocations'][0]
        equal(related['physicalLocation']['region']['startLine'], row['related'][0]['start']['line'])
        equal(related['message']['text'], row['related'][0]['message'])
        message = [m for _, p, m in commands(check(folder, '--findings', 'github')[0]) if p['title'] == 'duplicate-name'][0]
        assert row['related'][0]['message'] in message.split('\n')[-1], message


def eleven_athletes():
    people = [f'rower-{letter}' for letter in 'abcdefghijk']
    text = 'lift squat { loads bar }\n' + ''.join(f'athlete {name} {{ max squat 100 kg }}\n' for name in people)
    text += f'block winter {{ for {", ".join(people)}; starts 2027-01-04; weeks 1; day A {{ squat 1 x 3 at 5% }} }}\n'
    with Folder({'club.block': text}) as folder:
        row = [json.loads(line) for line in check(folder, '--findings', 'json')[0].splitlines() if 'under-bar' in line][0]
        equal((row['athletes'], row['athlete_count']), (people[:8], 11))
        assert 'and 3 more' in check(folder, '--findings', 'github')[0]
        assert '  in block winter, week 1, day A, squat for rower-a, rower-b,' in check(folder)[1] and 'rower-h and 3 more\n' in check(folder)[1]


def a_finding_over_two_lines():
    """Workflow commands take columns within one line alone; the other forms have both ends."""
    text = CLUB + WINTER.replace('5% }', '5%; squat (3 |\n  4 | 5) x 3 at 50% }', 1)
    with Folder({'club.block': text}) as folder:
        rows = [row for row in from_json(check(folder, '--findings', 'json')[0]) if row[1] == 'weeks' and row[3] != row[5]]
        equal(len(rows), 1)
        level, rule, file, line, column, end_line, end_column, message = rows[0]
        lines = text.splitlines()
        equal((lines[line - 1][column - 1:], lines[end_line - 1][:end_column - 1]), ('(3 |', '  4 | 5)'))
        equal([row for row in from_sarif(check(folder, '--findings', 'sarif')[0]) if row[3] != row[5]], rows)
        found = [(command, p, said) for command, p, said in commands(check(folder, '--findings', 'github')[0]) if said.startswith(message)]
        equal([(command, p) for command, p, _ in found], [(level, {'file': file, 'line': str(line), 'endLine': str(end_line), 'title': rule})])


def a_finding_without_a_place():
    """A file that is not there has no line to point at."""
    with winter() as folder:
        words = ('winter.block', 'club.block', 'gone.block')
        out, err, status = run('check', '--findings', 'json', *words, cwd=folder.path)
        rows = [json.loads(line) for line in out.decode().splitlines()]
        gone = [row for row in rows if row['rule'] == 'file']
        equal([(row['message'], row['file'], row['start'], row['end']) for row in gone], [('gone.block: no such file', None, None, None)])
        equal(status, 3)
        out = run('check', '--findings', 'sarif', *words, cwd=folder.path)[0].decode()
        sarif_valid(out)
        equal([r.get('locations') for r in json.loads(out)['runs'][0]['results'] if r['ruleId'] == 'file'], [[]])
        out = run('check', '--findings', 'github', *words, cwd=folder.path)[0].decode()
        assert re.search(r'(?m)^::error title=file::gone\.block: no such file', out), out
        # Nor is it a finding of any file that could be accepted.
        equal(run('check', '--write-accept', 'club.accepted', *words, cwd=folder.path)[2], 3)


def sarif_against_the_schema():
    for files in ({'club.block': CLUB, 'winter.block': WINTER}, {'club.block': ERRORS}, {'club.block': CLUB}):
        with Folder(files) as folder:
            out, _, _ = check(folder, '--findings', 'sarif')
            sarif_valid(out)
            log = json.loads(out)
            equal((log['version'], len(log['runs'])), ('2.1.0', 1))
            run_ = log['runs'][0]
            equal((run_['tool']['driver']['name'], run_['columnKind']), ('setwright', 'unicodeCodePoints'))
            equal('setwright ' + run_['tool']['driver']['version'], run('--version')[0].decode().strip())
            rules = [rule['id'] for rule in run_['tool']['driver']['rules']]
            equal([rules[r['ruleIndex']] for r in run_['results']], [r['ruleId'] for r in run_['results']])
            equal(set(rules), {r['ruleId'] for r in run_['results']})
            # SARIF 2.1.0, 3.27.23: suppressions of all results of a run are there, or none are.
            assert all('suppressions' in r for r in run_['results'])


def the_schema_refuses():
    with winter() as folder:
        log = json.loads(check(folder, '--findings', 'sarif')[0])
    for spoil in (lambda r: r.update(level='advice'), lambda r: r.pop('message'), lambda r: r.update(rule='x')):
        broken = json.loads(json.dumps(log))
        spoil(broken['runs'][0]['results'][0])
        try:
            sarif_valid(json.dumps(broken))
        except jsonschema.ValidationError:
            continue
        raise AssertionError('the schema accepts what it should not')


def odd_names():
    """RFC 3986 for the URI; a colon, a comma and a per cent sign are the command's own characters."""
    odd = 'deep water/wïnter: 50%, a+b.block'
    with Folder({'club.block': CLUB, odd: 'use "../club.block"\n' + WINTER}) as folder:
        here = os.path.realpath(folder.path)
        for name in (odd, './' + odd, os.path.join(here, odd)):
            out, _, _ = run('check', '--findings', 'sarif', name, cwd=folder.path)
            uris = {l['physicalLocation']['artifactLocation']['uri'] for r in json.loads(out)['runs'][0]['results'] for l in r['locations']}
            equal(uris, {'deep%20water/w%C3%AFnter%3A%2050%25%2C%20a%2Bb.block'}, name)
            equal({urllib.parse.quote(odd, safe='/-._~')}, uris, 'as Python quotes it:')
            sarif_valid(out.decode())
            out, _, _ = run('check', '--findings', 'github', name, cwd=folder.path)
            equal({p['file'] for _, p, _ in commands(out.decode())}, {odd})
        out, _, _ = run('check', '--findings', 'sarif', os.path.join(here, odd), cwd='/')
        uris = {r['locations'][0]['physicalLocation']['artifactLocation']['uri'] for r in json.loads(out)['runs'][0]['results']}
        equal({urllib.parse.unquote(uri) for uri in uris}, {os.path.join(here, odd)[1:]})
        with Folder() as elsewhere:
            out, _, _ = run('check', '--findings', 'sarif', os.path.join(here, odd), cwd=elsewhere.path)
            uris = {r['locations'][0]['physicalLocation']['artifactLocation']['uri'] for r in json.loads(out)['runs'][0]['results']}
            equal({urllib.parse.unquote(uri) for uri in uris}, {'file://' + os.path.join(here, odd)})


def bytes_that_are_no_text():
    """A name with bytes that are no UTF-8, an escape and a line end: every form stays whole and steers no terminal."""
    with Folder({'club.block': CLUB}) as folder:
        name = os.fsencode(folder.path) + b'/w\xff\x1b[2J\nb.block'
        with open(name, 'wb') as file:
            file.write(b'use "club.block"\n' + WINTER.encode())
        for form in ('json', 'sarif', 'github', 'short'):
            out, err, status = run('check', '--findings', form, b'w\xff\x1b[2J\nb.block', cwd=folder.path)
            equal(status, 0, form)
            shown = (out + err).decode('utf-8')
            assert '\x1b' not in shown, form
            if form == 'sarif':
                sarif_valid(shown)
                assert 'w%FF%1B%5B2J%0Ab.block' in shown, shown
            if form == 'github':
                assert len(list(commands(shown))) >= 3
            if form == 'json':
                assert all(json.loads(line)['file'] for line in shown.splitlines())


def more_than_fifty():
    """Fifty print for people, with the true total; programs get all."""
    text = CLUB + 'block winter {\n for ines\n starts 2027-01-04\n weeks 1\n day A {\n' + ' squat 1 x 3 at 5%\n' * 60 + ' }\n}\n'
    with Folder({'club.block': text}) as folder:
        _, err, _ = check(folder, '--findings', 'short')
        equal(len(err.splitlines()), 51)
        rows = from_json(check(folder, '--findings', 'json')[0])
        assert sum(row[1] == 'under-bar' for row in rows) == 60, len(rows)
        assert err.splitlines()[-1].startswith(f'setwright: {len(rows)} findings'), err.splitlines()[-1]


def twice_and_elsewhere():
    with winter() as folder:
        for form in READERS:
            first = check(folder, '--findings', form)
            equal(check(folder, '--findings', form), first, form)
            equal(check(folder, '--findings', form, LC_ALL='de_DE.UTF-8', TZ='Asia/Kathmandu'), first, form)


def nothing_found():
    with Folder({'club.block': CLUB}) as folder:
        equal(check(folder, '--findings', 'json'), ('', '', 0))
        equal(check(folder, '--findings', 'github'), ('', '', 0))
        out, err, status = check(folder, '--findings', 'sarif')
        equal((json.loads(out)['runs'][0]['results'], err, status), ([], '', 0))


def build_that_fails():
    with Folder({'club.block': ERRORS}) as folder:
        for form, reader in READERS.items():
            out, err, status = run('build', '--findings', form, '.', cwd=folder.path)
            equal((status, err), (1, b'setwright: nothing was built; mend the errors first\n'), form)
            equal(reader(out.decode()), reader(check(folder, '--findings', form)[0]))
    with winter() as folder:
        plain = run('build', '--format', 'csv', '.', cwd=folder.path)
        equal(plain[2], 0)
        equal(run('build', '--format', 'csv', '--findings', 'json', '.', cwd=folder.path), plain)
        out, err, status = run('build', '--format', 'csv', '--findings', 'json', '--strict', '.', cwd=folder.path)
        equal((status, err), (1, b'setwright: nothing was built; mend the warnings first\n'))
        equal(from_json(out.decode()), from_json(check(folder, '--findings', 'json')[0]))


def no_such_form():
    with winter() as folder:
        for wrong, said in (('jsn', 'did you mean json?'), ('pdf', 'text, short, json, sarif or github')):
            out, err, status = check(folder, '--findings', wrong)
            equal((out, status), ('', 2))
            assert said in err, err
        equal(check(folder, '--fail-on', 'warnings')[1:], ('setwright: --fail-on takes error, warning or advice, not warnings\n', 2))


def a_full_disk():
    for form in READERS:
        with winter() as folder, open('/dev/full', 'w') as full:
            done = subprocess.run([os.environ['SETWRIGHT'], 'check', '--findings', form, '.'], cwd=folder.path, stdout=full,
                                  stderr=subprocess.PIPE, timeout=60)
            equal((done.returncode, done.stderr), (3, b'setwright: standard output cannot be written\n'), form)


def allowed_findings():
    """In SARIF as suppressed in the source, with the coach's words; in no other form."""
    text = WINTER.replace('at 5% }\n', 'at 5%; allow under-bar because "the \\"empty\\" bar, for speed" }\n', 1)
    with Folder({'club.block': CLUB, 'winter.block': text}) as folder:
        out, _, _ = check(folder, '--findings', 'sarif')
        sarif_valid(out)
        results = json.loads(out)['runs'][0]['results']
        allowed = [r for r in results if r['suppressions']]
        equal([(r['ruleId'], r['suppressions']) for r in allowed],
              [('under-bar', [{'kind': 'inSource', 'justification': 'the "empty" bar, for speed'}])])
        equal(allowed[0]['locations'][0]['physicalLocation']['region']['startLine'], 5)
        rows = from_json(check(folder, '--findings', 'json')[0])
        equal(from_sarif(out), rows)
        assert (5, 'under-bar') not in [(row[3], row[1]) for row in rows], rows
        assert 'for speed' not in check(folder, '--findings', 'github')[0]


# ---- --fail-on ----

def levels_that_fail():
    with Folder({'club.block': ERRORS}) as errors, winter() as warnings, Folder({'club.block': CLUB}) as clean:
        for folder, expected in ((errors, (1, 1, 1, 1, 1)), (warnings, (0, 0, 1, 1, 1)), (clean, (0, 0, 0, 0, 0))):
            options = ((), ('--fail-on', 'error'), ('--fail-on', 'warning'), ('--strict',), ('--fail-on', 'advice'))
            equal(tuple(check(folder, *option)[2] for option in options), expected)
            for option, status in zip(options, expected):
                if folder is not clean:
                    equal(run('build', *option, '-o', 'plan.txt', '.', cwd=folder.path)[2], status, option)
        equal(check(warnings, '--strict', '--fail-on', 'error')[2], 0, 'the last one counts:')
        out, err, status = check(warnings, '--strict', '--findings', 'json')
        assert status == 1 and re.match(r'setwright: 0 errors, \d+ warnings; they are on standard output\n$', err), err


# ---- --accept ----

def lines_of(folder, name='club.accepted'):
    with open(os.path.join(folder.path, name), encoding='utf-8', newline='') as file:
        return [line for line in file.read().splitlines() if not line.startswith('#')]


def silent_after_writing():
    with winter() as folder:
        rows = from_json(check(folder, '--findings', 'json')[0])
        equal(check(folder, '--write-accept', 'club.accepted', '--fail-on', 'advice'), ('', '', 0))
        counts = {}
        for row in rows:
            counts[row[2].removeprefix('./'), row[1]] = counts.get((row[2].removeprefix('./'), row[1]), 0) + 1
        # Sorted by file, then rule, by bytes, as Python sorts pairs.
        equal(lines_of(folder), [f'{counts[key]} {key[1]} {key[0]}' for key in sorted(counts)])
        for form in ('text', 'short', 'json', 'github'):
            equal(check(folder, '--accept', 'club.accepted', '--fail-on', 'advice', '--findings', form), ('', '', 0), form)
        equal(json.loads(check(folder, '--accept', 'club.accepted', '--findings', 'sarif')[0])['runs'][0]['results'], [])
        equal(run('build', '--strict', '--accept', 'club.accepted', '-o', 'plan.txt', '.', cwd=folder.path), (b'', b'', 0))
        assert check(folder, '--strict')[2] == 1


def written_anew_is_the_same():
    with winter() as folder:
        path = os.path.join(folder.path, 'club.accepted')
        check(folder, '--write-accept', 'club.accepted')
        with open(path, 'rb') as file:
            first = file.read()
        assert first.startswith(b'# ')
        check(folder, '--write-accept', 'club.accepted')
        with open(path, 'rb') as file:
            equal(file.read(), first)
        os.remove(path)
        run('check', '--write-accept', 'club.accepted', 'winter.block', './club.block', cwd=folder.path)
        with open(path, 'rb') as file:
            equal(file.read(), first, 'files in another order:')
        os.remove(path)
        run('check', '--write-accept', path, folder.path, cwd='/')
        with open(path, 'rb') as file:
            equal(file.read(), first, 'from another folder:')


def one_more_is_heard():
    with winter() as folder:
        check(folder, '--write-accept', 'club.accepted')
        before = lines_of(folder)
        folder.write('winter.block', WINTER.replace('    squat 2 x 3 at 4% }', '    squat 2 x 3 at 4%\n    squat 3 x 3 at 3% }'))
        out, err, status = check(folder, '--accept', 'club.accepted', '--findings', 'json', '--strict')
        equal([(row[1], row[3]) for row in from_json(out) if row[1] in OURS], [('under-bar', 8)])
        equal(status, 1)
        assert 'advice: 3 of under-bar accepted in winter.block, 4 met' in err, err
        # Written again, nothing is added: the file only shrinks.
        out, err, status = check(folder, '--write-accept', 'club.accepted', '--findings', 'json', '--strict')
        equal([(row[1], row[3]) for row in from_json(out) if row[1] in OURS], [('under-bar', 8)])
        equal((lines_of(folder), status), (before, 1))
        assert 'nothing was added' in err, err


def one_fewer_is_said():
    with winter() as folder:
        check(folder, '--write-accept', 'club.accepted')
        folder.write('winter.block', WINTER.replace('    squat 2 x 3 at 4% }', '  }'))
        out, err, status = check(folder, '--accept', 'club.accepted', '--fail-on', 'advice')
        number = [i for i, line in enumerate(open(os.path.join(folder.path, 'club.accepted')), 1) if 'under-bar' in line][0]
        assert (f'setwright: club.accepted:{number}: advice: 3 of under-bar accepted in winter.block, 2 met; '
                '`setwright check --write-accept club.accepted` lowers the count\n') in err, err
        equal((out, status), ('', 0))
        check(folder, '--write-accept', 'club.accepted')
        assert '2 under-bar winter.block' in lines_of(folder), lines_of(folder)
        equal(check(folder, '--accept', 'club.accepted', '--fail-on', 'advice'), ('', '', 0))
        # Once lowered it stays so.
        folder.write('winter.block', WINTER)
        check(folder, '--write-accept', 'club.accepted')
        assert '2 under-bar winter.block' in lines_of(folder), lines_of(folder)


def files_not_looked_at():
    """A run over some of the files says nothing of the others; a file that is gone is said."""
    with winter(**{'spring.block': WINTER.replace('winter', 'spring').replace('2027-01-04', '2027-02-01')}) as folder:
        check(folder, '--write-accept', 'club.accepted')
        before = lines_of(folder)
        assert any(line.endswith(' spring.block') for line in before), before
        one = ('check', '--accept', 'club.accepted', 'club.block', 'winter.block')
        assert b'spring.block' not in run(*one, cwd=folder.path)[1]
        run('check', '--write-accept', 'club.accepted', 'club.block', 'winter.block', cwd=folder.path)
        equal([line for line in lines_of(folder) if 'spring' in line], [line for line in before if 'spring' in line])
        os.remove(os.path.join(folder.path, 'spring.block'))
        assert b'accepted in spring.block, 0 met' in run(*one, cwd=folder.path)[1]
        check(folder, '--write-accept', 'club.accepted')
        assert not any('spring' in line for line in lines_of(folder)), lines_of(folder)


def the_library_is_no_file():
    """What is accepted in a shipped file stays when a run does not use that file."""
    with winter() as folder:
        folder.write('club.accepted', '2 zone-reps std/strength.block\n')
        for option in ('--accept', '--write-accept'):
            assert 'std/' not in check(folder, option, 'club.accepted')[1]
        equal(lines_of(folder), ['2 zone-reps std/strength.block'])


def errors_are_never_accepted():
    with Folder({'club.block': ERRORS}) as folder:
        out, err, status = check(folder, '--write-accept', 'club.accepted')
        equal(status, 1)
        assert 'club.accepted was not written' in err and not os.path.exists(os.path.join(folder.path, 'club.accepted')), err
        folder.write('club.accepted', '9 duplicate-name club.block\n9 unknown-name club.block\n')
        equal(from_json(check(folder, '--accept', 'club.accepted', '--findings', 'json')[0]), from_json(check(folder, '--findings', 'json')[0]))
        equal(check(folder, '--accept', 'club.accepted')[2], 1)
    # Beside an error what is accepted stays silent, but nothing is said of what has become fewer.
    with Folder({'club.block': ERRORS + 'athlete kim { max squat 90 kg }\n'}) as folder:
        folder.write('club.accepted', '9 under-bar club.block\n')
        assert 'under-bar' not in check(folder, '--accept', 'club.accepted')[1]



def odd_names_accepted():
    odd = 'deep water/ 50%\nwinter.block'
    with Folder({'club.block': CLUB, odd: 'use "../club.block"\n' + WINTER}) as folder:
        os.mkdir(os.path.join(folder.path, 'notes'))
        for target, shown in (('club.accepted', 'deep water/ 50%25%0Awinter.block'), ('notes/a', '../deep water/ 50%25%0Awinter.block'),
                              ('deep water/a', '%2050%25%0Awinter.block')):
            equal(run('check', '--write-accept', target, '--fail-on', 'advice', odd, cwd=folder.path), (b'', b'', 0), target)
            equal({line.split(' ', 2)[2] for line in lines_of(folder, target)}, {shown})
            equal(run('check', '--accept', target, '--fail-on', 'advice', odd, cwd=folder.path), (b'', b'', 0), target)


def accept_files_that_are_none():
    with winter() as folder:
        for text in ('nonsense\n', '2 weeks\n', 'two weeks winter.block\n', '2 weeks a\n1 weeks a\n', '99999999999 weeks a\n', '1 weeks a%zz\n', '1 weeks a%4', '1 weeks a%4g\n',
                     '1 weeks a%00\n', '1  a\n', ' weeks a\n', '1 weeks \n', '-1 weeks a\n', '1e1 weeks a\n'):
            folder.write('club.accepted', text)
            out, err, status = check(folder, '--accept', 'club.accepted')
            equal((out, status), ('', 3), text)
            assert re.match(r'setwright: club\.accepted:[12]: ', err) and 'such as: 2 load-jump winter.block' in err, err
            equal(check(folder, '--write-accept', 'club.accepted')[2], 3, text)
            with open(os.path.join(folder.path, 'club.accepted'), encoding='utf-8') as file:
                equal(file.read(), text, 'it is left alone:')
        for text in ('# a comment\r\n\r\n9 under-bar winter.block\r\n', '9 under-bar winter.block', '9 under-bar w%69nter%2Eblock\n'):
            folder.write('club.accepted', text)
            rows = from_json(check(folder, '--accept', 'club.accepted', '--findings', 'json')[0])
            assert rows and not any(row[1] == 'under-bar' for row in rows), rows
        folder.write('club.accepted', f'2 under-bar {folder.path}/winter.block\n2 weeks /none/winter.block\n')
        err = check(folder, '--accept', 'club.accepted')[1]
        assert f'2 of under-bar accepted in {folder.path}/winter.block, 0 met' in err and '2 of weeks accepted in /none/winter.block, 0 met' in err, err
        equal(check(folder, '--accept', 'missing')[1:], ('setwright: missing: no such file; --write-accept missing makes it\n', 3))
        equal(check(folder, '--accept', '')[2], 2)
        equal(check(folder, '--accept', 'a', '--write-accept', 'b')[2], 2)
        equal(check(folder, '--write-accept', 'none/club.accepted')[1:], ('setwright: none/club.accepted: no such folder\n', 3))
        equal(check(folder, '--write-accept', 'winter.block')[2], 2)
        with open(os.path.join(folder.path, 'winter.block'), encoding='utf-8') as file:
            equal(file.read(), WINTER)


def whole_or_not_at_all():
    with winter() as folder:
        equal(check(folder, '--write-accept', '/dev/full')[1:], ('setwright: /dev/full: the disk is full\n', 3))
        check(folder, '--write-accept', 'club.accepted')
        path = os.path.join(folder.path, 'club.accepted')
        os.chmod(path, 0o640)
        check(folder, '--write-accept', 'club.accepted')
        equal(stat.S_IMODE(os.stat(path).st_mode), 0o640)
        equal(sorted(os.listdir(folder.path)), ['club.accepted', 'club.block', 'winter.block'])


tested('warnings are the same in all forms', same_in_all, {'club.block': CLUB, 'winter.block': WINTER})
tested('errors are the same in all forms', same_in_all, {'club.block': ERRORS + 'units stone\n', 'more.block': 'block x { weeks }\n'})
for name, function in list(globals().items()):
    if callable(function) and function.__module__ == '__main__' and function.__code__.co_argcount == 0 and name not in ('schema', 'winter'):
        tested(name.replace('_', ' '), function)
finish()
