import type { FC } from 'hono/jsx';
import { countText } from '../../shared/plural.ts';
import type { TodayModel } from '../../src/usecases/today/today-model.ts';
import { momentText } from '../parts/clock-text.ts';

/** What is kept wet out of its mould, as its mix asks for, and whether sessions have minutes for it. */
export const WetCures: FC<{ model: Pick<TodayModel, 'wetCures' | 'today'> }> = ({ model: { wetCures, today } }) =>
  wetCures.length === 0 ? null : (
    <section class="wet-cures">
      <h2>Keep wet, out of the moulds</h2>
      <ul class="sentences">
        {wetCures.map(({ piece, count, until, minutes }) => (
          <li>
            {count} × {piece}: until {momentText(until, today)}
            {minutes > 0 && `, ${countText(minutes, 'minute')} at the beginning of each session`}.
          </li>
        ))}
      </ul>
      {wetCures.some(({ minutes }) => minutes === 0) && (
        <p class="quiet">A reminder where it names no minutes: none are planned then.</p>
      )}
    </section>
  );
