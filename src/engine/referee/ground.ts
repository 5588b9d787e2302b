import type { Casting } from '../../../shared/casting.ts';
import type { Kit } from '../../../shared/kit.ts';
import type { Material } from '../../../shared/material.ts';
import type { Mix } from '../../../shared/mix.ts';
import type { Mould } from '../../../shared/mould.ts';
import type { Order } from '../../../shared/order.ts';
import type { PlanBatch, PlanCoat, PlanFile, PlanPour, PlanStrip } from '../../../shared/plan.ts';
import { type DayNumber, type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { type Calendar, calendarOf } from '../calendar/calendar.ts';
import { type Session, sessionsOf } from '../calendar/sessions.ts';
import { type Ageing, ageingOf } from '../cure/age.ts';
import { type Climate, climateOf } from '../cure/climate.ts';
import { isCoatUnderWay, isPrepUnderWay, type UnderWay, underWayOf } from './under-way.ts';

/** When a piece is stripped and ready, and what it is. */
export interface TimedStrip {
  name: string;
  casting: Casting;
  order: string | undefined;
  fillEnd: Minute;
  stripStart: Minute;
  stripEnd: Minute;
  readyAt: Minute;
  /** Begun by now (R14): of a pour, its batch; of a piece that was in its mould at the start, its strip. */
  underWay: boolean;
}

/** A pour with its times as minutes; each span is half-open. */
export interface TimedPour extends TimedStrip {
  pour: PlanPour;
  batchStart: Minute;
  prepStart: Minute;
  prepEnd: Minute;
  fillStart: Minute;
  prepUnderWay: boolean;
  /** Under way, and never stripped within the horizon: its strip times mean nothing. */
  stays: boolean;
}

/** A sealing coat with its times as minutes. */
export interface TimedCoat {
  name: string;
  mould: string;
  start: Minute;
  end: Minute;
  underWay: boolean;
}

/** A batch with its times as minutes; `end` is after washing (R3). */
export interface TimedBatch {
  batch: PlanBatch;
  mix: Mix;
  start: Minute;
  mixEnd: Minute;
  end: Minute;
  underWay: boolean;
  /** By the time they are filled. */
  pours: TimedPour[];
}

/** A plan whose form is in order, beside its yard: everything by name, every instant as a minute. */
export interface Ground {
  yard: YardFile;
  plan: PlanFile;
  calendar: Calendar;
  climate: Climate;
  sessions: Session[];
  now: Minute;
  today: DayNumber;
  /** 00:00 after the last date that the plan covers. */
  horizonEnd: Minute;
  mixes: Map<string, Mix>;
  castings: Map<string, Casting>;
  moulds: Map<string, Mould>;
  materials: Map<string, Material>;
  orders: Map<string, Order>;
  kits: Map<string, Kit>;
  ageings: Map<string, Ageing>;
  batches: TimedBatch[];
  pours: TimedPour[];
  coats: TimedCoat[];
  /** Of the pieces that were in moulds at the start, by mould. */
  strips: Map<string, TimedStrip>;
  underWay: UnderWay;
}

/** A list by name: `byId(yard.moulds).get('800 no. 2')` is that mould. */
const byId = <T extends { id: string }>(list: T[]): Map<string, T> => new Map(list.map((x) => [x.id, x]));

const timedPour = (
  pour: PlanPour,
  castings: Map<string, Casting>,
  batchStart: Minute,
  begun: UnderWay,
  unstripped: Set<string>,
): TimedPour => ({
  pour,
  batchStart,
  underWay: begun.batches.has(pour.batch),
  prepUnderWay: isPrepUnderWay(begun, pour),
  stays: begun.batches.has(pour.batch) && unstripped.has(pour.mould),
  name: `pour ${pour.id}`,
  casting: castings.get(pour.casting)!,
  order: pour.order,
  prepStart: minuteOf(pour.prepStart),
  prepEnd: minuteOf(pour.prepEnd),
  fillStart: minuteOf(pour.fillStart),
  fillEnd: minuteOf(pour.fillEnd),
  stripStart: minuteOf(pour.stripStart),
  stripEnd: minuteOf(pour.stripEnd),
  readyAt: minuteOf(pour.pieceReadyAt),
});

const timedBatch = (batch: PlanBatch, mixes: Map<string, Mix>, pours: TimedPour[], begun: UnderWay): TimedBatch => ({
  batch,
  underWay: begun.batches.has(batch.id),
  mix: mixes.get(batch.mix)!,
  start: minuteOf(batch.start),
  mixEnd: minuteOf(batch.mixEnd),
  end: minuteOf(batch.end),
  pours: pours.sort((a, b) => a.fillStart - b.fillStart),
});

const timedCoat = (coat: PlanCoat, begun: UnderWay): TimedCoat => ({
  name: `coat of ${coat.mould}`,
  mould: coat.mould,
  start: minuteOf(coat.start),
  end: minuteOf(coat.end),
  underWay: isCoatUnderWay(begun, coat),
});

const timedStrips = (
  yard: YardFile,
  strips: PlanStrip[],
  castings: Map<string, Casting>,
  begun: UnderWay,
): Map<string, TimedStrip> => {
  const held = new Map(yard.inMould.map((x) => [x.mould, x]));
  return new Map(
    strips.map((x) => {
      const piece = held.get(x.mould)!;
      return [
        x.mould,
        {
          name: `the piece in ${x.mould}`,
          casting: castings.get(piece.casting)!,
          order: x.order,
          fillEnd: minuteOf(piece.filledAt),
          stripStart: minuteOf(x.stripStart),
          stripEnd: minuteOf(x.stripEnd),
          readyAt: minuteOf(x.pieceReadyAt),
          underWay: begun.strips.has(x.mould),
        },
      ];
    }),
  );
};

/**
 * What the rules are checked on. Only for plans in which `checkForm` has found nothing: every name is looked up as if it
 * were there.
 *
 * Example: for a plan of two pours in one batch, `batches[0].pours` are both, the one filled first in front.
 */
export const groundOf = (yard: YardFile, plan: PlanFile): Ground => {
  const calendar = calendarOf(yard.yard.timeZone);
  const climate = climateOf(yard, calendar);
  const now = minuteOf(yard.yard.now);
  const today = calendar.dayOf(now);
  const [mixes, castings] = [byId(yard.mixes), byId(yard.castings)];
  const startOf = new Map(plan.batches.map((x) => [x.id, minuteOf(x.start)]));
  const begun = underWayOf(yard);
  const unstripped = new Set(plan.unstripped.map((x) => x.mould));
  const pours = plan.pours.map((x) => timedPour(x, castings, startOf.get(x.batch)!, begun, unstripped));
  const filledFrom = new Map<string, TimedPour[]>(plan.batches.map((x) => [x.id, []]));
  for (const x of pours) filledFrom.get(x.pour.batch)!.push(x);
  return {
    yard,
    plan,
    calendar,
    climate,
    sessions: sessionsOf(yard, calendar),
    now,
    today,
    horizonEnd: calendar.midnightOf(today + yard.yard.horizonDays + 1),
    mixes,
    castings,
    moulds: byId(yard.moulds),
    materials: byId(yard.materials),
    orders: byId(yard.orders),
    kits: byId(yard.kits),
    ageings: new Map(yard.mixes.map((x) => [x.id, ageingOf(x, climate)])),
    batches: plan.batches.map((x) => timedBatch(x, mixes, filledFrom.get(x.id)!, begun)),
    pours,
    coats: plan.coats.map((x) => timedCoat(x, begun)),
    strips: timedStrips(yard, plan.strips, castings, begun),
    underWay: begun,
  };
};
