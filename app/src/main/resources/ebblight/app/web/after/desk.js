// What After asks of the server: sort a card, make a picture, try a finish, write marks, check a filter.

import { asked, json } from '../http-carrier.js';

export const sortCard = (folder, options) => asked('/api/after/sort', { folder }, options);

/** @param request { command, inputs, name, ending, options, documents, files, outputs } */
export const make = (request, options) => asked('/api/after/make', request, options);

/** @param view { frames, strokes } that tell the parts of the picture, where they are known */
export const draft = (path, finish, view, options) => asked('/api/after/draft', { path, finish, ...view }, options);

export const checkFilter = (request, options) => asked('/api/after/filter', request, options);

export const learnFilters = (folder, options) => asked('/api/after/learn', { folder }, options);

export const writeMarks = (frames) => json('/api/after/rate', { method: 'POST', body: JSON.stringify({ frames }) });

export const madeList = async () => (await json('/api/after/made')).made;

export const profilesHere = async () => (await json('/api/after/profiles')).profiles;

export const bringProfile = (file) => json(`/api/after/profiles?name=${encodeURIComponent(file.name)}`, { method: 'POST', body: file });

export const proofOf = (path, profile, intent, options) => asked('/api/after/proof', { path, profile, intent }, options);

export const sizeOf = (path) => json(`/api/picture?path=${encodeURIComponent(path)}`);

export const thumbnail = (path, width) => `/api/thumbnail?path=${encodeURIComponent(path)}&width=${width}`;
