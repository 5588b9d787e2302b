import type { YardFileInput } from '../../../shared/yard-file.ts';
import type { Dice } from './dice.ts';

type Casting = YardFileInput['castings'][number];
type Kit = YardFileInput['kits'][number];
type Order = YardFileInput['orders'][number];

/** A kit of one to three lengths, two or four of each as a set of sides needs, with pins and now and then parts. */
const kitOf = (dice: Dice, castings: Casting[], number: number, most: number): Kit => {
  const lengths = dice.some(castings, Math.min(dice.whole(1, 3), Math.max(1, Math.floor(most / 2))));
  const pieces = lengths.map((x) => ({ casting: x.id, count: most > 4 ? dice.pick([2, 2, 4, 6]) : dice.whole(1, 2) }));
  return {
    id: `kit-${number}`,
    name: `Planter ${number}`,
    pieces,
    parts: dice.chance(0.2)
      ? [{ material: dice.pick(['lid', 'lid', 'pin-rod', 'sand']), quantity: dice.whole(1, 2) }]
      : [],
    cuts: dice.chance(0.7)
      ? [{ material: 'pin-rod', lengthMm: dice.pick([300, 480, 760]), count: dice.pick([0, 4, 4, 4]) }]
      : [],
    packMinutes: dice.pick([0, 8, 12, 20]),
  };
};

const piecesIn = (kit: Kit): number => kit.pieces.reduce((sum, piece) => sum + piece.count, 0);

const linesOf = (dice: Dice, kits: Kit[], castings: Casting[], pieces: number): Order['lines'] => {
  const lines: Order['lines'] = [];
  let left = pieces;
  const fitting = () => kits.filter((kit) => piecesIn(kit) <= left);
  while (left > 0 && lines.length < 4) {
    const kit = fitting().length > 0 && dice.chance(0.8) ? dice.pick(fitting()) : undefined;
    const quantity = dice.whole(1, Math.max(1, Math.floor(left / (kit ? Math.max(1, piecesIn(kit)) : 1))));
    lines.push(kit ? { kit: kit.id, quantity } : { casting: dice.pick(castings).id, quantity });
    left -= kit ? piecesIn(kit) * quantity : quantity;
  }
  if (dice.chance(0.1)) lines.push({ material: dice.pick(['lid', 'sand', 'sleeve-pipe']), quantity: dice.whole(1, 3) });
  return lines;
};

/** Kits and orders for about `pieces` pieces in all, never more; due dates are given later. */
export const demandOf = (
  dice: Dice,
  castings: Casting[],
  pieces: number,
  count: number,
): Pick<YardFileInput, 'kits' | 'orders'> => {
  const share = Math.max(1, Math.floor(pieces / count));
  const kits = Array.from({ length: dice.whole(1, 5) }, (_, i) => kitOf(dice, castings, i + 1, share));
  const orders = Array.from({ length: count }, (_, i): Order => {
    const size = dice.chance(0.02) ? 0 : Math.max(1, Math.floor(share * dice.pick([0.5, 0.75, 1, 1])));
    return {
      id: `27-${String(i + 1).padStart(3, '0')}`,
      weight: dice.pick([1, 1, 1, 2, 3, 6, 0.5]),
      lines: linesOf(dice, kits, castings, size),
    };
  });
  return { kits, orders };
};

/** Pieces that each order asks for, by casting. */
export const piecesOf = (order: Order, kits: Kit[]): Map<string, number> => {
  const pieces = new Map<string, number>();
  const add = (casting: string, count: number) => pieces.set(casting, (pieces.get(casting) ?? 0) + count);
  for (const line of order.lines) {
    if (line.casting !== undefined) add(line.casting, line.quantity);
    for (const piece of kits.find((kit) => kit.id === line.kit)?.pieces ?? [])
      add(piece.casting, piece.count * line.quantity);
  }
  return pieces;
};
