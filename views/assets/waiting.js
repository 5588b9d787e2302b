// Taps made while nobody answers are kept on the phone and sent later, in order, each once: the server knows their keys.

import { actOf, isSame, mayWait } from './acts.js';
import { showAnew } from './show-anew.js';
import { showWaiting } from './waiting-list.js';
import { openStore } from './waiting-store.js';

const PATIENCE_MS = 20_000;
/** A file takes a while where the signal is weak. */
const FILE_PATIENCE_MS = 120_000;
const AGAIN_MS = 20_000;
/** So answers whatever stands before a server that is down. */
const NO_SERVER = [502, 503, 504];

const store = await openStore();
/** Acts that are being sent by a form of this page: they wait for nothing yet. */
const underWay = new Set();
let acts = [];

const waiting = () => acts.filter(({ refusal, key }) => refusal === undefined && !underWay.has(key));

const look = async () => {
  acts = await store.all();
  showWaiting(
    acts.filter(({ key }) => !underWay.has(key)),
    putAway,
  );
};

const putAway = async ({ place }) => {
  await store.remove(place);
  await look();
};

// The words of a page that refuses: of its list of faults, or else its first line.
const refusalIn = (html) => {
  const page = new DOMParser().parseFromString(html, 'text/html');
  const faults = [...page.querySelectorAll('.form-errors li, .asked [data-fault]')].map(
    ({ textContent }) => textContent,
  );
  const words = new Set(faults.length > 0 ? faults : [page.querySelector('h1')?.textContent ?? 'It was not taken.']);
  return [...words].map((text) => text.trim()).join(' ');
};

const bodyOf = ({ fields, key, file }) => {
  const said = [...fields, ['act', key]];
  if (!file) return new URLSearchParams(said);
  const body = new FormData();
  for (const [name, value] of said) body.append(name, value);
  body.append(file.field, new File([file.bytes], 'file', { type: file.type }));
  return body;
};

/** Throws where nobody answers. */
const answerTo = async (act, how) => {
  const signal = AbortSignal.timeout(act.file ? FILE_PATIENCE_MS : PATIENCE_MS);
  const answer = await fetch(act.action, { method: 'POST', body: bodyOf(act), signal, ...how });
  if (NO_SERVER.includes(answer.status)) throw new Error('There is no server.');
  return answer;
};

const AS_PART = { redirect: 'manual', headers: { 'HX-Request-Type': 'partial', 'HX-Target': 'main#page' } };

/** Null once it is done; else why it is not. */
const send = async (act) => {
  const answer = await answerTo(act, AS_PART);
  return answer.type === 'opaqueredirect' || answer.ok ? null : refusalIn(await answer.text());
};

const sendNext = async () => {
  const [act] = waiting();
  if (!act) return false;
  const refusal = await send(act);
  if (refusal === null) await store.remove(act.place);
  else await store.put({ ...act, refusal });
  await look();
  return true;
};

let sending = false;
const sendAll = async () => {
  if (sending) return;
  sending = true;
  let sent = false;
  try {
    await look();
    while (await sendNext()) sent = true;
  } catch {
    // Nobody answers: they go on waiting.
  } finally {
    sending = false;
  }
  if (sent) showAnew();
};

const keep = async (act) => {
  const again = waiting().some((one) => isSame(one, act));
  if (!again) await store.add(act);
  await look();
};

const WAITS = { address: null };

/**
 * Sends a form with one file, or keeps it as taps are kept. Where it leads once it is done, no address while it waits; null where
 * it was refused, or this browser keeps nothing: then it is sent as any form.
 */
export const sendFile = async (act) => {
  if (!store) return null;
  if (waiting().length > 0) {
    await keep(act);
    sendAll();
    return WAITS;
  }
  underWay.add(act.key);
  const place = await store.add(act);
  try {
    const { redirected, url } = await answerTo(act, {});
    await store.remove(place);
    return redirected ? { address: url } : null;
  } catch {
    return WAITS;
  } finally {
    underWay.delete(act.key);
    await look();
  }
};

const hear = (name, listen) =>
  document.addEventListener(name, (event) => {
    const ctx = event.detail?.ctx;
    if (ctx?.act || name === 'htmx:config:request') listen(ctx, event);
  });

const takePart = () => {
  hear('htmx:config:request', (ctx) => {
    const { request } = ctx;
    if (!mayWait(request)) return;
    ctx.act = actOf(request);
    request.body.set('act', ctx.act.key);
    request.timeout = PATIENCE_MS;
  });
  // What waits comes first, so this waits behind it. Else it is in the store while it is on its way: the page may be closed.
  hear('htmx:before:request', (ctx, event) => {
    if (waiting().length > 0) {
      event.preventDefault();
      keep(ctx.act).then(sendAll);
      return;
    }
    underWay.add(ctx.act.key);
    ctx.stored = store.add(ctx.act);
  });
  const answered = async (ctx) => {
    await store.remove(await ctx.stored);
    underWay.delete(ctx.act.key);
    await look();
  };
  const unanswered = async (ctx) => {
    await ctx.stored;
    underWay.delete(ctx.act.key);
    await look();
  };
  hear('htmx:before:response', (ctx, event) => {
    if (!NO_SERVER.includes(ctx.response.status)) return answered(ctx);
    event.preventDefault();
    return unanswered(ctx);
  });
  hear('htmx:error', unanswered);
  document.addEventListener('htmx:after:swap', look);
  window.addEventListener('online', sendAll);
  document.addEventListener('visibilitychange', () => document.hidden || sendAll());
  setInterval(() => waiting().length > 0 && sendAll(), AGAIN_MS);
  sendAll();
};

if (store) takePart();
