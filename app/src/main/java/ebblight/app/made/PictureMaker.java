package ebblight.app.made;

import com.grack.nanojson.JsonObject;
import ebblight.core.numeric.Work;
import java.io.IOException;

/** Makes pictures as the command line does, each with its record beside it. */
public interface PictureMaker {

    /**
     * Makes one picture.
     *
     * @param arguments a command and what would be typed after it
     * @return what the command says of it
     */
    JsonObject make(String[] arguments, Work work) throws IOException;
}
