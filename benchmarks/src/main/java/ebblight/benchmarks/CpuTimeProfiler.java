package ebblight.benchmarks;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.util.Collection;
import java.util.List;
import org.openjdk.jmh.infra.BenchmarkParams;
import org.openjdk.jmh.infra.IterationParams;
import org.openjdk.jmh.profile.InternalProfiler;
import org.openjdk.jmh.results.AggregationPolicy;
import org.openjdk.jmh.results.IterationResult;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.ScalarResult;

/**
 * Processor time a call in milliseconds, all threads, compiler and garbage collector together. On a machine that others
 * use too, wall time says how busy they are; this says what the work costs.
 */
public final class CpuTimeProfiler implements InternalProfiler {

    private static final double NANOS_A_MILLI = 1e6;

    private long before;

    @Override
    public String getDescription() {
        return "processor time of the whole process a call";
    }

    @Override
    public void beforeIteration(BenchmarkParams benchmark, IterationParams iteration) {
        before = processNanos();
    }

    @Override
    public Collection<? extends Result<?>> afterIteration(
            BenchmarkParams benchmark, IterationParams iteration, IterationResult result) {
        double millis = (processNanos() - before) / NANOS_A_MILLI;
        double calls = Math.max(1, result.getMetadata().getAllOps());
        return List.of(new ScalarResult("cpu", millis / calls, "ms/op", AggregationPolicy.AVG));
    }

    private static long processNanos() {
        return ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class).getProcessCpuTime();
    }
}
