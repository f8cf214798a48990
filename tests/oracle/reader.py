"""Reads the library and the examples into the structure of expected.py: as much of the language as these use.

Written from the design alone and meant for files without mistakes; what it does not know it refuses.
"""
import datetime
import os
import re
from fractions import Fraction as F

from club import Athlete, Block, Change, Club, Day, Entry, Group, Lift, Series
from program import TOP
from weights import Gym, KG, LB, UNIT

TOKEN = re.compile(r'''(?P<skip>[ \t\r]+|\#[^\n]*)|(?P<end>[\n;])|(?P<text>"(?:[^"\\]|\\.)*")|(?P<date>\d{4}-\d\d-\d\d)
    |(?P<number>\d+(?:\.\d+)?)|(?P<name>\$?[^\W\d](?:[\w-]*\w)?)|(?P<mark>[{}(),|=%+\-])''', re.X)


def tokens(text):
    found, depth = [], 0
    for kind, value in ((m.lastgroup, m.group()) for m in TOKEN.finditer(text)):
        if kind == 'skip' or (value == '\n' and (depth or (found and found[-1][1] in (',', '|', '{', 'end')))):
            continue
        depth += (value == '(') - (value == ')')
        if value in ('then', '{', '}') and found and found[-1][0] == 'end' and value != '}':
            if found[-1][1] == 'end' and not (value == '{' and len(found) > 1 and found[-2][1] == '}'):
                found.pop()
        if value == '}' and found[-1][1] not in ('end', '{'):
            found.append(('end', 'end'))
        found.append(('end', 'end') if kind == 'end' else (kind, value))
    return found + [('end', 'end'), ('stop', '')]


class Reader:
    def __init__(self):
        self.club, self.read, self.templates, self.places = Club(), set(), {}, {}

    def file(self, name, folder):
        path = os.path.join(TOP, 'stdlib-templates', name[4:]) if name.startswith('std/') else os.path.join(folder,
                                                                                                            name)
        path = os.path.realpath(path)
        if path not in self.read:
            self.read.add(path)
            with open(path, encoding='utf-8') as file:
                File(self, file.read(), os.path.dirname(path)).all()


class File:
    def __init__(self, reader, text, folder):
        self.reader, self.club, self.folder = reader, reader.club, folder
        self.tokens, self.i, self.units = tokens(text), 0, 'kg'

    # Tokens

    @property
    def now(self):
        return self.tokens[self.i][1]

    @property
    def kind(self):
        return self.tokens[self.i][0]

    def next(self):
        self.i += 1
        return self.tokens[self.i - 1][1]

    def take(self, *words):
        if self.now in words and self.kind != 'text':
            return self.next()
        return None

    def want(self, word):
        assert self.now == word, f'{word!r} was due where {self.now!r} stands: {self.tokens[self.i - 8:self.i + 4]}'
        return self.next()

    def number(self):
        assert self.kind == 'number', self.tokens[self.i - 5:self.i + 3]
        return F(self.next())

    def text(self):
        assert self.kind == 'text'
        return re.sub(r'\\(.)', lambda m: {'n': '\n'}.get(m.group(1), m.group(1)), self.next()[1:-1])

    def names(self):
        some = [self.next()]
        while self.take(','):
            some.append(self.next())
        return some

    def body(self, one):
        self.want('{')
        while self.take('end'):
            pass
        while not self.take('}'):
            one(self.next())
            while self.take('end'):
                pass

    def weight(self):
        number = self.number()
        return int(number * UNIT[self.take('kg', 'lb') or self.units])

    def day(self):
        return datetime.date.fromisoformat(self.next())

    def on(self):
        return self.day() if self.take('on') else None

    # Series

    def band(self):
        low = self.number()
        return low, self.number() if self.take('-') else low

    def unit(self):
        return self.take('%', 'kg', 'lb') or ''

    def series(self):
        if self.now.startswith('$'):
            return self.next()
        if self.take('from'):
            first = self.band()
            self.unit()
            self.want('to')
            last = self.band()
            return Series(kind='ramp', weeks=[[first], [last]], unit=self.unit())
        wave = self.take('wave')
        weeks, unit = [[self.band()]], self.unit()
        while self.now in (',', '|'):
            if self.next() == '|':
                weeks.append([])
            weeks[-1].append(self.band())
            unit = self.unit() or unit
        series = Series(kind='wave' if wave else 'list', weeks=weeks, unit=unit)
        way = self.take('plus', 'minus')
        if way:
            by = self.number() * (1 if way == 'plus' else -1)
            self.unit()
            self.want('each')
            if self.kind == 'number':
                series.each = int(self.number())
            self.next()
            series.by, series.kind = by, 'wave' if wave else 'step'
        return series

    def counted(self):
        if self.take('('):
            series = self.series()
            self.want(')')
            return series
        if self.now.startswith('$'):
            return self.next()
        return Series(weeks=[[self.band()]])

    def let(self, lets):
        name = self.next()
        self.want('=')
        lets[name] = self.next() if self.kind == 'name' and self.now not in ('from', 'wave') else self.series()

    # Declarations

    def all(self):
        while self.kind != 'stop':
            word = self.next()
            if word != 'end':
                getattr(self, 'top_' + word)()

    def top_units(self):
        self.units = self.next()

    def top_use(self):
        self.reader.file(self.text(), self.folder)

    def top_gym(self):
        gym = Gym(self.next(), self.units, {None: 20 * KG if self.units == 'kg' else 45 * LB})

        def one(word):
            if word == 'title':
                self.text()
            elif word == 'bar':
                name = self.next() if self.kind == 'name' else None
                gym.bars[name] = self.weight()
                gym.unit = self.tokens[self.i - 1][1] if self.tokens[self.i - 1][1] in UNIT else self.units
            elif word == 'collar':
                gym.collar = self.weight()
            elif word == 'plates':
                some = [(self.number(), self.discs())]
                while self.take(','):
                    some.append((self.number(), self.discs()))
                unit = UNIT[self.unit() or self.units]
                gym.discs = [(int(w * unit), n) for w, n in some]
            elif word in ('dumbbells', 'stack'):
                name = self.next() if self.kind == 'name' else None
                loads = []
                while not loads or self.take(','):
                    low, high = self.number(), self.want('to') and self.number()
                    step = self.want('step') and self.number()
                    loads += [low + step * i for i in range(int((high - low) / step) + 1)]
                    unit = UNIT[self.unit() or self.units]
                loads = [int(load * unit) for load in loads]
                if word == 'stack':
                    gym.stacks[name] = sorted(loads)
                else:
                    gym.dumbbells = sorted(loads)
            else:
                raise NotImplementedError(word)
        self.body(one)
        self.club.gyms[gym.name] = gym

    def discs(self):
        self.want('x')
        return int(self.number())

    def top_lift(self):
        lift = Lift(name=self.next())
        if self.take('like'):
            lift.like = self.next()
            if self.take('at'):
                lift.percent = self.number()
                self.want('%')

        def one(word):
            if word == 'loads':
                lift.loads = self.next()
                lift.equipment = self.next() if self.now != 'end' else None
            elif word in ('title', 'cue'):
                self.text()
            elif word in ('works', 'helps', 'kind'):
                self.names()
            else:
                raise NotImplementedError(word)
        if self.now == '{':
            self.body(one)
        self.club.lifts[lift.name] = lift

    def top_athlete(self):
        a = Athlete(name=self.next())

        def one(word):
            if word in ('title', 'note'):
                self.text()
            elif word == 'gym':
                a.gym = self.next()
            elif word == 'bodyweight':
                load = self.weight()
                a.bodyweights.append((self.on() or datetime.date.min, load))
            elif word == 'max':
                lift, load, reps, rpe = self.next(), None, None, None
                if self.take('bodyweight'):
                    reps, load = 'body', self.weight() if self.take('plus') else 0
                elif self.take('from'):
                    load, reps, rpe = self.weight(), self.discs(), self.want('rpe') and self.number()
                else:
                    load = self.weight()
                a.maxes.append((lift, load, reps, rpe, self.on()))
            elif word == 'curve':
                lift, reps = self.next(), self.number()
                self.want('reps'), self.want('at')
                a.curves.setdefault(lift, []).append((reps, self.number() / 100))
                self.want('%')
            elif word == 'effort':
                lift, said = self.next(), self.number()
                self.want('means')
                a.efforts[lift] = self.number() - said
            elif word == 'avoid':
                lift = self.next()
                a.avoids[lift] = self.want('use') and self.next()
                if self.take('because'):
                    self.text()
            elif word == 'let':
                self.let(a.lets)
            else:
                raise NotImplementedError(word)
        self.body(one)
        self.club.athletes[a.name] = a

    def top_group(self):
        name = self.next()
        self.want('{')
        self.club.groups[name] = self.names()
        self.take('end')
        self.want('}')

    def top_scheme(self):
        name, lets, groups = self.next(), {}, []
        self.body(lambda word: self.let(lets) if word == 'let' else self.back() or groups.append(self.group()))
        self.club.schemes[name] = lets, groups

    def back(self):
        self.i -= 1

    def top_progression(self):
        name, lines = self.next(), {}

        def one(word):
            assert word == 'when'
            event = []
            while self.now not in ('add', 'drop', 'hold'):
                event.append(self.next())
            act = self.next()
            amount = None
            if act != 'hold':
                value = self.number()
                amount = (self.next().replace('steps', 'step'), value)
            if act == 'add':
                lines[' '.join(event)] = amount
        self.body(one)
        self.club.progressions[name] = lines

    # Blocks

    def top_template(self):
        name = self.next()
        self.reader.templates[name] = self.i
        self.reader.places[name] = self
        self.block_body(Block(name=name))  # read through, for what it does not know

    def top_block(self):
        block = Block(name=self.next())
        if self.take('from'):
            name = self.next()
            file = self.reader.places[name]
            kept, file.i = file.i, self.reader.templates[name]
            file.block_body(block)
            file.i = kept
        block.own = set()
        self.block_body(block)
        self.club.blocks.append(block)

    def block_body(self, block):
        def one(word):
            if word in ('title', 'note'):
                self.text()
            elif word == 'goal':
                self.next()
            elif word == 'for':
                block.people = self.names()
            elif word == 'starts':
                block.starts = self.day()
            elif word == 'weeks' and self.tokens[self.i + 1][1] != '-':
                block.weeks = int(self.number())
            elif word in ('deload', 'taper'):
                self.want('week')
                week, changes = int(self.number()), self.changes()
                if word == 'deload':
                    block.deloads[week] = changes
                else:
                    block.tapers.append(([week], changes))
            elif word == 'warm-up':
                scheme = self.next()
                self.want('for')
                block.warm_ups.append((scheme, self.names()))
            elif word == 'let':
                self.let(block.lets)
            elif word == 'day':
                day = self.training_day()
                block.days = [d for d in block.days if d.label != day.label or hasattr(day, 'weeks_own')] + [day]
                block.days.sort(key=lambda d: d.label)
            elif word == 'adjust':
                people, weeks = self.names(), None
                if self.take('in'):
                    self.next()
                    low, high = self.band()
                    weeks = list(range(int(low), int(high) + 1))
                block.adjusts.append((people, weeks, self.changes()))
            else:
                raise NotImplementedError(word)
        self.body(one)

    def training_day(self):
        day = Day(label=self.next())
        if self.take('on'):
            day.on = self.names()

        def one(word):
            if word in ('title', 'note'):
                self.text()
            elif word == 'let':
                self.let(day.lets)
            elif word == 'superset':
                if self.take('for'):
                    self.number(), self.next()
                rounds = int(self.number()) if self.kind == 'number' else None
                if rounds:
                    self.want('rounds')
                self.body(lambda lift: day.entries.append(self.entry(lift, rounds)))
            else:
                day.entries.append(self.entry(word))
        self.body(one)
        return day

    def entry(self, lift, rounds=None):
        entry = Entry(lift=lift, rounds=rounds)
        while self.take('or'):
            self.next()

        def one(word):
            if word == 'note':
                entry.own_note = self.text()
            elif word == 'let':
                self.let(entry.lets)
            else:
                self.back()
                entry.groups.append(self.group())
        if self.now == '{':
            self.body(one)
        elif self.now in self.club.schemes:
            entry.scheme = self.next()
            if self.take('with'):
                self.let(entry.given)
                while self.take('and'):
                    self.let(entry.given)
        else:
            entry.groups.append(self.group())
            while self.take('then'):
                entry.groups.append(self.group())
        return entry

    def group(self):
        group = Group(role=self.take('top', 'back-off', 'warm-up') or 'work')
        group.sets = self.counted()
        self.want('x')
        if self.take('amrap'):
            group.reps = 'amrap', None
        else:
            reps = self.counted()
            parts = [reps]
            while self.take('+'):
                parts.append(self.counted())
            kind = self.take('s', 'm') or 'count'
            group.reps = kind, reps
            if len(parts) > 1:
                group.reps = 'cluster', [int(p.weeks[0][0][0]) for p in parts]
        while self.now not in ('end', 'then', '}'):
            self.clause(group, self.next())
        return group

    def clause(self, group, word):
        if word == 'at':
            if self.now in ('rpe', 'rir'):
                group.load = self.next(), self.series(), None
            elif self.take('same'):
                group.load = 'same', None, None
            elif self.take('least'):
                group.reps = 'amrap', int(self.number())
            else:
                use = self.series()
                unit = use.unit if isinstance(use, Series) else None
                group.load = ('weight', use, unit) if unit in UNIT else ('percent', use,
                                                                         None) if unit else ('named', use, None)
        elif word == 'drop':
            group.load = 'drop', self.series(), None
        elif word == 'cap':
            kind = self.take('rpe')
            value = self.number()
            group.cap = kind or self.unit(), value
        elif word == 'rest':
            low, high = self.band()
            by = 60 if self.next() == 'min' else 1
            group.rest = str(int(low * by)) if low == high else f'{int(low * by)}-{int(high * by)}'
        elif word in ('every', 'pause'):
            self.number(), self.next()
        elif word == 'until':
            self.want('rpe'), self.number()
        elif word == 'tempo':
            group.tempo = self.text()
        elif word == 'each':
            self.want('side')
        elif word == 'note':
            group.note = self.text()
        elif word == 'progression':
            group.progression = self.next()
        else:
            raise NotImplementedError(word)

    def changes(self):
        some = []

        def one(word):
            if word in ('sets', 'reps', 'rpe', 'load'):
                c = Change(verb=word, way=self.next(), value=self.series())
                if self.take('for'):
                    c.lifts = self.names()
                some.append(c)
            elif word == 'swap':
                lift = self.next()
                self.want('with')
                some.append(Change(verb='swap', lifts=[lift], to=self.next()))
            elif word == 'skip':
                some.append(Change(verb='skip-day', days=[self.next()]) if self.take('day') else
                            Change(verb='skip-lift', lifts=[self.next()]))
            elif word == 'cap':
                lifts = [] if self.now == 'rpe' else [self.next()]
                self.want('rpe')
                some.append(Change(verb='cap', lifts=lifts, value=self.series()))
            elif word == 'add':
                self.want('to'), self.want('day')
                day, entries = self.next(), []
                self.body(lambda lift: entries.append(self.entry(lift)))
                some.append(Change(verb='add', to=day, entries=entries))
            elif word == 'note':
                self.text()
            else:
                raise NotImplementedError(word)
        if self.now != '{':
            return [Change(verb='sets', way='to', value=only(50, '%')), Change(verb='rpe', way='down', value=only(2)),
                    Change(verb='load', way='down', value=only(10, '%'))]
        self.body(one)
        return some


def only(value, unit=''):
    return Series(weeks=[[(F(value), F(value))]], unit=unit)


def read(names, folder):
    """The club of these files; a block's days stand in the order of their labels, as in the files it is made for."""
    reader = Reader()
    for name in names:
        reader.file(name, folder)
    return reader.club
