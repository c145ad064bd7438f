package ebblight.app.pocket;

import ebblight.app.serve.WebFiles;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The modules of the pages, found by following their imports. A module in a page of one file has no address of its own,
 * so each is given a name that an import map can tell.
 */
final class PageModules {

    private static final String PREFIX = "ebblight/";
    private static final Pattern IMPORT =
            Pattern.compile("(\\bfrom\\s*|\\bimport\\s*\\(\\s*|\\bimport\\s+)'(\\.{1,2}/[^']+)'");

    /** What stands in on the phone for modules of the desk. */
    private static final Map<String, String> INSTEAD = Map.of(
            "http-carrier.js", "pocket/carrier.js",
            "pages/before.js", "pocket/plan.js",
            "pages/after.js", "pocket/home.js");

    private PageModules() {}

    /** Names, as the modules call each other, and sources. */
    static Map<String, String> from(String first) throws IOException {
        Map<String, String> sources = new TreeMap<>();
        Deque<String> left = new ArrayDeque<>();
        left.add(first);
        while (!left.isEmpty()) {
            String path = left.remove();
            if (!sources.containsKey(PREFIX + path)) {
                String source = new String(WebFiles.bytes(path), StandardCharsets.UTF_8);
                sources.put(PREFIX + path, named(source, path, left));
            }
        }
        return sources;
    }

    private static String named(String source, String path, Deque<String> left) {
        return IMPORT.matcher(source).replaceAll(found -> {
            String target = beside(path, found.group(2));
            String real = INSTEAD.getOrDefault(target, target);
            left.add(real);
            return Matcher.quoteReplacement(found.group(1) + "'" + PREFIX + real + "'");
        });
    }

    /** The path that a relative one means, seen from a file. */
    static String beside(String path, String relative) {
        String base = path.contains("/") ? path.substring(0, path.lastIndexOf('/') + 1) : "";
        String rest = relative;
        while (rest.startsWith("./") || rest.startsWith("../")) {
            if (rest.startsWith("../")) {
                base = base.substring(0, base.lastIndexOf('/', base.length() - 2) + 1);
            }
            rest = rest.substring(rest.indexOf('/') + 1);
        }
        return base + rest;
    }
}
