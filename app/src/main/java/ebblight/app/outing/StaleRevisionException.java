package ebblight.app.outing;

import com.grack.nanojson.JsonObject;

/** Somebody else has written the outing since it was read: carries the newer document. */
public final class StaleRevisionException extends RuntimeException {
    private static final long serialVersionUID = 1;

    private final transient JsonObject newer;

    StaleRevisionException(JsonObject newer) {
        super("the outing was changed elsewhere");
        this.newer = newer;
    }

    public JsonObject newer() {
        return newer;
    }
}
