import type { Kit } from '../../../shared/kit.ts';
import type { KitSize } from '../../../shared/kit-size.ts';
import type { Material } from '../../../shared/material.ts';
import { plural } from '../../../shared/plural.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { KitMade } from '../../engine/kits/kit-by-size.ts';
import { shortLengthText } from '../../engine/units/length.ts';
import { pinLengthMm } from './kit-pins.ts';
import type { PanelKind, SizedPanel } from './panel-kinds.ts';

export interface KitPiece extends SizedPanel {
  count: number;
}

/** The panels of a kit as pieces the yard casts. */
export const kitPieces = (made: KitMade, kind: PanelKind): KitPiece[] =>
  made.pieces.map(({ panelMm, count }) => ({
    ...kind.panels.find(({ lengthMm }) => Math.abs(lengthMm - panelMm) < 1e-3)!,
    count,
  }));

/** Pins cut for a kit; none when the yard has nothing to cut them from. */
export const kitPins = (made: KitMade, size: KitSize, kind: PanelKind, material: Material | null): Kit['cuts'] =>
  material ? [{ material: material.id, lengthMm: pinLengthMm(size, kind.heightMm), count: made.pins.length }] : [];

const COURSE_WORDS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

/** "Kit 1235 x 635, two courses", by the size as it was typed where it was made so. */
export const kitName = ({ shape, faces, courses, ...lengths }: KitSize, system: UnitSystem): string => {
  const text = (length: { mm: number } | undefined) => (length ? shortLengthText(length.mm, system) : '');
  const [long, wide] = [text(lengths.length), text(lengths.width)];
  const less = `${text(lengths.cutLength)} x ${text(lengths.cutWidth)}`;
  const what = { row: `Row ${long}`, rectangle: `Kit ${long} x ${wide}`, L: `L ${long} x ${wide} less ${less}` }[shape];
  const inside = faces === 'inside' && shape !== 'row' ? ' inside' : '';
  return `${what}${inside}, ${COURSE_WORDS[courses] ?? courses} ${plural(courses, 'course')}`;
};

/** A guess until the yard knows better, common practice without a source: a few minutes, and two for each panel. */
export const packMinutesGuess = (pieces: readonly KitPiece[]): number =>
  4 + 2 * pieces.reduce((sum, { count }) => sum + count, 0);

/** A name for the records that no kit has yet: "kit-1235-x-635-two-courses". */
export const kitId = (name: string, yard: YardFile): string => {
  const stem =
    name
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-|-$/g, '') || 'kit';
  const taken = new Set(yard.kits.map(({ id }) => id));
  for (let number = 1; ; number++) {
    const id = number === 1 ? stem : `${stem}-${number}`;
    if (!taken.has(id)) return id;
  }
};

const listed = (entries: readonly object[]): string =>
  entries
    .map((entry) => JSON.stringify(entry))
    .sort()
    .join();
const whatItTakes = ({ pieces, cuts }: Pick<Kit, 'pieces' | 'cuts'>): string =>
  `${listed(pieces.map(({ casting, count }) => ({ casting, count })))} ${listed(cuts.map(({ material, lengthMm, count }) => ({ material, lengthMm, count })))}`;

/** A kit the yard has that takes the same panels and pins, and no parts beside them. */
export const sameKit = (kit: Pick<Kit, 'pieces' | 'cuts'>, yard: YardFile): Kit | null =>
  yard.kits.find((one) => one.parts.length === 0 && whatItTakes(one) === whatItTakes(kit)) ?? null;
