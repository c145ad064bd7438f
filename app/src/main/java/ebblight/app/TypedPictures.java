package ebblight.app;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.UsageException;
import ebblight.app.made.PictureMaker;
import ebblight.core.numeric.Work;
import java.io.IOException;
import picocli.CommandLine.ParameterException;

/** The commands that write pictures, for the pages: the very same, so that both make the same files. */
public final class TypedPictures implements PictureMaker {

    @Override
    public JsonObject make(String[] arguments, Work work) throws IOException {
        try {
            return EbblightCommand.pictureCommand(arguments).makeWithRecord(work);
        } catch (ParameterException e) {
            throw new UsageException(String.valueOf(e.getMessage()));
        }
    }
}
