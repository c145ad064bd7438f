package ebblight.app.pocket;

/**
 * Bytes as printable characters, thirteen or fourteen bits in two of them (the scheme known as basE91): 8 % shorter than
 * base64. The characters leave out {@code <}, which could begin a tag.
 */
final class Base91 {

    /** Also in pocket/boot.js, which reads it. */
    private static final String DIGITS =
            "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789" + "!#$%&()*+,./:;=>?@[]^_`{|}~\"-";

    private static final int BASE = 91;

    private Base91() {}

    static String encode(byte[] bytes) {
        StringBuilder text = new StringBuilder(bytes.length * 5 / 4);
        int bits = 0;
        int count = 0;
        for (byte each : bytes) {
            bits |= (each & 0xFF) << count;
            count += 8;
            if (count > 13) {
                // fourteen bits fit while their value stays under 91²: so do the small ones of thirteen
                boolean thirteen = (bits & 8191) > 88;
                int value = thirteen ? bits & 8191 : bits & 16_383;
                bits >>>= thirteen ? 13 : 14;
                count -= thirteen ? 13 : 14;
                text.append(DIGITS.charAt(value % BASE)).append(DIGITS.charAt(value / BASE));
            }
        }
        if (count > 0) {
            text.append(DIGITS.charAt(bits % BASE));
            if (count > 7 || bits >= BASE) {
                text.append(DIGITS.charAt(bits / BASE));
            }
        }
        return text.toString();
    }
}
