import { isCutUp, type Material } from '../../../shared/material.ts';
import type { PlanBuy } from '../../../shared/plan.ts';
import { dateOfDay, dayNumber, type Minute } from '../../../shared/time.ts';
import { goesPast, Shelf } from './dates.ts';
import { type Finding, finder, TOLERANCE } from './finding.ts';
import type { Ground } from './ground.ts';
import { checkSheets } from './sheets.ts';
import { checkSticks } from './sticks.ts';
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
    const { leadDays } = material;
    this.onHand = isCutUp(material) ? Math.floor(material.onHand + TOLERANCE) : material.onHand;
    this.minimumFrom = leadDays === undefined ? Infinity : this.arrival(dateOfDay(ground.today + leadDays), 0).at;
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
   * The date from which on a buy counts: it may come late by the days in hand, by less than it keeps, unless it is fetched or
   * cannot come sooner.
   */
  private countsOn({ arrivesOn }: Pick<PlanBuy, 'arrivesOn'>): string {
    const { leadDays = 0, shelfLifeDays = Number.POSITIVE_INFINITY } = this.material;
    const isFirm = leadDays === 0 || dayNumber(arrivesOn) <= this.ground.today + leadDays;
    const inHand = isFirm ? 0 : Math.min(this.ground.yard.yard.deliveryDaysInHand, Math.max(0, shelfLifeDays - 1));
    return dateOfDay(dayNumber(arrivesOn) + inHand);
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
      const asked = at >= this.minimumFrom ? this.material.minimum : 0;
      if (missing > TOLERANCE || shelf.level(at) < asked - TOLERANCE) return at;
    }
    return null;
  }
}

/** No buy that is too much by a pack, and none that could be a day later. */
const checkNeeded = (material: Material, level: Level, buys: PlanBuy[], found: (message: string) => void): void => {
  buys.forEach((buy, i) => {
    const others = buys.filter((_, k) => k !== i);
    const smaller = { ...buy, quantity: buy.quantity - material.pack };
    if (level.tooLowAt([...others, smaller]) === null)
      found(`a pack less of ${material.id} on ${buy.arrivesOn} would do`);
    const later = { ...buy, arrivesOn: dateOfDay(dayNumber(buy.arrivesOn) + 1) };
    if (level.tooLowAt([...others, later]) === null) found(`${material.id} could be bought a day after ${buy.orderBy}`);
  });
};

const checkMaterial = (ground: Ground, material: Material, uses: Use[], findings: Finding[]): void => {
  const found = finder(findings, 'R10');
  const buys = ground.plan.buys.filter((x) => x.material === material.id);
  for (const buy of buys) {
    if (material.leadDays === undefined) found(`${material.id} cannot be bought`);
    if (dayNumber(buy.orderBy) < ground.today) found(`${material.id} would have to be bought before today`);
    if (dayNumber(buy.arrivesOn) !== dayNumber(buy.orderBy) + (material.leadDays ?? 0))
      found(`${material.id} takes ${material.leadDays ?? 0} days to come`);
    const packs = buy.quantity / material.pack;
    if (Math.abs(packs - Math.round(packs)) > TOLERANCE) found(`${material.id} comes in packs of ${material.pack}`);
  }
  const level = new Level(ground, material, uses);
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
