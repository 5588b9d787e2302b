import type { Child, FC } from 'hono/jsx';
import type { FormState } from '../../src/usecases/plan/save-edit.ts';
import { effectText, type MovedPromise } from '../words/moved-text.ts';
import { Button, ButtonLink } from './button.tsx';
import { FormErrors } from './field.tsx';
import { Moves } from './moves.tsx';

/** What a field shows: what was typed once the form was sent, what is stored before. */
export const shownIn = (state: FormState, name: string, stored: string | number | null | undefined): string =>
  state.typed ? (state.typed[name] ?? '') : String(stored ?? '');

/** Whether a box is ticked: a form does not send those that are not. */
export const tickedIn = (state: FormState, name: string, stored: boolean): boolean =>
  state.typed ? state.typed[name] !== undefined : stored;

/** On top of a form that was sent: what saving it would move, with the buttons below it, or what was wrong with it. */
export const FormAnswer: FC<{ state: FormState; today: string; children?: Child }> = ({ state, today, children }) =>
  state.effect ? (
    <section class="warning effect" role="status" aria-label="Before it is saved" tabindex={-1}>
      <p class="warning-lead">{effectText(state.effect.moved)} Nothing has been saved yet.</p>
      <Moves moved={state.effect.moved} today={today} ahead />
      {children}
    </section>
  ) : (
    <FormErrors errors={state.errors} />
  );

/** Whether an order would be ready later than now, or not at all. */
const makesLater = (moved: readonly Pick<MovedPromise, 'from' | 'to'>[]): boolean =>
  moved.some(({ from, to }) => to === null || (from !== null && to > from));

interface SaveButtonsProps {
  state: FormState;
  /** Where "Cancel" leads: nothing is saved then. */
  back: string;
  /** What the button says: "Save", "Add the moulds". */
  save?: string;
  /** The id of the form, where the buttons do not stand in it. */
  form?: string;
}

/** Saves; once the effect is in sight, saves all the same. An effect that is another one by then is shown first. */
export const SaveButtons: FC<SaveButtonsProps> = ({ state, back, save = 'Save', form }) => (
  <div class="buttons">
    {state.effect ? (
      <>
        <Button kind="main" name="seen" value={state.effect.seen} {...(form ? { form } : {})}>
          {makesLater(state.effect.moved) ? `${save} anyway` : save}
        </Button>
        <ButtonLink href={back}>Cancel</ButtonLink>
      </>
    ) : (
      <>
        <Button kind="main">{save}</Button>
        <ButtonLink href={back} kind="quiet">
          Cancel
        </ButtonLink>
      </>
    )}
  </div>
);

/** What was typed into a field; what was left as it was shown is what it is now. */
export const typedOr = (typed: string | undefined, was: string | undefined, now: string): string =>
  typed === undefined || typed === was ? now : typed;
