/** Two specs side by side under a load: four studs against six, and a corner, against the questions of each spec. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { after, before, describe, test } from 'node:test';
import { jointOf, loadsOf, openCar, usualDoing } from '../../src/questions/index.ts';
import { spokenAmount } from '../../src/units/show.ts';
import { NO_BROWSER, openWorkshop, pageAt, type Workshop } from './browser.ts';

const SIX = 'proposal, six studs to the tub';
const AT = `?car=fenwold-201&against=${encodeURIComponent(SIX)}`;

describe('two specs under a load', { skip: NO_BROWSER }, () => {
  let workshop: Workshop;
  before(async () => {
    workshop = await openWorkshop();
  });
  after(() => workshop?.close());

  const spec = (name?: string) => {
    const text = readFileSync(join(workshop.home, 'fenwold-201/car.yaml'), 'utf8');
    const read = openCar({ text, ...(name === undefined ? {} : { spec: name }) });
    assert.ok(read.ok);
    return read.car;
  };

  test('four studs against six: both faces, what is left and breaks first in each, a stud that only one has', async () => {
    const page = await pageAt(workshop, `${AT}&stop=studs&doing=rear-kerb`);
    const { doing } = usualDoing('rear-kerb')!;
    for (const [name, studs] of [
      [undefined, 4],
      [SIX, 6],
    ] as const) {
      const car = spec(name);
      const answer = jointOf(car, 'engineToTub', doing, { spread: false });
      assert.ok(answer.reached);
      const told = page.locator('.differences').getByRole('region', { name: car.spec, exact: true });
      await told.getByText(answer.left).waitFor();
      for (const words of answer.breaksFirst) await told.getByText(words).waitFor();
      assert.equal(await told.locator('.face .stud').count(), studs);
      for (const { name: stud, left } of answer.face.studs) {
        const drawn = told.locator(`[aria-label="${stud}, ${spokenAmount(left, 'N', 0)} left on its pad"]`);
        assert.equal(await drawn.count(), 1, stud);
      }
    }
    const middle = page.locator('.differences tbody', { hasText: 'middle left: left on its pad, low end' });
    assert.equal(await middle.locator('td').first().textContent(), '—');
    assert.deepEqual(page.complaints, []);
  });

  test('a corner under the load: what only the joint differs by leaves it the same', async () => {
    const page = await pageAt(workshop, `${AT}&stop=links&card=loads&doing=braking`);
    const rod = page.locator('.differences tbody', { hasText: 'force along the pushrod' });
    const answer = loadsOf(spec(), usualDoing('braking')!.doing, {
      spread: false,
      wheels: [{ end: 'front', side: 'left' }],
    });
    assert.ok(answer.reached);
    const force = answer.wheels[0]!.figures.find(({ id }) => id === 'tension.rod')!.value;
    await rod.waitFor();
    assert.equal(`${await rod.locator('td').first().textContent()} N`, spokenAmount(force, 'N', 0));
    assert.equal(await rod.locator('td').nth(1).textContent(), 'same');
    // the force stands on both halves, each where its own spec stands under the load
    for (const name of ['as arrived', SIX]) {
      const half = page.locator('.half').and(page.getByRole('region', { name, exact: true }));
      const drawn = half.getByRole('img', { name: 'Forces at this stop' });
      assert.equal(await drawn.locator('.member').count(), 6, name);
      await drawn.getByText(`pushrod or pullrod: ${spokenAmount(Math.abs(force), 'N', 0)} of push`).waitFor({
        state: 'attached',
      });
    }
    // another case, chosen in the fold; by hand there is no force on the drawing
    await page.getByRole('button', { name: 'cornering', exact: true }).click();
    const cornering = loadsOf(spec(), usualDoing('cornering')!.doing, {
      spread: false,
      wheels: [{ end: 'front', side: 'left' }],
    });
    assert.ok(cornering.reached);
    const other = cornering.wheels[0]!.figures.find(({ id }) => id === 'tension.rod')!.value;
    await rod
      .getByText(spokenAmount(other, 'N', 0).replace(' N', ''), { exact: true })
      .first()
      .waitFor();
    await page.getByRole('button', { name: 'by hand' }).click();
    await page.getByRole('img', { name: 'Forces at this stop' }).first().waitFor({ state: 'detached' });
    await page.getByLabel('travel').first().waitFor();
    assert.deepEqual(page.complaints, []);
  });
});
