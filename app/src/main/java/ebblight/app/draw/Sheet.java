package ebblight.app.draw;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.draw.Drawing.Lettering;
import ebblight.app.plan.GuardWords;
import ebblight.app.plan.Zone;
import ebblight.core.sky.CameraView;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;

/** One page to take along: the day's strip, the lens, windows, tides, sun, light, packing list, cautions. */
public final class Sheet {

    private static final double WIDE = PDRectangle.A4.getWidth();
    private static final double HIGH = PDRectangle.A4.getHeight();
    private static final double EDGE = 36;
    private static final double SMALL = 9.5;
    private static final double LEADING = 13;
    private static final int MOST_TOLD = 3;

    private final PdfDrawing to;
    private final DayPlan day;
    private final JsonObject answer;

    private Sheet(PdfDrawing to, DayPlan day, JsonObject answer) {
        this.to = to;
        this.day = day;
        this.answer = answer;
    }

    /**
     * The page as a PDF.
     *
     * @param answer {@code when/1}
     * @param name of the place; empty when it has none
     */
    public static byte[] pdf(DayPlan day, JsonObject answer, String name) throws IOException {
        try (PDDocument document = new PDDocument();
                ByteArrayOutputStream bytes = new ByteArrayOutputStream()) {
            PDPage page = new PDPage(PDRectangle.A4);
            document.addPage(page);
            document.getDocumentInformation().setTitle("Plan for " + day.day() + (name.isEmpty() ? "" : ", " + name));
            try (PDPageContentStream stream = new PDPageContentStream(document, page)) {
                new Sheet(new PdfDrawing(stream, HIGH), day, answer).draw(name);
            } catch (UncheckedIOException e) {
                throw new IOException("the sheet could not be drawn: " + e.getMessage(), e);
            }
            document.save(bytes);
            return bytes.toByteArray();
        }
    }

    private void draw(String name) {
        double y = heading(name);
        y = strip(y + 8) + 14;
        double middle = WIDE / 2 + 8;
        double left = facts(EDGE, y, middle - EDGE - 16);
        double right = lens(middle, y, WIDE - EDGE - middle);
        left = packing(EDGE, left + 10, middle - EDGE - 16);
        right = guess(middle, right + 4, WIDE - EDGE - middle);
        double cautions = cautionsTop();
        windows(EDGE, Math.max(left, right) + 16, cautions - 14);
        cautions(cautions);
    }

    private double heading(String name) {
        String date = day.day().getDayOfWeek().getDisplayName(TextStyle.FULL, Locale.ENGLISH) + " " + day.day();
        to.text(EDGE, EDGE + 16, Lettering.of(20, Ink.INK).strong(), date);
        to.text(
                EDGE,
                EDGE + 33,
                Lettering.of(11, Ink.INK_2),
                (name.isEmpty() ? "" : name + ", ") + day.wishes().getString("at") + "   hours in "
                        + day.zone().name());
        to.line(EDGE, EDGE + 41, WIDE - EDGE, EDGE + 41, Ink.INK, 1.5);
        return EDGE + 41;
    }

    private double strip(double y) {
        DayStrip strip = new DayStrip(new HourAxis(day, 76, WIDE - 2 * EDGE, SMALL), 0.7);
        strip.draw(new Shifted(to, EDGE, y), 0);
        return y + strip.height();
    }

    private double title(double x, double y, String words) {
        to.text(x, y + 10, Lettering.of(12, Ink.INK).strong(), words);
        return y + 16;
    }

    private double paragraph(double x, double y, double width, Lettering type, String words) {
        for (String line : to.broken(type, words, width)) {
            y += LEADING;
            to.text(x, y - 3, type, line);
        }
        return y;
    }

    private double facts(double x, double y, double width) {
        Lettering plain = Lettering.of(SMALL, Ink.INK);
        double at = title(x, y, "Sun, moon, light");
        StringBuilder sun = new StringBuilder();
        for (String[] event : new String[][] {
            {"civilDawn", "civil dawn"}, {"sunrise", "sunrise"}, {"sunset", "sunset"}, {"civilDusk", "civil dusk"}
        }) {
            Optional<Instant> when = day.event(event[0]);
            when.ifPresent(i -> sun.append(sun.length() == 0 ? "" : ", ")
                    .append(event[1])
                    .append(' ')
                    .append(day.zone().hour(i)));
        }
        at = paragraph(x, at, width, plain, sun.length() == 0 ? "the sun does not cross the horizon" : sun.toString());
        JsonObject moon = day.sky().getObject("moon");
        at = paragraph(
                x,
                at,
                width,
                plain,
                moon.getString("phaseName") + ", " + Math.round(100 * moon.getDouble("fraction")) + " % lit"
                        + day.event("moonrise")
                                .map(i -> ", rises " + day.zone().hour(i))
                                .orElse("")
                        + day.event("moonset")
                                .map(i -> ", sets " + day.zone().hour(i))
                                .orElse(""));
        for (JsonObject window : day.windows().stream().limit(MOST_TOLD).toList()) {
            JsonArray ev = window.getArray("ev100");
            at = paragraph(
                    x,
                    at,
                    width,
                    plain,
                    "in the window " + day.zone().hour(DayPlan.instant(window, "start")) + " EV100 "
                            + HourAxis.number(ev.getDouble(0), 1) + " to " + HourAxis.number(ev.getDouble(1), 1)
                            + ", give or take a stop under a clear sky, more under cloud");
        }
        if (day.tide().isPresent()) {
            JsonObject tide = day.tide().get();
            JsonObject station = tide.getObject("station");
            at = title(x, at + 10, "Tide, metres above " + tide.getString("datum"));
            List<String> waters = new ArrayList<>();
            for (JsonObject water : Asked.rows(tide.getArray("extremes"))) {
                waters.add(water.getString("kind") + " " + day.zone().hour(DayPlan.instant(water, "time")) + ", "
                        + HourAxis.number(water.getDouble("heightMetres"), 1) + " m");
            }
            at = paragraph(x, at, width, plain, String.join("; ", waters));
            at = paragraph(
                    x,
                    at,
                    width,
                    Lettering.of(8, Ink.INK_3),
                    station == null
                            ? "from a typed table"
                            : station.getString("name") + ": " + station.getString("source") + ", "
                                    + station.getString("licence"));
        }
        return at;
    }

    private double lens(double x, double y, double width) {
        Optional<CameraView> view = day.view();
        if (view.isEmpty()) {
            return y;
        }
        LensView lens = new LensView(day, view.get(), width, SMALL);
        lens.draw(new Shifted(to, x, y));
        return y + lens.height();
    }

    private double packing(double x, double y, double width) {
        JsonObject packing = answer.getObject("packing");
        if (packing == null) {
            return y;
        }
        double at = title(x, y, "To pack");
        List<String> filters =
                packing.getArray("filters").stream().map(String::valueOf).toList();
        at = paragraph(
                x,
                at,
                width,
                Lettering.of(SMALL, Ink.INK).strong(),
                filters.isEmpty() ? "no filter" : "filters " + String.join(", ", filters));
        Lettering plain = Lettering.of(SMALL, Ink.INK);
        JsonObject missing = packing.getObject("missing");
        if (missing != null) {
            at = paragraph(
                    x,
                    at,
                    width,
                    plain,
                    day.zone().dayAndHour(DayPlan.instant(missing, "time")) + ": " + missing.getString("text"));
        }
        return paragraph(x, at, width, plain, "tripod, cable, second battery, cover for the eyepiece, torch, cloth");
    }

    /** Shutter times guessed before any clip, marked as a guess. */
    private double guess(double x, double y, double width) {
        JsonObject guess = answer.getObject("guess");
        double at = y;
        for (String part : guess == null ? List.<String>of() : List.of("water", "cloud")) {
            JsonObject one = guess.getObject(part);
            if (one != null) {
                List<String> limits = Asked.rows(one.getArray("limits")).stream()
                        .map(l -> l.getString("text"))
                        .toList();
                at = paragraph(
                        x, at, width, Lettering.of(8, Ink.INK), "A guess, " + part + ": " + String.join("; ", limits));
            }
        }
        return at;
    }

    private void windows(double x, double y, double bottom) {
        List<JsonObject> windows = Asked.rows(answer.getArray("windows")).stream()
                .sorted(Comparator.comparingInt((JsonObject w) -> day.windows().contains(w) ? 0 : 1)
                        .thenComparingInt(w -> w.getInt("rank")))
                .toList();
        double at = title(x, y, windows.size() == 1 ? "The window" : windows.size() + " windows, this day's first");
        Zone zone = day.zone();
        for (JsonObject window : windows) {
            String head = zone.dayAndHour(DayPlan.instant(window, "start")) + " to "
                    + zone.hour(DayPlan.instant(window, "end")) + ", " + window.getLong("minutes") + " min"
                    + (window.isNumber("frames") ? ", " + window.getLong("frames") + " frames" : "")
                    + ", at the tripod by " + zone.hour(DayPlan.instant(window, "atTripodBy"));
            String water = GuardWords.of(window, zone);
            head += water.isEmpty() ? "" : ", " + water;
            String why = String.join(
                    "; ", window.getArray("why").stream().map(String::valueOf).toList());
            List<String> lines = to.broken(Lettering.of(SMALL, Ink.INK), why, WIDE - 2 * EDGE - 12);
            Lettering strong = Lettering.of(SMALL, Ink.INK).strong();
            double tall = LEADING * (to.broken(strong, head, WIDE - 2 * EDGE).size() + lines.size());
            if (at + tall > bottom) {
                to.text(x, at + LEADING - 3, Lettering.of(SMALL, Ink.INK_3), "more windows do not fit on this page");
                return;
            }
            boolean today = day.windows().contains(window);
            if (today) {
                to.rect(x - 4, at + 1, WIDE - 2 * EDGE + 8, tall + 1, Ink.LICHEN);
            }
            at = paragraph(x, at, WIDE - 2 * EDGE, strong, head);
            at = paragraph(x + 12, at, WIDE - 2 * EDGE - 12, Lettering.of(SMALL, Ink.INK), why);
            at += 2;
        }
    }

    private List<String> cautionLines() {
        List<String> lines = new ArrayList<>();
        Lettering type = Lettering.of(8.5, Ink.INK);
        for (Object caution : answer.getArray("cautions")) {
            lines.addAll(to.broken(type, String.valueOf(caution), WIDE - 2 * EDGE - 10));
        }
        for (Object assumed : answer.getArray("assumed")) {
            lines.addAll(to.broken(type, "Assumed: " + assumed + ".", WIDE - 2 * EDGE - 10));
        }
        for (Object warning : answer.getArray("warnings")) {
            lines.addAll(to.broken(type, "Note: " + warning + ".", WIDE - 2 * EDGE - 10));
        }
        return lines;
    }

    private double cautionsTop() {
        return HIGH - EDGE - 11 * cautionLines().size();
    }

    private void cautions(double top) {
        double y = top;
        to.rect(EDGE, y - 2, 4, HIGH - EDGE - y, Ink.WRACK);
        for (String line : cautionLines()) {
            y += 11;
            to.text(EDGE + 10, y - 3, Lettering.of(8.5, Ink.INK), line);
        }
    }
}
