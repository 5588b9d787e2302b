import type { FC } from 'hono/jsx';

/** A message to send on. Without script it is marked and copied by hand; with script a button does it. */
export const CopyMessage: FC<{ id: string; text: string; name: string }> = ({ id, text, name }) => (
  <details class="message">
    <summary>Message to {name}</summary>
    <label for={id} class="hint">
      Copy this and send it as you like.
    </label>
    <textarea id={id} rows={3} readonly>
      {text}
    </textarea>
    <button type="button" class="button plain" data-copy={id} hidden>
      Copy message
    </button>
  </details>
);
