import jsQR from 'jsqr';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launchBrowser } from '../support/browser.ts';
import { demoScreens } from '../support/screens.ts';
import { served, watchedPage } from '../support/served-screens.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

/** The pixels of a picture, as the browser itself reads it. */
const PIXELS = `async (base64) => {
  const picture = new Image();
  picture.src = 'data:image/png;base64,' + base64;
  await picture.decode();
  const canvas = Object.assign(document.createElement('canvas'), { width: picture.width, height: picture.height });
  const drawing = canvas.getContext('2d');
  drawing.drawImage(picture, 0, 0);
  const { data } = drawing.getImageData(0, 0, picture.width, picture.height);
  return { width: picture.width, height: picture.height, data: [...data] };
}`;

interface Pixels {
  width: number;
  height: number;
  data: number[];
}

/* As printed: 30 mm with 150 dots an inch, about what a phone's camera sees from a hand's breadth. */
test('a label at its size on paper is read by a decoder of others, and leads to the page of its mould', async () => {
  const url = await served(await demoScreens());
  const { page } = await watchedPage(browser, { deviceScaleFactor: 150 / 96, colorScheme: 'dark' });
  await page.goto(`${url}/moulds/labels`);
  await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
  for (const label of (await page.locator('.label').all()).slice(0, 3)) {
    const name = await label.locator('strong').textContent();
    const code = label.locator('.qr-code');
    const box = (await code.boundingBox())!;
    expect(Math.abs(box.width - (30 / 25.4) * 96)).toBeLessThan(1);
    const picture = (await code.screenshot()).toString('base64');
    const { data, width, height } = await page.evaluate<Pixels>(`(${PIXELS})(${JSON.stringify(picture)})`);
    const read = jsQR(Uint8ClampedArray.from(data), width, height)?.data;
    expect(read).toBe(`${url}/mould/${encodeURIComponent(name!)}`);
  }
  await page.emulateMedia({ media: 'screen' });
  await page.goto(`${url}/mould/1200%20no.%201`);
  await page.getByRole('heading', { level: 1, name: /^1200 no\. 1: / }).waitFor();
});
