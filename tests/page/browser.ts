/**
 * The real page in a real browser against the real server, on a copy of the demo workshop.
 *
 * The page is first seen to be built from the sources as they stand, by setup.mjs, once for all test files that ask;
 * each then has a copy of its own, which no later build takes from under it.
 */
import { execFileSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after } from 'node:test';
import { type Browser, chromium, type Page } from 'playwright-core';
import { startServer } from '../../src/server/start.ts';

const ROOT = join(import.meta.dirname, '../..');

const PLACES = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];
export const CHROMIUM = process.env.CHROMIUM ?? PLACES.find((place) => existsSync(place));

/** Said where there is no browser: the page's tests are then told as left out, not as passed. */
export const NO_BROWSER =
  CHROMIUM === undefined
    ? 'no Chromium on this machine: install chromium, or set CHROMIUM to its path'
    : false;

/**
 * Of two lists of this kind Chromium heeds the last alone, so that those of playwright's own that bear on a page come
 * first; the rest would make every window load pages of the browser's own for its address line, at three times the
 * work of the window itself.
 */
const WITHOUT = [
  'AvoidUnnecessaryBeforeUnloadCheckSync',
  'DestroyProfileOnBrowserClose',
  'HttpsUpgrades',
  'HttpsFirstBalancedModeAutoEnable',
  'LensOverlay',
  'MediaRouter',
  'PaintHolding',
  'ThirdPartyStoragePartitioning',
  'OptimizationHints',
  'NetworkTimeServiceQuerying',
  'AimEnabled',
  'PreconnectToSearch',
  'WebUIOmniboxPopup',
  'WebUIOmniboxAimPopup',
  'WebUIOmniboxFullPopup',
];

export const ARGUMENTS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  `--disable-features=${WITHOUT.join(',')}`,
];

export interface Workshop {
  readonly url: string;
  readonly home: string;
  /** This test file's copy of the built page. */
  readonly web: string;
  readonly browser: Browser;
  /** The page that `pageAt` walks on with. */
  held?: Promise<OpenPage>;
  close(): Promise<void>;
}

/** A page with what it complained of. */
export type OpenPage = Page & { complaints: string[] };

/** One for all test files of a process: opening it takes a second of a processor. */
let opened: Promise<Browser> | undefined;
after(async () => (await opened)?.close());

export async function openWorkshop(): Promise<Workshop> {
  const folder = mkdtempSync(join(tmpdir(), 'flatpatch-page-'));
  const home = join(folder, 'home');
  const web = join(folder, 'web');
  cpSync(join(ROOT, 'cars'), home, { recursive: true });
  execFileSync(process.execPath, [join(ROOT, 'setup.mjs')], { stdio: ['ignore', 'ignore', 'inherit'] });
  cpSync(join(ROOT, 'dist/web'), web, { recursive: true });
  const server = await startServer({ home, port: 0, web });
  const launched = opened ?? chromium.launch({ executablePath: CHROMIUM!, args: ARGUMENTS });
  opened = launched;
  const browser = await launched;
  return {
    url: server.url,
    home,
    web,
    browser,
    close: async () => {
      await Promise.all(browser.contexts().map((context) => context.close()));
      await server.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

export const DESK: Size = { width: 1440, height: 900 };
export const PHONE: Size = { width: 390, height: 844 };

/** A page of its own, with nothing remembered. What the page complains of is gathered in `complaints`. */
export async function openPage(
  workshop: Workshop,
  address = '',
  size: Size = DESK,
  light: 'light' | 'dark' = 'light',
): Promise<OpenPage> {
  const context = await workshop.browser.newContext({
    viewport: size,
    colorScheme: light,
    reducedMotion: 'reduce',
  });
  const page = Object.assign(await context.newPage(), { complaints: [] as string[] });
  page.on('pageerror', (reason) => page.complaints.push(reason.message));
  page.on('console', (line) => {
    if (line.type() === 'error') page.complaints.push(line.text());
  });
  page.setDefaultTimeout(20_000);
  await page.goto(workshop.url + address);
  return page;
}

/**
 * The one page of a test file, taken to a place as if it were just opened there: nothing is remembered, and it comes
 * from the floor, so that nothing stands open. Opening a page anew takes seconds of a processor; this is for tests in
 * which it is no matter how one came.
 */
export async function pageAt(workshop: Workshop, address: string): Promise<OpenPage> {
  if (workshop.held === undefined) {
    workshop.held = openPage(workshop, address);
    return workshop.held;
  }
  const page = await workshop.held;
  await goTo(page, '');
  await page.evaluate('localStorage.clear(); sessionStorage.clear()');
  page.complaints.length = 0;
  await goTo(page, address);
  return page;
}

/**
 * To another place in the same page, as by the browser's own arrows: the car that was opened and worked out before is
 * there already. For tests in which it is no matter how one came.
 */
export async function goTo(page: Page, address: string): Promise<void> {
  await page.evaluate((search) => {
    // as on a page just loaded, no part has the keyboard
    if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
    history.pushState(null, '', search === '' ? location.pathname : search);
    dispatchEvent(new PopStateEvent('popstate'));
  }, address);
  await settled(page);
}

/** The page and its drawing have taken in a new place or window, and nothing more is awaited. */
export async function settled(page: Page): Promise<void> {
  await page.evaluate('new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))');
  await page.locator('.floor .flat, .sheet').first().waitFor();
  await page.locator('[aria-busy="true"]').first().waitFor({ state: 'detached' });
}

/** Waits until the sheet of a car stands and its figures have their ±. */
export async function sheetStands(page: Page): Promise<void> {
  await page.locator('.sheet').waitFor();
  await page.locator('.label, .card').first().waitFor();
}
