// A tap as it is kept: a key of its own, what its form says, and when it was.

import { ownPath } from './own-path.js';

/** Forms that may wait: those for which somebody stands in the yard. */
const FORMS = /^\/(today|moulds)\//;
/**
 * Those of them that only show first what they would do, which nobody would see when they are sent later; a thermometer that was read
 * says nothing of the hour in which it would be.
 */
const ASKED_FIRST = /^\/today\/(another-hour|left-out|one-more|running-late|thermometer)$/;
/** Those of them that say when something was done. */
const TIMED = /^\/today\/(coated|covered|mixed|mixing|packed|poured|prepared|stripped)$/;

export const mayWait = ({ method, action }) =>
  method === 'POST' && FORMS.test(ownPath(action)) && !ASKED_FIRST.test(ownPath(action));

// crypto.randomUUID is there on secure addresses only; RFC 9562, version 4.
const newKey = () => {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = (bytes[6] & 0x0f) | 0x40;
  bytes[8] = (bytes[8] & 0x3f) | 0x80;
  const hex = [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-');
};

const wordsOf = ({ submitter, form }) => {
  const button = submitter ?? form?.querySelector('button');
  return (button?.ariaLabel ?? button?.textContent ?? 'Something').trim();
};

const two = (number) => String(number).padStart(2, '0');
const dayOf = (at) => `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;

/** In whole minutes, as instants are sent. */
const instantOf = (at) => `${at.toISOString().slice(0, 16)}:00Z`;

// What is sent later was done at the time of the tap. Where the form says another time, it is that, on the day of the tap.
const withTime = (fields, action, at) => {
  if (!TIMED.test(ownPath(action))) return fields;
  const said = new Map(fields);
  const without = (...names) => fields.filter(([name]) => !names.includes(name));
  if (/^\/today\/mix(ed|ing)$/.test(ownPath(action))) return [...fields, ['begunAt', instantOf(at)]];
  const tapped = [
    ['at', instantOf(at)],
    ['tapped', 'yes'],
  ];
  if (!said.get('when')) return said.get('at') ? fields : [...without('at'), ...tapped];
  if (said.get('time')) return said.get('on') ? fields : [...without('on'), ['on', dayOf(at)]];
  return said.get('on') ? fields : [...without('when', 'on', 'time'), ...tapped];
};

const WHO = 'who-is-here=';
/** The name chosen on this device (src/http/this-device.ts), empty where none is. */
const whoIsHere = () => {
  const cookie = document.cookie.split('; ').find((one) => one.startsWith(WHO));
  try {
    return decodeURIComponent(cookie?.slice(WHO.length) ?? '');
  } catch {
    return '';
  }
};

/** What a form is about to send. It is the doing of whoever is here now, whenever it is sent. */
export const actOf = ({ action, body, submitter, form }) => {
  const at = new Date();
  const fields = [...body].filter(([name, value]) => name !== 'act' && typeof value === 'string');
  return {
    ...{ key: newKey(), action, page: location.pathname, words: wordsOf({ submitter, form }) },
    ...{ tapped: fields, at: at.toISOString() },
    fields: [...withTime(fields, action, at), ['doneBy', whoIsHere()]],
  };
};

/** What names a file by what is in it, where the browser can tell. */
const digestOf = async (bytes) => {
  const digest = await crypto.subtle?.digest('SHA-256', bytes);
  return digest ? [...new Uint8Array(digest)].join(' ') : newKey();
};

/** A file that a form is about to send, with when it was chosen. */
export const fileActOf = async (form, input) => {
  const [file] = input.files;
  const bytes = await file.arrayBuffer();
  const act = actOf({ action: form.getAttribute('action'), body: [], form });
  return {
    ...act,
    tapped: [['file', await digestOf(bytes)]],
    fields: [...act.fields, ['takenAt', instantOf(new Date())]],
    file: { field: input.name, type: file.type, bytes },
  };
};

/** Whether two taps are the same tap: it was made again while the first waits. */
export const isSame = (one, other) =>
  one.action === other.action && JSON.stringify(one.tapped) === JSON.stringify(other.tapped);

/** "9:40", or "9:40 am" on a page in US English. */
const clockOf = (at) => {
  const [hour, minute] = [at.getHours(), two(at.getMinutes())];
  if (document.documentElement.lang !== 'en-US') return `${hour}:${minute}`;
  return `${hour % 12 || 12}:${minute} ${hour < 12 ? 'am' : 'pm'}`;
};

/** Its clock, with its day where that is another one. */
export const whenText = ({ at }) => {
  const tapped = new Date(at);
  const clock = clockOf(tapped);
  return dayOf(tapped) === dayOf(new Date()) ? clock : `${dayOf(tapped)} ${clock}`;
};
