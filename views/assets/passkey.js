// Passkeys (WebAuthn level 3): what the device answers goes with the form. Where a browser has none, the form stays hidden and the
// password does.

const can = window.isSecureContext && typeof window.PublicKeyCredential?.parseCreationOptionsFromJSON === 'function';

if (can) {
  for (const form of document.querySelectorAll('form[data-passkey]')) form.hidden = false;
  for (const words of document.querySelectorAll('[data-no-passkey]')) words.hidden = true;
}

const ASK = {
  create: (options) =>
    navigator.credentials.create({ publicKey: PublicKeyCredential.parseCreationOptionsFromJSON(options) }),
  get: (options) => navigator.credentials.get({ publicKey: PublicKeyCredential.parseRequestOptionsFromJSON(options) }),
};

const wordsFor = ({ name }) =>
  name === 'InvalidStateError'
    ? 'This device has a passkey for you here already.'
    : 'That did not come about: it was called off, took too long, or there is none here.';

document.addEventListener('click', async ({ target }) => {
  const form = target.closest?.('[data-passkey-button]')?.form;
  if (!form) return;
  const says = form.querySelector('[data-passkey-says]');
  says.textContent = '';
  try {
    const credential = await ASK[form.dataset.passkey](JSON.parse(form.dataset.options));
    form.elements.answer.value = JSON.stringify(credential);
  } catch (fault) {
    says.textContent = wordsFor(fault);
    return;
  }
  form.requestSubmit();
});
