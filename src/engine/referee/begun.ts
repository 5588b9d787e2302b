import type { Begun, PlanPour } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import { type Finding, finder } from './finding.ts';
import { hasBatch, hasCoat, hasPack, hasStrip } from './firm-tasks.ts';
import type { Ground } from './ground.ts';
import { checkSpellBegun } from './spells.ts';

type Found = (message: string) => void;
type Lots = Begun['packs'][number]['fromFinished'];

const lotsText = (lots: Lots): string =>
  lots
    .map((x) => `${x.finished}: ${x.count}`)
    .sort()
    .join();

const checkBatches = ({ yard, plan }: Ground, begun: Begun, found: Found): void => {
  for (const was of begun.batches) {
    const is = plan.batches.find((x) => x.id === was.id);
    const same =
      is !== undefined &&
      hasBatch({ yard, plan }, was, begun.pours) &&
      minuteOf(is.mixEnd) === minuteOf(was.mixEnd) &&
      minuteOf(is.end) === minuteOf(was.end) &&
      is.bags === was.bags &&
      is.kg === was.kg;
    if (!same) found(`batch ${was.id} is under way and has changed`);
  }
};

/** A pour under way comes first in its mould; one that cannot be stripped keeps its times, and is nobody's. */
const checkPours = (ground: Ground, begun: Begun, found: Found): void => {
  for (const x of ground.pours.filter((x) => x.underWay)) {
    const before = ground.pours.some((other) => other.pour.mould === x.pour.mould && other.fillStart < x.fillStart);
    if (before) found(`${x.name} is under way, and another comes before it in ${x.pour.mould}`);
    if (!x.stays) continue;
    if (x.order !== undefined) found(`${x.name} is for ${x.order}, yet it stays in its mould`);
    const was = begun.pours.find((p) => p.batch === x.pour.batch && p.mould === x.pour.mould);
    const times = (p: PlanPour) => [p.stripStart, p.stripEnd, p.pieceReadyAt].map(minuteOf).join();
    if (was && times(was) !== times(x.pour)) found(`${x.name} stays in its mould, yet its strip has changed`);
  }
};

/** A coat under way is in the plan, and what comes first in its mould. */
const checkCoats = (ground: Ground, begun: Begun, found: Found): void => {
  for (const was of begun.coats) {
    if (!hasCoat(ground, was)) found(`the coat of ${was.mould} is under way and has changed`);
    const before = [...ground.pours.map((x) => ({ mould: x.pour.mould, start: x.prepStart })), ...ground.coats];
    if (before.some((x) => x.mould === was.mould && x.start < minuteOf(was.start)))
      found(`the coat of ${was.mould} is under way, and something else comes before it there`);
  }
};

/** The set-up under way is that of the next pour there, where that is of its casting. */
const checkPreps = (ground: Ground, begun: Begun, found: Found): void => {
  for (const prep of begun.preps) {
    const next = ground.pours
      .filter((x) => x.pour.mould === prep.mould)
      .reduce<(typeof ground.pours)[number] | null>((a, b) => (a && a.fillStart <= b.fillStart ? a : b), null);
    if (next && next.casting.id === prep.casting && !next.prepUnderWay)
      found(`${next.name}: the set-up under way in ${prep.mould} is not its own`);
  }
};

const checkPacks = (ground: Ground, begun: Begun, found: Found): void => {
  const { yard, plan, pours, strips } = ground;
  for (const was of begun.packs) {
    const is = plan.orders.find((x) => x.id === was.order);
    // No session has time for the rest of it.
    if (was.part && !is) continue;
    const goesOn = was.part === true && is?.packs !== undefined;
    if (!is || !hasPack({ yard, plan }, was) || (!goesOn && minuteOf(is.completesAt) !== minuteOf(was.packEnd))) {
      found(`order ${was.order} is being packed, and that has changed`);
      continue;
    }
    checkSpellBegun(ground, is, found);
    const others = [...pours, ...strips.values()].some((x) => x.order === was.order);
    if (others || lotsText(is.fromFinished) !== lotsText(was.fromFinished))
      found(`order ${was.order} is being packed of other pieces`);
  }
};

/**
 * R14: what is under way is in the plan as it was, and nothing of it is given up.
 *
 * Example: a batch that is being mixed and begins five minutes later in the plan is found: "batch B1 is under way and has
 * changed".
 */
export const checkBegun = (ground: Ground): Finding[] => {
  const findings: Finding[] = [];
  const { begun } = ground.yard;
  if (!begun) return findings;
  const found = finder(findings, 'R14');
  checkBatches(ground, begun, found);
  checkPours(ground, begun, found);
  checkPreps(ground, begun, found);
  checkPacks(ground, begun, found);
  checkCoats(ground, begun, found);
  for (const was of begun.strips)
    if (!hasStrip(ground, was)) found(`the piece in ${was.mould} is being stripped, and that has changed`);
  return findings;
};
