import { describe, expect, test } from 'vitest';
import { spellsOf } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { sessionsOf } from '../../../src/engine/calendar/sessions.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { buyingModel } from '../../../src/usecases/buying/buying-model.ts';
import { lastMixes } from '../../../src/usecases/today/last-mix.ts';
import { sessionSteps } from '../../../src/usecases/today/session-steps.ts';
import { turnsOfPlan } from '../../../src/usecases/turns/turns-of-plan.ts';
import { type Rectangle, turnsGeometry } from '../../../views/charts/turns-geometry.ts';
import { SESSIONS_SHOWN, turnsShown } from '../../../views/turns/turns-shown.ts';
import { METRIC } from '../../support/measures.ts';
import { yardSeeds } from '../../support/property-seed.ts';
import { randomYard } from '../../support/random-yard.ts';

const sizes = { turn: 100, session: 80, tail: 20, gap: 10, row: 50, head: 40, band: 8, inset: 2 };
const kinds = ['small', 'odd', 'cold-spring', 'tight-rack'] as const;
const yards = kinds.flatMap((kind) => yardSeeds(6, 1).map((seed) => ({ kind, seed })));

const meet = (a: Rectangle, b: Rectangle): boolean => a.y === b.y && a.x < b.x + b.width && b.x < a.x + a.width;

describe.each(yards)('the plan of random yard $kind $seed', ({ kind, seed }) => {
  const yard = randomYard(seed, kind);
  const plan = planYard(yard, { effort: 'quick' });
  const sessions = sessionsOf(yard, calendarOf(yard.yard.timeZone));

  test('has each of its tasks in the steps of one session, and no strip before it may be', () => {
    const steps = sessions.flatMap((session) =>
      sessionSteps(plan, yard, session, { system: 'metric', waters: new Map() }),
    );
    const count = (of: string) => steps.filter((step) => step.kind === of).length;
    expect(count('batch')).toBe(plan.batches.length);
    expect(count('prep')).toBe(plan.pours.filter(({ prepStart, prepEnd }) => prepStart !== prepEnd).length);
    expect(count('strip')).toBe(plan.pours.length + plan.strips.length);
    expect(count('pack')).toBe(plan.orders.flatMap(spellsOf).length);
    const early = steps.filter((step) => step.kind === 'strip' && minuteOf(step.mayFrom) > minuteOf(step.at));
    expect(early).toEqual([]);
  });

  test('names no last mix before one that is planned', () => {
    for (const session of sessions)
      for (const { mix, at } of lastMixes(plan, yard, session)) {
        const id = yard.mixes.find(({ name }) => name === mix)?.id;
        const starts = plan.batches.filter((batch) => batch.mix === id).map(({ start }) => minuteOf(start));
        const inIt = starts.filter((start) => start >= session.start && start < session.end);
        expect(Math.max(...inIt)).toBeLessThanOrEqual(at);
      }
  });

  test('has the same turns on a page whether those of all sessions were worked out or its own alone', () => {
    const all = turnsOfPlan(yard, plan, 'MO');
    for (let from = 0; from <= all.sessions.length + SESSIONS_SHOWN; from += SESSIONS_SHOWN) {
      const own = turnsOfPlan(yard, plan, 'MO', { from, count: SESSIONS_SHOWN });
      const [expected, shown] = [all, own].map((turns) => {
        const { moulds: _moulds, part, ...rest } = turnsShown(turns, from);
        return { ...rest, part: { ...part, items: part.items.map(({ mould }) => mould) } };
      });
      expect(shown).toEqual(expected);
      expect(own.moulds.map(({ mould }) => mould)).toEqual(all.moulds.map(({ mould }) => mould));
    }
  });

  test('has each turn once, in boxes that lie inside the chart and never on each other', () => {
    const model = { today: yard.yard.now.slice(0, 10), ...turnsOfPlan(yard, plan, 'MO') };
    expect(model.moulds.flatMap(({ turns }) => turns)).toHaveLength(plan.pours.length + yard.inMould.length);
    for (let from = 0; from < model.sessions.length; from += SESSIONS_SHOWN) {
      const shown = turnsShown(model, from);
      const chart = turnsGeometry(shown.sessions.length, shown.moulds.length, shown.spans, shown.outs, sizes);
      for (const [index, { box, band }] of chart.turns.entries()) {
        expect(Math.max(box.x + box.width, band.x + band.width)).toBeLessThanOrEqual(chart.width);
        expect(band.width).toBeGreaterThan(0);
        expect(chart.turns.slice(index + 1).filter((other) => meet(box, other.box))).toEqual([]);
      }
    }
  });

  test('has everything to buy in some week, each for somebody', () => {
    const { weeks } = buyingModel(
      { yard, plan },
      {
        ...{ now: yard.yard.now, goods: [], notes: new Map(), typed: new Map(), measures: METRIC, arrivals: new Map() },
        known: { suppliers: [], buyings: new Map(), leadDays: new Map(), floatDays: 1, holdingPercent: 20, kept: [] },
      },
    );
    const lines = weeks.flatMap(({ trips }) => trips.flatMap((trip) => trip.lines));
    const sum = (quantities: number[]) => quantities.reduce((total, quantity) => total + quantity, 0);
    expect(sum(lines.map(({ quantity }) => quantity))).toBeCloseTo(sum(plan.buys.map(({ quantity }) => quantity)), 6);
    if (yard.incoming.length === 0)
      expect(lines.filter((line) => line.for.customers.length === 0 && line.for.keep === null)).toEqual([]);
  });
});
