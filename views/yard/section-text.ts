import { DAY_NAMES } from '../../shared/day-names.ts';
import { listText } from '../../shared/list-text.ts';
import { countText, plural } from '../../shared/plural.ts';
import type { YardModel } from '../../src/usecases/yard/show-yard.ts';
import { moneyText } from '../parts/money-text.ts';
import { countWord } from '../parts/quantity-text.ts';
import { SECTIONS, type SectionKey } from './sections.ts';
import { endsText } from './temperature-words.ts';

/** What there is of a section, and what is missing in it; null where nothing is. */
export interface SectionText {
  there: string;
  missing: string | null;
}

const MISSING: Readonly<Record<Exclude<YardModel['missing'][number]['kind'], 'else'>, string>> = {
  panel: 'something you cast',
  mould: 'a mould for it',
  mix: 'a mix',
  mixer: 'a mixer',
  hours: 'hours',
};

/** The first line of the page: "Two things are missing for a first date: a mix, and hours." */
export const missingAnswer = (missing: YardModel['missing']): string => {
  const [first] = missing;
  if (!first) return 'Your yard is ready to give dates.';
  if (first.kind === 'else') return `${first.piece} can't have a date yet, because ${first.reason}.`;
  const names = missing.flatMap(({ kind }) => (kind === 'else' ? [] : [MISSING[kind]]));
  const list = names.length < 2 ? names.join() : `${names.slice(0, -1).join(', ')}, and ${names.at(-1)}`;
  return `${countWord(names.length)} ${plural(names.length, 'thing is', 'things are')} missing for a first date: ${list}.`;
};

const SECTION_OF: Readonly<Record<keyof typeof MISSING, SectionKey>> = {
  ...{ panel: 'panels', mould: 'moulds', mix: 'mixes', mixer: 'about', hours: 'hours' },
};

/** Where to go on. What is cast is cast from a mix, so the mix comes first. */
export const nextSection = (missing: YardModel['missing']): (typeof SECTIONS)[number] | null => {
  const next = missing.find(({ kind }) => kind === 'mix') ?? missing[0];
  if (!next || next.kind === 'else') return null;
  return SECTIONS.find(({ key }) => key === SECTION_OF[next.kind]) ?? null;
};

const MOST_NAMES = 6;

/** "Panel 900, Panel 600 and 3 more" */
const namesText = (names: readonly string[]): string =>
  listText(
    names.length > MOST_NAMES ? [...names.slice(0, MOST_NAMES - 1), `${names.length - MOST_NAMES + 1} more`] : names,
  );

const UNITS = { metric: 'millimetres and kilograms', US: 'feet, inches and pounds' };

const hoursText = (minutes: number): string => countText(Math.round(minutes / 30) / 2, 'hour');

type Writer = (model: YardModel) => SectionText;

const full = (there: string, missing: string | null = null): SectionText => ({ there, missing });

const about: Writer = ({ yardName, about: { timeZone, system, currency, weekStart } }) =>
  full(
    `${yardName}, in ${timeZone.replaceAll('_', ' ')} time. Sizes in ${UNITS[system]}, money in ${currency}, weeks from ${DAY_NAMES[weekStart]}.`,
  );

const panels: Writer = ({ panels: { names, withoutMould } }) => {
  if (names.length === 0) return full('Nothing is cast yet.', 'Say which panels or pieces you cast.');
  const none = withoutMould.length === 0 ? null : `No mould in use makes ${namesText(withoutMould)}.`;
  return full(`${countText(names.length, 'kind')}: ${namesText(names)}.`, none);
};

const moulds: Writer = ({ moulds: { count, kinds, scrapped } }) => {
  if (count === 0) return full('No mould is there yet.', 'Say which moulds you have.');
  const each = listText(kinds.map(({ kind, count: of }) => `${of} of ${kind}`));
  const gone = scrapped === 0 ? '' : ` ${countWord(scrapped)} more ${plural(scrapped, 'is', 'are')} scrapped.`;
  return full(kinds.length === 1 ? `${each}.${gone}` : `${countText(count, 'mould')}: ${each}.${gone}`);
};

const mixes: Writer = ({ mixes: { names, withoutBags } }) => {
  if (names.length === 0) return full('No mix is there yet.', 'Say what you mix, from one bag on.');
  const none = withoutBags.length === 0 ? null : `What goes into ${namesText(withoutBags)} is not recorded.`;
  return full(`${countText(names.length, 'mix', 'mixes')}: ${namesText(names)}.`, none);
};

const kits: Writer = ({ kits: names }) =>
  names.length === 0
    ? full('No kit is there yet. Single panels can be ordered without one.')
    : full(`${countText(names.length, 'kit')}: ${namesText(names)}.`);

const hours: Writer = ({ hours: { sessions, minutesAWeek, weeks } }) => {
  if (sessions === 0) return full(`No work in the next ${weeks} weeks.`, 'Say when you work.');
  return full(`${countText(sessions, 'session')} in the next ${weeks} weeks, ${hoursText(minutesAWeek)} a week.`);
};

const stock: Writer = ({ stock: { count, suppliers, notBought } }) => {
  if (count === 0) return full('Nothing is kept in stock yet.');
  const from = suppliers === 0 ? '' : ` from ${countText(suppliers, 'supplier')}`;
  const none =
    notBought.length === 0
      ? null
      : `How long ${namesText(notBought)} ${plural(notBought.length, 'takes', 'take')} to come is not recorded.`;
  return full(`${countText(count, 'material')}${from}.`, none);
};

const temperatures: Writer = ({ temperature }) =>
  temperature === null
    ? full('No temperature is expected yet: every mix counts as if it set at the warmth its figures are for.')
    : full(`${temperature.now} expected today.`, temperature.endsBefore && endsText(temperature.endsBefore));

const weather: Writer = ({ weatherDays }) =>
  weatherDays === 0
    ? full('Nothing is said of single days: each is like its month.')
    : full(`${countText(weatherDays, 'day')} from today on planned by the hour.`);

const costs: Writer = ({ costs: { wageHour, sessionFixed, marginPercent }, about: { currency } }) => {
  const said = [
    wageHour === undefined ? [] : [`${moneyText(wageHour, currency)} an hour`],
    sessionFixed === undefined ? [] : [`${moneyText(sessionFixed, currency)} a session`],
    marginPercent === undefined ? [] : [`a margin of ${marginPercent} %`],
  ].flat();
  return full(
    said.length === 0 ? 'Nothing is said yet. Prices of kits can be worked out from it.' : `${listText(said)}.`,
  );
};

const WRITERS: Readonly<Record<SectionKey, Writer>> = {
  about,
  panels,
  moulds,
  mixes,
  kits,
  hours,
  stock,
  temperatures,
  weather,
  costs,
};

export const sectionText = (key: SectionKey, model: YardModel): SectionText => WRITERS[key](model);
