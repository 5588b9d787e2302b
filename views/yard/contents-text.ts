import { listText } from '../../shared/list-text.ts';
import type { ContentsShown } from '../../src/usecases/yard/contents-shown.ts';
import { quantityText } from '../parts/quantity-text.ts';

/** "0.16 m² Mesh; 2 of 500 mm from Rod". Empty where there is nothing. */
export const contentsText = ({ parts, cuts }: ContentsShown): string =>
  [
    listText(parts.map(({ quantity, unit, name }) => `${quantityText(quantity, unit)} ${name}`)),
    listText(cuts.map(({ name, length, count }) => `${count} of ${length} from ${name}`)),
  ]
    .filter(Boolean)
    .join('; ');
