package org.ebbwatch.trace;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

class PurityTest {

    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("org.ebbwatch");

    @Test
    void the_codec_knows_nothing_but_arrays_of_bytes() {
        classes()
                .that()
                .resideInAPackage("org.ebbwatch.trace.codec")
                .should()
                .onlyDependOnClassesThat()
                .resideInAnyPackage(
                        "org.ebbwatch.trace.codec",
                        "java.lang..",
                        "java.util..",
                        "java.nio",
                        "java.nio.charset",
                        "java.security")
                .check(CLASSES);
    }

    @Test
    void thinning_for_a_chart_knows_nothing_but_numbers() {
        classes()
                .that()
                .resideInAPackage("org.ebbwatch.trace.plot")
                .should()
                .onlyDependOnClassesThat()
                .resideInAnyPackage("org.ebbwatch.trace.plot", "java.lang..", "java.util..")
                .check(CLASSES);
    }

    @Test
    void trace_and_store_ask_no_clock_and_know_neither_judge_nor_framework() {
        noClasses()
                .that()
                .resideInAnyPackage("org.ebbwatch.trace..", "org.ebbwatch.store..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("org.ebbwatch.judge..", "org.ebbwatch.acquire..", "io.micronaut..", "java.time..")
                .orShould()
                .callMethod(System.class, "nanoTime")
                .orShould()
                .callMethod(System.class, "currentTimeMillis")
                .check(CLASSES);
    }

    @Test
    void the_store_does_not_know_the_trace() {
        noClasses()
                .that()
                .resideInAPackage("org.ebbwatch.store..")
                .should()
                .dependOnClassesThat()
                .resideInAPackage("org.ebbwatch.trace..")
                .check(CLASSES);
    }
}
