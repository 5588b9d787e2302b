import { expect, test } from 'vitest';
import { isBusy, whileBusy } from '../../db/busy.ts';

const failure = (code: string) => Object.assign(new Error(code), { code });
const wrapped = (code: string) => new Error('Failed query', { cause: failure(code) });

test('a busy database is known however deep the driver has wrapped it', () => {
  expect(isBusy(failure('SQLITE_BUSY'))).toBe(true);
  expect(isBusy(wrapped('SQLITE_BUSY_SNAPSHOT'))).toBe(true);
  expect(isBusy(wrapped('SQLITE_CONSTRAINT'))).toBe(false);
  expect(isBusy('SQLITE_BUSY')).toBe(false);
});

test('work on a busy database is tried again, on a new connection each time', async () => {
  const events: string[] = [];
  const work = async () => {
    events.push('try');
    if (events.length < 4) throw wrapped('SQLITE_BUSY');
    return 'done';
  };
  expect(await whileBusy(work, async () => void events.push('reconnect'))).toBe('done');
  expect(events).toEqual(['try', 'reconnect', 'try', 'reconnect', 'try']);
});

test('any other error is not tried again', async () => {
  let tries = 0;
  const work = async () => {
    tries += 1;
    throw failure('SQLITE_CONSTRAINT');
  };
  await expect(whileBusy(work, async () => undefined)).rejects.toThrow('SQLITE_CONSTRAINT');
  expect(tries).toBe(1);
});
