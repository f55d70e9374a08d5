/** The page as a mechanic meets it: floor, sheet, slider, working slip, line of stops, two hands on one file. */
import assert from 'node:assert/strict';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { after, before, describe, test } from 'node:test';
import { goTo, NO_BROWSER, openPage, openWorkshop, sheetStands, type Workshop } from './browser.ts';

const CAR = 'fenwold-201';
const carFile = (workshop: Workshop, id: string): string => join(workshop.home, id, 'car.yaml');

describe('the page', { skip: NO_BROWSER }, () => {
  let workshop: Workshop;
  /** One page for the tests in which it is no matter how one came to the place. */
  let held: Awaited<ReturnType<typeof openPage>>;
  before(async () => {
    workshop = await openWorkshop();
    held = await openPage(workshop);
  });
  after(() => workshop?.close());

  const pageAt = async (address: string): Promise<typeof held> => {
    held.complaints.length = 0;
    await goTo(held, address);
    return held;
  };

  test('the floor shows every car, drawn, and says that they are invented', async () => {
    const page = held;
    await page.getByText('Fenwold 201').waitFor();
    assert.equal(await page.locator('.bay:is(button)').count(), 3);
    assert.ok((await page.locator('.bay .invented').count()) === 3);
    await page.locator('.bay .flat .tyre').nth(11).waitFor();
    assert.deepEqual(page.complaints, []);
  });

  test('a car opens from the floor, and the way back stands in the title block', async () => {
    const page = await pageAt('');
    await page.getByText('Fenwold 201').click();
    await sheetStands(page);
    await page.waitForURL(/car=fenwold-201/);
    await page.getByRole('region', { name: 'Title block' }).getByText('invented example').waitFor();
    await page.locator('canvas[data-state="here"]').waitFor();
    await page.locator('.floor-word').click();
    await page.locator('.floor').waitFor();
    assert.deepEqual(page.complaints, []);
  });

  test('the slider moves the wheel: the rocker angle changes, and its ± comes when the hand rests', async () => {
    const page = await pageAt(`?car=${CAR}&stop=rocker`);
    const angle = page.locator('[data-figure="rockerAngle"]');
    await angle.waitFor();
    const slider = page.getByRole('slider', { name: 'travel' });
    const number = async (): Promise<number> =>
      Number(((await angle.locator('b').textContent()) ?? '').replace('−', '-'));
    assert.equal(await number(), 0);
    await slider.fill('0.02');
    await page.getByText('front left at +20.0 mm').waitFor();
    const up = await number();
    assert.ok(up > 1, `the rocker turns in bump, by ${up} degrees`);
    await angle.getByText('±').waitFor();
    await page.waitForURL(/travel=20/);
    await page.reload();
    await angle.waitFor();
    assert.ok(Math.abs((await number()) - up) < 0.05, 'the address holds the travel');
    assert.deepEqual(page.complaints, []);
  });

  test('a wheel is dragged up in the drawing', async () => {
    const page = await pageAt(`?car=${CAR}&stop=rocker`);
    await page.locator('canvas[data-state="here"]').waitFor();
    const box = (await page.locator('.paper').boundingBox())!;
    const tyre = { x: box.x + box.width * 0.1, y: box.y + box.height * 0.45 };
    await page.mouse.move(tyre.x, tyre.y);
    await page.mouse.down();
    await page.mouse.move(tyre.x, tyre.y - 6, { steps: 4 });
    await page.mouse.up();
    await page.getByText(/front right at \+\d/).waitFor();
  });

  test('typing a travel with a unit of its own', async () => {
    const page = await pageAt(`?car=${CAR}`);
    const typed = page.getByRole('textbox', { name: 'travel, mm' });
    await typed.fill('0.5 in');
    await typed.press('Enter');
    await page.getByText('front left at +12.7 mm').waitFor();
  });

  test('a working slip opens from a figure: formula, origins, shares, and closes by Escape', async () => {
    const page = await pageAt(`?car=${CAR}`);
    await page.locator('[data-figure="wheelRate"]').click();
    const slip = page.getByRole('dialog', { name: 'Working' });
    await slip.locator('math mfrac, math msup, math mo').first().waitFor();
    await slip.getByText('What the ± is made of').waitFor();
    assert.ok((await slip.locator('.shares li').count()) >= 3);
    assert.ok((await slip.locator('.terms .origin').count()) > 0);
    await page.keyboard.press('Escape');
    await slip.waitFor({ state: 'detached' });
    assert.deepEqual(page.complaints, []);
  });

  test('figures of corner, axle and whole car open their working at every stop', async () => {
    const page = await pageAt(`?car=ashgarth-501&stop=spring`);
    await page.locator('.figure-row').first().waitFor();
    for (const stop of ['tyre', 'upright', 'links', 'rocker', 'spring']) {
      await page.locator(`[data-stop="${stop}"]`).click();
      const groups = page.locator('.figure-rows');
      for (let k = 0; k < (await groups.count()); k += 1) {
        await groups.nth(k).locator('button.figure-row').last().click();
        const slip = page.getByRole('dialog', { name: 'Working' });
        await slip.locator('h2, [role="status"]').first().waitFor();
        assert.deepEqual(await slip.locator('[role="status"]').allTextContents(), [], page.url());
        await page.keyboard.press('Escape');
      }
    }
    assert.deepEqual(page.complaints, []);
  });

  test('keyboard alone: along the line, views, and the slider', async () => {
    const page = await pageAt(`?car=${CAR}&stop=tyre`);
    await sheetStands(page);
    await page.keyboard.press('ArrowRight');
    await page.getByRole('heading', { name: 'Upright, front left' }).waitFor();
    await page.keyboard.press('ArrowRight');
    await page.getByRole('heading', { name: 'Links, front left' }).waitFor();
    await page.keyboard.press('p');
    await page.getByRole('heading', { name: 'Plan' }).waitFor();
    await page.getByRole('slider', { name: 'travel' }).focus();
    await page.keyboard.press('ArrowUp');
    await page.getByText('front left at +0.1 mm').waitFor();
    // the arrow moved the wheel and not the stop
    await page.getByRole('heading', { name: 'Links, front left' }).waitFor();
  });

  test('the walk along the line is read aloud: stop, lead figure with spread, what comes next', async () => {
    const page = await pageAt(`?car=${CAR}&stop=rocker`);
    await sheetStands(page);
    await page.keyboard.press('ArrowRight');
    const said = page.locator('output');
    await said.getByText(/^Spring, front left\./).waitFor();
    assert.match(
      (await said.textContent()) ?? '',
      /^Spring, front left\. Wheel rate [\d.]+ plus or minus [\d.]+ N\/mm\. Next: case\.$/,
    );
    await page.keyboard.press('ArrowRight');
    await said
      .getByText(/^Case\. Both rear corners stand on the gear case; .* goes forward into the engine\.$/)
      .waitFor();
  });

  test('what the car is doing is chosen by a picture, and the title block says it', async () => {
    const page = await pageAt(`?car=${CAR}`);
    await sheetStands(page);
    const block = page.getByRole('region', { name: 'Title block' });
    const choice = page.getByRole('group', { name: 'What the car is doing' });
    await block.getByText('standing as surveyed').waitFor();
    await choice.getByRole('button', { name: /^rolled/ }).click();
    await block.getByText('front axle rolled, front left at +10.0 mm').waitFor();
    await choice.getByRole('button', { name: /^both/ }).click();
    await block.getByText('both front wheels at +10.0 mm').waitFor();
    assert.equal(await choice.getByRole('button', { pressed: true }).count(), 1);
    await choice.getByRole('button', { name: 'standing' }).click();
    await block.getByText('standing as surveyed').waitFor();
  });

  test('the page prints as the sheet of the corner, on paper of its own size', async () => {
    const page = await pageAt(`?car=${CAR}&stop=spring`);
    await page.locator('.printed-page svg').first().waitFor({ state: 'attached' });
    const pages = await page.locator('.printed-page').count();
    const printed = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
    assert.equal(printed.match(/\/Type \/Page\b/g)?.length, pages, 'no page more than the sheet has');
    // A4 is 210 by 297 mm (ISO 216), 595 by 842 points; the browser rounds to its own pixels
    const [, width, height] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(printed)!.map(Number);
    assert.ok(Math.abs(width! - 595.3) < 1 && Math.abs(height! - 841.9) < 1, `${width} by ${height}`);
    assert.match(
      (await page.locator('.printed').textContent())!,
      /Coil spring sheet.*INVENTED EXAMPLE|INVENTED EXAMPLE.*Caution/s,
    );
    await page.emulateMedia({ media: 'print' });
    assert.equal(await page.locator('.drawing').isVisible(), false);
    await page.emulateMedia({ media: null });
  });

  test('ways to come say what they will need', async () => {
    const page = await pageAt(`?car=${CAR}`);
    await sheetStands(page);
    await page.getByRole('tab', { name: 'car book' }).click();
    await page.getByText('It will need part numbers').waitFor();
  });

  test('two specs stand side by side with their differences', async () => {
    const page = await pageAt(`?car=ashgarth-501&stop=spring`);
    await sheetStands(page);
    const beside = page.getByRole('combobox', { name: 'beside it' });
    const other = (await beside.locator('option').last().textContent()) ?? '';
    await beside.selectOption(other);
    await page.getByRole('heading', { name: 'Two specs, front left' }).waitFor();
    assert.equal(await page.locator('.half').count(), 2);
    await page.locator('.differences tbody').nth(3).waitFor();
  });

  test('a name that is markup is shown as text', async () => {
    const text = readFileSync(carFile(workshop, CAR), 'utf8');
    const hostile = '<img src=x onerror="window.broken=1"><b>bold';
    writeFileSync(carFile(workshop, CAR), text.replace(/^( +name: ).*$/m, `$1'${hostile}'`));
    const page = await pageAt(`?car=${CAR}`);
    await page.getByText(hostile).first().waitFor();
    assert.equal(await page.evaluate('window.broken'), undefined);
    writeFileSync(carFile(workshop, CAR), text);
    // the page follows the file by itself
    await page.getByText('Fenwold 201').first().waitFor();
  });

  test('a file that does not read says where and what to do, and the page follows when it is mended', async () => {
    const text = readFileSync(carFile(workshop, CAR), 'utf8');
    const page = await pageAt(`?car=${CAR}`);
    await sheetStands(page);
    writeFileSync(carFile(workshop, CAR), text.replace(/loadedRadius: .*/, 'loadedRadius: 3 mm'));
    await page.getByText('loaded radius').first().waitFor();
    await page
      .getByText(/^line \d+/)
      .first()
      .waitFor();
    writeFileSync(carFile(workshop, CAR), text);
    await page.locator('.sheet').waitFor();
  });
});
