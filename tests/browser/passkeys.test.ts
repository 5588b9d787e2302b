import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { behindDoor, OWNER } from '../support/behind-door.ts';
import { launchBrowser } from '../support/browser.ts';
import { served, watchedPage } from '../support/served-screens.ts';
import { yardContext } from '../support/yard-context.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

/** A phone that knows its owner and says yes to everything (the DevTools protocol of Chromium, domain WebAuthn). */
const withAuthenticator = async (page: Page): Promise<void> => {
  const devtools = await page.context().newCDPSession(page);
  await devtools.send('WebAuthn.enable');
  await devtools.send('WebAuthn.addVirtualAuthenticator', {
    options: {
      ...{ protocol: 'ctap2', transport: 'internal', hasResidentKey: true, hasUserVerification: true },
      ...{ isUserVerified: true, automaticPresenceSimulation: true },
    },
  });
};

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });

test('a passkey is made by whoever knows the password, signs in without it, once each time, and not once it is taken off', async () => {
  const { database, now } = await yardContext();
  const { app, post } = await behindDoor(database, { now });
  const url = (await served({ app })).replace('127.0.0.1', 'localhost');
  const { page } = await watchedPage(browser);
  await withAuthenticator(page);

  await page.goto(`${url}/password`);
  await page.fill('#name', OWNER.name);
  await page.fill('#password', OWNER.password);
  await button(page, 'Sign in').click();
  await page.fill('#device', 'Phone');
  await page.fill('#own', OWNER.password);
  await button(page, 'Add a passkey').click();
  await button(page, 'Make the passkey').click();
  await page.waitForSelector('button[aria-label="Take off the passkey Phone"]');

  await button(page, 'Sign out').click();
  await page.waitForURL('**/sign-in');
  await page.goto(`${url}/moulds`);
  const sent = page.waitForRequest('**/sign-in/passkey');
  await button(page, 'Sign in with a passkey').click();
  await page.waitForURL(`${url}/moulds`);
  expect(await page.textContent('.signed-in')).toContain(OWNER.name);
  const answer = new URLSearchParams((await sent).postData() ?? '').get('answer') ?? '';
  expect(JSON.parse(answer)).toMatchObject({ type: 'public-key' });
  expect((await post('/sign-in/passkey', { answer })).status).toBe(401);

  await page.goto(`${url}/password`);
  await button(page, 'Take off the passkey Phone').click();
  await page.waitForSelector('button[aria-label="Take off the passkey Phone"]', { state: 'detached' });
  await button(page, 'Sign out').click();
  await page.waitForURL('**/sign-in');
  await button(page, 'Sign in with a passkey').click();
  await page.waitForSelector('.form-errors');
  expect(await page.textContent('.form-errors')).toContain('That passkey is not known here');
});
