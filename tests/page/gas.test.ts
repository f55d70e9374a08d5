/** The gas path on the page: a set is found beside it, looked at pipe by pipe, kept over a reload, and saved. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { after, before, describe, test } from 'node:test';
import type { Page } from 'playwright-core';
import { eased } from '../../src/gaspath/relax.ts';
import {
  easePrimaries,
  findSets,
  openCar,
  primariesBreaches,
  primariesHolding,
  primariesProblem,
  primariesSet,
  readPrimaries,
} from '../../src/questions/index.ts';
import { DESK, goTo, NO_BROWSER, openPage, openWorkshop, PHONE, type Workshop } from './browser.ts';

/** Without a survey and a scan, so that the page stands at once. */
const CAR = 'fenwold-201';
const SCANNED = 'ashgarth-501';
const ADDRESS = `?car=${CAR}&way=gas`;

describe('the gas path on the page', { skip: NO_BROWSER }, () => {
  let workshop: Workshop;
  /** One page for what follows on one another: the car of this way is read for some seconds. */
  let desk: Awaited<ReturnType<typeof openPage>>;
  before(async () => {
    workshop = await openWorkshop();
    desk = await openPage(workshop, ADDRESS);
  });
  after(() => workshop?.close());

  const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });

  async function found(page: Page): Promise<void> {
    await button(page, 'Find a set').click();
    await page.getByText('Nothing more is gained by small changes.').waitFor({ timeout: 60_000 });
  }

  test('found, four pipes of 590.0 mm; saved, it is the set that the check lets through', async () => {
    const page = desk;
    await found(page);
    assert.match((await page.locator('#card').textContent())!, /590\.0 mm/);
    assert.equal(await page.locator('.pipes tbody tr').count(), 4);
    const download = page.waitForEvent('download');
    await page.getByRole('link', { name: 'Save this set' }).click();
    const set = readPrimaries(readFileSync((await (await download).path())!, 'utf8'));
    assert.ok(set.ok);
    const opened = openCar({ text: readFileSync(join(workshop.home, CAR, 'car.yaml'), 'utf8') });
    assert.ok(opened.ok);
    const put = primariesProblem(opened.car, 'left', []);
    assert.ok(put.reached);
    const { breaches, order, pipes } = primariesSet(put.problem, put.cylinders, set.solution);
    assert.deepEqual(breaches, []);
    // the page shows what the file holds
    const rows = await page.locator('.pipes tbody tr').allTextContents();
    pipes.forEach(({ cylinder, inlet, bends }, k) => {
      assert.ok(rows[k]!.startsWith(`${cylinder}${inlet}${bends}`), rows[k]);
    });
    await page.locator('[data-stop="collector"]').click();
    await page.getByText(order.map(({ inlet }) => inlet).join(' – ')).waitFor();
    assert.deepEqual(page.complaints, []);
    const sheets = page.waitForEvent('download');
    await button(page, 'Save its sheets').click();
    const pdf = await sheets;
    assert.equal(pdf.suggestedFilename(), `${CAR}-primaries-left.pdf`);
    assert.ok(readFileSync((await pdf.path())!, 'latin1').startsWith('%PDF-'));
  });

  test('what the set holds in the car is told; asked of less, a set is found anew', async () => {
    const page = desk;
    await page.locator('[data-stop="primaries"]').click();
    await page.getByText('Held: gaps hot, a tool on every nut, slip joints long enough, a way off').waitFor();
    await button(page, 'Look at it hot, at its nuts, and how it comes off').click();
    await page.getByText('A tool on every nut: held.').waitFor({ timeout: 60_000 });
    await page.getByText('A way off with the engine in: held.').waitFor();
    const tools = await page.locator('.nuts tbody tr').allTextContents();
    assert.equal(tools.length, 8);
    for (const row of tools) assert.match(row, /ring spanner \d+° of swing|socket goes on/);
    await page.getByLabel('a tool on every nut').uncheck();
    await page.getByText('What a set must hold was changed since this one was found.').waitFor();
    await found(page);
    await page.getByText('Held: gaps hot, slip joints long enough').waitFor();
    await page.getByLabel('a tool on every nut').check();
    await found(page);
    await page.getByText('Held: gaps hot, a tool on every nut').waitFor();
    assert.deepEqual(page.complaints, []);
  });

  test('a page that is loaded again has the set, and the other bank its own', async () => {
    const page = desk;
    await page.locator('[data-stop="primaries"]').click();
    const before = await page.locator('.pipes tbody').textContent();
    // the address follows the page a moment later
    await page.waitForURL((url) => !url.search.includes('gas=collector'));
    await page.reload();
    await page.locator('.pipes tbody').waitFor();
    assert.equal(await page.locator('.pipes tbody').textContent(), before);
    await button(page, 'right bank').click();
    await button(page, 'Find a set').waitFor();
    assert.equal(await page.locator('.pipes').count(), 0);
    await page.waitForURL((url) => url.search.includes('bank=right'));
    await page.goBack();
    await page.locator('.pipes tbody').waitFor();
  });

  test('on a phone nothing runs out of the paper, and one pipe is shown alone', async () => {
    const page = desk;
    await page.setViewportSize(PHONE);
    await page.locator('.pipes tbody').waitFor();
    await button(page, 'Cylinder 3: show this pipe alone').click();
    await page.locator('.balloon[data-lit="true"]').waitFor();
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    assert.ok(wide <= PHONE.width, `${wide} px wide`);
    await page.setViewportSize(DESK);
  });

  test('another set beside the first, weighed as the engine weighs them; the chosen one is drawn, also after a reload', async () => {
    const page = desk;
    const pipes = page.locator('.pipes:not(.sets) tbody');
    const first = await pipes.textContent();
    await button(page, 'Another set').click();
    const rows = page.locator('.sets tbody tr');
    await rows.nth(1).waitFor({ timeout: 60_000 });
    await page.getByText('Nothing more is gained by small changes.').waitFor({ timeout: 60_000 });
    assert.notEqual(await pipes.textContent(), first);
    const opened = openCar({ text: readFileSync(join(workshop.home, CAR, 'car.yaml'), 'utf8') });
    assert.ok(opened.ok);
    const put = primariesProblem(opened.car, 'left', []);
    assert.ok(put.reached);
    // on one thread here, on as many as the machine has there
    const holds = primariesHolding(opened.car, 'left', [], put)!;
    const finding = findSets(put, { seed: 1, sets: 2, holds });
    while (finding.advance() !== 'done');
    const told = await rows.allTextContents();
    finding.sets().forEach(({ number, spare, bends, welds }, k) => {
      const room = spare === undefined ? 'nothing near' : `${(1000 * spare).toFixed(1)} mm`;
      assert.match(told[k]!.replace(' ↓', ''), new RegExp(`^${number}${room}${bends}.*°${welds}$`));
    });
    await page.getByRole('button', { name: /^Set 1/ }).click();
    await page.waitForFunction(
      (text) => document.querySelector('.pipes:not(.sets) tbody')?.textContent === text,
      first,
    );
    await page.reload();
    await rows.nth(1).waitFor();
    assert.equal(await pipes.textContent(), first);
    assert.equal(await page.getByRole('button', { name: /^Set 1/ }).getAttribute('aria-pressed'), 'true');
  });

  test('a car without an exhaust is told what to write; a scan that is away is told', async () => {
    const page = desk;
    await goTo(page, '?car=pellmoor-7b&way=gas');
    await page.getByText('The car file tells no exhaust').waitFor();
    const refused = await page.request.get(`${workshop.url}api/cars/${SCANNED}/scans/car.yaml`);
    assert.equal(refused.status(), 404);
    const { rmSync, writeFileSync } = await import('node:fs');
    const file = join(workshop.home, SCANNED, 'cover.stl');
    const bytes = readFileSync(file);
    rmSync(file);
    try {
      await goTo(page, `?car=${SCANNED}&way=gas`);
      await page.getByRole('alert').filter({ hasText: 'no file "cover.stl"' }).waitFor();
      writeFileSync(file, bytes.subarray(0, 5000));
      await page.reload();
      await page
        .getByRole('alert')
        .filter({ hasText: 'The file says 7150 triangles and holds 98' })
        .waitFor();
    } finally {
      writeFileSync(file, bytes);
    }
  });

  test('primaries too short for the way: told why they cannot be, and on asking what would let them', async () => {
    const spec = 'short primaries';
    const page = await openPage(workshop, `?car=${CAR}&way=gas&spec=${encodeURIComponent(spec)}`);
    await button(page, 'Find a set').click();
    await page.getByRole('heading', { name: 'It cannot be as it is given' }).waitFor();
    await button(page, 'Look for the least change that lets it fit').click();
    const read = openCar({ text: readFileSync(join(workshop.home, CAR, 'car.yaml'), 'utf8'), spec });
    assert.ok(read.ok);
    const put = primariesProblem(read.car, 'left', []);
    assert.ok(put.reached);
    const easing = easePrimaries(put, 1);
    while (easing.advance());
    const [first] = easing.found();
    assert.ok(first!.by !== undefined);
    assert.deepEqual(
      primariesBreaches(eased(put.problem, 'longer', 1000 * first!.by)!, put.cylinders, first!.solution!),
      [],
    );
    await page.getByText(first!.words).waitFor({ timeout: 60_000 });
    await page.getByText('That less would not do is not proved').waitFor({ timeout: 60_000 });
    assert.equal(await page.locator('.would-do .note, .would-do .soft').count(), easing.found().length + 1);
    assert.deepEqual(page.complaints, []);
    await page.context().close();
  });
});
