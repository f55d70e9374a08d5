#!/usr/bin/env python3
"""The car on four pads, and in a steady turn, by free bodies: for tests/cars/floor-by-free-bodies.test.ts.

It shares nothing with the program but the measured numbers that it is handed, and works as follows.

* Position: the upright is a free rigid body (independent_linkage.py). Its places along the travel are tabulated at
  Chebyshev points and read off by SciPy's barycentric interpolation, which is exact to rounding here.
* Force: no virtual work and no derivative of the linkage. Each upright stands in balance under tyre, weight, two
  joint forces and the track rod (six equations); each wishbone carries no moment about its hinge (two equations for
  the rod and what it leaves). Then the moments about each rocker's axis must vanish under rod, spring unit, torsion
  bar, drop link and heave element: four equations. The whole car as one body gives lift, pitch and roll: three.
* Those seven are solved for four travels and the plane of the floor by Newton's steps with a differenced matrix.
* What one unit of an adjuster does is a difference of whole solutions, of fourth order.

In:   JSON on standard input, SI units and radians:
      {"cars": {name: {"front", "rear", "body", "floor"}}, "shearModulus": {material: Pa},
       "asked": {name: [{"key", "state": {"bars", "changes": {change: amount}, "grip"},
                         "steps": {label: [change, one unit]}} or {"key", "lateral": m/s^2}]}}
Out:  {name: {key: {"readings": {reading: number}, "matrix": {label: {reading: number}}}
             or {key: {figure: number}} for a turn}
Axes: x forward, y left, z up, fixed to the tub
Not:  helpers in the coil beyond their solid length, air, driving and braking.
"""

import json
import os
import sys

os.environ.setdefault('OPENBLAS_NUM_THREADS', '1')  # small matrices: threads only cost

import numpy as np

from floor_bodies import LINKS, Bar, Springs, Table, lowest, rod_force
from independent_linkage import length, unit
from independent_model import G_N

WHEELS = ['frontLeft', 'frontRight', 'rearLeft', 'rearRight']
END = {w: 'front' if w.startswith('front') else 'rear' for w in WHEELS}
SIDE = {w: 'left' if w.endswith('Left') else 'right' for w in WHEELS}


class Car:
    def __init__(self, data, moduli):
        self.data, self.moduli, self.tables = data, moduli, {}
        self.surveyed = {w: self.table(w, {}) for w in WHEELS}
        self.corner = {w: data[END[w]][SIDE[w]] for w in WHEELS}
        self.springs = {w: Springs(self.corner[w], self.surveyed[w], moduli) for w in WHEELS}
        up = np.array([0.0, 0.0, 1.0])
        here = {w: self.surveyed[w].at(0.0) for w in WHEELS}
        self.contact0 = {w: lowest(here[w]['centre'], here[w]['spin'], up, self.surveyed[w].radius) for w in WHEELS}
        scale = {w: self.corner[w]['scale'] for w in WHEELS}
        off = {w: self.corner[w]['unsprung'] for w in WHEELS}
        self.mass = sum(scale.values()) - sum(off.values())
        whole = np.array([sum(scale[w] * self.contact0[w][i] for w in WHEELS) for i in (0, 1)]
                         + [data['body']['centreOfGravityHeight'] * sum(scale.values())])
        self.at = (whole - sum(off[w] * here[w]['centre'] for w in WHEELS)) / self.mass
        self.bars = {}
        for end in ('front', 'rear'):
            if 'antiRollBar' in data[end]:
                sides = {s: self.surveyed[f'{end}{s.title()}'] for s in ('left', 'right')}
                self.bars[end] = Bar(data[end]['antiRollBar'], sides, moduli)

    def table(self, wheel, links):
        key = (wheel, *(round(links.get(k, 0.0), 12) for k in LINKS))
        if key not in self.tables:
            self.tables[key] = Table(self.data[END[wheel]][SIDE[wheel]], SIDE[wheel], links)
        return self.tables[key]

    def look(self, u, state):
        """The seven equations at a guess, and what stands where."""
        changes = state.get('changes', {})
        of = lambda name: changes.get(name, 0.0)
        floor_up = unit(np.array([-u[5], -u[6], 1.0]))
        forward = unit(np.array([1.0, 0, 0]) - floor_up[0] * floor_up)
        left = np.cross(floor_up, forward)
        on = np.array([0, 0, u[4]])
        lateral = state.get('lateral', 0.0)
        up = unit(floor_up + of('risesForward') * forward + of('risesLeft') * left)
        pull = -G_N * up - lateral * left  # on each kilogram
        wheels = {}
        for k, w in enumerate(WHEELS):
            table = self.table(w, {n: of(f'{w}.{n}') for n in LINKS})
            places = table.at(u[k])
            tyre = self.corner[w].get('adjusters', {}).get('tyre', {})
            rate, rest = self.corner[w]['wheel']['tyreRate'], self.corner[w]['scale'] * G_N
            contact = lowest(places['centre'], places['spin'], floor_up, table.radius)
            stands = floor_up @ (contact - on) - of(f'{w}.pad')
            bar = of(f'{w}.pressure')
            give = self.contact0[w][2] - stands + tyre.get('radiusPerBar', 0.0) * bar
            load = max(0.0, (rest + rate * (1 + of(f'{w}.tyre')) * give) * (
                1 + tyre.get('ratePerBar', 0.0) / rate * bar))
            wheels[w] = {'table': table, 'places': places, 'load': load, 'free': contact,
                         'contact': contact + (self.contact0[w][2] - stands) * floor_up if lateral else contact}
        # all masses: the tub, what is aboard, the wheels
        masses = [(self.mass + of('mass'), self.at)]
        for name, at in self.places_of_masses().items():
            masses.append((of(f'mass.{name}'), at))
        masses += [(self.corner[w]['unsprung'], wheels[w]['places']['centre']) for w in WHEELS]
        total = sum(m for m, _ in masses)
        first = sum(m * (at - on) for m, at in masses) + np.array([of('massForward'), of('massLeft'), 0.0])
        # along the floor: what keeps the car from sliding sideways, two axles by side force and yaw, shared by load
        side = {w: 0.0 for w in WHEELS}
        if lateral or state.get('grip'):
            axle = {e: [w for w in WHEELS if END[w] == e] for e in ('front', 'rear')}
            whole = {e: sum(wheels[w]['load'] for w in axle[e]) for e in axle}
            arm = {e: sum(wheels[w]['load'] / whole[e] * (floor_up @ np.cross(wheels[w]['contact'] - on, left))
                          for w in axle[e]) for e in axle}
            push, yaw = -total * (pull @ left), -(floor_up @ np.cross(first, pull))
            front = (yaw - arm['rear'] * push) / (arm['front'] - arm['rear'])
            shared = {'front': front, 'rear': push - front}
            side = {w: shared[END[w]] * wheels[w]['load'] / whole[END[w]] for w in WHEELS}
        equations = np.zeros(7)
        torques, joined = {}, {}
        for end in ('front', 'rear'):
            names = {s: f'{end}{s.title()}' for s in ('left', 'right')}
            forces = {w: [] for w in names.values()}
            if end in self.bars and state['bars']:
                rockers = {s: wheels[w]['places']['dropLinkRocker'] for s, w in names.items()}
                longer = {s: of(f'{end}.{s}Link') for s in names}
                pulls, torques[end] = self.bars[end].on_rockers(rockers, longer)
                for s, w in names.items():
                    forces[w].append((rockers[s], pulls[s]))
            heave = self.data[end].get('heave')
            if heave:
                a, b = (wheels[w]['places']['heaveRocker'] for w in names.values())
                a0, b0 = (self.surveyed[w].p['heaveRocker'] for w in names.values())
                push = heave['rate'] * max(0.0, length(a0 - b0) - length(a - b) - heave['gap'])
                forces[names['left']].append((a, push * unit(a - b)))
                forces[names['right']].append((b, push * unit(b - a)))
            joined.update(forces)
        for k, w in enumerate(WHEELS):
            here, table = wheels[w]['places'], wheels[w]['table']
            pad = wheels[w]['load'] * floor_up + side[w] * left
            tension, u_r = rod_force(table, here, pad, wheels[w]['contact'], self.corner[w]['unsprung'] * pull)
            pivot = table.p['rockerPivot']
            a = unit(table.p['rockerAxis'] - pivot)
            moment = a @ np.cross(here['rodInner'] - pivot, -tension * u_r)
            springs, stiffer = self.springs[w], of(f'{w}.spring')
            if springs.unit0 is not None:
                now = table.unit_length(here)
                force = springs.unit_force(springs.unit0 - now, of(f'{w}.platform'), stiffer)
                moment += a @ np.cross(here['damperRocker'] - pivot,
                                       force * unit(here['damperRocker'] - table.p['damperTub']))
            moment -= table.sense * springs.torque(here['rocker'], of(f'{w}.anchor'), stiffer)
            for at, pulls in joined[w]:
                moment += a @ np.cross(at - pivot, pulls)
            # as a force at the rod's joint, so that all equations are newtons
            equations[k] = moment / length(np.cross(a, here['rodInner'] - pivot))
            wheels[w]['side'] = side[w]
        moment = np.cross(first, pull)
        for w in WHEELS:
            # forces along the floor have no moment about lines in it
            moment = moment + np.cross(wheels[w]['free'] - on, wheels[w]['load'] * floor_up)
            if lateral:
                above = floor_up @ (wheels[w]['contact'] - on)
                moment = moment + np.cross(above * floor_up, side[w] * left)
        equations[4] = sum(wheels[w]['load'] for w in WHEELS) + total * (pull @ floor_up)
        equations[5], equations[6] = moment @ left, moment @ forward
        return equations, {'wheels': wheels, 'up': floor_up, 'forward': forward, 'left': left, 'on': on,
                           'torques': torques, 'u': u}

    def places_of_masses(self):
        floor = self.data.get('floor', {})
        return {name: np.array(m['at']) for kind in ('aboard', 'ballast') for name, m in floor.get(kind, {}).items()}

    def settle(self, state, start=None, matrix=None):
        """Newton's steps; the matrix of a place near by still leads there."""
        u = np.zeros(7) if start is None else start.copy()
        scale = np.array([1e-5] * 5 + [1e-5] * 2)
        last = np.inf
        for _ in range(60):
            miss = self.look(u, state)[0]
            size = np.abs(miss).max()
            if size < 2e-8 or (size >= last and size < 1e-6):
                return u, matrix
            if matrix is None or size > 0.2 * last:
                matrix = np.column_stack([(self.look(u + scale * e, state)[0] - self.look(u - scale * e, state)[0])
                                          / (2 * (scale @ e)) for e in np.eye(7)])
            last = size
            step = np.linalg.solve(matrix, -miss)
            u = u + step * min(1.0, 0.006 / np.abs(step[:4]).max())
        raise ValueError(f'the car did not settle: {size} N left')

    def readings(self, state, u):
        _, is_ = self.look(u, state)
        wheels, up, forward, left, on = (is_[k] for k in ('wheels', 'up', 'forward', 'left', 'on'))
        out = {}
        load = {w: wheels[w]['load'] for w in WHEELS}
        whole = sum(load.values())
        for k, w in enumerate(WHEELS):
            here, table = wheels[w]['places'], wheels[w]['table']
            out[f'weight.{w}'] = load[w] / G_N
            n = here['spin']
            sign = 1 if SIDE[w] == 'left' else -1
            out[f'camber.{w}'] = -np.arcsin(n @ up)
            out[f'toe.{w}'] = np.arctan2(n @ forward, sign * (n @ left))
            out[f'toeAtRim.{w}'] = np.sin(out[f'toe.{w}']) * self.corner[w]['wheel']['rimDiameter']
            pin = here['upper'] - here['lower']
            out[f'caster.{w}'] = np.arctan2(-(pin @ forward), pin @ up)
            if 'damperRocker' in here:
                out[f'unitLength.{w}'] = table.unit_length(here)
                out[f'droop.{w}'] = u[k] - table.open_at(self.corner[w]['damper']['openLength'])
        out['total'] = whole / G_N
        out['cross'] = (load['frontRight'] + load['rearLeft']) / whole
        out['frontShare'] = (load['frontLeft'] + load['frontRight']) / whole
        out['leftShare'] = (load['frontLeft'] + load['rearLeft']) / whole
        points = {n: np.array(at) for n, at in self.data.get('floor', {}).get('heights', {}).items()}
        heights = {n: up @ (at - on) for n, at in points.items()}
        out.update({f'height.{n}': h for n, h in heights.items()})
        rear_x = self.surveyed['rearLeft'].p['wheelCentre'][0]
        mean = lambda ahead: np.mean([heights[n] for n in points if (points[n][0] > rear_x / 2) == ahead])
        out['rake'] = mean(False) - mean(True)
        for end in ('front', 'rear'):
            out[f'track.{end}'] = (wheels[f'{end}Left']['free'] - wheels[f'{end}Right']['free']) @ left
            if end in is_['torques']:
                out[f'barTorque.{end}'] = is_['torques'][end]
        for side in ('Left', 'Right'):
            out[f'wheelbase.{side.lower()}'] = (
                wheels[f'front{side}']['places']['centre'] - wheels[f'rear{side}']['places']['centre']) @ forward
        return {k: float(v) for k, v in out.items()}


def matrix_of(car, state, u, jacobian, steps):
    """What one unit does, by differences of fourth order over a quarter and half a unit."""
    out = {}
    for label, (change, amount) in steps.items():
        at = {}
        for n in (-2, -1, 1, 2):
            moved = {**state, 'changes': {**state['changes'],
                                          change: state['changes'].get(change, 0.0) + n * amount / 4}}
            place, _ = car.settle(moved, u, jacobian)
            at[n] = car.readings(moved, place)
        # what is smaller is the closing of the equations
        out[label] = {k: round((8 * (at[1][k] - at[-1][k]) - (at[2][k] - at[-2][k])) / 3, 9) for k in at[1]}
    return out


def turn(car, lateral):
    """A steady turn to the left without air: loads, roll of the tub against the ground."""
    out = {}
    rest, jacobian = car.settle({'bars': True})
    state = {'bars': True, 'lateral': lateral}
    u, _ = car.settle(state, rest, jacobian)
    for key, place, what in (('rest', rest, {'bars': True}), ('turn', u, state)):
        _, is_ = car.look(place, what)
        out.update({f'{key}.load.{w}': is_['wheels'][w]['load'] for w in WHEELS})
        out.update({f'{key}.travel.{w}': place[k] for k, w in enumerate(WHEELS)})
        out[f'{key}.roll'] = -np.arctan(place[6])
        out[f'{key}.pitch'] = np.arctan(place[5])
        out.update({f'{key}.side.{w}': is_['wheels'][w]['side'] for w in WHEELS})
    return {k: float(v) for k, v in out.items()}


def work(asked):
    answer = {}
    for name, data in asked['cars'].items():
        car = Car(data, asked['shearModulus'])
        got = answer[name] = {}
        for ask in asked['asked'][name]:
            if 'lateral' in ask:
                got[ask['key']] = turn(car, ask['lateral'])
                continue
            state = ask['state']
            u, jacobian = car.settle(state)
            got[ask['key']] = {'readings': car.readings(state, u),
                               'matrix': matrix_of(car, state, u, jacobian, ask.get('steps', {}))}
    return answer


if __name__ == '__main__':
    json.dump(work(json.load(sys.stdin)), sys.stdout, indent=1, sort_keys=True)
