/** A day out on the page: every figure of its stops is the one that the command tells, and what is typed is kept. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { after, before, describe, test } from 'node:test';
import { askedSo, type DayName, dayAnswer, openCar, readDay } from '../../src/questions/index.ts';
import { spokenUnit } from '../../src/units/show.ts';
import { fromSI } from '../../src/units/unit.ts';
import { flatpatch } from '../cli/flatpatch.ts';
import { goTo, NO_BROWSER, openPage, openWorkshop, type Workshop } from './browser.ts';

const CAR = 'fenwold-201';

interface Stop {
  readonly name: DayName;
  readonly texts: Readonly<Record<string, string>>;
  readonly command: readonly string[];
}

const STOPS: readonly Stop[] = [
  {
    name: 'hot-pressures',
    texts: {
      air: '14 degC',
      humidity: '80 %',
      'hot.front': '1.68 bar',
      'now.frontLeft': '1.76 bar, 80 degC',
    },
    command: [
      'pressures',
      '--air',
      '14 degC',
      '--humidity',
      '80 %',
      '--hot',
      'front 1.68 bar',
      '--now',
      'front-left 1.76 bar, 80 degC',
    ],
  },
  {
    name: 'ratios',
    texts: { at: '10500 rpm', targets: '105, 140, 175, 210, 245, 285 km/h', changes: '2' },
    command: [
      'ratios',
      '--at',
      '10500 rpm',
      '--targets',
      '105, 140, 175, 210, 245, 285 km/h',
      '--changes',
      '2',
    ],
  },
  {
    name: 'brakes',
    texts: { speed: '90 km/h', decelerations: '0.5, 0.8, 1.2 g' },
    command: ['brakes', '--speed', '90 km/h', '--decelerations', '0.5 g, 0.8 g, 1.2 g'],
  },
  {
    name: 'fuel',
    texts: { laps: '15', lap: '5.1 km', reserve: '4 l', aboard: '6 l' },
    command: ['fuel', '--laps', '15', '--lap', '5.1 km', '--reserve', '4 l', '--aboard', '6 l'],
  },
  {
    name: 'transfer',
    texts: { doing: 'braking', lateral: '0.8 g', fuel: '10 l' },
    command: ['transfer', '--doing', 'braking', '--lateral', '0.8 g', '--fuel', '10 l'],
  },
  {
    name: 'at-speed',
    texts: { speeds: '0, 120, 240 km/h', longitudinal: '-1 g', clearance: '3 mm' },
    command: ['heights', '--speeds', '0, 120, 240 km/h', '--longitudinal', '-1 g', '--clearance', '3 mm'],
  },
];

const addressOf = ({ name, texts }: Stop): string =>
  `?${new URLSearchParams({
    car: CAR,
    way: 'floor',
    floor: name,
    ...Object.fromEntries(Object.entries(texts).map(([key, text]) => [`${name}.${key}`, text])),
  })}`;

describe('a day out on the page', { skip: NO_BROWSER }, () => {
  let workshop: Workshop;
  let page: Awaited<ReturnType<typeof openPage>>;
  before(async () => {
    workshop = await openWorkshop();
    page = await openPage(workshop, addressOf(STOPS[0]!));
  });
  after(() => workshop?.close());

  for (const stop of STOPS) {
    test(`${stop.name}: every figure is that of flatpatch ${stop.command[0]}`, async () => {
      const read = openCar({ text: readFileSync(join(workshop.home, CAR, 'car.yaml'), 'utf8') });
      assert.ok(read.ok);
      const { question } = readDay(stop.name, stop.texts, read.car);
      const here = dayAnswer(read.car, askedSo(question!, { spread: false }));
      assert.ok(here.reached);
      const [name, ...options] = stop.command;
      const ran = await flatpatch([name!, CAR, ...options, '--no-spread', '--json']);
      assert.equal(ran.code, 0, ran.err);
      const told: { of: string; id: string; value: number | null }[] = JSON.parse(ran.out).is.figures;
      await goTo(page, addressOf(stop));
      await page
        .locator('.card [data-figure]')
        .nth(told.length - 1)
        .waitFor();
      const shown = new Map(
        await page
          .locator('.card [data-figure]')
          .evaluateAll((all) =>
            all.map((each) => [
              (each as HTMLElement).dataset.figure!,
              each.querySelector('b.number')!.textContent!,
            ]),
          ),
      );
      assert.equal(shown.size, told.length);
      for (const { of, id, value } of told) {
        const text = shown.get(`${of}.${id}`)!;
        if (value === null) {
          assert.equal(text, '—', `${of} ${id}`);
          continue;
        }
        const figure = here.figures.find((each) => each.of === of && each.id === id)!;
        const wanted = fromSI(value, figure.spoken?.[0] ?? spokenUnit(figure.unit, 'mm-N'));
        const places = text.split('.')[1]?.length ?? 0;
        const room = 0.51 * 10 ** -places;
        assert.ok(Math.abs(plainNumber(text) - wanted) <= room, `${of} ${id}: ${text} for ${wanted}`);
      }
      assert.deepEqual(page.complaints, []);
    });
  }

  test('what is typed stands in the address, what cannot be read is told beside it, a figure opens its working', async () => {
    await goTo(page, `?car=${CAR}&way=floor&floor=fuel`);
    await page.getByText('Still to be typed: racing laps').waitFor();
    await page.getByLabel('racing laps').fill('twelve');
    await page.getByText('"twelve" must be a whole number').waitFor();
    assert.equal(await page.locator('.card [data-figure]').count(), 0);
    await page.getByLabel('racing laps').fill('12');
    await page.locator('[data-figure="session.needed"]').click();
    const slip = page.getByRole('dialog', { name: 'Working' });
    await slip.locator('.step').first().waitFor();
    const [value] = (await slip.locator('.slip-value b').textContent())!.split(' ');
    await page.waitForURL((url) => url.search.includes('fuel.laps=12') && url.search.includes('figure='));
    const ran = await flatpatch(['fuel', CAR, '--laps', '12', '--no-spread', '--json']);
    const needed = JSON.parse(ran.out).is.figures.find(({ id }: { id: string }) => id === 'needed').value;
    assert.ok(Math.abs(plainNumber(value!) - 1000 * needed) < 0.06, `${value} l for ${needed} m³`);
    await page.keyboard.press('Escape');
  });

  test('another spec stands beside, and the ratio chart is saved as PDF', async () => {
    await goTo(page, `${addressOf(STOPS[4]!)}&against=as+run`);
    const cell = page.locator('[data-figure="front left.tyreLoad"] .row-say');
    await cell.waitFor();
    const asked = STOPS[4]!.command.slice(1);
    const ran = await flatpatch(['transfer', CAR, ...asked, '--against', 'as run', '--no-spread', '--json']);
    const there = JSON.parse(ran.out).against.is.figures.find(
      ({ of, id }: { of: string; id: string }) => of === 'front left' && id === 'tyreLoad',
    ).value;
    const [, text] = /as run: ([\d.\u2009]+)/.exec((await cell.textContent())!)!;
    assert.ok(Math.abs(plainNumber(text!) - there) < 0.51, `${text} N for ${there} N`);
    await goTo(page, addressOf(STOPS[1]!));
    const saving = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save the ratio chart' }).click();
    const file = await (await saving).path();
    assert.equal(readFileSync(file).subarray(0, 5).toString('latin1'), '%PDF-');
    assert.deepEqual(page.complaints, []);
  });

  test('pairs of the stock are put in and taken out and stand in the file; a pair that is none is told and kept typed', async () => {
    const stock = () => {
      const read = openCar({ text: readFileSync(join(workshop.home, CAR, 'car.yaml'), 'utf8') });
      assert.ok(read.ok);
      return read.car.form.gearbox!.stock!;
    };
    const were = stock().map(({ pair }) => pair.text);
    await goTo(page, `?car=${CAR}&way=floor&floor=ratios`);
    await page.getByRole('button', { name: 'put pairs in or take them out' }).click();
    await page.getByRole('button', { name: `take ${were[1]} out of the stock` }).click();
    await page.getByLabel('pair, driver first').fill('17/3');
    await page.getByLabel('run so far').fill('12');
    const keep = page.locator('.stock').getByRole('button', { name: 'Keep' });
    await keep.click();
    await page.locator('.stock [role="alert"]').filter({ hasText: '17/3' }).waitFor();
    assert.deepEqual(
      stock().map(({ pair }) => pair.text),
      were,
    );
    await page.getByLabel('pair, driver first').fill('17/36');
    await page.getByLabel('gears that its hubs fit').fill('3, 4');
    await keep.click();
    await page.getByRole('button', { name: 'put pairs in or take them out' }).waitFor();
    const are = stock();
    assert.deepEqual(
      are.map(({ pair }) => pair.text),
      [...were.filter((_, k) => k !== 1), '17/36'],
    );
    assert.deepEqual(are.at(-1)!.gears, [3, 4]);
    assert.ok(Math.abs(are.at(-1)!.run!.value - 12e3) < 1e-6);
    await page.locator('.stock-pairs').getByText('17/36').waitFor();
  });
});

/** A number as the page writes it: a true minus, thin spaces. */
const plainNumber = (text: string): number => Number(text.replace('−', '-').replaceAll('\u2009', ''));
