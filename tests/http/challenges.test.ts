import { expect, test } from 'vitest';
import { heldChallenges } from '../../src/http/challenges.ts';

const NOW = '2027-04-05T07:30:00Z';

/** As a browser sends it back. */
const sent = (challenge: string): string => Buffer.from(challenge).toString('base64url');

test('a challenge is taken once, for what it was made for, within five minutes, and by whom it was made', async () => {
  const challenges = heldChallenges();
  const made = sent(await challenges.make('for 1', NOW));
  expect(await challenges.take(made, 'for 2', NOW)).toBe('none');
  expect(await challenges.take(made, 'for 1', '2027-04-05T07:35:00Z')).toBe('over');
  expect(await heldChallenges().take(made, 'for 1', NOW)).toBe('none');
  expect(await challenges.take(made, 'for 1', '2027-04-05T07:34:00Z')).toBe('good');
  expect(await challenges.take(made, 'for 1', '2027-04-05T07:34:00Z')).toBe('none');
});

test('one that somebody made up, or put another end to, is none', async () => {
  const challenges = heldChallenges();
  const made = await challenges.make('for 1', NOW);
  const later = made.replace(/ \d+ /, ` ${Date.parse(NOW) + 86_400_000} `);
  for (const other of ['', 'a b c', later, made.replace('for 1', 'for 2')])
    for (const purpose of ['for 1', 'for 2']) expect(await challenges.take(sent(other), purpose, NOW)).toBe('none');
});
