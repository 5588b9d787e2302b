import { Hono } from 'hono';
import { DayRead } from '../../views/parts/day-field.tsx';
import { dateReading } from '../usecases/plan/date-reading.ts';
import { readDate } from '../usecases/typed/date-typed.ts';
import { page } from './page.tsx';
import type { Screens } from './screens.ts';

const LONGEST = 60;

/** How a day that is being typed is read, for the line below its field. */
export const dayRoutes = ({ context }: Screens): Hono => {
  const routes = new Hono();
  routes.get('/day', async (c) => {
    const field = c.req.query('of');
    const typed = ((field && c.req.query(field)) || '').slice(0, LONGEST);
    const read = typed.trim() === '' ? null : readDate(typed, await dateReading(context()));
    return page(c, { title: 'A day' }, <DayRead typed={typed} read={read} />);
  });
  return routes;
};
