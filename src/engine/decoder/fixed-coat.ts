import type { DroppedTask, Keep, PlanCoat, PlanPour } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import { coatBefore, coatName, coatsBefore } from '../book/coat-before.ts';
import { coatMinutes } from '../book/mould-state.ts';
import type { FixedBatch, FixedCoat } from './fixed-batch.ts';
import { type FixedGround, fits, settleCoat, take } from './fixed-ground.ts';
import { NEVER, NONE, PREP } from './problem.ts';

/** A fixed coat as the yard file has it, in the mould of an index. */
export const fixedCoat = ({ start, end }: PlanCoat, mould: number): FixedCoat => ({
  mould,
  start: minuteOf(start),
  minutes: minuteOf(end) - minuteOf(start),
});

/** The fixed coat that a mould gets for a fixed pour; null where it gets none. */
export const coatOfPour = ({ coats = [], pours }: Keep, pour: PlanPour, mould: number): FixedCoat | null => {
  const coat = coatBefore(coats, pours, pour);
  return coat ? fixedCoat(coat, mould) : null;
};

/** What speaks against a coat in a mould that is empty by then, and that is set up at a minute (`by`); or null. */
export const coatFault = (ground: FixedGround, { mould: k, start, minutes }: FixedCoat, by = NEVER): string | null => {
  const { problem } = ground;
  const [mould, of] = [ground.moulds[k]!, problem.moulds[k]!];
  const name = problem.yard.moulds[k]!.id;
  const holds = mould.held !== NONE;
  const setFor = problem.castings[holds ? mould.held : mould.setFor]!;
  if (of.oilEveryTurns >= NEVER) return `mould ${name} takes no sealing coat any more`;
  if (minutes !== coatMinutes(of.oilMinutes, setFor, mould.dirty || holds))
    return `the sealing coat of mould ${name} takes another time now`;
  if (start + minutes + of.oilDryMinutes > by) return `the sealing coat of mould ${name} would not be dry by then`;
  return fits(ground, PREP, start, minutes, 1) ? null : `nobody is free to coat mould ${name} then`;
};

const lonelyFault = (ground: FixedGround, coat: FixedCoat): string | null => {
  const mould = ground.moulds[coat.mould];
  if (!mould || mould.freeAt >= NEVER) return 'the mould is out of use';
  if (coat.start < ground.problem.now) return 'its time has passed';
  if (mould.held !== NONE || mould.freeAt > coat.start) return 'the mould is not free by then';
  return coatFault(ground, coat);
};

/** Of what is kept, coats that no fixed pour which stays comes after. Of a plan that stands those that are fixed are. */
const lonelyOf = (
  { problem }: FixedGround,
  { coats = [], pours }: Keep,
  batches: readonly FixedBatch[],
  stands: { firm: Keep | undefined } | undefined,
): PlanCoat[] => {
  const stays = new Set(batches.map(({ id }) => id));
  const kept = pours.filter(({ batch }) => stays.has(batch));
  if (!stands) {
    const before = coatsBefore(coats, pours, kept);
    return coats.filter((coat) => !before.includes(coat));
  }
  const { moulds } = problem.yard;
  const placed = new Set(
    batches.flatMap((batch) =>
      batch.pours.flatMap(({ coat }) =>
        coat ? [`${moulds[coat.mould]!.id} ${coat.start} ${coat.start + coat.minutes}`] : [],
      ),
    ),
  );
  const firm = new Set(stands.firm?.coats?.map(coatName));
  return coats.filter((coat) => firm.has(coatName(coat)) && !placed.has(coatName(coat)));
};

/** Fixed coats that no fixed pour which stays comes after: they stay for themselves, as far as the rules allow. */
export const keepCoats = (
  ground: FixedGround,
  keep: Keep,
  batches: readonly FixedBatch[],
  stands?: { firm: Keep | undefined },
): { coats: FixedCoat[]; dropped: DroppedTask[] } => {
  const { moulds } = ground.problem.yard;
  const kept: FixedCoat[] = [];
  const dropped: DroppedTask[] = [];
  const lonely = lonelyOf(ground, keep, batches, stands);
  for (const text of lonely.sort((a, b) => minuteOf(a.start) - minuteOf(b.start))) {
    const coat = fixedCoat(
      text,
      moulds.findIndex(({ id }) => id === text.mould),
    );
    const reason = lonelyFault(ground, coat);
    if (reason !== null) {
      dropped.push({ coat: text.mould, at: text.start, reason });
      continue;
    }
    take(ground, coat.start, coat.minutes, 1);
    settleCoat(ground.problem, ground.moulds[coat.mould]!, coat);
    kept.push(coat);
  }
  return { coats: kept, dropped };
};
