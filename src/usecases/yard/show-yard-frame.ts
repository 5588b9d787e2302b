import { guessesOfYard } from '../../../db/stores/figure-store.ts';
import { habitsOfYard } from '../../../db/stores/habits-store.ts';
import { englishOfYard, unitsOfYard } from '../../../db/stores/units-store.ts';
import type { English } from '../../../shared/english.ts';
import type { FigureOf } from '../../../shared/figure.ts';
import type { YardHabits } from '../../../shared/habits.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import type { Named, PageHead } from '../core/page-parts.ts';
import { type CurrentPlan, currentPlan } from '../plan/make-plan.ts';

/** What every section of the yard is shown from. */
export interface YardFrame extends PageHead, Pick<CurrentPlan, 'yard' | 'plan'> {
  system: UnitSystem;
  english: English;
  habits: YardHabits;
  /** Figures that nobody has confirmed yet, of every kind of thing. */
  guesses: readonly FigureOf[];
}

/** A page of a section, with the units it is written and read in. */
export interface YardPageHead extends PageHead {
  system: UnitSystem;
}

/** A material to be chosen for what is made, with the unit it is shown in. */
export interface MaterialChoice extends Named {
  unit: string;
  /** It comes in lengths that are cut. */
  isCut: boolean;
  /** It comes as sheets, or on a roll. */
  isSheet: boolean;
}

/** What every section of the yard needs to be shown: the data, how it is written, and which figures are guesses. */
export const showYardFrame = async (context: UseCaseContext): Promise<YardFrame> => {
  const { yard, plan } = await currentPlan(context);
  const written = await context.database.read(async (tx) => ({
    system: await unitsOfYard(tx),
    english: await englishOfYard(tx),
    habits: await habitsOfYard(tx),
    guesses: await guessesOfYard(tx),
  }));
  return { yard, plan, yardName: yard.yard.name, today: today(yard.yard.timeZone, context.now), ...written };
};
