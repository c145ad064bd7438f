package ebblight.app.kit;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/** Where the user's own data and the disposable copies lie, by the customs of the operating system. */
public final class DataFolder {

    private DataFolder() {}

    /** The folder for what must not be lost; made when absent. */
    public static Path data() throws IOException {
        String asked = setting("ebblight.data", "EBBLIGHT_DATA");
        Path folder = asked.isEmpty() ? custom("XDG_DATA_HOME", ".local/share", "Application Support") : Path.of(asked);
        return Files.createDirectories(folder);
    }

    /** The folder for what can be made again; made when absent. */
    public static Path cache() throws IOException {
        String asked = setting("ebblight.cache", "EBBLIGHT_CACHE");
        Path folder = asked.isEmpty() ? custom("XDG_CACHE_HOME", ".cache", "Caches") : Path.of(asked);
        return Files.createDirectories(folder);
    }

    private static String setting(String property, String variable) {
        String value = System.getProperty(property, System.getenv(variable));
        return value == null ? "" : value;
    }

    private static Path custom(String variable, String unix, String mac) {
        String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
        Path home = Path.of(System.getProperty("user.home", "."));
        if (system.startsWith("mac")) {
            return home.resolve("Library").resolve(mac).resolve("Ebblight");
        }
        if (system.startsWith("windows")) {
            String local = System.getenv("LOCALAPPDATA");
            Path base = local == null ? home : Path.of(local);
            return base.resolve("Ebblight").resolve(mac.equals("Caches") ? "cache" : "data");
        }
        String set = System.getenv(variable);
        Path base = set == null || set.isEmpty() ? home.resolve(unix) : Path.of(set);
        return base.resolve("ebblight");
    }
}
