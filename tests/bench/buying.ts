import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openDatabase } from '../../db/open.ts';
import { loadYardFile } from '../../db/stores/yard-store.ts';
import { HOLDING_PERCENT } from '../../shared/money.ts';
import type { PlanFile } from '../../shared/plan.ts';
import { AHEAD_DAYS } from '../../shared/supplier.ts';
import { dayNumber } from '../../shared/time.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import type { TripSupplier } from '../../src/engine/buy/bought-goods.ts';
import { type TripsAsked, tripsOf } from '../../src/engine/buy/trips.ts';
import { planYard } from '../../src/engine/plan.ts';
import { materialUses } from '../../src/usecases/buying/material-uses.ts';
import { scaledYard } from '../support/scaled-yard.ts';
import { arrivalsOf } from './season/arrivals.ts';
import type { SeasonYard } from './season/season-yard.ts';
import { SEASON_YARDS } from './season/season-yards.ts';
import { median, ms, type Row, timed } from './table.ts';

const WEEKS = 12;
const MONTH_DAYS = 30.4;

/** A shop that is closed on Sundays, and asks for all there is to ask for. */
const SHOP: TripSupplier = {
  opens: { rule: 'FREQ=WEEKLY;BYDAY=MO,TU,WE,TH,FR,SA', from: '2027-01-01' },
  ...{ delivers: null, closed: ['2027-04-05', '2027-05-03'], fetched: true },
  ...{ minimumOrder: 60, deliveryPrice: 12, carriesKg: 600, aheadDays: AHEAD_DAYS },
};

const planned = (yard: YardFile): { yard: YardFile; plan: PlanFile } => ({
  yard,
  plan: planYard(yard, { effort: 'quick' }),
});

const asked = ({ yard, plan }: ReturnType<typeof planned>, more: Partial<TripsAsked> = {}): TripsAsked => ({
  ...{
    yard,
    plan,
    suppliers: new Map(),
    figures: new Map(),
    floatDays: 1,
    holdingPercent: HOLDING_PERCENT,
    today: yard.yard.now.slice(0, 10),
  },
  uses: materialUses(yard, plan),
  ...more,
});

/** Only what is needed within the weeks that are measured. */
const within = (plan: PlanFile, now: string): PlanFile => ({
  ...plan,
  buys: plan.buys.filter(({ arrivesOn }) => dayNumber(arrivesOn) < dayNumber(now.slice(0, 10)) + 7 * WEEKS),
});

/** Twelve weeks of a busy yard: three suppliers with loads, least orders and price breaks, bags by weight. */
const busy = (orders: number, moulds: number): TripsAsked => {
  const yard = scaledYard(orders, moulds);
  yard.materials.forEach((material, i) => {
    Object.assign(material, { supplier: ['Shop', 'Shop', 'Mesh', 'Steel', 'Steel'][i], unitPrice: 5 + i, onHand: 5 });
  });
  const { plan } = planned(yard);
  const suppliers = new Map(['Shop', 'Mesh', 'Steel'].map((name) => [name, SHOP]));
  const figures = new Map(
    yard.materials.map(({ id, unitPrice = 1 }, i) => [
      id,
      { kgPerUnit: [25, 25, 3, 1.2, 2.7][i]!, breaks: i % 2 === 0 ? [{ from: 20, unitPrice: unitPrice * 0.92 }] : [] },
    ]),
  );
  return asked({ yard, plan: within(plan, yard.yard.now) }, { suppliers, figures });
};

const timeRow = (what: string, aim: string, of: TripsAsked): Row => {
  const trips = tripsOf(of);
  const time = ms(median(timed(9, 3, () => tripsOf(of))));
  const proven = trips.every((trip) => trip.proven) ? '' : ', not all proven';
  return { what: `${what}: ${of.plan.buys.length} buys, ${trips.length} trips`, figure: `${time}${proven}`, aim };
};

/** A season yard at noon of its first day, with all orders of twelve weeks taken already. */
const seasonYard = async (season: SeasonYard): Promise<YardFile> => {
  const folder = mkdtempSync(join(tmpdir(), 'yard-'));
  const database = await openDatabase({ url: `file:${join(folder, 'yard.db')}` });
  const now = `${season.from}T12:00:00Z`;
  const yard = await database.write(async (tx) => {
    await season.seed(tx, now);
    return loadYardFile(tx, now);
  });
  await database.close();
  rmSync(folder, { recursive: true });
  const arrivals = arrivalsOf({ ...season, days: 7 * WEEKS, seed: 1, disturbed: false });
  const orders = arrivals.map(({ date, what, number }, i) => {
    const [kind, id] = what.split(':') as ['kit' | 'casting', string];
    const order = { id: `s-${i}`, notBefore: date, weight: 1, lines: [{ [kind]: id, quantity: number }] };
    return order as unknown as YardFile['orders'][number];
  });
  return { ...yard, orders: [...yard.orders, ...orders] };
};

/** Days on which something has to be ordered from somebody, as the plan has it: a way each. */
const waysBefore = ({ yard, plan }: TripsAsked): number => {
  const from = new Map(yard.materials.map(({ id, supplier }) => [id, supplier ?? '']));
  return new Set(plan.buys.map(({ material, orderBy }) => `${from.get(material)} ${orderBy}`)).size;
};

const tripsRow = async (season: SeasonYard): Promise<Row> => {
  const all = planned(await seasonYard(season));
  const of = asked({ ...all, plan: within(all.plan, all.yard.yard.now) });
  const months = (7 * WEEKS) / MONTH_DAYS;
  const [before, after] = [waysBefore(of), tripsOf(of).length].map((ways) => (ways / months).toFixed(1));
  return { what: season.name, figure: `${before} before, ${after} by trips`, aim: '' };
};

/** How long trips take to work out, and how many a month they are in the yards of the season bench. */

export const buyingRows = (): Row[] => [
  timeRow('12 weeks of 130 orders', 'under 100 ms', busy(130, 26)),
  timeRow('12 weeks of 1,000 orders', '', busy(1000, 200)),
];

/** Ways to suppliers in a month: by the days of the plan, and bundled. */
export const tripRows = async (): Promise<Row[]> => {
  const rows: Row[] = [];
  for (const season of SEASON_YARDS) rows.push(await tripsRow(season));
  return rows;
};
