import type { Kit } from '../../../shared/kit.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { Outcome } from '../core/context.ts';
import {
  type ContentsWriting,
  contentsTexts,
  contentsWords,
  cutsTyped,
  MOST_CONTENTS,
  partsTyped,
} from './contents-typed.ts';
import { fitsYardFile } from './fits-yard-file.ts';
import type { FormFields } from './form-fields.ts';
import { ShownReader } from './shown-reader.ts';

/** What the form of a kit shows. */
export const kitTexts = (kit: Kit, writing: ContentsWriting): FormFields => ({
  ...{ name: kit.name, packMinutes: String(kit.packMinutes) },
  ...Object.fromEntries(
    kit.pieces.flatMap(({ casting, count }, row) => [
      [`piece-${row}`, casting],
      [`pieceCount-${row}`, String(count)],
    ]),
  ),
  ...contentsTexts(kit.parts, kit.cuts, writing),
});

const piecesTyped = (reader: ShownReader<Kit>, yard: YardFile): Kit['pieces'] => {
  const pieces: Kit['pieces'] = [];
  for (let row = 0; row < MOST_CONTENTS; row++) {
    const [which, howMany] = [`piece-${row}`, `pieceCount-${row}`];
    if (reader.text(which) === '' && reader.text(howMany) === '') continue;
    const casting = yard.castings.find(({ id }) => id === reader.text(which));
    if (!casting) reader.refuse(which, 'Which piece is that?');
    else if (pieces.some((piece) => piece.casting === casting.id)) reader.refuse(which, 'That is there already.');
    const count = reader.whole(howMany, 'How many?', { least: 1, most: 1000 });
    if (casting) pieces.push({ casting: casting.id, count });
  }
  return pieces;
};

/** A kit as it was typed; `before` is what it was. */
export const kitTyped = (
  typed: FormFields,
  id: string,
  before: Kit | null,
  yard: YardFile,
  writing: ContentsWriting,
): Outcome<Kit> => {
  const reader = new ShownReader<Kit>(typed, before, before && kitTexts(before, writing));
  const name = reader.words('name', 'What is the kit called?');
  const isTaken = yard.kits.some((one) => one.id !== id && one.name.toLowerCase() === name.toLowerCase());
  if (isTaken && name !== before?.name) reader.refuse('name', `There is a ${name} already.`);
  const kit: Kit = {
    id,
    name,
    pieces: piecesTyped(reader, yard),
    parts: partsTyped(reader, before?.parts ?? [], writing),
    cuts: cutsTyped(reader, before?.cuts ?? [], writing),
    packMinutes:
      reader.text('packMinutes') === '' ? 0 : reader.whole('packMinutes', 'How many minutes?', { most: 1440 }),
  };
  if (reader.faults.length === 0 && kit.pieces.length + kit.parts.length + kit.cuts.length === 0)
    reader.refuse('piece-0', 'What is in it? Choose a piece, and how many.');
  return reader.outcome(kit);
};

/** The yard with a kit put in its place, or last. */
export const withKit = (yard: YardFile, kit: Kit, typed: FormFields): Outcome<YardFile> => {
  const found = yard.kits.findIndex(({ id }) => id === kit.id);
  const place = found < 0 ? yard.kits.length : found;
  const kits = [...yard.kits];
  kits[place] = kit;
  return fitsYardFile({ ...yard, kits }, `kits[${place}]`, contentsWords(typed, 'parts'));
};
