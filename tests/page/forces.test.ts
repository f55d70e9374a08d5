/** The force on the drawing: every force of the list has its arrow where it acts, members their way, studs their place. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { after, before, describe, test } from 'node:test';
import {
  type Car,
  caseForces,
  jointOf,
  loadsOf,
  MEMBER_WORDS,
  MEMBERS,
  openCar,
  tubForces,
  usualDoing,
} from '../../src/questions/index.ts';
import { spokenAmount } from '../../src/units/show.ts';
import { NO_BROWSER, openWorkshop, pageAt, type Workshop } from './browser.ts';

const CAR = 'fenwold-201';
const newtons = (value: number): string => spokenAmount(Math.abs(value), 'N', 0);

describe('forces on the drawing', { skip: NO_BROWSER }, () => {
  let workshop: Workshop;
  let car: Car;
  before(async () => {
    workshop = await openWorkshop();
    const read = openCar({ text: readFileSync(join(workshop.home, CAR, 'car.yaml'), 'utf8') });
    assert.ok(read.ok);
    car = read.car;
  });
  after(() => workshop?.close());

  test('case and tub: an arrow or a couple for each force, the greatest with its figure', async () => {
    const { doing } = usualDoing('rear-kerb')!;
    for (const [stop, answer, title] of [
      ['case', caseForces(car, doing), 'Rear axle'],
      ['tub', tubForces(car, doing), 'Front axle'],
    ] as const) {
      const page = await pageAt(workshop, `?car=${CAR}&stop=${stop}&doing=rear-kerb`);
      assert.ok(answer.reached);
      await page.locator('.forces .arrow').first().waitFor({ state: 'attached' });
      // the end of the car that the stop belongs to, whatever the address said of the wheel
      await page.getByRole('heading', { name: title }).waitFor();
      const there = answer.forces.filter(({ size, moment }) => size > 0.5 || moment > 0.05);
      assert.equal(await page.locator('.forces .arrow').count(), there.length);
      const greatest = there.reduce((a, b) => (b.size > a.size ? b : a));
      const titles = await page.locator('.forces .arrow title').allTextContents();
      assert.ok(titles[0]!.startsWith(`${greatest.name}: ${newtons(greatest.size)}`), titles[0]);
      assert.ok((await page.locator('.forces .told').allTextContents()).includes(newtons(greatest.size)));
      assert.deepEqual(page.complaints, []);
    }
  });

  test('links: each member told as pull or push by its letter, not by colour alone', async () => {
    const page = await pageAt(workshop, `?car=${CAR}&stop=links&card=loads&doing=braking`);
    const { doing } = usualDoing('braking')!;
    const answer = loadsOf(car, doing, { spread: false, wheels: [{ end: 'front', side: 'left' }] });
    assert.ok(answer.reached);
    await page.locator('.forces .member').nth(5).waitFor({ state: 'attached' });
    for (const member of await page.locator('.forces .member').all()) {
      const [means, said] = ((await member.locator('title').textContent()) ?? '').split(': ');
      const name = MEMBERS.find((each) => MEMBER_WORDS[each] === means);
      const { value }: { readonly value: number } = answer.wheels[0]!.figures.find(
        ({ id }) => id === `tension.${name}`,
      )!;
      assert.equal(said, `${newtons(value)} of ${value < 0 ? 'push' : 'pull'}`, name);
      assert.equal(await member.locator('text').textContent(), value < 0 ? 'C' : 'T', name);
    }
    assert.deepEqual(page.complaints, []);
  });

  test('studs stand where the file has them: seen along the car they keep their distances', async () => {
    const page = await pageAt(workshop, `?car=${CAR}&stop=studs&doing=dip`);
    const answer = jointOf(car, 'engineToTub', usualDoing('dip')!.doing, { spread: false });
    assert.ok(answer.reached);
    await page.locator('.forces .stud').nth(3).waitFor({ state: 'attached' });
    const spots = await page
      .locator('.forces .stud circle:first-of-type')
      .evaluateAll((all) =>
        all.map((each) => [Number(each.getAttribute('cx')), Number(each.getAttribute('cy'))]),
      );
    const filed = car.form.joints!.engineToTub!.studs.map(({ at }) => at.value);
    const apart = (a: readonly number[], b: readonly number[]): number =>
      Math.hypot(a[0]! - b[0]!, a[1]! - b[1]!);
    const onPaper = spots.map((each) => apart(each, spots[0]!));
    const inCar = filed.map((each) => apart(each.slice(1), filed[0]!.slice(1)));
    const scale = onPaper[3]! / inCar[3]!;
    inCar.forEach((distance, k) => {
      // 1 px of drawing, and what the face leans
      assert.ok(Math.abs(onPaper[k]! - scale * distance) < 2, `${k}: ${onPaper[k]} px for ${distance} m`);
    });
    assert.equal(await page.locator('.forces .ring').count(), 1);
    const worst = await page.locator('.forces .stud[data-worst="true"] title').textContent();
    assert.ok(worst!.startsWith(answer.worst), worst!);
    assert.deepEqual(page.complaints, []);
  });
});
