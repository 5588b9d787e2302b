import { describe, expect, test } from 'vitest';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile, YardFileInput } from '../../../shared/yard-file.ts';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { NONE } from '../../../src/engine/decoder/problem.ts';
import { smallYard } from '../../support/small-yard.ts';

type Keep = NonNullable<YardFileInput['keep']>;
const base = smallYard();
const saturday = (clock: string) => `2027-04-10T${clock}:00+01:00`;
const minute = (clock: string) => minuteOf(saturday(clock));

const pour = (no: number, prep: [string, string], fill: [string, string]): Keep['pours'][number] => ({
  id: `P${no}`,
  batch: 'B1',
  mould: `900 no. ${no}`,
  casting: 'panel-900',
  order: '27-001',
  prepStart: saturday(prep[0]),
  prepEnd: saturday(prep[1]),
  fillStart: saturday(fill[0]),
  fillEnd: saturday(fill[1]),
  stripStart: saturday('11:00'),
  stripEnd: saturday('11:08'),
  pieceReadyAt: saturday('11:08'),
});

/** Set up 08:00 and 08:12, mix 08:24, fill 08:34 and 08:41 to 08:48. */
const keep: Keep = {
  batches: [
    {
      id: 'B1',
      mix: 'thin',
      start: saturday('08:24'),
      mixEnd: saturday('08:34'),
      end: saturday('08:48'),
      bags: 1,
      kg: 27.2,
      pours: ['P1', 'P2'],
    },
  ],
  pours: [pour(1, ['08:00', '08:12'], ['08:34', '08:41']), pour(2, ['08:12', '08:24'], ['08:41', '08:48'])],
};
const keptIn = (changes: Partial<YardFileInput>) => compile(smallYard({ keep, ...changes })).fixed;
const reason = (changes: Partial<YardFileInput>) => {
  const { batches, dropped } = keptIn(changes);
  expect(batches.length + dropped.length).toBe(1);
  return dropped[0]?.reason ?? 'fixed';
};
const firstMould = (more: Partial<YardFileInput['moulds'][number]>) => ({
  moulds: [{ ...base.moulds[0]!, ...more }, base.moulds[1]!],
});
const mix = (more: Partial<YardFileInput['mixes'][number]>) => ({ mixes: [{ ...base.mixes[0]!, ...more }] });
const casting = (more: Partial<YardFileInput['castings'][number]>) => ({
  castings: [{ ...base.castings[0]!, ...more }],
});
const inFirst = (filledAt: string) => ({ inMould: [{ mould: '900 no. 1', casting: 'panel-900', filledAt }] });

describe('a fixed batch', () => {
  test('stays as it was where nothing has changed', () => {
    const [batch] = keptIn({}).batches;
    expect(batch).toMatchObject({ id: 'B1', mix: 0, start: minute('08:24'), minutes: 24, bags: 1 });
    expect(batch!.kg).toBeCloseTo(27.2);
    expect(batch!.pours.map((p) => [p.id, p.mould, p.prepStart, p.prepMinutes, p.fillStart, p.stripFirst])).toEqual([
      ['P1', 0, minute('08:00'), 12, minute('08:34'), NONE],
      ['P2', 1, minute('08:12'), 12, minute('08:41'), NONE],
    ]);
  });

  test('a yard without fixed batches keeps nothing', () => {
    expect(compile(base).fixed).toMatchObject({ batches: [], strips: [], packs: [], preps: [], dropped: [] });
  });

  const name = '900 no. 1';
  const isWinter = [{ from: '2027-01-01', celsius: 4 }];
  test.each<[string, Partial<YardFileInput>]>([
    [`mould ${name} is out of use`, firstMould({ condition: 'retired' })],
    [`mould ${name} is out of use`, firstMould({ condition: 'damaged' })],
    [`mould ${name} is not free by then`, firstMould({ condition: 'damaged', repairedOn: '2027-04-11' })],
    [`setting up mould ${name} takes another time now`, firstMould({ condition: 'dirty' })],
    [`setting up mould ${name} takes another time now`, firstMould({ prepped: true })],
    [`mould ${name} is due for a sealing coat`, firstMould({ oilEveryTurns: 3, turnsSinceOil: 3 })],
    // Filled at 07:00 that day it is hard at 08:15, after the set-up was to begin.
    [
      `mould ${name} is not empty by then`,
      { ...inFirst('2027-04-08T08:59:00+01:00'), ...mix({ demouldMinutes: 4000 }) },
    ],
    ['its time has passed', { yard: { ...base.yard, now: saturday('08:25') } }],
    ['its set-up would have begun already', { yard: { ...base.yard, now: saturday('08:01') } }],
    ['its pours do not follow one another any more', casting({ fillMinutes: 8 })],
    ['its pours do not follow one another any more', mix({ mixMinutes: 11 })],
    ['it takes another time now', mix({ washMinutes: 5 })],
    ['it is more than one batch can hold', casting({ kg: 14 })],
    ['the mix would stiffen before it is all filled', mix({ workingMinutes: 13 })],
    ['the mix would stiffen before it is all filled', { temperatures: [{ from: '2027-01-01', celsius: 30 }] }],
    ['nobody is there to mix it then', { closed: ['2027-04-10'] }],
    ['nobody is there to mix it then', mix({ crew: 2 })],
    ['nobody is there to mix it then', { work: [{ ...base.work[0]!, allows: ['prep', 'strip', 'pack'] }] }],
    [
      'nobody is free to set up mould 900 no. 1 then',
      { work: [{ ...base.work[0]!, allows: ['batch', 'strip', 'pack'] }] },
    ],
    ['nobody stays long enough after it', mix({ attendMinutes: 193 })],
    ['no mixer is free then', { yard: { ...base.yard, mixers: 0 } }],
    ['it will be too cold', { ...mix({ minCelsius: 5 }), temperatures: isWinter }],
    ['it will be too hot', { ...mix({ maxCelsius: 3 }), temperatures: isWinter }],
    [
      'there is not enough Fast-setting mortar by then',
      { materials: base.materials.map((m) => ({ ...m, onHand: 0 })) },
    ],
    ['it fills nothing', { keep: { batches: keep.batches.map((b) => ({ ...b, pours: [] })), pours: [] } }],
    [
      'one mould cannot take two of its pours',
      { keep: { ...keep, pours: keep.pours.map((p) => ({ ...p, mould: '900 no. 2' })) } },
    ],
  ])('is dropped because %s', (why, changes) => {
    expect(reason(changes)).toBe(why);
  });

  test.each<[string, Partial<YardFileInput>]>([
    ['someone stays to the end', mix({ attendMinutes: 192 })],
    ['working time is just enough', mix({ workingMinutes: 14 })],
    [
      'the order is gone',
      { orders: [], keep: { ...keep, pours: keep.pours.map((p) => ({ ...p, order: undefined })) } },
    ],
    ['now is the minute it begins', { yard: { ...base.yard, now: saturday('08:00') } }],
  ])('stays where %s', (_, changes) => {
    expect(reason(changes)).toBe('fixed');
  });
});

describe('what a fixed pour needs done first', () => {
  // Now 07:00; filled on Thursday, so it can be stripped at once: from 07:30, 8 minutes; then clean and set up 18.
  const early: Partial<YardFileInput> = {
    work: [{ ...base.work[0]!, start: '07:30' }],
    ...inFirst('2027-04-08T08:00:00+01:00'),
    keep: { ...keep, pours: [pour(1, ['07:54', '08:12'], ['08:34', '08:41']), keep.pours[1]!] },
  };

  test('a strip before its set-up, as early as someone is free', () => {
    expect(keptIn(early).batches[0]!.pours[0]).toMatchObject({ stripFirst: minute('07:30') });
    expect(keptIn(early).rack).toEqual([]);
  });

  test('and room to cure for what is stripped', () => {
    const cured = minuteOf('2027-04-12T08:00:00+01:00');
    const long = { ...early, ...mix({ cureHours: 96 }) };
    expect(keptIn(long).rack).toEqual([{ from: minute('07:38'), until: cured, spaces: 1 }]);
    const finished = [{ casting: 'panel-900', count: 1, readyAt: '2027-04-11T08:00:00+01:00' }];
    expect(reason({ ...long, finished, yard: { ...base.yard, rackSpaces: 1 } })).toBe(
      'mould 900 no. 1 cannot be stripped by then: nobody is free, or the rack is full',
    );
    expect(reason({ ...long, finished, yard: { ...base.yard, rackSpaces: 2 } })).toBe('fixed');
  });

  // A piece of the day before lies on the only space until the very minute the strip ends: that is soon enough.
  test('the space that is free the minute the strip ends', () => {
    const stripped = (readyAt: string) => {
      const finished = [{ casting: 'panel-900', count: 1, readyAt: saturday(readyAt) }];
      const yard = { ...base.yard, rackSpaces: 1 };
      return keptIn({ ...early, ...mix({ cureHours: 96 }), finished, yard }).batches[0]?.pours[0]?.stripFirst;
    };
    expect(stripped('07:38')).toBe(minute('07:30'));
    expect(stripped('07:39')).toBe(minute('07:31'));
    expect(stripped('07:55')).toBeUndefined();
  });

  test('as many spaces as the piece takes', () => {
    const wide = (rackSpaces: number) => ({
      ...early,
      ...mix({ cureHours: 96 }),
      ...casting({ rackSpaces: 2 }),
      yard: { ...base.yard, rackSpaces },
    });
    expect(reason(wide(1))).toMatch(/the rack is full/);
    expect(reason(wide(2))).toBe('fixed');
  });

  // No session before 08:00, when its set-up would begin: before that nobody is there to strip.
  test('someone to strip it', () => {
    const pours = [pour(1, ['08:00', '08:18'], ['08:34', '08:41']), keep.pours[1]!];
    const late = {
      work: [{ ...base.work[0]!, crew: 2 }],
      ...inFirst('2027-04-08T08:00:00+01:00'),
      keep: { ...keep, pours },
    };
    expect(reason(late)).toBe('mould 900 no. 1 cannot be stripped by then: nobody is free, or the rack is full');
  });

  // From 07:30 on one of two people strips, 8 minutes each: no. 1 by its set-up at 07:46, no. 2 by 07:38.
  test('strips that are all in time, whichever pour comes first in the batch', () => {
    const filledAt = '2027-04-08T08:00:00+01:00';
    const pours = [pour(1, ['07:46', '08:04'], ['08:34', '08:41']), pour(2, ['07:38', '07:56'], ['08:41', '08:48'])];
    const both: Partial<YardFileInput> = {
      work: [
        { ...base.work[0]!, start: '07:30' },
        { ...base.work[0]!, start: '07:38', allows: ['prep', 'batch'] },
      ],
      inMould: [1, 2].map((no) => ({ mould: `900 no. ${no}`, casting: 'panel-900', filledAt })),
      keep: { ...keep, pours },
    };
    expect(keptIn(both)).toMatchObject({
      dropped: [],
      batches: [{ pours: [{ stripFirst: minute('07:38') }, { stripFirst: minute('07:30') }] }],
    });
  });

  // Both moulds hold a piece that cures four days; stripped 07:30 and 07:38, both lie on the rack at once.
  test('room for all that is stripped for one batch', () => {
    const filledAt = '2027-04-08T08:00:00+01:00';
    const both: Partial<YardFileInput> = {
      work: [{ ...base.work[0]!, start: '07:30', crew: 2 }],
      ...mix({ cureHours: 96 }),
      inMould: [1, 2].map((no) => ({ mould: `900 no. ${no}`, casting: 'panel-900', filledAt })),
      keep: {
        ...keep,
        pours: [pour(1, ['07:54', '08:12'], ['08:34', '08:41']), pour(2, ['08:00', '08:18'], ['08:41', '08:48'])],
      },
    };
    expect(reason({ ...both, yard: { ...base.yard, rackSpaces: 2 } })).toBe('fixed');
    expect(reason({ ...both, yard: { ...base.yard, rackSpaces: 1 } })).toBe(
      'mould 900 no. 2 cannot be stripped by then: nobody is free, or the rack is full',
    );
  });

  test('the mould mended, also when it holds a piece until then', () => {
    const mould = (repairedOn: string) => firstMould({ condition: 'damaged', repairedOn });
    expect(reason({ ...early, ...mould('2027-04-10') })).toBe('fixed');
    expect(reason({ ...early, ...mould('2027-04-11') })).toBe('mould 900 no. 1 is not free by then');
  });

  // Coated from 07:30 to 07:40, dry at 08:00, when it is set up.
  test('a coat that is dry in time', () => {
    const coat = { oilEveryTurns: 3, turnsSinceOil: 3, oilMinutes: 10 };
    const coats = (from: string, to: string) => [{ mould: '900 no. 1', start: saturday(from), end: saturday(to) }];
    const yard = (oilDryMinutes: number, given = coats('07:30', '07:40')): Partial<YardFileInput> => ({
      work: [{ ...base.work[0]!, start: '07:30' }],
      ...firstMould({ ...coat, oilDryMinutes }),
      keep: { ...keep, coats: given },
    });
    expect(reason(yard(20))).toBe('fixed');
    // The coat itself stays, for whatever is poured after it.
    const { dropped, coats: kept } = keptIn(yard(21));
    expect(dropped).toMatchObject([
      { batch: 'B1', reason: 'the sealing coat of mould 900 no. 1 would not be dry by then' },
    ]);
    expect(kept).toEqual([{ mould: 0, start: minute('07:30'), minutes: 10 }]);
    const longer = 'the sealing coat of mould 900 no. 1 takes another time now';
    expect(keptIn(yard(20, coats('07:30', '07:41'))).dropped).toMatchObject([
      { batch: 'B1', reason: longer },
      { coat: '900 no. 1', reason: longer },
    ]);
    expect(reason(yard(20, []))).toBe('mould 900 no. 1 is due for a sealing coat');
  });
});

describe('of two fixed batches', () => {
  const second = (start: string, fill: [string, string], end: string): Keep => ({
    batches: [
      { ...keep.batches[0]!, bags: 1, kg: 13.6, pours: ['P1'] },
      {
        ...keep.batches[0]!,
        id: 'B2',
        start: saturday(start),
        mixEnd: saturday(fill[0]),
        end: saturday(end),
        pours: ['P2'],
      },
    ],
    pours: [keep.pours[0]!, { ...pour(2, ['08:12', '08:24'], fill), batch: 'B2' }],
  });
  const one = (yard: YardFile['yard'], fixed: Keep) => {
    const first = { ...fixed.batches[0]!, end: saturday('08:41') };
    return compile(smallYard({ yard, keep: { ...fixed, batches: [first, fixed.batches[1]!] } })).fixed;
  };

  test('the later one goes when there is only one person for both', () => {
    const { batches, dropped } = one(base.yard, second('08:30', ['08:40', '08:47'], '08:47'));
    expect(batches.map((b) => b.id)).toEqual(['B1']);
    expect(dropped).toEqual([
      { batch: 'B2', at: '2027-04-10T08:30:00+01:00', reason: 'nobody is there to mix it then' },
    ]);
  });

  // The first needs its strip by 08:06 and could have it at 07:30, but then the second would not have its own by 07:38.
  test('the earlier one leaves the later one the only minutes in which it can be stripped', () => {
    const fixed = second('08:41', ['08:51', '08:58'], '08:58');
    const pours = [
      pour(1, ['08:06', '08:24'], ['08:34', '08:41']),
      { ...pour(2, ['07:38', '07:56'], ['08:51', '08:58']), batch: 'B2' },
    ];
    const filledAt = '2027-04-08T08:00:00+01:00';
    const changes: Partial<YardFileInput> = {
      work: [
        { ...base.work[0]!, start: '07:30' },
        { ...base.work[0]!, start: '07:56', end: '08:24' },
      ],
      inMould: [1, 2].map((no) => ({ mould: `900 no. ${no}`, casting: 'panel-900', filledAt })),
      keep: { batches: [{ ...fixed.batches[0]!, end: saturday('08:41') }, fixed.batches[1]!], pours },
    };
    expect(keptIn(changes)).toMatchObject({
      dropped: [],
      batches: [{ pours: [{ stripFirst: minute('07:56') }] }, { pours: [{ stripFirst: minute('07:30') }] }],
    });
  });

  test('both stay one after the other', () => {
    const { batches } = one(base.yard, second('08:41', ['08:51', '08:58'], '08:58'));
    expect(batches.map((b) => b.id)).toEqual(['B1', 'B2']);
  });
});
