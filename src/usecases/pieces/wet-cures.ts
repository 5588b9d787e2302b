import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';

/** Pieces out of their moulds that are kept wet until a time. */
export interface WetCureFacts {
  casting: string;
  piece: string;
  count: number;
  /** An instant; of the piece that came out last. */
  until: string;
  /** Of each session until then; 0 where no plan has minutes for it. */
  minutes: number;
}

const HOUR = 60;

type Stripped = Extract<WorkRecord, { kind: 'stripped' }>;

const isGood = (record: WorkRecord): record is Stripped => record.kind === 'stripped' && record.cameOut === 'good';

/** How many pieces of a casting stand in the yard: what went out is nobody's to keep wet. */
const standing = ({ finished }: YardFile, casting: string): number =>
  finished.reduce((sum, lot) => sum + (lot.casting === casting ? lot.count : 0), 0);

/**
 * Pieces whose mix says that they are kept wet for so many hours after the strip, by kind, what ends first first. `hours` are
 * by mix; `records` are what was done, the oldest first.
 */
export const wetCures = (
  yard: YardFile,
  records: readonly WorkRecord[],
  hours: ReadonlyMap<string, number>,
  now: Minute,
): WetCureFacts[] => {
  const { instantText } = calendarOf(yard.yard.timeZone);
  const planned = new Map(yard.mixes.map(({ id, wetCure }) => [id, wetCure?.minutes ?? 0]));
  return yard.castings
    .flatMap(({ id, name, mix }) => {
      const wet = (hours.get(mix) ?? 0) * HOUR;
      const ends = records
        .filter((record) => isGood(record) && record.casting === id)
        .map(({ at }) => minuteOf(at) + wet)
        .filter((end) => end > now)
        .sort((a, b) => a - b);
      const [last, count] = [ends.at(-1), Math.min(ends.length, standing(yard, id))];
      if (last === undefined || count === 0) return [];
      return [{ casting: id, piece: name, count, last, minutes: planned.get(mix) ?? 0 }];
    })
    .sort((a, b) => a.last - b.last)
    .map(({ last, ...facts }) => ({ ...facts, until: instantText(last) }));
};
