/**
 * What speaks against making a bar: strengths against handbooks, sentences against bars that nobody can make, and
 * orders of the demo car whose file was spoilt on purpose.
 */
import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { test } from 'node:test';
import { edited } from '../../src/car/edit.ts';
import { readCar } from '../../src/car/read.ts';
import { type SheetAsked, sheetPages } from '../../src/paper/index.ts';
import { againstMaking, fullBumpWords } from '../../src/sheets/against-making.ts';
import type { BarOrder } from '../../src/sheets/bar-order.ts';
import { barOrderSheet } from '../../src/sheets/bar-order-sheet.ts';
import type { SheetDocument } from '../../src/sheets/page.ts';
import { inventedHead, inventedOrder } from './invented-order.ts';

const evenMeasure = { width: (text: string, size: number) => text.length * size * 0.55 };

const wordsOf = (sheet: SheetDocument, weight?: 'bold'): string =>
  sheet.pages
    .flatMap((page) => page.marks)
    .map((mark) =>
      mark.kind === 'text' && (weight === undefined || mark.weight === weight) ? mark.text : '',
    )
    .join(' ');

/** The invented bar, solid, under the torque that gives this stress at its skin: τ = 16 T/(π d³), Gere 7th ed., eq. 3-12. */
function under(stress: number, more: Partial<BarOrder> = {}): BarOrder {
  const d = 0.016;
  return { ...inventedOrder, diameter: d, bore: 0, fullTorque: (stress * Math.PI * d ** 3) / 16, ...more };
}

test('Shigley (10th ed., eq. 10-30, from memory): a preset bar stands above its yield, not above 0.67 of its strength', () => {
  const { low } = inventedOrder.material.tensileStrength!;
  const against = (share: number, hand: BarOrder['hand']) =>
    againstMaking(under(share * low, { hand }), 'mm-N');
  // 0.48 of the tensile strength is the yield of the invented order's material; 1 % to either side of each bound
  for (const hand of ['left', 'right', 'not preset'] as const) {
    assert.deepEqual(against(0.475, hand), { notAsItStands: [] });
  }
  assert.deepEqual(against(0.663, 'left').notAsItStands, []);
  assert.match(against(0.49, 'not preset').notAsItStands[0]!, /above the yield in shear.*not preset/);
  assert.match(against(0.677, 'left').notAsItStands[0]!, /presetting does not mend/);
});

test('Juvinall & Marshek (from memory): no steel carries more than 0.8 of its tensile strength in shear', () => {
  const { low } = inventedOrder.material.tensileStrength!;
  assert.equal(againstMaking(under(0.79 * low), 'mm-N').refused, undefined);
  assert.match(againstMaking(under(0.81 * low), 'mm-N').refused!, /is not ordered/);
});

test('a bar of no known strength is not judged, and says so; one beyond every bar in the table is refused', () => {
  const { tensileStrength, shearYield, ...material } = inventedOrder.material;
  const unknown = { ...material, name: 'stock of the workshop' };
  const { refused, notAsItStands } = againstMaking(under(900e6, { material: unknown }), 'mm-N');
  assert.equal(refused, undefined);
  assert.match(notAsItStands[0]!, /stock of the workshop is not in the table/);
  assert.match(againstMaking(under(4307e6, { material: unknown }), 'mm-N').refused!, /strongest bar/);
});

test('a measured rate that the dimensions do not give is told, and one within the limits is only shown', () => {
  const heads = (order: BarOrder): string => wordsOf(barOrderSheet(order, inventedHead, evenMeasure), 'bold');
  const agrees = { ...inventedOrder, measuredRate: 1255 };
  const sheet = barOrderSheet(agrees, inventedHead, evenMeasure);
  assert.match(wordsOf(sheet), /Rate measured on the bar in the car/);
  assert.doesNotMatch(heads(agrees), /Not to be made/);
  assert.match(
    heads({ ...inventedOrder, measuredRate: 800 }),
    /Not to be made as it stands: the bar in the car/,
  );
});

test('full bump says what gives it', () => {
  assert.match(fullBumpWords(inventedOrder, 'mm-N'), /damper closed/);
  const fullBump = { travel: 0.084, by: 'pushrod in line with its rocker arm', stopped: false };
  const open = { ...inventedOrder, fullBump };
  assert.match(fullBumpWords(open, 'mm-N'), /no bump stop/);
  const sheet = barOrderSheet(open, inventedHead, evenMeasure);
  assert.match(wordsOf(sheet, 'bold'), /no bump stop/);
  assert.doesNotMatch(wordsOf(barOrderSheet(inventedOrder, inventedHead, evenMeasure)), /no bump stop/);
});

const folder = new URL('../../cars/ashgarth-501/', import.meta.url);
const textOf = (name: string): string => readFileSync(new URL(name, folder), 'utf8');
const files = Object.fromEntries(
  readdirSync(folder)
    .filter((name) => name.endsWith('.csv'))
    .map((name) => [name, textOf(name)]),
);

const LEFT = { end: 'front', side: 'left' } as const;
const RIGHT = { end: 'front', side: 'right' } as const;

type Spoilt = Parameters<typeof edited>[1];

/** The front bar of the demo car, with its file changed. */
function ordered(changes: Spoilt, more: Partial<SheetAsked> = {}) {
  const read = readCar({ text: edited(textOf('car.yaml'), changes), files });
  assert.ok(read.ok, read.ok ? '' : JSON.stringify(read.problems));
  const { workshop, date, version } = inventedHead;
  const asked: SheetAsked = {
    car: read.car,
    wheel: LEFT,
    at: { travel: 0, rack: 0 },
    workshop,
    date,
    version,
    paper: 'A4',
    speech: 'mm-N',
    ...more,
  };
  return sheetPages('bar-order', asked);
}

const refused = (changes: Spoilt): string => {
  const answer = ordered(changes);
  assert.ok(!answer.made);
  return answer.message;
};

test('a bar preset for the other side is not ordered, nor one whose hand is not known', () => {
  // common practice, no source: left and right bars of a car are of opposite hands and do not change places
  const preset = ['front', 'left', 'bar', 'preset'];
  assert.match(
    refused([{ path: preset, value: 'for the right side' }]),
    /preset for the right side.*own side only/,
  );
  const anchor = ['front', 'left', 'points', 'barAnchor'];
  assert.match(refused([{ path: anchor, value: null }]), /barAnchor/);
  const guess = { is: '-300.0, 120.0, 420.0 mm', with: 'estimate' };
  assert.match(refused([{ path: anchor, value: guess }]), /estimate/);
  const free = ordered([
    { path: anchor, value: null },
    { path: preset, value: 'not preset' },
  ]);
  assert.ok(free.made);
  assert.match(wordsOf(free.document), /NOT PRESET/);
});

test('the demo bar is ordered without a word against it, and one a fifth as long not at all', () => {
  const sound = ordered([]);
  assert.ok(sound.made);
  assert.doesNotMatch(wordsOf(sound.document), /Not to be made|no bump stop/);
  // right: measured rate in the file, near the one from the dimensions
  const right = ordered([], { wheel: RIGHT });
  assert.ok(right.made);
  assert.match(wordsOf(right.document), /Rate measured on the bar in the car 39\.60/);
  // the twist is the car's: τ = G φ d/2L (Gere 7th ed., section 3.3) makes a short bar's stress the higher one
  assert.match(
    refused([{ path: ['front', 'left', 'bar', 'parallelLength'], value: '80 mm' }]),
    /is not ordered: at full bump/,
  );
});

test('without a damper the order says that the end of the linkage was taken, or is refused with that word', () => {
  const answer = ordered([
    { path: ['front', 'left', 'damper'], value: null },
    { path: ['front', 'right', 'damper'], value: null },
  ]);
  const words = answer.made ? wordsOf(answer.document, 'bold') : answer.message;
  assert.match(words, /no bump stop/);
});

for (const paper of ['A4', 'Letter'] as const) {
  test(`${paper}: the order is on one sheet and the test on receipt on the next`, () => {
    for (const speech of ['mm-N', 'in-lbf'] as const) {
      // the right-hand bar has a measured rate as well, and both are twisted backwards at droop
      for (const wheel of [LEFT, RIGHT]) {
        const answer = ordered([], { paper, speech, wheel });
        assert.ok(answer.made);
        const { document } = answer;
        const [first, second, ...more] = document.pages.map((page) =>
          wordsOf({ ...document, pages: [page] }),
        );
        assert.equal(more.length, 0, `${speech} ${wheel.side}`);
        assert.match(first!, /Energy held at full bump/);
        assert.doesNotMatch(first!, /Test on receipt/);
        assert.match(second!, /Test on receipt/);
      }
    }
  });
}
