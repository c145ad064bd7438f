package ebblight.demo;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Long exposures as means of instants. Each stretch of time between two wanted exposures is cut into at most
 * {@link #PIECES} pieces that are summed apart and then added in order, so that the result does not depend on how many
 * threads there are.
 */
final class Exposures {

    static final int FRAMES_AT_LEAST = 4;
    /** A minute at eight a second: waves of a longer stretch are as well mixed by instants that lie further apart. */
    static final int FRAMES_AT_MOST = 480;

    private static final int PIECES = 8;

    private final View view;
    private final Work work;
    private final int samples;

    Exposures(View view, Work work) {
        this.view = view;
        this.work = work;
        this.samples = view.width() * view.height();
    }

    List<RgbPicture> from(double startSeconds, List<Double> seconds, double perSecond) {
        double before = 0;
        double[] gathered = new double[3 * samples];
        List<RgbPicture> exposures = new ArrayList<>();
        for (double until : seconds) {
            if (!(until > before) || !(perSecond > 0)) {
                throw new IllegalArgumentException(
                        "exposures must be above 0 s and rise, frames a second above 0, were " + seconds + " s at "
                                + perSecond + " a second");
            }
            gather(startSeconds + before, until - before, perSecond, gathered);
            exposures.add(mean(gathered, until));
            before = until;
        }
        return exposures;
    }

    /** Adds light times seconds. */
    private void gather(double startSeconds, double seconds, double perSecond, double[] gathered) {
        int frames = (int) Math.max(FRAMES_AT_LEAST, Math.min(FRAMES_AT_MOST, Math.ceil(seconds * perSecond)));
        int pieces = Math.min(PIECES, frames);
        double[][] sums = new double[pieces][];
        work.forEach(pieces, piece -> {
            double[] sum = new double[3 * samples];
            View.Space space = view.space();
            RgbPicture frame = RgbPicture.black(view.width(), view.height());
            for (int i = piece * frames / pieces; i < (piece + 1) * frames / pieces; i++) {
                work.check();
                for (int c = 0; c < 3; c++) {
                    Arrays.fill(frame.plane(c), 0);
                }
                view.paint(startSeconds + (i + 0.5) * seconds / frames, frame, space);
                for (int c = 0; c < 3; c++) {
                    float[] plane = frame.plane(c);
                    for (int p = 0; p < samples; p++) {
                        sum[c * samples + p] += plane[p];
                    }
                }
            }
            sums[piece] = sum;
        });
        double weight = seconds / frames;
        for (double[] sum : sums) {
            for (int i = 0; i < sum.length; i++) {
                gathered[i] += weight * sum[i];
            }
        }
    }

    private RgbPicture mean(double[] gathered, double seconds) {
        RgbPicture mean = RgbPicture.black(view.width(), view.height());
        for (int c = 0; c < 3; c++) {
            for (int p = 0; p < samples; p++) {
                mean.plane(c)[p] = (float) (gathered[c * samples + p] / seconds);
            }
        }
        return mean;
    }
}
