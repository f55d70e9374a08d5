"""Bodies of one axle for the car on four pads: linkage as set, springs, anti-roll bar, each by its own balance.

See floor_model.py for what is asked of them and why.

In:   a corner or an axle as in a car file, SI units and radians; links as set, shims
Out:  Table: places along the travel; rod_force: what a wheel's load puts into its rod; Springs, Bar: their forces
Axes: x forward, y left, z up, fixed to the tub
"""

import numpy as np
from numpy.polynomial import chebyshev
from scipy.interpolate import PchipInterpolator
from scipy.optimize import brentq, root
from scipy.spatial.transform import Rotation

from independent_linkage import Corner, angle_about, angle_that_keeps, length, turned, unit
from independent_model import G_N, round_bar_rate, transition_length, u_bar_rate

LINKS = ('rod', 'toe', 'camber', 'caster')
DOWN, UPWARD, NODES = -0.036, 0.03, 24  # m of travel tabulated


class Set(Corner):
    """A corner with its links as set: changes of length, shims at a joint or under a wishbone."""

    rows = {'upper': [0, 1], 'lower': [2, 3]}
    longer = 0.0
    slid = {w: np.zeros(3) for w in rows}

    def __init__(self, data, side, changes):
        super().__init__(data, side)
        adjusters = data.get('adjusters', {})
        rod, toe, camber, caster = (changes.get(k, 0.0) for k in LINKS)
        self.longer = rod
        self.legs = self.legs + np.array([0, 0, 0, 0, toe])
        self.slid = {w: np.zeros(3) for w in self.rows}
        where = adjusters.get('camberShims', {}).get('at', 'upper outer')
        which, end = where.split()
        if end == 'outer':  # between upright and joint: the joint goes inboard in the upright
            self.outer = self.outer.copy()
            self.outer[self.rows[which]] -= camber * self.spin0
        else:
            self.slid[which] = self.slid[which] + np.array([0, camber, 0])
        which = adjusters.get('casterShims', {}).get('moves', 'upper wishbone').split()[0]
        rearward = unit(self.p[which + 'Rear'] - self.p[which + 'Front'])
        self.slid[which] = self.slid[which] + caster * (rearward if which == 'upper' else -rearward)
        self.inner = self.inner.copy()
        for w, r in self.rows.items():
            self.inner[r] += self.slid[w]
        self.near = np.zeros(6)

    def joint(self, six, which):
        return self.carried(six, self.outer[self.rows[which][0]])

    def foot(self, six):
        p = self.p
        if self.kind == 'upright':
            return self.carried(six, p['rodOuter'])
        which = 'upper' if self.kind == 'upper wishbone' else 'lower'
        inner = p[which + 'Front']
        axis = unit(p[which + 'Rear'] - inner)
        turn = angle_about(axis, p[which + 'Outer'] - inner, self.joint(six, which) - self.slid[which] - inner)
        return turned(p['rodOuter'], inner, axis, turn) + self.slid[which]

    def at(self, travel):
        p = self.p
        six = self.upright(travel)
        foot = self.foot(six)
        through, axis = p['rockerPivot'], unit(p['rockerAxis'] - p['rockerPivot'])
        rod = length(p['rodOuter'] - p['rodInner']) + self.longer
        turn = angle_that_keeps(lambda a: length(turned(p['rodInner'], through, axis, a) - foot), rod)
        return {'six': six, 'foot': foot, 'turn': turn, 'rocker': self.rocker_sign * turn}


class Table:
    """Places of a corner along its travel, in tub axes."""

    def __init__(self, data, side, changes):
        corner = Set(data, side, changes)
        self.p = {k: v * [1, 1 if side == 'left' else -1, 1] for k, v in corner.p.items()}
        self.over = np.array([1.0, 1.0 if side == 'left' else -1.0, 1.0])
        self.slid = {w: v * self.over for w, v in corner.slid.items()}
        self.radius, self.kind = corner.radius, corner.kind
        # the sense about the rocker's axis, in tub axes, in which bump turns it
        self.sense = corner.rocker_sign * self.over[1]
        on_rocker = [k for k in ('rodInner', 'damperRocker', 'dropLinkRocker', 'heaveRocker') if k in corner.p]
        through, axis = corner.p['rockerPivot'], unit(corner.p['rockerAxis'] - corner.p['rockerPivot'])

        def places(z):
            at = corner.at(z)
            six = at['six']
            rows = {'upper': corner.joint(six, 'upper'), 'lower': corner.joint(six, 'lower'),
                    'toe': corner.carried(six, corner.p['toeOuter']),
                    'centre': corner.carried(six, corner.p['wheelCentre']), 'spin': corner.spin(six),
                    'foot': at['foot']}
            rows.update({k: turned(corner.p[k], through, axis, at['turn']) for k in on_rocker})
            return rows, at['rocker']

        nodes = (DOWN + UPWARD) / 2 + (UPWARD - DOWN) / 2 * np.cos(np.pi * (np.arange(NODES) + 0.5) / NODES)
        nodes = nodes[np.argsort(np.abs(nodes))]  # outward from the survey, so that each search starts near by
        found = {}
        for way in (nodes[nodes <= 0], nodes[nodes > 0]):
            corner.near = np.zeros(6)
            for z in way:
                found[z] = places(z)
        self.names = list(found[nodes[0]][0])
        values = np.array([np.append(np.concatenate([found[z][0][k] * self.over for k in self.names]), found[z][1])
                           for z in nodes])
        # through all of them; SciPy's interpolators take their nodes in a random order, and err by it now and then
        self.series = chebyshev.chebfit(self.over_one(nodes), values, NODES - 1)

    @staticmethod
    def over_one(z):
        return (z - (DOWN + UPWARD) / 2) / ((UPWARD - DOWN) / 2)

    def at(self, z):
        row = chebyshev.chebval(self.over_one(z), self.series)
        places = {k: row[3 * i:3 * i + 3] for i, k in enumerate(self.names)}
        places['rocker'] = row[-1]
        return places

    def unit_length(self, places):
        return length(places['damperRocker'] - self.p['damperTub'])

    def open_at(self, longest):
        """Travel at which the damper is drawn out."""
        return brentq(lambda z: self.unit_length(self.at(z)) - longest, DOWN, UPWARD, xtol=1e-15)


def rod_force(table, places, force, at, weight):
    """Tension of the rod of a wheel under a force at its contact and its own weight: eight equations."""
    p = table.p
    centre = places['centre']
    u_t = unit(p['toeInner'] - places['toe'])
    u_r = unit(places['rodInner'] - places['foot'])
    # unknown: force of the upper joint and of the lower on the upright, track rod, rod
    m, right = np.zeros((8, 8)), np.zeros(8)
    arm = lambda q: np.array([[0, -q[2], q[1]], [q[2], 0, -q[0]], [-q[1], q[0], 0]])
    for k, joint in ((0, 'upper'), (3, 'lower')):
        m[:3, k:k + 3] = np.eye(3)
        m[3:6, k:k + 3] = arm(places[joint] - centre)
    m[:3, 6], m[3:6, 6] = u_t, np.cross(places['toe'] - centre, u_t)
    if table.kind == 'upright':
        m[:3, 7], m[3:6, 7] = u_r, np.cross(places['foot'] - centre, u_r)
    right[:3] = -force - weight
    right[3:6] = -np.cross(at - centre, force)
    for row, k, which in ((6, 0, 'upper'), (7, 3, 'lower')):
        hinge = p[which + 'Front'] + table.slid[which]
        a = unit(p[which + 'Rear'] - p[which + 'Front'])
        m[row, k:k + 3] = -np.cross(a, places[which] - hinge)  # a.((J - A) x -F) = F.-(a x (J - A))
        if table.kind == which + ' wishbone':
            m[row, 7] = a @ np.cross(places['foot'] - hinge, u_r)
    return np.linalg.solve(m, right)[7], u_r


class Springs:
    """Laws of a corner's unit and torsion bar, their preload from the scale by the same free bodies."""

    def __init__(self, data, table, moduli):
        self.data = data
        self.gas = data.get('damper', {}).get('gasForce', 0.0)
        self.load = data['scale'] * G_N
        here = table.at(0.0)
        self.unit0 = table.unit_length(here) if 'damperRocker' in here else None
        up = np.array([0.0, 0.0, 1.0])
        contact = lowest(here['centre'], here['spin'], up, table.radius)
        tension, u_r = rod_force(table, here, self.load * up, contact, -data['unsprung'] * G_N * up)
        pivot = table.p['rockerPivot']
        a = unit(table.p['rockerAxis'] - pivot)
        wanted = a @ np.cross(here['rodInner'] - pivot, tension * u_r)  # of unit and bar about the axis
        unit_arm = a @ np.cross(here['damperRocker'] - pivot, unit(here['damperRocker'] - table.p['damperTub']))
        self.coil = self.bar = None
        if 'coil' in data and 'bar' in data:
            raise ValueError('a corner with bar and coil is not worked here')
        if 'coil' in data:
            c = data['coil']
            rate = c.get('rate') or (c.get('shearModulus') or moduli[c['material']]) * c['wireDiameter'] ** 4 / (
                8 * c['meanDiameter'] ** 3 * c['activeCoils'])
            self.coil = {'rate': rate, 'force': wanted / unit_arm - self.gas}
        if 'bar' in data:
            b = data['bar']
            d, bore = b['diameter'], b.get('bore', 0.0)
            run = b['parallelLength'] + sum(transition_length(b[e], d, bore) for e in ('rockerEnd', 'anchorEnd'))
            rate = b.get('rate') or moduli[b['material']] * np.pi * (d**4 - bore**4) / 32 / run
            torque = -table.sense * (wanted - self.gas * unit_arm)
            if 'twist' in b:
                # the twist was measured; what the centre of the wheel rises less than the contact goes to the bar too
                e = 1e-5
                near = [table.at(z) for z in (-e, e)]
                s_0, r_0, rise = ((f(near[1]) - f(near[0])) / (2 * e) for f in (
                    lambda q: q['rocker'], lambda q: -table.unit_length(q), lambda q: q['centre'][2]))
                simple = ((data['scale'] - data['unsprung']) * G_N - self.gas * r_0) / s_0
                torque += rate * b['twist'] - simple
            self.bar = {'rate': rate, 'torque': torque}
        r = data.get('bumpRubber')
        if r:
            self.rubber = PchipInterpolator([c['compression'] for c in r['curve']], [c['force'] for c in r['curve']])
            self.gap = r['gap'] - r.get('packers', 0.0)

    def coil_force(self, closed):
        k, helper = self.coil['rate'], self.data['coil'].get('helper')
        f = self.coil['force'] + k * closed
        if helper and f < helper['rate'] * helper['travel']:
            full, k_h = helper['rate'] * helper['travel'], helper['rate']
            f = full + (f - full) * k_h / (k + k_h)
        return max(f, 0.0)

    def unit_force(self, closed, platform, stiffer):
        force = self.gas
        if self.coil:
            survey = self.coil_force(0.0)
            force += survey + (1 + stiffer) * (self.coil_force(closed + platform) - survey)
        if hasattr(self, 'rubber') and closed > self.gap:
            force += float(self.rubber(closed - self.gap))
        return force

    def torque(self, turn, anchor, stiffer):
        """Of the bar on the rocker, against bump."""
        return self.bar['torque'] + (1 + stiffer) * self.bar['rate'] * (turn + anchor) if self.bar else 0.0


def lowest(centre, spin, up, radius):
    """Lowest point of a leaning circle over a floor whose normal is `up`."""
    return centre - radius * unit(up - (up @ spin) * spin)


class Bar:
    """An anti-roll bar by its two drop links, in tub axes; forces of the links on the rockers."""

    def __init__(self, arb, tables, moduli):
        p = {s: tables[s].p for s in tables}
        self.a, self.b = np.array(arb['axisLeft']), np.array(arb['axisRight'])
        self.axis = unit(self.b - self.a)
        self.ends = {s: p[s]['dropLinkArm'] for s in p}
        self.links = {s: length(p[s]['dropLinkArm'] - p[s]['dropLinkRocker']) for s in p}
        self.kind = arb['kind']
        if self.kind == 'U-bar':
            arms = {s: length(np.cross(self.axis, self.ends[s] - self.a)) for s in p}
            self.rate = u_bar_rate(arb, arms, moduli)
        else:
            self.rate = round_bar_rate(arb['bar'], moduli)
            self.foot = (self.a + self.b) / 2
            self.stem = unit(np.array(arb['stemTop']) - self.foot)
        self.from_ = np.zeros(2)

    def on_rockers(self, rockers, longer):
        """Force on each rocker's joint, and the torque of the bar."""
        links = {s: self.links[s] + longer[s] for s in self.links}
        if self.kind == 'U-bar':
            angles = {s: angle_that_keeps(
                lambda t, s=s: length(turned(self.ends[s], self.a, self.axis, t) - rockers[s]), links[s]) for s in links}
            torque = self.rate * (angles['left'] - angles['right'])
            ends = {s: turned(self.ends[s], self.a, self.axis, angles[s]) for s in links}
            u = {s: unit(rockers[s] - ends[s]) for s in links}
            lever = {s: self.axis @ np.cross(ends[s] - self.a, u[s]) for s in links}
            tension = {'left': torque / lever['left'], 'right': -torque / lever['right']}
        else:
            place = lambda s, two: turned(turned(self.ends[s], self.foot, self.stem, two[1]), self.foot, self.axis, two[0])
            miss = lambda two: [length(place(s, two) - rockers[s]) - links[s] for s in ('left', 'right')]
            two = root(miss, self.from_, options={'xtol': 1e-14}).x
            self.from_ = two
            torque = self.rate * two[1]
            ends = {s: place(s, two) for s in links}
            u = {s: unit(rockers[s] - ends[s]) for s in links}
            stem = Rotation.from_rotvec(two[0] * self.axis).apply(self.stem)
            # the arm nods freely and is held against twist: moments about both lines
            m = np.array([[line @ np.cross(ends[s] - self.foot, u[s]) for s in ('left', 'right')]
                          for line in (self.axis, stem)])
            tension = dict(zip(('left', 'right'), np.linalg.solve(m, [0.0, torque])))
        return {s: -tension[s] * u[s] for s in links}, torque
