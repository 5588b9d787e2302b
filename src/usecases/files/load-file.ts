import type { Tx } from '../../../db/open.ts';
import { applyArchive } from '../../../db/stores/apply-archive.ts';
import { applyYardFile } from '../../../db/stores/apply-yard-file.ts';
import { loadArchive } from '../../../db/stores/archive-of.ts';
import { ARCHIVE_READ_IN, makeRoomInLog } from '../../../db/stores/log-store.ts';
import { replaceYard } from '../../../db/stores/replace-yard.ts';
import { isEmpty, loadYardFile, revision } from '../../../db/stores/yard-store.ts';
import type { Archive } from '../../../shared/archive.ts';
import type { PlanOfWork } from '../../../shared/late-work.ts';
import { readYardFile, type YardFile } from '../../../shared/yard-file.ts';
import { asOf } from '../../engine/book/as-of.ts';
import { done, type Outcome, refuse, today, type UseCaseContext } from '../core/context.ts';
import { type BeforeChange, type Changed, changing, type DoChange, previewing } from '../plan/changing.ts';
import { NO_WORK } from '../plan/late-work.ts';
import type { PromiseMove } from '../plan/promises-moved.ts';
import { reasonShown } from '../plan/reason-shown.ts';
import type { ChangeWords } from '../plan/record-change.ts';
import type { UnkeptDate } from '../plan/save-edit.ts';
import { unkeptDates, watchingDates } from '../plan/unkept-dates.ts';
import { workNotRecorded } from '../plan/work-not-recorded.ts';
import { showMeasures } from '../typed/measures.ts';
import { archiveDifferences, type Difference } from './archive-differences.ts';
import { applyRows, readTable, type TableFile } from './csv-table.ts';
import { withUnanswered } from './export-file.ts';
import { asksFirst, type FileChecks, largeSteps } from './file-checks.ts';
import { readWholeYard, type WholeYard } from './read-json.ts';
import { uploadText } from './upload-bytes.ts';

/** A file that was read as what it is. What it does to a yard shows when it is tried on one. */
export type ReadFile = WholeYard | TableFile;

/** What a file that is read in would do. */
export interface FileEffect {
  kind: ReadFile['kind'];
  differences: Difference[];
  moved: (PromiseMove & { promisedOn: string | null })[];
  /** Dates given in the file that the plan does not keep, of orders whose day did not move. */
  unkept: readonly UnkeptDate[];
  /** Orders of a file with one date for each that come in as promised for it, though it may only have been asked for. */
  takenAsPromised: readonly string[];
  /** Counts what was changed in the yard until it was looked at. */
  revision: number;
  today: string;
  /** What has to be looked at before it is loaded. */
  checks: FileChecks;
}

/** Carries that the yard is another one than the effect was shown for. */
export const YARD_CHANGED = 'revision';
const CHANGED_SINCE = 'The yard has changed since this was worked out. Nothing was loaded yet.';
/** Carries that something has to be looked at first. */
export const NOT_CHECKED = 'checked';
const CHECK_FIRST = 'Say that you have checked what is asked here. Nothing was loaded yet.';
const NOTHING_NEW = 'The file says what the yard says already. There is nothing to load.';

/** Tells a JSON file from a CSV by its first sign. */
export const readUpload = (bytes: Uint8Array, now: string): Outcome<ReadFile> => {
  const read = uploadText(bytes);
  if (!read.ok) return read;
  const { text, isGuessed } = read.value;
  if (!/^\s*[{[]/.test(text)) return readTable(text, isGuessed);
  return isGuessed ? refuse('file', 'The file is not written in UTF-8, as JSON is.') : readWholeYard(text, now);
};

const checksOf = (file: ReadFile, steps: FileChecks['steps']): FileChecks => ({
  guessed: 'guessed' in file ? file.guessed : [],
  steps,
});

const WORDS: Readonly<Record<ReadFile['kind'], ChangeWords<unknown>>> = {
  yard: { kind: 'yard file read in', words: 'Yard file loaded' },
  archive: { kind: ARCHIVE_READ_IN, words: 'Archive loaded' },
  orders: { kind: 'orders read in', words: 'Orders loaded from a file' },
  moulds: { kind: 'moulds read in', words: 'Moulds loaded from a file' },
  stock: { kind: 'stock read in', words: 'Stock loaded from a file' },
};

const apply = async (tx: Tx, file: ReadFile, change: number, now: string): Promise<Outcome<null>> => {
  if (file.kind === 'archive') await applyArchive(tx, change, file.file);
  else if (file.kind === 'yard') await applyYardFile(tx, file.file, file);
  else return applyRows(tx, file, now);
  return done(null);
};

interface Applied {
  differences: Difference[];
  steps: FileChecks['steps'];
  takenAsPromised: string[];
  revision: number;
}

/** Orders that are promised now and were not for that day, by a file that does not say which of its dates were. */
const newlyPromised = (file: ReadFile, before: Archive, after: Archive): string[] => {
  if (file.kind !== 'yard' || !file.oneDate) return [];
  const was = new Map(before.orders.map(({ id, promisedOn }) => [id, promisedOn]));
  return after.orders
    .filter(({ id, status, promisedOn }) => status === 'open' && promisedOn !== undefined && was.get(id) !== promisedOn)
    .map(({ id }) => id);
};

/** Reads the file in and says what that changed; refused where the yard would be one that no yard file may hold. */
const reading =
  (file: ReadFile, now: string, expected: number | null, isChecked = true): DoChange<Applied> =>
  async (tx, yard, change, _plan, work) => {
    const seen = await revision(tx);
    if (expected !== null && seen !== expected) return refuse(YARD_CHANGED, CHANGED_SINCE);
    const before = withUnanswered(await loadArchive(tx, now), workNotRecorded(yard, work));
    const applied = await apply(tx, file, change, now);
    if (!applied.ok) return applied;
    const fits = readYardFile(asOf(await loadYardFile(tx, now), now));
    if (!fits.ok) return fits;
    const unanswered = file.kind === 'archive' ? (file.file.unanswered ?? null) : (before.unanswered ?? null);
    const after = withUnanswered(await loadArchive(tx, now), unanswered);
    const differences = archiveDifferences(before, after);
    if (differences.length === 0) return refuse('same', NOTHING_NEW);
    const steps = 'csv' in file ? largeSteps(before, after) : [];
    if (!isChecked && asksFirst(checksOf(file, steps))) return refuse(NOT_CHECKED, CHECK_FIRST);
    return done({ differences, steps, takenAsPromised: newlyPromised(file, before, after), revision: seen });
  };

/** A yard with nothing in it yet, for a whole one to be read into. */
const bareYard = ({ yard }: Pick<YardFile, 'yard'>): YardFile => ({
  format: 'mould-rota/yard',
  version: 2,
  yard,
  ...{ work: [], closed: [], extra: [], temperatures: [], materials: [], incoming: [], mixes: [], castings: [] },
  ...{ moulds: [], kits: [], finished: [], inMould: [], orders: [] },
});

/**
 * Room for the log of an archive; and where there is no yard at all, one to read into. What was not recorded of the yard
 * before is no work of the one in an archive, which brings its own.
 */
const mannerOf = (file: ReadFile): { first?: BeforeChange; workLeft?: () => PlanOfWork } => {
  if (file.kind !== 'yard' && file.kind !== 'archive') return {};
  return {
    ...(file.kind === 'archive' ? { workLeft: () => file.file.unanswered ?? NO_WORK } : {}),
    first: async (tx) => {
      if (await isEmpty(tx)) await replaceYard(tx, bareYard({ yard: file.file.yard }));
      if (file.kind === 'archive') await makeRoomInLog(tx, file.file.log.changes.length);
    },
  };
};

/** What reading a file in would change, and whose days would move, without doing it. */
export const tryFile = async (context: UseCaseContext, file: ReadFile): Promise<Outcome<FileEffect>> => {
  const { now } = context;
  const watched = watchingDates(reading(file, now, null));
  const tried = await previewing(context, WORDS[file.kind], watched.work, mannerOf(file));
  if (!tried.ok) return tried;
  const { value, moved, yard } = tried.value;
  const { steps, ...found } = value;
  const promised = watched.before().promised;
  const { system } = await showMeasures(context);
  // What only moved is among the days of orders that move.
  const isShown = new Set(moved.map(({ order }) => order));
  const unkept = unkeptDates(tried.value, watched).filter(({ order }) => !isShown.has(order));
  return done({
    kind: file.kind,
    ...found,
    checks: checksOf(file, steps),
    moved: moved.map((move) => ({ ...move, promisedOn: promised.get(move.order) ?? null })),
    unkept: unkept.map((one) => ({ ...one, reason: reasonShown(one.reason, yard.materials, system) })),
    today: today(yard.yard.timeZone, now),
  });
};

/**
 * Reads a file in, all of it or nothing, as one change that can be undone. With `expected`, only while the yard is the one
 * that its effect was shown for; where it is not `isChecked`, only what nobody has to look at first.
 */
export const loadFile = (
  context: UseCaseContext,
  file: ReadFile,
  expected: number | null = null,
  isChecked = true,
): Promise<Outcome<Changed<Applied>>> =>
  changing(context, WORDS[file.kind], reading(file, context.now, expected, isChecked), mannerOf(file));
