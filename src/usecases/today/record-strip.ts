import type { CameOut } from '../../../shared/piece-to-mend.ts';
import { done, type Outcome, type UseCaseContext } from '../core/context.ts';
import { writtenAt } from '../core/written-at.ts';
import type { Changed } from '../plan/changing.ts';
import { recordingWork } from '../plan/recording-work.ts';

export interface StripRecord {
  mould: string;
  cameOut: CameOut;
  /** What is wrong with a piece that is not good, in a few words; empty where nobody said. */
  reason: string;
  /** When, as an instant; just now where it is left out. */
  at?: string | null;
}

const CAME_OUT_WORDS: Readonly<Record<CameOut, string>> = {
  good: '',
  mend: ', the piece is to be mended',
  scrap: ', the piece is scrapped',
};

/** "900 no. 1 stripped, the piece is to be mended: corner broken off" */
const stripWords = ({ mould, cameOut, reason }: StripRecord): string => {
  const why = cameOut === 'good' || reason === '' ? '' : `: ${reason}`;
  return `${mould} stripped${CAME_OUT_WORDS[cameOut]}${why}`;
};

/**
 * A piece is out of its mould, and the mould is dirty. A good piece cures on until it is fit to go out by the plan's
 * temperatures. One to mend counts for nothing until it is mended, one that is scrapped is gone: where an order needs it,
 * another is planned.
 */
export const recordStrip = async (context: UseCaseContext, record: StripRecord): Promise<Outcome<Changed<null>>> => {
  const doneAt = writtenAt(record.at, context.now);
  if (!doneAt.ok) return doneAt;
  const { mould, cameOut, reason } = record;
  const work = { kind: 'stripped' as const, mould, cameOut, reason, doneAt: doneAt.value };
  return recordingWork<null>(context, { kind: 'stripped', words: stripWords(record) }, async () =>
    done({ steps: [{ work: () => done(work) }], value: null }),
  );
};
