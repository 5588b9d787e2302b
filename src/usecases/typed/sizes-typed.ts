import type { UnitSystem } from '../../../shared/units.ts';
import { readLength, sizeText } from '../../engine/units/length.ts';

/** So many of a width and a length, mm. */
export interface SizeCount {
  widthMm: number;
  lengthMm: number;
  count: number;
}

/** More of one size are a slip of the hand. */
const MOST = 1000;
/** Where one size ends and the next begins: not at the comma of "190,5". */
const BETWEEN = /;|\n|,\s|,$/;
const COUNTED = /^(\d+)\s*(?:of|×|x|\*|times)\s+(.+\s*(?:by|×|x|\*)\s*.+)$/i;
const BY = /^(.+?)\s*(?:\bby\b|×|x|\*)\s*(.+)$/i;

/** How they may be typed, in the yard's units. */
export const SIZES_EXAMPLE: Readonly<Record<UnitSystem, string>> = {
  metric: '1000 by 900 mm, 2 of 300 by 400 mm',
  US: '3 ft by 2 ft, 2 of 12 in by 16 in',
};

/** As they stand in a field: "1000 mm by 900 mm, 2 of 300 mm by 400 mm"; empty where there are none. */
export const sizesText = (sizes: readonly SizeCount[], system: UnitSystem): string =>
  sizes
    .map(({ count, ...sides }) => {
      const size = sizeText(sides, system);
      return count === 1 ? size : `${count} of ${size}`;
    })
    .join(', ');

type Read<T> = { ok: true; value: T } | { ok: false; reason: string };

const mmTyped = (text: string, system: UnitSystem): Read<number> => {
  const read = readLength(text, system);
  if (!read.ok) return read;
  if (read.value.mm <= 0) return { ok: false, reason: 'How large is it? Write lengths above 0.' };
  return { ok: true, value: read.value.mm };
};

const oneTyped = (text: string, system: UnitSystem): Read<SizeCount> => {
  const [, times, counted] = COUNTED.exec(text) ?? [];
  const count = times === undefined ? 1 : Number(times);
  const [, across, along] = BY.exec(counted ?? text) ?? [];
  if (across === undefined || along === undefined)
    return { ok: false, reason: `Width by length, as in ${SIZES_EXAMPLE[system]}.` };
  if (count < 1 || count > MOST) return { ok: false, reason: `How many of it? From 1 to ${MOST}.` };
  const width = mmTyped(across, system);
  if (!width.ok) return width;
  const length = mmTyped(along, system);
  return length.ok ? { ok: true, value: { widthMm: width.value, lengthMm: length.value, count } } : length;
};

/** Sizes as they are typed, one after another: "1000 by 900, 2 of 300 by 400". In that order; none where nothing is typed. */
export const sizesTyped = (text: string, system: UnitSystem): Read<SizeCount[]> => {
  const sizes: SizeCount[] = [];
  for (const part of text.split(BETWEEN).map((one) => one.trim())) {
    if (part === '') continue;
    const read = oneTyped(part, system);
    if (!read.ok) return read;
    sizes.push(read.value);
  }
  return { ok: true, value: sizes };
};
