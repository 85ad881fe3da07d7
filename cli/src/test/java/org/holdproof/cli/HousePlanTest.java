package org.holdproof.cli;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import org.junit.jupiter.api.Test;

/** The house plan for the command line and the page. Byte code is read, so lambdas count. */
class HousePlanTest {
    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(location -> !location.contains("test-classes"))
            .importPackages("org.holdproof");
    private static final String CLI = "org.holdproof.cli";

    @Test
    void theLibraryThatWritesPdfStaysInTheReport() {
        noClasses()
                .that()
                .resideInAPackage(CLI + "..")
                .should()
                .dependOnClassesThat()
                .resideInAPackage("com.lowagie..")
                .check(CLASSES);
    }

    @Test
    void theTerminalKnowsNoCommand() {
        noClasses()
                .that()
                .resideInAPackage(CLI + ".terminal..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(CLI, CLI + ".manual..", "picocli..")
                .check(CLASSES);
    }

    @Test
    void theRoomsOfTheCommandLineFormNoCircles() {
        slices().matching(CLI + ".(*)..").should().beFreeOfCycles().check(CLASSES);
    }

    @Test
    void nothingBelowKnowsTheCommandLine() {
        noClasses()
                .that()
                .resideOutsideOfPackage(CLI + "..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(CLI + "..", "picocli..")
                .check(CLASSES);
    }
}
