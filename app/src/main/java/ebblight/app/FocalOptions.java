package ebblight.app;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.UsageException;
import ebblight.app.ask.Words;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** A clip filmed through another lens than the picture will be taken with. */
final class FocalOptions {

    private static final double MOST = 8;

    @Option(
            names = "--focal",
            paramLabel = "MM",
            description = "Focal length the clip was filmed with, as it would be on the camera's sensor: a phone's"
                    + " \"35 mm equivalent\" for a full-frame camera.")
    private @Nullable Double focal;

    @Option(
            names = "--view-focal",
            paramLabel = "MM",
            description = "Focal length of the picture to be taken; the clip is rescaled to its view.")
    private @Nullable Double viewFocal;

    /** How many times as long the view's lens is; 1 when nothing was said. */
    double zoom() {
        Double filmed = focal;
        Double view = viewFocal;
        if (filmed == null && view == null) {
            return 1;
        }
        if (filmed == null || view == null) {
            throw new UsageException((filmed == null ? "--view-focal needs --focal" : "--focal needs --view-focal")
                    + " beside it: one is the lens of the clip, the other the lens of the picture");
        }
        checkRange("--focal", filmed);
        checkRange("--view-focal", view);
        double zoom = view / filmed;
        if (zoom > MOST || zoom < 1 / MOST) {
            throw new UsageException("--view-focal: the lenses of clip and picture may differ by a factor of "
                    + Words.number(MOST, 0) + ", not " + Words.number(Math.max(zoom, 1 / zoom), 1));
        }
        return zoom;
    }

    private static void checkRange(String option, double millimetres) {
        if (!(millimetres >= 1 && millimetres <= 3000)) {
            throw new UsageException(option + ": must lie between 1 and 3000 mm, was " + Words.number(millimetres, 1));
        }
    }

    /** Says what a clip of a longer lens cannot show of the view. */
    void warn(JsonObject answer) {
        double zoom = zoom();
        if (zoom < 1 && answer.get("warnings") instanceof JsonArray warnings) {
            warnings.add("the clip shows only the middle " + Words.percent(zoom)
                    + " of the picture's width; sharp and streaked are judged over that part alone");
        }
    }
}
