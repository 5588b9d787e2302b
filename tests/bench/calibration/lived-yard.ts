import type { Order } from '../../../shared/order.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import type { PromiseOdds } from '../../../shared/promise-odds.ts';
import { dayNumber, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { asOf } from '../../../src/engine/book/as-of.ts';
import { record } from '../../../src/engine/book/carry-on.ts';
import { quoteWithMore } from '../../../src/engine/quote/quote.ts';
import type { PlanMemory } from '../../../src/engine/search/memory.ts';
import { computeHere } from '../../../src/usecases/core/computations.ts';
import { fixedPlan, withKeep } from '../../../src/usecases/plan/fixed-plan.ts';
import { sessionsOfDay } from '../../../src/usecases/plan/hours-of-day.ts';
import { workOfStep } from '../../../src/usecases/plan/late-step-work.ts';
import { endOfStep, type LateStep, lateSteps } from '../../../src/usecases/plan/late-steps.ts';
import { lateWork } from '../../../src/usecases/plan/late-work.ts';
import { standingPours } from '../../../src/usecases/plan/standing-pours.ts';
import { diceFor } from '../season/chance.ts';
import { daysAfter, daysBetween } from '../season/clock.ts';
import { planFileByHand, promisedByHand } from '../season/hand-plan.ts';
import { askedOn, dayOf, type Hidden, type HiddenYard } from './hidden-yard.ts';

/**
 * How a yard promises: by odds; with so many sessions in hand and without a record; or by hand, with so many sessions in hand
 * after the day that a plan by whiteboard has for the order behind all others.
 */
export type Policy = { odds: PromiseOdds } | { sessions: number } | { byHand: number };

const sessionsOf = (policy: Policy): number =>
  'odds' in policy ? 1 : 'sessions' in policy ? policy.sessions : policy.byHand;

/** A date that was promised, and what became of it. */
export interface Promised {
  takenOn: string;
  promisedOn: string;
  /** By the plan of that day. */
  plannedOn: string;
  /** The share of courses that keep it, where it was promised by odds. */
  said: number | null;
  readyOn: string;
}

const FIXED_HOURS = 24;
const MENDED_AFTER_DAYS = 6;
/** No order is waited for so long. */
const MOST_DAYS = 400;

/** A yard as it is lived: what the program knows of it, its plan, and the promises that are open. */
class LivedYard {
  readonly promises: Promised[] = [];
  private yard: YardFile;
  private plan: PlanFile | null = null;
  private memory: PlanMemory | undefined;
  private readonly open = new Map<string, Promised>();
  private readonly hidden: Hidden;
  private readonly record: HiddenYard['record'];
  /** Buys that were made, of whatever plan. */
  private bought = new WeakSet<object>();
  private readonly said = new Map<object, string>();
  private count = 0;

  constructor(
    { hidden, yard, record }: HiddenYard,
    private readonly policy: Policy,
  ) {
    this.hidden = hidden;
    this.record = structuredClone(record);
    this.yard = {
      ...yard,
      yard: {
        ...yard.yard,
        sessionsInHand: sessionsOf(policy),
        ...('odds' in policy && { promiseOdds: policy.odds }),
      },
      ...('odds' in policy ? { record: this.record } : {}),
    };
  }

  get isIdle(): boolean {
    return this.open.size === 0;
  }

  private dice(...about: (string | number)[]) {
    return diceFor(this.hidden.seed, ...about);
  }

  private setNow(date: string, clock: string): void {
    this.yard = asOf(this.yard, `${date}T${clock}:00+01:00`);
  }

  /** The plan that stands, as the program asks and plans beside it. */
  private beside() {
    const fixing = {
      ...{ yard: this.yard, plan: this.plan, hours: FIXED_HOURS, clock: minuteOf(this.yard.yard.now) },
      searchedUntil: Number.POSITIVE_INFINITY,
    };
    const { keep } = fixedPlan(fixing);
    const standing = standingPours(fixing, keep);
    return {
      yard: withKeep(this.yard, keep),
      ...(this.memory ? { memory: this.memory } : {}),
      ...(this.plan ? { near: this.plan } : {}),
      ...(standing ? { standing } : {}),
    };
  }

  private replan(date: string): void {
    if ('byHand' in this.policy) this.plan = planFileByHand(this.yard);
    else this.planBeside();
    this.buy(date);
  }

  private planBeside(): void {
    const given = this.yard.orders.map(({ id }) => id);
    const { plan, memory } = computeHere('quick plan', { ...this.beside(), given });
    [this.plan, this.memory] = [plan, memory];
  }

  /** What is to be ordered by today is. */
  private buy(date: string): void {
    for (const buy of this.plan?.buys ?? []) {
      if (buy.orderBy > date || this.bought.has(buy)) continue;
      this.bought.add(buy);
      this.yard = { ...this.yard, incoming: [...this.yard.incoming, { ...buy, on: buy.arrivesOn }].map(asIncoming) };
    }
  }

  /** What was to come today comes, or not yet; true where a day moved. */
  private receive(date: string): boolean {
    const due = this.yard.incoming.filter(({ on }) => on <= date);
    let isLate = false;
    const left = this.yard.incoming.filter(({ on }) => on > date);
    for (const goods of due) {
      const dice = this.dice('delivery', date, goods.quantity);
      const [brought] = this.record.deliveries;
      const late = this.said.has(goods) ? 0 : dice.chance(this.hidden.late) ? dice.whole(1, 5) : 0;
      brought!.of += this.said.has(goods) ? 0 : 1;
      if (late > 0) {
        isLate = true;
        brought!.daysLate.push(late);
        const put = { ...goods, on: daysAfter(date, late) };
        this.said.set(put, date);
        left.push(put);
      } else
        this.yard = {
          ...this.yard,
          materials: this.yard.materials.map((one) =>
            one.id === goods.material ? { ...one, onHand: one.onHand + goods.quantity } : one,
          ),
        };
    }
    this.yard = { ...this.yard, incoming: left };
    return isLate;
  }

  /** A mould breaks now and then; one that was to be mended by today is. */
  private moulds(date: string): boolean {
    const { breaksEveryDays } = this.hidden;
    const dice = this.dice('broken', date);
    const which = breaksEveryDays !== null && dice.chance(1 / breaksEveryDays) ? dice.pick(this.yard.moulds).id : null;
    const full = new Set(this.yard.inMould.map(({ mould }) => mould));
    let isChanged = false;
    const moulds = this.yard.moulds.map((mould): YardFile['moulds'][number] => {
      if (mould.condition === 'damaged' && mould.repairedOn! <= date) {
        const { repairedOn: _mended, ...whole } = mould;
        return { ...whole, condition: 'ready' };
      }
      if (mould.id !== which || full.has(which) || mould.condition === 'damaged') return mould;
      isChanged = true;
      return { ...mould, condition: 'damaged', prepped: false, repairedOn: daysAfter(date, MENDED_AFTER_DAYS) };
    });
    this.yard = { ...this.yard, moulds };
    return isChanged;
  }

  private loseDay(date: string): boolean {
    if (!this.dice('lost', date).chance(this.hidden.lost)) return false;
    this.record.sessions.of++;
    this.record.sessions.bad++;
    this.yard = { ...this.yard, closed: [...this.yard.closed, date] };
    return true;
  }

  /** A piece comes out: noted, and scrap or not. */
  private comesOut(mould: string, at: string): boolean {
    const known = this.record.pieces.find((one) => one.mould === mould)!;
    known.of++;
    const isScrap = this.dice('good', mould, at).chance(this.hidden.notGood.get(mould)!);
    if (isScrap) known.scrap++;
    return isScrap;
  }

  private handedOver(id: string, completesOn: string): void {
    this.open.get(id)!.readyOn = completesOn;
    this.open.delete(id);
  }

  /** The first step of the session that is not done yet, as it is to be recorded. */
  private nextStep(yard: YardFile, plan: PlanFile): LateStep | undefined {
    const late = lateWork(yard, plan);
    return late ? lateSteps(late)[0] : undefined;
  }

  /**
   * All that is planned until noon is done, one thing after another. A piece that is scrap is planned anew at once, as on the
   * pages; what is packed is handed over.
   */
  private work(date: string): void {
    const noon = `${date}T13:00:00+01:00`;
    for (let plan = this.plan; plan; ) {
      const yard = asOf(this.yard, noon);
      const step = this.nextStep(yard, plan);
      if (!step) break;
      const packed = step.kind === 'pack' ? plan.orders.find(({ id }) => id === step.order.id)! : null;
      const given = { planned: packed?.fromFinished ?? [], sticks: plan.sticks };
      const done = workOfStep(step, yard, given);
      const isScrap = done.kind === 'stripped' && this.comesOut(done.mould, step.at);
      const entered = record({ yard, plan }, isScrap ? { ...done, cameOut: 'scrap' } : done);
      if (!entered.ok) throw new Error(JSON.stringify(entered));
      this.yard = asOf(entered.after.yard, endOfStep(step));
      if (packed) {
        this.handedOver(packed.id, packed.completesOn);
        this.yard = { ...this.yard, orders: this.yard.orders.filter(({ id }) => id !== packed.id) };
      }
      this.plan = entered.after.plan ?? {
        ...plan,
        strips: plan.strips.filter(({ mould }) => step.kind !== 'strip' || mould !== step.strip.mould),
      };
      if (!entered.after.plan) this.replan(date);
      plan = this.plan;
    }
    this.record.sessions.of++;
    this.setNow(date, '13:00');
  }

  /** The day that is promised for an order, with the planned one; null where it cannot be made. */
  private told(order: Order): Pick<Promised, 'promisedOn' | 'plannedOn' | 'said'> | null {
    if ('byHand' in this.policy) {
      const { completesAt, completesOn } =
        planFileByHand({ ...this.yard, orders: [...this.yard.orders, order] }).orders.find(
          ({ id }) => id === order.id,
        ) ?? {};
      const promisedOn = completesAt === undefined ? null : promisedByHand(this.yard, completesAt);
      return promisedOn === null ? null : { promisedOn, plannedOn: completesOn!, said: null };
    }
    const { quote, odds } = quoteWithMore(this.beside().yard, order, this.beside());
    const promisedOn = quote.promiseOn ?? quote.earliestOn;
    if (promisedOn === null) return null;
    const by = odds?.days.filter(({ on }) => on <= promisedOn).at(-1)?.by ?? 0;
    return { promisedOn, plannedOn: quote.earliestOn!, said: odds && by / odds.draws };
  }

  private take(date: string, lines: Order['lines']): void {
    const order: Order = { id: 'asked', weight: 3, lines };
    const told = this.told(order);
    if (!told) return;
    this.count++;
    const id = `27-${String(this.count).padStart(4, '0')}`;
    const promise = { takenOn: date, ...told, readyOn: '' };
    this.promises.push(promise);
    this.open.set(id, promise);
    this.yard = { ...this.yard, orders: [...this.yard.orders, { ...order, id, due: told.promisedOn }] };
    this.replan(date);
  }

  /** A day from morning to evening; orders come in after work. */
  live(date: string, isAsked: boolean): void {
    this.setNow(date, '05:00');
    const moved = [this.moulds(date), this.receive(date)].some(Boolean);
    const isWorked = sessionsOfDay(this.yard, dayNumber(date)).length > 0;
    const isLost = isWorked && this.loseDay(date);
    if (moved || isLost) this.replan(date);
    if (isWorked && !isLost) {
      this.work(date);
      this.buy(date);
    }
    this.setNow(date, '20:00');
    if (isAsked)
      for (const lines of askedOn(this.hidden, date))
        this.take(
          date,
          lines.map(({ panel, count }) => ({ kit: panel, quantity: count })),
        );
  }
}

const asIncoming = ({ material, quantity, on }: YardFile['incoming'][number]): YardFile['incoming'][number] => ({
  ...{ material, quantity, on },
});

/** The promises of a yard in so many days, and of each when it was ready. */
export const livedThrough = (yard: HiddenYard, policy: Policy, days: number): Promised[] => {
  const lived = new LivedYard(yard, policy);
  for (let n = 0; n < days || (!lived.isIdle && n < MOST_DAYS); n++) lived.live(dayOf(n), n < days);
  return lived.promises.filter(({ readyOn }) => readyOn !== '');
};

/** Days from the day on which an order was taken to the one it was promised for. */
export const leadOf = ({ takenOn, promisedOn }: Promised): number => daysBetween(takenOn, promisedOn);

/** Whether a promise was kept. */
export const isKept = ({ promisedOn, readyOn }: Promised): boolean => readyOn <= promisedOn;
