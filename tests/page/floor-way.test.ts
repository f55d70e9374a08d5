/** The flat floor on the page: readings at the wheels, a sheet read by the number pad in the order of the work, kept, and what to change. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { after, before, describe, test } from 'node:test';
import type { Locator } from 'playwright-core';
import { LOAD_PATH } from '../../src/questions/figure.ts';
import { openCar, solveSetUp } from '../../src/questions/index.ts';
import { NO_BROWSER, openPage, openWorkshop, PHONE, type Workshop } from './browser.ts';

const CAR = 'fenwold-201';
const ADDRESS = `?car=${CAR}&way=floor`;

describe('the flat floor on the page', { skip: NO_BROWSER }, () => {
  let workshop: Workshop;
  let page: Awaited<ReturnType<typeof openPage>>;
  before(async () => {
    workshop = await openWorkshop();
    page = await openPage(workshop, ADDRESS);
  });
  after(() => workshop?.close());

  const press = (name: string) => page.getByRole('button', { name, exact: true }).click();
  const fileText = (): string => readFileSync(join(workshop.home, CAR, 'car.yaml'), 'utf8');

  test('weights stand at the wheels as the file has them, and the cross weight is that of right front and left rear', async () => {
    const read = openCar({ text: fileText() });
    assert.ok(read.ok);
    const { weight } = Object.values(read.car.form.floor!.read!)[0]!.readings;
    const kg = [weight!.frontLeft, weight!.frontRight, weight!.rearLeft, weight!.rearRight].map(
      (each) => each!.value,
    );
    await page.locator('.patch-label').nth(3).waitFor();
    const labels = await page.locator('.patch-label').allTextContents();
    kg.forEach((value, k) => {
      assert.ok(labels[k]!.startsWith(`${value.toFixed(1)} kg`), labels[k]);
    });
    const cross = (100 * (kg[1]! + kg[2]!)) / kg.reduce((a, b) => a + b);
    assert.ok((await page.locator('.patch-middle').textContent())!.includes(`cross ${cross.toFixed(1)} %`));
  });

  test('what to change is what the engine solves, told at the wheels and on the card', async () => {
    await page.locator('[data-stop="changes"]').click();
    await page.getByRole('heading', { name: 'What will then be read' }).waitFor({ timeout: 60_000 });
    const read = openCar({ text: fileText() });
    assert.ok(read.ok);
    const answer = solveSetUp(read.car);
    assert.ok(answer.reached && answer.moves.length > 0);
    const told = await page.locator('.moves li').allTextContents();
    assert.deepEqual(
      told,
      answer.moves.map(({ adjuster, words }) => `${adjuster}: ${words}`),
    );
    const atWheels = await page.locator('.patch-label p').allTextContents();
    answer.moves.forEach(({ adjuster }, k) => {
      const name = adjuster.split(' ').slice(2).join(' ');
      assert.ok(
        atWheels.some((text) => text.startsWith(`${k + 1}. ${name} `)),
        `${k + 1}. ${adjuster}: ${atWheels.join(' | ')}`,
      );
    });
    assert.deepEqual(page.complaints, []);
  });

  test('the set-up sheet is printed from any stop, the adjustment card from the changes', async () => {
    const asked: readonly [string, RegExp][] = [
      ['Print the adjustment card', /sheets\/adjustments\?paper=A4/],
      ['Print the set-up sheet', /sheets\/set-up\?paper=A4/],
    ];
    for (const [words, address] of asked) {
      const href = await page
        .getByRole('link', { name: words })
        .evaluate((each: HTMLAnchorElement) => each.href);
      assert.match(href, address);
      const answer = await page.request.get(href);
      assert.equal(answer.headers()['content-type'], 'application/pdf', words);
    }
    await page.locator('[data-stop="weights"]').click();
    await page.getByRole('link', { name: 'Print the set-up sheet' }).waitFor();
    assert.equal(await page.getByRole('link', { name: 'Print the adjustment card' }).count(), 0);
  });

  /** What is asked and the key that goes on are both seen, whatever was scrolled before. */
  const inView = async (what: Locator): Promise<void> => {
    const box = (await what.boundingBox())!;
    const bar = (await page.locator('nav.line').boundingBox())!;
    assert.ok(box.y >= 0 && box.y + box.height <= bar.y + 1, JSON.stringify({ box, bar }));
  };

  test('on a phone a sheet is read one number at a time, nothing filled in; kept over a reload, then in the car file', async () => {
    await page.setViewportSize(PHONE);
    await page.locator('[data-stop="weights"]').click();
    await press('as set');
    await press('It is so');
    const number = page.getByRole('textbox', { name: 'pressure, front left, bar' });
    assert.equal(await number.inputValue(), '');
    // a step starts from what was typed, and from nothing else
    assert.equal(await page.getByRole('button', { name: 'more by 0.01 bar' }).isDisabled(), true);
    for (const key of ['1', 'point', '4', '2']) await press(key);
    await press('more by 0.01 bar');
    assert.equal(await number.inputValue(), '1.43');
    await press('Next');
    await page.reload();
    await page.getByRole('textbox', { name: 'pressure, front right, bar' }).waitFor();
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    assert.ok(wide <= PHONE.width, `${wide} px wide`);
    // a number that is none is told before it goes on
    await page.getByRole('textbox', { name: 'pressure, front right, bar' }).fill('1.4.2');
    assert.equal(await page.getByRole('button', { name: 'Next', exact: true }).isDisabled(), true);
    await page.getByRole('textbox', { name: 'pressure, front right, bar' }).fill('');
    // what nobody read or counted is passed over; the lock nuts are not so, and the clicks and wings are typed
    const passed = ['Not read; next', 'Nothing was moved', 'It is so'] as const;
    const says = page.locator('.hold-says');
    const order: string[] = [];
    for (
      let k = 0;
      k < 60 && (await page.getByRole('button', { name: 'Keep the sheet' }).count()) === 0;
      k++
    ) {
      const heading = (await page.locator('.reading-now h3').textContent())!;
      order.push((await says.count()) > 0 ? (await says.textContent())! : heading);
      if (heading === 'Clicks of the dampers') {
        await press('full hard');
        await page.getByLabel('bump, front left').fill('7.5');
        assert.equal(await page.getByRole('button', { name: 'Next', exact: true }).isDisabled(), true);
        await page.getByLabel('bump, front left').fill('7');
        await page.getByLabel('rebound, rear right').fill('11');
        await press('Next');
      } else if (heading === 'Wings') {
        await page.getByLabel('front, °').fill('10.5');
        await press('Next');
      } else if (order.at(-1)!.startsWith('Every lock nut')) await press('It is not; go on all the same');
      else {
        for (const name of passed) {
          const button = page.getByRole('button', { name, exact: true });
          if ((await button.count()) === 0) continue;
          await button.click();
          break;
        }
      }
    }
    // the order of the work: common practice, no source
    const inOrder = [
      /rack/,
      /Drop links .* off/,
      /rolled off and on, or bounced/,
      /^height/,
      /^caster/,
      /^camber/,
      /^toe .* rear left/,
      /^toe .* front left/,
      /Bump steer/,
      /^weight/,
      /moved since/,
      /^droop/,
      /no preload/,
      /lock nut/,
      /^Clicks/,
      /^Wings/,
    ].map((each) => order.findIndex((step) => each.test(step)));
    assert.ok(inOrder[0]! >= 0);
    assert.deepEqual(
      inOrder,
      [...inOrder].sort((a, b) => a - b),
      order.join(' | '),
    );
    assert.match((await page.locator('.not-so .caution').textContent())!, /Not so: Every lock nut/);
    // what the solved set-up told is ticked one by one
    const solved = openCar({ text: fileText() });
    assert.ok(solved.ok);
    const moves = solveSetUp(solved.car);
    assert.ok(moves.reached);
    const done = moves.moves[0]!;
    await page.locator('.moves-done').getByRole('checkbox').first().check({ timeout: 60_000 });
    // the last sheet's floor is offered and not filled in
    const place = page.getByLabel('floor or patch');
    assert.equal(await place.inputValue(), '');
    await press('Take floor and instruments from “as found, 11 May”');
    assert.equal(await place.inputValue(), 'bay 2, the patch by the lathe');
    await page.getByLabel('pressure gauge, by its name').fill('short gauge');
    await page.getByLabel('air, °C').fill('21');
    await page.getByLabel('read by').fill('Tarn');
    await page.getByLabel('keep it in the car file as').fill('as set, after lunch');
    await press('Keep the sheet');
    await page.waitForURL((url) => url.search.includes('floor=changes'));
    const kept = openCar({ text: fileText() });
    assert.ok(kept.ok);
    const sheet = kept.car.form.floor!.read!['as set, after lunch']!;
    assert.equal(sheet.state, 'as set');
    assert.equal(sheet.by, 'Tarn');
    assert.equal(sheet.bars, 'disconnected');
    assert.ok(Math.abs(sheet.pressure!.frontLeft!.value - 143_000) < 1e-6);
    assert.equal(sheet.pressure!.frontLeft!.instrument, 'short gauge');
    assert.equal(kept.car.form.instruments!['short gauge']!.class, 'pressure gauge');
    assert.deepEqual(sheet.notSo, ['locks']);
    assert.deepEqual(Object.keys(sheet.moved!), [done.adjuster]);
    assert.ok(Math.abs(sheet.moved![done.adjuster]! - done.units) < 1e-6);
    assert.deepEqual(sheet.clicks, { from: 'full hard', frontLeft: { bump: 7 }, rearRight: { rebound: 11 } });
    assert.ok(Math.abs(sheet.wings!.front! - (10.5 * Math.PI) / 180) < 1e-12);
    assert.ok(Math.abs(sheet.airTemperature! - 294.15) < 1e-9);
    assert.equal(sheet.place, 'bay 2, the patch by the lathe');
    // told beside what is worked out from it
    await page.getByText('the car does not roll before every one is tight').waitFor({ timeout: 60_000 });
    assert.deepEqual(page.complaints, []);
  });

  test('a car as found is read as it came: nobody is told to undo the bars, and nothing of it is set', async () => {
    await press('as found');
    const order = page.getByRole('list', { name: 'Order of the work' });
    assert.deepEqual(
      (await order.getByRole('button').allTextContents()).filter((each) =>
        ['once more', 'bars on', 'nuts'].includes(each),
      ),
      [],
    );
    await order.getByRole('button', { name: 'rack, bars' }).click();
    await press('It is so');
    assert.match((await page.locator('.hold-says').textContent())!, /Undo nothing/);
    await press('They are on');
    // a pad that reads nothing is told before the sheet is kept, and leads back to where it is read
    await order.getByRole('button', { name: 'weights' }).click();
    await press('It is so');
    for (const kg of ['130.1', '150.7', '0', '172.7']) {
      const number = page.getByRole('textbox', { name: /^weight/ });
      await number.fill(kg);
      await inView(page.locator('.reading-step h3'));
      await inView(page.getByRole('button', { name: 'Next', exact: true }));
      await press('Next');
    }
    await order.getByRole('button', { name: 'sheet', exact: true }).click();
    await page.getByText('Cannot be used.').waitFor({ timeout: 60_000 });
    await press('read weight, rear left again');
    await page.getByRole('textbox', { name: 'weight, rear left, kg' }).fill('193.2');
    await press('Next');
    await order.getByRole('button', { name: 'sheet', exact: true }).click();
    await page.getByText('nothing in it contradicts the car').waitFor({ timeout: 60_000 });
    await page.getByLabel('keep it in the car file as').fill('found again');
    await press('throw this sheet away');
    await page.getByRole('heading', { name: 'Read the car on the pads' }).waitFor();
    assert.deepEqual(page.complaints, []);
  });

  test('arrow keys walk the line of stops with the focus, from the pads to a day out and no further than its ends', async () => {
    await page.setViewportSize({ width: 1440, height: 900 });
    await page.locator('[data-stop="changes"]').click();
    const walked = async (key: string, stops: readonly string[]): Promise<void> => {
      for (const stop of stops) {
        await page.keyboard.press(key);
        await page.locator(`[data-stop="${stop}"][aria-current="step"]`).waitFor();
        const focused = await page.evaluate(() => document.activeElement?.getAttribute('data-stop'));
        assert.equal(focused, stop);
      }
    };
    await walked('ArrowRight', ['hot-pressures', 'ratios']);
    await walked('ArrowLeft', ['hot-pressures', 'changes', 'angles', 'weights', 'heights', 'pressures']);
    await walked('ArrowLeft', ['pressures']);
    // the other two lines likewise
    await page.locator('[data-way="load"]').click();
    await page.locator('[data-stop="spring"]').focus();
    await walked('ArrowLeft', [
      LOAD_PATH[LOAD_PATH.indexOf('spring') - 1]!,
      LOAD_PATH[LOAD_PATH.indexOf('spring') - 2]!,
    ]);
    await page.locator('[data-way="gas"]').click();
    await page.locator('[data-stop="primaries"]').waitFor();
    await walked('ArrowRight', ['collector']);
    assert.deepEqual(page.complaints, []);
  });
});
