import type { Mould } from '../../../shared/mould.ts';
import type { KeptPrep } from '../../../shared/plan.ts';
import { dayNumber, type Minute, minuteOf } from '../../../shared/time.ts';
import { type Finding, finder } from './finding.ts';
import type { Ground, TimedPour, TimedStrip } from './ground.ts';

/** What a mould is like before a pour. */
interface MouldState {
  freeFrom: Minute;
  setFor: string;
  dirty: boolean;
  prepped: boolean;
  turnsSinceCoat: number;
}

const stateAtStart = ({ calendar, now, strips }: Ground, mould: Mould): MouldState => {
  const mended = mould.condition === 'damaged' && mould.repairedOn !== undefined;
  const usableFrom = mended ? Math.max(now, calendar.midnightOf(dayNumber(mould.repairedOn!))) : now;
  const held = strips.get(mould.id);
  return {
    freeFrom: Math.max(usableFrom, held?.stripEnd ?? now),
    setFor: held?.casting.id ?? mould.setFor,
    dirty: held !== undefined || mould.condition === 'dirty',
    prepped: held === undefined && mould.condition === 'ready' && mould.prepped,
    turnsSinceCoat: mould.turnsSinceOil,
  };
};

/** R6: how long preparing a mould for a pour lasts, and by when it is over. */
const checkPrep = (mould: Mould, state: MouldState, x: TimedPour, findings: Finding[]): void => {
  const found = finder(findings, 'R6');
  const { oiled } = x.pour;
  if (state.prepped && state.setFor === x.casting.id) {
    if (x.prepStart !== x.prepEnd || oiled) found(`${x.name}: ${mould.id} is prepped already`);
    if (x.prepEnd > x.batchStart) found(`${x.name}: ${mould.id} is not ready when the batch starts`);
    return;
  }
  if (mould.oilEveryTurns !== undefined && state.turnsSinceCoat >= mould.oilEveryTurns && !oiled)
    found(`${x.name}: ${mould.id} is due for its sealing coat`);
  const change = mould.makes.find((m) => m.casting === x.casting.id)!.changeMinutes;
  const minutes =
    x.casting.prepMinutes +
    (state.dirty ? x.casting.cleanMinutes : 0) +
    (state.setFor === x.casting.id ? 0 : change) +
    (oiled ? mould.oilMinutes : 0);
  if (x.prepEnd - x.prepStart !== minutes) found(`${x.name}: its prep lasts ${minutes} minutes`);
  if (x.prepEnd + (oiled ? mould.oilDryMinutes : 0) > x.batchStart)
    found(`${x.name}: ${mould.id} is not ready when the batch starts`);
};

/** A mould once the set-up that is under way in it is over (R14). */
const setUpBy = (prep: KeptPrep, state: MouldState): MouldState => ({
  ...state,
  freeFrom: Math.max(state.freeFrom, minuteOf(prep.prepEnd)),
  setFor: prep.casting,
  dirty: false,
  prepped: true,
});

/** R5 and R6 for one mould, pour after pour. */
const checkTurns = (ground: Ground, mould: Mould, turns: TimedPour[], findings: Finding[]): void => {
  const found = finder(findings, 'R5');
  const out = mould.condition === 'retired' || (mould.condition === 'damaged' && mould.repairedOn === undefined);
  const chosen = turns.filter((x) => !x.underWay);
  if (out && chosen.length > 0) found(`${mould.id} is ${mould.condition}`);
  const full = ground.plan.unstripped.some((x) => x.mould === mould.id);
  if (full && chosen.length > 0) found(`${mould.id} still has a piece in it`);
  const prep = ground.underWay.preps.get(mould.id);
  const asItIs = stateAtStart(ground, mould);
  const state = prep && prep.casting !== turns[0]?.casting.id ? setUpBy(prep, asItIs) : asItIs;
  for (const x of turns) {
    if (!mould.makes.some((m) => m.casting === x.casting.id)) {
      found(`${x.name}: ${mould.id} does not make ${x.casting.id}`);
      continue;
    }
    const begun = x.underWay || (x === turns[0] && x.prepUnderWay);
    if (!begun && x.prepStart < state.freeFrom) found(`${x.name}: ${mould.id} is not free yet`);
    if (!begun) checkPrep(mould, state, x, findings);
    else if (x.prepEnd > x.batchStart) finder(findings, 'R6')(`${x.name}: ${mould.id} is not ready by then`);
    state.freeFrom = x.stripEnd;
    state.setFor = x.casting.id;
    state.dirty = true;
    state.prepped = false;
    state.turnsSinceCoat = (x.pour.oiled ? 0 : state.turnsSinceCoat) + 1;
  }
};

/** R7 and R8: not stripped before it can be, nor said to be ready before or after it is. */
const checkCure = (ground: Ground, x: TimedStrip, findings: Finding[]): void => {
  const mix = ground.mixes.get(x.casting.mix)!;
  const { whenAged } = ground.ageings.get(mix.id)!;
  const lasts = finder(findings, 'R7');
  const begun = x.underWay && !('pour' in x);
  if (!begun && x.stripEnd - x.stripStart !== x.casting.stripMinutes)
    lasts(`${x.name}: stripping lasts ${x.casting.stripMinutes} min`);
  const earliest = whenAged(x.fillEnd, mix.demouldMinutes);
  if (!begun && x.stripStart < earliest)
    lasts(`${x.name} can be stripped from ${ground.calendar.instantText(earliest)}`);
  const ready = Math.max(x.stripEnd, whenAged(x.fillEnd, mix.cureHours * 60));
  if (x.readyAt !== ready) finder(findings, 'R8')(`${x.name} is ready at ${ground.calendar.instantText(ready)}`);
};

/**
 * R5, R6, R7 and the times of R8: what a mould is used for and when, how it is prepared, when pieces come out of it and
 * when they are ready.
 *
 * Example: a mould stripped at 10:30 whose next prep starts at 10:25 is found under R5: it "is not free yet".
 */
export const checkMoulds = (ground: Ground): Finding[] => {
  const findings: Finding[] = [];
  for (const mould of ground.yard.moulds) {
    const turns = ground.pours.filter((x) => x.pour.mould === mould.id).sort((a, b) => a.fillStart - b.fillStart);
    checkTurns(ground, mould, turns, findings);
  }
  const dealtWith = new Set([...ground.strips.keys(), ...ground.plan.unstripped.map((x) => x.mould)]);
  for (const x of ground.yard.inMould)
    if (!dealtWith.has(x.mould)) finder(findings, 'R5')(`nothing is said of the piece in ${x.mould}`);
  for (const x of [...ground.pours.filter((x) => !x.stays), ...ground.strips.values()]) checkCure(ground, x, findings);
  return findings;
};
