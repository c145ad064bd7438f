package ebblight.app;

import ebblight.core.numeric.Work;
import java.io.PrintStream;
import java.util.concurrent.ForkJoinPool;
import java.util.function.IntConsumer;
import java.util.stream.IntStream;

/** Work on all cores of this machine; tells its progress on standard error and stops on Ctrl-C. */
final class DeskWork implements Work {

    private static final long REDRAW_NANOS = 100_000_000;

    private final PrintStream to;
    private final boolean terminal;
    private String stage = "";
    private long drawnAt;
    private boolean lineOpen;

    DeskWork(PrintStream to, boolean terminal) {
        this.to = to;
        this.terminal = terminal;
    }

    @Override
    public boolean cancelled() {
        return Interruption.wanted();
    }

    @Override
    public synchronized void progress(double fraction, String now) {
        if (terminal) {
            long time = System.nanoTime();
            if (!now.equals(stage) || time - drawnAt > REDRAW_NANOS) {
                to.printf("\r\033[K%s %3.0f %%", now, 100 * Math.max(0, Math.min(1, fraction)));
                to.flush();
                drawnAt = time;
                lineOpen = true;
            }
        } else if (!now.equals(stage)) {
            to.println(now);
        }
        stage = now;
    }

    /** Takes the progress line away before results are printed. */
    synchronized void quiet() {
        if (lineOpen) {
            to.print("\r\033[K");
            to.flush();
            lineOpen = false;
        }
    }

    @Override
    public void forEach(int n, IntConsumer body) {
        check();
        if (n == 1 || ForkJoinPool.getCommonPoolParallelism() < 1) {
            for (int i = 0; i < n; i++) {
                body.accept(i);
            }
            return;
        }
        IntStream.range(0, n).parallel().forEach(i -> {
            check();
            body.accept(i);
        });
    }
}
