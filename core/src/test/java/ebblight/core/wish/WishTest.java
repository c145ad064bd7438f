package ebblight.core.wish;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import ebblight.core.motion.Kind;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Wishes as they are typed, and the scale of words (the limits are this program's own definition). */
class WishTest {

    @ParameterizedTest
    @CsvSource({
        "water=silky, water, SILKY, false",
        "' Water = Silky! ', water, SILKY, true",
        "clouds=streaked, clouds, STREAKED, false",
        "branch=as-seen, branch, AS_SEEN, false",
        "flowing-2=as_seen, flowing-2, AS_SEEN, false",
        "rock=sharp, rock, SHARP, false"
    })
    void aWishIsRead(String typed, String part, Word word, boolean closed) {
        Wish wish = Wish.parse(typed);
        assertThat(wish).isEqualTo(new Wish(part, word, closed));
        assertThat(Wish.parse(wish.text())).isEqualTo(wish);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "water", "=silky", "water="})
    void whatIsNoWishIsShownOne(String typed) {
        assertThatThrownBy(() -> Wish.parse(typed))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("water=silky");
    }

    /** Each kind has its words: nobody can make a rock silky or water streaked. */
    @Test
    void aWordThatDoesNotFitIsAnsweredWithThoseThatDo() {
        assertThatThrownBy(() -> Wish.parse("rock=silky"))
                .hasMessageContaining("\"silky\" is no wish for rock")
                .hasMessageEndingWith("words are sharp, still");
        assertThatThrownBy(() -> Wish.parse("sky=glass")).hasMessageEndingWith("words are as seen, sharp, streaked");
        assertThatThrownBy(() -> Wish.parse("water=streaked"))
                .hasMessageContaining("lines")
                .hasMessageContaining("trails");
        assertThatThrownBy(() -> Wish.parse("branch=lines")).hasMessageContaining("still");
        // a part by its name may be of any kind
        assertThat(Wish.parse("flowing-1=still").word()).isEqualTo(Word.STILL);
        assertThatThrownBy(() -> Wish.parse("flowing-1=wet"))
                .hasMessageContaining("streaked")
                .hasMessageContaining("mist");
    }

    @Test
    void theWordsOfTheTradeMeanAKind() {
        assertThat(Wish.kind("water")).contains(Kind.FLOWING);
        assertThat(Wish.kind("sky")).contains(Kind.DRIFTING);
        assertThat(Wish.kind("swaying")).contains(Kind.SWAYING);
        assertThat(Wish.kind("rock")).contains(Kind.FIXED);
        assertThat(Wish.kind("flowing-1")).isEmpty();
    }

    @Test
    void aWishIsAboutAKindOrAName() {
        assertThat(Wish.parse("water=mist").about(Part.water().motion())).isTrue();
        assertThat(Wish.parse("water=mist").about(Part.cloud(1).motion())).isFalse();
        assertThat(Wish.parse("flowing-2=mist").about(Part.water().numbered(2).motion()))
                .isTrue();
        assertThat(Wish.parse("flowing-2=mist").about(Part.water().motion())).isFalse();
    }

    /** Above 15 % as seen, to 5 % softened, to 2 % silky, to 1 % mist, below it glass. */
    @ParameterizedTest
    @CsvSource({
        "0.4, AS_SEEN",
        "0.151, AS_SEEN",
        "0.15, SOFTENED",
        "0.051, SOFTENED",
        "0.05, SILKY",
        "0.021, SILKY",
        "0.02, MIST",
        "0.01, MIST",
        "0.0099, GLASS",
        "0, GLASS"
    })
    void everyShareHasItsWord(double left, Word word) {
        assertThat(Word.forLeft(left)).isEqualTo(word);
        assertThat(word.least()).isLessThanOrEqualTo(left);
        assertThat(word.most()).isGreaterThanOrEqualTo(left);
    }

    @Test
    void everyWordIsReadAsItIsWritten() {
        for (Word word : Word.values()) {
            assertThat(Word.parse(word.text())).isEqualTo(Optional.of(word));
        }
        assertThat(Word.parse("wet")).isEmpty();
    }

    @Test
    void spansOverlapWhereBothHold() {
        List<Span> first = List.of(new Span(0, 2), new Span(8, Double.POSITIVE_INFINITY));
        List<Span> second = List.of(new Span(1, 10));
        assertThat(Span.both(first, second)).containsExactly(new Span(1, 2), new Span(8, 10));
        assertThat(Span.both(first, List.of(new Span(2, 4)))).containsExactly(new Span(2, 2));
        assertThat(Span.both(first, List.of(new Span(3, 4)))).isEmpty();
        assertThat(Span.both(first, List.of(Span.ALL))).isEqualTo(first);
        assertThatThrownBy(() -> new Span(2, 1)).hasMessageContaining("shorter to a longer");
        assertThatThrownBy(() -> new Span(-1, 1)).hasMessageContaining("shorter to a longer");
    }
}
