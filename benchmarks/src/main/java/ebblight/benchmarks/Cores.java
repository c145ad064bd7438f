package ebblight.benchmarks;

import ebblight.core.numeric.Work;
import java.util.function.IntConsumer;
import java.util.stream.IntStream;

/** Work on all cores that nobody watches and nobody stops, as the desk does it. */
final class Cores implements Work {

    @Override
    public boolean cancelled() {
        return false;
    }

    @Override
    public void progress(double fraction, String stage) {}

    @Override
    public void forEach(int n, IntConsumer body) {
        IntStream.range(0, n).parallel().forEach(body);
    }
}
