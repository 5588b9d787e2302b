import type { Child, FC } from 'hono/jsx';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';

/** A form of this page: it works without script, and with it the page stays where it is. */
export const WorkForm: FC<{ to: string; children?: Child; class?: string }> = ({ to, children, ...rest }) => (
  <form method="post" action={`/today/${to}`} hx-post={`/today/${to}`} hx-target="#page" class={rest.class}>
    {children}
  </form>
);

export const refusedAt = (refused: RefusedForm | null, form: string): RefusedForm | null =>
  refused?.form === form ? refused : null;

/** What was wrong with a form that has no field to say it at. */
export const Wrong: FC<{ message: string | undefined; id?: string }> = ({ message, id }) =>
  message ? (
    <p class="error" id={id}>
      {message}
    </p>
  ) : null;
