package ebblight.app.serve;

import java.time.Duration;
import java.util.List;
import org.openqa.selenium.Point;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.interactions.Interaction;
import org.openqa.selenium.interactions.Pause;
import org.openqa.selenium.interactions.PointerInput;
import org.openqa.selenium.interactions.Sequence;

/** A finger on the screen of a phone: touch events as the browser gets them from glass, no mouse among them. */
@SuppressWarnings("NullAway") // the browser fills in what is read
final class Finger {

    private static final int STEPS = 8;
    private static final Duration REST = Duration.ofMillis(300);

    /** Scrolls an element to the middle, and gives the place to touch; nothing when something else lies over it. */
    private static final String PLACE =
            """
            const element = arguments[0];
            element.scrollIntoView({ block: 'center', inline: 'center', behavior: 'instant' });
            const box = element.getBoundingClientRect();
            const [x, y] = [Math.round(box.left + box.width / 2), Math.round(box.top + box.height / 2)];
            const top = document.elementFromPoint(x, y);
            return top && (element.contains(top) || top.contains(element)) ? [x, y] : null;
            """;

    private final ChromeDriver driver;
    private final PointerInput pointer = new PointerInput(PointerInput.Kind.TOUCH, "finger");

    private Finger(ChromeDriver driver) {
        this.driver = driver;
    }

    static Finger of(ChromeDriver driver) {
        return new Finger(driver);
    }

    /** Whether the element could be touched: not when another one lies over it. */
    boolean tap(WebElement element) {
        return hold(element, Duration.ZERO);
    }

    /** The same, and the finger stays for a while. */
    boolean hold(WebElement element, Duration time) {
        List<?> place = (List<?>) driver.executeScript(PLACE, element);
        if (place == null) {
            return false;
        }
        Sequence touch = new Sequence(pointer, 0)
                .addAction(move(new Point(number(place, 0), number(place, 1))))
                .addAction(pointer.createPointerDown(0));
        if (!time.isZero()) {
            touch.addAction(new Pause(pointer, time));
        }
        driver.perform(List.of(touch.addAction(pointer.createPointerUp(0))));
        return true;
    }

    /** Draws from one place of the screen to another, and comes to rest there: else the browser takes it for a fling. */
    void drag(Point from, Point to) {
        Sequence touch = new Sequence(pointer, 0).addAction(move(from)).addAction(pointer.createPointerDown(0));
        for (int i = 1; i <= STEPS; i++) {
            touch.addAction(
                    move(new Point(from.x + (to.x - from.x) * i / STEPS, from.y + (to.y - from.y) * i / STEPS)));
        }
        touch.addAction(new Pause(pointer, REST));
        driver.perform(List.of(touch.addAction(pointer.createPointerUp(0))));
    }

    private static int number(List<?> place, int i) {
        return ((Number) place.get(i)).intValue();
    }

    private Interaction move(Point to) {
        return pointer.createPointerMove(Duration.ofMillis(20), PointerInput.Origin.viewport(), to.x, to.y);
    }
}
