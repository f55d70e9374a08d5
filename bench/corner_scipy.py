"""The corner by SciPy's optimize.root: pose of the upright and rocker angle, warm sweep. See corner.ts."""
import sys
import time

import numpy as np
from scipy.optimize import root

numbers = np.loadtxt(sys.argv[1])
(UF, UR, U0, LF, LR, L0, TI, T0, RO0, RI0, P, PA, W0, N0) = numbers[:42].reshape(14, 3)
radius = numbers[42]
sweep = numbers[44:]


def dist(a, b):
    d = a - b
    return np.sqrt(d @ d)


lengths = np.array([dist(U0, UF), dist(U0, UR), dist(L0, LF), dist(L0, LR), dist(T0, TI), dist(RO0, RI0)])
ground = W0[2] - radius * np.sqrt(1 - N0[2] ** 2)
axis = PA - P
lower_axis = (LF - LR) / dist(LF, LR)
foot = LR + lower_axis * ((L0 - LR) @ lower_axis)
r0 = L0 - foot
q0 = np.cross(lower_axis, r0)
r2 = r0 @ r0
ro_foot = LR + lower_axis * ((RO0 - LR) @ lower_axis)
ro_r = RO0 - ro_foot
ro_q = np.cross(lower_axis, ro_r)
ri = RI0 - P
ri_foot = P + axis * (ri @ axis)
ri_r = RI0 - ri_foot
ri_q = np.cross(axis, ri_r)
u, t, n = U0 - L0, T0 - L0, N0
w = W0 - L0


def rotation(v):
    """Rodrigues, without the cost of a rotation object."""
    angle = np.sqrt(v @ v)
    if angle < 1e-12:
        return np.eye(3)
    k = v / angle
    K = np.array([[0, -k[2], k[1]], [k[2], 0, -k[0]], [-k[1], k[0], 0]])
    return np.eye(3) + np.sin(angle) * K + (1 - np.cos(angle)) * (K @ K)


def constraints(x, travel):
    L = x[:3]
    R = rotation(x[3:6] - 1)
    U, T, W, N = L + R @ u, L + R @ t, L + R @ w, R @ n
    d = L - foot
    c, s = (d @ r0) / r2, (d @ q0) / r2
    RO = ro_foot + c * ro_r + s * ro_q
    RI = ri_foot + np.cos(x[6] - 1) * ri_r + np.sin(x[6] - 1) * ri_q
    return np.array([
        dist(U, UF) - lengths[0],
        dist(U, UR) - lengths[1],
        dist(L, LF) - lengths[2],
        dist(L, LR) - lengths[3],
        dist(T, TI) - lengths[4],
        dist(RO, RI) - lengths[5],
        W[2] - radius * np.sqrt(1 - N[2] ** 2) - ground - travel,
    ])


# angles count from one: hybr takes the step of its differences from the size of x, and 1e-17 would give it none
x = np.concatenate([L0, np.ones(4)])
for travel in np.linspace(0, sweep[0], 20):
    x = root(constraints, x, args=(travel,), tol=1e-10).x
start = time.perf_counter()
count = 0
total = 0.0
while count == 0 or time.perf_counter() - start < 1.5:
    total = 0.0
    for travel in sweep:
        found = root(constraints, x, args=(travel,), tol=1e-10)
        # starting next to the answer, hybr sometimes says "no progress" with nothing left to gain
        if np.max(np.abs(found.fun)) > 1e-10:
            sys.exit(f"no solution at {travel}, residual {np.max(np.abs(found.fun)):.1e}")
        x = found.x
        total += x[6] - 1
    count += len(sweep)
print(count / (time.perf_counter() - start), repr(float(total)))
