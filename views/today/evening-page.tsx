import type { FC } from 'hono/jsx';
import type { EveningModel } from '../../src/usecases/today/show-evening.ts';
import { Answer, Empty } from '../parts/answer.tsx';
import { hoursText } from '../parts/clock-text.ts';
import { dayText } from '../parts/day-text.ts';
import { EveningLists } from './evening-lists.tsx';
import { eveningAnswer } from './evening-text.ts';
import { FrostLine } from './frost-line.tsx';
import { CUTTING, PaperCautions } from './step-caution.tsx';
import { coatText, prepText, sparesTodayText } from './today-text.ts';

/** What is got ready before the next session with mixes, on one sheet of paper. */
export const EveningPage: FC<{ model: EveningModel }> = ({ model: { evening, today, yardName } }) => {
  if (!evening)
    return (
      <>
        <Answer>No session has anything to do.</Answer>
        <Empty>
          Take an order first: <a href="/">ask when it could be ready</a>.
        </Empty>
      </>
    );
  const moulds = [
    ...evening.coats.map((coat) => coatText(coat)),
    ...evening.preps.map((prep) => `${prep.mould}: ${prepText(prep)}`),
  ];
  return (
    <div class="sheet evening">
      <Answer note={`${yardName}: ${dayText(evening.session.date, today)}, ${hoursText(evening.session)}`}>
        {eveningAnswer(evening)}
      </Answer>
      <p class="hint no-print">
        Print it with your browser's Print. Back to <a href="/today">Today</a>
      </p>
      <h2 class="unseen">To get ready</h2>
      <EveningLists evening={evening} folded={false} />
      {evening.spares.length > 0 && <p>{sparesTodayText(evening.spares)}</p>}
      {moulds.length > 0 && (
        <section>
          <h3>Coat or set up already, where there is time</h3>
          <ul class="ticked">
            {moulds.map((line) => (
              <li>
                <span class="tick-box" aria-hidden="true" /> {line}
              </li>
            ))}
          </ul>
        </section>
      )}
      <FrostLine steps={evening.steps} />
      <PaperCautions
        steps={[...evening.coats, ...evening.preps]}
        saidAlready={evening.sticks.length + evening.meshes.length > 0 ? [CUTTING] : []}
      />
    </div>
  );
};
