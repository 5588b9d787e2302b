import { expect, test } from 'vitest';
import { mixStages } from '../../../views/charts/mix-times-geometry.ts';

test('the stages of a mix stand side by side, to time', () => {
  expect(mixStages({ mixMinutes: 10, workingMinutes: 20, warmMinutes: 60, coldMinutes: 90 }, 100)).toEqual([
    { stage: 'mixed', x: 0, width: 10 },
    { stage: 'worked', x: 10, width: 20 },
    { stage: 'setting', x: 30, width: 40 },
    { stage: 'either', x: 70, width: 30 },
  ]);
});

test('what takes no time, or is over before what is before it, is left out', () => {
  const stages = (times: Parameters<typeof mixStages>[0]) => mixStages(times, 90).map(({ stage }) => stage);
  expect(stages({ mixMinutes: 0, workingMinutes: 20, warmMinutes: 90, coldMinutes: 90 })).toEqual([
    'worked',
    'setting',
  ]);
  expect(stages({ mixMinutes: 5, workingMinutes: 60, warmMinutes: 30, coldMinutes: 85 })).toEqual([
    'mixed',
    'worked',
    'either',
  ]);
});
