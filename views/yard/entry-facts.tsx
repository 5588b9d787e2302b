import type { Child, FC } from 'hono/jsx';

/** One figure of an entry: what it is, and how much; with what stands for it in the drawing beside it. */
export interface EntryFact {
  word: string;
  text: Child;
  mark?: Child;
}

/** Figures of an entry, a line each. */
export const EntryFacts: FC<{ facts: readonly EntryFact[]; of: string }> = ({ facts, of }) => (
  <table class="entry-facts">
    <caption class="unseen">{of}</caption>
    <tbody>
      {facts.map(({ word, text, mark }) => (
        <tr>
          <th scope="row">
            {mark}
            {word}
          </th>
          <td>{text}</td>
        </tr>
      ))}
    </tbody>
  </table>
);

/** Figures that are looked for less often, behind a line that says which they are. */
export const MoreFacts: FC<{ title: string; facts: readonly EntryFact[]; of: string }> = ({ title, facts, of }) =>
  facts.length === 0 ? null : (
    <details class="message">
      <summary>{title}</summary>
      <EntryFacts facts={facts} of={`${of}: ${title.toLowerCase()}`} />
    </details>
  );

/** An entry as it was saved, drawn beside its form. `shows` says how. */
export const DrawnEntry: FC<{ shows: string; facts: readonly EntryFact[]; of: string; children?: Child }> = ({
  shows,
  facts,
  of,
  children,
}) => (
  <div class="drawn-entry">
    <p>As it was saved{shows}</p>
    {children}
    <EntryFacts facts={facts} of={of} />
  </div>
);
