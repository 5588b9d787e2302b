import type { DayNumber } from '../../../shared/time.ts';
import { amountsToTry, type TripSearch } from './trip-amounts.ts';
import { packsPrice, type TripGoods, type TripTerms } from './trip-terms.ts';
import { fewestTripsFrom, fullestTrips, nextTripDay } from './trips-needed.ts';

/** On a day, so many packs of each material. */
interface ChosenTrip {
  day: DayNumber;
  packs: readonly number[];
}

/** `proven`: no other trips are better; false where there were too many to look through. */
export interface ChosenTrips {
  trips: ChosenTrip[];
  money: number;
  proven: boolean;
}

/** What is bought so far, and the best way to have come to it. */
interface Label {
  taken: readonly number[];
  trips: number;
  money: number;
  last: { before: Label; trip: ChosenTrip } | null;
}

const CENT_PART = 1e-9;

/** More ways to have bought so many packs are not gone on from; fewer once it cannot be proven anyway. */
const LABELS_KEPT = { proving: 200, likely: 3, ofMany: 1 };

/** So many packs of one supplier are a yard of hundreds of orders. */
const MANY_PACKS = 1500;

/** The last days of the packs added up, so that those of any stretch are a subtraction. */
const untilSums = ({ packs }: TripGoods): number[] => {
  const sums = [0];
  for (const { until } of packs) sums.push(sums.at(-1)! + until);
  return sums;
};

/** All that one trip costs: goods, delivery, what the order is short of the least one, and money bound up. */
const moneyOf = (
  { goods, terms }: TripSearch,
  untils: readonly number[][],
  { taken }: Label,
  trip: ChosenTrip,
): number => {
  let [paid, bound] = [0, 0];
  goods.forEach((one, m) => {
    const [from, packs] = [taken[m]!, trip.packs[m]!];
    if (packs === 0) return;
    paid += packsPrice(one, packs);
    bound += one.packPrice * (untils[m]![from + packs]! - untils[m]![from]! - packs * trip.day);
  });
  return paid + terms.deliveryPrice + Math.max(0, terms.minimumOrder - paid) + bound * terms.boundPerDay;
};

const isBetter = (a: Label, b: Label, { tripWorth }: TripTerms): boolean => {
  if (tripWorth !== null) return a.trips * tripWorth + a.money < b.trips * tripWorth + b.money - CENT_PART;
  return a.trips < b.trips || (a.trips === b.trips && a.money < b.money - CENT_PART);
};

const packsIn = (amounts: readonly number[]): number => amounts.reduce((sum, packs) => sum + packs, 0);

/** Those that take no more trips than some other way does for sure; only the best of them where there are too many. */
const goneOnFrom = (search: TripSearch, labels: Label[], enough: number): Label[] => {
  const few = labels.filter(({ trips, taken }) => trips + fewestTripsFrom(search, taken) <= enough);
  const packs = packsIn(search.goods.map((one) => one.packs.length));
  const kept = LABELS_KEPT[packs > MANY_PACKS ? 'ofMany' : search.proven ? 'proving' : 'likely'];
  if (few.length <= kept) return few;
  search.proven = false;
  return few.sort((a, b) => (isBetter(a, b, search.terms) ? -1 : 1)).slice(0, kept);
};

const tripsTo = (label: Label): ChosenTrip[] => {
  const trips: ChosenTrip[] = [];
  for (let at = label.last; at; at = at.before.last) trips.unshift(at.trip);
  return trips;
};

/** Where what is as few was left out of what was looked at. */
const moneyOfAll = (search: TripSearch, untils: readonly number[][], trips: readonly ChosenTrip[]): number => {
  let taken = search.goods.map(() => 0);
  return trips.reduce((sum, trip) => {
    const money = moneyOf(search, untils, { taken, trips: 0, money: 0, last: null }, trip);
    taken = taken.map((n, m) => n + trip.packs[m]!);
    return sum + money;
  }, 0);
};

/**
 * The trips to one supplier: the fewest that bring every pack in its time and, of those, the ones that cost least (goods at
 * their price breaks, deliveries, what orders fall short of the least one, money bound up in what is bought early). A
 * dynamic program over what is bought so far.
 *
 * Exact because (1) packs of a material are alike, so they are bought in the order in which they are needed; (2) every
 * trip can wait until the last day of what is not bought yet, and then binds the least money; so a state has one day, and
 * what comes later depends on the state alone. Where a trip has too many amounts to try, only likely ones are tried
 * (`amountsToTry`), and `proven` is false.
 *
 * Example: one material in packs at 10, last days 3, 5 and 12, each may come a week sooner, nothing else asked: two trips,
 * two packs on day 3 and one on day 12.
 */
export const chooseTrips = (goods: readonly TripGoods[], terms: TripTerms): ChosenTrips => {
  const all = goods.map(({ packs }) => packs.length);
  const search: TripSearch = { goods, terms, tried: 0, proven: true };
  const untils = goods.map(untilSums);
  const byCount: Map<string, Label>[] = Array.from({ length: packsIn(all) + 1 }, () => new Map());
  byCount[0]!.set('', { taken: goods.map(() => 0), trips: 0, money: 0, last: null });
  // Where fewer trips go before any money, what takes more than some other way is no use.
  const fullest = terms.tripWorth === null ? fullestTrips(search) : null;
  const enough = fullest?.length ?? Number.POSITIVE_INFINITY;
  for (let count = 0; count < byCount.length - 1; count += 1) {
    for (const label of goneOnFrom(search, [...byCount[count]!.values()], enough)) {
      const day = nextTripDay(goods, label.taken);
      for (const packs of amountsToTry(search, label.taken, day)) {
        const trip = { day, packs };
        const taken = label.taken.map((n, m) => n + packs[m]!);
        const money = label.money + moneyOf(search, untils, label, trip);
        const next: Label = { taken, trips: label.trips + 1, money, last: { before: label, trip } };
        const there = byCount[packsIn(taken)]!;
        const key = taken.join();
        const known = there.get(key);
        if (!known || isBetter(next, known, terms)) there.set(key, next);
      }
    }
    byCount[count] = new Map();
  }
  const [best] = byCount.at(-1)!.values();
  return best
    ? { trips: tripsTo(best), money: best.money, proven: search.proven }
    : { trips: fullest ?? [], money: moneyOfAll(search, untils, fullest ?? []), proven: false };
};
