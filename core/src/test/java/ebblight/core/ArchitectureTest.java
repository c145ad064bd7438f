package ebblight.core;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaMethodCall;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.util.Set;

@AnalyzeClasses(packages = "ebblight.core", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {

    /** The part of the JDK that the browser build also has. */
    private static final String[] ALLOWED = {
        "ebblight.core..",
        "java.lang..",
        "java.util",
        "java.util.function",
        "java.util.stream",
        "java.time..",
        "org.jspecify.annotations.."
    };

    /** Functions whose result is the same bits on every machine (IEEE 754 basic operations and exact selections). */
    private static final Set<String> EXACT_MATH = Set.of(
            "abs",
            "min",
            "max",
            "sqrt",
            "floor",
            "ceil",
            "signum",
            "floorMod",
            "floorDiv",
            "toIntExact",
            "multiplyExact",
            "addExact");

    private static final Set<String> STRICT_MATH =
            Set.of("sin", "cos", "tan", "asin", "atan2", "exp", "log", "log10", "tanh");

    private static final DescribedPredicate<JavaMethodCall> INEXACT = new DescribedPredicate<>("inexact arithmetic") {
        @Override
        public boolean test(JavaMethodCall call) {
            String owner = call.getTargetOwner().getName();
            String method = call.getName();
            return switch (owner) {
                case "java.lang.Math" -> !EXACT_MATH.contains(method);
                case "java.lang.StrictMath" -> !STRICT_MATH.contains(method);
                default -> false;
            };
        }
    };

    @ArchTest
    static final ArchRule coreDependsOnlyOnItselfAndTheAllowedJdk =
            classes().should().onlyDependOnClassesThat().resideInAnyPackage(ALLOWED);

    @ArchTest
    static final ArchRule packagesAreFreeOfCycles =
            slices().matching("ebblight.core.(*)..").should().beFreeOfCycles();

    @ArchTest
    static final ArchRule coreReadsNoClock = noClasses()
            .should()
            .callMethod(Instant.class, "now")
            .orShould()
            .callMethod(LocalDate.class, "now")
            .orShould()
            .callMethod(ZonedDateTime.class, "now");

    @ArchTest
    static final ArchRule coreHasNoMutableState = fields().should().beFinal();

    @ArchTest
    static final ArchRule coreDoesNotPrint =
            noClasses().should().accessField(System.class, "out").orShould().accessField(System.class, "err");

    @ArchTest
    static final ArchRule coreComputesTheSameBitsEverywhere =
            noClasses().should().callMethodWhere(INEXACT);

    @ArchTest
    static final ArchRule coreFormatsNumbersItself = noClasses()
            .should()
            .callMethodWhere(new DescribedPredicate<JavaMethodCall>("String.format") {
                @Override
                public boolean test(JavaMethodCall call) {
                    return call.getTargetOwner().isEquivalentTo(String.class)
                            && (call.getName().equals("format")
                                    || call.getName().equals("formatted"));
                }
            });

    @ArchTest
    static final ArchRule coreBringsItsOwnRandomNumbers =
            noClasses().should().dependOnClassesThat().haveFullyQualifiedName("java.util.Random");
}
