import type { WorkRecord } from '../../../shared/work-record.ts';

/** Pieces that came out of moulds, and what became of them: good at once or after mending, still to mend, or scrap then or later. */
export interface Made {
  out: number;
  good: number;
  mend: number;
  scrap: number;
}

/** The same of one casting, or of one mould. */
export interface MadeOf extends Made {
  id: string;
}

/** Why pieces were scrapped, in the words of whoever said so (null where nobody did), and how many. */
export interface ScrapReason {
  reason: string | null;
  count: number;
}

/** All that was made, by casting and by mould, with what was scrapped and why. */
export interface PiecesMade {
  all: Made;
  castings: readonly MadeOf[];
  moulds: readonly MadeOf[];
  reasons: readonly ScrapReason[];
  /** Batches that were thrown away before anything was filled. */
  thrownAway: number;
}

const NOTHING: Made = { out: 0, good: 0, mend: 0, scrap: 0 };

type Came = Extract<WorkRecord, { kind: 'stripped' | 'after mending' }>;

/** A piece that was mended, or scrapped after all, is none to mend any more. */
const counted = (made: Made, { kind, cameOut }: Came): Made => {
  const { out, good, mend, scrap } = made;
  const isFirst = kind === 'stripped';
  return {
    out: out + (isFirst ? 1 : 0),
    good: good + (cameOut === 'good' ? 1 : 0),
    mend: Math.max(0, mend + (isFirst ? (cameOut === 'mend' ? 1 : 0) : -1)),
    scrap: scrap + (cameOut === 'scrap' ? 1 : 0),
  };
};

const by = (came: readonly Came[], of: 'casting' | 'mould'): MadeOf[] => {
  const groups = new Map<string, Made>();
  for (const one of came) groups.set(one[of], counted(groups.get(one[of]) ?? NOTHING, one));
  return [...groups]
    .map(([id, made]) => ({ id, ...made }))
    .sort((a, b) => b.good - a.good || b.out - a.out || (a.id < b.id ? -1 : 1));
};

const reasonsOf = (came: readonly Came[]): ScrapReason[] => {
  const counts = new Map<string | null, number>();
  for (const { cameOut, reason = null } of came)
    if (cameOut === 'scrap') counts.set(reason, (counts.get(reason) ?? 0) + 1);
  return [...counts]
    .map(([reason, count]) => ({ reason, count }))
    .sort((a, b) => b.count - a.count || (a.reason ?? '').localeCompare(b.reason ?? ''));
};

/**
 * What was made by some records, the most first. A piece that was to mend and whose mending is not among them stays one to mend.
 *
 * Example: of a strip that came out to mend, and its mending that was good: 1 out, 1 good, none to mend.
 */
export const piecesMade = (records: readonly WorkRecord[]): PiecesMade => {
  const came = records.filter((one): one is Came => one.kind === 'stripped' || one.kind === 'after mending');
  return {
    all: came.reduce(counted, NOTHING),
    castings: by(came, 'casting'),
    moulds: by(came, 'mould'),
    reasons: reasonsOf(came),
    thrownAway: records.filter(({ kind }) => kind === 'thrown away').length,
  };
};
