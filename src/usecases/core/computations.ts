import type { Order } from '../../../shared/order.ts';
import type { Keep, PlanFile } from '../../../shared/plan.ts';
import type { QuoteLimit } from '../../../shared/quote.ts';
import { readYardFile, type YardFile } from '../../../shared/yard-file.ts';
import type { YardRecord } from '../../../shared/yard-record.ts';
import { type FittedSession, fitSession } from '../../engine/begin/fit-session.ts';
import { type MissingForDate, missingForDate } from '../../engine/begin/missing-for-date.ts';
import { type UsualSession, usualSession } from '../../engine/begin/usual-session.ts';
import { type Trip, type TripsAsked, tripsOf } from '../../engine/buy/trips.ts';
import type { CostFigures } from '../../engine/cost/figures.ts';
import { type SessionCost, sessionCosts } from '../../engine/cost/session-costs.ts';
import { type KeptReady, withKeptReady } from '../../engine/kept-ready.ts';
import { type DateAsked, type DateOdds, dateOdds } from '../../engine/odds/date-odds.ts';
import { sparesWanted, withSpares } from '../../engine/odds/spares.ts';
import { planWithMemory } from '../../engine/plan.ts';
import { askForDate, type ChosenDate } from '../../engine/quote/chosen-date.ts';
import { limitPairsOf, limitsOfPlanned } from '../../engine/quote/limits.ts';
import type { FoundLonger } from '../../engine/quote/longer.ts';
import { type NextMould, nextMoulds } from '../../engine/quote/next-mould.ts';
import { type Quoted, quoteWithMore } from '../../engine/quote/quote.ts';
import type { Effort } from '../../engine/search/effort.ts';
import type { PlanMemory } from '../../engine/search/memory.ts';

/** What is asked, beside the plan that stands. */
interface Beside {
  yard: YardFile;
  memory?: PlanMemory;
  standing?: Keep;
  near?: PlanFile;
}

/** An order that is asked about, and what a longer search found for it. */
interface Asking extends Beside {
  order: Order;
  longer?: FoundLonger;
}

/** A plan to be made, starting from the one there is, with what is to stand ready in the yard poured behind all orders. */
interface Planning {
  yard: YardFile;
  near?: PlanFile;
  memory?: PlanMemory;
  keptReady?: readonly KeptReady[];
  /** What went wrong so far, where pieces to spare are poured by it. */
  sparesBy?: YardRecord;
}

/** What may take seconds to work out: plain data in, plain data out, so that a thread can do it. */
export interface Computations {
  'better plan': {
    question: Planning;
    answer: { plan: PlanFile; memory: PlanMemory };
  };
  'quick plan': {
    question: Planning & { standing?: Keep; given?: string[]; longer?: FoundLonger };
    answer: { plan: PlanFile; memory: PlanMemory };
  };
  quote: { question: Asking; answer: Quoted };
  'quote with limits': { question: Asking; answer: Quoted };
  /** After a search for which no page waits. */
  'longer quote': { question: Asking; answer: Quoted };
  'two at once': { question: { yard: YardFile; order: Order; memory?: PlanMemory }; answer: QuoteLimit[] };
  'limits of an order taken': {
    question: { yard: YardFile; order: string; memory?: PlanMemory };
    answer: QuoteLimit[];
  };
  'date odds': { question: DateAsked; answer: { odds: DateOdds | null } };
  'chosen date': { question: { yard: YardFile; order: Order; on: string; memory?: PlanMemory }; answer: ChosenDate };
  'next moulds': { question: { yard: YardFile; memory?: PlanMemory }; answer: NextMould[] };
  'missing for a date': { question: { yard: YardFile }; answer: MissingForDate[] };
  trips: { question: { asked: TripsAsked }; answer: { trips: Trip[] } };
  'session costs': {
    question: { yard: YardFile; plan: PlanFile; figures: CostFigures; most: number };
    /** So many of the first, and how many there are in all. */
    answer: { sessions: SessionCost[]; all: number };
  };
  'usual session': { question: { yard: YardFile }; answer: { session: UsualSession | null } };
  'times for a session': { question: { yard: YardFile; pieces: number }; answer: { fitted: FittedSession | null } };
}

export type ComputationKind = keyof Computations;

/** Answers with null when it was given up: it took too long, or nobody waits for it any more. */
export type Compute = <K extends ComputationKind>(
  kind: K,
  question: Computations[K]['question'],
) => Promise<Computations[K]['answer'] | null>;

/** The plan everything stands on is made from data that a yard file may hold, or not at all. */
const checked = (file: YardFile): YardFile => {
  const read = readYardFile(file);
  if (read.ok) return read.yard;
  throw new Error(`The stored yard has faults at ${read.faults.map(({ path }) => path).join(', ')}.`);
};

const planned = (
  effort: Effort,
  { yard, keptReady = [], sparesBy, ...from }: Computations['quick plan']['question'],
) => {
  const { plan, memory } = planWithMemory(yard, { effort, ...from });
  const spares = sparesBy ? sparesWanted(yard, plan, sparesBy) : [];
  return { plan: withKeptReady(yard, plan, withSpares(keptReady, spares), memory), memory };
};

const COMPUTATIONS: { [K in ComputationKind]: (question: Computations[K]['question']) => Computations[K]['answer'] } = {
  'better plan': (question) => planned('normal', question),
  'quick plan': ({ yard, ...question }) => planned('quick', { yard: checked(yard), ...question }),
  quote: ({ yard, order, ...from }) => quoteWithMore(yard, order, from),
  'quote with limits': ({ yard, order, ...from }) => quoteWithMore(yard, order, { limits: true, ...from }),
  'longer quote': ({ yard, order, ...from }) => quoteWithMore(yard, order, { ...from, longer: 'look' }),
  'two at once': ({ yard, order, memory }) => limitPairsOf(yard, order, memory),
  'limits of an order taken': ({ yard, order, memory }) => limitsOfPlanned(yard, order, memory),
  'date odds': (question) => ({ odds: dateOdds(question) }),
  'chosen date': ({ yard, order, on, memory }) => askForDate(yard, order, on, memory),
  'next moulds': ({ yard, memory }) => nextMoulds(yard, memory),
  'missing for a date': ({ yard }) => missingForDate(yard),
  trips: ({ asked }) => ({ trips: tripsOf(asked) }),
  'session costs': ({ yard, plan, figures, most }) => {
    const sessions = sessionCosts(yard, plan, figures);
    return { sessions: sessions.slice(0, most), all: sessions.length };
  },
  'usual session': ({ yard }) => ({ session: usualSession(yard) }),
  'times for a session': ({ yard, pieces }) => ({ fitted: fitSession(yard, pieces) }),
};

/** Works it out here and now. */
export const computeHere = <K extends ComputationKind>(
  kind: K,
  question: Computations[K]['question'],
): Computations[K]['answer'] => COMPUTATIONS[kind](question);

/** For where there are no threads: as in tests, and in a program that does one thing. */
export const computeWithoutThread: Compute = async (kind, question) => computeHere(kind, question);
