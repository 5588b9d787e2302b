import type { Child, FC } from 'hono/jsx';
import { fullDayWords } from '../../shared/day-words.ts';
import { isDate } from '../../shared/time.ts';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import { Button } from '../parts/button.tsx';
import { DayField } from '../parts/day-field.tsx';
import { ChoiceField, TextField, Wrong } from '../parts/field.tsx';
import { typedOr } from '../parts/form-state.tsx';
import { type MouldFacts, mouldPagePath, mouldPath } from './mould-facts.ts';
import { MouldShape } from './mould-shape.tsx';
import { conditionOf, fillOf, mouldSentences, paintedText, untilText } from './mould-text.ts';

interface MouldRowProps {
  mould: MouldFacts;
  /** Tells this mould's fields from those of the others. */
  place: string;
  /** What was looked for, as the end of an address. */
  query: string;
  today: string;
  refused: RefusedForm | null;
}

const MarkForm: FC<{ id: string; mark: string; query: string; children?: Child; class?: string }> = ({
  id,
  mark,
  query,
  children,
  ...rest
}) => (
  <form
    method="post"
    action={mouldPath(id, mark, query)}
    data-hx-post={mouldPath(id, mark, query)}
    data-hx-target="#page"
    class={rest.class}
  >
    {children}
  </form>
);

const Tap: FC<{ id: string; mark: string; word: string; query: string }> = ({ id, mark, word, query }) => (
  <MarkForm id={id} mark={mark} query={query}>
    <Button label={`${word}: ${id}`}>{word}</Button>
  </MarkForm>
);

/** Nothing for what is no day: the form says itself how it was, and anybody may send one. */
const dayField = (day: string | null | undefined): string => (day && isDate(day) ? fullDayWords(day) : '');

const OutOfUse: FC<MouldRowProps> = ({ mould, place, query, today, refused }) => {
  const mine = refused?.form === mould.id ? refused : null;
  const { errors = {}, typed = {} } = mine ?? {};
  const idOf = (name: string) => `${name}-${place}`;
  const damagedWord = mould.condition === 'damaged' ? 'Save' : 'Mark damaged';
  const scrap = mouldPath(mould.id, 'scrapped', query);
  return (
    <details class="out-of-use" open={mine !== null}>
      <summary>{mould.condition === 'damaged' ? 'More about it' : 'Damaged …'}</summary>
      <MarkForm id={mould.id} mark="damaged" query={query} class="form">
        {mould.piece && (
          <ChoiceField
            name="cameOut"
            id={idOf('cameOut')}
            label="Is the piece in it good?"
            hint="A good one stays in until it is stripped. One to mend is kept aside, on Today."
            value={typed.cameOut}
            choices={[
              { value: 'good', text: 'Good' },
              { value: 'mend', text: 'To mend' },
              { value: 'scrap', text: 'Scrap' },
            ]}
            errors={errors}
          />
        )}
        <input type="hidden" name="conditionWas" value={mould.condition} />
        <input type="hidden" name="noteWas" value={mould.damageNote ?? ''} />
        <input type="hidden" name="repairedOnWas" value={mould.repairedOn ?? ''} />
        <TextField
          name="note"
          id={idOf('note')}
          label="What is wrong"
          value={typedOr(typed.note, typed.noteWas, mould.damageNote ?? '')}
          errors={errors}
        />
        <DayField
          name="repairedOn"
          id={idOf('repairedOn')}
          label="Should be mended by"
          hint="Empty when nobody knows."
          min={today}
          value={typedOr(typed.repairedOn, dayField(typed.repairedOnWas), dayField(mould.repairedOn))}
          errors={errors}
        />
        <div class="buttons">
          <Button kind="main" label={`${damagedWord}: ${mould.id}`}>
            {damagedWord}
          </Button>
          <button
            type="submit"
            class="button plain"
            formaction={scrap}
            data-hx-post={scrap}
            data-hx-target="#page"
            data-hx-include="closest form"
            aria-label={`Mark scrapped: ${mould.id}`}
          >
            Mark scrapped
          </button>
        </div>
      </MarkForm>
    </details>
  );
};

/** What is worth knowing of a mould, and what can be said about it with one tap. */
export const MouldPanel: FC<MouldRowProps> = (props) => {
  const { mould, query, today, refused } = props;
  const markError = refused?.form === mould.id ? refused.errors.mark : undefined;
  return (
    <div class="mould-panel">
      <div class="mould-facts">
        {mouldSentences(mould, today).map((sentence) => (
          <p>{sentence}</p>
        ))}
        <Wrong message={markError} name="mark" />
      </div>
      <div class="mould-taps">
        {mould.condition === 'dirty' && !mould.piece && (
          <Tap id={mould.id} mark="cleaned" word="Cleaned" query={query} />
        )}
        {mould.condition === 'damaged' && <Tap id={mould.id} mark="mended" word="Mended" query={query} />}
        {mould.turnsToSealing !== null && mould.condition !== 'damaged' && !mould.piece && (
          <Tap id={mould.id} mark="sealed" word="Sealed" query={query} />
        )}
        {mould.turnsToService !== null && mould.condition !== 'damaged' && !mould.piece && (
          <Tap id={mould.id} mark="serviced" word="Looked over" query={query} />
        )}
        <OutOfUse {...props} />
      </div>
    </div>
  );
};

interface MouldTileProps extends MouldRowProps {
  kind: string;
  longestMm: number;
  /** The panel is open: it is the one that was looked for. */
  open: boolean;
}

/** A mould on the map of the yard. A tap opens its panel. */
export const MouldTile: FC<MouldTileProps> = ({ kind, longestMm, open, ...props }) => {
  const { mould, today, refused } = props;
  const until = untilText(mould, today);
  return (
    <li class="mould">
      <details open={open || refused?.form === mould.id}>
        <summary class="mould-tile">
          <MouldShape fill={fillOf(mould)} painted={paintedText(mould.id, kind)} mould={mould} longestMm={longestMm} />
          <h3>{mould.id}</h3> <span class="condition">{conditionOf(mould).word}</span>
          {until && <span class="until">{until}</span>}
        </summary>
        <MouldPanel {...props} />
        <p class="mould-more way">
          <a href={mouldPagePath(mould.id)}>All about {mould.id}</a>
        </p>
      </details>
    </li>
  );
};
