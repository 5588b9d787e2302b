import type { Tx } from '../../../db/open.ts';
import { writeEntries } from '../../../db/stores/book-store.ts';
import { addWorkRecords } from '../../../db/stores/work-record-store.ts';
import type { Fault } from '../../../shared/fault.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { apply } from '../../engine/book/apply.ts';
import { countPieces } from '../../engine/book/count-pieces.ts';
import { type MouldSeen, marksSeen, seeMould } from '../../engine/book/see-mould.ts';
import { recordsOfMark } from '../../engine/book/work-records.ts';
import { countOne } from '../buying/count-one.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { finishedTyped } from '../pieces/count-finished.ts';
import { type Changed, changing } from '../plan/changing.ts';
import type { WalkTyped } from '../typed/walk-form.ts';

/** What a walk round found otherwise than the book had it, each in words. */
interface Walked {
  differences: readonly string[];
}

type Seen = Outcome<string | null>;

/** How a mould stands by the book, in a word that a form sends along. */
export const mouldBook = ({ moulds, inMould }: YardFile, id: string): string => {
  const condition = moulds.find((one) => one.id === id)?.condition ?? 'gone';
  return inMould.some(({ mould }) => mould === id) ? `${condition}, full` : condition;
};

const SEEN_WORDS: Readonly<Record<MouldSeen, string>> = {
  ...{ clean: 'clean', dirty: 'to clean', damaged: 'damaged', scrapped: 'scrapped' },
};

const again = (now: string): string =>
  `The book was changed meanwhile: ${now}. What you typed still stands here: send it again to have it so.`;

const seeOne = async (tx: Tx, yard: YardFile, { id, seen, was }: WalkTyped['moulds'][number]): Promise<Seen> => {
  const booked = seeMould(yard, id, seen);
  if (!booked.ok)
    return booked.faults[0]?.path === 'cameOut'
      ? refuse('mark', `${id} has a piece in it. Say on the page of the mould whether that is good.`)
      : booked;
  if (booked.entries.length === 0) return done(null);
  const now = mouldBook(yard, id);
  if (was !== now) return refuse('mark', again(`${id} is ${now} now`));
  await writeEntries(tx, booked.entries);
  const details = { note: '', repairedOn: null, cameOut: null };
  await addWorkRecords(
    tx,
    marksSeen(yard, id, seen).flatMap((one) => recordsOfMark(id, one, details, yard)),
  );
  return done(`${id} ${SEEN_WORDS[seen]}`);
};

/** Places of finished pieces move as they are counted, so each kind is counted in the yard as the last one left it. */
const countKind = async (
  tx: Tx,
  yard: YardFile,
  { id, counted: text, was }: WalkTyped['pieces'][number],
): Promise<Outcome<{ yard: YardFile; words: string | null }>> => {
  const kind = yard.castings.find((one) => one.id === id);
  const read = finishedTyped({ casting: id, counted: text, was });
  if (!read.ok) return read;
  if (!kind) return refuse('counted', 'That piece is cast here no more.');
  const before = yard.finished.reduce((sum, lot) => sum + (lot.casting === id ? lot.count : 0), 0);
  const { counted } = read.value;
  if (counted === before) return done({ yard, words: null });
  if (read.value.was !== before) return refuse('counted', again(`it has ${before} now`));
  const entries = countPieces(yard, id, counted);
  await writeEntries(tx, entries);
  return done({ yard: apply(yard, entries), words: `${kind.name} ${counted}, not ${before}` });
};

const countStock = async (
  tx: Tx,
  { id, counted, offcuts, bags, was }: WalkTyped['stock'][number],
  at: string,
): Promise<Seen> => {
  const one = await countOne(tx, id, { counted, offcuts, bags, bookWas: was }, at);
  if (!one.ok) return one;
  return done(one.value && `${one.value.name} ${one.value.now}, not ${one.value.before}`);
};

/** The field of a thing that a fault is at. */
const fieldOf = (field: string, path: string): string => {
  if (path === 'offcuts') return `${field}Offcuts`;
  return path.startsWith('Bags') ? `${field}${path}` : field;
};

/** What was seen, thing after thing: differences in words, and each fault at the field of its thing. */
class Round {
  readonly differences: string[] = [];
  readonly faults: Fault[] = [];

  add(field: string, seen: Seen): void {
    if (seen.ok) this.differences.push(...(seen.value === null ? [] : [seen.value]));
    else this.faults.push(...seen.faults.map(({ path, message }) => ({ path: fieldOf(field, path), message })));
  }
}

const walked = async (tx: Tx, yard: YardFile, typed: WalkTyped, at: string): Promise<Outcome<Walked>> => {
  const round = new Round();
  let standing = yard;
  for (const one of typed.moulds) round.add(one.field, await seeOne(tx, yard, one));
  for (const one of typed.pieces) {
    const counted = await countKind(tx, standing, one);
    round.add(one.field, counted.ok ? done(counted.value.words) : counted);
    if (counted.ok) standing = counted.value.yard;
  }
  for (const one of typed.stock) round.add(one.field, await countStock(tx, one, at));
  if (round.faults.length > 0) return { ok: false, faults: round.faults };
  const looked = typed.moulds.length + typed.pieces.length + typed.stock.length;
  if (looked === 0) return refuse('walk', 'Nothing was filled in yet.');
  if (round.differences.length === 0)
    return refuse('walk', 'All that you looked at is as the book has it. Nothing was changed.');
  return done({ differences: round.differences });
};

/**
 * The maker has walked round and looked: what is otherwise than the book has it is set right, all of it as one change. What
 * nobody looked at stays. Refused whole, each reason at its field, where something cannot be read or was changed meanwhile.
 */
export const walkRound = (context: UseCaseContext, typed: WalkTyped): Promise<Outcome<Changed<Walked>>> =>
  changing(
    context,
    { kind: 'counted', words: ({ differences }) => `Counted on a walk round: ${differences.join('; ')}` },
    (tx, yard) => walked(tx, yard, typed, context.now),
  );
