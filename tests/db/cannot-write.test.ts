import { expect, test } from 'vitest';
import { cannotWrite } from '../../db/cannot-write.ts';

const failure = (code: string) => Object.assign(new Error(code), { code });

test('why nothing can be written is known however deep the driver has wrapped it', () => {
  for (const [code, why] of [
    ['SQLITE_FULL', 'full'],
    ['ENOSPC', 'full'],
    ['SQLITE_READONLY_DBMOVED', 'read-only'],
    ['EROFS', 'read-only'],
    ['SQLITE_BUSY', null],
    ['SQLITE_CONSTRAINT', null],
  ] as const)
    expect([code, cannotWrite(new Error('Failed query', { cause: failure(code) }))]).toEqual([code, why]);
  expect(cannotWrite('SQLITE_FULL')).toBe(null);
});
