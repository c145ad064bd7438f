// Frames from the phone's camera, one every few seconds by the wall's clock.

import { el } from '../dom.js';

const WIDEST = 960;

/** { done: files, stop(), finish() }; tells { left, frames } every half second */
export function takeFrames(video, gapSeconds, seconds, tell) {
  const files = [];
  let stream = null;
  let timer = 0;
  let lock = null;
  let end = () => {};
  let failed = () => {};
  const off = () => {
    clearTimeout(timer);
    stream?.getTracks().forEach((track) => track.stop());
    lock?.release().catch(() => {});
  };
  const done = (async () => {
    if (!navigator.mediaDevices?.getUserMedia) {
      throw new Error('This page may not use the camera: over plain http, and in some viewers of files, it is refused. Take a picture every ten seconds, or film, then choose them here.');
    }
    try {
      stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: 'environment', width: { ideal: 1280 } }, audio: false });
    } catch (error) {
      throw new Error(`The camera was refused (${error.name}). Allow it for this page, or take pictures and choose them here.`);
    }
    video.srcObject = stream;
    await video.play();
    lock = await navigator.wakeLock?.request('screen').catch(() => null);
    const canvas = el('canvas');
    const scale = Math.min(1, WIDEST / video.videoWidth);
    canvas.width = Math.round(scale * video.videoWidth);
    canvas.height = Math.round(scale * video.videoHeight);
    const context = canvas.getContext('2d');
    const began = Date.now();
    const take = async () => {
      const at = Date.now();
      context.drawImage(video, 0, 0, canvas.width, canvas.height);
      const blob = await new Promise((made) => { canvas.toBlob(made, 'image/jpeg', 0.92); });
      files.push(new File([blob], `watch-${String(files.length + 1).padStart(3, '0')}.jpg`, { type: 'image/jpeg', lastModified: at }));
    };
    await new Promise((finished, broken) => {
      end = finished;
      failed = broken;
      const tick = async () => {
        const now = Date.now();
        if (now >= began + 1000 * gapSeconds * files.length) {
          await take();
        }
        tell({ left: Math.max(0, seconds - (now - began) / 1000), frames: files.length });
        if (now >= began + 1000 * seconds) {
          finished();
        } else {
          timer = setTimeout(tick, 500);
        }
      };
      tick();
    });
    if (files.length < 2) {
      throw new Error('The watch ended before its second frame.');
    }
    return files;
  })().finally(off);
  return { done, finish: () => end(), stop: () => { off(); failed(new DOMException('stopped', 'AbortError')); } };
}
