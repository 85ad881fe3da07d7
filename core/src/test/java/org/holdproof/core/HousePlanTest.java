package org.holdproof.core;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import org.junit.jupiter.api.Test;

/** Imports run downwards only: quantity; log, batch, standard; kinetics, heat; assess; plan, lesson. */
class HousePlanTest {
    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("org.holdproof");
    private static final String CORE = "org.holdproof.core.";

    @Test
    void importsRunDownwards() {
        ArchRule rule = layeredArchitecture()
                .consideringOnlyDependenciesInLayers()
                .withOptionalLayers(true)
                .layer("quantity")
                .definedBy(CORE + "quantity..")
                .layer("records")
                .definedBy(CORE + "log..", CORE + "batch..", CORE + "standard..")
                .layer("computing")
                .definedBy(CORE + "kinetics..", CORE + "heat..")
                .layer("assess")
                .definedBy(CORE + "assess..")
                .layer("uses")
                .definedBy(CORE + "plan..", CORE + "lesson..")
                .whereLayer("uses")
                .mayNotBeAccessedByAnyLayer()
                .whereLayer("assess")
                .mayOnlyBeAccessedByLayers("uses")
                .whereLayer("computing")
                .mayOnlyBeAccessedByLayers("assess", "uses")
                .whereLayer("records")
                .mayOnlyBeAccessedByLayers("computing", "assess", "uses");
        rule.check(CLASSES);
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
                .resideInAPackage(CORE + "standard..")
                .should()
                .dependOnClassesThat()
                .resideInAPackage(CORE + "log..");
        rule.check(CLASSES);
    }
}
