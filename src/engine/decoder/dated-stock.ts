import { type DatedLot, takeFromLots, useByOf } from '../buy/dated-lots.ts';
import { type CompiledDates, type CompiledMaterial, NEVER } from './problem.ts';

/** So much is used at a minute. */
interface Use {
  at: number;
  quantity: number;
}

/** A use, and what is there after it: the lots, and how many of what is to come have come. */
export interface DatedUse extends Use {
  lots: readonly DatedLot[];
  come: number;
  /** How much of this use was not to be had. */
  missing: number;
}

type Dated = Pick<CompiledMaterial, 'arrivals' | 'plentyFrom' | 'onHand'> & { dates: CompiledDates };

const EPSILON = 1e-9;

/** A use after others: what has come by then is there for it. */
const after = ({ arrivals, dates }: Dated, before: DatedUse | undefined, { at, quantity }: Use): DatedUse => {
  const lots = [...(before?.lots ?? dates.lots)];
  let come = before?.come ?? 0;
  for (let next = arrivals[come]; next && next.at <= at; next = arrivals[++come])
    lots.push({ quantity: next.quantity, useBy: useByOf(dates.dayOf(next.at), dates), openedOn: null });
  const taken = takeFromLots(lots, quantity, dates.dayOf(at), dates);
  return { at, quantity, lots: taken.lots, come, missing: taken.short };
};

/** How many uses are no later than a minute; they are by time. */
const countBy = (used: readonly DatedUse[], at: number): number => {
  let n = used.length;
  while (n > 0 && used[n - 1]!.at > at) n--;
  return n;
};

/** Uses with one more, each with what is there after it. Those before it are as they were. */
export const withUse = (material: Dated, used: readonly DatedUse[], use: Use): readonly DatedUse[] => {
  const n = countBy(used, use.at);
  const all = used.slice(0, n);
  for (const one of [use, ...used.slice(n)]) all.push(after(material, all.at(-1), one));
  return all;
};

/** How much is missing, before more can be bought, if so much more is used at a minute: of it, or of what is used later (R10). */
export const missingWith = (material: Dated, used: readonly DatedUse[], quantity: number, at: number): number => {
  if (at >= material.plentyFrom || quantity <= 0) return 0;
  const n = countBy(used, at);
  let last = after(material, used[n - 1], { at, quantity });
  let missing = last.missing;
  for (let k = n; k < used.length; k++) {
    last = after(material, last, used[k]!);
    missing += last.missing;
  }
  return missing;
};

/**
 * First minute from one on at which so much of a material is there by its dates, with all that is used of it still there as well
 * (R10); NEVER where it is not. Waiting helps when something comes, or when another use has opened a bag.
 */
export const whenThereByDates = (
  material: Dated,
  used: readonly DatedUse[],
  quantity: number,
  from: number,
): number => {
  const { arrivals, plentyFrom, onHand, dates } = material;
  const atLast = Math.min(NEVER, Math.max(from, plentyFrom));
  const inAll = arrivals.reduce((sum, x) => (x.at < plentyFrom ? sum + x.quantity : sum), onHand);
  if (used.reduce((left, use) => left - use.quantity, inAll) + EPSILON < quantity) return atLast;
  const opening = dates.openedDays === undefined ? [] : used.slice(countBy(used, from));
  const times = [from, ...[...arrivals, ...opening].map(({ at }) => at).filter((at) => at > from && at < plentyFrom)];
  for (const at of times.sort((a, b) => a - b)) if (missingWith(material, used, quantity, at) <= EPSILON) return at;
  return atLast;
};
