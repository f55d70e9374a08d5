"""The fewest moves by SciPy's milp (HiGHS): same rows, same places, a binary for each place of each adjuster."""
import json
import sys
import time

import numpy
from scipy.optimize import Bounds, LinearConstraint, milp

asked = json.load(sys.stdin)
a = numpy.array(asked["a"])
d = numpy.array(asked["d"])
places = asked["places"]
columns = [(j, place) for j, of in enumerate(places) for place in of]
rows = numpy.array([[a[i, j] * place["x"] for j, place in columns] for i in range(len(d))])
choose = numpy.array([[1.0 if j == k else 0.0 for j, _ in columns] for k in range(len(places))])
# one more adjuster moved weighs more than all effort together
cost = numpy.array([(0.0 if place["x"] == 0 else 1e4) + place["effort"] for _, place in columns])
start = time.perf_counter()
found = milp(
    cost,
    constraints=[LinearConstraint(rows, -1 - d, 1 - d), LinearConstraint(choose, 1, 1)],
    integrality=numpy.ones(len(columns)),
    bounds=Bounds(0, 1),
    # to the last flat: the usual gap of a ten-thousandth is several of them
    options={"time_limit": asked["seconds"], "mip_rel_gap": 0.0},
)
milliseconds = 1000 * (time.perf_counter() - start)
moved = None if found.x is None else int(sum(round(x) for x, (_, place) in zip(found.x, columns) if place["x"] != 0))
effort = None if found.x is None else float(sum(round(x) * place["effort"] for x, (_, place) in zip(found.x, columns)))
print(json.dumps({"milliseconds": milliseconds, "moved": moved, "effort": effort, "proved": bool(found.status == 0)}))
