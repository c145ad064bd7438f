package ebblight.app.pocket;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

/** Whether the phone page is part of this build. */
public final class BuiltPage {

    private BuiltPage() {}

    /** Skips the test where it is not. */
    public static void assume() {
        assumeTrue(
                PocketPage.class.getResource("/ebblight/pocket/reason.wasm") != null,
                "built without the phone page (-Dpocket.phase=none)");
    }
}
