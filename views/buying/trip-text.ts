import { countText } from '../../shared/plural.ts';
import type { BuyLineFacts, TripFacts } from '../../src/usecases/buying/buying-facts.ts';
import { dayText } from '../parts/day-text.ts';
import { moneyText } from '../parts/money-text.ts';
import { goodsText } from './buying-text.ts';

/** "fetch today", "order by Fri 9 Apr". */
export const tripWhenText = ({ day, fetched }: Pick<TripFacts, 'day' | 'fetched'>, today: string): string =>
  `${fetched ? 'fetch' : 'order'} ${day === today ? 'today' : `by ${dayText(day, today)}`}`;

const moneyNote = ({ price, lines, deliveryPrice, fetched }: TripFacts, currency: string): string | null => {
  if (price === 0 || (lines.length === 1 && deliveryPrice === 0)) return null;
  const way =
    deliveryPrice > 0 ? `, with ${moneyText(deliveryPrice, currency)} for the ${fetched ? 'way' : 'delivery'}` : '';
  const unknown = lines.some((line) => line.price === null) ? ' so far as prices are known' : ' in all';
  return `${moneyText(price, currency)}${unknown}${way}`;
};

/** What a trip comes to, and what is wrong with it: "€144.00 in all, with €15.00 for the delivery; 150 kg." */
export const tripNote = (trip: TripFacts, currency: string): string[] => {
  const facts = [moneyNote(trip, currency), trip.weight].filter(Boolean);
  return [
    facts.length > 0 && `${facts.join('; ')}.`,
    trip.shortOfMinimum > 0 && `${moneyText(trip.shortOfMinimum, currency)} short of the least order.`,
    trip.tooHeavy && 'That is more than is carried at once.',
    trip.neverThere && 'By what is said of it, it is never open: days are as if it always were.',
  ].filter((text): text is string => typeof text === 'string');
};

/** Why a line has the day it has, where that has to be said; null where it comes in good time. */
export const lineWarning = (line: BuyLineFacts, today: string): string | null => {
  const { daysLate, missedOn } = line;
  if (daysLate === 0) return null;
  const passed = missedOn === null ? '' : ` It had to be ordered by ${dayText(missedOn, today)}.`;
  return `It comes ${countText(daysLate, 'day')} late.${passed}`;
};

/** "Closed on Sun 11 Apr.", where the plan alone would have had it ordered then. */
export const closedText = ({ closedOn }: Pick<BuyLineFacts, 'closedOn'>, today: string): string =>
  closedOn === null ? '' : ` Closed ${dayText(closedOn, today)}.`;

/** What to take along, or to send: who, by when, and a line for each thing. */
export const tripListText = (trip: TripFacts, today: string): string =>
  `${trip.name}, ${tripWhenText(trip, today)}\n${trip.lines.map(goodsText).join('\n')}`;
