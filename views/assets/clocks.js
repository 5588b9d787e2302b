// Clocks that run to an instant that the page has written beside them. They ask nobody: a reload, a locked phone or a server
// that is gone changes nothing.

const MINUTE = 60_000;
const LAST_MINUTES = 3;
const OFFSET = 'phone before server';
const HALF_A_DAY = 12 * 60 * MINUTE;

const stored = () => {
  const { ms, at } = JSON.parse(sessionStorage.getItem(OFFSET) ?? '{}');
  return at !== undefined && Math.abs(Date.now() - at) < HALF_A_DAY ? ms : undefined;
};

// A page that comes late, out of the browser's store perhaps, makes the difference larger than it is: the least counts.
const phoneBeforeServer = () => {
  const isOld = document.querySelector('.as-kept') !== null;
  const made = isOld ? undefined : document.querySelector('[data-clock-now]')?.dataset.clockNow;
  const known = stored();
  const seen = made === undefined ? 0 : Date.now() - Date.parse(made);
  const ms = known === undefined ? seen : Math.min(known, seen);
  if (made !== undefined) sessionStorage.setItem(OFFSET, JSON.stringify({ ms, at: Date.now() }));
  return ms;
};

const leftText = (ms) => {
  const minutes = Math.ceil(ms / MINUTE);
  if (minutes > LAST_MINUTES)
    return minutes < 60 ? `${minutes} min` : `${Math.floor(minutes / 60)} h ${minutes % 60} min`;
  const seconds = Math.ceil(ms / 1000);
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
};

let sounds;
const ring = () => {
  navigator.vibrate?.([300, 150, 300]);
  if (!sounds) return;
  const [tone, loud] = [sounds.createOscillator(), sounds.createGain()];
  loud.gain.value = 0.2;
  tone.connect(loud).connect(sounds.destination);
  tone.start();
  tone.stop(sounds.currentTime + 0.6);
};

let before = 0;
const running = new Set();
const tick = () => {
  const now = Date.now() - before;
  for (const clock of document.querySelectorAll('[data-clock]')) {
    const left = Date.parse(clock.dataset.clock) - now;
    const text = left > 0 ? leftText(left) : clock.dataset.over;
    if (clock.textContent !== text) clock.textContent = text;
    clock.hidden = false;
    clock.classList.toggle('over', left <= 0);
    if (left > 0) running.add(clock.dataset.clock);
    else if (running.delete(clock.dataset.clock)) ring();
  }
};

// A browser makes a sound only once somebody has touched the page for it.
document.addEventListener('change', ({ target }) => {
  if (!target.closest('[data-sound]')) return;
  sounds = target.checked ? (sounds ?? new AudioContext()) : undefined;
});
const offerSound = () => {
  for (const choice of document.querySelectorAll('[data-sound]')) {
    choice.hidden = false;
    choice.querySelector('input').checked = sounds !== undefined;
  }
};

const begin = () => {
  before = phoneBeforeServer();
  offerSound();
  tick();
};
begin();
setInterval(tick, 1000);
document.addEventListener('visibilitychange', tick);
document.addEventListener('htmx:after:swap', begin);
