/** Words, curves and whole parts typed on the page: only what was typed changes in the file. */
import assert from 'node:assert/strict';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { after, before, describe, test } from 'node:test';
import type { Page } from 'playwright-core';
import { NO_BROWSER, type OpenPage, openWorkshop, pageAt, type Workshop } from './browser.ts';

const CAR = 'fenwold-201';

/** Lines that differ, as `old → new`. */
function changedLines(before: string, after: string): readonly string[] {
  const [old, now] = [before.split('\n'), after.split('\n')];
  return now.flatMap((line, k) => (line === old[k] ? [] : [`${old[k]?.trim()} → ${line.trim()}`]));
}

describe('forms', { skip: NO_BROWSER }, () => {
  let workshop: Workshop;
  let file: string;
  let first: string;
  before(async () => {
    workshop = await openWorkshop();
    file = join(workshop.home, CAR, 'car.yaml');
    first = readFileSync(file, 'utf8');
  });
  after(() => workshop?.close());

  const openReadings = async (stop: string, spec = ''): Promise<OpenPage> => {
    writeFileSync(file, first);
    const page = await pageAt(workshop, `?car=${CAR}&stop=${stop}&card=readings${spec}`);
    await page.locator('.readings .field').first().waitFor();
    return page;
  };
  const part = (page: Page, path: string) => page.locator(`[data-path="${path}"]`);
  const keep = async (page: Page, path: string): Promise<void> => {
    await part(page, path).getByRole('button', { name: 'Keep' }).click();
    await part(page, path).locator('form').waitFor({ state: 'detached' });
  };

  test('one figure of a damper curve: the row says the new one, and no other line of the file moves', async () => {
    const page = await openReadings('spring');
    const curve = part(page, 'front.left.damper.curve');
    await curve.getByRole('button', { name: /^Measure again/ }).click();
    const place = curve.getByLabel('row 3, bump');
    assert.equal(await place.inputValue(), '', 'the old figure stands beside and is not filled in');
    await place.fill('435');
    await page.reload();
    assert.equal(await place.inputValue(), '435', 'typing outlives the page');
    await keep(page, 'front.left.damper.curve');
    await curve.getByText('435 N').waitFor();
    assert.deepEqual(changedLines(first, readFileSync(file, 'utf8')), [
      '- { velocity: 60 mm/s, bump: 420 N, rebound: 760 N } → - { velocity: 60 mm/s, bump: 435 N, rebound: 760 N }',
    ]);
    assert.deepEqual(page.complaints, []);
  });

  test('a row more and a row less in a curve; what cannot be read is told by its row', async () => {
    const page = await openReadings('spring');
    const path = 'front.left.damper.curve';
    const curve = part(page, path);
    await curve.getByRole('button', { name: /^Measure again/ }).click();
    await curve.getByRole('button', { name: 'one more row' }).click();
    await curve.getByLabel('row 6, velocity').fill('400');
    await curve.getByLabel('row 6, bump').fill('1,1');
    await curve.getByRole('button', { name: 'Keep' }).click();
    await curve
      .getByRole('alert')
      .getByText(/Row 6, force in bump.*comma/)
      .waitFor();
    await curve
      .getByRole('alert')
      .getByText(/Row 6, force in rebound.*nothing stands here/)
      .waitFor();
    assert.equal(readFileSync(file, 'utf8'), first);
    await curve.getByLabel('row 6, bump').fill('1100');
    await curve.getByLabel('row 6, rebound').fill('1.95 kN');
    await curve.getByRole('button', { name: 'take row 4 out' }).click();
    await keep(page, path);
    await curve.getByText('1.95 kN').waitFor();
    assert.equal(await curve.getByText('130 mm/s').count(), 0);
    assert.equal(await curve.locator('tbody tr').count(), 5);
  });

  test('within a spec a curve is written among its changes, and the file itself keeps its own', async () => {
    const spec = /\n {2}(\S[^\n:]*):\n/
      .exec(first.slice(first.indexOf('\nspecs:')))?.[1]
      ?.replaceAll(/['"]/g, '');
    assert.ok(spec !== undefined);
    const page = await openReadings('spring', `&spec=${encodeURIComponent(spec)}`);
    await page.getByText(`the changes of the spec "${spec}"`).waitFor();
    const path = 'front.left.damper.curve';
    await part(page, path)
      .getByRole('button', { name: /^Measure again/ })
      .click();
    await part(page, path).getByLabel('row 2, bump').fill('205');
    await keep(page, path);
    const now = readFileSync(file, 'utf8');
    assert.equal(now.slice(0, now.indexOf('\nspecs:')), first.slice(0, first.indexOf('\nspecs:')));
    assert.match(now.slice(now.indexOf('\nspecs:')), /bump: 205 N/);
  });

  test('a part that the file does not have: what it must say is asked at once, and it is kept as one', async () => {
    const page = await openReadings('spring');
    assert.equal(await page.getByRole('button', { name: 'Add: heave spring' }).count(), 1);
    await page.getByRole('button', { name: 'Add: heave spring' }).click();
    const heave = part(page, 'front.heave');
    await heave.getByRole('button', { name: 'Keep' }).click();
    await heave.getByText('rate of the heave spring: nothing was typed.').waitFor();
    await heave.getByLabel('rate of the heave spring').fill('150');
    await heave.getByLabel(/^gap before the heave spring/).fill('4 mm ± 0.1 mm');
    await heave.getByLabel('by', { exact: true }).fill('R. Vance');
    await heave.getByRole('button', { name: 'Keep' }).click();
    await part(page, 'front.heave.rate').getByText('150 N/mm').waitFor();
    await part(page, 'front.heave.gap').getByText('4 mm ± 0.1 mm').waitFor();
    assert.match(readFileSync(file, 'utf8'), /R\. Vance/);
    assert.deepEqual(page.complaints, []);
  });

  test('the material is one of the table, of the right form', async () => {
    const page = await openReadings('spring');
    const material = part(page, 'front.left.coil.material');
    await material.getByRole('button', { name: /^(Change|Say)/ }).click();
    const names = await material.locator('option').allInnerTexts();
    assert.ok(names.length > 3 && names.every((name) => !/ bar$/.test(name)), names.join(', '));
  });
});
