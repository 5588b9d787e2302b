import type { Tx } from '../../../db/open.ts';
import { promisedDays } from '../../../db/stores/order-store.ts';
import type { Fault } from '../../../shared/fault.ts';
import type { UseCaseContext } from '../core/context.ts';
import { type ChangeWords, changingUnless, type DoChange } from './changing.ts';
import type { PromiseMove } from './promises-moved.ts';

/*
 * How a section of "Your yard" saves.
 *
 * 1. A use case reads what was typed into an `Edit`: the words of the change, and the work. The work checks what the yard
 *    file would be (`fitsYardFile` in fits-yard-file.ts), so that every fault stands at its field, and only then writes. It
 *    keeps what was typed and drops the guesses of what is another figure now (`keepFigures` in figures.ts).
 * 2. `effectFirst` (src/http/form-route.tsx) saves the edit. When that moves a date, the form comes back with the effect on
 *    top and everything typed in it; saved again with the effect in sight, it is done.
 * 3. A page of `EditPage` (views/yard/edit-page.tsx) shows the form in a `FormState`; `sectionRoutes`
 *    (src/http/section-routes.tsx) has the list, the form and the removal of an entry (`removeEntry`, remove-entry.ts).
 * 4. The sentence of the section on the page of the yard is in views/yard/section-text.ts, its address in sections.ts there.
 *
 * The moulds show all of it: src/usecases/yard/edit-mould.ts, src/http/yard-mould-routes.tsx, views/yard/mould-*.tsx.
 */

/** One thing to save about the yard. */
export interface Edit<T = unknown> {
  what: ChangeWords<T>;
  work: DoChange<T>;
}

/** What saving would do to the days of orders. */
interface Effect {
  moved: (PromiseMove & { promisedOn: string | null })[];
  /** Says which effect it was, to be sent back once it was seen. */
  seen: string;
}

/** A form as it is shown: `typed` is null until it was sent once. */
export interface FormState {
  typed: Readonly<Record<string, string>> | null;
  errors: Readonly<Record<string, string>>;
  effect: Effect | null;
}

/** A form of a page that has several, sent back: which one, what was wrong, and what was typed into it. */
export interface RefusedForm {
  form: string;
  errors: FormState['errors'];
  typed: Readonly<Record<string, string>>;
}

export type Saved<T> =
  | { kind: 'saved'; value: T; change: number }
  | { kind: 'moves'; effect: Effect }
  | { kind: 'refused'; faults: Fault[] };

/** Names an effect: the same orders to the same days. Short enough to be sent along with a form. */
const effectName = (moved: readonly PromiseMove[]): string =>
  moved
    .map(({ order, to }) => `${order} ${to ?? '-'}`)
    .sort()
    .join(',')
    .slice(0, 3000);

const withPromises = async (tx: Tx, moved: readonly PromiseMove[]): Promise<Effect['moved']> => {
  const promised = await promisedDays(tx);
  return moved.map((move) => ({ ...move, promisedOn: promised.get(move.order) ?? null }));
};

/**
 * Saves at once what moves no date. What does is held back with its effect, until it comes again with `seen` naming just
 * that effect.
 */
export const saveEdit = async <T>(
  context: UseCaseContext,
  { what, work }: Edit<T>,
  seen: string | undefined,
): Promise<Saved<T>> => {
  const outcome = await changingUnless(context, what, work, (moved) => moved.length > 0 && effectName(moved) !== seen);
  if (!outcome.ok) return { kind: 'refused', faults: outcome.faults };
  if (!outcome.value.held) {
    const { value, change } = outcome.value.changed;
    return { kind: 'saved', value, change };
  }
  const { moved } = outcome.value;
  const shown = await context.database.read((tx) => withPromises(tx, moved));
  return { kind: 'moves', effect: { moved: shown, seen: effectName(moved) } };
};
