/**
 * A car file of version 1, kept for ever: whatever the form becomes, this file goes on meaning what it meant.
 *
 * The numbers below were worked from the text by hand and from the exact definitions of inch, pound and degree
 * (NIST Special Publication 811, 2008 ed., appendix B: 1 in = 0.0254 m, 1 lb = 0.453 592 37 kg; standard gravity
 * 9.806 65 m/s^2).
 */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { parse } from 'yaml';
import { CAR_FILE_VERSION, type Car, readCar } from '../../src/car/read.ts';
import { carFileSchema, type SchemaNode } from '../../src/car/schema.ts';

const FOLDER = new URL('v1/', import.meta.url);
const text = readFileSync(new URL('car.yaml', FOLDER), 'utf8');
const files = { 'arm.csv': readFileSync(new URL('arm.csv', FOLDER), 'utf8') };

function read(spec?: string): Car {
  const result = readCar({ text, files, ...(spec === undefined ? {} : { spec }) });
  assert.ok(result.ok, JSON.stringify(result.ok ? '' : result.problems, undefined, 1));
  return result.car;
}

const DEG = Math.PI / 180;

/** Equal but for the last bits of a few multiplications. */
const same = (a: number, b: number): void =>
  assert.ok(Math.abs(a - b) <= 1e-12 * Math.max(1, Math.abs(b)), `${a} is not ${b}`);

test('every spec of it reads', () => {
  const { specs } = read();
  assert.deepEqual(specs, ['as arrived', 'as run', 'as drawn']);
  for (const spec of specs) read(spec);
});

test('its readings mean what they meant', () => {
  const { form } = read();
  const { left, right } = form.front;
  same(left.points.toeInner.value[0], 3.874 * 0.0254);
  same(left.points.lowerOuter.value[1], 0.7568);
  same(left.wheel.tyreWidth.value, 11.5 * 0.0254);
  same(left.wheel.camber.value, -2.4 * DEG);
  same(left.coil!.rate!.value, (1120 * 0.45359237 * 9.80665) / 0.0254);
  same(left.coil!.rate!.u, (15 * 0.45359237 * 9.80665) / 0.0254);
  same(left.bar!.rate!.value, 39.6 / DEG);
  same(form.front.steering!.pinion!.value, 0.062 / (2 * Math.PI));
  same(form.brakes!.frontShare.value, 0.57);
  same(left.points.lowerRear.x.u, 0.0004);
  same(left.points.lowerFront.y.u, 0.00009);
  assert.equal(left.points.lowerFront.x.by, 'A');
  assert.equal(left.points.lowerFront.x.on, '2026-02-03');
  assert.equal(right.points.rodInner.y.index, left.points.rodInner.y.index);
  same(right.points.rodInner.value[1], -0.2622);
  same(form.rear.right.wheel.camber.value, -1.45 * DEG);
  assert.equal(form.rear.right.wheel.toe.mirrored, true);
  assert.equal(form.car.manner, '1994');
});

test('its cases and logs mean what they meant', () => {
  const { form } = read();
  const crest = form.cases!['over the crest']!;
  // NIST SP 811: 1 mile per hour = 0.447 04 m/s, 1 lbf = 4.448 221 615 260 5 N
  same(crest.speed!, 120 * 0.44704);
  same(crest.longitudinal!, -1.5 * 9.80665);
  same(crest.rack!, 0.0254 / 8);
  same(crest.frontBrakes!, 0.6);
  assert.deepEqual(crest.kerb, { frontLeft: 1, frontRight: 1.5, rearLeft: 2, rearRight: 0 });
  same(crest.contacts!.frontLeft!.up, 900 * 4.4482216152605);
  assert.equal(crest.contacts!.frontLeft!.by, 'spin');
  const { columns, decimal } = form.logs!['a lap']!;
  assert.equal(decimal, ',');
  assert.equal(columns.longitudinal!.reversed, false);
  same(columns.vertical!.rest!, 9.80665);
});

test('its rear wing means what it meant', () => {
  const wing = read().form.air!.rearWing!;
  same(wing.at.value[0], -126 * 0.0254);
  same(wing.downforce.value, 500 * 4.4482216152605);
  assert.equal(wing.pillars.length, 1);
});

test('what it tells of the day out means what it meant', () => {
  const { brakes, engine, pressures, gearbox, rolling, fuel, underside } = read().form;
  // NIST SP 811: 1 mile = 1609.344 m, 1 psi = 6894.757 293 168 Pa, 1 hp = 745.699 871 582 W, °F to K exact
  same(brakes!.system!.bar.width.value, 2.5 * 0.0254);
  same(brakes!.system!.front.wear![1]!.pad!.value, 0.0165);
  same(engine!.limit!.value, (10_500 * 2 * Math.PI) / 60);
  same(engine!.brakeSheet![1]!.torque.value, 240 * 1.3558179483314);
  same(pressures!.front.hot.value / 6894.757293168, 23);
  same(pressures!.front.gas.value, ((190 - 32) * 5) / 9 + 273.15);
  assert.deepEqual(gearbox!.final, { driver: 9, driven: 31, text: '9/31' });
  assert.deepEqual(gearbox!.stock![0]!.gears, [2, 3]);
  same(rolling!.growthSpeed!.value, 150 * 0.44704);
  same(fuel!.lap!.value, 2.5 * 1609.344);
  same(fuel!.specific!.value * 745.699871582 * 3600, 0.5 * 0.45359237);
  same(fuel!.surveyed.value, 0.02);
  same(underside!.points.floor!.value[2], 0.035);
});

test('its survey gives the points that it gave', () => {
  const { left } = read().form.front;
  // the arm stood 1000 mm behind, 2000 mm to the right and 300 mm under the car's origin, square to the car
  for (const [name, place] of [
    ['upperFront', [0.14982, 0.24804, 0.36507]],
    ['upperOuter', [-0.02042, 0.72083, 0.42379]],
  ] as const) {
    left.points[name].value.forEach((each, k) => {
      // the patch marks scatter by 0.03 mm over 1.2 m, and the points lie within half a metre of them
      assert.ok(Math.abs(each - place[k]!) < 0.0001, `${name}: ${each} for ${place[k]}`);
    });
    assert.ok(left.points[name].surveyed);
  }
});

test('its specs change what they changed', () => {
  assert.equal(read('as run').form.rear.antiRollBar, undefined);
  same(read('as run').form.front.left.wheel.toe.value, -0.2 * DEG);
  assert.equal(read('as drawn').form.rear.antiRollBar!.kind, 'T-bar');
});

test('it uses every key of version 1', { skip: CAR_FILE_VERSION !== 1 && 'the form has newer keys' }, () => {
  const unused: string[] = [];
  // every object of the file that a node of the schema describes, over both axles and all lists and names
  const walk = (node: SchemaNode, found: readonly unknown[], path: string): void => {
    for (const [key, each] of Object.entries(node.properties ?? {})) {
      const values = found
        .map((one) => (one as Record<string, unknown>)[key])
        .filter((one) => one !== undefined);
      if (values.length === 0) unused.push(`${path}.${key}`);
      descend(each, values, `${path}.${key}`);
    }
  };
  const descend = (node: SchemaNode, values: readonly unknown[], path: string): void => {
    if (node.reading !== undefined) return;
    const objects = values.filter((one) => typeof one === 'object' && one !== null);
    if (node.items !== undefined) descend(node.items, objects.flat(), `${path}[]`);
    else if (typeof node.additionalProperties === 'object') {
      descend(
        node.additionalProperties,
        objects.flatMap((one) => Object.values(one as object)),
        `${path}.*`,
      );
    } else if (objects.length > 0) walk(node, objects, path);
  };
  const file = parse(text) as Record<string, Record<string, unknown>>;
  const schema = carFileSchema();
  // a corner is a corner: front left and rear left together have to use every key
  const { front, rear, exhaust, ...rest } = schema.properties!;
  walk({ ...schema, properties: rest }, [file], '');
  // and a bank a bank: the one has a collector, the other several and a last one, and a collector is a collector
  const { left, right, ...ofBoth } = exhaust!.properties!;
  assert.deepEqual(Object.keys(left!.properties!), Object.keys(right!.properties!));
  walk({ ...exhaust!, properties: ofBoth }, [file.exhaust], 'exhaust');
  const { collector: _, collectors, secondaries, ...ofBank } = left!.properties!;
  const { collector: __, ...behind } = secondaries!.properties!;
  // biome-ignore lint/suspicious/noExplicitAny: what was parsed, held against the schema here
  const [one, other] = [file.exhaust!.left, file.exhaust!.right] as any[];
  walk({ ...left!, properties: ofBank }, [one, other], 'bank');
  walk({ ...secondaries!, properties: behind }, [other.secondaries], 'secondaries');
  walk(collectors!.items!, [one.collector, ...other.collectors, other.secondaries.collector], 'collector');
  const corner = front!.properties!.left!;
  walk(corner, [file.front!.left, file.rear!.left], 'corner');
  const axle = Object.fromEntries(
    Object.entries(rear!.properties!).filter(([key]) => key !== 'left' && key !== 'right'),
  );
  walk({ ...rear!, properties: axle }, [file.front, file.rear], 'axle');
  assert.deepEqual(unused, []);
});
