import { type PromiseOdds, USUAL_ODDS } from '../../../shared/promise-odds.ts';
import type { PiecesOut, YardRecord } from '../../../shared/yard-record.ts';
import { type Beliefs, beliefsOf, GUESSED, seenOf } from '../../engine/odds/beliefs.ts';
import { type Belief, type Seen, shareOf } from '../../engine/odds/beta.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import type { PageHead } from '../core/page-parts.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { yardRecord } from '../plan/yard-record.ts';

/** How often something goes wrong, as is to be counted on, and what was seen of it. */
export interface ShareFacts extends Seen {
  share: number;
}

/** Pieces of one kind, or out of one mould. */
export interface PiecesFacts extends ShareFacts {
  id: string;
  name: string;
  mend: number;
  scrap: number;
}

export interface DeliveryFacts extends ShareFacts {
  supplier: string | null;
  /** The longest that one was late, in days; null where none was. */
  mostDaysLate: number | null;
}

/** What is counted on to go wrong, and what that rests on. */
export interface GoesWrongModel extends PageHead {
  pieces: ShareFacts & Pick<PiecesFacts, 'mend' | 'scrap'>;
  castings: readonly PiecesFacts[];
  moulds: readonly PiecesFacts[];
  sessions: ShareFacts;
  deliveries: readonly DeliveryFacts[];
  /** What is counted on where nothing is on record. */
  guessed: { pieces: number; sessions: number; deliveries: number };
  /** How often a date to promise is to be kept. */
  promiseOdds: PromiseOdds;
  /** There is enough on record to promise by. */
  isEnough: boolean;
}

const facts = (belief: Belief, seen: Seen): ShareFacts => ({ ...seen, share: shareOf(belief) });

const howTheyWere = (pieces: readonly PiecesOut[]) => ({
  mend: pieces.reduce((sum, { mend }) => sum + mend, 0),
  scrap: pieces.reduce((sum, { scrap }) => sum + scrap, 0),
});

/** The worst first, then by what it is called. */
const worstFirst = (a: PiecesFacts, b: PiecesFacts): number => b.share - a.share || a.name.localeCompare(b.name);

const groupsOf = (
  { pieces }: YardRecord,
  by: 'casting' | 'mould',
  about: (own: readonly PiecesOut[]) => { belief: Belief; name: string },
): PiecesFacts[] =>
  [...new Set(pieces.map((one) => one[by]))]
    .map((id) => {
      const own = pieces.filter((one) => one[by] === id);
      const { belief, name } = about(own);
      return { ...facts(belief, seenOf(own)), ...howTheyWere(own), id, name };
    })
    .sort(worstFirst);

/** The casting that came out of a mould most often, which it leans on. */
const usualCasting = (own: readonly PiecesOut[]): string => own.reduce((a, b) => (b.of > a.of ? b : a)).casting;

const deliveryFacts = ({ deliveries }: YardRecord, beliefs: Beliefs): DeliveryFacts[] =>
  deliveries
    .map(({ supplier, of, daysLate }) => ({
      ...facts(beliefs.deliveriesOf(supplier), { bad: daysLate.length, of }),
      ...{ supplier, mostDaysLate: daysLate.at(-1) ?? null },
    }))
    .sort((a, b) => b.share - a.share);

/** What goes wrong in the yard, by its own record, and guesses where there is none. */
export const showGoesWrong = async (context: UseCaseContext): Promise<GoesWrongModel> => {
  const { yard } = await currentPlan(context);
  const record = await context.database.read((tx) => yardRecord(tx, yard));
  const beliefs = beliefsOf(record);
  const nameOf = (id: string) => yard.castings.find((one) => one.id === id)?.name ?? id;
  return {
    ...{ yardName: yard.yard.name, today: today(yard.yard.timeZone, context.now) },
    pieces: { ...facts(beliefs.pieces, seenOf(record.pieces)), ...howTheyWere(record.pieces) },
    castings: groupsOf(record, 'casting', ([first]) => ({
      ...{ belief: beliefs.piecesOf(first!.casting), name: nameOf(first!.casting) },
    })),
    moulds: groupsOf(record, 'mould', (own) => ({
      ...{ belief: beliefs.piecesFrom(own[0]!.mould, usualCasting(own)), name: own[0]!.mould },
    })),
    sessions: facts(beliefs.sessions, record.sessions),
    deliveries: deliveryFacts(record, beliefs),
    guessed: {
      pieces: shareOf(GUESSED.pieces),
      sessions: shareOf(GUESSED.sessions),
      deliveries: shareOf(GUESSED.deliveries),
    },
    promiseOdds: yard.yard.promiseOdds ?? USUAL_ODDS,
    isEnough: beliefs.isEnough,
  };
};
