import type { FC } from 'hono/jsx';
import type { showPanelSizes } from '../../src/usecases/panel-sizes.ts';
import { Answer, Empty } from '../parts/answer.tsx';
import { Button } from '../parts/button.tsx';
import { ChoiceField, type FieldErrors, FormErrors, TextField } from '../parts/field.tsx';
import { type DoneNotice, Notice } from '../parts/notice.tsx';
import { countWord } from '../parts/quantity-text.ts';

export type PanelSizesModel = Awaited<ReturnType<typeof showPanelSizes>>;

export const PANEL_SIZES = '/kits/panels';

const UNITS = [
  { value: 'metric', text: 'Millimetres and kilograms' },
  { value: 'US', text: 'Feet, inches and pounds' },
];

/** "Four of five pieces have a size." */
export const panelSizesAnswer = ({ pieces }: PanelSizesModel): string => {
  const known = pieces.filter(({ length }) => length !== '').length;
  if (pieces.length === 0) return 'The yard casts nothing yet.';
  if (known === 0) return 'No piece has a size yet.';
  const all = countWord(pieces.length).toLowerCase();
  return known === pieces.length
    ? `All ${all} pieces have a size.`
    : `${countWord(known)} of ${all} pieces ${known === 1 ? 'has' : 'have'} a size.`;
};

interface PanelSizesProps {
  model: PanelSizesModel;
  notice: DoneNotice | null;
  errors: FieldErrors;
  typed: Readonly<Record<string, string>>;
}

const Piece: FC<{ piece: PanelSizesModel['pieces'][number] } & Pick<PanelSizesProps, 'errors' | 'typed'>> = ({
  piece,
  errors,
  typed,
}) => (
  <fieldset class="piece-size">
    <legend>{piece.name}</legend>
    <div class="field-row">
      {(['length', 'height', 'thickness'] as const).map((field) => {
        const name = `${field}:${piece.id}`;
        const label = { length: 'Long', height: 'High', thickness: 'Thick' }[field];
        return (
          <TextField name={name} label={label} width="short" value={typed[name] ?? piece[field]} errors={errors} />
        );
      })}
    </div>
  </fieldset>
);

export const PanelSizesPage: FC<PanelSizesProps> = ({ model, notice, errors, typed }) => (
  <>
    {notice && <Notice notice={notice} today={model.today} back={PANEL_SIZES} />}
    <FormErrors errors={errors} />
    <Answer note="Kits by size are worked out from these. Leave a piece empty that no kit is made from, a coping for one.">
      {panelSizesAnswer(model)}
    </Answer>
    {model.pieces.length === 0 ? (
      <Empty>
        Say what you cast at <a href="/yard">Your yard</a>, or <a href="/begin/four">begin with four answers</a>. The
        sizes are written down here then.
      </Empty>
    ) : (
      <form class="form" method="post" action={PANEL_SIZES}>
        {model.pieces.map((piece) => (
          <Piece piece={piece} errors={errors} typed={typed} />
        ))}
        <p class="hint">
          Write a length as you would say it: 900, 0.9 m, 35 1/2 in. A number alone is{' '}
          {model.system === 'US' ? 'inches' : 'millimetres'}.
        </p>
        <div class="buttons">
          <Button kind="main">Keep these sizes</Button>
        </div>
      </form>
    )}
    <section>
      <h2>Units</h2>
      <form class="form" method="post" action="/kits/units">
        <ChoiceField
          name="system"
          label="Show sizes and weights in"
          value={model.system}
          choices={UNITS}
          errors={errors}
        />
        <p class="hint">You can type either, whatever is chosen here.</p>
        <div class="buttons">
          <Button>Show them so</Button>
        </div>
      </form>
    </section>
    <p>
      <a href="/kits/by-size">Kit by size</a>
    </p>
  </>
);
