import { describe, expect, test } from 'vitest';
import type { SessionHours } from '../../../src/usecases/today/hours-facts.ts';
import type {
  BatchStep,
  CoatStep,
  PrepStep,
  SessionStep,
  StripStep,
} from '../../../src/usecases/today/session-step.ts';
import type { TodayModel } from '../../../src/usecases/today/today-model.ts';
import {
  coatText,
  cutText,
  dryText,
  mayText,
  peopleText,
  prepText,
  stepText,
  todayAnswer,
  todayNote,
  toHaveReady,
  workText,
} from '../../../views/today/today-text.ts';

const at = (clock: string, date = '2027-04-10') => `${date}T${clock}:00+01:00`;
const window = (start: string, end: string, crew = 1) => ({ start: at(start), end: at(end), crew });
const session: SessionHours = {
  date: '2027-04-10',
  start: at('08:00'),
  end: at('13:30'),
  windows: [window('08:00', '13:30')],
};
const prep: PrepStep = {
  name: 'a',
  ...{
    kind: 'prep',
    at: at('08:10'),
    until: at('08:22'),
    mould: '900 no. 1',
    casting: 'panel-900',
    piece: 'Panel 900',
  },
  ...{ clean: false, sealed: false, changeFrom: null, fittings: [], cuts: [], waits: false },
};
const pour = {
  mould: '900 no. 1',
  casting: 'p',
  piece: 'P',
  sealed: false,
  order: null,
  customer: null,
  at: at('09:15'),
  until: at('09:22'),
};
const batch: BatchStep = {
  name: 'b',
  ...{
    kind: 'batch',
    at: at('09:04'),
    until: at('09:29'),
    mixEnd: at('09:15'),
    mix: 'Thin',
    bags: 1,
    usableUntil: at('09:35'),
  },
  ...{
    ingredients: [{ name: 'Mortar', unit: 'bag', quantity: 1, measured: null }],
    ...{ water: null, waterNote: null },
    fittings: [{ name: 'Mesh', unit: 'm2', quantity: 0.3 }],
  },
  ...{
    people: 1,
    leftOver: null,
    coldNights: null,
    drying: null,
    cuts: [],
    wetUntil: null,
    pours: [pour, { ...pour, mould: '900 no. 2' }],
    waits: false,
  },
};
const strip: StripStep = {
  ...{
    kind: 'strip',
    name: 'c',
    lift: null,
    pieceKey: 'piece',
    at: at('10:37'),
    until: at('10:45'),
    mould: '900 no. 1',
    piece: 'P',
    customer: null,
  },
  ...{ mayFrom: at('10:37'), people: 1, inMould: true },
};
const model = (changes: Partial<TodayModel>): TodayModel => ({
  ...{
    yardName: 'Yard',
    today: '2027-04-10',
    ...{ now: at('09:00'), clock: at('09:00'), setting: [] },
    ...{ revision: 0, part: { list: '', from: 0 } },
    session,
    underWay: false,
    fixed: { hours: 24, session: null },
    idle: null,
    ...{ steps: [prep, batch, strip], people: [], recipes: [], evening: null },
    begun: [],
    late: [],
    waiting: [],
    ...{ warmth: null, rain: null },
  },
  ...{
    lastMix: [],
    otherFull: [],
    toLeave: [],
    ...{ hardOtherwise: [], spares: [] },
    overdue: [],
    toCome: [],
    emptyMoulds: [],
    ...{ toCount: [], toBeMended: [], notArrived: [] },
    orders: [],
    packed: [],
    packedInPart: [],
    toPack: {},
    toMend: [],
    wetCures: [],
    done: [],
    hoursChanged: [],
  },
  ...changes,
});

/** A session of which nothing is recorded. */
const lateOf = (date: string) => ({
  ...{ session: date, date, hours: null },
  lines: [batch, strip].map((step) => ({ name: step.kind, step })),
});

const begun = (step: SessionStep) => [{ name: step.kind, step }];

describe('the first line', () => {
  test.each<[Partial<TodayModel>, string]>([
    [{}, 'Today, 8:00 to 13:30: pour 2 pieces and strip 1.'],
    [{ today: '2027-04-08' }, 'Next session Sat 10 Apr, 8:00 to 13:30: pour 2 pieces and strip 1.'],
    [{ underWay: true, now: at('08:05') }, 'Next, 8:10: set up 900 no. 1.'],
    // What is over by the clock is no longer next.
    [{ underWay: true }, 'Next, 9:05: mix 1 bag for 900 no. 1 and 900 no. 2.'],
    [{ underWay: true, now: at('13:00') }, 'To be recorded: pour 2 pieces and strip 1.'],
    [{ underWay: true, steps: [batch] }, 'Next, 9:05: mix 1 bag for 900 no. 1 and 900 no. 2.'],
    [{ underWay: true, steps: [strip] }, 'Next, 10:40: strip 900 no. 1.'],
    [{ underWay: true, now: at('08:15'), begun: begun(prep) }, 'Under way until 8:25: set up 900 no. 1.'],
    [{ underWay: true, now: at('08:05'), begun: begun(batch) }, 'Next, 8:10: set up 900 no. 1.'],
    [{ steps: [], begun: begun(strip) }, 'Under way until 10:45: strip 900 no. 1.'],
    [{ session: null, steps: [] }, 'No session has anything to do.'],
    [{ late: [lateOf('2027-04-10')] }, 'To be recorded: pour 2 pieces and strip 1.'],
    [{ late: [lateOf('2027-04-03')] }, 'To be recorded, of Sat 3 Apr: pour 2 pieces and strip 1.'],
    [
      { late: [lateOf('2027-04-03'), lateOf('2027-04-10')] },
      'To be recorded, of 2 sessions: pour 4 pieces and strip 2.',
    ],
    [{ late: [lateOf('2027-04-03')], underWay: true, now: at('08:05') }, 'Next, 8:10: set up 900 no. 1.'],
    [{ steps: [prep] }, 'Today, 8:00 to 13:30: set up 1 mould.'],
  ])('%#', (changes, text) => {
    expect(todayAnswer(model(changes))).toBe(text);
  });
});

test('the line below it names who is there, the last mix, and hours without work', () => {
  expect(todayNote(model({ lastMix: [{ mix: 'Thin', at: at('11:44') }] }))).toBe(
    '1 person. Last mix of Thin by 11:40.',
  );
  const idle = { ...session, start: at('07:00'), end: at('07:30') };
  expect(todayNote(model({ today: '2027-04-09', idle }))).toBe(
    "Nothing is planned for today's hours, 7:00 to 7:30. Sat 10 Apr: 1 person.",
  );
});

describe('who is there', () => {
  test.each([
    [[window('08:00', '13:30', 2)], '2 people'],
    [[window('08:00', '13:30'), window('09:00', '12:30')], '1 person, 1 more from 9:00 to 12:30'],
    [[window('08:00', '10:00'), window('10:00', '13:30', 2)], '1 from 8:00 to 10:00, 2 from 10:00 to 13:30'],
  ])('%#', (windows, text) => {
    expect(peopleText({ ...session, windows })).toBe(text);
  });
});

test('what is done to a mould, in order', () => {
  expect(prepText(prep)).toBe('set it up for Panel 900');
  expect(prepText({ ...prep, clean: true, changeFrom: 'Panel 1200' })).toBe(
    'clean it, change it over from Panel 1200 and set it up for Panel 900',
  );
});

test('a coat, and until when it dries', () => {
  const coat: CoatStep = {
    ...{ kind: 'coat', name: 'c', at: at('18:20'), until: at('18:36'), mould: '900 no. 3', clean: true, waits: false },
    dryFrom: at('19:40'),
  };
  expect(coatText(coat)).toBe('Clean and coat 900 no. 3');
  expect(coatText({ ...coat, clean: false })).toBe('Coat 900 no. 3');
  expect(dryText(coat)).toBe('The coat dries until 19:40. The mould is set up after that.');
  expect(dryText({ ...coat, dryFrom: at('07:30', '2027-04-11') })).toBe(
    'The coat dries until Sun 11 Apr, 7:30. The mould is set up after that.',
  );
  // Never before it is dry: 19:41 is 19:45.
  expect(dryText({ ...coat, dryFrom: at('19:41') })).toContain('until 19:45.');
  expect(dryText({ ...coat, dryFrom: coat.until })).toBe('It can be set up at once.');
  expect(stepText(coat)).toBe('clean and coat 900 no. 3');
  expect(workText([coat])).toBe('coat 1 mould');
  expect(workText([coat, prep, coat])).toBe('coat 2 moulds and set up 1 mould');
});

test('when a piece may be stripped', () => {
  const now = at('09:00');
  expect(mayText(at('08:59'), { today: '2027-04-10', now })).toBe('May be stripped now');
  expect(mayText('2127-04-10T10:41:00+01:00', { today: '2027-04-10', now })).toBe('It is too cold for it to set');
  expect(mayText(at('10:41'), { today: '2027-04-10', now })).toBe('May be stripped from 10:45');
  expect(mayText(at('07:31', '2027-04-11'), { today: '2027-04-10', now })).toBe(
    'May be stripped from Sun 11 Apr, 7:35',
  );
});

test('amounts of all mixes are added up', () => {
  expect(toHaveReady([batch, prep, batch])).toEqual([
    { name: 'Mortar', unit: 'bag', quantity: 2 },
    { name: 'Mesh', unit: 'm2', quantity: 0.6 },
  ]);
  expect(workText([batch, batch, strip])).toBe('pour 4 pieces and strip 1');
});

test('what is measured is fetched to a tenth, never too little', () => {
  const fitting = (quantity: number, unit: string) => ({
    ...batch,
    ingredients: [],
    fittings: [{ name: 'Mesh', unit, quantity }],
  });
  expect(toHaveReady([fitting(11.02, 'oz'), fitting(0.04, 'oz')])).toMatchObject([{ quantity: 11.1 }]);
  expect(toHaveReady([fitting(0.1, 'm2'), fitting(0.2, 'm2')])).toMatchObject([{ quantity: 0.3 }]);
  expect(toHaveReady([fitting(2.25, 'bag')])).toMatchObject([{ quantity: 2.25 }]);
});

test('what is cut says what it is cut from', () => {
  const pins = { name: 'Rod', length: '300 mm', count: 6 };
  const from = (offcut: string | null, count: number, sticks = 1) => ({ offcut, count, sticks });
  expect(cutText({ ...pins, from: [] })).toBe('6 × 300 mm of Rod');
  expect(cutText({ ...pins, from: [from(null, 6)] })).toBe('6 × 300 mm of Rod, from a whole one');
  expect(cutText({ ...pins, from: [from('2232 mm', 6)] })).toBe('6 × 300 mm of Rod, from an offcut of 2232 mm');
  expect(cutText({ ...pins, from: [from('635 mm', 2, 2), from(null, 4, 2)] })).toBe(
    '6 × 300 mm of Rod: 2 from 2 offcuts of 635 mm, 4 from 2 whole ones',
  );
});
