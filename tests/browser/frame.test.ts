import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { SCREENS } from '../../views/layout.tsx';
import { launchBrowser } from '../support/browser.ts';
import { demoScreens } from '../support/screens.ts';
import { served, watchedPage } from '../support/served-screens.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

const frameAt = async (width: number): Promise<{ page: Page; url: string }> => {
  const url = await served(await demoScreens());
  const { page } = await watchedPage(browser, { viewport: { width, height: 844 }, javaScriptEnabled: false });
  await page.goto(`${url}/today`);
  return { page, url };
};

const boxesOf = async (page: Page) => {
  const links = await page.locator('nav.screens a').all();
  return Promise.all(links.map(async (link) => (await link.boundingBox())!));
};

test('on a phone the screens of the day stand in one line, all in sight, and the yard beside its name', async () => {
  const boxes = await boxesOf((await frameAt(390)).page);
  const [yard, ...day] = boxes.reverse();
  expect(new Set(day.map(({ y }) => y)).size).toBe(1);
  expect(yard!.y).toBeLessThan(day[0]!.y);
  for (const { x, width, height } of boxes) {
    expect(Math.min(width, height)).toBeGreaterThanOrEqual(48);
    expect(x).toBeGreaterThanOrEqual(0);
    expect(x + width).toBeLessThanOrEqual(390);
  }
});

test('on a desk all seven stand in one line', async () => {
  const boxes = await boxesOf((await frameAt(1280)).page);
  expect(new Set(boxes.map(({ y }) => y)).size).toBe(1);
});

test('where not all fit the screen one is on is in sight, without script', async () => {
  const { page, url } = await frameAt(280);
  for (const { path, name } of SCREENS) {
    await page.goto(url + path);
    const { x, y, width, height } = (await page.locator('nav.screens [aria-current]').boundingBox())!;
    expect([name, x >= 0, x + width <= 280]).toEqual([name, true, true]);
    const atop = `document.elementFromPoint(${x + width / 2}, ${y + height / 2}).textContent`;
    expect(await page.evaluate(atop)).toBe(name);
  }
});

test('in colours that the reader chose the screen one is on is marked, and drawings have them too', async () => {
  const url = await served(await demoScreens());
  const { page } = await watchedPage(browser, { forcedColors: 'active', colorScheme: 'dark' });
  await page.goto(`${url}/moulds`);
  const styleOf = (selector: string, property: string) =>
    page.evaluate<string>(`getComputedStyle(document.querySelector('${selector}')).${property}`);
  const ground = await styleOf('body', 'backgroundColor');
  expect(await styleOf('nav.screens a:not([aria-current])', 'borderBottomColor')).toBe(ground);
  expect(await styleOf('nav.screens [aria-current]', 'borderBottomColor')).not.toBe(ground);
  for (const part of ['.mould-frame', '.mould-hatch']) expect(await styleOf(part, 'stroke')).not.toBe(ground);
  const painted = '.mould-shape.is-full .mould-painted';
  expect(await styleOf(painted, 'fill')).not.toBe(await styleOf('.mould-shape.is-full .mould-frame', 'fill'));
});
