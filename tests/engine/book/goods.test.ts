import { describe, expect, test } from 'vitest';
import { bagsOfPieces, goodsOfBatch, goodsOfLines, goodsOfOrder } from '../../../src/engine/book/goods.ts';
import { shortOf } from '../../../src/engine/book/stock-taken.ts';
import { plannedYard } from '../../support/planned-yard.ts';

const yard = plannedYard();
const [mix] = yard.mixes;
const twoPanels = ['panel-900', 'panel-900'];
const stocked = (material: string, onHand: number) => ({
  castings: yard.castings,
  ...{ materials: yard.materials.map((one) => (one.id === material ? { ...one, onHand } : one)) },
});

/* By hand: a batch takes 1 bag and twice 0.16 of mesh, the order two lengths of rod. */
describe('what is taken', () => {
  test('of a batch is its bags and what goes into each piece', () => {
    expect(goodsOfBatch(mix!, 1, twoPanels, yard)).toEqual({
      goods: [
        { material: 'mortar', quantity: 1 },
        { material: 'mesh', quantity: 0.16 },
        { material: 'mesh', quantity: 0.16 },
      ],
      cuts: [],
    });
  });

  test('adds up, and the first material there is too little of is named', () => {
    const { goods, cuts } = goodsOfBatch(mix!, 1, twoPanels, yard);
    expect(shortOf(stocked('mesh', 0.64), { goods: [...goods, ...goods], cuts }, [])).toBeNull();
    expect(shortOf(stocked('mesh', 0.64), { goods: [...goods, ...goods, ...goods], cuts }, [])).toBe('Mesh');
    expect(shortOf(stocked('mesh', 0.31), { goods, cuts }, [])).toBe('Mesh');
  });

  test('of an order is its lengths, which a share of a stick is not enough for', () => {
    const { lines } = yard.orders[0]!;
    const taken = goodsOfOrder(lines, yard);
    expect(taken).toEqual({ goods: [], cuts: [{ material: 'rod', lengthMm: 300, count: 2 }] });
    expect(shortOf(stocked('rod', 0.9), taken, [])).toBe('Rod 12 mm');
    expect(shortOf(stocked('rod', 1), taken, [])).toBeNull();
    expect(shortOf(stocked('mesh', 0), taken, [])).toBeNull();
  });

  test('of bags is the mass rounded up to what can be mixed, and none for pieces without weight', () => {
    expect(bagsOfPieces({ ...mix!, bagStep: 0.5 }, ['panel-900'], yard)).toBe(0.5);
    expect(bagsOfPieces(mix!, twoPanels, yard)).toBe(1);
    expect(bagsOfPieces(mix!, [], yard)).toBe(0);
  });

  test('of a batch is what is cut for each piece, too', () => {
    const cuts = [{ material: 'rod', lengthMm: 297, count: 2 }];
    const reinforced = { ...yard, castings: yard.castings.map((casting) => ({ ...casting, cuts })) };
    expect(goodsOfBatch(mix!, 1, twoPanels, reinforced).cuts).toEqual([...cuts, ...cuts]);
  });

  test('of lines is kits so many times over, and pieces and materials as they are', () => {
    const parts = [{ material: 'mortar', quantity: 0.5 }];
    const kits = yard.kits.map((kit) => ({ ...kit, parts }));
    const lines = [
      { kit: 'pair', quantity: 3 },
      { casting: 'panel-900', quantity: 2 },
      { material: 'mortar', quantity: 1 },
    ];
    expect(goodsOfLines(lines, { kits })).toEqual({
      pieces: new Map([['panel-900', 8]]),
      parts: new Map([['mortar', 2.5]]),
      cuts: [{ material: 'rod', lengthMm: 300, count: 6 }],
    });
  });

  test('may be all there is, give or take what fractions are off', () => {
    const mesh = (quantity: number) => ({ goods: [{ material: 'mesh', quantity }], cuts: [] });
    expect(shortOf(stocked('mesh', 0.16), mesh(0.16 + 1e-9), [])).toBeNull();
    expect(shortOf(stocked('mesh', 0.16), mesh(0.161), [])).toBe('Mesh');
  });
});
