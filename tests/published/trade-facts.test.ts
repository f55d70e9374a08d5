/** Facts of the trade against the demo cars. Each is common practice, no source, unless a source is named. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { putCornerFigures } from '../../src/loadpath/figures/corner.ts';
import { Numbers } from '../../src/loadpath/numbers.ts';
import { polarSecondMoment } from '../../src/loadpath/spring/torsion-bar.ts';
import { preloadByTorque } from '../../src/loadpath/stud/preload.ts';
import { lubricant } from '../../src/materials/lubricant.ts';
import { springMaterial } from '../../src/materials/spring-material.ts';
import { threadNamed } from '../../src/materials/thread.ts';
import { spreadOf } from '../../src/measured/spread.ts';
import { barForCoil, cornerFigures } from '../../src/questions/index.ts';
import { fromSI } from '../../src/units/unit.ts';
import { demo, WHEELS } from '../cars/demo.ts';
import { near } from '../near.ts';

const car = demo('fenwold-201');
const FRONT_LEFT = WHEELS[0]!;

/** Two platforms and a threaded sleeve of light alloy about the damper, kg: assumed, the file has only the coil. */
const PLATFORMS = 0.45;

test('a torsion bar that does the coil’s work is far lighter than the coil with its platforms', (t) => {
  for (const wheel of WHEELS) {
    const found = barForCoil(car, wheel, {
      material: '300M bar',
      boreRatio: 0.6,
      surface: 'ground and peened',
      splines: { rocker: 48, anchor: 47 },
    });
    assert.ok(found.reached);
    const bar = found.bars[0]!;
    const unit = found.coilMass + PLATFORMS;
    t.diagnostic(
      `${wheel.end} ${wheel.side}: bar ${bar.mass.toFixed(2)} kg, coil ${found.coilMass.toFixed(2)} kg, ` +
        `with platforms (assumed) ${unit.toFixed(2)} kg: ${((100 * bar.mass) / unit).toFixed(0)} %`,
    );
    // Common practice, no source: about a fifth. The demo gives a third to two fifths, and not a fifth, because
    // stored energy wants steel: U = τ² V/4G for a solid bar (Gere, 6th ed., solution 3.9-2, P), and a wire twisted
    // to the same stress stores as much in the same volume. Coil and bar here are both at 0.85 to 1 GPa; the bar's
    // gain is only what the coil has besides: closed end coils, the correction for its curvature, and the travel
    // from its free length to its solid one that the wheel does not use. A fifth wants a bar preset and run at half
    // as much stress again, and a coil with steel platforms and a reserve; neither is invented here.
    assert.ok(bar.mass < 0.6 * found.coilMass, `${bar.mass} kg of ${found.coilMass} kg`);
    assert.ok(bar.mass < 0.45 * unit, `${bar.mass} kg of ${unit} kg`);

    // the volume is what the energy asks for: U = ½ T φ = τ² V/4G for a solid bar, × (1 + (d/D)²) for a bored one
    const { torque, twist, stress } = bar.fullBump;
    const { diameter, bore } = bar;
    const G = springMaterial('300M bar')!.shearModulus.value;
    const volume = (Math.PI / 4) * (diameter ** 2 - bore ** 2) * bar.activeLength;
    const perVolume = (stress ** 2 / (4 * G)) * (1 + (bore / diameter) ** 2);
    near((torque * twist) / 2 / (perVolume * volume), 1, 1e-9); // the same sums in another order
  }
});

test('0.05 mm more on a bar of 13 mm is 1.5 % more rate (fourth power)', () => {
  const second = (diameter: number): number => polarSecondMoment({ diameter, bore: 0 });
  near(second(13.05e-3) / second(13e-3) - 1, 0.0155, 0.0002);
  // and on one of 12.5 mm 1.6 %: the trade says 1.5 to 2 % a grinding step
  near(second(12.55e-3) / second(12.5e-3) - 1, 0.0161, 0.0002);
});

test('48 and 47 teeth step by 0.16° through the question itself', () => {
  const found = barForCoil(car, FRONT_LEFT, { material: '4340 bar', splines: { rocker: 48, anchor: 47 } });
  assert.ok(found.reached);
  near(fromSI(found.bars[0]!.splineStep!, 'deg'), 360 / (48 * 47), 1e-12);
  near(fromSI(found.bars[0]!.splineStep!, 'deg'), 0.16, 0.005);
});

test('±0.5 mm on every hard point is about 1.5 % of wheel rate, four fifths and more from rocker pivot and rod ends', (t) => {
  for (const wheel of WHEELS) {
    const form = car.form[wheel.end][wheel.side];
    const inputs = Object.entries(form.points).flatMap(([label, point]) =>
      (point === undefined ? [] : [point.x, point.y, point.z]).map(({ index, path }) => ({
        label,
        path,
        // ± 0.5 mm as limits with nothing known between them (GUM 4.3.7)
        moves: [[index, 0.5e-3 / Math.sqrt(3)] as const],
      })),
    );
    const [spread] = spreadOf(
      car.values,
      inputs,
      (values, out) => {
        const at = { travel: 0, rack: 0 };
        putCornerFigures(car.form[wheel.end], wheel.side, at, new Numbers(values), (note, value) => {
          if (note.id === 'wheelRate') out[0] = value;
        });
      },
      1,
    );
    const answer = cornerFigures(car, wheel, { travel: 0, rack: 0 });
    assert.ok(answer.reached && spread);
    const part = spread.u / answer.figures.find(({ id }) => id === 'wheelRate')!.value;
    const rocker = spread.shares
      .filter(({ label }) => /^(rockerPivot|rodInner|rodOuter)$/.test(label))
      .reduce((sum, { share }) => sum + share, 0);
    t.diagnostic(
      `${wheel.end} ${wheel.side}: ${(100 * part).toFixed(2)} %, ${(100 * rocker).toFixed(0)} % of it there`,
    );
    assert.ok(part > 0.012 && part < 0.022, `${part}`);
    assert.ok(rocker > 0.8, `${rocker}`);
  }
});

test('a lubricant change alone moves the preload by tens of per cent: as delivered against paste, one torque', () => {
  // common practice, no source. By hand for 3/8-24 at μ 0.18 and 0.10, nut face 16.5 mm over a hole of 9.9 mm:
  const pitch = 25.4e-3 / 24;
  const pitchDiameter = 0.375 * 25.4e-3 - 0.649519 * pitch;
  const perNewton = (μ: number): number =>
    pitch / (2 * Math.PI) + (μ * pitchDiameter) / (2 * Math.cos(Math.PI / 6)) + (μ * (16.5e-3 + 9.9e-3)) / 4;
  const preload = (name: string): number => {
    const { thread, face } = lubricant(name)!;
    return preloadByTorque({
      thread: threadNamed('3/8-24 UNF')!,
      face: { outer: 16.5e-3, hole: 9.9e-3 },
      friction: { thread: thread.middle, face: face.middle },
      torque: 40,
      running: 0,
    });
  };
  const gained = preload('molybdenum disulphide paste') / preload('as delivered, dry');
  near(gained, perNewton(0.18) / perNewton(0.1), 1e-6);
  assert.ok(gained > 1.3 && gained < 1.9, `${gained}`);
});
