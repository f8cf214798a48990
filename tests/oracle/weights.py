"""Weights, gyms and repetition curves, written from the design and the published formulas alone.

Weights are whole numbers of 1e-10 kg when a gym makes them and Fractions while they are planned.
"""
import math
from fractions import Fraction as F
from itertools import product

KG = 10 ** 10
LB = 4535923700  # the international pound, 0.45359237 kg exactly (NIST Special Publication 811, appendix B.9)
UNIT = {'kg': KG, 'lb': LB}


def plain(value):
    """A decimal without exponent or trailing zeros."""
    value = F(value)
    sign, value = ('-', -value) if value < 0 else ('', value)
    whole, rest = divmod(value, 1)
    digits = ''
    while rest:
        digit, rest = divmod(rest * 10, 1)
        digits += str(int(digit))
        if len(digits) > 20:
            raise ValueError(f'{value} does not end')
    return f'{sign}{int(whole)}' + ('.' + digits if digits else '')


def rounded(value, grain):
    """To a multiple of the grain, halves away from zero."""
    steps = F(value) / grain
    up = math.floor(abs(steps) + F(1, 2))
    return grain * (up if steps >= 0 else -up)


# Repetition curves: share of the max for n repetitions, each scaled so that one is the whole max.

CHART = {1: 100, 2: 95, 3: 93, 4: 90, 5: 87, 6: 85, 7: 83, 8: 80, 9: 77, 10: 75, 11: 70, 12: 67, 15: 65}


def chart(n):
    # The load chart in Baechle and Earle (eds.), Essentials of Strength Training and Conditioning.
    if n >= 15:
        return F(65, 100)
    rows = sorted(CHART)
    low = max(r for r in rows if r <= n)
    high = min(r for r in rows if r > n)
    return (CHART[low] + (CHART[high] - CHART[low]) * (F(n) - low) / (high - low)) / F(100)


def chart_reps(share):
    share = F(share) * 100
    rows = sorted(CHART)
    for low, high in zip(rows, rows[1:]):
        if share >= CHART[high]:
            return low + (CHART[low] - share) * (high - low) / (CHART[low] - CHART[high])
    return F(15)


def scaled(load):
    return lambda n: F(load(n)) / F(load(F(1)))


# Each with its inverse: the repetitions that a share of the max allows.
FORMULAS = {
    'epley': (scaled(lambda n: 1 / (1 + F(n) / 30)), lambda p: 31 / p - 30),                       # Epley 1985
    'brzycki': (scaled(lambda n: 37 - F(n)), lambda p: 37 - 36 * p),                               # Brzycki 1993
    'lombardi': (scaled(lambda n: float(n) ** -0.1), lambda p: float(p) ** -10),                   # Lombardi 1989
    'oconner': (scaled(lambda n: 1 / (1 + F(n) / 40)), lambda p: 41 / p - 40),                     # O'Conner 1989
    'mayhew': (scaled(lambda n: 52.2 + 41.9 * math.exp(-0.055 * float(n))),                        # Mayhew 1992
               lambda p: math.log((float(p) * (52.2 + 41.9 * math.exp(-0.055)) - 52.2) / 41.9) / -0.055),
    'wathan': (scaled(lambda n: 48.8 + 53.8 * math.exp(-0.075 * float(n))),                        # Wathen 1994
               lambda p: math.log((float(p) * (48.8 + 53.8 * math.exp(-0.075)) - 48.8) / 53.8) / -0.075),
    'lander': (scaled(lambda n: F('101.3') - F('2.67123') * F(n)),                                 # Lander 1985
               lambda p: (F('101.3') - p * (F('101.3') - F('2.67123'))) / F('2.67123')),
    'handbook': (chart, chart_reps),
    None: (lambda n: (37 - F(n)) / 36 if n <= 10 else 30 / (F(30) + n),                            # Brzycki, above
           lambda p: 37 - 36 * p if p >= F(3, 4) else 30 / p - 30),                                # ten Epley
}
LAST = {'handbook': 15, 'brzycki': 36, 'lander': 37}
FAR = 10 ** 6  # a share that the curve never falls to: more repetitions than anybody does


class Curve:
    def __init__(self, name=None, points=()):
        self.last = None if points else LAST.get(name)
        self.formula, self.inverse = FORMULAS[name]
        if points:
            k = (sum((F(r) - 1) * (1 / F(share) - 1) for r, share in points) /
                 sum((F(r) - 1) ** 2 for r, _ in points))
            self.formula = lambda n: 1 / (1 + k * (n - 1))
            self.inverse = lambda p: 1 + (1 / p - 1) / k if k else FAR

    def share(self, n):
        n = F(n)
        if n <= 1:
            return F(1)
        return self.formula(min(n, self.last) if self.last else n)

    def possible(self, share):
        """How many repetitions this share of the max allows; under one above the max."""
        if share > 1:
            return F(1, 2)
        if share <= 0:
            return F(self.last or FAR)
        try:
            n = self.inverse(F(share))
            n = F(round(n, 9)) if isinstance(n, float) else F(n)  # a set's own share gives its reps back
        except ValueError:  # below the curve's floor
            n = F(FAR)
        return min(n, F(self.last)) if self.last else n


# Gyms: what can be loaded, and how a planned weight becomes one of these.

class Ladder:
    """Loads in rising order; without an end when `step` is given."""

    def __init__(self, loads=None, step=None, least=0, discs=None, way='nearest'):
        self.loads, self.step, self.least, self.discs, self.way = loads, step, least, discs, way

    def below(self, load):
        """The heaviest at or under it, or the lightest there is."""
        if self.step:
            return max(self.least, math.floor(F(load) / self.step) * self.step)
        fit = [x for x in self.loads if x <= load]
        return fit[-1] if fit else self.loads[0]

    def above(self, load):
        """The lightest over it, or None."""
        if self.step:
            return max(self.least, (math.floor(F(load) / self.step) + 1) * self.step)
        return next((x for x in self.loads if x > load), None)

    def reach(self, load):
        low = self.below(load)
        if low >= load or self.way == 'down':
            return low
        high = self.above(load)
        if high is None:
            return low
        return high if self.way == 'up' or high - load < load - low else low


def bar_ladder(empty, discs, way):
    """Equal discs on both sides; of several ways the fewest discs, then the heaviest first."""
    pairs = [(weight, count // 2) for weight, count in sorted(discs, reverse=True)]
    best = {}
    for counts in product(*(range(most + 1) for _, most in pairs)):
        side = [w for (w, _), n in zip(pairs, counts) for _ in range(n)]
        load = empty + 2 * sum(side)
        rank = (len(side), [-w for w in side])
        if load not in best or rank < best[load][0]:
            best[load] = (rank, side)
    return Ladder(sorted(best), discs={load: side for load, (_, side) in best.items()}, way=way)


class Gym:
    """unit, bars by name (None is the usual one), collar, discs or None, dumbbells, stacks by name: 1e-10 kg."""

    def __init__(self, name, unit, bars, collar=0, discs=None, dumbbells=None, stacks=None, way='nearest'):
        self.name, self.unit, self.bars, self.collar = name, unit, bars, collar
        self.discs, self.dumbbells, self.stacks, self.way = discs, dumbbells, stacks or {}, way
        self.made = {}

    def step(self, least=0):
        return Ladder(step=5 * LB if self.unit == 'lb' else 5 * KG // 2, least=least, way=self.way)

    def ladder(self, loads, equipment):
        key = loads, equipment
        if key not in self.made:
            self.made[key] = self.make(loads, equipment)
        return self.made[key]

    def make(self, loads, equipment):
        if loads == 'bar':
            empty = self.bars.get(equipment, self.bars[None]) + 2 * self.collar
            return self.step(empty) if self.discs is None else bar_ladder(empty, self.discs, self.way)
        if loads == 'dumbbells' and self.dumbbells:
            return Ladder(self.dumbbells, way=self.way)
        if loads == 'stack' and equipment in self.stacks:
            return Ladder(self.stacks[equipment], way=self.way)
        if loads == 'free':
            return self.step()
        step = self.step().step
        return self.step(-1000 * step if loads == 'bodyweight' else step)

    def shown(self, load):
        return plain(F(load) / UNIT[self.unit])
