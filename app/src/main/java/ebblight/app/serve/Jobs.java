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
 * Work behind the pages. What looks at pictures runs one piece at a time, and what a person waits for goes before what is
 * prepared ahead; what makes files runs beside it, one piece at a time too, so that a picture opens while a stack is made.
 * Asking again for what is already under way joins it, so that a reloaded page or a second tab loses nothing.
 */
final class Jobs implements AutoCloseable {

    private static final int KEPT = 60;

    private final PriorityBlockingQueue<Turn> queue = new PriorityBlockingQueue<>();
    private final PriorityBlockingQueue<Turn> making = new PriorityBlockingQueue<>();
    private final Map<String, Job> byKey = new LinkedHashMap<>();
    private final List<Consumer<JsonObject>> listeners = new CopyOnWriteArrayList<>();
    private final AtomicLong next = new AtomicLong();
    private final List<Thread> workers =
            List.of(new Thread(() -> work(queue), "jobs"), new Thread(() -> work(making), "making"));
    private volatile boolean closed;

    private record Turn(int rank, long number, Job job) implements Comparable<Turn> {
        @Override
        public int compareTo(Turn other) {
            return rank != other.rank ? Integer.compare(rank, other.rank) : Long.compare(number, other.number);
        }
    }

    Jobs() {
        for (Thread worker : workers) {
            worker.setDaemon(true);
            worker.start();
        }
    }

    /**
     * The job for {@code key}, begun when it is not under way.
     *
     * @param rank the smaller, the sooner
     */
    Job begin(String key, int rank, Job.Task task) {
        return begin(key, rank, task, queue);
    }

    /** The job for {@code key} that makes files of its own and needs nothing that other jobs have read. */
    Job make(String key, Job.Task task) {
        return begin(key, 0, task, making);
    }

    private synchronized Job begin(String key, int rank, Job.Task task, PriorityBlockingQueue<Turn> line) {
        Job known = byKey.get(key);
        if (known != null && !known.over() && !known.cancelled()) {
            return known;
        }
        long number = next.incrementAndGet();
        Job job = new Job(Long.toString(number), task, this::tell, () -> runBefore(rank, line));
        byKey.remove(key);
        byKey.put(key, job);
        if (byKey.size() > KEPT) {
            byKey.values().stream().filter(Job::over).findFirst().ifPresent(old -> byKey.values()
                    .remove(old));
        }
        line.add(new Turn(rank, number, job));
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

    /** Runs what is wanted sooner than a job of {@code rank}, which waits meanwhile; only the worker of its line calls this. */
    private static void runBefore(int rank, PriorityBlockingQueue<Turn> line) {
        for (Turn head = line.peek(); head != null && head.rank() < rank; head = line.peek()) {
            if (line.remove(head)) {
                head.job().run();
            }
        }
    }

    private void work(PriorityBlockingQueue<Turn> line) {
        while (!closed) {
            try {
                line.take().job().run();
            } catch (InterruptedException e) {
                return;
            }
        }
    }

    @Override
    public synchronized void close() {
        closed = true;
        byKey.values().forEach(Job::cancel);
        workers.forEach(Thread::interrupt);
    }
}
