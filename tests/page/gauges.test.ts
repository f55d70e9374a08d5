/** Readings by hand on the page: what is typed gives the figures, notes and cautions of the command, to the last digit shown. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { after, before, describe, test } from 'node:test';
import { openCar } from '../../src/questions/index.ts';
import { spokenUnit } from '../../src/units/show.ts';
import { fromSI, ownUnit } from '../../src/units/unit.ts';
import { flatpatch } from '../cli/flatpatch.ts';
import { goTo, NO_BROWSER, openPage, openWorkshop, PHONE, type Workshop } from './browser.ts';

const CAR = 'fenwold-201';

interface Card {
  readonly stop: string;
  readonly gauge: string;
  readonly texts: Readonly<Record<string, string>>;
  readonly command: readonly string[];
}

const STRINGS: Card = {
  stop: 'angles',
  gauge: 'strings',
  texts: {
    'rim.frontLeft.front': '151.2 mm',
    'rim.frontLeft.rear': '152.0 mm',
    'rim.frontRight.front': '149.9 mm ± 0.2 mm',
    'rim.frontRight.rear': '150.6 mm ± 0.2 mm',
    'string.left.front': '905 mm',
    'string.left.rear': '904 mm',
    across: '330 mm',
  },
  command: [
    'strings',
    '--rim',
    'front-left 151.2 mm, 152.0 mm',
    '--rim',
    'front-right 149.9 mm ± 0.2 mm, 150.6 mm ± 0.2 mm',
    '--string',
    'left 905 mm, 904 mm',
    '--across',
    '330 mm',
  ],
};

const CARDS: readonly Card[] = [
  STRINGS,
  {
    stop: 'angles',
    gauge: 'plates',
    texts: { 'plates.front.front': '1503.0 mm', 'plates.front.rear': '1501.5 mm', across: '380 mm' },
    command: ['strings', '--plates', 'front 1503.0 mm, 1501.5 mm', '--across', '380 mm'],
  },
  {
    stop: 'angles',
    gauge: 'bump-steer',
    texts: {
      wheel: 'rear right',
      apart: '280 mm',
      'row.1.travel': '0 mm',
      'row.1.front': '5.00 mm',
      'row.1.rear': '5.00 mm',
      'row.2.travel': '15 mm',
      'row.2.front': '4.90 mm ± 0.03 mm',
      'row.2.rear': '5.02 mm ± 0.03 mm',
      'row.4.travel': '-15 mm',
      'row.4.front': '5.08 mm',
      'row.4.rear': '5.00 mm',
    },
    command: [
      'bump-steer',
      '--wheel',
      'rear-right',
      '--apart',
      '280 mm',
      '--row',
      '0 mm, 5.00 mm, 5.00 mm',
      '--row',
      '15 mm, 4.90 mm ± 0.03 mm, 5.02 mm ± 0.03 mm',
      '--row',
      '-15 mm, 5.08 mm, 5.00 mm',
    ],
  },
  {
    stop: 'weights',
    gauge: 'scales',
    texts: {
      known: '60 kg',
      'known.u': '0.05 kg',
      'shown.rearLeft': '61.3 kg',
      'empty.rearLeft': '0.2 kg',
      'car.rearLeft': '181.4 kg',
      'shown.rearRight': '60.0 kg',
    },
    command: [
      'scales',
      '--known',
      '60 kg ± 0.05 kg',
      '--pad',
      'rear-left 61.3 kg, 0.2 kg',
      '--pad',
      'rear-right 60.0 kg',
      '--read',
      'rear-left 181.4 kg',
    ],
  },
  {
    stop: 'weights',
    gauge: 'weighing',
    texts: { frontRaised: '283.4 kg ± 0.3 kg', lift: '400 mm', 'lift.u': '1 mm' },
    command: ['weighing', '--front-raised', '283.4 kg ± 0.3 kg', '--lift', '400 mm ± 1 mm'],
  },
  {
    stop: 'heights',
    gauge: 'levels',
    texts: {
      'down.frontLeft': '212.0 mm',
      'down.frontRight': '211.6 mm',
      'down.rearLeft': '212.3 mm',
      'down.rearRight': '212.1 mm',
      water: '0.2 mm',
    },
    command: [
      'levels',
      ...['front-left 212.0', 'front-right 211.6', 'rear-left 212.3', 'rear-right 212.1'].flatMap((pad) => [
        '--pad',
        `${pad} mm ± 0.2 mm`,
      ]),
    ],
  },
];

const addressOf = ({ stop, gauge, texts }: Card): string =>
  `?${new URLSearchParams({
    car: CAR,
    way: 'floor',
    floor: stop,
    gauge,
    ...Object.fromEntries(Object.entries(texts).map(([key, text]) => [`${gauge}.${key}`, text])),
  })}`;

interface Told {
  readonly figures: readonly {
    readonly of?: string;
    readonly id: string;
    readonly value: number;
    readonly u: number;
    readonly unit: string;
  }[];
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}

async function toldBy([name, ...options]: readonly string[]): Promise<Told> {
  const ran = await flatpatch([name!, CAR, ...options, '--json']);
  assert.equal(ran.code, 0, ran.err);
  return JSON.parse(ran.out).is;
}

describe('readings by hand on the page', { skip: NO_BROWSER }, () => {
  let workshop: Workshop;
  let page: Awaited<ReturnType<typeof openPage>>;
  before(async () => {
    workshop = await openWorkshop();
    page = await openPage(workshop, addressOf(STRINGS));
  });
  after(() => workshop?.close());

  for (const card of CARDS) {
    test(`${card.gauge}: every figure, note and caution is that of flatpatch ${card.command[0]}`, async () => {
      const told = await toldBy(card.command);
      await goTo(page, addressOf(card));
      const shown = page.locator('.card [data-figure]');
      await shown.nth(told.figures.length - 1).waitFor();
      const figures = new Map(
        await shown.evaluateAll((all) =>
          all.map((each) => [
            (each as HTMLElement).dataset.figure!,
            [each.querySelector('b')!.textContent!, /± ([\d.]+)/.exec(each.textContent!)?.[1]] as const,
          ]),
        ),
      );
      assert.equal(figures.size, told.figures.length);
      for (const { of = 'car', id, value, u, unit } of told.figures) {
        const [text, spread] = figures.get(`${of}.${id}`)!;
        const spoken = spokenUnit(unit, 'mm-N');
        const room = 0.51 * 10 ** -(text.split('.')[1]?.length ?? 0);
        const wanted = fromSI(value, spoken);
        assert.ok(Math.abs(plainNumber(text) - wanted) <= room, `${of} ${id}: ${text} for ${wanted}`);
        if (u === 0) assert.equal(spread, undefined);
        else {
          const own = u / ownUnit(spoken).factor;
          const near = 0.51 * 10 ** -(spread!.split('.')[1]?.length ?? 0);
          assert.ok(
            Math.abs(Number.parseFloat(spread!) - own) <= near,
            `${of} ${id}: ± ${spread} for ${own}`,
          );
        }
      }
      assert.deepEqual(await page.locator('.card .note').allTextContents(), told.notes);
      assert.deepEqual(
        await page.locator('.card .caution').allTextContents(),
        told.cautions.map((words) => `Caution. ${words}`),
      );
      assert.deepEqual(page.complaints, []);
    });
  }

  test('a figure of the car weighed opens its working; units are those chosen; the back arrow leaves the card', async () => {
    const weighed = CARDS.find(({ gauge }) => gauge === 'weighing')!;
    await goTo(page, addressOf(weighed));
    await page.locator('[data-figure="car.behindFront"]').click();
    const slip = page.getByRole('dialog', { name: 'Working' });
    await slip.locator('.step').last().waitFor();
    const { figures } = await toldBy(weighed.command);
    const behind = figures.find(({ id }) => id === 'behindFront')!.value;
    const value = (await slip.locator('.slip-value b').textContent())!;
    assert.ok(Math.abs(plainNumber(value) - 1000 * behind) < 0.06, `${value} mm for ${behind} m`);
    await page.keyboard.press('Escape');
    await page.getByLabel('units').selectOption('in-lbf');
    const row = page.locator('[data-figure="car.behindFront"]');
    await row.getByText(/ in$/).waitFor();
    const inches = plainNumber((await row.locator('b').textContent())!);
    assert.ok(Math.abs(inches - behind / 0.0254) < 0.006, `${inches} in for ${behind} m`);
    await page.getByLabel('units').selectOption('mm-N');
    await page.getByRole('button', { name: 'scales', exact: true }).click();
    await page.waitForURL((url) => url.search.includes('gauge=scales'));
    await page.goBack();
    await page.getByRole('heading', { name: 'Centre of gravity', exact: true }).first().waitFor();
  });

  test('on a phone bare numbers are taken in the unit beside them, rows come and go, what is wrong is told at its field', async () => {
    await page.setViewportSize(PHONE);
    await goTo(page, `?car=${CAR}&way=floor&floor=angles&gauge=bump-steer`);
    const type = (name: string, text: string) => page.getByLabel(name, { exact: true }).fill(text);
    await type('between the two feelers, mm', '280');
    await page.getByText('Type a row standing, and one up or down.').waitFor();
    for (const [k, row] of [
      ['-20', '9.94', '10'],
      ['7', '1', '1'],
      ['0', '10', '10'],
    ].entries()) {
      for (const [at, column] of ['travel', 'front', 'rear'].entries())
        await type(`row ${k + 1}, ${column}, mm`, row[at]!);
    }
    await type('row 4, travel, mm', 'ten');
    await page.getByText('"ten" is not a number with a unit').waitFor();
    assert.equal(await page.locator('[data-figure]').count(), 0);
    await page.getByRole('button', { name: 'take row 4 out' }).click();
    await page.getByRole('button', { name: 'take row 2 out' }).click();
    assert.equal(await page.getByLabel('row 2, front, mm', { exact: true }).inputValue(), '10');
    await page.waitForURL(
      (url) => new URLSearchParams(url.search).get('bump-steer.row.1.travel') === '-20 mm',
    );
    const { figures } = await toldBy([
      'bump-steer',
      ...['--wheel', 'front-left', '--apart', '280 mm'],
      ...['--row', '-20 mm, 9.94 mm, 10 mm', '--row', '0 mm, 10 mm, 10 mm'],
    ]);
    const read = figures.find(({ of, id }) => of === '−20.0 mm' && id === 'read')!;
    const cell = page.locator('[data-figure="−20.0 mm.read"] b');
    await cell.waitFor();
    const shown = plainNumber((await cell.textContent())!);
    assert.ok(Math.abs(shown - fromSI(read.value, 'deg')) < 6e-4, `${shown}° for ${read.value} rad`);
    assert.deepEqual(page.complaints, []);
  });

  test('toes by strings go into the sheet that is being read, are told as worked from strings, and are kept so', async () => {
    await goTo(page, `?car=${CAR}&way=floor&floor=angles`);
    await page.getByRole('button', { name: 'as set', exact: true }).click();
    await goTo(page, addressOf(STRINGS));
    // a front edge nearer to the string than the rear one: toe-out, by the fact of the trade (no source)
    const label = page.locator('.patch-label').filter({ hasText: '151.2' });
    assert.match((await label.textContent())!, /^151\.2toe-out[\d.]+152\.0$/);
    await page.getByRole('button', { name: 'Put these toes into the sheet being read' }).click();
    await page.waitForURL((url) => !url.search.includes('gauge='));
    const { figures } = await toldBy(STRINGS.command);
    const toe = figures.find(({ of, id }) => of === 'front left' && id === 'toe')!;
    const text = () => readFileSync(join(workshop.home, CAR, 'car.yaml'), 'utf8');
    const read = openCar({ text: text() });
    assert.ok(read.ok);
    const rim = read.car.form.front.left.wheel.rimDiameter.value;
    const stepTo = async (heading: RegExp): Promise<void> => {
      for (let k = 0; k < 60 && (await page.getByRole('heading', { name: heading }).count()) === 0; k++)
        await page.getByRole('button', { name: /^(It is so|Not read; next|Keep it; next)$/ }).click();
    };
    await stepTo(/toe over the rim, front left/);
    await page.getByText('worked from strings: ').waitFor();
    await stepTo(/All read/);
    await page.getByLabel('keep it in the car file as').fill('as set, by strings');
    await page.getByRole('button', { name: 'Keep the sheet' }).click();
    await page.waitForURL((url) => url.search.includes('floor=changes'));
    const kept = openCar({ text: text() });
    assert.ok(kept.ok);
    const { frontLeft, rearLeft } = kept.car.form.floor!.read!['as set, by strings']!.readings.toeAtRim!;
    assert.equal(rearLeft, undefined);
    assert.equal(frontLeft!.note, 'worked from strings');
    // over the rim of the file, and not over the two places that were read
    const wanted = rim * Math.sin(toe.value);
    assert.ok(Math.abs(frontLeft!.value - wanted) < 6e-6, `${frontLeft!.value} m for ${wanted} m`);
    assert.ok(Math.abs(frontLeft!.u - rim * toe.u) < 6e-6, `± ${frontLeft!.u} m`);
    assert.deepEqual(page.complaints, []);
  });
});

/** A number as the page writes it: a true minus, thin spaces. */
const plainNumber = (text: string): number => Number(text.replace('−', '-').replaceAll('\u2009', ''));
