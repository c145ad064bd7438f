package ebblight.imaging;

/**
 * The parts of the picture by which frames are laid over each other.
 *
 * @param width pixels across of the map of parts; 0 for the whole picture
 * @param height pixels down
 * @param share how much each pixel stands still, 0 to 1, row by row; those above one half count
 */
public record AlignOn(int width, int height, float[] share) {

    public AlignOn {
        if (width < 0 || height < 0 || share.length != width * height) {
            throw new IllegalArgumentException(
                    "a map of " + width + " × " + height + " needs as many values, had " + share.length);
        }
    }

    /** The whole picture: right where most of it stands still. */
    public static AlignOn everything() {
        return new AlignOn(0, 0, new float[0]);
    }

    boolean isEverything() {
        return share.length == 0;
    }
}
