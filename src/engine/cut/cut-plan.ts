import type { Minute } from '../../../shared/time.ts';
import { fewestPossible } from './fewest-sticks.ts';
import { cutAsTheyCome, type OpenedStick, type OpenStick, offcutSticks, type TimedCut } from './open-sticks.ts';
import { countKinds, cutInStages } from './stages.ts';

export type { OpenedStick } from './open-sticks.ts';

/** Cuts of one length for a batch or an order, needed at an instant. */
export interface CutDemand {
  lengthMm: number;
  count: number;
  at: Minute;
  for: string;
}

/** Most whole sticks that may be open by an instant. */
type SticksBy = (minute: Minute) => number;

/** What all ways to cut start from; room and capacity in mm with the kerf added. */
interface Cutting {
  /** By time, those of an instant in the order asked for. */
  asGiven: TimedCut[];
  /** By time, the longest of an instant first. */
  cuts: TimedCut[];
  /** By kind. */
  room: number[];
  capacity: number;
  /** Fresh ones each time: they are cut from. */
  offcuts: () => OpenStick[];
}

/** What is cut: sticks of one length, and rests of opened ones, mm. */
interface CutMaterial {
  stickMm: number;
  kerfMm: number;
  offcuts?: readonly number[];
}

/** Cuts in order of time; those of one length for one batch that come one after another are one. */
const timedCuts = (demands: CutDemand[], kindOf: Map<number, number>, kerfMm: number): TimedCut[] => {
  const cuts: TimedCut[] = [];
  for (const { lengthMm, count, at, for: to } of demands) {
    const last = cuts.at(-1);
    if (last && last.lengthMm === lengthMm && last.at === at && last.for === to) last.count += count;
    else cuts.push({ kind: kindOf.get(lengthMm)!, lengthMm, room: lengthMm + kerfMm, count, at, for: to });
  }
  return cuts.sort((a, b) => a.at - b.at);
};

/** n cuts fit when their lengths and n - 1 kerfs do: that is n lengths with a kerf each, on a stick with one more kerf. */
const cuttingOf = ({ stickMm, kerfMm, offcuts = [] }: CutMaterial, demands: CutDemand[]): Cutting => {
  const lengths = [...new Set(demands.map((x) => x.lengthMm))].sort((a, b) => b - a);
  const asGiven = timedCuts(demands, new Map(lengths.map((length, kind) => [length, kind])), kerfMm);
  const cuts = [...asGiven].sort((a, b) => a.at - b.at || a.kind - b.kind);
  const room = lengths.map((x) => x + kerfMm);
  return { asGiven, cuts, room, capacity: stickMm + kerfMm, offcuts: () => offcutSticks(offcuts, kerfMm) };
};

/** How many sticks may be open by each cut's time; a stick once opened stays so, so the least of what comes counts. */
const limitsOf = (cuts: TimedCut[], sticksBy: SticksBy): number[] => {
  const limits = cuts.map((cut) => sticksBy(cut.at));
  for (let i = limits.length - 2; i >= 0; i--) limits[i] = Math.min(limits[i]!, limits[i + 1]!);
  return limits;
};

/** Sticks that were whole. */
const whole = (sticks: OpenedStick[]): OpenedStick[] => sticks.filter((x) => x.offcutMm === undefined);

const keepsLimits = (sticks: OpenedStick[], cuts: TimedCut[], limits: number[]): boolean => {
  const opened = whole(sticks).map((x) => x.openedAt);
  opened.sort((a, b) => a - b);
  let open = 0;
  return cuts.every((cut, i) => {
    while (open < opened.length && opened[open]! <= cut.at) open++;
    return open <= limits[i]!;
  });
};

/** Cuts during which no more sticks may be opened than before, stage by stage. */
const stagesOf = (cuts: TimedCut[], limits: number[]): TimedCut[][] => {
  const stages: TimedCut[][] = [];
  cuts.forEach((cut, i) => {
    if (i === 0 || limits[i] !== limits[i - 1]) stages.push([]);
    stages.at(-1)!.push(cut);
  });
  return stages;
};

const sumOfStarts = (sticks: OpenedStick[]): number => whole(sticks).reduce((sum, x) => sum + x.openedAt, 0);

/** On fewer whole sticks, or on as many that are opened later. */
const isBetter = (a: OpenedStick[], b: OpenedStick[]): boolean =>
  whole(a).length < whole(b).length || (whole(a).length === whole(b).length && sumOfStarts(a) > sumOfStarts(b));

/** No cutting takes fewer whole sticks: offcuts save no more than their length. */
const fewestOf = ({ cuts, room, capacity, offcuts }: Cutting): number => {
  const rests = offcuts();
  const wanted = countKinds(cuts, room.length);
  if (rests.length === 0) return fewestPossible(room, wanted, capacity);
  const all = room.reduce((sum, x, kind) => sum + x * wanted[kind]!, 0);
  return Math.max(0, Math.ceil((all - rests.reduce((sum, x) => sum + x.left, 0)) / capacity - 1e-9));
};

/** Different ways to cut, the quickest first. */
const waysOf = ({ asGiven, cuts, room, capacity, offcuts }: Cutting, limits: number[]): (() => OpenedStick[])[] => {
  const ways = [
    () => cutAsTheyCome(cuts, capacity, offcuts()),
    () => cutAsTheyCome(asGiven, capacity, offcuts()),
    () => cutInStages([cuts], room, capacity, offcuts()),
  ];
  const stages = stagesOf(cuts, limits);
  if (stages.length > 1) ways.push(() => cutInStages(stages, room, capacity, offcuts()));
  return ways;
};

/** In the order of opening, with nothing but what a plan says of a stick. */
const plain = (sticks: OpenedStick[]): OpenedStick[] =>
  sticks
    .map(({ openedAt, offcutMm, cuts }) => ({ openedAt, ...(offcutMm === undefined ? {} : { offcutMm }), cuts }))
    .sort((a, b) => a.openedAt - b.openedAt);

/**
 * Which stick every cut comes from, on as few whole sticks as it can, each opened at its first cut and so no later than any
 * of its cuts is needed; of equally many, those opened later. What fits on offcuts is cut from them first. With `sticksBy`
 * no more whole sticks are open by an instant than that; null when no way was found to keep to it. It finds one whenever
 * taking cuts as they come, each from the shortest offcut that is long enough, keeps to it. Lengths in mm, none longer
 * than a stick; demands of no cuts are left out.
 *
 * Example: sticks of 6000, kerf 3, ten cuts of 1150 and twenty of 550 all at once: 4 sticks.
 */
export const cutPlan = (material: CutMaterial, demands: CutDemand[], sticksBy?: SticksBy): OpenedStick[] | null => {
  const cutting = cuttingOf(
    material,
    demands.filter((x) => x.count > 0),
  );
  const { cuts } = cutting;
  const limits = sticksBy ? limitsOf(cuts, sticksBy) : cuts.map(() => Number.POSITIVE_INFINITY);
  const fewest = fewestOf(cutting);
  let best: OpenedStick[] | null = null;
  for (const way of waysOf(cutting, limits)) {
    const sticks = way();
    if (!keepsLimits(sticks, cuts, limits)) continue;
    if (!best || isBetter(sticks, best)) best = sticks;
    if (whole(best).length <= fewest) break;
  }
  return best && plain(best);
};
