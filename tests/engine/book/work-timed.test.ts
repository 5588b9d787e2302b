import { expect, test } from 'vitest';
import { minuteOf } from '../../../shared/time.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';
import { begunAtTap } from '../../../src/engine/book/work-timed.ts';

const at = (clock: string) => `2027-04-10T${clock}:00+01:00`;
const minute = (clock: string) => minuteOf(at(clock));
const strip = (clock: string, tapped = true): WorkRecord => ({
  ...{ kind: 'stripped', at: at(clock), mould: 'A', casting: 'panel', filledAt: at('08:00'), cameOut: 'good' },
  ...(tapped ? { tappedAt: at(clock) } : {}),
});
const task = { planned: minute('10:02'), tapped: minute('10:20'), others: [minute('10:30')], people: 1 };

test.each([
  ['it comes right after what was tapped', [strip('10:00')], task, at('10:00')],
  ['what was before it was told of later', [strip('10:00'), strip('09:00', false)], task, null],
  ['nothing was tapped yet', [], task, null],
  ['two people are there', [strip('10:00')], { ...task, people: 2 }, null],
  ['somebody waited for it', [strip('09:50')], task, null],
  ['something else was to be done first', [strip('10:00')], { ...task, others: [minute('09:58')] }, null],
  ['there was a long break', [strip('10:00')], { ...task, tapped: minute('15:00') }, null],
] as const)('when a task was begun, where %s', (_, records, tapped, from) => {
  expect(begunAtTap(records, tapped)).toBe(from);
});
