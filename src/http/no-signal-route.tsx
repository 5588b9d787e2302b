import { Hono } from 'hono';
import { NO_SIGNAL, NoSignalPage } from '../../views/plain/no-signal-page.tsx';
import { page } from './page.tsx';

/** The page that a phone keeps to show it where it has no other: it knows nothing of the yard. */
export const noSignalRoute = (): Hono =>
  new Hono().get(NO_SIGNAL, (c) => page(c, { title: 'No signal', place: 'yard' }, <NoSignalPage />));
