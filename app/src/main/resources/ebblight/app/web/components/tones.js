// Tones of the count: low, low, low, high; and the end of an exposure. Made here, nothing is fetched.

let context = null;

export function wake() {
  try {
    context = context || new AudioContext();
    context.resume();
  } catch {
    context = null;
  }
}

export function tone(hertz, seconds = 0.18, after = 0) {
  if (!context) {
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
}

export const low = () => tone(440);
export const high = () => tone(880, 0.4);

export function end() {
  [0, 0.35, 0.7].forEach((after) => tone(880, 0.3, after));
  navigator.vibrate?.([300, 120, 300, 120, 600]);
}
