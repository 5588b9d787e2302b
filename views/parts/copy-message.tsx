import type { FC } from 'hono/jsx';

/** Letters that go on a line of a phone. */
const LETTERS = 36;

/** So many lines that a phone shows all of it; browsers that can fit it to the text. */
const rowsFor = (text: string): number => Math.max(3, Math.ceil(text.length / LETTERS));

interface CopyTextProps {
  id: string;
  /** What opens it. */
  summary: string;
  text: string;
  button: string;
}

/** A text to take along, a line each. Without script it is marked and copied by hand. */
export const CopyText: FC<CopyTextProps> = ({ id, summary, text, button }) => (
  <details class="message">
    <summary>{summary}</summary>
    <label for={id} class="hint">
      Copy this, or print the page: open lists are printed alone.
    </label>
    <textarea id={id} rows={Math.max(3, text.split('\n').length)} readonly>
      {text}
    </textarea>
    <button type="button" class="button plain" data-copy={id} hidden>
      {button}
    </button>
  </details>
);

/** A message to send on. Without script it is marked and copied by hand; with script a button does it. */
export const CopyMessage: FC<{ id: string; text: string; name: string }> = ({ id, text, name }) => (
  <details class="message">
    <summary>Message to {name}</summary>
    <label for={id} class="hint">
      Copy this and send it as you like.
    </label>
    <textarea id={id} rows={rowsFor(text)} readonly>
      {text}
    </textarea>
    <button type="button" class="button plain" data-copy={id} hidden>
      Copy message
    </button>
  </details>
);
