import type { StoredOrder } from '../../../db/stores/order-store.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { goodsOfLines } from '../../engine/book/goods.ts';
import { type Lifting, liftingOf } from '../../engine/kits/lifting.ts';
import { loadsAt } from '../../engine/kits/loads.ts';
import { lengthText } from '../../engine/units/length.ts';
import { massText } from '../../engine/units/mass.ts';
import { shownUnit } from '../../engine/units/material-unit.ts';
import type { KitLoads } from '../kits/kit-model.ts';
import { type HeaviestPiece, heavyPiece } from '../typed/heavy-piece.ts';
import { canGoInParts } from './open-order.ts';
import { type ContentsLine, contentsOf, type Offer } from './order-contents.ts';

/** Pieces of one casting that go out. */
interface PiecesOut {
  name: string;
  count: number;
  /** Of one piece. */
  mass: string;
  lifting: Lifting;
}

/** What goes out with the pieces: so much of a material, or so many lengths of it. */
interface PartsOut {
  name: string;
  quantity: number;
  unit: string;
  /** Null where it is not cut. */
  length: string | null;
}

/** One order to be loaded. */
export interface OrderOut {
  id: string;
  customer: string | null;
  phone: string | null;
  customerNote: string | null;
  note: string | null;
  /** Where it is taken. */
  address: string | null;
  promisedOn: string | null;
  contents: readonly ContentsLine[];
  /** The heaviest first. */
  pieces: readonly PiecesOut[];
  parts: readonly PartsOut[];
  /** Some of it can go out before the rest. */
  canGoInParts: boolean;
  /** Of its pieces together; null where it has none. */
  mass: string | null;
}

/** What the pieces of a day come to. */
export interface LoadFacts {
  mass: string;
  heaviest: HeaviestPiece;
  /** By the payload that was asked about; null where none was. No loads where one piece alone is too heavy. */
  carried: KitLoads | null;
}

/** What orders are seen with. */
export interface OutSeen {
  yard: YardFile;
  offers: readonly Offer[];
  system: UnitSystem;
}

/**
 * The day on which an order goes out: the one its customer was told, once it is ready by then; else the day it is ready, and
 * never a day that has gone by. Null where it cannot be made.
 */
export const dayOut = (
  { promisedOn }: Pick<StoredOrder, 'promisedOn'>,
  planned: Pick<PlanFile['orders'][number], 'completesOn'> | undefined,
  today: string,
): string | null => {
  if (!planned) return null;
  const days = [today, planned.completesOn, ...(promisedOn === null ? [] : [promisedOn])];
  return days.sort().at(-1)!;
};

const castingOf = (casting: string, { yard }: OutSeen) => yard.castings.find(({ id }) => id === casting);

const weighed = (order: Pick<StoredOrder, 'lines'>, seen: OutSeen) =>
  [...goodsOfLines(order.lines, seen.yard).pieces].map(([id, count]) => {
    const casting = castingOf(id, seen);
    return { casting: casting?.name ?? id, count, kg: casting?.kg ?? 0 };
  });

const partsOf = ({ lines }: Pick<StoredOrder, 'lines'>, { yard, system }: OutSeen): PartsOut[] => {
  const { parts, cuts } = goodsOfLines(lines, yard);
  const materialOf = (id: string) => yard.materials.find((material) => material.id === id);
  return [
    ...[...parts].map(([id, quantity]) => {
      const { name = id, unit = '' } = materialOf(id) ?? {};
      const { word, perUnit } = shownUnit(unit, system);
      return { name, quantity: quantity * perUnit, unit: word, length: null };
    }),
    ...cuts.map(({ material, lengthMm, count }) => ({
      ...{ name: materialOf(material)?.name ?? material, quantity: count, unit: '' },
      length: lengthText(lengthMm, system),
    })),
  ];
};

const totalKg = (pieces: readonly { count: number; kg: number }[]): number =>
  pieces.reduce((sum, { count, kg }) => sum + count * kg, 0);

/** An order with all that has to be loaded for it. A piece is taken to be as heavy as when it was poured. */
export const orderOut = (order: StoredOrder, seen: OutSeen): OrderOut => {
  const pieces = weighed(order, seen).sort((a, b) => b.kg - a.kg);
  return {
    id: order.id,
    customer: order.customer?.name ?? null,
    phone: order.customer?.phone ?? null,
    customerNote: order.customer?.note ?? null,
    ...{ note: order.note, address: order.address, promisedOn: order.promisedOn },
    contents: contentsOf(order.lines, seen.offers),
    pieces: pieces.map(({ casting, count, kg }) => ({
      ...{ name: casting, count, mass: massText(kg, seen.system), lifting: liftingOf(kg) },
    })),
    parts: partsOf(order, seen),
    canGoInParts: canGoInParts(order),
    mass: pieces.length === 0 ? null : massText(totalKg(pieces), seen.system),
  };
};

const together = (orders: readonly Pick<StoredOrder, 'lines'>[], seen: OutSeen) => {
  const pieces = new Map<string, { casting: string; count: number; kg: number }>();
  for (const one of orders.flatMap((order) => weighed(order, seen)))
    pieces.set(one.casting, { ...one, count: (pieces.get(one.casting)?.count ?? 0) + one.count });
  return [...pieces.values()].filter(({ count }) => count > 0);
};

/** What the pieces of some orders come to, and in how many loads of a payload in kg; null where there are none. */
export const loadFacts = (
  orders: readonly Pick<StoredOrder, 'lines'>[],
  payloadKg: number | null,
  seen: OutSeen,
): LoadFacts | null => {
  const pieces = together(orders, seen);
  const [heaviest] = [...pieces].sort((a, b) => b.kg - a.kg);
  if (!heaviest) return null;
  const loads = payloadKg === null ? null : (loadsAt(pieces, payloadKg) ?? []);
  const text = (kg: number): string => massText(kg, seen.system);
  return {
    mass: text(totalKg(pieces)),
    heaviest: heavyPiece(heaviest.casting, heaviest.kg, seen.system),
    carried: loads && {
      payload: text(payloadKg!),
      count: loads.reduce((sum, { times }) => sum + times, 0),
      loads: loads.map(({ times, kg, pieces: carried }) => ({ times, mass: text(kg), pieces: carried })),
    },
  };
};
