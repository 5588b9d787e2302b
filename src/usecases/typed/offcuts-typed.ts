import type { Material } from '../../../shared/material.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import { lengthText, readLength } from '../../engine/units/length.ts';

type Offcuts = NonNullable<Material['offcuts']>;

/** What is left of opened sticks, as the page shows it and as it is read again. */
export interface OffcutsWriting {
  system: UnitSystem;
  /** What is there now: a length left as it is shown stands for exactly that. */
  before: Offcuts;
  /** How long a whole one is. */
  stickMm: number;
}

/** More of one length are a slip of the hand. */
const MOST = 1000;
/** Where one length ends and the next begins: not at the comma of "190,5". */
const BETWEEN = /;|\n|,\s|,$/;
const TIMES = /^(\d+)\s*(?:×|x|\*|times)\s*(.+)$/i;

/** How they may be typed, in the yard's units. */
export const OFFCUTS_EXAMPLE: Readonly<Record<UnitSystem, string>> = {
  metric: '90 cm, 2 × 400 mm',
  US: '3 ft, 2 × 16 in',
};

/** As they stand in a field: "2232 mm, 2 × 1400 mm"; empty where there are none. */
export const offcutsText = (offcuts: Offcuts, system: UnitSystem): string =>
  offcuts.map(({ lengthMm, count }) => `${count === 1 ? '' : `${count} × `}${lengthText(lengthMm, system)}`).join(', ');

type Read<T> = { ok: true; value: T } | { ok: false; reason: string };

const lengthTyped = (text: string, { system, before, stickMm }: OffcutsWriting): Read<number> => {
  const known = before.find(({ lengthMm }) => lengthText(lengthMm, system) === text);
  if (known) return { ok: true, value: known.lengthMm };
  const read = readLength(text, system);
  if (!read.ok) return read;
  const { mm } = read.value;
  if (mm <= 0) return { ok: false, reason: 'How long is it? Write a length above 0.' };
  if (mm >= stickMm)
    return { ok: false, reason: `A whole one is ${lengthText(stickMm, system)}. An offcut is shorter.` };
  return { ok: true, value: mm };
};

const oneTyped = (text: string, writing: OffcutsWriting): Read<Offcuts[number]> => {
  const [, times, length = text] = TIMES.exec(text) ?? [];
  const count = times === undefined ? 1 : Number(times);
  if (count < 1 || count > MOST) return { ok: false, reason: `How many of ${length}? From 1 to ${MOST}.` };
  const read = lengthTyped(length.trim(), writing);
  return read.ok ? { ok: true, value: { lengthMm: read.value, count } } : read;
};

/**
 * Offcuts as they are typed, one after another: "2232 mm, 2 × 1400 mm, 90 cm". The longest first, those of one length
 * together; none where nothing is typed.
 */
export const offcutsTyped = (text: string, writing: OffcutsWriting): Read<Offcuts> => {
  const counts = new Map<number, number>();
  for (const part of text.split(BETWEEN).map((one) => one.trim())) {
    if (part === '') continue;
    const read = oneTyped(part, writing);
    if (!read.ok) return read;
    counts.set(read.value.lengthMm, (counts.get(read.value.lengthMm) ?? 0) + read.value.count);
  }
  const offcuts = [...counts].map(([lengthMm, count]) => ({ lengthMm, count }));
  return { ok: true, value: offcuts.sort((a, b) => b.lengthMm - a.lengthMm) };
};
