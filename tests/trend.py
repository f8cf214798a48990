#!/usr/bin/python3
"""The running max in tests/cases/trend/, worked out once more without a filter, at 50 digits.

The files come from statsmodels' Kalman filter (tests/oracle/trend_series.py); tests/unit/trend_test.c holds the program
to them. Here the same figures follow from generalised least squares, which has no steps in time: with x the level after
the last observation, y_i = x + error_i, and errors i and j vary together as the drift from the later of the two to the
end, plus i's own noise. Then variance = 1 / (1' V^-1 1) and level = variance x (1' V^-1 y).
"""
import csv
import glob
import os
import sys
from decimal import Decimal as D, getcontext

getcontext().prec = 50
TOP = os.environ.get("SETWRIGHT_SRC", os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
CLOSE = D("1e-9")

# Variances of the design, language.md 5.9: standard deviations as parts of the max.
TESTED, REPETITION, SPEED, BORROWED, DAY = (D(text) ** 2 for text in ("0.005", "0.015", "0.05", "0.04", "0.005"))


def noise(row):
    variance = SPEED if row["source"] == "speed" else TESTED
    if row["source"] == "set":
        variance += REPETITION * max(D(0), D(row["n"]) - 1)
    return variance + BORROWED * int(row["borrowed"])


def solved(matrix, right):
    """matrix^-1 right, by Gauss; the matrix is positive definite, so that no rows are swapped."""
    rows = [list(row) + [value] for row, value in zip(matrix, right)]
    size = len(rows)
    for pivot in range(size):
        for below in range(pivot + 1, size):
            part = rows[below][pivot] / rows[pivot][pivot]
            rows[below] = [a - part * b for a, b in zip(rows[below], rows[pivot])]
    result = [D(0)] * size
    for at in reversed(range(size)):
        rest = sum((rows[at][k] * result[k] for k in range(at + 1, size)), D(0))
        result[at] = (rows[at][size] - rest) / rows[at][at]
    return result


def level_and_variance(rows):
    days = [int(row["day"]) for row in rows]
    together = [[DAY * (days[-1] - max(a, b)) + (noise(row) if i == j else 0) for j, b in enumerate(days)]
                for i, (a, row) in enumerate(zip(days, rows))]
    weights = solved(together, [D(1)] * len(rows))
    variance = 1 / sum(weights)
    return variance * sum(weight * D(row["kg"]).ln() for weight, row in zip(weights, rows)), variance


def is_close(printed, exact):
    return abs(D(printed) / exact - 1) < CLOSE


def agrees(path):
    with open(path, encoding="utf-8") as file:
        maker, *lines = file.read().splitlines()
    rows = list(csv.DictReader(lines))
    good = maker.startswith("# ") and len(rows) > 2
    for count in range(1, len(rows) + 1):
        level, variance = level_and_variance(rows[:count])
        last = rows[count - 1]
        if not (is_close(last["max_kg"], level.exp()) and is_close(last["variance_e6"], variance * 10 ** 6)):
            print(f"{path}: on day {last['day']} least squares give {level.exp():.10f} kg, {variance * 10 ** 6:.10f}")
            good = False
    return good


def main():
    paths = sorted(glob.glob(os.path.join(TOP, "tests", "cases", "trend", "*.csv")))
    results = [(os.path.basename(path)[:-4], agrees(path)) for path in paths]
    for name, good in results + [("there are at least four series", len(paths) >= 4)]:
        print(f"{'ok' if good else 'not ok'} {name}")
    return 0 if len(paths) >= 4 and all(good for _, good in results) else 1


if __name__ == "__main__":
    sys.exit(main())
