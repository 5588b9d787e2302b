import type { FC } from 'hono/jsx';
import { countText } from '../../shared/plural.ts';
import type { ChangeFacts, ChangesModel } from '../../src/usecases/changes/show-changes.ts';
import { Answer, Empty } from '../parts/answer.tsx';
import { Button, ButtonLink } from '../parts/button.tsx';
import { byText } from '../parts/by-text.ts';
import { clockText, dayHeading, dayText } from '../parts/day-text.ts';
import { Dropped } from '../parts/dropped.tsx';
import { type DoneNotice, Notice } from '../parts/notice.tsx';
import { countWord } from '../parts/quantity-text.ts';
import { movedText } from '../words/moved-text.ts';

type Move = ChangeFacts['given'][number];

/** "Today, Sat 10 Apr", "Sat 17 Apr, by a clock that was ahead" */
const dayOfChanges = (date: string, today: string): string =>
  date > today ? `${dayText(date, today)}, by a clock that was ahead` : dayHeading(date, today);

/** "Six changes since Mon 5 Apr. Two of them moved a date that was given." */
const changesAnswer = ({ days, today, newest }: Pick<ChangesModel, 'days' | 'today' | 'newest'>): string => {
  const changes = days.flatMap((day) => day.changes);
  // While the clock was ahead something may have been changed on a day that is still to come.
  const first = days.map(({ date }) => date).sort()[0];
  if (!first) return newest ? 'Nothing has been changed yet.' : 'There are no older changes.';
  const moving = changes.filter(({ given }) => given.length > 0).length;
  const since = `since ${dayText(first, today)}`;
  if (changes.length === 1) return `One change ${since}, and it moved ${moving ? 'a' : 'no'} date that was given.`;
  const of = moving === 0 ? 'None' : countWord(moving);
  return `${countWord(changes.length)} changes ${since}. ${of} of them moved a date that was given.`;
};

const Planned: FC<{ moves: readonly Move[]; today: string }> = ({ moves, today }) =>
  moves.length === 0 ? null : (
    <details class="message">
      <summary>{countText(moves.length, 'order')} without a promise also moved</summary>
      <ul class="sentences">
        {moves.map((move) => (
          <li>{movedText(move, today)}</li>
        ))}
      </ul>
    </details>
  );

const Undo: FC<{ change: ChangeFacts }> = ({ change }) => (
  <form method="post" action="/undo" data-hx-post="/undo" data-hx-target="#page">
    <input type="hidden" name="change" value={String(change.change)} />
    <input type="hidden" name="back" value="/changes" />
    <Button label={`Undo: ${change.words}`}>Undo</Button>
  </form>
);

const Change: FC<{ change: ChangeFacts; today: string }> = ({ change, today }) => (
  <li class="change">
    <div class="change-head">
      <p>
        <span class="quiet">{clockText(change.at)}</span> {byText(change.by)}
        {change.words.replace(/\.?$/, '.')}
        {change.undone && <span class="quiet"> This was taken back.</span>}
      </p>
      {change.canBeUndone && <Undo change={change} />}
    </div>
    <Dropped dropped={change.dropped} today={today} />
    {change.given.length > 0 && (
      <ul class="sentences">
        {change.given.map((move) => (
          <li>{movedText(move, today)}</li>
        ))}
      </ul>
    )}
    <Planned moves={change.planned} today={today} />
  </li>
);

/** What was changed, day by day, and what it did to the dates. */
export const ChangesPage: FC<{ model: ChangesModel; notice: DoneNotice | null }> = ({ model, notice }) => (
  <>
    {notice && <Notice notice={notice} today={model.today} back="/changes" />}
    <Answer note={model.days.length > 0 ? 'The newest first, with the dates that each of them moved.' : undefined}>
      {changesAnswer(model)}
    </Answer>
    {model.days.length === 0 && <Empty>Whatever is recorded in the yard or the office stands here from then on.</Empty>}
    {model.days.map(({ date, changes }) => (
      <section class="order-day">
        <h2>{dayOfChanges(date, model.today)}</h2>
        <ul class="changes">
          {changes.map((change) => (
            <Change change={change} today={model.today} />
          ))}
        </ul>
      </section>
    ))}
    <div class="buttons">
      {model.older !== null && <ButtonLink href={`/changes?before=${model.older}`}>Older changes</ButtonLink>}
      {!model.newest && <ButtonLink href="/changes">Newest changes</ButtonLink>}
      <ButtonLink href="/orders">Orders</ButtonLink>
    </div>
  </>
);
