import type { StoredIncoming } from '../../db/stores/material-store.ts';
import type { PlanBuy, PlanFile } from '../../shared/plan.ts';
import { type DayNumber, dateOfDay, dayNumber, WEEKDAYS, weekdayOf } from '../../shared/time.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import { calendarOf } from '../engine/work/calendar.ts';
import { today } from './context.ts';
import { type MaterialUse, materialUses } from './material-uses.ts';
import { keptOf, stockFacts } from './stock-facts.ts';
import { type SupplyPurpose, supplyPurposes } from './supply-purposes.ts';

/** With those who sell things that nobody's name is written beside. */
const NO_SUPPLIER = 'Supplier not written down';

type Goods = Pick<StoredIncoming, 'id' | 'material' | 'quantity' | 'on' | 'boughtOn' | 'price'>;

interface Seen {
  yard: YardFile;
  today: string;
  uses: ReadonlyMap<string, readonly MaterialUse[]>;
  goods: readonly Goods[];
  buys: readonly PlanBuy[];
}

const mondayOf = (day: DayNumber): string => dateOfDay(day - WEEKDAYS.indexOf(weekdayOf(day)));

/** What each purchase of a material is for: goods on their way first where both come on one day. */
const purposesOf = (material: YardFile['materials'][number], { yard, today: day, uses, goods, buys }: Seen) => {
  const calendar = calendarOf(yard.yard.timeZone);
  const at = (date: string) => calendar.midnightOf(dayNumber(date < day ? day : date));
  const coming = goods.filter((one) => one.material === material.id);
  const toBuy = buys.filter((one) => one.material === material.id);
  const supplies = [
    ...coming.map(({ on, quantity }) => ({ at: at(on), quantity })),
    ...toBuy.map(({ arrivesOn, quantity }) => ({ at: at(arrivesOn), quantity })),
  ];
  const purposes = supplyPurposes(
    stockFacts(material, []).inYard - keptOf(material),
    uses.get(material.id) ?? [],
    supplies,
  );
  return new Map<Goods | PlanBuy, SupplyPurpose>([...coming, ...toBuy].map((one, i) => [one, purposes[i]!]));
};

const namesOf = ({ orders, keep }: SupplyPurpose, yard: YardFile, kept: number) => ({
  customers: orders.map((id) =>
    id === null ? null : (yard.orders.find((order) => order.id === id)?.customer ?? `order ${id}`),
  ),
  keep: keep ? kept : null,
});

type Line = ReturnType<typeof lineOf>;

const lineOf = (
  week: string,
  index: number,
  bought: readonly PlanBuy[],
  purposes: ReturnType<typeof purposesOf>,
  seen: Seen,
) => {
  const material = seen.yard.materials[index]!;
  const quantity = bought.reduce((sum, buy) => sum + buy.quantity, 0);
  const all = bought.flatMap((buy) => purposes.get(buy) ?? []);
  const purpose = { orders: [...new Set(all.flatMap(({ orders }) => orders))], keep: all.some(({ keep }) => keep) };
  const orderBy = bought.map((buy) => buy.orderBy).sort()[0]!;
  const lead = material.leadDays ?? 0;
  return {
    /** Names the line's fields in the form. */
    key: `${week}-${index}`,
    ...{ material: material.id, name: material.name, unit: material.unit, quantity, pack: material.pack, orderBy },
    /** When it comes if it is bought today. */
    on: dateOfDay(dayNumber(seen.today) + lead),
    price: material.unitPrice === undefined ? null : material.unitPrice * quantity,
    for: namesOf(purpose, seen.yard, material.minimum),
  };
};

const bySupplier = (lines: readonly (Line & { supplier: string })[]) => {
  const suppliers = [...new Set(lines.map(({ supplier }) => supplier))].sort((a, b) =>
    a === NO_SUPPLIER ? 1 : b === NO_SUPPLIER ? -1 : a.localeCompare(b),
  );
  return suppliers.map((name) => ({ name, lines: lines.filter(({ supplier }) => supplier === name) }));
};

/** Purchases by the week in which they have to be ordered, then by supplier; one line for a material in a week. */
const weeksOf = (seen: Seen) => {
  const weeks = [...new Set(seen.buys.map(({ orderBy }) => mondayOf(dayNumber(orderBy))))].sort();
  const purposes = seen.yard.materials.map((material) => purposesOf(material, seen));
  return weeks.map((week) => {
    const lines = seen.yard.materials.flatMap((material, index) => {
      const bought = seen.buys.filter(
        (buy) => buy.material === material.id && mondayOf(dayNumber(buy.orderBy)) === week,
      );
      if (bought.length === 0) return [];
      return [{ ...lineOf(week, index, bought, purposes[index]!, seen), supplier: material.supplier ?? NO_SUPPLIER }];
    });
    return { week, suppliers: bySupplier(lines.sort((a, b) => a.orderBy.localeCompare(b.orderBy))) };
  });
};

const onTheWayOf = (seen: Seen) =>
  seen.goods
    .map((goods) => {
      const material = seen.yard.materials.find(({ id }) => id === goods.material)!;
      const purpose = purposesOf(material, seen).get(goods) ?? { orders: [], keep: false };
      return { ...goods, name: material.name, unit: material.unit, for: namesOf(purpose, seen.yard, material.minimum) };
    })
    .sort((a, b) => a.on.localeCompare(b.on));

const stockOf = ({ yard, uses, goods }: Seen, notes: ReadonlyMap<string, string>) =>
  yard.materials.map((material, index) => ({
    key: String(index),
    ...{ material: material.id, name: material.name, unit: material.unit, minimum: keptOf(material) },
    canBeBought: material.leadDays !== undefined,
    ...stockFacts(material, uses.get(material.id) ?? []),
    coming: goods.filter((one) => one.material === material.id).map(({ quantity, on }) => ({ quantity, on })),
    note: notes.get(material.id) ?? null,
  }));

/** What to buy by when and for whom, what is on its way, and what is in the yard. Pure, on what the store holds. */
export const buyingModel = (
  { yard, plan }: { yard: YardFile; plan: PlanFile },
  stored: { now: string; goods: readonly Goods[]; notes: ReadonlyMap<string, string> },
) => {
  const day = today(yard.yard.timeZone, stored.now);
  const seen: Seen = { yard, today: day, uses: materialUses(yard, plan), goods: stored.goods, buys: plan.buys };
  return {
    yardName: yard.yard.name,
    today: day,
    thisWeek: mondayOf(dayNumber(day)),
    weeks: weeksOf(seen),
    onTheWay: onTheWayOf(seen),
    stock: stockOf(seen, stored.notes),
    materials: yard.materials.map(({ id, name, unit }) => ({ id, name, unit })),
  };
};
