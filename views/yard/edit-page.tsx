import type { Child, FC } from 'hono/jsx';
import type { FormState } from '../../src/usecases/plan/save-edit.ts';
import { Answer } from '../parts/answer.tsx';
import { FormAnswer, SaveButtons } from '../parts/form-state.tsx';
import { type DoneNotice, Notice } from '../parts/notice.tsx';

interface EditPageProps {
  /** The page's first line: what is edited. */
  answer: Child;
  note?: Child;
  state: FormState;
  today: string;
  /** The form's own address. */
  action: string;
  /** Where "Cancel" leads. */
  back: string;
  save?: string;
  /** The fields. */
  children?: Child;
  /** Above the form: what fills it in. */
  before?: Child;
  /** Below the form: other things that can be done with the entry, such as "Remove". */
  after?: Child;
  /** What is edited, drawn; its figures stand in the fields or in a table with it. */
  beside?: Child;
  notice?: DoneNotice | null;
  /** The page's address, where it carries what the form is filled in with. */
  address?: string;
}

const FORM = 'edit';

const Buttons: FC<EditPageProps & { form?: string }> = ({ state, back, save, form }) => (
  <SaveButtons state={state} back={back} {...(save ? { save } : {})} {...(form ? { form } : {})} />
);

/** One form of "Your yard": what it is for, what came of sending it, its fields, and its buttons. */
export const EditPage: FC<EditPageProps> = (props) => (
  <>
    {props.notice && <Notice notice={props.notice} today={props.today} back={props.address ?? props.action} />}
    <FormAnswer state={props.state} today={props.today}>
      <Buttons {...props} form={FORM} />
    </FormAnswer>
    <Answer note={props.note}>{props.answer}</Answer>
    {props.before}
    <div class={props.beside ? 'edit-parts' : undefined}>
      {props.beside && <div class="beside">{props.beside}</div>}
      <form class="form edit-form" id={FORM} method="post" action={props.action}>
        {props.children}
        <Buttons {...props} />
      </form>
    </div>
    {props.after}
  </>
);
