// What waits on this phone, and what was not taken once it was sent, said above the page and at the forms themselves.

import { whenText } from './acts.js';

const element = (name, properties = {}, ...children) => {
  const made = Object.assign(document.createElement(name), properties);
  made.append(...children);
  return made;
};

const place = () => {
  const there = document.getElementById('waiting');
  if (there) return there;
  const box = element('section', { id: 'waiting', className: 'warning waiting', hidden: true });
  box.setAttribute('role', 'status');
  box.setAttribute('aria-label', 'Kept on this phone');
  document.getElementById('page').before(box);
  return box;
};

const lineOf = (act) => `${act.words}, ${whenText(act)}`;

const lead = (text) => element('p', { className: 'warning-lead', textContent: text });

const refusedLine = (act, putAway) => {
  const away = element('button', { type: 'button', className: 'button plain', textContent: 'Put away' });
  away.setAttribute('aria-label', `Put away: ${lineOf(act)}`);
  away.addEventListener('click', () => putAway(act));
  const open = element('a', { href: act.page, className: 'button plain', textContent: 'Open its page' });
  open.addEventListener('click', () => putAway(act));
  const buttons = element('div', { className: 'buttons' }, open, away);
  return element('li', {}, element('strong', { textContent: `${lineOf(act)}.` }), ` ${act.refusal}`, buttons);
};

// All that a form has been given to say, and not what is typed or ticked in it.
const isOf = (form, { action, tapped }) => {
  if (form.getAttribute('data-hx-post') !== action) return false;
  const said = new Map(tapped);
  return [...form.querySelectorAll('input[type=hidden]')].every(({ name, value }) =>
    ['when', 'sure'].includes(name) ? true : said.get(name) === value.trim(),
  );
};

const markForms = (waiting) => {
  for (const note of document.querySelectorAll('.form-waits')) note.remove();
  for (const form of document.querySelectorAll('#page form[data-hx-post]')) {
    const act = waiting.find((one) => isOf(form, one));
    for (const button of form.querySelectorAll('button[type=submit]')) button.disabled = act !== undefined;
    if (act)
      form.append(element('p', { className: 'form-waits', textContent: `Kept, ${whenText(act)}: not sent yet` }));
  }
};

/** Shows acts that wait or were refused; `putAway` is told which of these was read. */
export const showWaiting = (acts, putAway) => {
  const waiting = acts.filter(({ refusal }) => refusal === undefined);
  const refused = acts.filter(({ refusal }) => refusal !== undefined);
  const list = (lines) => element('ul', {}, ...lines);
  const box = place();
  box.replaceChildren(
    ...(waiting.length > 0
      ? [
          lead('Kept on this phone, not sent yet:'),
          list(waiting.map((act) => element('li', { textContent: lineOf(act) }))),
          element('p', { textContent: 'Sent by itself, once there is an answer, as done at these times.' }),
        ]
      : []),
    ...(refused.length > 0
      ? [lead('Sent later, and not recorded:'), list(refused.map((act) => refusedLine(act, putAway)))]
      : []),
  );
  box.hidden = acts.length === 0;
  markForms(waiting);
};
