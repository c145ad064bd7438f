package ebblight.app.plan;

import ebblight.app.ask.UsageException;
import ebblight.core.sky.Place;
import ebblight.core.tide.Station;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.zip.GZIPInputStream;
import org.jspecify.annotations.Nullable;

/**
 * The tide stations that come with the program, found by id, by name or by place. Its file and whose data it holds:
 * {@code tools/tide-stations} and NOTICE.
 */
public final class StationCatalogue {

    private static final String FILE = "/ebblight/app/tide/stations.tsv.gz";
    private static final int COLUMNS = 9;

    private static @Nullable StationCatalogue unpacked;

    private final List<Entry> entries;

    private StationCatalogue(List<Entry> entries) {
        this.entries = entries;
    }

    /**
     * A station of the catalogue, its constants still packed.
     *
     * @param key the name in plain lower-case letters, as searches compare it
     */
    public record Entry(String id, String name, String key, Place place, String[] columns) {

        public String country() {
            return columns[2];
        }

        /** How it is shown where a person must choose. */
        public String words() {
            return name + (country().isEmpty() ? "" : ", " + country()) + " (" + id + ")";
        }

        public Station station() {
            List<Station.Harmonic> harmonics = new ArrayList<>();
            for (String constant : columns[8].split(";", -1)) {
                String[] parts = constant.split(" ", -1);
                harmonics.add(
                        new Station.Harmonic(parts[0], Double.parseDouble(parts[1]), Double.parseDouble(parts[2])));
            }
            Source source = Source.of(columns[5]);
            return new Station(
                    id,
                    name,
                    country(),
                    place,
                    columns[6],
                    columns[7].isEmpty() ? 0 : Double.parseDouble(columns[7]),
                    harmonics,
                    source.words,
                    source.licence);
        }
    }

    /** Whose constants a station carries. */
    private enum Source {
        NOAA("N", "US National Oceanic and Atmospheric Administration", "public domain"),
        TICON("T", "TICON-4: Hart-Davis, Dettmering, Seitz (2025), SEANOE, doi 10.17882/109129, rounded", "CC BY 4.0"),
        KARTVERKET("K", "Kartverket (Norwegian Mapping Authority), Hydrographic Service, rounded", "CC BY 4.0");

        private final String letter;
        private final String words;
        private final String licence;

        Source(String letter, String words, String licence) {
            this.letter = letter;
            this.words = words;
            this.licence = licence;
        }

        private static Source of(String letter) {
            for (Source source : values()) {
                if (source.letter.equals(letter)) {
                    return source;
                }
            }
            throw new IllegalStateException("the file of stations names no source for \"" + letter + "\"");
        }
    }

    /** The catalogue, unpacked when it is first asked for. */
    public static synchronized StationCatalogue read() throws IOException {
        StationCatalogue known = unpacked;
        if (known == null) {
            known = unpack();
            unpacked = known;
        }
        return known;
    }

    private static StationCatalogue unpack() throws IOException {
        List<Entry> entries = new ArrayList<>(4000);
        try (InputStream packed = Objects.requireNonNull(StationCatalogue.class.getResourceAsStream(FILE), FILE);
                BufferedReader lines = new BufferedReader(
                        new InputStreamReader(new GZIPInputStream(packed, 1 << 16), StandardCharsets.UTF_8))) {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                String[] columns = line.split("\t", -1);
                if (columns.length != COLUMNS) {
                    throw new IOException("the program's file of tide stations is damaged at line " + entries.size());
                }
                entries.add(new Entry(
                        columns[0],
                        columns[1],
                        plain(columns[1]),
                        Place.of(Double.parseDouble(columns[3]), Double.parseDouble(columns[4])),
                        columns));
            }
        }
        return new StationCatalogue(entries);
    }

    public int size() {
        return entries.size();
    }

    /**
     * The stations a person may mean: the one of this id, else those of this name, else those whose names hold it.
     * Capitals and accents do not matter.
     */
    public List<Entry> search(String typed) {
        String key = plain(typed);
        List<Entry> byId = entries.stream()
                .filter(e -> e.id().equalsIgnoreCase(typed.trim()))
                .toList();
        if (!byId.isEmpty() || key.isEmpty()) {
            return byId;
        }
        List<Entry> byName = entries.stream().filter(e -> e.key().equals(key)).toList();
        return byName.isEmpty()
                ? entries.stream().filter(e -> e.key().contains(key)).toList()
                : byName;
    }

    /** The one station a person means; refuses with the candidates when there are none or several. */
    public Entry one(String option, String typed) {
        List<Entry> found = search(typed);
        if (found.size() == 1) {
            return found.get(0);
        }
        if (found.isEmpty()) {
            throw new UsageException(option + ": no station is called \"" + typed
                    + "\"; give part of its name, its id, or the nearest by --near LAT,LON");
        }
        StringBuilder candidates = new StringBuilder();
        for (Entry entry : found.subList(0, Math.min(12, found.size()))) {
            candidates.append("\n  ").append(entry.words());
        }
        throw new UsageException(option + ": " + found.size() + " stations are called \"" + typed
                + "\"; give one of these ids:" + candidates + (found.size() > 12 ? "\n  …" : ""));
    }

    /** The nearest stations to a place, nearest first. */
    public List<Entry> nearest(Place place, int most) {
        return entries.stream()
                .sorted(Comparator.comparingDouble(e -> place.kilometresTo(e.place())))
                .limit(most)
                .toList();
    }

    /** Lower case, without accents and signs between words. */
    static String plain(String text) {
        String lower = text.toLowerCase(Locale.ROOT)
                .replace("ø", "o")
                .replace("æ", "ae")
                .replace("ß", "ss")
                .replace("ł", "l")
                .replace("đ", "d")
                .replace("ð", "d")
                .replace("þ", "th");
        return Normalizer.normalize(lower, Normalizer.Form.NFD)
                .replaceAll("\\p{M}+", "")
                .replaceAll("[^\\p{L}\\p{N}]+", " ")
                .trim();
    }
}
