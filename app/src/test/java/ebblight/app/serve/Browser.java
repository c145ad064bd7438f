package ebblight.app.serve;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Supplier;
import org.openqa.selenium.By;
import org.openqa.selenium.JavascriptExecutor;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.Point;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.interactions.MoveTargetOutOfBoundsException;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.support.ui.WebDriverWait;

/** A real Chromium without a window. */
@SuppressWarnings("NullAway") // JUnit and the browser fill in what is read
final class Browser implements AutoCloseable {

    private static final Path CHROMIUM = Path.of("/usr/bin/chromium");
    private static final Path DRIVER = Path.of("/usr/bin/chromedriver");
    private static final Duration PATIENCE = Duration.ofSeconds(Long.getLong("ebblight.patience", 300));

    /** The last of the keys in sight that can be pressed and whose text or name begins so. */
    private static final String KEY =
            """
            return [...document.querySelectorAll('button,a')].filter((key) => key.offsetParent && !key.disabled &&
              ((key.innerText || '').replace(/\\s+/g, ' ').trim().startsWith(arguments[0]) ||
              (key.getAttribute('aria-label') || '').startsWith(arguments[0]))).pop() ?? null;
            """;

    private final ChromeDriver driver;
    private boolean byTouch;

    /** A browser with more switches of its command line than the usual ones. */
    Browser(String... more) {
        ChromeOptions options = new ChromeOptions();
        options.setBinary(CHROMIUM.toFile());
        options.addArguments("--headless=new", "--no-sandbox", "--disable-gpu", "--hide-scrollbars");
        options.addArguments(more);
        options.setCapability("goog:loggingPrefs", Map.of(LogType.BROWSER, "ALL"));
        driver = new ChromeDriver(
                new ChromeDriverService.Builder()
                        .usingDriverExecutable(new File(DRIVER.toString()))
                        .build(),
                options);
    }

    static boolean present() {
        return Files.isExecutable(CHROMIUM) && Files.isExecutable(DRIVER);
    }

    ChromeDriver driver() {
        return driver;
    }

    /** The size of the page; a phone is told to be one. */
    void size(int width, int height) {
        driver.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", width < 700));
        driver.executeCdpCommand("Emulation.setTouchEmulationEnabled", Map.of("enabled", width < 700));
        run("dispatchEvent(new Event('resize'))");
    }

    Object run(String script, Object... arguments) {
        return ((JavascriptExecutor) driver).executeScript(script, arguments);
    }

    /** Waits until an expression of the page is true. */
    void until(String expression) {
        new WebDriverWait(driver, PATIENCE)
                .withMessage(expression)
                .until(d -> Boolean.TRUE.equals(run("return Boolean(" + expression + ")")));
    }

    /** The first element that a selector finds, as it is now: what is done to it goes by the methods below. */
    WebElement find(String css) {
        until("document.querySelector('" + css.replace("'", "\\'") + "')");
        return driver.findElement(By.cssSelector(css));
    }

    /** The key whose text or name begins with {@code text}, as it is now. */
    WebElement key(String text) {
        return new WebDriverWait(driver, PATIENCE).withMessage("a key " + text).until(d -> (WebElement) run(KEY, text));
    }

    /** Presses the key whose text or name begins with {@code text}. */
    void press(String text) {
        on(() -> key(text), this::pressed);
    }

    /** Presses the first element that a selector finds. */
    void pressAt(String css) {
        on(() -> find(css), this::pressed);
    }

    /** A finger stays on the key whose text or name begins with {@code text}. */
    void hold(String text, Duration time) {
        on(() -> key(text), key -> finger().hold(key, time));
    }

    /** Types into the first element that a selector finds, or gives it the paths of files. */
    void type(String css, CharSequence... keys) {
        on(() -> find(css), field -> {
            field.sendKeys(keys);
            return true;
        });
    }

    /** Writes over what stands in the first element that a selector finds. */
    void typeOver(String css, String text) {
        on(() -> find(css), field -> {
            field.clear();
            field.sendKeys(text);
            return true;
        });
    }

    String textAt(String css) {
        return on(() -> find(css), WebElement::getText);
    }

    String attribute(String css, String name) {
        return on(() -> find(css), element -> String.valueOf(element.getAttribute(name)));
    }

    /** Whether keys are pressed from now on by a finger on the screen, not by a mouse. */
    Browser byTouch(boolean finger) {
        byTouch = finger;
        return this;
    }

    /** A place within an element, by shares of its width and height. */
    Point in(String css, double across, double down) {
        List<?> box = (List<?>) run(
                "const e = document.querySelector(arguments[0]); e.scrollIntoView({ block: 'center', behavior: 'instant' });"
                        + "const b = e.getBoundingClientRect(); return [b.left, b.top, b.width, b.height];",
                css);
        double[] b = box.stream().mapToDouble(v -> ((Number) v).doubleValue()).toArray();
        return new Point((int) (b[0] + across * b[2]), (int) (b[1] + down * b[3]));
    }

    private boolean pressed(WebElement element) {
        if (byTouch) {
            return finger().tap(element);
        }
        element.click();
        return true;
    }

    /** A page that draws itself anew between finding and acting gets acted on what it drew. */
    private <T> T on(Supplier<WebElement> finder, Function<WebElement, T> act) {
        return new WebDriverWait(driver, PATIENCE)
                .ignoring(StaleElementReferenceException.class, MoveTargetOutOfBoundsException.class)
                .until(d -> act.apply(finder.get()));
    }

    Finger finger() {
        return Finger.of(driver);
    }

    String text() {
        return String.valueOf(run("return document.body.innerText"));
    }

    void light(String name) {
        run(
                "localStorage.setItem('ebblight-light', arguments[0]); document.body.dataset.light = arguments[0];"
                        + "dispatchEvent(new Event('resize'))",
                name);
    }

    /** Errors that the console told since the last call. */
    List<String> faults() {
        return driver.manage().logs().get(LogType.BROWSER).getAll().stream()
                .filter(e -> e.getLevel().intValue() >= java.util.logging.Level.SEVERE.intValue())
                .map(LogEntry::getMessage)
                .toList();
    }

    /** What is wrong with names, roles and contrast, by axe-core's rules. */
    List<?> violations() throws IOException {
        if (!Boolean.TRUE.equals(run("return 'axe' in window"))) {
            try (InputStream in = Browser.class.getResourceAsStream("/axe.min.js")) {
                run(new String(in.readAllBytes(), StandardCharsets.UTF_8));
            }
        }
        return (List<?>) driver.executeAsyncScript("const done = arguments[arguments.length - 1];"
                + "axe.run(document, {resultTypes: ['violations']}).then(r => done(r.violations.map("
                + "v => v.id + ': ' + v.nodes.slice(0, 3).map(n => n.html.slice(0, 160) + ' ' +"
                + " (n.any[0] ? n.any[0].message : '')).join(' || '))))");
    }

    byte[] picture() {
        return driver.getScreenshotAs(OutputType.BYTES);
    }

    @Override
    public void close() {
        driver.quit();
    }
}
