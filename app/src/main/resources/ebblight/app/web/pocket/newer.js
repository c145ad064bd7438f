// The desk packed an outing again that this phone has: what the desk plans is new, what the phone wrote stays.

const BY_THE_DESK = ['name', 'zone', 'place', 'plan', 'staff'];
const BY_THE_PHONE = ['frames', 'framesPerSecond', 'strokes', 'wishes', 'third', 'pair', 'nearestMetres'];

const only = (from, names) => Object.fromEntries(names.filter((name) => name in from).map((name) => [name, from[name]]));

/** @param known the phone's document, or undefined; packed: the desk's, with the revision it was packed at */
export function newer(known, packed) {
  if (!known || !(packed.packedRevision > (known.packedRevision || 0))) {
    return known || packed;
  }
  const views = packed.views.map((view) => ({ ...view, ...only(known.views.find((one) => one.id === view.id) || {}, BY_THE_PHONE) }));
  const own = known.views.filter((view) => !packed.views.some((one) => one.id === view.id));
  return { ...known, ...only(packed, BY_THE_DESK), views: [...views, ...own], packedRevision: packed.packedRevision, revision: known.revision + 1 };
}
