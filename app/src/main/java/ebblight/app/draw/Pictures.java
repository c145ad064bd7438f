package ebblight.app.draw;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.draw.Drawing.Lettering;
import ebblight.app.plan.Zone;
import ebblight.core.sky.CameraView;
import ebblight.engine.Engine;
import java.time.LocalDate;
import java.util.Optional;

/** The drawings of a plan as SVG, with what a page needs to lay a cursor over them. */
public final class Pictures {

    /** Size of the small words on a screen. */
    public static final double SMALL = 14;

    private static final String NOT_FOR_NAVIGATION =
            "Predicted water, without weather, surge and waves. Not for navigation: follow the official tables.";

    private Pictures() {}

    /**
     * The strip of a day: {@code svg}, and where its hours begin and end.
     *
     * @param page whether it will stand on a page of the app, in the page's colours
     */
    public static JsonObject strip(DayPlan day, double width, double small, boolean page) {
        DayStrip strip = DayStrip.of(day, width, small);
        SvgDrawing to = new SvgDrawing("strip", page);
        strip.draw(to, 0);
        // On a page the cautions stand beside the strip; a file goes its own way and carries them.
        boolean alone = !page && day.tide().isPresent();
        if (alone) {
            to.text(strip.axis().left(), strip.height() + small, Lettering.of(small, Ink.INK), NOT_FOR_NAVIGATION);
        }
        double height = strip.height() + (alone ? 2 * small : 0);
        JsonObject picture = new JsonObject();
        picture.put("svg", to.document(width, height, "The hours of " + day.day()));
        picture.put("left", strip.axis().x(day.from()));
        picture.put("right", strip.axis().x(day.to()));
        picture.put("width", width);
        picture.put("height", height);
        return picture;
    }

    /** The view through the lens, when there is one: {@code svg}, and how millimetres of the sensor lie on it. */
    public static Optional<JsonObject> lens(DayPlan day, double width, double small, boolean page) {
        Optional<CameraView> view = day.view();
        if (view.isEmpty()) {
            return Optional.empty();
        }
        LensView lens = new LensView(day, view.get(), width, small);
        SvgDrawing to = new SvgDrawing("lens", page);
        lens.draw(to);
        JsonObject picture = new JsonObject();
        picture.put("svg", to.document(width, lens.height(), "Through the lens on " + day.day()));
        picture.put("middleX", lens.middleX());
        picture.put("middleY", lens.middleY());
        picture.put("perMillimetre", lens.scale());
        picture.put("width", width);
        picture.put("height", lens.height());
        return Optional.of(picture);
    }

    /** The weave of the days from {@code first} on: {@code svg}, and where its rows lie. */
    public static JsonObject weave(
            Engine engine,
            JsonObject request,
            JsonArray windows,
            Zone zone,
            LocalDate first,
            LocalDate last,
            LocalDate chosen,
            double width,
            double small) {
        int days = (int) Math.max(1, Math.min(Weave.MOST_DAYS, last.toEpochDay() - first.toEpochDay()));
        double row = days > 16 ? 8.8 : 16;
        Weave weave = Weave.ask(engine, request, windows, first, days, zone, small);
        SvgDrawing to = new SvgDrawing("weave", true);
        weave.draw(to, width, row, chosen);
        double height = Weave.HEAD + days * row + 3;
        JsonObject picture = new JsonObject();
        picture.put("svg", to.document(width, height, days + " days from " + first));
        picture.put("first", first.toString());
        picture.put("days", days);
        picture.put("top", Weave.HEAD);
        picture.put("row", row);
        picture.put("left", Weave.left(width, small));
        picture.put("width", width);
        picture.put("height", height);
        return picture;
    }
}
