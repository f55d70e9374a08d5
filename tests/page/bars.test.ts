/** The questions at the spring: what the page shows is what the questions answer, asked as it was chosen. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { after, before, describe, test } from 'node:test';
import type { Page } from 'playwright-core';
import { type BarProposal, barForCoil, materialChoices, openCar } from '../../src/questions/index.ts';
import { NO_BROWSER, openWorkshop, pageAt, type Workshop } from './browser.ts';

const CAR = 'fenwold-201';
const WHEEL = { end: 'front', side: 'left' } as const;
/** The limits as the page's form first has them. */
const LIMITS = { boreRatio: 0, lengthFrom: 0.2, lengthTo: 0.45, diameterStep: 5e-5 } as const;

describe('bars and coils on the page', { skip: NO_BROWSER }, () => {
  let workshop: Workshop;
  before(async () => {
    workshop = await openWorkshop();
  });
  after(() => workshop?.close());

  const answered = (asked: Parameters<typeof barForCoil>[2]): BarProposal => {
    const read = openCar({ text: readFileSync(join(workshop.home, CAR, 'car.yaml'), 'utf8') });
    assert.ok(read.ok);
    const answer = barForCoil(read.car, WHEEL, asked);
    assert.ok(answer.reached);
    return answer;
  };

  /** Coil, bar and difference of the line `wheel rate as the car stands`, N/mm. */
  const standing = async (page: Page): Promise<readonly number[]> => {
    await page.getByRole('button', { name: 'Find the bar' }).click();
    const row = page
      .getByRole('region', { name: 'Proposal' })
      .getByRole('row', { name: /^wheel rate as the car stands/ });
    await row.waitFor();
    const cells = await row.getByRole('cell').allInnerTexts();
    return cells.map((text) => Number(text.replace('−', '-')));
  };

  test('every bar material of the table may be chosen, and no wire', async () => {
    const page = await pageAt(workshop, `?car=${CAR}&stop=spring&card=ask`);
    const options = page.getByLabel('material, from the table').locator('option');
    await options.first().waitFor({ state: 'attached' });
    const offered = await options.allInnerTexts();
    assert.deepEqual(
      offered,
      materialChoices()
        .filter(({ kind }) => kind === 'bar')
        .map(({ name }) => name),
    );
  });

  test('wheel rate of coil and bar as the car stands; matched there, they are nearer', async () => {
    const page = await pageAt(workshop, `?car=${CAR}&stop=spring&card=ask`);
    const whole = await standing(page);
    const expected = answered({ material: '300M bar', match: 'the whole travel', ...LIMITS });
    // four significant digits are shown
    assert.ok(Math.abs(whole[0]! - expected.wheelRateCoilStanding / 1000) < 0.06);
    assert.ok(Math.abs(whole[1]! - expected.bars[0]!.wheelRateStanding / 1000) < 0.06);
    assert.ok(Math.abs(whole[2]! - (whole[1]! - whole[0]!)) < 0.11);
    await page.getByLabel('match the coil over').selectOption('about standing');
    const there = await standing(page);
    assert.ok(Math.abs(there[2]!) < Math.abs(whole[2]!), `${there[2]} against ${whole[2]}`);
    for (const name of ['yield in shear', 'tensile strength', 'life, assumed', 'mass']) {
      await page.getByRole('region', { name: 'Proposal' }).getByText(name).first().waitFor();
    }
    assert.deepEqual(page.complaints, []);
  });

  test('splines of both ends give a setting; of one end alone nothing is asked', async () => {
    const page = await pageAt(workshop, `?car=${CAR}&stop=spring&card=ask`);
    await page.getByLabel(/^spline teeth, rocker end/).fill('48');
    await page.getByText('Give the teeth of both ends').waitFor();
    assert.equal(await page.getByRole('button', { name: 'Find the bar' }).isDisabled(), true);
    await page.getByLabel('spline teeth, anchor end').fill('47');
    await page.getByRole('button', { name: 'Find the bar' }).click();
    const { setting } = answered({ material: '300M bar', ...LIMITS, splines: { rocker: 48, anchor: 47 } })
      .bars[0]!;
    assert.ok(setting !== undefined);
    await page.getByText(new RegExp(`rocker [+−]?${Math.abs(setting.moveFirst)} te`)).waitFor();
  });
});
