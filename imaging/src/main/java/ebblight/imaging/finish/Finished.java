package ebblight.imaging.finish;

import ebblight.imaging.CodedPicture;
import ebblight.imaging.grain.Grain;
import java.util.List;

/**
 * A finished picture and what was done to it.
 *
 * @param colours of the black-and-white picture, with what was done to each; empty in colour
 * @param grain noise of the picture as it came
 * @param done each step in words, in their order
 */
public record Finished(CodedPicture picture, List<OwnColour> colours, Grain grain, List<String> done) {}
