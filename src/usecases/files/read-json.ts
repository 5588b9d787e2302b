import { type Archive, readArchive } from '../../../shared/archive.ts';
import type { Fault } from '../../../shared/fault.ts';
import { minuteOf } from '../../../shared/time.ts';
import { readYardFile, type YardFile } from '../../../shared/yard-file.ts';
import { type Outcome, refuse } from '../core/context.ts';

/** A file of the whole yard. */
export type WholeYard =
  /** `oneDate`: it is of version 1, which had one date for each order, promised or only asked for. */
  { kind: 'yard'; file: YardFile; oneDate: boolean } | { kind: 'archive'; file: Archive };

/** Nothing in either format lies deeper than this. */
const DEEPEST = 20;

/** An entry of either has 50 letters or more, and a file that is taken is no longer than 10 MB. */
const MOST_ENTRIES = 200_000;

const TOO_DEEP = 'The file is nested deeper than any yard file or archive. Choose another.';
const TOO_MANY = 'The file has more entries than any yard file or archive of its size. Choose another.';

/** What of a JSON text no yard file or archive has, found before anything is made of it: each of its faults takes memory. */
const unlikeAny = (text: string): string | null => {
  let [depth, entries] = [0, 0];
  let inString = false;
  for (let at = 0; at < text.length; at++) {
    const sign = text[at];
    if (inString) {
      if (sign === '\\') at += 1;
      else if (sign === '"') inString = false;
    } else if (sign === '"') inString = true;
    else if (sign === '{' || sign === '[') {
      depth += 1;
      if (depth > DEEPEST) return TOO_DEEP;
      if (sign === '{') entries += 1;
      if (entries > MOST_ENTRIES) return TOO_MANY;
    } else if (sign === '}' || sign === ']') depth -= 1;
  }
  return null;
};

const BROKEN_OFF = 'The file breaks off before its end: part of it is missing. Get it once more, whole.';

const parsed = (text: string): Outcome<unknown> => {
  try {
    return { ok: true, value: JSON.parse(text) };
  } catch (error) {
    const reason = (error as Error).message.replaceAll(/\s+/g, ' ');
    const at = Number(/at position (\d+)/.exec(reason)?.[1] ?? -1);
    if (at >= text.trimEnd().length || /end of JSON|Unterminated/i.test(reason)) return refuse('file', BROKEN_OFF);
    return refuse('file', `The file is no JSON: ${reason}`);
  }
};

const asKind = (input: unknown): Outcome<WholeYard> => {
  const { format, version } = Object(input) as { format?: unknown; version?: unknown };
  if (format === 'mould-rota/archive') {
    const read = readArchive(input);
    return read.ok ? { ok: true, value: { kind: 'archive', file: read.archive } } : read;
  }
  if (format !== 'mould-rota/yard')
    return refuse('format', 'This is neither a yard file nor an archive: its format says so of neither.');
  const read = readYardFile(input);
  return read.ok ? { ok: true, value: { kind: 'yard', file: read.yard, oneDate: version === 1 } } : read;
};

/** The clock is the machine's: what a file says was filled has to have been filled by now. */
const fromLater = ({ file }: WholeYard, now: string): Fault[] =>
  file.inMould.flatMap(({ filledAt }, index): Fault[] =>
    minuteOf(filledAt) > minuteOf(now)
      ? [{ path: `inMould[${index}].filledAt`, message: 'is after now, by the clock of this machine' }]
      : [],
  );

/** Reads a yard file or an archive: all its faults at once, each with its JSON path. */
export const readWholeYard = (text: string, now: string): Outcome<WholeYard> => {
  const unlike = unlikeAny(text);
  if (unlike !== null) return refuse('file', unlike);
  const json = parsed(text);
  if (!json.ok) return json;
  const read = asKind(json.value);
  if (!read.ok) return read;
  const late = fromLater(read.value, now);
  return late.length > 0 ? { ok: false, faults: late } : read;
};
