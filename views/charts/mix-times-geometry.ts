import { rounded } from './rounded.ts';

/** Minutes of a mix: mixed, then worked with until it stiffens, then in the mould until it can be stripped on a warm and on a cold day. */
export interface MixTimes {
  mixMinutes: number;
  workingMinutes: number;
  warmMinutes: number;
  coldMinutes: number;
}

/** What happens to a mix, in its order. "either": on a warm day it could be stripped by then, on a cold one not yet. */
const MIX_STAGES = ['mixed', 'worked', 'setting', 'either'] as const;
/** One of `MIX_STAGES`. */
export type MixStage = (typeof MIX_STAGES)[number];

interface StageDrawn {
  stage: MixStage;
  x: number;
  width: number;
}

/**
 * The stages of a mix side by side, to time, `width` from the first bag to the strip on a cold day. A stage that takes no time
 * is left out, and so is what is over before the one before it.
 *
 * Example: 10 minutes of mixing, 20 of working, stripped after 60 or 90 in 100: mixed from 0 to 10, worked to 30, setting to 70,
 * either to 100.
 */
export const mixStages = (times: MixTimes, width: number): StageDrawn[] => {
  const { mixMinutes, workingMinutes, warmMinutes, coldMinutes } = times;
  const [warm, cold] = [Math.min(warmMinutes, coldMinutes), Math.max(warmMinutes, coldMinutes)];
  const ends = [mixMinutes, mixMinutes + workingMinutes, mixMinutes + warm, mixMinutes + cold];
  const scale = width / Math.max(1, ...ends);
  let from = 0;
  return MIX_STAGES.flatMap((stage, index) => {
    const [x, to] = [rounded(from * scale), Math.max(from, ends[index]!)];
    from = to;
    const drawn = { stage, x, width: rounded(to * scale - x) };
    return drawn.width > 0 ? [drawn] : [];
  });
};
