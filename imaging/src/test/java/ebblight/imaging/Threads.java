package ebblight.imaging;

import ebblight.core.numeric.Work;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
import java.util.function.IntConsumer;
import java.util.stream.IntStream;

/** Work on a pool of so many threads. */
public final class Threads implements Work, AutoCloseable {

    private final ForkJoinPool pool;

    public Threads(int count) {
        pool = new ForkJoinPool(count);
    }

    @Override
    public boolean cancelled() {
        return false;
    }

    @Override
    public void progress(double fraction, String stage) {}

    @Override
    public void forEach(int n, IntConsumer body) {
        try {
            pool.submit(() -> IntStream.range(0, n).parallel().forEach(body)).get();
        } catch (InterruptedException | ExecutionException e) {
            throw new IllegalStateException(e);
        }
    }

    @Override
    public void close() {
        pool.shutdownNow();
    }
}
