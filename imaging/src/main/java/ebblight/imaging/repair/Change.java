package ebblight.imaging.repair;

/**
 * What one repair did.
 *
 * @param kind word of the repair, such as {@code hotPixels}
 * @param pixels changed
 * @param left places that were looked at and left alone, because it was not sure that they are faults
 * @param words one sentence for a person
 */
public record Change(String kind, int pixels, int left, String words) {}
