import { isCutUp, type Material } from '../../../shared/material.ts';
import type { PlanBuy } from '../../../shared/plan.ts';
import { dateOfDay, dayNumber, type Minute } from '../../../shared/time.ts';
import { goesPast, Shelf } from './dates.ts';
import { type Finding, finder, TOLERANCE } from './finding.ts';
import type { Ground } from './ground.ts';
import { checkSheets } from './sheets.ts';
import { checkSticks } from './sticks.ts';
import { type CanCome, canCome } from './supplier.ts';
import { type Use, usesOf } from './uses.ts';

interface Change {
  at: Minute;
  quantity: number;
  /** The day on which what comes in comes. */
  cameOn?: number;
}

/** The level of one material over time, and what is asked of it. */
class Level {
  private readonly changes: Change[];
  private readonly minimumFrom: Minute;
  /** Days on which it can come; null: every day that its lead days leave. */
  private readonly comes: CanCome[] | null;
  /** Days in hand that the yard wants for it. */
  private readonly inHand: number;
  /** So many days after the one it comes on it is used at the latest. */
  private readonly keeps: number;
  /** Of what is cut up whole ones: a share of one counts for nothing. */
  private readonly onHand: number;

  constructor(
    private readonly ground: Ground,
    private readonly material: Material,
    uses: Use[],
  ) {
    const incoming = ground.yard.incoming.filter((x) => x.material === material.id && dayNumber(x.on) >= ground.today);
    this.changes = [
      ...uses.map((x) => ({ at: x.at, quantity: -x.quantity })),
      ...incoming.map((x) => ({ ...this.arrival(x.on, x.quantity), cameOn: dayNumber(x.on) })),
    ];
    this.onHand = isCutUp(material) ? Math.floor(material.onHand + TOLERANCE) : material.onHand;
    const { leadDays = 0, shelfLifeDays = Number.POSITIVE_INFINITY } = material;
    this.inHand = leadDays === 0 ? 0 : ground.yard.yard.deliveryDaysInHand;
    this.keeps = Math.max(1, shelfLifeDays);
    this.comes = canCome(ground, material);
    this.minimumFrom = this.isBought() ? this.arrival(dateOfDay(this.soonest()), 0).at : Infinity;
  }

  /** Whether it can be bought at all. */
  isBought(): boolean {
    return this.material.leadDays !== undefined && this.comes?.length !== 0;
  }

  private soonest(): number {
    return this.comes ? this.comes[0]!.on : this.ground.today + (this.material.leadDays ?? 0);
  }

  /** The next day after one on which it can come; null where there is none. */
  nextAfter(day: number): number | null {
    return this.comes ? (this.comes.find(({ on }) => on > day)?.on ?? null) : day + 1;
  }

  /** What is wrong with the days of a buy; null where nothing is. */
  wrongDays({ orderBy, arrivesOn }: PlanBuy): string | null {
    const [by, on] = [dayNumber(orderBy), dayNumber(arrivesOn)];
    const { leadDays = 0 } = this.material;
    if (!this.comes) return on === by + leadDays ? null : `takes ${leadDays} days to come`;
    const day = this.comes.find((one) => one.on === on);
    if (!day) return `cannot come on ${arrivesOn}`;
    return day.orderBy === by ? null : `is to be ordered by ${dateOfDay(day.orderBy)} to come on ${arrivesOn}`;
  }

  private arrival(date: string, quantity: number): Change {
    const { calendar, now, yard } = this.ground;
    // What is there the same day is fetched; all else is brought by a time of day.
    const [hours, minutes] = this.material.leadDays === 0 ? [0, 0] : yard.yard.deliveredBy.split(':').map(Number);
    const clock = 60 * hours! + minutes!;
    const at = clock === 0 ? calendar.midnightOf(dayNumber(date)) : calendar.minuteAt(dayNumber(date), clock);
    return { at: Math.max(now, at), quantity };
  }

  /**
   * The date from which on a buy counts: it may come late by the days in hand, as long as what could come before it lasts, unless it
   * is fetched or cannot come sooner.
   */
  private countsOn({ arrivesOn }: Pick<PlanBuy, 'arrivesOn'>): string {
    const on = dayNumber(arrivesOn);
    if (!this.isBought() || on <= this.soonest()) return arrivesOn;
    const before = this.comes ? (this.comes.findLast((day) => day.on < on)?.on ?? on) : on - 1;
    const lasts = before + this.keeps - on;
    return dateOfDay(on + Math.min(this.inHand, Math.max(0, lasts)));
  }

  /** Whether something that is bought can be there at an instant and not be past its date. */
  private canBeHad(at: Minute): boolean {
    const { comes, keeps, ground } = this;
    if (!comes || keeps === Infinity) return true;
    const day = ground.calendar.dayOf(at);
    return comes.some(
      ({ on }) => day <= on + keeps && this.arrival(this.countsOn({ arrivesOn: dateOfDay(on) }), 0).at <= at,
    );
  }

  /** The first instant at which the level is too low with these buys, each counted from its day on, or null. */
  tooLowAt(buys: Pick<PlanBuy, 'quantity' | 'arrivesOn'>[]): Minute | null {
    const bought = buys.map((x) => ({ ...this.arrival(this.countsOn(x), x.quantity), cameOn: dayNumber(x.arrivesOn) }));
    const changes: Change[] = [...this.changes, ...bought];
    if (this.minimumFrom < Infinity) changes.push({ at: this.minimumFrom, quantity: 0 });
    if (goesPast(this.material)) return this.tooLowByDates(changes);
    changes.sort((a, b) => a.at - b.at);
    let level = this.onHand;
    for (let i = 0; i < changes.length; i++) {
      level += changes[i]!.quantity;
      if (changes[i + 1]?.at === changes[i]!.at) continue;
      const asked = changes[i]!.at >= this.minimumFrom ? this.material.minimum : 0;
      if (level < asked - TOLERANCE) return changes[i]!.at;
    }
    return null;
  }

  /** The same of what goes past its date: what comes at an instant is there for what is used at it. */
  private tooLowByDates(changes: Change[]): Minute | null {
    const shelf = new Shelf(this.ground, this.material);
    changes.sort((a, b) => a.at - b.at || b.quantity - a.quantity);
    for (let i = 0, missing = 0; i < changes.length; i++) {
      const { at, quantity, cameOn } = changes[i]!;
      if (cameOn === undefined) missing += shelf.use(-quantity, at);
      else shelf.add(quantity, cameOn);
      if (changes[i + 1]?.at === at) continue;
      const asked = at >= this.minimumFrom && this.canBeHad(at) ? this.material.minimum : 0;
      if (missing > TOLERANCE || shelf.level(at) < asked - TOLERANCE) return at;
    }
    return null;
  }
}

/** No buy that is too much by a pack, and none that could come on a later day. */
const checkNeeded = (material: Material, level: Level, buys: PlanBuy[], found: (message: string) => void): void => {
  buys.forEach((buy, i) => {
    const others = buys.filter((_, k) => k !== i);
    const smaller = { ...buy, quantity: buy.quantity - material.pack };
    if (level.tooLowAt([...others, smaller]) === null)
      found(`a pack less of ${material.id} on ${buy.arrivesOn} would do`);
    const next = level.nextAfter(dayNumber(buy.arrivesOn));
    const later = next === null ? others : [...others, { ...buy, arrivesOn: dateOfDay(next) }];
    if (level.tooLowAt(later) === null) found(`${material.id} could be bought a day after ${buy.orderBy}`);
  });
};

const checkMaterial = (ground: Ground, material: Material, uses: Use[], findings: Finding[]): void => {
  const found = finder(findings, 'R10');
  const buys = ground.plan.buys.filter((x) => x.material === material.id);
  const level = new Level(ground, material, uses);
  for (const buy of buys) {
    if (!level.isBought()) found(`${material.id} cannot be bought`);
    if (dayNumber(buy.orderBy) < ground.today) found(`${material.id} would have to be bought before today`);
    const wrong = level.wrongDays(buy);
    if (wrong !== null) found(`${material.id} ${wrong}`);
    const packs = buy.quantity / material.pack;
    if (Math.abs(packs - Math.round(packs)) > TOLERANCE) found(`${material.id} comes in packs of ${material.pack}`);
  }
  const at = level.tooLowAt(buys);
  if (at !== null) found(`there is too little ${material.id} at ${ground.calendar.instantText(at)}`);
  else checkNeeded(material, level, buys, found);
};

/**
 * R10: never less of a material than none, nor than is to be kept once it can be bought; cuts on sticks and sheets; buys in whole
 * packs, in time and with the days in hand, none too many and none too early. Whether a buy is needed is told only where nothing is short.
 *
 * Example: 3 bags there, 4 used at 09:00 and no more bought: "there is too little mortar at 2027-04-10T09:00:00+01:00".
 */
export const checkMaterials = (ground: Ground): Finding[] => {
  const { uses, cuts } = usesOf(ground);
  const findings = [...checkSticks(ground, cuts), ...checkSheets(ground)];
  for (const material of ground.yard.materials)
    checkMaterial(
      ground,
      material,
      uses.filter((x) => x.material === material.id),
      findings,
    );
  return findings;
};
