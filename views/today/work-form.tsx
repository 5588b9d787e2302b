import type { Child, FC } from 'hono/jsx';
import type { RefusedWork } from './today-facts.ts';

/** A form of this page: it works without script, and with it the page stays where it is. */
export const WorkForm: FC<{ deed: string; children?: Child; class?: string }> = ({ deed, children, ...rest }) => (
  <form method="post" action={`/today/${deed}`} hx-post={`/today/${deed}`} hx-target="#page" class={rest.class}>
    {children}
  </form>
);

export const refusedAt = (refused: RefusedWork | null, form: string): RefusedWork | null =>
  refused?.form === form ? refused : null;

/** What was wrong with a form that has no field to say it at. */
export const Wrong: FC<{ message: string | undefined; id?: string }> = ({ message, id }) =>
  message ? (
    <p class="error" id={id}>
      {message}
    </p>
  ) : null;
