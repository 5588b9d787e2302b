import type { Child, FC } from 'hono/jsx';

interface PasskeyFormProps {
  action: string;
  /** Whether the device makes a passkey or uses one. */
  how: 'create' | 'get';
  /** What the browser is asked for, as JSON (WebAuthn level 3). */
  options: string;
  words: string;
  children?: Child;
}

/** A form that a device answers by a passkey; it shows where the browser can do so (views/assets/passkey.js). */
export const PasskeyForm: FC<PasskeyFormProps> = ({ action, how, options, words, children }) => (
  <form class="form" method="post" action={action} data-passkey={how} data-options={options} hidden>
    <input type="hidden" name="answer" value="" />
    {children}
    <div class="buttons">
      <button type="button" class={`button ${how === 'create' ? 'main' : 'plain'}`} data-passkey-button>
        {words}
      </button>
    </div>
    <p role="status" data-passkey-says />
  </form>
);
