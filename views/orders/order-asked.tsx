import type { FC } from 'hono/jsx';
import type { Effect } from '../../src/usecases/plan/save-edit.ts';
import { Button } from '../parts/button.tsx';
import { dayText } from '../parts/day-text.ts';
import { Moves } from '../parts/moves.tsx';
import { askedSentences, otherDays } from './order-asked-text.ts';

interface OrderAskedProps {
  effect: Effect;
  today: string;
  /** The id of the form that is asked about. */
  form: string;
  /** Where it was sent, if not to its own address. */
  action?: string | undefined;
  /** What is done all the same: "Take order anyway". */
  anyway: string;
}

/**
 * On top of a form of an order that was sent: the date in it is not kept, makes others later or has gone by. It is saved
 * when that is answered, with another day or all the same.
 */
export const OrderAsked: FC<OrderAskedProps> = ({ effect, today, form, action, anyway }) => {
  const sent = { form, ...(action ? { action } : {}) };
  const days = otherDays(effect, today);
  return (
    <section class="warning effect" role="status" aria-label="Before it is saved" tabindex={-1}>
      <p class="warning-lead">{askedSentences(effect, today).join(' ')} Nothing has been saved yet.</p>
      {effect.moved.length > 0 && <Moves moved={effect.moved} today={today} ahead />}
      {effect.insteadOn !== null && (
        <p>With {dayText(effect.insteadOn, today)} no other order gets too late, by today's plan.</p>
      )}
      <div class="buttons">
        {days.map(({ says, sends }, place) => (
          <Button kind={place === 0 ? 'main' : 'plain'} name="another-day" value={sends} {...sent}>
            {says}
          </Button>
        ))}
        <Button kind={days.length === 0 ? 'main' : 'plain'} name="seen" value={effect.seen} {...sent}>
          {anyway}
        </Button>
      </div>
    </section>
  );
};
