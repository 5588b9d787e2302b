import type { YardFile } from '../../../shared/yard-file.ts';
import { sessionsInHandFor } from './sessions-in-hand.ts';

/** As far ahead as a yard is planned that has not said otherwise. */
const HORIZON_DAYS = 365;

/** Days by which goods may be late: a week, as a new yard is given it. Chosen, not measured. */
export const DELIVERY_DAYS_IN_HAND = 7;

/** The end of a working day: what comes on a day is counted on from then. Chosen, not measured. */
const DELIVERED_BY = '17:00';

/** What a yard needs before anything else: what it is called and what its clock says. */
export interface YardBegun {
  name: string;
  /** IANA name. */
  timeZone: string;
  /** Instant in whole minutes, with an offset. */
  now: string;
}

/**
 * A yard with a name and a clock, and nothing in it. Everything that limits is off: no limit of room, no time for opening
 * and closing, one mixer. One session is kept in hand, since no figure is guessed, and a week for deliveries, which come by
 * the end of a day.
 *
 * Example: `emptyYard({ name: 'Our yard', timeZone: 'Europe/Oslo', now })` can be planned, and its plan is empty.
 */
export const emptyYard = ({ name, timeZone, now }: YardBegun): YardFile => ({
  format: 'mould-rota/yard',
  version: 2,
  yard: {
    ...{ name, timeZone, now, horizonDays: HORIZON_DAYS, mixers: 1, setUpMinutes: 0, clearUpMinutes: 0 },
    ...{
      sessionsInHand: sessionsInHandFor([]),
      deliveryDaysInHand: DELIVERY_DAYS_IN_HAND,
      deliveredBy: DELIVERED_BY,
      batchWorthDays: 5,
      bagWorthDays: 0.5,
    },
  },
  ...{ work: [], closed: [], extra: [], temperatures: [], materials: [], incoming: [], mixes: [], castings: [] },
  ...{ moulds: [], kits: [], finished: [], inMould: [], orders: [] },
});
