import type { FC } from 'hono/jsx';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import type { SessionStep } from '../../src/usecases/today/session-step.ts';
import type { TodayModel } from '../../src/usecases/today/today-model.ts';
import { ButtonLink } from '../parts/button.tsx';
import { EveningLists } from './evening-lists.tsx';
import { eveningAnswer } from './evening-text.ts';
import { isGoneOnIn, OtherPartsOfToday, stepsOfToday } from './part-of-today.tsx';
import { StepView } from './step-view.tsx';
import { sparesTodayText } from './today-text.ts';

export const EVENING = '/today/evening';

interface EveningCardProps {
  model: TodayModel;
  refused: RefusedForm | null;
}

/** What can be got ready before a session on another day, with the moulds that can be coated and set up already. */
export const EveningCard: FC<EveningCardProps> = ({ model, refused }) => {
  const { evening } = model;
  if (!evening) return null;
  const moulds = [...evening.coats, ...evening.preps];
  const isMine = ({ name }: SessionStep) => refused?.form.endsWith(name) ?? false;
  const part = stepsOfToday(model, moulds, { list: 'already', isMine });
  return (
    <section class="evening">
      <h2>{eveningAnswer(evening)}</h2>
      <EveningLists evening={evening} folded />
      {evening.spares.length > 0 && <p class="quiet">{sparesTodayText(evening.spares)}</p>}
      <div class="folds">
        {moulds.length > 0 && (
          <details class="message" id="already" open={isGoneOnIn(model, 'already') || moulds.some(isMine)}>
            <summary>Moulds that can be coated or set up already</summary>
            <OtherPartsOfToday list="already" part={part} what="mould" />
            <ul class="evening-steps">
              {part.items.map((step) => (
                <StepView step={step} seen={model} writable={true} late={false} due={false} refused={refused} />
              ))}
            </ul>
            <OtherPartsOfToday list="already" part={part} what="mould" />
          </details>
        )}
        <p class="buttons">
          <ButtonLink href={EVENING} kind="quiet">
            This as a sheet, to print
          </ButtonLink>
        </p>
      </div>
    </section>
  );
};
