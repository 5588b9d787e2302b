import type { Mould } from '../../../shared/mould.ts';
import type { KeptPrep } from '../../../shared/plan.ts';
import { dayNumber, type Minute, minuteOf } from '../../../shared/time.ts';
import { type Finding, finder } from './finding.ts';
import type { Ground, TimedCoat, TimedPour, TimedStrip } from './ground.ts';

/** What a mould is like before a pour or a sealing coat. */
interface MouldState {
  freeFrom: Minute;
  /** The coat it has is dry. */
  dryFrom: Minute;
  setFor: string;
  dirty: boolean;
  prepped: boolean;
  turnsSinceCoat: number;
}

/** What is done in a mould, from when it takes it: a coat from its start, a pour from its prep. */
type Turn = { from: Minute; coat: TimedCoat; pour?: undefined } | { from: Minute; pour: TimedPour; coat?: undefined };

const stateAtStart = ({ calendar, now, strips }: Ground, mould: Mould): MouldState => {
  const mended = mould.condition === 'damaged' && mould.repairedOn !== undefined;
  const usableFrom = mended ? Math.max(now, calendar.midnightOf(dayNumber(mould.repairedOn!))) : now;
  const held = strips.get(mould.id);
  return {
    freeFrom: Math.max(usableFrom, held?.stripEnd ?? now),
    dryFrom: mould.dryFrom === undefined ? now : minuteOf(mould.dryFrom),
    setFor: held?.casting.id ?? mould.setFor,
    dirty: held !== undefined || mould.condition === 'dirty',
    prepped: held === undefined && mould.condition === 'ready' && mould.prepped,
    turnsSinceCoat: mould.turnsSinceOil,
  };
};

/** R6: how long preparing a mould for a pour lasts, and by when it is over. */
const checkPrep = (mould: Mould, state: MouldState, x: TimedPour, findings: Finding[]): void => {
  const found = finder(findings, 'R6');
  if (x.prepEnd > x.batchStart) found(`${x.name}: ${mould.id} is not ready when the batch starts`);
  if (x.prepStart < state.dryFrom) found(`${x.name}: ${mould.id} is not dry yet`);
  if (state.prepped && state.setFor === x.casting.id) {
    if (x.prepStart !== x.prepEnd) found(`${x.name}: ${mould.id} is prepped already`);
    return;
  }
  if (mould.oilEveryTurns !== undefined && state.turnsSinceCoat >= mould.oilEveryTurns)
    found(`${x.name}: ${mould.id} is due for its sealing coat`);
  const change = mould.makes.find((m) => m.casting === x.casting.id)!.changeMinutes;
  const minutes =
    x.casting.prepMinutes + (state.dirty ? x.casting.cleanMinutes : 0) + (state.setFor === x.casting.id ? 0 : change);
  if (x.prepEnd - x.prepStart !== minutes) found(`${x.name}: its prep lasts ${minutes} minutes`);
};

/** A mould once the set-up that is under way in it is over (R14). */
const setUpBy = (prep: KeptPrep, state: MouldState): MouldState => ({
  ...state,
  freeFrom: Math.max(state.freeFrom, minuteOf(prep.prepEnd)),
  setFor: prep.casting,
  dirty: false,
  prepped: true,
});

/** R5 and R6 for one pour; the mould is then as it is after the strip. `begun`: its set-up, or its batch, is under way. */
const checkPour = (mould: Mould, state: MouldState, x: TimedPour, begun: boolean, findings: Finding[]): void => {
  const found = finder(findings, 'R5');
  if (!mould.makes.some((m) => m.casting === x.casting.id)) {
    found(`${x.name}: ${mould.id} does not make ${x.casting.id}`);
    return;
  }
  if (!begun && x.prepStart < state.freeFrom) found(`${x.name}: ${mould.id} is not free yet`);
  if (!begun) checkPrep(mould, state, x, findings);
  else if (x.prepEnd > x.batchStart) finder(findings, 'R6')(`${x.name}: ${mould.id} is not ready by then`);
  state.freeFrom = x.stripEnd;
  state.setFor = x.casting.id;
  state.dirty = true;
  state.prepped = false;
  state.turnsSinceCoat += 1;
};

/** R5 and R6 for one sealing coat that was chosen. */
const checkCoat = (ground: Ground, mould: Mould, state: MouldState, x: TimedCoat, findings: Finding[]): void => {
  const found = finder(findings, 'R6');
  if (mould.oilEveryTurns === undefined) found(`${x.name}: the mould takes none`);
  if (x.start < state.freeFrom) finder(findings, 'R5')(`${x.name}: the mould is not free yet`);
  if (x.start < state.dryFrom) found(`${x.name}: the mould is not dry yet`);
  const minutes = mould.oilMinutes + (state.dirty ? ground.castings.get(state.setFor)!.cleanMinutes : 0);
  if (x.end - x.start !== minutes) found(`${x.name} lasts ${minutes} minutes`);
};

/** A mould after a sealing coat: clean, not prepped, and drying. */
const coatedBy = (mould: Mould, state: MouldState, x: TimedCoat): void => {
  state.freeFrom = x.end;
  state.dryFrom = x.end + mould.oilDryMinutes;
  state.dirty = false;
  state.prepped = false;
  state.turnsSinceCoat = 0;
};

/** A coat that is fixed or under way stays, whatever comes after it. */
const isFirm = ({ yard }: Ground, { mould, start, underWay }: TimedCoat): boolean =>
  underWay || yard.keep?.coats?.some((x) => x.mould === mould && minuteOf(x.start) === start) === true;

/** R5 and R6 for one mould, one thing after another. */
const checkTurns = (ground: Ground, mould: Mould, turns: Turn[], findings: Finding[]): void => {
  const found = finder(findings, 'R5');
  const out = mould.condition === 'retired' || (mould.condition === 'damaged' && mould.repairedOn === undefined);
  const chosen = turns.filter((x) => !(x.pour ?? x.coat).underWay);
  if (out && chosen.length > 0) found(`${mould.id} is ${mould.condition}`);
  const full = ground.plan.unstripped.some((x) => x.mould === mould.id);
  if (full && chosen.length > 0) found(`${mould.id} still has a piece in it`);
  const prep = ground.underWay.preps.get(mould.id);
  const asItIs = stateAtStart(ground, mould);
  const state = prep && prep.casting !== turns[0]?.pour?.casting.id ? setUpBy(prep, asItIs) : asItIs;
  turns.forEach(({ pour, coat }, i) => {
    if (pour) {
      checkPour(mould, state, pour, pour.underWay || (i === 0 && pour.prepUnderWay), findings);
      return;
    }
    if (!coat.underWay) checkCoat(ground, mould, state, coat, findings);
    coatedBy(mould, state, coat);
    if (turns[i + 1]?.pour === undefined && !isFirm(ground, coat))
      finder(findings, 'R6')(`${coat.name}: nothing is poured after it`);
  });
};

/** Pours and coats of one mould in order of time. */
const turnsOf = ({ pours, coats }: Ground, mould: string): Turn[] => {
  const turns: Turn[] = [
    ...coats.filter((x) => x.mould === mould).map((coat): Turn => ({ from: coat.start, coat })),
    ...pours.filter((x) => x.pour.mould === mould).map((pour): Turn => ({ from: pour.prepStart, pour })),
  ];
  // At the same minute the coat is first, and of two pours the one that is filled first.
  return turns.sort((a, b) => a.from - b.from || (a.pour?.fillStart ?? -1) - (b.pour?.fillStart ?? -1));
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
 * R5, R6, R7 and the times of R8: what a mould is used for and when, how it is coated and prepared, when pieces come out of
 * it and when they are ready.
 *
 * Example: a mould stripped at 10:30 whose next prep starts at 10:25 is found under R5: it "is not free yet".
 */
export const checkMoulds = (ground: Ground): Finding[] => {
  const findings: Finding[] = [];
  for (const mould of ground.yard.moulds) checkTurns(ground, mould, turnsOf(ground, mould.id), findings);
  const dealtWith = new Set([...ground.strips.keys(), ...ground.plan.unstripped.map((x) => x.mould)]);
  for (const x of ground.yard.inMould)
    if (!dealtWith.has(x.mould)) finder(findings, 'R5')(`nothing is said of the piece in ${x.mould}`);
  for (const x of [...ground.pours.filter((x) => !x.stays), ...ground.strips.values()]) checkCure(ground, x, findings);
  return findings;
};
