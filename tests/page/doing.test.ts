/** What the car is doing, typed, taken from a log, and kept in the car file: the page against the questions themselves. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { after, before, describe, test } from 'node:test';
import type { Page } from 'playwright-core';
import {
  type Car,
  type Doing,
  loadsOf,
  openCar,
  STANDING,
  slideRange,
  usualDoing,
} from '../../src/questions/index.ts';
import { NO_BROWSER, openPage, openWorkshop, pageAt, type Workshop } from './browser.ts';

const g = 9.80665;

describe('what the car is doing', { skip: NO_BROWSER }, () => {
  let workshop: Workshop;
  before(async () => {
    workshop = await openWorkshop();
  });
  after(() => workshop?.close());

  const file = (): string => readFileSync(join(workshop.home, 'fenwold-201/car.yaml'), 'utf8');
  const demoCar = (): Car => {
    const read = openCar({ text: file() });
    assert.ok(read.ok);
    return read.car;
  };
  const rodUnder = (doing: Partial<Doing>): number => {
    const is = loadsOf(
      demoCar(),
      { ...STANDING, ...doing },
      { spread: false, wheels: [{ end: 'front', side: 'left' }] },
    );
    assert.ok(is.reached);
    return is.wheels[0]!.figures.find(({ id }) => id === 'tension.rod')!.value;
  };
  /** With its ± a figure has other digits than without, so it is read as a number. */
  const shown = async (page: Page, expected: number): Promise<void> => {
    const rod = page.locator('#card .figure-row', { hasText: 'force along the pushrod' }).first();
    await rod.waitFor();
    const until = Date.now() + 20_000;
    let text = '';
    while (Date.now() < until) {
      text = (await rod.locator('.row-value').textContent()) ?? '';
      const number = /−?[\d\s]+(\.\d+)?/.exec(text)?.[0]?.replace(/\s/g, '').replace('−', '-');
      if (Math.abs(Number(number) - expected) <= 0.005 * Math.abs(expected)) return;
      await page.waitForTimeout(50);
    }
    assert.fail(`${expected} N is not shown: ${text}`);
  };

  test('accelerations and a tyre force are typed, stand in the address, and are kept as a case of the file', async () => {
    const page = await pageAt(workshop, '?car=fenwold-201&stop=links&card=loads&doing=cornering');
    await page.getByText('In figures').click();
    const lateral = page.getByRole('textbox', { name: 'sideways, to the left positive, g' });
    assert.equal(await lateral.inputValue(), '2.00');
    await lateral.fill('-1.4');
    await lateral.press('Enter');
    const { speed } = usualDoing('cornering')!.doing;
    await shown(page, rodUnder({ lateral: -1.4 * g, speed }));
    // another unit, and a slip told
    await lateral.fill('-1.2 m');
    await lateral.press('Enter');
    await page.getByRole('alert').filter({ hasText: 'does not measure this' }).waitFor();
    await lateral.press('Escape');
    const up = page.getByRole('textbox', { name: 'front left, up, N' });
    await up.fill('5.2 kN');
    await up.press('Enter');
    await page.getByRole('textbox', { name: 'front left, forward, N' }).fill('-2500');
    await page.getByRole('textbox', { name: 'front left, forward, N' }).press('Enter');
    const contacts = { frontLeft: { up: 5200, forward: -2500 } };
    await shown(page, rodUnder({ lateral: -1.4 * g, speed, contacts }));
    await page.waitForURL(/typed=/);
    await page.reload();
    await shown(page, rodUnder({ lateral: -1.4 * g, speed, contacts }));
    await page.getByText('In figures').click();
    await page.getByRole('textbox', { name: 'keep it in the car file as' }).fill('long right');
    await page.getByRole('button', { name: 'keep the case' }).click();
    await page.getByRole('button', { name: 'long right', pressed: true }).waitFor();
    assert.match(file(), /long right:/);
    assert.match(file(), /lateral: -1\.4 g/);
    assert.match(file(), /up: 5200 N/);
    await shown(page, rodUnder({ lateral: -1.4 * g, speed, contacts }));
    assert.deepEqual(page.complaints, []);
  });

  test('a slider over the case: figures follow a hand that does not rest, and their ± with them', async () => {
    const page = await pageAt(workshop, '?car=fenwold-201&stop=links&card=loads&doing=braking');
    await page.getByText('In figures').click();
    const slider = page.getByRole('slider', { name: 'slide sideways, to the left positive' });
    await slider.focus();
    const rod = page.locator('#card .figure-row', { hasText: 'force along the pushrod' }).first();
    const told = rod.locator('.row-value');
    const { doing } = usualDoing('braking')!;
    // a step each twentieth of a second is never a rest, so that only the slider's own ± can come
    const moved = async (): Promise<{ at: number; text: string }> => {
      for (let k = 0; k < 400; k += 1) {
        await slider.press(k % 20 < 10 ? 'ArrowRight' : 'ArrowLeft');
        const text = (await told.textContent()) ?? '';
        if (text.includes('±')) return { at: Number(await slider.inputValue()), text };
        await page.waitForTimeout(50);
      }
      throw new Error('no ± came while the slider moved');
    };
    const { at, text } = await moved();
    const { low, step } = slideRange(demoCar(), 'lateral', 0);
    assert.ok(at * step >= low);
    const force = rodUnder({ ...doing, lateral: at * step });
    assert.match(text, new RegExp(`^−${Math.abs(force).toFixed(0)} ± \\d+ N$`));
    // in full at rest, and typed into the address
    const rest = loadsOf(
      demoCar(),
      { ...doing, lateral: at * step },
      { wheels: [{ end: 'front', side: 'left' }] },
    );
    assert.ok(rest.reached);
    const { spread } = rest.wheels[0]!.figures.find(({ id }) => id === 'tension.rod')!;
    await told.filter({ hasText: `± ${spread!.u.toFixed(0)} N` }).waitFor();
    await page.waitForURL(/typed=/);
    assert.deepEqual(page.complaints, []);
  });

  test('a row of the log by its hardest moment and by its time; a row with a gap is told', async () => {
    const page = await pageAt(workshop, '?car=fenwold-201&stop=links&card=loads');
    await page.getByText('A row of a log').click();
    await page.getByRole('button', { name: 'lap', exact: true }).click();
    await page.getByText('0.40 s are missing before line 490').waitFor();
    await page.getByRole('button', { name: 'hardest left' }).click();
    await page.locator('.doing-means', { hasText: 'line 426' }).waitFor();
    const cells = readFileSync(join(workshop.home, 'fenwold-201/lap.csv'), 'utf8')
      .split('\n')[425]!
      .split(',')
      .map(Number);
    await shown(
      page,
      rodUnder({
        speed: cells[1]! / 3.6,
        longitudinal: cells[2]! * g,
        lateral: cells[3]! * g,
        vertical: (cells[4]! - 1) * g,
        rack: cells[5]! / 1000,
      }),
    );
    const time = page.getByRole('textbox', { name: 'time in the log, s' });
    await time.fill('47.1');
    await time.press('Enter');
    await page.getByText('has no number for sideways acceleration').waitFor();
    assert.deepEqual(page.complaints, []);
  });

  test('an address with a case that is none, or with rubbish typed, is told and harms nothing', async () => {
    const page = await openPage(
      workshop,
      '?car=fenwold-201&stop=links&card=loads&doing=__proto__&typed={"lateral":"x","contacts":{"frontLeft":{"up":-5}}}',
    );
    await page.getByText('This car has no case "__proto__"').waitFor();
    await shown(page, rodUnder({}));
    assert.deepEqual(page.complaints, []);
    await page.context().close();
  });
});
