package ebblight.core.numeric;

import java.util.function.IntConsumer;

/**
 * What long work is told by its caller: whether to stop, whom to tell how far it is, and on what to run. Callers on
 * the desk bring threads, the phone page brings none; results are the same bits either way because the pieces are
 * fixed by the work, not by the threads.
 */
public interface Work {

    /** True once the caller no longer wants the result. Work checks between pieces and throws {@link Cancelled}. */
    boolean cancelled();

    /**
     * Reports how far the work is.
     *
     * @param fraction done, 0 to 1
     * @param stage what is being done, in words for a person ("reading frames")
     */
    void progress(double fraction, String stage);

    /** Runs {@code body} for 0 to {@code n − 1}, in any order, perhaps at once; returns when all are done. */
    void forEach(int n, IntConsumer body);

    /** Throws {@link Cancelled} when the caller has cancelled. */
    default void check() {
        if (cancelled()) {
            throw new Cancelled();
        }
    }

    /** Work on the calling thread that nobody watches and nobody stops. */
    static Work alone() {
        return new Work() {
            @Override
            public boolean cancelled() {
                return false;
            }

            @Override
            public void progress(double fraction, String stage) {}

            @Override
            public void forEach(int n, IntConsumer body) {
                for (int i = 0; i < n; i++) {
                    body.accept(i);
                }
            }
        };
    }

    /** Thrown through the work when the caller has cancelled; carries nothing. */
    final class Cancelled extends RuntimeException {
        private static final long serialVersionUID = 1;

        public Cancelled() {
            super("cancelled");
        }
    }
}
