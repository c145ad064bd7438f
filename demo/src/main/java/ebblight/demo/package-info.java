/**
 * An invented coast whose motion is known exactly: the demo outing and the ground truth of the tests.
 *
 * <p>Belongs here: the scene, its light and its sensor. Does not belong here: files; whoever asks for frames writes them.
 */
@NullMarked
package ebblight.demo;

import org.jspecify.annotations.NullMarked;
