"""Progressions without diaries: the load and the rep target from session to session."""
from fractions import Fraction as F

from weights import UNIT


class State:
    """Load and rep target of a progression; every session counts as made, since there are no diaries."""

    def __init__(self, lines, load, low, high):
        self.lines, self.load, self.target, self.low, self.high = lines, F(load), low, low, high
        self.full = 'reps full' in self.lines
        self.last = None

    def of_week(self, deload):
        """In a deload week, the state as the last training session had it."""
        self.shown = self.last if deload and self.last else (self.load, self.target)
        return Shown(self)

    def move(self):
        self.last = self.load, self.target
        if self.full and self.target >= self.high:
            self.add(self.lines['reps full'])
            self.target = self.low
            return
        if self.full:
            self.target += 1
        if 'made' in self.lines:
            self.add(self.lines['made'])

    def add(self, amount):
        unit, value = amount
        if unit == 'step':
            now = self.ladder.reach(self.load)  # a step up from what the sheet said
            self.load += (self.ladder.above(now) or now) - now
        else:
            self.load += value * UNIT[unit]


class Shown:
    """A state as one session sees it; equal for all groups that share it."""

    def __init__(self, state):
        self.state, self.full = state, state.full
        self.load, self.target = state.shown

    def __eq__(self, other):
        return self.state is other.state

    def move(self, deload):
        if not deload:
            self.state.move()
