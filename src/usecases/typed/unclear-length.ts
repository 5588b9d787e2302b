import type { TypedLength, UnitSystem } from '../../../shared/units.ts';

/** No panel is shorter; a bare number below it was meant in inches, or is a slip of the hand. */
const SHORTEST_BARE_MM = 150;

/** "48" as a panel's length in a metric yard is asked about; "48 mm" is taken as it is. Null where nothing is to be asked. */
export const unclearLength = (text: string, { mm }: TypedLength, system: UnitSystem): string | null =>
  system === 'metric' && mm > 0 && mm < SHORTEST_BARE_MM && /^[\d.,]+$/.test(text)
    ? `${text} mm or ${text} in? Write it with its unit.`
    : null;
