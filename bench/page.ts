/**
 * How quick the car page is in Chromium: until it first paints, until its figures stand, what a frame takes while a
 * wheel is dragged or a load case is slid, and in how many of those frames the figures of the load have their ±.
 *
 * In    the built page (run `node setup.mjs` first) and the demo cars
 * Out   times in milliseconds, printed. Headless Chromium draws WebGL in software here: a graphics card is faster.
 */
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { startServer } from '../src/server/start.ts';

const ROOT = join(import.meta.dirname, '..');
const CARS = ['fenwold-201', 'ashgarth-501'];
const FRAMES = 120;
const ROUNDS = 3;

/** Moves a slider once a frame, as a hand does, and takes the time between frames and the work within each. */
const drag = (slid: string, row: string): string => `new Promise((resolve) => {
  const slider = document.querySelector('${slid}');
  slider.focus();
  const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value').set;
  const [low, high] = [Number(slider.min), Number(slider.max)];
  const between = [];
  const work = [];
  let told = 0;
  let last = performance.now();
  let k = 0;
  const frame = async (now) => {
    if (k > 0) between.push(now - last);
    last = now;
    if (k === ${FRAMES}) return resolve({ between, work, told: told / ${FRAMES} });
    const start = performance.now();
    set.call(slider, String(low + (high - low) * (0.5 + 0.45 * Math.sin(k / 9))));
    slider.dispatchEvent(new Event('input', { bubbles: true }));
    // the page answers an input within the same turn; what it left for the next one is seen between frames
    await null;
    await null;
    work.push(performance.now() - start);
    if (document.querySelector('${row}')?.textContent.includes('±')) told += 1;
    k += 1;
    requestAnimationFrame(frame);
  };
  requestAnimationFrame(frame);
})`;

/** Notes every time that the page's thread is held for more than a twentieth of a second. */
const WATCH = `window.held = [];
new PerformanceObserver((list) => {
  for (const entry of list.getEntries()) window.held.push(entry.duration);
}).observe({ type: 'longtask', buffered: true });`;

const TRAVEL = drag('.slide.up input[type=range]', '.label');
/** The sideways acceleration of the case, at a link's row of the card. */
const SIDEWAYS = drag('.case-slider:nth-of-type(2) input[type=range]', '#card .figure-row');
/** Long enough that the knots of the slide are worked out. */
const KNOTS = 6000;

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
const worst = (values: readonly number[], part: number): number =>
  [...values].sort((a, b) => a - b)[Math.floor(part * (values.length - 1))] ?? Number.NaN;
const ms = (value: number): string => `${value.toFixed(1)} ms`;

interface Opening {
  readonly paint: number;
  readonly figures: number;
  readonly spread: number;
  /** The longest that the page's own thread was held until then. */
  readonly held: number;
}

async function firstPaint(page: Page): Promise<Opening> {
  await page.locator('.label').first().waitFor();
  const figures = (await page.evaluate('performance.now()')) as number;
  await page.locator('.label .soft.number').first().waitFor();
  const spread = (await page.evaluate('performance.now()')) as number;
  const paint = (await page.evaluate(
    'performance.getEntriesByName("first-contentful-paint")[0]?.startTime ?? NaN',
  )) as number;
  const held = (await page.evaluate('Math.max(0, ...window.held)')) as number;
  return { paint, figures, spread, held };
}

interface Dragged {
  readonly between: readonly number[];
  readonly work: readonly number[];
  /** Share of the frames in which the figure had its ±. */
  readonly told: number;
}

/** The case slid when it was just taken hold of, and again when its knots are there. */
async function slideCase(browser: Browser, url: string, car: string): Promise<readonly [Dragged, Dragged]> {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  await page.goto(`${url}?car=${car}&stop=links&card=loads&doing=braking`);
  await page.locator('.in-figures summary').click();
  await page.locator('#card .figure-row .soft.number').first().waitFor();
  const first = (await page.evaluate(SIDEWAYS)) as Dragged;
  await page.waitForTimeout(KNOTS);
  const then = (await page.evaluate(SIDEWAYS)) as Dragged;
  await page.close();
  return [first, then];
}

async function measure(browser: Browser, url: string, car: string): Promise<void> {
  const opened: Awaited<ReturnType<typeof firstPaint>>[] = [];
  let dragged: Dragged = { between: [], work: [], told: 0 };
  for (let round = 0; round < ROUNDS; round += 1) {
    const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
    const page = await context.newPage();
    await page.addInitScript(WATCH);
    await page.goto(`${url}?car=${car}&stop=spring`);
    opened.push(await firstPaint(page));
    await page.locator('canvas[data-state="here"]').waitFor();
    dragged = (await page.evaluate(TRAVEL)) as Dragged;
    await context.close();
  }
  const [first, then] = await slideCase(browser, url, car);
  const of = (key: keyof Opening): string => ms(median(opened.map((each) => each[key])));
  process.stdout.write(
    [
      `${car}`,
      `  first paint                     ${of('paint')}`,
      `  figures stand                   ${of('figures')}`,
      `  their spread stands             ${of('spread')}`,
      `  thread held, at the longest     ${of('held')}`,
      `  figures and page anew, a move   ${ms(median(dragged.work))} (19 of 20 under ${ms(worst(dragged.work, 0.95))})`,
      `  between frames while dragged    ${ms(median(dragged.between))} (19 of 20 under ${ms(worst(dragged.between, 0.95))})`,
      `  load case slid: page anew       ${ms(median(then.work))} (19 of 20 under ${ms(worst(then.work, 0.95))})`,
      `  between frames while it is      ${ms(median(then.between))} (19 of 20 under ${ms(worst(then.between, 0.95))})`,
      `  frames with ±                   ${(100 * first.told).toFixed(0)} % just taken hold of, ${(100 * then.told).toFixed(0)} % after ${KNOTS / 1000} s`,
      '',
    ].join('\n'),
  );
}

const home = mkdtempSync(join(tmpdir(), 'flatpatch-bench-'));
cpSync(join(ROOT, 'cars'), home, { recursive: true });
const server = await startServer({ home, port: 0 });
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
  args: [
    '--headless',
    '--no-sandbox',
    '--disable-gpu',
    '--use-angle=swiftshader',
    '--enable-unsafe-swiftshader',
  ],
});
try {
  for (const car of CARS) await measure(browser, server.url, car);
} finally {
  await browser.close();
  await server.close();
  rmSync(home, { recursive: true, force: true });
}
