import { listText } from '../../shared/list-text.ts';
import { countText } from '../../shared/plural.ts';
import type { MeshFacts, SheetFacts } from '../../src/usecases/today/mesh-list.ts';

/** "Mesh 25 mm, a whole one of 1000 mm by 6000 mm: 2 × 175 mm by 875 mm for Panel 900; keep 1000 mm by 5125 mm" */
export const sheetLine = (name: string, { size, whole, pieces, kept }: SheetFacts): string => {
  const cut = listText(pieces.map((one) => `${one.count} × ${one.size} for ${one.piece}`));
  const left = kept.length === 0 ? '' : `; keep ${listText(kept)}`;
  return `${name}, ${whole ? `a whole one of ${size}` : `the rest of ${size}`}: ${cut}${left}`;
};

/** "Cut beside a wire, in this order: 1 across at 875 mm, 2 lengthways at 175 mm." From the upper edge, and from the left one. */
export const sheetCutsText = ({ cuts }: Pick<SheetFacts, 'cuts'>): string =>
  cuts.length === 0
    ? ''
    : `Cut beside a wire, in this order: ${cuts.map(({ number, way, at }) => `${number} ${way} at ${at}`).join(', ')}.`;

/** What is thrown away of it, and how good that is. */
export const wasteText = ({ wastePercent, whole, atLeast }: MeshFacts): string => {
  const waste = `${wastePercent} % of what is cut up is waste; wire ends that reach over a piece are trimmed.`;
  if (whole <= atLeast) return waste;
  return `${waste} It takes ${countText(whole, 'whole one')}; with luck ${atLeast} would do.`;
};
