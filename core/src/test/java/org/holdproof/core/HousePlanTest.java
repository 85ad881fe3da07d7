package org.holdproof.core;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The house plan: every package of core uses only those named before it. Byte code is read, so lambdas count. */
class HousePlanTest {
    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("org.holdproof");
    private static final String CORE = "org.holdproof.core.";
    private static final List<String> DOWNWARDS = List.of(
            "quantity",
            "wording",
            "input",
            "log",
            "batch",
            "rules",
            "kinetics",
            "heat",
            "course",
            "verdict",
            "measure",
            "assess",
            "standing",
            "quality",
            "plan",
            "lesson");

    @Test
    void everyPackageHasItsPlace() {
        assertThat(CLASSES.stream()
                        .map(JavaClass::getPackageName)
                        .filter(name -> name.startsWith(CORE))
                        .map(name -> name.substring(CORE.length()).replaceFirst("\\..*", ""))
                        .distinct())
                .isSubsetOf(DOWNWARDS);
    }

    @TestFactory
    Stream<DynamicTest> importsRunDownwards() {
        return IntStream.range(0, DOWNWARDS.size() - 1)
                .mapToObj(i -> DynamicTest.dynamicTest(DOWNWARDS.get(i), () -> noClasses()
                        .that()
                        .resideInAPackage(CORE + DOWNWARDS.get(i) + "..")
                        .should()
                        .dependOnClassesThat()
                        .resideInAnyPackage(DOWNWARDS.stream()
                                .skip(i + 1L)
                                .map(above -> CORE + above + "..")
                                .toArray(String[]::new))
                        .allowEmptyShould(true)
                        .check(CLASSES)));
    }

    @Test
    void packagesFormNoCircles() {
        ArchRule rule = slices().matching(CORE + "(*)..").should().beFreeOfCycles();
        rule.check(CLASSES);
    }

    @Test
    void coreKnowsNeitherReportNorCommandLine() {
        ArchRule rule = noClasses()
                .that()
                .resideInAPackage("org.holdproof.core..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("org.holdproof.report..", "org.holdproof.cli..", "com.lowagie..", "picocli..");
        rule.check(CLASSES);
    }

    @Test
    void rulesKnowNoLog() {
        ArchRule rule = noClasses()
                .that()
                .resideInAPackage(CORE + "rules..")
                .should()
                .dependOnClassesThat()
                .resideInAPackage(CORE + "log..");
        rule.check(CLASSES);
    }
}
