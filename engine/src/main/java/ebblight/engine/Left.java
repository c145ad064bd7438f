package ebblight.engine;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.core.motion.Measurement;
import ebblight.core.motion.RegionMotion;
import ebblight.core.wish.Demand;
import ebblight.core.wish.Word;

/** Writes what is left of a part on the screen at the listed times, in the words of the scale. */
final class Left {

    private Left() {}

    static JsonArray listed(RegionMotion region) {
        JsonArray left = new JsonArray();
        if (!region.remaining().isEmpty()) {
            for (double seconds : Measurement.listedSeconds()) {
                JsonObject at = new JsonObject();
                double share = Demand.left(region, region.at().apply(seconds).ratio());
                at.put("seconds", seconds);
                at.put("left", share);
                at.put("low", Demand.left(region, region.at().apply(seconds).low()));
                at.put("high", Demand.left(region, region.at().apply(seconds).high()));
                at.put("word", Word.forLeft(share).text());
                left.add(at);
            }
        }
        return left;
    }
}
