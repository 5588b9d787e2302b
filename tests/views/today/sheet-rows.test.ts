import { describe, expect, test } from 'vitest';
import type {
  BatchStep,
  CoatStep,
  PrepStep,
  SessionStep,
  StripStep,
} from '../../../src/usecases/today/session-step.ts';
import { sheetRecipes, sheetRows, sheetTurns } from '../../../views/today/sheet-rows.ts';

const at = (clock: string) => `2027-04-10T${clock}:00+01:00`;
const prep = (clock: string, mould: string, rest: Partial<PrepStep> = {}): PrepStep => ({
  ...{ kind: 'prep', name: clock, at: at(clock), until: at(clock), mould, casting: 'panel-900', piece: 'Panel 900' },
  ...{ clean: false, sealed: false, changeFrom: null, fittings: [], cuts: [], waits: false, ...rest },
});
const coat = (clock: string, mould: string, rest: Partial<CoatStep> = {}): CoatStep => ({
  ...{ kind: 'coat', name: clock, at: at(clock), until: at(clock), mould, clean: false, dryFrom: at(clock) },
  ...{ waits: false, ...rest },
});
const strip = (clock: string, mould: string, customer: string | null = null): StripStep => ({
  ...{
    kind: 'strip',
    name: clock,
    lift: null,
    pieceKey: mould,
    at: at(clock),
    until: at(clock),
    mould,
    piece: 'Panel 900',
    customer,
  },
  ...{ mayFrom: at(clock), people: 1, inMould: true },
});
const batch = (clock: string, moulds: string[], customer: string | null = null): BatchStep => ({
  ...{ kind: 'batch', name: clock, at: at(clock), until: at(clock), mixEnd: at(clock), mix: 'Panel mix', bags: 1 },
  ...{
    ingredients: [],
    water: '4.7 l',
    waterNote: null,
    fittings: [],
    cuts: [],
    usableUntil: at('09:44'),
    waits: false,
    wetUntil: null,
    ...{ people: 1, leftOver: null, coldNights: null, drying: null },
  },
  pours: moulds.map((mould) => ({
    ...{ mould, casting: 'panel-900', piece: 'Panel 900', sealed: false, order: null, customer },
    ...{ at: at(clock), until: at(clock) },
  })),
});

describe('the lines of the sheet', () => {
  test('moulds set up one after another share a line, also those stripped', () => {
    const steps: SessionStep[] = [
      ...[strip('08:02', '900 no. 1', 'School garden'), strip('08:10', '900 no. 2')],
      ...[prep('08:20', '900 no. 1', { clean: true }), prep('08:38', '900 no. 2', { changeFrom: 'Panel 600' })],
    ];
    // A strip is never written earlier than it may be done: 8:02 is 8:05.
    expect(sheetRows(steps, [])).toEqual([
      { at: '8:05', work: 'Strip', what: ['900 no. 1 (for School garden)', '900 no. 2'], begun: null },
      { at: '8:20', work: 'Set up', what: ['900 no. 1 (to clean)', '900 no. 2 (for Panel 900)'], begun: null },
    ]);
  });

  test('minutes to keep pieces wet are a line in its time', () => {
    const steps = [strip('08:00', '900 no. 1'), prep('08:20', '900 no. 1'), prep('08:38', '900 no. 2')];
    const wet = { start: at('08:20'), end: at('08:30') };
    expect(sheetRows(steps, [], wet).map((row) => [row.at, row.work, ...row.what])).toEqual([
      ['8:00', 'Strip', '900 no. 1'],
      ['8:20', 'Keep wet', 'what is out of its mould'],
      ['8:20', 'Set up', '900 no. 1', '900 no. 2'],
    ]);
    expect(sheetRows(steps, [])).toHaveLength(2);
  });

  test('moulds coated share a line too, each with when it is dry', () => {
    const steps = [
      coat('08:20', '900 no. 1', { clean: true, dryFrom: at('09:05') }),
      coat('08:30', '900 no. 2', { dryFrom: at('09:15') }),
      coat('08:40', '900 no. 3'),
    ];
    const what = ['900 no. 1 (to clean, dry at 9:05)', '900 no. 2 (dry at 9:15)', '900 no. 3'];
    expect(sheetRows(steps, [])).toEqual([{ at: '8:20', work: 'Coat', what, begun: null }]);
  });

  test('each mix has its own line, with by when it has to be poured; one like the others is said once on top', () => {
    const more = { ...batch('10:00', ['900 no. 4']), bags: 2, water: '9.4 l' };
    const steps = [batch('09:00', ['900 no. 1', '900 no. 2']), batch('09:30', ['900 no. 3'], 'Quinn'), more];
    expect(sheetRecipes(steps)).toEqual([{ mix: 'Panel mix', slip: '1 bag, 4.7 l water' }]);
    expect(sheetRows(steps, []).map(({ what }) => what)).toEqual([
      ['Panel mix as on top. Pour by 9:40:', '900 no. 1', '900 no. 2'],
      ['Panel mix as on top. Pour by 9:40:', '900 no. 3 (for Quinn)'],
      ['Panel mix: 2 bags, 9.4 l water. Pour by 9:40:', '900 no. 4'],
    ]);
  });

  test('a mix that is made once says in its line what goes in', () => {
    const steps = [batch('09:00', ['900 no. 1'])];
    expect(sheetRecipes(steps)).toEqual([]);
    expect(sheetRows(steps, [])[0]?.what[0]).toBe('Panel mix: 1 bag, 4.7 l water. Pour by 9:40:');
  });

  test('one that is under way stands by itself, and says until when', () => {
    const steps = [prep('08:00', 'a'), { ...prep('08:10', 'b'), until: at('08:21') }, prep('08:20', 'c')];
    expect(sheetRows(steps, ['08:10']).map(({ what, begun }) => [what, begun])).toEqual([
      [['a'], null],
      [['b'], 'Under way until 8:25'],
      [['c'], null],
    ]);
  });

  test('the times stay in order where work alternates', () => {
    const rows = sheetRows([prep('08:00', 'a'), batch('08:15', ['a']), prep('08:40', 'b')], []);
    expect(rows.map(({ at: from, work }) => `${from} ${work}`)).toEqual(['8:00 Set up', '8:15 Mix', '8:40 Set up']);
  });
});

test('the turns of each mould, in the order of the first', () => {
  const steps = [batch('09:00', ['b', 'a']), batch('11:00', ['a']), prep('08:00', 'c')];
  expect(sheetTurns(steps)).toEqual([
    { mould: 'b', turns: ['9:00'] },
    { mould: 'a', turns: ['9:00', '11:00'] },
  ]);
});
