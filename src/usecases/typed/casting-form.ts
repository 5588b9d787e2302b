import type { Casting } from '../../../shared/casting.ts';
import type { TypedLength } from '../../../shared/units.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { FIRST_FIGURES, fillMinutesGuess, panelKg, setUpMinutesGuess } from '../../engine/begin/first-figures.ts';
import { readLength } from '../../engine/units/length.ts';
import { massText, readMass } from '../../engine/units/mass.ts';
import { done, type Outcome, refuse } from '../core/context.ts';
import { newId } from '../core/new-id.ts';
import { asTyped } from './amount-typed.ts';
import { type ContentsWriting, contentsTexts, contentsWords, cutsTyped, partsTyped } from './contents-typed.ts';
import { type FieldWords, fitsYardFile, sayAt } from './fits-yard-file.ts';
import type { FormFields } from './form-fields.ts';
import { sheetsTyped, sheetTexts, sheetWords } from './sheets-typed.ts';
import { ShownReader } from './shown-reader.ts';
import { lengthShown } from './size-shown.ts';
import { unclearLength } from './unclear-length.ts';

export const SIZES = ['length', 'height', 'thickness'] as const;

/** How large a piece is; null where nobody said. */
export type Size = Record<(typeof SIZES)[number], TypedLength> | null;

/** A piece as it was typed, with the figures that nobody typed. */
export interface CastingTyped {
  casting: Casting;
  size: Size;
  guesses: string[];
}

const MINUTES = ['fillMinutes', 'stripMinutes', 'cleanMinutes', 'prepMinutes'] as const;

/** What the form of a piece shows. */
export const castingTexts = (casting: Casting, size: Size, writing: ContentsWriting): FormFields => ({
  ...{ name: casting.name, mix: casting.mix },
  kg: asTyped(writing.typed.kg, casting.kg, 'kg', writing.system) ?? massText(casting.kg, writing.system),
  ...Object.fromEntries(SIZES.map((name) => [name, size ? lengthShown(size[name], writing.system) : ''])),
  ...Object.fromEntries([...MINUTES, 'stripCrew', 'rackSpaces'].map((name) => [name, String(casting[name as 'kg'])])),
  ...contentsTexts(casting.perPiece, casting.cuts, writing),
  ...sheetTexts(casting.sheets, writing.system),
});

type Reader = ShownReader<Casting>;

/** What a piece was before it was typed anew. */
export interface CastingBefore {
  casting: Casting;
  size: Size;
  /** Whether its weight was worked out from its size. */
  isWeightGuessed: boolean;
}

const sizeTyped = (
  reader: Reader,
  writing: ContentsWriting,
  length: string | null,
  before: CastingBefore | null,
): Size => {
  const texts = SIZES.map((name) => (name === 'length' && length !== null ? length : reader.text(name)));
  if (texts.every((text) => text === '')) return null;
  const [long, high, thick] = SIZES.map((name, i): TypedLength => {
    if (before?.size && reader.asShown(name)) return before.size[name];
    const text = texts[i]!;
    const read = readLength(text, writing.system);
    const field = name === 'length' && !before ? 'lengths' : name;
    if (!read.ok) reader.refuse(field, text === '' ? 'Write all three, or none of them.' : read.reason);
    else if (read.value.mm <= 0) reader.refuse(field, 'Has to be more than nothing.');
    else if (name === 'length') {
      const asked = unclearLength(text, read.value, writing.system);
      if (asked !== null) reader.refuse(field, asked);
    }
    return read.ok ? read.value : { typed: '', mm: 0 };
  });
  return { length: long!, height: high!, thickness: thick! };
};

const isSameSize = (a: Size, b: Size): boolean => SIZES.every((name) => a?.[name].mm === b?.[name].mm);

/** Whether the weight is worked out from the size: nobody typed one, or what stands there was worked out from another size. */
const isWorkedOut = (reader: Reader, size: Size, before: CastingBefore | null): boolean =>
  reader.text('kg') === '' ||
  Boolean(before?.isWeightGuessed && size && reader.asShown('kg') && !isSameSize(size, before.size));

const massTyped = (reader: Reader, size: Size, { system }: ContentsWriting, before: CastingBefore | null): number => {
  if (!isWorkedOut(reader, size, before))
    return reader.figure('kg', () => reader.measure('kg', (text) => readMass(text, system)));
  if (size) return panelKg(size.length.mm, size.height.mm, size.thickness.mm);
  reader.refuse('kg', 'What does one weigh? Or write its size, and it is worked out.');
  return 0;
};

/** Minutes nobody typed: guessed by the length, or as for a panel of 900. */
const guessedMinutes = (size: Size, workingMinutes: number): Record<(typeof MINUTES)[number], number> => {
  const lengthMm = size?.length.mm ?? 900;
  return {
    fillMinutes: fillMinutesGuess(lengthMm, { pieces: 1, lengthMm }, Math.max(1, workingMinutes)),
    prepMinutes: setUpMinutesGuess(lengthMm),
    stripMinutes: FIRST_FIGURES.stripMinutes,
    cleanMinutes: FIRST_FIGURES.cleanMinutes,
  };
};

/** What it is called: no two pieces alike, or nobody could tell them apart in a list. */
const nameTyped = (
  reader: Reader,
  given: string | null,
  before: CastingBefore | null,
  { castings }: YardFile,
): string => {
  const typed = reader.text('name');
  const name = given ?? typed;
  if (given === null || typed !== '') reader.words('name', 'What is it called?');
  const isTaken = castings.some((one) => one.name.toLowerCase() === name.toLowerCase());
  if (name !== '' && name !== before?.casting.name && isTaken)
    reader.refuse(given === null ? 'name' : 'lengths', `There is a ${name} already.`);
  return name;
};

const NO_CASTING = { perPiece: [], cuts: [] };

/** One piece, of a length of its own where several are added at once. `id` is what it is called among programs. */
export const castingTyped = (
  typed: FormFields,
  { id, name, length }: { id: string; name: string | null; length: string | null },
  before: CastingBefore | null,
  yard: YardFile,
  writing: ContentsWriting,
): Outcome<CastingTyped> => {
  const shown = before && castingTexts(before.casting, before.size, writing);
  const reader: Reader = new ShownReader(typed, before?.casting ?? null, shown);
  const mix = yard.mixes.find((one) => one.id === reader.text('mix'));
  if (!mix) reader.refuse('mix', 'From which mix is it cast?');
  const size = sizeTyped(reader, writing, length, before);
  const guessed = guessedMinutes(size, mix?.workingMinutes ?? 15);
  const minutes = (figure: (typeof MINUTES)[number]): number =>
    reader.text(figure) === ''
      ? guessed[figure]
      : reader.whole(figure, 'How many minutes?', { least: figure === 'fillMinutes' ? 1 : 0, most: 1440 });
  const { perPiece, cuts } = before?.casting ?? NO_CASTING;
  const sheets = sheetsTyped(reader, before?.casting.sheets, writing);
  const casting: Casting = {
    id,
    name: nameTyped(reader, name, before, yard),
    ...{ mix: mix?.id ?? '', kg: massTyped(reader, size, writing, before) },
    ...{ fillMinutes: minutes('fillMinutes'), stripMinutes: minutes('stripMinutes') },
    stripCrew: reader.text('stripCrew') === '' ? 1 : reader.whole('stripCrew', 'How many people?', { most: 50 }),
    ...{ cleanMinutes: minutes('cleanMinutes'), prepMinutes: minutes('prepMinutes') },
    rackSpaces: reader.text('rackSpaces') === '' ? 1 : reader.whole('rackSpaces', 'How many places?', { most: 100 }),
    perPiece: partsTyped(reader, perPiece, writing),
    cuts: cutsTyped(reader, cuts, writing),
    ...(sheets ? { sheets } : {}),
  };
  const guesses = [
    ...(isWorkedOut(reader, size, before) ? ['kg'] : []),
    ...MINUTES.filter((figure) => reader.text(figure) === ''),
  ];
  return reader.outcome({ casting, size, guesses });
};

/** Numbers that stand side by side: "600 900 1200", "24,36,48", "600,900". */
const BARE_LENGTHS = /^\d{2,}(\s+\d{2,})+$|^\d{2,}(,\d{2,}){2,}$|^\d{3,},\d{3,}$/;

/**
 * Several lengths in one field: "600, 900 and 1200". A comma between two digits parts them only where it cannot be one of
 * a number: "1,200" stays as it is.
 */
export const lengthsTyped = (text: string): string[] => {
  const parted = text.split(BARE_LENGTHS.test(text) ? /[,\s]+/ : /;|\band\b|,(?!\d)|(?<!\d),/);
  return [...new Set(parted.map((one) => one.trim()).filter(Boolean))];
};

/** What is added: a piece by its name, or one for each length. */
const wantedOf = (typed: FormFields, yard: YardFile): { id: string; name: string | null; length: string | null }[] => {
  const lengths = lengthsTyped(typed.lengths ?? '');
  const ids = new Set(yard.castings.map(({ id }) => id));
  const idFor = (name: string): string => {
    const id = newId(name, ids);
    ids.add(id);
    return id;
  };
  const base = typed.name ?? '';
  if (lengths.length === 0) return [{ id: idFor(base), name: null, length: null }];
  return lengths.map((length) => {
    const name = `${base || 'Panel'} ${length}`;
    return { id: idFor(name), name, length };
  });
};

/** What is added: one piece, or one for each length. */
export const newCastingsTyped = (
  typed: FormFields,
  yard: YardFile,
  writing: ContentsWriting,
): Outcome<CastingTyped[]> => {
  const wanted = wantedOf(typed, yard);
  if (wanted.length > 1 && (typed.kg ?? '') !== '')
    return refuse('kg', 'Several lengths weigh different amounts. Leave this empty, and correct each of them later.');
  const read = wanted.map((one) => castingTyped(typed, one, null, yard, writing));
  const faults = read.flatMap((one) => (one.ok ? [] : one.faults));
  if (faults.length > 0) return { ok: false, faults };
  return done(read.flatMap((one) => (one.ok ? [one.value] : [])));
};

const wordsFor = (typed: FormFields): FieldWords => ({
  ...contentsWords(typed, 'perPiece'),
  ...sheetWords(typed),
  kg: (message) => ({
    path: 'kg',
    message: message.includes('batch')
      ? 'That is more than the largest batch of its mix.'
      : 'Has to be a number, 0 or more.',
  }),
  fillMinutes: sayAt('fillMinutes', 'The mix would stiffen before one is full. Fewer minutes, or another mix.'),
});

/** The yard with a piece put in its place, or last. */
export const withCasting = (yard: YardFile, casting: Casting, typed: FormFields): Outcome<YardFile> => {
  const found = yard.castings.findIndex(({ id }) => id === casting.id);
  const place = found < 0 ? yard.castings.length : found;
  const castings = [...yard.castings];
  castings[place] = casting;
  return fitsYardFile({ ...yard, castings }, `castings[${place}]`, wordsFor(typed));
};
