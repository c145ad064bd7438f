// What a browser still held unsaved when its page went away, against an outing that has gone on since.

/** The frames of the log that the outing lacks; a frame is known by when it was opened. */
export const framesLeft = (unsaved, outing) => (unsaved.log || []).filter((frame) => !(outing.log || []).some((one) => one.openedAt === frame.openedAt));
