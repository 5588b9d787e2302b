import type { KitSize } from '../../../shared/kit-size.ts';
import { type KitBySize, kitBySize } from '../../engine/kits/kit-by-size.ts';
import { outsideSize, type PlanSize } from '../../engine/kits/outline.ts';
import type { PanelKind } from './panel-kinds.ts';

/** The size as it was asked for, between the faces it was asked for. */
export const askedPlan = ({ length, width, cutLength, cutWidth }: KitSize): PlanSize => ({
  ...{ lengthMm: length.mm, widthMm: width?.mm ?? 0, cutLengthMm: cutLength?.mm ?? 0, cutWidthMm: cutWidth?.mm ?? 0 },
});

/** A kit of a size from the panels of one kind, or the nearest sizes. */
export const kitLaid = (size: KitSize, { thicknessMm, panels }: Pick<PanelKind, 'thicknessMm' | 'panels'>): KitBySize =>
  kitBySize({
    ...{ shape: size.shape, courses: size.courses, thicknessMm, panelsMm: panels.map(({ lengthMm }) => lengthMm) },
    size: outsideSize(askedPlan(size), size.faces, size.shape, thicknessMm),
  });
