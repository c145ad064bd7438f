package ebblight.app.serve;

import com.grack.nanojson.JsonObject;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.PriorityBlockingQueue;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;

/**
 * Long work, one piece at a time: what a person waits for goes before what is prepared ahead. Asking again for what is
 * already under way joins it, so that a reloaded page or a second tab loses nothing.
 */
final class Jobs implements AutoCloseable {

    private static final int KEPT = 60;

    private final PriorityBlockingQueue<Turn> queue = new PriorityBlockingQueue<>();
    private final Map<String, Job> byKey = new LinkedHashMap<>();
    private final List<Consumer<JsonObject>> listeners = new CopyOnWriteArrayList<>();
    private final AtomicLong next = new AtomicLong();
    private final Thread worker = new Thread(this::work, "jobs");
    private volatile boolean closed;

    private record Turn(int rank, long number, Job job) implements Comparable<Turn> {
        @Override
        public int compareTo(Turn other) {
            return rank != other.rank ? Integer.compare(rank, other.rank) : Long.compare(number, other.number);
        }
    }

    Jobs() {
        worker.setDaemon(true);
        worker.start();
    }

    /**
     * The job for {@code key}, begun when it is not under way.
     *
     * @param rank the smaller, the sooner
     */
    synchronized Job begin(String key, int rank, Job.Task task) {
        Job known = byKey.get(key);
        if (known != null && !known.over() && !known.cancelled()) {
            return known;
        }
        long number = next.incrementAndGet();
        Job job = new Job(Long.toString(number), task, this::tell, () -> runBefore(rank));
        byKey.remove(key);
        byKey.put(key, job);
        if (byKey.size() > KEPT) {
            byKey.values().stream().filter(Job::over).findFirst().ifPresent(old -> byKey.values()
                    .remove(old));
        }
        queue.add(new Turn(rank, number, job));
        return job;
    }

    synchronized Optional<Job> find(String id) {
        return byKey.values().stream().filter(job -> job.id().equals(id)).findFirst();
    }

    void listen(Consumer<JsonObject> listener) {
        listeners.add(listener);
    }

    void forget(Consumer<JsonObject> listener) {
        listeners.remove(listener);
    }

    private void tell(Job job) {
        JsonObject state = job.state();
        listeners.forEach(listener -> listener.accept(state));
    }

    /** Runs what is wanted sooner than a job of {@code rank}, which waits meanwhile; only the one worker calls this. */
    private void runBefore(int rank) {
        for (Turn head = queue.peek(); head != null && head.rank() < rank; head = queue.peek()) {
            if (queue.remove(head)) {
                head.job().run();
            }
        }
    }

    private void work() {
        while (!closed) {
            try {
                queue.take().job().run();
            } catch (InterruptedException e) {
                return;
            }
        }
    }

    @Override
    public synchronized void close() {
        closed = true;
        byKey.values().forEach(Job::cancel);
        worker.interrupt();
    }
}
