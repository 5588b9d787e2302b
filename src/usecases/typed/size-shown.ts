import type { TypedLength, UnitSystem } from '../../../shared/units.ts';
import { lengthText } from '../../engine/units/length.ts';
import { figureShown } from './figures.ts';
import { readMm } from './material-figures.ts';

/** A length as it was typed; as the yard writes it where the same words would mean another length in its units. */
export const lengthShown = ({ typed, mm }: TypedLength, system: UnitSystem): string =>
  figureShown(
    typed,
    mm,
    (text) => readMm(text, system),
    (stored) => lengthText(stored, system),
  );

/** The same in a sentence, where a bare number says too little: "900 mm", "4 ft 6 in". */
export const lengthSaid = (length: TypedLength, system: UnitSystem): string =>
  /^[\d.,\s/½¼¾-]+$/.test(length.typed) ? lengthText(length.mm, system) : length.typed;
