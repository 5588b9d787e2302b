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

const showWhatNeedsScript = (root) => {
  for (const element of root.querySelectorAll('[data-copy][hidden]')) element.hidden = false;
};
showWhatNeedsScript(document);

// What was just done, or what was wrong, is where reading goes on: the button that was pressed may be gone.
document.addEventListener('htmx:after:swap', (event) => {
  showWhatNeedsScript(document);
  if (event.detail?.ctx?.target?.id !== 'page') return;
  document.querySelector('.form-errors, .notice')?.focus({ preventScroll: true });
});
