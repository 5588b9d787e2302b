import type { FC } from 'hono/jsx';
import type { YardMix, YardMixesModel } from '../../src/usecases/yard/show-yard-mixes.ts';
import { Answer, Empty } from '../parts/answer.tsx';
import { ButtonLink } from '../parts/button.tsx';
import { type DoneNotice, Notice } from '../parts/notice.tsx';
import { contentsLine, hardensLine, mixesAnswer, PRESET_NAMES, workLine, yieldLine } from './mix-words.ts';
import { RemoveForm } from './remove.tsx';
import { entryPath, removePath, YARD } from './sections.ts';

export const MIXES = `${YARD}/mixes`;

/** Where it says how strong a piece of a mix is by then. */
export const strengthPath = (mix: string): string => `${entryPath(MIXES, mix)}/strength`;

/** The form that adds a mix: from a preset, or on the way back to another form. */
export const newMixPath = (back: string | null, from?: string): string => {
  const query = new URLSearchParams({ ...(from ? { from } : {}), ...(back === null ? {} : { back }) });
  return `${entryPath(MIXES, 'new')}${query.size > 0 ? `?${query}` : ''}`;
};

/** Buttons to a form that is filled in with cautious figures. */
export const PresetButtons: FC<{ presets: YardMixesModel['presets']; main?: boolean; back?: string | null }> = ({
  presets,
  main,
  back = null,
}) => (
  <>
    {presets.map(({ key }, index) => (
      <ButtonLink href={newMixPath(back, key)} kind={main && index === 0 ? 'main' : 'plain'}>
        Start from {PRESET_NAMES[key]}
      </ButtonLink>
    ))}
  </>
);

const Row: FC<{ mix: YardMix }> = ({ mix }) => (
  <li class="yard-row">
    <div>
      <h2>
        <a href={entryPath(MIXES, mix.id)}>{mix.name}</a>
      </h2>
      <p>
        {yieldLine(mix)} {workLine(mix)}
      </p>
      <p>{hardensLine(mix)}</p>
      <p class="quiet">{contentsLine(mix)}</p>
      <p>
        <a href={strengthPath(mix.id)}>How strong is it by then?</a>
      </p>
      {mix.guesses.length > 0 && (
        <p class="quiet">
          Some of it is <a href="/yard/guesses">still a guess</a>. Check your bag's data sheet.
        </p>
      )}
    </div>
    <RemoveForm action={removePath(MIXES, mix.id)} name={mix.name} />
  </li>
);

/** What is mixed. */
export const MixesPage: FC<{ model: YardMixesModel; notice: DoneNotice | null }> = ({ model, notice }) => (
  <>
    {notice && <Notice notice={notice} today={model.today} back={MIXES} />}
    <Answer note="How long it takes to harden is for planning only. The data sheet and your own tests come first.">
      {mixesAnswer(model)}
    </Answer>
    {model.mixes.length === 0 && (
      <Empty>Start from cautious figures for one of two kinds, and put in what your bag's data sheet says.</Empty>
    )}
    <div class="buttons">
      <PresetButtons presets={model.presets} main={model.mixes.length === 0} />
      <ButtonLink href={entryPath(MIXES, 'new')}>Add a mix from nothing</ButtonLink>
      <ButtonLink href={YARD} kind="quiet">
        Your yard
      </ButtonLink>
    </div>
    {model.mixes.length > 0 && (
      <ul class="yard-rows">
        {model.mixes.map((mix) => (
          <Row mix={mix} />
        ))}
      </ul>
    )}
  </>
);
