import type { Child, FC } from 'hono/jsx';

/** The first line of a page: the answer to its one question, as a sentence. `note` says the rest more quietly. */
export const Answer: FC<{ children?: Child; note?: Child }> = ({ children, note }) => (
  <div class="answer">
    <h1>{children}</h1>
    {note && <p class="answer-note">{note}</p>}
  </div>
);

/** A page, or a part of it, with nothing to show: what that means and what to do. */
export const Empty: FC<{ children?: Child }> = ({ children }) => <p class="empty">{children}</p>;
