#!/usr/bin/python3
"""Writes tests/cases/trend/*.csv: invented series, and the running max that statsmodels' Kalman filter makes of them.

Run by hand, with Debian's python3-statsmodels, which is too heavy for `make check`; there tests/trend.py works the same
figures out another way. Each series is laid on a grid of days, those without an observation missing, and begins knowing
nothing (exact diffuse initialisation). The variances are those of the design, written here a second time.
"""
import math
import os
import numpy
import statsmodels
from statsmodels.tsa.statespace.kalman_filter import KalmanFilter

FOLDER = os.path.join(os.path.dirname(os.path.abspath(__file__)), os.pardir, "cases", "trend")
PROCESS = 0.005 ** 2
BORROWED = 0.04 ** 2

# day, source, kg, n, borrowed
SERIES = {
    "steady": [(1, "set", "141.2", "5", 0), (4, "set", "138.75", "8", 0), (8, "set", "140.9", "3.5", 0),
               (11, "set", "139.4", "6", 0), (15, "set", "142.05", "4", 0), (18, "set", "137.8", "10", 0),
               (22, "set", "140.1", "2", 0), (25, "set", "141.65", "7.5", 0), (29, "set", "140.3", "1", 0),
               (32, "set", "139.95", "5", 0), (36, "set", "140.6", "0.5", 0), (39, "set", "141.1", "12", 0)],
    "rising": [(739000, "tested", "82.5", "1", 0), (739003, "set", "83.1", "5", 0), (739007, "set", "84", "5", 0),
               (739010, "set", "83.6", "8", 0), (739014, "set", "85.25", "4", 0), (739021, "set", "86.4", "4", 0),
               (739024, "set", "86.9", "3", 0), (739028, "set", "88.7", "6", 0), (739035, "set", "89.333", "2.5", 0),
               (739042, "set", "91.2", "2", 0)],
    "tested-in-the-middle": [(100, "set", "180", "9", 0), (103, "set", "176.4", "6", 0), (107, "set", "184.2", "11", 0),
                             (110, "tested", "172.5", "1", 0), (112, "set", "181.3", "8", 0),
                             (117, "set", "179.9", "5", 0), (118, "set", "174.1", "3", 0),
                             (124, "tested", "175", "1", 0), (125, "set", "183", "10", 0)],
    "long-gaps": [(10, "tested", "120", "1", 0), (94, "set", "111.3", "5", 0), (95, "speed", "114.9", "1", 0),
                  (300, "set", "126.25", "6", 0), (301, "speed", "121.7", "1", 0), (667, "speed", "99.5", "1", 0),
                  (669, "set", "104.4", "3", 0), (1400, "set", "131", "4", 0)],
    "borrowed": [(500, "tested", "110", "1", 1), (502, "set", "104.2", "6", 0), (505, "set", "103.1", "8", 0),
                 (506, "speed", "101.4", "1", 0), (512, "set", "105.05", "4.25", 0), (519, "set", "105.7", "1.5", 0)],
    "small": [(1, "set", "6.3502931800", "20", 1), (2, "speed", "7.1", "1", 1), (3, "set", "6.9", "30", 0)],
}


def noise(source, n, borrowed):
    variance = 0.05 ** 2 if source == "speed" else 0.005 ** 2
    if source == "set":
        variance += 0.015 ** 2 * max(0, float(n) - 1)
    return variance + (BORROWED if borrowed else 0)


def filtered(series):
    first, last = series[0][0], series[-1][0]
    seen = numpy.full((last - first + 1, 1), numpy.nan)
    noises = numpy.ones((1, 1, last - first + 1))
    for day, source, kg, n, borrowed in series:
        seen[day - first] = math.log(float(kg))
        noises[0, 0, day - first] = noise(source, n, borrowed)
    kalman = KalmanFilter(k_endog=1, k_states=1, design=[[1.0]], transition=[[1.0]], selection=[[1.0]],
                          state_cov=[[PROCESS]])
    kalman.bind(seen)
    kalman.obs_cov = noises
    kalman.initialize_diffuse()
    result = kalman.filter()
    for row in series:
        at = row[0] - first
        yield row, math.exp(result.filtered_state[0, at]), result.filtered_state_cov[0, 0, at]


def main():
    for name, series in SERIES.items():
        with open(os.path.join(FOLDER, name + ".csv"), "w", encoding="utf-8") as file:
            file.write(f"# max_kg and variance_e6 (millionths) by statsmodels {statsmodels.__version__}, "
                       "KalmanFilter; made by tests/oracle/trend_series.py\n")
            file.write("day,source,kg,n,borrowed,max_kg,variance_e6\n")
            for (day, source, kg, n, borrowed), level, variance in filtered(series):
                file.write(f"{day},{source},{kg},{n},{borrowed},{level:.10f},{variance * 1e6:.10f}\n")


if __name__ == "__main__":
    main()
