/** Loads, case and studs on the page: what is chosen is what is worked out, and every figure opens. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { after, before, describe, test } from 'node:test';
import type { Page } from 'playwright-core';
import {
  type Car,
  caseAtPlane,
  caseForces,
  doingsOf,
  jointOf,
  loadsOf,
  openCar,
  tubForces,
  usualDoing,
} from '../../src/questions/index.ts';
import { NO_BROWSER, openWorkshop, pageAt, type Workshop } from './browser.ts';

const CAR = 'fenwold-201';
const FRONT_LEFT = { end: 'front', side: 'left' } as const;

/** `−4852 ± 375 N` to −4852. */
const leading = (text: string | null): number =>
  Number(
    (text ?? '')
      .replace(/[\s\u2009]/g, '')
      .replace('−', '-')
      .match(/-?[\d.]+/)![0],
  );

describe('loads on the page', { skip: NO_BROWSER }, () => {
  let workshop: Workshop;
  let car: Car;
  before(async () => {
    workshop = await openWorkshop();
    const read = openCar({ text: readFileSync(join(workshop.home, CAR, 'car.yaml'), 'utf8') });
    assert.ok(read.ok);
    car = read.car;
  });
  after(() => workshop?.close());

  const row = (page: Page, means: string) => page.locator('#card .figure-row', { hasText: means }).first();

  test('braking is chosen: the pushrod tells its force, the wheel goes where the load puts it, the working opens', async () => {
    const page = await pageAt(workshop, `?car=${CAR}&stop=links`);
    await page.getByRole('button', { name: 'loads', exact: true }).click();
    await page.getByRole('button', { name: 'braking', exact: true }).click();
    const answer = loadsOf(car, usualDoing('braking')!.doing, { spread: false, wheels: [FRONT_LEFT] });
    assert.ok(answer.reached);
    const of = (id: string): number => answer.wheels[0]!.figures.find((each) => each.id === id)!.value;
    const rod = row(page, 'force along the pushrod');
    await rod.locator('.row-value', { hasText: '±' }).waitFor();
    const shown = leading(await rod.locator('.row-value').textContent());
    // to the digit that the spread leaves
    assert.ok(Math.abs(shown - of('tension.rod')) <= 0.5, `${shown} for ${of('tension.rod')}`);
    await page.waitForURL(/travel=/);
    const travel = Number(new URL(page.url()).searchParams.get('travel'));
    assert.ok(Math.abs(travel - of('travelUnderLoad') * 1000) <= 0.051, `${travel}`);
    await rod.click();
    const slip = page.getByRole('dialog', { name: 'Working' });
    await slip.getByRole('heading', { level: 2, name: /force along the pushrod/ }).waitFor();
    await slip.getByText('six equations of the upright').waitFor();
    assert.deepEqual(page.complaints, []);
  });

  test('a plane across the case is typed: what goes through it is what the question tells there', async () => {
    const page = await pageAt(workshop, `?car=${CAR}&stop=case&doing=rear-kerb`);
    const plane = page.getByRole('textbox', { name: 'plane at x, mm' });
    await plane.fill('-2200');
    await plane.press('Enter');
    const { doing } = usualDoing('rear-kerb')!;
    const { wheelCentre } = car.form.rear.left.points;
    const answer = caseAtPlane(car, doing, { x: -2.2, height: wheelCentre.value[2] });
    assert.ok(answer.reached);
    await page.getByText(`Of ${answer.count} forces behind it`).waitFor();
    const torsion = row(page, 'torsion, about forward').locator('.row-value');
    assert.equal(leading(await torsion.textContent()), Math.round(answer.moment[0]));
    assert.deepEqual(page.complaints, []);
  });

  test('case and tub list their forces, greatest first, and the tub tells what is left over', async () => {
    const { doing } = usualDoing('rear-kerb')!;
    for (const [stop, answer] of [
      ['case', caseForces(car, doing)],
      ['tub', tubForces(car, doing)],
    ] as const) {
      const page = await pageAt(workshop, `?car=${CAR}&stop=${stop}&doing=rear-kerb`);
      assert.ok(answer.reached);
      const greatest = Math.max(...answer.forces.map(({ size }) => size));
      const first = page.locator('#card .figure-row').first();
      await first.waitFor();
      assert.equal(leading(await first.locator('.row-value').textContent()), Math.round(greatest));
      await page.getByText(/close.* to \d+e-\d+ of the largest/).waitFor();
      assert.deepEqual(page.complaints, []);
    }
  });

  test('studs: the worst is open first, another by keyboard, six by spec; preload opens its torque', async () => {
    const page = await pageAt(workshop, `?car=${CAR}&stop=studs&doing=dip`);
    const answer = jointOf(car, 'engineToTub', usualDoing('dip')!.doing, { spread: false });
    assert.ok(answer.reached);
    await page.getByRole('heading', { name: `${answer.worst}: least is left here` }).waitFor();
    assert.equal(await page.locator('.face .stud').count(), 4);
    await page.locator('.face .stud').nth(2).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: answer.face.studs[2]!.name }).waitFor();
    await page
      .locator('#card .figure-row', { hasText: /^preload[−\d]/ })
      .first()
      .click();
    const slip = page.getByRole('dialog', { name: 'Working' });
    await slip.getByText('torque for each newton of preload').first().waitFor();
    await page.keyboard.press('Escape');
    assert.deepEqual(page.complaints, []);
    const six = await pageAt(
      workshop,
      `?car=${CAR}&spec=proposal%2C+six+studs+to+the+tub&stop=studs&doing=dip`,
    );
    await six.locator('.face .stud').nth(5).waitFor();
    assert.deepEqual(six.complaints, []);
  });

  test('loads, case and studs are printed from their cards, in the case that is chosen', async () => {
    const asked: readonly [string, string, RegExp][] = [
      ['stop=links&card=loads&doing=braking', 'Print the load sheet of this case', /doing=braking/],
      ['stop=case&doing=dip', 'Print all cases', /sheets\/load\?(?!.*doing)/],
      ['stop=studs&joint=caseToEngine&doing=dip', 'Print the joint sheet', /joint=caseToEngine.*doing=dip/],
      ['stop=studs&joint=engineToTub', 'Print the tightening card', /sheets\/tightening\?/],
    ];
    for (const [at, words, address] of asked) {
      const page = await pageAt(workshop, `?car=${CAR}&${at}`);
      const link = page.getByRole('link', { name: words });
      const href = await link.evaluate((each: HTMLAnchorElement) => each.href);
      assert.match(href, address);
      const answer = await page.request.get(href);
      assert.equal(answer.headers()['content-type'], 'application/pdf', words);
      assert.ok((await answer.body()).subarray(0, 5).toString() === '%PDF-');
      assert.deepEqual(page.complaints, []);
    }
  });

  test('the table of all cases copies out and is saved, a row a member', async () => {
    const page = await pageAt(workshop, `?car=${CAR}&stop=links&card=loads`);
    await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
    await page.getByRole('button', { name: 'Copy all cases, member by member' }).click();
    await page.getByText('All cases are copied').waitFor({ state: 'attached' });
    const copied = await page.evaluate(() => navigator.clipboard.readText());
    const rows = copied.trim().split(/\r?\n/);
    // four wheels, six members a case, and the heads
    assert.equal(rows.length, 1 + doingsOf(car).length * 4 * 6);
    assert.equal(rows[0]!.split('\t').length, 7);
    const saving = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save them as CSV' }).click();
    assert.equal((await saving).suggestedFilename(), `${CAR}-cases.csv`);
  });

  test('a car whose joints nobody has described says what is wanted, in line and card', async () => {
    const page = await pageAt(workshop, '?car=ashgarth-501&stop=studs');
    await page
      .getByRole('status')
      .filter({ hasText: /write its studs/ })
      .first()
      .waitFor();
    await page.locator('[data-stop="studs"]', { hasText: 'not told' }).waitFor();
  });
});
