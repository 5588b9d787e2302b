import { setUnits, unitsOfYard } from '../../db/stores/units-store.ts';
import type { UnitSystem } from '../../shared/units.ts';
import { type Changed, changing } from './changing.ts';
import { done, type Outcome, refuse, type UseCaseContext } from './context.ts';

const WORDS: Readonly<Record<UnitSystem, string>> = {
  metric: 'Sizes are shown in millimetres and kilograms',
  US: 'Sizes are shown in feet, inches and pounds',
};

/** What the yard shows sizes in, and reads numbers without a unit as. Nothing that is stored changes. */
export const measureIn = (context: UseCaseContext, system: UnitSystem): Promise<Outcome<Changed<UnitSystem>>> =>
  changing(context, { kind: 'units set', words: WORDS[system] }, async (tx) => {
    if ((await unitsOfYard(tx)) === system) return refuse('system', `${WORDS[system]} already.`);
    await setUnits(tx, system);
    return done(system);
  });
