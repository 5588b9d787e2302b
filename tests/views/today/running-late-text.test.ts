import { expect, test } from 'vitest';
import type { RetimedSession } from '../../../src/usecases/today/retimed-session.ts';
import { retimedText, tooLateText } from '../../../views/today/running-late-text.ts';

const at = (clock: string): string => `2027-04-10T${clock}:00+01:00`;
const strip = (mould: string, from: string, until: string) => ({
  ...{ kind: 'strip' as const, name: mould, mould, piece: 'Panel 900', customer: null },
  ...{ at: at(from), until: at(until), mayFrom: at(from), people: 1, inMould: true, lift: null, pieceKey: mould },
});
const retimed = (changes: Partial<RetimedSession>): RetimedSession => ({
  ...{ minutes: 25, steps: [strip('900 no. 1', '12:00', '12:10'), strip('900 no. 2', '12:25', '12:40')] },
  ...{ tooLate: [], end: at('12:30'), toLeave: [] },
  ...changes,
});

test('a slip is said by how much later all is, until when, and what no longer fits', () => {
  expect(retimedText(retimed({}))).toBe('All that is left begins 25 minutes later, and the last of it ends by 12:40.');
  expect(retimedText(retimed({ minutes: 61 }))).toContain('65 minutes later');
  expect(retimedText(retimed({ minutes: 0 }))).toBe(
    'The next step was to begin later than that, and the last of it ends by 12:40.',
  );
  expect(retimedText(retimed({ steps: [] }))).toBe('Nothing is left to begin in this session.');
  const [first, second] = retimed({}).steps;
  expect(tooLateText(retimed({ tooLate: [second!] }))).toBe(
    'The time for work ends at 12:30: strip 900 no. 2 (12:25) no longer fits.',
  );
  expect(tooLateText(retimed({ tooLate: [first!, second!] }))).toBe(
    'The time for work ends at 12:30: strip 900 no. 1 (12:00) and strip 900 no. 2 (12:25) no longer fit.',
  );
});
