package ebblight.app;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;

/**
 * Ctrl-C: long work is told to stop, and the process waits a moment so that unfinished files can be taken away. The
 * runtime then ends with code 130 by itself.
 */
final class Interruption {

    private static final int PATIENCE_SECONDS = 10;
    private static final AtomicBoolean WANTED = new AtomicBoolean();
    private static final CountDownLatch OVER = new CountDownLatch(1);

    private Interruption() {}

    /** True once the person has pressed Ctrl-C. */
    static boolean wanted() {
        return WANTED.get();
    }

    static void watch() {
        Runtime.getRuntime().addShutdownHook(new Thread(Interruption::stop, "interruption"));
    }

    /** The command has finished or cleaned up: nothing is left to wait for. */
    static void over() {
        OVER.countDown();
    }

    private static void stop() {
        WANTED.set(true);
        try {
            if (!OVER.await(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
                System.err.println("ebblight: did not stop in time; files whose names end in .part may be left");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
