package ebblight.app.demo;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonWriter;
import ebblight.core.numeric.Work;
import ebblight.demo.Card;
import ebblight.demo.Coast;
import ebblight.demo.Filter;
import ebblight.demo.Flaws;
import ebblight.demo.Shot;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.JpegWriter;
import ebblight.imaging.OutputFile;
import ebblight.imaging.PictureFacts;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** Writes the card of the evening and, beside it, the answers: what is true of every frame. */
final class CardFolder {

    static final String ANSWERS = "answers.json";

    private CardFolder() {}

    static void write(Path folder, Coast coast, Work work) throws IOException {
        Files.createDirectories(folder);
        Card card = new Card(coast, work);
        List<Shot> shots = Card.shots();
        for (int i = 0; i < shots.size(); i++) {
            Shot shot = shots.get(i);
            work.progress((double) i / shots.size(), "filling the card");
            byte[] codes = card.srgb8(shot, work);
            JpegWriter.write(
                    folder.resolve(shot.name() + ".jpg"),
                    CodedPicture.srgb8(Card.WIDTH, card.height(), codes),
                    facts(shot));
        }
        String json = JsonWriter.indent("  ").string().value(answers(card)).done() + "\n";
        OutputFile.write(folder.resolve(ANSWERS), json.getBytes(StandardCharsets.UTF_8));
    }

    /** What the camera itself knew. */
    static PictureFacts facts(Shot shot) {
        return new PictureFacts(
                OptionalDouble.of(shot.exposureSeconds()),
                OptionalDouble.of(shot.fNumber()),
                OptionalDouble.of(shot.isoSpeed()),
                OptionalDouble.of(shot.composition().focalMillimetres()),
                Optional.of(Evening.BEGINS.plusNanos(Math.round(shot.opensSeconds() * 1e9))),
                1,
                List.of(),
                Coast.NAME + ", invented");
    }

    private static JsonObject answers(Card card) {
        JsonArray frames = new JsonArray();
        for (Shot shot : Card.shots()) {
            JsonObject one = new JsonObject();
            one.put("file", shot.name() + ".jpg");
            one.put("composition", word(shot.composition()));
            one.put("note", word(shot.note()));
            one.put("filter", shot.filter().map(Filter::nominalStops).orElse(null));
            frames.add(one);
        }
        JsonObject answers = new JsonObject();
        answers.put("schema", "demo-answers/1");
        answers.put("place", Coast.NAME);
        answers.put("width", Card.WIDTH);
        answers.put("height", card.height());
        answers.put("frames", frames);
        answers.put("filters", filters());
        answers.put("pairs", pairs());
        answers.put("dust", dust(card.flaws()));
        answers.put("hotPixels", hotPixels(card.flaws()));
        return answers;
    }

    private static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static JsonArray filters() {
        JsonArray filters = new JsonArray();
        for (Filter filter : Filter.BAG) {
            JsonObject cast = new JsonObject();
            cast.put("red", filter.red());
            cast.put("green", 1);
            cast.put("blue", filter.blue());
            JsonObject one = new JsonObject();
            one.put("nominalStops", filter.nominalStops());
            one.put("stops", filter.trueStops());
            one.put("cast", cast);
            filters.add(one);
        }
        return filters;
    }

    /** For each filtered frame that is set right, the unfiltered one of the same composition. */
    private static JsonArray pairs() {
        JsonArray pairs = new JsonArray();
        for (Shot with : Card.shots()) {
            if (with.note() == Shot.Note.GOOD && with.filter().isPresent()) {
                for (Shot without : Card.shots()) {
                    if (without.filter().isEmpty() && without.composition() == with.composition()) {
                        JsonObject one = new JsonObject();
                        one.put("without", without.name() + ".jpg");
                        one.put("with", with.name() + ".jpg");
                        one.put("nominalStops", with.filter().get().nominalStops());
                        pairs.add(one);
                    }
                }
            }
        }
        return pairs;
    }

    private static JsonArray dust(Flaws flaws) {
        JsonArray dust = new JsonArray();
        for (Flaws.Spot spot : flaws.spots()) {
            JsonObject one = new JsonObject();
            one.put("x", spot.x());
            one.put("y", spot.y());
            one.put("radius", spot.radius());
            one.put("depth", spot.depth());
            dust.add(one);
        }
        return dust;
    }

    private static JsonArray hotPixels(Flaws flaws) {
        JsonArray hot = new JsonArray();
        for (Flaws.HotPixel pixel : flaws.hotPixels()) {
            JsonObject one = new JsonObject();
            one.put("x", pixel.x());
            one.put("y", pixel.y());
            one.put("channel", List.of("red", "green", "blue").get(pixel.channel()));
            one.put("levelPerSecond", pixel.levelPerSecond());
            hot.add(one);
        }
        return hot;
    }
}
