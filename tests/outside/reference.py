"""Figures of general reference libraries for tests/libraries.rs: scipy, CoolProp, fluids.

Prints one figure a line as `name value`. Data comes in as JSON on the command line.
"""
import json
import sys

import CoolProp.CoolProp as coolprop
import fluids
import numpy
from scipy import stats

data = json.loads(sys.argv[1])
for n, (x, y) in enumerate(data["lines"]):
    slope, intercept, low, high = stats.theilslopes(y, x, 0.9)
    print(f"slope{n} {slope!r}")
    print(f"low{n} {low!r}")
    print(f"high{n} {high!r}")
    fit = stats.linregress(x, y)
    print(f"fit{n} {fit.slope!r}")
for n, (figures, percent) in enumerate(data["percentiles"]):
    print(f"percentile{n} {numpy.percentile(figures, percent, method='linear')!r}".replace("np.float64(", "").replace(")", ""))
for t in data["celsius"]:
    print(f"saturation{t} {coolprop.PropsSI('P', 'T', t + 273.15, 'Q', 1, 'Water')!r}")
for height in data["heights"]:
    air = fluids.ATMOSPHERE_1976(height)
    print(f"pressure{height} {air.P!r}")
    print(f"temperature{height} {air.T!r}")
