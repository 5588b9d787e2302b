import type { FC } from 'hono/jsx';
import { countText } from '../../shared/plural.ts';
import type { TodayModel } from '../../src/usecases/today/today-model.ts';
import { Button } from '../parts/button.tsx';
import { MEASURED, stripsChangeText } from '../yard/measured-text.ts';

/** Mixes that were not hard by their time again and again: how long they took, and the tap that makes it the figure. */
export const HardOtherwise: FC<{ model: Pick<TodayModel, 'hardOtherwise'> }> = ({ model: { hardOtherwise } }) =>
  hardOtherwise.length === 0 ? null : (
    <section class="hard-otherwise">
      <h2>Strip at another time?</h2>
      <ul class="done-list">
        {hardOtherwise.map(({ mix, key, name, count, changes }) => (
          <li>
            <p>
              {name}: {countText(count, 'piece')} measured. To be stripped{' '}
              {changes.map(stripsChangeText).join(', and ')}?
            </p>
            <form method="post" action={MEASURED}>
              <input type="hidden" name="what" value="strips" />
              <input type="hidden" name="id" value={mix} />
              <input type="hidden" name="minutes" value={key} />
              <Button label={`Take it over: ${name}`}>Take it over</Button>
            </form>
          </li>
        ))}
      </ul>
    </section>
  );
