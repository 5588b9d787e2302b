import type { FC } from 'hono/jsx';
import type { MixStrength, MixStrengthModel } from '../../src/usecases/yard/show-mix-strength.ts';
import { Answer } from '../parts/answer.tsx';
import { Button, ButtonLink } from '../parts/button.tsx';
import { dayText } from '../parts/day-text.ts';
import { SelectField } from '../parts/field.tsx';
import { MIXES, strengthPath } from './mixes-page.tsx';
import { StrengthChart } from './strength-chart.tsx';
import { ageText, CEMENT_NAMES, curveSource, shareText, strengthAnswer, strengthText } from './strength-words.ts';

const options = Object.entries(CEMENT_NAMES).map(([value, text]) => ({
  value,
  text,
  group: value === 'I' || value === 'III' ? 'ASTM C150' : 'EN 197-1',
}));

const STAGES = { stripped: 'Stripped', out: 'Fit to go out, by plan' } as const;

const Table: FC<{ strength: MixStrength; today: string }> = ({ strength, today }) => (
  <table>
    <caption class="unseen">How strong a piece is that is filled today</caption>
    <thead>
      <tr>
        <th scope="col">When</th>
        <th scope="col">Day</th>
        <th scope="col">It has</th>
      </tr>
    </thead>
    <tbody>
      {strength.stages.map((stage) => (
        <tr>
          <th scope="row">
            {STAGES[stage.at]}, after {ageText(stage.hours)}
          </th>
          <td>{dayText(stage.day, today)}</td>
          <td>{strengthText(stage)}</td>
        </tr>
      ))}
      {strength.shares.map(({ share, day }) => (
        <tr>
          <th scope="row">Not before</th>
          <td>{day === null ? 'not known' : dayText(day, today)}</td>
          <td>{shareText(share)}</td>
        </tr>
      ))}
    </tbody>
  </table>
);

const FOR_PLANNING =
  'For planning only. No curve releases a piece: a test of your own mix does, and for what has to carry, a licensed engineer.';

const Lead: FC<{ model: MixStrengthModel }> = ({ model: { cement, strength, expected, mix, today } }) => {
  const out = strength?.stages.find(({ at }) => at === 'out');
  if (!cement || !out) return <Answer note={FOR_PLANNING}>Which cement is in {mix.name}?</Answer>;
  const kept =
    expected === null ? 'at 20 °C (68 °F), as no temperature is expected' : `as warm as you expect, ${expected} today`;
  return (
    <Answer
      note={`Then it is fit to go out by plan: filled today and kept ${kept}, by the curve of ${curveSource(cement)}. ${FOR_PLANNING}`}
    >
      {strengthAnswer(out, today)}
    </Answer>
  );
};

/** How strong a piece of a mix is when it is stripped and when it goes out, by the published curve of its cement. */
export const MixStrengthPage: FC<{ model: MixStrengthModel }> = ({ model }) => (
  <>
    <Lead model={model} />
    <div class={model.strength ? 'strength-parts' : undefined}>
      {model.strength && <StrengthChart strength={model.strength} today={model.today} />}
      <div>
        <form class="form" method="get" action={strengthPath(model.mix.id)}>
          <SelectField
            name="cement"
            label="Cement, as it says on the bag"
            hint="Only ordinary (Portland) cements have such a curve. Fast-setting mortar has none: go by its data sheet."
            value={model.cement ?? 'N'}
            options={options}
          />
          <div class="buttons">
            <Button kind={model.cement ? 'plain' : 'main'}>How strong by then?</Button>
            <ButtonLink href={MIXES} kind="quiet">
              Mixes
            </ButtonLink>
          </div>
        </form>
        {model.strength && <Table strength={model.strength} today={model.today} />}
      </div>
    </div>
    {model.strength && (
      <p class="quiet">
        Up to three days at 20 °C (68 °F) the code wants a test, so no share is given before. Colder days count for less
        (EN 1992-1-1, annex B).
      </p>
    )}
  </>
);
