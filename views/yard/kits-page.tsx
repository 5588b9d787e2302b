import type { FC } from 'hono/jsx';
import { listText } from '../../shared/list-text.ts';
import { countText } from '../../shared/plural.ts';
import type { YardKit, YardKitsModel } from '../../src/usecases/yard/show-yard-kits.ts';
import { ButtonLink } from '../parts/button.tsx';
import type { DoneNotice } from '../parts/notice.tsx';
import { CASTINGS } from './castings-page.tsx';
import { contentsText } from './contents-text.ts';
import type { EntryFact } from './entry-facts.tsx';
import { type ListEntry, ListPage } from './list-page.tsx';
import { KitPieces, longestOf } from './piece-drawing.tsx';
import { entryPath, YARD } from './sections.ts';

export const KITS = `${YARD}/kits`;

export const kitFacts = (kit: YardKit): EntryFact[] => {
  const beside = contentsText(kit);
  return [
    { word: 'Pieces', text: listText(kit.pieces.map(({ name, count }) => `${count} × ${name}`)) || 'none' },
    ...(kit.pieces.length === 0 ? [] : [{ word: 'They weigh', text: kit.mass }]),
    ...(beside === '' ? [] : [{ word: 'Pins and parts', text: beside }]),
    { word: 'To pack', text: kit.packMinutes === 0 ? 'it is not packed' : countText(kit.packMinutes, 'minute') },
  ];
};

const kitEntry = (kit: YardKit, longestMm: number): ListEntry => ({
  ...{ id: kit.id, name: kit.name, facts: kitFacts(kit) },
  drawing: kit.drawn.length > 0 && <KitPieces pieces={kit.drawn} longestMm={longestMm} />,
});

const answerOf = ({ kits }: YardKitsModel): string =>
  kits.length === 0 ? 'There are no kits yet.' : `${countText(kits.length, 'kit')} can be ordered.`;

/** What is sold as one thing, a row each. */
export const KitsPage: FC<{ model: YardKitsModel; notice: DoneNotice | null }> = ({ model, notice }) => {
  const nothingCast = model.castings.length === 0;
  const longestMm = longestOf(model.kits.flatMap(({ drawn }) => drawn));
  return (
    <ListPage
      path={KITS}
      notice={notice}
      today={model.today}
      answer={answerOf(model)}
      note="Pieces can be ordered singly too, without a kit."
      empty={
        nothingCast
          ? 'A kit is put together from pieces, so record what you cast first.'
          : 'Put one together from its pieces and pins, or have it worked out from a size.'
      }
      first={nothingCast && { href: entryPath(CASTINGS, 'new'), text: 'Add what you cast' }}
      add="Add a kit"
      after={<ButtonLink href="/kits/by-size">Work one out from a size</ButtonLink>}
      drawn="Their pieces from the front, to scale."
      groups={[{ entries: model.kits.map((kit) => kitEntry(kit, longestMm)) }]}
    />
  );
};
