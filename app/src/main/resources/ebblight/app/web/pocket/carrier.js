// Stands in for the local server: the same questions as on the desk, answered inside the page. The outing comes packed with
// the page and lives on in the phone's own storage; frames are read here, the engine runs in a worker.

import * as reason from './reason.js';
import * as keep from './keep.js';
import { packedOuting } from './packed.js';
import { laterOnes, readFrames } from './clip.js';
import { newer } from './newer.js';
import { linearPicture, smaller, stripOf } from './draw.js';
import { forgetOthers, freeName, recall, remember } from './remembered.js';

const FIRST = -9;
const LAST = 30;
/** Answers with a map of the picture beside them, and its name. */
const MAPS = { 'measure/1': 'regions', 'parts/1': 'regions', 'wash/1': 'wash' };
const clips = new Map();
const blobs = new Map();
let handed = null;
let batches = new Map();

export class Problem extends Error {
  constructor(status, document) {
    super(document.problem);
    this.status = status;
    this.document = document;
  }
}

const refuse = (status, problem, more = {}) => {
  throw new Problem(status, { problem, ...more });
};

/** Keeps something under a new address. */
function address(value) {
  const at = `pocket:${blobs.size + 1}`;
  blobs.set(at, value);
  return at;
}

const keyOf = (packed) => `outing ${packed.outing.name} ${packed.outing.place?.at || ''}`;
// frames stay on the desk
const asPacked = (packed) => ({ ...packed.outing, revision: packed.outing.revision || 1, packedRevision: packed.outing.revision || 1, views: packed.outing.views.map(({ frames, ...view }) => view) });

async function outing() {
  const packed = await packedOuting();
  const document = await keep.change(keyOf(packed), (known) => newer(known, asPacked(packed)));
  return {
    outing: document,
    folder: keyOf(packed),
    beside: await keep.lasts(),
    keptIn: 'this tab',
    keptWords: 'This browser keeps nothing once the tab is closed. Save or send the log (After) before you close it.',
    now: new Date().toISOString(),
    inputs: [...clips.keys()].map((path) => ({ path, clip: true, frames: (clips.get(path).frames || clips.get(path).files).length, bytes: 0 })),
  };
}

async function writeOuting(document) {
  let newer = null;
  const written = await keep.change(keyOf(await packedOuting()), (known) => {
    if (known && known.revision !== document.revision) {
      newer = known;
      return known;
    }
    return { ...document, revision: document.revision + 1 };
  });
  if (newer) {
    refuse(409, 'The outing was changed in another tab.', { newer });
  }
  return { revision: written.revision };
}

/** The bag: one's own, or that of the page, which may be a teacher's. Own is what was changed on this phone. */
async function kit() {
  const own = await keep.read('kit');
  const whose = own && (await keep.read('whose')) !== 'page' ? 'own' : 'page';
  // a copy: the page changes what it is given, and the bag of the page is to stay as it came
  return { ...structuredClone(whose === 'own' ? own : (await packedOuting()).kit), whose };
}

async function writeKit({ whose, ...bag }) {
  await keep.change('kit', () => bag);
  await keep.change('whose', () => 'own');
  return kit();
}

/** Puts the other bag on the page; without one of one's own, that begins as the page's. */
async function takeBag(whose) {
  const packed = await packedOuting();
  await keep.change('kit', (own) => own || packed.kit);
  await keep.change('whose', () => whose);
  return kit();
}

async function drop(query, file, options) {
  const batch = query.get('batch');
  const name = batch ? query.get('name') : await freeName(query.get('name'));
  if (!batch) {
    const read = await readFrames([file], options.tell || (() => {}), options.signal);
    clips.set(name, read);
    return { path: name, folder: name };
  }
  const files = batches.get(batch) || [];
  files.push(file);
  batches.set(batch, files);
  clips.set(batch, { files });
  // the files themselves stay here, with the time at which each was taken
  return { path: `${batch}/${name}`, folder: batch, timed: true };
}

async function clipOf(path, options) {
  const clip = clips.get(path);
  if (!clip) {
    refuse(404, 'The clip is not on this page any more: phones keep clips only while the page is open. Choose it again; the wishes and strokes are kept.');
  }
  if (clip.files) {
    const read = await readFrames(clip.files, options.tell || (() => {}), options.signal);
    clips.set(path, read);
    return read;
  }
  return clip;
}

/** The frames of pictures as typed, one after the other; else those that say by their times that they came later. */
function timed(clip, fps) {
  if (!clip.pictures) {
    return clip;
  }
  clip.timed ||= new Map();
  if (!clip.timed.has(fps)) {
    const frames = fps ? clip.frames.map((one, i) => ({ ...one, seconds: i / fps })) : laterOnes(clip.frames);
    clip.timed.set(fps, { ...clip, frames });
  }
  const known = clip.timed.get(fps);
  if (known.frames.length < 2) {
    refuse(422, 'The pictures do not say when they were taken: all have one time.', { needs: 'fps' });
  }
  return known;
}

/** Describes the frames for the engine, and hands them over when they are others than last time. */
async function framesOf(request, options) {
  const { path, fps } = request.frames;
  const clip = timed(await clipOf(path, { ...options, tell: (fraction, stage) => options.onProgress?.({ fraction: 0.4 * fraction, stage, secondsLeft: null }) }), fps);
  if (handed !== clip) {
    await reason.forget();
    for (const [i, frame] of clip.frames.entries()) {
      await reason.put(`clip/${i}`, frame.bytes);
    }
    handed = clip;
  }
  const times = clip.frames.map((one) => one.seconds - clip.frames[0].seconds);
  const gaps = times.slice(1).map((time, i) => time - times[i]).sort((a, b) => a - b);
  return {
    blob: 'clip', coding: 'srgb8', width: clip.width, height: clip.height, timesSeconds: times,
    sourceWidth: clip.sourceWidth, sourceHeight: clip.sourceHeight, sourceFrames: times.length,
    sourceFps: (times.length - 1) / times.at(-1), medianGapSeconds: gaps[gaps.length >> 1],
  };
}

async function pictureAt(node, request, frames, options) {
  const { path, ...plain } = frames;
  const asked = { schema: 'preview/1', frames: plain, time: `${Math.pow(2, node / 3)}s`, pictureBlob: 'picture', ...(request.strokes ? { strokes: request.strokes } : {}) };
  const facts = await reason.answer(asked, options);
  const floats = new Float32Array((await reason.get('picture')).buffer);
  return { facts, picture: linearPicture(floats, facts.width, facts.height) };
}

/** Pictures at whole stops are kept small with the answers; those between are made from the clip alone. */
const kept = (request) => ['measure/1', 'parts/1', 'wish/1', 'wash/1'].includes(request.schema) || (request.schema === 'preview/1' && request.node % 3 === 0);

async function ask(request, options = {}) {
  if (!request.frames) {
    return { answer: await reason.answer(request, options), blobs: {} };
  }
  const { path } = request.frames;
  if (!clips.has(path)) {
    const known = kept(request) && (await recall(path, request));
    if (known) {
      return { answer: known.answer, blobs: Object.fromEntries(Object.entries(known.blobs).map(([name, blob]) => [name, address(blob)])) };
    }
  }
  const whole = await askOfClip(request, options);
  if (kept(request)) {
    const held = await Promise.all(Object.entries(whole.blobs).map(async ([name, at]) => [name, await smaller(blobs.get(at))]));
    await remember(path, request, { answer: whole.answer, blobs: Object.fromEntries(held) });
  }
  if (request.schema === 'measure/1') {
    const { outing: { views } } = await outing();
    await forgetOthers([path, ...views.map((view) => view.frames).filter(Boolean)]);
  }
  return whole;
}

async function askOfClip(request, options) {
  const frames = await framesOf(request, options);
  const told = options.onProgress && (({ fraction, stage }) => options.onProgress({ fraction: 0.4 + 0.6 * fraction, stage, secondsLeft: null }));
  const seen = { ...options, onProgress: told };
  if (request.schema === 'preview/1') {
    const { facts, picture } = await pictureAt(Math.max(FIRST, Math.min(LAST, request.node)), request, frames, seen);
    return { answer: facts, blobs: { picture: address(picture) } };
  }
  if (request.schema === 'strip/1') {
    return strip(request, frames, seen);
  }
  const map = MAPS[request.schema];
  const answer = await reason.answer({ ...request, frames, ...(map ? { [`${map}Blob`]: map } : {}) }, seen);
  if (map && answer.regions?.length !== 0) {
    const bytes = new Uint8Array((await reason.get(map)).buffer);
    return { answer: { ...answer, mapWidth: frames.width, mapHeight: frames.height, skipped: [] }, blobs: { [map]: address(bytes) } };
  }
  return { answer, blobs: {} };
}

async function strip(request, frames, options) {
  const every = request.everyThirds || 3;
  const pictures = [];
  for (let node = FIRST; node <= LAST; node += every) {
    options.signal?.throwIfAborted();
    pictures.push((await pictureAt(node, request, frames, options)).picture);
  }
  const strips = [];
  const made = {};
  for (const crop of request.crops) {
    const one = await stripOf(pictures, crop);
    made[crop.id] = one.href;
    strips.push({
      id: crop.id, raised: one.raised, pieces: pictures.length, pieceWidth: one.pieceWidth, pieceHeight: one.pieceHeight,
      contrast: one.shares.map((share, i) => ({ seconds: Math.pow(2, (FIRST + every * i) / 3), share })),
    });
  }
  return { answer: { schema: 'strip/1', firstThird: FIRST, everyThirds: every, strips }, blobs: made };
}

/** The water that was packed: a station's constants, the rows of a file of waters. */
async function water() {
  const { table, station } = await packedOuting();
  return { ...(table ? { table } : {}), ...(station ? { station } : {}) };
}

const routes = {
  'GET /api/water': water,
  'GET /api/outing': outing,
  'PUT /api/outing': (query, body) => writeOuting(JSON.parse(body)),
  'GET /api/kit': kit,
  'PUT /api/kit': (query, body) => writeKit(JSON.parse(body)),
  'POST /api/kit': (query) => takeBag(query.get('whose')),
  'POST /api/drop': drop,
};

/** What the local server would answer to a path. */
export async function json(path, options = {}) {
  const [name, query = ''] = path.split('?');
  const route = routes[`${options.method || 'GET'} ${name}`];
  if (!route) {
    refuse(404, 'This is done on the desk, not on the phone.');
  }
  return route(new URLSearchParams(query), options.body, options);
}

export const call = async (path, options) => new Response(JSON.stringify(await json(path, options)), { headers: { 'content-type': 'application/json' } });

export const httpCarrier = {
  answer: ask,
  make: () => refuse(404, 'Full-size pictures are made on the desk.'),
  picture: (at) => createImageBitmap(blobs.get(at)),
  bytes: async (at) => blobs.get(at),
};

reason.warm().catch(() => {});
