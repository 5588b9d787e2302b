import type { FC } from 'hono/jsx';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import type { TodayModel } from '../../src/usecases/today/today-model.ts';
import { NoWork } from './hours-form.tsx';
import { rainText } from './today-text.ts';

/** Rain on a session in the open: what it does, and the hours called off at one tap. */
export const Rain: FC<{ model: TodayModel; refused: RefusedForm | null }> = ({
  model: { rain, session, today },
  refused,
}) =>
  rain && session ? (
    <section class="message rain">
      <p>
        <strong>{rainText(rain, today)}</strong> It washes the face off fresh mortar and thins the mix: work under
        cover, keep bags dry, cover what is poured, or call it off.
      </p>
      <NoWork session={session} today={today} refused={refused} />
    </section>
  ) : null;
