import type { Child, FC } from 'hono/jsx';
import type { FormState } from '../../src/usecases/plan/save-edit.ts';

interface FoldedProps {
  title: string;
  /** What its fields say now, so that nobody has to open it to know. */
  said: string;
  state: FormState;
  /** Whether a field is one of these. */
  has: (field: string) => boolean;
  children?: Child;
}

const isOpen = ({ typed, errors }: FormState, has: FoldedProps['has']): boolean =>
  Object.keys(errors).some(has) || Object.entries(typed ?? {}).some(([field, text]) => has(field) && text !== '');

/**
 * Fields of a form that are asked for less often, behind a line that says how they are filled in. Open where one is wrong, and in a
 * form that was sent back with something in them: what was typed stays in sight.
 */
export const Folded: FC<FoldedProps> = ({ title, said, state, has, children }) => (
  <details class="folded" open={isOpen(state, has)}>
    <summary>
      <strong>{title}</strong>
      {said !== '' && `: ${said}`}
    </summary>
    <fieldset class="form">
      <legend class="unseen">{title}</legend>
      {children}
    </fieldset>
  </details>
);
