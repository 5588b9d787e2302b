import type { Child, FC } from 'hono/jsx';

interface ButtonProps {
  children?: Child;
  /** "main": the one thing a form is for. "plain": everything else. "quiet": beside other things, looks like a link. */
  kind?: 'main' | 'plain' | 'quiet';
  name?: string;
  value?: string;
  /** Read out in place of the words, where the words alone do not say what of. */
  label?: string;
  /** The id of the form it sends, where it does not stand in it. */
  form?: string;
  /** Sends the form there, not to its own address. */
  action?: string;
}

export const Button: FC<ButtonProps> = ({ children, kind = 'plain', name, value, label, form, action }) => (
  <button
    type="submit"
    class={`button ${kind}`}
    name={name}
    value={value}
    aria-label={label}
    form={form}
    formaction={action}
  >
    {children}
  </button>
);

export const ButtonLink: FC<{ href: string; children?: Child; kind?: 'main' | 'plain' | 'quiet' }> = ({
  href,
  children,
  kind = 'plain',
}) => (
  <a href={href} class={`button ${kind}`}>
    {children}
  </a>
);
