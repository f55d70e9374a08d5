/** The ratio chart on paper: all that is on it lies within its border, and says what the answer says. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { paperMeasure } from '../../src/paper/pdf.ts';
import { ratiosOf } from '../../src/questions/index.ts';
import { ratioSheetOf } from '../../src/sheets/index.ts';
import { demo } from '../cars/demo.ts';
import { outsideBorder } from './outside-border.ts';

const SHEET = { workshop: 'Yard', date: '2004-05-06', version: '0', paper: 'A4', speech: 'mm-N' } as const;

for (const paper of ['A4', 'Letter'] as const) {
  test(`on ${paper}: pairs, targets, speeds; nothing outside the border`, () => {
    const car = demo('fenwold-201');
    const matter = ratiosOf(car, {
      targets: [105, 140, 175, 210, 245, 285].map((each) => each / 3.6),
      changes: 2,
    });
    assert.ok(matter.reached);
    const sheet = ratioSheetOf({ ...SHEET, paper, car, matter }, paperMeasure());
    assert.deepEqual(outsideBorder(sheet, paper, paperMeasure()), []);
    const texts = sheet.pages.flatMap(({ marks }) =>
      marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])),
    );
    for (const { text } of matter.pairs) assert.ok(texts.includes(text), text);
    assert.ok(texts.some((text) => text.includes('To change: gear')));
    assert.ok(
      texts.some((text) => text.includes('Both wheels of a pair')),
      'the caution stands on it',
    );
    assert.ok(texts.some((text) => text.startsWith('INVENTED EXAMPLE')));
  });
}

test('without a brake sheet there is no thrust diagram, and the chart stands', () => {
  const car = demo('fenwold-201');
  const { brakeSheet: _, ...engine } = car.form.engine!;
  const bare = { ...car, form: { ...car.form, engine } };
  const matter = ratiosOf(bare, {});
  assert.ok(matter.reached);
  const sheet = ratioSheetOf({ ...SHEET, car: bare, matter }, paperMeasure());
  const texts = sheet.pages.flatMap(({ marks }) =>
    marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])),
  );
  assert.ok(!texts.some((text) => text.startsWith('thrust at the ground')));
  assert.ok(texts.some((text) => text === 'engine speed, rpm'));
});
