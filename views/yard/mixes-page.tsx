import type { FC } from 'hono/jsx';
import { countText } from '../../shared/plural.ts';
import type { PresetShown, YardMix, YardMixesModel } from '../../src/usecases/yard/show-yard-mixes.ts';
import { ButtonLink } from '../parts/button.tsx';
import type { DoneNotice } from '../parts/notice.tsx';
import type { EntryFact } from './entry-facts.tsx';
import { type ListEntry, ListPage } from './list-page.tsx';
import { MixPatterns, MixTimes, StageMark } from './mix-times.tsx';
import {
  contentsText,
  fitText,
  mixedText,
  mixesAnswer,
  PRESET_NAMES,
  stiffensText,
  stripText,
  yieldText,
} from './mix-words.ts';
import { entryPath, YARD } from './sections.ts';

export const MIXES = `${YARD}/mixes`;

/** Where it says how strong a piece of a mix is by then. */
export const strengthPath = (mix: string): string => `${entryPath(MIXES, mix)}/strength`;

/** The form that adds a mix: from a preset, or on the way back to another form. */
export const newMixPath = (back: string | null, from?: string): string => {
  const query = new URLSearchParams({ ...(from ? { from } : {}), ...(back === null ? {} : { back }) });
  return `${entryPath(MIXES, 'new')}${query.size > 0 ? `?${query}` : ''}`;
};

/** Buttons to a form that is filled in with cautious figures. */
export const PresetButtons: FC<{ presets: readonly PresetShown[]; main?: boolean; back?: string | null }> = ({
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

/** What is looked for first: what a bag makes, and how long there is until what. */
export const mixFacts = (mix: YardMix): EntryFact[] => {
  const [cold, warm] = mix.strips;
  return [
    { word: 'One bag makes', text: yieldText(mix) },
    { word: 'Mixed', text: mixedText(mix), mark: <StageMark stage="mixed" /> },
    { word: 'Stiffens', text: stiffensText(mix), mark: <StageMark stage="worked" /> },
    ...(warm ? [{ word: 'Stripped, warm day', text: stripText(warm), mark: <StageMark stage="setting" /> }] : []),
    ...(cold ? [{ word: 'Stripped, cold day', text: stripText(cold), mark: <StageMark stage="either" /> }] : []),
    { word: 'Fit to go out, by plan', text: fitText(mix) },
  ];
};

/** The rest of it, said as its form says it. */
const restFacts = (mix: YardMix): EntryFact[] => {
  const { minCelsius, maxCelsius } = mix.texts;
  return [
    { word: 'For one bag', text: contentsText(mix) },
    ...(mix.washMinutes > 0 ? [{ word: 'To wash up', text: countText(mix.washMinutes, 'minute') }] : []),
    ...(minCelsius ? [{ word: 'Not poured under', text: minCelsius }] : []),
    ...(maxCelsius ? [{ word: 'Not poured over', text: maxCelsius }] : []),
  ];
};

const mixEntry = (mix: YardMix): ListEntry => ({
  id: mix.id,
  name: mix.name,
  drawing: <MixTimes mix={mix} />,
  facts: mixFacts(mix),
  more: { title: 'What goes into it, and the rest', facts: restFacts(mix) },
  lines: [
    <p class="way">
      <a href={strengthPath(mix.id)}>How strong is it by then?</a>
    </p>,
    mix.guesses.length > 0 && (
      <p class="quiet">
        Some of it is <a href="/yard/guesses">still to check</a>. Check your bag's data sheet.
      </p>
    ),
  ],
});

/** What is mixed. */
export const MixesPage: FC<{ model: YardMixesModel; notice: DoneNotice | null }> = ({ model, notice }) => (
  <ListPage
    path={MIXES}
    notice={notice}
    today={model.today}
    answer={mixesAnswer(model)}
    note="How long it takes to harden is for planning only. The data sheet and your own tests come first."
    empty="Start from cautious figures for one of two kinds, and put in what your bag's data sheet says."
    before={<PresetButtons presets={model.presets} main={model.mixes.length === 0} />}
    add="Add a mix from nothing"
    addIsSecond
    above={<MixPatterns />}
    drawn="From the first bag to the strip, each mix to its own time."
    groups={[{ entries: model.mixes.map(mixEntry) }]}
  />
);
