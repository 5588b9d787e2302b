import { randomUUID } from 'node:crypto';
import type { RealServer } from './real-server.ts';

/** What a form came to: where it led, or the page that came back with what was wrong or asked. */
export type Answer = { done: true; location: string } | { done: false; status: number; html: string };

/** Somebody with a browser at a server that may be killed at any moment, and is started again then. */
export interface PageVisitor {
  page(path: string): Promise<string>;
  /** Sends a form under a key of its own. Where the server is gone before it answers, the same is sent again once it is back. */
  send(action: string, fields: Readonly<Record<string, string>>): Promise<Answer>;
  /** The server is killed so many milliseconds after the next form is sent. */
  killDuringNext(afterMs: number): void;
  kills: number;
  /** Forms of which nobody heard whether they had been done, and that were sent again. */
  sentAgain: number;
}

const waited = (ms: number): Promise<void> => new Promise((resolve) => void setTimeout(resolve, ms));

export const pageVisitor = (server: RealServer): PageVisitor => {
  let killAfter: number | null = null;
  const post = (action: string, body: string): Promise<Response> =>
    server.request(action, {
      method: 'POST',
      body,
      headers: { 'content-type': 'application/x-www-form-urlencoded' },
    });
  const answerOf = async (response: Response): Promise<Answer> => {
    const html = await response.text();
    const location = response.headers.get('location');
    return response.status === 303 && location
      ? { done: true, location }
      : { done: false, status: response.status, html };
  };
  const sendAndKill = async (action: string, body: string, afterMs: number): Promise<Answer> => {
    // A tap and a power cut: whichever comes first.
    const sent = post(action, body)
      .then(answerOf)
      .catch(() => null);
    await waited(afterMs);
    await server.kill();
    visitor.kills += 1;
    const answer = await sent;
    await server.start();
    if (answer) return answer;
    visitor.sentAgain += 1;
    return answerOf(await post(action, body));
  };
  const visitor: PageVisitor = {
    kills: 0,
    sentAgain: 0,
    page: async (path) => {
      const response = await server.request(path);
      const text = await response.text();
      if (response.status >= 400) throw new Error(`${path} answered ${response.status}: ${text.slice(0, 300)}`);
      return text;
    },
    killDuringNext: (afterMs) => {
      killAfter = afterMs;
    },
    send: async (action, fields) => {
      const body = new URLSearchParams({ ...fields, act: randomUUID() }).toString();
      const afterMs = killAfter;
      killAfter = null;
      return afterMs === null ? answerOf(await post(action, body)) : sendAndKill(action, body, afterMs);
    },
  };
  return visitor;
};
