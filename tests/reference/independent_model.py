#!/usr/bin/env python3
"""A second working of the demo cars, by another road, for tests/cars/independent.test.ts.

It shares nothing with the program but the measured numbers that it is handed, and works as follows.

* Position: the upright is a free rigid body of six freedoms (three of place, a rotation vector of three). Four legs
  and the toe link keep their lengths; the sixth equation is the height of the contact point. scipy.optimize.root
  solves the six at once. The rod's foot on a wishbone follows from the turn of that wishbone about its inner axis;
  the rocker's turn, and the turn of an anti-roll bar's arm, are the root of one kept length.
* Every derivative, first or second, is a finite difference of eighth order over whole solutions: no Jacobian of the
  linkage and no closed form is used anywhere.
* Springing: only the energy stored in coil, helper, gas, rubber, torsion bar, anti-roll bar and heave spring is
  written down. The load at the wheel is its first derivative by travel and the wheel rate its second, so that the
  part from the changing ratio is in it without being written.
* A bar of varying diameter is integrated along its length by scipy.integrate.quad.

In:   JSON on standard input, SI units and radians:
      {"cars": {name: {"front": axle, "rear": axle, "brakes": ..., "body": ...}},
       "shearModulus": {material: Pa}, "travels": [m], "rolled": [[m left, m right]],
       "racks": [m]}
      An axle has "left", "right" and, where fitted, "antiRollBar" and "heave", named as in a car file.
Out:  JSON on standard output: {name: {"front-left": {"travel/rack": {figure: number}}, ...,
      "front": {"left/right/rack": {figure: number}}, ..., "front-left-events": {event: m}, ...}}
Axes: x forward, y left, z up. A right wheel is worked turned over (its y changed of sign), the rack with it.
Not:  stops (droop stop, damper closed, coil solid), spread, damping.
"""

import json
import os
import sys

os.environ.setdefault('OPENBLAS_NUM_THREADS', '1')  # small matrices: threads only cost

import numpy as np
from scipy.integrate import quad
from scipy.interpolate import PchipInterpolator
from scipy.optimize import root

from independent_linkage import (
    STEP, Corner, clear_step, crossing, first, length, perpendicular, polished, second, turned, unit)

G_N = 9.80665  # standard gravity, m/s^2 (ISO 80000-3)


def transition_length(end, d, bore):
    """Length of plain bar that gives as much as a run-out to the head: the integral of J over J along it."""
    head, size = end['headDiameter'], end['size']
    polar = lambda D: D**4 - bore**4
    if end['form'] == 'taper':
        span, diameter = size, lambda x: d + (head - d) * x / size
    else:  # a circular fillet, tangent to the bar
        rise = (head - d) / 2
        span = np.sqrt(size**2 - (size - rise) ** 2) if rise < size else size
        diameter = lambda x: d + 2 * (size - np.sqrt(size**2 - x**2))
    return quad(lambda x: polar(d) / polar(diameter(x)), 0, span, epsabs=1e-15, epsrel=1e-13)[0]


class Springing:
    """Energy stored by the springing of one corner along its travel."""

    def __init__(self, data, corner, straight, moduli):
        """`straight` is the same corner with the rack in the middle: there the scale was read."""
        self.data, self.corner = data, corner
        self.carried = (data['scale'] - data['unsprung']) * G_N
        surveyed = straight.figures(0.0)
        damper = data.get('damper', {})
        self.gas = damper.get('gasForce', 0.0)
        self.bar = self.coil = None
        if 'bar' in data and 'coil' in data:
            raise ValueError('a corner with bar and coil is not worked here: the scale alone does not part the two')
        if 'bar' in data:
            b = data['bar']
            d, bore = b['diameter'], b.get('bore', 0.0)
            j = np.pi * (d**4 - bore**4) / 32
            run = b['parallelLength'] + sum(transition_length(b[e], d, bore) for e in ('rockerEnd', 'anchorEnd'))
            rate = b['rate'] if 'rate' in b else moduli[b['material']] * j / run
            gas_part = self.gas * surveyed.get('springPerWheel', 0.0)
            twist = b['twist'] if 'twist' in b else (self.carried - gas_part) / surveyed['rockerPerTravel'] / rate
            self.bar = {'rate': rate, 'twist': twist, 'skin': d / 2 / j}
        if 'coil' in data:
            c = data['coil']
            rate = c.get('rate')
            if rate is None:
                g = c.get('shearModulus', moduli.get(c.get('material')))
                rate = g * c['wireDiameter'] ** 4 / (8 * c['meanDiameter'] ** 3 * c['activeCoils'])
            force = self.carried / surveyed['springPerWheel'] - self.gas
            self.coil = {'rate': rate, 'force': force}
        self.unit0 = surveyed.get('unitLength')

    def closed(self, z):
        return self.unit0 - self.corner.at(z)['unit']

    def coil_force(self, closed):
        f = self.coil['force'] + self.coil['rate'] * closed
        helper = self.data['coil'].get('helper')
        if not helper:
            return max(f, 0.0)
        full = helper['rate'] * helper['travel']  # above it the helper is closed
        k = self.coil['rate']
        if f >= full:
            return f
        series = k * helper['rate'] / (k + helper['rate'])
        return max(full + (f - full) * series / k, 0.0)

    def rubber_force(self, closed):
        r = self.data.get('bumpRubber')
        if not r:
            return 0.0
        into = closed - (r['gap'] - r.get('packers', 0.0))
        if into <= 0.0:
            return 0.0
        # Monotone cubic through the readings (F. N. Fritsch and R. E. Carlson, SIAM J. Numer. Anal. 17 (1980)), SciPy's.
        curve = PchipInterpolator([c['compression'] for c in r['curve']], [c['force'] for c in r['curve']])
        return float(curve(into))

    def unit_energy(self, closed):
        """Work done on the damper unit from the surveyed length. Between kinks its force is a cubic at most, which
        the rule of Simpson integrates exactly."""
        total = lambda x: (self.coil_force(x) if self.coil else 0.0) + self.gas + self.rubber_force(x)
        ends = [0.0, *sorted((k for k in self.kinks() if 0 < k / closed < 1), key=abs), closed] if closed else [0.0]
        return sum((b - a) * (total(a) + 4 * total((a + b) / 2) + total(b)) / 6 for a, b in zip(ends, ends[1:]))

    def kinks(self):
        """Compressions of the unit, from the surveyed length, at which its rate or the slope of its rate jumps."""
        at = []
        r = self.data.get('bumpRubber')
        if r:
            at += [c['compression'] + r['gap'] - r.get('packers', 0.0) for c in r['curve']]
        if self.coil:
            h = self.data['coil'].get('helper')
            at.append(-self.coil['force'] / self.coil['rate'] - (h['travel'] if h else 0.0))
            if h:
                at.append((h['rate'] * h['travel'] - self.coil['force']) / self.coil['rate'])
        return at

    def step(self, z):
        """A step whose stencil about z has no kink inside."""
        return clear_step(z, lambda t: [self.closed(t) - k for k in self.kinks()]) if self.unit0 else STEP

    def energy(self, z):
        u = self.unit_energy(self.closed(z)) if self.unit0 else 0.0
        if self.bar:
            u += self.bar['rate'] * (self.bar['twist'] + self.corner.at(z)['rocker']) ** 2 / 2
        return u

    def events(self):
        """Travels at which the unit reaches a length or a bar lets go, by bracketing."""
        damper, wanted = self.data.get('damper', {}), {}
        if damper:
            wanted = {'droopStopTravel': damper['openLength'], 'closedTravel': damper['closedLength']}
        r = self.data.get('bumpRubber')
        if r:
            wanted['rubberTravel'] = self.unit0 - (r['gap'] - r.get('packers', 0.0))
        if self.coil:
            helper = self.data['coil'].get('helper')
            wanted['coilFreeTravel'] = self.unit0 + self.coil['force'] / self.coil['rate'] + (
                helper['travel'] if helper else 0.0)
        out = {name: crossing(lambda z: at - self.corner.at(z)['unit']) for name, at in wanted.items()}
        if self.bar:
            out['barSlackTravel'] = crossing(lambda z: self.corner.at(z)['rocker'] + self.bar['twist'])
        return out

    def figures(self, z):
        step = self.step(z)
        load = float(first(self.energy, z, step))
        rate = float(second(self.energy, z, step))
        tyre = self.data['wheel'].get('tyreRate')
        out = {'springLoad': load, 'wheelRate': rate, 'groundLoad': load + self.data['unsprung'] * G_N}
        if tyre:
            out['rideRate'] = rate * tyre / (rate + tyre)
        if self.unit0:
            x = self.closed(z)
            out['rubberForce'] = self.rubber_force(x)
            out['unitForce'] = (self.coil_force(x) if self.coil else 0.0) + self.gas + self.rubber_force(x)
        if self.coil:
            out['coilForce'], out['coilRate'] = self.coil_force(x), self.coil['rate']
        if self.bar:
            twist = self.bar['twist'] + self.corner.at(z)['rocker']
            torque = self.bar['rate'] * twist
            out.update(barRate=self.bar['rate'], barTwist=twist, barTorque=torque, barStress=torque * self.bar['skin'])
        return out


def blade_rate(blade):
    """Load at the tip, in the plane of the arm's movement, per deflection there; the tip free to go sideways."""
    b, t, turn = blade['width'], blade['thickness'], blade['setting']
    flat, edge = b * t**3 / 12, t * b**3 / 12
    give = np.cos(turn) ** 2 / flat + np.sin(turn) ** 2 / edge
    return 3 * blade['youngsModulus'] / (blade['length'] ** 3 * give)


def round_bar_rate(bar, moduli):
    if 'rate' in bar:
        return bar['rate']
    g = bar.get('shearModulus', moduli.get(bar.get('material')))
    return g * np.pi * (bar['diameter'] ** 4 - bar.get('bore', 0.0) ** 4) / 32 / bar['activeLength']


class TBar:
    """A cross arm on a stem: the whole nods about an axis across the car, the arm twists the stem."""

    def __init__(self, arb, corners):
        self.corners = corners
        self.flips = {'left': np.ones(3), 'right': np.array([1, -1, 1])}
        a, b = np.array(arb['axisLeft']), np.array(arb['axisRight'])
        self.foot, self.across = (a + b) / 2, unit(b - a)
        self.stem = unit(np.array(arb['stemTop']) - self.foot)
        self.ends = {s: corners[s].p['dropLinkArm'] * self.flips[s] for s in self.flips}
        self.links = {s: length(corners[s].p['dropLinkArm'] - corners[s].p['dropLinkRocker']) for s in self.flips}

    def twist(self, left, right):
        rockers = {s: self.corners[s].at(t)['onRocker']('dropLinkRocker') * self.flips[s]
                   for s, t in (('left', left), ('right', right))}

        def miss(two):
            nod, twist = two
            return np.array([length(turned(turned(self.ends[s], self.foot, self.stem, twist), self.foot, self.across, nod)
                                    - rockers[s]) - self.links[s] for s in rockers])

        return polished(miss, root(miss, [0.0, 0.0], options={'xtol': 1e-13}).x)[1]


def u_bar_rate(arb, arms, moduli):
    """Torque about the bar's axis per twist of one arm's end against the other's."""
    give = 1 / round_bar_rate(arb['bar'], moduli)
    for side in ('left', 'right'):
        if f'{side}Blade' in arb:
            give += 1 / (blade_rate(arb[f'{side}Blade']) * arms[side] ** 2)
    return 1 / give


def axle_figures(end, axle, corners, springs, moduli, at, wheelbase, height, share):
    """`at`: travel of the left and of the right wheel."""
    zl, zr = at
    travel = {'left': zl, 'right': zr}
    f = {s: corners[s].figures(z) for s, z in travel.items()}
    flips = {'left': np.ones(3), 'right': np.array([1, -1, 1])}
    contact = {s: (lambda t, s=s: corners[s].lowest(corners[s].at(t)['six']) * flips[s]) for s in travel}
    out = {'track': f['left']['halfTrack'] + f['right']['halfTrack']}
    # Front view. The ground is the line through both contact points, which tilts when the wheels stand unlike. The
    # force line of a wheel goes through its contact point, square to the movement of that point. The contact point
    # is the lowest point of the wheel, wherever on the tyre that comes to lie: the wheel is free to roll.
    p = {s: contact[s](z)[1:] for s, z in travel.items()}
    v = {s: first(contact[s], z)[1:] for s, z in travel.items()}
    along = unit(p['left'] - p['right'])
    upward = np.array([-along[1], along[0]])
    middle = p['right'] + along * (0 - p['right'][0]) / along[0]  # where the centre plane cuts the ground
    centre = np.linalg.solve([v['left'], v['right']], [v[s] @ p[s] for s in travel])
    out['rollCentreHeight'], out['rollCentreOffset'] = (centre - middle) @ upward, (centre - middle) @ along
    # Lateral force of 1 shared equally: the links lift each wheel by its slope; the couple of both about the middle.
    out['rollCentreForce'] = sum((v[s] @ along) / (v[s] @ upward) * ((p[s] - middle) @ along) for s in travel) / 2
    mean = lambda key: (f['left'][key] + f['right'][key]) / 2
    if height:
        if share is not None:
            # Braking pushes the contact rearward: in front it holds the body up where the contact goes forward in
            # bump, behind it holds it down where the contact goes rearward.
            sign = -1 if end == 'front' else 1
            out['brakingLinks'] = sign * share * mean('rearwardLocked') * wheelbase / height
        if end == 'rear':
            out['drivingLinks'] = mean('rearwardCentre') * wheelbase / height
    sprung = sum(springs[s].data['scale'] - springs[s].data['unsprung'] for s in springs)
    arb, heave = axle.get('antiRollBar'), axle.get('heave')

    # The axle in heave: both wheels travel together; in roll one goes up and the other down. A heave spring counts
    # where its gap is closed, in roll too as far as its two ends do not move alike; the anti-roll bar counts in
    # heave as far as left and right are not each other's mirror.
    def squeeze(t, u):
        a, b = (corners[s].at(z)['onRocker']('heaveRocker') for s, z in (('left', zl + t), ('right', zr + u)))
        a0, b0 = (corners[s].p['heaveRocker'] for s in ('left', 'right'))
        over = np.array([1, -1, 1])
        return length(a0 - b0 * over) - length(a - b * over) - heave['gap']

    k, store = None, lambda l, r: 0.0
    if arb and arb['kind'] == 'T-bar':
        k = round_bar_rate(arb['bar'], moduli)
        t_bar = TBar(arb, corners)
        store = lambda l, r: k * t_bar.twist(l, r) ** 2 / 2
    if arb and arb['kind'] == 'U-bar':
        a, b = np.array(arb['axisLeft']), np.array(arb['axisRight'])
        over = np.array([1, -1, 1])
        ends = {'left': corners['left'].p['dropLinkArm'], 'right': corners['right'].p['dropLinkArm'] * over}
        arms = {s: length(perpendicular(ends[s] - a, unit(b - a))) for s in ends}
        # Both turns counted the same way round about the axis from left to right; turning over changes the hand.
        turns = {'left': lambda t: corners['left'].arm_angle(t, a, b),
                 'right': lambda t: -corners['right'].arm_angle(t, a * over, b * over)}
        k = u_bar_rate(arb, arms, moduli)
        twist = lambda l, r: turns['left'](l) - turns['right'](r)
        store = lambda l, r: k * twist(l, r) ** 2 / 2
    if arb:
        out['antiRollBarRate'] = k
        one = [second(lambda t: store(zl + t, zr), 0.0), second(lambda t: store(zl, zr + t), 0.0)]
        out['antiRollBarOneWheel'] = float(np.mean(one))
        out['antiRollBarRoll'] = float(second(lambda t: store(zl + t, zr - t), 0.0)) / 2

    def kept(t, u):
        energy = springs['left'].energy(zl + t) + springs['right'].energy(zr + u) + store(zl + t, zr + u)
        if heave:
            energy += heave['rate'] * max(squeeze(t, u), 0.0) ** 2 / 2
        return energy

    steps = [springs[s].step(travel[s]) for s in springs]
    if heave:
        steps.append(clear_step(0.0, lambda t: [squeeze(t, t)]))
        out['heaveForce'] = heave['rate'] * max(squeeze(0.0, 0.0), 0.0)
    out['heaveRate'] = float(second(lambda t: kept(t, t), 0.0, min(steps)))
    tyre = {s: springs[s].data['wheel']['tyreRate'] for s in springs}
    # Roll about a level line at the ground: one wheel up, the other down by half the track times the angle.
    out['rollRate'] = float(second(lambda t: kept(t, -t), 0.0, min(steps))) * (out['track'] / 2) ** 2
    out['heaveRide'] = out['heaveRate'] * sum(tyre.values()) / (out['heaveRate'] + sum(tyre.values()))
    out['heaveFrequency'] = float(np.sqrt(out['heaveRide'] / sprung) / (2 * np.pi))
    return out


def work(asked):
    moduli, answer = asked['shearModulus'], {}
    for name, car in asked['cars'].items():
        got = answer[name] = {}
        axle_x = {}
        for end in ('front', 'rear'):
            # Wheelbase from the wheel centres; from contact points it would be 0.05 mm another.
            axle_x[end] = np.mean([car[end][s]['points']['wheelCentre'][0] for s in ('left', 'right')])
        wheelbase = axle_x['front'] - axle_x['rear']
        height = car.get('body', {}).get('centreOfGravityHeight')
        for end in ('front', 'rear'):
            share = car.get('brakes', {}).get('frontShare')
            if share is not None and end == 'rear':
                share = 1 - share
            straight = {s: Corner(car[end][s], s) for s in ('left', 'right')}
            # The rack moves along the line of its two ends.
            ends = [np.array(car[end][s]['points']['toeInner']) for s in ('left', 'right')]
            for rack in asked['racks'] if end == 'front' else [0.0]:
                corners = {s: Corner(car[end][s], s, rack * unit(ends[0] - ends[1])) for s in straight}
                springs = {s: Springing(car[end][s], corners[s], straight[s], moduli) for s in corners}
                if not rack:
                    for s in springs:
                        got[f'{end}-{s}-events'] = {k: v for k, v in springs[s].events().items() if v is not None}
                clean = lambda figures: {k: float(v) for k, v in figures.items()}
                for z in asked['travels']:
                    for s in corners:
                        got.setdefault(f'{end}-{s}', {})[f'{z:g}/{rack:g}'] = clean(
                            corners[s].figures(z) | springs[s].figures(z))
                for zl, zr in [(z, z) for z in asked['travels']] + asked['rolled']:
                    got.setdefault(end, {})[f'{zl:g}/{zr:g}/{rack:g}'] = clean(axle_figures(
                        end, car[end], corners, springs, moduli, (zl, zr), wheelbase, height, share))
    return answer


if __name__ == '__main__':
    json.dump(work(json.load(sys.stdin)), sys.stdout, indent=1, sort_keys=True)
