import { readYardFile, type YardFile } from '../../../shared/yard-file.ts';
import { type Dice, diceOf } from './dice.ts';

type Material = YardFile['materials'][number];
type SheetPiece = NonNullable<YardFile['castings'][number]['sheets']>[number];

const SHEETS = [
  { sheetWidthMm: 1000, sheetLengthMm: 2000, meshMm: 25 },
  { sheetWidthMm: 1220, sheetLengthMm: 2440, meshMm: 50 },
  { sheetWidthMm: 1000, sheetLengthMm: 6000, meshMm: 12.7 },
  { sheetWidthMm: 900, sheetLengthMm: 1800 },
];

const restsOf = (dice: Dice, widest: number): NonNullable<Material['rests']> =>
  Array.from({ length: dice.whole(1, 3) }, () => ({
    ...{ widthMm: dice.pick([widest, 300, 400]), lengthMm: dice.whole(100, 1300) },
    count: dice.pick([1, 1, 2]),
  }));

/** What is cut has no date. */
const undated = ({ shelfLifeDays: _days, lots: _lots, openedDays: _opened, opensBy: _by, ...material }: Material) =>
  material;

const inSheets = (dice: Dice, material: Material, wanted: number): Material => {
  const sheet = dice.pick(SHEETS);
  const rests = dice.chance(0.6) ? restsOf(dice, sheet.sheetWidthMm) : [];
  // What can be bought this very day would have to have been above the minimum since midnight.
  const few = { onHand: dice.pick([0, 0, 1, 2, 0.7, wanted]), minimum: 0 };
  return {
    ...{ ...undated(material), ...sheet, ...few, inSheets: true, unit: 'sheet', pack: dice.pick([1, 1, 3]) },
    ...(rests.length > 0 ? { rests } : {}),
  };
};

/** A square piece may not turn, and now and then another may not. */
const pieceFor = (dice: Dice, area: number): SheetPiece => {
  const widthMm = dice.pick([135, 175, 300, 90]);
  return {
    ...{ material: 'mesh', widthMm, lengthMm: Math.min(850, Math.max(60, Math.round((area * 1e6) / widthMm))) },
    ...{ count: dice.pick([1, 1, 1, 2]), mayTurn: dice.chance(0.7) },
  };
};

/**
 * The yard with its mesh in sheets, of which pieces are cut for each casting that had some by the square metre: few or none are there,
 * and rests beside them. By dice of its own, so that all else of a seed's yard is what it was.
 */
export const sheetYard = (yard: YardFile, seed: number): YardFile => {
  const dice = diceOf(seed + 900_000_000);
  const castings = yard.castings.map((casting) => {
    const mesh = casting.perPiece.find(({ material }) => material === 'mesh');
    if (!mesh) return casting;
    const more = dice.chance(0.2) ? [pieceFor(dice, mesh.quantity / 3)] : [];
    return {
      ...casting,
      perPiece: casting.perPiece.filter((one) => one !== mesh),
      sheets: [pieceFor(dice, mesh.quantity), ...more],
    };
  });
  const materials = yard.materials.map((material) =>
    material.id === 'mesh' ? inSheets(dice, material, dice.whole(3, 9)) : material,
  );
  const read = readYardFile({ ...yard, materials, castings });
  if (!read.ok) throw new Error(`seed ${seed}: ${JSON.stringify(read.faults)}`);
  return read.yard;
};
