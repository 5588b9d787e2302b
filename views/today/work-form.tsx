import type { Child, FC } from 'hono/jsx';
import { DOUBTS, doubtPath } from '../../shared/doubt.ts';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import type { SessionStep } from '../../src/usecases/today/session-step.ts';
import { Button, ButtonLink } from '../parts/button.tsx';

/** A form of this page: it works without script, and with it the page stays where it is. */
export const WorkForm: FC<{ to: string; children?: Child; class?: string }> = ({ to, children, ...rest }) => (
  <form method="post" action={`/today/${to}`} data-hx-post={`/today/${to}`} data-hx-target="#page" class={rest.class}>
    {children}
  </form>
);

export const refusedAt = (refused: RefusedForm | null, form: string): RefusedForm | null =>
  refused?.form === form ? refused : null;

/** Whether a form that came back is one of a step. */
export const isOfStep = ({ form, typed }: RefusedForm, step: SessionStep): boolean =>
  [form, typed.step ?? ''].some((words) => words.endsWith(step.name)) ||
  (step.kind === 'batch' && form === `mix ${step.pours[0]?.mould} ${step.at}`) ||
  (step.kind === 'strip' && [`strip ${step.mould}`, `not hard ${step.mould}`].includes(form)) ||
  (step.kind === 'pack' && form === `pack ${step.order}`);

/** Whether a form came back with a question, and with nothing wrong. */
export const isAsked = (refused: RefusedForm | null): boolean =>
  refused !== null && DOUBTS.some((doubt) => refused.errors[doubtPath(doubt)] !== undefined);

/** A question about what a form says: sent again as it was, with the answer, or left. */
export const Asked: FC<{ to: string; refused: RefusedForm | null }> = ({ to, refused }) => {
  const doubt = refused && DOUBTS.find((one) => refused.errors[doubtPath(one)] !== undefined);
  if (!refused || !doubt) return null;
  const { sure = '', ...typed } = refused.typed;
  return (
    <WorkForm to={to} class="asked">
      {Object.entries(typed).map(([name, value]) => (
        <input type="hidden" name={name} value={value} />
      ))}
      <input type="hidden" name="sure" value={[sure, doubt].filter(Boolean).join(',')} />
      <p id={doubtPath(doubt)} data-fault={doubtPath(doubt)} data-at={doubtPath(doubt)}>
        {refused.errors[doubtPath(doubt)]}
      </p>
      <div class="buttons">
        <Button kind="main">Yes, record it</Button>
        <ButtonLink href="/today" kind="quiet">
          No
        </ButtonLink>
      </div>
    </WorkForm>
  );
};
