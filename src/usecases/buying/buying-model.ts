import type { Material } from '../../../shared/material.ts';
import type { PlanBuy, PlanFile } from '../../../shared/plan.ts';
import { dateOfDay, dayNumber } from '../../../shared/time.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { lengthText } from '../../engine/units/length.ts';
import { shownUnit } from '../../engine/units/material-unit.ts';
import { today } from '../core/context.ts';
import { amountField, asTyped } from '../typed/amount-typed.ts';
import { type Measures, shownAmount, weekOf } from '../typed/measures.ts';
import { OFFCUTS_EXAMPLE, offcutsText } from '../typed/offcuts-typed.ts';
import { bookOf } from '../typed/stock-book.ts';
import type {
  AmountInField,
  BuyingModel,
  BuyLineFacts,
  BuyWeek,
  ComingFacts,
  OffcutsFacts,
  Purpose,
  StockFacts,
} from './buying-facts.ts';
import {
  type Goods,
  hasNothingInHand,
  keepingFacts,
  type Purposes,
  purposesOf,
  type Seen,
  unusedIn,
} from './buying-supplies.ts';
import { keepingShown } from './keeping-facts.ts';
import { materialUses } from './material-uses.ts';
import { keptOf, stockFacts } from './stock-facts.ts';
import type { SupplyPurpose } from './supply-purposes.ts';

/** With those who sell things that nobody's name is written beside. */
const NO_SUPPLIER = 'No supplier recorded';

/** An amount as the page says it, as its field is filled in, and exactly as it is kept. */
const amountFacts = (quantity: number, unit: string, { measures: { system } }: Seen): AmountInField => ({
  ...shownAmount({ quantity, unit }, system),
  field: amountField(quantity, unit, system),
  was: quantity,
});

const namesOf = (
  { orders, keep }: SupplyPurpose,
  { minimum, unit }: YardFile['materials'][number],
  { customers, measures }: Seen,
): Purpose => ({
  customers: orders.map((id) => (id === null ? null : (customers.get(id) ?? `order ${id}`))),
  keep: keep ? shownAmount({ quantity: minimum, unit }, measures.system).quantity : null,
});

const lineOf = (
  week: string,
  index: number,
  bought: readonly PlanBuy[],
  purposes: Purposes,
  seen: Seen,
): BuyLineFacts => {
  const material = seen.yard.materials[index]!;
  const quantity = bought.reduce((sum, buy) => sum + buy.quantity, 0);
  const all = bought.flatMap((buy) => purposes.get(buy) ?? []);
  const purpose = { orders: [...new Set(all.flatMap(({ orders }) => orders))], keep: all.some(({ keep }) => keep) };
  const orderBy = bought.map((buy) => buy.orderBy).sort()[0]!;
  const lead = material.leadDays ?? 0;
  return {
    key: `${week}-${index}`,
    ...{ material: material.id, name: material.name, orderBy, ...amountFacts(quantity, material.unit, seen) },
    pack: material.pack * shownUnit(material.unit, seen.measures.system).perUnit,
    packIsOne: material.pack === 1,
    on: dateOfDay(dayNumber(seen.today) + lead),
    price: material.unitPrice === undefined ? null : material.unitPrice * quantity,
    for: namesOf(purpose, material, seen),
    hasNothingInHand: orderBy === seen.today && hasNothingInHand(material, seen),
    unused: unusedIn(bought, material, seen),
  };
};

const bySupplier = (lines: readonly { supplier: string; line: BuyLineFacts }[]): BuyWeek['suppliers'] => {
  const suppliers = [...new Set(lines.map(({ supplier }) => supplier))].sort((a, b) =>
    a === NO_SUPPLIER ? 1 : b === NO_SUPPLIER ? -1 : a.localeCompare(b),
  );
  return suppliers.map((name) => ({
    name,
    lines: lines.flatMap(({ supplier, line }) => (supplier === name ? [line] : [])),
  }));
};

/** Purchases by the week in which they have to be ordered, then by supplier; one line for a material in a week. */
const weeksOf = (seen: Seen): BuyWeek[] => {
  const { weekStart } = seen.measures;
  const weeks = [...new Set(seen.buys.map(({ orderBy }) => weekOf(orderBy, weekStart)))].sort();
  const purposes = seen.yard.materials.map((material) => purposesOf(material, seen));
  return weeks.map((week) => {
    const lines = seen.yard.materials.flatMap((material, index) => {
      const bought = seen.buys.filter((buy) => buy.material === material.id && weekOf(buy.orderBy, weekStart) === week);
      if (bought.length === 0) return [];
      const line = lineOf(week, index, bought, purposes[index]!, seen);
      return [{ line, supplier: material.supplier ?? NO_SUPPLIER }];
    });
    return { week, suppliers: bySupplier(lines.sort((a, b) => a.line.orderBy.localeCompare(b.line.orderBy))) };
  });
};

const onTheWayOf = (seen: Seen): ComingFacts[] =>
  seen.goods
    .map((goods) => {
      const material = seen.yard.materials.find(({ id }) => id === goods.material)!;
      const purpose = purposesOf(material, seen).get(goods) ?? { orders: [], keep: false };
      const typed = seen.typed.get(`${material.id} incoming ${goods.id}`);
      return {
        ...{ id: goods.id, on: goods.on, boughtOn: goods.boughtOn, price: goods.price, name: material.name },
        ...amountFacts(goods.quantity, material.unit, seen),
        asTyped: asTyped(typed, goods.quantity, material.unit, seen.measures.system),
        for: namesOf(purpose, material, seen),
        unused: unusedIn([goods], material, seen),
      };
    })
    .sort((a, b) => a.on.localeCompare(b.on));

const offcutsFacts = ({ stickMm, offcuts = [] }: Material, system: UnitSystem): OffcutsFacts | null =>
  stickMm === undefined
    ? null
    : {
        lengths: offcuts.map(({ lengthMm, count }) => ({ length: lengthText(lengthMm, system), count })),
        field: offcutsText(offcuts, system),
        example: OFFCUTS_EXAMPLE[system],
      };

const stockOf = (seen: Seen, notes: ReadonlyMap<string, string>): StockFacts[] =>
  seen.yard.materials.map((material, index) => {
    const { perUnit, word } = shownUnit(material.unit, seen.measures.system);
    const { inYard, spokenFor, spare } = stockFacts(material, seen.uses.get(material.id) ?? []);
    const typed = seen.typed.get(`${material.id} onHand`);
    const keeping = seen.keeping.get(material.id) ?? null;
    return {
      key: String(index),
      ...{ material: material.id, name: material.name, unit: word, minimum: keptOf(material) * perUnit },
      canBeBought: material.leadDays !== undefined,
      offcuts: offcutsFacts(material, seen.measures.system),
      book: bookOf(material),
      ...{ inYard: inYard * perUnit, spokenFor: spokenFor * perUnit, spare: spare * perUnit },
      asTyped: asTyped(typed, inYard, material.unit, seen.measures.system),
      coming: seen.goods
        .filter((one) => one.material === material.id)
        .map(({ quantity, on }) => ({ quantity: quantity * perUnit, on })),
      note: notes.get(material.id) ?? null,
      keeping: keeping && keepingShown(keeping, perUnit),
    };
  });

interface Stored {
  now: string;
  goods: readonly Goods[];
  notes: ReadonlyMap<string, string>;
  measures: Measures;
  typed: Seen['typed'];
  arrivals: Seen['arrivals'];
}

/**
 * What to buy by when and for whom, what is on its way, and what is in the yard. Pure, on what the store holds; `uses` is
 * what the plan takes from stock.
 */
export const buyingModel = (
  { yard, plan }: { yard: YardFile; plan: PlanFile },
  stored: Stored,
  uses = materialUses(yard, plan),
): BuyingModel => {
  const day = today(yard.yard.timeZone, stored.now);
  const { goods, measures, typed, arrivals } = stored;
  const supplied = { yard, today: day, uses, goods, buys: plan.buys, measures, typed, arrivals };
  const keeping = new Map(yard.materials.map((material) => [material.id, keepingFacts(material, supplied)]));
  const seen: Seen = {
    ...supplied,
    keeping,
    customers: new Map(yard.orders.map(({ id, customer }) => [id, customer])),
  };
  return {
    yardName: yard.yard.name,
    today: day,
    currency: measures.currency,
    thisWeek: weekOf(day, measures.weekStart),
    weeks: weeksOf(seen),
    onTheWay: onTheWayOf(seen),
    stock: stockOf(seen, stored.notes),
    materials: yard.materials.map(({ id, name, unit }) => ({
      ...{ id, name, unit: shownUnit(unit, measures.system).word },
    })),
  };
};
