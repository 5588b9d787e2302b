import type { FC } from 'hono/jsx';
import type { KitBySizeModel, KitFacts, KitFormFacts, KitWorkedOut } from '../../src/usecases/kits/kit-model.ts';
import { Answer, Empty } from '../parts/answer.tsx';
import { Button, ButtonLink } from '../parts/button.tsx';
import { type FieldErrors, FormErrors, TextField } from '../parts/field.tsx';
import { type DoneNotice, Notice } from '../parts/notice.tsx';
import { CASTINGS } from '../yard/castings-page.tsx';
import { BY_SIZE, KIT_LABELS, KitForm } from './kit-form.tsx';
import { KitFound, KnownKit } from './kit-found.tsx';
import { kitAnswer, kitNote } from './kit-text.ts';

export interface KitBySizePageProps {
  model: KitBySizeModel;
  notice: DoneNotice | null;
  /** What was wrong with adding it. */
  errors: FieldErrors;
  /** What was typed for adding it. */
  typed: Readonly<Record<string, string | undefined>>;
}

const bySize = (form: KitFormFacts, changes: Readonly<Record<string, string>> = {}): string => {
  const query = Object.entries({ ...form.typed, ...changes }).flatMap(([name, value]): [string, string][] =>
    value ? [[name, value]] : [],
  );
  return `${BY_SIZE}?${new URLSearchParams(query)}`;
};

const fieldErrors = ({ faults }: KitWorkedOut): FieldErrors =>
  Object.fromEntries(faults.map(({ path, message }) => [path, message]));

/** The first line, which changes with the form. It is put in place beside the rest of the answer. */
const KitAnswer: FC<{ model: KitWorkedOut; oob?: boolean }> = ({ model, oob = false }) => {
  const { found, faults } = model;
  const [fault] = faults;
  return (
    <div id="kit-answer" aria-live="polite" {...(oob ? { 'data-hx-swap-oob': 'true' } : {})}>
      {fault && (
        <Answer note="The rest of what you typed is still here.">
          {KIT_LABELS[fault.path] ?? fault.path}: {fault.message}
        </Answer>
      )}
      {found?.made && <Answer note={kitNote(found.made)}>{kitAnswer(found.made)}</Answer>}
      {found && !found.made && (
        <Answer note="More of the sizes nearest to it are below, the smallest difference first.">
          {found.asked} can't be made from these panels.{found.nearest[0] && ` ${found.nearest[0].text} can.`}
        </Answer>
      )}
    </div>
  );
};

const Nearest: FC<{ model: KitWorkedOut }> = ({ model: { found, form } }) => (
  <section>
    <h2>What can be made</h2>
    {found?.nearest.length === 0 && <Empty>Nothing near it can be made from {form.panels.join(', ')}.</Empty>}
    <ul class="sentences near-sizes">
      {found?.nearest.map(({ text, difference, typed }) => (
        <li>
          <a href={bySize(form, typed)}>{text}</a>: {difference}
        </li>
      ))}
    </ul>
  </section>
);

const AddKit: FC<{ facts: KitFacts; form: KitFormFacts; errors: FieldErrors; typed: KitBySizePageProps['typed'] }> = ({
  facts,
  form,
  errors,
  typed,
}) => (
  <section class="no-print">
    <h2>Add it to the kits</h2>
    <form class="form" method="post" action={BY_SIZE}>
      {Object.entries(form.typed).map(([name, value]) => value && <input type="hidden" name={name} value={value} />)}
      <TextField name="name" label="Name" value={typed.name ?? facts.name} errors={errors} />
      <TextField
        name="packMinutes"
        label="Minutes to pack it"
        hint="A guess from the number of panels until you know better."
        type="number"
        min={0}
        max={999}
        width="short"
        value={typed.packMinutes ?? facts.packMinutes}
        errors={errors}
      />
      <div class="buttons">
        <Button kind="main">Add as a kit</Button>
        <Button name="next" value="ask">
          Add it and ask when it could be ready
        </Button>
      </div>
    </form>
  </section>
);

/** Everything below the form. */
const Found: FC<KitBySizePageProps & { model: KitWorkedOut }> = ({ model, errors, typed }) => {
  const made = model.found?.made;
  return (
    <div id="kit-found" class="kit-found">
      {made && <KitFound facts={made} />}
      {made?.same && <KnownKit kit={made.same} />}
      {made && !made.same && !made.pins.tooLong && (
        <AddKit facts={made} form={model.form} errors={errors} typed={typed} />
      )}
      {model.found && !made && <Nearest model={model} />}
    </div>
  );
};

/** What changes while the form is filled in. */
export const KitBySizePart: FC<KitBySizePageProps> = (props) => {
  const { model } = props;
  if (model.form === null) return <NoPanels />;
  return (
    <>
      <KitAnswer model={model} oob />
      <Found {...props} model={model} />
    </>
  );
};

const NoPanels: FC = () => (
  <>
    <Answer note="A kit can be worked out from its size once it is known how long, high and thick the panels are.">
      No panel has a size yet.
    </Answer>
    <div class="buttons">
      <ButtonLink href={CASTINGS} kind="main">
        Say how large the panels are
      </ButtonLink>
    </div>
  </>
);

export const KitBySizePage: FC<KitBySizePageProps> = (props) => {
  const { model, notice, errors } = props;
  if (model.form === null) return <NoPanels />;
  return (
    <>
      {notice && <Notice notice={notice} today={model.today} back={bySize(model.form)} />}
      <FormErrors errors={errors} lead="The kit was not added. Everything you typed is still here." />
      <KitAnswer model={model} />
      <div class="kit-parts">
        <KitForm form={model.form} system={model.system} errors={fieldErrors(model)} />
        <Found {...props} model={model} />
      </div>
      <p class="no-print">
        Made from {model.form.panels.join(', ')}. <a href={CASTINGS}>Sizes of what you cast</a>
      </p>
    </>
  );
};
