// Reads a clip or pictures on the phone: frames at survey width, one by one, with the times they really have.

const WIDTH = 480;
const PER_SECOND = 15;
const MOST_FRAMES = 240;
const SEEK_MILLIS = 4000;

function canvasOf(width, height) {
  const scale = Math.min(1, WIDTH / width);
  const canvas = new OffscreenCanvas(Math.max(1, Math.round(width * scale)), Math.max(1, Math.round(height * scale)));
  return canvas;
}

/** The pixels of what is drawn, three bytes each. */
function rgb(canvas, context) {
  const { data } = context.getImageData(0, 0, canvas.width, canvas.height);
  const bytes = new Uint8Array(3 * canvas.width * canvas.height);
  for (let i = 0, o = 0; i < data.length; i += 4) {
    bytes[o++] = data[i];
    bytes[o++] = data[i + 1];
    bytes[o++] = data[i + 2];
  }
  return bytes;
}

const once = (target, name, fault) =>
  new Promise((done, failed) => {
    target.addEventListener(name, done, { once: true });
    target.addEventListener('error', () => failed(new Error(fault)), { once: true });
  });

/** Seeks and waits for the frame itself; its own time, in seconds. */
function frameAt(video, seconds) {
  return new Promise((done, failed) => {
    const late = setTimeout(() => failed(new Error('late')), SEEK_MILLIS);
    const shown = (time) => {
      clearTimeout(late);
      done(time);
    };
    if (video.requestVideoFrameCallback) {
      video.requestVideoFrameCallback((now, frame) => shown(frame.mediaTime));
    } else {
      video.addEventListener('seeked', () => shown(video.currentTime), { once: true });
    }
    video.currentTime = seconds;
  });
}

async function ofVideo(file, tell, signal) {
  const video = document.createElement('video');
  video.muted = true;
  video.playsInline = true;
  video.preload = 'auto';
  video.src = URL.createObjectURL(file);
  const cannot = `${file.name}: this browser cannot decode the clip. Film with H.264 ("most compatible"), or take it to the desk.`;
  await once(video, 'loadeddata', cannot);
  if (!video.videoWidth || !Number.isFinite(video.duration)) {
    throw new Error(cannot);
  }
  const canvas = canvasOf(video.videoWidth, video.videoHeight);
  const context = canvas.getContext('2d', { willReadFrequently: true });
  context.imageSmoothingQuality = 'high';
  const count = Math.min(MOST_FRAMES, Math.floor(video.duration * PER_SECOND));
  const gap = video.duration / Math.max(1, count);
  const frames = [];
  let before = -1;
  for (let i = 0; i < count; i++) {
    signal?.throwIfAborted();
    tell(i / count, 'reading the clip');
    let time;
    try {
      time = await frameAt(video, (i + 0.5) * gap);
    } catch {
      continue;
    }
    if (time > before) {
      before = time;
      context.drawImage(video, 0, 0, canvas.width, canvas.height);
      frames.push({ seconds: time, bytes: rgb(canvas, context) });
    }
  }
  URL.revokeObjectURL(video.src);
  return { width: canvas.width, height: canvas.height, sourceWidth: video.videoWidth, sourceHeight: video.videoHeight, frames };
}

async function ofPictures(files, tell, signal) {
  const sorted = [...files].sort((a, b) => a.lastModified - b.lastModified || a.name.localeCompare(b.name));
  let canvas = null;
  let context = null;
  let size = null;
  const frames = [];
  for (const [i, file] of sorted.entries()) {
    signal?.throwIfAborted();
    tell(i / sorted.length, 'reading the frames');
    const bitmap = await createImageBitmap(file).catch(() => null);
    if (!bitmap) {
      throw new Error(`${file.name}: this browser cannot read the picture; JPEG and PNG it can.`);
    }
    if (!canvas) {
      size = [bitmap.width, bitmap.height];
      canvas = canvasOf(...size);
      context = canvas.getContext('2d', { willReadFrequently: true });
      context.imageSmoothingQuality = 'high';
    } else if (bitmap.width !== size[0] || bitmap.height !== size[1]) {
      throw new Error(`${file.name}: ${bitmap.width} × ${bitmap.height} pixels, the first frame has ${size.join(' × ')}; frames of one view have one size.`);
    }
    context.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
    frames.push({ seconds: (file.lastModified - sorted[0].lastModified) / 1000, bytes: rgb(canvas, context) });
    bitmap.close();
  }
  return { width: canvas.width, height: canvas.height, sourceWidth: size[0], sourceHeight: size[1], frames };
}

/** Frames that were taken after the one before them; a repeat is none. */
export const laterOnes = (frames) => frames.filter((one, i) => i === 0 || one.seconds > frames[i - 1].seconds);

/** Reads files that were chosen or filmed. Pictures keep all their frames: how far apart they are may yet be typed. */
export async function readFrames(files, tell, signal) {
  const clip = files.length === 1 && files[0].type.startsWith('video/');
  if (!clip) {
    const read = await ofPictures(files, tell, signal);
    if (read.frames.length < 2) {
      throw new Error(`${files[0].name}: only one frame; motion needs several of the same view. Choose them together.`);
    }
    return { ...read, pictures: true };
  }
  const read = await ofVideo(files[0], tell, signal);
  read.frames = laterOnes(read.frames);
  if (read.frames.length < 2) {
    throw new Error(`${files[0].name}: no two frames of it could be read. Take it to the desk.`);
  }
  return read;
}
