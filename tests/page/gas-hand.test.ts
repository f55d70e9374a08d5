/** Bends and collector moved by hand on the page: by mouse, finger, keys and figures; kept over a reload, and undone. */
import assert from 'node:assert/strict';
import { after, before, describe, test } from 'node:test';
import type { Locator, Page } from 'playwright-core';
import { NO_BROWSER, openPage, openWorkshop, PHONE, type Workshop } from './browser.ts';

const ADDRESS = '?car=fenwold-201&way=gas&view=side';

describe('primaries moved by hand on the page', { skip: NO_BROWSER }, () => {
  let workshop: Workshop;
  let page: Awaited<ReturnType<typeof openPage>>;
  before(async () => {
    workshop = await openWorkshop();
    page = await openPage(workshop, ADDRESS);
    await handOn(page);
  });
  after(() => workshop?.close());

  const button = (name: string, of: Page = page): Locator => of.getByRole('button', { name, exact: true });
  const bend = (of: Page = page): Locator => button('Cylinder 3, bend 2', of);
  const figure = (name: string): Locator => page.getByRole('textbox', { name });
  const rows = (): Promise<string | null> => page.locator('.pipes tbody').textContent();

  async function handOn(of: Page): Promise<void> {
    await button('Find a set', of).click();
    await of.getByText('Nothing more is gained by small changes.').waitFor({ timeout: 60_000 });
    await of.getByLabel('move bends and collector').check();
    await bend(of).waitFor();
  }

  async function middle(of: Locator): Promise<{ x: number; y: number }> {
    const box = (await of.boundingBox())!;
    return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  }

  test('a bend goes with the mouse, its length and room told; let go in a pipe the rest gives way; undone it is as before', async () => {
    const first = await rows();
    const from = await middle(bend());
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(from.x + 6, from.y - 4);
    await page.mouse.move(from.x + 30, from.y - 8, { steps: 4 });
    const tells = page.locator('.hand-tells');
    await tells.getByText('length 590.0 mm held').waitFor();
    // red is not all: a word and a mark say it too
    await tells.getByText(/✕ [\d.]+ mm too near pipe of cylinder \d/).waitFor();
    await page.locator('.tight[data-breached="true"] path').waitFor({ state: 'attached' });
    const now = await middle(bend());
    assert.ok(Math.hypot(now.x - from.x, now.y - from.y) > 4, 'the bend went with the mouse');
    await page.mouse.up();
    await page.getByText(/The rest gave way; the pipes of cylinders .* lie anew/).waitFor();
    assert.notEqual(await rows(), first);
    assert.equal(await page.locator('.pipes [role="alert"]').count(), 0);
    await button('Undo').click();
    await page.waitForFunction((text) => document.querySelector('.pipes tbody')?.textContent === text, first);
    await button('Redo').click();
    await page.getByText('Moved by hand since it was found').waitFor();
    await button('Back to the found set').click();
    await page.waitForFunction((text) => document.querySelector('.pipes tbody')?.textContent === text, first);
    // as it was found, the finder may look for another; moved, it would take away what the hand did
    await page.waitForFunction(() =>
      [...document.querySelectorAll('button')].some(
        (each) => each.textContent === 'Another set' && !each.disabled,
      ),
    );
  });

  test('what cannot be is told with its reason, and the bend stays where it can be', async () => {
    await page.getByLabel('where there is no room the rest gives way').uncheck();
    await bend().focus();
    await figure('z, up, mm').fill('1400');
    await figure('z, up, mm').press('Enter');
    await page
      .locator('.hand-tells')
      .getByText(/cannot be held beyond this place|would be [\d.]+ mm too near/)
      .first()
      .waitFor();
    await page.waitForFunction(() => !document.querySelector('.tight[data-breached="true"]'));
    assert.notEqual(await figure('z, up, mm').inputValue(), '1400.0');
  });

  test('by arrow keys and figures, kept over a reload; what is kept does not go', async () => {
    await page.getByLabel('where there is no room the rest gives way').check();
    await button('Collector').focus();
    const x = Number((await figure('x, forward, mm').inputValue()).replace('−', '-'));
    await page.keyboard.press('Shift+ArrowRight');
    // seen from the left the nose is to the left
    await page.waitForFunction((was) => {
      const input = document.querySelector<HTMLInputElement>('input[aria-label="x, forward, mm"]');
      return Math.abs(Number(input?.value.replace('−', '-')) - was + 10) < 0.11;
    }, x);
    await page.getByText('Moved by hand since it was found').waitFor();
    await page.getByLabel('keep the collector here').click();
    await page.getByRole('button', { name: 'Collector, kept', exact: true }).waitFor();
    const moved = await rows();
    await page.reload();
    await page.getByText('Moved by hand since it was found').waitFor();
    assert.equal(await rows(), moved);
    await page.getByRole('button', { name: 'Collector, kept', exact: true }).focus();
    await page.keyboard.press('ArrowRight');
    await page.getByText('The collector is kept where it is.').waitFor();
    assert.deepEqual(page.complaints, []);
  });

  test('on a phone a finger takes a bend, and the page does not scroll under it', async () => {
    const phone = await openPage(workshop, ADDRESS, PHONE);
    await handOn(phone);
    await phone.evaluate(() => scrollTo(0, 0));
    const from = await middle(bend(phone));
    const touch = await phone.context().newCDPSession(phone);
    const at = (type: string, points: readonly { x: number; y: number }[]) =>
      touch.send('Input.dispatchTouchEvent', { type: type as 'touchMove', touchPoints: [...points] });
    await at('touchStart', [from]);
    for (let k = 1; k <= 5; k++) await at('touchMove', [{ x: from.x + 4 * k, y: from.y }]);
    await phone.locator('.hand-tells').getByText('length 590.0 mm held').waitFor();
    await at('touchEnd', []);
    await phone.getByText('Moved by hand since it was found').waitFor();
    assert.equal(await phone.evaluate(() => scrollY), 0);
    const wide = await phone.evaluate(() => document.documentElement.scrollWidth);
    assert.ok(wide <= PHONE.width, `${wide} px wide`);
  });
});
