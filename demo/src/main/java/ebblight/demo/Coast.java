package ebblight.demo;

import ebblight.core.numeric.Work;

/**
 * Tarrow Ledge, an invented coast: one scene whose every instant can be asked for. The camera stands on rock and does
 * not move; the rock, the arch and the posts of the pier are the same in every frame. Immutable and shared between
 * threads.
 */
public final class Coast {

    /** What the place is called. */
    public static final String NAME = "Tarrow Ledge";

    /** The story that the demo tells, in three lines. */
    public static final String STORY =
            """
            Tarrow Ledge, twenty minutes after sunset. No boat has called for years; what is left of its pier
            walks out towards the Door. A light wind roughs the water, the last cloud goes over to the right.
            How long must the shutter stay open until the sea lies down round the posts?""";

    /** How fast the light of {@link #evening} fades, stops a minute. */
    private static final double EVENING_FADING = 0.16;

    private final Weather weather;
    private final double fadingStopsPerMinute;
    final Sea sea;
    final DriftingField clouds;
    final DriftingField lace;
    final Tuft tuft;

    private Coast(Weather weather, double fadingStopsPerMinute) {
        this.weather = weather;
        this.fadingStopsPerMinute = fadingStopsPerMinute;
        this.sea = new Sea(weather);
        this.clouds = Clouds.field(5);
        this.lace = Foam.field(9);
        this.tuft = new Tuft(weather, 7);
    }

    /** The evening of the demo outing: the light fades by 0.16 stops a minute. */
    public static Coast evening() {
        return new Coast(Weather.EVENING, EVENING_FADING);
    }

    /** The same place in other weather and steady light. */
    public static Coast in(Weather weather) {
        return new Coast(weather, 0);
    }

    public Weather weather() {
        return weather;
    }

    /** True fading in stops a minute. */
    public double fadingStopsPerMinute() {
        return fadingStopsPerMinute;
    }

    /** The whole cove through a 28 mm lens in pictures {@code width} pixels wide, 3:2; 48 to 4096. */
    public View view(int width, Work work) {
        return new View(this, Lens.cove(width), work);
    }

    /** The arch alone through a 60 mm lens, as {@link #view}. */
    public View archView(int width, Work work) {
        return new View(this, Lens.arch(width), work);
    }

    /** The posts through a 50 mm lens, as {@link #view}. */
    public View postsView(int width, Work work) {
        return new View(this, Lens.posts(width), work);
    }

    /** Open water under the sky beyond the arch through an 86 mm lens, as {@link #view}. */
    public View offingView(int width, Work work) {
        return new View(this, Lens.offing(width), work);
    }
}
