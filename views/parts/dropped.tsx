import type { FC } from 'hono/jsx';
import { listText } from '../../shared/list-text.ts';
import type { ShownChange } from '../../src/usecases/changes/show-change.ts';
import { clockText, dayText, dayWord } from './day-text.ts';

export type DroppedMix = ShownChange['dropped'][number];

/** "Saturday was fixed, but the mix at 9:30 for 900 no. 1 could not stay: mould 900 no. 1 is out of use." */
const droppedText = ({ at, moulds, reason }: DroppedMix, today: string): string => {
  const date = at.slice(0, 10);
  const day = dayWord(date, today) ?? dayText(date, today);
  return `${day} was fixed, but the mix at ${clockText(at)} for ${listText(moulds)} could not stay: ${reason}.`;
};

/** What was fixed and had to be planned anew all the same. */
export const Dropped: FC<{ dropped: readonly DroppedMix[]; today: string }> = ({ dropped, today }) =>
  dropped.length === 0 ? null : (
    <ul class="sentences">
      {dropped.map((mix) => (
        <li>{droppedText(mix, today)}</li>
      ))}
    </ul>
  );
