import type { FC } from 'hono/jsx';
import { listText, shortListText } from '../../shared/list-text.ts';
import { countText } from '../../shared/plural.ts';
import { unkeptText } from '../orders/order-asked-text.ts';
import { Answer } from '../parts/answer.tsx';
import { Button, ButtonLink } from '../parts/button.tsx';
import { dayText } from '../parts/day-text.ts';
import { LongList } from '../parts/long-list.tsx';
import { Moves } from '../parts/moves.tsx';
import type { FileEffect } from './files-facts.ts';
import { FILES } from './files-page.tsx';

type Difference = FileEffect['differences'][number];
type Changed = Difference['changed'][number];

/** So many names are said, the rest is counted. */
const NAMES_SHOWN = 12;
const CHANGED_SHOWN = 30;

const SUBJECT = {
  yard: 'This yard file',
  archive: 'This archive',
  orders: 'This list of orders',
  moulds: 'This list of moulds',
  stock: 'This list of stock',
} as const;

/** "Three": what it would do in one line. */
const previewAnswer = ({ kind, differences }: FileEffect): string => {
  const sum = (count: (one: Difference) => number) => differences.reduce((all, one) => all + count(one), 0);
  const parts = [
    [sum(({ added }) => added.length), 'new'],
    [sum(({ changed }) => changed.length), 'changed'],
    [sum(({ gone }) => gone.length), 'gone'],
  ] as const;
  const said = parts.filter(([count]) => count > 0).map(([count, word]) => `${count} ${word}`);
  return `${SUBJECT[kind]} would change this: ${listText(said)}. Nothing is loaded yet.`;
};

const ChangedEntry: FC<{ entry: Changed }> = ({ entry: { name, figures } }) => (
  <li>
    <strong>{name}</strong>:{' '}
    {figures.map(({ figure, from, to }, index) => (
      <>
        {index > 0 && '; '}
        {figure} {to}, until now {from}
      </>
    ))}
    .
  </li>
);

const Kind: FC<{ difference: Difference }> = ({ difference: { what, added, gone, changed } }) => (
  <section class="difference">
    <h2>{what}</h2>
    <ul class="sentences">
      {added.length > 0 && (
        <li>
          {added.length} new: {shortListText(added, NAMES_SHOWN)}.
        </li>
      )}
      {gone.length > 0 && (
        <li>
          {gone.length} gone: {shortListText(gone, NAMES_SHOWN)}.
        </li>
      )}
      {changed.slice(0, CHANGED_SHOWN).map((entry) => (
        <ChangedEntry entry={entry} />
      ))}
      {changed.length > CHANGED_SHOWN && <li>{countText(changed.length - CHANGED_SHOWN, 'more')} changed.</li>}
    </ul>
  </section>
);

/** Dates that the file gives and the plan does not keep: the first thing to know before it is read in. */
const Unkept: FC<{ effect: FileEffect }> = ({ effect: { unkept, today } }) =>
  unkept.length === 0 ? null : (
    <section class="warning">
      <h2>{unkept.length === 1 ? "A date that can't be kept" : "Dates that can't be kept"}</h2>
      <ul class="sentences">
        <LongList
          items={unkept}
          draw={(one) => (
            <li>
              {one.customer ?? 'Order'} {one.order}, promised {dayText(one.promisedOn, today)}: {unkeptText(one, today)}
              .
            </li>
          )}
        />
      </ul>
    </section>
  );

/** A file of an earlier version has one date an order: which it was is the maker's to say. */
const OneDate: FC<{ effect: FileEffect }> = ({ effect: { takenAsPromised } }) =>
  takenAsPromised.length === 0 ? null : (
    <section class="warning">
      <h2>Dates that come in as promised</h2>
      <p>
        The file is of an earlier version, which had one date for each order and did not say whether it was promised or
        only asked for. It comes in as promised for {shortListText([...takenAsPromised], NAMES_SHOWN)}. Where it was
        only asked for, write it under Wanted at the order, and leave Promised empty.
      </p>
    </section>
  );

/** Letters that were guessed, and figures that may have lost their decimal sign on the way. */
const Checks: FC<{ effect: FileEffect }> = ({ effect: { checks } }) => (
  <>
    {checks.guessed.length > 0 && (
      <section class="warning">
        <h2>Are these letters right?</h2>
        <p>
          The file is not written in UTF-8. It was read as Windows-1252, which many spreadsheets write:{' '}
          {checks.guessed.join('; ')}. If they are wrong, save it again as CSV (UTF-8).
        </p>
      </section>
    )}
    {checks.steps.length > 0 && (
      <section class="warning">
        <h2>Are these figures right?</h2>
        <p>They are ten times what they were, a tenth of it, or further off. A decimal sign may have been lost.</p>
        <ul class="sentences">
          {checks.steps.map(({ name, figure, from, to }) => (
            <li>
              {name}: {figure} {from} → {to}.
            </li>
          ))}
        </ul>
      </section>
    )}
  </>
);

const asksFirst = ({ checks }: FileEffect): boolean => checks.guessed.length + checks.steps.length > 0;

const AFTER = {
  yard: 'Phones, notes, sizes and past orders of what stays are kept. Whatever the file does not have goes: orders, moulds, stock.',
  archive:
    'The archive comes in place of everything, what was done as well: older changes can then no longer be undone one by one.',
  orders: 'No order is removed.',
  moulds: 'No mould is removed.',
  stock: 'No material is removed.',
} as const;

interface PreviewPageProps {
  effect: FileEffect;
  /** The name the file is held by. */
  file: string;
  /** What came between, when it was to be read in and was not. */
  happened: string | null;
}

/** What reading a file in would do, with the two ways on. */
export const PreviewPage: FC<PreviewPageProps> = ({ effect, file, happened }) => (
  <>
    {happened !== null && (
      <div class="warning" role="alert">
        <p>{happened}</p>
      </div>
    )}
    <Answer note={AFTER[effect.kind]}>{previewAnswer(effect)}</Answer>
    <Checks effect={effect} />
    <form class="buttons" method="post" action={`${FILES}/read-in`}>
      <input type="hidden" name="file" value={file} />
      <input type="hidden" name="revision" value={String(effect.revision)} />
      {asksFirst(effect) && (
        <label class="choice" for="checked">
          <input type="checkbox" id="checked" name="checked" value="yes" required />
          <span>I have checked what is asked above</span>
        </label>
      )}
      <Button kind="main">Load it</Button>
      <ButtonLink href={FILES}>Cancel</ButtonLink>
    </form>
    <Unkept effect={effect} />
    <OneDate effect={effect} />
    <section>
      <h2>Days of orders</h2>
      <Moves moved={effect.moved} today={effect.today} />
    </section>
    {effect.differences.map((difference) => (
      <Kind difference={difference} />
    ))}
  </>
);
