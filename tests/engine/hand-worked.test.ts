import { describe, expect, test } from 'vitest';
import type { PlanFile } from '../../shared/plan.ts';
import { readYardFile, type YardFile, type YardFileInput } from '../../shared/yard-file.ts';
import { planYard } from '../../src/engine/plan.ts';
import { audit } from '../contract/audit-plan.mjs';

/**
 * Tiny yards planned on paper from the rules of the contract. The hours end at the very minute at which the last task of
 * the plan worked out ends, so that there is no other plan as good: whatever starts a minute later misses the day.
 *
 * Unless a yard says otherwise: Monday 5 April 2027 in Dublin (summer time, +01:00), one person, the mould clean and empty,
 *   set up 12 minutes, clean 6 (after a strip), mix 10, fill 7, wash out 5, working time 20, strip 8,
 *   hard enough to strip 75 minutes after its own fill at 20 °C, cured as soon as it is stripped.
 */
type Input = YardFileInput;
const mix: Input['mixes'][number] = {
  id: 'thin',
  name: 'Thin panel mix',
  yieldKgPerBag: 30,
  maxBags: 1,
  mixMinutes: 10,
  workingMinutes: 20,
  washMinutes: 5,
  demouldMinutes: 75,
  cureHours: 0,
  perBag: [],
};
const panel: Input['castings'][number] = {
  id: 'panel',
  name: 'Panel 900',
  mix: 'thin',
  kg: 13.6,
  fillMinutes: 7,
  stripMinutes: 8,
  cleanMinutes: 6,
  prepMinutes: 12,
  perPiece: [],
  cuts: [],
};
const mould = (id: string, more: Partial<Input['moulds'][number]> = {}): Input['moulds'][number] => ({
  id,
  makes: [{ casting: 'panel' }],
  setFor: 'panel',
  condition: 'ready',
  ...more,
});
const on = (date: string, start: string, end: string, crew = 1): Input['extra'][number] => ({ date, start, end, crew });
const order = (quantity: number, due: string): Input['orders'][number] => ({
  id: '27-001',
  due,
  lines: [{ casting: 'panel', quantity }],
});

const yardOf = (changes: Partial<Input>, more: Partial<Input['yard']> = {}): YardFile => {
  const yard = { name: 'Hand', timeZone: 'Europe/Dublin', now: '2027-04-05T07:00:00+01:00', horizonDays: 30, ...more };
  const lists = {
    work: [],
    closed: [],
    extra: [],
    temperatures: [],
    materials: [],
    incoming: [],
    kits: [],
    finished: [],
    inMould: [],
  };
  const read = readYardFile({
    ...{ format: 'mould-rota/yard', version: 1, ...lists, mixes: [mix], castings: [panel], moulds: [mould('M1')] },
    ...{ orders: [order(1, '2027-04-10')], ...changes, yard },
  });
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.yard;
};

/** A plan without a fault by the independent check. */
const planned = (yard: YardFile): PlanFile => {
  const plan = planYard(yard, { effort: 'quick' });
  expect(audit(yard, plan).faults).toEqual([]);
  return plan;
};

const clock = (instant: string) => instant.slice(5, 16).replace('T', ' ');
const span = (start: string, end: string) => `${clock(start)}–${end.slice(11, 16)}`;
const poursOf = (plan: PlanFile) =>
  [...plan.pours]
    .sort((a, b) => (a.fillStart < b.fillStart ? -1 : 1))
    .map((p) => ({
      mould: p.mould,
      prep: span(p.prepStart, p.prepEnd),
      fill: span(p.fillStart, p.fillEnd),
      strip: span(p.stripStart, p.stripEnd),
      ready: clock(p.pieceReadyAt),
    }));
const coatsOf = (plan: PlanFile) => plan.coats.map((x) => `${x.mould} ${span(x.start, x.end)}`);
const batchesOf = (plan: PlanFile) => plan.batches.map((b) => `${span(b.start, b.end)} ${b.bags} bag`);

describe('one mould, two pieces, Saturday 08:00 to 11:50', () => {
  // 08:00 set up (12) -> 08:12 mix (10) -> 08:22 fill (7) -> 08:29 wash out (5) -> 08:34.
  // Hard at 08:29 + 75 = 09:44: strip (8) -> 09:52, clean and set up (6 + 12) -> 10:10, mix -> 10:20, fill -> 10:27, wash out
  // -> 10:32. Hard at 10:27 + 75 = 11:42: strip -> 11:50, the end of the session.
  test('two turns, one after the other, to the last minute', () => {
    const plan = planned(yardOf({ extra: [on('2027-04-10', '08:00', '11:50')], orders: [order(2, '2027-04-10')] }));
    expect(batchesOf(plan)).toEqual(['04-10 08:12–08:34 1 bag', '04-10 10:10–10:32 1 bag']);
    expect(poursOf(plan)).toEqual([
      {
        mould: 'M1',
        prep: '04-10 08:00–08:12',
        fill: '04-10 08:22–08:29',
        strip: '04-10 09:44–09:52',
        ready: '04-10 09:52',
      },
      {
        mould: 'M1',
        prep: '04-10 09:52–10:10',
        fill: '04-10 10:20–10:27',
        strip: '04-10 11:42–11:50',
        ready: '04-10 11:50',
      },
    ]);
    expect(plan.orders[0]).toMatchObject({
      completesAt: '2027-04-10T11:50:00+01:00',
      completesOn: '2027-04-10',
      daysLate: 0,
    });
    expect(plan.score).toMatchObject({ weightedDaysLate: 0, batches: 2, bags: 2, weightedCompletionDays: 5 });
  });

  // A minute less and the second strip has to wait for the next session, Wednesday at 18:00: four days late.
  test('with one minute less the second piece is stripped on Wednesday', () => {
    const plan = planned(
      yardOf({
        extra: [on('2027-04-10', '08:00', '11:49'), on('2027-04-14', '18:00', '18:30')],
        orders: [order(2, '2027-04-10')],
      }),
    );
    expect(poursOf(plan)[1]!.strip).toBe('04-14 18:00–18:08');
    expect(plan.orders[0]).toMatchObject({ completesOn: '2027-04-14', daysLate: 4 });
    expect(plan.score).toMatchObject({ weightedDaysLate: 4, weightedCompletionDays: 9 });
  });
});

describe('heat: two moulds, Saturday from 08:00', () => {
  const moulds = [mould('M1'), mould('M2')];

  // At 20 °C two fills take 14 of the 20 minutes of working time: one batch.
  // 08:00 set up, 08:12 set up, 08:24 mix -> 08:34 fill -> 08:41 fill -> 08:48 wash out -> 08:53.
  // Hard at 08:41 + 75 = 09:56: strip -> 10:04; the other, hard at 10:03, strip 10:04 -> 10:12.
  test('at 20 °C one batch takes both', () => {
    const plan = planned(
      yardOf({
        moulds,
        extra: [on('2027-04-10', '08:00', '10:12')],
        temperatures: [{ from: '2027-01-01', celsius: 20 }],
        orders: [order(2, '2027-04-10')],
      }),
    );
    expect(batchesOf(plan)).toEqual(['04-10 08:24–08:53 1 bag']);
    expect(poursOf(plan).map((p) => p.fill)).toEqual(['04-10 08:34–08:41', '04-10 08:41–08:48']);
    expect(poursOf(plan).map((p) => p.strip)).toEqual(['04-10 09:56–10:04', '04-10 10:04–10:12']);
  });

  // At 30 °C age is gained exp(-5000 (1/303.15 - 1/293.15)) = exp(0.5626) = 1.755 times as fast. The working time of 20
  // minutes is over after 20 / 1.755 = 11.4 minutes: the second fill would end after 14. So two batches. Hard after
  // 75 / 1.755 = 42.73, in whole minutes 43.
  // Set up twice and pour twice is 12 + 12 + 22 + 22 = 68 minutes in either order: the second batch ends at 09:08, so it
  // starts at 08:46, fills 08:56 -> 09:03; hard at 09:46, strip -> 09:54, the end of the session.
  test('at 30 °C the second piece would stiffen: two batches', () => {
    const plan = planned(
      yardOf({
        moulds,
        extra: [on('2027-04-10', '08:00', '09:54')],
        temperatures: [{ from: '2027-01-01', celsius: 30 }],
        orders: [order(2, '2027-04-10')],
      }),
    );
    expect(plan.batches).toHaveLength(2);
    expect(batchesOf(plan)[1]).toBe('04-10 08:46–09:08 1 bag');
    expect(poursOf(plan)[1]).toMatchObject({ fill: '04-10 08:56–09:03', strip: '04-10 09:46–09:54' });
    expect(plan.orders[0]).toMatchObject({ completesOn: '2027-04-10', daysLate: 0 });
  });
});

describe('a sealing coat is due', () => {
  // Five turns since the last coat, every five: due. Coat 10 -> 08:10, dry for 60 -> 09:10 set up 12 -> 09:22 mix -> 09:32
  // fill -> 09:39 wash out -> 09:44. Hard at 09:39 + 75 = 10:54: strip -> 11:02, the end of the session.
  const oil = { oilEveryTurns: 5, oilMinutes: 10, oilDryMinutes: 60 };
  const extra = [on('2027-04-10', '08:00', '11:02')];

  test('the mix waits until it is dry', () => {
    const plan = planned(yardOf({ extra, moulds: [mould('M1', { ...oil, turnsSinceOil: 5 })] }));
    expect(coatsOf(plan)).toEqual(['M1 04-10 08:00–08:10']);
    expect(batchesOf(plan)).toEqual(['04-10 09:22–09:44 1 bag']);
    expect(poursOf(plan)).toEqual([
      {
        mould: 'M1',
        prep: '04-10 09:10–09:22',
        fill: '04-10 09:32–09:39',
        strip: '04-10 10:54–11:02',
        ready: '04-10 11:02',
      },
    ]);
  });

  // With a minute less there is no Saturday plan. Coated and set up on Saturday, Wednesday: 18:00 mix -> 18:10 fill -> 18:17
  // wash out -> 18:22; hard at 19:32, strip -> 19:40, the end of that session. Setting up on Wednesday would be too late.
  test('coated on Saturday for Wednesday when Saturday is too short', () => {
    const plan = planned(
      yardOf({
        extra: [on('2027-04-10', '08:00', '11:01'), on('2027-04-14', '18:00', '19:40')],
        moulds: [mould('M1', { ...oil, turnsSinceOil: 5 })],
        orders: [order(1, '2027-04-14')],
      }),
    );
    expect(plan.coats.map(({ start }) => start.slice(0, 10))).toEqual(['2027-04-10']);
    expect(plan.orders[0]).toMatchObject({ completesOn: '2027-04-14', daysLate: 0 });
    expect(plan.pours[0]!.prepStart.slice(0, 10)).toBe('2027-04-10');
    expect(clock(plan.pours[0]!.stripEnd) <= '04-14 19:40').toBe(true);
  });

  // Saturday has the ten minutes of the coat and no more: it dries until Wednesday. 18:00 set up -> 18:12 mix -> 18:22 fill ->
  // 18:29 wash out -> 18:34; hard at 19:44, strip -> 19:52, the end of that session.
  test('coated in the last minutes of one session, set up in the next', () => {
    const yard = (end: string) =>
      yardOf({
        extra: [on('2027-04-10', '08:00', end), on('2027-04-14', '18:00', '19:52')],
        moulds: [mould('M1', { ...oil, turnsSinceOil: 5 })],
        orders: [order(1, '2027-04-14')],
      });
    const plan = planned(yard('08:10'));
    expect(coatsOf(plan)).toEqual(['M1 04-10 08:00–08:10']);
    expect(poursOf(plan)).toMatchObject([{ prep: '04-14 18:00–18:12', strip: '04-14 19:44–19:52' }]);
    expect(plan.orders[0]).toMatchObject({ completesOn: '2027-04-14', daysLate: 0 });
    // A minute less, and the coat has to wait for Wednesday: it is not dry before the session is over.
    expect(planned(yard('08:09')).orders).toEqual([]);
  });

  // Dirty and drying since a coat of this morning; 08:30 set up -> 08:42 mix -> 08:52 fill -> 08:59; hard at 10:14 -> 10:22.
  test('a mould that still dries is set up when it is dry', () => {
    const drying = mould('M1', { ...oil, turnsSinceOil: 0, dryFrom: '2027-04-10T08:30:00+01:00' });
    const plan = planned(yardOf({ extra: [on('2027-04-10', '08:00', '10:22')], moulds: [drying] }));
    expect(poursOf(plan)).toMatchObject([{ prep: '04-10 08:30–08:42', strip: '04-10 10:14–10:22' }]);
    expect(plan.coats).toEqual([]);
  });

  // Due, but set up already: it is poured first. 08:00 mix -> 08:10 fill -> 08:17; hard at 09:32 -> 09:40.
  test('a mould that is set up already is poured first', () => {
    const yard = yardOf({
      extra: [on('2027-04-10', '08:00', '09:40')],
      moulds: [mould('M1', { ...oil, turnsSinceOil: 5, prepped: true })],
    });
    expect(poursOf(planned(yard))).toMatchObject([{ prep: '04-10 08:00–08:00', strip: '04-10 09:32–09:40' }]);
  });
});

describe('someone has to stay to keep it wet', () => {
  // The mould is set up already: 08:00 mix -> 08:10 fill -> 08:17. The session ends at 09:00, 43 minutes later.
  const yard = (attendMinutes: number) =>
    yardOf({
      mixes: [{ ...mix, attendMinutes }],
      moulds: [mould('M1', { prepped: true })],
      extra: [
        on('2027-04-10', '08:00', '09:00'),
        on('2027-04-14', '18:00', '19:30'),
        on('2027-04-17', '08:00', '09:00'),
      ],
      orders: [order(1, '2027-04-14')],
    });

  // Hard at 08:17 + 75 = 09:32, after the session: stripped on Wednesday at 18:00, in time.
  test('43 minutes fit on Saturday', () => {
    const plan = planned(yard(43));
    expect(poursOf(plan)).toEqual([
      {
        mould: 'M1',
        prep: '04-10 08:00–08:00',
        fill: '04-10 08:10–08:17',
        strip: '04-14 18:00–18:08',
        ready: '04-14 18:08',
      },
    ]);
    expect(plan.orders[0]!.daysLate).toBe(0);
  });

  // Now no fill on Saturday can end by 08:16. Wednesday: 18:00 mix, fill by 18:17 at the soonest, hard at 19:32, after that
  // session: stripped on Saturday the 17th, three days late.
  test('44 minutes do not: it is poured on Wednesday', () => {
    const plan = planned(yard(44));
    expect(plan.pours[0]!.fillStart.slice(0, 10)).toBe('2027-04-14');
    expect(poursOf(plan)[0]!.strip.slice(0, 5)).toBe('04-17');
    expect(plan.orders[0]).toMatchObject({ completesOn: '2027-04-17', daysLate: 3 });
  });
});

describe('72 hours of cure over the night the clocks go forward', () => {
  // Saturday 27 March 2027, winter time: 08:00 set up -> 08:12 mix -> 08:22 fill -> 08:29; hard at 09:44, strip -> 09:52.
  // Cured 72 hours after the fill. Summer time begins on Sunday the 28th: Tuesday the 30th at 09:29, not 08:29.
  // Handed over on Mondays and Thursdays: Thursday 1 April. Wanted by Monday the 29th: 3 days late, weight 2 makes 6.
  test('ready on Tuesday 09:29 by the new clock, handed over on Thursday', () => {
    const plan = planned(
      yardOf(
        {
          mixes: [{ ...mix, cureHours: 72 }],
          extra: [on('2027-03-27', '08:00', '09:52')],
          orders: [{ ...order(1, '2027-03-29'), weight: 2 }],
        },
        { now: '2027-03-26T12:00:00+00:00', handoverDays: ['MO', 'TH'] },
      ),
    );
    expect(plan.pours[0]!.pieceReadyAt).toBe('2027-03-30T09:29:00+01:00');
    expect(plan.orders[0]).toMatchObject({
      completesAt: '2027-03-30T09:29:00+01:00',
      completesOn: '2027-04-01',
      daysLate: 3,
    });
    // Six days from Friday the 26th to Thursday, twice.
    expect(plan.score).toMatchObject({ weightedDaysLate: 6, weightedCompletionDays: 12 });
  });
});

describe('a strip for two', () => {
  // Alone until 10:00, two people for ten minutes. Filled at 08:29, hard at 09:44, but nobody to lift with: 10:00 -> 10:08.
  const castings = [{ ...panel, stripCrew: 2 }];

  test('waits for the second person', () => {
    const plan = planned(
      yardOf({ castings, extra: [on('2027-04-10', '08:00', '10:30'), on('2027-04-10', '10:00', '10:10')] }),
    );
    expect(poursOf(plan)).toEqual([
      {
        mould: 'M1',
        prep: '04-10 08:00–08:12',
        fill: '04-10 08:22–08:29',
        strip: '04-10 10:00–10:08',
        ready: '04-10 10:08',
      },
    ]);
  });

  test('cannot be made when the second person never stays for eight minutes', () => {
    const plan = planned(
      yardOf({ castings, extra: [on('2027-04-10', '08:00', '10:30'), on('2027-04-10', '10:00', '10:07')] }),
    );
    expect(plan.orders).toEqual([]);
    expect(plan.unplanned).toMatchObject([{ order: '27-001', cause: 'time' }]);
  });
});

describe('mortar that has to come first', () => {
  const mixes = [{ ...mix, perBag: [{ material: 'mortar', quantity: 1 }] }];
  const extra = [
    on('2027-04-10', '08:00', '09:40'),
    on('2027-04-14', '18:00', '19:40'),
    on('2027-04-17', '08:00', '09:40'),
  ];
  const mortar = { id: 'mortar', name: 'Mortar', unit: 'bag', onHand: 0 };

  // None in the yard on Saturday the 10th: all that can be done is to set up. A bag comes on Thursday the 15th. Saturday the
  // 17th: 08:00 mix -> 08:10 fill -> 08:17, hard at 09:32, strip -> 09:40, the end of the session. Seven days late.
  test('poured in the first session after it arrives', () => {
    const plan = planned(
      yardOf({ mixes, extra, materials: [mortar], incoming: [{ material: 'mortar', quantity: 1, on: '2027-04-15' }] }),
    );
    expect(batchesOf(plan)).toEqual(['04-17 08:00–08:22 1 bag']);
    expect(plan.orders[0]).toMatchObject({ completesAt: '2027-04-17T09:40:00+01:00', daysLate: 7 });
    expect(plan.buys).toEqual([]);
  });

  // Bought with 7 days to wait: ordered on Monday the 5th it comes on Monday the 12th; the first session then is Wednesday
  // the 14th, 18:00 mix -> 18:17, hard at 19:32, strip -> 19:40. So it is enough to order on Wednesday the 7th, and ordering
  // sooner would be early (R10). Sold in twos.
  test('ordered as late as it still comes in time', () => {
    const plan = planned(yardOf({ mixes, extra, materials: [{ ...mortar, leadDays: 7, pack: 2 }] }));
    expect(poursOf(plan)[0]!.strip).toBe('04-14 19:32–19:40');
    expect(plan.buys).toEqual([{ material: 'mortar', quantity: 2, orderBy: '2027-04-07', arrivesOn: '2027-04-14' }]);
    expect(plan.orders[0]).toMatchObject({ completesOn: '2027-04-14', daysLate: 4 });
  });
});

describe('a rack of one space, two moulds, three pieces', () => {
  // 48 hours of cure. Saturday: 08:00 set up, 08:12 set up, 08:24 mix -> 08:34 fill -> 08:41 fill -> 08:48 wash out -> 08:53.
  // The first is hard at 09:56: strip -> 10:04, on the rack until Monday 08:41. Its mould again: 10:04 clean and set up ->
  // 10:22 mix -> 10:32 fill -> 10:39 wash out -> 10:44, the end of the session. The other mould, hard at 10:03, cannot be
  // stripped: the rack is full. Wednesday 18:00: both are long cured and take no space, strip -> 18:08 -> 18:16.
  test('one piece cures on the rack, two in their moulds', () => {
    const plan = planned(
      yardOf(
        {
          mixes: [{ ...mix, cureHours: 48 }],
          moulds: [mould('M1'), mould('M2')],
          extra: [on('2027-04-10', '08:00', '10:44'), on('2027-04-14', '18:00', '18:16')],
          orders: [order(3, '2027-04-14')],
        },
        { rackSpaces: 1 },
      ),
    );
    expect(batchesOf(plan)).toEqual(['04-10 08:24–08:53 1 bag', '04-10 10:22–10:44 1 bag']);
    const [first, second, third] = poursOf(plan);
    expect(first).toMatchObject({ fill: '04-10 08:34–08:41', strip: '04-10 09:56–10:04', ready: '04-12 08:41' });
    expect(third).toMatchObject({ mould: first!.mould, prep: '04-10 10:04–10:22', fill: '04-10 10:32–10:39' });
    expect([second!.strip, third!.strip].sort()).toEqual(['04-14 18:00–18:08', '04-14 18:08–18:16']);
    expect(plan.orders[0]).toMatchObject({ completesAt: '2027-04-14T18:16:00+01:00', daysLate: 0 });
  });
});

describe('what one batch fills', () => {
  // "A batch fills 1.83 m (72 in) of thin panel 200 mm high: two 0.91 m (36 in) panels, or one 1.22 m (48 in) and one 0.61 m
  // (24 in)", 13.6 kg for 0.91 m: common practice, no source. Mass goes by length.
  const lengthsIn = [36, 48, 24];
  const kgPerIn = 13.6 / 36;
  const castings = lengthsIn.map((x) => ({ ...panel, id: `panel-${x}`, kg: x * kgPerIn, fillMinutes: 6 }));
  const mixes = [{ ...mix, yieldKgPerBag: 72 * kgPerIn, maxBags: 1 }];
  const setUp = (id: string, length: number) =>
    mould(id, { makes: [{ casting: `panel-${length}` }], setFor: `panel-${length}`, prepped: true });
  // All moulds are set up and the working time of 20 minutes takes three fills of 6: nothing but the mass limits a batch.
  const batchesFor = (lengths: number[]) => {
    const moulds = lengths.map((length, i) => setUp(`M${i + 1}`, length));
    const lines = lengths.map((length) => ({ casting: `panel-${length}`, quantity: 1 }));
    const yard = yardOf({
      castings,
      mixes,
      moulds,
      extra: [on('2027-04-10', '08:00', '12:00')],
      orders: [{ id: '27-001', lines }],
    });
    const plan = planned(yard);
    expect(plan.pours).toHaveLength(lengths.length);
    return plan.batches.map((b) => `${b.pours.length} pieces, ${b.bags} bag`).sort();
  };

  test('two of 0.91 m', () => expect(batchesFor([36, 36])).toEqual(['2 pieces, 1 bag']));
  test('one of 1.22 m and one of 0.61 m', () => expect(batchesFor([48, 24])).toEqual(['2 pieces, 1 bag']));
  test('not three of 0.91 m', () => expect(batchesFor([36, 36, 36])).toEqual(['1 pieces, 1 bag', '2 pieces, 1 bag']));
  test('three of 0.61 m', () => expect(batchesFor([24, 24, 24])).toEqual(['3 pieces, 1 bag']));
});
