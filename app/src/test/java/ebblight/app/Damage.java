package ebblight.app;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/** Bytes as a bad card, a bad copy or a careless editor leaves them; the same seed does the same damage. */
final class Damage {

    /** Values at the ends of what lengths, counts and offsets may be. */
    private static final int[] EDGES = {0, 1, 0x7F, 0x80, 0xFF};

    private static final List<String> ODD_WORDS = List.of(
            "1e999",
            "-1e-999",
            "NaN",
            "0",
            "-1",
            "99999999999999999999",
            "null",
            "\"\"",
            "\"é\\u0000\"",
            "[]",
            "{}",
            "true");

    private static final Pattern WORD = Pattern.compile("\"[^\"\\n]*\"|-?[0-9][0-9.eE+-]*|true|false|null|[A-Za-z]+");

    private Damage() {}

    /** One to eight damages to {@code whole}. */
    static byte[] to(byte[] whole, boolean text, SplittableRandom dice) {
        byte[] damaged = whole.clone();
        for (int k = 1 + dice.nextInt(dice.nextInt(4) == 0 ? 8 : 2); k > 0 && damaged.length > 0; k--) {
            damaged = text && dice.nextInt(4) > 0 ? word(damaged, dice) : bytes(damaged, dice);
        }
        return damaged;
    }

    private static byte[] bytes(byte[] from, SplittableRandom dice) {
        // Half of the damage falls on the first kilobyte, where headers are.
        int at = dice.nextInt(dice.nextBoolean() ? from.length : Math.min(from.length, 1024));
        int length = Math.min(from.length - at, 1 + dice.nextInt(dice.nextInt(3) == 0 ? 512 : 8));
        byte[] to = from.clone();
        switch (dice.nextInt(7)) {
            case 0 -> to[at] ^= (byte) (1 << dice.nextInt(8));
            case 1 -> to[at] = (byte) EDGES[dice.nextInt(EDGES.length)];
            case 2 -> Arrays.fill(to, at, at + length, (byte) EDGES[dice.nextInt(EDGES.length)]);
            case 3 -> to = Arrays.copyOf(from, at);
            case 4 -> to = joined(from, at, from, at + length);
            case 5 -> to = joined(from, at + length, from, at);
            default -> {
                for (int k = at; k < at + length; k++) {
                    to[k] = (byte) dice.nextInt();
                }
            }
        }
        return to;
    }

    /** One word of a text: another in its place, or gone, or twice. */
    private static byte[] word(byte[] from, SplittableRandom dice) {
        String text = new String(from, StandardCharsets.UTF_8);
        List<MatchResult> words = WORD.matcher(text).results().toList();
        if (words.isEmpty()) {
            return bytes(from, dice);
        }
        MatchResult word = words.get(dice.nextInt(words.size()));
        String other =
                switch (dice.nextInt(4)) {
                    case 0 -> "";
                    case 1 -> word.group() + word.group();
                    case 2 -> words.get(dice.nextInt(words.size())).group();
                    default -> ODD_WORDS.get(dice.nextInt(ODD_WORDS.size()));
                };
        return (text.substring(0, word.start()) + other + text.substring(word.end())).getBytes(StandardCharsets.UTF_8);
    }

    /** The first {@code head} bytes of one and what follows {@code tail} in the other. */
    private static byte[] joined(byte[] one, int head, byte[] other, int tail) {
        byte[] both = Arrays.copyOf(one, head + other.length - tail);
        System.arraycopy(other, tail, both, head, other.length - tail);
        return both;
    }
}
