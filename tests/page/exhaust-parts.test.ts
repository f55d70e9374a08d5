/** Several parts of an exhaust on the page: 4-2-1 and both banks found clear of each other, looked at, kept, on paper. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { after, before, describe, test } from 'node:test';
import type { Page } from 'playwright-core';
import {
  easePart,
  findParts,
  partInCar,
  partsFiled,
  partsProblem,
  readParts,
} from '../../src/questions/index.ts';
import { opened } from '../cars/opened.ts';
import { DESK, goTo, NO_BROWSER, openPage, openWorkshop, PHONE, type Workshop } from './browser.ts';

const CAR = 'fenwold-201';
const SPEC = 'four-two-one';

describe('parts of an exhaust on the page', { skip: NO_BROWSER }, () => {
  let workshop: Workshop;
  let desk: Awaited<ReturnType<typeof openPage>>;
  before(async () => {
    workshop = await openWorkshop();
    desk = await openPage(workshop, `?car=${CAR}&way=gas&spec=${SPEC}`);
  });
  after(() => workshop?.close());

  const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });

  async function saved(page: Page) {
    const download = page.waitForEvent('download');
    await page.getByRole('link', { name: 'Save these sets' }).click();
    const read = readParts(readFileSync((await (await download).path())!, 'utf8'));
    assert.ok(read.ok);
    return read.parts;
  }

  async function find(page: Page): Promise<void> {
    await button(page, 'Find all parts').click();
    await page.getByText('All parts stand, each clear of the others.').waitFor({ timeout: 120_000 });
  }

  test('4-2-1: three parts, each as the check of the saved file has it; one is looked at alone', async () => {
    const page = desk;
    await find(page);
    const parts = await saved(page);
    const filed = partsFiled(opened(CAR, { spec: SPEC }).car, parts, []);
    assert.ok(filed.reached);
    assert.deepEqual(
      filed.parts.flatMap((each) => each.breaches),
      [],
    );
    const told = await page.locator('.parts tbody tr').allTextContents();
    assert.equal(told.length, 3);
    filed.parts.forEach(({ of: { part, set } }, k) => {
      const bends = set.pipes.reduce((sum, each) => sum + each.bends, 0);
      const title = part.title.replace('left bank, ', '');
      assert.equal(told[k], `${title}${set.pipes.length}${bends}${(1000 * set.spare!).toFixed(1)} mm`);
    });
    await button(page, 'secondaries').click();
    await page.getByText('400.0 mm').waitFor();
    const [, , secondaries] = filed.parts;
    const rows = await page.locator('.pipes:not(.parts) tbody tr').allTextContents();
    secondaries!.of.set.pipes.forEach(({ pipe, inlet, bends }, k) => {
      assert.ok(rows[k]!.startsWith(`${pipe.name}${inlet}${bends}`), rows[k]);
    });
    const sheets = page.waitForEvent('download');
    await button(page, 'Save its sheets').click();
    const pdf = await sheets;
    assert.equal(pdf.suggestedFilename(), `${CAR}-primaries-left-secondaries.pdf`);
    assert.ok(readFileSync((await pdf.path())!, 'latin1').startsWith('%PDF-'));
    await button(page, 'collector 1+4').click();
    await button(page, 'Look at it hot, at its nuts, and how it comes off').click();
    const inCar = partInCar(
      filed.parts.map((each) => each.of),
      0,
      [],
    )!;
    const [worst] = inCar.hot.gaps;
    await page.locator('.gaps tbody tr').first().waitFor({ timeout: 60_000 });
    const gap = (await page.locator('.gaps tbody tr').first().textContent())!;
    assert.ok(gap.endsWith(`${(1000 * worst!.hot!).toFixed(1)} mm`), gap);
    assert.deepEqual(page.complaints, []);
  });

  test('a bend of the secondaries moved by arrow keys: the sets saved then are those, and stand', async () => {
    const page = desk;
    const before = await saved(page);
    await button(page, 'secondaries').click();
    await page.getByLabel('move bends and collector').check();
    await button(page, 'Secondary 1, bend 1').focus();
    await page.keyboard.press('ArrowUp');
    await page.locator('.hand-tells').getByText('length 400.0 mm held').waitFor();
    await page.getByText('Moved by hand since they were found.').waitFor();
    const parts = await saved(page);
    const same = parts.map((each, k) => JSON.stringify(each) === JSON.stringify(before[k]));
    assert.deepEqual(same, [true, true, false]);
    const filed = partsFiled(opened(CAR, { spec: SPEC }).car, parts, []);
    assert.ok(filed.reached);
    assert.deepEqual(
      filed.parts.flatMap((each) => each.breaches),
      [],
    );
    assert.deepEqual(page.complaints, []);
  });

  test('loaded again the same sets stand; on a phone nothing runs out of the paper', async () => {
    const page = desk;
    const before = await page.locator('.parts tbody').textContent();
    await page.reload();
    await page.locator('.parts tbody').waitFor();
    await page.getByText('Moved by hand since they were found.').waitFor();
    assert.equal(await page.locator('.parts tbody').textContent(), before);
    await page.setViewportSize(PHONE);
    await page.locator('.parts').scrollIntoViewIfNeeded();
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    assert.ok(wide <= PHONE.width, `${wide} px wide`);
    await page.setViewportSize(DESK);
  });

  test('both banks, the right one as the mirror image of the left: checked on its own side', async () => {
    const page = desk;
    await goTo(page, `?car=${CAR}&way=gas`);
    await button(page, 'both banks').click();
    await page.getByLabel('right as the mirror image of left').check();
    await find(page);
    await page.getByRole('heading', { name: 'The right bank is the mirror image' }).waitFor();
    const parts = await saved(page);
    assert.deepEqual(
      parts.map(({ bank, mirrored }) => [bank, mirrored]),
      [
        ['left', false],
        ['right', true],
      ],
    );
    const filed = partsFiled(opened(CAR).car, parts, []);
    assert.ok(filed.reached);
    assert.deepEqual(
      filed.parts.flatMap((each) => each.breaches),
      [],
    );
    assert.equal(await page.locator('.over .balloon').count(), 8);
    assert.deepEqual(page.complaints, []);
  });

  test('a length that cannot be, of both banks: told of which part, and on asking what would let it fit', async () => {
    const page = desk;
    await goTo(page, `?car=${CAR}&way=gas&both=yes&spec=${encodeURIComponent('short primaries')}`);
    await button(page, 'Find all parts').click();
    await page.getByRole('heading', { name: 'It cannot be as it is given' }).waitFor();
    await button(page, 'Look for the least change that lets it fit').click();
    const put = partsProblem(opened(CAR, { spec: 'short primaries' }).car, 'both', []);
    assert.ok(put.reached);
    const finding = findParts(put.parts, 1);
    while (finding.advance() === 'searching');
    const toEase = finding.toEase()!;
    const easing = easePart(toEase, 1);
    while (easing.advance());
    const [first] = easing.found();
    assert.ok(first!.by !== undefined);
    await page.getByText(`Of the ${toEase.part.title}, the other parts where they lie.`).waitFor();
    await page.getByText(first!.words).waitFor({ timeout: 60_000 });
    await page.getByText('That less would not do is not proved').waitFor({ timeout: 60_000 });
    assert.deepEqual(page.complaints, []);
  });
});
