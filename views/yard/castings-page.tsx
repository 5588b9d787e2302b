import type { FC } from 'hono/jsx';
import type { YardCasting, YardCastingsModel } from '../../src/usecases/yard/show-yard-castings.ts';
import { Answer, Empty } from '../parts/answer.tsx';
import { ButtonLink } from '../parts/button.tsx';
import { countText } from '../parts/day-text.ts';
import { type DoneNotice, Notice } from '../parts/notice.tsx';
import { RemoveForm } from './remove.tsx';
import { entryPath, removePath, YARD } from './sections.ts';

export const CASTINGS = `${YARD}/panels`;

/** "13.5 kg (a guess), 900 mm by 200 mm by 35 mm, from Thin panel mix. 3 moulds make it."; "12.6 kg, no size given, …" */
const castingText = ({ mass, size, mixName, mouldCount, guesses }: YardCasting): string => {
  const measures = size ? size.join(' by ') : 'no size given';
  const made =
    mouldCount === 0
      ? 'No mould makes it yet.'
      : `${countText(mouldCount, 'mould')} ${mouldCount === 1 ? 'makes' : 'make'} it.`;
  return `${mass}${guesses.includes('kg') ? ' (a guess)' : ''}, ${measures}, from ${mixName}. ${made}`;
};

const answerOf = ({ castings }: YardCastingsModel): string =>
  castings.length === 0
    ? 'Nothing is cast yet.'
    : `${countText(castings.length, 'kind')} of piece ${castings.length === 1 ? 'is' : 'are'} cast.`;

/** What is cast, a row each. */
export const CastingsPage: FC<{ model: YardCastingsModel; notice: DoneNotice | null }> = ({ model, notice }) => (
  <>
    {notice && <Notice notice={notice} today={model.today} back={CASTINGS} />}
    <Answer note="Panels of each length, copings, corner pieces: whatever has a mould of its own. Kits by size are worked out from those whose size is given.">
      {answerOf(model)}
    </Answer>
    {model.castings.length === 0 && (
      <Empty>
        {model.mixes.length === 0
          ? 'A piece is cast from a mix, so write the mix down first. Then several lengths can be added at once.'
          : 'Several lengths can be added at once: 600, 900, 1200.'}
      </Empty>
    )}
    <div class="buttons">
      {model.mixes.length === 0 && (
        <ButtonLink href="/yard/mixes/new" kind="main">
          Add a mix
        </ButtonLink>
      )}
      <ButtonLink href={entryPath(CASTINGS, 'new')} kind={model.mixes.length === 0 ? 'plain' : 'main'}>
        Add what you cast
      </ButtonLink>
      <ButtonLink href={YARD} kind="quiet">
        Your yard
      </ButtonLink>
    </div>
    <ul class="yard-rows">
      {model.castings.map((casting) => (
        <li class="yard-row">
          <div>
            <h2>
              <a href={entryPath(CASTINGS, casting.id)}>{casting.name}</a>
            </h2>
            <p>{castingText(casting)}</p>
          </div>
          <RemoveForm action={removePath(CASTINGS, casting.id)} name={casting.name} />
        </li>
      ))}
    </ul>
  </>
);
