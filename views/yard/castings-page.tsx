import type { FC } from 'hono/jsx';
import type { YardCasting, YardCastingsModel } from '../../src/usecases/yard/show-yard-castings.ts';
import { countText } from '../parts/day-text.ts';
import type { DoneNotice } from '../parts/notice.tsx';
import { type ListEntry, ListPage } from './list-page.tsx';
import { YARD } from './sections.ts';

export const CASTINGS = `${YARD}/panels`;

/** "13.5 kg (to check), 900 mm by 200 mm by 35 mm, from Thin panel mix. 3 moulds make it."; "12.6 kg, no size given, …" */
const castingText = ({ mass, size, mixName, mouldCount, guesses }: YardCasting): string => {
  const measures = size ? size.join(' by ') : 'no size given';
  const made =
    mouldCount === 0
      ? 'No mould makes it yet.'
      : `${countText(mouldCount, 'mould')} ${mouldCount === 1 ? 'makes' : 'make'} it.`;
  return `${mass}${guesses.includes('kg') ? ' (to check)' : ''}, ${measures}, from ${mixName}. ${made}`;
};

const castingEntry = (casting: YardCasting): ListEntry => ({
  ...{ id: casting.id, name: casting.name },
  lines: [<p>{castingText(casting)}</p>],
});

const answerOf = ({ castings }: YardCastingsModel): string =>
  castings.length === 0
    ? 'Nothing is cast yet.'
    : `${countText(castings.length, 'kind')} of piece ${castings.length === 1 ? 'is' : 'are'} cast.`;

/** What is cast, a row each. */
export const CastingsPage: FC<{ model: YardCastingsModel; notice: DoneNotice | null }> = ({ model, notice }) => {
  const noMix = model.mixes.length === 0;
  return (
    <ListPage
      path={CASTINGS}
      notice={notice}
      today={model.today}
      answer={answerOf(model)}
      note="Panels of each length, copings, corner pieces: whatever has a mould of its own. Kits by size are worked out from those whose size is given."
      empty={
        noMix
          ? 'A piece is cast from a mix, so write the mix down first. Then several lengths can be added at once.'
          : 'Several lengths can be added at once: 600, 900, 1200.'
      }
      first={noMix && { href: '/yard/mixes/new', text: 'Add a mix' }}
      add="Add what you cast"
      groups={[{ entries: model.castings.map(castingEntry) }]}
    />
  );
};
