import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { photoFolder } from '../../db/photo-folder.ts';
import { minuteOf } from '../../shared/time.ts';
import { piecePath } from '../../views/trace/piece-path.ts';
import { launchBrowser } from '../support/browser.ts';
import { screensOn } from '../support/screens.ts';
import { served, watchedPage } from '../support/served-screens.ts';
import { smallYard } from '../support/small-yard.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';
import { yardContext } from '../support/yard-context.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

const FILLED = '2027-04-08T08:00:00+01:00';
const PIECE = piecePath({ minute: minuteOf(FILLED), mould: '900 no. 1' });

/** A picture as a phone takes it, larger than anybody looks at: drawn by a browser. */
const takenPhoto = async (): Promise<Buffer> => {
  const page = await browser.newPage();
  const base64 = await page.evaluate(`(() => {
    const canvas = Object.assign(document.createElement('canvas'), { width: 2400, height: 3200 });
    const paint = canvas.getContext('2d');
    for (let at = 0; at < 3200; at += 40) {
      paint.fillStyle = 'hsl(' + at / 10 + ' 40% 60%)';
      paint.fillRect(0, at, 2400, 40);
    }
    return canvas.toDataURL('image/jpeg', 0.95).split(',')[1];
  })()`);
  await page.close();
  return Buffer.from(String(base64), 'base64');
};

const screensWithPiece = async () => {
  const { database, now } = await yardContext(
    smallYard({ inMould: [{ mould: '900 no. 1', casting: 'panel-900', filledAt: FILLED }] }),
  );
  return screensOn(database, now, { photos: photoFolder(join(temporaryFolder(), 'photos')) });
};

const sizeShown = (page: Page) =>
  page.evaluate(`(async () => {
    const picture = document.querySelector('.photos img');
    await picture.decode();
    return [picture.naturalWidth, picture.naturalHeight];
  })()`);

describe.each([
  ['with script it is made smaller before it is sent', true, [1200, 1600]],
  ['without script it is sent as it is', false, [2400, 3200]],
])('a photo is chosen and kept: %s', (_how, javaScriptEnabled, size) => {
  test('and removed again', async () => {
    const url = await served(await screensWithPiece());
    const { page, complaints } = await watchedPage(browser, { javaScriptEnabled });
    await page.goto(`${url}${PIECE}`);
    await page.setInputFiles('#photo', { name: 'IMG_1.jpg', mimeType: 'image/jpeg', buffer: await takenPhoto() });
    await page.getByRole('button', { name: 'Keep the photo' }).click();
    await page.waitForSelector('.photos img');
    expect(await sizeShown(page)).toEqual(size);
    await page.getByRole('button', { name: /^Remove: photo of/ }).click();
    await page.waitForSelector('text=There is none yet.');
    await page.getByRole('button', { name: /^Undo: Photo of a piece/ }).click();
    await page.waitForSelector('.photos img');
    expect(complaints).toEqual([]);
  });
});

test('what the browser cannot read is said to be no picture, and nothing is lost', async () => {
  const url = await served(await screensWithPiece());
  const { page } = await watchedPage(browser);
  await page.goto(`${url}${PIECE}`);
  await page.setInputFiles('#photo', { name: 'IMG_1.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('no picture') });
  await page.getByRole('button', { name: 'Keep the photo' }).click();
  await page.waitForSelector('.form-errors');
  expect(await page.textContent('.form-errors')).toContain('That is no picture that can be shown');
});

test('taken without a signal it is kept on the phone, and sent once when there is one', async () => {
  const url = await served(await screensWithPiece());
  const { page } = await watchedPage(browser);
  await page.goto(`${url}${PIECE}`);
  const photo = { name: 'IMG_1.jpg', mimeType: 'image/jpeg', buffer: await takenPhoto() };
  await page.context().setOffline(true);
  await page.setInputFiles('#photo', photo);
  await page.getByRole('button', { name: 'Keep the photo' }).click();
  await page.waitForSelector('#waiting li');
  // Taken a second time, it is the same photo.
  await page.setInputFiles('#photo', photo);
  await page.getByRole('button', { name: 'Keep the photo' }).click();
  await page.waitForSelector('[data-photo-says]:has-text("Kept on this phone")');
  expect(await page.locator('#waiting li').count()).toBe(1);
  await page.context().setOffline(false);
  await page.waitForSelector('#waiting', { state: 'hidden' });
  await page.goto(`${url}${PIECE}`);
  expect(await page.locator('.photos img').count()).toBe(1);
  expect(await sizeShown(page)).toEqual([1200, 1600]);
});
