package org.holdproof.report;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.methods;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The house plan: every package of the report uses only those named before it. Byte code is read, so lambdas count. */
class HousePlanTest {
    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(location -> !location.contains("test-classes"))
            .importPackages("org.holdproof");
    private static final String REPORT = "org.holdproof.report";
    private static final String OPEN_PDF = "com.lowagie..";
    private static final List<String> DOWNWARDS =
            List.of("font", "draw", "chart", "pdf", "seal", "archive", "layout", "lesson", "wall", "recheck");

    @Test
    void everyPackageHasItsPlace() {
        assertThat(CLASSES.stream()
                        .map(JavaClass::getPackageName)
                        .filter(name -> name.startsWith(REPORT + "."))
                        .map(name -> name.substring(REPORT.length() + 1).replaceFirst("\\..*", ""))
                        .distinct())
                .containsExactlyInAnyOrderElementsOf(DOWNWARDS);
    }

    @TestFactory
    Stream<DynamicTest> importsRunDownwards() {
        return IntStream.range(0, DOWNWARDS.size())
                .mapToObj(i -> DynamicTest.dynamicTest(DOWNWARDS.get(i), () -> noClasses()
                        .that()
                        .resideInAPackage(REPORT + "." + DOWNWARDS.get(i) + "..")
                        .should()
                        .dependOnClassesThat()
                        .resideInAnyPackage(Stream.concat(
                                        Stream.of(REPORT),
                                        DOWNWARDS.stream().skip(i + 1L).map(above -> REPORT + "." + above + ".."))
                                .toArray(String[]::new))
                        .check(CLASSES)));
    }

    @Test
    void packagesFormNoCircles() {
        slices().matching(REPORT + ".(*)..").should().beFreeOfCycles().check(CLASSES);
    }

    @Test
    void theReportKnowsNoCommandLine() {
        noClasses()
                .that()
                .resideInAPackage(REPORT + "..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("org.holdproof.cli..", "picocli..")
                .check(CLASSES);
    }

    @Test
    void aReportIsReadAndCheckedWithoutTheLibraryThatWroteIt() {
        noClasses()
                .that()
                .resideInAnyPackage(REPORT + ".pdf..", REPORT + ".seal..", REPORT + ".recheck..")
                .should()
                .transitivelyDependOnClassesThat()
                .resideInAPackage(OPEN_PDF)
                .check(CLASSES);
    }

    @Test
    void onlyDrawingAndWritingKnowTheLibraryThatWrites() {
        noClasses()
                .that()
                .resideOutsideOfPackages(
                        REPORT + ".font..",
                        REPORT + ".draw..",
                        REPORT + ".archive..",
                        REPORT + ".layout..",
                        REPORT + ".lesson..",
                        REPORT + ".wall..")
                .should()
                .dependOnClassesThat()
                .resideInAPackage(OPEN_PDF)
                .check(CLASSES);
    }

    @Test
    void theFrontDoorShowsNoTypeOfTheLibraryThatWrites() {
        methods()
                .that()
                .areDeclaredInClassesThat()
                .resideInAPackage(REPORT)
                .and()
                .arePublic()
                .should(new ArchCondition<JavaMethod>("use own types only") {
                    @Override
                    public void check(JavaMethod method, ConditionEvents events) {
                        method.getAllInvolvedRawTypes().stream()
                                .filter(type -> type.getPackageName().startsWith("com.lowagie"))
                                .forEach(type -> events.add(SimpleConditionEvent.violated(
                                        method, method.getFullName() + " shows " + type.getName())));
                    }
                })
                .allowEmptyShould(true)
                .check(CLASSES);
    }
}
