package ebblight.core.motion;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonParser;
import com.grack.nanojson.JsonParserException;
import ebblight.core.numeric.Work;
import java.io.IOException;
import java.nio.file.Files;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** Fits the weights that {@link RegionModel} comes with and prints them; tools/region-weights runs it. */
public final class RegionWeights {

    /**
     * Pull to the prototype's weights. 0.1 makes the demo's grass plainer (0.6 to 0.8 of it) and tells less of its water
     * (0.66 to 0.9); unheld weights lose the waterfall.
     */
    private static final double HELD = 0.4;

    private static final double OF_DEMO = 1.0 / 3;

    private RegionWeights() {}

    /** Prints eleven rows of four. */
    public static void main(String[] args) throws IOException {
        for (double[] row : fitted(new AllCores())) {
            System.out.println(Arrays.stream(row)
                    .mapToObj(w -> String.format(Locale.ROOT, "%.5f", w))
                    .collect(Collectors.joining(", ", "{", "},")));
        }
    }

    /** A row of four a feature, then the biases. */
    static double[][] fitted(Work work) throws IOException {
        RegionFit fit = new RegionFit(Optional.of(prototype()), HELD);
        RegionScenes.of(work).addTo(fit, Optional.empty(), OF_DEMO);
        return fit.fit().weights();
    }

    /** The weights of the prototype and what scales its features. */
    static RegionFit.Anchor prototype() throws IOException {
        try {
            JsonObject json = JsonParser.object().from(Files.readString(RealClips.weights()));
            JsonArray rows = json.getArray("w");
            double[][] weights = new double[rows.size()][];
            for (int r = 0; r < weights.length; r++) {
                weights[r] = numbers(rows.getArray(r));
            }
            return new RegionFit.Anchor(numbers(json.getArray("mu")), numbers(json.getArray("sd")), weights);
        } catch (JsonParserException e) {
            throw new IOException(RealClips.weights() + ": is no JSON", e);
        }
    }

    private static double[] numbers(JsonArray array) {
        double[] numbers = new double[array.size()];
        for (int k = 0; k < numbers.length; k++) {
            numbers[k] = array.getDouble(k);
        }
        return numbers;
    }
}
