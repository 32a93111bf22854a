#!/usr/bin/env python3
"""Two winters in the cold attic of the open data d06 and d07, worked out by numpy and pandas alone: writes two_winters.csv.

python3 two_winters.py FOLDER > two_winters.csv, with the folder of d06_fi_attic_air.csv and d07_fi_attic_outdoor.csv
(anssilaukkarinen/trh-1, CC BY 4.0). The first winter is 1 December 2010 to 15 March 2011, the second the same a year and
365 days on. Between two readings the air is on a straight line. Block lengths by Politis and White 2004 with the constant
of 2009; the standard error of the stationary bootstrap is its exact one, Politis and Romano 1994, lemma 1.
"""
import sys

import numpy as np
import pandas as pd

folder = sys.argv[1]
read = lambda name: pd.read_csv(f"{folder}/{name}", index_col=0, parse_dates=True)
attic, outside = read("d06_fi_attic_air.csv"), read("d07_fi_attic_outdoor.csv")
first = pd.date_range("2010-12-01", "2011-03-15", freq="h")
room = {"a": attic.loc[first], "b": attic.loc[first + pd.Timedelta(days=365)]}
out = {"a": outside.loc[first, "Te"].to_numpy(), "b": outside.loc[first + pd.Timedelta(days=365), "Te"].to_numpy()}


def hourly(x):
    """The mean of each hour's straight line."""
    return (x[:-1] + x[1:]) / 2


def above(x, limit):
    """Hours and degree-hours of each hour's line above a limit."""
    a, b = x[:-1] - limit, x[1:] - limit
    share = np.where((a > 0) & (b > 0), 1.0, 0.0)
    crossing = (a > 0) != (b > 0)
    high, low = np.maximum(a, b), np.minimum(a, b)
    span = np.where(high > low, high - low, 1)
    share = np.where(crossing, high / span, share)
    area = np.where(crossing, share * high / 2, share * (a + b) / 2)
    return share, area


def block_length(x):
    """Of the stationary bootstrap."""
    n, x = len(x), x - x.mean()
    in_row = max(5, int(np.ceil(np.sqrt(np.log10(n)))))
    most = int(np.ceil(np.sqrt(n))) + in_row
    cov = np.array([x[: n - k] @ x[k:] / n for k in range(most + 1)])
    small = np.abs(cov[1:] / cov[0]) < 2 * np.sqrt(np.log10(n) / n)
    runs = [k for k in range(1, most - in_row + 2) if small[k - 1 : k - 1 + in_row].all()]
    window = min(2 * runs[0] if runs else most, most)
    lag = np.arange(1, window + 1)
    taper = np.clip(2 * (1 - lag / window), 0, 1) * cov[1 : window + 1]
    slope, level = 2 * (taper * lag).sum(), cov[0] + 2 * taper.sum()
    best = (2 * slope**2 / (2 * level**2)) ** (1 / 3) * n ** (1 / 3)
    return min(max(1, best), np.ceil(min(3 * np.sqrt(n), n / 3)))


def standard_error(x, length):
    """Of the mean of x, by blocks of this mean length."""
    n, x, p = len(x), x - x.mean(), 1 / length
    cov = np.array([x[: n - k] @ x[k:] / n for k in range(n)])
    k = np.arange(1, n)
    weight = (1 - k / n) * (1 - p) ** k + k / n * (1 - p) ** (n - k)
    return np.sqrt((cov[0] + 2 * (weight * cov[1:]).sum()) / n)


rows = []
means = {q: hourly(room["a"][q].to_numpy()) - hourly(room["b"][q].to_numpy()) for q in ("T", "RH")}
length = max(block_length(d) for d in means.values())
for quantity, name in (("T", "air_temperature"), ("RH", "relative_humidity")):
    a, b = (hourly(room[w][quantity].to_numpy()) for w in "ab")
    rows.append((name, "mean", "", a.mean(), b.mean(), standard_error(means[quantity], length)))
for limit, of in ((6, "good"), (8, "watch")):
    a, b = (above(room[w]["T"].to_numpy(), limit) for w in "ab")
    for k, measure in enumerate(("hours_above", "degree_hours_above")):
        rows.append(("air_temperature", measure, of, a[k].sum(), b[k].sum(), len(a[k]) * standard_error(a[k] - b[k], length)))
x, y = {w: hourly(out[w]) for w in "ab"}, {w: hourly(room[w]["T"].to_numpy()) for w in "ab"}
table = pd.DataFrame({"bin": np.floor(np.concatenate([x["a"], x["b"]]) / 2), "y": np.concatenate([y["a"], y["b"]]), "w": ["a"] * len(x["a"]) + ["b"] * len(x["b"])})
bins = table.pivot_table(index="bin", columns="w", values="y", aggfunc=["mean", "count"]).dropna()
weight = 1 / (1 / bins["count"]["a"] + 1 / bins["count"]["b"])
level = [(bins["mean"][w] * weight).sum() / weight.sum() for w in "ab"]
rows.append(("air_temperature", "mean_at_equal_outdoor", "", *level, ""))
both = np.concatenate([x["a"], x["b"]])
second = np.repeat([0.0, 1.0], len(x["a"]))
base, slope, gap = np.linalg.lstsq(np.stack([np.ones_like(both), both, second], axis=1), table["y"].to_numpy(), rcond=None)[0]
at = base + slope * both.mean()
rows.append(("air_temperature", "mean_by_regression", "", at, at + gap, ""))
print("quantity,measure,of,a,b,standard_error,block_hours")
for row in rows:
    print(*row, length if row[-1] != "" else "", sep=",")
