import { expect, test } from 'vitest';
import type { Keep, PlanBatch, PlanFile, PlanPour } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { keepOfPlan } from '../../../src/engine/standing/keep-of-plan.ts';
import { fixedPlan, withKeep } from '../../../src/usecases/plan/fixed-plan.ts';
import { handPlan, plannedYard, saturday } from '../../support/planned-yard.ts';

/** At 8:55: no. 1 is set up, and no. 2 was coated late, so that it is dry at 9:00 and not at 8:53. */
const lateYard = (changes: Partial<YardFile> = {}): YardFile => {
  const yard = plannedYard();
  const [first, second] = yard.moulds;
  return {
    ...yard,
    yard: { ...yard.yard, now: saturday('08:55') },
    moulds: [
      { ...first!, condition: 'ready', prepped: true },
      { ...second!, condition: 'ready', prepped: false, turnsSinceOil: 0, dryFrom: saturday('09:00') },
    ],
    ...changes,
  };
};

const clockOf = (instant: string | undefined) => instant?.slice(11, 16);
const fixed = (yard: YardFile, plan: PlanFile) => fixedPlan({ yard, plan, hours: 24, clock: minuteOf(yard.yard.now) });
const packOf = ({ packs }: Keep) => packs?.map(({ packStart }) => clockOf(packStart));

/* By hand: set up 9:00 to 9:12, mixed to 9:22, full at 9:29 and 9:36: out 75 minutes later at 10:44 and 10:52, packed at 11:00. */
test('a batch that is fixed begins later where a mould of it is ready later, and so does what comes of it', () => {
  const yard = lateYard();
  const { keep, gone } = fixed(yard, { ...handPlan(), coats: [] });
  expect(gone).toEqual([]);
  expect(keep.pours.map(({ prepStart, fillEnd }) => [prepStart, fillEnd].map(clockOf))).toEqual([
    ['09:12', '09:29'],
    ['09:00', '09:36'],
  ]);
  expect(keep.batches.map(({ start, end }) => [start, end].map(clockOf))).toEqual([['09:12', '09:36']]);
  expect(keep.strips?.map(({ stripStart }) => clockOf(stripStart))).toEqual(['10:44', '10:52']);
  expect(packOf(keep)).toEqual(['11:00']);
  const plan = planYard(withKeep(yard, keep), { effort: 'quick' });
  expect(plan.dropped).toEqual([]);
  expect(plan.batches.map(({ start }) => clockOf(start))).toContain('09:12');
});

/** The plan with a second batch, of the first mould again, in the last minutes of the session. */
const withLast = (): PlanFile => {
  const plan = handPlan();
  const at = (clock: string) => saturday(clock);
  const batch: PlanBatch = {
    ...plan.batches[0]!,
    ...{ id: 'B2', start: at('10:57'), mixEnd: at('11:07'), end: at('11:14'), kg: 13.6, pours: ['P3'] },
  };
  const pour: PlanPour = {
    ...{ id: 'P3', batch: 'B2', mould: '900 no. 1', casting: 'panel-900' },
    ...{ prepStart: at('10:45'), prepEnd: at('10:57'), fillStart: at('11:07'), fillEnd: at('11:14') },
    ...{ stripStart: '2027-04-17T08:10:00+01:00', stripEnd: '2027-04-17T08:18:00+01:00' },
    pieceReadyAt: '2027-04-17T08:18:00+01:00',
  };
  return { ...plan, coats: [], orders: [], batches: [...plan.batches, batch], pours: [...plan.pours, pour] };
};

test('what no longer fits the session is left out, and the rest begins later all the same', () => {
  const base = lateYard();
  // Hours to 11:37, and 15 minutes to clear up: the second batch would end at 11:28, and has to by 11:22.
  const yard = lateYard({ work: base.work.map((hours) => ({ ...hours, end: '11:37' })) });
  const { keep, gone } = fixed(yard, withLast());
  expect(keep.batches.map(({ id, start }) => [id, clockOf(start)])).toEqual([['B1', '09:12']]);
  expect(keep.pours.map(({ id }) => id)).toEqual(['P1', 'P2']);
  expect(gone).toEqual([
    { at: saturday('10:57'), moulds: ['900 no. 1'], reason: 'what comes before it ends too late for its session' },
  ]);
});

/* By hand as above: to clear up from 10:57 on, and the second piece would be out at 11:00. */
test('a piece that can no longer come out in the session stays in its mould, and its batch is not left out for it', () => {
  const base = lateYard();
  const yard = lateYard({ work: base.work.map((hours) => ({ ...hours, end: '11:12' })) });
  const { keep, gone } = fixed(yard, { ...handPlan(), coats: [], orders: [] });
  expect(gone).toEqual([]);
  expect(keep.batches.map(({ id, start }) => [id, clockOf(start)])).toEqual([['B1', '09:12']]);
  expect(keep.strips?.map(({ mould, stripStart }) => [mould, clockOf(stripStart)])).toEqual([['900 no. 1', '10:44']]);
  const plan = planYard(withKeep(yard, keep), { effort: 'quick' });
  expect(plan.dropped).toEqual([]);
  expect(plan.pours.filter(({ batch }) => batch === plan.batches[0]!.id).map(({ mould }) => mould)).toEqual([
    '900 no. 1',
    '900 no. 2',
  ]);
});

test('nothing moves in a session that goes as planned', () => {
  const base = plannedYard();
  const work = base.work.map((hours) => ({ ...hours, crew: 2 }));
  const yard = { ...base, work, yard: { ...base.yard, now: saturday('08:00') } };
  const plan = handPlan();
  const { keep } = fixed(yard, plan);
  const { batches, pours, coats, packs } = keepOfPlan(plan);
  expect(keep).toMatchObject({ batches, pours, coats, packs });
});

/** Both moulds ready, and a third being filled until 9:12 of a batch that somebody began at 8:55. */
const busyYard = (): YardFile => {
  const yard = lateYard();
  const [first, second] = yard.moulds;
  const ready = [first!, { ...second!, dryFrom: undefined }].map((mould) => ({ ...mould, prepped: true }));
  const at = (clock: string) => saturday(clock);
  const batch = { id: 'B0', mix: 'thin', start: at('08:55'), mixEnd: at('09:05'), end: at('09:12'), bags: 1, kg: 13.6 };
  const strip = { stripStart: at('11:10'), stripEnd: at('11:18') };
  const pour: PlanPour = {
    ...{ id: 'P0', batch: 'B0', mould: '900 no. 3', casting: 'panel-900', ...strip, pieceReadyAt: strip.stripEnd },
    ...{ prepStart: at('08:55'), prepEnd: at('08:55'), fillStart: at('09:05'), fillEnd: at('09:12') },
  };
  return {
    ...yard,
    moulds: [...ready, { ...first!, id: '900 no. 3', prepped: true }],
    begun: {
      ...{ batches: [{ ...batch, pours: ['P0'] }], pours: [pour], packs: [], preps: [], coats: [] },
      strips: [{ mould: '900 no. 3', pour: 'P0', ...strip }],
    },
  };
};

test('a batch that is fixed waits for the one that is being mixed', () => {
  const { keep, gone } = fixed(busyYard(), { ...handPlan(), coats: [] });
  expect(gone).toEqual([]);
  expect(keep.batches.map(({ start }) => clockOf(start))).toEqual(['09:12']);
});

test('setting a mould up for a later session begins later with all the rest', () => {
  const plan = withLast();
  const [batch, pour] = [plan.batches[1]!, plan.pours[2]!];
  const next = (clock: string) => `2027-04-17T${clock}:00+01:00`;
  const ahead: PlanFile = {
    ...plan,
    batches: [plan.batches[0]!, { ...batch, start: next('08:10'), mixEnd: next('08:20'), end: next('08:27') }],
    pours: [
      ...plan.pours.slice(0, 2),
      {
        ...{ ...pour, prepStart: saturday('10:57'), prepEnd: saturday('11:09') },
        ...{ fillStart: next('08:20'), fillEnd: next('08:27'), stripStart: next('09:42'), stripEnd: next('09:50') },
        pieceReadyAt: next('09:50'),
      },
    ],
  };
  const yard = lateYard();
  const { keep } = fixedPlan({ yard, plan: ahead, hours: 24 * 14, clock: minuteOf(yard.yard.now) });
  // By hand as above: the last strip ends at 11:00.
  expect(keep.pours.map(({ id, prepStart }) => [id, clockOf(prepStart)])).toContainEqual(['P3', '11:00']);
  expect(keep.batches.map(({ start }) => start)).toContain(next('08:10'));
});

/*
 * A piece of no. 3 was to come out at 8:57 and is hard at 9:00 only. Moved on, its strip would take the one person until 9:08, when
 * the batch of 9:05 could begin; but the piece can as well come out after it.
 */
test('a batch that can stay as it is does not wait for a strip that is late', () => {
  const base = lateYard();
  const [first, second] = base.moulds;
  const prepped = [first!, { ...second!, dryFrom: undefined, prepped: true }];
  const yard: YardFile = {
    ...base,
    yard: { ...base.yard, now: saturday('08:50') },
    moulds: [...prepped, { ...first!, id: '900 no. 3', prepped: false }],
    inMould: [{ mould: '900 no. 3', casting: 'panel-900', filledAt: saturday('07:45') }],
  };
  const times = { stripStart: saturday('08:57'), stripEnd: saturday('09:05'), pieceReadyAt: saturday('09:05') };
  const plan = { ...handPlan(), coats: [], strips: [{ mould: '900 no. 3', ...times }] };
  const { keep, gone } = fixed(yard, plan);
  expect(gone).toEqual([]);
  expect(keep.batches.map(({ start }) => clockOf(start))).toEqual(['09:05']);
  const again = planYard(withKeep(yard, keep), { effort: 'quick' });
  expect(clockOf(again.batches[0]!.start)).toBe('09:05');
  expect(again.dropped[0]).toMatchObject({ strip: '900 no. 3', reason: 'the piece is not hard by then' });
});
