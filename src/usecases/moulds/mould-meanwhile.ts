import type { StoredMould } from '../../../db/stores/mould-store.ts';
import type { Fault } from '../../../shared/fault.ts';
import { quoted } from '../../../shared/said-back.ts';
import { dayYearWords } from '../core/day-words.ts';
import type { MouldWas } from '../typed/mould-mark-form.ts';

/** What is typed about a mould beside its mark. */
interface Typed {
  note: string;
  repairedOn: string | null;
}

/** What becomes of a mould in the yard, cleaned and filled, is nobody's other word about it. */
const standing = (condition: string): string =>
  condition === 'damaged' ? 'marked damaged' : condition === 'retired' ? 'marked scrapped' : 'in use again';

const conditionFaults = ({ id, condition }: StoredMould, was: MouldWas): Fault[] =>
  was.condition === undefined || standing(was.condition) === standing(condition)
    ? []
    : [
        {
          path: 'mark',
          message: `${id} is ${standing(condition)} since this was shown. If it is as you say, send it again to have it so.`,
        },
      ];

/** One field as it was shown, as it is now and as it was typed; nothing is said where it is now as it was typed. */
const fieldFaults = (path: string, was: string | undefined, now: string, typed: string, words: string): Fault[] => {
  if (was === undefined || was === now || typed === now) return [];
  const end =
    typed === was ? ', which stands here now.' : '. What you typed still stands here: send it again to have it so.';
  return [{ path, message: `It was changed to ${words} meanwhile${end}` }];
};

/**
 * What somebody else said of a mould since the form about it was shown, field by field; none where all is as it was. What
 * only the other one changed stands in the form that comes back, what both changed stands as it was typed.
 */
export const mouldMeanwhile = (mould: StoredMould, was: MouldWas, typed: Typed, today: string): Fault[] => {
  const [note, day] = [mould.damageNote ?? '', mould.repairedOn ?? ''];
  const [noteWords, dayWords] = [note ? quoted(note) : 'nothing', day ? dayYearWords(day, today) : 'no day'];
  return [
    ...conditionFaults(mould, was),
    ...fieldFaults('note', was.note, note, typed.note, noteWords),
    ...fieldFaults('repairedOn', was.repairedOn, day, typed.repairedOn ?? '', dayWords),
  ];
};
