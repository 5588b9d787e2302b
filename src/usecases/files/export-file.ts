import { loadArchive } from '../../../db/stores/archive-of.ts';
import { storedPlan } from '../../../db/stores/plan-store.ts';
import { loadYardFile } from '../../../db/stores/yard-store.ts';
import type { Tx } from '../../../db/transaction.ts';
import { type Archive, archive } from '../../../shared/archive.ts';
import type { PlanOfWork } from '../../../shared/late-work.ts';
import { type YardFile, yardFile } from '../../../shared/yard-file.ts';
import { asOf } from '../../engine/book/as-of.ts';
import { beliefsOf } from '../../engine/odds/beliefs.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import { workOfPlan } from '../plan/late-work.ts';
import { workNotRecorded } from '../plan/work-not-recorded.ts';
import { yardRecord } from '../plan/yard-record.ts';
import { fileText } from './file-text.ts';

/** A file to be kept: its name, with the yard's and the day, and what is in it. */
export interface KeptFile {
  name: string;
  text: string;
}

/** "Larch Row Yard" in a file's name: "larch-row-yard". */
const slug = (name: string): string =>
  name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '') || 'yard';

/** "larch-row-yard-2027-04-05.orders.csv" */
export const fileName = (yard: { name: string; timeZone: string }, now: string, ending: string): string =>
  `${slug(yard.name)}-${today(yard.timeZone, now)}.${ending}`;

/** An archive with what is not recorded yet, where the format has it. */
export const withUnanswered = (file: Archive, unanswered: PlanOfWork | null): Archive =>
  unanswered ? archive.parse({ ...file, unanswered }) : file;

/** What a yard file has of a record: nothing where it is not enough to promise by, for it then says nothing. */
const recordInFile = async (tx: Tx, yard: YardFile): Promise<Pick<YardFile, 'record'>> => {
  const record = await yardRecord(tx, yard);
  return beliefsOf(record).isEnough ? { record } : {};
};

/** The yard as a yard file: everything a plan and a promise depend on. */
export const exportYard = async ({ database, now }: UseCaseContext): Promise<KeptFile> => {
  const whole = await database.read(async (tx) => {
    const yard = asOf(await loadYardFile(tx, now), now);
    return { ...yard, ...(await recordInFile(tx, yard)) };
  });
  // Through the schema, each field stands where the format has it.
  const file = yardFile.parse(whole);
  return { name: fileName(file.yard, now, 'yard.json'), text: fileText(file) };
};

/** The yard with its log and history, and with what is not recorded yet. */
export const exportArchive = async ({ database, now }: UseCaseContext): Promise<KeptFile> => {
  const file = await database.read(async (tx) => {
    const stored = await storedPlan(tx);
    const yard = asOf(await loadYardFile(tx, now), now);
    return withUnanswered(await loadArchive(tx, now), stored && workNotRecorded(yard, workOfPlan(stored)));
  });
  return { name: fileName(file.yard, now, 'archive.json'), text: fileText(file) };
};
