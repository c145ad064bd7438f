package ebblight.app.serve;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.openqa.selenium.By;
import org.openqa.selenium.JavascriptExecutor;
import org.openqa.selenium.OutputType;
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

    WebElement find(String css) {
        until("document.querySelector('" + css.replace("'", "\\'") + "')");
        return driver.findElement(By.cssSelector(css));
    }

    /** The key whose text or name begins with {@code text}. */
    WebElement key(String text) {
        String find = "[...document.querySelectorAll('button,a')].filter(b => b.offsetParent && !b.disabled &&"
                + " ((b.innerText||'').replace(/\\s+/g,' ').trim().startsWith(arguments[0]) ||"
                + " (b.getAttribute('aria-label')||'').startsWith(arguments[0]))).pop()";
        new WebDriverWait(driver, PATIENCE)
                .withMessage("a key " + text)
                .until(d -> run("return Boolean(" + find + ")", text).equals(true));
        return (WebElement) run("return " + find, text);
    }

    /** Presses the key whose text or name begins with {@code text}. */
    void press(String text) {
        pressFound(() -> key(text));
    }

    /** Presses the first element that a selector finds. */
    void pressAt(String css) {
        pressFound(() -> find(css));
    }

    /** From now on keys are pressed by a finger on the screen, not by a mouse. */
    Browser byTouch() {
        byTouch = true;
        return this;
    }

    /** A page that draws itself anew between finding and pressing gets pressed on what it drew. */
    private void pressFound(Supplier<WebElement> finder) {
        new WebDriverWait(driver, PATIENCE)
                .ignoring(StaleElementReferenceException.class, MoveTargetOutOfBoundsException.class)
                .until(d -> {
                    WebElement element = finder.get();
                    if (byTouch) {
                        return Finger.of(driver).tap(element);
                    }
                    element.click();
                    return true;
                });
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

    byte[] picture() {
        return driver.getScreenshotAs(OutputType.BYTES);
    }

    @Override
    public void close() {
        driver.quit();
    }
}
