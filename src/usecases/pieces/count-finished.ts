import { writeEntries } from '../../../db/stores/book-store.ts';
import { countPieces } from '../../engine/book/count-pieces.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { type FormFields, wholeTyped } from '../typed/form-fields.ts';

/** More finished pieces of a kind than anybody has: a slip of the hand. */
const MOST = 10_000;

/** A count as it was typed, with what the book had when the form was shown. */
interface CountTyped {
  casting: string;
  counted: number;
  was: number | null;
}

/** Reads a count of pieces. Refused at `counted`. */
export const finishedTyped = ({ casting = '', counted = '', was }: FormFields): Outcome<CountTyped> => {
  const read = wholeTyped(counted);
  if (read === null) return refuse('counted', 'How many are there? Write a whole number.');
  if (read > MOST) return refuse('counted', `More than ${MOST.toLocaleString('en')} is not taken.`);
  return done({ casting, counted: read, was: wholeTyped(was) });
};

interface Counted {
  name: string;
  now: number;
  before: number;
}

/**
 * The maker has counted the finished pieces of a kind: the book has as many from then on. Refused where the book says so
 * already, or was changed since the form was shown.
 */
export const countFinished = (
  context: UseCaseContext,
  { casting, counted, was }: CountTyped,
): Promise<Outcome<Changed<Counted>>> =>
  changing<Counted>(
    context,
    { kind: 'pieces counted', words: ({ name, now, before }) => `${name} counted: ${now} in the yard, not ${before}` },
    async (tx, yard) => {
      const kind = yard.castings.find(({ id }) => id === casting);
      if (!kind) return refuse('counted', 'That piece is cast here no more. Nothing was changed.');
      const before = yard.finished.reduce((sum, lot) => sum + (lot.casting === casting ? lot.count : 0), 0);
      if (counted === before) return refuse('counted', 'The book says so already. Nothing was changed.');
      if (was !== null && was !== before)
        return refuse(
          'counted',
          `The book was changed meanwhile: it has ${before} now. What you typed still stands here: send it again to have it so.`,
        );
      await writeEntries(tx, countPieces(yard, casting, counted));
      return done({ name: kind.name, now: counted, before });
    },
  );
