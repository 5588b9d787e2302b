const GOOD_FOR_MINUTES = 5;

const MINUTE_MS = 60_000;

const encoder = new TextEncoder();

/** Said to whoever answered to one that is over. */
export const OPEN_TOO_LONG = 'This page was open for too long. Try again: the passkey is fine.';

export interface Challenges {
  /** A challenge for a device to sign, for one purpose, good for five minutes. */
  make(purpose: string, now: string): Promise<string>;
  /** "good" once for one that was made here, for that purpose; "over" where its time is. It comes as browsers send it, in base64url. */
  take(challenge: string, purpose: string, now: string): Promise<'good' | 'over' | 'none'>;
}

/**
 * Challenges that nobody else can make: each carries what it is for, until when, and a mark by a key that is gone with the
 * process (HMAC, RFC 2104). So nothing is kept of those that are never answered, however many are asked for.
 */
export const heldChallenges = (): Challenges => {
  const key = crypto.subtle.generateKey({ name: 'HMAC', hash: 'SHA-256' }, false, ['sign', 'verify']);
  const used = new Map<string, number>();
  const markOf = async (text: string): Promise<string> =>
    Buffer.from(await crypto.subtle.sign('HMAC', await key, encoder.encode(text))).toString('hex');
  const forgetOld = (now: number): void => {
    for (const [one, until] of used) if (until <= now) used.delete(one);
  };
  return {
    make: async (purpose, now) => {
      const text = `${Date.parse(now) + GOOD_FOR_MINUTES * MINUTE_MS} ${crypto.randomUUID()} ${purpose}`;
      return `${await markOf(text)} ${text}`;
    },
    take: async (challenge, purpose, now) => {
      const [mark = '', ...rest] = Buffer.from(challenge, 'base64url').toString().split(' ');
      const [until, at] = [Number(rest[0]), Date.parse(now)];
      if ((await markOf(rest.join(' '))) !== mark || rest.slice(2).join(' ') !== purpose) return 'none';
      if (until <= at) return 'over';
      forgetOld(at);
      if (used.has(mark)) return 'none';
      used.set(mark, until);
      return 'good';
    },
  };
};

/** Whether an answer is to a challenge of one purpose, and, once that was asked, whether it was to one that is over. */
export const answering = (challenges: Challenges, purpose: string, now: string) => {
  let last: Awaited<ReturnType<Challenges['take']>> = 'none';
  const isChallenge = async (challenge: string): Promise<boolean> => {
    last = await challenges.take(challenge, purpose, now);
    return last === 'good';
  };
  return { isChallenge, isOver: () => last === 'over' };
};
