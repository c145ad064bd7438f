package ebblight.app.serve;

import static org.assertj.core.api.Assertions.assertThat;

import com.grack.nanojson.JsonObject;
import ebblight.core.numeric.Work;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

class JobsTest {

    private final Jobs jobs = new Jobs();

    @AfterEach
    void end() {
        jobs.close();
    }

    @Test
    void askingAgainForWhatIsUnderWayJoinsIt() throws Exception {
        CountDownLatch go = new CountDownLatch(1);
        Job.Task task = job -> {
            go.await();
            return new JsonObject();
        };
        Job first = jobs.begin("the same", 0, task);
        assertThat(jobs.begin("the same", 0, task)).isSameAs(first);
        assertThat(jobs.begin("another", 0, job -> new JsonObject())).isNotSameAs(first);
        go.countDown();
        assertThat(first.waitFor(5000)).isTrue();
        assertThat(first.failure()).isNull();
    }

    @Test
    void aCancelledJobEndsAndTheNextOneIsBegunAnew() throws Exception {
        CountDownLatch running = new CountDownLatch(1);
        Job job = jobs.begin("long", 0, work -> {
            running.countDown();
            while (true) {
                work.check();
                Thread.onSpinWait();
            }
        });
        running.await();
        job.cancel();
        assertThat(job.waitFor(5000)).isTrue();
        assertThat(job.failure()).isInstanceOf(Work.Cancelled.class);
        assertThat(jobs.begin("long", 0, work -> new JsonObject()).waitFor(5000))
                .isTrue();
    }

    @Test
    void aPictureOpensWhileAStackIsMade() throws Exception {
        CountDownLatch go = new CountDownLatch(1);
        Job stack = jobs.make("stack", job -> {
            go.await();
            return new JsonObject();
        });
        Job next = jobs.make("another stack", job -> new JsonObject());
        Job opening = jobs.begin("open", 0, job -> new JsonObject());
        assertThat(opening.waitFor(5000)).isTrue();
        assertThat(stack.over()).isFalse();
        assertThat(next.over()).as("files are made one after the other").isFalse();
        go.countDown();
        assertThat(stack.waitFor(5000) && next.waitFor(5000)).isTrue();
    }

    @Test
    void whatAPersonWaitsForGoesFirst() throws Exception {
        List<String> order = new CopyOnWriteArrayList<>();
        CountDownLatch go = new CountDownLatch(1);
        jobs.begin("gate", 0, job -> {
            go.await();
            return new JsonObject();
        });
        Job ahead = jobs.begin("ahead", 1, job -> noted(order, "ahead"));
        Job asked = jobs.begin("asked", 0, job -> noted(order, "asked"));
        go.countDown();
        assertThat(ahead.waitFor(5000) && asked.waitFor(5000)).isTrue();
        assertThat(order).containsExactly("asked", "ahead");
    }

    @Test
    void workAheadGivesWayInTheMiddleToWhatAPersonWaitsFor() throws Exception {
        List<String> order = new CopyOnWriteArrayList<>();
        CountDownLatch begun = new CountDownLatch(1);
        CountDownLatch go = new CountDownLatch(1);
        Job ahead = jobs.begin("ahead", 1, job -> {
            noted(order, "ahead begins");
            begun.countDown();
            go.await();
            job.giveWay();
            return noted(order, "ahead ends");
        });
        begun.await();
        Job asked = jobs.begin("asked", 0, job -> noted(order, "asked"));
        jobs.begin("later", 1, job -> noted(order, "later"));
        go.countDown();
        assertThat(ahead.waitFor(5000) && asked.waitFor(5000)).isTrue();
        assertThat(order).startsWith("ahead begins", "asked", "ahead ends");
    }

    private static JsonObject noted(List<String> order, String name) {
        order.add(name);
        return new JsonObject();
    }

    @Test
    void tellsItsProgressAndTheTimeLeft() throws Exception {
        List<JsonObject> told = new CopyOnWriteArrayList<>();
        jobs.listen(told::add);
        Job job = jobs.begin("told", 0, work -> {
            work.part(0, 0.5);
            work.progress(0.5, "reading frames");
            return new JsonObject();
        });
        assertThat(job.waitFor(5000)).isTrue();
        assertThat(told).anySatisfy(state -> {
            assertThat(state.getDouble("fraction")).isEqualTo(0.25);
            assertThat(state.getString("stage")).isEqualTo("reading frames");
            assertThat(state.getDouble("secondsLeft")).isGreaterThanOrEqualTo(0);
        });
    }
}
