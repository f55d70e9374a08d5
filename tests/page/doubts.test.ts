/** What looks odd in a car is seen: on the floor, in the title block, at the stop that it concerns, on paper of words. */
import assert from 'node:assert/strict';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { after, before, describe, test } from 'node:test';
import { doubtOf } from '../../src/web/stops/doubts.ts';
import { NO_BROWSER, openWorkshop, pageAt, sheetStands, type Workshop } from './browser.ts';

const CAR = 'fenwold-201';

test('each warning is shown at the stop that its path belongs to', () => {
  const stopOf = (path: string, code = 'any/code') =>
    doubtOf({ code, path, message: '', weight: 'warning' }).stop;
  assert.equal(stopOf('front.left.wheel.loadedRadius', 'corner/off-ground'), 'tyre');
  assert.equal(stopOf('front.left.points.upperOuter'), 'upright');
  assert.equal(stopOf('rear.right.rod.kind', 'rod/kind'), 'links');
  assert.equal(stopOf('front.left.points.rodInner', 'points/inner-side'), 'rocker');
  assert.equal(stopOf('front.left.points.rockerAxis', 'rocker/turn'), 'rocker');
  assert.equal(stopOf('front.left.coil.fittedLength', 'spring/not-balanced'), 'spring');
  assert.equal(stopOf('front.left', 'wheel/rate'), 'spring');
  assert.equal(stopOf('front.left.points', 'bar/no-anchor'), 'spring');
  assert.equal(stopOf('front.left.points', 'corner/no-plane'), 'links');
  assert.equal(stopOf('survey', 'survey/does-not-fit'), undefined);
  assert.equal(stopOf('car.name'), undefined);
});

describe('doubts on the page', { skip: NO_BROWSER }, () => {
  let workshop: Workshop;
  before(async () => {
    workshop = await openWorkshop();
  });
  after(() => workshop?.close());

  test('a pushrod that is called a pullrod: told everywhere, and gone when the word is changed', async () => {
    const file = join(workshop.home, CAR, 'car.yaml');
    const text = readFileSync(file, 'utf8');
    const wrong = text.replace(/kind: pushrod/, 'kind: pullrod');
    assert.notEqual(wrong, text);
    writeFileSync(file, wrong);

    const page = await pageAt(workshop, '');
    await page
      .getByText(/looks? odd: Front left: the rod is called a pullrod/)
      .first()
      .waitFor();
    await page.getByText('Fenwold 201').click();
    await sheetStands(page);
    const links = page.locator('[data-stop="links"]');
    assert.equal(await links.getAttribute('data-mark'), 'amiss');
    await links.getByText('look here').waitFor();
    assert.equal(await page.locator('[data-stop="tyre"]').getAttribute('data-mark'), 'well');
    await page.getByRole('button', { name: /front left.*something looks odd/ }).waitFor();

    await page
      .getByRole('button', { name: /looks? odd/ })
      .last()
      .click();
    await page.getByRole('button', { name: 'To the links, front left' }).first().click();
    await page.getByText('Change the kind, or look at the two ends of the rod.').waitFor();

    const kind = page.locator('[data-path="front.left.rod.kind"]');
    await kind.getByRole('button', { name: /^Change/ }).click();
    await kind.getByRole('combobox').selectOption('pushrod');
    await kind.getByRole('button', { name: 'Keep' }).click();
    await kind.locator('form').waitFor({ state: 'detached' });
    assert.equal(readFileSync(file, 'utf8'), text, 'the one word is changed, and nothing else');
    await page.locator('[data-stop="links"][data-mark="well"]').waitFor();
    assert.deepEqual(page.complaints, []);
  });

  test('the reading that the survey leaves out is told on the floor and in the list', async () => {
    const page = await pageAt(workshop, '');
    await page.getByText(/One thing looks odd: Survey: tape/).waitFor();
    await page.getByText('Ashgarth 501').click();
    await page.getByRole('button', { name: /One thing looks odd/ }).click();
    await page.getByRole('region', { name: 'One thing looks odd' }).getByText('Survey: tape').waitFor();
    assert.deepEqual(page.complaints, []);
  });
});
