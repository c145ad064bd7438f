package ebblight.app.serve;

import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonWriter;
import ebblight.app.ask.UsageException;
import ebblight.app.outing.StaleRevisionException;
import ebblight.core.numeric.Work;
import ebblight.engine.RequestException;
import ebblight.imaging.NoTimesException;
import ebblight.imaging.OutputFile;
import ebblight.imaging.UnreadableInputException;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import java.io.FileNotFoundException;
import java.io.IOException;

/** Failures as documents for the page: {@code problem/1} with what went wrong and what to do. */
final class Problems {

    private Problems() {}

    static void answer(Exception e, Context context) {
        int status = status(e);
        JsonObject problem = new JsonObject();
        problem.put("schema", "problem/1");
        problem.put("problem", words(e));
        if (e instanceof StaleRevisionException stale) {
            problem.put("newer", stale.newer());
        }
        if (e instanceof NoTimesException) {
            problem.put("needs", "fps");
        }
        if (status == 500) {
            e.printStackTrace();
        }
        context.status(status);
        context.header("Cache-Control", "no-store");
        context.contentType("application/json; charset=utf-8");
        context.result(JsonWriter.string(problem));
    }

    private static int status(Exception e) {
        if (e instanceof HttpResponseException http) {
            return http.getStatus();
        }
        if (e instanceof ForbiddenException) {
            return 403;
        }
        if (e instanceof RequestException || e instanceof UsageException || e instanceof NoTimesException) {
            return 400;
        }
        if (e instanceof StaleRevisionException) {
            return 409;
        }
        if (e instanceof Work.Cancelled) {
            return 410;
        }
        if (e instanceof InterruptedException) {
            return 503;
        }
        if (e instanceof FileNotFoundException) {
            return 404;
        }
        if (e instanceof IOException) {
            return OutputFile.diskIsFull(e) ? 507 : 422;
        }
        return 500;
    }

    private static String words(Exception e) {
        if (e instanceof Work.Cancelled) {
            return "stopped; nothing was changed";
        }
        if (e instanceof InterruptedException) {
            return "the program is closing; what was saved is in the folder";
        }
        if (OutputFile.diskIsFull(e)) {
            return "the disk is full: " + e.getMessage() + ". Nothing was lost; make room and try again";
        }
        if (status(e) == 500) {
            return "our fault: " + e + ". The terminal shows more; what was saved before is untouched";
        }
        return e instanceof IOException io ? UnreadableInputException.sentence(io) : String.valueOf(e.getMessage());
    }
}
