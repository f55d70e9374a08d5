"""Numerics and kinematics of the independent model: roots, differences, one corner's linkage.

The upright is a free rigid body of six freedoms; see independent_model.py for what is asked of it and why.

In:   a corner as in a car file, SI units and radians
Out:  Corner: position at a travel, figures of upright, links and rocker
Axes: x forward, y left, z up; a right corner is worked turned over (its y changed of sign)
"""

import numpy as np
from scipy.optimize import brentq, root
from scipy.spatial.transform import Rotation

UP = np.array([0.0, 0.0, 1.0])

# Central differences of eighth order; the weights are those of B. Fornberg, Math. Comp. 51 (1988), from memory.
FIRST = np.array([1 / 280, -4 / 105, 1 / 5, -4 / 5, 0, 4 / 5, -1 / 5, 4 / 105, -1 / 280])
SECOND = np.array([-1 / 560, 8 / 315, -1 / 5, 8 / 5, -205 / 72, 8 / 5, -1 / 5, 8 / 315, -1 / 560])
STEP = 0.5e-3  # m of travel between neighbours of the stencil


def first(f, at, step=STEP):
    return sum(c * np.asarray(f(at + i * step)) for i, c in zip(range(-4, 5), FIRST) if c) / step


def second(f, at, step=STEP):
    return sum(c * np.asarray(f(at + i * step)) for i, c in zip(range(-4, 5), SECOND)) / step**2


def polished(miss, x):
    """The last digits of a root: Newton with a differenced matrix."""
    e = 1e-5
    for _ in range(6):
        was = miss(x)
        if np.abs(was).max() < 3e-16:
            break
        matrix = np.column_stack([(miss(x + e * d) - miss(x - e * d)) / (2 * e) for d in np.eye(len(x))])
        x = x - np.linalg.solve(matrix, was)
    return x


def clear_step(z, sides):
    """Largest step, STEP or a half, quarter … of it, over whose stencil none of `sides` changes its sign."""
    step = STEP
    while step > STEP / 40:
        ends = [np.sign(sides(z + i * step)) for i in (-4, 4)]
        if np.array_equal(*ends):
            return step
        step /= 2
    raise ValueError(f'a kink lies at travel {z}')


def length(v):
    return float(np.linalg.norm(v))


def unit(v):
    return v / length(v)


def crossing(f):
    """Travel at which the growing f is nought, or None within 60 mm of the surveyed position."""
    way = 1 if f(0.0) < 0 else -1
    for far in np.arange(0.004, 0.0601, 0.004):
        try:
            if f(0.0) * f(way * far) <= 0:
                return brentq(f, 0.0, way * far, xtol=1e-14, rtol=1e-14)
        except ValueError:
            return None
    return None


def perpendicular(v, axis):
    return v - (v @ axis) * axis


def angle_about(axis, before, after):
    """Angle by which `before` is turned about the unit vector `axis` to lie over `after`."""
    a, b = perpendicular(before, axis), perpendicular(after, axis)
    return float(np.arctan2(axis @ np.cross(a, b), a @ b))


def turned(point, through, axis, angle):
    return through + Rotation.from_rotvec(angle * axis).apply(point - through)


def angle_that_keeps(distance, wanted, reach=1.2):
    """Root, nearest to nothing turned, of distance(angle) = wanted."""
    miss = lambda a: distance(a) - wanted
    if miss(0.0) == 0.0:
        return 0.0
    for span in np.linspace(0.02, reach, 60):
        lo, hi = (0.0, span) if miss(0.0) * miss(span) <= 0 else (-span, 0.0)
        if miss(lo) * miss(hi) <= 0:
            return brentq(miss, lo, hi, xtol=1e-15, rtol=4 * np.finfo(float).eps, maxiter=200)
    raise ValueError('the linkage does not close')


class Corner:
    """Kinematics of one corner, the rack held."""

    def __init__(self, data, side, rack=(0.0, 0.0, 0.0)):
        flip = np.array([1.0, 1.0 if side == 'left' else -1.0, 1.0])
        self.p = {name: np.array(at) * flip for name, at in data['points'].items()}
        self.kind = data['rod']['on']
        self.rack = np.array(rack) * flip
        wheel = data['wheel']
        self.radius = wheel['loadedRadius']
        g, t = wheel['camber'], wheel['toe']
        # Outward axle of a left wheel: level along y, then tilted by the camber and turned by the toe.
        level = np.array([0.0, np.cos(g), -np.sin(g)])
        self.spin0 = Rotation.from_rotvec([0, 0, -t]).apply(level)
        pairs = [('upperFront', 'upperOuter'), ('upperRear', 'upperOuter'), ('lowerFront', 'lowerOuter'),
                 ('lowerRear', 'lowerOuter'), ('toeInner', 'toeOuter')]
        inner, self.outer = (np.array([self.p[pair[i]] for pair in pairs]) for i in (0, 1))
        self.legs = np.linalg.norm(self.outer - inner, axis=1)
        self.inner = inner + np.array([np.zeros(3)] * 4 + [self.rack])
        self.near = np.zeros(6)  # where the search starts: the last position found
        self.cache = {}
        self.contact0 = self.lowest(np.zeros(6))[2]
        # Turn positive in bump: found by asking, once.
        self.rocker_sign = 1.0
        self.rocker_sign = 1.0 if self.at(0.002)['rocker'] > self.at(-0.002)['rocker'] else -1.0
        self.cache = {}

    def carried(self, six, point):
        """A point of the upright (or several, one a row), given where it was when surveyed."""
        centre = self.p['wheelCentre']
        return centre + six[:3] + Rotation.from_rotvec(six[3:]).apply(point - centre)

    def spin(self, six):
        return Rotation.from_rotvec(six[3:]).apply(self.spin0)

    def lowest(self, six):
        n = self.spin(six)
        return self.carried(six, self.p['wheelCentre']) - self.radius * unit(UP - (UP @ n) * n)

    def upright(self, travel):
        def miss(six):
            legs = np.linalg.norm(self.carried(six, self.outer) - self.inner, axis=1) - self.legs
            return np.append(legs, self.lowest(six)[2] - self.contact0 - travel)

        six = polished(miss, root(miss, self.near, method='hybr', options={'xtol': 1e-12}).x)
        self.near = six
        if np.abs(miss(six)).max() > 1e-12:
            raise ValueError(f'no position at travel {travel}')
        return six

    def foot(self, six):
        """Outer end of the rod."""
        p = self.p
        if self.kind == 'upright':
            return self.carried(six, p['rodOuter'])
        which = 'upper' if self.kind == 'upper wishbone' else 'lower'
        inner, outer = p[which + 'Front'], p[which + 'Outer']
        axis = unit(p[which + 'Rear'] - inner)
        turn = angle_about(axis, outer - inner, self.carried(six, outer) - inner)
        return turned(p['rodOuter'], inner, axis, turn)

    def at(self, travel):
        if travel in self.cache:
            return self.cache[travel]
        p = self.p
        six = self.upright(travel)
        foot = self.foot(six)
        through, axis = p['rockerPivot'], unit(p['rockerAxis'] - p['rockerPivot'])
        rod = length(p['rodOuter'] - p['rodInner'])
        turn = angle_that_keeps(lambda a: length(turned(p['rodInner'], through, axis, a) - foot), rod)
        state = {'six': six, 'rocker': self.rocker_sign * turn}
        on_rocker = lambda name: turned(p[name], through, axis, turn)
        state['onRocker'] = on_rocker
        if 'damperRocker' in p:
            state['unit'] = length(on_rocker('damperRocker') - p['damperTub'])
        self.cache[travel] = state
        return state

    def arm_angle(self, travel, axis_from, axis_to):
        """Turn of an anti-roll bar's arm about its axis, worked by the drop link."""
        p = self.p
        axis = unit(axis_to - axis_from)
        end = self.at(travel)['onRocker']('dropLinkRocker')
        link = length(p['dropLinkRocker'] - p['dropLinkArm'])
        return angle_that_keeps(lambda a: length(turned(p['dropLinkArm'], axis_from, axis, a) - end), link)

    def figures(self, z):
        p = self.p
        here = self.at(z)
        six = here['six']
        n = self.spin(six)
        contact = self.lowest(six)
        upper, lower = self.carried(six, p['upperOuter']), self.carried(six, p['lowerOuter'])
        axis = upper - lower
        ground = lower + axis * (contact[2] - lower[2]) / axis[2]
        ahead = unit(np.cross(n, UP))  # of a left wheel: n to the left, ahead forward, both level
        outward = np.cross(UP, ahead)
        camber = lambda t: -np.arcsin(self.spin(self.at(t)['six'])[2])

        def toe(t):
            m = self.spin(self.at(t)['six'])
            return np.arctan2(m[0], m[1])

        # The contact point taken as a point of the upright, hub locked: where it is carried from here.
        rotation = Rotation.from_rotvec(six[3:])
        seat = p['wheelCentre'] + rotation.inv().apply(contact - self.carried(six, p['wheelCentre']))
        locked = first(lambda t: self.carried(self.at(t)['six'], seat), z)
        rolling = first(lambda t: self.lowest(self.at(t)['six']), z)
        turning = first(lambda t: (Rotation.from_rotvec(self.at(t)['six'][3:]) * rotation.inv()).as_rotvec(), z)
        centre = first(lambda t: self.carried(self.at(t)['six'], p['wheelCentre']), z)
        out = {
            'camber': camber(z), 'toe': toe(z),
            'camberPerTravel': first(camber, z), 'toePerTravel': first(toe, z),
            'caster': np.arctan2(-axis[0], axis[2]), 'kingpin': np.arctan2(-axis[1], axis[2]),
            'scrubRadius': (contact - ground) @ outward, 'mechanicalTrail': (ground - contact) @ ahead,
            'halfTrack': contact[1],
            'rocker': here['rocker'],
            'rockerPerTravel': first(lambda t: self.at(t)['rocker'], z),
            'rockerChange': second(lambda t: self.at(t)['rocker'], z),
            'lateralPerTravel': rolling[1], 'lateralPerTravelLocked': locked[1],
            'rearwardLocked': -locked[0], 'rearwardCentre': -centre[0],
            # Front view: the point of the upright, beside the contact point, that stands still.
            'instantCentreAcross': contact[1] - 1 / turning[0],
            'instantCentreHeight': locked[1] / turning[0],
        }
        if 'unit' in here:
            out['unitLength'] = here['unit']
            out['springPerWheel'] = -first(lambda t: self.at(t)['unit'], z)
            out['springPerWheelChange'] = -second(lambda t: self.at(t)['unit'], z)
        return out
