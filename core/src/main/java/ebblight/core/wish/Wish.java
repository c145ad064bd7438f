package ebblight.core.wish;

import ebblight.core.motion.Kind;
import ebblight.core.motion.RegionMotion;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * One wish: {@code water=silky}, {@code cloud=sharp}, {@code flowing-1=mist!}.
 *
 * @param part as typed: water, cloud, branch, rock, a kind, or the name of a part
 * @param word what it shall be
 * @param closed whether smoother than the word is not wanted either
 */
public record Wish(String part, Word word, boolean closed) {

    /** Reads a wish. */
    public static Wish parse(String typed) {
        int equals = typed.indexOf('=');
        if (equals < 1 || equals == typed.length() - 1) {
            throw new IllegalArgumentException(
                    "\"" + typed + "\" is no wish; write PART=WORD, such as water=silky or cloud=sharp");
        }
        String part = typed.substring(0, equals).trim().toLowerCase(Locale.ROOT);
        String text = typed.substring(equals + 1).trim();
        boolean closed = text.endsWith("!");
        String word = closed ? text.substring(0, text.length() - 1) : text;
        Optional<Word> found = Word.parse(word);
        Optional<Kind> kind = kind(part);
        if (found.isEmpty() || (kind.isPresent() && !found.get().fits(kind.get()))) {
            List<String> words = kind.map(Word::fitting)
                    .orElseGet(() ->
                            List.of(Word.values()).stream().map(Word::text).toList());
            throw new IllegalArgumentException(
                    "\"" + word + "\" is no wish for " + part + "; words are " + String.join(", ", words));
        }
        return new Wish(part, found.get(), closed);
    }

    /** The kind that a word for a part means; empty when it is the name of one part. */
    public static Optional<Kind> kind(String part) {
        return switch (part) {
            case "water", "flowing" -> Optional.of(Kind.FLOWING);
            case "cloud", "clouds", "sky", "drifting" -> Optional.of(Kind.DRIFTING);
            case "branch", "swaying" -> Optional.of(Kind.SWAYING);
            case "rock", "fixed" -> Optional.of(Kind.FIXED);
            default -> Optional.empty();
        };
    }

    /** Whether the wish is about this part. */
    boolean about(RegionMotion region) {
        Optional<Kind> kind = kind(part);
        return kind.isPresent()
                ? kind.get() == region.part().kind()
                : region.part().id().equals(part);
    }

    /** The wish as it is written. */
    public String text() {
        return part + "=" + word.text() + (closed ? "!" : "");
    }
}
