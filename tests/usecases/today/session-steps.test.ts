import { describe, expect, test } from 'vitest';
import { dayNumber } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { sessionsOfDay } from '../../../src/usecases/plan/hours-of-day.ts';
import type { SessionStep } from '../../../src/usecases/today/session-step.ts';
import { sessionSteps } from '../../../src/usecases/today/session-steps.ts';
import type { Waters } from '../../../src/usecases/yard/mix-water.ts';
import { handPlan, plannedYard, saturday } from '../../support/planned-yard.ts';

const DAY = dayNumber('2027-04-10');
const WATERS: Waters = new Map([['thin', { litres: 4.7, note: null }]]);
const steps = (yard: YardFile = plannedYard(), plan = handPlan()): SessionStep[] =>
  sessionSteps(plan, yard, sessionsOfDay(yard, DAY)[0]!, { system: 'metric', waters: WATERS });
const only = <K extends SessionStep['kind']>(kind: K, list: SessionStep[]) =>
  list.filter((step): step is Extract<SessionStep, { kind: K }> => step.kind === kind);

describe('the steps of a session', () => {
  test('come in order of time, to the minute, from setting up to clearing up', () => {
    expect(steps().map(({ kind, at, until }) => [kind, at.slice(11, 16), until.slice(11, 16)])).toEqual([
      ['set up', '08:00', '08:10'],
      ['prep', '08:10', '08:22'],
      ['coat', '08:22', '08:33'],
      ['prep', '08:53', '09:05'],
      ['batch', '09:05', '09:29'],
      ['strip', '10:37', '10:45'],
      ['strip', '10:44', '10:52'],
      ['pack', '10:52', '10:57'],
      ['clear up', '11:45', '12:00'],
    ]);
  });

  test('leave out setting up and clearing up where the yard has none, and a prep that takes no time', () => {
    const base = plannedYard();
    const yard = { ...base, yard: { ...base.yard, setUpMinutes: 0, clearUpMinutes: 0 } };
    const plan = handPlan();
    plan.pours[0]!.prepEnd = plan.pours[0]!.prepStart;
    expect(steps(yard, plan).map(({ kind }) => kind)).toEqual(['coat', 'prep', 'batch', 'strip', 'strip', 'pack']);
  });
});

describe('coating a mould', () => {
  test('says whether it is cleaned first, and until when the coat dries', () => {
    expect(only('coat', steps())).toMatchObject([
      {
        ...{ kind: 'coat', at: saturday('08:22'), until: saturday('08:33'), mould: '900 no. 2' },
        ...{ clean: true, waits: false, dryFrom: saturday('08:53') },
      },
    ]);
    const moulds = plannedYard().moulds.map((mould) => ({ ...mould, condition: 'ready' as const }));
    expect(only('coat', steps(plannedYard({ moulds })))[0]).toMatchObject({ clean: false });
  });

  test('waits while a piece is in it', () => {
    const inMould = [{ mould: '900 no. 2', casting: 'panel-900', filledAt: '2027-04-08T08:00:00+01:00' }];
    expect(only('coat', steps(plannedYard({ inMould })))[0]).toMatchObject({ clean: true, waits: true });
  });
});

describe('setting a mould up', () => {
  test('says whether it is cleaned, and whether its coat is not written down yet', () => {
    const shown = (plan = handPlan()) =>
      only('prep', steps(plannedYard(), plan)).map(({ mould, clean, sealed }) => ({ mould, clean, sealed }));
    expect(shown()).toEqual([
      { mould: '900 no. 1', clean: false, sealed: false },
      { mould: '900 no. 2', clean: false, sealed: true },
    ]);
    expect(shown({ ...handPlan(), coats: [] })[1]).toMatchObject({ sealed: false });
  });

  test('includes cleaning after the turn before it, and while a piece is in it', () => {
    const plan = handPlan();
    const again = { ...plan.pours[0]!, id: 'P3', prepStart: saturday('11:00'), prepEnd: saturday('11:18') };
    plan.pours.push(again);
    expect(only('prep', steps(plannedYard(), plan)).at(-1)).toMatchObject({
      mould: '900 no. 1',
      clean: true,
      waits: true,
    });
    const inMould = [{ mould: '900 no. 1', casting: 'panel-900', filledAt: '2027-04-08T08:00:00+01:00' }];
    expect(only('prep', steps(plannedYard({ inMould })))[0]).toMatchObject({
      mould: '900 no. 1',
      clean: true,
      waits: true,
    });
  });

  test('includes changing over, from what it was set for and from what it made before', () => {
    const base = plannedYard();
    const short = { ...base.castings[0]!, id: 'panel-600', name: 'Panel 600' };
    const makes = [{ casting: 'panel-900' }, { casting: 'panel-600', changeMinutes: 9 }];
    const yard = plannedYard({
      castings: [...base.castings, short],
      moulds: [{ ...base.moulds[0]!, makes, setFor: 'panel-600' }, base.moulds[1]!],
    });
    const plan = handPlan();
    plan.pours.push({
      ...plan.pours[0]!,
      id: 'P3',
      casting: 'panel-600',
      prepStart: saturday('11:00'),
      prepEnd: saturday('11:27'),
    });
    const preps = only('prep', steps(yard, plan)).filter(({ mould }) => mould === '900 no. 1');
    expect(preps.map(({ changeFrom }) => changeFrom)).toEqual(['Panel 600', 'Panel 900']);
  });
});

describe('a batch', () => {
  test('says what goes into it and into the moulds, whose each pour is, and how long it can be worked', () => {
    expect(only('batch', steps())[0]).toMatchObject({
      mix: 'Thin panel mix',
      bags: 1,
      ingredients: [{ name: 'Fast-setting mortar', unit: 'bag', quantity: 1, measured: null }],
      water: '4.7 l',
      waterNote: null,
      fittings: [{ name: 'Mesh', unit: 'm2', quantity: 0.32 }],
      // Mixed at 9:15, worked for 20 minutes.
      usableUntil: saturday('09:35'),
      wetUntil: null,
      pours: [
        { mould: '900 no. 1', piece: 'Panel 900', customer: 'School garden', sealed: false },
        { mould: '900 no. 2', piece: 'Panel 900', customer: null, sealed: true },
      ],
    });
  });

  test('of several bags is measured out for all of them, in the units of the yard', () => {
    const base = plannedYard();
    const acid = { id: 'acid', name: 'Citric acid', unit: 'kg', onHand: 5 };
    const perBag = [...base.mixes[0]!.perBag, { material: 'acid', quantity: 0.057 }];
    const yard = plannedYard({
      materials: [...base.materials, acid],
      mixes: [{ ...base.mixes[0]!, maxBags: 2, perBag }],
    });
    const plan = handPlan();
    plan.batches[0]!.bags = 2;
    const session = sessionsOfDay(yard, DAY)[0]!;
    const batchIn = (system: 'metric' | 'US', waters = WATERS) =>
      only('batch', sessionSteps(plan, yard, session, { system, waters }))[0]!;
    // 57 g are 2.0106 oz, 9.4 l 317.85 fl oz: by definition 1 lb = 0.45359237 kg, 1 US qt = 0.946352946 l = 32 fl oz.
    expect(batchIn('metric')).toMatchObject({ water: '9.4 l', ingredients: [{}, { measured: '115 g' }] });
    expect(batchIn('US')).toMatchObject({ water: '10 qt less 2 fl oz', ingredients: [{}, { measured: '4 oz' }] });
    const noted: Waters = new Map([['thin', { litres: null, note: 'Until it flows' }]]);
    expect(batchIn('metric', noted)).toMatchObject({ water: null, waterNote: 'Until it flows' });
    expect(batchIn('metric', new Map())).toMatchObject({ water: null, waterNote: null });
  });

  test('knows of a sealing coat that was due, in a plan made while the mould was being set up', () => {
    const plan = handPlan();
    plan.coats = [];
    plan.pours[1] = { ...plan.pours[1]!, prepStart: saturday('09:05'), prepEnd: saturday('09:05') };
    expect(only('batch', steps(plannedYard(), plan))[0]?.pours.map(({ sealed }) => sealed)).toEqual([false, true]);
  });

  test('counts equal lengths to cut together, and is kept wet after the last fill', () => {
    const base = plannedYard();
    const yard = plannedYard({
      mixes: [{ ...base.mixes[0]!, attendMinutes: 60 }],
      castings: [{ ...base.castings[0]!, cuts: [{ material: 'rod', lengthMm: 190, count: 2 }] }],
    });
    expect(only('batch', steps(yard))[0]).toMatchObject({
      cuts: [{ name: 'Rod 12 mm', length: '190 mm', count: 4, from: [] }],
      wetUntil: saturday('10:29'),
    });
  });

  test('names the sticks at each set-up, in the order in which its pieces are filled', () => {
    const base = plannedYard();
    const yard = plannedYard({
      castings: [{ ...base.castings[0]!, cuts: [{ material: 'rod', lengthMm: 190, count: 2 }] }],
    });
    const rod = { material: 'rod', openedAt: saturday('08:10') };
    const sticks = [
      { ...rod, cuts: [{ lengthMm: 190, count: 3, for: 'B1' }] },
      { ...rod, offcutMm: 400, cuts: [{ lengthMm: 190, count: 1, for: 'B1' }] },
    ];
    expect(only('prep', steps(yard, { ...handPlan(), sticks })).map(({ cuts }) => cuts[0]?.from)).toEqual([
      [{ offcut: null, count: 2, sticks: 1 }],
      [
        { offcut: null, count: 1, sticks: 1 },
        { offcut: '400 mm', count: 1, sticks: 1 },
      ],
    ]);
  });
});

describe('a strip', () => {
  test('says from when it may be done, which may be before it is planned', () => {
    expect(only('strip', steps()).map(({ mould, mayFrom, inMould }) => [mould, mayFrom, inMould])).toEqual([
      ['900 no. 1', saturday('10:37'), false],
      ['900 no. 2', saturday('10:44'), false],
    ]);
  });

  test('of a piece that is in its mould already counts from when it was full', () => {
    const yard = plannedYard({
      inMould: [{ mould: '900 no. 1', casting: 'panel-900', filledAt: '2027-04-08T08:00:00+01:00' }],
    });
    const plan = handPlan();
    plan.strips = [
      {
        mould: '900 no. 1',
        stripStart: saturday('08:10'),
        stripEnd: saturday('08:18'),
        pieceReadyAt: saturday('08:18'),
      },
    ];
    expect(only('strip', steps(yard, plan))[0]).toMatchObject({
      customer: null,
      mayFrom: '2027-04-08T09:15:00+01:00',
      inMould: true,
    });
  });

  test('is later when it is cold', () => {
    // At 10 °C an hour and a quarter of age takes 75 / 0.5475 minutes (factor of ASTM C1074, Q 5000 K, Ts 20 °C).
    const yard = plannedYard({ temperatures: [{ from: '2027-04-01', celsius: 10 }] });
    expect(only('strip', steps(yard))[0]?.mayFrom).toBe(saturday('11:39'));
  });
});

test('packing says what is in the parcel and what is cut for it', () => {
  expect(only('pack', steps())[0]).toMatchObject({
    order: '27-001',
    customer: 'School garden',
    contents: [{ name: 'Pair of panels', quantity: 1 }],
    cuts: [{ name: 'Rod 12 mm', length: '300 mm', count: 2, from: [{ offcut: null, count: 2, sticks: 1 }] }],
  });
});
