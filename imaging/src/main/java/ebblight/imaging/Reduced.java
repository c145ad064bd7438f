package ebblight.imaging;

import ebblight.core.numeric.Work;
import java.util.function.IntToDoubleFunction;

/** Means of a picture's samples over whole pixels, at most as many as it has. */
record Reduced(int width, int height, int newWidth, int newHeight) {

    /** The mean of {@code value} of the pixels that fall into each new one. */
    float[] of(IntToDoubleFunction value, Work work) {
        float[] out = new float[newWidth * newHeight];
        work.forEach(newHeight, v -> {
            int top = first(v, height, newHeight);
            int bottom = first(v + 1, height, newHeight);
            for (int u = 0; u < newWidth; u++) {
                int left = first(u, width, newWidth);
                int right = first(u + 1, width, newWidth);
                double sum = 0;
                for (int y = top; y < bottom; y++) {
                    for (int x = left; x < right; x++) {
                        sum += value.applyAsDouble(y * width + x);
                    }
                }
                out[v * newWidth + u] = (float) (sum / ((double) (right - left) * (bottom - top)));
            }
        });
        return out;
    }

    private static int first(int at, int pixels, int newPixels) {
        return (int) ((long) at * pixels / newPixels);
    }
}
