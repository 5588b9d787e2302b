import type { FC } from 'hono/jsx';
import type { ToComeFacts, TodayModel } from '../../src/usecases/today/today-model.ts';
import { clockText, dayText } from '../parts/day-text.ts';

/** "900 no. 1 is recorded as full from Sat 17 Apr, 10:00, which is still to come." */
const toComeText = ({ mould, filledAt }: ToComeFacts, today: string): string =>
  `${mould} is recorded as full from ${dayText(filledAt.slice(0, 10), today)}, ${clockText(filledAt)}, which is still to come.`;

/** Pours that were recorded with the clock ahead: said, and left to the maker, while everything else goes on. */
export const ToCome: FC<{ model: Pick<TodayModel, 'toCome' | 'today'> }> = ({ model: { toCome, today } }) =>
  toCome.length === 0 ? null : (
    <section>
      <h2>Is the clock right?</h2>
      <ul>
        {toCome.map((one) => (
          <li>{toComeText(one, today)}</li>
        ))}
      </ul>
      <p>
        Until then it counts as filled just now. If the clock was wrong, undo that pour under{' '}
        <a href="/changes">Changes</a> and record it again with its right time.
      </p>
    </section>
  );
