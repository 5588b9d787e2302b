import type { YardFile } from '../../../shared/yard-file.ts';

/** Hours of one session, in minutes; tasks lie from `from` to `to`. */
interface Session {
  from: number;
  to: number;
  /** End of the session itself, clearing up included. */
  end: number;
  allows: readonly string[];
}

export interface TinyOrder {
  id: string;
  weight: number;
  /** Last day, NEVER without a date given. */
  dueDay: number;
  /** First minute at which anything may be poured or packed for it. */
  from: number;
  packMinutes: number;
  /** Pieces by casting. */
  needs: readonly number[];
}

/** A tiny yard in minutes and places in lists. A minute counts from the beginning of 1970 by the clock of the yard. */
export interface Tiny {
  yard: YardFile;
  now: number;
  today: number;
  sessions: readonly Session[];
  orders: readonly TinyOrder[];
  /** By bag, in the order of use: the minute from which it is there. */
  bagsFrom: readonly number[];
}

export const NEVER = 1e12;
/** Dublin from the end of March to the end of October; a tiny yard never looks further. */
const OFFSET = 60;
const WEEKDAYS = ['SU', 'MO', 'TU', 'WE', 'TH', 'FR', 'SA'];

export const minuteOf = (instant: string): number => Math.floor(Date.parse(instant) / 60_000) + OFFSET;
export const dayOf = (minute: number): number => Math.floor(minute / 1440);
const dayOfDate = (date: string): number => Math.floor(Date.parse(`${date}T00:00:00Z`) / 86_400_000);
export const dateOf = (day: number): string => new Date(day * 86_400_000).toISOString().slice(0, 10);
export const instantOf = (minute: number): string => `${new Date(minute * 60_000).toISOString().slice(0, 19)}+01:00`;
const weekdayOf = (day: number): string => WEEKDAYS[(day + 4) % 7]!;
const clockOf = (text: string): number => Number(text.slice(0, 2)) * 60 + Number(text.slice(3));

const sessionsOf = ({ yard, work }: YardFile, now: number): Session[] => {
  const sessions: Session[] = [];
  for (let day = dayOf(now); day <= dayOf(now) + yard.horizonDays; day++)
    for (const { rule, start, end, allows } of work) {
      if (!rule.endsWith(weekdayOf(day))) continue;
      const [from, to] = [day * 1440 + clockOf(start), day * 1440 + clockOf(end)];
      sessions.push({ from: Math.max(now, from + yard.setUpMinutes), to: to - yard.clearUpMinutes, end: to, allows });
    }
  return sessions.sort((a, b) => a.from - b.from);
};

const orderOf = ({ kits, castings }: YardFile, order: YardFile['orders'][number]): TinyOrder => {
  const needs = castings.map(() => 0);
  let packMinutes = 0;
  for (const { kit: id, casting, quantity } of order.lines) {
    const kit = kits.find((one) => one.id === id);
    packMinutes += (kit?.packMinutes ?? 0) * quantity;
    const pieces = kit ? kit.pieces : [{ casting: casting!, count: 1 }];
    for (const piece of pieces) {
      const c = castings.findIndex((one) => one.id === piece.casting);
      needs[c] = needs[c]! + piece.count * quantity;
    }
  }
  return {
    id: order.id,
    weight: order.weight,
    dueDay: order.due === undefined ? NEVER : dayOfDate(order.due),
    from: order.notBefore === undefined ? 0 : dayOfDate(order.notBefore) * 1440,
    packMinutes,
    needs,
  };
};

/** Reads what a tiny yard says; what it cannot say (rack, weather, lead times, begun work) is not looked for. */
export const tinyOf = (yard: YardFile): Tiny => {
  const now = minuteOf(yard.yard.now);
  const material = yard.materials[0]!;
  const coming = yard.incoming.flatMap(({ quantity, on }) => Array<number>(quantity).fill(dayOfDate(on) * 1440));
  return {
    yard,
    now,
    today: dayOf(now),
    sessions: sessionsOf(yard, now),
    orders: yard.orders.map((order) => orderOf(yard, order)),
    bagsFrom: [...Array<number>(material.onHand).fill(now), ...coming],
  };
};

/** First minute from one on at which a task fits into a session that allows it; NEVER when none does. */
export const firstFit = (
  { sessions }: Tiny,
  kind: string,
  minutes: number,
  from: number,
  /** Minutes after the start at which the last fill ends, and how long someone stays then. */
  stays?: { lastFill: number; attend: number },
): number => {
  for (const session of sessions) {
    const start = Math.max(from, session.from);
    if (!session.allows.includes(kind) || start + minutes > session.to) continue;
    if (stays && start + stays.lastFill + stays.attend > session.end) continue;
    return start;
  }
  return NEVER;
};

/** The first hand-over day on or after the day of a minute. */
export const handoverOn = ({ yard }: Tiny, minute: number): number => {
  if (minute >= NEVER) return NEVER;
  const days = yard.yard.handoverDays;
  let day = dayOf(minute);
  if (days?.length) while (!(days as readonly string[]).includes(weekdayOf(day))) day++;
  return day;
};

/** Days late of an order complete at a minute. */
export const daysLate = (tiny: Tiny, { dueDay }: TinyOrder, minute: number): number =>
  Math.max(0, handoverOn(tiny, minute) - dueDay);
