import type { PlanCoat, PlanPour } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';

type Turn = Pick<PlanPour, 'mould' | 'prepStart' | 'fillStart'>;

/** Kept as long as a list itself: a long plan is asked about each of its pours in turn, and the list grows by them. */
type Kept<T> = WeakMap<readonly object[], { length: number; byMould: Map<string, T[]> }>;
const coatsKept: Kept<{ coat: PlanCoat; start: number; end: number }> = new WeakMap();
const fillsKept: Kept<number> = new WeakMap();

const ofMould = <O extends { mould: string }, T>(
  kept: Kept<T>,
  list: readonly O[],
  mould: string,
  as: (one: O) => T,
): readonly T[] => {
  const before = kept.get(list);
  const known = before && before.length <= list.length ? before : { length: 0, byMould: new Map<string, T[]>() };
  for (const one of list.slice(known.length)) {
    const own = known.byMould.get(one.mould);
    if (own) own.push(as(one));
    else known.byMould.set(one.mould, [as(one)]);
  }
  known.length = list.length;
  kept.set(list, known);
  return known.byMould.get(mould) ?? [];
};

/**
 * The sealing coat that a mould gets for a pour: the last that is over when its set-up begins, and that no other pour comes
 * after. `pours` are all that are known of the mould; those of others do not matter.
 */
export const coatBefore = (coats: readonly PlanCoat[], pours: readonly Turn[], pour: Turn): PlanCoat | undefined => {
  const timed = (coat: PlanCoat) => ({ coat, start: minuteOf(coat.start), end: minuteOf(coat.end) });
  const own = ofMould(coatsKept, coats, pour.mould, timed);
  if (own.length === 0) return undefined;
  const by = minuteOf(pour.prepStart);
  const filled = ofMould(fillsKept, pours, pour.mould, ({ fillStart }) => minuteOf(fillStart));
  const last = filled.reduce((latest, at) => (at < by && at > latest ? at : latest), -Infinity);
  const before = own.filter(({ start, end }) => end <= by && start > last);
  return before.sort((a, b) => b.start - a.start)[0]?.coat;
};

/** The coats that moulds get for some of the pours, each once. */
export const coatsBefore = (coats: readonly PlanCoat[], pours: readonly Turn[], some: readonly Turn[]): PlanCoat[] => [
  ...new Set(some.flatMap((pour) => coatBefore(coats, pours, pour) ?? [])),
];

/** Tells coats apart, however their instants are written. */
export const coatName = ({ mould, start, end }: PlanCoat): string => `${mould} ${minuteOf(start)} ${minuteOf(end)}`;
