package ebblight.demo;

import ebblight.core.motion.Kind;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;

/** A picture whose every instant can be asked for, and of which is known how it moves. Shared between threads. */
public interface Scene {

    int width();

    int height();

    /** An instant in scene-linear light without noise. */
    RgbPicture frame(double timeSeconds);

    /** How every pixel truly moves, row by row. */
    Kind[] kinds(Work work);
}
