import type { LateTaken } from '../../../shared/late-work.ts';
import type { PlanCoat, PlanPour, PlanStrip } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { FixedMix } from './fixed-pours.ts';
import type { LateWork, PlannedPack } from './late-work.ts';

/** One thing that was to be done by now, known by the name of its line on Today. */
export type LateStep = { name: string; at: string } & (
  | { kind: 'batch'; mix: FixedMix }
  | { kind: 'strip'; strip: PlanStrip | PlanPour }
  | { kind: 'coat'; coat: PlanCoat }
  | { kind: 'prep'; pour: PlanPour }
  | { kind: 'pack'; order: PlannedPack }
);

/** What a step is about: the mould, the first mould of a batch, the order. */
interface Named {
  kind: string;
  at: string;
  what: string;
}

const PREFIX = 'late-';

/** The name of a step, which can stand in an address: its kind, when it was to begin, and what it is about. */
export const lateStepName = ({ kind, at, what }: Named): string =>
  `${PREFIX}${kind}-${minuteOf(at)}-${encodeURIComponent(what)}`;

/** The name of packing an order from an instant on: of all of it, or of a spell. */
export const packingName = (order: string, packStart: string): string =>
  lateStepName({ kind: 'pack', at: packStart, what: order });

/** What the names of all packings of an order look like, with % for when they begin. */
export const anyPackingName = (order: string): string => `${PREFIX}pack-%-${encodeURIComponent(order)}`;

/** Whether a name is one of a step, and not of something else that is recorded once. */
export const isLateStep = (name: string): boolean => name.startsWith(PREFIX);

/** The minute at which a step was to begin, by its name; null where it is none of a step. */
export const minuteOfStep = (name: string): number | null => {
  const minute = /^late-[a-z ]+-(\d+)-/.exec(name)?.[1];
  return minute === undefined ? null : Number(minute);
};

const firstMould = ({ batch, pours }: FixedMix): string =>
  (pours.find(({ id }) => id === batch.pours[0]) ?? pours[0])?.mould ?? batch.id;

/** The moulds that a step is about; of a packing none. */
export const mouldsOfStep = (step: LateStep): string[] => {
  switch (step.kind) {
    case 'batch':
      return step.mix.pours.map(({ mould }) => mould);
    case 'strip':
      return [step.strip.mould];
    case 'coat':
      return [step.coat.mould];
    case 'prep':
      return [step.pour.mould];
    case 'pack':
      return [];
  }
};

/** Of steps that begin at one minute, what has to come first. */
const RANKS: Record<LateStep['kind'], number> = { strip: 0, coat: 1, prep: 2, batch: 3, pack: 4 };

/** The instant at which a step is over, by the plan. */
export const endOfStep = (step: LateStep): string => {
  switch (step.kind) {
    case 'batch':
      return step.mix.batch.end;
    case 'strip':
      return step.strip.stripEnd;
    case 'coat':
      return step.coat.end;
    case 'prep':
      return step.pour.prepEnd;
    case 'pack':
      return step.order.packEnd;
  }
};

/** Late work one by one, in order of time. */
export const lateSteps = ({ mixes, strips, packs, preps, coats }: LateWork): LateStep[] => {
  const named = (named: Named) => ({ name: lateStepName(named), at: named.at });
  const steps: LateStep[] = [
    ...mixes.map((mix) => {
      const kind = 'batch' as const;
      return { kind, mix, ...named({ kind, at: mix.batch.start, what: firstMould(mix) }) };
    }),
    ...strips.map((strip) => {
      const kind = 'strip' as const;
      return { kind, strip, ...named({ kind, at: strip.stripStart, what: strip.mould }) };
    }),
    ...coats.map((coat) => {
      const kind = 'coat' as const;
      return { kind, coat, ...named({ kind, at: coat.start, what: coat.mould }) };
    }),
    ...preps.map((pour) => {
      const kind = 'prep' as const;
      return { kind, pour, ...named({ kind, at: pour.prepStart, what: pour.mould }) };
    }),
    ...packs.map((order) => {
      const kind = 'pack' as const;
      return { kind, order, ...named({ kind, at: order.packStart, what: order.id }) };
    }),
  ];
  return steps.sort((a, b) => minuteOf(a.at) - minuteOf(b.at) || RANKS[a.kind] - RANKS[b.kind]);
};

/** A strip as it stands in a plan once its piece is in its mould. */
export const stripOf = ({ mould, order, stripStart, stripEnd, pieceReadyAt }: PlanStrip): PlanStrip => ({
  ...{ mould, stripStart, stripEnd, pieceReadyAt },
  ...(order === undefined ? {} : { order }),
});

/** Steps as what a change took off the list. */
export const lateTaken = (steps: readonly LateStep[]): LateTaken => {
  const coats = steps.flatMap((step) => (step.kind === 'coat' ? [step.coat] : []));
  const taken: LateTaken = { names: [], batches: [], pours: [], preps: [], coats, strips: [], orders: [] };
  const mixes = steps.flatMap((step) => (step.kind === 'batch' ? [step.mix] : []));
  const poured = new Set(mixes.flatMap(({ pours }) => pours));
  for (const step of steps) {
    taken.names.push(step.name);
    if (step.kind === 'prep') taken.preps.push(step.pour);
    if (step.kind === 'pack') taken.orders.push(step.order);
    if (step.kind !== 'strip') continue;
    // A piece poured late may be written down as poured before its strip is on the list again.
    taken.strips.push(stripOf(step.strip));
    if ('fillEnd' in step.strip && !poured.has(step.strip)) taken.pours.push(step.strip);
  }
  taken.batches.push(...mixes.map(({ batch }) => batch));
  taken.pours.push(...poured);
  return taken;
};
