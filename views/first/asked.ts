import type { ReadyFacts } from '../../src/usecases/first/ask-when.ts';
import type { QuestionModel } from '../../src/usecases/first/show-question.ts';
import type { FieldErrors } from '../parts/field.tsx';

/** No more kinds of thing are asked about at once; an order takes more. */
export const MOST_ROWS = 6;

/** A row of the question as it was typed. */
interface RowTyped {
  what: string;
  number: string;
}

/** What was asked, as typed, and what came of it: facts, or what was wrong with the question. */
export interface AskedModel extends Omit<QuestionModel, 'answer' | 'yardName' | 'today' | 'rows'> {
  rows: readonly RowTyped[];
  wantedOn: string;
  /** The day that is wanted, where it could be read. */
  wanted: string | null;
  facts: ReadyFacts | null;
  errors: FieldErrors;
}

/** "what", "what1", "what2": the fields of a row. */
export const rowField = (name: 'what' | 'number', row: number): string => (row === 0 ? name : `${name}${row}`);

/** The question as the end of an address. */
export const questionOf = ({ rows, wantedOn }: Pick<AskedModel, 'rows' | 'wantedOn'>): string => {
  const asked = rows.flatMap(({ what, number }, row): [string, string][] => [
    [rowField('what', row), what],
    [rowField('number', row), number],
  ]);
  return new URLSearchParams([...asked, ...(wantedOn ? [['wantedOn', wantedOn] as [string, string]] : [])]).toString();
};
