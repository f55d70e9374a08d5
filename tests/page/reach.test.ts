/** Everybody can use it: phone and desk, day and night, keyboard, screen reader. Checked with axe-core. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { after, before, describe, test } from 'node:test';
import type { Page } from 'playwright-core';
import {
  DESK,
  goTo,
  NO_BROWSER,
  type OpenPage,
  openWorkshop,
  PHONE,
  pageAt,
  type Size,
  settled,
  type Workshop,
} from './browser.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const NARROW: Size = { width: 1024, height: 768 };

interface Finding {
  readonly id: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary: string }[];
}

async function findings(page: Page): Promise<readonly string[]> {
  const found = (await page.evaluate('axe.run(document, { resultTypes: ["violations"] })')) as {
    violations: readonly Finding[];
  };
  return found.violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html} ${nodes[0]?.failureSummary}`);
}

interface Where {
  readonly address: string;
  /** What stands there and nowhere else among these places. */
  readonly shows: string;
}

/** Readings by hand, with enough typed for an answer. */
const BY_HAND = {
  strings: `?${new URLSearchParams({
    car: 'fenwold-201',
    way: 'floor',
    floor: 'angles',
    gauge: 'strings',
    'strings.rim.frontLeft.front': '151.2 mm',
    'strings.rim.frontLeft.rear': '152.0 mm',
    'strings.rim.rearRight.front': '91.0 mm',
    'strings.rim.rearRight.rear': '90.1 mm',
    'strings.rule': '0.2 mm',
  })}`,
  bumpSteer: `?${new URLSearchParams({
    car: 'fenwold-201',
    way: 'floor',
    floor: 'angles',
    gauge: 'bump-steer',
    'bump-steer.apart': '280 mm',
    'bump-steer.row.1.travel': '0 mm',
    'bump-steer.row.1.front': '10 mm',
    'bump-steer.row.1.rear': '10 mm',
    'bump-steer.row.2.travel': '20 mm',
    'bump-steer.row.2.front': '9.86 mm',
    'bump-steer.row.2.rear': '10.00 mm',
  })}`,
};

const PLACES: Readonly<Record<string, Where>> = {
  floor: { address: '', shows: '.floor .bay .flat' },
  'a stop': {
    address: '?car=ashgarth-501&stop=spring&travel=10',
    shows: '#card h2:text("Spring, front left")',
  },
  'a stop in the round': {
    address: '?car=fenwold-201&stop=links&view=free',
    shows: 'h1:has-text("in the round")',
  },
  curves: { address: '?car=fenwold-201&stop=spring&card=curves', shows: '.curves .uplot' },
  readings: { address: '?car=ashgarth-501&stop=spring&card=readings', shows: '.readings .field' },
  'bars and coils': {
    address: '?car=fenwold-201&stop=spring&card=ask',
    shows: '.spring-questions .question',
  },
  loads: {
    address: '?car=fenwold-201&stop=links&card=loads&doing=turning-in',
    shows: '#card h2:text("Links") ~ .doing-means',
  },
  case: { address: '?car=fenwold-201&stop=case&doing=dip', shows: '#card h2:text("Case")' },
  tub: { address: '?car=fenwold-201&stop=tub&doing=braking', shows: '#card h2:text("Tub")' },
  studs: { address: '?car=fenwold-201&stop=studs&doing=rear-kerb', shows: '.face .stud' },
  survey: { address: '?car=ashgarth-501&card=survey', shows: '#card table.rungs' },
  working: { address: '?car=fenwold-201&figure=wheelRate', shows: '.slip .shares li' },
  'two specs': { address: '?car=ashgarth-501&against=as+run', shows: '.differences tbody' },
  primaries: { address: '?car=ashgarth-501&way=gas', shows: '#card button:enabled:text("Find a set")' },
  'no exhaust': { address: '?car=pellmoor-7b&way=gas', shows: '#card code' },
  weights: { address: '?car=fenwold-201&way=floor', shows: '.patch-label' },
  angles: { address: '?car=fenwold-201&way=floor&floor=angles', shows: '.floor-readings .of-kind' },
  strings: { address: BY_HAND.strings, shows: '.strings text' },
  'bump steer': { address: BY_HAND.bumpSteer, shows: '.bump-steer td b' },
  'centre of gravity': {
    address:
      '?car=fenwold-201&way=floor&floor=weights&gauge=weighing&weighing.lift=400+mm&weighing.frontRaised=283+kg',
    shows: '[data-figure="car.height"]',
  },
  changes: { address: '?car=fenwold-201&way=floor&floor=changes', shows: '.moves li' },
  'hot tyres': {
    address: '?car=fenwold-201&way=floor&floor=hot-pressures&hot-pressures.air=14+degC',
    shows: '.beside-cell',
  },
  ratios: { address: '?car=fenwold-201&way=floor&floor=ratios', shows: '.drawing .uplot' },
  brakes: {
    address: '?car=fenwold-201&way=floor&floor=brakes',
    shows: '.patch-label:has-text("laps")',
  },
  'at speed': { address: '?car=fenwold-201&way=floor&floor=at-speed', shows: '.drawing .uplot' },
  'a way to come': { address: '?car=fenwold-201&way=book', shows: '.way-title:text("car book")' },
};

/** Elements on show with text of their own that is smaller than 17 px; formulas set their own indices, and what waits for the printer is not on show. */
const SMALL_LETTERS = `[...document.querySelectorAll('body *')]
  .filter((each) => [...each.childNodes].some((node) => node.nodeType === 3 && node.textContent.trim() !== ''))
  .filter((each) => each.getClientRects().length > 0 && !each.closest('math') && parseFloat(getComputedStyle(each).fontSize) < 17)
  .map((each) => each.outerHTML.slice(0, 90))`;

/** What can be tapped and is smaller than 48 px; half a pixel is the layout's own rounding. */
const SMALL_TARGETS = `[...document.querySelectorAll('button, a.word:not(.skip), select, input:not([type=range])')]
  .filter((each) => each.getClientRects().length > 0)
  .map((each) => [each.getBoundingClientRect(), each.outerHTML.slice(0, 80)])
  .filter(([box]) => Math.min(box.width, box.height) < 47.5)
  .map(([box, html]) => Math.round(box.width) + ' × ' + Math.round(box.height) + ' ' + html)`;

describe('reach', { skip: NO_BROWSER }, () => {
  let workshop: Workshop;
  before(async () => {
    workshop = await openWorkshop();
  });
  after(() => workshop?.close());

  describe('every place', () => {
    let page: OpenPage;
    before(async () => {
      page = await pageAt(workshop, '');
      await page.evaluate(AXE);
    });

    for (const [name, { address, shows }] of Object.entries(PLACES)) {
      test(`${name}: no finding by axe-core, nothing to scroll sideways, no letters under 17 px`, async () => {
        const look = async (size: Size, light: 'light' | 'dark'): Promise<void> => {
          await page.setViewportSize(size);
          await page.emulateMedia({ colorScheme: light });
          await settled(page);
        };
        await look(DESK, 'light');
        await goTo(page, address);
        await page.locator(shows).first().waitFor();
        for (const [size, light] of [
          [DESK, 'light'],
          [NARROW, 'dark'],
          [PHONE, 'dark'],
        ] as const) {
          await look(size, light);
          const where = `${name}, ${size.width} px, ${light}`;
          const wide = (await page.evaluate('document.documentElement.scrollWidth')) as number;
          assert.ok(wide <= size.width, `${where}: ${wide} px wide`);
          assert.deepEqual(await page.evaluate(SMALL_LETTERS), [], where);
          if (size !== NARROW) assert.deepEqual(await findings(page), [], where);
        }
        assert.deepEqual(page.complaints.splice(0), []);
      });
    }
  });

  test('on the phone whatever is tapped is 48 px or more each way', async () => {
    const page = await pageAt(workshop, '');
    await page.setViewportSize(PHONE);
    for (const address of [
      '',
      '?car=ashgarth-501&stop=spring',
      '?car=fenwold-201&stop=spring&card=ask',
      '?car=fenwold-201&stop=studs&doing=dip',
      '?car=fenwold-201&way=floor&floor=fuel&fuel.laps=12',
      '?car=fenwold-201&way=floor&floor=transfer',
      BY_HAND.strings,
      BY_HAND.bumpSteer,
    ]) {
      await goTo(page, address);
      assert.deepEqual(await page.evaluate(SMALL_TARGETS), [], address);
      assert.deepEqual(await page.evaluate(SMALL_LETTERS), [], address);
      assert.equal(await page.evaluate('document.documentElement.scrollWidth'), PHONE.width, address);
    }
  });

  test('labels on the drawing do not lie on one another and leaders do not cross', async () => {
    const page = await pageAt(workshop, '');
    await page.setViewportSize(DESK);
    await page.emulateMedia({ colorScheme: 'light' });
    await goTo(page, '?car=ashgarth-501&stop=spring&travel=8');
    await page.locator('canvas[data-state="here"]').waitFor();
    for (const stop of ['tyre', 'upright', 'links', 'rocker', 'spring']) {
      await page.locator(`[data-stop="${stop}"]`).click();
      for (const view of ['front', 'side', 'plan', 'free', 'car']) {
        await page.locator('.views button', { hasText: view }).click();
        await page.locator('.label .soft.number').first().waitFor();
        const { labels, leaders } = await laid(page);
        assert.ok(labels.length >= 3, `${stop}: three figures or more stand on the drawing`);
        for (const [i, a] of labels.entries()) {
          assert.equal(a.cut, false, `${stop}, ${view}: a label is cut`);
          for (const b of labels.slice(i + 1)) {
            const apart = a.bottom <= b.top || b.bottom <= a.top || a.right <= b.left || b.right <= a.left;
            assert.ok(apart, `${stop}, ${view}: two labels lie on one another`);
          }
        }
        for (const [i, a] of leaders.entries()) {
          for (const b of leaders.slice(i + 1))
            assert.ok(!crossing(a, b), `${stop}, ${view}: two leaders cross`);
        }
      }
    }
  });
});

type Spot = readonly [x: number, y: number];

interface Laid {
  readonly labels: readonly {
    readonly top: number;
    readonly bottom: number;
    readonly left: number;
    readonly right: number;
    readonly cut: boolean;
  }[];
  readonly leaders: readonly (readonly [Spot, Spot])[];
}

/** Boxes of the labels, and the slanting part of each leader. */
const laid = async (page: Page): Promise<Laid> => ({
  labels: await page.locator('.label').evaluateAll((all) =>
    all.map((label) => {
      const { top, bottom, left, right } = label.getBoundingClientRect();
      return { top, bottom, left, right, cut: label.scrollWidth > label.clientWidth + 1 };
    }),
  ),
  leaders: await page.locator('.leaders polyline').evaluateAll((all) =>
    all.map((line) => {
      const spots = line
        .getAttribute('points')!
        .split(' ')
        .map((pair) => pair.split(',').map(Number) as unknown as [number, number]);
      return [spots.at(-2)!, spots.at(-1)!] as const;
    }),
  ),
});

const turn = (a: Spot, b: Spot, c: Spot): number =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

/** The two cross between their ends; leaders to one and the same point only meet there. */
const crossing = ([a, b]: readonly [Spot, Spot], [c, d]: readonly [Spot, Spot]): boolean =>
  turn(a, b, c) * turn(a, b, d) < -1 && turn(c, d, a) * turn(c, d, b) < -1;
