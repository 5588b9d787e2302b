import { describe, expect, test } from 'vitest';
import { type PlanFile, spellsOf } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { CostFigures } from '../../../src/engine/cost/figures.ts';
import { pricedLots } from '../../../src/engine/cost/priced-lots.ts';
import { ownersCosts, type SessionCost, sessionCosts } from '../../../src/engine/cost/session-costs.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { yardSeeds } from '../../support/property-seed.ts';
import { randomYard } from '../../support/random-yard.ts';

/** Awkward prices: sevenths and thirds of everything. */
const figuresOf = (yard: YardFile): CostFigures => ({
  ...{ wageHour: 1733, sessionFixed: 1001, rejects: 0.03 },
  usedUp: yard.materials.slice(0, 2).map(({ id }, n) => ({ material: id, perTurn: n / 7, perBatch: 1 / 3 })),
  moulds: new Map(yard.moulds.map(({ id }, n) => [id, { cost: 9999 + n * 101, turns: 37 + n }])),
  materials: new Map(
    yard.materials.map(({ id, onHand }, n) => {
      const arrived = [
        { quantity: onHand / 3 + 1, on: '2027-01-04', price: 7001 + n },
        { quantity: onHand / 7, on: '2027-02-01', price: n % 2 === 0 ? 301 : null },
      ];
      return [id, { lots: pricedLots(onHand, arrived, []), unitPrice: 33.3 + n }];
    }),
  ),
});

const span = (start: string, end: string) => minuteOf(end) - minuteOf(start);
const sum = (numbers: readonly number[]) => numbers.reduce((all, one) => all + one, 0);

/** Minutes of one person on pieces and orders, read off the plan once more and by other ways. */
const minutesOf = (yard: YardFile, plan: PlanFile): number => {
  const crewOf = (mix: string) => yard.mixes.find(({ id }) => id === mix)!.crew;
  const stripCrew = (casting: string | undefined) => yard.castings.find(({ id }) => id === casting)!.stripCrew;
  const inMould = new Map(yard.inMould.map(({ mould, casting }) => [mould, casting]));
  return (
    sum(plan.batches.map(({ mix, start, end }) => span(start, end) * crewOf(mix))) +
    sum(plan.pours.map(({ prepStart, prepEnd }) => span(prepStart, prepEnd))) +
    sum(plan.pours.map(({ casting, stripStart, stripEnd }) => span(stripStart, stripEnd) * stripCrew(casting))) +
    sum(plan.strips.map((one) => span(one.stripStart, one.stripEnd) * stripCrew(inMould.get(one.mould)))) +
    sum(plan.orders.flatMap(spellsOf).map(({ packStart, packEnd }) => span(packStart, packEnd)))
  );
};

const borne = ({ owners, rest }: SessionCost): number =>
  sum([...owners.values()].map(({ total }) => total)) + rest.total;

const plans = yardSeeds(12).map((seed) => {
  const yard = randomYard(seed);
  return { seed, yard, plan: planYard(yard, { effort: 'quick' }) };
});

describe('for any plan', { timeout: 120_000 }, () => {
  test('a session costs what its pieces, its orders and its rest bear, to the minor unit', () => {
    expect(plans.filter(({ plan }) => plan.pours.length > 0).length).toBeGreaterThan(6);
    for (const { seed, yard, plan } of plans)
      for (const session of sessionCosts(yard, plan, figuresOf(yard))) {
        expect(borne(session), `seed ${seed}, minute ${session.start}`).toBe(session.total);
        // A day on which pieces go out and nothing is done is none.
        expect(session.minutes + session.total, `seed ${seed}, minute ${session.start}`).toBeGreaterThan(0);
      }
  });

  test('every minute of work is somebody’s, once', () => {
    for (const { seed, yard, plan } of plans) {
      const minutes = sum(sessionCosts(yard, plan, figuresOf(yard)).map((one) => one.minutes));
      expect(minutes, `seed ${seed}`).toBeCloseTo(minutesOf(yard, plan), 6);
    }
  });

  test('all that the mould costs is borne, turn by turn', () => {
    for (const { seed, yard, plan } of plans) {
      const figures = figuresOf(yard);
      const costs = ownersCosts(sessionCosts(yard, plan, figures));
      for (const [mould, { cost, turns }] of figures.moulds) {
        const own = plan.pours.filter((pour) => pour.mould === mould);
        const borneByPieces = sum(own.map(({ id }) => costs.get(`pour ${id}`)!.parts.mould));
        expect(Math.abs(borneByPieces - (cost * own.length) / turns), `seed ${seed}, ${mould}`).toBeLessThanOrEqual(
          0.5,
        );
      }
    }
  });

  test('what is missing is said by whoever lacks it', () => {
    for (const { yard, plan } of plans) {
      const unsaid = { ...figuresOf(yard), wageHour: null };
      for (const { owners, minutes } of sessionCosts(yard, plan, unsaid))
        if (minutes > 0)
          expect([...owners.values()].some(({ missing }) => missing.some(({ what }) => what === 'wage'))).toBe(true);
    }
  });
});

describe('bags', { timeout: 120_000 }, () => {
  test('that were all used cost what was paid for them, over however many sessions', () => {
    for (const { seed, yard, plan } of plans) {
      // One delivery of just what the plan takes of each bag, at a price that no number of bags divides.
      const used = new Map<string, number>();
      for (const { mix, bags } of plan.batches)
        for (const { material, quantity } of yard.mixes.find(({ id }) => id === mix)!.perBag)
          used.set(material, (used.get(material) ?? 0) + quantity * bags);
      const lots = [...used].map(([id, quantity]) => [
        id,
        { lots: [{ quantity, used: 0, price: 10_007 }], unitPrice: null },
      ]);
      const figures = { ...figuresOf(yard), usedUp: [], materials: new Map(lots as never) } as CostFigures;
      const pieceGoods = new Set(yard.castings.flatMap(({ perPiece }) => perPiece.map(({ material }) => material)));
      const orderGoods = yard.orders.flatMap(({ lines }) => lines.flatMap(({ material }) => material ?? []));
      const kitParts = yard.kits.flatMap(({ parts }) => parts.map(({ material }) => material));
      if ([...used.keys()].some((id) => pieceGoods.has(id) || orderGoods.includes(id) || kitParts.includes(id)))
        continue;
      const costs = sessionCosts(yard, plan, figures);
      const spent = sum(
        costs.flatMap(({ owners }) => [...owners.values()].map(({ parts }) => parts.mix + parts['thrown away'])),
      );
      expect(spent, `seed ${seed}`).toBe(10_007 * [...used.values()].filter((quantity) => quantity > 0).length);
    }
  });
});
