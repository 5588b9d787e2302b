import type { KitSize } from '../../../shared/kit-size.ts';
import type { Material } from '../../../shared/material.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { KitMade } from '../../engine/kits/kit-by-size.ts';
import { loadsAt } from '../../engine/kits/loads.ts';
import { type PlanSize, sizeBetween } from '../../engine/kits/outline.ts';
import { lengthText } from '../../engine/units/length.ts';
import { massText } from '../../engine/units/mass.ts';
import { heavyPiece } from '../typed/heavy-piece.ts';
import { lengthSaid } from '../typed/size-shown.ts';
import { type KitPiece, kitName, kitPieces, kitPins, packMinutesGuess, sameKit } from './kit-contents.ts';
import { kitDrawing } from './kit-drawing.ts';
import { askedPlan } from './kit-laid.ts';
import type { KitFacts, KitLoads, KitPanels, KitPins, KitSleeves } from './kit-model.ts';
import { pinLengthMm } from './kit-pins.ts';
import { kitSide } from './kit-side.ts';
import type { PanelKind } from './panel-kinds.ts';

/** What the facts of a kit are worked out from. */
export interface KitGround {
  yard: YardFile;
  system: UnitSystem;
  kind: PanelKind;
  pins: Material | null;
}

const SIZE_NAMES = ['lengthMm', 'widthMm', 'cutLengthMm', 'cutWidthMm'] as const;

/** "1235 mm by 635 mm", with the corner left out of an L. */
export const planText = (size: PlanSize, shape: KitSize['shape'], system: UnitSystem): string => {
  const [long, wide, cutLong, cutWide] = SIZE_NAMES.map((name) => lengthText(size[name], system));
  if (shape === 'row') return `${long}`;
  return shape === 'L' ? `${long} by ${wide} less ${cutLong} by ${cutWide}` : `${long} by ${wide}`;
};

/** The size as it was typed: "4 ft by 635 mm". */
export const typedText = ({ shape, length, width, cutLength, cutWidth }: KitSize, system: UnitSystem): string => {
  const [long = '', wide, cutLong, cutWide] = [length, width, cutLength, cutWidth].map(
    (one) => one && lengthSaid(one, system),
  );
  if (shape === 'row') return long;
  return shape === 'L' ? `${long} by ${wide} less ${cutLong} by ${cutWide}` : `${long} by ${wide}`;
};

const massOf = (pieces: readonly KitPiece[]): number =>
  pieces.reduce((sum, { casting, count }) => sum + casting.kg * count, 0);

const panelsFacts = (pieces: readonly KitPiece[], system: UnitSystem): KitPanels[] =>
  pieces.map(({ casting, count }) => ({
    ...{
      name: casting.name,
      count,
      each: massText(casting.kg, system),
      together: massText(casting.kg * count, system),
    },
  }));

const pinsFacts = (made: KitMade, size: KitSize, { kind, pins, system }: KitGround): KitPins => {
  const lengthMm = pinLengthMm(size, kind.heightMm);
  const at = (where: 'corner' | 'joint' | 'end') => made.pins.filter((pin) => pin.at === where).length;
  const tooLong = pins?.stickMm !== undefined && lengthMm > pins.stickMm;
  return {
    ...{ count: made.pins.length, corners: at('corner'), joints: at('joint'), ends: at('end') },
    length: lengthText(lengthMm, system),
    above: lengthText(size.courses * kind.heightMm, system),
    ground: lengthText(size.ground.mm, system),
    from: pins?.name ?? null,
    tooLong: tooLong
      ? `${pins.name} comes in lengths of ${lengthText(pins.stickMm ?? 0, system)}, too short for such a pin.`
      : null,
  };
};

/** What is cut for the panels as they are cast, sleeves above all. */
const sleevesFacts = (pieces: readonly KitPiece[], { yard, system }: KitGround): KitSleeves[] => {
  const cuts = new Map<string, { material: string; lengthMm: number; count: number }>();
  for (const { casting, count } of pieces)
    for (const cut of casting.cuts) {
      const key = `${cut.material} ${cut.lengthMm}`;
      const before = cuts.get(key)?.count ?? 0;
      cuts.set(key, { ...cut, count: before + cut.count * count });
    }
  return [...cuts.values()].map(({ material, lengthMm, count }) => ({
    ...{
      count,
      length: lengthText(lengthMm, system),
      from: yard.materials.find(({ id }) => id === material)?.name ?? material,
    },
  }));
};

const heaviestOf = (pieces: readonly KitPiece[]): KitPiece['casting'] =>
  pieces.reduce((heaviest, piece) => (piece.casting.kg > heaviest.casting.kg ? piece : heaviest)).casting;

/** Null without a payload; no loads when a single piece is too heavy for it. */
const loadsFacts = (pieces: readonly KitPiece[], payloadKg: number | null, system: UnitSystem): KitLoads | null => {
  if (payloadKg === null) return null;
  const loads = loadsAt(
    pieces.map(({ casting, count }) => ({ casting: casting.name, count, kg: casting.kg })),
    payloadKg,
  );
  return {
    payload: massText(payloadKg, system),
    count: loads?.reduce((sum, { times }) => sum + times, 0) ?? 0,
    loads: loads?.map((load) => ({ times: load.times, mass: massText(load.kg, system), pieces: load.pieces })) ?? [],
  };
};

/** Everything there is to say of a kit that can be made, in the yard's units. */
export const kitFacts = (made: KitMade, size: KitSize, payloadKg: number | null, ground: KitGround): KitFacts => {
  const { kind, system, yard, pins } = ground;
  const pieces = kitPieces(made, kind);
  const text = (plan: PlanSize) => planText(plan, size.shape, system);
  const heaviest = heaviestOf(pieces);
  const comesOut = sizeBetween(made.size, size.faces, size.shape, kind.thicknessMm);
  const same = sameKit(
    {
      pieces: pieces.map(({ casting, count }) => ({ casting: casting.id, count })),
      cuts: kitPins(made, size, kind, pins),
    },
    yard,
  );
  return {
    shape: size.shape,
    courses: size.courses,
    faces: size.faces,
    asked: typedText(size, system),
    comesOut: text(comesOut) === text(askedPlan(size)) ? null : text(comesOut),
    outside: text(made.size),
    inside: size.shape === 'row' ? null : text(sizeBetween(made.size, 'inside', size.shape, kind.thicknessMm)),
    height: lengthText(size.courses * kind.heightMm, system),
    panelCount: pieces.reduce((sum, { count }) => sum + count, 0),
    panels: panelsFacts(pieces, system),
    pins: pinsFacts(made, size, ground),
    sleeves: sleevesFacts(pieces, ground),
    mass: massText(massOf(pieces), system),
    heaviest: heavyPiece(heaviest.name, heaviest.kg, system),
    loads: loadsFacts(pieces, payloadKg, system),
    drawing: kitDrawing(made, size.shape, kind.thicknessMm, system),
    side: kitSide(made, { ...kind, courses: size.courses, groundMm: size.ground.mm }, system),
    name: kitName(size, system),
    packMinutes: packMinutesGuess(pieces),
    same: same && { id: same.id, name: same.name },
  };
};
