import { expect, test } from 'vitest';
import type { Casting } from '../../../shared/casting.ts';
import { leftOver } from '../../../src/engine/pack/left-over.ts';

const casting = (kg: number, fillMinutes: number) => ({ kg, fillMinutes }) as Casting;
const panel = casting(13.5, 8);
const MIX = { yieldKgPerBag: 27.5 };
const oneBag = { bags: 1, kg: 13.5, castings: [panel], workingMinutes: 15 };

test('a second fill that does not fit the working time is named, with its minutes', () => {
  expect(leftOver(oneBag, MIX, [panel])).toEqual({
    bags: (27.5 - 13.5) / 27.5,
    why: { kind: 'working time', fills: 2, minutes: 8, alike: true, workingMinutes: 15 },
  });
  expect(leftOver(oneBag, MIX, [panel, casting(4, 7)])?.why).toEqual({ kind: 'nothing to pour' });
  expect(leftOver({ ...oneBag, workingMinutes: 14 }, MIX, [panel, casting(4, 7)])?.why).toMatchObject({
    ...{ kind: 'working time', fills: 2, minutes: 7, alike: false },
  });
});

test('where no piece is so light, that is the reason', () => {
  expect(leftOver({ ...oneBag, kg: 18 }, MIX, [panel])?.why).toEqual({ kind: 'nothing so light', kg: 9.5 });
});

test('a third of a bag or less is not worth telling', () => {
  expect(leftOver({ ...oneBag, bags: 0.5 }, MIX, [panel])).toBeNull();
  expect(
    leftOver({ bags: 3, kg: 80, castings: [panel], workingMinutes: 15 }, { yieldKgPerBag: 30 }, [panel]),
  ).toBeNull();
  expect(
    leftOver({ bags: 3, kg: 79.9, castings: [panel], workingMinutes: 60 }, { yieldKgPerBag: 30 }, [casting(9, 8)])
      ?.bags,
  ).toBeCloseTo(0.337, 3);
});
