import { describe, expect, test } from 'vitest';
import { demoScreens, textOf } from '../support/screens.ts';

describe('how sure the day of an order is', () => {
  test('is worked out when it is asked, on its page or as a part of it, and rests on guesses in a yard without a record', async () => {
    const { get } = await demoScreens();
    expect(await textOf(await get('/orders/27-010'))).toContain('How sure is that day? Work out its odds');
    const text = await textOf(await get('/orders/27-010?sure=yes'));
    expect(text).toMatch(
      /How sure is that day\? (\d+ in \d+ by Sat \d+ (Apr|May)( and )?)+\. Sat 1 May, its date, is kept/,
    );
    expect(text).toContain('Rests on 0 pieces, 0 days with work and 3 deliveries on record, and on guesses');
    const part = await get('/orders/27-010/odds', { 'HX-Request': 'true' });
    expect(await textOf(part)).toMatch(/^\d+ in \d+ by Sat/);
  });

  test('is not there for an order that is not', async () => {
    const { get } = await demoScreens();
    expect((await get('/orders/27-999/odds')).status).toBe(404);
  });
});
