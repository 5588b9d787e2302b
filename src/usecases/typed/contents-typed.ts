import type { Casting } from '../../../shared/casting.ts';
import type { Material } from '../../../shared/material.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import { lengthText } from '../../engine/units/length.ts';
import { readAmount } from '../../engine/units/material-unit.ts';
import { unread } from '../../engine/units/reading.ts';
import { amountField, asTyped } from './amount-typed.ts';
import { figureShown } from './figures.ts';
import { type FieldWords, sayAt } from './fits-yard-file.ts';
import { readMm } from './material-figures.ts';
import type { ShownReader } from './shown-reader.ts';

type Parts = Casting['perPiece'];
type Cuts = Casting['cuts'];
type Texts = Readonly<Record<string, string>>;

/** More rows than that no form has: whoever has a piece of so many parts read in from a file loses none by a form. */
export const MOST_CONTENTS = 200;

export interface ContentsWriting {
  system: UnitSystem;
  materials: readonly Material[];
  /** What was typed for each, by `partFigure` and `cutFigure`. */
  typed: Texts;
  list?: 'part' | 'perBag';
}

/** In a mix its parts are those of a bag. */
export const partFigure = (material: string, { list = 'part' }: Pick<ContentsWriting, 'list'> = {}): string =>
  `${list} ${material}`;
export const cutFigure = (place: number): string => `cut ${place}`;

const rows = <T>(read: (row: number) => T | null): T[] =>
  Array.from({ length: MOST_CONTENTS }, (_, row) => read(row)).filter((one) => one !== null);

/** What the rows of parts and cuts show. */
export const contentsTexts = (
  parts: Parts,
  cuts: Cuts,
  { system, materials, typed, ...named }: ContentsWriting,
): Texts => {
  const unitOf = (id: string) => materials.find((one) => one.id === id)?.unit ?? '';
  const shown = (text: string | undefined, mm: number) =>
    figureShown(
      text,
      mm,
      (one) => readMm(one, system),
      (stored) => lengthText(stored, system),
    );
  return Object.fromEntries([
    ...parts.flatMap(({ material, quantity }, row) => [
      [`part-${row}`, material],
      [
        `partQuantity-${row}`,
        asTyped(typed[partFigure(material, named)], quantity, unitOf(material), system) ??
          amountField(quantity, unitOf(material), system),
      ],
    ]),
    ...cuts.flatMap(({ material, lengthMm, count }, row) => [
      [`cut-${row}`, material],
      [`cutLength-${row}`, shown(typed[cutFigure(row)], lengthMm)],
      [`cutCount-${row}`, String(count)],
    ]),
  ]);
};

type Reader = ShownReader<object>;

const asBefore = (reader: Reader, names: readonly string[]): boolean => names.every((name) => reader.asShown(name));

/** Materials with how much of each: one row, one material. */
export const partsTyped = (reader: Reader, before: Parts, { materials, system }: ContentsWriting): Parts => {
  const seen = new Set<string>();
  return rows((row) => {
    const [which, howMuch] = [`part-${row}`, `partQuantity-${row}`];
    if (reader.text(which) === '' && reader.text(howMuch) === '') return null;
    const material = materials.find(({ id }) => id === reader.text(which));
    if (!material) reader.refuse(which, 'Which material is that?');
    else if (seen.has(material.id)) reader.refuse(which, 'That is there already.');
    if (!material) return null;
    seen.add(material.id);
    if (before[row] && asBefore(reader, [which, howMuch])) return before[row];
    const quantity = reader.measure(howMuch, (text) =>
      text === '' ? unread('How much of it?') : readAmount(text, material.unit, system),
    );
    return { material: material.id, quantity };
  });
};

/** Lengths that are cut from a material, and how many of each. */
export const cutsTyped = (reader: Reader, before: Cuts, { materials, system }: ContentsWriting): Cuts =>
  rows((row) => {
    const names = [`cut-${row}`, `cutLength-${row}`, `cutCount-${row}`] as const;
    const [which, howLong, howMany] = names;
    if (names.every((name) => reader.text(name) === '')) return null;
    const material = materials.find(({ id }) => id === reader.text(which));
    if (!material) reader.refuse(which, 'What is it cut from?');
    if (before[row] && asBefore(reader, names)) return before[row];
    const lengthMm = reader.measure(howLong, (text) => (text === '' ? unread('How long?') : readMm(text, system)));
    const count = reader.whole(howMany, 'How many?', { least: 1, most: 1000 });
    return material ? { material: material.id, lengthMm, count } : null;
  });

/** The rows of the form that hold something, for what is wrong with the list they make. */
const filled = (typed: Texts, name: string): number[] =>
  Array.from({ length: MOST_CONTENTS }, (_, row) => row).filter((row) => (typed[`${name}-${row}`] ?? '') !== '');

/** Where a yard file's faults in cuts and parts stand in the form. */
export const contentsWords = (typed: Texts, list: 'perPiece' | 'parts'): FieldWords => ({
  ...Object.fromEntries(
    filled(typed, 'cut').flatMap((row, place) => [
      [`cuts[${place}].lengthMm`, sayAt(`cutLength-${row}`, 'That is longer than one of it is sold.')],
      [
        `cuts[${place}].material`,
        sayAt(`cut-${row}`, 'It is not sold as lengths that are cut: see its page in stock.'),
      ],
    ]),
  ),
  ...Object.fromEntries(
    filled(typed, 'part').map((row, place) => [
      `${list}[${place}].quantity`,
      sayAt(`partQuantity-${row}`, 'Has to be a number, 0 or more.'),
    ]),
  ),
});
