import { describe, expect, test } from 'vitest';
import type { FigureOf } from '../../../shared/figure.ts';
import { restsOn } from '../../../src/usecases/plan/rests-on.ts';
import { smallYard } from '../../support/small-yard.ts';

const yard = smallYard();
const kit = [{ kit: 'pair', quantity: 1 }];
const guess = (kind: FigureOf['kind'], id: string, figure: string): FigureOf => ({ kind, id, figure });

describe('what a date rests on', () => {
  test('is the mix where how it behaves is guessed, the bags where what they give or hold is', () => {
    expect(restsOn(yard, kit, [guess('mix', 'thin', 'demouldMinutes')])).toEqual(['mix']);
    expect(restsOn(yard, kit, [guess('mix', 'thin', 'yieldKgPerBag')])).toEqual(['bags']);
    expect(restsOn(yard, kit, [guess('casting', 'panel-900', 'kg')])).toEqual(['bags']);
    expect(restsOn(yard, kit, [guess('material', 'mortar', 'leadDays')])).toEqual(['bags']);
    const both = [guess('material', 'mortar', 'onHand'), guess('mix', 'thin', 'cureHours')];
    expect(restsOn(yard, [{ casting: 'panel-900', quantity: 1 }], both)).toEqual(['bags', 'mix']);
  });

  test('is not what has nothing to do with it', () => {
    const others = [
      ...[guess('mix', 'coping', 'cureHours'), guess('material', 'rod', 'onHand'), guess('casting', 'panel-600', 'kg')],
      ...[guess('casting', 'panel-900', 'fillMinutes'), guess('yard', 'yard', 'temperatures')],
    ];
    expect(restsOn(yard, kit, others)).toEqual([]);
    expect(restsOn(yard, [{ material: 'rod', quantity: 2 }], [guess('mix', 'thin', 'cureHours')])).toEqual([]);
    expect(restsOn(yard, kit, [])).toEqual([]);
  });
});
