package ebblight.app.serve;

import com.grack.nanojson.JsonObject;
import ebblight.core.numeric.Work;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.IntConsumer;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** One long piece of work: how far it is, whether it is still wanted, and what came of it. */
final class Job implements Work {

    /** What a job does. */
    interface Task {
        JsonObject run(Job job) throws Exception;
    }

    private static final double TELLING_FRACTION = 0.03;

    private final String id;
    private final Task task;
    private final Consumer<Job> changed;
    private final Runnable others;
    private final CountDownLatch over = new CountDownLatch(1);
    private volatile boolean cancelled;
    private volatile double from;
    private volatile double share = 1;
    private volatile double fraction;
    private volatile String stage = "waiting for its turn";
    private volatile long startedNanos;
    private volatile @Nullable JsonObject answer;
    private volatile @Nullable Exception failure;

    /**
     * A job that waits for its turn.
     *
     * @param changed is told when it gets on
     * @param others runs what is wanted sooner than this job
     */
    Job(String id, Task task, Consumer<Job> changed, Runnable others) {
        this.id = id;
        this.task = task;
        this.changed = changed;
        this.others = others;
    }

    String id() {
        return id;
    }

    void run() {
        startedNanos = System.nanoTime();
        try {
            check();
            answer = task.run(this);
        } catch (Exception e) {
            failure = e;
        } catch (OutOfMemoryError e) {
            failure = new java.io.IOException("the clip needs more memory than there is; use a shorter one", e);
        } finally {
            over.countDown();
            changed.accept(this);
        }
    }

    void cancel() {
        cancelled = true;
    }

    /** Lets go first what a person waits for meanwhile. */
    void giveWay() {
        others.run();
        check();
    }

    /** Says that what follows takes the job from {@code begin} to {@code end}, 0 to 1. */
    void part(double begin, double end) {
        from = begin;
        share = end - begin;
    }

    boolean over() {
        return over.getCount() == 0;
    }

    boolean waitFor(long millis) throws InterruptedException {
        return over.await(millis, TimeUnit.MILLISECONDS);
    }

    @Nullable Exception failure() {
        return failure;
    }

    /** The answer of a job that is over and did not fail. */
    JsonObject answer() {
        JsonObject known = answer;
        if (known == null) {
            throw new IllegalStateException("the job has no answer yet");
        }
        return known;
    }

    /** How far it is, for the page. */
    JsonObject state() {
        JsonObject state = new JsonObject();
        state.put("job", id);
        state.put("over", over());
        state.put("fraction", fraction);
        state.put("stage", stage);
        double elapsed = startedNanos == 0 ? 0 : (System.nanoTime() - startedNanos) / 1e9;
        state.put("secondsLeft", fraction > TELLING_FRACTION ? elapsed * (1 - fraction) / fraction : null);
        return state;
    }

    @Override
    public boolean cancelled() {
        return cancelled;
    }

    @Override
    public void progress(double done, String now) {
        double at = from + share * Math.max(0, Math.min(1, done));
        boolean tell = !now.equals(stage) || at - fraction >= 0.01;
        fraction = Math.max(fraction, at);
        stage = now;
        if (tell) {
            changed.accept(this);
        }
    }

    @Override
    public void forEach(int n, IntConsumer body) {
        check();
        IntStream.range(0, n).parallel().forEach(i -> {
            check();
            body.accept(i);
        });
    }
}
