"""The survey of survey-input.json adjusted by SciPy's least_squares, as a general-purpose reference.

Writes survey-scipy.json: points, standard uncertainties, weighted sum of squares, degrees of freedom.
Run:  python3 survey_scipy.py   (NumPy and SciPy; the versions used are recorded in the result)
"""
import json
import pathlib

import numpy as np
import scipy
from scipy.optimize import least_squares
from scipy.spatial.transform import Rotation

here = pathlib.Path(__file__).parent
data = json.loads((here / "survey-input.json").read_text())
names = list(data["start"])
where = {name: 3 * k for k, name in enumerate(names)}
sets = sorted({r["set"] for r in data["readings"] if r["kind"] == "point" and r["set"] != "car"})
frame = {name: 3 * len(names) + 6 * k for k, name in enumerate(sets)}
AXIS = {"x": 0, "y": 1, "z": 2}


def residuals(x):
    def p(name):
        return x[where[name]:where[name] + 3]

    out = []
    for r in data["readings"]:
        kind = r["kind"]
        if kind == "point":
            j = frame[r["set"]]
            turn = Rotation.from_rotvec(x[j + 3:j + 6])
            seen = turn.inv().apply(p(r["point"]) - x[j:j + 3])
            out.extend((seen - np.array(r["xyz"])) / r["u"])
            continue
        if kind in ("height", "offset"):
            value = p(r["point"])[AXIS[r.get("axis", "z")]]
        else:
            v = p(r["to"]) - p(r["from"])
            value = {"distance": np.linalg.norm(v), "plumb": np.hypot(v[0], v[1]), "rise": v[2]}[kind]
        out.append((value - r["value"]) / r["u"])
    for d in data["datum"]:
        k = AXIS[d["axis"]]
        left, right = d["pair"]
        out.append(((p(left)[k] + p(right)[k]) / 2 - d["mean"]) / d["u"])
    return np.array(out)


x0 = np.zeros(3 * len(names) + 6 * len(sets))
for name, j in where.items():
    x0[j:j + 3] = data["start"][name]
for name, j in frame.items():
    mine = [r for r in data["readings"] if r["kind"] == "point" and r["set"] == name]
    a = np.array([r["xyz"] for r in mine])
    b = np.array([data["start"][r["point"]] for r in mine])
    turn, _ = Rotation.align_vectors(b - b.mean(0), a - a.mean(0))
    x0[j + 3:j + 6] = turn.as_rotvec()
    x0[j:j + 3] = b.mean(0) - turn.apply(a.mean(0))

fit = least_squares(residuals, x0, jac="3-point", method="trf", x_scale="jac", xtol=1e-15, ftol=1e-15, gtol=1e-15)
covariance = np.linalg.inv(fit.jac.T @ fit.jac)
u = np.sqrt(np.diag(covariance))
result = {
    "scipy": scipy.__version__,
    "numpy": np.__version__,
    "chiSquare": float(2 * fit.cost),
    "freedom": len(fit.fun) - len(fit.x),
    "points": {n: {"at": fit.x[j:j + 3].tolist(), "u": u[j:j + 3].tolist()} for n, j in where.items()},
    "covarianceFirstTwo": covariance[:6, :6].tolist(),
}
(here / "survey-scipy.json").write_text(json.dumps(result, indent=1))
print(result["chiSquare"], result["freedom"])
