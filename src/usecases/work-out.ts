import type { YardFile } from '../../shared/yard-file.ts';
import type { UseCaseContext } from './context.ts';
import { type LongThoughts, type ThoughtKind, thinkThrough } from './long-thought.ts';

/** What a request knows beside the data: when it is, and what can be worked out elsewhere. */
export type Moment = Pick<UseCaseContext, 'database' | 'now' | 'background'>;

/** With fewer pieces than this on order an answer is there sooner than a thread could be asked. */
const PIECES_FOR_A_THREAD = 400;

const piecesOnOrder = ({ orders, kits }: YardFile): number => {
  const piecesOf = new Map(kits.map(({ id, pieces }) => [id, pieces.reduce((n, { count }) => n + count, 0)]));
  const lines = orders.flatMap((order) => order.lines);
  return lines.reduce((n, { kit, casting, quantity }) => {
    const pieces = kit === undefined ? Number(casting !== undefined) : (piecesOf.get(kit) ?? 0);
    return n + pieces * quantity;
  }, 0);
};

/** Works out what a request waits for: of a large yard in a thread, so that the other requests do not wait for it too. */
export const workOut = async <K extends ThoughtKind>(
  background: UseCaseContext['background'],
  kind: K,
  question: LongThoughts[K]['question'],
): Promise<LongThoughts[K]['answer']> => {
  if (!background || piecesOnOrder(question.yard) < PIECES_FOR_A_THREAD) return thinkThrough(kind, question);
  return (await background.workOut(kind, question)) ?? thinkThrough(kind, question);
};
