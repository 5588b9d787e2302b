import type { GuessGroup } from '../../src/usecases/yard/show-guesses.ts';
import { entryPath, SECTIONS } from '../yard/sections.ts';

/** What each figure is, as the start of a sentence that its value ends. */
const WORDS: Readonly<Record<string, string>> = {
  'mix yieldKgPerBag': 'One bag makes',
  'mix water': 'Into a bag goes, in water',
  'mix demouldMinutes': 'A panel can be stripped after',
  'mix activationKelvin': 'How much slower the mix is on a cold day',
  'mix mixMinutes': 'To mix a batch takes',
  'mix workingMinutes': 'The mix can be worked for',
  'mix washMinutes': 'To wash up after a batch takes',
  'mix attendMinutes': 'After the last panel is full, someone stays to keep it wet for',
  'mix cureHours': 'A panel is fit to go out, by plan, after',
  'mix maxBags': 'At once are mixed, at most, so many bags',
  'mix crew': 'Who mix and fill together, in people',
  'mix minCelsius': 'It is not poured under',
  'mix maxCelsius': 'It is not poured over',
  'mix protectHours': 'After a pour it has to be kept from the cold for',
  'material onHand': 'In the yard now',
  'material leadDays': 'From buying to having it takes',
  'casting kg': 'A panel weighs',
  'casting prepMinutes': 'To set up a clean mould takes',
  'casting fillMinutes': 'To fill a mould takes',
  'casting stripMinutes': 'To strip a panel takes',
  'casting cleanMinutes': 'To clean a mould takes',
  'yard temperatures': 'The days are expected to have',
};

const SECTION_OF: Readonly<Record<GuessGroup['kind'], (typeof SECTIONS)[number]['key']>> = {
  ...{ yard: 'about', mix: 'mixes', casting: 'panels', mould: 'moulds', material: 'stock', kit: 'kits' },
};

/** In the order above; a figure that is not there comes last. */
export const inGuessOrder = (groups: readonly GuessGroup[]): GuessGroup[] => {
  const keys = Object.keys(WORDS);
  const place = ({ kind, figure }: GuessGroup) => keys.indexOf(`${kind} ${figure}`) + 1 || keys.length + 1;
  return [...groups].sort((a, b) => place(a) - place(b));
};

export const guessWords = ({ kind, figure, values }: GuessGroup): string =>
  WORDS[`${kind} ${figure}`] ?? `A figure of ${values[0]?.name ?? 'the yard'}`;

/** "13.5 kg" where all are alike, else "13.5 kg for Panel 900, 9 kg for Panel 600". */
export const guessValue = ({ values }: GuessGroup): string => {
  const texts = new Set(values.map(({ text }) => text));
  return texts.size === 1 ? [...texts][0]! : values.map(({ name, text }) => `${text} for ${name}`).join(', ');
};

/** Things with a page of their own; more of them than this are found from their list. */
const WITH_PAGE: readonly GuessGroup['kind'][] = ['mix', 'material', 'casting'];
const MOST_LINKS = 6;

/** Where it can be changed: at each thing it is about, by its name, or in the section of its kind. */
export const guessEdits = ({ kind, figure, values }: GuessGroup): { text: string; path: string }[] => {
  const key = figure === 'temperatures' ? 'temperatures' : SECTION_OF[kind];
  const path = SECTIONS.find((section) => section.key === key)?.path ?? '/yard';
  if (!WITH_PAGE.includes(kind) || values.length > MOST_LINKS) return [{ text: 'Change it', path }];
  return values.map(({ id, name }, index) => ({
    text: values.length === 1 ? 'Change it' : index === 0 ? `Change it for ${name}` : name,
    path: entryPath(path, id),
  }));
};
