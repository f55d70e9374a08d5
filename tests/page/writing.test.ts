/** What is typed on the page: kept in the file, kept through a reload, and never over another hand's change. */
import assert from 'node:assert/strict';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { after, before, describe, test } from 'node:test';
import type { Page } from 'playwright-core';
import { NO_BROWSER, openPage, openWorkshop, pageAt, type Workshop } from './browser.ts';

const CAR = 'fenwold-201';

describe('writing on the page', { skip: NO_BROWSER }, () => {
  let workshop: Workshop;
  let file: string;
  let first: string;
  before(async () => {
    workshop = await openWorkshop();
    file = join(workshop.home, CAR, 'car.yaml');
    first = readFileSync(file, 'utf8');
  });
  after(() => workshop?.close());

  const field = (page: Page) => page.locator('[data-path="front.left.unsprung"]');
  const openField = async (page: Page): Promise<void> => {
    await field(page)
      .getByRole('button', { name: /Measure again/ })
      .click();
    await field(page).getByLabel('new reading').waitFor();
  };
  const ADDRESS = `?car=${CAR}&stop=tyre&card=readings`;

  test('a reading is kept with its stamp; comments and order stay', async () => {
    writeFileSync(file, first);
    const page = await pageAt(workshop, ADDRESS);
    await openField(page);
    assert.equal(
      await field(page).getByLabel('new reading').inputValue(),
      '',
      'the old value is not filled in',
    );
    await field(page).getByLabel('new reading').fill('17.15');
    await field(page).getByLabel('± one standard uncertainty').fill('0.07');
    await field(page).getByLabel('by', { exact: true }).fill('R. Vance');
    await field(page).getByRole('button', { name: 'Keep' }).click();
    await field(page).getByText('17.15 kg ± 0.07 kg').waitFor();
    const now = readFileSync(file, 'utf8');
    assert.match(now, /17\.15 kg ± 0\.07 kg/);
    assert.match(now, /R\. Vance/);
    const comments = (text: string): number => (text.match(/#/g) ?? []).length;
    assert.equal(comments(now), comments(first));
    assert.deepEqual(page.complaints, []);
  });

  test('what cannot be is told at the field, and nothing is written', async () => {
    writeFileSync(file, first);
    const page = await pageAt(workshop, ADDRESS);
    await openField(page);
    await field(page).getByLabel('new reading').fill('16,4');
    await field(page).getByRole('button', { name: 'Keep' }).click();
    await field(page).getByRole('alert').getByText('comma').waitFor();
    await field(page).getByLabel('new reading').fill('900');
    await field(page).getByRole('button', { name: 'Keep' }).click();
    await field(page)
      .getByRole('alert')
      .getByText(/what can be is/)
      .waitFor();
    assert.equal(readFileSync(file, 'utf8'), first);
  });

  test('unsent typing is there again after a reload', async () => {
    writeFileSync(file, first);
    const page = await pageAt(workshop, ADDRESS);
    await openField(page);
    await field(page).getByLabel('new reading').fill('17.25');
    await page.reload();
    assert.equal(await field(page).getByLabel('new reading').inputValue(), '17.25');
  });

  test('a change by another hand meanwhile: both are shown, nothing is lost', async () => {
    writeFileSync(file, first);
    const page = await openPage(workshop, 'mark.svg');
    // this tab does not hear of changes, as when its connection is down
    await page.route('**/api/events', (route) => route.abort());
    await page.goto(workshop.url + ADDRESS);
    await openField(page);
    await field(page).getByLabel('new reading').fill('17.5');

    const other = await pageAt(workshop, ADDRESS);
    await openField(other);
    await field(other).getByLabel('new reading').fill('15.9');
    await field(other).getByRole('button', { name: 'Keep' }).click();
    await field(other).getByText('15.9 kg').waitFor();

    await field(page).getByRole('button', { name: 'Keep' }).click();
    const conflict = page.locator('.conflict');
    await conflict.getByText('Another hand changed this file meanwhile.').waitFor();
    await conflict.getByText('15.9 kg').waitFor();
    await conflict.getByText('17.5 kg').waitFor();
    assert.match(readFileSync(file, 'utf8'), /15\.9 kg/);
    assert.doesNotMatch(readFileSync(file, 'utf8'), /17\.5 kg/);

    await conflict.getByRole('button').click();
    assert.equal(
      await field(page).getByLabel('new reading').inputValue(),
      '17.5',
      'the typing is still there',
    );
    await field(page).getByText('another hand changed this from').waitFor();
    await field(page).getByRole('button', { name: 'Keep' }).click();
    await field(page).getByText('17.5 kg').waitFor();
    assert.match(readFileSync(file, 'utf8'), /17\.5 kg/);
    await page.context().close();
  });

  test('a bar for the coil becomes a spec of the file, and its order sheet is offered', async () => {
    writeFileSync(file, first);
    const page = await pageAt(workshop, `?car=${CAR}&stop=spring&card=ask`);
    await page.getByRole('button', { name: 'Find the bar' }).click();
    await page.getByRole('region', { name: 'Proposal' }).waitFor();
    await page.getByLabel('Keep it as a spec named').fill('bars in front');
    await page.getByRole('button', { name: 'Keep the proposal' }).click();
    await page.getByText('Kept as the spec').waitFor();
    assert.match(readFileSync(file, 'utf8'), /bars in front:/);
    const sheet = await page.getByRole('link', { name: 'Print the order sheet' }).getAttribute('href');
    assert.match(sheet!, /sheets\/bar-order\?spec=bars\+in\+front/);
    const printed = await page.request.get(workshop.url + sheet);
    assert.equal(printed.status(), 200);
    assert.match(printed.headers()['content-type']!, /pdf/);
    await page.getByRole('button', { name: /Put it beside/ }).click();
    await page.getByRole('heading', { name: /Two specs/ }).waitFor();
    assert.deepEqual(page.complaints, []);
  });
});
