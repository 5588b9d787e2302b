import type { Child, FC } from 'hono/jsx';
import { Answer, Empty } from '../parts/answer.tsx';
import { ButtonLink } from '../parts/button.tsx';
import { type DoneNotice, Notice } from '../parts/notice.tsx';
import { type EntryFact, EntryFacts, MoreFacts } from './entry-facts.tsx';
import { RemoveForm } from './remove.tsx';
import { entryPath, removePath, YARD } from './sections.ts';

/** An entry in a list: its name leads to its form. */
export interface ListEntry {
  id: string | number;
  name: string;
  /** Said beside its name: ", scrapped". */
  note?: string | false;
  /** To scale; what it shows stands in its figures as well. */
  drawing?: Child;
  /** What it is, a line each. */
  facts?: readonly EntryFact[];
  /** What is looked for less often. */
  more?: { title: string; facts: readonly EntryFact[] };
  /** Whatever else is to be said, a paragraph each. */
  lines?: readonly Child[];
}

/** One entry, with "Remove" beside it. Under the heading of a group its own is smaller. */
const EntryRow: FC<{ entry: ListEntry; path: string; inGroup: boolean }> = ({ entry, path, inGroup }) => {
  const Heading = inGroup ? 'h3' : 'h2';
  return (
    <li class="yard-row">
      <div>
        <Heading>
          <a href={entryPath(path, entry.id)}>{entry.name}</a>
          {entry.note}
        </Heading>
        {entry.drawing}
        {entry.facts && <EntryFacts facts={entry.facts} of={entry.name} />}
        {entry.more && <MoreFacts {...entry.more} of={entry.name} />}
        {entry.lines}
      </div>
      <RemoveForm action={removePath(path, entry.id)} name={entry.name} />
    </li>
  );
};

/** Entries that belong together; one group without a title is the whole list. */
export interface ListGroup {
  title?: string;
  /** Drawn once for all of them. */
  drawing?: Child;
  entries: readonly ListEntry[];
}

const Group: FC<{ group: ListGroup; path: string }> = ({ group: { title, drawing, entries }, path }) => {
  const rows = (
    <ul class={entries.some(({ facts }) => facts) ? 'yard-rows in-columns' : 'yard-rows'}>
      {entries.map((entry) => (
        <EntryRow entry={entry} path={path} inGroup={title !== undefined} />
      ))}
    </ul>
  );
  if (title === undefined) return rows;
  return (
    <section>
      <div class="yard-group">
        <h2>{title}</h2>
        {drawing}
      </div>
      {rows}
    </section>
  );
};

/** A link to the form of something: "Add a kit". */
interface AddLink {
  href: string;
  text: string;
}

interface ListPageProps {
  /** The section's page. */
  path: string;
  notice: DoneNotice | null;
  today: string;
  answer: string;
  note: Child;
  /** What to do while there are no entries. */
  empty: Child;
  /** What has to be there before anything can be added; false where it is. */
  first?: AddLink | false;
  /** What the button that adds one says. */
  add: string;
  /** More ways to add one, before the button and after it. */
  before?: Child;
  after?: Child;
  /** True where one of `before` is the first choice. */
  addIsSecond?: boolean;
  /** What the drawings of the entries show. */
  drawn?: string;
  /** What the drawings take from one another. */
  above?: Child;
  groups: readonly ListGroup[];
  /** Groups in two columns where there is room, not one below the other. */
  groupsBeside?: boolean;
}

/** The page of a section of the yard: what is there, a row each, and what can be added. */
export const ListPage: FC<ListPageProps> = ({ path, notice, today, answer, note, groups, ...props }) => {
  const { first = false, add, before, after, addIsSecond = false } = props;
  const filled = groups.filter(({ entries }) => entries.length > 0);
  return (
    <>
      {notice && <Notice notice={notice} today={today} back={path} />}
      <Answer note={note}>{answer}</Answer>
      {filled.length === 0 && <Empty>{props.empty}</Empty>}
      <div class="buttons">
        {first && (
          <ButtonLink href={first.href} kind="main">
            {first.text}
          </ButtonLink>
        )}
        {before}
        <ButtonLink href={entryPath(path, 'new')} kind={first || addIsSecond ? 'plain' : 'main'}>
          {add}
        </ButtonLink>
        {after}
        <ButtonLink href={YARD} kind="quiet">
          Your yard
        </ButtonLink>
      </div>
      {props.above}
      {props.drawn && filled.length > 0 && <p class="hint">{props.drawn}</p>}
      <div class={props.groupsBeside ? 'yard-groups' : 'yard-list'}>
        {filled.map((group) => (
          <Group group={group} path={path} />
        ))}
      </div>
    </>
  );
};
