package ebblight.app.demo;

import java.io.IOException;
import org.jspecify.annotations.Nullable;

/** Keeps the first failure of work on several threads, so that it can be raised where it is declared. */
final class Failure {

    private @Nullable IOException first;

    /** Something that may fail to write. */
    interface Writing {
        void run() throws IOException;
    }

    void guard(Writing writing) {
        synchronized (this) {
            if (first != null) {
                return;
            }
        }
        try {
            writing.run();
        } catch (IOException e) {
            synchronized (this) {
                first = first == null ? e : first;
            }
        }
    }

    synchronized void raise() throws IOException {
        if (first != null) {
            throw first;
        }
    }
}
