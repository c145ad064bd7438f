package ebblight.app.report;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Spans;
import ebblight.app.ask.Words;
import ebblight.app.demo.TrueExposure;
import ebblight.core.exposure.Numbers;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** The report as one HTML file that needs no other file, no network and no script. */
public final class ReportPage {

    private static final String WEB = "/ebblight/app/web/";
    private static final int CHOICES = 3;

    private final Report report;
    private final Work work;
    private final StringBuilder html = new StringBuilder();

    private ReportPage(Report report, Work work) {
        this.report = report;
        this.work = work;
    }

    /** The page in UTF-8. */
    public static byte[] of(Report report, Work work) throws IOException {
        ReportPage page = new ReportPage(report, work);
        page.head();
        page.opening();
        page.parts();
        page.axis();
        page.settings();
        page.clash();
        page.previews();
        page.stacked();
        page.truths();
        page.cautions();
        page.html.append("</main></body></html>\n");
        return page.html.toString().getBytes(StandardCharsets.UTF_8);
    }

    private void add(String text) {
        html.append(text);
    }

    private static byte[] resource(String name) throws IOException {
        try (InputStream in = ReportPage.class.getResourceAsStream(name)) {
            return Objects.requireNonNull(in, name).readAllBytes();
        }
    }

    private void head() throws IOException {
        String font = "data:font/woff2;base64,"
                + Base64.getEncoder().encodeToString(resource(WEB + "fonts/atkinson-next.woff2"));
        String tokens = new String(resource(WEB + "styles/tokens.css"), StandardCharsets.UTF_8)
                .replace("../fonts/atkinson-next.woff2", font);
        String style = new String(resource("report.css"), StandardCharsets.UTF_8);
        add("<!doctype html><html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\""
                + " content=\"width=device-width,initial-scale=1\"><title>" + Words.markup(report.name())
                + " · Ebblight</title><style>" + tokens + style + "</style></head><body><header><span class=\"brand\">"
                + Marks.MARK + " Ebblight</span><span class=\"place\"><b>" + Words.markup(report.name())
                + "</b> · an invented coast</span></header><main>");
        sprites("", report.pictures().strips());
        sprites("clash-", report.pictures().clashStrips());
    }

    /** Strips once as symbols of the page, so that the wide and the narrow axis share them. */
    private void sprites(String before, TestStrips strips) {
        add("<svg class=\"unseen\" width=\"0\" height=\"0\" aria-hidden=\"true\">");
        for (Map.Entry<String, byte[]> strip : strips.jpegs().entrySet()) {
            add("<image id=\"" + before + "strip-" + strip.getKey() + "\" width=\""
                    + TestStrips.PIECES * StripSprite.PIECE_WIDTH + "\" height=\"" + StripSprite.PIECE_HEIGHT
                    + "\" preserveAspectRatio=\"none\" href=\"" + ReportPictures.address(strip.getValue()) + "\"/>");
        }
        add("</svg>");
    }

    private static String picture(byte[] jpeg, String alt) {
        return "<img src=\"" + ReportPictures.address(jpeg) + "\" alt=\"" + Words.markup(alt) + "\">";
    }

    private void opening() {
        String[] time = Times.brief(report.chosenSeconds()).split(" ", 2);
        add("<section class=\"opening\"><div class=\"mount\">"
                + picture(report.pictures().predicted(), "The coast at the chosen time") + "</div><div class=\"said\">"
                + "<p class=\"number\">" + time[0] + "</p><p class=\"unit\">"
                + (time.length > 1 && time[1].equals("min") ? "minutes" : "seconds") + "</p><p class=\"verdict\">"
                + verdict() + "</p>");
        for (Object one : report.wished().getArray("windows")) {
            if (one instanceof JsonObject w) {
                add("<p>Window " + Spans.window(w) + ".</p>");
            }
        }
        JsonArray choices = report.settings().getArray("choices");
        if (!choices.isEmpty()) {
            double dial = choices.getObject(0).getDouble("correctedSeconds");
            if (Math.round(dial) != Math.round(report.chosenSeconds())) {
                add("<p>Held open " + Words.say(dial) + ", as the light fades meanwhile.</p>");
            }
        }
        add("<div class=\"story\">");
        add("<p>" + Words.markup(String.join(" ", report.story())) + "</p>");
        add("</div><p class=\"cap\">The picture is a preview, made of " + clip()
                + " of clip: no exposure this long was taken.</p></div></section>");
    }

    private String verdict() {
        AxisModel model =
                model(report.wished(), report.chosenSeconds(), report.pictures().strips(), "");
        long wished = model.parts().stream().filter(p -> !p.wish().isEmpty()).count();
        String who = wished == 1
                ? "The wish holds"
                : wished == 2 ? "Both wishes hold" : "All " + count(wished) + " wishes hold";
        return model.holds() ? who : "One time between: no wish in full";
    }

    private static String count(long n) {
        return n == 3 ? "three" : n == 4 ? "four" : Long.toString(n);
    }

    /** How long the clip is that all was measured on. */
    private String clip() {
        return Words.say(Math.rint(10 * report.measured().getDouble("seconds")) / 10);
    }

    private String oneFrame() {
        return Words.say(report.burst().seconds() / report.burst().frames());
    }

    private void parts() {
        add("<section class=\"two\"><figure>" + picture(report.pictures().frame(), "One frame of the burst")
                + "<figcaption>As the camera saw it: one frame of " + oneFrame() + ".</figcaption></figure><figure>"
                + picture(report.pictures().parts(), "The frame with its parts tinted")
                + "<figcaption>What moves how, found in the clip and by a few drawn lines.</figcaption></figure></section>"
                + "<ul class=\"parts\">");
        for (JsonObject region : AxisReading.rows(report.measured())) {
            String kind = region.getString("kind");
            add("<li class=\"" + kind + "\">" + Marks.seal(kind, 30) + "<div><b>" + Marks.NAMES.get(kind) + "</b> "
                    + motion(region) + "</div></li>");
        }
        add("</ul>");
    }

    private static String motion(JsonObject region) {
        if (region.get("driftPixelsPerSecond") instanceof JsonArray v) {
            double across = Math.abs(v.getDouble(0));
            return "drifts " + Words.number(across, 1) + " px a second "
                    + (v.getDouble(0) > 0 ? "to the right" : "to the left");
        }
        if (region.getString("kind").equals("fixed")) {
            return "stands";
        }
        StringBuilder said = new StringBuilder("left of its detail: ");
        for (Object one : region.getArray("left")) {
            if (one instanceof JsonObject l && List.of(1.0, 8.0, 64.0).contains(l.getDouble("seconds"))) {
                said.append(Words.percent(l.getDouble("left")))
                        .append(" at ")
                        .append(Words.say(l.getDouble("seconds")));
                said.append(" (")
                        .append(Words.percent(l.getDouble("low")).replace(" %", ""))
                        .append("–");
                said.append(Words.percent(l.getDouble("high")))
                        .append(")")
                        .append(l.getDouble("seconds") < 64 ? ", " : "");
            }
        }
        return said.toString();
    }

    private AxisModel model(JsonObject wished, double seconds, TestStrips strips, String before) {
        AxisModel model = AxisReading.of(report.measured(), wished, report.settings(), seconds, strips.raised());
        return before.isEmpty() ? model : model.withStrips(before);
    }

    private void axes(AxisModel model, String id) {
        add(TimeAxis.svg(model, 1240, false, id + "w") + TimeAxis.svg(model, 358, true, id + "n"));
    }

    private void axis() {
        add(
                "<section id=\"axis\"><h2>Every time, before you choose one</h2><p class=\"lead\">Each strip is one patch of the"
                        + " picture at fourteen times, one stop apart. The line under it lies down as detail goes. Where every"
                        + " wish holds, a lane runs through; dots are its likely edge.</p>");
        axes(model(report.wished(), report.chosenSeconds(), report.pictures().strips(), ""), "a");
        add("</section>");
    }

    private void settings() {
        add("<section><h2>Reached with</h2><p class=\"lead\">Light EV "
                + Words.number(report.settings().getDouble("exposureValue100"), 1)
                + " at ISO 100, and fading: the time is longer for it.</p><ol class=\"choices\">");
        JsonArray choices = report.settings().getArray("choices");
        for (int i = 0; i < Math.min(CHOICES, choices.size()); i++) {
            JsonObject c = choices.getObject(i);
            List<String> filters =
                    c.getArray("filters").stream().map(String::valueOf).toList();
            add("<li><dl><div><dt>" + (filters.isEmpty() ? "none" : String.join(" + ", filters))
                    + "</dt><dd>stop filter"
                    + (filters.size() > 1 ? "s" : "") + "</dd></div><div><dt>f/"
                    + Numbers.shortest(c.getDouble("fNumber"), 2)
                    + "</dt><dd>aperture</dd></div><div><dt>" + Numbers.shortest(c.getDouble("iso"), 2)
                    + "</dt><dd>ISO</dd></div><div><dt>" + Times.brief(c.getDouble("correctedSeconds")) + "</dt><dd>"
                    + (c.getString("shutter").equals("bulb") ? "bulb" : "shutter") + "</dd></div></dl><ul>");
            c.getArray("cautions")
                    .forEach(text -> add("<li>" + Words.markup(AxisReading.readable(String.valueOf(text))) + "</li>"));
            add("<li>Exposure ± " + Words.number(c.getDouble("errorRangeStops"), 1)
                    + " stop, until the filters are measured</li></ul></li>");
        }
        add("</ol>");
        ways(report.settings().getArray("ways"));
        add("</section>");
    }

    private void ways(JsonArray ways) {
        if (ways.isEmpty()) {
            return;
        }
        add("<ol class=\"ways\">");
        for (int i = 0; i < ways.size(); i++) {
            add("<li>" + Words.markup(AxisReading.readable(ways.getObject(i).getString("text"))) + "</li>");
        }
        add("</ol>");
    }

    private void clash() {
        if (!(report.clashing().get("conflict") instanceof JsonObject conflict)) {
            return;
        }
        add(
                "<section id=\"clash\"><h2>And if the cloud is to stay sharp?</h2><p class=\"lead\">Then no one time serves. Three ways"
                        + " out:</p>");
        ways(conflict.getArray("ways"));
        axes(model(report.clashing(), report.betweenSeconds(), report.pictures().clashStrips(), "clash-"), "c");
        add("</section>");
    }

    private void previews() throws IOException {
        add("<section><h2>Foretold, and true</h2><p class=\"lead\">This coast is invented, so its true exposures are"
                + " known. Foretold on the left from " + clip()
                + " of clip; on the right what the camera would have got.</p>");
        for (Compared c : report.compared()) {
            double off = 255 * Math.pow(10, -c.decibels() / 20);
            add("<div class=\"pair\"><h3>" + Times.brief(c.seconds()) + "</h3>"
                    + picture(ReportPictures.jpeg(c.preview(), work), "Preview")
                    + picture(ReportPictures.jpeg(asBright(c.truth(), c.preview()), work), "True exposure")
                    + "<p>Off by <b>"
                    + Words.number(off, 1) + "</b> of 255 levels (" + Words.number(c.decibels(), 1)
                    + " dB; the plain mean of the clip " + Words.number(c.meanDecibels(), 1) + " dB). "
                    + (c.method().startsWith("mean")
                            ? "Within the clip: the mean of its first frames."
                            : Words.percent(c.knownFraction()) + " of it is shown by the clip; the rest is likely.")
                    + "</p></div>");
        }
        add("</section>");
    }

    /** The true exposure in the light of the preview: fading is made up for by the settings. */
    private static RgbPicture asBright(RgbPicture picture, RgbPicture as) {
        double gain = TrueExposure.gain(picture, as);
        RgbPicture out = RgbPicture.black(picture.width(), picture.height());
        for (int c = 0; c < 3; c++) {
            for (int p = 0; p < picture.plane(c).length; p++) {
                out.plane(c)[p] = (float) (picture.plane(c)[p] * gain);
            }
        }
        return out;
    }

    private void stacked() {
        add("<section><h2>" + Words.say(report.burst().seconds()) + " without a filter</h2><figure class=\"mount\">"
                + picture(report.pictures().stacked(), "The burst as one exposure")
                + "<figcaption>" + report.burst().frames() + " frames of " + oneFrame()
                + ", added in linear light: light adds up.</figcaption></figure></section>");
    }

    private void truths() {
        add("<section><h2>Measured, and true</h2><table><thead><tr><th></th><th>true</th><th>measured</th></tr></thead>"
                + "<tbody>");
        for (Report.Truth t : report.truths()) {
            add("<tr><th>" + Words.markup(t.what()) + "</th><td>" + Words.markup(t.truly()) + "</td><td>"
                    + Words.markup(t.measured()) + "</td></tr>");
        }
        add("</tbody></table><ul class=\"notes\">");
        for (Object note : report.measured().getArray("warnings")) {
            add("<li>" + Words.markup(AxisReading.readable(String.valueOf(note))) + "</li>");
        }
        add("</ul></section>");
    }

    private void cautions() {
        add("<section class=\"cautions\"><p>Never turn your back on the sea. Water can rise decimetres above any"
                + " prediction, and sets of large waves come without warning: follow the official tables, local warnings"
                + " and signs. Tell someone where you are.</p><p>Never look at the sun through an optical finder;"
                + " neutral-density filters are not solar filters.</p></section>");
    }
}
