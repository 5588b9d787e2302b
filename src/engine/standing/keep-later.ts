import { type Keep, type KeptPack, type KeptStrip, type PlanFile, spellsOf, withSpells } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { sessionToShift, shiftLater } from '../book/shift-later.ts';
import { type Calendar, calendarOf } from '../calendar/calendar.ts';
import { begunIn } from '../decoder/begun.ts';
import { compile } from '../decoder/compile.ts';
import { type KeptLess, type LeftOut, leaveOut, lessOut } from './leave-out.ts';

/** Pours with the strips that are left out of their session as its end allows: the piece stays in its mould. */
const stayingIn = (pours: Keep['pours'], strips: readonly KeptStrip[], end: Minute, { instantText }: Calendar) =>
  pours.map((pour) => {
    const strip = strips.find((one) => one.pour === pour.id);
    if (!strip) return pour;
    const stripEnd = instantText(end + minuteOf(strip.stripEnd) - minuteOf(strip.stripStart));
    return { ...pour, stripStart: instantText(end), stripEnd, pieceReadyAt: stripEnd };
  });

/** What is kept of the session that `shiftLater` moves, less some of it. */
const inSession = (keep: Keep, yard: YardFile, out: LeftOut): Keep => {
  const calendar = calendarOf(yard.yard.timeZone);
  const { start, end } = sessionToShift(yard, calendar);
  const isIn = (instant: string): boolean => minuteOf(instant) >= start && minuteOf(instant) < end;
  const setUpHere = new Set(keep.pours.flatMap(({ batch, prepStart }) => (isIn(prepStart) ? [batch] : [])));
  const batches = keep.batches.filter((batch) => (isIn(batch.start) || setUpHere.has(batch.id)) && !out.has(batch));
  const ids = new Set(batches.map(({ id }) => id));
  const pours = keep.pours.filter(({ batch }) => ids.has(batch));
  const stays = new Set([...pours, ...begunIn(yard).pours].map(({ id }) => id));
  return {
    batches,
    pours: stayingIn(pours, keep.strips?.filter((strip) => out.has(strip)) ?? [], end, calendar),
    strips: keep.strips?.filter(
      (strip) => !out.has(strip) && (strip.pour === undefined ? isIn(strip.stripStart) : stays.has(strip.pour)),
    ),
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

/**
 * What is kept of the session under way, or of the next one within a day, moved later as far as work that ended later than
 * planned asks for (`shiftLater`), so that it need not be dropped and planned anew. What no longer fits the session
 * or its day then is left out, the last to begin first: a piece that can stay in its mould rather than a batch or a packing.
 *
 * Example: a mould whose set-up was to end at 9:05 is dry at 9:00 only and set up by 9:12. The batch of 9:05 begins at 9:12,
 * and what comes of it 7 minutes later.
 */
export const keepLater = (yard: YardFile, keep: Keep, plan: PlanFile): KeptLess => {
  const asItWas = { keep, left: [] };
  const here = inSession(keep, yard, new Set());
  for (const out of leaveOut(here)) {
    const was = asPlan(inSession(here, yard, out), yard, plan);
    const is = shiftLater(was, yard);
    // Where the rules allow all batches as they are, nothing has to move for them.
    if (out.size === 0 && ((is && !batchesMove(was, is)) || batchesStay(yard, here))) return asItWas;
    if (!is) continue;
    const rest = lessOut(keep, out);
    return { ...rest, keep: atTimesOf(rest.keep, was, is) };
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
