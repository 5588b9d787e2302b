import type { DroppedTask, Keep, KeptPrep, KeptStrip } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import { isCoatDue, setUpMinutes } from '../book/mould-state.ts';
import { begunIn } from './begun.ts';
import type { FixedBatch, FixedPour, FixedPrep, FixedWork } from './fixed-batch.ts';
import { keepCoats } from './fixed-coat.ts';
import { type FixedGround, fits, lookAhead, settleStrip, take } from './fixed-ground.ts';
import { keepPacks, type PackToKeep } from './fixed-packs.ts';
import { canStripAt, lieOnRack } from './fixed-strip.ts';
import { NEVER, NONE, PREP, type Problem } from './problem.ts';

/** What is fixed beside batches, each with indices and its start. `isLast`: no fixed pour comes after it in its mould. */
export interface FixedTasks {
  strips: { text: KeptStrip; mould: number; casting: number; start: number; isLast: boolean }[];
  packs: PackToKeep[];
  preps: { text: KeptPrep; prep: FixedPrep }[];
  /** When what is in its mould by now is to be stripped, by mould. */
  stripNow: ReadonlyMap<number, number>;
}

/** What kept strips take out: a fixed pour, one under way, or what is in the mould now; NONE where nothing is. */
const castingsTakenOut = (problem: Problem, pours: Keep['pours']) => {
  const { castings, moulds } = problem.yard;
  const castingOf = new Map(pours.map(({ id, casting }) => [id, casting]));
  return ({ mould, pour }: KeptStrip): number => {
    if (pour !== undefined) return castings.findIndex(({ id }) => id === castingOf.get(pour));
    const k = moulds.findIndex(({ id }) => id === mould);
    return problem.inMould.find((piece) => piece.mould === k)?.casting ?? NONE;
  };
};

/** By mould, the last of its fixed pours and of those under way. */
const lastPours = (pours: Keep['pours']): Map<string, Keep['pours'][number]> => {
  const last = new Map<string, Keep['pours'][number]>();
  for (const pour of pours) {
    const known = last.get(pour.mould);
    if (!known || minuteOf(known.fillStart) < minuteOf(pour.fillStart)) last.set(pour.mould, pour);
  }
  return last;
};

/** What a yard file keeps beside batches, the earliest first. */
export const tasksOf = (problem: Problem, keep: Keep): FixedTasks => {
  const { moulds, orders, castings } = problem.yard;
  const begun = begunIn(problem.yard).pours;
  const placeOf = (list: readonly { id: string }[], id: string) => list.findIndex((one) => one.id === id);
  const castingOf = castingsTakenOut(problem, [...begun, ...keep.pours]);
  const last = lastPours([...begun, ...keep.pours]);
  const strips = (keep.strips ?? []).map((text) => ({
    text,
    mould: placeOf(moulds, text.mould),
    casting: castingOf(text),
    start: minuteOf(text.stripStart),
    isLast: last.get(text.mould)?.id === text.pour,
  }));
  const isNow = ({ pour }: KeptStrip) => pour === undefined || begun.some(({ id }) => id === pour);
  return {
    strips: strips.sort((a, b) => a.start - b.start),
    packs: (keep.packs ?? [])
      .map((text) => {
        const [order, start] = [placeOf(orders, text.order), minuteOf(text.packStart)];
        return { text, order, start, minutes: minuteOf(text.packEnd) - start };
      })
      .sort((a, b) => a.start - b.start),
    preps: (keep.preps ?? []).map((text) => {
      const start = minuteOf(text.prepStart);
      const minutes = minuteOf(text.prepEnd) - start;
      return {
        text,
        prep: { mould: placeOf(moulds, text.mould), casting: placeOf(castings, text.casting), start, minutes },
      };
    }),
    stripNow: new Map(strips.flatMap(({ text, mould, start }) => (isNow(text) ? [[mould, start] as const] : []))),
  };
};

/** Counts the people of all of them in (1) or out (-1) of those that fixed tasks still to be looked at will take. */
export const lookAheadToTasks = (ground: FixedGround, { strips, packs, preps }: FixedTasks, sign: 1 | -1): void => {
  const { castings, orders } = ground.problem;
  for (const { casting, start, isLast } of strips) {
    // The others are placed with the pours that come after them.
    if (!isLast) continue;
    const { stripMinutes = 0, stripCrew = 0 } = castings[casting] ?? {};
    lookAhead(ground, start, stripMinutes, sign * stripCrew);
  }
  for (const { order, start, minutes } of packs) {
    const { mostSpells = 0, packMinutes = 0 } = orders[order] ?? {};
    lookAhead(ground, start, mostSpells > 0 ? minutes : packMinutes, sign);
  }
  for (const { prep } of preps) lookAhead(ground, prep.start, prep.minutes, sign);
};

/** What speaks against a strip that no fixed pour comes after; or null. */
const stripFault = (ground: FixedGround, { text, mould: k, start }: FixedTasks['strips'][number]): string | null => {
  const mould = ground.moulds[k]!;
  if (mould.held === NONE || mould.heldPour !== (text.pour ?? null))
    return `mould ${text.mould} holds another piece then`;
  if (start < ground.problem.now) return 'its time has passed';
  if (start < mould.outAt) return 'the piece is not hard by then';
  if (minuteOf(text.stripEnd) - start !== ground.problem.castings[mould.held]!.stripMinutes)
    return 'it takes another time now';
  return canStripAt(ground, mould, start) ? null : 'nobody is free then, or the rack is full';
};

const takeStrip = (ground: FixedGround, k: number, start: number): void => {
  const mould = ground.moulds[k]!;
  const { stripMinutes, stripCrew } = ground.problem.castings[mould.held]!;
  take(ground, start, stripMinutes, stripCrew);
  lieOnRack(ground, mould, start + stripMinutes);
  settleStrip(ground.problem, mould, start);
};

/** Fixed pours by mould, in order of time. */
const poursByMould = (batches: readonly FixedBatch[]): Map<number, FixedPour[]> => {
  const chains = new Map<number, FixedPour[]>();
  for (const pour of batches.flatMap(({ pours }) => pours)) {
    const chain = chains.get(pour.mould);
    if (chain) chain.push(pour);
    else chains.set(pour.mould, [pour]);
  }
  return chains;
};

/** What speaks against a strip, with the fixed pour that comes after it in its mould, if one does; or null. */
const faultBefore = (
  ground: FixedGround,
  strip: FixedTasks['strips'][number],
  next: FixedPour | undefined,
): string | null => {
  if (!next) return stripFault(ground, strip);
  return next.stripFirst === strip.start ? null : 'the pour after it needs it at another time';
};

/** Strips as they were, as far as they still can be: those before a fixed pour were placed with it. */
const keepStrips = (ground: FixedGround, { strips }: FixedTasks, batches: readonly FixedBatch[]) => {
  const chains = poursByMould(batches);
  const kept: FixedWork['strips'] = [];
  const stripNow = new Map<number, number>();
  const dropped: DroppedTask[] = [];
  for (const strip of strips) {
    const { text, mould, start } = strip;
    const chain = chains.get(mould) ?? [];
    const at = text.pour === undefined ? NONE : chain.findIndex(({ id }) => id === text.pour);
    const isThere = mould !== NONE && (text.pour === undefined || at !== NONE);
    const next = chain[at + 1];
    const fault = isThere ? faultBefore(ground, strip, next) : 'what it was to take out is not poured';
    if (fault !== null) {
      dropped.push({ strip: text.mould, at: text.stripStart, reason: fault });
      continue;
    }
    if (at === NONE) stripNow.set(mould, start);
    else chain[at]!.stripAt = start;
    if (next) continue;
    takeStrip(ground, mould, start);
    kept.push({ mould, start });
  }
  return { strips: kept, stripNow, dropped };
};

/** What speaks against a set-up, in a mould that nothing fixed is poured into after it; or null. */
const prepFault = (ground: FixedGround, { mould: k, casting, start, minutes }: FixedPrep): string | null => {
  const { problem } = ground;
  const mould = ground.moulds[k];
  const change = problem.moulds[k]?.change[casting] ?? NONE;
  if (!mould || mould.freeAt >= NEVER || change === NONE) return 'the mould no longer makes it';
  if (start < problem.now) return 'its time has passed';
  if (mould.held !== NONE || mould.freeAt > start) return 'the mould is not free by then';
  const { oilEveryTurns } = problem.moulds[k]!;
  if (mould.prepped || isCoatDue(mould.turnsSinceOil, oilEveryTurns)) return 'the mould needs another set-up now';
  const changing = mould.setFor === casting ? 0 : change;
  if (minutes !== setUpMinutes(problem.castings[casting]!, changing, mould.dirty)) return 'it takes another time now';
  return fits(ground, PREP, start, minutes, 1) ? null : 'nobody is free then';
};

const keepPreps = (ground: FixedGround, { preps }: FixedTasks) => {
  const kept: FixedPrep[] = [];
  const dropped: DroppedTask[] = [];
  for (const { text, prep } of preps) {
    const fault = prepFault(ground, prep);
    if (fault !== null) {
      dropped.push({ prep: text.mould, at: text.prepStart, reason: fault });
      continue;
    }
    take(ground, prep.start, prep.minutes, 1);
    ground.moulds[prep.mould]!.prepped = true;
    kept.push(prep);
  }
  return { preps: kept, dropped };
};

/**
 * Strips, packings, coats and set-ups that are fixed (R13), as far as the rules still allow them beside the fixed batches that
 * stay; the others with the reason why they are dropped.
 */
export const keepTasks = (
  ground: FixedGround,
  keep: Keep,
  tasks: FixedTasks,
  batches: readonly FixedBatch[],
  stands?: { firm: Keep | undefined },
): Omit<FixedWork, 'batches' | 'rack'> => {
  const { strips, stripNow, dropped } = keepStrips(ground, tasks, batches);
  const packed = keepPacks(ground, tasks.packs);
  const coated = keepCoats(ground, keep, batches, stands);
  const prepped = keepPreps(ground, tasks);
  return {
    ...{ strips, stripNow, packs: packed.packs, preps: prepped.preps, coats: coated.coats },
    dropped: [...dropped, ...packed.dropped, ...coated.dropped, ...prepped.dropped],
  };
};
