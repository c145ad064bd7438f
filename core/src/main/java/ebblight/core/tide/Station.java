package ebblight.core.tide;

import ebblight.core.sky.Place;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A tide station and its harmonic constants.
 *
 * @param id within the collection it comes from
 * @param name for people
 * @param country two letters (ISO 3166), or empty
 * @param place of the gauge
 * @param datum that heights are above, such as LAT or MLLW; MSL when no other is known
 * @param meanMetres mean sea level above the datum, in metres
 * @param harmonics its constants
 * @param source whose data they are
 * @param licence terms under which they may be used
 */
public record Station(
        String id,
        String name,
        String country,
        Place place,
        String datum,
        double meanMetres,
        List<Harmonic> harmonics,
        String source,
        String licence) {

    private static final double GREATEST_METRES = 20;

    /**
     * A harmonic constant as it was published.
     *
     * @param name of the constituent in any spelling
     * @param amplitudeMetres H, 0 to 20
     * @param phaseDegrees κ against Greenwich, −360 to 720
     */
    public record Harmonic(String name, double amplitudeMetres, double phaseDegrees) {
        public Harmonic {
            if (!(amplitudeMetres >= 0 && amplitudeMetres <= GREATEST_METRES)) {
                throw new IllegalArgumentException(
                        "the amplitude of " + name + " lies between 0 and 20 m, was " + amplitudeMetres);
            }
            if (!(phaseDegrees >= -360 && phaseDegrees <= 720)) {
                throw new IllegalArgumentException(
                        "the phase of " + name + " lies between -360 and 720 degrees, was " + phaseDegrees);
            }
        }
    }

    public Station {
        harmonics = List.copyOf(harmonics);
        if (harmonics.isEmpty()) {
            throw new IllegalArgumentException("station " + id + " has no harmonic constants");
        }
        if (!(Math.abs(meanMetres) <= GREATEST_METRES)) {
            throw new IllegalArgumentException(
                    "mean sea level of station " + id + " lies within 20 m of its datum, was " + meanMetres);
        }
    }

    /** The curve of this station, with all days between two instants at hand. */
    public HarmonicTide curve(double fromEpochSeconds, double toEpochSeconds) {
        List<HarmonicTide.Term> terms = new ArrayList<>();
        for (Harmonic harmonic : harmonics) {
            Optional<Constituent> known = Constituents.named(harmonic.name());
            if (known.isPresent() && harmonic.amplitudeMetres() > 0) {
                terms.add(new HarmonicTide.Term(known.get(), harmonic.amplitudeMetres(), harmonic.phaseDegrees()));
            }
        }
        return new HarmonicTide(terms, meanMetres, fromEpochSeconds, toEpochSeconds);
    }

    /** Constants whose constituent this program does not know and leaves out. */
    public List<Harmonic> unknown() {
        return harmonics.stream()
                .filter(h -> Constituents.named(h.name()).isEmpty())
                .toList();
    }

    /** Amplitude in metres of a constituent by this program's name; 0 when the station lacks it. */
    double amplitudeMetres(String name) {
        return harmonics.stream()
                .filter(h -> Constituents.named(h.name()).stream()
                        .anyMatch(c -> c.name().equals(name)))
                .mapToDouble(Harmonic::amplitudeMetres)
                .sum();
    }

    /** Form number (K1 + O1)/(M2 + S2): below 0.25 two even tides a day, above 3 one, between them uneven ones. */
    public double formNumber() {
        return (amplitudeMetres("K1") + amplitudeMetres("O1")) / (amplitudeMetres("M2") + amplitudeMetres("S2"));
    }
}
