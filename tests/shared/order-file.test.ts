import { describe, expect, test } from 'vitest';
import { readOrderFor } from '../../shared/order-file.ts';
import { readYardFile } from '../../shared/yard-file.ts';
import { planYard } from '../../src/engine/plan.ts';
import { smallYard } from '../support/small-yard.ts';

const yard = smallYard();
const faultsOf = (input: unknown) => {
  const read = readOrderFor(yard, input);
  return read.ok ? [] : read.faults.map((f) => `${f.path}: ${f.message}`);
};
const lines = [{ kit: 'pair', quantity: 1 }];

test('an order that fits the yard is read with its defaults, its date left out', () => {
  expect(readOrderFor(yard, { id: 'new', due: '2027-04-17', lines })).toEqual({
    ok: true,
    order: { id: 'new', weight: 1, lines },
  });
});

test('is read beside moulds that are full and pours that are fixed, whoever they are for', () => {
  const plan = planYard(yard, { effort: 'quick' });
  const keep = { batches: plan.batches, pours: plan.pours };
  const [mould] = yard.moulds;
  const inMould = [{ mould: mould!.id, casting: mould!.setFor, filledAt: yard.yard.now, order: '27-001' }];
  const read = readYardFile({ ...yard, keep, inMould });
  if (!read.ok) throw new Error('the yard has faults');
  expect(readOrderFor(read.yard, { id: 'new', lines })).toEqual({ ok: true, order: { id: 'new', weight: 1, lines } });
});

describe('faults, each with the path in the order itself', () => {
  test.each([
    [{ id: '27-001', lines }, 'id: "27-001" is given twice'],
    [{ id: 'new', lines: [{ kit: 'trio', quantity: 1 }] }, 'lines[0].kit: no kit named "trio"'],
    [{ id: 'new', lines: [{ casting: 'x', quantity: 1 }] }, 'lines[0].casting: no casting named "x"'],
    [{ id: 'new', lines, due: '2027-02-29' }, 'due: is no date that exists (YYYY-MM-DD)'],
    [{ id: 'new', lines, colour: 'red' }, 'colour: is not a field of this format'],
    [{ id: 'new' }, 'lines: is missing'],
    ['new', 'file: has to be of type object'],
  ])('%j', (input, fault) => expect(faultsOf(input)).toContain(fault));

  test('all at once', () => {
    expect(faultsOf({ id: '', weight: -1, lines: [{ kit: 'trio', quantity: 0.5 }, { quantity: 1 }] })).toHaveLength(5);
  });
});
