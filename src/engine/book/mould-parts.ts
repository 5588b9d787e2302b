import type { Mould } from '../../../shared/mould.ts';
import type { MouldPart, PartCondition } from '../../../shared/mould-part.ts';
import { thereIsNo } from '../../../shared/said-back.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { type Booked, booked, type Entry, refused } from './entry.ts';
import { type MarkDetails, mark } from './mark.ts';
import { isOut, isRetired } from './mould-state.ts';
import { lostRecords } from './work-records.ts';

/** What the maker says of one part; `note` is what is wrong with it, '' for nothing more. */
export interface PartSaid {
  part: string;
  condition: PartCondition;
  note: string;
}

/** What is said of the mould with it; `damageNote` is what was said of it as a whole before, '' for nothing. */
export interface PartDetails extends Pick<MarkDetails, 'repairedOn' | 'cameOut'> {
  damageNote: string;
}

/** What is said of a part comes to this: entries of the book, the parts as they are said to be now, and the record. */
export type PartBooked =
  | { ok: true; entries: Entry[]; parts: MouldPart[]; records: WorkRecord[] }
  | Extract<Booked, { ok: false }>;

const withPart = (parts: readonly MouldPart[], said: MouldPart): MouldPart[] =>
  parts.some(({ part }) => part === said.part)
    ? parts.map((one) => (one.part === said.part ? said : one))
    : [...parts, said];

const blocks = ({ condition, tookOut }: MouldPart): boolean => condition === 'broken' && tookOut === true;

/** What becomes of the mould: a part takes it out of use, the last one that did so frees it, or it stays as it is. */
type Becomes = 'damaged' | 'mended' | null;

const becomes = (mould: Mould, parts: readonly MouldPart[], { part, condition }: PartSaid): Becomes => {
  if (condition === 'broken') return isOut(mould) ? null : 'damaged';
  const blocking = parts.filter(blocks);
  return blocking.length === 1 && blocking[0]!.part === part ? 'mended' : null;
};

/**
 * What the maker says of a part of a mould's set, whose parts are `parts` until then. Broken, it takes the mould out of use
 * as damage does, until all parts that did so are mended; a mould that was damaged before stays so. Worn is only a note.
 * Refused as `mark` refuses damage, and at `part` for a mould that is scrapped or not there.
 */
export const sayOfPart = (
  yard: YardFile,
  id: string,
  parts: readonly MouldPart[],
  said: PartSaid,
  { damageNote, repairedOn, cameOut }: PartDetails,
): PartBooked => {
  const mould = yard.moulds.find((one) => one.id === id);
  if (!mould) return refused('part', thereIsNo('mould', id));
  if (isRetired(mould)) return refused('part', `${id} is scrapped. Mark it mended first.`);
  const { part, condition, note } = said;
  const isBroken = condition === 'broken';
  const turns = becomes(mould, parts, said);
  const details = { note: damageNote, repairedOn, cameOut };
  const as = isBroken ? 'damaged' : turns;
  const marked = as === null ? booked([]) : mark(yard, id, as, details);
  if (!marked.ok) return marked;
  // Out of use for another part already, it is free again only once this one is mended as well.
  const tookOut = isBroken && (turns === 'damaged' || parts.some(blocks));
  const lost = isBroken ? lostRecords(id, { note, cameOut }, yard) : [];
  const why = note === '' ? {} : { reason: note };
  return {
    ok: true,
    entries: marked.entries,
    parts: withPart(parts, {
      ...{ part, condition },
      ...(note === '' ? {} : { note }),
      ...(tookOut ? { tookOut } : {}),
    }),
    records: [
      ...lost,
      {
        ...{ kind: 'part', at: yard.yard.now, mould: id, part, condition, ...why },
        ...(turns === null ? {} : { mark: turns }),
      },
    ],
  };
};
