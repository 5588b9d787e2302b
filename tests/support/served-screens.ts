import { type ServerType, serve } from '@hono/node-server';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { onTestFinished } from 'vitest';
import type { TestScreens } from './screens.ts';

/** Serves the screens on a free port until the test is over. */
export const served = ({ app }: Pick<TestScreens, 'app'>): Promise<string> =>
  new Promise((resolve) => {
    const server: ServerType = serve({ fetch: app.fetch, hostname: '127.0.0.1', port: 0 }, ({ port }) =>
      resolve(`http://127.0.0.1:${port}`),
    );
    onTestFinished(() => {
      server.close();
    });
  });

export interface WatchedPage {
  page: Page;
  /** Everything the browser complained about: errors and warnings on the console, and scripts that threw. */
  complaints: string[];
}

/** What the browser says where a test keeps the service worker out. */
const KEPT_OUT = 'Service Worker registration blocked';

/**
 * A page that writes down what the browser complains about; the caller closes its context. No service worker stands between it
 * and the server unless the options allow one: what a test answers in the server's place would not be seen.
 */
export const pageWatched = async (browser: Browser, options: BrowserContextOptions = {}): Promise<WatchedPage> => {
  const context = await browser.newContext({
    ...{ viewport: { width: 390, height: 844 }, serviceWorkers: 'block' as const },
    ...options,
  });
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (message.text().startsWith(KEPT_OUT)) return;
    if (['error', 'warning'].includes(message.type())) complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  return { page, complaints };
};

/** The same, closed when the test is over. */
export const watchedPage = async (browser: Browser, options: BrowserContextOptions = {}): Promise<WatchedPage> => {
  const watched = await pageWatched(browser, options);
  onTestFinished(() => watched.page.context().close());
  return watched;
};
