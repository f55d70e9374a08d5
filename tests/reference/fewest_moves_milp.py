"""The fewest moves by SciPy's milp (HiGHS): same rows, same places, a binary for each place of each adjuster."""
import json
import sys
import time

import numpy
from scipy.optimize import Bounds, LinearConstraint, milp


def fewest(a, d, places, seconds):
    columns = [(j, place) for j, of in enumerate(places) for place in of]
    rows = numpy.array([[row[j] * place["x"] for j, place in columns] for row in a])
    choose = numpy.array([[1.0 if j == k else 0.0 for j, _ in columns] for k in range(len(places))])
    # one more adjuster moved weighs more than all effort together
    cost = numpy.array([(0.0 if place["x"] == 0 else 1e4) + place["effort"] for _, place in columns])
    d = numpy.array(d)
    start = time.perf_counter()
    found = milp(
        cost,
        constraints=[LinearConstraint(rows, -1 - d, 1 - d), LinearConstraint(choose, 1, 1)],
        integrality=numpy.ones(len(columns)),
        bounds=Bounds(0, 1),
        options={"time_limit": seconds, "mip_rel_gap": 0.0},
    )
    milliseconds = 1000 * (time.perf_counter() - start)
    answer = {"milliseconds": milliseconds, "proved": bool(found.status in (0, 2)), "none": found.x is None}
    if found.x is not None:
        taken = [(round(x), place) for x, (_, place) in zip(found.x, columns)]
        answer["moved"] = sum(x for x, place in taken if place["x"] != 0)
        answer["effort"] = sum(x * place["effort"] for x, place in taken)
    return answer


asked = json.load(sys.stdin)
print(json.dumps([fewest(seconds=asked["seconds"], **problem) for problem in asked["problems"]]))
