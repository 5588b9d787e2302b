import { expect, test } from 'vitest';
import { mend, scrap } from '../../../src/engine/book/mend.ts';
import { saturday } from '../../support/planned-yard.ts';

const mark = { mould: '900 no. 1', filledAt: saturday('09:00') };
const waiting = { id: 7, casting: 'panel-900', ...mark };

test('a piece that is mended is a finished one of nobody, fit to go out from then', () => {
  const readyAt = saturday('12:00');
  expect(mend(waiting, readyAt)).toEqual([
    { kind: 'aside no more', id: 7 },
    { kind: 'pieces in', lot: { casting: 'panel-900', readyAt, order: null }, count: 1, mark },
  ]);
});

test('one that is lost after all waits no more', () => {
  expect(scrap(waiting)).toEqual([{ kind: 'aside no more', id: 7 }]);
});
