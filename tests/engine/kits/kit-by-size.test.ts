import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type KitMade, kitBySize, type SizeAsked } from '../../../src/engine/kits/kit-by-size.ts';
import { SIDES, sideLength } from '../../../src/engine/kits/outline.ts';
import { everyKit } from '../../support/every-kit.ts';

const ask = (changes: Omit<Partial<SizeAsked>, 'size'> & { size: [number, number?, number?, number?] }): SizeAsked => {
  const [lengthMm, widthMm = 0, cutLengthMm = 0, cutWidthMm = 0] = changes.size;
  return {
    ...{ shape: 'rectangle', courses: 2, thicknessMm: 40, panelsMm: [1200, 900, 600, 450] },
    ...{ ...changes, size: { lengthMm, widthMm, cutLengthMm, cutWidthMm } },
  };
};
const made = (asked: SizeAsked): KitMade => {
  const kit = kitBySize(asked).made;
  if (!kit) throw new Error('It could not be made.');
  return kit;
};
const pieces = (asked: SizeAsked) => made(asked).pieces.map(({ panelMm, count }) => `${count} x ${panelMm}`);
const pinsAt = ({ pins }: KitMade) =>
  (['corner', 'joint', 'end'] as const).map((at) => pins.filter((pin) => pin.at === at).length);

describe('a kit worked out by hand', () => {
  // Each side runs through at one end and butts at the other, so it is one thickness shorter than the kit: 1240 - 40.
  test('one panel to a side', () => {
    const kit = made(ask({ size: [1240, 640] }));
    expect(kit.pieces).toEqual([
      { panelMm: 1200, count: 4 },
      { panelMm: 600, count: 4 },
    ]);
    expect(pinsAt(kit)).toEqual([4, 0, 0]);
    expect(kit.courses.map(({ numbers }) => numbers)).toEqual([[1], [2]]);
  });

  // First course: along the top from the left corner to one thickness short of the right one, and so on round.
  // Second course: along the top from one thickness in to the right corner.
  test('and where its panels stand', () => {
    const { courses } = made(ask({ size: [1240, 640] }));
    const places = courses.map(({ panels }) =>
      panels.map(({ xMm, yMm, widthMm, depthMm }) => [xMm, yMm, widthMm, depthMm]),
    );
    expect(places).toEqual([
      [
        [0, 0, 1200, 40],
        [1200, 0, 40, 600],
        [40, 600, 1200, 40],
        [0, 40, 40, 600],
      ],
      [
        [40, 0, 1200, 40],
        [1200, 40, 40, 600],
        [0, 600, 1200, 40],
        [0, 0, 40, 600],
      ],
    ]);
  });

  test('its pins stand in the middle of each corner', () => {
    const { pins } = made(ask({ size: [1240, 640] }));
    expect(pins.map(({ xMm, yMm }) => [xMm, yMm])).toEqual([
      [20, 20],
      [1220, 20],
      [1220, 620],
      [20, 620],
    ]);
  });

  // 1840 - 40 = 1800 in two panels: 1200 + 600 or 900 + 900. The other side is 900: with 900 + 900 all are of one length.
  test('of the fewest panels, those of the fewest lengths', () => {
    const kit = made(ask({ size: [1840, 940], courses: 3 }));
    expect(kit.pieces).toEqual([{ panelMm: 900, count: 18 }]);
    expect(kit.courses.map(({ numbers }) => numbers)).toEqual([[1, 3], [2]]);
    // Joints at 900 and, in the second course, at 940: the pin at 920 goes through the right panel, then the left one.
    expect(pinsAt(kit)).toEqual([4, 2, 0]);
    expect(kit.pins.filter(({ at }) => at === 'joint').map(({ xMm, yMm }) => [xMm, yMm])).toEqual([
      [920, 20],
      [920, 920],
    ]);
  });

  test('three panels of a length would do where two of two lengths do: the two are taken', () => {
    // 1350 = 900 + 450, or three of 450.
    expect(pieces(ask({ size: [1390, 490], courses: 1 }))).toEqual(['2 x 900', '4 x 450']);
  });

  // One course: the long sides may run through at both ends, 1200, and the short ones butt at both, 680 - 80.
  test('in one course sides may run through at both ends', () => {
    expect(pieces(ask({ size: [1200, 680], courses: 1 }))).toEqual(['2 x 1200', '2 x 600']);
    expect(kitBySize(ask({ size: [1200, 680], courses: 2 })).made).toBeNull();
  });

  // In the next course such sides have to butt at both: 1200 - 80 = 1120, and 640 - 80 = 560 the other way.
  test('in two they step back by two thicknesses, if there are panels for it', () => {
    const kit = made(ask({ size: [1200, 640], panelsMm: [1200, 1120, 640, 560] }));
    expect(kit.pieces.map(({ panelMm, count }) => [panelMm, count])).toEqual([
      [1200, 2],
      [1120, 2],
      [640, 2],
      [560, 2],
    ]);
  });

  // Sides: 1240 - 600 - 40 = 600 along the top; 600 and 600 round the corner left out; 600; then 1200 and 1200.
  test('an L', () => {
    const kit = made(ask({ shape: 'L', size: [1240, 1240, 600, 600] }));
    expect(kit.pieces).toEqual([
      { panelMm: 1200, count: 4 },
      { panelMm: 600, count: 8 },
    ]);
    expect(pinsAt(kit)).toEqual([6, 0, 0]);
    // The inner corner is at 640, 600; its square lies left of it and below.
    expect(kit.pins[2]).toEqual({ at: 'corner', xMm: 620, yMm: 620 });
  });

  test('a row: the panels add up to it, and each has two pins', () => {
    const kit = made(ask({ shape: 'row', size: [1800], courses: 3 }));
    expect(kit.pieces).toEqual([{ panelMm: 900, count: 6 }]);
    expect(pinsAt(kit)).toEqual([0, 2, 2]);
    expect(kit.pins.map(({ xMm }) => xMm)).toEqual([20, 880, 920, 1780]);
    expect(kit.courses.map(({ numbers }) => numbers)).toEqual([[1, 2, 3]]);
  });

  test('in inches: 4 ft by 2 ft of panels 46 1/2 and 22 1/2 in long and 1 1/2 in thick', () => {
    const inches = (count: number) => count * 25.4;
    const asked = ask({
      size: [inches(48), inches(24)],
      thicknessMm: inches(1.5),
      panelsMm: [inches(46.5), inches(22.5)],
    });
    expect(pieces(asked)).toEqual([`4 x ${inches(46.5)}`, `4 x ${inches(22.5)}`]);
  });

  test('a size that differs by a millimetre is that size', () => {
    expect(made(ask({ size: [1241, 640] })).size.lengthMm).toBe(1240);
    expect(kitBySize(ask({ size: [1242, 640] })).made).toBeNull();
  });
});

describe('the nearest sizes', () => {
  const sizes = (asked: SizeAsked) =>
    kitBySize(asked).nearest.map(({ size: { lengthMm, widthMm }, differenceMm }) => [lengthMm, widthMm, differenceMm]);

  // Of 1200 and 600 a side is 600, 1200, 1800 ... and a thickness: 640, 1240, 1840 ...
  test('come with the smallest difference first', () => {
    expect(sizes(ask({ size: [1300, 640], panelsMm: [1200, 600] }))).toEqual([
      [1240, 640, 60],
      [1840, 640, 540],
      [640, 640, 660],
      [1240, 1240, 660],
      [1840, 1240, 1140],
    ]);
  });

  test('are one panel to a side where less was asked for', () => {
    expect(sizes(ask({ size: [100, 100], panelsMm: [1200] }))[0]).toEqual([1240, 1240, 2280]);
  });

  test('of an L move the corner left out too', () => {
    const { made: kit, nearest } = kitBySize(ask({ shape: 'L', size: [1240, 1240, 500, 600], panelsMm: [1200, 600] }));
    expect(kit).toBeNull();
    expect(nearest[0]).toEqual({
      ...{ size: { lengthMm: 1240, widthMm: 1240, cutLengthMm: 600, cutWidthMm: 600 }, differenceMm: 100 },
    });
  });
});

/** Small whole numbers: panels of 2 to 9, 1 thick. */
const smallKit = fc.record({
  shape: fc.constantFrom('rectangle' as const, 'L' as const, 'row' as const),
  whole: fc.tuple(fc.integer({ min: 5, max: 14 }), fc.integer({ min: 5, max: 14 })),
  cut: fc.tuple(fc.integer({ min: 2, max: 6 }), fc.integer({ min: 2, max: 6 })),
  courses: fc.integer({ min: 1, max: 3 }),
  panels: fc.uniqueArray(fc.integer({ min: 2, max: 9 }), { minLength: 1, maxLength: 4 }),
});

const smallAsk = ({ shape, whole, cut, courses, panels }: typeof smallKit extends fc.Arbitrary<infer T> ? T : never) =>
  ask({
    ...{ shape, courses, thicknessMm: 1, panelsMm: panels },
    size: [whole[0], shape === 'row' ? 0 : whole[1], shape === 'L' ? cut[0] : 0, shape === 'L' ? cut[1] : 0],
  });

const sideLengths = ({ shape, size: { lengthMm, widthMm, cutLengthMm, cutWidthMm } }: SizeAsked) =>
  SIDES[shape].map((side) =>
    side.axis === 'x' ? sideLength(side, lengthMm, cutLengthMm) : sideLength(side, widthMm, cutWidthMm),
  );

/** Whether it is this very size and not one a tolerance off. */
const exactly = (asked: SizeAsked): KitMade | null => {
  const kit = kitBySize(asked).made;
  return kit && JSON.stringify(kit.size) === JSON.stringify(asked.size) ? kit : null;
};

describe('against every kit there is', () => {
  test('as few panels and lengths, and none where there is none', () => {
    let could = 0;
    fc.assert(
      fc.property(smallKit, (small) => {
        const asked = smallAsk(small);
        const best = everyKit(SIDES[asked.shape], sideLengths(asked), small.panels, 1, small.courses);
        const kit = exactly(asked);
        if (best) could++;
        const panels = kit?.pieces.reduce((sum, { count }) => sum + count, 0);
        expect(kit && { panels: panels! / small.courses, kinds: kit.pieces.length }).toEqual(best);
      }),
      { numRuns: 400 },
    );
    // A check that never met a kit that can be made would pass everything.
    expect(could).toBeGreaterThan(100);
  });

  test('the nearest size of a rectangle is the nearest of all that can be made', () => {
    fc.assert(
      fc.property(smallKit, (small) => {
        const asked = smallAsk({ ...small, shape: 'rectangle' });
        const { nearest } = kitBySize(asked);
        const limit = nearest[0]!.differenceMm;
        for (let length = 1; length <= 20; length++)
          for (let width = 1; width <= 20; width++) {
            const off = Math.abs(length - asked.size.lengthMm) + Math.abs(width - asked.size.widthMm);
            if (off >= limit) continue;
            expect(
              everyKit(SIDES.rectangle, [length, width, length, width], small.panels, 1, small.courses),
            ).toBeNull();
          }
        const { lengthMm, widthMm } = nearest[0]!.size;
        expect(
          everyKit(SIDES.rectangle, [lengthMm, widthMm, lengthMm, widthMm], small.panels, 1, small.courses),
        ).not.toBeNull();
      }),
      { numRuns: 60 },
    );
  });
});

const area = ({ widthMm, depthMm }: { widthMm: number; depthMm: number }) => widthMm * depthMm;
const overlap = (a: KitMade['courses'][0]['panels'][0], b: typeof a): number =>
  Math.max(0, Math.min(a.xMm + a.widthMm, b.xMm + b.widthMm) - Math.max(a.xMm, b.xMm)) *
  Math.max(0, Math.min(a.yMm + a.depthMm, b.yMm + b.depthMm) - Math.max(a.yMm, b.yMm));

describe('every course', () => {
  test('covers the wall exactly once, and every pin goes through a sleeve in it', () => {
    let courses = 0;
    fc.assert(
      fc.property(smallKit, (small) => {
        const asked = smallAsk(small);
        // Sides too near each other would overlap whatever stands on them.
        fc.pre(asked.shape === 'row' || sideLengths(asked).every((length) => length >= 3));
        const kit = exactly(asked);
        if (!kit) return;
        const { lengthMm, widthMm, cutLengthMm, cutWidthMm } = kit.size;
        const outer = lengthMm * widthMm - cutLengthMm * cutWidthMm;
        const inner = (lengthMm - 2) * (widthMm - 2) - cutLengthMm * cutWidthMm;
        for (const { panels } of kit.courses) {
          courses++;
          expect(panels.reduce((sum, panel) => sum + area(panel), 0)).toBe(
            asked.shape === 'row' ? lengthMm : outer - inner,
          );
          for (const [index, panel] of panels.entries())
            for (const other of panels.slice(index + 1)) expect(overlap(panel, other)).toBe(0);
          for (const pin of kit.pins.filter(({ at }) => asked.courses > 1 || at !== 'joint'))
            expect(panels.some((panel) => sleeves(panel).some(([x, y]) => x === pin.xMm && y === pin.yMm))).toBe(true);
        }
      }),
      { numRuns: 800 },
    );
    expect(courses).toBeGreaterThan(100);
  });

  test('turns every corner the other way than the one below', () => {
    const { courses, pins } = made(ask({ shape: 'L', size: [1240, 1240, 600, 600] }));
    const throughAt = (course: number) =>
      pins.map(
        (pin) =>
          courses[course]!.panels.find((panel) => sleeves(panel).some(([x, y]) => x === pin.xMm && y === pin.yMm))
            ?.side,
      );
    expect(throughAt(0)).toEqual([0, 1, 2, 3, 4, 5]);
    expect(throughAt(1)).toEqual([5, 0, 1, 2, 3, 4]);
  });
});

/** In both ends of a panel, half a thickness in. */
const sleeves = ({ xMm, yMm, widthMm, depthMm }: KitMade['courses'][0]['panels'][0]) => {
  const half = Math.min(widthMm, depthMm) / 2;
  return [
    [xMm + half, yMm + half],
    [xMm + widthMm - half, yMm + depthMm - half],
  ] as const;
};

test('gives the same kit for the lengths in any order', () => {
  const asked = ask({ size: [3640, 2740], courses: 3 });
  expect(kitBySize({ ...asked, panelsMm: [450, 600, 900, 1200] })).toEqual(kitBySize(asked));
});

test('says so when the effort was spent before it knew the fewest lengths', () => {
  const asked = ask({ size: [3640, 2740] });
  expect(kitBySize(asked, 10).made?.proven).toBe(false);
  const panels = (kit: KitMade | null) => kit?.pieces.reduce((sum, { count }) => sum + count, 0);
  expect(panels(kitBySize(asked, 10).made)).toBe(panels(kitBySize(asked).made));
  expect(kitBySize(asked).made?.proven).toBe(true);
});

test('refuses panels that have no length to speak of', () => {
  expect(() => kitBySize(ask({ size: [1240, 640], panelsMm: [40] }))).toThrow('longer than they are thick');
  expect(() => kitBySize(ask({ size: [1240, 640], panelsMm: [] }))).toThrow('longer than they are thick');
});
