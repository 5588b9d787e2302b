import { primaryAway } from '../../../db/away.ts';
import { isBusy } from '../../../db/busy.ts';
import { type CannotWrite, cannotWrite } from '../../../db/cannot-write.ts';

/** Another process held the database for longer than anybody waits; nothing was changed, and it may be tried again. */
export const isHeldByOthers = (error: unknown): boolean => isBusy(error);

/** Why nothing can be written just now; nothing was changed, and it may be tried again once it can. Null where it is another fault. */
export const notWritten = (error: unknown): CannotWrite | null => cannotWrite(error);

/** The server of the database does not answer: nothing was changed, or what is not known. Null where it is another fault. */
export const serverAway = (error: unknown): 'away' | 'unknown' | null => {
  const away = primaryAway(error);
  return away && (away.isUnknown ? 'unknown' : 'away');
};

/** Errors that quote what they could not read. */
const QUOTING = /^(SyntaxError|\$?ZodError)$/;

/** What happened, without the values it happened to: those may be a customer's name. */
const messageOf = (error: Error): string => {
  if ('query' in error) return `Failed query: ${String(error.query)}`;
  return QUOTING.test(error.name) ? 'what it says quotes data and is left out' : error.message;
};

/** Where it happened: what follows the message in a stack, as far as it can be told apart from it. */
const placesOf = ({ stack = '', message }: Error): string[] => {
  const from = stack.indexOf(message);
  const places = from < 0 ? '' : stack.slice(from + message.length);
  return places.split('\n').filter((line) => /^\s+at /.test(line));
};

/** An error as the log has it, with what lies behind it: kind, message and places, no value that was read or written. */
export const logLines = (error: unknown): string => {
  if (!(error instanceof Error)) return 'Something was thrown that is no error.';
  const code = 'code' in error && typeof error.code === 'string' ? ` (${error.code})` : '';
  const lines = [`${error.name}${code}: ${messageOf(error)}`, ...placesOf(error)];
  return error.cause === undefined ? lines.join('\n') : `${lines.join('\n')}\nbecause of ${logLines(error.cause)}`;
};
