import type { FC } from 'hono/jsx';
import { countText, plural } from '../../shared/plural.ts';
import type { YardModel } from '../../src/usecases/yard/show-yard.ts';
import { ThisDevice } from '../device/this-device.tsx';
import { Answer } from '../parts/answer.tsx';
import { ButtonLink } from '../parts/button.tsx';
import { type DoneNotice, Notice } from '../parts/notice.tsx';
import { SEASON } from '../season/season-text.ts';
import { GOES_WRONG } from './goes-wrong-text.ts';
import { missingAnswer, nextSection, sectionText } from './section-text.ts';
import { SECTIONS, YARD } from './sections.ts';

const Section: FC<{ section: (typeof SECTIONS)[number]; model: YardModel }> = ({ section, model }) => {
  const { there, missing } = sectionText(section.key, model);
  return (
    <li class="yard-section">
      <h2>
        <a href={section.path}>{section.name}</a>
      </h2>
      <div>
        <p>{there}</p>
        {missing && <p class="yard-missing">{missing}</p>}
      </div>
    </li>
  );
};

const Guesses: FC<{ count: number }> = ({ count }) =>
  count === 0 ? null : (
    <p>
      {countText(count, 'figure')} {plural(count, 'is', 'are')} still to check. <a href="/yard/guesses">Check them</a>
    </p>
  );

/** The shortest way to a first date, or to the one thing it lacks. */
const NextStep: FC<{ missing: YardModel['missing'] }> = ({ missing }) => {
  const next = nextSection(missing);
  if (missing.length === 0) return null;
  return (
    <div class="buttons">
      {next && (
        <ButtonLink href={next.path} kind="main">
          Next: {next.name.toLowerCase()}
        </ButtonLink>
      )}
      {missing.length > 1 && <ButtonLink href="/begin">Or begin with four answers</ButtonLink>}
    </div>
  );
};

interface YardPageProps {
  model: YardModel;
  notice: DoneNotice | null;
  /** The name chosen on this device. */
  who: string | null;
}

export const YardPage: FC<YardPageProps> = ({ model, notice, who }) => (
  <>
    {notice && <Notice notice={notice} today={model.today} back={YARD} />}
    <Answer note="Each part can be changed by itself, in any order, and left for later.">
      {missingAnswer(model.missing)}
    </Answer>
    <NextStep missing={model.missing} />
    <Guesses count={model.guesses} />
    <ol class="yard-sections">
      {SECTIONS.map((section) => (
        <Section section={section} model={model} />
      ))}
    </ol>
    <div class="buttons">
      <ButtonLink href="/begin">Begin with four answers</ButtonLink>
      <ButtonLink href="/yard/guesses">Figures to check</ButtonLink>
      <ButtonLink href={GOES_WRONG}>What goes wrong</ButtonLink>
      <ButtonLink href={SEASON}>The season</ButtonLink>
      <ButtonLink href="/yard/files">Files in and out</ButtonLink>
      <ButtonLink href="/yard/calendar">Calendar</ButtonLink>
      <ButtonLink href="/people">Who may come in</ButtonLink>
    </div>
    <ThisDevice who={who} back={YARD} />
  </>
);
