// Tones of the count: low, low, low, high; and the end of an exposure. Made here, nothing is fetched. They are laid on the
// clock of the sound itself, ahead of time: it goes on where timers of a page in the background are held back.

let context = null;
let laid = [];

export function wake() {
  try {
    context = context || new AudioContext();
    context.resume();
  } catch {
    context = null;
  }
}

/** A tone at an instant in milliseconds of the wall's clock; nothing when that is past. */
function tone(hertz, seconds, atMillis) {
  const after = (atMillis - Date.now()) / 1000;
  if (after < 0) {
    return;
  }
  const at = context.currentTime + after;
  const voice = context.createOscillator();
  const volume = context.createGain();
  voice.frequency.value = hertz;
  volume.gain.setValueAtTime(0.25, at);
  volume.gain.exponentialRampToValueAtTime(0.001, at + seconds);
  voice.connect(volume).connect(context.destination);
  voice.start(at);
  voice.stop(at + seconds);
  laid.push(voice);
}

/** Lays the tones of an exposure, in place of any laid before. */
export function lay(openAtMillis, endAtMillis) {
  clear();
  if (context?.state !== 'running') {
    return false;
  }
  [3, 2, 1].forEach((left) => tone(440, 0.18, openAtMillis - 1000 * left));
  tone(880, 0.4, openAtMillis);
  [0, 350, 700].forEach((after) => tone(880, 0.3, endAtMillis + after));
  return true;
}

/** Whether the phone lets the page sound now: a touch wakes it. */
export const awake = () => context?.state === 'running';

/** Calls act when the phone lets the page sound again after it had stopped it: laid tones would come late. */
export function onWake(act) {
  if (context) {
    context.onstatechange = () => context.state === 'running' && act();
  }
}

export function clear() {
  laid.forEach((voice) => voice.disconnect());
  laid = [];
}

/** Shakes the phone; browsers refuse it before the page was touched. */
export function buzz(pattern) {
  if (navigator.userActivation?.hasBeenActive) {
    navigator.vibrate?.(pattern);
  }
}
