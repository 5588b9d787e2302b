import type { Cut } from '../../../shared/material.ts';
import type { OrderLine } from '../../../shared/order.ts';
import type { YardFile } from '../../../shared/yard-file.ts';

const add = (sums: Map<string, number>, id: string, amount: number) => sums.set(id, (sums.get(id) ?? 0) + amount);

/** What has to be there to hand an order over: pieces by casting, parts by material, and lengths to cut. */
export const piecesOfOrder = (lines: readonly OrderLine[], yard: YardFile) => {
  const pieces = new Map<string, number>();
  const parts = new Map<string, number>();
  const cuts: Cut[] = [];
  for (const line of lines) {
    if (line.casting !== undefined) add(pieces, line.casting, line.quantity);
    if (line.material !== undefined) add(parts, line.material, line.quantity);
    const kit = yard.kits.find(({ id }) => id === line.kit);
    for (const { casting, count } of kit?.pieces ?? []) add(pieces, casting, count * line.quantity);
    for (const { material, quantity } of kit?.parts ?? []) add(parts, material, quantity * line.quantity);
    for (const cut of kit?.cuts ?? []) cuts.push({ ...cut, count: cut.count * line.quantity });
  }
  return { pieces, parts, cuts };
};
