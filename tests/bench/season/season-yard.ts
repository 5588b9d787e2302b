import { seedDemo } from '../../../db/demo/larch-row.ts';
import type { Tx } from '../../../db/open.ts';
import { replaceYard } from '../../../db/stores/replace-yard.ts';
import { setUnits } from '../../../db/stores/units-store.ts';
import { updateYard } from '../../../db/stores/yard-store.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import { readYardFile, type YardFile, type YardFileInput } from '../../../shared/yard-file.ts';
import { DELIVERY_DAYS_IN_HAND } from '../../../src/engine/begin/empty-yard.ts';
import type { Ask } from './arrivals.ts';

/** A yard that a season is lived through in. */
export interface SeasonYard {
  name: string;
  timeZone: string;
  /** The first day. */
  from: string;
  ordersAWeek: number;
  asks: readonly Ask[];
  /** Fills an empty database with it, as it stands at an instant of its first day. */
  seed(tx: Tx, now: string): Promise<void>;
}

type Facts = Pick<SeasonYard, 'name' | 'from' | 'ordersAWeek' | 'asks'>;

const readAt = (input: YardFileInput, now: string): YardFile => {
  const read = readYardFile({ ...input, yard: { ...input.yard, now } });
  if (read.ok) return read.yard;
  throw new Error(`The yard has faults: ${read.faults.map(({ path, message }) => `${path} ${message}`).join('; ')}`);
};

/** A yard of a yard file. */
export const yardOfFile = (facts: Facts, input: YardFileInput, system: UnitSystem = 'metric'): SeasonYard => ({
  ...facts,
  timeZone: input.yard.timeZone,
  seed: async (tx, now) => {
    await replaceYard(tx, readAt(input, now));
    // What is read off its pages is read in one English.
    await setUnits(tx, system, 'British');
  },
});

/** The demo, as it is on its first day, with days in hand for deliveries as a new yard has them. */
export const demoYard = (facts: Facts): SeasonYard => ({
  ...facts,
  timeZone: 'Europe/Dublin',
  seed: async (tx, now) => {
    await seedDemo(tx, facts.from, now);
    await updateYard(tx, { deliveryDaysInHand: DELIVERY_DAYS_IN_HAND });
  },
});
