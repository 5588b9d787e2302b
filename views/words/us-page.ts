import { type Say, sayAround } from './own-words.ts';

/** As hono/jsx writes a text into a page. */
const ENTITIES: Readonly<Record<string, string>> = {
  ...{ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' },
};
const escaped = (text: string): string => text.replaceAll(/[&<>"']/g, (sign) => ENTITIES[sign] ?? sign);

/** Attributes that are read by people, all others being for programs. */
const READ_BY_PEOPLE = /\s(title|alt|placeholder|aria-label|aria-description|content|data-over|label)="([^"]*)"/g;
/** A field of a day says the day as all the page does; what else stands in a field is the yard's. */
const DAY_FIELD = /^<input\b[^>]*\sclass="day"/;
const VALUE = /(\svalue=")([^"]*)(")/;

/** Nothing in these is a sentence of ours, but in a text to be copied, which nobody types into. */
const PIECE = /<(script|style|textarea)\b[^>]*>[\s\S]*?<\/\1>|<[^>]*>|[^<]+/g;
const TO_BE_COPIED = /^<textarea\b[^>]*\sreadonly/;

const tagSaid = (tag: string, say: Say): string => {
  const said = tag.replaceAll(READ_BY_PEOPLE, (_all, name: string, text: string) => ` ${name}="${say(text)}"`);
  return DAY_FIELD.test(tag) ? said.replace(VALUE, (_all, before, day, after) => before + say(day) + after) : said;
};

const pieceSaid = (piece: string, say: Say): string => {
  if (!piece.startsWith('<')) return say(piece);
  if (/^<(script|style)\b/.test(piece)) return piece;
  if (!piece.startsWith('<textarea') || !piece.endsWith('</textarea>')) return tagSaid(piece, say);
  const [opening = ''] = /^<[^>]*>/.exec(piece) ?? [];
  return TO_BE_COPIED.test(opening) ? opening + say(piece.slice(opening.length, -11)) + piece.slice(-11) : piece;
};

/** Full hours along a drawing stand there as bare numbers. */
const HOUR = /(<text\b[^>]*\sdata-hour[^>]*>\s*)(\d{1,2})(?=\s*<)/g;
const hourSaid = (_all: string, opening: string, hour: string): string => `${opening}${Number(hour) % 12 || 12}`;

/** A page, or a part of one, in US English, its texts and the attributes that people read. `own` stays as it was typed. */
export const usPage = (html: string, own: Iterable<string>): string => {
  const say = sayAround(own, escaped);
  return html
    .replaceAll(PIECE, (piece) => pieceSaid(piece, say))
    .replaceAll(HOUR, hourSaid)
    .replace('<html lang="en-GB">', '<html lang="en-US">');
};

const NAMED = /("(?:name|description)": ")([^"]*)(")/g;

/** What a phone says of the program (the web app manifest), in US English. */
export const usManifest = (json: string): string => {
  const say = sayAround([]);
  return json
    .replaceAll(NAMED, (_all, before: string, text: string, after: string) => before + say(text) + after)
    .replace('"lang": "en"', '"lang": "en-US"');
};
