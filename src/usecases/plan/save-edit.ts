import type { Tx } from '../../../db/open.ts';
import { promisedDays } from '../../../db/stores/order-store.ts';
import type { Fault } from '../../../shared/fault.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { done, type Outcome, type UseCaseContext } from '../core/context.ts';
import { type Changed, type ChangeWords, changingUnless, type DoChange, previewingApart } from './changing.ts';
import type { PromiseMove } from './promises-moved.ts';
import type { Replanning } from './record-change.ts';
import { type SessionEffect, type SessionSpan, sessionEffect } from './session-effect.ts';

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
  /** The session whose hours it changes: what becomes of it is shown first, even where no date moves. */
  session?: (yard: YardFile) => SessionSpan;
  /** How the plan after it comes from the one before it. */
  replanning?: Replanning<T>;
}

/** Of an order less is done than the plan has. */
export interface LeftForLater {
  order: string;
  customer: string;
  pieces: number;
}

/** A date given to a customer that the plan does not keep. */
export interface UnkeptDate {
  order: string;
  customer: string | null;
  promisedOn: string;
  /** The day by plan; null where it cannot be made. */
  readyOn: string | null;
  /** Why it cannot be made. */
  reason: string | null;
}

/** A day that was typed and has passed: which field it stands in, and the same day to come where no year was named. */
export interface PassedDay {
  field: string;
  on: string;
  next: string | null;
}

/** What saving would do to the days of orders. */
export interface Effect {
  moved: (PromiseMove & { promisedOn: string | null })[];
  unkept: readonly UnkeptDate[];
  passed: readonly PassedDay[];
  /** A later date that could be given instead, by which no other order gets too late; null where none is known. */
  insteadOn: string | null;
  /** What becomes of the session whose hours it changes. */
  session?: SessionEffect;
  /** It is still worked out: the page asks for it by itself. */
  isComing?: true;
  /** Says which effect it was, to be sent back once it was seen. */
  seen: string;
}

/** A form as it is shown: `typed` is null until it was sent once. */
export interface FormState {
  typed: Readonly<Record<string, string>> | null;
  errors: Readonly<Record<string, string>>;
  effect: Effect | null;
}

/** A form of a page that has several, sent back: which one, what was wrong or is asked first, what was typed into it. */
export interface RefusedForm {
  form: string;
  errors: FormState['errors'];
  effect: FormState['effect'];
  typed: Readonly<Record<string, string>>;
}

export type Saved<T> =
  | { kind: 'saved'; value: T; change: number }
  | { kind: 'moves'; effect: Effect }
  | { kind: 'refused'; faults: Fault[] };

/**
 * Names an effect: the same orders to the same days, the same dates not kept, the same days gone by; '' where there is
 * none. Short enough to be sent along with a form.
 */
export const effectName = (
  moved: readonly Pick<PromiseMove, 'order' | 'to'>[],
  unkept: readonly Pick<UnkeptDate, 'order' | 'promisedOn' | 'readyOn'>[] = [],
  passed: readonly PassedDay[] = [],
): string =>
  [
    ...moved.map(({ order, to }) => `${order} ${to ?? '-'}`),
    ...unkept.map(({ order, promisedOn, readyOn }) => `${order} ${promisedOn} not before ${readyOn ?? '-'}`),
    ...passed.map(({ field, on }) => `${field} ${on}`),
  ]
    .sort()
    .join(',')
    .slice(0, 3000);

/** Moves, each with the date that the customer was told. */
export const withPromises = async (tx: Tx, moved: readonly PromiseMove[]): Promise<Effect['moved']> => {
  const promised = await promisedDays(tx);
  return moved.map((move) => ({ ...move, promisedOn: promised.get(move.order) ?? null }));
};

/** Sent back where there is something to see and no date moves. */
const NO_DATE = 'no date';

/** Names what an edit does; '' where there is nothing to see. */
const seenOf = ({ session }: Pick<Edit, 'session'>, moved: readonly PromiseMove[]): string =>
  effectName(moved) || (session ? NO_DATE : '');

/** What was there before an edit. */
interface Before {
  yard: YardFile;
  plan: PlanFile;
}

/** Does the work of an edit, and keeps what was there before it. */
const watching = <T>({ work }: Edit<T>): { work: DoChange<T>; before: () => Before | null } => {
  let before: Before | null = null;
  return {
    work: (tx, yard, change, plan, toDo) => {
      before = { yard, plan };
      return work(tx, yard, change, plan, toDo);
    },
    before: () => before,
  };
};

type Made = Pick<Changed<unknown>, 'moved' | 'plan' | 'yard'>;

/** What is seen of an edit before it is saved. */
export type SeenEffect = Pick<Effect, 'moved' | 'session' | 'seen'>;

const effectOf = async (
  context: UseCaseContext,
  { session }: Pick<Edit, 'session'>,
  before: Before | null,
  { moved, plan, yard }: Made,
): Promise<SeenEffect> => {
  const shown = await context.database.read((tx) => withPromises(tx, moved));
  const becomes = before && session ? { session: sessionEffect(before.plan, plan, { yard, span: session(yard) }) } : {};
  return { moved: shown, ...becomes, seen: seenOf({ session }, moved) };
};

/** What an edit would do, worked out beside all that is recorded meanwhile; null where that was given up. */
export const effectApart = async <T>(context: UseCaseContext, edit: Edit<T>): Promise<Outcome<SeenEffect> | null> => {
  const outcome = await previewingApart(context, edit.what, edit.work, edit.replanning);
  if (!outcome?.ok) return outcome;
  const { before, ...made } = outcome.value;
  return done(await effectOf(context, edit, before, made));
};

/** An effect on dates alone. */
export const NOTHING_ELSE: Pick<Effect, 'unkept' | 'passed' | 'insteadOn'> = {
  unkept: [],
  passed: [],
  insteadOn: null,
};

/**
 * Saves at once what moves no date, but for hours of a session. What does is held back with its effect, until it comes
 * again with `seen` naming just that effect.
 */
export const saveEdit = async <T>(
  context: UseCaseContext,
  edit: Edit<T>,
  seen: string | undefined,
): Promise<Saved<T>> => {
  const isNew = (name: string) => name !== '' && name !== seen;
  const { work, before } = watching(edit);
  const holdBack = ({ moved }: Changed<T>) => isNew(seenOf(edit, moved));
  const outcome = await changingUnless(context, edit.what, work, holdBack, edit.replanning);
  if (!outcome.ok) return { kind: 'refused', faults: outcome.faults };
  const { changed, held } = outcome.value;
  if (!held) return { kind: 'saved', value: changed.value, change: changed.change };
  const was = before();
  const effect = await effectOf(context, edit, was, changed);
  return { kind: 'moves', effect: { ...NOTHING_ELSE, ...effect } };
};
