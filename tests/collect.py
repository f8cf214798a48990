#!/usr/bin/python3
"""`setwright collect` and `setwright diary`: sheets that `build --format csv` wrote are filled in with Python's csv module as an athlete would, and
the diary that comes of them is compared with one written by hand. Then sheets that cannot be: each with its place, what is
said, and that nothing was written.

Exact messages: tests/cases/collect/NAME.csv is collected with club.block there, and NAME.txt is all that is said and written
(SETWRIGHT_GOLDEN=1 rewrites it). Elsewhere a refusal's place is the line and column of the cell as a person counts them: the test finds the cell in the file's own lines."""
import csv
import io
import os
import sys
sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), 'oracle'))
from program import Folder, HEADER, TOP, finish, run, table
import program

CLUB = '''units kg
gym hall { bar 20 kg; plates 25 x 16, 10 x 4, 5 x 2, 2.5 x 2, 1.25 x 2 kg; dumbbells 5 to 40 step 2.5 kg }
gym annex { bar 45 lb; plates 45 x 8, 25 x 2, 10 x 4, 5 x 2, 2.5 x 2 lb }
lift squat { kind competition; loads bar }
lift bench { kind competition; loads bar }
lift deadlift { kind competition; loads bar }
lift pull-up { loads bodyweight }
lift dip { loads bodyweight }
lift chin-up { loads bodyweight }
lift plank { loads bodyweight }
lift side-plank
lift carry { loads dumbbells }
lift row { loads dumbbells }
lift curl { loads dumbbells }
athlete ines { title "=Ines, \\"the\\" first"; gym hall; bodyweight 60 kg }
athlete tomas { gym annex }
'''
WINTER = '''use "club.block"
block winter {
  for ines, tomas; starts 2027-01-04; weeks 2
  day A on mon {
    squat { warm-up 1 x 5 at 60 kg; top 1 x 1 at 107.5 kg; back-off 4 x 5 at 90 kg note "=slow, \\"down\\"" }
    bench 3 x 4 at 50, 50, 47.5 kg
    row 3 x 8-12 at rpe 7
    curl 3 x 10 at 12.5 kg
  }
  day B {
    pull-up 3 x 8 at bodyweight
    dip 3 x 5 at bodyweight plus 10 kg
    chin-up 3 x 5 at bodyweight minus 15 kg
    plank 2 x 45 s
    side-plank 2 x 30 s at rpe 7
    carry 2 x 20 m
  }
  day C on tue, thu {
    deadlift 2-5 x 3 at 100 kg
    bench total 30 at 40 kg
    squat 1 x amrap at 80 kg
  }
}
'''
FILES = {'club.block': CLUB, 'winter.block': WINTER}


def verdict(name, good, *remarks):
    program.verdict(good, name, *remarks)


def printed(folder, *options):
    out, err, status = run('build', '--format', 'csv', *options, 'winter.block', cwd=folder.path)
    assert status == 0, err.decode()
    return table(out.decode())


def chosen(rows, **cells):
    found = [row for row in rows if all(row[name] == value for name, value in cells.items())]
    assert found, cells
    return found


def fill(rows, load='', reps='', rpe='', **cells):
    """Fills in the rows that have these cells."""
    for row in chosen(rows, **cells):
        row.update(done_load=load, done_reps=reps, done_rpe=rpe)


def as_csv(rows, header=HEADER, semicolon=False):
    text = io.StringIO(newline='')
    writer = csv.writer(text, delimiter=';' if semicolon else ',')
    writer.writerow(header)
    for row in rows:
        cells = [row.get(name, '') for name in header]
        writer.writerow([cell.replace('.', ',') if semicolon and name not in ('note', 'date') else cell for name, cell in zip(header, cells)])
    return text.getvalue()


def collect(folder, *words):
    out, err, status = run('collect', *words, cwd=folder.path)
    return out.decode(), err.decode(), status


def diary_of(lines, name='sheet.csv'):
    return '# Collected from %s\n\n%s' % (name, lines)


def is_diary(name, folder, expected, *words):
    out, err, status = collect(folder, 'winter.block', *words)
    verdict(name, (out, err, status) == (expected, '', 0), out + err)
    folder.write('diary.block', 'use "club.block"\n' + out)
    _, err, _ = run('check', 'diary.block', cwd=folder.path)
    wrong = [line for line in err.decode().splitlines() if ': error: ' in line and '[not-yet]' not in line]
    verdict(name + ' can be read back', not wrong, '\n'.join(wrong))


INES = {'athlete': 'ines', 'week': '1', 'day': 'A'}
FIRST = '''diary ines {
  2027-01-04 A {
    squat 107.5 kg x 1 rpe 8 then 90 kg x 5, 5, 5, 4 rpe 6, 6, 6.5, 8
    bench 50, 50, 47.5 kg x 4, 4, 4 rpe 7
    row 22.5, 22.5, 25 kg x 12, 11, 8 rpe 8
    curl skipped
  }
}
'''


def first_day(rows):
    fill(rows, reps='1', rpe='8', lift='squat', role='top', **INES)
    for row in chosen(rows, lift='squat', role='back-off', **INES):
        row.update(done_reps='5 5 5 4', done_rpe='6;6; 6.5 8')
    bench = chosen(rows, lift='bench', **INES)
    bench[0].update(done_reps='4', done_rpe='6.5')
    bench[1].update(done_reps='4', done_rpe='7')
    fill(rows, load='22.5 22.5 25', reps='12 11 8', rpe='8', lift='row', **INES)


def what_was_done_becomes_a_diary():
    with Folder(FILES) as folder:
        rows = printed(folder)
        first_day(rows)
        folder.write('sheet.csv', as_csv(rows))
        is_diary('a day as it was filled in', folder, diary_of(FIRST), 'sheet.csv')
        folder.write('sheet.csv', as_csv(rows, semicolon=True))
        is_diary('with ; between cells and decimal commas', folder, diary_of(FIRST), 'sheet.csv')
        folder.write('sheet.csv', '\ufeff' + as_csv(rows, semicolon=True).replace('\r\n', '\n'))
        is_diary('with a byte-order mark and other line ends', folder, diary_of(FIRST), 'sheet.csv')
        folder.write('sheet.csv', as_csv(rows, header=['mood'] + HEADER[::-1]))
        is_diary('with columns in another order and one more', folder, diary_of(FIRST), 'sheet.csv')
        folder.write('sheet.csv', as_csv(rows, header=[name for name in HEADER if name not in ('role', 'note', 'rpe', 'percent')]))
        is_diary('columns that nobody needs may be gone', folder, diary_of(FIRST), 'sheet.csv')
        for row in rows:
            row['load'] = row['load'] and row['load'] + ('0' if '.' in row['load'] else '.00')
        folder.write('sheet.csv', as_csv(rows))
        is_diary('numbers are compared by value', folder, diary_of(FIRST), 'sheet.csv')
        folder.write('other.csv', as_csv(printed(folder)))
        is_diary('an empty copy of the sheet changes nothing', folder, diary_of(FIRST, 'other.csv, sheet.csv'), 'other.csv', 'sheet.csv')
        for row in chosen(rows, lift='row', **INES):
            row['unit'] = 'kg'
        folder.write('sheet.csv', as_csv(rows))
        is_diary('a unit beside a load of her own', folder, diary_of(FIRST), 'sheet.csv')
        folder.write('sheet.csv', as_csv([row for row in rows if row['lift'] != 'curl']))
        is_diary('a lift that is on no sheet is left out', folder, diary_of(FIRST.replace('    curl skipped\n', '')), 'sheet.csv')


def days_of_every_kind():
    with Folder(FILES) as folder:
        rows = printed(folder)
        day = {'athlete': 'ines', 'week': '2', 'day': 'B'}
        for lift, load, reps in (('pull-up', '', '8 7'), ('pull-up', '', '8 7'), ('dip', '10 10 5', '5'), ('chin-up', '', '5 5 0'), ('plank', '', '45 s 40s'),
                                 ('side-plank', '', '30'), ('carry', '25', '20 m 15 m')):
            fill(rows, load=load, reps=reps, lift=lift, **day)
        chosen(rows, lift='dip', **day)[0]['date'] = '2027-01-19'
        for date, sets, total in (('2027-01-05', '3 3 2', '12 10 8'), ('2027-01-07', '3', '30')):
            fill(rows, reps=sets, lift='deadlift', athlete='ines', date=date)
            fill(rows, reps=total, lift='bench', athlete='ines', date=date, day='C')
            fill(rows, load='82.5', reps='11', rpe='9.5', lift='squat', athlete='ines', date=date, day='C')
        fill(rows, load='-12.5', reps='4', rpe='8', lift='chin-up', **dict(day, week='1'))
        fill(rows, load='0 2.5 2.5', reps='6 6 6', lift='dip', **dict(day, week='1'))
        for row in chosen(rows, **dict(day, week='1')):
            row['date'] = '2027-01-03'
        for row in chosen(rows, athlete='tomas', week='2', day='A', lift='squat', role='back-off'):
            row.update(done_reps='5')
        folder.write('sheet.csv', as_csv(rows))
        is_diary('days of every kind', folder, diary_of('''diary ines {
  2027-01-03 B week 1 {
    pull-up skipped
    dip bodyweight plus 0, 2.5, 2.5 kg x 6, 6, 6
    chin-up bodyweight minus 12.5 kg x 4, 4, 4 rpe 8
    plank skipped
    side-plank skipped
    carry skipped
  }
  2027-01-05 C {
    deadlift 100 kg x 3, 3, 2
    bench 40 kg x 12, 10, 8
    squat 82.5 kg x 11 rpe 9.5
  }
  2027-01-07 C {
    deadlift 100 kg x 3, 3, 3, 3
    bench 40 kg x 30
    squat 82.5 kg x 11 rpe 9.5
  }
  2027-01-19 B week 2 {
    pull-up bodyweight x 8, 7
    dip bodyweight plus 10, 10, 5 kg x 5, 5, 5
    chin-up bodyweight minus 15 kg x 5, 5, 0
    plank bodyweight x 45, 40 s
    side-plank 0 kg x 30, 30 s
    carry 25 kg x 20, 15 m
  }
}

diary tomas {
  2027-01-11 A {
    squat 235 lb x 0 then 200 lb x 5, 5, 5, 5
    bench skipped
    row skipped
    curl skipped
  }
}
'''), 'sheet.csv')


def a_block_that_is_run_again():
    """An undated day goes to the run in whose week the lifter's own date lies; a dated one by its date."""
    again = 'use "club.block"\nblock base { weeks 1; day A on mon { bench 1 x 5 at 50 kg }; day B { squat 1 x 5 at 80 kg } }\n' \
            'season year { for ines; starts 2027-01-04; run base, base }\n'
    with Folder({'club.block': CLUB, 'winter.block': again}) as folder:
        rows = printed(folder)
        for row in rows:
            row['done_reps'] = '5' if row['date'] != '2027-01-04' else ''
        undated = [row for row in rows if not row['date']]
        undated[0]['date'], undated[1]['date'] = '2027-01-16', '2027-01-05'
        folder.write('sheet.csv', as_csv(rows))
        is_diary('a block that is run again', folder, diary_of('''diary ines {
  2027-01-05 B {
    squat 80 kg x 5
  }
  2027-01-11 A {
    bench 50 kg x 5
  }
  2027-01-16 B {
    squat 80 kg x 5
  }
}
'''), 'sheet.csv')


def cell_place(text, line, column, semicolon=False):
    """Where the cell of a row starts, counting characters; the row holds no line end."""
    cells = text.split('\r\n')[line - 1].split(';' if semicolon else ',')
    return '%d:%d' % (line, 1 + sum(len(cell) + 1 for cell in cells[:HEADER.index(column)]))


class Wrong:
    """A filled sheet with something changed: what is said, and where."""

    def __init__(self, name, changed, column, says, helps='', find=None, files=None, related=None):
        self.name, self.changed, self.column, self.says, self.helps, self.find = name, changed, column, says, helps, find
        self.files, self.related = files or FILES, related

    def judge(self):
        with Folder(FILES) as folder:
            rows = [row for row in printed(folder) if row['note'] != '=slow']
            for row in rows:
                row['note'] = ''
            first_day(rows)
            at = chosen(rows, **dict(INES, **(self.find or {'lift': 'squat', 'role': 'back-off'})))[0]
            self.changed(rows, at)
            text = as_csv(rows)
            folder.write('sheet.csv', text)
            for path, changed in self.files.items():
                folder.write(path, changed)
            folder.write('diary.block', 'as it was\n')
            out, err, status = collect(folder, '-o', 'diary.block', 'winter.block', 'sheet.csv')
            line = [row is at for row in rows].index(True) + 2
            place = 'sheet.csv:%s: error: %s [sheet]\n' % (cell_place(text, line, self.column) if self.column else '%d:1' % line, self.says)
            with open(os.path.join(folder.path, 'diary.block'), encoding='utf-8') as file:
                kept = file.read() == 'as it was\n'
            fine = status == 1 and not out and kept and err.startswith(place) and err.count('error:') == 1 and self.helps in err
            fine = fine and (not self.related or self.related in err)
            fine = fine and err.endswith('setwright: nothing was collected; mend the sheet first\n')
            verdict('refused: ' + self.name, fine, 'wanted %s%s' % (place, err))


def put(**cells):
    return lambda rows, row: row.update(cells)


def moved(rows, row):
    cells = [row[name] for name in HEADER]
    cells.remove('2027-01-04')
    row.update(zip(HEADER, cells + ['']))


def again(rows, row):
    rows.insert(0, dict(row))


STALE = 'has the plan changed since this sheet was printed? print it anew, or write the diary by hand'
B = {'day': 'B', 'lift': 'plank'}
WRONG = [
    Wrong('words for reps', put(done_reps='five'), 'done_reps', '"five" under done_reps is no number of repetitions'),
    Wrong('900 kg where 90 was planned', put(done_load='900'), 'done_load', '900 kg cannot be right where 90 kg was planned', 'is a decimal point missing?'),
    Wrong('two tons', put(done_load='2000', done_reps='8'), 'done_load', '2000 kg cannot be right', find={'lift': 'row'}),
    Wrong('a load below nothing', put(done_load='-5'), 'done_load', '-5 kg is less than nothing'),
    Wrong('a load with its unit', put(done_load='90 kg'), 'done_load', '"kg" under done_load is no load'),
    Wrong('more sets than planned', put(done_reps='5 5 5 5 5', done_rpe=''), 'done_reps', '5 numbers of repetitions, and the plan has 4 sets here'),
    Wrong('more loads than sets', put(done_load='90 90 90', done_rpe=''), 'done_load', '3 loads for 4 sets'),
    Wrong('fewer efforts than sets', put(done_rpe='7 8'), 'done_rpe', '2 efforts for 4 sets'),
    Wrong('an open load that nobody wrote down', put(done_load='', done_reps='8'), 'done_load', 'no load was printed here, and none is written down', 'in kg', {'lift': 'row'}),
    Wrong('seconds where repetitions count', put(done_reps='30 s', done_rpe=''), 'done_reps', 'the plan counts repetitions here'),
    Wrong('an undated day without a date', put(done_reps='45'), 'date', 'the plan gives this day no date, and the sheet has none', 'the day it was trained', B),
    Wrong('added weight and help in one', put(done_load='5 -5', done_reps='5 5', date='2027-01-05'), 'done_load', 'weight was added in one set and taken off in another', '', {'day': 'B', 'lift': 'dip'}),
    Wrong('another load than the plan', put(load='92.5'), 'load', 'the plan says 90 kg here, the sheet 92.5', 'what was lifted goes under done_load; ' + STALE),
    Wrong('a load that the plan leaves open', put(load='20'), 'load', 'the plan leaves this open, and the sheet says 20', STALE, {'lift': 'row'}),
    Wrong('a load that was emptied', put(load=''), 'load', 'the plan says 90 kg here, and in the sheet the cell is empty'),
    Wrong('another number of sets', put(sets='5'), 'sets', 'the plan says 4 sets here, the sheet 5', STALE),
    Wrong('other repetitions', put(reps_low='4'), 'reps_low', 'the plan says 5 reps here, the sheet 4'),
    Wrong('another unit', put(unit='lb'), 'unit', 'the plan says kg here, the sheet lb'),
    Wrong('another lift', put(lift='deadlift'), 'lift', 'the plan says squat here, the sheet deadlift'),
    Wrong('another role', put(role='work'), 'role', 'the plan says back-off here, the sheet work'),
    Wrong('another date', put(date='2027-01-06'), 'date', 'the plan has this day on 2027-01-04, the sheet on 2027-01-06', 'into the diary by hand'),
    Wrong('no date', put(date=''), 'date', 'the plan has this day on 2027-01-04, and in the sheet the date is empty'),
    Wrong('a date in another form', put(date='4/1/2027'), 'date', '"4/1/2027" under date is not a date'),
    Wrong('an athlete misspelt', put(athlete='inez'), 'athlete', 'no athlete is called inez', 'did you mean ines?'),
    Wrong('a group in the place of an athlete', put(athlete='early'), 'athlete', 'no athlete is called early',
          files={'winter.block': WINTER + 'group early { ines }\n'}),
    Wrong('a block misspelt', put(block='wintre'), 'block', 'no block is called wintre', 'did you mean winter?'),
    Wrong('a week beyond the last', put(week='3'), 'week', 'the block has 2 weeks, and this is week 3', STALE),
    Wrong('a day that is not there', put(day='D'), 'day', 'there is no day D in this week of the plan', STALE),
    Wrong('a row beyond the last', put(seq='11'), 'seq', 'this day of the plan has 7 rows, and this is row 11', STALE),
    Wrong('a row that has moved to the side', moved, 'date', '5 cells of this row do not fit their columns: date, seq, load, unit and done_reps', 'has the row moved to the side?'),
    Wrong('a row that stands twice', again, None, 'this row of the plan is filled in a second time', related='note: it is filled in here first'),
    Wrong('a stale plan: its load', lambda rows, row: None, 'load', 'the plan says 92.5 kg here, the sheet 90',
          files={'winter.block': WINTER.replace('4 x 5 at 90 kg', '4 x 5 at 92.5 kg')}),
    Wrong('a stale plan: a lift before the others, said once', lambda rows, row: None, 'role', 'the plan says warm-up here, the sheet top',
          files={'winter.block': WINTER.replace('    squat { warm-up 1', '    bench 1 x 1 at 50 kg\n    squat { warm-up 1')}, find={'role': 'top'}),
    Wrong('a stale plan: a row that nobody filled in', lambda rows, row: None, 'sets', 'the plan says 4 sets here, the sheet 3', find={'lift': 'curl'},
          files={'winter.block': WINTER.replace('curl 3 x 10', 'curl 4 x 10')}),
    Wrong('more sets than the one planned', put(done_reps='1 1', done_rpe=''), 'done_reps', '2 numbers of repetitions, and the plan has 1 set here', find={'lift': 'squat', 'role': 'top'}),
    Wrong('more loads than planned sets', put(done_load='90 90 90 90 85', done_reps='5', done_rpe=''), 'done_load', '5 loads, and the plan has 4 sets here'),
    Wrong('metres where seconds count', put(done_reps='45 m', date='2027-01-05'), 'done_reps', 'the plan counts seconds here', find=B),
    Wrong('seconds where metres count', put(done_reps='20 s', done_load='25', date='2027-01-05'), 'done_reps', 'the plan counts metres here', find={'day': 'B', 'lift': 'carry'}),
    Wrong('pounds to a thousandth', put(done_load='200.125', done_reps='5'), 'done_load', '200.125 lb has more decimals than a weight in lb', 'at most two decimals',
          {'athlete': 'tomas', 'lift': 'squat', 'role': 'back-off'}),
    Wrong('two dates for one session', lambda rows, row: (row.update(done_reps='45', date='2027-01-06'), chosen(rows, athlete='ines', week='1', lift='pull-up')[0].update(done_reps='8', date='2027-01-05')),
          'date', 'this session has another date, 2027-01-05, in another row', 'write one date for all rows', B, related='note: the other date is here'),
    Wrong('two dates for one session, one where nothing was done', lambda rows, row: (row.update(date='2027-01-06'), chosen(rows, athlete='ines', week='1', lift='pull-up')[0].update(done_reps='8', date='2027-01-05')),
          'date', 'this session has another date, 2027-01-05, in another row', find=B, related='note: the other date is here'),
    Wrong('an athlete of another file', put(athlete='wilhelmina'), 'athlete', 'no athlete is called wilhelmina', 'is the file with this athlete among those named'),
    Wrong('a block of another file', put(block='lighthouse'), 'block', 'no block is called lighthouse', 'is the file with this block among those named'),
    Wrong('a week beyond the only one', put(done_reps='4'), 'week', 'the block has 1 week, and this is week 2', STALE, {'week': '2', 'lift': 'bench'},
          files={'winter.block': WINTER.replace('weeks 2', 'weeks 1')}),
    Wrong('a day of one row', put(done_reps='5', date='2027-01-07'), 'seq', 'this day of the plan has 1 row, and this is row 4', STALE, {'day': 'B', 'lift': 'plank'},
          files={'winter.block': WINTER[:WINTER.index('    pull-up')] + '    pull-up 3 x 8 at bodyweight\n' + WINTER[WINTER.index('  }\n  day C'):]}),
    Wrong('a block of others', lambda rows, row: None, 'block', 'ines does not train in block winter', find={'role': 'top'},
          files={'winter.block': WINTER.replace('for ines, tomas', 'for tomas')}),
]


def the_command_line():
    with Folder(FILES) as folder:
        rows = printed(folder)
        folder.write('empty.csv', as_csv(rows))
        out, err, status = collect(folder, '-o', 'diary.block', 'winter.block', 'empty.csv')
        there = os.path.exists(os.path.join(folder.path, 'diary.block'))
        verdict('nothing filled in: said, and no file', (out, status, there) == ('', 0, False) and
                err == 'setwright: nothing is filled in under done_reps in empty.csv; nothing was written\n', err)
        first_day(rows)
        text = as_csv(rows)
        folder.write('sheet.csv', text)
        out, err, status = collect(folder, '-o', 'diary.block', 'winter.block', 'sheet.csv')
        with open(os.path.join(folder.path, 'diary.block'), encoding='utf-8') as file:
            verdict('into a file', (out, err, status, file.read()) == ('', '', 0, diary_of(FIRST)), err)
        for path in ('sheet.csv', 'winter.block', './club.block'):
            with open(os.path.join(folder.path, path), encoding='utf-8', newline='') as file:
                before = file.read()
            out, err, status = collect(folder, '-o', path, 'winter.block', 'sheet.csv')
            with open(os.path.join(folder.path, path), encoding='utf-8', newline='') as file:
                verdict('not over ' + path, status == 2 and file.read() == before and 'is one of the files that were read' in err, err)
        out, err, status = collect(folder, '-o', 'none/diary.block', 'winter.block', 'sheet.csv')
        verdict('a folder that is not there', (out, status) == ('', 3) and err.startswith('setwright: none/diary.block: '), err)
        for words, wanted, says in ((['winter.block'], 2, 'which sheets?'), (['sheet.csv'], 2, 'which plan?'),
                                    (['winter.block', 'sheet.ods'], 2, 'ends neither in .block nor in .csv'),
                                    ([], 2, 'which files?'), (['winter.block', 'gone.csv'], 3, 'gone.csv: no such file')):
            out, err, status = collect(folder, *words)
            verdict('collect ' + ' '.join(words), (out, status) == ('', wanted) and says in err, err)
        folder.write('again.csv', text)
        out, err, status = collect(folder, 'winter.block', 'sheet.csv', 'again.csv')
        verdict('rows of two sheets', status == 1 and not out and err.startswith('again.csv:') and err.count('it is filled in here first') == err.count('error:') > 4, err)
        with open(os.path.join(folder.path, 'wide.csv'), 'wb') as file:
            file.write(text.encode('utf-16'))
        out, err, status = collect(folder, 'winter.block', 'wide.csv')
        verdict('UTF-16 is said by its name', status == 1 and not out and err.startswith('wide.csv:1:1: error: this table is saved as UTF-16'), err)
        folder.write('few.csv', text.replace('done_reps', 'done_rep', 1))
        out, err, status = collect(folder, 'winter.block', 'few.csv')
        verdict('a column that is missing', status == 1 and not out and 'the first row names no column done_reps [sheet]' in err
                and 'rename it to done_reps' in err and err.count('error:') == 1, err)
        folder.write('faulty.block', WINTER.replace('squat {', 'sqaut {'))
        out, err, status = collect(folder, 'faulty.block', 'sheet.csv')
        verdict('a plan with an error', status == 1 and not out and err.endswith("setwright: nothing was collected; mend the plan's files first\n"), err)
        warned = WINTER.replace('weeks 2\n', 'weeks 2; deload week 4\n')
        folder.write('warned.block', warned)
        out, err, status = collect(folder, 'warned.block', 'sheet.csv')
        verdict("a plan's warnings are for check", (out, err, status) == (diary_of(FIRST), '', 0), err)
        for path in ('/dev/full',):
            out, err, status = collect(folder, '-o', path, 'winter.block', 'sheet.csv')
            verdict('no room', status == 3 and path in err, err)


def the_examples():
    """The sheets of examples/, all done as printed, give what the plan says."""
    out, err, status = run('build', '--format', 'csv', 'examples/', cwd=TOP)
    rows = table(out.decode())
    for row in rows:
        done = row['role'] != 'warm-up' and row['date']
        row['done_reps'] = (row['reps_high'] or row['reps_low'] or '5') if done else ''
        row['done_load'] = '10' if done and not row['load'] else ''
    with Folder() as folder:
        path = folder.write('all.csv', as_csv(rows))
        out, err, status = run('collect', 'examples/', path, cwd=TOP)
        lines = out.decode().split('\n')
        dated = {(row['athlete'], row['block'], row['date'], row['day']) for row in rows if row['date']}
        verdict('all examples are collected', status == 0 and not err and sum(line.endswith(' {') and line.startswith('  ') for line in lines) == len(dated), err.decode())
        folder.write('lifts.block', ''.join(open(os.path.join(TOP, 'examples', name), encoding='utf-8').read() for name in ('lifts.block',)))
        diary = folder.write('diary.block', out.decode())
        _, err, _ = run('check', diary, cwd=folder.path)
        verdict('and can be read back', '[syntax]' not in err.decode() and '[number]' not in err.decode() and '[unit]' not in err.decode(), err.decode()[:2000])
        again = run('collect', 'examples/', path, cwd=TOP)[0]
        verdict('the same sheets give the same bytes', again == out)


def exact_messages():
    folder = os.path.join(TOP, 'tests', 'cases', 'collect')
    for name in sorted(name[:-4] for name in os.listdir(folder) if name.endswith('.csv')):
        out, err, _ = run('collect', 'club.block', name + '.csv', cwd=folder)
        path = os.path.join(folder, name + '.txt')
        if os.environ.get('SETWRIGHT_GOLDEN') == '1':
            with open(path, 'wb') as file:
                file.write(out + err)
        with open(path, 'rb') as file:
            verdict('what is said of ' + name, file.read() == out + err, (out + err).decode())


def a_diary_to_fill_in():
    with Folder(FILES) as folder:
        out, err, status = run('diary', '--athlete', 'ines', '--week', '2', 'winter.block', cwd=folder.path)
        body = ''.join(line + '\n' for line in out.decode().split('\n') if line and not line.startswith('#'))
        verdict('a diary to fill in', (err, status, body) == (b'', 0, '''diary ines {
  2027-01-11 A {
    squat as planned  # top 1 x 1 at 107.5 kg; back-off 4 x 5 at 90 kg
    bench as planned  # 2 x 4 at 50 kg; 1 x 4 at 47.5 kg
    row   as planned  # 3 x 8-12 at ____ kg, rpe 7
    curl  as planned  # 3 x 10 at 12.5 kg
    # session rpe 7 for 80 min
  }
  2027-01-12 C {
    deadlift as planned  # 2-5 x 3 at 100 kg
    bench    as planned  # 30 reps in all at 40 kg
    squat    as planned  # 1 x amrap at 80 kg
    # session rpe 7 for 80 min
  }
  2027-01-14 C {
    deadlift as planned  # 2-5 x 3 at 100 kg
    bench    as planned  # 30 reps in all at 40 kg
    squat    as planned  # 1 x amrap at 80 kg
    # session rpe 7 for 80 min
  }
  2027-01-11 B {  # without a date in the plan: write the day it was trained
    pull-up    as planned  # 3 x 8 at bodyweight
    dip        as planned  # 3 x 5 at +10 kg
    chin-up    as planned  # 3 x 5 at -15 kg
    plank      as planned  # 2 x 45 s at bodyweight
    side-plank as planned  # 2 x 30 s at ____ kg, rpe 7
    carry      as planned  # 2 x 20 m at ____ kg
    # session rpe 7 for 80 min
  }
}
'''), out.decode() + err.decode())
        run('diary', '--athlete', 'ines', '--week', '2', '-o', 'ines.block', 'winter.block', cwd=folder.path)
        with open(os.path.join(folder.path, 'ines.block'), 'rb') as file:
            verdict('into a file', file.read() == out)
        for words, wanted, says in ((['-o', 'winter.block', 'winter.block'], 2, 'is one of the files that were read'), (['--week', '3', 'winter.block'], 2, 'there is no week 3'),
                                    (['--athlete', 'inez', 'winter.block'], 2, 'did you mean ines?'), (['gone.block'], 3, 'no such file')):
            nothing, err, status = run('diary', *words, cwd=folder.path)
            verdict('diary ' + ' '.join(words), (nothing, status) == (b'', wanted) and says in err.decode(), err.decode())
    with Folder() as folder:
        diary = folder.write('diary.block', run('diary', 'examples/', cwd=TOP)[0].decode())
        _, err, _ = run('check', diary, cwd=folder.path)
        others = [line for line in err.decode().splitlines() if ': error: ' in line and '[not-yet]' not in line and '[unknown-name]' not in line]
        verdict('the examples give diaries that can be read back', not others, '\n'.join(others[:5]))


def main():
    a_diary_to_fill_in()
    exact_messages()
    what_was_done_becomes_a_diary()
    days_of_every_kind()
    a_block_that_is_run_again()
    for wrong in WRONG:
        wrong.judge()
    the_command_line()
    the_examples()
    finish()


main()
