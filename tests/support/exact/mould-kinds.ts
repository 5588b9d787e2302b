import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendar } from '../../contract/audit-plan.mjs';

type Mould = YardFile['moulds'][number];

/** Moulds that differ in nothing but their name and where they stand now: counted, never told apart. */
interface MouldKind {
  key: string;
  moulds: string[];
  /** Minutes to change over, by casting. */
  changeMinutes: Map<number, number>;
  /** Infinity when no mould of the kind can come due for a coat: turns are not counted then. */
  oilEveryTurns: number;
  takesCoat: boolean;
  oilMinutes: number;
  oilDryMinutes: number;
}

/** An empty mould that is not set up for a pour. */
interface IdleState {
  kind: number;
  setFor: number;
  condition: 'ready' | 'dirty' | 'prepped';
  turns: number;
}

/** A mould set up for a casting or full of it; `turns` are those since the last coat, the pour at hand left out. */
interface Pool {
  kind: number;
  casting: number;
  turns: number;
}

/** Where a mould stands when the plan starts. */
type Start = { mould: string; idle: number; usableFrom: number } | { mould: string; pool: number; filledAt: number };

/** One way of setting a mould up: from a state, for a pour. */
export interface PrepWay {
  from: number;
  to: number;
  minutes: number;
  /** The mould was set up when the plan started: nothing left to do. */
  asIs: boolean;
}

/** A sealing coat: from one idle state to another, in which the mould is once the coat is dry. */
export interface CoatWay {
  from: number;
  to: number;
  minutes: number;
  dryMinutes: number;
}

export interface MouldStates {
  kinds: MouldKind[];
  idle: IdleState[];
  pools: Pool[];
  starts: Start[];
  preps: PrepWay[];
  coats: CoatWay[];
  /** By pool: the state after stripping. */
  after: number[];
}

class Numbering<T> {
  readonly list: T[] = [];
  private readonly index = new Map<string, number>();

  of(item: T, key = JSON.stringify(item)): number {
    if (!this.index.has(key)) this.index.set(key, this.list.push(item) - 1);
    return this.index.get(key)!;
  }
}

const kindOf = (yard: YardFile, mould: Mould, mostPours: number): MouldKind => {
  const comesDue = mould.oilEveryTurns !== undefined && mould.turnsSinceOil + mostPours > mould.oilEveryTurns;
  const takesCoat = mould.oilEveryTurns !== undefined;
  const coat = takesCoat ? [comesDue ? mould.oilEveryTurns : null, mould.oilMinutes, mould.oilDryMinutes] : [];
  const casting = (id: string) => yard.castings.findIndex((c) => c.id === id);
  return {
    key: JSON.stringify([mould.makes.map((x) => [x.casting, x.changeMinutes]).sort(), coat]),
    moulds: [],
    changeMinutes: new Map(mould.makes.map((x) => [casting(x.casting), x.changeMinutes])),
    oilEveryTurns: comesDue ? mould.oilEveryTurns! : Number.POSITIVE_INFINITY,
    takesCoat,
    oilMinutes: mould.oilMinutes,
    oilDryMinutes: mould.oilDryMinutes,
  };
};

/** The states every mould can be in and the ways between them, by R5 and R6. `mostPours`: pieces asked for in all. */
export const mouldStatesOf = (yard: YardFile, mostPours: number): MouldStates => {
  const kinds = new Numbering<MouldKind>();
  const idle = new Numbering<IdleState>();
  const pools = new Numbering<Pool>();
  const starts: Start[] = [];
  for (const mould of yard.moulds) {
    const isOut = mould.condition === 'retired' || (mould.condition === 'damaged' && !mould.repairedOn);
    if (isOut) continue;
    const of = kindOf(yard, mould, mostPours);
    const kind = kinds.of(of, of.key);
    kinds.list[kind]!.moulds.push(mould.id);
    starts.push(startOf(yard, mould, kind, kinds.list[kind]!, idle, pools));
  }
  const { preps, coats, after } = waysOf(yard, kinds.list, idle, pools);
  return { kinds: kinds.list, idle: idle.list, pools: pools.list, starts, preps, coats, after };
};

const startOf = (
  yard: YardFile,
  mould: Mould,
  kind: number,
  of: MouldKind,
  idle: Numbering<IdleState>,
  pools: Numbering<Pool>,
): Start => {
  const turns = of.oilEveryTurns < Number.POSITIVE_INFINITY ? mould.turnsSinceOil : 0;
  const held = yard.inMould.find((x) => x.mould === mould.id);
  const casting = (id: string) => yard.castings.findIndex((c) => c.id === id);
  if (held) {
    const before = of.oilEveryTurns < Number.POSITIVE_INFINITY ? turns - 1 : 0;
    const pool = pools.of({ kind, casting: casting(held.casting), turns: before });
    return { mould: mould.id, pool, filledAt: minuteOf(held.filledAt) };
  }
  const now = minuteOf(yard.yard.now);
  const repaired = mould.condition === 'damaged';
  const mended = repaired ? calendar(yard.yard.timeZone).minuteAt(mould.repairedOn!, '00:00') : now;
  const usableFrom = Math.max(now, mended, mould.dryFrom ? minuteOf(mould.dryFrom) : now);
  const condition = mould.prepped ? 'prepped' : mould.condition === 'dirty' ? 'dirty' : 'ready';
  return { mould: mould.id, idle: idle.of({ kind, setFor: casting(mould.setFor), condition, turns }), usableFrom };
};

/**
 * Follows every state to every pour it can be set up for and to the one after a coat, and every pour to the state it leaves,
 * until none is new.
 */
const waysOf = (yard: YardFile, kinds: MouldKind[], idle: Numbering<IdleState>, pools: Numbering<Pool>) => {
  const preps: PrepWay[] = [];
  const coats: CoatWay[] = [];
  const after: number[] = [];
  let [seenIdle, seenPools] = [0, 0];
  while (seenIdle < idle.list.length || seenPools < pools.list.length) {
    for (; seenPools < pools.list.length; seenPools++) {
      const { kind, casting, turns } = pools.list[seenPools]!;
      const next = kinds[kind]!.oilEveryTurns < Number.POSITIVE_INFINITY ? turns + 1 : 0;
      after.push(idle.of({ kind, setFor: casting, condition: 'dirty', turns: next }));
    }
    for (; seenIdle < idle.list.length; seenIdle++) {
      preps.push(...prepsFrom(yard, kinds, idle.list, seenIdle, pools));
      coats.push(...coatsFrom(yard, kinds, idle, seenIdle));
    }
  }
  return { preps, coats, after };
};

/** A coat of a clean mould that has made no turn since the last one changes nothing. */
const coatsFrom = (yard: YardFile, kinds: MouldKind[], idle: Numbering<IdleState>, from: number): CoatWay[] => {
  const { kind, setFor, condition, turns } = idle.list[from]!;
  const { takesCoat, oilMinutes, oilDryMinutes } = kinds[kind]!;
  if (!takesCoat || (condition !== 'dirty' && turns === 0)) return [];
  const minutes = oilMinutes + (condition === 'dirty' ? yard.castings[setFor]!.cleanMinutes : 0);
  return [{ from, to: idle.of({ kind, setFor, condition: 'ready', turns: 0 }), minutes, dryMinutes: oilDryMinutes }];
};

const prepsFrom = (yard: YardFile, kinds: MouldKind[], idle: IdleState[], from: number, pools: Numbering<Pool>) => {
  const { kind, setFor, condition, turns } = idle[from]!;
  const { changeMinutes, oilEveryTurns } = kinds[kind]!;
  const ways: PrepWay[] = [];
  for (const [casting, change] of changeMinutes) {
    const asIs = condition === 'prepped' && casting === setFor;
    const { prepMinutes, cleanMinutes } = yard.castings[casting]!;
    const plain = prepMinutes + (condition === 'dirty' ? cleanMinutes : 0) + (casting === setFor ? 0 : change);
    if (!asIs && turns >= oilEveryTurns) continue;
    ways.push({ from, to: pools.of({ kind, casting, turns }), minutes: asIs ? 0 : plain, asIs });
  }
  return ways;
};
