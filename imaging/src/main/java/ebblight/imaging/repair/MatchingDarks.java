package ebblight.imaging.repair;

import ebblight.imaging.FrameFacts;
import ebblight.imaging.UnreadableInputException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Which pictures of a folder may be the dark frames of a picture, by what they say of themselves: those of the same camera
 * and ISO, and of the same time where there are some. What a file does not say is not held against it.
 *
 * @param sameTime frames of the picture's own time
 * @param otherTimes the others, of which hot pixels and glow may be scaled
 */
record MatchingDarks(List<Path> sameTime, List<Path> otherTimes) {

    static MatchingDarks of(List<Path> files, FrameFacts picture) {
        List<Path> same = new ArrayList<>();
        List<Path> other = new ArrayList<>();
        for (Path file : files) {
            FrameFacts facts;
            try {
                facts = FrameFacts.of(file);
            } catch (UnreadableInputException e) {
                other.add(file); // named with its reason when it is read
                continue;
            }
            boolean camera = facts.camera().isEmpty()
                    || picture.camera().isEmpty()
                    || facts.camera().equals(picture.camera());
            if (camera && near(facts.isoSpeed(), picture.isoSpeed())) {
                boolean told = facts.exposureSeconds().isPresent()
                        && picture.exposureSeconds().isPresent();
                (told && near(facts.exposureSeconds(), picture.exposureSeconds()) ? same : other).add(file);
            }
        }
        return new MatchingDarks(List.copyOf(same), List.copyOf(other));
    }

    private static boolean near(OptionalDouble one, OptionalDouble other) {
        return one.isEmpty()
                || other.isEmpty()
                || Math.abs(Math.log(one.getAsDouble() / other.getAsDouble()) / Math.log(2)) < DarkFrames.SAME_STOPS;
    }
}
