import { describe, expect, it } from 'vitest';
import { readYardFile } from '../../shared/yard-file.ts';
import { piecesOf } from './random-yard/demand.ts';
import { randomYard, type YardKind } from './random-yard.ts';
import { scaledYard } from './scaled-yard.ts';

const KINDS: YardKind[] = ['small', 'typical', 'busy', 'tight-rack', 'cold-spring', 'odd'];
const seeds = Array.from({ length: 600 }, (_, seed) => seed);
const yards = seeds.map((seed) => randomYard(seed));
const piecesAsked = (yard: ReturnType<typeof randomYard>): number =>
  yard.orders.reduce((sum, x) => sum + [...piecesOf(x, yard.kits).values()].reduce((a, b) => a + b, 0), 0);

describe('random yards', () => {
  it('have no fault, and are the same again for the same seed', () => {
    for (const seed of seeds) {
      const yard = yards[seed]!;
      expect(readYardFile(yard), `seed ${seed}`).toEqual({ ok: true, yard });
      if (seed % 20 === 0) expect(randomYard(seed)).toEqual(yard);
    }
  });

  it.each(KINDS)('are of the size asked for: %s', (kind) => {
    const sizes = seeds.slice(0, 40).map((seed) => piecesAsked(randomYard(seed, kind)));
    if (kind === 'small') expect(Math.max(...sizes)).toBeLessThanOrEqual(12);
    if (kind === 'typical') expect(Math.max(...sizes)).toBeGreaterThan(100);
    if (kind === 'busy') expect(Math.min(...sizes)).toBeGreaterThan(100);
    expect(Math.max(...sizes)).toBeLessThanOrEqual(600);
  });

  it('between them have everything that a yard file can say', () => {
    const some = (holds: (yard: (typeof yards)[number]) => unknown) => yards.filter((x) => holds(x)).length;
    const crewed = (x: (typeof yards)[number]) => x.work.reduce((sum, w) => sum + w.crew, 0);
    expect(new Set(yards.map((x) => x.yard.timeZone)).size).toBeGreaterThan(8);
    const counts = {
      rack: some((x) => x.yard.rackSpaces),
      mixersTwo: some((x) => x.yard.mixers === 2),
      handover: some((x) => x.yard.handoverDays),
      people: some((x) => crewed(x) > 2),
      onlySomeKinds: some((x) => x.work.some((w) => w.allows.length < 4)),
      midnight: some((x) => x.work.some((w) => w.end === '24:00')),
      threeMixes: some((x) => x.mixes.length === 3),
      cold: some((x) => x.temperatures.some((t) => t.celsius < 3)),
      noTemperatures: some((x) => x.temperatures.length === 0),
      unbuyable: some((x) => x.materials.some((m) => m.leadDays === undefined)),
      leadZero: some((x) => x.materials.some((m) => m.leadDays === 0)),
      minimum: some((x) => x.materials.some((m) => m.minimum > 0)),
      incoming: some((x) => x.incoming.length > 0),
      damagedForGood: some((x) => x.moulds.some((m) => m.condition === 'damaged' && !m.repairedOn)),
      mended: some((x) => x.moulds.some((m) => m.repairedOn)),
      retired: some((x) => x.moulds.some((m) => m.condition === 'retired')),
      prepped: some((x) => x.moulds.some((m) => m.prepped)),
      several: some((x) => x.moulds.some((m) => m.makes.length > 1)),
      inMould: some((x) => x.inMould.length > 0),
      heldForOrder: some((x) => x.inMould.some((m) => m.order)),
      finishedLater: some((x) => x.finished.some((f) => f.readyAt)),
      twoLots: some((x) => new Set(x.finished.map((f) => f.casting)).size < x.finished.length),
      finishedForOrder: some((x) => x.finished.some((f) => f.order)),
      twoToStrip: some((x) => x.castings.some((c) => c.stripCrew === 2)),
      material: some((x) => x.orders.some((o) => o.lines.some((l) => l.material))),
      noMould: some((x) => x.castings.some((c) => !x.moulds.some((m) => m.makes.some((k) => k.casting === c.id)))),
      noDue: some((x) => x.orders.some((o) => !o.due)),
    };
    for (const [what, count] of Object.entries(counts)) expect(count, what).toBeGreaterThan(10);
  });
});

describe('yards for measuring', () => {
  it.each([
    [130, 30, 1700],
    [1000, 200, 13_000],
  ])('%i orders over %i moulds ask for about %i pieces', (orders, moulds, pieces) => {
    const yard = scaledYard(orders, moulds);
    expect(readYardFile(yard)).toEqual({ ok: true, yard });
    expect(yard.moulds).toHaveLength(moulds);
    expect(Math.abs(piecesAsked(yard) / pieces - 1)).toBeLessThan(0.05);
  });
});
