"""Clubs made up by chance from a seed: first the structure, so that what comes out can be worked out from it."""
import datetime
import random
from fractions import Fraction as F

from club import Athlete, Block, Change, Club, Day, Entry, Group, Lift, Series, WEEKDAYS
from weights import Curve, Gym, KG, LB, UNIT, rounded

BASE = 'squat bench trap-pull row pulldown cable pull-up'.split()
FREE = 'press curl landmine'.split()  # may have no max
LIKE = {'front': ('squat', 80), 'deep': ('front', F('82.5')), 'goblet': ('squat', F('17.5'))}


def only(value, unit=''):
    return Series(weeks=[[(F(value), F(value))]], unit=unit)


class Maker:
    def __init__(self, seed):
        self.r = random.Random(seed)
        self.names, self.states = 0, set()

    def chance(self, share):
        return self.r.random() < share

    def pick(self, *some):
        return self.r.choice(some)

    def between(self, low, high, grain):
        low, high, grain = F(low), F(high), F(grain)
        return low + grain * self.r.randint(0, int((high - low) / grain))

    # The club

    def club(self):
        club = self.made = Club(units=self.pick('kg', 'kg', 'lb'), model=self.curve_name(0.15))
        for name in ('hall', 'shed'):
            club.gyms[name] = self.gym(name)
        self.lifts(club)
        self.starts = datetime.date(2027, 1, 4) + datetime.timedelta(days=self.r.randint(0, 700))
        for name in ('ana', 'bela', 'Čestmír')[:self.r.randint(1, 3)]:
            club.athletes[name] = self.athlete(name)
        club.groups['pair'] = list(club.athletes)[:2]
        club.schemes['ramp'] = {}, [self.warm_up(p, n) for p,
                                    n in ((40, 5), (60, 3), (self.pick(61, 75), 2), (95, 1))]
        club.progressions = {'steady': {'made': ('kg', F(5, 2))}, 'pounds': {'made': ('lb', F(5))},
                             'fill': {'reps full': ('step', 1)}, 'heavier': {'reps full': ('kg', F(2))},
                             'both': {'reps full': ('step', 1), 'made': ('kg', F(1, 2))}}
        start = self.starts
        for i in range(self.r.randint(1, 2)):
            block = self.block(club, f'block-{i + 1}', start)
            club.blocks.append(block)
            start += datetime.timedelta(days=7 * block.weeks)
        return club

    def curve_name(self, share):
        return self.r.choice('epley brzycki lombardi oconner mayhew wathan lander handbook'.split()) \
            if self.chance(share) else None

    def gym(self, name):
        unit = self.pick('kg', 'kg', 'lb')
        u, r = UNIT[unit], self.r
        heavy = (25, 20, 15, 10, 5, F('2.5'), F('1.25'), F('0.5')) if unit == 'kg' else (45, 35, 25, 10, 5, F('2.5'))
        gym = Gym(name, unit, {}, way=self.pick('nearest', 'nearest', 'down', 'up'))
        if self.chance(0.8):
            gym.discs = [(w * u, self.r.randint(4, 9) if i == 0 else r.randint(1, 5))
                         for i, w in enumerate(heavy) if i == 0 or self.chance(0.75)]
            gym.discs = [(int(w), n) for w, n in gym.discs]
            gym.collar = int(F(self.pick('0', '0', '2.5', '0.25')) * u)
        else:
            gym.discs = None
        gym.bars = {None: (20 if unit == 'kg' else 45) * u, 'trap': (25 if unit == 'kg' else 60) * u}
        small = [F(5, 2) * i for i in range(1, 9)] if unit == 'kg' else [F(5) * i for i in range(1, 11)]
        large = [F(24 + 4 * i) for i in range(5)] if unit == 'kg' else [F(60 + 10 * i) for i in range(5)]
        gym.ranges = small, large
        gym.dumbbells = [int(w * u) for w in small + large]
        gym.stacks = {None: [i * 5 * u for i in range(1, 31)], 'cable': [i * 7 * u for i in range(1, 16)]}
        return gym

    def lifts(self, club):
        loads = {'trap-pull': ('bar', 'trap'), 'row': ('dumbbells', None), 'pulldown': ('stack', None),
                 'cable': ('stack', 'cable'), 'pull-up': ('bodyweight', None)}
        for name in BASE:
            kind, equipment = loads.get(name, ('bar', None))
            club.lifts[name] = Lift(name=name, loads=kind, equipment=equipment)
        for name in FREE:
            club.lifts[name] = Lift(name=name)
        for name, (like, percent) in LIKE.items():
            club.lifts[name] = Lift(name=name, like=like, percent=F(percent))
        club.lifts['goblet'].loads = 'dumbbells'

    def date(self, early):
        return self.starts + datetime.timedelta(days=-self.r.randint(1, 200) if early else self.r.randint(-30, 60))

    def weight(self, low, high):
        """A max or a set's weight in kilograms or pounds, in 1e-10 kg."""
        if self.chance(0.7):
            return int(self.between(low, high, F(1, 2)) * KG)
        return int(rounded(self.between(low, high, 1) * KG / LB, 5) * LB)

    def athlete(self, name):
        r, a = self.r, Athlete(name=name, gym=self.pick('hall', 'shed', 'shed', None), model=self.curve_name(0.2))
        first = self.starts - datetime.timedelta(days=300)
        a.bodyweights = [(first, self.weight(55, 110))]
        a.bodyweights += [(d, self.weight(55, 110)) for d in {self.date(False) for _ in range(r.randint(0, 2))}]
        ranges = dict(squat=(90, 200), bench=(60, 130), row=(24, 36), pulldown=(60, 95), cable=(50, 90))
        for lift in BASE:
            low, high = ranges.get(lift, (100, 220))
            if lift == 'pull-up':
                a.maxes.append((lift, self.weight(5, 30), 'body', None, self.date(True)))
                continue
            a.maxes.append(self.max_line(lift, low, high, None if self.chance(0.2) else self.date(True)))
            for _ in range(self.pick(0, 0, 1, 2)):
                a.maxes.append(self.max_line(lift, low, high, self.date(False)))
        for lift in ('front', 'deep', 'press'):
            if self.chance(0.3):
                a.maxes.append(self.max_line(lift, 50, 90, self.pick(None, self.date(True), self.date(False))))
        r.shuffle(a.maxes)
        for lift in ('squat', 'bench', 'front'):
            if self.chance(0.2):
                reps = r.sample(range(2, 12), self.pick(1, 1, 2, 3))
                a.curves[lift] = [(n, F(self.between(95 - 3 * n, 100 - 2 * n, F(1, 2)), 100)) for n in reps]
            if self.chance(0.2):
                a.efforts[lift] = self.between(-2, 2, F(1, 2))
        if self.chance(0.2):
            a.avoids['press'] = 'landmine'
        dated = {}  # one line a lift and day: which of two counts nobody says
        a.maxes = [dated.setdefault((m[0], m[4]), m) for m in a.maxes if (m[0], m[4]) not in dated]
        return a

    def max_line(self, lift, low, high, date):
        if self.chance(0.3):
            return lift, self.weight(low * F(3, 4), high * F(3, 4)), self.r.randint(1, 8), self.between(6, 10,
                                                                                                        F(1, 2)), date
        return lift, self.weight(low, high), None, None, date

    # Blocks

    def block(self, club, name, start):
        r = self.r
        people = r.choice([list(club.athletes), list(club.athletes)[::-1], ['all'], ['pair']])
        block = self.block_now = Block(name=name, people=people, starts=start, weeks=r.randint(3, 8),
                                       model=self.curve_name(0.1))
        if self.chance(0.15):
            block.reduce = F(self.pick(90, 95, F('92.5')))
        weeks = list(range(1, block.weeks + 1))
        for week in weeks:
            if self.chance(0.15):
                block.deloads[week] = self.changes('deload', [])
        last = [w for w in weeks[-2:] if w not in block.deloads]
        if len(last) == 2 and self.chance(0.3):
            block.tapers.append((last,
                    [Change(verb='sets', way='to', value=Series(weeks=[[(F(60),) * 2], [(F(40),) * 2]], unit='%'))]))
        if self.chance(0.6):
            block.warm_ups.append(('ramp', self.pick(['squat', 'bench'], ['trap-pull', 'pull-up', 'squat'])))
        cut = r.randint(1, block.weeks)
        days = [('A', None), ('B', None), ('C', None)]
        if self.chance(0.5):
            days = [('A', None), ('B', weeks[:cut]), ('C', weeks[cut:] or weeks)]
        if self.chance(0.2):
            block.rotate = ['A', 'B'], self.pick(['mon', 'wed', 'fri'], ['tue', 'sat', 'sun'], ['thu'])
        on = r.sample(WEEKDAYS, 4)
        for i, (label, span) in enumerate(days):
            rotated = block.rotate and label in block.rotate[0]
            if rotated:
                span = None
            dates = [] if rotated or self.chance(0.15) else on[i:i + self.pick(1, 1, 2)]
            block.days.append(self.day(block, label, span, dates))
        self.of_day(block)
        for _ in range(self.pick(0, 1, 1, 2)):
            block.adjusts.append(self.adjust(club, block))
        return block

    def day(self, block, label, span, dates):
        day = self.today = Day(label=label, weeks=span, on=dates, gym=self.pick('hall', None, None, None, None))
        lifts = self.r.sample(BASE + FREE[:2] + list(LIKE), self.r.randint(2, 5))
        if 'squat' not in lifts and self.chance(0.5):
            lifts.insert(0, 'squat')
        for lift in lifts:
            day.entries.append(self.entry(lift, span))
        return day

    def of_day(self, block):
        """An undated day comes last, so that it can look back on another of its week."""
        for day in block.days[:2]:
            if day.on and day.weeks is None and not block.rotate and self.chance(0.5):
                for e in day.entries[:1]:
                    if e.lift in ('squat', 'bench', 'trap-pull'):
                        group = Group(sets=only(2), reps=('count', only(3)),
                                      load=('percent-day', only(80, '%'), day.label))
                        group.load = 'day', only(self.pick(80, 85, F('77.5')), '%'), day.label
                        block.days.append(Day(label='Z', entries=[Entry(lift=e.lift, groups=[group])]))
                        return

    def entry(self, lift, span):
        entry = Entry(lift=lift)
        groups = []
        kind = self.pick('plain', 'plain', 'plain', 'top', 'mixed', 'progression', 'hold', 'amrap')
        if lift == 'pull-up' and kind in ('progression', 'amrap', 'hold'):
            kind = 'plain'
        if kind == 'top':
            low, _ = self.reps(1, 3)
            top = Group(role='top', sets=only(1), reps=('count', only(low)), load=self.effort(low))
            groups.append(self.capped(lift, top))
            n = self.r.randint(3, 6)
            unit = '%' if lift == 'pull-up' or self.chance(0.7) else self.made.units
            drop = self.series(self.pick(15, 20, 25), self.pick(0, 5),
                               '%') if unit == '%' else only(self.pick(5, 10), unit)
            groups.append(Group(role='back-off', sets=self.count(), reps=('count', only(n)),
                                load=('drop', drop, None)))
        elif kind == 'progression':
            groups.append(self.progression(lift))
        elif kind == 'hold':
            load = self.pick(('open', None, None), self.effort(5), ('weight', only(10, 'kg'), 'kg'))
            groups.append(Group(sets=self.count(), reps=(self.pick('s', 'm'), only(self.pick(20, 30))), load=load))
        elif kind == 'amrap':
            groups.append(Group(sets=only(2), reps=('amrap', self.pick(None, 5)),
                                load=('weight', only(20, 'kg'), 'kg')))
        else:
            groups.append(self.work(lift))
            if kind == 'mixed' and groups[0].reps[0] == 'count':
                n = self.r.randint(2, 5)
                groups.append(Group(sets=self.count(), reps=('count', only(n)), load=('drop', only(15, '%'), None)))
                groups.append(Group(sets=only(1), reps=('count', only(2)), load=('same', None, None)))
        if self.chance(0.15) and span is None and len(groups) == 1 and not groups[0].progression:
            first = self.r.randint(1, self.block_now.weeks)
            groups[0].weeks = list(range(first, self.r.randint(first, self.block_now.weeks) + 1))
        if self.chance(0.1) and lift not in ('squat', 'bench', 'trap-pull', 'pull-up') and groups[0].sets:
            groups.insert(0, self.warm_up(50, 5))
        for group in groups:
            self.trimmings(group)
        entry.groups = groups
        if self.chance(0.1):
            entry.rounds = self.r.randint(2, 4)
        if self.chance(0.12) and not any(g.weeks for g in groups):
            name = f'scheme-{self.names}'
            self.names += 1
            self.made.schemes[name] = {}, groups
            entry.scheme, entry.groups = name, []
            self.named(groups, self.made.schemes[name][0], entry.given)
        else:
            self.named(groups, self.pick(self.block_now.lets, self.today.lets), None)
        return entry

    def named(self, groups, lets, given):
        """Some series move to a `let`, some athletes have their own."""
        for group in groups:
            kind, use, more = group.load
            if not isinstance(use,
                              Series) or not self.chance(0.25) or len(use.weeks[0]) > 1 or group.role == 'warm-up':
                continue
            if kind not in ('rpe', 'percent') or group.progression or len(use.weeks[-1]) > 1:
                continue
            name = f'$value-{self.names}'
            self.names += 1
            lets[name] = use
            other = only(use.weeks[0][0][0], use.unit)
            if given is not None and self.chance(0.5):
                given[name] = self.series(use.weeks[0][0][0] - 2 if kind == 'percent' else F(5), 1, use.unit)
            if self.chance(0.3):
                self.r.choice(list(self.made.athletes.values())).lets[name] = other
            group.load = kind, name, more

    # Set groups

    def warm_up(self, percent, reps):
        return Group(role='warm-up', sets=only(1), reps=('count', only(reps)),
                     load=('percent', only(percent, '%'), None))

    def trimmings(self, group):
        if self.chance(0.3):
            group.rest = self.pick('90', '180', '120-180')
        if self.chance(0.1):
            group.tempo = '31X0'
        if self.chance(0.1):
            group.note = self.pick('slow, "clean"', 'belt off')

    def series(self, first, span, unit):
        """Values from first to about first + span, in any of the four ways."""
        first, span = F(first), F(span)
        band = (first, first)
        grain = F(1, 2)
        kind = self.pick('one', 'one', 'list', 'ramp', 'step', 'wave') if span else 'one'
        if kind == 'list':
            some = sorted(first + self.between(0, span, grain) for _ in range(self.r.randint(2, 4)))
            return Series(weeks=[[(v, v)] for v in some], unit=unit)
        if kind == 'ramp':
            return Series(kind='ramp', weeks=[[band], [(first + span,) * 2]], unit=unit)
        if kind == 'step':
            each = self.pick(1, 1, 2) if unit else self.pick(2, 3)
            by = F(1, 2) if not unit else rounded(F(self.pick(1, 2, 3), 4) * span / 4, F(1, 4)) / (1
                                                                                                   if each > 1 else 2)
            return Series(kind='step', weeks=[[band]], by=by, each=each, unit=unit) if by else only(first, unit)
        if kind == 'wave':
            some = [first + rounded(span * i / 8, F(1, 2)) for i in range(self.r.randint(2, 3))]
            return Series(kind='wave', weeks=[[(v, v)] for v in some],
                          by=self.pick(F(0), rounded(span / 8, F(1, 4) if unit else F(1, 2))), unit=unit)
        return only(first, unit)

    def count(self):
        if self.chance(0.15):
            low = self.r.randint(1, 3)
            return Series(weeks=[[(F(low), F(low + self.r.randint(1, 3)))]])
        if self.chance(0.2):
            return self.pick(Series(kind='ramp', weeks=[[(F(2),) * 2], [(F(5),) * 2]]),
                             Series(weeks=[[(F(n),) * 2] for n in (4, 3, 5)]),
                             Series(kind='step', weeks=[[(F(2),) * 2]], by=F(1), each=2))
        return only(self.r.randint(1, 5))

    def reps(self, low, high):
        n = self.r.randint(low, high)
        return n, n + self.pick(0, 0, 0, 2, 4)

    def effort(self, reps):
        if self.chance(0.15):
            low = self.between(5, 7, F(1, 2))
            return 'rpe', Series(weeks=[[(low, low + 1)]]), None
        if self.chance(0.15):
            return 'rir', self.series(self.between(1, 3, F(1, 2)), self.pick(0, 2), ''), None
        return 'rpe', self.series(self.between(5, 7, F(1, 2)), self.pick(0, 1, 2), ''), None

    def percents(self, reps, sets):
        top = int(Curve().share(reps + 2) * 100) - 3
        span = self.pick(0, 4, 8)
        if sets and self.chance(0.4):
            if self.chance(0.4):
                weeks = [[(F(top - self.r.randint(0, 12)),) * 2 for _ in range(sets)] for _ in range(2)]
            else:
                weeks = [[(F(v),) * 2 for v in sorted(top - self.r.randint(0, 12) for _ in range(sets))]]
            return Series(weeks=weeks, unit='%')
        if self.chance(0.1):
            return Series(weeks=[[(F(top - 8), F(top - 3))]], unit='%')
        return self.series(top - span, span, '%')

    def work(self, lift):
        low, high = self.reps(1, 8)
        sets = self.count()
        plain_sets = sets.kind == 'list' and len(sets.weeks) == 1 and sets.weeks[0][0][0] == sets.weeks[0][0][1]
        count = int(sets.weeks[0][0][0]) if plain_sets else 0
        reps = Series(weeks=[[(F(low), F(high))]])
        if low == high and self.chance(0.15):
            reps = Series(weeks=[[(F(n),) * 2] for n in (low, max(1, low - 1), max(1, low - 2))])
        group = Group(sets=sets, reps=('count', reps))
        kinds = ['effort', 'effort', 'percent', 'percent', 'weight']
        if lift in FREE:
            kinds = ['effort', 'open', 'weight', 'of', 'body']
        if lift == 'pull-up':
            kinds = ['effort', 'percent', 'bodyweight']
        if lift in LIKE:
            kinds = ['effort', 'percent']
        kind = self.r.choice(kinds)
        if kind == 'effort':
            group.load = self.effort(low)
        elif kind == 'percent':
            group.load = 'percent', self.percents(F(low + high, 2), count if count > 1 else 0), None
        elif kind == 'weight':
            unit = self.pick('kg', 'lb')
            heavy = self.pick(12, 14, 16) if lift in ('row', *FREE) else self.pick(20, 25, 30, F('32.5'))
            heavy = heavy if unit == 'kg' else heavy * 2
            group.load = 'weight', self.series(heavy, self.pick(0, 4), unit), unit
        elif kind == 'of':
            group.load = 'percent-of', self.series(25, self.pick(0, 4), '%'), self.pick('squat', 'bench')
        elif kind == 'body':
            group.load = 'body', self.series(20, self.pick(0, 8), '%'), None
        elif kind == 'bodyweight':
            group.load = 'bodyweight', self.pick(0, 5, F('2.5'), -10, -20) * KG, None
            group.reps = 'count', only(self.r.randint(1, 4))
        if low == high and not self.chance(0.9) and kind == 'effort':
            group.reps = 'cluster', [2, 2, 1]
        return self.capped(lift, group)

    def capped(self, lift, group):
        kind, use, _ = group.load
        band = kind in ('rpe', 'rir') and any(low < high for low, high in use.weeks[0])
        if not self.chance(0.2) or band or lift in FREE or group.reps[0] != 'count':
            return group
        if self.block_now.reduce == 100 and self.chance(0.6):
            group.cap = 'rpe', self.between(6, 9, F(1, 2))
        elif lift != 'pull-up':
            group.cap = self.pick(('%', self.between(60, 90, 5)), ('kg', self.between(40, 120, 5)))
        return group

    def progression(self, lift):
        name = self.pick('steady', 'pounds', 'fill', 'heavier', 'both')
        low = self.r.randint(3, 6)
        high = low + self.pick(0, 2, 3)
        group = Group(sets=only(self.r.randint(1, 4)), reps=('count', Series(weeks=[[(F(low), F(high))]])),
                      progression=name)
        if lift in FREE + ['goblet', 'row']:
            unit = 'kg'
            group.load = 'weight', only(self.pick(10, 15, F('12.5')), 'kg'), 'kg'
        elif self.chance(0.5):
            unit = self.pick('kg', 'lb')
            group.load = 'weight', only(self.pick(25, 30, 35) if unit == 'kg' else self.pick(55, 65, 75), unit), unit
        else:
            group.load = 'percent', only(self.r.randint(30, 45), '%'), None
        key = self.block_now, lift, name, group.load[0], group.load[1].weeks[0][0], group.load[2]
        if key in self.states:  # two ranges on one state: nobody says which of them it counts
            return self.work(lift)
        self.states.add(key)
        if self.chance(0.2):
            group.reps = 'amrap', self.pick(5, 8)
            if name in ('fill', 'heavier', 'both'):
                group.progression = 'steady'
        return group

    # Changes

    def changes(self, why, lifts):
        some = []
        for verb in self.r.sample(['sets', 'rpe', 'load', 'reps'], self.r.randint(1, 3)):
            on = lifts if lifts and self.chance(0.6) else []
            some.append(Change(verb=verb, lifts=on, **self.amount(verb, why)))
        return some

    def amount(self, verb, why):
        way, value = {
            'sets': self.pick(('to', only(50, '%')), ('down', only(1)), ('up', only(1)), ('down', only(30, '%'))),
            'rpe': self.pick(('down', only(2)), ('down', only(F(1, 2))), ('to', only(5))),
            'load': self.pick(('down', only(10, '%')), ('to', only(80, '%')), ('down', only(F(5, 2), 'kg')),
                              ('down', only(5, 'lb'))),
            'reps': self.pick(('down', only(1)), ('to', only(3)), ('to', only(60, '%'))),
        }[verb]
        return dict(way=way, value=value)

    def adjust(self, club, block):
        people = [self.r.choice(list(club.athletes))]
        first = self.r.randint(1, block.weeks)
        weeks = self.pick(None, list(range(first, self.r.randint(first, block.weeks) + 1)))
        if weeks is None and self.chance(0.5):
            weeks = [first]
        here = sorted({e.lift for d in block.days for e in d.entries})
        changes = self.changes('adjust', [self.r.choice(here)])
        progress = {e.lift for d in block.days for e in d.entries
                    if any(g.progression for g in e.groups or club.schemes[e.scheme][1])}
        if 'squat' in here and not {'front', 'deep'} & set(here) and 'squat' not in progress and self.chance(0.4):
            changes.insert(self.r.randint(0, len(changes)),
                           Change(verb='swap', lifts=['squat'], to=self.pick('front', 'bench')
                           if 'bench' not in here else 'front'))
        if self.chance(0.2):
            changes.append(Change(verb='skip-lift', lifts=[self.r.choice(here)]))
        if self.chance(0.2) and block.reduce == 100:
            changes.append(Change(verb='cap', lifts=self.pick([], [self.r.choice(here)]),
                                  value=only(self.between(6, 8, F(1, 2)))))
        if self.chance(0.15) and block.days:
            changes.append(Change(verb='skip-day', days=[self.r.choice(block.days).label]))
        if self.chance(0.15):
            block_free = [name for name in ('landmine', 'curl') if name not in here]
            if block_free:
                group = Group(sets=only(2), reps=('count', only(10)), load=('rpe', only(7), None))
                changes.append(Change(verb='add', to='A', entries=[Entry(lift=block_free[0], groups=[group])]))
        return people, weeks, changes
