import { dateOfDay } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { sessionsOf } from '../../../src/engine/calendar/sessions.ts';
import { piecesOf } from './demand.ts';
import type { Dice } from './dice.ts';

/** What one piece asks of a person: prep, its share of a batch, stripping, cleaning. */
const MINUTES_PER_PIECE = 45;

/** Day by day, how many pieces people and moulds could have made by then, roughly. */
const capacityByDay = (yard: YardFile): { day: number; pieces: number }[] => {
  const moulds = yard.moulds.filter((x) => x.condition !== 'retired').length;
  let pieces = 0;
  return sessionsOf(yard, calendarOf(yard.yard.timeZone)).map((session) => {
    const open = session.windows.filter((x) => x.allows.includes('batch'));
    const personMinutes = open.reduce((sum, x) => sum + (x.end - x.start) * x.crew, 0);
    pieces += Math.min(personMinutes / MINUTES_PER_PIECE, moulds * (1 + (session.to - session.from) / 240));
    return { day: session.day, pieces };
  });
};

/**
 * Gives orders, in a random sequence, the dates by which the yard could about make them, less some: contested, so that
 * what goes first matters. One in ten has none, a few are in the past.
 */
export const withDueDates = (dice: Dice, yard: YardFile): YardFile => {
  const capacity = capacityByDay(yard);
  const cureDays = Math.max(0, ...yard.mixes.map((x) => x.cureHours)) / 24;
  const last = capacity.at(-1)?.day ?? 0;
  let needed = 0;
  const due = new Map<string, string>();
  for (const order of dice.some(yard.orders, yard.orders.length)) {
    needed += [...piecesOf(order, yard.kits).values()].reduce((sum, count) => sum + count, 0);
    const aim = needed * (0.5 + dice.unit() * 0.7);
    const day = capacity.find((x) => x.pieces >= aim)?.day ?? last;
    const start = dice.chance(0.05) ? day - 60 : day;
    if (dice.chance(0.9)) due.set(order.id, dateOfDay(Math.round(start + cureDays * dice.unit() * 1.5)));
  }
  return { ...yard, orders: yard.orders.map((x) => (due.has(x.id) ? { ...x, due: due.get(x.id)! } : x)) };
};
