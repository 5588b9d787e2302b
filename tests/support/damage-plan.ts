import type { PlanFile } from '../../shared/plan.ts';
import { dateOfDay, dayNumber, minuteOf, weekdayOf } from '../../shared/time.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import { calendarOf } from '../../src/engine/calendar/calendar.ts';
import type { Dice } from './random-yard/dice.ts';

interface Damage {
  yard: YardFile;
  plan: PlanFile;
  dice: Dice;
  /** Moves instants of a record, all by the same. */
  move<T extends object>(record: T | undefined, minutes: number, ...keys: (keyof T)[]): void;
}
type Way = (damage: Damage) => void;

const some = <T>(dice: Dice, list: T[]): T | undefined => (list.length > 0 ? dice.pick(list) : undefined);
const a = <T>({ dice }: Damage, list: T[]): T | undefined => some(dice, list);
const minutes = ({ dice }: Damage): number => dice.pick([-1, 1, -5, 5, 30, -60, 240, 1440]);
const remove = <T>(list: T[], item: T | undefined): void => {
  if (item !== undefined) list.splice(list.indexOf(item), 1);
};
const laterDate = (date: string, days: number): string => dateOfDay(dayNumber(date) + days);

/** Ways to spoil a plan a little, each on one record; some leave it in order. */
export const DAMAGES: Record<string, Way> = {
  'prep moved': (d) => d.move(a(d, d.plan.pours), minutes(d), 'prepStart', 'prepEnd'),
  'prep longer': (d) => d.move(a(d, d.plan.pours), minutes(d), 'prepEnd'),
  'strip moved': (d) => d.move(a(d, d.plan.pours), minutes(d), 'stripStart', 'stripEnd'),
  'strip of what was in a mould moved': (d) => d.move(a(d, d.plan.strips), minutes(d), 'stripStart', 'stripEnd'),
  'ready at another time': (d) => d.move(a(d, d.plan.pours), minutes(d), 'pieceReadyAt'),
  'fill moved': (d) => d.move(a(d, d.plan.pours), minutes(d), 'fillStart', 'fillEnd'),
  'batch moved with its pours': (d) => {
    const batch = a(d, d.plan.batches);
    const by = minutes(d);
    d.move(batch, by, 'start', 'mixEnd', 'end');
    for (const x of d.plan.pours)
      if (x.batch === batch?.id)
        d.move(x, by, 'prepStart', 'prepEnd', 'fillStart', 'fillEnd', 'stripStart', 'stripEnd', 'pieceReadyAt');
  },
  'batch moved alone': (d) => d.move(a(d, d.plan.batches), minutes(d), 'start', 'mixEnd', 'end'),
  'other bags': (d) => {
    const batch = a(d, d.plan.batches);
    if (batch) batch.bags = Math.max(0.5, batch.bags + d.dice.pick([-0.5, 0.5, 1]));
  },
  'other mass': (d) => {
    const batch = a(d, d.plan.batches);
    if (batch) batch.kg += 0.1;
  },
  'other mix': (d) => {
    const batch = a(d, d.plan.batches);
    if (batch) batch.mix = d.dice.pick(d.yard.mixes).id;
  },
  'pour dropped': (d) => {
    const pour = a(d, d.plan.pours);
    remove(d.plan.pours, pour);
    for (const x of d.plan.batches) x.pours = x.pours.filter((id) => id !== pour?.id);
  },
  'batch dropped': (d) => {
    const batch = a(d, d.plan.batches);
    remove(d.plan.batches, batch);
    d.plan.pours = d.plan.pours.filter((x) => x.batch !== batch?.id);
  },
  'other mould': (d) => {
    const pour = a(d, d.plan.pours);
    if (pour) pour.mould = d.dice.pick(d.yard.moulds).id;
  },
  'other casting': (d) => {
    const pour = a(d, d.plan.pours);
    if (pour) pour.casting = d.dice.pick(d.yard.castings).id;
  },
  'coat dropped': (d) => remove(d.plan.coats, a(d, d.plan.coats)),
  'coat moved': (d) => d.move(a(d, d.plan.coats), minutes(d), 'start', 'end'),
  'coat longer': (d) => d.move(a(d, d.plan.coats), minutes(d), 'end'),
  'coat of another mould': (d) => {
    const coat = a(d, d.plan.coats);
    if (coat) coat.mould = d.dice.pick(d.yard.moulds).id;
  },
  'a coat more': (d) => {
    const pour = a(d, d.plan.pours);
    const mould = d.yard.moulds.find((x) => x.id === pour?.mould);
    if (!pour || !mould) return;
    const coat = { mould: mould.id, start: pour.prepStart, end: pour.prepStart };
    d.move(coat, -mould.oilDryMinutes - mould.oilMinutes, 'start');
    d.move(coat, -mould.oilDryMinutes, 'end');
    d.plan.coats.push(coat);
  },
  'for another order': (d) => {
    const pour = a(d, d.plan.pours);
    if (pour) pour.order = some(d.dice, d.yard.orders)?.id;
  },
  'for nobody': (d) => {
    const pour = a(d, d.plan.pours);
    if (pour) Reflect.deleteProperty(pour, 'order');
  },
  'strip dropped': (d) => remove(d.plan.strips, a(d, d.plan.strips)),
  'strip put off': (d) => {
    const strip = a(d, d.plan.strips);
    remove(d.plan.strips, strip);
    if (strip) d.plan.unstripped.push({ mould: strip.mould, reason: 'no time' });
  },
  'packing moved': (d) => {
    const order = a(
      d,
      d.plan.orders.filter((x) => x.packStart),
    );
    d.move(
      order as Required<PlanFile['orders'][number]> | undefined,
      minutes(d),
      'packStart',
      'packEnd',
      'completesAt',
    );
  },
  'completed at another time': (d) => d.move(a(d, d.plan.orders), minutes(d), 'completesAt'),
  'handed over on another day': (d) => {
    const order = a(d, d.plan.orders);
    if (order) order.completesOn = laterDate(order.completesOn, d.dice.pick([-1, 1, 7]));
  },
  'proven for a later day': (d) => {
    const order = a(d, d.plan.orders);
    if (order) order.soonestOn = laterDate(order.completesOn, d.dice.pick([1, 7]));
  },
  'proven for a day of no hand-over': (d) => {
    const [order, days] = [a(d, d.plan.orders), d.yard.yard.handoverDays];
    // From Monday to Sunday before it there is a day that is none, unless every day is.
    for (let back = 1; order && days?.length && back <= 7; back++) {
      const date = laterDate(order.completesOn, -back);
      if (!days.includes(weekdayOf(dayNumber(date)))) order.soonestOn = date;
    }
  },
  'more days late': (d) => {
    const order = a(d, d.plan.orders);
    if (order) order.daysLate += 1;
  },
  'order dropped': (d) => remove(d.plan.orders, a(d, d.plan.orders)),
  'order left out': (d) => {
    const order = a(d, d.plan.orders);
    remove(d.plan.orders, order);
    if (order) d.plan.unplanned.push({ order: order.id, cause: 'time', reason: 'no time' });
  },
  'more finished pieces': (d) => {
    const taken = a(
      d,
      d.plan.orders.flatMap((x) => x.fromFinished),
    );
    if (taken) taken.count += 1;
  },
  'stick dropped': (d) => remove(d.plan.sticks, a(d, d.plan.sticks)),
  'stick opened at another time': (d) => d.move(a(d, d.plan.sticks), minutes(d), 'openedAt'),
  'cut from an offcut': (d) => {
    const stick = a(d, d.plan.sticks);
    const offcut = a(d, d.yard.materials.find(({ id }) => id === stick?.material)?.offcuts ?? []);
    if (stick) stick.offcutMm = offcut?.lengthMm ?? 1999;
  },
  'another cut': (d) => {
    const cut = a(
      d,
      d.plan.sticks.flatMap((x) => x.cuts),
    );
    if (cut) cut.count += 1;
  },
  'buy dropped': (d) => remove(d.plan.buys, a(d, d.plan.buys)),
  'buy doubled': (d) => {
    const buy = a(d, d.plan.buys);
    if (buy) d.plan.buys.push(structuredClone(buy));
  },
  'a pack more': (d) => {
    const buy = a(d, d.plan.buys);
    if (buy) buy.quantity += d.yard.materials.find((x) => x.id === buy.material)!.pack;
  },
  'bought on another day': (d) => {
    const buy = a(d, d.plan.buys);
    const days = d.dice.pick([-1, 1]);
    if (buy) Object.assign(buy, { orderBy: laterDate(buy.orderBy, days), arrivesOn: laterDate(buy.arrivesOn, days) });
  },
  'arriving on another day': (d) => {
    const buy = a(d, d.plan.buys);
    if (buy) buy.arrivesOn = laterDate(buy.arrivesOn, 1);
  },
  'given up though not fixed': (d) => {
    const batch = a(d, d.plan.batches);
    if (batch) d.plan.dropped.push({ prep: d.dice.pick(d.yard.moulds).id, at: batch.start, reason: 'no time' });
  },
  'another score after dates wanted': (d) => {
    d.plan.score.weightedDaysAfterWanted += 1;
  },
  'another score': (d) => {
    d.plan.score.weightedCompletionDays += 1;
  },
};

/** A copy of a plan, spoilt in one of the ways of `DAMAGES`. */
export const damagePlan = (yard: YardFile, plan: PlanFile, way: Way, dice: Dice): PlanFile => {
  const copy = structuredClone(plan);
  const { instantText } = calendarOf(yard.yard.timeZone);
  way({
    yard,
    plan: copy,
    dice,
    move: (record, by, ...keys) => {
      if (!record) return;
      for (const key of keys) Object.assign(record, { [key]: instantText(minuteOf(record[key] as string) + by) });
    },
  });
  return copy;
};
