import type { YardFile } from '../../../shared/yard-file.ts';
import type { UseCaseContext } from '../core/context.ts';
import { type Changed, changingUnless } from '../plan/changing.ts';
import type { PromiseMove } from '../plan/promises-moved.ts';
import { reasonShown } from '../plan/reason-shown.ts';
import {
  type Edit,
  type Effect,
  effectName,
  type PassedDay,
  type Saved,
  type UnkeptDate,
  withPromises,
} from '../plan/save-edit.ts';
import { unkeptDates, type WatchedWork, watchingDates } from '../plan/unkept-dates.ts';
import { showMeasures } from '../typed/measures.ts';
import { dateFor } from './date-for.ts';

/** Which order was saved, and what of its days has gone by. */
interface SavedOrder {
  id: string;
  passed: readonly PassedDay[];
}

/** One thing to save about an order, with a date given in it perhaps. */
export type OrderEdit<More = unknown> = Edit<SavedOrder & More>;

const isLater = ({ from, to }: PromiseMove): boolean => from !== null && (to === null || to > from);

/** Later than the day its customer was told, or asked for. */
const isTooLate = ({ order, to }: PromiseMove, yard: YardFile): boolean => {
  const { due, wanted } = yard.orders.find(({ id }) => id === order) ?? {};
  const day = due ?? wanted;
  return to === null || (day !== undefined && to > day);
};

/** What saving an order does that is asked about first; all that get later, where one of them gets too late. */
interface Asked {
  moved: PromiseMove[];
  unkept: UnkeptDate[];
  passed: readonly PassedDay[];
}

type Watched<More> = WatchedWork<SavedOrder & More>;

const askedOf = <More>(changed: Changed<SavedOrder & More>, watched: Watched<More>): Asked => {
  const { value, moved, yard } = changed;
  const later = moved.filter((move) => move.order !== value.id && isLater(move));
  return {
    moved: later.some((move) => isTooLate(move, yard)) ? later : [],
    unkept: unkeptDates(changed, watched).filter(({ order }) => order === value.id),
    passed: value.passed,
  };
};

const nameOf = ({ moved, unkept, passed }: Asked): string => effectName(moved, unkept, passed);

/** What was asked, as the page shows it, with the date that could be given instead of `given`. */
const effectOf = async (
  context: UseCaseContext,
  { value: { id }, yard }: Changed<SavedOrder>,
  asked: Asked,
  given: string | null,
): Promise<Effect> => {
  const { system } = await showMeasures(context);
  const isAnother = given !== null && asked.unkept.length + asked.moved.length > 0;
  const order = isAnother ? yard.orders.find((one) => one.id === id) : undefined;
  const insteadOn = order ? await dateFor(context, order) : null;
  return {
    moved: await context.database.read((tx) => withPromises(tx, asked.moved)),
    unkept: asked.unkept.map((one) => ({ ...one, reason: reasonShown(one.reason, yard.materials, system) })),
    passed: asked.passed,
    insteadOn: insteadOn !== null && given !== null && insteadOn > given ? insteadOn : null,
    seen: nameOf(asked),
  };
};

/**
 * Saves an order at once where the date given in it is kept, no other order gets too late by it and no day of it has gone by.
 * Else it is held back with its effect, until it comes again with `seen` naming just that.
 */
export const saveOrder = async <More>(
  context: UseCaseContext,
  { what, work }: OrderEdit<More>,
  seen: string | undefined,
): Promise<Saved<SavedOrder & More>> => {
  const watched = watchingDates(work);
  const outcome = await changingUnless(context, what, watched.work, (changed) => {
    const name = nameOf(askedOf(changed, watched));
    return name !== '' && name !== seen;
  });
  if (!outcome.ok) return { kind: 'refused', faults: outcome.faults };
  const { held, changed } = outcome.value;
  if (!held) return { kind: 'saved', value: changed.value, change: changed.change };
  const given = watched.promised().get(changed.value.id) ?? null;
  return { kind: 'moves', effect: await effectOf(context, changed, askedOf(changed, watched), given) };
};
