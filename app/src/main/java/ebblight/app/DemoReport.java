package ebblight.app;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.PreviewPicture;
import ebblight.app.ask.Words;
import ebblight.app.demo.DemoOuting;
import ebblight.app.report.Compared;
import ebblight.app.report.Report;
import ebblight.app.report.ReportPage;
import ebblight.app.report.ReportPictures;
import ebblight.core.numeric.Work;
import ebblight.demo.Coast;
import ebblight.imaging.OutputFile;
import ebblight.imaging.StackResult;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** What the demo leaves to read: report.html, the page to show, and report.txt, the same in words. */
final class DemoReport {

    static final String PAGE = "report.html";

    private final DemoJob job;
    private final List<Report.Truth> truths;

    DemoReport(DemoJob job) {
        this.job = job;
        this.truths = truths(job);
    }

    /** Writes the page, the words, and the preview of the chosen time at full size. */
    void write(Path folder, StackResult stacked, Work work) throws IOException {
        double chosen = DemoJob.chosenSeconds(job.settings, job.wanted);
        double between = TimeWanted.of(job.clashing).fromSeconds();
        Path predicted = folder.resolve("preview-" + DemoOuting.name(chosen) + ".jpg");
        PreviewPicture.write(job.survey, chosen + "s", new JsonObject(), predicted, work);
        ReportPictures pictures = ReportPictures.of(
                Files.readAllBytes(firstOf(job.outing.burst())),
                Files.readAllBytes(predicted),
                ReportPictures.jpeg(stacked.picture()),
                job.survey,
                job.measured,
                chosen,
                between,
                work);
        Report report = new Report(
                Coast.NAME,
                Coast.STORY.lines().toList(),
                job.measured,
                job.wished,
                job.clashing,
                job.settings,
                chosen,
                between,
                pictures,
                new Report.Burst(stacked.frames(), stacked.seconds().orElseThrow()),
                job.compared,
                truths);
        OutputFile.write(folder.resolve(PAGE), ReportPage.of(report, work));
        String words = Coast.STORY + "\n\n" + String.join("\n", lines()) + "\n";
        OutputFile.write(folder.resolve("report.txt"), words.getBytes(StandardCharsets.UTF_8));
    }

    private static Path firstOf(Path burst) throws IOException {
        try (Stream<Path> frames = Files.list(burst)) {
            return frames.sorted().findFirst().orElseThrow(() -> new IOException(burst + ": holds no frame"));
        }
    }

    /** How far what was measured lies from the truth, a line each. */
    List<String> lines() {
        List<String> lines = new ArrayList<>(List.of("Against the truth:"));
        for (Report.Truth t : truths) {
            lines.add("  " + t.what().toLowerCase(Locale.ROOT) + " " + t.truly() + ", measured " + t.measured());
        }
        for (Compared c : job.compared) {
            lines.add("  the preview of " + Words.time(c.seconds()) + " lies " + Words.number(c.decibels(), 1)
                    + " dB from the true exposure (the mean of the clip " + Words.number(c.meanDecibels(), 1) + " dB)");
        }
        return lines;
    }

    private static List<Report.Truth> truths(DemoJob job) {
        List<Report.Truth> truths = new ArrayList<>();
        truths.add(new Report.Truth(
                "The light fades by",
                Words.number(job.outing.fadingStopsPerMinute(), 2) + " stops a minute",
                Words.number(job.measured.getDouble("fadingStopsPerMinute"), 2) + " stops a minute"));
        int width = job.measured.getInt("width");
        for (Object one : job.measured.getArray("regions")) {
            if (one instanceof JsonObject region
                    && region.get("driftPixelsPerSecond") instanceof JsonArray drift
                    && region.getDouble("areaFraction") > 0.05) {
                truths.add(new Report.Truth(
                        "The cloud drifts by",
                        Words.number(job.outing.drift(width).right(), 2) + " px a second of " + width,
                        Words.number(drift.getDouble(0), 2) + " px a second"));
            }
        }
        return truths;
    }
}
