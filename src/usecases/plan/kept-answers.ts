import type { Database } from '../../../db/open.ts';
import type { Order } from '../../../shared/order.ts';
import type { Keep, PlanFile } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { type FoundLonger, renamedIn } from '../../engine/quote/longer.ts';
import type { Quoted } from '../../engine/quote/quote.ts';
import type { PlanMemory } from '../../engine/search/memory.ts';
import { type Computations, computeWithoutThread } from '../core/computations.ts';
import { computeForRequest } from '../core/compute-for-request.ts';
import type { UseCaseContext } from '../core/context.ts';

/** The id of an order that is only asked about; no order of a yard has it, for they are numbered by year. */
export const ASKED = 'asked about';

/** The plan that stands, as questions are asked beside it. */
interface PlanAsked {
  yard: YardFile;
  plan: PlanFile;
  memory?: PlanMemory;
  standing?: Keep;
  /** The same for as long as answers are what they are now. */
  since: object;
  cached: { stored: { revision: number; number: number } };
}

type Kind = 'quote' | 'quote with limits';
type Question = Computations['quote']['question'];

/** One question beside one plan: what was answered, since when it is so, and what a longer search came to. */
interface AskedOnce {
  answers: Map<Kind, { since: object; quoted: Promise<Quoted> }>;
  /** A longer search is under way, or waits for its turn. */
  isLooking: boolean;
  found: FoundLonger | null;
}

interface KeptAnswers {
  /** Names the plan that the questions were asked beside: with another one they are forgotten. */
  plan: string;
  byQuestion: Map<string, AskedOnce>;
  /** What longer searches found last, whatever the plan: a date that was told is planned by it. */
  found: Map<string, FoundLonger>;
  isSearching: boolean;
  /** What is looked for next: of several questions the last. */
  next: { asked: AskedOnce; run: () => void } | null;
}

/** So many questions are remembered; nobody asks more in a day. */
const MOST_QUESTIONS = 200;

const kept = new WeakMap<Database, KeptAnswers>();

const keptFor = (database: Database): KeptAnswers => {
  const known = kept.get(database);
  if (known) return known;
  const fresh: KeptAnswers = { plan: '', byQuestion: new Map(), found: new Map(), isSearching: false, next: null };
  kept.set(database, fresh);
  return fresh;
};

/** What an order asks for, and from when on: orders of one question have one answer. */
const questionOf = ({ lines, notBefore }: Pick<Order, 'lines' | 'notBefore'>): string =>
  JSON.stringify([
    notBefore ?? null,
    ...lines.map(({ kit, casting, material, quantity }) => [kit, casting, material, quantity]),
  ]);

const remember = <T>(map: Map<string, T>, key: string, value: T): T => {
  const [oldest] = map.keys();
  if (map.size >= MOST_QUESTIONS && oldest !== undefined) map.delete(oldest);
  map.set(key, value);
  return value;
};

const askedOnce = (answers: KeptAnswers, { cached: { stored } }: PlanAsked, key: string): AskedOnce => {
  const plan = `${stored.revision} ${stored.number}`;
  if (answers.plan !== plan) Object.assign(answers, { plan, byQuestion: new Map(), next: null });
  const { byQuestion } = answers;
  return byQuestion.get(key) ?? remember(byQuestion, key, { answers: new Map(), isLooking: false, found: null });
};

const NOTHING: FoundLonger = { earliest: null, careful: null };

/** Looks longer, in the thread of the searches, one question at a time; what comes of it is kept with the question. */
const lookLonger = (
  { background, database }: UseCaseContext,
  asked: AskedOnce,
  { key, since }: { key: string; since: object },
  question: Question,
): void => {
  const answers = keptFor(database);
  if (!background?.ponder || asked.isLooking || asked.found) return;
  const { ponder } = background;
  asked.isLooking = true;
  const isWanted = () => answers.byQuestion.get(key) === asked;
  const look = async (): Promise<void> => {
    const quoted = isWanted() ? await ponder('longer quote', question).catch(() => null) : null;
    // Where it was given up for this plan, or failed, it is not begun again.
    asked.found = quoted?.found ?? NOTHING;
    asked.isLooking = false;
    if (!quoted) return;
    remember(answers.found, key, quoted.found);
    asked.answers = new Map([['quote', { since, quoted: Promise.resolve(quoted) }]]);
  };
  const run = async (): Promise<void> => {
    answers.isSearching = true;
    answers.next = null;
    await look();
    answers.isSearching = false;
    keptFor(database).next?.run();
  };
  if (!answers.isSearching) {
    run();
    return;
  }
  // Whoever waited so far is begun when he asks again.
  if (answers.next) answers.next.asked.isLooking = false;
  answers.next = { asked, run };
};

const computed = async (context: UseCaseContext, kind: Kind, question: Question): Promise<Quoted> => {
  const { background } = context;
  const withLimits =
    kind === 'quote with limits' ? await (background?.compute ?? computeWithoutThread)(kind, question) : null;
  return withLimits ?? computeForRequest(background, 'quote', question);
};

/** What is answered, and whether a sooner day is still looked for. */
export interface AnswerKept {
  quoted: Quoted;
  isLooking: boolean;
}

/**
 * When an order could be ready beside the plan that stands: as it was answered before where nothing that counts has happened
 * since (two who ask at once wait for one answer), else worked out, by what a longer search found where one did. Where a longer one may find more it is begun, and nobody waits for it: asked
 * again once that is over, the answer is the one that it came to, as on the command line. Another plan is asked anew.
 */
export const answerKept = async (
  context: UseCaseContext,
  current: PlanAsked,
  order: Order,
  { withLimits }: { withLimits: boolean },
): Promise<AnswerKept> => {
  const { yard, memory, standing, plan, since } = current;
  const key = questionOf(order);
  const asked = askedOnce(keptFor(context.database), current, key);
  const question = {
    ...{ yard, order },
    ...(memory ? { memory } : {}),
    ...(standing ? { standing, near: plan } : {}),
    ...(asked.found ? { longer: asked.found } : {}),
  };
  const kind: Kind = withLimits ? 'quote with limits' : 'quote';
  const before = asked.answers.get(kind);
  const isSame = before?.since === since;
  const answer = isSame ? before : { since, quoted: computed(context, kind, question) };
  if (!isSame) asked.answers.set(kind, answer);
  try {
    const quoted = await answer.quoted;
    if (quoted.isOpen) lookLonger(context, asked, { key, since }, question);
    return { quoted, isLooking: asked.isLooking };
  } catch (error) {
    asked.answers.delete(kind);
    throw error;
  }
};

/**
 * What a longer search found for the one order of a yard that the plan which stands does not know, when it was asked about:
 * taken, it is planned by it. Nothing where it was not asked about, or there are several.
 */
export const foundForNew = (
  database: Database,
  orders: readonly Order[],
  memory: PlanMemory | undefined,
): FoundLonger | undefined => {
  const known = new Set(memory?.sequence);
  const [added, ...others] = orders.filter(({ id }) => !known.has(id));
  if (!memory || !added || others.length > 0) return undefined;
  const found = kept.get(database)?.found.get(questionOf(added));
  return found && renamedIn(found, ASKED, added.id);
};
