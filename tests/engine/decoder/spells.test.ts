import { describe, expect, test } from 'vitest';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile, YardFileInput } from '../../../shared/yard-file.ts';
import { soonestComplete } from '../../../src/engine/bound/soonest.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { NEVER } from '../../../src/engine/decoder/problem.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { quoteOrder } from '../../../src/engine/quote/quote.ts';
import { smallYard } from '../../support/small-yard.ts';
import { yardInSpells } from '../../support/yard-in-spells.ts';

type Hours = YardFileInput['extra'][number];
const april = (day: number, clock: string) => `2027-04-${String(day).padStart(2, '0')}T${clock}:00+01:00`;
const friday = (start: string, end: string): Hours => ({ date: '2027-04-09', start, end, allows: ['pack'] });

/** The yard in which Saturdays have 4 hours and an order takes 6 to pack, with other hours beside them. */
const withHours = (extra: Hours[], more: Partial<YardFileInput> = {}): YardFile => {
  const yard = yardInSpells();
  return smallYard({ kits: yard.kits, finished: yard.finished, orders: yard.orders, extra, ...more });
};
/** When the order is packed: from and until, spell by spell. */
const packed = (yard: YardFile): string[] => {
  const [order] = planYard(yard, { effort: 'quick' }).orders;
  const spells = order?.packs ?? (order?.packStart ? [{ packStart: order.packStart, packEnd: order.packEnd! }] : []);
  return spells.map(({ packStart, packEnd }) => `${packStart.slice(8, 16)} to ${packEnd.slice(11, 16)}`);
};

describe('an order that takes longer to pack than sessions last', () => {
  test('is packed for as long as each session has time, and the last of it as late as that can be', () => {
    expect(packed(yardInSpells())).toEqual(['10T08:00 to 12:00', '17T10:00 to 12:00']);
  });

  // 4 hours on the 17th would not do for what is left: two hours of Friday make that Saturday.
  test('uses the hours before that bring its hand-over day nearer', () => {
    expect(packed(withHours([friday('18:00', '20:00')]))).toEqual(['09T18:00 to 20:00', '10T08:00 to 12:00']);
  });

  test('is not packed for less than a quarter of an hour, but for the last of it', () => {
    expect(packed(withHours([friday('18:00', '18:14')]))).toEqual(['10T08:00 to 12:00', '17T10:00 to 12:00']);
    expect(packed(withHours([friday('18:00', '18:15')]))[0]).toBe('09T18:00 to 18:15');
  });

  test('waits for a session of the next two weeks that has time for all of it', () => {
    const long = (date: string): Hours => ({ date, start: '13:00', end: '19:00', allows: ['pack'] });
    expect(packed(withHours([long('2027-04-12')]))).toEqual(['12T13:00 to 19:00']);
    // A month is too long to wait.
    expect(packed(withHours([long('2027-05-12')]))).toEqual(['10T08:00 to 12:00', '17T10:00 to 12:00']);
  });

  // 4 hours on Saturday and 2 on Sunday are over before the 6 of Wednesday.
  test('does not wait for it where spells come to an end on an earlier hand-over day', () => {
    const sunday: Hours = { date: '2027-04-11', start: '08:00', end: '10:00', allows: ['pack'] };
    const wednesday: Hours = { date: '2027-04-14', start: '13:00', end: '19:00', allows: ['pack'] };
    const { handoverDays: _days, ...yard } = smallYard().yard;
    const handedOver = (handoverDays?: YardFileInput['yard']['handoverDays']) =>
      packed(withHours([sunday, wednesday], { yard: { ...yard, ...(handoverDays ? { handoverDays } : {}) } }));
    expect(handedOver()).toEqual(['10T08:00 to 12:00', '11T08:00 to 10:00']);
    expect(handedOver(['TH'])).toEqual(['14T13:00 to 19:00']);
  });

  test('is left out where nobody ever packs', () => {
    const work = smallYard().work.map((hours) => ({ ...hours, allows: ['batch' as const] }));
    const { orders, unplanned } = planYard(withHours([], { work }), { effort: 'quick' });
    expect(orders).toEqual([]);
    expect(unplanned).toMatchObject([{ order: '27-001', cause: 'time' }]);
  });

  // The only rod is taken with the first spell: it is not the rod that is missing.
  test('is left out for want of time where the sessions end before all of it is packed', () => {
    const materials = smallYard().materials.map((one) =>
      one.id === 'rod' ? { ...one, onHand: 1, leadDays: undefined } : one,
    );
    const yard = withHours([], { materials, yard: { ...smallYard().yard, horizonDays: 4 } });
    const { unplanned } = planYard(yard, { effort: 'quick' });
    expect(unplanned.map(({ reason }) => reason)).toEqual(['the sessions up to 2027-04-12 have no time for it']);
  });

  test('has a date when it is asked about, no sooner than the bound says', () => {
    const { orders: asked, ...yard } = yardInSpells();
    const quote = quoteOrder({ ...yard, orders: [] }, asked[0]!);
    expect([quote.earliestOn, quote.ifFirstOn]).toEqual(['2027-04-17', '2027-04-17']);
    const soonest = soonestComplete(compile(yardInSpells()), 0);
    expect(calendarOf('Europe/Dublin').instantText(soonest)).toBe(april(17, '10:00'));
    expect(soonestComplete(compile(withHours([], { work: [] })), 0)).toBe(NEVER);
  });
});

describe('what of it is fixed (R13)', () => {
  const spell = (day: number, from: string, to: string) => ({
    ...{ order: '27-001', packStart: april(day, from), packEnd: april(day, to) },
  });
  const kept = (packs: ReturnType<typeof spell>[], more: Partial<YardFileInput> = {}) => {
    const yard = withHours([], { keep: { batches: [], pours: [], packs }, ...more });
    const { dropped } = planYard(yard, { effort: 'quick' });
    return { packed: packed(yard), dropped: dropped.map(({ at, reason }) => `${at.slice(8, 16)}: ${reason}`) };
  };

  test('stays, and the rest comes after it', () => {
    expect(kept([spell(10, '09:00', '11:00')])).toEqual({
      packed: ['10T09:00 to 11:00', '17T08:00 to 12:00'],
      dropped: [],
    });
  });

  test('is dropped from the first spell on that cannot be', () => {
    const closed = kept([spell(10, '08:00', '12:00'), spell(17, '10:00', '12:00')], { closed: ['2027-04-10'] });
    expect(closed.dropped).toEqual([
      '10T08:00: nobody is free then',
      '17T10:00: what comes before it is not packed by then',
    ]);
    expect(closed.packed).toEqual(['17T08:00 to 12:00', '24T10:00 to 12:00']);
  });

  test('is dropped where it is too short, too long, or a session has time for all of it', () => {
    expect(kept([spell(10, '08:00', '08:10')]).dropped).toEqual(['10T08:00: it takes another time now']);
    const quick = yardInSpells().kits.map((kit) => ({ ...kit, packMinutes: 81 }));
    expect(kept([spell(10, '08:00', '12:00'), spell(17, '10:00', '12:00')], { kits: quick }).dropped).toEqual([
      '17T10:00: it takes another time now',
    ]);
    const long: Hours = { date: '2027-04-12', start: '13:00', end: '19:00', allows: ['pack'] };
    expect(kept([spell(10, '08:00', '12:00')], { extra: [long] }).dropped).toEqual([
      '10T08:00: a session is long enough for all of it now',
    ]);
  });

  test('goes on after a spell that is under way', () => {
    const yard = withHours([], {
      yard: { ...smallYard().yard, now: april(10, '09:00') },
      begun: {
        packs: [{ ...spell(10, '08:00', '12:00'), fromFinished: [{ finished: 0, count: 6 }], part: true }],
      },
      keep: { batches: [], pours: [], packs: [spell(17, '08:00', '09:00')] },
    });
    expect(packed(yard)).toEqual(['10T08:00 to 12:00', '17T08:00 to 09:00', '24T11:00 to 12:00']);
    expect(minuteOf(planYard(yard).orders[0]!.completesAt)).toBe(minuteOf(april(24, '12:00')));
  });
});
