import type { Order } from '../../../shared/order.ts';
import type { QuoteLimit } from '../../../shared/quote.ts';
import { type DayNumber, dateOfDay } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { canonicalYard } from '../canonical-yard.ts';
import { compile } from '../decoder/compile.ts';
import { NEVER } from '../decoder/problem.ts';
import type { PlanMemory } from '../search/memory.ts';
import { earliestOf } from './earliest.ts';
import { askingFor, askingIn, type Present, presentIn } from './present.ts';
import { handoverOn } from './promise.ts';
import { type Relaxation, relaxationsFor } from './relaxations.ts';

/** Places in the sequence tried for each relaxed yard: fewer than for the quote itself, since many are asked. */
const MOST_PLACES = 12;
/** Less of the search around these places than usual, and no plans from nothing. */
const FEWER = { share: 0.4, anew: false };

const relaxedDay = (order: Order, present: Present, relaxation: Relaxation): DayNumber => {
  const asking = askingFor(relaxation.yard, order);
  const earliest = earliestOf(asking, present, MOST_PLACES, FEWER).completesAt;
  return earliest >= NEVER ? NEVER : handoverOn(asking.problem, earliest);
};

const limitText = ({ limit, what, change }: Relaxation, day: DayNumber, earliestDay: DayNumber): QuoteLimit => ({
  limit,
  ...(what === undefined ? {} : { what }),
  change,
  earliestOn: dateOfDay(day),
  daysSooner: earliestDay - day,
});

/** The limits of a date that has been worked out already, largest gain first; see `limitsOf`. */
export const limitsOver = (yard: YardFile, order: Order, present: Present, earliestDay: DayNumber): QuoteLimit[] =>
  relaxationsFor(yard, order)
    .map((relaxation) => ({ relaxation, day: relaxedDay(order, present, relaxation) }))
    .filter(({ day }) => day < earliestDay)
    .sort((a, b) => a.day - b.day)
    .map(({ relaxation, day }) => limitText(relaxation, day, earliestDay));

/** Both relaxed at once: the second applied to the yard of the first. Null where it is no other than the first. */
const together = (first: Relaxation, order: Order, second: Relaxation): Relaxation | null => {
  if (first.limit === second.limit && first.what === second.what) return null;
  const again = relaxationsFor(first.yard, order).find((x) => x.limit === second.limit && x.what === second.what);
  if (!again) return null;
  const change = `${first.change} and ${second.change.charAt(0).toLowerCase()}${second.change.slice(1)}`;
  return {
    limit: first.limit,
    what: [first.what, second.what].filter((x) => x !== undefined).join(', '),
    change,
    yard: again.yard,
  };
};

/**
 * Two things relaxed at once, where together they bring the date further forward than either alone; largest gain first.
 * Many questions in one: for when somebody asks for it.
 */
export const limitPairsOf = (asFiled: YardFile, order: Order, memory?: PlanMemory): QuoteLimit[] => {
  const { yard } = canonicalYard(asFiled);
  const without = compile(yard);
  const [present, asking] = [presentIn(without, memory), askingIn(without, order)];
  const earliest = earliestOf(asking, present, MOST_PLACES, FEWER).completesAt;
  if (earliest >= NEVER) return [];
  const base = handoverOn(asking.problem, earliest);
  const single = relaxationsFor(yard, order).map((relaxation) => ({
    relaxation,
    day: Math.min(base, relaxedDay(order, present, relaxation)),
  }));
  const pairs = single.flatMap((a, i) =>
    single.slice(i + 1).flatMap((b) => {
      const relaxation = together(a.relaxation, order, b.relaxation);
      return relaxation ? [{ relaxation, alone: Math.min(a.day, b.day) }] : [];
    }),
  );
  return pairs
    .map(({ relaxation, alone }) => ({ relaxation, alone, day: relaxedDay(order, present, relaxation) }))
    .filter(({ day, alone }) => day < alone)
    .sort((a, b) => a.day - b.day)
    .map(({ relaxation, day }) => limitText(relaxation, day, base));
};

/**
 * What holds the date of an order that is asked about: one thing at a time is relaxed (one more mould of a casting it
 * needs, a damaged one mended now, one more session in the coming week, another pair of hands, a strip-only half hour in
 * the evening, a material fetched today, more rack, a larger mixer) and the question asked again, by the same promises.
 * Only real gains, largest first; never less cure, earlier stripping, a skipped coat, heat or work late at night.
 */
export const limitsOf = (asFiled: YardFile, order: Order, memory?: PlanMemory): QuoteLimit[] => {
  const { yard } = canonicalYard(asFiled);
  const without = compile(yard);
  const [present, asking] = [presentIn(without, memory), askingIn(without, order)];
  const earliest = earliestOf(asking, present, MOST_PLACES, FEWER).completesAt;
  return earliest >= NEVER ? [] : limitsOver(yard, order, present, handoverOn(asking.problem, earliest));
};

/** The limits of an order that is taken already: it is asked about beside the others, as if it were new. */
export const limitsOfPlanned = (yard: YardFile, orderId: string, memory?: PlanMemory): QuoteLimit[] => {
  const order = yard.orders.find((o) => o.id === orderId);
  if (!order) return [];
  const free = <T extends { order?: string }>(x: T): T => (x.order === orderId ? { ...x, order: undefined } : x);
  const keep = yard.keep && { ...yard.keep, pours: yard.keep.pours.map(free) };
  const without = {
    ...yard,
    keep,
    orders: yard.orders.filter((o) => o !== order),
    finished: yard.finished.map(free),
    inMould: yard.inMould.map(free),
  };
  return limitsOf(without, order, memory);
};
