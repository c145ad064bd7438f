package ebblight.app.serve;

import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonWriter;
import ebblight.app.after.FinishDraft;
import ebblight.app.ask.UsageException;
import ebblight.core.numeric.Work;
import io.javalin.Javalin;
import io.javalin.http.Context;
import java.util.Optional;

/** After over HTTP: sorting, making, trying a finish, marks, filters, the list of what was made. */
final class AfterRoutes {

    private static final int ASKED = 0;

    private final AfterDesk desk;
    private final Jobs jobs;

    AfterRoutes(AfterDesk desk, Jobs jobs) {
        this.desk = desk;
        this.jobs = jobs;
    }

    void add(Javalin javalin) {
        javalin.post("/api/after/sort", this::sort);
        javalin.post("/api/after/make", this::make);
        javalin.post("/api/after/draft", this::draft);
        javalin.post("/api/after/filter", this::filter);
        javalin.post("/api/after/learn", this::learn);
        javalin.post("/api/after/rate", context -> Replies.json(context, desk.rate(Replies.body(context))));
        javalin.get("/api/after/made", this::made);
    }

    private void sort(Context context) throws Exception {
        JsonObject request = Replies.body(context);
        String key = desk.sortKey(request);
        Optional<JsonObject> known = desk.known(key);
        if (known.isPresent()) {
            Replies.json(context, known.get());
        } else {
            Replies.job(context, jobs.make(key, job -> desk.sort(request, key, job)));
        }
    }

    private void make(Context context) throws Exception {
        MakeRequest request = new MakeRequest(desk.folder(), Replies.body(context));
        String key = request.key();
        Optional<JsonObject> known = desk.made(key);
        if (known.isPresent()) {
            Replies.json(context, known.get());
            return;
        }
        Replies.job(context, jobs.make(key, job -> {
            try {
                return desk.make(request, key, job);
            } catch (UsageException e) {
                throw AfterDesk.said(e);
            }
        }));
    }

    /** At once when the picture is at hand: what is made meanwhile does not hold a draft up. */
    private void draft(Context context) throws Exception {
        JsonObject request = Replies.body(context);
        Optional<FinishDraft> opened = desk.opened(request);
        if (opened.isPresent() && desk.partsKnown(request)) {
            Replies.json(context, desk.draw(opened.get(), request, Work.alone()));
        } else {
            Replies.job(context, jobs.begin("draft " + JsonWriter.string(request), ASKED, job -> {
                desk.findParts(request, job);
                return desk.draw(desk.ready(request, job), request, job);
            }));
        }
    }

    private void filter(Context context) throws Exception {
        JsonObject request = Replies.body(context);
        Replies.job(
                context, jobs.begin("filter " + JsonWriter.string(request), ASKED, job -> desk.filter(request, job)));
    }

    private void learn(Context context) throws Exception {
        JsonObject request = Replies.body(context);
        Replies.job(context, jobs.make("learn " + JsonWriter.string(request), job -> desk.learn(request, job)));
    }

    private void made(Context context) throws Exception {
        JsonObject answer = new JsonObject();
        answer.put("made", MadeList.of(desk.folder()));
        Replies.json(context, answer);
    }
}
