import type { FC } from 'hono/jsx';
import { fullDayWords } from '../../shared/day-words.ts';
import { OTHER_PART } from '../../shared/mould-part.ts';
import type { MouldModel } from '../../src/usecases/moulds/show-mould.ts';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import { Button } from '../parts/button.tsx';
import { DayField } from '../parts/day-field.tsx';
import { ChoiceField, TextField } from '../parts/field.tsx';
import { Mark, type MarkShape } from '../parts/mark.tsx';
import { FROM_MOULD, mouldPath } from './mould-facts.ts';

/** What a form about a part is called on the page of a mould, and in its address. */
export const PART = 'part';

type Part = MouldModel['set'][number];

const SHAPES: Readonly<Record<Part['condition'], MarkShape>> = {
  ...{ whole: 'full', worn: 'ring', broken: 'triangle', none: 'cross' },
};

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

interface PartsProps {
  model: MouldModel;
  refused: RefusedForm | null;
}

const MendedTap: FC<{ id: string; part: string }> = ({ id, part }) => (
  <form
    method="post"
    action={mouldPath(id, PART, FROM_MOULD)}
    data-hx-post={mouldPath(id, PART, FROM_MOULD)}
    data-hx-target="#page"
  >
    <input type="hidden" name="part" value={part} />
    <input type="hidden" name="condition" value="whole" />
    <Button label={`Mended: ${part} of ${id}`}>Mended</Button>
  </form>
);

const Row: FC<{ id: string; part: Part }> = ({ id, part: { part, condition, note } }) => (
  <li class={`mould-part is-${condition}`}>
    <span class="mould-part-name">{capital(part)}</span>
    <span class="mould-part-how">
      <Mark shape={SHAPES[condition]} /> {condition}
      {note && <span class="quiet">: {note}</span>}
    </span>
    {condition !== 'whole' && <MendedTap id={id} part={part} />}
  </li>
);

const CONDITIONS = [
  { value: 'worn', text: 'Worn' },
  { value: 'broken', text: 'Broken' },
  { value: 'whole', text: 'Whole' },
  { value: 'none', text: 'It has none' },
] as const;

const PartForm: FC<PartsProps> = ({ model: { mould, set, today }, refused }) => {
  const { errors = {}, typed = {} } = refused?.form === PART ? refused : {};
  const path = mouldPath(mould.id, PART, FROM_MOULD);
  return (
    <form method="post" action={path} data-hx-post={path} data-hx-target="#page" class="form">
      <input type="hidden" name="conditionWas" value={mould.condition} />
      <input type="hidden" name="repairedOnWas" value={mould.repairedOn ?? ''} />
      <ChoiceField
        name="part"
        label="Which part"
        value={typed.part}
        choices={[
          ...set.map(({ part }) => ({ value: part, text: capital(part) })),
          { value: OTHER_PART, text: 'Another, called:' },
        ]}
        errors={errors}
      />
      <TextField name="otherPart" label="Another part" value={typed.otherPart} errors={errors} />
      <ChoiceField
        name="condition"
        label="How it is"
        hint="Worn is only a note. Broken takes the mould out of use until it is mended."
        value={typed.condition}
        choices={CONDITIONS}
        errors={errors}
      />
      <TextField name="partNote" label="What is wrong" value={typed.partNote} errors={errors} />
      <DayField
        name="partRepairedOn"
        label="If broken: should be mended by"
        hint="Empty when nobody knows."
        min={today}
        value={typed.partRepairedOn ?? (mould.repairedOn ? fullDayWords(mould.repairedOn) : '')}
        errors={errors}
      />
      {mould.piece && (
        <ChoiceField
          name="cameOut"
          id="partCameOut"
          label="If broken: is the piece in it good?"
          hint="A good one stays in until it is stripped."
          value={typed.cameOut}
          choices={[
            { value: 'good', text: 'Good' },
            { value: 'mend', text: 'To mend' },
            { value: 'scrap', text: 'Scrap' },
          ]}
          errors={errors}
        />
      )}
      <div class="buttons">
        <Button kind="main">Save</Button>
      </div>
    </form>
  );
};

/** The parts of a mould's set, each with its condition, and a form to say how one is. */
export const MouldParts: FC<PartsProps> = (props) => (
  <section>
    <h2>Its parts</h2>
    <ul class="mould-parts">
      {props.model.set.map((part) => (
        <Row id={props.model.mould.id} part={part} />
      ))}
    </ul>
    <details class="out-of-use" open={props.refused?.form === PART}>
      <summary>A part is worn or broken …</summary>
      <PartForm {...props} />
    </details>
  </section>
);
