import { isInGap } from '../buy/coming-gaps.ts';
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

/** Whether a material is used by the dates on its bags. */
export const hasDates = (material: CompiledMaterial): material is CompiledMaterial & { dates: CompiledDates } =>
  material.dates !== null;

const EPSILON = 1e-9;

/** Whether as much as is wanted can be bought for a minute. */
const isPlenty = ({ plentyFrom, dates }: Dated, at: number): boolean => at >= plentyFrom && !isInGap(dates.gaps, at);

/** What is used once it can be bought is of no account, except where what is there has to do for a time at which it cannot. */
export const isFollowed = ({ plentyFrom, dates }: Dated, at: number): boolean =>
  at < plentyFrom || dates.gaps.length > 0;

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

/** How much is missing where no more can be bought, if so much more is used at a minute: of it, or of what is used later (R10). */
export const missingWith = (material: Dated, used: readonly DatedUse[], quantity: number, at: number): number => {
  if (!isFollowed(material, at) || quantity <= 0) return 0;
  const n = countBy(used, at);
  let last = after(material, used[n - 1], { at, quantity });
  const missingOf = (use: DatedUse) => (isPlenty(material, use.at) ? 0 : use.missing);
  let missing = missingOf(last);
  for (let k = n; k < used.length; k++) {
    last = after(material, last, used[k]!);
    missing += missingOf(last);
  }
  return missing;
};

/**
 * The same where there are times at which nothing can be bought: at the end of each there is plenty again, but for what is
 * there now and has to do for the next one.
 */
const whenThereBetween = (material: Dated, used: readonly DatedUse[], quantity: number, from: number): number => {
  const { arrivals, plentyFrom, dates } = material;
  const opening = dates.openedDays === undefined ? [] : used;
  const times = [plentyFrom, ...dates.gaps.map(({ to }) => to), ...[...arrivals, ...opening].map(({ at }) => at)];
  const later = times.filter((at) => at > from && at < NEVER).sort((a, b) => a - b);
  return [from, ...later].find((at) => missingWith(material, used, quantity, at) <= EPSILON) ?? NEVER;
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
  if (dates.gaps.length > 0) return whenThereBetween(material, used, quantity, from);
  const atLast = Math.min(NEVER, Math.max(from, plentyFrom));
  const inAll = arrivals.reduce((sum, x) => (x.at < plentyFrom ? sum + x.quantity : sum), onHand);
  if (used.reduce((left, use) => left - use.quantity, inAll) + EPSILON < quantity) return atLast;
  const opening = dates.openedDays === undefined ? [] : used.slice(countBy(used, from));
  const times = [from, ...[...arrivals, ...opening].map(({ at }) => at).filter((at) => at > from && at < plentyFrom)];
  for (const at of times.sort((a, b) => a - b)) if (missingWith(material, used, quantity, at) <= EPSILON) return at;
  return atLast;
};
