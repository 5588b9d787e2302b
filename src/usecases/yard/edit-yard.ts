import { habitsOfYard, setHabits } from '../../../db/stores/habits-store.ts';
import { englishOfYard, setUnits, unitsOfYard } from '../../../db/stores/units-store.ts';
import { fixedHours, updateYard } from '../../../db/stores/yard-store.ts';
import type { English } from '../../../shared/english.ts';
import type { YardHabits } from '../../../shared/habits.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { sessionsInHandFor } from '../../engine/begin/sessions-in-hand.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import type { Edit } from '../plan/save-edit.ts';
import { keepFigures } from '../typed/figures.ts';
import { fitsYardFile, sayAt } from '../typed/fits-yard-file.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { namesOf, yardTyped } from '../typed/yard-form.ts';
import { showYardFrame, type YardPageHead } from './show-yard-frame.ts';

const OWNER = { kind: 'yard', id: 'yard' } as const;

const WORDS = {
  timeZone: sayAt('timeZone', 'Choose a time zone from the list, such as Europe/Dublin.'),
};

/** What the yard file says of it now and would say then. */
const fits = (yard: YardFile, facts: object): Outcome<YardFile> => {
  const present = Object.fromEntries(Object.entries(facts).filter(([, value]) => value !== null));
  return fitsYardFile({ ...yard, yard: { now: yard.yard.now, ...present } }, 'yard', WORDS);
};

/** What holds for the yard as a whole: its name, its clock, how it writes things, its habits. */
export const editYard = (fields: FormFields): Edit<null> => ({
  what: { kind: 'yard set', words: 'Yard changed' },
  work: async (tx, yard) => {
    const read = yardTyped(fields, yard);
    if (!read.ok) return read;
    const { facts, fixed, spares, system, english, habits } = read.value;
    const then = fits(yard, facts);
    if (!then.ok) return then;
    if (!habits.success) return refuse('currency', 'Which currency? Its three letters, as in EUR, GBP or USD.');
    const before = {
      ...yard.yard,
      fixedHours: await fixedHours(tx),
      system: await unitsOfYard(tx),
      english: await englishOfYard(tx),
      ...(await habitsOfYard(tx)),
    };
    const said = { ...habits.data, ...(spares ? { spares } : {}) };
    const after = { ...then.value.yard, fixedHours: fixed, system, english, ...said };
    await updateYard(tx, { ...facts, fixedHours: fixed });
    await setUnits(tx, system, english);
    await setHabits(tx, said);
    const figures = Object.entries({ ...before, ...after }).map(([figure]) => ({
      ...{ figure, before: before[figure as keyof typeof before], after: after[figure as keyof typeof after] },
    }));
    await keepFigures(tx, OWNER, figures);
    return done(null);
  },
});

/** The yard as a whole, as its form shows it. */
export interface YardAboutModel extends YardPageHead, YardHabits {
  facts: YardFile['yard'];
  english: English;
  /** A session is fixed, all of it, so many hours before it. */
  fixedHours: number;
  /** Sessions in hand that are advised, by how many figures are guesses. */
  sessionsAdvised: number;
  /** Names of the figures that are guesses. */
  guesses: readonly string[];
  zones: readonly string[];
  currencies: readonly string[];
}

/** The yard as a whole, as the form shows it. */
export const showYardAbout = async (context: UseCaseContext): Promise<YardAboutModel> => {
  const { yard, yardName, today, system, english, habits, guesses } = await showYardFrame(context);
  return {
    ...{ yardName, today, system, english, ...habits, facts: yard.yard },
    fixedHours: await context.database.read(fixedHours),
    sessionsAdvised: sessionsInHandFor(guesses),
    guesses: guesses.filter(({ kind }) => kind === 'yard').map(({ figure }) => figure),
    zones: namesOf('timeZone'),
    currencies: namesOf('currency'),
  };
};
