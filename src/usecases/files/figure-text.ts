import type { Archive } from '../../../shared/archive.ts';
import { fullDayWords } from '../../../shared/day-words.ts';
import { slipOfWeight } from '../../../shared/order.ts';
import { isDate } from '../../../shared/time.ts';
import { FIGURE_WORDS, unitOfFigure } from './figure-words.ts';

/** What an id is called: "panel-900" is "Panel 900". */
export type NameOf = (id: string) => string;

/** Names of an archive's things; of two archives, the later one's where both have it. */
export const namesOf = (...archives: readonly Archive[]): NameOf => {
  const names = new Map<string, string>();
  for (const { materials, mixes, castings, kits } of archives)
    for (const { id, name } of [...materials, ...mixes, ...castings, ...kits]) names.set(id, name);
  return (id) => names.get(id) ?? id;
};

/** Conditions as a maker says them. */
export const CONDITION_WORDS = {
  ready: 'clean',
  dirty: 'to be cleaned',
  damaged: 'damaged',
  retired: 'scrapped',
} as const;

const DECIMALS = 4;
const numberText = (value: number, figure: string): string => {
  if (figure === 'weight') return slipOfWeight(value);
  return [String(Number(value.toFixed(DECIMALS))), unitOfFigure(figure)].filter(Boolean).join(' ');
};

const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;

/** "2 × Panel 900", "Panel 900 (10 minutes)", "3 × 300 mm of Rod 12 mm", "ends broken". */
const entryText = (entry: Record<string, unknown>, nameOf: NameOf): string => {
  if (typeof entry.part === 'string') return [entry.part, entry.condition, entry.note].filter(Boolean).join(' ');
  if (typeof entry.from === 'number' && typeof entry.unitPrice === 'number')
    return `from ${numberText(entry.from, '')} at ${numberText(entry.unitPrice, '')}`;
  const id = entry.casting ?? entry.kit ?? entry.material;
  const name = typeof id === 'string' ? nameOf(id) : '';
  if (typeof entry.lengthMm === 'number') return `${entry.count} × ${entry.lengthMm} mm of ${name}`;
  if (typeof entry.changeMinutes === 'number')
    return entry.changeMinutes > 0 ? `${name} (${entry.changeMinutes} minutes)` : name;
  const count = entry.quantity ?? entry.count;
  return typeof count === 'number' && name ? `${numberText(count, '')} × ${name}` : Object.values(entry).join(' ');
};

const textOf = (text: string, figure: string, nameOf: NameOf): string => {
  if (isDate(text)) return fullDayWords(text);
  if (figure === 'condition') return CONDITION_WORDS[text as keyof typeof CONDITION_WORDS] ?? text;
  return figure === 'mix' || figure === 'setFor' ? nameOf(text) : text;
};

/** A figure of a file as it is said: "13.6 kg", "none", "2 × Panel 900, 1 × Panel 600". */
export const figureText = (value: unknown, figure: string, nameOf: NameOf): string => {
  if (value === undefined || value === null || value === '') return 'none';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') return numberText(value, figure);
  if (typeof value === 'string') return textOf(value, figure, nameOf);
  if (Array.isArray(value))
    return value.map((one) => (isRecord(one) ? entryText(one, nameOf) : String(one))).join(', ') || 'none';
  if (!isRecord(value)) return String(value);
  if (typeof value.typed === 'string') return value.typed;
  return Object.entries(value)
    .map(([name, part]) => `${FIGURE_WORDS[name] ?? name} ${figureText(part, name, nameOf)}`)
    .join(', ');
};
