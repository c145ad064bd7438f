package ebblight.core.wish;

import ebblight.core.motion.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** The words for what a part shall do, with their limits. */
public enum Word {
    /** More than 15 % of the texture left. */
    AS_SEEN("as seen", 0.15, 1),
    /** 15 % or less left. */
    SOFTENED("softened", 0.05, 0.15),
    /** 5 % or less left. */
    SILKY("silky", 0.02, 0.05),
    /** 2 % or less left. */
    MIST("mist", 0.01, 0.02),
    /** 1 % or less left. */
    GLASS("glass", 0, 0.01),
    /** The lines of a backwash: common practice ¼ to 1½ s. */
    LINES("lines", 0, 0),
    /** Moves less than 1/1500 of the picture's diagonal. */
    SHARP("sharp", 0, 0),
    /** Travels 1/20 of the picture's width or more. */
    STREAKED("streaked", 0, 0),
    /** Swings less than 1/1500 of the diagonal, or leaves 2 % or less. */
    STILL("still", 0, 0.02),
    /** Passers-by leave 2 % or less. */
    GONE("gone", 0, 0.02),
    /** Passages join into unbroken trails. */
    TRAILS("trails", 0, 0);

    private static final Set<Word> OF_WATER = Set.of(AS_SEEN, SOFTENED, SILKY, MIST, GLASS, LINES, SHARP, GONE, TRAILS);
    private static final Set<Word> OF_SWAYING =
            Set.of(AS_SEEN, SOFTENED, SILKY, MIST, GLASS, STILL, SHARP, GONE, TRAILS);
    private static final Set<Word> OF_CLOUD = Set.of(SHARP, STREAKED, AS_SEEN);
    private static final Set<Word> OF_ROCK = Set.of(SHARP, STILL);

    private final String text;
    private final double least;
    private final double most;

    Word(String text, double least, double most) {
        this.text = text;
        this.least = least;
        this.most = most;
    }

    /** As it is written. */
    public String text() {
        return text;
    }

    /** Smallest share of texture left that still goes by this word. */
    double least() {
        return least;
    }

    /** Largest share of texture left. */
    double most() {
        return most;
    }

    /** Reads a word; blanks, hyphens and underscores are the same. */
    static Optional<Word> parse(String typed) {
        String plain = typed.trim().toLowerCase(Locale.ROOT).replace('-', ' ').replace('_', ' ');
        for (Word word : values()) {
            if (word.text.equals(plain)) {
                return Optional.of(word);
            }
        }
        return Optional.empty();
    }

    boolean fits(Kind kind) {
        return switch (kind) {
            case FLOWING -> OF_WATER.contains(this);
            case DRIFTING -> OF_CLOUD.contains(this);
            case SWAYING -> OF_SWAYING.contains(this);
            case FIXED -> OF_ROCK.contains(this);
        };
    }

    /** The words that a part of {@code kind} can have, as they are written. */
    static List<String> fitting(Kind kind) {
        List<String> texts = new ArrayList<>();
        for (Word word : values()) {
            if (word.fits(kind)) {
                texts.add(word.text);
            }
        }
        return texts;
    }

    /** The word for a share of texture left. */
    public static Word forLeft(double left) {
        if (left > AS_SEEN.least) {
            return AS_SEEN;
        }
        if (left > SOFTENED.least) {
            return SOFTENED;
        }
        if (left > SILKY.least) {
            return SILKY;
        }
        return left >= MIST.least ? MIST : GLASS;
    }
}
