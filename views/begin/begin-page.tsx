import type { FC } from 'hono/jsx';
import type { BeginModel } from '../../src/usecases/begin/show-begin.ts';
import { Answer } from '../parts/answer.tsx';
import { Button, ButtonLink } from '../parts/button.tsx';
import { FormErrors } from '../parts/field.tsx';
import { WrittenFields } from '../parts/written-fields.tsx';
import type { BeginProps } from './begin-props.ts';
import { EMPTY_YARD, FOUR, thereText } from './begin-text.ts';
import { NameFields } from './name-fields.tsx';

/** What beginning does to a yard that is there. */
export const PutAway: FC<{ model: BeginModel }> = ({ model: { demo, yardName, there } }) =>
  demo ? (
    <p class="quiet">The demo is put away when you begin. Undo on the Changes page brings it back.</p>
  ) : (
    <div class="warning">
      <p class="warning-lead">
        {yardName} would be put away: {thereText(there)}.
      </p>
      <p>
        Undo on the <a href="/changes">Changes</a> page brings all of it back, once what was changed after it is undone.
        To be safe, <a href="/yard/files">keep a file of it</a> first.
      </p>
    </div>
  );

const Here: FC<{ model: BeginModel }> = ({ model: { demo, yardName } }) =>
  demo ? (
    <>
      {yardName} is made up, to look round in: nothing you do there harms anything. <a href="/">Look round the demo</a>
    </>
  ) : (
    <>{yardName} is here now.</>
  );

export const BeginPage: FC<BeginProps> = ({ model, errors, typed }) => (
  <>
    <Answer note={<Here model={model} />}>
      {model.demo ? 'Look round, or begin your own yard.' : 'Begin another yard?'}
    </Answer>
    <PutAway model={model} />
    <section>
      <h2>Your own yard, the shortest way</h2>
      <p>
        Four answers and a rough date, in about five minutes. Everything else is guessed, and can be put right later.
      </p>
      <div class="buttons">
        <ButtonLink href={FOUR} kind="main">
          Give four answers
        </ButtonLink>
      </div>
    </section>
    <section>
      <h2>Your own yard, step by step</h2>
      <p>An empty yard, filled in part by part in your own order.</p>
      <form class="form" method="post" action={EMPTY_YARD}>
        <FormErrors errors={errors} />
        <WrittenFields system={typed.system} english={typed.english} errors={errors} />
        <NameFields model={model} errors={errors} typed={typed} />
        <div class="buttons">
          <Button>Start an empty yard</Button>
        </div>
      </form>
    </section>
    <section>
      <h2>A yard from a file</h2>
      <p>
        <a href="/yard/files">Load a yard file</a> that was kept here or on another machine.
      </p>
    </section>
  </>
);
