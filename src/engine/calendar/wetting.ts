import type { Minute } from '../../../shared/time.ts';
import type { TaskKind } from '../../../shared/work.ts';
import type { YardFile } from '../../../shared/yard-file.ts';

/** What is kept wet, and for how long: of a mix that the yard can make pieces of. */
type WetCure = NonNullable<YardFile['mixes'][number]['wetCure']>;

/** What pieces are made of and in; left out where nobody asks when they are wetted. */
export type WetYard = Partial<Pick<YardFile, 'mixes' | 'castings' | 'moulds'>>;

interface Hours {
  end: Minute;
  allows: readonly TaskKind[];
}

/** More days before today than a number of hours reaches, clocks that change included. */
const daysBack = (hours: number): number => Math.ceil(hours / 24) + 2;

/**
 * The mixes of a yard that take minutes to keep wet: those that say so, and that a mould makes pieces of which is not retired.
 *
 * Example: `wetCuresOf(yard)` is [] where no mix says so; [{ hours: 72, minutes: 10 }] where one of two does.
 */
export const wetCuresOf = ({ mixes = [], castings = [], moulds = [] }: WetYard): WetCure[] => {
  if (!mixes.some(({ wetCure }) => wetCure)) return [];
  const made = new Set(
    moulds.flatMap(({ condition, makes }) => (condition === 'retired' ? [] : makes)).map((x) => x.casting),
  );
  const used = new Set(castings.filter(({ id }) => made.has(id)).map(({ mix }) => mix));
  return mixes.flatMap(({ id, wetCure }) => (wetCure && used.has(id) ? [wetCure] : []));
};

/**
 * How many minutes one person keeps pieces wet in a session that begins at a minute (R1): those of each mix whose pieces may
 * have come out of their moulds less than its hours before. `windows` gives all hours from so many days before today on.
 *
 * Example: Saturdays only, 72 hours: 0 on each Saturday; with Thursdays as well the minutes of the mix on Saturdays.
 */
export const wettingOf = (
  yard: WetYard,
  windows: (daysBack: number) => readonly Hours[],
): ((start: Minute) => number) => {
  const cures = wetCuresOf(yard);
  if (cures.length === 0) return () => 0;
  const ends = windows(daysBack(Math.max(...cures.map(({ hours }) => hours))))
    .filter(({ allows }) => allows.includes('strip'))
    .map(({ end }) => end)
    .sort((a, b) => a - b);
  return (start) => {
    const last = ends.findLast((end) => end <= start);
    if (last === undefined) return 0;
    return cures.reduce((sum, { hours, minutes }) => sum + (start - last < hours * 60 ? minutes : 0), 0);
  };
};
