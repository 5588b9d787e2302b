import { type Keep, type KeptPack, type KeptStrip, type PlanFile, spellsOf, withSpells } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { coatsBefore } from '../book/coat-before.ts';
import { sessionToShift, shiftLater } from '../book/shift-later.ts';
import { calendarOf } from '../calendar/calendar.ts';
import { begunIn } from '../decoder/begun.ts';
import { compile } from '../decoder/compile.ts';

/** What is kept with its times moved, and the batches that no longer fit. */
export interface KeptLater {
  keep: Keep;
  left: Keep['batches'];
}

/** What is kept of the session that `shiftLater` moves, less some of its batches and packings. */
const inSession = (keep: Keep, yard: YardFile, out: ReadonlySet<unknown>): Keep => {
  const { start, end } = sessionToShift(yard, calendarOf(yard.yard.timeZone));
  const isIn = (instant: string): boolean => minuteOf(instant) >= start && minuteOf(instant) < end;
  const setUpHere = new Set(keep.pours.flatMap(({ batch, prepStart }) => (isIn(prepStart) ? [batch] : [])));
  const batches = keep.batches.filter((batch) => (isIn(batch.start) || setUpHere.has(batch.id)) && !out.has(batch));
  const ids = new Set(batches.map(({ id }) => id));
  const pours = keep.pours.filter(({ batch }) => ids.has(batch));
  const stays = new Set([...pours, ...begunIn(yard).pours].map(({ id }) => id));
  return {
    ...{ batches, pours },
    strips: keep.strips?.filter(({ pour, stripStart }) => (pour === undefined ? isIn(stripStart) : stays.has(pour))),
    packs: keep.packs?.filter((pack) => isIn(pack.packStart) && !out.has(pack)),
    coats: keep.coats?.filter((coat) => isIn(coat.start)),
  };
};

/** Whom a piece is for that is in its mould now, as the plan has it. */
const orderOf = ({ strips, pours }: PlanFile, { mould, stripStart }: KeptStrip): { order?: string } => {
  const piece = [...strips, ...pours].find((one) => one.mould === mould && one.stripStart === stripStart);
  return piece?.order === undefined ? {} : { order: piece.order };
};

/** What is kept and what is under way as a plan in which nothing else is. */
const asPlan = (keep: Keep, yard: YardFile, plan: PlanFile): PlanFile => {
  const begun = begunIn(yard);
  const strips = [...begun.strips, ...(keep.strips ?? [])];
  const ofPour = new Map(strips.map((strip) => [strip.pour, strip]));
  const packs: Pick<KeptPack, 'order' | 'packStart' | 'packEnd'>[] = [...begun.packs, ...(keep.packs ?? [])];
  return {
    ...plan,
    batches: [...begun.batches, ...keep.batches],
    pours: [...begun.pours, ...keep.pours].map((pour) => {
      const { stripStart, stripEnd } = ofPour.get(pour.id) ?? pour;
      return { ...pour, stripStart, stripEnd };
    }),
    coats: [...begun.coats, ...(keep.coats ?? [])],
    strips: strips
      .filter(({ pour }) => pour === undefined)
      .map((strip) => {
        const { mould, stripStart, stripEnd } = strip;
        return { mould, stripStart, stripEnd, pieceReadyAt: stripEnd, ...orderOf(plan, strip) };
      }),
    orders: plan.orders.flatMap((order) => {
      const spells = packs
        .filter((pack) => pack.order === order.id)
        .map(({ packStart, packEnd }) => ({ packStart, packEnd }))
        .sort((a, b) => minuteOf(a.packStart) - minuteOf(b.packStart));
      return spells.length === 0 ? [] : [{ ...withSpells(order, spells), completesAt: spells.at(-1)!.packEnd }];
    }),
  };
};

/** What is kept, at the times of a plan that was made of it with `asPlan`. */
const atTimesOf = (keep: Keep, was: PlanFile, is: PlanFile): Keep => {
  const byId = <T extends { id: string }>(list: readonly T[]) => new Map(list.map((one) => [one.id, one]));
  const [batches, pours] = [byId(is.batches), byId(is.pours)];
  const strips = new Map(was.strips.map(({ mould, stripStart }, i) => [`${mould} ${stripStart}`, is.strips[i]!]));
  const coats = new Map(was.coats.map(({ mould, start }, i) => [`${mould} ${start}`, is.coats[i]!]));
  const packs = new Map(
    was.orders.flatMap((order, o) =>
      spellsOf(order).map(({ packStart }, place) => [`${order.id} ${packStart}`, spellsOf(is.orders[o]!)[place]!]),
    ),
  );
  return {
    ...keep,
    batches: keep.batches.map((batch) => batches.get(batch.id) ?? batch),
    pours: keep.pours.map((pour) => pours.get(pour.id) ?? pour),
    strips: keep.strips?.map((strip) => {
      const { mould, pour, stripStart } = strip;
      const moved = pour === undefined ? strips.get(`${mould} ${stripStart}`) : pours.get(pour);
      return moved ? { ...strip, stripStart: moved.stripStart, stripEnd: moved.stripEnd } : strip;
    }),
    packs: keep.packs?.map((pack) => ({ ...pack, ...packs.get(`${pack.order} ${pack.packStart}`) })),
    coats: keep.coats?.map((coat) => coats.get(`${coat.mould} ${coat.start}`) ?? coat),
  };
};

type Task = Keep['batches'][number] | KeptPack;

/** What may be left out: nothing, one task, or several, of each the last to begin first. */
const outsOf = ({ batches, packs = [] }: Keep): ReadonlySet<Task>[] => {
  const begins = (one: Task) => minuteOf('start' in one ? one.start : one.packStart);
  const tasks = [...batches, ...packs].sort((a, b) => begins(b) - begins(a));
  const several = tasks.slice(1).map((_, i) => tasks.slice(0, i + 2));
  return [[], ...tasks.map((task) => [task]), ...several].map((out) => new Set(out));
};

/** What is kept less some batches and packings, with what comes of those batches. */
const without = (keep: Keep, out: ReadonlySet<unknown>): KeptLater => {
  const [left, batches] = [
    keep.batches.filter((batch) => out.has(batch)),
    keep.batches.filter((batch) => !out.has(batch)),
  ];
  const gone = new Set(left.flatMap(({ pours }) => pours));
  const pours = keep.pours.filter(({ id }) => !gone.has(id));
  const strips = keep.strips?.filter(({ pour }) => pour === undefined || !gone.has(pour));
  const packs = keep.packs?.filter((pack) => !out.has(pack));
  const coats =
    keep.coats &&
    coatsBefore(
      keep.coats,
      keep.pours,
      keep.pours.filter(({ id }) => gone.has(id)),
    );
  return {
    keep: { ...keep, batches, pours, strips, packs, coats: keep.coats?.filter((coat) => !coats?.includes(coat)) },
    left,
  };
};

/**
 * What is kept of the session under way, or of the next one within a day, moved later as far as work that ended later than
 * planned asks for (`shiftLater`), so that it need not be dropped and planned anew. What no longer fits the session
 * or its day then is left out, the last to begin first.
 *
 * Example: a mould whose set-up was to end at 9:05 is dry at 9:00 only and set up by 9:12. The batch of 9:05 begins at 9:12,
 * and what comes of it 7 minutes later.
 */
export const keepLater = (yard: YardFile, keep: Keep, plan: PlanFile): KeptLater => {
  const asItWas = { keep, left: [] };
  const here = inSession(keep, yard, new Set());
  for (const out of outsOf(here)) {
    const was = asPlan(inSession(here, yard, out), yard, plan);
    const is = shiftLater(was, yard);
    // Where the rules allow all batches as they are, nothing has to move for them.
    if (out.size === 0 && ((is && !batchesMove(was, is)) || batchesStay(yard, here))) return asItWas;
    const rest = without(keep, out);
    if (is) return { ...rest, keep: atTimesOf(rest.keep, was, is) };
  }
  return asItWas;
};

/** Whether batches, or what makes their moulds ready, begin at other times. */
const batchesMove = (was: PlanFile, is: PlanFile): boolean =>
  was.batches.some(({ start }, i) => start !== is.batches[i]!.start) ||
  was.pours.some(({ prepStart }, i) => prepStart !== is.pours[i]!.prepStart) ||
  was.coats.some(({ start }, i) => start !== is.coats[i]!.start);

const batchesStay = (yard: YardFile, keep: Keep): boolean =>
  compile({ ...yard, keep }).fixed.dropped.every(({ batch }) => batch === undefined);
