package ebblight.app.after;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.engine.Fields;
import ebblight.engine.RequestException;
import ebblight.imaging.finish.Crop;
import ebblight.imaging.finish.Finish;
import ebblight.imaging.finish.LensFilter;
import ebblight.imaging.finish.Monochrome;
import ebblight.imaging.finish.OwnColour;
import ebblight.imaging.finish.Sharpness;
import ebblight.imaging.finish.Tone;
import ebblight.imaging.finish.Toning;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;

/** A saved finish, {@code finish/1}: what docs/schemas/finish.md describes. */
public final class FinishFile {

    private static final Set<String> KNOWN = Set.of(
            "schema",
            "name",
            "level",
            "crop",
            "exposure",
            "tone",
            "parts",
            "grade",
            "blackAndWhite",
            "toning",
            "localContrast",
            "grain",
            "sharpness",
            "printWidthCentimetres");

    private FinishFile() {}

    /**
     * The finish that a document asks for.
     *
     * @throws RequestException naming the field that cannot be meant
     */
    public static Finish read(JsonObject document) {
        Fields fields = new Fields(document, "");
        if (!"finish/1".equals(fields.text("schema"))) {
            throw new RequestException("schema", "must be finish/1, was " + fields.text("schema"));
        }
        for (String key : document.keySet()) {
            if (!KNOWN.contains(key)) {
                throw new RequestException(
                        key,
                        "is no part of a finish; known are level, crop, exposure, tone, parts,"
                                + " grade, blackAndWhite, toning, localContrast, grain, sharpness and printWidthCentimetres");
            }
        }
        return checked(
                "",
                () -> new Finish(
                        fields.number("level", 0),
                        fields.has("crop") ? crop(fields.part("crop")) : new Crop.Whole(),
                        fields.number("exposure", 0),
                        fields.has("tone") ? tone(fields.part("tone")) : new Tone(0, 0),
                        parts(fields),
                        fields.number("grade", Finish.UNCHANGED_GRADE),
                        fields.has("blackAndWhite")
                                ? Optional.of(monochrome(fields.part("blackAndWhite")))
                                : Optional.empty(),
                        fields.has("toning") ? toning(fields.part("toning")) : Toning.NONE,
                        fields.number("localContrast", 0),
                        fields.number("grain", 0),
                        fields.has("sharpness") ? Optional.of(sharpness(fields.part("sharpness"))) : Optional.empty(),
                        fields.has("printWidthCentimetres")
                                ? Optional.of(fields.number("printWidthCentimetres"))
                                : Optional.empty()));
    }

    /** What a record refuses, with the field in front. */
    private static <T> T checked(String field, Supplier<T> made) {
        try {
            return made.get();
        } catch (RequestException e) {
            throw e;
        } catch (IllegalArgumentException e) {
            String message = String.valueOf(e.getMessage());
            int colon = message.indexOf(": ");
            throw field.isEmpty() && colon > 0
                    ? new RequestException(message.substring(0, colon), message.substring(colon + 2))
                    : new RequestException(field, message);
        }
    }

    private static Crop crop(Fields crop) {
        if (crop.has("paper")) {
            double[] paper = pair(crop, "paper", "width and height in centimetres, such as [40, 30]");
            double[] at =
                    crop.has("at") ? pair(crop, "at", "fractions 0 to 1, such as [0.5, 0.5]") : new double[] {0.5, 0.5};
            return checked("crop", () -> new Crop.Paper(paper[0], paper[1], crop.number("border", 0), at[0], at[1]));
        }
        return checked(
                "crop",
                () -> new Crop.Blades(
                        crop.number("left", 0),
                        crop.number("top", 0),
                        crop.number("right", 1),
                        crop.number("bottom", 1)));
    }

    private static double[] pair(Fields fields, String name, String expected) {
        double[] values = fields.numbers(name);
        if (values.length != 2) {
            throw new RequestException(fields.path(name), "must be two numbers: " + expected);
        }
        return values;
    }

    private static Tone tone(Fields tone) {
        return checked("tone", () -> new Tone(tone.number("shadows", 0), tone.number("lights", 0)));
    }

    private static List<Finish.Part> parts(Fields fields) {
        return fields.parts("parts").stream()
                .map(part ->
                        checked(part.path("stops"), () -> new Finish.Part(part.text("region"), part.number("stops"))))
                .toList();
    }

    private static Monochrome monochrome(Fields bw) {
        List<OwnColour> colours = new ArrayList<>();
        for (Fields each : bw.parts("colours")) {
            double[] lab = each.numbers("lab");
            if (lab.length != 3) {
                throw new RequestException(each.path("lab"), "must be three numbers: L*, a*, b*");
            }
            colours.add(checked(
                    each.path("stops"),
                    () -> new OwnColour(lab[0], lab[1], lab[2], each.number("share", 0), each.number("stops", 0))));
        }
        Optional<LensFilter> filter = Optional.empty();
        if (bw.has("filter")) {
            Fields f = bw.part("filter");
            filter = Optional.of(
                    checked("blackAndWhite.filter", () -> new LensFilter(f.number("hueDegrees"), f.number("factor"))));
        }
        return new Monochrome(colours, filter);
    }

    private static Toning toning(Fields toning) {
        return checked("toning", () -> {
            double[] shadows = tint(toning, "shadows");
            double[] lights = tint(toning, "lights");
            return new Toning(shadows[0], shadows[1], lights[0], lights[1]);
        });
    }

    private static double[] tint(Fields toning, String name) {
        if (!toning.has(name)) {
            return new double[2];
        }
        Fields part = toning.part(name);
        return new double[] {part.number("hueDegrees"), part.number("chroma")};
    }

    private static Sharpness sharpness(Fields part) {
        return checked(
                "sharpness",
                () -> new Sharpness(
                        part.number("viewingCentimetres"), paper(part.path("paper"), part.text("paper", "matt"))));
    }

    /** A surface by its word. */
    public static Sharpness.Paper paper(String field, String word) {
        for (Sharpness.Paper each : Sharpness.Paper.values()) {
            if (each.word().equals(word.toLowerCase(Locale.ROOT))) {
                return each;
            }
        }
        throw new RequestException(
                field,
                "must be one of "
                        + String.join(
                                ", ",
                                Arrays.stream(Sharpness.Paper.values())
                                        .map(Sharpness.Paper::word)
                                        .toList())
                        + ", was " + word);
    }

    /** Colours as they stand in a saved finish and in the answer. */
    public static JsonArray colours(List<OwnColour> colours) {
        JsonArray array = new JsonArray();
        List<String> words = OwnColour.words(colours);
        for (OwnColour each : colours) {
            JsonObject one = new JsonObject();
            JsonArray lab = new JsonArray();
            for (double v : new double[] {each.lightness(), each.a(), each.b()}) {
                lab.add(Math.rint(10 * v) / 10 + 0.0);
            }
            one.put("lab", lab);
            one.put("word", words.get(array.size()));
            one.put("share", Math.rint(1000 * each.share()) / 1000);
            one.put("stops", Math.rint(1000 * each.stops()) / 1000 + 0.0);
            array.add(one);
        }
        return array;
    }
}
