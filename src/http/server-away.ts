import type { Context, MiddlewareHandler } from 'hono';
import type { Screens } from './screens.ts';

/** Keeps with a request for how long the server of the database has been away, as its page says. */
export const seeServerAway =
  ({ context }: Screens): MiddlewareHandler =>
  (c, next) => {
    c.set('minutesAway', context().database.minutesAway());
    return next();
  };

/** For how many minutes what is shown may be behind; null where it is not. */
export const minutesAwayAt = (c: Context): number | null => (c.get('minutesAway') as number | undefined) ?? null;
