// Small comforts for a page that works without them. Loaded before htmx.

// htmx 4.0.1 hands this a second argument, which Chromium up to 143 and perhaps later refuses: then nothing is swapped.
if (Document.parseHTMLUnsafe) {
  try {
    Document.parseHTMLUnsafe('', {});
  } catch {
    const parse = Document.parseHTMLUnsafe.bind(Document);
    Document.parseHTMLUnsafe = (html) => parse(html);
  }
}

const copyText = async (area) => {
  area.select();
  // The clipboard is only there on a secure address; a yard's own network seldom is one.
  if (navigator.clipboard) return navigator.clipboard.writeText(area.value);
  if (!document.execCommand('copy')) throw new Error('not copied');
};

document.addEventListener('click', async (event) => {
  const button = event.target.closest?.('[data-copy]');
  if (!button) return;
  const area = document.getElementById(button.dataset.copy);
  try {
    await copyText(area);
    button.textContent = 'Copied';
  } catch {
    button.textContent = 'Marked: copy it by hand';
  }
});

// A new yard most likely goes by the clock of the machine it is begun on.
const fillOwnZone = (root) => {
  for (const field of root.querySelectorAll('[data-own-zone]'))
    if (field.value === '') field.value = Intl.DateTimeFormat().resolvedOptions().timeZone;
};
fillOwnZone(document);

const NEEDS_SCRIPT = '[data-copy][hidden], [data-calendar][hidden], .day-picker[hidden]';
const showWhatNeedsScript = () => {
  for (const element of document.querySelectorAll(NEEDS_SCRIPT)) element.hidden = false;
};
showWhatNeedsScript();
fillOwnZone(document);

// A day is typed as a text; the browser's own calendar fills that text in.
const WEEKDAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const dayText = (date) =>
  `${WEEKDAYS[date.getUTCDay()]} ${date.getUTCDate()} ${MONTHS[date.getUTCMonth()]} ${date.getUTCFullYear()}`;

document.addEventListener('click', (event) => {
  const button = event.target.closest?.('[data-calendar]');
  if (!button) return;
  const picker = document.getElementById(`${button.dataset.calendar}-picker`);
  try {
    picker.showPicker();
  } catch {
    picker.focus();
  }
});

// A form that answers as it is filled in hears of a day once it is written or writing has stopped, and not of "8 M".
const WRITING_STOPPED_MS = 700;
let writing;
const settle = (field) => {
  clearTimeout(writing);
  const settled = new Event('input', { bubbles: true });
  settled.settled = true;
  field.dispatchEvent(settled);
};

document.addEventListener('change', (event) => {
  const field = event.target;
  if (field.matches('.day-picker')) {
    const text = document.getElementById(field.id.replace(/-picker$/, ''));
    if (!field.valueAsDate) return;
    text.value = dayText(field.valueAsDate);
    text.dispatchEvent(new Event('change', { bubbles: true }));
    text.focus();
  }
  if (field.matches('input.day')) settle(field);
});
document.addEventListener(
  'input',
  (event) => {
    const field = event.target;
    if (!field.matches('input.day, .day-picker') || event.settled) return;
    event.stopPropagation();
    clearTimeout(writing);
    if (field.matches('input.day')) writing = setTimeout(() => settle(field), WRITING_STOPPED_MS);
  },
  true,
);

// What was just done, or what was wrong, is where reading goes on: the button that was pressed may be gone.
const readOn = () => document.querySelector('.form-errors, .notice')?.focus({ preventScroll: true });
readOn();

// A question that is answered as it is typed is in the address, so that going back and a bookmark lead to it.
const keepInAddress = ({ sourceElement, request }) => {
  const form = sourceElement?.closest?.('form[data-address]');
  if (form && request.method === 'GET') history.replaceState(history.state, '', request.action);
};

document.addEventListener('htmx:after:swap', (event) => {
  showWhatNeedsScript();
  fillOwnZone(document);
  const ctx = event.detail?.ctx;
  if (ctx) keepInAddress(ctx);
  if (ctx?.target?.id === 'page') readOn();
});

// When nobody answers, everything stays as it was typed, and the page says so.
const failure = () => document.getElementById('not-sent');
const sayNotSent = (ctx) => {
  const box = failure();
  const asked = ctx?.request?.method === 'GET';
  box.firstElementChild.textContent = asked
    ? 'There was no answer, so what you see may be old. Everything you typed is still here.'
    : 'There was no answer, so this was perhaps not saved. Everything you typed is still here. Look whether it was, then try again.';
  box.hidden = false;
  if (!asked) box.focus();
};
const FAULT = 500;
document.addEventListener('htmx:error', (event) => sayNotSent(event.detail?.ctx));
document.addEventListener('htmx:before:swap', (event) => {
  if (event.detail?.ctx?.response?.status >= FAULT) event.preventDefault();
});
document.addEventListener('htmx:after:request', (event) => {
  const ctx = event.detail?.ctx;
  if (ctx?.response?.status >= FAULT) sayNotSent(ctx);
  else failure().hidden = true;
});
