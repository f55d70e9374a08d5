/**
 * Takes the pictures for the README from the real page: the demo car on torsion bars, at rest in bump, and its primaries.
 *
 * In    the built page (run `node setup.mjs` first) and the demo cars
 * Out   docs/picture.png, docs/primaries.png
 */
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { startServer } from '../src/server/start.ts';

const ROOT = join(import.meta.dirname, '..');
const PICTURE = join(ROOT, 'docs/picture.png');
const PICTURE_OF_PIPES = join(ROOT, 'docs/primaries.png');
const PIPES = '?car=ashgarth-501&way=gas&view=free&azimuth=52&elevation=24&cut=0';
const SHOWN = '?car=ashgarth-501&stop=spring&view=free&travel=14&azimuth=31&elevation=22';

const folder = mkdtempSync(join(tmpdir(), 'flatpatch-picture-'));
cpSync(join(ROOT, 'cars'), folder, { recursive: true });
const server = await startServer({ home: folder, port: 0 });
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
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 }, reducedMotion: 'reduce' });
  await page.goto(server.url + SHOWN);
  await page.locator('canvas[data-state="here"]').waitFor();
  // the picture is taken once the spread stands beside the figures
  await page.locator('.label .soft.number').first().waitFor();
  await page.evaluate('document.fonts.ready');
  await page.screenshot({ path: PICTURE });
  process.stdout.write(`${PICTURE}\n`);
  await page.goto(server.url + PIPES);
  await page.getByRole('button', { name: 'Find a set' }).click();
  await page.getByText('Nothing more is gained by small changes.').waitFor({ timeout: 120_000 });
  await page.screenshot({ path: PICTURE_OF_PIPES });
  process.stdout.write(`${PICTURE_OF_PIPES}\n`);
} finally {
  await browser.close();
  await server.close();
  rmSync(folder, { recursive: true, force: true });
}
