package ebblight.demo;

import static org.assertj.core.api.Assertions.assertThat;

import ebblight.core.numeric.Work;
import org.junit.jupiter.api.Test;

class ViewTest {

    @Test
    void theSameInstantIsTheSamePicture() {
        float[] once = Coast.evening().view(96, Work.alone()).frame(2.5).green();
        float[] again = Coast.evening().view(96, Work.alone()).frame(2.5).green();
        assertThat(again).isEqualTo(once);
        assertThat(Coast.evening().view(96, Work.alone()).frame(3.5).green()).isNotEqualTo(once);
    }
}
