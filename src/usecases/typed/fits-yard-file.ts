import type { Fault } from '../../../shared/fault.ts';
import { readYardFile, type YardFile } from '../../../shared/yard-file.ts';
import type { Outcome } from '../core/context.ts';

/** Words of a yard file's faults that a form says otherwise, by the field as the yard file calls it. */
export type FieldWords = Readonly<Record<string, (message: string) => Fault>>;

/**
 * What is wrong with something, as a sentence of its own.
 *
 * Example: `sentence('has to be more than 0')` is "Has to be more than 0."
 */
export const sentence = (message: string): string => {
  return `${message.charAt(0).toUpperCase()}${message.slice(1)}`.replace(/\.?$/, '.');
};

/** 'kg' for `castings[2].kg` under `castings[2]`; null for what lies elsewhere. */
const within = (path: string, at: string): string | null => {
  if (path === at) return '';
  return path.startsWith(`${at}.`) || path.startsWith(`${at}[`) ? path.slice(at.length).replace(/^\./, '') : null;
};

const fieldFault = ({ path, message }: Fault, at: string, words: FieldWords): Fault => {
  const own = within(path, at);
  const field = own ?? path;
  const said = words[field] ?? words[field.replace(/\[\d+\]/g, '[]')];
  return said ? said(message) : { path: field, message: sentence(message) };
};

/**
 * The yard as it would be after an edit, if a yard file may hold it. Otherwise its faults, each with the field of the form
 * it belongs to: what lies under `at` (`castings[2]`, or `yard`) has the name it has there (`kg`, `perPiece[0].quantity`);
 * what lies elsewhere keeps its path. `words` says a fault in the maker's words, or puts it at another field; `[]` in a
 * name stands for any place of a list (`makes[].casting`). What is fixed by the present plan is left out: planning anew
 * drops what can no longer stay and says so.
 *
 * Example: `fitsYardFile({ ...yard, castings: [heavy] }, 'castings[0]')` is refused at `kg`.
 */
export const fitsYardFile = (
  candidate: Record<string, unknown>,
  at: string,
  words: FieldWords = {},
): Outcome<YardFile> => {
  const { keep: _fixed, ...rest } = candidate;
  const read = readYardFile(rest);
  if (read.ok) return { ok: true, value: read.yard };
  return { ok: false, faults: read.faults.map((fault) => fieldFault(fault, at, words)) };
};

/** At one field, in these words whatever the fault. */
export const sayAt =
  (path: string, message: string): FieldWords[string] =>
  () => ({ path, message });
