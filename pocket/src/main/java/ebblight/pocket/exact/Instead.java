package ebblight.pocket.exact;

import org.teavm.model.BasicBlock;
import org.teavm.model.ClassHolder;
import org.teavm.model.ClassHolderTransformer;
import org.teavm.model.ClassHolderTransformerContext;
import org.teavm.model.Instruction;
import org.teavm.model.MethodHolder;
import org.teavm.model.MethodReference;
import org.teavm.model.instructions.InvokeInstruction;

/** Has every call of {@code StrictMath} go to {@link PortableStrictMath}; the compiler of the page is told of it in the pom. */
public final class Instead implements ClassHolderTransformer {

    private static final String STRICT_MATH = "java.lang.StrictMath";
    private static final String PORTABLE = PortableStrictMath.class.getName();

    @Override
    public void transformClass(ClassHolder type, ClassHolderTransformerContext context) {
        for (MethodHolder method : type.getMethods()) {
            if (method.getProgram() == null) {
                continue;
            }
            for (BasicBlock block : method.getProgram().getBasicBlocks()) {
                for (Instruction each : block) {
                    if (each instanceof InvokeInstruction call
                            && call.getMethod().getClassName().equals(STRICT_MATH)) {
                        call.setMethod(
                                new MethodReference(PORTABLE, call.getMethod().getDescriptor()));
                    }
                }
            }
        }
    }
}
