"""What a club is: gyms, lifts, people and blocks as a structure, from which both the text and the loads follow."""
from fractions import Fraction as F

from weights import rounded

ONE, HALF = F(1), F(1, 2)
WEEKDAYS = 'mon tue wed thu fri sat sun'.split()


class Bag:
    """A thing with the attributes it was given; those in `usual` where it was not."""
    usual = {}

    def __init__(self, **given):
        self.__dict__.update({k: (v.copy() if isinstance(v, (list, dict)) else v) for k, v in self.usual.items()})
        unknown = set(given) - set(self.usual)
        assert not unknown, unknown
        self.__dict__.update(given)


class Slot:
    """An entry on its day, with what is known of it so far."""


class Series(Bag):
    """kind list, ramp, step, wave; weeks[i][set] is a band (low, high); step and wave rise by `by`."""
    usual = dict(kind='list', weeks=[], by=F(0), each=1, unit='')

    def sets(self, i):
        return len(self.weeks[self.week(i)])

    def week(self, i):
        if self.kind == 'list':
            return min(i, len(self.weeks)) - 1
        return (i - 1) % len(self.weeks) if self.kind == 'wave' else 0

    def value(self, i, n, grain, k=0):
        bands = self.weeks[self.week(i)]
        low, high = bands[min(k, len(bands) - 1)]
        if self.kind == 'ramp':
            to = self.weeks[1][min(k, len(self.weeks[1]) - 1)]
            way = F(i - 1, n - 1) if n > 1 else F(0)
            low, high = low + (to[0] - low) * way, high + (to[1] - high) * way
            return (rounded(low, grain), rounded(high, grain)) if grain else (low, high)
        rise = self.by * {'step': (i - 1) // self.each, 'wave': (i - 1) // len(self.weeks), 'list': 0}[self.kind]
        return low + rise, high + rise


class Lift(Bag):
    usual = dict(name='', like=None, percent=F(100), loads=None, equipment=None, kind=None)


class Athlete(Bag):
    # maxes: (lift, load, reps, rpe, date), reps None when tested, load counted over bodyweight when reps is 'body'
    usual = dict(name='', gym=None, bodyweights=[], maxes=[], curves={}, efforts={}, avoids={}, lets={}, model=None)


class Group(Bag):
    # reps: ('count', use), ('amrap', least), ('s' | 'm', use), ('cluster', [..]), ('total', n)
    # load: (kind, use, more): rpe rir percent percent-of day body weight bodyweight same drop open
    usual = dict(role='work', sets=None, reps=None, load=('open', None, None), cap=None, rest=None, tempo=None,
                 weeks=None, progression=None, note=None, each_side=False)


class Entry(Bag):
    usual = dict(lift='', groups=[], scheme=None, given={}, lets={}, rounds=None)


class Day(Bag):
    usual = dict(label='', on=[], weeks=None, entries=[], lets={}, gym=None)


class Change(Bag):
    # verb: sets reps rpe load swap skip-lift skip-day cap add skip-week; way: up down to
    usual = dict(verb='', way='', value=None, lifts=[], days=[], to=None, entries=[])


class Block(Bag):
    usual = dict(name='', people=[], starts=None, weeks=1, deloads={}, tapers=[], lets={}, warm_ups=[], days=[],
                 rotate=None, adjusts=[], model=None, reduce=F(100))


class Club(Bag):
    # schemes: name to (lets, groups); progressions: name to (event, amount) with amount ('kg', 2.5) or ('step', 1)
    usual = dict(units='kg', gyms={}, lifts={}, athletes={}, groups={}, blocks=[], schemes={}, progressions={},
                 model=None)
