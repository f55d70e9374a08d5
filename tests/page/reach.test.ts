/** Everybody can use it: phone and desk, day and night, keyboard, screen reader. Checked with axe-core. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { after, before, describe, test } from 'node:test';
import type { Page } from 'playwright-core';
import { DESK, NO_BROWSER, openPage, openWorkshop, PHONE, type Size, type Workshop } from './browser.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const NARROW: Size = { width: 1024, height: 768 };

interface Finding {
  readonly id: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary: string }[];
}

async function findings(page: Page): Promise<readonly string[]> {
  await page.evaluate(AXE);
  const found = (await page.evaluate('axe.run(document, { resultTypes: ["violations"] })')) as {
    violations: readonly Finding[];
  };
  return found.violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html} ${nodes[0]?.failureSummary}`);
}

const PLACES: Readonly<Record<string, string>> = {
  floor: '',
  'a stop': '?car=ashgarth-501&stop=spring&travel=10',
  'a stop in the round': '?car=fenwold-201&stop=links&view=free',
  curves: '?car=fenwold-201&stop=spring&card=curves',
  readings: '?car=ashgarth-501&stop=spring&card=readings',
  'bars and coils': '?car=fenwold-201&stop=spring&card=ask',
  survey: '?car=ashgarth-501&card=survey',
  working: '?car=fenwold-201&figure=wheelRate',
  'two specs': '?car=ashgarth-501&against=as+run',
  'a way to come': '?car=fenwold-201&way=gas',
};

describe('reach', { skip: NO_BROWSER }, () => {
  let workshop: Workshop;
  before(async () => {
    workshop = await openWorkshop();
  });
  after(() => workshop?.close());

  const settled = async (page: Page): Promise<void> => {
    await page.locator('.floor .flat, .sheet').first().waitFor();
    await page.waitForFunction('document.querySelector("[aria-busy=true]") === null');
  };

  for (const [name, address] of Object.entries(PLACES)) {
    test(`${name}: no finding by axe-core at the desk by day and on the phone by night`, async () => {
      for (const [size, light] of [
        [DESK, 'light'],
        [PHONE, 'dark'],
      ] as const) {
        const page = await openPage(workshop, address, size, light);
        await settled(page);
        assert.deepEqual(await findings(page), [], `${name}, ${size.width} px, ${light}`);
        assert.deepEqual(page.complaints, []);
        await page.context().close();
      }
    });

    test(`${name}: nothing to scroll sideways, no letters under 17 px`, async () => {
      for (const size of [DESK, NARROW, PHONE]) {
        const page = await openPage(workshop, address, size);
        await settled(page);
        const wide = (await page.evaluate('document.documentElement.scrollWidth')) as number;
        assert.ok(wide <= size.width, `${name}: ${wide} px in ${size.width}`);
        const small = await page.evaluate(`[...document.querySelectorAll('body *')]
          .filter((each) => each.childNodes.length > 0 && [...each.childNodes].some((node) => node.nodeType === 3 && node.textContent.trim() !== ''))
          .filter((each) => !each.closest('math') && parseFloat(getComputedStyle(each).fontSize) < 17)
          .map((each) => each.outerHTML.slice(0, 90))`);
        assert.deepEqual(small, [], `${name} at ${size.width}`);
        await page.context().close();
      }
    });
  }

  test('on the phone whatever is tapped is 48 px or more one way, and 44 the other', async () => {
    const page = await openPage(workshop, '?car=ashgarth-501&stop=spring', PHONE);
    await settled(page);
    const small =
      await page.evaluate(`[...document.querySelectorAll('button, a.word, select, input:not([type=range])')]
      .filter((each) => each.getClientRects().length > 0 && !each.closest('.unseen'))
      .map((each) => [each.getBoundingClientRect(), each.outerHTML.slice(0, 80)])
      .filter(([box]) => Math.max(box.width, box.height) < 48 || Math.min(box.width, box.height) < 32)
      .map(([box, html]) => Math.round(box.width) + ' × ' + Math.round(box.height) + ' ' + html)`);
    assert.deepEqual(small, []);
    await page.context().close();
  });

  test('labels on the drawing do not lie on one another and leaders do not cross', async () => {
    for (const stop of ['tyre', 'upright', 'links', 'rocker', 'spring']) {
      for (const view of ['front', 'side', 'free']) {
        const page = await openPage(workshop, `?car=ashgarth-501&stop=${stop}&view=${view}`);
        await page.locator('.label').first().waitFor();
        await page.locator('.label .soft.number').first().waitFor();
        const boxes = await page.locator('.label').evaluateAll((labels) =>
          labels.map((label) => {
            const { top, bottom, left, right } = label.getBoundingClientRect();
            return { top, bottom, left, right, cut: label.scrollWidth > label.clientWidth + 1 };
          }),
        );
        boxes.forEach((a, i) => {
          assert.equal(a.cut, false, `${stop}, ${view}: a label is cut`);
          for (const b of boxes.slice(i + 1)) {
            const apart = a.bottom <= b.top || b.bottom <= a.top || a.right <= b.left || b.right <= a.left;
            assert.ok(apart, `${stop}, ${view}: two labels lie on one another`);
          }
        });
        await page.context().close();
      }
    }
  });
});
