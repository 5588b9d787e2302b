import type { CastingSize } from '../../../db/stores/casting-size-store.ts';
import type { Casting } from '../../../shared/casting.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { lengthText } from '../../engine/units/length.ts';

/** A panel whose size is known. */
export interface SizedPanel {
  casting: Casting;
  lengthMm: number;
}

/** Panels that can stand in one kit: of one mix, height and thickness, each length once, the longest first. */
export interface PanelKind {
  /** Names the kind in a form. */
  key: string;
  mix: string;
  heightMm: number;
  thicknessMm: number;
  panels: SizedPanel[];
}

/** The kinds of panels that kits can be made from, in the order of the yard's list. A piece as short as it is thick is none. */
export const panelKinds = (yard: YardFile, sizes: readonly CastingSize[]): PanelKind[] => {
  const kinds = new Map<string, PanelKind>();
  for (const casting of yard.castings) {
    const size = sizes.find((one) => one.casting === casting.id);
    if (!size || size.length.mm <= size.thickness.mm) continue;
    const [heightMm, thicknessMm, lengthMm] = [size.height.mm, size.thickness.mm, size.length.mm];
    const key = `${casting.mix} ${heightMm} ${thicknessMm}`;
    const kind = kinds.get(key) ?? { key, mix: casting.mix, heightMm, thicknessMm, panels: [] };
    kinds.set(key, kind);
    if (!kind.panels.some((panel) => panel.lengthMm === lengthMm)) kind.panels.push({ casting, lengthMm });
  }
  for (const { panels } of kinds.values()) panels.sort((a, b) => b.lengthMm - a.lengthMm);
  return [...kinds.values()];
};

/** "200 mm high, 35 mm thick, Thin panel mix" */
export const kindText = ({ mix, heightMm, thicknessMm }: PanelKind, yard: YardFile, system: UnitSystem): string => {
  const name = yard.mixes.find(({ id }) => id === mix)?.name ?? mix;
  return `${lengthText(heightMm, system)} high, ${lengthText(thicknessMm, system)} thick, ${name}`;
};
