import type { Child, FC } from 'hono/jsx';
import { Answer, Empty } from '../parts/answer.tsx';
import { ButtonLink } from '../parts/button.tsx';
import { type DoneNotice, Notice } from '../parts/notice.tsx';
import { RemoveForm } from './remove.tsx';
import { entryPath, removePath, YARD } from './sections.ts';

/** An entry in a list: its name leads to its form. */
export interface ListEntry {
  id: string | number;
  name: string;
  /** Said beside its name: ", scrapped". */
  note?: string | false;
  /** What it is, a paragraph each. */
  lines: readonly Child[];
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
        {entry.lines}
      </div>
      <RemoveForm action={removePath(path, entry.id)} name={entry.name} />
    </li>
  );
};

/** Entries that belong together; one group without a title is the whole list. */
export interface ListGroup {
  title?: string;
  entries: readonly ListEntry[];
}

const Group: FC<{ group: ListGroup; path: string }> = ({ group: { title, entries }, path }) => {
  const rows = (
    <ul class="yard-rows">
      {entries.map((entry) => (
        <EntryRow entry={entry} path={path} inGroup={title !== undefined} />
      ))}
    </ul>
  );
  if (title === undefined) return rows;
  return (
    <section>
      <h2>{title}</h2>
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
  groups: readonly ListGroup[];
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
      {filled.map((group) => (
        <Group group={group} path={path} />
      ))}
    </>
  );
};
