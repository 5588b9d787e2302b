import { setKept } from '../../../db/stores/kept-ready-store.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { type FormFields, wholeTyped } from '../typed/form-fields.ts';
import { lineOf } from '../typed/what-ordered.ts';

/** More than that of one thing is no handful that stands ready. */
const MOST = 50;

/** What is to stand ready in the yard, as a form says it. */
interface KeptTyped {
  what: string;
  count: number;
}

/** Reads how many of what are to stand ready; 0: none any more. Refused at `ready`. */
export const keptTyped = ({ what = '', ready = '' }: FormFields): Outcome<KeptTyped> => {
  const count = wholeTyped(ready);
  if (count === null) return refuse('ready', 'How many? Write a whole number, 0 for none.');
  if (count > MOST) return refuse('ready', `More than ${MOST} is not taken.`);
  return done({ what, count });
};

/**
 * So many kits or pieces are to stand in the yard from now on, for whoever comes: what is missing is poured behind all
 * orders. Refused at `what` where there is no such thing.
 */
export const keepReady = (
  context: UseCaseContext,
  { what, count }: KeptTyped,
): Promise<Outcome<Changed<{ name: string }>>> =>
  changing(
    context,
    {
      kind: 'kept ready',
      words: ({ name }) => (count === 0 ? `${name}: none to stand ready` : `${name}: ${count} to stand ready`),
    },
    async (tx, yard) => {
      const { kit, casting } = lineOf(what, count) ?? {};
      const named = yard.kits.find(({ id }) => id === kit) ?? yard.castings.find(({ id }) => id === casting);
      if (!named) return refuse('what', 'Choose a kit or a piece. Nothing was changed.');
      await setKept(tx, kit === undefined ? { casting: named.id, count } : { kit, count });
      return done({ name: named.name });
    },
  );
