import { CAME_OUT, type CameOut } from '../../../shared/piece-to-mend.ts';
import { isDate } from '../../../shared/time.ts';
import { done, type Outcome, refuse } from '../core/context.ts';
import type { DateReading } from './date-typed.ts';
import { type FormFields, wholeTyped } from './form-fields.ts';
import { TypedReader } from './typed-reader.ts';

/** What a form says of a piece that comes out of its mould; null where it does not say. */
export const cameOutTyped = ({ cameOut }: FormFields): CameOut | null =>
  CAME_OUT.find((one) => one === cameOut) ?? null;

/** A mould was set up; `at` is null for just now. */
export const prepTyped = ({ mould = '', casting = '', sealed, at }: FormFields) =>
  done({ mould, casting, sealed: sealed === 'yes', at: at || null });

interface StripTyped {
  mould: string;
  cameOut: CameOut;
  reason: string;
  at: string | null;
}

/** A piece came out of its mould. */
export const stripTyped = (fields: FormFields): Outcome<StripTyped> => {
  const { mould = '', reason = '', at } = fields;
  const cameOut = cameOutTyped(fields);
  return cameOut === null
    ? refuse('mould', 'Say how the piece came out. Nothing was changed.')
    : done({ mould, cameOut, reason, at: at || null });
};

/** Which of the pieces to mend; 0 stands for none of them. */
export const pieceTyped = ({ piece }: FormFields): Outcome<number> => done(wholeTyped(piece) ?? 0);

/** A piece was mended, and the day from which it is fit to go out; null for as soon as it has cured. */
export const mendTyped = (fields: FormFields, how: DateReading): Outcome<{ piece: number; fitFrom: string | null }> => {
  const reader = new TypedReader(fields, how);
  return reader.outcome({ piece: wholeTyped(fields.piece) ?? 0, fitFrom: reader.dateOrNone('fitFrom') });
};

/** An order was packed; `at` is null for just now. */
export const packTyped = ({ order = '', evenShort, at }: FormFields) =>
  done({ order, evenShort: evenShort === 'yes', at: at || null });

/** A day on which there is no work after all. */
export const noWorkTyped = ({ date = '' }: FormFields): Outcome<string> =>
  isDate(date) ? done(date) : refuse('date', 'That date does not exist. Nothing was changed.');

/** Which session: the instant it starts. */
export const sessionTyped = ({ session = '' }: FormFields): Outcome<string> => done(session);

/** An order that is named and nothing else. */
export const orderNamed = ({ order = '' }: FormFields): Outcome<string> => done(order);

/** Late work: one step, or all of one session; null for all there is. */
export const lateTyped = ({ step, session }: FormFields) => done({ step: step || null, session: session || null });

/** When a session stops, by the clock of its day. */
export const stopTyped = ({ session = '', at = '' }: FormFields) => done({ session, at });

/** A session with one person fewer, and which of its hours; null where it does not say. */
export const fewerTyped = ({ session = '', window }: FormFields) => done({ session, window: wholeTyped(window) });

/** Hours ahead that a session is fixed; null where it is no whole number. */
export const fixedHoursTyped = ({ hours }: FormFields): Outcome<number | null> => done(wholeTyped(hours));

/** A batch of today, by the first of its moulds and when it was to begin. */
export const batchTyped = ({ mould = '', at = '' }: FormFields) => done({ mould, at });

/** One step that is under way or late, by its name. */
export const stepNamed = ({ step = '' }: FormFields): Outcome<string> => done(step);
