package ebblight.app.draw;

/** The few colours of a drawing: a property of the page, and what stands for it on paper. */
enum Ink {
    INK("--ink", 0x0d1618),
    INK_2("--ink-2", 0x35444a),
    INK_3("--ink-3", 0x4f5e64),
    SHEET("--sheet", 0xf7f8f7),
    VEIL("--veil", 0xffffff),
    /** Where the sun is down. */
    DARK("--dark", 0x35444a),
    /** Steps of light that are not wished. */
    STEP("--step", 0xc3c9c8),
    LICHEN("--lane", 0xcfe04a),
    LANE_INK("--lane-ink", 0x0d1618),
    BAND_INK("--band-ink", 0xffffff),
    SEA("--sea", 0x0a4f70),
    SEA_FILL("--sea-fill", 0xb4cdd9),
    WRACK("--wrack", 0x8c2714);

    private final String property;
    private final int rgb;

    Ink(String property, int rgb) {
        this.property = property;
        this.rgb = rgb;
    }

    String property() {
        return property;
    }

    int rgb() {
        return rgb;
    }
}
