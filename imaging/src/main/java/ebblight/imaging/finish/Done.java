package ebblight.imaging.finish;

import ebblight.imaging.grain.Grain;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What was done, step by step, in words that make one running sentence. */
final class Done {

    private final List<String> steps = new ArrayList<>();

    List<String> steps() {
        return List.copyOf(steps);
    }

    private void add(String format, Object... values) {
        steps.add(String.format(Locale.ROOT, format, values));
    }

    private static String stops(double stops) {
        return String.format(Locale.ROOT, "%.2f stop %s", Math.abs(stops), stops > 0 ? "lighter" : "darker");
    }

    void grain(double strength, Grain grain) {
        add("grain calmed at strength %.1f by the noise of %s", strength, grain.source());
    }

    void easel(Finish finish, Easel.Cut cut) {
        if (finish.levelDegrees() != 0) {
            add("levelled by %.2f°", finish.levelDegrees());
        }
        if (finish.crop() instanceof Crop.Paper p) {
            add(
                    "under the easel at %s × %s cm, %d × %d pixels",
                    plain(p.pictureWidth()), plain(p.pictureHeight()), cut.width(), cut.height());
        } else if (finish.crop() instanceof Crop.Blades) {
            add("cropped to %d × %d pixels", cut.width(), cut.height());
        }
    }

    private static String plain(double value) {
        double tenths = Math.rint(10 * value) / 10;
        return tenths == Math.rint(tenths) ? Long.toString((long) tenths) : Double.toString(tenths);
    }

    void exposure(double stops) {
        if (stops != 0) {
            add("exposed %s", stops(stops));
        }
    }

    void monochrome(List<OwnColour> colours, Optional<LensFilter> filter) {
        List<String> with = new ArrayList<>();
        List<String> words = OwnColour.words(colours);
        for (int k = 0; k < words.size(); k++) {
            if (colours.get(k).stops() != 0) {
                with.add(words.get(k) + " " + stops(colours.get(k).stops()));
            }
        }
        add("printed black and white%s", with.isEmpty() ? "" : " with " + String.join(" and ", with));
        filter.ifPresent(f -> add("through a filter of hue %s°, factor %s", plain(f.hueDegrees()), plain(f.factor())));
    }

    void parts(List<Finish.Part> parts) {
        for (Finish.Part each : parts) {
            if (each.stops() != 0) {
                add("%s %s", each.word(), stops(each.stops()));
            }
        }
    }

    void tones(Finish finish) {
        if (finish.tone().shadowStops() != 0) {
            add("shadows %s", stops(finish.tone().shadowStops()));
        }
        if (finish.tone().lightStops() != 0) {
            add("lights %s", stops(finish.tone().lightStops()));
        }
        if (finish.localContrastStops() != 0) {
            add(
                    "local contrast %.2f stop %s",
                    Math.abs(finish.localContrastStops()), finish.localContrastStops() > 0 ? "higher" : "lower");
        }
        if (finish.grade() != Finish.UNCHANGED_GRADE) {
            add("on grade %s", plain(finish.grade()));
        }
    }

    void sharpness(Sharpness sharpness) {
        add(
                "edges +%.0f %% over %.2f mm for eyes %.0f cm away on %s paper",
                100 * sharpness.paper().amount(),
                sharpness.millimetres(),
                sharpness.viewingCentimetres(),
                sharpness.paper().word());
    }

    void toning(Toning toning) {
        if (toning.shadowChroma() > 0) {
            add("shadows toned to hue %.0f°, chroma %.0f", toning.shadowHue(), toning.shadowChroma());
        }
        if (toning.lightChroma() > 0) {
            add("lights toned to hue %.0f°, chroma %.0f", toning.lightHue(), toning.lightChroma());
        }
    }
}
