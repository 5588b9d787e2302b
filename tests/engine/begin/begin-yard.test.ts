import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readYardFile } from '../../../shared/yard-file.ts';
import { type BeginAnswers, yardFromAnswers } from '../../../src/engine/begin/begin-yard.ts';
import { emptyYard } from '../../../src/engine/begin/empty-yard.ts';
import { fillMinutesGuess, panelKg, setUpMinutesGuess } from '../../../src/engine/begin/first-figures.ts';
import { sessionsInHandFor } from '../../../src/engine/begin/sessions-in-hand.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { audit } from '../../contract/audit-plan.mjs';
import { ANSWERS, anyAnswers } from '../../support/any-answers.ts';

const begun = (changes: Partial<BeginAnswers> = {}) => {
  const made = yardFromAnswers({ ...ANSWERS, ...changes });
  if (!made.ok) throw new Error(made.reason);
  return made;
};

test('an empty yard is a yard file, and its plan is empty', () => {
  const yard = emptyYard({ name: 'Our yard', timeZone: 'Asia/Kolkata', now: '2027-04-08T09:00:00Z' });
  expect(readYardFile(yard)).toEqual({ ok: true, yard });
  expect(planYard(yard, { effort: 'quick' })).toMatchObject({ batches: [], pours: [], orders: [], unplanned: [] });
});

describe('sessions in hand', () => {
  const of = (...figures: string[]) => figures.map((figure) => ({ kind: 'casting' as const, id: '900', figure }));

  test('are one, and two while more than three figures are guesses', () => {
    expect(sessionsInHandFor([])).toBe(1);
    expect(sessionsInHandFor(of('kg', 'fillMinutes', 'prepMinutes'))).toBe(1);
    expect(sessionsInHandFor(of('kg', 'fillMinutes', 'prepMinutes', 'stripMinutes'))).toBe(2);
  });

  test('count one figure of several panels once', () => {
    const panels = ['300', '600', '900', '1200', '1500'].map((id) => ({ kind: 'casting' as const, id, figure: 'kg' }));
    expect(sessionsInHandFor(panels)).toBe(1);
  });

  test('of a yard that begins with nothing, and of one that begins with guesses', () => {
    const nothing = emptyYard({ name: 'Our yard', timeZone: 'Europe/Oslo', now: '2027-04-08T09:00:00Z' });
    expect(nothing.yard.sessionsInHand).toBe(1);
    expect(begun().yard.yard.sessionsInHand).toBe(2);
  });
});

describe('the first figures', () => {
  // 0.9 x 0.2 x 0.035 m = 6.3 l, at 2150 kg/m3 = 13.545 kg. 1.0 x 0.5 x 0.03 = 15.0 l = 32.25 kg (arithmetic).
  test('weigh a panel by its size', () => {
    expect(panelKg(900, 200, 35)).toBe(13.5);
    expect(panelKg(1000, 500, 30)).toBe(32.3);
  });

  test('take longer for a longer mould', () => {
    expect([600, 900, 1200].map(setUpMinutesGuess)).toEqual([10, 12, 14]);
    expect([600, 900, 1200].map((mm) => fillMinutesGuess(mm, { pieces: 2, lengthMm: 900 }, 15))).toEqual([5, 7, 8]);
  });

  test('fill what one bag fills before it stiffens', () => {
    for (const [pieces, lengthMm] of [
      [6, 600],
      [4, 450],
      [2, 1200],
      [14, 150],
    ] as const)
      expect(fillMinutesGuess(lengthMm, { pieces, lengthMm }, 15) * pieces).toBeLessThanOrEqual(15);
    expect(fillMinutesGuess(3000, { pieces: 1, lengthMm: 3000 }, 15)).toBe(15);
  });
});

describe('a yard from four answers', () => {
  test('has what was said, and what follows from it', () => {
    const { yard } = begun();
    expect(yard.moulds.map(({ id }) => id)).toEqual([
      ...['1200 no. 1', '1200 no. 2', '900 no. 1', '900 no. 2', '600 no. 1', '600 no. 2'],
    ]);
    expect(yard.mixes).toMatchObject([
      { yieldKgPerBag: 27, bagStep: 1, maxBags: 1, demouldMinutes: 90, activationKelvin: 5753, workingMinutes: 15 },
    ]);
    expect(yard.work).toMatchObject([{ rule: 'FREQ=WEEKLY;BYDAY=SA', from: '2027-04-08', start: '08:00', crew: 1 }]);
    // April as it was said; at 53 degrees north 18.2 °C lie between January and July, and April is half way.
    expect(yard.temperatures.slice(0, 4)).toEqual([
      { from: '2027-04-01', celsius: 15 },
      { from: '2027-05-01', celsius: 19.6 },
      { from: '2027-06-01', celsius: 22.9 },
      { from: '2027-07-01', celsius: 24.1 },
    ]);
    expect(yard.yard).not.toHaveProperty('rackSpaces');
  });

  test('counts its days in its own zone', () => {
    const { yard } = begun({ timeZone: 'Pacific/Auckland', now: '2027-04-08T20:00:00Z' });
    expect(yard.work[0]?.from).toBe('2027-04-09');
  });

  test('takes more bags at once where a piece needs more than one', () => {
    const { yard } = begun({ bag: { pieces: 0.5, lengthMm: 900 } });
    // Half a 900 is 6.75 kg to the bag; a 1200 weighs 18.1 kg: three bags.
    expect(yard.mixes).toMatchObject([{ yieldKgPerBag: 6.75, maxBags: 3 }]);
    expect(readYardFile(yard).ok).toBe(true);
  });

  test('guesses what was not said, and nothing else', () => {
    const figures = (made: ReturnType<typeof begun>, kind: string) =>
      made.guesses.filter((one) => one.kind === kind).map(({ figure }) => figure);
    expect(figures(begun(), 'mix')).toContain('workingMinutes');
    const said = begun({ minutes: { working: 20, fill: 6, setUp: 12, clean: 5, strip: 5, mix: 8 } });
    expect(figures(said, 'mix')).toEqual([
      ...['yieldKgPerBag', 'demouldMinutes', 'washMinutes', 'attendMinutes', 'cureHours'],
    ]);
    expect(new Set(figures(said, 'casting'))).toEqual(new Set(['kg']));
    expect(said.yard.castings[0]).toMatchObject({ fillMinutes: 6, prepMinutes: 12, cleanMinutes: 5, stripMinutes: 5 });
  });

  test('no date waits for bags: what is known of none holds none up', () => {
    const { yard } = begun();
    const order = { id: 'first', weight: 1, lines: [{ casting: 'panel-900', quantity: 4 }] };
    const plan = planYard({ ...yard, orders: [order] }, { effort: 'quick' });
    // Poured on the first Saturday, out of their moulds that day or the next Saturday, cured three days and more at 15 °C.
    expect(plan.unplanned).toEqual([]);
    expect(plan.pours.every(({ fillStart }) => fillStart.startsWith('2027-04-10'))).toBe(true);
    expect(plan.buys).toMatchObject([{ material: 'bag', orderBy: '2027-04-10', arrivesOn: '2027-04-10' }]);
  });

  test('whatever is answered, it is a yard file and its plans obey every rule', { timeout: 120_000 }, () => {
    fc.assert(
      fc.property(anyAnswers, fc.integer({ min: 1, max: 5 }), (answers, quantity) => {
        const made = yardFromAnswers(answers);
        fc.pre(made.ok);
        const lines = made.yard.castings.map(({ id }) => ({ casting: id, quantity }));
        const read = readYardFile({ ...made.yard, orders: [{ id: 'first', due: '2027-06-01', lines }] });
        if (!read.ok) throw new Error(JSON.stringify(read.faults));
        const yard = { ...read.yard, yard: { ...read.yard.yard, horizonDays: 90 } };
        expect(audit(yard, planYard(yard, { effort: 'quick' })).faults).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });
});
