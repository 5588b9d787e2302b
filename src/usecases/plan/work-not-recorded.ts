import type { PlanOfWork } from '../../../shared/late-work.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { type LateWork, lateWork, workUnderWay } from './late-work.ts';

/** Without what begins at this very minute: a plan made now has that as well, and nobody has begun it. */
const begunBefore = ({ mixes, strips, packs, preps, coats }: LateWork, now: Minute): LateWork => {
  const isBefore = (start: string): boolean => minuteOf(start) < now;
  return {
    mixes: mixes.filter(({ batch }) => isBefore(batch.start)),
    strips: strips.filter(({ stripStart }) => isBefore(stripStart)),
    packs: packs.filter(({ packStart }) => isBefore(packStart)),
    preps: preps.filter(({ prepStart }) => isBefore(prepStart)),
    coats: coats.filter(({ start }) => isBefore(start)),
  };
};

const joined = (late: LateWork | null, underWay: LateWork | null): LateWork | null => {
  if (!late || !underWay) return late ?? underWay;
  return {
    mixes: [...late.mixes, ...underWay.mixes],
    strips: [...late.strips, ...underWay.strips],
    packs: [...late.packs, ...underWay.packs],
    preps: [...late.preps, ...underWay.preps],
    coats: [...late.coats, ...underWay.coats],
  };
};

/**
 * Of the work of a plan what has begun by a yard's now and is not recorded, as it was planned; null where there is none.
 * Whatever plan comes after it, the same is asked about.
 */
export const workNotRecorded = (yard: YardFile, work: PlanOfWork): PlanOfWork | null => {
  const found = joined(lateWork(yard, work), workUnderWay(yard, work));
  const begun = found && begunBefore(found, minuteOf(yard.yard.now));
  if (!begun || Object.values(begun).every(({ length }) => length === 0)) return null;
  const batches = new Set(begun.mixes.map(({ batch }) => batch));
  const pours = new Set([...begun.mixes.flatMap((mix) => mix.pours), ...begun.preps]);
  const packed = new Set(begun.packs.map(({ id }) => id));
  const cutFor = new Set([...[...batches].map(({ id }) => id), ...packed]);
  const sticks = (work.sticks ?? []).filter(({ cuts }) => cuts.some((cut) => cutFor.has(cut.for)));
  const sheets = (work.sheets ?? []).filter((sheet) => cutFor.has(sheet.for));
  return {
    batches: work.batches.filter((batch) => batches.has(batch)),
    pours: work.pours.filter((pour) => pours.has(pour)),
    coats: begun.coats,
    strips: work.strips.filter((strip) => begun.strips.includes(strip)),
    orders: work.orders.filter(({ id }) => packed.has(id)),
    ...(sticks.length > 0 ? { sticks } : {}),
    ...(sheets.length > 0 ? { sheets } : {}),
  };
};
