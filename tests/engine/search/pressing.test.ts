import { expect, test } from 'vitest';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { pressingOf } from '../../../src/engine/search/pressing.ts';
import { smallYard } from '../../support/small-yard.ts';

const base = smallYard();
const long = { ...base.castings[0]!, id: 'panel-1200' };
const line = (casting: string, quantity: number) => ({ casting, quantity });

// Thursday 8 April. Weight 2 due on the 10th, two days on: 2 / 3. Without a date: as due in a year, 1 / 366.
test('an order presses by its weight and its date', () => {
  const orders = [
    { id: 'a', due: '2027-04-10', weight: 2, lines: [line('panel-900', 1)] },
    { id: 'b', weight: 1, lines: [line('panel-900', 1)] },
    { id: 'c', due: '2027-03-01', weight: 1, lines: [line('panel-900', 1)] },
  ];
  const { urgency } = pressingOf(compile(smallYard({ orders })));
  expect(urgency[0]).toBeCloseTo(2 / 3);
  expect(urgency[1]).toBeCloseTo(1 / 366);
  expect(urgency[2]).toBe(1);
});

// Three short ones in two moulds are 1.5 turns each; two long ones in one mould are 2.
test('a casting presses by the turns that its moulds have to make', () => {
  const pressing = pressingOf(
    compile(
      smallYard({
        castings: [base.castings[0]!, long],
        moulds: [
          ...base.moulds,
          { id: '1200', makes: [{ casting: 'panel-1200' }], setFor: 'panel-1200', condition: 'ready' },
        ],
        orders: [{ id: 'a', lines: [line('panel-900', 3), line('panel-1200', 2)] }],
      }),
    ),
  );
  expect([...pressing.scarcity]).toEqual([1.75, 2]);
});

test('castings of the very same moulds press as one', () => {
  const makes = [{ casting: 'panel-900' }, { casting: 'panel-1200' }];
  const pressing = pressingOf(
    compile(
      smallYard({
        castings: [base.castings[0]!, long],
        moulds: base.moulds.map((mould) => ({ ...mould, makes })),
        orders: [{ id: 'a', lines: [line('panel-900', 3), line('panel-1200', 1)] }],
      }),
    ),
  );
  expect([...pressing.scarcity]).toEqual([2, 2]);
});
