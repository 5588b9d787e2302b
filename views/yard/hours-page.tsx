import type { FC } from 'hono/jsx';
import type { YardHoursModel } from '../../src/usecases/yard/show-yard-hours.ts';
import { Answer } from '../parts/answer.tsx';
import { ButtonLink } from '../parts/button.tsx';
import { type DoneNotice, Notice } from '../parts/notice.tsx';
import { datesText, hoursAnswer, offText, repeatingText, singleDayText, tooShortText } from './hours-words.ts';
import { entryPath, removePath, YARD } from './sections.ts';
import { SentenceList } from './sentence-list.tsx';
import { WeekStrip } from './week-strip.tsx';

export const HOURS = `${YARD}/hours`;
export const HOURS_DAY = `${HOURS}/day`;
export const HOURS_OFF = `${HOURS}/off`;

/** When the yard works, in sentences: what repeats, single days, days off. */
export const HoursPage: FC<{ model: YardHoursModel; notice: DoneNotice | null }> = ({ model, notice }) => {
  const { today, work, extra, off } = model;
  const repeating = work.map((hours) => ({
    text: repeatingText(hours, today),
    more: hours.rhythm ? null : hours.dates.length > 0 ? `Next: ${datesText(hours.dates, today)}.` : 'No date to come.',
    warning: hours.tooShort && tooShortText(hours.tooShort),
    edit: entryPath(HOURS, hours.id),
    remove: removePath(HOURS, hours.id),
  }));
  const single = extra.map((hours) => ({
    text: singleDayText(hours, today),
    warning: hours.tooShort && tooShortText(hours.tooShort),
    edit: entryPath(HOURS_DAY, hours.id),
    remove: removePath(HOURS_DAY, hours.id),
  }));
  const free = off.map((span) => ({
    text: offText(span, today),
    remove: `${HOURS_OFF}/${span.from}/${span.to}/remove`,
  }));
  return (
    <>
      {notice && <Notice notice={notice} today={today} back={HOURS} />}
      <Answer note="Hours are one person's or several people's. Hours that overlap add their people up.">
        {hoursAnswer(model)}
      </Answer>
      <div class="yard-hours">
        <WeekStrip week={model.week} today={today} />
        <div>
          <SentenceList
            title="As usual"
            empty="Say when you work: Saturdays 8 to 2, Wednesday evenings 6 to 9."
            rows={repeating}
          >
            <ButtonLink href={entryPath(HOURS, 'new')} kind={work.length === 0 ? 'main' : 'plain'}>
              Add hours
            </ButtonLink>
          </SentenceList>
          <SentenceList title="Single days" empty="No hours on a single day, beside the usual ones." rows={single}>
            <ButtonLink href={entryPath(HOURS_DAY, 'new')}>Add a day</ButtonLink>
          </SentenceList>
          <SentenceList title="Days off" empty="No day off is coming." rows={free}>
            <ButtonLink href={entryPath(HOURS_OFF, 'new')}>Add days off</ButtonLink>
          </SentenceList>
        </div>
      </div>
      <p class="way">
        <a href={YARD}>Your yard</a>
      </p>
    </>
  );
};
