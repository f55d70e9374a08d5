/** The flat floor on the page: readings at the wheels, a sheet read by the number pad, kept, and what to change. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { after, before, describe, test } from 'node:test';
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
    assert.ok((await page.locator('.patch-label').count()) > 0);
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
    for (
      let k = 0;
      k < 60 && (await page.getByRole('button', { name: 'Keep the sheet' }).count()) === 0;
      k++
    ) {
      const skip = page.getByRole('button', { name: 'Not read; next', exact: true });
      if ((await skip.count()) > 0) await skip.click();
      else await press('It is so');
    }
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
    assert.deepEqual(page.complaints, []);
  });
});
