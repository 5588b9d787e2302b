import { isCutUp, type Material } from '../../../shared/material.ts';
import type { PlanBuy, PlanFile } from '../../../shared/plan.ts';
import { dayNumber, minuteOf } from '../../../shared/time.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { TripLine } from '../../engine/buy/bought-goods.ts';
import { type Trip, tripsOf } from '../../engine/buy/trips.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { lengthText } from '../../engine/units/length.ts';
import { massText } from '../../engine/units/mass.ts';
import { shownUnit } from '../../engine/units/material-unit.ts';
import { today } from '../core/context.ts';
import { amountField, asTyped } from '../typed/amount-typed.ts';
import { leftField } from '../typed/left-typed.ts';
import { type Measures, shownAmount, weekOf } from '../typed/measures.ts';
import { sizesText } from '../typed/sizes-typed.ts';
import { bookOf } from '../typed/stock-book.ts';
import { bagsFacts, keepsUntil, pastDate } from './bags-facts.ts';
import { bagsToCount } from './bags-to-count.ts';
import type {
  AmountInField,
  BuyingModel,
  BuyLineFacts,
  BuyWeek,
  ComingFacts,
  OffcutsFacts,
  Purpose,
  StockFacts,
  TripFacts,
} from './buying-facts.ts';
import { type Goods, keepingFacts, type Purposes, purposesOf, type Seen, unusedIn } from './buying-supplies.ts';
import { slipsKnown } from './if-not-ordered.ts';
import { keepingShown } from './keeping-facts.ts';
import { materialUses } from './material-uses.ts';
import { DAYS_AHEAD, stockAhead } from './stock-ahead.ts';
import { keptOf, stockFacts, stockShown } from './stock-facts.ts';
import type { SupplyPurpose } from './supply-purposes.ts';
import { type BuyingKnown, type TripsPlanned, tripsToAsk } from './trips-planned.ts';

/** With those who sell things that nobody's name is written beside. */
const NO_SUPPLIER = 'No supplier recorded';

/** What happens if a thing is ordered later is asked of what has to be ordered within so many days. */
const ASKED_DAYS = 7;

/** An amount as the page says it, as its field is filled in, and exactly as it is kept. */
const amountFacts = (quantity: number, unit: string, { measures: { system } }: Seen): AmountInField => ({
  ...shownAmount({ quantity, unit }, system),
  field: amountField(quantity, unit, system),
  was: quantity,
});

const namesOf = (
  { orders, keep }: SupplyPurpose,
  { minimum, unit }: YardFile['materials'][number],
  { customers, measures }: Seen,
): Purpose => ({
  customers: orders.map((id) => (id === null ? null : (customers.get(id) ?? `order ${id}`))),
  keep: keep ? shownAmount({ quantity: minimum, unit }, measures.system).quantity : null,
});

/** A line of a trip as something that is bought. */
type BoughtLine = PlanBuy & { line: TripLine };

const boughtLine = (line: TripLine): BoughtLine => ({
  ...{ material: line.material, quantity: line.quantity, orderBy: line.orderBy, arrivesOn: line.comesOn, line },
});

interface Places {
  trip: number;
  index: number;
}

const lineOf = (
  { trip, index }: Places,
  bought: BoughtLine,
  purposes: readonly Purposes[],
  { seen, beside, plan }: { seen: Seen; beside: TripsPlanned['beside']; plan: PlanFile },
): BuyLineFacts => {
  const { line, quantity, orderBy } = bought;
  const material = seen.yard.materials[index]!;
  return {
    key: `${trip}-${index}`,
    ...{ material: material.id, name: material.name, orderBy, ...amountFacts(quantity, material.unit, seen) },
    pack: material.pack * shownUnit(material.unit, seen.measures.system).perUnit,
    packIsOne: material.pack === 1,
    ...{ on: line.ifToday, price: line.price },
    for: namesOf(purposes[index]!.get(bought) ?? { orders: [], keep: false }, material, seen),
    hasNothingInHand: line.noneInHand,
    daysLate: line.late ? dayNumber(line.comesOn) - dayNumber(line.neededOn) : 0,
    missedOn: line.mustBy !== null && line.mustBy < seen.today ? line.mustBy : null,
    closedOn: line.closedOn,
    beside: beside.get(material.id) ?? null,
    isAskedIfLate: !beside.has(material.id) && dayNumber(orderBy) - dayNumber(seen.today) <= ASKED_DAYS,
    ifLate: slipsKnown(plan, line),
    unused: unusedIn([bought], material, seen),
  };
};

const tripFacts = (trip: Trip, key: string, lines: BuyLineFacts[], { measures }: Seen): TripFacts => ({
  ...{ key, name: trip.supplier ?? NO_SUPPLIER, day: trip.day, fetched: trip.fetched, lines },
  price: trip.lines.some(({ price }) => price !== null) ? trip.price : 0,
  ...{ deliveryPrice: trip.deliveryPrice, shortOfMinimum: trip.shortOfMinimum },
  weight: trip.kg > 0 ? massText(trip.kg, measures.system) : null,
  ...{ tooHeavy: trip.tooHeavy, neverThere: trip.neverThere },
});

/** What there is to buy, trip by trip, and which materials are nearly used up. */
type ToBuy = TripsPlanned & { bought: ReadonlyMap<TripLine, BoughtLine>; plan: PlanFile };

/** Trips by the week of their day; those that come too late first. */
const weeksOf = (seen: Seen, { trips, beside, bought, plan }: ToBuy): BuyWeek[] => {
  const purposes = seen.yard.materials.map((material) => purposesOf(material, seen));
  const places = new Map(seen.yard.materials.map(({ id }, index) => [id, index]));
  const facts = trips.map((trip, at) => {
    const lines = trip.lines.map((line) =>
      lineOf({ trip: at, index: places.get(line.material)! }, bought.get(line)!, purposes, { seen, beside, plan }),
    );
    return tripFacts(trip, `trip-${at}`, lines, seen);
  });
  const isLate = ({ lines }: TripFacts) => lines.some(({ daysLate }) => daysLate > 0);
  const weekOfTrip = ({ day }: TripFacts) => weekOf(day, seen.measures.weekStart);
  return [...new Set(facts.map(weekOfTrip))].sort().map((week) => ({
    week,
    trips: facts
      .filter((trip) => weekOfTrip(trip) === week)
      .sort((a, b) => Number(isLate(b)) - Number(isLate(a)) || a.day.localeCompare(b.day)),
  }));
};

const onTheWayOf = (seen: Seen): ComingFacts[] =>
  seen.goods
    .map((goods) => {
      const material = seen.yard.materials.find(({ id }) => id === goods.material)!;
      const purpose = purposesOf(material, seen).get(goods) ?? { orders: [], keep: false };
      const typed = seen.typed.get(`${material.id} incoming ${goods.id}`);
      return {
        ...{ id: goods.id, on: goods.on, boughtOn: goods.boughtOn, price: goods.price, name: material.name },
        ...{ hasBags: !isCutUp(material), keepsUntil: keepsUntil(material.shelfLifeDays, seen.today) },
        ...amountFacts(goods.quantity, material.unit, seen),
        asTyped: asTyped(typed, goods.quantity, material.unit, seen.measures.system),
        for: namesOf(purpose, material, seen),
        unused: unusedIn([goods], material, seen),
      };
    })
    .sort((a, b) => a.on.localeCompare(b.on));

const offcutsFacts = (material: Material, system: UnitSystem): OffcutsFacts | null => {
  const field = leftField(material, system);
  if (field === null) return null;
  const { inSheets = false, offcuts = [], rests = [] } = material;
  const lengths = inSheets
    ? rests.map(({ count, ...size }) => ({ length: sizesText([{ ...size, count: 1 }], system), count }))
    : offcuts.map(({ lengthMm, count }) => ({ length: lengthText(lengthMm, system), count }));
  return { ...field, lengths };
};

const stockOf = (
  seen: Seen,
  { now, notes, known: { buyings } }: Pick<Stored, 'now' | 'notes' | 'known'>,
): StockFacts[] => {
  const notBeforeOf = (id: string): string | null => {
    const day = buyings.get(id)?.notBefore ?? null;
    return day !== null && day > seen.today ? day : null;
  };
  const clock = { now: minuteOf(now), calendar: calendarOf(seen.yard.yard.timeZone) };
  return seen.yard.materials.map((material, index) => {
    const { perUnit, word } = shownUnit(material.unit, seen.measures.system);
    const bags = bagsFacts(material, seen.yard, seen.today);
    const [uses, past] = [seen.uses.get(material.id) ?? [], pastDate(bags)];
    const counted = stockFacts(material, uses, past, clock);
    const typed = seen.typed.get(`${material.id} onHand`);
    const keeping = seen.keeping.get(material.id) ?? null;
    return {
      key: String(index),
      ...{ material: material.id, name: material.name, unit: word, minimum: keptOf(material) * perUnit },
      canBeBought: material.leadDays !== undefined,
      notBefore: notBeforeOf(material.id),
      offcuts: offcutsFacts(material, seen.measures.system),
      book: bookOf(material),
      ...stockShown(counted, perUnit),
      asTyped: asTyped(typed, counted.inYard, material.unit, seen.measures.system),
      coming: seen.goods
        .filter((one) => one.material === material.id)
        .map(({ quantity, on }) => ({ quantity: quantity * perUnit, on })),
      note: notes.get(material.id) ?? null,
      bags: bags.map((one) => ({ ...one, quantity: one.quantity * perUnit })),
      bagsToCount: bagsToCount(material, bags, perUnit),
      keeping: keeping && keepingShown(keeping, perUnit),
      ahead: stockAhead(material, uses, { yard: seen.yard, now, counted }),
    };
  });
};

interface Stored {
  now: string;
  goods: readonly Goods[];
  notes: ReadonlyMap<string, string>;
  measures: Measures;
  typed: Seen['typed'];
  arrivals: Seen['arrivals'];
  /** What is known of suppliers and of how materials are bought. */
  known: BuyingKnown;
}

/** The trips of a plan, here and now. */
const tripsHere = (...of: Parameters<typeof tripsToAsk>): TripsPlanned => {
  const { asked, beside } = tripsToAsk(...of);
  return { trips: tripsOf(asked), beside };
};

/**
 * What to buy by when and for whom, what is on its way, and what is in the yard. Pure, on what the store holds; `uses` is
 * what the plan takes from stock.
 */
export const buyingModel = (
  { yard, plan }: { yard: YardFile; plan: PlanFile },
  stored: Stored,
  uses = materialUses(yard, plan),
  planned: TripsPlanned | null = null,
): BuyingModel => {
  const day = today(yard.yard.timeZone, stored.now);
  const { goods, measures, typed, arrivals } = stored;
  const { trips, beside } = planned ?? tripsHere({ yard, plan, today: day, uses }, stored.known);
  const bought = new Map(trips.flatMap(({ lines }) => lines.map((line) => [line, boughtLine(line)])));
  const supplied = { yard, today: day, uses, goods, buys: [...bought.values()], measures, typed, arrivals };
  const keeping = new Map(yard.materials.map((material) => [material.id, keepingFacts(material, supplied)]));
  const seen: Seen = {
    ...supplied,
    keeping,
    customers: new Map(yard.orders.map(({ id, customer }) => [id, customer])),
  };
  return {
    yardName: yard.yard.name,
    today: day,
    currency: measures.currency,
    thisWeek: weekOf(day, measures.weekStart),
    weeks: weeksOf(seen, { trips, beside, bought, plan }),
    onTheWay: onTheWayOf(seen),
    stock: stockOf(seen, stored),
    daysAhead: DAYS_AHEAD,
    materials: yard.materials.map(({ id, name, unit }) => ({
      ...{ id, name, unit: shownUnit(unit, measures.system).word },
    })),
  };
};
