import { describe, expect, test } from 'vitest';
import { setHabits } from '../../db/stores/habits-store.ts';
import { ownWordsOfYard } from '../../db/stores/own-words-store.ts';
import { setUnits } from '../../db/stores/units-store.ts';
import { DEMO_PAGES } from '../support/demo-pages.ts';
import { demoToLookAt } from '../support/demo-to-look-at.ts';

/*
 * Which of two spellings is whose: from memory. Against an outside source, once: of all words on these pages, and of all in the
 * sources of the program, none is in hunspell's en-GB and not in its en-US (npm dictionary-en-gb 3.0.0, dictionary-en 4.0.0) after
 * the pass, and none of a British yard the other way round.
 */
const BRITISH =
  /\b\w*(mould|colour|labour|favour|vapour|neighbour|fibre|centre\b|litre|metre|grey|plasticis|galvanis|organis|recognis|realise|cancelled|labelled|levelled|travelled|kerb|tyre|cheque|programme\b|catalogue|aluminium|sulphur|ageing|judgement|licence|ticked)\w*/gi;
const AMERICAN =
  /\b\w*(mold|color|labor\b|favor|vapor\b|neighbor|fiber|center|liter|\b(milli|centi|kilo)?meters?\b|gray|plasticiz|galvaniz|canceled|labeled|leveled|traveled|aluminum|sulfur|aging\b|judgment)\w*/gi;

const CLOCK_OF_24 = /(?<![\w:-])([01]?\d|2[0-4]):[0-5]\d\b(?! ?[ap]m)/g;
const CLOCK_OF_12 = /\b\d{1,2}(:\d\d)? [ap]m\b/g;
const MONTH = '(Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)[a-z]*';
const DAY_FIRST = new RegExp(`\\b\\d{1,2} ${MONTH}\\b`, 'g');
const MONTH_FIRST = new RegExp(`\\b${MONTH} \\d{1,2}\\b(?!:)`, 'g');
const METRIC = /\d ?(mm|cm|m|km\/h|kg|g|t|ml|l|m²|m2|°C|litres?|millimet(er|re)s?)(?![\w/])/g;

/** Said in both systems at once, and examples of what may be typed, which is either. */
const BOTH = /\d+ kg \(\d+ lb\)|20 °C \(68 °F\)|900, 1\.2 m, 4 ft 6 in|8, 8 in or 200 mm|54 1\/2", 1235 mm|\d+ mm or/g;

/** Lengths in an address are of the yard's units. */
const inInches = (path: string): string =>
  path.replaceAll(/(ength|idth|ground)=(\d+)/g, (_all, of, mm) => `${of}=${Math.round(Number(mm) / 25.4)}`);

const ATTRIBUTE = /\s(?:title|alt|placeholder|aria-label|data-over)="([^"]*)"/g;
const ENTITIES: Readonly<Record<string, string>> = {
  '&amp;': '&',
  '&#39;': "'",
  '&quot;': '"',
  '&lt;': '<',
  '&gt;': '>',
};

/** All that a page says to people, a line for each text, less what the yard typed. */
const saidOn = (html: string, own: readonly string[]): string => {
  const shown = html.replace(/<(script|style)\b[\s\S]*?<\/\1>|<textarea\b(?![^>]*readonly)[\s\S]*?<\/textarea>/g, '');
  const attributes = [...shown.matchAll(ATTRIBUTE)].map(([, text]) => text);
  const text = [...attributes, shown.replaceAll(/<[^>]*>/g, '\n')]
    .join('\n')
    .replaceAll(/&(amp|#39|quot|lt|gt);/g, (entity) => ENTITIES[entity] ?? entity)
    .replaceAll('Mould Rota', '')
    .replaceAll(BOTH, '');
  // A name, and not what is as short as a unit.
  const names = own.filter((word) => word.length > 4).sort((a, b) => b.length - a.length);
  return names.reduce((rest, word) => rest.replaceAll(word, '…'), text);
};

describe.each([
  ['US', [BRITISH, CLOCK_OF_24, DAY_FIRST, METRIC]],
  ['British', [AMERICAN, CLOCK_OF_12, MONTH_FIRST]],
] as const)('in a %s yard nothing is said as on the other side of the ocean on', (english, signs) => {
  let own: readonly string[] = [];
  const demo = demoToLookAt(async (tx) => {
    await setUnits(tx, english === 'US' ? 'US' : 'metric', english);
    if (english === 'US') await setHabits(tx, { currency: 'USD', weekStart: 'SU' });
    own = await ownWordsOfYard(tx);
  });

  test.each(DEMO_PAGES)('%s', async (path) => {
    const answer = await fetch(demo() + (english === 'US' ? inInches(path) : path));
    expect(answer.status).toBe(200);
    const said = saidOn(await answer.text(), own);
    const found = signs.flatMap((sign) =>
      [...said.matchAll(sign)].map(({ 0: word, index }) => `${said.slice(index - 25, index)}[${word}]`),
    );
    expect(found).toEqual([]);
  });
});
