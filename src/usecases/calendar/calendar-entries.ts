import type {
  CalendarEntry,
  CountedThing,
  OrderEntry,
  PurchasesEntry,
  SessionEntry,
} from '../../../shared/calendar-entry.ts';
import type { BuyAhead } from '../buying/trips-ahead.ts';
import type { OrderFacts } from '../orders/order-facts.ts';
import type { TurnFacts, TurnsOfPlan } from '../turns/turns-of-plan.ts';

/** What a calendar is made from. */
interface PlanSeen {
  turns: TurnsOfPlan;
  orders: readonly OrderFacts[];
  buys: readonly BuyAhead[];
}

/** The place of each session in its day, from 1. */
const placesInDay = (sessions: TurnsOfPlan['sessions']): number[] => {
  const seen = new Map<string, number>();
  return sessions.map(({ date }) => {
    const place = (seen.get(date) ?? 0) + 1;
    seen.set(date, place);
    return place;
  });
};

const pourOf = ({ mould, piece, customer }: TurnFacts): SessionEntry['pours'][number] => ({ mould, piece, customer });

const sessionEntries = ({ sessions, moulds }: TurnsOfPlan): SessionEntry[] => {
  const places = placesInDay(sessions);
  const turns = moulds.flatMap((mould) => mould.turns);
  const poured = sessions.map((): SessionEntry['pours'] => []);
  const strips = sessions.map(() => 0);
  for (const turn of turns) {
    if (turn.pourSession !== null) poured[turn.pourSession]!.push(pourOf(turn));
    if (turn.stripSession !== null) strips[turn.stripSession]!++;
  }
  return sessions.map(({ date, start, end }, index) => ({
    kind: 'session',
    key: `session-${date}-${places[index]}`,
    ...{ start, end, pours: poured[index]!, strips: strips[index]! },
  }));
};

const isGiven = ({ promisedOn }: OrderFacts): boolean => promisedOn !== null;

const orderEntry = (order: OrderFacts): OrderEntry => ({
  kind: 'order',
  key: `order-${order.id}`,
  on: order.promisedOn!,
  order: order.id,
  customer: order.customer,
  contents: order.contents.map(({ name, quantity, unit }): CountedThing => ({ name, quantity, unit })),
  heldUntil: order.heldUntil,
  readyOn: order.readyOn,
});

/** What there is to order, day by day; the same material twice on a day is one thing. */
const purchasesEntries = (buys: readonly BuyAhead[]): PurchasesEntry[] => {
  const days = new Map<string, Map<string, CountedThing>>();
  for (const { orderBy, name, unit, quantity } of buys) {
    const things = days.get(orderBy) ?? new Map<string, CountedThing>();
    const before = things.get(`${name}, ${unit}`)?.quantity ?? 0;
    days.set(orderBy, things.set(`${name}, ${unit}`, { name, unit, quantity: before + quantity }));
  }
  return [...days].map(([on, things]) => ({
    kind: 'purchases',
    key: `purchases-${on}`,
    ...{ on, things: [...things.values()] },
  }));
};

/**
 * What stands in the calendar: each session with what is filled and stripped in it, each date that was given to a
 * customer, and all that has to be ordered by a day. The keys are the same each time while the day, the order, or the
 * place of a session in its day is the same.
 */
export const calendarEntries = ({ turns, orders, buys }: PlanSeen): CalendarEntry[] => [
  ...sessionEntries(turns),
  ...orders.filter(isGiven).map(orderEntry),
  ...purchasesEntries(buys),
];
