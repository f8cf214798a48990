"""A club as a coach would write it: the structure of clubs.py to text, in ways chosen by chance."""
from fractions import Fraction

from club import Series
from weights import KG, UNIT, plain


class Writer:
    def __init__(self, club, random):
        self.club, self.r, self.lines, self.depth = club, random, [], 0

    def text(self):
        club = self.club
        parts = [lambda: self.gyms(), lambda: self.lifts(), lambda: self.people(), lambda: self.schemes()]
        if club.model:
            parts.append(lambda: self.line(f'model {club.model}'))
        self.r.shuffle(parts)
        self.line(f'units {club.units}')
        for part in parts:
            part()
        for block in club.blocks:  # their order is the order of what comes out
            self.block(block)
        return '\n'.join(self.lines) + '\n'

    def line(self, text):
        self.lines.append('  ' * self.depth + text)

    def body(self, head, write):
        self.line(head + ' {')
        self.depth += 1
        write()
        self.depth -= 1
        self.line('}')

    def weight(self, load):
        """In kilograms when these are short, else in pounds."""
        for unit in ('kg', 'lb'):
            whole = load * 100 / UNIT[unit]
            if whole == int(whole):
                return f'{plain(load / UNIT[unit] if load % UNIT[unit] == 0 else _ratio(load, UNIT[unit]))} {unit}'
        raise ValueError(load)

    # Declarations

    def gyms(self):
        for gym in self.club.gyms.values():
            self.body(f'gym {gym.name}', lambda: self.gym(gym))

    def gym(self, gym):
        u = UNIT[gym.unit]
        for name, load in gym.bars.items():
            self.line(f'bar {name + " " if name else ""}{plain(_ratio(load, u))} {gym.unit}')
        if gym.collar:
            self.line(f'collar {plain(_ratio(gym.collar, u))} {gym.unit}')
        if gym.discs is not None:
            discs = ', '.join(f'{plain(_ratio(w, u))} x {n}' for w, n in gym.discs)
            self.line(f'plates {discs} {gym.unit}')
        ranges = ', '.join(f'{plain(some[0])} to {plain(some[-1])} step {plain(some[1] - some[0])} {gym.unit}'
                           for some in gym.ranges)
        self.line(f'dumbbells {ranges}')
        for name, loads in gym.stacks.items():
            low, step, high = (plain(_ratio(w, u)) for w in (loads[0], loads[1] - loads[0], loads[-1]))
            self.line(f'stack {name + " " if name else ""}{low} to {high} step {step} {gym.unit}')
        if gym.way != 'nearest' or self.r.random() < 0.3:
            self.line(f'round {gym.way}')

    def lifts(self):
        for lift in self.club.lifts.values():
            head = f'lift {lift.name}'
            if lift.like:
                head += f' like {lift.like}' + (f' at {plain(lift.percent)}%' if lift.percent != 100 else '')
            if lift.loads:
                head += f' {{ loads {lift.loads}{" " + lift.equipment if lift.equipment else ""} }}'
            self.line(head)

    def people(self):
        for a in self.club.athletes.values():
            self.body(f'athlete {a.name}', lambda: self.athlete(a))
        for name, people in self.club.groups.items():
            self.line(f'group {name} {{ {", ".join(people)} }}')

    def athlete(self, a):
        if a.gym:
            self.line(f'gym {a.gym}')
        if a.model:
            self.line(f'model {a.model}')
        for date, load in a.bodyweights:
            self.line(f'bodyweight {self.weight(load)} on {date}')
        for lift, load, reps, rpe, date in a.maxes:
            on = f' on {date}' if date else ''
            if reps == 'body':
                self.line(f'max {lift} bodyweight plus {self.weight(load)}{on}')
            elif reps:
                self.line(f'max {lift} from {self.weight(load)} x {reps} rpe {plain(rpe)}{on}')
            else:
                self.line(f'max {lift} {self.weight(load)}{on}')
        for lift, points in a.curves.items():
            for reps, share in points:
                self.line(f'curve {lift} {reps} reps at {plain(share * 100)}%')
        for lift, by in a.efforts.items():
            self.line(f'effort {lift} 7 means {plain(7 + by)}')
        for lift, other in a.avoids.items():
            self.line(f'avoid {lift} use {other} because "sore"')
        self.lets(a.lets)

    def lets(self, lets):
        for name, series in lets.items():
            self.line(f'let {name} = {self.series(series)}')

    def schemes(self):
        for name, (lets, groups) in self.club.schemes.items():
            def write():
                self.lets(lets)
                for group in groups:
                    self.line(self.group(group))
            self.body(f'scheme {name}', write)
        for name, lines in self.club.progressions.items():
            told = '; '.join(f'when {event} add {plain(v)} {u}' for event, (u, v) in lines.items())
            self.line(f'progression {name} {{ {told} }}')

    # Series

    def band(self, band):
        low, high = band
        return plain(low) if low == high else f'{plain(low)}-{plain(high)}'

    def series(self, series):
        unit = f' {series.unit}' if series.unit in UNIT else series.unit
        weeks = [', '.join(self.band(b) for b in week) for week in series.weeks]
        if series.kind == 'ramp':
            return f'from {weeks[0]} to {weeks[1]}{unit}'
        text = ' | '.join(weeks) + unit
        if series.kind == 'wave':
            text = 'wave ' + text
        if series.by:
            end = 'pass' if series.kind == 'wave' else 'week' if series.each == 1 else f'{series.each} weeks'
            text += f' {"plus" if series.by > 0 else "minus"} {plain(abs(series.by))}{unit} each {end}'
        return text

    def use(self, use):
        return use if isinstance(use, str) else self.series(use)

    def counted(self, use):
        """For sets and reps: more than one number stands in parentheses."""
        text = self.use(use)
        many = isinstance(use, Series) and (len(use.weeks) > 1 or use.by)
        return f'({text})' if many else text

    # Blocks

    def block(self, block):
        def write():
            self.line(f'for {", ".join(block.people)}')
            self.line(f'starts {block.starts}')
            self.line(f'weeks {block.weeks}')
            if block.model:
                self.line(f'model {block.model}')
            if block.reduce != 100:
                self.line(f'max to {plain(block.reduce)}%')
            for week, changes in block.deloads.items():
                self.line(f'deload week {week} {{ {self.changes(changes)} }}')
            for weeks, changes in block.tapers:
                self.line(f'taper weeks {weeks[0]}-{weeks[-1]} {{ {self.changes(changes)} }}')
            for scheme, lifts in block.warm_ups:
                self.line(f'warm-up {scheme} for {", ".join(lifts)}')
            self.lets(block.lets)
            if block.rotate:
                self.line(f'rotate {", ".join(block.rotate[0])} on {", ".join(block.rotate[1])}')
            for day in block.days:
                if day.weeks:
                    self.body(weeks_text(day.weeks), lambda: self.day(day))
                else:
                    self.day(day)
            for people, weeks, changes in block.adjusts:
                span = ' in ' + weeks_text(weeks) if weeks else ''
                self.line(f'adjust {", ".join(people)}{span} {{ {self.changes(changes)} }}')
        self.body(f'block {block.name}', write)

    def day(self, day):
        def write():
            if day.gym:
                self.line(f'gym {day.gym}')
            self.lets(day.lets)
            for entry in day.entries:
                if entry.rounds:
                    self.body(f'superset {entry.rounds} rounds', lambda: self.entry(entry))
                else:
                    self.entry(entry)
        self.body(f'day {day.label}' + (f' on {", ".join(day.on)}' if day.on else ''), write)

    def entry(self, entry):
        self.lines += ['  ' * self.depth + line for line in self.entry_lines(entry)]

    def entry_lines(self, entry):
        if entry.scheme:
            given = ' and '.join(f'{name} = {self.series(s)}' for name, s in entry.given.items())
            return [f'{entry.lift} {entry.scheme}' + (f' with {given}' if given else '')]
        groups = [self.group(g) for g in entry.groups]
        if self.r.random() < 0.4:
            return [f'{entry.lift} {" then ".join(groups)}']
        if self.r.random() < 0.5:
            return [f'{entry.lift} {{ {"; ".join(groups)} }}']
        return [f'{entry.lift} {{', *('  ' + g for g in groups), '}']

    def group(self, g):
        times = self.r.choice([' x ', ' × ', 'x']) if g.reps[0] == 'count' else ' x '
        if not isinstance(g.sets, Series) or len(g.sets.weeks) > 1 or g.sets.by or isinstance(g.reps[1], str):
            times = ' x '
        kind, use = g.reps
        reps = {'count': lambda: self.counted(use), 'amrap': lambda: 'amrap', 'total': lambda: str(use),
                'cluster': lambda: '+'.join(map(str, use))}.get(kind, lambda: f'{self.counted(use)} {kind}')()
        if times == 'x' and not reps[0].isdigit():
            times = ' x '
        head = '' if g.role == 'work' else g.role + ' '
        head += f'total {reps}' if kind == 'total' else self.counted(g.sets) + times + reps
        clauses = [c for c in (self.load(g), self.cap(g), self.rest(g)) if c]
        if kind == 'amrap' and use:
            clauses.append(f'at least {use}')
        if g.tempo:
            clauses.append(f'tempo "{g.tempo}"')
        if g.note:
            clauses.append('note "' + g.note.replace('"', '\\"') + '"')
        if g.weeks:
            clauses.append('in ' + weeks_text(g.weeks))
        if g.progression:
            clauses.append(f'progression {g.progression}')
        if self.r.random() < 0.3:
            self.r.shuffle(clauses)
        return ' '.join([head, *clauses])

    def rest(self, g):
        if not g.rest:
            return ''
        return {'90': 'rest 90 s', '180': 'rest 3 min', '120-180': 'rest 2-3 min'}[g.rest]

    def cap(self, g):
        if not g.cap:
            return ''
        kind, value = g.cap
        return f'cap rpe {plain(value)}' if kind == 'rpe' else f'cap {plain(value)}' + ('%'
                if kind == '%' else f' {kind}')

    def load(self, g):
        kind, use, more = g.load
        if kind in ('rpe', 'rir'):
            return f'at {kind} {self.use(use)}'
        if kind in ('percent', 'weight'):
            return f'at {self.use(use)}'
        if kind == 'percent-of':
            return f'at {self.use(use)} of {more}'
        if kind == 'body':
            return f'at {self.use(use)} of bodyweight'
        if kind == 'day':
            return f'at {self.use(use)} of day {more}'
        if kind == 'bodyweight':
            way = '' if not use else f' {"plus" if use > 0 else "minus"} {plain(_ratio(abs(use), KG))} kg'
            return 'at bodyweight' + way
        return {'same': lambda: 'at same', 'drop': lambda: f'drop {self.use(use)}', 'open': lambda: ''}[kind]()

    def changes(self, changes):
        return '; '.join(self.change(c) for c in changes)

    def change(self, c):
        lifts = f' for {", ".join(c.lifts)}' if c.lifts else ''
        days = f' on day {", ".join(c.days)}' if c.days else ''
        if c.verb == 'swap':
            return f'swap {c.lifts[0]} with {c.to}'
        if c.verb == 'skip-lift':
            return f'skip {c.lifts[0]}'
        if c.verb == 'skip-day':
            return f'skip day {c.days[0]}'
        if c.verb == 'cap':
            return f'cap {c.lifts[0] + " " if c.lifts else ""}rpe {self.series(c.value)}'
        if c.verb == 'add':
            return f'add to day {c.to} {{ {"; ".join(" ".join(self.entry_lines(e)) for e in c.entries)} }}'
        return f'{c.verb} {c.way} {self.series(c.value)}{lifts}{days}'


def weeks_text(weeks):
    return f'weeks {weeks[0]}-{weeks[-1]}' if len(weeks) > 1 else f'week {weeks[0]}'


def _ratio(load, unit):
    return Fraction(load, unit) if isinstance(load, int) else load / unit
