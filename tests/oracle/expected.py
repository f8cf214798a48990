"""What the design says comes out of a club: the rows of the CSV, worked out from the structure, not from the text."""
import datetime
import math
from fractions import Fraction as F

from club import HALF, ONE, Series, Slot, WEEKDAYS
from progress import State
from weights import Curve, Gym, KG, LB, UNIT, plain, rounded


class Impossible(Exception):
    """A load-based set of several reps above rpe 10: the program has to refuse it."""


def date_of(start, weekday):
    return start + datetime.timedelta(days=(WEEKDAYS.index(weekday) - start.weekday()) % 7)


class Scope:
    """The training weeks that a series counts."""

    def __init__(self, block, weeks):
        self.training = [w for w in weeks if w not in block.deloads]

    def place(self, week):
        return max(1, sum(w <= week for w in self.training)), max(1, len(self.training))


class Planning:
    """One athlete in one block."""

    def __init__(self, club, block, athlete):
        self.club, self.block, self.athlete = club, block, athlete
        self.states, self.rows = {}, []

    # Maxes

    def start(self, week):
        return self.block.starts + datetime.timedelta(days=7 * (week - 1))

    def curve(self, lift):
        points = self.athlete.curves.get(lift)
        return Curve(points=points) if points else Curve(self.athlete.model or self.block.model or self.club.model)

    def bodyweight(self, day):
        known = [(d, w) for d, w in self.athlete.bodyweights if d <= day]
        if not known and self.athlete.bodyweights:
            known = [min(self.athlete.bodyweights)]  # weighed later only: the nearest there is
        return max(known)[1] if known else None

    def own_max(self, lift, day):
        lines = [m for m in self.athlete.maxes if m[0] == lift and (m[4] is None or m[4] <= day)]
        if not lines:
            return None
        _, load, reps, rpe, date = max(enumerate(lines), key=lambda x: (x[1][4] or datetime.date.min, x[0]))[1]
        if reps == 'body':
            return self.bodyweight(date) + load
        if reps is None:
            return F(load)
        rated = min(F(10), max(F(0), rpe + self.athlete.efforts.get(lift, 0)))
        return F(load) / self.curve(lift).share(reps + 10 - rated)

    def max(self, lift, day):
        share = ONE
        while lift:
            own = self.own_max(lift, day)
            if own is not None:
                return own * share
            share *= self.club.lifts[lift].percent / 100
            lift = self.club.lifts[lift].like
        return None

    def loading(self, lift):
        while self.club.lifts[lift].loads is None and self.club.lifts[lift].like:
            lift = self.club.lifts[lift].like
        return self.club.lifts[lift].loads or 'free', self.club.lifts[lift].equipment

    def ladder(self, day, lift):
        return self.gym(day).ladder(*self.loading(lift))

    def gym(self, day):
        name = day.gym or self.athlete.gym
        if name:
            return self.club.gyms[name]
        if not hasattr(self, 'bare'):
            unit = self.club.units
            self.bare = Gym('bare', unit, {None: 45 * LB if unit == 'lb' else 20 * KG})
        return self.bare

    # Weeks and days

    def plan(self):
        for week in range(1, self.block.weeks + 1):
            self.week = week
            self.heaviest = {}
            for date, day in self.days(week):
                self.day(date, day)
        return self.rows

    def rotation(self):
        """(week, date): label, in date order over the whole block."""
        labels, on = self.block.rotate
        slots = [(w, date_of(self.start(w), d)) for w in range(1, self.block.weeks + 1) for d in on]
        return {slot: labels[i % len(labels)] for i, slot in enumerate(sorted(slots, key=lambda s: s[1]))}

    def days(self, week):
        here = [d for d in self.block.days if d.weeks is None or week in d.weeks]
        turns = self.rotation() if self.block.rotate else {}
        dated, undated = [], []
        for order, day in enumerate(here):
            if self.block.rotate and day.label in self.block.rotate[0]:
                dates = [d for (w, d), label in turns.items() if w == week and label == day.label]
            else:
                dates = [date_of(self.start(week), d) for d in day.on]
                if not dates:
                    undated.append((None, day))
            dated += [(date, order, day) for date in dates]
        found = [(date, day) for date, _, day in sorted(dated, key=lambda x: x[:2])] + undated
        return [(date, day) for date, day in found if not self.skipped(date, day)]

    def lists(self, date):
        """The changes at work on this day, in order: deload or taper, then the adjusts."""
        found = []
        if self.week in self.block.deloads:
            found.append(('deload', self.block.deloads[self.week], 1))
        for weeks, changes in self.block.tapers:
            if self.week in weeks:
                found.append(('taper', changes, weeks.index(self.week) + 1))
        for people, weeks, changes in self.block.adjusts:
            everyone = weeks or list(range(1, self.block.weeks + 1))
            if self.athlete.name in people and self.week in everyone:
                found.append(('adjust', changes, everyone.index(self.week) + 1))
        return found

    def skipped(self, date, day):
        return any(c.verb == 'skip-week' or (c.verb == 'skip-day' and day.label in c.days)
                   for _, changes, _ in self.lists(date) for c in changes)

    # One day

    def day(self, date, day):
        self.seq, moved = 0, []
        today = self.heaviest.setdefault(day.label, {})
        for entry in self.entries(date, day):
            self.entry(date, day, entry, moved, today)
        for state in moved:
            state.move(self.week in self.block.deloads)

    def entries(self, date, day):
        """(entry, names it answers to, lift in the end, swapped, the place of its weeks)."""
        found = [(e, day.weeks, self.lists(date)) for e in day.entries]
        for i, (why, changes, k) in enumerate(self.lists(date)):
            for j, c in enumerate(changes):  # what stands before it does not touch what is added
                if c.verb == 'add' and c.to == day.label:
                    later = [(why, changes[j:], k), *self.lists(date)[i + 1:]]
                    found += [(e, None, later) for e in c.entries]
        for entry, weeks, self.at_work in found:
            lift = self.lift_named(entry.lift, day, entry)
            names, swapped, skip = {lift}, False, False
            for _, changes, _ in self.at_work:
                for c in changes:
                    if c.verb == 'swap' and c.lifts[0] in names and (not c.days or day.label in c.days):
                        lift, swapped = c.to, True
                        names.add(lift)
                for c in changes:
                    skip |= c.verb == 'skip-lift' and c.lifts[0] in names
            if lift in self.athlete.avoids:
                lift, swapped = self.athlete.avoids[lift], True
            if not skip:
                yield entry, names, lift, swapped, weeks

    def lift_named(self, name, day, entry):
        return self.lookup(name, day, entry, None)[0] if name.startswith('$') else name

    def lookup(self, name, day, entry, place):
        """The nearest let: the athlete's own, `with`, entry, scheme, day, block; and the weeks it counts."""
        scheme = self.club.schemes[entry.scheme][0] if entry.scheme else {}
        levels = [(self.athlete.lets, None), (entry.given, place), (entry.lets, place), (scheme, place),
                  (day.lets, day.weeks), (self.block.lets, None)]
        for lets, weeks in levels:
            if name in lets:
                return lets[name], weeks
        raise KeyError(name)

    def at(self, use, place, grain, k=0):
        """A series or a name in this week; place is the weeks that a written series counts."""
        series, weeks = use, place
        if isinstance(use, str):
            series, weeks = self.lookup(use, self.today, self.now, self.entry_weeks)
        i, n = self.scope(weeks).place(self.week)
        return series.value(i, n, grain, k)

    def resolved(self, use):
        return self.lookup(use, self.today, self.now, self.entry_weeks)[0] if isinstance(use, str) else use

    def load_of(self, group):
        """`at $name` is a weight or a per cent by what the name stands for."""
        kind, use, more = group.load
        if kind != 'named':
            return group.load
        unit = self.resolved(use).unit
        return ('weight', use, unit) if unit in UNIT else ('percent', use, None)

    def length(self, use, place):
        series, weeks = use, place
        if isinstance(use, str):
            series, weeks = self.lookup(use, self.today, self.now, self.entry_weeks)
        return series.sets(self.scope(weeks).place(self.week)[0]) if isinstance(series, Series) else 1

    def scope(self, weeks):
        return Scope(self.block, weeks or range(1, self.block.weeks + 1))

    # One entry

    def entry(self, date, day, entry, moved, today):
        self.today, self.now, (entry, names, lift, swapped, self.entry_weeks) = day, entry[0], entry
        groups = self.club.schemes[entry.scheme][1] if entry.scheme else entry.groups
        at = Slot()
        at.date, at.day, at.entry, at.names, at.lift, at.swapped = date, day, entry, names, lift, swapped
        at.gym, at.ladder = self.gym(day), self.ladder(day, lift)
        at.max, at.body = self.max(lift, self.start(self.week)), F(0)
        if self.loading(lift)[0] == 'bodyweight':
            at.body = self.bodyweight(self.start(self.week)) or F(0)
        at.moved, at.before, at.top, at.first, at.day_loads = moved, None, None, None, today
        lines = []
        for group in groups:
            if group.weeks and self.week not in group.weeks:
                continue
            if group.role != 'warm-up':
                lines.append((group, self.group(at, group)))
        warm = [g for g in groups if g.role == 'warm-up'] if lines else []
        for scheme, lifts in self.block.warm_ups:
            if lines and (names & set(lifts) or lift in lifts):
                warm += self.club.schemes[scheme][1]
        self.warm_ups(at, warm)
        for group, sets in lines:
            self.print(at, group, sets)

    def warm_ups(self, at, groups):
        last = None
        for group in groups:
            load = None
            if at.first is not None:
                percent = self.at(group.load[1], group.weeks or self.entry_weeks, HALF)[0]
                load = at.ladder.reach(at.first * percent / 100 - at.body) + at.body
                if load == last or load >= at.first:
                    continue
                last = load
            reps = int(self.at(group.reps[1], group.weeks or self.entry_weeks, ONE)[0])
            sets = int(self.at(group.sets, group.weeks or self.entry_weeks, ONE)[0])
            effort = self.effort_of(at, F(reps), load) if load is not None and at.max is not None else None
            self.print(at, group, [(('count', reps, reps), effort, load, at.max)] * sets)

    def group(self, at, group):
        """The working sets in order: (reps, effort printed, load as rounded, the max shown)."""
        place = group.weeks or self.entry_weeks
        sets = self.changed(at, 'sets', self.at(group.sets, place, ONE)) if group.reps[0] != 'total' else (1, 1)
        sets = [max(1, math.ceil(x)) for x in sets]
        count = math.ceil(F(sets[0] + sets[1], 2))
        kinds = 1
        if group.reps[0] == 'count':
            kinds = self.length(group.reps[1], place)
        if group.load[0] in ('rpe', 'rir', 'percent', 'weight', 'named'):
            kinds = max(kinds, self.length(group.load[1], place))
        by_weight = at.swapped and self.load_of(group)[0] == 'weight'
        state = self.state(at, group, place) if group.progression and not by_weight else None
        out = [self.one(at, group, place, k, state) for k in range(kinds)]
        out = [out[min(k, kinds - 1)] for k in range(count)]
        at.before = out[-1][2]
        if group.role == 'top':
            at.top = (out[-1][2],)
        if at.first is None and not hasattr(at, 'seen'):
            at.first, at.seen = out[0][2], True
        for _, _, load, _ in out:
            if load is not None:
                at.day_loads[at.lift] = max(load, at.day_loads.get(at.lift, load))
        if state and state not in at.moved:
            at.moved.append(state)
        return out

    def reaching(self, at, verb):
        for why, changes, i in self.at_work:
            for c in changes:
                if c.verb == verb and (not c.lifts or set(c.lifts) & at.names) and \
                        (not c.days or at.day.label in c.days):
                    yield why, c, c.value.value(i, i, None)[0] if c.value else None

    def changed(self, at, verb, band):
        low, high = band
        for _, c, amount in self.reaching(at, verb):
            low, high = (change(c, x, amount) for x in (low, high))
            if verb == 'sets':
                low, high = (max(1, math.ceil(x)) for x in (low, high))
            if verb == 'reps':
                low, high = (max(1, rounded(x, 1)) for x in (low, high))
            if verb == 'rpe':
                low, high = (min(F(10), max(F(0), x)) for x in (low, high))
        return low, high

    def reps(self, at, group, place, k, state):
        kind, use = group.reps
        if kind == 'amrap':
            if state and self.week in self.block.deloads:
                return ('count', use, use)
            return (kind, use, None)
        if kind == 'cluster':
            return ('count', sum(use), sum(use))
        if kind == 'total':
            return ('count', use, use)
        low, high = self.at(use, place, ONE, k)
        if state and state.full and kind == 'count':
            low = F(state.target)
        low, high = self.changed(at, 'reps', (low, high))
        return (kind, int(low), int(high))

    def one(self, at, group, place, k, state):
        reps = self.reps(at, group, place, k, state)
        middle = F(reps[1] + reps[2], 2) if reps[0] == 'count' else None
        curve = self.curve(at.lift)
        reduce = self.block.reduce / 100
        kind, use, more = self.load_of(group)
        plan, effort, shown, hanging = None, None, at.max, False
        if kind in ('rpe', 'rir'):
            low, high = self.at(use, place, HALF, k)
            effort = (10 - high, 10 - low) if kind == 'rir' else (low, high)
            effort = self.changed(at, 'rpe', effort)
            if at.max is not None and middle is not None:
                plan = at.max * reduce * curve.share(middle + 10 - sum(effort) / 2)
        elif state:
            plan = state.load
        elif kind in ('percent', 'percent-of'):
            share = sum(self.at(use, place, HALF, k)) / 200
            if kind == 'percent-of':
                shown = self.max(more, self.start(self.week))
            plan = shown * reduce * share
        elif kind == 'weight':
            if not at.swapped:
                plan = sum(self.at(use, place, None, k)) / 2 * UNIT[more]
        elif kind == 'body':
            plan = self.bodyweight(self.start(self.week)) * sum(self.at(use, place, HALF)) / 200
        elif kind == 'bodyweight':
            plan = at.body + use
        elif kind in ('same', 'drop', 'day'):
            hanging = True
            base = at.before
            if kind == 'drop' and at.top:
                base = at.top[0]
            if kind == 'day':
                base = self.heaviest.get(more, {}).get(at.lift)
            if base is not None:
                plan = F(base)
                if kind == 'drop':
                    unit = self.resolved(use).unit
                    amount = self.at(use, place, HALF if unit == '%' else None)[0]
                    plan = base * (1 - amount / 100) if unit == '%' else base - amount * UNIT[unit]
                elif kind == 'day':
                    plan = base * self.at(use, place, HALF)[0] / 100
        moved = False
        if plan is not None and not hanging:
            for why, c, amount in self.reaching(at, 'load'):
                if why == 'adjust' or effort is None:
                    if c.value.unit in UNIT:
                        amount = amount * UNIT[c.value.unit]
                    plan, moved = change(c, plan, amount), True
        return self.finish(at, group, reps, middle, effort, plan, shown, moved, curve)

    def finish(self, at, group, reps, middle, effort, plan, shown, moved, curve):
        """Rounding, caps, and the effort that the sheet shows."""
        caps = [('rpe', amount) for _, _, amount in self.reaching(at, 'cap')]
        if group.cap:
            caps.append(group.cap)
        load, lowered = None, False
        if plan is not None:
            load = at.ladder.reach(plan - at.body) + at.body
            limits = [c for c in (self.cap(at, curve, middle, *cap) for cap in caps) if c is not None]
            if limits and max(load, plan) > min(limits):
                load, lowered = at.ladder.below(min(limits) - at.body) + at.body, True
        elif effort:
            lowest = min([v for k, v in caps if k == 'rpe'], default=F(10))
            effort = tuple(min(e, lowest) for e in effort)
        if effort and effort[1] > min([v for k, v in caps if k == 'rpe'], default=10):
            lowered = True  # no target stands above its cap: what is done is shown
        if effort and not lowered and not moved:
            return reps, effort, load, shown
        if load is None or at.max is None or middle is None or group.reps[0] == 'total':
            return reps, None, load, shown
        rpe = 10 + middle - curve.possible(load / at.max)
        if rpe > 10 and middle > 1:
            raise Impossible(f'{at.lift} week {self.week}')
        return reps, self.effort_of(at, middle, load), load, shown

    def effort_of(self, at, reps, load):
        """The expected rpe, as printed; nobody says what stands for a single above the max."""
        n = self.curve(at.lift).possible(load / at.max)
        rpe = 10 + reps - n
        return 'any' if n < 1 or rpe > 10 else '<1' if rpe < 1 else rounded(rpe, HALF)

    def cap(self, at, curve, middle, kind, value):
        if kind == 'rpe':
            if at.max is None or middle is None:
                return None
            return at.max * curve.share(middle + 10 - value)
        if kind == '%':
            return None if at.max is None else at.max * self.block.reduce / 100 * value / 100
        return value * UNIT[kind]

    def state(self, at, group, place):
        kind, use, unit = self.load_of(group)
        if kind == 'percent':
            start = self.max(at.lift, self.start(1)) * self.block.reduce / 100 * self.at(use, place, HALF)[0] / 100
        else:
            start = self.at(use, place, None)[0] * UNIT[unit]
        low, high = self.at(group.reps[1], place, ONE) if group.reps[0] == 'count' else (0, 0)
        key = at.lift, group.progression, start
        if key not in self.states:
            self.states[key] = State(self.club.progressions[group.progression], start, low, high)
        state = self.states[key]
        state.ladder = at.ladder
        return state.of_week(self.week in self.block.deloads)

    # Rows

    def print(self, at, group, sets):
        runs = []
        for one in sets:
            cells = self.cells(at, group, *one)
            if runs and runs[-1][0] == cells:
                runs[-1][1] += 1
            else:
                runs.append([cells, 1])
        for cells, count in runs:
            self.seq += 1
            rounds = at.entry.rounds or 1
            number = '' if group.reps[0] == 'total' else str(count * (1 if group.role == 'warm-up' else rounds))
            self.rows.append(dict(cells, seq=str(self.seq), sets=number))

    def cells(self, at, group, reps, effort, load, shown):
        kind, low, high = reps
        tail = f' {kind}' if kind in 's m'.split() else ''
        low, high = ('' if x is None else f'{x}{tail}' for x in (low, high))
        row = dict(athlete=self.athlete.name, block=self.block.name, week=str(self.week),
                   date=at.date.isoformat() if at.date else '', day=at.day.label, lift=at.lift, role=group.role,
                   reps_low=low, reps_high=high, rpe=shown_effort(effort), percent='', load='', unit='', per_side='',
                   rest_s=group.rest or '', tempo=group.tempo or '', note=group.note or '')
        if load is not None:
            row['load'], row['unit'] = at.gym.shown(load - at.body), at.gym.unit
            if at.ladder.discs:
                row['per_side'] = '+'.join(at.gym.shown(w) for w in at.ladder.discs[load])
            if shown:
                row['percent'] = plain(rounded(F(load) * 100 / shown, F(1, 10)))
        elif group.role == 'warm-up' or group.load[0] in ('drop', 'day', 'same'):
            row['note'] = 'any'
        if hasattr(at.entry, 'own_note'):
            row['note'] = 'any'
        return row


def change(c, now, amount):
    if c.value.unit == '%':
        amount = now * amount / 100
    return {'up': now + amount, 'down': now - amount, 'to': amount}[c.way]


def shown_effort(effort):
    if effort is None:
        return ''
    if isinstance(effort, tuple):
        low, high = effort
        return plain(low) if low == high else f'{plain(low)}-{plain(high)}'
    return effort if isinstance(effort, str) else plain(effort)


def rows(club):
    """All rows, athletes as first named by the blocks, within one the blocks in their order."""
    named = {}
    for block in club.blocks:
        for name in block.people:
            everyone = club.athletes if name == 'all' else club.groups.get(name, [name])
            for athlete in everyone:
                if block not in named.setdefault(athlete, []):
                    named[athlete].append(block)
    return [row for name, blocks in named.items() for block in blocks
            for row in Planning(club, block, club.athletes[name]).plan()]
