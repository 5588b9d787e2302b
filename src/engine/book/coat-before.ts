import type { PlanCoat, PlanPour } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';

type Turn = Pick<PlanPour, 'mould' | 'prepStart' | 'fillStart'>;

/**
 * The sealing coat that a mould gets for a pour: the last that is over when its set-up begins, and that no other pour comes
 * after. `pours` are all that are known of the mould; those of others do not matter.
 */
export const coatBefore = (coats: readonly PlanCoat[], pours: readonly Turn[], pour: Turn): PlanCoat | undefined => {
  const own = coats.filter(({ mould }) => mould === pour.mould);
  if (own.length === 0) return undefined;
  const by = minuteOf(pour.prepStart);
  const filled = pours.flatMap(({ mould, fillStart }) => (mould === pour.mould ? [minuteOf(fillStart)] : []));
  const last = Math.max(...filled.filter((at) => at < by));
  return own
    .filter(({ start, end }) => minuteOf(end) <= by && minuteOf(start) > last)
    .sort((a, b) => minuteOf(b.start) - minuteOf(a.start))[0];
};

/** The coats that moulds get for some of the pours, each once. */
export const coatsBefore = (coats: readonly PlanCoat[], pours: readonly Turn[], some: readonly Turn[]): PlanCoat[] => [
  ...new Set(some.flatMap((pour) => coatBefore(coats, pours, pour) ?? [])),
];
