"""Solves the six equations of every corner and case one by one, as often as a spread would, and compares members."""
import json
import sys
import time

import numpy

asked = json.load(sys.stdin)
systems = [
    (numpy.array(each["equations"]["columns"]), numpy.array(each["equations"]["load"]), numpy.array(each["tension"]))
    for each in asked["answers"]
]
start = time.perf_counter()
for _ in range(asked["rounds"]):
    found = [numpy.linalg.solve(columns, -load) for columns, load, _ in systems]
milliseconds = 1000 * (time.perf_counter() - start)
apart = max(numpy.abs(x - t).max() / numpy.abs(t).max() for x, (_, _, t) in zip(found, systems))
print(json.dumps({"milliseconds": milliseconds, "apart": float(apart), "solves": asked["rounds"] * len(systems)}))
