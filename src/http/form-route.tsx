import { type Context, Hono } from 'hono';
import type { Child } from 'hono/jsx';
import { done, type Outcome, type UseCaseContext } from '../usecases/core/context.ts';
import type { Changed } from '../usecases/plan/changing.ts';
import { dateReading } from '../usecases/plan/date-reading.ts';
import { changeMadeBy } from '../usecases/plan/done-once.ts';
import { type Edit, type FormState, type Saved, saveEdit } from '../usecases/plan/save-edit.ts';
import { textsTooLong } from '../usecases/plan/texts-too-long.ts';
import { actTyped } from '../usecases/typed/act-field.ts';
import type { DateReading } from '../usecases/typed/date-typed.ts';
import type { FormFields } from '../usecases/typed/form-fields.ts';
import { missing } from './failures.tsx';
import { errorsByField, readForm } from './form.ts';
import { keyOf } from './once.ts';
import { type PageFrame, type PageStatus, page, seeDone } from './page.tsx';
import type { Screens } from './screens.ts';
import { doneBy } from './this-device.ts';

/*
 * The one way to take a form.
 *
 * 1. `readForm` takes the fields; a reader of src/usecases/typed says what they mean, in the route (`atOnce`) or, where it
 *    has to know the yard, within the use case.
 * 2. One use case does it: `atOnce`, or `effectFirst` where it is shown first what would move.
 * 3. Done, the answer leads to `next`, which says what was done. Refused, or about to move dates, the page comes back with
 *    each fault at its field and all that was typed; as the part of a page where htmx asked for one.
 *
 * `formsOnPage` is for a page with a form on each line, `sectionRoutes` (section-routes.tsx) for a section of "Your yard".
 */

/** What a page shows. `status` where it is not 200, or 422 with something wrong in the form. */
export interface Shown {
  frame: PageFrame;
  content: Child;
  status?: PageStatus;
}

/** The page in the state a form of it is in; null where what it is about is not there. */
export type Show<State = FormState> = (c: Context, context: UseCaseContext, state: State) => Promise<Shown | null>;

/** What a form does with its fields; `c` for what its address says. */
export type Save<T> = (context: UseCaseContext, fields: FormFields, c: Context) => Promise<Saved<T>>;

/**
 * A form, sent to `path`.
 *
 * Example: { path: '/yard/moulds/:mould', show: mouldPage, next: () => '/yard/moulds',
 * save: effectFirst((fields, c) => editMould(c.req.param('mould') ?? '', fields)) }.
 */
export interface FormRoute<T> {
  path: string;
  show: Show;
  save: Save<T>;
  /** Where it leads once it is done; without a value where it was done when it was sent before. */
  next(c: Context, value: T | null, fields: FormFields): string;
  /** True where it was sent only to be shown again with more rows. */
  isUnfinished?(fields: FormFields): boolean;
}

const BLANK: FormState = { typed: null, errors: {}, effect: null };

const answer = (c: Context, shown: Shown | null, { errors }: Pick<FormState, 'errors'>) =>
  shown === null
    ? missing(c)
    : page(c, shown.frame, shown.content, {
        status: shown.status ?? (Object.keys(errors).length > 0 ? 422 : 200),
      });

const stateOf = (saved: Exclude<Saved<unknown>, { kind: 'saved' }>, typed: FormFields): FormState => ({
  typed,
  errors: saved.kind === 'refused' ? errorsByField(saved.faults) : {},
  effect: saved.kind === 'moves' ? saved.effect : null,
});

/** A page with a form that was not sent yet. */
export const pageRoute = ({ context }: Screens, path: string, show: Show): Hono =>
  new Hono().get(path, async (c) => answer(c, await show(c, context(), BLANK), BLANK));

/** What is asked, by whom, with the key of the act; a key that can't be read is a fault, and so is a text that is too long. */
export const asked = async (
  c: Context,
  context: UseCaseContext,
  fields: FormFields,
): Promise<Outcome<UseCaseContext>> => {
  const act = actTyped(fields.once && fields.act === undefined ? { act: await keyOf(fields) } : fields);
  if (!act.ok) return act;
  const faults = await textsTooLong(context, fields);
  if (faults.length > 0) return { ok: false, faults };
  return done({ ...context, ...doneBy(c, fields.doneBy), ...(act.value === null ? {} : { act: act.value }) });
};

/** Saves what was sent, unless it was sent and saved before. Of two that come at once one is refused and finds the other's change. */
export const savedOnce = async <S extends { kind: string }>(
  context: UseCaseContext,
  save: () => Promise<S>,
): Promise<S | { kind: 'saved'; value: null; change: number }> => {
  const before = await changeMadeBy(context);
  if (before !== null) return { kind: 'saved', value: null, change: before };
  const saved = await save();
  const meanwhile = saved.kind === 'saved' ? null : await changeMadeBy(context);
  return meanwhile === null ? saved : { kind: 'saved', value: null, change: meanwhile };
};

/** Takes a form that is sent to an address without a page of its own. */
export const formRoute = <T,>({ context }: Screens, form: FormRoute<T>): Hono =>
  new Hono().post(form.path, async (c) => {
    const [now, fields] = [context(), await readForm(c)];
    const again = async (state: FormState) => answer(c, await form.show(c, now, state), state);
    if (form.isUnfinished?.(fields)) return again({ ...BLANK, typed: fields });
    const act = await asked(c, now, fields);
    const saved = act.ok
      ? await savedOnce(act.value, () => form.save(act.value, fields, c))
      : { kind: 'refused' as const, faults: act.faults };
    if (saved.kind !== 'saved') return again(stateOf(saved, fields));
    return seeDone(c, form.next(c, saved.value, fields), saved.change, fields);
  });

/** A form with its page, both at one address. */
export const formPage = <T,>(screens: Screens, form: FormRoute<T>): Hono =>
  pageRoute(screens, form.path, form.show).route('/', formRoute(screens, form));

/** Fields as they are: the use case reads them, since it has to know the yard first. */
export const asSent = (fields: FormFields): Outcome<FormFields> => done(fields);

/** A reader of a form with days in it. */
export const withDays =
  <Read,>(read: (fields: FormFields, how: DateReading) => Outcome<Read>) =>
  async (fields: FormFields, context: UseCaseContext): Promise<Outcome<Read>> =>
    read(fields, await dateReading(context));

type Reader<Read> = (fields: FormFields, context: UseCaseContext) => Outcome<Read> | Promise<Outcome<Read>>;

/** Reads the form, and does it at once: `atOnce(stripTyped, recordStrip)`. */
export const atOnce =
  <Read, T>(
    read: Reader<Read>,
    act: (context: UseCaseContext, typed: Read, c: Context) => Promise<Outcome<Changed<T>>>,
  ): Save<T> =>
  async (context, fields, c) => {
    const typed = await read(fields, context);
    const outcome = typed.ok ? await act(context, typed.value, c) : typed;
    if (!outcome.ok) return { kind: 'refused', faults: outcome.faults };
    return { kind: 'saved', value: outcome.value.value, change: outcome.value.change };
  };

/** Shows first what would move a date; what moves none is saved at once. */
export const effectFirst =
  <T,>(edit: (fields: FormFields, c: Context, context: UseCaseContext) => Edit<T>): Save<T> =>
  (context, fields, c) =>
    saveEdit(context, edit(fields, c, context), fields.seen);
