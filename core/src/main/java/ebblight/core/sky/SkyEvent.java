package ebblight.core.sky;

/** What sun and moon do in a day. */
public enum SkyEvent {
    /** Upper limb of the sun comes over the level horizon, air lifting it by 34 minutes of arc. */
    SUNRISE("sunrise"),
    /** Upper limb of the sun goes under. */
    SUNSET("sunset"),
    /** The sun passes the meridian at its highest. */
    TRANSIT("transit"),
    /** The sun's middle rises through −6° without air. */
    CIVIL_DAWN("civilDawn"),
    /** The sun's middle sinks through −6°. */
    CIVIL_DUSK("civilDusk"),
    /** The sun's middle rises through −12°. */
    NAUTICAL_DAWN("nauticalDawn"),
    /** The sun's middle sinks through −12°. */
    NAUTICAL_DUSK("nauticalDusk"),
    /** The sun's middle rises through −18°. */
    ASTRONOMICAL_DAWN("astronomicalDawn"),
    /** The sun's middle sinks through −18°. */
    ASTRONOMICAL_DUSK("astronomicalDusk"),
    /** Upper limb of the moon comes over the level horizon. */
    MOONRISE("moonrise"),
    /** Upper limb of the moon goes under. */
    MOONSET("moonset");

    private final String word;

    SkyEvent(String word) {
        this.word = word;
    }

    /** The name in documents. */
    public String word() {
        return word;
    }
}
