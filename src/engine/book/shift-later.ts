import {
  type PackSpell,
  type PlanBatch,
  type PlanCoat,
  type PlanFile,
  type PlanOrder,
  type PlanPour,
  type PlanStrip,
  spellsOf,
  withSpells,
} from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { type Calendar, calendarOf } from '../calendar/calendar.ts';
import { type Session, sessionsOf } from '../calendar/sessions.ts';
import { type CuringTimes, curingTimesOf } from './curing-times.ts';
import { Hands, type Task } from './hands.ts';
import { rackHolds } from './rack-holds.ts';

/** A task of the session, which begins no sooner than it was planned to. */
interface Step extends Task {
  /** The soonest it may begin by what comes before it. */
  from(): Minute;
  place(start: Minute): void;
}

/** Times of a plan while the tasks of one session are moved: minutes, by the ids the plan has. */
interface Times {
  prepStart: Map<string, Minute>;
  coatStart: Map<PlanCoat, Minute>;
  /** How much later than planned a batch begins. */
  batchMoved: Map<string, number>;
  stripStart: Map<string, Minute>;
  readyAt: Map<string, Minute>;
  packStart: Map<string, Minute>;
  /** By mould, when it was last emptied or set up: nothing begins in it before. */
  freeAt: Map<string, Minute>;
}

interface Shifting {
  plan: PlanFile;
  yard: YardFile;
  session: Session;
  calendar: Calendar;
  cure: CuringTimes;
  times: Times;
}

/** The key of a piece's strip: its pour, or the mould it is in. */
const stripKey = (strip: PlanStrip | PlanPour): string => ('id' in strip ? `pour ${strip.id}` : `mould ${strip.mould}`);

const isIn = ({ start, end }: Session, instant: string): boolean => {
  const minute = minuteOf(instant);
  return minute >= start && minute < end;
};

const minutesOf = (from: string, to: string): number => minuteOf(to) - minuteOf(from);

const dryMinutes = ({ yard }: Shifting, coat: PlanCoat): number =>
  yard.moulds.find(({ id }) => id === coat.mould)?.oilDryMinutes ?? 0;

const coatStep = (shifting: Shifting, coat: PlanCoat): Step => {
  const { times } = shifting;
  const minutes = minutesOf(coat.start, coat.end);
  return {
    ...{ kind: 'prep', start: minuteOf(coat.start), minutes, people: 1 },
    from: () => times.freeAt.get(coat.mould) ?? 0,
    place: (start) => {
      times.coatStart.set(coat, start);
      times.freeAt.set(coat.mould, start + minutes + dryMinutes(shifting, coat));
    },
  };
};

const prepStep = ({ times }: Shifting, pour: PlanPour): Step => {
  const minutes = minutesOf(pour.prepStart, pour.prepEnd);
  return {
    ...{ kind: 'prep', start: minuteOf(pour.prepStart), minutes, people: 1 },
    from: () => times.freeAt.get(pour.mould) ?? 0,
    place: (start) => {
      times.prepStart.set(pour.id, start);
      times.freeAt.set(pour.mould, start + minutes);
    },
  };
};

const batchStep = ({ yard, times, cure }: Shifting, batch: PlanBatch, pours: readonly PlanPour[]): Step => {
  const mix = yard.mixes.find(({ id }) => id === batch.mix);
  return {
    ...{ kind: 'batch', start: minuteOf(batch.start), minutes: minutesOf(batch.start, batch.end) },
    ...{ people: mix?.crew ?? 1, mixMinutes: minutesOf(batch.start, batch.mixEnd) },
    from: () => Math.max(...pours.map(({ mould }) => times.freeAt.get(mould) ?? 0)),
    place: (start) => {
      times.batchMoved.set(batch.id, start - minuteOf(batch.start));
      for (const pour of pours) {
        const full = start + minutesOf(batch.start, pour.fillEnd);
        times.freeAt.set(pour.mould, cure.mayStripFrom(pour.casting, full));
        times.readyAt.set(stripKey(pour), cure.curedAt(pour.casting, full));
      }
    },
  };
};

const stripStep = ({ yard, times }: Shifting, strip: PlanStrip | PlanPour, casting: string): Step => {
  const minutes = minutesOf(strip.stripStart, strip.stripEnd);
  const people = yard.castings.find(({ id }) => id === casting)?.stripCrew ?? 1;
  return {
    ...{ kind: 'strip', start: minuteOf(strip.stripStart), minutes, people },
    from: () => times.freeAt.get(strip.mould) ?? 0,
    place: (start) => {
      const key = stripKey(strip);
      times.stripStart.set(key, start);
      times.freeAt.set(strip.mould, start + minutes);
      times.readyAt.set(key, Math.max(start + minutes, times.readyAt.get(key) ?? 0));
    },
  };
};

/** The key of a packing, or of a spell of one. */
const packKey = ({ id }: PlanOrder, { packStart }: PackSpell): string => `${id} ${packStart}`;

const packStep = (shifting: Shifting, order: PlanOrder, spell: PackSpell): Step => {
  const { plan, times } = shifting;
  const pieces = [...plan.strips, ...plan.pours].filter((one) => one.order === order.id);
  const before = spellsOf(order).filter(({ packEnd }) => minuteOf(packEnd) <= minuteOf(spell.packStart));
  return {
    ...{
      kind: 'pack',
      start: minuteOf(spell.packStart),
      minutes: minutesOf(spell.packStart, spell.packEnd),
      people: 1,
    },
    from: () =>
      Math.max(
        0,
        ...pieces.map((one) => times.readyAt.get(stripKey(one)) ?? minuteOf(one.pieceReadyAt)),
        ...before.map((one) => minuteOf(shiftedSpell(shifting, order, one).packEnd)),
      ),
    place: (start) => times.packStart.set(packKey(order, spell), start),
  };
};

/** A spell of packing as far as it was moved. */
const shiftedSpell = ({ times, calendar }: Shifting, order: PlanOrder, spell: PackSpell): PackSpell => {
  const start = times.packStart.get(packKey(order, spell));
  if (start === undefined) return spell;
  const end = start + minutesOf(spell.packStart, spell.packEnd);
  return { packStart: calendar.instantText(start), packEnd: calendar.instantText(end) };
};

/** All tasks of the session in order of time; of several at one time, what has to come first. */
const stepsOf = (shifting: Shifting): Step[] => {
  const { plan, yard, session } = shifting;
  const pours = new Map(plan.pours.map((pour) => [pour.id, pour]));
  const inside = (instant: string) => isIn(session, instant);
  const steps = [
    ...plan.strips
      .filter(({ stripStart }) => inside(stripStart))
      .map((strip) =>
        stripStep(shifting, strip, yard.inMould.find(({ mould }) => mould === strip.mould)?.casting ?? ''),
      ),
    ...plan.pours.filter(({ stripStart }) => inside(stripStart)).map((pour) => stripStep(shifting, pour, pour.casting)),
    ...plan.coats.filter(({ start }) => inside(start)).map((coat) => coatStep(shifting, coat)),
    ...plan.pours
      .filter(({ prepStart, prepEnd }) => prepStart !== prepEnd && inside(prepStart))
      .map((pour) => prepStep(shifting, pour)),
    ...plan.batches
      .filter(({ start }) => inside(start))
      .map((batch) =>
        batchStep(
          shifting,
          batch,
          batch.pours.flatMap((id) => pours.get(id) ?? []),
        ),
      ),
    ...plan.orders.flatMap((order) =>
      spellsOf(order)
        .filter(({ packStart }) => inside(packStart))
        .map((spell) => packStep(shifting, order, spell)),
    ),
  ];
  return steps.sort((a, b) => a.start - b.start || a.minutes - b.minutes);
};

/** Places every task of the session no sooner than it was planned; false when one of them no longer fits. */
const placeAll = (shifting: Shifting): boolean => {
  const { yard, session } = shifting;
  const now = minuteOf(yard.yard.now);
  const hands = new Hands(session, yard.yard.mixers);
  for (const step of stepsOf(shifting)) {
    const from = step.from();
    // What was to have begun by now, and can have, has begun (R14): it is left where it was.
    const isBegun = step.start <= now && from <= step.start;
    const start = isBegun ? step.start : hands.earliest({ ...step, start: Math.max(step.start, from) });
    if (start === null) return false;
    hands.take(step, start);
    step.place(start);
  }
  return true;
};

const shiftedPour = (shifting: Shifting, pour: PlanPour): PlanPour | null => {
  const { times, calendar, cure } = shifting;
  const moved = times.batchMoved.get(pour.batch) ?? 0;
  const stripAt = times.stripStart.get(stripKey(pour));
  const prepAt = times.prepStart.get(pour.id);
  if (moved === 0 && stripAt === undefined && prepAt === undefined) return pour;
  const stripStart = stripAt ?? minuteOf(pour.stripStart);
  const stripEnd = stripStart + minutesOf(pour.stripStart, pour.stripEnd);
  const full = minuteOf(pour.fillEnd) + moved;
  if (cure.mayStripFrom(pour.casting, full) > stripStart) return null;
  const asIs = pour.prepStart === pour.prepEnd;
  const prepStart = prepAt ?? minuteOf(pour.prepStart) + (asIs ? moved : 0);
  const text = calendar.instantText;
  return {
    ...pour,
    ...{ prepStart: text(prepStart), prepEnd: text(prepStart + minutesOf(pour.prepStart, pour.prepEnd)) },
    ...{ fillStart: text(minuteOf(pour.fillStart) + moved), fillEnd: text(full) },
    ...{ stripStart: text(stripStart), stripEnd: text(stripEnd) },
    pieceReadyAt: text(Math.max(stripEnd, cure.curedAt(pour.casting, full))),
  };
};

/** Null where it would not be dry when the mould is set up in a later session. */
const shiftedCoat = (shifting: Shifting, coat: PlanCoat): PlanCoat | null => {
  const { plan, times, calendar } = shifting;
  const start = times.coatStart.get(coat);
  if (start === undefined) return coat;
  const end = start + minutesOf(coat.start, coat.end);
  const dry = end + dryMinutes(shifting, coat);
  const soon = plan.pours.some((pour) => {
    const prep = times.prepStart.get(pour.id) ?? minuteOf(pour.prepStart);
    return pour.mould === coat.mould && minuteOf(pour.prepStart) >= minuteOf(coat.end) && prep < dry;
  });
  return soon ? null : { ...coat, start: calendar.instantText(start), end: calendar.instantText(end) };
};

const shiftedBatch = ({ times, calendar, yard, session, plan }: Shifting, batch: PlanBatch): PlanBatch | null => {
  const moved = times.batchMoved.get(batch.id) ?? 0;
  if (moved === 0) return batch;
  const start = minuteOf(batch.start) + moved;
  const attend = yard.mixes.find(({ id }) => id === batch.mix)?.attendMinutes ?? 0;
  const fills = plan.pours.filter((pour) => pour.batch === batch.id).map(({ fillEnd }) => minuteOf(fillEnd) + moved);
  const onDay = calendar.dayOf(start) === calendar.dayOf(minuteOf(batch.start));
  if (!onDay || Math.max(...fills) + attend > session.end) return null;
  const text = (instant: string) => calendar.instantText(minuteOf(instant) + moved);
  return { ...batch, start: text(batch.start), mixEnd: text(batch.mixEnd), end: text(batch.end) };
};

const shiftedStrip = ({ yard, times, calendar, cure }: Shifting, strip: PlanStrip): PlanStrip | null => {
  const start = times.stripStart.get(stripKey(strip)) ?? minuteOf(strip.stripStart);
  const piece = yard.inMould.find(({ mould }) => mould === strip.mould);
  if (!piece) return strip;
  const filled = minuteOf(piece.filledAt);
  if (cure.mayStripFrom(piece.casting, filled) > start) return null;
  const end = start + minutesOf(strip.stripStart, strip.stripEnd);
  const readyAt = Math.max(end, cure.curedAt(piece.casting, filled));
  const [stripStart, stripEnd, pieceReadyAt] = [start, end, readyAt].map(calendar.instantText) as [
    string,
    string,
    string,
  ];
  return { ...strip, stripStart, stripEnd, pieceReadyAt };
};

const shiftedOrder = (shifting: Shifting, order: PlanOrder): PlanOrder | null => {
  const spells = spellsOf(order);
  if (!spells.some((spell) => shifting.times.packStart.has(packKey(order, spell)))) return order;
  const shifted = withSpells(
    order,
    spells.map((spell) => shiftedSpell(shifting, order, spell)),
  );
  const { dayOf } = shifting.calendar;
  const { packEnd = order.completesAt } = shifted;
  if (dayOf(minuteOf(packEnd)) !== dayOf(minuteOf(order.completesAt))) return null;
  return { ...shifted, completesAt: packEnd };
};

/** No order is packed before its pieces are ready, in this session or a later one. */
const packsWait = (plan: PlanFile): boolean => {
  const from = new Map(plan.orders.map(({ id, packStart }) => [id, packStart]));
  return [...plan.strips, ...plan.pours].every(({ order, pieceReadyAt }) => {
    const packStart = order === undefined ? undefined : from.get(order);
    return packStart === undefined || minuteOf(packStart) >= minuteOf(pieceReadyAt);
  });
};

const all = <T>(list: readonly (T | null)[]): T[] | null => {
  const there = list.filter((one): one is T => one !== null);
  return there.length === list.length ? there : null;
};

const written = (shifting: Shifting): PlanFile | null => {
  const { plan } = shifting;
  const batches = all(plan.batches.map((batch) => shiftedBatch(shifting, batch)));
  const pours = all(plan.pours.map((pour) => shiftedPour(shifting, pour)));
  const coats = all(plan.coats.map((coat) => shiftedCoat(shifting, coat)));
  const strips = all(plan.strips.map((strip) => shiftedStrip(shifting, strip)));
  const orders = all(plan.orders.map((order) => shiftedOrder(shifting, order)));
  return batches && pours && coats && strips && orders && { ...plan, batches, pours, coats, strips, orders };
};

/** By mould, from when its next task may begin: when its piece may come out, its coat is dry, or it is emptied (`freed`). */
const freeFrom = (yard: YardFile, cure: CuringTimes, freed: ReadonlyMap<string, Minute>): Map<string, Minute> => {
  const free = new Map(freed);
  for (const { id, dryFrom } of yard.moulds)
    if (dryFrom !== undefined) free.set(id, Math.max(free.get(id) ?? 0, minuteOf(dryFrom)));
  for (const { mould, casting, filledAt } of yard.inMould)
    free.set(mould, Math.max(freed.get(mould) ?? 0, cure.mayStripFrom(casting, minuteOf(filledAt))));
  return free;
};

/** The session that is moved: the one under way, or the next one within a day; one of no minutes where there is none. */
export const sessionToShift = (yard: YardFile, calendar: Calendar): Session => {
  const soon = { ...yard, yard: { ...yard.yard, horizonDays: Math.min(1, yard.yard.horizonDays) } };
  const now = minuteOf(yard.yard.now);
  const none = { start: now, end: now, from: now, to: now, wetUntil: now, day: calendar.dayOf(now), windows: [] };
  return sessionsOf(soon, calendar)[0] ?? none;
};

/**
 * The plan with what is left of the session under way moved later, as far as work that ended later than planned asks for:
 * nothing begins sooner than it was planned, in another order of its mould, or with more hands than are there. Null when
 * something no longer fits its session or its day, so that the plan has to be made anew. A plan that still holds comes back
 * as it is. `freed` says from when moulds are free that were emptied or set up just now, and from when a piece that is not hard
 * yet is stripped at the soonest.
 *
 * Example: a mould of 9:29 was full at 9:34, and its strip of 10:44 may begin at 10:49: that, and the packing of 10:52 that
 * waits for it, begin 5 minutes later.
 */
export const shiftLater = (
  plan: PlanFile,
  yard: YardFile,
  freed: ReadonlyMap<string, Minute> = new Map(),
): PlanFile | null => {
  const calendar = calendarOf(yard.yard.timeZone);
  const session = sessionToShift(yard, calendar);
  const cure = curingTimesOf(yard);
  const times: Times = {
    ...{
      prepStart: new Map(),
      coatStart: new Map(),
      batchMoved: new Map(),
      stripStart: new Map(),
      readyAt: new Map(),
      packStart: new Map(),
    },
    freeAt: freeFrom(yard, cure, freed),
  };
  for (const { mould, casting, filledAt } of yard.inMould)
    times.readyAt.set(`mould ${mould}`, cure.curedAt(casting, minuteOf(filledAt)));
  const shifting: Shifting = { plan, yard, session, calendar, cure, times };
  if (!placeAll(shifting)) return null;
  const shifted = written(shifting);
  return shifted && packsWait(shifted) && rackHolds(shifted, yard) ? shifted : null;
};
