import { CAME_OUT, type CameOut } from '../../../shared/piece-to-mend.ts';
import { isDate } from '../../../shared/time.ts';
import { done, type Outcome, refuse } from '../core/context.ts';
import type { DateReading } from './date-typed.ts';
import { type FormFields, wholeTyped } from './form-fields.ts';
import { TypedReader } from './typed-reader.ts';
import { type RecordTyped, recordTyped } from './when-form.ts';

/** What a form says of a piece that comes out of its mould; null where it does not say. */
export const cameOutTyped = ({ cameOut }: FormFields): CameOut | null =>
  CAME_OUT.find((one) => one === cameOut) ?? null;

/** A mould got its sealing coat. */
export const coatTyped = (fields: FormFields, how: DateReading) => {
  const reader = new TypedReader(fields, how);
  const { mould = '' } = fields;
  const { at, step } = recordTyped(reader, fields);
  return reader.outcome({ mould, at, step });
};

/** Pieces were covered, each in a field of its own; sent later, with the minute of the tap. */
export const coveredTyped = (fields: FormFields, how: DateReading) => {
  const reader = new TypedReader(fields, how);
  const { at } = recordTyped(reader, fields);
  const pieces = Object.keys(fields).flatMap((name) => (/^piece\d+$/.test(name) ? (fields[name] ?? []) : []));
  return reader.outcome({ pieces, at });
};

/** A mould was set up. */
export const prepTyped = (fields: FormFields, how: DateReading) => {
  const reader = new TypedReader(fields, how);
  const { mould = '', casting = '', sealed } = fields;
  const { at, tapped, step } = recordTyped(reader, fields);
  return reader.outcome({ mould, casting, sealed: sealed === 'yes', at, tapped, step });
};

interface StripTyped extends RecordTyped {
  mould: string;
  cameOut: CameOut;
  reason: string;
}

/** A piece came out of its mould. */
export const stripTyped = (fields: FormFields, how: DateReading): Outcome<StripTyped> => {
  const reader = new TypedReader(fields, how);
  const { mould = '', reason = '' } = fields;
  const cameOut = cameOutTyped(fields);
  if (cameOut === null) reader.refuse('mould', 'Say how the piece came out. Nothing was changed.');
  return reader.outcome({ mould, cameOut: cameOut ?? 'good', reason, ...recordTyped(reader, fields) });
};

/** Which of the pieces to mend; 0 stands for none of them. */
export const pieceTyped = ({ piece }: FormFields): Outcome<number> => done(wholeTyped(piece) ?? 0);

/** A piece was mended, and the day from which it is fit to go out; null for as soon as it has cured. */
export const mendTyped = (fields: FormFields, how: DateReading): Outcome<{ piece: number; fitFrom: string | null }> => {
  const reader = new TypedReader(fields, how);
  return reader.outcome({ piece: wholeTyped(fields.piece) ?? 0, fitFrom: reader.dateOrNone('fitFrom') });
};

/** The numbers that are ticked, each a field of its own: "piece:12". */
const numbersTicked = (fields: FormFields, prefix: string): number[] =>
  Object.keys(fields).flatMap((name) =>
    name.startsWith(prefix) && fields[name] === 'yes' ? (wholeTyped(name.slice(prefix.length)) ?? []) : [],
  );

/** An order was packed. */
export const packTyped = (fields: FormFields, how: DateReading) => {
  const reader = new TypedReader(fields, how);
  return reader.outcome({
    order: fields.order ?? '',
    evenShort: fields.evenShort === 'yes',
    pieces: numbersTicked(fields, 'piece:'),
    minutes: reader.wholeOrNone('minutes', 'How many minutes?', { least: 1, most: 10_000 }),
    ...recordTyped(reader, fields),
  });
};

/** A day on which there is no work after all. */
export const noWorkTyped = ({ date = '' }: FormFields): Outcome<string> =>
  isDate(date) ? done(date) : refuse('date', 'That date does not exist. Nothing was changed.');

/** Which session: the instant it starts. */
export const sessionTyped = ({ session = '' }: FormFields): Outcome<string> => done(session);

/** A mould that is named and nothing else. */
export const mouldNamed = ({ mould = '' }: FormFields): Outcome<string> => done(mould);

/** An order that is named and nothing else. */
export const orderNamed = ({ order = '' }: FormFields): Outcome<string> => done(order);

interface LateTyped extends Pick<RecordTyped, 'step' | 'sure'> {
  /** Null for all of them, which the form says in so many words. */
  session: string | null;
}

const lateTyped = (fields: FormFields, isEnough: boolean): Outcome<LateTyped> => {
  const { step, sure } = recordTyped(new TypedReader(fields), fields);
  if (!isEnough && fields.all !== 'yes' && !fields.session)
    return refuse('late', 'Say which work that is: one step, one session or all of it. Nothing was changed.');
  return done({ step, sure, session: fields.session || null });
};

/** Late work that was done as planned: all of one session, or all there is. `step` is the first one there was on the page. */
export const asPlannedTyped = (fields: FormFields): Outcome<LateTyped> => lateTyped(fields, false);

/** Late work that was not done: one step, all of one session, or all there is. */
export const notDoneTyped = (fields: FormFields): Outcome<LateTyped> => lateTyped(fields, Boolean(fields.step));

/** When a session stops, by the clock of its day. */
export const stopTyped = ({ session = '', at = '' }: FormFields) => done({ session, at });

/** A session with one person fewer, and which of its hours; null where it does not say. */
export const fewerTyped = ({ session = '', window }: FormFields) => done({ session, window: wholeTyped(window) });

/** Hours ahead that a session is fixed; null where it is no whole number. */
export const fixedHoursTyped = ({ hours }: FormFields): Outcome<number | null> => done(wholeTyped(hours));

/** A batch of today, by the first of its moulds and when it was to begin; `begunAt` null for just now. */
export const batchTyped = ({ mould = '', at = '', begunAt }: FormFields) =>
  done({ mould, at, begunAt: begunAt || null });

/** The moulds of a batch that is mixed, and when it was. */
export const mixedTyped = ({ moulds = '', begunAt }: FormFields) =>
  done({ moulds: moulds.split('\n').filter(Boolean), at: begunAt || null });

/** A batch that went off, and whether its moulds are still set up; without a word they are to be cleaned. */
export const thrownTyped = ({
  step = '',
  moulds,
}: FormFields): Outcome<{ step: string; left: 'set up' | 'to clean' }> =>
  done({ step, left: moulds === 'set up' ? 'set up' : 'to clean' });

/** The step before which something is to be recorded. */
export const beforeTyped = (fields: FormFields) => {
  const { sure } = recordTyped(new TypedReader(fields), fields);
  return done({ before: fields.before ?? '', sure });
};
