package ebblight.app.report;

import ebblight.core.numeric.RgbPicture;

/**
 * A preview beside the true exposure of the same time.
 *
 * @param seconds shutter time
 * @param method how the preview came about
 * @param knownFraction share of the picture that the clip itself shows at that time
 * @param preview in linear light
 * @param truth in linear light, of the same size
 * @param decibels of the preview against the truth
 * @param meanDecibels of the plain mean of the clip against the truth
 */
public record Compared(
        double seconds,
        String method,
        double knownFraction,
        RgbPicture preview,
        RgbPicture truth,
        double decibels,
        double meanDecibels) {}
