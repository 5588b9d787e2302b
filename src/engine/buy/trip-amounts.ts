import type { DayNumber } from '../../../shared/time.ts';
import { packsPrice, type TripGoods, type TripTerms } from './trip-terms.ts';

/** A search for trips: what it is about, and how much of it was looked at. */
export interface TripSearch {
  goods: readonly TripGoods[];
  terms: TripTerms;
  /** So many amounts were tried already. */
  tried: number;
  /** False once something was left out that could have been better. */
  proven: boolean;
}

/** So many ways to load one trip are all tried; of more, only likely ones. */
const TRIED_IN_A_TRIP = 1000;
/** From so many on only likely ones are tried: a few hundredths of a second. */
const TRIED_IN_ALL = 10_000;

type Amounts = number[];

/** How many packs of each material may be bought on a day, of those not bought yet. */
export const mayBeBought = (goods: readonly TripGoods[], taken: readonly number[], day: DayNumber): Amounts =>
  goods.map(({ packs }, m) => {
    let until = taken[m]!;
    while (until < packs.length && packs[until]!.from <= day) until += 1;
    return until - taken[m]!;
  });

const sumOf = (amounts: readonly number[]): number => amounts.reduce((sum, packs) => sum + packs, 0);
const kgOf = (goods: readonly TripGoods[], amounts: readonly number[]): number =>
  goods.reduce((sum, { packKg }, m) => sum + packKg * amounts[m]!, 0);
const paidFor = (goods: readonly TripGoods[], amounts: readonly number[]): number =>
  goods.reduce((sum, one, m) => sum + packsPrice(one, amounts[m]!), 0);

const ROUNDING = 1e-9;

/** A single pack is fetched however heavy it is: there is no other way. */
const isCarried = ({ goods, terms: { carriesKg } }: TripSearch, amounts: readonly number[]): boolean =>
  carriesKg === null || sumOf(amounts) === 1 || kgOf(goods, amounts) <= carriesKg + ROUNDING;

/** What has to come before a day, of what may be bought now. */
const neededBefore = (
  { goods }: TripSearch,
  taken: readonly number[],
  most: readonly number[],
  before: number,
): Amounts =>
  goods.map(({ packs }, m) => {
    let amount = 0;
    while (amount < most[m]! && packs[taken[m]! + amount]!.until < before) amount += 1;
    return amount;
  });

/** The days up to which a trip may reach: each last day of what may be bought, and all of it. */
const reachesOf = (
  { goods }: TripSearch,
  taken: readonly number[],
  most: readonly number[],
  day: DayNumber,
): number[] => {
  const days = new Set<number>();
  goods.forEach(({ packs }, m) => {
    for (let k = taken[m]!; k < taken[m]! + most[m]!; k += 1) if (packs[k]!.until > day) days.add(packs[k]!.until);
  });
  return [...days, Number.POSITIVE_INFINITY].sort((a, b) => a - b);
};

/** The packs of a trip one by one, what is needed first before the others; while `goesOn` allows it. */
const filledWhile = (
  { goods }: TripSearch,
  taken: readonly number[],
  most: readonly number[],
  start: Amounts,
  goesOn: (amounts: Amounts) => boolean,
): Amounts => {
  const amounts = [...start];
  const full = new Set<number>();
  for (;;) {
    let [next, soonest] = [-1, Number.POSITIVE_INFINITY];
    goods.forEach(({ packs }, m) => {
      const until = amounts[m]! < most[m]! && !full.has(m) ? packs[taken[m]! + amounts[m]!]!.until : soonest;
      if (until < soonest) [next, soonest] = [m, until];
    });
    if (next < 0) return amounts;
    amounts[next]! += 1;
    if (goesOn(amounts)) continue;
    amounts[next]! -= 1;
    full.add(next);
  }
};

/** Each break of each material reached by buying more of it now. */
const breaksReached = ({ goods }: TripSearch, amounts: Amounts, most: readonly number[]): Amounts[] =>
  goods.flatMap(({ breaks }, m) =>
    breaks
      .filter(({ fromPacks }) => fromPacks > amounts[m]! && fromPacks <= most[m]!)
      .map(({ fromPacks }) => amounts.map((packs, k) => (k === m ? fromPacks : packs))),
  );

/** Amounts added, what is needed first before the others, until the order is large enough. */
const enoughFor = (search: TripSearch, taken: readonly number[], most: Amounts, start: Amounts): Amounts => {
  const isEnough = (amounts: Amounts) => paidFor(search.goods, amounts) >= search.terms.minimumOrder;
  if (isEnough(start)) return start;
  let done = false;
  return filledWhile(search, taken, most, start, (amounts) => {
    if (done || !isCarried(search, amounts)) return false;
    done = isEnough(amounts);
    return true;
  });
};

/** All that one trip on a day can bring, what is needed first before the others. */
export const fullTrip = (search: TripSearch, taken: readonly number[], day: DayNumber): Amounts => {
  const most = mayBeBought(search.goods, taken, day);
  if (isCarried(search, most)) return most;
  const none = most.map(() => 0);
  return filledWhile(search, taken, most, none, (amounts) => isCarried(search, amounts));
};

/** A few likely ways to load a trip: up to each day, with as much as it carries, up to the least order, up to breaks. */
const likely = (search: TripSearch, taken: readonly number[], most: Amounts, bases: readonly Amounts[]): Amounts[] => {
  const carried = bases.filter((base) => isCarried(search, base));
  const starts =
    carried.length === bases.length
      ? carried
      : [
          ...carried,
          filledWhile(search, taken, most, carried.at(-1) ?? most.map(() => 0), (x) => isCarried(search, x)),
        ];
  return starts.flatMap((start) => [
    start,
    enoughFor(search, taken, most, start),
    ...breaksReached(search, start, most).filter((amounts) => isCarried(search, amounts)),
  ]);
};

const distinct = (rows: readonly Amounts[]): Amounts[] => [
  ...new Map(rows.filter((row) => sumOf(row) > 0).map((row) => [row.join(), row])).values(),
];

/** Rows with one more material: each row with each amount of it that is worth trying beside the row, up to so many in all. */
const withAmounts = (
  rows: readonly Amounts[],
  m: number,
  most: number,
  goesOn: (row: Amounts) => boolean,
): Amounts[] | null => {
  const next: Amounts[] = [];
  for (const row of rows) {
    for (let packs = row[m]!; packs <= most; packs += 1) {
      const tried = row.with(m, packs);
      next.push(tried);
      if (next.length > TRIED_IN_A_TRIP) return null;
      if (!goesOn(tried)) break;
    }
  }
  return next;
};

/** Materials with price breaks first: of them all amounts count. */
const breaksFirst = (goods: readonly TripGoods[]): number[] =>
  goods.map((_, m) => m).sort((a, b) => Number(goods[b]!.breaks.length > 0) - Number(goods[a]!.breaks.length > 0));

/** All amounts from a base on, as long as more may be worth it; null where they are too many. */
const allFrom = (
  { goods }: TripSearch,
  base: Amounts,
  most: Amounts,
  isWorthMore: (row: Amounts, m: number) => boolean,
): Amounts[] | null => {
  let rows: Amounts[] | null = [base];
  for (const m of breaksFirst(goods)) rows = rows && withAmounts(rows, m, most[m]!, (row) => isWorthMore(row, m));
  return rows;
};

/** All that is worth trying; null where that is too much. */
const allWorthTrying = (search: TripSearch, bases: readonly Amounts[], most: Amounts): Amounts[] | null => {
  const { goods, terms } = search;
  if (!isCarried(search, most)) {
    const none = most.map(() => 0);
    return (
      allFrom(search, none, most, (row) => isCarried(search, row))?.filter((row) => isCarried(search, row)) ?? null
    );
  }
  const rows: Amounts[] = [];
  for (const base of bases) {
    const from = allFrom(
      search,
      base,
      most,
      (row, m) => goods[m]!.breaks.length > 0 || paidFor(goods, row) < terms.minimumOrder,
    );
    if (from === null) return null;
    rows.push(...from);
  }
  return rows;
};

/**
 * What one trip on a day may bring, in packs of each material; one of them is the best unless `search.proven` becomes false.
 * Where the vehicle carries all there is to buy, that is what is needed up to some day, and more only of what has price
 * breaks, or while the order is too small: anything else could have waited for a trip that is made anyway. Else it is every
 * amount that is carried. Where that is too much, a few likely ones.
 */
export const amountsToTry = (search: TripSearch, taken: readonly number[], day: DayNumber): Amounts[] => {
  const most = mayBeBought(search.goods, taken, day);
  const bases = reachesOf(search, taken, most, day).map((before) => neededBefore(search, taken, most, before));
  const all = search.tried > TRIED_IN_ALL ? null : allWorthTrying(search, bases, most);
  search.tried += all?.length ?? TRIED_IN_A_TRIP;
  if (all) return distinct(all);
  search.proven = false;
  return distinct(likely(search, taken, most, bases));
};
