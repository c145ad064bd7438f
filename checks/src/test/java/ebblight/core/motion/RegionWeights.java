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

    /** Pull to the prototype's weights: a quarter of it tells more grass and less water, four times less grass (docs/decisions). */
    private static final double HELD = 0.1;

    private static final double OF_DEMO = 1.0 / 3;

    /** Middle and spread of the grain over the scenes. */
    private static final double GRAIN = 0.55;

    private static final double GRAIN_DEVIATION = 0.2;

    private RegionWeights() {}

    /** Prints a row of four a feature and one of biases. */
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

    /** The weights of the prototype and what scales its features; of the grain it knew nothing, so that is held to 0. */
    static RegionFit.Anchor prototype() throws IOException {
        try {
            JsonObject json = JsonParser.object().from(Files.readString(RealClips.weights()));
            JsonArray rows = json.getArray("w");
            double[][] weights = new double[RegionModel.FEATURES + 1][RegionModel.KINDS];
            int known = rows.size() - 1;
            for (int r = 0; r < known; r++) {
                weights[r] = numbers(rows.getArray(r));
            }
            weights[RegionModel.FEATURES] = numbers(rows.getArray(known));
            double[] mean = Arrays.copyOf(numbers(json.getArray("mu")), RegionModel.FEATURES);
            double[] deviation = Arrays.copyOf(numbers(json.getArray("sd")), RegionModel.FEATURES);
            mean[known] = GRAIN;
            deviation[known] = GRAIN_DEVIATION;
            return new RegionFit.Anchor(mean, deviation, weights);
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
