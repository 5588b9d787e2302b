import { beginPlan } from '../decoder/decode.ts';
import type { DecoderState } from '../decoder/decoder-state.ts';
import { choicesIn, type Dispatch } from '../decoder/dispatch.ts';
import { releaseHeld } from '../decoder/holds.ts';
import { NEVER, NONE, type Problem } from '../decoder/problem.ts';
import { workShift } from '../decoder/shift.ts';
import { Stock } from '../decoder/stock.ts';
import type { Mishaps } from './mishaps.ts';

const DAY_MINUTES = 24 * 60;

/** The materials of a problem with deliveries late: what is on its way, and what would be ordered now. */
const lateMaterials = ({ materials, now }: Problem, mishaps: Mishaps): Problem['materials'] => {
  let isAnyLate = false;
  const minutesLate = (material: number): number => {
    const late = mishaps.daysLate(material) * DAY_MINUTES;
    isAnyLate ||= late > 0;
    return late;
  };
  const moved = materials.map((one, material) => {
    const arrivals = one.arrivals
      .map(({ at, quantity }) => ({ at: at > now ? at + minutesLate(material) : at, quantity }))
      .sort((a, b) => a.at - b.at);
    const isOrdered = one.plentyFrom > now && one.plentyFrom < NEVER;
    return { ...one, arrivals, plentyFrom: isOrdered ? one.plentyFrom + minutesLate(material) : one.plentyFrom };
  });
  return isAnyLate ? moved : materials;
};

/** By day: lost or not, asked once. */
const lostDays = (mishaps: Mishaps): ((day: number) => boolean) => {
  const known = new Map<number, boolean>();
  return (day) => {
    const isLost = known.get(day) ?? mishaps.isLost(day);
    known.set(day, isLost);
    return isLost;
  };
};

/**
 * A plan as it could go: worked shift by shift by a dispatch, as the decoder would from wherever it stands, with nothing known
 * beforehand of what goes wrong. On a lost day nothing is done, a piece that is not good is poured again in its order's own
 * place, and what comes late is there late. Ends once `order` is complete; the minute of that, NEVER where it is not within the horizon.
 * Nothing of the yard may be fixed.
 */
export const lived = (state: DecoderState, dispatch: Dispatch, order: number, mishaps: Mishaps | null): number => {
  const { problem } = state;
  const { shifts, materials } = problem;
  state.stock = new Stock(mishaps ? lateMaterials(problem, mishaps) : materials, new Int32Array(materials.length));
  state.isSpoiled = mishaps?.isSpoiled ?? null;
  beginPlan(state, dispatch);
  const isLost = mishaps ? lostDays(mishaps) : () => false;
  for (let s = 0; s < shifts.count && state.orders.completesAt[order] === NONE; s++) {
    releaseHeld(state, s);
    if (isLost(shifts.day[s]!)) continue;
    state.choices = choicesIn(dispatch, s);
    workShift(state, s);
  }
  const completesAt = state.orders.completesAt[order]!;
  return completesAt === NONE ? NEVER : completesAt;
};
