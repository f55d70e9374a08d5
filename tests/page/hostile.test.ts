/** What a tired, a careless or an ill-willed hand gives the page: it is told in words, and nothing is lost. */
import assert from 'node:assert/strict';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { after, before, describe, test } from 'node:test';
import { startServer } from '../../src/server/start.ts';
import {
  DESK,
  goTo,
  NO_BROWSER,
  openPage,
  openWorkshop,
  PHONE,
  pageAt,
  sheetStands,
  type Workshop,
} from './browser.ts';

const CAR = 'fenwold-201';

describe('hostile input', { skip: NO_BROWSER }, () => {
  let workshop: Workshop;
  let file: string;
  let first: string;
  before(async () => {
    workshop = await openWorkshop();
    file = join(workshop.home, CAR, 'car.yaml');
    first = readFileSync(file, 'utf8');
  });
  after(() => workshop?.close());

  test('a name of 3000 letters widens nothing, on the floor and on the sheet, desk and phone', async () => {
    writeFileSync(file, first.replace(/^( +name: ).*$/m, `$1${'W'.repeat(3000)}`));
    const page = await pageAt(workshop, '');
    for (const size of [DESK, PHONE]) {
      await page.setViewportSize(size);
      await goTo(page, '');
      await page.locator('.bay .flat').nth(2).waitFor();
      const wider = 'document.documentElement.scrollWidth - document.documentElement.clientWidth';
      const taller = '[...document.querySelectorAll(".bay")].map((bay) => bay.clientHeight)';
      assert.equal(await page.evaluate(wider), 0);
      const heights = (await page.evaluate(taller)) as number[];
      assert.ok(Math.max(...heights) < 1000, `bays are ${heights} px tall`);
      await goTo(page, `?car=${CAR}`);
      await sheetStands(page);
      assert.equal(await page.evaluate(wider), 0);
      const block = await page.getByRole('region', { name: 'Title block' }).boundingBox();
      assert.ok(block!.height < 420, `the title block is ${block!.height} px tall`);
      assert.deepEqual(page.complaints, []);
    }
    await page.setViewportSize(DESK);
    writeFileSync(file, first);
  });

  test('notes that are markup are shown as text', async () => {
    const hostile = '<script>window.broken=1</script><img src=x onerror="window.broken=1">';
    writeFileSync(file, first.replace(/(\n {4}unsprung: )([^\n#{]+)/, `$1{ is: $2, by: '${hostile}' }`));
    const page = await pageAt(workshop, `?car=${CAR}&stop=tyre&card=readings`);
    await page.getByText(hostile).first().waitFor();
    assert.equal(await page.evaluate('window.broken'), undefined);
    writeFileSync(file, first);
  });

  test('a travel that is no length is told why and moves nothing; an emptied one goes back', async () => {
    const page = await pageAt(workshop, `?car=${CAR}`);
    await sheetStands(page);
    const typed = page.getByRole('textbox', { name: 'travel, mm' });
    const cases: readonly (readonly [string, RegExp])[] = [
      ['NaN', /./],
      ['12,5', /comma/],
      ['12 kg', /./],
      ['--4', /./],
      ['<b>', /./],
    ];
    for (const [text, why] of cases) {
      await typed.fill(text);
      await typed.press('Enter');
      assert.match((await page.locator('.typed-told').textContent()) ?? '', why, text);
      await page.getByText('standing as surveyed').waitFor();
    }
    await typed.fill('');
    await typed.blur();
    assert.equal(await typed.inputValue(), '0.0');
    assert.equal(await page.locator('.typed-told').count(), 0);
    // further than any linkage goes: said, and the page stands
    await typed.fill('1e9 mm');
    await typed.press('Enter');
    await page.locator('.not-reached').waitFor();
    await page.getByRole('button', { name: 'standing' }).click();
    await page.locator('.not-reached').waitFor({ state: 'detached' });
    assert.deepEqual(page.complaints, []);
  });

  test('a reading that is no number, too large, or negative is told at the field; the file stays', async () => {
    const page = await pageAt(workshop, `?car=${CAR}&stop=tyre&card=readings`);
    const field = page.locator('[data-path="front.left.wheel.loadedRadius"]');
    await field.getByRole('button', { name: /Measure again/ }).click();
    for (const text of ['NaN', '1e9', '-300', '300,5', '', 'Infinity', '3 0 0']) {
      await field.getByLabel('new reading').fill(text);
      await field.getByRole('button', { name: 'Keep' }).click();
      await field.getByRole('alert').locator('p').first().waitFor();
      assert.equal(await field.getByLabel('new reading').inputValue(), text);
      assert.equal(readFileSync(file, 'utf8'), first, text);
      await field.getByLabel('new reading').fill('x');
    }
  });

  test('the workshop is gone while saving: a sentence says so, what was typed stays, Keep sends it again', async () => {
    const page = await openPage(workshop, `?car=${CAR}&stop=tyre&card=readings`);
    const field = page.locator('[data-path="front.left.unsprung"]');
    await field.getByRole('button', { name: /Measure again/ }).click();
    await field.getByLabel('new reading').fill('17.4');
    await page.context().setOffline(true);
    await field.getByRole('button', { name: 'Keep' }).click();
    await field.getByRole('alert').getByText('The workshop does not answer').waitFor();
    await field.getByRole('alert').getByText('What you typed is still here').waitFor();
    assert.equal(await field.getByLabel('new reading').inputValue(), '17.4');
    assert.equal(readFileSync(file, 'utf8'), first);
    await page.context().setOffline(false);
    await field.getByRole('button', { name: 'Keep' }).click();
    await field.getByText('17.4 kg').waitFor();
    assert.match(readFileSync(file, 'utf8'), /17\.4 kg/);
    writeFileSync(file, first);
    await page.context().close();
  });

  test('the workshop stops and starts again: the sheet stays, says so, and takes the changes in by itself', async () => {
    const { home, web } = workshop;
    const gone = await startServer({ home, port: 0, web });
    const port = Number(new URL(gone.url).port);
    const page = await openPage({ ...workshop, url: gone.url }, `?car=${CAR}&stop=tyre&card=readings`);
    await page.locator('[data-path="front.left.unsprung"]').waitFor();
    await gone.close();
    const away = page.getByRole('region', { name: 'Title block' }).getByText('The workshop does not answer');
    await away.waitFor();
    await page.getByRole('heading', { name: 'Tyre, front left' }).waitFor();
    writeFileSync(file, first.replace(/(\n {4}unsprung: )\d[\d.]*/, '$117.9'));
    const back = await startServer({ home, port, web });
    await page.locator('[data-path="front.left.unsprung"]').getByText('17.9').waitFor();
    await away.waitFor({ state: 'detached' });
    await page.context().close();
    await back.close();
    writeFileSync(file, first);
  });

  test('two tabs: what one keeps the other shows by itself, and keeps what was typed there', async () => {
    const address = `?car=${CAR}&stop=tyre&card=readings`;
    const one = await pageAt(workshop, address);
    const two = await openPage(workshop, address);
    const unsprung = '[data-path="front.left.unsprung"]';
    const scale = two.locator('[data-path="front.left.scale"]');
    await scale.getByRole('button', { name: /Measure again/ }).click();
    await scale.getByLabel('new reading').fill('123.4');
    await one
      .locator(unsprung)
      .getByRole('button', { name: /Measure again/ })
      .click();
    await one.locator(unsprung).getByLabel('new reading').fill('16.8');
    await one.locator(unsprung).getByRole('button', { name: 'Keep' }).click();
    await two.locator(unsprung).getByText('16.8 kg').waitFor();
    assert.equal(await scale.getByLabel('new reading').inputValue(), '123.4');
    writeFileSync(file, first);
    await two.context().close();
  });

  test('a broken file is brought in as it is, and the page says by line what it needs', async () => {
    const page = await pageAt(workshop, '');
    await page.getByRole('button', { name: 'Add a car' }).click();
    await page.getByLabel('or paste its text').fill('flatpatch: 1\ncar:\n  name: Broken 1\nfront: 7\n');
    assert.equal(await page.getByLabel('Folder name').inputValue(), 'broken-1');
    await page.getByRole('button', { name: 'Bring it in' }).click();
    await page.getByRole('heading', { name: 'broken-1: the car file needs a hand' }).waitFor();
    assert.ok((await page.locator('.problems li').count()) > 1);
    await page.getByText('front: 7').waitFor();
    await page.getByRole('button', { name: 'Back to the floor' }).click();
    await page.getByText(/things in the file need a hand/).waitFor();
    assert.deepEqual(page.complaints, []);
  });
});
