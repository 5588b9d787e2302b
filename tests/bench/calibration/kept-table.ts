import type { Row } from '../table.ts';
import { isKept, leadOf, type Promised } from './lived-yard.ts';

/** What one way to promise came to in one yard. */
export interface Lived {
  yard: number;
  /** Name of the way, as it stands in the table. */
  way: string;
  promises: readonly Promised[];
}

/** Two-sided 95 % of the standard normal distribution. */
const Z = 1.959964;

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;

const meanOf = (list: readonly number[]): number => list.reduce((sum, one) => sum + one, 0) / list.length;

const keptOf = (promises: readonly Promised[]): number => promises.filter(isKept).length;

/**
 * A share seen in groups whose members share their luck, as promises of one yard do, with its 95 % interval by the spread
 * between groups (ratio estimator; Cochran, Sampling Techniques, 3rd ed., section 6.3). One group says nothing of its spread: from 0 to 1.
 */
const shareByGroups = (
  groups: readonly { count: number; of: number }[],
): { share: number; from: number; to: number } => {
  const of = groups.reduce((sum, one) => sum + one.of, 0);
  const share = groups.reduce((sum, one) => sum + one.count, 0) / of;
  if (groups.length < 2) return { share, from: 0, to: 1 };
  const squares = groups.reduce((sum, one) => sum + (one.count - share * one.of) ** 2, 0);
  const half = (Z * Math.sqrt((squares * groups.length) / (groups.length - 1))) / of;
  return { share, from: Math.max(0, share - half), to: Math.min(1, share + half) };
};

const keptFigure = (groups: readonly (readonly Promised[])[]): string => {
  const asked = groups.filter(({ length }) => length > 0);
  const { share, from, to } = shareByGroups(asked.map((list) => ({ count: keptOf(list), of: list.length })));
  return `kept ${percent(share)}, between ${percent(from)} and ${percent(to)}`;
};

const saidOf = (promises: readonly Promised[]): number[] =>
  promises.flatMap(({ said }) => (said === null ? [] : [said]));

const wayRow = (way: string, lived: readonly Lived[]): Row => {
  const promises = lived.flatMap((one) => one.promises);
  const said = saidOf(promises);
  const told = said.length > 0 ? `, told ${percent(meanOf(said))} on average` : '';
  return {
    what: `${way}: ${promises.length} promises in ${lived.length} yards${told}`,
    figure: `${keptFigure(lived.map((one) => one.promises))}; lead ${meanOf(promises.map(leadOf)).toFixed(1)} days`,
    aim: said.length > 0 ? 'what was told' : '',
  };
};

const BINS = [0, 0.6, 0.7, 0.8, 0.85, 0.9, 0.925, 0.95, 0.975, 1.001];

/** Of promises whose day was told with such odds, how many were kept. */
const binRows = (lived: readonly Lived[]): Row[] =>
  BINS.slice(1).flatMap((below, n) => {
    const from = BINS[n]!;
    const isIn = ({ said }: Promised): boolean => said !== null && said >= from && said < below;
    const groups = lived.map(({ promises }) => promises.filter(isIn));
    const all = groups.flat();
    if (all.length === 0) return [];
    return [
      {
        what: `told ${percent(from)} to ${percent(Math.min(1, below))}: ${all.length} days, ${percent(meanOf(saidOf(all)))} on average`,
        figure: keptFigure(groups),
        aim: 'what was told',
      },
    ];
  });

/** As many kept or more, no later on average, and better in one of them. */
const beats = (a: Lived, b: Lived): boolean => {
  const [kept, other] = [keptOf(a.promises) / a.promises.length, keptOf(b.promises) / b.promises.length];
  const [lead, otherLead] = [meanOf(a.promises.map(leadOf)), meanOf(b.promises.map(leadOf))];
  return kept >= other && lead <= otherLead && (kept > other || lead < otherLead);
};

/** Ways by odds are told by those. */
const isByOdds = ({ promises }: Lived): boolean => saidOf(promises).length > 0;

/** By each of the odds against another way, in how many yards it is better in both, kept and lead, and in how many worse. */
const besideRows = (ways: ReadonlyMap<string, Lived[]>): Row[] => {
  const byOdds = [...ways].filter(([, lived]) => lived.some(isByOdds));
  return [...ways].flatMap(([way, others]) => {
    if (others.some(isByOdds)) return [];
    const against = byOdds.map(([odds, list]) => {
      const pairs = list.flatMap((own) => {
        const other = others.find(({ yard }) => yard === own.yard);
        return other ? [{ own, other }] : [];
      });
      const better = pairs.filter(({ own, other }) => beats(own, other)).length;
      const worse = pairs.filter(({ own, other }) => beats(other, own)).length;
      return `${odds}: ${better} better, ${worse} worse of ${pairs.length}`;
    });
    return [{ what: `yard by yard against ${way}, in kept and lead`, figure: against.join('; '), aim: '' }];
  });
};

/** What was lived through as a table: a row a way, promises by the odds that they were told with, and ways side by side. */
export const keptTable = (all: readonly Lived[]): Row[] => {
  const ways = new Map<string, Lived[]>();
  for (const lived of all.filter(({ promises }) => promises.length > 0))
    ways.set(lived.way, [...(ways.get(lived.way) ?? []), lived]);
  return [...[...ways].map(([way, lived]) => wayRow(way, lived)), ...binRows(all), ...besideRows(ways)];
};
