import type { KitSize } from '../../shared/kit-size.ts';
import type { TypedLength } from '../../shared/units.ts';
import { setCastingSize } from '../stores/casting-size-store.ts';
import { setKitSize } from '../stores/kit-store.ts';
import type { Tx } from '../transaction.ts';

const length = (mm: number): TypedLength => ({ typed: String(mm), mm });

/** 200 high; 35 thick, which at 2150 kg/m3 makes a 900 weigh 13.5 kg. */
const PANELS_MM = [1200, 900, 600, 450];
const [HEIGHT_MM, THICKNESS_MM] = [200, 35];

const rectangle = (lengthMm: number, widthMm: number, courses: number, groundMm: number): KitSize => ({
  ...{ shape: 'rectangle', faces: 'outside', courses, ground: length(groundMm) },
  ...{ length: length(lengthMm + THICKNESS_MM), width: length(widthMm + THICKNESS_MM) },
});

/** Each kit by the panels along its sides; round them it measures one thickness more. */
const KIT_SIZES: Readonly<Record<string, KitSize>> = {
  planter: rectangle(1200, 600, 2, 80),
  trough: rectangle(900, 450, 1, 100),
  'cold-frame': rectangle(900, 600, 1, 100),
  'herb-square': rectangle(450, 450, 1, 100),
};

/** How large the panels and kits of Larch Row Yard are, which its yard file has no place for. */
export const seedSizes = async (tx: Tx): Promise<void> => {
  const [height, thickness] = [length(HEIGHT_MM), length(THICKNESS_MM)];
  for (const mm of PANELS_MM)
    await setCastingSize(tx, { casting: `panel-${mm}`, length: length(mm), height, thickness });
  for (const [kit, size] of Object.entries(KIT_SIZES)) await setKitSize(tx, kit, size);
};
