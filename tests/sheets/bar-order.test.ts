/** The figures of an order against print, and its receipt test against the tolerances that it promises. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { torsionBarRate } from '../../src/loadpath/spring/torsion-bar.ts';
import { barDrawing } from '../../src/sheets/bar-drawing.ts';
import {
  BAR_TOLERANCE,
  type BarOrder,
  barOf,
  orderedFigures,
  receiptTest,
} from '../../src/sheets/bar-order.ts';
import { real } from '../draw.ts';
import { inventedOrder } from './invented-order.ts';

const near = (value: number, wanted: number, within: number): void =>
  assert.ok(Math.abs(value - wanted) <= within, `${value} is not ${wanted} within ${within}`);

/** Gere, Mechanics of Materials, 6th ed., solution 3.9-2, p. 237: φ = 0.026667 rad, U = 5.36 J. */
test('Gere 3.9-2: twist and energy of a solid bar at 32 MPa', () => {
  const [d, stress] = [0.04, 32e6];
  const square = { form: 'square' } as const;
  const order: BarOrder = {
    ...inventedOrder,
    diameter: d,
    bore: 0,
    parallelLength: 0.75,
    rockerEnd: square,
    anchorEnd: square,
    material: { ...inventedOrder.material, shearModulus: 45e9 },
    fullTorque: (stress * Math.PI * d ** 3) / 16,
  };
  const figures = orderedFigures(order);
  near(figures.fullStress, 32e6, 1); // the torque was made from it: rounding alone
  near(figures.fullTwist, 0.026667, 6e-7); // as printed, to its last digit
  near(figures.energy, 5.36, 0.005);
});

test('masses on the lever give m g L with the standard acceleration of free fall, 9.80665 m/s² (3rd CGPM)', () => {
  const { lever, points } = receiptTest(inventedOrder);
  assert.equal(points.length, 5);
  for (const point of points) near(point.torque, point.mass * 9.80665 * lever, 1e-9); // one product
});

const anyOrder = fc
  .record({
    diameter: real(0.01, 0.04),
    boreRatio: fc.constantFrom(0, 0.3, 0.6),
    length: real(0.1, 1.2),
    torque: real(5, 5000),
  })
  .map(
    ({ diameter, boreRatio, length, torque }): BarOrder => ({
      ...inventedOrder,
      diameter,
      bore: boreRatio * diameter,
      parallelLength: length,
      rockerEnd: { form: 'radius', headDiameter: 1.4 * diameter, size: diameter },
      anchorEnd: { form: 'taper', headDiameter: 1.4 * diameter, size: 2 * diameter },
      fullTorque: torque,
    }),
  );

test('the test never goes above the working torque, nor above 100 kg', () =>
  fc.assert(
    fc.property(anyOrder, (order) => {
      const { points } = receiptTest(order);
      // 1e-9: the last mass may be the working torque itself
      for (const { mass, torque } of points)
        assert.ok(torque <= order.fullTorque * (1 + 1e-9) && mass <= 100 * (1 + 1e-9));
      assert.ok(points[0]!.mass > 0);
    }),
  ));

test('every bar within its tolerances and modulus passes, and one well outside does not', () =>
  fc.assert(
    fc.property(
      anyOrder,
      fc.tuple(...Array.from({ length: 4 }, () => real(-1, 1))),
      (order, [a, b, c, e]) => {
        const { low, high } = order.material.shearModulusRange;
        const made: BarOrder = {
          ...order,
          diameter: order.diameter + a! * BAR_TOLERANCE.diameter,
          bore: order.bore === 0 ? 0 : order.bore + b! * BAR_TOLERANCE.bore,
          parallelLength: order.parallelLength + c! * BAR_TOLERANCE.length,
          material: { ...order.material, shearModulus: (low + high) / 2 + (e! * (high - low)) / 2 },
        };
        const rate = torsionBarRate(barOf(made));
        const soft = torsionBarRate(
          barOf({ ...order, diameter: 0.9 * order.diameter, bore: 0.9 * order.bore }),
        );
        const last = receiptTest(order).points.at(-1)!;
        // 1e-12 rad: rounding
        assert.ok(last.torque / rate >= last.least - 1e-12 && last.torque / rate <= last.most + 1e-12);
        // a tenth less diameter is a third softer; only asked where the twist is large against the reading
        if (last.twist > 0.02) assert.ok(last.torque / soft > last.most);
      },
    ),
  ));

test('the drawing is to its scale: the rocker head of 26 mm stands 13 mm high at 1:2', () => {
  const evenMeasure = { width: (text: string, size: number) => text.length * size * 0.55 };
  const { marks } = barDrawing(
    { shape: inventedOrder, name: 'test', toleranced: true },
    'mm-N',
    176,
    evenMeasure,
  );
  const drawn = marks({ x: 0, y: 0 }, 176);
  assert.ok(drawn.some((mark) => mark.kind === 'text' && mark.text.startsWith('Scale 1:2')));
  const upright = drawn.flatMap((mark) =>
    mark.kind === 'polyline' && mark.points.length === 2 && mark.points[0]!.x === mark.points[1]!.x
      ? [Math.abs(mark.points[1]!.y - mark.points[0]!.y)]
      : [],
  );
  assert.ok(upright.some((height) => Math.abs(height - 13) < 1e-9)); // exact but for rounding
});
