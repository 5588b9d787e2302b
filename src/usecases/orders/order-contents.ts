import type { OrderLine } from '../../../shared/order.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { shownUnit } from '../../engine/units/material-unit.ts';
import { whatOf } from '../typed/what-ordered.ts';

/** Anything an order line can ask for: a kit, a single piece, or a part. `what` names it in a form: "kit:trough". */
export interface Offer {
  what: string;
  name: string;
  kind: 'kit' | 'casting' | 'material';
  /** What a quantity of it counts, as it is shown. */
  unit: string;
  /** The unit it is kept in, and how many of the one shown make one of those. */
  keptIn: string;
  perUnit: number;
}

const COUNTED = { unit: '', keptIn: '', perUnit: 1 } as const;

/** Everything that can be ordered from a yard, in its units: kits first, then single pieces, then parts. */
export const offersOf = (yard: YardFile, system: UnitSystem): Offer[] => [
  ...yard.kits.map(({ id, name }): Offer => ({ what: `kit:${id}`, name, kind: 'kit', ...COUNTED })),
  ...yard.castings.map(({ id, name }): Offer => ({ what: `casting:${id}`, name, kind: 'casting', ...COUNTED })),
  ...yard.materials.map(({ id, name, unit }): Offer => {
    const { word, perUnit } = shownUnit(unit, system);
    return { what: `material:${id}`, name, kind: 'material', unit: word, keptIn: unit, perUnit };
  }),
];

/** One line of an order as pages speak of it: how many of what, in the unit that is shown ('' for what is counted). */
export interface ContentsLine {
  what: string;
  name: string;
  quantity: number;
  unit: string;
}

/** What an order is for, line by line, in the yard's own names. A thing no longer there keeps the name it had. */
export const contentsOf = (lines: readonly OrderLine[], offers: readonly Offer[]): ContentsLine[] =>
  lines.map((line) => {
    const what = whatOf(line);
    const offer = offers.find((one) => one.what === what);
    return {
      what,
      name: offer?.name ?? what.slice(what.indexOf(':') + 1),
      quantity: line.quantity * (offer?.perUnit ?? 1),
      unit: offer?.unit ?? '',
    };
  });
