// A photo is made smaller in the browser before it is sent: a phone's own is several times as large as anybody looks at.

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

// What the browser cannot read is sent as it is: the server says what is wrong with it.
const makeSmaller = async (form) => {
  const input = form.querySelector('input[type=file]');
  const [file] = input.files;
  if (!file) return;
  const says = form.querySelector('[data-photo-says]');
  says.textContent = 'Being made smaller …';
  const made = await smaller(file).catch(() => null);
  if (made) put(input, made);
  says.textContent = '';
};

document.addEventListener('submit', async (event) => {
  const form = event.target;
  if (!form.matches?.('[data-photo]') || form.dataset.photo === 'ready') return;
  event.preventDefault();
  await makeSmaller(form);
  form.dataset.photo = 'ready';
  form.requestSubmit();
  // Where the browser comes back to this page as it was, another one can be sent.
  form.dataset.photo = '';
});
