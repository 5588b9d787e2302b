import type { FC } from 'hono/jsx';
import type { TodayModel } from '../../src/usecases/today/today-model.ts';
import { momentText } from '../parts/clock-text.ts';

/** What is kept wet out of its mould, as its mix asks for. Somebody has to think of it: the plan has no minutes for it. */
export const WetCures: FC<{ model: Pick<TodayModel, 'wetCures' | 'today'> }> = ({ model: { wetCures, today } }) =>
  wetCures.length === 0 ? null : (
    <section class="wet-cures">
      <h2>Keep wet, out of the moulds</h2>
      <ul class="sentences">
        {wetCures.map(({ piece, count, until }) => (
          <li>
            {count} × {piece}: until {momentText(until, today)}.
          </li>
        ))}
      </ul>
      <p class="quiet">A reminder: no minutes are planned for it.</p>
    </section>
  );
