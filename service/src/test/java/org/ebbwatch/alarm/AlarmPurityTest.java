package org.ebbwatch.alarm;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

class AlarmPurityTest {
    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("org.ebbwatch");

    @Test
    void the_book_knows_findings_and_the_language_and_nothing_else() {
        classes()
                .that()
                .resideInAPackage("org.ebbwatch.alarm.book")
                .should()
                .onlyDependOnClassesThat()
                .resideInAnyPackage(
                        "org.ebbwatch.alarm.book", "org.ebbwatch.judge", "java.lang..", "java.util..", "java.time..")
                .check(CLASSES);
    }

    @Test
    void outlets_know_neither_book_nor_rack_nor_database() {
        noClasses()
                .that()
                .resideInAPackage("org.ebbwatch.alarm.outlet")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(
                        "org.ebbwatch.alarm.book",
                        "org.ebbwatch.alarm",
                        "org.ebbwatch.passage..",
                        "org.ebbwatch.store..",
                        "java.sql..",
                        "io.micronaut..")
                .check(CLASSES);
    }

    @Test
    void judge_and_passages_do_not_know_alarms() {
        noClasses()
                .that()
                .resideInAnyPackage("org.ebbwatch.judge..", "org.ebbwatch.passage..", "org.ebbwatch.store..")
                .should()
                .dependOnClassesThat()
                .resideInAPackage("org.ebbwatch.alarm..")
                .check(CLASSES);
    }
}
