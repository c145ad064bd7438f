package ebblight.demo;

import ebblight.core.numeric.Work;

/** The invented coast: one scene whose every instant can be asked for. Immutable and shared between threads. */
public final class Coast {

    /** How fast the evening fades, stops a minute. */
    public static final double FADING_STOPS_PER_MINUTE = 0.16;

    private final Weather weather;
    final Sea sea;
    final DriftingField clouds;
    final DriftingField lace;
    final Tuft tuft;

    private Coast(Weather weather) {
        this.weather = weather;
        this.sea = new Sea(weather);
        this.clouds = Clouds.field(5);
        this.lace = Foam.field(9);
        this.tuft = new Tuft(weather, 7);
    }

    /** The evening of the demo outing. */
    public static Coast evening() {
        return new Coast(Weather.EVENING);
    }

    /** The same place under another wind. */
    public static Coast under(Weather weather) {
        return new Coast(weather);
    }

    public Weather weather() {
        return weather;
    }

    /** The coast in pictures {@code width} pixels wide, 3:2; 48 to 4096. */
    public View view(int width, Work work) {
        return new View(this, Lens.cove(width), work);
    }
}
