import { DOUBTS, type Doubt } from '../../../shared/doubt.ts';
import type { FormFields } from './form-fields.ts';
import type { TypedReader } from './typed-reader.ts';

/** What a form of work that was done says beside what it was. */
export interface RecordTyped {
  /** When, as `writtenAt` has it; null for just now. */
  at: string | null;
  /** It was tapped as it was done, be it that the tap waited: `at` is then when that was. */
  tapped: boolean;
  /** The name of the step on the page; null where it has none. */
  step: string | null;
  /** What the maker was asked about, and is sure of. */
  sure: Doubt[];
}

/** A day and a time; the day is today's where it is left out, and where both may be and are, it was just now. */
const dayAndTime = (reader: TypedReader, orNow: boolean): string | null => {
  const on = reader.dateOrNone('on');
  if (orNow && on === null && reader.text('time') === '') return null;
  const time = reader.clock('time');
  return on === null ? time : `${on} ${time}`;
};

/** When it was done, which step it was, and what the maker is sure of: `when` says whether the form asks for a day and a time. */
export const recordTyped = (reader: TypedReader, { when, step, tapped, sure = '' }: FormFields): RecordTyped => {
  const at =
    when === 'typed' || when === 'typed or now' ? dayAndTime(reader, when !== 'typed') : reader.text('at') || null;
  return {
    ...{ at, tapped: at === null || tapped === 'yes', step: step || null },
    sure: DOUBTS.filter((doubt) => sure.split(',').includes(doubt)),
  };
};
