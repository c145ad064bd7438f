package ebblight.imaging;

import java.nio.file.Path;

/**
 * A frame that was left out.
 *
 * @param file the file it would have come from
 * @param reason why, in words for a person
 */
public record Skipped(Path file, String reason) {}
