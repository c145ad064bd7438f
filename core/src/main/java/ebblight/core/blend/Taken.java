package ebblight.core.blend;

/** What a part of the picture is made of. */
public sealed interface Taken {

    /** The longest time that is understood, one day in seconds. */
    double LONGEST_SECONDS = 86_400;

    /** The mean of all frames. */
    record Whole() implements Taken {}

    /**
     * The mean of the frames within a shutter time.
     *
     * @param seconds the time, above 0
     * @param fromSeconds when it opens, after the first frame
     */
    record Time(double seconds, double fromSeconds) implements Taken {
        public Time {
            if (!(seconds > 0 && seconds <= LONGEST_SECONDS)) {
                throw new IllegalArgumentException(
                        "a shutter time lies above 0 s and at 86400 s or less, was " + seconds);
            }
            if (!(fromSeconds >= 0 && fromSeconds <= LONGEST_SECONDS)) {
                throw new IllegalArgumentException(
                        "a shutter opens 0 s to 86400 s after the first frame, not " + fromSeconds);
            }
        }
    }

    /** The one frame in which what sways is closest to its median. */
    record Lull() implements Taken {}

    /**
     * One frame.
     *
     * @param number its place among the frames, from 1
     */
    record Frame(int number) implements Taken {
        public Frame {
            if (number < 1) {
                throw new IllegalArgumentException("frames count from 1, not " + number);
            }
        }
    }

    /** What stands there when nobody passes. */
    record PeopleGone() implements Taken {}

    /** Everything bright that passes, in one line. */
    record TrailsJoined() implements Taken {}
}
