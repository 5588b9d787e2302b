import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { launchBrowser } from '../support/browser.ts';
import { demoScreens } from '../support/screens.ts';
import { served, watchedPage } from '../support/served-screens.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

describe('a kit by size, live', () => {
  test('answer, drawing and panels follow what is typed, and the form stays as it is', async () => {
    const url = await served(await demoScreens());
    const { page, complaints } = await watchedPage(browser);
    await page.goto(`${url}/kits/by-size`);
    await page.fill('#length', '1.835 m');
    await page.waitForSelector('#kit-answer h1:has-text("1.835 m by 935 mm takes 12 panels and six pins.")');
    expect(await page.textContent('.kit-panels')).toContain('Panel 900');
    expect(await page.inputValue('#length')).toBe('1.835 m');
    await page.check('text="Inside"');
    await page.waitForSelector('#kit-answer h1:has-text("can\'t be made from these panels")');
    await page.click('.near-sizes a');
    await page.waitForSelector('#kit-answer h1:has-text("inside takes")');
    expect(await page.isChecked('input[name="faces"][value="inside"]')).toBe(true);
    expect(complaints).toEqual([]);
  });

  test('says what could not be read, and takes it back when it can be again', async () => {
    const url = await served(await demoScreens());
    const { page, complaints } = await watchedPage(browser);
    await page.goto(`${url}/kits/by-size`);
    await page.fill('#width', '3 fathoms');
    await page.waitForSelector('#kit-answer h1:has-text("Width: \\"fathoms\\" is not a unit for a length here.")');
    expect(await page.locator('.kit-plan').count()).toBe(0);
    await page.fill('#width', '635');
    await page.waitForSelector('.kit-plan');
    expect(complaints).toEqual([]);
  });
});

describe.each([
  ['with script', true],
  ['without script', false],
])('%s', (_how, javaScriptEnabled) => {
  test('an L is worked out, added, and asked about', async () => {
    const url = await served(await demoScreens());
    const { page, complaints } = await watchedPage(browser, { javaScriptEnabled });
    await page.goto(`${url}/kits/by-size`);
    expect(await page.isVisible('#cutLength')).toBe(false);
    await page.check('.choice:has([value="L"]) input');
    expect(await page.isVisible('#cutLength')).toBe(true);
    for (const [field, value] of [
      ['length', '1835'],
      ['width', '1835'],
      ['cutLength', '900'],
      ['cutWidth', '60 cm'],
    ] as const)
      await page.fill(`#${field}`, value);
    await page.click('text="Work it out"');
    await page.waitForSelector(
      '#kit-answer h1:has-text("An L of 1835 mm by 1835 mm less 900 mm by 60 cm takes 16 panels")',
    );
    await page.fill('#name', 'Corner bed');
    await page.click('text="Add it and ask when it could be ready"');
    await page.waitForSelector('.notice:has-text("Corner bed added to the kits.")');
    expect(await page.inputValue('#what')).toBe('kit:corner-bed');
    expect(await page.textContent('#ready h1')).toMatch(/ready \w{3} \d+ \w{3}/);
    await page.click('text="Undo"');
    await page.waitForSelector('text=/undone|taken back/i');
    expect(complaints).toEqual([]);
  });
});

test('the drawing is as wide as a phone lets it be, and no wider', async () => {
  const url = await served(await demoScreens());
  const { page } = await watchedPage(browser, { viewport: { width: 320, height: 844 } });
  await page.goto(`${url}/kits/by-size`);
  const box = await page.locator('.kit-plan').first().boundingBox();
  expect(box?.width).toBeGreaterThan(250);
  expect((box?.x ?? 0) + (box?.width ?? 0)).toBeLessThanOrEqual(320);
});
