import { type Context, Hono } from 'hono';
import { calendarFile } from '../../views/calendar/calendar-file.ts';
import { CALENDAR, CalendarPage, type CalendarPageProps } from '../../views/calendar/calendar-page.tsx';
import { movedFeed } from '../../views/calendar/moved-feed.ts';
import {
  makeCalendarAddress,
  showCalendarAddresses,
  withdrawCalendarAddress,
} from '../usecases/calendar/calendar-addresses.ts';
import { showCalendar } from '../usecases/calendar/show-calendar.ts';
import { showMoved } from '../usecases/calendar/show-moved.ts';
import type { UseCaseContext } from '../usecases/core/context.ts';
import { wholeTyped } from '../usecases/typed/form-fields.ts';
import { missing } from './failures.tsx';
import { errorsByField, readForm } from './form.ts';
import { heldFiles } from './held-files.ts';
import { page } from './page.tsx';
import type { Screens } from './screens.ts';

const SECRET_FILE = /^([A-Za-z0-9_-]{32})\.(ics|json)$/;

const calendarPage = async (c: Context, context: UseCaseContext, state: Omit<CalendarPageProps, 'model'>) => {
  const model = await showCalendarAddresses(context);
  const frame = { title: 'Calendar', at: 'yard', yardName: model.yardName } as const;
  const status = Object.keys(state.errors).length > 0 ? 422 : 200;
  return page(c, frame, <CalendarPage model={model} {...state} />, { status });
};

/**
 * The calendar for other programs, and who may read it. What is done here is no change of the yard: an address that was
 * withdrawn must not come back by undoing.
 */
export const calendarRoutes = ({ context, addressOf }: Screens): Hono => {
  const routes = new Hono();
  const made = heldFiles();
  const madeNow = (name: string | undefined): string | null => {
    const secret = made.get(name ?? '');
    made.drop(name ?? '');
    return secret && new TextDecoder().decode(secret);
  };
  routes.get(CALENDAR, (c) => {
    const secret = madeNow(c.req.query('made'));
    return calendarPage(c, context(), {
      made: secret && addressOf(c, `/calendar/${secret}.ics`),
      typed: '',
      errors: {},
    });
  });
  routes.post(CALENDAR, async (c) => {
    const { name = '' } = await readForm(c);
    const outcome = await makeCalendarAddress(context(), name);
    if (!outcome.ok)
      return calendarPage(c, context(), { made: null, typed: name, errors: errorsByField(outcome.faults) });
    const held = made.hold(new TextEncoder().encode(outcome.value.secret));
    return c.redirect(`${CALENDAR}?made=${held}`, 303);
  });
  routes.post(`${CALENDAR}/withdraw`, async (c) => {
    await withdrawCalendarAddress(context(), wholeTyped((await readForm(c)).id) ?? -1);
    return c.redirect(CALENDAR, 303);
  });
  routes.get('/calendar/:file', async (c) => {
    const [, secret = '', kind] = SECRET_FILE.exec(c.req.param('file')) ?? [];
    if (kind === 'json') {
      const moved = await showMoved(context(), secret);
      return moved ? c.body(movedFeed(moved), 200, { 'Content-Type': 'application/feed+json' }) : missing(c);
    }
    const model = kind ? await showCalendar(context(), secret) : null;
    if (!model) return missing(c);
    return c.body(calendarFile(model), 200, { 'Content-Type': 'text/calendar; charset=utf-8' });
  });
  return routes;
};
