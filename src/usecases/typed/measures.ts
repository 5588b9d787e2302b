import type { Tx } from '../../../db/open.ts';
import { habitsOfYard } from '../../../db/stores/habits-store.ts';
import { englishOfYard, unitsOfYard } from '../../../db/stores/units-store.ts';
import type { English } from '../../../shared/english.ts';
import type { YardHabits } from '../../../shared/habits.ts';
import { dateOfDay, dayNumber, type Weekday, weekStartOf } from '../../../shared/time.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import { shownUnit } from '../../engine/units/material-unit.ts';
import type { UseCaseContext } from '../core/context.ts';

/** How a yard shows and reads its figures: units, money, and the day on which its week begins. */
export interface Measures extends YardHabits {
  system: UnitSystem;
  english: English;
}

export const measuresOf = async (tx: Tx): Promise<Measures> => ({
  system: await unitsOfYard(tx),
  english: await englishOfYard(tx),
  ...(await habitsOfYard(tx)),
});

export const showMeasures = ({ database }: UseCaseContext): Promise<Measures> => database.read(measuresOf);

/** An amount as it is shown: in the yard's units where it is a measure, as it is where it is none. */
export const shownAmount = <T extends { quantity: number; unit: string }>(amount: T, system: UnitSystem): T => {
  const { word, perUnit } = shownUnit(amount.unit, system);
  return { ...amount, quantity: amount.quantity * perUnit, unit: word };
};

/** The first day of the yard's week that a date is in. `weekOf('2027-04-10', 'SU')` is '2027-04-04'. */
export const weekOf = (date: string, weekStart: Weekday): string => dateOfDay(weekStartOf(dayNumber(date), weekStart));
