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

const CALENDAR =
  '<svg viewBox="0 0 20 20" width="20" height="20" aria-hidden="true" focusable="false"><path d="M3 5h14v12H3zM3 9h14M7 3v4M13 3v4" fill="none" stroke="currentColor" stroke-width="1.5"/></svg>';

/** The button that opens the browser's own calendar, and the field that it belongs to: a page may have a hundred days. */
const putCalendarBeside = (field) => {
  const label = field.labels[0]?.textContent ?? 'Day';
  const button = document.createElement('button');
  Object.assign(button, { type: 'button', className: 'button plain', innerHTML: CALENDAR });
  button.dataset.calendar = field.id;
  button.setAttribute('aria-label', `${label}: calendar`);
  const picker = document.createElement('input');
  Object.assign(picker, { type: 'date', className: 'day-picker unseen', id: `${field.id}-picker`, tabIndex: -1 });
  picker.min = field.dataset.min ?? '';
  picker.setAttribute('aria-label', `${label}, chosen in the calendar`);
  field.after(button, picker);
};

const showWhatNeedsScript = () => {
  for (const element of document.querySelectorAll('[data-copy][hidden]')) element.hidden = false;
  for (const field of document.querySelectorAll('.day-field > .day:only-child')) putCalendarBeside(field);
};
showWhatNeedsScript();
fillOwnZone(document);

// A day is typed as a text; the browser's own calendar fills that text in.
const WEEKDAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const dayText = (date) => {
  const [weekday, month] = [WEEKDAYS[date.getUTCDay()], MONTHS[date.getUTCMonth()]];
  const [day, year] = [date.getUTCDate(), date.getUTCFullYear()];
  const isUs = document.documentElement.lang === 'en-US';
  return isUs ? `${weekday}, ${month} ${day}, ${year}` : `${weekday} ${day} ${month} ${year}`;
};

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

// Above a form that was sent back each line says which field it is about, in the order of the fields.
const labelOf = (field) => {
  const label = (field.labels?.[0] ?? field.querySelector('legend'))?.cloneNode(true);
  label?.querySelector('.guess')?.remove();
  return label?.textContent.trim();
};
const nameFaults = () => {
  for (const list of document.querySelectorAll('.form-errors ul:not([data-named])')) {
    list.dataset.named = '';
    const lines = [...list.children].flatMap((line) => {
      const link = line.querySelector('a');
      const field = document.getElementById(decodeURIComponent(link?.hash.slice(1) ?? ''));
      return field ? [{ line, link, field }] : [];
    });
    lines.sort((a, b) => (a.field.compareDocumentPosition(b.field) & Node.DOCUMENT_POSITION_PRECEDING ? 1 : -1));
    for (const { line, link, field } of lines) {
      const label = labelOf(field);
      if (label && !link.textContent.startsWith(label)) link.prepend(label, /\?$/.test(label) ? ' ' : ': ');
      list.append(line);
    }
  }
};

// What was just done, or what was wrong, is where reading goes on: the button that was pressed may be gone.
const readOn = () => {
  nameFaults();
  const place = document.querySelector('.form-errors, .notice, .effect');
  place?.focus({ preventScroll: true });
  place?.scrollIntoView({ block: 'nearest' });
};
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
  // A page that is shown anew by itself takes nobody away from where they read.
  if (ctx?.target?.id === 'page' && ctx.request.method !== 'GET') readOn();
});

// When nobody answers, everything stays as it was typed, and the page says so.
const failure = () => document.getElementById('not-sent');
const NOT_SENT = {
  asked: 'There was no answer, so what you see may be old. Everything you typed is still here.',
  sent: 'There was no answer, so this was perhaps not saved. Everything you typed is still here. Look whether it was, then try again.',
  gone: 'Nobody answers just now, so this was not sent. Everything you typed is still here. Try again in a while.',
  back: 'This was not saved last time. What you typed is here again.',
};
const say = (what) => {
  const box = failure();
  box.firstElementChild.textContent = NOT_SENT[what];
  box.hidden = false;
  if (what !== 'asked') box.focus({ preventScroll: true });
};
// What is kept on the phone is told of there (waiting.js).
const sayNotSent = (ctx) => ctx?.act || say(ctx?.request?.method === 'GET' ? 'asked' : 'sent');
const FAULT = 500;
document.addEventListener('htmx:error', (event) => sayNotSent(event.detail?.ctx));
document.addEventListener('htmx:before:swap', (event) => {
  if (event.detail?.ctx?.response?.status >= FAULT) event.preventDefault();
});
document.addEventListener('htmx:after:request', (event) => {
  const ctx = event.detail?.ctx;
  if (ctx?.response?.status >= FAULT) say(ctx.request.method === 'GET' ? 'asked' : 'sent');
  else failure().hidden = true;
});

// A form that leads to another page is sent only when somebody is there: otherwise the browser would put a page of its own
// in place of what was typed.
/** Beside this script, wherever that is. */
const MARK = new URL('mark.svg', document.currentScript.src);
const SURE = new WeakSet();
const ASKING = new WeakSet();
const UNSAVED = 'unsaved form';
const isPlain = (form) => form.method === 'post' && form.enctype !== 'multipart/form-data';

document.addEventListener('submit', async (event) => {
  const form = event.target;
  if (event.defaultPrevented || !isPlain(form) || form.hasAttribute('data-hx-post')) return;
  if (event.submitter?.hasAttribute('data-hx-post') || SURE.delete(form)) return;
  event.preventDefault();
  // A second tap sends nothing twice.
  if (ASKING.has(form)) return;
  ASKING.add(form);
  try {
    await fetch(MARK, { method: 'HEAD', cache: 'no-store' });
  } catch {
    say('gone');
    return;
  } finally {
    ASKING.delete(form);
  }
  const fields = [...new FormData(form)].filter(([, value]) => typeof value === 'string');
  sessionStorage.setItem(UNSAVED, JSON.stringify({ path: location.pathname, action: form.action, fields }));
  SURE.add(form);
  form.requestSubmit(event.submitter);
});

// After a fault of the program the page before it is loaded anew: what was typed there is put back.
const putBack = ({ action, fields }) => {
  const form = [...document.forms].find((one) => one.method === 'post' && one.action === action);
  if (!form) return;
  for (const [name, value] of fields)
    for (const field of form.querySelectorAll(`[name="${CSS.escape(name)}"]:not([type=hidden], button)`))
      if (field.type === 'radio' || field.type === 'checkbox') field.checked ||= field.value === value;
      else field.value = value;
  say('back');
};
const unsaved = JSON.parse(sessionStorage.getItem(UNSAVED) ?? 'null');
if (unsaved && document.querySelector('[data-fault]'))
  sessionStorage.setItem(UNSAVED, JSON.stringify({ ...unsaved, failed: true }));
else {
  sessionStorage.removeItem(UNSAVED);
  if (unsaved?.failed && unsaved.path === location.pathname) putBack(unsaved);
}
