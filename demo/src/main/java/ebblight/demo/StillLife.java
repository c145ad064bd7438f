package ebblight.demo;

import ebblight.core.numeric.Work;

/**
 * All that stands still before the sea, painted once for a picture size: how much of each pixel it covers, its height
 * over still water (for the waterline) and its colour in scene-linear light.
 */
final class StillLife {

    private static final int STRIP = 32;

    /** Share of the pixel covered, 0 to 1. */
    final float[] cover;
    /** Mean height of what covers the pixel, metres over still water. */
    final float[] height;
    /** Red, green, blue in turn. */
    final float[] rgb;

    StillLife(Lens lens, Work work) {
        int size = lens.width() * lens.height();
        cover = new float[size];
        height = new float[size];
        rgb = new float[3 * size];
        int strips = (lens.width() + STRIP - 1) / STRIP;
        work.forEach(strips, s -> {
            work.check();
            int from = s * STRIP;
            Easel easel = new Easel(lens, from, Math.min(lens.width(), from + STRIP));
            FarShore.paint(easel);
            StoneArch.paint(easel);
            Pier.paint(easel);
            GroundPainter.paint(easel);
            easel.resolve(this);
        });
    }
}
