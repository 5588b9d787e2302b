// A photo is made smaller in the browser before it is sent: a phone's own is several times as large as anybody looks at.
// Without a signal it is kept and sent later, as taps are.

import { fileActOf } from './acts.js';
import { sendFile } from './waiting.js';

/** Pixels of its long side. */
const LONG_SIDE = 1600;
const QUALITY = 0.85;

const smaller = async (file) => {
  const picture = await createImageBitmap(file, { imageOrientation: 'from-image' });
  const scale = Math.min(1, LONG_SIDE / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  canvas.getContext('2d').drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  const blob = await new Promise((resolve) => canvas.toBlob(resolve, 'image/jpeg', QUALITY));
  return blob && new File([blob], 'photo.jpg', { type: 'image/jpeg' });
};

const put = (input, file) => {
  const files = new DataTransfer();
  files.items.add(file);
  input.files = files.files;
};

const saysOf = (form) => form.querySelector('[data-photo-says]');

// What the browser cannot read is sent as it is: the server says what is wrong with it.
const makeSmaller = async (form) => {
  const input = form.querySelector('input[type=file]');
  const [file] = input.files;
  if (!file) return;
  saysOf(form).textContent = 'Being made smaller …';
  const made = await smaller(file).catch(() => null);
  if (made) put(input, made);
  saysOf(form).textContent = '';
};

/** Sent or kept; false where it is sent as any form. */
const isTaken = async (form) => {
  const input = form.querySelector('input[type=file]');
  if (!input.files[0]) return false;
  saysOf(form).textContent = 'Being sent …';
  const sent = await sendFile(await fileActOf(form, input));
  saysOf(form).textContent = sent && !sent.address ? 'Kept on this phone: it is sent once there is an answer.' : '';
  if (sent?.address) location.assign(sent.address);
  else if (sent) input.value = '';
  return sent !== null;
};

document.addEventListener('submit', async (event) => {
  const form = event.target;
  if (!form.matches?.('[data-photo]') || form.dataset.photo === 'ready') return;
  event.preventDefault();
  await makeSmaller(form);
  if (await isTaken(form)) return;
  form.dataset.photo = 'ready';
  form.requestSubmit();
  // Where the browser comes back to this page as it was, another one can be sent.
  form.dataset.photo = '';
});
