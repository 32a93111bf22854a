#!/usr/bin/env python3
"""Two barns' differences drawn anew by numpy: the yardstick for BenchmarkPair.

Hourly sums of eight series of 216,000 minutes, then 2,000 draws of the hours in blocks of geometric length (Politis and
Romano 1994) for forty quantities with their weights, and the standard error of each.
"""
import numpy as np

HOURS, QUANTITIES, ROUNDS, BLOCK = 3600, 40, 2000, 2
rng = np.random.default_rng(1)
series = rng.normal(size=(8, HOURS * 60))
hourly = series.reshape(8, HOURS, 60).sum(axis=2)
sums = np.stack([(hourly[k % 8] - hourly[(k + 1) % 8]) * (1 + k // 8) for k in range(QUANTITIES)], axis=1)
weights = np.ones((HOURS, QUANTITIES))
ratios = np.empty((ROUNDS, QUANTITIES))
for r in range(ROUNDS):
    begins = rng.random(HOURS) < 1 / BLOCK
    begins[0] = True
    first = np.flatnonzero(begins)
    block = np.cumsum(begins) - 1
    index = (rng.integers(HOURS, size=len(first))[block] + np.arange(HOURS) - first[block]) % HOURS
    ratios[r] = sums[index].sum(axis=0) / weights[index].sum(axis=0)
print(ratios.std(axis=0, ddof=1)[:3])
