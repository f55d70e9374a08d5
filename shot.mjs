import { chromium } from 'playwright-core';
const b = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--headless','--use-angle=swiftshader','--no-sandbox','--enable-unsafe-swiftshader'] });
const shots = JSON.parse(process.argv[2]);
for (const [name, address, w, h, acts] of shots) {
  const c = await b.newContext({ viewport: { width: w, height: h }, reducedMotion: 'reduce' });
  const p = await c.newPage();
  p.on('pageerror', (e) => console.log(name, 'ERR', e.message));
  p.on('console', (l) => l.type()==='error' && console.log(name, 'LOG', l.text()));
  await p.goto('http://127.0.0.1:4399/' + address);
  await p.locator('.sheet').waitFor();
  await p.waitForTimeout(2500);
  if (acts) await p.evaluate(acts);
  await p.waitForTimeout(2500);
  await p.screenshot({ path: `/tmp/shot-${name}.png`, fullPage: w < 500 });
  await c.close();
}
await b.close();
