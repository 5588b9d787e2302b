import type { Choices } from '../../decoder/dispatch.ts';
import type { Problem } from '../../decoder/problem.ts';
import { below, pick, type Random } from '../random.ts';

const LEAST_FILLS = [0, 0.3, 0.6, 0.8, 0.9, 1];
const WAITS_MINUTES = [0, 15, 30, 60, 90, 150];
const WEIGHTS = [0, 0.5, 1, 2, 4];
const SPARES_MINUTES = [0, 30, 120, 1000];
const MOST_PIECES = [0, 1, 1, 2, 3];
const WORK_WEIGHTS = [0, 0.1, 0.25, 0.5];
/** Shuffles are numbers without meaning; this many are more than any search tries. */
const SHUFFLES = 1_000_000;

/** How many mixes and moulds there are to choose from, and the days on which finished pieces are ready that are not yet. */
export interface Scope {
  mixes: number;
  moulds: number;
  lotDays: readonly number[];
}

/** Days on which finished pieces are ready that are not yet, each once, the soonest first. */
export const lotDaysOf = ({ there, finished, calendar }: Problem): number[] => [
  ...new Set(there.lateLots.map((lot) => calendar.dayOf(finished[lot]!.readyAt))),
];

/** What of a problem bounds its choices: a mix to hold back, a mould to rest, finished pieces to wait for. */
export const scopeOf = (problem: Problem): Scope => ({
  mixes: problem.mixes.length,
  moulds: problem.moulds.length,
  lotDays: lotDaysOf(problem),
});

type Change = (choices: Choices, random: Random, scope: Scope) => Partial<Choices>;

const CHANGES: Change[] = [
  (_, random) => ({ leastFill: pick(random, LEAST_FILLS) }),
  (_, random) => ({ waitMinutes: pick(random, WAITS_MINUTES) }),
  (_, random) => ({ firstOrderWeight: pick(random, WEIGHTS) }),
  (_, random) => ({ scarceMouldWeight: pick(random, WEIGHTS) }),
  (_, random) => ({ workWeight: pick(random, WORK_WEIGHTS) }),
  (_, random) => ({ spareMinutes: pick(random, SPARES_MINUTES) }),
  (choices) => ({ noAhead: !choices.noAhead }),
  (choices) => ({ slowMixesLate: !choices.slowMixesLate }),
  (choices) => ({ coatAhead: !choices.coatAhead }),
  (choices) => ({ scarceFirst: !choices.scarceFirst }),
  (choices) => ({ stripFirst: !choices.stripFirst }),
  (choices) => ({ coatFirst: !choices.coatFirst }),
  (choices) => ({ aheadFirst: !choices.aheadFirst }),
  (choices) => ({ noPours: !choices.noPours }),
  (_, random, scope) => ({ heldMix: below(random, scope.mixes + 1) - 1 }),
  (_, random) => ({ mostPieces: pick(random, MOST_PIECES) }),
  (_, random) => ({ mostPieces: pick(random, MOST_PIECES) }),
  (choices, random) => ({
    firstBatchOnly: !choices.firstBatchOnly,
    mostPieces: choices.mostPieces || 1 + below(random, 2),
  }),
  (choices) => ({ coatEarly: !choices.coatEarly }),
  (choices, random, scope) => ({ restMould: choices.restMould < 0 ? below(random, scope.moulds) : -1 }),
  (_, random, scope) => ({ restMould: below(random, scope.moulds) }),
  (choices) => ({ inOrder: !choices.inOrder }),
  (choices) => ({ byHand: !choices.byHand }),
  (choices) => ({ leaveInMoulds: !choices.leaveInMoulds }),
  (_, random) => ({ shuffle: 1 + below(random, SHUFFLES) }),
  (_, random) => ({ shuffle: 1 + below(random, SHUFFLES) }),
  (choices, random) => ({ shuffle: choices.shuffle ? 0 : 1 + below(random, SHUFFLES) }),
];

/** Where finished pieces are still to be ready, to wait for them or not is a choice as well. */
const LOTS: Change[] = [
  (choices, random, { lotDays }) => ({ lotsUntil: choices.lotsUntil ? 0 : pick(random, lotDays) }),
];

const changesIn = ({ lotDays }: Scope): Change[] => (lotDays.length > 0 ? [...CHANGES, ...LOTS] : CHANGES);

/** The decoder's own choices with one or two of them changed: what to set up, what goes into a batch, when it goes out. */
export const changeChoices = (choices: Choices, random: Random, scope: Scope): Choices => {
  const changes = changesIn(scope);
  const changed = { ...choices, ...pick(random, changes)(choices, random, scope) };
  return random() < 0.3 ? { ...changed, ...pick(random, changes)(changed, random, scope) } : changed;
};
